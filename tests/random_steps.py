"""Hypothesis strategies for the steps of a row: what is worked into what, repeated how.

Every strategy is told what the row below offers, so that most rows find what they name.
"""

from __future__ import annotations

from dataclasses import dataclass

from hypothesis import strategies as st
from plainly.fabric import STITCH, Fabric
from plainly.sites import sites

from border.text.fastening import made_before
from border.text.tree import (
    ST,
    Arch,
    AsTheyCome,
    AtOnce,
    Between,
    BetweenPicots,
    Bracket,
    Centre,
    Chains,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    ToLast,
    Which,
    Whole,
)

NAMES = ("sc", "sc", "dc", "dc", "tr", "hdc", "dtr", "ss")


@dataclass(frozen=True)
class Offer:
    """What a row below has: kinds of sites, likely first; whether it is the edge itself."""

    kinds: tuple[Kind, ...]
    edge: bool


def edge_offer(of: str) -> Offer:
    place = {"chain": Kind("ch"), "stitch": ST}.get(of) or Kind(of)
    return Offer((place, place, ST), edge=True)


def offer_of(fabric: Fabric) -> Offer:
    """What a row as it came out has."""
    found = {ST, Kind("picot")} if any(atom.picots for atom in fabric.atoms) else {ST}
    found |= {Kind(atom.stitch) for atom in fabric.atoms if atom.what == STITCH}
    for name in ("space", "group", "shell", "block"):
        for site in sites(fabric, Whole(Kind(name)), chains_count=False):
            size = int(site.end - site.start)
            found.add(Kind(name))
            if name == "shell":
                continue
            if name == "space":
                left = fabric.atom(int(site.start) - 1).stitch if int(site.start) else ""
                beside = Kind("space", size, left) if left else Kind(name)
                if sites(fabric, Whole(beside), chains_count=False):
                    found.add(beside)
            found.add(Kind(name, size))
            stitch = fabric.atom(int(site.start)).stitch
            sized = Kind(name, size, stitch) if stitch else Kind("ch")
            if sites(fabric, Whole(sized), chains_count=False):
                found.add(sized)
    names = sorted(kind.name for kind in found if kind.name in NAMES)
    found |= {
        kind
        for kind in (Kind("run", size, name) for name in names for size in (1, 2, 3, 5))
        if sites(fabric, Whole(kind), chains_count=False)
    }
    kinds = sorted(found, key=repr)
    number = {kind: len(sites(fabric, Whole(kind), chains_count=False)) for kind in kinds}
    often = [kind for kind in kinds if number[kind] >= 4]
    return Offer((*often, *often, *often, *kinds), edge=False)


def all_items(items: tuple[Item, ...]) -> list[Item]:
    """Every item, and those inside brackets and repeats."""
    found: list[Item] = []
    for item in items:
        found.append(item)
        if isinstance(item, Repeat | Bracket | AsTheyCome | Arch):
            found += all_items(item.items)
    return found


def seldom(draw: st.DrawFn, one_in: int) -> bool:
    """True once in so many; the simplest is False."""
    return draw(st.sampled_from((False,) * (one_in - 1) + (True,)))


def mostly(
    often: st.SearchStrategy[Target], rare: st.SearchStrategy[Target], one_in: int
) -> st.SearchStrategy[Target]:
    """One in so many from `rare`."""
    return st.integers(1, one_in).flatmap(lambda n: rare if n == one_in else often)


numbers = st.sampled_from((1, 1, 1, 1, 2, 2, 3, 4))
chain_numbers = st.sampled_from((1, 2, 2, 3, 3, 4, 5, 7))
stitch_names = st.sampled_from(NAMES)
chains = st.builds(Chains, chain_numbers)
picots = st.builds(Picots, st.sampled_from((1, 1, 1, 2)), st.sampled_from((3, 4, 5)))


def targets(kind: Kind, edge: bool) -> st.SearchStrategy[Target]:
    """Mostly the whole site; above the edge its parts and points too."""
    if edge or kind.name not in ("space", "group", "shell", "block", "run"):
        return mostly(st.just(Whole(kind)), st.just(Between(kind)), 9)
    unit = Kind("ch") if kind.name == "space" else ST
    inner: tuple[Target, ...] = (
        Centre(kind),
        Part(1, unit, kind),
        Part(2, unit, kind),
        Part(-1, unit, kind),
        Between(kind),
        BetweenPicots(kind),
    )
    return mostly(st.just(Whole(kind)), st.sampled_from(inner), 3)


@st.composite
def unions(draw: st.DrawFn, kind: Kind, offer: Offer) -> tuple[Target, ...]:
    """One target; now and then another kind besides."""
    one = draw(targets(kind, offer.edge))
    if not seldom(draw, 8):
        return (one,)
    other = draw(targets(draw(st.sampled_from(offer.kinds)), offer.edge))
    return (one, other) if other != one else (one,)


