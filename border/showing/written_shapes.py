"""The shapes of the record that `write --json` prints."""

from __future__ import annotations

import sys
from typing import Literal

from border.showing.shapes import FindingRecord

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class WrittenWorkRecord(TypedDict):
    """One border on one edge as a border text; empty where not one round could be written.

    `edge`: null where the border was written as it stands, for no edge.
    """

    edge: str | None
    border: str
    terms: str
    text: str


class WriteRecord(TypedDict):
    """What `border write --json` prints."""

    format_version: Literal[1]
    works: list[WrittenWorkRecord]
    findings: list[FindingRecord]
