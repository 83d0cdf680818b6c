"""The help: an example of every command, each of which runs as it stands."""

from __future__ import annotations

import contextlib
import io
import shlex
import shutil
from pathlib import Path

import pytest

from border.arguments import COMMANDS
from border.cli import main
from border.examples import EXAMPLES

PATTERNS = Path(__file__).parent.parent / "patterns"

TYPED = [typed for of_one in EXAMPLES.values() for typed, _ in of_one]


def asked_for_help(*arguments: str) -> str:
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        assert main([*arguments, "--help"]) == 0
    return out.getvalue()


@pytest.fixture
def workplace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The files that the examples speak of: the cuff that the first of them makes, and others."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("sys.stdin", io.StringIO())  # no one sits there: nothing is asked
    with contextlib.redirect_stdout(io.StringIO()):
        assert main(["new", "cuff"]) == 0
    for file in PATTERNS.glob("fern*"):
        shutil.copy(file, file.name)
    shutil.copy("cuff/cuff.border", "shells.border")
    Path("borders").mkdir()
    shutil.copy(PATTERNS / "shell-edging.border", "borders")
    return tmp_path


def test_every_command_has_examples() -> None:
    assert list(EXAMPLES) == list(COMMANDS)
    for command, examples in EXAMPLES.items():
        for typed, _ in examples:
            assert shlex.split(typed)[:2] == ["border", command]


@pytest.mark.parametrize("typed", TYPED)
def test_an_example_runs_as_it_stands(
    workplace: Path, typed: str, capsys: pytest.CaptureFixture[str]
) -> None:
    if typed == "border new cuff":
        shutil.rmtree("cuff")
    words = shlex.split(typed)[1:]
    if ">" in words:
        words = words[: words.index(">")]
    code = main(words)
    ran = capsys.readouterr()
    assert ran.out
    assert code == 0, ran.err


@pytest.mark.parametrize("command", COMMANDS)
def test_a_command_explains_itself_in_80_columns(
    command: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    told = asked_for_help(command)
    for typed, comes in EXAMPLES[command]:
        assert typed in told
        assert comes in told
    assert max(len(line) for line in told.splitlines()) <= 80
    assert "positional" not in told
    assert f"  {EXAMPLES[command][0][0]}\n" in asked_for_help()
