"""What is worked over and over: a number before its steps, `each` in a repeat, what is shared."""

from __future__ import annotations

from phrases.said import ARCHES, BLOCKS, SIXES, STITCHES, On, cases, said

from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.working.work import work
from border.yoke.edges import Edge

BEFORE_ITS_STEPS = {
    "1 plain in next loop, then 3 times alternately 1 picot, 1 plain in the next loop; 3 chain; "
    "repeat": "12 sc, 9 ch, 9 picot; 3 x 4 space",
    "*1 plain in next loop, three times alternately 1 treble in the next loop, 3 chain; repeat "
    "from *": "3 sc, 9 dc, 27 ch; 3 x 4 space",
    "*1 plain in next loop, 3 times 1 treble in next loop, (2 chain, 1 picot) twice; repeat": (
        "3 sc, 9 dc, 36 ch, 18 picot; 3 x 4 space; asked times-of-the-row"
    ),
    "*1 plain in next loop, 3 times 1 treble in next loop, 3 chain, 1 picot; repeat from *": (
        "3 sc, 9 dc, 27 ch, 9 picot; 3 x 4 space; asked times-of-the-row"
    ),
    "*1 chain 1 treble 7 times in next loop, miss 1 loop; repeat": "42 dc, 42 ch; 6 x 2 space",
}
EACH_AND_REPEAT = {
    "5 chain, 1 plain in each 3 chain; repeat": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "* 5 chain, 1 plain in each 3 chain *": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "1 plain in each 3 chain, 5 chain; repeat from the beginning": (
        "12 sc, 60 ch; 12 x 1 ch-3 space"
    ),
    "+ 1 plain in each 3 chain, +": "12 sc; 12 x 1 ch-3 space",
    # a star that is gone back to
    "*1 plain in each 3 chain; repeat from *": (
        "12 sc; 1 x 12 ch-3 space; 12 x 1 ch-3 space; asked open-repeat-inside"
    ),
    "x 3 treble in next loop, 1 chain, x repeat with every loop": "36 dc, 12 ch; 12 x 1 space",
    "\u273b 1 plain in next loop, 4 chain; repeat from \u273b": "12 sc, 48 ch; 12 x 1 space",
    # two places: not the next of both
    "*1 plain in each 3 chain, 2 chain, 1 plain in the plain; repeat": (
        "13 sc, 2 ch; 1 x 12 ch-3 space; 12 x 1 ch-3 space; asked perhaps-as-they-come; "
        "asked open-repeat-inside"
    ),
}
AS_THEY_COME = {
    "* plain on plain, 2 plain, 5 chain, 2 plain, under every chain of 3 *": (
        "60 sc, 60 ch; 24 x 1 sc, 0 ch-3 space"
    ),
    "1 plain in each plain, 3 treble in each 3 chain; repeat": (
        "12 sc, 36 dc; 24 x 1 sc, 0 ch-3 space"
    ),
    "1 long and 2 chain upon every plain, then 1 plain in the 3 chain; repeat": (
        "12 dc, 12 sc, 24 ch; 24 x 1 sc, 0 ch-3 space"
    ),
    "1 plain in next plain, 3 treble in each loop; repeat": (
        "12 sc, 36 dc; 12 x 1 sc; asked place-assumed"
    ),
}
IN_ALL = {
    "All in the 3 chain, work 1 plain, 5 treble, 1 plain; repeat": (
        "24 sc, 60 dc; 12 x 1 ch-3 space"
    ),
    "1 plain in the 3 chain, 1 purl (= 5 chain, 1 single on the 1st of them), 3 chain; repeat": (
        "12 sc, 36 ch, 12 picot; 12 x 1 ch-3 space"
    ),
    "1 plain, 1 purl (4 chain, 1 double in the last double); repeat": "48 sc, 48 picot; 48 x 1 st",
    "1 treble in each loop; and go on to the next scallop": (
        "12 dc; 12 x 1 space; asked place-assumed; asked place-assumed"
    ),
    "sl st over 2 ch to next plain, 1 plain in each plain": "12 sc; 12 x 1 sc",
    "Ch. 3 and work 1 treble in each loop": "13 dc; 12 x 1 space; asked start-chain-assumed",
    "1 plain, (5 chain, miss 3, 1 plain); repeat": (
        "18 sc, 45 ch; 9 x 5 st; 3 left over; does not close; asked perhaps-of-bracket; "
        "asked row-does-not-close"
    ),
    "3 treble in the loops": "36 dc; 12 x 1 space",
    "5 chain, 1 plain in the loops; repeat": "12 sc, 60 ch; 12 x 1 space",
    "round the loops work 1 plain, 3 treble, 1 plain in each loop": (
        "12 sc, 3 dc; 11 x 1 space; asked place-unclear"
    ),
    "3 plain, (5 chain, 3 plain) 3 times, in each 3 chain": "144 sc, 180 ch; 12 x 1 ch-3 space",
    "plain on plain, under the chain 1 plain, 3 treble, 1 plain; repeat": (
        "36 sc, 36 dc; 12 x 1 sc"
    ),
    "in the chain work 1 plain, 3 treble, 1 plain; repeat": (
        "72 sc, 108 dc; 36 x 1 ch; asked perhaps-one-place"
    ),
    "7 plain under the loop of three chain that is between the two plain; repeat": (
        "84 sc; 12 x 1 ch-3 space between sc"
    ),
    "With silk: 3 plain in each loop": "36 sc; 12 x 1 space; asked taken-as-remark",
    "4 chain for the first treble and the chain, * 1 treble in next loop, 1 chain; repeat": (
        "13 dc, 13 ch; 12 x 1 space"
    ),
    "3 treble, 3 chain, 3 treble, all under the 3 chain. Every chain alike": (
        "72 dc, 36 ch; 12 x 1 ch-3 space"
    ),
    "7 plain into the next loop (between the plain), 3 plain into the next; repeat": (
        "60 sc; 6 x 2 space"
    ),
    "1 plain in every 3 chain, between them always 4 chain": "12 sc, 48 ch; 12 x 1 ch-3 space",
    "3 treble in every loop, 1 chain between every 3": "36 dc, 12 ch; 12 x 1 space",
    "1 plain in each loop, after each plain 4 chain": "12 sc, 48 ch; 12 x 1 space",
}
OF_CHAINS = {
    "1 plain in each of the chains of 3": "12 sc; 12 x 1 ch-3 space",
    "*3 chain, 1 plain in next loop; repeat (12 chains of 3)": "12 sc, 36 ch; 12 x 1 space",
    "*3 chain, 1 plain in next loop; repeat (9 chains of 3)": (
        "12 sc, 36 ch; 12 x 1 space; asked count-disagrees"
    ),
    "1 plain in each loop, after each 4 chain": "12 sc, 48 ch; 12 x 1 space",
    "Fasten the thread in a loop: 1 plain in the same, *4 chain, 1 plain in next loop; repeat "
    "from *": "12 sc, 48 ch; 11 x 1 space; asked meets-its-start",
}
OF_ONE = {
    "1 plain under each single chain, 1 chain between": "12 sc, 12 ch; 12 x 1 ch-1 space",
    "1 treble, 1 single chain, miss 1; repeat": "12 dc, 12 ch; 12 x 2 st",
}
OF_SEVEN = {
    "7 chain, 1 plain in the centre of the next 7; repeat": "12 sc, 84 ch; 12 x 1 ch-7 space",
    "1 plain under the loop of 7, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 ch-7 space",
}
PARTED_BY_PICOTS = {
    "1 plain between the two middle treble, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 group",
    "1 plain in each of the 6 treble, with 1 purl between every two; 3 chain; repeat": (
        "36 sc, 18 ch, 30 picot; 6 x 6 dc"
    ),
    "1 plain in each of the 6 treble of the last row, with a picot (4 chain, 1 single in the 1st) "
    "between; 3 chain; repeat": "36 sc, 18 ch, 30 picot; 6 x 6 dc",
    "7 chain, 1 plain in the centre of the 6 treble, *7 chain, 1 plain in the centre of the next "
    "6 treble; repeat": "6 sc, 42 ch; 6 x 1 6-dc run; asked start-chain-assumed",
}
FAN = On(1, ("12 treble in the loop",), closed=False)
"""A fan of 12 dc."""
TAKEN = "asked place-assumed"
ROUND_A_GROUP = {
    f"*3 chain, 1 plain in next treble; repeat from * {to}": f"12 sc, 36 ch; {TAKEN}"
    for to in ("to end of scallop", "around the shell", "to the end of the group", "round fan")
} | {
    "1 plain between 1st and 2nd treble, *2 chain, 1 plain between next two; repeat from * to end "
    "of scallop": f"11 sc, 20 ch; {TAKEN}; {TAKEN}",
    "*3 chain, miss 1, 1 plain in next; repeat from * round the fan": f"6 sc, 18 ch; {TAKEN}",
    "*3 chain, 1 plain in next treble; repeat from * to end of scallop (12 times in all)": (
        "12 sc, 36 ch"
    ),
    "*3 chain, 1 plain in next treble; repeat from * to end of scallop (12 times)": "12 sc, 36 ch",
    # it does not come out: how often is for her to count
    "1 plain in first treble, *3 chain, miss 1, 1 plain in next; repeat from * to end of scallop": (
        "2 sc, 3 ch; does not close; asked exception-in-words; asked row-does-not-close"
    ),
}
ROUND_SIX = {
    "*3 chain, 1 plain in next treble; repeat from * to end of scallop, 3 chain; repeat": (
        f"36 sc, 126 ch; 6 x 6 dc; {TAKEN}"
    ),
    "1 plain in each treble, with 1 chain between, 3 chain, miss 2 chain; repeat": (
        f"36 sc, 48 ch; 6 x 6 dc; {TAKEN}"
    ),
}
OPENED = On(1, ("9 treble, with 1 chain between, in the loop",), closed=False)
"""A fan of 9 dc with 8 spaces of 1 chain."""
ROUND_SPACES = {
    "*3 chain, 1 plain under next 1 chain; repeat from * round the fan": f"8 sc, 24 ch; {TAKEN}",
}
OF_GROUPS = {
    "1 plain between each 6 treble, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 6-dc group",
    "7 chain, 1 plain between each 6 treble; repeat": "6 sc, 42 ch; 6 x 1 6-dc group",
    "6 treble in trebles, 2 chain, miss 2; repeat": "36 dc, 12 ch; 6 x 6 dc",
    # the next treble of the group, or with chains between the next group
    "*1 plain in the 3rd treble of the group, picot, 1 plain in the next, 3 chain; repeat": (
        "12 sc, 18 ch, 6 picot; 6 x 1 group; asked perhaps-next-of"
    ),
    "*1 plain in the 3rd treble of the group, 3 chain, 1 plain in the next; repeat": (
        "6 sc, 9 ch; 3 x 2 group; asked perhaps-next-of"
    ),
}
OF_STITCHES = {
    "1 plain, increasing 1 every fourth stitch": "15 sc; 3 x 4 st; 0 x 0 st",
    "1 plain, decreasing every 4th": "9 sc; 3 x 4 st; 0 x 0 st",
    "2 treble in next, keep the upper loop of each on the needle and draw them up together, "
    "2 chain, miss 1; repeat": "6 dc, 12 ch; 6 x 2 st",
    "*3 plain, picot of 4 chain caught back in last plain; repeat": "12 sc, 4 picot; 4 x 3 st",
    "*3 plain, p (4 chain, 1 slip stitch back in the 1st of them); repeat": (
        "12 sc, 4 picot; 4 x 3 st"
    ),
    "(5 treble) in first stitch, 1 plain in next, (5 treble) in next; repeat": (
        "40 dc, 4 sc; 4 x 3 st; asked perhaps-shared"
    ),
    "1 d.c. into the corner stitch, * 5 chain, miss 2, 1 plain in next; repeat from *": (
        "4 sc, 20 ch; 4 x 3 st; asked corners-left-out"
    ),
}
SHARED = {
    "*1 plain on a treble, 3 chain, miss 2, 1 plain on the next; repeat from *": (
        "6 sc, 9 ch; 3 x 4 dc; asked perhaps-shared"
    ),
    "3 chain, skip 3 treble, 1 plain; 3 chain and so on": "3 sc, 9 ch; 3 x 4 dc",
    "1 plain on the treble, 3 chain, 1 plain on the next treble; repeat": (
        "12 sc, 18 ch; 6 x 2 dc; asked perhaps-shared"
    ),
    "*1 plain in next, 3 chain, 1 plain in next; repeat from *": "12 sc, 18 ch; 6 x 2 st",
}
COUNTED_ON = {
    "miss 2, (1 treble, 2 chain, 1 treble) in the 3rd stitch; repeat": (
        "4 dc, 4 ch; 2 x 5 st; 2 left over; does not close; asked perhaps-counted-on; "
        "asked row-does-not-close"
    ),
    "miss 2, 3 chain, 1 treble in the 3rd stitch; repeat": (
        "2 dc, 6 ch; 2 x 5 st; 2 left over; does not close; asked perhaps-counted-on; "
        "asked row-does-not-close"
    ),
    "*1 plain in next, 3 chain, 1 treble in 2nd st, 1 chain; repeat": (
        "4 sc, 4 dc, 16 ch; 4 x 3 st"
    ),
}
UNDER_BOTH = {
    f"1 plain {place}, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 ch-3 space; asked place-assumed"
    for place in ("under the two chs. of 3", "around the two 3 chs", "over both 3 ch")
} | {
    f"1 plain {place}, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 space; asked place-assumed"
    for place in ("over the chains of the last two rows", "round both chains")
}
"""The chains of this row and of the one below it, drawn together."""
THE_SAME_IN = {
    "*2 treble, 2 chain, 2 treble, under the 3 chain, 3 chain, the same in the next loop; repeat": (
        "48 dc, 42 ch; 6 x 2 ch-3 space"
    ),
    "*(3 treble, picot) in next loop, 2 chain, and the same in next; repeat": (
        "36 dc, 12 ch, 12 picot; 6 x 2 space"
    ),
    "x 3 treble in next loop, 2 chain, x repeat, beginning again on the next loop": (
        "36 dc, 24 ch; 12 x 1 space"
    ),
}
AND_SO_ON = {
    "5 chain, 1 plain in next loop; 5 chain and so on": "12 sc, 60 ch; 12 x 1 space",
    "1 treble in next loop, 2 chain, 1 treble in next loop, and so on": (
        "12 dc, 24 ch; 12 x 1 space"
    ),
    "2 treble in next loop, 2 chain, 1 plain in next loop, 2 chain, and so on": (
        "12 dc, 6 sc, 24 ch; 6 x 2 space"
    ),
}
NAMED_TWICE = {
    "*1 plain under 3 chain, 4 chain, 1 single in 1st of ch. (p.), 1 plain in same place; repeat": (
        "24 sc, 12 picot; 12 x 1 ch-3 space"
    ),
    "Double crochet all round, 2 into each loop": "24 sc; 12 x 1 space; asked place-assumed",
    "3 treble in next loop keeping last loop of each on hook, cotton over and through all "
    "(cluster), 3 chain; repeat": "12 dc, 36 ch; 12 x 1 space",
    "*5 plain in next loop, 5 chain, turn, 1 single in first of the 5 plain, turn, 7 plain in the "
    "5 chain, 2 plain in same loop as the 5 plain; repeat": (
        "168 sc, 12 ss, 60 ch; 12 x 1 space; asked perhaps-one-place"
    ),
    "1 plain in the centre loop of next 3 chain, 2 chain; repeat": (
        "12 sc, 24 ch; 12 x 1 ch-3 space"
    ),
    "2 chain, 1 plain in next loop, after the picot; repeat": "12 sc, 24 ch; 12 x 1 space; asked taken-as-remark",
}
AFTER_THE_NEXT = {
    "1 plain in the next hole, 4 chain, 1 plain in the hole after the next; repeat": (
        "8 sc, 16 ch; 4 x 3 space; asked perhaps-shared"
    ),
    "7 plain under every chain of 3, passing over the plain, and the plain of last row": (
        "84 sc; 12 x 1 ch-3 space"
    ),
    "Slip to the first loop, 1 treble under it, *4 chain, 1 treble in next loop; repeat": (
        "12 dc, 48 ch; 11 x 1 space; asked meets-its-start"
    ),
}
BEGUN_AGAIN = {
    "Double crochet closely over the edge; join": "12 sc; 12 x 1 st",
    "Double in the edge, *3 chain, miss 2, double in the edge; repeat from *": (
        "4 sc, 12 ch; 3 x 3 st; asked meets-its-start"
    ),
    "Work in double all round, one stitch in every stitch; join": "12 sc; 12 x 1 st",
    "Fasten on the thread, and work in double, one stitch in every stitch": "12 sc; 12 x 1 st",
    "1 plain in each stitch, and run in the thread": "12 sc; 12 x 1 st; asked taken-as-remark",
    "Commence again in the next treble; 1 plain in each": "12 sc; 12 x 1 dc",
    "Fasten in at any treble, 1 plain in each": "12 sc; 12 x 1 dc",
    "Commence again; 1 plain in each": "12 sc; 12 x 1 st; asked taken-as-remark",
    "1 plain in the treble at the top, 1 chain; repeat": "12 sc, 12 ch; 12 x 1 dc; asked taken-as-remark",
}
IN_THE_SAME = {
    "3 treble, 3 chain, 3 treble, in the same stitch, miss 2; repeat": "24 dc, 12 ch; 4 x 3 st",
    "*2 treble in the same stitch, miss 2; repeat": "8 dc; 4 x 3 st",
    "2 treble in the same place, miss 2; repeat": "8 dc; 4 x 3 st",
    "1 plain, 3 chain, 1 plain in the same place, miss 2; repeat": (
        "8 sc, 12 ch; 4 x 3 st; asked perhaps-picot"
    ),
    "1 treble, 3 chain, 1 treble, in the same stitch; 1 chain, pass to the next stitch": (
        "24 dc, 48 ch; 12 x 1 st"
    ),
}
IN_BRACKETS = {
    "(1 plain, 3 chain, miss 2, repeat.)": "4 sc, 12 ch; 4 x 3 st",
    "1 plain, (1 chain, miss 1, 1 plain, repeat.) At the corners work 2 treble in the next": (
        "6 sc, 6 ch; 5 x 2 st; asked corners-left-out; asked meets-its-start"
    ),
    "trebles on the trebles with 2 chain between": "12 dc, 24 ch; 12 x 1 dc",
    "trebles upon trebles": "12 dc; 12 x 1 dc",
    "1 treble on the first treble, 5 chain, miss 3, 1 treble; repeat": (
        "4 dc, 10 ch; 2 x 5 dc; 2 left over; does not close; asked perhaps-shared; "
        "asked row-does-not-close"
    ),
    "3 treble, not finished off, in the next; draw the thread through all the loops at once; "
    "2 chain, miss 1; repeat": "6 dc, 12 ch; 6 x 2 st",
}
TURNED = On(13, ("3 chain, turn; 1 treble in each loop",), closed=False)
BEGUN = "asked start-chain-assumed"
ON_THE_CHAIN = {
    "1 treble in each of the next 12 st, 1 treble in 3rd of ch; ch 5, turn": f"13 dc; {BEGUN}; {BEGUN}",
    "turn; 1 treble in each of the next 12 st, 1 treble in third st of ch": (
        f"13 dc; {BEGUN}; {BEGUN}"
    ),
    "1 treble in each of the next 12 st, 1 treble on the 3rd chain; turn": (
        f"13 dc; {BEGUN}; {BEGUN}"
    ),
    "turn; 1 treble in each of the next 12 st, 1 treble in 3rd of the 3 ch": (
        f"13 dc; {BEGUN}; {BEGUN}"
    ),
    "turn; 1 plain in each of the next 12 st, 1 plain in top of ch 3": (f"13 sc; {BEGUN}; {BEGUN}"),
    "turn; 1 plain in each of the next 12 st, 1 plain in top of chain; turn": (
        f"13 sc; {BEGUN}; {BEGUN}"
    ),
    "3 chain, which take the place of 1 treble, turn; 1 treble in each of the next 12 st": (
        f"13 dc; {BEGUN}"
    ),
    "turn; 1 plain in each of the next 12 st, 1 plain in top of 3 chain; turn": (
        f"13 sc; {BEGUN}; {BEGUN}"
    ),
    "turn; 1 plain in each of the next 12 st, 1 plain on the chain that turned": (
        f"13 sc; {BEGUN}"
    ),
    "turn; 1 plain in each of the next 12 st, 1 plain on chain which turned the last row": (
        f"13 sc; {BEGUN}"
    ),
}


