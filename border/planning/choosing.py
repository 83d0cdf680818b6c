"""Choosing: the cheapest spots that ease so many places into one round.

The spots are gone through from one end of the edge, or from one mirror point
to the other on both sides at once, keeping for every number of places, and for
what was chosen on the last two spots of either side, the cheapest ways. That
is exact, since no cost reaches further than two spots.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Iterator, Sequence
from itertools import product
from typing import TypeAlias

from border.planning.costs import Eased, RoundCosts
from border.planning.spots import Spot, Spots

MOST_AT_ONE_SPOT = 2
"""So many places are passed over, or worked twice, at one spot."""

Way: TypeAlias = tuple[int, tuple[Eased, ...]]
"""A way to ease: what it costs, and where."""

_Chosen: TypeAlias = tuple[bool, ...]
"""Whether the spots were chosen that later ones may still be neighbours of."""

_State: TypeAlias = tuple[int, _Chosen, _Chosen, _Chosen]
"""Places so far; chosen at the last two spots of the one side and of the other; at the first
two spots of an edge that comes round to them."""


def ways(
    costs: RoundCosts, spots: Spots, usable: Iterable[Spot], places: int, sign: int, best: int = 1
) -> list[list[Way]]:
    """The cheapest `best` ways to ease 0, 1, … `places` places, cheapest first.

    `sign` 1 passes over, -1 works twice; one way never mixes the two. `usable`:
    the spots that may be taken.
    """
    taken = {spot.order: spot for spot in usable}
    columns = list(_columns(spots))
    kept: dict[_State, list[Way]] = {(0, (False, False), (False, False), ()): [(0, ())]}
    for number, column in enumerate(columns):
        choices = _choices(costs, [taken.get(order) for order in column], sign)
        grown: dict[_State, list[Way]] = {}
        for state, found in kept.items():
            for added, cost, eased, chosen in choices:
                if state[0] + added > places:
                    continue
                near = _near(spots, state, chosen, number, len(columns) - 1)
                cost_here = cost + near * costs.costs.neighbours
                more = grown.setdefault(_after(spots, state, added, chosen, number), [])
                more += [(c + cost_here, (*before, *eased)) for c, before in found]
        kept = {state: _cheapest(found, best) for state, found in grown.items()}
    result: list[list[Way]] = [[] for _ in range(places + 1)]
    for (n, *_), found in kept.items():
        result[n] += found
    return [_cheapest(found, best) for found in result]


def _cheapest(found: list[Way], best: int) -> list[Way]:
    if len(found) < 2:
        return found
    return [min(found, key=_rank)] if best == 1 else heapq.nsmallest(best, found, key=_rank)


def _rank(way: Way) -> tuple[int, list[int]]:
    """By cost; of ways that cost the same, the one that comes first on the edge."""
    return way[0], sorted(e.spot.order for e in way[1])


def _columns(spots: Spots) -> Iterator[tuple[int, ...]]:
    """The orders that are looked at together: mirror images, from axis to axis."""
    if spots.mirror is None:
        yield from ((order,) for order in range(spots.around))
        return
    axis = spots.mirror // 2
    yield (axis,)
    if spots.closed:
        half = spots.around // 2
        yield from (((axis - k) % spots.around, (axis + k) % spots.around) for k in range(1, half))
        yield ((axis + half) % spots.around,)
    else:
        far = max(axis, spots.around - axis)
        yield from ((axis - k, axis + k) for k in range(1, far + 1))


def _choices(
    costs: RoundCosts, column: Sequence[Spot | None], sign: int
) -> list[tuple[int, int, tuple[Eased, ...], _Chosen]]:
    """What can be done in one column: places, cost, where, and which of its sides are chosen."""
    found = []
    for picked in product(*(range(MOST_AT_ONE_SPOT + 1 if spot else 1) for spot in column)):
        eased = tuple(Eased(s, sign * n) for s, n in zip(column, picked, strict=True) if s and n)
        cost = sum(costs.each(e.spot, e.by) for e in eased)
        chosen = tuple(n > 0 for n in picked)
        if len(column) == 2:
            cost += costs.costs.lopsided * abs(picked[0] - picked[1])
        else:
            chosen *= 2  # a spot on the axis is the neighbour of both sides
        found.append((sum(picked), cost, eased, chosen))
    return found


def _near(spots: Spots, state: _State, chosen: _Chosen, number: int, last: int) -> int:
    """How many of the spots chosen before are neighbours of those chosen in a column."""
    _, left, right, first = state
    if spots.mirror is None:
        comes_round = first[: max(number - last + 2, 0)]  # empty on an open edge
        return chosen[0] * (sum(left) + sum(comes_round))
    pairs = chosen[0] * sum(left) + chosen[1] * sum(right)
    if number == 1:
        pairs += all(chosen)  # across the first axis
    if number == last and spots.closed:
        pairs += left[0] and right[0]  # across the second
    return pairs


def _after(spots: Spots, state: _State, added: int, chosen: _Chosen, number: int) -> _State:
    n, left, right, first = state
    if spots.mirror is None and spots.closed and number < 2:
        first = (*first, chosen[0])
    return n + added, (chosen[0], left[0]), (chosen[1], right[0]), first
