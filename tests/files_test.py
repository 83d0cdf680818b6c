"""Files and streams as they can be at their worst: full disks, links, folders, interruptions.

Each time the program says in plain words what is the matter, exits as it promises,
and leaves every file as it was or whole.
"""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Callable
from itertools import product
from pathlib import Path

import pytest
from fuzz import held

from border.cli import main

SHELLS = "terms: us\nround 1: *1 sc in next loop, ch 3; repeat from *.\nround 2: *5 dc in next space, 1 sc in next space; repeat from *.\n"
PROJECT = """\
format = 1
[[edge]]
name = "neck"
runs = [{ section = "neck", motifs = 13, places = 1 }]
[[work]]
edge = "neck"
border = "a.border"
"""
COUNT = ("count", "a.border", "--loops", "12")
ADJUST = ("adjust", "a.toml", "--write")
NEW = ("new", "cuff", "--usual")


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a border and a project that can be eased, to be in."""
    monkeypatch.chdir(tmp_path)
    Path("a.border").write_text(SHELLS, encoding="utf-8")
    Path("a.toml").write_text(PROJECT, encoding="utf-8")
    return tmp_path


def as_it_was() -> bool:
    """Whether nothing is there but what was there, as it was."""
    same = Path("a.toml").read_text(encoding="utf-8") == PROJECT
    return same and sorted(os.listdir()) == ["a.border", "a.toml"]


def full(*_: object, **__: object) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


def interrupted(*_: object, **__: object) -> None:
    raise KeyboardInterrupt


# --- writing ----------------------------------------------------------------------------


def test_a_plan_is_written_where_nothing_is_wrong() -> None:
    code, _, err = held.ran(ADJUST)
    assert code == 0, err
    assert "[[work.adjust]]" in Path("a.toml").read_text(encoding="utf-8")
    assert sorted(os.listdir()) == ["a.border", "a.toml"]


@pytest.mark.parametrize("step", ["os.fsync", "os.chmod", "os.replace", "tempfile.mkstemp"])
def test_a_full_disk_leaves_the_project_as_it_was(
    step: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(step, full)
    code, _, err = held.ran(ADJUST)
    assert code == 2
    assert "a.toml cannot be written: no space left on device" in err
    assert as_it_was()


@pytest.mark.parametrize("step", ["os.fsync", "os.replace"])
def test_an_interruption_leaves_the_project_as_it_was(
    step: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(step, interrupted)
    assert held.ran(ADJUST)[0] == 130
    assert as_it_was()


@pytest.mark.parametrize("step", ["os.mkdir", "os.rename", "tempfile.mkdtemp"])
@pytest.mark.parametrize("fault", [full, interrupted])
def test_a_project_is_made_whole_or_not_at_all(
    step: str, fault: Callable[..., None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(step, fault)
    code, _, err = held.ran(NEW)
    assert code == (2 if fault is full else 130)
    assert "cuff cannot be made: no space left on device" in err or fault is interrupted
    assert as_it_was()


def test_a_folder_that_may_not_be_written_in(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object, **__: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")

    # whoever runs this may be allowed everything, so the answer of the system is given here
    monkeypatch.setattr("tempfile.mkdtemp", refused)
    monkeypatch.setattr("tempfile.mkstemp", refused)
    for line in (ADJUST, NEW):
        code, _, err = held.ran(line)
        assert code == 2
        assert "it may not be read or written by you" in err
    assert as_it_was()


# --- reading ----------------------------------------------------------------------------


def test_links_are_followed_and_circles_of_links_told() -> None:
    Path("b.border").symlink_to("a.border")
    Path("c.border").symlink_to("d.border")
    Path("d.border").symlink_to("c.border")
    Path("e.border").symlink_to("nowhere")
    assert held.ran(("count", "b.border", "--loops", "12"))[0] == 0
    for name in ("c.border", "e.border"):
        code, _, err = held.ran(("count", name, "--loops", "12"))
        assert code == 2
        assert f"{name} cannot be read" in err


def test_a_folder_that_may_not_be_looked_into(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(name: str) -> list[str]:
        raise PermissionError(errno.EACCES, "Permission denied", name)

    Path("locked").mkdir()
    monkeypatch.setattr(os, "listdir", refused)
    code, _, err = held.ran(("close", "locked", "a.toml"))
    assert code == 2
    assert "locked is a folder" in err


@pytest.mark.parametrize(
    "data",
    [b"\xff\xfet\0e\0", "terms: us\nround 1: é".encode("latin-1"), b"\xef\xbb\xbf", b"", b"\0\xff"],
)
def test_what_is_no_text_in_utf_8_is_told(data: bytes) -> None:
    Path("a.border").write_bytes(data)
    code, _, err = held.ran(COUNT)
    assert code == 2
    assert "[file-unreadable]" in err


# --- printing ---------------------------------------------------------------------------

FULL = Path("/dev/full")
COMMANDS = (
    ("count", "a.border", "--loops", "12"),
    ("count", "a.border", "--loops", "12", "--json"),
    ("check", "a.border"),
    ("sheet", "a.toml"),
    ("write", "a.toml"),
    ("schema",),
)
HELP = (("--help",), ("count", "--help"), ("--version",), ("--completion", "bash"))


def shell(
    line: tuple[str, ...], streams: str, held_back: str = "", stdin: int | None = None
) -> subprocess.CompletedProcess[str]:
    """The program as a shell runs it, its streams turned elsewhere; what it prints is held
    back, or (`-u`) passed on at once. `stdin`: what stands at `<&0`."""
    program = f'exec "{sys.executable}" {held_back} -m border "$@" {streams}'
    return subprocess.run(
        ["sh", "-c", program, "sh", *line],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
        env={name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"},
        stdin=stdin,
    )


@pytest.mark.skipif(not FULL.exists(), reason="there is no /dev/full here")
@pytest.mark.parametrize(
    ("line", "held_back"), [*product(COMMANDS + HELP, [""]), *product(HELP, ["-u"])]
)
def test_a_full_disk_behind_what_is_printed_is_told(line: tuple[str, ...], held_back: str) -> None:
    done = shell(line, "> /dev/full", held_back)
    assert done.returncode == 2
    told = "border: what comes out cannot be written: no space left on device"
    assert done.stderr.splitlines()[-1] == told
    assert "Traceback" not in done.stderr


@pytest.mark.skipif(not FULL.exists(), reason="there is no /dev/full here")
def test_nowhere_to_tell_anything() -> None:
    done = shell(("count", "none.border", "--loops", "12"), "2> /dev/full")
    assert done.returncode == 2


@pytest.mark.parametrize("held_back", ["", "-u"])
@pytest.mark.parametrize("line", [*COMMANDS[3:], *HELP[:1], ("count", "none.border"), ("none",)])
def test_a_reader_that_has_gone_is_told_nothing(line: tuple[str, ...], held_back: str) -> None:
    """As with `| head -1`, and with `|& head -1`."""
    to, gone = os.pipe()
    os.close(to)
    with os.fdopen(gone):
        apart = shell(line, ">&0", held_back, gone)
        together = shell(line, ">&0 2>&0", held_back, gone)
    assert apart.returncode == (2 if "none" in line[-1] else 1)
    assert "cannot be written" not in apart.stderr
    assert "Traceback" not in apart.stderr
    assert "BrokenPipe" not in apart.stderr
    assert together.returncode == 1


@pytest.mark.parametrize("streams", [">&-", "2>&-", ">&- 2>&-", "<&-"])
def test_streams_that_are_closed(streams: str) -> None:
    assert shell(COUNT, streams).returncode == 0
    assert shell(("count", "a.border", "--loops", "13"), streams).returncode == 1


def test_a_folder_that_is_gone(folder: Path) -> None:
    Path("gone").mkdir()
    os.chdir("gone")
    os.rmdir(folder / "gone")
    try:
        assert main(["new", "cuff", "--usual"]) == 2
        assert main(["count", "a.border", "--loops", "12"]) == 2
    finally:
        os.chdir(folder)
