"""Rows of old books of edgings: where a row begins, leaves, the chain on either side of a stitch,
centres, scallops, corners, and what is said of a repeat.
"""

from __future__ import annotations

import pytest
from phrases.said import HEADINGS, STITCHES, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border

SEVENS = On(48, ("*7 chain, miss 5, 1 plain; repeat",))
"""Eight sc, and eight spaces of 7 chains."""

LEADS_BACK = "asked start-chain-assumed; asked perhaps-leads-back"

ON_SEVENS = {
    "Slip stitch to the centre of the 7 chain, 3 chain, 1 treble in the same, (5 chain, 2 treble in the next 7 chain, repeat.)": f"16 dc, 35 ch; 7 x 1 ch-7 space; {LEADS_BACK}; asked passes-more",
    "Slip stitch to the centre of the 7 chain, 3 chain, 1 treble in the same, (5 chain, 2 treble in the next 7 chain) repeat": f"16 dc, 35 ch; 7 x 1 ch-7 space; {LEADS_BACK}; asked passes-more",
    "Slip stitch to the 7 chain, 3 chain, 1 treble in the same 7 chain, (5 chain, 2 treble in the next 7 chain, repeat.)": f"16 dc, 35 ch; 7 x 1 ch-7 space; {LEADS_BACK}",
    "Slip stitch to the centre of the 7 chain, 3 chain, 1 treble in the same, * 5 chain, 2 treble in the next 7 chain, repeat from *": f"16 dc, 35 ch; 7 x 1 ch-7 space; {LEADS_BACK}; asked passes-more",
    "Begin in a loop, 3 treble in same loop, (2 treble, 2 chain, 2 treble) in next loop; repeat": "28 dc, 8 ch; 4 x 2 space",
}

LOOP_IS_ST = SEVENS._replace(headings=f"{SEVENS.headings}loop means st\n")
"""The same, in a book that calls a stitch a loop."""

ON_LOOPS_OF_CHAIN = {
    "In the first loop of seven chain work four treble, three chain, four treble; in the next loop fasten with one plain; repeat": "32 dc, 4 sc, 12 ch; 4 x 2 ch-7 space; asked place-assumed",
    "4 treble in the next loop of 7 chain, 3 chain, 4 treble in same loop, 1 plain in the next loop of 7 chain; repeat": "32 dc, 4 sc, 12 ch; 4 x 2 ch-7 space",
    "1 plain in the next loop, 5 chain, miss 2; repeat": "21 sc, 105 ch; 21 x 3 st; 1 left over; does not close; asked row-does-not-close",
}

LEAVES = {
    "* 9 chain, miss 1, 1 plain, 5 treble, 1 plain, miss 3, 1 plain; repeat from *": "15 sc, 25 dc, 45 ch; 5 x 12 st; asked perhaps-just-made",
    "* 9 chain, miss 1, 1 plain, 5 treble, 1 plain, miss 3 of the foundation, 1 plain; repeat from *": "15 sc, 25 dc, 45 ch; 5 x 12 st; asked perhaps-just-made",
    "* 1 plain, 9 chain, miss the last, 1 plain, 5 treble, 1 plain, miss 2; repeat from *": "15 sc, 25 dc, 45 ch; 5 x 11 st; 5 left over; does not close; asked perhaps-just-made; asked row-does-not-close",
    "* 9 chain, miss 1, 7 plain, miss 2; repeat from *": "42 sc, 54 ch; 6 x 10 st; asked perhaps-just-made",
    "* 8 chain, miss 1, 7 plain, miss 2; repeat from *": "42 sc, 48 ch; 6 x 10 st; asked perhaps-just-made",
    "* 5 chain, miss 1, 3 plain; repeat from *": "45 sc, 75 ch; 15 x 4 st",
    "* 7 chain, miss 1, 4 plain; repeat from *": "48 sc, 84 ch; 12 x 5 st",
    "* 5 chain, miss 1, 1 plain, 1 chain, miss 1, 1 plain; repeat from *": "30 sc, 90 ch; 15 x 4 st",
}

LEAVES_ON_AN_EDGE = {
    "* 9 chain, miss 1, 1 plain, 5 treble, 1 plain, miss 3, 1 plain; repeat from *": "15 sc, 25 dc, 45 ch; 5 x 12 loop; asked perhaps-just-made",
}

