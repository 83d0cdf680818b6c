"""Steps that mean one thing by the words of this language, and in some books another.

The reading taken is that of `grammar/README.md`; each doubt is a warning that
shows the edit for the other one.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.nodes import Building, Step
from border.text.steps import OPEN_PLACES
from border.text.tree import (
    ST,
    Bracket,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.text.written_steps import write_item


def tell_doubts(steps: Sequence[Step], b: Building) -> None:
    """Tell what the steps of one list may mean besides."""
    worked = None
    for before, step in pairwise(steps):
        if not step.hard:
            _tell_ordinal(before.item, step.item, b)
            _tell_perhaps_ring(before.item, step.item, worked, b)
        worked = before.item
    for step in steps:
        _tell_one_chain(step.item, b)
    _tell_rising(steps, b)
    _tell_behind_each(steps, b)


def tell_last(items: Sequence[Item], b: Building) -> None:
    """`1 dc in last tr` in a repeat: the last of the row, or of each repeat?"""
    for item in items:
        match item:
            case Stitches(place=Place(which=Which.LAST, targets=(Whole(), *_)) as place):
                one = replace(item, place=replace(place, which=Which.NEXT))
                edit = write_item(one, b.terms, b.headings.overrides)
                b.tell(
                    "perhaps-last-of-each",
                    "the last one is that of the whole row, and this is worked over and over",
                    f"write {edit}, behind the skip of those before it, or name what it is the "
                    'last of: "in last st of next group"',
                    item.span,
                )


# --- ordinals -----------------------------------------------------------------------


def _tell_ordinal(before: Item, item: Item, b: Building) -> None:
    """`skip 3, 1 dc in 4th st`: is the 4th counted on, or from where the skip began?"""
    match before:
        case Skip(count=passed, target=target):
            kind = target or Whole(ST)
        case Stitches(count=passed, place=None, cluster=0):
            kind = Whole(ST)
        case Stitches(place=Place(which=Which.NEXT, count=passed, targets=(kind,))):
            pass
        case _:
            return
    match item:
        case Stitches(place=Place(which=Which.NTH, count=nth, targets=(named,))):
            if named == kind and nth == passed + 1:
                _tell_counted_on(before, item, passed, nth, b)


def _tell_rising(steps: Sequence[Step], b: Building) -> None:
    """`1 sc in 1st loop, ch 7, 1 sc in 2nd loop`: both counted from one beginning?"""
    reached: dict[Target, tuple[Item, int]] = {}
    for step in steps:
        match step.item:
            case Stitches(place=Place(which=which, count=count, targets=(kind,))) if which in (
                Which.FIRST,
                Which.NTH,
            ):
                before, passed = reached.get(kind, (step.item, 0))
                if passed and which is Which.NTH and count > passed:
                    _tell_counted_on(before, step.item, passed, count, b)
                reached = {kind: (step.item, count)}
            case Stitches(place=Place(which=Which.SAME)) | Chains() | Picots():
                pass
            case _:
                reached = {}


def _tell_counted_on(before: Item, item: Stitches, passed: int, nth: int, b: Building) -> None:
    assert item.place is not None
    further = nth - passed
    which = Which.NEXT if further == 1 else Which.NTH
    nearby = replace(item, place=replace(item.place, which=which, count=further))
    edit = write_item(nearby, b.terms, b.headings.overrides)
    b.tell(
        "perhaps-counted-on",
        f"this passes over {nth - 1} more, behind the {passed} before it",
        f"write {edit} if the {ordinal(nth)} is counted from where those {passed} began",
        before.span.to(item.span),
    )


def ordinal(number: int) -> str:
    """A number as an ordinal: `1st`, `2nd`, `11th`."""
    teens = number % 100 in (11, 12, 13)
    return f"{number}{'th' if teens else {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th')}"


# --- rings --------------------------------------------------------------------------


def tell_ring(chains: Chains, closing: Item, b: Building) -> None:
    """`ch 5, 1 sl st in first ch`: a picot, or a stitch into the row below?"""
    below = write_item(closing, b.terms, b.headings.overrides)
    b.tell(
        "place-unclear",
        "this may close the chains before it into a picot, or go into the row below",
        f"write picot of {chains.count} or ch {chains.count}; {below}",
        chains.span.to(closing.span),
    )


def _tell_perhaps_ring(chains: Item, closing: Item, worked: Item | None, b: Building) -> None:
    """`1 dc, ch 5, 1 sc in last dc`, `ch 5, 1 sl st in same st`, `ch 8, 1 sc in 5th ch`.

    `worked` is the step before the chains.
    """
    if not isinstance(chains, Chains) or chains.count < 3:
        return
    size = chains.count
    match closing:
        case Stitches(1, "sc" | "ss", Place(which=Which.LAST, targets=(Whole(of),), count=1)):
            perhaps = isinstance(worked, Stitches) and worked.stitch == of.name
        case Stitches(1, "ss", Place(which=Which.SAME, targets=() | (Whole(Kind("st")),))):
            perhaps = True
        case Stitches(1, "sc" | "ss", Place(Which.NTH, (Whole(Kind("ch")),), nth)):
            perhaps, size = 3 <= nth <= size, nth
        case _:
            return
    if perhaps:
        rest = f"ch {chains.count - size}, " if chains.count > size else ""
        below = write_item(closing, b.terms, b.headings.overrides)
        b.tell(
            "perhaps-picot",
            "this is taken to go into the row below; it may close the chains into a picot",
            f"write {rest}picot of {size} if it does, or ch {chains.count}; {below} if not",
            chains.span.to(closing.span),
        )


def _tell_one_chain(item: Item, b: Building) -> None:
    """`2 dc in the chain`: in one chain, or in the whole space?"""
    match item:
        case Stitches(place=Place(which=Which.THE, targets=(Whole(Kind("ch", None)),)) as place):
            space = replace(place, targets=(Whole(Kind("space")),))
            edit = write_item(replace(item, place=space), b.terms, b.headings.overrides)
            b.tell(
                "perhaps-one-place",
                "this is taken to go into one single chain",
                f"write {edit} if the hook goes under the chains",
                item.span,
            )


# --- what stands behind `in each` -------------------------------------------------------


def _tell_behind_each(steps: Sequence[Step], b: Building) -> None:
    """`1 dc in each dc, 2 dc in each space`; `1 sc in each space, ch 5` at a list's end."""
    items = [step.item for step in steps]
    ends = [item for item in items if isinstance(item, End)]
    turns = any(end.what is Ending.TURN for end in ends)
    worked = [item for item in items if not isinstance(item, End)]
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
