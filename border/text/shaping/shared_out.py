"""Stitches told twice: so many in all, and how they are shared out over their places.

`3 treble, one in each of the next 3 loops` are three, and so are `3 treble (1 in loop, 1 on the
double, 1 in loop)`: where the parts come to the number told, it says nothing more.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.shaping.sentences import place_at
from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.passing import (
    OPENS,
    WHICH,
    Terminals,
    ended,
    is_stop,
    like,
    past,
    stitch_left_out,
    types,
)

SHARED = "shared"
"""The name of the first place of those that a comma alone says so of."""
BESIDES = "besides"
"""The name of the first place of those in a bracket that come to another number."""
_PARTS = ("SEP", "AND")


def shared_out(t: Terminals) -> Terminals:
    """The terminals with every such list as the parts alone, each with its stitch."""
    found: Terminals = []
    at = 0
    while at < len(t):
        counted = types(t, at, 2) == ["NUM", "STITCH"] and t[at].number > 1
        counted = counted and (not found or found[-1].type not in OPENS | WHICH | {"EACHOF"})
        parts, end = _parts(t, at) if counted else ([], at)
        if not parts:
            found.append(t[at])
            at += 1
            continue
        found += parts
        at = end
    return found


def on_both(t: Terminals) -> Terminals:
    """`4 treble on the next double and 3 chain`, `1 double on the next treble and the 2 following
    treble`, `1 treble in each of 3 treble and 3 chain`: one on each of all those."""
    found: Terminals = []
    at = 0
    while at < len(t):
        parts, end = _both(t, at) if types(t, at, 3) == ["NUM", "STITCH", "PREP"] else ([], at)
        found += parts or [t[at]]
        at = max(end, at + 1)
    return found


def _both(t: Terminals, at: int) -> tuple[Terminals, int]:
    """The two parts of what goes on each of two runs, and the place behind them; else none."""
    first = _run(t, at + 3)
    second = _run(t, first.end + 1) if first and types(t, first.end, 1) == ["AND"] else None
    if not first or not second or not ended(t, second.end) or not (first.follows or first.each):
        return [], at
    firm = second.follows
    missed = types(t, past(t, second.end, "SEP"), 1) == ["SKIP"]  # then those chains are made
    shared = t[at].number == first.count + second.count
    each = t[at].number == 1 and (first.each or (firm and first.count == 1))
    if not (shared or each) or (missed and not firm):
        return [], at
    found: Terminals = []
    for run in (first, second):
        place = replace(t[at + 2], name="" if firm or run is second else SHARED)
        which = like(place, "NEXT")
        several = [like(place, "EACHOF"), which, like(place, "NUM", number=run.count)]
        found += [like(place, "NUM", number=1), t[at + 1], place]
        found += [*(several if run.count > 1 else [which]), t[run.end - 1], like(place, "SEP")]
    return found[:-1], second.end


class _Run(Struct, frozen=True):
    """`the next 3 dc`: how many, said to come next or not, with `each of` or not, and its end."""

    count: int
    follows: bool
    each: bool
    end: int


def _run(t: Terminals, at: int) -> _Run | None:
    """The run of stitches or chains that is named here, behind a preposition or an `and`."""
    each = types(t, at, 1) == ["EACHOF"]
    end = past(t, at, "EACHOF", "THE", "NEXT", "NUM")
    words = t[at:end]
    count = next((x.number for x in words if x.type == "NUM"), 1)
    follows = any(x.type == "NEXT" for x in words)
    if types(t, end, 1) not in (["STITCH"], ["CH"]) or not words:
        return None
    return _Run(count, follows, each, end + 1)


def _parts(t: Terminals, at: int) -> tuple[Terminals, int]:
    """The parts of what is counted at a place, and the place behind them; none where they do not
    come to as many."""
    bracket = types(t, at + 2, 1) == ["LP"]
    start = past(t, at + 3, "NAMELY", "SEP") if bracket else past(t, at + 2, "SEP", "NAMELY")
    said = t[at + 2 : start]
    firmly = bracket or any(x.type == "NAMELY" for x in said)
    if not said or (said[0].name == "hard" and not firmly):
        return [], at
    if (one_each := _one_on_each(t, at, start, bracket))[0]:
        return one_each
    found: Terminals = []
    total, here, end = 0, start, at
    while types(t, here, 1) == ["NUM"]:
        place = here + (2 if _is_named_again(t, here + 1, t[at + 1], bracket) else 1)
        behind = place_at(t, place) if types(t, place, 1) == ["PREP"] else place
        behind = _behind_unsaid(t, place) if behind == place else behind
        if behind == place:
            break
        found += [t[here], t[at + 1], *t[place:behind]]
        total += t[here].number * _places(t[place:behind])
        end = past(t, behind, "SEP") if bracket else behind
        here = past(t, behind, *_PARTS)
        if total >= t[at].number or here == behind or is_stop(t[behind]):
            break
        found.append(t[behind])
    several = any(x.type in (*_PARTS, "EACHOF") for x in found)
    closed = bracket and types(t, end, 1) == ["RP"] and types(t, end + 1, 1) != ["TIMES"]
    if several and closed and total != t[at].number:
        opens = next(n for n in range(start, end) if t[n].type == "PREP")
        return [*t[at:opens], replace(t[opens], name=BESIDES), *t[opens + 1 : end + 1]], end + 1
    if total != t[at].number or not several:
        return [], at
    if not firmly and all(x.type != "EACHOF" for x in found):
        opens = next(n for n, x in enumerate(found) if x.type == "PREP")
        found[opens] = replace(found[opens], name=SHARED)
    if bracket:
        return (found, end + 1) if types(t, end, 1) == ["RP"] else ([], at)
    return found, end


def _one_on_each(
    t: Sequence[Terminal], at: int, start: int, bracket: bool
) -> tuple[Terminals, int]:
    """`3 treble, one on each treble`: on each of as many; else none."""
    named = _is_named_again(t, start + 1, t[at + 1], bracket)
    place = start + (2 if named else 1)
    one = types(t, start, 1) == ["NUM"] and t[start].number == 1
    if not one or types(t, place, 2) != ["PREP", "EACH"]:
        return [], at
    noun = past(t, place + 2, "KIND", "STITCH", "CH")
    end = past(t, noun, "SEP") if bracket else noun
    closed = bracket and types(t, end, 1) == ["RP"]
    if noun > place + 3 or not (closed or (not bracket and ended(t, noun))):
        return [], at
    of = t[noun - 1] if noun > place + 2 else stitch_left_out(t[place])
    prep, each = replace(t[place], name="" if bracket else SHARED), t[place + 1]
    several = [like(each, "EACHOF"), like(each, "NEXT"), t[at]]
    return [t[start], t[at + 1], prep, *several, of], end + closed


def _is_named_again(t: Sequence[Terminal], at: int, stitch: Terminal, bracket: bool) -> bool:
    """Whether a part names what it is made of: `(1 st in …`, `(1 treble in …` behind treble."""
    here = t[at] if at < len(t) else None
    if here is None or (bracket and here.type == "STITCH" and here.name == stitch.name):
        return here is not None
    return here.type == "KIND" and here.kind == Kind("st")


def _behind_unsaid(t: Sequence[Terminal], at: int) -> int:
    """Behind `in each of 3`, `in the following`, with no noun; else the same place."""
    if types(t, at, 1) != ["PREP"]:
        return at
    end = past(t, at + 1, "EACHOF", "THE", "NEXT", "ORD", "NUM")
    return end if end > at + 1 and (ended(t, end) or t[end].type == "AND") else at


def _places(place: Sequence[Terminal]) -> int:
    """How many places a part goes into."""
    each = any(x.type == "EACHOF" for x in place)
    return next((x.number for x in place if x.type == "NUM"), 1) if each else 1
