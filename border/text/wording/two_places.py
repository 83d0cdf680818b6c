"""A step that has two places: `1 dc in each dc and each ch`, `1 dc in the last of one group and
the first of the next`, `slip over the dc and the first chain`; or more, `in 4th, 5th and 6th st`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import (
    NOUNS,
    Terminals,
    ended,
    like,
    past,
    prep_before,
    stitch_left_out,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def of_both_kinds(t: Terminals) -> Terminals:
    """`on every treble and on every chain`, `in each dc and chain`: the union of the two."""
    found: Terminals = []
    for n, here in enumerate(t):
        behind = types(t, n + 1, 1) if here.type in ("AND", "PREP") else []
        each = here.type == "AND" and _each_before(found)
        if each and behind in (["STITCH"], ["CH"]) and ended(t, n + 2):
            found += [like(here, "OR"), like(here, "EACH")]
            continue
        again = len(found) > 1 and found[-1].type == "AND" and behind == ["EACH"]
        if here.type == "PREP" and again and _each_before(found[:-1]):
            found[-1] = like(here, "OR")
            continue
        found.append(here)
    return found


def in_two_places(t: Terminals) -> Terminals:
    """`1 dc in the next tr and in the chain`, `1 dc in the last of one group and the first of the
    next`, `slip over the dc and the first ch`: one there, and one more."""
    t = list(t)
    found: Terminals = []
    for n, here in enumerate(t):
        found.append(here)
        if here.type == "AND" and (more := _one_more(found[:-1], t, n + 1)):
            found[-1:] = [like(here, "SEP"), like(more[0], "NUM", number=1), *more]
            order = past(t, n + 1, "THE")
            if t[order].type == "ORD" and t[order].number == 1:  # `and the first ch`, behind the dc
                t[order] = like(t[order], "NEXT")
            continue
        if here.type == "AND" and (one := _one_in_part(found[:-1])) and _is_part(t, n + 1):
            found[-1:] = [like(here, "SEP"), like(one[0], "NUM", number=1), *one]
            continue
        again = here.type == "AND" and types(t, n + 1, 1) == ["PREP"] and n > 0
        prep = prep_before(found[:-1]) if again else None
        stitch = found[prep - 1] if prep else None
        if prep is None or stitch is None or stitch.type != "STITCH":
            continue
        number = found[prep - 2] if prep > 1 and found[prep - 2].type == "NUM" else None
        if number is None or number.number == 1:
            found[-1:] = [like(here, "SEP"), like(stitch, "NUM", number=1), stitch]
    return found


def told_one_by_one(t: Terminals) -> Terminals:
    """`2 tr, the 1st on the dc, the 2nd in the loop`: one there, and one there."""
    found: Terminals = []
    at = 0
    while at < len(t):
        orders = _one_by_one(t, at + 2) if types(t, at, 2) == ["NUM", "STITCH"] else []
        if len(orders) < _TWO or len(orders) != t[at].number:
            found.append(t[at])
            at += 1
            continue
        one = [like(t[at], "NUM", number=1), t[at + 1]]
        for n, order in enumerate(orders):
            behind = orders[n + 1] if n + 1 < len(orders) else len(t)
            end = next(m for m in range(order + 1, behind + 1) if m == behind or _parts(t[m]))
            place = list(t[order + 1 : end])
            if [x.type for x in place[-3:]] == ["NEXT", "NUM", "CH"]:  # one goes into one space
                space = like(place[-1], "KIND", Kind("space", place[-2].number))
                place[-2:] = [replace(space, start=place[-2].start)]
            found += [*one, *place, like(t[at], "SEP")]
        found.pop()
        at = end
    return found


def _parts(here: Terminal) -> bool:
    """Whether a word ends the place of one of so many."""
    return here.type in ("SEP", "AND", "RP", "REPEAT", "STAR")


def _one_by_one(t: Sequence[Terminal], at: int) -> list[int]:
    """Where the orders stand of `, the 1st on the dc, and the 2nd in the loop`."""
    found: list[int] = []
    while True:
        order = past(t, at, "SEP", "AND", "THE")
        if order == at or types(t, order, 2) != ["ORD", "PREP"]:
            return found
        if t[order].number != len(found) + 1:
            return found
        found.append(order)
        at = next((n for n in range(order, len(t)) if _parts(t[n])), len(t))


def in_orders(t: Terminals) -> Terminals:
    """`1 dc in 4th, 5th and 6th st`: in the 4th, and in each of the 2 behind it."""
    found: Terminals = []
    at = 0
    while at < len(t):
        first = past(t, at + 1, "THE")
        orders = _orders(t, first) if t[at].type == "PREP" else []
        stitch = types(found, len(found) - 1, 1) == ["STITCH"]
        if len(orders) < _TWO or not stitch or t[orders[0]].number == 1:  # those are `the first 3`
            found.append(t[at])
            at += 1
            continue
        more = len(orders) - 1
        noun = orders[-1] + 1
        end = noun + (types(t, noun, 1)[:1] in ([x] for x in NOUNS))
        tail = end
        while not ended(t, tail):
            tail += 1
        chained = types(t, end, 1) == ["OF"] and "CH" in types(t, tail - 2, 2)  # `of the ch 6`
        named = [like(t[at], "CH") if chained else stitch_left_out(t[at])]
        named = t[noun:end] or named  # `in the 3rd and 4th of the 6 chain`
        counted = types(found, len(found) - 2, 1) == ["NUM"]
        if counted and found[-2].number == len(orders):  # `3 dc on the 4th, 5th and 6th`
            found[-2] = replace(found[-2], number=1)
        step = found[-2:] if counted else [like(found[-1], "NUM", number=1), found[-1]]
        found += [t[at], t[first], *named, *t[end:tail], like(t[at], "SEP"), *step, t[at]]
        each = [like(t[at], "EACHOF"), like(t[at], "NEXT"), like(t[at], "NUM", number=more)]
        found += [*(each if more > 1 else each[1:2]), *named]
        at = tail
    return found


_TWO = 2


def _orders(t: Sequence[Terminal], at: int) -> list[int]:
    """Where `4th`, `5th`, `6th` stand, each the one behind the one before it."""
    found: list[int] = []
    while types(t, at, 1) == ["ORD"] and (not found or t[at].number == t[found[-1]].number + 1):
        found.append(at)
        at = past(t, at + 1, "SEP", "AND", "THE")
    return found


def _one_more(found: Sequence[Terminal], t: Sequence[Terminal], at: int) -> Terminals:
    """The stitch and preposition of `1 dc in dc` before another place, `and the next ch`, where
    these stand last; slip stitches go `over dc and ch` as well, which makes no chain."""
    prep = prep_before(found)
    if not prep or types(found, prep - 1, 2) != ["STITCH", "PREP"]:
        return []
    along = found[prep - 1].name == "ss" and found[prep].text in _ALONG
    noun = past(t, at, "THE", "NEXT", "ORD", *(["NUM"] if along else []))
    several = types(found, prep - 2, 1) == ["NUM"] and found[prep - 2].number > 1
    named = (along or noun > at) and types(t, noun, 1)[:1] in ([x] for x in NOUNS)
    next_ = past(t, at, "THE")  # `in 4th st and next`, `and the next 3`
    bare = types(t, next_, 1) == ["NEXT"] and ended(t, past(t, next_ + 1, "NUM"))
    whole = not _each_before(found) and (bare or ended(t, noun + 1)) and not several
    return [found[prep - 1], found[prep]] if (named or bare) and whole else []


_ALONG = frozenset({"over", "across", "along"})


def _one_in_part(found: Sequence[Terminal]) -> Terminals:
    """The stitch and preposition of `1 dc in the last dc of a group`, where that stands last."""
    prep = max((n for n, x in enumerate(found) if x.type == "PREP"), default=0)
    whole = any(x.type in ("SEP", "EACH", "EVERY") for x in found[prep:])
    part = _is_part(found, prep + 1) and not whole
    number = found[prep - 2].number if types(found, prep - 2, 2) == ["NUM", "STITCH"] else 0
    return [found[prep - 1], found[prep]] if prep and part and number == 1 else []


def _is_part(t: Sequence[Terminal], at: int) -> bool:
    """Whether `the first of`, `the last dc of` stands here."""
    order = past(t, at, "THE")
    of = past(t, order + 1, *NOUNS)
    return types(t, order, 1) == ["ORD"] and types(t, of, 1) == ["OF"]


def _each_before(found: Sequence[Terminal]) -> bool:
    return prep_before(found) is not None and found[-2].type == "EACH"


TWO_KINDS = "two kinds"
"""The name of a `between` two of different kinds."""


def between_two_kinds(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc between tr and shell`: no place of this language; what stands there has a name."""
    for n in range(1, len(t)):
        one = past(t, n + 1, "THE", "NEXT", "ORD")
        other = past(t, one + 2, "THE", "NEXT", "ORD")
        nouns = types(t, one, 2) in _NOUN_AND and types(t, other, 1) in _HEAPS
        opens = t[n].type == "BETWEEN" and t[n - 1].type in ("STITCH", "CLUSTER", "RP", "SEP")
        if opens and nouns and ended(t, other + 1) and t[one].kind != t[other].kind:
            return [*t[:n], replace(t[n], name=TWO_KINDS), t[one], *t[other + 1 :]]
    return list(t)


_NOUN_AND = (["STITCH", "AND"], ["KIND", "AND"], ["PICOT", "AND"])
_HEAPS = (["KIND"], ["PICOT"])
