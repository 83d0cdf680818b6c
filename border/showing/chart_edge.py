"""The edge below a chart: its places, and the motifs that they are on, with their names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from border.showing.blocks import Block
from border.showing.chart_laid import LaidChart
from border.showing.chart_parts import DROP, fall
from border.showing.svg import circle, line, number, shortened, tag, width_of, words

LOOP = ((-5, 8), (0, -8), (5, 8))
RIM = 16
"""Pieces of the line along a motif."""
SIZE, LINE = 11.5, 14.0
"""Of a name, and between two lines of names."""
MOST_LINES = 4
LONGEST = 130.0
"""A longer name is cut, in pixels."""


class _Motif(Struct, frozen=True):
    """A motif as it is seen, in places: all of it, and what is drawn of it."""

    name: str
    all_of: tuple[float, float]
    drawn: tuple[float, float]


def edge_drawn(laid: LaidChart) -> Block:
    """The edge, drawn on the chart's own paper; its height is what it takes below the places."""
    inside = [
        _place(symbol.kind, laid.paper(symbol.top))
        for symbol in laid.layers[0].symbols
        if symbol.seen
    ]
    motifs = list(_motifs(laid))
    for motif in motifs:
        inside += _rim(motif, laid)
    names, height = _names(motifs, laid)
    return Block(laid.width, DROP + 24 + height if motifs else 12.0, "".join([*inside, *names]))


def _motifs(laid: LaidChart) -> Iterator[_Motif]:
    length, window = laid.base.line.length, laid.window
    for stretch in laid.base.line.stretches:
        for lap in (-1, 0, 1) if laid.base.line.closed else (0,):
            start, end = stretch.start + lap * length, stretch.end + lap * length
            low, high = max(start, window.start), min(end, window.end)
            if low < high:
                yield _Motif(stretch.run.motif, (start, end), (low, high))


def _rim(motif: _Motif, laid: LaidChart) -> Iterator[str]:
    """The rim of a motif below its places, as far as it is seen, a tick at its joints."""
    low, high = motif.drawn
    start, end = motif.all_of
    points = []
    for n in range(RIM + 1):
        at = low + (high - low) * n / RIM
        along = (at - start) / (end - start)
        points.append(laid.paper(complex(at * laid.window.scale, -9 - fall(along))))
    told = " L".join(f"{number(p.real)} {number(p.imag)}" for p in points)
    yield tag("path", d=f"M{told}", class_="motif", stroke_width=1.6)
    for at, point in ((start, points[0]), (end, points[-1])):
        if at in motif.drawn:
            yield line(point.real, point.imag, point.real, point.imag + 8, stroke_width=1.6)


def _names(motifs: Sequence[_Motif], laid: LaidChart) -> tuple[list[str], float]:
    """The names below their motifs, in as many lines as they need to stand apart; their height."""
    placed = []
    for motif in motifs:
        name = shortened(motif.name, LONGEST, SIZE)
        at = laid.paper(complex(sum(motif.drawn) / 2 * laid.window.scale, -DROP - 29))
        half = width_of(name, SIZE) / 2 + 3
        placed.append((min(max(at.real, half), laid.width - half), at.imag, half, name))
    taken = [0.0] * MOST_LINES
    drawn, most = [], 0
    for x, y, half, name in sorted(placed):
        free = next((n for n, end in enumerate(taken) if x - half >= end), None)
        if free is not None:
            taken[free] = x + half
            most = max(most, free + 1)
            drawn.append(words(name, x, y + free * LINE, SIZE, class_="motif-name"))
    return drawn, most * LINE


def _place(kind: str, at: complex) -> str:
    """A place of the edge: a loop as a small arch, a chain as an oval, a stitch as a stroke."""
    x, y = at.real, at.imag
    if kind == "chain":
        return tag("ellipse", cx=x, cy=y + 3, rx=4.8, ry=2.5, class_="place")
    if kind == "stitch":
        return line(x, y, x, y + 8, class_="place")
    if kind == "picot":
        return circle(x, y + 4, 3.4, class_="place")
    start, peak, end = (f"{number(x + dx)} {number(y + dy)}" for dx, dy in LOOP)
    return tag("path", d=f"M{start} Q{peak} {end}", class_="place")
