"""Places, as the books name them: in stitches, in spaces, over groups, at picots."""

from __future__ import annotations

from phrases.said import ARCHES, BLOCKS, FIVES, LOOPS, PICOTS, SIXES, STITCHES, On, cases, said

ONE_OR_ALL = {
    "*1 plain in next chain, 2 chain; repeat": "36 sc, 72 ch; 36 x 1 ch; asked perhaps-one-place",
    "*3 treble into the following chain, 2 chain; repeat": (
        "108 dc, 72 ch; 36 x 1 ch; asked perhaps-one-place"
    ),
    "*1 plain in next ch, 2 ch; repeat": "36 sc, 72 ch; 36 x 1 ch",
}
"""A chain, or the loop of chains."""


@cases((ARCHES, ONE_OR_ALL))
def test_the_next_chain_is_one_and_asked(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


IN_STITCHES = {
    "1 treble in next; repeat": "12 dc; 12 x 1 st",
    "work 1 treble in every stitch": "12 dc; 12 x 1 st",
    "1 treble on each treble": "12 dc; 12 x 1 dc",
    "*1 plain over the treble, 2 chain, miss 1; repeat": "6 sc, 12 ch; 6 x 2 dc",
    "*1 plain above the treble, 2 chain, miss 1; repeat": "6 sc, 12 ch; 6 x 2 dc",
    "*1 plain at the top of the one treble, 1 chain; repeat": "12 sc, 12 ch; 12 x 1 dc",
    "*1 plain in the top of the treble, 1 chain; repeat": "12 sc, 12 ch; 12 x 1 dc",
    "*5 treble in one, miss 2; repeat": "20 dc; 4 x 3 st",
    "*5 treble in 1, miss 2; repeat": "20 dc; 4 x 3 st",
    "*1 plain in next stitch, 2 chain, 1 plain in the same stitch, miss 1; repeat": (
        "12 sc, 12 ch; 6 x 2 st"
    ),
    "*1 plain in next stitch, 2 chain, 1 plain into the same place, miss 1; repeat": (
        "12 sc, 12 ch; 6 x 2 st"
    ),
    "*1 plain in the next stitch but 3, 5 chain; repeat": "3 sc, 15 ch; 3 x 4 st",
    "*3 treble in the 3rd stitch, 1 chain; repeat": "12 dc, 4 ch; 4 x 3 st",
    "3 chain, 1 plain in the 3rd; repeat": "4 sc, 12 ch; 4 x 3 st",
    "1 treble into every 3rd stitch, with 5 chain between": "4 dc, 20 ch; 4 x 3 st",
    "2 treble in the first stitch, 1 treble in each to the end": "13 dc; 11 x 1 st",
    "1 treble in each of the next 11 stitches, 3 treble in the last stitch": "14 dc",
    "1 treble in each of the 12": "12 dc",
    "1 treble in each of the first 11, 2 treble in the last": "13 dc",
    "1 plain between each 2 trebles": "12 sc; 12 x 1 dc",
}
CLUSTERED = On(12, ("*2 treble together over the next 2 loops, 3 chain; repeat",))
"""Six dc, each of two worked off together, and 3 chains between."""
ON_CLUSTERS = {
    "*1 plain in top of cluster, 5 plain under the chain; repeat": "36 sc; 6 x 1 dc",
    "1 plain above each cluster, with 9 chain between": "6 sc, 54 ch; 6 x 1 dc",
    "*1 plain on the point of the leaf, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 dc",
}
TAKEN = "asked place-assumed"
ENDS_OF_ROWS = {
    "1 plain in end of first row, *5 chain, 1 plain in end of next row; repeat": (
        f"12 sc, 60 ch; 11 x 1 loop; {TAKEN}; asked meets-its-start"
    ),
    "*1 treble in the end of every row, 2 chain; repeat": f"12 dc, 24 ch; 12 x 1 loop; {TAKEN}",
    "3 plain in the end of each row": f"36 sc; 12 x 1 loop; {TAKEN}",
}
"""Along the side of lace: its rows are the places of the edge."""


BEFORE_THEIR_STEPS = {
    "*in one loop 7 treble, in the next 1 plain; repeat": "21 dc, 3 sc; 3 x 2 space",
    "*in one loop 7 treble, each divided by 1 chain, in the next 1 plain; repeat": (
        "21 dc, 3 sc, 18 ch; 3 x 2 space"
    ),
    "*in one loop 7 treble; in the next 1 plain, 3 chain; repeat": (
        "21 dc, 3 sc, 9 ch; 3 x 2 space"
    ),
    "*in the next 5 chain work (1 treble, 3 chain, 1 treble), 2 chain; repeat": (
        "12 dc, 30 ch; 6 x 1 ch-5 space"
    ),
    "*in the next 5 chain 1 treble (2 chain and 1 treble, 4 times); 3 chain; repeat": (
        "30 dc, 66 ch; 6 x 1 ch-5 space"
    ),
    "*in next 5 chain 7 treble, then 1 chain; repeat": "42 dc, 6 ch; 6 x 1 ch-5 space",
    "*1 plain in the 5 chain, 3 chain, 1 plain in the next 5 chain, 2 chain; repeat": (
        "6 sc, 15 ch; 3 x 2 ch-5 space"
    ),
}


@cases((CLUSTERED, ON_CLUSTERS), (FIVES, BEFORE_THEIR_STEPS), (LOOPS, ENDS_OF_ROWS))
def test_a_place_among_things_of_their_own(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


IN_ARCHES = {
    "1 treble in the next loop, repeat": "12 dc; 12 x 1 space",
    "*1 plain in next loop, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 space",
    "3 plain in every loop": "36 sc; 12 x 1 space",
    "4 plain round every loop": "48 sc; 12 x 1 space",
    "4 plain into every space": "48 sc; 12 x 1 space",
    "3 treble in each sp": "36 dc; 12 x 1 space",
    "2 treble in each hole": "24 dc; 12 x 1 space",
    "2 treble to each hole": "24 dc; 12 x 1 space",
    "3 treble into successive loops; repeat": "12 dc; 4 x 3 space; asked perhaps-one-place",
    "*2 plain in next loop, 1 chain, 2 plain in the same loop; repeat": (
        "48 sc, 12 ch; 12 x 1 space"
    ),
    "*2 plain in next loop, 1 chain, 2 plain into the same, 1 chain; repeat": (
        "48 sc, 24 ch; 12 x 1 space"
    ),
    "*2 plain round next loop, 3 chain, 2 plain round the same loop; repeat": (
        "48 sc, 36 ch; 12 x 1 space"
    ),
    "2 plain, 1 chain, 2 plain, all in next loop; repeat": "48 sc, 12 ch; 12 x 1 space",
    "1 plain in the 3 chain, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 ch-3 space",
    "*1 plain in the 3 chain of the last row, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "*3 plain under the 3 chain; repeat": "36 sc; 12 x 1 ch-3 space",
    "*3 plain on the 3 chain; repeat": "36 sc; 12 x 3 ch",
    "*3 plain under a loop; repeat": "36 sc; 12 x 1 space",
    "*3 plain under next loop; repeat": "36 sc; 12 x 1 space",
    "*3 plain under the chain; repeat": "36 sc; 12 x 1 space",
    "1 treble in every third space, with 7 chain between": "4 dc, 28 ch; 4 x 3 space",
    "1 treble in every alternate space, with 4 chain between": "6 dc, 24 ch; 6 x 2 space",
    "*1 treble in the 2nd loop, 5 chain; repeat": "6 dc, 30 ch; 6 x 2 space",
    "*1 plain in the next chain but 1, 2 chain; repeat": "18 sc, 36 ch; 18 x 2 ch",
    "*1 plain between the two loops, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 space",
    "*1 treble between the 1st and 2nd plain, 2 chain; repeat": "12 dc, 24 ch; 12 x 1 sc",
    "*1 treble on plain, 2 chain; repeat": "12 dc, 24 ch; 12 x 1 sc",
    "In every loop work 1 plain, 3 treble, 1 plain": "24 sc, 36 dc; 12 x 1 space",
}
IN_FIVES = {
    "*7 plain under the 5 ch; repeat": "42 sc; 6 x 1 ch-5 space",
    "*1 plain in centre of 5 ch, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 ch-5 space",
    "*1 plain on centre of next loop, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 space",
    "*1 plain in the middle stitch of the loop, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 space",
    "*1 plain in the centre stitch of chain, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 space",
    "*1 plain in the middle of the chain, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 space",
    "*1 plain on the 5th of 5 ch, 4 chain; repeat": "6 sc, 24 ch; 6 x 1 ch-5 space",
    "*1 plain on the 3rd of the 5 chain, 4 chain; repeat": "6 sc, 24 ch; 6 x 1 ch-5 space",
    "*1 plain into the 3rd of the 5 ch, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 ch-5 space",
    "*1 plain in the last of the 5 chain, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 ch-5 space",
    "*2 plain in the 3rd chain of the loop, 3 chain; repeat": "12 sc, 18 ch; 6 x 1 space",
}
ON_BLOCKS = {
    "3 chain over the 3 treble, 3 treble on the 3 chain; repeat": "18 dc, 18 ch; 6 x 3 dc",
    "3 chain on the 3 treble, 3 treble on the 3 chain; repeat": "18 dc, 18 ch; 6 x 3 dc",
    "2 chain above 3 treble, 1 plain under the 3 chain; repeat": "6 sc, 12 ch; 6 x 3 dc",
    "*3 plain over the 3 treble, 3 chain; repeat": "18 sc, 18 ch; 6 x 3 dc",
    "*3 plain on the 3 treble, 3 chain; repeat": "18 sc, 18 ch; 6 x 3 dc",
    "*3 plain on 3 treble, 3 chain; repeat": "18 sc, 18 ch; 6 x 3 dc",
    "*2 treble over the 2 treble, 3 chain; repeat": "18 dc, 27 ch; 9 x 2 dc; asked perhaps-last-of-each",
    "*1 plain on treble, 2 chain; repeat": "18 sc, 36 ch; 18 x 1 dc; asked perhaps-one-place",
    "*1 plain on the second of the 3 treble, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 3-dc run",
    "*1 plain on the centre one of the 3 treble, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 3-dc run",
    "*1 plain on the 2nd one of the 3 treble, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 3-dc run",
    "*1 plain on the centre of the 3 treble, 2 chain, 1 plain under the 3 chain, 2 chain; repeat": (
        "12 sc, 24 ch; 6 x 1 3-dc run"
    ),
    "*3 treble over the 3 treble, 3 treble under the 3 chain; repeat": "36 dc; 6 x 3 dc",
    "*3 treble on the 3 treble, with 1 chain between each, 3 chain; repeat": (
        "18 dc, 30 ch; 6 x 3 dc"
    ),
    "*1 plain in the space between the treble; repeat": "18 sc; 18 x 1 dc; asked place-assumed",
}
AT_PICOTS = {
    "*1 plain in the next picot, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 picot",
    "*1 plain in the next pearl, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 picot",
    "*1 plain in the middle of the next 3 picot, 5 chain; repeat": (
        "6 sc, 10 ch; 2 x 3 picot; asked perhaps-one-place"
    ),
}
OVER_ITS_OWN_NUMBER = {
    "7 treble over the 7, 1 chain, 5 treble over the 5": "12 dc, 1 ch",
    "*3 treble on the 3, 3 chain; repeat": "12 dc, 12 ch; 4 x 3 st",
    "*1 treble on each of the 3, 3 chain; repeat": "12 dc, 12 ch; 4 x 3 st",
    "*1 treble on each of the next 3, 3 chain; repeat": "12 dc, 12 ch; 4 x 3 st",
    "*1 plain over the 1st of the 12 treble, 5 chain; repeat": "1 sc, 5 ch; 1 x 1 12-dc run",
}
IN_A_RING = {
    "24 treble in the ring; join": "24 dc",
    "12 plain into the circle; unite": "12 sc",
    "12 plain in the loop": "12 sc",
}
ON_SIXES = {
    "*4 plain beginning on the 2nd of the 6, 3 chain; repeat": "24 sc, 18 ch; 6 x 1 block of 6",
    "*4 plain, beginning on the 2nd of the 6 treble, 3 chain; repeat": (
        "24 sc, 18 ch; 6 x 1 6-dc run"
    ),
    "begin on the 2nd; *4 plain, 3 chain, miss 4; repeat": "24 sc, 18 ch; 6 x 8 st",
}
NOT_READ = {
    "1 treble on the other side of the chain; repeat": "unknown-word",
    "1 treble in the point of the bud; repeat": "unknown-word",
    "1 plain on either side of the picot; repeat": "not-understood",
    "4 plain on the last 4 of the chain; repeat": "not-understood",
    "5 treble over the 3 treble; repeat": "place-unclear",
    "6 treble over 7": "place-unclear",
}


@cases(
    (STITCHES, IN_STITCHES),
    (ARCHES, IN_ARCHES),
    (FIVES, IN_FIVES),
    (BLOCKS, ON_BLOCKS),
    (PICOTS, AT_PICOTS),
    (STITCHES, OVER_ITS_OWN_NUMBER),
    (SIXES, ON_SIXES),
    (On(1), IN_A_RING),
)
def test_a_place_in_the_words_of_the_books(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((STITCHES, NOT_READ))
def test_what_names_no_place_known_here_is_told(on: On, row: str, comes_to: str) -> None:
    assert f"asked {comes_to}" in said(row, on).split("; ")


def test_a_heading_says_what_a_loop_or_a_scallop_is() -> None:
    """One book calls a stitch loop, the next an arch of chains: neither is guessed."""
    stitch = STITCHES._replace(headings=f"{STITCHES.headings}loop means st\n")
    assert said("*1 treble in next loop, 1 chain, miss 1 loop; repeat", stitch) == (
        "6 dc, 6 ch; 6 x 2 st"
    )
    scallop = ARCHES._replace(headings=f"{ARCHES.headings}scallop means space\n")
    assert said("3 treble in each scallop", scallop) == "36 dc; 12 x 1 space"


# --- a place with a colon --------------------------------------------------------------------

BEFORE_COLONS = {
    "* over the 3 chain: 1 plain, 3 treble, 1 plain; 1 single on the plain *": (
        "24 sc, 36 dc, 12 ss; 12 x 1 ch-3 space"
    ),
    "over the plain: 1 plain; * over the 3 chain: 3 treble; over the next plain: 1 plain *": (
        "12 sc, 36 dc; 11 x 1 ch-3 space; asked meets-its-start"
    ),
    "over every 3 chain: 1 plain, 3 treble, 1 plain": "24 sc, 36 dc; 12 x 1 ch-3 space",
    "over each plain: 3 treble": "36 dc; 12 x 1 sc",
    "over the 3 chain loop: 3 treble, 1 chain; repeat": "36 dc, 12 ch; 12 x 1 ch-3 space",
    "over the next loop: 3 treble, 1 chain; repeat": "36 dc, 12 ch; 12 x 1 space",
}


@cases((ARCHES, BEFORE_COLONS))
def test_a_place_before_a_colon_is_that_of_the_list_behind_it(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


WHITE_AND_BLUE = {
    "With white, 5 plain under the blue chain, 1 treble on the blue plain; repeat": (
        "30 sc, 6 dc; 6 x 1 space; asked place-assumed"
    ),
    "1 plain on each white plain": ("6 sc; 6 x 1 sc; asked place-assumed"),
    "*5 treble under next scarlet chain, 1 chain; repeat from *": (
        "30 dc, 6 ch; 6 x 1 space; asked place-assumed"
    ),
    "5 plain in the white loop; repeat": ("30 sc; 6 x 1 space; asked place-assumed"),
    "3 blue treble in next loop, 2 chain in white; repeat": ("18 dc, 12 ch; 6 x 1 space"),
    "1 treble in white in each blue plain": ("6 dc; 6 x 1 sc; asked place-assumed"),
}


@cases((FIVES, WHITE_AND_BLUE))
def test_a_place_of_one_colour_is_any_such_place(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
