"""A picture without what a camera or a program noted in it: where, when and by whom it was taken, how it was before.

Only whole chunks are left out, so its pixels stay as they were, bit for bit: PNG (W3C, Portable Network Graphics, third
edition, chapter 5), JPEG (ITU-T T.81, annex B) and WebP (RFC 9649, section 2); an SVG keeps all that is drawn. What
makes it look as it should stays: the profile of its colours, and which way up a camera was held.
"""

from __future__ import annotations

import re
import struct
from collections.abc import Iterator
from typing import Final

__all__ = ["NotesCannotGoError", "svg_without_notes", "without_notes"]

_PNG: Final = b"\x89PNG\r\n\x1a\n"
_PNG_KEPT: Final = frozenset(
    b"IHDR PLTE tRNS IDAT IEND gAMA cHRM sRGB iCCP cICP mDCV cLLI sBIT pHYs bKGD acTL fcTL fdAT".split()
)
_WEBP_KEPT: Final = frozenset({b"VP8 ", b"VP8L", b"VP8X", b"ALPH", b"ANIM", b"ANMF", b"ICCP"})
_WEBP_EXIF, _WEBP_XMP = 0x08, 0x04  # bits of the first byte of VP8X

_EXIF: Final = b"Exif\0\0"
_JPEG_SCAN, _JPEG_END = 0xDA, 0xD9
_JPEG_KEPT: Final = {0xE0: b"JFIF\0", 0xE2: b"ICC_PROFILE\0", 0xEE: b"Adobe"}
"""Of the segments for programs: size of a pixel, profile of colours, and how the colours are coded."""
_JPEG_BARE: Final = frozenset({0x01, *range(0xD0, 0xD8)})

_ORIENTATION: Final = 0x0112
_UPRIGHT: Final = 1
_TURNS: Final = range(2, 9)

_SVG: Final = "http://www.w3.org/2000/svg"
_OF_A_DRAWING: Final = frozenset({None, _SVG, "http://www.w3.org/1999/xlink", "http://www.w3.org/XML/1998/namespace"})
"""Namespaces of attributes that a browser knows; those of drawing programs tell the folders of whoever drew it."""

_MAY_NOTE: Final = re.compile(rb"<!--|<\?(?!xml\s)|metadata|xmlns:(?!xlink\b)")
"""Where nothing of a drawing is so, nothing is noted in it."""

_TELLS_PLACE: Final = (b"Exif\0", b"\xa9xyz", b"location.ISO6709")
"""By which pictures and films in boxes (ISO/IEC 14496-12) note things about themselves; from memory."""

_TIFF: Final = (b"II*\0", b"MM\0*")
"""How a TIFF begins (TIFF 6.0, section 2), and the raw pictures of most cameras; few browsers show one."""


class NotesCannotGoError(ValueError):
    """A picture out of which notes cannot be taken: what was found, what was expected, what to do."""

    def __init__(self, found: str, expected: str, hint: str) -> None:
        self.found, self.expected, self.hint = found, expected, hint
        super().__init__(f"found {found}; expected {expected}. {hint}")


def without_notes(data: bytes) -> bytes:
    """Leave out of a picture what was noted in it.

    Args:
        data: any file; what it is, its bytes say.

    Returns:
        The same picture, and any other file as it is.

    Raises:
        NotesCannotGoError: for a damaged JPEG, PNG or WebP, for a TIFF, and for another picture or film that may tell
            its place.
    """
    try:
        if data.startswith(_PNG):
            return _png(data)
        if data.startswith(b"\xff\xd8\xff"):
            return _jpeg(data)
        if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
            return _webp(data)
    except (struct.error, IndexError):
        hint = "Save it once more: as it is, what a camera noted in it could not be taken out."
        raise NotesCannotGoError("a picture that is cut off or damaged", "a whole picture", hint) from None
    if data[4:8] == b"ftyp" and any(mark in data for mark in _TELLS_PLACE):
        raise NotesCannotGoError(
            "a picture or film that may tell where it was taken",
            "one without such notes",
            "Save a picture as JPEG or PNG; a film without the place, as a telephone offers when it is shared.",
        )
    if data[:4] in _TIFF:
        found, expected = "a picture in TIFF, as cameras write it", "one that a browser shows"
        raise NotesCannotGoError(found, expected, "Save it as JPEG or PNG; it may tell where it was taken.")
    return data


def svg_without_notes(data: bytes) -> bytes:
    """Leave out of a drawing what a program noted in it: remarks, <metadata>, attributes of its own.

    Args:
        data: an SVG in UTF-8, without entities.

    Returns:
        The same drawing; the same bytes where nothing was noted.

    Raises:
        SyntaxError: where something may be noted: when it is not well-formed, or elements lie more than 255 deep.
    """
    if _MAY_NOTE.search(data) is None:
        return data
    from lxml import etree  # noqa: PLC0415 - loaded only for a badge that may need it

    def read(*, notes: bool) -> etree._ElementTree[etree._Element]:
        parser = etree.XMLParser(
            encoding="utf-8",
            remove_comments=not notes,
            remove_pis=not notes,
            resolve_entities=False,
            no_network=True,
        )
        return etree.fromstring(data, parser).getroottree()

    drawing = read(notes=False)
    etree.strip_elements(drawing, f"{{{_SVG}}}metadata", with_tail=False)
    for element in drawing.iter():
        for name in element.attrib:
            if etree.QName(name).namespace not in _OF_A_DRAWING:
                del element.attrib[name]
    etree.cleanup_namespaces(drawing)
    if etree.tostring(drawing, method="c14n") == etree.tostring(read(notes=True), method="c14n"):
        return data
    return bytes(etree.tostring(drawing, encoding="utf-8"))


