"""What holds for every input, however odd: the checks of the fuzzing.

Each takes an input and returns nothing; it raises what went wrong. No input may
make the program fail, and none may make it tell what is not so.
"""

from __future__ import annotations

import contextlib
import io
import json
import os
import re
import tempfile
import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

import jsonschema

from border.cli import main
from border.findings import Finding, Severity
from border.pipeline import Pipeline
from border.reckoning.counts import RoundCount
from border.showing.counted import Counted
from border.showing.record import count_record, to_json
from border.showing.schema import schema
from border.showing.tables import count_tables
from border.showing.telling import tell_all
from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border
from border.text.words import LARGEST
from border.text.written import write_border
from border.wanted import AskedEdge

EDGES = (
    AskedEdge(loops=12),
    AskedEdge(runs=(6, 6, 3, 3)),
    AskedEdge(loops=23, closed=False),
    AskedEdge(runs=(1, 2), closed=False),
)
LONGEST = 1_000
"""No message has as many characters, whatever it quotes."""

SHELLS = "terms: us\nround 1: 1 sc in each loop.\nround 2: 2 dc in next st; repeat.\n"


# --- findings -------------------------------------------------------------------------


def findings_hold(findings: Iterable[Finding], sources: Mapping[str, Source]) -> None:
    """Findings stand inside their texts, say something, and can be printed."""
    findings = tuple(findings)
    for finding in findings:
        assert finding.message.strip(), finding
        assert not finding.message.endswith("."), finding
        assert len(finding.message) < LONGEST, finding
        if finding.span is not None:
            source = sources.get(finding.span.source)
            length = len(source.text) if source is not None else 0
            assert 0 <= finding.span.start <= finding.span.end <= length, finding
    told = tell_all(findings, sources)
    odd = {c for c in told if unicodedata.category(c) in ("Cc", "Cs") and c != "\n"}
    assert not odd, (odd, told)


# --- texts ----------------------------------------------------------------------------


def text_holds(text: str) -> None:
    """A text is read; what is read without a fault reads the same when written out."""
    source = Source("a.border", text)
    border, findings = read_border(source)
    told = list(findings)
    if border is not None:
        told += read_rounds(border, lambda copying, named: None)[1]
    findings_hold(told, {"a.border": source})
    large = str(LARGEST) in text  # written with one more, it is too large
    if border is not None and not large and not _faults(findings):
        _reads_back(border)


def _faults(findings: Iterable[Finding]) -> bool:
    """Whether a text is not read as it should be; rows that are missing are another matter."""
    return any(f.severity is Severity.ERROR and f.code != "missing-row" for f in findings)


def _reads_back(border: Border) -> None:
    written = write_border(border)
    again, findings = read_border(Source("again.border", written))
    assert again is not None, written
    assert not _faults(findings), (written, findings)
    assert again.rows == border.rows, written


def layout_means_nothing(text: str) -> None:
    """Other line ends, a mark at the beginning and blanks at line ends change nothing."""
    plain = re.sub(r"\r\n?", "\n", text.lstrip("\ufeff"))
    expected = _told(plain)
    for other in (plain.replace("\n", "\r\n"), "\ufeff" + plain, plain.replace("\n", " \t\n")):
        assert _told(other) == expected, other


def _told(text: str) -> tuple[object, ...]:
    border, findings = read_border(Source("a.border", text))
    return (border.rows if border else None, sorted((f.round or 0, f.code) for f in findings))


# --- counts ---------------------------------------------------------------------------


def count_holds(text: str, asked: AskedEdge) -> None:
    """A border is counted: parts add up, what does not close is told, the record is sound."""
    pipeline = Pipeline("a.border", lambda name: Source(name, text), asked)
    _counted_holds(pipeline.counted)


def _counted_holds(counted: Counted) -> None:
    findings_hold(counted.findings, counted.sources)
    count_tables(counted)
    record = json.loads(to_json(count_record(counted)))
    record_holds(record)
    codes = {f.code for f in counted.findings if f.severity is not Severity.NOTE}
    for piece in counted.pieces:
        for count in piece.rounds:
            _adds_up(count)
            assert count.closes or codes, count


def _adds_up(count: RoundCount) -> None:
    for parts in (count.sections, count.motifs):
        if not parts:
            continue
        for kind in ("chains", "picots"):
            assert sum(getattr(p.made, kind) for p in parts) <= getattr(count.made, kind), count


RECORDS = {
    "check": ("CheckRecord",),
    "count": ("CountRecord",),
    "close": ("CloseRecord", "CloseWorksRecord", "ChoiceRecord"),
    "adjust": ("AdjustRecord",),
    "thread": ("ThreadToldRecord",),
    "sheet": ("SheetRecord",),
    "write": ("WriteRecord",),
    "yoke": ("YokeRecord",),
    "flat": ("FlatRecord",),
    "attach": ("AttachRecord",),
    "chart": ("ChartRecord",),
    "new": ("NewRecord",),
}
"""The records that a command prints, in the `$defs` of the schema."""


@lru_cache(maxsize=1)
def _schema() -> dict[str, Any]:
    return schema()


@lru_cache(maxsize=16)
def _validator(command: str) -> Any:
    shapes = [{"$ref": f"#/$defs/{name}"} for name in RECORDS[command]]
    return jsonschema.Draft202012Validator({"anyOf": shapes, "$defs": _schema()["$defs"]})


def record_holds(record: object, command: str = "count") -> None:
    """A record is as its schema says."""
    _validator(command).validate(record)


# --- projects -------------------------------------------------------------------------


def project_holds(text: str, rows: str = SHELLS) -> None:
    """A project is read, traced, counted and drawn; every border that it names is `rows`."""

    def read(name: str) -> Source:
        return Source(name, text if name == "a.toml" else rows)

    pipeline = Pipeline("a.toml", read)
    findings_hold(pipeline.yoke_findings, pipeline.texts.sources)
    drawn = pipeline.yoke_picture
    assert drawn is None or drawn.startswith("<svg"), drawn
    _counted_holds(pipeline.counted)


# --- command lines ----------------------------------------------------------------------


@contextlib.contextmanager
def folder(files: Mapping[str, bytes]) -> Iterator[Path]:
    """A folder of its own with these files, to be in."""
    before = os.getcwd()
    with tempfile.TemporaryDirectory() as made:
        os.chdir(made)
        for name, data in files.items():
            Path(name).write_bytes(data)
        try:
            yield Path(made)
        finally:
            os.chdir(before)


def ran(line: Sequence[str]) -> tuple[int, str, str]:
    """A command line as asked: exit code, what is printed, what is told."""
    out = io.TextIOWrapper(io.BytesIO(), "utf-8", write_through=True)
    err = io.TextIOWrapper(io.BytesIO(), "utf-8", write_through=True)
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        code = main(list(line))
    out.seek(0)
    err.seek(0)
    return code, out.read(), err.read()


def command_holds(line: Sequence[str], files: Mapping[str, bytes]) -> None:
    """A command line comes to 0, 1 or 2, says why, and leaves every file as it was."""
    with folder(files):
        code, out, err = ran(line)
        assert code in (0, 1, 2), (line, code)
        assert code == 0 or err.strip() or "--json" in line, (line, code)
        assert "Traceback" not in err, err
        if "--json" in line and code != 2:
            record = json.loads(out)
            if line[0] != "schema":
                record_holds(record, line[0])
            faults = [f for f in record.get("findings", ()) if f["severity"] == "error"]
            assert bool(faults) == (code == 1), (line, code)
        for name, data in files.items():
            assert Path(name).read_bytes() == data, (line, name)
