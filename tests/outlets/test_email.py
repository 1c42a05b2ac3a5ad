"""E-mails: what mail programs show, the same in HTML and text, as drafts that nobody is sent yet.

Beside each rule its source; where none is named it is common practice of mail programs.
"""

from __future__ import annotations

import base64
import email
import quopri
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from email.message import EmailMessage
from email.policy import default
from pathlib import Path
from zoneinfo import ZoneInfo

import html5lib
import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from lxml import html

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.notices.notice import Notice, Section, Sentence
from swardcast.outlets import email as outlet
from swardcast.outlets.email import LARGEST_BYTES, email_artifacts
from swardcast.outlets.email_content import current_notices, email_of_notice, one_line
from swardcast.outlets.short_addresses import short_addresses
from swardcast.records.plan import Part
from tests.outlets.contrast import contrast
from tests.outlook.small_club import SmallClub, moment

HOSTILE = "<script>alert(1)</script> & \"quoted\" 'too' 🏌️‍♂️ ירוק =?utf-8?q?x=0A?="
ZONE = ZoneInfo("Europe/London")


@pytest.fixture(scope="module")
def files(demo_bulletin: Bulletin) -> dict[str, bytes]:
    return {artifact.path: artifact.data for artifact in email_artifacts(demo_bulletin, drafts=True)}


@pytest.fixture(scope="module")
def pages(files: dict[str, bytes]) -> dict[str, html.HtmlElement]:
    return {path: html.fromstring(data) for path, data in files.items() if path.endswith(".html")}


def _words(text: str) -> str:
    return " ".join(text.split())


def _said(part: str) -> str:
    """A text part without its rules and the marks of its lists."""
    return _words(re.sub(r"^[=-]+$|^\* ", " ", part, flags=re.MULTILINE))


def _draft(data: bytes) -> EmailMessage:
    message = email.message_from_bytes(data, policy=default)
    assert isinstance(message, EmailMessage)
    return message


def _of(bulletin: Bulletin, name: str) -> Notice:
    return next(notice for notice in bulletin.notices if notice.id == name)


def _made_of(notice: Notice, bulletin: Bulletin) -> dict[str, bytes]:
    """The e-mails of a bulletin with this notice alone."""
    alone = replace(bulletin, notices=(notice,))
    return {artifact.path: artifact.data for artifact in email_artifacts(alone, drafts=True)}


def test_each_notice_has_an_email_and_there_is_a_weekly_one(files: dict[str, bytes], demo_bulletin: Bulletin) -> None:
    folders = ["", *(f"notices/{notice.id}/" for notice in demo_bulletin.notices)]
    assert set(files) == {f"{folder}email.{ending}" for folder in folders for ending in ("html", "txt", "eml")}
    without = {artifact.path for artifact in email_artifacts(demo_bulletin)}
    assert without == {path for path in files if not path.endswith(".eml")}


def test_the_html_is_right_by_the_rules_of_browsers(files: dict[str, bytes]) -> None:
    """The parser of the HTML standard, strict: it raises at the first parse error."""
    for path, data in files.items():
        if path.endswith(".html"):
            html5lib.HTMLParser(strict=True).parse(data)


def test_nothing_is_fetched_and_nothing_runs(pages: dict[str, html.HtmlElement]) -> None:
    for path, page in pages.items():
        assert not page.xpath("//script | //img | //iframe | //object | //embed | //form | //*[@src or @background]"), (
            path
        )
        assert not page.xpath("//link[not(@rel='canonical')] | //*[starts-with(name(@*), 'on')]"), path
        styles = " ".join(page.xpath("//style/text() | //@style"))
        assert not re.search(r"url\(|@import|@font-face|expression", styles), path


def test_styles_stand_in_the_elements_and_only_the_dark_ones_apart(pages: dict[str, html.HtmlElement]) -> None:
    for path, page in pages.items():
        (style,) = page.xpath("//style/text()")
        assert "prefers-color-scheme: dark" in style
        unstyled = page.xpath(
            "//body//*[self::p or self::h1 or self::h2 or self::h3 or self::li or self::td][not(@style)]"
        )
        assert not unstyled, path
        assert (
            page.xpath("//meta[@name='color-scheme' or @name='supported-color-schemes']/@content") == ["light dark"] * 2
        )


