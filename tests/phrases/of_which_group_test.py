"""Which of a group is meant: of the 3, of the next scallop, between every two of a pair; counted on
from a bracket; stitches named over chains; one on each of the 3.
"""

from __future__ import annotations

from phrases.said import ARCHES, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border

UNSAID = "terms: uk\nplain means us sc\n"
"""Headings that do not say whether chains count."""

TREBLE_CHAIN = ("1 treble, 1 chain, miss 1; repeat",)
OVER_CHAINS = On(48, TREBLE_CHAIN, headings=UNSAID)
"""24 dc with a chain behind each, where it is not said whether chains count."""
COUNTED = On(48, TREBLE_CHAIN)
THREES = On(48, ("* 1 plain in each of 3 stitches, 3 chain, miss 3; repeat from *",))
"""Eight times three sc, one in each of three stitches, with 3 chains between."""
FIVES_ON_SEVENS = On(
    48,
    (
        "* 7 plain, 5 chain, miss 5; repeat from *",
        "* 5 plain over the centre 5 of the 7 plain, 5 chain, plain under loop, 5 chain; repeat from *",
    ),
)
"""Four times five sc, 5 chains, one sc, 5 chains."""
SEVENS = On(12, ("7 treble in next loop, 1 plain in next loop; repeat",))
"""Six times seven dc in one loop, with one sc between."""
PAIRS = On(12, ("2 long in next loop, 3 chain; repeat",))
"""Twelve times two dc in one loop, with 3 chains between."""
SINGLES = On(12, ("1 long in next loop, 3 chain; repeat",))
SHELLS = On(60, ("* 6 plain in next stitch, miss 2, 1 plain in next, miss 2; repeat from *",))
"""Ten times six sc in one loop, and one sc between."""
PICOTED = On(
    12, ("* (1 plain, picot, 1 plain, picot, 1 plain, picot, 1 plain) in next loop; repeat from *",)
)
"""Twelve times four sc with three picots."""
FOURS_OF_PICOTS = On(12, ("* (1 plain, picot) 4 times in next loop; repeat from *",))
NINES = On(12, ("9 treble in next loop; repeat",))
"""Twelve times nine dc in one loop, side by side."""
FIVES_INSIDE = On(
    12, ("1 plain, 5 chain; repeat", "(1 plain, 5 long, 1 plain) under every 5 chain")
)
"""Twelve shells of one sc, five dc, one sc, side by side."""
INSIDE_AND_HALVES = On(
    12,
    (
        "1 plain, 5 chain; repeat",
        "(1 plain, 1 half treble, 5 long, 1 half treble, 1 plain) under every 5 chain",
    ),
)
TRIPLES = On(12, ("3 plain in next loop, 3 chain; repeat",))
"""Twelve times three sc in one loop, with 3 chains between."""
QUADS = On(12, ("4 plain in next loop, 3 chain; repeat",))
FIVES_AND_ONE = On(12, ("5 treble in next loop, 1 plain in next loop; repeat",))
NINES_AND_ONE = On(12, ("9 treble in next loop, 1 plain in next loop; repeat",))
SEVENS_BEHIND_ONE = On(12, ("1 plain in next loop, 7 treble in next loop; repeat",))

ON_CHAINS_UNSAID = {
    # a chain, then three dc: the next chain is the third behind it; with chains counted the second
    "* 1 plain on the next chain stitch, 5 chain, miss 3 stitches; repeat from *": "8 sc, 40 ch; 8 x 3 ch; asked chains-left-out",
    "* 1 plain on next treble, 5 chain, miss 3 stitches; repeat from *": "6 sc, 30 ch; 6 x 4 dc; asked chains-left-out",
    "* 1 plain on next treble, miss 3 stitches, 5 treble in the following, miss 3 stitches; repeat from *": "3 sc, 15 dc; 3 x 8 dc; asked chains-left-out",
    "5 chain, 1 plain in the 4th stitch; repeat": "6 sc, 30 ch; 6 x 4 st; asked chains-left-out",
    "* 1 plain on next treble, 5 chain, miss 1 treble; repeat from *": "12 sc, 60 ch; 12 x 2 dc",
    "* 5 chain, 1 plain on the 4th treble; repeat from *": "6 sc, 30 ch; 6 x 4 dc",
}

