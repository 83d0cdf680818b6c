"""What stands after some of the stitches: `with a picot after every 2nd`."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, FIVES, LOOPS, STITCHES, On, cases, said

IN_ONE_PLACE = {
    "12 treble in the next loop, with a picot of 4 ch after every second one; repeat": (
        "144 dc, 72 picot; 12 x 1 loop"
    ),
    "7 treble in each loop with a p. after every 2nd": "84 dc, 36 picot; 12 x 1 loop",
    "7 treble in each loop with a picot of 4 chain after each treble": (
        "84 dc, 84 picot; 12 x 1 loop"
    ),
    "8 treble in next loop with a p after the third; repeat": "96 dc, 12 picot; 12 x 1 loop",
    "8 treble, with a p after the 3rd and 5th, in next loop; repeat": (
        "96 dc, 24 picot; 12 x 1 loop"
    ),
    "8 treble in each loop with a picot after the second, fourth and the last": (
        "96 dc, 36 picot; 12 x 1 loop"
    ),
    **dict.fromkeys(
        (
            f"*7 treble in loop with a picot after each {last}, 1 plain in next loop; repeat"
            for last in ("treble except last", "treble but the last", "except the last treble")
        ),
        "42 dc, 6 sc, 36 picot; 6 x 2 loop",
    ),
    "in each loop work 8 treble, with 1 chain after every 4th": "96 dc, 24 ch; 12 x 1 loop",
    "20 treble in each loop, a picot after every fifth stitch": "240 dc, 48 picot; 12 x 1 loop",
    "8 treble with a p after every 2nd, 3 ch, miss 4; repeat": ("8 dc, 3 ch, 4 picot; 1 x 12 loop"),
}
ONE_IN_EACH = {
    "1 treble into each of the 7, with a p. after every 2nd": (
        "7 dc, 3 picot; does not close; asked row-does-not-close"
    ),
    "1 treble in each of the next 6, p after every 2nd; repeat": "12 dc, 6 picot; 6 x 2 st",
    "5 treble on the next 5 treble, with a p after every 2nd, miss 1; repeat": (
        "10 dc, 4 picot; 2 x 6 dc"
    ),
    "1 treble in each of the next 6 st, p after the 2nd and 5th; repeat": (
        "12 dc, 4 picot; 2 x 6 st"
    ),
    "1 treble on each of the next 3 st, 3 ch after each; repeat": "12 dc, 36 ch; 4 x 3 st",
    "2 treble in the next st, 3 ch after each; repeat": "24 dc, 72 ch; 12 x 1 st",
    "1 treble in each stitch, 3 ch after each": "12 dc, 36 ch; 12 x 1 st",
    "1 treble in every other stitch, 1 chain after each treble": "6 dc, 6 ch; 6 x 2 st",
    "1 treble in each stitch, 3 ch after every second treble": "12 dc, 18 ch; 6 x 2 st",
    "with white, 1 treble in each st, ch 3 after every third treble": "12 dc, 12 ch; 4 x 3 st",
    "1 treble in each st, with a picot after each": "12 dc, 12 picot; 12 x 1 st",
    "2 treble in each st, 1 chain after every 4th": "24 dc, 6 ch; 6 x 2 st",
    "1 treble in each st, 3 ch after each": "12 dc, 36 ch; 12 x 1 st",
    "1 treble in each st, 3 ch after every 5th": (
        "10 dc, 6 ch; 2 x 5 st; 2 left over; does not close; asked row-does-not-close"
    ),
}
EVERY_FOUR = {
    "1 treble in each st, 3 ch after every 4": "12 dc, 9 ch; 3 x 4 st",
    "1 treble in each st, ch 5 between every 3 treble": "12 dc, 20 ch; 4 x 3 st",
    "4 treble in each st, with 1 ch between every 2 treble": "48 dc, 12 ch; 12 x 1 st",
    "4 treble in each st, 1 ch after every 2": "48 dc, 24 ch; 12 x 1 st",
    "4 treble in next st, 1 ch between every 4 treble; repeat": "48 dc, 12 ch; 12 x 1 st",
    "2 treble in each st, 2 ch between every 4": "24 dc, 12 ch; 6 x 2 st",
    "6 treble in each st, p between every 3": "72 dc, 12 picot; 12 x 1 st",
    # as many as go into each: from one to the next
    "3 treble in each st, 1 ch between every 3": "36 dc, 12 ch; 12 x 1 st",
    # between every two: between one and the next
    "1 treble in each st, 2 ch between every two": "12 dc, 24 ch; 12 x 1 st",
}
IN_ARCHES = {
    "1 plain in the plain, 7 treble under the 3 chain, p after every fourth stitch; repeat": (
        "12 sc, 84 dc, 12 picot; 12 x 1 sc"
    ),
}
IN_FIVES = {
    "4 treble in the next 5 chain, with a p after every 2nd, 2 ch; repeat": (
        "24 dc, 12 ch, 12 picot; 6 x 1 ch-5 space"
    ),
}


@cases(
    (LOOPS, IN_ONE_PLACE),
    (STITCHES, ONE_IN_EACH),
    (STITCHES, EVERY_FOUR),
    (ARCHES, IN_ARCHES),
    (FIVES, IN_FIVES),
)
def test_what_stands_after_some_stitches(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    "row",
    [
        "7 treble in each st, p after every 9th",
        "2 treble in each st, p after every 3rd",
        "1 treble in each st, p after the third",
        "2 treble in each st, 1 ch between every 3",
        "1 treble in each st, 3 ch after every 3 double",
        "6 treble in the next 5 st, p after every 2nd",
        "8 treble in each st, p after every 2nd plain",
        "8 treble in each st, p after the 9th",
        "5 treble in the next 5 ch, with a p after every 2nd; repeat",
        "(2 treble, 3 ch, 2 treble) in each st, with a p after each",
    ],
)
def test_what_does_not_come_out_even_is_not_guessed(row: str) -> None:
    assert "asked not-understood" in said(row, STITCHES)


def test_of_a_list_whose_place_is_unclear_it_is_asked() -> None:
    assert "asked place-unclear" in said("2 treble, 3 ch, 2 treble in each loop, p after each")
