"""Things in a row: side by side, each as near as may be to where it is wanted."""

from __future__ import annotations

from collections.abc import Sequence


def side_by_side(wanted: Sequence[float], wide: Sequence[float]) -> list[float]:
    """Things in a row, none over its neighbour, each as near as may be to where it is wanted.

    The least sum of squares of the ways moved (neighbours that meet are pooled).
    """
    offsets = []
    at = 0.0
    for i, width in enumerate(wide):
        at += (wide[i - 1] + width) / 2 if i else 0.0
        offsets.append(at)
    pools: list[tuple[float, int]] = []
    for want, offset in zip(wanted, offsets, strict=True):
        total, count = want - offset, 1
        while pools and pools[-1][0] / pools[-1][1] >= total / count:
            total, count = total + pools[-1][0], count + pools[-1][1]
            pools.pop()
        pools.append((total, count))
    starts = [total / count for total, count in pools for _ in range(count)]
    return [start + offset for start, offset in zip(starts, offsets, strict=True)]
