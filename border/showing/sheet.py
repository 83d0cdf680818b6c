"""The row sheet as values: everything that it says, in the order in which it says it.

HTML and the terminal's form are made of these values, so that both say the same. All
is taken from what was counted; names that a user wrote are harmless already.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.reckoning.measuring import Mark
from border.reckoning.thread import ball_named, described, trusted
from border.showing.counted import Counted, Piece
from border.showing.folding import edge_in_words, series
from border.showing.sheet_mending import Mending, mending
from border.showing.sheet_rounds import RoundSheet, round_sheets
from border.showing.sheet_words import Abbreviation, abbreviations, headings_said
from border.showing.tables import TERMS
from border.showing.telling import harmless
from border.yoke.edges import Edge

CARE = (
    "Rest your hands every half hour: put the hook down, stretch your fingers, look up and into "
    "the distance. Work in good light, and keep a steel hook sheathed. Pain, numbness or "
    "trouble with the eyes that stays is a matter for a doctor."
)

RUNNING = (
    "What is said to stand at a joint is everything made since the round began, up to that "
    "joint; what stands on the joint itself is named beside it and counted from there on."
)


class EdgeSheet(Struct, frozen=True):
    """One border on one edge. `facts`: what is to be known of it, (what, how it is).

    `faults`: what is to be mended before it can be trusted.
    """

    name: str
    title: str
    facts: tuple[tuple[str, str], ...]
    abbreviations: tuple[Abbreviation, ...]
    faults: tuple[str, ...]
    rounds: tuple[RoundSheet, ...]


class Sheet(Struct, frozen=True):
    """The whole sheet. `facts` are those of all edges."""

    name: str
    facts: tuple[tuple[str, str], ...]
    edges: tuple[EdgeSheet, ...]
    mending: Mending


def sheet(counted: Counted, tape: Sequence[Sequence[Mark]], file: str, project: bool) -> Sheet:
    """The sheet of everything that was counted.

    `tape`: the measuring line of every piece, as far as it is known. `file`: its name without a
    folder; `project`: whether it is a project file.
    """
    edges = []
    loops_before: tuple[int, ...] = ()
    for piece, marks in zip(counted.pieces, tape, strict=True):
        rounds = round_sheets(piece, counted, loops_before, marks)
        edges.append(_edge(piece, counted, rounds))
        loops_before += tuple(r.loops for r in piece.rounds)
    told = mending(counted.pieces, harmless(file), project)
    return Sheet(harmless(counted.name), _thread_facts(counted), tuple(edges), told)


def _thread_facts(counted: Counted) -> tuple[tuple[str, str], ...]:
    thread = counted.thread
    if size := ball_named(thread):
        ball = f"{size}; the edges are reckoned to be worked in the order of this sheet"
    else:
        ball = "not stated (ball_g or ball_m under [thread]), so whether it lasts is not reckoned"
    return (
        ("Thread and hook", harmless(described(thread))),
        ("Ball", ball),
        ("Lengths of thread", f"{trusted(thread.gauge)}; no motifs, tails or swatch"),
    )


def _edge(piece: Piece, counted: Counted, rounds: tuple[RoundSheet, ...]) -> EdgeSheet:
    edge, terms = piece.edge, piece.terms
    title = harmless(piece.title or piece.border)
    facts = [
        ("Border", title),
        ("Edge", edge_in_words(edge)),
        ("Stitch names", TERMS.get(terms, terms)),
        *(("The border says", said) for said in headings_said(piece, counted.sources)),
        ("Where to begin", _beginning(edge)),
    ]
    if edge.runs:
        facts.append(("The way round" if edge.closed else "The way along", _way(edge)))
    faults = []
    if not piece.whole:
        faults.append(
            f"nothing is counted after round {piece.rounds[-1].number}: mend the text first"
            if piece.rounds
            else "no round could be counted"
        )
    used = abbreviations(piece, [r.row for r in rounds])
    return EdgeSheet(harmless(edge.name), title, tuple(facts), used, tuple(faults), rounds)


def _beginning(edge: Edge) -> str:
    if not edge.runs:
        where = "at its first" if not edge.closed else "at any"
        return f"fasten the thread {where} {edge.of} and mark it: it is {edge.of} 1"
    first, last = harmless(edge.runs[0].motif), harmless(edge.runs[-1].motif)
    if edge.closed and len(edge.runs) > 1:
        return f"at {first}, just behind the joint {last} | {first}"
    return f"at {first}, at its first {edge.of}"


def _way(edge: Edge) -> str:
    groups = series(edge.runs, lambda run: run.section)
    told = []
    for group in groups:
        first, last = harmless(group[0].motif), harmless(group[-1].motif)
        told.append(first if len(group) == 1 else f"{first} to {last} ({len(group)})")
    return ", then ".join(told)
