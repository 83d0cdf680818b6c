"""What the last repeat makes instead, or leaves out: `7 ch (the last time 9 ch)`, `omitting the
last sc`.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import (
    ARCHES,
    Terminals,
    chains_at,
    ended,
    is_last,
    like,
    past,
    stitch_left_out,
    types,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

    from border.text.terminals import Terminal


_OMITS = frozenset(
    {"omit", "omitting", "omitted", "leave", "leaving", "not", "except", "excepting"}
)
_PARTS = frozenset({"SEP", "AND"})
LAST_TIME = "the last time"
"""The words by which such an end is told."""
_NAMED = frozenset({"NUM", "CH", "STITCH", "PICOT"})
_AROUND = frozenset({"SEP", "AND", "LP", "RP", "THE", "WITH", "BUT"})
_LEAVES = frozenset({"omit", "omitting", "leave", "leaving"})
_CHAINS = 2
"""Chains, with their number, are so many words."""


def last_time(t: Terminals) -> Terminals:
    """`7 ch (the last time 9 ch); repeat from *`, `repeat from *, with 9 ch the last time`: `7 ch;
    repeat from *, the last time 9 ch`. `7 ch (omitted the last time); repeat`: `7 ch; repeat,
    omitting the last 7 ch`."""
    at = next((n for n in range(len(t)) if _behind_time(t, n) > n), len(t))
    again = ("REPEAT", "SOON")
    repeat = max((n for n, x in enumerate(t) if x.type in again and _is_own(t, n)), default=0)
    if at == len(t):
        return t
    start, end = _clause(t, at)
    moved = _behind_repeat(t, at, (start, end), repeat) if repeat else None
    if moved is not None:
        return moved
    before = [x.type for x in t[: at + 1]]
    inside = at < repeat or before.count("LP") > before.count("RP")
    if not inside or t[at].type != "ENDWITH":
        return t
    return [*t[:at], replace(t[at], type="EXCEPT"), *t[at + 1 :]]


def _behind_repeat(
    t: Terminals, at: int, clause: tuple[int, int], repeat: int
) -> list[Terminal] | None:
    """The words with such a clause behind their repeat, where it can be told what it says."""
    start, end = clause
    within = [*t[start:at], *t[_behind_time(t, at) : end]]
    said = [x for x in within if x.type not in _AROUND]
    named = [x for x in said if x.type in _NAMED]
    rest = [*t[:start], *t[end:]]
    repeat -= (end - start) if repeat > start else 0
    if any(_is_omission(x) for x in said):
        what = [replace(like(t[at], "EXCEPT"), text="omitting the"), like(t[at], "ORD", number=-1)]
        more = len(named) + 1 < len(said)
        named = named or _step_before(t, start)
        if more or not _one_step(named):
            return None
    else:
        what = [replace(like(t[at], "ENDWITH"), text=LAST_TIME)]
        if not _chains_only(said) and t[start].type == "LP" and at == start + 1:
            named = within[1:-1]  # `(the last time 3 ch, 1 dc in first sc)`
        elif not _chains_only(said) or not _alone(rest, start, repeat):
            return None
    behind = next((n for n in range(repeat, len(rest)) if rest[n].type in _PARTS), len(rest))
    return [*rest[:behind], like(t[at], "SEP"), *what, *named, *rest[behind:]]


def _behind_time(t: Sequence[Terminal], at: int) -> int:
    """Behind `the last time`, `in the last repeat`; the same place where neither stands here."""
    if t[at].type == "ENDWITH":
        return at + t[at].text.startswith(LAST_TIME)
    order = past(t, at, "PREP", "THE")
    time = types(t, order + 1, 1)
    last = is_last(t, order) and (time == ["TIMES"] or (time == ["REPEAT"] and order > at))
    return order + 2 if last else at


def _is_own(t: Sequence[Terminal], at: int) -> bool:
    """Whether `repeat` bids to repeat: not in `in the last repeat`."""
    return not (at and is_last(t, at - 1))


def _is_omission(here: Terminal) -> bool:
    return here.type in ("EXCEPT", "SKIP", "UNKNOWN") and here.text.split(" ")[0] in _OMITS


def _clause(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """The stretch of words in which `the last time` stands: a bracket, or from stop to stop."""
    brackets = ("LP", "RP")
    opens = max((n for n in range(at) if t[n].type in brackets), default=at)
    closes = next((n for n in range(at, len(t)) if t[n].type in brackets), at)
    own = any(t[n].type == "REPEAT" and _is_own(t, n) for n in range(opens, closes))
    if types(t, opens, 1) == ["LP"] and types(t, closes, 1) == ["RP"] and not own:
        return opens, closes + 1
    start = at
    while start and t[start - 1].type not in (*_PARTS, "LP", "RP", "STAR", "REPEAT", "FROM"):
        start -= 1
    end = at + 1
    while end < len(t) and t[end].type not in (*_PARTS, "RP", "LP"):
        if t[end].type == "REPEAT" and _is_own(t, end):
            break
        end += 1
    return start - (start > 0 and t[start - 1].type in _PARTS), end


def _step_before(t: Sequence[Terminal], end: int) -> list[Terminal]:
    """The step right before a bracket that says when it is left out."""
    start = end
    while start and t[start - 1].type in _NAMED:
        start -= 1
    return list(t[start:end])


def _chains_only(named: Sequence[Terminal]) -> bool:
    return len(named) == _CHAINS and chains_at(named, 0)[0] > 0


def _one_step(named: Sequence[Terminal]) -> bool:
    """Whether words are `7 ch`, `the picot`, `1 sc`, and no more."""
    return sorted(x.type == "NUM" for x in named) in ([False], [False, True])


def _alone(t: Sequence[Terminal], start: int, repeat: int) -> bool:
    """Whether what the last time has otherwise is the end of the row, or before its repeat."""
    if start <= repeat:
        return True
    end = next((n for n in range(start, len(t)) if t[n].type == "ENDING"), len(t))
    return all(x.type in _PARTS for x in t[start:end])


def last_chain_omitted(t: Terminals) -> Terminals:
    """`1 tr, 1 ch over each of the 6 tr, omitting the last ch`: with 1 ch between them."""
    for n in range(len(t)):
        chains, place = chains_at(t, n + 3)
        step = types(t, n, 3) == ["NUM", "STITCH", "SEP"] and not t[n + 2].name and chains
        if not step or types(t, place, 1) != ["PREP"]:
            continue
        omits = next((m for m in range(place, len(t)) if t[m].type in ("EXCEPT", "SKIP")), len(t))
        end = omits - (types(t, omits - 1, 1) == ["SEP"])
        each = types(t, place + 1, 1) in (["EACH"], ["EACHOF"]) and "SEP" not in types(
            t, place, end - place
        )
        order = past(t, omits + 1, "THE")
        last = omits < len(t) and t[omits].text.split(" ")[0] in _LEAVES
        last = last and (is_last(t, order) or "last" in t[omits].text)
        noun = order + is_last(t, order)
        behind = past(t, noun, "NUM", "CH")
        if each and last and "CH" in types(t, noun, behind - noun) and ended(t, behind):
            between = [like(t[n + 2], "WITH"), *t[n + 3 : place], like(t[n + 2], "BETWEEN")]
            return [*t[: n + 2], *t[place:end], *between, *t[behind:]]
    return t


def last_omitted(t: Terminals) -> Terminals:
    """`*1 dc in next loop, 7 ch; repeat from *, omitting the last 7 ch`: `*…; repeat from * to last
    loop, 1 dc in next loop`; what is counted is repeated once less."""
    at = next((n for n in range(1, len(t)) if _omits_last(t, n)), 0)
    repeat = max((n for n in range(at) if t[n].type == "REPEAT"), default=0)
    star = max((n for n in range(repeat) if t[n].type == "STAR"), default=-1)
    if star < 0 or types(t, repeat + 1, 2) != ["FROM", "STAR"]:
        return t
    order = past(t, at + 1, "THE")
    noun = past(t, order + is_last(t, order), "THE")
    end = past(t, noun, *_NAMED)
    what = t[noun:end]
    end = past(t, end, "ATEND")
    steps = _steps(t[star + 1 : repeat])
    left = max((n for n, step in enumerate(steps) if _is_step(step, what)), default=-1)
    if not _one_step(what) or left < 0 or not (end == len(t) or t[end].type in _PARTS):
        return t
    more = next(iter(_steps(t[end:])), [])
    if more and more[0].type in ("NUM", "CH") and all(x.type != "PREP" for x in more):
        return t  # `omitting the last 5 ch and 1 dc`: both?
    steps = steps[:left] + steps[left + 1 :]
    tail_end = next((n for n in range(end, len(t)) if t[n].type == "ENDING"), len(t))
    before = at
    while t[before - 1].type in (*_PARTS, "BUT"):
        before -= 1
    often = t[repeat + 3 : before]
    comma = like(t[at], "SEP")
    again = [word for step in steps for word in (comma, *step)]
    if types(often, 0, 3) == ["NUM", "TIMES"] and often[0].number > 1:
        fewer = [replace(often[0], number=often[0].number - 1), *often[1:]]
        return [*t[: repeat + 3], *fewer, *again, *t[end:]]
    places = _places([*steps, *_steps(t[end:tail_end])])
    if [x.type for x in often] not in ([], ["TOEND"], ["ROUND"]) or places is None:
        return t
    many, of = places
    to_last = [like(t[at], "TOLAST"), like(t[at], "NUM", number=many), of]
    return [*t[: repeat + 3], *to_last, *again, *t[end:]]


def _omits_last(t: Sequence[Terminal], at: int) -> bool:
    """Whether `omitting the last 7 ch`, `leaving out the picot at the end` begins here."""
    if not (t[at].type in ("EXCEPT", "SKIP") and t[at].text.split(" ")[0] in _LEAVES):
        return False
    noun = past(t, at + 1, "THE")
    end = past(t, noun, *_NAMED)
    last = is_last(t, noun) or "last" in t[at].text or types(t, end, 1) == ["ATEND"]
    return last and any(x.type == "REPEAT" for x in t[:at])


def _steps(t: Sequence[Terminal]) -> list[list[Terminal]]:
    """The steps of a stretch, without what parts them."""
    runs = groupby(t, lambda x: x.type in _PARTS)
    return [list(run) for parts, run in runs if not parts]


def _is_step(step: Sequence[Terminal], what: Sequence[Terminal]) -> bool:
    """Whether a step is the one that is left out: as many of it, where the text says how many."""
    made = next((x for x in what if x.type != "NUM"), None)
    number = next((x.number for x in what if x.type == "NUM"), 0)
    own = [x for x in step[:2] if x.type != "NUM"]
    if made is None or not own or (own[0].type, own[0].name) != (made.type, made.name):
        return False
    count = next((x.number for x in step[:2] if x.type == "NUM"), 1)
    if made.type == "CH":
        return len(step) == _CHAINS and number in (0, count)
    return count == (number or 1)


def _places(steps: Sequence[Sequence[Terminal]]) -> tuple[int, Terminal] | None:
    """How many places some steps take, all of one kind; none where this cannot be told."""
    taken = [_taken(step) for step in steps if step and not _makes_only(step)]
    places = [one for one in taken if one is not None]
    if not places or len(places) < len(taken):
        return None
    of = places[0][1]
    if any(_sort(other) != _sort(of) for _, other in places):
        return None
    return sum(many for many, _ in places), of


def _makes_only(step: Sequence[Terminal]) -> bool:
    return _chains_only(step) or [x.type for x in step] in (["PICOT"], ["NUM", "PICOT"])


def _sort(of: Terminal) -> tuple[str, str]:
    """What is worked into, loops and spaces alike."""
    kind = "space" if of.kind in ARCHES else of.kind.name if of.kind else ""
    return of.type, kind or of.name


def _taken(step: Sequence[Terminal]) -> tuple[int, Terminal] | None:
    """The places that `1 dc in next loop`, `3 dc`, `miss 3` take."""
    number = step[0].number if step[0].type == "NUM" else 1
    stitch = int(step[0].type == "NUM")
    if step[0].type == "SKIP":
        order = past(step, 1, "THE", "NEXT")
        count = types(step, order, 1) == ["NUM"]
        of = list(step[order + count :]) or [stitch_left_out(step[0])]
        one = len(of) == 1 and of[0].type in ("KIND", "STITCH")
        return (step[order].number if count else 1, of[0]) if one else None
    if types(step, stitch, 1) != ["STITCH"]:
        return None
    if len(step) == stitch + 1:
        return number, stitch_left_out(step[0])
    which = past(step, stitch + 2, "THE", "NEXT", "EACH", "EACHOF")
    if types(step, which, 1) == ["ORD"] and step[which].number in (1, -1):
        which += 1
    count = types(step, which, 1) == ["NUM"]
    of = list(step[which + count :]) or [stitch_left_out(step[0])]
    one = len(of) == 1 and of[0].type in ("KIND", "STITCH", "PICOT")
    if step[stitch + 1].type != "PREP" or not one:
        return None
    return (step[which].number if count else 1, of[0])
