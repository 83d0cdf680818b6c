"""A round that begins on the chains that the round below began with: `1 sc in top of 3 ch`.

They stand for that round's first stitch, and are no space of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.steps import walk
from border.text.tree import Begin, Chains, End, Ending, StartChain, Stitches, Text
from border.text.wording.passing import (
    Terminals,
    chains_at,
    ended,
    like,
    past,
    stitch_left_out,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal

FIRST = "start"
"""The name of the word before such a place, by which it is told."""


def on_first_stitch(t: Terminals, below: Text | None) -> Terminals:
    """The words of a row with its first place as the first stitch, where they name the chains that
    the round below began with."""
    prep = next((n for n in range(min(_FEW, len(t))) if t[n].type == "PREP"), 0)
    chains, high = _begun_with(below) if prep and below is not None else (0, 0)
    end = _named(t, prep, chains, high) if chains and _opens(t, prep) else prep
    if end == prep:
        return t
    here = replace(t[prep], name=FIRST)
    return [*t[:prep], here, like(here, "ORD", number=1), stitch_left_out(here), *t[end:]]


_FEW = 6
"""A first stitch has its place before so many words."""


def _opens(t: Sequence[Terminal], prep: int) -> bool:
    """Whether one stitch stands before a place, and nothing before it but a single chain."""
    chains, at = chains_at(t, 0)
    at = past(t, at, "SEP") if chains == 1 else 0
    at += types(t, at, 1) == ["NUM"] and t[at].number == 1
    return at + 1 == prep and t[at].type == "STITCH"


def _named(t: Sequence[Terminal], prep: int, chains: int, high: int) -> int:
    """Behind `in the top of ch 3`, `in 3rd ch of ch 5`; the same place where it is no such one."""
    at = past(t, prep + 1, "THE")
    top = "top" in t[prep].text.split()
    if not top and types(t, at, 1) == ["ORD"] and t[at].number == high:
        of = past(t, at + 1, "CH", "KIND")
        top, at = types(t, of, 1) == ["OF"], past(t, of, "OF", "THE")
    count, end = chains_at(t, at)
    return end if top and high and count == chains and ended(t, end) else prep


def _begun_with(below: Text) -> tuple[int, int]:
    """The chains that a round begins with, and how many of them are its first stitch; none where
    the next round is turned."""
    if any(end.what is Ending.TURN for end in below.ends):
        return 0, 0
    first = next((item for item in below.items if not isinstance(item, End | Begin)), None)
    if isinstance(first, StartChain):
        return first.count, first.count - first.then
    if not isinstance(first, Chains):
        return 0, 0
    heights = (STITCHES[i.stitch].height for i in walk(below.items) if isinstance(i, Stitches))
    return first.count, next((high for high in heights if 2 <= high <= first.count), 0)
