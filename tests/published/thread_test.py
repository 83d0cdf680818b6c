"""How fine a thread is: by the standards, by published tables, and by a library of units."""

from __future__ import annotations

from typing import Any

import pint
import pytest

from border.findings import Span
from border.reckoning.sizes import (
    MAKERS_DIFFER,
    SIZES,
    of_size,
    tex_of_den,
    tex_of_ne,
    tex_of_nm,
)

UNITS: Any = pint.UnitRegistry()  # how it is typed differs between versions of the library


@pytest.mark.parametrize(
    ("den", "tex"),
    [(9, 1), (10, 1.1), (20, 2.2), (100, 11.1), (150, 16.7), (300, 33.3), (900, 100)],
)
def test_den(den: float, tex: float) -> None:
    """ISO 1144: tex is grams in 1000 m; den is grams in 9000 m, so 1 tex = 9 den. The rounded
    pairs are those of published conversion tables (from memory)."""
    assert tex_of_den(den) == pytest.approx(tex, abs=0.05)


@pytest.mark.parametrize(
    ("nm", "tex"), [(10, 100), (20, 50), (28, 35.7), (50, 20), (60, 16.7), (100, 10), (1000, 1)]
)
def test_nm(nm: float, tex: float) -> None:
    """ISO 1144: Nm is metres in a gram, so Nm x tex = 1000 (the pairs follow from it)."""
    assert tex_of_nm(nm) == pytest.approx(tex, abs=0.05)


@pytest.mark.parametrize(
    ("ne", "tex"),
    [(1, 590.5), (6, 98.4), (8, 73.8), (20, 29.5), (30, 19.7), (40, 14.8), (60, 9.84)],
)
def test_ne(ne: float, tex: float) -> None:
    """The cotton count: hanks of 840 yards in a pound, tex = 590.5 / Ne (ISO 2060 and ISO 1144,
    as carried by textile handbooks; the pairs from memory)."""
    assert tex_of_ne(ne) == pytest.approx(tex, rel=0.0005, abs=0.05)


@pytest.mark.parametrize("count", [0.5, 3, 8, 20, 77.7, 120])
def test_a_library_of_units_converts_the_same(count: float) -> None:
    """pint, whose table of textile units is its own."""
    assert tex_of_den(count) == pytest.approx((count * UNITS.denier).to("tex").magnitude)
    assert tex_of_ne(count) == pytest.approx(
        (1 / (count * UNITS.number_english)).to("tex").magnitude
    )
    assert tex_of_nm(count) == pytest.approx((1 / (count * UNITS.number_meter)).to("tex").magnitude)


MEASURED = {"10": 184, "20": 129, "30": 102, "40": 91, "50": 87, "60": 66, "80": 54, "100": 51}
"""Measured threads of several makers (tattingcorner.com): size number to tex."""


def test_sizes_are_those_of_the_table_of_measured_threads() -> None:
    assert {size: fine.tex for size, fine in SIZES.items()} == MEASURED


@pytest.mark.parametrize("size", MEASURED)
def test_makers_differ_by_a_tenth_and_more(size: str) -> None:
    """ "10 % and more" is common practice."""
    fine = SIZES[size]
    assert fine.low == round(MEASURED[size] * (1 - MAKERS_DIFFER))
    assert fine.high >= round(MEASURED[size] * (1 + MAKERS_DIFFER))
    assert not fine.exact


@pytest.mark.parametrize(
    ("size", "grams", "metres"),
    [
        ("10", 25, 111.6),  # 122 yards
        ("10", 50, 265),
        ("20", 25, 192.0),  # 210 yards
        ("40", 25, 274.3),  # 300 yards
        ("80", 10, 168.2),  # 184 yards
    ],
)
def test_what_balls_weigh_by_their_length_lies_in_the_band(
    size: str, grams: float, metres: float
) -> None:
    """Labels of balls of crochet and tatting cotton, from memory."""
    assert SIZES[size].low <= 1000 * grams / metres <= SIZES[size].high


@pytest.mark.parametrize("size", ["40", " 40 ", "No. 40", "no 40", "No.40"])
def test_a_size_may_be_written_as_on_the_ball(size: str) -> None:
    assert of_size(size) == (SIZES["40"], ())


def test_an_unknown_size_names_those_that_are_known() -> None:
    span = Span("yoke.toml", 3, 7)
    fine, (finding,) = of_size("45", span)
    assert fine is None
    assert finding.code == "bad-value"
    assert finding.span == span
    assert "45" in finding.message
    assert finding.help is not None
    assert "10, 20, 30, 40, 50, 60, 80, 100" in finding.help
    assert "tex" in finding.help
