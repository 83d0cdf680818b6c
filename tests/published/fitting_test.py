"""A remainder fitted as a book says, by adjustments of one's own piece of work, and by the plan."""

from __future__ import annotations

import pytest
from published.restated import Counted, counted, reading_of, wheels
from worked import read_text, sections

from border.planning.costs import Costs, Curve
from border.planning.offers import Task
from border.planning.plans import plan_all
from border.planning.spots import Spots, spots_of
from border.text.readings import Reading
from border.working.adjusting import Adjustment
from border.yoke.edges import Edge

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


# --- the plan beside the rules of the books ---------------------------------------------


def planned(reading: Reading, edge: Edge, curve: Curve) -> tuple[tuple[Adjustment, ...], Spots]:
    """The plan that the program makes by itself, and the spots of the edge."""
    spots = spots_of(edge, [], {})
    (found,) = plan_all([Task(reading, edge, spots, Costs(), curve)])
    return found.plans[0].adjustments, spots


def apart(plan: tuple[Adjustment, ...], spots: Spots) -> bool:
    """Whether no two places are eased in at one spot, or at spots side by side."""
    orders = [next(s.order for s in spots.spots if s.at == a.at) for a in plan]
    alone = all(abs(a.by) == 1 for a in plan) and len({*orders}) == len(orders)
    return alone and not any(
        spots.neighbours(a, b) for i, a in enumerate(orders) for b in orders[:i]
    )


def test_the_plan_for_the_night_cap_is_its_books_remedy() -> None:
    """The Ladies' Work-Book (PG 16605).

    The book misses one for two, here and there, to come to its 114 squares. So
    does the plan: six times, since the book's five are one too few.
    """
    cap = wheels("cap", 12, 28, of="stitch")
    plan, spots = planned(reading_of("night-cap-fitted")[0], cap, Curve.STRAIGHT)
    assert [(a.round, a.by) for a in plan] == 6 * [(1, -1)]
    assert apart(plan, spots)
    after = counted("night-cap-fitted", cap, plan)
    assert after.told() == []
    assert after.repeats(1) == [(SQUARES, {"stitch": 3})]
    assert after.repeats(2) == [(19, {"st": 18})]


@pytest.mark.parametrize("takes", [10, 20, 25])
def test_four_loops_too_many_are_taken_in_at_four_places_apart(takes: int) -> None:
    """The Ladies' Work-Book (PG 16605), a border for a toilet cover.

    The book's rule: where a side has 4 loops more than can be used, two are taken
    together at 4 places, widely apart. The side and its row are ours.
    """
    side = sections("side 8 8 8 8 8 8 8 8 8 8 8 8 8")
    row = f"*1 sc in next loop, ch 9, skip {takes - 1} loops; repeat from *"
    reading, _ = read_text(f"round 1: {row}.\nround 2: 1 sc in each space, with ch 9 between.")
    assert side.places % takes == 4
    plan, spots = planned(reading, side, Curve.STRAIGHT)
    assert [(a.round, a.by) for a in plan] == 4 * [(1, 1)]
    assert apart(plan, spots)


@pytest.mark.parametrize("curve", [Curve.STRAIGHT, Curve.OUT])
def test_eights_and_five_over_gain_three_at_three_corners(curve: Curve) -> None:
    """The Ladies' Work-Book (PG 16605), a netted border.

    The book's rule: with eights and 5 over, 3 are added, one in each of three
    corners. The square and its row are ours.
    """
    square = sections(*("side 8 8 8", "corner 1") * 3, "side 8 8 9", "corner 1")
    row = "*1 sc in next loop, ch 9, skip 7 loops; repeat from *"
    reading, _ = read_text(f"round 1: {row}.\nround 2: 1 sc in each space, with ch 9 between.")
    assert square.places % 8 == 5
    plan, spots = planned(reading, square, curve)
    assert [(a.round, a.by) for a in plan] == 3 * [(1, -1)]
    corners = [name for a in plan for name in a.at.split(" | ") if name.startswith("corner")]
    assert len({*corners}) == 3
    assert apart(plan, spots)


@pytest.mark.parametrize("side", [30, 60])
def test_none_is_missed_at_the_corners_of_a_night_cap_border(side: int) -> None:
    """Ann S. Stephens, The Ladies' Complete Guide to Crochet, 1854 (PG 73303).

    The rule is the book's; the counts are arithmetic, on a square of our own.
    """
    square = sections(*(f"side {side}", "corner 3") * 4)
    done = counted("night-cap-border", square)
    assert done.told() == []
    trebles = 4 * (side // 3 + 3)
    assert done.made(1) == {"dc": trebles, "ch": 2 * trebles}
    assert done.rounds[1].spaces == trebles
    plain = counted("night-cap-border", sections(*(f"side {side + 1}", "corner 3") * 4))
    assert plain.told() == [("row-does-not-close", 1)]
    assert sum(plain.left_over(1)) == 4
