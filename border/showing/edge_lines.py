"""The line of an edge round its wheels: arcs in working order, an arrow on every run.

Points are complex numbers in wheels, the second axis upwards.
"""

from __future__ import annotations

from cmath import rect
from collections.abc import Callable, Iterator, Sequence
from math import acos, asin, pi
from typing import TypeAlias

from border.showing.svg import INK, PAPER, number, tag, words
from border.showing.wheel_marks import ToPaper
from border.showing.wheels import DrawnRun, Wheel

AWAY = 0.54
"""How far the line runs from the middle of a wheel, whose rim is at a half."""
SLACK = 0.04
ARROW = 0.05
SHORTEST = 0.18
"""A shorter arc has no room for an arrow."""

Stop: TypeAlias = tuple[Wheel, DrawnRun]
"""A run on its wheel."""


class Arc:
    """The line along one run: between `start` and `end`, or at one point where there is no room."""

    def __init__(self, wheel: Wheel, run: DrawnRun, before: float, behind: float) -> None:
        self.centre = wheel.centre
        start, end = run.start + _cut(before), run.end - _cut(behind)
        self.start, self.end = (start, end) if end > start else (run.middle, run.middle)

    def at(self, angle: float) -> complex:
        return self.centre + rect(AWAY, angle)

    @property
    def middle(self) -> float:
        return (self.start + self.end) / 2

    @property
    def has_room(self) -> bool:
        return (self.end - self.start) * AWAY >= SHORTEST


def _cut(far: float) -> float:
    """The angle from a joint at which the lines about two wheels so far apart meet."""
    nearest = asin(SLACK / AWAY)
    return max(acos(min(1.0, far / 2 / AWAY)), nearest) if far else 0.0


def arcs(stops: Sequence[Stop], far: Callable[[str, str], float]) -> list[Arc]:
    """The arcs of runs given in the order of their rings.

    `far`: how far two wheels are from each other that are joined, else 0.
    """
    made = []
    for i, (wheel, run) in enumerate(stops):
        before, behind = stops[i - 1][0].motif, stops[(i + 1) % len(stops)][0].motif
        made.append(Arc(wheel, run, far(before, wheel.motif), far(wheel.motif, behind)))
    return made


def edge_line(along: Sequence[Arc], *, left: bool, closed: bool, paper: ToPaper) -> str:
    """The line along arcs in working order, with its arrows.

    `left`: worked by the left hand, each arc is gone from its end to its start.
    """
    size = abs(paper(1) - paper(0))
    steps = []
    for i, arc in enumerate(along):
        first, last = (arc.end, arc.start) if left else (arc.start, arc.end)
        steps.append(("L" if i else "M") + _point(paper(arc.at(first))))
        if first != last:
            middle = arc.middle  # two arcs, so that neither is more than half round
            for angle in (middle, last):
                r = number(AWAY * size)
                steps.append(f"A{r} {r} 0 0 {1 if left else 0} {_point(paper(arc.at(angle)))}")
    drawn = tag("path", d=" ".join(steps) + (" Z" if closed else ""), stroke_width=2.2)
    return drawn + "".join(_arrows(along, left, paper))


def _arrows(along: Sequence[Arc], left: bool, paper: ToPaper) -> Iterator[str]:
    for arc in along:
        if arc.has_room:
            ahead = rect(1, arc.middle + (-pi / 2 if left else pi / 2))
            tip = arc.at(arc.middle) + ahead * ARROW
            side = ahead * 1j * ARROW * 0.8
            back = tip - 2 * ahead * ARROW
            points = " ".join(_point(paper(p)) for p in (tip, back + side, back - side))
            yield tag("polygon", class_="arrow", points=points, fill=INK, stroke="none")


def start_mark(arc: Arc, sign: int, *, left: bool, paper: ToPaper) -> str:
    """A black disc with the number of the edge, where its first run begins."""
    return _disc(paper(arc.centre + rect(AWAY + 0.03, arc.end if left else arc.start)), sign)


def straight_line(start: float, end: float, y: float, sign: int) -> str:
    """An open edge without motifs: a line with its start and an arrow. In pixels."""
    back = end - 10 if end > start else end + 10
    arrow = " ".join(map(_point, (complex(end, y), complex(back, y - 5), complex(back, y + 5))))
    return (
        tag("path", d=f"M{_point(complex(start, y))} L{_point(complex(back, y))}", stroke_width=2.2)
        + tag("polygon", class_="arrow", points=arrow, fill=INK, stroke="none")
        + _disc(complex(start, y), sign)
    )


def _disc(at: complex, sign: int) -> str:
    disc = tag("circle", cx=at.real, cy=at.imag, r=8.5, fill=INK, stroke=PAPER, class_="start")
    return disc + words(str(sign), at.real, at.imag + 3.8, 11, fill=PAPER, font_weight="bold")


def _point(point: complex) -> str:
    return f"{number(point.real)} {number(point.imag)}"
