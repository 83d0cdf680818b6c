"""Words that a text leaves out, or has where another stands; and what they leave open, asked."""

from __future__ import annotations

import pytest
from phrases.said import (
    ARCHES,
    BLOCKS,
    FIVES,
    HEADINGS,
    LOOPS,
    PICOTS,
    SIXES,
    STITCHES,
    On,
    cases,
    said,
)

from border.text.source import Source
from border.text.syntax import read_border
from border.text.written import write_border

ON9 = On(1, ("9 treble in each loop",), closed=False)
OPEN = On(13, ("1 treble in each loop",), closed=False)
SHELL1 = On(6, ("(2 treble, 1 chain, 2 treble) in each loop",))
SHELL2 = On(6, ("(2 treble, 1 chain, 2 treble, 1 chain, 2 treble) in each loop",))
NINES = On(
    4, ("9 plain in each loop, with 5 chain between",), headings=HEADINGS.replace("yes", "no")
)
SPACED = On(6, ("*3 treble in next loop, 3 chain, 1 plain in next loop, 3 chain; repeat",))
SPLIT = On(6, ("(2 treble, 2 chain, 2 treble) in each loop",))
FIVEDC = On(6, ("*5 treble in next loop, 3 chain, 1 plain in next loop, 3 chain; repeat",))
TWOS = On(
    6,
    (
        "*1 treble in next loop, 5 chain, 1 treble in next loop, 5 chain, 1 treble in next loop, "
        "6 chain; repeat",
    ),
)
TURNED = On(12, ("1 treble in each loop, with 2 chain between",), closed=False)
SPREAD = On(
    12,
    ("1 treble in each loop", "*2 treble in each of the next 2 treble, 2 chain, miss 2; repeat"),
)

