"""Rows that turn inside themselves: scallops thrown back over what was just worked."""

from __future__ import annotations

import pytest
from phrases.said import FIVES, On, cases, said

from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border

NEIGHBOURS = On(
    12,
    (
        "1 plain in each loop",
        "*6 plain, turn, 6 ch, 1 single in the first of the 6 plain, turn, 9 plain in the 6 ch; "
        "repeat from *",
    ),
)
"""Twelve sc, an arch of nine over each six of them, and nothing between the arches."""

PARTED = On(
    6,
    (
        *FIVES.below,
        "4 plain in next loop, turn, 5 ch, 1 single in 3rd plain from the hook, turn, 7 plain in "
        "the loop, 2 plain in the rest of the loop; repeat",
    ),
)
"""In each of six loops one sc, an arch of seven over three more, and two sc behind it."""

FASTENED = {
    "*4 plain in next loop, turn, 6 ch, 1 single in 4th plain from hook, turn, 9 plain in it; repeat "
    "from *": "78 sc, 6 ss, 36 ch; 6 x 1 space",
    "*3 plain in next 5 chain, 3 plain in next, turn the work and make 9 chain, 1 single on the 2nd "
    "of the first 3 plain, turn again and make over the chain 3 plain, 1 picot, 3 plain; repeat": (
        "36 sc, 3 ss, 27 ch, 3 picot; 3 x 2 ch-5 space"
    ),
    "*6 plain over the next 5 chain, 3 plain over the next; turn, 6 chain, 1 single in the 3rd of "
    "the 6 plain, turn; 3 plain, 1 picot, 3 plain over 6 chain, 3 plain over rest of unfilled loop; "
    "repeat for length": "54 sc, 3 ss, 18 ch, 3 picot; 3 x 2 ch-5 space",
    "4 plain in next loop, turn, 5 ch, slip-stitch to the first of these 4 plain, turn, 7 plain in "
    "the 5 ch, 2 plain in the rest of the loop; repeat": "78 sc, 6 ss, 30 ch; 6 x 1 space",
    "4 plain in next loop, 5 ch, turn, fasten with a single to the first of the 4 plain, turn, 7 "
    "plain in ch 5, 2 plain to fill the half-filled loop; repeat": (
        "78 sc, 6 ss, 30 ch; 6 x 1 space"
    ),
    "*8 plain in next loop, 4 plain in next loop, turn, 8 ch, 1 single in the 4th plain of the "
    "first loop, turn, 11 plain in the 8 ch, 4 more plain in the half-filled loop; repeat from *": (
        "81 sc, 3 ss, 24 ch; 3 x 2 space"
    ),
    "*7 plain in next loop, 4 plain in next loop, turn, 7 ch, fasten back with a single to the "
    "middle of the first 7 plain, turn; into the loop 3 plain, 5 ch, 3 plain; 3 plain to fill up "
    "the half loop. Repeat from *": "60 sc, 3 ss, 36 ch; 3 x 2 space",
    "*3 plain in each of 3 loops, ch 7, turn, fasten back in 5th plain from hook, turn, 9 plain in "
    "loop; repeat from *": "36 sc, 2 ss, 14 ch; 2 x 3 space; asked fastening-assumed",
    "*5 long in next loop, turn back with 5 ch to the first of these 5, turn, 3 long, 5 ch, 3 long "
    "under the chain, 2 long in the same loop; repeat from *": (
        "78 dc, 6 ss, 60 ch; 6 x 1 space; asked fastening-assumed; asked perhaps-one-place"
    ),
    "*5 plain in next loop, turn the work, 5 ch, 1 plain in the first of the 5 plain, turn again, "
    "and over this loop make 2 plain, picot, 2 plain, picot, 2 plain, then 2 plain in remainder of "
    "loop; repeat from *": "84 sc, 30 ch, 12 picot; 6 x 1 space",
}

MET_NEXT = {
    "*1 plain in each of next 9 plain; repeat from *": "18 sc; 2 x 9 sc",
    "*miss 2, (1 plain, 3 ch) 5 times, miss 2; repeat from *": "10 sc, 30 ch; 2 x 9 st",
    "1 plain in the centre of each group": "2 sc; 2 x 1 group",
}
PARTED_NEXT = {
    "3 plain in 4th st of each group of 7": "18 sc; 6 x 1 group of 7",
    "*1 plain in next plain, miss 7, 1 plain in each of next 2 plain; repeat from *": (
        "18 sc; 6 x 10 sc"
    ),
}

