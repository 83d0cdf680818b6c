"""Stitches on a part of a run: `9 treble beginning on the 2nd of the 10`, `on the centre 3 of 5`.

The first of them goes on the stitch that the words name, the others behind it.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.shaping.sentences import place_at
from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    OPENS,
    Terminals,
    chains_at,
    ended,
    like,
    list_start,
    past,
    stitch_left_out,
    types,
)


def begun_further_on(t: Terminals) -> Terminals:
    """`9 treble beginning on the 2nd of the 10`, `9 treble, the 1st on the 2nd of the 10`: the
    first on that, the rest behind it."""
    found: Terminals = []
    at = 0
    while at < len(t):
        comma = types(t, at, 1) == ["SEP"] and not t[at].name
        begin = at + comma
        first = past(t, begin, "THE") if comma else len(t)
        if types(t, first, 1) == ["ORD"] and t[first].number == 1:
            first = past(t, first + 1, "NUM") - 1  # `the 1st one`
            if types(t, first + 1, 2) == ["PREP", "THE"]:
                t = [*t[:begin], like(t[first], "BEGIN"), *t[first + 1 :]]
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


def rest_behind(
    here: Terminal, stitch: Terminal, count: int, noun: Terminal | None = None
) -> Terminals:
    """The stitches behind the first one, one in each of the next st, or of what the noun says."""
    if count < 1:
        return []
    one, many = like(here, "NUM", number=1), like(here, "NUM", number=count)
    st = replace(noun or stitch_left_out(here), many=True)
    which = [like(here, "EACHOF"), like(here, "NEXT"), many]
    place = [like(here, "PREP"), *(which if count > 1 else which[1:2]), st]
    return [like(here, "SEP"), one, stitch, *place]


def times_on_each(t: Terminals) -> Terminals:
    """`(1 treble, 1 chain) 12 times on the 12 treble`, `1 treble, 1 chain, 12 times on the 12`:
    in each of the next 12. `(3 chain, miss 1, 1 double) 4 times on the 8` says nothing more.
    """
    found: Terminals = []
    at = 0
    while at < len(t):
        if t[at].type != "TIMES":
            found.append(t[at])
            at += 1
            continue
        place = at + 1 + (types(t, at + 2, 1) == ["THE"])
        last = types(found, len(found) - 1, 1)
        often = types(t, at + 1, 1) == ["PREP"] and last in (["RP"], ["SEP"])
        many = t[place + 1 : place + 3] if often else []
        noun = [x.type for x in many[1:]] in (["STITCH"], ["KIND"], ["CH"])
        if many[:1] and many[0].type == "NUM" and (noun or ended(t, place + 2)):
            behind = place + 2 + noun
            if many[0].number == t[at].number > 1:
                if last == ["SEP"]:
                    start = list_start(found, len(found) - 1)
                    found[start:-1] = [like(t[at], "LP"), *found[start:-1]]
                    found[-1] = like(t[at], "RP")
                of = many if noun else [many[0], like(t[at], "KIND", Kind("st"))]
                found += [t[at + 1], like(t[at], "EACHOF"), like(t[at], "NEXT"), *of]
                at = behind
                continue
            worked = _worked(found) * t[at].number if last == ["RP"] else 0
            if worked and many[0].number - 1 <= worked <= many[0].number:
                found.append(t[at])
                at = behind
                continue
        found.append(t[at])
        at += 1
    return found


def _worked(found: Sequence[Terminal]) -> int:
    """How many stitches of the row below a bracket takes that names no place; 0 if it does."""
    opens = max((n for n, x in enumerate(found) if x.type == "LP"), default=0)
    inside = found[opens + 1 : -1]
    if any(x.type in ("PREP", "BETWEEN", "ALLIN", "STAR", "RP") for x in inside):
        return 0
    taken = [
        (a, b)
        for a, b in pairwise(inside)
        if (a.type, b.type) in (("NUM", "STITCH"), ("SKIP", "NUM"))
    ]
    return sum(a.number or b.number for a, b in taken)


def middle_of_several(t: Terminals) -> Terminals:
    """`in the centre of the 3 picots`, `centre loop of the next 3`: the 2nd, then 1 passed over.

    `in centre of the next 3 picots` is the words' own way to say one in each, and asked.
    """
    found: Terminals = []
    at = 0
    while at < len(t):
        noun, count, end = _several(t, at) if t[at].type == "CENTRE" else (None, 0, at)
        if types(t, end - 1, 1) == ["NUM"] and _names_chains(found, count):
            noun = None  # `centre loop of 5 ch, …, centre loop of next 5`
        if noun is None or not found or found[-1].type not in ("PREP", "THE"):
            found.append(t[at])
            at += 1
            continue
        nth = (count + 1) // 2
        found += [like(t[at], "ORD", number=nth), noun, like(t[at], "SEP", name="hard")]
        found += [like(t[at], "SKIP"), like(t[at], "NUM", number=count - nth), noun]
        at = end
    return found


def _names_chains(found: Terminals, count: int) -> bool:
    """Whether so many chains were a place before: `in the centre loop of 5 ch`."""
    return any(
        types(found, n, 3) == ["OF", "NUM", "CH"] and found[n + 1].number == count
        for n in range(len(found))
    )


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


def centre_of_group(t: Terminals) -> Terminals:
    """`1 double on the centre of the treble`: no one treble has a centre; told, of their group."""
    found: Terminals = []
    for n, here in enumerate(t):
        of = types(t, n - 1, 1) == ["OF"] or types(t, n - 2, 2) == ["OF", "THE"]
        at = len(found) - 1 - (types(found, len(found) - 1, 1) == ["THE"])
        centre = of and here.type == "STITCH" and ended(t, n + 1) and at > 1
        if centre and types(found, at - 1, 2) == ["CENTRE", "OF"]:
            prep = at - 2 - (types(found, at - 2, 1) == ["THE"])
            if types(found, prep, 1) == ["PREP"]:
                found[prep] = replace(found[prep], name=found[prep].name or "counted")
                here = like(here, "KIND", Kind("group", stitch=here.name))
        found.append(here)
    return found


def centre_as_named(t: Terminals) -> Terminals:
    """`slip to centre dc, *ch 9, 1 sc in centre dc of next shell`: of the next of what is named
    with another. `1 sc on the centre of the 5 dc, (5 ch, 1 sc on the centre dc, repeat)`: of the
    next 5."""
    centres = [n for n in range(len(t)) if types(t, n, 2) == ["CENTRE", "STITCH"]]
    bare = [n for n in centres if types(t, n + 2, 1) != ["OF"]]
    if bare and (whole := _whole_before(t, bare[0])):
        at = bare[0] + 1
        return [*t[:at], like(t[at], "OF"), *whole, *t[at + 1 :]]
    named = [n for n in centres if n not in bare and _kind_behind(t, n) is not None]
    if not bare or not named or t[bare[0] + 1].name != t[named[0] + 1].name:
        return t
    at = bare[0] + 2
    kind = _kind_behind(t, named[0])
    assert kind is not None
    of = [like(t[at - 1], "OF"), like(t[at - 1], "NEXT"), kind]
    return [*t[:at], *of, *t[at:]]


def _whole_before(t: Terminals, bare: int) -> Terminals:
    """The `the 5 dc` of `centre of the 5 dc` before a bare `centre dc` in a repeat; none where none
    stands there."""
    for n in range(bare):
        number = past(t, n + 2, "THE", "NEXT")
        counted = types(t, n, 2) == ["CENTRE", "OF"] and types(t, number, 2) == ["NUM", "STITCH"]
        if counted and t[number + 1].name == t[bare + 1].name and ended(t, bare + 2):
            repeated = any(x.type in ("REPEAT", "SOON") for x in t[bare:])
            return [like(t[bare], "THE"), *t[number : number + 2]] if repeated else []
    return []


def _kind_behind(t: Terminals, centre: int) -> Terminal | None:
    """What `centre dc of next shell`, `centre dc of group` is the centre of."""
    noun = past(t, centre + 3, "THE", "NEXT", "EACH", "EVERY")
    return t[noun] if types(t, noun, 1) == ["KIND"] else None


def _of_each_run(t: Terminals) -> Terminals:
    """`3 dc over the centre 3 of each 7 dc; repeat`: of the 7 that come next each time."""
    again = any(x.type == "REPEAT" for x in t)
    found = list(t)
    for n, here in enumerate(t):
        whole = here.type in ("EACH", "EVERY") and types(t, n + 1, 2) == ["NUM", "STITCH"]
        middle = types(t, n - 1, 1) == ["OF"] and "CENTRE" in types(t, max(0, n - 4), 3)
        if again and whole and middle:
            found[n] = replace(like(here, "THE"), text="the")
    return found


def on_the_middle(t: Terminals) -> Terminals:
    """`5 treble on the centre 5 of the 7`, `on centre of 7`, `5 treble, the centre one on the
    centre of the 7`: the first on the 2nd, and on; not `3 treble on the centre of the 5, 2 chain,
    3 treble in the same`, which all go there."""
    t = _of_each_run(_without_own_centre(t))
    found: Terminals = []
    at = 0
    while at < len(t):
        counted = types(found, len(found) - 2, 2) == ["NUM", "STITCH"]
        each = types(found, len(found) - 1, 1) == ["STITCH"] and types(t, at + 1, 1) == ["EACHOF"]
        behind = types(found, len(found) - 1, 1) == ["STITCH"] and bool(found)
        many = _middle(t, at, found[-2].number if counted else 1, each) if behind else None
        centre = not each and types(t, past(t, at + 1, "THE"), 2) == ["CENTRE", "OF"]
        if many is None or (centre and counted and _more_in_it(t, many[2], *found[-2:])):
            found.append(t[at])
            at += 1
            continue
        count, whole, end = many
        stitch = found[-1]
        if counted:
            found.pop(-2)
        number = like(t[at], "NUM", number=1)
        chains = _chains_between(t, end) if centre and count > 1 else []
        if chains:
            t = [*t[:at], replace(t[at], name=FAN, number=count), *t[at + 1 :]]
        nth = like(t[at], "ORD", number=(whole.number - count) // 2 + 1)
        found[-1:] = [number, stitch, t[at], nth, like(t[at], "OF"), like(t[at], "THE")]
        found += t[end - 1 - (t[end - 1].type != "NUM") : end]
        if found[-1].type == "NUM":  # `each of the 2 centre dc of the 4`
            found += [x for x in t[at:end] if x.type == "STITCH"]
        chain = found[-1] if found[-1].type == "CH" else None
        found += [*chains, *rest_behind(like(t[at], "PREP"), stitch, count - 1, chain)]
        at = end
    return found


FAN = "fan"
"""The name of a place, with the number of the stitches that may all go there."""


def _more_in_it(t: Sequence[Terminal], at: int, number: Terminal, stitch: Terminal) -> bool:
    """Whether as many of the stitch go in the same place behind here: all of them in one."""
    prep = next((n for n in range(at, len(t)) if t[n].type in OPENS), len(t))
    same = types(t, prep, 1) == ["PREP"] and types(t, past(t, prep + 1, "THE"), 1) == ["SAME"]
    again = [(x.number, x.name) for x in t[max(at, prep - 2) : prep]]
    return same and again == [(number.number, ""), (0, stitch.name)]


def _chains_between(t: Sequence[Terminal], at: int) -> Terminals:
    """The chains of `with 2 chain between each`, `divided by 2 chain`, as a step; none where that
    is not said here."""
    at = past(t, at, "SEP")
    number, end = chains_at(t, at + 1)
    said = types(t, at, 1) == ["DIVIDED"] or (
        types(t, at, 1) == ["WITH"] and types(t, end, 1) == ["BETWEEN"]
    )
    return [like(t[at], "SEP"), *t[at + 1 : end]] if said and number else []


def _without_own_centre(t: Terminals) -> Terminals:
    """`5 treble, the centre one on the centre [treble] of the 9` as `5 treble on the centre of the
    9`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        comma = types(t, at, 1) == ["SEP"] and not t[at].name and at > 1
        own = past(t, at + 1, "THE")
        prep = past(t, own + 1, "NUM")
        on = past(t, prep + 1, "THE")
        of = past(t, on + 1, "STITCH")
        centres = types(t, own, 1) == types(t, on, 1) == ["CENTRE"] and types(t, prep, 1) == [
            "PREP"
        ]
        counted = types(t, of, 1) == ["OF"] and types(t, past(t, of + 1, "THE"), 1) == ["NUM"]
        odd = types(t, at - 2, 2) == ["NUM", "STITCH"] and t[at - 2].number % 2 == 1
        if comma and odd and centres and counted:
            found += t[prep : on + 1]
            at = of
            continue
        found.append(t[at])
        at += 1
    return found


