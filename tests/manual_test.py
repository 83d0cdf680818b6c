"""The manual and the tutorials are true: every command runs, and prints what they show.

Indented by four, a line that begins with `border` is a command, to a remark two spaces
behind it; what stands indented below it, to the next command or the next line of prose,
is what it prints, in order, with … for what is left out.
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
PAGES = ("patterns/first-hour.md", "patterns/symptoms.md", "README.md")
COMMAND = re.compile(r"    border [\w-]")
MANUAL = (ROOT / "README.md").read_text(encoding="utf-8")


def steps(page: str) -> Iterator[tuple[str, list[str]]]:
    """Each command of a page, and the lines that it is said to print."""
    command = ""
    shown: list[str] = []
    for line in (ROOT / page).read_text(encoding="utf-8").splitlines():
        if COMMAND.match(line):
            if command:
                yield command, shown
            command, shown = line.strip().partition("  ")[0], []
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


def as_told(command: str, shown: list[str]) -> None:
    """Run a command of a page: each line shown is printed, in this order."""
    code, printed = said(command)
    assert code in (0, 1), command
    rest = iter(printed)
    for line in shown:
        assert line in rest, (command, line)


def test_the_first_hour_goes_as_it_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(ROOT / "patterns", tmp_path / "patterns")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    met = list(steps("patterns/first-hour.md"))
    assert len(met) >= 9
    for command, shown in met:
        as_told(command, shown)


INTERACTIVE = "border new my-yoke"  # tests/new_test.py types what the manual shows


def block(before: str, first: str) -> str:
    """The indented block of the manual that begins so, behind some words: a file to be made."""
    text = MANUAL[MANUAL.index(before) :]
    lines = text[text.index(f"    {first}") :].splitlines()
    ends = (i for i, x in enumerate(lines) if x[:4].strip() or COMMAND.match(x))
    return "\n".join(line[4:] for line in lines[: next(ends)]) + "\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the demo, and the files that the manual has the reader make."""
    shutil.copytree(ROOT / "patterns", tmp_path / "patterns")
    (tmp_path / "my.border").write_text(block("Put this into `my.border`", "border: "), "utf-8")
    (tmp_path / "mine.toml").write_text(block("Put this into `mine.toml`", "format"), "utf-8")
    page = block("## A page out of an old book", "border: ")
    (tmp_path / "page.border").write_text(page, "utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    return tmp_path


def test_the_manual_goes_as_it_is_told(folder: Path) -> None:
    met = [(c, s) for c, s in steps("README.md") if c != INTERACTIVE]
    assert len(met) >= 30
    for command, shown in met:
        as_told(command, shown)


def test_three_wheels_close_as_the_manual_has_it(folder: Path) -> None:
    """Round 1 written wheel by wheel, in place of the one that leaves a stitch over."""
    assert said("border count mine.toml")[0] == 1
    text = (folder / "my.border").read_text("utf-8")
    first = next(line for line in text.splitlines() if line.startswith("round 1: "))
    other = block("in place of round 1 every round closes", "round 1: ")
    (folder / "my.border").write_text(text.replace(first, other.rstrip()), "utf-8")
    code, printed = said("border count mine.toml")
    assert (code, printed[2]) == (0, "every round closes")


def test_the_contents_of_the_manual_name_every_part_of_it() -> None:
    parts = re.findall(r"^## (.+)$", MANUAL, flags=re.MULTILINE)
    named = re.findall(r"\]\(#([\w-]+)\)", MANUAL.split("\n## ")[0])
    assert named == [part.lower().replace(" ", "-") for part in parts]
    assert set(re.findall(r"\]\(#([\w-]+)\)", MANUAL)) == set(named)


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
