"""What has to be said beside the days for several jobs, and why there are none."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from swardcast.language.voice import Voice
from swardcast.outlook.states import RestsOn
from swardcast.planning.date_notes import UNTIL_PHRASES, cells_in_words, fixtures_end_in_words, weights_in_words
from swardcast.planning.dates import not_found
from swardcast.planning.programme import Together
from swardcast.planning.programme_tables import SHOWN_STEP, gap_in_words, letters_of
from swardcast.records.folder import ClubRecords

__all__ = ["blame_in_words", "together_notes"]

_WORTH_A_GAP: Final = 1.0  # weighted days more than one by one, from which a longer gap is spoken of: judgement


def together_notes(together: Together, records: ClubRecords, voice: Voice) -> tuple[str, ...]:
    """Say what the tables rest on.

    Args:
        together: what was found.
        records: the club's records, with what it keeps to itself.
        voice: the language and the day of the reader.

    Returns:
        Paragraphs.
    """
    rules, no_promise = list(_rules(together, voice)), [voice.say("planning-no-promise")]
    paragraphs = [rules, no_promise]
    if together.placed:
        counted = [
            voice.say(UNTIL_PHRASES[together.asked.until]),
            voice.say("startdays-weighted"),
            *weights_in_words(records.planning.importance, not_found(records), voice),
            *fixtures_end_in_words(records.fixtures, [one.together for one in together.placed], voice),
            voice.say("together-added"),
            *cells_in_words([one.together for one in together.placed], voice),
        ]
        proven, trade_offs = list(_proven(together, voice)), list(_trade_offs(together, voice))
        paragraphs = [proven, rules, trade_offs, counted, list(_rests_on(together, voice)), no_promise]
    return tuple(voice.sentences(paragraph) for paragraph in paragraphs if paragraph)


def _proven(together: Together, voice: Voice) -> Iterator[str]:
    if not together.has_costs:
        yield voice.say("together-soonest")
        return
    asked = together.asked
    yield voice.say("together-proven", first=voice.day(asked.first), last=voice.day(asked.last))
    alone = sum(one.alone.cost.weighted_days for one in together.placed if one.alone.cost is not None)
    more = together.weighted_days - alone
    said = voice.number(alone, decimals=1)
    if more < SHOWN_STEP:
        yield voice.say("together-sum-same", alone=said)
        return
    in_all = voice.number(together.weighted_days, decimals=1)
    yield voice.say("together-sum-more", alone=said, all=in_all, more=voice.number(more, decimals=1))
    if more >= _WORTH_A_GAP:
        yield voice.say("together-longer-gap")


def _rules(together: Together, voice: Voice) -> Iterator[str]:
    if together.asked.crews == 1:
        yield voice.say("together-one-crew")
    else:
        yield voice.say("together-crews", crews=together.asked.crews)
    yield voice.say("together-spare")
    yield voice.say("together-in-order") if together.asked.in_order else voice.say("together-any-order")
    long_gaps = [gap for gap in together.gaps if gap.least_days > 1]
    names = letters_of(together)
    for days in sorted({gap.least_days for gap in long_gaps}):
        pairs = [
            voice.say("together-pair", earlier=names[gap.earlier], later=names[gap.later])
            for gap in sorted(long_gaps, key=lambda gap: (names[gap.earlier], names[gap.later]))
            if gap.least_days == days
        ]
        yield voice.say("together-gap", pairs=voice.joined(pairs), gap=gap_in_words(days, voice))
    if long_gaps:
        yield voice.say("together-gap-rule")


def _trade_offs(together: Together, voice: Voice) -> Iterator[str]:
    if together.in_all == 1 and together.has_costs:
        yield voice.say("together-no-trade-off")
    if together.in_all <= 1:
        return
    shown = len(together.trade_offs)
    if shown == together.in_all:
        yield voice.say("together-trade-offs", count=together.in_all)
    else:
        yield voice.say("together-trade-offs-some", count=together.in_all, shown=voice.number(shown))
    yield voice.say("together-trade-off-is")
    least = min(together.with_all)
    if least < together.with_all[0] - SHOWN_STEP:
        number = voice.number(together.with_all.index(least) + 1)
        yield voice.say("together-other-is-less", number=number, days=voice.number(least, decimals=1))


def _rests_on(together: Together, voice: Voice) -> Iterator[str]:
    if together.past_years:
        yield voice.say("startdays-ranges")
        yield voice.say("planning-dates")
        yield voice.say("startdays-rests-past", count=together.past_years)
    else:
        yield voice.say("startdays-no-weather")
    if together.without_end:
        yield voice.say("together-without-end", jobs=voice.listed([job.title for job in together.without_end]))
    ends = [(one.job.title, one.together.ends) for one in together.placed]
    usual = [title for title, end in ends if end is not None and end.rests_on is RestsOn.USUAL_TIME]
    if usual:
        yield voice.say("together-usual-time", jobs=voice.listed(usual))
    if together.beside:
        yield voice.say("together-beside", jobs=voice.listed([job.title for job in together.beside]))
    yield voice.say("startdays-others")


def blame_in_words(together: Together, voice: Voice) -> str:
    """Say why the jobs cannot all be done, and what would help.

    Args:
        together: what was found.
        voice: the language.

    Returns:
        A paragraph that names jobs by their letters, or "" where they can.
    """
    return voice.sentences(list(_blame(together, voice)))


def _blame(together: Together, voice: Voice) -> Iterator[str]:
    blame, asked = together.blame, together.asked
    if blame is None:
        return
    names = letters_of(together)
    yield voice.say("together-none", first=voice.day(asked.first), last=voice.day(asked.last))
    for name in blame.never:
        yield voice.say("together-never", job=names[name])
    for eased in blame.eased:
        yield voice.say(
            "together-eased",
            most=gap_in_words(eased.most_days, voice),
            gap=gap_in_words(eased.gap.least_days, voice),
            earlier=names[eased.gap.earlier],
            later=names[eased.gap.later],
        )
    if blame.gaps and not blame.eased and any(gap.least_days > 1 for gap in together.gaps):
        yield voice.say("together-without-gaps")
    if blame.order:
        yield voice.say("together-other-order")
    if blame.crew:
        yield voice.say("together-more-crews")
    if not (blame.never or blame.eased or blame.gaps or blame.order or blame.crew):
        yield voice.say("together-too-few-days")
