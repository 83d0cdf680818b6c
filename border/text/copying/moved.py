"""Copied rows are worked in other places, as their copies say: `the dc going into the 5 chain`.

Of what goes into one place all goes elsewhere, or nothing: what cannot be parted, or is not
sure to be meant, is a doubt, and nothing of it is moved.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import count
from typing import TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Span
from border.text.copying.made import Stretch
from border.text.copying.units import Unit, looks_back, numbered, place_of, rewritten, units
from border.text.steps import OPEN_PLACES, walk
from border.text.tree import (
    Begin,
    Bracket,
    End,
    Item,
    Moved,
    Place,
    StartChain,
    Stitches,
    Which,
)

Others: TypeAlias = "dict[int, Item | None]"
"""Steps by their numbers, as they are worked instead; None: left out."""

_START = "the first one of the copied row is chains that stand for it"
_TOGETHER = "in the copied row it goes into one place together with something else"
_NOT_OWN = "in the copied row where it goes depends on the steps before it"
_ONE_BY_ONE = "in the copied row so many go one by one into so many places"
_TO_LAST = "the repeat of the copied row goes on to the last ones, which may be others here"
_BEGINS = "the copied row begins in such a place, too, which may be meant or not"
_ALL_AT_ONCE = "in each place would be all of them at once, before the row goes on"
_KINDS = "the copied row works into several kinds of place, and which is meant is not said"
_LIKE = "in the copied row several go into one place, and whether they go one on each is not said"
_BOTH = "the copied row makes so many in one step, and so many together in one place"


class Doubtful(Struct, frozen=True):
    """Why nothing is moved."""

    message: str


class Asked(Struct, frozen=True):
    """What may be meant besides, and the steps by that; None where it has no words of its own."""

    message: str
    otherwise: str
    others: Others | None = None


class Move(Struct, frozen=True):
    """The steps that are worked elsewhere, and what is asked of them."""

    others: Others
    asked: Asked | None = None


class _Found(Struct, frozen=True):
    unit: Unit
    stretch: Stretch


def put_there(stretches: Sequence[Stretch], others: Others) -> list[Stretch]:
    """The stretches with other steps, by their numbers."""
    numbers = count()
    return [replace(s, items=rewritten(s.items, numbers, others)) for s in stretches]


def move(one: Moved, stretches: Sequence[Stretch], said: Span) -> Move | Doubtful | None:
    """What a copy works elsewhere; None where nothing of the copied row is that.

    `said`: where the copy says so.
    """
    numbers = count()
    found = [_Found(unit, s) for s in stretches for unit in units(numbered(s.items, numbers))]
    fitting = [(f, fit) for f in found if (fit := _fit(one, f.unit))]
    if not fitting:
        return None
    if doubt := _doubt(one, found, fitting):
        return Doubtful(doubt)
    others: Others = {}
    several = [f for f, _ in fitting if _on_the_like(one, f.unit)]
    apart: Others = {}
    for f, _ in fitting:
        place = _there(one.place, f)
        if place is not None and f in several:
            if f.unit.missed or (there := _one_on_each(one.place, f)) is None:
                return Doubtful(_LIKE)
            apart |= _placed(f.unit, there, said)
        if place is None:
            repeated = f.unit.opener.again or f.stretch.repeats
            each = one.place.which is Which.EACH and not repeated
            return Doubtful(_ALL_AT_ONCE if each else _ONE_BY_ONE)
        others |= _placed(f.unit, place, said)
    if several:
        message = "the copied row makes several together, and here they go one on each"
        return Move(others | apart, Asked(message, "if all of them go into one", others))
    return Move(others, _asked(one, [f for f, _ in fitting], others, said))


# --- what is meant ------------------------------------------------------------------------------


def _fit(one: Moved, unit: Unit) -> str:
    """How the words fit what goes into one place: `all` of it, `sum`, `part`; empty: not at all."""
    if not one.named:
        return "all"
    if len(one.named) > 1:
        return "all" if unit.content == one.named else ""
    of, number = one.named[0].of, one.named[0].number
    if of not in unit.stitches:
        return ""
    fit = "all"
    if number is not None:
        each = [n == number for n in _numbers(unit, of)]
        fit = "all" if all(each) else "part" if any(each) else _sum(unit, of, number)
    return fit if not fit or unit.stitches == {of} else "part"


def _numbers(unit: Unit, stitch: str) -> Iterator[int]:
    """How many of a stitch each step makes."""
    for item in walk(tuple(leaf.item for leaf in unit.leaves)):
        if isinstance(item, Stitches) and item.stitch == stitch:
            yield item.count * (item.cluster or 1)
        elif isinstance(item, StartChain) and item.stands_for == stitch:
            yield 1


def _sum(unit: Unit, stitch: str, number: int) -> str:
    content = unit.content or ()
    return "sum" if sum(n.number or 0 for n in content if n.of == stitch) == number else ""


def _doubt(
    one: Moved, found: Sequence[_Found], fitting: Sequence[tuple[_Found, str]]
) -> str | None:
    """Why it is not sure what is meant to go elsewhere."""
    fits = {fit for _, fit in fitting}
    moved = [f for f, _ in fitting]
    stitches = {stitch for f in moved for stitch in f.unit.stitches}
    carried = [i for f in found for i in f.stretch.carried if isinstance(i, StartChain)]
    places = {_targets(f.unit) for f in moved}
    if "part" in fits:
        return _TOGETHER
    if len(fits) > 1:
        return _BOTH
    if not all(f.unit.own for f in moved) or any(looks_back(f.stretch.items) for f in moved):
        return _NOT_OWN
    starts = [f.unit for f in moved if isinstance(f.unit.opener.item, StartChain)]
    if any(u.place is None for u in starts) or any(i.stands_for in stitches for i in carried):
        return _START
    if not one.named and len(places) > 1:
        return _KINDS
    if any(f.unit.place is None and f.stretch.at_joint for f in moved):
        return _NOT_OWN
    if any(f.unit.opener.to_last for f in moved):
        return _TO_LAST
    begun = [f for f in found if f not in moved and isinstance(f.unit.opener.item, Begin)]
    return _BEGINS if any(_targets(f.unit) in places for f in begun) else None


def _targets(unit: Unit) -> object:
    """What a place is said to be, in whatever order; of a step without a place nothing."""
    return frozenset(unit.place.targets) if unit.place is not None else None


# --- where it goes ------------------------------------------------------------------------------


def _there(said: Place, found: _Found) -> Place | None:
    """The other place: which and how many stay as they are; None where that cannot be said."""
    old = found.unit.place
    again = found.unit.opener.again or found.stretch.repeats
    if said.which is Which.EACH and not again and (old is None or old.which not in OPEN_PLACES):
        alone = [item for item in found.stretch.items if not isinstance(item, End)]
        return said if len(alone) == 1 else None
    if said.count > 1 and not _makes(found.unit, said.count):
        return None
    if old is None:
        return replace(said, which=Which.NEXT)
    if said.count > 1:
        one = old.which in (Which.NEXT, Which.THE, Which.FIRST, Which.LAST) and not old.each
        which = Which.NEXT if old.which is Which.THE else old.which
        return replace(said, which=which) if one and old.count in (1, said.count) else None
    several = old.count > 1 and old.which not in (Which.NTH, Which.EVERY)
    return None if several and not old.each else replace(old, targets=said.targets)


def _on_the_like(one: Moved, unit: Unit) -> bool:
    """`dc on dc`, where the copied row makes more than one of them in a place."""
    kinds = [target.of.name for target in one.place.targets]
    of = one.named[0].of if len(one.named) == 1 and _unsaid(one) else ""
    made = sum(one.number or 0 for one in unit.content or () if one.of == of)
    return of in kinds and (unit.content is None or made > 1)


def _one_on_each(said: Place, found: _Found) -> Place | None:
    """The place of stitches that go one on each of so many; None where that cannot be said."""
    item = found.unit.opener.item
    many = isinstance(item, Stitches) and not item.between and not item.together
    old = found.unit.place
    if not many or not isinstance(item, Stitches) or (old is not None and old.which in OPEN_PLACES):
        return None
    return _there(replace(said, count=item.count), found)


def _makes(unit: Unit, number: int) -> bool:
    """Whether it is one step, of so many stitches."""
    match unit.leaves[0].item:
        case Stitches(count=made, cluster=0):
            return len(unit.leaves) == 1 and made == number
    return False


def _placed(unit: Unit, place: Place, said: Span) -> Others:
    """The steps of one place in another: the first says which, the others are in the same."""
    others: Others = {unit.opener.n: _in(unit.opener.item, place, said)}
    for leaf in unit.leaves[1:]:
        if (same := place_of(leaf.item)) is not None and same.targets:
            others[leaf.n] = _in(leaf.item, replace(same, targets=()), said)
    return others


def _in(item: Item, place: Place, said: Span) -> Item:
    place = replace(place, span=said)
    assert isinstance(item, Stitches | Bracket | StartChain | Begin)
    return replace(item, place=place, span=said)


# --- what is asked ------------------------------------------------------------------------------


def _asked(one: Moved, moved: Sequence[_Found], others: Others, said: Span) -> Asked | None:
    """What may be meant besides: what was missed, which of them, and one in each."""
    missed = {n for f in moved for n in f.unit.missed}
    counted = [f.unit for f in moved if f.unit.place and f.unit.place.which in _COUNTED]
    bare = [f.unit for f in moved if f.unit.place is None]
    for unit in (f.unit for f in moved):
        spread = unit.place.count if unit.place and unit.place.which is Which.NEXT else 1
        item = unit.opener.item
        if spread > 1 and isinstance(item, Stitches) and one.place.count == 1 and _unsaid(one):
            whole = replace(item, count=item.count * spread)
            next_ = Place(Which.NEXT, one.place.targets)
            message = f"the copied row goes into {spread} places here, and so does this row"
            into_one: Others = {unit.opener.n: _in(whole, next_, said), **dict.fromkeys(missed)}
            return Asked(message, "if all of them go into one", others | into_one)
    if missed or counted:
        nexts: Others = dict.fromkeys(missed)
        for unit in counted:
            assert unit.place is not None
            which = Which.EACH if unit.place.which is Which.EVERY else Which.NEXT
            nexts |= _placed(unit, Place(which, one.place.targets), said)
        message = "what the copied row misses right before this is missed here too"
        return Asked(message, "if nothing is missed", others | nexts)
    several = [u.opener.item for u in bare if isinstance(u.opener.item, Stitches)]
    if len(bare) > 1:
        message = f"the copied row makes it {len(bare)} times without a place"
        return Asked(f"{message}, and each of these goes there", "otherwise say where each goes")
    if several and several[0].count > 1 and one.place.count == 1 and _unsaid(one):
        number = several[0].count
        apart = Place(Which.NEXT, one.place.targets, number)
        message = f"the copied row makes {number} one by one, and all of them go into one place"
        each: Others = {bare[0].opener.n: _in(several[0], apart, said)}
        return Asked(message, "if they go one by one", others | each)
    return None


_COUNTED = (Which.NTH, Which.EVERY)


def _unsaid(one: Moved) -> bool:
    return not one.named or one.named[0].number is None
