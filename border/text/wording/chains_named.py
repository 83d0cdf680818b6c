"""How chains are named: `a chain of 5`, `ch 5`, `the end chain`, `the 3 ch before the dc`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import ST, Kind
from border.text.wording.passing import (
    NAMED_BEHIND,
    chains_at,
    ended,
    like,
    only_ends,
    opener,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def of_end_chain(t: Sequence[Terminal]) -> list[Terminal]:
    """`miss 2 of the end chain`, `in next st of end ch`, `on the next of the turning chain`: so
    many of its chains, or the next."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        chain = past(t, at + 1, "THE", "ORD", "NUM", "STRAY")
        ends = types(t, at, 1) == ["OF"] and types(t, chain, 1) == ["CH"] and chain > at + 1
        last = ends and any(x.type == "ORD" and x.number == -1 for x in t[at + 1 : chain])
        skips = last and types(found, len(found) - 2, 2) == ["SKIP", "NUM"]
        st = last and types(found, len(found) - 2, 2) == ["NEXT", "KIND"] and found[-1].kind == ST
        bare = ends and types(found, len(found) - 1, 1) == ["NEXT"]
        if skips or st or bare:
            found[-st or len(found) :] = [t[chain]]
            at = chain + 1
            continue
        found.append(t[at])
        at += 1
    return found


def loops_of_chain(t: Sequence[Terminal]) -> list[Terminal]:
    """`the next loop of 5 chain`, `loops of 5`: of chains, where a heading has said that a loop by
    itself is a stitch; so is `the next loop` behind it, which is told."""
    found = list(t)
    of_chains = False
    for n, here in enumerate(t):
        again = here.kind == ST and here.text in _LOOPS and types(t, n + 1, 1) != ["OF"]
        if of_chains and again and t[n - 1].type in ("NEXT", "SAME"):
            found[n] = replace(here, kind=Kind("space"))
            at = opener(t, n)
            if t[at].type == "PREP" and t[n - 1].type == "NEXT":
                found[at] = replace(t[at], name=t[at].name or LOOP_AGAIN)
        if here.kind == ST and here.text in _LOOPS and types(t, n + 1, 1) == ["OF"]:
            size, _ = chains_at(t, n + 2)
            of = types(t, n + 2, 1)
            five = of == ["NUM"] and ended(t, n + 3) and t[n + 2].number > 1
            if size or five or (of == ["CH"] and ended(t, n + 3)):
                found[n] = replace(here, kind=Kind("loop"))
                of_chains = True
    return found


LOOP_AGAIN = "loop again"
"""The name of a place in a loop of chains, where a heading has said that a loop is a stitch."""
_LOOPS = ("loop", "loops", "lp", "lps")


def chains_of(t: Sequence[Terminal]) -> list[Terminal]:
    """`a chain of 5`, `with ch 5 between`: as `5 chain`, wherever they are made or named."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        first = types(t, at, 4) == ["CH", "NUM", "OF", "NUM"] and types(found, len(found) - 1, 1)
        if first == ["SKIP"]:  # `miss ch 1 of 5`
            t = [*t[:at], t[at + 1], t[at], *t[at + 2 :]]
        if types(t, at, 2) == ["CH", "NUM"] and _is_chain_first(found, t, at):
            place = found[-1:] != [] and found[-1].type in _PLACES
            place = place and types(t, at + 2, 1) != ["OF"]
            number, whole = t[at + 1].number, replace(t[at], end=t[at + 1].end)
            if place:
                found.append(replace(whole, type="KIND", kind=Kind("space", number)))
            else:
                found += [t[at + 1], whole]  # `(2 dc, ch 3)` is still no count
            at += 2
            continue
        each = found[-1:] != [] and found[-1].type in ("EACH", "EVERY")
        if each and types(t, at, 3) == ["CH", "OF", "NUM"] and types(t, at + 3, 1) not in _COUNTED:
            kind = Kind("space", t[at + 2].number)  # `over each ch of 6`
            found.append(replace(t[at], type="KIND", end=t[at + 2].end, kind=kind))
            at += 3
            continue
        one = types(t, at, 4) == ["NUM", "CH", "OF", "NUM"] and t[at].number == 1
        if one and not t[at + 1].many and types(t, at + 4, 1) not in _COUNTED:
            chain = replace(t[at + 1], start=t[at].start, end=t[at + 3].end)
            if types(found, len(found) - 1, 1) == ["SKIP"]:  # `miss 1 chain of 5`: the loop
                space = replace(chain, type="KIND", kind=Kind("space", t[at + 3].number))
                found += [t[at], replace(space, start=t[at + 1].start)]
                at += 4
                continue
            found += [replace(t[at + 3], start=t[at].start), chain]
            at += 4
            continue
        found.append(t[at])
        at += 1
    return found


_PLACES = frozenset({"THE", "NEXT", "EACH", "EVERY", "SAME", "ORD"})


def _is_chain_first(found: Sequence[Terminal], t: Sequence[Terminal], at: int) -> bool:
    """Whether `ch 3` stands here, and its number counts nothing behind it: `ch 3 spaces`."""
    counts = types(t, at + 2, 1) in (*_COUNTED, ["MORE"], ["INALL"], ["ORD"], ["AS"])
    part = types(found, len(found) - 2, 2) == ["OF", "THE"]  # `in the 3rd ch of the ch-3`
    named = types(found, len(found) - 2, 2) == ["PICOT", "OF"]
    goes_on = types(t, at + 2, 1) in (["OF"], ["PREP"])
    named |= found[-1:] != [] and found[-1].type == "PREP" and goes_on
    said = types(found, len(found) - 1, 1) in _SAID_ALREADY and not named
    return not (counts or part or said)


_SAID_ALREADY = (["NUM"], ["PREP"], ["OF"], ["PICOT"])


_COUNTED = (["STITCH"], ["KIND"], ["CH"], ["PICOT"], ["CLUSTER"], ["FOUNDATION"], ["TIMES"])
"""What a number behind `of` counts where it is not the chains."""


def end_ones(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`in 3rd ch of end loop`, `miss 2 of the end chain`, `in the end loop`: the last one; `in end
    of the 5 ch`, where the row goes on: their last."""
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        chains, behind = chains_at(terminals, n + 1) if here.type == "ENDST" else (0, n)
        inside = here.text.endswith(("of", "of the")) and not only_ends(terminals[behind:])
        if chains > 1 and inside:
            found += [replace(like(here, "PREP"), text="in"), like(here, "ORD", number=-1)]
            found += [like(here, "OF"), like(here, "THE")]
            continue
        in_end = here.type == "ENDST" and here.text.split()[-1] == "end"
        if in_end and types(terminals, n + 1, 1)[:1] in _ONE:
            found.append(replace(like(here, "PREP"), text=here.text.split()[0]))
            found.append(like(here, "ORD", number=-1))
            continue
        named = n > 0 and terminals[n - 1].type in NAMED_BEHIND
        if here.text == "end" and named and types(terminals, n + 1, 1)[:1] in _ONE:
            here = replace(here, type="ORD", number=-1)
        found.append(here)
    return found


