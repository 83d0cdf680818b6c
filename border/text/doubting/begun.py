"""Where a round begins: chains at its head, its first place, the start that it meets."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import dropwhile

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.steps import steps
from border.text.tree import (
    SPACES,
    Begin,
    Bracket,
    Centre,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Place,
    Repeat,
    StartChain,
    Stitches,
    Which,
    Whole,
)
from border.text.written_places import write_place


def tell_head(items: Sequence[Item], b: Building) -> None:
    """`ch 3, 7 dc in next loop, 1 dc in dc; repeat`: are these chains made once, as a stitch?

    Not where as many are missed under them. So is `turn with ch 5`, and chains where a round
    begins in a place.
    """
    turned = bool(items) and _is_turn(items[0])
    items = list(dropwhile(lambda item: isinstance(item, Begin) or _is_turn(item), items))
    if len(items) < 2:
        return
    _tell_one_more(items, b)
    if not isinstance(items[0], Chains) or items[0].count < 2:
        return
    stitch = next((i for i in items if isinstance(i, Stitches)), None)
    same = stitch is not None and stitch.place is not None and stitch.place.which is Which.SAME
    if same and len(items) == _ALL:
        return  # `begin in the ring, ch 3, 19 dc in it`
    height = STITCHES[stitch.stitch].height if stitch is not None else 0
    more = [i.count for i in items[1:] if isinstance(i, Chains)]
    first = items[1].items[0] if isinstance(items[1], Bracket) else items[1]
    direct = isinstance(first, Stitches) and items[0].count == height > 1
    group = first is items[1] and isinstance(first, Stitches) and first.count > 1
    direct |= group and items[0].count == height + 1 > 2
    with_chains = height > 1 and items[0].count - height in more
    with_chains |= turned and any(items[0].count - tall in more for tall in _TALL)
    if direct or with_chains or b.joined:
        n = items[0].count
        b.tell(
            "perhaps-start-chain",
            f"ch {n} at the head of the row is made again with each repeat",
            f'if it stands for the first stitch, put a star behind it: "ch {n}, * … repeat from *"',
            items[0].span,
        )


def _is_turn(item: Item) -> bool:
    return isinstance(item, End) and item.what is Ending.TURN


_ALL = 2
"""Chains and what is worked behind them."""
_TALL = (3, 4)
"""Chains that stand at a turn for one of the usual tall stitches."""


def _tell_one_more(items: Sequence[Item], b: Building) -> None:
    """`ch 3 for 1st dc, 2 dc, 2 ch, skip 2; repeat`: have the others 3 dc, too?"""
    match items:
        case [
            StartChain(stands_for=str(stands_for)) as chain,
            Stitches(count=n, stitch=stitch, place=None) as more,
            _,
            *_,
        ] if stands_for == stitch and n > 1:
            rest = ", ".join(b.written(item) for item in items[2:])
            own = f"{b.written(chain)}, {b.written(more)}, {rest}"
            again = f"{b.written(replace(more, count=n + 1))}, {rest}"
            b.tell(
                "perhaps-start-chain",
                f"the chains at the head are made once, so that the first repeat has {n + 1} of "
                f"these where the others have {n}",
                f'if all have as many, write "{own}, *{again}; repeat from *"',
                chain.span.to(more.span),
            )


def tell_begun_there(items: Sequence[Item], b: Building) -> None:
    """`Begin on the centre of the 5 ch, 1 dc, 5 ch; repeat`: is each dc on the centre of a loop?"""
    match items:
        case [
            Begin(place=Place(targets=(target, *_)) as begun),
            Stitches(place=None) as first,
            *rest,
        ] if target.of not in (Kind("st"), Kind("loop")) or not isinstance(target, Whole):
            if any(isinstance(item, Stitches | Bracket) and item.place for item in rest):
                return
            there = replace(first, place=replace(begun, which=Which.NEXT))
            b.tell(
                "perhaps-leads-on",
                "only the row begins in that place; from there the repeat goes on along the row",
                f'if each repeat goes there, write "{b.written(there)}"',
                first.span,
            )


def tell_last_first(items: Sequence[Item], b: Building) -> None:
    """`6 ch, 1 sc in the last loop, *5 ch, 1 sc in the next loop; repeat`: where a row is turned
    the last that was made is the first as it is worked back."""
    worked = [
        item
        for item in steps(items)
        if isinstance(item, Stitches | Bracket)
        if item.place is None or item.place.which not in (Which.SAME, Which.SKIPPED)
    ]
    first = worked[0] if len(worked) > 1 else None
    if first is None or first.place is None or first.place.which is not Which.LAST:
        return
    here = replace(first, place=replace(first.place, which=Which.FIRST))
    b.tell(
        "perhaps-last-of-each",
        f"this is taken as {b.written(first)}, where the row ends, and more is worked behind it",
        f"write {b.written(here)} if it is the last that was made, from which the work is turned",
        first.span,
    )


def _is_the(place: Place | None, begun_in: Kind) -> bool:
    """Whether a place is `the loop`, of a kind that a round has begun in."""
    match place:
        case Place(Which.THE, targets=(Whole(named), *_)):
            return begun_in.name in SPACES and named.name in SPACES
    return False


def _in_chains(item: Item) -> bool:
    """Whether a round begins in a chain of a loop, or slips up some of its chains."""
    match item:
        case (
            Begin(place=Place(targets=(target,)))
            | Stitches(stitch="ss", place=Place(targets=(target,)))
        ):
            return target == Whole(Kind("ch"))
    return False


def tell_same_as_begun(items: Sequence[Item], b: Building) -> None:
    """`Slip to the loop, 3 ch, 2 tr in the loop`, `Slip to the centre of the loop, *1 dc in loop`,
    `slip stitch up 3 chain, *1 dc in loop`: in the one begun in, or in the next?"""
    match items:
        case [
            Begin() | Stitches() as begun,
            Repeat(items=(Stitches() | Bracket() as first, *_)) | (Stitches() | Bracket() as first),
            *_,
        ] if _in_chains(begun) and _is_the(first.place, Kind("space")):
            b.tell(
                "perhaps-one-place",
                "the round begins in a chain of one, so that this goes into the one behind it",
                'write "begin in next loop" at its head if it goes into the one begun in',
                items[0].span.to(first.span),
            )
        case [
            Begin(place=Place(targets=(Centre(begun_in), *_))),
            Repeat(items=(Stitches() | Bracket() as first, *_)),
            *_,
        ] | [
            Begin(place=Place(targets=(Centre(begun_in), *_))),
            Stitches() | Bracket() as first,
            *_,
        ] if _is_the(first.place, begun_in):
            b.tell(
                "perhaps-one-place",
                "the round begins in the centre of one, so that this goes into the one behind it",
                'write "begin in next loop" at its head if it goes into the one begun in',
                items[0].span.to(first.span),
            )
        case [
            Begin(place=Place(targets=(Whole(begun_in), *_))),
            Chains() | StartChain() as chains,
            Stitches() | Bracket() as first,
            *_,
        ] if _is_the(first.place, begun_in):
            assert first.place is not None
            same, next_ = (
                b.written(replace(first, place=replace(first.place, which=which)))
                for which in (Which.SAME, Which.NEXT)
            )
            b.tell(
                "perhaps-one-place",
                "where the chains at the head stand for a stitch, that stands in the place begun "
                "in, and this goes into the next one",
                f'write "{same}" if it goes into the same one, "{next_}" if not',
                chains.span.to(first.span),
            )


def tell_chains_meet(items: Sequence[Item], b: Building) -> None:
    """`*6 ch, skip 3, 1 sc; repeat from *, ending with 6 ch, join`: do they meet those that the
    round began with, as one loop?"""
    match items:
        case [
            Begin(place=place),
            Repeat(items=(Chains(first), *_), times=None),
            *_,
            Chains(last) as end,
        ]:
            there = write_place(replace(place, which=Which.NEXT), b.terms, b.headings.overrides)
            b.tell(
                "perhaps-instead",
                f"these chains meet the {first} that the round begins with, and are one loop of "
                f"{first + last} with them",
                "where the thread is fastened with a stitch in the place begun in, write it: "
                f'"1 sl st {there}" in place of where the round begins',
                end.span,
            )
        case [Repeat(items=(Chains(first), *_), times=None), Chains(last) as end] if last == first:
            b.tell(
                "perhaps-instead",
                f"these chains meet the {first} that the round began with, and are one loop of "
                f"{first + last} with them",
                "where the last loop is joined in place of its last stitch, leave them out, and "
                'write "join"',
                end.span,
            )
