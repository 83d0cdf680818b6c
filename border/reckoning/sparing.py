"""With so many balls: how far one gets, and what could be left out so that they last.

What is left out are last rounds, of one edge or of all, or whole edges; left and right are
always treated alike, and rounds already worked stay. A way to leave out is offered only
where what remains is certain to be had: by the upper figure, with waste.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import StrEnum
from itertools import combinations

from msgspec import Struct

from border.planning.spots import mirrored
from border.reckoning.balls import Lasts, lasts
from border.reckoning.stops import Stop, Way
from border.reckoning.thread import Ball, Thread

MOST_WAYS = 8
"""So many ways to leave something out are shown, those that leave out least."""

MOST_EDGES = 12
"""Whole edges are left out together only where a project has no more sorts of them."""


class Enough(StrEnum):
    """Whether thread lasts for the whole work."""

    SURELY = "surely"
    LIKELY = "likely"
    PERHAPS = "perhaps"
    NO = "no"


class EdgeLoops(Struct, frozen=True):
    """An edge with the loops of each of its rounds; the first `done` of them are worked."""

    edge: str
    rounds: tuple[int, ...]
    done: int = 0


class LeftOut(Struct, frozen=True):
    """Something to leave out: of each edge the last so many rounds (`whole`: all of them).

    `loops`: what is saved. `surely`: loops that are certain to stay over then.
    """

    edges: tuple[str, ...]
    rounds: int
    whole: bool
    loops: int
    over: float


class Sparing(Struct, frozen=True):
    """What comes of so many balls. `reach`: where they end for certain, by the middle figure
    and at the most; None where the work is done before that."""

    balls: float
    lasts: Lasts
    enough: Enough
    reach: tuple[Stop | None, Stop | None, Stop | None]
    ways: tuple[LeftOut, ...]


def spared(
    way: Way, edges: Sequence[EdgeLoops], thread: Thread, ball: Ball, balls: float
) -> Sparing:
    """How far so many balls go, and what can be left out where they are not certain to do."""
    far = lasts(thread, ball, balls)
    enough = next(
        (e for e, loops in zip(Enough, _of(far), strict=False) if loops >= way.total), Enough.NO
    )
    ways: list[LeftOut] = []
    if enough is not Enough.SURELY:
        ways = [w for w in _ways(edges, way.total - far.surely) if w.loops < way.total]
        ways.sort(key=lambda w: (w.loops, len(w.edges)))
    reach = (way.at(far.surely), way.at(far.about), way.at(far.at_most))
    return Sparing(balls, far, enough, reach, tuple(ways[:MOST_WAYS]))


def _of(far: Lasts) -> tuple[float, float, float]:
    return far.surely, far.about, far.at_most


def _ways(edges: Sequence[EdgeLoops], needed: float) -> Iterator[LeftOut]:
    """Ways to save so many loops, none of which leaves out more than it must."""
    sorts = _sorts(edges)
    alone = [way for sort in sorts if (way := _fewest_rounds(sort, needed))]
    yield from alone
    of_all = _fewest_rounds(edges, needed)
    if of_all and all(of_all.edges != way.edges for way in alone):
        yield of_all
    left = [sort for sort in sorts if 0 < _free(sort) < needed]
    if len(left) > MOST_EDGES:
        return
    found: list[set[int]] = []
    # All of them are left out above, where none of the edges is enough by itself.
    most = len(left) - (len(left) == len(sorts))
    for many in range(2, most + 1):
        for some in combinations(range(len(left)), many):
            together = [edge for i in some for edge in left[i]]
            if any(each <= set(some) for each in found):
                continue
            if way := _whole(together, needed):
                found.append(set(some))
                yield way


def _sorts(edges: Sequence[EdgeLoops]) -> list[list[EdgeLoops]]:
    """The edges, left and right together."""
    sorts: dict[str, list[EdgeLoops]] = {}
    for edge in edges:
        other = mirrored(edge.edge)
        sorts.setdefault(other if other in sorts else edge.edge, []).append(edge)
    return list(sorts.values())


def _fewest_rounds(edges: Sequence[EdgeLoops], needed: float) -> LeftOut | None:
    """As few last rounds of every one of some edges as save so much."""
    for rounds in range(1, max((_free_rounds(e) for e in edges), default=0) + 1):
        loops = sum(_last(edge, rounds) for edge in edges)
        if loops >= needed:
            whole = all(rounds >= len(edge.rounds) for edge in edges)
            names = tuple(e.edge for e in edges if _last(e, rounds))
            return LeftOut(names, rounds, whole, loops, loops - needed)
    return None


def _whole(edges: Sequence[EdgeLoops], needed: float) -> LeftOut | None:
    """Some edges with all their rounds still to be worked, if that saves so much."""
    loops = _free(edges)
    if loops < needed:
        return None
    rounds = max(_free_rounds(e) for e in edges)
    whole = all(not e.done for e in edges)
    return LeftOut(tuple(e.edge for e in edges), rounds, whole, loops, loops - needed)


def _free(edges: Sequence[EdgeLoops]) -> int:
    return sum(_last(edge, len(edge.rounds)) for edge in edges)


def _free_rounds(edge: EdgeLoops) -> int:
    return max(len(edge.rounds) - edge.done, 0)


def _last(edge: EdgeLoops, rounds: int) -> int:
    """Loops in the last so many rounds of an edge, as far as they are not worked yet."""
    free = min(rounds, _free_rounds(edge))
    return sum(edge.rounds[len(edge.rounds) - free :])
