"""club.yaml -> a club."""

from __future__ import annotations

import re
from functools import cache
from typing import Annotated, Final
from urllib.parse import quote, urlsplit
from zoneinfo import ZoneInfo, available_timezones

from pydantic import BeforeValidator, ValidationInfo, field_validator

from swardcast.errors import Problem, nearest
from swardcast.language.catalogue import BUILT_IN
from swardcast.moments import WEEKDAYS
from swardcast.reading.files import Files
from swardcast.reading.format_changes import FormatNumber
from swardcast.reading.house_style import HouseStyleBlock
from swardcast.reading.languages import language_meant
from swardcast.reading.look_block import LookBlock, look_from
from swardcast.reading.planning_block import PlanningBlock
from swardcast.reading.schema import (
    ROLL_LIMITS,
    Density,
    Length,
    Lines,
    Model,
    Number,
    Roll,
    Text,
    Words,
    block_of,
    validated,
    within,
    wrong,
)
from swardcast.reading.sheet_block import LogSheetBlock
from swardcast.reading.time_spans import EntryAge, HoursFromTo, SeveralHours
from swardcast.reading.weather_block import WeatherBlock
from swardcast.reading.yaml_text import Located
from swardcast.records.club import (
    USUAL_WORKING_HOURS,
    Club,
    Contact,
    HoursOfDay,
    without_breaks,
)

__all__ = ["club_from", "zone_told"]

_WEEKDAYS: Final = tuple(day.lower() for day in WEEKDAYS)
_LONGEST_SITE: Final = 120
"""Letters of the site's address: 160 of a short message less those of "/n/<code>/", and some to spare; judgement."""
_SITE: Final = re.compile(r"^https?://[a-z0-9][a-z0-9.:-]*(/[^\s?#]*)?$", re.IGNORECASE)
_EMAIL: Final = re.compile(r"[^@\s<>,;%?#\x00-\x1f\x7f-\x9f]+@[^@\s<>,;%?#\x00-\x1f\x7f-\x9f]+")
"""With %, ? or # a link to it could write to others as well, or say what nobody meant (RFC 6068, section 2)."""
_TELEPHONE: Final = re.compile(r"[+(]*[0-9][0-9+() -]*")
# "langtag" of RFC 5646, section 2.1, without the lists of what is registered.
_LANGUAGE: Final = re.compile(
    r"^(?:[a-z]{2,3}(?:-[a-z]{3}){0,3}|[a-z]{4,8})(?:-[a-z]{4})?(?:-(?:[a-z]{2}|\d{3}))?"
    r"(?:-(?:[a-z\d]{5,8}|\d[a-z\d]{3}))*(?:-[a-wyz\d](?:-[a-z\d]{2,8})+)*(?:-x(?:-[a-z\d]{1,8})+)?$",
    re.IGNORECASE,
)


_OF_A_MACHINE: Final = {"localtime", "Factory"}
"""Names under which a system keeps what it takes for its own: another machine would build another site."""


@cache  # since it looks through a folder of some 600 files
def _zones() -> set[str]:
    return available_timezones() - _OF_A_MACHINE


def zone_told(document: Located) -> ZoneInfo | None:
    """Read the time zone alone, where the file as a whole is at fault.

    Args:
        document: the YAML of club.yaml.

    Returns:
        The zone, or None when there is none that can be read.
    """
    told = document.value.get("time zone") if isinstance(document.value, dict) else None
    return ZoneInfo(told) if isinstance(told, str) and told in _zones() else None


def _zone(value: object) -> ZoneInfo:
    known = _zones()
    if str(value) not in known:
        raise wrong(value, "a time zone by its name, such as 'Europe/London'", nearest(str(value), known))
    return ZoneInfo(str(value))


def _site(value: object) -> str:
    """The address as it is sent: what is not ASCII in its path is percent-encoded (RFC 3986)."""
    if not _SITE.fullmatch(str(value)):
        raise wrong(value, "the address of the site, such as 'https://course.example'", _in_ascii(str(value)))
    sent = quote(str(value), safe=":/%").rstrip("/")
    if len(sent) + sent.count("~") > _LONGEST_SITE:  # which takes two places there
        raise wrong(value, f"an address of at most {_LONGEST_SITE} characters, so that it fits into a short message")
    return sent


def _in_ascii(site: str) -> str:
    """Name the host with letters beyond ASCII as it is written for programs: IDNA 2008 (RFC 5891)."""
    import idna  # noqa: PLC0415 - loaded late: hardly anybody needs it

    host = urlsplit(site).hostname or ""
    try:
        written = idna.encode(host, uts46=True).decode("ascii")
    except (idna.IDNAError, ValueError):
        return ""
    return f"Write the host as programs know it: {written!r}." if written != host else ""


def _email(value: object) -> str:
    """A small check: only a letter that arrives proves an address."""
    if value is not None and not _EMAIL.fullmatch(str(value).strip(" ")):
        raise wrong(value, "an address on one line, such as 'greens@course.example', without %, ? and #")
    return str(value or "").strip(" ")