@cases(
    (ARCHES, BEFORE_ITS_STEPS),
    (ARCHES, EACH_AND_REPEAT),
    (ARCHES, AS_THEY_COME),
    (ARCHES, IN_ALL),
    (ARCHES, OF_CHAINS),
    (SIXES, OF_GROUPS),
    (FAN, ROUND_A_GROUP),
    (SIXES, ROUND_SIX),
    (OPENED, ROUND_SPACES),
    (SIXES, PARTED_BY_PICOTS),
    (On(12, ("1 plain in each loop, with 7 chain between",)), OF_SEVEN),
    (On(12, ("1 treble in each loop, with 1 chain between",)), OF_ONE),
    (STITCHES, OF_STITCHES),
    (ARCHES, UNDER_BOTH),
    (ARCHES, THE_SAME_IN),
    (ARCHES, AND_SO_ON),
    (ARCHES, NAMED_TWICE),
    (ARCHES, AFTER_THE_NEXT),
    (STITCHES, BEGUN_AGAIN),
    (STITCHES, IN_THE_SAME),
    (STITCHES, IN_BRACKETS),
    (STITCHES, COUNTED_ON),
    (STITCHES, SHARED),
    (TURNED, ON_THE_CHAIN),
)
def test_over_and_over(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


IN_EACH_CHAIN = {
    "1 dc in each ch; repeat": "36 sc; 36 x 1 ch",
    "1 dc in each chain; repeat all round": "36 sc; 36 x 1 ch",
    "(1 dc, 2 ch, 1 dc) in each ch; repeat": ("72 sc, 72 ch; 36 x 1 ch; asked perhaps-one-place"),
    "3 ch, 1 dc in each ch; repeat": "36 sc, 108 ch; 36 x 1 ch",
}


@cases((ARCHES, IN_EACH_CHAIN))
def test_in_each_chain_goes_to_the_end_itself(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


ON_GROUPS = {
    "1 treble in each treble of group, 5 ch; repeat": "18 dc, 90 ch; 18 x 1 dc",
    "5 ch, 1 dc on each treble of next group; repeat": "18 sc, 90 ch; 18 x 1 dc",
    "1 treble on each treble, 3 ch, miss the chain; repeat": "18 dc, 54 ch; 18 x 1 dc",
    "treble on treble, 3 ch; repeat": "18 dc, 54 ch; 18 x 1 dc",
    "x 1 treble on each treble, 5 ch x": "18 dc, 90 ch; 18 x 1 dc",
    "2 dc on each treble, 5 ch; repeat": "36 sc, 90 ch; 18 x 1 dc",
    "dc on the treble, 5 dc in loop; repeat": "36 sc; 6 x 3 dc",
    "3 dc on the treble, 5 dc in the loop; repeat": "48 sc; 6 x 3 dc",
    "dc on treble, 3 ch, dc on treble, 5 dc in loop; repeat": "42 sc, 18 ch; 6 x 3 dc",
}

SAID = {
    "1 treble in each of the next 3 treble, 5 ch; repeat": "18 dc, 30 ch; 6 x 3 dc",
    "1 treble in next treble, 3 ch; repeat": "18 dc, 54 ch; 18 x 1 dc",
    "1 dc in next treble, 5 dc in next loop; repeat": "36 sc; 6 x 3 dc",
    "dc on treble, ch 1, dc on treble, ch 1, dc on treble, 5 dc in loop; repeat": (
        "48 sc, 12 ch; 6 x 3 dc"
    ),
    "1 dc on the treble, miss 2, 5 dc in loop; repeat": "36 sc; 6 x 3 dc",
}
SINGLE = {
    "1 dc on each dc, 5 ch; repeat": "12 sc, 60 ch; 12 x 1 sc",
    "2 dc on each dc, 5 ch; repeat": "24 sc, 60 ch; 12 x 1 sc",
    "dc on dc, 5 dc in loop; repeat": "72 sc; 12 x 1 sc",
}
IN_ONE_RUN = {"treble on treble, 3 ch; repeat": "12 dc, 36 ch; 12 x 1 dc"}


@cases((BLOCKS, {row: f"{comes}; asked perhaps-one-place" for row, comes in ON_GROUPS.items()}))
def test_on_one_of_a_group_or_on_each_is_asked(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((BLOCKS, SAID), (ARCHES, SINGLE), (STITCHES, IN_ONE_RUN))
def test_where_it_is_said_or_none_stand_in_groups_nothing_is_asked(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


def test_what_is_asked_of_a_group_shows_both_ways() -> None:
    head = BLOCKS.headings + "\n".join(f"round 1: {row}." for row in BLOCKS.below)
    border, _ = read_border(
        Source("book.border", f"{head}\nround 2: 3 dc on the treble, 3 ch; repeat.\n")
    )
    assert border is not None
    reading, _ = read_rounds(border, lambda source, name: None)
    (asked,) = work(reading, Edge("edge", True, "loop", (), BLOCKS.loops)).findings
    assert asked.help == (
        'write "1 dc in each of the next 3 tr" if it goes on each of a group, or "3 dc in next tr" '
        "if on one"
    )


ON_THEIR_LIKE = {
    "1 treble on treble twice, 1 chain, miss 1; repeat": "8 dc, 4 ch; 4 x 3 dc",
    "*1 treble on next treble 3 times, 3 chain; repeat from *": "12 dc, 12 ch; 4 x 3 dc",
}


@cases((STITCHES, ON_THEIR_LIKE))
def test_so_often_into_its_like_is_each_time_the_next(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_so_often_into_something_else_is_asked() -> None:
    assert "asked not-understood" in said("3 treble in loop twice", ARCHES)


def test_under_each_of_so_many_chains_is_in_the_spaces() -> None:
    row = "*2 treble under each of the 3 chain, 1 chain; repeat from *"
    assert said(row, ARCHES) == "24 dc, 4 ch; 4 x 3 space; asked place-assumed"
