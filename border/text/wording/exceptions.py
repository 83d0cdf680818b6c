"""Exceptions: `except at the corners …`, `with 3 dc in each corner`, `but in the last …`.

What is worked otherwise at one part of an edge has no words in a row, but clauses. Corners
can be left out: an edge has none that its yoke does not name.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.wording.passing import past, types
from border.text.wording.strangers import asked_place
from border.text.words import quoted, shortened

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_DONE = frozenset({"EACH", "EVERY", "EACHOF", "TOEND", "REPEAT"})
"""A step with one of these goes to the end, so that what follows it is not of its list."""

_OPENS = frozenset({"EXCEPT", "BUT", "WIDEN", "NARROW"})
_BOUNDS = frozenset({"TOEND", "ROUND"})
_STOPS = frozenset({"STAR", "LP", "RP", "REPEAT"})
_NOUNS = frozenset({"KIND", "CH", "STITCH", "PICOT"})


GROUP = "group"
"""The name of a number of times that is as many as a scallop has places for."""


class _Stretch(Struct, frozen=True):
    """An exception: [start, end) of the terminals; `corner`: it is one that can be left out;
    `group`: it says that a repeat ends with a scallop."""

    start: int
    end: int
    corner: bool = False
    group: bool = False


def without_exceptions(
    terminals: Sequence[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without exceptions, and what is told of each."""
    if not any(t.type in _OPENS | _BOUNDS or _is_corner(t) for t in terminals):
        return list(terminals), []
    kept: list[tuple[int, Terminal]] = []
    findings: list[Finding] = []
    at = 0
    while at < len(terminals):
        if _names_corner(terminals, at):
            if terminals[at].text.startswith("in"):
                kept.append((at, replace(terminals[at], type="PREP", text="in")))
                kept.append((at, replace(terminals[at], type="THE", text="the")))
            at += 1
            continue
        if _but_last(terminals, at) and kept[-1][1].type == "STITCH":
            kept.pop()  # `after each dc except the last`
        stretch = _at_corner(terminals, at) or _exception(terminals, at) or _to_group(terminals, at)
        if stretch is None:
            kept.append((at, terminals[at]))
            at += 1
            continue
        while kept and (kept[-1][0] >= stretch.start or (stretch.corner and _joins(kept[-1][1]))):
            kept.pop()
        if stretch.group:
            kept.append((at, round_group(terminals[stretch.start : stretch.end])))
            at = _behind_times(terminals, stretch.end, kept)
            continue
        findings.append(_told(terminals, stretch, source))
        at = stretch.end
    return [terminal for _, terminal in kept], findings


def _joins(before: Terminal) -> bool:
    return before.type in ("SEP", "AND") and before.name != "hard"


def _told(t: Sequence[Terminal], stretch: _Stretch, source: Source) -> Finding:
    start, end = stretch.start, stretch.end
    while t[start].type == "SEP" and start < end - 1:
        start += 1
    span = source.span(t[start].start, t[end - 1].end)
    said = quoted(source, span)
    row = source.text[t[0].start : span.start].strip(" \t\r\n,;.")
    clauses = f'"over {_part(said)}: …; elsewhere: {shortened(row, 80) or "…"}"'
    if stretch.corner:
        message = f'"{said}" is left out: the row is read for an edge without corners'
        help_ = f"for corners of your yoke write clauses, by their name: {clauses}"
        return Finding("corners-left-out", message, help_, span)
    message = f'"{said}" is an exception, which the words of one row cannot say'
    instead = f"write it as clauses, by the names of your yoke: {clauses}"
    if [x.type for x in t[start:end] if x.type in ("OF", "EACH", "EVERY")] in _OF_EACH:
        instead = "write it as a repeat from one to the next, with your own numbers: "
        instead += '"*1 dc in each of the next 4 st, 3 dc in next st; repeat from *"'
    if all(x.type not in ("EXCEPT", "BUT") for x in t[start:end]):
        message = f'how often is not said here: "{said}"'
        instead = 'say in which stitches: "increasing in every 8th stitch"'
    help_ = f'{instead}; until then set it apart: "-- {said} --"'
    return Finding("exception-in-words", message, help_, span)


_OF_EACH = (["OF", "EACH"], ["OF", "EVERY"])


