"""Which place a word means: the next of which, the same as which, the third of how many."""

from __future__ import annotations

from phrases.said import HEADINGS, STITCHES, On, cases, said

FOURS = On(6, ("4 treble in next loop, 3 chain; repeat",))
LONG = On(12, ("6 chain, 1 plain in each of the next 2 loops; repeat",))
FANS = On(6, ("*6 treble in next loop, 1 plain in next loop; repeat",))
SIXTHS = On(6, ("6 treble in each loop",))
HOLES = On(6, ("1 treble in next loop, 2 chain; repeat",))
LACE = On(6, ("5 chain, 1 plain in next loop; repeat",))

FIVE_CHAIN = On(12, ("1 plain in each loop, with 5 chain between",))
LACE_OF_TWELVE = On(12, ("5 chain, 1 plain in next loop; repeat",))
DOZENS = On(24, ("1 treble in each loop",))
BLOCKED = On(8, ("3 treble in each loop, with 3 chain between",))
NINES = On(6, ("9 treble in each loop, with 2 chain between",))
FANNED = On(
    24,
    (
        "*1 plain in next loop, 3 chain, miss 1, 5 treble in next loop, 3 chain, miss 1; repeat from *",
    ),
)
US = HEADINGS.replace("terms: uk", "terms: us")
US_ARCHES = On(12, ("1 sc in each loop, with 5 ch between",), headings=US)
US_STITCHES = On(24, ("1 dc in each loop",), headings=US)

