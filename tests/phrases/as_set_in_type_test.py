"""What the printer put round the words, or left out: brackets and crosses round a repeat, dashes
for commas, no comma at all.
"""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, FIVES, LOOPS, STITCHES, On, cases, said

FIFTHS = On(6, ("*5 treble in next loop, 3 chain; repeat",))
"""Six times five dc in one loop, with a space of 3 chains behind them."""
SPACED = On(48, ("*1 plain in next loop, 5 chain, miss 3; repeat",))
"""Twelve sc with a space of 5 chains behind each."""
PLAIN = On(48, ("1 plain in each loop",))

ON_FIFTHS = {
    "1 treble in each treble divided by 1 chain, miss the 3 chain; repeat": "30 dc, 24 ch; 6 x 5 dc; asked place-assumed",
    # a bracket that is repeated: all is asked of it that is asked of a star's stretch
    "(1 plain on the 3rd treble, 5 chain) repeat": "10 sc, 50 ch; 10 x 3 dc; asked perhaps-last-of-each",
    "(1 plain on the 3rd treble, 5 chain) all round": "10 sc, 50 ch; 10 x 3 dc; asked perhaps-last-of-each",
    "x 1 plain on the 3rd treble, 5 chain x all round": "10 sc, 50 ch; 10 x 3 dc; asked perhaps-last-of-each",
    "+ 1 plain on the 3rd treble, 5 chain +": "10 sc, 50 ch; 10 x 3 dc; asked perhaps-last-of-each",
}
ON_STITCHES = {
    "(1 treble, miss 2, 2 chain, 1 treble) repeat": "6 dc, 6 ch; 3 x 4 st; asked perhaps-shared",
    "[1 treble, miss 2, 2 chain, 1 treble] to the end": "6 dc, 6 ch; 3 x 4 st; asked perhaps-shared",
    "*1 treble in 2nd, & in each of next 2, 1 chain; repeat": "9 dc, 3 ch; 3 x 4 st; asked place-assumed",
    "1 plain, 3 chain, miss 2, etc., all round": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2, &c., to the end": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2, &c. &c.": "4 sc, 12 ch; 4 x 3 st",
    "1 plain & 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
}
ON_SPACED = {
    "*1 plain in the centre of the chain 5 chain; repeat": "12 sc, 60 ch; 12 x 1 space",
    "*1 plain in the centre of ch 5 chain; repeat": "12 sc, 60 ch; 12 x 1 space",
    "*1 plain in the middle of the next ch 5 chain; repeat": "12 sc, 60 ch; 12 x 1 space",
}
ON_FIVES = {
    "*in one loop 7 treble; in the next 1 plain 3 chain; repeat": "21 dc, 3 sc, 9 ch; 3 x 2 space",
    "x 6 treble, in 5 chain with 2 chain between each pair, 1 plain on plain x repeat": "36 dc, 6 sc, 24 ch; 6 x 1 ch-5 space",
}
ON_PLAIN = {
    "Work 1 treble, on each of the next 3 st, 3 chain after each; repeat": "48 dc, 144 ch; 16 x 3 st",
    "x 3 treble, in next 3 st, taken together, 2 chain x repeat": "16 dc, 32 ch; 16 x 3 st",
}
ON_ARCHES = {
    "begin in a loop 3 tr in same loop 1 plain in next loop; repeat": "18 dc, 6 sc; 6 x 2 space",
    "fasten on in a loop 1 plain in same, 5 chain, 1 plain in next loop; repeat": "12 sc, 30 ch; 6 x 2 space; asked perhaps-shared",
    "*3 treble, 1 picot, 3 treble in the same place, 1 plain in next; repeat": "72 dc, 12 sc, 12 picot; 12 x 4 st; asked perhaps-one-place",
    "*3 treble in loop, 3 treble in the same separated by 3 chain, 1 plain on plain; repeat": "72 dc, 12 sc, 36 ch; 12 x 1 space",
    "*1 plain in loop, 3 treble in next loop of last row with 3 chain between; repeat": "6 sc, 18 dc, 36 ch; 6 x 2 space; asked perhaps-as-they-come",
    "x 3 treble in same loop for a shell, 1 chain x repeat": "36 dc, 12 ch; 12 x 1 space",
}
ON_LOOPS = {
    "x 5 ch, unite to the next loop x repeat": "12 ss, 60 ch; 12 x 1 loop; asked fastening-assumed",
}


@cases(
    (FIFTHS, ON_FIFTHS),
    (STITCHES, ON_STITCHES),
    (SPACED, ON_SPACED),
    (FIVES, ON_FIVES),
    (PLAIN, ON_PLAIN),
    (ARCHES, ON_ARCHES),
    (LOOPS, ON_LOOPS),
)
def test_as_set_in_type(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    "row",
    [
        "*1 plain in the loop -- 2 plain in it -- 3 chain; repeat",
        "*1 plain in the loop -- 3 treble in each of the next 2 loops -- 3 chain; repeat",
        "*1 plain in the loop -- 7 chain, 1 single in the 4th of the 7 chain -- 3 chain; repeat",
        "*1 plain in the loop -- 2 chain between -- 1 plain in next; repeat",
    ],
)
def test_steps_between_dashes_are_asked(row: str) -> None:
    assert "asked perhaps-worked" in said(row, ARCHES)


@pytest.mark.parametrize(
    "row",
    [
        "*1 plain in the loop -- there will be 12 of these -- 3 chain; repeat",
        "*1 plain in the loop, 3 chain -- the 3 chain stand for a treble --; repeat",
        "*1 plain in the loop, 3 chain -- with the second colour --; repeat",
    ],
)
def test_a_remark_between_dashes_is_not(row: str) -> None:
    assert said(row, ARCHES) == "12 sc, 36 ch; 12 x 1 space"
