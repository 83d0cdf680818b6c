"""The name of an edge where there is most room for it: inside its face, or below the outermost."""

from __future__ import annotations

from collections.abc import Sequence

from border.showing.svg import width_of

FINE = 28
"""So many spots along the longer side of a face are looked at."""
LARGEST, SMALLEST = 20.0, 9.0
"""Sizes of a name, in pixels."""


def turning(points: Sequence[complex]) -> float:
    """Twice the area that a line runs round, counter-clockwise; an inner face has less than 0."""
    ahead = (*points[1:], points[0]) if points else ()
    return sum((a.conjugate() * b).imag for a, b in zip(points, ahead, strict=True))


def roomiest(points: Sequence[complex], others: Sequence[complex]) -> tuple[complex, float]:
    """The spot inside a face that is furthest from all wheels, and how far from their rims.

    `points`: the middles of the wheels round it; `others`: of all wheels. In wheels.
    """
    low = complex(min(p.real for p in points), min(p.imag for p in points))
    high = complex(max(p.real for p in points), max(p.imag for p in points))
    step = max((high - low).real, (high - low).imag) / FINE
    best = (points[0], 0.0)
    for i in range(1, FINE):
        for j in range(1, FINE):
            spot = low + complex(i, j) * step
            free = min(abs(spot - other) for other in others) - 0.5
            if free > best[1] + 1e-6 and _inside(spot, points):
                best = spot, free
    return best


def _inside(spot: complex, points: Sequence[complex]) -> bool:
    inside = False
    for a, b in zip(points, (*points[1:], points[0]), strict=True):
        if (a.imag > spot.imag) != (b.imag > spot.imag):
            x = a.real + (spot.imag - a.imag) * (b.real - a.real) / (b.imag - a.imag)
            inside ^= spot.real < x
    return inside


def size_of_name(name: str, room: float, larger: float) -> float | None:
    """How large a name may be written into so much room about a spot (in pixels); None: not.

    `larger`: how much larger than usual it had better be.
    """
    size = min(LARGEST * larger, 1.7 * room / width_of(name, 1.0), room * 0.9)
    return size if size >= SMALLEST else None
