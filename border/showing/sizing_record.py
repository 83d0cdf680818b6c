"""The record of `size`, as plain dictionaries."""

from __future__ import annotations

from border.reckoning.counts import RoundCount
from border.showing.lying_record import band_record
from border.showing.record import findings_record, tally_record
from border.showing.shapes import FORMAT_VERSION
from border.showing.sizing import EdgeSize, Sized, SizedAll
from border.showing.sizing_shapes import (
    EdgeSizeRecord,
    RoundSizeRecord,
    SizedRecord,
    SizeRecord,
)


def size_record(sizing: SizedAll) -> SizeRecord:
    """The record of `size`."""
    return {
        "format_version": FORMAT_VERSION,
        "name": sizing.name,
        "edge": sizing.edge,
        "wanted_mm": sizing.wanted_mm,
        "now": _sized(sizing.now),
        "then": [_sized(sized) for sized in sizing.then],
        "findings": findings_record(sizing.findings, sizing.sources),
    }


def _sized(sized: Sized) -> SizedRecord:
    return {
        "more": dict(sized.more),
        "goes_together": sized.goes_together,
        "edges": [_edge(edge) for edge in sized.edges],
    }


def _edge(edge: EdgeSize) -> EdgeSizeRecord:
    record: EdgeSizeRecord = {
        "edge": edge.edge,
        "motifs": edge.motifs,
        "places": edge.places,
        "round": edge.round,
        "closes": edge.closes,
        "eased": edge.eased,
        "rounds": [_round(count) for count in edge.rounds],
    }
    if edge.length is not None:
        record["length"] = band_record(edge.length)
    return record


def _round(count: RoundCount) -> RoundSizeRecord:
    return {
        "round": count.number,
        **tally_record(count.made),
        "spaces": count.spaces,
        "closes": count.closes,
    }
