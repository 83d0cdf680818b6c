"""Copied rows with something otherwise, in the words of the books."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, FIVES, HEADINGS, PICOTS, On, cases, last_of, said

from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Text
from border.text.written import write_text

ARCHED = On(12, (*ARCHES.below, "*1 plain in next loop, 5 chain; repeat"))
"""Twelve arches of 5 chains on twelve."""

SHELLS = (
    "round 1: 1 plain in each loop, with 3 chain between.\n"
    "round 2: *(3 treble, 2 chain, 3 treble) in next loop; 1 plain in next loop; repeat.\n"
    "round 3: *1 plain in next loop, 3 chain, 1 plain in next plain, 3 chain; repeat.\n"
)
"""Six shells of 3 and 3 treble, with 6 plain between, and twelve arches on them."""

CHAINS = dict.fromkeys(
    (
        "as the 2nd, but with 7 chain instead of 5",
        "like the 2nd, with 7 ch instead of 5 ch",
        "same as the last, only making 7 chain in place of 5",
        "same as last, but 7 ch. instead of 5.",
        "the same, but with a chain of 7 instead of 5",
        "as before, with 7 chain each time in lieu of 5",
        "work as in 2nd row; instead of 5 chain make 7",
        "as the 2nd, but with 7 chain",
        "as the 2nd, but 7 chain always",
        "as the 2nd, with 7 chain instead",
        "like 2nd, with 7 chain between instead of 5",
        "exactly like the 2nd, except that 7 chain instead of 5",
    ),
    "12 sc, 84 ch; 12 x 1 space",
)
SHELLED = {
    "as the 2nd, but with 5 treble instead of 3": "60 dc, 6 sc, 12 ch; 6 x 2 space",
    "as the 2nd, but with 3 chain between instead of 2": "36 dc, 6 sc, 18 ch; 6 x 2 space",
    "as the 2nd, with 5 treble in the shells instead of 3": "60 dc, 6 sc, 12 ch; 6 x 2 space",
    "as the 2nd, with 4 treble instead of 3 and 1 chain instead of 2": (
        "48 dc, 6 sc, 6 ch; 6 x 2 space"
    ),
    "as the 2nd, omitting the 2 chain": "36 dc, 6 sc; 6 x 2 space",
    "as the 2nd, with no chain between": "36 dc, 6 sc; 6 x 2 space",
    # those inside the shells are none that stand between shells; one alone may be either
    "as the 2nd, with 1 chain between the shells": "36 dc, 6 sc, 12 ch; 6 x 2 space; asked difference-finds-nothing",
    "as the 2nd, with 1 chain between": "36 dc, 6 sc, 12 ch; 6 x 2 space; asked difference-unclear",
    "as the 2nd, with 1 chain between instead of 2": "36 dc, 6 sc, 6 ch; 6 x 2 space",
    # two rows back
    "as the last row but one": "36 dc, 6 sc, 12 ch; 6 x 2 space",
    "the same as the last but one": "36 dc, 6 sc, 12 ch; 6 x 2 space",
    "like the row before the last": "36 dc, 6 sc, 12 ch; 6 x 2 space",
    "as the 2nd, leaving out the 2 chain, making 4 treble in place of 3": (
        "48 dc, 6 sc; 6 x 2 space"
    ),
    "as the 2nd, with 5 treble on each side of the 2 chain instead of 3": (
        "60 dc, 6 sc, 12 ch; 6 x 2 space"
    ),
}
"""As the round of shells, on arches."""


@cases((ARCHED, CHAINS))
def test_so_many_chains_instead_of_so_many(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(("row", "comes_to"), SHELLED.items())
def test_shells_with_something_otherwise(row: str, comes_to: str) -> None:
    assert last_of(f"{SHELLS}round 4: {row}.") == comes_to


PICOTED = {
    "as 1st, omitting the picots": "12 sc, 18 ch; 6 x 1 loop",
    "as 1st, with 3 picots instead of 1": "12 sc, 18 ch, 18 picot; 6 x 1 loop",
    "as 1st, with picots of 5 chain instead of 3": "12 sc, 18 ch, 6 picot; 6 x 1 loop",
    "as 1st, without the picots, but with 1 chain instead of 3": "12 sc, 6 ch; 6 x 1 loop",
}


@pytest.mark.parametrize(("row", "comes_to"), PICOTED.items())
def test_picots_otherwise(row: str, comes_to: str) -> None:
    below = PICOTS.below[0]
    text = f"round 1: {below}.\nround 2: 1 plain in each picot, with 2 chain between.\n"
    assert last_of(f"{text}round 3: {row}.", PICOTS).replace("space", "loop") == comes_to


def test_chains_that_stand_for_the_first_stitch_go_with_those_behind_them() -> None:
    first = "1st row: 3 chain, 2 treble, *1 chain, miss 1, 3 treble; repeat.\n"
    text = f"{first}2nd row: 1 plain in each.\n3rd row: as 1st"
    back = "asked perhaps-leads-back"  # of the row, and of its copy
    told = f"asked start-chain-assumed; {back}; {back}"
    assert last_of(text, On(11)) == f"9 dc, 2 ch; 2 x 4 st; {told}"
    otherwise = "but with 5 treble instead of 3"
    assert last_of(f"{text}, {otherwise}.", On(11)) == f"10 dc, 1 ch; 1 x 6 st; {told}"


UNCLEAR = {
    # chains that may be those at the head or before the turn, or a picot's
    "5 chain, *miss 2, 1 treble in next, 5 chain; repeat|with 7 chain instead of 5": True,
    "5 chain, *miss 2, 1 treble in next, 2 chain; repeat|with 3 chain instead of 2": False,
    "*1 plain in next, 3 chain, picot, 3 chain; repeat|with 4 chain instead of 3": True,
    "*1 plain in next, 3 chain, picot, 3 chain; repeat|with 4 chain between instead of 3": False,
    "*1 treble in next, 3 chain, miss 1; repeat; 3 chain, turn|with 5 chain instead of 3": True,
    # which of several
    "*1 plain in next, 3 chain, 1 plain in next, 5 chain; repeat|with 7 chain": True,
    "*1 plain in next, 3 chain, 1 plain in next, 5 chain; repeat|with 7 chain instead of 3": False,
    "*(2 treble, 2 chain, 2 treble) in next, 2 chain; repeat|with 1 chain between instead of 2": True,
    "*(2 treble, 2 chain, 2 treble) in next, 2 chain; repeat|with 1 chain instead of 2": False,
    "*(3 treble, 1 chain, 3 treble) in next; repeat|with 5 treble in the shells": True,
    # what is left out, and what it stood on
    "*1 plain in next, 8 treble in next; repeat|leave out the 8 treble": True,
    "*1 plain in next, 2 chain; repeat to last 1 st, 8 treble in last|leave out the 8 treble": False,
    "*(1 plain, 8 treble, 1 plain) in next; repeat|leave out the 8 treble": False,
    # one by one, together, with the chains at the head
    "*1 treble in each of next 3, 1 chain; repeat|with 5 treble instead of 3": True,
    "*3 treble over the next 3 st, 1 chain; repeat|with 5 treble instead of 3": True,
    "*3 treble, 1 chain; repeat|with 5 treble instead of 3": False,
    "*3 treble together over next 3 st, 1 chain; repeat|with 5 treble instead of 3": True,
    "ch 3 as treble, 2 treble in first, *3 treble in next; repeat|with 1 treble instead of 3": True,
    # two that would change the same
    "*1 plain in next, 3 chain; repeat|with 4 chain instead of 3 and 5 chain instead of 3": True,
}


@pytest.mark.parametrize(("rows", "unclear"), UNCLEAR.items())
def test_what_may_be_meant_in_two_ways_is_asked(rows: str, unclear: bool) -> None:
    first, otherwise = rows.split("|")
    said = last_of(f"1st: {first}.\n2nd: as 1st, {otherwise}.\n", On(24))
    assert ("asked difference-unclear" in said.split("; ")) is unclear
    assert "difference-finds-nothing" not in said


NO_DIFFERENCES = (
    "as 1st, but with 5 spaces", "as 1st, but with 7 chain in the loops", "as 1st, but 3 plain",
    "as 1st, but with 7 chain instead of 3 at the corners", "as 1st, with 7 chain instead of 3 treble",
    "as 1st, but fasten to the picots",
)  # fmt: skip


@pytest.mark.parametrize("row", NO_DIFFERENCES)
def test_what_cannot_be_said_exactly_is_told(row: str) -> None:
    text = f"1st: *1 plain in next, 3 chain; repeat.\n2nd: {row}.\n"
    assert "asked exception-in-words" in last_of(text).split("; ")


REMARKS = (
    "as 1st until the lace is the length wished for", "as 1st for the length required",
    "repeat 1st row for as many rows as required", "the same as 1st, beginning again at the same end",
    "like the 1st, beginning again on the right side", "repeat the 1st row as often as you like",
    "repeat the last row till long enough",
)  # fmt: skip


@pytest.mark.parametrize("row", REMARKS)
def test_how_long_it_goes_on_is_a_remark(row: str) -> None:
    text = f"1st: 1 plain in each.\n2nd: {row}.\n"
    assert last_of(text) == "12 sc; 12 x 1 st; asked taken-as-remark"


@pytest.mark.parametrize(
    "copy",
    [
        "as 1st, with white",
        "White. Same as last",
        "Light wool, same as 1st row",
        "the same, in blue",
    ],
)
def test_a_colour_changes_nothing_in_a_copy(copy: str) -> None:
    text = f"1st: *1 plain in next, 3 chain; repeat.\n2nd: {copy}.\n"
    assert last_of(text) == last_of(text.replace(copy, "as 1st"))


MESH = On(12, ("1 treble in each loop", "*1 treble in next treble, 2 chain, miss 2; repeat"))
"""Four treble with 2 chains behind each, on twelve treble."""

SAID_OUT = {
    "the same as the first, that is, 1 treble on the treble, and 2 under the chain": (
        "12 dc; 4 x 1 dc; asked perhaps-this-part"
    ),
    "like 1st, viz., 3 treble in each space": "12 dc; 4 x 1 space; asked perhaps-this-part",
    "like 2nd, i.e. *1 treble on treble, 3 chain; repeat": (
        "4 dc, 12 ch; 4 x 1 dc; asked perhaps-this-part"
    ),
    "like 2nd, namely, 1 treble on treble, 2 chain, turn": (
        "4 dc, 8 ch; 4 x 1 dc; asked perhaps-this-part"
    ),
    # it is not the row that is said, if that makes something else
    "like 2nd, that is, 1 plain on treble, 2 chain": "4 dc, 8 ch; 4 x 1 dc; asked exception-in-words",
    "like 2nd, that is, 1 treble on treble": "4 dc, 8 ch; 4 x 1 dc; asked exception-in-words",
}
CLAIMED = {
    "as 2nd row, but there will be 4 spaces": "4 dc, 8 ch; 4 x 1 dc",
    "as 2nd row, with 3 chain, there being 4 spaces": "4 dc, 12 ch; 4 x 1 dc",
    "as 2nd, but there will be 5 spaces": "4 dc, 8 ch; 4 x 1 dc; asked count-disagrees",
    "as 2nd; you should have 5 spaces in all": "4 dc, 8 ch; 4 x 1 dc; asked count-disagrees",
}
ALIKE = dict.fromkeys(
    (
        "work in the same manner, with blue",
        "in the same way",
        "in just the same way as the 2nd row",
    ),
    "4 dc, 8 ch; 4 x 1 dc",
)


@cases((MESH, SAID_OUT), (MESH, CLAIMED), (MESH, ALIKE))
def test_what_else_is_said_of_a_copied_row(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


LAST = """1st row: 1 treble in each loop.
2nd row: *1 treble in next treble, 1 chain; repeat from * to last 1 st; 1 plain in last treble.
3rd row: 5 plain in next space, 1 plain in each treble.
"""
LAST_PUT = dict.fromkeys(
    (
        "like the 2nd, but the plain at the end is put into the last plain",
        "as the 2nd row; but work the plain at the end of the row in the last plain",
        "same as 2nd, the last plain being worked in the last plain",
        "like 2nd, working the last plain in last st",
    ),
    "perhaps-this-part",
) | dict.fromkeys(
    (
        # not its last stitch, not one stitch, not one place, and something more
        "like 2nd, but the treble at the end is put into the last plain",
        "like 2nd, but the last 2 plain in the last plain", "like 2nd, but the last plain in each plain",
        "like 2nd, but the last plain in the last plain, 3 chain", "as 1st, but the last treble in the last plain",
    ),
    "exception-in-words",
)  # fmt: skip


@pytest.mark.parametrize(("row", "asked"), LAST_PUT.items())
def test_the_last_stitch_of_a_copied_row_elsewhere(row: str, asked: str) -> None:
    border, told = read_border(Source("book", f"{HEADINGS}{LAST}4th row: {row}.\n"))
    assert border is not None
    assert {f.code for f in told} & {"perhaps-this-part", "exception-in-words"} == {asked}
    if asked == "perhaps-this-part":
        text = border.rows[-1].body
        assert isinstance(text, Text)
        assert write_text(text, "us").endswith((", 1 sc in last sc", ", 1 sc in last st"))


FIVES_AGAIN = On(6, (*FIVES.below, "1 plain in next plain, 5 chain; repeat"))
FASTENED = dict.fromkeys(
    (
        "as 2nd, only fastening in the spaces", "like the 2nd, but fasten in the next space",
        "as 2nd, fastened in each space", "as 2nd, uniting the chains in the next space",
    ),
    "6 sc, 30 ch; 6 x 1 space",
)  # fmt: skip


@cases((FIVES_AGAIN, FASTENED))
def test_fastening_is_the_one_low_stitch_that_a_row_makes(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_fastening_is_asked_where_a_row_makes_several_stitches() -> None:
    on = On(6, (*FIVES.below, "1 plain in next plain, 3 treble in next space; repeat"))
    assert "asked exception-in-words" in said("as 2nd, fastening in the next treble", on)


@pytest.mark.parametrize(
    "besides",
    ["working the 3 treble in the plain also", "but also working the treble in the plain"],
)
def test_what_is_worked_besides_is_not_moved(besides: str) -> None:
    assert "asked exception-in-words" in last_of(f"{SHELLS}round 4: as round 2, {besides}.\n")
