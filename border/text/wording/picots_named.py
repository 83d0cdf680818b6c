"""Picots named beside their chains: `5 ch p`, `picot ch 4`; and a double picot.

Which of them is said of the other is mostly plain; where it is not, the picot gets the name of
a doubt, by which it is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import Terminals, chains_at, ended, is_last, like, past, types

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
