"""What a service shows of a page whose link was pasted: Open Graph (https://ogp.me/).

The four properties that it asks of every page are og:title, og:type, og:image and og:url; a page goes without og:image
only where its words are in letters that the font of the pictures lacks, or its notice was withdrawn.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from swardcast.compose import Bulletin
from swardcast.notices.notice import Notice
from swardcast.notices.withdrawn import WithdrawnNotice
from swardcast.outlets.preview import HOME_PICTURE, picture_path
from swardcast.outlets.preview_picture import HEIGHT_PX, WIDTH_PX

__all__ = ["OpenGraph"]

_DIGITS = 12  # of a picture's key: enough to differ from the one before


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OpenGraph:
    """The properties of the site's pages.

    Args:
        bulletin: the bulletin.
        pictures: the key of each preview picture, by its path.
    """

    bulletin: Bulletin
    pictures: Mapping[str, str]

    def of_notice(self, notice: Notice | WithdrawnNotice) -> list[tuple[str, str]]:
        """Give the properties of a notice's page, and of the short address that leads to it.

        Args:
            notice: the notice.

        Returns:
            Names and contents, not escaped.
        """
        site, zone = self.bulletin.club.site, self.bulletin.club.time_zone
        return [
            ("og:type", "article"),
            ("og:title", notice.headline),
            ("og:description", notice.short_answer),
            ("og:url", f"{site}/notices/{notice.id}/"),
            *self._of_all(picture_path(notice.id), notice.headline),
            ("article:published_time", notice.issued_at.astimezone(zone).isoformat()),
            ("article:modified_time", notice.revised_at.astimezone(zone).isoformat()),
        ]

    def of_page(self) -> list[tuple[str, str]]:
        """Give the properties of every other page, but for its title, description and address.

        Returns:
            Names and contents, not escaped.
        """
        return [("og:type", "website"), *self._of_all(HOME_PICTURE, self.bulletin.club.name)]

    def picture_address(self, path: str) -> str | None:
        """Give the address of a picture; it changes with the picture, since services keep what they have fetched.

        Args:
            path: the picture's path inside the site.

        Returns:
            The address, or None where there is no such picture.
        """
        key = self.pictures.get(path)
        return f"{self.bulletin.club.site}/{path}?{key[:_DIGITS]}" if key is not None else None

    def _of_all(self, path: str, said: str) -> Iterator[tuple[str, str]]:
        club = self.bulletin.club
        yield "og:site_name", club.name
        yield "og:locale", club.language.replace("-", "_")
        address = self.picture_address(path)
        if address is not None:
            yield "og:image", address
            yield "og:image:type", "image/png"
            yield "og:image:width", str(WIDTH_PX)
            yield "og:image:height", str(HEIGHT_PX)
            yield "og:image:alt", said
