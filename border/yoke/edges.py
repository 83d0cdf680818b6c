"""The edges of a yoke: runs of motifs in working order.

An edge of the yoke is a face of its map (`faces.py`): within a motif its run
goes in the order of the ring, and across the joint behind it to the next. Such
an edge is closed. With `hand = "left"` every edge is worked the other way.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.yoke.attachments import attach_faults
from border.yoke.laying import Laid, lay
from border.yoke.mending import yoke_faults
from border.yoke.names import MOST_LIKENED, MOST_PLACES, Names, names, nearest
from border.yoke.project import Project, Work, WrittenEdge
from border.yoke.report import YokeReport, yoke_report


class Run(Struct, frozen=True):
    """One motif's stretch of an edge.

    `free`: its free places here; `places`: those it offers, seam loops included.
    `names` are all that it answers to: motif, section, labels. `loops`: those round its
    wheel, `joined`: those that the joints before and behind it take up; 0 where the
    edge is written straight down.
    """

    motif: str
    section: str
    free: int
    places: int
    names: frozenset[str] = frozenset()
    loops: int = 0
    joined: tuple[int, int] = (0, 0)


class Edge(Struct, frozen=True):
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


def plain_edge(loops: int, closed: bool, of: str = "loop") -> Edge:
    """An edge of so many plain places, without a yoke; its name is `edge`."""
    return Edge("edge", closed, of, (), loops)


def runs_edge(runs: Sequence[int], closed: bool) -> Edge:
    """An edge of motifs `edge.1`, `edge.2` … of the section `edge`, with so many loops each."""
    made = tuple(
        Run(motif := f"edge.{n}", "edge", places, places, frozenset((motif, "edge")))
        for n, places in enumerate(runs, 1)
    )
    known = frozenset(name for run in made for name in run.names)
    return Edge("edge", closed, "loop", made, sum(runs), known)


def trace(project: Project) -> tuple[tuple[Edge, ...], YokeReport, tuple[Finding, ...]]:
    """The edges of a project, its yoke told, and all that is wrong with them.

    Edges of the yoke come in the order of the file, then those written straight
    down. An edge begins at the first motif of the file that has a run on it
    (`edge_for` begins it where a piece of work says). An edge that passes a
    faulty joint, or goes by several names, is left out; one with no places, or
    too many, is only in the report.
    """
    named, faults = names(project)
    laid = lay(project, named)
    findings = [*faults, *yoke_faults(project, named, laid)]
    edges, told = _all_edges(project, named, laid)
    findings += told
    can_be_worked = tuple(edge for edge in edges if 0 < edge.places <= MOST_PLACES)
    findings += _work_faults(project, edges, laid, named)
    findings += attach_faults(project, edges) if edges else []
    report = yoke_report(laid, named, project.yoke, tuple(edges))
    return can_be_worked, report, tuple(dict.fromkeys(findings))


def edge_for(work: Work, edges: Sequence[Edge]) -> Edge | None:
    """The edge of a piece of work, begun at its `start`.

    None where there is no such edge; a `start` that the edge does not have
    changes nothing. `trace` has told of either.
    """
    edge = next((e for e in edges if e.name == work.edge), None)
    if edge is None or work.start is None or not edge.closed:
        return edge
    at = next((n for n, run in enumerate(edge.runs) if run.motif == work.start.text), 0)
    return replace(edge, runs=edge.runs[at:] + edge.runs[:at])


def _all_edges(project: Project, named: Names, laid: Laid) -> tuple[list[Edge], list[Finding]]:
    """The edges of the yoke, then those written down, and what is wrong with their sizes."""
    edges = {edge.name: edge for edge in _yoke_edges(project, named, laid)}
    spans = dict.fromkeys(edges, project.yoke.span if project.yoke else None)
    findings = []
    for written in project.edges:
        if written.name in edges:
            message = f'there is more than one edge "{written.name}"'
            help_ = "give one of them another name"
            findings.append(Finding("edge-name-twice", message, help_, written.span))
        elif written.places is not None or not named.too_many:
            edge = edges[written.name] = _written_edge(written, project, named)
            spans[edge.name] = written.span
            if edge.places == 0:
                message = f'the edge "{edge.name}" has no places'
                help_ = "give it some places"
                findings.append(Finding("edge-empty", message, help_, written.span))
    for edge in edges.values():
        if edge.places > MOST_PLACES:
            message = f'the edge "{edge.name}" has {edge.places} places; '
            message += f"more than {MOST_PLACES} are not reckoned"
            help_ = "look at its numbers of motifs and places"
            findings.append(Finding("too-large", message, help_, spans[edge.name]))
    return list(edges.values()), findings


def _yoke_edges(project: Project, named: Names, laid: Laid) -> list[Edge]:
    yoke = project.yoke
    if yoke is None:
        return []
    edges: dict[str, Edge] = {}
    for face in laid.faces:
        called = laid.names(face)
        if len(called) != 1 or called[0] in edges:
            continue
        runs = []
        for motif, number in face:
            run, join = laid.joints.pairs[motif][number]
            before = laid.joints.pairs[motif][number - 1][1]
            joined = (before.loops if before else 0, join.loops if join else 0)
            places = run.places + (2 * yoke.seam_loops if join else 0)
            section = named.sections[motif]
            called_by = named.of(motif, section)
            runs.append(Run(motif, section, run.places, places, called_by, yoke.loops, joined))
        edges[called[0]] = _edge(called[0], True, yoke.of, runs, project.hand, named)
    return list(edges.values())


def _written_edge(written: WrittenEdge, project: Project, named: Names) -> Edge:
    of = written.of or (project.yoke.of if project.yoke else "loop")
    if written.places is not None:
        return Edge(written.name, written.closed, of, (), written.places, named.known)
    runs: list[Run] = []
    counts: dict[str, int] = {}
    for run in written.runs:
        for _ in range(run.motifs):
            number = counts[run.section] = counts.get(run.section, 0) + 1
            motif = f"{run.section}.{number}"
            called = named.of(motif, run.section)
            runs.append(Run(motif, run.section, run.places, run.places, called))
    return _edge(written.name, written.closed, of, runs, project.hand, named)


def _edge(name: str, closed: bool, of: str, runs: list[Run], hand: str, named: Names) -> Edge:
    """An edge of runs in right-handed order, worked by that hand."""
    if hand == "left":
        runs = [replace(run, joined=run.joined[::-1]) for run in runs]
        runs = runs[::-1] if not closed else runs[:1] + runs[:0:-1]
    places = sum(run.places for run in runs)
    return Edge(name, closed, of, tuple(runs), places, named.known)


def _work_faults(
    project: Project, edges: Sequence[Edge], laid: Laid, named: Names
) -> list[Finding]:
    by_name = {edge.name: edge for edge in edges}
    faulty = {n for pairs in laid.joints.pairs.values() for run, _ in pairs if (n := run.edge)}
    written = {edge.name for edge in project.edges}
    faulty |= written
    found: list[Finding] = []
    unknown = named.too_many and not named.sections
    motifs: dict[str, dict[str, None]] = {}
    for work in project.works:
        edge = by_name.get(work.edge)
        if edge is None:
            if work.edge not in faulty and not unknown:  # else it is told why it could not be made
                near = nearest(work.edge, by_name) if len(found) < MOST_LIKENED else None
                help_ = near or f"the edges are {', '.join(islice(by_name, 8))}"
                message = f'there is no edge "{work.edge}" to work on'
                found.append(Finding("no-such-edge", message, help_, work.edge_span))
        elif edge.places == 0 and edge.name not in written:
            message = f'the edge "{edge.name}" has no places to work into'
            found.append(Finding("edge-empty", message, "choose another edge", work.edge_span))
        else:
            if edge.name not in motifs:
                motifs[edge.name] = dict.fromkeys(run.motif for run in edge.runs)
            found += _start_fault(work, edge, motifs[edge.name], len(found))
            found += _mirror_faults(work, edge, len(found))
    return found


def _mirror_faults(work: Work, edge: Edge, told: int) -> list[Finding]:
    """Mirror points that the edge does not have; `told`: how many faults there are already."""
    has = {run.motif for run in edge.runs}
    joints = {
        frozenset((edge.runs[i - 1].motif, run.motif))
        for i, run in enumerate(edge.runs)
        if i or edge.closed
    }
    found: list[Finding] = []
    for point in work.mirror:
        parts = [part.strip() for part in point.text.split("|")]
        known = parts[0] in has if len(parts) == 1 else frozenset(parts) in joints
        if known:
            continue
        message = f'the edge "{edge.name}" has no motif or joint "{point.text}" as a mirror point'
        near = nearest(parts[0], has) if told + len(found) < MOST_LIKENED else None
        help_ = near or 'as in mirror = ["front.3", "back.2 | back.3"]'
        found.append(Finding("bad-value", message, help_, point.span))
    return found


def _start_fault(work: Work, edge: Edge, motifs: dict[str, None], told: int) -> list[Finding]:
    """`motifs`: those of the edge, in order; `told`: how many faults there are already."""
    start = work.start
    if start is None or (start.text in motifs and edge.closed):
        return []
    name, first = start.text, next(iter(motifs), None)
    code, help_ = "bad-value", f"leave start out: {edge.name} has plain places"
    if name == first:
        return []
    if name in motifs:
        message = f'the open edge "{edge.name}" can only start at its end, not at {name}'
        help_ = f"leave start out: it begins at {first}"
    else:
        if motifs:
            near = nearest(name, motifs) if told < MOST_LIKENED else None
            help_ = near or f"{edge.name} has {', '.join(islice(motifs, 8))}"
        message = f'the work is to start at "{name}", which is no motif of the edge "{edge.name}"'
        if name not in edge.known_names:
            code, message = "no-such-motif", f'there is no motif "{name}" for the work to start at'
    return [Finding(code, message, help_, start.span)]
