"""What has been counted, in one value: what tables and the record are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.reckoning.counts import RoundCount
from border.reckoning.thread import Thread, ThreadUse, thread_used
from border.text.readings import Reading
from border.text.source import Source
from border.working.work import WorkedEdge
from border.yoke.edges import Edge


class Piece(Struct, frozen=True):
    """One border on one edge, counted.

    `border` is the file as the user named it, `title` the name that the text
    gives itself. `faulty` is the first round that could not be made out, so
    that nothing is counted from there on; `whole`: every round was counted.
    `findings` are those of this edge alone. `reading`, `worked`: the rounds as they
    are meant, and as they came out.
    """

    edge: Edge
    border: str
    title: str | None
    terms: str
    rounds: tuple[RoundCount, ...]
    faulty: int | None = None
    whole: bool = True
    findings: tuple[Finding, ...] = ()
    reading: Reading | None = None
    worked: WorkedEdge | None = None

    @property
    def closes(self) -> bool:
        return self.whole and all(r.closes for r in self.rounds)


class Counted(Struct, frozen=True):
    """All pieces of work of one file, with everything there is to tell about them.

    `sources` holds every text that was read, by name, in the order of reading.
    """

    name: str
    pieces: tuple[Piece, ...]
    thread: Thread
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]

    @property
    def thread_used(self) -> ThreadUse:
        return thread_used([r.loops for p in self.pieces for r in p.rounds], self.thread)
