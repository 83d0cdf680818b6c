"""Which place a word means: the next of which, the same as which, the third of how many."""

from __future__ import annotations

from phrases.said import STITCHES, On, cases, said

FOURS = On(6, ("4 treble in next loop, 3 chain; repeat",))
LONG = On(12, ("6 chain, 1 plain in each of the next 2 loops; repeat",))
FANS = On(6, ("*6 treble in next loop, 1 plain in next loop; repeat",))
SIXTHS = On(6, ("6 treble in each loop",))
HOLES = On(6, ("1 treble in next loop, 2 chain; repeat",))
LACE = On(6, ("5 chain, 1 plain in next loop; repeat",))

ON_FOURS = {
    "treble in each treble, 3 chain over the 3 chain": "24 dc, 3 ch; 24 x 1 dc; asked perhaps-as-they-come",
}
ON_LONG = {
    "1 treble in each of the next 3 chain, 2 treble in next, 1 treble in each of the next 2; repeat": "42 dc; 6 x 6 ch; asked perhaps-one-place; asked place-assumed",
}
ON_FANS = {
    "1 plain in each alternate shell, 5 chain": "1 sc, 5 ch; 1 x 2 shell; 1 left over; does not close; asked perhaps-as-they-come; asked row-does-not-close",
    "chain 3, 2 treble in the same stitch, 1 plain in 3d treble of shell, 5 treble on the plain; repeat": "3 sc, 19 dc, 9 ch; 3 x 1 shell; asked perhaps-start-chain; asked nothing-before",
}
ON_STITCHES = {
    "Trebles, three in one stitch, chain 3, miss 3 all the way": "9 dc, 9 ch; 3 x 4 st",
    "* 1 plain into st, 5 chain, 1 plain into same st (picot), 4 chain; repeat from *": "24 sc, 108 ch; 12 x 1 st",
}
ON_SIXTHS = {
    "* 1 plain between the 1st and 2nd treble, 4 chain; repeat from *": "36 sc, 144 ch; 36 x 1 dc; asked place-assumed",
}
ON_HOLES = {
    "3 plain on the treble and 2 chain, 4 chain; repeat": "18 sc, 24 ch; 6 x 1 dc",
    "3 plain on 2 chain and treble; repeat": "18 sc; 6 x 2 ch",
}
ON_LACE = {
    "1 plain under every 5 chain, 7 chain over the plain": "6 sc, 7 ch; 6 x 1 ch-5 space; asked perhaps-as-they-come",
    "5 treble in the 1st 5 chain, 3 chain, 5 treble in the same, 1 plain in the 2nd 5 chain; repeat": "20 dc, 2 sc, 6 ch; 2 x 3 ch-5 space; asked perhaps-counted-on",
    "1 plain in the third loop of 5 chain, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 ch-5 space",
    "1 plain on the centre loop of the 5, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 ch-5 space",
    "5 treble, 1 in every loop of the 5 chain, 1 chain; repeat": "30 dc, 6 ch; 6 x 5 ch",
    "(1 plain under the 5 chain, 4 chain) twice, 9 treble under the 3rd; repeat": "2 sc, 9 dc, 8 ch; 1 x 5 ch-5 space; 1 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "3 plain in the 5 chain, 1 plain on the plain, 3 plain in the same 5 chain; repeat": "42 sc; 6 x 1 ch-5 space",
}


@cases(
    (FOURS, ON_FOURS),
    (LONG, ON_LONG),
    (FANS, ON_FANS),
    (STITCHES, ON_STITCHES),
    (SIXTHS, ON_SIXTHS),
    (HOLES, ON_HOLES),
    (LACE, ON_LACE),
)
def test_which_place(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
