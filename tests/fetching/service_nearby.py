"""A service on a socket of this machine that answers for any day, as the documentation of both services says."""

from __future__ import annotations

import json
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, timedelta
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any
from urllib.parse import parse_qs, urlsplit

from tests.fetching import answers

Reply = tuple[int, dict[str, str], bytes]
Handler = Callable[[str, dict[str, str]], Reply]


def as_json(body: Any, status: int = 200, **headers: str) -> Reply:
    return status, {"Content-Type": "application/json", **headers}, json.dumps(body).encode()


def _power(query: dict[str, str]) -> Reply:
    first, last = (datetime.strptime(query[name], "%Y%m%d").date() for name in ("start", "end"))  # noqa: DTZ007
    days = dict.fromkeys(answers.days_between(first, last), (6.0, 16.0, 1.2))
    return as_json(answers.power(days, latitude=float(query["latitude"]), longitude=float(query["longitude"])))


def weather(now: datetime) -> Handler:
    """Answer as both services do: 6 to 16 C each past day, 12 C each hour to come."""

    def handle(path: str, query: dict[str, str]) -> Reply:
        if path == "/api/temporal/daily/point":
            return _power(query)
        if path == "/weatherapi/locationforecast/2.0/complete":
            start = now.astimezone(UTC).replace(minute=0, second=0, microsecond=0)
            body = answers.met_norway(
                answers.hourly(start, 100), latitude=float(query["lat"]), longitude=float(query["lon"])
            )
            return as_json(body)
        if path in ("/v1/archive", "/v1/forecast"):
            first = date.fromisoformat(query.get("start_date", f"{now:%Y-%m-%d}"))
            last = date.fromisoformat(query.get("end_date", f"{now + timedelta(days=15):%Y-%m-%d}"))
            days = dict.fromkeys(answers.days_between(first, last), (6.0, 16.0, 1.2))
            body = answers.open_meteo(
                days, latitude=float(query["latitude"]), longitude=float(query["longitude"]), zone=query["timezone"]
            )
            return as_json(body)
        return 404, {}, b""

    return handle


class Nearby:
    """A running service: its address, and what it was asked."""

    def __init__(self, address: str, requests: list[tuple[str, dict[str, str]]]) -> None:
        self.address, self.requests = address, requests


@contextmanager
def service_nearby(handler: Handler) -> Iterator[Nearby]:
    """Answer on a free port until the block ends."""
    requests: list[tuple[str, dict[str, str]]] = []

    class _Requests(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            split = urlsplit(self.path)
            requests.append((split.path, dict(self.headers)))
            query = {name: values[0] for name, values in parse_qs(split.query).items()}
            status, headers, body = handler(split.path, query)
            self.send_response(status)
            for name, value in headers.items():
                self.send_header(name, value)
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            self.wfile.write(body)

        def log_message(self, *_: object) -> None:
            """Say nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), _Requests)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.01})
    thread.start()
    try:
        yield Nearby(f"http://127.0.0.1:{server.server_address[1]}", requests)
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
