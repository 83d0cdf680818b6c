"""Places of chain loops and of groups: the centre of the ch, the next chain of a loop, what is said
of the row below, how the hook goes.
"""

from __future__ import annotations

from phrases.said import HEADINGS, On, cases, said

OF_FIVE = On(48, ("*1 plain in next loop, 5 chain, miss 3; repeat",))
"""Twelve sc with a loop of 5 chains behind each."""

ONE_BY_ONE = On(48, ("*1 treble, 1 chain, miss 1; repeat",))
"""Twenty-four dc with a chain behind each."""

IN_THE_CENTRE = {
    f"*1 plain in the {part}, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 space"
    for part in (
        "centre of ch",
        "centre of the ch",
        "centre of next ch",
        "middle of the next ch",
        "centre of the chain",
        "centre st of the ch",
        "centre ch of the ch",
        "3rd st of the ch",
        "3rd ch of next ch",
        "3rd of the ch",
    )
} | {"1 plain in the centre of each ch, with 5 ch between": "12 sc, 60 ch; 12 x 1 space"}

ONE_LOOP = "12 x 1 ch-5 space"
NEXT_OF_LOOP = {
    "*1 plain in the first of the 5 ch, 1 htr in the next, 1 treble in the next, 1 htr in the next, 1 plain in the last; repeat": f"24 sc, 24 hdc, 12 dc; {ONE_LOOP}",
    "*1 treble in the 2nd of the 5 ch, 1 treble in next, 3 ch; repeat": f"24 dc, 36 ch; {ONE_LOOP}",
    "*1 treble in the 2nd ch of 5, 1 treble in the following, 3 ch; repeat": f"24 dc, 36 ch; {ONE_LOOP}",
    "*1 treble in the 2nd st of the 5 ch, 1 treble in the next, 3 ch; repeat": f"24 dc, 36 ch; {ONE_LOOP}",
    "*1 treble in the second chain of loop, 1 treble in the next, 3 ch; repeat": "24 dc, 36 ch; 12 x 1 space",
    "*1 plain in the 1st of the 5 ch and in each of the next 2, 3 ch; repeat": f"36 sc, 36 ch; {ONE_LOOP}; asked place-assumed",
    "*1 plain in the first of the 5 ch, 1 treble in each of the next 3, 1 plain in the last; repeat": f"24 sc, 36 dc; {ONE_LOOP}",
    "*1 treble in the 2nd of the 5 ch, 2 ch, 1 treble in the next stitch but one; repeat": f"24 dc, 24 ch; {ONE_LOOP}",
    "*1 treble in the 2nd of the 5 ch, 1 treble in the following but one; repeat": f"24 dc; {ONE_LOOP}",
    "*1 treble in the 2nd of the 5 ch, 2 ch, miss 1 ch, 1 treble in the next; repeat": f"24 dc, 24 ch; {ONE_LOOP}",
    # Several in one of them: the chain, and asked; behind chains the next loop, and asked.
    "*1 plain in the 1st of the 5 ch, 3 treble in the next, 3 ch; repeat": f"12 sc, 36 dc, 36 ch; {ONE_LOOP}; asked perhaps-one-place",
    "*1 treble in the 2nd of the 5 ch, 3 ch, 1 treble in next; repeat": "12 dc, 18 ch; 6 x 2 ch-5 space; asked perhaps-next-of",
    "*(1 plain, 1 ch, 1 plain) in the 1st of the 5 ch, (1 treble, 1 ch, 1 treble) in the next; repeat": f"24 sc, 24 dc, 24 ch; {ONE_LOOP}; asked perhaps-one-place",
    "*(1 plain, 1 ch, 1 plain) in the 1st of the 5 ch, 3 ch, (1 treble, 1 ch, 1 treble) in the next; repeat": "12 sc, 12 dc, 30 ch; 6 x 2 ch-5 space; asked perhaps-next-of",
    "*1 plain in the last of the 5 ch, 1 treble in the next; repeat": "6 sc, 6 dc; 6 x 2 ch-5 space; asked perhaps-next-of",
    "*1 plain in the 4th of the 5 ch, 1 treble in the next, 1 htr in the next; repeat": "6 sc, 6 dc, 6 hdc; 6 x 2 ch-5 space; asked perhaps-next-of",
}

