"""For tests: a border text worked into an edge, by the program's own stages."""

from __future__ import annotations

from border.findings import Finding
from border.reckoning.counts import RoundCount, count_edge
from border.text.readings import Reading, read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.working.adjusting import Adjustment
from border.working.work import WorkedEdge, work
from border.yoke.edges import Edge, Run


def plain(places: int, *, closed: bool = True, of: str = "loop") -> Edge:
    """An edge of plain places."""
    return Edge("edge", closed, of, (), places)


def motifs(
    *runs: int, closed: bool = True, of: str = "loop", labels: dict[int, str] | None = None
) -> Edge:
    """An edge of motifs edge.1, edge.2 …; `labels`: a label by the number of its motif."""
    made = []
    for i, places in enumerate(runs, 1):
        names = {"edge", f"edge.{i}"} | ({labels[i]} if labels and i in labels else set())
        made.append(Run(f"edge.{i}", "edge", places, places, frozenset(names)))
    return Edge(
        "edge", closed, of, tuple(made), sum(runs), frozenset[str]().union(*(m.names for m in made))
    )


def sections(*runs: str, closed: bool = True, name: str = "edge") -> Edge:
    """An edge of runs as in "left strap 3 4 3": a section, and the loops of its motifs.

    Words behind a colon are labels of all of them: "corner 2: underarm".
    """
    made: list[Run] = []
    met: dict[str, int] = {}
    for run in runs:
        said, _, labels = run.partition(":")
        words = said.split()
        section = " ".join(w for w in words if not w.isdigit())
        for places in (int(w) for w in words if w.isdigit()):
            met[section] = met.get(section, 0) + 1
            motif = f"{section}.{met[section]}"
            names = frozenset({motif, section, *labels.split()})
            made.append(Run(motif, section, places, places, names))
    known = frozenset(name for run in made for name in run.names)
    return Edge(name, closed, "loop", tuple(made), sum(r.places for r in made), known)


def read_text(text: str) -> tuple[Reading, tuple[Finding, ...]]:
    """The reading of a border text (US terms, if it states none), and its faults."""
    if "terms:" not in text:
        text = "terms: us\n" + text
    border, told = read_border(Source("test.border", text))
    assert border is not None, told
    reading, more = read_rounds(border, lambda source, name: None)
    return reading, (*told, *more)


def worked(
    text: str, edge: Edge, adjustments: tuple[Adjustment, ...] = ()
) -> tuple[WorkedEdge, tuple[Finding, ...]]:
    """The worked edge, and every finding from the text to the last round."""
    reading, told = read_text(text)
    edge_worked = work(reading, edge, adjustments)
    return edge_worked, (*told, *edge_worked.findings)


def counts(
    text: str, edge: Edge, adjustments: tuple[Adjustment, ...] = ()
) -> tuple[RoundCount, ...]:
    """The counts of every round. Faults of the text itself fail the test."""
    edge_worked, findings = worked(text, edge, adjustments)
    wrong = [f for f in findings if f.code in ("unknown-word", "not-understood")]
    assert not wrong, wrong
    return count_edge(edge_worked)


def codes(text: str, edge: Edge, adjustments: tuple[Adjustment, ...] = ()) -> list[str]:
    """The codes of all findings, in order."""
    return [f.code for f in worked(text, edge, adjustments)[1]]


def made(round_: RoundCount) -> dict[str, int]:
    """What a round makes, chains and picots among the stitches: `{"sc": 4, "ch": 12}`."""
    tally = dict(round_.made.stitches)
    if round_.made.chains:
        tally["ch"] = round_.made.chains
    if round_.made.picots:
        tally["picot"] = round_.made.picots
    return tally


def repeats(round_: RoundCount) -> list[tuple[int, dict[str, int], int]]:
    """The repeats of a round as (times, takes, left over)."""
    return [(r.times, r.takes, r.left_over) for r in round_.repeats]