FIRST_EIGHT = {
    "4 plain in next loop, 4 ch, 4 plain in same loop, 4 plain in next loop": 9,
    "4 plain in next loop, 4 ch, 4 plain in same loop, 8 plain in next loop": 13,
    "8 plain in next loop, 8 plain in next loop": 13,
    "4 plain in next loop, 4 plain in next loop": 5,
}

ASKED = {
    "in the middle of a row": (
        "*4 plain in next loop, turn, 6 ch, miss 3, 1 single, turn, 9 plain in the loop; "
        "repeat from *",
    ),
    "which of the stitches": (
        "*4 plain in next loop, 4 plain in next loop, turn, 6 ch, 1 single in first of the 4 "
        "plain, turn, 9 plain in the loop; repeat from *",
        "*4 plain in next loop, turn, 6 ch, 1 single in 5th plain from hook, turn, 9 plain in"
        " the loop; repeat from *",
        "*4 plain in next loop, turn, 6 ch, 1 single in 5th of the 4 plain, turn, 9 plain in "
        "the loop; repeat from *",
        "*4 plain in next loop, turn, 6 ch, 1 single in the middle of the 4 plain, turn, 9 "
        "plain in the loop; repeat from *",
    ),
    "over none": (
        "*6 plain in next loop, 4 plain in next loop, turn, 6 ch, 1 single in 4th plain of "
        "the last loop, turn, 9 plain in the loop; repeat from *",
    ),
    "both sides": (
        "*4 plain in next loop, 2 ch, turn, 6 ch, 1 single in 4th plain from hook, turn, 9 "
        "plain in the loop; repeat from *",
    ),
    "cannot be read": (
        "*4 plain in next loop, turn, 6 ch, 1 single in 4th plain from hook, turn, 3 ch, 9 "
        "long in the loop; repeat from *",
    ),
    "in the same repeat": (
        "4 plain in next loop; *turn, 6 ch, 1 single in 4th st from hook, turn, 9 plain in "
        "the loop, 4 plain in next loop; repeat from *",
    ),
}
"""By what is told of them. Of the first the miss hides what is fastened."""


@cases((FIVES, FASTENED), (NEIGHBOURS, MET_NEXT), (PARTED, PARTED_NEXT))
def test_a_row_that_turns_inside_itself(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize("row", [row for rows in ASKED.values() for row in rows])
def test_what_cannot_be_told_is_asked(row: str) -> None:
    """Which stitch is meant, what lies under the chains, or what fills them."""
    text = f"{FIVES.headings}round 1: {FIVES.below[0]}.\nround 2: {row}.\n"
    border, told = read_border(Source("book", text))
    assert border is not None
    _, more = read_rounds(border, lambda source, name: None)
    message = next(f.message for f in (*told, *more) if f.code == "turn-inside")
    assert next(words for words in ASKED if row in ASKED[words]) in message


def test_chains_fastened_back_and_not_filled_are_no_such_arch() -> None:
    row = "*4 plain in next loop, turn, 6 ch, 1 single in 4th plain from hook, turn; repeat from *"
    assert "asked not-understood" in said(row, FIVES)


def test_a_stitch_of_this_row_named_behind_an_arch_is_asked_about() -> None:
    """`in the last of the 5`: of those made before the turn, or of the row below?"""
    row = (
        "*5 plain in next loop, turn, 4 ch, 1 single in first of the 5 plain, turn, 6 plain in the "
        "loop, 1 single in last of the 5 plain; repeat from *"
    )
    assert "asked place-unclear" in said(row, FIVES)


@pytest.mark.parametrize(("steps", "number"), FIRST_EIGHT.items())
def test_the_first_so_many_may_be_the_first_steps_together(steps: str, number: int) -> None:
    row = f"{steps}, turn, 6 ch, 1 single in {{}}, turn, 8 plain in the loop"
    named, counted = (
        said(f"*{row.format(place)}; repeat from *", FIVES)
        for place in ("the 4th of the first 8 plain", f"{number}th st from hook")
    )
    assert named == counted
    assert "turn-inside" not in named


def test_the_last_steps_are_no_first_so_many() -> None:
    row = "5 plain in next loop, 4 plain in next loop, 4 plain in next loop, turn, 6 ch, 1 single in the 4th of "
    assert "turn-inside" in said(
        f"*{row}the first 8 plain, turn, 8 plain in the loop; repeat", FIVES
    )
