"""Counts made by hand, for the tests of what is shown."""

from __future__ import annotations

from border.findings import Finding
from border.reckoning.counts import (
    JointCount,
    MotifCount,
    RepeatCount,
    RoundCount,
    SectionCount,
    Tally,
)
from border.reckoning.thread import USUAL, Thread
from border.showing.counted import Counted, Piece
from border.text.source import Source
from border.working.rounds import Fallen
from border.yoke.edges import Edge, Run

TEXT = "border: Fern edge\nround 1: 3 dc in each loop\n"


def tally(chains: int = 0, picots: int = 0, **stitches: int) -> Tally:
    return Tally(stitches, chains, picots)


def edge(name: str = "neck") -> Edge:
    """Five motifs of the front, three of a strap, six places each."""
    motifs = [("front", i) for i in range(1, 6)] + [("left strap", i) for i in range(1, 4)]
    runs = tuple(Run(f"{section}.{i}", section, 6, 6) for section, i in motifs)
    return Edge(name, True, "loop", runs, 48)


def motifs(front: Tally, strap: Tally, third: Tally | None = None) -> tuple[MotifCount, ...]:
    """`third`: what front.3 has, where it is not what the others have."""
    made = [third or front if i == 3 else front for i in range(1, 6)]
    counts = [
        MotifCount(f"front.{i}", "front", each, each == front) for i, each in enumerate(made, 1)
    ]
    return (
        *counts,
        *(MotifCount(f"left strap.{i}", "left strap", strap, False) for i in (1, 2, 3)),
    )


def round_count(number: int = 1, *, closes: bool = True, third: Tally | None = None) -> RoundCount:
    return RoundCount(
        number=number,
        closes=closes,
        made=tally(dc=144, sc=8, chains=120, picots=4),
        spaces=40,
        repeats=(RepeatCount(24, {"loop": 2}, tally(dc=6, chains=5), 0 if closes else 1),),
        sections=(
            SectionCount("front", tally(dc=90, chains=75)),
            SectionCount("left strap", tally(dc=54, chains=45)),
        ),
        motifs=motifs(tally(dc=18, chains=15), tally(dc=15, chains=12), third),
        joints=(JointCount(("front.5", "left strap.1"), tally(sc=1)),),
        adjustments=(Fallen("left strap", -1, 7),),
        loops=1000,
    )


def piece(*rounds: RoundCount, terms: str = "us", findings: tuple[Finding, ...] = ()) -> Piece:
    return Piece(edge(), "fern.border", "Fern edge", terms, rounds, findings=findings)


def counted(*pieces: Piece, thread: Thread = USUAL, findings: tuple[Finding, ...] = ()) -> Counted:
    source = Source("fern.border", TEXT)
    return Counted("Fern yoke", pieces, thread, findings, {source.name: source})


def does_not_close(number: int = 1) -> Finding:
    source = Source("fern.border", TEXT)
    return Finding(
        "row-does-not-close",
        f"round {number} does not close: 1 loop is left over on front.2",
        "skip 1 loop, or work 1 loop twice",
        source.span(18, 26),
        number,
    )
