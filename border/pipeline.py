"""The stages in order, from the file named to what is shown: the table of contents of the code.

    source -> project -> yoke -> pieces -> counted

Every stage is worked out once, when it is asked for, and keeps what it could
make beside its findings. The pipeline reads no file itself: it is given the
means to.
"""

from __future__ import annotations

import posixpath
from functools import cached_property
from pathlib import PurePosixPath
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding, Severity
from border.reckoning.counts import count_edge
from border.reckoning.thread import Thread, stated_thread, uncalibrated
from border.showing.counted import Counted, Piece
from border.showing.folding import some
from border.text.source import Source
from border.texts import BorderText, Read, Texts
from border.working.adjusting import Adjustment
from border.working.found import Found
from border.working.work import WorkedEdge, work
from border.yoke.edges import Edge, edge_for, plain_edge, runs_edge, trace

if TYPE_CHECKING:
    from border.yoke.project import Project, Work
    from border.yoke.report import YokeReport


class AskedEdge(Struct, frozen=True):
    """An edge asked for in place of a project: so many loops, or runs of them by motif."""

    loops: int | None = None
    runs: tuple[int, ...] = ()
    closed: bool = True

    @property
    def edge(self) -> Edge | None:
        if self.runs:
            return runs_edge(list(self.runs), self.closed)
        return plain_edge(self.loops, self.closed) if self.loops else None


def is_project(name: str) -> bool:
    """Whether a file is a project (else it is a border text)."""
    return name.lower().endswith(".toml")


class Pipeline:
    """One file on its way through the floors.

    `asked` is the edge for a border text; `only` the edge whose work is wanted.
    """

    def __init__(
        self, name: str, read: Read, asked: AskedEdge | None = None, only: str | None = None
    ) -> None:
        self.name = posixpath.normpath(name)
        self.texts = Texts(read)
        self.asked = asked or AskedEdge()
        self.only = only

    # --- the project and its yoke ---------------------------------------------

    @cached_property
    def source(self) -> Source | Finding:
        return self.texts.source(self.name)

    @cached_property
    def _project(self) -> tuple[Project | None, tuple[Finding, ...]]:
        if isinstance(self.source, Finding):
            return None, (self.source,)
        if not is_project(self.name):
            return None, ()
        from border.yoke.project import read_project

        return read_project(self.source)

    @property
    def project(self) -> Project | None:
        return self._project[0]

    @cached_property
    def _traced(self) -> tuple[tuple[Edge, ...], YokeReport | None, tuple[Finding, ...]]:
        if self.project is None:
            return (), None, ()
        return trace(self.project)

    @property
    def edges(self) -> tuple[Edge, ...]:
        return self._traced[0]

    @property
    def yoke(self) -> YokeReport | None:
        return self._traced[1]

    @property
    def yoke_findings(self) -> tuple[Finding, ...]:
        """The findings of the project and its yoke alone, whatever is worked on it."""
        return tuple(dict.fromkeys((*self._project[1], *self._traced[2])))

    @cached_property
    def _thread(self) -> tuple[Thread, tuple[Finding, ...]]:
        return stated_thread(self.project.thread if self.project else None)

    # --- the pieces of work ---------------------------------------------------

    @cached_property
    def _pieces(self) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
        if isinstance(self.source, Finding):
            return (), (self.source,)
        if is_project(self.name):
            return self._project_pieces()
        text = self.texts.border(self.name)
        if self.asked.edge is None:
            return (), text.findings
        piece = worked_piece(text, self.name, self.asked.edge)
        return (piece,), (*text.findings, *piece.findings)

    def _project_pieces(self) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
        works = [w for w in self.works if self.only in (None, w.edge)]
        pieces: list[Piece] = []
        findings: list[Finding] = []
        for wanted in works:
            beside = posixpath.join(posixpath.dirname(self.name), wanted.border)
            text = self.texts.border(beside, wanted.border_span)
            findings += text.findings
            if (edge := edge_for(wanted, self.edges)) is None:
                continue
            piece = worked_piece(text, wanted.border, edge, wanted)
            pieces.append(piece)
            prefix = f"{edge.name}: " if len(works) > 1 else ""
            findings += [replace(f, message=prefix + f.message) for f in piece.findings]
        return tuple(pieces), tuple(findings)

    @property
    def works(self) -> tuple[Work, ...]:
        return self.project.works if self.project else ()

    # --- all together ---------------------------------------------------------

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """The findings of all stages."""
        told = (*self._project[1], *self._traced[2], *self._thread[1], *self._pieces[1])
        return tuple(dict.fromkeys(told))

    @cached_property
    def counted(self) -> Counted:
        """Everything that `count` shows: findings with what is to be said of the thread."""
        pieces, _ = self._pieces
        thread, _ = self._thread
        findings = self.findings
        if pieces:
            findings += (uncalibrated(thread, self._samples),)
        elif not is_project(self.name) and self.asked.edge is None:
            findings += (edge_needed(self.name),)
        return Counted(self.title, pieces, thread, findings, self.texts.sources)

    @property
    def _samples(self) -> int:
        stated = self.project.thread if self.project else None
        return len(stated.sample) if stated else 0

    @property
    def title(self) -> str:
        """What the work is called: by the project, the border text, or the file."""
        if is_project(self.name):
            title = self.project.name if self.project else None
        else:
            title = next((piece.title for piece in self._pieces[0]), None)
        return title or PurePosixPath(self.name).stem


