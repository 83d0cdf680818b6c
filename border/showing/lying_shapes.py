"""The shapes of the record that `flat --json` prints. Lengths are in mm."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired

from border.showing.shapes import FindingRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class BandRecord(TypedDict):
    """A length that lies anywhere from `low_mm` to `high_mm`."""

    low_mm: float
    high_mm: float


class LiesRecord(TypedDict):
    """The length that lies flat, that of the work, and how it `lies`; `out_mm`: by how much at
    least it is too long, below 0 too short."""

    flat: BandRecord
    worked: BandRecord
    lies: Literal["cups", "flat", "ruffles"]
    out_mm: float


class SectionLiesRecord(LiesRecord):
    """One section of a round."""

    section: str


class RoundLiesRecord(LiesRecord):
    """One round, whose stitches end `away` from the edge. `radius_mm`: of the hyperbolic plane
    that a ruffle makes."""

    round: int
    away: BandRecord
    radius_mm: NotRequired[float]
    sections: list[SectionLiesRecord]


class MarkRecord(TypedDict):
    """`count` pieces `of` a round should measure `expected`, the whole of it `whole`.

    `measured_mm`: what they do measure, and `longer` what that adds to the whole round.
    """

    round: int
    of: Literal["space", "stitch"]
    count: int
    expected: BandRecord
    whole: BandRecord
    measured_mm: NotRequired[float]
    longer: NotRequired[BandRecord]


class ChangeRecord(TypedDict):
    """In a round (`clause`: only in that clause of it, from 1): `now` of `what` (`ch` or a
    stitch) in place of `was`."""

    round: int
    clause: NotRequired[int]
    what: str
    was: int
    now: int


class TurningRecord(TypedDict):
    """How far a section turns, in degrees, inwards below 0."""

    section: str
    motifs: int
    degrees: float


class LyingWorkRecord(TypedDict):
    """One piece of work. `turned_by`: who says how the edge turns.

    `changes`: what mends it; `then`: the rounds as they lie with these, `opened`: those that no
    longer close; all empty where every round lies flat as it is. `back_to_size`: what brings
    the rounds to come back to size, where the work was measured and is not as reckoned.
    """

    edge: str
    border: str
    degrees: float
    turned_by: Literal["loops", "project", "name"]
    turning: list[TurningRecord]
    flat: bool
    rounds: list[RoundLiesRecord]
    measuring: list[MarkRecord]
    changes: list[ChangeRecord]
    then: list[RoundLiesRecord]
    opened: list[int]
    back_to_size: list[ChangeRecord]


class FlatRecord(TypedDict):
    """What `border flat --json` prints."""

    format_version: Literal[1]
    name: str
    works: list[LyingWorkRecord]
    findings: list[FindingRecord]
