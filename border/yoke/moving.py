"""Moving the wheels of a yoke, little by little, until joined ones touch and the others lie apart.

Every corner is moved towards the angle that its loops take of the wheel. No
move is so large that a wheel could come across a joint. Distances are in wheels:
two that touch are 1 apart. Wheels go by their number in the ring of the part.
"""

from __future__ import annotations

from cmath import phase, rect
from itertools import combinations
from math import pi, tau

from border.yoke.joints import Dart
from border.yoke.spread import Spread

ROUNDS, ANGLES, FITTED = 450, 300, 600
"""Rounds of moving, those of them that look to the angles, most of fitting."""
TOUCHING = 0.0005
"""Wheels touch that are so near to it, or nearer."""
APART, LEAST = 1.4, 1.25
"""How far apart wheels that are not joined had better be, and should be if it can be done."""
ROOM, SEEN = 1.2, 1.04
"""So far apart a line can be drawn about each; and they are at least seen not to be joined."""
CLEAR = 0.8
"""How far a wheel had better be from a joint of others."""
STEP = 0.15
"""No wheel moves further in a round."""
AGAIN = 5
"""Rounds after which it is looked at again what is near to what."""
EVENED = 60
"""How often the angles are evened out."""
NARROW = tau / 5.7
"""The narrowest corner that is aimed at: three wheels that touch make one of a sixth."""


class Moving:
    """Wheels by number. `corners`: a wheel, the one before and the one behind, and its angle."""

    def __init__(self, part: Spread, points: list[complex]) -> None:
        number = {m: i for i, m in enumerate(part.round_each)}
        self.joined = sorted(_in_order(number[a], number[b]) for a, b in part.joined)
        self.corners = [
            (
                number[corner[0]],
                number[part.mates[part.before(corner)][0]],
                number[part.mates[corner][0]],
                angle,
            )
            for corner, angle in _angles(part).items()
            if part.before(corner) != corner
        ]
        touching = set(self.joined)
        apart: set[tuple[int, int]] = set()
        clear: set[tuple[int, int, int]] = set()
        for face in part.faces:
            wheels = sorted({number[corner[0]] for corner in face})
            apart |= set(combinations(wheels, 2)) - touching
            lines = {_in_order(number[c[0]], number[part.mates[c][0]]) for c in face}
            clear |= {(v, a, b) for a, b in lines for v in wheels if v not in (a, b)}
        self.apart, self.clear = sorted(apart), sorted(clear)
        self.begin(points)

    def begin(self, points: list[complex]) -> None:
        self.at = points
        self.move = [0j] * len(points)

    def settle(self) -> None:
        """Towards what is wanted, never across a joint."""
        apart, clear = self.apart, self.clear
        for number in range(ROUNDS):
            if number % AGAIN == 0:
                apart, clear = self._near()
            soft = max(0.0, 1 - number / ANGLES)
            self.move = [0j] * len(self.at)
            self._touch()
            if soft:
                self._open(0.12 * soft)
            self._part(apart, LEAST + (APART - LEAST) * soft, 0.4)
            self._guarded(clear)

    def fits(self) -> bool:
        """Whether all that are joined can be made to touch, and they are made so."""
        return self._fitted(ROOM) or self._fitted(SEEN)

    def _fitted(self, room: float) -> bool:
        """Joint by joint, to and fro, until all touch; whether they do."""
        apart, _ = self._near()
        pairs = [(a, b, True) for a, b in self.joined] + [(a, b, False) for a, b in apart]
        for _ in range(FITTED):
            lacks = 0.0
            pairs.reverse()
            for a, b, joint in pairs:
                line = self.at[b] - self.at[a]
                length = abs(line) or 1e-9
                wrong = length - (1.0 if joint else room)
                if joint or wrong < 0:
                    half = line * (wrong / length / 2)
                    self.at[a] += half
                    self.at[b] -= half
                    lacks = max(lacks, abs(wrong))
            if lacks < TOUCHING:
                return self.nearest() > 1 - TOUCHING
        return False

    def nearest(self) -> float:
        """How far the two wheels are from each other that are nearest."""
        return min(abs(a - b) for a, b in combinations(self.at, 2))

    def spread_out(self) -> list[complex]:
        """No two wheels nearer than they touch, joined ones as near as may be."""
        for number in range(ROUNDS):
            if number % AGAIN == 0:
                apart, clear = self._near()
            self.move = [0j] * len(self.at)
            for a, b in self.joined:
                self._pull(a, b, 1.0, 0.4 if abs(self.at[a] - self.at[b]) < 1 else 0.02)
            self._part(apart, LEAST, 0.4)
            self._guarded(clear)
        for _ in range(ROUNDS):  # what is caught must come free, even across a joint
            if self.nearest() > 0.9:
                break
            self.move = [0j] * len(self.at)
            self._touch()
            self._part(list(combinations(range(len(self.at)), 2)), LEAST, 0.6)
            self._guarded([])
        narrow = min(self.nearest(), 1.0)
        return [point / narrow for point in self.at]

    def _near(self) -> tuple[list[tuple[int, int]], list[tuple[int, int, int]]]:
        """What can come near before it is looked at again."""
        at, reach = self.at, 2 * STEP * AGAIN
        apart = [(a, b) for a, b in self.apart if abs(at[a] - at[b]) < APART + reach]
        clear = [
            (v, a, b)
            for v, a, b in self.clear
            # no nearer to the line than to its beginning, less its length: soon reckoned
            if abs(at[v] - at[a]) < abs(at[b] - at[a]) + CLEAR + reach
            and _gap(at[v], at[a], at[b])[0] < CLEAR + reach
        ]
        return apart, clear

    def _touch(self) -> None:
        for a, b in self.joined:
            self._pull(a, b, 1.0, 0.4)

    def _part(self, near: list[tuple[int, int]], wanted: float, how: float) -> None:
        for a, b in near:
            if abs(self.at[a] - self.at[b]) < wanted:
                self._pull(a, b, wanted, how)

    def _pull(self, a: int, b: int, wanted: float, how: float) -> None:
        line = self.at[b] - self.at[a]
        length = abs(line) or 1e-9
        half = line * (how * (length - wanted) / length / 2)
        self.move[a] += half
        self.move[b] -= half

    def _open(self, how: float) -> None:
        """Every corner towards its angle."""
        at, move = self.at, self.move
        for v, before, behind, angle in self.corners:
            one, other = at[before] - at[v] or 1e-9, at[behind] - at[v]
            lacks = angle - phase(other / one) % tau
            turn = how * max(-1.0, min(1.0, lacks))
            a, b = one * (rect(1, -turn) - 1), other * (rect(1, turn) - 1)
            move[before] += a
            move[behind] += b
            move[v] -= a + b

    def _guarded(self, near: list[tuple[int, int, int]]) -> None:
        """Move every wheel, but none so far that it could come across a joint."""
        at, move = self.at, self.move
        most = [STEP] * len(at)
        for v, a, b in near:
            gap, foot = _gap(at[v], at[a], at[b])
            if gap < CLEAR:
                away = (at[v] - foot) * (0.2 * (CLEAR - gap) / (gap or 1e-9))
                move[v] += away
                move[a] -= away / 2
                move[b] -= away / 2
            if gap < 3 * STEP:
                for i in (v, a, b):
                    most[i] = min(most[i], gap / 3)
        for i, far in enumerate(move):
            length = abs(far)
            at[i] += far if length <= most[i] else far * (most[i] / length)