def test_it_is_600_px_wide_at_most_and_narrower_on_a_phone(pages: dict[str, html.HtmlElement]) -> None:
    for page in pages.values():
        (sheet,) = page.xpath("//table[@class='sheet']")
        assert sheet.get("width") == "600"
        assert {"width: 100%", "max-width: 600px"} <= {rule.strip() for rule in sheet.get("style").split(";")}
        assert {table.get("role") for table in page.xpath("//table")} == {"presentation"}  # of layout: WCAG 2.2, 1.3.1


def test_colours_are_readable_in_light_and_dark_and_where_a_program_turns_only_the_ground(
    files: dict[str, bytes],
) -> None:
    """At least 4.5 to 1: WCAG 2.2, 1.4.3."""
    text = files["email.html"].decode()
    pairs = [
        ("#1f1b16", "#fbf7ec"), ("#5d2b5a", "#fbf7ec"), ("#fffaf0", "#5d2b5a"),
        ("#f4eddf", "#1b1916"), ("#cb91c5", "#1b1916"), ("#fffaf0", "#5d2b5a"),
    ]  # fmt: skip
    for ink, ground in pairs:
        assert ink in text
        assert ground in text
        assert contrast(ink, ground) >= 4.5, (ink, ground)
    assert set(re.findall(r"#[0-9a-f]{6}\b", text)) - {"#a89a7c", "#e6dcc6", "#0f0e0c"} == {
        one for pair in pairs for one in pair
    }


def test_every_link_is_whole_and_leads_to_the_club(pages: dict[str, html.HtmlElement], demo_bulletin: Bulletin) -> None:
    addresses = short_addresses(demo_bulletin)
    for path, page in pages.items():
        links = page.xpath("//a/@href")
        assert all(link.startswith("https://quillhaven.example/") for link in links), path
        if path != "email.html":
            assert addresses[path.split("/")[1]] in links


def test_the_text_says_all_that_the_html_says(files: dict[str, bytes], demo_bulletin: Bulletin) -> None:
    for path, data in files.items():
        if not path.endswith(".html"):
            continue
        text = _said(files[path.replace(".html", ".txt")].decode())
        for block in html.fromstring(data).xpath(
            "//td[not(descendant::table)]//*[self::p or self::h1 or self::h2 or self::h3 or self::li] | //table[@class='fact']//td"
        ):
            words = _words(block.text_content())
            assert words == demo_bulletin.club.name or words in text, (path, words)


def test_lines_of_the_text_are_short_and_addresses_whole(files: dict[str, bytes]) -> None:
    for path, data in files.items():
        if path.endswith(".txt"):
            lines = data.decode().splitlines()
            assert max(map(len, lines)) <= 78, path  # RFC 3676, section 4.2
            assert any(re.search(r"https://quillhaven\.example/$", line) for line in lines)


def test_dates_are_those_of_the_notice(files: dict[str, bytes], demo_bulletin: Bulletin) -> None:
    for notice in demo_bulletin.notices:
        text = _said(files[f"notices/{notice.id}/email.txt"].decode())
        assert _words(notice.short_answer) in text
        for section in notice.sections:
            if section.part is Part.DAY_BY_DAY:
                for fact in section.facts:
                    assert _words(f"{fact.name}: {fact.value[:1].upper()}{fact.value[1:]}") in text


def test_cautions_and_labels_are_never_left_out(files: dict[str, bytes], demo_bulletin: Bulletin) -> None:
    weekly = _said(files["email.txt"].decode())
    current = {notice.id for _, some in current_notices(demo_bulletin) for notice in some}
    for notice in demo_bulletin.notices:
        own = _said(files[f"notices/{notice.id}/email.txt"].decode())
        for section in notice.sections:
            if section.part is Part.TAKE_CARE:
                for point in section.points:
                    assert _words(point.text) in own
                    if notice.id in current:
                        assert weekly.count(_words(point.text)) == 1


