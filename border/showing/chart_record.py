"""The record of `chart`: every symbol that is drawn, where it stands, and what it stands in."""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterable, Mapping, Sequence
from math import degrees

from border.findings import Finding
from border.showing.chart_laid import Charted, LaidChart
from border.showing.chart_parts import Layer, Symbol
from border.showing.chart_shapes import (
    ChartRecord,
    ChartRoundRecord,
    ChartWorkRecord,
    Spot,
    SymbolRecord,
)
from border.showing.record import findings_record
from border.showing.shapes import FORMAT_VERSION
from border.text.source import Source
from border.working.fabric import CHAIN, PICOT
from border.working.work import WorkedRound


def chart_record(
    name: str,
    drawn: Sequence[Charted],
    findings: Iterable[Finding],
    sources: Mapping[str, Source],
) -> ChartRecord:
    """The record of `chart`."""
    return {
        "format_version": FORMAT_VERSION,
        "name": name,
        "works": [_work(charted) for charted in drawn],
        "findings": findings_record(findings, sources),
    }


def _work(charted: Charted) -> ChartWorkRecord:
    laid = LaidChart(charted)
    record: ChartWorkRecord = {
        "edge": charted.edge,
        "border": charted.border,
        "terms": charted.terms,
        "hand": "left" if charted.left else "right",
        "shown": (float(laid.window.start), float(laid.window.end)),
        "places": [_point(s.top, laid) for s in laid.layers[0].symbols if s.seen],
        "rounds": [_round(round_, one, laid) for round_, one in laid.worked()],
    }
    if charted.section is not None:
        record["section"] = charted.section
    return record


def _round(round_: WorkedRound, one: Layer, laid: LaidChart) -> ChartRoundRecord:
    return {
        "round": round_.number,
        "goes": "left" if laid.leftwards(round_) else "right",
        "symbols": [_symbol(symbol, laid) for symbol in one.symbols if symbol.seen],
    }


def _symbol(symbol: Symbol, laid: LaidChart) -> SymbolRecord:
    record: SymbolRecord = {
        "symbol": symbol.kind,
        "top": _point(symbol.top, laid),
        "feet": [_point(foot, laid) for foot in symbol.feet],
    }
    if symbol.kind == CHAIN:
        slant = laid.paper(symbol.top + symbol.slant) - laid.paper(symbol.top)
        record["angle"] = round(degrees(phase(slant)), 1)
    if symbol.kind == PICOT:
        record["chains"] = symbol.size
    return record


def _point(point: complex, laid: LaidChart) -> Spot:
    at = laid.paper(point)
    return round(at.real, 2), round(at.imag, 2)
