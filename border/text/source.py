"""A source text: its name, its characters, and where a span stands in it."""

from __future__ import annotations

from bisect import bisect_right
from functools import cached_property

from msgspec import Struct

from border.findings import Span


class Source(Struct, frozen=True, dict=True):
    """A text as read. Offsets are in code points; lines and columns count from 1."""

    name: str
    text: str

    @cached_property
    def _starts(self) -> list[int]:
        return [0, *(i + 1 for i, c in enumerate(self.text) if c == "\n")]

    def span(self, start: int, end: int) -> Span:
        """A stretch of the text; one that ends in words of a figure, which stand further up, to
        the end of its line."""
        if end < start:
            end = next((s - 1 for s in self._starts if s > start), len(self.text))
        return Span(self.name, start, end)

    def line_column(self, offset: int) -> tuple[int, int]:
        """The line and column of an offset, both from 1."""
        line = bisect_right(self._starts, offset)
        return line, offset - self._starts[line - 1] + 1

    def line_text(self, line: int) -> str:
        """The text of a line (from 1), without its end."""
        start = self._starts[line - 1]
        end = self._starts[line] - 1 if line < len(self._starts) else len(self.text)
        return self.text[start:end].rstrip("\r")
