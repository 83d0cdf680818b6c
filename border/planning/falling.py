"""Where repeats fall: how many begin over each section, over which places, and whether the two
sides of an edge are alike."""

from __future__ import annotations

from collections import Counter
from itertools import groupby

from msgspec import Struct

from border.planning.spots import Spots
from border.working.fabric import CHAIN, PICOT, Fabric
from border.working.line import Line
from border.working.work import WorkedRound


class Over(Struct, frozen=True):
    """A point of the edge: over which place (from 1) of which motif it lies; on a joint the
    first of the motif behind it."""

    motif: str
    place: int


class Falls(Struct, frozen=True):
    """The repeats that begin over one unbroken series of a section's motifs.

    `first`: where the first of them begins, `last`: where the last of them ends.
    """

    section: str
    repeats: int
    first: Over
    last: Over


class Lying(Struct, frozen=True):
    """How the repeats of a round lie. `alike`: the two sides mirror each other; None where the
    edge has no mirror points, or the round no repeats."""

    falls: tuple[Falls, ...]
    alike: bool | None


def lying(round_: WorkedRound, spots: Spots) -> Lying:
    """How the repeats of a round lie on an edge of motifs."""
    fabric = round_.fabric
    ends = [e for span in round_.spans if (e := _ends(fabric, span)) is not None]
    if not ends or not fabric.line.stretches:
        return Lying((), None)
    if fabric.line.flipped:  # told in the order of the edge
        ends = [(fabric.length - b, fabric.length - a) for a, b in reversed(ends)]
    line = fabric.line.turned() if fabric.line.flipped else fabric.line
    beginning = [(line.stretches[line.owner(a, fabric.tick)[0]], a, b) for a, b in ends]
    falls = []
    for section, some in groupby(beginning, key=lambda b: b[0].run.section):
        mine = list(some)
        first, last = mine[0][1], mine[-1][2]
        over = _over(line, fabric.tick, first), _over(line, fabric.tick, last)
        falls.append(Falls(section, len(mine), *over))
    return Lying(tuple(falls), _alike(fabric, line, spots))


def _ends(fabric: Fabric, span: tuple[int, int]) -> tuple[int, int] | None:
    """The positions of the first and last stitch of a repeat; None where it makes none."""
    stitches = [i for i in range(*span) if fabric.kinds[i] not in (CHAIN, PICOT)]
    return (fabric.pos[stitches[0]], fabric.pos[stitches[-1]]) if stitches else None


def _over(line: Line, tick: int, position: int) -> Over:
    index, _ = line.owner(position, tick)
    stretch = line.stretches[index]
    place = position // tick % line.length if line.closed else position // tick
    return Over(stretch.run.motif, min(max(place - stretch.start, 0), stretch.run.places - 1) + 1)


def _alike(fabric: Fabric, line: Line, spots: Spots) -> bool | None:
    """Whether what stands on one side of the mirror points stands on the other, too."""
    if spots.mirror is None:
        return None
    # twice the position of the axis: that of the middle of a motif, or of a joint
    number, motif = divmod(spots.mirror // 2, 2)
    start = line.stretches[number].start if number < len(line.stretches) else line.length
    axis = start + line.stretches[number].end if motif else 2 * start
    length, total = fabric.length, axis * fabric.tick
    if fabric.line.flipped:
        total = 2 * length - total
    seen = (i for i in range(len(fabric.kinds)) if i not in fabric.covered)
    stands = Counter((fabric.kinds[i], fabric.pos[i]) for i in seen)
    if fabric.line.closed:
        stands = Counter((kind, p % length) for kind, p in stands.elements())
        return stands == Counter((kind, (total - p) % length) for kind, p in stands.elements())
    return stands == Counter((kind, total - p) for kind, p in stands.elements())
