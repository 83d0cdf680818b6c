"""Picots spelled out: `5 chain, 1 single in the 1st`, `4 ch, join to the first for a picot`.

Chains, a closing stitch, and one of these very chains behind it are one picot;
chains before the closed ones stay chains. What may also go into the row below
is left as it stands, to be asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.text.passing import ARCHES, HOW_OFTEN, Terminals, chains_at, ended, like, past, types
from border.text.tree import Kind

if TYPE_CHECKING:
    from border.text.terminals import Terminal

CLOSING = ("sc", "ss")
SHOWN = "shown"
"""The name of a picot that is explained in brackets."""
COUNTED = "counted"
"""The name of one closed in a chain that is counted from where is not said."""

_EXPLAINS = frozenset(
    {"SEP", "AND", "NUM", "THE", "CH", "OF", "STITCH", "PREP", "TO", "ORD", "SAME", "THEM", "PLACE"}
    | {"KIND", "CATCH", "WITH", "ENDING"}
)
"""Words that say how chains are closed into a picot."""
_ENDINGS = ("join", "fasten off")
_MADE = ("made", "worked", "work")


class _Ring(Struct, frozen=True):
    """Chains closed into a picot: of how many of them, and the place behind it all.

    `counted`: it is closed in a chain that may count from the first as well as from the hook.
    """

    size: int
    end: int
    counted: bool = False


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
        if picots and t[at].type in ("LP", "OF"):  # `picot of 4 ch and 1 sc in the first`
            in_bracket = t[at].type == "LP"
            start = past(t, at + 1, "NAMELY", "SEP") if in_bracket else at + 1
            count = found[-2].number if types(found, len(found) - 2, 1) == ["NUM"] else 1
            shown = _shown(t, start, in_bracket, steps=not in_bracket, count=count)
            if shown is not None:
                at = _without_name(found, shown)
                continue
            whole = _chains_at(t, start)[0] and ring_in_bracket([found[-1], *t[at : at + _LONG]])
            if in_bracket and _glosses(t, start) and not whole:
                found.append(like(t[at], "OF"))  # which the grammar does not have: never both
        shown_equal = t[at].type == "EQUALS" and types(found, len(found) - 2, 2) == ["PICOT", "LP"]
        if shown_equal:  # `1 picot (= 5 chain, …)`
            at += 1
            continue
        if t[at].type != "NAMELY":
            found.append(t[at])
            at += 1
            continue
        at = past(t, at + 1, "SEP")
        named = len(found) - (types(found, len(found) - 1, 1) == ["SEP"])
        if types(found, named - 1, 1) == ["PICOT"] and _chains_at(t, at)[0]:
            del found[named:]
            shown = _shown(t, at)
            at = _without_name(found, shown) if shown else at
    return found


_LONG = 20
"""No picot is spelled out in more words."""


def _glosses(t: Terminals, at: int) -> bool:
    """Whether a bracket behind a picot begins with the chains of one, or closes some, and is not
    worked again, or in a place."""
    stitch = past(t, at, "NUM")
    closes = types(t, stitch, 2) == ["STITCH", "PREP"] and types(
        t, past(t, stitch + 2, "THE"), 1
    ) == ["ORD"]
    end = next((n for n in range(at, len(t)) if t[n].type == "RP"), len(t))
    behind = types(t, end + 1, 1)
    again = behind and behind[0] in HOW_OFTEN | {"PREP", "ALLIN", "TOEND", "REPEAT", "FROMSTAR"}
    return (closes or _chains_at(t, at)[0] > 1) and not again


def _shown(
    t: Terminals, at: int, in_bracket: bool = False, steps: bool = False, count: int = 1
) -> tuple[Terminals, int] | None:
    """The picot that is spelled out from here, behind its name, with the chains before it, and the
    place behind it all. `steps`: up to the next comma. `count`: of how many it is said."""
    if not _chains_at(t, at)[0] or _chains_at(t, at)[0] < 2:
        return None
    ends = (n for n in range(at, len(t) + 1) if n == len(t) or t[n].type in ("SEP", "RP"))
    for end in islice(ends, 1 if steps else 4):
        chains = all(x.type in ("NUM", "CH") for x in t[at:end])
        if (types(t, end, 1) != ["RP"]) if in_bracket else chains:
            continue
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


def rings(t: Terminals) -> Terminals:
    """The terminals with every picot that is spelled out as a picot of its size."""
    found: Terminals = []
    at, closed = 0, -1
    while at < len(t):
        count, behind = _chains_at(t, at)
        again = closed >= 0 and all(x.type in ("SEP", "AND") for x in found[closed:])
        ring = _ring_at(t, behind, count, again, _last_made(found)) if count > 1 else None
        if ring is None or not 1 < ring.size <= count:
            found.append(t[at])
            at += 1
            continue
        if count > ring.size:
            chain = next(x for x in t[at:behind] if x.type == "CH")
            found += [like(t[at], "NUM", number=count - ring.size), chain, like(t[at], "SEP")]
        picot = replace(like(t[at], "PICOT", number=ring.size), end=t[ring.end - 1].end)
        alone = types(found, len(found) - 1, 1) == ["LP"] and types(t, ring.end, 1) == ["RP"]
        called = any(x.type == "PICOT" for x in t[ring.end - 2 : ring.end])  # `… for a picot`
        name = COUNTED if ring.counted else SHOWN if alone or called else ""
        found.append(replace(picot, text="picot", short=False, name=name))
        at, closed = ring.end, len(found)
    return found


def _last_made(found: Sequence[Terminal]) -> str:
    """The stitch that was made last: `1 dc in each of the next 4 tr` makes dc."""
    for n in range(len(found) - 1, -1, -1):
        if found[n].type == "STITCH":
            before = n - 1 - (types(found, n - 1, 1) == ["NUM"] if n else 0)
            if before < 0 or found[before].type in ("SEP", "AND", "LP", "RP", "STAR"):
                return found[n].name
    return ""


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


def caught_back(t: Sequence[Terminal], at: int) -> int:
    """Behind `caught back in the last sc`, `caught in first ch` of a picot; else the same place."""
    if types(t, at, 2) != ["CATCH", "PREP"]:
        return at
    end = past(t, at + 2, "THE", "SAME", "ORD", "NUM", "OF", "CH", "STITCH")
    return end if end > at + 2 and ended(t, end) else at


def chains_before(words: Sequence[Terminal]) -> int:
    """The chains right before one closing stitch, by the terminals up to its name."""
    if not words or words[-1].type != "STITCH" or words[-1].name not in CLOSING:
        return 0
    rest = list(words[:-1])
    one = bool(rest) and rest[-1].type == "NUM" and rest[-1].number == 1
    chain = types(rest, len(rest) - 2, 1) == ["CH"]
    if one and (not chain or types(rest, len(rest) - 3, 1) == ["NUM"]):
        rest.pop()
    pair = types(rest, max(0, len(rest) - 2), 2)
    if pair == ["NUM", "CH"]:
        return rest[-2].number
    return rest[-1].number if pair == ["CH", "NUM"] else 0


def _chains_at(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """How many chains are made here, and the place behind them; 0 where none are."""
    counted = types(t, at, 1) == ["CH"] and types(t, at - 1 if at else len(t), 1) == ["NUM"]
    return (0, at) if counted else chains_at(t, at)


def _ring_at(t: Sequence[Terminal], at: int, chains: int, again: bool, last: str) -> _Ring | None:
    """The ring that chains are closed into behind them.

    `again`: they stand behind a picot. `last`: the stitch that was made last.
    """
    if (end := _picot_named(t, at)) > at:
        return _Ring(chains, end)
    at = past(t, at, "SEP", "AND")
    if types(t, at, 4) == ["PICOT", "NUM", "OF", "THEM"]:
        return _Ring(t[at + 1].number, at + 4)
    place = _behind_closing(t, at)
    if types(t, place - 1, 1) not in (["PREP"], ["TO"]):
        return None
    at = _past(t, place, "THE")
    top = last if "top" in t[place - 1].text.split() else ""
    if (made := _just_made(t, at, top)) > at:
        return _Ring(chains, max(made, _picot_named(t, made)))
    return _closed_in(t, at, chains, again)


def _behind_closing(t: Sequence[Terminal], at: int) -> int:
    """Behind `1 single in`, `join to`, `fasten back with a double in`; the same place if none."""
    start = at
    joins = types(t, at, 1) == ["CATCH"] or (
        types(t, at, 1) == ["ENDING"] and t[at].name in _ENDINGS
    )
    at += joins
    at = _past(t, at, "WITH") if joins else at
    if types(t, at, 2) == ["NUM", "STITCH"] and t[at].number == 1:
        at += 1
    if types(t, at, 1) == ["STITCH"] and t[at].name in CLOSING:
        at += 1
    elif not joins:
        return start
    return _past(t, at, "PREP", "TO")


def _closed_in(t: Sequence[Terminal], at: int, chains: int, again: bool) -> _Ring | None:
    """The ring, by the place that the closing stitch goes into."""
    if types(t, at, 1) == ["SAME"]:
        end = at + 1
        st = end < len(t) and (t[end].type == "PLACE" or t[end].kind == Kind("st"))
        end += st
        named = _picot_named(t, end)
        loose = again and (st or ended(t, end))
        return _Ring(chains, max(end, named)) if loose or named > end else None
    if types(t, at, 1) != ["ORD"] or t[at].number < 1:
        return None
    order, unit = t[at].number, at + 1
    named_unit = unit < len(t) and (t[unit].type == "CH" or t[unit].kind == Kind("st"))
    end = unit + named_unit
    if types(t, end, 1) == ["FROMHOOK"]:
        return _Ring(order, max(end + 1, _picot_named(t, end + 1)))
    these = False
    if types(t, end, 1) == ["OF"]:
        end, of, these = _of_chains(t, end + 1)
        if of not in (0, chains):
            return None
    named = _picot_named(t, end)
    if order == 1 and (named > end or end > unit + named_unit or (ended(t, end) and chains > 2)):
        known = named > end or not (named_unit and end == unit + named_unit)
        return _Ring(chains, max(end, named)) if known else None
    if these or (named > end and end > unit + named_unit):
        return _Ring(chains - order + 1, max(end, named))
    other = chains - order + 1  # counted from the first chain; less than 3 is no picot
    return _Ring(order, named, counted=other > 2) if named > end else None


def _of_chains(t: Sequence[Terminal], at: int) -> tuple[int, int, bool]:
    """Behind `the 4 ch`, `these 5`, `ch`, `them`; the number, and whether it says `these`."""
    if types(t, at, 1) == ["THEM"]:
        return at + 1, 0, True
    these = types(t, at, 1) == ["THE"] and t[at].text == "these"
    at = _past(t, at, "THE", "SAME")
    number = t[at].number if types(t, at, 1) == ["NUM"] else 0
    at = _past(t, at, "NUM")
    if at < len(t) and (t[at].type == "CH" or t[at].kind == Kind("st")):
        return at + 1, number, these
    of_these = number > 0 or these or types(t, at - 1, 1) == ["SAME"]
    ends = ended(t, at) or _picot_named(t, at) > at
    return (at, number, these) if of_these and ends else (at, -1, False)


def _just_made(t: Sequence[Terminal], at: int, top: str) -> int:
    """Behind `the last double made`, `the treble just worked`; the same place if none.

    `top`: the place is said to be the top of something, and this stitch was made last.
    """
    end = _past(t, at, "ORD")
    if end > at and t[at].number != -1:
        return at
    if types(t, end, 1) != ["STITCH"]:
        return at
    if end + 1 < len(t) and t[end + 1].text in _MADE:
        return end + 2
    if _picot_named(t, end + 1) > end + 1:
        return end + 1  # `in last dc (picot)`, `back in dc (p)`
    return end + 1 if t[end].name == top else at


def _picot_named(t: Sequence[Terminal], at: int) -> int:
    """Behind `for a picot`, `(this forms a picot)`, `(picot)`; the same place if none."""
    end = _past(t, at, "SEP") if types(t, at + 1, 1) == ["AS"] else at
    opens = types(t, end, 1) == ["LP"]
    end += opens
    said = _past(t, end, "AS")
    if not opens and said == end:
        return at
    end = _past(t, said, "NUM")
    if types(t, end, 1) != ["PICOT"] or t[end].number:
        return at
    close = past(t, end + 1, "SEP") if opens else end + 1  # `(p.)`
    if opens and types(t, close, 1) != ["RP"]:
        return at
    return close + opens


def _past(t: Sequence[Terminal], at: int, *of: str) -> int:
    return at + (at < len(t) and t[at].type in of)