def test_competitions_and_their_chances_stand_after_the_dates(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    bulletin = demo_bulletin_at("2027-08-25 12:00")
    files = {artifact.path: artifact.data for artifact in email_artifacts(bulletin)}
    page = _words(html.fromstring(files["notices/greens-renovation-2027/email.html"]).text_content())
    text = _said(files["notices/greens-renovation-2027/email.txt"].decode())
    for said in (page, text):
        assert (
            "Captain's day, Saturday 25 September: About 5 chances in 10 that some greens are still healing from this work"
            in said
        )
        assert said.index("Day by day") < said.index("Competitions and visitors' days") < said.index("The Rules")
    assert "Captain's day" not in _said(files["email.txt"].decode())


def test_opening_words_are_sent_until_the_work_is_done(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    for at, is_there in (("2027-08-25 12:00", True), ("2027-09-14 09:30", False), ("2027-12-06 08:00", False)):
        bulletin = demo_bulletin_at(at)
        notice = _of(bulletin, "greens-renovation-2027")
        assert "looks forward to this week" in (notice.own_words if is_there else notice.before_the_work)
        made = _made_of(notice, bulletin)
        for ending in ("html", "txt"):
            assert ("ask about the autumn medal" in made[f"notices/{notice.id}/email.{ending}"].decode()) is (
                at == "2027-09-14 09:30"
            )
            assert ("looks forward to" in made[f"notices/{notice.id}/email.{ending}"].decode()) is is_there, moment


def test_the_weekly_email_leads_to_the_labels_words_where_they_stand(files: dict[str, bytes]) -> None:
    weekly = _said(files["email.txt"].decode())
    assert "The product label counts first: its words stand below. The whole" not in weekly
    assert re.search(r"counts first: its words stand below\. Plant protection: a treatment", weekly)
    assert "see “Please take care”" not in weekly
    assert "see “Please take care”" in _said(files["notices/greens-leaf-disease-2027/email.txt"].decode())


@pytest.mark.parametrize(
    ("moment", "is_there"),
    [
        pytest.param("2027-08-26 12:00", False, id="not moved yet"),
        pytest.param("2027-08-30 18:00", True, id="postponed on 26 August to 7 September"),
        pytest.param("2027-09-14 09:30", False, id="it has begun"),
    ],
)
def test_the_weekly_email_says_from_which_day_planned_work_was_moved(
    demo_bulletin_at: Callable[[str], Bulletin], moment: str, is_there: bool
) -> None:
    bulletin = demo_bulletin_at(moment)
    made = _made_of(_of(bulletin, "bunkers-resanding-2027"), bulletin)
    for path in ("email.html", "email.txt"):
        assert ("Moved from Monday 30 August." in made[path].decode()) is is_there


def test_the_weekly_email_has_each_current_notice_once(files: dict[str, bytes], demo_bulletin: Bulletin) -> None:
    """By hand from the log: greens and practice green done in August, the latter normal since 13 September; spring work over."""
    text = _said(files["email.txt"].decode())
    there = {notice.id for notice in demo_bulletin.notices if _words(notice.headline) in text}
    over = {"greens-solid-tining-2027", "tees-solid-tining-2027", "greens-verticutting-2027", "fairways-tining-2027"}
    assert {"greens-renovation-2027", "practice-green-renovation-2027", "pipe-14-2028"} <= there
    assert not over & there
    assert text.index("Light sanding of the greens") < text.index("Autumn feed") < text.index("A new water pipe")


def test_without_a_current_notice_the_weekly_email_says_so(demo_bulletin: Bulletin) -> None:
    (page, text) = email_artifacts(replace(demo_bulletin, notices=()))
    assert (page.path, text.path) == ("email.html", "email.txt")
    assert "No work is going on, and none is announced." in text.data.decode()


def test_a_draft_has_both_parts_and_nobody_to_send_it_to(files: dict[str, bytes]) -> None:
    for path, data in files.items():
        if not path.endswith(".eml"):
            continue
        message = _draft(data)
        assert not message.defects
        assert message.get_content_type() == "multipart/alternative"
        assert [part.get_content_type() for part in message.iter_parts()] == [
            "text/plain",
            "text/html",
        ]  # RFC 2046, 5.1.4
        assert set(message.keys()) == {"Subject", "Date", "X-Unsent", "MIME-Version", "Content-Type"}
        assert message["X-Unsent"] == "1"
        plain, rich = message.iter_parts()
        assert plain.get_content().replace("\r\n", "\n") == files[path.replace(".eml", ".txt")].decode()
        assert rich.get_content().replace("\r\n", "\n").rstrip("\n") == files[
            path.replace(".eml", ".html")
        ].decode().rstrip("\n")
        assert max(map(len, data.split(b"\r\n"))) <= 78  # RFC 5322, section 2.1.1
        assert b"\n" not in data.replace(b"\r\n", b"")


def test_the_date_of_a_draft_is_the_moment_that_it_is_about(files: dict[str, bytes]) -> None:
    """When the message was complete (RFC 5322, 3.6.1); the last news of some of these notices is of May."""
    dates = {_draft(data)["Date"].datetime for path, data in files.items() if path.endswith(".eml")}
    assert dates == {datetime(2027, 9, 14, 9, 30, tzinfo=ZONE)}


def test_a_hostile_title_does_no_harm_and_comes_through(demo_bulletin: Bulletin) -> None:
    notice = replace(demo_bulletin.notices[0], headline=HOSTILE)
    made = _made_of(notice, demo_bulletin)
    page = html.fromstring(made[f"notices/{notice.id}/email.html"])
    assert not page.xpath("//script")
    assert page.xpath("//h1")[0].text == HOSTILE
    assert _words(HOSTILE) in _words(made[f"notices/{notice.id}/email.txt"].decode())
    draft = _draft(made[f"notices/{notice.id}/email.eml"])
    assert str(draft["Subject"]) == HOSTILE.replace("=?", "= ?")


@pytest.mark.parametrize(
    "title",
    [
        pytest.param("Greens\r\nBcc: all@quillhaven.example", id="CR LF"),
        pytest.param("Greens\nBcc: all@quillhaven.example\n\n<p>a body</p>", id="a body"),
        pytest.param("Greens\u2028Bcc: a@b.example\x85To: c@d.example\x0bCc: e@f.example", id="other ends of lines"),
        pytest.param("=?utf-8?q?Greens=0D=0ABcc:_all=40quillhaven.example?=", id="encoded by whoever typed it"),
    ],
)
def test_no_title_can_add_a_header(demo_bulletin: Bulletin, title: str) -> None:
    notice = replace(demo_bulletin.notices[0], headline=title)
    message = _draft(_made_of(notice, demo_bulletin)[f"notices/{notice.id}/email.eml"])
    assert set(message.keys()) == {"Subject", "Date", "X-Unsent", "MIME-Version", "Content-Type"}
    assert "Greens" in message["Subject"]
    assert not message.defects


@given(st.text())
@example("=?" * 3)
@example("==??utf-8?q?a?=")
def test_a_subject_is_one_line_whatever_is_typed(typed: str) -> None:
    subject = one_line(typed)
    assert len(f"{subject}x".splitlines()) == 1
    assert "=?" not in subject
    assert subject == " ".join(subject.split())


def test_letters_from_right_to_left_turn_nothing_around_them(demo_bulletin: Bulletin) -> None:
    """What was typed stands in an element of its own (HTML, bdi); a paragraph of the manager's goes by its letters."""
    typed, headline = "חול 2027", "חול 2027, greens 1 to 18: planned for 23 to 25 August"
    notice = _of(demo_bulletin, "greens-light-sanding-2027")
    notice = replace(notice, title=typed, headline=headline, own_words="شكرا (18)!\n\nThank you.")
    made = _made_of(notice, demo_bulletin)
    for path, level in ((f"notices/{notice.id}/email.html", 1), ("email.html", 3)):
        (heading,) = html.fromstring(made[path]).xpath(f"//h{level}[bdi]")
        assert heading.xpath("bdi/text()") == [typed]
        assert heading.text_content() == headline
    page = html.fromstring(made[f"notices/{notice.id}/email.html"])
    assert page.xpath("//p[@dir='auto']/text()") == ["شكرا (18)!", "Thank you."]
    usual = html.fromstring(_made_of(_of(demo_bulletin, "greens-renovation-2027"), demo_bulletin)["email.html"])
    assert not usual.xpath("//*[@dir]")


def _unfolded(data: bytes) -> str:
    """The subject by hand, after RFC 5322, section 2.2.3, and RFC 2047, sections 2 to 6: words of base64 or "Q"."""
    head = data.partition(b"\r\n\r\n")[0].decode("ascii")
    (line,) = re.findall(r"^Subject: ((?:.*\r\n[ \t])*.*)$", head, re.MULTILINE)
    line = re.sub(r"(\?=)[ \t]+(=\?)", r"\1\2", line.rstrip("\r").replace("\r\n", ""))

    def word(match: re.Match[str]) -> str:
        assert len(match[0]) <= 75
        by_base64 = match[2].lower() == "b"
        octets = base64.b64decode(match[3]) if by_base64 else quopri.decodestring(match[3].replace("_", " "))
        return octets.decode(match[1])  # no character is cut in two (section 5)

    return re.sub(r"=\?([^?]*)\?([bqBQ])\?([^?]*)\?=", word, line)


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> Bulletin:
    club = SmallClub(tmp_path_factory.mktemp("planned"))
    club.job("spring", "05-10")
    return compose_bulletin(club.records(), moment("05-01"))


_TYPED = st.text(st.sampled_from("abc é ü 🏌️ ירוק = ? _ , ; : \" ' ( ) < > @ \u00a0 ﷽ 草 \n"), max_size=220)


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(_TYPED | st.text(max_size=200))
@example(
    "Aération des greens à pointes creuses, sablage et sursemis des départs: du 23 au 27 août, retour à la normale"
)
@example("Luknjanje zelenic s praznimi zobmi, rezanje in peskanje: od 23. do 27. avgusta, čas do običajnega stanja")
@example("Hollow tining the greens, tees and approaches " * 4)
@example("x" * 1200)
@example("")
def test_the_subject_of_a_draft_comes_through_whatever_is_typed(planned: Bulletin, typed: str) -> None:
    made = email_of_notice(replace(planned.notices[0], headline=typed), planned)
    data = outlet._draft(made, "<p>short</p>", "short")
    draft, wanted = _draft(data), made.subject
    assert _unfolded(data) == wanted
    assert str(draft["Subject"]) == wanted
    assert not draft.defects
    assert set(draft.keys()) == {"Subject", "Date", "X-Unsent", "MIME-Version", "Content-Type"}
    assert max(map(len, data.split(b"\r\n"))) <= 78


def _weekly(bulletin: Bulletin) -> str:
    return next(one.data for one in email_artifacts(bulletin) if one.path == "email.txt").decode()


def test_work_of_which_no_start_came_stands_last_and_in_a_line_unless_it_has_cautions_of_its_own(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    text = _weekly(demo_bulletin_at("2027-12-06 08:00"))
    coming, silent = text.split("\nTo come\n")[1].split("\nPlanned, no start reported\n")
    assert "Liners and new sand" in coming
    assert "Temporary greens on the two low holes" in coming
    assert "no start reported" not in coming
    assert "https://quillhaven.example/n/hyw78/" not in silent
    line = "Light sanding of the greens: planned from 4 October; no start reported (https"
    assert line in _words(silent)
    assert "This work was planned from Monday 4 October" not in _words(text)
    feed, lines = _weekly(demo_bulletin_at("2027-10-12 08:00")).split("\nIn a line each\n")
    assert "The label says: keep off until the grains are watered in" in _words(feed)
    assert line in _words(lines)


@pytest.mark.parametrize(("day", "is_there"), [("10-14", True), ("10-15", False), ("12-06", False)])
def test_a_week_after_the_days_of_work_that_nobody_reported_its_label_is_only_in_the_notice(
    day: str, is_there: bool, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """The greens were to be fed on 6 October, and the label counts until the 7th: seven days later is the 14th."""
    bulletin = demo_bulletin_at(f"2027-{day} 08:00")
    weekly, signs = _words(_weekly(bulletin)), "Signs: at the 1st tee, the 10th tee and the practice green."
    assert (signs in weekly) is is_there
    assert ("Autumn feed for the greens: planned from 6 October; no start reported (https" in weekly) is not is_there
    assert signs in _words(
        _made_of(_of(bulletin, "greens-autumn-feed-2027"), bulletin)[
            "notices/greens-autumn-feed-2027/email.txt"
        ].decode()
    )


def test_work_that_is_over_is_told_for_a_week(demo_bulletin: Bulletin) -> None:
    ended = _of(demo_bulletin, "practice-green-renovation-2027")

    def names(since: timedelta) -> set[str]:
        later = replace(demo_bulletin, as_of=ended.revised_at + since)
        return {notice.id for _, notices in current_notices(later) for notice in notices}

    assert ended.id in names(timedelta(days=7))
    assert ended.id not in names(timedelta(days=7, minutes=1))


def test_a_link_of_the_managers_has_its_address_and_nothing_for_browsers(demo_bulletin: Bulletin) -> None:
    notice = replace(demo_bulletin.notices[0], own_words="See [us](https://a.example/).")
    page = html.fromstring(_made_of(notice, demo_bulletin)[f"notices/{notice.id}/email.html"])
    (link,) = page.xpath("//a[@href='https://a.example/']")
    assert set(link.attrib) <= {"href", "style"}


def test_links_that_the_manager_typed_are_made_whole(demo_bulletin: Bulletin) -> None:
    words = "See [the plan](../../pages/follow/index.html), [us](https://a.example/) <img src=x onerror=alert(1)>."
    notice = replace(demo_bulletin.notices[0], own_words=words)
    page = html.fromstring(_made_of(notice, demo_bulletin)[f"notices/{notice.id}/email.html"])
    text = _words(_made_of(notice, demo_bulletin)[f"notices/{notice.id}/email.txt"].decode())
    assert "See the plan (https://quillhaven.example/pages/follow/index.html), us (https://a.example/)" in text
    links = page.xpath("//a/@href")
    assert "https://quillhaven.example/pages/follow/index.html" in links
    assert "https://a.example/" in links
    assert not page.xpath("//img")


def test_an_email_that_would_grow_too_large_leaves_the_managers_words_to_the_notice(demo_bulletin: Bulletin) -> None:
    notice = _of(demo_bulletin, "greens-renovation-2027")
    made = _made_of(replace(notice, own_words="All about moss. " * 8_000), demo_bulletin)
    page, text = (made[f"notices/{notice.id}/email.{ending}"].decode() for ending in ("html", "txt"))
    assert len(page.encode()) < LARGEST_BYTES
    assert "moss" not in page + text
    assert _words(notice.short_answer) in _words(text)


def test_every_email_of_the_demo_is_small(files: dict[str, bytes]) -> None:
    assert max(len(data) for data in files.values()) < 100_000


def test_a_label_that_two_jobs_share_stands_beside_both(demo_bulletin: Bulletin) -> None:
    section = Section(
        heading="Please take care",
        part=Part.TAKE_CARE,
        points=(Sentence(text="The label says: keep off.", source="plan"),),
    )
    feed = _of(demo_bulletin, "greens-autumn-feed-2027")
    agent = _of(demo_bulletin, "greens-wetting-agent-2027")
    both = tuple(replace(one, sections=(section,), planned_in="plan") for one in (feed, agent))
    weekly = email_artifacts(replace(demo_bulletin, notices=both))[1]
    assert weekly.path == "email.txt"
    assert weekly.data.decode().count("The label says: keep off.") == 2


def test_the_same_bulletin_gives_the_same_bytes(demo_bulletin: Bulletin, files: dict[str, bytes]) -> None:
    assert {artifact.path: artifact.data for artifact in email_artifacts(demo_bulletin, drafts=True)} == files


def test_the_site_has_what_the_outlet_writes(demo_site: Path, files: dict[str, bytes]) -> None:
    for path, data in files.items():
        if path.endswith(".eml"):
            assert not (demo_site / path).exists()
        else:
            assert (demo_site / path).read_bytes() == data


def test_at_other_moments_text_and_html_still_agree(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    for at in ("2027-08-25 12:00", "2027-12-06 08:00"):
        bulletin = demo_bulletin_at(at)
        files = {artifact.path: artifact.data for artifact in email_artifacts(bulletin)}
        for notice in bulletin.notices:
            page = _words(html.fromstring(files[f"notices/{notice.id}/email.html"]).text_content())
            text = _said(files[f"notices/{notice.id}/email.txt"].decode())
            assert _words(notice.short_answer) in page
            assert _words(notice.short_answer) in text
