"""A club's own phrases: in place of single ones of ours, or a whole language that does not come with Swardcast."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Final

from fluent.syntax import ast

from swardcast.errors import InputNeedsAttention, Problem, nearest
from swardcast.language.catalogue import BUILT_IN, Catalogue, built_in, catalogue_from
from swardcast.language.phrase_files import references_of

__all__ = ["FOLDER", "with_house_phrases"]

FOLDER: Final = "phrases"
"""Where they stand in the club folder."""

_LISTED: Final = 20  # of missing phrases; more would hide the rest of the report
_MOST: Final = 3_000
"""Phrases of a club in all, twice ours; judgement."""
_PHRASE: Final = re.compile(r"^-?[A-Za-z][A-Za-z0-9_-]* *=", re.MULTILINE)
_HINTED: Final = 40  # strange names; no more of a file are shown
_FUNCTIONS: Final = ("DATETIME", "NUMBER")  # those of fluent.runtime

_FIXED: Final = ("caution-", "rules-", "label-", "answer-label")


def with_house_phrases(tag: str, texts: Mapping[str, str]) -> Catalogue:
    """Put a club's own phrases in place of ours, or make a language that does not come with Swardcast.

    A message of the club's may hold some attributes only; the others stay ours.

    Args:
        tag: IETF language tag; one of `BUILT_IN`, or another whose phrases are all in `texts`.
        texts: text of the club's files in Fluent's format, by name.

    Returns:
        The catalogue.

    Raises:
        InputNeedsAttention: when a file cannot be parsed, names a phrase, a term or a slot that does not exist, or when
            phrases of a language of the club's own are missing.
    """
    model = built_in(tag if tag in BUILT_IN else BUILT_IN[0])
    if tag in BUILT_IN and not texts:
        return model
    counts = {name: len(_PHRASE.findall(text)) for name, text in texts.items()}
    if sum(counts.values()) > _MOST:
        largest = max(counts, key=counts.__getitem__)
        found, expected = f"{counts[largest]:,} phrases", f"at most {_MOST:,} in all files"
        raise InputNeedsAttention([Problem(file=largest, found=found, expected=expected)])
    own = catalogue_from(tag, texts)
    whole = _merged(model, own) if tag in BUILT_IN else own
    problems = [
        *(_not_ours_to_change(own) if tag in BUILT_IN else ()),
        *_strange_names(own, model), *_strange_slots(own, model), *_strange_references(own, whole),
        *_circles(own, whole),
    ]  # fmt: skip
    if tag not in BUILT_IN:
        problems += _missing(own, model)
    if problems:
        raise InputNeedsAttention(problems)
    return whole


def _merged(model: Catalogue, own: Catalogue) -> Catalogue:
    entries = dict(model.entries())
    for name, entry in own.entries().items():
        before = entries.get(name)
        if isinstance(entry, ast.Message) and isinstance(before, ast.Message):
            entries[name] = _with_attributes_of(before, entry)
        else:
            entries[name] = entry
    return Catalogue(model.tag, entries, {**model.places(), **own.places()}, f"{model.digest} {own.digest}")


def _with_attributes_of(before: ast.Message, entry: ast.Message) -> ast.Message:
    replaced = {one.id.name: one for one in entry.attributes}
    kept = [replaced.pop(one.id.name, one) for one in before.attributes]
    return ast.Message(entry.id, entry.value or before.value, [*kept, *replaced.values()])


def _not_ours_to_change(own: Catalogue) -> Iterator[Problem]:
    """Cautions, the Rules and the label's words: a club adds to them in its plan, and takes nothing away."""
    for name in own.entries():
        if name.startswith(_FIXED):
            file, line = own.places()[name]
            expected = "no phrase of the cautions, the Rules or a product's label: they can only be added to"
            hint = "Write what you want to add as own words of the job, below '## Please take care' or '## The Rules'."
            yield Problem(file=file, line=line, found=repr(name), expected=expected, hint=hint)


def _strange_names(own: Catalogue, model: Catalogue) -> Iterator[Problem]:
    known = model.names()
    strange = [name for name in own.names() if name not in known]
    for place, name in enumerate(strange):
        file, line = own.places()[name.partition(".")[0]]
        expected = "the name of a phrase of ours"
        hint = nearest(name, known) if place < _HINTED else ""
        yield Problem(file=file, line=line, found=repr(name), expected=expected, hint=hint)
    used = {reference for entry in own.entries().values() for reference in references_of(entry)}
    terms = [name for name in model.entries() if name.startswith("-")]
    for name in own.entries():
        if name.startswith("-") and name not in terms and name not in used:
            file, line = own.places()[name]
            expected = "a term of ours, or one that your own phrases use"
            yield Problem(file=file, line=line, found=repr(name), expected=expected, hint=nearest(name, terms))


def _strange_slots(own: Catalogue, model: Catalogue) -> Iterator[Problem]:
    known = set(model.names())
    for name in own.names():
        if name not in known:
            continue
        ours = sorted(model.slots_of(name))
        slots = ", ".join(f"${one}" for one in ours)
        for slot in sorted(own.slots_of(name).difference(ours)):
            file, line = own.places()[name.partition(".")[0]]
            expected = f"slots of {name!r}: {slots or 'it has none'}"
            yield Problem(file=file, line=line, found=f"the slot ${slot}", expected=expected, hint=nearest(slot, ours))


def _strange_references(own: Catalogue, whole: Catalogue) -> Iterator[Problem]:
    """What own phrases put in by name must be there: it would fail at the first build that says the phrase."""
    known = {*whole.entries(), *whole.names(), *_FUNCTIONS}
    for name, entry in own.entries().items():
        file, line = own.places()[name]
        for reference in sorted(references_of(entry) - known):
            found = f"{{ {reference} }} in {name!r}"
            expected = "the name of a phrase or a term that there is"
            yield Problem(file=file, line=line, found=found, expected=expected, hint=nearest(reference, known))


def _circles(own: Catalogue, whole: Catalogue) -> Iterator[Problem]:
    """A phrase that puts itself in, also by way of others, can never be said."""
    terms = [name for name in whole.entries() if name.startswith("-")]
    patterns = {name: whole.text_of(name) for name in (*whole.names(), *terms)}
    puts_in = {name: references_of(pattern) for name, pattern in patterns.items() if pattern is not None}
    for name in (*own.names(), *(term for term in terms if term in own.entries())):
        reached, todo = set[str](), list(puts_in[name])
        while todo:
            one = todo.pop()
            if one not in reached:
                reached.add(one)
                todo += puts_in.get(one, ())
        if name in reached:
            file, line = own.places()[name.partition(".")[0]]
            yield Problem(
                file=file, line=line, found=f"{name!r}, which puts itself in", expected="a phrase with an end"
            )


def _missing(own: Catalogue, model: Catalogue) -> Iterator[Problem]:
    have, names = set(own.names()), model.names()
    missing = [name for name in names if name not in have]
    if missing:
        found = f"{len(missing)} of {len(names)} phrases missing"
        more = f", of which the first {_LISTED} are listed" if len(missing) > _LISTED else ""
        yield Problem(file=FOLDER, found=found, expected=f"all phrases of the language {own.tag!r}{more}")
    for name in missing[:_LISTED]:
        file, line = model.places()[name.partition(".")[0]]
        yield Problem(file=FOLDER, field=name, found="nothing", expected=f"a phrase, as in ours ({file}, line {line})")
