"""Rows that are easily read as something near: what they come to, and what is asked of them."""

from __future__ import annotations

from phrases.said import FIVES, HEADINGS, STITCHES, On, cases, said

NECK = On(48, ("1 treble in each loop",))
"""48 dc."""
OPEN = On(48, closed=False)
ALONE = On(40, ("* 5 treble in next loop, 3 chain, miss 3, 1 treble, 3 chain, miss 3; repeat",))
"""Eight dc in all that stand alone, between fives in one loop."""
SHELLS = On(
    40,
    (
        "* (3 treble, 2 chain, 3 treble) in next loop, miss 3, 1 chain, 1 treble, 1 chain, miss 3; repeat",
    ),
)
FOURS = On(24, ("* 4 treble in next loop, 3 chain, miss 3; repeat",))
PAIRS = On(24, ("* 2 treble in next loop, 2 chain, miss 1; repeat",))
VS = On(
    24,
    (
        "* (3 treble, 3 chain, 3 treble) in next loop, 3 chain, miss 2, 1 plain, 3 chain, miss 2; repeat",
    ),
)
"""In one loop twice three dc with 3 chains between; 3 chains, an sc, and 3 chains."""

FOUNDED = {
    # the chain is made once, and what is passed at its end is passed once
    "Ch. 48, 1 tr. in the 8th ch., 2 ch., miss 2, 1 tr. in next, repeat to the end.": "14 dc, 26 ch; 13 x 3 loop; 1 left over; does not close; asked foundation-named; asked foundation-passed; asked row-does-not-close",
    "Chain 48. Miss 3, 1 treble in each ch; repeat.": "45 dc; 45 x 1 loop; asked foundation-named; asked foundation-passed",
    "Commence with 48 ch, miss 3, 1 treble, 2 ch, miss 2, 1 treble, repeat to end.": "15 dc, 28 ch; 14 x 3 loop; 2 left over; does not close; asked foundation-named; asked foundation-passed; asked row-does-not-close",
    "15 ch, miss 7, 1 dc; repeat": "6 sc, 90 ch; 6 x 8 loop",
}
AGAIN_THERE = {
    "* 1 dc in the loop, and in the next loop, 5 ch; repeat": "6 sc, 15 ch; 3 x 2 space; asked place-assumed",
    "* 3 tr in the loop, also in next loop, 5 ch; repeat": "18 dc, 15 ch; 3 x 2 space; asked place-assumed",
    "* 5 tr in the loop, 2 ch, and in the next loop, 2 ch; repeat": "30 dc, 12 ch; 3 x 2 space; asked place-assumed",
    "* 3 tr, 2 ch, 3 tr in loop, the same in the next loop, 5 ch; repeat": "24 dc, 18 ch; 2 x 18 st; asked place-unclear",
    "* 3 tr, 2 ch, 3 tr in loop, another in the next loop, 5 ch; repeat": "24 dc, 18 ch; 2 x 18 st; asked place-unclear",
    "* 3 tr in loop and 3 tr in next with 3 ch between; repeat": "18 dc, 9 ch; 3 x 2 space; asked perhaps-shared",
    "5 tr in every loop, 2 ch, 1 dc on the dc, 2 ch": "30 dc, 1 sc, 4 ch; 6 x 1 space; asked perhaps-as-they-come",
    "4 dc in each loop, 1 ch, 4 dc in the same loop": "28 sc, 1 ch; 6 x 1 space; asked perhaps-as-they-come",
    "2 ch, 1 tr in each dc with 2 ch between": "6 dc, 14 ch; 6 x 1 sc; asked place-unclear; asked start-chain-assumed",
    "3 tr in each loop, 2 ch between each": "6 sc, 30 ch; 6 x 1 loop; asked not-understood",
    "In the loop, 1 dc, * 1 tr, 1 ch, repeat from * 4 times, 1 dc; repeat.": "12 sc, 30 dc, 30 ch; 6 x 1 space",
    "1 dc under loop, 3 tr, 1 dc; repeat": "6 sc, 9 dc; 3 x 2 space; asked perhaps-one-place",
    "3 tr in loop, 2 ch, 3 tr; 1 dc on dc; repeat": "18 dc, 3 sc, 6 ch; 3 x 2 space; asked perhaps-one-place",
    "1 dc in loop, 3 ch, 1 dc, 3 ch, 1 dc in same; repeat": "18 sc, 36 ch; 6 x 1 space; asked perhaps-one-place; asked perhaps-picot",
    "* 1 dc on dc, 1 tr, 1 ch, 1 tr in same st, 5 ch; repeat": "6 sc, 12 dc, 36 ch; 6 x 1 sc; asked perhaps-one-place",
    "3 tr in loop, miss 1; repeat": "18 dc; 6 x 1 space; asked perhaps-of-spaces",
    "5 tr in a loop, 1 dc in next two, 3 ch; repeat": "10 dc, 4 sc, 6 ch; 2 x 3 space; asked place-assumed",
    "1 dc under one, 5 tr under the next; repeat": "3 sc, 15 dc; 3 x 2 space",
    "7 tr in a loop, 1 dc in next, 7 tr in next, and so on.": "28 dc, 2 sc; 2 x 3 space; asked perhaps-shared",
    "(1 dc in loop, 5 ch) 3 times, ending with 3 ch; repeat": "6 sc, 36 ch; 2 x 3 space; asked perhaps-instead",
    "1 dc in loop, a treble picot, 5 ch; repeat": "6 sc, 30 ch, 18 picot; 6 x 1 space; asked perhaps-picot",
    "1 dc under the loop between the dc, 5 ch; repeat": "6 sc, 30 ch; 6 x 1 space",
}
JUST_MADE = {
    "1 dc on dc, 4 ch, 4 tr under it, 1 dc in loop; repeat": "12 sc, 24 dc, 24 ch; 6 x 1 sc; asked perhaps-just-made",
    "1 dc on dc, 4 ch, 4 tr under the same 4 ch, 1 dc in loop; repeat": "12 sc, 24 dc, 24 ch; 6 x 1 sc; asked perhaps-just-made",
    "1 dc on dc, 8 ch, miss 1, 7 dc on these 7 ch, 1 dc on next dc; repeat": "18 sc, 16 ch; 2 x 3 sc; asked perhaps-just-made",
    "1 dc on dc, 5 ch, 1 dc in each of the 5 ch, 1 dc on next dc; repeat": "21 sc, 15 ch; 3 x 2 sc; asked perhaps-shared; asked perhaps-just-made",
    "1 dc on dc, 7 ch, work back 6 dc, 1 dc on next dc; repeat": "16 sc, 14 ch; 2 x 3 sc; asked perhaps-shared; asked perhaps-just-made; asked place-unclear; asked perhaps-nothing-missed",
    "* 7 ch, 1 dc back in the 4th, 3 ch, 1 dc in dc; repeat": "6 sc, 36 ch, 6 picot; 6 x 1 sc; asked perhaps-picot",
    "1 dc in loop, 4 ch, 2 tr in the first, 1 dc in next loop; repeat": "4 sc, 4 dc, 8 ch; 2 x 3 space; asked perhaps-shared; asked perhaps-just-made",
}
TO_THE_END = {
    "Miss 1, and work dc to the end.": "47 sc; 47 x 1 st",
    "Miss the first stitch, double crochet to the end.": "47 sc; 47 x 1 st",
    "1 treble in each of 3 st., d.c. to end.": "3 dc, 45 sc; 45 x 1 st",
    "In first st. 2 d.c., d.c. to end.": "49 sc; 47 x 1 st",
    "1 dc, 3 ch, miss 2, all round": "16 sc, 48 ch; 16 x 3 st",
    "1 ch. and 1 treble in each treble.": "48 dc; 48 x 1 dc; asked place-unclear",
    "1 treble, (2 chain, miss 2, 1 treble); repeat to the end, and fasten off.": "24 dc, 24 ch; 12 x 4 st; asked perhaps-of-bracket",
    "1 treble, 1 ch., miss 1, 1 treble; repeat, fasten off": "32 dc, 16 ch; 16 x 3 st; asked perhaps-shared",
    "* 1 d.c. on tr, 7 ch., miss 1, 1 d.c., 4 treble, 1 d.c.; repeat": "18 sc, 24 dc, 42 ch; 6 x 8 dc; asked perhaps-just-made",
}
ROUND_SOMETHING = {
    "1 dc on dc, 9 tr in loop, 1 dc on next dc; repeat": "6 sc, 27 dc; 3 x 2 sc; asked perhaps-shared",
    "* 1 d.c. on d.c., 3 ch., 1 treble in loop, 3 ch., 1 d.c. on next d.c.; repeat from *": "6 sc, 3 dc, 18 ch; 3 x 2 sc; asked perhaps-shared",
    "* 1 d.c. in loop, (5 ch., 1 d.c. in next loop) twice; repeat from *": "6 sc, 20 ch; 2 x 3 space; asked perhaps-shared",
    "* 5 treble in loop, miss 1, 5 ch.; repeat": "30 dc, 30 ch; 6 x 1 space; asked perhaps-of-spaces",
    "* 1 d.c. in loop, 5 ch., miss 1, 1 d.c. in next loop, 5 ch.; repeat": "6 sc, 30 ch; 3 x 2 space; asked perhaps-of-spaces",
    "* 1 dc in next loop, 6 ch., join, 12 dc in the ring; repeat": "39 sc, 18 ch; 3 x 2 space; asked perhaps-just-made; asked ends-inside",
    "* 1 d.c. on d.c., 3 ch., 1 treble in each of next 5 st., 3 ch.; repeat": "6 sc, 30 dc, 36 ch; 6 x 1 sc",
    "*1 dc on dc, 2 tr in loop, 1 dc in next, 2 ch; repeat": "6 sc, 6 dc, 6 ch; 3 x 2 sc; asked place-assumed",
    "* 5 treble in the 2nd chain, 2 ch.; repeat": "75 dc, 30 ch; 15 x 2 ch; asked place-assumed",
    "Begin in the 2nd of the 5 ch., * 5 treble in it, 5 ch.; repeat from *": "30 dc, 30 ch; 6 x 1 ch-5 space",
    "* 3 treble on d.c., 3 ch., 3 treble, 5 ch.; repeat": "36 dc, 48 ch; 6 x 1 sc; asked perhaps-one-place",
    "5 ch, 3 treble at the end": "4 dc, 2 ch; asked start-chain-assumed",
}
ON_NECK = {
    "* 2 tr on tr, 1 ch, 2 tr on the same, miss 2; repeat": "48 dc, 12 ch; 12 x 4 dc; asked perhaps-one-place",
    "* 5 tr with 1 ch between, missing 1, 3 ch, miss 2; repeat": "30 dc, 42 ch; 6 x 8 st; asked perhaps-missed",
    "* 1 tr, 1 ch, 1 tr, 1 ch, 1 tr in same st, miss 2; repeat": "36 dc, 24 ch; 12 x 4 st; asked perhaps-one-place",
    "3 slip stitches, 1 dc, * 5 ch, miss 3, 1 dc; repeat from *": "3 ss, 12 sc, 55 ch; 11 x 4 st; asked perhaps-leads-on; asked perhaps-leads-back",
    "1 tr in next st, miss 3, 1 tr in next, worked off together, 5 ch, repeat": "48 dc; 48 x 1 loop; asked not-understood",
    "1 long, 1 chain, 1 treble; repeat": "48 dc, 24 ch; 24 x 2 st; asked perhaps-shared; asked names-alike",
    "1 dc on long, 1 long on long; repeat": "24 sc, 24 dc; 24 x 2 dc",
}
LONE = {
    "* 1 dc on the third of the 5 tr, 5 ch, 1 tr on the tr, 5 ch; repeat": "5 sc, 5 dc, 50 ch; 5 x 1 5-dc run; asked perhaps-next-of",
    "* 1 dc on the third of the 5 tr, 5 ch, 1 tr on the one tr, 5 ch; repeat": "5 sc, 5 dc, 50 ch; 5 x 1 5-dc run",
    "* 1 dc on the third of the 5 tr, 5 ch, 1 tr in next run of 1 tr, 5 ch; repeat": "5 sc, 5 dc, 50 ch; 5 x 1 5-dc run",
    "* 1 dc on the tr, 5 ch; repeat": "30 sc, 150 ch; 30 x 1 dc",
}
BESIDE_SHELLS = {
    "* 1 dc in the 2 ch of the shell, 5 ch, 1 tr on the tr, 5 ch; repeat": "5 sc, 5 dc, 50 ch; 5 x 1 shell",
    "* 5 tr in shell, 1 tr on tr; repeat": "30 dc; 5 x 1 shell",
}
GROUPS = {
    "* 1 dc on the third treble, 5 ch; repeat": "8 sc, 40 ch; 8 x 3 dc; asked perhaps-last-of-each",
    "1 dc in last tr of one group and first of next, 5 ch; repeat": "12 sc, 30 ch; 6 x 1 group",
    "1 dc in the 2nd and 3rd tr, 5 ch; repeat": "16 sc, 40 ch; 8 x 3 dc; asked perhaps-last-of-each",
    "1 dc in the 2nd and 3rd tr of the group, 5 ch; repeat": "12 sc, 30 ch; 6 x 1 group",
}
OF_TWO = {"1 dc between the pairs of tr, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 2-dc group"}
WHICH_SPACE = {
    "* 5 tr into the 3 ch in the centre of the group, 7 ch; repeat": "20 dc, 28 ch; 4 x 1 shell",
    "* 3 tr into the 3 ch between the tr, 7 ch; repeat": "12 dc, 28 ch; 4 x 1 ch-3 space between dc",
}

