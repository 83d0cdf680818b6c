"""What needleworkers' eyes found misread on whole pages: what closes a round where it is no slip
stitch, the last of several, two places of one step, corners whose words went on, chains first.
"""

from __future__ import annotations

from phrases.said import ARCHES, FIVES, LOOPS, SIXES, STITCHES, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border

RING = On(1)
OPEN_STITCHES = STITCHES._replace(closed=False)
MESHES = On(12, ("*1 treble in loop, 1 chain; repeat",))
TURNED = On(12, ("ch 3, 1 treble in each loop, turn",), closed=False)
THREES = ARCHES._replace(below=(*ARCHES.below, "3 treble in each space"))

CLOSED_WITH = {
    "*5 chain, 1 plain in next loop; repeat, join with 2 chain": "12 sc, 62 ch; 12 x 1 loop",
    "*5 chain, 1 plain in next loop; repeat, joining with 5 chain to the first plain": "12 sc, 65 ch; 12 x 1 loop; asked perhaps-instead",
    "*1 plain in next loop, 5 chain; repeat from *, the last 5 chain being joined to the first plain": "12 sc, 60 ch; 12 x 1 loop",
    "*5 chain, 1 plain in next loop; repeat, join with 1 plain in 1st plain": "12 sc, 60 ch; 12 x 1 loop",
    "*5 chain, 1 plain in next loop; repeat; close the round by working 1 single on the 1st chain": "12 sc, 60 ch; 12 x 1 loop",
}

IN_A_RING = {
    "Make a chain of 9, and make it round by working a single stitch in the 1st chain; work 16 treble in the round loop": "16 dc; asked foundation-named",
    "make a chain of 9, join, 16 treble in the loop": "16 dc; asked foundation-named",
    "make a chain of 9, join, *2 treble in the loop, 2 chain; repeat from * 5 times": "12 dc, 12 ch; asked foundation-named",
}

THE_LAST = {
    "3 chain, miss 1, 10 treble, the last of them on the last treble": "11 dc; asked start-chain-assumed; asked perhaps-missed",
    "4 treble on 4 treble, the last on the last treble": "4 dc",
    "(2 chain, miss 1, 1 treble on next treble) 3 times, the last being in the last treble": "3 dc, 6 ch",
    "(2 chain, miss 1, 1 treble on next treble) twice, the last in last treble": "2 dc, 4 ch; asked start-chain-assumed",
}

TWO_PLACES = {
    "slip over the treble and first chain, 1 plain in next treble": "2 ss, 1 sc; does not close; asked perhaps-one-place; asked repeat-unclear",
    "slip over treble and ch, 1 plain in next treble": "2 ss, 1 sc; does not close; asked perhaps-one-place; asked repeat-unclear",
    "*1 plain in treble and next chain, 2 chain; repeat": "24 sc, 24 ch; 12 x 1 dc; asked perhaps-one-place",
    "*1 plain in treble and chain 3; repeat": "12 sc, 36 ch; 12 x 1 dc",
}

OF_THE_SIX = {
    "*1 treble on the first of the six, (1 chain, 1 treble on the next) 5 times, miss the 2 chain; repeat from *": "36 dc, 30 ch; 6 x 1 block of 6",
}

AT_CORNERS = {
    "1 plain in the centre of every 5 chain, with 5 chain between; in the loop at the corner 1 plain, 7 chain, 1 plain": "6 sc, 30 ch; 6 x 1 ch-5 space; asked corners-left-out",
    "*1 plain in the centre of the 5 chain, 5 chain; repeat from *; and at the corner, under the 7 chain, 1 plain, 7 chain, 1 plain, then 5 chain as before": "6 sc, 30 ch; 6 x 1 ch-5 space; asked corners-left-out",
    "3 treble in every space, with 1 chain between the groups, and 3 treble, 3 chain, 3 treble at the corners; join": "18 dc, 6 ch; 6 x 1 space; asked corners-left-out",
}

AT_THE_SIDE = {
    "*1 plain in each treble, and fasten with 1 plain to the end of the foundation chain": "36 sc; 36 x 1 dc; asked star-assumed; asked at-the-side",
}

