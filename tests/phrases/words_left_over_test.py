"""Rows of many pages: every so many missed, some of them in one, the same stitch for one, how far a
repeat goes, picots on the last stitch, loops drawn together.
"""

from __future__ import annotations

from phrases.said import FIVES, LOOPS, STITCHES, On, cases, said

ROUND_14 = On(14, ("1 plain in each loop",))

ON_STITCHES = {
    # three of each four are worked
    "plain all round, missing every 4th stitch": "9 sc; 3 x 4 st; 0 x 0 st",
    "1 plain in each stitch, missing every 6th": "10 sc; 2 x 6 st; 0 x 0 st",
    "1 treble in each, missing every other stitch": "6 dc; 6 x 2 st; 0 x 0 st",
    "1 treble, 1 chain, missing every other stitch": "6 dc, 6 ch; 6 x 2 st",
    # chains with them are made somewhere: that is not said
    "1 treble, 2 chain, missing every 4th stitch": "12 dc; 12 x 1 loop; asked not-understood",
    "1 treble, 2 chain, increasing in every 4th stitch": "12 dc; 12 x 1 loop; asked not-understood",
    # one, three in the next, one: on three stitches
    "5 treble, 3 of them in one, 3 chain; repeat": "20 dc, 12 ch; 4 x 3 st; asked place-assumed",
    "5 treble, 3 of which in one stitch, 3 chain; repeat": "20 dc, 12 ch; 4 x 3 st; asked place-assumed",
    "6 treble, 3 of them in one; repeat": "12 dc; 12 x 1 loop; asked not-understood",
    "*2 treble divided by 3 chain in the same stitch, miss 3; repeat from *": "6 dc, 9 ch; 3 x 4 st",
    "2 treble with 3 chain between in the same stitch, miss 3; repeat": "6 dc, 9 ch; 3 x 4 st",
    "1 treble in each of 4, 2 chain, miss 2; repeat": "8 dc, 4 ch; 2 x 6 st",
    "plain all round, increasing 1 at each corner": "12 sc; 12 x 1 st; asked corners-left-out",
    "5 chain, catch in 3rd stitch; repeat": "4 ss, 20 ch; 4 x 3 st; asked perhaps-picot; asked fastening-assumed",
    "1 treble, keeping the last loop on the hook, 1 treble in next, draw through all the loops, 2 chain; repeat": "6 dc, 12 ch; 6 x 2 st",
    "1 treble, keep the last loop on the needle, 1 treble in the same stitch, draw through all the loops together, 2 chain, miss 1; repeat": "6 dc, 12 ch; 6 x 2 st",
    # a fault of the program once: chains behind a stop, and a stitch on the same
    "*2 treble in next, 3 chain; 1 plain in same stitch, miss 2; repeat": "8 dc, 4 sc, 12 ch; 4 x 3 st; asked perhaps-picot",
    "*1 treble in next st, 3 chain; 1 plain in same st; repeat": "12 dc, 12 sc, 36 ch; 12 x 1 st; asked perhaps-picot",
    "*1 plain, 5 chain, miss 2; repeat from *, omitting the last 5 chain and 1 plain": "4 sc, 20 ch; 4 x 3 st; asked exception-in-words",
    "*1 plain., 5 ch., miss 2; repeat from *, with 12 ch. the last time": "4 sc, 32 ch; 4 x 3 st; asked perhaps-instead",
    "*3 tr. in next 3 st. taken together, 2 ch.; repeat": "4 dc, 8 ch; 4 x 3 st",
    "1 plain into the next tr. but one, 6 chain; repeat": "6 sc, 36 ch; 6 x 2 dc",
    "2 plain on 2; repeat": "12 sc; 6 x 2 st",
    "2 plain, each in a separate stitch, 3 chain; repeat": "12 sc, 18 ch; 6 x 2 st",
    "1 plain in each stitch, inserting the hook at the back of the stitch": "12 sc; 12 x 1 st",
    "3 treble, 2 chain; repeat; fasten off at the end of every row": "12 dc, 8 ch; 4 x 3 st",
    "*1 plain, 5 chain, miss 2; repeat from * to within 3 st of end, 3 plain": "6 sc, 15 ch; 3 x 3 st",
    "1 plain, 5 chain, miss 2; repeat to last 3 st, 3 plain": "6 sc, 15 ch; 3 x 3 st",
    "1 plain, 5 chain, miss 2; repeat to within 3 stitches of the end, 3 plain": "6 sc, 15 ch; 3 x 3 st",
    "3 treble, 1 picot of 5 chain on the last treble; repeat": "12 dc, 4 picot; 4 x 3 st",
    "3 treble, a picot on the last, miss 1; repeat": "9 dc, 3 picot; 3 x 4 st",
    "1 treble, miss 2, 1 picot in the last stitch": "12 dc; 12 x 1 loop; asked not-understood",
    "8 treble, with 1 chain after each, miss 4; repeat": "8 dc, 8 ch; 1 x 12 st",
    "3 treble in the next stitch, with 2 chain after each; repeat": "36 dc, 72 ch; 12 x 1 st",
}