def worked_piece(text: BorderText, named: str, edge: Edge, said: Work | None = None) -> Piece:
    """A border worked into an edge and counted, as far as its text could be made out.

    `said`: what the project says of this piece of work.
    """
    if text.reading is None:
        return Piece(edge, named, None, "us", (), text.faulty, whole=False)
    worked = _worked(text, edge, said) if said else work(text.reading, edge)
    rounds = count_edge(worked)
    whole = text.faulty is None and len(rounds) == len(text.reading.rounds)
    name, terms = text.reading.name, text.reading.rules.terms
    return Piece(edge, named, name, terms, rounds, text.faulty, whole, worked.findings)


def _worked(text: BorderText, edge: Edge, said: Work) -> WorkedEdge:
    """Worked with the adjustments of the project, and with the rounds that are worked already.

    What is said of rounds from the first faulty one on waits until that is mended.
    """
    assert text.reading is not None
    sound = said.done if text.faulty is None else min(said.done, text.faulty - 1)
    adjustments = [
        Adjustment(a.round, a.at, a.by, a.span)
        for a in said.adjustments
        if text.faulty is None or a.round < text.faulty
    ]
    found = None
    if (f := said.found) and (text.faulty is None or f.round < text.faulty):
        found = Found(f.round, f.counts, f.span)
    return work(text.reading, edge, adjustments, sound, found, said.done_span)


def edge_needed(name: str) -> Finding:
    """The finding that a border text alone cannot be counted."""
    return Finding(
        "edge-needed",
        f"{name} is a border text, and nothing says what edge it goes on",
        f"give the edge: border count {name} --loops 78, or --runs 6,6,3,3 motif by motif, "
        f"or count a project that names it",
    )


def in_a_word(pipeline: Pipeline) -> str:
    """What `check` says of one file: what was looked at, and how it came out."""
    faults = sum(f.severity is Severity.ERROR for f in pipeline.findings)
    pieces = pipeline.counted.pieces
    rounds = sum(len(p.rounds) for p in pieces)
    if faults:
        return f"{pipeline.name}: {some(faults, 'fault')}"
    if pieces:
        which = "every one" if all(p.closes for p in pieces) else "every one still to be worked"
        told = f"{some(rounds, 'round')} on {some(len(pieces), 'edge')}, {which} closes"
    elif is_project(pipeline.name):
        told = "no border is worked in it"
    else:
        told = "the text reads well; with --loops or --runs it is counted too"
    return f"{pipeline.name}: no faults ({told})"
