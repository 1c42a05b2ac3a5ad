"""What a PNG is made of."""

from __future__ import annotations

import struct

__all__ = ["chunks_of"]


def chunks_of(png: bytes) -> list[str]:
    """Names of its chunks: length, name, data and checksum of each (W3C, PNG, third edition, section 5.3)."""
    assert png[:8] == b"\x89PNG\r\n\x1a\n", png[:8]
    names, place = [], 8
    while place < len(png):
        (length,) = struct.unpack_from(">I", png, place)
        names.append(png[place + 4 : place + 8].decode("ascii"))
        place += length + 12
    return names
