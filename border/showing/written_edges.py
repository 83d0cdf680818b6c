"""An edge written straight down, drawn: a ring of motifs, or a row of them where it is open."""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Sequence
from math import pi, sin, tau

from border.showing.edge_lines import arcs, edge_line, start_mark, straight_line
from border.showing.svg import called, tag, words
from border.showing.wheel_marks import SIZE, joints_drawn, wheel_drawn
from border.showing.wheels import DrawnJoint, DrawnRun, Wheel
from border.text.amounts import some
from border.yoke.edges import Edge

MARGIN = 0.85
MOST_WHEELS = 300
"""An edge of more motifs is drawn without them."""
MOST_DRAWN = 40
"""No more places than these are drawn on a wheel."""


def written_edge(number: int, edge: Edge, *, left: bool) -> tuple[float, float, str]:
    """Width and height in pixels, and the edge drawn. The line runs below a row, round a ring."""
    if not 0 < len(edge.runs) <= MOST_WHEELS:
        return _plain(number, edge, left)
    runs = [(run.motif, run.places) for run in edge.runs]
    if left:  # they come in working order; a ring is drawn in the right-handed one
        runs = runs[:1] + runs[:0:-1] if edge.closed else runs[::-1]
    ring = edge.closed and len(runs) > 2
    drawn = _wheels(
        runs, _ring(len(runs)) if ring else [complex(i) for i in range(len(runs))], ring
    )
    middles = [wheel.centre for wheel in drawn]
    corner = complex(min(p.real for p in middles) - MARGIN, max(p.imag for p in middles) + MARGIN)
    width = max(p.real for p in middles) + MARGIN - corner.real
    height = corner.imag - min(p.imag for p in middles) + MARGIN

    def paper(point: complex) -> complex:
        return (point - corner).conjugate() * SIZE

    def far(a: str, b: str) -> float:
        return 1.0 if ring or (a != b and abs(at[a] - at[b]) < 1.5) else 0.0

    at = {wheel.motif: wheel.centre for wheel in drawn}
    along = arcs([(wheel, wheel.runs[0]) for wheel in drawn], far)
    if left:
        along = along[:1] + along[:0:-1] if edge.closed else along[::-1]
    inside = [wheel_drawn(wheel, None, paper) for wheel in drawn]
    inside += joints_drawn({wheel.motif: wheel for wheel in drawn}, paper)
    line = edge_line(along, left=left, closed=ring, paper=paper)
    inside.append(tag("g", called(edge.name), line, class_="edge-line"))
    inside.append(start_mark(along[0], number, left=left, paper=paper))
    inside.append(_name(f"{number}  {edge.name}", width * SIZE / 2, height * SIZE - 12))
    return width * SIZE, height * SIZE, "".join(inside)


def _ring(count: int) -> list[complex]:
    """The middles of wheels that touch in a ring, counter-clockwise from below."""
    return [rect(0.5 / sin(pi / count), tau * i / count - pi / 2) for i in range(count)]


def _wheels(runs: Sequence[tuple[str, int]], middles: list[complex], ring: bool) -> list[Wheel]:
    made = []
    for i, (motif, places) in enumerate(runs):
        here, behind = middles[i], middles[(i + 1) % len(runs)]
        start = phase(middles[i - 1] - here) if ring else pi
        end = start + (phase(behind - here) - start) % tau if ring else tau
        drawn = range(min(places, MOST_DRAWN))
        free = tuple(start + (end - start) * (n + 1) / (places + 1) for n in drawn)
        others = {i - 1: start, i + 1: end} if len(runs) > 1 else {}
        joints = tuple(
            DrawnJoint(runs[j % len(runs)][0], angle, True, True)
            for j, angle in others.items()
            if ring or 0 <= j < len(runs)
        )
        run = DrawnRun(None if places > MOST_DRAWN else "", start, end, free, ())
        made.append(Wheel(motif, here, (run,), joints))
    return made


def _plain(number: int, edge: Edge, left: bool) -> tuple[float, float, str]:
    """An edge of plain places: a bare ring, or a bare line, with what it has."""
    side = 2 * MARGIN * SIZE
    middle = side / 2
    told = words(some(edge.places, edge.of), middle, middle + 4, 12, class_="count")
    name = _name(f"{number}  {edge.name}", middle, side - 8)
    if edge.closed:
        run = DrawnRun(None, -pi / 2, 3 * pi / 2, (), ())
        along = arcs([(Wheel(edge.name, 0j, (run,), ()), run)], lambda a, b: 0.0)

        def paper(point: complex) -> complex:
            return complex(middle, middle) + point.conjugate() * SIZE

        drawn = edge_line(along, left=left, closed=True, paper=paper)
        drawn += start_mark(along[0], number, left=left, paper=paper)
    else:
        start, end = (side - 20, 20.0) if left else (20.0, side - 20)
        drawn = straight_line(start, end, middle + 16, number)
    drawn = tag("g", called(edge.name), drawn, class_="edge-line")
    return side, side, drawn + told + name


def _name(text: str, x: float, y: float) -> str:
    return words(text, x, y, 18, class_="edge-name", font_style="italic")
