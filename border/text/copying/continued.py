"""A row's own steps are put together with a part of another row: where what it says itself
agrees with the other row, that goes on.

Where they agree in no place, or in more than one, nothing is put together.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.copying.made import Items
from border.text.copying.part_copies import How, PartCopy, UpTo
from border.text.copying.units import is_worked
from border.text.steps import alike, is_open, steps, without_brackets
from border.text.tree import Bracket, Chains, End, Item, Repeat, Skip, StartChain, Stitches, Text
from border.text.wording.assumed import is_shell

_FURTHEST = 8
"""So many steps are gone back over, to tell places apart that end alike."""

_MOST = 3
"""So many ways to read a row are written out."""

_AGAIN = "it is worked over and over, so no part of it stands by itself"
_OWN_AGAIN = "what stands before this is worked over and over, and has no end to go on from"
_CHAINS_LAST = "it ends with chains, which may be those of the row that comes next"
_CHAINS_FIRST = "it begins with chains, which may stand for its first stitch"
_NOTHING = "nothing of it is left"
_NOWHERE = "it makes nothing like the steps right beside this"
_OTHER_CHAINS = "it makes other chains behind the step that stands before this"
_OTHER_PLACE = "it makes in another place what stands before this"
_IN_REPEAT = "it makes the step that is meant in a repeat, and which time is not said"
_NO_SUCH = "it makes no such thing, or which of them is not said"
_NO_STAR = "it has no star"
_SEVERAL = {
    How.REST: "it makes what stands before this in more than one place",
    How.HEAD: "it makes what stands behind this in more than one place",
    How.TO_STEP: "whether that step is still worked is not said",
    How.TO_STAR: "it has more than one star",
    How.FROM_STAR: "it has more than one star",
}


class Unclear(Struct, frozen=True):
    """Why it is not sure which part is copied, and the row by each way that may be meant."""

    message: str
    rows: tuple[Text, ...] = ()


class _Parted(Exception):
    """Why it is not sure where the other row is parted, and before which steps it may be."""

    def __init__(self, message: str, places: Sequence[int] = ()) -> None:
        super().__init__(message)
        self.places = places


def joined(
    part: PartCopy, own: Text, copied: Text, ends: tuple[End, ...], *, repeated: bool
) -> Text | Unclear:
    """A row's own steps with the part of `copied` that is meant; `ends`: said behind that.

    `repeated`: rows that print no repeat are repeated.
    """
    there = tuple(without_brackets(copied.items))
    rest = part.how in (How.REST, How.FROM_STAR)
    again = repeated and part.how is How.WHOLE and not any(is_open(i) for i in there)
    if copied.repeats or again or (own.repeats and rest):
        return Unclear(_OWN_AGAIN if own.repeats and rest else _AGAIN)
    unsure = ""
    if part.how is How.BEHIND:
        return _all_behind(own, copied, there, ends)
    try:
        places = _places(part, tuple(without_brackets(own.items)), there)
    except _Parted as why:
        unsure, places = str(why), list(why.places)
    made: list[Text] = []
    for at in places:
        kept = there[at:] if rest else there[:at]
        if not kept:
            return Unclear(_NOTHING)
        items = (*own.items, *kept) if rest else (*kept, *own.items)
        if rest:
            behind = ends or own.ends or copied.ends
        else:
            behind = own.ends or (copied.ends if part.turns else ())
        made.append(Text(items, own.repeats and not rest, behind, span=own.span))
    if len(made) == 1 and not unsure:
        return made[0]
    return Unclear(unsure or _SEVERAL[part.how], tuple(made[:_MOST]))


def _all_behind(own: Text, copied: Text, there: Items, ends: tuple[End, ...]) -> Text | Unclear:
    """A row's own steps, and all of another behind them. What that begins with as chains cannot
    stand so behind a stitch."""
    chained = there and isinstance(there[0], Chains | StartChain)
    if own.repeats or any(is_open(item) for item in own.items):
        return Unclear(_OWN_AGAIN)
    behind = ends or copied.ends
    made = [Text((*own.items, *there), False, behind, span=own.span)]
    if not chained:
        return made[0]
    made.append(Text((*own.items, *there[1:]), False, behind, span=own.span))
    return Unclear(_CHAINS_FIRST, tuple(made))


def _places(part: PartCopy, own: Items, there: Items) -> list[int]:
    """Before which steps of the other row it may be parted, one at least."""
    match part.how:
        case How.WHOLE:
            if there and isinstance(there[-1], Chains):
                raise _Parted(_CHAINS_LAST)
            return [len(there)]
        case How.TO_STAR | How.FROM_STAR:
            stars = [n for n, i in enumerate(there) if isinstance(i, Repeat) and i.star]
            if not stars:
                raise _Parted(_NO_STAR)
            return stars
        case How.TO_STEP:
            assert part.upto is not None
            return _up_to(part.upto, own, there)
        case How.HEAD:
            return _before(own, there)
        case _:
            return _behind(own, there)


# --- where they agree ---------------------------------------------------------------------------


def _behind(own: Items, there: Items) -> list[int]:
    """Behind what in the other row the own steps end with: the last that is worked and, where
    chains and skips follow it, these too; if that is nowhere, a skip by itself."""
    mine, other = [alike(i) for i in own], [alike(i) for i in there]
    last = max((n for n, i in enumerate(own) if _is_step(i) or isinstance(i, Skip)), default=-1)
    last = max((n for n, i in enumerate(own) if _is_step(i)), default=last)
    if last < 0:
        raise _Parted(_NOWHERE)
    ends = _ends_of(mine[last:], other)
    if _hidden(mine[last], there):
        raise _Parted(_IN_REPEAT)
    if not ends and mine[last] not in other and any(isinstance(i, Skip) for i in own[last:]):
        ends = _ends_of(mine[last + 1 :], other)
        if _hidden(mine[-1], there):
            raise _Parted(_IN_REPEAT)
    if not ends and all(isinstance(i, Chains) for i in own[last + 1 :]):
        ends = [_past_chains(there, n) for n in _ends_of(mine[last : last + 1], other)]
        raise _Parted(_OTHER_CHAINS if ends else _NOWHERE, ends)
    if not ends:
        ends = [n for n, item in enumerate(there, start=1) if _as_made(own[-1], item)]
        raise _Parted(_OTHER_PLACE if ends else _NOWHERE, ends)
    return _longest(mine, other, ends)


def _ends_of(steps_: Sequence[Item], other: Sequence[Item]) -> list[int]:
    """The places behind just these steps."""
    n = len(steps_)
    return [at for at in range(n, len(other) + 1) if n and list(other[at - n : at]) == steps_]


def _as_made(mine: Item, other: Item) -> bool:
    """Whether two steps make the same in one place each, wherever that is."""
    if not (is_shell(mine) and is_shell(other)):
        return False
    match mine, other:
        case Bracket(items=here), Bracket(items=there):
            return [alike(i) for i in here] == [alike(i) for i in there]
        case Stitches(), Stitches():
            return replace(mine, place=None) == replace(other, place=None)
    return False


def _longest(mine: Sequence[Item], other: Sequence[Item], ends: list[int]) -> list[int]:
    """Of several places the one behind the most steps alike, if it has one worked step more."""
    running = ends
    for back in range(1, min(len(mine), _FURTHEST) + 1):
        running = [at for at in running if at >= back and other[at - back] == mine[-back]]
        if len(ends) == 1 or not running:
            break
        if _is_step(mine[-back]):
            ends = running
    return ends


def _before(own: Items, there: Items) -> list[int]:
    """Before what in the other row the own steps begin with, and the chains before it if there are
    others here."""
    first = next((n for n, item in enumerate(own) if _is_step(item)), None)
    if first is None:
        raise _Parted(_NOWHERE)
    step = alike(own[first])
    if _hidden(step, there):
        raise _Parted(_IN_REPEAT)
    found = [n for n, item in enumerate(there) if alike(item) == step]
    if not found:
        raise _Parted(_NOWHERE)
    return [_before_chains(there, n) if first else n for n in found]


def _before_chains(there: Items, at: int) -> int:
    while at and isinstance(there[at - 1], Chains):
        at -= 1
    return at


def _past_chains(there: Items, at: int) -> int:
    while at < len(there) and isinstance(there[at], Chains):
        at += 1
    return at


def _up_to(upto: UpTo, own: Items, there: Items) -> list[int]:
    """Where the other row is left: before or behind a step of it."""
    inside = (one for item in there if isinstance(item, Repeat) for one in steps(item.items))
    if any(_is(upto, item) for item in inside):
        raise _Parted(_IN_REPEAT)
    found = [n for n, item in enumerate(there) if _is(upto, item)]
    if upto.which and len(found) >= abs(upto.which):
        found = [found[upto.which - (upto.which > 0)]]
    if len(found) != 1:
        raise _Parted(_NO_SUCH)
    at = found[0]
    if upto.within:
        return [at + 1]
    if upto.chains and isinstance(next(iter(steps(own)), None), Chains):
        return [at]  # other chains stand in their place
    said_here = next((alike(item) for item in own if _is_step(item)), None)
    return [at] if said_here == alike(there[at]) else [at, at + 1]


def _is(upto: UpTo, item: Item) -> bool:
    if upto.of == "shell":
        return is_shell(item)
    if upto.chains:
        return isinstance(item, Chains) and item.count == upto.chains
    return isinstance(item, Stitches) and item.stitch == upto.of


def _is_step(item: Item) -> bool:
    return is_worked(item) or isinstance(item, Repeat)


def _hidden(step: Item, there: Items) -> bool:
    """Whether a step stands in a repeat of the other row."""
    inside: Iterator[Item] = (i for r in there if isinstance(r, Repeat) for i in steps(r.items))
    return any(alike(item) == step for item in inside)