OF_THE_ROW_BELOW = {
    "*1 treble in the 2nd, 1 treble in the 4th of the 5 ch{}, 3 ch; repeat": f"24 dc, 36 ch; {ONE_LOOP}",
    "*5 treble in the first 5 ch{}, 1 plain in the next; repeat": "30 dc, 6 sc; 6 x 2 ch-5 space; asked place-assumed",
    "*2 plain in next loop{}, working over the 5 ch, 5 ch; repeat": "24 sc, 60 ch; 12 x 1 space; asked taken-as-remark",
    "*2 treble in loop{}, inserting the hook under the chain, 5 ch; repeat": "24 dc, 60 ch; 12 x 1 space; asked taken-as-remark",
}
NOTHING_SAID = ("", " of the last row", " of previous round", " below", " of the row below")
OF_LOOPS_BELOW = {
    row.format(said): comes_to
    for row, comes_to in OF_THE_ROW_BELOW.items()
    for said in NOTHING_SAID
}
OF_TREBLE_BELOW = {
    f"*2 plain on the treble and 1 ch{said}, 4 ch; repeat": "48 sc, 96 ch; 24 x 1 dc"
    for said in NOTHING_SAID
}

HOW_THE_HOOK_GOES = {
    f"* 1 plain under the chain, 5 ch, repeat from *, {said}": "12 sc, 60 ch; 12 x 1 space; asked taken-as-remark"
    for said in (
        "putting the hook under the chain",
        "always putting the needle under the chain",
        "inserting the hook under the 5 chain",
        "putting the hook under the chain of last row each time",
        "working over the chains of the previous row",
    )
}

SHORT_LOOPS = OF_FIVE._replace(headings=f"{HEADINGS}loop means st\nl means us dc\n")
LOOPS_OF_CHAIN = {
    f"3 L {place}, 3 ch; repeat": "36 dc, 36 ch; 12 x 1 ch-5 space"
    for place in (
        "into the first loop of 5 chain",
        "into the next loop of 5 chain",
        "under the next loop of 5 ch",
        "in loop of 5",
        "in the next loop of ch 5",
    )
} | {
    "3 L in each loop of 5 chain": "36 dc; 12 x 1 ch-5 space",
    "3 L in every loop of 5 chain": "36 dc; 12 x 1 ch-5 space",
    "3 L in the loops of 5 chain": "36 dc; 12 x 1 ch-5 space",
    "1 plain in the 3rd loop of 5 chain, 3 ch; repeat": "12 sc, 36 ch; 12 x 1 ch-5 space",
    "1 plain in each loop": "72 sc; 72 x 1 st",
}

TOLD_TWICE = "asked place-assumed; asked place-assumed"
LOOP_AND_STITCH = {
    f"*1 treble in {places}, 3 ch; repeat": f"24 dc, 36 ch; {takes}{asked}"
    for places, takes, asked in (
        ("the loop and plain", "12 x 1 space", f"; {TOLD_TWICE}"),
        ("the loop and the plain", "12 x 1 space", ""),
        ("the plain and loop", "12 x 1 sc", f"; {TOLD_TWICE}"),
        ("the next plain and loop", "12 x 1 sc", f"; {TOLD_TWICE}"),
    )
}
TREBLE_AND_CHAINS = {
    "*1 plain on treble, 1 plain in next ch; repeat": "48 sc; 24 x 1 dc",
    "*3 plain on the treble and 2 ch; repeat": "36 sc; 12 x 2 dc; asked perhaps-last-of-each",
    "*1 plain on treble, 1 plain in each of the next 2 ch; repeat": "36 sc; 12 x 2 dc; asked perhaps-last-of-each",
}
STITCH_AND_CHAIN = {
    "*1 plain on treble and ch, 1 picot; repeat": f"48 sc, 24 picot; 24 x 1 dc; {TOLD_TWICE}",
    "*1 plain on the treble and ch, 3 ch; repeat": f"48 sc, 72 ch; 24 x 1 dc; {TOLD_TWICE}",
}
SIX = On(48, ("*1 dc in next loop, 6 ch, miss 5; repeat",), headings="terms: uk\n")
"""Eight sc with loops of 6, in a book that does not say whether chains count."""
OF_SIX = {
    "*1 dc in the 3rd and 4th of the 6 chain, 3 ch; repeat": "16 sc, 24 ch; 8 x 1 ch-6 space",
    "*1 dc in the 2nd, 3rd and 4th of the 6 chain; repeat": "24 sc; 8 x 1 ch-6 space",
}

