"""Words for over and over: `alternately`, `and so on`, `4 times` behind a whole row."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.passing import HOW_OFTEN, NOUNS, Terminals, like, types
from border.text.tree import Kind

_ALL_ROUND = (
    ["STITCH", "TOEND"],
    ["ROW", "OF", "STITCH"],
    ["TOEND", "OF", "STITCH"],
    ["TOEND", "PREP", "STITCH"],
)


def repeats_said(t: Terminals) -> Terminals:
    """`alternately`, `and so on`, `4 times more`, `plain all round`: as the repeats they are."""
    for pass_ in (_and_so_on, _alternately, _at_the_end, _whole_rows, _times_of_row):
        t = pass_(t)
    return t


def _and_so_on(t: Terminals) -> Terminals:
    """`and so on` repeats; `continue` does where steps stand before it, and none behind."""
    found: Terminals = []
    for n, here in enumerate(t):
        if here.type == "SOON":
            behind = types(t, n + 1, 1)
            ends = behind in ([], ["SEP"], ["TOEND"], ["TOLAST"], ["RP"], ["ENDING"], ["FROM"])
            here = replace(here, type="REPEAT") if ends and n else like(here, "SEP")
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
        rest = [*rest[:at], like(t[at], "STAR"), *rest[at:]]
    end = len(rest)
    while end and rest[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    if end and rest[end - 1].type == "TOEND":
        end -= 1
    return [*rest[:end], like(t[at], "SEP", name="hard"), like(t[at], "REPEAT"), *rest[end:]]


def _at_the_end(t: Terminals) -> Terminals:
    """`repeat; 1 treble at the end`: as `end with 1 treble`."""
    repeat = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    found = [x for n, x in enumerate(t) if x.type != "ATEND" or n < repeat]
    if len(found) == len(t):
        return t
    stop = next((n for n in range(repeat, len(found)) if found[n].type == "SEP"), len(found))
    return [*found[: stop + 1], like(t[repeat], "ENDWITH"), *found[stop + 1 :]]


def _whole_rows(t: Terminals) -> Terminals:
    """`plain all round`, `a row of treble`: the whole text is one stitch in each."""
    told = [x for x in t if x.type not in ("SEP", "ENDING", "BETW")]
    kinds = [x.type for x in told]
    kinds = kinds[1:] if kinds[:1] == ["NUM"] and told[0].number == 1 else kinds
    if kinds not in _ALL_ROUND:
        return _without_to_end(t)
    stitch = next(x for x in told if x.type == "STITCH")
    each = [like(stitch, "PREP"), like(stitch, "EACH"), like(stitch, "KIND", Kind("st"))]
    rest = [x for x in t if x.type in ("BETW", "ENDING")]
    return [stitch, *each, *rest]


def _without_to_end(t: Terminals) -> Terminals:
    """`in every other stitch, to the end`: that goes to the end already."""
    found: Terminals = []
    for here in t:
        comma = bool(found) and found[-1].type == "SEP" and not found[-1].name
        before = [x.type for x in found[: len(found) - comma]][-3:]
        open_place = before[-1:] != [] and before[-1] in NOUNS and {"EACH", "EVERY"} & set(before)
        if here.type != "TOEND" or not open_place:
            found.append(here)
    return found


def _times_of_row(t: Terminals) -> Terminals:
    """`2 tr, 3 ch, 4 times`: behind a comma at a row's end it is said of the whole row."""
    end = len(t)
    while end and t[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    if end < 3 or t[end - 1].type not in HOW_OFTEN or t[end - 2].type != "SEP":
        return t
    if t[end - 3].type == "RP" or any(x.type in ("STAR", "REPEAT") for x in t[: end - 1]):
        return t
    often = t[end - 1]
    counted = "INALL" if often.type == "TIMES" else often.type
    repeat = [like(often, "REPEAT", name="row"), replace(often, type=counted)]
    return [*t[: end - 1], *repeat, *t[end:]]
