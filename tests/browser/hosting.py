"""A host for a built site: at its root or below other folders, with its own page for what is not there."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

LOCAL = "localhost"
"""Browsers trust this name as they trust https: service workers and the clipboard work."""


@dataclass(frozen=True)
class Host:
    """Where a site is shown."""

    address: str
    """Of its first page, with a slash at the end."""
    site: Path
    port: int

    @property
    def origin(self) -> str:
        """Scheme, name and port, to which browsers give their leave."""
        return f"http://{LOCAL}:{self.port}"

    def page(self, name: str) -> str:
        """The address of a file of the site, as links write it."""
        return self.address + name


class _Quiet(SimpleHTTPRequestHandler):
    """Serves one folder below a path, says nothing, and keeps lines open as hosts do."""

    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True  # or each small file waits for 40 ms
    wbufsize = -1

    def __init__(
        self, *arguments: object, below: str, shared: bool, said: list[tuple[str, str]], **named: object
    ) -> None:
        self.below, self.shared, self.said = below, shared, said
        super().__init__(*arguments, **named)  # type: ignore[arg-type] # as the server gives them

    def log_message(self, *_: object) -> None:
        """Say nothing: a test's output is for what went wrong."""

    def end_headers(self) -> None:
        """Say what the site asks its host to say, and let pages of other hosts read files, where it is set up so."""
        for name, value in self.said:
            self.send_header(name, value)
        if self.shared:
            self.send_header("Access-Control-Allow-Origin", "*")
        super().end_headers()

    def translate_path(self, path: str) -> str:
        """Only what is below the path of the site; all else is a name that no site has."""
        return super().translate_path(
            path.removeprefix(self.below) if path.startswith(self.below) else "/\N{SECTION SIGN}"
        )

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Show the site's own page for what is not there."""
        missing = Path(self.directory) / "404.html"
        if code != HTTPStatus.NOT_FOUND or not missing.is_file():
            super().send_error(code, message, explain)
            return
        body = missing.read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)


class _Server(ThreadingHTTPServer):
    """Ends with the test, also while a browser keeps a line open."""

    daemon_threads = True
    block_on_close = False

    def handle_error(self, *_: object) -> None:
        """A browser that hangs up is no news."""


def _said_of_all(site: Path) -> list[tuple[str, str]]:
    """What the site's file of headers asks to be said with each answer; nothing where it has none."""
    file = site / "_headers"
    lines = file.read_text(encoding="utf-8").splitlines() if file.is_file() else []
    said: list[tuple[str, str]] = []
    place = ""
    for line in lines:
        if not line.startswith((" ", "#")):
            place = line
        elif place == "/*" and line.startswith(" "):
            name, _, value = line.strip().partition(": ")
            said.append((name, value))
    return said


@contextmanager
def hosted(site: Path, below: str = "/", *, shared: bool = False) -> Iterator[Host]:
    """Show a folder on this machine alone, with the headers that its file `_headers` asks for.

    Args:
        site: the folder of the site.
        below: the path that it is shown under, with slashes on both ends.
        shared: whether pages of other hosts may read its files.

    Yields:
        Where it is.
    """
    server = _Server(
        (LOCAL, 0), partial(_Quiet, directory=str(site), below=below, shared=shared, said=_said_of_all(site))
    )
    Thread(target=server.serve_forever, daemon=True, kwargs={"poll_interval": 0.02}).start()
    taken = server.server_address[1]
    try:
        yield Host(f"http://{LOCAL}:{taken}{below}", site, taken)
    finally:
        server.shutdown()
        server.server_close()
