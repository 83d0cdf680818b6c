"""Little words that a text leaves out, or has where another stands: `plain every stitch`, `1 picot
with 5 chain`, `in the same place as before`, `in each of the other loops`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import (
    NOUNS,
    as_remark,
    chain_of_at,
    chains_at,
    ended,
    like,
    only_ends,
    opens_before,
    past,
    stitch_left_out,
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


def same_as(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the same place as the sl st`, `in the same loop as the last`, `in the stitch last worked
    into`: in the same."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        same = types(found, len(found) - 2, 1) == ["SAME"] and found[-1].type in (*NOUNS, "PLACE")
        said = past(t, at + 1, "THE") if same and t[at].type == "AS" else at
        noun = past(t, said, "ORD", "STITCH", "CH", "KIND", "ENDING") if said > at else at
        if noun == said > at and noun < len(t) and t[noun].text in _LAST:
            noun = past(t, said + 1, "STITCH", "CH", "KIND")  # `as the preceding treble`
        if noun > said > at and ended(t, noun):
            at = noun
            continue
        found.append(t[at])
        at += 1
    return found


_LAST = frozenset({"preceding", "previous", "former"})


def worked_last(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the stitch last worked into`, `in the stitch on which the double has been worked`, where
    that was worked last: in the same stitch."""
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
        end = _behind_where_worked(t, noun, found)
        if end > noun and types(found, len(found) - 1, 1) == ["PREP"]:
            kind = next(x for x in t[noun:end] if x.type == "KIND")
            found += [like(t[noun], "SAME"), kind]
            at = end
            continue
        found.append(t[at])
        at += 1
    return found


def _behind_where_worked(t: Sequence[Terminal], at: int, before: Sequence[Terminal]) -> int:
    """The place behind `stitch on which the double has been worked`, where a double is what was
    worked last; the same place where it is not."""
    which = past(t, past(t, at, "SAME"), "KIND")
    if which == past(t, at, "SAME"):
        return at
    by_which = types(t, which, 2) == ["PREP", "STRAY"] and t[which + 1].text == "which"
    where = which < len(t) and t[which].text == "where"
    stitch = past(t, which + 1 + by_which, "THE", "ORD")
    if not (by_which or where) or types(t, stitch, 1) != ["STITCH"]:
        return at
    end = stitch + 1
    while end < len(t) and t[end].text in _HAS_BEEN:
        end += 1
    made = [x.name for x in before if x.type == "STITCH"]
    last = made[-2:-1] == [t[stitch].name]
    worked = end > stitch + 1 and end < len(t) and t[end].text in ("worked", "made", "taken")
    return end + 1 if last and worked and ended(t, end + 1) else at


_HAS_BEEN = frozenset({"is", "was", "has", "been", "were", "have"})


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


def close_stitches(t: Sequence[Terminal]) -> list[Terminal]:
    """`A row of close double crochet`: one in each stitch; nothing is closed."""
    return [
        x
        for n, x in enumerate(t)
        if not (x.type == "ENDING" and x.text == "close" and types(t, n + 1, 1) == ["STITCH"])
    ]


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


def a_row_of(t: Sequence[Terminal]) -> list[Terminal]:
    """`Another row of 5 chain, 1 dc in next st`: these steps."""
    at = past(t, 0, "SEP")
    row = types(t, at, 3) == ["NUM", "ROW", "OF"] and t[at].number == 1
    chains, behind = chains_at(t, at + 3)
    more = any(x.type == "STITCH" for x in t[behind:])
    return [*t[:at], *t[at + 3 :]] if row and chains and more else list(t)


