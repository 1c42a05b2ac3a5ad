"""Asks a service over the network: patient where patience helps, and with one plain sentence where it does not."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import UTC, datetime, timedelta
from email.utils import parsedate_to_datetime
from typing import Final

import httpx

from swardcast.fetching.service import Answer, FetchError, Question
from swardcast.version import __version__

__all__ = ["Asker", "client"]

_TRIES: Final = 4
"""How often a question is put before giving up; judgement."""
_FIRST_WAIT_S: Final = 2.0
"""Seconds before the second try, doubled each time; judgement."""
_LONGEST_WAIT_S: Final = 60.0
"""Seconds that a service may ask to wait; a longer wait is left to the next run; judgement."""
_TIMEOUT: Final = httpx.Timeout(60.0, connect=10.0)
"""Seconds; thirty years of days take the service a while; judgement."""
_TRY_AGAIN: Final = (429, 500, 502, 503, 504)
_OK, _SOON_GONE, _NOT_MODIFIED, _FORBIDDEN, _TOO_MANY = 200, 203, 304, 403, 429
_LONGEST_REASON: Final = 200


def client(transport: httpx.BaseTransport | None = None) -> httpx.Client:
    """Make the one client of a run.

    Args:
        transport: what carries requests, for tests; None is the network.

    Returns:
        A client that follows redirects, takes compressed answers and gives up in time.
    """
    return httpx.Client(timeout=_TIMEOUT, follow_redirects=True, transport=transport)


class Asker:
    """Puts questions.

    Args:
        through: the client.
        base: address of a copy of the service, or "" for the service itself.
        contact: e-mail or site of the club, told only to a service that wants to know.
        wait: waits a number of seconds.
        now: the present moment, aware.
    """

    def __init__(
        self, through: httpx.Client, *, base: str, contact: str, wait: Callable[[float], None], now: datetime
    ) -> None:
        self._client, self._base, self._contact, self._wait, self._now = through, base, contact, wait, now

    def ask(self, question: Question) -> Answer:
        """Put one question, again after a while when the service is busy or out of reach.

        Args:
            question: the request.

        Returns:
            The answer.

        Raises:
            FetchError: when there is none.
        """
        pause, tries_left = _FIRST_WAIT_S, _TRIES
        while True:
            tries_left -= 1
            asked_pause = None
            try:
                response = self._client.get(
                    self._address(question), params=dict(question.query), headers=self._headers(question)
                )
            except httpx.HTTPError as error:
                if tries_left == 0 or not isinstance(error, httpx.TransportError):
                    raise FetchError(_unreachable(error, question.who)) from error
            else:
                if response.status_code not in _TRY_AGAIN or tries_left == 0:
                    return self._answer(response, question)
                asked_pause = self._asked_pause(response, question.who)
            self._wait(pause if asked_pause is None else asked_pause)
            pause *= 2

    def _address(self, question: Question) -> str:
        if not self._base:
            return question.address
        path = httpx.URL(question.address).path
        return f"{self._base.rstrip('/')}{path}"

    def _headers(self, question: Question) -> dict[str, str]:
        agent = f"swardcast/{__version__}" + (f" {self._contact}" if question.names_contact else "")
        headers = {"User-Agent": agent, "Accept": "application/json"}
        if question.not_modified_since:
            headers["If-Modified-Since"] = question.not_modified_since
        return headers

    def _asked_pause(self, response: httpx.Response, who: str) -> float | None:
        """Seconds that Retry-After asks for: a number of them, or a date (RFC 9110, section 10.2.3)."""
        asked = response.headers.get("Retry-After", "").strip()
        if not asked:
            return None
        until = _http_date(asked)
        seconds = float(asked) if asked.isdigit() else (until - self._now).total_seconds() if until else None
        if seconds is not None and seconds > _LONGEST_WAIT_S:
            again = self._now + timedelta(seconds=seconds)
            message = f"{who} is busy and asks to come back after {again.astimezone(UTC):%Y-%m-%d %H:%M} UTC"
            raise FetchError(message)
        return None if seconds is None else max(0.0, seconds)

    def _answer(self, response: httpx.Response, question: Question) -> Answer:
        headers = response.headers
        fresh = {
            "fresh_until": _http_date(headers.get("Expires", "")),
            "last_modified": headers.get("Last-Modified", ""),
        }
        if response.status_code == _NOT_MODIFIED and question.not_modified_since:
            return Answer(body=None, **fresh)
        if response.status_code not in (_OK, _SOON_GONE):
            raise FetchError(_refusal(response, question.who))
        try:
            body = response.json()
        except ValueError as error:
            message = f"{question.who} answered with something that is no JSON"
            raise FetchError(message) from error
        return Answer(body=body, will_end=response.status_code == _SOON_GONE, **fresh)


def _unreachable(error: httpx.HTTPError, who: str) -> str:
    if isinstance(error, httpx.TimeoutException):
        return f"{who} did not answer in time, {_TRIES} times"
    if isinstance(error, httpx.TransportError):
        return f"{who} could not be reached ({str(error) or type(error).__name__}), {_TRIES} times"
    return f"{who} could not be asked ({str(error) or type(error).__name__})"


def _refusal(response: httpx.Response, who: str) -> str:
    reason = _reason(response)
    said = f": {reason}" if reason else ""
    status = response.status_code
    if status == _TOO_MANY:
        return f"{who} has been asked too often (429), {_TRIES} times in a row{said}"
    if status == _FORBIDDEN:
        return f"{who} refused (403){said}; it blocks programs that give no contact or ask too often"
    times = f", {_TRIES} times in a row" if status in _TRY_AGAIN else ""
    return f"{who} answered with error {status}{times}{said}"


def _reason(response: httpx.Response) -> str:
    """Take the reason from an error's JSON: `reason`, `detail` or `messages`; other text is not for people."""
    try:
        told = response.json()
    except ValueError:
        return ""
    if not isinstance(told, Mapping):
        return ""
    for name in ("reason", "detail", "messages"):
        value = told.get(name)
        words = "; ".join(map(str, value)) if isinstance(value, list) else str(value or "")
        if words:
            return " ".join(words.split())[:_LONGEST_REASON]
    return ""


def _http_date(text: str) -> datetime | None:
    try:
        moment = parsedate_to_datetime(text)
    except ValueError:
        return None
    return moment.replace(tzinfo=UTC) if moment.tzinfo is None else moment