READ_ARCHES = {
    "plain every stitch": "48 sc; 48 x 1 st",
    "3 plain under next loop, nothing under the next; repeat": "18 sc; 6 x 2 space",
}
READ_LOOPS = {
    "fasten on at the right hand end; 3 plain in loop, 2 chain; repeat": (
        "36 sc, 24 ch; 12 x 1 loop; asked taken-as-remark"
    ),
    "1 plain in next loop, 4 chain; repeat to the end, and cut off the thread at each end": (
        "12 sc, 48 ch; 12 x 1 loop"
    ),
    "1 plain in next loop, 3 chain, 1 treble in the stitch last worked into; repeat": (
        "12 sc, 12 dc, 36 ch; 12 x 1 loop"
    ),
    "1 plain in next loop, 3 chain, 1 treble in the same place as the plain; repeat": (
        "12 sc, 12 dc, 36 ch; 12 x 1 loop"
    ),
    "*3 treble each with 2 chain between, in next loop, 1 plain in next loop; repeat": (
        "18 dc, 6 sc, 24 ch; 6 x 2 loop"
    ),
    "*1 plain in next loop, 3 chain, 1 plain in each of the other 3 loops; repeat": (
        "12 sc, 9 ch; 3 x 4 loop; asked perhaps-as-they-come"
    ),
    "1 plain in each of the following loops": "12 sc; 12 x 1 loop",
    "in the first loop work 3 plain, in the next 4 plain; repeat these two": "42 sc; 6 x 2 loop",
    "pass on with single stitches to the first loop; * 1 plain in loop, 9 chain; repeat": (
        "12 sc, 108 ch; 12 x 1 loop"
    ),
    "1 dbl treble in next loop, 3 chain; repeat": "12 tr, 36 ch; 12 x 1 loop",
    "1 plain in next loop, 3 chain: repeat": "12 sc, 36 ch; 12 x 1 loop",
    "2 treble together in next loop, 8 chain, 2 treble in the same manner in the next loop, 7 chain; repeat": (
        "12 dc, 90 ch; 6 x 2 loop"
    ),
    "*3 chain, 1 plain in next loop, repeat from * once more, then 5 plain in next loop; repeat from first *": (
        "28 sc, 24 ch; 4 x 3 loop"
    ),
    "*5 plain in next loop, *3 chain, 1 plain in next loop, repeat from last * twice more; repeat from first *": (
        "24 sc, 27 ch; 3 x 4 loop"
    ),
    "1 plain in next loop, 5 chain, and go on in the same way": "12 sc, 60 ch; 12 x 1 loop",
    "1 plain in next loop, 5 chain, until the whole is done": "12 sc, 60 ch; 12 x 1 loop",
    "1 plain in next loop, 3 chain, pass the next loop; repeat": "6 sc, 18 ch; 6 x 2 loop",
    "6 treble in the next loop, each separated from the next by one chain, 1 plain in the next loop; repeat": (
        "36 dc, 6 sc, 30 ch; 6 x 2 loop"
    ),
}
READ_STITCHES = {
    "*1 plain in next st, 3 chain, miss 2; repeat from * throughout the row": (
        "4 sc, 12 ch; 4 x 3 st"
    ),
    "1 plain in next st, 1 picot with 4 chain, 1 plain in next st; repeat": (
        "12 sc, 6 picot; 6 x 2 st"
    ),
    "*2 treble drawn through together, 3 chain; repeat": "6 dc, 18 ch; 6 x 2 st",
    "1 single on each of the first 3, in order to reach the next; * 1 plain, 2 chain; repeat": (
        "12 sc, 24 ch; 12 x 1 st"
    ),
    "4 treble, each on a stitch, with 2 chain between, 3 chain; repeat": "12 dc, 27 ch; 3 x 4 st",
    "Work a row of picots as follows: 1 plain in next st, 3 chain, 1 plain in same; repeat": (
        "24 sc, 36 ch; 12 x 1 st; asked taken-as-remark"
    ),
    "A row of close treble": "12 dc; 12 x 1 st",
    "1 plain in each st of the foundation ch": "12 sc; 12 x 1 st",
    "2 treble, missing 1 stitch between each, 3 chain, miss 1; repeat": "6 dc, 9 ch; 3 x 4 st",
}
READ_FIVES = {
    "1 plain, 5 treble, 1 plain; the same under every 5 chain": "12 sc, 30 dc; 6 x 1 ch-5 space",
    "1 plain in the 2nd, 1 plain in the 4th of the 5 chain, 3 chain; repeat": (
        "12 sc, 18 ch; 6 x 1 ch-5 space"
    ),
    "picot of 5, and 1 plain in the loop; do this in every loop": "6 sc, 6 picot; 6 x 1 space",
}
READ_BLOCKS = {
    "2 plain in the first, 3 plain in the second space; repeat": (
        "10 sc; 2 x 3 space; asked perhaps-counted-on"
    ),
    "1 plain on the first, 3 chain, 1 plain on the last of the 3 treble, 3 chain; repeat": (
        "12 sc, 36 ch; 6 x 1 3-dc run"
    ),
}
READ_SIXES = {
    "6 chain, 1 plain between the leaves; repeat": "6 sc, 36 ch; 6 x 1 shell; asked place-assumed",
}
READ_OPEN = {
    "1 plain in next st, 3 chain, miss 1; repeat, and on the last stitch 1 plain": (
        "7 sc, 18 ch; 6 x 2 st"
    ),
}

