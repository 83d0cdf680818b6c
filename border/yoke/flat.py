"""Whether the yoke lies flat and its names agree: the findings."""

from __future__ import annotations

from collections import Counter, defaultdict

from border.findings import Finding, Span
from border.yoke.faces import Face, Part
from border.yoke.laying import Laid
from border.yoke.project import Project
from border.yoke.ring import Free, Item, pasted


def flat_faults(project: Project, laid: Laid) -> tuple[Finding, ...]:
    """The faults that only show on the yoke as a whole.

    Findings: `not-connected`, `ring-faulty` (a run that is not written),
    `does-not-go-together`, `edge-names-differ`, `edge-name-twice`.
    """
    crooked = [_crooked(part, laid, project) for part in laid.parts if not part.lies_flat]
    mixed = [_mixed(face, laid) for face in laid.faces if len(laid.names(face)) > 1]
    return (
        *_apart(laid),
        *_gaps(laid),
        *(crooked if laid.whole else ()),
        *mixed,
        *_twice(laid),
    )


def _apart(laid: Laid) -> list[Finding]:
    """All parts but the largest (of equals the first), where the joints are sound."""
    if not laid.whole or len(laid.parts) < 2:
        return []
    main = max(laid.parts, key=lambda part: len(part.motifs))
    found = []
    for part in laid.parts:
        if part is not main:
            first, others = part.motifs[0], len(part.motifs) - 1
            which = f"{first} and {others} more are" if others else f"{first} is"
            message = f"{which} joined to nothing else of the yoke"
            help_ = f'say where: from and to of a strip, or "join {main.motifs[0]}" in a ring'
            found.append(Finding("not-connected", message, help_, laid.rings[first].span))
    return found


def _gaps(laid: Laid) -> list[Finding]:
    """A run must be written between two joints: what it is called, its face may tell."""
    called = {}
    for face in laid.faces:
        if len(names := laid.names(face)) == 1:
            called.update(dict.fromkeys(face, names[0]))
    found = []
    for motif, pairs in laid.joints.pairs.items():
        ring = laid.rings[motif]
        if all(run.edge is not None for run, _ in pairs) or ring.mirror_of in laid.rings:
            continue
        items: list[Item] = []
        for number, (run, join) in enumerate(pairs):
            name = run.edge or called.get((motif, number))
            items.append(Free(name, run.places, run.span))
            if join is not None:
                items.append(join)
        message = f"in the ring of {motif} two joints stand side by side with no edge between"
        help_ = f"write the edge between them, with 0 where it has no loops: {pasted(items)}"
        found.append(Finding("ring-faulty", message, help_, ring.span))
    return found


def _crooked(part: Part, laid: Laid, project: Project) -> Finding:
    motifs, flat = len(part.motifs), 2 - len(part.motifs) + part.joints
    message = (
        f"the rings do not lie flat together: {motifs} motifs and {part.joints} joints "
        f"have {flat} edges between them, but these rings come to {part.faces}"
    )
    many = [m for m in part.motifs if len(laid.joints.pairs[m]) > 2]
    listed = ", ".join(many[:6]) + (" …" if len(many) > 6 else "")
    help_ = f"look for items out of order in the rings with three joints or more: {listed}"
    span = project.yoke.span if project.yoke else laid.rings[part.motifs[0]].span
    return Finding("does-not-go-together", message, help_, span)


def _mixed(face: Face, laid: Laid) -> Finding:
    """A face called by several names: shown where its usual name first gives way to another."""
    places: Counter[str] = Counter()
    for dart in face:
        if (edge := laid.run(dart).edge) is not None:
            places[edge] += 1
    usual = places.most_common(1)[0][0]
    named = [dart for dart in face if laid.run(dart).edge is not None]
    there = next(
        n
        for n, dart in enumerate(named)
        if laid.run(dart).edge != usual and laid.run(named[n - 1]).edge == usual
    )
    before, dart = named[there - 1], named[there]
    other = laid.run(dart).edge
    message = (
        f'one edge is called "{usual}" on {before[0]}, but "{other}" where it goes on to {dart[0]}'
    )
    if other in {name for f in laid.faces if f is not face for name in laid.names(f)}:
        help_ = f"in working order an edge leaves {before[0]} by the joint behind it, and goes on "
        help_ += f"with what follows that joint on {dart[0]}"
    else:
        help_ = f'if that is the same edge, write "{usual} {laid.run(dart).places}"'
    return Finding("edge-names-differ", message, help_, _span(dart[0], laid.run(dart), laid))


def _span(motif: str, run: Free, laid: Laid) -> Span:
    return run.span if run.edge is not None else laid.rings[motif].span


def _twice(laid: Laid) -> list[Finding]:
    by_name: dict[str, list[Face]] = defaultdict(list)
    for face in laid.faces:
        names = laid.names(face)
        if len(names) == 1:
            by_name[names[0]].append(face)
    found = []
    for name, called in by_name.items():
        for face in called[1:]:
            dart = next(d for d in face if laid.run(d).edge == name)
            first = called[0][0][0]
            message = f'"{name}" is the name of one edge by {first}, and of another by {dart[0]}'
            help_ = "give each edge a name of its own; it is also worth a look at the rings there"
            span = _span(dart[0], laid.run(dart), laid)
            found.append(Finding("edge-name-twice", message, help_, span))
    return found
