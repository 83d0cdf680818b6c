"""Brackets are built: in a place, so many times, to the end, or once."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Span
from border.text.building.extents import Extent, build_extent
from border.text.building.lists import settled_list
from border.text.building.places import build_place, tell_between
from border.text.building.repeats import first_each_time, tell_to_the_end
from border.text.coming import build_as_they_come
from border.text.doubting.drifting import tell_drift
from border.text.doubting.lists_asked import same_backwards
from border.text.doubting.place_doubts import (
    tell_behind,
    tell_counted,
    tell_in_last,
    tell_in_shell,
    tell_next_of,
    tell_of_heap,
    tell_of_size,
    tell_once_more,
    tell_one_between,
)
from border.text.in_each import with_each
from border.text.nodes import Building, Step, is_token, is_tree
from border.text.shaping.after import LAST_ONE
from border.text.shaping.described import BETWEEN, IN_SHELL, OF_HEAP
from border.text.shaping.nouns import OF_SIZE
from border.text.shaping.parted import PICOTS
from border.text.shaping.places_first import CHAINED, ONCE_MORE
from border.text.steps import OPEN_PLACES
from border.text.tree import (
    AsTheyCome,
    Bracket,
    Chains,
    Item,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Which,
)
from border.text.wording.spots import BEHIND

if TYPE_CHECKING:
    from lark import Token, Tree

    from border.text.nodes import Node

_TAKEN = {
    "list": "all before it, from the last stop",
    "list behind": "all behind it, up to the stop",
    "pair behind": 'the two steps behind it that are joined by "and"',
    "pair": "the chains, or the picot, and the stitch before it",
}
"""Of what a number of times is said, by the name of the bracket that was put round it."""
_AGAIN = 'write "(…) 3 times", "(…) in next st" or "(…) 3 times in next st"'


def build_bracket(node: Tree[Token], steps: Sequence[Step], b: Building) -> Item:
    """A bracket whose list is built already: in a place, so many times, or once."""
    children = node.children
    close = max(i for i, child in enumerate(children) if is_token(child, "RP"))
    inner_times = [c for c in children[1:close] if is_tree(c, "times")]
    behind = children[close + 1 :]
    if not steps:
        raise b.misread("nothing to be worked stands in this bracket", "leave it out", node)
    extent = build_extent(inner_times + behind, b)
    half = children[close]
    list_ = b.of(half).name if is_token(half) else ""
    if list_ in _TAKEN:
        message = f"this number of times is taken to be that of {_TAKEN[list_]}"
        help_ = "put what is worked so often in brackets: (…) 3 times"
        b.tell("times-of-the-row", message, help_, b.span(node))
    placed = [c for c in behind if is_tree(c, "place")]
    span = b.span(node)
    if list_ == LAST_ONE:
        b.tell(
            "perhaps-as-they-come",
            "what stands after each is taken to be said of this step alone, not of the one before",
            "where it stands after those as well, write it behind each step",
            span,
        )
    if list_ == "like":
        b.tell(
            "times-of-the-row",
            "only the last step is taken to be worked so often, without the chains before it",
            "put all that is worked so often in brackets: (…) 3 times",
            span,
        )
    if placed and (extent.to_end or extent.to_last):
        help_ = 'for each place to the end write "(…) in each space"'
        raise b.misread("this bracket goes to one place and to the end", help_, node)
    if len(placed) > 1 or (placed and _times_behind(behind)):
        raise b.misread("where and how often cannot be told apart here", _AGAIN, *behind)
    items = tuple(step.item for step in steps)
    modifiers = tuple(b.of(c).name for c in behind if is_token(c, "MOD"))
    if any(is_token(c, "COME") for c in behind):
        if placed or extent.counted or extent.to_last:
            help_ = "leave out where, and how often"
            raise b.misread("what is worked as it comes goes on to the end", help_, *behind)
        return build_as_they_come(_modified(items, modifiers), b, behind, span)
    if not placed:
        items = tuple(step.item for step in settled_list(steps, b))
        return _again(_modified(items, modifiers), extent, b, behind, span)
    printed = any(is_token(c) and b.of(c).text in "([{" for c in children[:1])
    if not printed and any(step.hard for step in steps[1:]) and not same_backwards(items):
        message = 'all of this is taken to go into the place named before it, in spite of "then"'
        help_ = 'put a semicolon before "then" where the steps behind it go on along the row'
        b.tell("perhaps-one-place", message, help_, span)
    place, more = build_place(placed[0], b)
    items = _modified(items, modifiers + more)
    several = place.which in OPEN_PLACES or (place.each and place.count > 1)
    if list_ == PICOTS and several:
        b.tell(
            "perhaps-as-they-come",
            "these picots are taken to stand between the stitches of each place",
            "write them behind the bracket, as a repeat, if they stand between one place and the "
            'next: "*6 dc in next loop, picot; repeat from *"',
            span,
        )
    if list_ == CHAINED and isinstance(chains := items[-1], Chains):
        first = items[0]
        alone = len(items) == 2 and isinstance(first, Stitches)
        once = b.written(replace(first, place=place) if alone else Bracket(items[:-1], place))
        b.tell(
            "perhaps-as-they-come",
            "these chains are taken to be made with each of these",
            f'write "{once}, ch {chains.count}" if they are made once, behind the last',
            span,
        )
    if extent.counted:
        times = extent.times + (extent.counted == "MORE")
        items = (Repeat(items, times, span=span),)
    tell_between(placed[0], Bracket(items, place, span=span), b)
    for how in (b.of(c).name for c in placed[0].children if is_token(c, "PREP")):
        if how in _PLACES_TOLD:
            _PLACES_TOLD[how](Bracket(items, place, span=span), b)
    return in_place(items, place, b, behind, span)


_PLACES_TOLD: dict[str, Callable[[Stitches | Bracket, Building], None]] = {
    "nth": tell_next_of,
    OF_SIZE: tell_of_size,
    ONCE_MORE: tell_once_more,
    "counted": tell_counted,
    "last": tell_in_last,
    BEHIND: tell_behind,
    BETWEEN: tell_one_between,
    OF_HEAP: tell_of_heap,
    IN_SHELL: tell_in_shell,
}
"""What is told of a place as of one where single stitches go, by the name of its word."""


def _times_behind(behind: Sequence[Node]) -> bool:
    """Whether a number of times stands behind the place instead of before it."""
    first = next(n for n, node in enumerate(behind) if is_tree(node, "place"))
    return any(is_tree(node, "times") for node in behind[first:])


def _again(
    items: tuple[Item, ...], extent: Extent, b: Building, behind: Sequence[Node], span: Span
) -> Repeat:
    """A bracket without a place: so many times in all, to the end, or once."""
    strange = [node for node in behind if is_token(node, "BETW")]
    if strange:
        help_ = 'chains part the stitches in a place: "(…) in each space, with ch 2 between"'
        raise b.misread("what these chains stand between is not said", help_, *strange)
    if extent.counted:
        items = first_each_time(items, b)
        return Repeat(items, extent.times + (extent.counted == "MORE"), span=span)
    to_end = extent.to_end or extent.to_last is not None
    if to_end and (
        len(items) == 1 or items[0].span.start < items[-1].span.start
    ):  # not what a figure's name stands for
        tell_drift(items, b)
        items = first_each_time(items, b)
        tell_to_the_end(items, b)
    return Repeat(items, None if to_end else 1, extent.to_last, span=span)


def _modified(items: tuple[Item, ...], modifiers: tuple[str, ...]) -> tuple[Item, ...]:
    """A modifier behind a bracket goes for each stitch in it."""
    if not modifiers:
        return items
    kept: list[Item] = []
    for item in items:
        match item:
            case Stitches():
                kept.append(replace(item, modifiers=item.modifiers + modifiers))
            case Repeat() | Bracket():
                kept.append(replace(item, items=_modified(item.items, modifiers)))
            case _:
                kept.append(item)
    return tuple(kept)


def in_place(
    items: tuple[Item, ...], place: Place, b: Building, nodes: Sequence[Node], span: Span
) -> Bracket:
    """Steps that all go into one place; `nodes` may say what stands between the places."""
    betweens = [node for node in nodes if is_token(node, "BETW")]
    parted = 0
    if betweens:
        if len(betweens) > 1 or not (place.each or place.which in OPEN_PLACES):
            help_ = "write the chains inside the bracket, where they stand"
            message = "what these chains stand between is not said"
            raise b.misread(message, help_, *betweens)
        parted = b.of(betweens[0]).number
    bracket = Bracket(_placeless(items, b), place, parted, span=span)
    return with_each(bracket, b)


def _placeless(items: tuple[Item, ...], b: Building) -> tuple[Item, ...]:
    """The steps of a placed bracket; a place named inside it, `same` apart, is told and dropped."""
    kept: list[Item] = []
    for item in items:
        if isinstance(item, Repeat) and item.times is None:
            message = "a repeat to the end stands inside a bracket that goes into one place"
            b.tell("not-understood", message, "say how many times", item.span)
        placed = Stitches | Bracket | AsTheyCome | StartChain
        place = item.place if isinstance(item, placed) else None
        strange = place is not None and place.which is not Which.SAME
        if strange or isinstance(item, Skip):
            message = "a place is named inside a bracket that goes into one place"
            help_ = "leave one of the two places out, or part the bracket in two"
            b.tell("place-inside", message, help_, place.span if place else item.span)
        match item:
            case Skip() | AsTheyCome():
                continue
            case Stitches() | StartChain() if strange:
                item = replace(item, place=None)
            case Bracket() if strange:
                item = Repeat(_placeless(item.items, b), 1, span=item.span)
            case Repeat() | Bracket():
                item = replace(item, items=_placeless(item.items, b))
            case _:
                pass
        kept.append(item)
    return tuple(kept)
