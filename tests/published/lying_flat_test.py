"""Lying flat, against plane and hyperbolic geometry and a published yoke.

Heights to widths of stitches (sc 0.90, hdc 1.30, dc 1.75, tr 2.5) are common practice;
everything else here is geometry, or is named beside its check.
"""

from __future__ import annotations

from itertools import pairwise
from math import acos, cos, hypot, log, pi, radians, sin, tau

import pytest
from lace import growing, laid, line, stitches, swatch
from published.restated import counted, reading_of, wheels

from border.reckoning.edge_shape import Shape, shape_of, with_turning
from border.reckoning.flat import Lies, how_it_lies
from border.reckoning.stitch_sizes import HEIGHT_TO_WIDTH
from border.working.work import work
from border.yoke.edges import Edge, Run

KINDS = ("sc", "hdc", "dc", "tr")


@pytest.mark.parametrize(("stitch", "more"), list(zip(KINDS, (5.7, 8.2, 11.0, 15.7), strict=True)))
def test_a_flat_disc_takes_two_pi_h_over_w_more_stitches_a_round(stitch: str, more: float) -> None:
    """Geometry of the disc: 2 pi h/w, with the ratios above 5.7, 8.2, 11.0 and 15.7, which the
    trade rounds to 6, 8, 12 and 12 to 18 (common practice)."""
    sizes = swatch(stitch)
    disc = line(stitches(6), 0.001, 360)
    high, wide = sizes.heights[stitch], sizes.widths[stitch]
    grows = [(disc.touching(n * high) - disc.touching((n - 1) * high)) / wide for n in (1, 2, 9)]
    assert grows == pytest.approx([more] * 3, abs=0.05)
    assert tau * HEIGHT_TO_WIDTH[stitch] == pytest.approx(more, abs=0.05)


@pytest.mark.parametrize(
    ("stitch", "by", "lies"),
    [
        ("sc", 6, Lies.FLAT),
        ("sc", 3, Lies.CUPS),
        ("sc", 12, Lies.RUFFLES),
        ("hdc", 8, Lies.FLAT),
        ("hdc", 4, Lies.CUPS),
        ("hdc", 16, Lies.RUFFLES),
        ("dc", 12, Lies.FLAT),
        ("dc", 6, Lies.CUPS),
        ("dc", 24, Lies.RUFFLES),
        ("tr", 16, Lies.FLAT),
        ("tr", 8, Lies.CUPS),
        ("tr", 32, Lies.RUFFLES),
    ],
)
def test_discs_worked_by_the_usual_increases(stitch: str, by: int, lies: Lies) -> None:
    """The numbers of the trade lie flat (common practice: 6 sc, 8 hdc, 12 dc, 12 to 18 tr), half
    as many cup and twice as many ruffle: worked round by round from a ring as long as its first
    stitches."""
    sizes = swatch(stitch)
    high = sizes.heights[stitch]
    disc = line(stitches(by), float(by), 360)
    rounds = laid(growing(stitch, by, by, 9), stitches(by), disc, sizes)
    assert rounds[-1].lies is lies
    assert rounds[-1].away.low == pytest.approx(9 * high)


@pytest.mark.parametrize("stitch", KINDS)
def test_a_tube_takes_as_many_stitches_in_every_round(stitch: str) -> None:
    """Geometry of the tube: its rounds are all of one length."""
    sizes = swatch(stitch)
    text = "".join(f"round {n}: 1 {stitch} in each st.\n" for n in range(1, 9))
    tube = line(stitches(40), 40.0, 0)
    rounds = laid(text, stitches(40), tube, sizes)
    assert {r.lies for r in rounds} == {Lies.FLAT}
    assert all(r.length.needed.low == r.length.worked.low == pytest.approx(40) for r in rounds)
    around = laid(text, stitches(40), line(stitches(40), 40.0, 360), sizes)
    assert around[-1].lies is Lies.CUPS
    inside = laid(text, stitches(40), line(stitches(40), 40.0, -360), sizes)
    assert inside[-1].lies is Lies.RUFFLES


def test_a_square_corner_takes_two_h_over_w_more_stitches_a_round() -> None:
    """Geometry of the square: a side of 4 more rounds is 2 h longer for each of them, half of it
    at either corner, so each corner takes 2 h/w: 1.8 sc, 3.5 dc."""
    side, high = 50.0, 2.0
    around = [4 * (side + 2 * n * high) for n in range(5)]
    square = line(stitches(200), 4 * side, 360, corners=4)
    assert [square.touching(n * high) for n in range(5)] == pytest.approx(around)
    inner = line(stitches(200), 4 * side, -360, corners=4)
    assert inner.touching(high) == pytest.approx(4 * (side - 2 * high))
    for stitch, more in (("sc", 1.8), ("dc", 3.5)):
        sizes = swatch(stitch)
        h, w = sizes.heights[stitch], sizes.widths[stitch]
        grown = square.touching(h) - square.touching(0.0)
        assert grown / 4 / w == pytest.approx(more)


