"""What is made behind every so many stitches of a row of one in each: `1 dc in each st, with a
picot over every 3rd st`, `dc all round, after every 4th dc 1 picot`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import (
    chain_of_at,
    chains_at,
    ended,
    like,
    only_ends,
    past,
    stitch_left_out,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def said_before(t: Sequence[Terminal]) -> list[Terminal]:
    """`…, after every other dc 1 chain`: as `1 chain after every other dc`."""
    for n in range(1, len(t)):
        opens = t[n].type == "AFTER" and t[n - 1].type in ("SEP", "AND")
        if not opens or types(t, n + 1, 1) not in (["EACH"], ["EVERY"]):
            continue
        noun = past(t, n + 2, "OTHER", "ORD", "NUM")
        chains, end = chain_of_at(t, past(t, noun + 1, "SEP"))
        named = types(t, noun, 1) in (["STITCH"], ["KIND"]) and noun > n + 2
        if named and chains and only_ends(t[end:]):
            made = past(t, noun + 1, "SEP")
            every = [like(x, "ORD", number=2) if x.type == "OTHER" else x for x in t[n : noun + 1]]
            return [*t[:n], *t[made:end], *every, *t[end:]]
    return list(t)


def _called_picots(t: Sequence[Terminal]) -> list[Terminal]:
    """`3 chain after every 3rd dc, which forms a picot`: a picot of 3 there."""
    for n, here in enumerate(t):
        picot = past(t, n + 1, "THE", "NUM")
        called = here.type == "AS" and types(t, picot, 1) == ["PICOT"] and not t[picot].number
        if not called or not only_ends(t[picot + 1 :]):
            continue
        after = max((m for m in range(n) if t[m].type == "AFTER"), default=0)
        chains, end = chains_at(t, after - 2)
        often, stop = _every(t, after + 1)
        if after > 1 and chains and end == after and often and past(t, stop, "SEP") == n:
            ring = replace(t[picot], number=chains)
            one = like(t[after - 2], "NUM", number=1)
            return [*t[: after - 2], one, ring, *t[after:stop], *t[picot + 1 :]]
    return list(t)


def made_after_every(t: Sequence[Terminal]) -> list[Terminal]:
    """Such a row as one repeat: `1 dc in each of the next 3 st, picot; repeat`."""
    t = _called_picots(t)
    head = past(t, 0, "SEP")
    stitch = head + (types(t, head, 1) == ["NUM"])
    noun = stitch + 3
    each = types(t, stitch, 3) in (["STITCH", "PREP", "EACH"], ["STITCH", "PREP", "EVERY"])
    all_round = types(t, stitch, 2) == ["STITCH", "TOEND"]
    named = types(t, noun, 1) in (["KIND"], ["STITCH"])
    behind = noun + named if each and (named or ended(t, noun)) else 0  # `in each, …`
    behind = stitch + 2 if all_round else behind
    behind = behind and past(t, behind, "TOEND")
    said = past(t, behind, "SEP", "AND", "WITH")
    if not behind or said == behind:
        return list(t)
    here = t[stitch]
    made, often = _behind_it(t, said) or _before_it(t, said) or ([], 0)
    others = {x.name for x in t[said:] if x.type == "STITCH"} - {here.name}
    kinds = [x.kind for x in t[said:] if x.type == "KIND"]
    several = stitch > head and t[head].number > 1  # else of stitches: `7 dc in each, p after 2nd`
    of_kind = each and kinds == [t[noun].kind]
    if not made or others or (several and not of_kind):
        return list(t)
    one = t[head] if stitch > head else replace(like(here, "NUM"), number=1)
    many = replace(like(here, "NUM"), number=often)
    place = replace(like(here, "PREP"), text="in")
    of = t[noun] if each and named else stitch_left_out(here)
    steps = [
        one,
        here,
        place,
        like(here, "EACHOF"),
        like(here, "NEXT"),
        many,
        replace(of, many=True),
    ]
    stop = like(here, "SEP", name="hard")
    star = replace(like(here, "STAR"), text="*")
    again = [replace(like(here, "REPEAT"), text="repeat"), replace(like(here, "FROM"), text="from")]
    return [*t[:head], star, *steps, like(here, "SEP"), *made, stop, *again, star]


def _behind_it(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int] | None:
    """`a picot over every 3rd st`, `4 chain after every 3rd dc`: what is made, and how often."""
    picot = at + (types(t, at, 1) == ["NUM"])
    end = past(t, picot + 1, "OF", "NUM", "CH") if types(t, picot, 1) == ["PICOT"] else at
    chains, behind = chain_of_at(t, at)
    if chains and types(t, behind, 1) == ["AFTER"]:
        end = behind
    opens = types(t, end, 1) in (["PREP"], ["AFTER"]) and end > at
    often, stop = _every(t, end + 1)
    return (list(t[at:end]), often) if opens and often and only_ends(t[stop:]) else None


def _before_it(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int] | None:
    """`after every 4th dc 1 picot`: what is made, and how often."""
    often, made = _every(t, at + 1)
    made = past(t, made, "SEP")
    picot = made + (types(t, made, 1) == ["NUM"])
    end = past(t, picot + 1, "OF", "NUM", "CH")
    said = types(t, at, 1) == ["AFTER"] and often and types(t, picot, 1) == ["PICOT"]
    return (list(t[made:end]), often) if said and only_ends(t[end:]) else None


def _every(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """How many are `every 3rd st`, `every 3 dc`, and the place behind; 0 where none stand here."""
    if types(t, at, 2) not in _EVERY or not 1 < t[at + 1].number < _MOST:
        return 0, at
    return t[at + 1].number, past(t, at + 2, "KIND", "STITCH")


_EVERY = [[each, number] for each in ("EACH", "EVERY") for number in ("ORD", "NUM")]
_MOST = 100
