"""What a manager should see before saying yes: work done twice, surfaces left unsaid."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.entering.places import chosen_surfaces, phrase_for
from swardcast.entering.understanding import Understood
from swardcast.language.voice import Voice, capital
from swardcast.outlook.play import latest_statements, statements
from swardcast.records.standing import morning_of

__all__ = ["cautions"]

_PLAY = "play"


def _reason_that_goes(told: Understood) -> Iterator[str]:
    """The status page shows the reason of the day's last morning entry alone."""
    last = morning_of(told.standing.entries, told.standing.at.date())
    if last is not None and last.why and told.draft is not None and "why" not in told.draft.fields:
        when = Voice.english(last.head.true_from.date()).time(last.head.true_from)
        yield f'The reason given at {when} is no longer shown: "{last.why}" Repeat it with --why.'


def _said_today(told: Understood) -> set[str]:
    """Surfaces about which the log says already today how play stands."""
    standing = told.standing
    latest = latest_statements(statements(standing.records, standing.entries))
    today, zone = standing.at.date(), standing.at.tzinfo
    return {name for name, (_, word) in latest.items() if word.at.astimezone(zone).date() == today}


def cautions(word: str, told: Understood) -> Iterator[str]:
    """Find what is allowed but seldom meant.

    Args:
        word: the kind of entry.
        told: the answers, understood.

    Yields:
        Sentences.
    """
    surfaces = told.standing.records.surfaces
    if word == "morning" and told.draft is not None:
        play = told.draft.fields[_PLAY]
        named = {name for phrase in play for name in chosen_surfaces(str(phrase), surfaces)}
        said = _said_today(told)
        left = [name for name in surfaces if name not in named and name not in said]
        if left:
            phrase = phrase_for(left, surfaces)
            verb = "stays" if len(left) == 1 else "stay"
            yield f"{capital(phrase)} {verb} not known: no answer names {'it' if len(left) == 1 else 'them'}."
        yield from _reason_that_goes(told)
    if word == "called-off" and told.job is not None:
        facts = told.standing.facts[told.job.id].surfaces
        stays = [name for name, there in facts.items() if there.done is not None]
        if stays:
            phrase = phrase_for(stays, surfaces)
            yield f"What is done stays done ({phrase}); only the rest is called off."
    if word in ("started", "done") and told.job is not None:
        facts = told.standing.facts[told.job.id].surfaces
        again = [name for name in told.surfaces if name in facts and facts[name].done is not None]
        if again:
            done = max(entry.head.true_from for name in again if (entry := facts[name].done) is not None)
            when = Voice.english(told.standing.at.date()).moment(done.astimezone(told.standing.at.tzinfo))
            yield f"{capital(phrase_for(again, surfaces))}: done already, at {when}. The dates would begin anew."
