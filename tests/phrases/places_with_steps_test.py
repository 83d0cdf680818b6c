"""A place behind a comma with steps of its own: `3 dc, in the loop 5 dc`; stops that end nothing."""

from __future__ import annotations

from phrases.said import FIVES, On, cases, said

FOURS = On(24, ("*1 treble in each of 4 loops, 3 chain; repeat",))
"""Six times four dc side by side, with a space of 3 chains behind them."""
PLAIN = On(24, ("1 plain in each loop",))
FIFTHS = On(6, ("*5 treble in next loop, 3 chain; repeat",))
"""Six times five dc in one loop, with a space of 3 chains behind them."""

ON_FIVES = {
    # a comma on either side of the place
    "1 plain, in the loop, 7 treble; repeat": "3 sc, 21 dc; 3 x 2 space; asked perhaps-one-place",
    "1 plain, in the loop, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 space",
    "1 plain, in the loop 7 treble; repeat": "6 sc, 42 dc; 6 x 6 st",
    "1 plain, under the 5 chain work 1 plain, 5 treble, 1 plain; repeat": "18 sc, 30 dc; 6 x 6 st",
    "1 plain; in the loop 7 treble; repeat": "6 sc, 42 dc; 6 x 6 st",
    # a full stop behind chains that no number stands before: it is behind them
    "*1 tr. on the plain, ch. 5 over the 5 ch.; repeat from *": "6 dc, 30 ch; 6 x 1 sc",
    "*1 tr. on the plain, ch. 5, miss the 5 ch.; repeat from *": "6 dc, 30 ch; 6 x 1 sc",
}
ON_FOURS = {
    "*4 treble, in the 3 chain work 2 treble, 3 chain, 2 treble; repeat from *": "48 dc, 18 ch; 6 x 7 st",
    "*3 tr. in the 3 ch., 5 ch.; repeat from *": "18 dc, 30 ch; 6 x 1 ch-3 space",
}
ON_PLAIN = {
    "*2 chain, miss 2, 3 treble, in next st 3 treble; repeat": "24 dc, 8 ch; 4 x 6 st",
    "*3 treble, in next st; repeat": "72 dc; 24 x 1 st",
    "*3 treble, in next st, 1 chain; repeat": "72 dc, 24 ch; 24 x 1 st",
}
ON_FIFTHS = {
    "*1 tr. and ch. 3 on each of the 5 tr., 5 ch.; repeat": "30 dc, 120 ch; 6 x 5 dc",
    "*1 plain in the 3 ch., ch. 3 over the 5 tr.; repeat": "6 sc, 18 ch; 6 x 1 ch-3 space",
}


@cases((FIVES, ON_FIVES), (FOURS, ON_FOURS), (PLAIN, ON_PLAIN), (FIFTHS, ON_FIFTHS))
def test_places_with_steps_of_their_own(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_a_sentence_begins_with_a_capital() -> None:
    """Behind an abbreviation that is all that shows it, so that a row in capitals is read without."""
    assert said("*3 tr. In the 3 ch. work 5 tr.; repeat from *", FOURS) == "48 dc; 6 x 7 st"
