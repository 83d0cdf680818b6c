"""The tutorials are true: every command in them runs, and prints what they show.

Indented by four, a line that begins with `border` is a command; what stands indented
behind it, to the next command or the next line of prose, is what it prints, in order,
with … for what is left out.
"""

from __future__ import annotations

import contextlib
import io
import re
import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from border.cli import main

ROOT = Path(__file__).parents[1]
PAGES = ("patterns/first-hour.md", "patterns/symptoms.md")


def steps(page: str) -> Iterator[tuple[str, list[str]]]:
    """Each command of a page, and the lines that it is said to print."""
    command = ""
    shown: list[str] = []
    for line in (ROOT / page).read_text(encoding="utf-8").splitlines():
        if line.startswith("    border "):
            if command:
                yield command, shown
            command, shown = line.strip(), []
        elif line.strip() and not line.startswith("    "):
            if command:
                yield command, shown
            command, shown = "", []
        elif command and line.strip() not in ("", "…"):
            shown.append(line[4:])
    if command:
        yield command, shown


def said(command: str) -> tuple[int, list[str]]:
    """The exit code and all lines of a command, which may end in `> file`."""
    words = shlex.split(command.partition(" > ")[0])
    out = io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(io.StringIO()):
        code = main(words[1:])
    return code, out.getvalue().splitlines()


def test_the_first_hour_goes_as_it_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(ROOT / "patterns", tmp_path / "patterns")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    met = list(steps("patterns/first-hour.md"))
    assert len(met) >= 9
    for command, shown in met:
        code, printed = said(command)
        assert code in (0, 1), command
        rest = iter(printed)
        for line in shown:
            assert line in rest, (command, line)


def test_the_page_of_symptoms_quotes_what_the_program_says() -> None:
    """Each symptom, its dots apart, is in the catalogue, in the manual, or in a message."""
    catalogue = (ROOT / "tests/errors/README.md").read_text(encoding="utf-8")
    printed = catalogue + (ROOT / "README.md").read_text(encoding="utf-8")
    printed += "".join(p.read_text(encoding="utf-8") for p in (ROOT / "border").rglob("*.py"))
    table = (ROOT / "patterns/symptoms.md").read_text(encoding="utf-8")
    symptoms = re.findall(r"^\| (`.*?) \|", table, flags=re.MULTILINE)
    assert len(symptoms) > 15
    for symptom in symptoms:
        for quoted in re.findall(r"`([^`]*)`", symptom):
            words = re.sub(r"\d+", "#", quoted)
            parts = [part.strip(" ;") for part in words.split("…") if len(part) > 4]
            assert any(part in re.sub(r"\d+", "#", printed) for part in parts), quoted


def test_the_pages_lead_to_pages_that_are_there() -> None:
    for page in PAGES:
        text = (ROOT / page).read_text(encoding="utf-8")
        for target in re.findall(r"\]\(([^)#]+)\)", text):
            assert (ROOT / page).parent.joinpath(target).exists(), (page, target)
