"""Sentences of the books, turned the way the grammar has them.

A place before its stitches, `alternately`, `and so on`, `4 times` behind a whole
row, `3 chain between` behind a comma, a colour.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.terminals import Terminal
from border.text.tree import Kind

Terminals = list[Terminal]

_NOUNS = frozenset({"KIND", "STITCH", "CH", "PICOT"})
_PLACE = frozenset(
    {"THE", "NEXT", "EACH", "EVERY", "EACHOF", "SAME", "SKIPPED", "ORD", "NUM", "CENTRE", "OF"}
    | {"PAIR", "BETWEEN", "MOD", "PREP", "PLACE"}
)
_STITCHES = frozenset({"STITCH", "CLUSTER"})
_ALL_ROUND = (
    ["STITCH", "TOEND"],
    ["ROW", "OF", "STITCH"],
    ["TOEND", "OF", "STITCH"],
    ["TOEND", "PREP", "STITCH"],
)
_HOW_OFTEN = frozenset({"TIMES", "MORE", "INALL"})


def _types(t: Sequence[Terminal], at: int, count: int) -> list[str]:
    return [x.type for x in t[at : at + count]]


def _like(here: Terminal, type_: str, kind: Kind | None = None, name: str = "") -> Terminal:
    """A terminal that the text leaves unsaid, where another one stands."""
    return replace(here, type=type_, kind=kind, number=0, name=name, glued=False, chain=False)


# --- skips and chains between -------------------------------------------------------


def under_chains(t: Terminals) -> Terminals:
    """`missing 3 under them`, `under which miss 3`: what lies over a skip says nothing more."""
    found: Terminals = []
    skipped = False
    at = 0
    while at < len(t):
        here = t[at]
        if here.type == "UNDERIT" and (skipped or _types(t, at + 1, 1) == ["SKIP"]):
            at += 1
            continue
        bare = ["PREP", "THE", "CH"]
        if skipped and _types(t, at, 3) == bare and here.text in ("under", "beneath"):
            at += 3
            continue
        if here.type == "UNDERIT":
            here = replace(here, type="STRAY")
        skipped = here.type == "SKIP" or (skipped and here.type in ("NUM", *_NOUNS, "EACH", "THE"))
        found.append(here)
        at += 1
    return found


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
    pair = _types(t, at, 2)
    taken = 2 if pair in (["NUM", "CH"], ["CH", "NUM"]) else 1 if pair[:1] == ["CH"] else 0
    if not taken or _types(t, at + taken, 1) != ["BETWEEN"]:
        return 0
    taken += 1
    taken += _types(t, at + taken, 1) in (["EACH"], ["THEM"])
    each = t[at + taken - 1].type == "EACH"
    taken += each and at + taken < len(t) and t[at + taken].type in _NOUNS
    behind = _types(t, at + taken, 1)
    return (
        taken if behind in ([], ["SEP"], ["RP"], ["REPEAT"], ["STAR"], ["PREP"], ["ENDING"]) else 0
    )


def fastened(t: Terminals) -> Terminals:
    """`fasten with a double into …` is that double; `same stitch as the last` the same stitch.

    `repeat; slip on the first` joins the round.
    """
    found: Terminals = []
    at = 0
    while at < len(t):
        here, behind = t[at], _types(t, at + 1, 3)
        if here.name == "ss" and _joins(t, at):
            here = replace(here, type="ENDING", name="join")
        fastens = here.type == "ENDING" and here.name == "fasten off"
        if fastens and behind[:1] == ["WITH"] and "STITCH" in behind[1:]:
            at += 2
            continue
        said = any(x.type == "SAME" for x in found[-2:])
        if said and here.type == "AS" and (end := _behind_last(t, at + 1)) > at:
            at = end
            continue
        found.append(here)
        at += 1
    return found


def _behind_last(t: Sequence[Terminal], at: int) -> int:
    """Behind `the last [stitch]`, `last row`; 0 where that does not stand."""
    at += _types(t, at, 1) == ["THE"]
    if _types(t, at, 1) not in (["ORD"], ["NOTHING"]):
        return 0
    return at + 1 + (at + 1 < len(t) and t[at + 1].type in _NOUNS)


def _joins(t: Sequence[Terminal], at: int) -> bool:
    """Whether a slip stitch behind a repeat goes into what is first in the row."""
    place = [x for x in t[at + 1 : at + 4] if x.type != "THE"]
    first = [x.type for x in place[:2]] in (["PREP", "ORD"], ["TO", "ORD"]) and place[1].number == 1
    return first and t[at - 1].type == "SEP" and any(x.type == "REPEAT" for x in t[:at])


def begun_further_on(t: Terminals) -> Terminals:
    """`9 treble beginning on the 2nd of the 10`: the first on that, the rest behind it."""
    found: Terminals = []
    at = 0
    while at < len(t):
        comma = _types(t, at, 1) == ["SEP"] and not t[at].name
        begin = at + comma
        counted = [x.type for x in found[-2:]] == ["NUM", "STITCH"] and found[-2].number > 1
        if not counted or _types(t, begin, 2) != ["BEGIN", "PREP"] or at == 0:
            found.append(t[at])
            at += 1
            continue
        number, stitch = found[-2:]
        end = _place_at(t, begin + 1)
        found[-2:] = [replace(number, number=1), stitch, *t[begin + 1 : end]]
        rest = replace(number, number=number.number - 1)
        found += [_like(number, "SEP", name="hard"), rest, stitch]
        at = max(end, begin + 2)
    return found


# --- a place before its stitches ----------------------------------------------------


def places_first(t: Terminals) -> Terminals:
    """`in each loop work 1 dc, 5 tr, 1 dc`: as `(1 dc, 5 tr, 1 dc) in each loop`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        opens = not found or found[-1].type in ("SEP", "STAR", "LP")
        opens = opens and _types(found, len(found) - 2, 1) != ["BETW"]
        end = _place_at(t, at) if opens and t[at].type == "PREP" else at
        if end > at and _goes_behind(found):
            found.pop()
            end = at
        if end == at:
            found.append(t[at])
            at += 1
            continue
        start = end + (_types(t, end, 1) == ["SEP"])
        stop = _list_end(t, start)
        if stop == start:
            found += t[at:end]
            at = end
            continue
        place, steps = t[at:end], places_first(list(t[start:stop]))
        parted = [x for x in steps[-1:] if x.type == "BETW"]
        steps = steps[: _trimmed(steps, 0, len(steps) - len(parted))]
        single = _types(steps, 0, 2) == ["NUM", "STITCH"] and len(steps) == 2
        if single or [x.type for x in steps] == ["STITCH"]:
            found += [*steps, *place, *parted]
        else:
            left, right = _like(place[0], "LP"), _like(place[-1], "RP")
            found += [left, *steps, right, *place, *parted]
        at = stop
    return found


