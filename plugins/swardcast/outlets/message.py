"""A short message for each notice: what, until when, the short address, in one message of 160 septets.

The notice has its short line in several wordings, the fullest first (`notices/in_short.py` says what falls away, in
which order). The first one that fits and loses no word in the alphabet of short messages is taken; where none does, the
address stands alone. Nothing is ever cut: a wording is said as a whole or not at all.
"""

from __future__ import annotations

from collections.abc import Iterable

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.outlets.gsm_alphabet import MOST_SEPTETS, gsm_text, septets
from swardcast.outlets.short_addresses import short_addresses

__all__ = ["message_artifacts", "message_text", "messages_of"]


def message_text(wordings: Iterable[str], address: str) -> str:
    """Choose the fullest wording that fits into a short message with the address.

    Args:
        wordings: the fullest first.
        address: the short address, in ASCII, at most 160 septets.

    Returns:
        One line of the alphabet of short messages, at most 160 septets, ending with the address.
    """
    for wording in wordings:
        said = gsm_text(wording)
        message = f"{said.text} {address}"
        if said.is_whole and said.text and septets(message) <= MOST_SEPTETS:
            return message
    return address


def messages_of(bulletin: Bulletin) -> dict[str, str]:
    """Give the short message of each notice; that of a withdrawn one says so.

    Args:
        bulletin: the bulletin.

    Returns:
        Messages by the notice's id.
    """
    addresses = short_addresses(bulletin)
    return {notice.id: message_text(notice.in_short, addresses[notice.id]) for notice in bulletin.addressed}


def message_artifacts(bulletin: Bulletin) -> tuple[Artifact, ...]:
    """Write the short message of each notice.

    Args:
        bulletin: the bulletin.

    Returns:
        Files "notices/<id>/message.txt", without a line end, so that a copied file is the message.
    """
    return tuple(
        Artifact(
            path=f"notices/{name}/message.txt", media_type="text/plain; charset=utf-8", data=message.encode("utf-8")
        )
        for name, message in messages_of(bulletin).items()
    )
