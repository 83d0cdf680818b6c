"""Turns of speech: repeats told inside brackets, things missed by name, what lies between."""

from __future__ import annotations

from phrases.said import ARCHES, SIXES, STITCHES, On, cases, said

BRACKETS = {
    "(1 plain, 3 chain, miss 2; repeat)": "4 sc, 12 ch; 4 x 3 st",
    "(1 plain, 3 chain, miss 2, repeat to the end)": "4 sc, 12 ch; 4 x 3 st",
    "1 plain in the first stitch, then (3 chain, miss 2, 1 plain; repeat to the end)": (
        "4 sc, 12 ch; 3 x 3 st; asked meets-its-start"
    ),
    "*1 plain, 3 chain, miss 2; repeat from * for each loop": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2; repeat the whole length": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2; repeat for the entire length": "4 sc, 12 ch; 4 x 3 st",
    "1 plain in the second following stitch, 1 chain; repeat": "6 sc, 6 ch; 6 x 2 st",
    "All long": "12 dc; 12 x 1 st",
    "*1 plain, miss 2 of the stitches beneath, 3 chain; repeat": "4 sc, 12 ch; 4 x 3 st",
    "1 plain in every 2nd stitch, between every two 3 chain": "6 sc, 18 ch; 6 x 2 st",
    "1 plain in every 2nd stitch, and between each plain 3 chain": "6 sc, 18 ch; 6 x 2 st",
    "1 plain in every 2nd stitch, making between each 3 chain": "6 sc, 18 ch; 6 x 2 st",
    "*4 treble on the next 4 foundation stitches, 4 chain, miss 2; repeat": "8 dc, 8 ch; 2 x 6 st",
    "1 plain in each stitch, taking the back of the loops": "12 sc; 12 x 1 st",
    "1 plain, 3 chain, miss 2; repeat, making four spaces in the round": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2; repeat, making 5 spaces in all; join": (
        "4 sc, 12 ch; 4 x 3 st; asked count-disagrees"
    ),
    "In double crochet, taking up both sides of the chain": "12 sc; 12 x 1 st",
    "*1 plain in the next free stitch, 3 chain, miss the space of 2 stitches; repeat": (
        "4 sc, 12 ch; 4 x 3 st"
    ),
    "*3 long in next, keeping last loop of each on hook, cotton over and through all, 2 chain, "
    "miss 1; repeat": "6 dc, 12 ch; 6 x 2 st",
    "dark wool, 1 plain in each stitch": "12 sc; 12 x 1 st",
    "1 plain in each stitch over the cord": "12 sc; 12 x 1 st",
    "1 plain, 3 chain, miss 2, &c.": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2, and so continue to the end": "4 sc, 12 ch; 4 x 3 st",
    "1 plain in each stitch down the front and round the neck": (
        "12 sc; 12 x 1 st; asked taken-as-remark; asked taken-as-remark"
    ),
    "1 plain, 3 chain, miss 2, and the same over every point": (
        "4 sc, 12 ch; 4 x 3 st; asked place-assumed"
    ),
    "1 plain, 3 chain, miss 2, and so on across each point": (
        "4 sc, 12 ch; 4 x 3 st; asked place-assumed"
    ),
    "treble in 4 treble, 4 chain, miss 2; repeat": "8 dc, 8 ch; 2 x 6 dc",
    "1 plain in next treble and in next stitch, 1 chain; repeat": "12 sc, 6 ch; 6 x 2 dc",
    "Fasten in the next stitch; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "Fasten the pink in a stitch, *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "Fasten thread, 1 plain in each stitch": "12 sc; 12 x 1 st",
    "Tie the thread on; 1 plain in each stitch": "12 sc; 12 x 1 st; asked taken-as-remark",
    "(Drop the cord.) 1 plain in each stitch": "12 sc; 12 x 1 st; asked taken-as-remark",
    "Work a round of double into the linen": "12 sc; 12 x 1 st",
    "Join on the scarlet. 1 plain in each stitch": "12 sc; 12 x 1 st",
    "Work one row in double crochet": "12 sc; 12 x 1 st",
    "5 treble (all into one stitch), miss 2; repeat": "20 dc; 4 x 3 st",
    "1 plain, 3 chain, miss 2; every stitch the same": "4 sc, 12 ch; 4 x 3 st",
    "*1 plain, 3 chain, miss 2; repeat, fasten to 3rd of the 5 chain": "4 sc, 12 ch; 4 x 3 st",
    "1 plain in each stitch; join neatly": "12 sc; 12 x 1 st",
    "*4 plain, 4 chain, 1 plain in the last plain made (for a picot), miss 2; repeat": (
        "8 sc, 2 picot; 2 x 6 st"
    ),
    "*1 plain in each of the next 4 stitches, 4 chain, 1 slip stitch in top of last plain for "
    "a p., miss 2; repeat": "8 sc, 2 picot; 2 x 6 st",
}
BEHIND_REPEATS = {
    "1 treble, 1 chain, miss 1; so on to the end, taking up only the back thread of the stitches": (
        "6 dc, 6 ch; 6 x 2 st"
    ),
    "* 1 treble in next treble, 2 chain, 1 plain in next treble; repeat from *, taking the back "
    "loops; join": "6 dc, 6 sc, 12 ch; 6 x 2 dc",
    "* 1 treble, 1 chain, miss 1; repeat from * twice more, working loosely": (
        "3 dc, 3 ch; does not close; asked row-does-not-close"
    ),
    "1 treble on the next treble, 1 chain; repeat to the end in scarlet": "12 dc, 12 ch; 12 x 1 dc",
    "1 plain in each stitch, inserting the hook to take up the back thread of the stitches": (
        "12 sc; 12 x 1 st"
    ),
}