def _goes_behind(found: Sequence[Terminal]) -> bool:
    """Whether a place belongs, comma or not, to the stitch before it, which has none yet."""
    if len(found) < 2 or found[-1].type != "SEP" or found[-1].name:
        return False
    return found[-2].type in _STITCHES


def _place_at(t: Sequence[Terminal], at: int) -> int:
    """Behind a place that opens a step; the same place where there is none."""
    end = at + 1
    while end < len(t) and t[end].type in _PLACE:
        end += 1
    if end >= len(t) or t[end].type not in _NOUNS:
        return end if end < len(t) and t[end - 1].type in ("SAME", "PLACE") else at
    end += 1
    if _types(t, end, 1) in (["OF"], ["OR"]):
        return _place_at(t, end)
    return end


def _list_end(t: Sequence[Terminal], start: int) -> int:
    """Behind the steps that go with a place said before them.

    They go on to a semicolon or full stop, a mark, or the step that has a place of
    its own; the chains before that one are its own, too.
    """
    depth, step = 0, start
    for n in range(start, len(t)):
        here = t[n]
        if here.type == "LP":
            depth += 1
        elif here.type == "RP":
            depth -= 1
        if depth < 0 or (depth == 0 and _ends_list(here)):
            return _trimmed(t, start, n)
        if depth == 0 and here.type == "SEP" and _is_stitch(t, step, n):
            step = n
        if depth == 0 and here.type in ("PREP", "ALLIN", "BETWEEN", "SKIP"):
            return _trimmed(t, start, step)
    return _trimmed(t, start, len(t))


def _ends_list(here: Terminal) -> bool:
    hard = here.type == "SEP" and here.name == "hard"
    return hard or here.type in ("STAR", "REPEAT", "ENDING", "ENDWITH", "SOON", *_HOW_OFTEN)


def _is_stitch(t: Sequence[Terminal], start: int, end: int) -> bool:
    """Whether a step of the list has ended that makes stitches or picots."""
    return any(x.type in ("STITCH", "CLUSTER", "PICOT", "RP") for x in t[start:end])


def _trimmed(t: Sequence[Terminal], start: int, end: int) -> int:
    while end > start and t[end - 1].type == "SEP":
        end -= 1
    return end


# --- over and over ------------------------------------------------------------------


def repeats_said(t: Terminals) -> Terminals:
    """`alternately`, `and so on`, `4 times more`, `plain all round`: as the repeats they are."""
    for pass_ in (_and_so_on, _alternately, _at_the_end, _whole_rows, _to_the_end, _times_of_row):
        t = pass_(t)
    return t


def _and_so_on(t: Terminals) -> Terminals:
    """`and so on` repeats; `continue` does where steps stand before it, and none behind."""
    found: Terminals = []
    for n, here in enumerate(t):
        if here.type == "SOON":
            behind = _types(t, n + 1, 1)
            ends = behind in ([], ["SEP"], ["TOEND"], ["TOLAST"], ["RP"], ["ENDING"], ["FROM"])
            here = replace(here, type="REPEAT") if ends and n else _like(here, "SEP")
        found.append(here)
    return found