def at_the_end_of_row(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc in the 3rd chain at the end`: as `in the 3rd chain`, where a row ends; `at the end of
    the row turn`: as `turn`."""
    return [
        x
        for n, x in enumerate(t)
        if not (
            x.type == "ATEND"
            and (types(t, n - 2, 2) == ["ORD", "CH"] or _turns(t, n))
            and all(y.type in ("SEP", "ENDING") for y in t[n + 1 :])
        )
    ]


def _turns(t: Sequence[Terminal], at: int) -> bool:
    """Whether `at the end of the row turn` stands here, as a step."""
    turn = past(t, at + 1, "SEP")
    return types(t, at - 1, 1) == ["SEP"] and types(t, turn, 1) == ["ENDING"]


def beside_what(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the space before the dc`: the space; what it stands before is a remark."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        noun = past(t, at + 1, "THE", "NUM")
        beside = t[at].type == "UNKNOWN" and t[at].text in _BESIDE and noun > at + 1
        named = beside and types(t, noun, 1) in (["STITCH"], ["PICOT"], ["KIND"])
        space = types(found, len(found) - 1, 1) == ["KIND"]
        if named and space and opens_before(found, len(found) - 1) and ended(t, noun + 1):
            found.append(as_remark(t[at : noun + 1]))
            at = noun + 1
            continue
        found.append(t[at])
        at += 1
    return found


_BESIDE = frozenset({"before", "beyond", "beside", "behind"})


def in_next_nth(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc in next 3d st`: in the 3rd."""
    nth = [types(t, n, 2) == ["NEXT", "ORD"] and t[n + 1].number > 1 for n in range(len(t))]
    return [x for n, x in enumerate(t) if not (nth[n] and n and t[n - 1].type == "PREP")]


def long_names(t: Sequence[Terminal]) -> list[Terminal]:
    """`3 long tc`, of which only `long` and `tc` are known: no name that is known here."""
    found: list[Terminal] = []
    for here in t:
        two = here.type == "STITCH" and types(found, len(found) - 2, 2) == ["NUM", "STITCH"]
        if two and found[-1].text in _DEGREES:
            text = f"{found[-1].text} {here.text}"
            found[-1] = replace(found[-1], type="UNKNOWN", text=text, end=here.end, name="")
            continue
        found.append(here)
    return found


_DEGREES = frozenset({"long", "half", "double", "triple", "short"})


def unite_with(t: Sequence[Terminal]) -> list[Terminal]:
    """`9 ch, unite with the 3rd dc of next scallop`: fasten in it; not `unite with 1 sl st`."""
    found = list(t)
    for n, here in enumerate(t):
        unites = here.type == "ENDING" and here.text.startswith("unite")
        place = types(t, n + 2, 1) in (["THE"], ["NEXT"], ["ORD"], ["CENTRE"])
        if unites and types(t, n + 1, 1) == ["WITH"] and place and n:
            found[n] = replace(here, type="CATCH", name="")
            found[n + 1] = replace(like(t[n + 1], "PREP"), text="in")
    return found


def picots_each(t: Sequence[Terminal]) -> list[Terminal]:
    """`3 purls of 5 chain each`: of 5 chain."""
    return [
        x
        for n, x in enumerate(t)
        if not (
            x.type == "EACH"
            and types(t, n - 4, 4) == ["PICOT", "OF", "NUM", "CH"]
            and ended(t, n + 1)
        )
    ]


def in_so_many(t: Sequence[Terminal]) -> list[Terminal]:
    """`Dc in 7`, `sc in 3 dc`: one in each of so many."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        made = types(found, len(found) - 2, 2) == ["STITCH", "PREP"]
        bare = made and types(found, len(found) - 3, 1) in ([], ["SEP"], ["STAR"], ["LP"], ["MARK"])
        number = bare and here.type == "NUM" and here.number > 1
        on = number and found[-1].text.split()[0] in ("in", "into", "on", "upon")
        noun = types(t, n + 1, 1)
        if on and (ended(t, n + 1) or (noun in (["STITCH"], ["KIND"]) and ended(t, n + 2))):
            found += [like(here, "EACHOF"), like(here, "NEXT"), here]
            if ended(t, n + 1):
                found.append(stitch_left_out(here))
            continue
        found.append(here)
    return found


def chains_in_every(t: Sequence[Terminal]) -> list[Terminal]:
    """`Chain of 7 in every third stitch`: fastened there, which is told, with 7 chain between."""
    at = past(t, 0, "SEP")
    chains, behind = chain_of_at(t, at)
    noun = past(t, behind + 2, "ORD", "OTHER")
    every = types(t, behind, 2) in (["PREP", "EACH"], ["PREP", "EVERY"])
    stitch = types(t, noun, 1) in (["KIND"], ["STITCH"])
    if not chains or not every or not stitch or not only_ends(t[past(t, noun + 1, "TOEND") :]):
        return list(t)
    fasten = replace(like(t[at], "CATCH"), text="fasten")
    between = [replace(like(t[at], "WITH"), text="with"), *t[at:behind]]
    comma = replace(like(t[at], "SEP"), text=",")
    rest = [*t[behind : noun + 1], comma, *between, replace(like(t[at], "BETWEEN"), text="between")]
    return [*t[:at], fasten, *rest, *t[noun + 1 :]]


def forms_picot(t: Sequence[Terminal]) -> list[Terminal]:
    """`5 chain, 1 dc in the 5th loop to form a purl`: a picot of 5."""
    for n, here in enumerate(t):
        picot = past(t, n + 1, "THE", "NUM")
        forms = here.type == "AS" and here.text.endswith(("form", "make")) and picot > n + 1
        if not forms or types(t, picot, 1) != ["PICOT"] or t[picot].number:
            continue
        step = n - 1
        while step > 0 and t[step].type != "SEP":
            step -= 1
        chains, behind = chains_at(t, step - 2)
        placed = [x.type for x in t[step + 1 : n] if x.type not in ("THE", "NUM", "KIND", "CH")]
        if chains and behind == step and placed == ["STITCH", "PREP", "ORD"]:
            one = replace(like(t[step - 2], "NUM"), number=1)
            ring = replace(t[picot], start=t[step - 2].start, number=chains)
            return [*t[: step - 2], one, ring, *t[picot + 1 :]]
    return list(t)


def so_many_in_one(t: Sequence[Terminal]) -> list[Terminal]:
    """`Trebles, three in one stitch, chain 3`: three trebles in one stitch."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        number = past(t, at + 1, "SEP")
        bare = t[at].type == "STITCH" and t[at].text.endswith("s") and number == at + 2
        bare = bare and types(found, len(found) - 1, 1) in ([], ["SEP"], ["STAR"])
        if bare and types(t, number, 2) == ["NUM", "PREP"]:
            found += [t[number], t[at]]
            at = number + 1
            continue
        found.append(t[at])
        at += 1
    return found
