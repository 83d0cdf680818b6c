"""Stitches worked off together, in the books' words: the last loops kept back, and drawn through.

`3 treble, keeping the last loop of each on the hook, draw through all` is said in two
halves; both come to the one word `together`.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from border.text.shaping.between_steps import SEVERAL
from border.text.tree import ST
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    Terminals,
    ended,
    like,
    made,
    past,
    stitch_left_out,
    types,
)

_SOFT = frozenset({"SEP", "AND"})
_SILENT = _SOFT | {"THE"}


def worked_off(t: Terminals) -> Terminals:
    """`holding the last loop of each on the hook, 3 dc in next space, draw through all`."""
    if any(x.type == "KEEPING" and _leads(t, n) for n, x in enumerate(t)):
        t = _with_ones(t)
    found: Terminals = []
    kept = False
    done = 0
    for n, here in enumerate(t):
        if n < done:
            continue
        if here.type == "KEEPING":
            if two := _two_as_one(t, n):
                found[two.start - n :] = two.step
                done = two.end
                continue
            if _leads(t, n):
                # which the grammar does not have
                found += [like(here, "STRAY", name=SEVERAL)] if _parted(t, n) else []
                continue
            kept = True
            _join(found)
            found.insert(_before_place(found), like(here, "TOGETHER"))
        elif here.type == "DRAWING":
            _join(found)
            found += [] if kept else [like(here, "TOGETHER")]
            kept = False
            done = _behind_loops(t, n + 1)
        else:
            found.append(here)
    return _placed(found)


def _with_ones(t: Terminals) -> Terminals:
    """`tr in next st, holding back the last loop, another tr in next st`: one of each."""
    found: Terminals = []
    for n, here in enumerate(t):
        if here.type == "STITCH" and (not n or t[n - 1].type in _SOFT | {"STAR", "LP"}):
            found.append(like(here, "NUM", number=1))
        found.append(here)
    return found


def _behind_loops(t: Terminals, at: int) -> int:
    """Behind the `four loops together` of `draw through all four loops together`."""
    loops = past(t, at, "NUM")
    end = loops + (loops < len(t) and t[loops].kind in (*ARCHES, ST))
    behind = past(t, end, "TOGETHER", "ATONCE", "ALLTOGETHER")
    return behind if behind > loops or ended(t, loops) else at


def _leads(t: Terminals, keeping: int) -> bool:
    """Whether the stitches that are kept stand between the two halves, not before them."""
    drawing = next((n for n in range(keeping, len(t)) if t[n].type == "DRAWING"), keeping)
    return any(x.type == "STITCH" for x in t[keeping:drawing])


class _Two(Struct, frozen=True):
    """Two stitches worked off as one step, in place of the words from `start` up to `end`."""

    step: Terminals
    start: int
    end: int


def _two_as_one(t: Terminals, keeping: int) -> _Two | None:
    """`1 tr in loop, leaving the last loop on the hook, 1 tr in next loop, draw through all`."""
    drawing = next((n for n in range(keeping, len(t)) if t[n].type == "DRAWING"), None)
    start = max((n for n in range(keeping - 1) if t[n].type == "NUM"), default=keeping)
    again = past(t, keeping + 1, *_SOFT)
    one, other = t[start : start + 2], t[again : again + 2]
    if drawing is None or [x.type for x in (*one, *other)] != ["NUM", "STITCH"] * 2:
        return None
    if one[1].name != other[1].name or one[0].number != 1 or other[0].number != 1:
        return None
    first = [x for x in t[start + 2 : keeping] if x.type not in _SILENT]
    second = [x for x in t[again + 2 : drawing] if x.type not in _SILENT]
    step = [replace(one[0], number=2), one[1], like(t[drawing], "TOGETHER")]
    on_stitches = all(x.kind == ST for x in second if x.type == "KIND")
    match [x.type for x in first], [x.type for x in second]:
        case ([], ["PREP", "SAME"] | ["PREP", "SAME", "KIND"]) if on_stitches:
            step += [second[0], like(second[0], "NEXT"), stitch_left_out(second[0])]
        case ([], ["PREP", "NEXT"] | ["PREP", "NEXT", "KIND"]) if on_stitches:
            pass  # over the next two
        case ([], []) | (["PREP", *_], ["PREP", "SAME", *_]):
            step += first
        case (["PREP", *_, noun], ["PREP", "NEXT"] | ["PREP", "NEXT", _]) if (
            noun in NOUNS and second[-1].text in ("next", first[-1].text)
        ):
            next_, two = like(first[0], "NEXT"), like(first[0], "NUM", number=2)
            step += [first[0], next_, two, first[-1]]
        case _:
            return None
    return _Two(step, start, drawing + 1)


def _parted(t: Terminals, keeping: int) -> bool:
    """Whether as many of the same as are kept before these words stand behind them, in two
    places: `2 dc in the space, keep the loops on the hook, 2 dc in next space, draw through all`.
    """
    steps = [n for n, x in enumerate(t) if x.type == "STITCH"]
    before = max((n for n in steps if n < keeping), default=0)
    behind = min((n for n in steps if n > keeping), default=0)
    pair = [types(t, n - 1, 2) for n in (before, behind) if n]
    if pair != [["NUM", "STITCH"]] * 2 or any(x.type == "STAR" for x in t[before:keeping]):
        return False
    (many, one), (again, other) = t[before - 1 : before + 1], t[behind - 1 : behind + 1]
    return one.name == other.name and many.number == again.number > 0


def _before_place(found: Terminals) -> int:
    """Where a stitch of several ends that go into one place: before that place."""
    at = len(found)
    while at and found[at - 1].type in ("THE", "NEXT", "SAME", "ORD", "NUM", "PLACE", *NOUNS):
        at -= 1
        opens = at - 1 - (types(found, at - 2, 1) == ["ALL"])  # `all in the same place`
        if types(found, at - 1, 1) == ["PREP"] and types(found, opens - 1, 1) == ["STITCH"]:
            return opens
    return len(found)


def _join(found: Terminals) -> None:
    """Take away what parts a step from the words that go on with it."""
    while found and found[-1].type in _SOFT:
        found.pop()


def _placed(t: Terminals) -> Terminals:
    """Without the comma before a place: `worked off together, in the next loop`."""
    return [
        here
        for n, here in enumerate(t)
        if not (
            here.type == "SEP"
            and n
            and t[n - 1].type == "TOGETHER"
            and types(t, n + 1, 1) == ["PREP"]
        )
    ]


def one_in_each(t: Terminals) -> Terminals:
    """`3 treble together, one in each of 3 loops`: over the next 3 loops."""
    for n, here in enumerate(t):
        each = past(t, n + 1, *_SOFT)
        number = past(t, each + 3, "THE", "NEXT")
        said = here.type == "TOGETHER" and types(t, each, 3) == ["NUM", "PREP", "EACHOF"]
        several = types(t, number, 1) == ["NUM"] and t[number].number == made(t[:n]) > 1
        if said and several and t[each].number == 1:
            return [*t[: n + 1], t[each + 1], like(here, "NEXT"), *one_in_each(t[number:])]
    return t
