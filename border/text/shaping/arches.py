"""A row that turns inside itself: `turn, 8 chain, 1 single in the 4th of the 8, turn, 11 dc in it`.

Chains fastened back into what was just made, and filled behind the second turn, are put
together as one thing; what does not have that shape is left as it stands, to be asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import ARCHES, Terminals, chains_at, like, past, types
from border.text.wording.rings import CLOSING

if TYPE_CHECKING:
    from border.text.terminals import Terminal

HOOK, RUN, PLACE = "hook", "run", "place"
"""How a stitch made before is named: counted from the hook, as one of so many, of a place."""
UNSAID = "unsaid"
"""Behind `hook`: that it is counted from there is not said."""

_FILLING = frozenset(
    {"NUM", "STITCH", "CH", "PICOT", "CLUSTER", "SEP", "AND", "LP", "RP", "TIMES", "MORE", "OF"}
    | {"WITH", "DIVIDED", "BETWEEN", "TOGETHER", "ALLTOGETHER", "MOD"}
)
_ENDINGS = ("fasten", "join")


class _Found(Struct, frozen=True):
    """Something found among the terminals, and the place behind it."""

    terminals: Terminals
    end: int


def arches(t: Terminals) -> Terminals:
    """The terminals with every such arch, and with the places behind it that are filled up."""
    if sum(x.name == "turn" for x in t) < 2:
        return t
    found: Terminals = []
    at, turned = 0, False
    while at < len(t):
        turns = t[at].name == "turn"
        turned = turned or turns
        whole = _arch_at(t, at, found) if turns else _rest_at(t, at) if turned else None
        if whole is None:
            found.append(t[at])
            at += 1
            continue
        found += whole.terminals
        at = whole.end
    return found


# --- chains fastened back between two turns ---------------------------------------


def _arch_at(t: Terminals, turn: int, found: Terminals) -> _Found | None:
    """The arch whose first turn stands here; chains right before that are taken from `found`."""
    before = len(found)
    chains, at = chains_at(t, past(t, turn + 1, "SEP", "AND", "WITH"))
    if not chains:
        before, chains = _chains_before(found)
    missed, at = _missed(t, past(t, at, "SEP", "AND"))
    stitch, place = _fastened(t, at)
    back = (_behind_missed(t, place, missed) if missed else _back_at(t, place)) if place else None
    back = back if chains else None
    if back is None:
        return None
    second = past(t, back.end, "SEP", "AND")
    if second >= len(t) or t[second].name != "turn":
        return None
    filling = _filled(t, past(t, second + 1, "SEP", "AND"), chains)
    if filling is None:
        return None
    first = found[before] if before < len(found) else t[turn]
    del found[before:]
    arch = replace(like(first, "ARCH", number=chains, name=stitch), end=t[second].end)
    comma = like(t[second], "SEP")
    return _Found([arch, *back.terminals, comma, *filling.terminals], filling.end)


def _chains_before(found: Terminals) -> tuple[int, int]:
    """Where the chains begin that a list ends in, as a step of their own; and how many."""
    start = len(found) - (types(found, len(found) - 1, 1) == ["SEP"]) - 2
    chains = chains_at(found, start)[0] if start > 0 else 0
    alone = chains and found[start - 1].type in ("SEP", "AND", "STAR", "LP", "RP")
    return (start, chains) if alone else (len(found), 0)


def _fastened(t: Sequence[Terminal], at: int) -> tuple[str, int]:
    """The stitch that fastens the chains ("" where none is named), and where it goes; 0: none."""
    joins = types(t, at, 1) == ["CATCH"] or (types(t, at, 1) == ["ENDING"] and _joins(t[at]))
    if joins:
        at = past(t, at + 1, "WITH")
    one = types(t, at, 2) == ["NUM", "STITCH"] and t[at].number == 1
    name, at = "", at + one
    if types(t, at, 1) == ["STITCH"]:
        if t[at].name not in CLOSING:
            return "", 0
        name, at = t[at].name, at + 1
    return (name, at + 1) if types(t, at, 1) in (["PREP"], ["TO"]) else ("", 0)


def _joins(here: Terminal) -> bool:
    return here.text.split(" ")[0] in _ENDINGS


def _missed(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """How many are missed, back from the hook, `miss 3 dc,`, and the place behind them."""
    if types(t, at, 2) != ["SKIP", "NUM"]:
        return 0, at
    end = past(t, at + 2, "STITCH", "KIND")
    return t[at + 1].number, past(t, end, "SEP", "AND")


def _behind_missed(t: Sequence[Terminal], at: int, missed: int) -> _Found | None:
    """`miss 3, 1 single in the next`, `in the last`, `in the first` of these: the 4th from the
    hook."""
    which = past(t, at, "THE")
    nth = types(t, which, 1)
    end = past(t, which + 1, "STITCH", "KIND")
    ends = nth == ["ORD"] and t[which].number in (1, -1)
    if (nth != ["NEXT"] and not ends) or types(t, end, 1) not in (["SEP"], ["AND"]):
        return None
    return _back(like(t[which], "ORD", number=missed + 1), Kind("st"), HOOK, end)


def _back_at(t: Sequence[Terminal], at: int) -> _Found | None:
    """The stitch made before that is named here: `5th dc from hook`, `4th dc of first loop`,
    `the first of these 6`, `the middle of the first 7 dc`."""
    at = past(t, at, "THE")
    if types(t, at, 1) not in (["ORD"], ["CENTRE"]):
        return None
    here = t[at]
    unit = at + 1
    named = types(t, unit, 1) == ["STITCH"] or (unit < len(t) and t[unit].kind == Kind("st"))
    stitch = t[unit].name if named and t[unit].type == "STITCH" else None
    end = unit + named
    if named and types(t, end, 1) == ["FROMHOOK"]:
        if here.type == "ORD" and here.number < 1:
            return None  # `the last st from hook`
        return _back(here, Kind(stitch or "st"), HOOK, end + 1)
    if named and here.number > 0 and types(t, end, 1) in (["SEP"], ["AND"]):
        how = f"{HOOK} {UNSAID}"  # behind a turn it is counted back
        return _back(here, Kind(stitch or "st"), how, end)
    if types(t, end, 1) != ["OF"]:
        return None
    end = past(t, end + 1, "THE")
    which = t[end].number if types(t, end, 1) == ["ORD"] else 0
    end += which != 0
    if types(t, end, 1) == ["NUM"]:
        size, end = t[end].number, end + 1
        if types(t, end, 1) == ["STITCH"]:
            stitch, end = t[end].name, end + 1
        elif end < len(t) and t[end].kind == Kind("st"):
            end += 1
        return _back(here, Kind("run", size, stitch), f"{RUN} {which}", end)
    if which and end < len(t) and (t[end].kind in ARCHES or t[end].type == "CH"):
        return _back(here, Kind("st", None, stitch), f"{PLACE} {which}", end + 1)
    return None


def _back(here: Terminal, kind: Kind, how: str, end: int) -> _Found:
    number = here.number if here.type == "ORD" else 0
    return _Found([like(here, "BACK", kind, number, how)], end)


# --- what fills it ----------------------------------------------------------------


def _filled(t: Terminals, at: int, chains: int) -> _Found | None:
    """What is worked into the arch, with the arch as its place; None where nothing is."""
    prep = _place_behind(t, at)
    if prep is None:
        return None
    end = _named(t, prep + 1, chains)
    if end is None:
        return None
    place = [t[prep], like(t[prep], "THE"), like(t[prep], "KIND", Kind("loop"))]
    inside = t[at:prep]
    while inside and inside[-1].type == "SEP":
        inside.pop()
    several = [x.type for x in inside] not in ([], ["STITCH"], ["NUM", "STITCH"])
    if several and not _one_bracket(inside):
        inside = [like(t[at], "LP"), *inside, like(t[prep], "RP")]
    return _Found([*inside, *place], end)


def _place_behind(t: Sequence[Terminal], at: int) -> int | None:
    """Where the place of a list is said, with nothing but stitches, chains and brackets before."""
    depth = 0
    for n in range(at, len(t)):
        depth += (t[n].type == "LP") - (t[n].type == "RP")
        modified = types(t, n, 2) == ["PREP", "MOD"]
        if depth == 0 and t[n].type == "PREP" and not modified:
            return n
        if depth < 0 or (depth == 0 and not modified and t[n].type not in _FILLING):
            return None
    return None


def _one_bracket(inside: Terminals) -> bool:
    """Whether a bracket stands round all of it already, with or without a number of times."""
    depths = list(accumulate((x.type == "LP") - (x.type == "RP") for x in inside))
    if not depths or inside[0].type != "LP":
        return False
    return {x.type for x in inside[depths.index(0) + 1 :]} <= {"NUM", "TIMES", "MORE"}


def _named(t: Sequence[Terminal], at: int, chains: int) -> int | None:
    """Behind `the 8 ch`, `the loop`, `ch 8`, `it`, where these are the chains just fastened."""
    at = past(t, at, "THE")
    if types(t, at, 1) == ["STRAY"] and t[at].text == "it":
        return at + 1
    said, end = chains_at(t, at)
    if types(t, at, 3) == ["CH", "NUM", "STITCH"]:  # `over the chain 3 dc, …`
        said, end = 0, at
    if types(t, at, 3) == ["CH", "OF", "NUM"]:  # `over the chain of 8`
        said, end = t[at + 2].number, at + 3
    if types(t, at, 2) == ["NUM", "KIND"] and t[at + 1].chain:  # `in the 8 ch loop`
        said, end = t[at].number, at + 1
    if said not in (0, chains):
        return None
    if not said:
        end += types(t, at, 1) == ["CH"]
    if end < len(t) and t[end].kind in ARCHES:
        end += 1
    made = types(t, end, 1) == ["STRAY"] and t[end].text in ("just made", "just worked")
    return end + made if end > at else None


def _rest_at(t: Sequence[Terminal], at: int) -> _Found | None:
    """`in the rest of the loop`, `to fill the half-filled loop`: in the same place as before."""
    start = past(t, at, "PREP") if types(t, at, 1) == ["PREP"] else at
    end = past(t, start, "REST")
    if end == start:
        return None
    end = past(t, end, "THE", "SAME", "ORD", "NUM", "CH")
    end += 2 * (t[end - 1].type == "CH" and types(t, end, 2) == ["OF", "NUM"])  # `chain of 6`
    end += end < len(t) and t[end].kind in ARCHES
    here = t[at]
    return _Found([like(here, "PREP"), like(here, "SAME"), like(here, "PLACE")], end)