# a question that has one answer is none
ON_SINGLE_CHAINS = {
    "1 plain on the chain, 1 chain; repeat": "12 sc, 12 ch; 12 x 1 ch",
    "1 plain under each chain, with 1 chain between": "12 sc, 12 ch; 12 x 1 space",
}
ON_DOUBLE_CHAINS = {
    "1 plain on the chain, 1 chain; repeat": "12 sc, 12 ch; 12 x 1 ch; asked perhaps-one-place",
}
ON_FIVES_COUNTED = {
    "2 plain on the 2; repeat": "36 sc; 18 x 2 st; asked place-assumed",
}

ON_LOOPS = {
    "1 treble in each of 4, 2 chain, miss 2; repeat": "8 dc, 4 ch; 2 x 6 loop",
    "*1 purl, (that is, ch 4, 1 plain in the first), 3 plain; repeat": "12 sc, 4 picot; 4 x 3 loop",
    "4 plain into the edge, 5 chain; repeat": "48 sc, 60 ch; 12 x 1 loop; asked perhaps-one-place",
    "1 plain into the edge, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 loop",
    "draw 4 loops together with 1 plain, 5 chain; repeat": "3 sc, 15 ch; 3 x 4 loop",
    "working over the hem, make 2 plain in each hole": "24 sc; 12 x 1 loop",
}

ON_FIVES = {
    "*in the loop 3 treble, 1 plain, on the plain; repeat": "36 dc, 12 sc; 6 x 1 space; asked place-assumed",
    "*4 treble in each of 2 loops, with 1 chain after each treble; repeat": "24 dc, 24 ch; 3 x 2 space",
    "*1 plain in the loop, 7 chain (the last time 9 chain); and so on to the end": "6 sc, 51 ch; 6 x 1 space; asked perhaps-instead",
    "1 plain in third stitch of the 5 chain, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 ch-5 space",
    "in each loop make a shell of 6 treble with 1 chain between each treble": "36 dc, 30 ch; 6 x 1 space",
    "in the next loop work a shell of 6 treble with 1 chain between, 1 plain on the plain; repeat": "36 dc, 6 sc, 30 ch; 6 x 1 space",
    "in the next loop work a shell of 3 treble, 2 chain, 3 treble, 1 plain on the plain; repeat": "36 dc, 6 sc, 12 ch; 6 x 1 space",
    "a shell of 6 treble with 1 chain between each treble in next loop, 1 plain on plain; repeat": "36 dc, 6 sc, 30 ch; 6 x 1 space",
    "a fan of 2 treble, 1 chain, 2 treble between next 2 loops; repeat": "24 dc, 6 ch; 6 x 1 space",
    "cover each loop with 8 plain": "48 sc; 6 x 1 space",
    "plain under the loops, 6 in each loop": "36 sc; 6 x 1 space",
    "1 treble, 1 chain, under the 5 chain, 6 times; repeat": "36 dc, 36 ch; 6 x 1 ch-5 space; asked times-of-the-row",
    "1 treble in each division": "6 dc; 6 x 1 space",
    "5 chain, catch in the 3d chain of next loop; repeat": "6 ss, 30 ch; 6 x 1 space; asked fastening-assumed",
    "8 treble, with 1 chain after each, under the 5 chain; repeat": "48 dc, 48 ch; 6 x 1 ch-5 space",
}


@cases(
    (STITCHES, ON_STITCHES),
    (LOOPS, ON_LOOPS),
    (FIVES, ON_FIVES),
    (FIVES, ON_FIVES_COUNTED),
    (On(24, ("1 treble, 1 chain, miss 1; repeat",)), ON_SINGLE_CHAINS),
    (On(18, ("1 treble, 2 chain, miss 2; repeat",)), ON_DOUBLE_CHAINS),
    (
        On(6, ("3 treble in each loop, with 2 chain between",)),
        {
            "5 chain, catch in 1st of 3 treble; repeat": "6 ss, 30 ch; 6 x 1 3-dc run; asked fastening-assumed"
        },
    ),
    (
        On(12, ("1 plain in each loop", "*1 plain, 5 chain, miss 1; repeat")),
        {
            # a dc that the chains cover is of the row before: no place of this one
            "*1 treble in the plain under the 5 chain, 3 chain; repeat": "6 sc, 30 ch; 6 x 2 st; asked not-understood",
            "sl st to the middle of the first loop, *5 chain, 1 plain in next loop; repeat from *, 5 chain, join": "5 sc, 30 ch; 5 x 1 space; asked perhaps-instead",
        },
    ),
    (
        On(24, ("1 treble, 1 chain, miss 1; repeat",)),
        {"*2 plain on the tr. and 1 ch. of previous row, 4 ch.; repeat": "24 sc, 48 ch; 12 x 1 dc"},
    ),
    (
        On(24, ("1 treble, 3 chain, miss 2; repeat",)),
        {"5 plain over each chain": "40 sc; 8 x 1 space"},
    ),
    (
        On(24, ("1 treble in each of the next 3 st, 3 chain, miss 1; repeat",)),
        {
            "1 treble on the centre treble of the three, 4 chain; repeat": "6 dc, 24 ch; 6 x 1 block of 3"
        },
    ),
    (ROUND_14, {"1 plain on plain, missing every 4th stitch": "11 sc; 3 x 4 st; 2 x 1 st"}),
)
def test_what_many_pages_say(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
