"""Ground: where the spots of an edge lie on the line of a round, and which repeats end there."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Mapping

from msgspec import Struct

from border.planning.spots import Spot, Spots
from border.working.adjusting import Adjustment, Boundary, middles, planned
from border.working.line import Line


class Ground(Struct, frozen=True):
    """The spots on one line (turning the work makes another).

    `middle`: of each spot by its `at`, in half places. `owners`: the stretches
    that a repeat must end in to end at that spot; None: anywhere.
    """

    line: Line
    middle: dict[str, int]
    owners: dict[str, frozenset[int] | None]

    def usable(
        self, spots: Iterable[Spot], seen: Mapping[Boundary, int], tick: int
    ) -> list[tuple[Spot, Boundary]]:
        """The spots at which the nearest boundary lies, each with that boundary.

        `seen`: the boundaries and their positions in ticks.
        """
        length = self.line.length * tick
        around = [(p % length if self.line.closed else p, b) for b, p in seen.items()]
        if not around:
            return []
        around.sort(key=_position)
        found = []
        for spot in spots:
            middle = self.middle[spot.at] * tick // 2
            i = bisect_left(around, middle, key=_position)

            def away(near: tuple[int, Boundary], middle: int = middle) -> int:
                apart = abs(near[0] - middle)
                return min(apart, length - apart) if self.line.closed else apart

            position, boundary = min(around[i - 1], around[i % len(around)], key=away)
            if self.holds(spot.at, position, tick):
                found.append((spot, boundary))
        return found

    def holds(self, at: str, position: int, tick: int) -> bool:
        """Whether a position lies in the motif, or in one of the two that the joint joins."""
        owners = self.owners[at]
        if owners is None:
            return True
        index, on_joint = self.line.owner(position, tick)
        return index in owners or (on_joint and (index - 1) % len(self.line.stretches) in owners)

    def fall(
        self, wanted: tuple[Adjustment, ...], given: int, seen: dict[Boundary, int], tick: int
    ) -> dict[Boundary, Adjustment] | None:
        """The boundaries that adjustments take; None where one of them, the first `given` apart,
        falls outside what it names."""
        plan, homeless = planned(wanted, self.line, tick, seen)
        own = {id(a) for a in wanted[given:]}
        fine = all(self.holds(a.at, seen[b], tick) for b, a in plan.items() if id(a) in own)
        return plan if fine and not any(id(a) in own for a in homeless) else None


def _position(near: tuple[int, Boundary]) -> int:
    return near[0]


def ground_of(line: Line, spots: Spots) -> Ground:
    """Where the spots of an edge lie on a line of it."""
    middle: dict[str, int] = {}
    owners: dict[str, frozenset[int] | None] = {}
    by_motif = {s.run.motif: i for i, s in enumerate(line.stretches)}
    for spot in spots.spots:
        (middle[spot.at],) = middles(line, 2, spot.at)
        names = [name.strip() for name in spot.at.split("|")]
        inside = frozenset(by_motif[name] for name in names if name in by_motif)
        owners[spot.at] = inside or None
    return Ground(line, middle, owners)
