"""`each` and `every`: of all along the row, of those that come together, behind each of them."""

from __future__ import annotations

from phrases.said import ARCHES, FIVES, On, cases, said

FIFTHS = On(6, ("*5 treble in next loop, 3 chain; repeat",))
"""Six times five dc in one loop, with a space of 3 chains behind them."""
TWO_AND_ONE = On(
    12, ("(1 plain in next loop, 3 chain) twice, 1 plain in next loop, 5 chain; repeat",)
)
"""Twelve sc: two spaces of 3 chains and one of 5, four times over."""
SHELLS = On(12, ("*9 treble in next loop, miss 1 loop; repeat",))
"""Six times nine dc in one loop."""
PLAIN_ROW = On(48, ("*1 treble, 1 chain, miss 1; repeat",))
"""Twenty-four dc with a chain behind each."""

ON_FIFTHS = {
    # what stands behind each stands behind the last of them as well
    "1 treble on each of the 5 treble, after each treble 1 chain, 3 chain; repeat": "30 dc, 48 ch; 6 x 5 dc",
    "1 treble on each of the 5 treble, after each 1 chain, 3 chain; repeat": "30 dc, 48 ch; 6 x 5 dc",
    "1 treble on each of the 5 treble, and after each 1 chain; 3 chain; repeat": "30 dc, 48 ch; 6 x 5 dc",
    "1 treble on each treble, after each 1 chain": "30 dc, 30 ch; 30 x 1 dc",
}
ON_FIVES = {
    "5 treble in the loop, and after each treble 1 chain; repeat": "30 dc, 30 ch; 6 x 1 space",
    "5 treble in each loop, after each treble 1 chain": "30 dc, 30 ch; 6 x 1 space",
}
ON_TWO_AND_ONE = {
    # in each of those that come together
    "(1 plain, 5 chain) under each 3 chain; 1 plain under the 5 chain, 5 chain; repeat": "12 sc, 60 ch; 4 x 2 ch-3 space; asked place-assumed",
}
ON_SHELLS = {
    # each st takes all: of the other part there are none
    "(1 plain in each st, 2 plain in centre of each shell) as they come": "54 sc; 54 x 1 st, 0 shell; asked perhaps-as-they-come",
    "(2 plain in centre of each shell, 1 plain in each st) as they come": "60 sc; 54 x 0 shell, 1 st",
}
ON_PLAIN_ROW = {
    # every loop, with no chains made: of chains, or every stitch?
    "plain into every loop": "24 sc; 24 x 1 space; asked place-assumed",
    "1 plain in each loop, 3 chain": "24 sc, 3 ch; 24 x 1 space; asked perhaps-as-they-come",
}
ON_ARCHES = {
    "one plain stitch in every loop": "12 sc; 12 x 1 space; asked place-assumed",
    "3 plain in each loop": "36 sc; 12 x 1 space",
}


@cases(
    (FIFTHS, ON_FIFTHS),
    (FIVES, ON_FIVES),
    (TWO_AND_ONE, ON_TWO_AND_ONE),
    (SHELLS, ON_SHELLS),
    (PLAIN_ROW, ON_PLAIN_ROW),
    (ARCHES, ON_ARCHES),
)
def test_each_and_every(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