ASKED_SHELL2 = {
    "1 plain in each loop of the shell": "12 sc; 12 x 1 space",
    "1 plain under the first chain of a shell, 3 chain, 1 plain under the second chain, 3 chain; repeat": (
        "6 sc, 18 ch; 3 x 2 shell; asked perhaps-counted-on"
    ),
}
ASKED_FIVES = {
    "4 chain, 1 plain under the same 5 chain, 2 chain, 1 plain under next 5 chain; repeat": (
        "6 sc, 18 ch; 3 x 2 ch-5 space; asked place-assumed"
    ),
    "catch down the two chains of 5 with 1 plain, 4 chain; repeat": (
        "6 sc, 24 ch; 6 x 1 ch-5 space; asked place-assumed"
    ),
    "3 plain in the following loops": "3 sc; does not close; asked perhaps-one-place; asked repeat-unclear",
}
ASKED_NINES = {
    "miss the 1st plain, 7 plain, miss 1, 3 chain, 1 plain in the 5 chain, 3 chain; repeat": (
        "32 sc, 24 ch; 4 x 9 sc"
    ),
}
ASKED_STITCHES = {
    "begin in the 2nd treble, *5 chain, 1 plain in the 3rd treble; repeat from *": (
        "4 sc, 20 ch; 4 x 3 dc; asked perhaps-counted-on"
    ),
}
ASKED_LOOPS = {
    "3 chain and 1 treble in the centre of each loop": (
        "12 dc; 11 x 1 loop; asked place-unclear; asked start-chain-assumed"
    ),
    "*12 chain, 1 slip stitch in the first to form a circle, 16 plain in the circle, 1 plain in next loop; repeat from *": (
        "102 sc, 6 picot; 6 x 2 loop; asked perhaps-just-made; asked taken-as-remark"
    ),
    "Slip to the first loop, 7 chain, 1 treble in the next loop, 4 chain; repeat": (
        "12 dc, 132 ch; 12 x 1 loop; asked perhaps-start-chain"
    ),
}
ASKED_SPACED = {
    "miss the 3 chain, plain, and 3 chain, 1 treble in next st; repeat": (
        "3 sc, 3 dc, 9 ch; 3 x 2 ch-3 space; asked perhaps-missed; asked place-unclear"
    ),
}
ASKED_SPLIT = {
    "5 treble in the hole between the treble; repeat": "120 dc; 24 x 1 dc; asked place-assumed",
}
ASKED_FIVEDC = {
    "3 treble over the 3 centre ones of the 5, 7 chain, 1 plain, 7 chain; repeat": (
        "9 dc, 3 sc, 42 ch; 3 x 1 block of 5; asked perhaps-nothing-missed"
    ),
}
ASKED_TWOS = {
    "5 plain under each of the two 5 chain, 6 plain under every 6 chain": (
        "22 sc; 2 x 1 ch-6 space; asked perhaps-as-they-come"
    ),
}
ASKED_TURNED = {
    "turn with 5 chain, 1 treble in next treble, 2 chain, miss 2; repeat": (
        "11 dc, 77 ch; 11 x 1 dc; 1 left over; does not close; asked perhaps-start-chain; asked row-does-not-close"
    ),
    "turn; 3 plain in the space at the end, *1 chain, 1 plain in next space; repeat from *": (
        "13 sc, 10 ch; 10 x 1 space"
    ),
}
ASKED_SHELL1 = {
    "1 plain in shell, 2 chain, 1 plain in second shell; repeat": (
        "4 sc, 4 ch; 2 x 3 shell; asked perhaps-counted-on; asked perhaps-shared"
    ),
}
ASKED_SPREAD = {
    "as round 2, putting the treble in the 2 chain": (
        "4 dc, 2 ch; 1 x 2 ch-2 space; 1 left over; does not close; asked perhaps-placed-otherwise; asked row-does-not-close"
    ),
}


