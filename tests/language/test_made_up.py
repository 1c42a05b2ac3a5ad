"""The made-up language: whole, without an English letter, with word order and plurals of its own."""

from __future__ import annotations

from datetime import UTC, date, datetime

import pytest

from swardcast.language.catalogue import Catalogue, built_in
from swardcast.language.house_phrases import with_house_phrases
from swardcast.language.voice import Voice
from tests.language.made_up import TAG, made_up_page, made_up_phrases


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return with_house_phrases(TAG, {"phrases/made-up.ftl": made_up_phrases()})


def test_it_has_every_phrase_of_ours(catalogue: Catalogue) -> None:
    assert set(catalogue.names()) == set(built_in("en-GB").names())


@pytest.mark.parametrize(
    ("count", "said"),
    [(1, "ğřééñ①"), (2, "ğřééñš②"), (3, "ğřééñš③"), (5, "ğřééñš④"), (101, "ğřééñ①"), (102, "ğřééñš②")],
)
def test_a_count_chooses_the_plural_form_of_its_language(catalogue: Catalogue, count: int, said: str) -> None:
    """Slovenian by CLDR: one for 1, 101; two for 2, 102; few for 3, 4, 103; other for the rest."""
    assert catalogue.say("surface-green", {"count": count}) == said


def test_words_stand_in_reverse_order_around_their_slots(catalogue: Catalogue) -> None:
    assert catalogue.say("site-last-news", {"day": "7"}) == "7 Łášť ñéŵš óñ"
    assert catalogue.say("list-more", {"first": "1", "next": "2"}) == "2, 1"


def test_days_and_times_are_those_of_its_locale(catalogue: Catalogue) -> None:
    voice = Voice(catalogue=catalogue, near=date(2027, 9, 14))
    assert voice.day(date(2027, 9, 24)) == "24. september, petek"
    assert voice.moment(datetime(2028, 3, 7, 14, 5, tzinfo=UTC)) == "2028, 7. marec, torek óñ 14.05"
    assert voice.number(1234.5, decimals=1) == "1.234,5"


def test_a_page_keeps_its_fields_links_and_remarks() -> None:
    page = "Title: Follow\nSlug: follow\n\nSee [the feed](../a.rss).\n\n<!-- swardcast: sums -->\n"
    assert made_up_page(page) == (
        "Title: Ƒółłóŵ\nSlug: follow\n\nŠéé [ťħé ƒééđ](../a.rss).\n\n<!-- swardcast: sums -->\n"
    )
