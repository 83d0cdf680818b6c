"""Rows told as a whole: `plain all round`, `a row of treble`, `a row of 1 long, 1 ch, miss 1`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import (
    NOUNS,
    Terminals,
    ended,
    like,
    only_ends,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_ALL_ROUND = (
    ["ALL", "STITCH"],
    ["PREP", "STITCH"],  # `in double crochet`
    ["STITCH", "TOEND"],
    ["STITCH", "TOEND", "PREP", "KIND"],  # `double all round over the rolled hem`
    ["PREP", "STITCH", "TOEND", "PREP", "KIND"],
    ["ROW", "OF", "STITCH"],
    ["ROW", "OF", "STITCH", "TOEND"],
    ["TOEND", "OF", "STITCH", "PREP", "KIND"],  # `a round of double into the linen`
    ["STITCH", "ROW", "OF", "STITCH"],  # `a plain row of double`
    ["ROW", "PREP", "STITCH"],  # `one row in double crochet`
    ["STITCH", "ROW", "PREP", "STITCH"],
    ["TOEND", "OF", "STITCH"],
    ["TOEND", "PREP", "STITCH"],
)


SAYS_NOTHING = ("SEP", "ENDING", "BETW", "MOD", "COLOUR", "THE")


def whole_rows(t: Terminals) -> Terminals:
    """`plain all round`, `a row of treble`: the whole text is one stitch in each."""
    told = [x for x in t if x.type not in SAYS_NOTHING]
    told = told[1:] if types(told, 0, 1) == ["ENDWITH"] else told
    if spaced := _spaced(t):
        return spaced
    kinds = [x.type for x in told]
    kinds = kinds[1:] if kinds[:1] == ["NUM"] and told[0].number == 1 else kinds
    hem = told[-1:] != [] and told[-1].text in ("edge", "hem")  # `closely in double over the hem`
    if kinds not in _ALL_ROUND and not (hem and kinds == ["PREP", "STITCH", "PREP", "KIND"]):
        return without_to_end(t)
    stitch = next(x for x in reversed(told) if x.type == "STITCH")
    each = [like(stitch, "PREP"), *_each(stitch)]
    at = next(n for n, x in enumerate(t) if x is stitch)
    turns = [x for x in t[:at] if x.name == "turn"]  # `turn back, and work a row of plain`
    rest = [x for x in t if x.type in ("BETW", "MOD", "COLOUR", "ENDING") and x not in turns]
    return [*turns, stitch, *each, *rest]


ALL_OF_A_ROW = "all of a row"
"""The name of a place that a row leaves out which is one stitch's name, and nothing else."""


def one_stitch_alone(t: Terminals) -> Terminals:
    """`Dc.`, `Plain, fasten off.`, `Treble, with 1 chain between each`: a row that is the name of a
    stitch, with no number, is one in each."""
    told = [n for n, x in enumerate(t) if x.type not in SAYS_NOTHING]
    words = [t[n].type for n in told]
    parted = words[1:3] == ["WITH", "NUM"] or words[1:3] == ["DIVIDED", "NUM"]
    if words[:1] != ["STITCH"] or words[1:] not in (_PARTED if parted else [[]]):
        return t
    at = told[0] + 1
    place = like(t[told[0]], "PREP", name=ALL_OF_A_ROW)
    return t if t[told[0]].name == "ss" else [*t[:at], place, *_each(place), *t[at:]]


_PARTED = [
    [by, "NUM", "CH", *where]
    for by in ("WITH", "DIVIDED")
    for where in ([], ["BETWEEN"], ["BETWEEN", "EACH"], ["BETWEEN", "THEM"])
    if by == "DIVIDED" or where
]


def over_the_hem(t: Terminals) -> Terminals:
    """`Dc over the rolled edge of the linen`: one in each; `216 dc over the hem`: so many, once."""
    last = len(t) - 1
    while last > 0 and t[last].type in SAYS_NOTHING:
        last -= 1
    if not t or not t[last].text.endswith(("edge", "hem")):
        return t
    told = [x for x in t if x.type not in SAYS_NOTHING]
    ends = [x for x in t if x.type in ("BETW", "MOD", "COLOUR", "ENDING")]
    if types(told, 0, 5) == ["NUM", "STITCH", "PREP", "KIND"] and told[0].number > 1:
        return [*told[:2], *ends]
    if types(told, 0, 4) != ["STITCH", "PREP", "KIND"]:
        return t
    stitch = told[0]
    each = [like(stitch, "PREP"), *_each(stitch)]
    return [stitch, *each, *ends]


