"""The record of `check --readings`."""

from __future__ import annotations

import sys

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict

ReadingRecord = TypedDict(
    "ReadingRecord",
    {
        "round": int,
        "taken": bool,
        "if": str | None,
        "write": str | None,
        "comes_out": bool,
        "times": list[int],
    },
)
ReadingRecord.__doc__ = """A reading of a round: the one taken (`if` null), or another.

`times`: how often each open-ended repeat goes."""


class EdgeReadingsRecord(TypedDict):
    """All readings of the rounds worked on one edge."""

    edge: str
    readings: list[ReadingRecord]
