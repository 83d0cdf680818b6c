"""Rows told by their squares: spaces and blocks, on an edge that is worked to and fro.

A row of n squares of three places each stands on 3n + 1 stitches. Its tr are the one that it
begins with, one for each space and three for each block; its chains two for each space.
"""

from __future__ import annotations

import pytest
from phrases.said import On, cases, said
from reading import read

SPACE = "space = 2 chain, miss 2, 1 treble in next st\n"
UK = f"terms: uk\nchains count as stitches: yes\n{SPACE}"
FOUR = On(13, ("1 treble in each loop",), closed=False, headings=UK)
"""Thirteen dc: four squares wide."""
SIX = On(19, ("1 treble in each loop",), closed=False, headings=UK)
"""Nineteen dc: six squares wide."""
SPACES = On(19, ("6 sps",), closed=False, headings=UK)
BLOCKS = On(19, ("6 blks",), closed=False, headings=UK)

ASSUMED = "asked squares-assumed"
CHAIN = "asked start-chain-assumed"

TWO_OF_FOUR = "9 dc, 4 ch"
"""1 + 1 + 6 + 1, and two spaces."""

NAMES = dict.fromkeys(
    (
        "1 space, 2 blocks, 1 space",
        "1 sp., 2 blk., 1 sp.",
        "1 sp. 2 blks. 1 sp",
        "1 open, 2 close, 1 open",
        "1 open square, 2 close squares, 1 open square",
        "1 o.s., 2 solid, 1 o. s.",
        "one open mesh, two closed meshes, one open mesh",
        "turn, a space and 2 blocks, then 1 space",
        "1 sp, 1 blk, 1 blk more, 1 sp; turn",
        "5 ch, 1 sp, 6 tr, 1 sp",
        "3 ch, 1 sp, 2 blk, 1 sp",
        "5 ch for 1 tr and 2 ch, 1 sp, 2 blk, 1 sp",
    ),
    TWO_OF_FOUR,
)

COUNTED_IN = {
    "1 sp, 7 tr, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}",
    "7 tr, 2 sps": f"{TWO_OF_FOUR}; {ASSUMED}",
    "1 sp, 10 treble": f"11 dc, 2 ch; {ASSUMED}",
    "(1 sp, 4 tr) twice": f"{TWO_OF_FOUR}; {ASSUMED}",
    "5 ch, miss 2, 1 tr in next, 7 tr, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}; {CHAIN}",
    "1 sp, 2 ch, miss 2, tr in next, 7 tr": f"{TWO_OF_FOUR}; {ASSUMED}",
    "1 sp, 2 ch, miss 2, tr in next, 6 tr": TWO_OF_FOUR,
    "1 sp, 6 tr, 1 sp": TWO_OF_FOUR,
    "1 sp, 3 tr, 3 more tr, 1 sp": TWO_OF_FOUR,
}

SAID_OVER = {
    # the stitch before them is the first of 4, as in `1 sp, 4 tr`
    "1 sp, 4 tr over 4 tr, 1 blk, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}",
    "1 sp over blk, 1 blk over the sp, 1 blk, 1 sp over 1 blk": TWO_OF_FOUR,
    "1 sp, 7 tr on 7 tr, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}",
    "1 sp, tr on each of 7 tr, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}",
    "1 sp, 1 tr in each of the next 7 tr, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}",
    "1 sp, 6 tr on 6 tr, 1 sp": TWO_OF_FOUR,
    "(1 sp, 4 tr on 4 tr) twice": f"{TWO_OF_FOUR}; {ASSUMED}",
    # written out in stitches all 4 are made
    "1 blk, 2 ch, tr in 3rd st, 4 tr on 4 tr, 2 tr on 2 tr": "11 dc, 2 ch",
    # what a square is made of
    "1 sp (2 ch, miss 2, 1 tr), 2 blks, 1 sp": TWO_OF_FOUR,
    "1 sp (2 ch, 1 tr), 7 tr, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}",
    "1 sp, 2 blks (6 tr), 1 sp": TWO_OF_FOUR,
    "1 sp, 1 blk (3 tr), 1 blk, 1 sp (made of 2 ch, miss 2, 1 tr in next tr)": TWO_OF_FOUR,
    "1 sp, (1 blk, 1 sp) once, 1 blk": TWO_OF_FOUR,
}
ON_SPACES = {
    "5 ch, tr in tr, 4 tr, 3 sps, 1 blk": f"11 dc, 8 ch; {ASSUMED}; {CHAIN}",
    "5 ch, tr in tr, 3 tr, 3 sps, 1 blk": f"11 dc, 8 ch; {CHAIN}",
    "5 sps, 2 ch, tr in 3rd of 5 ch": f"7 dc, 12 ch; {ASSUMED}",
    "5 sps, 2 tr in last sp, tr in 3rd st of 5 ch": f"9 dc, 10 ch; {ASSUMED}",
    "5 sps, 2 ch, tr in 3rd of 5 ch, 3 ch, turn": f"7 dc, 12 ch; {ASSUMED}",
}

