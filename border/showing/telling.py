"""Findings as people read them: where, what, the line with a caret under it, what to do."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Mapping

from border.findings import Finding, Severity, Span
from border.text.source import Source

WIDTH = 76
"""Columns of a source line that are shown."""
MOST = 200
"""Findings told in full."""
NEAR = 2 * WIDTH
TAB = 4
_STYLES = {Severity.ERROR: "1;31", Severity.WARNING: "1;33", Severity.NOTE: "1;36"}
_CARET, _PLACE, _HELP = "1;32", "1", "32"
_UNSEEN = "\ufffd"
# Marks that turn the direction of writing could make a line read other than it is.
_TURNING = frozenset("\u200e\u200f\u061c\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
_NOT_SHOWN = frozenset({"Cc", "Cs", "Zl", "Zp"})


def harmless(text: str) -> str:
    """A user's text on one line, its control characters shown as a question mark in a box."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(
        _UNSEEN if c in _TURNING or unicodedata.category(c) in _NOT_SHOWN else c for c in text
    )


def width_of(text: str) -> int:
    """The columns that a text takes on a terminal."""
    return len(text) if text.isascii() else sum(_width(c) for c in text)


def in_order(findings: Iterable[Finding], sources: Mapping[str, Source]) -> tuple[Finding, ...]:
    """Findings by file and position, the same one once; those without a place come last.

    Files come in the order of `sources`. What a round may be meant as stands together, at the
    place of the likeliest, which was found first.
    """
    files = {name: i for i, name in enumerate(sources)}
    findings = list(findings)
    likeliest: dict[int | None, Finding] = {}
    for finding in findings:
        if finding.code == _READ_SO:
            likeliest.setdefault(finding.round, finding)

    def place(finding: Finding) -> tuple[bool, int, str, int, int]:
        finding = likeliest[finding.round] if finding.code == _READ_SO else finding
        span = finding.span
        if span is None:
            return True, 0, "", 0, finding.round or 0
        rank = files.get(span.source, len(files))
        return False, rank, span.source, span.start, finding.round or 0

    return tuple(sorted(dict.fromkeys(findings), key=place))


_READ_SO = "perhaps-read-so"
"""The code of a reading with which a round would come out; several are found the likelier first."""


def tell(finding: Finding, sources: Mapping[str, Source], colour: bool = False) -> str:
    """One finding in full, its lines ended by a line end each."""
    source = sources.get(finding.span.source) if finding.span else None
    severity = finding.severity
    head = _paint(f"{severity}:", _STYLES[severity], colour)
    lines = [f"{head} {harmless(finding.message)} [{finding.code}]"]
    if finding.span and source:
        line, column = source.line_column(finding.span.start)
        where = f"{harmless(finding.span.source)}:{line}:{column}:"
        lines[0] = f"{_paint(where, _PLACE, colour)} {lines[0]}"
        shown, caret = _pointed(source, finding.span)
        if shown.strip():
            lines += [f"    {shown}", f"    {_paint(caret, _CARET, colour, indented=True)}"]
    elif finding.span:
        lines[0] = f"{_paint(harmless(finding.span.source) + ':', _PLACE, colour)} {lines[0]}"
    if finding.help:
        first, *more = finding.help.splitlines()
        lines.append(f"  {_paint('help:', _HELP, colour)} {harmless(first)}")
        lines += [f"        {harmless(each)}" for each in more]
    return "\n".join(lines) + "\n"


def tell_all(
    findings: Iterable[Finding], sources: Mapping[str, Source], colour: bool = False
) -> str:
    """All findings in order; beyond `MOST` of them, only how many more there are."""
    told = in_order(findings, sources)
    text = "".join(tell(f, sources, colour) for f in told[:MOST])
    more = len(told) - MOST
    return text + f"... and {more} more, all of them with --json\n" if more > 0 else text


def summed_up(findings: Iterable[Finding]) -> str:
    """`2 errors, 1 note`, or nothing."""
    found = list(dict.fromkeys(findings))
    parts = []
    for severity in Severity:
        n = sum(f.severity is severity for f in found)
        if n:
            parts.append(f"{n} {severity}{'s' if n > 1 else ''}")
    return ", ".join(parts)


def _pointed(source: Source, span: Span) -> tuple[str, str]:
    """The line in which a span begins, cut to what fits, and the caret line under it."""
    line, column = source.line_column(span.start)
    text = source.line_text(line)
    start = min(column - 1, len(text))
    end = max(min(start + span.end - span.start, len(text)), start + 1)
    # Only what can be shown is looked at: a line may be a million characters long.
    cut = max(start - NEAR, 0)
    cells = list(_cells(text[cut : start + NEAR]))
    start, end = start - cut, end - cut
    first, last = 0, len(cells)
    if cut or last < len(text) - cut or _columns(cells) > WIDTH:
        first, last = _window(cells, start)
    head = "..." if cut or first else ""
    tail = "..." if cut + last < len(text) else ""
    shown = head + "".join(cell for cell, _ in cells[first:last]) + tail
    before = len(head) + _columns(cells[first:start])
    return shown.rstrip(), " " * before + "^" * max(_columns(cells[start : min(end, last)]), 1)


def _window(cells: list[tuple[str, int]], start: int) -> tuple[int, int]:
    """The cells to show of a long line: some before the caret, the rest behind it."""
    first, before = min(start, len(cells)), 0
    while first > 0 and before + cells[first - 1][1] <= WIDTH // 2:
        first -= 1
        before += cells[first][1]
    last, behind = min(start, len(cells)), 0
    while last < len(cells) and before + behind + cells[last][1] <= WIDTH - 6:
        behind += cells[last][1]
        last += 1
    return first, last


def _cells(text: str) -> Iterator[tuple[str, int]]:
    """Every character as it is shown, and the columns that it takes."""
    at = 0
    for c in text:
        shown = " " * (TAB - at % TAB) if c == "\t" else harmless(c)
        width = len(shown) if c == "\t" else _width(c)
        at += width
        yield shown, width


def _columns(cells: list[tuple[str, int]]) -> int:
    return sum(width for _, width in cells)


def _width(c: str) -> int:
    if c.isascii():
        return 1
    if unicodedata.category(c) in ("Mn", "Me") or c in "\u200b\u200c\u200d\ufe0e\ufe0f\ufeff":
        return 0
    return 2 if unicodedata.east_asian_width(c) in ("W", "F") else 1


def _paint(text: str, style: str, colour: bool, indented: bool = False) -> str:
    if not colour:
        return text
    blank = len(text) - len(text.lstrip()) if indented else 0
    return f"{text[:blank]}\033[{style}m{text[blank:]}\033[0m"
