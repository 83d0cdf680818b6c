"""A repeat that begins at another stitch of its group each time: `1 sc in 3rd dc, ch 5; repeat`
over groups of 5 dc. Is the 3rd of each group meant?
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.stands_below import stands_in
from border.text.steps import OPEN_PLACES
from border.text.tree import (
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Skip,
    Stitches,
    Which,
    Whole,
)
from border.text.written_places import write_kind


def tell_drift(items: Sequence[Item], b: Building) -> None:
    """Tell of a repeat that takes so many stitches of groups that the next begins inside one."""
    if b.below is None:
        return
    taken = [_taken(item) for item in items]
    if any(one is None for one in taken):
        return
    steps = [one for one in taken if one is not None and (one.count or one.elsewhere)]
    for stitch in dict.fromkeys(one.stitch for one in steps if one.stitch):
        nth = max(one.nth for one in steps if one.stitch == stitch)
        group = stands_in(b.below, stitch, ordinal=nth > 1)
        if group is not None and _drifts(steps, stitch, group.size or 1, nth > 0):
            of_them = [
                i for i, one in zip(items, taken, strict=True) if one and one.stitch == stitch
            ]
            if not any(b.is_asked(one.span) for one in of_them):
                _tell(of_them[0], group, b)


class _Taken(Struct, frozen=True):
    """What one step takes: so many of a stitch, one after another, or something else.

    `stitch`: "" for a bare skip, which is of whatever comes. `nth`: which of several it says, `3rd
    dc`; 0 where it says none. `elsewhere`: it goes to a place of another kind, from where counting
    begins anew.
    """

    stitch: str = ""
    count: int = 0
    nth: int = 0
    elsewhere: bool = False


def _taken(item: Item) -> _Taken | None:
    """None where it cannot be told how far a step goes."""
    match item:
        case Chains() | Picots() | End():
            return _Taken()
        case Skip(count, None):
            return _Taken(count=count)
        case Skip(count, Whole(Kind(name, None, None))) if name in STITCHES:
            return _Taken(name, count)
        case Stitches(place=Place() as place) | Bracket(place=place):
            return _of_place(place)
        case Skip(target=Whole()):
            return _Taken(elsewhere=True)
        case _:
            return None


def _of_place(place: Place) -> _Taken | None:
    if place.which in (Which.SAME, Which.SKIPPED):
        return _Taken()
    if place.which in (*OPEN_PLACES, Which.LAST, Which.CENTRE) or len(place.targets) != 1:
        return None
    match place.targets:
        case (Whole(Kind(name, None, None)),) if name in STITCHES:
            nth = place.count if place.which in (Which.FIRST, Which.NTH) else 0
            return _Taken(name, place.count, nth)
        case (Whole(Kind("st")) | Part(unit=Kind("st")),):
            return None
        case _:
            return _Taken(elsewhere=True)


def _drifts(steps: Sequence[_Taken], stitch: str, group: int, ordinal: bool) -> bool:
    """Whether the repeats begin at other stitches of their groups each time, whether a bare skip
    is of such stitches or of chains; not where several repeats lie on each group."""
    anew = [n for n, one in enumerate(steps) if one.elsewhere or one.stitch not in (stitch, "")]
    if not anew:
        taken = {sum(one.count for one in steps), sum(one.count for one in steps if one.stitch)}
        if ordinal:
            return all(count % group for count in taken)
        return min(taken) > 1 and all(count % group and group % count for count in taken)
    run = 0
    for one in (*steps[anew[0] :], *steps[: anew[0]]):
        other = one.elsewhere or one.stitch not in (stitch, "")
        run = 0 if other else run + (one.count if one.stitch else 0)
        if run > group:
            return True
    return False


def _tell(item: Item, group: Kind, b: Building) -> None:
    name = write_kind(group, b.terms, overrides=b.headings.overrides)
    help_ = f'where each group is meant, begin on it, as in "1 sc in 2nd st of next {name}"'
    match item:
        case Stitches(place=Place(which=which, count=nth) as place) if which is Which.NTH or (
            which in (Which.FIRST, Which.NEXT, Which.THE) and nth == 1
        ):
            part = Part(nth if which is Which.NTH else 1, Kind("st"), group)
            one = replace(item, place=Place(Which.NEXT, (part,), span=place.span))
            help_ = f"write {b.written(one)} if it is that one of each group"
    b.tell(
        "perhaps-last-of-each",
        f"the row below has groups of {group.size} here, and the repeats begin at another stitch "
        "of them each time",
        help_,
        item.span,
    )
