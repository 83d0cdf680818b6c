"""Picots that are explained behind their name: `1 purl (that is, 4 ch, 1 single in the first)`."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import ARCHES, HOW_OFTEN, Terminals, like, past, types
from border.text.wording.picots_named import CLOSED, PARTED
from border.text.wording.rings import CLOSING, COUNTED, SHOWN, chains_made, rings

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_EXPLAINS = frozenset(
    {"SEP", "AND", "NUM", "THE", "CH", "OF", "STITCH", "PREP", "TO", "ORD", "SAME", "THEM", "PLACE"}
    | {"KIND", "CATCH", "WITH", "ENDING"}
)
"""Words that say how chains are closed into a picot."""


def namely(t: Terminals) -> Terminals:
    """`1 purl (that is, 4 chain, 1 double in the first)`, `1 picot, that is, 5 chain, …`, `p (ch 5,
    1 sc in the 4th st from the hook)`: the picot, once."""
    found: Terminals = []
    at = 0
    while at < len(t):
        picots = types(found, len(found) - 1, 1) == ["PICOT"]
        if picots and types(t, at, 3) == ["LP", "PICOT", "SEP"]:
            found.append(t[at])  # `1 p (picot, that is, …)`
            at += 3
            continue
        if picots and types(t, at, 2) == ["SEP", "OF"] and t[at + 1].text in _FORMED:
            at += 1  # `1 p., made of 4 ch. and 1 sc in the first`
        if picots and types(t, at, 2) == ["SEP", "LP"] and _glosses(t, at + 2):
            end = next((n for n in range(at, len(t)) if t[n].type == "RP"), at)
            closed = any(x.type in ("STITCH", "CATCH", "ENDING") for x in t[at:end])
            # `p, (4 ch, 1 sc in the 1st)`; not `miss 1 p, (2 ch)`
            at += closed and _shown(t, at + 2, in_bracket=True) is not None
        if picots and t[at].type in ("LP", "OF"):  # `picot of 4 ch and 1 sc in the first`
            in_bracket = t[at].type == "LP"
            start = past(t, at + 1, "NAMELY", "SEP", "OF") if in_bracket else at + 1
            count = found[-2].number if types(found, len(found) - 2, 1) == ["NUM"] else 1
            shown = _shown(t, start, in_bracket, steps=not in_bracket, count=count)
            if shown is not None:
                at = _without_name(found, shown)
                continue
            if not in_bracket and _perhaps_closed(t, start):
                found[-1] = replace(found[-1], name=PARTED)
            whole = chains_made(t, start)[0] and ring_in_bracket([found[-1], *t[at : at + _LONG]])
            if in_bracket and _glosses(t, start) and not whole:
                found.append(like(t[at], "OF"))  # which the grammar does not have: never both
        shown_equal = t[at].type == "EQUALS" and types(found, len(found) - 2, 2) == ["PICOT", "LP"]
        if shown_equal:  # `1 picot (= 5 chain, …)`
            at += 1
            continue
        if t[at].type != "NAMELY" or _tells_of_step(t, at, found):
            found.append(t[at])
            at += 1
            continue
        tells = t[at]
        at = past(t, at + 1, "SEP")
        named = len(found) - (types(found, len(found) - 1, 1) == ["SEP"])
        if types(found, named - 1, 1) == ["PICOT"] and chains_made(t, at)[0]:
            del found[named:]
            shown = _shown(t, at)
            if shown:
                at = _without_name(found, shown)
            elif _step_end(t, at) == chains_made(t, at)[1]:  # `, consisting of 4 chain`
                found.append(like(t[at], "OF"))
            else:  # which the grammar does not have: never both
                found.append(tells)
    return found


def _tells_of_step(t: Terminals, at: int, found: Terminals) -> bool:
    """Whether `viz.` stands behind a step with its place, `1 shell in each loop, viz., 2 dc, 1 ch,
    2 dc`: what it says is not made once more, and is asked."""
    named = len(found) - (types(found, len(found) - 1, 1) == ["SEP"])
    back = range(named - 1, 0, -1)
    begun = next((n for n in back if found[n].name == "hard" or found[n].type == "STAR"), 0)
    placed = any(x.type in ("PREP", "ALLIN") for x in found[begun:named])
    noun = types(found, named - 1, 1) in (["KIND"], ["STITCH"], ["CH"])
    steps = past(t, at + 1, "SEP")
    return placed and noun and types(t, steps, 1) == ["NUM"] and "LP" not in types(found, named, 2)


_FORMED = ("made of", "formed of", "made by", "formed by")
_LONG = 20
"""No picot is spelled out in more words."""


_AGAIN = HOW_OFTEN | {"PREP", "ALLIN", "TOEND", "REPEAT", "FROMSTAR", "CROSS"}
"""Behind a bracket, what says that it is worked again, or where."""


def _glosses(t: Terminals, at: int) -> bool:
    """Whether a bracket behind a picot begins with the chains of one, or closes some, and is not
    worked again, or in a place."""
    stitch = past(t, at, "NUM")
    closes = types(t, stitch, 2) == ["STITCH", "PREP"] and types(
        t, past(t, stitch + 2, "THE"), 1
    ) == ["ORD"]
    end = next((n for n in range(at, len(t)) if t[n].type == "RP"), len(t))
    behind = types(t, end + 1 + (types(t, end + 1, 1) == ["NUM"]), 1)
    again = bool(behind) and behind[0] in _AGAIN
    return (closes or chains_made(t, at)[0] > 1) and not again


def _shown(
    t: Terminals, at: int, in_bracket: bool = False, steps: bool = False, count: int = 1
) -> tuple[Terminals, int] | None:
    """The picot that is spelled out from here, behind its name, with the chains before it, and the
    place behind it all. `steps`: up to the next comma. `count`: of how many it is said."""
    if chains_made(t, at)[0] < 2:
        return None
    ends = (n for n in range(at, len(t) + 1) if n == len(t) or t[n].type in ("SEP", "RP"))
    for end in islice(ends, 1 if steps else 4):
        chains = all(x.type in ("NUM", "CH", "SEP") for x in t[at:end])
        if (types(t, end, 1) != ["RP"]) if in_bracket else chains:
            continue
        alone = _closed_by_one(t, at, end)
        if alone is not None and (not steps or alone.name == "ss"):
            doubtful = steps or not (in_bracket or end == _step_end(t, at))
            name = CLOSED if doubtful else SHOWN
            ring = replace(like(alone, "PICOT", number=chains_made(t, at)[0]), name=name)
            return [ring], end + in_bracket
        called = [like(t[end - 1], "AS"), like(t[end - 1], "PICOT")]
        # whatever stitch closes it, it is called a picot
        steps_ = [replace(x, name="ss") if x.type == "STITCH" else x for x in t[at:end]]
        while steps_ and (steps_[-1].type == "SEP" or _says_again(steps_[-1], count)):
            steps_.pop()
        made = rings([*steps_, *called])
        if types(made, len(made) - 1, 1) == ["PICOT"] and all(
            x.type in ("NUM", "CH", "SEP") for x in made[:-1]
        ):
            name = made[-1].name if made[-1].name == COUNTED else SHOWN
            return [*made[:-1], replace(made[-1], name=name)], end + in_bracket
    return None


def _closed_by_one(t: Terminals, at: int, end: int) -> Terminal | None:
    """The stitch of `4 chain and 1 slip stitch`, `4 chain caught with a single`, which closes these
    chains and has no place; None where something else stands here."""
    stitch = past(t, past(t, chains_made(t, at)[1], "AND", "SEP", "CATCH", "WITH"), "NUM")
    if stitch != end - 1 or t[stitch].type != "STITCH" or t[stitch].name not in CLOSING:
        return None
    counted = t[stitch - 1].type == "NUM"
    return None if counted and t[stitch - 1].number != 1 else t[stitch]


def _perhaps_closed(t: Terminals, at: int) -> bool:
    """Whether `4 chain and 1 dc`, `4 chain, 1 slip stitch` stands here, of which the stitch may
    close the chains: behind a comma it is mostly a slip stitch that does."""
    end = _step_end(t, at)
    if _closed_by_one(t, at, end) is not None:
        return True
    behind = _step_end(t, end + 1)
    alone = _closed_by_one(t, at, behind) if end == chains_made(t, at)[1] else None
    return alone is not None and alone.name == "ss"


def _step_end(t: Terminals, at: int) -> int:
    """Where a step ends: at the next comma or bracket, or the end of the row."""
    return next((n for n in range(at, len(t)) if t[n].type in ("SEP", "RP")), len(t))


def _says_again(here: Terminal, count: int) -> bool:
    """Whether `2 picots (… twice)` says how many they are once more."""
    return here.type == "TIMES" and here.number == count > 1


def _without_name(found: Terminals, shown: tuple[Terminals, int]) -> int:
    """What is shown put in the place of its name; how many of them stays said before one of no
    chains of its own."""
    made, end = shown
    del found[-1]
    one = types(found, len(found) - 1, 1) == ["NUM"]
    if one and (found[-1].number == 1 or len(made) > 1):
        count = found.pop().number
        made = made if count == 1 else made * count
    found += made
    return end


def ring_in_bracket(t: Sequence[Terminal]) -> int:
    """How many terminals are `picot (5 chain)`, `purl (5 chain, 1 slip in the 1st)`, `a p (4 ch,
    caught with a sl st in the top of the last dc)`; else 0."""
    end = next((n for n, x in enumerate(t) if x.type == "RP"), 0)
    inside = t[4:end]
    closing = [x for x in inside if x.type == "STITCH"]
    plain = {x.type for x in inside} <= _EXPLAINS and len(closing) < 3
    placed = any(x.type in ("PREP", "TO") for x in inside) or not closing
    placed |= inside[-1:] == closing  # `p (ch 4, sl st)`
    closes = not closing or closing[0].name in CLOSING
    closes &= all(x.kind not in ARCHES for x in inside)  # `(4 ch, 1 dc in loop)` goes into the row
    return end + 1 if plain and placed and closes else 0
