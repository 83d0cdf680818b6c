"""Picots named beside their chains: `5 ch p`, `picot ch 4`; and a double picot.

Which of them is said of the other is mostly plain; where it is not, the picot gets the name of
a doubt, by which it is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.text.wording.assumed import is_heap
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    OPENS,
    Terminals,
    chains_at,
    ended,
    is_last,
    like,
    only_ends,
    opener,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal

SIZED = "sized"
"""The name of a picot with its chains before it, `5 ch p`."""
APART = "apart"
"""The name of one with chains right behind it, `p ch 4`."""
DOUBLE = "double"
"""The name of a double picot."""
AGAIN = "again"
"""The name of one that is spelled out behind a bare one: `picot, 4 ch, 1 sc in 1st`."""
LEAF = "leaf"
"""The name of one behind which stitches may be worked down its chains."""

CLOSED = "closed"
"""The name of one with a stitch behind its chains that is taken to close them: `purl of 4 chain
and 1 slip stitch`."""
PARTED = "parted"
"""The name of one with such a stitch that is taken to be of the row: `purl of 4 chain and 1 dc`."""


def shown_behind(t: Terminals) -> Terminals:
    """`* 1 sc, 1 picot, 3 ch; repeat from *. (1 picot = 4 ch, 1 sc in the 1st.)`: as though it were
    shown where the picot is made."""
    opens = max((n for n, x in enumerate(t) if x.type == "LP"), default=len(t))
    close = next((n for n in range(opens, len(t)) if t[n].type == "RP"), len(t))
    picot = past(t, opens + 1, "NUM")
    said = types(t, picot, 2) in (["PICOT", "EQUALS"], ["PICOT", "NAMELY"])
    if not said or close == len(t) or not only_ends(t[close + 1 :]):
        return t
    steps = list(t[picot + 2 : close])
    while steps and steps[-1].type == "SEP":
        steps.pop()
    found: Terminals = []
    for n, here in enumerate(t[:opens]):
        found.append(here)
        if here.type == "PICOT" and types(t, n + 1, 1) != ["LP"]:
            found += [like(t[opens], "LP"), *steps, like(t[close], "RP")]
    return [*found, *t[close + 1 :]] if len(found) > opens else t


def made_thus(t: Terminals) -> Terminals:
    """`1 p., made thus: 4 ch., 1 single in the first`: as `that is`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        picot = types(found, len(found) - 1, 1) == ["PICOT"]
        opens = past(t, at, "SEP", "LP") if picot else at
        said = past(t, opens, "STRAY", "SEP", "NOTHING")
        thus = [x for x in t[opens:said] if x.type == "NOTHING" and x.text in _THUS]
        made = all(x.text in (*_MADE, *",.:;-") or x in thus for x in t[at:said] if x.type != "LP")
        if thus and made and chains_at(t, said)[0]:
            bracket = [x for x in t[at:opens] if x.type == "LP"]
            found += [*bracket, replace(like(thus[0], "NAMELY"), text="that is")]
            at = said
            continue
        found.append(t[at])
        at += 1
    return found


_THUS = frozenset(
    {"thus", "as follows", "thus made", "so made"}
    | {f"in {which} {way}" for which in ("this", "the following") for way in ("manner", "way")}
)
_MADE = frozenset({"made", "worked", "work", "formed", "make"})


def picots_named(t: Terminals) -> Terminals:
    """Picots with the chains that are said of them; and two for a double one."""
    found: Terminals = []
    at = 0
    while at < len(t):
        counted = types(t, at, 1) == ["NUM"]
        chains, behind = chains_at(t, at) if counted else (0, at)
        picot = t[behind] if types(t, behind, 1) == ["PICOT"] else None
        if t[at].type == "STITCH" and types(t, at + 1, 1) == ["PICOT"] and _is_double(found, t[at]):
            if types(found, len(found) - 1, 1) == ["NUM"]:
                found.pop()
            named = replace(t[at + 1], name=DOUBLE, start=t[at].start)
            number = 2 if t[at].text == "double" else 3
            found += [like(t[at], "NUM", number=number), named]
            at += 2
        elif chains and picot is not None and _is_sized(t, at, behind):
            found.append(replace(picot, number=chains, name=SIZED, start=t[at].start))
            at = behind + 1
        elif t[at].type == "PICOT" and _has_chains_behind(t, at):
            found.append(replace(t[at], name=APART))
            at += 1
        else:
            found.append(t[at])
            at += 1
    return found


