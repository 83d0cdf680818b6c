"""Popcorns, by the way they are made: `5 dc in next st, take out the hook, insert it in the first
of the 5 dc and draw the dropped loop through`: five that are worked off as one.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from border.text.wording.passing import Terminals, ended, like, past

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_LETS_GO = frozenset(
    {"take", "taking", "remove", "removing", "withdraw", "withdrawing", "drop", "dropping"}
    | {"slip", "draw", "drawing", "take up", "take out"}
)
"""One of these begins what is done with the hook, or with its loop."""
_OF = frozenset({"hook", "needle", "loop", "loops", "stitch", "out"})
_LONGEST = 34
"""In no more words it is said how they are drawn together."""


def popcorns(t: Terminals) -> Terminals:
    """The stitches drawn together in so many words as `…, worked off together`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        end = _drawn(t, at) if t[at].type == "SEP" else at
        if end == at:
            found.append(t[at])
            at += 1
            continue
        found.append(like(t[at], "DRAWING"))
        at = end
    return found


def _drawn(t: Sequence[Terminal], at: int) -> int:
    """Behind `, remove hook, insert it in the first and draw the loop through`; else the place."""
    lets_go = past(t, at + 1, "AND", "SEP")
    clause = next((n for n in range(lets_go, len(t)) if t[n].type in ("SEP", "AND")), len(t))
    said = {word for x in t[lets_go:clause] for word in x.text.split()}
    if not any(x.text in _LETS_GO for x in t[lets_go : lets_go + 1]) or not said & _OF:
        return at
    if not any(x.type == "STITCH" for x in t[:at]):
        return at
    stop = min(len(t), lets_go + _LONGEST)
    first = next((n for n in range(clause, stop) if t[n].type == "ORD" and t[n].number == 1), stop)
    through = (n for n in range(first, stop) if t[n].text == "through" and ended(t, n + 1))
    end = next(through, -1) + 1
    works = any(x.type in ("REPEAT", "SKIP", "CH", "STAR", "LP") for x in t[at:end])
    return end if end and not works else at
