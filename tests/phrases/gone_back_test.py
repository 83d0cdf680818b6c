"""Going back in other words than `repeat from *`, any one of several, this and the next, cloth that
a row goes along, rings that are closed first.
"""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, BLOCKS, FIVES, LOOPS, SIXES, STITCHES, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border

OPEN_STITCHES = STITCHES._replace(closed=False)
SPACED = On(13, ("1 treble in each loop, with 1 chain between",), closed=False)

GONE_BACK = {
    "*1 plain in loop, 3 chain; begin again from *": "12 sc, 36 ch; 12 x 1 loop",
    "+ 1 plain in loop, 3 chain; commence again from +": "12 sc, 36 ch; 12 x 1 loop",
    "Into the hem of the cambric, * 1 plain, 5 chain, miss 2; repeat": "4 sc, 20 ch; 4 x 3 loop; asked taken-as-remark",
    "commencing every row on the same side, work a row of plain": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 treble in hem about one eighth inch beyond, 2 chain; repeat": "12 dc, 24 ch; 12 x 1 loop; asked taken-as-remark",
    "work 1 plain in each loop of it": "12 sc; 12 x 1 loop",
    "+ Under each loop: 1 plain, 2 treble, 1 plain": "24 sc, 24 dc; 12 x 1 loop; asked star-assumed",
    "*1 plain in loop, 5 chain, 1 single in the fourth of them to form a dot; repeat": "12 sc, 36 ch, 12 picot; 12 x 1 loop; asked taken-as-remark",
}

CLOSED_FIRST = {
    "Close a foundation of 10 st. in a ring with 1 sl st, 12 treble in ring": "12 dc; does not close; asked foundation-named; asked repeat-unclear",
    "make 6 chain, join; (7 chain, 1 plain in the round, 8 times)": "8 sc, 56 ch; does not close; asked foundation-named; asked row-does-not-close",
    "make 8 chain, join round, 3 chain for the first treble, 23 treble into the round": "24 dc; does not close; asked foundation-named; asked row-does-not-close",
}

NAMED_AGAIN = {
    "1 plain in the first, 5 chain, miss 2, 1 plain in next; repeat these five chain and one plain to the end": "4 sc, 20 ch; 3 x 3 st; asked meets-its-start",
}

CONTINUED = {
    "1 plain in the first, 3 chain, miss 1, 1 plain in next; continue the 3 chain and the 1 plain to the end": "6 sc, 15 ch; 5 x 2 st; 1 left over; does not close; asked row-does-not-close",
}

UNDER_ONE_CHAIN = {
    "4 chain and 1 plain under the next one chain twelve times": "12 sc, 48 ch; asked times-of-the-row",
}

ONE_OF = {
    "1 plain in centre of one of the 3 chain, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 ch-3 space",
    "1 plain in any one of the spaces, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 space",
}

OMITTED = {
    "*1 treble in next, 2 chain; repeat from *, omitting the last 2 chain; turn": "12 dc, 22 ch; 11 x 1 st",
}

IN_THE_TOP_OF_IT = {
    "1 treble in next treble, 3 chain, 1 plain in top of same treble; repeat": "12 dc, 12 picot; 12 x 1 dc",
    "On opposite side of braid 1 plain in each stitch": "12 sc; 12 x 1 st; asked other-edge",
    "Along the pointed edge 1 plain in each stitch": "12 sc; 12 x 1 st; asked other-edge",
}

FASTENED = {
    "5 treble, fasten with 1 plain in end st of foundation ch; turn": "5 dc; does not close; asked at-the-side; asked row-does-not-close",
}

IN_ONE_CHAIN_EACH = {
    "2 plain under the next 2 single chain, that is 1 under each, 3 chain; repeat": "12 sc, 18 ch; 6 x 2 ch-1 space; asked perhaps-one-place; asked taken-as-remark",
    "3 chain, miss two of the open squares, 1 treble in next; repeat": "4 dc, 12 ch; 4 x 3 space",
}

