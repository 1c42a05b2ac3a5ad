"""The short message: what, until when, and the address, in one message, whatever was typed as the title."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import gsm0338
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets.gsm_alphabet import BASIC, EXTENSION, GsmText, gsm_text, septets
from swardcast.outlets.message import message_artifacts, message_text, messages_of
from swardcast.outlets.short_addresses import short_addresses
from swardcast.outlook.states import Work
from swardcast.outlook.weather_book import WeatherBook
from tests.outlook.small_club import SmallClub, moment

CODEC = gsm0338.Codec()
"""A table of somebody else's making; one octet for each septet, the escape before an extension counted."""
ADDRESS = "https://quillhaven.example/n/7bkm3/"
TITLES = st.text(max_size=200) | st.text(
    st.sampled_from("Greens & <tees> “sand” łŻőç½2×–…🏌️\u200d♂️👍🏽ירוקعشبΠράσινοФарвей芝‰€[]{}~^\u202e\u00a0\t")
)


def _room(text: str) -> int:
    """Septets as the other table has them; it refuses what is not in the alphabet."""
    return len(CODEC.encode(text)[0])


def test_the_alphabet_is_that_of_the_standard() -> None:
    """Compared over the Basic Multilingual Plane with another table; controls and the escape are left out on purpose."""
    theirs = {}
    for code in range(0x10000):
        character = chr(code)
        try:
            theirs[character] = _room(character)
        except UnicodeEncodeError:
            continue
    ours = {character: septets(character) for character in BASIC | EXTENSION}
    assert len(BASIC) == 128 - 3  # line feed, carriage return, escape: 3GPP TS 23.038, section 6.2.1
    assert {one: room for one, room in theirs.items() if one not in "\n\r\f\x1b"} == ours


@pytest.mark.parametrize(
    ("typed", "written"),
    [
        pytest.param("the “front nine” – club’s best…", 'the "front nine" - club\'s best...', id="typographic signs"),
        pytest.param("Café Über Ñandú à Ærø", "Café Über Ñandu à Ærø", id="marks that are there stay, others go"),
        pytest.param("Łódź, Győr, Šibenik, façade", "Lodz, Gyor, Sibenik, facade", id="marks that go"),
        pytest.param("2½ in × 50 mm, 500 m²", "2 1/2 in x 50 mm, 500 m2", id="sizes"),
        pytest.param("Πράσινο", "ΠPAΣINO", id="Greek in capitals"),
        pytest.param("greens 🏌️‍♂️ closed 👍🏽!", "greens closed !", id="pictures are left out"),
        pytest.param("greens\u00a01\u202fto\t6\r\n", "greens 1 to 6", id="blanks"),
        pytest.param("a\u202eb\u200dc\x07d", "abcd", id="what only steers falls away"),
        pytest.param("10 °C", "10 C", id="degrees"),
    ],
)
def test_other_text_is_written_by_the_rules(typed: str, written: str) -> None:
    assert gsm_text(typed) == GsmText(text=written, is_whole=True)


@pytest.mark.parametrize("typed", ["ירוק", "Фарвей", "芝", "₹500", "5‰", "xф"])
def test_a_word_that_cannot_be_written_is_left_out_whole(typed: str) -> None:
    assert gsm_text(f"the {typed} green") == GsmText(text="the green", is_whole=False)


@given(st.text())
def test_whatever_is_written_is_in_the_alphabet(text: str) -> None:
    written = gsm_text(text).text
    assert _room(written) == septets(written)
    assert written == " ".join(written.split())


@given(st.lists(st.text(max_size=250), max_size=5))
@example(["x" * 123, "x"])
@example(["x" * 124, "x"])
@example(["€" * 62, "x"])
def test_a_message_fits_and_is_never_cut(wordings: list[str]) -> None:
    message = message_text(wordings, ADDRESS)
    assert _room(message) <= 160
    assert message.endswith(ADDRESS)
    said = message.removesuffix(ADDRESS).rstrip(" ")
    assert said in {"", *(gsm_text(wording).text for wording in wordings)}