def a_row_of(t: Terminals) -> Terminals:
    """`a row of 1 long, 1 chain, miss 1`: these steps, repeated; `a row of long, missing 1`: `1
    long, miss 1; repeat`; `a row of plain on the chain`: one in each."""
    start = past(t, 0, "SEP", "AND")
    of = past(t, start, "NUM") + 1
    if types(t, of - 1, 2) != ["ROW", "OF"] or (of > start + 1 and t[start].number != 1):
        return t
    rest = [x for x in t[of + 1 :] if x.type != "ENDING"]
    ends = [x for x in t[of + 1 :] if x.type == "ENDING"]
    while rest and rest[-1].type in ("SEP", "TOEND"):
        rest.pop()
    sorts = [x.type for x in rest if x.type not in ("SEP", "THE")]
    if sorts == ["STITCH", "PREP", "EACH", "KIND"]:
        return [*t[:start], *rest, *ends]  # `a row of dc closely over the edge`
    if {"REPEAT", "STAR", "EACH", "LP"} & set(sorts) or sorts[:1] not in (["NUM"], ["STITCH"]):
        return t
    first = rest[0]
    if sorts[:1] == ["STITCH"] and sorts[1:2] == ["PREP"] and len(sorts) == 3:
        each = [like(first, "PREP"), *_each(first)]
        return [*t[:start], first, *each, *ends]
    if sorts[:2] in (["STITCH"], ["STITCH", "BETW"]):
        return [*t[:start], *rest, *ends] if len(sorts) > 1 else t
    one = [like(first, "NUM", number=1)] if first.type == "STITCH" else []
    again = [like(first, "SEP", name="hard"), like(first, "REPEAT")]
    return [*t[:start], *one, *rest, *again, *ends]


def on_the_foundation(t: Terminals) -> Terminals:
    """`Trebles on the foundation chain`, `dc along the chain`: one in each of its stitches."""
    start = past(t, 0, "SEP")
    row = past(t, start, "NUM")
    start = row + 2 if types(t, row, 2) == ["ROW", "OF"] else start
    start += types(t, start, 2) == ["PREP", "STITCH"]  # `in double crochet`
    on = start + 1
    along = types(t, on, 1) == ["UNKNOWN"] and t[on].text == "along"
    along = along or types(t, on, 1) == ["TOEND"]
    chain = past(t, on + 1, "THE")
    named = past(t, chain, "FOUNDATION", "CH")
    if types(t, start, 1) != ["STITCH"] or named == chain or not only_ends(t[named:]):
        return t
    if not along and (types(t, on, 1) != ["PREP"] or t[chain].type != "FOUNDATION"):
        return t
    return [t[start], like(t[on], "PREP"), *_each(t[start]), *t[named:]]


