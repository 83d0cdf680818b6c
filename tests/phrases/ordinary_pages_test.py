"""Rows of ordinary pages: what stands for the last of a repeat, first ones and last ones of a run,
rings and first chains, how often by turns, what is then there.
"""

from __future__ import annotations

from phrases.said import ARCHES, FIVES, LOOPS, STITCHES, On, cases, said

RUNS = On(6, ("(5 plain, 3 chain) in each loop",))
RING = On(1)
ONE_BY_ONE = On(36, ("1 treble, 2 chain, miss 2; repeat",))
ROWS = On(12, ("1 treble in each loop", "1 plain, 3 chain, miss 2; repeat"))

ON_STITCHES = {
    "in next stitch make a shell of 2 treble, 1 chain, 2 treble; miss 2; repeat": "16 dc, 4 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2, and so on to the end of the row": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2, and so to the end": "4 sc, 12 ch; 4 x 3 st",
    "(5 chain, miss 3, 1 plain, repeat) all round, and fasten off": "3 sc, 15 ch; 3 x 4 st",
    "Turn back, 1 plain, (2 chain, miss 2 and 1 treble, repeat) to the end": "1 sc, 3 dc, 6 ch; 3 x 3 st; 2 left over; does not close; asked perhaps-missed; asked row-does-not-close",
    "1 treble on the first treble, * 1 chain, 1 treble on the next, repeat from * till you have 7 treble with 1 chain between each": "7 dc, 6 ch; does not close; asked row-does-not-close",
    "1 treble in next, * 2 chain, 1 treble in next; repeat from * till there are 12 treble": "12 dc, 22 ch",
    "3 times alternately 1 treble on a treble and 1 chain, then 2 chain, 9 treble": "12 dc, 5 ch; asked times-of-the-row",
    "*3 times alternately 1 chain, miss 1, 1 plain, then 2 chain; repeat from *": "6 sc, 10 ch; 2 x 6 st; asked times-of-the-row",
    "1 plain in the first treble, * 4 chain, miss 2, 1 plain in the next stitch; repeat from * to the end of the round, but instead of the last plain work 1 single in the first plain": "4 sc, 16 ch; 3 x 3 st",
    "1 plain, * 4 chain, miss 2, 1 plain; repeat from *, in place of the last plain work 1 slip stitch in the first plain": "4 sc, 16 ch; 3 x 3 st",
    "1 plain, * 4 chain, miss 2, 1 plain; repeat from *, the last time instead of the last plain work a slip stitch": "4 sc, 16 ch; 3 x 3 st; does not close; asked row-does-not-close",
    "* 1 plain, 4 chain, miss 2; repeat from *, but instead of the last 4 chain work 2 chain, 1 treble in the first plain": "4 sc, 16 ch; 4 x 3 st; asked exception-in-words",
    "3 chain instead of the first treble, 11 treble": "12 dc",
    "3 chain, which are considered as the first treble, 11 treble": "12 dc",
    "2 plain in each stitch around (24), join": "24 sc; 12 x 1 st",
    "2 plain in each stitch around (23), join": "24 sc; 12 x 1 st; asked count-disagrees",
    "*1 plain in next, 2 plain in next; repeat from * (18)": "18 sc; 6 x 2 st",
    "*1 plain in next, 1 treble in next; repeat from * (12)": "6 sc, 6 dc; 6 x 2 st",
    "*1 plain, 3 chain, 1 treble, miss 1; repeat from * (12)": "12 dc; 12 x 1 loop; asked not-understood",
    "1 treble in each of the 3 next consecutive stitches, 2 chain, miss 2; repeat": "6 dc, 4 ch; 2 x 5 st; 2 left over; does not close; asked row-does-not-close",
    "1 treble in each of the next 3 consecutive stitches, 3 chain; repeat": "12 dc, 12 ch; 4 x 3 st",
    "1 treble in each remaining stitch": "12 dc; 12 x 1 st",
    "Slip on to the 3rd stitch, x 1 plain, 5 chain, miss 2, x repeat all round": "4 sc, 20 ch; 4 x 3 st",
}

