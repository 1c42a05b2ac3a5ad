"""What people come for, from the first page to the answer: a member, a visitor, the pro shop, the manager."""

from __future__ import annotations

import re
from io import BytesIO
from urllib.parse import urlsplit

import pytest
from PIL import Image
from playwright.sync_api import Page, expect

from tests.browser.conftest import PHONE, OpenPage
from tests.browser.heard import after_heading, heard
from tests.browser.hosting import Host

RENOVATION = "Hollow tining, scarifying and sanding the greens"
SHORT_ADDRESS = "https://quillhaven.example/n/mpmcb/"
ON_THE_CLIPBOARD = """async () => {
  const [item] = await navigator.clipboard.read();
  return Object.fromEntries(await Promise.all(item.types.map(async (type) => [type, await (await item.getType(type)).text()])));
}"""


def _on_the_clubs_own_host(host: Host, address: str) -> str:
    """The place on the test's host of an address that the club's site has once it is published."""
    assert address.startswith("https://quillhaven.example/"), address
    return host.page(address.removeprefix("https://quillhaven.example/"))


def test_a_member_learns_on_a_phone_what_saturdays_medal_will_be_played_on(
    demo_host: Host, open_page: OpenPage
) -> None:
    page = open_page(viewport=PHONE)
    page.goto(demo_host.address)
    # The answer stands on the first screen.
    answer = page.get_by_role("heading", level=1)
    expect(answer).to_have_text(re.compile("^The course is open, but holes 5 and 13 are played from other markers"))
    expect(answer).to_be_in_viewport(ratio=1)
    expect(page.get_by_text("Reported at 6:50am on Tuesday 14 September")).to_be_in_viewport()
    # What is different: the greens, why, and until when.
    lines = page.get_by_role("region").or_(page.locator("section")).filter(has_text="What is different today").first
    greens = lines.get_by_role("listitem").filter(has_text="Greens 1 to 18")
    assert "Open with care" in greens.inner_text()
    expect(greens).to_contain_text("likely by Friday 1 October; allow until Monday 11 October")
    # The notice, and in it the competition.
    greens.get_by_role("link", name=RENOVATION).click()
    page.wait_for_url("**/notices/greens-renovation-2027/index.html")
    expect(page.get_by_role("heading", level=1)).to_have_text(f"{RENOVATION}: 23 to 27 August")
    fixtures = page.locator("section").filter(has=page.get_by_role("heading", name="Competitions and visitors' days"))
    medal = fixtures.get_by_role("definition").filter(has_text="9 chances in 10")
    assert medal.count() == 1
    name = medal.locator("xpath=preceding-sibling::dt[1]")
    expect(name).to_have_text("Autumn medal, Saturday 18 September")
    assert medal.inner_text() == (
        "About 9 chances in 10 that some greens are still healing from this work, but most putts should roll true."
    )
    # And back to where the visit began.
    page.get_by_role("navigation").get_by_role("link", name="Status").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile("^The course is open"))


