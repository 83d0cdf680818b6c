"""A border as a symbol chart: some repeats of it, or a section of the edge, round over round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.showing.blocks import Block, stacked
from border.showing.chart_layout import layer, width_needed
from border.showing.chart_parts import DROP, Layer, base_layer, fall, picot_height
from border.showing.chart_symbols import as_shown, symbol_drawn
from border.showing.chart_window import Window, around_a_repeat, of_section
from border.showing.svg import INK, circle, fitting, line, number, tag, width_of, words
from border.showing.wheel_marks import ToPaper
from border.stitches import STITCHES
from border.text.vocabulary import vocabulary
from border.working.fabric import CHAIN, PICOT, Fabric, edge_fabric
from border.working.work import WorkedEdge

SIDE = 46.0
"""Room beside a chart, for the numbers of the rounds."""
LOOSE = 1.06
"""The stitches of the fullest round stand so much wider than they need."""
NARROWEST = 13.0
"""Pixels a place, at the least."""
UNDER = 44.0
"""Room below an edge of motifs, for them and their names."""


class Charted(Struct, frozen=True):
    """A border worked into an edge, to be drawn. `section`: the part that is wanted, else repeats.

    `left`: it is worked by the left hand.
    """

    title: str
    worked: WorkedEdge
    terms: str
    section: str | None = None
    left: bool = False


def chart(title: str, charted: Sequence[Charted]) -> str:
    """The charts of some pieces of work, one below the other, as SVG."""
    blocks = [_Chart(one).block() for one in charted if one.worked.rounds]
    return stacked(title, blocks)


class _Chart:
    def __init__(self, charted: Charted) -> None:
        self.charted = charted
        rounds = charted.worked.rounds
        base = edge_fabric(charted.worked.edge)
        found = of_section(base.line, charted.section) if charted.section else None
        self.window = _scaled(found or around_a_repeat(charted.worked), charted.worked)
        self.base = base
        self.layers = [base_layer(base, self.window)]
        below = base
        for round_ in rounds:
            if round_.fabric.line.flipped != below.line.flipped:
                self._turn(below)
                below = below.turned()
            self.layers.append(layer(round_.fabric, below, self.layers[-1], self.window))
            below = round_.fabric
        ends = [s.top.real for one in self.layers for s in one.symbols if s.seen]
        self.start = min([self.window.start * self.window.scale, *ends]) - 10
        self.end = max([self.window.end * self.window.scale, *ends]) + 10
        self.top = self.layers[-1].top + 34

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

    def block(self) -> Block:
        rounds = zip(self.charted.worked.rounds, self.layers[1:], strict=True)
        inside = [self.round(round_.number, one) for round_, one in rounds]
        inside += [*self.edge(), *self.numbers()]
        height = self.top + (DROP + UNDER if self.base.line.stretches else 12)
        legend = self.legend(height)
        width = max(self.end - self.start + 2 * SIDE, legend.width)
        if self.charted.title:
            title = {"text_anchor": "start", "font_weight": "bold"}
            inside.append(words(self.charted.title, SIDE, 16, 14, **title))
        return Block(width, height + legend.height, "".join(inside) + legend.drawn)

    def round(self, number: int, one: Layer) -> str:
        drawn = (symbol_drawn(symbol, self.paper) for symbol in one.symbols if symbol.seen)
        return tag("g", *drawn, class_="worked", aria_label=f"round {number}")

    def edge(self) -> Iterator[str]:
        """The places of the edge, and the motifs that they are on."""
        for symbol in self.layers[0].symbols:
            if symbol.seen:
                yield _place(symbol.kind, self.paper(symbol.top))
        length = self.base.line.length
        for stretch in self.base.line.stretches:
            for lap in (-1, 0, 1) if self.base.line.closed else (0,):
                start, end = stretch.start + lap * length, stretch.end + lap * length
                low, high = max(start, self.window.start), min(end, self.window.end)
                if low < high:
                    yield from self._motif(stretch.run.motif, (start, end), (low, high))

    def _motif(
        self, name: str, all_of: tuple[float, float], seen: tuple[float, float]
    ) -> Iterator[str]:
        """The rim of a motif below its places, as far as it is seen, a tick at its joints."""
        low, high = seen
        steps = [low + (high - low) * n / RIM for n in range(RIM + 1)]
        start, end = all_of
        points = []
        for at in steps:
            along = (at - start) / (end - start)
            points.append(self.paper(complex(at * self.window.scale, -9 - fall(along))))
        told = " L".join(f"{number(p.real)} {number(p.imag)}" for p in points)
        yield tag("path", d=f"M{told}", class_="motif", stroke_width=1.6)
        for at, point in ((start, points[0]), (end, points[-1])):
            if at in seen:
                yield line(point.real, point.imag, point.real, point.imag + 8, stroke_width=1.6)
        middle = self.paper(complex((low + high) / 2 * self.window.scale, -DROP - 22))
        room = (high - low) * self.window.scale - 4
        size = fitting(name, room, 12, 5)
        if width_of(name, size) <= room:
            yield words(name, middle.real, middle.imag, size)

    def numbers(self) -> Iterator[str]:
        """Every round's number where it begins, with an arrow the way it goes."""
        for round_, one in zip(self.charted.worked.rounds, self.layers[1:], strict=True):
            leftwards = round_.fabric.line.flipped == self.charted.left
            x = self.end - self.start + 2 * SIDE - 14 if leftwards else 14.0
            y = self.top - (one.bottom + min(one.top, one.bottom + 18)) / 2 + 2
            yield words(str(round_.number), x, y + 3, 14, class_="round", font_weight="bold")
            way = -1 if leftwards else 1
            tail, tip = x + way * 10, x + way * 24
            yield line(tail, y - 2, tip, y - 2)
            head = ((tip, y - 2), (tip - way * 5, y - 5), (tip - way * 5, y + 1))
            told = " ".join(f"{number(a)} {number(b)}" for a, b in head)
            yield tag("polygon", points=told, fill=INK, class_="arrow")

    # --- the legend ---------------------------------------------------------------

    def legend(self, top: float) -> Block:
        """The symbols that are used, with their names."""
        terms = self.charted.terms
        seen = [s for one in self.layers[1:] for s in one.symbols if s.seen]
        order = [CHAIN, *STITCHES, PICOT]
        used = sorted({s.kind for s in seen}, key=order.index)
        size = max((s.size for s in seen if s.kind == PICOT), default=3)
        rows = []
        tall = max(as_shown(kind, 0j, size).top.imag for kind in used)
        row = max(tall, picot_height(size) if PICOT in used else 0.0) + 14
        y, x, wide = top, SIDE, SIDE
        for n, kind in enumerate(used):
            if n % LEGEND_COLUMNS == 0:
                y, x = y + row, SIDE
            name = name_in_legend(kind, terms)
            shown = as_shown(kind, 0j, size)
            rows.append(symbol_drawn(shown, _moved(complex(x + 8, y))))
            rows.append(words(name, x + 24, y - 4, 13, text_anchor="start"))
            x += width_of(name, 13) + 44
            wide = max(wide, x)
        return Block(wide, y + 16 - top, tag("g", *rows, class_="legend"))


LEGEND_COLUMNS = 4
LOOP = ((-5, 8), (0, -8), (5, 8))
RIM = 16
"""Pieces of the line along a motif."""


def _moved(origin: complex) -> ToPaper:
    return lambda point: origin + point.conjugate()


def name_in_legend(kind: str, terms: str) -> str:
    """`tr (treble)`: a symbol's name in these terms, or in US terms where they have none."""
    if kind == CHAIN:
        return "ch (chain)"
    if kind == PICOT:
        return "picot"
    names = vocabulary().stitches[kind]
    mine = names[terms] or names["us"]
    told = f"{mine[0]} ({mine[1]})" if len(mine) > 1 else mine[0]
    return told if names[terms] else f"{told}, US"


def _scaled(window: Window, worked: WorkedEdge) -> Window:
    """The window with as many pixels a place as the fullest round needs."""
    long = window.end - window.start
    needed = max(width_needed(r.fabric, window.start, window.end) for r in worked.rounds)
    return replace(window, scale=max(NARROWEST, LOOSE * needed / long))


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
