"""Stitches of one place that something parts, written out: `3 double divided by 1 purl`.

`4 treble, with 2 chain between the 2nd and 3rd, in next space` becomes the bracket
`(2 treble, 2 chain, 2 treble) in next space`.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.shaping.between import behind_between
from border.text.shaping.sentences import place_at
from border.text.terminals import Terminal
from border.text.wording.passing import OPENS, WHICH, Terminals, ended, like, past, types

_MOST = 12
"""So many stitches with something between them are written out."""


class _Parting(Struct, frozen=True):
    """What parts stitches, behind which of them (0: behind each), and the place behind it all.

    `unsaid`: between what they stand is not said.
    """

    what: tuple[Terminal, ...]
    behind: int
    end: int
    unsaid: bool = False


PICOTS = "picots between"
"""The name of a bracket whose picots may also stand between one place and the next."""


def parted(t: Terminals) -> Terminals:
    """The terminals with every such list of stitches as a bracket."""
    found: Terminals = []
    at = 0
    while at < len(t):
        parting, place = None, at + 2
        named = bool(found) and found[-1].type in OPENS | WHICH | {"EACHOF"}
        if types(t, at, 2) == ["NUM", "STITCH"] and 1 < t[at].number <= _MOST and not named:
            place = _behind_place(t, at + 2)
            parting = _picots(t, place, t[at].number) or _chains(t, place)
        if parting is not None and parting.unsaid and parting.what[-1].type == "STITCH":
            each = any(x.type in ("EACH", "EACHOF", "EVERY") for x in t[at + 2 : place])
            parting = None if each else parting  # inside each of them, or between the two?
        if parting is None or parting.behind >= t[at].number:
            found.append(t[at])
            at += 1
            continue
        behind = parting.end + (types(t, parting.end, 2) == ["SEP", "PREP"])
        placed = place > at + 2 or types(t, behind, 1) == ["PREP"]
        bracket = _bracket(t[at], t[at + 1], parting)
        found += bracket if placed else bracket[1:-1]  # one list with the steps beside it
        found += t[at + 2 : place]
        at = behind
    return found


def _behind_place(t: Sequence[Terminal], at: int) -> int:
    """Behind the place that opens here, if only `in next` without its noun; else the same place."""
    if types(t, at, 1) != ["PREP"]:
        return at
    if (end := place_at(t, at)) > at:
        return end
    bare = past(t, at + 1, "THE", "NEXT", "ORD")
    return bare if bare > at + 1 and ended(t, bare) else at


def _bracket(number: Terminal, stitch: Terminal, parting: _Parting) -> Terminals:
    count = number.number
    first = parting.behind or 1
    sizes = [first, count - first] if parting.behind else [1] * count
    comma = like(stitch, "SEP")
    found = [like(number, "LP")]
    for n, size in enumerate(sizes):
        found += [comma, *parting.what, comma] if n else []
        found += [replace(number, number=size), stitch]
    return [*found, like(stitch, "RP", name=PICOTS if parting.unsaid else "")]


def _picots(t: Sequence[Terminal], at: int, count: int) -> _Parting | None:
    """`divided by 1 purl`, `with a picot between each`, `with 1 dc between`; not `between the
    loops`, `between each 3` of three, where they part what goes into one place from the next, nor
    `between each 4` of eight (`after.py`)."""
    at += types(t, at, 1) == ["SEP"] and not t[at].name
    by = types(t, at, 1)
    if by not in (["DIVIDED"], ["WITH"]):
        return None
    start = at = at + 1
    at += types(t, at, 1) == ["NUM"] and t[at].number == 1
    if types(t, at, 1) not in (["PICOT"], ["STITCH"]):
        return None
    at += 1
    what = tuple(t[start:at])
    unsaid = False
    if by == ["WITH"]:
        if types(t, at, 1) != ["BETWEEN"]:
            return None
        between, at = at + 1, behind_between(t, at + 1)
        unsaid = between == at and t[at - 1].text == "between"
        size = next((x.number for x in t[between:at] if x.type == "NUM"), 1)
        if size == count or (size > 1 and count % size == 0):
            return None
        if any(x.type == "KIND" for x in t[between:at]):
            return None
    ends = ended(t, at) or types(t, at, 1) == ["PREP"]
    return _Parting(what, 0, at, unsaid) if ends else None


def _chains(t: Sequence[Terminal], at: int) -> _Parting | None:
    """`with 2 chain between the 2nd and 3rd`."""
    at += types(t, at, 1) == ["SEP"] and not t[at].name
    at += types(t, at, 1) == ["WITH"]
    what = t[at : at + 2]
    if [x.type for x in what] not in (["NUM", "CH"], ["CH", "NUM"]):
        if types(t, at, 3) != ["CH", "OF", "NUM"]:
            return None
        what = [t[at + 2], t[at]]
        at += 1
    words = [(n, x) for n, x in enumerate(t) if at + 2 <= n < at + 8 and x.type != "THE"]
    if [x.type for _, x in words[:4]] != ["BETWEEN", "ORD", "AND", "ORD"]:
        return None
    first, second = words[1][1].number, words[3][1].number
    end = words[3][0] + 1
    end += types(t, end, 1) == ["STITCH"]
    return _Parting(tuple(what), first, end) if 0 < first == second - 1 else None