CHAINS_FIRST = {
    "1 plain in first ch 5, (ch 5, 1 plain in next) 5 times": "6 sc, 25 ch",
    "1 plain in 2d ch 5, (ch 5, 1 plain in next ch 5) 4 times": "5 sc, 20 ch",
}

IN_THE_TOP = {
    "turn, 1 treble in each of next 11 treble and in top of 3 ch": "12 dc; asked start-chain-assumed; asked start-chain-assumed",
    "1 treble in each of next 11 treble, 1 treble in top of 3 ch at end": "12 dc; asked start-chain-assumed; asked start-chain-assumed",
    "1 treble in next, miss 10, 2 treble in top of ch at end": "3 dc; asked start-chain-assumed; asked start-chain-assumed",
}

INTO_THE_LAST = {
    "5 chain, miss 3, 1 treble on treble, 2 chain, miss 2, 1 treble, 2 chain, 1 treble in last treble": "4 dc, 6 ch; asked place-unclear; asked start-chain-assumed",
    "5 chain, miss 3, 1 treble on treble, 2 chain, 1 treble, 2 chain, 1 treble in last treble": "4 dc, 6 ch; asked place-unclear; asked start-chain-assumed",
}

ABBREVIATED = {
    "*3 plain, 1 chain, rep.": "12 sc, 4 ch; 4 x 3 loop",
    "*3 plain, 1 chain, rep. from *": "12 sc, 4 ch; 4 x 3 loop",
    "*3 plain, 1 chain; rept. from *. Turn.": "12 sc, 4 ch; 4 x 3 loop",
    "*3 plain, 1 ch., rep. the whole length of the braid": "12 sc, 4 ch; 4 x 3 loop",
}

BEHIND_THEN = {
    "*1 treble, then 2 chain, then 1 treble, under the loop of three chain; repeat from *": "24 dc, 24 ch; 12 x 4 st; asked perhaps-one-place",
    "*1 treble, then 2 chain, then 1 treble on plain, miss 3; repeat": "12 dc, 12 ch; 6 x 8 st",
}

MESH_AND_BACK = (
    "1 treble in each loop, turn",
    "5 chain, miss 2, 1 treble in next treble, *2 chain, miss 2, 1 treble in next treble; repeat from *, turn",
)
TO_AND_FRO = On(13, MESH_AND_BACK, closed=False)

AT_ITS_BEGINNING = {
    "1 treble in each of next 4 treble, 9 treble in the loop of 2 chain at beginning of 2nd row, 1 treble in last st, turn": "14 dc; asked start-chain-assumed",
    "*1 plain in next treble, 2 chain, miss 2 ch; repeat from *, missing the last st": "4 sc, 8 ch; 4 x 1 dc; asked start-chain-assumed",
}

MORE_CLOSED = {
    "*5 chain, miss 1 loop, 1 plain in next loop; repeat from *, joining last chain 5 to the first plain": "6 sc, 35 ch; 6 x 2 loop; asked perhaps-instead",
    "*5 chain, miss 1 loop, 1 plain in next loop; repeat from *, the last chain 5 joined to the first plain": "6 sc, 35 ch; 6 x 2 loop; asked perhaps-instead",
    "4 chain, *miss 1, 1 treble in the next, 1 chain; repeat from * all round, missing the last loop, and join to the third of the 4 chain": "6 dc, 6 ch; 5 x 2 loop; asked start-chain-assumed",
    "*1 plain in next loop, 2 chain, miss the last; repeat from *": "6 sc, 12 ch; 6 x 2 loop",
    "*miss first loop, 1 plain in next, 3 chain; repeat from *": "6 sc, 18 ch; 6 x 2 loop",
    "4 chain, miss one loop, 1 plain in the next, and do this 5 times in all": "5 sc, 20 ch; does not close; asked row-does-not-close",
    "*1 plain in next loop, 5 chain; repeat this to the end, which must be one plain": "12 sc, 60 ch; 12 x 1 loop; does not close; asked row-does-not-close",
    "*6 chain, 1 plain in next loop; repeat from *, making no chain between the scallops": "12 sc, 72 ch; 12 x 1 loop",
}

