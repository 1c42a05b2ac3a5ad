"""`swardcast outlook`: fixed keys for machines, dates that the demo's own files give, moments as typed."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date, timedelta
from typing import Any

import pytest

from tests.cli.conftest import Done
from tests.conftest import DEMO

MILESTONES = ("reopening", "settled", "holes_closed", "back_to_normal")
FIXED = ["id", "play", "work", *MILESTONES, "reopening_hours", "reasons"]
PLAYS = {"open", "open with care", "temporary green", "closed", "not known"}
WORKS = {"planned", "under way", "held up", "healing", "back to normal", "called off", None}

Outlook = dict[str, dict[str, Any]]


@pytest.fixture
def outlook_at(swardcast: Callable[..., Done]) -> Callable[[str], Outlook]:
    def read(as_of: str) -> Outlook:
        done = swardcast("outlook", "--club", str(DEMO), "--as-of", as_of, "--json")
        assert (done.code, done.err) == (0, "")
        return {surface["id"]: surface for surface in json.loads(done.out)}

    return read


@pytest.mark.parametrize("as_of", ["2027-05-01 07:00", "2027-08-25 12:00", "2027-09-14 09:30", "2027-12-24 09:00"])
def test_every_surface_has_the_fixed_keys_in_their_order(outlook_at: Callable[[str], Outlook], as_of: str) -> None:
    surfaces = outlook_at(as_of)
    assert len(surfaces) == 65
    for surface in surfaces.values():
        assert [key for key in surface if key != "job"] == FIXED
        assert surface["play"] in PLAYS
        assert surface["work"] in WORKS
        assert surface["reasons"]
        assert all(isinstance(reason, str) for reason in surface["reasons"])


def test_a_range_is_three_days_in_order_or_nothing(outlook_at: Callable[[str], Outlook]) -> None:
    for surface in outlook_at("2027-09-14 09:30").values():
        for name in MILESTONES:
            if surface["work"] is None:
                assert surface[name] is None
                continue
            assert list(surface[name]) == ["early", "likely", "allow_until"]
            days = [date.fromisoformat(day) for day in surface[name].values() if day is not None]
            assert days == sorted(days)


def test_a_milestone_never_comes_before_the_one_below_it(outlook_at: Callable[[str], Outlook]) -> None:
    for surface in outlook_at("2027-09-14 09:30").values():
        likely = [surface[name]["likely"] for name in MILESTONES[1:] if surface[name] is not None]
        days = [date.fromisoformat(day) for day in likely if day is not None]
        assert days == sorted(days)


def test_before_anything_is_announced_nothing_is_promised(outlook_at: Callable[[str], Outlook]) -> None:
    """The first programme is announced on 19 April 2027 and no entry was made before."""
    for surface in outlook_at("2027-04-18 18:00").values():
        assert (surface["play"], surface["work"]) == ("not known", None)
        assert [surface[name] for name in MILESTONES] == [None] * 4
        assert surface["reasons"] == ["No report was ever made."]


def test_without_an_entry_of_the_day_play_is_not_known_and_the_last_entry_is_named(
    outlook_at: Callable[[str], Outlook],
) -> None:
    """No morning entry is dated 16 September; the one before is of 06:45 on the 15th."""
    green = outlook_at("2027-09-16 12:00")["green-1"]
    assert green["play"] == "not known"
    assert green["reasons"][0].startswith("No report today; the last one was made at 6:45am on Wednesday 15 September")


def test_the_states_of_14_september_are_those_of_the_log(outlook_at: Callable[[str], Outlook]) -> None:
    surfaces = outlook_at("2027-09-14 09:30")
    states = {name: (surfaces[name]["play"], surfaces[name]["work"]) for name in surfaces}
    assert states["green-13"] == ("open with care", "healing")  # done on 26 August
    assert states["tee-5"] == ("closed", "healing")  # turf laid on 9 September
    assert states["tee-13"] == ("closed", "under way")  # started on 10 September
    assert states["bunker-11-front"] == ("closed", "under way")  # started the day before
    assert states["bunker-17-left"] == ("open", "planned")
    assert states["fairway-1"] == ("open", None)


def test_a_usual_range_counts_from_the_day_of_the_work(outlook_at: Callable[[str], Outlook]) -> None:
    """Tee 5 was done on 9 September: open after 6 to 10 weeks, so 8 in the middle; normal after 26 to 34, so 30."""
    done = date(2027, 9, 9)
    tee = outlook_at("2027-09-14 09:30")["tee-5"]
    for name, weeks in (("reopening", (6, 8, 10)), ("back_to_normal", (26, 30, 34))):
        expected = [(done + timedelta(weeks=count)).isoformat() for count in weeks]
        assert list(tee[name].values()) == expected
    assert tee["settled"] == {"early": None, "likely": None, "allow_until": None}


def test_work_held_up_is_told_with_its_cause(outlook_at: Callable[[str], Outlook]) -> None:
    green = outlook_at("2027-08-25 12:00")["green-14"]
    assert green["work"] == "held up"
    assert any("heavy rain" in reason for reason in green["reasons"])


def test_an_entry_counts_from_its_own_minute_on(outlook_at: Callable[[str], Outlook]) -> None:
    """Held up since 07:10 on 25 August; a minute before, nobody knew."""
    assert outlook_at("2027-08-25 07:09")["green-14"]["work"] != "held up"
    assert outlook_at("2027-08-25 07:10")["green-14"]["work"] == "held up"


@pytest.mark.parametrize(
    "as_of", ["2027-09-14T09:30", "2027-09-14 09:30+01:00", "2027-09-14 08:30Z", "2027-09-14 10:30+02:00"]
)
def test_a_moment_is_local_unless_it_has_an_offset(outlook_at: Callable[[str], Outlook], as_of: str) -> None:
    assert outlook_at(as_of) == outlook_at("2027-09-14 09:30")


def test_an_offset_is_not_dropped(outlook_at: Callable[[str], Outlook]) -> None:
    """07:09Z is 08:09 in London, after the hold-up of 07:10; 06:09Z is 07:09, before it."""
    assert outlook_at("2027-08-25 06:09Z")["green-14"]["work"] != "held up"
    assert outlook_at("2027-08-25 07:09Z")["green-14"]["work"] == "held up"


def test_a_day_alone_is_its_noon(outlook_at: Callable[[str], Outlook]) -> None:
    assert outlook_at("2027-08-25") == outlook_at("2027-08-25 12:00")


@pytest.mark.parametrize("command", ["outlook", "explain", "build"])
@pytest.mark.parametrize("as_of", ["yesterday", "2027-02-30", "2027-09-14 25:00", "14/09/2027", ""])
def test_a_moment_that_is_none_ends_with_1_and_an_example(
    swardcast: Callable[..., Done], tmp_path: Any, command: str, as_of: str
) -> None:
    more = {"outlook": [], "explain": ["green-1"], "build": ["--output", str(tmp_path / "site")]}[command]
    done = swardcast(command, *more, "--club", str(DEMO), "--as-of", as_of)
    assert (done.code, done.out) == (1, "")
    assert f"{as_of!r} is no moment; expected one such as '2027-09-14 09:30'" in done.err
    assert list(tmp_path.iterdir()) == []


def test_a_moment_at_the_end_of_the_calendar_is_refused(swardcast: Callable[..., Done]) -> None:
    assert swardcast("outlook", "--club", str(DEMO), "--as-of", "9999-12-31").code == 1


def test_a_moment_that_the_clocks_skip_is_refused(swardcast: Callable[..., Done]) -> None:
    assert swardcast("outlook", "--club", str(DEMO), "--as-of", "2027-03-28 01:30").code == 1


def test_surfaces_that_are_simply_open_are_left_out_unless_asked_for(swardcast: Callable[..., Done]) -> None:
    words = ("outlook", "--club", str(DEMO), "--as-of", "2027-09-14 09:30")
    assert "[fairway-1]" not in swardcast(*words).out
    assert "Fairway 1 [fairway-1]: open\n" in swardcast(*words, "--all").out


def test_the_terminal_gets_no_colours(swardcast: Callable[..., Done]) -> None:
    assert "\x1b" not in swardcast("outlook", "--club", str(DEMO), "--as-of", "2027-09-14 09:30").out


def test_limits_stand_at_the_top_with_who_decided_and_the_entry(swardcast: Callable[..., Done]) -> None:
    lines = swardcast("outlook", "--club", str(DEMO), "--as-of", "2027-09-14 09:30").out.splitlines()
    assert (
        "Trolleys: Keep ten paces from the greens. Decided by the course manager. [2027-09-14-0650-morning]"
        in lines[1:3]
    )
