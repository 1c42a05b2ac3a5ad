"""Words are read in the phase of the work for which they were written, and in no other."""

from __future__ import annotations

from pathlib import Path

import pytest
from lxml import html
from markupsafe import Markup

from swardcast.compose import compose_bulletin
from swardcast.language.catalogue import BUILT_IN, built_in
from swardcast.language.voice import Voice, slug_of
from swardcast.notices.notice import Notice, text_of
from swardcast.outlets.html import notice_html
from swardcast.records.operations import Kind
from swardcast.records.plan import Part
from tests.notices.one_notice import notice_of, part_of
from tests.outlook.small_club import SmallClub, moment

OWN_WORDS = "    own words: |\n      Bear with us.\n"
RULE = "    local rules:\n      - {{rule: E-4, decided by: the Committee, from: 2027-06-01, until: 2027-{until}}}\n"


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    return SmallClub(tmp_path)


def _seen(notice: Notice) -> tuple[str, list[str]]:
    """The piece after "Day by day": its heading and its sentences."""
    part = next(place for place, section in enumerate(notice.sections) if section.part is Part.DAY_BY_DAY) + 1
    return notice.sections[part].heading, [point.text for point in notice.sections[part].points]


def _note(club: SmallClub, day: str, words: str, *fields: str) -> None:
    name = club.log(f"note-{day}", day, "note to members", "job: spring", *fields)
    path = club.folder / f"log/2027/{name}.md"
    path.write_text(f"{path.read_text(encoding='utf-8')}{words}\n", encoding="utf-8")


def test_the_opening_words_stand_first_until_the_work_is_done_and_are_folded_then(club: SmallClub) -> None:
    club.job("spring", "06-01", more=OWN_WORDS)
    club.log("begun", "06-01", "work started", "job: spring", time="07:00")
    going_on = notice_of(club, "06-01")
    club.done("spring", "06-02")
    done = notice_of(club, "06-03")
    assert [(one.own_words, one.before_the_work) for one in (going_on, done)] == [
        ("Bear with us.", ""),
        ("", "Bear with us."),
    ]
    page = html.fragment_fromstring(notice_html(done, Voice.english(moment("06-03").date()), "../../"), "div")
    (folded,) = page.xpath(".//details[summary='Before the work']")
    assert "Bear with us." in folded.text_content()
    assert page.text_content().count("Bear with us.") == 1
    assert page[-1] is folded


def test_the_newest_note_stands_first_only_while_it_is_about_how_things_stand(club: SmallClub) -> None:
    """A note of the 30th knows nothing of the work of the 1st; one of the 4th is two weeks old on the 18th."""
    club.job("spring", "06-01")
    _note(club, "05-30", "We start at seven.")
    _note(club, "06-04", "The medal is on.")
    club.done("spring", "06-01")
    first = [
        note.markdown if (note := notice_of(club, day).note) is not None else ""
        for day in ("05-31", "06-03", "06-05", "06-17", "06-19")
    ]
    assert first == ["We start at seven.", "", "The medal is on.", "The medal is on.", ""]


def test_the_note_at_the_head_is_not_said_again_below(club: SmallClub) -> None:
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    _note(club, "06-04", "The medal is on.")
    notice = notice_of(club, "06-05")
    page = notice_html(notice, Voice.english(moment("06-05").date()), "../../")
    assert page.count("The medal is on.") == 1
    assert "The medal is on." not in [event.markdown for event in notice.events]


def test_what_is_seen_at_first_is_read_for_a_week_and_then_what_is_left(club: SmallClub) -> None:
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    in_the_first_week, later = (_seen(notice_of(club, day)) for day in ("06-08", "06-09"))
    assert in_the_first_week[0] == "What you will see"
    assert in_the_first_week[1][-1].startswith("The greens look sandy at first.")
    assert later[0] == "What you see now"
    assert "at first" not in " ".join(later[1]).lower()
    assert later[1][-1].startswith("You may still see some sand")


def test_of_work_that_nobody_reports_on_nothing_is_read_of_the_day_nor_after_a_week_of_what_is_seen_at_first(
    club: SmallClub,
) -> None:
    """Green 1 was done on 1 June; green 2 was begun on the 2nd, was due by the 4th, and nobody said any more."""
    club.job("spring", "06-01", more="    spare days: 2\n")
    club.done("spring", "06-01", "surfaces: green 1")
    club.log("second", "06-02", "work started", "job: spring", "surfaces: green 2", time="07:00")
    told = {day: notice_of(club, day) for day in ("06-02", "06-09", "06-10", "12-06")}
    assert [_seen(notice)[0] for notice in told.values()] == [
        "What you will see",
        "What you will see",
        "What you see now",
        "What you see now",
    ]
    assert "at first" not in " ".join(_seen(told["12-06"])[1]).lower()
    rows = {day: [fact.name for fact in part_of(notice, Part.DAY_BY_DAY).facts] for day, notice in told.items()}
    assert ["On the day" in names for names in rows.values()] == [True, False, False, False]


def test_once_the_work_is_done_the_row_of_the_days_after_is_about_now(club: SmallClub) -> None:
    club.job("spring", "06-01")
    before = [fact.name for fact in part_of(notice_of(club, "05-31"), Part.DAY_BY_DAY).facts]
    club.done("spring", "06-01")
    after = [fact.name for fact in part_of(notice_of(club, "06-03"), Part.DAY_BY_DAY).facts]
    assert ("The days after" in before, "Now" in before) == (True, False)
    assert ("The days after" in after, "Now" in after) == (False, True)


