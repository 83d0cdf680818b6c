"""Where the last stitch falls: `repeat from *, working the last treble in the 3rd of the turning
chain`.

The chains that the row below began with stand for its first stitch, so that the repeat comes to
it as to any other. What says so makes nothing, and is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from border.findings import Finding
from border.text.passing import HOW_OFTEN, types
from border.text.source import Source
from border.text.words import shortened

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_COMES = frozenset({"being", "coming", "comes", "falling", "falls"})
_EXTENT = HOW_OFTEN | {"TOEND", "FROM", "THE", "STAR", "MARK", "CROSS", "STARWORD", "FROMHEAD"}
_EXTENT |= {"NUM"}
_LED = frozenset({"SEP", "AND", "WITH", "THE", "NOTHING"})


def without_last_stitches(
    terminals: list[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without such words, and what is told of them."""
    found: list[Terminal] = []
    findings: list[Finding] = []
    at = 0
    while at < len(terminals):
        here = terminals[at]
        last = here.type == "ORD" and here.number == -1
        end = _behind(terminals, at) if last and _led(found) else at
        if end == at:
            found.append(here)
            at += 1
            continue
        first = here
        while found[-1].type in _LED:
            word = found.pop()
            first = word if word.text.isalpha() and word.type != "AND" else first
        findings.append(_told(first, terminals[end - 1], source))
        at = end
    return found, findings


def _led(found: Sequence[Terminal]) -> bool:
    """Whether these words end in a repeat, or in `with 2 chain between`."""
    at = len(found)
    while at and found[at - 1].type in _LED:
        at -= 1
    if at == len(found) or all(x.type in ("THE", "NOTHING") for x in found[at:]):
        return False
    between = at - (types(found, at - 1, 1) in (["EACH"], ["THEM"]))
    if types(found, between - 2, 2) in (["CH", "BETWEEN"], ["NUM", "BETWEEN"]):
        return True
    while at and found[at - 1].type in _EXTENT:
        at -= 1
    return types(found, max(0, at - 1), 1) in (["REPEAT"], ["SOON"])


def _behind(t: Sequence[Terminal], at: int) -> int:
    """Behind `last treble in the 3rd of 5 chain`; the same place where no such chain is named."""
    end = at + 1
    end += types(t, end, 1) in (["STITCH"], ["KIND"]) or (
        types(t, end, 1) == ["NUM"] and t[end].number == 1
    )
    while end < len(t) and (t[end].text in _COMES or (t[end].type == "SEP" and _is_word(t[end]))):
        end += 1
    if types(t, end, 1) != ["PREP"]:
        return at
    top = "top" in t[end].text
    end = _past(t, end + 1, "THE")
    if types(t, end, 1) == ["ORD"] and not top:
        end += 1 + (types(t, end + 1, 1) in (["CH"], ["KIND"]))
        if types(t, end, 1) != ["OF"]:
            return at
        end, top = _past(t, end + 1, "THE"), True
    turning = end < len(t) and t[end].text == "turning"
    chain = _past(t, end + turning, "NUM")
    if types(t, chain, 1) != ["CH"] or not (top or turning):
        return at
    end = _past(t, chain + 1, "NUM") if chain == end + turning else chain + 1
    end = _past(t, end, "NOTHING", "ATEND")
    ended = end >= len(t) or t[end].type in ("SEP", "ENDING", "RP")
    return end if ended else at


def _is_word(here: Terminal) -> bool:
    return here.text.isalpha()


def _past(t: Sequence[Terminal], at: int, *of: str) -> int:
    while at < len(t) and t[at].type in of:
        at += 1
    return at


def _told(first: Terminal, last: Terminal, source: Source) -> Finding:
    span = source.span(first.start, last.end)
    said = shortened(source.text[span.start : span.end])
    message = (
        f'"{said}" is taken for a remark: the chains that the row below began with stand for its '
        "first stitch, and the last one here falls on them"
    )
    help_ = (
        f'set it apart: "-- {said} --"; if it is one stitch more, write "end with 1 … in last st"'
    )
    return Finding("taken-as-remark", message, help_, span)