@pytest.mark.parametrize("n", [1, 2, 3, 5])
def test_the_radius_of_a_hyperbolic_plane(n: int) -> None:
    """D. Henderson and D. Taimina, "Crocheting the Hyperbolic Plane", Mathematical
    Intelligencer 23 (2001): of rounds of height h with (N + 1)/N times as many stitches each,
    the radius is h / ln((N + 1)/N)."""
    first, rounds = 16 * n**3, 3
    rows = []
    for number in range(1, rounds + 1):
        alone = {1: "", 2: "1 sc in next st, "}.get(n, f"1 sc in each of next {n - 1} st, ")
        rows.append(f"round {number}: *{alone}2 sc in next st; repeat from *.\n")
    sizes = swatch("sc", 2.0, 2.4)
    edge = stitches(first)
    lying = laid("".join(rows), edge, line(edge, 2.0 * first, 0), sizes)
    assert lying[-1].lies is Lies.RUFFLES
    assert lying[-1].radius == pytest.approx(2.4 / log((n + 1) / n))


# --- rows of wheels ------------------------------------------------------------------


def row(shows: int, wheels: int = 12, loops: int = 16, joined: int = 3) -> Edge:
    """A closed edge of wheels that each show so many free loops between two joints."""
    runs = tuple(
        Run(f"w.{i}", "w", shows, shows, frozenset({"w"}), loops, (joined, joined))
        for i in range(1, wheels + 1)
    )
    return Edge("w", True, "loop", runs, shows * wheels, frozenset({"w"}))


def shaped(edge: Edge, wheel: float) -> Shape:
    shape = shape_of(edge, wheel, None, 0.0)
    assert shape is not None
    return shape


@pytest.mark.parametrize("away", [0.5, 3.0, 10.0])
def test_a_flat_round_over_wheels_is_the_outline_of_larger_circles(away: float) -> None:
    """Geometry: all points at one distance from a straight row of touching circles. Measured
    here on a polygon of many corners, drawn point by point."""
    edge = row(5)
    shape = shaped(edge, 20.0)
    reach, step, x = 10 + away, 0.001, -10.0
    drawn = []
    while x < 10.0:
        drawn.append((x, (reach**2 - x**2) ** 0.5))
        x += step
    outline = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(drawn))
    assert shape.shown(0, away) == pytest.approx(outline, rel=1e-3)
    assert sum(shape.turning_of(n) for n in range(12)) == pytest.approx(0.0)


def test_far_out_a_row_of_wheels_is_a_line_that_turns() -> None:
    """Geometry: 2 R for each wheel, and its turning times the distance from the middles. A ring
    of twelve wheels turns once round: outwards on its outer edge, inwards on its inner one."""
    ring = row(7)  # 7 + 3 loops of 16 show outside, 225 degrees of every wheel
    shape = shaped(ring, 20.0)
    assert shape.turning_of(0) == pytest.approx(radians(225 - 180))
    far = 2_000.0
    assert shape.shown(0, far) == pytest.approx(20 + radians(45) * (10 + far), rel=1e-4)
    closed = with_turning(shape, 360)
    assert sum(closed.turning_of(n) for n in range(12)) == pytest.approx(tau)
    # the middles of the wheels stand on a polygon of 12 sides of 20 mm
    assert closed.touching(0.0) == pytest.approx(12 * 20 + tau * 10)


def test_a_chain_over_a_valley_takes_the_straight_way() -> None:
    """Geometry: from 30 degrees before the joint of two wheels to 30 degrees behind it."""
    shape = shaped(row(5), 20.0)
    away = 0.2
    reach, hidden = 10 + away, acos(10 / (10 + away))
    assert hidden < radians(30)
    straight = 2 * (10 - reach * cos(radians(30)))
    before = (0, pi - radians(30))
    behind = (1, radians(30))
    assert shape.apart(before, behind, away) == pytest.approx(straight)
    assert shape.apart(behind, before, away) == pytest.approx(-straight)
    one, other = (0, radians(60)), (0, radians(120))
    assert shape.apart(one, other, away) == pytest.approx(2 * reach * sin(radians(30)))


# --- a published yoke ------------------------------------------------------------------

INCH = 25.4


def test_the_border_of_a_published_yoke_lies_flat_on_its_wheels() -> None:
    """Margaret Sims, "Designs in Crochet" V and VI, Ladies' Home Journal, June 1895: 38 wheels
    round the neck, 1 inch across; 24 stitches and chains to a wheel, 912 in all. Then one is
    1 inch / 24 = 1.06 mm, and the row over the wheels is as long as they are."""
    neck = wheels("neck", 38, 6)
    reading, _ = reading_of("yoke-border")
    worked = work(reading, neck)
    sizes = swatch("dc", INCH / 24)
    edge = shape_of(neck, None, 38 * INCH, 0.0)
    assert edge is not None
    first, second, *_ = how_it_lies(worked, reading, edge, sizes)
    assert counted("yoke-border", neck).total(1) == 912
    assert first.length.worked.high == pytest.approx(38 * INCH)
    assert first.lies is Lies.FLAT
    assert second.lies is Lies.FLAT
    assert second.length.worked.high == pytest.approx(1368 * INCH / 24)
    too_tight = how_it_lies(worked, reading, edge, swatch("dc", 0.85 * INCH / 24))
    assert too_tight[0].lies is Lies.CUPS
    assert too_tight[0].length.out == pytest.approx(-0.15 * 38 * INCH)
