"""A chart laid out: what stretch of the edge it shows, and where all symbols of it stand."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from border.showing.chart_layout import layer, width_needed
from border.showing.chart_parts import Layer, Symbol, base_layer
from border.showing.chart_window import Window, around_a_repeat, of_section
from border.working.fabric import Fabric, edge_fabric
from border.working.line import line_of
from border.working.work import WorkedEdge, WorkedRound

SIDE = 52.0
"""Room beside a chart, for the numbers of the rounds."""
ABOVE = 34.0
"""Room above it, for its title."""
LOOSE = 1.06
"""The stitches of the fullest round stand so much wider than they need."""
NARROWEST = 13.0
"""Pixels a place, at the least."""


class Charted(Struct, frozen=True):
    """A border worked into an edge, to be drawn.

    `section`: the part that is wanted, else repeats. `left`: it is worked by the left hand.
    `edge`, `border`: what they are called, the border by its file.
    """

    title: str
    worked: WorkedEdge
    terms: str
    section: str | None = None
    left: bool = False
    edge: str = ""
    border: str = ""


class LaidChart:
    """A chart of a border of which at least one round is worked, laid out.

    `layers`: the edge, and every round. `start`, `end`, `top`: how far it reaches, in pixels
    along the edge and upwards from it.
    """

    def __init__(self, charted: Charted) -> None:
        self.charted = charted
        self.rounds = charted.worked.rounds
        self.base = edge_fabric(charted.worked.edge)
        self.window = _scaled(window_of(charted), charted.worked)
        self.layers = [base_layer(self.base, self.window)]
        below = self.base
        for round_ in self.rounds:
            if round_.fabric.line.flipped != below.line.flipped:
                self._turn(below)
                below = below.turned()
            self.layers.append(layer(round_.fabric, below, self.layers[-1], self.window))
            below = round_.fabric
        ends = [s.top.real for one in self.layers for s in one.symbols if s.seen]
        self.start = min([self.window.start * self.window.scale, *ends]) - 10
        self.end = max([self.window.end * self.window.scale, *ends]) + 10
        self.top = self.layers[-1].top + ABOVE

    def _turn(self, below: Fabric) -> None:
        """The row below as it is met after turning: the same tops by their new order."""
        under = self.layers[-1]
        new = {old: i for i, old in enumerate(below.order_turned())}
        tops = {(new[i], lap): top for (i, lap), top in under.tops.items()}
        self.layers[-1] = Layer(under.symbols, tops, under.bottom, under.top)

    def paper(self, point: complex) -> complex:
        """Worked by the right hand a round goes from right to left."""
        along = point.real - self.start
        wide = self.end - self.start
        return complex(SIDE + (along if self.charted.left else wide - along), self.top - point.imag)

    @property
    def width(self) -> float:
        return self.end - self.start + 2 * SIDE

    def worked(self) -> Iterator[tuple[WorkedRound, Layer]]:
        """Every round with its layer, from the edge outwards."""
        return zip(self.rounds, self.layers[1:], strict=True)

    def leftwards(self, round_: WorkedRound) -> bool:
        """Which way a round goes on paper."""
        return round_.fabric.line.flipped == self.charted.left

    def seen(self) -> list[Symbol]:
        """All symbols of the rounds that are drawn."""
        return [s for one in self.layers[1:] for s in one.symbols if s.seen]


def window_of(charted: Charted) -> Window:
    """The stretch of the edge that is to be drawn, not yet scaled."""
    line = line_of(charted.worked.edge)
    found = of_section(line, charted.section) if charted.section else None
    return found or around_a_repeat(charted.worked)


def _scaled(window: Window, worked: WorkedEdge) -> Window:
    """The window with as many pixels a place as the fullest round needs."""
    long = window.end - window.start
    needed = max(width_needed(r.fabric, window.start, window.end) for r in worked.rounds)
    return replace(window, scale=max(NARROWEST, LOOSE * needed / long))