@st.composite
def placed(draw: st.DrawFn, kind: Kind, offer: Offer) -> Item:
    """Stitches in the next sites of a kind, in one of the ways that a text can say it."""
    union = draw(unions(kind, offer))
    name, number = draw(stitch_names), draw(numbers)
    match draw(st.integers(0, 14)):
        case 14:
            which = draw(st.sampled_from((Which.NEXT, Which.NEXT, Which.LAST, Which.CENTRE)))
            together = Place(which, (AtOnce(draw(st.integers(2, 3)), kind),))
            if draw(st.booleans()):
                return Bracket(draw(lists_in_a_place()), together)
            return Stitches(number, name, together)
        case 0:
            count = draw(st.integers(2, 3))
            return Stitches(
                draw(st.sampled_from((1, count))), name, Place(Which.NEXT, union, count)
            )
        case 1:
            place = Place(Which.NEXT, union, draw(st.integers(2, 3)), each=True)
            parted = draw(st.sampled_from((0, 0, 1, 2)))
            return Stitches(number, name, place, parted=parted)
        case 2:
            return Stitches(number, name, Place(Which.NTH, union, draw(st.integers(2, 3))))
        case 3:
            count = draw(st.integers(2, 3))
            place = Place(Which.NEXT, union, count)
            return Stitches(count, name, place, together=True)
        case 4:
            place = Place(Which.NEXT, union, 2, each=True)
            return Stitches(2, name, place, together=True)
        case 5:
            return Stitches(number, name, Place(Which.NEXT, union), cluster=draw(st.integers(2, 4)))
        case 6 if number > 1:
            return Stitches(number, name, Place(Which.NEXT, union), between=draw(chain_numbers))
        case 7 | 8 | 9:
            return Bracket(draw(lists_in_a_place()), Place(Which.NEXT, union))
        case 10:
            return Stitches(number, name, Place(Which.THE, union))
        case _:
            return Stitches(number, name, Place(Which.NEXT, union))


@st.composite
def lists_in_a_place(draw: st.DrawFn) -> tuple[Item, ...]:
    """The inside of a bracket that has a place: nothing inside names one, `same` apart."""
    first = Stitches(draw(numbers), draw(stitch_names))
    middle: Item = draw(st.one_of(chains, picots))
    last = Stitches(draw(numbers), draw(stitch_names))
    match draw(st.integers(0, 5)):
        case 0:
            return (Repeat((first, middle), draw(st.integers(2, 4))), last)
        case 1:
            same = Stitches(1, draw(stitch_names), Place(Which.SAME, ()))
            return (first, middle, same)
        case 2:
            return (middle, first, draw(chains))
        case _:
            return (first, middle, last)


@st.composite
def moves(draw: st.DrawFn, kind: Kind, offer: Offer) -> tuple[Item, ...]:
    """One movement of the cursor, and what goes with it on the spot."""
    match draw(st.integers(0, 12)):
        case 11 | 12:
            return (Skip(draw(st.integers(1, 3)), Whole(kind)),)
        case 10:
            return (Skip(draw(st.integers(1, 3)), None),)
        case 9:
            return (Stitches(draw(st.integers(1, 4)), draw(stitch_names)),)
        case 8:
            name = draw(stitch_names)
            target = (Whole(kind),)
            return (
                Skip(1, Whole(kind)),
                Stitches(1, name, Place(Which.NEXT, target)),
                Stitches(1, name, Place(Which.SKIPPED, target)),
            )
        case 7:
            first = draw(placed(kind, offer))
            same = Place(Which.SAME, (draw(targets(kind, offer.edge)),))
            again = Stitches(draw(numbers), draw(stitch_names), same)
            return (first, draw(st.one_of(chains, picots)), again)
        case 6:
            other = draw(st.sampled_from(offer.kinds))
            return (draw(placed(other, offer)),)
        case _:
            return (draw(placed(kind, offer)),)


@st.composite
def stretches(draw: st.DrawFn, offer: Offer, most: int = 3) -> tuple[Item, ...]:
    """The text of a repeat: movements over mostly one kind, and chains or picots between them."""
    kind = draw(st.sampled_from(offer.kinds))
    items: tuple[Item, ...] = ()
    for _ in range(draw(st.integers(1, most))):
        moved = draw(moves(kind, offer))
        if seldom(draw, 8):
            moved = (Repeat(moved, draw(st.integers(2, 3))),)
        items += moved
        if seldom(draw, 8):
            items += (draw(picots),)
        if seldom(draw, 8):
            items += draw(arches(items))
        if draw(st.booleans()):
            items += (draw(chains),)
    if not any(isinstance(item, Stitches | Bracket) for item in all_items(items)):
        items += (Stitches(1, draw(stitch_names), Place(Which.NEXT, (Whole(kind),))),)
    return items