_ONE = (["KIND"], ["CH"], ["STITCH"])


def before_stitches(t: Sequence[Terminal]) -> list[Terminal]:
    """`under the 3 chain before the 3 dc`: said of where these chains are, as `after` is."""
    found = list(t)
    for n, here in enumerate(t):
        chains = types(t, n - 2, 2) == ["NUM", "CH"] and types(t, n - 3, 1)[:1] in (
            ["PREP"],
            ["THE"],
        )
        kind = t[n - 1].kind if n else None
        chains |= kind is not None and kind.name == "space"
        noun = past(t, n + 1, "THE", "NUM")
        if here.text == "before" and chains and noun > n + 1 and types(t, noun, 1) == ["STITCH"]:
            found[n] = replace(here, type="AFTER")
    return found


def round_loops(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the round loop`: in the ring; `in the round` is else `in all`."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        ring = n + 1 < len(t) and t[n + 1].text in ("loop", "ring")
        if here.type == "INALL" and here.text == "in the round" and ring:
            found += [like(here, "PREP"), like(here, "THE")]
        elif found and found[-1].type == "THE" and t[n - 1].type == "INALL":
            found.append(replace(like(here, "STRAY"), text="ring"))
        else:
            found.append(here)
    return found


def slips_along(t: Sequence[Terminal]) -> list[Terminal]:
    """`Slip stitch along 2 chain`, `up 3 of the chain`: one in each of the next so many; `slip on 3
    of the first 7 chain`, in each of the first 3 of them."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        bare = types(found, len(found) - 1, 1) not in (["NUM"], ["WITH"])
        slips = t[at].name == "ss" and bare and at + 2 < len(t)
        along = slips and t[at + 1].text in _ALONG
        if slips and (end := _behind_some_of(t, at + 1)) > at:
            here, chains = t[at + 1], t[end - 2 : end]
            found += [t[at], replace(like(here, "PREP"), text="in"), like(here, "EACHOF")]
            found += [like(here, "ORD", number=1), t[past(t, at + 2, "THE")], chains[1]]
            found += [like(here, "OF"), like(here, "NEXT"), *chains]
            at = end
            continue
        number = past(t, at + 2, "THE") if along else len(t)
        chain = number + 1
        if types(t, number, 2) == ["NUM", "OF"]:
            chain = past(t, number + 2, "THE", "NUM")
        if types(t, number, 1) == ["NUM"] and types(t, chain, 1) == ["CH"] and ended(t, chain + 1):
            here = t[at + 1]
            found += [t[at], replace(like(here, "PREP"), text="in")]
            found += [like(here, "EACHOF"), like(here, "NEXT"), t[number], t[chain]]
            at = chain + 1
            continue
        found.append(t[at])
        at += 1
    return found


def _behind_some_of(t: Sequence[Terminal], at: int) -> int:
    """The place behind `on 3 of the first 7 chain`; 0 where it does not stand here."""
    number = past(t, at + 1, "THE")
    whole = past(t, number + 2, "THE", "NEXT", "ORD")
    counted = types(t, number, 2) == ["NUM", "OF"] and types(t, whole, 2) == ["NUM", "CH"]
    orders = [x.number for x in t[number + 2 : whole] if x.type == "ORD"]
    on = t[at].text in _ALONG or t[at].text in ("on", "over", "upon", "in")
    some = counted and on and orders in ([], [1]) and 1 < t[number].number < t[whole].number
    return whole + 2 if some and ended(t, whole + 2) else 0


_ALONG = frozenset({"along", "up", "up along", "along up"})
