"""A day and its month, a number and its sign: which blanks of a page do not break."""

from __future__ import annotations

import re
from datetime import date

import pytest

from swardcast.language.catalogue import built_in
from swardcast.language.voice import Voice
from swardcast.outlets.kept_together import kept_together

BRITISH = Voice(catalogue=built_in("en-GB"), near=date(2027, 9, 14))
AMERICAN = Voice(catalogue=built_in("en-US"), near=date(2027, 9, 14))


def _shown(page: str, voice: Voice = BRITISH) -> str:
    return kept_together(page, voice).replace("\u00a0", "_")


@pytest.mark.parametrize(
    ("voice", "words", "kept"),
    [
        (BRITISH, "by Friday 1 October; allow until 11 October.", "by Friday 1_October; allow until 11_October."),
        (BRITISH, "from 17 February 2028, 23 to 27 August", "from 17_February 2028, 23 to 27_August"),
        (AMERICAN, "Friday, October 1, at 2:30 PM or 3 PM", "Friday, October_1, at 2:30_PM or 3_PM"),
        (AMERICAN, "some time from March to May 2028", "some time from March to May 2028"),
        (BRITISH, "2.1 % of it, below 10 °C, 13 mm wide", "2.1_% of it, below 10_°C, 13_mm wide"),
        (BRITISH, "about 9 chances in 10 that 18 mayors marched", "about 9 chances in 10 that 18 mayors marched"),
    ],
)
def test_a_day_keeps_its_month_and_a_number_its_sign(voice: Voice, words: str, kept: str) -> None:
    assert _shown(f"<p>{words}</p>", voice) == f"<p>{kept}</p>"


@pytest.mark.parametrize(
    "left",
    [
        '<a href="x" title="1 October">a day</a>',
        "<table><tr><td>Friday 1 October</td></tr></table>",
        '<svg><text>1 October</text></svg> <script>"1 October"</script>',
        '<span id="a" class="sc-copy">by <b>1 October</b></span>',
    ],
)
def test_tags_tables_pictures_and_texts_to_be_copied_stay_as_they_are(left: str) -> None:
    assert _shown(f"{left} <p>1 October</p>") == f"{left} <p>1_October</p>"


def test_every_day_of_the_year_is_found_and_no_word_is_changed() -> None:
    for voice in (BRITISH, AMERICAN):
        days = [voice.day(date(2027, month, 21)) for month in range(1, 13)]
        page = f"<ul>{''.join(f'<li>{day}</li>' for day in days)}</ul>"
        kept = kept_together(page, voice)
        assert len(re.findall(r"21\u00a0\w+|\w+\u00a021", kept)) == len(days)
        assert kept.replace("\u00a0", " ") == page