def round_group(words: Sequence[Terminal]) -> Terminal:
    """Words that say that a repeat goes to the end of a scallop, as its number of times, which
    is found where the row below is known."""
    first, last = words[0], words[-1]
    said = " ".join(word.text for word in words)
    return replace(first, type="INALL", text=said, end=last.end, name=GROUP, number=1)


def _behind_times(t: Sequence[Terminal], at: int, kept: list[tuple[int, Terminal]]) -> int:
    """Behind `(12 times in all)`, which stands for the words kept last; else the same place."""
    said = types(t, at, 5)
    if said[:3] != ["LP", "NUM", "TIMES"] or said[3:4] not in (["RP"], ["INALL"]):
        return at
    end = at + 4 + (said[3] == "INALL")
    if t[end - 1].type != "RP":
        return at
    kept[-1] = (at, replace(kept[-1][1], name="", number=t[at + 1].number))
    return end


# --- corners ----------------------------------------------------------------------


def _names_corner(t: Sequence[Terminal], at: int) -> bool:
    """Whether `in the corner stitch`, `in the corner 3 chain`, `in the 3 chain at the corner` names
    a place.

    It does where the row says how often it goes along each side.
    """
    if t[at].text not in ("in the corner", "into the corner", "at the corner"):
        return False
    if not any(x.type in ("TIMES", "MORE") for x in t):
        return False
    noun = past(t, at + 1, "NUM")
    beside = t[at - 1 : at] if t[at].text.startswith("at") else t[noun : noun + 1]
    return bool(beside) and beside[0].type in _NOUNS


def _at_corner(t: Sequence[Terminal], at: int) -> _Stretch | None:
    """What is worked at the corners, where a word for them stands here.

    `at the corners 6 chain …` goes on to the next full stop; `…, 3 dc in each corner` is the
    list before it, back to its `with` or to a step that goes to the end.
    """
    excepts = t[at].type == "EXCEPT" and not t[at].text.startswith(("in ", "at ", "to "))
    end = next((n for n in range(at + 1, len(t)) if t[n].type == "SEP"), len(t))
    near = min(end, at + _NEAR)  # `except at the corners`, `omitting the 2 ch at the corners`
    if excepts and any(_is_corner(x) for x in t[at + 1 : near]):
        return _Stretch(at, _hard_end(t, at), corner=True)
    if not _is_corner(t[at]):
        return None
    if t[at].text.startswith("to "):
        return _to_corner(t, at)
    place = at
    before = t[at - 1] if at else None
    if t[at].type == "STRAY" and before is not None and before.type == "LP":
        end = next((n for n in range(at, len(t)) if t[n].type == "RP"), len(t) - 1)
        return _Stretch(at - 1, end + 1, corner=True)  # `(corner 11 dc)`
    if t[at].type == "STRAY" and (before is None or before.name == "hard"):
        return _Stretch(at, _hard_end(t, at), corner=True)  # `Corner, 3 dc, 5 ch, 3 dc`
    if t[at].type == "STRAY":
        while place and t[place - 1].type in _BEFORE_CORNER:
            place -= 1
        if place and t[place - 1].type == "TO":  # `Sl st to corner, 3 dc in corner, *`
            return _to_corner(t, at)
        if not place or t[place - 1].type not in ("PREP", "OF"):
            return None
        place -= 1
    elif (prep := _place_at(t, at)) < at:
        place = prep  # `in the loop at the corner 1 dc, 7 ch, 1 dc`
    end = _hard_end(t, at)
    opens = place == 0 or t[place - 1].type in ("SEP", "AND", "STAR", "LP")
    opens = opens or _ends_repeat(t, place - 1)
    lead = opens and any(x.type in ("NUM", "SKIP", "EXCEPT") for x in t[at + 1 : end])
    if lead or _says_with(t[at]):
        return _Stretch(place, end, corner=True)
    start = _list_start(t, place - (opens and place > 0))
    stop = next((n for n in range(at, end) if t[n].type in ("SEP", "AND")), end)
    if start is None and (behind := _behind_corner(t, at, stop)):
        return _Stretch(0, behind, corner=True)
    if any(x.type == "SAME" for x in t[stop:end]):
        stop = end  # `…, the last dc in the corner st, ch 5, 1 dc in same st`
    return None if start is None else _Stretch(start, stop, corner=True)


