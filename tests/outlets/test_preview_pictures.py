"""Preview pictures: size, words, nothing outside its place, the same bytes each time, a cache that can do no harm."""

from __future__ import annotations

import os
import re
import stat
import time
from collections.abc import Callable
from dataclasses import replace
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Any

import pytest
from PIL import Image, ImageChops

from swardcast import picture_cache
from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets import preview_picture
from swardcast.outlets.preview import HOME_PICTURE, cards_of, notice_card, picture_path
from swardcast.outlets.preview_picture import Card, draw_card, key_of
from swardcast.outlets.preview_sign import SIGN_COLOURS, sign_mask
from swardcast.outlets.preview_text import BOLD, fit, font_at, writable
from swardcast.outlook.states import Work
from swardcast.picture_cache import cache_folder, cached, tidy
from swardcast.records.plan import Play
from tests.conftest import ROOT
from tests.outlook.small_club import SmallClub, moment
from tests.png import chunks_of

CARD = Card(
    club="Quillhaven Golf Club",
    headline="Hollow tining the greens: 23 to 27 August",
    play=Play.OPEN_WITH_CARE,
    state="Open with care",
    where="Greens 1 to 18",
    label="Back to normal",
    normal="Likely by Friday 1 October; allow until Monday 11 October",
    told="Last news on Monday 13 September",
)
LONG = "Ĥollow tïning, scarifying, topdressing and brushing in “all” the greens, tees & approaches: " * 5
WORD = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft" * 3


def _picture(card: Card) -> Image.Image:
    with Image.open(BytesIO(draw_card(card))) as picture:
        assert picture.format == "PNG"
        return picture.convert("RGB")


def test_a_picture_has_its_size_and_no_chunk_but_its_pixels() -> None:
    png = draw_card(CARD)
    assert set(chunks_of(png)) == {"IHDR", "PLTE", "IDAT", "IEND"}
    assert _picture(CARD).size == (1200, 630)
    assert len(png) < 100_000


def test_the_same_card_gives_the_same_bytes() -> None:
    assert draw_card(CARD) == draw_card(replace(CARD))


@pytest.mark.parametrize("name", ["club", "headline", "play", "state", "where", "label", "normal", "told"])
def test_every_word_of_a_card_is_seen_and_is_part_of_its_key(name: str) -> None:
    change: dict[str, Any] = {name: Play.CLOSED if name == "play" else "Otherwise"}
    other = replace(CARD, **change)
    assert key_of(other) != key_of(CARD)
    assert ImageChops.difference(_picture(other), _picture(CARD)).getbbox() is not None


def test_another_drawing_or_another_pillow_makes_another_key(monkeypatch: pytest.MonkeyPatch) -> None:
    keys = {key_of(CARD)}
    monkeypatch.setattr(preview_picture, "_DRAWING", "another")
    keys.add(key_of(CARD))
    monkeypatch.setattr("PIL.__version__", "0.0")
    keys.add(key_of(CARD))
    assert len(keys) == 3


def test_what_is_drawn_otherwise_has_another_number_of_drawing() -> None:
    """The picture of CARD, a tenth as large, beside the one kept for this number: caches go by it.

    Versions of the library that draws letters differ at their edges, so a little may differ. After a change of the
    drawing raise `_DRAWING` and run with SWARDCAST_GOLDEN=write; look at the picture.
    """
    kept = ROOT / "tests/golden/preview" / f"drawing-{preview_picture._DRAWING}.png"
    small = _picture(CARD).reduce(10)
    if os.environ.get("SWARDCAST_GOLDEN") == "write" and not kept.exists():
        kept.parent.mkdir(exist_ok=True)
        small.save(kept)
    with Image.open(kept) as before:
        difference = ImageChops.difference(small, before.convert("RGB"))
    assert max(difference.tobytes()) <= 12  # of 255, in any colour


