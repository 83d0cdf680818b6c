"""A worked round as it is laid out: its stitches where they stand, the chains between them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from border.reckoning.edge_shape import Shape, Spot
from border.working.fabric import ARCH, CHAIN, Fabric
from border.working.stations import Stations
from border.working.work import WorkedRound


class Gap(Struct, frozen=True):
    """From one stitch to the next, in the edge's own order.

    `begins`, `ends`: where the two stand; `kinds`: what they are, "" for an end of the
    edge. `chains`: between them. `section`: what it lies over, "" without motifs.
    """

    begins: Spot
    ends: Spot
    kinds: tuple[str, str]
    chains: int
    section: str


class LaidRound(Struct, frozen=True):
    """A round in gaps. `stitches`: how many of each kind; `in_spaces`: the share of them that
    is worked into chains of the round below, or into an arch, of 1. What an arch covers is left
    out."""

    number: int
    gaps: tuple[Gap, ...]
    stitches: dict[str, int]
    in_spaces: float


def laid_round(round_: WorkedRound, below: Fabric, shape: Shape) -> LaidRound:
    """A round laid out on its edge; `below`: the row that it was worked into, as it met it."""
    fabric = round_.fabric
    order = list(reversed(fabric.atoms)) if fabric.line.flipped else fabric.atoms
    line, n = fabric.line, fabric.line.length

    def position(i: int) -> float:
        at = fabric.pos[i] / fabric.tick
        return n - at if line.flipped else at

    stands = [i for i in order if fabric.kinds[i] != CHAIN]
    at = [position(i) for i in stands]
    chains = _chains_behind(fabric, order)
    marks = [(p, fabric.kinds[i], c) for p, i, c in zip(at, stands, chains[1:], strict=True)]
    if line.closed:
        first, kind, _ = marks[0]
        ahead = [*marks, (first + n, kind, 0)]
        ahead[-2] = (*marks[-1][:2], marks[-1][2] + chains[0])
    else:
        ahead = [(0.0, "", chains[0]), *marks, (float(n), "", 0)]
    section = _Sections(fabric)
    gaps = tuple(
        Gap(shape.spot(p), shape.spot(q), (one, other), c, section.of((p + q) / 2))
        for (p, one, c), (q, other, _) in pairwise(ahead)
    )
    counted = Counter(kind for _, kind, _ in marks)
    return LaidRound(round_.number, gaps, counted, _in_spaces(fabric, below, stands))


def _chains_behind(fabric: Fabric, order: Sequence[int]) -> list[int]:
    """Chains before the first stitch, then behind each of them."""
    counted = [0]
    for i in order:
        if fabric.kinds[i] == CHAIN:
            counted[-1] += 1
        else:
            counted.append(0)
    return counted


class _Sections:
    """The section at a position of an edge in its own order."""

    def __init__(self, fabric: Fabric) -> None:
        self.fabric = fabric
        self.line = fabric.line.turned() if fabric.line.flipped else fabric.line

    def of(self, position: float) -> str:
        if not self.line.stretches:
            return ""
        at, _ = self.line.owner(round(position * self.fabric.tick), self.fabric.tick)
        return self.line.stretches[at].run.section


def _in_spaces(fabric: Fabric, below: Fabric, stands: Sequence[int]) -> float:
    """The share of the stitches that stand in chains of the row below."""
    if below.base:
        return 0.0
    stations = Stations(below)
    kinds, size = below.kinds, len(below.kinds)
    known: dict[int, bool] = {}
    share = 0.0
    for i in stands:
        sites = fabric.feet.get(i) or (fabric.into[i],)
        for site in sites:
            if site not in known:
                below_it = stations.standing_in(site)
                known[site] = site <= ARCH or any(kinds[e % size] == CHAIN for e in below_it)
            share += known[site] / len(sites)
    return share / len(stands)
