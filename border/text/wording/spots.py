"""Where a place lies: `on the dc in the hollow`, `in the loop at the beginning`, `of a loop`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind
from border.text.vocabulary import vocabulary
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    as_remark,
    behind_chains,
    ended,
    like,
    only_ends,
    opener,
    past,
    prep_before,
    stitch_left_out,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def of_a_loop(t: Sequence[Terminal]) -> list[Terminal]:
    """`between the two picots of a free loop`: of the next; `sl st to space between groups`: to
    that space."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        here = t[at]
        kind = past(t, at + 1, "NOTHING")
        one = (
            here.type == "NUM" and here.text in ("a", "an", "one") and types(t, kind, 1) == ["KIND"]
        )
        if one and types(found, len(found) - 2, 2) == ["PICOT", "OF"]:
            found.append(like(here, "NEXT"))
            at = kind
            continue
        heap = past(t, at + 1, "THE", "NUM")
        to = types(found, len(found) - 2, 2) == ["TO", "KIND"] and here.type == "BETWEEN"
        if to and t[heap : heap + 1] and t[heap].type in NOUNS and ended(t, heap + 1):
            at = heap + 1
            continue
        found.append(here)
        at += 1
    return found


def each_in_shell(t: Sequence[Terminal]) -> list[Terminal]:
    """`under every one chain in the scallop`, `in each space in the shell`: of it."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        heap = past(t, n + 1, "THE", "NEXT", "EACH", "EVERY")
        of = here.type == "PREP" and here.text == "in" and heap < len(t) and ended(t, heap + 1)
        prep = prep_before(found) if of else None
        each = prep is not None and any(x.type in ("EACH", "EVERY") for x in found[prep:])
        arches = bool(found) and (found[-1].type == "CH" or found[-1].kind in ARCHES)
        if each and arches and (t[heap].kind in _HEAPS or t[heap].text in _SHELLS):
            here = like(here, "OF")
        found.append(here)
    return found


_HEAPS = (Kind("shell"), Kind("group"))
_SHELLS = frozenset(word for word, kinds in vocabulary().places_asked.items() if "shell" in kinds)


def heaps_by_number(t: Sequence[Terminal]) -> list[Terminal]:
    """`between the sevens`: the blocks of 7."""
    found = list(t)
    numbers = vocabulary().numbers
    for n, here in enumerate(t):
        of = here.text.removesuffix("es") if here.text == "sixes" else here.text.removesuffix("s")
        size = numbers.get(of, 0) if here.type == "UNKNOWN" and here.text.endswith("s") else 0
        if size > 1 and n and t[opener(t, n)].type in ("PREP", "BETWEEN", "OF", "SKIP"):
            found[n] = replace(like(here, "KIND", Kind("block", size)), many=True)
    return found


BEHIND = "behind"
"""The name of a place at the back of something, which is counted as in it."""


def at_the_back(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc behind each petal`, `at the back of the shell`, `into the back of the dc`: in it, and
    told; `5 chain behind the petal`: over it. Of a place that is named already it is a remark."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        which = _behind_back(t, at)
        noun = past(t, which, *_WHICH_BEHIND)
        bare = types(t, noun - 1, 1) == ["NEXT"] and ended(t, noun)
        named = noun < len(t) and t[noun].type in (*NOUNS, "UNKNOWN")
        if which == at or not (named or bare):
            found.append(t[at])
            at += 1
            continue
        if sorted(types(found, len(found) - 2, 2)) == ["CH", "NUM"]:
            over = replace(like(t[at], "PREP"), text="over")
            again = any(x.type in ("REPEAT", "SOON") for x in t[noun:])
            each = again and t[which].type in ("EACH", "EVERY")
            found += [over, like(t[which], "THE")] if each else [over]
            at = which + each
        elif prep_before(found) is not None and t[at].type != "PREP":
            end = noun + named
            found.append(as_remark(t[at:end]))
            at = end
        else:
            found.append(replace(like(t[at], "PREP", name=BEHIND), text="in"))
            at = which
    return found


_WHICH_BEHIND = ("THE", "EACH", "EVERY", "NEXT", "ORD", "NUM", "SAME")


def _behind_back(t: Sequence[Terminal], at: int) -> int:
    """Behind `behind`, `at the back of`, `into the back of`; else the same place."""
    if t[at].text == "behind":
        return at + 1
    if t[at].text == "at the back" and types(t, at + 1, 1) == ["OF"]:
        return at + 2
    back = past(t, at + 1, "THE") if t[at].type == "PREP" else len(t)
    said = types(t, back, 2) == ["UNKNOWN", "OF"] and t[back].text == "back"
    return back + 2 if said else at


def at_beginning(t: Sequence[Terminal]) -> list[Terminal]:
    """`9 dc in the loop at the beginning`, of the row below: it lies at the end of this one."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        begin = past(t, at + 1, "THE")
        says = types(t, at, 1) == ["PREP"] and t[at].text == "at" and at > _HEAD
        named = types(found, len(found) - 1, 1)[:1] in (["CH"], ["KIND"])
        begins = says and types(t, begin, 1) == ["BEGIN"] and ended(t, begin + 1)
        if begins and only_ends(t[begin + 1 :]) and _closes(found):
            found.insert(-1, like(found[-1], "ORD", number=1))  # `sl st in sl st at beginning`
            at = begin + 1
            continue
        if begins and named:
            found.append(replace(t[at], type="ATEND", end=t[begin].end))
            at = begin + 1
            continue
        found.append(t[at])
        at += 1
    return found