ASIDE = {
    "*1 plain in loop, 1 chain, and pass to the next scallop; repeat": "12 sc, 12 ch; 12 x 1 loop; asked taken-as-remark",
    "*1 plain in next loop, 3 chain; repeat. This forms the middle of the point": "12 sc, 36 ch; 12 x 1 loop; asked taken-as-remark",
    "*1 plain in next loop, 3 chain; repeat. You now have 12 loops of 3 chain on the edge": "12 sc, 36 ch; 12 x 1 loop; asked taken-as-remark",
    "1 plain, 5 treble, 1 plain in each loop, six petals in all": "7 sc, 5 dc; 6 x 1 loop; asked place-unclear; asked taken-as-remark",
    "*1 plain in next loop, 3 chain; repeat, leaving 9 treble for the square": "12 sc, 36 ch; 12 x 1 loop; asked taken-as-remark",
    "Make a chain for length required, turn, and work 1 plain in each ch": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain closely around the linen center": "12 sc; 12 x 1 loop",
    "plain, with 1 plain over": "12 sc; 12 x 1 loop; asked place-assumed; asked taken-as-remark",
    "*7 treble in loop, (3 chain standing for the first of all), 1 plain in next; repeat from *": "42 dc, 6 sc; 6 x 2 loop; asked taken-as-remark",
    "*2 treble in loop, 1 plain in the next, which is over a cluster; repeat": "12 dc, 6 sc; 6 x 2 loop; asked taken-as-remark",
    "*7 treble in loop, join the 4th treble to the 4th treble of the next wheel; repeat": "84 dc; 12 x 1 loop; asked taken-as-remark",
    "*3 plain, 1 picot, 3 plain in each loop, joining 2d picot to 2d picot of last wheel": "30 sc, 1 picot; 9 x 1 loop; asked star-assumed; asked place-unclear; asked taken-as-remark",
    "2 treble in each loop, leaving 6 loops free along the edge": "24 dc; 12 x 1 loop; asked taken-as-remark",
    "Begin, as before, in the middle of the first loop; 7 chain, 1 plain in the centre of the next loop; repeat": "12 sc, 84 ch; 12 x 1 loop; asked taken-as-remark; asked perhaps-leads-back",
    "Work a group of 3 treble in every loop with 1 chain between": "36 dc, 12 ch; 12 x 1 loop",
    "*1 plain in a loop, a group of 3 treble in next loop, 1 chain; repeat": "6 sc, 18 dc, 6 ch; 6 x 2 loop",
    "Other edge of the braid. 1 treble in each loop": "12 dc; 12 x 1 loop; asked taken-as-remark",
    "1 trc in each loop": "12 dc; 12 x 1 loop",
    "Second colour. 1 treble in each loop": "12 dc; 12 x 1 loop",
    "Take the white wool; 1 treble in each loop": "12 dc; 12 x 1 loop",
}

AT_CORNERS_WHOLLY = {
    "Sl st to corner st, 8 chain, 1 treble in same st, *2 chain, miss 2, 1 treble in next; repeat from * to next corner, the last treble coming in corner st, 5 chain, 1 treble in same st; join": "4 dc, 8 ch; 4 x 3 st; asked corners-left-out; asked corners-left-out",
    "work plain closely, putting 3 in each corner": "12 sc; 12 x 1 st; asked corners-left-out",
    "work plain close together, join": "12 sc; 12 x 1 st",
    "work plain": "12 sc; 12 x 1 st",
}

IN_A_CHAIN_OF_ONE = {
    "(1 plain in next 1 ch, 3 chain) 12 times": "12 sc, 36 ch; asked perhaps-one-place",
    "(1 plain in the next 1 chain, 3 chain) 12 times": "12 sc, 36 ch",
}

