"""Surfaces are found as a greenkeeper names them."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from swardcast.reading.folder import read_club_folder
from swardcast.reading.selection import select_surfaces
from swardcast.records.club import SurfaceKind
from tests.conftest import DEMO

SURFACES = read_club_folder(DEMO).surfaces
IDS = list(SURFACES)
GREENS = [f"green-{hole}" for hole in range(1, 19)]
WITHOUT_THE = "whole course"
QUIET = settings(database=None, derandomize=True)  # the same examples on every run, nothing written


def selected(phrase: object) -> list[str]:
    return list(select_surfaces(phrase, SURFACES))


@pytest.mark.parametrize(
    ("phrase", "ids"),
    [
        ("greens 1-3", ["green-1", "green-2", "green-3"]),
        ("greens 1 to 3", ["green-1", "green-2", "green-3"]),
        ("greens 1–3", ["green-1", "green-2", "green-3"]),
        ("greens 1-2 and 14", ["green-1", "green-2", "green-14"]),
        ("greens 1, 2 and 14", ["green-1", "green-2", "green-14"]),
        ("greens 1, 2, and 14", ["green-1", "green-2", "green-14"]),
        ("green 7", ["green-7"]),
        ("Green 7", ["green-7"]),
        ("the green 7", ["green-7"]),
        ("green-7", ["green-7"]),
        ("tee 5, green 5", ["tee-5", "green-5"]),
        ("tees 5 and 13", ["tee-5", "tee-13"]),
        ("the practice green", ["practice-green"]),
        ("practice green", ["practice-green"]),
        ("the practice green and greens 17-18", ["practice-green", "green-17", "green-18"]),
        ("greens 3, 1 and 2", ["green-3", "green-1", "green-2"]),
        ("greens 1-3 and 2", ["green-1", "green-2", "green-3"]),
        ("bunkers 4", ["bunker-4-left", "bunker-4-right"]),
        ("bunker-4-left and bunker-4-right", ["bunker-4-left", "bunker-4-right"]),
        ("fairways 3-5", ["fairway-3", "fairway-5"]),  # the 4th is a short hole without a fairway
        (["green 1", "tee 2"], ["green-1", "tee-2"]),
        ("  greens   1-2 ", ["green-1", "green-2"]),
    ],
)
def test_a_phrase_names_its_surfaces_in_its_own_order(phrase: object, ids: list[str]) -> None:
    assert selected(phrase) == ids


@pytest.mark.parametrize("phrase", ["greens", "all greens", "the greens", "greens 1-18"])
def test_all_greens_are_those_of_the_holes_and_not_the_practice_green(phrase: str) -> None:
    assert selected(phrase) == GREENS


@pytest.mark.parametrize(
    ("phrase", "ids"),
    [("the practice ground", ["range"]), ("practice ground", ["range"]), ("practice grounds", ["range", "short-game"])],
)
def test_one_that_is_called_as_its_kind_goes_before_the_kind(phrase: str, ids: list[str]) -> None:
    course = {
        name: replace(SURFACES["practice-green"], id=name, kind=SurfaceKind.PRACTICE_GROUND, name=called)
        for name, called in (("range", "The practice ground"), ("short-game", "the short game area"))
    }
    assert list(select_surfaces(phrase, course)) == ids


@pytest.mark.parametrize("phrase", ["the whole course", WITHOUT_THE, "all surfaces", "everything", "the course"])
def test_the_whole_course_is_every_surface(phrase: str) -> None:
    assert selected(phrase) == IDS


@pytest.mark.parametrize(
    ("phrase", "found", "expected", "hint"),
    [
        ("greens 1-19", "greens 1-19", "greens that stand in surfaces.yaml (holes 1 to 18); there is no green 19", ""),
        ("greens 0-3", "greens 0-3", "greens that stand in surfaces.yaml (holes 1 to 18); there is no green 0", ""),
        ("fairway 4", "fairway 4", "fairways that stand in surfaces.yaml (holes 1 to 18); there is no fairway 4", ""),
        ("roughs", "roughs", "surfaces that stand in surfaces.yaml; it has no roughs", ""),
        ("roughs 1-3", "roughs 1-3", "roughs that stand in surfaces.yaml (none); there is no rough 1", ""),
        ("tees 5-3", "tees 5-3", "a range that goes up, such as 'tees 3-5'", ""),
        (
            "the practise green",
            "the practise green",
            "surfaces of surfaces.yaml, such as 'greens 1-9', 'all tees' or 'green-7'",
            "Did you mean 'the practice green'?",
        ),
        ("14", "14", "surfaces of surfaces.yaml, such as 'greens 1-9', 'all tees' or 'green-7'", ""),
        ("", "", "surfaces, such as 'greens 1-9', 'all tees' or 'green-7'", ""),
        (" , ", " , ", "surfaces, such as 'greens 1-9', 'all tees' or 'green-7'", ""),
    ],
)
def test_a_phrase_that_names_nothing_of_this_course_is_told(phrase: str, found: str, expected: str, hint: str) -> None:
    with pytest.raises(PydanticCustomError) as raised:
        selected(phrase)
    context = raised.value.context
    assert context is not None
    assert (context["found"], context["expected"], context["hint"]) == (repr(found), expected, hint)


@pytest.mark.parametrize("name", IDS)
def test_every_id_and_every_name_selects_its_own_surface(name: str) -> None:
    assert selected(name) == [name]
    assert selected(SURFACES[name].name) == [name]
    assert selected(SURFACES[name].name.upper()) == [name]


@QUIET
@given(ids=st.lists(st.sampled_from(IDS), min_size=1, max_size=8), last=st.sampled_from([", ", " and ", ", and "]))
def test_ids_in_a_row_select_themselves_once_each_in_their_order(ids: list[str], last: str) -> None:
    phrase = last.join([", ".join(ids[:-1]), ids[-1]]) if len(ids) > 1 else ids[0]
    assert selected(phrase) == list(dict.fromkeys(ids))


@QUIET
@given(kind=st.sampled_from([SurfaceKind.GREEN, SurfaceKind.TEE]), ends=st.tuples(*[st.integers(1, 18)] * 2))
def test_a_range_selects_its_holes_from_end_to_end(kind: SurfaceKind, ends: tuple[int, int]) -> None:
    first, last = sorted(ends)
    assert selected(f"{kind.plural} {first}-{last}") == [f"{kind.value}-{hole}" for hole in range(first, last + 1)]


@QUIET
@given(phrase=st.text(max_size=30))
def test_no_phrase_at_all_breaks_the_reader(phrase: str) -> None:
    with suppress(PydanticCustomError):
        assert set(selected(phrase)) <= set(IDS)
