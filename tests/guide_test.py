"""The guide to copying a page: what it shows is what the program says."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from guide import PAGE, made_anew, printed

GUIDE = PAGE.read_text(encoding="utf-8")


def test_the_guide_is_fresh() -> None:
    """Run `python tests/guide.py` where this fails, and look at what changed."""
    assert made_anew(GUIDE) == GUIDE


def test_an_output_that_has_changed_is_seen() -> None:
    """A page of one command that says something else is put right, whole or in pieces."""
    whole = "```text\n$ border check gone.border\nall is well\n```\n"
    pieces = "```text\n$ border check gone.border\n…\nall is well\n```\n"
    said = printed("border check gone.border")
    assert "gone.border" in said
    for page in (whole, pieces):
        assert made_anew(page) == f"```text\n$ border check gone.border\n{said}```\n"


@pytest.mark.parametrize("book", ["PG 36669", "PG 73303", "June 1895"])
def test_the_pages_of_the_guide_are_named(book: str) -> None:
    assert book in GUIDE


def test_the_guide_has_its_commands_and_no_more_elisions_than_commands() -> None:
    commands = re.findall(r"^\$ (border .*)$", GUIDE, re.M)
    assert len(commands) >= 9
    assert len(re.findall(r"^…$", GUIDE, re.M)) <= len(commands)


def test_the_readings_in_the_manual_are_those_of_the_page_in_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    manual = (PAGE.parents[1] / "README.md").read_text(encoding="utf-8")
    section = manual.split("## A page out of an old book\n")[1].split("\n## ")[0]
    page = indented(section, "    border: ", "\nWhere a round")
    shown = indented(section, "    readings on edge", None)
    (tmp_path / "page.border").write_text(page, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    said = printed("border check page.border --loops 24 --readings")
    assert said.startswith(f"page.border: 1 fault\n{shown.rstrip()}\n")


def indented(text: str, first: str, end: str | None) -> str:
    """The indented block that begins with some words, and goes on to others."""
    block = text[text.index(first) : None if end is None else text.index(end)]
    return "".join(f"{line[4:]}\n" for line in block.rstrip().splitlines())