@pytest.mark.parametrize("text", [LONG, WORD, "W" * 400, "a " * 400], ids=["words", "a word", "one letter", "letters"])
def test_long_words_stay_inside_the_margins(text: str) -> None:
    """Outside the band of the club, 60 pixels at the left and right and 20 at the foot are bare."""
    long = Card(club=text, headline=text, play=None, state=text, where=text, label=text, normal=text, told=text)
    picture = _picture(long)
    paper = picture.getpixel((10, 400))
    for box in ((0, 110, 60, 630), (1140, 110, 1200, 630), (0, 610, 1200, 630)):
        assert picture.crop(box).getcolors() == [((box[2] - box[0]) * (box[3] - box[1]), paper)]
    band = picture.crop((1140, 0, 1200, 100))
    assert len(band.getcolors() or ()) == 1


def test_parts_of_a_card_do_not_run_into_each_other() -> None:
    """Of long words in every part: where a part differs from a card without it, no other part does."""
    names = ("club", "headline", "state", "where", "label", "normal", "told")
    long = Card(play=None, **dict.fromkeys(names, LONG))
    whole, boxes = _picture(long), []
    for name in names:
        change: dict[str, Any] = {name: "."}
        difference = ImageChops.difference(_picture(replace(long, **change)), whole).convert("L")
        box = difference.point([0] * 60 + [255] * 196).getbbox()  # the few colours of both may differ a little
        assert box is not None
        boxes.append(box)
    assert all(above[3] <= below[1] for above, below in pairwise(boxes)), boxes


@pytest.mark.parametrize("width_px", [200, 500, 1072])
@pytest.mark.parametrize("height_px", [48, 120, 226])
def test_a_fitted_text_is_never_wider_or_higher_than_its_place(width_px: int, height_px: int) -> None:
    for text in (LONG, WORD, "Short"):
        fitted = fit(text, width_px=width_px, height_px=height_px, sizes_px=(76, 60, 40), weight=BOLD)
        font = font_at(fitted.size_px, BOLD)
        assert fitted.height_px <= height_px
        assert all(font.getlength(line) <= width_px for line in fitted.lines)
        whole = " ".join(fitted.lines)
        assert whole.endswith("…") or whole.replace(" ", "") == text.replace(" ", "")


def test_a_font_writes_accents_leaves_pictures_out_and_refuses_letters_that_it_lacks() -> None:
    latin = "".join(chr(code) for code in (*range(0xC0, 0xD7), *range(0xD8, 0xF7), *range(0xF8, 0x180)))
    assert writable(latin) == latin
    assert writable("e\u0301te\u0301 & <b>\u00a0“x” – 5 €") == "été & <b> “x” – 5 €"
    assert writable("Golf \U0001f3cc\ufe0f\u200d\n today\x00") == "Golf today"
    assert writable("ירוק") is None
    assert writable("果岭") is None


def test_each_sign_is_a_shape_of_its_own_in_the_colour_of_the_theme() -> None:
    masks = {play: sign_mask(play, 64) for play in Play}
    assert len({mask.tobytes() for mask in masks.values()}) == len(Play)
    assert all(mask.size == (64, 64) and 0.1 < sum(mask.tobytes()) / 255 / 64 / 64 < 0.8 for mask in masks.values())
    css = (ROOT / "site_src/theme/static/css/swardcast.css").read_text(encoding="utf-8")
    by_day = dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6});", css.partition("@media")[0]))
    names = {"open": Play.OPEN, "care": Play.OPEN_WITH_CARE, "temporary": Play.TEMPORARY_GREEN,
             "closed": Play.CLOSED, "unknown": Play.NOT_KNOWN}  # fmt: skip
    assert {play: by_day[name] for name, play in names.items()} == SIGN_COLOURS
    ours = {name: getattr(preview_picture, name.upper().replace("-", "_"))
            for name in ("paper", "ink", "faint", "rule")}  # fmt: skip
    assert ours == {name: by_day[name] for name in ours}