@st.composite
def arches(draw: st.DrawFn, items: tuple[Item, ...]) -> tuple[Item, ...]:
    """Chains fastened back over some of the stitches just made, and filled; if there are two."""
    made, _ = made_before(items, len(items))
    most = min(sum(one.all for one in made), 9)
    if most < 2:
        return ()
    filling: tuple[Item, ...] = (Stitches(draw(numbers), draw(stitch_names)),)
    if draw(st.booleans()):
        inside = draw(lists_in_a_place().filter(_opens_with_stitches))
        filling = tuple(item for item in inside if getattr(item, "place", None) is None)
    fastens = draw(st.sampled_from(("ss", "ss", "sc")))
    return (Arch(draw(chain_numbers), draw(st.integers(2, most)), filling, fastens),)


def _opens_with_stitches(items: tuple[Item, ...]) -> bool:
    first = items[0]
    return isinstance(first.items[0] if isinstance(first, Repeat) else first, Stitches)


@st.composite
def each(draw: st.DrawFn, offer: Offer) -> Item:
    """`in each X`, `in every Nth X`; now and then several such, as they come."""
    if seldom(draw, 3):
        return draw(as_they_come(offer))
    kind = draw(st.sampled_from(offer.kinds))
    union = draw(unions(kind, offer))
    place = Place(Which.EACH, union)
    if seldom(draw, 8):
        place = Place(Which.EACH, (AtOnce(draw(st.integers(2, 3)), kind),))
    if seldom(draw, 4):
        place = Place(Which.EVERY, union, draw(st.integers(2, 3)))
    parted = draw(st.sampled_from((0, 0, 1, 2, 3)))
    if draw(st.booleans()):
        return Bracket(draw(lists_in_a_place()), place, parted)
    number = draw(numbers)
    between = draw(st.sampled_from((0, 0, 2))) if number > 1 else 0
    return Stitches(number, draw(stitch_names), place, between=between, parted=parted)


@st.composite
def as_they_come(draw: st.DrawFn, offer: Offer) -> AsTheyCome:
    """Two or three parts, no two of them in the same target."""
    named: set[Target] = set()
    parts: list[Stitches | Bracket] = []
    names = (
        ("st", "picot", "loop") if offer.edge else ("st", "space", "block", "group", "shell", "ch")
    )
    kinds = [*offer.kinds, *map(Kind, names)]
    last = draw(st.integers(2, 3))
    while len(parts) < last:
        union = draw(unions(draw(st.sampled_from(kinds)), offer))
        if not named.isdisjoint(union):
            continue
        named.update(union)
        place = Place(Which.NEXT, union)
        if draw(st.booleans()):
            parts.append(Bracket(draw(lists_in_a_place()), place))
        else:
            together = seldom(draw, 8)
            parts.append(Stitches(draw(numbers), draw(stitch_names), place, together=together))
    return AsTheyCome(tuple(parts), draw(st.sampled_from((0, 0, 1, 2))))


@st.composite
def open_repeats(draw: st.DrawFn, offer: Offer) -> Repeat:
    """An open-ended repeat: by a star or in a bracket, to the end or to the last N."""
    items = draw(stretches(offer))
    if seldom(draw, 10):
        again = draw(st.integers(2, 3))
        items = items * again if draw(st.booleans()) else (Repeat(items, again),)
    to_last = None
    if seldom(draw, 4):
        to_last = ToLast(draw(st.integers(1, 3)), Whole(draw(st.sampled_from(offer.kinds))))
    return Repeat(items, None, to_last, star=draw(st.sampled_from((True, True, False))))


@st.composite
def ends_of(draw: st.DrawFn, offer: Offer, which: Which) -> tuple[Item, ...]:
    """Steps at the first, last or centre sites of a scope."""
    kind = draw(st.sampled_from(offer.kinds))
    count = draw(st.sampled_from((1, 1, 2)))
    place = Place(which, draw(unions(kind, offer)), count, each=count > 1)
    step: Item = Stitches(draw(numbers), draw(stitch_names), place)
    if seldom(draw, 4):
        step = Bracket(draw(lists_in_a_place()), place)
    return (step, draw(chains)) if draw(st.booleans()) else (step,)


@st.composite
def start_chains(draw: st.DrawFn, offer: Offer) -> Item:
    """Written out, not counted, or bare."""
    match draw(st.integers(0, 3)):
        case 0:
            return Chains(draw(st.sampled_from((1, 3, 4, 5))))
        case 1:
            return StartChain(draw(st.integers(1, 4)), None)
        case _:
            place = None
            if seldom(draw, 4):
                kind = draw(st.sampled_from(offer.kinds))
                place = Place(Which.FIRST, (Whole(kind),))
            name = draw(st.sampled_from(("dc", "tr", "hdc")))
            return StartChain(
                draw(st.integers(2, 7)), name, draw(st.sampled_from((0, 0, 2))), place
            )