def _png(data: bytes) -> bytes:
    kept, exif, at, kind = [_PNG], b"", len(_PNG), b""
    while kind != b"IEND":
        (length,) = struct.unpack_from(">I", data, at)
        kind, end = data[at + 4 : at + 8], at + 12 + length
        _within(data, end)
        if kind in _PNG_KEPT:
            kept.append(data[at:end])
        elif kind == b"eXIf":
            exif = data[at + 8 : end - 4]
        at = end
    if turned := _only_turned(exif):
        from zlib import crc32  # noqa: PLC0415 - few pictures need it

        chunk = b"eXIf" + turned
        kept.insert(2, struct.pack(">I", len(turned)) + chunk + struct.pack(">I", crc32(chunk)))
    return b"".join(kept)


def _jpeg(data: bytes) -> bytes:
    kept, exif = [data[:2]], b""
    for marker, segment in _segments(data):
        if marker == 0xE1 and segment[4:].startswith(_EXIF):  # noqa: PLR2004 - APP1
            exif = exif or segment[4 + len(_EXIF) :]
        elif marker in _JPEG_KEPT:
            if segment[4:].startswith(_JPEG_KEPT[marker]):
                kept.append(segment)
        elif not (0xE0 <= marker <= 0xEF or marker == 0xFE):  # noqa: PLR2004 - for programs, and comments
            kept.append(segment)
    if turned := _only_turned(exif):
        payload = _EXIF + turned
        after_jfif = 2 if len(kept) > 1 and kept[1][1] == 0xE0 else 1  # noqa: PLR2004 - JFIF stands first
        kept.insert(after_jfif, b"\xff\xe1" + struct.pack(">H", len(payload) + 2) + payload)
    return b"".join(kept)


def _segments(data: bytes) -> Iterator[tuple[int, bytes]]:
    """Each segment, a scan with its coded data, up to the end of the picture; telephones append films to it."""
    at, marker = 2, 0
    while marker != _JPEG_END:
        if data[at] != 0xFF:  # noqa: PLR2004 - each marker begins so
            raise IndexError
        while data[at] == 0xFF:  # noqa: PLR2004 - as often as it likes
            at += 1
        begin, marker = at, data[at]
        at += 1
        if marker != _JPEG_END and marker not in _JPEG_BARE:
            at += struct.unpack_from(">H", data, at)[0]
        if marker == _JPEG_SCAN:
            at = _end_of_scan(data, at)
        _within(data, at)
        yield marker, b"\xff" + data[begin:at]


def _end_of_scan(data: bytes, at: int) -> int:
    """Where the next marker stands that is no part of the coded data."""
    while True:
        at = data.find(b"\xff", at)
        if at < 0 or at + 1 >= len(data):
            raise IndexError
        if data[at + 1] and data[at + 1] not in _JPEG_BARE:
            return at
        at += 2


def _webp(data: bytes) -> bytes:
    end = 8 + struct.unpack_from("<I", data, 4)[0]
    _within(data, end)
    kept, exif, at = [], b"", 12
    while at < end:
        kind, length = data[at : at + 4], struct.unpack_from("<I", data, at + 4)[0]
        after = at + 8 + length + length % 2
        _within(data, after)
        if kind in _WEBP_KEPT:
            kept.append(data[at:after])
        elif kind == b"EXIF":
            exif = data[at + 8 : at + 8 + length]
        at = after
    turned = _only_turned(exif.removeprefix(_EXIF))
    if kept and kept[0].startswith(b"VP8X"):
        flags = kept[0][8] & ~(_WEBP_XMP | (0 if turned else _WEBP_EXIF))
        kept[0] = kept[0][:8] + bytes([flags]) + kept[0][9:]
        if turned:
            kept.append(b"EXIF" + struct.pack("<I", len(turned)) + turned + b"\0" * (len(turned) % 2))
    body = b"WEBP" + b"".join(kept)
    return b"RIFF" + struct.pack("<I", len(body)) + body


def _within(data: bytes, end: int) -> None:
    if end > len(data):
        raise IndexError


def _only_turned(exif: bytes) -> bytes:
    """Notes that tell alone which way up a picture stands; none where it is upright, or where they cannot be read."""
    if not exif:
        return b""
    from PIL.Image import Exif  # noqa: PLC0415 - loaded only for a picture with such notes

    told, alone = Exif(), Exif()
    try:
        told.load(exif)
        turned = told.get(_ORIENTATION, _UPRIGHT)
    except (SyntaxError, ValueError, struct.error, IndexError, OSError, TypeError, OverflowError):
        return b""
    if turned not in _TURNS:
        return b""
    alone[_ORIENTATION] = turned
    return alone.tobytes().removeprefix(_EXIF)
