"""The shapes of the record that `close --json` prints of several borders."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired

from border.showing.eased_shapes import PlanAdjustmentRecord
from border.showing.shapes import FindingRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class FitRecord(TypedDict):
    """One border on one edge: the places to be eased in (0: it closes as it stands; null: it
    cannot be made to) and where; without an edge, the multiple of loops that it needs."""

    border: str
    readable: bool
    edge: NotRequired[str]
    places: NotRequired[int | None]
    plan: NotRequired[list[PlanAdjustmentRecord]]
    multiple: NotRequired[int | None]
    plus: NotRequired[int | None]
    least: NotRequired[int | None]


class ChoiceRecord(TypedDict):
    """What `border close --json` prints of several borders."""

    format_version: Literal[1]
    name: str
    borders: list[FitRecord]
    findings: list[FindingRecord]
