"""The guide in patterns/README.md: its files are made, its commands run, their output put in.

    python tests/guide.py

writes what the program says now into the page. Three kinds of blocks count: a
file, behind a line that ends in its name in backquotes and a colon; a change of
one, in a `diff` block behind a line that names it so; and a command, which begins
with `$ border`, with what it prints. A line `…` in an output stands for any lines.
"""

from __future__ import annotations

import contextlib
import io
import os
import re
import shlex
import tempfile
from collections.abc import Iterator
from pathlib import Path

from border.cli import main

PAGE = Path(__file__).parent.parent / "patterns" / "README.md"

_BLOCK = re.compile(r"^```(\w+)\n(.*?)^```\n", re.M | re.S)
_NAME = re.compile(r"`([\w.-]+\.(?:border|toml))`[^`]*:\n\n$")


def made_anew(page: str) -> str:
    """The page with the output of every command as it is now; files in a folder of its own."""
    with tempfile.TemporaryDirectory() as folder, contextlib.chdir(folder):
        return "".join(_parts(page))


def _parts(page: str) -> Iterator[str]:
    at = 0
    for block in _BLOCK.finditer(page):
        before, kind, text = page[at : block.start()], block[1], block[2]
        at = block.end()
        yield before
        if text.startswith("$ border"):
            text = _run(text)
        elif (named := _NAME.search(before)) is not None:
            _change(Path(named[1]), text) if kind == "diff" else Path(named[1]).write_text(text)
        yield f"```{kind}\n{text}```\n"
    yield page[at:]


def _run(block: str) -> str:
    command, _, shown = block.partition("\n")
    said = printed(command.removeprefix("$ "))
    if "…" in shown.splitlines() and _elided(shown, said):
        return block
    return f"{command}\n{said}"


def printed(command: str) -> str:
    """What a command prints, results before findings, without blanks at the ends of lines."""
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        main(shlex.split(command)[1:])
    lines = f"{out.getvalue()}{err.getvalue()}".strip("\n").splitlines()
    return "".join(f"{line.rstrip()}\n" for line in lines)


def _elided(shown: str, said: str) -> bool:
    """Whether the pieces of an output stand in what is said, in their order."""
    at = 0
    for piece in re.split(r"^…\n", shown, flags=re.M):
        found = said.find(piece, at)
        if found < 0:
            return False
        at = found + len(piece)
    return True


def _change(path: Path, diff: str) -> None:
    text = path.read_text()
    old = "".join(f"{line[1:]}\n" for line in diff.splitlines() if line[0] != "+")
    new = "".join(f"{line[1:]}\n" for line in diff.splitlines() if line[0] != "-")
    assert text.count(old) == 1, f"{path}: {old}"
    path.write_text(text.replace(old, new))


if __name__ == "__main__":
    os.environ["NO_COLOR"] = "1"
    PAGE.write_text(made_anew(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
