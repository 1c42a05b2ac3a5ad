"""What a browser may load and run for our pages (Content Security Policy Level 3, W3C), said by each page and by hosts.

Words are made harmless where they are written; this is the second wall, for the day on which that is forgotten once.
Each page says its own policy, so it holds on any host. A host can say one more, and a browser obeys both: the file
`_headers` is read by several hosts of static sites, and what stands in it can be typed into the settings of others.

No script and no style stands in a page of ours; data in a `script` are never run, and no policy asks for them. E-mails
are the exception: mail programs want styles in the elements. They say no policy, since it would travel with the mail
and forbid a picture that somebody puts in; only the host says one for them.
"""

from __future__ import annotations

from typing import Final

from swardcast.artifact import Artifact

__all__ = ["HEADERS_PATH", "OF_HOSTS", "OF_ONE_FILE", "OF_PAGES", "headers_artifact"]

HEADERS_PATH: Final = "_headers"
"""At the root of the site; a club may bring one of its own instead."""

_FORBIDDEN: Final = "default-src 'none'; base-uri 'none'; form-action 'none'"

OF_PAGES: Final = (
    f"{_FORBIDDEN}; script-src 'self' file:; style-src 'self' file:; img-src 'self' file:; frame-src 'self' file:;"
    " connect-src 'self'; worker-src 'self'"
)
"""Of every page of the site. `file:` is for a site that is opened from a disk, where not every browser takes its files
for the same place (from memory); a page that comes from a host may load no file of a disk whatever its policy says."""

OF_HOSTS: Final = (
    f"{_FORBIDDEN}; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self'; frame-src 'self';"
    " connect-src 'self'; worker-src 'self'; frame-ancestors 'self'"
)
"""Of every file of a host: as pages have it, but with styles in elements for e-mails and for a badge; and only pages of
the same host may show one in a frame, which a page cannot say of itself (from memory)."""

OF_ONE_FILE: Final = f"{_FORBIDDEN}; style-src 'unsafe-inline'"
"""Of a private page, which holds its own style and asks for nothing."""

_HEADERS: Final = """\
# What hosts that read this file say with each answer. A file of this name in the folder web takes its place.
/*
  Content-Security-Policy: {policy}
  X-Content-Type-Options: nosniff
/status.json
  Access-Control-Allow-Origin: *
/season.json
  Access-Control-Allow-Origin: *
"""


def headers_artifact() -> Artifact:
    """Write what a host is to say with each answer.

    Returns:
        The file: a path, and below it headers, each on a line that is set in.
    """
    data = _HEADERS.format(policy=OF_HOSTS).encode()
    return Artifact(path=HEADERS_PATH, media_type="text/plain; charset=utf-8", data=data)