ON_CHAINS_COUNTED = {
    "* 1 plain on the next chain stitch, 5 chain, miss 3 stitches; repeat from *": "12 sc, 60 ch; 12 x 2 ch",
    "5 chain, 1 plain in the 4th stitch; repeat": "12 sc, 60 ch; 12 x 4 st",
}

ON_THREES = {
    "1 plain on the middle of the 3, 4 chain, 1 plain in next loop, 4 chain; repeat": "16 sc, 64 ch; 8 x 1 block of 3",
    "1 plain on the 2nd of the 3, 5 chain; repeat": "8 sc, 40 ch; 8 x 1 block of 3",
}

ON_FIVES_ON_SEVENS = {
    "3 plain on the centre 3 of 5, 5 chain, 1 plain in next loop, 5 chain, 1 plain in next loop, 5 chain; repeat": "20 sc, 60 ch; 4 x 1 block of 5",
}

ON_ARCHES = {
    # here no three stitches stand together: three are the chains
    "1 plain on the middle of the 3, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 ch-3 space",
}

ON_SEVENS = {
    # five, then the 7th from there, and the next bracket goes on inside the third group
    "(1 chain, 1 treble on the next treble) 5 times; 1 chain, 1 plain on the 7th treble, 3 chain; repeat": "15 dc, 3 sc, 27 ch; 3 x 12 dc; 6 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "1 treble in each of the next 5 treble, 1 chain, 1 plain on the 7th treble, 3 chain; repeat": "15 dc, 3 sc, 12 ch; 3 x 12 dc; 6 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "* 1 chain, 1 treble on the next treble; repeat from * 5 times; 1 chain, 1 plain on the 7th treble, 3 chain; repeat": "18 dc, 3 sc, 30 ch; 3 x 13 dc; 3 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "(1 chain, 1 treble on the next treble) 5 times; 1 chain, 1 plain on the 2nd treble, 3 chain; repeat": "30 dc, 6 sc, 54 ch; 6 x 7 dc",
}

ON_PAIRS = {
    "3 long between every 2 long": "72 dc; 24 x 1 dc; asked place-assumed",
    "3 long between each two long": "72 dc; 24 x 1 dc; asked place-assumed",
    "* 3 long between the next 2 long, 3 chain; repeat from *": "72 dc, 72 ch; 24 x 1 dc; asked place-assumed",
    "3 long in centre of each run of 2 long": "36 dc; 12 x 1 2-dc run",
}

ON_SINGLES = {
    "3 long between every 2 long": "36 dc; 12 x 1 dc",
}

ON_SHELLS = {
    "1 plain into the stitch between the groups, 8 ch; repeat": "70 sc, 560 ch; 70 x 1 st; asked place-assumed",
}

