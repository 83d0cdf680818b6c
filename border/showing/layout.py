"""Rows of a label and what it labels, the second hanging beside the first.

Wrapped line by line: a table of rich's own measures every cell several times
over, which is most of the time it takes to show a count.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from msgspec import Struct
from rich.console import Console, ConsoleOptions, RenderResult
from rich.text import Text

MARGIN = 2
GAP = 2
WIDEST_LABEL = 34


class Rows(Struct, frozen=True):
    """Labels with their text, an empty label for one more line under the last; then a gap."""

    rows: Sequence[tuple[str, Text]]

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        labels = [Text(label) for label, _ in self.rows]
        widest = max((label.cell_len for label in labels), default=0)
        beside = min(widest, WIDEST_LABEL, max(options.max_width // 2 - MARGIN - GAP, 1))
        room = max(options.max_width - MARGIN - beside - GAP, 1)
        for label, (_, text) in zip(labels, self.rows, strict=True):
            left, right = _lines(console, label, beside), _lines(console, text, room)
            for one, other in zip_longest(left, right, fillvalue=_NOTHING):
                line = Text(" " * MARGIN)
                line.append_text(one)
                line.append(" " * (beside - one.cell_len + GAP))
                line.append_text(other)
                yield from line.render(console, "\n")  # else rich would wrap it once more
        yield _NOTHING


_NOTHING = Text()


def _lines(console: Console, text: Text, room: int) -> Sequence[Text]:
    if text.cell_len <= room and "\n" not in text.plain:
        return [text]
    lines = text.wrap(console, room, overflow="fold")
    for line in lines:
        line.rstrip()
    return list(lines)
