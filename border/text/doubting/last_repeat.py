"""The last repeat of a row: what is said of it, what stands behind it, and whether it is made."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.tree import (
    Begin,
    Bracket,
    Chains,
    Item,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
)
from border.text.written_places import write_target


def tell_instead(items: Sequence[Item], b: Building) -> None:
    """`*1 sc in next loop, 5 ch; repeat from *, ending with 2 ch, 1 dc in first sc`: 7 chains?"""
    for before, item in pairwise(items):
        match before, item:
            case (
                Repeat(items=[*steps, Chains() as own], to_last=None)
                | Repeat(items=[*steps, Chains() as own, Skip()], to_last=None),
                Chains() as chains,
            ) if before.times != 1:
                instead = _last_written_out(steps, chains, b)
                b.tell(
                    "perhaps-instead",
                    f"these are made besides the ch {own.count} that each repeat ends with",
                    f"if they stand in place of the last of those, {instead}",
                    chains.span,
                )


def tell_last_time(items: Sequence[Item], b: Building) -> None:
    """`*7 ch, 1 sc in loop; repeat from *, the last time 9 ch`, `*1 sc in loop, 7 ch; repeat, the
    last time 1 dc in first sc`: in place of the last 7 ch?"""
    for before, item in pairwise(items):
        match before, item:
            case Repeat(items=steps, to_last=None), Chains() | Stitches() if (
                before.times != 1
                and not b.is_asked(item.span)
                and not (isinstance(item, Stitches) and item.stitch == "ss")
            ):
                _tell_besides_chains(steps, item, b)


def tell_chains_last(items: Sequence[Item], b: Building) -> None:
    """`*5 ch, miss 3, 1 sc; repeat from *, ending with 5 ch`: with nothing before the star, these
    come behind the last loop."""
    match [item for item in items if not isinstance(item, Begin)]:
        case [
            Repeat(items=[Chains(), *_, Stitches() | Skip()] as steps, to_last=None),
            Chains() as last,
        ] if not b.is_asked(last.span):
            _tell_besides_chains(steps, last, b)


def _tell_besides_chains(steps: Sequence[Item], item: Item, b: Building) -> None:
    """Ask whether what is made behind a repeat stands in place of chains that it makes."""
    own = next((one for one in reversed(steps) if isinstance(one, Chains)), None)
    if own is not None:
        b.tell(
            "perhaps-instead",
            f"this is made besides the ch {own.count} of each repeat",
            "if it stands in place of the last of those, write the last repeat out with it, and "
            "let the others end before that",
            item.span,
        )


def tell_last_again(items: Sequence[Item], b: Building) -> None:
    """`*5 ch, 1 sc in loop; repeat from *, ending with 1 sc`: one more, or how the last ends?"""
    for before, item in pairwise(items):
        match before, item:
            case (
                Repeat(items=[*_, Stitches() as own], times=None, to_last=None),
                Stitches() as last,
            ) if (own.count, own.stitch) == (last.count, last.stitch) and _ends_there(own, last):
                b.tell(
                    "perhaps-instead",
                    f"this is made besides the {b.written(replace(own, place=None))} that each "
                    "repeat ends with",
                    "leave it out if the last repeat ends with it",
                    last.span,
                )


def tell_without_before(items: Sequence[Item], b: Building) -> None:
    """`*ch 2, 1 dc in next dc; repeat from *, ending with 1 dc in last st`: with no ch 2 before it?
    `…, ending with 4 dc`, where each repeat ends with 3: besides these?"""
    for before, item in pairwise(items):
        if not isinstance(before, Repeat) or before.times is not None or b.is_asked(item.span):
            continue
        behind = next((k for k, one in enumerate(before.items) if _alike_in_kind(one, item)), 0)
        own = before.items[behind]
        if not behind or _is_more(own, item):
            continue
        left = [one for one in before.items[:behind] if not isinstance(one, Skip)]
        made = ", ".join(map(b.written, left or before.items[:1]))
        b.tell(
            "perhaps-instead",
            f"this is made behind the last whole repeat, without {made} before it",
            f"leave it out where it is the {b.written(own)} of that repeat; write {made}, too, "
            "where the row goes on so far",
            item.span,
        )


def _is_more(own: Item, last: Item) -> bool:
    """Whether the last step closes the round, or makes more than one with no place, where each
    repeat makes one: `*3 ch, miss 3, 1 sc; repeat; end with 3 sc`."""
    match own, last:
        case _, Stitches(stitch="ss"):
            return True
        case Stitches(1), Stitches(count, place=None) if count > 1:
            return own.place is None or own.place.count == 1
    return False


def _alike_in_kind(one: Item, other: Item) -> bool:
    """Whether two steps make the same: one stitch, or so many chains."""
    match one, other:
        case Stitches(stitch=stitch), Stitches(stitch=again):
            return stitch == again
        case Chains(count), Chains(again):
            return count == again
    return False


def _ends_there(own: Stitches, last: Stitches) -> bool:
    """Whether the last step may be the one that the last repeat ends with, by its place."""
    return own.place is None or last.place is None or own.place.targets == last.place.targets


def tell_chains_besides(items: Sequence[Item], b: Building) -> None:
    """`*1 sc in next loop, 5 ch; repeat from *; 2 ch, 1 dc in first sc`, with no word of an end."""
    match items:
        case [
            *_,
            Repeat(items=[*_, Chains(own)] | [*_, Chains(own), Skip()], times=None, to_last=None),
            Chains(rest),
            Stitches(1, place=None | Place(which=Which.FIRST)) as up,
        ] if rest < own and STITCHES[up.stitch].height > 1:
            tell_instead(items, b)


def _last_written_out(steps: Sequence[Item], chains: Chains, b: Building) -> str:
    match steps:
        case [Stitches(place=Place(Which.NEXT | Which.THE, (target,), count=1)) as step]:
            last = b.written(replace(step, place=Place(Which.LAST, (target,))))
            to_last = write_target(target, b.terms, many=False, overrides=b.headings.overrides)
            return (
                f'write "repeat from * to last {to_last}, {last}, {b.written(chains)}", with a '
                "star where the repeat begins"
            )
        case _:
            return "write the last repeat out with them, and let the others end before it"


def tell_to_end(items: Sequence[Item], b: Building) -> None:
    """`1 sc in next st, 5 ch, shell in shell to the end`: all of that, or the last of it?"""
    placed = [one for one in items if isinstance(one, Stitches | Bracket) and one.place]
    last = placed[-1] if placed and placed[-1] is items[-1] else None
    if last is None or len(placed) < 2 or last.place is None or last.place.which is not Which.THE:
        return
    each = b.written(replace(last, place=replace(last.place, which=Which.EACH)))
    b.tell(
        "perhaps-of-bracket",
        "all of the row is taken to be worked over and over to the end",
        f'if only the last step is, write "{each}" in its place',
        last.span,
    )
