"""Picots named beside their chains, explained behind a comma, and what may be none."""

from __future__ import annotations

import pytest
from phrases.said import On, cases, said
from reading import read_items

from border.text.tree import Picots

US = "terms: us\nchains count as stitches: yes\n"
LOOPS = On(12, headings=US)
DC = On(36, ("1 dc in each loop",), headings=US)

PERHAPS = "asked perhaps-picot"
MADE = "asked perhaps-just-made"

ONCE = dict.fromkeys(
    (
        "*2 dc in loop, ch 5, p, (ch 4, sc in 4th from hook), ch 1; repeat",
        "*2 dc in loop, ch 5, picot, (4 ch, 1 sc in 1st,) ch 1; repeat",
        "*2 dc in loop, ch 5, picot (4 ch, 1 sc in 1st), ch 1; repeat",
        "*2 dc in loop, ch 5, p of 4 ch, sc in 1st, ch 1; repeat",
        "*2 dc in loop, ch 5, p of 4 ch, 1 sc in first ch, ch 1; repeat",
    ),
    "24 dc, 72 ch, 12 picot; 12 x 1 loop",
) | {
    "*2 dc in loop, ch 5, 4 ch (p) sc in dc, ch 1; repeat": "24 dc, 72 ch, 12 picot; 12 x 1 loop",
    "*2 dc in loop, 4 ch (for p), sc in last dc, 2 dc in same loop; repeat": (
        "48 dc, 12 picot; 12 x 1 loop"
    ),
    # worked again, or into the row, a bracket explains nothing
    "*2 dc in loop, picot, (5 ch, 1 sc in 1st) 3 times, ch 3; repeat": (
        "24 dc, 36 ch, 48 picot; 12 x 1 loop"
    ),
    "*2 dc in loop, picot, (5 ch, 1 sc in next loop); repeat": (
        "12 dc, 6 sc, 30 ch, 6 picot; 6 x 2 loop"
    ),
    "*1 sc in loop, ch 4 (p), sc in next loop; repeat": "12 sc, 6 picot; 6 x 2 loop",
}

BESIDE = {
    "*2 dc in loop, 5 ch p, 1 ch; repeat": f"24 dc, 12 ch, 12 picot; 12 x 1 loop; {PERHAPS}",
    "*2 dc in loop, 5 ch, p, 1 ch; repeat": "24 dc, 72 ch, 12 picot; 12 x 1 loop",
    "*2 dc in loop, 3 ch p 3 ch; repeat": "24 dc, 72 ch, 12 picot; 12 x 1 loop",
    "*2 dc in loop, 5 ch p of 4 ch; repeat": "24 dc, 60 ch, 12 picot; 12 x 1 loop",
    "*2 dc in loop, p ch 4; repeat": f"24 dc, 48 ch, 12 picot; 12 x 1 loop; {PERHAPS}",
    "*2 dc in loop, p, ch 4; repeat": "24 dc, 48 ch, 12 picot; 12 x 1 loop",
    "*2 dc in loop, double p, 1 ch; repeat": f"24 dc, 12 ch, 24 picot; 12 x 1 loop; {PERHAPS}",
    "*2 dc in loop, a double picot; repeat": f"24 dc, 24 picot; 12 x 1 loop; {PERHAPS}",
    "*2 dc in loop, p, 4 ch, sc in 1st, ch 1; repeat": (
        f"24 dc, 12 ch, 24 picot; 12 x 1 loop; {PERHAPS}"
    ),
    "*2 dc in loop, 2 p, 4 ch, sc in 1st, ch 1; repeat": "24 dc, 12 ch, 36 picot; 12 x 1 loop",
}

LEAVES = {
    "*ch 5, sc in 2d ch from hook, hdc in next, dc in next 2, sk 2, sc in next; repeat": (
        f"6 hdc, 12 dc, 6 sc, 18 ch, 6 picot; 6 x 6 st; {MADE}"
    ),
    "*ch 6, sc in 3d ch from hook, dc in each of next 3, sk 2, sc in next; repeat": (
        f"18 dc, 6 sc, 18 ch, 6 picot; 6 x 6 st; {MADE}"
    ),
    # what stands behind it is no more than a picot has
    "*ch 5, sc in 3d ch from hook, ch 2, sk 2, sc in next dc; repeat": (
        "12 sc, 48 ch, 12 picot; 12 x 3 st"
    ),
    "*ch 6, sc in 4th ch from hook, dc in next, sk 1; repeat": "18 dc, 36 ch, 18 picot; 18 x 2 st",
    "*ch 3, picot of 2, hdc in next st, sk 2; repeat": "12 hdc, 36 ch, 12 picot; 12 x 3 st",
}

ON_ITS_STITCH = {
    "*dc in dc, ch 4, sc in dc, dc in same place, ch 2, sk 2; repeat": (
        f"18 dc, 9 sc, 54 ch; 9 x 4 dc; {PERHAPS}"
    ),
    "*dc in dc, ch 3, sc in dc, sk 2; repeat": f"9 dc, 9 sc, 27 ch; 9 x 4 dc; {PERHAPS}",
    "*dc in dc, ch 3, sc in dc, ch 3; repeat": "18 dc, 18 sc, 108 ch; 18 x 2 dc",
}


@cases((LOOPS, ONCE))
def test_a_picot_that_is_explained_is_made_once(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((LOOPS, BESIDE))
def test_chains_beside_a_picot_are_told(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((DC, LEAVES), (DC, ON_ITS_STITCH))
def test_what_may_go_into_chains_just_made_is_asked(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    ("steps", "sizes"),
    [
        ("picot of 4, ch 2, another picot", [4, 4]),
        ("picot of 4, ch 2, a picot", [4, 4]),
        ("picot of 4, ch 2, picot of 5, ch 2, another picot", [4, 5, 5]),
        ("picot of 4, ch 2, picot of 5, ch 2, a picot", [4, 5, 3]),
        ("picot of 4, ch 2, picot of 4, ch 2, 2 picots", [4, 4, 4]),
        ("picot, ch 2, picot of 4", [3, 4]),
        ("picot (5 ch), ch 2, picot of 4, ch 2, picot", [5, 4, 5]),
        ("picot (5 ch), ch 2, picot of 4, ch 2, another picot", [5, 4, 4]),
    ],
)
def test_another_picot_is_like_the_one_before_it(steps: str, sizes: list[int]) -> None:
    items = read_items(f"1 sc in next st, {steps}")
    assert [item.chains for item in items if isinstance(item, Picots)] == sizes
