"""Picots spelled out: `5 chain, 1 single in the 1st`, `4 ch, join to the first for a picot`.

Chains, a closing stitch, and one of these very chains behind it are one picot;
chains before the closed ones stay chains. What may also go into the row below
is left as it stands, to be asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import (
    Terminals,
    chains_at,
    ended,
    is_last,
    like,
    only_ends,
    past,
    types,
)
from border.text.wording.picots_named import AGAIN, LEAF

if TYPE_CHECKING:
    from border.text.terminals import Terminal

CLOSING = ("sc", "ss")
SHOWN = "shown"
"""The name of a picot that is explained in brackets."""
TOPPED = "topped"
"""The name of one closed in the top of a stitch that may be one of the row below."""
COUNTED = "counted"
"""The name of one closed in a chain that is counted from where is not said."""

ROUND_CLOSED = "round closed"
"""The name of chains that are taken to close the round, with picots just so made before them."""

_ENDINGS = ("join", "fasten off")
_MADE = ("made", "worked", "work", "just made", "just worked")


class _Ring(Struct, frozen=True):
    """Chains closed into a picot: of how many of them, and the place behind it all.

    `counted`: it is closed in a chain that may count from the first as well as from the hook.
    `hooked`: in one that is said to count from the hook, with chains before it. `topped`: with a
    stitch that may be one of the row, in the top of one that is not said to be of this row.
    """

    size: int
    end: int
    counted: bool = False
    hooked: bool = False
    topped: bool = False


def rings(t: Terminals) -> Terminals:
    """The terminals with every picot that is spelled out as a picot of its size."""
    found: Terminals = []
    at, closed = 0, -1
    sizes: set[int] = set()
    while at < len(t):
        count, behind = chains_made(t, at)
        again = closed >= 0 and all(x.type in ("SEP", "AND") for x in found[closed:])
        ring = _ring_at(t, behind, count, again, _last_made(found)) if count > 1 else None
        closes = ring is not None and _closes_round(t, behind, ring)
        if ring is None or not 1 < ring.size <= count or closes:
            again = ring is not None and closes and ring.size == count and count in sizes
            found.append(replace(t[at], name=ROUND_CLOSED) if again else t[at])
            at += 1
            continue
        if count > ring.size:
            chain = next(x for x in t[at:behind] if x.type == "CH")
            found += [like(t[at], "NUM", number=count - ring.size), chain, like(t[at], "SEP")]
        picot = replace(like(t[at], "PICOT", number=ring.size), end=t[ring.end - 1].end)
        alone = types(found, len(found) - 1, 1) == ["LP"] and types(t, ring.end, 1) == ["RP"]
        called = any(x.type == "PICOT" for x in t[ring.end - 2 : ring.end])  # `… for a picot`
        name = COUNTED if ring.counted else SHOWN if alone or called else _doubt(found, t, ring)
        found.append(replace(picot, text="picot", short=False, name=name))
        sizes.add(ring.size)
        at, closed = ring.end, len(found)
    return found


def _closes_round(t: Sequence[Terminal], at: int, ring: _Ring) -> bool:
    """Whether `repeat from *, 5 chain, 1 single in the first` closes the round, and no picot: not
    where it is joined behind that."""
    behind = t[ring.end :]
    joined = any(x.type == "ENDING" and x.name == "join" for x in behind)
    repeated = any(x.type == "REPEAT" for x in t[:at]) and only_ends(behind) and not joined
    words = t[at : ring.end]
    said = any(x.type in ("OF", "PICOT", "FROMHOOK", "SAME", "THEM") for x in words)
    return repeated and not said and types(words, len(words) - 1, 1) == ["ORD"]


def _doubt(found: Sequence[Terminal], t: Sequence[Terminal], ring: _Ring) -> str:
    """What a picot that is spelled out here may be besides, as its name; "" where nothing."""
    bare = types(found, len(found) - 2, 2) == ["PICOT", "SEP"] and not found[-2].number
    counted = types(found, len(found) - 3, 1) == ["NUM"] and found[-3].number > 1
    if bare and not counted:
        return AGAIN
    if ring.hooked and _down_the_chain(t, ring.end, ring.size):
        return LEAF
    return TOPPED if ring.topped else ""


def _down_the_chain(t: Sequence[Terminal], at: int, size: int) -> bool:
    """Whether stitches stand behind a picot of 2 or 3 that may be worked down the chains before it:
    `1 sc in 2nd ch from hook, 1 hdc in next`."""
    stitch = past(t, past(t, at, "SEP", "AND"), "NUM")
    if size > 3 or stitch == at or types(t, stitch, 1) != ["STITCH"]:
        return False
    if types(t, stitch + 1, 1) != ["PREP"]:
        return size == 2 and ended(t, stitch + 1)
    which = past(t, stitch + 2, "THE")
    end = past(t, which, "EACH", "EACHOF", "NEXT", "THE", "NUM")
    if end == which:
        return False
    return ended(t, end) or t[end].type == "CH" or t[end].kind == Kind("st")


def _last_made(found: Sequence[Terminal]) -> str:
    """The stitch that was made last: `1 dc in each of the next 4 tr` makes dc."""
    for n in range(len(found) - 1, -1, -1):
        if found[n].type == "STITCH":
            before = n - 1 - (types(found, n - 1, 1) == ["NUM"] if n else 0)
            if before < 0 or found[before].type in ("SEP", "AND", "LP", "RP", "STAR"):
                return found[n].name
    return ""


def caught_back(t: Sequence[Terminal], at: int) -> int:
    """Behind `caught back in the last sc`, `caught in first ch`, `, 1 sc in 1st` of a picot; else
    the same place."""
    closing = past(t, at, "SEP")
    place = _past(t, _behind_closing(t, closing), "THE")
    first = types(t, place, 1) == ["ORD"] and t[place].number == 1 and t[place - 1].type != "SEP"
    if first and place > closing and t[at].type == "SEP":
        end = _past(t, place + 1, "CH")
        return end if ended(t, end) else at
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


def chains_made(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """How many chains are made here, and the place behind them; 0 where none are."""
    counted = types(t, at, 1) == ["CH"] and types(t, at - 1 if at else len(t), 1) == ["NUM"]
    return (0, at) if counted else chains_at(t, at)


def _ring_at(t: Sequence[Terminal], at: int, chains: int, again: bool, last: str) -> _Ring | None:
    """The ring that chains are closed into behind them.

    `again`: they stand behind a picot. `last`: the stitch that was made last.
    """
    if (end := _picot_named(t, at)) > at:
        return _Ring(chains, max(end, _closing_behind(t, end, last)))
    at = past(t, at, "SEP", "AND")
    if types(t, at, 4) == ["PICOT", "NUM", "OF", "THEM"]:
        return _Ring(t[at + 1].number, at + 4)
    place = _behind_closing(t, at)
    if types(t, place - 1, 1) not in (["PREP"], ["TO"]):
        return None
    back = "back" in t[place - 1].text.split()
    at = _past(t, place, "THE")
    if back and types(t, at, 1) == ["ORD"] and ended(t, at + 1) and 2 < t[at].number <= chains:
        return _Ring(t[at].number, at + 1, counted=True)  # `7 ch, 1 dc back in the 4th`
    on_top = "top" in t[place - 1].text.split()
    top = last if on_top or _goes_on_alike(t, at, last) else ""
    if (made := _just_made(t, at, top)) > at:
        bare = types(t, at, 1) == ["STITCH"] and made == at + 1  # not `top of last dc`
        topped = on_top and bare and any(x.name == "sc" for x in t[max(0, place - 2) : place])
        return _Ring(chains, max(made, _picot_named(t, made)), topped=topped)
    return _closed_in(t, at, chains, again)


def _goes_on_alike(t: Sequence[Terminal], at: int, last: str) -> bool:
    """Whether `last dc` stands here, and more dc are made right behind it, as before it: `5 dc, ch
    4, sl st in last dc, 5 dc`."""
    more = past(t, at + 2, "SEP")
    names = types(t, at, 2) == ["ORD", "STITCH"] and t[at].number == -1 and more == at + 3
    more += types(t, more, 1) == ["NUM"]
    return names and types(t, more, 1) == ["STITCH"] and t[more].name == last and ended(t, more + 1)


def _closing_behind(t: Sequence[Terminal], at: int, last: str) -> int:
    """Behind the stitch that closes a picot named before it: `4 ch (p) 1 sc in dc`, `4 ch (for p),
    1 sc in last dc`; the same place where none does. `last`: the stitch that was made last."""
    start = past(t, at, "SEP")
    place = _behind_closing(t, start)
    if types(t, place - 1, 1) != ["PREP"]:
        return at
    place = past(t, place, "THE")
    if start == at or is_last(t, place):
        return max(at, _just_made(t, place, last))
    return at


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
    last = _past(t, at, "THE")
    if is_last(t, last) and t[at - 1].name == "ss":
        at = last + 1  # `4 ch, slip the last on the 1st`
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
        named = _picot_named(t, end + 1)
        return _Ring(order, max(end + 1, named), hooked=named == end + 1 and order < chains)
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
    if types(t, at, 2) == ["CH", "NUM"]:
        return at + 2, t[at + 1].number, these  # `the 1st of ch 4`
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
