"""The stage of `size`: the project with more wheels, or with as many as a measure needs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import floor

from msgspec.structs import replace

from border.findings import Finding, Severity
from border.lying import shape_known, size_missing, sizes_of
from border.planning.needs import needs
from border.planning.offers import task_for
from border.planning.search import Search
from border.planning.spots import mirrored
from border.reckoning.counts import count_edge
from border.reckoning.flat import Lies, how_it_lies
from border.reckoning.stitch_sizes import Band
from border.showing.sizing import EdgeSize, Sized, SizedAll
from border.text.source import Source
from border.wanted import Wanted, worked_as_said
from border.yoke.edges import Edge, edge_for, trace
from border.yoke.names import MOST_MOTIFS, MOST_PLACES
from border.yoke.project import Project
from border.yoke.resized import resized, sections_of

WORKINGS = 300
"""So many workings of a round are spent on easing in a border that does not close."""

MOST_STEPS = 40
MOST_WAYS = 8
"""So many sizes are shown for a length."""

More = tuple[tuple[str, int], ...]


def resizing(
    name: str,
    works: Sequence[Wanted],
    project: Project | None,
    edge: str | None,
    wanted_mm: float | None,
    more: More,
    sources: Mapping[str, Source],
) -> SizedAll:
    """The project with `more` wheels; or, `wanted_mm` given, the ways to come near that length
    at `edge`."""
    if project is None:
        return SizedAll(name, edge, wanted_mm, Sized((), ()), (), (), sources)
    sizer = _Sizer(project, works)
    now = sizer.now()
    findings: list[Finding] = []
    then: list[Sized] = []
    if wanted_mm is None:
        then = [sizer.sized(more)]
    else:
        there = next((e for e in now.edges if e.edge == edge), None)
        if there is not None and there.length is not None:
            then = _ways(sizer, there, wanted_mm)
        elif there is not None:
            traced = next(e for e in trace(project)[0] if e.name == edge)
            findings.append(size_missing(traced, None))
    return SizedAll(name, edge, wanted_mm, now, tuple(then), tuple(findings), sources)


class _Sizer:
    """One project at several sizes."""

    def __init__(self, project: Project, works: Sequence[Wanted]) -> None:
        self.project, self.works = project, works
        self.known: dict[tuple[More, str], float] = {}

    def now(self) -> Sized:
        """As the project stands, all that is eased in with it."""
        edges, _, findings = trace(self.project)
        return _sized((), self.project, edges, findings, self.works)

    def sized(self, more: More) -> Sized:
        """With so many wheels more, nothing eased in."""
        project = resized(self.project, dict(more))
        edges, _, findings = trace(project)
        return _sized(more, project, edges, findings, self._works(project, edges))

    def length(self, more: More, edge: str) -> float:
        """How long an edge comes out then, in mm; 0 where it is no more."""
        if (more, edge) not in self.known:
            project = resized(self.project, dict(more))
            edges, _, _ = trace(project)
            there = next((e for e in edges if e.name == edge), None)
            mm = 0.0
            if there is not None:
                work = _work_on(there, self._works(project, edges))
                long = _edge_size(there, work, project).length
                mm = long.middle if long else 0.0
            self.known[more, edge] = mm
        return self.known[more, edge]

    def closing(self, edge: str, places: int) -> tuple[int, ...]:
        """The numbers of places beside one on which the border of a plain edge closes."""
        one = next((w for w in self.works if w.edge and w.edge.name == edge), None)
        if one is None or one.edge is None or one.text.reading is None or one.text.faulty:
            return ()
        return needs(one.text.reading, one.edge.of, one.edge.closed).nearest(places)

    def _works(self, project: Project, edges: Sequence[Edge]) -> list[Wanted]:
        return [
            replace(
                w,
                edge=edge_for(said, edges),
                given=(),
                done=0,
                found=None,
                work=said,
                worked=None,
            )
            for w in self.works
            for said in (project.works[w.number],)
        ]


def _work_on(edge: Edge, works: Sequence[Wanted]) -> Wanted | None:
    return next((w for w in works if w.edge and w.edge.name == edge.name), None)


def _sized(
    more: More,
    project: Project,
    edges: Sequence[Edge],
    findings: Sequence[Finding],
    works: Sequence[Wanted],
) -> Sized:
    faults = tuple(f.message for f in findings if f.severity is Severity.ERROR)
    made = []
    for edge in edges:
        work = _work_on(edge, works)
        size = _edge_size(edge, work, project)
        if work is not None and size.closes is False:
            size = replace(size, eased=_eased(work, project))
        made.append(size)
    return Sized(more, tuple(made), faults)


def _edge_size(edge: Edge, work: Wanted | None, project: Project) -> EdgeSize:
    """An edge and its border, as far as it closes by itself."""
    sizes = sizes_of(project)
    begun = work.edge if work and work.edge else edge  # as the work begins it
    known = shape_known(begun, project, work.work if work else None, sizes)
    length = Band(mm := known.shape.touching(0.0), mm) if known else None
    plain = EdgeSize(
        edge.name, len(edge.runs), edge.places, edge.of, length, 0, "us", (), None, None
    )
    if work is None or work.text.reading is None or work.text.faulty:
        return plain
    reading = work.text.reading
    worked = worked_as_said(work, begun)
    whole = len(worked.rounds) == len(reading.rounds)
    last, lies = 0, Lies.FLAT
    if known and sizes and worked.rounds:
        lying = how_it_lies(worked, reading, known.shape, sizes)[-1].length
        length, lies = lying.around, lying.lies
        last = worked.rounds[-1].number
    return replace(
        plain,
        length=length,
        round=last,
        lies=lies,
        terms=reading.rules.terms,
        rounds=count_edge(worked),
        closes=whole and all(r.closes for r in worked.rounds),
    )


def _eased(work: Wanted, project: Project) -> int | None:
    """So many places eased in make the border close."""
    assert work.edge is not None
    assert work.text.reading is not None
    task = task_for(work.text.reading, work.edge, project, work.work)
    plan = next(Search(task, most=WORKINGS).plans(), None)
    return None if plan is None else sum(abs(a.by) for a in plan.adjustments)


# --- how many for a measure ----------------------------------------------------------


def _ways(sizer: _Sizer, there: EdgeSize, wanted_mm: float) -> list[Sized]:
    """The sizes on either side of a length, by every way to come there; the nearest first."""
    far: dict[More, float] = {}
    for group in groups(sizer.project, there.edge):
        for by in _either_side(sizer, there, group, wanted_mm):
            more = tuple((name, by) for name in group)
            far[more] = abs(sizer.length(more, there.edge) - wanted_mm)
    nearest = sorted(far, key=lambda more: (far[more], more))[:MOST_WAYS]
    return [sized for sized in map(sizer.sized, nearest) if sized.goes_together]


def _either_side(
    sizer: _Sizer, there: EdgeSize, group: tuple[str, ...], wanted_mm: float
) -> set[int]:
    """So many more in each section of a group, for the lengths on either side of one; on an edge
    of plain places those beside them, too, on which its border closes."""
    had = sections_of(sizer.project)
    least = 1 - min(had[name] for name in group)
    most = (MOST_MOTIFS - sum(had.values())) // len(group) if there.motifs else MOST_PLACES

    def length(by: int) -> float:
        return sizer.length(tuple((name, by) for name in group), there.edge)

    some = 2 if there.motifs else 12  # not 1: what is left over of a round is not in its length
    each = (length(some) - length(0)) / some
    if each <= 0:  # more wheels that draw the edge in
        return set()
    by = min(max(floor((wanted_mm - length(0)) / each), least), most - 1)
    for _ in range(MOST_STEPS):  # lengths grow nearly evenly
        step = -1 if length(by) > wanted_mm else 1 if length(by + 1) <= wanted_mm else 0
        if not step or not least <= by + step < most:
            break
        by += step
    found = {by, by + 1}
    if not there.motifs:
        found |= {n - there.places for n in sizer.closing(there.edge, there.places + by)}
    return found - {0}


def groups(project: Project, edge: str) -> list[tuple[str, ...]]:
    """The sections of an edge that grow together: front and back, left and right, each alone;
    a plain edge by itself."""
    edges, _, _ = trace(project)
    runs = next((e.runs for e in edges if e.name == edge), ())
    can = sections_of(project)
    if not runs:
        return [(edge,)] if edge in can else []
    names = list(dict.fromkeys(run.section for run in runs if run.section in can))
    found: dict[tuple[str, ...], None] = {}
    middle = tuple(name for name in names if mirrored(name) == name)
    if len(middle) == 2:
        found[middle] = None
    for name in names:
        found[tuple(n for n in can if n in (name, mirrored(name)))] = None
    return list(found)
