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

from msgspec import Struct
from msgspec.structs import replace

from border.planning.amounts import amounts
from border.planning.choosing import Way
from border.planning.offers import (
    MOST_IN_ROUND,
    TRIED,
    Offers,
    Task,
    found_in,
    given_in,
    row_made,
)
from border.text.readings import Round
from border.text.tree import Text
from border.working.adjusting import Adjustment
from border.working.cursor import TooLarge
from border.working.fabric import Fabric, edge_fabric, has_no_stitch
from border.working.found import as_it_stands
from border.working.rounds import Fallen, Pass, work_adjusted
from border.working.work import WorkedEdge, work

MOST_WORKINGS = 2_000
"""The search gives up after so many workings of a round; one into a row of more than `LARGE`
stitches and chains counts as several."""
LARGE = 2_000


class Plan(Struct, frozen=True):
    """Adjustments that make every round close that is still to be worked, and their cost.

    `cheapest`: no other costs less; False where the search was given up before that was sure.
    """

    cost: int
    adjustments: tuple[Adjustment, ...]
    cheapest: bool = True


class Stuck(Struct):
    """Where a search came to nothing: the last round (by its number) that it could not ease.

    `given_up`: it was stopped before all was tried.
    """

    round: int = 0
    given_up: bool = False


_Shape: TypeAlias = tuple[object, ...]
"""What a row is to those after it."""


class _Row(Struct, frozen=True):
    """A row to be worked into: how many rounds are worked, their fabric, its shape."""

    rounds: int
    fabric: Fabric
    shape: _Shape


class _Worked(Struct, frozen=True):
    """The next round worked into a row: without adjustments, and with those that stand."""

    first: Pass
    done: Pass
    fallen: tuple[Fallen, ...]


class _Try(Struct, frozen=True):
    """One way to ease the next round, not yet worked.

    `paid`: what the plan cost up to there. `total`: the places eased; None: part by
    part. `rank`: which of the ways to do so.
    """

    row: _Row
    paid: int
    total: int | None
    rank: int = 0


_Push: TypeAlias = Callable[[int, _Row | _Try, tuple[Adjustment, ...]], None]


