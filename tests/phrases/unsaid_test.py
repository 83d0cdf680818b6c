"""Places that a text names by half: `in the next`, `in last`, `in the same`."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, BLOCKS, FIVES, SIXES, STITCHES, On, cases, said

NEXT = {
    # the noun of the place before, and not the stitch that is made
    "4 treble in loop, 4 treble in the same, 1 plain in the next; repeat": (
        "48 dc, 6 sc; 6 x 2 space"
    ),
    "4 treble in loop, 2 chain, 4 treble in the same, 1 plain in the next; repeat": (
        "48 dc, 6 sc, 12 ch; 6 x 2 space"
    ),
    "1 plain in next space, 3 chain, 1 plain in the next one, 2 chain; repeat": (
        "12 sc, 30 ch; 6 x 2 space"
    ),
    # behind chains that are missed, the stitch there
    "5 chain, miss 3 ch, 1 plain in next; repeat": "12 sc, 60 ch; 12 x 3 ch",
    "1 plain in next ch, miss 1 ch, 1 plain in next, miss 1; repeat": "24 sc; 12 x 3 ch",
}
NEXT_IN_BLOCKS = {
    "miss 3 ch, 3 treble in next; repeat": "18 dc; 6 x 3 ch",
}


@cases((ARCHES, NEXT), (BLOCKS, NEXT_IN_BLOCKS))
def test_the_next_has_the_noun_of_what_was_worked_into(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


LAST = {
    "*3 treble in next loop, 2 chain; repeat from *; 1 treble in last": (
        "37 dc, 24 ch; 12 x 1 space; asked place-assumed"
    ),
    "*1 treble in next loop, 2 chain; repeat from * to last loop; 1 treble in last": (
        "12 dc, 22 ch; 11 x 1 space"
    ),
    "*3 treble in next loop, 2 chain; repeat from * to last loop; 3 treble in last": (
        "36 dc, 22 ch; 11 x 1 space"
    ),
    "*1 treble in next loop, 2 chain; repeat from * to last loop; 1 treble in the last one": (
        "12 dc, 22 ch; 11 x 1 space"
    ),
}


@cases((ARCHES, LAST))
def test_one_stitch_in_last_behind_several_is_the_last_stitch(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


BEGUN = {
    "begin in a loop, 3 treble in same loop, 1 plain in next loop; repeat": (
        "18 dc, 6 sc; 6 x 2 space"
    ),
    "slip along to the middle of first loop, 1 plain in it, 5 chain, 1 plain in next loop; repeat": (
        "12 sc, 30 ch; 6 x 2 space; asked perhaps-shared"
    ),
    "fasten on in a loop, 1 plain in same, 5 chain, 1 plain in next loop; repeat": (
        "12 sc, 30 ch; 6 x 2 space; asked perhaps-shared"
    ),
    "begin in a loop, *3 treble in same loop, 3 chain; repeat": "36 dc, 36 ch; 12 x 1 space",
    "begin in a loop, 3 treble in same loop, 3 chain, *1 plain in next loop, 3 chain; repeat": (
        "3 dc, 11 sc, 36 ch; 11 x 1 space"
    ),
}


@cases((ARCHES, BEGUN))
def test_a_repeat_back_to_where_the_row_begins_goes_into_the_next_each_time(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


UNDER = {
    "5 chain, miss 1 loop under next loop 1 plain; repeat": "6 sc, 30 ch; 6 x 2 space",
    "3 chain, miss the plain under the 3 chain 3 treble; repeat": "36 dc, 36 ch; 12 x 1 sc",
    "3 chain, miss 1 plain under them, 3 treble in next loop; repeat": ("36 dc, 36 ch; 12 x 1 sc"),
}


@cases((ARCHES, UNDER))
def test_a_stitch_under_what_comes_behind_a_skip_has_that_place(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


NUMBERED_IN_BLOCKS = {
    "3 chain, 1 plain in centre of 3 treble, 3 chain, 1 plain in centre of next 3; repeat": (
        "6 sc, 18 ch; 3 x 2 3-dc run"
    ),
    "3 chain, 1 plain in the 2nd of next 3; repeat": (
        "6 sc, 18 ch; 6 x 1 ch-3 space; asked place-assumed"
    ),
    "1 plain in the first treble of one group, miss 1, 1 plain in the third, 5 chain; repeat": (
        "12 sc, 30 ch; 6 x 1 group"
    ),
    "1 plain in the 1st treble of a group, 3 chain, 1 plain in the third, 5 chain; repeat": (
        "12 sc, 48 ch; 6 x 1 group"
    ),
    "1 plain between 1st and 2nd treble, 3 chain, 1 plain between 2nd and 3rd treble; repeat": (
        "12 sc, 18 ch; 6 x 3 dc; asked place-assumed; asked perhaps-counted-on; asked "
        "perhaps-shared"
    ),
}
NUMBERED_IN_SIXES = {
    "*1 plain between 1st and 2nd treble, 3 chain, 1 plain between 3rd and 4th treble; repeat": (
        "18 sc, 27 ch; 9 x 4 dc; asked place-assumed; asked perhaps-counted-on"
    ),
}


@cases((BLOCKS, NUMBERED_IN_BLOCKS), (SIXES, NUMBERED_IN_SIXES))
def test_a_number_is_of_what_the_row_names_before_it(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


PARTS_IN_ARCHES = {
    "3 treble together, one in each of 3 loops, 5 chain; repeat": "4 dc, 20 ch; 4 x 3 space",
    "5 treble in one chain loop, 1 plain in next chain loop; repeat": ("30 dc, 6 sc; 6 x 2 space"),
    "1 plain round both loops, 5 chain; repeat": (
        "12 sc, 60 ch; 12 x 1 space; asked place-assumed"
    ),
}
PARTS_IN_FIVES = {
    "1 plain in each 3rd ch of 5, with 5 chain between": "6 sc, 30 ch; 6 x 1 ch-5 space",
    "1 plain in each 3rd ch of the 5 ch, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 ch-5 space",
    "5 chain, 1 plain in the centre of the next loop; repeat": "6 sc, 30 ch; 6 x 1 space",
}


@cases((ARCHES, PARTS_IN_ARCHES), (FIVES, PARTS_IN_FIVES))
def test_a_part_of_each_and_what_is_worked_together(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


NOT_SAID = (
    "1 plain in both chains",
    "1 plain over both chains and plain",
    "1 plain in centre of next",
)


@pytest.mark.parametrize("step", NOT_SAID)
def test_both_of_what_and_the_centre_of_what_is_for_her_to_say(step: str) -> None:
    assert "asked not-understood" in said(f"5 chain, {step}; repeat", ARCHES).split("; ")


ASKED_IN_FIVES = {
    "1 plain in loop, 3 chain, 5 treble in next loop, 3 chain, 1 plain in next loop; repeat": (
        "4 sc, 10 dc, 12 ch; 2 x 3 space; asked perhaps-shared"
    ),
    "plain in loop, 5 chain, plain in same loop, 5 chain, plain in next loop, repeat all round": (
        "9 sc, 30 ch; 3 x 2 space; asked perhaps-shared"
    ),
}
ASKED_IN_BLOCKS = {
    "1 plain in loop, 5 chain, 1 plain in next loop, 5 chain, 1 plain in next, and so on": (
        "6 sc, 20 ch; 2 x 3 space; asked perhaps-shared"
    ),
}
ASKED_IN_ARCHES = {
    "1 plain in loop, 4 chain, 1 single back in plain, 3 chain; repeat": (
        "12 sc, 12 ss, 84 ch; 12 x 1 space; asked perhaps-picot"
    ),
    "1 plain in loop, 4 chain, 1 single in the plain, 3 chain; repeat": (
        "12 sc, 12 ss, 84 ch; 12 x 1 space; asked perhaps-picot"
    ),
    "3 plain in loop, 4 chain, 1 single in the third plain, 3 plain in same loop; repeat": (
        "24 sc, 4 ss, 16 ch; 4 x 3 space; asked perhaps-picot"
    ),
    "1 plain in next loop, 5 chain, 1 plain in the plain, 3 chain; repeat": (
        "24 sc, 96 ch; 12 x 1 space"
    ),
}
ASKED_IN_STITCHES = {
    "*3 plain, (5 chain, 1 plain in the same place) twice; repeat": (
        "20 sc, 40 ch; 4 x 3 st; asked perhaps-picot"
    ),
    "*3 plain, (3 chain, 1 plain in next stitch) 3 times; repeat": "12 sc, 18 ch; 2 x 6 st",
}


@cases(
    (FIVES, ASKED_IN_FIVES),
    (BLOCKS, ASKED_IN_BLOCKS),
    (ARCHES, ASKED_IN_ARCHES),
    (STITCHES, ASKED_IN_STITCHES),
)
def test_what_may_be_one_stitch_of_two_repeats_or_a_picot_is_asked(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to
