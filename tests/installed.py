"""Installs border as users do, and counts the demo: `python tests/installed.py`.

Wheel and sdist are built; the wheel is installed by pip in an environment of its own for
every Python from 3.11 on that is here, the sdist and the wheel by pipx. Each counts the
Fern yoke as it is kept in tests/golden, says its version, and has its manual page. What
they need comes from the package index that pip is set up for.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parent.parent
GOLDEN = (ROOT / "tests" / "golden" / "fern.json").read_text(encoding="utf-8")
NEWEST = 20
CLEAN = {k: v for k, v in os.environ.items() if not k.startswith(("PYTHON", "VIRTUAL_ENV"))}


def run(*command: str | Path, **more: str) -> str:
    """What a command prints, run in patterns/. Raises CalledProcessError."""
    place = ROOT / "patterns"
    done = subprocess.run(
        [str(word) for word in command],
        cwd=place,
        env={**CLEAN, **more},
        stdout=subprocess.PIPE,
        text=True,
        check=True,
    )
    return done.stdout


def pythons() -> Iterator[tuple[str, str]]:
    """Every Python from 3.11 on: its version and where it is."""
    kept = Path(os.environ.get("PYENV_ROOT", Path.home() / ".pyenv")) / "versions"
    for minor in range(11, NEWEST):
        there = [*kept.glob(f"3.{minor}.*/bin/python3"), shutil.which(f"python3.{minor}")]
        for python in (str(path) for path in there if path):
            has = "import sys, venv, ensurepip; print(sys.version.split()[0])"
            done = subprocess.run([python, "-c", has], capture_output=True, text=True, check=False)
            if done.returncode == 0:
                yield done.stdout.strip(), python
                break


def counts(border: Path) -> None:
    """Raises AssertionError where an installed border is not as it should be."""
    assert run(border, "count", "fern.toml", "--json") == GOLDEN
    assert run(border, "--version").startswith("border ")
    assert "_shtab_border" in run(border, "--completion", "bash")


def by_pip(python: str, wheel: Path, place: Path) -> None:
    """In an environment of its own, with nothing but what border asks for."""
    run(python, "-m", "venv", place)
    run(place / "bin" / "pip", "install", "--quiet", "--disable-pip-version-check", wheel)
    counts(place / "bin" / "border")
    called = "import border; print(border.count('fern.toml')['works'][0]['closes'])"
    assert run(place / "bin" / "python", "-c", called) == "True\n"
    assert (place / "share" / "man" / "man1" / "border.1").is_file()


def by_pipx(package: Path, place: Path) -> None:
    """As a program of its own, its manual page beside it."""
    homes = {
        "PIPX_HOME": str(place / "home"),
        "PIPX_BIN_DIR": str(place / "bin"),
        "PIPX_MAN_DIR": str(place / "man"),
    }
    pipx = (sys.executable, "-m", "pipx", "install", "--quiet", "--python", sys.executable)
    run(*pipx, package, **homes)
    counts(place / "bin" / "border")
    assert (place / "man" / "man1" / "border.1").is_file()


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        run(sys.executable, "-m", "build", "--no-isolation", "--outdir", place / "dist", ROOT)
        (wheel,) = (place / "dist").glob("*.whl")
        (sdist,) = (place / "dist").glob("*.tar.gz")
        print(f"built {sdist.name} and {wheel.name}", flush=True)
        for version, python in pythons():
            by_pip(python, wheel, place / version)
            print(f"Python {version}: installed by pip, and counts the demo", flush=True)
        for package in (wheel, sdist):
            by_pipx(package, place / f"pipx-{package.suffix}")
            print(f"{package.name}: installed by pipx, and counts the demo", flush=True)


if __name__ == "__main__":
    main()
