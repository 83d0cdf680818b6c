"""What a row says of corners: left out on an edge that has none, an error on one that has."""

from __future__ import annotations

from pathlib import Path

import pytest

from border.cli import main

BORDER = "terms: us\nround 1: 1 sc in each loop, with 3 sc in each corner.\n"
PROJECT = """\
format = 1
name = "A square neck"
[[edge]]
name = "neck"
runs = [{ section = "corner", motifs = 1, places = 3 }, { section = "side", motifs = 2, places = 6 }]
[[work]]
edge = "neck"
border = "square.border"
"""


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "square.border").write_text(BORDER, encoding="utf-8")
    (tmp_path / "square.toml").write_text(PROJECT, encoding="utf-8")
    return tmp_path


def test_an_edge_of_loops_alone_is_counted_without_them(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(("count", "square.border", "--loops", "12")) == 0
    out, told = capsys.readouterr()
    assert "12 sc" in out
    assert 'warning: "with 3 sc in each corner" is left out' in told


def test_where_the_yoke_has_a_corner_it_must_be_written_as_clauses(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(("count", "square.toml")) == 1
    told = capsys.readouterr().err
    assert 'and your yoke has "corner" [exception-in-words]' in told
    assert '"over corner: …; elsewhere: 1 sc in each loop"' in told


def test_a_yoke_without_corners_is_counted_without_them(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "square.toml").write_text(PROJECT.replace("corner", "tip"), encoding="utf-8")
    assert main(("count", "square.toml")) == 0
    assert "[corners-left-out]" in capsys.readouterr().err