WIDER = {
    "D.c., working 2 in every 4th stitch": "15 sc; 3 x 4 st; 0 x 0 st",
    "D.c. all round, 2 in every 4th stitch": "15 sc; 3 x 4 st; 0 x 0 st",
    "dc, 2 dc in every 4th": "15 sc; 3 x 4 st; 0 x 0 st",
    "1 dc, 2 dc in every 4th st": "5 sc; 2 x 4 st; 3 left over; does not close; asked place-unclear; asked row-does-not-close",
    "1 dc in each following stitch": "12 sc; 12 x 1 st",
    "1 dc in next st, 3 ch, pass 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "1 dc in next st, 3 ch, pass the tr; repeat": "6 sc, 18 ch; 6 x 2 st",
}
UNSAID = On(12, ("1 treble in next loop, 4 chain, miss 1; repeat",), headings="terms: uk\n")
CHAINS_LEFT = {
    "1 dc in every stitch": "6 sc; 6 x 1 st; asked chains-left-out",
    "1 dc in every chain and treble": "30 sc; 30 x 1 ch, 0 dc",
    "1 dc in each tr": "6 sc; 6 x 1 dc",
}

ARCHED = On(12, ("1 dc, 5 ch, miss 2; repeat",))
IN_ARCHES = {
    "Begin on the centre of the 5 ch, 1 dc, 5 ch; repeat": "24 sc, 120 ch; 24 x 1 st; asked perhaps-leads-on",
    "3 sl st up the 5 ch, 1 dc, 7 ch; repeat": "24 sc, 168 ch; 24 x 1 st; asked perhaps-leads-on",
    "Slip to the centre of the 5 ch, * 1 dc in the centre of next 5 ch, 7 ch; repeat from *": "4 sc, 28 ch; 4 x 1 ch-5 space",
    "5 tr in one loop, 1 dc on the dc, 5 tr in the next, 1 dc on the dc; repeat": "20 dc, 4 sc; 4 x 1 space; asked place-assumed",
    "3 dc in loop, miss the dc, 3 dc in the next; repeat": "12 sc; 2 x 2 space; asked place-assumed",
    "1 dc in the middle stitch, * 7 ch, 1 dc in the middle stitch of next 5 ch; repeat from *": "3 sc, 14 ch; 2 x 1 ch-5 space; asked perhaps-last-of-each; asked perhaps-leads-back",
}
WITH_PICOTS = {
    "6 dc in each loop, with a picot in the centre": "24 sc, 4 picot; 4 x 1 space",
    "6 tr in next loop, with a picot in the middle, 1 dc on dc; repeat": "24 dc, 4 sc, 4 picot; 4 x 1 space",
    "7 tr in each loop, with a picot on the centre one": "28 dc, 4 picot; 4 x 1 space",
    "6 tr in each loop with 3 ch in the centre of each": "24 dc, 12 ch; 4 x 1 space",
    "7 tr in each loop with 3 ch in the centre": "4 sc, 20 ch; 4 x 3 loop; asked not-understood",
}
FAN = On(16, ("1 dc, miss 3, (6 treble, with 1 ch between) in next, miss 3; repeat",))
OF_FANS = {
    "* 1 dc in dc, 2 ch, 1 dc in each of the 5 spaces of the shell, 2 ch; repeat from *": "12 sc, 8 ch; 2 x 1 sc; asked perhaps-as-they-come",
    "* 1 dc in dc, 2 ch, 1 dc in each of the 6 tr of the shell, 2 ch; repeat from *": "14 sc, 8 ch; 2 x 1 sc",
}
TWELVES = On(36, ("12 treble, 3 ch; repeat",))
GAPS = {
    "1 dc between the 1st and 2nd of the 12 treble, 5 ch; repeat": "36 sc, 180 ch; 36 x 1 dc; asked perhaps-nothing-missed; asked place-assumed",
    "1 dc between the 2nd and 3rd of the 12 treble, 5 ch; repeat": "18 sc, 90 ch; 18 x 2 dc; asked perhaps-nothing-missed; asked place-assumed",
    "1 dc between the 6th and 7th of the 12 treble, 5 ch; repeat": "3 sc, 15 ch; 3 x 1 12-dc run; asked perhaps-nothing-missed",
}
THREES = On(12, ("3 treble, 3 ch, miss 3; repeat",))
IN_THE_NEXT = {
    "3 treble on the 3 treble, 1 treble in the next, 2 ch; repeat": "4 dc, 2 ch; 1 x 4 dc; 2 left over; does not close; asked perhaps-next-of; asked place-assumed; asked row-does-not-close",
    "1 treble in each of the 3 treble, and 1 in the next, 2 ch; repeat": "4 dc, 2 ch; 1 x 4 dc; 2 left over; does not close; asked perhaps-last-of-each; asked row-does-not-close",
    "3 treble on the 3 treble, 3 ch, 1 dc in the next, 2 ch; repeat": "3 dc, 1 sc, 5 ch; 1 x 4 dc; 2 left over; does not close; asked perhaps-last-of-each; asked row-does-not-close",
}
BOTH_ENDS = {
    "5 ch, 1 dc in loop, 5 ch; repeat": "4 sc, 40 ch; 4 x 1 space; asked perhaps-shared",
    "4 dc in loop, 5 ch, 1 dc in the same loop, 3 dc; repeat": "16 sc, 10 ch; 2 x 2 space; asked perhaps-one-place",
}
HOLES = On(24, ("1 treble, 1 ch, miss 1; repeat",))
AMONG_HOLES = {
    "1 dc in a hole, 5 ch, miss 2; repeat": "6 sc, 30 ch; 6 x 2 space; asked perhaps-of-spaces",
    "1 dc in a hole, 5 ch, miss 2 holes; repeat": "4 sc, 20 ch; 4 x 3 space",
    "1 treble, 1 ch; repeat": "24 dc, 24 ch; 24 x 1 st; asked perhaps-nothing-missed",
    "1 treble, 1 ch, miss 1; repeat": "12 dc, 12 ch; 12 x 2 st",
}
SIX = On(48, ("6 dc, 4 ch, miss 2; repeat",))
AMONG_SIX = {
    "miss 1, 4 dc, miss 1, 5 ch; repeat": "40 sc, 50 ch; 10 x 6 st; asked perhaps-nothing-missed",
    "miss 1 dc, 4 dc, miss 1 dc, 5 ch; repeat": "24 sc, 30 ch; 6 x 6 sc",
    "6 dc, 4 ch; repeat": "60 sc, 40 ch; 10 x 6 st; asked perhaps-nothing-missed; asked perhaps-nothing-missed",
}

