"""Rows of later books and magazines: what is missed between so many, what the third is the third
of, firsts and lasts of rows to and fro, spaces told in a bracket, what is repeated in the next three.
"""

from __future__ import annotations

from phrases.said import HEADINGS, STITCHES, On, cases, said

from border.findings import Finding
from border.questions.asking import questions
from border.showing.telling import in_order
from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.working.work import work
from border.yoke.edges import Edge

SEVEN = On(7, ("1 plain in each loop",))
NINE = On(9, ("1 treble in each loop",))
TEN = On(10, ("1 treble in each loop",))
ELEVEN = On(11, ("1 treble in each loop",))
THIRTY_TWO = On(32, ("1 treble in each loop",))
SCALLOPS = On(
    12,
    (
        "1 plain in next loop, 2 chain, (1 treble, 1 chain) 6 times in next loop, "
        "1 treble in same loop, 2 chain; repeat",
    ),
)
GROUPS = On(12, ("(5 treble in next loop, 1 plain in next loop); repeat",))
LOOPED = On(6, ("1 plain in next loop, 5 chain; repeat",))
TO_AND_FRO = On(
    13,
    (
        "1 treble in each of next 4, 5 chain, miss 2, 1 plain, 5 chain, miss 2, "
        "1 treble in each of next 4",
    ),
    closed=False,
)
TWO_ROWS = On(
    13,
    (
        "1 treble in each of next 4, 5 chain, miss 2, 1 plain, 2 chain, miss 2, "
        "1 treble in each of next 4",
        "1 treble in each of next 4 treble, 6 chain, 1 plain on plain, 5 chain, "
        "1 treble in next treble, 3 treble on 3 treble",
    ),
    closed=False,
)
HOLES = On(13, ("1 treble, (3 chain, miss 3, 1 treble) 3 times",), closed=False)
HEAPED = On(6, ("1 plain in next loop, 9 plain in next loop; repeat",))
SHELLS = On(
    12,
    ("1 plain in next loop, 3 chain, (2 treble, 2 chain, 2 treble) in next loop, 3 chain; repeat",),
)
SPACES = On(37, ("12 spaces, turn",), closed=False)
SQUARES = On(13, ("1 block, 2 spaces, 1 block, turn",), closed=False)

MISSED_BETWEEN = {
    "(3 chain, 1 plain in next treble) 5 times, missing 1 treble between, 3 chain, 1 plain in last": "6 sc, 18 ch",
    "* 1 plain, 3 chain; repeat from * 4 times, always missing 1 treble, 1 treble in last": "5 sc, 1 dc, 15 ch",
    "* 1 plain, 3 chain; repeat from * once more, missing 1 treble between, 1 treble in last": "2 sc, 1 dc, 6 ch",
    "* 3 chain, 1 plain in next; repeat from *, missing 1 treble each time": "6 sc, 18 ch; 6 x 2 st",
}

ON_TEN = {
    "(3 chain, 1 plain in next treble) 5 times, missing 1 treble between, 3 chain, 1 plain in next treble": "6 sc, 18 ch; asked perhaps-missed",
}

ON_ELEVEN = {
    # chains that begin each time lie over what is missed
    "1 plain in first treble, * 3 chain, 1 plain in next treble, repeat from * 4 times, missing 1 treble each time": "6 sc, 15 ch",
}

ON_NINE = {
    "5 treble with 1 chain between, missing 1 treble between each": "5 dc, 4 ch",
    "5 treble in next 5 treble, missing 1 treble between each": "5 dc",
    "1 treble in each of next 5 treble, missing 1 treble between each": "5 dc",
}

ON_SEVEN = {
    # the 2nd each time is one missed between
    "* 3 chain, 1 plain in 2nd plain, repeat from * twice more, missing 1 plain between each, 3 chain, 1 plain in last": "4 sc, 12 ch; asked taken-as-remark",
}

ON_SCALLOPS = {
    "1 plain on plain, * 3 chain, 1 plain under one chain, repeat from * three times, 3 chain, 1 plain on the next plain; and continue thus": "18 sc, 45 ch; 3 x 2 sc; asked perhaps-shared",
}

