"""Exports of weather stations, each of an invented shape, are read by the block `weather` of club.yaml."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from tests.reading.breaking import HISTORY, OBSERVED, problems_in

CLUB = "club.yaml"
FIRST, SECOND, THIRD = date(2027, 9, 1), date(2027, 9, 2), date(2027, 9, 3)


def station(club: Path, block: str, export: str | bytes, file: str = OBSERVED) -> Path:
    """Give the club a station that writes this way, and one of its exports."""
    told = (club / CLUB).read_text(encoding="utf-8")
    indented = "".join(f"    {line}\n" for line in block.strip().splitlines())
    (club / CLUB).write_text(f"{told}weather:\n  station file:\n{indented}", encoding="utf-8")
    data = export.encode() if isinstance(export, str) else export
    (club / file).write_bytes(data)
    return club


def means(club: Path) -> dict[date, float]:
    return {day: round(value, 2) for day, value in read_club_folder(club).weather.observed_c.items()}


def said(club: Path) -> list[str]:
    return [f"{problem.file}: {problem}" for problem in problems_in(club)]


def through_a_day(day: date, minutes: int = 60, start: int = 0, end: int = 24 * 60) -> list[datetime]:
    midnight = datetime(day.year, day.month, day.day)  # noqa: DTZ001 - the clock of a station
    return [midnight + timedelta(minutes=minute) for minute in range(start, end, minutes)]


def test_days_with_the_day_first_semicolons_and_decimal_commas(demo_club: Path) -> None:
    """(8,5 + 17,1) / 2 = 12.8 and (7,0 + 14,0) / 2 = 10.5."""
    block = """
columns: {day: Datum, lowest: T min, highest: T max, rain: Regen}
day is written: day.month.year
values are parted by: semicolon
decimals: comma
missing: [--, "-999"]
"""
    export = "Datum;T min;T max;Wind;Regen\n01.09.2027;8,5;17,1;12;0,4\n02.09.2027;7,0;14,0;--;-999,0\n03.09.2027;--;14,0;3;1,0\n"
    club = station(demo_club, block, export)
    assert means(club) == {FIRST: 12.8, SECOND: 10.5}
    assert read_club_folder(club).weather.rain_mm == {FIRST: 0.4, THIRD: 1.0}


def test_fahrenheit_and_inches_with_the_month_first_and_lines_above_the_header(demo_club: Path) -> None:
    """41 F is 5 C and 59 F is 15 C; half an inch is 12.7 mm (NIST SP 811)."""
    block = """
columns: {day: Date, lowest: Low Temp, highest: High Temp, rain: Rain}
day is written: month/day/year
temperatures in: Fahrenheit
rain in: inches
"""
    export = 'Station,"Greens, by the shed"\nExported,9/4/2027\n\n,Low Temp\nDate,Hum,High Temp,Low Temp,Rain\n9/1/2027,80,59,41,0.5\n'
    club = station(demo_club, block, export)
    assert means(club) == {FIRST: 10.0}
    assert read_club_folder(club).weather.rain_mm[FIRST] == pytest.approx(12.7)


def test_hourly_rows_with_a_time_of_their_own_and_tabs_become_days(demo_club: Path) -> None:
    """10 C at midnight, 0.5 more each hour: lowest 10, highest 21.5, mean 15.75. Rain of 0:00 fell the day before."""
    block = """
columns: {day: Date, time: Time, temperature: Out, rain: Rain}
day is written: year-month-day
values are parted by: tab
"""
    rows = [f"{at:%Y-%m-%d\t%H:%M}\t{10 + at.hour / 2}\t0.1" for day in (FIRST, SECOND) for at in through_a_day(day)]
    club = station(demo_club, block, "\n".join(["Date\tTime\tOut\tRain", *rows]))
    assert means(club) == {FIRST: 15.75, SECOND: 15.75}
    rain = read_club_folder(club).weather.rain_mm
    assert {day: round(mm, 1) for day, mm in rain.items()} == {FIRST: 2.4, SECOND: 2.3}


def test_ten_minute_rows_with_extremes_names_of_months_and_twelve_hours(demo_club: Path) -> None:
    """The lowest is 4 at night, the highest 20 in the afternoon: the mean is 12."""
    block = """
