"""What is missed, as books say it: `missing 3 under them`, `miss the chain and the treble`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import SPACES, Kind
from border.text.wording.passing import (
    HOW_OFTEN,
    NOUNS,
    OPENS,
    WHICH,
    Terminals,
    as_remark,
    behind_chains,
    chains_at,
    ended,
    is_last,
    like,
    only_ends,
    opens_before,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal

MADE = "made"
"""The name of a place that may be what the row itself has just made."""


OF_EACH = "of each"
"""The name of a miss that says no more than `in each`, unless what is there stands in groups."""


def under_chains(t: Terminals) -> Terminals:
    """`missing 3 under them`, `under which miss 3`: what lies over a skip says nothing more;
    under which `miss 2 treble and 1 chain` both are missed."""
    found: Terminals = []
    skipped = False
    at = 0
    while at < len(t):
        here = t[at]
        shape = types(t, at + 1, 5) if here.type == "SKIP" else []
        both = shape[:1] + shape[2:4] == ["NUM", "AND", "NUM"]
        said = both and "UNDERIT" in types(t, at - 1, 1) + types(t, at + 6, 1)
        if said and shape[1] in NOUNS and shape[4] in NOUNS:
            found += [*t[at : at + 3], like(here, "SEP"), here, *t[at + 4 : at + 6]]
            skipped = True
            at += 6
            continue
        if here.type == "UNDERIT" and (skipped or types(t, at + 1, 1) == ["SKIP"]):
            at += 1
            continue
        under = skipped and here.type == "PREP" and here.text in ("under", "beneath")
        chain = at + 1
        while under and types(t, chain, 1) in (["THE"], ["EACH"], ["NEXT"], ["ORD"]):
            chain += 1
        if under and chain > at + 1 and types(t, chain, 1) in (["CH"], ["KIND"]):
            if "STITCH" not in types(t, past(t, chain + 1, "NUM"), 1):
                at = chain + 1
                continue
            found.append(like(here, "SEP"))  # `miss 1 loop under next loop 1 dc`
        bare = under and ended(t, at + 1)  # `skip 4 stitches beneath`
        if bare:
            at += 1
            continue
        stitch = here.type == "UNDERIT" and types(found, len(found) - 1, 1) == ["STITCH"]
        if stitch and types(t, at + 1, 2) == ["NUM", "CH"]:  # `5 treble under these 5 chain`
            found += [like(here, "PREP", name=MADE), like(here, "THE")]
            at += 1
            continue
        if stitch:
            made = behind_chains(found)  # `4 ch, 4 tr under it`
            prep = like(here, "PREP", name=MADE if made else "")
            found += [prep, like(here, "SAME"), like(here, "PLACE")]
            at += 1  # `slip up to the first loop, 1 dc under it`
            continue
        if here.type == "UNDERIT":
            here = replace(here, type="STRAY")
        skipped = here.type == "SKIP" or (skipped and here.type in ("NUM", *NOUNS, "EACH", "THE"))
        found.append(here)
        at += 1
    return found


def under_first_chains(t: Terminals) -> Terminals:
    """`3 ch, miss the stitch below`, `3 ch for 1st tr, miss the dc under it` at the head of a row:
    the first, which the chains stand on."""
    skip = next((n for n, x in enumerate(t) if x.type == "SKIP"), 0)
    noun = past(t, skip + 1, "THE")
    below = t[noun + 1 : noun + 2] if types(t, noun, 1)[:1] in _MISSED else []
    under = bool(below) and (below[0].type == "UNDERIT" or below[0].text in _BELOW)
    made = [x.type for x in t[:skip] if x.type not in ("SEP", "ENDING", "WITH", "LP", "RP")]
    chained = sorted(made[:2]) == ["CH", "NUM"] and (
        not made[2:] or made[2] in ("AS", "EQUALS", "EXCEPT")
    )
    if noun == skip + 1 or not under or not chained or not ended(t, noun + 2):
        return t
    return [*t[: skip + 1], like(t[skip], "ORD", number=1), t[noun], *t[noun + 2 :]]


_BELOW = frozenset({"below", "under", "beneath", "underneath"})


def bare_chain_missed(t: Terminals) -> Terminals:
    """`miss chain`: the whole of it, as `miss the chain` is; `missing ch, dc and ch`: all three."""
    found: Terminals = []
    at = 0
    while at < len(t):
        found.append(t[at])
        at += 1
        if found[-1].type != "SKIP" or types(t, at, 1) != ["CH"] or not ended(t, at + 1):
            continue
        one = [x.number for x in t[max(0, at - 4) : at - 2] if x.type == "NUM"] == [1]
        if (one and "CH" in types(t, at - 4, 2)) or _each_chain(t):
            continue  # `1 ch, miss chain`
        names = [at]
        while types(t, names[-1] + 1, 1) in (["SEP"], ["AND"]) and not t[names[-1] + 1].name:
            last = names[-1] + 3
            if types(t, last - 1, 1) not in _MISSED or not (
                ended(t, last) or t[last].type == "AND"
            ):
                break
            names.append(names[-1] + 2)
        if len(names) > 1 and t[names[-1] - 1].type != "AND":
            del names[1:]
        skip = found.pop()
        for n in names:
            found += [skip, like(skip, "THE"), t[n], like(skip, "SEP")]
        found.pop()
        at = names[-1] + 1
    return found


def chain_missed_under(t: Terminals) -> Terminals:
    """`miss 1 chain, 3 tr under the next`: a loop of chains is missed, as one is worked under."""
    found = list(t)
    for n in range(len(t)):
        if types(t, n, 3) != ["SKIP", "NUM", "CH"] or t[n + 1].number != 1:
            continue
        place = next((m for m in range(n + 3, len(t)) if t[m].type in OPENS), len(t))
        next_ = past(t, place + 1, "THE")
        steps = [x.type for x in t[n + 3 : place]]
        under = types(t, place, 1) == ["PREP"] and t[place].text in ("under", "beneath")
        if under and types(t, next_, 1) == ["NEXT"] and ended(t, next_ + 1) and steps in _ONE_STEP:
            found[n + 2] = like(t[n + 2], "KIND", Kind("space"))
    return found


_ONE_STEP = (["SEP", "NUM", "STITCH"], ["SEP", "STITCH"])


def _each_chain(t: Terminals) -> bool:
    """Whether single chains are worked into: `1 dc in next ch`."""
    return any(types(t, n, 2) == ["NEXT", "CH"] for n in range(len(t)))


def chains_over(t: Terminals) -> Terminals:
    """`3 chain over the 3 treble`, `3 chain on 3 treble`, `3 chain over the treble`: chains lie
    over what is missed."""
    found: Terminals = []
    at = 0
    while at < len(t):
        over = at + 2 if types(t, at, 3) == ["NUM", "CH", "PREP"] else at
        many = past(t, over + 1, "THE", "NEXT")
        number = many if types(t, many, 1) == ["NUM"] else over
        stitch = number + 1 if number > over else many
        one = many > over + 1 or number > over or (stitch < len(t) and t[stitch].name == "sc")
        said = over > at and one and types(t, stitch, 1) in _MISSED and ended(t, stitch + 1)
        counted = t[number] if number > over else like(t[over - 1], "NUM", number=1)
        if said and _lies(t[at], t[over], counted, t[stitch].type, found):
            skipped = [like(t[over], "SKIP"), counted, t[stitch]]
            if t[stitch].type == "CH":  # `over the 3 chain` is over the space
                size = t[number].number if number > over else None
                space = like(t[stitch], "KIND", Kind("space", size))
                skipped = [skipped[0], like(t[over], "NUM", number=1), space]
            found += [*t[at:over], like(t[over], "SEP"), *skipped]
            at = stitch + 1
            continue
        found.append(t[at])
        at += 1
    return found


_MISSED = (["STITCH"], ["KIND"], ["CH"])


def _lies(chains: Terminal, over: Terminal, many: Terminal, noun: str, found: Terminals) -> bool:
    """Whether chains lie `over` stitches, or `on` as many; behind stitches without a place these
    may be meant to go there, too."""
    said = set(over.text.split())
    bare = types(found, len(found) - 2, 2) in (["STITCH", "SEP"], ["STITCH", "AND"])
    bare = bare and (len(found) < 3 or found[-3].type not in OPENS | WHICH)
    head = next((n + 1 for n in range(len(found) - 1, -1, -1) if found[n].type == "STAR"), 0)
    bare = bare and types(found, head, 1) != ["PREP"]  # `in loop 3 dc, 1 picot, 3 dc, 1 ch on dc`
    on = (
        chains.number == many.number
        and noun == "STITCH"
        and not said.isdisjoint({"on", "upon"})
        and not bare
    )
    return on or not said.isdisjoint({"over", "above"})


def missing_every(t: Terminals) -> Terminals:
    """`1 dc in every dc, missing every chain`, `missing the chain`: to go into each says that."""
    found: Terminals = []
    each = False
    arches = False
    # `1 dc in each dc with 1 ch between, miss the 3 ch`: perhaps of each group by itself
    parted = any(x.type in ("BETWEEN", "DIVIDED") for x in t)
    repeats = any(x.type == "REPEAT" for x in t)
    at = 0
    while at < len(t):
        opens = t[at].type in ("EACH", "EVERY")
        each = each or opens
        arches = arches or (opens and at + 1 < len(t) and _is_space(t[at + 1]))
        skips = types(t, at, 2) in (["SKIP", "EACH"], ["SKIP", "THE"])
        what = at + 2 + (skips and types(t, at + 2, 1) == ["NUM"])
        noun = t[what : what + 1] if each and skips else []
        said = bool(noun) and (t[at + 1].type == "EACH" or ended(t, what + 1))
        # `in every loop, missing the 3 chain`: these are loops as well
        said = said and not (arches and (noun[0].type == "CH" or _is_space(noun[0])))
        ends = repeats or only_ends(t[what + 1 :])
        if said and noun[0].type in NOUNS and parted and not arches and ends:
            again = [] if repeats else [like(noun[0], "SEP", name="hard"), like(noun[0], "REPEAT")]
            skip = [replace(t[at], name=OF_EACH), *t[at + 1 : what + 1]]
            t = [*t[:at], *skip, *again, *t[what + 1 :]]
            repeats = True
        elif said and noun[0].type in NOUNS:
            while found and found[-1].type == "SEP":
                found.pop()
            at = _behind_others(t, what + 1)
            continue
        found.append(t[at])
        at += 1
    return found


def _is_space(here: Terminal) -> bool:
    return here.kind is not None and here.kind.name in SPACES


def _behind_others(t: Terminals, at: int) -> int:
    """Behind `, and the treble`, which is missed as well as the chain before it."""
    while True:
        noun = past(t, at, "SEP", "AND", "THE")
        both = noun < len(t) and t[noun].type in NOUNS and t[noun - 1].type == "THE"
        if not both or not any(x.type == "AND" for x in t[at:noun]) or not ended(t, noun + 1):
            return at
        at = noun + 1


def missed_by_name(t: Terminals) -> Terminals:
    """`miss the chain and the treble`: the next space, and the next treble, both missed."""
    found: Terminals = []
    at = 0
    while at < len(t):
        found.append(t[at])
        at += 1
        if found[-1].type != "SKIP":
            continue
        skip = found[-1]
        if types(t, at, 4) == ["NUM", "CH", "OF", "NUM"] and ended(t, at + 4):
            space = like(t[at + 1], "KIND", Kind("space", t[at + 3].number))
            found += [t[at], replace(space, many=t[at].number > 1)]  # `miss 1 chain of 5`
            at += 4
            continue
        if types(t, at, 3) == ["NUM", "OF", "CH"]:  # `skip two of chain`
            found += [t[at], t[at + 2]]
            at += 3
        if types(t, at, 3) == ["NUM", "NUM", "CH"]:  # `skip 1 5-ch`, `miss 2 3 ch`
            found += [t[at], like(t[at + 2], "KIND", Kind("space", t[at + 1].number))]
            at += 3
            continue
        if _is_width(t, at):  # `miss the space of 3 stitches`
            at = at + 2 + (t[at].type == "THE")
        while types(t, at, 1) == ["THE"] and at + 1 < len(t) and t[at + 1].type in NOUNS:
            found += [t[at], _run(t[at + 1])]
            at += 2
            the = past(t, at, "AND", "SEP")
            joined = the > at and all(x.name != "hard" for x in t[at:the])
            noun = types(t, the + 1, 1)
            more = joined and types(t, the, 1) == ["THE"] and noun and noun[0] in NOUNS
            if not more or not (ended(t, the + 2) or types(t, the + 2, 1) == ["AND"]):
                break
            found += [like(t[at], "SEP"), skip]
            at = the
    return found


def _is_width(t: Terminals, at: int) -> bool:
    """Whether `[the] space of 3` stands here, that is no place but the room of so many."""
    at += types(t, at, 1) == ["THE"]
    space = types(t, at, 3) == ["KIND", "OF", "NUM"] and t[at].kind == Kind("space")
    return space and types(t, at + 3, 1) != ["CH"]


def _run(noun: Terminal) -> Terminal:
    """What is missed as `the chain` is all the chains there."""
    return like(noun, "KIND", Kind("space")) if noun.type == "CH" else noun


BETWEEN_TIMES = "between times"
"""The name of a miss that is said to lie between what is worked so often, with none behind it."""


def missed_among(t: Terminals) -> Terminals:
    """`4 treble, missing 1 stitch between each`: one, and three more, each behind one missed; `5
    treble with 1 chain between`, `1 treble in each of the next 5` likewise."""
    for n in range(len(t) - 1):
        if types(t, n, 2) != ["NUM", "STITCH"] or opens_before(t, n + 1):
            continue
        often, one, under, behind = _list_of(t, n)
        skip = past(t, behind, "SEP")
        said = _said_behind(t, skip)
        if not 1 < often <= _MOST or not said or t[said - 1].type == "NOTHING":
            continue
        if not ended(t, said):
            continue
        more = replace(like(t[n], "NUM"), number=often - 1)
        comma = like(more, "SEP")
        missed = t[skip : _missed_end(t, skip)]
        inside = [*under, *missed, comma, *one]
        bracket = [_mark(more, "LP", "("), *inside, _mark(more, "RP", ")")]
        return [*t[:n], *one, comma, *bracket, more, like(more, "TIMES"), *t[said:]]
    return t


_MOST = 20
"""So many stitches are told by what is missed between them."""


def _list_of(t: Terminals, at: int) -> tuple[int, Terminals, Terminals, int]:
    """How many stitches a step makes one after the other, one of them, the chains between two of
    them, and the place behind them all."""
    count, stitch = t[at : at + 2]
    one = [replace(count, number=1), stitch]
    chains, behind = chains_at(t, at + 3)
    if types(t, at + 2, 1) == ["WITH"] and chains and types(t, behind, 1) == ["BETWEEN"]:
        under = [*t[at + 3 : behind], like(stitch, "SEP")]
        return count.number, one, under, past(t, behind + 1, "EACH", "EVERY")
    which = past(t, at + 3, "EACHOF", "THE", "NEXT")
    each = any(x.type == "EACHOF" for x in t[at + 3 : which])
    placed = types(t, at + 2, 1) == ["PREP"] and types(t, which, 1) == ["NUM"]
    if placed and types(t, which + 1, 1) and t[which + 1].type in NOUNS:
        of = t[which].number
        if count.number == (1 if each else of):
            noun = replace(t[which + 1], many=False)
            return of, [*one, t[at + 2], like(t[which], "NEXT"), noun], [], which + 2
    return count.number, one, [], at + 2


def missed_each_time(t: Terminals) -> Terminals:
    """`*1 dc, 5 chain; repeat, missing 1 loop between`, `repeat from *, missing 2 each time`,
    `always missing 2`: missed at the end of each time, or under the chains that each begins with.
    Where it is said how often, and more is worked behind, `between` is not behind the last. What
    goes `in 2nd dc` each time is said to miss that one again."""
    for again, here in enumerate(t):
        if here.type not in ("REPEAT", "RP"):
            continue
        behind = past(t, again + 1, "FROM", "STAR", "TOEND", "NUM", *HOW_OFTEN)
        skip = past(t, behind, "SEP", "AND")
        always = _always(t, behind, skip)
        said = always or _said_behind(t, skip)
        counted = any(x.type in HOW_OFTEN for x in t[again:behind])
        begun = _begun(t, again)
        if not said or not ended(t, said) or (here.type == "RP" and not counted) or begun < 0:
            continue
        end = again - (types(t, again - 1, 1) == ["SEP"])
        steps, rest = t[begun:end], t[said:]
        missed = t[skip : _missed_end(t, skip)]
        comma = like(t[skip], "SEP")
        tail = t[end + (end < again) : behind]
        if _says_so(steps, missed):
            return [*t[:skip], as_remark(t[skip:said]), *rest]
        stop = [] if here.type == "RP" else [like(t[skip], "SEP", name="hard")]
        first = _behind_first_chains(steps)
        if first and any(x.type == "STITCH" for x in t[:begun]):
            steps = [*steps[:first], *missed, comma, *steps[first:]]
            return [*t[:begun], *steps, *stop, *tail, *rest]
        between = not always and any(x.type == "BETWEEN" for x in t[skip:said])
        if between and counted and not only_ends(rest) and any(x.type in _MADE for x in rest):
            if not _goes_to_last(rest):
                missed = [replace(missed[0], name=BETWEEN_TIMES), *missed[1:]]
            return _between_times(t[:begun], steps, [*missed, comma], [*stop, *tail], rest)
        return [*t[:begun], *steps, comma, *missed, *stop, *tail, *rest]
    return t


_MADE = frozenset({"STITCH", "CLUSTER", "SKIP"})


def _goes_to_last(rest: Terminals) -> bool:
    """Whether the first place that more steps name is the last one."""
    place = next((n for n, x in enumerate(rest) if x.type == "PREP"), len(rest))
    return is_last(rest, past(rest, place + 1, "THE"))


def _between_times(
    before: Terminals, steps: Terminals, missed: Terminals, often: Terminals, rest: Terminals
) -> Terminals:
    """What is worked so often, with what is missed between: with it once less, and once without."""
    comma = missed[-1]
    number = next(n for n, x in enumerate(often) if x.number)
    fewer = replace(often[number], number=often[number].number - 1)
    often = [*often[:number], fewer, *often[number + 1 :]]
    if fewer.number < 1:
        before = before[:-1] if types(before, len(before) - 1, 1) == ["STAR"] else before
        before = [*before, _mark(comma, "LP", "(")]
        often = [_mark(comma, "RP", ")"), like(comma, "NUM", number=1), like(comma, "TIMES")]
    rest = rest[1:] if types(rest, 0, 1) == ["SEP"] else rest
    again = [comma, *steps, like(comma, "SEP", name="hard")]
    return [*before, *steps, comma, *missed[:-1], *often, *again, *rest]


def _begun(t: Terminals, again: int) -> int:
    """Where what a repeat or a closed bracket goes back to begins; -1 where that is not plain."""
    if t[again].type == "RP":
        opened = [n for n in range(again) if t[n].type in ("LP", "RP")]
        return opened[-1] + 1 if opened and t[opened[-1]].type == "LP" else -1
    stars = [
        n for n in range(1, again + 1) if t[n - 1].type == "STAR" and types(t, n - 2, 1) != ["FROM"]
    ]
    return stars[-1] if stars else past(t, 0, "SEP", "ENDING")


def _behind_first_chains(steps: Terminals) -> int:
    """Behind the chains that some steps begin with, where a stitch comes next; else 0."""
    chains, behind = chains_at(steps, 0)
    step = past(steps, behind, "SEP", "AND")
    return step if chains and types(steps, step, 2) == ["NUM", "STITCH"] else 0


def _says_so(steps: Terminals, missed: Terminals) -> bool:
    """Whether the first place of some steps is `the 2nd dc`, where 1 is missed."""
    place = next((n for n, x in enumerate(steps) if x.type == "PREP"), len(steps))
    order = past(steps, place + 1, "THE", "NEXT")
    many = next((x.number for x in missed if x.type == "NUM"), 0)
    return types(steps, order, 1) == ["ORD"] and steps[order].number == many + 1 > 1


def _missed_end(t: Terminals, skip: int) -> int:
    return past(t, skip + 1, "NUM", "THE", "KIND", "STITCH", "CH")


def _said_behind(t: Terminals, skip: int) -> int:
    """The place behind `missing 1 between each [dc]`, `missing 2 each time`, or 0."""
    end = _missed_end(t, skip)
    if types(t, skip, 1) != ["SKIP"] or end == skip + 1:
        return 0
    if types(t, end, 1) == ["BETWEEN"]:
        each = past(t, end + 1, "EACH", "EVERY", "THEM", "NOTHING")
        return each + (each > end + 1 and types(t, each, 1) in (["STITCH"], ["KIND"]))
    return end + 1 if end < len(t) and t[end].text in _EACH_TIME else 0


_EACH_TIME = frozenset({"each time", "every time"})


def _always(t: Terminals, behind: int, skip: int) -> int:
    """The place behind `always missing 2`, `the dc between the two tr`; 0 if that is not here."""
    end = _missed_end(t, skip)
    if types(t, end, 1) == ["BETWEEN"]:
        end = past(t, end + 1, "THE", "NEXT", "EACH", "EVERY", "NUM", "STITCH", "KIND")
    always = any(x.text == "always" for x in t[behind:skip])
    return end if always and types(t, skip, 1) == ["SKIP"] and end > skip + 1 else 0


def _mark(here: Terminal, type_: str, text: str) -> Terminal:
    return replace(like(here, type_), text=text)
