"""Which of a group, and how many of it: an ordinal that is of each group, stitches with no number,
repeats that begin inside a group; and what may stand between two places, or lead to the next.
"""

from __future__ import annotations

from phrases.said import BLOCKS, FIVES, On, cases, said

OF_FIVE = On(6, ("*5 treble in next loop, 3 chain; repeat",))
OF_FOUR = On(6, ("*4 treble in next loop, 3 chain; repeat",))
OF_THREE = On(6, ("*3 treble in next loop, 2 chain; repeat",))
NINES = On(6, ("*1 plain in next loop, 7 chain; repeat", "9 plain in each 7 chain"))
PETALS = On(
    6, ("*1 plain in next loop, 5 chain; repeat", "(1 plain, 7 treble, 1 plain) in each loop")
)
SINGLE = On(6, ("*1 treble in next loop, 2 chain; repeat",))
RING = On(1, ("16 plain in next loop",))
TO_AND_FRO = On(6, ("*1 plain in next loop, 5 chain; repeat, turn",), closed=False)

ON_OF_FIVE = {
    "*1 plain on the 3rd treble, 5 chain; repeat": "10 sc, 50 ch; 10 x 3 dc; asked perhaps-last-of-each",
    "*1 plain on the 3rd treble, 5 chain, 1 plain in the 3 chain, 5 chain; repeat": "12 sc, 60 ch; 6 x 5 dc",
    "*1 plain on the 3rd treble, 5 chain, miss 2 treble; repeat": "6 sc, 30 ch; 6 x 5 dc",
    "*1 plain on the first treble, 5 chain; repeat": "30 sc, 150 ch; 30 x 1 dc; asked perhaps-last-of-each",
    "*3 treble on treble, 4 chain; repeat": "30 dc, 40 ch; 10 x 3 dc; asked perhaps-last-of-each",
    "*3 treble on the 3 treble, 4 chain; repeat": "30 dc, 40 ch; 10 x 3 dc; asked perhaps-last-of-each",
    "*1 plain in next treble, 4 chain; repeat": "30 sc, 120 ch; 30 x 1 dc",
    "*5 plain on the 5 treble, 4 chain; repeat": "30 sc, 24 ch; 6 x 5 dc",
    "*1 plain on the trebles, 5 chain, 1 plain in the 3 chain, 5 chain; repeat": "12 sc, 60 ch; 6 x 5 dc; asked place-assumed; asked perhaps-one-place",
}

ON_OF_FOUR = {
    "*1 treble on the fourth treble, 3 treble in the 3 chain, 1 treble on the next treble, 2 chain, miss 2; repeat": "15 dc, 6 ch; 3 x 8 dc; 1 left over; does not close; asked perhaps-last-of-each; asked row-does-not-close",
    "*1 treble on each of the next trebles, 3 chain; repeat": "24 dc, 72 ch; 24 x 1 dc; asked place-assumed",
    "*3 chain, miss the trebles, 3 plain in the 3 chain; repeat": "18 sc, 18 ch; 6 x 4 dc; asked place-assumed",
    "*3 chain, miss the 4 trebles, 3 plain in the 3 chain; repeat": "18 sc, 18 ch; 6 x 4 dc",
}

ON_OF_THREE = {
    "*3 treble on the next trebles, 3 chain; repeat": "54 dc, 54 ch; 18 x 1 dc; asked place-assumed",
}

ON_BLOCKS = {
    "trebles on the trebles, 3 ch; repeat": "18 dc, 54 ch; 18 x 1 dc; asked place-assumed; asked perhaps-one-place",
}

ON_NINES = {
    "1 plain on the 5th plain, 6 chain; repeat": "10 sc, 60 ch; 10 x 5 sc; 4 left over; does not close; asked perhaps-last-of-each; asked row-does-not-close",
    "1 plain on the 5th of the 9 plain, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 9-sc group",
    "*3 plain on the 4th, 5th and 6th plain, 5 chain; repeat": "27 sc, 45 ch; 9 x 6 sc; asked perhaps-last-of-each",
    "*1 plain on the centre of the 9 plain, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 9-sc group",
}