BANDS = On(48, ("*5 plain, 5 chain, miss 5, 1 plain, 5 chain, miss 5; repeat",))
"""Three times 5 sc and 1 sc, with 5 chains between."""

ON_BANDS = {
    "* 3 plain on the centre 3 of the 5, 5 chain, 3 plain on the 1 plain and a chain on each side, 5 chain; repeat from *": "18 sc, 30 ch; 3 x 1 block of 5; asked place-assumed",
    "* 3 plain on the centre 3 of the 5, 5 chain, 3 plain on the 1 plain, taking also a chain on each side, 5 chain; repeat from *": "18 sc, 30 ch; 3 x 1 block of 5; asked place-assumed",
    "* 3 plain on the centre 3 of the 5, 5 chain, 3 plain on the one, and a chain on each side, 5 chain; repeat from *": "18 sc, 30 ch; 3 x 1 block of 5; asked place-assumed",
    "* 3 plain on the centre 3 of the 5, 5 chain, 3 plain over 1 and a chain at each side, 5 chain; repeat from *": "18 sc, 30 ch; 3 x 1 block of 5; asked place-assumed",
    "* 3 plain on the centre 3 of the 5, 5 chain, 3 plain on the 1 plain and the chain at each side of it, 5 chain; repeat from *": "18 sc, 30 ch; 3 x 1 block of 5; asked place-assumed",
    "* 7 plain over 5, and one chain at each side, 11 chain; repeat from *": "21 sc, 33 ch; 3 x 3 space; asked place-assumed",
    "* 7 plain over the 5 plain and 1 chain at each side, 11 chain; repeat from *": "21 sc, 33 ch; 3 x 3 space; asked place-assumed",
    "* 7 plain on the 5 plain and on 1 chain at each side, 11 chain; repeat from *": "21 sc, 33 ch; 3 x 3 space; asked place-assumed",
}

FIVES_APART = On(48, ("5 plain, 5 chain, miss 3; repeat",))
FOURS_APART = On(48, ("4 treble, 4 chain, miss 2; repeat",))
"""Six runs of 5 sc, and eight of 4 dc, with chains between."""

CENTRES_OF_FIVE = {
    "1 plain on the centre of the 5 plain, (4 chain, 1 plain in the 5 chain, 4 chain, 1 plain on the centre plain stitch, repeat.)": "12 sc, 48 ch; 5 x 1 ch-5 space; asked meets-its-start",
    "1 plain on the centre of the 5 plain, * 4 chain, 1 plain in the 5 chain, 4 chain, 1 plain on the centre plain; repeat from *": "12 sc, 48 ch; 5 x 1 ch-5 space; asked meets-its-start",
    "(1 plain in centre of the run of 5 plain, 4 chain, 1 plain in the 5 chain, 4 chain, repeat)": "12 sc, 48 ch; 6 x 1 5-sc run",
}

CENTRES_OF_FOUR = {
    "* 2 treble on the centre 2 of the 4 treble, 4 chain, 1 plain in the 4 chain, 4 chain; repeat": "16 dc, 8 sc, 64 ch; 8 x 1 4-dc run",
}

SCALLOPS = On(
    48,
    ("1 plain, 7 chain, miss 3; repeat",),
    headings=HEADINGS.replace("stitches: yes", "stitches: no"),
)
"""Twelve spaces of 7 chains, each behind 1 sc, where chains are no stitches."""

SLIPS = "asked perhaps-leads-on; asked place-assumed; asked perhaps-leads-back"
SLIPS_ON = "asked perhaps-leads-on; asked perhaps-leads-back; asked passes-more"

