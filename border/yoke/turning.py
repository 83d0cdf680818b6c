"""What to turn round so that a yoke goes together."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from msgspec.structs import replace

from border.yoke.changes import MOST_TRIED, Change, ring_span, with_rings, with_strip
from border.yoke.laying import lay
from border.yoke.names import Names
from border.yoke.project import Motif, Project, Strip, Words
from border.yoke.ring import pasted


def mended(project: Project, names: Names) -> Change | None:
    """The first of the simplest turns that makes it lie flat.

    One that makes it go together is taken before one that leaves names at odds.
    """
    changes = list(turns(project))
    if len(changes) * len(names.sections) > MOST_TRIED:
        return None
    laid = [(change, lay(change.project, names)) for change in changes]
    whole = (change for change, made in laid if made.goes_together)
    flat = (change for change, made in laid if made.lies_flat)
    return next(whole, next(flat, None))


def turns(project: Project) -> Iterator[Change]:
    """Everything that may have been written the other way round, the simplest first."""
    own = {motif.name: motif for motif in project.motifs}
    for strip in project.strips:
        if strip.sides and any(f"{strip.name}.{n}" not in own for n in _numbers(strip)):
            yield _turned_strip(strip, project)
    for motif in project.motifs:
        if motif.ring is not None and len(motif.ring) > 3:
            what = f"write the ring of {motif.name} the other way round"
            yield _with_ring(1, what, motif, _reversed(motif.ring), project)
    for motif in project.motifs:
        for ring in _joints_exchanged(motif):
            what = f"exchange two joints in the ring of {motif.name}"
            yield _with_ring(2, what, motif, ring, project)
    for strip in project.strips:
        inside = [f"{strip.name}.{n}" for n in _numbers(strip)]
        rings = [own[m] for m in inside if m in own and own[m].ring is not None]
        if strip.sides and rings:
            turned = _turned_strip(strip, project)
            reversed_ = {m.name: _reversed(m.ring or ()) for m in rings}
            lines = (f"{name}: {pasted(ring)}" for name, ring in reversed_.items())
            paste = "; ".join([turned.paste, *lines])
            what = f"{turned.what}, and the rings of its motifs"
            changed = with_rings(turned.project, reversed_)
            yield Change(3, what, paste, strip.sides_span, changed)


def _numbers(strip: Strip) -> range:
    return range(1, strip.motifs + 1)


def _turned_strip(strip: Strip, project: Project) -> Change:
    what = f'turn the sides of strip "{strip.name}" round'
    sides = strip.sides[::-1]
    changed = with_strip(project, strip, replace(strip, sides=sides))
    return Change(0, what, pasted(sides, "sides"), strip.sides_span, changed)


def _with_ring(
    rank: int, what: str, motif: Motif, ring: tuple[Words, ...], project: Project
) -> Change:
    changed = with_rings(project, {motif.name: ring})
    return Change(rank, what, pasted(ring), ring_span(motif), changed)


def _reversed(ring: tuple[Words, ...]) -> tuple[Words, ...]:
    """The other way round from the same beginning."""
    return ring[:1] + ring[:0:-1]


def _joints_exchanged(motif: Motif) -> Iterator[tuple[Words, ...]]:
    """A ring of three joints or more, with any two of them in each other's place."""
    ring = motif.ring or ()
    joints = [n for n, words in enumerate(ring) if words.text.lower().startswith("join ")]
    for a, b in combinations(joints, 2) if 2 < len(joints) < 9 else ():
        changed = list(ring)
        changed[a], changed[b] = ring[b], ring[a]
        yield tuple(changed)