IN_ARCHES = {
    "(2 plain, picot, 2 plain) in every loop of ch 3": "48 sc, 12 picot; 12 x 1 ch-3 space",
    "1 plain in loop, * 5 ch, 1 plain in next loop; repeat around, joining last 5 ch to 1st plain": (
        "12 sc, 60 ch; 11 x 1 space"
    ),
    "(With red worsted), like the 1st round": "12 sc, 36 ch; 12 x 1 space",
    "(Scarlet) like the first": "12 sc, 36 ch; 12 x 1 space",
    "Under the 3 chain work 1 plain, 5 treble, 1 plain; repeat the same under every three chain. "
    "This forms the scallop": "24 sc, 60 dc; 12 x 1 ch-3 space; asked taken-as-remark",
    "*5 chain, fasten with a plain to the next loop; repeat": "12 sc, 60 ch; 12 x 1 space",
    "*5 chain, fasten them with 1 plain to the next loop; do so throughout the row": (
        "12 sc, 60 ch; 12 x 1 space"
    ),
    "*3 treble, divided one from the other by 3 chain, in the next loop, 3 chain; repeat": (
        "36 dc, 108 ch; 12 x 1 space"
    ),
    "*1 plain in next loop, 3 chain; repeat from *, closing with a slip stitch": (
        "12 sc, 36 ch; 12 x 1 space"
    ),
    "5 plain in each loop; break off the thread and fasten it in at the back": (
        "60 sc; 12 x 1 space"
    ),
    "3 treble in every loop; no chain between": "36 dc; 12 x 1 space",
    "3 treble in every loop; one chain between": "36 dc, 12 ch; 12 x 1 space",
    "2 plain, 3 treble, 2 plain, all under the first chain; repeat in each": (
        "48 sc, 36 dc; 12 x 1 space"
    ),
    "5 treble in each 3 chain, 1 single on the centre plain": (
        "60 dc; 12 x 1 ch-3 space; does not close; asked perhaps-as-they-come; "
        "asked run-too-short; asked row-does-not-close"
    ),
    "2 treble under the three chain in the centre of each group, 1 plain upon each plain": (
        "24 dc, 1 sc; 12 x 1 ch-3 space; 1 x 1 sc; asked perhaps-as-they-come"
    ),
    "1 plain in the centre of the 3 chain, 2 chain, 3 treble in the centre of next 3; repeat": (
        "6 sc, 18 dc, 12 ch; 6 x 2 ch-3 space"
    ),
    "1 treble, 1 chain, 1 treble in first 3 ch, *1 treble, 1 chain, 1 treble in next 3 ch; repeat": (
        "24 dc, 12 ch; 12 x 4 st; asked place-unclear; asked place-unclear"
    ),
    "slip stitch to 3 chain, *2 plain in the 3 chain, 1 chain; repeat from *": (
        "24 sc, 12 ch; 12 x 1 ch-3 space"
    ),
    "begin on the 1st 3 chain; *1 plain in the centre stitch of the 3 chain; repeat": (
        "12 sc; 12 x 1 ch-3 space"
    ),
    "2 chain, 1 treble, 3 chain, 1 treble, both under the 3 chain; repeat": (
        "24 dc, 60 ch; 12 x 1 ch-3 space"
    ),
    "1 plain, 3 treble, 1 plain, all in the scallop of 3 chain; repeat": (
        "24 sc, 36 dc; 12 x 1 ch-3 space"
    ),
    "3 treble under the 3 chain, 2 chain, 1 plain on plain, 5 treble under the next; repeat": (
        "48 dc, 6 sc, 12 ch; 6 x 2 ch-3 space"
    ),
    "2 plain on the plain, 3 chain; repeat": "24 sc, 36 ch; 12 x 1 sc; asked perhaps-one-place",
    "Under the 1st 3 chain 1 plain, 3 treble, 1 plain; the same under each 3 chain to the end": (
        "24 sc, 36 dc; 12 x 1 ch-3 space"
    ),
    "3 treble under every three": "36 dc; 12 x 1 ch-3 space",
    "3 treble in every other loop, 1 plain in the loops between": ("18 dc, 6 sc; 6 x 2 space"),
    "2 treble in 1 loop, 1 plain in the next; repeat on every loop": "12 dc, 6 sc; 6 x 2 space",
    "*1 plain on the plain, 3 chain, miss the chain; repeat from *": "12 sc, 36 ch; 12 x 1 sc",
    "*1 plain, 5 chain, miss the chain, the plain and the chain; repeat from *": (
        "6 sc, 30 ch; 6 x 8 st"
    ),
    "4 treble, which are separated each by 1 chain, in the next loop, miss the next loop; repeat": (
        "24 dc, 18 ch; 6 x 2 space"
    ),
    "3 treble under the 3 chain which is between the plain of last row; repeat": (
        "36 dc; 12 x 1 ch-3 space between sc"
    ),
}
ASKED = {
    "4 long, 2 chain, 1 long, 2 chain, 1 long, 2 chain; repeat": (
        "12 dc, 12 ch; 2 x 6 st; asked perhaps-nothing-missed"
    ),
    "3 long, 2 chain, miss 2, 1 long, 2 chain; repeat": (
        "8 dc, 8 ch; 2 x 6 st; asked perhaps-nothing-missed"
    ),
    "1 treble, 1 chain, miss 1, 1 treble, and so on": "6 dc, 6 ch; 6 x 2 st",
    "3 chain, miss 3, 1 plain in the 4th stitch; repeat": (
        "1 sc, 3 ch; 1 x 7 st; 5 left over; does not close; asked perhaps-counted-on; "
        "asked row-does-not-close"
    ),
}
AGAIN = {
    "3 chain, 2 treble in next stitch, 1 treble in next; repeat": (
        "18 dc, 18 ch; 6 x 2 st; asked perhaps-start-chain"
    ),
    "5 chain, miss 1, 1 treble, 2 chain; repeat": (
        "6 dc, 42 ch; 6 x 2 st; asked perhaps-start-chain"
    ),
    "3 chain, miss 2, 1 treble; repeat": "4 dc, 12 ch; 4 x 3 st",
    "1 plain, 3 chain, miss 2, 1 plain in the 3rd; repeat": (
        "4 sc, 6 ch; 2 x 6 st; asked perhaps-shared; asked perhaps-counted-on"
    ),
    "2 treble on treble, 3 chain, miss 1; repeat": "8 dc, 12 ch; 4 x 3 dc",
    "turn; 1 plain between each 2 treble, 2 chain": (
        "12 sc, 2 ch; 12 x 1 dc; asked perhaps-as-they-come"
    ),
    "1 slip stitch in next treble, 2 treble in each treble": (
        "1 ss, 22 dc; 11 x 1 dc; asked perhaps-leads-on"
    ),
    "1 plain, 5 chain, 1 single in the first for a picot, miss 2, 1 plain, 1 picot; repeat": (
        "6 sc, 6 picot; 3 x 4 st"
    ),
}
OF_WHICH = {
    "1 plain, 4 chain, 1 treble in the first of the 4, miss 1; repeat": (
        "12 dc; 12 x 1 loop; asked not-understood"
    ),
    "6 chain, the first 3 of which form 1 treble, miss 1, * 1 treble in the next, 3 chain, miss 1; "
    "repeat from *": "6 dc, 18 ch; 5 x 2 st",
    "12 plain in the first stitch, 11 plain, at the end of the round 1 slip stitch in the first "
    "plain": "23 sc",
    "Long, with 1 chain between each, missing 1": "6 dc, 6 ch; 6 x 2 st",
    "3 slip, so as to reach the 4th stitch; 1 plain in each": ("12 sc; 12 x 1 st"),
    "turn, 3 slip, so as to reach the 4th stitch; 1 plain in each": ("12 sc; 12 x 1 st"),
    "sl st up to the top of the 4th stitch; 1 plain in each": ("12 sc; 12 x 1 st"),
    "Work in double closely all round": "12 sc; 12 x 1 st",
    "Fasten the cotton on at the right-hand end, 1 double in each": (
        "12 sc; 12 x 1 st; asked taken-as-remark"
    ),
}
SINGLED = {
    "*7 long in 3rd of the 5 long, 1 plain on the single long; repeat": (
        "21 dc, 3 sc; 3 x 1 5-dc run"
    ),
    "1 picot (picot, that is, 5 chain, 1 plain in the first of these), 1 plain in the next long; "
    "repeat": "18 sc, 18 picot; 18 x 1 dc",
}
BESIDE = {
    "*1 plain on the plain, 5 long in the 3 chain between the 2 long; repeat": (
        "6 sc, 30 dc; 6 x 1 sc"
    ),
    "5 long in each ch-3 space between long": "30 dc; 6 x 1 ch-3 space between dc",
    "5 long in every 3 chain": "90 dc; 18 x 1 ch-3 space",
    "*5 long in the 3 chain between the long, 2 chain; repeat": (
        "30 dc, 12 ch; 6 x 1 ch-3 space between dc"
    ),
}
SHELLS_AND_SINGLES = On(
    12,
    ("*(1 long, 3 chain, 1 long) in next loop, 3 chain, 1 plain in next loop, 3 chain; repeat",),
)
FIVE_AND_ONE = On(6, ("*5 long in next loop, 1 chain, 1 long in next loop, 1 chain; repeat",))
ROUND_MARKS = {
    "✕ 1 plain in next stitch, 3 chain, miss 2, ✕ all round; finish with 1 slip stitch on the "
    "first plain": "4 sc, 12 ch; 4 x 3 st",
}
IN_GROUPS = {
    "*1 plain between the 3rd and 4th treble of the group, 7 chain; repeat": (
        "6 sc, 42 ch; 6 x 1 6-dc group"
    ),
    "*1 plain between the 3rd and 4th treble of the next 6, 7 chain; repeat": (
        "6 sc, 42 ch; 6 x 1 6-dc run"
    ),
}


@cases(
    (STITCHES, BRACKETS),
    (STITCHES, BEHIND_REPEATS),
    (ARCHES, IN_ARCHES),
    (SIXES, IN_GROUPS),
    (STITCHES, ASKED),
    (STITCHES, ROUND_MARKS),
    (STITCHES, AGAIN),
    (STITCHES, OF_WHICH),
    (SHELLS_AND_SINGLES, BESIDE),
    (FIVE_AND_ONE, SINGLED),
)
def test_a_turn_of_speech(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