ON_SCALLOPS = {
    "1 slip stitch in each of the first 3 stitches of the next scallop, 1 plain in the following stitch, * 8 chain, 1 plain in the next scallop; repeat from *": f"3 ss, 12 sc, 88 ch; 11 x 1 space; {SLIPS}",
    "1 slip stitch in each of the first 3 chain of the next scallop, 1 plain in the following stitch, * 8 chain, 1 plain in the next scallop; repeat from *": f"3 ss, 12 sc, 88 ch; 11 x 1 space; {SLIPS}",
    "1 slip stitch in each of the 4 first stitches of the next chain stitch scallop, 1 plain in the same scallop, * 8 chain, 1 plain in the next scallop; repeat from *": f"4 ss, 12 sc, 88 ch; 11 x 1 space; {SLIPS}; asked passes-more",
    "1 slip stitch in each of the first 4 stitches of the first scallop, 1 plain in the same scallop, * 8 chain, 1 plain in the next scallop; repeat from *": f"4 ss, 12 sc, 88 ch; 11 x 1 space; {SLIPS}; asked passes-more",
    "1 slip stitch in each of the first 4 stitches of the first 7 chain, 1 plain in the same, * 8 chain, 1 plain in the next 7 chain; repeat from *": f"4 ss, 12 sc, 88 ch; 11 x 1 ch-7 space; {SLIPS_ON}",
    "Slip on 3 of the first 7 chain, * 8 chain, 1 plain under the next loop; repeat from *": f"3 ss, 11 sc, 88 ch; 11 x 1 space; {SLIPS_ON}",
    "Slip stitch up 3 of the 7 chain, * 8 chain, 1 plain under the next loop; repeat from *": f"3 ss, 11 sc, 88 ch; 11 x 1 space; {SLIPS_ON}",
}

SHELLS = On(24, ("1 plain, miss 1, 7 treble in next loop, miss 1; repeat",))
"""Six shells of 7 dc, each behind 1 sc."""

ON_SHELLS = {
    "1 slip stitch in each of the first 3 stitches of the next scallop, * 8 chain, 1 plain in centre of next scallop; repeat from *": f"3 ss, 6 sc, 48 ch; 6 x 1 shell; {SLIPS}",
}

ON_STITCHES = {
    "* 1 treble, 2 chain, 1 treble in the same stitch as the preceding treble, miss 2; repeat": "8 dc, 8 ch; 4 x 3 st",
    "* 1 plain, 4 chain, 2 treble in the stitch on which the plain has been worked; miss 2; repeat": "4 sc, 8 dc, 16 ch; 4 x 3 st",
    "* 1 plain, 4 chain, 2 treble in the same stitch in which the last plain was worked; miss 2; repeat": "4 sc, 8 dc, 16 ch; 4 x 3 st",
    "1 plain, 3 chain, * miss 1, 1 plain, 3 chain, repeat from *; lastly, 1 single on the first plain": "6 sc, 18 ch; 5 x 2 st; asked meets-its-start",
}

PARTED = On(
    48,
    (
        "4 treble, 4 chain, miss 2; repeat",
        "1 treble on each of the four treble, with one chain between each, 3 chain, 1 plain in the 4 chain, 3 chain; repeat",
    ),
)
"""Eight times 4 dc with 1 chain between each, then two loops of 3 chains with 1 sc between."""

ON_PARTED = {
    "Work 1 plain in each 1 chain, with 3 chain between; 5 chain, and repeat": "24 sc, 88 ch; 8 x 3 ch-1 space; asked perhaps-as-they-come; asked place-assumed",
}

THREES = On(48, ("1 treble, (3 chain, miss 3, 1 treble, repeat)",))
"""Twelve dc, and as many spaces of 3 chains; the first one of the repeat is that of every one."""

FIRST_OF_EACH = "30 dc, 6 sc, 24 ch; asked meets-its-start"
FIRST_OF_ALL = "30 dc, 6 sc, 24 ch; 6 x 2 ch-3 space; asked meets-its-start"

ON_THREES = {
    "(5 treble in the first 3 chain, 2 chain, 1 plain in the next 3 chain, 2 chain, repeat.)": FIRST_OF_ALL,
    "* 5 treble in the first 3 chain, 2 chain, 1 plain in the next 3 chain, 2 chain, repeat from *": FIRST_OF_ALL,
    "+ 5 treble in the first 3 chain, 2 chain, 1 plain in the next 3 chain, 2 chain + repeat": FIRST_OF_ALL,
    "(5 treble in the first 3 chain, 2 chain, 1 plain in the next 3 chain, 2 chain) 6 times": FIRST_OF_EACH,
    "+ 5 treble in the first 3 chain, 2 chain, 1 plain in the next 3 chain, 2 chain, + 6 times": FIRST_OF_EACH,
}

NINES = On(48, ("9 treble, 3 chain, miss 3; repeat",))
"""Four times 9 dc, with 3 chains between."""

