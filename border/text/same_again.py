"""Places that are the same again without that word: `3 dc in loop, …, 3 dc in this loop`, `5 more
tr in loop`, `5 tr again in loop`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from border.text.passing import NOUNS, like, opens_before, past, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def in_this(t: Sequence[Terminal]) -> list[Terminal]:
    """`in this loop`, where a step was worked in a loop before: in the same loop."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        found.append(here)
        this = here.type == "PREP" and here.text.split()[-1] == "this"
        if this and n + 1 < len(t) and _named_before(t, n, t[n + 1]):
            found.append(like(here, "SAME"))
    return found


def more_in(t: Sequence[Terminal]) -> list[Terminal]:
    """`5 more tr in loop`, `5 tr again in loop`: in the same loop."""
    found: list[Terminal] = []
    again = False
    for n, here in enumerate(t):
        more = here.type == "MORE" and types(t, n - 1, 3) == ["NUM", "MORE", "STITCH"]
        once = here.type == "SEP" and here.text == "again" and types(t, n - 1, 1) == ["STITCH"]
        prep = n + 1 if once else n + 2
        noun = past(t, prep + 1, "THE")
        placed = (more or once) and types(t, prep, 1) == ["PREP"] and noun < len(t)
        if placed and _named_before(t, n, t[noun]):
            again = True
            continue
        found.append(here)
        if again and here.type == "PREP":
            found.append(like(here, "SAME"))
            again = False
    return [x for n, x in enumerate(found) if not _needless(found, n)]


def _needless(t: Sequence[Terminal], at: int) -> bool:
    """Whether a `the` stands between `same` and its noun."""
    return t[at].type == "THE" and types(t, at - 1, 1) == ["SAME"]


def _named_before(t: Sequence[Terminal], at: int, noun: Terminal) -> bool:
    """Whether a step was worked into such a place before, since the last star or repeat."""
    if noun.type not in NOUNS - {"CH"}:
        return False
    for n in range(at - 1, 0, -1):
        if t[n].type in ("STAR", "REPEAT", "LP", "ENDING"):
            return False
        if t[n].type == noun.type and t[n].kind == noun.kind and opens_before(t, n):
            return t[n].name == noun.name
    return False