ON_LOOPS = {
    "3 chain, 4 treble, turn, 6 chain, 1 single in 4th treble from hook, turn, 9 plain in loop; repeat": "12 dc, 3 ss, 27 sc, 27 ch; 3 x 4 loop; asked perhaps-start-chain",
    "*2 chain, 1 treble in next loop; repeat from *, ending with 1 treble in last loop": "12 dc, 24 ch; 12 x 1 loop; does not close; asked perhaps-instead; asked run-too-short; asked row-does-not-close",
    "*3 times plain in next, skip 2; repeat": "4 sc; 4 x 3 loop; asked times-of-the-row",
    "*1 plain in loop, 3 chain; repeat, skipping 1 loop": "12 sc, 36 ch; 12 x 1 loop; does not close; asked perhaps-missed; asked row-does-not-close",
    "*1 plain over the next 2 loops, 3 chain; repeat": "12 sc, 18 ch; 6 x 2 loop; asked perhaps-one-place",
    "*1 plain in loop, 3 chain, 1 plain in loop; repeat": "12 sc, 18 ch; 6 x 2 loop; asked perhaps-one-place",
    "*5 plain with 1 chain between, one in each of 5 chain; repeat": "10 sc, 8 ch; 2 x 5 loop; 2 left over; does not close; asked row-does-not-close",
    "*1 plain, 3 treble, 1 plain, one into each of 5 chain; repeat": "4 sc, 6 dc; 2 x 5 loop; 2 left over; does not close; asked row-does-not-close",
    "1 plain in the first loop, *3 chain, 1 plain in next loop 3 times more, 5 chain; repeat": "9 sc, 34 ch; 2 x 4 loop; 3 left over; does not close; asked times-of-the-row; asked row-does-not-close",
    "*1 plain in alternate stitch, 2 chain; repeat": "6 sc, 12 ch; 6 x 2 loop",
    "4 plain in each loop of the beading": "48 sc; 12 x 1 loop",
    "*4 plain, 6 chain, turn, 1 single in 4th plain, turn, 9 plain in loop; repeat": "39 sc, 3 ss, 18 ch; 3 x 4 loop",
    "*4 plain, turn, 6 ch., miss 3, 1 single in last, turn, 9 plain in the 6 ch. loop; repeat": "39 sc, 3 ss, 18 ch; 3 x 4 loop",
    "*4 plain, 6 chain, turn, miss 3 plain, 1 single in next plain, turn, 9 plain in the 6 chain; repeat": "39 sc, 3 ss, 18 ch; 3 x 4 loop",
    "Ch. 3, 1 treble in the 4th ch. from the hook, 1 treble in each of the next 10 ch.": "12 dc; asked foundation-passed; asked start-chain-assumed",
    "Trebles on the foundation chain": "12 dc; 12 x 1 loop",
    "A row of double crochet on the foundation": "12 sc; 12 x 1 loop",
    "Work in plain along the chain": "12 sc; 12 x 1 loop",
    "Insert the hook in the back part of the stitch, 1 plain in every loop": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "Take the braid, 1 plain in each loop": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 d.c. into the corner of the handkerchief, * 5 ch., miss 2, 1 d.c. into next; repeat from *": "4 sc, 20 ch; 4 x 3 loop; asked corners-left-out",
    "*Ch 5, 3 treble in first ch, miss 1, 1 plain in next; repeat from *": "12 dc, 4 sc, 20 ch; 4 x 3 loop; asked perhaps-just-made; asked not-at-the-head",
}

ON_RING = {
    "9 chain, 1 slip stitch in the first, 3 chain, 23 treble in the circle, 1 slip stitch in the 3rd of the 3 chain": "24 dc; asked foundation-named; asked start-chain-assumed",
    "9 chain, 1 slip stitch in the first of them, 24 treble in the circle": "24 dc; asked foundation-named",
    "Commence with 8 chain, join to the 1st stitch to make it round; (5 chain, 1 plain in the round) 6 times": "6 sc, 30 ch; asked foundation-named; asked taken-as-remark",
    "8 chain, join; 16 plain in the round, join": "16 sc; asked foundation-named",
    "8 ch, unite; 3 ch, 1 long in the round, 2 ch, * 1 long, 2 ch; repeat until there are 8 long": "9 dc, 16 ch; asked foundation-named; asked start-chain-assumed",
    "Ch 8, 4 treble in 8th ch from hook": "4 dc; asked foundation-named",
    "Ch 4, 11 treble in the first ch.": "11 dc; asked foundation-named",
}

