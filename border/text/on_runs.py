"""Stitches on a part of a run: `9 treble beginning on the 2nd of the 10`, `on the centre 3 of 5`.

The first of them goes on the stitch that the words name, the others behind it.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.passing import ARCHES, NOUNS, Terminals, ended, like, types
from border.text.sentences import place_at
from border.text.terminals import Terminal
from border.text.tree import Kind


def begun_further_on(t: Terminals) -> Terminals:
    """`9 treble beginning on the 2nd of the 10`: the first on that, the rest behind it."""
    found: Terminals = []
    at = 0
    while at < len(t):
        comma = types(t, at, 1) == ["SEP"] and not t[at].name
        begin = at + comma
        counted = [x.type for x in found[-2:]] == ["NUM", "STITCH"] and found[-2].number > 1
        if not counted or types(t, begin, 2) != ["BEGIN", "PREP"] or at == 0:
            found.append(t[at])
            at += 1
            continue
        number, stitch = found[-2:]
        end = place_at(t, begin + 1)
        found[-2:] = [replace(number, number=1), stitch, *t[begin + 1 : end]]
        found += rest_behind(number, stitch, number.number - 1)
        at = max(end, begin + 2)
    return found


def rest_behind(here: Terminal, stitch: Terminal, count: int) -> Terminals:
    """The stitches behind the first one, one in each of the next st."""
    if count < 1:
        return []
    one, many = like(here, "NUM", number=1), like(here, "NUM", number=count)
    st = replace(like(here, "KIND", Kind("st")), text="st", many=True)
    which = [like(here, "EACHOF"), like(here, "NEXT"), many]
    place = [like(here, "PREP"), *(which if count > 1 else which[1:2]), st]
    return [like(here, "SEP"), one, stitch, *place]


def times_on_each(t: Terminals) -> Terminals:
    """`(1 treble, 1 chain) 12 times on the 12 treble`: in each of the next 12."""
    found: Terminals = []
    at = 0
    while at < len(t):
        place = at + 1 + (types(t, at + 2, 1) == ["THE"])
        often = types(found, len(found) - 1, 1) == ["RP"] and types(t, at, 2) == ["TIMES", "PREP"]
        many = t[place + 1 : place + 3] if often else []
        named = [x.type for x in many] in (["NUM", "STITCH"], ["NUM", "KIND"], ["NUM", "CH"])
        if named and many[0].number == t[at].number > 1:
            found += [t[at + 1], like(t[at], "EACHOF"), like(t[at], "NEXT"), *many]
            at = place + 3
            continue
        found.append(t[at])
        at += 1
    return found


def middle_of_several(t: Terminals) -> Terminals:
    """`in the centre of the 3 picots`, `centre loop of the next 3`: the 2nd, then 1 passed over.

    `in centre of the next 3 picots` is the words' own way to say one in each, and asked.
    """
    found: Terminals = []
    at = 0
    while at < len(t):
        noun, count, end = _several(t, at) if t[at].type == "CENTRE" else (None, 0, at)
        if noun is None or not found or found[-1].type not in ("PREP", "THE"):
            found.append(t[at])
            at += 1
            continue
        nth = (count + 1) // 2
        found += [like(t[at], "ORD", number=nth), noun, like(t[at], "SEP", name="hard")]
        found += [like(t[at], "SKIP"), like(t[at], "NUM", number=count - nth), noun]
        at = end
    return found


def _several(t: Sequence[Terminal], at: int) -> tuple[Terminal | None, int, int]:
    """The noun of what has a middle one, how many there are, and the place behind it all."""
    noun = t[at + 1] if types(t, at + 1, 1) in (["PICOT"], ["KIND"]) else None
    at += 1 + (noun is not None)
    if types(t, at, 1) != ["OF"]:
        return None, 0, at
    at += 1
    while types(t, at, 1) == ["THE"] or (noun is not None and types(t, at, 1) == ["NEXT"]):
        at += 1
    if types(t, at, 1) != ["NUM"] or t[at].number < 3 or t[at].number % 2 == 0:
        return None, 0, at
    count, at = t[at].number, at + 1
    if types(t, at, 1) in (["PICOT"], ["KIND"]):
        noun, at = t[at], at + 1
    elif not ended(t, at):
        return None, 0, at
    one = noun is not None and (noun.type == "PICOT" or noun.kind in ARCHES)
    return (noun if one else None), count, at


def on_the_middle(t: Terminals) -> Terminals:
    """`5 treble on the centre 5 of the 7`, `on centre of 7`: the first on the 2nd, and on."""
    found: Terminals = []
    at = 0
    while at < len(t):
        counted = types(found, len(found) - 2, 2) == ["NUM", "STITCH"]
        each = types(found, len(found) - 1, 1) == ["STITCH"] and types(t, at + 1, 1) == ["EACHOF"]
        behind = types(found, len(found) - 1, 1) == ["STITCH"] and bool(found)
        many = _middle(t, at, found[-2].number if counted else 1, each) if behind else None
        if many is None:
            found.append(t[at])
            at += 1
            continue
        count, whole, end = many
        stitch = found[-1]
        if counted:
            found.pop(-2)
        number = like(t[at], "NUM", number=1)
        nth = like(t[at], "ORD", number=(whole.number - count) // 2 + 1)
        found[-1:] = [number, stitch, t[at], nth, like(t[at], "OF"), like(t[at], "THE")]
        found += t[end - 1 - (t[end - 1].type != "NUM") : end]
        found += rest_behind(t[at], stitch, count - 1)
        at = end
    return found


def _middle(
    t: Sequence[Terminal], at: int, made: int, each: bool
) -> tuple[int, Terminal, int] | None:
    """How many stitches are worked on the middle ones, of how many, and the place behind."""
    if types(t, at, 1) != ["PREP"]:
        return None
    on = t[at].text.startswith(("on", "upon", "over"))
    words = [(n, x) for n, x in enumerate(t) if n > at and x.type not in ("THE", "EACHOF", "NEXT")]
    kinds = [x.type for _, x in words[:6]]
    count = made
    if kinds[:2] == ["NUM", "CENTRE"] or kinds[:2] == ["CENTRE", "NUM"]:
        count = words[0][1].number or words[1][1].number
        words = words[2:]
        words = words[1:] if words and words[0][1].type in NOUNS else words
    elif kinds[:1] == ["CENTRE"] and (on or each):
        words = words[1:]
    else:
        return None
    if [x.type for _, x in words[:2]] != ["OF", "NUM"] or count < 2:
        return None
    end = words[1][0] + 1
    named = end < len(t) and t[end].type == "STITCH"
    whole = words[1][1]
    fits = (made in (1, count) or each) and count < whole.number and (whole.number - count) % 2 == 0
    return (count, whole, end + named) if fits and (named or ended(t, end)) else None