def _telephone(value: object) -> str:
    if value is not None and not _TELEPHONE.fullmatch(str(value).strip(" ")):
        raise wrong(value, "digits, with '+', blanks, brackets or hyphens, such as '+44 1632 960000'")
    return str(value or "").strip(" ")


def _weekdays(value: object) -> tuple[int, ...]:
    names = str(value).lower().replace(" and ", ", ")
    match = re.fullmatch(r"^(\w+) to (\w+)$", names)
    ends = match.groups() if match else tuple(part.strip() for part in names.split(","))
    for name in ends:
        if name not in _WEEKDAYS:
            raise wrong(value, "weekdays, such as 'Monday to Friday'", nearest(name, _WEEKDAYS))
    places = tuple(_WEEKDAYS.index(name) for name in ends)
    if not match:
        return tuple(sorted(set(places)))
    first, last = places
    return tuple(sorted((first + step) % 7 for step in range((last - first) % 7 + 1)))


class _Place(Model):
    latitude: Annotated[Number, within(-90, 90, "degrees north from -90 to 90")]
    longitude: Annotated[Number, within(-180, 180, "degrees east from -180 to 180")]
    elevation: Annotated[Length, within(-500_000, 6_000_000, "a height above the sea up to 6000 m")] = 0.0


class _Contact(Model):
    office: Text
    email: Annotated[str, BeforeValidator(_email)] = ""
    telephone: Annotated[str, BeforeValidator(_telephone)] = ""


class _Standards(Model):
    sand_density: Density | None = None
    green_speed: Annotated[Roll, within(*ROLL_LIMITS)] | None = None
    working_days: Annotated[tuple[int, ...], BeforeValidator(_weekdays)] = (0, 1, 2, 3, 4)
    working_hours: HoursFromTo = USUAL_WORKING_HOURS
    breaks: SeveralHours = ()

    @field_validator("breaks")
    @classmethod
    def _leave_time_to_work(cls, breaks: tuple[HoursOfDay, ...], info: ValidationInfo) -> tuple[HoursOfDay, ...]:
        hours = info.data.get("working_hours")  # none where they could not be read
        if hours is not None and not without_breaks(hours, breaks):
            raise wrong("breaks from the first working hour to the last", "breaks that leave time to work")
        return breaks


class _Club(Model):
    format: FormatNumber = 1
    name: Text
    course: Text = "the course"
    site: Annotated[str, BeforeValidator(_site)]
    first_address: Annotated[str, BeforeValidator(_site)] = ""
    place: _Place
    time_zone: Annotated[ZoneInfo, BeforeValidator(_zone)]
    language: Text = "en-GB"
    look: LookBlock = LookBlock()
    entry_counts_for: EntryAge | None = None
    house_style: HouseStyleBlock = HouseStyleBlock()
    contact: _Contact
    decides: Words = ""
    scores: Words = ""
    standards: _Standards = _Standards()
    weather: WeatherBlock | None = None
    log_sheet: LogSheetBlock | None = None
    planning: PlanningBlock = PlanningBlock()  # private: `planning_from` reads it beside the club, never into it
    cautions: Lines = []

    @field_validator("language")
    @classmethod
    def _known_language(cls, language: str) -> str:
        if not _LANGUAGE.fullmatch(language):
            expected = "the IETF tag of a language, such as 'en-GB' or 'en-US'"
            raise wrong(language, expected, language_meant(language))
        return next((known for known in BUILT_IN if known.lower() == language.lower()), language)


def club_from(document: Located, files: Files, *, file: str, problems: list[Problem]) -> Club | None:
    """Read the club file.

    Args:
        document: the YAML of club.yaml.
        files: the club's files, for its badge.
        file: its name for problems.
        problems: where problems are added.

    Returns:
        The club, or None when something is wrong; names of sets of surfaces are read by `groups_from`.
    """
    told = validated(_Club, document, file=file, problems=problems)
    look_block = block_of(LookBlock, document, "look") if told is None else told.look
    look = look_from(look_block or LookBlock(), document, files, problems)
    if told is None:
        return None
    return Club(
        name=told.name,
        course=told.course,
        site=told.site,
        time_zone=told.time_zone,
        latitude_deg=told.place.latitude,
        longitude_deg=told.place.longitude,
        elevation_m=told.place.elevation / 1000,
        language=told.language,
        contact=Contact(office=told.contact.office, email=told.contact.email, telephone=told.contact.telephone),
        decides=told.decides,
        cautions=tuple(told.cautions),
        sand_density_t_per_m3=told.standards.sand_density,
        target_speed_mm=told.standards.green_speed,
        working_days=told.standards.working_days,
        working_hours=told.standards.working_hours,
        breaks=told.standards.breaks,
        tone=told.house_style.tone,
        sign_off=told.house_style.sign_off,
        scores=told.scores,
        entry_counts_for_minutes=told.entry_counts_for,
        look=look,
        first_site=told.first_address,
    )
