"""The words behind a copied row: how they go on, and so many of something that it makes."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.text.framing.copies import behind_said
from border.text.numbers import number_at
from border.text.terminals import Terminal, terminal_at
from border.text.vocabulary import Names
from border.text.words import Sort, Word

SEPARATES = frozenset({",", ";", ".", "and", "—", "-"})


class Amount(Struct, frozen=True):
    """So many of something, and the place behind: `5 dc`, `picots of 4`; parts may be unsaid."""

    of: str
    number: int | None
    after: int
    named: tuple[Terminal, ...] = ()


def amount_at(words: Sequence[Word], at: int, names: Names) -> Amount | None:
    """`7 chain`, `ch 7`, `a chain of 7`, `3 treble`, `picots of 5 chain`, `the picots`, `5`."""
    at = behind_said(words, at, "the")
    number = number_at(words, at)
    behind = number[1] if number else at
    noun = noun_at(words, behind, names)
    if noun is None:
        return Amount("", number[0], behind) if number else None
    of, named, end = noun
    ring = of == "picot"
    size = _size(words, end, ring=ring)
    if size is not None and (number is None or (words[at].text == "a" and not ring)):
        if ring and (also := noun_at(words, size[1], names)) and also[0] == "ch":
            size = size[0], also[2]
        return Amount("ring" if ring else of, *size, (named,))
    return Amount(of, number[0] if number else None, end, (named,))


def noun_at(words: Sequence[Word], at: int, names: Names) -> tuple[str, Terminal, int] | None:
    """What a row can make, and the place behind: chains, picots, a stitch."""
    if at >= len(words) or words[at].sort is not Sort.WORD:
        return None
    terminal, end = terminal_at(words, at, names)
    of = {"CH": "ch", "PICOT": "picot", "STITCH": terminal.name}.get(terminal.type)
    return (of, terminal, end) if of else None


def _size(words: Sequence[Word], at: int, *, ring: bool) -> tuple[int, int] | None:
    """The number behind its noun, and the place behind: `ch 7`, `chain of 7`, `picots of 5`."""
    of = at < len(words) and words[at].text == "of"
    return number_at(words, at + of) if of or not ring else None


def past_openings(words: Sequence[Word], at: int) -> int:
    """Behind words that open what is otherwise: `but`, `only`, `except that`."""
    while (end := behind_said(words, at, "opens")) > at:
        at = end
    return at


def past_separators(words: Sequence[Word], at: int) -> int:
    """Behind commas, stops, and `and`."""
    while at < len(words) and words[at].text in SEPARATES:
        at += 1
    return at