def _angles(part: Spread) -> dict[Dart, float]:
    """The angles aimed at: by the loops, evened out so that wheels and faces come to what is flat.

    A yoke is seldom flat in itself; what is too much or too little is shared by all alike.
    """
    angles = {corner: tau * share for corner, share in part.share.items()}
    for _ in range(EVENED):
        for number, face in enumerate(part.faces):
            _come_to(angles, face, pi * (len(face) - 2 if number else len(face) + 2))
        for darts in part.round_each.values():
            _come_to(angles, darts, tau)
    return {corner: max(NARROW, angle) for corner, angle in angles.items()}


def _come_to(angles: dict[Dart, float], corners: tuple[Dart, ...], total: float) -> None:
    for corner in corners:
        angles[corner] = max(angles[corner], NARROW)
    more = (total - sum(angles[corner] for corner in corners)) / max(len(corners), 1)
    for corner in corners:
        angles[corner] += more


def _in_order(a: int, b: int) -> tuple[int, int]:
    return (a, b) if a < b else (b, a)


def _gap(point: complex, a: complex, b: complex) -> tuple[float, complex]:
    """How far a point is from a line between two, and the nearest point of it."""
    line = b - a
    square = (line * line.conjugate()).real
    along = ((point - a) * line.conjugate()).real / square if square else 0.0
    foot = a + line * max(0.0, min(1.0, along))
    return abs(point - foot), foot
