"""What a notice says when a product was used, work is held up, a temporary green is in play or own words grow old."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.errors import InputNeedsAttention
from swardcast.language.house_phrases import with_house_phrases
from swardcast.notices.notice import Notice, text_of
from swardcast.records.plan import Part
from tests.notices.as_text import notice_as_text
from tests.notices.one_notice import notice_of
from tests.outlook.small_club import SmallClub

SPRAY = (
    "plant protection: {product: a treatment against leaf disease, re-entry: keep off until the spray has dried, "
    "signs: at each green, label read by: the office, label read on: 2027-05-03}"
)


def _part(notice: Notice, part: Part) -> str:
    said = [
        *(
            text_of(paragraph)
            for section in notice.sections
            if section.part is part
            for paragraph in section.paragraphs
        ),
        *(point.text for section in notice.sections if section.part is part for point in section.points),
    ]
    return " ".join(said)


def test_the_words_of_a_label_stay_on_the_notice_after_the_work(tmp_path: Path) -> None:
    """The program cannot know how long a label counts, so its words go on standing there."""
    club = SmallClub(tmp_path)
    club.job("spray", "05-10", SPRAY, surfaces="greens 1-3", more="    follow up: 4 to 6 hours\n")
    for day in ("05-05", "05-10", "05-12", "06-20"):
        if day == "05-12":
            club.done("spray", "05-10")
        notice = notice_of(club, day)
        assert "The label says: keep off until the spray has dried." in _part(notice, Part.TAKE_CARE), day
        assert "The product label counts first" in notice.short_answer, day
    club.log("morning", "05-11", "morning status", "play: {whole course: open}", time="06:00")
    opened = notice_of(club, "06-20")
    assert "The label says: keep off until the spray has dried." in _part(opened, Part.TAKE_CARE)
    assert "Keep well back from machines" not in _part(opened, Part.TAKE_CARE)


def test_held_up_work_has_no_plan_of_days_and_of_what_has_no_hours_the_day_of_the_status_page(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("tine", "06-01", surfaces="greens 1-3", more="    spare days: 9\n")
    club.log("begun", "06-01", "work started", "job: tine", "surfaces: green 1", time="07:00")
    club.log("hold", "06-01", "held up", "job: tine", "because: the machine broke", time="09:00")
    told = notice_as_text(notice_of(club, "06-09"))
    assert "things stand now" not in told
    assert "Work finished: greens 2 and 3: Expected by Thursday 10 June" in told
    assert "Held up, greens 1 to 3: the machine broke." in told


def test_work_that_goes_on_says_what_is_done_and_where_it_goes_on(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("tine", "06-01", surfaces="greens 1-3")
    club.log("first", "06-01", "work done", "job: tine", "surfaces: green 1", time="09:00")
    club.log("second", "06-01", "work started", "job: tine", "surfaces: green 2", time="09:10")
    told = notice_as_text(notice_of(club, "06-01", "10:00"))
    assert "Done so far: Green 1" in told
    assert "Going on now: Green 2" in told


def test_where_a_temporary_green_is_in_play_nobody_is_told_to_play_as_it_lies(tmp_path: Path) -> None:
    """Rule 13.1f (The R&A and USGA, 2019): a wrong green is not played from."""
    club = SmallClub(tmp_path)
    club.job("trees", "06-01", "tree work", surfaces="green 1")
    path = tmp_path / "plan" / "trees.yaml"
    path.write_text(path.read_text().replace("while working: closed", "while working: temporary green"))
    rules = _part(notice_of(club, "05-20"), Part.THE_RULES)
    assert "as it lies" not in rules
    assert "the usual green may be a wrong green (Rule 13.1f)" in rules


def test_own_words_in_place_of_the_day_by_day_and_the_answer_end_when_work_begins(tmp_path: Path) -> None:
    own = "    own words: |\n      ## Instead of short answer\n      All three on Tuesday.\n      ## Instead of day by day\n      A day, no more.\n"
    club = SmallClub(tmp_path)
    club.job("tine", "06-01", surfaces="greens 1-3", more=own)
    before = notice_as_text(notice_of(club, "05-20"))
    assert "All three on Tuesday." in before
    assert "A day, no more." in before
    club.log("begun", "06-01", "work started", "job: tine", "surfaces: green 1", time="07:00")
    after = notice_as_text(notice_of(club, "06-01", "08:00"))
    assert "All three on Tuesday." not in after
    assert "A day, no more." not in after
    assert "Back to normal: likely by" in after


@pytest.mark.parametrize("phrase", ["caution-label", "rules-committee", "label-signs", "answer-label"])
def test_a_club_cannot_say_the_cautions_the_rules_or_the_label_otherwise(phrase: str) -> None:
    with pytest.raises(InputNeedsAttention, match="they can only be added to") as refused:
        with_house_phrases("en-GB", {"phrases/own.ftl": f"{phrase} = Never mind.\n"})
    assert f"line 1: found '{phrase}'" in str(refused.value)


def test_sizes_are_those_of_the_work_as_really_done(tmp_path: Path) -> None:
    """Planned with 12.7 mm tines; the log says 8 mm: pi x 8 x 8 / 4 on 50.8 x 50.8 mm is 50.3 / 2,581 = 1.9 %."""
    club = SmallClub(tmp_path)
    club.job("tine", "06-01")
    club.done("tine", "06-01", "as done:", "  - hollow tining: {diameter: 8 mm, spacing: 50.8 x 50.8 mm, depth: 50 mm}")
    told = " ".join(notice_as_text(notice_of(club, "06-02")).split())
    assert "holes 8 mm wide, 50 mm deep" in told
    assert "1.9 % of the surface" in told


def test_a_label_still_to_be_read_was_not_read(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spray", "05-10", SPRAY, surfaces="greens 1-3", more="    follow up: 4 to 6 hours\n")
    assert "The label is to be read on Monday 3 May by the office." in _part(notice_of(club, "05-02"), Part.TAKE_CARE)
    assert "The label was read on Monday 3 May by the office." in _part(notice_of(club, "05-03"), Part.TAKE_CARE)
