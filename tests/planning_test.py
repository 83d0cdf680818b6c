"""The planner against an exhaustive search written plainly, and the rules that it keeps."""

from __future__ import annotations

import random

import pytest
from planned_plainly import Choice, closes_with, every_plan, plain_cost, small_case

from border.planning.costs import Costs, Curve
from border.planning.offers import Task
from border.planning.search import Plan, Search
from border.planning.spots import Spots, spots_of
from border.text.readings import Reading

CASES = 1000
PLACES = {1: 3, 2: 3, 3: 2}
"""So many changed places an exhaustive search goes to, by the number of rounds."""


def choices_of(plan: Plan, reading: Reading, spots: Spots) -> list[Choice]:
    by_name = {spot.at: spot for spot in spots.spots}
    return [
        tuple((by_name[a.at], a.by) for a in plan.adjustments if a.round == round_.number)
        for round_ in reading.rounds
    ]


@pytest.mark.parametrize("part", range(10))
def test_no_plan_is_cheaper(part: int) -> None:
    """1000 random small cases: an exhaustive search finds nothing cheaper.

    But for those where the planner says itself that it was given up.
    """
    given_up = 0
    for seed in range(part * CASES // 10, (part + 1) * CASES // 10):
        rng = random.Random(seed)
        reading, edge, mirror = small_case(rng)
        spots = spots_of(edge, mirror, {})
        curve = rng.choice(list(Curve))
        search = Search(Task(reading, edge, spots, Costs(), curve))
        plan = next(search.plans(), None)
        below, most = 10**9, 2
        if plan is not None:
            choices = choices_of(plan, reading, spots)
            assert closes_with(choices, reading, edge), seed
            assert plain_cost(choices, reading, spots, Costs(), curve) == plan.cost, seed
            below, most = plan.cost, PLACES[len(reading.rounds)]
        if search.stuck.given_up:
            given_up += 1
            continue
        cheaper = next(every_plan(reading, edge, spots, Costs(), curve, below, most), None)
        assert cheaper is None, (seed, plan, cheaper)
    assert given_up <= CASES // 10 // 20
