"""Places described at length, rows that end in a mark, fewer stitches over more of them."""

from __future__ import annotations

from phrases.said import ARCHES, BLOCKS, PICOTS, SIXES, STITCHES, On, cases, said

WHERE_IT_IS = {
    # between what, in the middle of what, at which end: the place itself is named already
    "*1 treble in the 3 chain between the plain, 5 chain; repeat": "12 dc, 60 ch; 12 x 1 ch-3 space between sc",
    "*3 treble in the one plain between the two loops, 2 chain; repeat": "36 dc, 24 ch; 12 x 1 sc",
    "*1 plain in the next loop, 5 chain, 1 treble on the plain between; repeat": "12 sc, 12 dc, 60 ch; 12 x 1 space",
    "*1 plain u the 3 chain in the centre of the 2 plain, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "*in the 1 plain between the chains 3 treble with 2 chain between each; 5 chain; repeat": "36 dc, 108 ch; 12 x 1 sc",
    "*4 treble in the 3-ch of loop, 2 chain; repeat": "48 dc, 24 ch; 12 x 1 ch-3 space",
    "3 treble in the loop at the end": "3 dc",
    "3 treble in the loop of chain at the end": "3 dc",
    "*1 plain in the next loop, 2 treble under each of the two next, 5 chain; repeat": "4 sc, 16 dc, 20 ch; 4 x 3 space; asked place-assumed",
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
    "*1 plain between the 2 treble, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 dc; asked place-assumed",
    "*1 plain between next 2 treble, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 dc",
    "*1 plain between the 2nd and 3rd treble, 5 chain; repeat": (
        "6 sc, 30 ch; 6 x 2 dc; asked place-assumed"
    ),
    "*1 plain between the 3rd and 4th treble, 5 chain; repeat": (
        "4 sc, 20 ch; 4 x 3 dc; asked place-assumed"
    ),
}
PICOTS_SAID = {
    "*1 plain, 4 chain, 1 single in the 1st of these, 1 plain; repeat": "12 sc, 6 picot; 6 x 2 st",
    "*1 plain, 1 purl (5 chain, 1 slip stitch in the 1st of the same), 1 plain; repeat": "12 sc, 6 picot; 6 x 2 st",
}
BY_PICOTS = {
    "*1 plain between the 2nd and 3rd picots, 5 chain; repeat": "3 sc, 15 ch; 3 x 2 picot",
    "*1 plain between the 1st and 2nd picots, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 picot",
}
UNDER_CHAINS = {
    "*1 treble in the 3 chain, 3 chain, under these miss 1 plain and 1 chain; repeat": "6 dc, 18 ch; 6 x 2 ch-3 space; asked place-unclear",
    "9 treble in every 3 chain, missing the plain": "108 dc; 12 x 1 ch-3 space",
    "9 treble in every 3 chain, miss the plain": "108 dc; 12 x 1 ch-3 space",
}
BRACKETS = {
    "(2 treble, 2 chain, 2 treble) in each treble; repeat all round": "48 dc, 24 ch; 12 x 1 dc",
    # said right behind a bracket, `repeat` is said of the bracket; behind a stop, of the row
    "1 plain, (3 chain, miss 2, 1 plain) repeat to the end": "4 sc, 12 ch; 3 x 3 st; asked meets-its-start",
    "1 plain, 3 chain, miss 2, (1 treble, miss 1) repeat all round": "1 sc, 4 dc, 3 ch; 4 x 2 st; 1 left over; does not close; asked row-does-not-close",
    "1 plain, (3 chain, miss 2, 1 plain); repeat": "6 sc, 9 ch; 3 x 4 st; asked perhaps-of-bracket",
    "1 plain, (3 chain, miss 3, 1 plain) all round; end with 3 chain, 1 single on the 1st plain": "3 sc, 9 ch; 2 x 4 st; 3 left over; does not close; asked row-does-not-close",
    "3 chain, 11 treble, 1 single on the 3rd of the 3 chain": "12 dc; asked start-chain-assumed",
    "1 treble, 2 chain, 1 treble, all in the same place, miss 2; repeat": "8 dc, 8 ch; 4 x 3 st",
    "6 chain, join; *1 plain, 3 chain, miss 2; repeat": "4 sc, 18 ch; 4 x 3 st; asked ends-inside; asked start-chain-assumed",
}
MISSED_TOO = {
    "*1 plain, 2 chain, miss 1 treble and 1 treble; repeat": "4 sc, 4 dc, 8 ch; 4 x 3 st; asked perhaps-missed",
    "*1 plain, miss 1 treble and 2 chain; repeat": "6 sc, 12 ch; 6 x 2 st; asked perhaps-missed",
    "*1 plain, miss 1 treble, and 2 chain; repeat": "6 sc, 12 ch; 6 x 2 st",
    "*1 plain, miss 1 treble and work 1 treble; repeat": "4 sc, 4 dc; 4 x 3 st",
}
AS_THEY_COME = {
    "3 treble in every loop, 1 plain on the plain between": "12 sc, 36 dc; 24 x 0 space, 1 sc",
    "2 treble, 1 chain, 2 treble, in each loop, 1 plain on the plain": "48 dc, 1 sc, 12 ch; 12 x 1 space; asked perhaps-as-they-come",
}
OF_GROUPS = {
    "*1 plain in the 1st treble of the group, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 group",
    "1 plain in each treble of each group, missing the 3 chain between": "18 sc; 18 x 1 dc",
    "2 treble in the three chain of each group": "12 dc; 6 x 1 shell",
    "(1 plain, 2 chain, 1 plain), in each treble": "36 sc, 36 ch; 18 x 1 dc",
    "1 plain in every treble, with the white wool": "18 sc; 18 x 1 dc",
}
NAMELESS = {
    # a number without a name is of the stitch that is being worked, not of its place
    "*1 plain in each of the next 2 treble, 3 in the next; repeat": "20 sc; 4 x 3 dc",
    "*1 plain on the next 3 treble, 2 in the next; repeat": "15 sc; 3 x 4 dc",
    "*1 plain, 1 purl (that is, 4 chain, 1 plain in the first), 1 plain; repeat": "12 sc, 6 picot; 6 x 2 st",
    "*1 plain, 1 picot, that is, 5 chain, 1 plain in the first, 1 plain; repeat": "12 sc, 6 picot; 6 x 2 st",
    "1 plain in the first treble, 3 chain, miss 2, 1 plain in the next; repeat": "6 sc, 9 ch; 3 x 4 dc; asked perhaps-shared",
    "Work a row of plain along the edge": "12 sc; 12 x 1 st",
    "*1 plain, 3 chain, miss 2; repeat from * across the row": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2; repeat as often as required": "4 sc, 12 ch; 4 x 3 st",
}
ALL_IN_ONE = {
    "2 plain, 1 chain, 2 plain, all in the same 3 chain, 3 chain; repeat": "48 sc, 48 ch; 12 x 1 ch-3 space",
    "1 plain on the middle plain of each loop": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
}
DOTTED = {
    # the full stop of an abbreviation, with a comma behind it, ends nothing
    "1 tr., 1 ch., miss 1 st., 4 times; 4 tr.": "8 dc, 4 ch; asked times-of-the-row",
    "*1 tr. in next tr., 1 p., 1 tr. in next tr., 3 ch.; repeat": "12 dc, 18 ch, 6 picot; 6 x 2 dc",
}
OF_EACH_OR_ALL = {
    # the centre one, the third one: of the whole row, or of each repeat
    "*1 plain on the centre treble, 3 chain; repeat": "1 sc, 3 ch; 1 x 6 dc; 6 left over; does not close; asked perhaps-last-of-each; asked row-does-not-close",
    "*1 plain on the treble, 2 chain, 1 plain on the next treble, 2 chain, 1 plain on the third; repeat": "6 sc, 8 ch; 2 x 5 dc; 2 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
}
REMARKS = {
    "make a chain the length required; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "on a chain of the required length work *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "commence at a corner; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "beginning again at the right-hand end, *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2; repeat, which finishes the edging": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2; repeat, without joining": "4 sc, 12 ch; 4 x 3 st; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2; repeat. Repeat these two rows until long enough": "4 sc, 12 ch; 4 x 3 st; asked rows-again",
    "*1 plain, 3 chain, miss 2; repeat. This completes one half; the other half is worked in the same manner": "4 sc, 12 ch; 4 x 3 st; asked rows-again",
    "*1 plain, 3 chain, miss 2; repeat. Now work the other side of the chain the same": "4 sc, 12 ch; 4 x 3 st; asked rows-again",
    "*1 plain, 3 chain, miss 2; repeat. Begin again at the 2nd row": "4 sc, 12 ch; 4 x 3 st; asked rows-again",
    "*1 plain, 3 chain, miss 2; repeat; and so continue from the 2nd row till long enough": "4 sc, 12 ch; 4 x 3 st; asked rows-again",
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
    (ARCHES, UNDER_CHAINS),
    (STITCHES, BRACKETS),
    (STITCHES, MISSED_TOO),
    (ARCHES, AS_THEY_COME),
    (BLOCKS, OF_GROUPS),
    (STITCHES, NAMELESS),
    (ARCHES, ALL_IN_ONE),
    (STITCHES, DOTTED),
    (STITCHES, OF_EACH_OR_ALL),
    (STITCHES, REMARKS),
)
def test_a_row_that_says_more_than_it_must(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