columns: {day: When, temperature: Temp, lowest: Low, highest: High, rain: Rain today}
day is written: day month year hour:minute am/pm
rain is counted: since midnight
"""
    rows = []
    for at in through_a_day(FIRST, 10):
        low, high = (4, 5) if at.hour == 5 else (15, 20) if at.hour == 14 else (10, 11)
        rows.append(f"{at:%d %b %y %I:%M %p},{(low + high) / 2},{low},{high},{at.hour / 10}")
    rows.append("02 Sep 27 12:00 AM,10,10,11,9.9")
    club = station(demo_club, block, "\n".join(["When,Temp,Low,High,Rain today", *rows]))
    assert means(club) == {FIRST: 12.0}
    assert read_club_folder(club).weather.rain_mm == {FIRST: 9.9}


def test_a_day_with_a_stretch_without_readings_counts_as_missing_and_is_told(demo_club: Path) -> None:
    """On the 2nd the readings from 9 to 12 are missing: from 8 to 13 are 5 hours. On the 3rd the day still runs."""
    block = "columns: {day: t, temperature: c}\nday is written: year-month-day hour:minute"
    rows = [f"{at:%Y-%m-%d %H:%M},12" for at in through_a_day(FIRST)]
    rows += [f"{at:%Y-%m-%d %H:%M},{'' if 9 <= at.hour <= 12 else 12}" for at in through_a_day(SECOND)]
    rows += [f"{at:%Y-%m-%d %H:%M},12" for at in through_a_day(THIRD, end=15 * 60)]
    weather = read_club_folder(station(demo_club, block, "\n".join(["t,c", *rows]))).weather
    assert dict(weather.observed_c) == {FIRST: 12.0}
    assert weather.incomplete == (SECOND, THIRD)


@pytest.mark.parametrize(("hours", "whole"), [(3, True), (4, False)])
def test_three_hours_between_readings_are_enough_and_four_are_not(demo_club: Path, hours: int, whole: bool) -> None:
    block = "columns: {day: t, temperature: c}\nday is written: year-month-day hour:minute"
    days = [FIRST, SECOND]
    rows = [f"{at:%Y-%m-%d %H:%M},12" for day in days for at in through_a_day(day, 60 * hours)]
    club = station(demo_club, block, "\n".join(["t,c", *rows]))
    if whole:
        assert means(club) == {FIRST: 12.0, SECOND: 12.0}
    else:
        assert said(club) == [
            f"{OBSERVED}: the file: found no day with readings throughout; expected a reading at least every 3 hours of a day"
        ]


def test_a_clock_of_utc_is_brought_to_the_clubs_time(demo_club: Path) -> None:
    """In September London is an hour ahead: 23:00 UTC on 31 August is midnight, so the 1st."""
    block = "columns: {day: t, temperature: c}\nday is written: year-month-dayThour:minute\nclock: UTC"
    start = datetime(2027, 8, 31, 23)  # noqa: DTZ001 - the clock of a station
    rows = [f"{start + timedelta(hours=n):%Y-%m-%dT%H:%M},{20 if n == 0 else 10}" for n in range(24)]
    assert means(station(demo_club, block, "\n".join(["t,c", *rows]))) == {FIRST: 15.0}


def test_an_offset_behind_the_time_counts_more_than_the_clock(demo_club: Path) -> None:
    block = "columns: {day: t, temperature: c}\nday is written: year-month-day hour:minute"
    start = datetime(2027, 8, 31, 23)  # noqa: DTZ001 - the clock of a station
    rows = [f"{start + timedelta(hours=n):%Y-%m-%d %H:%M:%S}Z,{20 if n == 0 else 10}" for n in range(24)]
    assert means(station(demo_club, block, "\n".join(["t,c", *rows]))) == {FIRST: 15.0}


@pytest.mark.parametrize(
    ("day", "clock", "hours"),
    [
        (date(2027, 3, 28), "local time", [hour for hour in range(24) if hour != 1]),
        (date(2027, 10, 31), "local time", [0, 1, *range(1, 24)]),
    ],
)
def test_a_day_on_which_the_clocks_change_is_whole(demo_club: Path, day: date, clock: str, hours: list[int]) -> None:
    """On the last Sunday of March London has no 1:00, on that of October it has two."""
    block = f"columns: {{day: t, temperature: c}}\nday is written: year-month-day hour:minute\nclock: {clock}"
    rows = [f"{day} {hour:02d}:00,12" for hour in hours]
    assert means(station(demo_club, block, "\n".join(["t,c", *rows]))) == {day: 12.0}


def test_a_station_that_stays_on_winter_time_is_an_hour_behind_in_summer(demo_club: Path) -> None:
    """Its 23:00 on 31 August is midnight of the club's clock."""
    block = "columns: {day: t, temperature: c}\nday is written: year-month-day hour:minute\nclock: winter time"
    start = datetime(2027, 8, 31, 23)  # noqa: DTZ001 - the clock of a station
    rows = [f"{start + timedelta(hours=n):%Y-%m-%d %H:%M},{20 if n == 0 else 10}" for n in range(24)]
    assert means(station(demo_club, block, "\n".join(["t,c", *rows]))) == {FIRST: 15.0}


