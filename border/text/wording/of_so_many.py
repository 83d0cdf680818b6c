"""Which of so many chains or stitches: `third loop of 5 chain`, `centre loop of the 5`, `3 dc on
the tr and 2 chain`, `5 dc in the 1st 5 ch, …, in the 2nd 5 ch`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import chain_of_at, ended, like, made, past, stitch_left_out, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal

IN_ONE = "in one"
"""The name of a place of some of the stitches made, which are taken to be the middle ones."""
_LOOPS = (Kind("loop"), Kind("st"))


def of_the_chain(t: Sequence[Terminal]) -> list[Terminal]:
    """`third loop of 5 chain`, the middle one, is of the 5, and `second loop of the next 5 chain`,
    `of each 5 chain` of that loop of chains; `centre loop of the 5` is their centre; `every loop of
    the 5 chain` is each of these."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        here = t[at]
        loop = here.type == "KIND" and here.kind in _LOOPS and not here.many
        before = found[-1] if found else None
        the = past(t, at + 2, "THE") if types(t, at + 1, 1) == ["OF"] else at
        chain, _ = chain_of_at(t, the) if the > at else (0, at)
        number = chain or (t[the].number if the > at and types(t, the, 1) == ["NUM"] else 0)
        which = types(t, the, 1) in (["NEXT"], ["EACH"]) and _of_loop(t, the + 1)
        if loop and the > at and which and before is not None and before.type == "ORD":
            at += 1
            continue
        if loop and before is not None and number > 1:
            middle = before.type == "ORD" and before.number * 2 == number + 1
            if middle and chain and the == at + 2 and here.text == "loop":
                found += [here, t[at + 1], like(here, "THE")]
                at = the
                continue
            if before.type == "CENTRE" and ended(t, the + 1):
                at += 1
                continue
            if before.type in ("EACH", "EVERY") and chain and the > at + 2:
                found[-1] = replace(before, type="EACHOF")
                at += 2
                continue
        found.append(here)
        at += 1
    return found


def _of_loop(t: Sequence[Terminal], at: int) -> bool:
    """Whether `5 chain` stands here, that says itself of what it is a loop: no `5 chain space`."""
    chain, end = chain_of_at(t, at)
    return chain > 1 and types(t, end, 1) != ["KIND"]


def each_of_one(t: Sequence[Terminal]) -> list[Terminal]:
    """`in each of the 1 chain`: in each space of one chain."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        number = past(t, at + 1, "THE")
        one = t[at].type == "EACHOF" and types(t, number, 2) == ["NUM", "CH"]
        if one and t[number].number == 1 and number > at + 1:
            space = like(t[number + 1], "KIND", Kind("space", 1))
            found += [replace(t[at], type="EACH"), replace(space, start=t[number].start)]
            at = number + 2
            continue
        found.append(t[at])
        at += 1
    return found


def on_the_sum(t: Sequence[Terminal]) -> list[Terminal]:
    """`3 dc on the tr and 2 chain`: one on each, where there are as many."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        several = types(t, at, 3) == ["NUM", "STITCH", "PREP"] and t[at].number > 1
        parts = _parts(t, at + 3) if several else []
        if parts and ended(t, parts[-1][1]) and sum(x[0] for x in parts) == t[at].number:
            one = replace(t[at], number=1)
            for number, _, noun in parts:
                many = [like(t[at], "EACHOF"), like(t[at], "NEXT")]
                many = [*many, replace(like(t[at], "NUM"), number=number)]
                which = many if number > 1 else [like(t[at], "NEXT")]
                found += [one, t[at + 1], t[at + 2], *which, replace(noun, number=1)]
                found.append(replace(like(t[at], "SEP"), text=","))
            found.pop()
            at = parts[-1][1]
            continue
        found.append(t[at])
        at += 1
    return found


def _parts(t: Sequence[Terminal], at: int) -> list[tuple[int, int, Terminal]]:
    """The places of `the tr, 3 chain and tr`; none where they are not so listed."""
    parts = []
    while (part := _so_many(t, at)) is not None:
        parts.append(part)
        last = at > 0 and t[at - 1].type == "AND"
        at = part[1] + 1
        if last or types(t, part[1], 1) not in (["AND"], ["SEP"]):
            return parts if last else []
    return []


