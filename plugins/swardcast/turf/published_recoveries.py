"""Recoveries after aeration that others have published: what was done, where, and between which days it had healed.

Five come from trials, twenty-one from reports of courses. Every reading that a source does not print stands in
`assumed` and is a judgement. Where sand is "heavy" 2.4 mm stay on the surface, where it is "light" 0.3 mm: judgement.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum
from typing import Final

from swardcast.turf.healing import SOLID_LASTING_SHARE, Opening, groove_opening, tine_opening

__all__ = ["HEAVY_MM", "LIGHT_MM", "PUBLISHED_RECOVERIES", "PublishedRecovery", "Seen"]

HEAVY_MM: Final = 2.4
LIGHT_MM: Final = 0.3


class Seen(Enum):
    """The milestone that a source speaks of."""

    SETTLED = "most putts rolled true"
    HOLES_CLOSED = "holes closed"
    BACK_TO_NORMAL = "back to normal"
    COMPLETE_COVER = "99 % cover"


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedRecovery:
    """One recovery.

    Args:
        name: where and when, short.
        source: what it was read from.
        is_trial: whether it comes from a trial; otherwise from a course's own report.
        weight: 1, or 0.7 for a report that stops part-way.
        stations: places whose mean temperatures stand for it, keys of `station_normals.MONTHLY_MEANS_C`.
        starts: month and day of the work; with two events the mean of both was printed.
        work: the work in words.
        openings: what it left.
        surplus_mm: sand that stayed on the surface.
        seen: the milestone.
        from_day: first day of the interval in which it was reached.
        to_day: last day; infinite when it was not reached while somebody looked.
        warmer_by_c: how much warmer it was than the normals.
        growth_factor: share of the growth that was left, where it was dull.
        frost_days: days, counted from 0, on which frost stood on the leaf.
        assumed: what the source does not print.
    """

    name: str
    source: str
    is_trial: bool
    weight: float
    stations: tuple[str, ...]
    starts: tuple[tuple[int, int], ...]
    work: str
    openings: tuple[Opening, ...]
    surplus_mm: float
    seen: Seen
    from_day: float
    to_day: float = math.inf
    warmer_by_c: float = 0.0
    growth_factor: float = 1.0
    frost_days: tuple[int, ...] = ()
    assumed: tuple[str, ...] = ()

    @property
    def is_dated(self) -> bool:
        """Whether the interval says when, and not only "later than"."""
        return self.to_day - self.from_day <= 30  # noqa: PLR2004 - a month


def _hollow(diameter_mm: float, across_mm: float = 50.8, along_mm: float = 50.8, passes: int = 1) -> Opening:
    return tine_opening(diameter_mm, across_mm, along_mm, passes=passes)


def _solid(diameter_mm: float, across_mm: float = 50.8, along_mm: float = 50.8) -> Opening:
    return tine_opening(diameter_mm, across_mm, along_mm, lasting_share=SOLID_LASTING_SHARE)


_SPACING: Final = "spacing not printed for this size: 50.8 mm square"
_HEAVY: Final = "heavy sand not printed: as for the 12.7 mm patterns"
_REPORT: Final = "report of a course"

PUBLISHED_RECOVERIES: Final = (
    PublishedRecovery(
        name="Virginia, 31 March and 10 September 2009",
        source="Ervin & Nichols 2010, Green Section Record 48(16), table 2",
        is_trial=True,
        weight=1.0,
        stations=("Richmond VA",),
        starts=((3, 31), (9, 10)),
        work="hollow tines 6.35 mm at 33.8 x 38.1 mm, two passes, heavy sand",
        openings=(_hollow(6.35, 33.8, 38.1, passes=2),),
        surplus_mm=HEAVY_MM,
        seen=Seen.COMPLETE_COVER,
        from_day=15,
        to_day=17,
        assumed=(
            "the year: from the caption of a reprint",
            "days are compared with the mean of both events",
            "the autumn half was torn, so its days are an upper bound",
        ),
    ),
    PublishedRecovery(
        name="Washington State, 1 October 2008",
        source="Proctor et al. 2010 to 2013, trials in Washington State",
        is_trial=True,
        weight=1.0,
        stations=("Spokane WA",),
        starts=((10, 1),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=14,
        to_day=61,
    ),
    PublishedRecovery(
        name="Washington State, 1 October 2009",
        source="Proctor et al. 2010 to 2013, trials in Washington State",
        is_trial=True,
        weight=1.0,
        stations=("Spokane WA",),
        starts=((10, 1),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=61,
    ),
    PublishedRecovery(
        name="Washington State, 15 October 2008",
        source="Proctor et al. 2010 to 2013, trials in Washington State",
        is_trial=True,
        weight=1.0,
        stations=("Spokane WA",),
        starts=((10, 15),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=47,
    ),
    PublishedRecovery(
        name="Washington State, 15 October 2009",
        source="Proctor et al. 2010 to 2013, trials in Washington State",
        is_trial=True,
        weight=1.0,
        stations=("Spokane WA",),
        starts=((10, 15),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=47,
    ),
    PublishedRecovery(
        name="Wisconsin, 6 September 2011",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Green Bay WI",),
        starts=((9, 6),),
        work="hollow tines 15.9 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(15.9),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=10,
        to_day=14,
        assumed=(
            _SPACING,
            _HEAVY,
        ),
    ),
    PublishedRecovery(
        name="California, 12 April 2011",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("San Francisco AP CA", "Stockton CA"),
        starts=((4, 12),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=10,
        to_day=16,
    ),
    PublishedRecovery(
        name="California, 12 April 2011",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("San Francisco AP CA", "Stockton CA"),
        starts=((4, 12),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.BACK_TO_NORMAL,
        from_day=22,
        to_day=28,
    ),
    PublishedRecovery(
        name="Oklahoma, 10 September 2012",
        source=_REPORT,
        is_trial=False,
        weight=0.7,
        stations=("Tulsa OK",),
        starts=((9, 10),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=7,
        to_day=10,
    ),
    PublishedRecovery(
        name="Michigan, 6 September 2011",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Detroit MI",),
        starts=((9, 6),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=9,
        to_day=17,
    ),
    PublishedRecovery(
        name="Michigan, 22 September 2014",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Detroit MI",),
        starts=((9, 22),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=13,
        to_day=30,
    ),
    PublishedRecovery(
        name="Michigan, 4 September 2014",
        source=_REPORT,
        is_trial=False,
        weight=0.7,
        stations=("Detroit MI",),
        starts=((9, 4),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=7,
        to_day=11,
    ),
    PublishedRecovery(
        name="Michigan, 10 April 2017",
        source=_REPORT,
        is_trial=False,
        weight=0.7,
        stations=("Detroit MI",),
        starts=((4, 10),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=12,
        to_day=18,
        warmer_by_c=1.5,
        assumed=("1.5 C warmer than the normals, as the report says",),
    ),
    PublishedRecovery(
        name="Southern California, 7 June 2011",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Los Angeles C.O. CA",),
        starts=((6, 7),),
        work="hollow tines 12.7 mm at 38.1 x 38.1 mm, heavy sand",
        openings=(_hollow(12.7, 38.1, 38.1),),
        surplus_mm=HEAVY_MM,
        seen=Seen.BACK_TO_NORMAL,
        from_day=18,
        to_day=23,
    ),
    PublishedRecovery(
        name="Virginia, 10 May 2017",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Richmond VA",),
        starts=((5, 10),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm and solid tines 12.7 mm at 76 x 76 mm, heavy sand",
        openings=(
            _hollow(12.7),
            _solid(12.7, 76.0, 76.0),
        ),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=10,
        to_day=21,
    ),
    PublishedRecovery(
        name="Georgia, 25 February 2019",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Atlanta GA",),
        starts=((2, 25),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=20,
        to_day=30,
    ),
    PublishedRecovery(
        name="Illinois, 1 October 2010",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Chicago IL",),
        starts=((10, 1),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=14,
        frost_days=(3, 5, 7, 9, 11),
        assumed=("frost on days 3, 5, 7, 9 and 11",),
    ),
    PublishedRecovery(
        name="California, 25 March 2019",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Sacramento CA",),
        starts=((3, 25),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=15,
        to_day=25,
        growth_factor=0.6,
    ),
    PublishedRecovery(
        name="New Jersey, 25 October",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Philadelphia PA",),
        starts=((10, 25),),
        work="hollow tines 9.5 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(9.5),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=20,
        to_day=60,
        assumed=(
            _SPACING,
            _HEAVY,
            "the year is not printed",
        ),
    ),
    PublishedRecovery(
        name="New Jersey, 22 November",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Philadelphia PA",),
        starts=((11, 22),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=99,
        assumed=("the year is not printed",),
    ),
    PublishedRecovery(
        name="Western Australia, 18 March 2012",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Bunbury",),
        starts=((3, 18),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.BACK_TO_NORMAL,
        from_day=21,
        to_day=28,
    ),
    PublishedRecovery(
        name="Western Australia, 1 April 2016",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Bunbury",),
        starts=((4, 1),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_hollow(12.7),),
        surplus_mm=HEAVY_MM,
        seen=Seen.BACK_TO_NORMAL,
        from_day=26,
        to_day=29,
    ),
    PublishedRecovery(
        name="Western Australia, 5 October 2022",
        source=_REPORT,
        is_trial=False,
        weight=0.7,
        stations=("Bunbury",),
        starts=((10, 5),),
        work="hollow tines 12.7 mm at 50.8 x 50.8 mm and grooves 2 mm wide, 25 mm apart, heavy sand",
        openings=(
            _hollow(12.7),
            groove_opening(2.0, 25.0),
        ),
        surplus_mm=HEAVY_MM,
        seen=Seen.BACK_TO_NORMAL,
        from_day=22,
        to_day=28,
    ),
    PublishedRecovery(
        name="England, 2 September 2013",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Essex",),
        starts=((9, 2),),
        work="solid tines 12 mm at 50.8 x 50.8 mm, heavy sand",
        openings=(_solid(12.0),),
        surplus_mm=HEAVY_MM,
        seen=Seen.HOLES_CLOSED,
        from_day=7,
        to_day=13,
        assumed=(_SPACING,),
    ),
    PublishedRecovery(
        name="Delaware, 1 July",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Wilmington DE",),
        starts=((7, 1),),
        work="hollow tines 7.6 mm at 25.4 x 25.4 mm, light sand",
        openings=(_hollow(7.6, 25.4, 25.4),),
        surplus_mm=LIGHT_MM,
        seen=Seen.SETTLED,
        from_day=2,
        to_day=5,
        assumed=("the year is not printed",),
    ),
    PublishedRecovery(
        name="Delaware, 6 June 2016",
        source=_REPORT,
        is_trial=False,
        weight=1.0,
        stations=("Wilmington DE",),
        starts=((6, 6),),
        work="solid tines 9.5 mm at 50.8 x 50.8 mm, light sand",
        openings=(_solid(9.5),),
        surplus_mm=LIGHT_MM,
        seen=Seen.SETTLED,
        from_day=2,
        to_day=5,
        assumed=(_SPACING,),
    ),
)
"""The 26 recoveries on which the healing model was fitted."""