WITH_MORE = {
    "*1 plain in next plain, miss 2, 1 plain on the next of the chain; repeat": "24 sc; 12 x 1 sc; asked perhaps-one-place",
    "1 plain on each of the 3 last": "3 sc",
    "*1 plain past the plain, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 loop; asked unknown-word",
    "Sl st past the plain, *1 plain in next space, 3 chain; repeat": "1 ss, 12 sc, 36 ch; 12 x 1 space; asked perhaps-leads-on",
    "Sl st to space between plain, *2 treble in next space, 2 chain; repeat": "24 dc, 24 ch; 12 x 1 space",
    "Chain 1, 3 plain in each space, with 1 plain in each plain; join to 1st plain": "48 sc; 24 x 0 space, 1 sc",
    "*1 plain on the plain in the hollow, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 sc; asked taken-as-remark",
}

ON_WHEELS = {
    "*1 plain in first free loop of each wheel, (5 chain, 1 plain in the next) 3 times, 3 chain; repeat from * on every wheel": "12 sc, 54 ch; 3 x 4 loop; asked place-assumed; asked taken-as-remark",
    "3 chain for a treble, *2 chain, 1 plain in next loop, 2 chain, 1 treble in next loop, 1 treble in first loop of next wheel; repeat from *, ending with 1 treble in last loop of last wheel": "8 dc, 3 sc, 12 ch; 3 x 3 loop; 1 left over; does not close; asked place-assumed; asked perhaps-instead; asked taken-as-remark; asked row-does-not-close",
    "*1 plain in loop, 3 chain; repeat from * across the wheels": "12 sc, 36 ch; 12 x 1 loop; asked taken-as-remark",
    "*1 plain in each loop of the wheels": "12 sc; 12 x 1 loop; asked star-assumed; asked taken-as-remark",
}
"""Where one wheel ends the yoke says: a row on twelve loops is told so."""

BETWEEN_WHEELS = {
    "*1 plain on the plain between the wheels, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 sc; asked place-assumed",
    "*3 plain under the 3 chain between the wheels; repeat": "36 sc; 12 x 1 ch-3 space; asked place-assumed",
}


P_LOOPS = LOOPS._replace(headings="terms: uk\nplain means us sc\np loop = ch 6, picot of 3, ch 2\n")

NAMED_WITH_DOTS = {
    "*1 p. loop, 1 plain in next loop; repeat": "12 sc, 96 ch, 12 picot; 12 x 1 loop",
    "*1 p loop, 1 plain in next loop; repeat": "12 sc, 96 ch, 12 picot; 12 x 1 loop",
}

TWO_PICOTS = On(6, ("*1 plain in next loop, 2 chain, 1 picot, 2 chain, 1 picot, 2 chain; repeat",))

BETWEEN_PICOTS = {
    "*1 plain between the two picots of a free loop, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 space",
}


ON_THE_CENTRE = {
    "*3 plain on the centre of the 5 chain, 4 chain; repeat": "18 sc, 24 ch; 6 x 1 ch-5 space; asked perhaps-one-place",
    "*1 plain in 2nd chain of the 5 chain, 1 plain in each of the next 2 chain, 4 chain; repeat": "18 sc, 24 ch; 6 x 1 ch-5 space",
    "*3 plain in the centre of the 5 chain, 4 chain; repeat": "18 sc, 24 ch; 6 x 1 ch-5 space",
}

WHOLE_ROWS = {
    "Plain": "12 sc; 12 x 1 st; asked place-assumed",
    "Plain; join": "12 sc; 12 x 1 st; asked place-assumed",
    "1 plain": "1 sc; does not close; asked repeat-unclear",
    "Work 216 plain over the hem of the linen centre": "12 dc; 12 x 1 loop; asked row-does-not-close; asked no-stitches",
    "1 plain in each stitch, decreasing by missing every 4th stitch": "9 sc; 3 x 4 st; 0 x 0 st",
    "Miss the first treble, 1 plain in each of the next 2, miss 1; repeat": "6 sc; 3 x 3 st; 2 left over; does not close; asked row-does-not-close",
    "Ch 5, *skip 1 treble, 1 treble in next, ch 2; repeat from * until there are 6 spaces, join in 3d of 5 ch": "6 dc, 12 ch; does not close; asked start-chain-assumed; asked row-does-not-close",
    "2 treble in each treble, and fasten with 1 plain at the edge": "24 dc; 12 x 1 dc; asked at-the-side",
    "1 treble in first treble, *4 chain, miss 1, 1 treble in next; repeat from * to corner, put 3 treble with 4 chain between in same stitch": "6 dc, 20 ch; 5 x 2 st; 1 left over; does not close; asked corners-left-out; asked row-does-not-close",
    "Fasten thread in corner, ch 3, 4 treble in same place, *ch 2, skip 2, 1 treble in next; repeat from *": "4 dc, 8 ch; 4 x 3 st; asked corners-left-out",
}