def at_the_end(t: Sequence[Terminal]) -> list[Terminal]:
    """`4 dc on the 4 at the end`: on the last 4."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        which = 3 if types(found, len(found) - 3, 3) == ["PREP", "THE", "NUM"] else 2
        named = types(found, len(found) - which, 1) == ["PREP"] and types(t, n - 1, 1) == ["NUM"]
        if here.type == "ATEND" and named and len(found) > which and ended(t, n + 1):
            found[1 - which :] = [like(here, "ORD", number=-1), found[-1], stitch_left_out(here)]
            continue
        found.append(here)
    return found


def _closes(found: Sequence[Terminal]) -> bool:
    """Whether these words end in a slip stitch on a stitch, behind a repeat."""
    prep = prep_before(found)
    slips = prep and found[prep - 1].name == "ss" and found[-1].type == "STITCH"
    return bool(slips) and any(x.type == "REPEAT" for x in found)


def of_them(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc on the 1st of the 4 dc, …, 1 dc on the last of them`: of the 4. `4 ch, 1 dc in the
    first of these`: of these chains."""
    found = _of_these_chains(t)
    for n in range(len(t) - 1, 0, -1):
        if types(t, n - 2, 3) != ["ORD", "OF", "THEM"] or n < 2:
            continue
        of = [i for i in range(1, n - 2) if types(t, i - 1, 2) == ["ORD", "OF"]]
        counted = [past(t, i + 1, "THE") for i in of]
        named = [i for i in counted if types(t, i, 2) in (["NUM", "STITCH"], ["NUM", "CH"])]
        if named and ended(t, n + 1):
            at = named[-1]
            found[n : n + 1] = [like(t[n], "THE"), t[at], t[at + 1]]
    return found


def _of_these_chains(t: Sequence[Terminal]) -> list[Terminal]:
    found = list(t)
    for n in range(len(t) - 1, 3, -1):
        these = t[n].text == "these" and types(t, n - 2, 2) == ["ORD", "OF"] and ended(t, n + 1)
        prep = n - 3 - (t[n - 3].type == "THE")
        if these and t[prep].type == "PREP" and behind_chains(t[:prep]):
            found.insert(n + 1, replace(like(t[n], "CH"), text="chains"))
    return found


