"""The shapes of the record that `adjust --json` prints."""

from __future__ import annotations

import sys
from typing import Literal

from border.showing.shapes import FindingRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class PlanAdjustmentRecord(TypedDict):
    """In round `round`, at a spot: `by` places passed over, or, below 0, worked twice."""

    round: int
    at: str
    by: int


class PlanRecord(TypedDict):
    """A plan, what it costs, and for what, in points by the names of the table of costs."""

    plan: list[PlanAdjustmentRecord]
    cost: int
    paid_for: dict[str, int]


class PointRecord(TypedDict):
    """Over which place (from 1) of which motif something lies."""

    motif: str
    place: int


class SectionRepeatsRecord(TypedDict):
    """Repeats that begin over a series of a section's motifs: where the first of them begins,
    and where the last of them ends."""

    section: str
    repeats: int
    begins: PointRecord
    ends: PointRecord


class LyingRecord(TypedDict):
    """How the repeats of a round lie. `sides_alike`: null without mirror points."""

    round: int
    sections: list[SectionRepeatsRecord]
    sides_alike: bool | None


class EasedWorkRecord(TypedDict):
    """One piece of work with its cheapest plan; `cost` null: there is none.

    `closes`: there is a plan with which every round still to be worked closes.
    `cheapest`: none costs less. `plans`: as many as were asked for, that one first.
    `rounds`: as that plan makes them.
    """

    edge: str
    border: str
    closes: bool
    plan: list[PlanAdjustmentRecord]
    cost: int | None
    cheapest: bool
    plans: list[PlanRecord]
    rounds: list[LyingRecord]


class AdjustRecord(TypedDict):
    """What `border adjust --json` prints."""

    format_version: Literal[1]
    works: list[EasedWorkRecord]
    findings: list[FindingRecord]
