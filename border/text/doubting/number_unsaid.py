"""Places with no number said: `3 dc on the next trebles`, `1 dc on the trebles`, `3 tr on tr` over
single ones.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Span
from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.stands_below import loop_sizes, stand_alone, stands_in
from border.text.steps import walk
from border.text.tree import Item, Kind, Place, Skip, Stitches, Which, Whole
from border.text.vocabulary import name_of

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_ONE = (Which.NEXT, Which.THE, Which.FIRST)
_SOME = (Which.NEXT, Which.FIRST, Which.LAST)


def tell_number_unsaid(items: Sequence[Item], b: Building) -> None:
    """Tell of one stitch where several are named, and of several where one is, with no number."""
    for item in walk(items):
        if b.is_asked(item.span):
            continue
        match item:
            case Stitches(
                count, place=Place(count=on, targets=(Whole(Kind(name, None, None)),)) as place
            ) if place.which in _ONE and name in STITCHES and not _has_number(place.span, b):
                if on == 1 and (place.each or _may_be_several(place.span, name, count, b)):
                    help_ = 'say in how many: "in each of the next 3", or in which: "in centre of '
                    _tell_several(item, f'{help_}next group of 5"', b)
                elif 1 < on == count and not place.each and stand_alone(b.below, name):
                    _tell_one_place(item, place, b)
            case Stitches(
                count, place=Place(which, (Whole(Kind("ch")),), on, each=False) as place
            ) if which in _SOME and 1 < on == count and count in loop_sizes(b.below):
                if not any(t.text in ("on", "upon") for t in b.terminals_in(place.span)):
                    _tell_one_loop(item, place, b)
            case Skip(1, Whole(Kind(name, None, None))) if name in STITCHES:
                if _may_be_several(item.span, name, 0, b) and not _has_number(item.span, b):
                    named = name_of(name, b.terms, b.headings.overrides)
                    _tell_several(item, f'say how many: "skip 4 {named}"', b)


def _tell_one_place(item: Stitches, place: Place, b: Building) -> None:
    one = replace(item, place=replace(place, count=1))
    b.tell(
        "perhaps-one-place",
        f"these are taken to go one in each of {place.count}, and each stands alone in the row "
        "below",
        f"write {b.written(one)} if all of them go into one",
        item.span,
    )


def _tell_one_loop(item: Stitches, place: Place, b: Building) -> None:
    """Ask of `3 dc in the next 3 ch`, where the row below has loops of 3."""
    loop = replace(
        item, place=replace(place, targets=(Whole(Kind("space", place.count)),), count=1)
    )
    each = replace(item, count=1, place=replace(place, each=True))
    b.tell(
        "perhaps-one-place",
        f"these are taken to go one in each of {place.count} chains, and the row below has loops "
        "of so many",
        f"write {b.written(loop)} if all of them go into one, {b.written(each)} if not",
        item.span,
    )


def _tell_several(item: Item, help_: str, b: Building) -> None:
    message = f"several are named here, and this is taken as {b.written(item)}"
    b.tell("place-assumed", message, help_, item.span)


def _has_number(span: Span, b: Building) -> bool:
    """Whether a number is said in a place; one put there stands where its noun does."""
    noun = _noun(span, b)
    said = (t for t in b.terminals_in(span) if t.type == "NUM")
    return any(noun is None or t.start != noun.start for t in said)


def _may_be_several(span: Span, stitch: str, count: int, b: Building) -> bool:
    """Whether a plural is said; or a name that is cut, `miss the tr.`, `3 tr. on the next tr.`,
    where the row below has groups of them, or of so many."""
    noun = _noun(span, b)
    if noun is None or not noun.short:
        return noun is not None and noun.text.endswith("s")
    group = stands_in(b.below, stitch, ordinal=False) if b.below is not None else None
    return group is not None and (not count or group.size == count)


def _noun(span: Span, b: Building) -> Terminal | None:
    """The stitch that a place, or a skip, ends in, where it is said there."""
    said = b.terminals_in(span)
    last = max((t.start for t in said), default=0)
    ends = bool(said) and said[-1].type == "STITCH" and said[-1].start == last
    return said[-1] if ends else None