def in_its_top(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc in next dc, 3 ch, 1 sc in top of same dc`: in the dc just made, as a picot closes."""
    found = list(t)
    for n, here in enumerate(t):
        top = (
            here.type == "PREP" and "top" in here.text and types(t, n + 1, 2) == ["SAME", "STITCH"]
        )
        closes = top and n > 3 and t[n - 1].type == "STITCH" and t[n - 1].name in ("sc", "ss")
        chain = [x.type for x in t[max(0, n - 6) : n - 1] if x.type not in ("SEP", "AND")]
        made = [x for x in t[:n] if x.type == "STITCH" and x is not t[n - 1]]
        alike = made and any(x.name == t[n + 2].name for x in made[-2:]) if top else False
        if closes and "CH" in chain and alike:
            found[n + 1 : n + 3] = [t[n + 2], replace(t[n + 1], type="STRAY", text="just made")]
    return found


def any_one(t: Sequence[Terminal]) -> list[Terminal]:
    """`in any one of the spaces`, `in centre of one of the 7 chain`: in the next."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        start = past(t, at, "NEXT") if t[at].text == "any" else at
        one = types(t, start, 2) == ["NUM", "OF"] and t[start].number == 1
        noun = past(t, at + 2, "THE")
        of = types(t, at, 2) == ["NUM", "OF"] and types(t, noun, 1) == ["KIND"] and t[noun].many
        if of and at > 0 and t[at - 1].type == "SKIP":
            found.append(t[at])  # `miss 2 of the open squares`
            at = noun
            continue
        led = start > at or (at > 0 and t[at - 1].type == "OF")
        if one and led:
            found.append(like(t[at], "NEXT"))
            at = past(t, start + 2, "THE", "ALL")
            continue
        found.append(t[at])
        at += 1
    return found


def this_and_next(t: Sequence[Terminal]) -> list[Terminal]:
    """`between this petal and the next`, `between this and the following scallop`: between two."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        this = at > 0 and t[at - 1].type == "BETWEEN" and t[at].text == "this"
        noun = past(t, at + 1, "UNKNOWN", *NOUNS) if this else at
        next_ = past(t, noun + 1, "THE") if types(t, noun, 1) == ["AND"] else len(t)
        end = past(t, next_ + 1, "UNKNOWN", *NOUNS)
        named = t[at + 1 : noun] or t[next_ + 1 : end]
        if not this or types(t, next_, 1) != ["NEXT"] or not named or not ended(t, end):
            found.append(t[at])
            at += 1
            continue
        found += [t[next_], like(t[at], "NUM", number=2), replace(named[-1], many=True)]
        at = end
    return found


def second_of_two(t: Sequence[Terminal]) -> list[Terminal]:
    """`on the dc between two shells, …, on the centre of the second shell`: the next one; told."""
    found: list[Terminal] = list(t)
    pair: Terminal | None = None
    for n, here in enumerate(t):
        if here.type in ("STAR", "REPEAT", "LP") or (here.type == "ORD" and here.number == 1):
            pair = None
        two = here.type in NOUNS and types(t, n - 1, 1) == ["NUM"] and t[n - 1].number == _PAIR
        if two and t[opener(t, n)].type == "BETWEEN":
            pair = here
        second = pair is not None and here.type == pair.type and here.kind == pair.kind
        second = second and here.name == (pair.name if pair else "")
        if second and types(t, n - 1, 1) == ["ORD"] and t[n - 1].number == _PAIR:
            found[n - 1] = like(t[n - 1], "NEXT")
            prep = max((i for i in range(n) if t[i].type == "PREP"), default=n - 1)
            if t[prep].type == "PREP":
                found[prep] = replace(found[prep], name=found[prep].name or "counted")
            pair = None
    return found


_PAIR = 2


def spots(t: Sequence[Terminal]) -> list[Terminal]:
    """`on the dc in the hollow`, `the 2 ch at the top of the scallop`: where a place is that has
    been named."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        spot = past(t, at + 1, "THE")
        says = types(t, at, 1) == ["PREP"] and spot > at + 1 and spot < len(t)
        if says and t[spot].text in _SPOTS and ended(t, spot + 1) and prep_before(found):
            found.append(as_remark(t[at : spot + 1]))
            at = spot + 1
            continue
        found.append(t[at])
        at += 1
    return found


_SPOTS = frozenset({"hollow", "hollows", "dip", "dips", "valley", "angle"})

_HEAD = 4
"""In no more words a row has begun, and worked into the row below."""
