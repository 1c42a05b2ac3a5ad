"""club.yaml and surfaces.yaml -> a club and its surfaces."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Annotated, Any, Final
from zoneinfo import ZoneInfo, available_timezones

from pydantic import BeforeValidator, ValidationInfo, field_validator

from swardcast.errors import Problem, nearest
from swardcast.moments import WEEKDAYS
from swardcast.quantities import QuantityError, parse_area_m2
from swardcast.reading.schema import (
    ROLL_LIMITS,
    Area,
    Density,
    Length,
    Lines,
    Model,
    Number,
    Roll,
    Text,
    Words,
    one_of,
    validated,
    within,
    wrong,
)
from swardcast.reading.sheet_block import LogSheetBlock
from swardcast.reading.time_spans import HoursFromTo, SeveralHours
from swardcast.reading.weather_block import WeatherBlock
from swardcast.reading.yaml_text import Located
from swardcast.records.club import (
    USUAL_WORKING_HOURS,
    Club,
    Contact,
    Grass,
    HoursOfDay,
    Surface,
    SurfaceKind,
    without_breaks,
)

__all__ = ["club_from", "identifier", "surfaces_from"]

_WEEKDAYS: Final = tuple(day.lower() for day in WEEKDAYS)
_SITE: Final = re.compile(r"^https?://[a-z0-9][a-z0-9.:-]*(/[^\s?#]*)?$", re.IGNORECASE)
_ID: Final = re.compile(r"^[a-z0-9]+(?:-[a-z0-9]+)*$")


def _zone(value: object) -> ZoneInfo:
    known = available_timezones()
    if str(value) not in known:
        raise wrong(value, "a time zone by its name, such as 'Europe/London'", nearest(str(value), known))
    return ZoneInfo(str(value))


def _site(value: object) -> str:
    if not _SITE.match(str(value)):
        raise wrong(value, "the address of the site, such as 'https://course.example'")
    return str(value).rstrip("/")


def _weekdays(value: object) -> tuple[int, ...]:
    names = str(value).lower().replace(" and ", ", ")
    match = re.match(r"^(\w+) to (\w+)$", names)
    ends = match.groups() if match else tuple(part.strip() for part in names.split(","))
    for name in ends:
        if name not in _WEEKDAYS:
            raise wrong(value, "weekdays, such as 'Monday to Friday'", nearest(name, _WEEKDAYS))
    places = tuple(_WEEKDAYS.index(name) for name in ends)
    if not match:
        return tuple(sorted(set(places)))
    first, last = places
    return tuple(sorted((first + step) % 7 for step in range((last - first) % 7 + 1)))


def identifier(value: object) -> str:
    """Read an id: it becomes part of addresses, so it has small letters, digits and hyphens only.

    Args:
        value: the id as written.

    Returns:
        The id.

    Raises:
        PydanticCustomError: when it has other characters.
    """
    if not _ID.match(str(value)):
        raise wrong(value, "a short name in small letters, digits and hyphens, such as 'practice-green'")
    return str(value)


class _Place(Model):
    latitude: Annotated[Number, within(-90, 90, "degrees north from -90 to 90")]
    longitude: Annotated[Number, within(-180, 180, "degrees east from -180 to 180")]
    elevation: Annotated[Length, within(-500_000, 6_000_000, "a height above the sea up to 6000 m")] = 0.0


class _Contact(Model):
    office: Text
    email: Words = ""
    telephone: Words = ""


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
    name: Text
    course: Text = "the course"
    site: Annotated[str, BeforeValidator(_site)]
    place: _Place
    time_zone: Annotated[ZoneInfo, BeforeValidator(_zone)]
    language: Text = "en-GB"
    contact: _Contact
    decides: Words = ""
    scores: Words = ""
    standards: _Standards = _Standards()
    weather: WeatherBlock | None = None
    log_sheet: LogSheetBlock | None = None
    cautions: Lines = []

    @field_validator("language")
    @classmethod
    def _known_language(cls, language: str) -> str:
        if language != "en-GB":
            raise wrong(language, "'en-GB', the only language so far")
        return language


def club_from(document: Located, *, file: str, problems: list[Problem]) -> Club | None:
    """Read the club file.

    Args:
        document: the YAML of club.yaml.
        file: its name for problems.
        problems: where problems are added.

    Returns:
        The club, or None when something is wrong.
    """
    told = validated(_Club, document, file=file, problems=problems)
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
        scores=told.scores,
    )


_GrassWord = Annotated[Grass, one_of(Grass)]
_AnArea = Annotated[Area, within(1, 200_000, "an area from 1 m2 to 20 ha")]


class _Hole(Model):
    area: _AnArea | None = None
    grass: _GrassWord | None = None


def _hole(value: object) -> Any:
    if isinstance(value, dict):
        return value
    try:
        parse_area_m2(value)
    except QuantityError as error:
        raise wrong(error.found, error.expected, error.hint) from error
    return {"area": value}


class _Named(Model):
    id: Annotated[str, BeforeValidator(identifier)]
    name: Text
    hole: Annotated[int, within(1, 36, "a hole from 1 to 36")] | None = None
    area: _AnArea | None = None
    grass: _GrassWord | None = None


class _Group(Model):
    grass: _GrassWord | None = None
    holes: dict[str, Annotated[_Hole, BeforeValidator(_hole)]] = {}
    named: list[_Named] = []

    @field_validator("holes", mode="before")
    @classmethod
    def _holes_by_number(cls, value: object) -> object:
        for name in value if isinstance(value, dict) else ():
            if not (name.isdigit() and 1 <= int(name) <= 36):  # noqa: PLR2004 - two courses of 18
                raise wrong(name, "the number of a hole, such as '7: 480 m2'")
        return value


class _Surfaces(Model):
    greens: _Group = _Group()
    tees: _Group = _Group()
    approaches: _Group = _Group()
    fairways: _Group = _Group()
    roughs: _Group = _Group()
    bunkers: _Group = _Group()
    practice_grounds: _Group = _Group()


def surfaces_from(document: Located, *, file: str, problems: list[Problem]) -> dict[str, Surface] | None:
    """Read the surfaces file.

    Args:
        document: the YAML of surfaces.yaml.
        file: its name for problems.
        problems: where problems are added.

    Returns:
        Surfaces by id, or None when something is wrong.
    """
    told = validated(_Surfaces, document, file=file, problems=problems)
    if told is None:
        return None
    surfaces: dict[str, Surface] = {}
    for kind in SurfaceKind:
        group: _Group = getattr(told, kind.plural.replace(" ", "_"))
        for surface, path in _surfaces_of(kind, group):
            line = document.line((kind.plural, *path))
            if surface.id in surfaces:
                problems.append(
                    Problem(
                        file=file,
                        line=line,
                        field="id",
                        found=f"{surface.id!r} a second time",
                        expected="an id of its own for each surface",
                    )
                )
            if kind is not SurfaceKind.BUNKER and surface.grass is None:
                problems.append(
                    Problem(
                        file=file,
                        line=line,
                        field=f"{kind.plural}.grass",
                        found="nothing",
                        expected=f"one of: {', '.join(g.value for g in Grass)}",
                    )
                )
            surfaces[surface.id] = surface
    if not surfaces:
        problems.append(
            Problem(
                file=file,
                line=1,
                found="no surface at all",
                expected="greens, tees, fairways or bunkers with their holes",
            )
        )
    return surfaces


def _surfaces_of(kind: SurfaceKind, group: _Group) -> Iterator[tuple[Surface, tuple[str | int, ...]]]:
    for number, hole in group.holes.items():
        surface = Surface(
            id=f"{kind.value.replace(' ', '-')}-{int(number)}",
            kind=kind,
            hole=int(number),
            name=f"{kind.value} {int(number)}",
            area_m2=hole.area,
            grass=None if kind is SurfaceKind.BUNKER else hole.grass or group.grass,
        )
        yield surface, ("holes", number)
    for place, named in enumerate(group.named):
        surface = Surface(
            id=named.id,
            kind=kind,
            hole=named.hole,
            name=named.name,
            area_m2=named.area,
            grass=None if kind is SurfaceKind.BUNKER else named.grass or group.grass,
        )
        yield surface, ("named", place)
