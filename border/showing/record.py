"""The record: what `--json` prints, and its JSON Schema.

Plain dictionaries are built and printed, so that a large edge costs no more
than it must; pydantic is asked only for the schema. Keys are a contract: none
changes its meaning without a new `FORMAT_VERSION`.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import Any

from border.findings import Finding
from border.reckoning.counts import RepeatCount, RoundCount, Tally
from border.reckoning.thread import Thread, ThreadUse, thread_mm
from border.showing.counted import Counted, Piece
from border.showing.readings_shapes import EdgeReadingsRecord
from border.showing.shapes import (
    FORMAT_VERSION,
    CheckRecord,
    CountRecord,
    EdgeRecord,
    FindingRecord,
    RepeatRecord,
    RoundRecord,
    TallyRecord,
    ThreadRecord,
    WorkRecord,
    YokeRecord,
)
from border.showing.telling import in_order
from border.text.source import Source
from border.yoke.edges import Edge
from border.yoke.report import YokeReport


def count_record(counted: Counted) -> CountRecord:
    """The record of `count`."""
    return {
        "format_version": FORMAT_VERSION,
        "name": counted.name,
        "works": [_work(piece, counted.thread) for piece in counted.pieces],
        "thread": use_record(counted.thread_used),
        "findings": findings_record(counted.findings, counted.sources),
    }


def check_record(
    findings: Iterable[Finding],
    sources: Mapping[str, Source],
    readings: list[EdgeReadingsRecord] | None = None,
) -> CheckRecord:
    """The record of `check`: the findings of all files, and the readings if asked for."""
    told = findings_record(findings, sources)
    if readings is None:
        return {"format_version": FORMAT_VERSION, "findings": told}
    return {"format_version": FORMAT_VERSION, "readings": readings, "findings": told}


def yoke_record(
    yoke: YokeReport | None, findings: Iterable[Finding], sources: Mapping[str, Source]
) -> YokeRecord:
    """The record of `yoke`; None is a project that could not be made out."""
    return {
        "motifs": yoke.motifs if yoke else 0,
        "joints": yoke.joints if yoke else 0,
        "goes_together": bool(yoke and yoke.goes_together),
        "edges": [_edge(edge) for edge in yoke.edges] if yoke else [],
        "findings": findings_record(findings, sources),
    }


def findings_record(
    findings: Iterable[Finding], sources: Mapping[str, Source]
) -> list[FindingRecord]:
    """Findings in order; lines and columns from 1, the end just behind the last character."""
    return [_finding(f, sources) for f in in_order(findings, sources)]


def _finding(finding: Finding, sources: Mapping[str, Source]) -> FindingRecord:
    record: FindingRecord = {
        "code": finding.code,
        "severity": finding.severity.value,
        "message": finding.message,
    }
    if finding.help is not None:
        record["help"] = finding.help
    if finding.span is not None:
        record["file"] = finding.span.source
        if source := sources.get(finding.span.source):
            record["line"], record["column"] = source.line_column(finding.span.start)
            record["end_line"], record["end_column"] = source.line_column(finding.span.end)
    if finding.round is not None:
        record["round"] = finding.round
    return record


def _edge(edge: Edge) -> EdgeRecord:
    return {
        "edge": edge.name,
        "closed": edge.closed,
        "places": edge.places,
        "runs": [
            {"motif": r.motif, "section": r.section, "free": r.free, "places": r.places}
            for r in edge.runs
        ],
    }


def _work(piece: Piece, thread: Thread) -> WorkRecord:
    return {
        "edge": piece.edge.name,
        "border": piece.border,
        "terms": piece.terms,
        "closed": piece.edge.closed,
        "places": piece.edge.places,
        "closes": piece.closes,
        "rounds": [_round(r, thread) for r in piece.rounds],
    }


def _round(count: RoundCount, thread: Thread) -> RoundRecord:
    record: RoundRecord = {
        "round": count.number,
        "closes": count.closes,
        "stitches": count.made.stitches,
        "chains": count.made.chains,
        "picots": count.made.picots,
        "spaces": count.spaces,
        "repeats": [_repeat(r) for r in count.repeats],
        "sections": [{"section": s.section, **tally_record(s.made)} for s in count.sections],
        "motifs": [
            {"motif": m.motif, "section": m.section, **tally_record(m.made), "usual": m.usual}
            for m in count.motifs
        ],
        "joints": [{"between": j.between, **tally_record(j.made)} for j in count.joints],
        "adjustments": [
            {"at": a.at, "by": a.by, "before_repeat": a.before_repeat} for a in count.adjustments
        ],
        "thread_mm": thread_mm(count.loops, thread),
    }
    if not count.repeats:
        del record["repeats"]
    if count.found:
        record["found"] = dict(count.found)
    return record


def tally_record(made: Tally) -> TallyRecord:
    """Stitches, chains and picots."""
    return {"stitches": dict(made.stitches), "chains": made.chains, "picots": made.picots}


def _repeat(count: RepeatCount) -> RepeatRecord:
    record: RepeatRecord = {
        "times": count.times,
        "takes": dict(count.takes),
        "makes": tally_record(count.makes),
        "left_over": count.left_over,
    }
    if count.otherwise:
        record["otherwise"] = count.otherwise
    return record


def use_record(used: ThreadUse) -> ThreadRecord:
    """Thread of all rounds together."""
    record: ThreadRecord = {
        "mm": used.mm,
        "low_mm": used.low_mm,
        "high_mm": used.high_mm,
        "grams": used.grams,
        "calibrated": used.calibrated,
    }
    if used.balls is not None:
        record["balls"] = used.balls
    return record


def to_json(record: Mapping[str, Any]) -> str:
    """A record as JSON with line ends where people need them: motifs stand one to a line."""
    return "".join(_lines(record, _DEEPEST, "\n")) + "\n"


_DEEPEST = 6
"""Levels of a record that are broken into lines: down to one motif of one round."""


def _lines(value: Any, levels: int, margin: str) -> Iterator[str]:
    inner = value.values() if isinstance(value, Mapping) else value
    if levels == 0 or not _holds_more(inner):
        yield json.dumps(value)
        return
    opening, closing = "{}" if isinstance(value, Mapping) else "[]"
    yield opening
    comma = ""
    for key, each in value.items() if isinstance(value, Mapping) else enumerate(value):
        name = f"{json.dumps(key)}: " if isinstance(key, str) else ""
        yield f"{comma}{margin}  {name}"
        yield from _lines(each, levels - 1, margin + "  ")
        comma = ","
    yield f"{margin}{closing}"


def _holds_more(inner: Any) -> bool:
    """Whether a value is a list or an object that holds lists or objects itself."""
    return isinstance(inner, Collection) and any(isinstance(i, dict | list | tuple) for i in inner)
