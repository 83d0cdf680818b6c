"""The record of `thread`, as plain dictionaries. Loops to a hundredth of a mm, lengths to a tenth,
shares to a thousandth, so that parts add up to their sums; what is known of them says the band."""

from __future__ import annotations

from border.reckoning.balls import BallEnd
from border.reckoning.gauge import TIMES_IN_10, Gauge
from border.reckoning.sparing import Sparing
from border.reckoning.stops import Stop
from border.reckoning.thread import Thread, ThreadUse, ball_of, thread_used
from border.showing.counted import Piece
from border.showing.record import findings_record, use_record
from border.showing.shapes import FORMAT_VERSION
from border.showing.thread_shapes import (
    BallRecord,
    GaugeRecord,
    LengthRecord,
    MaterialRecord,
    SparingRecord,
    StopRecord,
    ThreadToldRecord,
    WorkThreadRecord,
)
from border.showing.thread_told import ThreadTold


def thread_record(told: ThreadTold) -> ThreadToldRecord:
    """The record of `thread`."""
    thread = told.thread
    record: ThreadToldRecord = {
        "format_version": FORMAT_VERSION,
        "name": told.name,
        "material": _material(thread),
        "gauge": _gauge(thread.gauge),
        "works": [_work(piece, told) for piece in told.pieces],
        "thread": use_record(told.used),
        "balls": [_ball(end, thread) for end in told.ends],
        "findings": findings_record(told.findings, told.sources),
    }
    if told.sparing:
        record["plan"] = _plan(told.sparing, thread)
    return record


def _material(thread: Thread) -> MaterialRecord:
    fine = thread.fineness
    record: MaterialRecord = {
        "tex": round(fine.tex, 1),
        "low_tex": round(fine.low, 1),
        "high_tex": round(fine.high, 1),
        "hook_mm": thread.hook_mm,
        "waste": thread.waste,
        "taken": list(thread.taken),
    }
    if thread.size:
        record["size"] = thread.size
    if ball := ball_of(thread):
        record["ball_mm"] = round(ball.mm)
        record["low_ball_mm"] = round(ball.low_mm)
        record["high_ball_mm"] = round(ball.high_mm)
    return record


def _gauge(gauge: Gauge) -> GaugeRecord:
    record: GaugeRecord = {
        "loop_mm": round(gauge.loop_mm, 2),
        "low_mm": round(gauge.least_mm, 2),
        "high_mm": round(gauge.most_mm, 2),
        "swatches": [
            {
                "stitch": s.stitch,
                "stitches": s.stitches,
                "used_mm": s.used_mm,
                "loop_mm": round(s.loop_mm, 2),
                "apart": round(gauge.apart(s), 3),
            }
            for s in gauge.swatches
        ],
    }
    if len(gauge.swatches) > 1:
        record["times_in_10"] = TIMES_IN_10
    return record


def _work(piece: Piece, told: ThreadTold) -> WorkThreadRecord:
    return {
        "edge": piece.edge.name,
        "border": piece.border,
        **_length(told.used_by(piece)),
        "rounds": [
            {"round": r.number, **_length(thread_used([r.loops], told.thread))}
            for r in piece.rounds
        ],
    }


def _length(used: ThreadUse) -> LengthRecord:
    return {"mm": used.mm, "low_mm": used.low_mm, "high_mm": used.high_mm}


def _ball(end: BallEnd, thread: Thread) -> BallRecord:
    record: BallRecord = {
        "ball": end.ball,
        "earliest": _stop(end.earliest),
        "about": _stop(end.about) if end.about else None,
        "latest": _stop(end.latest) if end.latest else None,
        "in_last_round": end.in_last_round,
        "at_centre_front": end.at_centre_front,
    }
    if end.better:
        record["better"] = _stop(end.better)
        record["left_mm"] = _mm(end.left_loops, thread)
    return record


def _plan(sparing: Sparing, thread: Thread) -> SparingRecord:
    surely, about, at_most = (_stop(stop) if stop else None for stop in sparing.reach)
    return {
        "balls": sparing.balls,
        "enough": sparing.enough.value,
        "surely": surely,
        "about": about,
        "at_most": at_most,
        "leave_out": [
            {
                "edges": list(way.edges),
                "rounds": way.rounds,
                "whole": way.whole,
                "saves_mm": _mm(way.loops, thread),
                "over_mm": _mm(way.over, thread),
            }
            for way in sparing.ways
        ],
    }


def _stop(stop: Stop) -> StopRecord:
    record: StopRecord = {"edge": stop.edge, "round": stop.round}
    if stop.section:
        record["section"] = stop.section
    if stop.motif:
        record["motif"] = stop.motif
    if stop.joint:
        record["between"] = stop.joint
    if stop.place is not None:
        record["place"] = stop.place
    return record


def _mm(loops: float, thread: Thread) -> float:
    return round(loops * thread.gauge.loop_mm, 1)
