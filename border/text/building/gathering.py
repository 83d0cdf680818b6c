"""`…, all in next X`: the steps before it go into one place."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.building.brackets import in_place
from border.text.building.places import build_union
from border.text.building.repeats import Listed
from border.text.doubting.lists_asked import same_backwards
from border.text.nodes import Building, Step, is_token, is_tree
from border.text.tree import (
    Chains,
    End,
    Item,
    Picots,
    Repeat,
    StartChain,
    Stitches,
)

if TYPE_CHECKING:
    from lark import Token, Tree

    from border.text.terminals import Terminal


def gather(node: Tree[Token], top: Listed, b: Building) -> None:
    """`…, all in next X`: the list back to the last placed stitch, skip or repeat mark."""
    members = [c for c in node.children if is_tree(c, "member")]
    place = build_union(members, b, any(is_token(c, "ATONCE") for c in node.children))
    gathered: list[Step] = []
    while top.steps and _gathers(top.steps[-1].item):
        gathered.insert(0, top.steps.pop())
    turned = bool(top.steps) and all(isinstance(step.item, End) for step in top.steps)
    if turned and len(gathered) > 1 and _rises(gathered[0].item):
        top.steps.append(gathered.pop(0))  # `turn, 5 ch, 2 dc, 2 ch, 2 dc, all in the loop`
    said = next(b.of(child) for child in node.children if is_token(child, "ALLIN"))
    while said.text.startswith("both") and gathered and isinstance(gathered[0].item, Chains):
        top.steps.append(gathered.pop(0))  # both are two stitches
    if not any(isinstance(step.item, Stitches | StartChain | Repeat) for step in gathered):
        top.steps += gathered
        help_ = "write the stitches before it: 2 dc, ch 2, 2 dc, all in next space"
        raise b.misread('no stitches stand before this "all in"', help_, node)
    items = tuple(step.item for step in gathered)
    span = items[0].span.to(b.span(node))
    if any(step.hard for step in gathered[1:]):
        message = "all from the last place on is taken to go here, in spite of the stop in between"
        help_ = "put brackets round what goes there: (…) in next st"
        b.tell("perhaps-one-place", message, help_, span)
    elif (last := _runs_on(items, said, b)) is not None:
        only = b.written(replace(last, place=place, span=span))
        message = "all from the last place on is taken to go here"
        b.tell("perhaps-one-place", message, f"write {only}, if only these do", span)
    top.steps.append(Step(in_place(items, place, b, node.children, span), gathered[0].hard))


def _rises(item: Item) -> bool:
    """Whether a step at the head of a turned row is the chains that it rises by."""
    return isinstance(item, Chains) and item.count > _LOW


_LOW = 2
"""Fewer chains than for a tall stitch."""


def _runs_on(items: Sequence[Item], said: Terminal, b: Building) -> Stitches | None:
    """The several stitches right before `all in one`, which may be all that go there: `4 dc, 3 dc
    all in one stitch`; None where a comma or the look of a shell says that the list does."""
    at = next(n for n, terminal in enumerate(b.terminals) if terminal is said)
    several = isinstance(last := items[-1], Stitches) and last.count > 1
    shell = len(items) < 2 or b.terminals[at - 1].type == "SEP" or same_backwards(items)
    return last if isinstance(last, Stitches) and several and not shell else None


def _gathers(item: Item) -> bool:
    match item:
        case Chains() | Picots():
            return True
        case Stitches() | StartChain():
            return item.place is None
        case Repeat():
            return not item.star and item.times is not None and all(map(_gathers, item.items))
        case _:
            return False