TO_THE_END = {
    "All spaces": "5 dc, 8 ch; 4 x 3 st",
    "All spaces, as 1st row": "5 dc, 8 ch; 4 x 3 st; asked taken-as-remark",
    "All spaces as the row below, then": "5 dc, 8 ch; 4 x 3 st; asked taken-as-remark",
    # no comma parts the squares from what is said of the chains
    "3 ch for 1st tr 2 sps, 2 blks": "13 dc; 13 x 1 loop; asked not-understood",
    "All close": "13 dc; 4 x 3 st",
    "spaces to the end": "5 dc, 8 ch; 4 x 3 st",
    "*1 open, 1 close; repeat from *": f"{TWO_OF_FOUR}; 2 x 6 st",
    "5 ch, *1 sp, 1 blk; repeat from *, turn": f"{TWO_OF_FOUR}; 2 x 6 st",
    "1 sp; *1 blk; repeat from * to last 3 st; 1 sp": f"{TWO_OF_FOUR}; 2 x 3 st",
}

THREE_OF_SIX = "13 dc, 6 ch"
"""1 + 3 · 3 + 3 · 1, and three spaces, over whatever squares."""

OVER = {
    "(1 blk, 1 sp) three times": THREE_OF_SIX,
    "3 sps, 3 blks": THREE_OF_SIX,
    "1 blk, 1 sp, 1 blk, 1 sp, 1 blk, 1 sp": THREE_OF_SIX,
    "2 sps, 10 tr, 1 sp": f"{THREE_OF_SIX}; {ASSUMED}",
    "1 blk., 1 sp., three times": f"{THREE_OF_SIX}; asked times-of-the-row",
    "5 ch, miss 2, 1 tr in next st (1 sp), 3 blks, 2 sps": f"{THREE_OF_SIX}; {CHAIN}",
}

WIDER = "5 ch, miss 3, 1 tr into each of next 2 ch, 1 tr on tr"
EDGES = {
    f"{WIDER}, 6 sps": f"10 dc, 12 ch; {ASSUMED}",
    "8 ch, 1 tr in last tr of last row (1 sp added), 6 sps": f"8 dc, 14 ch; {ASSUMED}",
    "7 ch, tr in last tr made (1 sp increased), 5 sps, 1 blk": f"10 dc, 12 ch; {ASSUMED}",
    "8 ch, turn, 1 tr in first tr, 4 tr, 5 sps": f"10 dc, 12 ch; {ASSUMED}; {ASSUMED}",
    f"turn, {WIDER}, 5 sps, 1 blk": f"12 dc, 10 ch; {ASSUMED}",
    "8 ch, miss 3, 1 tr in each of next 5 ch, 1 tr on next tr, 6 sps": f"13 dc, 12 ch; {ASSUMED}",
    "S.s. along 4 tr, 3 ch, 3 more tr for blk, 4 sp": f"8 dc, 8 ch; {ASSUMED}",
    "sl st over the first blk, 5 sps": f"6 dc, 10 ch; {ASSUMED}",
    "slip back over 3 tr to the 4th, 3 ch, 5 sps": f"6 dc, 10 ch; {ASSUMED}",
    "sl st over 1 blk to next tr, 5 ch, 5 sps": f"6 dc, 10 ch; {ASSUMED}",
    "sl st over 2 blks; 5 ch, 4 sps": f"5 dc, 8 ch; {ASSUMED}",
}
"""Of six blocks: seven squares, seven, eight; five, five, four."""

