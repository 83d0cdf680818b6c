"""The shapes of the records that `close --json` prints."""

from __future__ import annotations

import sys
from typing import Literal, NotRequired

from border.showing.shapes import FindingRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class EitherRecord(TypedDict):
    """One of several multiples, or (`exactly`) numbers, of which each will do."""

    multiple: int | None
    plus: int | None
    exactly: NotRequired[int]


class StretchNeedRecord(TypedDict):
    """What a clause needs of each stretch that it works: a multiple, plus so many, at least."""

    clause: str
    multiple: int | None
    plus: int | None
    least: int | None
    of: str | None


class RoundNeedRecord(TypedDict):
    """What a round needs of what it works into, `0 <= plus < multiple`; None: no such rule.

    `exactly`: the one number that it is then; `either`: any of several rules;
    `stretches`: a round by clauses. `closes` and `left_over` are those of the edge given.
    """

    round: int
    multiple: int | None
    plus: int | None
    of: str | None
    exactly: NotRequired[int]
    either: NotRequired[list[EitherRecord]]
    stretches: NotRequired[list[StretchNeedRecord]]
    closes: NotRequired[bool]
    left_over: NotRequired[int]


class RemedyRecord(TypedDict):
    """So many places more (below 0: fewer) make the border close."""

    by: int


class NeedRecord(TypedDict):
    """What a border needs of its edge: a multiple plus so many places, and at least so many.

    With an edge: its places as `loops`, whether the border closes there, what the
    first round that does not close leaves over, and what would make it close.
    """

    closed: bool
    multiple: int | None
    plus: int | None
    least: int | None
    of: str
    exactly: NotRequired[int]
    either: NotRequired[list[EitherRecord]]
    rounds: list[RoundNeedRecord]
    loops: NotRequired[int]
    closes: NotRequired[bool]
    left_over: NotRequired[int]
    remedies: NotRequired[list[RemedyRecord]]


class WorkNeedRecord(NeedRecord):
    """What the border of one piece of work needs, and lacks on its edge."""

    edge: str
    border: str


class CloseRecord(NeedRecord):
    """What `border close --json` prints of a border text."""

    format_version: Literal[1]
    findings: list[FindingRecord]


class CloseWorksRecord(TypedDict):
    """What `border close --json` prints of a project."""

    format_version: Literal[1]
    works: list[WorkNeedRecord]
    findings: list[FindingRecord]
