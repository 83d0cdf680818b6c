"""The shapes of the records that `--json` prints; those of `close` are in `needs_shapes.py`.

A key that is `NotRequired` is left out when there is nothing to say; every
other key is always there. Stitches are keyed by their canonical (US) names.
"""

from __future__ import annotations

import sys
from typing import Literal, NotRequired, TypeAlias

from border.showing.readings_shapes import EdgeReadingsRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict

FORMAT_VERSION: Literal[1] = 1

SeverityName: TypeAlias = Literal["error", "warning", "note"]


class TallyRecord(TypedDict):
    """Stitches by canonical name, chains (not picots', not start chains') and picots."""

    stitches: dict[str, int]
    chains: int
    picots: int


class RepeatRecord(TypedDict):
    """An open-ended repeat: whole workings, what one takes and makes, sites left over.

    Over motifs in a clause, `times` and `left_over` are summed. `otherwise`: how many of the
    times take more or fewer than that.
    """

    times: int
    takes: dict[str, int]
    makes: TallyRecord
    left_over: int
    otherwise: NotRequired[int]


class SectionRecord(TallyRecord):
    """What stands over one section, joints inside it included."""

    section: str


class MotifRecord(TallyRecord):
    """What stands over one motif; `usual` is false where it differs from most motifs."""

    motif: str
    section: str
    usual: bool


class JointRecord(TallyRecord):
    """What stands exactly on the joint between two motifs."""

    between: tuple[str, str]


class AdjustmentRecord(TypedDict):
    """An adjustment as it fell: `before_repeat` 1 is before the second repeat."""

    at: str
    by: int
    before_repeat: int


class RoundRecord(TallyRecord):
    """One round. `spaces` are the chain spaces that it offers to the next; thread in mm.

    `found`: what was counted in it when it was worked, and what it is reckoned as.
    """

    round: int
    closes: bool
    spaces: int
    repeats: NotRequired[list[RepeatRecord]]
    sections: list[SectionRecord]
    motifs: list[MotifRecord]
    joints: list[JointRecord]
    adjustments: list[AdjustmentRecord]
    found: NotRequired[dict[str, int]]
    thread_mm: float


class WorkRecord(TypedDict):
    """One border on one edge. `places` are those of the edge, seam loops included."""

    edge: str
    border: str
    terms: str
    closed: bool
    places: int
    closes: bool
    rounds: list[RoundRecord]


class ThreadRecord(TypedDict):
    """Thread of all rounds in mm, waste left out, with the band it may lie in, and grams.

    `balls`: whole balls to have in hand, from the upper figure with waste.
    """

    mm: float
    low_mm: float
    high_mm: float
    grams: NotRequired[float]
    balls: NotRequired[int]
    calibrated: bool


class FindingRecord(TypedDict):
    """One thing to tell the user. Lines and columns count from 1, in code points.

    `end_line`, `end_column`: just behind the last character meant.
    """

    code: str
    severity: SeverityName
    message: str
    help: NotRequired[str]
    file: NotRequired[str]
    line: NotRequired[int]
    column: NotRequired[int]
    end_line: NotRequired[int]
    end_column: NotRequired[int]
    round: NotRequired[int]


class CountRecord(TypedDict):
    """What `border count --json` prints."""

    format_version: Literal[1]
    name: str
    works: list[WorkRecord]
    thread: ThreadRecord
    findings: list[FindingRecord]


class CheckRecord(TypedDict):
    """What `border check --json` prints; `readings` only where they are asked for."""

    format_version: Literal[1]
    readings: NotRequired[list[EdgeReadingsRecord]]
    findings: list[FindingRecord]


class RunRecord(TypedDict):
    """One motif's run on an edge: its free places, and those offered with seam loops."""

    motif: str
    section: str
    free: int
    places: int


class EdgeRecord(TypedDict):
    """An edge in working order; `runs` is empty where it has plain places."""

    edge: str
    closed: bool
    places: int
    runs: list[RunRecord]


class YokeRecord(TypedDict):
    """What `border yoke --json` prints: how many motifs and joints, and every edge."""

    motifs: int
    joints: int
    goes_together: bool
    edges: list[EdgeRecord]
    findings: list[FindingRecord]
