"""The shapes of the record that `attach --json` prints. Lengths are in mm."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired

from border.showing.lying_shapes import BandRecord
from border.showing.shapes import FindingRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class PartSewnRecord(TypedDict):
    """A part: pieces of lace `first` to `last` (from 1; `last` below `first`: none).

    `takes`: sewing stitches in each of them. `cut_mm`: cloth to cut before the wash.
    """

    gathered: bool
    finished_mm: float
    cloth_mm: float
    ratio: float
    usual: bool
    first: int
    last: int
    takes: list[int]
    cut_mm: NotRequired[float]


class PinRecord(TypedDict):
    """A pin behind so many pieces; `eighths` of the way, null where only a part ends.

    `motif`, `number`: the last piece before it, and its number over its motif.
    """

    eighths: int | None
    pieces: int
    motif: NotRequired[str]
    number: NotRequired[int]
    seam_mm: float
    cloth_mm: float


class SewnEdgeRecord(TypedDict):
    """One edge, or parts of it, sewn to cloth. `round` 0: the edge itself. `lace`: how long the
    lace lies there, left out where nothing tells; `too_long_mm`: than the cloth."""

    edge: str
    over: list[str]
    round: int
    of: str
    pieces: int
    finished_mm: float
    lace: NotRequired[BandRecord]
    too_long_mm: float
    parts: list[PartSewnRecord]
    pins: list[PinRecord]


class AttachRecord(TypedDict):
    """What `border attach --json` prints."""

    format_version: Literal[1]
    name: str
    edges: list[SewnEdgeRecord]
    findings: list[FindingRecord]