def on_the_centre(t: Terminals) -> Terminals:
    """`3 dc on the centre of the 5 ch`: with a name for what may be one on each of the 3 there."""
    found = list(t)
    for n in range(2, len(t) - 3):
        centre = n + 1 + (types(t, n + 1, 1) == ["THE"])
        of = centre + 2 + (types(t, centre + 2, 1) == ["THE"])
        on = t[n].type == "PREP" and t[n].text in ("on", "upon")
        on = on and types(t, centre, 2) == ["CENTRE", "OF"]
        size = chains_at(t, of)[0] if on else 0
        made = t[n - 2].number if types(t, n - 2, 2) == ["NUM", "STITCH"] else 0
        if size and 1 < made < size and (size - made) % 2 == 0:
            found[n] = replace(t[n], name=t[n].name or CENTRE)
    return found


CENTRE = "centre"
"""The name of a place that may be several chains, one for each stitch."""


def over_more(t: Terminals) -> Terminals:
    """`5 double over the 7`, `on the next 7`, `beginning on the 2nd`: on the middle 5 of them, as
    of a point.

    Where the text does not say on which it begins, that is asked (`perhaps-fewer`).
    """
    found: Terminals = []
    at = 0
    while at < len(t):
        if t[at].type != "PREP":
            found.append(t[at])
            at += 1
            continue
        start = past(t, at + 1, "THE", "NEXT")
        named = types(t, start + 1, 1) == ["STITCH"]
        end = start + 1 + named
        made = types(found, len(found) - 2, 2) == ["NUM", "STITCH"]
        over = types(t, start, 1) == ["NUM"] and made
        # `1 dc on the next 3 dc` is one on each
        over = over and (types(t, start - 1, 1) != ["NEXT"] or found[-2].number > _FEW)
        more = t[start].number - found[-2].number if over else 0
        if more < 1 or more % 2 or not ended(t, end) or not t[at].text.startswith(("o", "u")):
            found.append(t[at])
            at += 1
            continue
        first = more // 2 + 1
        begun, behind = _begun(t, end)
        if begun:
            end = behind
        how = like(t[at], "PREP", name="" if begun else "middle")
        number, stitch = found[-2:]
        nth = like(t[at], "ORD", number=begun or first)
        found[-2:] = [like(number, "NUM", number=1), stitch, how, nth]
        found += [like(how, "OF"), like(how, "THE"), t[start], *t[start + 1 : start + 1 + named]]
        found += rest_behind(t[at], stitch, number.number - 1)
        at = end
    return found


