"""The published borders beside this file, counted on an edge as their books have it.

A border text goes through every floor from its characters to its counts. What
comes back is put in short: `made` has stitches by canonical name, `ch` for
chains and `picot` for picots, each only where there is one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from border.findings import Finding, Severity
from border.reckoning.counts import RoundCount, Tally, count_edge
from border.text.readings import Reading, read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border
from border.working.adjusting import Adjustment
from border.working.work import work
from border.yoke.edges import Edge, Run

HERE = Path(__file__).parent

Made = dict[str, int]
Repeats = list[tuple[int, Made]]


@dataclass(frozen=True, slots=True)
class Counted:
    """A border counted on an edge: its rounds by number, and all that is told of it."""

    rounds: dict[int, RoundCount]
    findings: tuple[Finding, ...]

    def made(self, number: int) -> Made:
        return short(self.rounds[number].made)

    def total(self, number: int) -> int:
        """Stitches and chains of a round."""
        return sum(n for kind, n in self.made(number).items() if kind != "picot")

    def repeats(self, number: int) -> Repeats:
        """Each open-ended repeat of a round: how often, and what one of them takes."""
        return [(r.times, r.takes) for r in self.rounds[number].repeats]

    def left_over(self, number: int) -> list[int]:
        return [r.left_over for r in self.rounds[number].repeats]

    def not_closing(self) -> list[int]:
        return [n for n, round_ in self.rounds.items() if not round_.closes]

    def told(self) -> list[tuple[str, int | None]]:
        """The code and the round of every finding, in order."""
        return [(f.code, f.round) for f in self.findings]

    def errors(self) -> list[tuple[str, int | None]]:
        return [(f.code, f.round) for f in self.findings if f.severity is Severity.ERROR]

    def message(self, number: int) -> str:
        """What is said of a round that does not close."""
        (told,) = (
            f.message for f in self.findings if f.code == "row-does-not-close" and f.round == number
        )
        return told


def short(made: Tally) -> Made:
    """Stitches, chains and picots in one table, without what there is none of."""
    counted = {**made.stitches, "ch": made.chains, "picot": made.picots}
    return {kind: n for kind, n in counted.items() if n}


def counted(name: str, edge: Edge, adjustments: Sequence[Adjustment] = ()) -> Counted:
    """The border NAME.border counted on an edge, with the adjustments of a piece of work."""
    reading, found = reading_of(name)
    worked = work(reading, edge, adjustments)
    rounds = {round_.number: round_ for round_ in count_edge(worked)}
    return Counted(rounds, (*found, *worked.findings))


def reading_of(name: str) -> tuple[Reading, tuple[Finding, ...]]:
    """What the border NAME.border means, and all that is told of its text."""
    border, found = _read(f"{name}.border")
    copied: list[Finding] = []

    def other(_: str, file: str) -> Border | None:
        there, findings = _read(file)
        copied.extend(findings)
        return there

    reading, meant = read_rounds(border, other)
    return reading, (*found, *meant, *copied)


def _read(file: str) -> tuple[Border, tuple[Finding, ...]]:
    border, findings = read_border(Source(file, (HERE / file).read_text(encoding="utf-8")))
    assert border is not None, findings
    return border, findings


# --- edges ----------------------------------------------------------------------


def ring() -> Edge:
    """A ring of chains that everything goes into: one place."""
    return Edge("ring", True, "loop", (), 1)


def closed_chain(places: int) -> Edge:
    """Foundation chains closed to a ring, worked into one by one."""
    return Edge("foundation", True, "chain", (), places)


def chain(places: int) -> Edge:
    """A foundation chain, worked to and fro."""
    return Edge("foundation", False, "chain", (), places)


def wheels(section: str, motifs: int, places: int, of: str = "picot") -> Edge:
    """A closed edge of so many motifs, each with so many free picots (or other places)."""
    names = [f"{section}.{i}" for i in range(1, motifs + 1)]
    runs = tuple(Run(n, section, places, places, frozenset({n, section})) for n in names)
    return Edge(section, True, of, runs, motifs * places, frozenset({section, *names}))