AMONG_OTHERS = {
    "Under each loop of 3 ch: 2 plain, ch 4, sl st in last plain, 2 plain": "48 sc, 12 picot; 12 x 1 ch-3 space",
    "*5 plain in next loop, ch 3, sl st in last plain; repeat": "5 sc, 1 ss, 3 ch; 1 x 12 space; asked perhaps-picot; asked perhaps-last-of-each",
}

NINES = On(6, ("*9 treble in next loop, 2 chain; repeat",))

ON_THE_NINE = {
    "*7 plain on the nine, missing the first and last, 4 chain; repeat": "42 sc, 24 ch; 6 x 1 block of 9; asked perhaps-fewer; asked taken-as-remark",
    "*7 plain on the 9 treble, leaving one at each end, 4 chain; repeat": "42 sc, 24 ch; 6 x 1 9-dc run; asked perhaps-fewer; asked taken-as-remark",
    "*1 plain on the first treble, (3 chain, miss 1 treble, 1 plain in the next) 4 times, 3 chain; repeat": "30 sc, 90 ch; 6 x 9 dc",
    "*3 chain, 1 plain under each 2 chain of the scallop (6 times), 3 chain; repeat": "6 sc, 12 ch; 1 x 6 ch-2 space; 6 x 1 ch-2 space; asked place-unclear; asked perhaps-as-they-come; asked place-assumed; asked taken-as-remark; asked open-repeat-inside",
}

AT_ITS_END = {
    "7 chain, turn, 1 treble in the last treble, 2 chain, miss 2, 1 treble in each of the next 9 treble": "11 dc, 6 ch; asked start-chain-assumed",
    "1 treble in each of next 12 treble; leave the loops": "12 dc; asked taken-as-remark",
    "5 chain, miss 7, (2 chain, 1 treble on treble) 4 times, the last in the end treble": "5 dc, 10 ch; asked start-chain-assumed",
    "miss 8, 4 treble on the 4 at the end": "4 dc",
    "miss 11, 1 plain in the end st": "1 sc",
}

SEVENS = On(6, ("*7 treble in next loop, 1 chain; repeat",))

IN_THE_NEXT_SCALLOP = {
    "1 plain on the fourth of the seven treble, *9 chain, 1 plain on the fourth of the seven treble in the next scallop; repeat from *": "6 sc, 54 ch; 5 x 1 7-dc run; asked place-assumed; asked meets-its-start",
}

ALONG_ROWS = {
    "1 plain in the end of a row, *miss 1 row, 7 treble in the end of the next, miss 1 row, 1 plain in the end of the next; repeat from *": "3 sc, 21 dc; 2 x 4 loop; asked place-assumed; asked meets-its-start",
    "With white, chain loosely the length required; turn, 1 plain in each chain": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "*2 treble in 1st loop, 1 plain in next, 3 chain, repeat from * around, join. Always make 3 chain for the first treble of a row": "12 dc, 6 sc, 18 ch; 6 x 2 loop; asked taken-as-remark",
    "Close 8 chain into a round, and under it work 16 plain": "16 sc; does not close; asked foundation-named; asked repeat-unclear",
    "With the scarlet wool, work a row of plain all round the mat, with three in every corner": "12 sc; 12 x 1 loop; asked corners-left-out",
    "*5 chain, 1 plain in next loop; repeat from * all around, ending with 5 chain, sl st in sl st at beginning": "12 sc, 65 ch; 12 x 1 loop; asked perhaps-instead",
}

