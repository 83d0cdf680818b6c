"""The record of `attach`, as plain dictionaries."""

from __future__ import annotations

from border.reckoning.attaching import PartSewn, Pin
from border.showing.lying_record import band_record
from border.showing.record import findings_record
from border.showing.sewing import SewnAll, SewnEdge
from border.showing.sewing_shapes import (
    AttachRecord,
    PartSewnRecord,
    PinRecord,
    SewnEdgeRecord,
)
from border.showing.shapes import FORMAT_VERSION


def attach_record(sewing: SewnAll) -> AttachRecord:
    """The record of `attach`."""
    return {
        "format_version": FORMAT_VERSION,
        "name": sewing.name,
        "edges": [_edge(edge) for edge in sewing.edges],
        "findings": findings_record(sewing.findings, sewing.sources),
    }


def _edge(edge: SewnEdge) -> SewnEdgeRecord:
    sewn = edge.sewn
    record: SewnEdgeRecord = {
        "edge": edge.edge,
        "over": list(edge.over),
        "round": edge.round,
        "of": sewn.of,
        "pieces": len(sewn.pieces),
        "finished_mm": round(sewn.finished_mm, 1),
        "too_long_mm": round(sewn.too_long, 1),
        "parts": [_part(part) for part in sewn.parts],
        "pins": [_pin(pin) for pin in sewn.pins],
    }
    if sewn.lace is not None:
        record["lace"] = band_record(sewn.lace)
    return record


def _part(part: PartSewn) -> PartSewnRecord:
    record: PartSewnRecord = {
        "gathered": part.gathered,
        "finished_mm": part.finished_mm,
        "cloth_mm": part.cloth_mm,
        "ratio": round(part.ratio, 2),
        "usual": part.usual,
        "first": part.first,
        "last": part.last,
        "takes": list(part.takes),
    }
    if part.cut_mm is not None:
        record["cut_mm"] = round(part.cut_mm, 1)
    return record


def _pin(pin: Pin) -> PinRecord:
    record: PinRecord = {
        "eighths": pin.eighths,
        "pieces": pin.pieces,
        "seam_mm": round(pin.lace_mm, 1),
        "cloth_mm": round(pin.cloth_mm, 1),
    }
    if pin.behind is not None:
        record["number"] = pin.behind.number
        if pin.behind.motif:
            record["motif"] = pin.behind.motif
    return record
