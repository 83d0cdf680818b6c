"""The cheapest ways to ease places into one round, against all ways written out."""

from __future__ import annotations

import random
from itertools import product

import pytest

from border.planning.choosing import MOST_AT_ONE_SPOT, ways
from border.planning.costs import Costs, Curve, Eased, RoundCosts
from border.planning.spots import Spot, Spots, spots_of
from border.yoke.edges import Edge, Run, plain_edge

MOST = 5
"""So many places are eased in, at most."""


def small_edge(rng: random.Random) -> Edge:
    """An edge of one to five motifs, or of a few plain places."""
    closed = rng.random() < 0.6
    if rng.random() < 0.15:
        return plain_edge(rng.randint(1, 6), closed)
    runs = []
    for i in range(rng.randint(1, 5)):
        section = rng.choice(("front", "back", "left strap", "right strap"))
        places = rng.randint(3, 6)
        names = frozenset((section, f"{section}.{i}"))
        runs.append(Run(f"{section}.{i}", section, places, places, names))
    return Edge("neck", closed, "loop", tuple(runs), sum(run.places for run in runs))


def some_costs(rng: random.Random) -> RoundCosts:
    """The usual costs, or odd ones, so that no way is the cheapest by habit."""
    costs = Costs()
    if rng.random() < 0.5:
        drawn = {name: rng.randint(0, 500) for name in Costs.__struct_fields__}
        costs = costs.changed(drawn)
    return RoundCosts(costs, rng.choice(list(Curve)), rng.random() < 0.5, rng.random() < 0.3)


def every_way(
    costs: RoundCosts, spots: Spots, usable: list[Spot], sign: int
) -> dict[int, list[int]]:
    """What each way to ease 0 to MOST places costs, cheapest first, by the number of places."""
    found: dict[int, list[int]] = {n: [] for n in range(MOST + 1)}
    for taken in product(range(MOST_AT_ONE_SPOT + 1), repeat=len(usable)):
        if sum(taken) <= MOST:
            eased = [Eased(s, sign * n) for s, n in zip(usable, taken, strict=True) if n]
            found[sum(taken)].append(costs.of(eased, spots))
    return {n: sorted(costs) for n, costs in found.items()}


@pytest.mark.parametrize("best", [1, 3])
@pytest.mark.parametrize("part", range(4))
def test_the_cheapest_ways_are_those_of_all_ways_written_out(part: int, best: int) -> None:
    mirrored = 0
    for seed in range(part * 75, (part + 1) * 75):
        rng = random.Random(seed)
        edge = small_edge(rng)
        mirror = [rng.choice(edge.runs).motif] if edge.runs and rng.random() < 0.6 else []
        spots = spots_of(edge, mirror, {})
        costs, sign = some_costs(rng), rng.choice((1, -1))
        usable = [spot for spot in spots.spots if rng.random() < 0.9]
        mirrored += spots.mirror is not None
        found = ways(costs, spots, usable, MOST, sign, best)
        every = every_way(costs, spots, usable, sign)
        assert len(found) == MOST + 1
        for places, some in enumerate(found):
            assert [cost for cost, _ in some] == every[places][:best], (seed, places)
            for cost, way in some:
                assert costs.of(way, spots) == cost, (seed, way)
                assert sum(e.by for e in way) == sign * places, (seed, way)
                assert {e.spot for e in way} <= set(usable), (seed, way)
            assert len({frozenset((e.spot.at, e.by) for e in way) for _, way in some}) == len(some)
    assert 20 < mirrored < 70  # both kinds of edge are met


def test_of_ways_that_cost_the_same_the_first_on_the_edge_is_taken() -> None:
    spots = spots_of(plain_edge(12, True), [], {})
    free = Costs().changed(dict.fromkeys(Costs.__struct_fields__, 0))
    costs = RoundCosts(free, Curve.STRAIGHT, False, False)
    assert ways(costs, spots, spots.spots, 1, 1)[1] == [(0, (Eased(spots.spots[0], 1),))]
    three = ways(costs, spots, spots.spots, 1, 1, best=3)[1]
    assert [way[0].spot.at for _, way in three] == ["place 1", "place 2", "place 3"]


def test_where_no_way_is_left_there_is_none() -> None:
    spots = spots_of(plain_edge(2, True), [], {})
    costs = RoundCosts(Costs(), Curve.STRAIGHT, False, False)
    found = ways(costs, spots, spots.spots[:1], 4, 1)
    assert [len(some) for some in found] == [1, 1, 1, 0, 0]
    assert found[0] == [(0, ())]