_BEFORE_CORNER = frozenset({"THE", "NUM", "EACH", "EVERY", "OF", *_NOUNS, "CENTRE"})
_NEAR = 9
"""Within so many words an exception names the corners that it is of."""


def _ends_repeat(t: Sequence[Terminal], at: int) -> bool:
    """Whether a bracket ends here that says of itself that it is repeated: `(…, repeat.)`."""
    inside = next((x for x in reversed(t[:at]) if x.type != "SEP"), None)
    return t[at].type == "RP" and inside is not None and inside.type == "REPEAT"


def _to_corner(t: Sequence[Terminal], at: int) -> _Stretch | None:
    """`repeat from * to the next corner`, and `sl st to the corner` at a row's head."""
    end = at + 1 + (at + 1 < len(t) and t[at + 1].type in _NOUNS)
    if any(x.type == "REPEAT" for x in t[max(0, at - 3) : at]):
        hard = _hard_end(t, end)
        same = any(x.type == "SAME" for x in t[end:hard])  # `to corner, put 3 dc in same hole`
        return _Stretch(at, hard if same else end, corner=True)
    slips = all(x.type in ("NUM", "SEP", "ENDING", "TO") or x.name == "ss" for x in t[:at])
    star = next((n for n in range(end, len(t)) if t[n].type == "STAR"), end)
    # `sl st to corner st, ch 8, 1 dc in same, *`
    same = any(x.type == "SAME" or _is_corner(x) for x in t[end:star])
    return _Stretch(0, star if same else end, corner=True) if slips else None


def _place_at(t: Sequence[Terminal], at: int) -> int:
    """Where the place begins that ends before a word: `in the loop`; else the same place."""
    start = at
    while start and t[start - 1].type in _BEFORE_CORNER:
        start -= 1
    return start - 1 if 0 < start < at and t[start - 1].type == "PREP" else at


def _hard_end(t: Sequence[Terminal], at: int) -> int:
    """Where the sentence ends that goes on from here; `then 5 chain` goes on with it."""
    return next((n for n in range(at, len(t)) if _ends_sentence(t, n)), len(t))


def _ends_sentence(t: Sequence[Terminal], at: int) -> bool:
    if t[at].text == "then":
        step = [x.type for x in t[at + 1 : _item_end(t, at + 1)]]
        return not step or bool({"STAR", "PREP", *_DONE} & set(step))
    return t[at].name == "hard" or t[at].type in ("RP", "REPEAT")


def _is_corner(here: Terminal) -> bool:
    return here.type in ("EXCEPT", "STRAY") and "corner" in here.text


def _says_with(here: Terminal) -> bool:
    """Whether a phrase for corners opens what is worked there: `but at the corners`."""
    return here.text.startswith(("but", "and", "with", "turn"))


def _list_start(t: Sequence[Terminal], place: int) -> int | None:
    """Where the list begins that is worked at a corner; None where that cannot be told."""
    start = _item_start(t, place)
    if types(t, start, 1) == ["UNKNOWN"]:
        return start  # `…, adding 2 dc at the corners`
    opened = next((n for n in range(start, place) if t[n].type == "WITH"), 0)
    if opened and all(x.type != "BETWEEN" for x in t[opened:place]):
        return opened
    while start:
        if t[start].type in ("WITH", "BUT") and all(x.type != "BETWEEN" for x in t[start:place]):
            return start
        parts = t[start - 1]
        if parts.type not in ("SEP", "AND"):
            return start if any(x.type == "REPEAT" for x in t[start - 4 : start]) else None
        before = _item_start(t, start - 1)
        # `3 dc in every space, with 1 ch between, and 5 dc in each corner`
        adds = t[start - 1].type == "AND" or t[start].type == "AND"
        done = {x.type for x in t[before : start - 1]} & (_DONE | ({"BETWEEN"} if adds else set()))
        if (
            parts.name == "hard"
            or done
            or (all(x.type == "SEP" for x in t[:before]) and _is_one_stitch(t[: start - 1]))
        ):
            return start
        start = before
    return None


def _is_one_stitch(item: Sequence[Terminal]) -> bool:
    """`Double crochet closely over the hem`: a whole row of one stitch, with no number."""
    sorts = [x.type for x in item]
    return sorts.count("STITCH") == 1 and not {"NUM", "CH", "PICOT"} & set(sorts)


