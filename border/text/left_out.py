"""Little words that a text leaves out, or has where another stands: `plain every stitch`, `1 picot
with 5 chain`, `repeat, and in the last 1 dc`, `in the same place as before`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.passing import (
    HOW_OFTEN,
    NOUNS,
    chains_at,
    ended,
    like,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def prep_before_each(t: Sequence[Terminal]) -> list[Terminal]:
    """`Plain every stitch`, `dc each st`: in every stitch."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        each = here.type in ("EACH", "EVERY") and types(found, len(found) - 1, 1) == ["STITCH"]
        noun = past(t, n + 1, "OTHER", "ORD")
        if each and types(t, noun, 1) == ["KIND"] and not t[noun].many and ended(t, noun + 1):
            found.append(replace(like(here, "PREP"), text="in"))
        found.append(here)
    return found


def picot_with(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 picot with 5 chain` is one of 5; not so `1 picot with 5 chain between`."""
    found = list(t)
    for n in range(1, len(t)):
        chains, behind = chains_at(t, n + 1)
        sized = t[n].type == "WITH" and t[n].text == "with" and t[n - 1].type == "PICOT" and chains
        if sized and types(t, behind, 1) not in (["BETWEEN"], ["AFTER"]):
            found[n] = replace(t[n], type="OF", text="of")
    return found


def each_with(t: Sequence[Terminal]) -> list[Terminal]:
    """`3 treble each with 2 chain between, in next loop`: with 2 chain between."""
    return [
        here
        for n, here in enumerate(t)
        if not (
            here.type == "EACH"
            and n
            and t[n - 1].type == "STITCH"
            and types(t, n + 1, 1) == ["WITH"]
            and chains_at(t, n + 2)[0]
        )
    ]


def ends_with_last(t: Sequence[Terminal]) -> list[Terminal]:
    """`…; repeat, and in the last 1 dc`: the row ends with that."""
    again = max((n for n, x in enumerate(t) if x.type == "REPEAT"), default=len(t))
    joined = past(t, again + 1, "SEP", "TOEND", "THE", "REMARK")
    upon = types(t, joined, 2) == ["AND", "PREP"]
    order = past(t, joined + 2, "THE")
    last = types(t, order, 1) == ["ORD"] and t[order].number == -1
    step = past(t, order + 1, *NOUNS, "SEP")
    makes = types(t, step, 2) == ["NUM", "STITCH"] and ended(t, step + 2)
    if not upon or not last or not makes or any(x.type in HOW_OFTEN for x in t[again:joined]):
        return list(t)
    ends = replace(like(t[joined], "ENDWITH"), text="end with")
    place = [x for x in t[joined + 1 : step] if x.type != "SEP"]
    return [*t[:joined], ends, *t[step : step + 2], *place, *t[step + 2 :]]


def same_as(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the same place as the sl st`, `in the same loop as the last`, `in the stitch last worked
    into`: in the same."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        same = types(found, len(found) - 2, 1) == ["SAME"] and found[-1].type in (*NOUNS, "PLACE")
        said = past(t, at + 1, "THE") if same and t[at].type == "AS" else at
        noun = past(t, said, "ORD", "STITCH", "CH", "KIND", "ENDING") if said > at else at
        if noun > said > at and ended(t, noun):
            at = noun
            continue
        found.append(t[at])
        at += 1
    return found


def worked_last(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the stitch last worked into`: in the same stitch."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        noun = past(t, at, "THE")
        last = types(t, noun, 2) == ["KIND", "ORD"] and t[noun + 1].number == -1
        end = past(t, noun + 2, "SEP", "PREP") if last else at
        worked = last and end > noun + 2 and t[noun + 2].text in ("worked", "used")
        if worked and ended(t, end) and types(found, len(found) - 1, 1) == ["PREP"]:
            found += [like(t[noun], "SAME"), t[noun]]
            at = end
            continue
        found.append(t[at])
        at += 1
    return found


def the_others(t: Sequence[Terminal]) -> list[Terminal]:
    """`in each of the other 3 loops`: of the next; `the other 6 chain`: the next; `in each of the
    other stitches`, `of the following loops`: in each."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        behind = types(t, n + 1, 2)
        if here.type == "OTHER" and here.text == "other" and behind and found:
            if found[-1].type in ("THE", "EACHOF") and behind[0] == "NUM" and behind[1:]:
                here = replace(here, type="NEXT")
            elif behind[0] in ("KIND", "STITCH") and types(found, len(found) - 2, 1) == ["EACHOF"]:
                found[-2:] = [replace(found[-2], type="EACH")]
                continue
        several = here.type == "NEXT" and types(found, len(found) - 2, 2) == ["EACHOF", "THE"]
        if several and behind[:1] == ["KIND"] and t[n + 1].many:
            found[-2:] = [replace(found[-2], type="EACH")]
            continue
        found.append(here)
    return found


def next_first(t: Sequence[Terminal]) -> list[Terminal]:
    """`In the first loop 3 dc, in the next 4 dc`: where places stand first, 4 dc in the next."""
    found: list[Terminal] = []
    noun: Terminal | None = None
    for n, here in enumerate(t):
        found.append(here)
        prep = n
        while prep and t[prep].type in _WHICH:
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


def _made_alone(t: Sequence[Terminal], at: int) -> bool:
    """Whether the stitches at a place have no place of their own: `4 dc`, `4 dc only`."""
    return ended(t, past(t, at + 2, "NOTHING"))


_WHICH = frozenset({"THE", "NEXT", "ORD", "EACH", "KIND"})
_HEADS = frozenset({"SEP", "STAR", "LP", "AND"})


def to_reach(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 single on each of the first 3, in order to reach the loop`: parted by nothing."""
    reached = [x.type == "TO" and x.text.endswith("reach") for x in [*t[1:], *t[:1]]]
    return [x for x, reach in zip(t, reached, strict=True) if not (reach and x.type == "SEP")]


def each_on_one(t: Sequence[Terminal]) -> list[Terminal]:
    """`4 treble, each on a stitch, with 2 chain between`: in each of the next 4 stitches."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        made = types(found, len(found) - 2, 2) == ["NUM", "STITCH"] and found[-2].number > 1
        each = at + (types(t, at, 1) == ["SEP"])
        on_one = types(t, each, 4) in _EACH_ON_ONE
        if made and on_one and t[each + 2].number == 1:
            prep, one, noun = t[each + 1 : each + 4]
            many = replace(like(one, "NUM"), number=found[-2].number)
            found[-2] = replace(found[-2], number=1)
            found += [prep, like(one, "EACHOF"), like(one, "NEXT"), many, replace(noun, many=True)]
            at = each + 4
            at += types(t, at, 2) == ["SEP", "WITH"]
            continue
        found.append(t[at])
        at += 1
    return found


_EACH_ON_ONE = [["EACH", "PREP", "NUM", noun] for noun in ("KIND", "STITCH")]


def named_later(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the first, 3 dc in the second hole`, `in the 2nd, 1 dc in the 4th of the 5 chain`: the
    first of them has its noun there."""
    orders = [n for n, x in enumerate(t) if x.type == "ORD" and _opens_before(t, n)]
    if len(orders) < _TWO:
        return list(t)
    first, second = orders[:_TWO]
    before = any(_opens_before(t, n) for n, x in enumerate(t[:first]) if x.type in NOUNS)
    between = range(first + 1, second)
    named = any(t[n].type in NOUNS and _opens_before(t, n) for n in between)
    parted = named or any(t[n].type in _APART for n in between)
    parted = parted or all(t[n].type != "STITCH" for n in between)
    if before or parted or not ended(t, first + 1):
        return list(t)
    noun = past(t, second + 1, "OF", "THE", "NUM")
    if types(t, noun, 1) not in (["KIND"], ["STITCH"], ["CH"]) or not ended(t, noun + 1):
        return list(t)
    tail = [replace(x, start=t[first].end, end=t[first].end) for x in t[second + 1 : noun + 1]]
    rest = second + 1 if t[second + 1].type == "OF" else noun + 1
    kept = list(t[second + 1 : noun + 1]) if rest == noun + 1 else []
    return [*t[: first + 1], *tail, *t[first + 1 : second + 1], *kept, *t[noun + 1 :]]


_TWO = 2
_APART = frozenset({"REPEAT", "STAR", "LP", "RP"})


def _opens_before(t: Sequence[Terminal], at: int) -> bool:
    """Whether a place opens before the word that stands there."""
    back = at - 1
    while back > 0 and t[back].type in ("THE", "NEXT", "NUM", "EACH", "EACHOF"):
        back -= 1
    return back >= 0 and t[back].type == "PREP"


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


def missed_between(t: Sequence[Terminal]) -> list[Terminal]:
    """`4 treble, missing 1 stitch between each`: one, and three more, each behind one missed."""
    for n in range(len(t) - 1):
        skip = past(t, n + 2, "SEP")
        made = types(t, n, 2) == ["NUM", "STITCH"] and 1 < t[n].number <= _MOST
        if not made or types(t, skip, 1) != ["SKIP"]:
            continue
        between = past(t, skip + 1, "NUM", "KIND", "STITCH", "CH")
        each = past(t, between + 1, "EACH")
        said = between > skip + 1 and types(t, between, 1) == ["BETWEEN"] and each > between + 1
        if said and ended(t, each):
            one = replace(t[n], number=1)
            again = [*t[skip:between], like(t[n + 1], "SEP"), one, t[n + 1]]
            often = replace(like(t[n], "NUM"), number=t[n].number - 1)
            rest = [_opening(often), *again, _closing(often), often, like(often, "TIMES")]
            return [*t[:n], one, t[n + 1], like(often, "SEP"), *rest, *t[each:]]
    return list(t)


_MOST = 20
"""So many stitches are told by what is missed between them."""


def close_stitches(t: Sequence[Terminal]) -> list[Terminal]:
    """`A row of close double crochet`: one in each stitch; nothing is closed."""
    return [
        x
        for n, x in enumerate(t)
        if not (x.type == "ENDING" and x.text == "close" and types(t, n + 1, 1) == ["STITCH"])
    ]


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


def at_near_end(t: Sequence[Terminal]) -> list[Terminal]:
    """`turn; 3 dc in the space at the end, 1 ch, …`: where a row begins, its first space."""
    at = next((n for n, x in enumerate(t) if x.type == "ATEND"), len(t))
    prep = max((n for n in range(at) if t[n].type == "PREP"), default=0)
    turned = any(x.type == "ENDING" and x.name == "turn" for x in t[:prep])
    placed = any(x.type in ("PREP", "SKIP", "STAR") for x in t[:prep])
    noun = prep and past(t, prep + 1, "THE")
    more = any(x.type == "STITCH" for x in t[at + 1 :])
    if not turned or placed or not more or types(t, noun, 2) != ["KIND", "ATEND"]:
        return list(t)
    return [*t[: prep + 1], like(t[noun], "ORD", number=1), t[noun], *t[at + 1 :]]
