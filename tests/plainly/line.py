"""The edge line: where the motifs stand on it, and where they meet (section "The fabric")."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from border.yoke.edges import Edge, Run


@dataclass(frozen=True)
class Stretch:
    """One motif's part [start, end) of the edge line; `index` is its place in `Edge.runs`."""

    index: int
    run: Run
    start: Fraction
    end: Fraction

    def answers_to(self, name: str) -> bool:
        return name in self.run.names or name in (self.run.motif, self.run.section)


@dataclass(frozen=True)
class Joint:
    """Where `before` and `after` meet, in working order. The one at the start has `at` = n."""

    at: Fraction
    before: Stretch
    after: Stretch

    def lies_between(self, a: str, b: str) -> bool:
        straight = self.before.answers_to(a) and self.after.answers_to(b)
        return straight or (self.before.answers_to(b) and self.after.answers_to(a))


@dataclass(frozen=True)
class Line:
    """The edge line: a circle of length `n` when closed. `of` is the kind of the places."""

    n: Fraction
    closed: bool
    of: str
    stretches: tuple[Stretch, ...]
    known_names: frozenset[str]

    def joints(self) -> list[Joint]:
        """In working order; the joint at the start of a closed edge comes last."""
        joints = [Joint(one.end, one, other) for one, other in pairwise(self.stretches)]
        # Fabric: on a closed edge of two or more motifs the point 0 is a joint too.
        if self.closed and len(self.stretches) >= 2:
            joints.append(Joint(self.n, self.stretches[-1], self.stretches[0]))
        return joints

    def mirrored(self) -> Line:
        """The same line met from the other end, as after a turn."""
        return Line(
            self.n,
            self.closed,
            self.of,
            tuple(
                Stretch(s.index, s.run, self.n - s.end, self.n - s.start)
                for s in reversed(self.stretches)
            ),
            self.known_names,
        )

    def same_point(self, one: Fraction, other: Fraction) -> bool:
        if self.closed:
            return (one - other) % self.n == 0
        return one == other

    def joint_at(self, at: Fraction) -> Joint | None:
        """The joint that stands exactly at a position."""
        return next((j for j in self.joints() if self.same_point(j.at, at)), None)

    def stretch_at(self, at: Fraction) -> Stretch | None:
        """The motif that a position lies strictly inside.

        A closed edge of one motif has no joint: there the point 0 is the motif's as well.
        """
        if self.joint_at(at) is not None:
            return None
        if self.closed:
            at %= self.n
        for stretch in self.stretches:
            if stretch.start <= at < stretch.end:
                return stretch
        return None


def line_of(edge: Edge) -> Line:
    """The line of an edge; place i of n covers [i, i + 1)."""
    stretches: list[Stretch] = []
    start = Fraction(0)
    for index, run in enumerate(edge.runs):
        stretches.append(Stretch(index, run, start, start + run.places))
        start += run.places
    named = {name for s in stretches for name in (*s.run.names, s.run.motif, s.run.section)}
    return Line(
        Fraction(edge.places),
        edge.closed,
        edge.of,
        tuple(stretches),
        frozenset(edge.known_names | named),
    )
