"""A first laying out without a crossing: every wheel in the middle of its neighbours.

Tutte, "How to draw a graph" (1963): where the faces are cut into triangles and
the outermost points stand on a circle, this draws no two lines across each
other. Points are complex numbers, the second axis upwards.
"""

from __future__ import annotations

from cmath import rect
from collections.abc import Hashable, Iterable
from math import tau

from border.yoke.spread import Around, Spread

DRAWN = 8
"""How often the points are drawn, each time harder where they lay far apart."""


def first_laid(part: Spread) -> dict[str, complex]:
    """Where the wheels of a part stand, counter-clockwise round each as in its ring."""
    if len(part.round_each) == 1:
        return dict.fromkeys(part.round_each, 0j)
    beside: dict[Hashable, set[Hashable]] = {motif: set() for motif in part.round_each}
    for a, b in part.joined:
        _tie(beside, [(a, b)])
    fixed = _held(beside, part.faces[0])
    for number, face in enumerate(part.faces[1:]):
        _cut(beside, number, face)
    points = _settled(beside, fixed)
    return {motif: points[motif] for motif in part.round_each}


def _tie(beside: dict[Hashable, set[Hashable]], pairs: Iterable[tuple[Hashable, Hashable]]) -> None:
    for a, b in pairs:
        beside.setdefault(a, set()).add(b)
        beside.setdefault(b, set()).add(a)


def _held(beside: dict[Hashable, set[Hashable]], outer: Around) -> dict[Hashable, complex]:
    """The points held fast on a circle: the outermost wheels, or pegs before their corners."""
    motifs = [corner[0] for corner in outer]
    if len(set(motifs)) == len(motifs) > 2:
        return {motif: _on_circle(i, len(motifs)) for i, motif in enumerate(motifs)}
    pegs: list[Hashable] = [(corner, "peg", i) for corner in outer for i in range(3)]
    for i, motif in enumerate(motifs):
        _tie(beside, ((motif, peg) for peg in pegs[3 * i : 3 * i + 4]))
        _tie(beside, [(motif, pegs[(3 * i + 3) % len(pegs)])])
    return {peg: _on_circle(i, len(pegs)) for i, peg in enumerate(pegs)}


def _on_circle(number: int, of: int) -> complex:
    return rect(of / tau, tau * number / of)


def _cut(beside: dict[Hashable, set[Hashable]], number: int, face: Around) -> None:
    """Cut a face into triangles about its middle; with pegs where it meets a wheel twice."""
    middle = ("middle", number)
    motifs: list[Hashable] = [corner[0] for corner in face]
    if len(set(motifs)) == len(motifs):
        _tie(beside, ((middle, motif) for motif in motifs))
        return
    pegs: list[Hashable] = [(corner, "peg") for corner in face]
    for i, peg in enumerate(pegs):
        following = pegs[(i + 1) % len(pegs)]
        _tie(beside, [(peg, motifs[i]), (peg, middle), (peg, following), (motifs[i], following)])


def _settled(
    beside: dict[Hashable, set[Hashable]], fixed: dict[Hashable, complex]
) -> dict[Hashable, complex]:
    """Every point that is not held drawn by those beside it, long lines harder than short ones.

    So nothing far inside is left too small to be moved. However hard each line
    draws, none crosses another.
    """
    order = {point: i for i, point in enumerate(beside)}
    ties = {point: sorted(others, key=order.__getitem__) for point, others in beside.items()}
    free = [point for point in beside if point not in fixed]
    at = {point: i for i, point in enumerate(free)}
    hard = {(a, b): 1.0 for a, others in ties.items() for b in others}
    points = fixed
    for _ in range(DRAWN):
        rows: list[dict[int, float]] = []
        pulls: list[complex] = []
        for point in free:
            row = {at[other]: -hard[point, other] for other in ties[point] if other in at}
            rows.append(row | {at[point]: sum(hard[point, other] for other in ties[point])})
            held = (hard[point, other] * fixed[other] for other in ties[point] if other in fixed)
            pulls.append(sum(held, 0j))
        points = fixed | dict(zip(free, _solved(rows, pulls), strict=True))
        hard = {(a, b): h * (abs(points[a] - points[b]) + 1e-6) for (a, b), h in hard.items()}
        most = max(hard.values())
        hard = {tie: max(h / most, 1e-6) for tie, h in hard.items()}
    return points


def _solved(rows: list[dict[int, float]], pulls: list[complex]) -> list[complex]:
    """The solution of equations that are alike about their diagonal (elimination by columns)."""
    for i, row in enumerate(rows):
        for j in sorted(j for j in row if j > i):
            share = row[j] / row[i]
            other = rows[j]
            for k in [k for k in row if k > i]:
                other[k] = other.get(k, 0.0) - share * row[k]
            pulls[j] -= share * pulls[i]
    solution = [0j] * len(rows)
    for i in range(len(rows) - 1, -1, -1):
        known = sum((rows[i][k] * solution[k] for k in rows[i] if k > i), 0j)
        solution[i] = (pulls[i] - known) / rows[i][i]
    return solution
