"""The search for the cheapest plan: best first, over the rounds and what each leaves to the next.

A plan grows round by round. Of all that is begun the cheapest is carried on,
so the first that reaches the last round is the cheapest there is. Two ways to
come to the same row are one from there on: what a round leaves to the next is
its stitches, and where they stand only if a later round is worked motif by
motif.
"""

from __future__ import annotations

import heapq
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import count, pairwise
from typing import TypeAlias

from msgspec import Struct, field
from msgspec.structs import replace

from border.planning.amounts import amounts, part_ways
from border.planning.choosing import Way, ways
from border.planning.costs import Costs, Curve, RoundCosts, round_costs
from border.planning.ground import Ground, ground_of
from border.planning.spots import Spot, Spots
from border.text.readings import Reading, Round
from border.text.tree import Text
from border.working.adjusting import Adjustment, Boundary
from border.working.cursor import TooLarge
from border.working.fabric import CHAIN, PICOT, Fabric, edge_fabric
from border.working.rounds import Pass, work_adjusted, work_once
from border.working.work import turns
from border.yoke.edges import Edge

MOST_IN_ROUND = 12
"""So many places are passed over, or worked twice, in one round."""

FEW = 3
"""So many are looked for at first."""

MOST_WORKINGS = 4_000
"""The search gives up after so many workings of a round."""

MOST_TRIED = 24
"""So many ways to ease the same places into a round are tried, cheapest first."""


class Task(Struct, frozen=True):
    """What is to be planned: a border on an edge.

    `given`: adjustments that stand already. `done`: rounds that are worked
    and stay as they are.
    """

    reading: Reading
    edge: Edge
    spots: Spots
    costs: Costs
    curve: Curve
    given: tuple[Adjustment, ...] = ()
    done: int = 0


class Plan(Struct, frozen=True):
    """Adjustments that make every round close that is still to be worked."""

    cost: int
    adjustments: tuple[Adjustment, ...]


class Stuck(Struct):
    """How far the search came: the last round that could not be made to close, and its row below.

    `given_up`: it was stopped before all was tried.
    """

    round: int = 0
    given_up: bool = False


Shape: TypeAlias = tuple[object, ...]
"""What a row is to those after it."""


class _Row(Struct, frozen=True):
    """A row to be worked into: rounds worked so far, their fabric, and its shape."""

    rounds: int
    fabric: Fabric
    shape: Shape


class _Worked(Struct):
    """The next round worked into a row as it stands, and what may be done about it."""

    first: Pass
    done: Pass
    usable: list[tuple[Spot, Boundary]]
    costs: RoundCosts
    by_part: list[Way] | None = None
    outcomes: dict[int, _Row | None] = field(default_factory=dict)


class _Try(Struct, frozen=True):
    """One way to ease the next round, not yet worked.

    `paid`: what the plan cost up to there. `total`: the places eased; None: part by
    part. `rank`: which of the ways to do so.
    """

    row: _Row
    paid: int
    total: int | None
    rank: int


_Push: TypeAlias = Callable[[int, "_Row | _Try", tuple[Adjustment, ...]], None]


