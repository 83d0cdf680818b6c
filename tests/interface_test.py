"""The Python interface: the same records as `--json`, from files or from texts in memory."""

from __future__ import annotations

import contextlib
import doctest
import inspect
import io
import re
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

import border
from border import calling
from border.cli import main
from border.showing.record import to_json

ROOT = Path(__file__).parent.parent
PATTERNS = ROOT / "patterns"
FERN = str(PATTERNS / "fern.toml")
SHELLS = str(PATTERNS / "shell-edging.border")

SAME: dict[str, tuple[Callable[[], Mapping[str, Any]], tuple[str, ...]]] = {
    "check": (lambda: border.check(FERN), ("check", FERN)),
    "count": (lambda: border.count(FERN), ("count", FERN)),
    "count, one edge": (lambda: border.count(FERN, work="hem"), ("count", FERN, "--work", "hem")),
    "count, loops": (lambda: border.count(SHELLS, loops=91), ("count", SHELLS, "--loops", "91")),
    "count, runs": (
        lambda: border.count(SHELLS, runs=[6, 6, 3], closed=False),
        ("count", SHELLS, "--runs", "6,6,3", "--open"),
    ),
    "count, no edge": (lambda: border.count(SHELLS), ("count", SHELLS)),
    "count, no file": (lambda: border.count("no.toml"), ("count", "no.toml")),
    "close": (lambda: border.close(SHELLS), ("close", SHELLS)),
    "close, a project": (lambda: border.close(FERN), ("close", FERN)),
    "adjust": (lambda: border.adjust(FERN, plans=2), ("adjust", FERN, "--all", "2")),
    "thread": (lambda: border.thread(FERN), ("thread", FERN)),
    "thread, plan": (lambda: border.thread(FERN, plan=True), ("thread", FERN, "--plan")),
    "thread, balls": (lambda: border.thread(FERN, balls=1.5), ("thread", FERN, "--balls", "1.5")),
    "write": (lambda: border.write(FERN, terms="uk"), ("write", FERN, "--terms", "uk")),
}
"""What is called, and the command that is the same."""


def printed(*command: str) -> str:
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        main([*command, "--json"])
    return out.getvalue()


@pytest.mark.parametrize("name", SAME)
def test_a_record_is_byte_for_byte_what_json_prints(name: str) -> None:
    called, command = SAME[name]
    assert to_json(called()) == printed(*command)


def test_texts_in_memory_are_as_good_as_files(monkeypatch: pytest.MonkeyPatch) -> None:
    """The whole demo, which copies rows from one border into another, read from nowhere."""
    monkeypatch.chdir(PATTERNS)
    texts = {path.name: path.read_text() for path in PATTERNS.iterdir()}
    said = printed("count", "fern.toml")
    monkeypatch.chdir(ROOT)
    assert to_json(border.count("fern.toml", files=texts)) == said
    assert to_json(border.count(Path("./fern.toml"), files=texts)) == said


def codes(record: Any) -> list[str]:
    return [finding["code"] for finding in record["findings"]]


@pytest.mark.parametrize("text", ["", "\n", "terms: us\nround 1: \ud800", "x" * 1_000_001])
def test_a_text_that_cannot_be_read_is_a_finding(text: str) -> None:
    assert codes(border.check("a.border", files={"a.border": text})) == ["file-unreadable"]


def test_beside_texts_in_memory_no_file_is_read() -> None:
    record = border.count(FERN, files={"fern.border": "round 1: 1 sc in each loop."})
    assert codes(record) == ["file-unreadable"]
    assert record["findings"][0]["message"].endswith("there is no such file")
    assert record["works"] == []


def test_faults_are_findings() -> None:
    record = border.count("a.border", loops=5, files={"a.border": "round 1: 2 foo, 3 bar."})
    assert "unknown-word" in codes(record)
    record = border.count("a.toml", files={"a.toml": "format = "})
    assert "not-toml" in codes(record)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: border.count(SHELLS, loops=0), '"0" is no number of loops'),
        (lambda: border.count(SHELLS, runs=[3, -1]), '"3,-1" is no list of runs'),
        (lambda: border.count(SHELLS, loops=4, runs=[4]), "not allowed with"),
        (lambda: border.count(SHELLS, work="neck"), "--work picks an edge of a project"),
        (lambda: border.count(FERN, loops=4), "a project says itself what its edges are"),
        (lambda: border.count(FERN, work="sleeve"), 'no work is done on an edge called "sleeve"'),
        (lambda: border.adjust(FERN, plans=0), '"0" is no number of plans'),
        (lambda: border.thread(FERN, balls=-1), '"-1" is no number of balls'),
        (lambda: border.write(FERN, terms="fr"), '"fr" names no terms'),
    ],
)
def test_a_call_that_makes_no_sense_is_an_exception(call: Callable[[], object], words: str) -> None:
    with pytest.raises(ValueError, match=re.escape(words)):
        call()


def test_a_file_may_have_any_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("--json").write_text(Path(SHELLS).read_text())
    assert border.count("--json", loops=90)["works"][0]["closes"] is True


def test_border_is_loaded_when_it_is_asked_for() -> None:
    """Importing it loads nothing of it, nor of the libraries."""
    script = "import sys; old = set(sys.modules); import border; print(*set(sys.modules) - old)"
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    new = set(done.stdout.split())
    assert {name for name in new if name.split(".")[0] not in sys.stdlib_module_names} == {"border"}


def test_what_is_offered_is_all_there_and_says_what_it_gives() -> None:
    assert set(border.__all__) <= set(dir(border))
    for name in border.__all__:
        offered = getattr(border, name)
        assert offered is getattr(calling, name)
        assert inspect.signature(offered).return_annotation.endswith(("Record", "ToldRecord"))
        assert offered.__doc__
    with pytest.raises(AttributeError, match="no attribute 'counted'"):
        border.counted  # noqa: B018


def test_the_examples_of_the_readme_run(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    failed, tried = doctest.testfile(str(ROOT / "README.md"), module_relative=False)
    assert tried >= 5
    assert failed == 0
