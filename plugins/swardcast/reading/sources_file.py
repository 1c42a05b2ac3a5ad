"""weather/sources.yaml -> the services from which weather was fetched, for the line that thanks them."""

from __future__ import annotations

import re
from datetime import datetime
from typing import Annotated, Final

from pydantic import BeforeValidator

from swardcast.errors import Problem
from swardcast.reading.schema import Model, Text, Words, validated, wrong
from swardcast.reading.yaml_text import Located
from swardcast.records.weather import WeatherSource

__all__ = ["sources_from"]

_WEB: Final = re.compile(r"^https?://[^\s\"'<>]+$", re.IGNORECASE)


def _web(value: object) -> str:
    if not _WEB.fullmatch(str(value)):
        raise wrong(value, "an address on the web, such as 'https://weather.example/'")
    return str(value)


def _moment(value: object) -> datetime | None:
    try:
        moment = datetime.fromisoformat(str(value))
    except ValueError:
        raise wrong(value, "a moment with its offset, such as '2027-09-14T06:35:00+00:00'") from None
    if moment.tzinfo is None:
        raise wrong(value, "a moment with its offset, such as '2027-09-14T06:35:00+00:00'")
    return moment


_Web = Annotated[str, BeforeValidator(_web)]


class _Source(Model):
    name: Text
    used_for: Text
    credit: Text
    address: _Web
    licence: Text
    licence_address: _Web
    fresh_until: Annotated[datetime | None, BeforeValidator(_moment)] = None
    last_modified: Words = ""


class _Sources(Model):
    sources: list[_Source] = []


def sources_from(document: Located, *, file: str, problems: list[Problem]) -> tuple[WeatherSource, ...]:
    """Read the record that `swardcast weather fetch` leaves.

    Args:
        document: the YAML of weather/sources.yaml.
        file: its name for problems.
        problems: where problems are added.

    Returns:
        The sources, in the order of the file.
    """
    told = validated(_Sources, document, file=file, problems=problems)
    if told is None:
        return ()
    return tuple(
        WeatherSource(
            name=source.name,
            used_for=source.used_for,
            credit=source.credit,
            address=source.address,
            licence=source.licence,
            licence_address=source.licence_address,
            fresh_until=source.fresh_until,
            last_modified=source.last_modified,
        )
        for source in told.sources
    )