ON_GROUPS = {
    "Slip along to the third treble of the group, 1 plain on third, 6 chain, * 1 plain on the third treble of next group, 6 chain; repeat": "6 sc, 36 ch; 5 x 1 group",
    "Sl st to 2nd treble of first group, 1 plain in 2nd, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 group",
    "Sl st to 2nd treble of next group, 1 plain in same, 6 chain; repeat": "6 sc, 36 ch; 6 x 1 group",
    "1 plain in 3rd treble of group, 6 chain, 1 plain in third, 6 chain; repeat": "6 sc, 36 ch; 3 x 2 group; asked perhaps-just-made",
    "1 plain in plain, 3 treble over the centre 3 of each 5 treble; repeat": "6 sc, 18 dc; 6 x 1 sc",
    "1 treble, 1 chain over each of the 5 treble, omitting the last chain, 1 plain on plain; repeat": "30 dc, 6 sc, 24 ch; 6 x 5 dc",
}

ON_THIRTY_TWO = {
    "3 trebles on 3 trebles, 2 chain, miss 2, 3 trebles, 2 chain and so on": "24 dc, 16 ch; 4 x 8 dc; asked perhaps-nothing-missed",
}

ON_LOOPED = {
    "3 treble, (5 chain, 1 plain in next) 5 times": "3 dc, 5 sc, 25 ch; does not close; asked perhaps-of-spaces; asked row-does-not-close",
    "1 plain in loop, 5 chain, 1 plain in same loop; repeat in next 5 loops": "12 sc, 30 ch",
    "* 7 plain in next loop; repeat from * in each of next 5 loops": "42 sc",
    "* 4 chain, 1 treble in the first of these, 1 plain in next plain; repeat": "6 dc, 6 sc, 24 ch; 6 x 1 space; asked perhaps-just-made",
}

ROWS = {
    "4 treble on 4 treble, 5 chain, 1 plain in 1st loop, 3 chain, 1 plain in next loop, 5 chain, 4 treble on 4 treble": "8 dc, 2 sc, 13 ch; asked not-at-the-head",
    "4 treble on 4 treble, 5 chain, miss 1 loop, 1 plain in plain, 5 chain, miss last loop, 4 treble on the 4 treble": "8 dc, 1 sc, 10 ch",
    "4 treble on 4 treble, 5 chain, miss 1st loop, 1 plain in next loop, 5 chain, 4 treble on the 4 treble": "8 dc, 1 sc, 10 ch; asked not-at-the-head",
}

ON_HOLES = {
    "3 chain, 1 treble in next space, 3 chain, 1 treble in next space, 3 chain, 1 treble in next space, 3 chain, 1 treble in last; turn": "5 dc, 9 ch; asked place-assumed; asked start-chain-assumed",
}

TURNED = {
    "1 treble, 2 chain, miss 2, and so on to the end of the row. 3 chain, turn": "4 dc, 8 ch; 4 x 3 st",
    "1 treble, 2 chain, miss 2, and repeat to the end of the row; 3 chain, turn": "4 dc, 8 ch; 4 x 3 st",
}

ON_SHELLS = {
    "1 treble in plain, 3 chain, shell, 3 chain; repeat": "30 dc, 48 ch; 6 x 1 sc; asked place-assumed; asked place-assumed",
    "Shells in shells with 3 chain between": "24 dc, 30 ch; 6 x 1 shell; asked place-assumed",
}

COPIED = {
    # the 4 dc are the same, said otherwise
    "4 treble on 4 treble, and finish as in 2nd row": "8 dc, 1 sc, 11 ch; asked perhaps-this-part",
    "4 treble on 4 treble, 9 chain, 1 plain on plain, then 5 chain, and work as in 2nd row to the end": "8 dc, 1 sc, 14 ch; asked perhaps-this-part",
}

ON_HEAPED = {
    "1 plain over each of 9 plain, miss the single plain; repeat": "27 sc; 3 x 10 sc",
}

