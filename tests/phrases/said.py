"""Rows in the words of the books, each with its terms and its counts.

The phrases are those of crochet books and magazines of 1846 to 1919, the rows round
them our own: what they mean is common practice of the trade, and the counts are
arithmetic on twelve or six loops.

What a row comes to is told in one line: `6 sc, 18 ch; 6 x 2 loop; asked CODE`.

First what is made, by US names; then each repeat that runs to an end: how often it
goes, and what it takes; then what is left over where the row does not close; last
what is asked or told of it. So one string says everything that such a row could get
wrong in its counts.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from border.reckoning.counts import RoundCount, count_edge
from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.working.work import work
from border.yoke.edges import Edge

HEADINGS = """terms: uk
chains count as stitches: yes
plain means us sc
long means us dc
"""
"""A book of British names, treble the US dc, with the two names that no terms settle."""


class On(NamedTuple):
    """What a row is worked on: so many loops, and the rounds below it, joined or to and fro."""

    loops: int
    below: tuple[str, ...] = ()
    closed: bool = True
    headings: str = HEADINGS


LOOPS = On(12)
"""Twelve loops in the round: what a first row is worked on."""

STITCHES = On(12, ("1 treble in each loop",))
"""Twelve dc."""

ARCHES = On(12, ("1 plain in each loop, with 3 chain between",))
"""Twelve sc with a space of 3 chains behind each."""

FIVES = On(6, ("1 plain in each loop, with 5 chain between",))
"""Six sc with a space of 5 chains behind each."""

BLOCKS = On(6, ("3 treble in each loop, with 3 chain between",))
"""Six times three dc in one loop, with 3 chains between."""

SIXES = On(6, ("6 treble in each loop, with 2 chain between",))
"""Six times six dc in one loop, with 2 chains between."""

PICOTS = On(6, ("*1 plain in next loop, 1 picot, 1 plain in same loop, ch 3; repeat",))
"""Six times two sc with a picot on the first, and 3 chains."""


def said(row: str, on: On = LOOPS) -> str:
    """What a row comes to as the round behind those of `on`; `row` may have its own head."""
    return last_of("\n".join((*_heads(on.below), _headed(row, len(on.below) + 1))), on)


def last_of(text: str, on: On = LOOPS) -> str:
    """What the last round of a text comes to, with all that is told of the text."""
    border, told = read_border(Source("book.border", f"{on.headings}{text}\n"))
    assert border is not None
    reading, more = read_rounds(border, lambda source, name: None)
    worked = work(reading, Edge("edge", on.closed, "loop", (), on.loops))
    asked = [f.code for f in (*told, *more, *worked.findings)]
    rounds = count_edge(worked)
    counted = _counted(rounds[-1]) if rounds else ["nothing"]
    return "; ".join([*counted, *(f"asked {code}" for code in asked)])


def _heads(below: tuple[str, ...]) -> list[str]:
    return [f"round {n}: {row}." for n, row in enumerate(below, 1)]


def _headed(row: str, number: int) -> str:
    return row if row.startswith("!") else f"round {number}: {row}."


def _counted(round_: RoundCount) -> list[str]:
    made = {**round_.made.stitches, "ch": round_.made.chains, "picot": round_.made.picots}
    parts = [", ".join(f"{n} {kind}" for kind, n in made.items() if n)]
    for repeat in round_.repeats:
        takes = ", ".join(f"{n} {kind}" for kind, n in repeat.takes.items())
        parts.append(f"{repeat.times} x {takes}")
        if repeat.left_over:
            parts.append(f"{repeat.left_over} left over")
    if not round_.closes:
        parts.append("does not close")
    return parts


def cases(*tables: tuple[On, dict[str, str]]) -> pytest.MarkDecorator:
    """Each row of each table (row: what it comes to), as a test of its own named by the row."""
    rows = [
        pytest.param(on, row, comes_to, id=row)
        for on, table in tables
        for row, comes_to in table.items()
    ]
    return pytest.mark.parametrize(("on", "row", "comes_to"), rows)
