"""Places in the books' order of words: `the 2 following`, `all in one loop`, `the next but 3`.

Each pass puts in the noun or the order of words that the grammar has. What they
then mean is in `grammar/README.md`, "How the books say things".
"""

from __future__ import annotations

from msgspec.structs import replace

from border.text.terminals import Terminal
from border.text.wording.passing import (
    NOUNS,
    OPENS,
    WHICH,
    Terminals,
    ended,
    like,
    past,
    prep_before,
    stitch_left_out,
    types,
)

_LOOSE = frozenset({"NEXT", "MORE"})
_COUNTED = (["STITCH"], ["CH"], ["PICOT"])


def missed_before(t: Terminals) -> Terminals:
    """`in the stitch missed`, `in the one missed`: the skipped one; `in the 3rd of the 5 chain
    missed`, where this row has missed none yet: that they were says nothing of where they are."""
    found: Terminals = []
    for n, here in enumerate(t):
        one = n > 1 and types(t, n - 2, 3) == ["THE", "NUM", "SKIPPED"] and t[n - 1].number == 1
        if one and ended(t, n + 1):
            skip = max((i for i in range(n) if t[i].type == "SKIP"), default=n)
            named = next((x for x in t[skip : skip + 4] if x.type in NOUNS), stitch_left_out(here))
            found[-1:] = [here, replace(named, many=False)]
            continue
        behind = here.type == "SKIPPED" and n > 0 and t[n - 1].type in NOUNS and ended(t, n + 1)
        if not behind:
            found.append(here)
        elif types(t, n - 2, 1) == ["THE"]:
            found[-2:] = [here, found[-1]]
        elif any(x.type == "SKIP" for x in t[:n]):
            return t
    return found