def test_the_fullest_wording_that_fits_is_taken() -> None:
    """160 less the 35 of the address and a blank are 124."""
    assert message_text(["x" * 124, "short"], ADDRESS) == "x" * 124 + f" {ADDRESS}"
    assert message_text(["x" * 125, "short"], ADDRESS) == f"short {ADDRESS}"
    assert message_text(["[" * 63, "short"], ADDRESS) == f"short {ADDRESS}"
    assert message_text(["ירוק and more", "short"], ADDRESS) == f"short {ADDRESS}"
    assert message_text(["ירוק"], ADDRESS) == ADDRESS


@pytest.fixture(scope="module")
def titled(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Bulletin]:
    """A small club with one job, composed anew: its title goes through everything that a title goes through."""
    club = SmallClub(tmp_path_factory.mktemp("message"))
    club.job("spring", "05-10")
    records = club.records()
    job = records.jobs["spring"]
    book = WeatherBook(records.club, records.weather)

    def bulletin(title: str) -> Bulletin:
        book.memories.clear()
        return compose_bulletin(replace(records, jobs={"spring": replace(job, title=title)}), moment("05-01"), book)

    return bulletin


@settings(max_examples=40)  # a bulletin is composed each time
@given(title=TITLES.filter(lambda title: title.strip() != ""))
@example(title="🏌️🏌️🏌️")
@example(title="A" * 150)
@example(title="פתיחת הירוקים")
@example(title="[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]] " * 2)
def test_any_title_gives_a_message(titled: Callable[[str], Bulletin], title: str) -> None:
    bulletin = titled(title)
    (artifact,) = message_artifacts(bulletin)
    message = artifact.data.decode("utf-8")
    address = short_addresses(bulletin)["spring"]
    assert _room(message) <= 160
    said, _, end = message.rpartition(" ")
    assert end == address
    assert said in {gsm_text(wording).text for wording in bulletin.notices[0].in_short}
    assert "planned for Monday 10 May" in said  # or it would read as if it were going on
    assert "allow until" in said
    assert any(map(str.isalnum, said.partition(": planned")[0]))


def test_messages_of_the_demo_say_what_and_until_when(demo_bulletin: Bulletin) -> None:
    messages = {one.path.split("/")[1]: one.data.decode() for one in message_artifacts(demo_bulletin)}
    assert messages.keys() == {notice.id for notice in demo_bulletin.notices}
    assert all(_room(message) <= 160 for message in messages.values())
    sanding = messages["greens-light-sanding-2027"]
    assert sanding.startswith(
        "Light sanding of the greens: planned for 4 to 5 October. Back to normal: likely by 16 October; allow until 23 October. "
    )
    renovation = messages["greens-renovation-2027"]
    assert renovation.startswith(
        "Hollow tining, scarifying and sanding the greens. Back to normal: likely by 1 October; allow until 11 October. "
    )


def test_planned_work_is_never_told_as_if_it_were_going_on(demo_bulletin: Bulletin) -> None:
    for notice in demo_bulletin.notices:
        if demo_bulletin.outlook.jobs[notice.id].work is Work.PLANNED:
            assert all(": planned f" in wording for wording in notice.in_short), notice.in_short


