"""A year's sand on greens as others have printed it: information to set one's own beside, and no rule.

Amounts stand as printed, in the units of print. Layers follow by the exact factors of `quantities`, and from masses by
the density that is named beside them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from swardcast.quantities import Sand, parse_sand
from swardcast.records.translate import sand_depth_mm

__all__ = ["PUBLISHED", "PublishedSand", "layers_mm"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedSand:
    """A year's sand in print.

    Args:
        name: short name of its phrases, small letters and hyphens.
        low: the amount, or the lower end of it, for a year.
        high: the upper end, or the same.
        printed: the amount as printed.
        source: author, year, title, where.
    """

    name: str
    low: Sand
    high: Sand
    printed: str
    source: str


def _printed(name: str, low: str, high: str, printed: str, source: str) -> PublishedSand:
    return PublishedSand(name=name, low=parse_sand(low), high=parse_sand(high or low), printed=printed, source=source)


PUBLISHED: Final = (
    _printed(
        "advice-2019",
        "25 ft3/1000 ft2",
        "35 ft3/1000 ft2",
        "25 to 35 ft3/1000 ft2",
        "Whitlark and Thompson 2019, Light and frequent topdressing programs, USGA Green Section Record 57(9)",
    ),
    _printed(
        "survey-2014",
        "20.3 ft3/1000 ft2",
        "",
        "20.3 ft3/1000 ft2",
        "Schmid et al. 2014, Applied Turfgrass Science, quoted in Woods 2020, Updated spreadsheets for sand topdressing"
        " by GP, Asian Turfgrass Center",
    ),
    _printed(
        "trial-2017",
        "81 t/ha",
        "",
        "81 t/ha",
        "Hempfling et al. 2017, Crop Science 57:602, quoted in Woods 2020, Sand topdressing by growth rate and clipping"
        " volume, Asian Turfgrass Center",
    ),
    _printed(
        "trial-2018",
        "6.0 L/m2",
        "",
        "up to 6.0 L/m2",
        "Wang, Hempfling, Clarke and Murphy 2018, Agronomy Journal (6):2130-2135, abstract",
    ),
    _printed(
        "japan-2017",
        "7.7 mm",
        "",
        "7.7 mm in 17 dressings",
        "Woods 2017, Topdressing frequency on golf course putting greens in Japan, Asian Turfgrass Center",
    ),
    _printed(
        "japan-2019",
        "7.1 mm",
        "8.7 mm",
        "7.1 mm in 12 dressings; 8.7 mm in 21",
        "Woods 2019, Three reasons why sand topdressing is best expressed as a depth, Asian Turfgrass Center",
    ),
    _printed(
        "britain-rates",
        "2 kg/m2",
        "8 kg/m2",
        "2 to 8 kg/m2, normally 6 at most",
        "Pitchcare magazine, August/September issue, p. 86, undated",
    ),
    _printed(
        "britain-course",
        "120 t",
        "",
        "about 120 t for 18 holes",
        "Rixon (STRI), undated, Straight talking, Pitchcare",
    ),
    _printed(
        "most-2020",
        "35 mm",
        "",
        "35 mm",
        "Woods 2020, Sand topdressing by exact depth: how to work it out, Asian Turfgrass Center",
    ),
    _printed(
        "little-2021",
        "1 mm",
        "3 mm",
        "1 to 3 mm a year, 10 mm in five years",
        "Woods 2021, Sand topdressing and surface layer organic matter, Asian Turfgrass Center",
    ),
)
"""Amounts of a year on putting greens. What each is stands in the phrases `published-sand-<name>`."""


def layers_mm(
    published: PublishedSand, *, density_t_per_m3: float, greens_m2: float | None
) -> tuple[float, float] | None:
    """Turn an amount in print into layers.

    Args:
        published: the amount.
        density_t_per_m3: bulk density of dry sand by which masses become layers.
        greens_m2: area over which a mass for a course is spread, or None.

    Returns:
        The lower and the upper end, mm in a year; None for a mass of a course where the area is not known.
    """
    ends = [
        sand_depth_mm(end, area_m2=greens_m2, all_area_m2=greens_m2, density=density_t_per_m3)
        for end in (published.low, published.high)
    ]
    low, high = ends
    return None if low is None or high is None else (low, high)
