"""Chains that stand once, between two steps: `3 treble in loop, 3 treble in the next, with 3 chain
between them`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

from border.text.terminals import Terminal
from border.text.wording.passing import Terminals, ended, like, past, types

_PARTS = frozenset({"SEP", "AND", "STAR", "LP", "ALTERNATELY"})


def between_steps(t: Terminals) -> Terminals:
    """`3 treble in loop, 3 chain between, 3 treble in the next`, `3 treble in loop, 3 treble in
    the next, with 3 chain between [them]`, or separated by them: they stand once, between the
    two."""
    found: Terminals = []
    at = 0
    while at < len(t):
        divided = t[at].type == "DIVIDED"
        with_ = at + (divided or t[at].type == "WITH")
        chains = sorted(types(t, with_, 2)) == ["CH", "NUM"]
        behind_chains = with_ + 2 + (not divided)
        between = divided or types(t, with_ + 2, 1) == ["BETWEEN"]
        end = past(t, behind_chains, "THEM") if between else at
        each = between and types(t, end, 2) == ["EACH", "NUM"]  # `1 chain between each 3`
        said = chains and end > at and ended(t, end + 2 * each)
        apart = not divided or "SAME" in types(found, len(found) - 3, 3)
        if said and apart and found and found[-1].type != "SEP" and _of_two(found):
            found.append(like(found[-1], "SEP"))  # `3 dc in loop, 3 dc in same with 3 ch between`
        starts = _like_steps(found) if said else []
        behind = past(t, end, "SEP", "AND")
        to_come = starts and not each and with_ == at
        if to_come and _same_step(found[starts[-1] :], t[behind:]):
            found += t[at : at + 2]  # the like of the last step is still to come
            at = end
            continue
        if len(starts) > 1 and (not each or t[end + 1].number == found[starts[0]].number):
            comma = found.pop()
            for start in reversed(starts[1:]):
                found[start - 1 : start - 1] = [comma, *t[with_ : with_ + 2]]
            at = end + 2 * each
            continue
        found.append(t[at])
        at += 1
    return found


def _last_steps(found: Sequence[Terminal]) -> Iterator[int]:
    """Where the steps begin of a list that ends in a comma, the last one first, as far back as
    only commas part them."""
    for n in range(len(found) - 2, -2, -1):
        if n < 0 or found[n].type in _PARTS:
            yield n + 1
            if n < 0 or found[n].text not in (",", "and", "then"):
                return


def _of_two(found: Sequence[Terminal]) -> bool:
    """Whether the last two steps make as many of the same, with nothing said yet of what stands
    between the stitches of either."""
    starts = _like_steps([*found, like(found[-1], "SEP")])
    between = (x for n in starts[:1] for x in found[n:] if x.type in ("WITH", "BETWEEN", "DIVIDED"))
    return len(starts) > 1 and not any(between)


def _like_steps(found: Sequence[Terminal]) -> list[int]:
    """Where the last steps begin of a list that ends in a comma, as far back as all of them make
    as many of the same stitch, each in its place."""
    starts: list[int] = []
    if types(found, len(found) - 1, 1) != ["SEP"]:
        return starts
    for start in _last_steps(found):
        if starts and not _same_step(found[start:], found[starts[0] :]):
            break
        starts.insert(0, start)
    return starts


def _same_step(one: Sequence[Terminal], other: Sequence[Terminal]) -> bool:
    """Whether both begin with as many of the same stitch in a place of their own, not in each."""

    def step(t: Sequence[Terminal]) -> tuple[object, ...]:
        one = types(t, 3, 1) not in (["EACH"], ["EACHOF"], ["EVERY"])
        placed = types(t, 0, 3) == ["NUM", "STITCH", "PREP"] and one
        return (t[0].number, t[1].name) if placed else ()

    return bool(step(one)) and step(one) == step(other)


def off_together(t: Terminals) -> Terminals:
    """`2 tr in loop, 2 tr in next loop, all worked off together`: which of them are is not sure,
    so that it is left to be asked."""
    found: Terminals = []
    for n, here in enumerate(t):
        all_ = here.type == "ALLTOGETHER" or (here.type == "TOGETHER" and here.text in _OFF)
        if all_ and n > 1 and _alike_before(found):
            here = like(here, "STRAY", name=SEVERAL)
        found.append(here)
    return found


SEVERAL = "several"
"""The name of an `all together` behind several steps."""
_OFF = ("cast off together", "worked off together", "drawn through together")


def _alike_before(found: Sequence[Terminal]) -> bool:
    """Whether the last two steps make the same stitch, each in a place of its own."""
    listed = found if found[-1].type == "SEP" else [*found, found[-1]]
    worked = (n for n in _last_steps(listed) if listed[n].type != "SKIP")
    steps = [listed[start:] for start in islice(worked, 2)]
    placed = all(types(step, 0, 3) == ["NUM", "STITCH", "PREP"] for step in steps)
    return placed and len(steps) == 2 and steps[0][1].name == steps[1][1].name
