"""Steps that go into every place: `in every loop 5 dc`, `1 dc, 3 ch in every 2nd st`, `of each`."""

from __future__ import annotations

from itertools import pairwise

from border.text.wording.passing import (
    NOUNS,
    WHICH,
    Terminals,
    like,
    only_ends,
    past,
    stitch_left_out,
    types,
)


def in_every(t: Terminals) -> Terminals:
    """`3 dc in the first loop; repeat in every loop`: as `in every loop`; behind several places,
    as `repeat`."""
    at = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    star = types(t, at + 1, 1) == ["FROMSTAR"]
    said = t[at + 1 + star : at + 4 + star]
    if types(said, 0, 2) == ["PREP", "NEXT"] and types(said, 2, 1) in (
        ["KIND"],
        ["STITCH"],
        ["CH"],
    ):
        return [*t[: at + 1 + star], *t[at + 4 + star :]]  # `repeat from * in the next shell`
    over = (["PREP", "EACH"], ["AS", "EACH"], ["TOEND", "EACH"], ["WITH", "EACH"])
    if types(said, 0, 2) not in over or len(said) < 3:
        return t
    end = at + 4 + star + (said[2].type == "NUM" and types(t, at + 4 + star, 1) == ["KIND"])
    end = past(t, end, "TOEND")
    if said[2].type not in NOUNS | {"NUM"} or not only_ends(t[end:]):
        return t
    places = [x.type for x in t[:at] if x.type in ("PREP", "ALLIN")]
    begun = max((n for n in range(at) if t[n].type == "STAR"), default=-1) + 1 if star else 0
    placed = any(x.type in _PLACED for x in t[begun:at])
    if said[0].type == "PREP" and said[2].type != "NUM" and not placed:
        return [*t[:begun], *_in_next(t[begun:at], said), *t[at : at + 1 + star], *t[end:]]
    if star or said[0].type != "PREP" or places != ["PREP"] or said[2].type == "NUM":
        return [*t[: at + 1 + star], *t[end:]]
    for n, here in enumerate(t[:at]):
        if here.type == "PREP" and types(t, n + 1, 1) in (["ORD"], ["NEXT"], ["THE"], ["SAME"]):
            part = any(x.type in ("PREP", "OF") for x in t[n + 1 : at])
            if part or t[n + 2].type not in NOUNS:
                return [*t[: at + 1], *t[at + 4 :]]
            first = t[n + 1].type != "ORD" or t[n + 1].number == 1
            rest = [x for x in t[n + 2 : at] if x.type != "SEP"]
            steps = t[:n]
            if any(x.type == "PICOT" for x in steps):  # `picot, 1 dc in the loop; do so in every …`
                steps = [like(t[0], "LP"), *steps, like(t[n - 1], "RP")]
            return [*steps, here, said[1], *rest, *t[at + 4 :]] if first else t
    return t


_PLACED = frozenset({"PREP", "ALLIN", "SKIP", "BETWEEN", "AS", "BEGIN", "STAR"})


def _in_next(steps: Terminals, said: Terminals) -> Terminals:
    """Steps without a place as all in the next of what they are repeated in, but for the chains at
    their end: `*2 sc, picot, 2 sc, repeat from * in each loop`."""
    made = max((n for n, x in enumerate(steps) if x.type not in ("NUM", "CH", "SEP")), default=-1)
    inside, behind = steps[: made + 1], steps[made + 1 :]
    place = [said[0], like(said[1], "NEXT"), said[2]]
    left, right = like(said[0], "LP"), like(said[0], "RP")
    single = [x.type for x in inside if x.type not in ("NUM", "STITCH")] == []
    inside = inside if single or inside[:1] == [left] else [left, *inside, right]
    return [*inside, *place, *behind] if made >= 0 else steps


def same_in_every(t: Terminals) -> Terminals:
    """`…, and the same over every scallop`, `every scallop the same` at a row's end: `repeat`."""
    for n, here in enumerate(t):
        before = [x.type for x in t[max(0, n - 4) : n] if x.type != "THE"]
        each = {"EACH", "NEXT"} & set(before[-3:]) and before[-1] in NOUNS | {"NUM"}
        if here.type == "SAME" and each and only_ends(t[n + 1 :]):
            start = n
            while start and t[start - 1].type != "SEP":
                start -= 1
            if start > 1 and t[start].type in ("EACH", "NEXT", "THE"):
                return [*t[:start], like(here, "REPEAT"), *t[n + 1 :]]
        begins = here.type == "BEGIN" and types(t, n + 1, 2) == ["NEXT", "KIND"]
        if begins and n > 1 and t[n - 1].type == "SEP" and only_ends(t[n + 3 :]):
            return [*t[:n], like(here, "REPEAT"), *t[n + 3 :]]  # `begin the next scallop`
        place = past(t, n + 1, "SEP") if here.type == "BEGIN" else n
        anew = begins or (place > n and types(t, place, 1) == ["PREP"])
        repeat = next((i for i in range(n - 1, -1, -1) if t[i].type not in ("SEP", "AND")), 0)
        if anew and t[repeat].type == "REPEAT" and any(x.type == "NEXT" for x in t[n:]):
            ends = (i for i in range(place, len(t)) if t[i].type in ("SEP", "ENDING"))
            behind = next(ends, len(t))
            return [*t[: repeat + 1], *t[behind:]]  # `repeat, beginning on the next scallop`
        every = here.type == "SAME" and types(t, n + 1, 2) == ["PREP", "EACH"]
        rest = [x for x in t[n + 4 :] if x.type != "TOEND"]
        if every and n + 3 < len(t) and t[n + 3].type in NOUNS and only_ends(rest):
            start = n
            while start and t[start - 1].type in ("THE", "AND", "SEP"):
                start -= 1
            again = [like(here, "SEP", name="hard"), like(here, "REPEAT")]
            return [*t[:start], *again, *t[n + 4 :]] if start else t
    return t


def of_each(t: Terminals) -> Terminals:
    """`1 dc in each st; repeat`: the one step goes to the end already."""
    at = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    before = [x.type for x in t[:at]]
    one = before.count("PREP") == 1 and {"EACH", "EVERY"} & set(before)
    made = [n for n, x in enumerate(before) if x == "STITCH" and before[n - 1] not in WHICH]
    bracket = before[:1] == ["LP"] and before.count("LP") == 1
    steps = len(made) == 1 or bracket
    # `(2 dc, 2 ch, 2 dc) under each 5 chain`: one step, with its place right behind it
    placed = before[before.index("RP") + 1 :] if bracket and "RP" in before else before
    if placed[-2:] == ["NUM", "CH"] and bracket:
        placed = placed[:-1]
    chains = any(here == "CH" and which != "EACH" for which, here in pairwise(["", *placed]))
    other = {"STAR", "SKIP", "AS", "BETWEEN"} & set(before) or chains
    if at == len(t) or not one or not steps or other:
        return t
    rest = [x for x in t[at + 1 :] if x.type not in ("TOEND", "FROMHEAD")]
    return [*t[:at], *rest] if only_ends(rest) else t


def stitch_to_end(steps: Terminals) -> Terminals:
    """`miss 1, and work plain to the end`: one in each, where the stitch has neither a number nor a
    place, and more stands before it; else nothing."""
    alone = types(steps, len(steps) - 1, 1) == ["STITCH"]
    if not alone or types(steps, len(steps) - 2, 1) not in (["SEP"], ["AND"]):
        return []
    stitch = steps[-1]
    return [*steps, like(stitch, "PREP"), like(stitch, "EACH"), stitch_left_out(stitch)]
