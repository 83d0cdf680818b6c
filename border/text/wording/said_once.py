"""Words that say no more than the mark before them: `, work 3 dc`, `, and make 3 chain`, `5 chain
loosely`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import (
    ENDS,
    NOUNS,
    chain_of_at,
    is_stop,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def said_once(t: Sequence[Terminal]) -> list[Terminal]:
    """`…, then 3 dc`, `… and repeat`: parted once, as by one word. So are `…, and 3 dc`, `…, work
    3 dc`, `… and make 3 chain`, `(work 3 dc`: the words say no more than the mark before them."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        then = here.type == "SEP" and here.text == "then"
        if then and found and found[-1].type == "SEP" and found[-1].text == ",":
            found.pop()
        if here.type == "AND" and (types(t, n + 1, 1) == ["REPEAT"] or _steps_on(found, t, n + 1)):
            here = replace(here, type="SEP")
        bids = here.type == "SEP" and here.text in BIDS and types(t, n + 1, 1) in _STEP
        if bids and types(found, len(found) - 1, 1) == ["AND"]:
            found[-1] = replace(found[-1], type="SEP", text=",")
            if types(found, len(found) - 2, 1) == ["SEP"]:
                found.pop()
            continue
        comma = bool(found) and found[-1].type == "SEP" and found[-1].text == ","
        joins = here.type == "AND" and comma and _own_step(found, types(t, n + 1, 3))
        leads = here.type == "SEP" and not found and n == 0 and _begins(t)
        if joins or leads or (bids and types(found, len(found) - 1, 1) in _BEFORE):
            continue
        if comma and here.type == "PREP" and _one_step(found[:-1]) and _place_alone(t, n):
            found.pop()
        found.append(here)
    return found


def _begins(t: Sequence[Terminal]) -> bool:
    """Whether a row's first word only bids to begin: `Work 1 tr`, `Begin with 3 dc`; not `Make 48
    chain`, which may be the foundation."""
    return t[0].text in BIDS | _LEADS and types(t, 1, 2) == ["NUM", "STITCH"]


def _one_step(found: Sequence[Terminal]) -> bool:
    """Whether one step is all that stands behind a stop or a mark: `*3 tr, in next st`."""
    alone = types(found, len(found) - 2, 2) == ["NUM", "STITCH"]
    before = found[-3] if len(found) > 2 else None
    return alone and (before is None or is_stop(before) or before.type in ("STAR", "LP"))


def _place_alone(t: Sequence[Terminal], at: int) -> bool:
    """Whether all up to the next part of a row is one place, and nothing is worked in it behind:
    not `on each of the 5 tr 1 dc`, `in the loop work 5 dc`; nor perhaps `in the loop, 5 dc`."""
    stop = next((n for n in range(at, len(t)) if t[n].type in _PLACE_ENDS), len(t))
    nouns = [n for n in range(at, stop) if t[n].type in NOUNS]
    worked = types(t, stop, 1) == ["SEP"] and t[stop].text.isalpha()
    listed = leads_on(t, stop)
    return not (worked or listed) and (len(nouns) == 1 or nouns == [stop - 2, stop - 1])


def leads_on(t: Sequence[Terminal], at: int) -> bool:
    """Whether bare stitches follow a place behind a comma: `1 dc, in the loop, 7 tr`."""
    step = past(t, at, "SEP", "AND")
    made = step > at and types(t, step, 2) == ["NUM", "STITCH"]
    made = made and t[at].text in (",", "and") and t[step].number > 1
    return made and types(t, step + 2, 1) in ([], ["SEP"], ["AND"])


_PLACE_ENDS = ENDS | {"AND", "TOGETHER", "BETWEEN"}


BIDS = frozenset({"work", "working", "make", "crochet", "do"})
"""Of the words that bid to work a step: those that never say how, or with what."""


_LEADS = frozenset({"begin with", "commence with", "start with"})


_BEFORE = (["SEP"], ["STAR"], ["LP"])


_STEP = (["NUM"], ["CH"], ["PICOT"])


def _own_step(found: Sequence[Terminal], sorts: Sequence[str]) -> bool:
    """Whether a step of its own begins with these words: stitches with a place (`(1 tr, 1 ch) 3
    times in next st, and 1 tr` may go into that one), or chains that are not perhaps missed as
    well (`miss the 3 chain, plain, and 3 chain`)."""
    if sorts[:2] in (["NUM", "CH"], ["CH", "NUM"]):
        last = max((n for n, x in enumerate(found) if x.type in _OPENED), default=-1)
        return last < 0 or found[last].type != "SKIP"
    return sorts in (["NUM", "STITCH", "PREP"], ["NUM", "STITCH", "BETWEEN"])


_OPENED = frozenset({"SKIP", "PREP", "STAR", "LP", "RP"})


def _steps_on(found: Sequence[Terminal], t: Sequence[Terminal], at: int) -> bool:
    """Whether another step begins here with a place of its own, behind one that has its place."""
    parts = max((n for n, x in enumerate(found) if x.type in _PARTED), default=-1)
    placed = any(x.type == "PREP" for x in found[parts + 1 :])
    return placed and types(t, at, 3) == ["NUM", "STITCH", "PREP"]


_PARTED = frozenset({"SEP", "LP", "RP", "STAR", "AND"})


def chains_loosely(t: Sequence[Terminal]) -> list[Terminal]:
    """`5 chain loosely`, `ch 5 tightly` that are made: there is but one way to count them."""
    found: list[Terminal] = []
    for here in t:
        how = here.type == "MOD" and here.name in ("loosely", "tightly")
        if not how or not _ends_in_chains(found):
            found.append(here)
    return found


def _ends_in_chains(found: Sequence[Terminal]) -> bool:
    """Whether a step ends here that is chains: `5 ch`, `a chain of 5`; not `in the next 5 ch`."""
    for size in (2, 3, 4):
        start = len(found) - size
        if start >= 0 and chain_of_at(found, start)[1] == len(found):
            opens = types(found, start - 1, 1) if start else []
            if not opens or opens[0] in _STEP_OPENS:
                return True
    return False


_STEP_OPENS = frozenset({"SEP", "AND", "STAR", "LP", "RP", "WITH", "DIVIDED", "ENDING", "TIMES"})
