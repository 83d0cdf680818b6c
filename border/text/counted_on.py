"""Ordinals and misses that may count on from elsewhere: `skip 3, 1 dc in 4th st`, `1st … 2nd`."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.nodes import Building, Step
from border.text.tree import (
    SPACES,
    ST,
    Between,
    Bracket,
    Chains,
    Item,
    Kind,
    Picots,
    Place,
    Skip,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.text.written_places import write_ordinal


def tell_counted_on(steps: Sequence[Step], b: Building) -> None:
    """Tell of ordinals that may count from where a step before them began, and of misses."""
    missed: Item | None = None  # behind `miss 2, 3 ch` the misses still come before
    for step in steps:
        if missed is not None:
            _tell_ordinal(missed, step.item, b)
        over = isinstance(step.item, Chains | Picots) and isinstance(missed, Skip)
        missed = missed if over else step.item
    for before, step in pairwise(steps):
        if not step.hard:
            _tell_missed(before.item, step.item, b)
            _tell_passed_twice(before.item, step.item, b)
    for n in range(len(steps) - 2):
        _tell_missed_list([one.item for one in steps[n : n + 4]], b)
    _tell_rising(steps, b)


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
        case (
            Stitches(place=Place(which=Which.NTH, count=nth, targets=(named,)))
            | Bracket(place=Place(which=Which.NTH, count=nth, targets=(named,)))
        ):
            bare = isinstance(before, Skip) and (before.target is None or named == Whole(ST))
            if (_alike(named) == _alike(kind) or bare) and nth == passed + 1:
                _tell_counted_on(before, item, passed, nth, b)


def _tell_rising(steps: Sequence[Step], b: Building) -> None:
    """`1 sc in 1st loop, ch 7, 1 sc in 2nd loop`: both counted from one beginning?"""
    reached: dict[Target, tuple[Item, int, bool]] = {}
    for step in steps:
        match step.item:
            case (
                Stitches(place=Place(which=which, count=count, targets=(kind,)))
                | Bracket(place=Place(which=which, count=count, targets=(kind,)))
            ) if which in (Which.FIRST, Which.NTH):
                kind = _alike(kind)
                before, passed, by_number = reached.get(kind, (step.item, 0, False))
                follows = by_number or (passed > 1 and count == passed + 1)
                if follows and which is Which.NTH and count > passed:
                    _tell_counted_on(before, step.item, passed, count, b)
                reached = {kind: (step.item, count, True)}
            case Stitches(place=Place(which=Which.NEXT | Which.THE, count=1, targets=(kind,))):
                kind = _alike(kind)
                before, passed, _ = reached.get(kind, (step.item, 0, False))
                reached = {kind: (before, passed + 1, isinstance(kind, Between))}
            case Stitches(place=Place(which=Which.SAME)) | Chains() | Picots():
                pass
            case _:
                reached = {}


def _alike(target: Target) -> Target:
    """A space of any size, a loop: one of them, where they are counted one after the other."""
    spaces = isinstance(target, Whole) and target.of.name in SPACES
    return Whole(Kind("space")) if spaces else target


def _tell_counted_on(
    before: Item, item: Stitches | Bracket, passed: int, nth: int, b: Building
) -> None:
    assert item.place is not None
    further = nth - passed
    which = Which.NEXT if further == 1 else Which.NTH
    nearby = replace(item, place=replace(item.place, which=which, count=further))
    edit = b.written(nearby)
    b.tell(
        "perhaps-counted-on",
        f"this passes over {nth - 1} more, behind {passed} that the step before it took",
        f"write {edit} if the {write_ordinal(nth)} is counted from where the step before it began",
        before.span.to(item.span),
    )


def _tell_missed(before: Item, item: Item, b: Building) -> None:
    """`miss 2 treble and 1 chain`: is the chain made, or missed?"""
    match before, item:
        case Skip(), Chains(count):
            missed = Skip(count, Whole(Kind("ch")))
        case Skip(), Stitches(count, stitch, None, cluster=0):
            missed = Skip(count, Whole(Kind(stitch)))
        case _:
            return
    start, end = before.span.end, item.span.start
    between = [t for t in b.terminals if start <= t.start < end]
    if [t.text for t in between] in (["and"], ["&"]) and between[0].end == end - 1:
        both = f"{b.written(before)}, {b.written(missed)}"
        b.tell(
            "perhaps-missed",
            'only what stands before the "and" is taken to be missed, and this is made',
            f"write {both} if both are missed",
            before.span.to(item.span),
        )


def _tell_missed_list(steps: Sequence[Item], b: Building) -> None:
    """`miss 3 dc, 1 ch, 3 dc, 1 sc in next loop`: all of that may be what is missed."""
    match steps:
        case [
            Skip(count, Whole(Kind(name))) as first,
            Chains(chains),
            Stitches(again, stitch, None, cluster=0) as last,
            Stitches(place=Place()) | Bracket(),
        ] if (again, stitch) == (count, name):
            missed = Skip(chains, Whole(Kind("ch"))), Skip(again, Whole(Kind(stitch)))
            all_ = ", ".join(b.written(item) for item in (first, *missed))
            b.tell(
                "perhaps-missed",
                f"only the first {count} are taken to be missed, and what follows is made",
                f"write {all_} if all of them are missed",
                first.span.to(last.span),
            )


def _tell_passed_twice(before: Item, item: Item, b: Building) -> None:
    """`1 dc into the 2nd loop, missing one`: are they the ones that the 2nd passes over?"""
    match before, item:
        case (
            Stitches(place=Place(which=Which.NTH, count=nth))
            | Bracket(place=Place(which=Which.NTH, count=nth)),
            Skip(count=count),
        ):
            if count == nth - 1:
                b.tell(
                    "perhaps-counted-on",
                    f"the {write_ordinal(nth)} passes over {count}, and {count} more are missed "
                    "behind it",
                    f"leave {b.written(item)} out if it is the same",
                    before.span.to(item.span),
                )
