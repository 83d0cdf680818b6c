"""Writes the golden records: `python tests/golden/write.py`, after a change that is meant.

Every demo in patterns/ has one, and so has the border beside this file: what `border count …
--json` prints of it; the yoke also as its borders are written out in each terms, and with its
thread.
Look at what changed before you keep it; it is never run by the checks.
"""

from __future__ import annotations

import contextlib
import io
from pathlib import Path

from border.cli import main

HERE = Path(__file__).parent
PATTERNS = HERE.parents[1] / "patterns"

CASES = {
    "fern": ("count", "fern.toml"),
    "fern-as-written": ("count", "fern-as-written.toml"),
    "fern-thread": ("thread", "fern.toml", "--plan"),
    "fern-written-us": ("write", "fern.toml", "--terms", "us"),
    "fern-written-uk": ("write", "fern.toml", "--terms", "uk"),
    "fern-written-early": ("write", "fern.toml", "--terms", "early"),
    "shell-edging-90": ("count", "shell-edging.border", "--loops", "90"),
    "growing-arches-60": ("count", "../tests/golden/growing-arches.border", "--loops", "60"),
    "growing-arches-written-uk": (
        *("write", "../tests/golden/growing-arches.border", "--loops", "60"),
        *("--terms", "uk"),
    ),
    "stepped-squares-19": (
        *("count", "../tests/golden/stepped-squares.border", "--loops", "19", "--open"),
    ),
    "shell-edging-runs": ("count", "shell-edging.border", "--runs", "6,6,3,3", "--open"),
}
"""Name of the golden record -> the command, in patterns/."""


def record(name: str) -> str:
    """What the program prints now."""
    out = io.StringIO()
    with contextlib.chdir(PATTERNS), contextlib.redirect_stdout(out):
        main([*CASES[name], "--json"])
    return out.getvalue()


if __name__ == "__main__":
    for case in CASES:
        (HERE / f"{case}.json").write_text(record(case), encoding="utf-8")