PLACES = {
    "1 plain in each space": "6 sc; 6 x 1 space",
    "*2 plain in next space, miss 1 space; repeat": "6 sc; 3 x 2 space",
    "1 plain in the next 6 spaces (6 plain)": "6 sc",
    "*3 chain, miss 1 square, 1 plain in next tr; repeat": (
        "6 sc, 18 ch; 6 x 1 space; asked place-assumed"
    ),
    "4 treble over the first square and the treble that follows; 5 sps": "9 dc, 10 ch",
    "3 ch, 3 treble over the next square and the treble following; 5 sps": f"9 dc, 10 ch; {CHAIN}",
    "6 spaces (6 spaces)": "7 dc, 12 ch",
    "1 treble in each st (19 tr)": "19 dc; 19 x 1 st",
}


@cases((FOUR, NAMES), (FOUR, COUNTED_IN), (FOUR, SAID_OVER), (FOUR, TO_THE_END))
def test_squares_over_plain_treble(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((SPACES, ON_SPACES))
def test_squares_over_spaces(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((SPACES, OVER), (BLOCKS, OVER), (SIX, OVER))
def test_whatever_squares_are_below(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((BLOCKS, EDGES))
def test_squares_more_and_fewer_at_the_edge(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((SPACES._replace(headings=f"{UK}plain means us sc\n"), PLACES))
def test_where_no_squares_are_made(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


FOUNDATION = {
    "1 tr in 4th ch from hook, 1 tr in each of next 2 ch, 4 sps, 1 blk": (21, "11 dc, 8 ch"),
    "1 tr into the 8th ch from hook, 4 sps, 1 blk": (23, "9 dc, 10 ch"),
    "1 tr in 9th st of chain, 2 ch, miss 2, 1 tr in next st, 4 blks": (24, "15 dc, 4 ch"),
}
"""Six squares each: on as many chains as the book has, those that stand up among them."""


@pytest.mark.parametrize("row", FOUNDATION)
def test_a_first_row_counted_from_the_hook(row: str) -> None:
    chains, comes_to = FOUNDATION[row]
    on = On(chains, (), closed=False, headings=UK)
    assert said(row, on) == f"{comes_to}; asked foundation-passed"


CHAINS_FIRST = {
    "21 ch, 1 tr in 4th ch from hook, 1 tr in each of next 2 ch, 4 sps, 1 blk": (21, "11 dc, 8 ch"),
    "Chain 23, turn; 1 tr into the 8th ch, 4 sps, 1 blk": (23, "9 dc, 10 ch"),
    "Make a ch of 23, miss 7, 1 tr in next, 4 sps, 1 blk": (23, "9 dc, 10 ch"),
    "Make a foundation of 23 ch, turn, 1 tr in 8th ch from hook, 4 sps, 1 blk": (23, "9 dc, 10 ch"),
}


@pytest.mark.parametrize("row", CHAINS_FIRST)
def test_a_first_row_that_makes_its_chain(row: str) -> None:
    chains, comes_to = CHAINS_FIRST[row]
    on = On(chains, (), closed=False, headings=UK)
    assert said(row, on) == f"{comes_to}; asked foundation-named; asked foundation-passed"


CHAINS_ALONE = {
    "Ch 21, 1 blk, 4 sps, 1 blk": (21, "11 dc, 8 ch"),
    "22 ch, turn, 1 blk, 4 sps, 1 blk": (22, "11 dc, 8 ch"),
    "Chain 23; 5 sps, 1 blk": (23, "9 dc, 10 ch"),
    "Make a chain of 24, 5 sps, 1 blk": (24, "9 dc, 10 ch"),
}
"""The first stitch, and a first space, have as many of them as leave whole squares."""


@pytest.mark.parametrize("row", CHAINS_ALONE)
def test_a_first_row_of_squares_right_behind_its_chain(row: str) -> None:
    chains, comes_to = CHAINS_ALONE[row]
    on = On(chains, (), closed=False, headings=UK)
    assert said(row, on) == f"{comes_to}; asked foundation-named; asked foundation-passed"


def test_a_chain_that_leaves_no_whole_squares_is_asked() -> None:
    for row in ("Ch 25, 5 sps, 1 blk", "Ch 12, 5 sps, 1 blk"):
        _, told = read(f"{UK}round 1: {row}.\n")
        assert [f.code for f in told] == ["squares-unclear"], row


UNSAID = On(13, ("1 treble in each loop",), closed=False, headings="terms: uk\n")
AS_MOST = dict.fromkeys(
    ("1 sp, 2 blks, 1 sp", "1 sp, 6 tr, 1 sp", "5 ch, 1 sp, 6 tr, 1 sp"),
    f"{TWO_OF_FOUR}; {ASSUMED}",
) | {
    "1 sp, 7 tr, 1 sp": f"{TWO_OF_FOUR}; {ASSUMED}; {ASSUMED}",
    "1 sp, 7 dtr, 1 sp": f"9 tr, 4 ch; {ASSUMED}; {ASSUMED}",
}


@cases((UNSAID, AS_MOST))
def test_squares_that_nothing_explains_are_those_of_most_books(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize("row", ["1 sp, 5 tr, 2 sps", "4 ch, 1 sp, 2 blk", "1 sp, 4 tr, 4 dtr"])
def test_squares_of_other_numbers_are_asked(row: str) -> None:
    assert "asked squares-unclear" in said(row, UNSAID)


@pytest.mark.parametrize("made", ["3 ch, miss 3, 1 tr", "2 ch, miss 2, 1 dtr", "3 tr"])
def test_a_bracket_that_says_of_what_a_square_is_made_must_be_right(made: str) -> None:
    assert "asked squares-unclear" in said(f"1 sp ({made}), 2 blks, 1 sp", FOUR)


def test_squares_on_chains_that_do_not_count_are_asked() -> None:
    uncounted = UNSAID.headings + "chains count as stitches: no\n"
    assert "asked squares-unclear" in said("1 sp, 2 blks", UNSAID._replace(headings=uncounted))


def test_squares_over_squares_have_a_number() -> None:
    assert "asked squares-unclear" in said("2 open, close over close, 1 open", FOUR)
    assert "asked squares-unclear" in said("2 close, open over open, 1 close", FOUR)


@pytest.mark.parametrize(
    ("below", "row", "comes_to"),
    [
        ("6 sps, 5 ch, turn", "2 sps, 4 blks", "15 dc, 4 ch"),
        ("6 sps, turn with 3 ch", "2 blks, 4 sps", "11 dc, 8 ch"),
    ],
)
def test_chains_made_before_the_turn(below: str, row: str, comes_to: str) -> None:
    on = On(19, (below,), closed=False, headings=UK)
    assert said(row, on) == f"{comes_to}; {CHAIN}"


@pytest.mark.parametrize(
    ("below", "row", "help_"),
    [
        ("6 sps, 8 ch, turn", "tr in first tr, 6 sps", '"ch 8, tr in first tr"'),
        ("6 sps, 5 ch, turn", "*1 sp, 1 blk; repeat from *", "write ch 3 before the turn"),
    ],
)
def test_chains_before_the_turn_that_a_row_cannot_go_on_from(
    below: str, row: str, help_: str
) -> None:
    _, told = read(f"{UK}row 1: {below}\nrow 2: {row}\n")
    (unclear,) = [f for f in told if f.code == "squares-unclear"]
    assert help_ in (unclear.help or "")


SMALL = "terms: early\nchains count as stitches: yes\nspace = ch 1, skip 1, 1 dc in next\n"


@cases(
    (
        On(9, ("1 dc in each loop",), closed=False, headings=SMALL),
        {"1 sp, 5 dc, 1 sp": f"7 dc, 2 ch; {ASSUMED}", "2 blk, 2 sp": "7 dc, 2 ch"},
    )
)
def test_smaller_squares(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
