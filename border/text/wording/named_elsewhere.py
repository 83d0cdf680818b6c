"""What a text names further on, or further back, than the grammar does: `in the first, 3 dc in the
second loop`, `in the next 4 dc` where places come first, `repeat from first *`, `the same in each`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import (
    HOW_OFTEN,
    NOUNS,
    ended,
    is_last,
    like,
    list_start,
    opens_before,
    past,
    types,
)
from border.text.wording.rings import chains_before

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def times_behind_place(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 tr, 1 ch, under the 5 ch, 6 times`: as `1 tr, 1 ch, 6 times, under the 5 ch`."""
    found = list(t)
    for n in range(1, len(t)):
        end = past(t, n + 1, "THE", "NEXT", "NUM", *NOUNS)
        often = types(t, end, 3) == ["SEP", "NUM", "TIMES"] and not t[end].name
        comma = t[n - 1].type == "SEP" and not t[n - 1].name
        start = list_start(t, n - 1)
        placed = any(x.type == "PREP" for x in t[start:n])
        several = any(x.type == "SEP" for x in t[start : n - 1])
        if t[n].type == "PREP" and often and comma and several and not placed:
            found[n - 1 : end + 3] = [t[n - 1], *t[end + 1 : end + 3], t[n - 1], *t[n:end]]
            break
    return found


def ends_with_last(t: Sequence[Terminal]) -> list[Terminal]:
    """`…; repeat, and in the last 1 dc`: the row ends with that."""
    again = max((n for n, x in enumerate(t) if x.type == "REPEAT"), default=len(t))
    joined = past(t, again + 1, "SEP", "TOEND", "THE", "REMARK")
    upon = types(t, joined, 2) == ["AND", "PREP"]
    order = past(t, joined + 2, "THE")
    last = is_last(t, order)
    step = past(t, order + 1, *NOUNS, "SEP")
    makes = types(t, step, 2) == ["NUM", "STITCH"] and ended(t, step + 2)
    if not upon or not last or not makes or any(x.type in HOW_OFTEN for x in t[again:joined]):
        return list(t)
    ends = replace(like(t[joined], "ENDWITH"), text="end with")
    place = [x for x in t[joined + 1 : step] if x.type != "SEP"]
    return [*t[:joined], ends, *t[step : step + 2], *place, *t[step + 2 :]]


def next_first(t: Sequence[Terminal]) -> list[Terminal]:
    """`In the first loop 3 dc, in the next 4 dc`: where places stand first, 4 dc in the next."""
    found: list[Terminal] = []
    noun: Terminal | None = None
    for n, here in enumerate(t):
        found.append(here)
        prep = n
        while prep and (t[prep].type in _WHICH or (prep < n and t[prep].type == "NUM")):
            prep -= 1
        head = prep == 0 or t[prep - 1].type in _HEADS
        if t[prep].type != "PREP" or not head or prep == n:
            continue
        step = past(t, n + 1, "SEP")
        makes = types(t, step, 2) == ["NUM", "STITCH"]
        if makes and here.type == "KIND":
            noun = here
        elif (
            makes
            and noun is not None
            and here.type == "NEXT"
            and ended(t, past(t, step + 2, "NOTHING"))
        ):
            found.append(replace(noun, start=here.start, end=here.end))
    return found


_WHICH = frozenset({"THE", "NEXT", "ORD", "EACH", "KIND"})


_HEADS = frozenset({"SEP", "STAR", "LP", "AND"})


