"""A repeat that begins at another stitch of its group each time: `1 sc in 3rd dc, ch 5; repeat`
over groups of 5 dc. Is the 3rd of each group meant?
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.stands_below import loop_sizes, stands_in
from border.text.steps import OPEN_PLACES, walk
from border.text.tree import (
    ST,
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Skip,
    StartChain,
    Stitches,
    Text,
    Which,
    Whole,
)
from border.text.written_places import write_kind


def tell_drift(items: Sequence[Item], b: Building) -> None:
    """Tell of a repeat that takes so many stitches of groups that the next begins inside one."""
    if b.below is None:
        return
    taken = _of_the_named([_taken(item) for item in items])
    if any(one is None for one in taken):
        return
    steps = [one for one in taken if one is not None and (one.count or one.elsewhere)]
    for stitch in dict.fromkeys(one.stitch for one in steps if one.stitch):
        nth = max(one.nth for one in steps if one.stitch == stitch)
        group = _loops(b.below) if stitch == _CH else stands_in(b.below, stitch, ordinal=nth > 1)
        if group is not None and _drifts(steps, stitch, group.size or 1, nth > 0):
            of_them = [
                i for i, one in zip(items, taken, strict=True) if one and one.stitch == stitch
            ]
            if not any(b.is_asked(one.span) for one in of_them):
                _tell(of_them[0], group, b)
        elif group is not None and stitch != _CH:
            _tell_on_their_like(items, taken, group, b)


_CH = "ch"


def _loops(below: Text) -> Kind | None:
    """The loops that a row makes, where all are of as many chains and stitches part them."""
    sizes = loop_sizes(below)
    begun = any(isinstance(one, StartChain) for one in walk(below.items))
    return Kind("space", sizes.pop()) if len(sizes) == 1 and not begun else None


class _Taken(Struct, frozen=True):
    """What one step takes: so many of a stitch, one after another, or something else.

    `stitch`: "" for a bare skip, which is of whatever comes. `nth`: which of several it says, `3rd
    dc`; 0 where it says none. `elsewhere`: it goes to a place of another kind, from where counting
    begins anew. `skipped`: they are missed.
    """

    stitch: str = ""
    count: int = 0
    nth: int = 0
    elsewhere: bool = False
    skipped: bool = False


def _taken(item: Item) -> _Taken | None:
    """None where it cannot be told how far a step goes."""
    match item:
        case Chains() | Picots() | End():
            return _Taken()
        case Skip(count, None):
            return _Taken(count=count)
        case Skip(count, Whole(Kind(name, None, None))) if name in STITCHES:
            return _Taken(name, count, skipped=True)
        case Stitches(place=Place() as place) | Bracket(place=place):
            return _of_place(place)
        case Skip(count, Whole(Kind("ch"))):
            return _Taken(_CH, count, skipped=True)
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
        case (Whole(Kind("ch")),):  # of `in 3rd ch` it is asked by itself
            return None if place.which is Which.NTH else _Taken(_CH, place.count)
        case (Whole(Kind("st")),) if place.which is Which.NEXT:
            return _Taken(ST.name, place.count)
        case (Whole(Kind("st")) | Part(unit=Kind("st")),):
            return None
        case _:
            return _Taken(elsewhere=True)


def _of_the_named(taken: Sequence[_Taken | None]) -> Sequence[_Taken | None]:
    """The same, where `miss the 1st tr, 1 dc on each of the next 3` takes tr in all; None for such
    stitches where no step, or several, name what they are."""
    named = {one.stitch for one in taken if one and one.stitch} - {ST.name}
    bare = [one is not None and one.stitch == ST.name for one in taken]
    skipped = any(one is not None and (one.skipped or one.nth) for one in taken)
    if (
        len(named) == 1
        and _CH not in named
        and skipped
        and not any(one and one.elsewhere for one in taken)
    ):
        (name,) = named
        return [
            replace(one, stitch=name) if one and st else one
            for one, st in zip(taken, bare, strict=True)
        ]
    return [None if st else one for one, st in zip(taken, bare, strict=True)]


def _tell_on_their_like(
    items: Sequence[Item], taken: Sequence[_Taken | None], group: Kind, b: Building
) -> None:
    """Ask of `6 tr on tr` over groups of 2, of `3 tr on tr` over groups of 5 of which the others
    are left: on the next so many, or on all of each group?"""
    size = group.size or 1
    others = sum(one.count for one in taken if one and one.stitch in ("", group.stitch))
    for item, one in zip(items, taken, strict=True):
        match item:
            case Stitches(place=Place() as place) if one and one.stitch == group.stitch:
                alone = others == one.count < size
                if one.count < _SEVERAL or not (one.count > size or alone):
                    continue
                if _next_unsaid(place, b) and not b.is_asked(item.span):
                    _tell_so_many(item, group, b)


_SEVERAL = 2


def _next_unsaid(place: Place, b: Building) -> bool:
    """Whether a place does not say that what it names are the next: `on tr`, `on the 3 tr`."""
    if place.span is None:
        return False
    within = [t for t in b.terminals if place.span.start <= t.start < place.span.end]
    return any(a.type == "NEXT" and a.start == c.start for a, c in pairwise(within))


def _tell_so_many(item: Stitches, group: Kind, b: Building) -> None:
    assert item.place is not None
    size = group.size or 1
    whole = replace(item, count=size, place=replace(item.place, count=size))
    fewer = item.place.count < size
    b.tell(
        "perhaps-fewer" if fewer else "perhaps-one-place",
        f"this is taken as {b.written(item)}, and the row below has groups of {size} here",
        f"write {b.written(whole)} if it goes over each group, "
        + ("or where the others are missed" if fewer else "with as many in each as are meant"),
        item.span,
    )


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
    loops = group.name == "space"
    help_ = f'where each group is meant, begin on it, as in "1 sc in 2nd st of next {name}"'
    if loops:
        help_ = f'where each loop is meant, name it, as in "1 sc in 2nd ch of next {name}"'
    match item:
        case Stitches(place=Place(which=which, count=nth) as place) if which is Which.NTH or (
            which in (Which.FIRST, Which.NEXT, Which.THE) and nth == 1
        ):
            part = Part(nth if which is Which.NTH else 1, Kind("ch" if loops else "st"), group)
            one = replace(item, place=Place(Which.NEXT, (part,), span=place.span))
            help_ = (
                f"write {b.written(one)} if it is that one of each {'loop' if loops else 'group'}"
            )
    drifts = "and the repeats begin at another stitch of them each time"
    if loops:
        drifts = "and the repeats go on from one into the next"
    b.tell(
        "perhaps-last-of-each",
        f"the row below has {'loops' if loops else 'groups'} of {group.size} here, {drifts}",
        help_,
        item.span,
    )
