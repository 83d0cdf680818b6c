"""Stitch names that the stated terms do not have, or that a heading makes one with another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from border.findings import Finding
from border.text.source import Source
from border.text.vocabulary import TERMS, Names, name_of, names
from border.text.wording.passing import OPENS, WHICH, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def unknown_terms(
    terminals: Sequence[Terminal], known: Names, source: Source, told: set[str]
) -> Iterator[Finding]:
    """Stitch names that the stated terms do not have, or no longer surely; each told once."""
    for terminal in terminals:
        if terminal.type != "STITCH" or terminal.text in told:
            continue
        phrase = tuple(terminal.text.split(" "))
        span = source.span(terminal.start, terminal.end)
        text, terms = terminal.text, known.terms
        if phrase in known.elsewhere:
            there = [t for t in TERMS if phrase in names(t).known]
            message = f'the {terms} terms have no "{text}"'
            meaning = meaning_of(known.elsewhere[phrase], terms)
            where = f" ({' and '.join(there)})" if there else ""
            help_ = (
                f'write a heading that says what it means, as in "{text} means {meaning}"'
                f"{where}, or other terms"
            )
            if terms == "uk" and text.startswith("l"):  # British books of both kinds name it
                help_ += f', or "{text} means us tr" where the thread is over but twice'
            if text in ("sc", "s c") and (single := known.known.get(("single",))) != "sc":
                other = name_of(single or "ss", "us")
                help_ += f'; or "{text} means {other}", if it is short for single crochet'
            if not there:
                message = f'no terms settle what "{text}" is'
                help_ = (
                    f'see how the book says it is made, and write a heading: "{text} means '
                    f'{meaning}" (in most books), or what it is here'
                )
        elif phrase in known.unsettled:
            other = known.unsettled[phrase]
            moved = meaning_of(known.known[tuple(other.split(" "))], terms)
            stays = meaning_of(known.known[phrase], terms)
            message = f'"{text}" may be short for "{other}", which here means {moved}'
            help_ = f'write a heading: "{text} means {moved}", or "{text} means {stays}"'
        else:
            continue
        told.add(text)
        yield Finding("term-unknown-here", message, help_, span)


def names_alike(
    terminals: Sequence[Terminal], known: Names, source: Source, told: set[str]
) -> Iterator[Finding]:
    """`1 treble, 4 long, 1 treble` in one row, where both are one stitch by a heading."""
    met: dict[str, str] = {}
    placed = shown = False
    opened: list[int] = []
    for n, terminal in enumerate(terminals):
        if terminal.type == "LP":
            opened.append(terminal.start)
        elif terminal.type == "RP" and opened:
            opened.pop()
        shown = terminal.type != "RP" and (shown or types(terminals, n - 1, 2) == ["PICOT", "LP"])
        if terminal.type in _PLACED:
            placed = True  # in a place a name is that of the row below
        elif terminal.type not in _LISTED:
            placed = False
        if terminal.type != "STITCH" or placed or shown:
            continue
        if any(terminal.start < start for start in opened):  # a figure says it
            continue
        name = _given(terminal, known)
        other = met.setdefault(terminal.name, name)
        pair = f"{terminal.name} by two names"
        if other == name or pair in told or _short_for(name, other):
            continue
        told.add(pair)
        here = name_of(terminal.name, known.terms)
        by = name or other
        span = source.span(terminal.start, terminal.end)
        message = f'this row calls one stitch by two names: a heading says that "{by}" means '
        message += here if not (name and other) else f'what "{other if by == name else name}" does'
        one = by if name and other else here
        another = meaning_of("sc" if terminal.name != "sc" else "dc", known.terms)
        help_ = "where the book means another stitch by one of them, say in a heading which, as in "
        help_ += f'"{one} means {another}", or state other terms'
        yield Finding("names-alike", message, help_, span)


def _given(stitch: Terminal, known: Names) -> str:
    """The name that a heading gives this stitch, and the terms do not; "" where none does."""
    phrase = tuple(stitch.text.split(" "))
    own = names(known.terms).known.get(phrase) == stitch.name
    return "" if own else known.given.get(phrase, "")


_PLACED = OPENS | WHICH | {"AS"}
_LISTED = frozenset({"NUM", "STITCH", "AND", "CH", "KIND", "EACHOF", "PAIR"})
"""Words that leave it as it is whether a place is named."""


def _short_for(one: str, other: str) -> bool:
    """Whether one of two names that headings give is an abbreviation of the other: `l`, `long`."""
    return bool(one and other) and one[0] == other[0] and min(len(one), len(other)) < 3


def meaning_of(stitch: str, terms: str) -> str:
    """How an override names a stitch: by its US name, said to be that where it could mislead."""
    name = name_of(stitch, "us")
    return name if terms != "uk" else f"us {name}"