def on_last_made(t: Terminals) -> Terminals:
    """`3 dc, 1 picot of 5 chain on the last dc`: where every picot stands."""
    found: Terminals = []
    at = 0
    while at < len(t):
        last = past(t, at + 1, "THE")
        end = past(t, last + 1, "STITCH", "KIND") if is_last(t, last) else at
        picot = types(found, len(found) - 1, 1) == ["PICOT"]
        picot |= types(found, len(found) - 4, 4) == ["PICOT", "OF", "NUM", "CH"]
        on = types(t, at, 1) == ["PREP"] and end > at and picot and ended(t, end)
        stitch = max((n for n, x in enumerate(found) if x.type == "STITCH"), default=-1)
        since = [x.type for x in found[stitch + 1 :] if x.type in ("SKIP", "STAR", "LP", "RP")]
        at = end if on and stitch >= 0 and not since else at
        found += t[at : at + 1]
        at += 1
    return found


class _OfShell(Struct, frozen=True):
    """A picot of a scallop, `the 2nd picot of next scallop`: where its order and it stand, and the
    place behind it all; which of the picots it is, of the next, the same or each ("": unsaid)."""

    order: int
    picot: int
    end: int
    nth: int
    of: str


def of_shells(t: Terminals, size: int) -> tuple[Terminals, Terminals]:
    """`1 dc in 2nd picot of next scallop`, where each has `size` of them: the 2nd, and the rest
    passed over. And the picots that are taken to be of the same one, which is not said."""
    named = _of_shells(t, size)
    if not any(one.of for one in named) or not _follow(t, named, size) or _beside(t, named):
        return t, []
    again = any(x.type in ("REPEAT", "SOON") for x in t)
    if any(one.of == "each" for one in named) and not again and not _is_whole(t, named):
        return t, []
    found: Terminals = []
    at = before = 0
    for n, one in enumerate(named):
        before = 0 if one.of in ("next", "each") else before
        further = one.nth - before
        order = like(t[one.order], "NEXT") if further == 1 else None
        order = order or like(t[one.order], "ORD", number=further)
        found += [*t[at : one.order], order, t[one.picot]]
        last = n + 1 == len(named) or named[n + 1].of in ("next", "each")
        if last and one.nth < size:
            stop = replace(like(t[one.picot], "SEP"), name="hard", text=";")
            skip = replace(like(t[one.picot], "SKIP"), text="skip")
            rest = like(t[one.picot], "NUM", number=size - one.nth)
            found += [stop, skip, rest, t[one.picot]]
        if one.of == "each" and not again:
            stop = replace(like(t[one.picot], "SEP"), name="hard", text=";")
            found += [stop, replace(like(t[one.picot], "REPEAT"), text="repeat")]
        at, before = one.end, one.nth
    return [*found, *t[at:]], [t[one.picot] for one in named if not one.of]


def _of_shells(t: Terminals, size: int) -> list[_OfShell]:
    """The picots that a row names by their order in a scallop; none where it names others too."""
    named: list[_OfShell] = []
    for n, here in enumerate(t):
        if here.type != "PICOT" or t[opener(t, n)].type not in OPENS | {"TO"}:
            continue
        order = t[n - 1]
        nth = (size + 1) // 2 if order.type == "CENTRE" and size % 2 else order.number
        nth = size if nth == -1 else nth
        placed = t[opener(t, n)].type == "PREP"
        if order.type not in ("ORD", "CENTRE") or not 0 < nth <= size or not placed:
            return []
        which = past(t, n + 2, "THE", "EACHOF") if types(t, n + 1, 1) == ["OF"] else n
        says = t[which].type if which > n and which < len(t) else ""
        of = {"NEXT": "next", "SAME": "same", "EACH": "each", "EVERY": "each"}.get(says, "")
        heap = which + bool(of)
        if which > n and heap < len(t) and is_heap(t[heap]):
            named.append(_OfShell(n - 1, n, heap + 1, nth, of or "next"))
        elif which > n:
            return []  # `of the last scallop`, `of the 3`
        else:
            named.append(_OfShell(n - 1, n, n + 1, nth, ""))
    return named


