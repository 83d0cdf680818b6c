"""Open-ended repeats as they were worked ("Repeats", "Closing", "Adjustments")."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from border.text.tree import Target
from plainly.cursor import Cursor
from plainly.sites import Site

Path = tuple[int, ...]


@dataclass(frozen=True)
class Working:
    """One whole working of a repeat: from one cursor to another; what it made in the row."""

    before: Cursor
    after: Cursor
    takes: tuple[tuple[Target, int], ...]
    made_from: int
    made_to: int


@dataclass
class Run:
    """An open-ended repeat as it was worked. `path` says where it stands in the text.

    `boundaries`: the position of each. `left`: sites of the leading kind where it stopped;
    `used_before`: the number of uses up to there. `fine`: nothing about it keeps the row from
    closing, what is left apart. `met`: it met its start.
    """

    path: Path
    kinds: tuple[Target, ...]
    workings: list[Working] = field(default_factory=list)
    boundaries: list[Fraction] = field(default_factory=list)
    left: list[Site] = field(default_factory=list)
    used_before: int = 0
    fine: bool = True
    met: bool = False


@dataclass(frozen=True)
class Boundary:
    """Boundary number k (from 0) of the run number `run` of a window."""

    run: int
    k: int
