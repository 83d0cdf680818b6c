"""Where a row goes back to, in other words than `repeat from *`: `begin again from +`, `repeat
these 5 chain and 1 dc to the end`, `continue the 5 chain and the 1 dc`; and where chains do,
`fasten back in 5th dc to the right`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import (
    ARCHES,
    Terminals,
    chains_at,
    ended,
    is_last,
    like,
    opens_before,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_MARKS = frozenset({"STAR", "MARK", "CROSS", "STARWORD"})
_AGAIN = frozenset(f"{verb} again" for verb in ("begin", "commence", "start"))


def begun_from_mark(t: Terminals) -> Terminals:
    """`begin again from *`: as `repeat from *`."""
    return [
        replace(x, type="REPEAT", name="") if _goes_to_mark(t, n) else x for n, x in enumerate(t)
    ]


def mark_to_mark(t: Terminals) -> Terminals:
    """`repeat * to *`: as `repeat from * to *`."""
    found: Terminals = []
    for n, here in enumerate(t):
        found.append(here)
        marks = types(t, n + 1, 3)
        pair = marks[:1] == marks[2:] and marks[:1] and marks[0] in _MARKS
        if here.type == "REPEAT" and pair and marks[1] == "TO":
            found.append(like(here, "FROM"))
    return found


def _goes_to_mark(t: Sequence[Terminal], at: int) -> bool:
    again = t[at].type in ("REMARK", "BEGIN") and t[at].text in _AGAIN
    mark = past(t, at + 2, "THE")
    return again and types(t, at + 1, 1) == ["FROM"] and mark < len(t) and t[mark].type in _MARKS


def to_the_right(t: Terminals) -> Terminals:
    """`7 chain, fasten back in 5th dc to the right, 9 dc in loop`: with a turn on either side."""
    found: Terminals = []
    at = 0
    while at < len(t):
        chains = chains_at(t, at)[1]
        fastens = past(t, past(t, chains, "SEP", "AND"), "NUM") if chains > at else len(t)
        prep = fastens + 1
        closes = types(t, fastens, 1) in (["CATCH"], ["STITCH"], ["ENDING"])
        place = past(t, prep + 1, "THE", "ORD")
        right = past(t, place + 2, "THE")
        named = types(t, prep, 1) == ["PREP"] and types(t, place, 2) in _NOUN_TO
        named = named and types(t, place - 1, 1) == ["ORD"]
        if closes and named and right < len(t) and t[right].text == "right" and ended(t, right + 1):
            turn = replace(like(t[fastens], "ENDING", name="turn"), text="turn")
            comma = like(t[fastens], "SEP")
            behind = replace(like(t[right], "ENDING", name="turn"), text="turn")
            first = past(t, chains, "SEP", "AND")
            found += [*t[at:chains], comma, turn, comma, *t[first : place + 1], comma, behind]
            at = right + 1
            continue
        found.append(t[at])
        at += 1
    return found


_NOUN_TO = (["STITCH", "TO"], ["KIND", "TO"])


def last_fastened(t: Terminals) -> Terminals:
    """`repeat, fastening the last 6 ch to the first dc`: as `joining` them."""
    found = list(t)
    for n, here in enumerate(t):
        order = past(t, n + 1, "THE")
        last = is_last(t, order)
        again = any(x.type == "REPEAT" for x in t[:n])
        if here.text == "fastening" and last and again and chains_at(t, order + 1)[0]:
            found[n] = replace(here, type="ENDING", name="join", text="joining")
            return [*found[: n + 1], *found[order:]]
    return found


def last_united(t: Terminals) -> Terminals:
    """`repeat, the last 9 ch being united to the first dc`, `the last loop being caught down where
    the round began`: as `joining the last 9 ch`."""
    for n, here in enumerate(t):
        order = past(t, n, "THE")
        last = is_last(t, order)
        repeat = next((i for i in range(n) if t[i].type == "REPEAT"), 0)
        if not (last and repeat and t[n - 1].type == "SEP"):
            continue
        star = max((i for i in range(repeat) if t[i].type == "STAR"), default=-1)
        own, _ = chains_at(t, star + 1)
        chains, behind = chains_at(t, order + 1)
        loop = types(t, order + 1, 1) == ["KIND"] and t[order + 1].kind in ARCHES
        behind = behind if chains else order + 1 + loop
        being = behind < len(t) and t[behind].text in ("being", "is")
        verb = t[behind + 1].text.split()[0] if behind + 1 < len(t) else ""
        if not being or verb not in _UNITES or star < 0 or not own or (chains or own) != own:
            continue
        end = next((i for i in range(behind, len(t)) if t[i].type == "SEP"), len(t))
        joins = replace(here, type="ENDING", name="join", text="joining")
        size = [like(here, "NUM", number=own), replace(like(here, "CH"), text="ch")]
        return [*t[:n], joins, replace(t[order], name=""), *size, *t[end:]]
    return t


_UNITES = frozenset({"united", "joined", "caught", "fastened", "joining", "connected"})


def steps_repeated(t: Terminals) -> Terminals:
    """`repeat these 5 chain and 1 dc to the end`: from where those chains were made last."""
    at = next((n for n, x in enumerate(t) if x.type in ("REPEAT", "SOON")), len(t))
    these = past(t, at + 1, "THE")
    chains, behind = chains_at(t, these)
    missed = past(t, behind, "SEP")
    missed = past(t, missed + 1, "NUM") if types(t, missed, 1) == ["SKIP"] else behind
    stitch = past(t, missed, "SEP", "AND", "THE", "NUM")
    parted = types(t, missed, 1) in (["AND"], ["SEP"])
    named = chains and types(t, stitch, 1) == ["STITCH"] and parted and ended(t, stitch + 1)
    end = past(t, stitch + 1, "SEP") if named and t[stitch + 1 : stitch + 2] else stitch + 1
    end = end if types(t, end, 1) == ["TOEND"] else stitch + 1
    if not named or any(x.type in _MARKS for x in t[:at]):
        return t
    starts = [n for n in range(at) if chains_at(t, n)[0] == chains and _begins(t, n)]
    behind_them = t[max(starts, default=at) : at]
    if all(x.type != "STITCH" or x.name != t[stitch].name for x in behind_them):
        return t
    star = like(t[at], "STAR")
    again = [like(t[at], "REPEAT"), like(t[at], "FROM"), star]
    return [*t[: starts[-1]], star, *t[starts[-1] : at], *again, *t[end:]]


def _begins(t: Sequence[Terminal], at: int) -> bool:
    """Whether a step begins at a word."""
    return at == 0 or t[at - 1].type in ("SEP", "AND")


def repeated_in(t: Terminals) -> Terminals:
    """`* 1 dc, 5 tr, 1 dc in loop; repeat from * in each of next 3 loops`: 3 times more, where the
    steps name such a place."""
    for again, here in enumerate(t):
        at = past(t, again + 1, "FROM", "STAR")
        which = past(t, at + 1, "EACHOF", "EACH", "OF", "THE", "NEXT")
        placed = here.type == "REPEAT" and types(t, at, 1) == ["PREP"] and which > at + 1
        count = types(t, which, 1) == ["NUM"] and types(t, which + 1, 1) in (["KIND"], ["STITCH"])
        if not placed or not count or not ended(t, which + 2):
            continue
        noun = t[which + 1]
        named = [
            x.name or x.kind
            for n, x in enumerate(t[:again])
            if x.type in ("KIND", "STITCH") and opens_before(t, n)
        ]
        if named[-1:] == [noun.name or noun.kind]:
            number = t[which]
            often = [number, like(number, "TIMES"), like(number, "MORE")]
            return [*t[:at], *often, *t[which + 2 :]]
    return t
