"""`The 3 chain`, `the one treble`, `the centre of the 5`, `the last of the 3`, `the centre of the
chain`: of which of those that the row below makes.
"""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, BLOCKS, HEADINGS, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Body

FIVE_AND_THREE = On(12, ("*1 plain in loop, 5 chain, 1 treble in next loop, 3 chain; repeat",))
THREE_AND_TWO = On(6, ("(1 treble, 3 chain, 1 treble, 2 chain) in each loop",))
ONE_AND_FIVE = On(12, ("*1 plain in loop, 5 chain, 5 plain in next loop, 5 chain; repeat",))
SHELLS = On(6, ("*(2 treble, 3 chain, 2 treble) in next loop, 5 chain; repeat",))
SEVEN_AND_FIVE = On(6, ("(7 treble, 3 chain, 5 treble, 3 chain) in each loop",))
FOURS = On(6, ("(4 treble, 3 chain) in each loop",))
FOUR_AND_ONE = On(6, ("(4 treble, 2 chain, 1 treble, 2 chain) in each loop",))
THREE_AND_ONE = On(6, ("(3 plain, 2 chain, 1 plain, 2 chain) in each loop",))
FANS = On(12, ("*1 plain in loop, 3 chain, 5 treble in next loop, 3 chain; repeat",))
FANS_OF_FOUR = On(12, ("*1 plain in loop, 3 chain, 4 treble in next loop, 3 chain; repeat",))
FIVES_OF_EACH = On(6, ("(5 plain, 5 chain) in each loop",))
GAPS = On(6, ("(3 treble, 5 chain) in each loop",))

ON_FIVE_AND_THREE = {
    "*1 treble in each of the 3 chain, 5 chain; repeat from *": "18 dc, 30 ch; 6 x 1 ch-3 space",
    "*3 treble on the 3 chain, 5 chain; repeat from *": "18 dc, 30 ch; 6 x 1 ch-3 space",
    "*2 treble in each of the 3 chain, 5 chain; repeat from *": "36 dc, 30 ch; 6 x 1 ch-3 space; asked perhaps-one-place",
    "*1 treble in each of the 3 chain, 1 plain in the 5 chain; repeat from *": "18 dc, 6 sc; 6 x 1 ch-3 space",
    "*1 plain in each of the 5 chain, 1 treble in each of the 3 chain; repeat from *": "30 sc, 18 dc; 6 x 8 ch",
    "*1 treble in each of the next 3 ch; repeat from *": "48 dc; 16 x 3 ch",
}

ON_ONE_AND_FIVE = {
    "*1 treble on each of the 5 plain with 1 chain between, 7 treble in the next loop; repeat from *": "72 dc, 24 ch; 6 x 1 5-sc run",
    "*5 treble on the 5 plain, 7 treble in the next loop; repeat from *": "72 dc; 6 x 1 5-sc run",
    "*1 treble on the plain, 1 treble on each of the 5 plain, 3 chain; repeat from *": "36 dc, 18 ch; 6 x 6 sc",
}

ON_FOURS = {
    "*1 plain on the 1st of the 4 treble, 1 treble on each of the 4 treble, 5 chain; repeat from *": "3 sc, 12 dc, 15 ch; 3 x 2 4-dc run; asked perhaps-next-of",
    "*1 plain on the 1st of the 4 treble, 1 treble on each of the next 3 treble, 5 chain; repeat from *": "6 sc, 18 dc, 30 ch; 6 x 1 4-dc run",
    "*1 treble on each of the 4 treble, 3 chain; repeat from *": "24 dc, 18 ch; 6 x 4 dc",
}

