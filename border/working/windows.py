"""Windows: the part of a fabric that a text sees while it is worked.

A row that is one text sees the whole fabric, a round from the spot where it
begins; a clause sees the sites of its stretch, or those on its joint.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right

from msgspec import Struct, field

from border.text.tree import AtOnce, Between, Kind, Target, Whole
from border.working.line import Line
from border.working.sites import SiteFinder
from border.working.stations import Sites, as_one, merged

BEFORE_ALL = -(1 << 62)
"""A cursor before every station."""


class Window(Struct):
    """What a text sees: `head` is where its cursor starts, `end` the position of its end.

    `round`: it is the whole of a closed round.
    """

    finder: SiteFinder
    head: int
    end: int
    round: bool = False
    _seen: dict[tuple[Target, ...], Sites] = field(default_factory=dict)

    def sites(self, targets: tuple[Target, ...]) -> Sites:
        """The sites of a union that the text sees, in its working order."""
        if (found := self._seen.get(targets)) is None:
            found = merged([self._seen_of(t) for t in targets]) if targets else Sites([], [], [])
            self._seen[targets] = found
        return found

    def _seen_of(self, target: Target) -> Sites:
        raise NotImplementedError


class RowWindow(Window):
    """A whole row. On a closed edge one round from the station `head`, running on past its end."""

    def _seen_of(self, target: Target) -> Sites:
        s = self.finder.sites(target)
        if not self.round:
            at = s.after(self.head)
            return Sites(s.a[at:], s.b[at:], s.p[at:]) if at else s
        lap, length = self.finder.round, self.finder.fabric.length
        # a round that begins at a point ends behind the atom before that point
        last = self.head + lap + (1 if self.head % self.finder.step == 3 else 0)
        laps, within = divmod(self.head, lap)
        at = bisect_left(s.a, within)
        if at == 0 and laps == 0 and (not s.b or s.b[-1] <= last):
            return s
        low, high = laps * lap, (laps + 1) * lap
        a = [x + low for x in s.a[at:]] + [x + high for x in s.a[:at]]
        b = [x + low for x in s.b[at:]] + [x + high for x in s.b[:at]]
        up, over = laps * length, (laps + 1) * length
        p = [x + up for x in s.p[at:]] + [x + over for x in s.p[:at]]
        keep = [i for i, x in enumerate(b) if x <= last]
        if len(keep) == len(b):
            return Sites(a, b, p)
        return Sites([a[i] for i in keep], [b[i] for i in keep], [p[i] for i in keep])


class StretchWindow(Window):
    """The sites whose positions lie strictly between `low` and `end` (ticks).

    `with_low`, `with_end`: those on the joint at that end belong to it too.
    """

    low: int = 0
    with_low: bool = False
    with_end: bool = False
    order: dict[Target, tuple[list[int], list[int]]] = field(default_factory=dict)

    def _seen_of(self, target: Target) -> Sites:
        if isinstance(target, Between):
            return self._between(target)
        if isinstance(target, AtOnce):
            return as_one(self.sites((Whole(target.of),)), target.count)
        s = self.finder.sites(target)
        length = self.finder.fabric.length
        closed = self.finder.fabric.line.closed
        if target not in self.order:  # shared by all windows on the fabric
            spot = [(p % length if closed else p, i) for i, p in enumerate(s.p)]
            spot.sort()
            self.order[target] = [q for q, _ in spot], [i for _, i in spot]
        spots, index = self.order[target]
        found: list[tuple[int, int, int]] = []
        for lap in (0, length) if closed else (0,):
            low, end = self.low - lap, self.end - lap
            start = bisect_left(spots, low) if self.with_low else bisect_right(spots, low)
            stop = bisect_right(spots, end) if self.with_end else bisect_left(spots, end)
            for k in range(start, stop):
                i = index[k]
                rounds = (spots[k] + lap - s.p[i]) // length if closed else 0
                turn = rounds * self.finder.round
                found.append((s.a[i] + turn, s.b[i] + turn, s.p[i] + rounds * length))
        found.sort()
        return Sites([x[0] for x in found], [x[1] for x in found], [x[2] for x in found])

    def _between(self, target: Between) -> Sites:
        """The points between two neighbours that both belong to the stretch."""
        s = self.sites((Whole(target.of),))
        found = Sites([], [], [])
        for i in range(len(s) - 1):
            at = self.finder.between(s.b[i], s.a[i + 1])
            found.a.append(at)
            found.b.append(at + 1)
            found.p.append((s.p[i] + s.p[i + 1]) // 2)
        return found


class JointWindow(StretchWindow):
    """The sites that stand exactly on a joint. A bare stitch goes into the joint itself."""

    def joint(self) -> tuple[int, int, int]:
        """The joint as a site: first station, the one behind it, position."""
        s = self.sites((Whole(Kind("joint")),))
        return s.a[0], s.b[0], s.p[0]


def joints_apart(line: Line) -> set[int]:
    """The joints, by the index of the stretch behind each; of several at one point the first."""
    points: dict[int, int] = {}
    for index in line.joints:
        points.setdefault(line.stretches[index].start, index)
    return set(points.values())
