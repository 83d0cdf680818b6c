"""Border texts by file: each read once, those that it copies from with it.

A file is known by its path, so that two ways of writing one path are one file
and rows that copy each other in a circle, through any number of files, meet.
"""

from __future__ import annotations

import posixpath
from bisect import bisect_right
from collections.abc import Callable, Collection, Iterable, Iterator

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding, Severity, Span
from border.text.readings import Reading, read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border, Copy, Headings, Row

Read = Callable[[str], Source | Finding]
"""Reads a file by its name: its text, or the finding `file-unreadable`."""

_STILL_COUNTED = frozenset({"place-unclear"})
"""Faults in a row that leave a reading of it to count with."""


class BorderText(Struct, frozen=True):
    """A border file as read. `reading` holds the rounds that can be relied on.

    `faulty`: the first round that could not be made out, after which nothing
    is counted; None where all of them were. `headings`: what the text says at its top.
    `rows`: the rows as they are written, up to that round.
    """

    name: str
    reading: Reading | None
    faulty: int | None
    findings: tuple[Finding, ...]
    headings: Headings = Headings()
    rows: tuple[Row, ...] = ()


class Texts(Struct):
    """All texts read so far. `sources` keeps them by name, in the order of reading."""

    read: Read
    sources: dict[str, Source] = field(default_factory=dict)
    _trees: dict[str, tuple[Border | None, tuple[Finding, ...]]] = field(default_factory=dict)
    _texts: dict[str, BorderText] = field(default_factory=dict)

    def source(self, name: str, named_at: Span | None = None) -> Source | Finding:
        """The text of a file; the finding points at where the file is named."""
        name = posixpath.normpath(name)
        if name in self.sources:
            return self.sources[name]
        found = self.read(name)
        if isinstance(found, Finding):
            return replace(found, span=named_at)
        self.sources[name] = found
        return found

    def border(self, name: str, named_at: Span | None = None) -> BorderText:
        """A border file with its rounds, copies from other files resolved."""
        name = posixpath.normpath(name)
        if name not in self._texts:
            self._texts[name] = self._border(name, named_at)
        return self._texts[name]

    def _border(self, name: str, named_at: Span | None) -> BorderText:
        border, told = self._tree(name, named_at)
        if border is None:
            return BorderText(name, None, None, told)
        findings = list(told)
        copied_badly: set[str] = set()

        def others(copying: str, named: str) -> Border | None:
            beside = posixpath.join(posixpath.dirname(copying), named)
            other, faults = self._tree(posixpath.normpath(beside), self._named_at(copying, named))
            findings.extend(faults)
            if any(f.severity is Severity.ERROR for f in faults):
                copied_badly.add(named)
            return other

        reading, faults = read_rounds(border, others)
        findings += faults
        faulty = first_faulty(border, name, findings, copied_badly)
        if reading is not None and faulty is not None:
            sound = tuple(r for r in reading.rounds if r.number < faulty)
            reading = replace(reading, rounds=sound, multiple=None)
        # a text that is read twice, as with squares and without, tells the same of it
        told = tuple({(f.code, f.span, f.message): f for f in reversed(findings)}.values())[::-1]
        rows = (row for row in border.rows if faulty is None or row.numbers[-1] < faulty)
        return BorderText(name, reading, faulty, told, border.headings, tuple(rows))

    def _tree(self, name: str, named_at: Span | None) -> tuple[Border | None, tuple[Finding, ...]]:
        if name not in self._trees:
            source = self.source(name, named_at)
            if isinstance(source, Finding):
                return None, (source,)
            self._trees[name] = read_border(source)
        return self._trees[name]

    def _named_at(self, copying: str, named: str) -> Span | None:
        """Where a border names the file that it copies from."""
        border, _ = self._trees.get(copying, (None, ()))
        rows = border.rows if border else ()
        copies = (row.body for row in rows if isinstance(row.body, Copy))
        return next((copy.span for copy in copies if copy.file == named), None)


def first_faulty(
    border: Border, name: str, findings: Iterable[Finding], copied_badly: Collection[str] = ()
) -> int | None:
    """The first round of a border that could not be made out, so that none after it is sure.

    `name` is the border's file, `copied_badly` the files with faults that it copies from.
    """
    return min(_faulty(border, name, findings, copied_badly), default=None)


def _faulty(
    border: Border, name: str, findings: Iterable[Finding], copied_badly: Collection[str]
) -> Iterator[int]:
    rows = sorted(border.rows, key=lambda row: row.head.start)
    heads = [row.head.start for row in rows]
    for row in rows:
        copied = isinstance(row.body, Copy) and row.body.file in copied_badly
        if copied or row.broken:  # by a figure, too, whose fault stands before the rows
            yield row.numbers[0]
    for finding in findings:
        span = finding.span
        sure = finding.severity is not Severity.ERROR or finding.code in _STILL_COUNTED
        if sure or span is None or span.source != name:
            continue
        if before := bisect_right(heads, span.start):
            # A row that could not be made out at all is missing from the tree.
            row = rows[before - 1]
            yield row.numbers[0] if span.start < row.span.end else row.numbers[-1] + 1