class Search:
    """One search for `wanted` plans. After it, `stuck` says where it could not go on.

    `most`: workings of a round after which it is given up. `where`: keep apart rows
    that differ only in where their stitches stand. `narrow`: look only at the fewest
    places, passed over or worked twice, in each round.
    """

    def __init__(
        self,
        task: Task,
        wanted: int = 1,
        most: int = MOST_WORKINGS,
        where: bool = False,
        narrow: bool = False,
    ) -> None:
        self.task = task
        self.wanted = wanted
        self.most = most
        self.where = where
        self.narrow = narrow
        self.stuck = Stuck()
        self.workings = 0
        self._offers = Offers(task)
        self._worked: dict[tuple[int, _Shape], _Worked | None] = {}
        by_part = [not isinstance(r.body, Text) for r in task.reading.rounds]
        self._where = [where or any(by_part[i:]) for i in range(len(by_part) + 1)]
        """Whether it matters to the rounds from here on where the stitches stand."""

    def plans(self) -> Iterator[Plan]:
        """Plans, cheapest first; of equals, the one found first. Ends where none is left.

        Each has been worked from the edge, all rounds of it.
        """
        heap: list[tuple[int, int, _Row | _Try, tuple[Adjustment, ...]]] = []
        number = count()

        def push(cost: int, what: _Row | _Try, so_far: tuple[Adjustment, ...]) -> None:
            heapq.heappush(heap, (cost, next(number), what, so_far))

        fabric = edge_fabric(self.task.edge)
        push(0, _Row(0, fabric, self._shape(fabric, 0)), ())
        met: Counter[tuple[int, _Shape]] = Counter()
        while heap:
            cost, _, what, so_far = heapq.heappop(heap)
            if self.workings > self.most:
                self.stuck.given_up = True
                yield from self._narrower()
                return
            if isinstance(what, _Try):
                self._try(what, cost, so_far, push)
                continue
            met[what.rounds, what.shape] += 1
            if met[what.rounds, what.shape] > self.wanted:
                continue
            if what.rounds < len(self.task.reading.rounds):
                self._carry_on(what, cost, so_far, push)
            elif proved(self.task, so_far):
                yield Plan(cost, so_far)
            elif not self.where:  # where stitches stand does matter to a later round
                yield from self._anew(where=True, narrow=self.narrow)
                return

    def _narrower(self) -> Iterator[Plan]:
        """What a narrow search finds, where the whole one was given up."""
        if not self.narrow:
            for plan in self._anew(where=self.where, narrow=True):
                yield replace(plan, cheapest=False)

    def _anew(self, *, where: bool, narrow: bool) -> Iterator[Plan]:
        """What another search finds, that looks at more, or at less, than this one."""
        return Search(self.task, self.wanted, self.most, where, narrow).plans()

    # --- carrying on ------------------------------------------------------------

    def _carry_on(self, row: _Row, cost: int, so_far: tuple[Adjustment, ...], push: _Push) -> None:
        """The next round, as it stands if it closes so, and every number of places to ease."""
        worked = self._work(row)
        if worked is None:
            return
        if worked.done.closes or row.rounds < self.task.done:
            if (after := self._row(row, worked.done)) is not None:
                push(cost, after, so_far)
        else:
            self.stuck.round = max(self.stuck.round, self._round(row).number)
        if row.rounds < self.task.done:
            return
        if not isinstance(self._round(row).body, Text):
            push(cost, _Try(row, cost, None), so_far)
            return
        totals = amounts(worked.done, MOST_IN_ROUND)
        if self.narrow:
            totals = sorted(totals, key=abs)[: 0 if worked.done.closes else 2]
        for total in totals:
            least = abs(total) * self.task.costs.place
            push(cost + least, _Try(row, cost, total), so_far)

    def _try(self, t: _Try, cost: int, so_far: tuple[Adjustment, ...], push: _Push) -> None:
        """One way to ease a round: worked, if it is its turn by what it really costs."""
        found = self._ways(t)
        if t.rank >= len(found):
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
        if after is None or self._several(t):
            push(cost, replace(t, rank=t.rank + 1), so_far)

    def _ways(self, t: _Try) -> list[Way]:
        if t.total is not None:
            wanted = t.rank + 1 + self._several(t)
            best = next((n for n in TRIED if n >= wanted), TRIED[-1])
            return self._offers.ways(t.row.rounds, t.total, best)
        worked = self._work(t.row)
        return self._offers.part_ways(t.row.rounds, worked.done) if worked else []

    def _several(self, t: _Try) -> bool:
        """Whether it matters which of the ways is taken, for what comes after."""
        return self.wanted > 1 or (self._where[t.row.rounds + 1] and not self.narrow)

    # --- working ----------------------------------------------------------------

    def _work(self, row: _Row) -> _Worked | None:
        """The next round worked into a row, as it stands; None where it grows too large."""
        key = row.rounds, row.shape
        if key not in self._worked:
            self.workings += _effort(row)
            round_ = self._round(row)
            given, found = given_in(self.task, round_.number), found_in(self.task)
            try:
                self._worked[key] = _Worked(*as_it_stands(round_, row.fabric, given, found))
            except TooLarge:
                self._worked[key] = None
        return self._worked[key]

    def _eased(self, t: _Try, new: tuple[Adjustment, ...]) -> _Row | None:
        """The row after a round eased so; None where it does not close so."""
        worked, round_ = self._work(t.row), self._round(t.row)
        assert worked is not None
        wanted = (*given_in(self.task, round_.number), *new)
        self.workings += _effort(t.row)
        try:
            done, fallen = work_adjusted(round_, t.row.fabric, wanted, worked.first)
        except TooLarge:
            return None
        if not done.closes or len(fallen) < len(worked.fallen) + len(new):
            return None
        return self._row(t.row, done)

    def _row(self, row: _Row, done: Pass) -> _Row | None:
        """The row that a round has made; None where it put no stitch on the work."""
        if has_no_stitch(done.made.kinds):
            return None
        fabric = row_made(self.task, row.rounds, row.fabric, done)
        return _Row(row.rounds + 1, fabric, self._shape(fabric, row.rounds + 1))

    def _shape(self, fabric: Fabric, rounds: int) -> _Shape:
        """The stitches, and which were worked into one place; where they stand, if it matters."""
        together = bytes(a == b for a, b in pairwise(fabric.into))
        where = (tuple(fabric.pos), fabric.tick) if self._where[rounds] else ()
        return (tuple(fabric.kinds), together, fabric.covered, *where)

    def _round(self, row: _Row) -> Round:
        return self.task.reading.rounds[row.rounds]


def _effort(row: _Row) -> int:
    return 1 + len(row.fabric.kinds) // LARGE


def worked_with(task: Task, adjustments: tuple[Adjustment, ...] = ()) -> WorkedEdge:
    """The border worked from the edge, with adjustments beside those that stand already."""
    every = (*task.given, *adjustments)
    return work(task.reading, task.edge, every, task.done, task.found)


def proved(task: Task, adjustments: tuple[Adjustment, ...]) -> bool:
    """Whether the border, worked from the edge with these adjustments, closes in every round
    that is still to be worked."""
    worked = worked_with(task, adjustments)
    fallen = Counter((r.number, f.at, f.by) for r in worked.rounds for f in r.adjustments)
    return (
        len(worked.rounds) == len(task.reading.rounds)
        and all(r.closes for r in worked.rounds[task.done :])
        and not Counter((a.round, a.at, a.by) for a in adjustments) - fallen
    )