def _follow(t: Terminals, named: Sequence[_OfShell], size: int) -> bool:
    """Whether each picot that is of no next scallop is behind another of the same, in the same
    list."""
    if size < _SEVERAL or named[0].of in ("", "same"):
        return False
    for before, one in pairwise(named):
        between = {x.type for x in t[before.end : one.order]}
        apart = bool(between & {"STAR", "CROSS", "LP", "RP", "REPEAT"})
        if one.of in ("", "same") and (apart or one.nth <= before.nth or before.of == "each"):
            return False
    return True


_SEVERAL = 2


def _beside(t: Terminals, named: Sequence[_OfShell]) -> bool:
    """Whether a row works into, or misses, what may stand between the picots of one scallop: not
    `the loop`, `the dc between the scallops`."""
    inside = {n for one in named for n in range(one.order, one.end)}
    for n, here in enumerate(t):
        if here.type == "REPEAT":
            break  # behind it the row is closed
        if here.type == "SKIP" or (here.type == "BETWEEN" and types(t, n - 1, 1) not in _PLACED):
            return True
        if here.type not in NOUNS or n in inside:
            continue
        opens = t[opener(t, n)].type
        made_ = opens not in OPENS and here.type == "STITCH"
        if made_ and types(t, past(t, n + 1, "MOD"), 1) != ["PREP"] and not _in_list(t, n):
            return True  # without a place
        arch = here.kind in ARCHES or types(t, n + 1, 1) == ["BETWEEN"]
        if opens == "PREP" and not arch:
            return True
    return False


def _in_list(t: Terminals, at: int) -> bool:
    """Whether a stitch stands in a bracket with a place behind it: `(1 dc, 2 ch, 1 dc) in …`."""
    end = next((n for n in range(at, len(t)) if t[n].type in ("LP", "RP", "REPEAT")), at)
    return types(t, end, 2) == ["RP", "PREP"]


_PLACED = (["STITCH"], ["CH"], ["KIND"])


def _is_whole(t: Terminals, named: Sequence[_OfShell]) -> bool:
    """Whether one stitch in a picot of each scallop is all of the row."""
    stitches = sum(x.type in ("STITCH", "CH", "LP", "STAR") for x in t)
    return len(named) == stitches == 1 and only_ends(t[named[0].end :])


def _is_double(found: Sequence[Terminal], here: Terminal) -> bool:
    """Whether `double`, `treble` is said of the picot behind it, and is no counted stitch."""
    counted = types(found, len(found) - 1, 1) == ["NUM"] and found[-1].text not in ("a", "one")
    return here.text in ("double", "treble", "triple") and not counted


def _is_sized(t: Sequence[Terminal], at: int, behind: int) -> bool:
    """Whether `5 ch` right before a picot is its size: not `3-ch p`, nor `5 ch p 5 ch`."""
    glued = t[at + 1].glued
    return not glued and not t[behind].number and ended(t, behind + 1)


def _has_chains_behind(t: Sequence[Terminal], at: int) -> bool:
    """Whether `ch 4` stands right behind a picot that nothing is said of, and none before it."""
    bare = not t[at].number and not t[at].name
    parted = not at or t[at - 1].type in ("SEP", "AND", "LP", "STAR", "NUM")
    chains = types(t, at - 2, 2) == ["CH", "NUM"] if at > 1 else False
    return bare and parted and not chains and types(t, at + 1, 2) == ["CH", "NUM"]
