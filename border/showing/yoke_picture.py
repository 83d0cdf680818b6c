"""The yoke drawn: its wheels joined as they are, its edges as arrowed lines in working order."""

from __future__ import annotations

from cmath import rect
from collections import Counter
from collections.abc import Iterator, Sequence

from msgspec import Struct

from border.showing.blocks import Block, larger_in, stacked
from border.showing.edge_lines import arcs, edge_line, start_mark
from border.showing.face_names import roomiest, size_of_name, turning
from border.showing.svg import INK, PAPER, called, circle, tag, width_of, words
from border.showing.wheel_marks import SIZE, joints_drawn, wheel_drawn
from border.showing.wheels import Wheel, wheels
from border.showing.written_edges import written_edge
from border.text.amounts import some
from border.yoke.edges import Edge, edge_for
from border.yoke.faces import Face
from border.yoke.laying import Laid, lay
from border.yoke.names import names
from border.yoke.placing import placed
from border.yoke.project import Project
from border.yoke.spread import Spread, spread
from border.yoke.turning import mended

MARGIN = 0.95
"""Free space about a part of the yoke, in wheels."""
MOST_DRAWN = 120
"""Wheels of a yoke that are drawn joined: laying out more takes too long."""
MOST_LINES = 12
"""Lines in a column of the legend, where there are three columns or fewer."""


class Numbered(Struct, frozen=True):
    """An edge, begun where its work starts, with its number in the picture."""

    number: int
    edge: Edge


def yoke_picture(title: str, project: Project, edges: Sequence[Edge]) -> str:
    """The picture of a yoke, and of the edges written straight down, as SVG."""
    return stacked(title, yoke_blocks(project, edges))


def yoke_blocks(project: Project, edges: Sequence[Edge]) -> list[Block]:
    """The pieces of the picture, its legend last.

    A faulty yoke is drawn as far as it can be, with the faulty places marked.
    """
    named, _ = names(project)
    written = lay(project, named)
    mend = mended(project, named) if written.whole and not written.lies_flat else None
    laid = lay(mend.project, named) if mend else written
    left = project.hand == "left"
    numbered = [Numbered(n, _begun(edge, project, edges)) for n, edge in enumerate(edges, 1)]
    large = len(named.sections) > MOST_DRAWN or named.too_many
    parts = () if large else spread(laid)
    blocks = [_Part(laid, p, project, numbered, named.sections, written).block() for p in parts]
    on_yoke = {name for face in laid.faces for name in laid.names(face)} if parts else set()
    blocks += [
        Block(*written_edge(one.number, one.edge, left=left))
        for one in numbered
        if one.edge.name not in on_yoke
    ]
    told = [f"it would lie flat as drawn: {mend.what}"] if mend and parts else []
    if large:
        told.append(f"more than {MOST_DRAWN} motifs are not drawn joined: each edge by itself")
    if any('class="faulty' in block.drawn for block in blocks):
        told.append("broken lines, crosses and question marks: what does not fit together")
    larger = larger_in(max((block.width for block in blocks), default=0))
    return [*blocks, _legend(project, numbered, told, larger)]


def _begun(edge: Edge, project: Project, edges: Sequence[Edge]) -> Edge:
    """An edge begun where the first work on it starts."""
    work = next((w for w in project.works if w.edge == edge.name), None)
    return (edge_for(work, edges) if work else None) or edge


