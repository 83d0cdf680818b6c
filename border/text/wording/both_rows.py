"""A stitch round the chains of two rows at once: `1 sc under the two chains of 4`.

It draws the loop of an older row up to that of the row below, in which it is counted; told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from border.findings import Finding
from border.text.source import Source
from border.text.tree import Kind
from border.text.wording.passing import like, past, types
from border.text.words import quoted

if TYPE_CHECKING:
    from border.text.terminals import Terminal


_ROUND = frozenset({"over", "under", "round", "around", "beneath"})


def with_both_rows(
    terminals: list[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals with every such place as the loop of the row below, and what is told."""
    found: list[Terminal] = []
    findings: list[Finding] = []
    at = 0
    while at < len(terminals):
        end, size = at, 0
        if terminals[at].text in _ROUND and _one_before(found):
            end, size = _behind_both(terminals, at)
        elif (step := _caught(terminals, at)) is not None:
            stitch, end, size = step
            found += stitch
        if end == at:
            found.append(terminals[at])
            at += 1
            continue
        here = terminals[at]
        space = like(here, "KIND", Kind("space", size or None))
        found += [like(here, "PREP"), like(here, "THE"), space]
        findings.append(_told(here, terminals[end - 1], size, source))
        at = end
    return found, findings


def _caught(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int, int] | None:
    """`catch down the two chains of 5 with 1 sc`: the stitch, the place behind it all, and the size
    of the loop (0: not said); None where no such thing stands here."""
    number = past(t, at + 1, "THE")
    said = t[at].type == "CATCH" and types(t, number, 2) == ["NUM", "CH"]
    if not said or not _are_several(t, number) or not t[number + 1].text.endswith("s"):
        return None
    sized = types(t, number + 2, 2) == ["OF", "NUM"]
    size = t[number + 3].number if sized else 0
    by = past(t, number + 2 + 2 * sized, "TOGETHER", "NOTHING")
    stitch = past(t, by + 1, "NUM")
    if types(t, by, 1) != ["WITH"] or types(t, stitch, 1) != ["STITCH"]:
        return None
    return list(t[by + 1 : stitch + 1]), stitch + 1, size


def _are_several(t: Sequence[Terminal], at: int) -> bool:
    """Whether a number of rows' chains that may lie together stands here."""
    return types(t, at, 1) == ["NUM"] and t[at].number in _SEVERAL


_SEVERAL = range(2, 5)


def _one_before(found: Sequence[Terminal]) -> bool:
    """Whether one stitch is made here."""
    if types(found, len(found) - 1, 1) != ["STITCH"]:
        return False
    return types(found, len(found) - 2, 1) != ["NUM"] or found[-2].number == 1


def _behind_both(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """Behind `under the two chains of 4`, `over the chains of last two rows`, and the size of the
    loop (0: not said); the same place where no such thing is named."""
    named = past(t, at + 1, "THE")
    if t[at].text in ("round", "around") and t[named : named + 1] and t[named].text == "both loops":
        return named + 1, 0
    both = types(t, named, 1) == ["ALL"] and t[named].text == "both"
    two = _are_several(t, named)
    chains = past(t, named + (both or two), "THE")
    if both or two:
        end, size = at, 0
        if types(t, chains, 2) == ["NUM", "CH"]:  # `round the two 4 chains`
            end, size = chains + 2, t[chains].number
        elif types(t, chains, 3) == ["CH", "OF", "NUM"]:
            end, size = chains + 3, t[chains + 2].number
        elif (
            t[chains : chains + 1]
            and t[chains].text in _STRANDS
            and types(t, chains + 1, 3) in (["OF", "NUM", "CH"], ["OF", "CH", "NUM"])
        ):  # `over the two bars of four chain`
            end, size = chains + 4, t[chains + 2].number or t[chains + 3].number
            rows = past(t, end + 1, "THE", "ORD", "UNKNOWN") if types(t, end, 1) == ["OF"] else 0
            end = rows + 1 if rows and types(t, rows, 1) == ["ROW"] else end
        elif both and types(t, chains, 1) == ["CH"]:
            end = chains + 1
            rows = past(t, end + 1, "THE", "ORD", "AND") if types(t, end, 1) == ["OF"] else end
            end = rows + (types(t, rows, 1) in (["ROW"], ["ROUND"]))  # `of 3rd and 4th rows`
        elif types(t, chains, 1) == ["CH"] and _lies_below(t, chains + 1):
            end = chains + 2  # `over the 2 chains beneath`
        more = types(t, end, 1) == ["AND"]  # `over both chains and the dc`
        more = more and types(t, past(t, end + 1, "PREP", "THE"), 1) in (["STITCH"], ["KIND"])
        return (at, 0) if more else (end, size)
    loops = past(t, named, "NUM")
    if types(t, loops, 4) == ["KIND", "OF", "THE", "ROW"] and t[loops].chain:
        below = types(t, loops + 4, 1) == ["NOTHING"]  # `round the 5-ch loops of the rows below`
        size = t[named].number if loops > named else 0
        return (loops + 5, size) if below and t[loops + 3].text.endswith("s") else (at, 0)
    rows = past(t, chains + 2, "THE", "ORD")
    said = types(t, chains, 2) == ["CH", "OF"] and types(t, rows, 2) == ["NUM", "ROW"]
    return (rows + 2, 0) if said and t[rows].number == 2 else (at, 0)


_STRANDS = ("bars", "strands", "lines")


def _lies_below(t: Sequence[Terminal], at: int) -> bool:
    """Whether `beneath` ends a place: the chains of this row and the one before lie there."""
    if at >= len(t):
        return False
    ends = at + 1 == len(t) or t[at + 1].type in ("SEP", "RP")
    return t[at].text in ("beneath", "below", "underneath") and t[at - 1].text == "chains" and ends


def _told(first: Terminal, last: Terminal, size: int, source: Source) -> Finding:
    span = source.span(first.start, last.end)
    said = quoted(source, span)
    message = (
        f'"{said}" is taken for the chains of several rows together, and counted in the '
        "loop of the row below"
    )
    loop = f"ch-{size} space" if size else "space"
    help_ = f'write "in next {loop}", or where else it goes, to say so'
    return Finding("place-assumed", message, help_, span)