ON_FIVES = {
    "*miss 2 chain, 1 plain, 2 chain; repeat": "12 sc, 24 ch; 12 x 3 ch; asked perhaps-missed",
    "*1 plain in end of the 5 ch., 1 plain in plain, 1 plain in first of next 5 ch., ch. 4; repeat": "18 sc, 24 ch; 6 x 1 ch-5 space",
    "1 plain in first sp., *ch. 5, sk. 1 sp., 1 plain in next sp.; repeat from *": "3 sc, 15 ch; 2 x 2 space; asked meets-its-start",
    "1 plain in 2nd loop of the next 5 chain, 2 ch; repeat": "6 sc, 12 ch; 6 x 1 ch-5 space",
    "3 treble in the third loop of each 5 chain": "18 dc; 6 x 1 ch-5 space",
    "3 plain on the first 3 of the 5 chain, 3 ch; repeat": "18 sc, 18 ch; 6 x 1 ch-5 space",
    "3 plain on the last 3 of the 5 chain, 3 ch; repeat": "18 sc, 18 ch; 6 x 1 ch-5 space",
    "3 plain in the centre 3 of the 5 chain, 3 ch; repeat": "18 sc, 18 ch; 6 x 1 ch-5 space",
    "3 plain in the centre 3 of the five, 3 ch; repeat": "18 sc, 18 ch; 6 x 1 ch-5 space",
    "1 plain in the centre of the five, 3 ch; repeat": "6 sc, 18 ch; 6 x 1 ch-5 space",
    "5 chain, 1 treble in the centre of the five; repeat": "6 dc, 30 ch; 6 x 1 ch-5 space; asked place-assumed",
}

ON_ARCHES = {
    "*2 plain in each of the next 2 spaces, 3 chain; repeat": "24 sc, 18 ch; 6 x 2 space",
    "*2 plain in next 2 spaces, 3 chain; repeat": "12 sc, 18 ch; 6 x 2 space; asked perhaps-one-place",
    "1 plain in every 3rd loop, 5 ch; repeat": "4 sc, 20 ch; 4 x 3 space",
    "5 ch, 1 plain in every other loop; repeat": "6 sc, 30 ch; 6 x 2 space",
    "9 chain, 1 treble in every second space": "7 dc, 6 ch; 6 x 2 space; asked perhaps-as-they-come; asked start-chain-assumed",
}

ON_RUNS = {
    "miss the first plain, 3 plain on the next 3, miss the last, 5 ch; repeat": "18 sc, 30 ch; 6 x 5 sc",
    "3 plain on the first 3 of 5 plain, 3 ch; repeat": "18 sc, 18 ch; 6 x 1 5-sc run",
    "1 plain in each of the first 2 of the 5, 3 ch, 1 plain in each of the last 2 of the 5; repeat": "24 sc, 18 ch; 6 x 1 block of 5",
    "2 plain on the last 2 of the 5 plain, 3 ch, 2 plain on the first 2 of the next 5; repeat": "24 sc, 18 ch; 6 x 1 5-sc run",
    "* 1 plain on the 2nd, 3rd and 4th of the 5 plain, 3 chain, 3 treble in the 2nd of the 3 chain, 3 chain; repeat from *": "18 sc, 18 dc, 36 ch; 6 x 1 5-sc run",
}


ON_ROWS = {
    "5 ch, *1 treble in next loop, 2 ch; repeat from *, 1 treble in 3rd turning ch.": "5 dc, 10 ch; 4 x 1 space; does not close; asked start-chain-assumed; asked run-too-short; asked row-does-not-close",
    "9 plain under the 3 chain at the turn": "9 sc",
    "2nd row over again.": "5 sc, 15 ch; 5 x 3 st; 1 left over; does not close; asked row-does-not-close",
    "Work the 2nd row again": "5 sc, 15 ch; 5 x 3 st; 1 left over; does not close; asked row-does-not-close",
}

ON_ONE_BY_ONE = {
    "*1 plain between the treble, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 dc",
    "*1 plain between 2 treble, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 dc",
}


@cases(
    (ONE_BY_ONE, ON_ONE_BY_ONE),
    (ROWS, ON_ROWS),
    (STITCHES, ON_STITCHES),
    (LOOPS, ON_LOOPS),
    (RING, ON_RING),
    (FIVES, ON_FIVES),
    (ARCHES, ON_ARCHES),
    (RUNS, ON_RUNS),
)
def test_what_ordinary_pages_say(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
