"""Rows that may mean another thing: the reading taken, its counts, and that it is asked.

Beside each stands the row with the edit that settles it, or a plain one like it that has but
one sense and is not asked.
"""

from __future__ import annotations

from phrases.said import ARCHES, HEADINGS, STITCHES, On, cases, said

US = HEADINGS.replace("terms: uk", "terms: us")

FOURS = On(6, ("*4 dc in next loop, ch 1; repeat",), headings=US)
SIX = On(6, ("*6 dc in next loop, ch 1; repeat",), headings=US)
SEVENS = On(12, ("*sc in next loop, 7 dc in next loop; repeat",), headings=US)
FLAT = On(16, ("1 dc in each loop",), closed=False, headings=US)
GROUPS = On(6, ("*6 dc in next loop, ch 2; repeat",), headings=US)
FIVES = On(6, ("*5 treble in next loop, 3 chain, 1 plain in next loop, 3 chain; repeat",))
OPEN = On(12, ("1 treble in each loop",), closed=False)
SPACES = On(
    13,
    (
        "1 dc in each loop, turn",
        "ch 4 as dc and ch 1, sk 1, *dc in next dc, ch 1, sk 1; rep 4 times, dc in last dc, turn",
    ),
    closed=False,
    headings=US,
)

COUNTED_FROM_THE_FIRST = {
    # behind a skip, several, a picot, another place: 7 of 24, 11 of 36, two scallops at a time
    "*dc in 1st dc, sk 2, dc in 4th dc, ch 3; rep": (
        FOURS,
        "6 dc, 9 ch; 3 x 7 dc; 4 left over; does not close; asked perhaps-counted-on; "
        "asked row-does-not-close",
    ),
    "*dc in next dc, sk 2, dc in next dc, ch 3; rep": (FOURS, "12 dc, 18 ch; 6 x 4 dc"),
    "*2 dc in 1st dc, dc in next 4, 2 dc in 6th, ch 1; rep": (
        SIX,
        "24 dc, 3 ch; 3 x 10 dc; 5 left over; does not close; asked perhaps-counted-on; "
        "asked row-does-not-close",
    ),
    "*sc in sc, dc in next 3 dc, picot, dc in 4th dc, picot, dc in next 3 dc; rep": (
        SEVENS,
        "3 sc, 21 dc, 6 picot; 3 x 2 sc; asked perhaps-counted-on",
    ),
    "*sc in sc, ch 3, sk 1, dc in 2nd dc, ch 3, sk 1, dc in 4th dc, ch 3, sk 1, dc in 6th dc; rep": (
        SEVENS,
        "2 sc, 6 dc, 18 ch; 2 x 3 sc; asked perhaps-counted-on; asked perhaps-counted-on; "
        "asked perhaps-counted-on",
    ),
    # as many passed over as there are chains: one sense
    "*sc in sc, dc in next 3 dc, ch 3, dc in 4th dc; rep": (SEVENS, "6 sc, 24 dc, 18 ch; 6 x 1 sc"),
}
BEHIND_TURNING_CHAINS = {
    "turn, ch 5, dc in 4th dc, *ch 2, sk 2, dc in next; rep from *": "5 dc, 8 ch; 3 x 3 st; 2 left over; does not close; asked start-chain-assumed; asked perhaps-counted-on; asked row-does-not-close",
    "turn, ch 5, dc in 3rd dc, *ch 2, sk 2, dc in next; rep from *": "6 dc, 10 ch; 4 x 3 st; asked start-chain-assumed",
    "turn, ch 3, dc in 2nd st, *dc in next; rep from *": "15 dc; 13 x 1 st; asked start-chain-assumed; asked perhaps-counted-on",
    "turn, ch 6, dc in 4th st, *ch 3, sk 3, dc in next; rep from *": "4 dc, 9 ch; 2 x 4 st; 3 left over; does not close; asked start-chain-assumed; asked row-does-not-close",
    "turn, ch 5 as dc and ch 2, dc in 4th dc, *ch 2, sk 2, dc in next; rep from *": "5 dc, 8 ch; 3 x 3 st; 2 left over; does not close; asked row-does-not-close",
}
OVER_GROUPS = {
    "*3 dc in 2 ch, ch 2, sc in centre 2 dc, ch 2; rep": "3 dc, 2 sc, 4 ch; 1 x 4 ch-2 space; 2 left over; does not close; asked perhaps-last-of-each; asked row-does-not-close",
    "*dc in each of next 6 sts, ch 3; rep": "48 dc, 24 ch; 8 x 6 st; asked perhaps-nothing-missed",
    "*dc in each of next 6 dc, ch 3; rep": "36 dc, 18 ch; 6 x 6 dc",
    "*dc in next 6 sts, ch 3, sk 2; rep": "36 dc, 18 ch; 6 x 8 st",
    "*sk 1, dc in next 4 dc, sk 1, ch 5; rep": "24 dc, 30 ch; 6 x 8 st; 3 left over; does not close; asked perhaps-nothing-missed; asked row-does-not-close",
    "*sk 1 dc, dc in next 4 dc, sk 1 dc, ch 5; rep": "24 dc, 30 ch; 6 x 6 dc",
}
THE_LAST_TWO = {
    "*1 plain between the first and second treble, 4 chain, 1 plain between the last two treble, 4 chain; repeat": "2 sc, 8 ch; 1 x 15 dc; asked place-assumed; asked perhaps-last-of-each",
}
TO_GET_INWARD = {
    "turn, slip along 3 treble, 3 chain, 9 treble": "3 ss, 9 dc, 3 ch; asked perhaps-leads-on",
    "turn, 1 single on each of first 3 treble, 3 chain, 1 treble on each of next 9": "3 ss, 9 dc, 3 ch; asked perhaps-leads-on",
    "turn, begin in 3rd treble, 3 chain as treble, 9 treble": "10 dc",
}
BEGINS_AND_ENDS_ALIKE = {
    "1 plain in the centre of loop, 5 chain, 1 plain in the next; repeat": "12 sc, 30 ch; 6 x 2 space; asked perhaps-shared",
    "1 plain in loop, 7 chain, miss one loop, 1 plain in loop; repeat": "8 sc, 28 ch; 4 x 3 space; asked perhaps-shared",
    "1 plain in next loop, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 space",
    "1 plain in loop, 5 chain, 1 treble in loop, 5 chain; repeat": "6 sc, 6 dc, 60 ch; 6 x 2 space",
}
MISSED_BEFORE_CHAINS = {
    "*1 treble, miss 2, 2 chain, 1 treble; repeat": "6 dc, 6 ch; 3 x 4 st; asked perhaps-shared",
    "*1 treble on treble, 2 chain; repeat": "12 dc, 24 ch; 12 x 1 dc",
}
IN_THE_CHAINS_AT_THE_END = {
    "ch 4 as dc and ch 1, *dc in next dc, ch 1; rep 4 times, dc in 4 ch": "6 dc, 6 ch; does not close; asked place-assumed; asked row-does-not-close",
    "ch 4 as dc and ch 1, *dc in next dc, ch 1; rep 4 times, dc in last st": "7 dc, 6 ch",
}


@cases(
    *((on, {row: comes_to}) for row, (on, comes_to) in COUNTED_FROM_THE_FIRST.items()),
    (FLAT, BEHIND_TURNING_CHAINS),
    (GROUPS, OVER_GROUPS),
    (FIVES, THE_LAST_TWO),
    (OPEN, TO_GET_INWARD),
    (ARCHES, BEGINS_AND_ENDS_ALIKE),
    (STITCHES, MISSED_BEFORE_CHAINS),
    (SPACES, IN_THE_CHAINS_AT_THE_END),
)
def test_a_row_that_may_mean_another(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
