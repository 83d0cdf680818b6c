"""What stands between, and between which: `3 chain between each`, `between the 1st and 2nd`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.passing import ARCHES, NOUNS, Terminals, like, types
from border.text.terminals import Terminal


def betweens(t: Terminals) -> Terminals:
    """`between the 1st and 2nd treble`, `in the space between the treble`: between the next 2;
    between the 2nd and 3rd, the 2nd pair."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        space = here.type == "KIND" and here.kind in ARCHES and found and types(t, at + 1, 1)
        if space == ["BETWEEN"] and found[-1].type in ("PREP", "THE"):
            while found and found[-1].type in ("PREP", "THE"):
                found.pop()
            at += 1
            continue
        found.append(here)
        at += 1
        if here.type == "BETWEEN" and not _of_chains(found[:-1]):
            which, at = _pair(t, at)
            found += which
    return found


def _of_chains(before: Sequence[Terminal]) -> bool:
    """Whether chains stand right before: `3 chain between …` is no place."""
    return "CH" in types(before, max(0, len(before) - 2), 2)


def _pair(t: Sequence[Terminal], at: int) -> tuple[Terminals, int]:
    """What says between which two, as the grammar has it, and where its noun stands."""
    named = at + (types(t, at, 1) == ["THE"])
    if named >= len(t):
        return [], at
    here = t[named]
    two = like(here, "NUM", number=2)
    if types(t, named, 3) == ["NUM", "PICOT", "OF"] and here.number == 2:
        return [], named + 1  # `between the 2 picots of next loop`
    if here.type == "EACH" and types(t, named + 1, 1) in (["KIND"], ["STITCH"], ["PICOT"]):
        return [like(here, "EACH"), two], named + 1
    if types(t, named, 3) == ["ORD", "AND", "ORD"] and named + 3 < len(t):
        follows = 0 < here.number == t[named + 2].number - 1
        if t[named + 3].type not in NOUNS or not follows:
            return [], at
        if here.number > 1:  # the point behind that many
            return [here, like(here, "PAIR"), like(here, "OF")], named + 3
        return [like(here, "NEXT"), two], named + 3
    if here.type == "STITCH" or _many(here):
        of = types(t, named, 2) == ["PICOT", "OF"]
        return ([], at) if of else ([like(here, "NEXT"), two], named)
    return [], at


def _many(here: Terminal) -> bool:
    return (here.type == "KIND" and here.many) or (here.type == "PICOT" and here.text.endswith("s"))


_ENDS = frozenset({"", "SEP", "RP", "REPEAT", "STAR", "PREP", "ENDING"})


def between_behind(t: Terminals) -> Terminals:
    """`1 treble in each stitch, 1 chain between [each]`: as `with 1 chain between`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        taken = _between_at(t, at)
        before = found[-1].type if found else ""
        if taken and before not in ("WITH", "DIVIDED"):
            number = next((x.number for x in t[at : at + 2] if x.type == "NUM"), 1)
            if before == "SEP" and not found[-1].name:
                found.pop()
            found.append(replace(t[at], type="BETW", number=number, end=t[at + taken - 1].end))
            at += taken
            continue
        found.append(t[at])
        at += 1
    return found


def _between_at(t: Sequence[Terminal], at: int) -> int:
    """How many terminals are `3 chain between [each]`, with no place behind; 0 if none."""
    pair = types(t, at, 2)
    taken = 2 if pair in (["NUM", "CH"], ["CH", "NUM"]) else 1 if pair[:1] == ["CH"] else 0
    between = types(t, at + taken, 1) == ["BETWEEN"]
    after = types(t, at + taken, 2) == ["AFTER", "EACH"]
    if not taken or not (between or after):
        return 0
    taken = behind_between(t, at + taken + 1) - at
    behind = t[at + taken].type if at + taken < len(t) else ""
    return taken if behind in _ENDS else 0


def behind_between(t: Sequence[Terminal], at: int) -> int:
    """Behind the `each treble`, `them`, `the stitches` of `with 1 chain between …`."""
    if types(t, at, 2) == ["EACH", "NUM"] and t[at + 1].number == 2:
        return at + 2 + (types(t, at + 2, 1) == ["KIND"])  # `between every two`
    noun = at + (types(t, at, 1) in (["EACH"], ["THE"]))
    if noun > at and types(t, noun, 1) == ["PAIR"]:
        return noun + 1
    if noun < len(t) and t[noun].type in NOUNS:
        said = noun > at or t[noun].type == "STITCH" or _many(t[noun])
        return noun + 1 if said else at
    return at + (types(t, at, 1) in (["EACH"], ["THEM"]))
