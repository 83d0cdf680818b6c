"""The wheels of a yoke as they are drawn: where each joint, run and loop stands round its wheel.

Angles are in radians, counter-clockwise as the ring is worked. Between two
joints that lie flat the loops stand evenly spaced.
"""

from __future__ import annotations

from bisect import bisect_right
from cmath import phase
from math import pi, tau

from msgspec import Struct

from border.yoke.laying import Laid
from border.yoke.placing import Points
from border.yoke.ring import Pairs
from border.yoke.spread import Spread


class DrawnRun(Struct, frozen=True):
    """A run from the middle of the joint before it to the middle of the one behind.

    `free`, `seams`: the angles of its free places and of its seam loops.
    `edge` None: nothing is written where a run must be.
    """

    edge: str | None
    start: float
    end: float
    free: tuple[float, ...]
    seams: tuple[float, ...]

    @property
    def middle(self) -> float:
        return (self.start + self.end) / 2


class DrawnJoint(Struct, frozen=True):
    """A joint of a ring. `flat`: it lies flat; `agreed`: named from both sides.

    `loops`: those that it takes up of this wheel, and of the other as that one has it;
    0 where that is not known.
    """

    other: str
    angle: float
    flat: bool
    agreed: bool
    loops: tuple[int, int] = (0, 0)


class Wheel(Struct, frozen=True):
    """A wheel with its runs and joints, by number in its ring."""

    motif: str
    centre: complex
    runs: tuple[DrawnRun, ...]
    joints: tuple[DrawnJoint, ...]


def wheels(laid: Laid, part: Spread, points: Points, seams: int) -> dict[str, Wheel]:
    """All wheels of a part. `seams`: seam loops at each end of a joint."""
    return {motif: _wheel(laid, part, points, motif, seams) for motif in points}


def _wheel(laid: Laid, part: Spread, points: Points, motif: str, seams: int) -> Wheel:
    pairs = laid.joints.pairs[motif]
    turned = _Turned(part, points, motif, pairs)
    runs = []
    joints = []
    for n, (run, join) in enumerate(pairs):
        begin, stop = turned.starts[n], turned.starts[n] + run.places
        before, behind = begin - turned.half(n - 1), stop + turned.half(n)
        ends = (*(begin - i - 0.5 for i in range(seams)), *(stop + i + 0.5 for i in range(seams)))
        runs.append(
            DrawnRun(
                run.edge,
                turned.angle(before),
                turned.angle(behind),
                tuple(turned.angle(begin + i + 0.5) for i in range(run.places)),
                tuple(turned.angle(at) for at in (ends if join else ())),
            )
        )
        if join is not None:
            dart = (motif, n)
            mate = laid.joints.mates.get(dart)
            answer = laid.joints.pairs[mate[0]][mate[1]][1] if mate else None
            loops = join.loops, answer.loops if answer else join.loops
            agreed = mate is not None
            joints.append(DrawnJoint(join.other, runs[-1].end, dart in part.mates, agreed, loops))
    return Wheel(motif, points[motif], tuple(runs), tuple(joints))


class _Turned:
    """From loops counted round a wheel to angles: even between the joints that lie flat."""

    def __init__(self, part: Spread, points: Points, motif: str, pairs: Pairs) -> None:
        self.pairs = pairs
        self.starts: list[float] = []
        at = 0.0
        known: list[tuple[float, float]] = []
        for n, (run, _) in enumerate(pairs):
            self.starts.append(at)
            at += run.places + self.half(n)
            mate = part.mates.get((motif, n))
            if mate is not None:
                known.append((at, phase(points[mate[0]] - points[motif])))
            at += self.half(n)
        self.total = at or 1.0
        self.loops, self.angles = self._known(known or [(0.0, -pi / 2)])

    def half(self, number: int) -> float:
        """Half of the loops of the joint behind a run."""
        join = self.pairs[number][1]
        return max(join.loops, 1) / 2 if join else 0.0

    def _known(self, known: list[tuple[float, float]]) -> tuple[list[float], list[float]]:
        loops, angles = [known[0][0]], [known[0][1]]
        for at, angle in known[1:]:
            loops.append(at)
            angles.append(angles[-1] + (angle - angles[-1]) % tau)
        return [*loops, loops[0] + self.total], [*angles, angles[0] + tau]

    def angle(self, at: float) -> float:
        turns, at = divmod(at - self.loops[0], self.total)
        at += self.loops[0]
        i = min(bisect_right(self.loops, at), len(self.loops) - 1) - 1
        wide = self.loops[i + 1] - self.loops[i]
        share = (at - self.loops[i]) / wide if wide else 0.0
        return turns * tau + self.angles[i] + share * (self.angles[i + 1] - self.angles[i])
