"""Weather files: in our own columns, and as a station writes them."""

from __future__ import annotations

from typing import Final

from tests.bad_input.mutations import Row, add, broken, every, fine, put, swap
from tests.bad_input.rows.files import CLUB, FORECAST, HISTORY, OBSERVED

__all__ = ["ROWS"]

_GERMAN: Final = (
    "weather:\n  station file:\n    columns: {day: Datum, lowest: Tmin, highest: Tmax, rain: Regen}\n"
    "    day is written: day.month.year\n    values are parted by: semicolon\n    decimals: comma\n    missing: [--]\n"
)  # fmt: skip
_HOURLY: Final = (
    "weather:\n  station file:\n    columns: {day: Day, time: Time, temperature: T}\n"
    "    day is written: year-month-day\n"
)  # fmt: skip
_DAYS: Final = "date,tmin_c,tmax_c\n"


def _station(name: str, rows: str, field: str, *said: str, more: bool = False) -> Row:
    """A station's file with these rows below its columns."""
    return broken(name, OBSERVED, put(f"Datum;Tmin;Tmax;Regen\n{rows}"), field, *said, more=more, block=_GERMAN)


_OURS = tuple(
    broken(f"observed weather: {name}", OBSERVED, put(_DAYS + text), field, *said, more=more)
    for name, text, field, said, more in (
        ("a day that there is not", "¦2027-02-30,1,2\n", "date", ("'2027-02-30'",), False),
        ("a day by the month", "¦23/08/2027,1,2\n", "date", ("'23/08/2027'",), False),
        ("a day of a week", "¦2027-W34-1,1,2\n", "date", ("'2027-W34-1'",), False),
        ("a day without signs", "¦20270823,1,2\n", "date", ("'20270823'",), False),
        ("a day that was not yet in a calendar", "¦0001-01-01,1,2\n", "date", ("'0001-01-01'",), False),
        ("a day beyond all plans", "¦9999-12-31,1,2\n", "date", ("'9999-12-31'",), False),
        ("a day twice", "2027-05-01,1,2\n¦2027-05-01,1,2\n", "date", ("a second time",), False),
        ("a value too few", "¦2027-05-01,1\n", "", ("2 values",), False),
        ("a value too many", "¦2027-05-01,1,2,3\n", "", ("4 values",), False),
        ("a decimal comma", '¦2027-05-01,"1,5","2,5"\n', "tmin_c", ("'4.5', not '4,5'",), True),
        ("a word", "¦2027-05-01,cold,2\n", "tmin_c", ("'cold'",), False),
        ("what is no number", "¦2027-05-01,nan,2\n", "tmin_c", ("'nan'",), False),
        ("what is endless", "¦2027-05-01,1,inf\n", "tmax_c", ("'inf'",), False),
        ("1e308 degrees", "¦2027-05-01,1,1e308\n", "tmax_c", ("'1e308'",), False),
        ("a number with a line in it", "¦2027-05-01,1_0,20\n", "tmin_c", ("'1_0'",), False),
        ("a number in other figures", "¦2027-05-01,٣,20\n", "tmin_c", ("'٣'",), False),
        ("a minimum above the maximum", "¦2027-05-01,9,2\n", "tmin_c", ("above the maximum",), False),
        ("a mark for a missing value that nobody told", "¦2027-05-01,-999,2\n", "tmin_c", ("-999",), False),
        ("a day and two temperatures, all wrong", "¦2027-05-32,cold,hot\n", "tmax_c", ("'hot'",), True),
        ("an open quotation mark", '2027-05-01,1,2\n¦2027-05-02,"1,2\n2027-05-03,1,2\n', "", ("2 values",), False),
        ("a cell of 200,000 letters", f"¦2027-05-01,{'1' * 200_000},2\n", "", ("no CSV",), False),
        ("100,000 lines that are none", "¦x,1,2\n" * 100_000, "date", ("'x'",), True),
    )
)  # fmt: skip