def named_later(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the first, 3 dc in the second hole`, `in the 2nd, 1 dc in the 4th of the 5 chain`: the
    first of them has its noun there."""
    orders = [n for n, x in enumerate(t) if x.type == "ORD" and opens_before(t, n)]
    if len(orders) < _TWO:
        return list(t)
    first, second = orders[:_TWO]
    before = any(opens_before(t, n) for n, x in enumerate(t[:first]) if x.type in NOUNS)
    between = range(first + 1, second)
    named = any(t[n].type in NOUNS and opens_before(t, n) for n in between)
    parted = named or any(t[n].type in _APART for n in between)
    of = types(t, second + 1, 1) == ["OF"]
    step = any(t[n].type == "STITCH" or (of and t[n].type == "NUM") for n in between)
    opened = next(n for n in range(first, -1, -1) if t[n].type not in ("ORD", "THE"))
    if chains_before([x for x in t[:opened] if x.type not in ("SEP", "AND")]):
        return list(t)  # `9 chain, 1 sl st in the first, …` closes these
    listed = types(t, past(t, first + 1, "SEP", "AND", "THE"), 1) == ["ORD"]  # `2nd, 3rd and 4th`
    if listed or 0 < t[second].number <= t[first].number:
        return list(t)
    if (
        (before and not of)
        or parted
        or not step
        or not (ended(t, first + 1) or t[first + 1].type == "AND")
    ):
        return list(t)
    noun = past(t, second + 1, "OF", "THE", "NUM")
    if types(t, noun, 1) not in (["KIND"], ["STITCH"], ["CH"]) or not ended(t, noun + 1):
        return list(t)
    tail = [replace(x, start=t[first].end, end=t[first].end) for x in t[second + 1 : noun + 1]]
    rest = second + 1 if of else noun + 1
    kept = list(t[second + 1 : noun + 1]) if rest == noun + 1 else []
    return [*t[: first + 1], *tail, *t[first + 1 : second + 1], *kept, *t[noun + 1 :]]


_TWO = 2


_APART = frozenset({"REPEAT", "STAR", "LP", "RP"})


def same_under_each(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc, 5 tr, 1 dc; the same under every loop`, where no place came before: so in each."""
    same = next((n for n in range(1, len(t)) if _same_in_each(t, n)), 0)
    opens = same - (types(t, same - 1, 1) == ["THE"]) if same else 0
    parted = types(t, opens - 1, 1) in (["SEP"], ["AND"])
    if not same or not parted or any(x.type in _ALONG for x in t[:opens]):
        return list(t)
    steps = [x for x in t[: opens - 1] if x.type != "ENDING"]
    begun = past(steps, 0, "SEP")
    while steps[-1:] and steps[-1].type in ("SEP", "AND"):
        steps.pop()
    bracket = [_opening(t[opens - 1]), *steps[begun:], _closing(t[opens - 1])]
    return [*bracket, *t[same + 1 :]] if len(steps) > begun else list(t)


_ALONG = frozenset({"PREP", "STAR", "LP", "REPEAT", "SKIP"})
"""Steps with one of these go along the row by themselves."""


def _opening(here: Terminal) -> Terminal:
    return replace(like(here, "LP"), text="(")


def _closing(here: Terminal) -> Terminal:
    return replace(like(here, "RP"), text=")")


def _same_in_each(t: Sequence[Terminal], at: int) -> bool:
    each = types(t, at, 3) in (["SAME", "PREP", "EACH"], ["SAME", "PREP", "EVERY"])
    return each and types(t, at - 1, 1) in (["THE"], ["SEP"], ["AND"])


def together_again(t: Sequence[Terminal]) -> list[Terminal]:
    """`2 dc together in next loop, …, 2 dc in the same manner in the next`: these together, too."""
    found: list[Terminal] = []
    together = False
    for n, here in enumerate(t):
        together = together or here.type in ("TOGETHER", "DRAWING")
        so = here.type == "NOTHING" and here.text in _SO_TOO and types(t, n - 1, 1) == ["STITCH"]
        several = n > 1 and t[n - 2].type == "NUM" and t[n - 2].number > 1
        found.append(replace(here, type="TOGETHER") if together and so and several else here)
    return found


_SO_TOO = frozenset(f"in {how} {way}" for how in ("this", "the same") for way in ("manner", "way"))


def none_between(t: Sequence[Terminal]) -> list[Terminal]:
    """`with 1 chain between, and no chain between the scallops`: what no words of a row settle."""
    found = list(t)
    for n, here in enumerate(t):
        none = here.type == "NOTHING" and "chain between" in here.text and "no " in here.text
        if none and any(x.type == "BETWEEN" for x in t[:n]):
            found[n] = replace(here, type="EXCEPT")
    return found


def from_first_star(t: Sequence[Terminal]) -> list[Terminal]:
    """`*5 ch, 1 dc, repeat from * 5 times more, 1 dc; repeat from first *`: the one star stands for
    two; `from the last *` is from the star."""
    found: list[Terminal] = []
    at_first = False
    for n, here in enumerate(t):
        star = n > 0 and here.type == "STAR"
        if star and found[-1].type == "FROMHEAD" and found[-1].text.endswith("first"):
            found[-1] = replace(found[-1], type="FROM", text="from")
            at_first = True
        order = len(found) - 1
        the = order - (types(found, order - 1, 1) == ["THE"])
        last = star and found[-1].type == "ORD" and types(found, the - 1, 1) == ["FROM"]
        if last and found[-1].number == -1:
            del found[the:]
        found.append(here)
    backs = [n for n in range(1, len(found)) if types(found, n - 1, 2) == ["FROM", "STAR"]]
    stars = [n for n, x in enumerate(found) if x.type == "STAR" and n not in backs]
    if at_first and len(stars) == 1 < len(backs):
        found.insert(stars[0], found[stars[0]])
    return found


def between_first(t: Sequence[Terminal]) -> list[Terminal]:
    """`Between every 2 dc work 1 sc, with 3 chain between`: 1 sc between every 2 dc."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        head = at == 0 or t[at - 1].type in ("STAR", "LP") or t[at - 1].name == "hard"
        which = past(t, at + 1, "THE", "EACH", "EVERY", "NEXT")
        noun = past(t, which, "NUM")
        step = past(t, noun + 1, "SEP")
        opens = head and t[at].type == "BETWEEN" and which > at + 1
        makes = types(t, step, 2) == ["NUM", "STITCH"] and ended(t, step + 2)
        if opens and types(t, noun, 1) in (["STITCH"], ["KIND"]) and makes:
            found += [*t[step : step + 2], *t[at : noun + 1]]
            at = step + 2
            continue
        found.append(t[at])
        at += 1
    return found


def each_but(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc in each stitch, missing the two sc`: in all but these, which no words of a row say."""
    found = list(t)
    each = False
    for n, here in enumerate(t):
        stitch = types(t, n, 2) in _EACH_ST and t[n + 1].kind == Kind("st")
        stitch = stitch and types(t, n + 2, 1) != ["OF"]
        each = each or (stitch and opens_before(t, n + 1))
        noun = past(t, n + 1, "THE", "EACH", "NUM")
        said = here.type == "SKIP" and noun > n + 1 and t[noun - 1].type != "NEXT"
        the = said and any(x.type in ("THE", "EACH") for x in t[n + 1 : noun])
        if each and the and types(t, noun, 1) == ["STITCH"] and ended(t, noun + 1):
            found[n] = replace(here, type="EXCEPT")
        each = each and here.type not in ("REPEAT", "STAR")
    return found


_EACH_ST = (["EACH", "KIND"], ["EVERY", "KIND"])


def on_each_of(t: Sequence[Terminal]) -> list[Terminal]:
    """`On the 9 treble work 1 treble on each with 1 chain between`: 1 treble on each of the 9."""
    at = past(t, 0, "SEP", "STAR")
    number = past(t, at + 1, "THE", "NEXT")
    step = past(t, number + 2, "SEP")
    place = types(t, at, 1) == ["PREP"] and types(t, number, 2) == ["NUM", "STITCH"]
    made = types(t, step, 4) == ["NUM", "STITCH", "PREP", "EACH"] and t[step].number == 1
    if not place or not made or types(t, step + 4, 1) in (["KIND"], ["STITCH"], ["CH"]):
        return list(t)
    each = [like(t[step + 3], "EACHOF"), like(t[step + 3], "NEXT"), *t[number : number + 2]]
    return [*t[:at], *t[step : step + 3], *each, *t[step + 4 :]]


def repeat_mark(t: Sequence[Terminal]) -> list[Terminal]:
    """`x 1 dc, 5 chain, miss 5, repeat x`, `repeat x 11 times more`: from that mark."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        again = types(found, len(found) - 1, 1) == ["REPEAT"]
        mark = again and here.type in ("CROSS", "MARK", "STAR")
        opened = mark and any(
            x.text == here.text and types(t, i + 1, 1) != ["SEP"] and not _goes_back(t, i)
            for i, x in enumerate(t[: n - 1])
        )
        goes_on = n + 1 == len(t) or t[n + 1].type in _BEHIND_MARK
        if opened and goes_on and types(t, n + 1, 2) not in (["NUM", "STITCH"], ["NUM", "CH"]):
            found.append(replace(like(here, "FROM"), text="from"))
        found.append(here)
    return found


_BEHIND_MARK = frozenset({"SEP", "TOEND", "NUM", "TIMES", "AND", "ENDING"})


def _goes_back(t: Sequence[Terminal], at: int) -> bool:
    return at > 0 and t[at - 1].type in ("REPEAT", "FROM", "TO")


def pair_to_end(t: Sequence[Terminal]) -> list[Terminal]:
    """`+ 1 dc, 1 ch, miss 1, +; end with 1 dc`: what stands between two marks is repeated."""
    marks = [n for n, x in enumerate(t) if x.type in ("CROSS", "MARK", "STAR")]
    if len(marks) != 2 or any(x.type in ("REPEAT", "SOON") or x.type in HOW_OFTEN for x in t):
        return list(t)
    first, last = marks
    ends = past(t, last + 1, "SEP")
    alike = t[first].text == t[last].text and types(t, ends, 1) == ["ENDWITH"]
    again = replace(like(t[last], "REPEAT"), text="repeat")
    return [*t[: last + 1], again, *t[last + 1 :]] if alike else list(t)