ON_NINES = {
    "+ miss the 1st treble, 7 treble, miss the last, 3 chain, 1 plain in the 3 chain, 3 chain, + 4 times": "28 dc, 4 sc, 24 ch",
    "(miss the 1st treble, 7 treble, miss the last, 3 chain, 1 plain in the 3 chain, 3 chain) 4 times": "28 dc, 4 sc, 24 ch",
    "(miss the 1st treble, 7 treble, miss the last, 3 chain, 1 plain in the 3 chain, 3 chain; repeat)": "28 dc, 4 sc, 24 ch; 4 x 9 dc",
    "* miss the 1st treble, 7 treble, miss the last, 3 chain, 1 plain in the 3 chain, 3 chain; repeat from *": "28 dc, 4 sc, 24 ch; 4 x 9 dc",
}

THREES_APART = On(48, ("+ 3 plain, 2 chain, miss 3, + 8 times",))
"""Eight times 3 sc, with 2 chains between."""

UNCLEAR = "asked place-assumed; asked place-unclear"

ON_THREES_APART = {
    "* 5 plain over the 3 plain, 3 chain; repeat": "120 sc, 24 ch; 8 x 3 sc; asked place-unclear",
    "+ 5 plain over 3, 2 chain, + 8 times": f"120 sc, 16 ch; does not close; {UNCLEAR}; asked row-does-not-close",
    "* 5 plain over the 3 and a chain at each side, 2 chain; repeat": "40 sc, 16 ch; 8 x 1 space; asked place-assumed",
    "* 5 plain over the 3 plain and a chain at each side, 2 chain; repeat": "40 sc, 16 ch; 8 x 1 space; asked place-assumed",
}

WIDER = {
    "plain all round, increasing 1 in every 8": "54 sc; 6 x 8 st; 0 x 0 st",
    "plain all round, increasing 1 in every 8 stitches": "54 sc; 6 x 8 st; 0 x 0 st",
    "* 5 chain, fasten in the first of the five to form a point; 4 plain; repeat": "48 sc, 12 picot; 12 x 4 st; asked taken-as-remark",
}

ON_SCALLOPS_MISSED = {
    "* miss 1 chain, 3 treble under the next; repeat": "18 dc; 6 x 2 space",
}

SETS = On(48, ("(3 plain in next loop, 5 chain, 3 plain in next loop, miss 2) repeat",))
"""Twelve spaces of 5 chains, with 3 sc in one place at either side of each."""

ON_SETS = {
    "(1 plain in the 5 chain, 3 chain, 1 treble between the two sets of plain, 3 chain, repeat.)": "12 sc, 12 dc, 72 ch; 12 x 1 ch-5 space",
}

APART = On(48, ("(3 treble, 9 chain, miss 9) repeat",))
"""Four times 3 dc, with 9 chains between."""

ON_APART = {
    "* 1 plain in centre of the 9 chain, 3 chain, miss 2, 7 treble (of which 3 come on the 3 treble), 3 chain; repeat": "4 sc, 28 dc, 24 ch; 4 x 1 ch-9 space; asked taken-as-remark",
    "* 1 plain in centre of the 9 chain, 3 chain, miss 2, 7 treble, of which 3 come on the 3 treble, 3 chain; repeat": "4 sc, 28 dc, 24 ch; 4 x 1 ch-9 space; asked taken-as-remark",
}

FIVES = On(48, ("*5 chain, miss 3, 1 plain; repeat",))
"""Twelve spaces of 5 chains, with 1 sc between."""

ON_FIVES = {
    "* 2 treble, the 1st on the next plain, the 2nd in the following 5 chain, 3 picots; repeat from *": "24 dc, 36 picot; 12 x 1 sc",
    "* 2 treble, the 1st on the next plain, and the 2nd in the next 5 chain, 3 picots; repeat from *": "24 dc, 36 picot; 12 x 1 sc",
}

ON_AN_EDGE = {
    "* 1 plain, 1 purl, 1 plain, 3 chain, miss 2; repeat from *. (1 purl = 4 chain, 1 plain in the 1st.)": "24 sc, 36 ch, 12 picot; 12 x 4 loop",
    "* 1 plain, 1 purl, 1 plain, 3 chain, miss 2; repeat from * (1 purl consists of 4 chain, 1 plain in the 1st of them)": "24 sc, 36 ch, 12 picot; 12 x 4 loop",
    "On the foundation chain, 1 treble in every stitch": "48 dc; 48 x 1 loop; asked taken-as-remark",
    "On the foundation chain work 1 treble in every stitch": "48 dc; 48 x 1 loop; asked taken-as-remark",
}

