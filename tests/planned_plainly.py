"""The planner again, written plainly: every plan there is, cheapest first, each worked out.

For small edges only. Costs are added up from the table as DEVELOPERS.md tells it,
without the planner's own sums, and a plan is good if the border, worked with it by
the working floor alone, closes in every round.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import combinations, product

from worked import read_text

from border.planning.costs import Costs, Curve, showy
from border.planning.spots import Spot, Spots
from border.text.readings import Reading
from border.text.tree import Text
from border.working.adjusting import Adjustment, planned
from border.working.fabric import Fabric, edge_fabric
from border.working.rounds import work_adjusted, work_once
from border.working.work import turns, work
from border.yoke.edges import Edge, Run

Choice = tuple[tuple[Spot, int], ...]
"""The spots eased in one round, each with its `by`."""

# --- small cases -------------------------------------------------------------------------------

ROWS = (
    "*1 sc in next {x}, ch 3; repeat from *",
    "*1 sc in next {x}, ch 5, skip 1 {x}; repeat from *",
    "*1 sc in next {x}, ch 5, skip 2 {x}; repeat from *",
    "*3 dc in next {x}, ch 1; repeat from *",
    "*3 dc in next {x}, ch 2, 1 sc in next {x}, ch 2; repeat from *",
    "*1 dc in next {x}, ch 2, 1 dc in next {x}, ch 1, skip 1 {x}; repeat from *",
    "1 sc in next {x}, ch 3, *1 sc in next {x}, ch 3, skip 1 {x}; repeat from *",
    "*1 sc in next {x}, ch 4, skip 1 {x}; repeat from * to last 2 {x}, 1 sc in each of next 2 {x}",
    "1 dc in each {x}, with ch 2 between",
    "*(2 dc, ch 2, 2 dc) in next {x}, 1 sc in next {x}; repeat from *",
    "*1 sc in next {x}, ch 3, 1 sc in same {x}; repeat from *",
    "*1 sc in next {x}, picot, ch 3, 1 sc in next {x}, ch 3, 1 sc in next {x}, ch 3; repeat from *",
)
BY_MOTIF = (
    "over each motif: *1 sc in next {x}, ch 3, skip 1 {x}; repeat from *; at each joint: ch 1",
    "over strap: 1 sc in each {x}, with ch 1 between; elsewhere: *1 sc in next {x}, ch 2, "
    "skip 1 {x}; repeat from *; at each joint: ch 1",
)


def small_case(rng: random.Random) -> tuple[Reading, Edge, tuple[str, ...]]:
    """A border of one to three rounds on an edge of two to six motifs, and its mirror points."""
    n = rng.randint(2, 6)
    usual = rng.randint(3, 6)
    sections = sorted(rng.choice(("front", "back", "left strap", "underarm")) for _ in range(n))
    runs = []
    for i, section in enumerate(sections):
        places = usual if rng.random() < 0.6 else rng.randint(2, 7)
        names = frozenset((section, f"{section}.{i}"))
        runs.append(Run(f"{section}.{i}", section, places, places, names))
    closed = rng.random() < 0.7
    known = frozenset(name for run in runs for name in run.names)
    edge = Edge("neck", closed, "loop", tuple(runs), sum(run.places for run in runs), known)
    mirror = (rng.choice(runs).motif,) if rng.random() < 0.6 else ()
    rounds = rng.randint(1, 3)
    rows = []
    for number in range(1, rounds + 1):
        some = BY_MOTIF if number == rounds and rng.random() < 0.2 else ROWS
        row = rng.choice(some).format(x="loop" if number == 1 else "space")
        rows.append(f"round {number}: {row}.")
    reading, faults = read_text("\n".join(rows))
    assert not faults, faults
    return reading, edge, mirror


# --- what a plan costs -------------------------------------------------------------------------


def plain_cost(
    choices: list[Choice], reading: Reading, spots: Spots, costs: Costs, curve: Curve
) -> int:
    """The cost of a plan, added up item by item. `choices`: by round, in order."""
    total = 0
    for number, choice in enumerate(choices):
        last = number == len(reading.rounds) - 1
        for spot, by in choice:
            for _ in range(abs(by)):
                total += costs.place
                total += [0, costs.seen_1, costs.seen_2, costs.seen_3][spot.seen]
                if last:
                    total += costs.last
                elif showy(reading.rounds[number]):
                    total += costs.showy
                if (curve, by > 0) in ((Curve.IN, False), (Curve.OUT, True)):
                    total += costs.against_curve
            if abs(by) == 2:
                total += costs.second
            if not spot.irregular:
                total += costs.regular
        eased = {spot.order: abs(by) for spot, by in choice}
        if spots.mirror is not None:
            for order, places in eased.items():
                image = spots.mirror - order
                if spots.closed:
                    image %= spots.around
                matched = min(places, eased.get(image, 0))
                total += costs.lopsided * (places - matched)
        for a, b in combinations(eased, 2):
            apart = abs(a - b)
            if spots.closed:
                apart = min(apart, spots.around - apart)
            if apart <= 2:
                total += costs.neighbours
    return total


# --- every plan ---------------------------------------------------------------------------------


def offered(reading: Reading, edge: Edge, spots: Spots) -> list[list[Spot]]:
    """The spots of every round: those where a repeat ends in the border as it stands."""
    fabric = edge_fabric(edge)
    found: list[list[Spot]] = []
    for round_ in reading.rounds:
        if not fabric.kinds:  # nothing to work into
            found.append([])
            continue
        first = work_once(round_, fabric)
        seen = first.boundaries.seen
        mine = []
        for spot in spots.spots:
            taken, _ = planned(
                (Adjustment(round_.number, spot.at, 1),), fabric.line, fabric.tick, seen
            )
            if any(_inside(spot.at, seen[b], edge, fabric) for b in taken):
                mine.append(spot)
        found.append(mine)
        fabric = first.fabric(fabric)
        if turns(round_, reading.rules.worked, edge.closed):
            fabric = fabric.turned()
    return found


def every_choice(spots: list[Spot], places: int) -> list[Choice]:
    """All ways to ease up to so many places into one round."""
    found: list[Choice] = []
    for chosen in range(places + 1):
        for some in combinations(spots, chosen):
            for amounts in product((1, 2), repeat=chosen):
                if sum(amounts) <= places:
                    for sign in (1, -1) if chosen else (1,):
                        chosen_so = zip(some, amounts, strict=True)
                        found.append(tuple((s, sign * n) for s, n in chosen_so))
    return found


def every_plan(
    reading: Reading, edge: Edge, spots: Spots, costs: Costs, curve: Curve, below: int, most: int
) -> Iterator[list[Choice]]:
    """All plans of up to `most` changed places that cost less than `below` and close."""
    choices = [every_choice(some, most) for some in offered(reading, edge, spots)]

    def grown(so_far: list[Choice], places: int, fabric: Fabric) -> Iterator[list[Choice]]:
        if len(so_far) == len(choices):
            yield so_far
            return
        for choice in choices[len(so_far)]:
            more = places + sum(abs(by) for _, by in choice)
            plan = [*so_far, choice]
            if more <= most and plain_cost(plan, reading, spots, costs, curve) < below:
                after = eased(reading, len(so_far), choice, edge, fabric)
                if after is not None:
                    yield from grown(plan, more, after)

    yield from grown([], 0, edge_fabric(edge))


def eased(
    reading: Reading, index: int, choice: Choice, edge: Edge, fabric: Fabric
) -> Fabric | None:
    """The row after a round eased so; None where it does not close, or cannot be eased so."""
    round_ = reading.rounds[index]
    if not fabric.kinds:
        return None
    done = first = work_once(round_, fabric)
    if choice:
        wanted = tuple(Adjustment(round_.number, spot.at, by) for spot, by in choice)
        seen = first.boundaries.seen
        taken, _ = planned(wanted, fabric.line, fabric.tick, seen)
        for boundary, a in taken.items():
            alone, _ = planned((a,), fabric.line, fabric.tick, seen)
            if not isinstance(round_.body, Text) and boundary not in alone:
                return None  # what one part lacks is not made good under the name of another
        done, fallen = work_adjusted(round_, fabric, wanted, first)
        if len(fallen) < len(wanted):
            return None
    made = done.made.kinds
    if not done.closes or all(kind in ("ch", "picot") for kind in made):
        return None
    after = done.fabric(fabric)
    turned = turns(round_, reading.rules.worked, edge.closed)
    return after.turned() if turned else after


def closes_with(choices: list[Choice], reading: Reading, edge: Edge) -> bool:
    """Whether every round closes, with every adjustment made."""
    plan = tuple(
        Adjustment(round_.number, spot.at, by)
        for round_, choice in zip(reading.rounds, choices, strict=True)
        for spot, by in choice
    )
    worked = work(reading, edge, plan)
    whole = len(worked.rounds) == len(reading.rounds) and all(r.closes for r in worked.rounds)
    return whole and "adjustment-has-no-place" not in [f.code for f in worked.findings]


def _inside(at: str, position: int, edge: Edge, fabric: Fabric) -> bool:
    """Whether a position lies in the motif named, or in one of the joint's two."""
    names = [name.strip() for name in at.split("|")]
    around = edge.places * fabric.tick
    if fabric.line.flipped:
        position = around - position
    start = 0
    for run in edge.runs:
        low, high = start * fabric.tick, (start + run.places) * fabric.tick
        start += run.places
        if run.motif in names and any(
            low <= p <= high for p in (position, position % around, position - around)
        ):
            return True
    return False
