"""What stands behind an `in each`: nothing is left for it, but many books mean it as they come."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.nodes import Building, Step
from border.text.steps import OPEN_PLACES
from border.text.tree import (
    Bracket,
    Chains,
    End,
    Ending,
    Item,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
)
from border.text.written_steps import write_item


def tell_behind_each(steps: Sequence[Step], b: Building) -> None:
    """`1 dc in each dc, 2 dc in each space`; `1 sc in each space, ch 5` at a list's end."""
    items = [step.item for step in steps]
    ends = [item for item in items if isinstance(item, End)]
    turns = any(end.what is Ending.TURN for end in ends)
    worked = [item for item in items if not isinstance(item, End)]
    _tell_before_each(worked, b)
    for before, item in pairwise(worked):
        if not _in_each(before):
            continue
        span = before.span.to(item.span)
        if _in_each(item) or (isinstance(item, Repeat) and item.times is None):
            b.tell(
                "perhaps-as-they-come",
                "the first of these goes on to the end of the row, so that nothing is left for "
                "the second",
                f"where both are worked as they come, write {_as_they_come(before, item, b)}",
                span,
            )
        elif isinstance(item, Chains) and item is worked[-1] and not turns:
            b.tell(
                "perhaps-as-they-come",
                f"ch {item.count} is made once here, behind the last of these",
                f'write ", with ch {item.count} between" if it is made each time, or '
                f'"(ch {item.count})" if once',
                span,
            )


def _tell_before_each(items: Sequence[Item], b: Building) -> None:
    """`ch 2, skip 2, 1 dc in every 3rd st`: once, or each time?"""
    for one, other, item in zip(items, items[1:], items[2:], strict=False):
        pair = {type(one), type(other)} == {Chains, Skip}
        if pair and _in_each(item):
            chains = one if isinstance(one, Chains) else other
            assert isinstance(chains, Chains)
            b.tell(
                "perhaps-as-they-come",
                "these chains and this skip are made once here, before the first of what follows",
                f'write ", with ch {chains.count} between" behind it, and leave both out, if '
                "they are made each time",
                one.span.to(item.span),
            )


def _as_they_come(first: Item, second: Item, b: Building) -> str:
    """How to write two steps that are each worked wherever their site comes."""
    places = [i.place for i in (first, second) if isinstance(i, Stitches | Bracket)]
    if isinstance(first, Stitches) and isinstance(second, Stitches) and len(places) == 2:
        one, other = places
        if one is not None and other is not None and one.which is other.which is Which.EACH:
            both = replace(one, targets=(*one.targets, *other.targets))
            if replace(first, place=None) == replace(second, place=None):
                return write_item(replace(first, place=both), b.terms, b.headings.overrides)
    nexts = [replace(p, which=Which.NEXT) for p in places if p is not None]
    pair = zip((first, second), nexts, strict=False)
    steps = [write_item(replace(i, place=p), b.terms, b.headings.overrides) for i, p in pair]
    return f'"*{", ".join(steps)}; repeat from *", with the number of each'


def _in_each(item: Item) -> bool:
    match item:
        case Stitches(place=Place(which=which)) | Bracket(place=Place(which=which)):
            return which in OPEN_PLACES
        case _:
            return False