def _alternately(t: Terminals) -> Terminals:
    """Before its steps the word opens a repeat, behind them it closes one."""
    at = next((n for n, x in enumerate(t) if x.type == "ALTERNATELY"), None)
    if at is None:
        return t
    rest = [x for n, x in enumerate(t) if n != at]
    if any(x.type == "REPEAT" for x in rest):
        return rest
    follows = any(x.type not in ("SEP", "ENDING", "TOEND") for x in t[at + 1 :])
    leads = follows and (at == 0 or t[at - 1].type in ("SEP", "STAR", "LP"))
    if leads and at > 0:
        rest = [*rest[:at], _like(t[at], "STAR"), *rest[at:]]
    end = len(rest)
    while end and rest[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    if end and rest[end - 1].type == "TOEND":
        end -= 1
    return [*rest[:end], _like(t[at], "SEP", name="hard"), _like(t[at], "REPEAT"), *rest[end:]]


def _at_the_end(t: Terminals) -> Terminals:
    """`repeat; 1 treble at the end`: as `end with 1 treble`."""
    repeat = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    found = [x for n, x in enumerate(t) if x.type != "ATEND" or n < repeat]
    if len(found) == len(t):
        return t
    stop = next((n for n in range(repeat, len(found)) if found[n].type == "SEP"), len(found))
    return [*found[: stop + 1], _like(t[repeat], "ENDWITH"), *found[stop + 1 :]]


def _whole_rows(t: Terminals) -> Terminals:
    """`plain all round`, `a row of treble`: the whole text is one stitch in each."""
    told = [x for x in t if x.type not in ("SEP", "ENDING", "BETW")]
    kinds = [x.type for x in told]
    kinds = kinds[1:] if kinds[:1] == ["NUM"] and told[0].number == 1 else kinds
    if kinds not in _ALL_ROUND:
        return _without_to_end(t)
    stitch = next(x for x in told if x.type == "STITCH")
    each = [_like(stitch, "PREP"), _like(stitch, "EACH"), _like(stitch, "KIND", Kind("st"))]
    rest = [x for x in t if x.type in ("BETW", "ENDING")]
    return [stitch, *each, *rest]


def _without_to_end(t: Terminals) -> Terminals:
    """`in every other stitch, to the end`: that goes to the end already."""
    found: Terminals = []
    for here in t:
        comma = bool(found) and found[-1].type == "SEP" and not found[-1].name
        end = len(found) - comma
        before = [x.type for x in found[max(0, end - 3) : end]]
        open_place = before[-1:] != [] and before[-1] in _NOUNS and {"EACH", "EVERY"} & set(before)
        if here.type != "TOEND" or not open_place:
            found.append(here)
    return found


def _to_the_end(t: Terminals) -> Terminals:
    """`1 treble, 1 chain, miss 1, all round`: the row itself goes on to the end."""
    end = len(t)
    while end and t[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    if end < 3 or t[end - 1].type != "TOEND" or t[end - 2].type in ("RP", *_HOW_OFTEN):
        return t
    if any(x.type in ("STAR", "REPEAT") for x in t):
        return t
    return [*t[: end - 1], _like(t[end - 1], "REPEAT"), *t[end - 1 :]]


def _times_of_row(t: Terminals) -> Terminals:
    """`2 tr, 3 ch, 4 times`: behind a comma at a row's end it is said of the whole row."""
    end = len(t)
    while end and t[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    if end < 3 or t[end - 1].type not in _HOW_OFTEN or t[end - 2].type != "SEP":
        return t
    if t[end - 3].type == "RP" or any(x.type in ("STAR", "REPEAT") for x in t[: end - 1]):
        return t
    often = t[end - 1]
    counted = "INALL" if often.type == "TIMES" else often.type
    repeat = [_like(often, "REPEAT", name="row"), replace(often, type=counted)]
    return [*t[: end - 1], *repeat, *t[end:]]


# --- colours ------------------------------------------------------------------------


def colours(t: Terminals) -> Terminals:
    """A colour goes with its stitches or chains: with those before it, else the next ones."""
    found: Terminals = []
    waiting: Terminals = []
    for n, here in enumerate(t):
        if here.type == "COLOUR":
            leads = not found or found[-1].type in ("SEP", "STAR", "LP", "NUM")
            kept = replace(here, type="MOD")
            if leads:
                waiting.append(kept)
                if _types(t, n + 1, 1) == ["SEP"]:
                    waiting.append(_like(here, "DROP"))
            else:
                found.append(kept)
            continue
        if waiting and waiting[-1].type == "DROP" and here.type == "SEP":
            waiting.pop()
            continue
        found.append(here)
        if waiting and here.type in ("STITCH", "CH"):
            found += waiting
            waiting = []
    return found + [replace(x, type="STRAY") for x in waiting if x.type != "DROP"]
