"""Several places caught up by one stitch: `1 dc in the next 3 loops together`, `uniting 3 loops`.

All come to the one way that the grammar has: `1 dc in the next 3 loops at once`.
"""

from __future__ import annotations

from collections.abc import Sequence

from border.text.shaping.sentences import place_at
from border.text.terminals import Terminal
from border.text.tree import ST, Kind
from border.text.wording.passing import NOUNS, Terminals, like, made, past, types

BOTH = "both"
"""Of a `next` that a text leaves unsaid: `through two loops at once` may be of one stitch."""

_TOGETHER = ("ATONCE", "TOGETHER")
_OFF = ("taken together", "held together")
_SOFT = ("SEP", "AND")
_JOINED = frozenset({"join", "joining", "unite", "connect"})
_NAMES = frozenset({"NUM", "NEXT", "THE", "ORD", "EACH", "CENTRE"})
_FAR = 8
"""A place of several, with its stitch, is no more words than that."""


def caught(t: Terminals) -> Terminals:
    """Each such step with its place behind it; an `at once` of anything else says nothing."""
    found: Terminals = []
    noun: Terminals = []  # of the places that the row has taken so last
    at = 0
    while at < len(t):
        here = t[at]
        end = at + 1
        if here.type == "PUTHOOK":
            step, end = _by_the_hook(t, at)
            found += step or [like(here, "STRAY")]
        elif united := _united(t, at, found, noun):
            found += united[0]
            end = united[1]
        elif types(t, at, 3) == ["TOGETHER", "PREP", "NUM"] and _as_many(found, t[at + 2]):
            found += [here, t[at + 1], like(here, "NEXT")]  # `2 treble together over 2 dc`
            end = at + 2
        elif here.type in _TOGETHER:
            if here.text.endswith(_OFF) and _several_made(found):  # `3 treble, taken together`
                del found[len(found) - _comma_behind(found) :]
                found.append(like(here, "TOGETHER"))
            else:
                found += _said_together(found, here, noun)
        else:
            found.append(like(here, "STRAY") if here.type == "UNITE" else here)
        at = end
        if types(found, len(found) - 1, 1) == ["ATONCE"]:
            noun = [found[-2]]
    return found


def _several_made(found: Terminals) -> bool:
    """Whether the step right before is of several stitches, in one place or one on each."""
    end = len(found) - _comma_behind(found)
    placed = types(found, end - 2, 2) in (["NUM", "STITCH"], ["NUM", "KIND"])
    start = next((n for n in range(end - 1, 0, -1) if found[n].type in ("PREP", "SEP")), 0)
    before = found[:start] if types(found, start, 1) == ["PREP"] else found[:end]
    number = made(before)
    return number > 1 and (len(before) == end or not placed or found[end - 2].number == number)


def _as_many(found: Terminals, number: Terminal) -> bool:
    """Whether as many stitches stand right before."""
    return made(found[-_FAR:]) == number.number > 1


def _by_the_hook(t: Terminals, at: int) -> tuple[Terminals, int]:
    """`put the hook through two loops at once, 1 sc`: the stitch, and where it goes; and the
    place behind it all."""
    place = at + 1
    end = place_at(t, place) if types(t, place, 1) == ["PREP"] else place
    together = [like(t[end], "ATONCE")] if end < len(t) and t[end].type in _TOGETHER else []
    stitch = past(t, end + len(together), *_SOFT)
    behind = _behind_stitch(t, stitch)
    if end == place or behind == stitch or types(t, behind, 1) in (["PREP"], ["BETWEEN"]):
        return [], at + 1
    several = _several(t[place + 1 : end]) if together else []
    where = [t[place], *several] if several else t[place:end]
    return [*t[stitch:behind], *where, *together], behind


def _united(
    t: Terminals, at: int, found: Terminals, noun: Terminals
) -> tuple[Terminals, int] | None:
    """`1 dc uniting the next 3 loops`, `catch the next 3 loops together with 1 dc`, and the place
    behind it; the stitch that stands before it stays where it is."""
    here = t[at]
    joins = here.type == "ENDING" and here.text.split()[0] in _JOINED
    if not joins and here.type not in ("UNITE", "CATCH"):
        return None
    start = past(t, at + 1, "THE", "PREP")
    end = past(t, start, "NEXT", "NUM")
    words = t[start:end]
    if end < len(t) and t[end].type in NOUNS:
        words.append(t[end])
        end += 1
    elif end < len(t) and t[end].type in _TOGETHER:
        words += noun
    several = _several(words)
    if not several and here.text.startswith("taking") and words[-1:] and words[-1].type in NOUNS:
        before = len(found) - _comma_behind(found)
        if types(found, before - 1, 1) == ["STITCH"] and types(t, end, 1) != ["TOGETHER"]:
            del found[before:]  # `1 dc taking up the loop`
            return [like(here, "PREP"), *t[at + 1 : end]], end
    if not several:
        return None
    if here.text.endswith("next"):
        several[0] = like(here, "NEXT")
    together = end < len(t) and t[end].type in _TOGETHER
    place = [like(here, "PREP"), *several, like(here, "ATONCE")]
    end += together
    with_ = types(t, end, 1) == ["WITH"]
    before = len(found) - _comma_behind(found)
    if before and found[before - 1].type == "STITCH" and not with_:
        if not together and here.type == "CATCH":
            return None
        del found[before:]
        return place, end
    stitch = end + 1 if with_ else past(t, end, *_SOFT)
    behind = _behind_stitch(t, stitch)
    if behind > stitch and (together or with_):
        return [*t[stitch:behind], *place], behind
    return None


def _said_together(found: Terminals, here: Terminal, noun: Terminals) -> Terminals:
    """`in the next 3 loops together`, `…, taken together`: so many at once; else what was said."""
    otherwise = [] if here.type == "ATONCE" else [here]
    end = len(found) - _comma_behind(found)
    named = end > 0 and found[end - 1].type in NOUNS
    start = end - named
    while start and found[start - 1].type in _NAMES:
        start -= 1
    several = _several([*found[start:end], *([] if named else noun)])
    opened = found[start - 1].type if start else ""
    if not several or opened not in ("PREP", "ALLIN", "STITCH"):
        return otherwise
    stitch = start if opened == "STITCH" else start - 1
    one = made(found[max(0, stitch - _FAR) : stitch]) == 1 or opened == "ALLIN"
    worked_off = not one or _is_stitch(several) or here.text not in ("together", "tog")
    if here.type == "TOGETHER" and worked_off:
        return otherwise
    found[start:] = [*([like(here, "PREP")] if opened == "STITCH" else []), *several]
    return [like(here, "ATONCE")]


def _comma_behind(found: Terminals) -> bool:
    """Whether what stands last ends in a comma."""
    return bool(found) and found[-1].type == "SEP" and not found[-1].name


def _several(words: Sequence[Terminal]) -> Terminals:
    """`next 3 loops`, with the `next` where a text leaves it out; empty where they are no such."""
    words = [x for x in words if x.type != "THE"]
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
    return several[-1].type == "STITCH" or several[-1].kind == ST


def _behind_stitch(t: Sequence[Terminal], at: int) -> int:
    """Behind `1 sc`, `sc` at a place; the same place where none stands there."""
    number = types(t, at, 1) == ["NUM"]
    return at + number + 1 if types(t, at + number, 1) == ["STITCH"] else at
