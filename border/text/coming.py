"""Parts that are worked as they come: `(1 dc in each dc, 2 dc in each space) as they come`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Span
from border.text.nodes import Building, Step, is_token
from border.text.tree import (
    SPACES,
    ST,
    AsTheyCome,
    Begin,
    Bracket,
    Chains,
    End,
    Item,
    Picots,
    Stitches,
    Target,
    Which,
    Whole,
)

if TYPE_CHECKING:
    from border.text.nodes import Node

_WHOLE = "(1 dc in each dc, 2 dc in each space) as they come"
_PARTED = f"{_WHOLE}, with ch 1 between"


class Unfit(Struct, frozen=True):
    """Why steps cannot be worked as they come: what to say, and of which of them."""

    message: str
    help: str
    item: Item


def in_each(item: Item) -> bool:
    """Whether a step goes in each of something."""
    return isinstance(item, Stitches | Bracket) and (
        item.place is not None and item.place.which is Which.EACH
    )


def as_they_come(items: Sequence[Item], parted: int = 0) -> AsTheyCome | Unfit:
    """Steps that are each in each of something, worked as they come."""
    named: set[Target] = set()
    parts: list[Stitches | Bracket] = []
    for item in items:
        if not isinstance(item, Stitches | Bracket) or not item.place or not in_each(item):
            return _without_each(item)
        if item.parted:
            message = "between which of the parts these chains stand is not said"
            help_ = f'put them in a bracket with its stitches, or write "{_PARTED}"'
            return Unfit(message, help_, item)
        if not named.isdisjoint(item.place.targets):
            help_ = "put all that goes there in one bracket: (1 dc, ch 1, 1 dc) in each space"
            return Unfit("nothing is left for this: a part before it goes there", help_, item)
        named.update(item.place.targets)
        parts.append(replace(item, place=replace(item.place, which=Which.NEXT)))
    if len(parts) < 2:
        help_ = f'write {_WHOLE}, or leave "as they come" out'
        return Unfit("there is only one part here to be worked as it comes", help_, items[0])
    return AsTheyCome(tuple(parts), parted)


def how_widely(part: Item) -> int:
    """How much a part names: `2 dc in centre of each shell`, then `in each dc`, then `1 dc in each
    st`, which would take the stitches of the others."""
    if not isinstance(part, Stitches | Bracket):
        return 0
    targets = part.place.targets if part.place is not None else ()
    whole = [target for target in targets if isinstance(target, Whole)]
    return (len(whole) == len(targets)) + any(target.of == ST for target in whole)


_EVERY = 2
"""So widely is each st named."""


def _without_each(item: Item) -> Unfit:
    if isinstance(item, Chains | Picots):
        help_ = "put it in a bracket with its stitches: (1 dc, ch 1) in each dc"
        return Unfit("it is not said with which part this goes", help_, item)
    message = "of what is worked as it comes, each part goes in each of something"
    return Unfit(message, f"write {_WHOLE}", item)


def build_as_they_come(
    items: Sequence[Item], b: Building, nodes: Sequence[Node], span: Span
) -> AsTheyCome:
    """The parts before `as they come`; `nodes` may say what stands between one and the next."""
    parted = next((b.of(node).number for node in nodes if is_token(node, "BETW")), 0)
    built = as_they_come(items, parted)
    if isinstance(built, Unfit):
        raise b.misread_at(built.message, built.help, built.item.span)
    _tell_never_made(built, b, span)
    return replace(built, span=span)


def _tell_never_made(built: AsTheyCome, b: Building, span: Span) -> None:
    """`(1 dc in each st, 2 dc in centre of each shell) as they come`: is the second ever made?"""
    parts = sorted(built.items, key=how_widely)
    every = next((n for n, part in enumerate(built.items) if how_widely(part) == _EVERY), None)
    after = built.items[every + 1 :] if every is not None else ()
    none_left = [
        part
        for part in after
        if part.place is not None and not any(t.of.name in SPACES for t in part.place.targets)
    ]
    if none_left:
        b.tell(
            "perhaps-as-they-come",
            "each st is taken by the part before it, so that this is never made",
            f"write {b.written(replace(built, items=tuple(parts)))}, where it is made instead",
            none_left[0].span,
        )


def gather_parts(steps: list[Step], b: Building, nodes: Sequence[Node]) -> Step:
    """`1 dc in each dc, 2 dc in each space, as they come`: from the first `in each` on.

    The parts are taken off the steps.
    """
    at = next((n for n, step in enumerate(steps) if in_each(step.item)), len(steps))
    parts = steps[at:]
    del steps[at:]
    if not parts:
        help_ = f"write {_WHOLE}"
        raise b.misread('nothing that goes "in each" stands before this', help_, *nodes)
    if not parts[0].hard:
        _check_before([step.item for step in steps], b)
    items = [step.item for step in parts]
    span = items[0].span.to(b.span(*nodes))
    return Step(build_as_they_come(items, b, nodes, span), parts[0].hard)


def _check_before(items: Sequence[Item], b: Building) -> None:
    """What has no place may go with the part behind it; a start chain does not."""
    match items:
        case [*openings, Chains()] if not b.clause and all(
            isinstance(item, Begin | End) for item in openings
        ):
            return
        case [*_, Chains() | Picots() | Stitches(place=None) as last]:
            help_ = f"put all that does in brackets: {_WHOLE}"
            message = "whether this is worked as it comes too is not said"
            raise b.misread_at(message, help_, last.span)