PAIRS = On(48, ("*2 treble, 3 chain, miss 4; repeat",))
"""Eight groups of 2 dc, with 3 chains between."""
OVER_PAIRS = {
    "*6 treble on treble, 3 ch; repeat": "12 dc, 6 ch; 2 x 6 dc; 4 left over; does not close; asked perhaps-one-place; asked row-does-not-close",
    "*4 treble on treble, 3 ch; repeat": "16 dc, 12 ch; 4 x 4 dc; asked perhaps-one-place",
    "*4 treble on 4 treble, 3 ch; repeat": "16 dc, 12 ch; 4 x 4 dc; asked perhaps-one-place",
    "*4 treble on the next 4 treble, 3 ch; repeat": "16 dc, 12 ch; 4 x 4 dc",
    "*2 treble on treble, 3 ch; repeat": "16 dc, 24 ch; 8 x 2 dc",
}

FIVE_ALIKE = On(48, ("*1 treble in each of the next 5 loops, 3 chain, miss 3; repeat",))
"""Six groups of 5 dc, with 3 chains between."""
BESIDE = "3 ch, 1 plain under the 3 ch, 3 ch; repeat"
OVER_FIVE = {
    f"*3 treble on treble, {BESIDE}": "18 dc, 6 sc, 36 ch; 6 x 5 dc; asked perhaps-fewer",
    f"*3 treble on 3 treble, {BESIDE}": "18 dc, 6 sc, 36 ch; 6 x 5 dc; asked perhaps-fewer",
    f"*3 plain on 3 treble, {BESIDE}": "24 sc, 36 ch; 6 x 5 dc; asked perhaps-fewer",
    f"*2 treble on treble, {BESIDE}": "12 dc, 6 sc, 36 ch; 6 x 5 dc; asked perhaps-fewer",
    f"*5 treble on treble, {BESIDE}": "30 dc, 6 sc, 36 ch; 6 x 5 dc",
    f"*1 treble in each of the next 3 treble, {BESIDE}": "18 dc, 6 sc, 36 ch; 6 x 5 dc",
}

SHELLS = On(48, ("*1 plain in next loop, miss 2, 5 treble in next loop, miss 2; repeat",))
"""Eight shells of 5 dc, with an sc between."""
OVER_SHELLS = {
    "*miss the 1st treble, 1 plain on each of the next 3, 5 ch; repeat": "36 sc, 60 ch; 12 x 3 dc; asked perhaps-last-of-each",
    "*1 treble on the plain between two shells, 3 ch, 1 plain on the centre of the second shell, 3 ch; repeat": "8 dc, 8 sc, 48 ch; 8 x 1 sc; asked place-assumed",
    "*1 treble on the plain between the two shells, 3 ch, 1 plain on the centre of the next shell, 3 ch; repeat": "8 dc, 8 sc, 48 ch; 8 x 1 sc",
}

FIVE_IN_ONE = On(48, ("*5 treble in next loop, miss 2, 1 plain in next loop; repeat",))
OF_FIVE_IN_ONE = {
    f"*1 plain on the {part}, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 group of 5"
    for part in (
        "centre treble of the 5",
        "3rd treble of 5",
        "centre st of 5",
        "centre one of the 5",
        "3rd of the 5",
    )
} | {
    "*1 plain on the centre of the 5 treble, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 5-dc run",
    "*1 plain on the 1st of the 5, 3 ch, 1 plain on the last, 3 ch; repeat": "24 sc, 72 ch; 12 x 1 group of 5",
}
NINE_IN_LOOPS = On(
    48,
    ("*1 plain in next loop, 5 ch, miss 3; repeat", "*1 plain on plain, 9 plain in loop; repeat"),
)
OF_NINE = {
    "*plain on 5th of 9 plain, 7 ch; repeat": "12 sc, 84 ch; 12 x 1 9-sc group",
    "*1 plain on the centre of the 9 plain, 7 ch; repeat": "12 sc, 84 ch; 12 x 1 9-sc group",
    "*1 plain on the 5th plain of the 9, 7 ch; repeat": "12 sc, 84 ch; 12 x 1 group of 9",
}
AS_THEY_COME = NINE_IN_LOOPS._replace(
    below=(NINE_IN_LOOPS.below[0], "1 treble on each plain, 9 plain in each loop, as they come")
)
OF_NINE_ALONE = {
    "*1 plain on the 5th of the 9 plain, 7 ch; repeat": "12 sc, 84 ch; 12 x 1 9-sc run",
    "*1 plain on the 5th of the 9, 7 ch; repeat": "12 sc, 84 ch; 12 x 1 group of 9",
}

