"""The record of `new`, and its shape."""

from __future__ import annotations

import sys
from typing import Literal

from border.showing.shapes import FORMAT_VERSION, FindingRecord
from border.showing.starter import Starter
from border.yoke.answers import written

# pydantic reads typing's own TypedDict only from Python 3.12 on.
if sys.version_info >= (3, 12):
    from typing import TypedDict
else:
    from typing_extensions import TypedDict


class NewRecord(TypedDict):
    """What `border new --json` prints: the files, and the answers that they are made of.

    `answers` are as one types them, by the names of their options (`strap_free`: `3,7`);
    `usual` names those that nobody gave.
    """

    format_version: Literal[1]
    made: list[str]
    answers: dict[str, str]
    usual: list[str]
    findings: list[FindingRecord]


def new_record(starter: Starter) -> NewRecord:
    """The record of `new`."""
    return {
        "format_version": FORMAT_VERSION,
        "made": list(starter.paths),
        "answers": {key: written(value) for key, value in starter.said.items()},
        "usual": [question.key for question in starter.usual],
        "findings": [],
    }
