"""`3 dc in the next 3 st`, `6 dc in the next 2 loops`: how stitches are shared out over places."""

from __future__ import annotations

from typing import TypeVar

from msgspec.structs import replace

from border.text.doubts import tell_at_once, tell_chains
from border.text.nodes import Building
from border.text.tree import Bracket, Kind, Place, Stitches, Which, Whole
from border.text.written_places import write_place

BY_NUMBER = (Which.NEXT, Which.FIRST, Which.LAST, Which.CENTRE)
_Placed = TypeVar("_Placed", Stitches, Bracket)


def with_each(item: _Placed, b: Building) -> _Placed:
    """`N dc in the next M X` without `each` is told, where N is neither M nor 1."""
    place = item.place
    tell_chains(item, count_of(item), b)
    if place is not None and tell_at_once(item, place, b):
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
    if place.targets == (Whole(Kind("ch")),):
        in_space = b.written(_in_space(item, place))
        help_ = f"{help_}; {in_space} is all in the space of {place.count} chains"
    b.tell("place-unclear", f"how this is shared out {many} is not said", help_, item.span)
    return fixed


def _in_space(item: _Placed, place: Place) -> _Placed:
    """What goes into so many chains, worked into the space that they are."""
    which = Which.NEXT if place.which is Which.FIRST else place.which
    space = (Whole(Kind("space", place.count)),)
    return replace(item, place=replace(place, which=which, targets=space, count=1, each=False))


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
