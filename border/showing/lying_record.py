"""The record of `flat`, as plain dictionaries."""

from __future__ import annotations

from typing import Literal, cast

from border.reckoning.changing import Change
from border.reckoning.flat import Length, Lies, RoundLies
from border.reckoning.measuring import Mark
from border.reckoning.stitch_sizes import Band
from border.showing.lying import LyingAll, LyingWork
from border.showing.lying_shapes import (
    BandRecord,
    ChangeRecord,
    FlatRecord,
    LiesRecord,
    LyingWorkRecord,
    MarkRecord,
    RoundLiesRecord,
)
from border.showing.record import findings_record
from border.showing.shapes import FORMAT_VERSION

_LIES: dict[Lies, Literal["cups", "flat", "ruffles"]] = {
    Lies.CUPS: "cups",
    Lies.FLAT: "flat",
    Lies.RUFFLES: "ruffles",
}


def flat_record(lying: LyingAll) -> FlatRecord:
    """The record of `flat`."""
    return {
        "format_version": FORMAT_VERSION,
        "name": lying.name,
        "works": [_work(work) for work in lying.works],
        "findings": findings_record(lying.findings, lying.sources),
    }


def band_record(band: Band) -> BandRecord:
    """A band, to a tenth of a mm."""
    return {"low_mm": _tenth(band.low), "high_mm": _tenth(band.high)}


def _tenth(mm: float) -> float:
    return round(mm, 1) + 0.0


def _work(work: LyingWork) -> LyingWorkRecord:
    return {
        "edge": work.edge.name,
        "border": work.border,
        "degrees": _tenth(work.turns),
        "turned_by": cast(Literal["loops", "project", "name"], work.turned_by),
        "turning": [
            {"section": t.section, "motifs": t.motifs, "degrees": _tenth(t.degrees)}
            for t in work.turning
        ],
        "flat": work.flat,
        "rounds": [_round(lies) for lies in work.rounds],
        "measuring": [_mark(mark) for mark in work.marks],
        "changes": [_change(c) for c in work.mended.changes] if work.mended else [],
        "then": [_round(lies) for lies in work.mended.rounds] if work.mended else [],
        "back_to_size": [_change(c) for c in work.back.changes] if work.back else [],
        "opened": list(work.mended.opened) if work.mended else [],
    }


def _length(length: Length) -> LiesRecord:
    return {
        "flat": band_record(length.needed),
        "worked": band_record(length.worked),
        "lies": _LIES[length.lies],
        "out_mm": _tenth(length.out),
    }


def _round(lies: RoundLies) -> RoundLiesRecord:
    record: RoundLiesRecord = {
        "round": lies.number,
        "away": band_record(lies.away),
        "flat": band_record(lies.length.needed),
        "worked": band_record(lies.length.worked),
        "lies": _LIES[lies.lies],
        "out_mm": _tenth(lies.length.out),
        "sections": [{"section": s.section, **_length(s.length)} for s in lies.sections],
    }
    if lies.radius is not None:
        record["radius_mm"] = _tenth(lies.radius)
    return record


def _mark(mark: Mark) -> MarkRecord:
    record: MarkRecord = {
        "round": mark.round,
        "of": cast(Literal["space", "stitch"], mark.of),
        "count": mark.count,
        "expected": band_record(mark.expected),
        "whole": band_record(mark.whole),
    }
    if mark.measured is not None:
        record["measured_mm"] = mark.measured
        record["longer"] = band_record(mark.longer)
    return record


def _change(change: Change) -> ChangeRecord:
    record: ChangeRecord = {
        "round": change.round,
        "what": change.what,
        "was": change.was,
        "now": change.now,
    }
    if change.clause is not None:
        record["clause"] = change.clause + 1
    return record
