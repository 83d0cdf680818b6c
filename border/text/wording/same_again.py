"""Places that are the same again without that word: `3 dc in loop, …, 3 dc in this loop`, `5 more
tr in loop`, `5 tr again in loop`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import SPACES
from border.text.wording.passing import NOUNS, like, opener, past, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def in_this(t: Sequence[Terminal]) -> list[Terminal]:
    """`in this loop`, where a step was worked in a loop before: in the same loop."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        found.append(here)
        this = here.type == "PREP" and here.text.endswith(" this")
        if this and n + 1 < len(t) and _named_before(t, n, t[n + 1]):
            found.append(like(here, "SAME"))
    return found


def more_in(t: Sequence[Terminal]) -> list[Terminal]:
    """`5 more tr in loop`, `5 tr again in loop`: in the same loop."""
    found: list[Terminal] = []
    again = False
    for n, here in enumerate(t):
        more = here.type == "MORE" and types(t, n - 1, 3) == ["NUM", "MORE", "STITCH"]
        once = here.type == "SEP" and here.text.endswith("again")
        leads = once and types(t, n + 1, 2) == ["NUM", "STITCH"]  # `again 2 tr in loop`
        once = once and (leads or types(t, n - 1, 1) == ["STITCH"])
        prep = n + 3 if leads else n + 1 if once else n + 2
        noun = past(t, prep + 1, "THE")
        placed = (more or once) and types(t, prep, 1) == ["PREP"] and noun < len(t)
        if placed and _named_before(t, n, t[noun]):
            again = True
            if leads:
                found.append(replace(here, text=","))
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
    """Whether the step before was worked into such a place, since the last star or repeat."""
    if noun.type not in NOUNS - {"CH"}:
        return False
    for n in range(at - 1, 0, -1):
        if t[n].type in ("STAR", "REPEAT", "LP", "ENDING", "SKIP"):
            return False
        if t[n].type in NOUNS and types(t, opener(t, n), 1) == ["PREP"]:
            arch = _is_space(noun) and (_is_space(t[n]) or t[n].type == "CH")
            return arch or (t[n].type, t[n].kind, t[n].name) == (noun.type, noun.kind, noun.name)
    return False


def _is_space(noun: Terminal) -> bool:
    return noun.kind is not None and noun.kind.name in SPACES
