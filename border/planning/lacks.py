"""What a border lacks on one edge: which rounds do not close there, and what is left over."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.planning.needs import Needs
from border.planning.trials import Worked, worked_on
from border.text.readings import Reading
from border.working.adjusting import Adjustment
from border.working.found import Found
from border.yoke.edges import Edge


class RoundLeft(Struct, frozen=True):
    """One round on the edge: `left_over` of the kind `of`, as `count` tells it."""

    number: int
    closes: bool
    left_over: int
    of: str


class OnEdge(Struct, frozen=True):
    """A border on one edge. `nearest`: the numbers of places beside its own that would close,
    where it does not; `adjusted`: it is worked with adjustments."""

    edge: Edge
    closes: bool
    rounds: tuple[RoundLeft, ...]
    nearest: tuple[int, ...]
    adjusted: bool = False

    @property
    def left_over(self) -> int:
        """What the first round that does not close leaves over."""
        return next((r.left_over for r in self.rounds if not r.closes), 0)


def on_edge(
    reading: Reading,
    edge: Edge,
    adjustments: Sequence[Adjustment],
    needs: Needs,
    whole: bool,
    found: Found | None = None,
) -> OnEdge:
    """The border worked into the edge; `whole`: every round of its text could be made out.

    `found`: what a round that is worked already came out at.
    """
    rounds = tuple(_left(worked) for worked in worked_on(reading, edge, adjustments, found))
    whole = whole and len(rounds) == len(reading.rounds)
    closes = whole and all(r.closes for r in rounds)
    nearest = () if closes else needs.nearest(edge.places)
    return OnEdge(edge, closes, rounds, nearest, bool(adjustments or found))


def _left(worked: Worked) -> RoundLeft:
    done = worked.done
    leftovers = done.reasons.leftovers
    over = sum(account.left_over for account in done.accounts.values())
    over = over or sum(left.count for left in leftovers)
    of = leftovers[0].what if leftovers else ""
    return RoundLeft(worked.round.number, done.closes, 0 if done.closes else over, of)
