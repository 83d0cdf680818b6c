"""The stage of `flat`: every piece of work as it lies on its edge."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import degrees

from msgspec import Struct

from border.findings import Finding, Span
from border.planning.costs import Curve, curve_of
from border.reckoning.counts import count_edge
from border.reckoning.edge_shape import Shape, shape_of, with_turning
from border.reckoning.flat import Lies, how_it_lies
from border.reckoning.measuring import Mark, measuring_line
from border.reckoning.mending import Again, Mended, mended
from border.reckoning.stitch_sizes import StitchSizes, stitch_sizes
from border.showing.counted import Piece
from border.showing.lengths import between
from border.showing.lying import LyingAll, LyingWork, Turning
from border.text.amounts import some
from border.text.readings import Reading
from border.text.source import Source
from border.wanted import Wanted, told_of, worked_as_said
from border.working.work import WorkedEdge, work
from border.yoke.edges import Edge
from border.yoke.project import Project, Work

ROUND_AND_ROUND = {Curve.IN: -360.0, Curve.OUT: 360.0, Curve.STRAIGHT: 0.0}
"""How far a closed edge without wheels turns in all, by the way it curves: in degrees."""

UNLIKELY = 3.0
"""A measure that is so many times too large or too small is asked after (estimate)."""


class Known(Struct, frozen=True):
    """The shape of an edge, and who says how it turns."""

    shape: Shape
    turned_by: str


def lying(
    name: str, wanted: Sequence[Wanted], project: Project | None, sources: Mapping[str, Source]
) -> LyingAll:
    """How every piece of work lies."""
    sizes = sizes_of(project)
    works: list[LyingWork] = []
    findings: list[Finding] = []
    for one in wanted:
        if one.edge is None or one.text.reading is None or project is None:
            continue
        worked = worked_as_said(one, one.edge)
        known = shape_known(one.edge, project, one.work, sizes)
        told = [*worked.findings, *_not_there(one, worked)]
        if known is None and sizes is not None:
            told.append(size_missing(one.edge, one.work.edge_span if one.work else None))
        findings += told_of(one.edge, told, len(wanted))
        if known is not None and sizes is not None and worked.rounds:
            works.append(_lies(one, one.edge, worked, known, sizes, project))
            findings += _unlikely(works[-1].marks, one.work)
    if sizes is None and project is not None:
        findings.append(swatch_missing(project))
    return LyingAll(name, tuple(works), tuple(findings), sources)


def sizes_of(project: Project | None) -> StitchSizes | None:
    """The stitches as the swatches of a project have them."""
    return stitch_sizes(project.thread.sample) if project and project.thread else None


def shape_known(
    edge: Edge, project: Project, said: Work | None, sizes: StitchSizes | None
) -> Known | None:
    """The shape of an edge as the project has it; None where its size is not told."""
    wheel = project.yoke.motif_mm if project.yoke else None
    written = next((e for e in project.edges if e.name == edge.name), None)
    long, corners = (written.length_mm, written.corners) if written else (None, 0)
    if long is None and sizes is not None and edge.of in ("chain", "stitch"):
        long = edge.places * sizes.chain
    curve = Curve(said.curve) if said and said.curve else curve_of(edge.name)
    turns = ROUND_AND_ROUND[curve] if edge.closed else 0.0
    shape = shape_of(edge, wheel, long, turns, corners)
    if shape is None:
        return None
    if said is not None and said.turns is not None:
        return Known(with_turning(shape, said.turns, corners), "project")
    own = "loops" if shape.arcs or (edge.runs and edge.runs[0].loops) else "name"
    return Known(shape, "project" if own == "name" and said and said.curve else own)


def taped(piece: Piece, said: Work | None, project: Project | None) -> tuple[Mark, ...]:
    """What a tape should say on the way; nothing where no swatch or size of the edge tells."""
    sizes = sizes_of(project)
    if project is None or sizes is None or piece.worked is None or piece.reading is None:
        return ()
    known = shape_known(piece.edge, project, said, sizes)
    if known is None:
        return ()
    rounds = how_it_lies(piece.worked, piece.reading, known.shape, sizes)
    return measuring_line(piece.rounds, rounds, said.measured if said else ())


def _lies(
    one: Wanted,
    edge: Edge,
    worked: WorkedEdge,
    known: Known,
    sizes: StitchSizes,
    project: Project,
) -> LyingWork:
    reading = one.text.reading
    assert reading is not None
    shape = known.shape
    rounds = how_it_lies(worked, reading, shape, sizes)

    def again(changed: Reading) -> WorkedEdge:
        return work(changed, edge, one.given, one.done, one.found, one.done_at)

    better = None
    if any(r.lies is not Lies.FLAT for r in rounds):
        better = mended(reading, again, shape, sizes, one.done)
    measured = one.work.measured if one.work else ()
    counted = count_edge(worked)
    marks = measuring_line(counted, rounds, measured)
    turning = _turning(edge, shape)
    turns = sum(t.degrees for t in turning) if turning else degrees(shape.turning)
    wheel = project.yoke.motif_mm if project.yoke and shape.arcs else None
    return LyingWork(
        edge,
        one.named,
        reading.name,
        reading,
        wheel,
        turns,
        known.turned_by,
        turning,
        sizes,
        counted,
        rounds,
        marks,
        better,
        _back_to_size(again, reading, shape, sizes, marks),
    )


def _back_to_size(
    again: Again, reading: Reading, shape: Shape, sizes: StitchSizes, marks: Sequence[Mark]
) -> Mended | None:
    """The rounds to come worked at the size that was measured, so that they lie flat on the edge
    as it was reckoned; None where there is nothing to come back from."""
    if not marks or marks[-1].drift == 1.0:
        return None
    done = max(mark.round for mark in marks if mark.measured is not None)
    return mended(reading, again, shape, sizes.by(marks[-1].drift), done)


def _turning(edge: Edge, shape: Shape) -> tuple[Turning, ...]:
    """How far each section turns, in the order of the edge."""
    found: dict[str, list[float]] = {}
    for number in range(len(shape.arcs)):
        turns = degrees(shape.turning_of(number))
        found.setdefault(edge.runs[number].section, []).append(turns)
    return tuple(Turning(name, len(all_of), sum(all_of)) for name, all_of in found.items())


def swatch_missing(project: Project) -> Finding:
    """The finding that nothing tells how wide stitches are."""
    message = "how wide your stitches are is not said, so nothing can be told of lying flat"
    help_ = "work a swatch, wash it, and write in [thread] what it measures: sample = "
    help_ += '[{ stitch = "dc", stitches = 40, used_mm = 960, width_mm = 48, height_mm = 3.1 }]'
    span = project.thread.span if project.thread else None
    return Finding("measure-missing", message, help_, span)


def size_missing(edge: Edge, span: Span | None) -> Finding:
    """The finding that nothing tells how long an edge is."""
    if edge.runs and edge.runs[0].loops:
        message = "how wide a wheel is is not said"
        help_ = "lay one flat, measure across it, and write motif_mm = 42 in [yoke]"
    else:
        message = f'how long the edge "{edge.name}" is is not said'
        help_ = "measure it, and write length_mm = 380 in its [[edge]]"
    return Finding("measure-missing", message, help_, span)


def _unlikely(marks: Sequence[Mark], said: Work | None) -> list[Finding]:
    """Measures so far from what can be that cm may have been written for mm."""
    spans = {m.round: m.span for m in said.measured} if said else {}
    found = []
    for mark in marks:
        mm, can = mark.measured, mark.expected
        if mm is None or can.low / UNLIKELY <= mm <= can.high * UNLIKELY:
            continue
        message = f"{some(mark.count, mark.of)} of round {mark.round} are said to measure "
        message += f"{mm:g} mm, where they should measure {between(can)}"
        help_ = "give it in mm: 5.2 cm is mm = 52; and see that as many were measured as it says"
        found.append(Finding("measure-unlikely", message, help_, spans[mark.round]))
    return found


def _not_there(one: Wanted, worked: WorkedEdge) -> list[Finding]:
    """Measures of rounds that the border does not have."""
    last = worked.rounds[-1].number if worked.rounds else 0
    has = f"the border has rounds 1 to {last}" if last > 1 else f"the border has {last} round"
    return [
        Finding("no-such-row", f"there is no round {m.round} to have been measured", has, m.span)
        for m in (one.work.measured if one.work else ())
        if m.round > last and one.text.faulty is None
    ]
