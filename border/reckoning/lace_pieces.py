"""The pieces of lace that are sewn down: spaces or stitches of a row, or places of the edge."""

from __future__ import annotations

from msgspec import Struct

from border.working.fabric import CHAIN, Fabric


class Piece(Struct, frozen=True):
    """One piece of lace: over which motif it lies (on a joint `A | B`), and its number there,
    from 1; without motifs its number among all."""

    motif: str
    number: int


def pieces_of(fabric: Fabric, stretch: tuple[int, int]) -> tuple[str, tuple[Piece, ...]]:
    """The pieces of lace over a stretch of the edge, in its own order, and what they are.

    Spaces where the row has as many as motifs, else stitches; of the edge itself its places.
    """
    spots = _places(fabric) if fabric.base else _spaces(fabric)
    of = fabric.kinds[0] if fabric.base else "space"
    if not fabric.base and len(spots) < max(len(fabric.line.stretches), 2):
        spots, of = _stitches(fabric), "stitch"
    start, end = stretch
    n = fabric.length
    line = fabric.line.turned() if fabric.line.flipped else fabric.line
    if fabric.line.flipped:
        spots = [n - p for p in spots]
    begin = start * fabric.tick
    inside = sorted(begin + (p - begin) % n if line.closed else p for p in spots)
    inside = [p for p in inside if begin <= p < end * fabric.tick]
    counted: dict[str, int] = {}
    pieces = []
    for position in inside:
        motif = ""
        if line.stretches:
            at, on_joint = line.owner(position, fabric.tick)
            motif = line.stretches[at].run.motif
            motif = f"{line.stretches[at - 1].run.motif} | {motif}" if on_joint else motif
        counted[motif] = counted.get(motif, 0) + 1
        pieces.append(Piece(motif, counted[motif]))
    return of, tuple(pieces)


def _places(fabric: Fabric) -> list[int]:
    return list(fabric.pos)


def _stitches(fabric: Fabric) -> list[int]:
    return [fabric.pos[i] for i in fabric.atoms if fabric.kinds[i] != CHAIN]


def _spaces(fabric: Fabric) -> list[int]:
    """The positions of the runs of chains; one across the start of a closed row is one."""
    found: list[int] = []
    before = ""
    atoms = [(fabric.kinds[i], fabric.pos[i]) for i in fabric.atoms]
    for kind, position in atoms:
        if kind == CHAIN and before != CHAIN:
            found.append(position)
        before = kind
    if fabric.line.closed and len(found) > 1 and atoms[0][0] == CHAIN == atoms[-1][0]:
        found.pop()
    return found
