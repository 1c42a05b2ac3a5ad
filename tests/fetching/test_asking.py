"""Questions are put politely and again when that helps; each failure is one plain sentence. Nobody waits for real."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from typing import Any

import httpx
import pytest

from swardcast.fetching.asking import Asker, client
from swardcast.fetching.service import FetchError, Question
from swardcast.version import __version__

NOW = datetime(2027, 9, 14, 6, 31, tzinfo=UTC)
QUESTION = Question(who="The service", address="https://weather.example/v1/days", query={"lat": "55.6"})
Handler = Callable[[httpx.Request], httpx.Response]


class Asked:
    """A service that answers in turn, and what was asked and waited."""

    def __init__(self, *answers: httpx.Response | Exception) -> None:
        self._answers: Iterator[httpx.Response | Exception] = iter(answers)
        self.requests: list[httpx.Request] = []
        self.waits: list[float] = []

    def __call__(self, request: httpx.Request) -> httpx.Response:
        self.requests.append(request)
        answer = next(self._answers)
        if isinstance(answer, Exception):
            raise answer
        return answer

    def asker(self, base: str = "") -> Asker:
        through = client(httpx.MockTransport(self))
        return Asker(through, base=base, contact="greens@club.example", wait=self.waits.append, now=NOW)


def ok(body: Any = None, **headers: str) -> httpx.Response:
    return httpx.Response(200, json=body if body is not None else {"fine": True}, headers=headers)


def busy(status: int = 503, **headers: str) -> httpx.Response:
    return httpx.Response(status, headers=headers)


def test_a_question_carries_its_query_and_the_programs_name() -> None:
    asked = Asked(ok())
    assert asked.asker().ask(QUESTION).body == {"fine": True}
    (request,) = asked.requests
    assert str(request.url) == "https://weather.example/v1/days?lat=55.6"
    assert request.headers["User-Agent"] == f"swardcast/{__version__}"
    assert "gzip" in request.headers["Accept-Encoding"]
    assert asked.waits == []


def test_the_contact_is_told_only_to_a_service_that_wants_it() -> None:
    asked = Asked(ok())
    asked.asker().ask(Question(who="A", address="https://weather.example/", query={}, names_contact=True))
    assert asked.requests[0].headers["User-Agent"] == f"swardcast/{__version__} greens@club.example"


def test_a_copy_of_the_service_is_asked_below_its_own_address() -> None:
    asked = Asked(ok())
    asked.asker("http://localhost:8080/copy/").ask(QUESTION)
    assert str(asked.requests[0].url) == "http://localhost:8080/copy/v1/days?lat=55.6"


@pytest.mark.parametrize("status", [429, 500, 502, 503, 504])
def test_a_busy_service_is_asked_again_after_a_longer_wait_each_time(status: int) -> None:
    asked = Asked(busy(status), busy(status), busy(status), ok())
    assert asked.asker().ask(QUESTION).body == {"fine": True}
    assert asked.waits == [2.0, 4.0, 8.0]


def test_retry_after_is_honoured_in_seconds_and_as_a_date() -> None:
    asked = Asked(
        busy(429, **{"Retry-After": "7"}), busy(503, **{"Retry-After": "Tue, 14 Sep 2027 06:31:20 GMT"}), ok()
    )
    asked.asker().ask(QUESTION)
    assert asked.waits == [7.0, 20.0]


def test_a_date_of_retry_after_that_has_passed_is_no_wait_and_nonsense_is_passed_over() -> None:
    asked = Asked(
        busy(503, **{"Retry-After": "Tue, 14 Sep 2027 06:00:00 GMT"}), busy(503, **{"Retry-After": "soon"}), ok()
    )
    asked.asker().ask(QUESTION)
    assert asked.waits == [0.0, 4.0]


def test_a_long_retry_after_is_left_to_the_next_run() -> None:
    """An hour after 6:31 UTC is 7:31."""
    asked = Asked(busy(429, **{"Retry-After": "3600"}))
    with pytest.raises(FetchError) as refused:
        asked.asker().ask(QUESTION)
    assert str(refused.value) == "The service is busy and asks to come back after 2027-09-14 07:31 UTC"
    assert (len(asked.requests), asked.waits) == (1, [])


@pytest.mark.parametrize(
    ("answers", "said"),
    [
        ([busy(500)] * 4, "The service answered with error 500, 4 times in a row"),
        ([busy(429)] * 4, "The service has been asked too often (429), 4 times in a row"),
        ([httpx.ConnectError("refused")] * 4, "The service could not be reached (refused), 4 times"),
        ([httpx.ReadTimeout("")] * 4, "The service did not answer in time, 4 times"),
        ([httpx.TooManyRedirects("round and round")], "The service could not be asked (round and round)"),
        ([httpx.Response(404)], "The service answered with error 404"),
        ([httpx.Response(400, json={"error": True, "reason": "Latitude must be\n in range"})],
         "The service answered with error 400: Latitude must be in range"),
        ([httpx.Response(422, json={"header": "x", "messages": ["end is before start", "no"]})],
         "The service answered with error 422: end is before start; no"),
        ([httpx.Response(422, json=["odd"])], "The service answered with error 422"),
        ([httpx.Response(400, text="<html>no</html>")], "The service answered with error 400"),
        ([httpx.Response(403)],
         "The service refused (403); it blocks programs that give no contact or ask too often"),
        ([httpx.Response(200, text='{"half": ')], "The service answered with something that is no JSON"),
        ([httpx.Response(200, content=b"\xff\xfe\x00")], "The service answered with something that is no JSON"),
        ([httpx.Response(200, text="")], "The service answered with something that is no JSON"),
        ([httpx.Response(304)], "The service answered with error 304"),
    ],
)  # fmt: skip
def test_each_failure_is_one_plain_sentence(answers: list[httpx.Response | Exception], said: str) -> None:
    asked = Asked(*answers)
    with pytest.raises(FetchError) as refused:
        asked.asker().ask(QUESTION)
    assert str(refused.value) == said
    assert len(asked.requests) == len(answers)


def test_what_the_service_says_of_its_freshness_is_kept() -> None:
    asked = Asked(ok(Expires="Tue, 14 Sep 2027 06:55:12 GMT", **{"Last-Modified": "Tue, 14 Sep 2027 05:52:00 GMT"}))
    answer = asked.asker().ask(QUESTION)
    assert answer.fresh_until == datetime(2027, 9, 14, 6, 55, 12, tzinfo=UTC)
    assert answer.last_modified == "Tue, 14 Sep 2027 05:52:00 GMT"
    assert not answer.will_end


def test_nothing_new_since_a_date_is_an_answer_without_a_body() -> None:
    asked = Asked(httpx.Response(304, headers={"Expires": "0"}))
    question = Question(who="A", address="https://weather.example/", query={}, not_modified_since="Tue, 14 Sep 2027")
    answer = asked.asker().ask(question)
    assert (answer.body, answer.fresh_until) == (None, None)
    assert asked.requests[0].headers["If-Modified-Since"] == "Tue, 14 Sep 2027"


def test_a_version_of_the_service_that_will_end_is_told() -> None:
    assert Asked(httpx.Response(203, json={})).asker().ask(QUESTION).will_end
