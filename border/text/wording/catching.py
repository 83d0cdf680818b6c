"""`Five chain, catch the third loop`, `miss 1, fasten in next`: no stitch is named.

It is taken to be a slip stitch, and told. What closes a picot, fastens chains back behind a turn,
or begins or ends a row, is none of these.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.tree import Kind
from border.text.wording.passing import NOUNS, ended, like, past, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_BEFORE = frozenset({"SEP", "AND", "STAR", "LP", "NOTHING"})
_WHERE = frozenset({"PREP", "TO", "BETWEEN"})
_NAMED = frozenset({"ORD", "CENTRE", "NEXT"})
_SORTS = frozenset({"CATCH", "ENDING"})
_WORDS = frozenset({"catch", "fasten"})
_ENDS_TOO = frozenset(
    {"fasten", "fastening", "join", "joining", "join it", "unite", "uniting", "unite it"}
)
"""They end a row as well, or begin it."""
_TOLD = frozenset({"WITH", "TOGETHER", "ATONCE"})
_STEPS = frozenset({"STITCH", "CH", "PICOT", "SKIP", "REPEAT", "SOON", "RP"})
_MADE = frozenset({"STITCH", "CH", "PICOT", "SKIP"})


def drawn_together(t: Sequence[Terminal]) -> list[Terminal]:
    """`Draw 4 loops together with 1 dc`: as `take up 4 loops with`."""
    found = list(t)
    for n, here in enumerate(t):
        noun = past(t, n + 1, "THE", "NEXT", "NUM")
        loops = noun > n + 1 and types(t, noun, 3) == ["KIND", "TOGETHER", "WITH"]
        if here.type == "UNKNOWN" and here.text.lower() in _DRAW and loops:
            found[n] = replace(here, type="UNITE")
            del found[noun + 1]
            break
    return found


_DRAW = frozenset({"draw", "drawing", "gather", "gathering", "catch", "catching"})


def with_fastenings(
    terminals: list[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals with a slip stitch where one is meant, and what is told of it."""
    if not any(t.type in _SORTS or t.text in _WORDS for t in terminals):
        return terminals, []
    terminals = _named_behind(terminals)
    found: list[Terminal] = []
    findings: list[Finding] = []
    for n, here in enumerate(terminals):
        if not _fastens(terminals, n):
            found.append(here)
            where = past(terminals, n + 1, "THE")
            if here.type == "STITCH" and here.text in _WORDS and _one_of(terminals, where, _NAMED):
                found.append(like(here, "PREP"))  # `catch means sc`: `catch the third loop`
            continue
        found.append(replace(here, type="STITCH", name="ss"))
        if terminals[n + 1].type not in _WHERE:
            found.append(like(here, "PREP"))
        elif terminals[n + 1].type == "TO":
            terminals[n + 1] = like(terminals[n + 1], "PREP")
        message = (
            f'with which stitch "{here.text}" is meant is not said: it is taken to be a slip stitch'
        )
        word = here.text.split()[0]
        help_ = f'say it: "{word} with 1 sc"'
        if here.type == "CATCH" or word == "fasten":
            help_ += f', or for all of them a heading: "{word} means sc"'
        span = source.span(here.start, here.end)
        findings.append(Finding("fastening-assumed", message, help_, span))
    return found, findings


def _named_behind(t: list[Terminal]) -> list[Terminal]:
    """`fasten in next loop with 1 double`: with the stitch before its place."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        stop = next((n for n in range(at, len(t)) if t[n].type in ("SEP", "REPEAT", "RP")), len(t))
        words = types(t, at, stop - at)
        fastens = words[:1] == ["CATCH"] or (words[:1] == ["ENDING"] and t[at].text in _ENDS_TOO)
        of_one = words[-3:] == ["WITH", "NUM", "STITCH"] and t[stop - 2].number == 1
        named = of_one or words[-2:] == ["WITH", "STITCH"]
        goes_on = words[:1] == ["CATCH"] or any(x.type in _STEPS for x in t[stop:])
        if not (fastens and named and goes_on and words[1:2] in (["PREP"], ["TO"])):
            found.append(t[at])
            at += 1
            continue
        one = replace(like(t[at], "NUM", number=1), end=t[at].start)
        place = [like(t[at + 1], "PREP"), *t[at + 2 : stop - 2 - of_one]]
        found += [one, replace(t[stop - 1], start=t[at].start, end=t[at].end), *place]
        at = stop
    return found


def _fastens(t: Sequence[Terminal], at: int) -> bool:
    """Whether a word here makes a stitch that it does not name."""
    here = t[at]
    fastens = here.type == "ENDING" and here.text in _ENDS_TOO
    before = next((x for x in reversed(t[:at]) if x.type != "NOTHING"), None)
    if not (here.type == "CATCH" or fastens) or (before and before.type not in _BEFORE):
        return False
    place = past(t, at + 1, "NOTHING")
    where = past(t, place, "THE")
    opened = _one_of(t, place, _WHERE)
    if not opened and (fastens or not _one_of(t, where, _NAMED)):
        return False
    stop = next((n for n in range(at, len(t)) if t[n].type == "SEP"), len(t))
    if any(x.type in _TOLD for x in t[at:stop]):
        return False
    made = any(x.type in _MADE for x in t[:at])
    first = next((n for n in range(at) if t[n].type in _MADE), at)
    turned = any(x.type == "ENDING" and x.name == "turn" for x in t[first:at])
    halves = [x for x in types(t, at, stop - at) if x in ("LP", "RP")]  # `(6 sps)` is a count
    follows = any(x.type in _STEPS for x in t[stop:]) or halves[:1] == ["RP"]
    follows |= any(x.type == "ENDING" and x.name == "turn" for x in t[stop:])
    return not turned and ((made and follows) or not fastens) and not _closes(t, at, where)


def _one_of(t: Sequence[Terminal], at: int, sorts: frozenset[str]) -> bool:
    return at < len(t) and t[at].type in sorts


def _closes(t: Sequence[Terminal], at: int, where: int) -> bool:
    """Whether chains stand right before, and the place is counted out: they may be a picot."""
    end = at
    while end and t[end - 1].type in _BEFORE:
        end -= 1
    chains = sorted(types(t, max(0, end - 2), 2)) == ["CH", "NUM"]
    order = past(t, where, *_WHERE, "THE")
    named = _one_of(t, order + 1, frozenset({"STITCH", "PICOT"}))  # `in the 3rd treble`
    if _one_of(t, order + 1, frozenset({"KIND"})) and t[order + 1].kind != Kind("st"):
        # not `in 2nd loop to form a ring`
        named |= order + 2 == len(t) or t[order + 2].type in ("SEP", "OF", "NOTHING")
    named |= _one_of(t, order + 1, frozenset({"KIND"})) and ended(t, order + 2)  # `in 5th stitch`
    of = past(t, order + 1, *NOUNS)
    whose = past(t, of + 1, "EACH", "NEXT", "THE", "NUM") if types(t, of, 1) == ["OF"] else len(t)
    named |= _one_of(t, whose, frozenset({"KIND", "STITCH"}))  # `in 3d chain of each loop`
    return chains and _one_of(t, order, frozenset({"ORD"})) and not named
