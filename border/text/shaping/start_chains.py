"""Chains at a row's head that say what they stand for: `ch 5 (= 1 dc and 2 ch)`."""

from __future__ import annotations

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.terminals import Terminal
from border.text.wording.passing import (
    NOUNS,
    chains_at,
    ended,
    like,
    only_ends,
    past,
    types,
)


def start_chain_brackets(terminals: list[Terminal]) -> list[Terminal]:
    """`ch 3 (counts as dc)`, `ch 5 (= 1 dc and 2 ch)` without its brackets."""
    terminals = [replace(t, type="AS") if t.type == "EQUALS" else t for t in terminals]
    terminals = _first_missed(_standing_for(terminals))
    found = list(terminals)
    for n, terminal in enumerate(terminals[:-1]):
        if terminal.type != "LP" or terminals[n + 1].type not in ("AS", "NOTCOUNTED"):
            continue
        end = next((i for i in range(n, len(terminals)) if terminals[i].type == "RP"), None)
        if end is not None and end - n <= 8:
            found[n] = replace(terminal, type="DROP")
            found[end] = replace(terminals[end], type="DROP")
    return [t for t in found if t.type != "DROP"]


def _standing_for(t: list[Terminal]) -> list[Terminal]:
    """`ch 5 (1 dc, 2 ch)`, `ch 3 (1 dc)` at the head of a row: as `ch 5 (as 1 dc and 2 ch)`."""
    head = past(t, 0, "SEP")
    begun = types(t, head, 4) == ["BEGIN", "PREP", "NEXT", "KIND"]
    head = past(t, head + 4, "SEP") if begun else head
    bracket = head + 2
    if sorted(types(t, head, 2)) != ["CH", "NUM"] or types(t, bracket, 1) != ["LP"]:
        return t
    inside = [x for x in t[bracket + 1 : bracket + 8] if x.type not in ("SEP", "AND")]
    end = next((n for n, x in enumerate(inside) if x.type == "RP"), 0)
    one = types(inside, 0, 2) == ["NUM", "STITCH"] and inside[0].number == 1
    stitch = inside[one] if end else t[bracket]
    chains = inside[1 + one : end]
    if stitch.type != "STITCH" or sorted(x.type for x in chains) not in ([], ["CH", "NUM"]):
        return t
    plus = [like(stitch, "AND"), *chains] if chains else []
    opened = [t[bracket], like(t[bracket], "AS"), like(stitch, "NUM", number=1), stitch, *plus]
    behind = next(n for n in range(bracket, len(t)) if t[n].type == "RP")
    return [*t[:bracket], *opened, *t[behind:]]


def _first_missed(t: list[Terminal]) -> list[Terminal]:
    """`3 chain, miss the first dc, 5 dc` at the head of a row: the chains stand for that one, as
    they do in `3 chain for 1st dc, miss the first`; they do for no space, `6 chain, miss the first
    space`."""
    head = past(t, 0, "SEP", "ENDING")
    chains = head + 2
    stands = _behind_what_they_are(t, chains)
    turn = past(t, stands, "SEP", "AND")
    turns = turn < len(t) and t[turn].name == "turn"  # `3 chain, turn, miss the first dc`
    skip = past(t, turn + turns, "SEP", "AND")
    order = past(t, skip + 1, "THE")
    chained = sorted(types(t, head, 2)) == ["CH", "NUM"] and types(t, skip, 1) == ["SKIP"]
    if not chained or types(t, order, 1) != ["ORD"] or t[order].number != 1:
        return t
    if types(t, order + 1, 1) == ["NUM"] and t[order + 1].number > 1:
        ones = replace(t[order + 1], name=FIRST_ONES)
        return [*t[:order], ones, *t[order + 2 :]]  # `miss the first 2 st`
    end = order + 1 + (order + 1 < len(t) and t[order + 1].type in NOUNS)
    kind = t[end - 1].kind
    if kind is not None and kind.name == "space":
        return [*t[:order], like(t[order], "NUM", number=1), *t[order + 1 :]]
    if not ended(t, end):
        return t
    if stands > chains:
        return [*t[:skip], *t[end:]]
    stitch = next((x for x in t[end:] if x.type == "STITCH"), None)
    count = sum(x.number for x in t[head:chains])
    more = count - STITCHES[stitch.name].height if stitch is not None else -1
    if stitch is None or more < 0 or count - more < 2:
        return t
    chain = next(x for x in t[head:chains] if x.type == "CH")
    rest = [like(stitch, "AND"), like(stitch, "NUM", number=more), chain] if more else []
    said = [like(t[skip], "AS"), like(t[skip], "NUM", number=1), stitch, *rest]
    return [*t[:chains], *said, *t[chains:skip], *t[end:]]


FIRST_ONES = "first ones"
"""The name of a number of stitches that are missed behind first chains: `miss the first 2`."""


