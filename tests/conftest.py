"""Fixtures for all tests."""

from __future__ import annotations

from pathlib import Path

import pytest
from outside import Border, Ran

from border.cli import main


@pytest.fixture
def border(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Border:
    """Runs the program in an empty folder of its own."""
    monkeypatch.chdir(tmp_path)

    def run(*arguments: str) -> Ran:
        code = main(arguments)
        return Ran(code, *capsys.readouterr())

    return run
