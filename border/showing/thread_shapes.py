"""The shapes of the record that `thread --json` prints."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired

from border.showing.shapes import FindingRecord, ThreadRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class SwatchRecord(TypedDict):
    """A measured swatch: one loop as it has it, in mm, and its share above the mean of all."""

    stitch: str
    stitches: int
    used_mm: float
    loop_mm: float
    apart: float


class GaugeRecord(TypedDict):
    """One loop in mm, and between what it may lie. `times_in_10`: how often it does, where
    several swatches tell; left out where the band is an estimate."""

    loop_mm: float
    low_mm: float
    high_mm: float
    times_in_10: NotRequired[int]
    swatches: list[SwatchRecord]


class MaterialRecord(TypedDict):
    """The thread: its size number, tex and between what that may lie; the hook; one ball in mm;
    waste, a share of the length. `taken`: what was not stated, the usual taken for it."""

    size: NotRequired[str]
    tex: float
    low_tex: float
    high_tex: float
    hook_mm: float
    ball_mm: NotRequired[float]
    low_ball_mm: NotRequired[float]
    high_ball_mm: NotRequired[float]
    waste: float
    taken: list[str]


class LengthRecord(TypedDict):
    """A length in mm, waste left out, and between what it may lie."""

    mm: float
    low_mm: float
    high_mm: float


class RoundThreadRecord(LengthRecord):
    """The thread of one round."""

    round: int


class WorkThreadRecord(LengthRecord):
    """The thread of one edge."""

    edge: str
    border: str
    rounds: list[RoundThreadRecord]


class StopRecord(TypedDict):
    """A spot on the way: over a motif, on the joint between two, or, on an edge without
    motifs, over a place (from 1)."""

    edge: str
    round: int
    section: NotRequired[str]
    motif: NotRequired[str]
    between: NotRequired[tuple[str, str]]
    place: NotRequired[int]


class BallRecord(TypedDict):
    """Where a ball runs out: at the earliest, by the middle figure, at the latest; null: the
    work is done before that. `better`: the stop at whose beginning the join is less seen,
    `left_mm`: what of the ball stays over then."""

    ball: int
    earliest: StopRecord
    about: StopRecord | None
    latest: StopRecord | None
    in_last_round: bool
    at_centre_front: bool
    better: NotRequired[StopRecord]
    left_mm: NotRequired[float]


class LeftOutRecord(TypedDict):
    """The last so many rounds of each of some edges left out: what that saves, and what is
    certain to stay over then, in mm without waste."""

    edges: list[str]
    rounds: int
    whole: bool
    saves_mm: float
    over_mm: float


class SparingRecord(TypedDict):
    """How far so many balls go: for certain, by the middle figure, at the most; null: to the
    end."""

    balls: float
    enough: Literal["surely", "likely", "perhaps", "no"]
    surely: StopRecord | None
    about: StopRecord | None
    at_most: StopRecord | None
    leave_out: list[LeftOutRecord]


class ThreadToldRecord(TypedDict):
    """What `border thread --json` prints. `plan` only where it is asked and can be told."""

    format_version: Literal[1]
    name: str
    material: MaterialRecord
    gauge: GaugeRecord
    works: list[WorkThreadRecord]
    thread: ThreadRecord
    balls: list[BallRecord]
    plan: NotRequired[SparingRecord]
    findings: list[FindingRecord]
