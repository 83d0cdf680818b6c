"""Which of so many chains or stitches: `third loop of 5 chain`, `centre loop of the 5`, `3 dc on
the tr and 2 chain`, `5 dc in the 1st 5 ch, …, in the 2nd 5 ch`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.passing import behind_chains, chain_of_at, ended, like, made, past, types
from border.text.tree import Kind

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_LOOPS = (Kind("loop"), Kind("st"))


def of_the_chain(t: Sequence[Terminal]) -> list[Terminal]:
    """`third loop of 5 chain`, the middle one, is of the 5; `centre loop of the 5` is their centre;
    `every loop of the 5 chain` is each of these."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        here = t[at]
        loop = here.type == "KIND" and here.kind in _LOOPS and not here.many
        before = found[-1] if found else None
        the = past(t, at + 2, "THE") if types(t, at + 1, 1) == ["OF"] else at
        chain, _ = chain_of_at(t, the) if the > at else (0, at)
        number = chain or (t[the].number if the > at and types(t, the, 1) == ["NUM"] else 0)
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
        made = types(t, at, 3) == ["NUM", "STITCH", "PREP"] and t[at].number > 1
        first = _so_many(t, at + 3) if made else None
        second = None
        if first is not None and types(t, first[1], 1) == ["AND"]:
            second = _so_many(t, first[1] + 1)
        if first and second and ended(t, second[1]) and first[0] + second[0] == t[at].number:
            one = replace(t[at], number=1)
            for number, _, noun in (first, second):
                many = [like(t[at], "EACHOF"), like(t[at], "NEXT")]
                many = [*many, replace(like(t[at], "NUM"), number=number)]
                which = many if number > 1 else [like(t[at], "NEXT")]
                found += [one, t[at + 1], t[at + 2], *which, replace(noun, number=1)]
                found.append(replace(like(t[at], "SEP"), text=","))
            found.pop()
            at = second[1]
            continue
        found.append(t[at])
        at += 1
    return found


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
            if (
                next_ and made(found[:prep]) == size
            ):  # it may be these chains, one by one, and the next of them
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


def taken_up(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc taking up 2 tr`, `1 tr taking the dc`: worked into these; not the back loops."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        noun = past(t, n + 1, "NUM")
        takes = here.type == "NOTHING" and here.text.split()[0] == "taking"
        whole = types(t, noun, 1) in (["STITCH"], ["CH"], ["KIND"]) and not t[noun].many
        behind = found[-1:] and (found[-1].type == "STITCH" or types(t, n - 2, 1) == ["STITCH"])
        step = here.text.split()[-1] in ("taking", "up", "the")
        if takes and step and behind and whole and (ended(t, noun + 1) or _together(t, noun + 1)):
            here = like(here, "UNITE")
        found.append(here)
    return found


def _together(t: Sequence[Terminal], at: int) -> bool:
    return types(t, at, 1) in (["TOGETHER"], ["ATONCE"])


def on_these(t: Sequence[Terminal]) -> list[Terminal]:
    """`6 ch, on these 1 dc, 1 tr, 3 dtr`, `6 ch, on which work 1 dc, 1 tr`: worked back on them."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        here = t[at]
        on = here.type in ("PREP", "SEP") and here.text.split()[0] in ("on", "upon")
        these = types(t, at, 1) == ["PREP"] and types(t, at + 1, 1) in (["THE"], ["STRAY"])
        these = these and t[at + 1].text in ("these", "those", "which")
        step = at + 1 + these
        back = on and (these or "which" in here.text) and types(t, step, 2) == ["NUM", "STITCH"]
        if back and behind_chains(found) and not t[step + 1].many:
            found.append(replace(like(here, "NOTHING"), text="working back", end=t[step - 1].end))
            at = step
            continue
        found.append(here)
        at += 1
    return found


def in_one_and_other(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 tr in loop and dc, 3 ch`: one in each, where steps are counted, and this is not; asked."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        found.append(here)
        two = here.type == "AND" and types(t, n - 2, 4) == ["PREP", "KIND", "AND", "STITCH"]
        made = two and types(t, n - 4, 2) == ["NUM", "STITCH"] and t[n - 4].number == 1
        if made and not t[n - 1].many and ended(t, n + 2):
            found[n - 2] = replace(found[n - 2], name="counted")
            found.append(like(here, "NEXT"))
    return found


def shared_out_each(t: Sequence[Terminal]) -> list[Terminal]:
    """`10 tr on the 5 chain, 2 in each loop`: two in each of these five."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        the = past(t, at + 3, "THE") if types(t, at, 3) == ["NUM", "STITCH", "PREP"] else len(t)
        size, behind = chain_of_at(t, the)
        each = types(t, behind, 4) == ["SEP", "NUM", "PREP", "EACH"] if size else False
        noun = behind + 4
        if each and size * t[behind + 1].number == t[at].number and t[behind + 1].number > 1:
            of = types(t, noun, 1) in (["CH"], ["KIND"], ["STITCH"])
            if ended(t, noun + of):
                many = [like(t[at], "EACHOF"), like(t[at], "NEXT")]
                number = replace(like(t[at], "NUM"), number=size)
                chain = replace(like(t[the], "CH"), number=1)
                found += [t[behind + 1], t[at + 1], t[at + 2], *many, number, chain]
                at = noun + of
                continue
        found.append(t[at])
        at += 1
    return found
