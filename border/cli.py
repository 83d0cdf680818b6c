"""The command line: the only place that reads and writes files, prints, or exits.

Results go to standard output, findings to standard error. Exit 0: no error
finding; 1: error findings; 2: wrong usage, or a file that cannot be read.
"""

from __future__ import annotations

import gc
import os
import stat
import sys
from argparse import Namespace
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any, TextIO

from border.arguments import UsageFault, parsed
from border.findings import Finding, Severity
from border.text.source import Source

if TYPE_CHECKING:
    from rich.console import RenderableType

    from border.pipeline import Pipeline

FINE, FAULTS, WRONG = 0, 1, 2
MOST_BYTES = 1_000_000
VERSION = "0.1.0"


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the command line asks; the exit code."""
    gc.set_threshold(200_000)  # a short run throws little away, and looking for it takes time
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        code = _asked(sys.argv[1:] if argv is None else argv)
        sys.stdout.flush()
    except BrokenPipeError:
        # The reader has gone (border count … | head): nothing more to say to it.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FAULTS
    except KeyboardInterrupt:
        return 130
    return code


def _asked(argv: Sequence[str]) -> int:
    try:
        asked = parsed(argv, VERSION)
        return _COMMANDS[asked.command](asked)
    except UsageFault as fault:
        print(f"border: {fault}\n{fault.usage}", file=sys.stderr, end="")
        return WRONG
    except SystemExit as done:  # --help and --version
        return done.code if isinstance(done.code, int) else FINE


# --- the commands -------------------------------------------------------------


def _new(asked: Namespace) -> int:
    from border.showing.starter import STARTER, what_next

    try:
        _make_folder(asked.dir, STARTER)
    except FileExistsError:
        raise UsageFault(
            f"there is already something at {asked.dir}, and nothing is ever overwritten",
            "give a folder that is not there yet\n",
        ) from None
    except (OSError, ValueError) as fault:
        raise UsageFault(
            f"{asked.dir} cannot be made: {_reason(fault)}", "give a folder that can be made\n"
        ) from None
    made = [f"{asked.dir.rstrip('/')}/{name}" for name in STARTER]
    if asked.json:
        _print_json({"format_version": 1, "made": made, "findings": []})
    else:
        print(what_next(made), end="")
    return FINE


def _check(asked: Namespace) -> int:
    from border.pipeline import in_a_word

    pipelines = _pipelines(asked, asked.files)
    findings = [f for p in pipelines for f in p.findings]
    sources = {name: source for p in pipelines for name, source in p.texts.sources.items()}
    if asked.json:
        from border.showing.record import check_record

        _print_json(check_record(findings, sources))
    else:
        for pipeline in pipelines:
            print(in_a_word(pipeline))
        _tell(findings, sources)
    return _code(findings)


def _count(asked: Namespace) -> int:
    (pipeline,) = _pipelines(asked, [asked.file])
    counted = pipeline.counted
    if asked.json:
        from border.showing.record import count_record

        _print_json(count_record(counted))
    else:
        if counted.pieces:
            from border.showing.tables import count_tables

            _show(count_tables(counted))
        _tell(counted.findings, counted.sources)
    return _code(counted.findings)


def _close(asked: Namespace) -> int:
    (pipeline,) = _pipelines(asked, [asked.file])
    needed = pipeline.needed
    if asked.json:
        from border.showing.needs_record import close_record

        _print_json(close_record(needed))
    else:
        if needed.works:
            from border.showing.needs_tables import needs_tables

            _show(needs_tables(needed))
        _tell(needed.findings, needed.sources)
    return _code(needed.findings)


def _yoke(asked: Namespace) -> int:
    from border.pipeline import Pipeline, is_project

    if not is_project(asked.file):
        raise UsageFault(f"{asked.file} is no project", "border yoke FILE.toml\n")
    pipeline = Pipeline(asked.file, read_file)
    sources, findings = pipeline.texts.sources, pipeline.yoke_findings
    if asked.json:
        from border.showing.record import yoke_record

        _print_json(yoke_record(pipeline.yoke, findings, sources))
    else:
        if pipeline.yoke:
            from border.showing.yoke_table import yoke_tables

            _show(yoke_tables(pipeline.title, pipeline.yoke))
        _tell(findings, sources)
    return _code(findings)


def _schema(asked: Namespace) -> int:
    from border.showing.schema import schema

    _print_json(schema())
    return FINE


_COMMANDS = {
    "new": _new,
    "check": _check,
    "count": _count,
    "close": _close,
    "yoke": _yoke,
    "schema": _schema,
}


def _pipelines(asked: Namespace, files: Sequence[str]) -> list[Pipeline]:
    from border.asking import pipelines

    return pipelines(asked, files, read_file)


# --- reading, writing, printing -----------------------------------------------


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
            name, f"cannot be read: {_reason(fault)}", "look at the name that is given"
        )
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


def _unreadable(name: str, what: str, help_: str) -> Finding:
    return Finding("file-unreadable", f"{name} {what}", help_)


def _reason(fault: OSError | ValueError) -> str:
    match fault:
        case FileNotFoundError():
            return "there is no such file"
        case PermissionError():
            return "it may not be read or written by you"
        case OSError(strerror=str(said)):
            return said.lower()
        case _:
            return "its name cannot be the name of a file"


def _make_folder(path: str, files: Mapping[str, str]) -> None:
    """A folder with files in it, whole or not at all. Raises OSError; never overwrites."""
    import shutil
    import tempfile

    if os.path.lexists(path):
        raise FileExistsError(path)
    path = os.path.abspath(path)
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


def _coloured(stream: TextIO) -> bool:
    dull = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    return _is_terminal(stream) and not dull


def _is_terminal(stream: TextIO) -> bool:
    return stream.isatty()


def _columns(stream: TextIO) -> int:
    try:
        return os.get_terminal_size(stream.fileno()).columns or 80
    except (OSError, ValueError):
        return 80


def _show(tables: RenderableType) -> None:
    """Print tables: as wide as the terminal, or 80 columns where there is none."""
    from rich.console import Console

    colour = _coloured(sys.stdout)
    width = _columns(sys.stdout) if _is_terminal(sys.stdout) else 80
    console = Console(
        file=sys.stdout,
        width=width,
        force_terminal=colour,
        color_system="standard" if colour else None,
        markup=False,
        emoji=False,
        highlight=False,
    )
    with console.capture() as captured:
        console.print(tables)
    lines = captured.get().splitlines()
    print("\n".join(lines if colour else (line.rstrip() for line in lines)))


def _print_json(record: Mapping[str, Any]) -> None:
    from border.showing.record import to_json

    sys.stdout.write(to_json(record))


def _tell(findings: Iterable[Finding], sources: Mapping[str, Source]) -> None:
    from border.showing.telling import summed_up, tell_all

    findings = tuple(findings)
    sys.stdout.flush()
    sys.stderr.write(tell_all(findings, sources, _coloured(sys.stderr)))
    if any(f.severity is Severity.ERROR for f in findings):
        sys.stderr.write(f"{summed_up(findings)}\n")


def _code(findings: Iterable[Finding]) -> int:
    codes = {f.code: f.severity for f in findings}
    if codes.keys() & {"file-unreadable", "edge-needed"}:
        return WRONG
    return FAULTS if Severity.ERROR in codes.values() else FINE
