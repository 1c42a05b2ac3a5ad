"""Who sees what a club tells: every field of its records is placed here, and what is private is taken out by this list.

`tests/records/test_privacy.py` fails on a field that has no place, and on one that stays although it is private. The
README's section "What members may see" says the same of the fields of the files, and a test compares the two.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from enum import Enum
from typing import Any, Final, TypeVar

from swardcast.records.club import Club, Contact, Group, HoursOfDay, Surface
from swardcast.records.course_readings import Measured
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.log import (
    BackToNormal,
    Correction,
    EntryHead,
    GrowthHeldBack,
    Limit,
    MorningStatus,
    NoteToMembers,
    Observation,
    PlanChange,
    Progress,
)
from swardcast.records.log_sheet import LogSheet
from swardcast.records.look import Badge, Look
from swardcast.records.operations import (
    Dressing,
    Grooving,
    HeightOfCut,
    OtherWork,
    ProductUse,
    SandInjection,
    Seeding,
    Stripping,
    Tining,
    Trenching,
)
from swardcast.records.plan import FollowUp, Job, LocalRule, OwnWords, Reading, Stretch, Withdrawal
from swardcast.records.planning import Planning
from swardcast.records.readings import DayOfWeather, DaysOfReadings
from swardcast.records.readings import Reading as StationReading
from swardcast.records.weather import Forecast, Weather, WeatherSource
from swardcast.records.weather_setup import StationFile, WeatherSetup

__all__ = ["SEEN", "Seen", "for_members"]

RecordT = TypeVar("RecordT", Job, EntryHead)


class Seen(Enum):
    """Who sees a field."""

    PUBLIC = "public"
    """Members see it, or what is worked out from it."""
    AS_TYPED = "as typed"
    """Members read it in the words in which the club typed it, so nothing else may be typed there."""
    BEHIND = "behind"
    """No page shows it and it is no secret: where something is written, and how files are laid out."""
    PRIVATE = "private"
    """It reaches no byte that is published: neither the field nor whatever lies below it."""


def _placed(*, public: str = "", as_typed: str = "", behind: str = "", private: str = "") -> dict[str, Seen]:
    names = {Seen.PUBLIC: public, Seen.AS_TYPED: as_typed, Seen.BEHIND: behind, Seen.PRIVATE: private}
    return {name: seen for seen, told in names.items() for name in told.split()}


SEEN: Final[Mapping[type, Mapping[str, Seen]]] = {
    ClubRecords: _placed(public="club surfaces jobs entries weather fixtures", private="planning"),
    Club: _placed(
        public="site first_site time_zone latitude_deg longitude_deg elevation_m language contact tone groups look "
        "sand_density_t_per_m3 target_speed_mm working_days working_hours breaks entry_counts_for_minutes catalogue",
        as_typed="name course decides cautions sign_off scores",
    ),
    Contact: _placed(as_typed="office email telephone"),
    HoursOfDay: _placed(public="begins ends"),
    Group: _placed(public="surfaces", as_typed="name"),
    Look: _placed(public="badge palette"),
    Badge: _placed(public="name media_type data ratio"),
    Surface: _placed(public="id kind hole area_m2 grass", as_typed="name"),
    Job: _placed(
        public="id announced starts surfaces operations surfaces_a_day spare_days while_working reopens_after "
        "follow_up normal_after readings own_parts local_rules withdrawn",
        as_typed="title programme why own_words scores meanwhile",
        behind="file line",
        private="private_note",
    ),
    Reading: _placed(public="on", as_typed="what found target"),
    Stretch: _placed(public="from_days to_days", as_typed="source"),
    FollowUp: _placed(public="from_minutes to_minutes"),
    LocalRule: _placed(public="rule starts until", as_typed="says decided_by"),
    OwnWords: _placed(public="part instead", as_typed="markdown"),
    Withdrawal: _placed(public="at instead", as_typed="because", behind="line"),
    Tining: _placed(public="kind diameter_mm inside_diameter_mm across_mm along_mm depth_mm passes"),
    SandInjection: _placed(public="kind diameter_mm across_mm along_mm depth_mm sand"),
    Grooving: _placed(public="kind blade_mm spacing_mm depth_mm passes"),
    Stripping: _placed(public="kind depth_mm share"),
    Dressing: _placed(public="kind sand"),
    Seeding: _placed(public="kind rate_g_per_m2", as_typed="seed"),
    ProductUse: _placed(public="kind label_read_on", as_typed="product re_entry signs label_read_by rate water_in"),
    HeightOfCut: _placed(public="kind from_mm to_mm"),
    Trenching: _placed(public="kind length_m width_mm depth_mm"),
    OtherWork: _placed(public="kind"),
    EntryHead: _placed(
        public="id at at_s true_from true_from_s instead_of",
        as_typed="by words",
        behind="file line",
        private="private_note",
    ),
    MorningStatus: _placed(public="head play limits", as_typed="why"),
    Limit: _placed(public="name until outlasts rule", as_typed="what decided_by"),
    Progress: _placed(public="head step job surfaces as_done play no_work_before", as_typed="because"),
    Observation: _placed(public="head job surfaces share_left turf_cover green_speed_mm how", as_typed="readings"),
    Measured: _placed(public="value meter"),
    BackToNormal: _placed(public="head job surfaces"),
    PlanChange: _placed(public="head job change starts", as_typed="because"),
    GrowthHeldBack: _placed(public="head by surfaces first_day last_day"),
    NoteToMembers: _placed(public="head job"),
    Correction: _placed(public="head corrects"),
    Fixture: _placed(
        public="id series first_day last_day starts_at ends_at", as_typed="name", behind="where is_for_visitors"
    ),
    Weather: _placed(
        public="observed_c rain_mm history_c forecasts sources incomplete", behind="history_lowest_c history_rain_mm"
    ),
    Forecast: _placed(public="issued_at tmean_c"),
    WeatherSource: _placed(
        public="name used_for credit address licence licence_address", behind="fresh_until last_modified"
    ),
    StationReading: _placed(public="at lowest_c highest_c rain_mm until"),
    DayOfWeather: _placed(public="tmin_c tmax_c rain_mm"),
    DaysOfReadings: _placed(public="days incomplete"),
    StationFile: _placed(
        behind="day time temperature lowest highest rain fahrenheit inches written delimiter decimal_comma missing "
        "readings rain_count clock encoding"
    ),
    WeatherSetup: _placed(behind="station_file service service_address observed_days history_years"),
    LogSheet: _placed(behind="columns kinds plays written delimiter decimal_comma encoding sheet"),
}
"""Every field of every record that is read from a club folder. What lies below a private one, such as all that
`Planning` holds, needs no place of its own."""


def for_members(records: ClubRecords) -> ClubRecords:
    """Take everything private out of a club's records.

    Whatever is composed for members is composed from what this leaves, so that nothing private can reach it.

    Args:
        records: all that the club folder tells.

    Returns:
        The same records without planning and without private notes.
    """
    return replace(
        records,
        planning=Planning(),
        jobs={name: _public(job) for name, job in records.jobs.items()},
        entries=tuple(replace(entry, head=_public(entry.head)) for entry in records.entries),
    )


def _public(record: RecordT) -> RecordT:
    placed = SEEN[type(record)]
    empty: dict[str, Any] = {one.name: one.default for one in fields(record) if placed[one.name] is Seen.PRIVATE}
    return replace(record, **empty)
