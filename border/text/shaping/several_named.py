"""Several places named at a time: `in the 1st, 2nd and 3rd st`, `on the 2nd and 4th of 5 dc`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.terminals import Terminal
from border.text.wording.passing import (
    NOUNS,
    Terminals,
    chains_at,
    ended,
    like,
    past,
    types,
)


def counted_off(t: Terminals) -> Terminals:
    """`on the 1st, 2nd and 3rd stitches`: on the first 3."""
    found: Terminals = []
    at = 0
    while at < len(t):
        end, last = at, 0
        while end < len(t) and t[end].type == "ORD" and t[end].number == last + 1:
            last += 1
            end += 1
            goes_on = end
            while types(t, goes_on, 1) in (["SEP"], ["AND"], ["THE"]):
                goes_on += 1
            end = goes_on if types(t, goes_on, 1) == ["ORD"] else end
        opened = next((x.type for x in reversed(found) if x.type != "THE"), "")
        placed = opened == "PREP" and last > 1
        if placed and types(t, end, 1) in (["KIND"], ["STITCH"], ["CH"]):
            found += [t[at], like(t[at], "NUM", number=last)]
            at = end
            continue
        found.append(t[at])
        at += 1
    return found


def each_named(t: Terminals) -> Terminals:
    """`1 treble in the 4th and in the 5th stitch`, `in 2nd and 4th loops`, `on the 2nd and 4th of
    the 5 treble`: one in each of them."""
    found: Terminals = []
    at = 0
    while at < len(t):
        nth, noun = _nth_named(t, at + 1) if t[at].type == "PREP" else ([], at)
        one = types(found, len(found) - 1, 1) == ["STITCH"]
        number = found[-2].number if types(found, len(found) - 2, 2) == ["NUM", "STITCH"] else 1
        if len(nth) < 2 or not one or number not in (1, len(nth)):
            found.append(t[at])
            at += 1
            continue
        stitch, prep = found.pop(), t[at]
        if types(found, len(found) - 1, 1) == ["NUM"]:
            found.pop()
        end = next(n for n in range(noun + 1, len(t) + 1) if ended(t, n))
        between, behind = _chains_between(t, end)
        before = 0
        for order in nth:
            found += between if before else []
            found += [like(stitch, "NUM", number=1), stitch, prep]
            found += _one_of_them(order, before, t[noun:end])
            found.append(like(order, "SEP"))
            before = order.number
        found.pop()
        at = behind
    return found


def _chains_between(t: Terminals, at: int) -> tuple[Terminals, int]:
    """The chains of `, 3 chain between`, `with 3 chain between them`, and the place behind; none
    where none are said to stand there."""
    start = past(t, at, "SEP", "WITH")
    chains, end = chains_at(t, start)
    if not chains or types(t, end, 1) != ["BETWEEN"]:
        return [], at
    behind = past(t, end + 1, "EACH", "THEM", "STITCH")
    return ([*t[start:end], like(t[end], "SEP")], behind) if ended(t, behind) else ([], at)


def _one_of_them(order: Terminal, before: int, noun: Sequence[Terminal]) -> Terminals:
    """The nth loop, counted from behind the one worked before; the nth of these, or the same."""
    of = next((n for n, x in enumerate(noun) if x.type == "OF"), None)
    if of is not None:
        which = [like(order, "SAME")] if before else [x for x in noun[of:] if x.type in _SAYS_WHICH]
        whole = [x for x in noun[of + 1 :] if x.type not in _SAYS_WHICH]
        return [order, *noun[: of + 1], *which, *whole]
    steps = order.number - before
    which = [like(order, "NEXT") if before and steps == 1 else like(order, "ORD", number=steps)]
    return [*which, replace(noun[0], many=False)]


_SAYS_WHICH = frozenset({"THE", "NEXT"})


def _nth_named(t: Terminals, at: int) -> tuple[list[Terminal], int]:
    """The ordinals of `the 4th and in the 5th stitch`, each larger than the one before, and the
    place of the noun, or of `of the 5 treble`; none where it is no such place."""
    nth: list[Terminal] = []
    at = past(t, at, "THE")
    while types(t, at, 1) == ["ORD"] and _is_further(t[at], nth):
        nth.append(t[at])
        goes_on = past(t, at + 1, "SEP", "AND")
        again = types(t, goes_on, 1) == ["PREP"] and goes_on > at + 1
        goes_on = past(t, goes_on + again, "THE")
        at = goes_on if types(t, goes_on, 1) == ["ORD"] else at + 1
    of = past(t, at, *NOUNS)
    counted = past(t, of + 1, *_SAYS_WHICH) if types(t, of, 1) == ["OF"] else 0
    behind = past(t, counted + 1, "STITCH", "CH")
    of_several = counted and types(t, counted, 1) == ["NUM"] and behind <= counted + 2
    if of_several and ended(t, behind):
        return nth, at
    of_group = of == at + 1 and counted and types(t, counted, 1) == ["KIND"] and len(nth) > 1
    if of_group and ended(t, counted + 1):
        return nth, at
    first = [x.number for x in nth] == [*range(1, len(nth) + 1)]  # `1st, 2nd and 3rd`: first 3
    named = not first and types(t, at, 1) in (["KIND"], ["STITCH"], ["CH"]) and ended(t, at + 1)
    named = named and all(x.number > 0 for x in nth)
    return (nth, at) if named else ([], at)


def _is_further(order: Terminal, nth: Sequence[Terminal]) -> bool:
    """Whether an ordinal lies behind those before it, as the last does."""
    before = nth[-1].number if nth else 0
    return order.number > before >= 0 or (order.number == -1 and before > 0)
