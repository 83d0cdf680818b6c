"""Adjustments of one's own piece of work: at which boundary of a repeat each one falls."""

from __future__ import annotations

from dataclasses import dataclass

from border.findings import Span
from border.working.cursor import Cursor
from border.working.line import Line
from border.working.sites import Sites


@dataclass(frozen=True, slots=True)
class Adjustment:
    """In round `round`, at a section, motif, label or joint (`A | B`): pass `by` more sites of
    the leading kind, or, below 0, work so many a second time."""

    round: int
    at: str
    by: int
    span: Span | None = None


@dataclass(slots=True)
class Boundaries:
    """The boundaries of a row as it is worked, and what is to happen at them.

    `plan`: by the number of repeats worked before it (from 1). `seen`: the
    positions of the boundaries met. `applied`: the numbers where an
    adjustment had its way.
    """

    plan: dict[int, Adjustment]
    seen: list[int]
    applied: set[int]

    def meet(self, sites: Sites, cursor: Cursor, limit: int) -> None:
        """One repeat has been worked, and the next, or the tail, has not begun.

        `limit`: how many of the leading sites, from the back, the repeat must leave.
        """
        ahead = sites.after(cursor.at)
        self.seen.append(sites.p[ahead] if ahead < len(sites) else cursor.window.end)
        number = len(self.seen)
        if (adjustment := self.plan.get(number)) is None:
            return
        target = ahead + adjustment.by
        if target < 0 or target > len(sites) - limit:
            return
        cursor.at = sites.b[target - 1] if adjustment.by > 0 else sites.a[target]
        cursor.skip_end = None
        self.applied.add(number)


def middles(line: Line, tick: int, at: str) -> list[int]:
    """The middle of every stretch or joint that `at` names, in ticks; none if it names nothing."""
    if "|" in at:
        pair = [name.strip() for name in at.split("|")]
        found = []
        for index in line.joints:
            before, behind = (s.run.names for s in line.joint_between(index))
            a, b = pair[0], pair[-1]
            if len(pair) == 2 and ((a in before and b in behind) or (b in before and a in behind)):
                found.append(line.stretches[index].start * tick)
        return found
    points = []
    for first, last in line.series([at in s.run.names for s in line.stretches]):
        start, end = line.stretches[first].start, line.stretches[last].end
        if first > last:
            end += line.length
        points.append((start + end) * tick // 2)
    return points


def planned(
    adjustments: tuple[Adjustment, ...], line: Line, tick: int, seen: list[int]
) -> tuple[dict[int, Adjustment], list[Adjustment]]:
    """Which boundary each adjustment takes, and those that find none.

    Each takes the free boundary nearest to the middle of what it names (the
    short way round a closed edge), the earlier one on a tie, in the order given.
    """
    length = line.length * tick
    plan: dict[int, Adjustment] = {}
    homeless = []
    for adjustment in adjustments:
        spots = middles(line, tick, adjustment.at)
        best: tuple[int, int] | None = None
        for number, position in enumerate(seen, 1):
            if number in plan:
                continue
            for spot in spots:
                away = abs(position - spot)
                if line.closed:
                    away = min(away % length, -away % length)
                if best is None or (away, number) < best:
                    best = (away, number)
        if best is None:
            homeless.append(adjustment)
        else:
            plan[best[1]] = adjustment
    return plan, homeless
