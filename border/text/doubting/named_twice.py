"""A place named twice in the same words, or several at once: `1 dc in sp, ch 3, 1 dc in sp`, `1 sc
over the next 2 loops`, `2 sc in the next 2 loops`; and what is missed behind a repeat.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.nodes import Building
from border.text.tree import (
    SPACES,
    AtOnce,
    Chains,
    Item,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)


def tell_named_twice(items: Sequence[Item], b: Building) -> None:
    """Tell of what these steps may mean besides."""
    for n, item in enumerate(items):
        if isinstance(item, Repeat):
            tell_named_twice(item.items, b)
        _tell_one_space(items[n : n + 3], b)
        _tell_several_places(item, b)
    for before, skip in pairwise(items):
        _tell_missed_behind(before, skip, b)


def _tell_one_space(steps: Sequence[Item], b: Building) -> None:
    match steps:
        case [
            Stitches(place=Place(Which.THE, (Whole(of),), 1)) as first,
            Chains() as chains,
            Stitches(place=Place(Which.THE, (Whole(again),), 1)) as last,
        ] if of == again and of.name in SPACES and first.stitch == last.stitch:
            assert last.place is not None
            same = replace(last, place=Place(Which.SAME, last.place.targets))
            if not b.is_asked(last.span):
                b.tell(
                    "perhaps-one-place",
                    f"this is taken as {b.written(last)}, the one behind that of the step before",
                    f"write {b.written(same)} if both go into one",
                    first.span.to(chains.span).to(last.span),
                )


def _tell_several_places(item: Item, b: Building) -> None:
    """`1 sc over the next 2 loops`, `2 sc in the next 2 loops`."""
    match item:
        case Stitches(made, place=Place(Which.NEXT, (Whole(of),), count, each=False) as place) if (
            count > 1 and of.name in SPACES
        ):
            one, all_ = (
                replace(item, count=n, place=replace(place, each=True)) for n in (1, count)
            )
            if made == 1 and b.said_in(place.span) & _OVER:
                once = replace(item, place=Place(Which.NEXT, (AtOnce(count, of),)))
                help_ = f"write {b.written(once)} if one stitch takes up all of them"
            elif made == count and not (item.together or b.is_asked(item.span)):
                help_ = (
                    f"write {b.written(one)} to say so, or {b.written(all_)} if so many go into "
                )
                help_ += "each"
            else:
                return
            message = f"this is taken as {count}, one in each"
            b.tell("perhaps-one-place", message, help_, item.span)


_OVER = frozenset({"over", "through", "round", "around"})


def _tell_missed_behind(before: Item, skip: Item, b: Building) -> None:
    match before, skip:
        case Repeat(times=None), Skip(target=Whole()):
            said = b.said_in(skip.span)
            if "last" in said or not said & _MISSING:
                return
            b.tell(
                "perhaps-missed",
                "this is missed once, where the row ends",
                f'write it inside the repeat, "…, {b.written(skip)}; repeat from *", if it is '
                "missed each time",
                skip.span,
            )


_MISSING = frozenset({"skipping", "missing", "omitting", "passing", "leaving"})
