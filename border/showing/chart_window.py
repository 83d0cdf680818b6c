"""What stretch of an edge a chart shows, and what stands in it."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum
from itertools import pairwise
from statistics import median
from typing import TypeAlias

from msgspec import Struct

from border.working.fabric import Fabric
from border.working.line import Line
from border.working.work import WorkedEdge, WorkedRound

Key: TypeAlias = tuple[int, int]
"""An element of a fabric: its index, and how many times round the edge."""

MOST_WHOLE = 40
"""An edge of so many places, or fewer, is drawn whole where it has no repeat with neighbours."""


class Ends(Enum):
    """What of the two ends of a stretch belongs to it."""

    NONE = 0
    START = 1
    BOTH = 2


class Window(Struct, frozen=True):
    """The stretch of the edge line that is drawn, in places; `scale`: pixels a place.

    `ends`: which of the elements that stand exactly on its two ends belong to it.
    """

    start: float
    end: float
    scale: float = 0.0
    ends: Ends = Ends.START

    def has(self, position: float) -> bool:
        """Whether an element at a position is drawn."""
        if position == self.start:
            return self.ends is not Ends.NONE
        if position == self.end:
            return self.ends is Ends.BOTH
        return self.start < position < self.end

    def within(self, other: Window, length: float) -> bool:
        """Whether all of it is in another, round an edge of such a length."""
        return any(
            other.start <= self.start + lap and self.end + lap <= other.end
            for lap in (-length, 0, length)
        )


def own_position(fabric: Fabric, index: int) -> float:
    """The position of an element on the edge as it was before any turning, in places."""
    at = fabric.pos[index] / fabric.tick
    return fabric.line.length - at if fabric.line.flipped else at


def keys(fabric: Fabric, start: float, end: float) -> list[tuple[float, Key]]:
    """The elements from `start` to `end` with their positions, in the edge's own order; what lies
    under an arch is not seen."""
    length = fabric.line.length
    order = fabric.order_turned() if fabric.line.flipped else range(len(fabric.kinds))
    at = [own_position(fabric, i) for i in range(len(fabric.kinds))]
    first, last = min(at, default=0.0), max(at, default=0.0)
    laps = range(-2, 3) if fabric.line.closed else range(1)
    laps_met = [n for n in laps if first + n * length <= end and last + n * length >= start]
    return [
        (position, (i, lap))
        for lap in laps_met
        for i in order
        if i not in fabric.covered and start <= (position := at[i] + lap * length) <= end
    ]


def around_a_repeat(worked: WorkedEdge) -> Window:
    """One repeat with its neighbours, of the round whose repeats are the longest.

    Where no round has three repeats, the whole edge, or the beginning of a long one.
    """
    line = worked.rounds[0].fabric.line
    best: tuple[float, Window] | None = None
    for round_ in worked.rounds:
        starts = _starts(round_)
        if len(starts) < 4:
            continue
        long = median(b - a for a, b in pairwise(starts))
        if best is None or long > best[0]:
            best = long, Window(starts[0], starts[3])
    if best is not None and best[1].end - best[1].start < line.length:
        return best[1]
    return whole(line) if line.length <= MOST_WHOLE else Window(0.0, MOST_WHOLE)


def whole(line: Line) -> Window:
    """The whole edge, once round."""
    return Window(0.0, line.length, ends=Ends.START if line.closed else Ends.BOTH)


def of_section(line: Line, name: str) -> Window | None:
    """The first unbroken series of motifs that carry a name; None: no motif does.

    A single motif is shown between its neighbours.
    """
    carries = [name in stretch.run.names for stretch in line.stretches]
    if not any(carries):
        return None
    first, last = next(iter(line.series(carries)))
    ends = Ends.NONE
    if first == last:
        first, last, ends = first - 1, last + 1, Ends.BOTH
        if not line.closed:
            first, last = max(first, 0), min(last, len(carries) - 1)
    if all(carries) or last - first + 1 >= len(carries):
        return whole(line)
    start, end = line.stretches[first].start, line.stretches[last % len(carries)].end
    return Window(start, end if end > start else end + line.length, ends=ends)


def _starts(round_: WorkedRound) -> Sequence[float]:
    """Where the repeats of a round begin, in the edge's own order."""
    fabric = round_.fabric
    firsts = {own_position(fabric, start) for start, stop in round_.spans if stop > start}
    return sorted(firsts)
