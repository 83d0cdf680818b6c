"""What is worked between: `7 long under every 5 chain, with 1 plain on the plain between`."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, BLOCKS, SIXES, STITCHES, On, cases, said

BOTH = "12 sc, 84 dc; 24 x 0 ch-3 space, 1 sc"
GAPS = "12 sc, 84 dc; 24 x 1 ch-3 space"

TURN_ABOUT = {
    "7 long under every 3 chain, with a plain on the plain between": BOTH,
    "7 long under every 3 chain, and 1 plain on the plain between the loops": BOTH,
    "7 long under every 3 chain, 1 plain on the plain between them; join": BOTH,
    # where no stitch is named that it goes on: the gap itself, whatever stands there
    "7 long under every 3 chain, with a plain between the shells": GAPS,
    "7 long under every 3 chain, with a plain between each": GAPS,
    "7 long under every 3 chain, uniting between each with a plain": GAPS,
    "7 long in each space, with 3 ch between": "84 dc, 36 ch; 12 x 1 space",
    # the stitches made, by their number; of what is made in each place it may be either
    "*2 long in next loop, with 2 ch between the 2 long; repeat": "24 dc, 24 ch; 12 x 1 space",
    "2 long in each space, with 3 ch between them": (
        "12 sc, 36 ch; 12 x 1 loop; asked not-understood"
    ),
    # more behind it: what is worked over and over is not said
    "7 long in each space, with a plain on the plain between, 3 ch": (
        "12 sc, 36 ch; 12 x 1 loop; asked not-understood"
    ),
}

IN_A_ROW = ARCHES._replace(closed=False)
"""Twelve sc to and fro, with a space of 3 chains between one and the next."""

TO_AND_FRO = {
    # wherever they come: the plain at either end too
    "7 long under every 3 chain, with a plain on the plain between": (
        "12 sc, 77 dc; 23 x 0 ch-3 space, 1 sc"
    ),
    "7 long under every 3 chain, with a plain between each": "77 dc, 10 sc; 21 x 1 ch-3 space",
}

BEGUN = {
    "sl st to the first 3 ch, 1 dc in it, *5 ch, 1 dc in next space; repeat; 5 ch": (
        "12 sc, 60 ch; 11 x 1 space"
    ),
    "Slip two stitches up the first chain; *1 dc in the centre of next space, 6 ch; repeat": (
        "12 sc, 72 ch; 12 x 1 space"
    ),
    "Slip up the first loop; *1 dc in next loop, 6 ch; repeat": "12 sc, 72 ch; 12 x 1 space",
    "sl st to the centre treble, *1 dc in next loop, 6 ch; repeat": (
        "12 sc, 36 ch; 12 x 1 loop; asked not-understood"
    ),
    "begin in the middle of any space; into it 1 dc, *6 ch, 1 dc in the next space; repeat; 6 ch": (
        "12 sc, 72 ch; 11 x 1 space"
    ),
}

WHICH = {
    "*1 dc in next loop, 3 ch, 3 treble in the other loop, 3 ch; repeat": (
        "6 sc, 18 dc, 36 ch; 6 x 2 space"
    ),
    "*1 dc in next loop, 5 ch, 3 treble in 2nd loop from there, 5 ch; repeat": (
        "4 sc, 12 dc, 40 ch; 4 x 3 space"
    ),
    "1 dc in next loop, 1 treble in each of the remaining 11 loops": "1 sc, 11 dc",
    "1 dc in next loop, 1 treble in each of the remaining loops": "1 sc, 11 dc; 11 x 1 space",
}


@cases((ARCHES, TURN_ABOUT), (IN_A_ROW, TO_AND_FRO), (ARCHES, BEGUN), (ARCHES, WHICH))
def test_each_comes_where_it_stands(on: On, row: str, comes_to: str) -> None:
    """The counts are those of twelve spaces and the stitches between them."""
    assert said(row, on) == comes_to


INSIDE_AND_OUTSIDE = {
    "3 treble in each loop, 1 ch between every treble, 3 ch between the loops": (
        "36 dc, 60 ch; 12 x 1 space"
    ),
    "3 treble in each loop, 3 ch between the loops, 1 ch between every treble": (
        "36 dc, 60 ch; 12 x 1 space"
    ),
    "3 treble in each loop, 2 ch between each, 5 ch after each 3": "36 dc, 108 ch; 12 x 1 space",
    "3 treble in each loop, with 1 ch between the treble, 2 ch between groups": (
        "36 dc, 48 ch; 12 x 1 space"
    ),
    "3 treble with 2 ch between each, in each loop, with 5 ch between": (
        "36 dc, 108 ch; 12 x 1 space"
    ),
    "3 treble in each loop, 5 ch between the groups": "36 dc, 60 ch; 12 x 1 space",
    # the place said first, all that is named behind it goes there
    "in each loop work 3 treble with 1 ch between each treble": "36 dc, 24 ch; 12 x 1 space",
    "in each loop 3 treble, with 1 ch between the treble": "36 dc, 24 ch; 12 x 1 space",
    "in each loop 1 treble, with 1 ch between the treble": "12 dc, 12 ch; 12 x 1 space",
    # between each treble: of one loop and of two
    "2 treble in each loop, with 1 ch between each treble": "24 dc, 24 ch; 12 x 1 space",
}

OF_GROUPS = {
    "1 treble in each loop, 3 ch between the groups": "6 dc, 18 ch; 6 x 1 space",
    "*3 treble in the next 3 treble, ch 5; repeat from *": "18 dc, 30 ch; 6 x 3 dc",
    "3 treble together over the next 3 treble, 3 ch; repeat": "6 dc, 18 ch; 6 x 3 dc",
}


@cases((ARCHES, INSIDE_AND_OUTSIDE), (BLOCKS, OF_GROUPS))
def test_what_is_named_says_what_chains_stand_between(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


EITHER_WAY = (
    (ARCHES, "3 treble in each loop, with 1 ch between the treble"),
    (ARCHES, "3 treble in each loop divided by 2 ch"),
    (ARCHES, "3 treble in each loop, with 2 ch between, 5 ch between"),
    (ARCHES, "(1 treble, 1 ch, 1 treble) in each loop, 3 ch between each, 5 ch between groups"),
    (BLOCKS, "1 treble on each treble of the group, 3 ch between the groups"),
    (BLOCKS, "1 treble between each treble, 3 ch after each group"),
    (SIXES, "1 treble between every treble, 3 ch between the groups"),
    (BLOCKS, "3 treble on 3 treble, 5 ch between each group; repeat"),
    (BLOCKS, "3 treble under the chain, 3 ch between each group; repeat"),
    (STITCHES, "4 treble in loop with 1 ch between each group; repeat"),
)


@pytest.mark.parametrize(("on", "row"), EITHER_WAY)
def test_chains_that_may_stand_between_two_things_are_not_guessed(on: On, row: str) -> None:
    assert "asked not-understood" in said(row, on)
