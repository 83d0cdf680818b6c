"""A round made wider or narrower in words: `1 dc in each stitch, increasing in every 8th`, `missing
every 9th`.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.passing import NOUNS, Terminals, like, stitch_left_out, types

_MADE = ("CH", "PICOT")
_PARTS = ("NUM", "SEP", "AND")
_BEFORE = frozenset({"NUM", "STITCH", "PREP", "EACH", "SEP", "AND", "TOEND", *NOUNS})


def widened(t: Terminals) -> Terminals:
    """The last of every so many stitches worked twice, or with the one before it.

    What is left of a round then has one stitch in each: nobody rips out a round whose
    stitches are no multiple of 8.
    """
    at = next((n for n in range(len(t)) if _begins(t, n)), len(t))
    which = at + 1
    which += types(t, which, 1) == ["STITCH"]  # `working 2 dc in every 4th`
    which += types(t, which, 1) == ["PREP"]  # `increasing 1 every tenth stitch`
    if types(t, which, 2) == ["EACH", "NUM"] and t[at].type in ("WIDEN", "NARROW"):
        which += 1  # `increasing 1 in every 8`
    elif types(t, which, 1) != ["EVERY"]:
        return t
    every = t[which].number
    behind = t[which + 1 + (types(t, which + 1, 1) in (["KIND"], ["STITCH"])) :]
    if t[at].type == "SKIP" and every == 2 and _with_chains(t[:at]):
        one = [like(t[at], "NUM", number=1), like(t[at], "SEP", name="hard")]
        return [*t[: at + 1], *one, like(t[at], "REPEAT"), *behind]
    stitch = _one_in_each(t[:at])
    if stitch is None or every < 2 or any(x.type not in ("SEP", "ENDING") for x in behind):
        return t
    two = [like(stitch, "NUM", number=2), stitch, *_place(stitch)]
    plain = every - 1
    if t[at].type in ("NARROW", "SKIP"):
        # `decreasing by missing every 6th`
        missed = t[at].type == "SKIP" or "missing" in t[at].text
        plain -= not missed
        together = [*two[:2], like(stitch, "TOGETHER"), *_place(stitch, 2)]
        two = [like(stitch, "SKIP"), like(stitch, "NUM", number=1)] if missed else together
    stop = like(stitch, "SEP", name="hard")
    one = [like(stitch, "NUM", number=1), stitch]
    before = [*one, *_place(stitch, plain, each=plain > 1), stop] if plain else []
    again = [like(t[at], "REPEAT"), like(t[at], "FROMSTAR"), stop]
    rest = [like(stitch, "PREP"), like(stitch, "EACH"), stitch_left_out(stitch)]
    return [like(stitch, "STAR"), *before, *two, stop, *again, *one, *rest, *behind]


def _begins(t: Sequence[Terminal], n: int) -> bool:
    """Whether a round goes on otherwise from here: `increasing in every 4th`, or `dc, working 2 in
    every 4th`, where no number stands before the first stitch."""
    if t[n].type in ("WIDEN", "NARROW") or types(t, n, 2) == ["SKIP", "EVERY"]:
        return True
    return t[n].type == "NUM" and t[n].number == 2 and all(x.type != "NUM" for x in t[:n])


def _one_in_each(t: Sequence[Terminal]) -> Terminal | None:
    """The stitch of `dc`, `1 dc in each stitch`, where nothing else is worked."""
    stitches = [x for x in t if x.type == "STITCH"]
    places = [x for x in t if x.type == "KIND" and x.kind != Kind("st")]
    numbers = [x for x in t if x.type == "NUM" and x.number != 1]
    strange = [x for x in t if x.type not in _BEFORE]
    strange += [x for before, x in pairwise(t) if x.type in _MADE and before.type in _PARTS]
    return stitches[0] if stitches and not (places or numbers or strange) else None


def _with_chains(t: Sequence[Terminal]) -> bool:
    """Whether these are `1 tr, 1 ch`, of which every other stitch may be missed."""
    steps = [x for x in t if x.type != "SEP"]
    return (
        [x.type for x in steps] == ["NUM", "STITCH", "NUM", "CH"]
        and steps[0].number == 1
        and t[-1].type == "SEP"
    )


def _place(here: Terminal, count: int = 1, *, each: bool = False) -> Terminals:
    """`in next st`, `over the next 2 st`, `in each of the next 7 st`."""
    of_each = [like(here, "EACHOF")] if each else []
    number = [like(here, "NUM", number=count)] if count > 1 else []
    return [like(here, "PREP"), *of_each, like(here, "NEXT"), *number, stitch_left_out(here)]
