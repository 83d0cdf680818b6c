"""The shapes of the record that `border sheet --json` prints."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired

from border.showing.shapes import FindingRecord, TallyRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class OnTheWayRecord(TypedDict):
    """A joint as it is come to: what stands before it since the round began, and what on it."""

    between: tuple[str, str]
    so_far: TallyRecord
    on: TallyRecord


class StageRecord(TypedDict):
    """The way over one motif, or over some repeats (the first and the last); with neither,
    what is behind the last repeat. `so_far`: what stands at its end."""

    motif: NotRequired[str]
    repeats: NotRequired[tuple[int, int]]
    made: TallyRecord
    so_far: TallyRecord
    joint: NotRequired[OnTheWayRecord]


class SheetRoundRecord(TypedDict):
    """One round in the order of working. `begins`: over a motif, on a joint, or at a place."""

    round: int
    begins: str | tuple[str, str] | int
    turned: bool
    opening: NotRequired[OnTheWayRecord]
    stages: list[StageRecord]


class SheetWorkRecord(TypedDict):
    """One border on one edge."""

    edge: str
    border: str
    rounds: list[SheetRoundRecord]


class SheetRecord(TypedDict):
    """What `border sheet --json` prints."""

    format_version: Literal[1]
    name: str
    works: list[SheetWorkRecord]
    findings: list[FindingRecord]
