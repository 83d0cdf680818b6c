"""Thread in one value: what tables and record of `thread` are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.reckoning.balls import BallEnd
from border.reckoning.sparing import Sparing
from border.reckoning.thread import Thread, ThreadUse, thread_used
from border.showing.counted import Piece
from border.text.source import Source


class ThreadTold(Struct, frozen=True):
    """All pieces of work with the thread they take. `ends`: of the balls, none where no ball
    is stated. `sparing`: what comes of the balls that are there, where that is asked."""

    name: str
    pieces: tuple[Piece, ...]
    thread: Thread
    ends: tuple[BallEnd, ...]
    sparing: Sparing | None
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]

    @property
    def used(self) -> ThreadUse:
        return thread_used([r.loops for p in self.pieces for r in p.rounds], self.thread)

    def used_by(self, piece: Piece) -> ThreadUse:
        return thread_used([r.loops for r in piece.rounds], self.thread)
