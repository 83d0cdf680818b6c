"""A piece of work: the border, the edge that it goes on, and all that is said of it; worked."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding, Span
from border.reckoning.counts import count_edge
from border.showing.counted import Piece
from border.texts import BorderText
from border.working.adjusting import Adjustment
from border.working.cursor import ROW_LIMIT
from border.working.found import Found
from border.working.work import WORK_LIMIT, WorkedEdge, work
from border.yoke.edges import Edge, plain_edge, runs_edge

if TYPE_CHECKING:
    from border.yoke.project import Work

ENDLESS = 10**9
"""More rounds than any border has."""


class AskedEdge(Struct, frozen=True):
    """An edge asked for in place of a project: so many loops, or runs of them by motif."""

    loops: int | None = None
    runs: tuple[int, ...] = ()
    closed: bool = True

    @property
    def edge(self) -> Edge | None:
        """The edge that is meant; None where none is asked for."""
        if self.runs:
            return runs_edge(list(self.runs), self.closed)
        return plain_edge(self.loops, self.closed) if self.loops else None


class Wanted(Struct, frozen=True):
    """A piece of work: a border, the file as the user named it, and its edge, if there is one.

    `number`: of the `[[work]]` in the file, from 0. `given`: the adjustments that
    stand in the file. `done`: rounds that are worked already (said at `done_at`), one
    of which came out at `found`. `work`: all that the file says of it; None for a
    border text. What is said of rounds from the first faulty one on waits until that
    is mended. `worked`: how it came out, where it has been worked already.
    """

    number: int
    text: BorderText
    named: str
    edge: Edge | None
    given: tuple[Adjustment, ...] = ()
    done: int = 0
    found: Found | None = None
    done_at: Span | None = None
    work: Work | None = None
    worked: WorkedEdge | None = None


def is_project(name: str) -> bool:
    """Whether a file is a project (else it is a border text)."""
    return name.lower().endswith(".toml")


def wanted_of(number: int, text: BorderText, said: Work, edge: Edge | None) -> Wanted:
    """A piece of work as the project has it."""
    faulty = text.faulty or ENDLESS
    given = tuple(
        Adjustment(a.round, a.at, a.by, a.span) for a in said.adjustments if a.round < faulty
    )
    done = min(said.done, faulty - 1)
    found = None
    if (f := said.found) and f.round < faulty:
        found = Found(f.round, f.counts, f.span)
    text = _with_its_corners(text, edge)
    return Wanted(number, text, said.border, edge, given, done, found, said.done_span, said)


def _with_its_corners(text: BorderText, edge: Edge | None) -> BorderText:
    """A text as it is told on a yoke: where that names corners, none of theirs may be left out."""
    corner = (
        next((n for n in sorted(edge.known_names) if "corner" in n.lower()), "") if edge else ""
    )
    if not corner:
        return text
    findings = [
        replace(
            f,
            code="exception-in-words",
            message=f'{f.message}, and your yoke has "{corner}"',
        )
        if f.code == "corners-left-out"
        else f
        for f in text.findings
    ]
    return replace(text, findings=tuple(findings))


def worked_piece(wanted: Wanted, edge: Edge, *, misprints: bool = False) -> Piece:
    """A border worked into an edge and counted, as far as its text could be made out."""
    text, named = wanted.text, wanted.named
    if text.reading is None:
        return Piece(edge, named, None, "us", (), text.faulty, whole=False)
    worked = worked_as_said(wanted, edge)
    rounds = count_edge(worked)
    whole = text.faulty is None and len(rounds) == len(text.reading.rounds)
    name, terms = text.reading.name, text.reading.rules.terms
    told = (*worked.findings, *_asked(wanted, worked, misprints=misprints))
    return Piece(edge, named, name, terms, rounds, text.faulty, whole, told, text.reading, worked)


def _asked(wanted: Wanted, worked: WorkedEdge, *, misprints: bool) -> Iterable[Finding]:
    """What is asked of a round that does not come out; loaded only where there is one."""
    other = any(f.code in ("count-disagrees", "no-stitches") for f in worked.findings)
    if all(r.closes for r in worked.rounds) and not other:
        return ()
    from border.questions.asking import questions

    assert wanted.text.reading is not None
    eased = [a.round for a in wanted.given]
    return questions(wanted.text.reading, worked, eased, misprints=misprints)


def worked_as_said(wanted: Wanted, edge: Edge) -> WorkedEdge:
    """A border worked with all that the project says of the work; only where it could be read."""
    w = wanted
    assert w.text.reading is not None
    if w.worked is not None:
        return w.worked
    return work(w.text.reading, edge, w.given, w.done, w.found, w.done_at)


def all_worked(works: Iterable[Wanted]) -> tuple[list[Wanted], tuple[Finding, ...]]:
    """Several pieces of work, worked, as far as they can be reckoned together."""
    made: list[Wanted] = []
    total = 0
    for one in works:
        if total > WORK_LIMIT:
            message = f"the pieces of work before this have more than {WORK_LIMIT} stitches; "
            message += "this one, and those behind it, are not reckoned"
            help_ = "ask for it alone, with --work and the name of its edge"
            span = one.work.span if one.work else None
            return made, (Finding("too-large", message, help_, span),)
        if one.edge is not None and one.text.reading is not None:
            worked = worked_as_said(one, one.edge)
            total += one.edge.places + _size(worked)
            one = replace(one, worked=worked)
        made.append(one)
    return made, ()


def _size(worked: WorkedEdge) -> int:
    """So many stitches and chains were worked; a round too large to be kept is another row."""
    broken = any(f.code == "too-large" for f in worked.findings)
    return sum(len(r.fabric.kinds) for r in worked.rounds) + (ROW_LIMIT if broken else 0)


def told_of(edge: Edge | None, findings: Iterable[Finding], works: int) -> list[Finding]:
    """Findings with the name of the edge before them, where there are several works."""
    prefix = f"{edge.name}: " if edge and works > 1 else ""
    return [replace(f, message=prefix + f.message) for f in findings]


def edge_needed(name: str, command: str) -> Finding:
    """The finding that a border text alone cannot be counted, planned, written out or drawn."""
    return Finding(
        "edge-needed",
        f"{name} is a border text, and nothing says what edge it goes on",
        f"give the edge: border {command} {name} --loops 78, or --runs 6,6,3,3 motif by motif, "
        f"or {command} a project that names it",
    )


def nothing_worked(name: str) -> Finding:
    """The finding that a project has an edge, and no border on it."""
    message = f"no border is worked in {name}"
    help_ = 'say which goes on which edge: [[work]], and under it edge = "…" and border = "FILE"'
    return Finding("nothing-worked", message, help_)
