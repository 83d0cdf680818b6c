"""Rows of which a harmless word changed the count: what stands after each of a step's stitches,
picots that may be none, a part of a run, the rest of a loop, two stitches worked off as one.
"""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, FIVES, LOOPS, STITCHES, On, cases, said

SCALLOPS = On(6, ("*1 plain in loop, 3 chain, 5 treble in same loop, 3 chain; repeat",))
"""Six times sc, 3 chains, 5 dc in one loop, 3 chains."""
TWO_LOOPS = On(6, ("*3 chain, 1 plain in loop, 2 chain, 1 plain in same loop; repeat",))
"""Six times a space of 3, sc, a space of 2, sc."""
BY_TURNS = On(6, ("*1 plain in loop, 5 chain, 1 treble in same loop, 3 chain; repeat",))
"""Six times sc, 5 chains, dc, 3 chains."""
SHELLS = On(6, ("*1 plain in loop, 5 treble in same loop, 3 chain; repeat",))
"""Six times sc, 5 dc, 3 chains."""
PAIRS = On(6, ("(1 treble, 2 chain, 1 treble) in loop; repeat",))
"""Six times dc, 2 chains, dc, one behind another."""
THIRTY = On(30, ("1 treble in each loop",))
RUNS = On(6, ("*1 treble in loop, 5 plain in same loop, 3 chain; repeat",))
"""Six times dc, 5 sc, 3 chains."""
UNCOUNTED = On(6, ("*1 plain in loop, 5 chain; repeat",), headings="terms: uk\nplain means us sc\n")
"""Six sc with 5 chains behind each, in a book that does not say that chains count."""

ON_SCALLOPS = {
    # behind each of five, not behind the one in a place of its own
    "*1 treble on the plain, 5 chain, 1 treble on each of the 5 treble, with 1 chain after each; repeat": "36 dc, 60 ch; 6 x 1 sc",
    "*5 treble on the plain, 3 chain, 5 treble on the 5 treble, with 1 chain after each; repeat": "60 dc, 48 ch; 6 x 1 sc",
    "*1 plain on the plain, 5 chain, 1 treble on each of the 5 treble, with 1 chain after each; repeat": "6 sc, 30 dc, 60 ch; 6 x 1 sc",
}

ON_THIRTY = {
    "1 treble in next st, 1 treble in each of the next 4, with 1 chain after each; repeat": "30 dc, 24 ch; 6 x 5 st; asked perhaps-as-they-come",
    "1 treble in next st, 1 treble in each of the next 4, a picot after each; repeat": "30 dc, 24 picot; 6 x 5 st; asked perhaps-as-they-come",
    "1 treble in each of next 2 st, 1 treble in each of next 3 st, 1 chain after each; repeat": "30 dc, 18 ch; 6 x 5 st; asked perhaps-as-they-come",
    "1 treble in next st, 2 chain, 1 treble in each of the next 4 st, with 1 chain after each; repeat": "30 dc, 36 ch; 6 x 5 st",
    "1 plain in next st, 2 treble in the next 2 st, 3 chain after each; repeat": "10 sc, 20 dc, 60 ch; 10 x 3 st",
    "3 treble in next st, 3 treble in next st, 2 chain after each; repeat": "90 dc, 60 ch; 30 x 1 st",
    # several one by one, though a short name has no plural
    "5 treble in successive tr; repeat": "30 dc; 6 x 5 dc",
    "5 tr in consecutive tr; repeat": "30 dc; 6 x 5 dc",
    "5 treble in successive trebles; repeat": "30 dc; 6 x 5 dc",
    "5 treble in successive stitches; repeat": "30 dc; 6 x 5 st",
    "5 treble in next treble; repeat": "150 dc; 30 x 1 dc",
}

ON_TWO_LOOPS = {
    # a place behind it all is that of these alone
    "*2 treble in the 3 chain, 3 chain, 2 treble in the same, 2 treble, with 3 chain after each, in the 2 chain; repeat": "36 dc, 54 ch; 6 x 1 ch-3 space",
}

ON_BY_TURNS = {
    "*5 treble on the plain, 3 chain, 1 plain at the top of the treble, 4 chain; repeat": "30 dc, 24 ch, 6 picot; 6 x 1 sc; asked perhaps-picot",
    "*under the 5 chain 1 treble, 4 plain, 1 treble; 4 chain, 1 plain in the top of the treble; repeat": "12 dc, 24 sc, 6 picot; 6 x 1 ch-5 space; asked perhaps-picot",
    # of this row: said so, closed by a stitch that makes nothing, or behind the one below
    "*5 treble on the plain, 3 chain, 1 plain at the top of the last treble, 4 chain; repeat": "30 dc, 24 ch, 6 picot; 6 x 1 sc",
    "*5 treble on the plain, 3 chain, 1 slip stitch at the top of the treble, 4 chain; repeat": "30 dc, 24 ch, 6 picot; 6 x 1 sc",
    "*1 treble on the treble, 3 chain, 1 plain at the top of the treble, 4 chain; repeat": "6 dc, 24 ch, 6 picot; 6 x 1 dc",
}