@pytest.mark.parametrize("tag", BUILT_IN)
def test_what_may_still_be_seen_says_nothing_of_the_first_days(tag: str) -> None:
    catalogue = built_in(tag)
    for kind in Kind:
        for phrase in ("still", "week"):
            words = catalogue.say(f"kind-{slug_of(kind)}.{phrase}", {"surface": "green"})
            assert "first cut" not in words, (kind, words)
            assert phrase == "week" or "at first" not in words.lower(), (kind, words)


def test_why_and_what_the_sand_is_for_come_before_the_chart(club: SmallClub) -> None:
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    notice = notice_of(club, "06-03")
    page = notice_html(notice, Voice.english(moment("06-03").date()), "../../", Markup("<figure>chart</figure>"))
    sand = page.index("Sand helps to keep the surface firm")
    assert page.index("Why now") < sand < page.index("<figure>chart") < page.index("In numbers")


@pytest.mark.parametrize(
    ("until", "said"),
    [
        ("06-10", "The rule ends on Thursday 10 June, before all is expected back to normal."),
        ("12-24", ""),
    ],
)
def test_a_local_rule_that_ends_too_early_says_so(club: SmallClub, until: str, said: str) -> None:
    """At 20 C the greens are healed in some three weeks: a rule up to 10 June ends before that, one up to Christmas not."""
    club.job("spring", "06-01", more=RULE.format(until=until))
    club.done("spring", "06-01")
    told = " ".join(text_of(one) for one in part_of(notice_of(club, "06-03"), Part.THE_RULES).paragraphs)
    assert ("The rule ends" in told) == bool(said)
    assert said in told
    if said:
        assert "It is for the Committee to decide whether to go on with it." in told


def test_a_local_rule_that_ends_before_the_last_surface_says_so(club: SmallClub) -> None:
    club.job("spring", "06-01", more=RULE.format(until="06-01"))
    plan = club.folder / "plan/spring.yaml"
    plan.write_text(
        plan.read_text(encoding="utf-8").replace("surfaces a day: 9", "surfaces a day: 1"), encoding="utf-8"
    )
    told = " ".join(text_of(one) for one in part_of(notice_of(club, "05-31"), Part.THE_RULES).paragraphs)
    assert "The rule ends on Tuesday 1 June, before the work is expected to be finished." in told


def test_what_was_seen_is_told_on_the_base_of_the_chart_and_names_both(club: SmallClub) -> None:
    """Half of what was disturbed at first: the event says the share of the surface that the picture has for that day."""
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    club.log("look", "06-05", "observation", "job: spring", "disruption left: 50 %", "how: counted")
    as_of = moment("06-06")
    told = compose_bulletin(club.records(), as_of)
    (notice,) = told.notices
    day_zero = club.recovery("spring", as_of).day_zero
    share = f"{100 * day_zero / 2:.0f}"
    (said,) = (event.sentence for event in notice.events if event.source == "look" and "disturbed" in event.sentence)
    assert said.replace("\u00a0", " ") == (
        f"Greens 1 and 2: {share} % of the surface disturbed (counted: 50 % of the first marks)."
    )


@pytest.mark.parametrize(
    ("surfaces", "done", "where"),
    [
        ("greens 1-2", True, []),  # "Greens 1 and 2 are healing"
        ("greens 1-2", False, ["The work is on greens 1 and 2."]),  # "each green is closed"
        ("green 1", False, []),  # "green 1 is closed"
    ],
)
def test_where_is_left_out_where_the_short_answer_has_said_it(
    club: SmallClub, surfaces: str, done: bool, where: list[str]
) -> None:
    club.job("spring", "06-01", surfaces=surfaces)
    if done:
        club.done("spring", "06-01")
    sections = notice_of(club, "06-03" if done else "05-31").sections
    assert [text_of(one) for part in sections if part.part is Part.WHERE for one in part.paragraphs] == where


def test_a_way_to_ask_is_a_link(club: SmallClub) -> None:
    told = club.folder / "club.yaml"
    contact = "{office: the office, email: office@saltmarsh-ladder.example, telephone: 01632 960000}"
    told.write_text(told.read_text(encoding="utf-8").replace("{office: the office}", contact), encoding="utf-8")
    club.job("spring", "06-01")
    page = notice_html(notice_of(club, "05-31"), Voice.english(moment("05-31").date()), "../../")
    links = html.fragment_fromstring(page, "div").xpath(".//section[contains(@class,'who-decides')]//a/@href")
    assert links == ["mailto:office@saltmarsh-ladder.example", "tel:01632960000"]


def test_long_after_its_end_nobody_is_told_what_is_seen_now(club: SmallClub) -> None:
    """Laid on 1 June and back to normal within four weeks by the club; closed, since no entry opens it: 29 June."""
    ranges = ("reopens after: {from: 1 to 2 weeks", "normal after: {from: 3 to 4 weeks")
    more = "".join(f"    {one}, source: our own experience}}\n" for one in ranges)
    club.job("spring", "06-01", "re-turfing", more=more)
    club.done("spring", "06-01")
    for day, is_told in (("06-29", True), ("06-30", False)):
        notice = notice_of(club, day)
        rows = [fact.name for fact in part_of(notice, Part.DAY_BY_DAY).facts]
        assert ("Now" in rows, "What you see now" in [part.heading for part in notice.sections]) == (is_told, is_told)
        assert "Back to normal" in rows
