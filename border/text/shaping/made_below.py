"""`1 sc in the centre of 5`, with no word for what: of the chains that the row below makes so. `The
3 chain in the centre of the group`: the shell, where the row below makes shells. `The 5th of the 9
dc`: of those in one place, where the row below has them side by side.
"""

from __future__ import annotations

from msgspec.structs import replace

from border.text.shaping.described import BETWEEN, EACH_IN_SHELL, IN_GROUP, IN_SHELL, OF_HEAP
from border.text.stands_below import (
    are_heaped,
    loop_sizes,
    loops_in_shells,
    run_inside,
    sizes_of_runs,
    stands_alone,
    stitches_together,
    worked_together,
)
from border.text.steps import walk
from border.text.tree import Bracket, Chains, Kind, Stitches, Text
from border.text.wording.passing import Terminals, types


def of_made_below(t: Terminals, below: Text | None) -> Terminals:
    """The words of a row with each such number as that of chains, where the row below makes so
    many chains, and nowhere so many stitches."""
    t = _single_missed(t, below)
    t = _side_by_side(_each_in_shells(_in_groups(t, below), below), below)
    if below is None or not any(_is_unsaid(here.kind, here.text) for here in t):
        return t
    chains = loop_sizes(below) - stitches_together(below)
    found: Terminals = []
    behind = -1  # `on the centre 3 of the 5`: where the words stand for what is behind the first
    for here in t:
        if here.start == behind and here.type == "KIND":
            here = replace(here, kind=Kind("ch"))
        if here.kind is not None and _is_unsaid(here.kind, here.text) and here.kind.size in chains:
            part = len(found)
            while part and found[part - 1].type in ("THE", "NEXT", "EACH"):
                part -= 1
            if types(found, part - 2, 2) == ["STITCH", "OF"]:  # `the centre dc of the three`
                found.append(here)
                continue
            if types(found, part - 3, 3) == ["ORD", "KIND", "OF"]:  # `in the 3rd of the 5`
                found[part - 2] = replace(found[part - 2], kind=Kind("ch"))
                behind = found[part - 2].start
            here = replace(here, kind=Kind("space", here.kind.size))
        found.append(here)
    return found


def on_the_one(t: Terminals, below: Text | None) -> Terminals:
    """`1 treble on the 1 treble`, `miss the one treble`: as `the single treble`, one that stands
    alone, where the row below has such stitches alone and in groups as well."""
    found: Terminals = []
    at = 0
    while at < len(t):
        one = types(t, at, 3) == ["THE", "NUM", "STITCH"] and t[at + 1].number == 1
        placed = one and types(found, len(found) - 1, 1) in (["PREP"], ["SKIP"])
        if placed and below is not None and not t[at + 2].many:
            sizes = sizes_of_runs(below, t[at + 2].name)
            if 1 in sizes and len(sizes) > 1:
                alone = replace(t[at + 2], type="KIND", kind=Kind("run", 1, t[at + 2].name))
                found += [t[at], alone]
                at += 3
                continue
        found.append(t[at])
        at += 1
    return found


def _is_unsaid(kind: Kind | None, text: str) -> bool:
    """Whether a block is named by its number alone."""
    return kind is not None and kind.name == "block" and bool(kind.size) and " " not in text


def _single_missed(t: Terminals, below: Text | None) -> Terminals:
    """`1 dc over each of 9 dc, miss the single dc` over `1 dc in dc, 9 dc in loop`, where none
    stands by itself: miss 1 dc."""
    found = list(t)
    for n, here in enumerate(t):
        skip = n - 1 - (n > 0 and t[n - 1].type in ("NEXT", "THE", "NUM"))
        run = here.kind is not None and here.kind.name == "run" and here.kind.size == 1
        if run and below is not None and types(t, skip, 1) == ["SKIP"]:
            stitch = here.kind.stitch if here.kind is not None else None
            if stitch and not stands_alone(below, stitch):
                found[n] = replace(here, kind=Kind(stitch))
    return found


def _side_by_side(t: Terminals, below: Text | None) -> Terminals:
    """The words with each run of stitches, `the 9 dc`, `the 9`, as the group that is worked into
    one place, where the row below puts as many side by side, with nothing between them, or has
    others beside them; `the 9` as a run, where other stitches stand beside just so many."""
    if below is None or all(here.kind is None for here in t):
        return t
    found: Terminals = []
    for here in t:
        kind = here.kind
        if kind is not None and kind.size and _is_counted(kind, here.text):
            made = {one.stitch for one in walk(below.items) if isinstance(one, Stitches)}
            stitches = {kind.stitch} if kind.stitch else made
            together = any(worked_together(below, stitch) == kind.size for stitch in stitches)
            if together or are_heaped(below, kind.size, kind.stitch):
                here = replace(here, kind=replace(kind, name="group"))
            elif kind.name == "block" and (run := run_inside(below, kind.size)):
                here = replace(here, kind=Kind("run", kind.size, run))
        found.append(here)
    return found


def _is_counted(kind: Kind, text: str) -> bool:
    """Whether stitches are named by their number, and not as a run or a block."""
    run = kind.name == "run" and not text.startswith("run")
    return run or _is_unsaid(kind, text)


def _each_in_shells(t: Terminals, below: Text | None) -> Terminals:
    """The words with `each space of the shell` as each of those spaces, where the shells of the row
    below have several; else as each shell."""
    if all(here.name != EACH_IN_SHELL for here in t):
        return t
    several = below is not None and loops_in_shells(below) > 1
    found: Terminals = []
    inside = False
    for here in t:
        if here.name == EACH_IN_SHELL:
            inside = True
            here = replace(here, name=OF_HEAP if several else IN_SHELL)
        elif inside and here.type == "KIND":
            inside = False
            here = replace(here, kind=Kind("space")) if several else here
        found.append(here)
    return found


def _in_groups(t: Terminals, below: Text | None) -> Terminals:
    """The words with each place in the middle of a group as the shell that it is, or as the space
    of so many chains, which is told."""
    if all(here.name != IN_GROUP for here in t):
        return t
    items = walk(below.items) if below is not None else ()
    brackets = (one for one in items if isinstance(one, Bracket))
    shells = any(isinstance(inner, Chains) for one in brackets for inner in one.items)
    found: Terminals = []
    inside = False
    for here in t:
        if here.name == IN_GROUP:
            inside = True
            here = replace(here, name="" if shells else BETWEEN)
        elif inside and here.type == "KIND":
            inside = False
            here = replace(here, kind=Kind("shell")) if shells else here
        found.append(here)
    return found
