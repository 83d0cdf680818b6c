"""Loop accounting: every ring must come to the loops that a motif has."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec.structs import replace

from border.findings import Finding
from border.text.words import shortened
from border.yoke.project import Project
from border.yoke.ring import Free, Item, Join, Ring, paired, pasted


def loop_faults(project: Project, rings: Mapping[str, Ring]) -> tuple[Finding, ...]:
    """`loops-do-not-add-up` for every ring that does not, with its sum.

    The motifs between the ends of a strip have one ring and share one finding; a
    mirror has its fault where the other motif has it. Where just one run can take
    the difference, the help is the line to paste.
    """
    yoke = project.yoke
    if yoke is None or _joined_unknown(project, rings):
        return ()
    findings: list[Finding] = []
    alike: dict[str, list[Ring]] = {}
    for ring in rings.values():
        if not ring.readable or ring.loops == yoke.loops or _is_mirror(ring, rings):
            continue
        if paired(ring) is None and ring.strip is not None:
            continue  # the missing joint is the fault, and is told of
        if ring.strip is not None and len(ring.items) == 4:
            alike.setdefault(ring.strip.name, []).append(ring)
        else:
            findings.append(_fault(ring, yoke.loops, ""))
    for same in alike.values():
        others = len(same) - 1
        findings.append(_fault(same[0], yoke.loops, f", and {others} more like it" * (others > 0)))
    return tuple(findings)


def _is_mirror(ring: Ring, rings: Mapping[str, Ring]) -> bool:
    return ring.mirror_of is not None and ring.mirror_of in rings


def _joined_unknown(project: Project, rings: Mapping[str, Ring]) -> bool:
    joins = (i for r in rings.values() for i in r.items if isinstance(i, Join))
    return project.yoke is None or (
        project.yoke.joined is None and any(join.by is None for join in joins)
    )


def _fault(ring: Ring, loops: int, others: str) -> Finding:
    far = abs(ring.loops - loops)
    which = f"{far} too many" if ring.loops > loops else f"{far} too few"
    message = f"the ring of {ring.motif}{others} comes to {which} for {loops} loops: "
    message += shortened(ring.shown, 300)
    span = ring.strip.sides_span if ring.strip and ring.strip.sides else ring.span
    return Finding("loops-do-not-add-up", message, _help(ring, loops), span)


def _help(ring: Ring, loops: int) -> str:
    mended = _mended(ring, loops)
    if not 1 <= len(mended) <= 2:
        return f"count its free loops on each edge, and the joined ones: {loops} in all"
    if ring.strip is None:
        return f"if the joints are right, write {' or '.join(map(pasted, mended))}"
    if len(ring.items) == 4:
        sides = [pasted((i for i in items if isinstance(i, Free)), "sides") for items in mended]
        return f"if the joints are right, write {' or '.join(sides)}"
    return (
        f"if nothing is joined at this end of the strip, give it a ring of its own: "
        f'[[motif]] name = "{ring.motif}" {pasted(mended[0])}; else say from or to'
    )


def _mended(ring: Ring, loops: int) -> list[tuple[Item, ...]]:
    """The rings that come out right by changing one run of this one."""
    more = loops - ring.loops
    items = ring.items
    if ring.strip is not None and len(items) < 4:  # an open end: both sides are one run
        items = tuple(i for pair in paired(ring) or () for i in pair if i is not None)
    return [
        (*items[:n], replace(run, places=run.places + more), *items[n + 1 :])
        for n, run in enumerate(items)
        if isinstance(run, Free) and run.places + more >= 0
    ]
