"""The page for the pro shop: each current notice, with everything that is pasted, whole without a script."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from dataclasses import replace
from email import message_from_bytes
from pathlib import Path

from lxml import html

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets.email_content import current_notices
from swardcast.outlets.message import messages_of
from swardcast.outlets.pro_shop import pro_shop_html
from swardcast.outlets.short_addresses import short_addresses
from tests.outlook.small_club import SmallClub, moment


def _words(text: str) -> str:
    return " ".join(text.split())


def test_the_page_has_each_current_notice_with_what_is_pasted(demo_site: Path, demo_bulletin: Bulletin) -> None:
    page = demo_site / "pages" / "for-the-pro-shop" / "index.html"
    root = html.parse(page).getroot()
    addresses, messages = short_addresses(demo_bulletin), messages_of(demo_bulletin)
    current = [notice for _, some in current_notices(demo_bulletin) for notice in some]
    assert [_words(heading.text_content()) for heading in root.xpath("//h2")][1:] == [one.headline for one in current]
    for notice in current:
        for what, text in (
            ("address", addresses[notice.id]),
            ("subject", notice.headline),
            ("message", messages[notice.id]),
        ):
            (shown,) = root.xpath(f"//*[@id='{notice.id}-{what}']")
            assert shown.text_content() == text
        for ending in ("html", "txt"):
            link = f"../../notices/{notice.id}/email.{ending}"
            assert root.xpath(f"//a[@href='{link}']")
            assert (page.parent / link).is_file()
    assert root.xpath("//a[@href='../../email.html']")
    assert messages[current[0].id] == (demo_site / "notices" / current[0].id / "message.txt").read_text("utf-8")


def test_buttons_stay_hidden_until_a_script_can_copy(demo_site: Path) -> None:
    root = html.parse(demo_site / "pages" / "for-the-pro-shop" / "index.html").getroot()
    buttons = root.xpath("//button")
    assert len(buttons) > 10
    assert all(button.get("hidden") is not None and button.get("type") == "button" for button in buttons)
    for button in buttons:
        if target := button.get("data-copy"):
            assert len(root.xpath(f"//*[@id='{target}']")) == 1
    assert root.xpath("//script/@src") == ["../../theme/js/page.js", "../../theme/js/copy.js"]
    assert (demo_site / "theme" / "js" / "copy.js").is_file()
    assert len(set(root.xpath("//@id"))) == len(root.xpath("//@id"))


def test_the_menu_leads_to_it(demo_site: Path) -> None:
    root = html.parse(demo_site / "index.html").getroot()
    assert "pages/for-the-pro-shop/index.html" in [link.removeprefix("./") for link in root.xpath("//nav//a/@href")]


def test_drafts_are_offered_where_there_are_some(demo_bulletin: Bulletin) -> None:
    messages = messages_of(demo_bulletin)
    for drafts in (True, False):
        said = html.fromstring(pro_shop_html(demo_bulletin, messages, "../../", drafts=drafts))
        assert bool(said.xpath("//a[@href='../../email.eml']")) is drafts


def test_a_hostile_title_does_no_harm(demo_bulletin: Bulletin) -> None:
    (_, (first, *_)), *_ = current_notices(demo_bulletin)
    hostile = replace(first, headline="<script>alert(1)</script> & \"quoted\" 'too' 🏌️ ירוק")
    bulletin = replace(demo_bulletin, notices=(hostile,))
    root = html.fromstring(pro_shop_html(bulletin, messages_of(demo_bulletin), "", drafts=False))
    assert not root.xpath("//script | //*[@*[starts-with(name(), 'on')]]")
    assert root.xpath("//h2")[1].text == hostile.headline


def test_without_a_current_notice_the_page_says_so(demo_bulletin: Bulletin) -> None:
    page = pro_shop_html(replace(demo_bulletin, notices=()), {}, "", drafts=False)
    assert "There is no current notice." in html.fromstring(page).text_content()


def test_what_says_nothing_new_has_no_text_and_is_named_with_its_notice(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """By 6 December nobody has reported on the work of October and November; that of 6 December is due today."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    root = html.fromstring(pro_shop_html(bulletin, messages_of(bulletin), "../../", drafts=False))
    (last,) = root.xpath("//section[h2='Nothing new to send']")
    assert last.xpath("string(p)") == "There is nothing to send about this work until there is a new report."
    links = last.xpath(".//a/@href")
    assert "../../notices/greens-light-sanding-2027/index.html" in links
    assert "../../notices/bunkers-resanding-2027/index.html" in links  # the last of it was told on 18 September
    assert not last.xpath(".//button | .//iframe")
    texts = [one.text_content() for one in root.xpath("//*[contains(@id, '-message')]")]
    assert any("Bunker lining, 2 bunkers: planned for 6 to 15 December" in text for text in texts)
    assert not [text for text in texts if "no date until the work is done" in text or "no day known yet" in text]


def test_what_was_postponed_this_week_is_still_worth_a_text(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("tree", "05-10", "tree work", surfaces="tee 1")
    club.log("off", "05-08", "change of plan", "job: tree", "change: postponed", "because: the climber is ill")

    def texts(day: str) -> list[str]:
        bulletin = compose_bulletin(club.records(), moment(day))
        root = html.fromstring(pro_shop_html(bulletin, messages_of(bulletin), "", drafts=False))
        return [text.text_content() for text in root.xpath("//*[contains(@id, '-message')]")]

    assert len(texts("05-12")) == 1
    assert texts("05-16") == []


def test_build_writes_drafts_when_it_is_told_to(
    run_swardcast: Callable[..., subprocess.CompletedProcess[str]], tmp_path: Path
) -> None:
    club, output = SmallClub(tmp_path / "club"), tmp_path / "site"
    club.job("cores", "09-20")
    arguments = ("--club", str(club.folder), "--output", str(output), "--as-of", "2027-09-14 09:30", "--eml")
    done = run_swardcast("build", *arguments)
    assert done.returncode == 0, done.stderr
    drafts = sorted(path.relative_to(output).as_posix() for path in output.rglob("*.eml"))
    assert drafts == ["email.eml", "notices/cores/email.eml"]
    assert message_from_bytes((output / "email.eml").read_bytes())["X-Unsent"] == "1"
    page = output / "pages" / "for-the-pro-shop" / "index.html"
    links = [link for link in html.parse(page).getroot().xpath("//a/@href") if link.endswith(".eml")]
    assert sorted((page.parent / link).resolve() for link in links) == sorted(output.resolve().rglob("*.eml"))
