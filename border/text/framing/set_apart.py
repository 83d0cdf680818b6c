"""Remarks between `--` and `--` that would be steps: `2 dc--2 ch--2 dc`, `1 sc -- ch 5 -- 1 sc`.

Old books part steps with dashes. A remark is never worked, so that such a one is told; right
between steps, with no blank on either side, it is no remark at all.
"""

from __future__ import annotations

from collections.abc import Sequence

from border.findings import Finding
from border.text.source import Source
from border.text.vocabulary import Names
from border.text.wording.assumed import SPACES
from border.text.wording.terminals_read import read_terminals
from border.text.words import Word, remarks_in, shortened

_LONGEST = 40
"""A remark of more words is none of steps alone."""
_MADE = frozenset({"STITCH", "CH", "PICOT", "SKIP"})
_WORKED = _MADE | {"REPEAT"}
_STEPS = _WORKED | frozenset(
    {"NUM", "ORD", "SEP", "AND", "THE", "NEXT", "EACH", "SAME", "PREP", "KIND", "STAR", "FROMSTAR"}
    | {"TOEND", "TIMES", "LP", "RP", "ENDING"}
)
_FURTHER = frozenset(
    {"OF", "CENTRE", "EACHOF", "UNDERIT", "STRAY", "FROMHOOK", "AS", "FROM", "AFTER", "DRAWING"}
    | {"WITH", "DIVIDED", "BETWEEN", "THEM"}
)
"""In steps that begin with what is made these stand as well; elsewhere a remark may be so said."""
_HARMLESS = frozenset({"term-unknown-here", "place-assumed"})


def steps_set_apart(words: Sequence[Word], names: Names, source: Source, row: int) -> list[Finding]:
    """What is told of the remarks in a row's words that would be steps; `row`: its number.

    Before the first step of a row they are the chain to begin with; what goes into the side of
    the work may be set apart.
    """
    return [
        _told(words, opening, closing, source)
        for opening, closing in remarks_in(words)
        if opening and _are_steps(words[opening + 1 : closing], names, source, row)
    ]


def _are_steps(words: Sequence[Word], names: Names, source: Source, row: int) -> bool:
    """Whether words are steps and nothing else, with their numbers, or a repeat."""
    if not 0 < len(words) <= _LONGEST:
        return False
    terminals, told = read_terminals(words, names, source, set(), SPACES, row)
    types = {t.type for t in terminals}
    if any(finding.code not in _HARMLESS for finding in told):
        return False
    counted = "NUM" in types and types & _MADE
    begun = bool(terminals) and terminals[0].type in ("NUM", "CH")
    steps = _STEPS | _FURTHER if begun else _STEPS
    return types <= steps and bool(counted or "REPEAT" in types)


def _told(words: Sequence[Word], opening: int, closing: int, source: Source) -> Finding:
    first, last = words[opening], words[closing]
    said = shortened(source.text[first.end : last.start].strip())
    span = source.span(first.start, last.end)
    tied = words[opening - 1].end == first.start and closing + 1 < len(words)
    if tied and words[closing + 1].start == last.end:
        message = f'"{said}" stands between "--" and "--" as a remark does, and looks like steps'
        help_ = (
            f'if it is worked, write ", {said}," with commas, or a dash "—" for each "--"; '
            f'if not, write " -- {said} -- " with blanks'
        )
        return Finding("not-understood", message, help_, span)
    message = f'"{said}" stands between "--" and "--", and is not worked: that is a remark'
    help_ = (
        f'if it is worked, write ", {said}," with commas, or a dash "—" for each "--"; '
        "if not, leave it out, or put it behind a #"
    )
    return Finding("perhaps-worked", message, help_, span)
