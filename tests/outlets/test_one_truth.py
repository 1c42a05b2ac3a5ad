"""One bulletin, many outlets: at ten moments of the demo each of them says the same of the same notice."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from datetime import date, timedelta

import pytest
from icalendar import Calendar
from lxml import html

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.notices.notice import Notice
from swardcast.outlets.calendar import calendar_artifact, uid_of
from swardcast.outlets.email import email_artifacts
from swardcast.outlets.html import notice_html
from swardcast.outlets.message import messages_of
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.poster import poster_artifacts
from swardcast.outlets.preview import notice_card
from swardcast.outlets.short_pages import short_page_artifacts
from swardcast.outlets.status_file import status_artifacts
from swardcast.outlets.structured_data import notice_data
from swardcast.outlook.states import Work
from tests.outlets.one_truth import OPENED_BY_TIME, days_against_the_notice, opened_by_a_time, plain, said_of

_MOMENTS = ("04-30", "05-05", "06-08", "07-16", "08-20", "08-24", "08-25", "08-27", "09-06", "09-14")
_DAY = re.compile(
    r"\b\d{1,2} (?:January|February|March|April|May|June|July|August|September|October|November|December)\b"
)


@pytest.fixture(scope="module", params=_MOMENTS)
def bulletin(request: pytest.FixtureRequest, demo_bulletin_at: Callable[[str], Bulletin]) -> Bulletin:
    """The demo at 6pm of each of these days; the whole season need not be composed for them."""
    return demo_bulletin_at(f"2027-{request.param} 18:00")


def _shown(artifact: Artifact) -> str:
    return plain(html.fromstring(artifact.data.decode()).text_content())


def _by_path(artifacts: tuple[Artifact, ...]) -> dict[str, Artifact]:
    return {artifact.path: artifact for artifact in artifacts}


def test_page_mail_poster_and_short_address_show_the_same_headline_and_answer(bulletin: Bulletin) -> None:
    graph = OpenGraph(bulletin=bulletin, pictures={})
    mails = _by_path(email_artifacts(bulletin))
    posters = _by_path(poster_artifacts(bulletin, graph))
    short = " ".join(_shown(page) for page in short_page_artifacts(bulletin, graph))
    for notice in bulletin.notices:
        headline, answer = plain(notice.headline), plain(notice.short_answer)
        assert answer in plain(html.fromstring(notice_html(notice, bulletin.voice, "../../")).text_content())
        assert headline in short
        assert answer in short
        folder = f"notices/{notice.id}"
        told = [plain(mails[f"{folder}/email.txt"].data.decode()), _shown(mails[f"{folder}/email.html"])]
        for shown in (*told, _shown(posters[f"{folder}/poster.html"])):
            assert headline in shown, notice.id
            assert answer in shown, notice.id


def test_the_status_file_and_the_pages_data_have_the_notices_state_and_words(bulletin: Bulletin) -> None:
    status = {one["id"]: one for one in json.loads(status_artifacts(bulletin)[0].data)["notices"]}
    graph = OpenGraph(bulletin=bulletin, pictures={})
    current = {job for job, outlook in bulletin.outlook.jobs.items() if outlook.work is not Work.BACK_TO_NORMAL}
    assert current <= set(status)
    for notice in bulletin.notices:
        work = bulletin.outlook.jobs[notice.id].work
        data = notice_data(notice, bulletin, graph)
        assert (data["name"], data["description"]) == (notice.headline, notice.short_answer)
        assert str(data["eventStatus"]).endswith("EventCancelled") is (work is Work.CALLED_OFF)
        if notice.id in status:
            told = status[notice.id]
            assert (told["headline"], told["short_answer"]) == (notice.headline, notice.short_answer)
            assert told["state"]["words"] == notice.work
            assert told["revision"] == notice.revision


def _days_of(notice: Notice) -> set[str]:
    said = [notice.headline, notice.short_answer, notice.normal, notice.when]
    said += [fact.value for section in notice.sections for fact in section.facts]
    days = set(_DAY.findall(" ".join(said)))
    spans = re.findall(r"\b(\d{1,2}) to \d{1,2} (\w+)", " ".join(said))
    return days | {f"{day} {month}" for day, month in spans}


def test_every_day_in_a_short_message_is_a_day_of_its_notice(bulletin: Bulletin) -> None:
    messages = messages_of(bulletin)
    assert set(messages) == {notice.id for notice in bulletin.notices}
    for notice in bulletin.notices:
        assert set(_DAY.findall(messages[notice.id])) <= _days_of(notice), (messages[notice.id], notice.id)


def test_the_calendar_heals_until_the_day_that_the_notice_allows_for(bulletin: Bulletin) -> None:
    """An all-day event ends on the day before its DTEND (RFC 5545, section 3.6.1)."""
    calendar = Calendar.from_ical(calendar_artifact(bulletin).data)
    events = {str(event["UID"]): event for event in calendar.walk("VEVENT")}
    met = 0
    for name, story in ((notice.id, bulletin.outlook.jobs[notice.id]) for notice in bulletin.notices):
        healing = events.get(uid_of(f"{name}.healing", bulletin.club.site))
        if healing is None or healing["STATUS"] != "TENTATIVE":
            continue
        notice = next(one for one in bulletin.notices if one.id == name)
        ends = healing.decoded("DTEND")
        assert isinstance(ends, date)
        last = ends - timedelta(days=1)
        if story.work is Work.HEALING and "allow until" in notice.normal:
            assert notice.normal.endswith(bulletin.voice.day(last)), (name, notice.normal, last)
            met += 1
    assert met or not any(
        job.work is Work.HEALING and job.job.normal_after is None for job in bulletin.outlook.jobs.values()
    )


def test_no_day_to_come_stands_in_the_calendar_that_the_notice_does_not_tell(evenings: dict[date, Bulletin]) -> None:
    found = [one for bulletin in evenings.values() for one in days_against_the_notice(bulletin)]
    assert found == []


@pytest.mark.parametrize("moment", ["2027-10-12 09:30", "2027-11-10 18:00", "2027-11-16 08:00", "2027-12-06 08:00"])
def test_nor_when_nothing_is_entered_any_more(demo_bulletin_at: Callable[[str], Bulletin], moment: str) -> None:
    assert days_against_the_notice(demo_bulletin_at(moment)) == []


def test_what_the_status_page_does_not_call_open_no_outlet_says_to_be_open_by_now(
    evenings: dict[date, Bulletin],
) -> None:
    assert [one for bulletin in evenings.values() for one in opened_by_a_time(bulletin)] == []


@pytest.mark.parametrize("moment", ["2027-11-16 08:00", "2027-11-19 18:00", "2027-12-06 08:00", "2028-07-01 08:00"])
def test_a_day_to_open_that_has_passed_opens_nothing_on_any_page(
    demo_bulletin_at: Callable[[str], Bulletin], moment: str
) -> None:
    bulletin = demo_bulletin_at(moment)
    assert opened_by_a_time(bulletin) == []
    graph = OpenGraph(bulletin=bulletin, pictures={})
    pages = (*email_artifacts(bulletin), *poster_artifacts(bulletin, graph), *short_page_artifacts(bulletin, graph))
    for page in pages:
        if page.path.endswith((".html", ".txt")):
            shown = _shown(page) if page.path.endswith(".html") else plain(page.data.decode())
            assert not OPENED_BY_TIME.search(shown), page.path


def test_overdue_tees_are_told_alike_on_the_status_page_the_notice_the_mail_and_the_poster(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Laid by 17 September, closed for 6 to 10 weeks by the plan: 26 November at the latest; no entry opens them."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    by, nobody = "due by Friday 26 November", "nobody has reported them as open yet"
    (line,) = (line for line in bulletin.status.lines if line.where == "Tees 5 and 13")
    assert plain(line.dates[0].value) == f"was {by}; {nobody}"
    answer = f"They were due to open by Friday 26 November; {nobody}."
    notice = next(one for one in bulletin.notices if one.id == "tees-returfing-2027")
    assert answer in plain(notice.short_answer)
    mails = _by_path(email_artifacts(bulletin))
    posters = _by_path(poster_artifacts(bulletin, OpenGraph(bulletin=bulletin, pictures={})))
    folder = f"notices/{notice.id}"
    assert answer in plain(mails[f"{folder}/email.txt"].data.decode())
    assert answer in _shown(posters[f"{folder}/poster.html"])


_MADE_AT = re.compile(r"8am on \w+ \d{1,2} \w+(?: 2027)?")  # the moment for which a mail or a poster says that it holds


def _said_everywhere(bulletin: Bulletin, notice: Notice) -> list[str]:
    """Every word of a notice on the page, in lists, the message, the mail, the poster, the status file and the calendar."""
    graph = OpenGraph(bulletin=bulletin, pictures={})
    folder = f"notices/{notice.id}"
    mails, posters = _by_path(email_artifacts(bulletin)), _by_path(poster_artifacts(bulletin, graph))
    status = json.loads(status_artifacts(bulletin)[0].data)
    lines = [line for line in status["lines"] if line["notice"] == notice.id]
    events = [(event.id, event.summary, event.span) for event in bulletin.calendar if event.notice_id == notice.id]
    said = [*map(plain, said_of(notice, bulletin)), plain(mails[f"{folder}/email.txt"].data.decode())]
    said += [_shown(posters[f"{folder}/poster.html"]), str(lines), str(events)]
    return [_MADE_AT.sub("", one) for one in (*said, str(notice_data(notice, bulletin, graph)["name"]))]


def test_what_nobody_reports_on_says_the_same_on_every_day_of_december(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """The last entry on any work is of 20 September: whatever moved between two weeks of December would be made up."""
    told: list[dict[str, list[str]]] = []
    for moment in ("2027-11-30 08:00", "2027-12-06 08:00"):
        bulletin = demo_bulletin_at(moment)
        quiet = [
            notice
            for notice in bulletin.notices
            if (job := bulletin.outlook.jobs[notice.id]).unreported is not None
            or (job.work is Work.PLANNED and job.starts < date(2027, 11, 29))
        ]
        told.append({notice.id: _said_everywhere(bulletin, notice) for notice in quiet})
    assert "bunkers-resanding-2027" in told[0]
    assert len(told[0]) == 11
    assert told[0] == told[1]


def test_bunkers_that_nobody_reports_on_are_told_alike_on_the_notice_the_mail_the_poster_and_the_message(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """After 15 September a bunker a day, on the 16th and the 17th, with two working days to spare: Tuesday 21."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    notice = next(one for one in bulletin.notices if one.id == "bunkers-resanding-2027")
    answer = "2 bunkers were due to be finished by Tuesday 21 September; nobody has reported them as finished yet."
    mails = _by_path(email_artifacts(bulletin))
    posters = _by_path(poster_artifacts(bulletin, OpenGraph(bulletin=bulletin, pictures={})))
    folder = f"notices/{notice.id}"
    shown = [
        plain(notice.short_answer),
        plain(mails[f"{folder}/email.txt"].data.decode()),
        _shown(posters[f"{folder}/poster.html"]),
    ]
    line = next(line for line in bulletin.status.lines if line.notice_id == notice.id)
    assert plain(line.dates[-1].value) == "usually some time from March to September 2028, as last told"
    for said in shown:
        assert answer in said
        assert "some time from March to September 2028, as last told" in said
        assert "Work is going on" not in said
        assert "as things stand now" not in said
    assert "2 of 6 bunkers: no report since 15 September" in plain(messages_of(bulletin)[notice.id])
    assert "no report since 15 September" in plain(notice.headline)