class Search:
    """One search. `plans` gives them cheapest first; `stuck` says where it could not go on."""

    def __init__(self, task: Task, wanted: int = 1) -> None:
        self.task = task
        self.wanted = wanted
        self.stuck = Stuck()
        self.workings = 0
        self._worked: dict[tuple[int, Shape], _Worked | None] = {}
        self._chosen: dict[tuple[object, ...], list[list[Way]]] = {}
        self._grounds: dict[bool, Ground] = {}
        rounds = task.reading.rounds
        by_part = [not isinstance(r.body, Text) for r in rounds]
        self._stands = [any(by_part[i:]) for i in range(len(rounds) + 1)]
        """Whether it matters to the rounds from here on where the stitches stand."""

    def plans(self) -> Iterator[Plan]:
        """Plans, cheapest first; of equals, the one found first. Ends where none is left."""
        fabric = edge_fabric(self.task.edge)
        heap: list[tuple[int, int, _Row | _Try, tuple[Adjustment, ...]]] = []
        number = count()

        def push(cost: int, what: _Row | _Try, so_far: tuple[Adjustment, ...]) -> None:
            heapq.heappush(heap, (cost, next(number), what, so_far))

        push(0, _Row(0, fabric, self._shape(fabric, 0)), ())
        met: Counter[tuple[int, Shape]] = Counter()
        while heap:
            cost, _, what, so_far = heapq.heappop(heap)
            if self.workings > MOST_WORKINGS:
                self.stuck.given_up = True
                return
            if isinstance(what, _Try):
                self._tried(what, cost, so_far, push)
                continue
            met[what.rounds, what.shape] += 1
            if met[what.rounds, what.shape] > self.wanted:
                continue
            if what.rounds == len(self.task.reading.rounds):
                yield Plan(cost, so_far)
                continue
            self._carried_on(what, cost, so_far, push)

    # --- carrying on ------------------------------------------------------------

    def _carried_on(
        self, row: _Row, cost: int, so_far: tuple[Adjustment, ...], push: _Push
    ) -> None:
        """The next round, as it stands if it closes so, and every number of places to ease."""
        worked = self._work(row)
        if worked is None:
            return
        if worked.done.closes or row.rounds < self.task.done:
            if (after := self._row(row, worked.done)) is not None:
                push(cost, after, so_far)
        else:
            self.stuck.round = max(self.stuck.round, row.rounds + 1)
        if row.rounds < self.task.done:
            return
        if not isinstance(self._round(row).body, Text):
            push(cost, _Try(row, cost, None, 0), so_far)
            return
        for total in amounts(worked.done, MOST_IN_ROUND):
            least = abs(total) * self.task.costs.place
            push(cost + least, _Try(row, cost, total, 0), so_far)

    def _tried(self, t: _Try, cost: int, so_far: tuple[Adjustment, ...], push: _Push) -> None:
        """One way to ease a round: worked, if it is its turn by what it really costs."""
        found = self._ways(t)
        if t.rank >= min(len(found), MOST_TRIED):
            return
        way_cost, eased = found[t.rank]
        if t.paid + way_cost > cost:
            push(t.paid + way_cost, t, so_far)
            return
        number = self._round(t.row).number
        new = tuple(Adjustment(number, e.spot.at, e.by) for e in eased)
        after = self._eased(t, new)
        if after is not None:
            push(cost, after, (*so_far, *new))
        if after is None or self.wanted > 1 or self._stands[t.row.rounds + 1]:
            push(cost, replace(t, rank=t.rank + 1), so_far)

    def _ways(self, t: _Try) -> list[Way]:
        """The ways to ease a round by so many places, cheapest first."""
        worked = self._work(t.row)
        assert worked is not None
        if t.total is None:
            if worked.by_part is None:
                worked.by_part = part_ways(
                    worked.done, worked.usable, worked.costs, self.task.spots
                )
            return worked.by_part
        several = t.rank > 0 or self.wanted > 1 or self._stands[t.row.rounds + 1]
        places = MOST_IN_ROUND if abs(t.total) > FEW else FEW
        usable = tuple(spot for spot, _ in worked.usable)
        key = (worked.costs, usable, t.total > 0, places, several)
        if key not in self._chosen:
            sign, best = (1 if t.total > 0 else -1), (MOST_TRIED if several else 1)
            spots = self.task.spots
            self._chosen[key] = ways(worked.costs, spots, usable, places, sign, best)
        return self._chosen[key][abs(t.total)]

    # --- working ----------------------------------------------------------------

    def _work(self, row: _Row) -> _Worked | None:
        """The next round worked into a row, as far as it stands; None where it cannot be."""
        key = row.rounds, row.shape
        if key not in self._worked:
            self.workings += 1
            try:
                self._worked[key] = self._worked_anew(row)
            except TooLarge:
                self._worked[key] = None
        return self._worked[key]

    def _worked_anew(self, row: _Row) -> _Worked:
        task, below, round_ = self.task, row.fabric, self._round(row)
        first = done = work_once(round_, below)
        given = self._given(round_)
        if given:
            done, _ = work_adjusted(round_, below, given, first)
        free = {b: p for b, p in first.boundaries.seen.items() if b not in done.boundaries.plan}
        usable = self._ground(below).usable(task.spots.spots, free, below.tick)
        last = row.rounds == len(task.reading.rounds) - 1
        return _Worked(first, done, usable, round_costs(task.costs, task.curve, round_, last))

    def _eased(self, t: _Try, new: tuple[Adjustment, ...]) -> _Row | None:
        """The row after a round eased so; None where it does not close so."""
        worked, below, round_ = self._work(t.row), t.row.fabric, self._round(t.row)
        assert worked is not None
        given = self._given(round_)
        wanted = (*given, *new)
        seen = worked.first.boundaries.seen
        plan = self._ground(below).fall(wanted, len(given), seen, below.tick)
        if plan is None:
            return None
        alike = t.total is not None and not self._stands[t.row.rounds + 1]
        if alike and t.total in worked.outcomes:
            return worked.outcomes[t.total]
        self.workings += 1
        try:
            done, fallen = work_adjusted(round_, below, wanted, worked.first)
        except TooLarge:
            return None
        if not done.closes or len(fallen) < len(plan):
            return None
        after = self._row(t.row, done)
        if alike and t.total is not None:
            worked.outcomes[t.total] = after
        return after

    def _row(self, row: _Row, done: Pass) -> _Row | None:
        """The row that a round has made; None where it put no stitch on the work."""
        if all(k in (CHAIN, PICOT) for k in done.made.kinds):
            return None
        fabric = done.fabric(row.fabric)
        if turns(self._round(row), self.task.reading.rules.worked, self.task.edge.closed):
            fabric = fabric.turned()
        return _Row(row.rounds + 1, fabric, self._shape(fabric, row.rounds + 1))

    def _shape(self, fabric: Fabric, rounds: int) -> Shape:
        together = bytes(a == b for a, b in pairwise(fabric.into))
        shape = (tuple(fabric.kinds), together)
        return (*shape, tuple(fabric.pos), fabric.tick) if self._stands[rounds] else shape

    def _round(self, row: _Row) -> Round:
        return self.task.reading.rounds[row.rounds]

    def _given(self, round_: Round) -> tuple[Adjustment, ...]:
        return tuple(a for a in self.task.given if a.round == round_.number)

    def _ground(self, fabric: Fabric) -> Ground:
        flipped = fabric.line.flipped
        if flipped not in self._grounds:
            self._grounds[flipped] = ground_of(fabric.line, self.task.spots)
        return self._grounds[flipped]
