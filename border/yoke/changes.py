"""Changes to one line of a project, that are tried to see whether they mend it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Span
from border.yoke.project import Motif, Project, Strip, Words

MOST_TRIED = 20_000
"""Changes to be tried times motifs of the yoke: with more, none is tried."""


class Change(Struct, frozen=True):
    """One change: in words, with the line to paste, and the project that it makes.

    `rank`: of changes that mend the same, those with the lowest are told. 0: the sides of a
    strip turned round; 1: the ring of a motif; 2: two joints of a ring exchanged; 3: a strip
    turned with the rings of its motifs; 4: a name, a number or a joint of a line; 5: as 4,
    and more of the line with it; 6 and 7: as these, to a number that is not the usual one.
    `span`: the line that is changed.
    """

    rank: int
    what: str
    paste: str
    span: Span
    project: Project


def ring_span(motif: Motif) -> Span:
    """Where the ring of a motif stands."""
    return motif.ring[0].span.to(motif.ring[-1].span) if motif.ring else motif.span


def with_rings(project: Project, rings: Mapping[str, Sequence[Words]]) -> Project:
    """The project with other rings for some motifs that have their own, or mirror another."""
    motifs = (
        replace(m, ring=tuple(rings[m.name]), mirror_of=None) if m.name in rings else m
        for m in project.motifs
    )
    return replace(project, motifs=tuple(motifs))


def with_strip(project: Project, strip: Strip, changed: Strip) -> Project:
    """The project with one strip changed."""
    strips = (changed if s is strip else s for s in project.strips)
    return replace(project, strips=tuple(strips))
