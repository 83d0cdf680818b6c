"""What an adjustment costs: one table, that a project can change, and the sum over a plan.

The weights are our own. The order that they put ways of easing in is common
practice: few places before many, plain rounds before showy ones, hidden spots
before the front, the same on both sides, one here and there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from enum import StrEnum
from itertools import combinations

from msgspec import Struct
from msgspec.structs import replace

from border.planning.spots import Spot, Spots
from border.text.readings import Round
from border.text.steps import walk
from border.text.tree import Arch, Bracket, Picots, Place, Stitches, Text, Which

NEVER = 10_000
"""Dearer than any ordinary plan: only where nothing else will do."""


class Costs(Struct, frozen=True):
    """What is paid for what, in points.

    `place`: every place passed over or worked twice; the others but the last three come
    besides: `showy` in a round with groups, picots or stitches worked together; `last` in
    the last round; `seen_1` to `seen_3` where it is little seen, seen, and where everybody
    looks; `regular` for a spot that is like most of the edge; `second` for a second place at
    one spot. `lopsided`: every place without its mirror image on the other side.
    `neighbours`: every two spots of a round that lie next to each other. `against_curve`: a
    place worked twice on an edge that curves inwards, or passed over on one that curves
    outwards.
    """

    place: int = 1000
    showy: int = 300
    last: int = NEVER
    seen_1: int = 100
    seen_2: int = 250
    seen_3: int = NEVER
    regular: int = 50
    second: int = 200
    lopsided: int = 400
    neighbours: int = 60
    against_curve: int = 80

    def changed(self, given: Mapping[str, int]) -> Costs:
        """The table with some of its costs given otherwise."""
        return replace(self, **given)

    def seen(self, how_much: int) -> int:
        return (0, self.seen_1, self.seen_2, self.seen_3)[how_much]


SHORT = {
    "place": "places",
    "showy": "showy round",
    "last": "last round",
    "seen_1": "little seen",
    "seen_2": "seen",
    "seen_3": "where everybody looks",
    "regular": "spots like the rest",
    "second": "two at one spot",
    "lopsided": "one side only",
    "neighbours": "side by side",
    "against_curve": "against the curve",
}
"""The same in a word or two."""


class Curve(StrEnum):
    """Which way an edge curves: its rounds grow shorter, or longer, the further out they lie."""

    IN = "in"
    OUT = "out"
    STRAIGHT = "straight"


_INWARDS = ("neck", "armhole", "sleeve", "armlet")
_OUTWARDS = ("hem", "collar", "outer")


def curve_of(edge: str) -> Curve:
    """How an edge of that name curves on a yoke (common practice)."""
    words = edge.casefold().split()
    if any(word in _INWARDS for word in words):
        return Curve.IN
    return Curve.OUT if any(word in _OUTWARDS for word in words) else Curve.STRAIGHT


class Eased(Struct, frozen=True):
    """A spot where places are passed over (`by` above 0) or worked twice (below)."""

    spot: Spot
    by: int


class RoundCosts(Struct, frozen=True):
    """What easing costs in one round of one edge."""

    costs: Costs
    curve: Curve
    showy: bool
    last: bool

    def each(self, spot: Spot, by: int) -> int:
        """One spot by itself."""
        return sum(self._parts(spot, by).values())

    def of(self, eased: Sequence[Eased], spots: Spots) -> int:
        """All the spots of the round together."""
        return sum(self.parts(eased, spots).values())

    def parts(self, eased: Sequence[Eased], spots: Spots) -> Counter[str]:
        """What all the spots of the round together pay for, by the names of the table."""
        paid: Counter[str] = Counter()
        for e in eased:
            paid.update(self._parts(e.spot, e.by))
        places = {e.spot.order: abs(e.by) for e in eased}
        if spots.mirror is not None:
            apart = sum(max(n - places.get(spots.image(o), 0), 0) for o, n in places.items())
            paid["lopsided"] = apart * self.costs.lopsided
        near = sum(spots.neighbours(a, b) for a, b in combinations(places, 2))
        paid["neighbours"] = near * self.costs.neighbours
        return paid

    def _parts(self, spot: Spot, by: int) -> dict[str, int]:
        c, places = self.costs, abs(by)
        paid = {"place": places * c.place, "second": (places - 1) * c.second}
        if spot.seen:
            paid[f"seen_{spot.seen}"] = places * c.seen(spot.seen)
        if self.last:
            paid["last"] = places * c.last
        elif self.showy:
            paid["showy"] = places * c.showy
        if not spot.irregular:
            paid["regular"] = c.regular
        if self.curve is (Curve.OUT if by > 0 else Curve.IN):
            paid["against_curve"] = places * c.against_curve
        return paid


def round_costs(costs: Costs, curve: Curve, round_: Round, last: bool) -> RoundCosts:
    """What easing costs in a round of a border."""
    return RoundCosts(costs, curve, showy(round_), last)


def showy(round_: Round) -> bool:
    """Whether a round makes groups, picots, or stitches worked together."""
    texts = [round_.body] if isinstance(round_.body, Text) else [c.text for c in round_.body]
    for item in (i for text in texts for i in walk(text.items)):
        match item:
            case Picots() | Bracket() | Arch():
                return True
            case Stitches(count=count, place=place, together=together, cluster=cluster):
                if together or cluster or (count > 1 and place and _each_into_one(place)):
                    return True
            case _:
                pass
    return False


def _each_into_one(place: Place) -> bool:
    """Whether all of several stitches go into one site, or into each of several."""
    return place.count == 1 or place.each or place.which in (Which.NTH, Which.EVERY)
