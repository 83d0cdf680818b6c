"""The edge line in working order: stretches of motifs, and the joints between them.

Positions are exact. They are kept as whole numbers of *ticks*, a power of two
of them to a place, so that half-way is always a whole tick.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from functools import cached_property

from msgspec import Struct

from border.yoke.edges import Edge, Run


class Stretch(Struct, frozen=True):
    """One motif's stretch [start, end) of the line, in places. `entry`: its run on the edge."""

    entry: int
    start: int
    end: int
    run: Run


class Line(Struct, frozen=True, dict=True):
    """The line of an edge, `length` places long, as it is worked now.

    Turning the work gives a line whose stretches come in the new order and
    whose points count from the other end.
    """

    length: int
    closed: bool
    stretches: tuple[Stretch, ...]
    flipped: bool = False

    def turned(self) -> Line:
        """The same edge seen from its other side, counted from the other end."""
        n = self.length
        stretches = tuple(
            Stretch(s.entry, n - s.end, n - s.start, s.run) for s in reversed(self.stretches)
        )
        return Line(n, self.closed, stretches, not self.flipped)

    @cached_property
    def starts(self) -> list[int]:
        return [s.start for s in self.stretches]

    @cached_property
    def named(self) -> dict[str, list[int]]:
        """Every name of the edge, with the stretches (by index) that bear it."""
        found: dict[str, list[int]] = {}
        for index, stretch in enumerate(self.stretches):
            for name in stretch.run.names:
                found.setdefault(name, []).append(index)
        return found

    @cached_property
    def joints(self) -> range:
        """The points of the joints, each named by the stretch (by index) that begins there.

        A closed edge of two or more motifs has one at 0, an edge of one motif none.
        """
        first = 0 if self.closed and len(self.stretches) > 1 else 1
        return range(first, len(self.stretches))

    def joint_between(self, index: int) -> tuple[Stretch, Stretch]:
        """The stretches before and behind the joint at which stretch `index` begins."""
        return self.stretches[index - 1], self.stretches[index]

    def owner(self, position: int, tick: int) -> tuple[int, bool]:
        """Where a position (in ticks) falls: the index of a stretch, and whether on its joint.

        The joint is the one where that stretch begins. Only for lines with motifs.
        """
        place, rest = divmod(position, tick)
        if self.closed:
            place %= self.length
        at = bisect_left(self.starts, place)
        is_joint = at > 0 or (self.closed and len(self.starts) > 1)
        if rest == 0 and is_joint and at < len(self.starts) and self.starts[at] == place:
            return at, True
        return max(bisect_right(self.starts, place) - 1, 0), False

    def owners(self, positions: Iterable[int], tick: int) -> Iterator[tuple[int, bool]]:
        """The `owner` of each position. Neighbours mostly have the same: it is looked at first."""
        low = high = at = 0
        for position in positions:
            on_joint = False
            if not low < position < high:
                at, on_joint = self.owner(position, tick)
                laps = position // (self.length * tick) * self.length
                low, high = (
                    (self.stretches[at].start + laps) * tick,
                    (self.stretches[at].end + laps) * tick,
                )
            yield at, on_joint

    def series(self, carries: list[bool]) -> Iterator[tuple[int, int]]:
        """The unbroken series of stretches marked True, as [first, last] indices.

        In the order of the line. A series across the point 0 is one and comes
        last: its last index is then smaller than its first.
        """
        n = len(carries)
        runs: list[tuple[int, int]] = []
        i = 0
        while i < n:
            j = i
            while j + 1 < n and carries[i] == carries[j + 1]:
                j += 1
            if carries[i]:
                runs.append((i, j))
            i = j + 1
        if self.closed and len(runs) > 1 and runs[0][0] == 0 and runs[-1][1] == n - 1:
            runs = [*runs[1:-1], (runs[-1][0], runs[0][1])]
        yield from runs


def line_of(edge: Edge) -> Line:
    """The line of an edge before any work: the first run begins at 0."""
    stretches = []
    start = 0
    for entry, run in enumerate(edge.runs):
        stretches.append(Stretch(entry, start, start + run.places, run))
        start += run.places
    return Line(edge.places, edge.closed, tuple(stretches))
