"""Readings: what the rows of a border mean, before any edge is known.

Copies are resolved (from other files too), turning chains go to the head of
the row that they begin, a bare `repeat` and the row that is its own repeat
are written as repeats. The floor below works rounds, never rows.
"""

from __future__ import annotations

from dataclasses import dataclass

from border.findings import Span
from border.text.tree import Claim, Clause, Multiple, Text, Worked


@dataclass(frozen=True, slots=True)
class Rules:
    """The headings that bear on the working of a round (None: not stated)."""

    terms: str
    chains_count: bool | None = None
    rows_repeated: bool | None = None
    worked: Worked | None = None


@dataclass(frozen=True, slots=True)
class Round:
    """One round to be worked.

    `body` is one text or clauses; every open-ended repeat stands in it as a
    `Repeat` or an `in each`. `turns`: the row says `turn`. `head` is where to point when the round as a
    whole is meant.
    """

    number: int
    body: Text | tuple[Clause, ...]
    rules: Rules
    turns: bool
    claims: tuple[Claim, ...]
    head: Span
    span: Span


@dataclass(frozen=True, slots=True)
class Reading:
    """A border as rounds in order, with the claim of its headings."""

    name: str | None
    rounds: tuple[Round, ...]
    rules: Rules
    multiple: Multiple | None = None
