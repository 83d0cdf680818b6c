"""Printed marks round a repeat become stars and brackets."""

from __future__ import annotations

import pytest
from reading import written

STAR = "*1 dc, ch 2, skip 2; repeat from *"


@pytest.mark.parametrize(
    "said",
    [
        "* 1 dc, ch 2, skip 2; repeat from *",
        "* 1 dc, ch 2, skip 2 *; repeat from *",
        "* 1 dc, ch 2, skip 2 *; continue from * to *",
        "* 1 dc, ch 2, skip 2, * repeat",
        "+ 1 dc, ch 2, skip 2; repeat from +",
        "+ 1 dc, ch 2, skip 2 +; repeat from + to the end",
        "\u2020 1 dc, ch 2, skip 2; repeat from \u2020",
        "X 1 dc, ch 2, skip 2 X repeat",
        "** 1 dc, ch 2, skip 2 **; repeat from ** to **",
        "(a) 1 dc, ch 2, skip 2 (a); repeat from (a)",
        "* 1 dc, ch 2, skip 2; work from star",
    ],
)
def test_a_mark_is_a_star(said: str) -> None:
    assert written(said) == STAR


@pytest.mark.parametrize(
    "said",
    [
        "x 1 dc, ch 2, skip 2 x 8 times",
        "{1 dc, ch 2, skip 2} 8 times",
        "[1 dc, ch 2, skip 2, 8 times]",
    ],
)
def test_a_pair_of_marks_with_a_number_is_a_bracket(said: str) -> None:
    assert written(said) == "(1 dc, ch 2, skip 2) 8 times"


def test_a_number_may_stand_before_the_star_that_it_goes_back_to() -> None:
    counted = "*1 dc, ch 2, skip 2; repeat from * 4 times in all, 3 sc"
    assert written("* 1 dc, ch 2, skip 2; 3 times from *, 3 sc") == counted
    assert written("* 1 dc, ch 2, skip 2; repeat 3 times more from *, 3 sc") == counted


def test_from_one_mark_to_another() -> None:
    assert written("* 1 dc, ch 2 ** skip 2; repeat from * to **") == (
        "1 dc, ch 2, skip 2, (1 dc, ch 2) once"
    )