class _Part:
    """One part of the yoke, drawn."""

    def __init__(
        self,
        laid: Laid,
        part: Spread,
        project: Project,
        numbered: Sequence[Numbered],
        sections: dict[str, str],
        written: Laid,
    ) -> None:
        assert project.yoke is not None
        self.laid, self.part, self.numbered, self.written = laid, part, numbered, written
        self.loops, self.left = project.yoke.loops, project.hand == "left"
        self.points = placed(part, sections)
        self.wheels = wheels(laid, part, self.points, project.yoke.seam_loops)
        middles = self.points.values()
        self.corner = complex(
            min(p.real for p in middles) - MARGIN, max(p.imag for p in middles) + MARGIN
        )
        self.width = max(p.real for p in middles) + MARGIN - self.corner.real
        self.larger = larger_in(self.width * SIZE)
        self.height = self.corner.imag - min(p.imag for p in middles) + MARGIN

    def paper(self, point: complex) -> complex:
        return (point - self.corner).conjugate() * SIZE

    def block(self) -> Block:
        inside = [wheel_drawn(w, self.fault(w), self.paper) for w in self.wheels.values()]
        inside += joints_drawn(self.wheels, self.paper)
        for face in self.laid.faces:
            if face[0][0] in self.wheels and self._lies_flat(face):
                inside += self.edge(face)
        return Block(self.width * SIZE, self.height * SIZE, "".join(inside))

    def fault(self, wheel: Wheel) -> str | None:
        """What is wrong with a ring, if something is."""
        ring = self.laid.rings[wheel.motif]
        if ring.loops != self.loops:
            return f"{ring.loops} of {self.loops}"
        if ring.shown != self.written.rings[wheel.motif].shown:
            return "order?"
        return None if wheel.runs else "?"

    def _lies_flat(self, face: Face) -> bool:
        return all(dart in self.part.mates or not self.part.round_each[dart[0]] for dart in face)

    def edge(self, face: Face) -> Iterator[str]:
        """One face: its line in working order from its start, its name, and what does not agree."""
        names_of = self.laid.names(face)
        one = next((n for n in self.numbered if names_of == (n.edge.name,)), None)
        if one is not None:
            face = self._from_start(face, one.edge)
        stops = [(self.wheels[motif], self.wheels[motif].runs[n]) for motif, n in face]
        along = arcs(stops, lambda a, b: abs(self.points[a] - self.points[b]))
        if self.left:
            along = along[:1] + along[:0:-1]
        line = edge_line(along, left=self.left, closed=True, paper=self.paper)
        yield tag("g", called(" / ".join(names_of)), line, class_="edge-line")
        if one is not None:
            yield start_mark(along[0], one.number, left=self.left, paper=self.paper)
            yield from self._name(face, one)
        elif len(names_of) > 1:
            yield from self._disagreeing(face)

    def _from_start(self, face: Face, edge: Edge) -> Face:
        """The face begun at the run that the work starts with."""
        if not edge.runs:
            return face
        at = next((i for i, (motif, _) in enumerate(face) if motif == edge.runs[0].motif), 0)
        return face[at:] + face[:at]

    def _name(self, face: Face, one: Numbered) -> Iterator[str]:
        round_it = [self.points[motif] for motif, _ in face]
        name = one.edge.name
        if turning(round_it) > -0.01:
            at = complex(self.width * SIZE / 2, self.height * SIZE - 12)
            yield _edge_name(f"{one.number}  {name}", at, min(18 * self.larger, 44))
            return
        spot, room = roomiest(round_it, list(self.points.values()))
        for text in (name, str(one.number)):  # the legend has the name, too
            size = size_of_name(text, room * SIZE, self.larger)
            if size is not None:
                yield _edge_name(text, self.paper(spot) + 1j * size / 3, size)
                return

    def _disagreeing(self, face: Face) -> Iterator[str]:
        """The runs of a face that have another name than most of it."""
        named_runs = [(motif, n, self.laid.run((motif, n)).edge) for motif, n in face]
        usual = Counter(name for _, _, name in named_runs if name is not None).most_common(1)[0][0]
        for motif, n, name in named_runs:
            if name not in (None, usual):
                wheel = self.wheels[motif]
                at = self.paper(wheel.centre + rect(0.52, wheel.runs[n].middle))
                text = f"{name}?"
                wide = width_of(text, 10) + 6
                box = tag(
                    "rect", x=at.real - wide / 2, y=at.imag - 8, width=wide, height=15, fill=PAPER
                )
                told = words(text, at.real, at.imag + 3, 10, font_weight="bold")
                yield tag("g", box, told, class_="faulty name")


# --- the legend ---------------------------------------------------------------------


def _legend(
    project: Project, numbered: Sequence[Numbered], told: Sequence[str], larger: float
) -> Block:
    lines = [f"{one.number}  {_told(one.edge)}" for one in numbered]
    if project.hand == "left":
        lines.append("the arrows go as the left hand works")
    lines += told
    deep = max(MOST_LINES, -(-len(lines) // 3))
    wide = max([230.0, *(width_of(text, 13) + 24 for text in lines)])
    rows = [
        words(text, 24 + i // deep * wide, 18 + i % deep * 20, 13, text_anchor="start")
        for i, text in enumerate(lines)
    ]
    y = 18 + 20 * min(len(lines), deep)
    if project.yoke is not None:
        of = project.yoke.of
        marks = [("none", f"free {of}", 24)]
        if project.yoke.seam_loops:
            marks.append((INK, f"{of} at a joint, free for the edge beside", 150))
        for fill, text, x in marks:
            rows.append(circle(x + 6, y - 4, 4, fill=fill))
            rows.append(words(text, x + 18, y, 13, text_anchor="start"))
        y += 20
    wide = max([460.0, *(width_of(text, 13) + 40 for text in lines)])
    return Block(
        wide * larger, (y + 12) * larger, tag("g", *rows, transform=f"scale({larger:.2f})")
    )


def _edge_name(text: str, at: complex, size: float) -> str:
    return words(text, at.real, at.imag, size, class_="edge-name", font_style="italic")


def _told(edge: Edge) -> str:
    told = f"{edge.name}: {some(edge.places, edge.of)}"
    if edge.runs:
        told += f" on {some(len(edge.runs), 'motif')}, from {edge.runs[0].motif}"
    return told
