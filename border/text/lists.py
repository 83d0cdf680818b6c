"""A list before a place: `1 sc, 5 dc in next space` can be bracketed in two ways.

What could be read two ways is asked: the finding shows both as edits. Meanwhile
each stitch without a place takes the next st, and each site all that is said.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.steps import OPEN_PLACES, walk
from border.text.tree import (
    ST,
    Begin,
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)
from border.text.written_places import write_ordinal, write_place
from border.text.written_steps import may_close, write_item, write_list

_UNPLACED = (Which.SAME, Which.SKIPPED)
_BY_NUMBER = (Which.NEXT, Which.FIRST, Which.LAST, Which.CENTRE)
_Placed = TypeVar("_Placed", Stitches, Bracket)


class Step(Struct, frozen=True):
    """A step of a list; `hard`: a semicolon, a full stop or `then` stands before it."""

    item: Item
    hard: bool = False


def check_list(steps: Sequence[Step], b: Building, opening: bool = False) -> None:
    """Tell every list before a place. `opening`: the list is a whole row, and begins it."""
    since: list[Item] = []
    for n, step in enumerate(steps):
        item = step.item
        if n:
            _check_ordinal(steps[n - 1].item, item, b)
        if step.hard:
            since = []
        match item:
            case Chains() | Picots() | Stitches(place=None):
                since.append(item)
                continue
            case Stitches(place=Place() as place) | Bracket(place=place):
                if since and isinstance(since[-1], Chains) and may_close(item):
                    _tell_ring(since[-1], item, b)
                elif place.which is Which.SAME:
                    if _may_be_picot(since, item):
                        _tell_picot(since[-1], item, b)
                    elif _may_share(since, item):
                        _tell_same(since, item, b)
                elif place.which not in _UNPLACED:
                    chains_may_stand = opening and _opens_row(steps, n - len(since))
                    _check_before(since, item, b, chains_may_stand)
        since = []


def check_leading(steps: Sequence[Step], b: Building) -> None:
    """`4 sl st in first loop, *1 sc in next loop …`: they may only lead to where the row begins."""
    if not any(isinstance(step.item, Repeat) for step in steps[1:]):
        return
    match steps[0].item:
        case (
            Stitches(
                stitch="ss", place=Place(which=Which.NEXT | Which.FIRST | Which.THE) as place
            ) as item
        ):
            one = replace(place, which=Which.NEXT, count=1, each=False)
            b.tell(
                "perhaps-leads-on",
                "these slip stitches are taken to be stitches of the row",
                f"write begin {write_place(one, b.terms, b.headings.overrides)} "
                "if they only lead to where the row begins",
                item.span,
            )


def _check_ordinal(before: Item, item: Item, b: Building) -> None:
    """`skip 3, 1 dc in 4th st`: is the 4th counted on, or from where the skip began?"""
    match before:
        case Skip(count=passed, target=target):
            kind = target or Whole(ST)
        case Stitches(count=passed, place=None, cluster=0):
            kind = Whole(ST)
        case Stitches(place=Place(which=Which.NEXT | Which.FIRST, count=passed, targets=(kind,))):
            pass
        case _:
            return
    match item:
        case Stitches(place=Place(which=Which.NTH, count=nth, targets=(named,)) as place):
            if named != kind or nth != passed + 1:
                return
            nearby = replace(item, place=replace(place, which=Which.NEXT, count=1))
            edit = write_item(nearby, b.terms, b.headings.overrides)
            message = f"this passes over {passed} more, behind the {passed} before it"
            of_all = f"the {write_ordinal(nth)} is counted from where the step before it began"
            help_ = f"write {edit} if {of_all}"
            b.tell("perhaps-counted-on", message, help_, before.span.to(item.span))


def _check_before(
    since: Sequence[Item], placed: Stitches | Bracket, b: Building, opens_row: bool
) -> None:
    """Tell the list between the last mark and a placed step, if it can be read two ways."""
    bare = next((n for n, item in enumerate(since) if isinstance(item, Stitches)), None)
    if bare is not None:
        if not b.headings.bare_in_each:
            _tell_bare(since[bare:], placed, b)
        return
    assert placed.place is not None
    chains = any(isinstance(item, Chains) for item in since)
    starts = opens_row and len(since) == 1
    if chains and placed.place.which in OPEN_PLACES and not starts:
        _tell_chains(since, placed, b)


def _opens_row(steps: Sequence[Step], at: int) -> bool:
    """Whether the chains at a step are the start chain of the row.

    They are if they open it, and are one, or high enough for a stitch of the row.
    """
    chains = steps[at].item if at < len(steps) else None
    opens = all(isinstance(step.item, Begin | End) for step in islice(steps, at))
    if not opens or not isinstance(chains, Chains):
        return False
    if chains.count == 1:
        return True
    later = (item for item in walk([step.item for step in steps[at + 1 :]]))
    heights = (STITCHES[i.stitch].height for i in later if isinstance(i, Stitches))
    return any(2 <= height <= chains.count for height in heights)


def _tell_bare(since: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    singly = [_one_in_each(item) if isinstance(item, Stitches) else item for item in since]
    apart = write_list((*singly, placed), b.terms, b.headings.overrides)
    together = write_list((_bracketed(since, placed),), b.terms, b.headings.overrides)
    b.tell(
        "place-unclear",
        "the place behind this list may be for all of it, or for its last stitches only",
        f"write {together} or {apart}; the heading "
        '"bare stitches: one in each" takes each stitch without a place for the next st',
        since[0].span.to(placed.span),
    )


def _tell_ring(chains: Chains, closing: Item, b: Building) -> None:
    """`ch 5, 1 sl st in first ch`: a picot, or a stitch into the row below?"""
    below = write_item(closing, b.terms, b.headings.overrides)
    b.tell(
        "place-unclear",
        "this may close the chains before it into a picot, or go into the row below",
        f"write picot of {chains.count} or ch {chains.count}; {below}",
        chains.span.to(closing.span),
    )


def _tell_chains(chains: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    each = write_list((_bracketed(chains, placed),), b.terms, b.headings.overrides)
    once = write_list((*chains, placed), b.terms, b.headings.overrides)
    b.tell(
        "place-unclear",
        "the chains before this may be made once, or again for each place",
        f"write {each} or {once}",
        chains[0].span.to(placed.span),
    )


def _bracketed(since: Sequence[Item], placed: Stitches | Bracket) -> Bracket:
    """The list and what is placed behind it, all in that place."""
    assert placed.place is not None
    inner = (
        placed.items if isinstance(placed, Bracket) else (replace(placed, place=None, parted=0),)
    )
    place = placed.place
    if place.count > 1 and place.which in _BY_NUMBER:
        place = replace(place, each=True)
    return Bracket((*since, *inner), place, placed.parted)


def _one_in_each(item: Stitches) -> Stitches:
    """A stitch without a place, written with the place that it takes."""
    place = Place(Which.NEXT, (Whole(ST),), item.count)
    if item.count == 1 or item.together:
        return replace(item, place=place)
    each = replace(place, each=True)
    return replace(item, count=1, place=each, between=0, parted=item.between)


def _tell_chains_or_space(item: Stitches, place: Place, b: Building) -> None:
    """`1 sc in next 5 ch`: five, one in each chain; most books mean one, in the space of five."""
    space = replace(place, targets=(Whole(Kind("space", place.count)),), count=1)
    one = write_item(replace(item, place=space), b.terms, b.headings.overrides)
    each = write_item(replace(item, place=replace(place, each=True)), b.terms)
    b.tell(
        "perhaps-one-place",
        f"this is taken as {place.count} stitches, one in each of {place.count} chains",
        f"write {one} if it is one stitch in the space, or {each} if it is one in each",
        item.span,
    )


def _tell_single_chain(item: Stitches, b: Building) -> None:
    """`1 treble in the chain`: in one chain, or in all of those that stand together."""
    space, chain = (
        write_item(
            replace(item, place=Place(Which.NEXT, (Whole(Kind(kind)),))),
            b.terms,
            b.headings.overrides,
        )
        for kind in ("space", "ch")
    )
    b.tell(
        "perhaps-one-place",
        "this is taken to go into the next single chain",
        f"write {space} if it goes into the whole loop of chains, otherwise {chain}",
        item.span,
    )


def _may_be_picot(since: Sequence[Item], closing: Item) -> bool:
    """`5 chain, 1 slip in the same stitch`; with 1 sc only behind stitches without a place."""
    match closing:
        case Stitches(1, "ss" | "sc" as name, Place(targets=() | (Whole(Kind("st")),))):
            chains = since[-1] if since else None
            bare = len(since) > 1 and isinstance(since[-2], Stitches)
            return isinstance(chains, Chains) and chains.count > 2 and (bare or name == "ss")
        case _:
            return False


def _tell_picot(chains: Item, closing: Item, b: Building) -> None:
    assert isinstance(chains, Chains)
    b.tell(
        "perhaps-picot",
        f"these {chains.count} chains are taken to stand as a loop on the row",
        f"write picot of {chains.count} if this closes them into a ring on that stitch",
        chains.span.to(closing.span),
    )


def _may_share(since: Sequence[Item], placed: Stitches | Bracket) -> bool:
    """Whether bare stitches may be meant to go where those behind them say `same`.

    Not where one stitch only is added to the last of them: `9 dc, ch 9, 1 dc in same st`.
    """
    bare = [item for item in since if isinstance(item, Stitches)]
    if not any(item.count > 1 for item in bare) or any(isinstance(i, Picots) for i in since):
        return False
    place, single = placed.place, isinstance(placed, Stitches) and placed.count == 1
    return not single or (place is not None and place.targets not in ((), (Whole(ST),)))


def _tell_same(since: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    """`3 tr, ch 2, 3 tr in same loop`: are all of them meant to go into one loop?"""
    assert placed.place is not None
    nearby = replace(placed, place=Place(Which.NEXT, placed.place.targets or (Whole(ST),)))
    all_in = write_list((_bracketed(since, nearby),), b.terms, b.headings.overrides)
    b.tell(
        "perhaps-one-place",
        "only the last of these is taken to go into the same place, the others one in each st",
        f"write {all_in} if all of them go into one place",
        since[0].span.to(placed.span),
    )


def with_each(item: _Placed, b: Building) -> _Placed:
    """`N dc in the next M X` without `each` is told, where N is neither M nor 1."""
    place = item.place
    if isinstance(item, Stitches) and place == Place(Which.THE, (Whole(Kind("ch")),)):
        _tell_single_chain(item, b)
    if place is None or place.each or place.count < 2 or place.which not in _BY_NUMBER:
        return item
    if isinstance(item, Stitches) and item.count in (1, place.count):
        if item.count == 1 and place.targets == (Whole(Kind("ch")),):
            _tell_chains_or_space(item, place, b)
        return item
    each = replace(place, each=True)
    fixed = replace(item, place=each)
    one = replace(item, place=replace(place, count=1))
    many = write_place(place, b.terms, b.headings.overrides)
    b.tell(
        "place-unclear",
        f"how this is shared out {many} is not said",
        f"write {write_item(fixed, b.terms)}, or for one place {write_item(one, b.terms)}",
        item.span,
    )
    return fixed
