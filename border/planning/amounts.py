"""How many places a round must be eased by to close, all in one, or part by part."""

from __future__ import annotations

import heapq
from collections.abc import Iterable
from itertools import islice, product

from msgspec import Struct

from border.planning.choosing import MOST_AT_ONE_SPOT, Way, ways
from border.planning.costs import Eased, RoundCosts
from border.planning.spots import Spot, Spots
from border.working.adjusting import Boundary
from border.working.closing import Account
from border.working.rounds import Pass

MOST_OF_A_PART = 6
"""So many ways to ease one part of a round are weighed against each other."""

MOST_TOGETHER = 4_000
"""So many ways to ease all the parts of a round are looked at."""


def amounts(done: Pass, most: int) -> list[int]:
    """By how many places a round that is one text may be eased: above 0 passed over, below
    worked twice, none more than `most`; where the row closes, so that it closes again."""
    if not done.boundaries.seen:
        return []
    totals = [n for n in range(-most, most + 1) if n]
    accounts = [a for a in done.accounts.values() if a.times]
    takes = _takes(accounts[0]) if len(done.accounts) == 1 and accounts else None
    over = sum(rest.over for rest in done.rests)
    if takes is None or not (done.closes or over):
        return totals  # each is tried
    return [n for n in totals if (n - over) % takes == 0]


def _takes(account: Account) -> int | None:
    """How many sites a repeat takes, if it is always the same number of one kind."""
    numbers = {takes for takes, _ in account.seen}
    if len(account.leading) != 1 or len(numbers) != 1:
        return None
    ((number,),) = numbers
    return number or None


class _Part(Struct, frozen=True):
    """A part of the edge that leaves `over`, of a repeat that takes `takes`; its spots."""

    takes: int
    over: int
    spots: tuple[Spot, ...]


def part_ways(
    done: Pass, usable: Iterable[tuple[Spot, Boundary]], costs: RoundCosts, spots: Spots
) -> list[Way]:
    """Ways to ease a round that is worked part by part, cheapest first: every part that leaves
    something over by itself, parts that are mirror images alike where that is cheaper.

    None where a part cannot be made to close. Parts that close are left alone.
    """
    parts = _parts(done, usable)
    if not parts or done.reasons.troubles or done.reasons.unmade:
        return []
    choices = []
    for pair in _pairs(parts, spots):
        found = [way for sign in (1, -1) for way in _evened(pair, sign, costs, spots)]
        choices.append(heapq.nsmallest(MOST_OF_A_PART, found, key=lambda way: way[0]))
    together = []
    for chosen in islice(product(*choices), MOST_TOGETHER):
        eased: tuple[Eased, ...] = tuple(e for _, some in chosen for e in some)
        together.append((costs.of(eased, spots), eased))
    return sorted(together, key=lambda way: way[0])


def _parts(done: Pass, usable: Iterable[tuple[Spot, Boundary]]) -> list[_Part] | None:
    """The parts that leave something over; none where one has no spot to ease it at."""
    at: dict[int, list[Spot]] = {}
    for spot, boundary in usable:
        at.setdefault(boundary.part, []).append(spot)
    parts = []
    for rest in done.rests:
        if rest.over:
            takes = _takes(done.accounts[rest.repeat])
            if takes is None or rest.part not in at:
                return None
            parts.append(_Part(takes, rest.over % takes, tuple(at[rest.part])))
    return parts


def _pairs(parts: list[_Part], spots: Spots) -> list[tuple[_Part, ...]]:
    """The parts, each with its mirror image where that is another part to be eased alike."""
    pairs: list[tuple[_Part, ...]] = []
    left = list(parts)
    while left:
        part = left.pop(0)
        images = {spots.image(s.order) for s in part.spots} if spots.mirror is not None else set()
        twin = next(
            (
                p
                for p in left
                if (p.takes, p.over) == (part.takes, part.over)
                and images & {s.order for s in p.spots}
            ),
            None,
        )
        if twin:
            left.remove(twin)
        pairs.append((part, twin) if twin else (part,))
    return pairs


def _evened(pair: tuple[_Part, ...], sign: int, costs: RoundCosts, spots: Spots) -> list[Way]:
    """Ways to even a part, or two alike: pass over what is left, or work the rest twice."""
    each = pair[0].over if sign > 0 else pair[0].takes - pair[0].over
    if each > MOST_AT_ONE_SPOT * min(len(part.spots) for part in pair):
        return []
    usable = [spot for part in pair for spot in part.spots]
    best = MOST_OF_A_PART ** len(pair)
    found = ways(costs, spots, usable, each * len(pair), sign, best)[-1]
    return [way for way in found if all(_eases(way, part, each) for part in pair)]


def _eases(way: Way, part: _Part, places: int) -> bool:
    return sum(abs(e.by) for e in way[1] if e.spot in part.spots) == places
