"""A comma that a page leaves out between what is made and the chains behind it, or behind where a
row begins: `1 plain in the centre of the chain 5 chain`, `begin in a loop 3 dc in same loop`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import NOUNS, like, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def commas_left_out(t: Sequence[Terminal]) -> list[Terminal]:
    """The same words with the comma that stands before `5 chain` elsewhere."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        found.append(here)
        begun = _has_begun(t, n) and types(t, n + 1, 1) == ["NUM"]
        if begun and types(t, n + 2, 1) not in _GO_ON:  # not `begin in next ch-1 space`
            found.append(replace(like(here, "SEP"), text=","))
            continue
        chains = types(t, n + 1, 2) in _CHAINS and types(t, n + 3, 1) not in _GO_ON
        if not chains and types(t, n + 1, 4) != ["NUM", "CH", "OF", "NUM"]:
            continue
        made = here.type == "STITCH" and types(t, n - 1, 1) == ["NUM"]
        named = here.type == "CH" and n > 0 and t[n - 1].type in _NAMES
        if made or named:
            found.append(replace(like(here, "SEP"), text=","))
    return found


def _has_begun(t: Sequence[Terminal], at: int) -> bool:
    """Whether a row has but said where it begins: `begin in a loop`, before `3 dc in same loop`."""
    if t[0].type != "BEGIN" or t[at].type not in NOUNS:
        return False
    stop = next((n for n, x in enumerate(t) if x.type in {"SEP", *NOUNS}), at)
    return stop == at


_CHAINS = (["NUM", "CH"], ["CH", "NUM"])
_GO_ON = (["KIND"], ["BETWEEN"], ["AFTER"], ["BEFORE"], ["AS"], ["OF"])
"""Behind these the chains are no step: `2 dc 3 ch between`, `in the 2 dc 3 ch loop`."""

_NAMES = frozenset({"OF", "THE", "NEXT", "SAME", "PREP", "CENTRE", "ORD", "EACH"})
