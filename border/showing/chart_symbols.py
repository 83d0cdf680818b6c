"""The standard symbols of crochet charts.

JIS L 0201 (1995), as later pattern literature carries them: a chain is an open
oval, a slip stitch a filled dot, a single crochet (US) a cross, a half double a T,
double, treble and double treble a T with one, two, three strokes across its stem;
a picot is a ring of chains closed by a dot. Feet that meet are worked into a
stitch, feet that stand apart into a space.
"""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Iterator, Sequence
from math import degrees, pi, tau

from border.showing.chart_parts import OVAL, Symbol, picot_radius
from border.showing.svg import INK, circle, number, tag
from border.showing.wheel_marks import ToPaper
from border.stitches import STITCHES
from border.working.fabric import CHAIN, PICOT

BAR = 4.5
"""Half of the bar of a T, and of an arm of a cross."""
STROKES = {"dc": 1, "tr": 2, "dtr": 3, "trtr": 4}
FIRST_STROKE, NEXT_STROKE = 5.5, 4.2
"""How far the first stroke is from the top of a stem, and the others from it."""
BULGE = 3.2
"""How far legs that meet at both ends stand apart in the middle."""


def symbol_drawn(symbol: Symbol, paper: ToPaper) -> str:
    """One symbol, marked with the stitch's canonical name as its class."""
    match symbol.kind:
        case k if k == CHAIN:
            inside = _oval(symbol.top, symbol.slant, paper)
        case k if k == PICOT:
            inside = "".join(_picot(symbol, paper))
        case "ss":
            at = paper(symbol.top - 2j)
            dot = circle(at.real, at.imag, 2.6, fill=INK)
            inside = dot + _thin(symbol.top - 2j, symbol.feet, paper)
        case "sc":
            middle = symbol.top - 1j * BAR
            arms = [(middle - arm, middle + arm) for arm in (BAR, BAR * 1j)]
            inside = _strokes(arms, paper) + _thin(middle - BAR * 1j, symbol.feet, paper)
        case _:
            inside = _tee(symbol, paper)
    return tag("g", inside, class_=f"symbol {symbol.kind}")


def _oval(at: complex, slant: complex, paper: ToPaper, half: float = OVAL / 2 - 0.7) -> str:
    slant, at = paper(at + slant) - paper(at), paper(at)
    turned = f"rotate({degrees(phase(slant)):.0f} {_point(at)})"
    return tag(
        "ellipse", cx=round(at.real, 1), cy=round(at.imag, 1), rx=half, ry=2.5, transform=turned
    )


def _picot(symbol: Symbol, paper: ToPaper) -> Iterator[str]:
    radius = picot_radius(symbol.size)
    middle = symbol.top + 1j * (radius + 4)
    for n in range(1, symbol.size + 1):
        angle = -pi / 2 + tau * n / (symbol.size + 1)
        yield _oval(middle + rect(radius, angle), rect(1, angle) * 1j, paper, 3.6)
    foot = paper(middle - 1j * radius)
    yield circle(foot.real, foot.imag, 1.8, fill=INK)


def _tee(symbol: Symbol, paper: ToPaper) -> str:
    """Legs joined at the top under one bar, each with its strokes."""
    lines = [(symbol.top - BAR, symbol.top + BAR)]
    bows = []
    strokes = STROKES.get(symbol.kind, 0)
    legs = len(symbol.feet)
    met = legs > 1 and symbol.feet[0] == symbol.feet[-1]
    for n, foot in enumerate(symbol.feet):
        stem = symbol.top - foot
        ahead = stem / (abs(stem) or 1.0)
        side = ahead * 1j * (n - (legs - 1) / 2) * 2 * BULGE if met else 0j
        start = foot + ahead * 1.2
        if met:
            bows.append((start, (start + symbol.top) / 2 + 2 * side, symbol.top))
        else:
            lines.append((start, symbol.top))
        for k in range(strokes):
            far = FIRST_STROKE + k * NEXT_STROKE
            share = 1 - far / (abs(stem) or 1.0)  # from the foot; a bowed leg is a parabola
            at = foot + stem * share + side * 4 * share * (1 - share)
            stroke = ahead * rect(3.6, -pi / 4 - pi / 4 * 0.6)
            lines.append((at - stroke, at + stroke))
    bowed = (f"M{_point(paper(a))}Q{_point(paper(b))} {_point(paper(c))}" for a, b, c in bows)
    return _strokes(lines, paper, "".join(bowed))


def _strokes(
    lines: Sequence[tuple[complex, complex]], paper: ToPaper, bowed: str = "", **how: float
) -> str:
    """Straight lines, and bowed ones, as one path."""
    told = "".join(f"M{_point(paper(a))}L{_point(paper(b))}" for a, b in lines)
    return tag("path", d=told + bowed, **how)


def _thin(a: complex, feet: Sequence[complex], paper: ToPaper) -> str:
    """From a low symbol down to what it is worked into."""
    down = [(a, foot + (1j if (a - foot).imag > 2 else 0)) for foot in feet]
    return _strokes(down, paper, stroke_width=0.6)


def _point(point: complex) -> str:
    """To the tenth: a chart has very many of them."""
    return f"{number(round(point.real, 1))} {number(round(point.imag, 1))}"


def as_shown(kind: str, at: complex, size: int) -> Symbol:
    """A symbol for the legend: it stands on a point."""
    if kind == CHAIN:
        return Symbol(CHAIN, at + 5j)
    if kind == PICOT:
        return Symbol(PICOT, at - 2j, size=size)
    return Symbol(kind, at + 9j * max(STITCHES[kind].height, 1), (at,))
