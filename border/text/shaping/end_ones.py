"""Stitches on the first ones of a run, or on the last: `3 dc on the first 3 of the 5 dc`, `1 dc in
each of the last 2 of the 5`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from border.text.shaping.on_runs import rest_behind
from border.text.wording.passing import Terminals, ended, is_last, like, past, types

if TYPE_CHECKING:
    from collections.abc import Sequence

    from border.text.terminals import Terminal


def on_the_end_ones(t: Terminals) -> Terminals:
    """`3 dc on the first 3 of the 5 dc`, `1 dc in each of the last 2 of the next 5`: one on that
    which they begin with, the others behind it."""
    found: Terminals = []
    at = 0
    while at < len(t):
        stitch = types(found, len(found) - 1, 1) == ["STITCH"]
        counted = types(found, len(found) - 2, 2) == ["NUM", "STITCH"]
        nth, count, of, end = _end_ones(t, at) if stitch else (0, 0, at, at)
        each = any(x.type == "EACHOF" for x in t[at:of])
        made = found[-2].number if counted else 1
        if end == at or made != (1 if each else count):
            found.append(t[at])
            at += 1
            continue
        stitch_ = found.pop()
        if counted:
            found.pop()
        one = like(t[at], "NUM", number=1)
        found += [one, stitch_, t[at], like(t[at], "ORD", number=nth), *t[of:end]]
        chain = t[end - 1] if t[end - 1].type == "CH" else None
        found += rest_behind(t[at], stitch_, count - 1, chain)
        at = end
    return found


def _end_ones(t: Sequence[Terminal], at: int) -> tuple[int, int, int, int]:
    """Which of a run is the first of these, how many they are, where its `of` stands and what is
    behind it all; the same place where no such place is named."""
    none = 0, 0, at, at
    if types(t, at, 1) != ["PREP"]:
        return none
    order = past(t, at + 1, "EACHOF", "THE")
    of = past(t, order + 2, "STITCH", "KIND", "CH")
    if types(t, order, 2) != ["ORD", "NUM"] or types(t, of, 1) != ["OF"]:
        return none
    number = past(t, of + 1, "THE", "NEXT")
    count = t[order + 1].number
    end = number + 1 + (types(t, number + 1, 1) in (["STITCH"], ["CH"]))
    if types(t, number, 1) != ["NUM"] or not 1 < count < t[number].number or not ended(t, end):
        return none
    if is_last(t, order):
        return t[number].number - count + 1, count, of, end
    return (1, count, of, end) if t[order].number == 1 else none