OF_CHAIN = {
    "on the loop of chain 7 plain, 1 picot, 7 plain; repeat": "168 sc, 12 picot; 12 x 1 loop",
    "work plain over it to the end": "12 sc; 12 x 1 loop",
    "make 8 chain and join, and into the ring so formed put 12 treble": "12 dc; does not close; asked foundation-named; asked repeat-unclear",
}

ON_EACH_BEFORE_A_SHELL = {
    "1 treble on each of 2 treble, work 3 treble, 2 chain, 3 treble, under the loop of 3 chain; repeat": "48 dc, 12 ch; 6 x 3 dc",
}

JOINED_AGAIN = {
    "*6 chain, miss 2, 1 plain on the next; repeat from * all round, fastening the last 6 chain with 1 single to the first plain": "4 sc, 30 ch; 4 x 3 st; asked perhaps-instead",
    "1 treble into first treble to increase, 11 plain": "1 dc, 11 sc",
    "(1 treble, 2 chain, 1 treble, all in next treble) 12 times": "24 dc, 24 ch",
}

MARK_TO_MARK = {
    "4 chain, miss 1 treble, x 1 treble in the next, 1 chain, miss 1 treble x, repeat x to x all round, ss into 3rd of the 4 chain": "6 dc, 6 ch; 5 x 2 dc; asked start-chain-assumed",
}

OF_THEM = {
    "1 treble on the 1st of the 6 treble, 4 chain, 1 treble on the last of them; repeat": "12 dc, 24 ch; 6 x 1 6-dc run; asked perhaps-shared",
}

ON_BRAID = {
    "x 1 plain in the next, 3 chain x, repeat x to x 11 times more": "12 sc, 36 ch",
    "Treble in every stitch of a chain the length you want it": "12 dc; 12 x 1 loop; asked taken-as-remark",
    "Work a row of plain closely over the edge of the linen": "12 sc; 12 x 1 loop",
    "10 chain, form a ring, and work 12 plain into it, single to the first plain": "12 sc; does not close; asked foundation-named; asked repeat-unclear",
    "On 12 chain, work 1 plain in each": "12 sc; 12 x 1 loop; asked foundation-named",
    "1 plain in each picot of the feather edge braid, fasten the end off neatly": "12 sc; 12 x 1 loop",
}

UNITED = {
    "*9 chain, 1 plain in next space; repeat from *, the last 9 chain being united to the first plain": "6 sc, 63 ch; 6 x 1 space; asked perhaps-instead",
    "*6 chain, 1 plain in next space; repeat from * all round, the last loop being caught down where the round began": "6 sc, 42 ch; 6 x 1 space; asked perhaps-instead",
}

THE_ELEVENTH = {
    "(1 plain on a treble, 4 chain, miss 1 treble) 5 times, 1 plain on the eleventh treble": "5 sc, 20 ch; does not close; asked perhaps-counted-on; asked row-does-not-close",
}

ON_CLOTH = {
    "*1 plain, 3 chain, miss the space of three threads; repeat": "12 sc, 36 ch; 12 x 1 loop; asked taken-as-remark",
    "turn back, and work a row of plain to the end; fasten off": "12 sc; 12 x 1 loop",
    "Over a double strand of padding cotton work plain for the length required": "12 sc; 12 x 1 loop",
}

CENTRE_ONES = {
    "1 plain on each of the 2 centre treble of the 6, 4 chain; repeat": "12 sc, 24 ch; 6 x 1 6-dc run",
}

THIS_AND_NEXT = {
    "1 plain between this group and the next, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 group",
    "Slip to middle treble, *1 plain on middle treble of group, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 group",
}


