"""The end of a job has one name in every place, what nobody entered is said as what should be, and a title that is cut
on a telephone does not say the opposite. The sentences were decided beforehand, as a member would read them."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets.preview import notice_card
from tests.outlook.small_club import SmallClub, moment

FEED = (
    "granular feed: {product: feed for the autumn, re-entry: once it is watered in, signs: at each green,"
    " label read by: AB, label read on: 2027-05-20}"
)


@pytest.fixture
def feed(tmp_path: Path) -> SmallClub:
    """Greens 1 and 2 are fed on Tuesday 1 June, and closed while the label says so."""
    club = SmallClub(tmp_path)
    club.job("feed", "06-01", FEED, more="    follow up: 2 to 4 hours\n")
    return club


def bulletin(club: SmallClub, day: str, time: str = "18:00") -> Bulletin:
    return compose_bulletin(club.records(), moment(day, time))


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def everywhere(told: Bulletin) -> str:
    """All that is said of the only job: notice, message, status page, coming work, feed, preview."""
    (notice,) = told.notices
    card = notice_card(notice, told)
    said = [notice.short_answer, *notice.in_short, notice.work, card.state, f"{card.label}: {card.normal}"]
    said += [f"{fact.name}: {fact.value}" for section in notice.sections for fact in section.facts]
    said += [event.sentence for event in notice.events]
    said += [f"{one.name}: {one.value}" for line in told.status.lines for one in line.dates]
    said += [work.normal for work in told.status.coming]
    said += [part for item in told.items for part in (item.title, *item.sentences)]
    return plain("\n".join(said))


def test_planned_work_that_leaves_nothing_to_heal_is_finished_and_never_back_to_normal(feed: SmallClub) -> None:
    said = everywhere(bulletin(feed, "05-20"))
    assert "back to normal" not in said.lower()
    day = "lanned for Tuesday 1 June, or the day after"
    when, (notice,) = f"Work finished: p{day}", bulletin(feed, "05-20").notices
    assert plain(notice.short_answer).startswith(f"P{day}; each green is closed while we work on it.")
    assert "likely" not in said
    assert "allow until" not in said
    assert plain(notice.in_short[0]) == f"Feed work, greens 1 and 2: p{day}."
    assert [plain(work.normal) for work in bulletin(feed, "05-20").status.coming] == [when]
    assert [plain(said) for said in bulletin(feed, "05-20").items[0].sentences][-1] == f"{when}."


def test_done_but_closed_for_its_label_it_opens_again_and_says_so_once(feed: SmallClub) -> None:
    feed.done("feed", "06-01")
    told = bulletin(feed, "06-01")
    said, when = everywhere(told), "likely by Tuesday 1 June; allow until Wednesday 2 June"
    assert "back to normal" not in said.lower()
    assert plain(told.notices[0].short_answer) == (
        f"The work on greens 1 and 2 is done; open again: {when}."
        " The product label counts first: see “Please take care”."
    )
    assert plain(told.notices[0].in_short[0]) == f"Feed work, greens 1 and 2: Tuesday 1 June. Open again: {when}."
    (line,) = told.status.lines
    assert [(one.name, plain(one.value)) for one in line.dates] == [("Open again", when)]
    assert [plain(part) for part in told.items[0].sentences][-1] == f"Open again: {when}."
    assert f"Open again: L{when[1:]}" in said  # the row of "Day by day", and the preview


def test_once_open_it_is_finished_on_the_day_of_the_work(feed: SmallClub) -> None:
    feed.done("feed", "06-01")
    feed.log("morning", "06-02", "morning status", "play: {whole course: open}", time="06:00")
    told = bulletin(feed, "06-02", "07:30")
    assert plain(told.notices[0].short_answer) == (
        "The work on greens 1 and 2 was finished on Tuesday 1 June."
        " The product label counts first: see “Please take care”."
    )
    assert "Work finished on greens 1 and 2 (Feed work)" in [plain(item.title) for item in told.items]
    assert "back to normal" not in everywhere(told).lower()


def test_nobody_entered_it_as_open_so_no_page_says_that_it_is_or_should_be(feed: SmallClub) -> None:
    """Done on 1 June, to be opened on the 2nd at the latest: a time that has passed opens nothing, whatever the label."""
    feed.done("feed", "06-01")
    told, overdue = bulletin(feed, "06-05"), "was due by Wednesday 2 June; nobody has reported them as open yet"
    (notice,) = told.notices
    assert plain(notice.short_answer) == (
        "The work on greens 1 and 2 is done. They were due to open by Wednesday 2 June; nobody has reported them as open"
        " yet. The product label counts first: see “Please take care”."
    )
    assert not told.outlook.jobs["feed"].work.is_over
    said = everywhere(told)
    assert f"Open again: {overdue}" in said
    assert f"Open again: W{overdue[1:]}" in said
    assert "by now" not in said
    assert "open again by now" not in everywhere(bulletin(feed, "06-30"))


def test_overdue_it_has_no_day(feed: SmallClub) -> None:
    said = everywhere(bulletin(feed, "06-03"))
    assert "Work finished: no day known yet" in said
    assert "back to normal" not in said.lower()


def test_greens_that_heal_by_the_sum_are_told_once_and_as_what_should_be(tmp_path: Path) -> None:
    """Green 1 is done a week before green 2; nobody enters anything after that."""
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01", "surfaces: green 1", name="one")
    club.done("spring", "04-08", "surfaces: green 2", name="two")
    told = bulletin(club, "06-30")
    since = [item for item in told.items if item.at > moment("04-08")]
    over = [item for item in since if "back to normal" in item.title and "new date" not in item.title]
    assert [plain(item.title) for item in over] == ["Greens 1 and 2 should be back to normal by now (Spring work)"]
    assert [plain(part) for part in over[0].sentences] == [
        "Greens 1 and 2 should be back to normal by now. This is worked out; nobody has reported it yet."
    ]
    said = everywhere(told)
    assert "now by now" not in said
    assert "now due now" not in said


def test_of_the_last_green_that_the_manager_calls_normal_the_others_stay_what_should_be(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01", "surfaces: green 1", name="one")
    club.done("spring", "04-20", "surfaces: green 2", name="two")
    club.normal("spring", "05-14", "surfaces: green 2")
    item = bulletin(club, "05-14").items[0]
    assert plain(item.title) == "Green 2 back to normal; green 1 should be back to normal by now (Spring work)"


def test_a_corrected_entry_says_so_in_the_title(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01")
    club.log("wrong", "04-02", "correction", "corrects: spring-done")
    told = bulletin(club, "04-02")
    assert plain(told.items[0].title) == "Corrected: greens 1 and 2 still to do (Spring work)"
    (changed,) = [one for one in told.notices[0].sections if one.heading == "What changed and why"]
    assert changed.paragraphs[0][0].text.startswith("Corrected: ")


def test_a_frost_delay_stands_first_in_the_feed_as_everywhere(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    shut = "play: {greens: open, tees: closed}"
    club.log("shut", "04-01", "morning status", shut, time="06:00")
    frost = "limits: {trolleys: none today, frost delay: {what: nobody on the course, until: 9:30am}}"
    club.log("frost", "04-02", "morning status", "play: {whole course: open}", frost, time="06:00")
    item = bulletin(club, "04-02").items[0]
    assert plain(item.title) == "Frost delay until 9:30am; tee 1 is open; trolleys: none today"
    assert item.sentences[0].startswith("Frost delay")


@pytest.mark.parametrize(
    ("spare", "said"),
    [
        (0, "Planned for Tuesday 1 June"),
        (1, "Planned for Tuesday 1 June, or the day after if the weather holds us up"),
        (3, "Planned for Tuesday 1 June, or by Friday 4 June if the weather holds us up"),
    ],
)
def test_work_of_one_day_says_its_day_and_the_days_kept_for_weather(tmp_path: Path, spare: int, said: str) -> None:
    """A plan is no forecast: nothing of it is likely, and nothing holds 9 times in 10."""
    club = SmallClub(tmp_path)
    club.job("height", "06-01", "rolling", play="open", more=f"    spare days: {spare}\n")
    (notice,) = bulletin(club, "05-20").notices
    assert plain(notice.short_answer) == f"{said}; each green stays open while we work on it."
    (row,) = [fact for section in notice.sections for fact in section.facts if fact.name == "The work"]
    assert plain(row.value) == said
    assert "Work finished" not in plain(str(notice.sections))


def test_a_usual_time_is_never_said_as_a_chance(tmp_path: Path) -> None:
    """3 to 5 weeks after 1 June: 22 June and 6 July. From the first day on only the last one is told."""
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", more="    normal after: {from: 3 to 5 weeks, source: our own experience}\n")
    club.done("spring", "06-01")
    early, late = (bulletin(club, day).notices[0] for day in ("06-03", "06-25"))
    assert "Back to normal: usually between Tuesday 22 June and Tuesday 6 July." in plain(early.short_answer)
    assert "Back to normal: usually by Tuesday 6 July." in plain(late.short_answer)
    for notice in (early, late):
        told = f"{notice.short_answer} {notice.in_short} {[section.facts for section in notice.sections]}"
        assert "ikely" not in told
        assert "llow until" not in told
        assert "9 times in 10" not in told
