"""The shapes of the record that `border chart --json` prints."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired, TypeAlias

from border.showing.shapes import FindingRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict

Spot: TypeAlias = tuple[float, float]
"""To the right and downwards, in the units of the drawing: a chain is 9 of them high."""

Side: TypeAlias = Literal["left", "right"]


class SymbolRecord(TypedDict):
    """One symbol by its canonical name: its top, and what it is worked into, once a leg.

    `angle`: of a chain, in degrees, clockwise from lying flat. `chains`: of a picot.
    """

    symbol: str
    top: Spot
    feet: list[Spot]
    angle: NotRequired[float]
    chains: NotRequired[int]


class ChartRoundRecord(TypedDict):
    """One round as far as it is drawn. `goes`: which way it is worked on the drawing."""

    round: int
    goes: Side
    symbols: list[SymbolRecord]


class ChartWorkRecord(TypedDict):
    """One chart. `shown`: from where to where on the edge, in places, beyond its end where
    it goes past the start. `places`: those of the edge below the first round."""

    edge: str
    border: str
    terms: str
    hand: Side
    section: NotRequired[str]
    shown: tuple[float, float]
    places: list[Spot]
    rounds: list[ChartRoundRecord]


class ChartRecord(TypedDict):
    """What `border chart --json` prints."""

    format_version: Literal[1]
    name: str
    works: list[ChartWorkRecord]
    findings: list[FindingRecord]