@cases(
    (LOOPS, GONE_BACK),
    (LOOPS, CLOSED_FIRST),
    (STITCHES, NAMED_AGAIN),
    (OPEN_STITCHES, CONTINUED),
    (SPACED, UNDER_ONE_CHAIN),
    (ARCHES, ONE_OF),
    (SIXES, THIS_AND_NEXT),
    (OPEN_STITCHES, OMITTED),
    (STITCHES, IN_THE_TOP_OF_IT),
    (OPEN_STITCHES, FASTENED),
    (SPACED, IN_ONE_CHAIN_EACH),
    (LOOPS, OF_CHAIN),
    (SIXES, CENTRE_ONES),
    (FIVES, UNITED),
    (STITCHES, THE_ELEVENTH),
    (LOOPS, ON_CLOTH),
    (STITCHES, MARK_TO_MARK),
    (SIXES, OF_THEM),
    (LOOPS, ON_BRAID),
    (BLOCKS, ON_EACH_BEFORE_A_SHELL),
    (STITCHES, JOINED_AGAIN),
)
def test_it_comes_to(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_what_goes_into_a_row_that_the_text_does_not_have_is_at_the_side() -> None:
    """`the 1st row` in row 1, as where a row of a page is tried by itself, is no row below."""
    row = "3 treble in loop, 1 plain in the end stitch of the first row; turn"
    assert said(row) == "3 dc; does not close; asked at-the-side; asked repeat-unclear"


@pytest.mark.parametrize(
    ("row", "code"),
    [
        ("*1 dc in next, ch 2; repeat from *, omitting the last 3 ch; turn", "exception-in-words"),
        ("*1 dc in next, ch 2; repeat, omitting the last 2 ch; turn", "exception-in-words"),
        ("*1 dc in next, ch 2; repeat from *, omitting the 2 ch; turn", "exception-in-words"),
        ("*ch 2; repeat from *, omitting the last 2 ch", "exception-in-words"),
        ("1 dc, ch 6, fastening the last 6 ch to the first dc", "unknown-word"),
        (
            "*ch 9, 1 sc in next loop; repeat from *, the last 7 ch being united to the first sc",
            "unknown-word",
        ),
        ("1 sc, the last 9 ch being united to the first sc", "unknown-word"),
        (
            "*1 sc in loop, ch 9; repeat from *, the last loop being united to the first sc",
            "unknown-word",
        ),
        (
            "*ch 9, 1 sc in next loop; repeat from *, the last loop being worked in blue",
            "unknown-word",
        ),
        ("1 sc in each loop; begin again from the edge", "not-understood"),
        ("1 sc in loop, ch 3; begin again from *", "repeat-without-star"),
        ("1 sc in first, ch 5, skip 2, 1 sc in next; repeat these 5 ch and 1 dc", "not-understood"),
        ("1 sc in first, ch 5, skip 2, 1 sc in next; repeat these 4 ch and 1 sc", "not-understood"),
        ("*1 sc, ch 5, skip 2, 1 sc; repeat these 5 ch and 1 sc to the end", "not-understood"),
        ("5 ch, take out the hook, insert it in the first and draw through", "unknown-word"),
        ("5 dc in next, take out the hook, draw the loop through", "unknown-word"),
        (
            "5 dc in next, take out the hook, skip 1, insert in the first and draw it through",
            "unknown-word",
        ),
        ("5 dc in next, hook out, insert in the first and draw it through", "unknown-word"),
    ],
)
def test_what_is_not_quite_so_is_not_taken_for_it(row: str, code: str) -> None:
    text = f"terms: us\nchains count as stitches: yes\nround 1: {row}.\n"
    _, told = read_border(Source("book.border", text))
    assert code in [f.code for f in told]


def test_a_last_loop_may_have_chains_of_its_own_number() -> None:
    row = "*5 chain, 1 plain in next loop; repeat from *, joining the last 3 chain to first plain"
    assert said(row) == "12 sc, 63 ch; 12 x 1 loop; asked perhaps-instead"
