"""What is worked between: `7 long under every 5 chain, with 1 plain on the plain between`."""

from __future__ import annotations

from phrases.said import ARCHES, On, cases, said

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
