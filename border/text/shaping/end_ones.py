"""Stitches on the first ones of a run, or on the last: `3 dc on the first 3 of the 5 dc`, `1 dc in
each of the last 2 of the 5`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.shaping.on_runs import rest_behind
from border.text.tree import Kind
from border.text.wording.passing import ARCHES, OPENS, Terminals, ended, is_last, like, past, types

if TYPE_CHECKING:
    from collections.abc import Sequence

    from border.text.terminals import Terminal


def on_the_end_ones(t: Terminals) -> Terminals:
    """`3 dc on the first 3 of the 5 dc`, `1 dc in each of the last 2 of the next 5`: one on that
    which they begin with, the others behind it."""
    found: Terminals = []
    t = _of_heap(t)
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
        which = [like(x, "NEXT") if x.type == "ORD" else x for x in t[of:end]]
        found += [one, stitch_, t[at], like(t[at], "ORD", number=nth), *which]
        if t[end - 1].type == "NUM" and t[of - 1].type in ("STITCH", "CH"):
            found.append(like(t[of - 1], t[of - 1].type, name=t[of - 1].name))  # `4 ch of the 5`
        chain = next((x for x in (t[end - 1], t[of - 1]) if x.type == "CH"), None)
        found += rest_behind(t[at], stitch_, count - 1, chain)
        at = end
    return found


def _of_heap(t: Terminals) -> Terminals:
    """`each of the first 4 dc of the loop`, `of scallop`: of the stitches that stand in one place
    there, where a place is named."""
    found = list(t)
    for at, here in enumerate(t):
        heap = past(t, at + 3, "OF", "THE", "NEXT")
        first = here.type == "ORD" and here.number == 1
        named = first and types(t, at + 1, 3) == ["NUM", "STITCH", "OF"] and ended(t, heap + 1)
        kind = t[heap].kind if named and heap < len(t) else None
        if kind in ARCHES and t[heap].text in ("loop", "space"):
            found[heap] = replace(t[heap], kind=Kind("group", None, t[at + 2].name))
    return found


def _at_head(t: Sequence[Terminal], at: int) -> bool:
    """Whether no place is named in a row before this one, so that the first is the next."""
    return all(x.type not in OPENS for x in t[:at])


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
    first = types(t, number, 2) in (["ORD", "KIND"], ["ORD", "NUM"]) and t[number].number == 1
    if first and _at_head(t, at):
        number += 1  # `each of the first 4 chain of the first scallop`
    count = t[order + 1].number
    kind = t[number].kind if number < len(t) else None
    heap = kind is not None and kind.name in ("group", "shell") and not t[number].many
    heap |= kind in ARCHES and t[of - 1].type == "CH"
    if heap and t[order].number == 1 and count > 1 and ended(t, number + 1):
        return 1, count, of, number + 1
    end = number + 1 + (types(t, number + 1, 1) in (["STITCH"], ["CH"]))
    if types(t, number, 1) != ["NUM"] or not 1 < count < t[number].number or not ended(t, end):
        return none
    if is_last(t, order):
        return t[number].number - count + 1, count, of, end
    return (1, count, of, end) if t[order].number == 1 else none
