"""The readings of each row, with those that come out, for a needleworker; and as a record."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rich.console import Group, RenderableType
from rich.text import Text

from border.questions.asking import Tried
from border.showing.layout import Rows
from border.showing.readings_shapes import EdgeReadingsRecord, ReadingRecord
from border.showing.telling import harmless

EdgeReadings = tuple[str, Sequence[Tried]]
"""The name of an edge, and the readings of each round worked on it."""


def readings_tables(edges: Iterable[EdgeReadings]) -> Group:
    """Round by round: as it is taken, and how else it may be meant."""
    parts: list[RenderableType] = []
    for name, tried in edges:
        parts += [Text(f"readings on {harmless(name)}", style="bold"), Text()]
        parts += [Rows([_line(one) for one in tried]), Text()]
    return Group(*parts[:-1])


def _line(tried: Tried) -> tuple[str, Text]:
    out = "comes out" if tried.fits else "does not come out"
    if tried.other is None:
        return f"round {tried.number}", Text(f"as it is read: {out}{tried.how_often}")
    text = Text(f"if {harmless(tried.other.if_)}: {out}{tried.how_often}")
    if tried.fits:
        text.append(f"\n{harmless(tried.other.edit)}")
    return "", text


def readings_record(edges: Iterable[EdgeReadings]) -> list[EdgeReadingsRecord]:
    """The readings for programs."""
    return [{"edge": name, "readings": [_record(one) for one in tried]} for name, tried in edges]


def _record(tried: Tried) -> ReadingRecord:
    other = tried.other
    return {
        "round": tried.number,
        "taken": other is None,
        "if": other.if_ if other else None,
        "write": other.edit if other else None,
        "comes_out": tried.fits,
        "times": list(tried.times),
    }
