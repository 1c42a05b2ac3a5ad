"""Which fixtures several first days touch, as a table of words: a row for each fixture, a column for each day."""

from __future__ import annotations

from collections.abc import Mapping
from operator import attrgetter

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.pictures import Table
from swardcast.outlook.fixtures import FixtureOutlook
from swardcast.planning.date_words import touched
from swardcast.planning.start_days import StartDay
from swardcast.planning.words import meeting_in_words

__all__ = ["touched_table"]


def touched_table(days: Mapping[str, StartDay], voice: Voice) -> Table | None:
    """Lay out what the fixtures meet that first days touch.

    Args:
        days: first days by what the other tables call them: a number, or the letter of a job.
        voice: the language and the day of the reader.

    Returns:
        A table with a row for each fixture that at least one of the days touches, the first first; None where there is
        no such fixture.
    """
    fixtures = {met.fixture.id: met.fixture for day in days.values() for met in touched(day)}
    if not fixtures:
        return None
    met = [{one.fixture.id: one for one in day.meets} for day in days.values()]
    rows = [
        (fixture_in_words(fixture, voice), *(_cell(of_day.get(fixture.id), voice) for of_day in met))
        for fixture in sorted(fixtures.values(), key=attrgetter("order"))
    ]
    return Table(
        caption=voice.say("startdays-table-fixtures"),
        columns=(voice.say("startdays-column-fixture"), *days),
        rows=tuple(rows),
    )


def _cell(met: FixtureOutlook | None, voice: Voice) -> str:
    """A dash where the fixture is over before the work, or comes after the day of allow until."""
    return voice.say("planning-none") if met is None else meeting_in_words(met, voice)