def test_what_falls_away_and_in_which_order(demo_bulletin: Bulletin) -> None:
    """Planned work keeps its days to the last; of work that is done the end counts more."""
    wordings = {notice.id: notice.in_short for notice in demo_bulletin.notices}
    assert wordings["trees-16-2027"] == (
        "Tree work beside the 16th green: planned for 8 to 11 November. Work finished: planned for Thursday 11 November, or by Monday 15 November if the weather holds us up.",
        "Tree work beside the 16th green: planned for 8 to 11 November. Work finished: planned for 11 November, or by 15 November if the weather holds us up.",
        "Tree work, green 16: planned for 8 to 11 November. Work finished: planned for 11 November, or by 15 November if the weather holds us up.",
        "Tree work, green 16: planned for 8 to 11 November.",
        "Tree work: planned for 8 to 11 November. Work finished: planned for 11 November, or by 15 November if the weather holds us up.",
        "Tree work: planned for 8 to 11 November.",
    )
    assert wordings["greens-renovation-2027"] == (
        "Hollow tining, scarifying and sanding the greens: 23 to 27 August. Back to normal: likely by Friday 1 October; allow until Monday 11 October.",
        "Hollow tining, scarifying and sanding the greens: 23 to 27 August. Back to normal: likely by 1 October; allow until 11 October.",
        "Hollow tining, scarifying and sanding the greens. Back to normal: likely by 1 October; allow until 11 October.",
        "Hollow tining, scarifying and sanding the greens. Back to normal: allow until 11 October.",
        "Hollow tining, greens 1 to 18. Back to normal: likely by 1 October; allow until 11 October.",
        "Hollow tining, greens 1 to 18. Back to normal: allow until 11 October.",
        "Hollow tining, greens 1 to 18.",
        "Hollow tining. Back to normal: likely by 1 October; allow until 11 October.",
        "Hollow tining. Back to normal: allow until 11 October.",
        "Hollow tining.",
    )


def test_work_called_off_says_so_in_every_wording(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    club.log("off", "05-03", "change of plan", "job: spring", "change: called off", "because: rain")
    (notice,) = compose_bulletin(club.records(), moment("05-04")).notices
    assert notice.in_short == (
        "Spring work, greens 1 and 2: called off.", "Hollow tining, greens 1 and 2: called off.",
        "Hollow tining: called off.",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("at", "name", "said"),
    [
        pytest.param("2027-08-16 12:00", "practice-green-renovation-2027",
                     "Hollow tining, the practice green: planned for Friday 20 August."
                     " Back to normal: allow until 28 September.", id="no mistake for the greens of the course"),
        pytest.param("2027-09-14 09:30", "greens-leaf-disease-2027",
                     "Treating the three sheltered greens against a leaf disease:"
                     " planned for Monday 25 October, or by Thursday 28 October.", id="some greens by the club's name for them"),
        pytest.param("2027-08-25 12:00", "greens-renovation-2027",
                     "Hollow tining, scarifying and sanding the greens: held up."
                     " Back to normal: likely by 25 September; allow until 6 October.", id="held up"),
        pytest.param("2027-09-14 09:30", "tees-returfing-2027",
                     "New turf on the 5th and 13th tees: under way."
                     " All open again: usually between 29 October and 29 November.", id="under way"),
    ],
)  # fmt: skip
def test_a_message_says_where_before_the_likely_day_and_how_the_work_stands(
    demo_bulletin_at: Callable[[str], Bulletin], at: str, name: str, said: str
) -> None:
    assert messages_of(demo_bulletin_at(at))[name].rpartition(" ")[0] == said


def test_work_under_way_or_held_up_says_so_in_every_wording(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    said = {Work.HELD_UP: ": held up.", Work.UNDER_WAY: ": under way"}
    met = set()
    for moment_of_the_demo in ("2027-08-25 12:00", "2027-09-14 09:30"):
        bulletin = demo_bulletin_at(moment_of_the_demo)
        for notice in bulletin.notices:
            work = bulletin.outlook.jobs[notice.id].work
            if work in said:
                met.add(work)
                assert all(said[work] in wording for wording in notice.in_short), notice.in_short
    assert met == set(said)


def test_messages_lie_beside_their_notices(demo_site: Path, demo_bulletin: Bulletin) -> None:
    for artifact in message_artifacts(demo_bulletin):
        assert (demo_site / artifact.path).read_bytes() == artifact.data
        assert (demo_site / artifact.path).with_name("index.html").is_file()


def test_a_composed_letter_counts_once() -> None:
    assert gsm_text(unicodedata.normalize("NFD", "é")).text == "é"
