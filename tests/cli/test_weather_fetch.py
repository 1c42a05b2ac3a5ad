"""`swardcast weather fetch` brings weather into the club folder, all of it or nothing, against a service on a socket."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import httpx
import pytest

from swardcast.cli import weather as command
from swardcast.errors import SwardcastError
from swardcast.reading.folder import read_club_folder
from swardcast.reading.weather_folder import read_weather_folder
from swardcast.version import __version__
from tests.cli.conftest import Done
from tests.cli.test_check import tree
from tests.conftest import ROOT
from tests.fetching import answers
from tests.fetching.service_nearby import Handler, Nearby, as_json, service_nearby, weather

NOW = datetime(2027, 9, 16, 6, 31, tzinfo=UTC)
"""7:31 in the morning of the demo's 16 September, two days after its newest forecast and observed day."""
OBSERVED, SOURCES = "weather/observed.csv", "weather/sources.yaml"
FORECAST = "weather/forecast/2027-09-16T0731.csv"


@pytest.fixture(autouse=True)
def _no_proxy(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_PROXY", "127.0.0.1")


@pytest.fixture
def nearby() -> Iterator[Nearby]:
    with service_nearby(weather(NOW)) as running:
        yield running


@pytest.fixture
def short_club(club: Path) -> Path:
    """The demo with one past year and observed days to the 13th: what it lacks is plain."""
    history = club / "weather/history/1997-2026.csv"
    header, *days = history.read_text(encoding="utf-8").splitlines()
    history.unlink()
    (club / "weather/history/2026.csv").write_text("\n".join([header, *days[-365:], ""]), encoding="utf-8")
    observed = club / OBSERVED
    lines = observed.read_text(encoding="utf-8").splitlines()
    kept = [line for line in lines if line < "2027-09-14" or line == lines[0]]
    observed.write_text("\n".join([*kept, ""]), encoding="utf-8")
    for forecast in (club / "weather/forecast").glob("*.csv"):
        if forecast.stem > "2027-09-14T0600":
            forecast.unlink()
    return club


def fetch(
    club: Path, *words: str, now: datetime = NOW, transport: httpx.BaseTransport | None = None
) -> tuple[int, list[float]]:
    """Run the command with a clock of ours; give its exit code and what it waited."""
    waits: list[float] = []
    options = command.parser("swardcast weather", "x").parse_args(["fetch", "--club", str(club), *words])
    return command.fetch(options, now=now, wait=waits.append, transport=transport), waits


def answering(handler: Callable[[httpx.Request], httpx.Response]) -> httpx.MockTransport:
    return httpx.MockTransport(handler)


def by_handler(handler: Handler) -> httpx.MockTransport:
    """Carry requests to a handler without a socket."""

    def answer(request: httpx.Request) -> httpx.Response:
        status, headers, body = handler(request.url.path, dict(request.url.params))
        return httpx.Response(status, headers=headers, content=body)

    return httpx.MockTransport(answer)


def test_forecast_observed_days_and_past_years_come_in(
    short_club: Path, nearby: Nearby, capsys: pytest.CaptureFixture[str]
) -> None:
    """The 14th and the 15th are lacking; 29 of 30 past years (1997 to 2025, 7 leap days) are 29 x 365 + 7 days."""
    before = (short_club / OBSERVED).read_text(encoding="utf-8")
    assert fetch(short_club, "--base-url", nearby.address, "--history-years", "30") == (0, [])
    records = read_club_folder(short_club)
    assert (short_club / OBSERVED).read_text(encoding="utf-8") == (
        f"{before}2027-09-14,6.0,16.0,1.2\n2027-09-15,6.0,16.0,1.2\n"
    )
    assert records.weather.observed_c[date(2027, 9, 15)] == 11.0
    assert date(2027, 9, 16) not in records.weather.observed_c  # it still runs
    history = (short_club / "weather/history/nasa-power-1997-2025.csv").read_text(encoding="utf-8")
    assert len(history.splitlines()) == 1 + 29 * 365 + 7
    newest = records.weather.forecasts[-1]
    assert newest.issued_at == datetime(2027, 9, 16, 6, 31, tzinfo=UTC)
    assert newest.tmean_c == dict.fromkeys([date(2027, 9, day) for day in (17, 18, 19)], 12.0)
    assert [(source.name, source.used_for) for source in records.weather.sources] == [
        ("MET Norway", "the forecast"),
        ("NASA POWER", "past and recent days"),
    ]
    told = capsys.readouterr()
    assert told.out.splitlines() == [
        f"{FORECAST}: a forecast of 3 days, 2027-09-17 to 2027-09-19",
        "weather/history/nasa-power-1997-2025.csv: 10592 days of past years, 1997-01-01 to 2025-12-31",
        "weather/observed.csv: 2 days added (2027-09-14, 2027-09-15); what the club measured is as it was",
    ]
    assert told.err == ""
    assert not list(short_club.rglob(".*"))


def test_of_many_added_days_the_first_and_the_last_are_named(
    short_club: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (short_club / OBSERVED).unlink()
    fetch(short_club, transport=by_handler(weather(NOW)))
    assert "weather/observed.csv: 14 days added (between 2027-09-02 and 2027-09-15);" in capsys.readouterr().out


def test_each_service_hears_what_its_terms_ask_for(short_club: Path, nearby: Nearby) -> None:
    fetch(short_club, "--base-url", nearby.address)
    agents = {path: headers["User-Agent"] for path, headers in nearby.requests}
    assert agents == {
        "/weatherapi/locationforecast/2.0/complete": f"swardcast/{__version__} links@quillhaven.example",
        "/api/temporal/daily/point": f"swardcast/{__version__}",
    }


def test_fetching_twice_changes_nothing(short_club: Path, nearby: Nearby, capsys: pytest.CaptureFixture[str]) -> None:
    words = ("--base-url", nearby.address, "--history-years", "30")
    fetch(short_club, *words)
    before = tree(short_club)
    capsys.readouterr()
    assert fetch(short_club, *words, now=NOW.replace(minute=45)) == (0, [])
    assert tree(short_club) == before
    told = capsys.readouterr()
    assert told.out == "The forecast is the same as the newest one that is there.\n"
    assert told.err == "Every day of those past years is there already; remove its file to fetch it anew.\n"


def test_the_other_service_is_asked_by_name_or_by_club_yaml(short_club: Path, nearby: Nearby) -> None:
    block = f"weather:\n  service: open-meteo\n  service address: {nearby.address}\n  observed days: 3\n"
    path = short_club / "club.yaml"
    path.write_text(path.read_text(encoding="utf-8") + block, encoding="utf-8")
    assert fetch(short_club) == (0, [])
    weather_now = read_weather_folder(short_club).weather
    assert {source.name for source in weather_now.sources} == {"Open-Meteo"}
    assert len(weather_now.forecasts[-1].tmean_c) == 16
    assert [path for path, _ in nearby.requests] == ["/v1/forecast", "/v1/archive"]


def test_a_dry_run_asks_and_writes_nothing(
    short_club: Path, nearby: Nearby, capsys: pytest.CaptureFixture[str]
) -> None:
    before = tree(short_club)
    assert fetch(short_club, "--base-url", nearby.address, "--dry-run") == (0, [])
    assert tree(short_club) == before
    assert len(nearby.requests) == 2
    told = capsys.readouterr()
    assert told.out.startswith(f"{FORECAST}: a forecast of 3 days")
    assert told.err == "A dry run: nothing was written.\n"


def test_the_result_for_a_machine_has_fixed_keys(
    short_club: Path, nearby: Nearby, capsys: pytest.CaptureFixture[str]
) -> None:
    fetch(short_club, "--base-url", nearby.address, "--json")
    assert json.loads(capsys.readouterr().out) == {
        "dry_run": False,
        "forecast": {"file": FORECAST, "days": 3, "first": "2027-09-17", "last": "2027-09-19"},
        "observed": {"file": OBSERVED, "added": ["2027-09-14", "2027-09-15"]},
        "history": None,
        "files": [FORECAST, OBSERVED, SOURCES],
        "sources": ["MET Norway", "NASA POWER"],
    }


def test_days_of_a_stations_own_export_are_not_touched(short_club: Path, nearby: Nearby) -> None:
    """The export has the 14th; the 15th is fetched beside it, and the station comes first where both have a day."""
    export = "Day;Low;High\n13/09/2027;5,0;15,0\n14/09/2027;4,0;10,0\n"
    (short_club / OBSERVED).write_text(export, encoding="utf-8")
    path = short_club / "club.yaml"
    block = (
        "weather:\n  station file:\n    columns: {day: Day, lowest: Low, highest: High}\n"
        "    day is written: day/month/year\n    values are parted by: semicolon\n    decimals: comma\n"
    )
    path.write_text(path.read_text(encoding="utf-8") + block, encoding="utf-8")
    fetch(short_club, "--base-url", nearby.address, "--observed-days", "3")
    assert (short_club / OBSERVED).read_text(encoding="utf-8") == export
    fetched = short_club / "weather/observed-fetched.csv"
    assert fetched.read_text(encoding="utf-8") == "date,tmin_c,tmax_c,rain_mm\n2027-09-15,6.0,16.0,1.2\n"
    fetched.write_text(fetched.read_text(encoding="utf-8") + "2027-09-14,30,40,0\n", encoding="utf-8")
    observed = read_club_folder(short_club).weather.observed_c
    assert (observed[date(2027, 9, 14)], observed[date(2027, 9, 15)]) == (7.0, 11.0)


def test_a_forecast_is_not_asked_for_before_the_service_wants_it(
    short_club: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """It said at 7:31 that nothing newer comes before 7:55 local time; then it has nothing new; then it has."""
    asked: list[str] = []
    usual = weather(NOW)

    def handle(path: str, query: dict[str, str]) -> tuple[int, dict[str, str], bytes]:
        asked.append(path)
        status, headers, body = usual(path, query)
        fresh = {"Expires": "Thu, 16 Sep 2027 06:55:00 GMT", "Last-Modified": "Thu, 16 Sep 2027 05:52:00 GMT"}
        return status, headers | fresh, body

    fetch(short_club, transport=by_handler(handle))
    asked.clear()
    fetch(short_club, now=NOW.replace(minute=54), transport=by_handler(handle))
    assert asked == []
    assert "MET Norway has no newer forecast before 07:55 on 2027-09-16" in capsys.readouterr().err
    since: list[str] = []

    def nothing_new(request: httpx.Request) -> httpx.Response:
        since.append(request.headers.get("If-Modified-Since", ""))
        return httpx.Response(304, headers={"Expires": "Thu, 16 Sep 2027 07:20:00 GMT"})

    before = {name: content for name, (_, content) in tree(short_club).items() if "forecast" in name}
    assert fetch(short_club, now=NOW.replace(minute=56), transport=answering(nothing_new)) == (0, [])
    assert since == ["Thu, 16 Sep 2027 05:52:00 GMT"]
    assert {name: content for name, (_, content) in tree(short_club).items() if "forecast" in name} == before
    source = next(one for one in read_weather_folder(short_club).weather.sources if one.name == "MET Norway")
    assert source.fresh_until == datetime(2027, 9, 16, 7, 20, tzinfo=UTC)
    assert source.last_modified == "Thu, 16 Sep 2027 05:52:00 GMT"


def test_days_that_the_record_does_not_have_yet_are_told(short_club: Path, capsys: pytest.CaptureFixture[str]) -> None:
    usual = weather(NOW)

    def late(path: str, query: dict[str, str]) -> tuple[int, dict[str, str], bytes]:
        if "daily" in path:
            fill = (answers.FILL,) * 3
            return as_json(answers.power({date(2027, 9, 14): (6.0, 16.0, 0.0), date(2027, 9, 15): fill}))
        return usual(path, query)

    assert fetch(short_club, transport=by_handler(late)) == (0, [])
    told = capsys.readouterr()
    assert "1 day added (2027-09-14)" in told.out
    assert told.err == "NASA POWER has no values yet for 2027-09-15.\n"


def refused(club: Path, *words: str, transport: httpx.BaseTransport | None = None) -> str:
    """Fetch in vain; the folder must be as it was."""
    before = tree(club)
    with pytest.raises(SwardcastError) as error:
        fetch(club, *words, transport=transport)
    assert tree(club) == before
    return str(error.value)


USED = "Nothing was changed. The forecast of 14 September 2027, 6am is still used; observed days end on 13 September."


def test_no_network_changes_nothing_and_says_what_is_used_instead(short_club: Path) -> None:
    """The port was free a moment ago, and nobody listens there now."""
    with service_nearby(weather(NOW)) as gone:
        pass
    said = refused(short_club, "--base-url", gone.address)
    assert said.startswith("MET Norway could not be reached (")
    assert said.endswith(f"), 4 times. {USED}")


def _instead(path_part: str, reply: tuple[int, dict[str, str], bytes]) -> Handler:
    usual = weather(NOW)
    return lambda path, query: reply if path_part in path else usual(path, query)


def _changed(change: Callable[[Any], object], path_part: str = "locationforecast") -> Handler:
    usual = weather(NOW)

    def handle(path: str, query: dict[str, str]) -> tuple[int, dict[str, str], bytes]:
        status, headers, body = usual(path, query)
        if path_part not in path:
            return status, headers, body
        answer = json.loads(body)
        change(answer)
        return as_json(answer)

    return handle


@pytest.mark.parametrize(
    ("handler", "said"),
    [
        (_instead("locationforecast", (403, {}, b"")), "MET Norway refused (403)"),
        (_instead("locationforecast", (404, {}, b"")), "MET Norway answered with error 404"),
        (_instead("locationforecast", (500, {}, b"")), "MET Norway answered with error 500, 4 times in a row"),
        (_instead("locationforecast", (429, {"Retry-After": "900"}, b"")), "MET Norway is busy and asks to come back"),
        (_instead("locationforecast", (200, {}, b'{"type": "Feat')), "MET Norway answered with something that is no JSON"),
        (_instead("daily", as_json({"messages": ["start is odd"]}, 422)), "NASA POWER answered with error 422: start is odd"),
        (_instead("daily", (503, {}, b"")), "NASA POWER answered with error 503"),
        (_changed(lambda a: a["properties"].update(timeseries=a["properties"]["timeseries"][:10])),
         "MET Norway answered without a whole day from 2027-09-16 on"),
        (_changed(lambda a: a["properties"]["meta"]["units"].update(air_temperature="K")), "MET Norway gave temperatures in K"),
        (_changed(lambda a: a["geometry"].update(coordinates=[10, 60.1, 267])), "MET Norway answered for another place"),
        (_changed(lambda a: a["header"].update(time_standard="UTC"), "daily"), "NASA POWER gave days of UTC"),
    ],
)  # fmt: skip
def test_a_failed_fetch_changes_nothing_whichever_part_fails(short_club: Path, handler: Handler, said: str) -> None:
    told = refused(short_club, transport=by_handler(handler))
    assert told.startswith(said)
    assert told.endswith(USED)


def test_a_service_that_does_not_answer_in_time_is_told(short_club: Path) -> None:
    def late(request: httpx.Request) -> httpx.Response:
        raise httpx.ReadTimeout("", request=request)

    assert refused(short_club, transport=answering(late)) == f"MET Norway did not answer in time, 4 times. {USED}"


def test_past_years_with_many_holes_are_refused(short_club: Path) -> None:
    """2025 has 365 days; a twentieth may be missing, that is 18."""

    def holes(answer: Any) -> None:
        low = answer["properties"]["parameter"]["T2M_MIN"]
        for stamp in list(low)[:19]:
            low[stamp] = answers.FILL

    told = refused(
        short_club, "--history-years", "2", "--observed-days", "0", transport=by_handler(_changed(holes, "daily"))
    )
    assert told.startswith("NASA POWER gave only 346 of 365 past days. Nothing was changed.")


def test_past_years_with_a_few_holes_come_in_and_the_holes_are_told(
    short_club: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    def a_hole(answer: Any) -> None:
        answer["properties"]["parameter"]["T2M_MIN"]["20250704"] = answers.FILL

    words = ("--history-years", "2", "--observed-days", "0")
    assert fetch(short_club, *words, transport=by_handler(_changed(a_hole, "daily"))) == (0, [])
    assert capsys.readouterr().err == "NASA POWER has no values for 1 of 365 past days.\n"
    assert len((short_club / "weather/history/nasa-power-2025-2025.csv").read_text("utf-8").splitlines()) == 365


def test_a_version_of_a_service_that_will_end_is_told(short_club: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """MET Norway answers 203 for such a version (https://api.met.no/doc/StatusCodes)."""
    usual = weather(NOW)

    def old(path: str, query: dict[str, str]) -> tuple[int, dict[str, str], bytes]:
        _, headers, body = usual(path, query)
        return 203 if "locationforecast" in path else 200, headers, body

    assert fetch(short_club, transport=by_handler(old)) == (0, [])
    assert "this version of its service will end: update Swardcast" in capsys.readouterr().err


def test_a_day_that_is_half_measured_is_left_and_told(
    short_club: Path, nearby: Nearby, capsys: pytest.CaptureFixture[str]
) -> None:
    with (short_club / OBSERVED).open("a", encoding="utf-8") as file:
        file.write("2027-09-14,M,15.0,0.0\n")
    fetch(short_club, "--base-url", nearby.address)
    told = capsys.readouterr().out
    assert "weather/observed.csv: left as it was for 2027-09-14, half measured" in told
    assert (short_club / OBSERVED).read_text("utf-8").endswith("2027-09-14,M,15.0,0.0\n2027-09-15,6.0,16.0,1.2\n")


def test_an_issued_forecast_is_never_given_other_content(short_club: Path) -> None:
    (short_club / FORECAST).write_text("date,tmean_c\n2027-09-16,12\n", encoding="utf-8")
    told = refused(short_club, transport=by_handler(weather(NOW)))
    assert told.startswith(f"{FORECAST} is there already with other days, and is never overwritten.")


@pytest.mark.parametrize(
    ("forecasts", "observed", "said"),
    [
        (None, "", "There is no forecast yet: past years are used; no day has been observed yet."),
        ("2027-09-02T0600", "2026-12-31,1,9\n",
         "The forecast of 2 September 2027, 6am has run out: past years are used; observed days end on 31 December 2026."),
    ],
)  # fmt: skip
def test_what_is_used_instead_is_told_as_it_is(
    short_club: Path, forecasts: str | None, observed: str, said: str
) -> None:
    for path in (short_club / "weather/forecast").glob("*.csv"):
        path.unlink()
    if forecasts is not None:
        text = "date,tmean_c\n2027-09-02,12\n2027-09-03,12\n"
        (short_club / f"weather/forecast/{forecasts}.csv").write_text(text, encoding="utf-8")
    (short_club / OBSERVED).write_text(f"date,tmin_c,tmax_c\n{observed}", encoding="utf-8")
    told = refused(short_club, transport=by_handler(_instead("locationforecast", (404, {}, b""))))
    assert told == f"MET Norway answered with error 404. Nothing was changed. {said}"


def test_ctrl_c_while_asking_changes_nothing(short_club: Path, capsys: pytest.CaptureFixture[str]) -> None:
    def stop(request: httpx.Request) -> httpx.Response:
        raise KeyboardInterrupt

    before = tree(short_club)
    assert fetch(short_club, transport=answering(stop)) == (1, [])
    assert tree(short_club) == before
    assert capsys.readouterr().err == f"Stopped. {USED}\n"


@pytest.mark.parametrize("stopped_by", [KeyboardInterrupt, OSError(28, "No space left on device", "observed.csv")])
@pytest.mark.parametrize("moves_before", [0, 1, 2])
def test_a_stop_half_way_through_writing_leaves_everything_as_it_was(
    short_club: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    stopped_by: BaseException,
    moves_before: int,
) -> None:
    before = {name: content for name, (_, content) in tree(short_club).items()}
    usual, moves = Path.replace, iter(range(9))

    def move(path: Path, target: Path) -> Path:
        if next(moves) == moves_before:
            raise stopped_by
        return usual(path, target)

    monkeypatch.setattr(Path, "replace", move)
    said = ""
    try:
        assert fetch(short_club, transport=by_handler(weather(NOW)))[0] == 1
    except SwardcastError as error:
        said = str(error)
    assert {name: content for name, (_, content) in tree(short_club).items()} == before
    assert (said or capsys.readouterr().err).rstrip().endswith(USED)


def test_a_slip_in_the_plan_keeps_nobody_from_fetching(short_club: Path, nearby: Nearby) -> None:
    (short_club / "plan/2027-late-summer.yaml").write_text("nonsense: here\n", encoding="utf-8")
    assert fetch(short_club, "--base-url", nearby.address) == (0, [])


def test_a_club_without_a_weather_folder_gets_one(short_club: Path, nearby: Nearby) -> None:
    for path in sorted((short_club / "weather").rglob("*"), reverse=True):
        path.rmdir() if path.is_dir() else path.unlink()
    (short_club / "weather").rmdir()
    assert fetch(short_club, "--base-url", nearby.address, "--observed-days", "2") == (0, [])
    assert read_club_folder(short_club).weather.observed_c == {date(2027, 9, 14): 11.0, date(2027, 9, 15): 11.0}


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["weather"], "the following arguments are required: ACTION"),
        (["weather", "fetch", "--service", "oracle"], "invalid choice: 'oracle'"),
        (["weather", "fetch", "--history-years", "many"], "'many' is no whole number from 0 to 999"),
        (["weather", "fetch", "--base-url", "weather.example"], "'weather.example' is no address"),
    ],
)
def test_wrong_usage_ends_with_2(swardcast: Callable[..., Done], words: list[str], said: str) -> None:
    done = swardcast(*words)
    assert (done.code, done.out) == (2, "")
    assert said in done.err


def test_the_command_line_fetches_over_a_socket_and_a_second_time_in_vain(
    short_club: Path, run_swardcast: Callable[..., Any]
) -> None:
    """In a process of its own, with the clock of this machine; the demo's weather of 2027 is then to come or past."""
    with service_nearby(weather(datetime.now(UTC))) as running:
        words = ("weather", "fetch", "--club", str(short_club), "--base-url", running.address)
        done = run_swardcast(*words, NO_PROXY="127.0.0.1")
        assert done.returncode == 0, done.stderr
    assert re.search("a forecast of [34] days", done.stdout)  # by the hour at which the test runs
    assert run_swardcast("check", "--club", str(short_club)).returncode == 0


def test_only_this_command_loads_what_asks_the_network() -> None:
    """The command itself names it for types alone."""
    sources = [path for path in (ROOT / "plugins/swardcast").rglob("*.py") if "import httpx" in path.read_text("utf-8")]
    assert sorted(path.name for path in sources) == ["asking.py", "weather.py"]