_FEW = 2


def _begun(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """`beginning on the 2nd`: the 2, and the place behind it; 0 where it does not stand here."""
    words = [(n, x) for n, x in enumerate(t) if n >= at and x.type not in ("SEP", "THE")]
    if [x.type for _, x in words[:3]] != ["BEGIN", "PREP", "ORD"] or words[2][1].number < 1:
        return 0, at
    return words[2][1].number, words[2][0] + 1


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
        if words and words[0][1].type == "CH":
            return None  # `each of the 3 centre chain of the 5` are no stitches
        words = words[1:] if words and words[0][1].type in NOUNS else words
    elif kinds[:1] == ["CENTRE"] and (on or each):
        words = words[1:]
    else:
        return None
    if [x.type for _, x in words[:2]] != ["OF", "NUM"] or count < 2:
        return None
    end = words[1][0] + 1
    chains = kinds[:1] != ["CENTRE"] or kinds[1:2] == ["NUM"]  # `on the centre of the 5 chain`
    named = end < len(t) and t[end].type in (("STITCH", "CH") if chains else ("STITCH",))
    whole = words[1][1]
    fits = (made in (1, count) or each) and count < whole.number and (whole.number - count) % 2 == 0
    return (count, whole, end + named) if fits and (named or ended(t, end)) else None
