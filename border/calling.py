"""The same as the command line, from Python: every function gives what its `--json` prints.

What they take is said at `count`. What is wrong in a file, or keeps it from being read, is
among the `findings` of the record, and no exception. A call that makes no sense raises
ValueError, in the words of the command line: no loops, an edge for a project, an edge that
has no work.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from os import PathLike, fspath
from typing import TYPE_CHECKING

from border import __version__
from border.arguments import UsageFault, parsed
from border.asking import pipelines
from border.cli.files import read_file, reader_of
from border.showing.record import check_record, count_record
from border.showing.shapes import CheckRecord, CountRecord

if TYPE_CHECKING:
    from border.pipeline import Pipeline
    from border.showing.eased_shapes import AdjustRecord
    from border.showing.needs_shapes import CloseRecord, CloseWorksRecord
    from border.showing.thread_shapes import ThreadToldRecord
    from border.showing.written_shapes import WriteRecord

File = str | PathLike[str]
Files = Mapping[str, str]


def check(
    file: File,
    *,
    files: Files | None = None,
    loops: int | None = None,
    runs: Sequence[int] = (),
    closed: bool = True,
    work: str | None = None,
) -> CheckRecord:
    """What is wrong in a file, and nothing else."""
    pipeline = _pipeline("check", file, files, loops, runs, closed, work)
    return check_record(pipeline.findings, pipeline.texts.sources)


def count(
    file: File,
    *,
    files: Files | None = None,
    loops: int | None = None,
    runs: Sequence[int] = (),
    closed: bool = True,
    work: str | None = None,
) -> CountRecord:
    """Every round counted: stitches by their US names, repeats, what is left over, thread in mm.

    `file` is a project (`.toml`), or a border text with the edge that it goes on: so many
    `loops`, or `runs` of them motif by motif; `closed`, or worked to and fro. `work` picks
    one edge of a project. With `files`, texts by name, nothing is read from disk: `file`
    and all that it names are looked for there.
    """
    return count_record(_pipeline("count", file, files, loops, runs, closed, work).counted)


def close(
    file: File,
    *,
    files: Files | None = None,
    loops: int | None = None,
    runs: Sequence[int] = (),
    closed: bool = True,
    work: str | None = None,
) -> CloseRecord | CloseWorksRecord:
    """How many loops a border needs; of a project (with `works`), each border on its edge."""
    from border.showing.needs_record import close_record

    return close_record(_pipeline("close", file, files, loops, runs, closed, work).needed)


def adjust(
    file: File,
    *,
    plans: int = 1,
    files: Files | None = None,
    loops: int | None = None,
    runs: Sequence[int] = (),
    closed: bool = True,
    work: str | None = None,
) -> AdjustRecord:
    """Where to ease in so that every round closes: the best so many plans. No file is changed."""
    from border.showing.eased_record import adjust_record

    more = (f"--all={plans}",)
    pipeline = _pipeline("adjust", file, files, loops, runs, closed, work, more)
    return adjust_record(pipeline.eased(plans))


def thread(
    file: File,
    *,
    balls: float | None = None,
    plan: bool = False,
    files: Files | None = None,
    loops: int | None = None,
    runs: Sequence[int] = (),
    closed: bool = True,
    work: str | None = None,
) -> ThreadToldRecord:
    """Thread by round and edge, in mm; `plan`, or so many `balls`: how far they go, as well."""
    from border.showing.thread_record import thread_record

    more = () if balls is None else (f"--balls={balls}",)
    pipeline = _pipeline("thread", file, files, loops, runs, closed, work, more)
    return thread_record(pipeline.unwound(balls, plan=plan or balls is not None))


def write(
    file: File,
    *,
    terms: str | None = None,
    files: Files | None = None,
    loops: int | None = None,
    runs: Sequence[int] = (),
    closed: bool = True,
    work: str | None = None,
) -> WriteRecord:
    """The border written out for its edge, in terms `us`, `uk` or `early`, or in its own."""
    from border.showing.written_record import write_record

    more = () if terms is None else (f"--terms={terms}",)
    pipeline = _pipeline("write", file, files, loops, runs, closed, work, more)
    return write_record(pipeline.written(terms))


def _pipeline(
    command: str,
    file: File,
    files: Files | None,
    loops: int | None,
    runs: Sequence[int],
    closed: bool,
    work: str | None,
    more: Sequence[str] = (),
) -> Pipeline:
    """What the command line would make of it, with its own checks. Raises ValueError."""
    said = [command, *more]
    said += [] if loops is None else [f"--loops={loops}"]
    said += [f"--runs={','.join(map(str, runs))}"] if runs else []
    said += [] if closed else ["--open"]
    said += [] if work is None else [f"--work={work}"]
    name = fspath(file)
    try:
        asked = parsed([*said, "--", name], __version__)
        (made,) = pipelines(asked, [name], read_file if files is None else reader_of(files))
    except UsageFault as fault:
        raise ValueError(str(fault)) from None
    return made
