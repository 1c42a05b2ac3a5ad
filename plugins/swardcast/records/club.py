"""The club, its course and its surfaces."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date, time
from enum import Enum
from functools import partial
from typing import Final
from zoneinfo import ZoneInfo

from swardcast.language.catalogue import Catalogue, built_in
from swardcast.language.voice import Voice
from swardcast.records.look import USUAL_LOOK, Look

__all__ = [
    "USUAL_WORKING_HOURS",
    "Club",
    "Contact",
    "Grass",
    "Group",
    "HoursOfDay",
    "Surface",
    "SurfaceKind",
    "Tone",
    "without_breaks",
]


class SurfaceKind(Enum):
    """Kinds of surface, in the trade's words."""

    GREEN = "green"
    TEE = "tee"
    APPROACH = "approach"
    FAIRWAY = "fairway"
    ROUGH = "rough"
    BUNKER = "bunker"
    PRACTICE_GROUND = "practice ground"

    @property
    def plural(self) -> str:
        """The word for several of them."""
        return "approaches" if self is SurfaceKind.APPROACH else f"{self.value}s"


class Tone(Enum):
    """How much a notice says."""

    SHORT = "short"
    FULL = "full"


class Grass(Enum):
    """Kinds of grass that healing tells apart; each is a key of `turf.growth.GRASSES` (tested)."""

    COOL_SEASON = "cool-season"
    ANNUAL_MEADOW_GRASS = "annual meadow-grass"
    WARM_SEASON = "warm-season"


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """Whom members may ask: an office, never a person, unless the club types one."""

    office: str
    email: str = ""
    telephone: str = ""

    @property
    def telephone_link(self) -> str:
        """The address that rings the number (RFC 3966), or ""."""
        return f"tel:{self.telephone.replace(' ', '')}" if self.telephone else ""

    @property
    def telephone_on_one_line(self) -> str:
        """The number as typed, with blanks at which no line breaks."""
        return self.telephone.replace(" ", "\u00a0")


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursOfDay:
    """A part of the day by the club's clock.

    Args:
        begins: local time.
        ends: local time of the same day, later than `begins`.
    """

    begins: time
    ends: time


USUAL_WORKING_HOURS: Final = HoursOfDay(begins=time(6, 30), ends=time(15, 30))
"""Working hours of a club that tells none: judgement, no published source."""


def without_breaks(hours: HoursOfDay, breaks: Iterable[HoursOfDay]) -> tuple[HoursOfDay, ...]:
    """Cut breaks out of a day's hours.

    Args:
        hours: the hours.
        breaks: breaks, in any order; they may overlap, and lie outside the hours.

    Returns:
        What is left, in order; nothing when the breaks take it all.
    """
    left, begins = [], hours.begins
    for one in sorted(breaks, key=lambda one: one.begins):
        if begins < min(one.begins, hours.ends):
            left.append(HoursOfDay(begins=begins, ends=min(one.begins, hours.ends)))
        begins = max(begins, one.ends)
    if begins < hours.ends:
        left.append(HoursOfDay(begins=begins, ends=hours.ends))
    return tuple(left)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A name that members use for a set of surfaces, such as "the front nine greens".

    Args:
        name: the name, as inside a sentence.
        surfaces: ids of its surfaces.
    """

    name: str
    surfaces: frozenset[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Club:
    """The club as members know it.

    Args:
        name: the club's name.
        course: the course's name, for sentences such as "the course".
        site: address of the published site as it is sent (RFC 3986: in ASCII), ending without a slash.
        time_zone: zone of the club's local time.
        latitude_deg: -90 to 90.
        longitude_deg: -180 to 180.
        elevation_m: height above the sea.
        language: IETF language tag.
        contact: whom to ask.
        decides: who decides about play, in the club's words.
        cautions: the club's own cautions, one sentence each.
        sand_density_t_per_m3: bulk density of the club's sand, or None for the usual one.
        target_speed_mm: length of the roll on the speed meter that the club aims at, mm, or None.
        working_days: weekdays on which work is done, 0 for Monday to 6 for Sunday.
        working_hours: hours of work on those days.
        breaks: breaks in them.
        tone: how much a notice says.
        sign_off: the last line of every notice, or "".
        scores: the club's own words on scores and handicap, or "".
        groups: names of sets of surfaces, as members say them.
        entry_counts_for_minutes: time after which an entry no longer says how play stands, or None for the end of its
            day, which it never outlasts.
        look: its badge and colours.
        catalogue: the phrases of the club's language, its own among them.
        first_site: the address that the site had first, or "" where it has not moved.
    """

    name: str
    course: str
    site: str
    time_zone: ZoneInfo
    latitude_deg: float
    longitude_deg: float
    elevation_m: float
    language: str
    contact: Contact
    decides: str
    cautions: tuple[str, ...]
    sand_density_t_per_m3: float | None
    target_speed_mm: float | None
    working_days: tuple[int, ...]
    working_hours: HoursOfDay = USUAL_WORKING_HOURS
    breaks: tuple[HoursOfDay, ...] = ()
    tone: Tone = Tone.FULL
    sign_off: str = ""
    scores: str = ""
    groups: tuple[Group, ...] = ()
    entry_counts_for_minutes: float | None = None
    look: Look = USUAL_LOOK
    catalogue: Catalogue = field(default_factory=partial(built_in, "en-GB"))
    first_site: str = ""

    @property
    def named_by(self) -> str:
        """The address by which feeds and calendars know what is ours, whatever the site's address is now."""
        return self.first_site or self.site

    def voice(self, near: date) -> Voice:
        """Give the voice in which members are spoken to.

        Args:
            near: the day of the reader.

        Returns:
            The club's language, with its own names of sets of surfaces.
        """
        sets = tuple((group.name, group.surfaces) for group in self.groups)
        return Voice(catalogue=self.catalogue, near=near, set_names=sets)


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """One green, tee, fairway, bunker or practice area.

    Args:
        id: name for life, for example "green-7".
        kind: what it is.
        hole: number of the hole, or None.
        name: how members know it, for example "the practice green".
        area_m2: area, or None where it was not measured.
        grass: the kind of grass, or None on a bunker.
    """

    id: str
    kind: SurfaceKind
    hole: int | None
    name: str
    area_m2: float | None
    grass: Grass | None

    @property
    def is_numbered(self) -> bool:
        """Whether it goes by the number of its hole and has no name of its own."""
        return self.name == f"{self.kind.value} {self.hole}"