def test_a_visitor_who_meets_sand_finds_why_in_two_steps(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page(viewport=PHONE)
    page.goto(demo_host.page("notices/greens-renovation-2027/index.html"))
    why = page.locator("section").filter(has=page.get_by_role("heading", name="Why now", exact=True))
    assert "Topdressing spreads sand over the turf." in why.inner_text()
    why.get_by_role("link", name="topdressing").click()
    page.wait_for_url("**/why/topdressing/index.html")
    assert page.get_by_role("heading", level=1).inner_text() == "Why we do this: topdressing"
    said = page.get_by_role("main").inner_text()
    assert "Sand helps to keep the surface firm, level and dry." in said
    # The club's own work is there, and leads back.
    page.get_by_role("main").get_by_role("link", name=RENOVATION).first.click()
    page.wait_for_url("**/notices/greens-renovation-2027/index.html")


@pytest.fixture
def pro_shop(demo_host: Host, open_page: OpenPage) -> Page:
    page = open_page(viewport=PHONE)
    page.goto(demo_host.address)
    page.get_by_role("navigation").get_by_text("More").click()
    page.get_by_role("link", name="For the pro shop").click()
    page.wait_for_url("**/pages/for-the-pro-shop/index.html")
    return page


def test_the_pro_shop_copies_an_address_that_leads_to_the_notice(demo_host: Host, pro_shop: Page) -> None:
    pro_shop.context.grant_permissions(["clipboard-read", "clipboard-write"])
    part = pro_shop.locator("section").filter(has=pro_shop.get_by_role("heading", name=re.compile(f"^.?{RENOVATION}")))
    button = part.get_by_role("button", name="Copy the address")
    button.click()
    expect(part.get_by_role("status")).to_have_text("Copied.")
    copied = pro_shop.evaluate("navigator.clipboard.readText()")
    assert copied == SHORT_ADDRESS
    pro_shop.goto(_on_the_clubs_own_host(demo_host, copied) + "index.html")
    pro_shop.wait_for_url("**/notices/greens-renovation-2027/index.html")


def test_the_pro_shop_copies_an_email_for_programs_that_take_html_and_for_others(pro_shop: Page) -> None:
    pro_shop.context.grant_permissions(["clipboard-read", "clipboard-write"])
    pro_shop.get_by_role("button", name="Copy the e-mail").first.click()
    expect(pro_shop.get_by_role("status").first).to_have_text("Copied.")
    copied = pro_shop.evaluate(ON_THE_CLIPBOARD)
    assert set(copied) == {"text/html", "text/plain"}
    for text in copied.values():
        assert RENOVATION in text
    assert "<table" in copied["text/html"]
    assert "<" not in copied["text/plain"]


def test_where_the_clipboard_is_denied_the_pro_shop_is_told_and_can_select_the_text(
    demo_host: Host, pro_shop: Page
) -> None:
    session = pro_shop.context.new_cdp_session(pro_shop)
    person = session.send("Target.getTargetInfo")["targetInfo"]["browserContextId"]
    denied = {"permission": {"name": "clipboard-write"}, "setting": "denied", "origin": demo_host.origin}
    session.send("Browser.setPermission", {**denied, "browserContextId": person})
    pro_shop.get_by_role("button", name="Copy the address").first.click()
    told = pro_shop.get_by_role("status").first
    expect(told).to_have_text("This did not work here. Select the words yourself and copy them.")
    address = pro_shop.locator(".sc-copy").filter(has_text=SHORT_ADDRESS).first
    assert address.evaluate("(one) => getComputedStyle(one).userSelect") == "auto"


def test_the_manager_checks_what_others_will_see_before_sharing(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(demo_host.page("notices/greens-renovation-2027/index.html"))
    said = {one.get_attribute("property"): one.get_attribute("content") for one in page.locator("meta[property]").all()}
    # The words of the preview are those of the page.
    expect(page.locator(".sc-short")).to_have_text(str(said["og:description"]))
    headline = " ".join(page.get_by_role("heading", level=1).inner_text().split())
    assert str(said["og:title"]).startswith(headline)
    # The picture is there, as large as it says.
    picture = page.request.get(_on_the_clubs_own_host(demo_host, str(said["og:image"])))
    assert picture.ok
    with Image.open(BytesIO(picture.body())) as drawn:
        assert [str(length) for length in drawn.size] == [said["og:image:width"], said["og:image:height"]]
    assert said["og:image:alt"]
    # The canonical address is the notice's own.
    own = page.locator("link[rel=canonical]").get_attribute("href")
    assert own == said["og:url"] == "https://quillhaven.example/notices/greens-renovation-2027/"
    # The poster says the same, and leads back by the short address.
    page.get_by_role("link", name=re.compile("poster", re.IGNORECASE)).first.click()
    page.wait_for_url("**/notices/greens-renovation-2027/poster.html*")
    assert str(said["og:description"]) in page.locator("main").inner_text()
    assert urlsplit(SHORT_ADDRESS).netloc + urlsplit(SHORT_ADDRESS).path in page.locator("body").inner_text()


def test_a_blind_member_hears_the_state_of_green_7_by_headings_and_a_list(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(demo_host.address)
    whole = heard(page)
    assert whole.name == "Course status: Quillhaven Golf Club"
    headings = [(one.level, one.name) for one in whole.all() if one.role == "heading"]
    assert headings[0][0] == 1
    assert headings[0][1].startswith("The course is open, but holes 5 and 13 are played from other markers")
    assert [name for level, name in headings if level == 2] == [
        "What is different today", "Competitions and visitors' days", "Hole by hole", "What comes next", "Latest news",
    ]  # fmt: skip
    card = after_heading(whole, "Hole by hole", "list")
    holes = [one for one in card.parts if one.role == "listitem"]
    assert len(holes) == 18
    assert holes[6].words() == "Hole 7: green open with care"
    # Nothing of tomorrow's words is spoken today, nor is any sign, whose word stands beside it.
    assert "We do not know yet" not in whole.words()
    assert [one.role for one in whole.all() if one.role in ("image", "img", "graphics-symbol")] == []


def test_a_blind_member_hears_where_each_part_of_a_page_is(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(demo_host.page("notices/greens-renovation-2027/index.html"))
    whole = heard(page)
    landmarks = [one.role for one in whole.all() if one.role in ("banner", "navigation", "main", "contentinfo")]
    assert landmarks == ["banner", "navigation", "main", "contentinfo"]
    first = next(one for one in whole.all() if one.role == "link")
    assert first.name == "Go to the content"
    pictures = [one for one in whole.all() if one.role in ("image", "img")]
    assert pictures
    for picture in pictures:
        assert picture.name
    tables = [one for one in whole.all() if one.role == "table"]
    for table in tables:
        assert table.name
        assert [one for one in table.all() if one.role == "columnheader"]
