"""Chains with a stitch behind them that may be a picot, or be worked on by the row itself."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.findings import Span
from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.stands_below import stand_alone
from border.text.steps import walk
from border.text.tree import (
    SPACES,
    Bracket,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)
from border.text.wording.picots_named import AGAIN, APART, CLOSED, DOUBLE, LEAF, PARTED, SIZED
from border.text.wording.rings import CLOSING, COUNTED, ROUND_CLOSED, TOPPED


def tell_ring(chains: Chains, closing: Item, b: Building) -> None:
    """`ch 5, 1 sl st in first ch`: a picot, or a stitch into the row below?"""
    below = b.written(closing)
    b.tell(
        "place-unclear",
        "this may close the chains before it into a picot, or go into the row below",
        f"write picot of {chains.count} or ch {chains.count}; {below}",
        chains.span.to(closing.span),
    )


class _Doubt(Struct, frozen=True):
    """What is told of a picot by the name that it was given on the way."""

    code: str
    message: str
    help_: str


_NAMED = {
    # `p (5 ch, 1 sc in 2nd)`: the 2nd from the hook, or of the 5?
    COUNTED: _Doubt(
        "perhaps-picot",
        "the chain that closes this is counted from the hook, so that the picot is of {0}",
        "if it is counted from the first chain, write the picot with as many as it closes: "
        '"picot of 4"',
    ),
    # `5 ch p`, without a comma
    SIZED: _Doubt(
        "perhaps-picot",
        "these chains and the picot are taken for one, a picot of {0}",
        'write "picot of {0}" to say so; where the chains stand before a picot, "ch {0}, picot"',
    ),
    # `p ch 4`, without a comma
    APART: _Doubt(
        "perhaps-picot",
        "the chains right behind this picot are taken to be made behind it",
        "put a comma between them to say so; where they are the picot itself, write it with its "
        'number: "picot of 4"',
    ),
    # `purl of 4 chain and 1 slip stitch`
    CLOSED: _Doubt(
        "perhaps-picot",
        "the stitch behind these chains is taken to close them into the picot, and makes nothing "
        "on the row",
        'write "picot of {0}" to say so; where the stitch is one of the row, put it behind a comma',
    ),
    # `purl of 4 chain and 1 dc`
    PARTED: _Doubt(
        "perhaps-picot",
        "the stitch behind this picot is taken to be one of the row; it may only close the picot",
        'write "picot of {0}" without the stitch if it closes it; if not, "picot of {0}" and a '
        "comma before the stitch",
    ),
    # `double p`
    DOUBLE: _Doubt(
        "perhaps-picot",
        "a double picot is taken for two picots, a treble one for three",
        'write "2 picots", "3 picots" to say so, or its steps as the book shows them',
    ),
    # `picot, 4 ch, 1 sc in 1st`
    AGAIN: _Doubt(
        "perhaps-picot",
        "this is taken for another picot; it may only say how the picot before it is made",
        'write "picot of {0}" once if it is the same one, or "picot, picot of {0}" for two',
    ),
    # `ch 5, 1 sc in 2nd ch from hook, 1 hdc in next, 1 dc in next 2`
    LEAF: _Doubt(
        "perhaps-just-made",
        "this is taken for a picot of {0}, and the stitches behind it go into the row below; they "
        "may be worked down the chains just made",
        "if so, write what it comes to on the row, as a picot or chains, without the stitches "
        'that are worked down them; if not, write "picot of {0}"',
    ),
}


def tell_named(name: str, size: int, b: Building, span: Span) -> None:
    """What a picot may be besides, by the name that it was given on the way; nothing for others."""
    if name in _NAMED:
        doubt = _NAMED[name]
        b.tell(doubt.code, doubt.message.format(size), doubt.help_.format(size), span)


def tell_round_closed(chains: Chains, b: Building) -> None:
    """`*…, 4 ch, 1 sl st in the first; repeat from *, …, 4 ch, 1 sl st in the first`: is the last
    sl st that of a picot, or that which joins the round?"""
    if any(t.name == ROUND_CLOSED for t in b.terminals_in(chains.span)):
        b.tell(
            "perhaps-picot",
            "the stitch behind these chains is taken to join the round; it may close them into a "
            "picot, like those before",
            f"write picot of {chains.count}, and then how the round is joined, if so; or "
            f'"ch {chains.count}, join"',
            chains.span,
        )


def tell_topped(before: Item, picot: Item, b: Building) -> None:
    """`5 tr in the sc, 3 ch, 1 sc in the top of the dc` over sc and dc that stand alone by turns:
    on the dc just made, or on the one below?"""
    names = {t.name for t in b.terminals_in(picot.span)} if isinstance(picot, Picots) else set()
    made = [one for one in walk([before]) if isinstance(one, Stitches)]
    if TOPPED not in names or not made or not stand_alone(b.below, made[-1].stitch):
        return
    assert isinstance(picot, Picots)
    of = Kind(made[-1].stitch)
    place = before.place if isinstance(before, Stitches | Bracket) else None
    if place is not None and any(target.of == of for target in place.targets):
        return  # `5 dc in the dc, 3 ch, 1 sc in the top of the dc`: the one below is worked
    below = Stitches(1, "sc", Place(Which.THE, (Whole(of),)), span=picot.span)
    b.tell(
        "perhaps-picot",
        f"this is taken for a picot of {picot.chains}, closed on the stitch just made; it may be "
        "chains, and a stitch into the row below",
        f"write picot of {picot.chains} to say so, or ch {picot.chains}; {b.written(below)}",
        picot.span,
    )


def may_be_picot(since: Sequence[Item], closing: Item) -> bool:
    """`5 chain, 1 slip in the same stitch`; with 1 sc only behind stitches without a place."""
    match closing:
        case Stitches(1, "ss" | "sc" as name, Place(targets=() | (Whole(Kind("st")),))):
            chains = since[-1] if since else None
            bare = len(since) > 1 and isinstance(since[-2], Stitches)
            return isinstance(chains, Chains) and chains.count > 2 and (bare or name == "ss")
        case _:
            return False


def may_be_picot_on(worked: Item, chains: Item, closing: Item) -> bool:
    """`1 sc in each of 4 st, ch 4, 1 sc in same st`, `3 dc in next, ch 3, 1 sc in same st`: a loop
    has one stitch of a kind at either end; a picot closes on what may be any."""
    match worked, chains, closing:
        case (
            Stitches(count, stitch, Place(count=places)),
            Chains(size),
            Stitches(1, "sc", Place(Which.SAME, targets=() | (Whole(Kind("st")),))),
        ):
            return size > 2 and (count, stitch, places) != (1, "sc", 1)
        case _:
            return False


def tell_picot(chains: Item, b: Building, to: Span) -> None:
    """That chains with a stitch in the same place behind them may be a picot."""
    assert isinstance(chains, Chains)
    b.tell(
        "perhaps-picot",
        f"these {chains.count} chains are taken to stand as a loop on the row",
        f"write picot of {chains.count} if this closes them into a ring on that stitch",
        chains.span.to(to),
    )


class Pair(Struct, frozen=True):
    """A step of a list, `item`, and the one `before` it, with what stands around them.

    `worked`: the step before both. `into`: the space that was worked into last. `behind`: the step
    behind both.
    """

    before: Item
    item: Item
    worked: Item | None
    into: Kind | None
    behind: Item | None


def tell_perhaps_ring(pair: Pair, b: Building) -> bool:
    """`1 dc, ch 5, 1 sc in last dc`, `ch 4, 1 sl st in the dc`, `ch 8, 1 sc in 5th ch`: a picot?
    Whether this was asked."""
    chains, closing = pair.before, pair.item
    if not isinstance(chains, Chains) or chains.count < 3:
        return False
    size = chains.count
    made = pair.worked if isinstance(pair.worked, Stitches) else None
    match closing:
        case Stitches(1, "sc" | "ss", Place(which=Which.LAST, targets=(Whole(of),), count=1)):
            perhaps = made is not None and made.stitch == of.name
        case Stitches(1, "sc" | "ss", Place(Which.NTH, (Whole(Kind("ch")),), nth)):
            perhaps, size = 3 <= nth <= size, nth
        case Stitches(1, "ss", Place(Which.NTH, (Whole(Kind("st")),), nth)):
            perhaps, size = 3 <= nth <= size, nth
        case Stitches(1, "sc" | "ss" as name, Place(Which.SAME, (Whole(of),))) if (
            pair.into is not None
        ):
            like = made is not None and made.stitch == of.name
            perhaps = of == Kind("st") or (like and name == "ss")
        case Stitches(1, "sc" | "ss" as name, Place(Which.THE | Which.NTH, (Whole(of),), nth)) if (
            made is not None
        ):
            last = nth == made.count > 1 or (name == "ss" and nth == 1)
            last |= nth == 1 and _goes_on_there(pair.behind)
            perhaps = made.stitch == of.name and last
        case _:
            return False
    if perhaps:
        rest = f"ch {chains.count - size}, " if chains.count > size else ""
        below = b.written(closing)
        b.tell(
            "perhaps-picot",
            "this is taken to go into the row below; it may close the chains into a picot",
            f"write {rest}picot of {size} if it does, or ch {chains.count}; {below} if not",
            chains.span.to(closing.span),
        )
    return perhaps


def _goes_on_there(behind: Item | None) -> bool:
    """Whether a row goes on as if chains had been closed on the stitch before them: it works into
    the same place, or misses some with no chains over them."""
    placed = behind.place if isinstance(behind, Stitches) else None
    return isinstance(behind, Skip) or (placed is not None and placed.which is Which.SAME)


def space_of(item: Item | None, before: Kind | None) -> Kind | None:
    """The space or loop that the last step with a place went into; `before` is that of the steps
    before this one."""
    match item:
        case (
            Stitches(place=Place(which=which, targets=targets))
            | Bracket(place=Place(which=which, targets=targets))
        ):
            if which is Which.SAME:
                return before
            kind = targets[-1].of if targets else None
            return kind if kind is not None and kind.name in SPACES else None
        case _:
            return before


def tell_just_made(pair: Pair, b: Building) -> bool:
    """`ch 5, 1 dc in 1st of 5 ch`, `ch 6, 1 sc in 2nd ch, 1 hdc in next`, `1 sc in loop, ch 3, 2 dc
    in same sc`, `1 dc, ch 7, 1 sl st in 4th of the 7 ch`: into what this row has just made?
    Whether this was asked.
    """
    before, item = pair.before, pair.item
    if not isinstance(item, Stitches):
        return False
    if isinstance(before, Picots) and isinstance(pair.worked, Chains):
        # `ch 6, 1 sc in 4th ch from hook, 1 sc in each of next 2 ch`: a picot on its stalk
        perhaps = _goes_down(pair.worked, item)
    elif isinstance(before, Skip) and isinstance(pair.worked, Chains):
        size = pair.worked.count - before.count
        perhaps = before.count <= _TURNED and (_fills(size, item) or _on_the_others(size, item, b))
    else:
        perhaps = isinstance(before, Chains) and _in_chains(before.count, item, pair, b)
    if perhaps:
        b.tell(
            "perhaps-just-made",
            "this is taken to go into the row below; it may go into what this row has just made",
            "if so, write what it comes to on the row, as a picot, or a figure with a name of its "
            f"own; if not, keep it: {b.written(item)}",
            (pair.worked if isinstance(before, Skip) and pair.worked else before).span.to(
                item.span
            ),
        )
    return perhaps


def _goes_down(stalk: Chains, item: Stitches) -> bool:
    """Whether so many chains are worked on, at most, as stand before a picot."""
    match item.place:
        case Place(Which.NEXT, (Whole(Kind("ch")),), count):
            return count <= stalk.count and (item.place.each or count in (1, item.count))
    return False


_TURNED = 3
"""Of chains that are worked down no more are missed from the hook."""


def _fills(size: int, item: Stitches) -> bool:
    """Whether one stitch goes into each of `size` chains, or of all but the last: `7 ch, miss 1, 1
    dc in each of 6 ch`, `6 ch, 1 dc in each of 5 ch`."""
    match item.place:
        case Place(Which.NEXT, (Whole(Kind("ch")),), count):
            single = item.place.each or count == item.count
            return size > 2 and count in (size, size - 1) and single and item.count in (1, count)
    return False


def _on_the_others(size: int, item: Stitches, b: Building) -> bool:
    """`10 ch, miss 1, 1 dc on each of the other 9`: those of the chains."""
    place = item.place
    return place is not None and place.count == size and "other" in b.said_in(item.span)


def _in_chains(size: int, item: Stitches, pair: Pair, b: Building) -> bool:
    """Whether a step may go into the `size` chains before it."""
    behind, worked = pair.behind, pair.worked
    if _fills(size, item):
        return True
    even = (isinstance(behind, Chains) and behind.count == size) or worked is item  # a mesh
    match item.place:
        case Place(Which.THE, (Whole(Kind("space", of, None)),), 1):
            return item.count > 1 and of == size > 2 and not even  # `5 ch, 3 dc under the 5 ch`
        case Place(Which.THE, (Part(1, Kind("ch" | "st"), Kind("ch" | "space", of)),), 1):
            return of in (None, size)
        case Place(Which.THE, (Part(nth, Kind("ch" | "st"), Kind("space", of)),), 1) if nth > 1:
            closes = item.count == 1 and item.stitch in CLOSING and of == size
            return closes and isinstance(worked, Stitches) and not even
        case Place(Which.NTH, (Whole(Kind("ch")),), nth):
            return b.round > 1 and nth <= size
        case Place(Which.FIRST, (target, *_), 1) if size > 2:
            several = item.count > 1 and target == Whole(Kind("ch"))  # `5 ch, 3 dc in first ch`
            # `4 ch, 2 dc in the first`
            return several or (b.round > 1 and _may_be_made(target.of, pair.before, item, b))
        case Place(Which.SAME, (Whole(Kind("space", of)),)) if pair.into is None:
            return item.count > 1 and of in (None, size)  # `4 ch, 4 tr under the same 4 ch`
        case Place(Which.SAME, (Whole(Kind(name)),)) if pair.into is not None and name in STITCHES:
            return isinstance(worked, Stitches) and worked.stitch == name
    return False


def _may_be_made(kind: Kind, chains: Item, item: Item, b: Building) -> bool:
    """Whether a row may have made one of a kind before its last chains: no loop or stitch that is
    named, where no such thing stands there. `In the first`, of no name, may be their first."""
    starts = [t.start for t in b.terminals_in(item.span)]
    if len(set(starts)) < len(starts):
        return True
    before = [t for t in b.terminals if t.start < chains.span.start]
    if kind.name in SPACES:
        return any(t.type == "CH" for t in before)
    return kind.name not in STITCHES or any(t.name == kind.name for t in before)


def tell_ring_filled(before: Item, item: Item, picot: int, b: Building) -> None:
    """`12 ch, 1 sl st in the first to form a ring, 3 ch, 16 dc in the ring`: of the row below, or
    the one just made? `picot`: the size of one that was closed before, or 0."""
    inside = isinstance(item, Bracket) and any(isinstance(x, Picots) for x in item.items)
    closed = isinstance(before, Picots)
    joined = isinstance(before, End) and before.what is Ending.JOIN
    match item:
        case (
            Stitches(place=Place(Which.THE, (Whole(Kind("loop")),), 1) as place)
            | Bracket(place=Place(Which.THE, (Whole(Kind("loop")),), 1) as place)
        ) if b.said_in(place.span) & {"ring", "circle"}:
            below = inside or closed or joined or (isinstance(before, Chains) and picot > 0)
            in_ = "in"
        case Stitches(count, place=Place(which=Which.SAME)) if count > 2:
            below = closed and "it" in b.said_in(item.span)  # `into it 12 dc`
            in_ = "on"
        case _:
            return
    if below:
        b.tell(
            "perhaps-just-made",
            f"this is taken as {b.written(item)}, {in_} the row below; the ring just made may be "
            "meant",
            "if so, write what it comes to on the row, as a figure with a name of its own",
            before.span.to(item.span),
        )


def tell_rings_inside(before: Item, item: Item, b: Building) -> None:
    """`3 dc, (5 ch, 1 sc in the same place) 3 times`: loops on the row, or picots?"""
    match before, item:
        case (
            Stitches(place=None),
            Repeat(items=(chains, Stitches(stitch="sc", place=Place(Which.SAME)) as closing)),
        ):
            if may_be_picot((before, chains), closing):
                tell_picot(chains, b, closing.span)
