"""How often, in other words: `always`, `dc twice in every loop`, `in alternate stitches`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import (
    NOUNS,
    chains_at,
    ended,
    like,
    list_start,
    opens_again,
    opens_before,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def times_behind_comma(t: Sequence[Terminal]) -> list[Terminal]:
    """`shell in shell, twice, ch 2`: twice, as without the comma."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        alone = here.type == "TIMES" and here.number and types(t, n + 1, 1) in (["SEP"], [])
        comma = len(found) > 1 and found[-1].text == ","
        if alone and comma and found[-2].type in NOUNS and opens_before(found, len(found) - 2):
            found.pop()
        found.append(here)
    return found


def always(t: Sequence[Terminal]) -> list[Terminal]:
    """`Always 3 dc in the next st, 3 ch`: over and over, where no other word says it."""
    head = t[0].text == "always" and all(x.type not in ("REPEAT", "STAR", "SOON") for x in t)
    each = any(x.type in ("EACH", "EVERY", "TOEND", "ALTERNATELY") for x in t)
    makes = any(x.type == "STITCH" for x in t)
    return [replace(t[0], type="ALTERNATELY"), *t[1:]] if head and makes and not each else list(t)


def alternately_missing(t: Sequence[Terminal]) -> list[Terminal]:
    """`5 chain, 1 dc, alternately, missing 2 stitches each time`: with that miss, over and over."""
    at = next((n for n, x in enumerate(t) if x.type == "ALTERNATELY"), 0)
    skip = past(t, at + 1, "SEP")
    end = past(t, skip + 1, "NUM", "KIND", "STITCH", "NOTHING")
    misses = at and types(t, skip, 2) == ["SKIP", "NUM"]
    if not misses or any(x.type not in ("SEP", "ENDING") for x in t[end:]):
        return list(t)
    before = [*t[:at]]
    while before and before[-1].type == "SEP":
        before.pop()
    stop = like(t[at], "SEP")
    return [
        *before,
        stop,
        *t[skip:end],
        stop,
        replace(like(t[at], "REPEAT"), text="repeat"),
        *t[end:],
    ]


def twice_in_every(t: Sequence[Terminal]) -> list[Terminal]:
    """`dc twice in every loop`: 2 dc in every loop."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        twice = here.type == "TIMES" and here.number > 1 and types(t, n + 1, 1) == ["PREP"]
        each = types(t, n + 2, 1) in (["EACH"], ["EVERY"])
        before = types(found, len(found) - 2, 1)
        alone = types(found, len(found) - 1, 1) == ["STITCH"] and before in ([], ["SEP"], ["STAR"])
        if twice and each and alone:
            found.insert(-1, replace(like(here, "NUM"), number=here.number))
            continue
        found.append(here)
    return found


def every_other(t: Sequence[Terminal]) -> list[Terminal]:
    """`in alternate stitches`: in every other; `in each loop, missing every alternate one`, too."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        here = t[at]
        many = here.type == "OTHER" and here.text == "alternate" and types(t, at + 1, 1) == ["KIND"]
        if many and found and found[-1].type == "PREP" and t[at + 1].many:
            found += [like(here, "EACH"), here, replace(t[at + 1], many=False)]
            at += 2
            continue
        skip = at + (here.type == "SEP")
        other = types(t, skip, 3) in (["SKIP", "EACH", "OTHER"], ["SKIP", "EVERY", "OTHER"])
        noun = past(t, skip + 3, "NUM", "KIND", "STITCH")
        which = _each_before(found) if other and ended(t, noun) else None
        again = any(x.type in ("REPEAT", "SOON") for x in t[noun:])
        if which is not None and not again:
            found.insert(which + 1, t[skip + 2])
            at = noun
            continue
        start = list_start(found, len(found))
        placed = any(x.type in ("PREP", "BETWEEN") for x in found[start:])
        if other and again and placed and noun > skip + 3 and t[noun - 1].type != "NUM":
            # `5 dc in loop, 1 chain, missing every other loop; repeat`: each time one
            if which is not None:
                found[which] = like(found[which], "NEXT")
            found += [*t[at:skip], t[skip], like(t[skip], "NUM", number=1), *t[skip + 3 : noun]]
            at = noun
            continue
        found.append(here)
        at += 1
    return found