ON_FOURS = {
    "treble in each treble, 3 chain over the 3 chain": "24 dc, 3 ch; 24 x 1 dc; asked perhaps-as-they-come",
}
ON_LONG = {
    "1 treble in each of the next 3 chain, 2 treble in next, 1 treble in each of the next 2; repeat": "42 dc; 6 x 6 ch; asked perhaps-as-they-come; asked perhaps-one-place; asked place-assumed",
}
ON_FANS = {
    "1 plain in each alternate shell, 5 chain": "1 sc, 5 ch; 1 x 2 shell; 1 left over; does not close; asked perhaps-as-they-come; asked row-does-not-close",
    "chain 3, 2 treble in the same stitch, 1 plain in 3d treble of shell, 5 treble on the plain; repeat": "3 sc, 19 dc, 9 ch; 3 x 1 shell; asked perhaps-start-chain; asked nothing-before",
}
ON_STITCHES = {
    "Trebles, three in one stitch, chain 3, miss 3 all the way": "9 dc, 9 ch; 3 x 4 st",
    "* 1 plain into st, 5 chain, 1 plain into same st (picot), 4 chain; repeat from *": "12 sc, 48 ch, 12 picot; 12 x 1 st",
}
ON_SIXTHS = {
    "* 1 plain between the 1st and 2nd treble, 4 chain; repeat from *": "36 sc, 144 ch; 36 x 1 dc; asked place-assumed",
}
ON_HOLES = {
    "3 plain on the treble and 2 chain, 4 chain; repeat": "18 sc, 24 ch; 6 x 1 dc",
    "3 plain on 2 chain and treble; repeat": "18 sc; 6 x 2 ch",
}
ON_LACE = {
    "*7 dc on the dc, 5 chain and dc; repeat": "21 sc; 3 x 2 sc",
    "10 treble on the 5 chain, 2 in each loop; repeat": "60 dc; 6 x 5 ch; asked perhaps-one-place",
    "3 treble in the first 5 chain, 1 plain in the next; repeat": "9 dc, 3 sc; 3 x 2 ch-5 space",
    "5 treble in the first 5 chain, 1 plain in the next; repeat": "15 dc, 3 sc; 3 x 2 ch-5 space; asked place-assumed",
    "1 plain under every 5 chain, 7 chain over the plain": "6 sc, 7 ch; 6 x 1 ch-5 space; asked perhaps-as-they-come",
    "5 treble in the 1st 5 chain, 3 chain, 5 treble in the same, 1 plain in the 2nd 5 chain; repeat": "20 dc, 2 sc, 6 ch; 2 x 3 ch-5 space; asked perhaps-counted-on",
    "1 plain in the third loop of 5 chain, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 ch-5 space",
    "1 plain on the centre loop of the 5, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 ch-5 space",
    "5 treble, 1 in every loop of the 5 chain, 1 chain; repeat": "30 dc, 6 ch; 6 x 5 ch",
    "(1 plain under the 5 chain, 4 chain) twice, 9 treble under the 3rd; repeat": "2 sc, 9 dc, 8 ch; 1 x 5 ch-5 space; 1 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "3 plain in the 5 chain, 1 plain on the plain, 3 plain in the same 5 chain; repeat": "42 sc; 6 x 1 ch-5 space",
}
ON_US_ARCHES = {
    "*3 d. c. ch. 2, 3 d. c. in next loop; rep.": "36 dc, 12 ch; 6 x 12 st; asked place-unclear",
    "*S. c. 5 d. c. s. c. in next loop; rep.": "12 sc, 30 dc; 6 x 12 st; asked place-unclear",
    "*S. c. in loop. h. d. c. 3 d. c. h. d. c. s. c. in same loop. Rep.": "12 sc, 12 hdc, 18 dc; 6 x 2 space; asked perhaps-one-place",
    "*3 d c. Ch 2. 3 d c in same loop. S c in next. Rep.": "36 dc, 6 sc, 12 ch; 6 x 12 st; asked perhaps-one-place",
}
ON_US_STITCHES = {
    "*Sk. 3. 2 d. c. ch. 1. 2 d. c. in next. Rep.": "16 dc, 4 ch; 4 x 6 st; asked perhaps-one-place",
}
ON_FIVE_CHAIN = {
    "*3 dc in loop, picot, 3 dc in the loop, 1 dc on dc; repeat": "42 sc, 6 picot; 6 x 2 space; asked perhaps-one-place",
    "*3 dc. Picot. 3 dc. in loop; repeat": "36 sc, 6 picot; 6 x 12 st; asked perhaps-one-place",
    "*Into loop 1 dc; 5 tr; 1 dc; repeat": "12 sc, 30 dc; 6 x 2 space; asked perhaps-one-place",
    "*3 tr in loop, 2 ch over the dc, 3 tr in next; repeat": "36 dc, 12 ch; 6 x 2 space; asked perhaps-shared; asked place-assumed",
    "*7 tr in loop, miss the dc, 1 dc in next; repeat": "42 dc, 6 sc; 6 x 2 space; asked place-assumed",
    "*5 tr in loop, 1 dc on dc, 5 in the next; repeat": "30 dc, 36 sc; 6 x 2 space; asked place-assumed",
    "*1 tr on dc, 5 tr in one, 1 dc in the next loop, 3 ch; repeat": "36 dc, 6 sc, 18 ch; 6 x 2 sc; asked place-assumed",
    "*1 tr taking up the dc, 5 ch; repeat": "12 dc, 60 ch; 12 x 1 sc",
    "*3 dc in loop, picot, 3 dc in this loop; repeat": "72 sc, 12 picot; 12 x 1 space",
    "*1 dc on dc, 5 tr in loop, 1 ch, 5 more tr in loop; repeat": "12 sc, 120 dc, 12 ch; 12 x 1 sc",
    "*1 dc on dc, 5 tr in loop, 1 ch, 5 tr again in the loop; repeat": "12 sc, 120 dc, 12 ch; 12 x 1 sc",
    "*Under loop 3 dc, 3 ch, 3 dc, 2 ch over dc; repeat": "72 sc, 60 ch; 12 x 1 space",
    "*Under loop 3 dc, picot, 3 dc, 1 ch on dc; repeat": "72 sc, 12 ch, 12 picot; 12 x 1 space",
    "*1 dc in loop, 8 ch, sl st in 1st, 3 ch, 15 tr in ring, 5 ch; repeat": "6 sc, 90 dc, 48 ch, 6 picot; 6 x 2 space; asked perhaps-just-made",
    "*1 dc in loop, 10 ch, 1 dc in 6th ch from hook, 3 ch, 1 dc in ring, 4 ch; repeat": "12 sc, 66 ch, 6 picot; 6 x 2 space; asked perhaps-just-made",
    "*1 dc in loop, 5 ch, do so twice, 7 dc in next; repeat": "36 sc, 40 ch; 4 x 3 space; asked times-of-the-row",
    "*(1 dc in loop, 5 ch); do so twice, 7 dc in next loop; repeat": "36 sc, 40 ch; 4 x 3 space",
    "*1 dc in loop, 5 ch, and the same in next two loops, 7 dc in next; repeat": "30 sc, 45 ch; 3 x 4 space",
    "*1 dc in loop, miss one, 7 tr in third; repeat": "6 sc, 42 dc; 6 x 2 space; asked perhaps-of-spaces",
    "*5 ch, 1 dc in loop; repeat from *, ending with 1 dc": "13 sc, 60 ch; 12 x 1 space; asked perhaps-instead",
    "*1 dc in loop, 5 ch; repeat from *; 2 ch, 1 tr in first dc": "12 sc, 1 dc, 62 ch; 12 x 1 space; asked perhaps-instead; asked not-at-the-head",
    "*1 dc in loop, 6 ch, on these 1 dc, 1 tr, 3 dtr, 3 ch; repeat": "12 sc, 6 dc, 18 tr, 54 ch; 6 x 2 space; asked perhaps-just-made",
    "*1 dc in loop, 6 ch, on which work 1 dc, 1 tr, 3 dtr, 3 ch; repeat": "12 sc, 6 dc, 18 tr, 54 ch; 6 x 2 space; asked perhaps-just-made",
    "*In one loop 7 tr, 1 dc, in the next 5 tr, 1 dc, 3 ch; repeat": "72 dc, 12 sc, 18 ch; 6 x 2 space",
    "*1 tr in loop and dc, 3 ch; repeat": "24 dc, 36 ch; 12 x 1 space; asked place-assumed; asked place-assumed",
}
ON_BLOCKED = {
    "*3 tr on 3 tr taken together, 4 ch; repeat": "8 dc, 32 ch; 8 x 3 dc",
    "*1 dc in loop, 4 ch, miss 3 tr, 1 dc in next, 4 ch; repeat": "8 sc, 32 ch; 4 x 2 space; asked perhaps-nothing-missed; asked place-assumed",
    "*1 dc in loop, 3 ch over the group, 1 dc in next, 3 ch; repeat": "8 sc, 24 ch; 4 x 2 space; asked place-assumed",
    "1 dc in each loop, 5 ch over the 3 tr": "8 sc, 5 ch; 8 x 1 space; asked perhaps-as-they-come",
}
ON_FANNED = {
    "*1 dc on 3rd of 5 tr, 3 ch, 3 tr in the loop, 3 ch, 1 dc on 3rd of next, 3 ch; repeat": "6 sc, 9 dc, 27 ch; 3 x 2 5-dc run",
    "*1 dc on dc, 5 ch, miss 5 tr, 1 dc on next, 5 ch; repeat": "6 sc, 30 ch; 3 x 2 sc; asked perhaps-nothing-missed; asked place-assumed",
    "*1 dc on dc, 3 ch, 1 tr on the 2nd, and 1 on the 4th of the 5 tr, 3 ch; repeat": "6 sc, 12 dc, 36 ch; 6 x 1 sc",
    "*1 tr in 2nd and 1 in 4th of 5 tr, 3 ch; repeat": "12 dc, 18 ch; 6 x 1 5-dc run",
    "*1 tr in last of 5 tr, 3 ch, 1 dc in dc, 3 ch, 1 tr in first of next, 5 ch; repeat": "12 dc, 6 sc, 66 ch; 6 x 1 5-dc run",
    "*1 dc in centre of group, 5 ch, 1 tr on dc, 5 ch, 1 dc in centre of the next, 5 ch; repeat": "6 sc, 3 dc, 45 ch; 3 x 2 group",
    "5 tr in each dc, 1 dc in 3rd tr": "30 dc, 1 sc; 6 x 1 sc; asked perhaps-as-they-come",
    "*5 tr in dc, miss chain, 5 dc, miss chain; repeat": "30 dc, 30 sc; 6 x 1 sc",
    "*5 tr on tr, 5 ch, missing ch, dc and ch; repeat": "30 dc, 30 ch; 6 x 5 dc",
}
ON_NINES = {
    "*1 dc in loop, 4 ch, 1 dc in centre of 9 tr, 4 ch, 1 dc in next, 4 ch; repeat": "18 sc, 72 ch; 6 x 1 space; asked place-assumed",
    "Dc all round, 2 in each loop": "12 sc; 6 x 1 space; asked place-assumed",
}
ON_DOZENS = {
    "*1 dc, 6 ch, sl st in 1st, into it 12 dc, miss 2; repeat": "104 sc, 8 picot; 8 x 3 st; asked perhaps-just-made",
    "*1 dc, 5 ch, miss 5; repeat from *; 2 ch, 1 tr in first dc": "4 sc, 22 ch; 4 x 6 st; does not close; asked perhaps-instead; asked row-does-not-close",
    "*2 dc in next st, 3 tr, taken together, 3 ch; repeat": "12 sc, 6 dc, 18 ch; 6 x 4 st",
    "*1 dc, 6 ch, miss 1, on these 1 dc, 1 half tr, 3 tr, miss 3; repeat": "4 sc, 2 hdc, 6 dc, 12 ch; 2 x 9 st; 6 left over; does not close; asked perhaps-just-made; asked row-does-not-close",
    "*(1 tr, 1 ch) 3 times in next st, and 1 tr, miss 3; repeat": "16 dc, 12 ch; 4 x 5 st; 4 left over; does not close; asked perhaps-one-place; asked row-does-not-close",
    "*3 tr taken together, 3 ch; repeat": "8 dc, 24 ch; 8 x 3 st",
    "*3 tr in next st, taken together, 3 ch, miss 2; repeat": "8 dc, 24 ch; 8 x 3 st",
    "*1 dc taking up 2 tr, 3 ch; repeat": "12 sc, 36 ch; 12 x 2 dc",
    "*1 dc taking 3 tr together, 3 ch; repeat": "8 sc, 24 ch; 8 x 3 dc",
    "*(1 dc, 1 ch) 3 times, 2 dc in the 4th; repeat": "15 sc, 9 ch; 3 x 7 st; 3 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "*(1 dc, 3 ch) twice, 1 dc in same st, miss 2; repeat": "18 sc, 36 ch; 6 x 4 st; asked perhaps-one-place",
}
ON_LACE_OF_TWELVE = {
    "*1 dc on dc, 1 ch, miss chain, 1 dc, 1 ch, miss chain, 1 dc, 1 ch, miss chain; repeat": "36 sc, 36 ch; 12 x 1 sc",
    "*5 tr on the 5 ch, 1 in each loop, 1 ch; repeat": "60 dc, 12 ch; 12 x 5 ch",
    "*3 tr in loop and dc, 3 ch; repeat": "36 dc, 12 sc, 36 ch; 12 x 1 space; asked place-assumed",
    "*1 tr in dc and loop, 3 ch; repeat": "24 dc, 36 ch; 12 x 1 sc; asked place-assumed; asked place-assumed",
    "*3 tr in loop, 1 dc on dc, 3 more tr in loop; repeat": "36 dc, 6 sc; 6 x 2 space",
    "*2 tr in loop, 3 ch, again 2 tr in loop; repeat": "48 dc, 36 ch; 12 x 1 space",
    "*3 tr in 5 ch, 3 ch, 3 tr in this loop; repeat": "72 dc, 36 ch; 12 x 1 ch-5 space",
    "*3 tr in first loop, 3 ch, 3 tr in this loop; repeat": "72 dc, 36 ch; 12 x 1 space",
    "*5 ch, 1 dc in loop, and the same in the next two loops; repeat": "12 sc, 20 ch; 4 x 3 space; asked place-assumed",
    "*3 tr in loop, 3 ch, 3 tr in same loop, 1 ch, and the same in the next two loops; repeat": "48 dc, 16 ch; 4 x 3 space; asked place-assumed; asked place-unclear",
}


@cases(
    (FOURS, ON_FOURS),
    (LONG, ON_LONG),
    (FANS, ON_FANS),
    (STITCHES, ON_STITCHES),
    (SIXTHS, ON_SIXTHS),
    (HOLES, ON_HOLES),
    (LACE, ON_LACE),
    (US_ARCHES, ON_US_ARCHES),
    (US_STITCHES, ON_US_STITCHES),
    (FIVE_CHAIN, ON_FIVE_CHAIN),
    (BLOCKED, ON_BLOCKED),
    (FANNED, ON_FANNED),
    (NINES, ON_NINES),
    (DOZENS, ON_DOZENS),
    (LACE_OF_TWELVE, ON_LACE_OF_TWELVE),
)
def test_which_place(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
