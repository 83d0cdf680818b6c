"""What only the row below settles of a row's steps: how many come each time, where the last is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.building.of_groups import group_of
from border.text.nodes import Building
from border.text.stands_below import come_together
from border.text.steps import walk
from border.text.tree import (
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Text,
    ToLast,
    Which,
    Whole,
)
from border.text.wording.last_stitches import TURNING
from border.text.wording.missed import OF_EACH

if TYPE_CHECKING:
    pass


def up_to_last(items: list[Item], b: Building) -> list[Item]:
    """`*ch 2, 1 dc in next dc; repeat from *, ch 2, 1 dc in 3rd of the 5 ch`: where those stand for
    the last dc of the row below, the repeat ends before it; with nothing else behind the repeat
    they are that of its last time."""
    at = next((n for n, i in enumerate(items) if isinstance(i, Repeat) and i.star), len(items))
    match items[at:]:
        case [
            Repeat(
                items=[*steps, Stitches(1, stitch, Place(Which.NEXT, (Whole(kind),), 1))],
                times=None,
                to_last=None,
                star=True,
            ) as repeat,
            *between,
            Stitches(1, again, Place(Which.LAST, (Whole(Kind("st")),), 1)) as last,
        ] if stitch == again and kind.name == _begun_as(b):
            named = any(t.name == TURNING for t in b.terminals_in(last.span))
            if named and all(map(_over_a_space, (*steps, *between))):
                up_to = replace(repeat, to_last=ToLast(1, Whole(kind)))
                return [*items[:at], up_to, *(between or steps), last]
    return items


def _over_a_space(item: Item) -> bool:
    """Whether a step takes no stitch of the row below: chains, or what fills a space."""
    match item:
        case Chains() | Picots() | Stitches(place=Place(targets=(Whole(Kind("space" | "loop")),))):
            return True
    return False


def _begun_as(b: Building) -> str:
    """The stitch that the chains stand for with which the row below began."""
    below = [i for i in b.below.items if not isinstance(i, End)] if b.below is not None else []
    match below:
        case [StartChain(stands_for=str(stitch)), *_]:
            return stitch
        case [Chains(count), *_]:
            made = (i.stitch for i in walk(below) if isinstance(i, Stitches))
            return next((name for name in made if 2 <= STITCHES[name].height <= count), "")
    return ""


def each_in_turn(item: Item, b: Building) -> Item:
    """`1 dc in each dc, 3 ch; repeat`: in each of those that the scallop below has; or where it
    has none, in the next each time. Both are told."""
    match item:
        case Stitches(place=Place(which=Which.EACH, targets=(target,)) as place):
            pass
        case Bracket(place=Place(which=Which.EACH, targets=(target,)) as place):
            pass
        case _:
            return item
    count = _so_many(target.of, b.below) if isinstance(target, Whole) else 0
    if item.parted and not count:
        return item  # `1 sc in each ch-1 space, with ch 3 between`: how many is not said
    one = replace(item, place=replace(place, which=Which.THE), parted=0)
    message = "taken for one each time, since more is worked before the next"
    if count:
        in_next = replace(place, which=Which.NEXT, count=count, each=True)
        one = replace(item, place=in_next)
        message = f"taken for {count} each time, as many as the row below makes together"
    b.tell("place-assumed", message, f"write {b.written(one)} to say so", item.span)
    return one


def _so_many(kind: Kind, below: Text | None) -> int:
    """How many of a kind the row below makes together."""
    count = group_of(below)[kind.name]
    return count or (come_together(below, kind) if below is not None else 0)


def missed_anyway(items: Sequence[Item], b: Building) -> bool:
    """`1 dc in each dc, with 5 ch between, missing the 3 ch; repeat`: whether going into each says
    all of it, since the row below makes no groups."""
    match items:
        case [Stitches(place=Place(which=Which.EACH)), Skip()]:
            return any(t.type == "SKIP" and t.name == OF_EACH for t in b.terminals)
        case _:
            return False
