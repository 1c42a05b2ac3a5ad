"""Monthly mean temperatures of the places from which recoveries were published.

Source: NOAA, Comparative Climatic Data, normals 1981-2010, mean temperature (file nrmavg.txt), in the degrees
Fahrenheit of the print; the two places outside the United States are in C and from memory, right within about 0.7 C.
"""

from __future__ import annotations

from typing import Final

from swardcast.quantities import fahrenheit_to_celsius

__all__ = ["MONTHLY_MEANS_C"]

_PRINTED_F: Final = {
    "Richmond VA": (37.9, 40.9, 48.6, 58.2, 66.4, 75.3, 79.3, 77.5, 70.6, 59.7, 50.4, 41.0),
    "Spokane WA": (29.5, 33.0, 40.2, 47.0, 55.1, 62.1, 69.8, 69.3, 60.2, 47.6, 35.7, 27.4),
    "Green Bay WI": (16.6, 20.3, 30.8, 43.9, 55.0, 64.7, 69.1, 67.3, 59.2, 47.1, 34.6, 21.5),
    "San Francisco AP CA": (50.3, 52.9, 54.9, 56.9, 59.6, 62.2, 63.7, 64.5, 64.7, 61.8, 55.8, 50.6),
    "Stockton CA": (45.8, 50.4, 54.6, 59.3, 66.3, 72.4, 76.7, 75.7, 72.2, 63.8, 53.0, 45.6),
    "Tulsa OK": (37.0, 41.8, 50.6, 59.8, 68.5, 76.9, 81.8, 81.7, 72.9, 61.1, 49.7, 38.6),
    "Detroit MI": (25.8, 28.2, 36.6, 48.5, 59.4, 69.3, 73.9, 72.2, 64.6, 52.5, 41.6, 30.3),
    "Los Angeles C.O. CA": (58.0, 58.9, 60.6, 63.1, 65.8, 69.2, 73.3, 74.3, 73.1, 68.6, 62.4, 57.6),
    "Atlanta GA": (43.3, 47.2, 54.3, 62.0, 70.1, 77.3, 80.2, 79.4, 73.5, 63.3, 54.0, 45.3),
    "Chicago IL": (23.8, 27.7, 37.9, 48.9, 59.1, 68.9, 74.0, 72.4, 64.6, 52.5, 40.3, 27.7),
    "Sacramento CA": (46.3, 50.8, 54.6, 58.7, 65.5, 71.4, 75.2, 74.6, 71.4, 63.9, 53.3, 46.2),
    "Philadelphia PA": (33.0, 35.7, 43.5, 54.0, 63.9, 73.3, 78.1, 76.6, 69.1, 57.5, 47.6, 37.5),
    "Wilmington DE": (32.4, 35.1, 43.0, 53.3, 62.8, 72.2, 76.8, 75.2, 67.8, 56.2, 46.6, 36.7),
}
_FROM_MEMORY_C: Final = {
    "Bunbury": (22.9, 23.2, 21.2, 18.2, 15.2, 13.1, 12.3, 12.8, 13.7, 15.5, 18.4, 20.9),
    "Essex": (4.6, 4.8, 6.9, 9.3, 12.4, 15.3, 17.7, 17.7, 15.2, 11.8, 7.8, 5.2),
}

MONTHLY_MEANS_C: Final[dict[str, tuple[float, ...]]] = {
    **{name: tuple(map(fahrenheit_to_celsius, means)) for name, means in _PRINTED_F.items()},
    **_FROM_MEMORY_C,
}
"""Mean temperature of January to December, C, by place."""