ON_PICOTED = {
    "* 1 plain in first picot of next scallop, ch 8; repeat from *": "12 sc, 96 ch; 12 x 3 picot",
    "* 1 plain in first picot of next group, ch 8; repeat from *": "12 sc, 96 ch; 12 x 3 picot",
    "* 1 plain in 2d picot of next scallop, ch 8; repeat from *": "12 sc, 96 ch; 12 x 3 picot",
    "* 1 plain in first p of next scallop, ch 5, 1 plain in third p, ch 5; repeat from *": "24 sc, 120 ch; 12 x 3 picot; asked place-assumed",
    "* 1 plain in first p of next scallop, ch 5, 1 plain in 3d p of same scallop, ch 5; repeat from *": "24 sc, 120 ch; 12 x 3 picot",
    "* 1 plain in center picot of next scallop, ch 8; repeat from *": "12 sc, 96 ch; 12 x 3 picot",
    "1 plain in center picot of each scallop": "12 sc; 12 x 3 picot",
    "1 plain in 2d p of each scallop, 5 ch; repeat": "12 sc, 60 ch; 12 x 3 picot",
    "1 plain in 2d picot of next scallop, ch 5; repeat, join to first plain": "12 sc, 60 ch; 12 x 3 picot",
    "* (1 treble, 2 ch, 1 treble) in 2d picot of next scallop, ch 5; repeat from *": "24 dc, 84 ch; 12 x 3 picot",
    # what lies between the picots of one may be worked as well: no picots are passed over
    "* 1 plain in 2d picot of next scallop, ch 5, 1 plain in next plain, ch 5; repeat from *": "24 sc, 120 ch; 12 x 3 picot; asked place-assumed",
    # how many of a scallop are worked is not clear
    "* 1 plain in first picot of next scallop, ch 5, 1 plain in next picot, ch 5; repeat from *": "36 sc, 180 ch; 36 x 1 picot; asked place-assumed",
}

ON_FOURS_OF_PICOTS = {
    "* 1 plain in first p of next scallop, ch 5, 1 plain in last p of same scallop, ch 5; repeat from *": "24 sc, 120 ch; 12 x 4 picot",
    "* 1 plain in 2d p of next scallop, ch 5; repeat from *": "12 sc, 60 ch; 12 x 4 picot",
}

ON_NINES = {
    # the 1st of a shell, the 5th from there is the 6th, the 9th from there the 6th of the next
    "* 1 plain on first treble of next shell, 4 ch, 1 plain on 5th treble, 4 ch, 1 plain on 9th treble, 2 ch; repeat from *": "18 sc, 60 ch; 6 x 2 shell; asked perhaps-counted-on; asked perhaps-counted-on",
    "* 1 plain on first treble of next shell, 4 ch, 1 plain in 5th treble of same shell, 4 ch, 1 plain in 9th treble of same shell, 2 ch; repeat from *": "36 sc, 120 ch; 12 x 1 shell",
    "* 1 plain on first treble of next shell, 4 ch, 1 plain between 3rd and 4th treble, 4 ch; repeat from *": "24 sc, 96 ch; 12 x 1 shell; asked perhaps-counted-on",
}

ON_FIVES_INSIDE = {
    "1 plain on the centre long of the 5, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 5-dc run",
    "1 plain on the 3rd long of the 5, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 5-dc run",
    "1 plain on the centre of 5, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 5-dc run",
    "1 plain on the 4th of 5, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 5-dc run",
}

ON_INSIDE_AND_HALVES = {
    "1 plain on the centre long of the 5, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 5-dc run",
    # nine of each shell, 108 in all: by fives from the first on
    "5 long on the 5, 5 chain; repeat": "105 dc, 105 ch; 21 x 5 st; 3 left over; does not close; asked place-assumed; asked row-does-not-close",
}

ON_TRIPLES = {
    "plain over the 3 plain, 3 chain; repeat": "36 sc, 36 ch; 12 x 3 sc",
    "plain on the 3 plain, 3 chain; repeat": "36 sc, 36 ch; 12 x 3 sc",
    # of what is not said: six to a group with its chains, 24 threes
    "plain on the 3, 3 chain; repeat": "72 sc, 72 ch; 24 x 3 st; asked place-assumed; asked perhaps-nothing-missed",
}

ON_FIVES_AND_ONE = {
    "5 treble, divided by 2 chain, on the 5 treble, 1 plain on plain; repeat": "30 dc, 6 sc, 48 ch; 6 x 5 dc",
    "5 treble on 5 treble with 1 chain after each, 1 plain on plain; repeat": "30 dc, 6 sc, 30 ch; 6 x 5 dc",
    "5 treble on the 5 treble, with 1 chain after each, 1 plain on plain; repeat": "30 dc, 6 sc, 30 ch; 6 x 5 dc",
}