def _behind_corner(t: Sequence[Terminal], at: int, stop: int) -> int:
    """The end of what a row does at its first corner: its star, or a step in each; else 0.

    `6 dc in the corner space, ch 2, * …`; `3 dc in the corner loop, and 3 dc in each space`.
    """
    if any(x.type in _DONE for x in t[:at]):
        return 0
    star = next((n for n, x in enumerate(t) if x.type == "STAR"), 0)
    if star > at:
        return star
    step = t[stop + 1 : _item_end(t, stop + 1)]
    return stop if any(x.type in ("EACH", "EVERY") for x in step) else 0


def _item_end(t: Sequence[Terminal], start: int) -> int:
    return next((n for n in range(start, len(t)) if t[n].type == "SEP"), len(t))


def _item_start(t: Sequence[Terminal], end: int) -> int:
    """Where the step begins that ends here: behind the separator, mark or repeat before it."""
    start = end
    while start and not (t[start - 1].type in ("SEP", *_STOPS) or _adds(t, start - 1)):
        start -= 1
    return start


def _adds(t: Sequence[Terminal], at: int) -> bool:
    """Whether an `and` begins a new step: not so in `each treble and chain`."""
    return t[at].type == "AND" and [x.type for x in t[at + 1 : at + 2]] in (["NUM"], ["WITH"])


# --- all others -------------------------------------------------------------------


def _exception(t: Sequence[Terminal], at: int) -> _Stretch | None:
    """An exception goes on to the next semicolon or full stop."""
    if not _is_exception(t, at):
        return None
    start, end = at, at + 1
    while end < len(t) and t[end].name != "hard":
        end += 1
    if t[at].text.startswith(("in ", "at ")):
        while start and t[start - 1].type not in ("SEP", "STAR", "LP", "RP"):
            start -= 1
    # `increasing 1 at each corner`: how many the corners have is not said, but where they are is
    widens = t[at].type in ("WIDEN", "NARROW")
    return _Stretch(start, end, corner=widens and any(map(_is_corner, t[at:end])))


def _to_group(t: Sequence[Terminal], at: int) -> _Stretch | None:
    """`repeat from * to end of scallop`, `repeat around fan`: as often as that has stitches."""
    if t[at].type not in _BOUNDS or all(x.type != "REPEAT" for x in t[max(0, at - 3) : at]):
        return None
    noun = at + 1
    while noun < len(t) and t[noun].type == "THE":
        noun += 1
    if noun == len(t) or t[noun].text.endswith("s"):  # `round the scallops` is all round
        return None
    kind = t[noun].kind
    heap = kind is not None and kind.name in ("shell", "group", "block")
    heap = heap or asked_place(t[noun].text) is not None
    return _Stretch(at, noun + 1, group=True) if heap else None


def _is_exception(t: Sequence[Terminal], at: int) -> bool:
    """Whether a row goes on otherwise from here: `except`, `but in …`, `increasing 8 times`."""
    behind = [x.type for x in t[at + 1 : at + 3]]
    if t[at].type in ("WIDEN", "NARROW"):
        return behind not in (["PREP", "EACH"], ["EACH", "ORD"], ["EACH", "OTHER"])
    if _but_last(t, at):
        return False
    but = t[at].type == "BUT" and (behind[:1] == ["PREP"] or not at or t[at - 1].type == "SEP")
    return t[at].type == "EXCEPT" or but


def _but_last(t: Sequence[Terminal], at: int) -> bool:
    """Whether `except the last` stands here, behind `a picot after each`, `after each dc`."""
    behind = [x.type for x in t[at + 1 : at + 3] if x.type != "THE"]
    each = at - (t[at - 1].type == "STITCH" if at else 0)
    after = [x.type for x in t[max(0, each - 2) : each]] == ["AFTER", "EACH"]
    return t[at].type in ("EXCEPT", "BUT") and after and behind[:1] == ["ORD"]


def _part(said: str) -> str:
    """The part of the edge that an exception names: `at the corners` is a corner."""
    if "corner" in said.lower():
        return "corner"
    named = re.search(
        r"\b(?:at|in|over|on)\s+(?:each|every|the)\s+((?!end\b)[^\W\d_]+)", said.lower()
    )
    return named[1].removesuffix("s") if named else "corner"
