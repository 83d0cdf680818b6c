"""What hunts for misreadings found last: what `then` parts, chains that lead back to a start, what
a repeat goes into, what stands in a shell, what is told twice.
"""

from __future__ import annotations

from phrases.said import ARCHES, STITCHES, On, cases, last_of, said

SHELLS = On(6, ("*5 treble in next loop, 2 chain, 1 treble in next loop, 2 chain; repeat",))
"""Three shells of five dc, with a dc by itself behind each."""

US_ARCHES = ARCHES._replace(
    headings="terms: us\nchains count as stitches: yes\n",
    below=("1 sc in each loop, with ch 3 between",),
)

BEHIND_THEN = {
    "under the chain 1 plain, then 3 treble, then 1 plain; repeat": "24 sc, 36 dc; 12 x 1 space",
    "*in loop 7 treble, then 1 chain; repeat": "84 dc, 12 ch; 12 x 1 space",
    "in each loop 1 plain, then 3 treble": "12 sc, 36 dc; 12 x 1 space; asked perhaps-one-place",
    "1 plain in loop, then 3 treble, then 1 plain; repeat": "12 sc, 18 dc; 6 x 2 space; asked perhaps-one-place",
    "*3 treble, 1 picot, then 3 treble in the same loop; repeat": "96 dc, 16 picot; 16 x 3 st; asked perhaps-one-place",
    "*3 treble, 1 picot; 3 treble in the same loop; repeat": "96 dc, 16 picot; 16 x 3 st",
    "*2 plain, then 5 chain, then 1 plain in same stitch; repeat": "72 sc, 120 ch; 24 x 2 st; asked perhaps-picot",
    "*2 plain, 5 chain; 1 plain in same stitch; repeat": "72 sc, 120 ch; 24 x 2 st",
}

LEADING_BACK = {
    "begin in the centre of a loop, *6 chain, 1 plain in the next loop; repeat": "11 sc, 66 ch; 11 x 1 space; asked perhaps-leads-back",
    "1 plain in the centre of a loop, *6 chain, 1 plain in the next loop; repeat from *": "12 sc, 66 ch; 11 x 1 space; asked perhaps-leads-back",
    "1 plain in first loop, *6 chain, 1 plain in next loop; repeat from *": "12 sc, 72 ch; 11 x 1 space; asked meets-its-start",
    "begin in the loop, *6 chain, 1 plain in the next loop; repeat": "12 sc, 72 ch; 12 x 1 space",
    "begin in the loop, 3 chain, 2 treble in the loop, *7 chain, 3 treble in next loop; repeat from *": "33 dc, 70 ch; 10 x 1 space; asked perhaps-one-place; asked start-chain-assumed; asked perhaps-leads-back",
    "begin in the loop, 3 chain, 2 treble in the same loop, *7 chain, 3 treble in next loop; repeat from *, 7 chain, join": "36 dc, 84 ch; 11 x 1 space; asked start-chain-assumed",
}

REPEATED_IN = {
    "*1 plain, 5 treble, 1 plain, repeat from * in each loop": "24 sc, 60 dc; 12 x 1 space",
    "*2 plain, 3 chain, repeat from * in each loop": "24 sc, 36 ch; 12 x 1 space",
    "(2 plain, 1 picot, 2 plain) repeat in every loop": "48 sc, 12 picot; 12 x 1 space",
    "*2 plain, miss 1, repeat from * in each loop": "32 sc; 16 x 3 st",
    "*5 treble in loop, repeat from * in every loop all round": "60 dc; 12 x 1 space",
    "3 treble in each loop, with 1 treble in each plain": "48 dc; 24 x 0 space, 1 sc",
    "in each loop make 3 treble, with 1 treble in each plain": "48 dc; 24 x 0 space, 1 sc",
    "1 treble in each plain all round, making 3 treble over each chain of 3": "48 dc; 24 x 1 sc, 0 ch-3 space",
    "*3 treble in each loop; join": "36 dc; 12 x 1 space; asked star-assumed",
    "*5 treble in loop; repeat from * in the next loop": "60 dc; 12 x 1 space",
}

