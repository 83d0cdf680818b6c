"""Stitches told twice: so many in all, and how they are shared out over their places.

`3 treble, one in each of the next 3 loops` are three, and so are `3 treble (1 in loop, 1 on the
double, 1 in loop)`: where the parts come to the number told, it says nothing more.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.passing import OPENS, WHICH, Terminals, ended, past, types
from border.text.sentences import place_at
from border.text.terminals import Terminal

SHARED = "shared"
"""The name of the first place of those that a comma alone says so of."""
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


def _parts(t: Terminals, at: int) -> tuple[Terminals, int]:
    """The parts of what is counted at a place, and the place behind them; none where they do not
    come to as many."""
    bracket = types(t, at + 2, 1) == ["LP"]
    start = past(t, at + 3, "NAMELY", "SEP") if bracket else past(t, at + 2, "SEP", "NAMELY")
    said = t[at + 2 : start]
    firmly = bracket or any(x.type == "NAMELY" for x in said)
    if not said or (said[0].name == "hard" and not firmly):
        return [], at
    found: Terminals = []
    total, here, end = 0, start, at
    while types(t, here, 1) == ["NUM"]:
        place = (
            past(t, here + 1, "KIND")
            if t[here + 1 : here + 2] and _is_st(t[here + 1])
            else here + 1
        )
        behind = place_at(t, place) if types(t, place, 1) == ["PREP"] else place
        behind = _behind_unsaid(t, place) if behind == place else behind
        if behind == place:
            break
        found += [t[here], t[at + 1], *t[place:behind]]
        total += t[here].number * _places(t[place:behind])
        end = behind
        here = past(t, behind, *_PARTS)
        if total >= t[at].number or here == behind or t[behind].name == "hard":
            break
        found.append(t[behind])
    several = any(x.type in (*_PARTS, "EACHOF") for x in found)
    if total != t[at].number or not several:
        return [], at
    if not firmly and all(x.type != "EACHOF" for x in found):
        opens = next(n for n, x in enumerate(found) if x.type == "PREP")
        found[opens] = replace(found[opens], name=SHARED)
    if bracket:
        return (found, end + 1) if types(t, end, 1) == ["RP"] else ([], at)
    return found, end


def _is_st(here: Terminal) -> bool:
    return here.kind is not None and here.kind.name == "st"


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
