"""What must not differ between a notice, the calendar, the status page and the other outlets of one bulletin."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta

from swardcast.compose import Bulletin
from swardcast.moments import MONTHS
from swardcast.notices.calendar import Occasion, Standing
from swardcast.notices.notice import Notice
from swardcast.outlets.message import messages_of
from swardcast.outlets.preview import notice_card
from swardcast.outlook.states import Work
from swardcast.records.plan import Play

__all__ = ["OPENED_BY_TIME", "days_against_the_notice", "opened_by_a_time", "plain", "said_of"]


def plain(text: str) -> str:
    """The words with single plain blanks."""
    return " ".join(text.split())


OPENED_BY_TIME = re.compile(r"open again[^.]{0,60}\bby now", re.IGNORECASE)
_CLOSED_OR_NOT_KNOWN = (Play.CLOSED, Play.NOT_KNOWN, Play.TEMPORARY_GREEN)


def _days_in_words(text: str, near: date) -> set[date]:
    """Every day that a text names, and those between the two ends of a span: "23 to 25 August", "from ... to ..."."""
    weekday, month = r"(?:\w+day )?", f"({'|'.join(MONTHS)})"
    end = rf"{weekday}(\d{{1,2}}) {month}(?: (\d{{4}}))?"

    def day(number: str, name: str, year: str | None) -> date:
        return date(int(year or near.year), MONTHS.index(name) + 1, int(number))

    found = {day(*one) for one in re.findall(rf"\b{end}", text)}
    spans = [(day(*one[:3]), day(*one[3:])) for one in re.findall(rf"\b{end} to {end}", text)]
    spans += [(day(first, *last[1:]), day(*last)) for first, *last in re.findall(rf"\b(\d{{1,2}}) to {end}", text)]
    return found | {first + timedelta(days=n) for first, last in spans for n in range((last - first).days + 1)}


def days_against_the_notice(bulletin: Bulletin) -> list[str]:
    """Days to come in the calendar that the notice does not tell; planned days of a long closure are the plan's alone."""
    today, found = bulletin.as_of.date(), []
    for notice in bulletin.notices:
        said = [notice.headline, notice.short_answer, notice.normal, notice.when]
        said += [f"{fact.name} {fact.value}" for section in notice.sections for fact in section.facts]
        told = _days_in_words(plain(" ; ".join(said)), today) | {today}
        outlook = bulletin.outlook.jobs[notice.id]
        of_plan = outlook.job.reopens_after is not None and not (
            outlook.work is Work.PLANNED and outlook.starts < today
        )
        for event in bulletin.calendar:
            if event.notice_id != notice.id or event.standing is not Standing.TENTATIVE:
                continue
            last = event.span.last_day
            is_work = event.occasion is Occasion.WORK
            if last > today and last not in told and not (is_work and of_plan):
                found.append(f"{bulletin.as_of:%d %B}: {event.id} {last}")
    return found


def said_of(notice: Notice, bulletin: Bulletin) -> Iterator[str]:
    """What each outlet says of a notice: page, list, message, preview, coming work and feed."""
    yield from (notice.headline, notice.short_answer, notice.work, *notice.in_short)
    yield from (f"{fact.name}: {fact.value}" for section in notice.sections for fact in section.facts)
    card = notice_card(notice, bulletin)
    yield from (card.state, f"{card.label}: {card.normal}")
    yield messages_of(bulletin)[notice.id]
    yield from (one for item in bulletin.items if item.notice_id == notice.id for one in (item.title, *item.sentences))
    for line in bulletin.status.lines:
        if line.notice_id == notice.id:
            yield from (f"{one.name}: {one.value}" for one in line.dates)


def opened_by_a_time(bulletin: Bulletin) -> list[str]:
    """Sentences that say that a surface is or should be open by now which the status page calls closed or not known."""
    shut = {name for name, one in bulletin.outlook.surfaces.items() if one.play in _CLOSED_OR_NOT_KNOWN}
    return [
        f"{bulletin.as_of:%d %B}: {notice.id}: {said}"
        for notice in bulletin.notices
        if shut & {work.surface.id for work in bulletin.outlook.jobs[notice.id].surfaces}
        for said in map(plain, said_of(notice, bulletin))
        if OPENED_BY_TIME.search(said)
    ]
