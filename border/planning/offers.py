"""Offers: which spots each round has, and the cheapest ways to ease so many places there.

The spots of a round are those where one of its repeats ends in the border as it
stands. What is eased in an earlier round may shift them a little; they are
looked up once, so that what one round is eased by does not decide where
another can be.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Mapping

from msgspec import Struct
from msgspec.structs import replace

from border.planning.amounts import part_ways
from border.planning.choosing import Way, ways
from border.planning.costs import Costs, Curve, RoundCosts, curve_of, round_costs
from border.planning.spots import Spot, Spots, spots_of
from border.text.readings import Reading
from border.working.adjusting import Adjustment, Boundary, middles
from border.working.cursor import TooLarge
from border.working.fabric import Fabric, edge_fabric
from border.working.found import Found, as_it_stands
from border.working.line import Line
from border.working.rounds import Pass
from border.working.work import as_met_next
from border.yoke.edges import Edge
from border.yoke.project import Project, Work

FEW = 3
"""So many places to a round are looked for at first: most plans need no more."""

MOST_IN_ROUND = 12
"""So many places are passed over, or worked twice, in one round."""

TRIED = (1, 24, 240)
"""So many ways to ease the same places into a round are looked for: at first, and when those
before were of no use."""


class Task(Struct, frozen=True):
    """What is to be planned: a border on an edge.

    `given`: adjustments that stand already. `done`: rounds that are worked
    and stay as they are; one of them came out at `found`.
    """

    reading: Reading
    edge: Edge
    spots: Spots
    costs: Costs
    curve: Curve
    given: tuple[Adjustment, ...] = ()
    done: int = 0
    found: Found | None = None


def task_for(
    reading: Reading,
    edge: Edge,
    project: Project | None,
    said: Work | None = None,
    given: tuple[Adjustment, ...] = (),
    done: int = 0,
    found: Found | None = None,
) -> Task:
    """The task of a border on an edge: its spots, costs and curve as the project has them.

    `said`: what the project says of this piece of work, if it is one of its own.
    """
    mirror = [point.text for point in said.mirror] if said else []
    spots = spots_of(edge, mirror, project.seen if project else {})
    costs = Costs().changed(project.costs if project else {})
    curve = Curve(said.curve) if said and said.curve else curve_of(edge.name)
    return Task(reading, edge, spots, costs, curve, given, done, found)


class Offer(Struct, frozen=True):
    """What one round offers: its spots, each with the boundary that it takes, and their costs."""

    spots: tuple[tuple[Spot, Boundary], ...]
    costs: RoundCosts


class Offers:
    """The offers of all rounds of a task, and the ways to take them up."""

    def __init__(self, task: Task) -> None:
        self.task = task
        self.rounds = _offers(task)
        self._known: dict[tuple[object, ...], list[list[Way]]] = {}

    def ways(self, index: int, total: int, best: int) -> list[Way]:
        """The `best` ways to ease `total` places into a round, cheapest first.

        `index`: of the round, from 0.
        """
        offer = self.rounds[index]
        usable = tuple(spot for spot, _ in offer.spots)
        places = MOST_IN_ROUND if abs(total) > FEW else FEW
        sign = 1 if total > 0 else -1
        key = (offer.costs, usable, sign, places, best)
        if key not in self._known:
            self._known[key] = ways(offer.costs, self.task.spots, usable, places, sign, best)
        return self._known[key][abs(total)]

    def part_ways(self, index: int, done: Pass) -> list[Way]:
        """The ways to ease a round that is worked part by part; `done`: as it stands."""
        offer = self.rounds[index]
        return part_ways(done, offer.spots, offer.costs, self.task.spots)[: TRIED[-1]]


def _offers(task: Task) -> list[Offer]:
    """The offers of every round, the border worked as it stands."""
    below = edge_fabric(task.edge)
    found: list[Offer] = []
    last = len(task.reading.rounds) - 1
    for index, round_ in enumerate(task.reading.rounds):
        costs = round_costs(task.costs, task.curve, round_, index == last)
        if not below.kinds:
            found.append(Offer((), costs))
            continue
        given = given_in(task, round_.number)
        try:
            first, done, _ = as_it_stands(round_, below, given, found_in(task))
        except TooLarge:  # nothing is eased in from here on
            below = replace(below, kinds=[])
            found.append(Offer((), costs))
            continue
        seen = first.boundaries.seen
        free = {b: p for b, p in seen.items() if b not in done.boundaries.plan}
        usable = spots_in(below.line, task.spots.spots, free, below.tick)
        found.append(Offer(tuple(usable), costs))
        below = row_made(task, index, below, done)
    return found


def given_in(task: Task, number: int) -> tuple[Adjustment, ...]:
    """The adjustments that stand already in one round."""
    return tuple(a for a in task.given if a.round == number)


def found_in(task: Task) -> Found | None:
    """What a round came out at, if it is said to be worked."""
    return task.found if task.found and task.found.in_force(task.done) else None


def row_made(task: Task, index: int, below: Fabric, done: Pass) -> Fabric:
    """The row that a round made, turned if the work is."""
    reading = task.reading
    made = done.fabric(below)
    return as_met_next(made, reading.rounds[index], reading.rules.worked, task.edge.closed)


# --- where the spots of an edge lie on a row -------------------------------------


def spots_in(
    line: Line, spots: Iterable[Spot], seen: Mapping[Boundary, int], tick: int
) -> list[tuple[Spot, Boundary]]:
    """The spots that the boundary nearest to their middle lies in, each with that boundary.

    `seen`: the boundaries of a row, and their positions in ticks.
    """
    length = line.length * tick
    wrap = length if line.closed else 0
    met = [(p % length if line.closed else p, n, b) for n, (b, p) in enumerate(seen.items())]
    if not met:
        return []
    # beyond either end once more, so that the nearest is always a neighbour here
    around = sorted((p + lap, n, b) for p, n, b in met for lap in {-wrap, 0, wrap})
    places = [p for p, _, _ in around]
    motifs = {s.run.motif: i for i, s in enumerate(line.stretches)}
    found = []
    for spot in spots:
        (middle,) = middles(line, tick, spot.at)
        behind = bisect_left(places, middle)
        before = bisect_left(places, places[behind - 1]) if behind else behind
        near = around[before : before + 1] + around[behind : behind + 1]
        _, _, position, boundary = min((abs(p - middle), n, p, b) for p, n, b in near)
        if _holds(line, motifs, spot, position, tick):
            found.append((spot, boundary))
    return found


def _holds(line: Line, motifs: Mapping[str, int], spot: Spot, position: int, tick: int) -> bool:
    """Whether a position lies in the motif, or in one of the two that the joint joins."""
    names = [name.strip() for name in spot.at.split("|")]
    owners = [motifs[name] for name in names if name in motifs]
    if not owners:
        return True  # a plain place
    index, on_joint = line.owner(position, tick)
    return index in owners or (on_joint and (index - 1) % len(line.stretches) in owners)