ON_PETALS = {
    "1 plain on the fourth treble, 6 chain; repeat": "10 sc, 60 ch; 10 x 4 dc; 2 left over; does not close; asked perhaps-last-of-each; asked row-does-not-close",
    "1 plain on the fourth of the 7 treble, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 7-dc run",
}

ON_SINGLE = {
    "*3 treble on treble, 1 chain, 1 plain in next treble, 1 chain; repeat": "3 dc, 1 sc, 2 ch; 1 x 4 dc; 2 left over; does not close; asked perhaps-one-place; asked row-does-not-close",
    "*3 treble on the 3 treble, 1 chain; repeat": "6 dc, 2 ch; 2 x 3 dc",
    "*1 treble on the treble, 2 treble in the space, 1 treble on next treble; repeat from *": "12 dc; 3 x 2 dc; asked perhaps-shared",
}

ON_RING = {
    "*1 plain in the first plain, 5 chain, miss 1; repeat 7 times more": "8 sc, 40 ch",
}

ON_FIVES = {
    "5 chain, 1 plain in each of the next 3 loops, 9 treble in the next loop; repeat": "3 sc, 9 dc, 5 ch; 1 x 4 space; 2 left over; does not close; asked perhaps-as-they-come; asked row-does-not-close",
    "6 plain in each loop with a picot between": "36 sc, 30 picot; 6 x 1 space; asked perhaps-as-they-come",
    "6 plain in each loop with a picot between each": "36 sc, 30 picot; 6 x 1 space",
    "2 treble in each loop with 3 chain between": "12 dc, 18 ch; 6 x 1 space; asked perhaps-as-they-come",
    "3 treble in each loop with 3 chain between": "18 dc, 18 ch; 6 x 1 space",
    "*4 treble in the next loop, 3 chain between; repeat": "24 dc, 54 ch; 6 x 1 space; asked perhaps-as-they-come",
    "9 treble in each loop, joining with a plain on the plain": "6 sc, 30 ch; 6 x 1 loop; asked not-understood",
    "9 treble in each loop, joining with 1 single on each plain": "6 sc, 30 ch; 6 x 1 loop; asked not-understood",
    "9 treble in each loop, joining with 1 single on the first treble": "54 dc; 6 x 1 space",
    "*1 plain in one loop, 7 chain, 1 plain in the next; repeat from *": "6 sc, 21 ch; 3 x 2 space; asked perhaps-shared",
    "*1 plain in the middle of one loop, 7 chain, 1 plain in the middle of the next; repeat from *": "6 sc, 21 ch; 3 x 2 space; asked perhaps-shared",
    "1 plain in the first loop, *5 chain, 1 plain in the next loop; repeat from * once, 5 treble in the next loop, 1 plain in the next; repeat": "4 sc, 5 dc, 10 ch; 1 x 5 space; 1 left over; does not close; asked perhaps-shared; asked row-does-not-close",
}

ON_TO_AND_FRO = {
    "6 chain, 1 plain in the last loop, *5 chain, 1 plain in the next loop; repeat": "1 sc, 6 ch; 0 x 0 space; does not close; asked perhaps-last-of-each; asked start-chain-assumed; asked row-does-not-close",
    "6 chain, *1 plain in the next loop, 5 chain; repeat": "6 sc, 36 ch; 6 x 1 space; asked start-chain-assumed",
}


@cases(
    (OF_FIVE, ON_OF_FIVE),
    (OF_FOUR, ON_OF_FOUR),
    (OF_THREE, ON_OF_THREE),
    (BLOCKS, ON_BLOCKS),
    (NINES, ON_NINES),
    (PETALS, ON_PETALS),
    (SINGLE, ON_SINGLE),
    (RING, ON_RING),
    (FIVES, ON_FIVES),
    (TO_AND_FRO, ON_TO_AND_FRO),
)
def test_which_of_a_group_and_how_many(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
