"""The stages in order, from the file named to what is shown: the table of contents of the code.

    source -> project -> yoke -> pieces -> counted

Every stage is worked out once, when it is asked for, and keeps what it could
make beside its findings. The pipeline reads no file itself: it is given the
means to.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterable
from functools import cached_property
from pathlib import PurePosixPath
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding
from border.reckoning.thread import Thread, uncalibrated
from border.reckoning.thread_stated import stated_thread
from border.showing.counted import Counted, Piece
from border.text.source import Source
from border.texts import Read, Texts
from border.wanted import (
    AskedEdge,
    Wanted,
    all_worked,
    edge_needed,
    is_project,
    nothing_worked,
    told_of,
    wanted_of,
    worked_piece,
)
from border.yoke.edges import Edge, edge_for, trace

if TYPE_CHECKING:
    from border.reckoning.measuring import Mark
    from border.showing.chart_laid import Charted
    from border.showing.eased import EasedAll
    from border.showing.lying import LyingAll
    from border.showing.needed import Needed
    from border.showing.readings_tables import EdgeReadings
    from border.showing.sewing import SewnAll
    from border.showing.sheet_pictures import Pictures
    from border.showing.sizing import SizedAll
    from border.showing.thread_told import ThreadTold
    from border.showing.written import WrittenAll
    from border.yoke.project import Project, Work
    from border.yoke.report import YokeReport


class Pipeline:
    """One file on its way through the floors.

    `asked` is the edge for a border text; `only` the edge whose work is wanted;
    `command` what is asked for, where a message has to say it again.
    """

    def __init__(
        self,
        name: str,
        read: Read,
        asked: AskedEdge | None = None,
        only: str | None = None,
        command: str = "count",
    ) -> None:
        self.name = posixpath.normpath(name)
        self.texts = Texts(read)
        self.asked = asked or AskedEdge()
        self.only = only
        self.command = command

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
    def yoke_picture(self) -> str | None:
        """The yoke and its edges drawn, as SVG."""
        from border.showing.yoke_picture import yoke_picture

        if self.project is None or self.yoke is None:
            return None
        return yoke_picture(self.title, self.project, self.yoke.edges)

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
        pieces: list[Piece] = []
        findings = list(self._wanted[1])
        for wanted in self._worked:
            findings += wanted.text.findings
            if wanted.edge is None:
                continue
            piece = worked_piece(wanted, wanted.edge, misprints=self.command == "check")
            pieces.append(piece)
            findings += told_of(wanted.edge, piece.findings, len(self._worked))
        return tuple(pieces), tuple(findings)

    @property
    def _worked(self) -> list[Wanted]:
        """Every piece of work that is wanted, in the order of the file."""
        return self._wanted[0]

    @cached_property
    def _wanted(self) -> tuple[list[Wanted], tuple[Finding, ...]]:
        """The same, and what is told where all together are too much."""
        if not is_project(self.name):
            return [Wanted(0, self.texts.border(self.name), self.name, self.asked.edge)], ()
        folder = posixpath.dirname(self.name)
        return all_worked(
            wanted_of(
                number,
                self.texts.border(posixpath.join(folder, one.border), one.border_span),
                one,
                edge_for(one, self.edges),
            )
            for number, one in enumerate(self.works)
            if self.only in (None, one.edge)
        )

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
        findings += self._nothing_to_work
        if any(piece.rounds for piece in pieces) and not thread.swatches:
            findings += (uncalibrated(thread),)
        return Counted(self.title, pieces, thread, findings, self.texts.sources)

    @cached_property
    def needed(self) -> Needed:
        """Everything that `close` shows."""
        from border.needing import needed_of

        project = is_project(self.name)
        needed = needed_of(self._worked, project, self.asked.closed, self.texts.sources)
        idle = self._nothing_to_work if project else ()
        told = dict.fromkeys((*self.yoke_findings, *idle, *self._wanted[1], *needed.findings))
        return replace(needed, findings=tuple(told))

    @property
    def readings(self) -> list[EdgeReadings]:
        """Every reading of each round that `check --readings` shows, edge by edge."""
        from border.questions.asking import all_readings

        return [
            (piece.edge.name, all_readings(piece.reading, piece.worked))
            for piece in self.counted.pieces
            if piece.reading is not None and piece.worked is not None
        ]

    def unwound(self, balls: float | None, *, plan: bool) -> ThreadTold:
        """Everything that `thread` shows; `plan`: how far the balls go, as well."""
        from border.unwinding import unwound

        return unwound(self.counted, self._worked, self.project, balls, plan=plan)

    def eased(self, plans: int) -> EasedAll:
        """Everything that `adjust` shows, with up to so many plans for each piece of work."""
        from border.easing import eased

        found = eased(self.title, self._worked, self.project, self.texts.sources, plans)
        return replace(found, findings=self._with_all(found.findings))

    @cached_property
    def lying(self) -> LyingAll:
        """Everything that `flat` shows."""
        from border.lying import lying

        found = lying(self.title, self._worked, self.project, self.texts.sources)
        return replace(found, findings=self._with_all(found.findings))

    @cached_property
    def sewing(self) -> SewnAll:
        """Everything that `attach` shows."""
        from border.sewing import sewing

        sources = self.texts.sources
        found = sewing(self.title, self._worked, self.edges, self.project, self.only, sources)
        return replace(found, findings=self._with_file(found.findings))

    def resized(
        self, edge: str | None, wanted_mm: float | None, more: tuple[tuple[str, int], ...]
    ) -> SizedAll:
        """Everything that `size` shows."""
        from border.resizing import resizing

        sources = self.texts.sources
        found = resizing(self.title, self._worked, self.project, edge, wanted_mm, more, sources)
        return replace(found, findings=self._with_file(found.findings))

    def written(self, terms: str | None) -> WrittenAll:
        """Everything that `write` shows, in these terms, or in those of each border."""
        from border.writing_down import written_down

        found = written_down(self._worked, terms, self.texts.sources)
        return replace(found, findings=self._with_all(found.findings))

    def charted(
        self, section: str | None, terms: str | None
    ) -> tuple[list[Charted], tuple[Finding, ...]]:
        """Everything that `chart` draws, and what is told of it."""
        from border.charting import charted

        pieces, told = self._pieces
        drawn = charted(pieces, section, terms, left=self._left, titled=is_project(self.name))
        findings = dict.fromkeys((*self.yoke_findings, *told, *self._nothing_to_work))
        return list(drawn), tuple(findings)

    @property
    def _left(self) -> bool:
        return self.project is not None and self.project.hand == "left"

    @property
    def tape(self) -> list[tuple[Mark, ...]]:
        """What a tape should say on the way: for every piece that is counted, as far as known."""
        from border.lying import taped

        said = (wanted.work for wanted in self._worked if wanted.edge is not None)
        pieces = zip(self.counted.pieces, said, strict=True)
        return [taped(piece, work, self.project) for piece, work in pieces]

    @property
    def sheet_pictures(self) -> Pictures:
        """The pictures in the sheet."""
        from border.showing.sheet_pictures import sheet_pictures

        return sheet_pictures(self.counted, self.project, self.edges)

    def _with_all(self, found: Iterable[Finding]) -> tuple[Finding, ...]:
        """What a stage found, with what is to be told of the file, its texts and its edge."""
        return self._with_file((*self._nothing_to_work, *found))

    def _with_file(self, found: Iterable[Finding]) -> tuple[Finding, ...]:
        """The same of a stage that asks for no border: only a project comes to it."""
        texts = [f for wanted in self._worked for f in wanted.text.findings]
        return tuple(dict.fromkeys((*self.yoke_findings, *self._wanted[1], *texts, *found)))

    @property
    def _nothing_to_work(self) -> tuple[Finding, ...]:
        """The finding that a border text has no edge, or a project no border, where that is so.

        A border can be written in other terms without any edge.
        """
        if isinstance(self.source, Finding) or self.asked.edge:
            return ()
        if self.command == "write" and not is_project(self.name):
            return ()
        if is_project(self.name):
            idle = self.project is not None and not self.works
            return (nothing_worked(self.name),) if idle else ()
        return (edge_needed(self.name, self.command),)

    @property
    def title(self) -> str:
        """What the work is called: by the project, the border text, or the file."""
        if is_project(self.name):
            title = self.project.name if self.project else None
        else:
            title = next((piece.title for piece in self._pieces[0]), None)
        return title or PurePosixPath(self.name).stem