ON_NINES_AND_ONE = {
    "7 treble, the 1st on the 2nd of the 9 treble, 1 plain on plain; repeat": "42 dc, 6 sc; 6 x 1 9-dc run",
    "5 treble, the 1st one on the 2nd of the 9, 1 plain on plain; repeat": "30 dc, 6 sc; 6 x 1 group of 9",
    "5 treble, the centre one on the centre of the 9, 1 plain on plain; repeat": "30 dc, 6 sc; 6 x 1 group of 9",
    "5 treble, the middle one on the middle treble of the 9, 1 plain on plain; repeat": "30 dc, 6 sc; 6 x 1 group of 9",
}

ON_SEVENS_BEHIND_ONE = {
    "1 treble on plain, 1 ch, 1 treble on the first of the seven treble, 1 ch, 1 treble on the next, 5 ch; repeat": "18 dc, 42 ch; 6 x 1 sc; asked place-assumed",
    "1 treble on plain, 1 ch, 1 treble on the second of the 7 treble, 1 ch, 1 treble on the next, 5 ch; repeat": "18 dc, 42 ch; 6 x 1 sc; asked place-assumed",
}


@cases(
    (OVER_CHAINS, ON_CHAINS_UNSAID),
    (COUNTED, ON_CHAINS_COUNTED),
    (THREES, ON_THREES),
    (FIVES_ON_SEVENS, ON_FIVES_ON_SEVENS),
    (ARCHES, ON_ARCHES),
    (SEVENS, ON_SEVENS),
    (PAIRS, ON_PAIRS),
    (SINGLES, ON_SINGLES),
    (SHELLS, ON_SHELLS),
    (PICOTED, ON_PICOTED),
    (FOURS_OF_PICOTS, ON_FOURS_OF_PICOTS),
    (NINES, ON_NINES),
    (FIVES_INSIDE, ON_FIVES_INSIDE),
    (INSIDE_AND_HALVES, ON_INSIDE_AND_HALVES),
    (TRIPLES, ON_TRIPLES),
    (FIVES_AND_ONE, ON_FIVES_AND_ONE),
    (NINES_AND_ONE, ON_NINES_AND_ONE),
    (SEVENS_BEHIND_ONE, ON_SEVENS_BEHIND_ONE),
)
def test_a_row_comes_to_this(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_round_three_stitches_may_be_round_all_of_them() -> None:
    assert "asked not-understood" in said("plain round the 3 plain, 3 chain; repeat", TRIPLES)


def _helps(on: On, row: str, code: str) -> str:
    """How all that a code tells of a row says that it may be written."""
    rows = "\n".join(f"round {n}: {one}." for n, one in enumerate((*on.below, row), 1))
    _, told = read_border(Source("book", f"{on.headings}{rows}\n"))
    return " ".join(f.help or "" for f in told if f.code == code)


def test_what_is_counted_in_a_shell_may_be_of_the_same() -> None:
    row = (
        "* 1 plain on first treble of next shell, 4 ch, 1 plain on 5th treble, 4 ch; repeat from *"
    )
    assert "1 dc in 5th tr of same shell" in _helps(NINES, row, "perhaps-counted-on")


def test_the_gap_inside_each_pair_is_shown() -> None:
    row = "3 long between every 2 long"
    assert "in centre of each run of 2" in _helps(PAIRS, row, "place-assumed")


def test_fewer_stitches_than_below_show_what_may_be_done_with_the_rest() -> None:
    for row in ("3 plain over 4 plain, 3 chain; repeat", "3 plain over the next 4 plain; repeat"):
        shown = _helps(QUADS, row, "place-unclear")
        assert "skip 1" in shown
        assert "2 dc together over the next 2 dc" in shown