FIRST_THREE = "14 dc, 42 ch; 13 x 3 st; asked meets-its-start"

ON_TREBLES = {
    "6 chain (the first three form 1 treble), * miss 2, 1 treble, 3 chain; repeat": FIRST_THREE,
    "6 chain (the first three of which form 1 treble), * miss 2, 1 treble, 3 chain; repeat": FIRST_THREE,
    "6 chain, 3 of which form the first treble, * miss 2, 1 treble, 3 chain; repeat": FIRST_THREE,
    "1 plain, 5 chain, miss 2; repeat; at the end of the row turn": "14 sc, 70 ch; 14 x 3 st",
}

SQUARE = On(
    16,
    (
        "(1 treble, 3 chain, miss 3) 4 times, join",
        "(5 treble in the 3 chain, 3 chain, 5 treble in the same, 1 chain) repeat 3 times more",
    ),
)
"""A square: four corners of 3 chains, and 1 chain in the middle of each side."""

ON_A_SQUARE = {
    "(1 treble in the corner 3 chain, 5 chain, 1 treble in the same, 4 chain, 1 plain in the 1 chain, 4 chain) 4 times": "8 dc, 4 sc, 52 ch",
    "(1 treble in the 3 chain at the corner, 5 chain, 1 treble in the same, 4 chain, 1 plain in the 1 chain, 4 chain) 4 times": "8 dc, 4 sc, 52 ch",
}


@cases(
    (SEVENS, ON_SEVENS),
    (LOOP_IS_ST, ON_LOOPS_OF_CHAIN),
    (On(60, ("1 treble in each loop",)), LEAVES),
    (On(60), LEAVES_ON_AN_EDGE),
    (BANDS, ON_BANDS),
    (FIVES_APART, CENTRES_OF_FIVE),
    (FOURS_APART, CENTRES_OF_FOUR),
    (SCALLOPS, ON_SCALLOPS),
    (SHELLS, ON_SHELLS),
    (STITCHES, ON_STITCHES),
    (PARTED, ON_PARTED),
    (THREES, ON_THREES),
    (NINES, ON_NINES),
    (THREES_APART, ON_THREES_APART),
    (On(48, ("1 plain in each loop",)), WIDER),
    (SCALLOPS, ON_SCALLOPS_MISSED),
    (SETS, ON_SETS),
    (APART, ON_APART),
    (FIVES, ON_FIVES),
    (SQUARE, ON_A_SQUARE),
    (On(48), ON_AN_EDGE),
    (On(42, ("1 treble in each loop",)), ON_TREBLES),
)
def test_what_a_row_comes_to(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


HELPED = {
    ("1 plain on the centre plain, 4 chain; repeat", "5 plain, 5 chain, miss 3"): (
        "write 1 dc in centre of next run of 5 dc"
    ),
    ("2 treble on the two middle treble, 4 chain; repeat", "4 treble, 4 chain, miss 2"): (
        'or, of each 4, "2 tr on the centre 2 of the 4 tr"'
    ),
}


@pytest.mark.parametrize(("rows", "edit"), HELPED.items())
def test_the_centre_in_a_repeat_is_asked_with_the_run_below(
    rows: tuple[str, str], edit: str
) -> None:
    row, below = rows
    text = f"{HEADINGS}round 1: {below}; repeat.\nround 2: {row}.\n"
    _, told = read_border(Source("book.border", text))
    helped = [one.help for one in told if one.code == "perhaps-last-of-each"]
    assert len(helped) == 1
    assert str(helped[0]).endswith(edit)


def test_chains_of_a_leaf_by_their_name_are_asked() -> None:
    row = "* 9 chain, miss 1, 1 treble in each of the next 5 chain; repeat from *"
    assert said(row, On(60)) == "50 dc, 90 ch; 10 x 6 loop; asked perhaps-just-made"


def test_slips_that_lead_on_are_asked_with_the_chain_they_end_in() -> None:
    row = "1 slip stitch in each of the first 3 stitches of the next scallop, *8 chain, 1 plain in next"
    text = (
        f"{HEADINGS}round 1: 1 plain, 7 chain, miss 3; repeat.\nround 2: {row} scallop; repeat.\n"
    )
    _, told = read_border(Source("book.border", text))
    helped = [str(one.help) for one in told if one.code == "perhaps-leads-on"]
    assert len(helped) == 1
    assert "begin in 3rd ch of next space" in helped[0]