def test_days_that_carry_a_time_are_days_when_the_block_says_so(demo_club: Path) -> None:
    block = "columns: {day: t, lowest: a, highest: b}\nday is written: year-month-day hour:minute\neach row is: a day"
    assert means(station(demo_club, block, "t,a,b\n2027-09-01 09:00,5,15\n")) == {FIRST: 10.0}


@pytest.mark.parametrize(("saved", "encoding"), [("Windows-1252", "cp1252"), ("UTF-16", "utf-16"), ("UTF-8", "utf-8")])
def test_a_line_of_units_and_how_the_text_is_saved_do_no_harm(demo_club: Path, saved: str, encoding: str) -> None:
    block = f"columns: {{day: Tag, temperature: Größe}}\nsaved as: {saved}"
    export = "Tag,Größe\r\n,°C\r\n2027-09-01,12.5\r\n".encode(encoding)
    assert means(station(demo_club, block, export)) == {FIRST: 12.5}


def test_text_saved_in_another_way_is_told_with_the_way_out(demo_club: Path) -> None:
    club = station(demo_club, "columns: {day: Tag, temperature: T}", "Tag,T °C\n".encode("cp1252"))
    assert said(club) == [
        f"{OBSERVED}: line 1: found a character that is not UTF-8; expected text saved as UTF-8. Say how your station saves it, as in 'saved as: Windows-1252'."
    ]


def test_past_years_are_read_the_same_way_and_files_in_our_own_columns_stay_ours(demo_club: Path) -> None:
    """The demo's own year has our columns; the export beside it has the station's."""
    ours = len(read_club_folder(demo_club).weather.history_c)
    block = "columns: {day: Datum, lowest: Min, highest: Max}"
    station(demo_club, block, "Datum,Min,Max\n1996-01-01,2,8\n", "weather/history/1996.csv")
    history = read_club_folder(demo_club).weather.history_c
    assert history[date(1996, 1, 1)] == 5.0
    assert len(history) == ours + 1


def test_without_the_block_everything_is_as_strict_as_before(demo_club: Path) -> None:
    (demo_club / OBSERVED).write_text("Datum;Min;Max\n01.09.2027;5;15\n", encoding="utf-8")
    assert "columns parted by semicolons" in said(demo_club)[0]


BLOCK = "columns: {day: Date, lowest: Low, highest: High, rain: Rain}\nday is written: day/month/year\nmissing: [--]"
LOW, WHERE = "weather.station file.columns.lowest", f"{OBSERVED}: line"


