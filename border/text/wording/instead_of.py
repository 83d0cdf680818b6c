"""What stands in the place of something: `3 chain instead of the first treble`; `repeat from *, but
instead of the last dc work 1 sl st in the first dc`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import (
    Terminals,
    is_last,
    like,
    past,
    types,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

    from border.text.terminals import Terminal


def chains_instead(t: Terminals) -> Terminals:
    """`3 chain instead of the first treble, 23 treble`: as that treble."""
    found = list(t)
    for n, here in enumerate(t):
        order = past(t, n + 1, "THE")
        first = types(t, order, 2) in (["ORD", "STITCH"], ["NUM", "STITCH"])
        first = first and t[order].number == 1
        chains = n - (types(t, n - 1, 1) == ["SEP"]) if n else 0
        if here.text == "instead of" and first and sorted(types(t, chains - 2, 2)) == ["CH", "NUM"]:
            found[n] = replace(here, type="AS")
    return found


def last_replaced(t: Terminals) -> Terminals:
    """`*4 ch, miss 2, 1 dc; repeat from *, but instead of the last dc work 1 sl st in the first
    dc`, `in place of the last dc 1 sl st in it`: `…; repeat from *, ending with 4 ch, miss 2, 1 sl
    st …`, where the dc is the last step."""
    at = next((n for n, x in enumerate(t) if x.text in _INSTEAD), 0)
    repeat = max((n for n in range(at) if t[n].type == "REPEAT"), default=0)
    order = past(t, past(t, at + 1, "THE"), "NUM")
    if not repeat or not any(is_last(t, n) for n in (order, order - 1)):
        return t
    noun = past(t, order + is_last(t, order), "NUM")
    stop = next((n for n in range(noun, len(t)) if t[n].name == "hard"), len(t))
    other = past(t, noun + 1, "SEP", "AND")
    star = max((n for n in range(repeat) if t[n].type == "STAR"), default=-1)
    last = _last_step(t, star + 1, repeat)
    steps = t[star + 1 : last]
    if types(t, noun, 1) not in (["STITCH"], ["CH"]) or other >= stop or not steps:
        return t
    if not _makes(t[last:repeat], t[noun]) or {"STAR", "LP", "RP"} & {x.type for x in steps}:
        return t
    before = at
    while t[before - 1].type in ("SEP", "AND", "BUT", "ENDWITH"):
        before -= 1
    ending = [like(t[at], "SEP"), like(t[at], "ENDWITH")]
    return [*t[:before], *ending, *steps, *t[other:]]


_INSTEAD = frozenset({"instead of", "in place of", "in the place of", "in lieu of"})


def _last_step(t: Sequence[Terminal], start: int, stop: int) -> int:
    """Where the last step begins of those before a repeat."""
    end = stop
    while end > start and t[end - 1].type in ("SEP", "AND"):
        end -= 1
    return max((n + 1 for n in range(start, end) if t[n].type in ("SEP", "AND")), default=start)


def _makes(step: Sequence[Terminal], noun: Terminal) -> bool:
    """Whether a step makes this stitch, or these chains: that is the first that it names."""
    made = next((x for x in step if x.type in ("STITCH", "CH", "PICOT", "SKIP")), None)
    return made is not None and (made.type, made.name) == (noun.type, noun.name)