def _so_many(t: Sequence[Terminal], at: int) -> tuple[int, int, Terminal] | None:
    """How many stitches or chains are named at a place, the place behind, and what they are."""
    start = past(t, at, "THE")
    chains, behind = chain_of_at(t, start)
    if chains:
        return chains, behind, next(one for one in t[start:behind] if one.type == "CH")
    noun = past(t, start, "NUM")
    if types(t, noun, 1) not in (["STITCH"], ["CH"]):
        return None
    return (t[start].number if noun > start else 1), noun + 1, t[noun]


def in_the_first_of(t: Sequence[Terminal]) -> list[Terminal]:
    """`5 dc in the 1st 5 ch, 3 ch, 5 dc in the same`, `…, in the 2nd 5 ch`: the space of 5."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        order = past(t, at + 1, "THE") if t[at].type == "PREP" else len(t)
        first = types(t, order, 1) == ["ORD"] and t[order].number == 1
        size, behind = chain_of_at(t, order + 1) if first else (0, at)
        next_ = 1 < size < _LONG and _in_the_next(t, behind)
        if size and ended(t, behind) and (next_ or _goes_on(t, behind, size)):
            space = like(t[behind - 1], "KIND", Kind("space", size))
            found += [*t[at : order + 1], replace(space, start=t[order + 1].start)]
            prep = len(found) - (order + 1 - at) - 1
            if next_ and made(found[:prep]) == size:  # or these chains, one by one, and the next
                found[prep] = replace(found[prep], name=found[prep].name or "counted")
            at = behind
            continue
        found.append(t[at])
        at += 1
    return found


_LONG = 10
"""So many chains are a foundation, and no loop."""


def _in_the_next(t: Sequence[Terminal], at: int) -> bool:
    """Whether the next place is a bare one: `in the first 5 ch, 1 dc in the next`."""
    prep = next((n for n in range(at, len(t)) if t[n].type in ("PREP", "REPEAT")), len(t))
    next_ = past(t, prep + 1, "THE")
    return types(t, prep, 1) == ["PREP"] and types(t, next_, 1) == ["NEXT"] and ended(t, next_ + 1)


def _goes_on(t: Sequence[Terminal], at: int, size: int) -> bool:
    """Whether steps go on into the same, or into the 2nd of such, before the row is repeated."""
    stop = next((n for n in range(at, len(t)) if t[n].type == "REPEAT"), len(t))
    for n in range(at, stop):
        if t[n].type == "ORD" and t[n].number > 1 and chain_of_at(t, n + 1)[0] == size:
            return True
    placed = next((n for n in range(at, stop) if t[n].type == "PREP"), stop)
    return types(t, past(t, placed + 1, "THE"), 1) == ["SAME"]


def of_them_in_one(t: Sequence[Terminal]) -> list[Terminal]:
    """`5 dc, 3 of them in one`: the middle three, which is told; where as many are left at either
    side."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        few = at + 2 + (types(t, at + 2, 1) == ["SEP"])
        place = few + 3
        said = types(t, at, 2) == ["NUM", "STITCH"] and types(t, few, 2) == ["NUM", "OF"]
        said = said and types(t, place - 1, 1) in (["THEM"], ["STRAY"], ["THE"])
        one = past(t, place + 1, "THE", "SAME", "NEXT", "NUM")
        end = past(t, one, "KIND", "STITCH")
        single = all(x.number == 1 for x in t[place + 1 : one] if x.type == "NUM")
        loops = any(x.type == "KIND" and x.kind != Kind("st") for x in t[one:end])
        said = said and types(t, place, 1) == ["PREP"] and one > place + 1 and single and not loops
        left = t[at].number - t[few].number if said and ended(t, end) else 0
        if left < _EITHER_SIDE or left % _EITHER_SIDE:
            found.append(t[at])
            at += 1
            continue
        comma = like(t[at], "SEP")
        side = [replace(t[at], number=left // _EITHER_SIDE), t[at + 1]]
        noun = t[end - 1] if end > one else stitch_left_out(t[place])
        in_next = [
            replace(t[place], name=IN_ONE),
            like(t[place], "NEXT"),
            replace(noun, many=False),
        ]
        stop = replace(comma, name="hard")  # else the place might be that of all before it
        found += [*side, stop, t[few], t[at + 1], *in_next, comma, *side]
        at = end
    return found


_EITHER_SIDE = 2