def test_the_picture_of_new_turf_that_nobody_opened_says_so_as_its_notice_does(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """The turf of tees 5 and 13 takes until 12 May at most."""
    bulletin = demo_bulletin_at("2028-07-01 08:00")
    notice = next(one for one in bulletin.notices if one.id == "tees-returfing-2027")
    assert notice.work == "not reported as open"
    assert notice_card(notice, bulletin).state.endswith("ot reported as open")


def test_greens_that_nobody_called_normal_are_not_listed_as_back_to_normal(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Greens 1 to 11 were called so on 20 September; for 12 to 18 nothing was entered, 11 October being the last day."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    notice = next(one for one in bulletin.notices if one.id == "greens-renovation-2027")
    assert notice_card(notice, bulletin).state == "Should be back to normal"
    assert [one.id for one in bulletin.notices if one.is_over_by_sum] == [notice.id]  # the others are over
    assert plain(notice.short_answer) == (
        "The work is over. Greens 1 to 11 were called back to normal on Monday 20 September. Greens 12 to"
        " 18 were due back by Monday 11 October; nobody has reported them back to normal."
    )


def test_a_notice_of_work_held_up_has_every_surface_still_to_do_and_the_day_of_the_status_page(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    bulletin = demo_bulletin_at("2027-08-25 12:00")
    notice = next(one for one in bulletin.notices if one.id == "greens-renovation-2027")
    rows = {plain(fact.name): plain(fact.value) for section in notice.sections for fact in section.facts}
    (line,) = (line for line in bulletin.status.lines if line.where == "Greens 13 to 18")
    assert line.dates[0].name == "Work finished"
    assert rows["Work finished: greens 13 to 18"].lower() == plain(line.dates[0].value).lower()
    assert rows["Still to do"] == "Greens 13 to 18"
    assert plain(notice.short_answer).startswith(
        "Work on greens 12 to 18 is held up; hole 12 plays to a temporary green. Back to normal: likely by"
    )
    assert rows["Half done"] == "Green 12"
    assert rows["Why it is held up"].startswith("Heavy rain; the greens are too soft for the machines")