def orders(t: Terminals) -> Terminals:
    """`the 2 following stitches`, `each of the 3`, `all the loops`, `next stitch but 3`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here, behind = t[at], types(t, at + 1, 3)
        before = found[-1].type if found else ""
        one_of = here.type == "NUM" and here.number == 1 and behind[:2] == ["OF", "THE"]
        if one_of and before == "PREP" and types(t, at + 3, 1) == ["KIND"] and t[at + 3].many:
            found += [like(here, "NEXT"), replace(t[at + 3], many=False)]  # `into one of the loops`
            at += 4
            continue
        middle = (
            here.type == "NUM" and behind[:1] == ["CENTRE"] and before in ("PREP", "THE", "EACHOF")
        )
        middle = middle and types(found, len(found) - 2, 1) != ["BETWEEN"]
        if middle and behind[1:2] in (["STITCH"], ["KIND"]) and ended(t, at + 3):
            found += [t[at + 1], here]  # `on the 3 middle treble`
            at += 2
            continue
        if before in ("CENTRE", "ORD") and (here.type, here.number, *behind[:1]) == (
            "NUM",
            1,
            "OF",
        ):
            at += 1  # the centre one of the 3 treble
            continue
        if here.type == "NUM" and before in OPENS | {"THE", "EACHOF", "AND"} and _turned(t, at + 1):
            found += [t[at + 1], here]
            at += 2
            continue
        if here.type == "TO" and before == "STITCH" and behind[:1] in (["EACH"], ["EVERY"]):
            here = replace(here, type="PREP")
        if here.type == "EACHOF" and behind[:1] == ["THE"]:
            t = [*t[: at + 1], *t[at + 2 :]]
            behind = types(t, at + 1, 3)
        other = here.type == "OTHER" and before in ("THE", "PREP") and at + 1 < len(t)
        if other and t[at + 1].type == "KIND" and not t[at + 1].many:
            # `1 dc in one loop, 3 tr in the other loop`; `1 dc in alternate st, ch 1; repeat`
            which = "ORD" if any(x.type in ("REPEAT", "STAR") for x in t) else "EVERY"
            by_turns = here.text.startswith("alternate")
            here = like(here, which, number=2) if by_turns else replace(here, type="NEXT")
        if here.type == "NEXT" and before == "ORD" and behind[:1] and behind[0] in NOUNS:
            at += 1  # `on the second following stitch`
            continue
        if here.text in ("consecutive", "successive") and before == "STITCH" and ended(t, at + 1):
            at += 1  # `4 treble consecutive`
            continue
        if here.type in _LOOSE and before == "NUM" and behind[:1] in _COUNTED:
            at += 1  # `3 consecutive treble`, `3 more treble`
            continue
        if here.type == "MORE" and not here.number and before in NOUNS and ended(t, at + 1):
            at += 1  # `miss 1 loop more`
            continue
        named = behind[1:2] in (["NEXT"], ["ORD"], ["CENTRE"])
        if here.type == "EACHOF" and behind[:1] == ["NUM"] and not named:
            found += [here, like(here, "NEXT")]
            at += 1
            continue
        if here.type == "EACHOF" and behind and behind[0] in NOUNS:
            here = replace(here, type="EACH")
        one = here.type == "NUM" and here.text == "one" and ended(t, at + 1)
        if one and before in ("EACH", "NEXT", "ORD"):
            at += 1  # `2 treble in every one`, `1 treble in the last one`
            continue
        noun = at + 1 + (behind[:1] == ["THE"])
        if here.type == "INALL" and types(t, noun, 1) in (["KIND"], ["STITCH"], ["CH"]):
            found += [like(here, "PREP"), like(here, "EACH")]
            at = noun
            continue
        if here.type == "ALL" and here.text != "both" and before in OPENS:
            at += behind[:1] == ["THE"]
            here = replace(here, type="EACH")
        if here.type == "NEXT":
            taken, nth = _but(t, at)
            if nth:
                found += nth
                at += taken
                continue
        found.append(here)
        at += 1
    return found


def _turned(t: Terminals, at: int) -> bool:
    """Whether `next stitches` or `first stitches` stands behind its number."""
    here, behind = t[at : at + 1], types(t, at + 1, 2)
    which = here and (here[0].type == "NEXT" or _is_end(here[0]))
    if which and ended(t, at + 1):
        return True  # `in each of the two next`, `on each of the 3 last`
    if not here or not behind or behind[0] not in NOUNS:
        return False
    return (here[0].type == "NEXT" and behind[1:] != ["OF"]) or _is_end(here[0])


def _is_end(here: Terminal) -> bool:
    return here.type == "ORD" and here.number in (1, -1)


BUT = "but"
"""The name of an order that is said as `the next but one`: counted from the last one worked."""


def _but(t: Terminals, at: int) -> tuple[int, Terminals]:
    """`next [stitch] but 3` as the 4th: how many terminals that takes, and those it is read as."""
    noun = past(t, at + 1, "NUM") if types(t, at + 1, 2) == ["NUM", "CH"] else at + 1
    but = past(t, noun, *NOUNS)
    if types(t, but, 2) != ["BUT", "NUM"] or but > noun + 1:
        return 0, []
    order = like(t[at], "ORD", number=t[but + 1].number + 1, name=BUT)
    return but + 2 - at, [order, *t[at + 1 : but]]


def placed_in_brackets(t: Terminals) -> Terminals:
    """`5 treble (all into one space)`, `in 4 ch (between the treble)`: without the brackets. `2
    treble, 2 ch, 2 treble in same st (all in first st)`: in the place named last."""
    found = list(t)
    for n in range(1, len(t)):
        opens = types(t, n, 2) in (["LP", "ALLIN"], ["LP", "PREP"]) and t[n - 1].type == "STITCH"
        where = types(t, n, 2) == ["LP", "BETWEEN"] and t[n - 1].type in NOUNS
        prep = prep_before(t[:n]) if types(t, n, 2) == ["LP", "ALLIN"] else None
        if prep is not None and t[prep + 1].type == "SAME":
            found[prep:n] = [like(x, "DROP") for x in t[prep:n]]  # the other names it
            where = True
        end = next((i for i in range(n, len(t)) if t[i].type == "RP"), 0) if opens or where else 0
        if end and all(x.type in _IN_PLACE for x in t[n + 2 : end]):
            found[n], found[end] = like(t[n], "DROP"), like(t[end], "DROP")
            if opens:
                found[n + 1] = like(t[n + 1], "PREP")
    return [x for x in found if x.type != "DROP"]


_IN_PLACE = WHICH | NOUNS | {"NUM", "OF"}


def all_in_one(t: Terminals) -> Terminals:
    """`1 treble, 2 chain, 1 treble, all in the same place` before any other: all in the next."""
    at = next((n for n, x in enumerate(t) if x.type in OPENS), len(t))
    behind = at + 1 + (types(t, at + 1, 1) == ["THE"])
    if types(t, at, 1) != ["ALLIN"] or types(t, behind, 1) != ["SAME"]:
        return t
    end = behind + 1
    if types(t, end, 1) in (["KIND"], ["STITCH"], ["CH"]) or types(t, end, 2) == ["NUM", "CH"]:
        return [*t[: at + 1], like(t[at], "NEXT"), *t[end:]]  # `all in the same 5 chain`
    place = types(t, end, 1) == ["PLACE"]
    return [*t[: at + 1], like(t[at], "NEXT"), stitch_left_out(t[at]), *t[end + place :]]


def after_next(t: Terminals) -> Terminals:
    """`in the hole after the next`: in the second."""
    found: Terminals = []
    at = 0
    while at < len(t):
        noun = t[at].type in NOUNS and types(found, len(found) - 1, 1) == ["THE"]
        behind = past(t, at + 2, "THE") + 1
        said = noun and types(t, at + 1, 1) == ["AFTER"] and types(t, behind - 1, 1) == ["NEXT"]
        if said and ended(t, behind):
            found[-1:] = [like(t[at], "ORD", number=2), t[at]]
            at = behind
            continue
        found.append(t[at])
        at += 1
    return found
