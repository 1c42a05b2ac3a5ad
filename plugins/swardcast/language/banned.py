"""Words that a notice does without, and what to write instead; a file of each language lists them."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, Final

from swardcast.errors import SwardcastError

__all__ = ["Banned", "banned_phrases", "parse_banned"]

_FIELDS: Final = {"words", "instead", "but_not", "unless_explained"}
_EXPLAINED_AFTER: Final = re.compile(
    r"^['\"”’*_]*\s*(?:\(|[,–—-]\s*(?:the|a|an|that is|which is|or)\b|that is\b|(?:is|are) (?:the|a|an)\b|means?\b|:)",
    re.IGNORECASE,
)
_EXPLAINED_BEFORE: Final = re.compile(
    r"(?:\(|\bcalled|\bknown as|\bthe name [^.]{0,20})\s*(?:the\s+)?['\"“‘]?$", re.IGNORECASE
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Banned:
    """Words to avoid.

    Args:
        words: a word or phrase, in each of its forms.
        instead: what to write instead.
        but_not: phrases that hold the word and are fine.
        unless_explained: whether it is jargon, which the same paragraph may explain.
    """

    words: tuple[str, ...]
    instead: str
    but_not: tuple[str, ...] = ()
    unless_explained: bool = False

    def found_in(self, sentence: str, paragraph: str) -> str:
        """Find the words in a sentence.

        Args:
            sentence: a sentence.
            paragraph: the paragraph in which it stands, where jargon may be explained.

        Returns:
            What stands there, or "".
        """
        covered = [place.span() for phrase in self.but_not for place in _places(phrase, sentence)]
        for words in self.words:
            for place in _places(words, sentence):
                if any(first <= place.start() and place.end() <= last for first, last in covered):
                    continue
                if not (self.unless_explained and self._is_explained(paragraph)):
                    return place[0]
        return ""

    def _is_explained(self, paragraph: str) -> bool:
        places = (place for words in self.words for place in _places(words, paragraph))
        return any(
            _EXPLAINED_AFTER.match(paragraph[place.end() :]) or _EXPLAINED_BEFORE.search(paragraph[: place.start()])
            for place in places
        )


def _places(phrase: str, text: str) -> list[re.Match[str]]:
    if phrase.split(maxsplit=1)[0].lower() not in text.lower():
        return []  # most texts hold none of the words, and this is some ten times faster
    return [*_pattern(phrase).finditer(text)]


@cache
def _pattern(phrase: str) -> re.Pattern[str]:
    words = r"\s+".join(map(re.escape, phrase.split()))
    return re.compile(rf"(?<![\w-]){words}(?![\w-])", re.IGNORECASE)


def parse_banned(text: str) -> tuple[Banned, ...]:
    """Read a list of words to avoid.

    Args:
        text: TOML with the list `avoid` of {words, instead, but_not, unless_explained}.

    Returns:
        The words.

    Raises:
        SwardcastError: when it is not such a list, or the same words stand in it twice.
    """
    found: list[Banned] = []
    try:
        told = tomllib.loads(text)["avoid"]
        for item in told:
            found.append(_entry(item))
    except (tomllib.TOMLDecodeError, KeyError, TypeError, AttributeError) as error:
        message = f"the list of words to avoid: found {error}; expected a list 'avoid' of {', '.join(sorted(_FIELDS))}"
        raise SwardcastError(message) from error
    words = [word.lower() for entry in found for word in entry.words]
    twice = {word for word in words if words.count(word) > 1}
    if twice:
        message = f"the list of words to avoid: found {', '.join(sorted(twice))} twice; expected each once"
        raise SwardcastError(message)
    return tuple(found)


def _entry(item: dict[str, Any]) -> Banned:
    strangers = item.keys() - _FIELDS
    if strangers:
        raise KeyError(*strangers)
    return Banned(
        words=tuple(item["words"]),
        instead=item["instead"],
        but_not=tuple(item.get("but_not", ())),
        unless_explained=bool(item.get("unless_explained", False)),
    )


@cache
def banned_phrases(language: str) -> tuple[Banned, ...]:
    """Give the words to avoid in a language.

    Args:
        language: IETF language tag, such as "en-GB".

    Returns:
        The words of that language, whatever the country; none where no list was made.
    """
    file = files("swardcast.language") / "phrases" / language.partition("-")[0].lower() / "banned.toml"
    return parse_banned(file.read_text(encoding="utf-8")) if file.is_file() else ()