def test_the_demo_has_a_picture_for_each_notice_that_says_what_the_notice_says(demo_bulletin: Bulletin) -> None:
    cards = dict(cards_of(demo_bulletin))
    assert set(cards) == {HOME_PICTURE, *(picture_path(notice.id) for notice in demo_bulletin.notices)}
    card = cards[picture_path("greens-renovation-2027")]
    assert card == Card(
        club="Quillhaven Golf Club",
        headline="Hollow tining, scarifying and sanding the greens: 23 to 27 August",
        play=Play.OPEN_WITH_CARE,
        state="Open with care · healing",
        where="Greens 1 to 18",
        label="Back to normal",
        normal="Likely by Friday 1 October; allow until Monday 11 October",
        told="Last news on Monday 13 September",
    )


def test_work_to_come_or_over_has_no_sign_of_play(demo_bulletin: Bulletin) -> None:
    """Tees 5 and 13 are closed for other work; the notice of the spring work says nothing of that."""
    cards = dict(cards_of(demo_bulletin))
    over, planned = (cards[picture_path(name)] for name in ("tees-solid-tining-2027", "fairways-deep-tining-2027"))
    assert (over.play, over.state) == (None, "Back to normal")
    assert (planned.play, planned.state) == (None, "Planned")


def test_greens_that_play_differently_have_the_sign_of_care_and_no_word_of_play(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    card = dict(cards_of(demo_bulletin_at("2027-08-25 12:00")))[picture_path("greens-renovation-2027")]
    assert (card.play, card.state) == (Play.OPEN_WITH_CARE, "Work held up")


@pytest.mark.parametrize(
    ("at", "state", "where"),
    [
        pytest.param("2027-08-25 12:00", "Work held up", "Greens 12 to 18", id="greens 1 to 11 are done"),
        pytest.param("2027-08-26 11:30", "Closed · work under way", "Greens 13 to 15", id="the set of the morning"),
        pytest.param("2027-09-14 09:30", "Open with care · healing", "Greens 1 to 18", id="all of them"),
        pytest.param("2027-09-27 12:00", "Not known · healing", "Greens 12 to 18", id="the others are back to normal"),
    ],
)
def test_a_card_names_the_surfaces_that_are_in_the_state_it_tells(
    demo_bulletin_at: Callable[[str], Bulletin], at: str, state: str, where: str
) -> None:
    card = dict(cards_of(demo_bulletin_at(at)))[picture_path("greens-renovation-2027")]
    assert (card.state, card.where) == (state, where)


def test_between_two_days_of_work_a_card_names_all_its_surfaces(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """On 20 September four of the six bunkers are done and the other two have not begun."""
    card = dict(cards_of(demo_bulletin_at("2027-09-20 12:00")))[picture_path("bunkers-resanding-2027")]
    assert card.state.endswith("ork under way")
    assert card.where == "6 bunkers"


def test_sand_settles_on_a_card_as_on_the_status_page(demo_bulletin: Bulletin) -> None:
    """On 14 September three of the six bunkers are done: of those alone the card would speak so."""
    job = demo_bulletin.outlook.jobs["bunkers-resanding-2027"]
    done = replace(job, work=Work.HEALING, surfaces=tuple(one for one in job.surfaces if one.work is Work.HEALING))
    outlook = replace(demo_bulletin.outlook, jobs={**demo_bulletin.outlook.jobs, job.job.id: done})
    (notice,) = (notice for notice in demo_bulletin.notices if notice.id == job.job.id)
    assert notice_card(notice, replace(demo_bulletin, outlook=outlook)).state == "Open · settling"


def test_a_notice_that_was_called_off_promises_no_day(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    club.log("off", "05-03", "change of plan", "job: spring", "change: called off", "because: no sand was to be had")
    bulletin = compose_bulletin(club.records(), moment("05-04"))
    card = notice_card(bulletin.notices[0], bulletin)
    assert "called off" in card.headline
    assert (card.state, card.play, card.normal) == ("Called off", None, "")


def test_words_in_letters_that_the_font_lacks_have_no_picture(demo_bulletin: Bulletin) -> None:
    notice = replace(demo_bulletin.notices[0], headline="ירוק")
    bulletin = replace(demo_bulletin, notices=(notice, *demo_bulletin.notices[1:]))
    paths = {path for path, _ in cards_of(bulletin)}
    assert picture_path(notice.id) not in paths
    assert len(paths) == len(bulletin.notices)


def _never() -> bytes:
    raise AssertionError


def test_a_picture_is_drawn_once_and_then_taken_from_the_cache(tmp_path: Path) -> None:
    folder = tmp_path / "not there yet"
    assert cached("a", lambda: b"picture", folder) == b"picture"
    assert cached("a", _never, folder) == b"picture"
    assert [file.suffix for file in folder.iterdir()] == [".picture"]


@pytest.mark.parametrize("damaged", [b"", b"x", b"\0" * 100], ids=["empty", "cut", "overwritten"])
def test_a_damaged_picture_is_drawn_again(tmp_path: Path, damaged: bytes) -> None:
    cached("a", lambda: b"picture", tmp_path)
    (file,) = tmp_path.iterdir()
    file.write_bytes(damaged)
    assert cached("a", lambda: b"picture", tmp_path) == b"picture"
    assert cached("a", _never, tmp_path) == b"picture"


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="files have owners and modes where there are users")
@pytest.mark.parametrize("whose", ["may be written by the group", "may be written by all", "another's"])
def test_a_picture_that_others_may_have_put_there_is_drawn_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, whose: str
) -> None:
    cached("a", lambda: b"theirs", tmp_path)
    (file,) = tmp_path.iterdir()
    if whose == "another's":
        uid = os.getuid()
        monkeypatch.setattr(os, "getuid", lambda: uid + 1)
    else:
        file.chmod(0o620 if "group" in whose else 0o602)
    assert cached("a", lambda: b"picture", tmp_path) == b"picture"


def test_a_cache_that_cannot_be_read_or_written_fails_no_build(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    for folder in (None, tmp_path / "file", tmp_path / "file" / "below"):
        assert cached("a", lambda: b"picture", folder) == b"picture"
        tidy(folder)
    (tmp_path / "a.picture").mkdir()  # a folder where the picture should be
    assert cached("a", lambda: b"picture", tmp_path) == b"picture"
    assert {path.name for path in tmp_path.iterdir()} == {"file", "a.picture"}


def test_a_picture_that_cannot_be_written_whole_leaves_nothing(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """As on a full disk: the file is there, and its bytes are refused."""

    def fills(*_: object, **more: Any) -> Any:
        file = NamedTemporaryFile(**more)  # noqa: SIM115 - closed by whom it is given
        monkeypatch.setattr(file, "write", lambda _: (_ for _ in ()).throw(OSError(28, "No space left on device")))
        return file

    monkeypatch.setattr(picture_cache, "NamedTemporaryFile", fills)
    assert cached("key", lambda: b"drawn", tmp_path) == b"drawn"
    assert list(tmp_path.iterdir()) == []


def test_what_a_killed_build_left_half_written_goes_and_what_another_writes_now_stays(tmp_path: Path) -> None:
    for name, age_s in (("old.new", 7200), ("now.new", 60), ("kept.picture", 7200)):
        (tmp_path / name).write_bytes(b"x")
        told = time.time() - age_s
        os.utime(tmp_path / name, (told, told))
    tidy(tmp_path)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["kept.picture", "now.new"]


def test_pictures_that_were_not_used_for_long_go_first(tmp_path: Path) -> None:
    for number, name in enumerate("abcd"):
        cached(name, lambda: b"picture", tmp_path)
        os.utime(tmp_path / f"{name}.picture", (number, number))
    cached("a", _never, tmp_path)  # used just now
    tidy(tmp_path, most=2)
    assert {file.stem for file in tmp_path.iterdir()} == {"a", "d"}
    assert all(stat.S_ISREG(file.stat().st_mode) for file in tmp_path.iterdir())


def test_the_cache_lies_where_the_system_says(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """XDG Base Directory Specification, version 0.8: $XDG_CACHE_HOME, if absolute; else $HOME/.cache."""
    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    assert cache_folder() == tmp_path / "swardcast"
    monkeypatch.setenv("XDG_CACHE_HOME", "relative")
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    assert cache_folder() == tmp_path / "home" / ".cache" / "swardcast"
