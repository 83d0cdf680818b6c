"""A remainder fitted as a book says, by adjustments of one's own piece of work."""

from __future__ import annotations

import pytest
from published.restated import Counted, counted, wheels

from border.working.adjusting import Adjustment

SQUARES = 114  # [book], six squares to each of the 19 repeats of the next row


def fitted(times: int) -> Counted:
    """The row on 336 stitches in 12 parts, one missed for two in so many of them."""
    adjustments = [Adjustment(1, f"cap.{i}", -1) for i in range(1, times + 1)]
    return counted("night-cap-fitted", wheels("cap", 12, 28, of="stitch"), adjustments)


def test_the_row_of_a_night_cap_comes_to_114_squares_with_six_misses_saved() -> None:
    """The Ladies' Work-Book (PG 16605). 114 squares are the book's; 3 x 114 - 6 = 336."""
    cap = fitted(6)
    assert cap.told() == []
    assert cap.not_closing() == []
    assert cap.repeats(1) == [(SQUARES, {"stitch": 3})]
    assert cap.made(1) == {"dc": SQUARES, "ch": 2 * SQUARES}
    assert [(a.at, a.by) for a in cap.rounds[1].adjustments] == [
        (f"cap.{i}", -1) for i in range(1, 7)
    ]
    assert cap.repeats(2) == [(19, {"st": 18})]
    assert cap.made(2) == {"dc": 19 * 8, "ch": 19 * 10}


def test_the_five_misses_that_the_book_saves_are_one_too_few() -> None:
    """The Ladies' Work-Book (PG 16605): "by 5" wants 337 stitches, and there are 336."""
    cap = fitted(5)
    assert ("row-does-not-close", 1) in cap.told()
    assert cap.repeats(1) == [(SQUARES - 1, {"stitch": 3})]
    assert cap.left_over(1) == [2]


@pytest.mark.parametrize(("times", "squares"), [(0, 112), (3, 113), (6, 114), (9, 115)])
def test_three_misses_saved_are_one_square_more(times: int, squares: int) -> None:
    """The Ladies' Work-Book (PG 16605). Arithmetic: 336 = 3 x 112."""
    cap = fitted(times)
    assert 1 not in cap.not_closing()
    assert cap.repeats(1) == [(squares, {"stitch": 3})]
