"""What to turn round so that a yoke goes together: every single change is tried."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, groupby

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Span
from border.yoke.laying import lay
from border.yoke.names import Names
from border.yoke.project import Motif, Project, Strip, Words
from border.yoke.ring import pasted

MOST_TRIED = 20_000
"""Changes to be tried times motifs of the yoke: with more, none is tried."""


class Turn(Struct, frozen=True):
    """One change that makes the yoke go together: in words, with the lines to paste.

    `rank` 0: the sides of a strip; 1: one motif's ring; 2: two joints of one
    ring; 3: a strip with the rings of its motifs.
    """

    rank: int
    what: str
    paste: str
    span: Span


def turns(project: Project, names: Names) -> tuple[Turn, ...]:
    """The simplest changes, each of which alone makes the yoke go together."""
    changes = list(_changes(project))
    if len(changes) * len(names.sections) > MOST_TRIED:
        return ()
    for _, alike in groupby(changes, key=lambda change: change[0].rank):
        good = tuple(turn for turn, changed in alike if lay(changed, names).goes_together)
        if good:
            return good
    return ()


def mended(project: Project, names: Names) -> tuple[Turn, Project] | None:
    """The first of the simplest changes that makes it lie flat, with the project that it makes.

    One that makes it go together is taken before one that leaves names at odds.
    """
    changes = list(_changes(project))
    if len(changes) * len(names.sections) > MOST_TRIED:
        return None
    flat = [(c, laid) for c in changes if (laid := lay(c[1], names)).lies_flat]
    whole = (change for change, laid in flat if laid.goes_together)
    return next(whole, flat[0][0] if flat else None)


def _changes(project: Project) -> Iterator[tuple[Turn, Project]]:
    own = {motif.name: motif for motif in project.motifs}
    for strip in project.strips:
        if strip.sides and any(f"{strip.name}.{n}" not in own for n in _numbers(strip)):
            yield _turned_strip(strip), _with_strip(project, strip)
    for motif in project.motifs:
        if motif.ring is not None and len(motif.ring) > 3:
            ring = _reversed(motif.ring)
            paste = pasted(ring)
            what = f"write the ring of {motif.name} the other way round"
            yield Turn(1, what, paste, motif.span), _with_rings(project, {motif.name: ring})
    for motif in project.motifs:
        for ring in _joints_exchanged(motif):
            what = f"exchange two joints in the ring of {motif.name}"
            yield Turn(2, what, pasted(ring), motif.span), _with_rings(project, {motif.name: ring})
    for strip in project.strips:
        inside = [f"{strip.name}.{n}" for n in _numbers(strip)]
        rings = [own[m] for m in inside if m in own and own[m].ring is not None]
        if strip.sides and rings:
            turn = _turned_strip(strip)
            paste = "; ".join([turn.paste, *(f"{m.name}: {_ring(m)}" for m in rings)])
            what = f"{turn.what}, and the rings of its motifs"
            turned = {m.name: _reversed(m.ring or ()) for m in rings}
            changed = _with_rings(_with_strip(project, strip), turned)
            yield Turn(3, what, paste, strip.sides_span), changed


def _numbers(strip: Strip) -> range:
    return range(1, strip.motifs + 1)


def _turned_strip(strip: Strip) -> Turn:
    what = f'turn the sides of strip "{strip.name}" round'
    return Turn(0, what, pasted(strip.sides[::-1], "sides"), strip.sides_span)


def _ring(motif: Motif) -> str:
    return pasted(_reversed(motif.ring or ()))


def _reversed(ring: tuple[Words, ...]) -> tuple[Words, ...]:
    """The other way round from the same beginning."""
    return ring[:1] + ring[:0:-1]


def _with_strip(project: Project, turned: Strip) -> Project:
    strips = (replace(s, sides=s.sides[::-1]) if s is turned else s for s in project.strips)
    return replace(project, strips=tuple(strips))


def _joints_exchanged(motif: Motif) -> Iterator[tuple[Words, ...]]:
    """A ring of three joints or more, with any two of them in each other's place."""
    ring = motif.ring or ()
    joints = [n for n, words in enumerate(ring) if words.text.lower().startswith("join ")]
    for a, b in combinations(joints, 2) if 2 < len(joints) < 9 else ():
        changed = list(ring)
        changed[a], changed[b] = ring[b], ring[a]
        yield tuple(changed)


def _with_rings(project: Project, rings: dict[str, tuple[Words, ...]]) -> Project:
    motifs = (replace(m, ring=rings[m.name]) if m.name in rings else m for m in project.motifs)
    return replace(project, motifs=tuple(motifs))