TWO_AND_THREE = On(48, ("*(2 treble, 2 chain, 2 treble) in next loop, 3 chain, miss 5; repeat",))
"""Eight shells with a space of 2 chains, with 3 chains between."""
OF_TWO_SIZES = {
    "*7 treble in the 2 ch, 3 ch, 1 plain in the next, 3 ch; repeat": "28 dc, 4 sc, 24 ch; 4 x 2 ch-2 space; asked place-assumed",
    "*(3 treble, 1 ch, 3 treble) in the 2 ch, 3 ch, (1 plain, 1 ch, 1 plain) in the next, 3 ch; repeat": "24 dc, 8 sc, 32 ch; 4 x 2 ch-2 space; asked place-assumed",
    "*7 treble in the 2 ch, 3 ch, 1 plain in the next space, 3 ch; repeat": "56 dc, 8 sc, 48 ch; 8 x 1 ch-2 space",
}
OF_ONE_SIZE = {
    "*7 treble in the 5 ch, 3 ch, 1 plain in the next, 3 ch; repeat": "42 dc, 6 sc, 36 ch; 6 x 2 ch-5 space",
}

OPEN_SHELLS = On(48, ("*8 treble with 1 chain between in next loop, miss 5; repeat",))
"""Eight shells of 8 dc with a chain between each two."""
OF_OPEN_SHELLS = {
    "3 plain in each space of the shell": "168 sc; 56 x 1 space",
    "3 plain in every space of the fan": "168 sc; 56 x 1 space",
    "3 plain in the spaces of each shell": "168 sc; 56 x 1 space",
    "*3 plain in each space of the shell; repeat": "168 sc; 1 x 56 space; 56 x 1 space; asked open-repeat-inside",
    "*3 plain in each of the 7 spaces of the shell; repeat": "168 sc; 8 x 7 space",
}
OF_SHELLS_OF_TWO = {
    "3 plain in each space of the shells": "24 sc; 8 x 1 shell",
}

THREES = On(48, ("*1 plain in next loop, 3 chain, miss 2; repeat",))
"""Sixteen sc with a loop of 3 chains behind each."""
SO_MANY_IN_SO_MANY = {
    "*1 ch, 3 plain in next 3 ch; repeat": "48 sc, 16 ch; 16 x 3 ch; asked perhaps-one-place",
    "*3 plain in next 3 ch, 1 plain on plain; repeat": "64 sc; 16 x 3 ch; asked perhaps-one-place",
    "*1 ch, 3 plain in 3 ch; repeat": "48 sc, 16 ch; 16 x 1 ch-3 space",
    "*1 ch, 3 plain on the next 3 ch; repeat": "48 sc, 16 ch; 16 x 3 ch",
    "*1 ch, 1 plain in each of the next 3 ch; repeat": "48 sc, 16 ch; 16 x 3 ch",
    "*2 plain in next 2 ch, miss 1, 1 plain on plain; repeat": "48 sc; 16 x 3 ch",
    "*1 plain in each of the next 3 ch, 1 plain on plain; repeat from * to last 3 ch, 3 plain in last 3 ch": "63 sc; 15 x 3 ch; asked perhaps-one-place",
}

