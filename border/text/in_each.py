"""`3 dc in the next 3 st`, `6 dc in the next 2 loops`: how stitches are shared out over places."""

from __future__ import annotations

from itertools import pairwise
from typing import TypeVar

from msgspec.structs import replace

from border.text.nodes import Building
from border.text.stands_below import chains_stand_singly
from border.text.tree import ST, AtOnce, Bracket, Kind, Place, Skip, Stitches, Which, Whole
from border.text.written_places import write_place

BY_NUMBER = (Which.NEXT, Which.FIRST, Which.LAST, Which.CENTRE)
_Placed = TypeVar("_Placed", Stitches, Bracket)


def with_each(item: _Placed, b: Building) -> _Placed:
    """`N dc in the next M X` without `each` is told, where N is neither M nor 1."""
    place = item.place
    _tell_chains(item, count_of(item), b)
    if place is not None and _tell_at_once(item, place, b):
        return item
    if place is None or place.each or place.count < 2 or place.which not in BY_NUMBER:
        return item
    if isinstance(item, Stitches) and item.count in (1, place.count):
        if item.count == 1 and place.targets == (Whole(Kind("ch")),):
            _tell_chains_or_space(item, place, b)
        return item
    each = replace(place, each=True)
    fixed = replace(item, place=each)
    one = replace(item, place=replace(place, count=1))
    many = write_place(place, b.terms, b.headings.overrides)
    help_ = f"write {b.written(fixed)}"
    if isinstance(item, Stitches) and item.count % place.count == 0:
        share = replace(fixed, count=item.count // place.count)
        help_ += f", or {b.written(share)} where there are {item.count} in all"
    help_ += f", or for one place {b.written(one)}"
    if isinstance(item, Stitches) and item.count < place.count and place.which is Which.NEXT:
        help_ += f"; {_if_fewer(item, place, b)}"
    if isinstance(item, Stitches) and item.count == place.count + 2 and place.which is Which.NEXT:
        over = many.removeprefix("in ").replace("next ", "", 1).removesuffix(" st")
        made = b.written(replace(item, place=None))
        help_ += f', or "{made} over {over} and a chain at each side" where it goes on the chains'
    if place.targets == (Whole(Kind("ch")),):
        space = b.written(_in_space(item, place))
        help_ = f"{help_}; {space} is all in the space of {place.count} chains"
    b.tell("place-unclear", f"how this is shared out {many} is not said", help_, item.span)
    return fixed


def _if_fewer(item: Stitches, place: Place, b: Building) -> str:
    """`3 dc over the next 4`: where some are missed, or worked together."""
    left = place.count - item.count
    missed = b.written(Skip(left, None if place.targets == (Whole(ST),) else place.targets[0]))
    rest = replace(item, count=1, place=replace(place, count=item.count, each=item.count > 1))
    both = replace(place, count=left + 1)
    one = b.written(replace(item, count=left + 1, together=True, place=both))
    return (
        f"where some stay free, {missed} before or behind {b.written(rest)}; where some are drawn "
        f"into one, {one} for those"
    )


def _in_space(item: _Placed, place: Place) -> _Placed:
    """What goes into so many chains, worked into the space that they are."""
    which = Which.NEXT if place.which is Which.FIRST else place.which
    space = (Whole(Kind("space", place.count)),)
    return replace(item, place=replace(place, which=which, targets=space, count=1, each=False))


def all_in(whole: Bracket) -> Bracket:
    """A list in each of the places that are counted for it; in so many chains, in their space."""
    place = whole.place
    if place is None or place.count == 1 or place.which not in BY_NUMBER:
        return whole
    if place.targets == (Whole(Kind("ch")),):
        return _in_space(whole, place)
    return replace(whole, place=replace(place, each=True))


def _tell_chains_or_space(item: Stitches, place: Place, b: Building) -> None:
    """`1 sc in next 5 ch`: five, one in each chain; most books mean one, in the space of five."""
    one = b.written(_in_space(item, place))
    each = b.written(replace(item, place=replace(place, each=True)))
    b.tell(
        "perhaps-one-place",
        f"this is taken as {place.count} stitches, one in each of {place.count} chains",
        f"write {one} if it is one stitch in the space, or {each} if it is one in each",
        item.span,
    )


def count_of(placed: Stitches | Bracket) -> int:
    """How many of them go into one place; of a bracket, more than one."""
    return placed.count if isinstance(placed, Stitches) else 2


def _tell_chains(item: Stitches | Bracket, made: int, b: Building) -> None:
    """`1 treble in the chain`, behind row 1 `in the next chain`, `3 treble in each of the 5 chain`:
    in single chains, or in the loop of those that stand together. `made`: in each of them."""
    place = item.place
    if place is None or place.targets != (Whole(Kind("ch")),):
        return
    size = 1 if _said_one(item, b) else None
    spelled = size or any(
        t.type == "CH" and t.text == "chain" and t.end == item.span.end for t in b.terminals
    )
    next_ = place.which is Which.NEXT and spelled
    match place:
        case Place(which=Which.THE, count=1):
            pass
        case Place(count=1) if next_ and b.round > 1:
            pass
        case Place(which=Which.EACH | Which.FIRST | Which.NEXT, count=1) if (
            made > 1 and b.round > 1
        ):
            pass
        case Place(which=Which.NEXT, count=count, each=True) if count > 1 and made > 1:
            size = count
        case _:
            return
    tell_single_chain(item, b, size)


def _said_one(item: Stitches | Bracket, b: Building) -> bool:
    """Whether `in next 1 ch` is said, which may be a space of one chain."""
    return any(
        number.type == "NUM" and number.number == 1 and t.type == "CH" and t.end == item.span.end
        for number, t in pairwise(b.terminals)
    )


def tell_single_chain(item: Stitches | Bracket, b: Building, size: int | None = None) -> None:
    """That a step is taken to go into single chains, and not into a space of them, of a size."""
    if size is None and chains_stand_singly(b.below):
        return  # chain or loop of chains, it is the same
    place = item.place or Place(Which.NEXT, ())
    several = place.each and place.count > 1
    chain = replace(place, which=Which.NEXT if place.which is Which.THE else place.which)
    whole = replace(chain, which=Which.EACH, count=1, each=False) if several else chain
    loop, single = (
        b.written(replace(item, place=replace(where, targets=(Whole(kind),))))
        for where, kind in ((whole, Kind("space", size)), (chain, Kind("ch")))
    )
    into = f"{place.count} single chains" if several else "a single chain"
    message = f"this is taken to go into {into}"
    help_ = f"write {loop} if it goes into the whole loop of chains, otherwise {single}"
    b.tell("perhaps-one-place", message, help_, item.span)


def _tell_at_once(item: Stitches | Bracket, place: Place, b: Building) -> bool:
    """`1 dc in the next 3 loops together, *ch 3, 1 dc in the next 3 loops`: again together?
    Whether this was asked."""
    for target in place.targets:
        if isinstance(target, AtOnce):
            b.at_once.add(target.of)
            return False
        several = place.count > 1 and place.which in (Which.NEXT, Which.FIRST, Which.LAST)
        unsaid = target.of == ST and len(b.at_once) == 1
        of = next(iter(b.at_once)) if unsaid else target.of
        if several and not place.each and isinstance(target, Whole) and of in b.at_once:
            if isinstance(item, Stitches) and (item.count > 1 or item.together):
                return False
            once = replace(place, targets=(AtOnce(place.count, of),), count=1)
            each = replace(place, targets=(Whole(of),), each=True)
            ways = [b.written(replace(item, place=way)) for way in (once, each)]
            message = "this may go into all of them at once, as before in this row, or into each"
            b.tell("place-unclear", message, f"write {ways[0]} or {ways[1]}", item.span)
            return True
    return False