ON_SHELLS = {
    # joined behind it: a picot like those before; with nothing behind it, either
    "1 plain on the plain, *5 chain, 1 treble on the 3rd of the 5 treble, 4 chain, 1 single in the 1st, 1 plain on the plain; repeat from * 4 times more, 5 chain, 1 treble on the 3rd of the 5 treble, 4 chain, 1 single in the 1st, join": "6 sc, 6 dc, 30 ch, 6 picot",
    "1 plain on the plain, *5 chain, 1 treble on the 3rd of the 5 treble, 4 chain, 1 single in the 1st, 1 plain on the plain; repeat from * 4 times more, 5 chain, 1 treble on the 3rd of the 5 treble, 4 chain, 1 single in the 1st": "6 sc, 6 dc, 34 ch, 5 picot; asked perhaps-picot",
    "1 plain on the plain, *5 chain, 1 treble on the 3rd of the 5 treble, 5 chain, 1 plain on the plain; repeat from * 4 times more, 5 chain, 1 treble on the 3rd of the 5 treble, 5 chain, 1 single in the 1st": "6 sc, 6 dc, 60 ch",
}

ON_PAIRS = {
    "(2 treble, 2 chain, 2 treble) between the 2 treble; repeat": "48 dc, 24 ch; 12 x 1 dc; asked place-assumed",
    "3 treble between the 2 treble, 3 chain; repeat": "36 dc, 36 ch; 12 x 1 dc; asked place-assumed",
    "*1 treble between the treble and 1 picot; repeat": "12 dc, 12 picot; 12 x 1 dc; asked place-assumed",
    "*1 treble in the 2 chain and 1 picot; repeat": "6 dc, 6 picot; 6 x 1 ch-2 space",
}

ON_RUNS = {
    # all in the 3rd, whatever stands after some of them
    "*5 plain in the 3rd of the 5 plain, a picot after the 3rd; repeat": "30 sc, 6 picot; 6 x 1 5-sc run",
    "*5 plain in the centre of the 5 plain, with a picot after each, 3 chain; repeat": "30 sc, 18 ch, 30 picot; 6 x 1 5-sc run",
    "*5 plain on the 5 plain, a picot after the 3rd; repeat": "30 sc, 6 picot; 6 x 5 sc",
}

ON_UNCOUNTED = {
    # the loop goes on behind chains of it that are missed
    "*1 plain on the 1st of the 5 chain, 2 chain, miss 1 chain, 1 plain on the next, 2 chain, miss 1 chain, 1 plain on the next, 1 chain; repeat": "18 sc, 30 ch; 6 x 1 ch-5 space",
    "*1 plain on the 2nd of the 5 chain, miss 1 chain, 1 plain on each of the next 2, 4 chain; repeat": "18 sc, 24 ch; 6 x 1 ch-5 space",
}

ON_STITCHES = {
    # two worked off as one, whether or not a number stands before them
    "treble in next st, keep the last loop on the hook, another treble in next st, work off all together, 3 chain; repeat": "6 dc, 18 ch; 6 x 2 st",
    "1 treble in next st, holding back last 2 loops, 1 treble in next st, work off all together, 3 chain; repeat": "6 dc, 18 ch; 6 x 2 st",
    "*treble in next st, 3 chain, keeping the last loop of each on the hook 3 treble in next st, draw through all; repeat": "12 dc, 18 ch; 6 x 2 st",
    "Slip to next, *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "Shell edge: 5 treble in next st, miss 2; repeat": "20 dc; 4 x 3 st; asked taken-as-remark",
}

ON_FIVES = {
    "*5 treble under the 5 chain at end of shell, 1 plain on plain; repeat": "30 dc, 6 sc; 6 x 1 ch-5 space",
    "*under the 5 chain at end of shell 5 treble, 1 plain on plain; repeat": "30 dc, 6 sc; 6 x 1 ch-5 space",
}

ON_ARCHES = {
    # a space that is named by its chains is no step
    "begin in next ch-3 space, *1 plain in next space, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 space",
}

ON_LOOPS = {
    "1 plain in each loop. Buttonhole the edge.": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "Picot edge: *2 plain in loop, 1 picot; repeat": "24 sc, 12 picot; 12 x 1 loop; asked taken-as-remark",
}


@cases(
    (SCALLOPS, ON_SCALLOPS),
    (THIRTY, ON_THIRTY),
    (TWO_LOOPS, ON_TWO_LOOPS),
    (BY_TURNS, ON_BY_TURNS),
    (SHELLS, ON_SHELLS),
    (PAIRS, ON_PAIRS),
    (RUNS, ON_RUNS),
    (UNCOUNTED, ON_UNCOUNTED),
    (STITCHES, ON_STITCHES),
    (FIVES, ON_FIVES),
    (ARCHES, ON_ARCHES),
    (LOOPS, ON_LOOPS),
)
def test_what_rows_with_a_harmless_word_come_to(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize("missed", ["miss 1 chain, 1 plain on the next", "1 plain on the 4th"])
def test_a_next_behind_a_missed_chain_is_of_the_loop_named(missed: str) -> None:
    row = f"*1 plain on the 2nd of the 5 chain, 2 chain, {missed}"
    row += "" if "miss" in missed else " of the same 5 chain"
    assert said(f"{row}, 1 chain, 1 plain on the plain; repeat", UNCOUNTED).startswith(
        "18 sc, 18 ch; 6 x "
    )
