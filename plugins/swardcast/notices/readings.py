"""Measured readings in words: what was found, when, and the club's aim."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import Voice, capital
from swardcast.notices.notice import Fact
from swardcast.records.plan import Job, Reading

__all__ = ["reading_facts"]


def reading_facts(job: Job, voice: Voice) -> Iterator[Fact]:
    """Say the measurements that led to a job.

    Args:
        job: the job.
        voice: the language and the day of the reader.

    Yields:
        What was measured, and its reading beside the club's aim.
    """
    for reading in job.readings:
        yield Fact(name=capital(reading.what), value=_found(reading, voice), source=f"{job.file}, line {job.line}")


def _found(reading: Reading, voice: Voice) -> str:
    if reading.target and reading.on:
        day = voice.day(reading.on)
        return voice.say("reading-with-aim-and-day", found=reading.found, day=day, aim=reading.target)
    if reading.target:
        return voice.say("reading-with-aim", found=reading.found, aim=reading.target)
    if reading.on:
        return voice.say("reading-with-day", found=reading.found, day=voice.day(reading.on))
    return reading.found