@pytest.mark.parametrize(
    ("export", "problems"),
    [
        pytest.param("Date,Lo,Hgh,Rain\n", [
            f"{WHERE} 1, weather.station file.columns.highest: found no column 'High'; expected one of: Date, Lo, Hgh, Rain. Did you mean 'Hgh'?",
            f"{WHERE} 1, {LOW}: found no column 'Low'; expected one of: Date, Lo, Hgh, Rain. Did you mean 'Lo'?",
        ], id="two columns that are not in the header"),
        pytest.param("Date,Low,High,Low,Rain\n", [
            f"{WHERE} 1, {LOW}: found the column 'Low' 2 times; expected it once",
        ], id="a column twice"),
        pytest.param("Date;Low;High;Rain\n01/09/2027;5;15;0\n", [
            f"{WHERE} 1: found no line with the columns 'Date', 'Low', 'High', 'Rain'; expected them near the top, parted by a comma, as club.yaml says. They stand there parted by a semicolon: write 'values are parted by: semicolon'.",
        ], id="another delimiter"),
        pytest.param("Datum,Tief,Hoch\n", [
            f"{WHERE} 1: found no line with the columns 'Date', 'Low', 'High', 'Rain'; expected them near the top, parted by a comma, as club.yaml says. Did you mean 'Datum'?",
        ], id="none of the columns"),
        pytest.param("", [
            f"{WHERE} 1: found no line with the columns 'Date', 'Low', 'High', 'Rain'; expected them near the top, parted by a comma, as club.yaml says",
        ], id="an empty file"),
        pytest.param("Date,Low,High,Rain\n31/09/2027,5,15,0\n2027-09-02,5,15,0\n", [
            f"{WHERE} 2, Date: found '31/09/2027'; expected a day that exists, such as '23/08/2027'. See 'day is written' in club.yaml.",
            f"{WHERE} 3, Date: found '2027-09-02'; expected a day that exists, such as '23/08/2027'. See 'day is written' in club.yaml.",
        ], id="days that are none"),
        pytest.param("Date,Low,High,Rain\n01/09/2027,cold,59,-1\n02/09/2027,20,10,0\n01/09/2027,1,2,3\n", [
            f"{WHERE} 2, Low: found 'cold'; expected a number. A mark for a missing value goes to 'missing'.",
            f"{WHERE} 2, Rain: found -1 mm; expected 0 to 1900 mm",
            f"{WHERE} 3, Low: found a lowest of 20 C above the highest of 10 C; expected the lower of the two there",
            f"{WHERE} 4, Date: found 01/09/2027 a second time; expected each once",
        ], id="values that are none, all at once"),
        pytest.param('Date,Low,High,Rain\n01/09/2027,"4,5",15,0\n', [
            f"{WHERE} 2, Low: found '4,5'; expected a number. If decimals have a comma, say 'decimals: comma'.",
        ], id="a decimal comma"),
        pytest.param("Date,Low,High,Rain\n01/09/2027,-999,61,0\n", [
            f"{WHERE} 2, High: found 61 C; expected -60 to 60 C. If your station writes Fahrenheit, say 'temperatures in: Fahrenheit'. If it marks a missing value, add it to 'missing'.",
            f"{WHERE} 2, Low: found -999 C; expected -60 to 60 C. If your station writes Fahrenheit, say 'temperatures in: Fahrenheit'. If it marks a missing value, add it to 'missing'.",
        ], id="a mark that nobody named, and Fahrenheit"),
        pytest.param("Date,Low,High,Rain\n01/09/2027,5\n", [
            f"{WHERE} 2: found 2 values; expected at least 4, as in the header on line 1",
        ], id="a line too short"),
    ],
)  # fmt: skip
def test_a_fault_in_an_export_is_told_word_for_word(demo_club: Path, export: str, problems: list[str]) -> None:
    assert said(station(demo_club, BLOCK, export)) == problems


def test_of_many_faults_ten_are_shown_and_the_rest_counted(demo_club: Path) -> None:
    rows = [f"{day:02d}/09/2027,x,15,0" for day in range(1, 31)]
    told = said(station(demo_club, BLOCK, "\n".join(["Date,Low,High,Rain", *rows])))
    assert len(told) == 11
    assert any("found 20 more such lines" in line for line in told)


