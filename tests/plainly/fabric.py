"""The fabric: atoms in working order, each with its position (section "The fabric")."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any

from plainly.line import Line

PLACE, STITCH, CHAIN = "place", "stitch", "chain"

Identity = tuple[Fraction, Fraction, Fraction, str]
"""What makes two sites one and the same: see `Site.identity`."""


@dataclass(frozen=True)
class Atom:
    """A place of the edge, a stitch, or a single chain.

    `into` says which site a stitch was worked into; None for a stitch worked into several sites
    together, which belongs to no group. `picots` stand on the atom.
    """

    what: str
    at: Fraction
    stitch: str = ""
    into: Identity | None = None
    picots: int = 0


@dataclass(frozen=True)
class Fabric:
    """A row as it came out. `edge` is true of row 0, whose atoms are places.

    `under`: what lies under arches of the row itself, which the next row does not meet.
    """

    line: Line
    atoms: tuple[Atom, ...]
    edge: bool
    under: tuple[Atom, ...] = ()
    listed: dict[object, list[Any]] = field(default_factory=dict, compare=False, repr=False)
    """Sites that have been listed once, so as not to list them for every motif again."""

    @property
    def length(self) -> int:
        return len(self.atoms)

    @property
    def has_chains(self) -> bool:
        return any(atom.what == CHAIN for atom in self.atoms)

    def atom(self, i: int) -> Atom:
        """Atom number i. On a closed round the numbers run on, and the positions with them."""
        if not self.line.closed:
            return self.atoms[i]
        lap, within = divmod(i, self.length)
        atom = self.atoms[within]
        if not lap:
            return atom
        return replace(atom, at=atom.at + lap * self.line.n)

    def turned(self) -> Fabric:
        """The fabric from the other side: it begins with the atom that it ended with.

        A picot goes with its atom (small rulings).
        """
        atoms = [replace(atom, at=self.line.n - atom.at) for atom in reversed(self.atoms)]
        line = self.line.mirrored()
        return Fabric(line, settled(atoms, line), self.edge)


def settled(atoms: list[Atom], line: Line) -> tuple[Atom, ...]:
    """Positions of a closed round moved by whole laps so that the first is in [0, n)."""
    if not atoms or not line.closed:
        return tuple(atoms)
    laps = math.floor(atoms[0].at / line.n)
    return tuple(replace(atom, at=atom.at - laps * line.n) for atom in atoms)


def edge_fabric(line: Line) -> Fabric:
    """Row 0: a place's position is its middle."""
    return Fabric(
        line, tuple(Atom(PLACE, i + Fraction(1, 2)) for i in range(int(line.n))), edge=True
    )


# --- a row while it is made ------------------------------------------------------------------


@dataclass(frozen=True)
class MadeStitch:
    stitch: str
    at: Fraction
    into: Identity | None


@dataclass(frozen=True)
class MadeChain:
    pass


@dataclass(frozen=True)
class MadePicot:
    pass


@dataclass(frozen=True)
class Covered:
    """A piece that lies under an arch."""

    piece: MadeStitch | MadeChain | MadePicot


Made = MadeStitch | MadeChain | MadePicot | Covered


def bare(piece: Made) -> MadeStitch | MadeChain | MadePicot:
    """The piece itself, covered or not."""
    return piece.piece if isinstance(piece, Covered) else piece


def new_fabric(line: Line, made: list[Made]) -> Fabric:
    """The row that was made, atom by atom, with the picots set on their atoms."""
    atoms: list[Atom] = []
    under: set[int] = set()
    waiting = 0
    for one in made:
        piece = bare(one)
        if isinstance(piece, MadePicot):
            # A picot stands on the atom before it; with none before it, on the one after.
            if atoms:
                atoms[-1] = replace(atoms[-1], picots=atoms[-1].picots + 1)
            else:
                waiting += 1
            continue
        if isinstance(piece, MadeStitch):
            atom = Atom(STITCH, piece.at, piece.stitch, piece.into)
        else:
            atom = Atom(CHAIN, Fraction(0))
        if isinstance(one, Covered):
            under.add(len(atoms))
        atoms.append(replace(atom, picots=waiting))
        waiting = 0
    placed = [
        replace(atom, at=_chain_position(line, atoms, i)) if atom.what == CHAIN else atom
        for i, atom in enumerate(atoms)
    ]
    seen = [atom for i, atom in enumerate(placed) if i not in under]
    covered = tuple(atom for i, atom in enumerate(placed) if i in under)
    return Fabric(line, settled(seen, line), edge=False, under=covered)


def _chain_position(line: Line, atoms: list[Atom], i: int) -> Fraction:
    """Half-way between the stitches on either side; at the ends of an open row, the one's."""
    stitches = [(k, atom.at) for k, atom in enumerate(atoms) if atom.what == STITCH]
    if not stitches:
        return Fraction(0)
    before = [at for k, at in stitches if k < i]
    after = [at for k, at in stitches if k > i]
    if line.closed:
        left = before[-1] if before else stitches[-1][1] - line.n
        right = after[0] if after else stitches[0][1] + line.n
    else:
        left = before[-1] if before else after[0]
        right = after[0] if after else before[-1]
    return (left + right) / 2
