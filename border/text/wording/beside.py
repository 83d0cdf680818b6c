"""Stitches that stand on one of the row below and on the chains at either side of it: `3 sc (1 in
st before sc, 1 in sc, 1 in st after)`, `1 dc before the sc, 3 ch, 1 dc after it`.

What stands before it is the last chain of the space there, what stands behind it the first of the
next; so diamonds widen.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.text.tree import ST, Kind
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

BESIDE = "beside"
"""The name of the first place of such a list."""
_PARTS = ("SEP", "AND", "NAMELY")


class _Part(Struct, frozen=True):
    """One part of such a list: `before`, `on` or `after`; how many, where, and its end.

    `place`: of the part before, only the stitch that it stands before, with its number.
    `whole`: the place is a block of so many, and all of it.
    """

    side: str
    count: int
    place: Sequence[Terminal]
    end: int
    whole: bool = False


def on_either_side(t: Terminals) -> Terminals:
    """The terminals with every such list as three steps, each with its place."""
    found: Terminals = []
    at = 0
    while at < len(t):
        counted = types(t, at, 2) == ["NUM", "STITCH"]
        steps, end = _listed(t, at) if counted else ([], at)
        if counted and not steps:
            steps, end = _round_it(t, at)
        found += steps or [t[at]]
        at = max(end, at + 1)
    return found


def _listed(t: Terminals, at: int) -> tuple[Terminals, int]:
    """The three steps of what is counted at a place, and the place behind; none where it is no
    such list."""
    bracket = types(t, at + 2, 1) == ["LP"]
    start = past(t, at + 2 + bracket, *_PARTS)
    for on, end in (_both_sides(t, start), _all_three(t, start)):
        closed = types(t, end, 1) == ["RP"] or not bracket
        if on is not None and closed and on.count + 2 == t[at].number:
            return _steps(t[at + 1], on), end + bracket
    on, end = _at_each_side(t, at + 2)
    if on is not None and t[at].number == on.count + 2:
        return _steps(t[at + 1], on), end
    whole, end = _all_three(t, at)
    return (_steps(t[at + 1], whole), end) if whole is not None else ([], at)


def _steps(stitch: Terminal, on: _Part) -> Terminals:
    here = on.place[0]
    comma, count = like(here, "SEP"), like(here, "NUM", number=on.count)
    before, behind = _sides(stitch)
    if not on.whole:
        return [*before, comma, count, stitch, *on.place, comma, *behind]
    one, rest = like(here, "NUM", number=1), like(here, "NUM", number=on.count - 1)
    first = [one, stitch, here, like(here, "ORD", number=1), like(here, "OF"), *on.place[1:]]
    st = replace(stitch_left_out(here), many=True)
    others = [rest, stitch, like(here, "PREP"), like(here, "NEXT"), rest, st]
    return [*before, comma, *first, comma, *others, comma, *behind]


def _sides(stitch: Terminal) -> tuple[Terminals, Terminals]:
    """One stitch in the last chain of the space before something, and one in the first behind."""
    one, chain = like(stitch, "NUM", number=1), like(stitch, "CH")
    space = [like(stitch, "OF"), like(stitch, "NEXT"), like(stitch, "KIND", Kind("space"))]
    last, first = (like(stitch, "ORD", number=n) for n in (-1, 1))
    before, behind = (
        [one, stitch, like(stitch, "PREP", name=name), nth, chain, *space]
        for name, nth in ((BESIDE, last), ("", first))
    )
    return before, behind


def _round_it(t: Terminals, at: int) -> tuple[Terminals, int]:
    """`1 dc before the sc, 3 ch, 1 dc after it`: the steps, and the place behind them; none where
    nothing of the kind stands here."""
    before = _part(t, at)
    chains = past(t, before.end, "SEP", "AND") if before is not None else at
    if before is None or before.side != "before" or not chains_at(t, chains)[0]:
        return [], at
    stop = chains_at(t, chains)[1]
    after = _part(t, past(t, stop, "SEP", "AND"))
    if after is None or after.side != "after" or (before.count, after.count) != (1, 1):
        return [], at
    stitch = t[at + 1]
    first, behind = _sides(stitch)
    comma = like(stitch, "SEP")
    return [*first, comma, *t[chains:stop], comma, *behind], after.end


def _all_three(t: Terminals, at: int) -> tuple[_Part | None, int]:
    """`1 in st before sc, 1 in sc, 1 in st after`: the middle part, and the place behind all."""
    parts: list[_Part] = []
    while len(parts) < 3 and (part := _part(t, at)) is not None:
        parts.append(part)
        at = past(t, part.end, *_PARTS)
    sound = [part.side for part in parts] == ["before", "on", "after"]
    if sound and parts[0].place:
        middle, number = list(parts[1].place), parts[0].place[:-1]
        each = "EACHOF" in types(middle, 0, len(middle))
        if middle[-1].type == "THEM" or middle[-1].text == "it":  # `1 sc on it`
            middle[-1:] = parts[0].place
        elif middle[-1].type == "NUM":  # `on each of the three`
            middle.append(parts[0].place[-1])
        elif each and number and "NUM" not in types(middle, 0, len(middle)):  # `each of the tr`
            middle[-1:] = [*number, middle[-1]]
        parts[1] = replace(parts[1], place=middle)
    return (
        (parts[1], parts[2].end) if sound and parts[0].count == parts[2].count == 1 else (None, at)
    )


def _part(t: Terminals, at: int) -> _Part | None:
    prep = past(t, at + 1, "STITCH")
    bare = prep < len(t) and t[prep].text in _SIDE  # `1 dc before the 3 tr`, `and 1 after it`
    if types(t, at, 1) != ["NUM"] or not (bare or types(t, prep, 1) == ["PREP"]):
        return None
    noun = past(t, prep + 1, "THE")
    beside = bare or (noun < len(t) and (t[noun].type == "CH" or t[noun].kind == ST))
    side = prep if bare else past(t, noun + 1, "NOTHING")  # `just before`
    said = _SIDE.get(t[side].text, "") if beside and side < len(t) else ""
    if said:
        named = past(t, side + 1, "THE", "NUM")
        known = types(t, named, 1) in (["STITCH"], ["THEM"])
        known = known or (named < len(t) and t[named].text == "it")
        number = named - (types(t, named - 1, 1) == ["NUM"])
        before = t[number : named + 1] if types(t, named, 1) == ["STITCH"] else ()
        end = past(t, named + 1 if known else side + 1, "NOTHING")
        return _Part(said, t[at].number, before, end)
    stitch = past(t, prep + 1, "EACHOF", "THE", "NEXT", "NUM")
    counted = types(t, stitch - 1, 1) == ["NUM"] and ended(t, stitch)  # `on each of the three`
    if counted:
        return _Part("on", t[at].number, t[prep:stitch], stitch)
    pronoun = types(t, stitch, 1) == ["THEM"] or (stitch < len(t) and t[stitch].text == "it")
    if types(t, stitch, 1) != ["STITCH"] and not pronoun:
        return None
    return _Part("on", t[at].number, t[prep : stitch + 1], stitch + 1)


_SIDE = {
    **dict.fromkeys(("before", "preceding"), "before"),
    **dict.fromkeys(("after", "beyond", "following"), "after"),
}


def _both_sides(t: Terminals, at: int) -> tuple[_Part | None, int]:
    """`1 each side of and 1 in dc`: the middle part, and the place behind all."""
    side = at + 1
    said = types(t, at, 1) == ["NUM"] and side < len(t) and t[side].text.startswith("each side")
    if not said or t[at].number != 1:
        return None, at
    part = _part(t, past(t, side + 1, "OF", *_PARTS))
    return (part, part.end) if part is not None and part.side == "on" else (None, at)


def _at_each_side(t: Terminals, at: int) -> tuple[_Part | None, int]:
    """`on the dc and the chain at each side of it`, `over 5, and a chain on each side`: the middle
    part, and the place behind all."""
    stitch = past(t, at + 1, "THE", "NEXT", "NUM")
    many = t[stitch - 1].number if types(t, stitch - 1, 1) == ["NUM"] else 0
    named = types(t, stitch, 1) in (["STITCH"], ["KIND"])
    end = stitch + named
    also = past(t, end, "SEP", "AND")
    also += also < len(t) and t[also].text in _TAKING
    also += also < len(t) and t[also].text in _ALSO
    chain = past(t, also, "PREP", "THE")
    chain += types(t, chain, 1) == ["NUM"] and t[chain].number == 1
    side = chain + 1
    said = side < len(t) and t[side].text in _SIDES and types(t, chain, 1) == ["CH"]
    if types(t, at, 1) != ["PREP"] or not (named or many) or also == end or not said:
        return None, at
    stop = side + 1 + (types(t, side + 1, 1) == ["STRAY"] and t[side + 1].text == "it")
    place = t[at:end]
    if not named and many == 1:  # `over 1`, of whatever it is
        place = [t[at], like(t[at], "NEXT"), t[stitch - 1], stitch_left_out(t[at])]
    return _Part("on", many or 1, place, stop, many > 1), stop


_TAKING = frozenset({"taking", "including"})
_ALSO = frozenset({"also", "in"})
_SIDES = frozenset(
    f"{at} {each} side{of}"
    for at in ("at", "on")
    for each in ("each", "either")
    for of in ("", " of")
)
