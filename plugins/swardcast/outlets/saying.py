"""The words that a template can say: escaped, with links and times in the slots of a phrase."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import partial
from typing import Final

from markupsafe import Markup, escape

from swardcast.language.voice import Voice
from swardcast.notices.words import holes_in_words

__all__ = ["isolated", "say_html", "words_for_templates"]

# Characters of Unicode's private use, which mean nothing to a reader, stand for HTML until the phrase is escaped; those
# that somebody typed are left out.
_FIRST_MARK = 0xE000
_PRIVATE: Final = re.compile("[\ue000-\uf8ff]")


def say_html(voice: Voice, phrase: str, /, **values: str | float) -> Markup:
    """Say a phrase as HTML: its words are escaped, a slot that holds HTML already is left as it is.

    Args:
        voice: the language and the day of the reader.
        phrase: the phrase's name.
        **values: what stands in its slots: text, numbers, or HTML as Markup.

    Returns:
        HTML.

    Raises:
        PhraseError: when there is no such phrase, or a slot stays empty.
    """
    plain: dict[str, str | float] = {}
    marked: dict[str, Markup] = {}
    for slot, value in values.items():
        if isinstance(value, Markup):
            mark = chr(_FIRST_MARK + len(marked))
            plain[slot], marked[mark] = mark, value
        else:
            plain[slot] = _PRIVATE.sub("", value) if isinstance(value, str) else value
    said = str(escape(voice.say(phrase, **plain)))
    return Markup(_PRIVATE.sub(lambda mark: marked.get(mark[0], ""), said))  # noqa: S704 - escaped above


def isolated(text: str, typed: str) -> Markup:
    """Set what somebody typed apart in a sentence, so that its letters do not turn the signs and numbers around it.

    Letters that run from right to left take neighbours along that run either way (Unicode Standard Annex 9); HTML's
    `bdi` keeps them to themselves, and `dir="auto"` around it goes by the other words.

    Args:
        text: the sentence.
        typed: what was typed, as it stands in the sentence.

    Returns:
        HTML; where the sentence does not have it, or "" was typed, the sentence alone.
    """
    before, found, after = text.partition(typed) if typed else (text, "", "")
    return Markup("{}<bdi>{}</bdi>{}").format(before, found, after) if found else escape(text)


def _joined_html(voice: Voice, phrase: str, parts: Sequence[str]) -> Markup:
    """Join parts one by one with a phrase that has the slots $first and $next."""
    joined = escape(parts[0])
    for part in parts[1:]:
        joined = say_html(voice, phrase, first=joined, next=escape(part))
    return joined


def words_for_templates(voice: Voice) -> Mapping[str, object]:
    """Give a template what it says its words with.

    Args:
        voice: the language and the day of the reader.

    Returns:
        `say(phrase, slot=...)`, `say_joined(phrase, parts)`, `isolated(text, typed)`, `holes(numbers)` and the voice,
        by name.
    """
    return {
        "say": partial(say_html, voice),
        "say_joined": partial(_joined_html, voice),
        "isolated": isolated,
        "holes": partial(holes_in_words, voice=voice),
        "voice": voice,
    }
