"""A job taken out of the plan: its addresses answer with what happened, and nothing else knows it any more."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from icalendar import Calendar
from lxml import html

from swardcast.compose import Bulletin, compose_bulletin, season_of
from swardcast.notices.archive import compose_archive
from swardcast.notices.as_told import NoticesAsTold
from swardcast.outlets.calendar import calendar_artifact
from swardcast.outlets.email import email_artifacts
from swardcast.outlets.feed_content import in_full, in_short
from swardcast.outlets.feeds import FeedPage, feed_pages
from swardcast.outlets.message import messages_of
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.poster import poster_artifacts
from swardcast.outlets.short_addresses import short_addresses
from swardcast.outlets.short_pages import short_page_artifacts
from swardcast.outlets.status_file import status_artifacts
from swardcast.outlets.structured_data import withdrawn_data
from tests.conftest import problems_of
from tests.outlook.small_club import SmallClub, moment

TWICE = "    withdrawn: {at: 2027-04-20 09:00, because: entered twice, instead: spring}\n"


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """Spring work that was entered twice; the second was postponed on 10 April, and withdrawn on the 20th at 9am."""
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    club.job("again", "05-11", announced="04-01", more=TWICE)
    club.log(
        "moved", "04-10", "change of plan", "job: again", "change: postponed to", "starts: 2027-05-12", "because: rain"
    )
    return club


def _at(club: SmallClub, day: str, time: str = "18:00") -> Bulletin:
    return compose_bulletin(club.records(), moment(day, time))


def _words(page: bytes) -> str:
    return " ".join(html.fromstring(page.decode()).text_content().split())


def _events(bulletin: Bulletin, job: str) -> dict[str, tuple[str, int, str]]:
    calendar = Calendar.from_ical(calendar_artifact(bulletin).data)
    return {
        str(event["UID"]).split("@")[0]: (str(event["STATUS"]), int(str(event["SEQUENCE"])), str(event["SUMMARY"]))
        for event in calendar.walk("VEVENT")
        if str(event["UID"]).startswith(f"{job}.")
    }


def test_before_its_moment_it_is_a_notice_like_any_other(club: SmallClub) -> None:
    """To the byte: what was published on a day before is published again when that day is built again."""
    before = _at(club, "04-20", "08:59")
    assert {notice.id for notice in before.notices} == {"spring", "again"}
    assert before.withdrawn == ()
    club.job("again", "05-11", announced="04-01")
    never = _at(club, "04-20", "08:59")
    assert before.items == never.items
    assert calendar_artifact(before).data == calendar_artifact(never).data
    assert email_artifacts(before) == email_artifacts(never)


def test_from_its_moment_it_is_in_no_list(club: SmallClub) -> None:
    bulletin = _at(club, "04-20", "09:00")
    assert {notice.id for notice in bulletin.notices} == {"spring"}
    status, *_ = status_artifacts(bulletin)
    assert [notice["id"] for notice in json.loads(status.data)["notices"]] == ["spring"]
    assert "Again work" not in status.data.decode()
    assert not [job for page in bulletin.why for job in page.jobs if job.notice_id == "again"]
    paths = [one.path for one in (*email_artifacts(bulletin), *poster_artifacts(bulletin, _graph(bulletin)))]
    assert paths
    assert not [path for path in paths if "again" in path]


def _graph(bulletin: Bulletin) -> OpenGraph:
    return OpenGraph(bulletin=bulletin, pictures={})


def test_it_leaves_its_surfaces_as_if_it_had_never_been_planned(club: SmallClub) -> None:
    withdrawn = _at(club, "04-20", "09:00")
    (club.folder / "plan" / "again.yaml").unlink()
    (club.folder / "log" / "2027" / "moved.md").unlink()
    never = _at(club, "04-20", "09:00")
    assert never.notices == withdrawn.notices
    assert status_artifacts(never) == status_artifacts(withdrawn)


def test_its_short_address_stays_and_says_what_happened(club: SmallClub) -> None:
    before, after = _at(club, "04-19"), _at(club, "06-01")
    assert short_addresses(before) == short_addresses(after)
    address = short_addresses(after)["again"]
    pages = {page.path: page.data for page in short_page_artifacts(after, _graph(after))}
    page = pages[f"{address.removeprefix('https://saltmarsh-ladder.example/')}index.html"]
    assert "Again work: notice withdrawn" in _words(page)
    assert (
        "This notice was withdrawn at 9am on Tuesday 20 April: entered twice."
        " Read this notice instead: Spring work. Go to the other notice" in _words(page)
    )
    root = html.fromstring(page.decode())
    assert root.xpath("//meta[@name='robots']/@content") == ["noindex"]
    assert root.xpath("//a/@href") == ["../../notices/spring/index.html"]


def test_the_site_has_its_page_and_no_list_of_it(
    club: SmallClub,
    tmp_path_factory: pytest.TempPathFactory,
    run_swardcast: Callable[..., subprocess.CompletedProcess[str]],
) -> None:
    output = tmp_path_factory.mktemp("built") / "site"
    moment_given = ("--as-of", "2027-04-21 09:30")
    done = run_swardcast("build", "--club", str(club.folder), "--output", str(output), *moment_given)
    assert done.returncode == 0, done.stderr
    folder = output / "notices" / "again"
    assert sorted(path.name for path in folder.iterdir()) == ["index.html", "message.txt"]
    page = html.parse(folder / "index.html").getroot()
    assert page.xpath("//meta[@name='robots']/@content") == ["noindex"]
    assert page.xpath("//h1/text()") == ["Again work: notice withdrawn"]
    assert page.xpath("//meta[@property='og:title']/@content") == ["Again work: notice withdrawn"]
    (data,) = page.xpath("//script[@type='application/ld+json']/text()")
    assert json.loads(data)["eventStatus"] == "https://schema.org/EventCancelled"
    (link,) = page.xpath("//main//a/@href")
    assert (folder / link).resolve() == (output / "notices" / "spring" / "index.html").resolve()
    to_it = [
        path.relative_to(output).as_posix()
        for path in output.rglob("*.html")
        if any("notices/again" in link for link in html.parse(path).getroot().xpath("//a/@href"))
    ]
    assert to_it == ["index.html"]  # the latest news of the feed, which say that it was withdrawn
    news = html.parse(output / "index.html").getroot().xpath("//a[contains(@href, 'notices/again')]")
    assert "This notice was withdrawn" in news[0].text_content()
    mapped = (output / "sitemap.xml").read_text(encoding="utf-8")
    assert "/notices/spring/" in mapped
    assert "/notices/again/" not in mapped


def test_asked_to_explain_it_the_command_says_that_it_was_withdrawn(
    club: SmallClub, run_swardcast: Callable[..., subprocess.CompletedProcess[str]]
) -> None:
    asked = ("explain", "--club", str(club.folder), "--notice", "again", "--as-of")
    done = run_swardcast(*asked, "2027-04-21 09:30")
    assert done.returncode == 1
    assert "the notice 'again' was withdrawn (plan/again.yaml, line 4)" in done.stderr
    assert run_swardcast(*asked, "2027-04-19 09:30").returncode == 0


def test_its_message_says_so(club: SmallClub) -> None:
    bulletin = _at(club, "04-21")
    address = short_addresses(bulletin)["again"]
    assert messages_of(bulletin)["again"] == f"Again work: notice withdrawn. {address}"


def test_its_events_are_cancelled_and_told_anew(club: SmallClub) -> None:
    """A program takes an event again only when its SEQUENCE has risen: RFC 5546, section 2.1.4."""
    before, after = _events(_at(club, "04-19"), "again"), _events(_at(club, "04-21"), "again")
    assert before.keys() == after.keys() != set()
    for name, (status, sequence, summary) in after.items():
        assert status == "CANCELLED", name
        assert sequence > before[name][1], name
        assert summary.startswith("Withdrawn: "), name
    later = _events(_at(club, "06-21"), "again")
    assert {name: told[::2] for name, told in later.items()} == {name: told[::2] for name, told in after.items()}
    assert {status for status, _, _ in _events(_at(club, "04-21"), "spring").values()} == {"TENTATIVE"}


def test_the_feed_gets_one_item_and_keeps_those_before_it(club: SmallClub) -> None:
    def entries(bulletin: Bulletin) -> dict[str, object]:
        page = _current(bulletin)
        return {entry.id: entry for entry in page.entries}

    before, after = entries(_at(club, "04-19")), entries(_at(club, "06-01"))
    assert before.items() <= after.items()
    (new,) = after.keys() - before.keys()
    assert new == "tag:saltmarsh-ladder.example,2027-04-20:again/withdrawn"
    (entry,) = (one for one in _current(_at(club, "06-01")).entries if one.id == new)
    assert entry.title == "This notice was withdrawn: Again work"
    assert entry.link == "https://saltmarsh-ladder.example/notices/again/"
    assert "entered twice. Read this notice instead: Spring work." in entry.summary


def _current(bulletin: Bulletin) -> FeedPage:
    notices = NoticesAsTold(bulletin.records, bulletin.stories)
    pages = feed_pages(bulletin, lambda item: in_full(item, bulletin, notices), lambda item: in_short(item, bulletin))
    return pages[0]


def test_programs_hear_that_the_event_is_cancelled(club: SmallClub) -> None:
    bulletin = _at(club, "04-21")
    (notice,) = bulletin.withdrawn
    data = withdrawn_data(notice, bulletin)
    assert data["eventStatus"] == "https://schema.org/EventCancelled"
    assert data["startDate"] == "2027-05-12"


def test_a_job_withdrawn_before_it_was_announced_was_never_there(club: SmallClub) -> None:
    club.job(
        "premature", "06-01", announced="05-01", more="    withdrawn: {at: 2027-04-30 23:59, because: entered twice}\n"
    )
    for day in ("04-30", "05-01", "06-01"):
        bulletin = _at(club, day)
        said = [bulletin.items, bulletin.calendar, bulletin.addressed, bulletin.remarks, short_addresses(bulletin)]
        assert "premature" not in repr(said).lower()


def test_work_that_was_entered_for_it_goes_to_the_other_job_by_a_correction(club: SmallClub) -> None:
    """Only the log says how play stands: what it said of the greens is not lost with the notice."""
    club.job("again", "04-12", announced="04-01", more=TWICE)
    (club.folder / "log" / "2027" / "moved.md").unlink()
    club.job("spring", "04-12")
    club.done("again", "04-12")
    (said,) = problems_of(club.folder)
    assert said == (
        "log/2027/again-done.md: line 4, job: found work of 'again', withdrawn on 2027-04-20 at 09:00 (plan/again.yaml,"
        " line 13); expected no work for a job that is withdrawn. First correct this entry, with the other job under"
        " 'instead' if the work was done for that."
    )
    club.log(
        "put-right", "04-19", "correction", "corrects: again-done", "instead:",
        "  at: 2027-04-12 10:00", "  kind: work done", "  job: spring",
    )  # fmt: skip
    bulletin = _at(club, "04-21")
    works = bulletin.outlook.jobs["spring"].surfaces
    assert [work.done_at for work in works] == [moment("04-12", "10:00")] * 2


def test_neither_the_season_nor_the_archive_has_it(club: SmallClub) -> None:
    before, after = _at(club, "04-19"), _at(club, "04-21")
    for bulletin, names in ((before, ["again", "spring"]), (after, ["spring"])):
        season = season_of(bulletin)
        assert sorted(one.notice_id for month in season.months for one in month.work) == names
        years = compose_archive(bulletin.notices, bulletin.outlook.jobs, bulletin.voice)
        assert sorted(one.id for year in years for month in year.months for one in month.notices) == names


def test_an_entry_of_a_withdrawn_job_is_an_error_that_says_so(club: SmallClub) -> None:
    club.done("again", "05-12")
    (said,) = problems_of(club.folder)
    assert said == (
        "log/2027/again-done.md: line 4, job: found 'again', withdrawn on 2027-04-20 at 09:00 (plan/again.yaml, line 13);"
        " expected 'spring', which is to be read instead, or a moment before that"
    )


@pytest.mark.parametrize(
    ("instead", "said"),
    [
        ("sprong", "'sprong', which is not in the plan"),
        ("again", "'again', the job itself"),
        ("late", "'late', which is announced only on 2027-05-01"),
        ("gone", "'gone', which is withdrawn itself"),
    ],
)
def test_members_are_only_sent_to_a_notice_that_is_there(club: SmallClub, instead: str, said: str) -> None:
    club.job("late", "06-01", announced="05-01")
    club.job("gone", "06-01", more="    withdrawn: {at: 2027-04-02 09:00, because: entered twice}\n")
    club.job("again", "05-11", announced="04-01", more=TWICE.replace("spring", instead))
    (problem,) = problems_of(club.folder)
    expected = "expected the id of another job, announced by then and not withdrawn, or nothing"
    assert f"line 13, withdrawn.instead: found {said}; {expected}" in problem
    assert problem.endswith("Did you mean 'spring'?") is (instead == "sprong")


def test_a_withdrawal_needs_its_moment_and_its_reason(club: SmallClub) -> None:
    club.job("again", "05-11", announced="04-01", more="    withdrawn: {at: next week, becuase: entered twice}\n")
    said = problems_of(club.folder)
    assert any("job 1, withdrawn.because: found nothing; expected the field 'because'" in one for one in said)
    assert any("Did you mean 'because'?" in one for one in said)
    club.job("again", "05-11", announced="04-01", more="    withdrawn: {at: next week, because: entered twice}\n")
    (problem,) = problems_of(club.folder)
    assert (
        "line 13, job 1, withdrawn.at: found 'next week'; expected a day and time, such as '2027-08-23 07:05'"
        in problem
    )


def test_a_job_that_was_deleted_with_its_entries_left_is_told_to_stay_as_withdrawn(club: SmallClub) -> None:
    (club.folder / "plan" / "again.yaml").unlink()
    (problem,) = problems_of(club.folder)
    assert "found 'again', which is not in the plan; expected one of: spring" in problem
    assert problem.endswith("If you took it out of the plan, put it back with the field 'withdrawn'.")
