"""The same input gives the same bytes, in another process too, where sets have another order."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from sheets import FERN
from validity_test import SIXTY, TURNED

PROJECTS = {
    "demo.toml": FERN["fern.toml"],
    "left.toml": f'hand = "left"\n{FERN["fern.toml"]}',
    "turned.toml": TURNED,
    "sixty.toml": SIXTY["sixty.toml"],
}
ASKED = [
    ("sheet",),
    ("sheet", "--text"),
    ("sheet", "--json"),
    ("chart",),
    ("chart", "--json"),
    ("yoke", "--svg"),
]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("same")
    borders = {name: text for name, text in (FERN | SIXTY).items() if name.endswith(".border")}
    for name, text in (borders | PROJECTS).items():
        (folder / name).write_text(text, encoding="utf-8")
    return folder


def printed(folder: Path, asked: tuple[str, ...], project: str, seed: str) -> bytes:
    command = [sys.executable, "-m", "border", asked[0], project, *asked[1:]]
    environment = {**os.environ, "PYTHONHASHSEED": seed}
    done = subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, check=False, timeout=300
    )
    assert done.returncode in (0, 1), done.stderr
    return done.stdout + done.stderr


@pytest.mark.parametrize("project", PROJECTS)
@pytest.mark.parametrize("asked", ASKED, ids=" ".join)
def test_the_same_bytes_come_from_another_process(
    folder: Path, asked: tuple[str, ...], project: str
) -> None:
    first, second = (printed(folder, asked, project, seed) for seed in ("1", "2"))
    assert first == second and len(first) > 2_000
