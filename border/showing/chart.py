"""A border as a symbol chart: some repeats of it, or a section of the edge, round over round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from border.showing.blocks import Block, stacked
from border.showing.chart_edge import edge_drawn
from border.showing.chart_laid import SIDE, Charted, LaidChart
from border.showing.chart_legend import legend
from border.showing.chart_parts import Layer
from border.showing.chart_symbols import symbol_drawn
from border.showing.svg import INK, called, line, number, tag, words
from border.working.work import WorkedRound


def chart(title: str, charted: Sequence[Charted]) -> str:
    """The charts of some pieces of work, one below the other, as SVG."""
    return stacked(title, [chart_block(one) for one in charted if one.worked.rounds])


def chart_block(charted: Charted) -> Block:
    """One chart, with its legend below it."""
    laid = LaidChart(charted)
    rounds = [_round(round_, one, laid) for round_, one in laid.worked()]
    edge = edge_drawn(laid)
    inside = [*rounds, edge.drawn, *_numbers(laid)]
    if charted.title:
        title = {"text_anchor": "start", "font_weight": "bold"}
        inside.append(words(charted.title, SIDE, 16, 14, **title))
    told = legend(laid.seen(), charted.terms, laid.width - SIDE)
    height = laid.top + edge.height
    inside.append(tag("g", told.drawn, transform=f"translate({number(SIDE)} {number(height)})"))
    width = max(laid.width, told.width + 2 * SIDE)
    return Block(width, height + told.height, "".join(inside))


def _round(round_: WorkedRound, one: Layer, laid: LaidChart) -> str:
    drawn = (symbol_drawn(symbol, laid.paper) for symbol in one.symbols if symbol.seen)
    return tag("g", called(f"round {round_.number}"), *drawn, class_="worked")


def _numbers(laid: LaidChart) -> Iterator[str]:
    """Every round's number where it begins, with an arrow the way it goes."""
    for round_, one in laid.worked():
        leftwards = laid.leftwards(round_)
        away = 1 if leftwards else -1
        tip = laid.width - SIDE + 6 if leftwards else SIDE - 6
        y = laid.top - (one.bottom + min(one.top, one.bottom + 18)) / 2
        yield line(tip + away * 14, y, tip, y)
        head = ((tip, y), (tip + away * 5, y - 3), (tip + away * 5, y + 3))
        told = " ".join(f"{number(a)} {number(b)}" for a, b in head)
        yield tag("polygon", points=told, fill=INK, class_="arrow")
        anchor = "start" if leftwards else "end"
        given = {"class_": "round-number", "font_weight": "bold", "text_anchor": anchor}
        yield words(str(round_.number), tip + away * 18, y + 5, 14, **given)
