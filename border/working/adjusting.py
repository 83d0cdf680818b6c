"""Adjustments of one's own piece of work: at which boundary of a repeat each one falls."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Sequence

from msgspec import Struct, field

from border.findings import Span
from border.working.cursor import Cursor
from border.working.line import Line
from border.working.stations import Sites

_PLACE = re.compile(r"place ([0-9]{1,9})")


class Adjustment(Struct, frozen=True):
    """In round `round`, at a section, motif, label or joint (`A | B`), or, on an edge without
    motifs, at a place (`place 12`): pass `by` more sites of the leading kind, or, below 0,
    work so many a second time."""

    round: int
    at: str
    by: int
    span: Span | None = None


class Boundary(Struct, frozen=True):
    """A moment when one repeat has been worked, and the next, or the tail, has not begun.

    `part`: which part of the edge is being worked (one text: 0). `repeats`: how
    many of the repeat have been worked there. Counted so, an adjustment of one
    part does not shift those of the next. `run`: which of its open-ended repeats
    it is, counted from 1 as they are worked.
    """

    part: int
    repeats: int
    run: int = 1


class Boundaries(Struct):
    """The boundaries of a row as it is worked, and what is to happen at them.

    `seen`: the position of each boundary met, in order. `applied`: those where
    an adjustment had its way, and how many elements of the row stood then.
    `part`: the part of the edge being worked now; `run`: its open-ended repeat.
    """

    plan: dict[Boundary, Adjustment]
    seen: dict[Boundary, int] = field(default_factory=dict)
    applied: dict[Boundary, int] = field(default_factory=dict)
    part: int = 0
    run: int = 0

    def enter(self, part: int) -> None:
        """A part of the edge is begun."""
        self.part, self.run = part, 0

    def meet(self, repeats: int, sites: Sites, cursor: Cursor) -> None:
        """One repeat has been worked; `sites` are its leading ones."""
        self.run += repeats == 1
        boundary = Boundary(self.part, repeats, self.run)
        ahead = sites.after(cursor.at)
        position = sites.p[ahead] if ahead < len(sites) else cursor.window.end
        self.seen.setdefault(boundary, position)
        adjustment = self.plan.get(boundary)
        if adjustment is None or boundary in self.applied:
            return
        if adjustment.by > 0:
            beyond = sites.ahead(cursor.at)
            if adjustment.by > len(beyond):
                return
            cursor.at = sites.b[beyond[adjustment.by - 1]]
        else:
            every = sites.ahead(cursor.window.head)
            target = bisect_left(every, ahead) + adjustment.by
            if target < 0:
                return
            cursor.at = sites.a[every[target]]
        cursor.skip_end = None
        self.applied[boundary] = len(cursor.made.kinds)


def middles(line: Line, tick: int, at: str) -> list[int]:
    """The middle of every stretch or joint that `at` names, in ticks; none if it names nothing."""
    if "|" in at:
        pair = [name.strip() for name in at.split("|")]
        found = []
        ends = {i + n for i in line.named.get(pair[0], ()) for n in (0, 1)}
        for index in sorted(i for i in {i % len(line.stretches) for i in ends} if i in line.joints):
            before, behind = (s.run.names for s in line.joint_between(index))
            a, b = pair[0], pair[-1]
            if len(pair) == 2 and ((a in before and b in behind) or (b in before and a in behind)):
                found.append(line.stretches[index].start * tick)
        return found
    if not line.stretches and (place := _PLACE.fullmatch(at)):
        number = int(place[1])
        if line.flipped:
            number = line.length + 1 - number
        return [(2 * number - 1) * tick // 2] if 1 <= number <= line.length else []
    points = []
    bear = line.named.get(at, [])
    alone = [(bear[0], bear[0])] if len(bear) == 1 else None
    for first, last in alone or line.series([at in s.run.names for s in line.stretches]):
        start, end = line.stretches[first].start, line.stretches[last].end
        if first > last:
            end += line.length
        points.append((start + end) * tick // 2)
    return points


def planned(
    adjustments: tuple[Adjustment, ...], line: Line, tick: int, seen: dict[Boundary, int]
) -> tuple[dict[Boundary, Adjustment], list[Adjustment]]:
    """Which boundary each adjustment takes, and those that find none.

    Each takes the free boundary nearest to the middle of what it names (the
    short way round a closed edge), the earlier one on a tie, in the order given.
    """
    around = line.length * tick if line.closed else 0
    free = sorted((p % around if around else p, n) for n, p in enumerate(seen.values()))
    boundaries = list(seen)
    plan: dict[Boundary, Adjustment] = {}
    homeless = []
    for adjustment in adjustments:
        spots = middles(line, tick, adjustment.at)
        if not free or not spots:
            homeless.append(adjustment)
            continue
        _, number, at = min(near for spot in spots for near in _beside(spot, free, around))
        plan[boundaries[number]] = adjustment
        del free[at]
    return plan, homeless


def _beside(
    spot: int, free: Sequence[tuple[int, int]], around: int
) -> Iterator[tuple[int, int, int]]:
    """The boundaries on either side of a spot, of several in one place the first: how far away,
    which (by its number), and where in `free` (positions with numbers, ascending)."""
    spot = spot % around if around else spot
    behind = bisect_left(free, (spot, 0))
    for position, _ in (free[behind % len(free)], free[behind - 1]):
        at = bisect_left(free, (position, 0))
        away = abs(position - spot)
        yield min(away, around - away) if around else away, free[at][1], at
