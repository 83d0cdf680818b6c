"""The edges of a yoke: runs of motifs in working order."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Run:
    """One motif's stretch of an edge.

    `free`: its free places here; `places`: those it offers, seam loops included.
    `names` are all that it answers to: motif, section, labels.
    """

    motif: str
    section: str
    free: int
    places: int
    names: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge in working order, either closed or open.

    `of`: `loop`, `picot`, `chain` or `stitch`. `runs` is empty on an edge of
    `places` plain places. `known_names`: every name of the yoke, whether this
    edge has it or not.
    """

    name: str
    closed: bool
    of: str
    runs: tuple[Run, ...]
    places: int
    known_names: frozenset[str] = frozenset()
