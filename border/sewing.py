"""The stage of `attach`: every edge that is sewn to cloth, piece by piece."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import fsum

from border.findings import Finding
from border.lying import shape_known, sizes_of
from border.reckoning.attaching import FULL, SCANTY, Sewn, finished, sewn
from border.reckoning.edge_shape import Stretch
from border.reckoning.flat import how_it_lies, laid_rounds, over_stretch
from border.reckoning.lace_pieces import pieces_of
from border.reckoning.stitch_sizes import Band
from border.showing.lengths import whole
from border.showing.sewing import SewnAll, SewnEdge
from border.text.source import Source
from border.wanted import Wanted, worked_as_said
from border.working.fabric import Fabric, edge_fabric
from border.working.work import WorkedEdge
from border.yoke.attachments import as_worked, stretch_of
from border.yoke.edges import Edge
from border.yoke.project import Attachment, Project


def sewing(
    name: str,
    wanted: Sequence[Wanted],
    edges: Sequence[Edge],
    project: Project | None,
    only: str | None,
    sources: Mapping[str, Source],
) -> SewnAll:
    """Everything that the project says is sewn to cloth; `only`: on that edge."""
    made: list[SewnEdge] = []
    findings: list[Finding] = []
    for said in project.attachments if project else ():
        assert project is not None
        work = next((w for w in wanted if w.edge and w.edge.name == said.edge), None)
        edge = work.edge if work else next((e for e in edges if e.name == said.edge), None)
        if edge is None or only not in (None, edge.name):
            continue
        one, told = _sewn(said, edge, work, project)
        made += [one] if one else []
        findings += told
    return SewnAll(name, tuple(made), tuple(dict.fromkeys(findings)), sources)


def _sewn(
    said: Attachment, edge: Edge, work: Wanted | None, project: Project
) -> tuple[SewnEdge | None, list[Finding]]:
    worked = worked_as_said(work, edge) if work and work.text.reading else None
    rounds = [r.number for r in worked.rounds] if worked else []
    number = said.round if said.round is not None else max(rounds, default=0)
    if number and number not in rounds:
        has = f"the {edge.name} has rounds 1 to {rounds[-1]}" if rounds else "nothing is worked"
        message = f"there is no round {number} to be sewn down on the {edge.name}"
        return None, [Finding("no-such-row", message, has, said.round_span)]
    stretch = stretch_of(edge, [name.text for name in said.over])
    if stretch is None:
        return None, []  # it is told what is wrong with it
    fabric = _fabric(worked, edge, number)
    of, pieces = pieces_of(fabric, stretch)
    if not pieces:
        message = f"nothing of the {edge.name} lies there to be sewn down"
        return None, [Finding("bad-value", message, "sew another round, or part", said.span)]
    lace = _lace(edge, worked, work, project, number, stretch)
    found = sewn(said, of, pieces, lace)
    named = tuple(name.text for name in said.over)
    over = as_worked(edge, named, stretch[0])
    told = [*([_other_way(said, edge, over)] if over != named and len(said.parts) > 1 else [])]
    return SewnEdge(edge.name, over, number, found), [*told, *_told(said, found, over)]


def _other_way(said: Attachment, edge: Edge, over: Sequence[str]) -> Finding:
    """The note that parts follow the working, whatever the order of the names."""
    message = f"the {edge.name} is worked over {', then '.join(over)}: part 1 begins over {over[0]}"
    help_ = "turn the parts round if you meant them the other way"
    return Finding("sewn-as-worked", message, help_, said.parts_span)


def _fabric(worked: WorkedEdge | None, edge: Edge, number: int) -> Fabric:
    if worked is None or not number:
        return edge_fabric(edge)
    return next(r.fabric for r in worked.rounds if r.number == number)


def _lace(
    edge: Edge,
    worked: WorkedEdge | None,
    work: Wanted | None,
    project: Project,
    number: int,
    stretch: Stretch,
) -> Band | None:
    """How long the lace lies there; None where nothing tells."""
    sizes = sizes_of(project)
    known = shape_known(edge, project, work.work if work else None, sizes)
    if known is None:
        return None
    shape = known.shape
    if not number:
        return Band(mm := shape.touching(0.0, stretch), mm)
    if sizes is None or worked is None or work is None or work.text.reading is None:
        return None
    reading = work.text.reading
    index = [r.number for r in worked.rounds].index(number)
    away = how_it_lies(worked, reading, shape, sizes)[index].away
    laid = laid_rounds(worked, reading, shape)[index]
    return over_stretch(laid, away, shape, sizes, stretch).as_it_lies


def _told(said: Attachment, found: Sewn, over: Sequence[str]) -> list[Finding]:
    """Gathers out of the usual, and lace that is not as long as the cloth."""
    told = []
    for part in found.parts:
        if not part.usual:
            many = "few" if part.ratio < SCANTY else "many"
            message = f"{part.ratio:.2g} : 1 are {many} gathers"
            usual = f"{SCANTY:g} to {FULL:g} : 1 are usual"
            help_ = f"{usual}: for {part.finished_mm:g} mm take {part.finished_mm * SCANTY:.0f} to "
            help_ += f"{part.finished_mm * FULL:.0f} mm of cloth"
            told.append(Finding("gathers-unusual", message, help_, said.parts_span))
    out = found.too_long
    if found.lace is None or not out:
        return told
    where = " and ".join(over) or said.edge
    how = f"{whole(abs(out))} {'longer' if out > 0 else 'shorter'}"
    message = f"the lace of {where} lies {how} than the {_all(said)} mm that it is sewn to"
    can = found.cloth_can_be
    if can.low < can.high and can.low <= found.lace.high and found.lace.low <= can.high:
        gathered = found.lace.middle - fsum(part.plain_mm or 0.0 for part in said.parts)
        help_ = f"draw the gathers up to {whole(gathered)} in all"
    else:
        help_ = f"make its parts come to {whole(found.lace.middle)} in all"
    told.append(Finding("lace-does-not-fit", message, help_, said.parts_span))
    return told


def _all(said: Attachment) -> str:
    return f"{sum(map(finished, said.parts)):g}"
