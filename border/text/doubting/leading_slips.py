"""Slip stitches at the head of a row: stitches of it, or a way to where it begins?"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building, Step
from border.text.steps import is_open
from border.text.tree import (
    SPACES,
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Part,
    Place,
    Repeat,
    StartChain,
    Stitches,
    Which,
    Whole,
)
from border.text.written_places import write_ordinal, write_place


def check_leading(steps: Sequence[Step], b: Building, *, repeated: bool = False) -> None:
    """`4 sl st in first loop, *1 sc in next loop …`: they may only lead to where the row begins.

    `repeated`: all of the row is; then such a stitch is one of it, but where more goes in there.
    """
    turned = [step for step in steps if not isinstance(step.item, End)]
    placed = (s.item.place for s in turned[1:] if isinstance(s.item, Stitches | Bracket))
    place = next((place for place in placed if place is not None), None)
    there = place is not None and place.which in (Which.SAME, Which.THE)
    if repeated and not there:
        return
    goes_on = any(isinstance(step.item, Repeat) or is_open(step.item) for step in turned[1:])
    if not repeated and not goes_on and not _rises(turned[1:]):
        return
    _tell_slips_in(turned, b)
    if not repeated:
        _tell_slip_and_there(turned, b)
    match turned[0].item:
        case Stitches(count, "ss", None) as slips if count > 1 and _begins(turned[1:]):
            b.tell(
                "perhaps-leads-on",
                "these slip stitches are taken to be stitches of the row",
                f'write "begin in {write_ordinal(count)} st" if they only lead to where the row '
                "begins",
                slips.span,
            )
        case (
            Stitches(
                stitch="ss", place=Place(which=Which.NEXT | Which.FIRST | Which.THE) as place
            ) as item
        ):
            which = Which.NEXT if place.count == 1 else Which.NTH
            one = _last_of(replace(place, which=which, each=False), turned[1:])
            help_ = (
                f"write begin {write_place(one, b.terms, b.headings.overrides)} "
                "if they only lead to where the row begins"
            )
            match place.targets:
                case (Whole(Kind("space", int(size))),) if item.count == 1:
                    help_ += (
                        f', or "begin in next space" if they are {size}, up the chains of a '
                        "longer one"
                    )
            b.tell(
                "perhaps-leads-on",
                "these slip stitches are taken to be stitches of the row",
                help_,
                item.span,
            )


def _last_of(place: Place, steps: Sequence[Step]) -> Place:
    """The place of the last slip stitch, where the first goes into a part of something and others
    into what comes behind it: `1 sl st in first ch of next space, 1 sl st in each of next 2 ch`."""
    match place.targets, [step.item for step in steps[:1]]:
        case (Part(nth) as part,), [
            Stitches(1, "ss", Place(Which.NEXT, (Whole(unit),), count))
        ] if nth > 0 and unit.name in ("st", part.unit.name):
            return replace(place, targets=(replace(part, nth=nth + count),))
    return place


def _begins(steps: Sequence[Step]) -> bool:
    """Whether a row goes on to a starred repeat, and with no chains that stand for a stitch."""
    risen = bool(steps) and isinstance(steps[0].item, StartChain | Chains)
    return not risen and any(isinstance(s.item, Repeat) and s.item.star for s in steps)


def _tell_slips_in(steps: Sequence[Step], b: Building) -> None:
    """`1 sl st, ch 3 as dc, 2 dc in the ch-5 space`: does the row begin in that space?"""
    match [step.item for step in steps[:3]]:
        case [
            Stitches(stitch="ss", place=None) as slips,
            StartChain(place=None) | Chains() as chain,
            Stitches(
                place=Place(Which.NEXT | Which.THE, (Whole(Kind(name)) as target,), 1)
            ) as more,
        ] if name in SPACES and _rises(steps[1:]):
            place = Place(Which.NEXT, (target,))
            same = replace(more, place=replace(place, which=Which.SAME))
            written = f"begin {write_place(place, b.terms, b.headings.overrides)}"
            b.tell(
                "perhaps-leads-on",
                "these slip stitches are taken to be stitches of the row, and the chains behind "
                "them to stand before the space",
                f"write {written}, {b.written(chain)}, {b.written(same)} if they only lead into it",
                slips.span,
            )


def _tell_slip_and_there(steps: Sequence[Step], b: Building) -> None:
    """`1 sl st in the space, ch 3, 2 dc in the space`: all of it in one space?"""
    slip, *behind = (step.item for step in steps[:3])
    chains = [b.written(i) for i in behind[:1] if isinstance(i, StartChain | Chains)]
    match slip, behind[len(chains) :]:
        case (
            Stitches(1, "ss", Place(targets=(Whole(led_to),), count=1) as place),
            [
                Stitches(place=Place(Which.THE, (Whole(kind),), 1) as there)
                | Bracket(place=Place(Which.THE, (Whole(kind),), 1) as there) as more,
                *_,
            ],
        ) if kind.name in SPACES and led_to.name in SPACES and (chains or _rises_inside(more)):
            begun = write_place(replace(place, which=Which.NEXT), b.terms, b.headings.overrides)
            same = b.written(replace(more, place=replace(there, which=Which.SAME)))
            b.tell(
                "perhaps-one-place",
                "the slip stitch is taken to stand in one of these, and this to go into the next",
                f"write {', '.join([f'begin {begun}', *chains, same])} if all of it goes into one",
                slip.span.to(more.span),
            )


def _rises_inside(item: Item) -> bool:
    """`(ch 3, 2 dc, ch 2, 3 dc) in the space`."""
    return isinstance(item, Bracket) and isinstance(item.items[0], StartChain | Chains)


def _rises(steps: Sequence[Step]) -> bool:
    """`3 chain, 9 treble` behind slip stitches: chains that stand for the stitch behind them."""
    match [step.item for step in steps[:2]]:
        case [Chains(count), Stitches(stitch=stitch)]:
            return 2 <= STITCHES[stitch].height <= count
        case [StartChain(), *_]:
            return True
    return False
