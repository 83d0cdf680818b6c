"""The wheel and the sdist: what is in them, what they say of themselves, the same bytes each time.

Nothing is fetched: what they are built with is installed for developers.
"""

from __future__ import annotations

import email.message
import email.parser
import os
import shutil
import subprocess
import sys
import tarfile
import tomllib
import zipfile
from pathlib import Path

import pytest

from border import __version__

ROOT = Path(__file__).parent.parent
DEMO = ROOT / "patterns" / "fern.toml"
GOLDEN = ROOT / "tests" / "golden" / "fern.json"
STAMP = "1700000000"
LEFT_BEHIND = ("build", "dist", "*.egg-info", ".venv", "__pycache__", ".*_cache", ".hypothesis")

pytestmark = pytest.mark.skipif(
    not (ROOT / ".git").exists() or not shutil.which("git"),
    reason="what belongs to the sdist is what git knows of",
)


def tracked() -> set[str]:
    command = ["git", "ls-files", "--cached"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    return {name for name in done.stdout.splitlines() if (ROOT / name).is_file()}


def built(place: Path) -> dict[str, Path]:
    """Wheel and sdist, made of a copy of the project, by their endings."""
    copy = place / "project"
    shutil.copytree(ROOT, copy, ignore=shutil.ignore_patterns(*LEFT_BEHIND), symlinks=True)
    for path in copy.rglob("*.py"):
        os.utime(path)  # as freshly checked out: no two copies are of one time
    command = [sys.executable, "-m", "build", "--no-isolation", "--outdir", str(place), str(copy)]
    stamped = {**os.environ, "SOURCE_DATE_EPOCH": STAMP}
    done = subprocess.run(command, env=stamped, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return {path.suffix: path for path in place.iterdir() if path.is_file()}


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    return built(tmp_path_factory.mktemp("made"))


@pytest.fixture
def metadata(made: dict[str, Path]) -> email.message.Message:
    with zipfile.ZipFile(made[".whl"]) as wheel:
        (name,) = [n for n in wheel.namelist() if n.endswith(".dist-info/METADATA")]
        return email.parser.BytesParser().parsebytes(wheel.read(name))


def test_the_wheel_holds_the_program_and_its_language_and_nothing_else(
    made: dict[str, Path],
) -> None:
    wanted = {name for name in tracked() if name.startswith("border/")}
    wanted |= {f"border/{name}" for name in tracked() if name.startswith("grammar/")}
    wanted -= {"border/LICENSE", "border/cli/shells/border.1"}
    with zipfile.ZipFile(made[".whl"]) as wheel:
        names = set(wheel.namelist())
    assert {name for name in names if name.startswith("border/")} == wanted
    apart = f"lace_border-{__version__}"
    assert {name for name in names - wanted if ".dist-info/" not in name} == {
        f"{apart}.data/data/share/man/man1/border.1"
    }
    assert f"{apart}.dist-info/licenses/border/LICENSE" in names
    assert "border/py.typed" in names


def test_the_wheel_says_what_it_is(metadata: email.message.Message) -> None:
    """Keys and their meaning: the core metadata of Python packages, 2.4 (PEP 639 for licences)."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    assert metadata["Name"] == "lace-border"
    assert metadata["Version"] == __version__
    assert metadata["License-Expression"] == "MIT"
    assert metadata["License-File"] == "border/LICENSE"
    assert metadata["Requires-Python"] == ">=3.11"
    needed = [n for n in metadata.get_all("Requires-Dist", []) if "extra ==" not in n]
    assert needed == sorted(project["dependencies"])
    assert str(metadata.get_payload()).startswith("# border")


def test_the_sdist_holds_all_that_the_project_does(made: dict[str, Path]) -> None:
    with tarfile.open(made[".gz"]) as sdist:
        names = {n.name.partition("/")[2] for n in sdist.getmembers() if n.isfile()}
    assert tracked() <= names
    assert {name.partition("/")[0] for name in names - tracked()} == {
        "PKG-INFO",
        "lace_border.egg-info",
        "setup.cfg",
    }


def test_built_again_they_are_the_same_bytes(made: dict[str, Path], tmp_path: Path) -> None:
    again = built(tmp_path)
    assert set(again) == set(made) == {".whl", ".gz"}
    for ending, path in made.items():
        assert again[ending].name == path.name
        assert again[ending].read_bytes() == path.read_bytes(), ending


def test_the_wheel_alone_counts_the_demo(made: dict[str, Path], tmp_path: Path) -> None:
    home = tmp_path / "home"
    pip = [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-index"]
    subprocess.run([*pip, "--target", str(home), str(made[".whl"])], check=True)
    where = [sys.executable, "-c", "import border; print(border.__file__)"]
    count = [sys.executable, "-m", "border", "count", DEMO.name, "--json"]
    alone = {**os.environ, "PYTHONPATH": str(home)}
    for command, said in ((where, f"{home}/border/__init__.py\n"), (count, GOLDEN.read_text())):
        done = subprocess.run(
            command, cwd=DEMO.parent, env=alone, capture_output=True, text=True, check=True
        )
        assert done.stdout == said
    assert (home / "share" / "man" / "man1" / "border.1").is_file()


WITHOUT_A_NETWORK = """\
import contextlib, io, socket, sys

def refuse(event, arguments):
    if event.startswith("socket."):
        raise PermissionError(event)

sys.addaudithook(refuse)
try:
    socket.create_connection(("127.0.0.1", 9), 1)
except PermissionError as refused:
    print(refused)

from border.cli import main

new, project = sys.argv[1:]
alone = (("close", "shell-edging.border"), ("schema",), ("new", new, "--usual"))
of_project = ("check", "count", "close", "adjust", "thread", "sheet", "write", "yoke", "chart")
for command in (*alone, *((name, project) for name in of_project), ("yoke", project, "--svg")):
    with contextlib.redirect_stdout(io.StringIO()):
        code = main(command)
    print(command[0], code)
"""
"""Python's own audit events tell of every socket that is made or asked for a name."""


def test_no_command_asks_for_a_network(tmp_path: Path) -> None:
    command = [sys.executable, "-c", WITHOUT_A_NETWORK, str(tmp_path / "cuff"), DEMO.name]
    done = subprocess.run(command, cwd=DEMO.parent, capture_output=True, text=True, check=False)
    first, *ran = done.stdout.splitlines()
    assert first.startswith("socket."), done.stderr
    assert len(ran) == 13
    assert {line.split()[1] for line in ran} == {"0"}, done.stdout + done.stderr