@cases(
    (ARCHES, READ_ARCHES),
    (LOOPS, READ_LOOPS),
    (STITCHES, READ_STITCHES),
    (FIVES, READ_FIVES),
    (BLOCKS, READ_BLOCKS),
    (SIXES, READ_SIXES),
    (OPEN, READ_OPEN),
)
def test_little_words_that_are_left_out_or_stand_for_others(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


@cases(
    (SHELL2, ASKED_SHELL2),
    (FIVES, ASKED_FIVES),
    (NINES, ASKED_NINES),
    (STITCHES, ASKED_STITCHES),
    (LOOPS, ASKED_LOOPS),
    (SPACED, ASKED_SPACED),
    (SPLIT, ASKED_SPLIT),
    (FIVEDC, ASKED_FIVEDC),
    (TWOS, ASKED_TWOS),
    (TURNED, ASKED_TURNED),
    (SHELL1, ASKED_SHELL1),
    (SPREAD, ASKED_SPREAD),
)
def test_what_may_be_meant_besides_is_asked(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


MORE_STITCHES = {
    "1 chain, 1 treble in every other stitch": "6 dc; 6 x 2 st; asked place-unclear",
    "5 chain, 1 plain, alternately, missing 2 stitches each time": "4 sc, 20 ch; 4 x 3 st",
    "*3 chain, miss 2, 1 plain, repeat from *; slip to the centre of the first chain": "4 sc, 12 ch; 4 x 3 st; asked perhaps-leads-on",
    "1 plain between the two, 6 chain; repeat": "12 sc, 72 ch; 12 x 1 st; asked place-assumed",
    "1 plain in next st, 3 chain, miss 2; begin again": "4 sc, 12 ch; 4 x 3 st",
    "1 treble, 2 chain, miss 2; continue this all along": "4 dc, 8 ch; 4 x 3 st",
    "1 treble in every alternate stitch, making 1 chain after each": "6 dc, 6 ch; 6 x 2 st",
    "1 treble in alternate stitches with 2 chain between": "6 dc, 12 ch; 6 x 2 st",
    "Every fourth stitch 1 treble, 3 chain between": "3 dc, 9 ch; 3 x 4 st",
    "1 treble on the 2nd treble, 2 chain, 1 treble on the next, and so on": "8 dc, 8 ch; 4 x 3 dc; asked perhaps-shared",
    "1 treble in each st with 1 chain between, missing 1": "12 dc, 12 ch; 12 x 1 st; does not close; asked perhaps-missed; asked row-does-not-close",
    "Always 3 treble in the next st, 3 chain, miss 2": "12 dc, 12 ch; 4 x 3 st",
    "1 treble in next 3d st, 2 chain; repeat": "4 dc, 8 ch; 4 x 3 st",
}
MORE_FIVES = {
    "6 chain, miss 1 chain of 5, 1 plain in the next; repeat": "3 sc, 18 ch; 3 x 2 ch-5 space",
    "1 plain in the first 5 chain, 3 chain, 5 treble in the 2nd 5 chain, 3 chain; repeat": "2 sc, 10 dc, 12 ch; 2 x 3 ch-5 space; asked perhaps-counted-on",
    "2 plain under the first 5 chain, 3 chain, 2 plain under the next 5, 3 chain; repeat": "12 sc, 18 ch; 6 x 1 ch-5 space",
    "double crochet twice in every loop": "12 sc; 6 x 1 space",
    "1 plain in 1st loop, *5 chain, skip 1, 1 plain in next; repeat from *": "16 sc, 75 ch; 15 x 2 st; 1 left over; does not close; asked perhaps-of-spaces; asked row-does-not-close",
    "1 plain under 5 chain, 1 picot, 3 chain, 1 plain under next 5 chain; repeat": "6 sc, 9 ch, 3 picot; 3 x 2 ch-5 space; asked perhaps-shared",
    "1 plain in the space before the plain, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 space; asked taken-as-remark",
}
MORE_PICOTS = {
    "*1 plain in the plain after the purl, 7 chain; repeat": "12 sc, 84 ch; 12 x 1 sc; asked taken-as-remark; asked perhaps-one-place",
}
MORE_ARCHES = {
    "1 treble in each loop, missing every alternate one": "6 dc; 6 x 2 space",
}
MORE_LOOPS = {
    "1 picot (p), 1 plain in next loop; repeat": "12 sc, 12 picot; 12 x 1 loop",
    "1 plain in each loop. Do not turn": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "3 plain in 1st loop, 4 chain, 3 plain in same loop, and so on in each loop": "72 sc, 48 ch; 12 x 1 loop",
    "Double crochet over the edge of the flannel": "12 sc; 12 x 1 loop",
}
MORE_ON9 = {
    "On the nine trebles work 1 treble on each with 1 chain between each": "9 dc, 8 ch",
}


@cases(
    (STITCHES, MORE_STITCHES),
    (FIVES, MORE_FIVES),
    (PICOTS, MORE_PICOTS),
    (ARCHES, MORE_ARCHES),
    (LOOPS, MORE_LOOPS),
    (ON9, MORE_ON9),
)
def test_more_words_that_are_left_out_or_stand_for_others(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


SHAPED = On(6, ("(3 treble, 2 chain, 3 treble) in each loop, with 2 chain between",))
ONES = On(12, ("1 plain in each loop, with 1 chain between",))
STILL_SHAPED = {
    "1 plain in next st, 5 chain, 1 plain in shell to the end": "10 sc, 25 ch; 5 x 10 st; 2 left over; does not close; asked perhaps-of-bracket; asked passes-more; asked row-does-not-close",
}
STILL_STITCHES = {
    "1 plain in each treble, skip 2 treble": "12 sc; 12 x 1 dc; does not close; asked perhaps-as-they-come; asked row-does-not-close",
    "1 plain, 5 chain, 1 single in the plain just made, 2 plain, 5 chain, 1 single, 1 plain; repeat": "8 sc, 2 ss, 10 ch, 2 picot; 2 x 5 st; 2 left over; does not close; asked perhaps-picot; asked row-does-not-close",
    "1 treble in every second stitch, 1 chain between; end with a slip stitch on the first treble": "6 dc, 6 ch; 6 x 2 st",
}
STILL_FIVES = {
    "1 treble, 1 chain, 6 times, under the 5 chain, 2 chain; repeat": "36 dc, 48 ch; 6 x 1 ch-5 space; asked times-of-the-row",
}
STILL_ONES = {
    "1 treble in the one chain, miss one chain, 1 plain in the next; repeat": "6 dc, 6 sc; 6 x 2 ch-1 space; asked perhaps-of-spaces",
}


@cases(
    (SHAPED, STILL_SHAPED),
    (STITCHES, STILL_STITCHES),
    (FIVES, STILL_FIVES),
    (ONES, STILL_ONES),
)
def test_what_else_is_asked(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_an_ordinal_that_begins_the_first_row_may_be_from_the_hook() -> None:
    row = "round 1: 1 dc in 8th st, ch 2, skip 2, 1 dc in next st; repeat."
    assert _codes(f"terms: us\n{row}\n") == ["place-assumed"]
    assert _codes(f"terms: us\n{row.replace('1 dc', '1 sc')}\n") == []


def test_what_is_counted_by_a_strange_word_is_no_remark() -> None:
    text = "terms: us\nround 1: 1 dc in each loop.\nround 2: 1 dc, 3 o., 4 dc.\n"
    _, told = read_border(Source("book.border", text))
    assert [f.code for f in told] == ["unknown-word"]
    assert "apart" not in (told[0].help or "")


TO_MARKS = {
    "x 1 plain, 5 chain, miss 2, repeat x to the end": "4 sc, 20 ch; 4 x 3 st",
    "x 9 chain, miss 1, 1 plain on the next, repeat x 5 times more": "6 sc, 54 ch",
    "x 1 plain, 5 chain, miss 2, x repeat": "4 sc, 20 ch; 4 x 3 st",
    "+ 1 treble, 1 chain, miss 1, +; end with a single stitch on the first": "6 dc, 6 ch; 6 x 2 st",
    "Double crochet in 2, + 5 chain, miss 1, double crochet in 4, + repeat to the end": "10 sc, 10 ch; 2 x 5 st; asked perhaps-leads-back",
    "plain in 3 treble, 3 chain, miss 1; repeat": "9 sc, 9 ch; 3 x 4 dc",
    "Chain of seven in every third stitch": "4 ss, 28 ch; 4 x 3 st; asked fastening-assumed",
    "Plain in every stitch, and chain of four after every third": "12 sc, 16 ch; 4 x 3 st",
    "(5 chain, 1 plain in the 5th loop to form a purl, 1 plain in the next st) 12 times": "12 sc, 12 picot",
    "1 treble in every other stitch, with 1 chain after every treble": "6 dc, 6 ch; 6 x 2 st",
    "Plain the whole round": "12 sc; 12 x 1 st",
    "1 plain, 3 chain, miss 2; repeat for each shell": "4 sc, 12 ch; 4 x 3 st",
    "White, 3 chain for the first treble, 1 treble, x 2 chain, miss 1, 1 treble, repeat x; break off": "7 dc, 10 ch; 5 x 2 st; asked perhaps-leads-back",
}
EVERY_SO_MANY = {
    "1 plain in each st, with a picot over every 3d st": "12 sc, 4 picot; 4 x 3 st",
    "1 plain in each st, after every 4th plain 1 picot": "12 sc, 3 picot; 3 x 4 st",
    "1 plain in each st, and a picot of 4 chain in every fourth st": "12 sc, 3 picot; 3 x 4 st",
    "Plain in every stitch, making 4 chain after every 3rd plain": "12 sc, 16 ch; 4 x 3 st",
    "plain all round, with a picot after every 3 plain": "12 sc, 4 picot; 4 x 3 st",
}
FASTENED = {
    "1 plain in next st, 5 chain, unite with the next treble; repeat": "6 sc, 6 ss, 30 ch; 6 x 2 st; asked fastening-assumed",
    "2 purls of 5 chain each, 1 plain in next st; repeat": "12 sc, 24 picot; 12 x 1 st",
    "2 treble in one and the same stitch, 2 chain, miss 1; repeat": "12 dc, 12 ch; 6 x 2 st",
    "1 treble, 2 chain, miss 1; repeat all across": "6 dc, 12 ch; 6 x 2 st",
}


@cases((STITCHES, EVERY_SO_MANY), (STITCHES, FASTENED), (STITCHES, TO_MARKS))
def test_behind_every_so_many(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


ROWS = {
    "Same as 1st round, but putting the needle through the back part of the loop only": "as round 1",
    "Another row of 5 chain, 1 dc in next tr, miss 1; repeat": "ch 5, 1 dc in next tr, skip 1; repeat",
    "For the scalloped edge. 1 dc in next tr, 3 ch; repeat": "1 dc in next tr, ch 3; repeat",
    "Edge. * 1 dc in next tr, 3 ch; repeat from *": "*1 dc in next tr, ch 3; repeat from *",
    "1 dc in each tr. Work 30 rows like this": "1 dc in each tr",
    "turn, 3 ch, 1 tr in each tr, 1 tr in the third chain at the end": (
        "turn, ch 3; 1 tr in each tr, 1 tr in last st"
    ),
    "1 tr in next, 1 ch, miss 1, 1 tr in the next; repeat 1 chain, miss 1, 1 treble, to the end": (
        "1 tr in next st, *ch 1, skip 1, 1 tr in next st; repeat from *"
    ),
    "Between every 2 treble work 1 dc, with 3 ch between": "1 dc between each 2 tr, with ch 3 between",
    "5 tr in next tr, twice, 2 ch; repeat": "(5 tr in next tr) 2 times, ch 2; repeat",
}


@pytest.mark.parametrize(("row", "written"), ROWS.items())
def test_what_stands_round_the_steps_is_no_step(row: str, written: str) -> None:
    text = f"terms: uk\nround 1: 1 tr in each loop.\nround 2: {row}.\n"
    assert _written(text) == f"round 2: {written}."


def test_a_name_with_stitch_behind_it_settles_the_bare_name_as_well() -> None:
    text = "terms: uk\nlong stitch means uk treble\nround 1: 1 long, 2 chain, miss 2; repeat.\n"
    assert _codes(text) == []
    assert _written(text) == "round 1: 1 tr, ch 2, skip 2; repeat."


def test_a_chain_of_so_many_inches_is_a_foundation_of_no_number() -> None:
    text = "terms: uk\nround 1: make a chain of 24 inches, and work 1 dc in every loop.\n"
    assert _written(text) == "round 1: 1 dc in each loop."
    assert _codes(text) == ["taken-as-remark"]


def test_a_skip_that_leaves_stitches_out_of_each_is_an_exception() -> None:
    below = "round 1: *5 dc in next loop, skip 2 loops, 1 sc in next loop; repeat from *.\n"
    text = f"terms: us\n{below}round 2: 1 sc in each st, missing the sc.\n"
    assert _codes(text) == ["exception-in-words"]
    assert _codes(text.replace("each st,", "each dc,")) == []


def test_a_long_name_of_which_only_parts_are_known_is_not_two_stitches() -> None:
    text = "terms: early\ntc means us tr\nlong means us dc\nround 1: 3 long tc in each loop.\n"
    assert _codes(text) == ["unknown-word"]


def test_a_corner_is_left_out_with_all_that_is_worked_in_it() -> None:
    text = "terms: us\nround 1: 5 dc in each loop; turn at the corner with 2 dc, 3 ch, 2 dc.\n"
    assert _codes(text) == ["corners-left-out"]
    assert _written(text) == "round 1: 5 dc in each loop."


def test_chains_in_words_in_a_copy_are_changed() -> None:
    rows = "round 1: *ch 5, skip 3, 1 sc; repeat from *.\n"
    text = f"terms: us\n{rows}round 2: Like the 1st, except that 7 chain are worked instead of 5.\n"
    assert _written(text) == "round 2: as round 1, but with ch 7 instead of ch 5."


def _codes(text: str) -> list[str]:
    return [f.code for f in read_border(Source("book.border", text))[1]]


def test_what_is_told_behind_a_step_is_not_made_once_more() -> None:
    row = "round 1: 7 dc in each loop; viz., 3 dc, ch 3, 4 dc."
    assert _codes(f"terms: us\n{row}\n") == ["not-understood"]


def test_no_chain_between_some_is_an_exception() -> None:
    row = "round 2: 1 dc in each dc, with ch 1 between, and no chain between the groups."
    text = f"terms: us\nround 1: *3 dc in next loop; repeat from *.\n{row}\n"
    assert _codes(text) == ["exception-in-words"]


def _written(text: str) -> str:
    border, _ = read_border(Source("book.border", text))
    assert border is not None
    return write_border(border).splitlines()[-1]


def test_a_name_that_is_spelt_with_a_blank_leaves_another_word_alone() -> None:
    text = "terms: us\ns t means hdc\nround 1: 1 s t in 3d st, skip 2 sts; repeat.\n"
    assert _written(text) == "round 1: 1 hdc in 3rd st, skip 2 st; repeat."


def test_a_chain_to_begin_with_behind_a_remark_is_not_of_the_figure_above() -> None:
    figure = "shell = 5 dc, ch 3, 5 dc"
    text = f"terms: us\n{figure}\n-- Fern edging --. Ch 40.\nround 1: shell in next st.\n"
    assert _written(text) == "round 1: (5 dc, ch 3, 5 dc) in next st."
    assert _codes(text) == ["foundation-named"]


def test_a_line_that_repeats_rows_has_no_number_where_the_next_row_has_it() -> None:
    rows = "round 1: 1 dc in each loop.\nround 2: 1 sc in each dc.\n"
    again = "Repeat from the first row for the length required.\n"
    border, told = read_border(
        Source("book.border", f"terms: us\n{rows}{again}round 3: 1 dc in each sc.\n")
    )
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,), (2,), (3,)]
    assert [f.code for f in told] == ["rows-again"]


def test_every_loop_over_small_holes_is_asked() -> None:
    rows = "round 1: 1 dc, 2 ch, miss 2; repeat.\nround 2: sc in every loop.\n"
    assert _codes(f"terms: early\n{rows}") == ["place-assumed"]
    assert _codes(f"terms: us\n{rows}") == ["place-assumed"]
    assert _codes(f"terms: early\nloop means st\n{rows}") == []
    assert _codes(f"terms: early\n{rows.replace('2 ch', '5 ch')}") == []
