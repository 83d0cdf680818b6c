"""What stands between, and between which: `3 chain between each`, `between the 1st and 2nd`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.passing import ARCHES, NOUNS, Terminals, like, types
from border.text.terminals import Terminal


def betweens(t: Terminals) -> Terminals:
    """`between the 1st and 2nd treble`, `in the space between the treble`: between the next 2."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        space = here.type == "KIND" and here.kind in ARCHES and found and types(t, at + 1, 1)
        if space == ["BETWEEN"] and found[-1].type in ("PREP", "THE"):
            while found and found[-1].type in ("PREP", "THE"):
                found.pop()
            at += 1
            continue
        found.append(here)
        at += 1
        if here.type != "BETWEEN":
            continue
        named = at + (types(t, at, 1) == ["THE"])
        pair = [(x.type, x.number) for x in t[named : named + 3]]
        if pair == [("ORD", 1), ("AND", 0), ("ORD", 2)]:
            named += 3
        elif types(t, named, 1) != ["STITCH"]:
            continue
        if named < len(t) and t[named].type in NOUNS:
            found += [like(here, "NEXT"), like(here, "NUM", number=2)]
            at = named
    return found


def between_behind(t: Terminals) -> Terminals:
    """`1 treble in each stitch, 1 chain between [each]`: as `with 1 chain between`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        taken = _between_at(t, at)
        before = found[-1].type if found else ""
        if taken and before not in ("WITH", "DIVIDED"):
            number = next((x.number for x in t[at : at + 2] if x.type == "NUM"), 1)
            if before == "SEP" and not found[-1].name:
                found.pop()
            found.append(replace(t[at], type="BETW", number=number, end=t[at + taken - 1].end))
            at += taken
            continue
        found.append(t[at])
        at += 1
    return found


def _between_at(t: Sequence[Terminal], at: int) -> int:
    """How many terminals are `3 chain between [each]`, with no place behind; 0 if none."""
    pair = types(t, at, 2)
    taken = 2 if pair in (["NUM", "CH"], ["CH", "NUM"]) else 1 if pair[:1] == ["CH"] else 0
    if not taken or types(t, at + taken, 1) != ["BETWEEN"]:
        return 0
    taken += 1
    taken += types(t, at + taken, 1) in (["EACH"], ["THEM"])
    each = t[at + taken - 1].type == "EACH"
    taken += each and at + taken < len(t) and t[at + taken].type in NOUNS
    behind = types(t, at + taken, 1)
    return (
        taken if behind in ([], ["SEP"], ["RP"], ["REPEAT"], ["STAR"], ["PREP"], ["ENDING"]) else 0
    )