ON_SQUARES = {
    "Ch 3, 3 treble in 3 treble, 2 sp, 4 treble in last 4 treble, turn": "9 dc, 4 ch; asked squares-assumed; asked squares-assumed; asked start-chain-assumed",
}

ON_SPACES = {
    "Ch 5 (for 1st sp), 2 sp, 7 tr, 7 sp": "17 dc, 20 ch; asked squares-assumed; asked squares-assumed; asked squares-assumed",
    "Ch 5 (1 sp), 11 sp": "13 dc, 24 ch; asked squares-assumed; asked squares-assumed",
    "Ch 5 (for a space), 4 tr, 10 sp": "15 dc, 22 ch; asked squares-assumed; asked squares-assumed",
}


@cases(
    (STITCHES, MISSED_BETWEEN),
    (TEN, ON_TEN),
    (ELEVEN, ON_ELEVEN),
    (NINE, ON_NINE),
    (SEVEN, ON_SEVEN),
    (SCALLOPS, ON_SCALLOPS),
    (GROUPS, ON_GROUPS),
    (THIRTY_TWO, ON_THIRTY_TWO),
    (LOOPED, ON_LOOPED),
    (TO_AND_FRO, ROWS),
    (HOLES, ON_HOLES),
    (STITCHES, TURNED),
    (HEAPED, ON_HEAPED),
    (SHELLS, ON_SHELLS),
    (TWO_ROWS, COPIED),
    (SQUARES, ON_SQUARES),
    (SPACES, ON_SPACES),
)
def test_rows_of_later_books(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def findings(text: str, on: On) -> list[Finding]:
    """All that is told of a text worked on an edge."""
    border, told = read_border(Source("book.border", f"{on.headings}{text}\n"))
    assert border is not None
    reading, more = read_rounds(border, lambda source, name: None)
    worked = work(reading, Edge("edge", on.closed, "loop", (), on.loops))
    asked = questions(reading, worked, (), misprints=False)
    return [*told, *more, *worked.findings, *asked]


def test_a_first_behind_other_steps_is_shown_as_next() -> None:
    row = "4 treble on 4 treble, 5 chain, 1 plain in 1st loop, 3 chain, 1 plain in next loop"
    told = findings(f"round 1: {TO_AND_FRO.below[0]}.\nround 2: {row}.", TO_AND_FRO)
    (help_,) = [f.help for f in told if f.code == "not-at-the-head"]
    assert (help_ or "").startswith('write "1 dc in next loop" if one of the row below is meant')


def test_a_first_one_missed_behind_other_steps_is_shown_as_one() -> None:
    row = "4 treble on 4 treble, 5 chain, miss 1st loop, 1 plain in next loop"
    told = findings(f"round 1: {TO_AND_FRO.below[0]}.\nround 2: {row}.", TO_AND_FRO)
    (help_,) = [f.help for f in told if f.code == "not-at-the-head"]
    assert (help_ or "").startswith('write "skip 1 loop"')


def test_the_gap_between_two_kinds_is_no_place() -> None:
    text = f"round 1: {SHELLS.below[0]}.\nround 2: 1 plain between plain and shell; repeat."
    told = [f.message for f in findings(text, SHELLS) if f.code == "not-understood"]
    assert told == ["what lies between two of different kinds is no place here"]


def test_a_shell_as_the_row_below_made_it_is_not_called_by_another_name() -> None:
    below = "3 long, ch 3, 3 long all in next loop, miss 5"
    row = "shell in shell, ch 2, 12 long under next ch 3"
    told = findings(f"round 1: {below}; repeat.\nround 2: {row}; repeat.", STITCHES)
    assert "names-alike" not in [f.code for f in told]


def test_the_likeliest_reading_of_a_round_comes_first() -> None:
    row = "Ch 6, miss 2, 1 treble in next, * ch 3, miss 2, 1 treble in next; repeat, ch 3, join"
    source = Source("book.border", f"{HEADINGS}round 1: {row}.\n")
    told = in_order(findings(f"round 1: {row}.", On(48)), {"book.border": source})
    helps = [f.help for f in told if f.code == "perhaps-read-so"]
    assert helps[0] == "write ch 3, skip 2"
    assert len(helps) > 1