def _behind_what_they_are(t: list[Terminal], at: int) -> int:
    """Behind `for 1st dc`, `, which counts as 1 dc`, `(= 1 dc and 2 ch)`; the same place where no
    such words stand there."""
    opens = past(t, at, "SEP")
    bracket = types(t, opens, 1) == ["LP"]
    said = opens + bracket
    stitch = past(t, said + 1, "NUM", "ORD", "THE")
    if types(t, said, 1) != ["AS"] or types(t, stitch, 1) != ["STITCH"]:
        return at
    end = stitch + 1
    if types(t, end, 1) in (["AND"], ["SEP"]) and chains_at(t, end + 1)[0]:
        end += 3
    if not bracket:
        return end
    return end + 1 if types(t, end, 1) == ["RP"] else at


def _of_first_and_chain(
    terminals: list[Terminal], at: int, words: list[Terminal]
) -> list[Terminal]:
    """`4 chain for the first long and the chain`: as `4 chain as 1 long and 1 chain`."""
    stitch, chain = words[4], words[6]
    count = words[0].number + words[1].number - STITCHES[stitch.name].height
    end = next(i for i in range(at, len(terminals)) if terminals[i] is chain) + 1
    if words[3].number != 1 or count < 1:
        return terminals
    plus = [words[5], replace(chain, type="NUM", number=count), chain]
    return [*terminals[:at], *words[:3], stitch, *plus, *terminals[end:]]


def _without_standing(t: list[Terminal]) -> list[Terminal]:
    """`1 sl on the third of the 3 ch counting as first dc`: what they stand for is said."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        before = [x.type for x in found[-10:] if x.type not in ("SEP", "THE")]
        stitch = past(t, at + 1, "NUM", "ORD", "THE")
        closes = before[-3:] == ["OF", "NUM", "CH"] or before[-4:-2] == ["OF", "ORD"]
        said = t[at].type == "AS" and closes and types(t, stitch, 1) == ["STITCH"]
        if said and only_ends(t[stitch + 1 :]):
            at = stitch + 1
            continue
        found.append(t[at])
        at += 1
    return found


def _said_in_full(t: list[Terminal]) -> list[Terminal]:
    """`6 chain (the first 3 form 1 treble)`, `6 chain, 3 of which form the first treble`: as `6
    chain, the first 3 of which form 1 treble`."""
    for n in range(len(t)):
        chains, end = chains_at(t, n)
        opens = past(t, end, "SEP", "LP") if chains else n
        bracket = opens > n and t[opens - 1].type == "LP"
        order = past(t, opens, "THE")
        first = types(t, order, 1) == ["ORD"] and t[order].number == 1
        number = order + first
        of = types(t, number + 1, 1) == ["OF"]
        as_ = number + 1 + of
        stitch = past(t, as_ + 1, "THE", "NUM", "ORD")
        said = types(t, number, 1) == ["NUM"] and types(t, as_, 1) == ["AS"]
        closed = types(t, stitch + 1, 1) == ["RP"] if bracket else first != of
        if not (chains and said and closed and (first or of) and opens > end):
            continue
        if types(t, stitch, 1) != ["STITCH"] or t[number].number > chains:
            continue
        here = t[number]
        which = [like(here, "SEP"), like(here, "ORD", number=1), here, like(here, "OF")]
        return [*t[:end], *which, t[as_], t[stitch], *t[stitch + 1 + bracket :]]
    return t


def first_of_which(terminals: list[Terminal]) -> list[Terminal]:
    """`6 chain, the first 3 of which form 1 treble`, `6 chain (the first 3 form 1 treble)`: as `6
    chain as 1 treble and 3 chain`."""
    terminals = _said_in_full(_without_standing(terminals))
    for n in range(len(terminals)):
        words = [t for t in terminals[n : n + 12] if t.type not in ("SEP", "THE")]
        kinds = [t.type for t in words]
        if sorted(kinds[:2]) == ["CH", "NUM"] and kinds[2:7] == [
            "AS",
            "ORD",
            "STITCH",
            "AND",
            "CH",
        ]:
            return _of_first_and_chain(terminals, n, words)
        if sorted(kinds[:2]) != ["CH", "NUM"] or kinds[2:6] != ["ORD", "NUM", "OF", "AS"]:
            continue
        stitch = next((t for t in words[6:9] if t.type not in ("NUM", "ORD")), None)
        if stitch is None or stitch.type != "STITCH" or words[2].number != 1:
            continue
        more = sum(t.number for t in words[:2]) - words[3].number
        chain = next(t for t in words[:2] if t.type == "CH")
        number = replace(words[3], number=more)
        plus = [replace(words[4], type="AND"), number, chain] if more > 0 else []
        end = next(i for i in range(n, len(terminals)) if terminals[i] is stitch) + 1
        return [*terminals[:n], *words[:2], words[5], stitch, *plus, *terminals[end:]]
    return terminals
