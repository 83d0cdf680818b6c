"""Chains fastened back into what was just made, as a step, and what fills them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Span
from border.text.fastening import (
    FASTENED_BACK,
    from_hook,
    made_before,
    of_place,
    of_so_many,
)
from border.text.nodes import Building, Step
from border.text.shaping.arches import HOOK, RUN, UNSAID
from border.text.terminals import Terminal
from border.text.tree import (
    Arch,
    Bracket,
    Chains,
    Item,
    Picots,
    Repeat,
    Stitches,
    Which,
)
from border.text.written_places import write_ordinal

if TYPE_CHECKING:
    from lark import Token, Tree


def build_arch(node: Tree[Token], steps: Sequence[Step], b: Building) -> Arch:
    """The chains between two turns, fastened in a stitch of the steps before; not filled yet."""
    arch, named = (b.of(child) for child in node.children)  # type: ignore[arg-type]
    span, before = b.span(node), _since_arch(steps)
    if before and isinstance(before[-1], Chains):
        help_ = "make all the chains of the arch in one place, before the turn or behind it"
        raise b.misread("chains stand on both sides of this turn", help_, node, code="turn-inside")
    back = _back(named, before)
    if back is None:
        message = "which of the stitches just made these chains are fastened in cannot be told"
        raise b.misread(message, FASTENED_BACK, node, code="turn-inside")
    if named.name.endswith(f" {UNSAID}"):
        _tell_from_where(named.number, back, before, b, span)
    if not arch.name:
        b.tell(
            "fastening-assumed",
            "with which stitch these chains are fastened is not said: it is taken to be a slip "
            "stitch",
            'say it: "fasten with a sl st in", "fasten with 1 sc in"',
            span,
        )
    return Arch(arch.number, back, (), arch.name or "ss", span=span)


def _tell_from_where(nth: int, back: int, before: Sequence[Item], b: Building, span: Span) -> None:
    """`8 sc, ch 6, turn, fasten back in 4th sc`: from the hook, or of the 8 as they were made?"""
    made, _ = made_before(before, len(before))
    other = made[0].all + 1 - nth if made else 0
    if other > 1 and other != back:
        b.tell(
            "perhaps-counted-on",
            f"the {write_ordinal(nth)} is counted back from the hook; it may be that of the "
            f"{made[0].all} just made",
            f'write "in the {write_ordinal(other)} st from hook" if so, and '
            f'"in the {write_ordinal(nth)} st from hook" if not',
            span,
        )


def _since_arch(steps: Sequence[Step]) -> list[Item]:
    """The steps from the last arch on: what was made before that is not counted back to."""
    found: list[Item] = []
    for step in reversed(steps):
        found.append(step.item)
        if isinstance(step.item, Arch):
            break
    return found[::-1]


def _back(named: Terminal, before: Sequence[Item]) -> int | None:
    """The stitch that is named, counted from the hook; None where it cannot be told."""
    kind = named.kind
    assert kind is not None
    how, _, which = named.name.partition(" ")
    made, whole = made_before(before, len(before))
    if which == UNSAID and named.number == 1 and made:
        return made[0].all  # `in the first dc`: back over all that were just made
    if how == HOOK and kind.name == "st":
        return named.number
    if how == HOOK:
        return from_hook(made, named.number, kind.name)
    if int(which) > 0 and not whole:
        return None
    if how == RUN:
        return of_so_many(made, named.number, kind.size or 0, kind.stitch, int(which))
    return of_place(made, named.number, kind.stitch, int(which))


def fill_arch(steps: list[Step], b: Building) -> None:
    """The step behind an arch that is not filled yet goes into it."""
    if len(steps) < 2 or not isinstance(arch := steps[-2].item, Arch) or arch.items:
        return
    filling = steps.pop().item
    items: tuple[Item, ...] = (filling,)
    if isinstance(filling, Bracket):
        items = filling.items
    elif isinstance(filling, Stitches):
        items = (replace(filling, place=None),)
    if not _opens(items) or not all(map(_fills, items)):
        steps.pop()
        help_ = 'write stitches first, as in "(3 dc, ch 5, 3 dc) in the arch"'
        message = "what is worked into the chains fastened back cannot be read"
        raise b.misread_at(message, help_, filling.span, "turn-inside")
    span = arch.span.to(filling.span)
    steps[-1] = Step(replace(arch, items=tuple(map(_placeless, items)), span=span), steps[-1].hard)


def _opens(items: Sequence[Item]) -> bool:
    """Whether stitches come first: chains there would stand for one, or hang beside the arch."""
    first = items[0] if items else None
    return _opens(first.items) if isinstance(first, Repeat) else isinstance(first, Stitches)


def _fills(item: Item) -> bool:
    match item:
        case Chains() | Picots():
            return True
        case Stitches(place=place):
            return place is None or place.which is Which.SAME
        case Repeat(inner, int()):
            return all(map(_fills, inner))
        case _:
            return False


def _placeless(item: Item) -> Item:
    """A step that goes into the arch, and says no more that it goes into the same."""
    match item:
        case Stitches():
            return replace(item, place=None)
        case Repeat(inner):
            return replace(item, items=tuple(map(_placeless, inner)))
        case _:
            return item
