"""Writes the catalogue of findings, tests/errors/README.md, from what the program really says.

    python -m tests.errors.write

Every folder beside this file is a case, named after the code of the finding
that it shows: the files of somebody's mistake, and `command`, the command line
that meets it.
"""

from __future__ import annotations

import contextlib
import io
import shlex
from pathlib import Path

from border.cli import main
from border.findings import CODES, Severity

HERE = Path(__file__).parent
PAGE = HERE / "README.md"

OPENING = """\
# What the program tells you

Every finding that there is, with a small case of each: the files, the command,
and what the program says to it. Errors must be mended; warnings tell of a
choice that was made for you; notes are to be known. This page is written by
`python -m tests.errors.write` from the folders beside it; do not edit it.
"""

HEADS = {Severity.ERROR: "Errors", Severity.WARNING: "Warnings", Severity.NOTE: "Notes"}


def cases() -> list[str]:
    """The codes that have a case, in the order of the table of codes; unknown ones last."""
    there = {path.parent.name for path in HERE.glob("*/command")}
    return [code for code in CODES if code in there] + sorted(there - CODES.keys())


def command(code: str) -> str:
    return (HERE / code / "command").read_text(encoding="utf-8").strip()


def said(code: str) -> tuple[int, str]:
    """What the program says on standard error to a case, and its exit code."""
    program, *arguments = shlex.split(command(code))
    assert program == "border", f"{code}: a command begins with border"
    out, err = io.StringIO(), io.StringIO()
    with (
        contextlib.chdir(HERE / code),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
    ):
        exit_code = main(arguments)
    return exit_code, err.getvalue()


def page() -> str:
    """The whole catalogue."""
    parts = [OPENING]
    for severity, head in HEADS.items():
        parts.append(f"\n## {head}\n")
        parts += [_section(c) for c in cases() if CODES[c].severity is severity]
    return "".join(parts)


def _section(code: str) -> str:
    exit_code, told = said(code)
    parts = [f"\n### {code}\n\n{CODES[code].about}\n"]
    for path in sorted((HERE / code).iterdir()):
        if path.is_file() and path.name != "command":
            parts.append(f"\n`{path.name}`:\n\n{_fenced(path.read_text(encoding='utf-8'))}")
    parts.append(f"\n`{command(code)}` (exit {exit_code}):\n\n{_fenced(told)}")
    return "".join(parts)


def _fenced(text: str) -> str:
    return f"```text\n{text.rstrip()}\n```\n"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