IN_SHELLS = {
    "1 plain in each treble of shell": "18 sc; 18 x 1 dc; asked place-assumed",
    "*1 plain in treble of shell, 3 chain; repeat": "18 sc, 54 ch; 18 x 1 dc; asked place-assumed",
    "*3 plain in the 3rd treble of the shell, 3 chain; repeat": "9 sc, 9 ch; 3 x 1 shell",
}

ON_STITCHES = {
    "Treble, 1 in each stitch": "12 dc; 12 x 1 st",
    "D.c., working 2 stitches in each treble": "24 sc; 12 x 1 dc",
    "*3 treble, one on each treble, 1 chain; repeat": "12 dc, 4 ch; 4 x 3 dc; asked place-assumed",
    "*3 tr. (one on each tr.), 1 chain; repeat": "12 dc, 4 ch; 4 x 3 dc",
    "*1 treble in next, leave 1, 1 chain; repeat": "6 dc, 6 ch; 6 x 2 st",
    "*1 treble in 2nd, and in each of next 2, 1 chain; repeat": "9 dc, 3 ch; 3 x 4 st; asked place-assumed",
    "2 chain, 1 treble in next 4 times, 2 chain, 8 plain": "4 dc, 8 sc, 10 ch; asked times-of-the-row",
    "1 treble on the 1st treble, *3 chain, 1 treble on the 3rd; repeat from *": "4 dc, 9 ch; 3 x 3 dc; 2 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "1 treble, 2 chain; repeat from beginning of row": "12 dc, 24 ch; 12 x 1 st",
    "(1 treble in loop, 1 picot) 5 times, 1 treble in same loop, miss 2; repeat": "12 dc; 12 x 1 loop; asked perhaps-one-place; asked row-does-not-close; asked no-stitches",
    "*1 plain, 2 chain, miss 2 *; and so on": "4 sc, 8 ch; 4 x 3 st",
    "*1 plain, 2 chain, miss 2; repeat 3 times all round": "4 sc, 8 ch",
    "1 treble in each treble, and the last treble in the third of the turning chain": "12 dc; 12 x 1 dc; asked taken-as-remark",
    "For the border: 1 treble in each": "12 dc; 12 x 1 st; asked taken-as-remark",
    "fasten the thread in a corner of the linen, 1 treble in each": "12 dc; 12 x 1 st; asked taken-as-remark",
    "1 treble in each, thus forming 12 petals": "12 dc; 12 x 1 st; asked taken-as-remark",
    "1 treble (cotton once round the hook) in each": "12 dc; 12 x 1 st; asked taken-as-remark",
}

CHAINS_FIRST = {
    "*3 dc in the ch 3, ch 1; repeat": "36 dc, 12 ch; 12 x 1 ch-3 space",
    "*3 dc under the next ch 3, with ch 1 between; repeat": "36 dc, 24 ch; 12 x 1 ch-3 space",
    "*1 dc in 2d of ch, ch 3; repeat": "12 dc, 36 ch; 12 x 1 space",
    "ch 3, skip the first space, *3 dc in next space; repeat": "34 dc; 11 x 1 space; asked start-chain-assumed; asked perhaps-missed",
}


@cases(
    (ARCHES, BEHIND_THEN),
    (ARCHES, LEADING_BACK),
    (ARCHES, REPEATED_IN),
    (SHELLS, IN_SHELLS),
    (STITCHES, ON_STITCHES),
    (US_ARCHES, CHAINS_FIRST),
)
def test_what_was_misread_in_silence(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


FOUNDATIONS = {
    "Make a chain of 12 stitches, join in a ring.": "foundation-named",
    "Ch. 12; unite in a circle.": "foundation-named",
    "Make a chain of the required length.": "taken-as-remark",
}
"""First rows that make the edge itself, and what is told of them."""


def test_behind_a_row_that_makes_the_foundation_the_next_is_the_first() -> None:
    for first, told in FOUNDATIONS.items():
        rows = f"1st row: {first}\n2nd row: 1 treble in 4th chain from the hook, 1 treble in each."
        comes_to = last_of(rows, On(12))
        assert comes_to == f"9 dc; 8 x 1 loop; asked {told}; asked foundation-passed", first


def test_the_last_row_may_begin_again_at_an_earlier_one() -> None:
    rows = "1st row: 1 treble in each.\n2nd row: 1 plain in each.\n3rd row: repeat from 1st row."
    assert last_of(rows) == "12 dc; 12 x 1 st; asked rows-again"
