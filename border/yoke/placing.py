"""Where each wheel lies when the yoke is spread flat: joined wheels touch, none overlaps.

Distances are in wheels: two that touch are 1 apart. Points are complex numbers,
the second axis upwards.
"""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Mapping
from math import pi
from typing import TypeAlias

from border.yoke.moving import Moving
from border.yoke.spread import Spread
from border.yoke.tutte import first_laid

BEGINNINGS = (1.0, 2.5)
"""How long the joints are at first, on an average, one trial after the other.

Short ones are pushed apart and may buckle, long ones drawn together and may catch.
"""

Points: TypeAlias = dict[str, complex]


def placed(part: Spread, sections: Mapping[str, str]) -> Points:
    """The middles of the wheels of one part, by their names.

    The first section of the file lies below, or from left to right if it is all.
    """
    motifs = list(part.round_each)
    points = _moved(part) if len(motifs) > 1 else [0j]
    points = _upright(
        points, [i for i, m in enumerate(motifs) if sections[m] == sections[motifs[0]]]
    )
    return dict(zip(motifs, points, strict=True))


def _upright(points: list[complex], first: list[int]) -> list[complex]:
    """Turned so that the wheels numbered in `first` lie below."""
    middle = sum(points) / len(points)
    below = sum(points[i] for i in first) / len(first) - middle
    along = points[first[-1]] - points[first[0]]
    if abs(along) > 0.6:
        turn = -phase(along)
        if abs(below) > 0.3 and (below * rect(1, turn)).imag > 0:
            turn += pi
    else:
        towards = below if abs(below) > 0.3 else points[first[0]] - middle
        turn = -pi / 2 - phase(towards)
    return [(point - middle) * rect(1, turn) for point in points]


def _moved(part: Spread) -> list[complex]:
    """Moved from the first beginning that makes all joined wheels touch.

    Where none does, since equal wheels cannot all touch so, the whole is spread
    until none overlaps.
    """
    longest = max(part.faces, key=len)
    for turned in (part, part.about(longest))[: 1 if longest == part.faces[0] else 2]:
        for long in BEGINNINGS:
            moving = Moving(turned, _begun(turned, long))
            moving.settle()
            if moving.fits():
                return moving.at
    moving = Moving(turned, _begun(turned, 1.0))
    moving.settle()
    return moving.spread_out()


def _begun(part: Spread, long: float) -> list[complex]:
    """The first laying out, with joints that are so long on an average."""
    first = first_laid(part)
    lengths = [abs(first[a] - first[b]) for a, b in part.joined]
    scale = long * len(lengths) / sum(lengths)
    return [first[motif] * scale for motif in part.round_each]
