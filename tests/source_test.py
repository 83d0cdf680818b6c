"""Where a stretch stands in a text, as a needleworker counts lines and columns."""

from __future__ import annotations

import pytest

from border.text.source import Source

TEXT = Source("t", "round 1: dc.\r\n\nlast")


@pytest.mark.parametrize(
    ("offset", "line", "column"),
    [(0, 1, 1), (1, 1, 2), (13, 1, 14), (14, 2, 1), (15, 3, 1), (18, 3, 4), (19, 3, 5)],
)
def test_lines_and_columns_count_from_1(offset: int, line: int, column: int) -> None:
    assert TEXT.line_column(offset) == (line, column)


def test_a_line_is_shown_without_its_end() -> None:
    assert [TEXT.line_text(line) for line in (1, 2, 3)] == ["round 1: dc.", "", "last"]
    assert Source("t", "one\n").line_text(2) == ""