def _each_before(found: Sequence[Terminal]) -> int | None:
    """Where `each` stands of a place that ends here, or before chains behind it; else None."""
    stop = len(found)
    if sorted(types(found, stop - 2, 2)) == ["CH", "NUM"]:
        stop -= 2
        stop -= types(found, stop - 1, 1) == ["SEP"]
    named = types(found, stop - 2, 2) in (["EACH", "KIND"], ["EVERY", "KIND"], ["EACH", "CH"])
    return stop - 2 if named else None


def begins_again(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc, 3 chain, miss 2; begin again.`: repeat."""
    last = len(t) - 1
    while last > 0 and t[last].type == "SEP":
        last -= 1
    again = last > 0 and t[last].type == "REMARK" and t[last].text in _AGAIN
    made = any(x.type == "STITCH" for x in t[:last]) and all(x.type != "REPEAT" for x in t[:last])
    if not again or not made:
        return list(t)
    return [*t[:last], replace(t[last], type="REPEAT"), *t[last + 1 :]]


_AGAIN = frozenset({"begin again", "commence again", "start again"})


def making_after(t: Sequence[Terminal]) -> list[Terminal]:
    """`in every stitch, making 1 chain after each`, `with 1 chain after every treble`, `and 3 chain
    after each`."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        chains, behind = chains_at(t, n + 1)
        making = here.type == "AND" or (here.type == "WITH" and here.text in _MAKING)
        each = types(t, behind, 2) in (["AFTER", "EACH"], ["AFTER", "EVERY"])
        if making and chains and each and types(t, behind + 2, 1) not in (["ORD"], ["NUM"]):
            if found and found[-1].type == "SEP" and not found[-1].name:
                found.pop()
            here = replace(here, type="SEP", text=",")
        found.append(here)
    return found


_MAKING = frozenset({"making", "working", "with"})


def followed_by(t: Sequence[Terminal]) -> list[Terminal]:
    """`8 treble, each followed by 1 chain, in the loop`: with 1 chain after each."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        follows = types(t, at, 2) == ["EACH", "SEP"] and t[at + 1].text == "followed by"
        what = t[at + 2 : at + 4]
        if follows and sorted(x.type for x in what) in (["CH", "NUM"], ["NUM", "PICOT"]):
            comma = [] if types(found, len(found) - 1, 1) == ["SEP"] else [like(t[at], "SEP")]
            found += [*comma, *what, like(t[at], "AFTER"), t[at]]
            at += 4
            continue
        found.append(t[at])
        at += 1
    return found


def every_at_head(t: Sequence[Terminal]) -> list[Terminal]:
    """`Every fourth stitch 1 treble, 3 chain between`: in every fourth stitch."""
    at = past(t, 0, "SEP")
    noun = past(t, at + 1, "OTHER", "ORD")
    every = types(t, at, 1) in (["EACH"], ["EVERY"]) and types(t, noun, 3) == [
        "KIND",
        "NUM",
        "STITCH",
    ]
    return [*t[:at], replace(like(t[at], "PREP"), text="in"), *t[at:]] if every else list(t)


ALL_ROUND = "all round"
"""The name of the word before what `all round` works besides, or leaves out."""

BESIDES_ASKED = "all round, asked"
"""The same, where only a comma or an `and` says so."""


def all_round_with(t: Sequence[Terminal]) -> list[Terminal]:
    """`Dc all round, working 3 dc under each chain`, `Dc, and 3 under every 3 ch`: one on each
    stitch, and so many there; asked where each stitch below stands alone."""
    start = past(t, 0, "SEP")
    at = start + (types(t, start, 1) == ["NUM"] and t[start].number == 1)
    behind = past(t, at + 1, "TOEND")
    with_ = past(t, behind, "SEP", "AND", "NOTHING")
    if types(t, at, 1) != ["STITCH"]:
        return list(t)
    clear = types(t, with_, 1) == ["WITH"] or any(
        t[n].text in _WORKING for n in range(behind, with_)
    )
    leads = clear or with_ > behind > at + 1  # `dc all round, 3 dc under each chain`
    number = past(t, with_, "WITH", "SEP") if leads else len(t)
    place = number + 1
    place += types(t, place, 1) == ["STITCH"] and t[place].name == t[at].name
    several = types(t, number, 1) == ["NUM"] and t[number].number > 1
    if not several or types(t, place, 1) != ["PREP"] or not _each_arch(t, place + 1):
        return list(t)
    stitch, on, name = t[at], t[place], ALL_ROUND if clear else BESIDES_ASKED
    first = [like(stitch, "NUM", number=1), stitch, like(on, "PREP", name=name)]
    each = [like(on, "EACH"), replace(like(on, "KIND", Kind("st")), text="st")]
    more = [t[number], replace(stitch, start=t[place - 1].start, end=t[place - 1].end)]
    with_more = [like(t[behind], "SEP"), like(t[behind], "WITH"), *more]
    return [*t[:start], *first, *each, *t[at + 1 : behind], *with_more, *t[place:]]


_WORKING = frozenset({"working", "making", "putting"})


def _each_arch(t: Sequence[Terminal], at: int) -> bool:
    """Whether a place is each space, or each chain of so many; `each loop` may be a stitch's."""
    noun = past(t, at + 1, "NUM")
    kind = t[noun].kind if noun < len(t) else None
    space = kind is not None and kind.name == "space"
    return types(t, at, 1) == ["EACH"] and (types(t, noun, 1) == ["CH"] or space)


def all_round_and_each(t: Sequence[Terminal]) -> list[Terminal]:
    """`Dc all round, 2 in each loop`: two there alone, or besides one on each stitch? It is
    asked."""
    found = list(t)
    behind = past(t, 1, "TOEND")
    prep = behind + 2 + (types(t, behind + 2, 1) == ["STITCH"] and t[behind + 2].name == t[0].name)
    parted = types(t, behind, 2) in (["SEP", "NUM"], ["AND", "NUM"])
    several = parted and t[behind + 1].number > 1 and types(t, prep, 1) == ["PREP"]
    each = types(t, prep + 1, 2) == ["EACH", "KIND"]
    if types(t, 0, 1) == ["STITCH"] and several and each:
        found[prep] = replace(t[prep], name=t[prep].name or ALL_ROUND)
    return found


def do_so(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc in loop, 5 ch, do so twice`: so often in all."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        counted = types(t, n + 1, 1) == ["TIMES"] or types(t, n + 1, 2) == ["NUM", "TIMES"]
        so = here.type == "REPEAT" and here.text in _SO and counted
        so = so and "INALL" not in types(t, n + 2, 2)
        if so and types(found, len(found) - 2, 2) == ["RP", "SEP"]:
            found.pop()
        elif so and types(found, len(found) - 1, 1) in (["SEP"], ["AND"]):
            found[-1] = like(found[-1], "SEP")
        if not so:
            found.append(here)
    return found


_SO = ("do so", "do this", "do thus")


EVERY_TIME = "every time"
"""The name of a `first` that each repeat begins with, the next one from the second on."""


def first_every_time(t: Sequence[Terminal]) -> list[Terminal]:
    """`* 1 dc in the first st, 5 ch, miss 3; repeat from *`, `(7 dc in each of the first 2 loops,
    repeat)`, `in the centre of the first loop`: in the place that a repeat at a row's head names
    first."""
    found = list(t)
    star = past(t, 0, "SEP", "ENDING")
    place = next((n for n in range(star, len(t)) if t[n].type in ("PREP", "REPEAT")), len(t))
    order = past(t, place + 1, "THE", "EACH", "EACHOF", "CENTRE", "OF")
    noun = past(t, order + 1, "NUM")
    first = opens_again(t, star) and types(t, order, 1) == ["ORD"]
    own = types(t, noun, 1) == ["CH"] and noun == order + 1  # `5 ch, 3 dc in first ch`
    if first and t[order].number == 1 and not own and types(t, noun, 1) != ["OF"]:
        found[order] = replace(t[order], name=EVERY_TIME)
    return found


def but_in_the_middle(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc in each st, making 3 dc in the middle st of each scallop`: `but 3 dc in …`, which is
    told as every exception is."""
    found = list(t)
    for n, here in enumerate(t):
        opens = here.type == "WITH" and n > 0 and t[n - 1].type == "SEP"
        if not opens or types(t, n + 1, 3) != ["NUM", "STITCH", "PREP"]:
            continue
        which = past(t, n + 4, "THE")
        of = next((m for m in range(which, len(t)) if t[m].type in ("OF", "SEP")), len(t))
        one_of = types(t, which, 1) in (["CENTRE"], ["ORD"]) and types(t, of, 1) == ["OF"]
        each = types(t, of + 1, 1) in (["EACH"], ["EVERY"])
        done = any(x.type in ("EACH", "EVERY", "TOEND") for x in t[:n])
        if one_of and each and done:
            found[n] = replace(here, type="BUT")
    return found
