"""The shape of an edge: how long a round is that lies flat at some distance from it; in mm.

An edge of wheels is a row of equal circles that touch. It turns outwards round each
wheel, by the angle between the middles of its two joints, and inwards by half a turn
at every joint. A round that lies flat at distance s from it follows circles of radius R + s as far
as the middle of each joint, where it meets the next: on a wheel that shows the angle
a it is (R + s)(a - 2 arccos(R / (R + s))) long. Further out that becomes 2R + (a - pi)(R + s), a
straight line and its turning. An edge without wheels is a line of length C that
turns evenly by T: C + T s. Both are plane geometry; T is 2 pi round a disc, 0 along a
tube, -2 pi inside a ring. A square corner is a quarter turn that adds 2 s, not pi/2 s.

The loops of a wheel stand evenly round it (assumed).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from math import acos, copysign, cos, fsum, hypot, pi, radians, sin, tau
from typing import TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from border.yoke.edges import Edge, Run

Spot: TypeAlias = tuple[int, float]
"""A point of the edge: the number of its wheel, running on round a closed edge, and the angle
from the middle of the joint before it. Without wheels 0 and the place."""

Stretch: TypeAlias = tuple[int, int]
"""Places [start, end) of an edge, running on past its end."""

LEAST = 1e-6
"""A wheel shows so much at least, in radians."""


class Arc(Struct, frozen=True):
    """What one wheel shows: places [start, end) of the edge, and the `angle` between the
    middles of its joints; the first place begins at `margin`, each takes `step`."""

    start: int
    end: int
    angle: float
    margin: float
    step: float


class Shape(Struct, frozen=True):
    """The shape of one edge.

    With wheels of `radius`, `arcs`; without, `length`, `turning` (radians, inwards below 0) and
    how much longer a round is for every mm further out, `growth`.
    """

    places: int
    radius: float = 0.0
    arcs: tuple[Arc, ...] = ()
    length: float = 0.0
    turning: float = 0.0
    growth: float = 0.0

    def spot(self, position: float) -> Spot:
        """The point of the edge at a position in places; past the end it goes round again."""
        if not self.arcs:
            return 0, position
        lap, at = divmod(position, self.places)
        number = bisect_right([arc.start for arc in self.arcs], at) - 1
        arc = self.arcs[number]
        along = 0.0 if at == arc.start else arc.margin + (at - arc.start) * arc.step
        return int(lap) * len(self.arcs) + number, along

    def apart(self, one: Spot, other: Spot, away: float) -> float:
        """How far two neighbouring stitches are apart in a round that lies flat, so far away.

        The straight way where a chain can take it. Signed: below 0 if `other` comes first, or
        where an edge that turns inwards leaves nothing between them.
        """
        if other < one:
            return -self.apart(other, one, away)
        if not self.arcs:
            return (other[1] - one[1]) / self.places * (self.length + self.growth * away)
        reach = self.radius + away
        begun, ended = self._turned(one, away), self._turned(other, away)
        if one[0] == other[0]:
            return _chord(reach, ended - begun)
        to_joint = self._turned((one[0], self._arc(one[0]).angle), away) - begun
        from_joint = ended - self._turned((other[0], 0.0), away)
        between = range(one[0] + 1, other[0])
        if between:
            round_wheels = fsum(self.shown(number, away) for number in between)
            return reach * (to_joint + from_joint) + round_wheels
        if to_joint < 0 or from_joint < 0:
            return reach * (to_joint + from_joint)
        hidden = acos(self.radius / reach)
        x = 2 * self.radius - reach * (cos(to_joint + hidden) + cos(from_joint + hidden))
        return hypot(x, reach * (sin(to_joint + hidden) - sin(from_joint + hidden)))

    def shown(self, number: int, away: float) -> float:
        """The length of a flat round over one wheel, from joint to joint."""
        reach = self.radius + away
        return reach * (self._arc(number).angle - 2 * acos(self.radius / reach))

    def turning_of(self, number: int) -> float:
        """By how much the edge turns at one wheel and its joints, in radians."""
        return self._arc(number).angle - pi

    def touching(self, away: float, stretch: Stretch | None = None) -> float:
        """The length of the line that runs along the tops of wheels, or, further out, of a
        round that lies flat; of all the edge, or of a stretch of it."""
        start, end = stretch or (0, self.places)
        if not self.arcs:
            share = (end - start) / self.places
            return max(self.length + self.growth * away, 0.0) * share
        reach = self.radius + away
        shown = (n for n in range(len(self.arcs)) if self.lies_over((n, 0.0), (start, end)))
        return max(fsum(2 * self.radius + self.turning_of(n) * reach for n in shown), 0.0)

    def lies_over(self, spot: Spot, stretch: Stretch) -> bool:
        """Whether a spot lies over a stretch of the edge; with wheels, over one of its wheels."""
        start, end = stretch
        place = self._arc(spot[0]).start if self.arcs else spot[1]
        return (place - start) % self.places < end - start

    def _arc(self, number: int) -> Arc:
        return self.arcs[number % len(self.arcs)]

    def _turned(self, spot: Spot, away: float) -> float:
        """The angle of a spot, pushed out of the valleys that the neighbours fill up.

        Of a wheel that has sunk into its neighbours the angles run backwards.
        """
        hidden = acos(self.radius / (self.radius + away))
        angle = self._arc(spot[0]).angle
        if angle < 2 * hidden:
            return hidden + (angle - 2 * hidden) * spot[1] / angle
        return min(max(spot[1], hidden), angle - hidden)


def _chord(reach: float, angle: float) -> float:
    return 2 * reach * sin(angle / 2) if angle > 0 else reach * angle


def shape_of(
    edge: Edge,
    wheel_mm: float | None,
    length_mm: float | None,
    turns: float,
    corners: int = 0,
) -> Shape | None:
    """The shape of an edge; None where neither its wheels nor its length are known.

    `wheel_mm`: across one wheel. `length_mm`: of an edge without wheels. `turns`: by how many
    degrees it turns in all, where it has no wheels to tell (`with_turning` for those), so
    many square `corners` among it.
    """
    if edge.runs and all(run.loops for run in edge.runs):
        if wheel_mm is None:
            return None
        if edge.runs[0].joined == (0, 0):  # one wheel all round
            return Shape(edge.places, length=pi * wheel_mm, turning=tau, growth=tau)
        return Shape(edge.places, wheel_mm / 2, _arcs(edge.runs))
    if length_mm is None:
        return None
    return _line(Shape(edge.places, length=length_mm), radians(turns), corners)


def _line(shape: Shape, turning: float, corners: int) -> Shape:
    """An edge without wheels that turns so far, with so many square corners that way."""
    growth = turning + copysign(corners * (2 - pi / 2), turning or 1.0)
    return replace(shape, turning=turning, growth=growth)


def _arcs(runs: Sequence[Run]) -> tuple[Arc, ...]:
    arcs: list[Arc] = []
    start = 0
    for run in runs:
        step = tau / run.loops
        before, behind = run.joined
        angle = max((before / 2 + run.free + behind / 2) * step, LEAST)
        margin = (before / 2 - (run.places - run.free) / 2) * step
        arcs.append(Arc(start, start + run.places, angle, margin, step))
        start += run.places
    return tuple(arcs)


def with_turning(shape: Shape, turns: float, corners: int = 0) -> Shape:
    """The shape with its whole turning as it was measured, in degrees: what it differs by from
    that of the loops is shared out evenly among the wheels."""
    if not shape.arcs:
        return _line(shape, radians(turns), corners)
    more = radians(turns) - sum(shape.turning_of(n) for n in range(len(shape.arcs)))
    each = more / len(shape.arcs)
    arcs = tuple(_opened(arc, each) for arc in shape.arcs)
    return replace(shape, arcs=arcs)


def _opened(arc: Arc, more: float) -> Arc:
    """An arc that shows so much more of its wheel, its places moved apart."""
    angle = max(arc.angle + more, LEAST)
    wider = angle / arc.angle
    return replace(arc, angle=angle, margin=arc.margin * wider, step=arc.step * wider)
