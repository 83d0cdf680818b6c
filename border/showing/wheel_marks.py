"""A wheel drawn: its loops, their numbers, its name, and what is faulty about it.

A free loop is an open ring on the rim, a seam loop a filled one. A wheel whose
loops do not come right has a broken rim and shows its sum; a joint that does not
hold is a broken line with a cross on it.
"""

from __future__ import annotations

from cmath import rect
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import TypeAlias

from border.showing.svg import INK, PAPER, called, circle, fitting, line, shortened, tag, words
from border.showing.wheels import DrawnJoint, Wheel

SIZE = 112.0
"""Pixels across a wheel."""
LOOP = 3.2
NAME_WIDE = 66.0
"""Room for a name in the middle of a wheel, in pixels."""
LONGEST = 3
"""Lines of a name."""
BROKEN = "5 4"

ToPaper: TypeAlias = Callable[[complex], complex]
"""From wheels, the second axis upwards, to pixels."""


def wheel_drawn(wheel: Wheel, fault: str | None, paper: ToPaper) -> str:
    """One wheel. `fault`: what is wrong with its ring, in a word or two."""
    at = paper(wheel.centre)
    rim = circle(at.real, at.imag, SIZE / 2, class_="wheel")
    if fault:
        rim = circle(
            at.real,
            at.imag,
            SIZE / 2,
            class_="faulty wheel",
            stroke_dasharray=BROKEN,
            stroke_width=3,
        )
    told = [fault] if fault else []
    return "".join((rim, *_loops(wheel, paper), *_name(wheel.motif, told, at)))


def _loops(wheel: Wheel, paper: ToPaper) -> Iterator[str]:
    for run in wheel.runs:
        for angle in run.free:
            at = paper(wheel.centre + rect(0.46, angle))
            yield circle(at.real, at.imag, LOOP, class_="loop")
        for angle in run.seams:
            at = paper(wheel.centre + rect(0.46, angle))
            yield circle(at.real, at.imag, LOOP - 0.4, class_="seam", fill=INK)
        if run.edge is not None:
            at = paper(wheel.centre + rect(0.37, run.middle))
            yield words(str(len(run.free)), at.real, at.imag + 4, 12, class_="count")


def _name(name: str, told: Sequence[str], at: complex) -> Iterator[str]:
    parts = name.split(" ")
    if len(parts) > LONGEST:
        parts = [*parts[: LONGEST - 1], " ".join(parts[LONGEST - 1 :])]
    lines = [*parts, *told]
    size = min(fitting(part, NAME_WIDE, 15, 7) for part in lines)
    if len(lines) > 1:
        size = min(size, 14)
    y = at.imag - (len(lines) - 1) * size * 0.55 + size * 0.35
    spans = [
        words(shortened(part, NAME_WIDE, size), at.real, y + i * size * 1.1, size, font_weight=bold)
        for i, part in enumerate(lines)
        for bold in ("bold" if i >= len(parts) else "normal",)
    ]
    yield tag("g", called(name), *spans, class_="name")


# --- joints ---------------------------------------------------------------------------


def joints_drawn(drawn: Mapping[str, Wheel], paper: ToPaper) -> Iterator[str]:
    """A knot where two wheels touch, a bar where they cannot, a cross where a joint fails."""
    for wheel in drawn.values():
        for joint in wheel.joints:
            other = drawn.get(joint.other)
            if joint.flat and other is not None:
                if wheel.motif < joint.other:
                    yield _knot(wheel, other, paper)
                    yield from _uneven(wheel, joint, other, paper)
            elif not (joint.agreed and wheel.motif > joint.other):
                yield _cross(wheel, joint, other, paper)


def _knot(wheel: Wheel, other: Wheel, paper: ToPaper) -> str:
    across = other.centre - wheel.centre
    far = abs(across)
    ahead = across / far
    half = max(far / 2 - 0.5, 0.0) + 0.012
    middle = wheel.centre + across / 2
    a, b = paper(middle - ahead * half), paper(middle + ahead * half)
    return line(a.real, a.imag, b.real, b.imag, class_="joint", stroke_width=9)


def _uneven(wheel: Wheel, joint: DrawnJoint, other: Wheel, paper: ToPaper) -> Iterator[str]:
    """The two numbers of a joint that its wheels do not agree on, each on its side."""
    if joint.loops[0] == joint.loops[1]:
        return
    across = other.centre - wheel.centre
    marks = []
    for loops, side in zip(joint.loops, (-1, 1), strict=True):
        at = paper(wheel.centre + across / 2 + side * 0.1 * across / abs(across))
        marks.append(circle(at.real, at.imag, 9, fill=PAPER))
        marks.append(words(f"{loops}?", at.real, at.imag + 4, 12, font_weight="bold"))
    yield tag("g", *marks, class_="faulty joint")


def _cross(wheel: Wheel, joint: DrawnJoint, other: Wheel | None, paper: ToPaper) -> str:
    """A joint that does not hold, or does not lie flat with the others."""
    start = wheel.centre + rect(0.5, joint.angle)
    end = other.centre if other else wheel.centre + rect(0.78, joint.angle)
    if other is not None and other is not wheel:
        end -= (end - start) / (abs(end - start) or 1.0) * 0.5
    at = start + (end - start) * (0.35 if other else 1.0)
    a, b, c = paper(start), paper(end), paper(at)
    arm = 7.0
    marks = (
        line(a.real, a.imag, b.real, b.imag, stroke_width=2.6, stroke_dasharray=BROKEN),
        circle(c.real, c.imag, 10, fill=PAPER),
        line(c.real - arm, c.imag - arm, c.real + arm, c.imag + arm, stroke_width=3.2),
        line(c.real - arm, c.imag + arm, c.real + arm, c.imag - arm, stroke_width=3.2),
    )
    label = shortened(joint.other, 90, 11)
    told = () if other else (words(label, c.real, c.imag + 24, 11, font_weight="bold"),)
    return tag("g", *marks, *told, class_="faulty joint")