WHAT_GOES_THERE = {
    "3 treble, 2 ch, miss 2, 1 treble, 3 ch, 1 treble in the next; repeat": "15 dc, 15 ch; 3 x 7 loop; 3 left over; does not close; asked perhaps-one-place; asked row-does-not-close",
    "4 dc, 3 dc all in one stitch, 4 dc, miss 2; repeat": "33 sc; 3 x 7 loop; 3 left over; does not close; asked perhaps-one-place; asked row-does-not-close",
    "3 tr, 2 ch, 3 tr all in one stitch, 2 ch, miss 2; repeat": "48 dc, 32 ch; 8 x 3 loop",
    "5 dc, 4 ch, 1 dc in the 1st of the 4, 1 dc in next stitch; repeat": "144 sc, 24 picot; 24 x 1 loop; asked perhaps-one-place",
    "3 tr, 1 picot, 3 tr in next stitch, miss 2; repeat": "48 dc, 8 picot; 8 x 3 loop",
    "Make 48 chain, 1 dc in each stitch": "24 sc; 24 x 1 loop; asked foundation-named",
}
TWO_SPACES = On(12, ("1 treble, 1 ch, miss 1, 1 treble, 2 ch, miss 1; repeat",))
OF_ONE_CHAIN = {
    "1 dc in the next 1 ch, 3 ch; repeat": "3 sc, 9 ch; 3 x 1 ch-1 space",
    "1 dc in the next ch, 3 ch; repeat": "9 sc, 27 ch; 9 x 1 ch",
}
SEVENS_AND_THREES = On(24, ("7 treble, 3 ch, miss 5; repeat",))
NEXT_BUT_ONE = {
    "1 dc on the 1st of the 7 treble, (3 ch, 1 dc on the next but one) 3 times, 3 ch, 1 dc in the 3 ch, 3 ch; repeat": "10 sc, 30 ch; 2 x 1 7-dc run",
}
THE_SAME = {
    "5 tr in loop, 1 dc on dc, the same in next loop, 1 dc on dc; repeat": "20 dc, 4 sc; 2 x 2 space",
    "1 dc on the 1st of the 5 ch, 3 ch, 1 dc on the next but two, 3 ch; repeat": "8 sc, 24 ch; 4 x 1 ch-5 space; asked perhaps-picot",
}
TREBLES_APART = On(12, ("1 treble, 2 ch, miss 1; repeat",))
ONE_MISSED = {
    "1 dc on treble, 5 ch, miss 1; repeat": "6 sc, 30 ch; 6 x 1 dc; asked perhaps-of-spaces",
    "1 dc on treble, 5 ch, miss 1 treble; repeat": "3 sc, 15 ch; 3 x 2 dc",
}
BEHIND = On(24, headings=HEADINGS + "bare stitches: in the place behind\n")


@cases(
    (BEHIND, WHAT_GOES_THERE),
    (TWO_SPACES, OF_ONE_CHAIN),
    (ARCHED, IN_ARCHES),
    (TWELVES, GAPS),
    (ARCHED, BOTH_ENDS),
    (THREES, IN_THE_NEXT),
    (FAN, OF_FANS),
    (ARCHED, WITH_PICOTS),
    (ARCHED, THE_SAME),
    (SEVENS_AND_THREES, NEXT_BUT_ONE),
    (TREBLES_APART, ONE_MISSED),
    (HOLES, AMONG_HOLES),
    (SIX, AMONG_SIX),
    (STITCHES, WIDER),
    (UNSAID, CHAINS_LEFT),
    (OPEN, FOUNDED),
    (FIVES, AGAIN_THERE),
    (FIVES, JUST_MADE),
    (NECK, ON_NECK),
    (NECK, TO_THE_END),
    (FIVES, ROUND_SOMETHING),
    (ALONE, LONE),
    (SHELLS, BESIDE_SHELLS),
    (FOURS, GROUPS),
    (PAIRS, OF_TWO),
    (VS, WHICH_SPACE),
)
def test_what_is_easily_misread(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