def test_a_quote_that_never_ends_is_told(demo_club: Path) -> None:
    export = 'Date,Low,High,Rain\n01/09/2027,"5,15,0\n' + "02/09/2027,5,15,0\n" * 9000
    told = said(station(demo_club, BLOCK, export))
    assert told == [
        f"{OBSERVED}: line 2: found text that is no CSV (field larger than field limit (131072)); expected values in columns"
    ]


def test_a_day_in_two_exports_is_told(demo_club: Path) -> None:
    export = "Date,Low,High,Rain\n01/09/1996,5,15,0\n"
    station(demo_club, BLOCK, export, "weather/history/a.csv")
    (demo_club / "weather/history/b.csv").write_text(export, encoding="utf-8")
    assert said(demo_club) == [
        "weather/history/b.csv: the file, day: found 1996-09-01 a second time; expected each day in one file only"
    ]


@pytest.mark.parametrize(
    ("block", "problem"),
    [
        ("columns: {day: Date}",
         "station file.columns: found 'only day'; expected also 'temperature', or 'lowest' with 'highest'"),
        ("columns: {day: Date, lowest: Low}",
         "station file.columns: found 'only day and lowest'; expected also 'temperature', or 'lowest' with 'highest'"),
        ("columns: {temperature: T}", "station file.columns.day: found nothing; expected the field 'day'"),
        ("columns: {day: D, temprature: T, temperature: T}",
         "station file.columns.temprature: found the unknown field 'temprature'; expected one of: day, time, temperature, lowest, highest, rain. Did you mean 'temperature'?"),
        ("columns: {day: D, temperature: T}\nday is written: day/mnth/year",
         "station file: found 'day/mnth/year'; expected words of: year, month, day, hour, minute, second, am/pm, as in 'day/month/year'. Did you mean 'month'?"),
        ("columns: {day: D, temperature: T}\nday is written: month/year",
         "station file: found 'month/year'; expected day, month and year once each, as in 'day/month/year' or 'year-month-day hour:minute'"),
        ("columns: {day: D, temperature: T}\neach row is: a reading",
         "station file: found 'readings without a time'; expected 'hour' in 'day is written', or a column 'time'"),
        ("columns: {day: D, temperature: T}\nvalues are parted by: semicolons",
         "station file.values are parted by: found 'semicolons'; expected one of: comma, semicolon, tab. Did you mean 'semicolon'?"),
        ("columns: {day: D, temperature: T}\nclock: summer time",
         "station file.clock: found 'summer time'; expected one of: local time, winter time, UTC. Did you mean 'winter time'?"),
        ("columns: {day: D, temperature: T}\ntemperatures in: Farenheit",
         "station file.temperatures in: found 'Farenheit'; expected one of: celsius, fahrenheit. Did you mean 'fahrenheit'?"),
    ],
)  # fmt: skip
def test_a_fault_in_the_block_is_told_and_the_exports_wait(demo_club: Path, block: str, problem: str) -> None:
    (told,) = said(station(demo_club, block, "no,export\n"))
    assert told.split(", ", 1)[1] == f"weather.{problem}"


def test_service_and_its_address_are_checked(demo_club: Path) -> None:
    with (demo_club / CLUB).open("a", encoding="utf-8") as file:
        file.write("weather:\n  service: open-metoo\n  service address: weather.example\n  observed days: 999\n")
    assert [line.split(": found ")[1] for line in said(demo_club)] == [
        "'open-metoo'; expected one of: institutes, open-meteo. Did you mean 'open-meteo'?",
        "'weather.example'; expected the address of your copy of the service, such as 'https://weather.example'",
        "'999'; expected at most a year of days. Check the figure and its unit.",
    ]


def test_a_block_that_is_only_remarks_is_no_block(demo_club: Path) -> None:
    with (demo_club / CLUB).open("a", encoding="utf-8") as file:
        file.write("weather:\n  # service: open-meteo\n")
    assert said(demo_club) == []
    assert (demo_club / HISTORY).is_file()
