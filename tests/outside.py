"""The command line from the outside: small files for it, and what running it gives."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

from border.starting import made, next_question
from border.yoke.answers import Value


def starter() -> dict[str, str]:
    """The project that `border new cuff` writes where nothing is said."""
    said: dict[str, Value] = {}
    while question := next_question("cuff", said):
        said[question.key] = question.usual(said)
    return made("cuff", said).files


STARTER = starter()

SHELLS = """\
border: Shells
terms: us
round 1: *1 sc in next loop, ch 3; repeat from *.
round 2: *5 dc in next space, 1 sc in next space; repeat from *.
"""

PROJECT = """\
format = 1
name = "Two edges"
[[edge]]
name = "neck"
places = 12
[[edge]]
name = "cuff"
runs = [{ section = "cuff", motifs = 3, places = 3 }]
[[work]]
edge = "neck"
border = "lace/shells.border"
[[work]]
edge = "cuff"
border = "lace/shells.border"
"""


class Ran(NamedTuple):
    code: int
    out: str
    err: str


Border = Callable[..., Ran]


def write(**files: str) -> None:
    """Files in the folder: `shells_border` is shells.border."""
    for name, text in files.items():
        path = Path(re.sub("_(border|toml)$", r".\1", name).replace("__", "/"))
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="")


def codes(record: Any) -> list[str]:
    return [f["code"] for f in record["findings"]]
