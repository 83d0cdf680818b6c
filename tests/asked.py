"""For tests: what is asked of a border that does not come out on an edge."""

from __future__ import annotations

from worked import read_text

from border.findings import CODES, Finding, Severity
from border.questions.asking import questions
from border.text.readings import Reading
from border.working.work import WorkedEdge, work
from border.yoke.edges import Edge

COUNT = "chains count as stitches: yes\n"
ARCHES = "round 1: *1 sc in next loop, ch 5, skip 1 loop; repeat.\n"


def worked(text: str, edge: Edge) -> tuple[Reading, WorkedEdge]:
    reading, told = read_text(text)
    assert not [f for f in told if CODES[f.code].severity is Severity.ERROR], told
    return reading, work(reading, edge, ())


def findings(
    text: str, edge: Edge, *, misprints: bool = False, eased: tuple[int, ...] = ()
) -> list[Finding]:
    return questions(*worked(text, edge), eased, misprints=misprints)


def asked(text: str, edge: Edge, *, misprints: bool = False) -> list[tuple[str, str | None]]:
    """The code, and what to write, of all that is asked."""
    return [(f.code, f.help) for f in findings(text, edge, misprints=misprints)]


def read_so(*edits: str) -> list[tuple[str, str]]:
    return [("perhaps-read-so", edit) for edit in edits]
