"""The legend of a chart: the symbols that are used, with their names."""

from __future__ import annotations

from collections.abc import Sequence

from border.showing.blocks import Block
from border.showing.chart_parts import Symbol, picot_height
from border.showing.chart_symbols import as_shown, symbol_drawn
from border.showing.sheet_words import full_name
from border.showing.svg import tag, width_of, words
from border.stitches import STITCHES
from border.text.vocabulary import vocabulary
from border.working.fabric import CHAIN, PICOT

GAP = 20.0
"""Between two entries."""
SIZE = 13.0
LEAST = 480.0
"""So much room a legend has beside itself, however narrow its chart."""


def legend(symbols: Sequence[Symbol], terms: str, room: float) -> Block:
    """The symbols seen, as many beside each other as there is room for."""
    order = [CHAIN, *STITCHES, PICOT]
    used = sorted({s.kind for s in symbols}, key=order.index)
    size = max((s.size for s in symbols if s.kind == PICOT), default=0)
    tall = [_tall(kind, size) for kind in used]
    row = max(tall, default=0.0) + 8
    x, y, wide = 0.0, row, 0.0
    drawn = []
    for kind in used:
        name = name_in_legend(kind, terms)
        long = 24 + width_of(name, SIZE)
        if x and x + long > max(room, LEAST):
            x, y = 0.0, y + row
        at = complex(x + 8, y)
        drawn.append(symbol_drawn(as_shown(kind, 0j, size), lambda p, at=at: at + p.conjugate()))  # type: ignore[misc]
        drawn.append(words(name, x + 24, y - 4, SIZE, text_anchor="start"))
        wide = max(wide, x + long)
        x += long + GAP
    return Block(wide, y + 8, tag("g", *drawn, class_="legend"))


def _tall(kind: str, size: int) -> float:
    return picot_height(size) if kind == PICOT else as_shown(kind, 0j, size).top.imag


def name_in_legend(kind: str, terms: str) -> str:
    """`tr (treble)`, `sc (single crochet)`: a symbol's name in these terms, or in US terms where
    they have none."""
    if kind == CHAIN:
        return "ch (chain)"
    if kind == PICOT:
        return "picot"
    names = vocabulary().stitches[kind]
    mine = names[terms] or names["us"]
    told = mine[0] if len(mine) < 2 else f"{mine[0]} ({full_name(kind, terms)})"
    return told if names[terms] else f"{told}, US"