OF_LOOPS_IN_TURN = {
    "*1 plain in each of the first 4 ch of the loop, 5 ch; repeat": "48 sc, 60 ch; 12 x 1 space",
    "*3 plain in the first 3 ch of next loop, 5 ch; repeat": "36 sc, 60 ch; 12 x 1 space",
    "*1 plain in each of the 3 ch of the loop, 5 ch; repeat": "60 sc, 100 ch; 20 x 3 ch; asked perhaps-last-of-each",
    "*5 treble in the next 5 ch, 1 plain in the next; repeat": "50 dc, 10 sc; 10 x 6 ch; asked perhaps-last-of-each",
    "*1 plain in each of the next 5 ch, 5 ch; repeat": "60 sc, 60 ch; 12 x 5 ch",
    "*1 plain in the 1st and last of the 5 ch, 5 ch; repeat": "24 sc, 60 ch; 12 x 1 ch-5 space",
    "*1 plain in the middle of the ch. 5 below, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 ch-5 space",
    "*1 plain in the plain under the chain, 5 ch; repeat": "12 sc, 60 ch; 12 x 4 loop; asked not-understood",
    "*1 plain in plain over the 5 ch, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 sc",
}
OF_RUNS = {
    "*1 plain on the 1st and last of the 5 treble, 5 ch; repeat": "12 sc, 30 ch; 6 x 1 5-dc run",
    "*1 plain on the 1st, 3rd and last of the 5 treble, 5 ch; repeat": "18 sc, 30 ch; 6 x 1 5-dc run",
    "*1 plain on the 2nd and 4th of the 5, 5 ch; repeat": "12 sc, 30 ch; 6 x 1 block of 5",
}
THREES_AND_FIVE = On(48, ("*3 treble, 5 chain, miss 3; repeat",))
BESIDE_THREE = {
    "*1 plain before the 3 treble, 1 plain on each of the treble, 1 plain after them, 3 ch; repeat": "40 sc, 24 ch; 8 x 1 space; asked place-assumed",
    "*1 plain in the chain before the 3 treble, 1 plain on each of the treble, 1 plain in the chain after them, 3 ch; repeat": "40 sc, 24 ch; 8 x 1 space; asked place-assumed",
}
PICOT_ON_TOP = On(48, ("*1 plain in next loop, 1 picot, 5 chain, miss 3; repeat",))
UNDER_PICOTS = {
    "*1 plain in plain under p, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 sc",
    "*1 plain in the plain under the picot, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 sc",
    "*1 plain in the plain below the picot, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 sc",
}
THREES_MISSED = On(
    48, ("*3 treble, 3 chain, miss 3; repeat", "*3 ch over the 3 treble, 3 treble in loop; repeat")
)
OVER_TREBLE = {
    "*1 plain into 3 ch over the 3 treble, 5 ch; repeat": "8 sc, 40 ch; 8 x 1 ch-3 space",
}
TREBLE_AND_FIVE = On(
    48,
    (
        "*1 plain in next loop, 3 chain, miss 3; repeat",
        "*1 treble on plain, 5 plain in loop; repeat",
    ),
)
FIRST_OF_LOOP = {
    "*1 plain into each of the first 4 plain of the loop, 5 ch; repeat": "48 sc, 60 ch; 12 x 1 group",
    "*4 plain on the first 4 plain of the group, 5 ch; repeat": "48 sc, 60 ch; 12 x 1 group",
    "*1 plain into each of the first 4 plain of scallop, 5 ch; repeat": "48 sc, 60 ch; 12 x 1 shell; asked place-assumed",
}
FIVE_IN_EACH = On(12, ("5 treble in each loop",))
FROM_THE_CENTRE = {
    "Slip stitch to centre treble, *5 ch, 1 plain in 3rd treble of next shell; repeat": "12 sc, 60 ch; 12 x 1 shell; asked place-assumed; asked perhaps-leads-back",
}
TURNED = On(13, ("1 treble in each loop, 3 chain, turn",), closed=False)
INTO_THE_TURNING_CHAIN = {
    "1 treble in each of the next 11 treble, 1 treble in the third chain of the turning chain": "13 dc; asked start-chain-assumed",
}


@cases(
    (OF_FIVE, IN_THE_CENTRE),
    (OF_FIVE, NEXT_OF_LOOP),
    (OF_FIVE, OF_LOOPS_BELOW),
    (ONE_BY_ONE, OF_TREBLE_BELOW),
    (OF_FIVE, HOW_THE_HOOK_GOES),
    (SHORT_LOOPS, LOOPS_OF_CHAIN),
    (OF_FIVE, LOOP_AND_STITCH),
    (ONE_BY_ONE, STITCH_AND_CHAIN),
    (ONE_BY_ONE, TREBLE_AND_CHAINS),
    (SIX, OF_SIX),
    (PAIRS, OVER_PAIRS),
    (FIVE_ALIKE, OVER_FIVE),
    (SHELLS, OVER_SHELLS),
    (FIVE_IN_ONE, OF_FIVE_IN_ONE),
    (NINE_IN_LOOPS, OF_NINE),
    (AS_THEY_COME, OF_NINE_ALONE),
    (TWO_AND_THREE, OF_TWO_SIZES),
    (OF_FIVE, OF_ONE_SIZE),
    (OPEN_SHELLS, OF_OPEN_SHELLS),
    (TWO_AND_THREE, OF_SHELLS_OF_TWO),
    (THREES, SO_MANY_IN_SO_MANY),
    (OF_FIVE, OF_LOOPS_IN_TURN),
    (FIVE_ALIKE, OF_RUNS),
    (THREES_AND_FIVE, BESIDE_THREE),
    (PICOT_ON_TOP, UNDER_PICOTS),
    (THREES_MISSED, OVER_TREBLE),
    (TREBLE_AND_FIVE, FIRST_OF_LOOP),
    (FIVE_IN_EACH, FROM_THE_CENTRE),
    (TURNED, INTO_THE_TURNING_CHAIN),
)
def test_what_is_said_of_loops(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