def the_rest(t: Terminals) -> Terminals:
    """`the rest treble`, `plain on the remaining stitches`, `work in treble to the end`: one in
    each of them; `1 treble, 1 chain alternately, after every treble miss 1`: `…, miss 1`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here, the = t[at], past(t, at, "THE")
        opens = not found or found[-1].type in ("SEP", "AND")
        rest = types(t, the, 2) == ["UNKNOWN", "STITCH"] and t[the].text in _REST
        rest = rest and opens and ended(t, the + 2)
        in_ = here.type == "PREP" and here.text == "in" and bool(found) and found[-1].type == "SEP"
        in_ = in_ and types(t, at + 1, 2) == ["STITCH", "TOEND"]
        made = types(found, len(found) - 1, 1) == ["STITCH"] and here.type == "PREP"
        left = past(t, at + 1, "THE")
        on = made and types(t, left, 1) == ["UNKNOWN"] and t[left].text in _REST
        hem = types(t, at, 4) == ["STITCH", "PREP", "STRAY", "TOEND"] and t[at + 2].text == "it"
        if hem and opens:  # `work dc over it to the end`
            found += [here, like(here, "PREP"), *_each(here)]
            at += 4
            continue
        after = opens and here.type == "AFTER" and types(t, at + 1, 2) in _AFTER_EACH
        if rest:
            stitch = t[the + 1]
            if types(found, len(found) - 1, 1) == ["SEP"]:
                found[-1] = replace(found[-1], name="hard")
            each = _each(stitch)
            found += [like(stitch, "NUM", number=1), stitch, like(stitch, "PREP"), *each]
            at = the + 2
        elif in_:
            at += 1
        elif on and types(found, len(found) - 2, 1) != ["NUM"]:
            found += [here, like(here, "EACH")]
            at = left + 1
            found += [] if types(t, at, 1) == ["KIND"] else [like(here, "KIND", Kind("st"))]
        elif after and types(t, at + 3, 2) == ["SKIP", "NUM"]:
            at += 3
        else:
            found.append(here)
            at += 1
    return found


_REST = frozenset({"rest", "remainder", "others", "remaining"})
_AFTER_EACH = (["EACH", "STITCH"], ["EVERY", "STITCH"])


def between_all(t: Terminals) -> Terminals:
    """`3 treble between the groups` as a whole row: between all of them."""
    if all(x.type != "BETWEEN" for x in t[:_FEW]):
        return t
    steps = [x for x in t if x.type not in SAYS_NOTHING]
    between = types(steps, 0, 4) == ["NUM", "STITCH", "BETWEEN", "KIND"] and steps[3].many
    if not between or len(steps) != 4:
        return t
    again = [like(steps[3], "SEP", name="hard"), like(steps[3], "REPEAT")]
    behind = next(n for n in range(len(t)) if t[n] is steps[3]) + 1
    said = [x for x in t[behind:] if x.type in ("MOD", "COLOUR")]
    return [*t[:behind], *said, *again, *(x for x in t[behind:] if x.type in ("SEP", "ENDING"))]


_FEW = 5
"""In so many words one step names its place."""


def _spaced(t: Terminals) -> Terminals:
    """`Long, with 1 chain between each, missing 1`: `1 long, 1 chain, miss 1; repeat`."""
    steps = [x for x in t if x.type not in ("SEP", "ENDING", "TOEND")]
    missed = steps[2:4] + steps[4:5] * (types(steps, 4, 1) in (["CH"], ["KIND"]))
    if [x.type for x in steps[:4]] != _SPACED or len(steps) != 2 + len(missed):
        return []
    stitch, between = steps[:2]
    comma = like(stitch, "SEP")
    chains = [like(between, "NUM", number=between.number), like(between, "CH")]
    one = like(stitch, "NUM", number=1)
    again = [like(stitch, "SEP", name="hard"), like(stitch, "REPEAT")]
    ends = [x for x in t if x.type == "ENDING"]
    return [one, stitch, comma, *chains, comma, *missed, *again, *ends]


_SPACED = ["STITCH", "BETW", "SKIP", "NUM"]


def without_to_end(t: Terminals) -> Terminals:
    """`in every other stitch, to the end`: that goes to the end already; so does `in each
    loop, with 3 chain between, all round`, and `as they come, all round`."""
    found: Terminals = []
    for here in t:
        end = before_comma(found, len(found))
        if end and found[end - 1].type == "BETW":
            end = before_comma(found, end - 1)
        before = [x.type for x in found[max(0, end - 3) : end]]
        open_place = before[-1:] != [] and before[-1] in NOUNS and {"EACH", "EVERY"} & set(before)
        if here.type != "TOEND" or not (open_place or before[-1:] == ["COME"]):
            found.append(here)
    return found


def before_comma(t: Terminals, end: int) -> int:
    """How many there are of the first `end`, without the comma that these end in."""
    return end - (end > 0 and t[end - 1].type == "SEP" and not t[end - 1].name)


def _each(here: Terminal) -> list[Terminal]:
    """`each stitch`, where the row does not say what its stitches go into."""
    return [like(here, "EACH"), like(here, "KIND", Kind("st"))]
