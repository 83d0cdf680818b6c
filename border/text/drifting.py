"""A repeat that begins at another stitch of its group each time: `1 sc in 3rd dc, ch 5; repeat`
over groups of 5 dc. Is the 3rd of each group meant?
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.steps import OPEN_PLACES
from border.text.tree import (
    Begin,
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
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


def stands_in(below: Text, stitch: str, *, ordinal: bool) -> Kind | None:
    """What a stitch stands in, in the row below: a run between others or chains; or else, of
    `ordinal` ones, a group in one place. None where they differ, or none part them."""
    made = list(_made(_period(below)))
    if stitch not in made or any(one is None for one in made):
        return None
    if set(made) == {stitch}:
        size = worked_together(below, stitch)
        return Kind("group", size, stitch) if ordinal and size else None
    while made[0] == stitch or made[-1] != stitch:
        made.append(made.pop(0))
    sizes = {len(run) for run in "".join("x" if one == stitch else " " for one in made).split()}
    size = sizes.pop()
    return None if sizes or size == 1 else Kind("run", size, stitch)


def worked_together(below: Text, stitch: str) -> int:
    """How many of a stitch a row works into one place over and over, where nothing parts them;
    else 0."""
    steps = _period(below)
    over_again = below.repeats or steps is not below.items
    sizes = {
        one.count
        for one in steps
        if isinstance(one, Stitches) and one.place is not None
        if over_again or one.place.which in OPEN_PLACES
    }
    alone = set(_made(steps)) == {stitch} and len(sizes) == 1
    return sizes.pop() if alone and max(sizes) > 1 else 0


def stand_alone(below: Text | None, stitch: str) -> bool:
    """Whether each of a stitch that the row below makes stands alone, between others or chains."""
    made = list(_made(_period(below))) if below is not None else []
    others = len(set(made)) > 1 and stitch in made and None not in made
    beside = zip(made, [*made[1:], *made[:1]], strict=True)
    return others and all(set(two) != {stitch} for two in beside)


def _period(text: Text) -> Sequence[Item]:
    """The steps of a row that are worked over and over."""
    starred = (i for i in text.items if isinstance(i, Repeat) and i.times != 1 and i.star)
    repeat = None if text.repeats else next(starred, None)
    return text.items if repeat is None else repeat.items


def _made(items: Sequence[Item]) -> Iterator[str | None]:
    """What steps make, one after another: names of stitches, "ch" for chains; None where it is
    not known how many."""
    for item in items:
        match item:
            case Chains():
                yield "ch"
            case Stitches():
                yield from _made_of(item)
            case Bracket(items=inner, parted=parted, place=place):
                times = place.count if place.each else 1
                for _ in range(min(times, _MANY)):
                    yield from _made(inner)
                    if parted:
                        yield "ch"
            case Repeat(items=inner, times=int() as times):
                for _ in range(min(times, _MANY)):
                    yield from _made(inner)
            case Skip() | Picots() | End() | Begin() | StartChain():
                pass
            case _:
                yield None


_MANY = 99


def _made_of(item: Stitches) -> Iterator[str]:
    place = item.place
    count = 1 if item.together else item.count
    if place is not None and place.each and not item.together:
        count *= place.count
    for n in range(min(count, _MANY)):
        yield item.stitch
        if item.between and n + 1 < count:
            yield "ch"
    if item.parted:
        yield "ch"


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