ON_FOUR_AND_ONE = {
    "*1 treble on the 1 treble, 2 chain; repeat from *": "6 dc, 12 ch; 6 x 1 1-dc run",
    "*1 treble on the one treble, 2 chain; repeat from *": "6 dc, 12 ch; 6 x 1 1-dc run",
    "*1 treble on the single treble, 2 chain; repeat from *": "6 dc, 12 ch; 6 x 1 1-dc run",
    "*miss the 1 treble, 1 plain in the 2 chain; repeat from *": "6 sc; 6 x 1 1-dc run",
    "*miss the one treble, 1 plain in the 2 chain; repeat from *": "6 sc; 6 x 1 1-dc run",
    "*2 chain, 1 treble at the top of the one treble, 2 chain, 1 treble on each of the 4 treble; repeat from *": "30 dc, 24 ch; 6 x 1 1-dc run",
    "*1 treble in one treble, 2 chain; repeat from *": "30 dc, 60 ch; 30 x 1 dc",
}

ON_FANS = {
    "*1 plain on the plain, 5 chain, 3 treble on the centre of the 5 treble, 2 chain, 3 treble in the same, 5 chain; repeat from *": "6 sc, 36 dc, 72 ch; 6 x 1 sc",
    "*1 plain on the plain, 5 chain, 3 plain on the centre of the 5 treble, with 2 chain between each, 5 chain; repeat from *": "24 sc, 84 ch; 6 x 1 sc; asked perhaps-one-place",
    "*1 plain on the plain, 5 chain, 3 plain on the centre of the 5 treble divided by 2 chain, 5 chain; repeat from *": "24 sc, 84 ch; 6 x 1 sc; asked perhaps-one-place",
    "*1 plain on the plain, 3 chain, 3 treble on the centre of the 5 treble, 3 chain; repeat from *": "6 sc, 18 dc, 36 ch; 6 x 1 sc",
}

ON_FIVES_OF_EACH = {
    "*1 plain in the centre of the 5 chain, 1 treble on the first of the 5 plain, 3 chain, 1 treble on the last of the 5; repeat from *": "6 sc, 12 dc, 18 ch; 6 x 1 ch-5 space",
    "*1 plain in each of the first 4 chain of the 5, 5 chain; repeat from *": "24 sc, 30 ch; 6 x 1 ch-5 space",
    "*4 plain on the first 4 chain of the 5, 5 chain; repeat from *": "24 sc, 30 ch; 6 x 1 ch-5 space",
    "*1 treble in each of the first 4 plain of the 5, 5 chain; repeat from *": "24 dc, 30 ch; 6 x 1 5-sc run",
    "*1 plain in the first of the 5 plain, 1 treble in the last chain of next 5; repeat from *": "6 sc, 6 dc; 6 x 1 5-sc run",
    "*1 plain in the first of the 5 plain, 1 treble in the last chain of the 5; repeat from *": "6 sc, 6 dc; 6 x 1 5-sc run",
}

ON_BLOCKS = {
    "*1 plain in the 2nd of the 3 chain, 2 chain, 1 treble in the 1st of the 3 treble, 2 chain, 1 treble in the last of the 3, 2 chain; repeat from *": "6 sc, 12 dc, 36 ch; 6 x 1 ch-3 space",
    "*1 treble in the 1st of the 3 treble, 2 chain, 1 plain in the 2nd of the 3 chain, 2 chain, 1 plain in the last of the 3, 2 chain; repeat from *": "6 dc, 12 sc, 36 ch; 6 x 1 3-dc run",
    "in the centre of the chain 1 plain, 1 chain, 1 plain; repeat": "12 sc, 6 ch; 6 x 1 space",
    "*in the centre of the chain (1 plain, 1 chain, 1 plain); repeat from *": "12 sc, 6 ch; 6 x 1 space",
    "*in the 2nd of the chain 2 plain, 2 chain; repeat from *": "12 sc, 12 ch; 6 x 1 space",
}