_COLUMNS = (
    broken("50,000 columns", OBSERVED, put(lambda: b",".join([b"date", *(b"t%d" % n for n in range(49_999))]) + b"\n", 1), "", "50,000 columns"),
    broken("a column misspelt", OBSERVED, swap("tmin_c", "tmin_k"), "", "Did you mean 'tmin_", more=True),
    broken("a column twice", OBSERVED, swap("tmax_c", "tmin_c"), "", "a second time", more=True),
    broken("no column of days", OBSERVED, swap("date", "day"), "", "the unknown column 'day'", more=True),
    broken("semicolons that nobody told", OBSERVED, every(lambda data: data.replace(b",", b";"), 1), "", "parted by semicolons"),
    broken("a forecast of no day's name", "weather/forecast/tomorrow.csv", put(_DAYS, None), "", "the day and time of issue"),
    broken("a forecast of a day that there is not", "weather/forecast/2027-02-30T0600.csv", put(_DAYS, None), "", "the day and time of issue"),
    broken("a forecast of 25 o'clock", "weather/forecast/2027-08-23T2500.csv", put(_DAYS, None), "", "the day and time of issue"),
    broken("a forecast of the first day of all", "weather/forecast/0001-01-01.csv", put(_DAYS, None), "", "the day and time of issue"),
    broken("a forecast of 90 degrees", FORECAST, add("¦2027-09-30,80,90\n"), "tmin_c", "'80'", more=True),
    broken("a past day twice", HISTORY, add("¦2026-12-31,1,2,0\n"), "date", "a second time"),
    broken("rain of a thousand metres", OBSERVED, add("¦2027-09-30,1,2,1000000\n"), "rain_mm", "'1000000'"),
    broken("rain below nothing", OBSERVED, add("¦2027-09-30,1,2,-3\n"), "rain_mm", "'-3'"),
    broken("services as a text", "weather/sources.yaml", put("sources: all\n", 1), "sources", "starting with '- '"),
    broken("a service without its licence", "weather/sources.yaml", put("sources:\n  ¦- {name: a, used for: b, credit: c, address: https://a.example, licence address: https://b.example}\n"), "source 1, licence", "nothing"),
    broken("a service's address that runs", "weather/sources.yaml", put("sources:\n  - name: a\n    used for: b\n    credit: c\n    licence: d\n    licence address: https://b.example\n    ¦address: javascript:alert(1)\n"), "source 1, address", "javascript:alert(1)"),
    fine("days of the first and the last year of ours", OBSERVED, put(_DAYS + "1900-01-01,1,2\n2200-12-31,1,2\n")),
    fine("a forecast of the last day of ours", "weather/forecast/2200-12-31T2300.csv", put(_DAYS + "2200-12-31,1,2\n", None)),
    fine("days with a missing value", OBSERVED, put(_DAYS + "2027-05-01,,2\n2027-05-02,NA,M\n")),
    fine("empty lines between the days", OBSERVED, put(_DAYS + "\n\n2027-05-01,1,2\n\n")),
)  # fmt: skip

_STATION = (
    fine("a station that writes semicolons and decimal commas", OBSERVED, put("Datum;Tmin;Tmax;Regen\n01.09.2027;8,5;17,1;0,4\n"), block=_GERMAN),
    fine("a station's file in the encoding that it has", OBSERVED, put(b"Datum;Tmin;Tmax;Regen\n01.09.2027;8,5;17,1;0,4\n"), block=_GERMAN),
    _station("a station's day that there is not", "¦30.02.2027;8,5;17,1;0\n", "Datum", "30.02.2027"),
    _station("a station's number with a point and a comma", "¦01.09.2027;1.008,5;17,1;0\n", "Tmin", "1.008,5"),
    _station("a station's day twice", "01.09.2027;8,5;17,1;0\n¦01.09.2027;8,5;17,1;0\n", "Datum", "a second time"),
    broken("a station without its column", OBSERVED, put("¦Datum;Tmin;Tmax\n01.09.2027;8,5;17,1\n"), "weather.station file.columns.rain", "no column 'Regen'", block=_GERMAN),
    broken("a station's file that is none", OBSERVED, put("hello\n", 1), "", "no line with the columns", block=_GERMAN),
    broken("an empty station's file", OBSERVED, put(b"", 1), "", "no line with the columns", block=_GERMAN),
    _station("a station's row too short", "¦01.09.2027;8,5\n", "", "2 values"),
    _station("a station's row of 200,000 letters", "¦" + "1" * 200_000 + "\n", "", "no CSV"),
    broken("a station's file of 20 MB of nothing", OBSERVED, put(lambda: b"x\n" * 10_000_000, None), "", "20 MB", block=_GERMAN),
    _station("a station that is not a number", "¦01.09.2027;nan;inf;0\n", "Tmin", "'nan'", more=True),
    _station("a station's lowest above its highest", "¦01.09.2027;20;10;0\n", "Tmin", "the lower of the two"),
    broken("a logger's hour that there is not", OBSERVED, put("Day,Time,T\n¦2027-09-01,25:00,10\n"), "Day", "25:00", block=_HOURLY),
    broken("a logger's first year of all", OBSERVED, put("Day,Time,T\n¦0001-01-01,00:00,10\n"), "Day", "0001-01-01", block=_HOURLY),
    broken("a logger's last year of all", OBSERVED, put("Day,Time,T\n¦9999-12-31,24:00,10\n"), "Day", "9999-12-31", block=_HOURLY),
    broken("a station's file in Windows-1252 that nobody told", OBSERVED, put("Datum;Tmin;Tmax;Regen;Wolken°\n".encode("cp1252"), 1), "", "saved as: Windows-1252", block=_GERMAN),
    broken("a station with a faulty form", CLUB, add("weather:\n  station file:\n    columns: {day: A, lowest: B, highest: C}\n    ¦clock: mine\n"), "weather.station file.clock", "'mine'"),
)  # fmt: skip

ROWS = (*_OURS, *_COLUMNS, *_STATION)
