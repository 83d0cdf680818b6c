"""The record of `sheet`: the way of every round, with what stands so far at every joint."""

from __future__ import annotations

from border.reckoning.running import Course, Joint, Stage, course
from border.showing.counted import Counted, Piece
from border.showing.record import findings_record, tally_record
from border.showing.shapes import FORMAT_VERSION
from border.showing.sheet_shapes import (
    OnTheWayRecord,
    SheetRecord,
    SheetRoundRecord,
    SheetWorkRecord,
    StageRecord,
)


def sheet_record(counted: Counted) -> SheetRecord:
    """The record of `sheet`."""
    return {
        "format_version": FORMAT_VERSION,
        "name": counted.name,
        "works": [_work(piece) for piece in counted.pieces],
        "findings": findings_record(counted.findings, counted.sources),
    }


def _work(piece: Piece) -> SheetWorkRecord:
    rounds = piece.worked.rounds if piece.worked else ()
    return {
        "edge": piece.edge.name,
        "border": piece.border,
        "rounds": [_round(r.number, course(r)) for r in rounds],
    }


def _round(number: int, way: Course) -> SheetRoundRecord:
    record: SheetRoundRecord = {
        "round": number,
        "begins": way.begins,
        "turned": way.turned,
        "stages": [_stage(s) for s in way.stages],
    }
    if way.opening:
        record["opening"] = _joint(way.opening)
    return record


def _stage(stage: Stage) -> StageRecord:
    record: StageRecord = {"made": tally_record(stage.made), "so_far": tally_record(stage.so_far)}
    if stage.motif:
        record["motif"] = stage.motif
    if stage.repeats:
        record["repeats"] = stage.repeats
    if stage.joint:
        record["joint"] = _joint(stage.joint)
    return record


def _joint(joint: Joint) -> OnTheWayRecord:
    return {
        "between": joint.between,
        "so_far": tally_record(joint.so_far),
        "on": tally_record(joint.on),
    }
