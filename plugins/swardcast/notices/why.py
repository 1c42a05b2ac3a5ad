"""The pages "Why we do this": one for each kind of work, with the club's own jobs, readings and numbers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.archive import of_last_seasons
from swardcast.notices.ends import end_of, published_in_words
from swardcast.notices.headline import when_in_words
from swardcast.notices.kinds import MOST_QUESTIONS, cautions_of, kind_name, said_of_kind, surface_of
from swardcast.notices.notice import Fact, Section
from swardcast.notices.numbers import facts_of_work
from swardcast.notices.readings import reading_facts
from swardcast.notices.words import places_in_words
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.states import CourseOutlook, JobOutlook, Work
from swardcast.outlook.story import JobStory
from swardcast.records.operations import Kind

__all__ = ["OwnJob", "WhyPage", "compose_why"]


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnJob:
    """A job of the club in which a kind of work was or is to be done.

    Args:
        notice_id: id of its notice.
        title: the job.
        where: its surfaces in words.
        when: when, in words.
        end: what members wait for, in words: "Back to normal", or "Work finished".
        normal: the published date of that, in words.
        facts: the work's own numbers.
        is_over: whether nothing more is to come of it.
    """

    notice_id: str
    title: str
    where: str
    when: str
    end: str
    normal: str
    facts: tuple[Fact, ...]
    is_over: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyPage:
    """A page about one kind of work.

    Args:
        slug: its name in the address.
        name: the kind of work, as inside a sentence.
        title: the page's title.
        summary: what it is, in one sentence.
        sections: its parts, in order.
        jobs: the club's own jobs of this kind, latest first.
        leaves_jobs: whether earlier ones stand in the archive alone.
    """

    slug: str
    name: str
    title: str
    summary: str
    sections: tuple[Section, ...]
    jobs: tuple[OwnJob, ...]
    leaves_jobs: bool

    @property
    def jobs_in_view(self) -> tuple[OwnJob, ...]:
        """The jobs that are not over; where all are, the latest of them, so that one can be seen."""
        return tuple(job for job in self.jobs if not job.is_over) or self.jobs[:1]

    @property
    def jobs_folded(self) -> tuple[OwnJob, ...]:
        """The others."""
        in_view = self.jobs_in_view
        return tuple(job for job in self.jobs if job not in in_view)


def compose_why(outlook: CourseOutlook, stories: Mapping[str, JobStory], voice: Voice) -> tuple[WhyPage, ...]:
    """Explain every kind of work, with what this club has done and measured.

    Args:
        outlook: the course at the moment.
        stories: the published dates of each job, by its id.
        voice: the language and the day of the reader.

    Returns:
        A page for each kind, in the order of the trade's list.
    """
    return tuple(_page(kind, outlook, stories, voice) for kind in Kind)


def _page(kind: Kind, outlook: CourseOutlook, stories: Mapping[str, JobStory], voice: Voice) -> WhyPage:
    all_jobs = sorted(_jobs_with(kind, outlook), key=lambda job: (job.starts, job.job.id), reverse=True)
    jobs = of_last_seasons(all_jobs, voice.near)
    surfaces = [work.surface for job in jobs for work in job.surfaces]
    surface = surface_of(surfaces) if surfaces else "mixed"
    name = kind_name(kind, voice)
    return WhyPage(
        slug=slug_of(kind),
        name=name,
        title=voice.say("why-title", kind=name),
        summary=said_of_kind(kind, "what", surface, voice).text,
        sections=tuple(_sections(kind, jobs, surface, voice)),
        jobs=tuple(_own_job(kind, job, stories[job.job.id], voice) for job in jobs),
        leaves_jobs=len(jobs) < len(all_jobs),
    )


def _jobs_with(kind: Kind, outlook: CourseOutlook) -> Iterator[JobOutlook]:
    for job in outlook.jobs.values():
        if any(operation.kind is kind for operation in job.job.operations) and job.work is not Work.CALLED_OFF:
            yield without_called_off(job)


def _sections(kind: Kind, jobs: Sequence[JobOutlook], surface: str, voice: Voice) -> Iterator[Section]:
    def said(what: str) -> Fact:
        sentence = said_of_kind(kind, what, surface, voice)
        return Fact(name=voice.say(f"why-row-{what}"), value=sentence.text, source=sentence.source)

    what = said_of_kind(kind, "what", surface, voice)
    why, without = (said_of_kind(kind, name, surface, voice) for name in ("why", "without"))
    yield Section(heading=voice.say("why-heading-reason"), paragraphs=((what,), (why, without)))
    play = tuple(said(name) for name in ("see", "day", "week", "then"))
    yield Section(heading=voice.say("why-heading-play"), facts=play)
    readings = tuple(fact for job in jobs for fact in reading_facts(job.job, voice))
    if readings:
        yield Section(heading=voice.say("why-heading-readings"), facts=tuple(dict.fromkeys(readings)))
    do = said_of_kind(kind, "do", surface, voice)
    yield Section(heading=voice.say("why-heading-do"), paragraphs=((do,),))
    yield Section(heading=voice.say("why-heading-questions"), facts=tuple(_questions(kind, surface, voice)))
    yield Section(heading=voice.say("why-heading-care"), points=tuple(cautions_of([kind], voice)))


def _questions(kind: Kind, surface: str, voice: Voice) -> Iterator[Fact]:
    for number in range(1, MOST_QUESTIONS + 1):
        if voice.catalogue.has(f"kind-{slug_of(kind)}.q{number}"):
            question, answer = (said_of_kind(kind, f"{what}{number}", surface, voice) for what in "qa")
            yield Fact(name=question.text, value=answer.text, source=answer.source)


def _own_job(kind: Kind, job: JobOutlook, story: JobStory, voice: Voice) -> OwnJob:
    return OwnJob(
        notice_id=job.job.id,
        title=job.job.title,
        where=capital(places_in_words((work.surface for work in job.surfaces), voice)),
        when=capital(when_in_words(job, voice)),
        end=end_of(job).name_in(voice),
        normal=capital(published_in_words(story.published, job, voice)),
        facts=tuple(facts_of_work(job, kind, voice)),
        is_over=job.work.is_over,
    )
