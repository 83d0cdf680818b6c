"""The shapes of the record that `size --json` prints. Lengths are in mm."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired

from border.showing.lying_shapes import BandRecord
from border.showing.shapes import FindingRecord, TallyRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class RoundSizeRecord(TallyRecord):
    """What one round comes to."""

    round: int
    spaces: int
    closes: bool


class EdgeSizeRecord(TypedDict):
    """An edge of one size: its length along `round` of its border, or along the wheels (0).

    `closes`: null without a border. `eased`: places that would have to be eased in for it to
    close; null where it closes, or nothing makes it.
    """

    edge: str
    motifs: int
    places: int
    length: NotRequired[BandRecord]
    round: int
    closes: bool | None
    eased: int | None
    rounds: list[RoundSizeRecord]


class SizedRecord(TypedDict):
    """The project with so many more wheels (or plain places) in some sections, below 0 fewer."""

    more: dict[str, int]
    goes_together: bool
    edges: list[EdgeSizeRecord]


class SizeRecord(TypedDict):
    """What `border size --json` prints: the project as it is, and the sizes asked for; with
    `wanted_mm`, those nearest to it at `edge`, the nearest first."""

    format_version: Literal[1]
    name: str
    edge: str | None
    wanted_mm: float | None
    now: SizedRecord
    then: list[SizedRecord]
    findings: list[FindingRecord]
