"""Reading and writing files: whole or not at all."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable, Iterable, Mapping

from border.findings import Finding
from border.text.source import Source

MOST_BYTES = 1_000_000
"""No larger text is read."""
LONGEST_NAME = 300
"""Of a file's name no more is shown."""


def read_file(name: str) -> Source | Finding:
    """A text file: UTF-8, at most a megabyte; else the finding `file-unreadable`."""
    try:
        mode = os.stat(name).st_mode
        if stat.S_ISDIR(mode):
            return _unreadable(name, "is a folder", "name the file in it")
        if not stat.S_ISREG(mode):
            return _unreadable(name, "is no plain file", "save the text in a file of its own")
        with open(name, "rb") as file:
            data = file.read(MOST_BYTES + 1)
    except (OSError, ValueError) as fault:
        return _unreadable(
            name, f"cannot be read: {reason(fault)}", "look at the name that is given"
        )
    return _as_text(name, data)


def reader_of(texts: Mapping[str, str]) -> Callable[[str], Source | Finding]:
    """Reads from texts by their names as from files: nothing else is there."""
    there = {os.path.normpath(name): text for name, text in texts.items()}

    def read(name: str) -> Source | Finding:
        text = there.get(os.path.normpath(name))
        if text is None:
            what = f"cannot be read: {reason(FileNotFoundError())}"
            return _unreadable(name, what, "look at the name that is given")
        return _as_text(name, text.encode("utf-8", "surrogatepass"))

    return read


def _as_text(name: str, data: bytes) -> Source | Finding:
    if len(data) > MOST_BYTES:
        return _unreadable(name, "is larger than 1 MB", "a border or project is a short text")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        line = data[: fault.start].count(b"\n") + 1
        return _unreadable(
            name, f"is not UTF-8 text (line {line})", "save it as plain text in UTF-8"
        )
    if not text.strip():
        return _unreadable(name, "is empty", "write the border or project in it")
    return Source(name, text)


def is_folder(name: str) -> bool:
    """Whether a name is that of a folder."""
    return os.path.isdir(name)


def borders_in(names: Iterable[str]) -> list[str]:
    """The files named, with the border texts in it in place of each folder, in order.

    A folder that may not be looked into stands for itself: as a file it is unreadable.
    """
    found: list[str] = []
    for name in names:
        if not is_folder(name):
            found.append(name)
            continue
        try:
            listed = os.listdir(name)
        except OSError:
            found.append(name)
            continue
        texts = sorted(text for text in listed if text.lower().endswith(".border"))
        found += [os.path.join(name, text) for text in texts]
    return list(dict.fromkeys(found))


def _unreadable(name: str, what: str, help_: str) -> Finding:
    name = name if len(name) <= LONGEST_NAME else f"{name[:LONGEST_NAME]}…"
    return Finding("file-unreadable", f"{name} {what}", help_)


def reason(fault: OSError | ValueError) -> str:
    """Why a file could not be read or written, in plain words."""
    match fault:
        case FileNotFoundError():
            return "there is no such file"
        case PermissionError():
            return "it may not be read or written by you"
        case OSError(strerror=str(said)):
            return said.lower()
        case _:
            return "its name cannot be the name of a file"


def completion(shell: str) -> str:
    """What makes a shell finish the words behind `border`: one of the files that come along."""
    from importlib.resources import files

    return (files("border.cli") / "shells" / f"border.{shell}").read_text(encoding="utf-8")


def place_for(path: str) -> str:
    """Where a folder is to be made, in full. Raises OSError or ValueError where it cannot be."""
    if os.path.lexists(path):
        raise FileExistsError(path)
    full = os.path.abspath(path)
    if not path or not os.path.isdir(os.path.dirname(full)):
        raise FileNotFoundError(path)
    return full


def make_folder(path: str, files: Mapping[str, str]) -> None:
    """A folder with files in it, whole or not at all. Raises OSError; never overwrites."""
    import shutil
    import tempfile

    path = place_for(path)
    workshop = tempfile.mkdtemp(prefix=".border-", dir=os.path.dirname(path))
    try:
        made = os.path.join(workshop, "made")
        os.mkdir(made)
        for name, text in files.items():
            with open(os.path.join(made, name), "x", encoding="utf-8", newline="\n") as file:
                file.write(text)
        os.rename(made, path)
    finally:
        shutil.rmtree(workshop, ignore_errors=True)


def write_whole(path: str, text: str) -> None:
    """Put a text in place of a file in one step, so that it is never half written.

    A link is followed, and the file's mode kept. Raises OSError.
    """
    import tempfile

    path = os.path.realpath(path)
    mode = stat.S_IMODE(os.stat(path).st_mode)
    if not os.access(path, os.W_OK):
        raise PermissionError
    with open(path, "rb") as file:
        mark = b"\xef\xbb\xbf" if file.read(3) == b"\xef\xbb\xbf" else b""
    handle, beside = tempfile.mkstemp(prefix=".border-", dir=os.path.dirname(path))
    try:
        with open(handle, "wb") as file:
            file.write(mark + text.encode("utf-8"))
            file.flush()
            os.fsync(file.fileno())
        os.chmod(beside, mode)
        os.replace(beside, path)
    except BaseException:
        os.unlink(beside)
        raise
