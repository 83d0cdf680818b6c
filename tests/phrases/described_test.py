"""Places described at length, rows that end in a mark, fewer stitches over more of them."""

from __future__ import annotations

from phrases.said import ARCHES, PICOTS, SIXES, STITCHES, On, cases, said

WHERE_IT_IS = {
    # between what, in the middle of what, at which end: the place itself is named already
    "*1 treble in the 3 chain between the plain, 5 chain; repeat": "12 dc, 60 ch; 12 x 1 ch-3 space",
    "*3 treble in the one plain between the two loops, 2 chain; repeat": "36 dc, 24 ch; 12 x 1 sc",
    "*1 plain in the next loop, 5 chain, 1 treble on the plain between; repeat": "12 sc, 12 dc, 60 ch; 12 x 1 space",
    "*1 plain u the 3 chain in the centre of the 2 plain, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "*in the 1 plain between the chains 3 treble with 2 chain between each; 5 chain; repeat": "36 dc, 108 ch; 12 x 1 sc",
    "*4 treble in the 3-ch of loop, 2 chain; repeat": "48 dc, 24 ch; 12 x 1 ch-3 space",
    "3 treble in the loop at the end": "3 dc",
    "3 treble in the loop of chain at the end": "3 dc",
    "*1 plain in the next loop, 2 treble under each of the two next, 5 chain; repeat": "6 sc, 24 dc, 30 ch; 6 x 2 space",
    "*3 treble under the next 3 ch, 1 chain; repeat": "36 dc, 12 ch; 12 x 1 ch-3 space",
    "*2 treble, 1 chain, 2 treble, all in one 3 chain; 1 plain on the plain; repeat": "48 dc, 12 sc, 12 ch; 12 x 1 ch-3 space",
    "1 plain on every plain and on every chain stitch": "48 sc; 48 x 0 sc, 1 ch",
    "1 plain in each plain and chain": "48 sc; 48 x 0 sc, 1 ch",
    "*1 treble, 2 chain, 1 treble, both in the next loop, 1 chain; repeat": "24 dc, 36 ch; 12 x 1 space",
    "*1 plain in the nearest loop, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 space",
}
ON_STITCHES = {
    "*miss 1 treble, 1 plain, miss 1 treble more, 3 chain; repeat": "4 sc, 12 ch; 4 x 3 dc",
    "*1 treble, 1 chain, 4 times over the 4 treble, missing 2 stitches under the last chain; repeat": "8 dc, 8 ch; 2 x 6 dc",
    "*1 treble and 1 chain alternately, missing 1 stitch under every chain": "6 dc, 6 ch; 6 x 2 st",
    "(3 chain, miss 1, 1 plain) 3 times on the 6 treble, 2 chain, 6 plain": "9 sc, 11 ch",
    "*1 treble on the next, 1 chain; repeat from * to the last": "12 dc, 12 ch; 12 x 1 st",
    "*1 plain, 2 chain, miss 1, and go on to the next treble": "6 sc, 12 ch; 6 x 2 st",
    "*1 plain in the next, 2 chain, 1 into the next, and 1 into the next; repeat": "12 sc, 8 ch; 4 x 3 st",
}
IN_MARKS = {
    "X 1 plain, 3 chain, miss 2, X": "4 sc, 12 ch; 4 x 3 st",
    "X 1 plain, 3 chain, miss 2, X all round": "4 sc, 12 ch; 4 x 3 st",
    "+ 1 plain, 3 chain, miss 2, + ; fasten off": "4 sc, 12 ch; 4 x 3 st",
    "* 1 plain, 3 chain, miss 2 *": "4 sc, 12 ch; 4 x 3 st",
    "X 1 plain, 3 chain, miss 2, X repeat for the length": "4 sc, 12 ch; 4 x 3 st",
}
FEWER = {
    # as many missed at either end; told, but where the text says where it begins
    "*4 plain over the 6, 3 chain; repeat": "24 sc, 18 ch; 6 x 1 block of 6; asked perhaps-fewer",
    "*4 plain over 6 treble, 3 chain; repeat": "24 sc, 18 ch; 6 x 1 6-dc run; asked perhaps-fewer",
    "*4 plain over the 6, beginning on the 2nd, 3 chain; repeat": "24 sc, 18 ch; 6 x 1 block of 6",
    "*2 plain on the 2 centre ones of the 6, 5 chain; repeat": "12 sc, 30 ch; 6 x 1 block of 6",
}
BETWEEN = {
    "*1 plain between the 2nd and 3rd treble, 5 chain; repeat": "6 sc, 30 ch; 6 x 2 dc",
    "*1 plain between the 3rd and 4th treble, 5 chain; repeat": "4 sc, 20 ch; 4 x 3 dc",
}
PICOTS_SAID = {
    "*1 plain, 4 chain, 1 single in the 1st of these, 1 plain; repeat": "12 sc, 6 picot; 6 x 2 st",
    "*1 plain, 1 purl (5 chain, 1 slip stitch in the 1st of the same), 1 plain; repeat": "12 sc, 6 picot; 6 x 2 st",
}
BY_PICOTS = {
    "*1 plain between the 2nd and 3rd picots, 5 chain; repeat": "3 sc, 15 ch; 3 x 2 picot",
    "*1 plain between the 1st and 2nd picots, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 picot",
}
REMARKS = {
    "make a chain the length required; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "on a chain of the required length work *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "commence at a corner; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2; repeat, without joining": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2; repeat. Repeat these two rows until long enough": "4 sc, 12 ch; 4 x 3 st; asked rows-again",
    "*1 plain, 3 chain, miss 2; repeat. Repeat from the 2nd row": "4 sc, 12 ch; 4 x 3 st; asked rows-again",
}


@cases(
    (ARCHES, WHERE_IT_IS),
    (STITCHES, ON_STITCHES),
    (STITCHES, IN_MARKS),
    (SIXES, FEWER),
    (STITCHES, BETWEEN),
    (STITCHES, PICOTS_SAID),
    (PICOTS, BY_PICOTS),
    (STITCHES, REMARKS),
)
def test_a_row_that_says_more_than_it_must(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