IN_THE_BACK = {
    "Turn, taking up the back thread, *miss 1, 3 plain; repeat": "9 sc; 3 x 4 st",
    "Turn, and taking up the back thread of the stitches throughout, *miss 1, 3 plain; repeat from *": "9 sc; 3 x 4 st",
}

CHAINS_OF_ONE = {
    "*1 plain under each of the next four one chain, 4 chain; repeat": "12 sc, 12 ch; 3 x 4 ch-1 space",
    "*1 plain in each of the 4 ch 1 of fan, 4 chain; repeat": "12 sc, 12 ch; 3 x 4 ch-1 space; asked place-assumed",
}


@cases(
    (STITCHES, WHOLE_ROWS),
    (ARCHES, AMONG_OTHERS),
    (NINES, ON_THE_NINE),
    (OPEN_STITCHES, AT_ITS_END),
    (FIVES, ON_THE_CENTRE),
    (SEVENS, IN_THE_NEXT_SCALLOP),
    (LOOPS, ALONG_ROWS),
    (STITCHES, IN_THE_BACK),
    (MESHES, CHAINS_OF_ONE),
    (P_LOOPS, NAMED_WITH_DOTS),
    (STITCHES, AT_CORNERS_WHOLLY),
    (MESHES, IN_A_CHAIN_OF_ONE),
    (TWO_PICOTS, BETWEEN_PICOTS),
    (LOOPS, CLOSED_WITH),
    (RING, IN_A_RING),
    (OPEN_STITCHES, THE_LAST),
    (MESHES, TWO_PLACES),
    (SIXES, OF_THE_SIX),
    (FIVES, AT_CORNERS),
    (THREES, AT_THE_SIDE),
    (FIVES, CHAINS_FIRST),
    (TURNED, IN_THE_TOP),
    (OPEN_STITCHES, INTO_THE_LAST),
    (LOOPS, ABBREVIATED),
    (ARCHES, BEHIND_THEN),
    (TO_AND_FRO, AT_ITS_BEGINNING),
    (LOOPS, MORE_CLOSED),
    (LOOPS, ASIDE),
    (ARCHES, WITH_MORE),
    (LOOPS, ON_WHEELS),
    (ARCHES, BETWEEN_WHEELS),
)
def test_what_was_misread(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_two_names_for_one_stitch_are_told_wherever_a_row_makes_them() -> None:
    row = "*5 long in loop, 4 chain, 1 treble in next loop, 4 chain; repeat"
    assert said(row, LOOPS).endswith("asked names-alike")
    assert said("*1 long in each loop") == "12 dc; 12 x 1 loop; asked star-assumed"
    on_long = "1 treble on each long"  # in a place a name is that of the row below
    assert said(on_long, STITCHES) == "12 dc; 12 x 1 dc"


def test_a_stitch_of_a_row_further_down_is_told_in_so_many_words() -> None:
    rows = "1 treble in each loop", "1 treble in each treble", "1 treble in each treble"
    heads = "\n".join(f"round {n}: {row}." for n, row in enumerate(rows, 1))
    row = "round 4: *6 chain, 1 plain in treble of 1st row; repeat."
    _, (finding,) = read_border(Source("a.border", f"{LOOPS.headings}{heads}\n{row}\n"))
    assert finding.code == "not-understood"
    assert '"of 1st row" is a row further down' in finding.message


def test_a_remark_is_offered_whole_and_without_what_is_made() -> None:
    """Each row, and what is offered of it to be set apart."""
    offers = {
        "1 plain in each. The treble should be worked rather loosely": "The treble should be worked rather loosely",
        "*1 plain in next, 2 chain to keep it flat; repeat": "to keep it flat",
        "*1 treble on the finished treble, 2 chain; repeat": "finished",
        "3 plain in remaining half of loop": "remaining half of",
        "Sl st to beyond the plain, 1 plain in each": "beyond the",
    }
    for row, offered in offers.items():
        text = f"{LOOPS.headings}round 1: {row}.\n"
        _, findings = read_border(Source("a.border", text))
        (finding,) = [f for f in findings if f.code == "unknown-word"]
        assert f'"-- {offered} --"' in (finding.help or ""), row
