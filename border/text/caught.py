"""Several places caught up by one stitch: `1 dc in the next 3 loops together`, `uniting 3 loops`.

All come to the one way that the grammar has: `1 dc in the next 3 loops at once`.
"""

from __future__ import annotations

from collections.abc import Sequence

from border.text.passing import NOUNS, Terminals, like, made, past, types
from border.text.places import BOTH
from border.text.sentences import place_at
from border.text.terminals import Terminal
from border.text.tree import ST, Kind

_TOGETHER = ("ATONCE", "TOGETHER")
_SOFT = ("SEP", "AND")
_JOINED = frozenset({"join", "joining", "unite", "connect"})


def caught(t: Terminals) -> Terminals:
    """Each such step with its place behind it; an `at once` of anything else says nothing."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        step, end = _by_the_hook(t, at) if here.type == "PUTHOOK" else _united(t, at, found)
        if step:
            found += step
            at = end
            continue
        if types(t, at, 3) == ["TOGETHER", "PREP", "NUM"] and made(found) == t[at + 2].number > 1:
            found += [here, t[at + 1], like(here, "NEXT")]  # `2 treble together over 2 dc`
            at += 2
            continue
        if here.type in _TOGETHER:
            found += _said_together(found, here, t, at)
        elif here.type in ("UNITE", "PUTHOOK"):
            found.append(like(here, "STRAY"))
        else:
            found.append(here)
        at += 1
    return found


def _by_the_hook(t: Terminals, at: int) -> tuple[Terminals, int]:
    """`put the hook through two loops at once, 1 sc`: the stitch, and where it goes."""
    place = at + 1
    end = place_at(t, place) if types(t, place, 1) == ["PREP"] else place
    if end == place:
        return [], at
    together = [like(t[end], "ATONCE")] if types(t, end, 1)[:1] and t[end].type in _TOGETHER else []
    stitch = past(t, end + len(together), *_SOFT)
    behind = _behind_stitch(t, stitch)
    if behind == stitch or types(t, behind, 1) in (["PREP"], ["BETWEEN"]):
        return [], at
    several = _several(t, past(t, place + 1, "THE"), end)
    where = [t[place], *several] if together and several else list(t[place:end])
    return [*t[stitch:behind], *where, *together], behind


def _united(t: Terminals, at: int, found: Terminals) -> tuple[Terminals, int]:
    """`1 dc uniting the next 3 loops`, `catch the next 3 loops together with 1 dc`."""
    here = t[at]
    joins = here.type == "ENDING" and here.text.split()[0] in _JOINED
    if not joins and here.type not in ("UNITE", "CATCH"):
        return [], at
    start = past(t, at + 1, "THE", "PREP")
    end = past(t, start, "NEXT", "NUM")
    noun = (
        _noun_again(found) if types(t, end, 1) in (["TOGETHER"], ["ATONCE"]) else t[end : end + 1]
    )
    several = _several([*t[:end], *noun], start, end + 1)
    end += end < len(t) and t[end].type in NOUNS
    if not several:
        return [], at
    if here.text.endswith("next"):
        several[0] = like(here, "NEXT")
    together = types(t, end, 1)[:1] != [] and t[end].type in _TOGETHER
    place = [like(here, "PREP"), *several, like(here, "ATONCE")]
    end += together
    with_ = types(t, end, 1) == ["WITH"]
    stitch = end + 1 if with_ else past(t, end, *_SOFT)
    behind = _behind_stitch(t, stitch)
    before = len(found) - (types(found, len(found) - 1, 1) == ["SEP"] and not found[-1].name)
    if types(found, before - 1, 1) == ["STITCH"] and before and not with_:
        if not together and here.type == "CATCH":
            return [], at
        del found[before:]
        return place, end
    if behind > stitch and (together or with_):
        return [*t[stitch:behind], *place], behind
    return [], at


def _said_together(found: Terminals, here: Terminal, t: Terminals, at: int) -> Terminals:
    """`in the next 3 loops together`, `…, taken together`: so many at once; else what was said."""
    comma = types(found, len(found) - 1, 1) == ["SEP"] and not found[-1].name
    end = len(found) - comma
    noun = _noun_before(found, end) if found[end - 1 : end] else None
    if noun is None:
        return [] if here.type == "ATONCE" else [here]
    start = end - 1
    while start and found[start - 1].type in ("NUM", "NEXT", "THE", "ORD", "EACH", "CENTRE"):
        start -= 1
    several = _several([*found[:end], *noun], past(found, start, "THE"), end + len(noun))
    opened = types(found, start - 1, 1)
    stitch = start - 1 if opened == ["STITCH"] else start - 2
    one = made(found[: stitch + 1]) == 1 or opened == ["ALLIN"]
    loose = here.type == "TOGETHER" and (not one or _is_stitch(several))
    if not several or opened not in (["PREP"], ["ALLIN"], ["STITCH"]) or start == 0:
        return [] if here.type == "ATONCE" else [here]
    if loose or (here.type == "TOGETHER" and here.text not in ("together", "tog")):
        return [here]
    prep = [] if opened != ["STITCH"] else [like(here, "PREP")]
    found[start:] = [*prep, *several]
    return [like(here, "ATONCE")]


def _noun_before(found: Terminals, end: int) -> Terminals | None:
    """What is still to be put behind `the next 3` for its noun; None where no place ends here.

    A noun that is left out is that of the places taken so before it in the row.
    """
    if found[end - 1].type in NOUNS:
        return []
    if found[end - 1].type != "NUM":
        return None
    return _noun_again(found) or None


def _noun_again(found: Terminals) -> Terminals:
    """The noun of the places that the row has taken so before."""
    at = next((n for n in range(len(found) - 1, 0, -1) if found[n].type == "ATONCE"), 0)
    return [found[at - 1]] if at else []


def _several(t: Sequence[Terminal], start: int, end: int) -> Terminals:
    """`next 3 loops`, that stand at [start, end), with the `next`; empty where it is no such."""
    words = [x for x in t[start:end] if x.type != "THE"]
    kinds = [x.type for x in words]
    if kinds[-2:-1] != ["NUM"] or words[-2].number < 2 or kinds[-1] not in NOUNS:
        return []
    if kinds[:-2] in (["NEXT"], ["EACH"], ["ORD"], ["CENTRE"]):
        return words
    if kinds[:-2]:
        return []
    two = words[0].number == 2 and words[1].kind == Kind("loop")
    return [like(words[0], "NEXT", name=BOTH if two else ""), *words]


def _is_stitch(several: Terminals) -> bool:
    """Whether stitches are named, of which `2 together` are two that are worked off as one."""
    return bool(several) and (several[-1].type == "STITCH" or several[-1].kind == ST)


def _behind_stitch(t: Sequence[Terminal], at: int) -> int:
    """Behind `1 sc`, `sc` at a place; the same place where none stands there."""
    number = types(t, at, 1) == ["NUM"]
    return at + number + 1 if types(t, at + number, 1) == ["STITCH"] else at