ON_GAPS = {
    "1 treble in the centre of the chain and 1 picot of 4 chain; repeat": "6 dc, 6 picot; 6 x 1 space",
    "*1 treble in the centre of the chain and 1 picot; repeat from *": "6 dc, 6 picot; 6 x 1 space",
    "1 treble in the centre of the chain, 3 chain; repeat": "6 dc, 18 ch; 6 x 1 space",
    "*1 plain in the centre of the chain stitch; repeat from *": "30 sc; 30 x 1 ch",
}


@cases(
    (FIVE_AND_THREE, ON_FIVE_AND_THREE),
    (THREE_AND_TWO, {"*1 treble in each of the 2 chain; repeat": "12 dc; 6 x 1 ch-2 space"}),
    (ONE_AND_FIVE, ON_ONE_AND_FIVE),
    (
        SHELLS,
        {
            "*3 plain in the 3 chain, 5 treble on the 5 chain; repeat from *": "18 sc, 30 dc; 6 x 1 ch-3 space",
            "*1 plain in the 2nd of the 3 chain, 5 treble on the 5 chain; repeat from *": "6 sc, 30 dc; 6 x 1 ch-3 space",
        },
    ),
    (
        SEVEN_AND_FIVE,
        {
            "*1 plain on each of the 7 treble, 3 chain, 1 treble on each of the 5 treble, 3 chain; repeat from *": "42 sc, 30 dc, 36 ch; 6 x 12 dc",
            "*5 plain on the 5 treble, 8 chain; repeat from *": "30 sc, 48 ch; 6 x 1 5-dc run",
        },
    ),
    (FOURS, ON_FOURS),
    (FOUR_AND_ONE, ON_FOUR_AND_ONE),
    (
        THREE_AND_ONE,
        {"*1 treble on the 1 plain, 4 chain; repeat from *": "6 dc, 24 ch; 6 x 1 1-sc run"},
    ),
    (ARCHES, {"*1 treble on the 1 plain, 3 chain; repeat from *": "12 dc, 36 ch; 12 x 1 sc"}),
    (FANS, ON_FANS),
    (FIVES_OF_EACH, ON_FIVES_OF_EACH),
    (BLOCKS, ON_BLOCKS),
    (GAPS, ON_GAPS),
)
def test_the_so_many_are_those_that_stand_so_below(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def _read(row: str, on: On) -> Body:
    text = f"{HEADINGS}round 1: {on.below[0]}.\nround 2: {row}.\n"
    border, _ = read_border(Source("book.border", text))
    assert border is not None
    return border.rows[-1].body


@pytest.mark.parametrize(
    ("on", "row", "written_out"),
    [
        (
            FIVE_AND_THREE,
            "1 treble in each of the 3 chain, 5 chain; repeat",
            "1 treble in 1st ch of the ch-3 space, 1 treble in each of the next 2 ch, 5 chain; repeat",
        ),
        (
            FANS,
            "*1 plain on plain, 5 chain, 3 treble on the centre of the 5 treble, 2 chain, 3 treble in the same; repeat from *",
            "*1 plain on plain, 5 chain, 3 treble in centre of the run of 5 treble, 2 chain, 3 treble in same place; repeat from *",
        ),
        (
            FANS_OF_FOUR,
            "*1 plain on plain, 2 treble on the centre of the 4 treble, 1 chain, 2 treble in the same; repeat from *",
            "*1 plain on plain, 2 treble in centre of the run of 4 treble, 1 chain, 2 treble in same place; repeat from *",
        ),
        (
            BLOCKS,
            "*1 plain in the 2nd of the 3 chain, 1 treble in the 1st of the 3 treble, 2 chain, 1 treble in the last of the 3; repeat from *",
            "*1 plain in 2nd ch of the ch-3 space, 1 treble in 1st st of the run of 3 treble, 2 chain, 1 treble in last st of the run of 3 treble; repeat from *",
        ),
    ],
)
def test_a_row_is_read_as_it_would_be_written_out(on: On, row: str, written_out: str) -> None:
    assert _read(row, on) == _read(written_out, on)
