"""A built site is read back before it goes live; each thing that can be wrong with it is found."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from swardcast.errors import SwardcastError
from swardcast.verifying.built_site import BuiltSite, Fault
from swardcast.verifying.verify import faults_of, refuse_faults
from tests.conftest import bytes_in

NOTICE = "notices/greens-renovation-2027/index.html"


@pytest.fixture(scope="module")
def files(demo_site: Path) -> dict[str, bytes]:
    return bytes_in(demo_site)


def _faults(files: dict[str, bytes]) -> tuple[Fault, ...]:
    return faults_of(BuiltSite(files))


def _said(files: dict[str, bytes], name: str, old: str, new: str, count: int = -1) -> str:
    """What is said once words of a file are replaced."""
    assert old.encode() in files[name]
    return "\n".join(map(str, _faults({**files, name: files[name].replace(old.encode(), new.encode(), count)})))


def test_nothing_is_wrong_with_the_demo(files: dict[str, bytes]) -> None:
    assert _faults(files) == ()
    assert refuse_faults(files) == ()


def test_a_link_to_a_page_that_is_not_there_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, "index.html", "./notices/greens-renovation-2027/", "./notices/greens-ren/")
    assert said == "index.html: links to './notices/greens-ren/index.html', where nothing is"


def test_a_link_out_of_the_site_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, NOTICE, '"../../pages/about/index.html"', '"../../../pages/about/index.html"')
    assert said == f"{NOTICE}: links to '../../../pages/about/index.html', where nothing is"


def test_a_link_to_a_place_that_its_page_has_not_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, "index.html", 'href="#content"', 'href="#contents"')
    assert said == "index.html: links to '#contents', but index.html has no place 'contents'"


def test_links_from_the_root_are_those_of_the_part_of_the_host_that_is_ours(files: dict[str, bytes]) -> None:
    old, new = b"quillhaven.example/", b"quillhaven.example/course/"
    moved = {name: data if name.endswith(".ics") else data.replace(old, new) for name, data in files.items()}
    page = moved["404.html"].replace(b'href="/', b'href="/course/').replace(b'src="/', b'src="/course/')
    more = b'<a href="/menu/">The menu</a><a href="/course/menu/">No menu</a></body>'
    faults = _faults({**moved, "404.html": page.replace(b"</body>", more)})
    assert [str(one) for one in faults] == ["404.html: links to '/course/menu/', where nothing is"]


def test_a_dead_link_in_typed_words_is_told_and_holds_nothing_back(files: dict[str, bytes]) -> None:
    page = files[NOTICE].replace(b'<div class="sc-own"><p>', b'<div class="sc-own"><p><a href="map.pdf">A map</a> ', 1)
    assert page != files[NOTICE]
    mail = f"{NOTICE.rpartition('/')[0]}/email.html"
    there = b'<a href="https://quillhaven.example/notices/greens-renovation-2027/map.pdf">A map</a></body>'
    told = {**files, NOTICE: page, mail: files[mail].replace(b"</body>", there)}
    assert _faults(told) == ()
    (remark,) = refuse_faults(told)
    assert str(remark) == f"{NOTICE}: words that were typed link to 'map.pdf', where nothing is"
    untyped = {**told, NOTICE: files[NOTICE]}
    assert [fault.file for fault in _faults(untyped)] == [mail]


def test_a_missing_style_sheet_or_script_is_found(files: dict[str, bytes]) -> None:
    left = {name: data for name, data in files.items() if not name.endswith(("swardcast.css", "page.js"))}
    said = {str(fault).split("links to ")[1] for fault in _faults(left) if fault.file == NOTICE}
    assert said == {
        "'../../theme/css/swardcast.css', where nothing is",
        "'../../theme/js/page.js', where nothing is",
    }


def test_a_feed_that_is_cut_off_is_found(files: dict[str, bytes]) -> None:
    for name in ("feeds/status.rss", "feeds/status.atom", "feeds/greens.json"):
        found = _faults({**files, name: files[name][: len(files[name]) // 2]})
        assert any(fault.file == name and fault.says.startswith("cannot be read") for fault in found)


def test_two_items_with_one_id_are_found(files: dict[str, bytes]) -> None:
    feed = json.loads(files["feeds/status.json"])
    feed["items"].append(feed["items"][0])
    found = _faults({**files, "feeds/status.json": json.dumps(feed).encode()})
    assert [str(one) for one in found] == [f"feeds/status.json: two items have the id {feed['items'][0]['id']}"]


def test_an_item_without_a_title_is_found(files: dict[str, bytes]) -> None:
    feed = json.loads(files["feeds/status.json"])
    feed["items"][2]["title"] = " "
    found = _faults({**files, "feeds/status.json": json.dumps(feed).encode()})
    assert [fault.says for fault in found] == [f"an item ({feed['items'][2]['title'] or ''}) has no title"]


def test_an_address_in_a_feed_that_nothing_answers_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, "feeds/status.atom", "/notices/greens-renovation-2027/", "/notices/greens-ren/")
    wanted = "names the address 'https://quillhaven.example/notices/greens-ren/', where nothing is"
    assert said == f"feeds/status.atom: {wanted}"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("END:VCALENDAR\r\n", "", "cannot be read"),
        ("\r\n", "\n", "not ended by CR and LF"),
        ("\r\nUID:greens", "\r\nX-U:greens", "has no UID"),
        ("\r\nDTSTART", "\r\nX-START", "has no DTSTART"),
        ("SUMMARY:", f"SUMMARY:{'x' * 70}", "has a line that is too long"),
    ],
)
def test_a_calendar_that_no_program_would_take_is_found(files: dict[str, bytes], old: str, new: str, says: str) -> None:
    assert says in _said(files, "calendar.ics", old, new)


def test_two_events_with_one_id_are_found(files: dict[str, bytes]) -> None:
    said = _said(files, "calendar.ics", "UID:greens-autumn-feed-2027.work-1@", "UID:one@")
    assert said == ""
    events = files["calendar.ics"].decode().split("BEGIN:VEVENT")
    twice = "BEGIN:VEVENT".join([*events[:2], *events[1:]])
    found = _faults({**files, "calendar.ics": twice.encode()})
    assert [fault.says.split(" the id ")[0] for fault in found] == ["two events have"]


def test_a_status_file_against_its_schema_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, "status.json", '"state": "healing"', '"state": "heeling"', 1)
    assert said.startswith("status.json: $.lines[0].work: ")


def test_another_state_of_play_than_on_the_page_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, "status.json", '"words": "open with care"', '"words": "closed"', 1)
    assert said == "index.html: does not show play on Greens 1 to 18 as status.json has it: 'closed'"


def test_another_sentence_than_on_the_page_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, "status.json", '"sentence": "The course is open,', '"sentence": "The course is shut,')
    assert said.startswith("index.html: does not show the sentence as status.json has it: 'The course is shut,")


def test_a_heading_may_have_the_parts_of_the_sentence_the_other_way_round(files: dict[str, bytes]) -> None:
    """As in a language that says first what is closed."""
    status = json.loads(files["status.json"])
    first, comma, rest = status["sentence"].partition(", ")
    status["sentence"] = f"{rest}{comma}{first}"
    turned = {**files, "status.json": json.dumps(status, ensure_ascii=False).encode()}
    assert [fault for fault in _faults(turned) if "the sentence" in fault.says] == []
    status["sentence"] = f"{rest}{comma}{first} again"
    turned["status.json"] = json.dumps(status, ensure_ascii=False).encode()
    assert len([fault for fault in _faults(turned) if "the sentence" in fault.says]) == 1


def test_another_date_than_on_the_page_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, "status.json", "the last likely by Friday 1 October", "the last likely by Friday 8 October")
    assert said.startswith("index.html: does not show Back to normal of Greens 1 to 18 as status.json has it: ")


def test_another_answer_than_on_the_notice_is_found(files: dict[str, bytes]) -> None:
    status = json.loads(files["status.json"])
    told = next(one for one in status["notices"] if one["id"] == "greens-renovation-2027")
    told["short_answer"] = "The greens are fine."
    found = _faults({**files, "status.json": json.dumps(status, ensure_ascii=False).encode()})
    assert [fault.file for fault in found] == [NOTICE, NOTICE]
    assert found[0].says == "does not show what status.json has as its short_answer: 'The greens are fine.'"
    assert found[1].says.startswith("its data for search engines has another short_answer: 'Greens 1 to 18 are heal")


def test_work_that_only_search_engines_hear_to_be_called_off_is_found(files: dict[str, bytes]) -> None:
    said = _said(files, NOTICE, "schema.org/EventScheduled", "schema.org/EventCancelled")
    assert said == (
        f"{NOTICE}: its data for search engines says https://schema.org/EventCancelled of work that is healing"
    )


def test_an_empty_notice_is_found(files: dict[str, bytes]) -> None:
    head, _ = files[NOTICE].decode().split("<main")
    empty = f'{head}<main id="content"><h1>Greens</h1></main></body></html>'
    says = [fault.says for fault in _faults({**files, NOTICE: empty.encode()}) if fault.file == NOTICE]
    assert says == ["is a notice without words"]
    assert {fault.says for fault in _faults({**files, NOTICE: b""})} == {"is empty", "is a notice without words"}


def test_a_withdrawn_notice_is_short_but_not_empty(files: dict[str, bytes]) -> None:
    """As the catalogue has it: nothing but the headline, when and why it was withdrawn, and where to read on."""
    head, _ = files[NOTICE].decode().split("<main")
    name, headline = "notices/trees-again/index.html", "<h1>Tree work beside the 16th green: notice withdrawn</h1>"
    why = "<p>This notice was withdrawn at 9am on Monday 1 November: entered twice.</p>"
    pages = [f'{head}<main id="content">{words}</main></body></html>' for words in (headline + why, headline)]
    short, empty = ([fault.says for fault in _faults({**files, name: page.encode()})] for page in pages)
    assert "is a notice without words" not in short
    assert "is a notice without words" in empty


def test_a_notice_that_is_told_of_and_not_there_is_found(files: dict[str, bytes]) -> None:
    left = {name: data for name, data in files.items() if name != NOTICE}
    assert f"{NOTICE}: is a notice without words" in set(map(str, _faults(left)))


def test_a_short_address_that_nothing_answers_or_that_leads_elsewhere_is_found(files: dict[str, bytes]) -> None:
    status = json.loads(files["status.json"])
    told = next(one for one in status["notices"] if one["id"] == "greens-renovation-2027")
    short = f"n/{told['short_address'].rstrip('/').rpartition('/')[2]}/index.html"
    left = {name: data for name, data in files.items() if name != short}
    assert f"{NOTICE}: nothing answers its short address {told['short_address']}" in set(map(str, _faults(left)))
    said = _said(files, short, "notices/greens-renovation-2027/", "notices/greens-verticutting-2027/")
    assert said == f"{short}: does not lead to {NOTICE}"


def test_all_faults_are_told_at_once_up_to_twenty(files: dict[str, bytes]) -> None:
    broken = {name: data for name, data in files.items() if name != "theme/css/swardcast.css"}
    with pytest.raises(SwardcastError) as error:
        refuse_faults(broken)
    lines = str(error.value).splitlines()
    assert lines[0] == (
        "The site was built, but does not hold together; nothing was published, the last good site stays."
    )
    assert len(lines) == 22
    assert lines[-1].startswith("  and ")
