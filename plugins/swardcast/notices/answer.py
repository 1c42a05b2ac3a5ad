"""The short answer of a notice: how play is affected, when it is over, how sure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.dates_in_words import range_in_words, says_allow_until
from swardcast.notices.ends import End, end_of, published_in_words, unopened
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Sentence
from swardcast.notices.opening import opening, shut_after_the_work, stays_shut
from swardcast.notices.play import play_clause
from swardcast.notices.words import as_clause, few_words_for
from swardcast.outlook.changes import is_only_computed
from swardcast.outlook.job_ranges import open_works, range_of_all
from swardcast.outlook.states import Milestone, ReasonKind, SurfaceWork, Unreported, Work
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Kind, label_counts
from swardcast.records.plan import Play

__all__ = ["MOST_WORDS", "short_answer", "when_it_is_over"]

MOST_WORDS: Final = 40
"""Words of a short answer: judgement, what is read at a glance on a telephone."""

_MOST_WORDS_OF_A_SENTENCE: Final = 25  # with a cause as typed: as the test of plain language has it

_BEGUN: Final = (ReasonKind.STARTED, ReasonKind.DONE)

_OVER: Final = {End.NORMAL: "answer-normal", End.FINISHED: "answer-finished", End.OPEN: "answer-open-again"}


def short_answer(matter: Matter) -> tuple[Sentence, ...]:
    """Answer what a member wants to know first.

    Args:
        matter: what the notice is made of.

    Returns:
        Sentences of 40 words or fewer in all; how sure the dates are is left out where there is no room,
        and so are a typed cause that is too long and what happens meanwhile.
    """
    has_label = matter.outlook.work is not Work.CALLED_OFF and label_counts(matter.job.operations)
    label = (matter.say("answer-label"),) if has_label else ()
    said = (*_sentences(matter, brief=False), *label)
    if _words(said) > MOST_WORDS:
        said = (*_sentences(matter, brief=True), *label)
    if label or matter.is_over:
        return said
    is_said = says_allow_until(matter.published, matter.voice) and not matter.stands_still
    sure = matter.say("answer-how-sure")
    return (*said, sure) if is_said and matter.is_computed and _words((*said, sure)) <= MOST_WORDS else said


def _words(sentences: tuple[Sentence, ...]) -> int:
    return sum(len(sentence.text.split()) for sentence in sentences)


def _sentences(matter: Matter, *, brief: bool) -> Iterator[Sentence]:
    outlook = matter.outlook
    match outlook.work:
        case Work.CALLED_OFF:
            yield _called_off(matter, brief=brief)
            return
        case Work.BACK_TO_NORMAL:
            yield from _over(matter)
            return
        case Work.PLANNED:
            yield _starts(matter, brief=brief)
        case Work.UNDER_WAY if outlook.unreported is not None:
            silence = outlook.unreported
            yield _put_off(matter, brief=brief) if outlook.is_put_off else _not_reported(matter, silence, brief=brief)
        case Work.UNDER_WAY:
            source = _said_by(matter, ReasonKind.STARTED, ReasonKind.DONE)
            yield matter.say("answer-under-way", source=source, meanwhile=_while_working(matter).text)
        case Work.HELD_UP:
            yield _on_temporary_greens(matter) or _held_up(matter, brief=brief)
            if outlook.unreported is not None:
                day = matter.voice.day(outlook.unreported.last_report.date())
                yield matter.say("answer-no-report-since", source=_said_by(matter, ReasonKind.HELD_UP), day=day)
        case Work.HEALING:
            yield _healing(matter)
    opens = [*_opens(matter)]
    yield from opens
    has_no_room = brief and bool(opens) and outlook.unreported is not None
    if not (has_no_room or _says_the_end(matter)):
        without_weekdays = brief and outlook.work is Work.UNDER_WAY  # no other word of it can be spared
        until = published_in_words(matter.published, outlook, matter.voice, briefly=without_weekdays)
        yield when_it_is_over(matter, until)


def _opens(matter: Matter) -> Iterator[Sentence]:
    """When what stays closed opens again; once all is done, the first sentence has said so."""
    told = opening(matter) if matter.outlook.work is not Work.HEALING else None
    if told is not None:
        yield told


def _not_reported(matter: Matter, silence: Unreported, *, brief: bool) -> Sentence:
    """When the rest of the work was due, and that nobody has reported it; whether it goes on, nobody knows."""
    left = [work for work in matter.outlook.surfaces if work.unreported is not None]
    opens = matter.job.lasts and matter.job.reopens_after is not None
    return matter.say(
        "answer-not-reported-brief" if brief else "answer-not-reported",
        source=_said_by(matter, ReasonKind.STARTED, ReasonKind.DONE),
        where=capital(_where(matter, left)),
        count=len(left),
        by=matter.voice.day(silence.due_by),
        ends="open" if opens else "done",
    )


def _says_the_end(matter: Matter) -> bool:
    """The first sentence says all: surfaces only open again, or work that leaves nothing to heal has no day."""
    end, last = end_of(matter.outlook), matter.published.allow_until
    if last is not None and last < matter.voice.near and unopened(matter.outlook, matter.voice):
        return True  # what is not open is not back to normal
    if matter.is_of_one_day:
        return True
    return end is End.OPEN or (end is End.FINISHED and (matter.outlook.is_put_off or matter.has_no_day))


def when_it_is_over(matter: Matter, normal: str) -> Sentence:
    """Say when play is back to normal; where nothing has to heal, when the work is finished or open again.

    Args:
        matter: what the notice is made of; not called off.
        normal: the published date in words.

    Returns:
        The sentence, such as "Back to normal: likely by Friday 24 September.".
    """
    return matter.say(_OVER[end_of(matter.outlook)], source=matter.published_by, date=normal)


def _starts(matter: Matter, *, brief: bool) -> Sentence:
    day = matter.voice.day(matter.outlook.starts)
    if matter.outlook.is_put_off:
        return _put_off(matter, brief=brief)
    if matter.has_no_day:
        return matter.say("answer-not-started", source=matter.in_plan, day=day)
    if matter.is_of_one_day:
        days = capital(range_in_words(matter.published, matter.voice))
        if brief:
            return Sentence(text=matter.voice.sentence(days), source=matter.in_plan)
        meanwhile = _while_working(matter).text
        return matter.say("answer-on-one-day", source=matter.in_plan, days=days, meanwhile=meanwhile)
    when = "today" if matter.outlook.starts == matter.voice.near else "later"
    if brief:
        return matter.say("answer-starts-brief", source=matter.in_plan, day=day, when=when)
    meanwhile = _while_working(matter).text
    return matter.say("answer-starts", source=matter.in_plan, day=day, when=when, meanwhile=meanwhile)


def _put_off(matter: Matter, *, brief: bool) -> Sentence:
    because = as_clause(matter.outlook.changed_because)
    source = _said_by(matter, ReasonKind.PUT_OFF)
    if because and not brief:
        return matter.say("answer-put-off-because", source=source, because=because)
    return matter.say("answer-put-off", source=source)


def _while_working(matter: Matter) -> Sentence:
    if matter.kinds[0] is Kind.TEMPORARY_GREENS:
        return matter.say("answer-temporary-greens", source=matter.in_plan, count=len(matter.outlook.surfaces))
    play, count = slug_of(matter.job.while_working), len(matter.outlook.surfaces)
    where, shut = _where(matter, matter.outlook.surfaces), shut_after_the_work(matter)
    if matter.job.while_working is Play.CLOSED and len(shut) == count and all(w.started_at or w.done_at for w in shut):
        return matter.say("answer-all-shut", source=_said_by(matter, *_BEGUN), where=where, count=count)
    phrase = "answer-until-opened" if stays_shut(matter) else "answer-while-working"
    return matter.say(phrase, source=matter.in_plan, play=play, count=count, surface=matter.surface, where=where)


def _where(matter: Matter, works: Sequence[SurfaceWork]) -> str:
    return few_words_for((work.surface for work in works), matter.voice)


def _called_off(matter: Matter, *, brief: bool) -> Sentence:
    because = as_clause(matter.outlook.changed_because)
    source = _said_by(matter, ReasonKind.CALLED_OFF)
    if because and not brief:
        return matter.say("answer-called-off-because", source=source, because=because)
    return matter.say("answer-called-off", source=source)


def _held_up(matter: Matter, *, brief: bool) -> Sentence:
    held = [work for work in matter.outlook.surfaces if work.work is Work.HELD_UP]
    where = _where(matter, held)
    reasons = [r for work in held for r in work.reasons if r.kind is ReasonKind.HELD_UP]
    because = as_clause(reasons[-1].words) if reasons else ""
    source = _said_by(matter, ReasonKind.HELD_UP)
    if because and not brief:
        said = matter.say("answer-held-up-because", source=source, where=where, because=because)
        is_long = len(said.text.split()) > _MOST_WORDS_OF_A_SENTENCE
        return matter.say("answer-held-up-cause", source=source, because=because) if is_long else said
    return matter.say("answer-held-up", source=source, where=where)


def _on_temporary_greens(matter: Matter) -> Sentence | None:
    """Where a green that is half done is played meanwhile: who decides about a round needs it before the cause."""
    if matter.stands_still or not (places := matter.on_temporary_greens):
        return None
    play = play_clause(Play.TEMPORARY_GREEN, places, matter.voice)
    held = [work for work in matter.outlook.surfaces if work.work is Work.HELD_UP]
    source = _said_by(matter, ReasonKind.HELD_UP)
    return matter.say("answer-held-up-meanwhile", source=source, where=_where(matter, held), play=play)


def _healing(matter: Matter) -> Sentence:
    outlook, voice = matter.outlook, matter.voice
    works = open_works(outlook.surfaces)  # what is back to normal heals no more
    where = _where(matter, works)
    source = _said_by(matter, ReasonKind.DONE)
    reopening = outlook.dates[Milestone.REOPENING]
    is_past = reopening.passed_untold(voice.near)
    if is_past and (waiting := unopened(outlook, voice)):
        return _not_opened(matter, waiting, source)
    if works and all(work.is_closed_again for work in works) and reopening.likely is not None:
        day = voice.day(reopening.likely)
        return matter.say("answer-closed-again", source=source, where=where, day=day, count=len(works))
    if (outlook.job.reopens_after is not None or matter.leaves_turf_whole) and not is_past:
        told = matter.published if matter.is_over_with_the_work else reopening
        return matter.say("answer-reopens", source=source, where=where, date=range_in_words(told, voice))
    if not all(work.surface.kind is SurfaceKind.GREEN for work in works):
        return matter.say("answer-settling", source=source, where=where)
    settled = outlook.dates[Milestone.SETTLED].allow_until
    is_settled = settled is not None and settled < voice.near
    return matter.say(
        "answer-healing-settled" if is_settled else "answer-healing",
        source=matter.sum_of(Milestone.SETTLED),
        where=capital(where),
        count=len(works),
    )


def _not_opened(matter: Matter, waiting: Sequence[SurfaceWork], source: str) -> Sentence:
    """A day that has passed opens nothing: who reads "by now" may walk onto what is still closed."""
    where, by = _where(matter, waiting), range_of_all(waiting, Milestone.REOPENING).allow_until
    day = matter.voice.day(by) if by is not None else ""
    return matter.say("answer-not-opened", source=source, where=where, by=day, count=len(waiting))


def _over(matter: Matter) -> Iterator[Sentence]:
    yield _back_to_normal(matter)
    if matter.is_over_with_the_work and Kind.WINTER_PROTECTION in matter.kinds:
        yield matter.say("answer-protection-stays")  # the work is over, what it put out is not


def _back_to_normal(matter: Matter) -> Sentence:
    outlook, published, voice = matter.outlook, matter.published, matter.voice
    named, count = _where(matter, outlook.surfaces), len(outlook.surfaces)
    where = capital(named)
    if matter.is_over_with_the_work:
        return _finished(matter, named)
    if published.is_fact and published.likely is not None:
        since, source = voice.day(published.likely), _said_by(matter, ReasonKind.SAID_NORMAL)
        days = {work.dates[Milestone.BACK_TO_NORMAL].likely for work in outlook.surfaces}
        when = "on" if len(days) == 1 else "by"
        return matter.say("answer-normal-again", source=source, where=where, count=count, when=when, day=since)
    return _over_by_sum(matter)


def _over_by_sum(matter: Matter) -> Sentence:
    """Which surfaces an entry called back to normal, and that of the others none does."""
    works, source = matter.outlook.surfaces, matter.sum_of(Milestone.BACK_TO_NORMAL)
    others = [work for work in works if is_only_computed(work)]
    said = [work for work in works if work not in others]
    days = sorted(day for work in said if (day := work.dates[Milestone.BACK_TO_NORMAL].likely) is not None)
    if not days:
        where, by = _where(matter, works), _last_due(works, matter.voice)
        return matter.say("answer-over", source=source, where=where, count=len(works), by=by)
    return matter.say(
        "answer-over-in-part",
        source=source,
        where=capital(_where(matter, said)),
        count=len(said),
        when="on" if days[0] == days[-1] else "by",
        day=matter.voice.day(days[-1]),
        others=capital(_where(matter, others)),
        left=len(others),
        by=_last_due(others, matter.voice),
    )


def _last_due(works: Sequence[SurfaceWork], voice: Voice) -> str:
    """The last day to allow for of surfaces that the sum alone calls back to normal."""
    days = [day for work in works if (day := work.dates[Milestone.BACK_TO_NORMAL].allow_until) is not None]
    return voice.day(max(days))


def _finished(matter: Matter, where: str) -> Sentence:
    """That the work is finished, on the day of the last of it."""
    source = _said_by(matter, ReasonKind.SAID_NORMAL, ReasonKind.DONE)
    day = published_in_words(matter.published, matter.outlook, matter.voice)
    return matter.say("answer-finished-on", source=source, where=where, day=day)


def _said_by(matter: Matter, *kinds: ReasonKind) -> str:
    """The entry, or the line of the plan, that says so; of several the last."""
    sources = [reason.source for work in matter.outlook.surfaces for reason in work.reasons if reason.kind in kinds]
    return sources[-1] if sources else matter.in_plan
