"""Chains between, where a row begins and ends, joins and turns; what is excepted."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, BLOCKS, STITCHES, On, cases, said

BETWEEN_STITCHES = {
    "1 treble in each stitch, 1 chain between": "12 dc, 12 ch; 12 x 1 st",
    "1 treble in each stitch with 1 chain between each": "12 dc, 12 ch; 12 x 1 st",
    "1 treble in every other stitch, 2 chain between each treble": "6 dc, 12 ch; 6 x 2 st",
    "1 plain in every third stitch, making 3 chain between": "4 sc, 12 ch; 4 x 3 st",
}
BETWEEN_ARCHES = {
    "1 plain in each loop, 5 chain between each": "12 sc, 60 ch; 12 x 1 space",
    "1 plain in each loop, 8 chain between": "12 sc, 96 ch; 12 x 1 space",
    "2 treble, with 2 chain between, in each loop": "24 dc, 24 ch; 12 x 1 space",
    "3 treble with 1 chain between the 2nd and 3rd in each loop": "36 dc, 12 ch; 12 x 1 space",
    "2 treble divided by 3 chain in each loop": "24 dc, 36 ch; 12 x 1 space",
    "3 treble, separated by 2 chain, in every loop": "36 dc, 48 ch; 12 x 1 space",
    "In each loop 2 treble, 3 chain between": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
}
BEGUN = {
    "begin on the 2nd; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "commence on the 3rd; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "fasten on the thread in the next stitch; *1 plain, 3 chain, miss 2; repeat": (
        "4 sc, 12 ch; 4 x 3 st"
    ),
    "slip to the next stitch; *1 plain, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "3 chain to form a treble, 1 chain, miss 1, *1 treble, 1 chain, miss 1; repeat": (
        "6 dc, 6 ch; 5 x 2 st"
    ),
    "5 chain, for 1 treble and 2 chain, miss 2, *1 treble, 2 chain, miss 2; repeat": (
        "4 dc, 8 ch; 3 x 3 st"
    ),
    "3 chain, which count as 1 treble, 2 chain, miss 2, *1 treble, 2 chain, miss 2; repeat": (
        "4 dc, 8 ch; 3 x 3 st"
    ),
    "5 chain, miss 2, *1 treble, 2 chain, miss 2; repeat; join to the 3rd of the first 5 chain": (
        "4 dc, 8 ch; 3 x 3 st; asked start-chain-assumed"
    ),
}
BEGUN_IN_LOOPS = {
    "begin in the 2nd loop; *1 plain in next loop, 4 chain; repeat": "12 sc, 48 ch; 12 x 1 space",
    "slip to the centre of the first loop, *1 plain in centre of next loop, 5 chain; repeat": (
        "12 sc, 60 ch; 12 x 1 space"
    ),
}
BEGUN_ON_BLOCKS = {
    "begin on the 2nd of the 3 treble; *1 plain, 5 chain, miss 5; repeat": "6 sc, 30 ch; 6 x 6 st",
    "begin in the middle of the 3 treble; *1 plain in centre of next 3 treble, 5 chain; repeat": (
        "6 sc, 30 ch; 6 x 1 3-dc run"
    ),
}
NOT_BEGUN = {
    "begin at a corner; 1 plain in each": "taken-as-remark",
    "begin in the small loop; *1 plain in next, 3 chain; repeat": "unknown-word",
    "commence in the last loop; *1 plain in next, 3 chain; repeat": "not-understood",
    "begin over the 2nd of the first 3 treble; 1 plain in each": "row-does-not-close",
}
ENDINGS = (
    "unite", "unite it", "join", "join to the first", "join to the first plain", "connect",
    "fasten to the first plain", "Fasten into the first", "finally, 1 sl. on the first plain",
    "finally 1 single in the first of this round", "close for the round",
    "close the ring", "make it round", "slip on the first",
    "turn", "turn the work", "turn back", "turn on the wrong side",
    "fasten off", "fasten off the cotton", "cut the cotton", "break off", "finish off",
)  # fmt: skip
OPEN = STITCHES._replace(loops=15, closed=False)
FLAT_ENDS = {
    "*1 plain, 3 chain, miss 2; repeat to last 3 st; end with 3 plain": "7 sc, 12 ch; 4 x 3 st",
    "*1 plain, 3 chain, miss 2; repeat to last 3 st; finish with 3 plain": "7 sc, 12 ch; 4 x 3 st",
    "*1 plain, 3 chain, miss 2; repeat to last 3 st; ending with 3 plain": "7 sc, 12 ch; 4 x 3 st",
    "*3 chain, miss 3, 1 plain; repeat; end with 3 plain": "6 sc, 9 ch; 3 x 4 st",
    "*3 chain, miss 3, 1 plain; repeat; end the row with 3 plain": "6 sc, 9 ch; 3 x 4 st",
    "*3 chain, miss 3, 1 plain; repeat; finish the row by 3 plain": "6 sc, 9 ch; 3 x 4 st",
    "*3 chain, miss 3, 1 plain; repeat; 3 plain at the end": "6 sc, 9 ch; 3 x 4 st",
    "*1 plain, 3 chain, miss 2; repeat; finish the row with 4 chain": "5 sc, 19 ch; 5 x 3 st; asked perhaps-instead",
    "miss 13, 1 plain in each of the two end stitches": "2 sc",
    "*3 chain, miss 3, 1 plain; repeat; end 3 plain": "6 sc, 9 ch; 3 x 4 st",
    "3 chain, miss 3, 1 plain, all along, ending with 3 plain": "6 sc, 9 ch; 3 x 4 st",
    "*3 chain, miss 2, 1 plain; repeat, end with sl st": "5 sc, 15 ch; 5 x 3 st",
    "*3 chain, miss 2, 1 plain; repeat, ending with 1 sl st": "5 sc, 15 ch; 5 x 3 st",
}
OPENED_BY_FIVE = tuple(
    f"5 ch, miss 1, * 1 treble in next, 2 ch, miss 1; repeat from *, {close}"
    for close in (
        "sl st in 3rd st of ch",
        "sl.-st. in 3rd of 5 ch.",
        "sl st in 3rd ch",
        "1 sl st in 3rd st of ch 5",
        "sl st in 3rd st of 1st ch",
        "sl st in 3rd ch of 5",
        "join to 3rd st of ch",
    )
)
AT_CORNERS = (
    "repeat except at the corners",
    "repeat, except at the corners, where miss none",
    "repeat; at each corner work 3 chain",
    "repeat, with 6 chain at the corners",
    "repeat; miss none at the corners",
    "repeat, not missing any at the corners",
    "repeat; making 7 plain at each corner",
    "repeat, making 3 treble, 3 chain and 3 treble in the corners",
    "repeat, working treble, 1 chain, treble in the corner stitch",
    "repeat; 3 treble, with 2 chain between, in each corner; join",
    "repeat. Turn each corner with 4 treble, 3 chain, 4 treble in the same place",
    "repeat; at the corners 5 chain in place of 2",
    "repeat; in the corner spaces 1 treble, 5 chain, 1 treble",
    "repeat, but at the corners 6 chain",
    "repeat from * to the next corner",
    "repeat; 5 plain under the corner chains; fasten off",
)
FROM_A_CORNER = (
    "3 treble in the corner stitch, *1 treble, 2 chain, miss 2; repeat from *",
    "2 treble in the corner stitch, 2 chain, 2 treble in the same place, *1 treble, 2 chain, "
    "miss 2; repeat from * to the next corner",
    "*1 treble, 2 chain, miss 2; repeat. Corner, 3 treble, 5 chain, 3 treble",
    "*1 treble, 2 chain, miss 2; repeat (corner 5 treble)",
    "slip stitch to the corner, *1 treble, 2 chain, miss 2; repeat from *",
)
IN_EACH_BUT_CORNERS = (
    "3 plain in the corner stitch, and 1 plain in each stitch along the sides",
    "1 plain in every stitch, and 5 in those at the corners",
    "1 plain in each stitch, 3 plain in each corner",
    "1 plain in each stitch, 2 treble, 3 chain, 2 treble in corners",
    "1 plain all round, 3 plain in each corner, join",
    "1 plain in each stitch and chain, 3 plain in the centre stitch of corner, join",
)
NO_CORNERS_KNOWN = (
    # what of this is worked at the corner only cannot be told
    "1 treble, 1 chain, 3 treble in the corner",
)
EXCEPTIONS = (
    *NO_CORNERS_KNOWN,
    "1 treble in each, except the last",
    "*1 treble, 2 chain, miss 2; repeat; instead of 4 between each wheel 3 chain",
)
NOT_READ = {
    "1 treble in each stitch, but in the last 3 treble": "exception-in-words",
    "*1 plain, 5 chain, miss 2; repeat; omitting the chain between the motifs": "exception-in-words",
    "between the stars miss 6; 1 treble in each stitch": "unknown-word",
    "1 treble in each stitch without joining": "taken-as-remark",
    "*1 treble, 2 chain, miss 2; repeat, with this difference that the last is 3 chain": (
        "unknown-word"
    ),
    "*1 plain, 3 chain, miss 2; repeat; end as you began": "unknown-word",
}


@cases((STITCHES, BETWEEN_STITCHES), (ARCHES, BETWEEN_ARCHES))
def test_chains_between(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((STITCHES, BEGUN), (ARCHES, BEGUN_IN_LOOPS), (BLOCKS, BEGUN_ON_BLOCKS))
def test_where_a_row_begins(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize("ending", ENDINGS)
def test_how_a_round_ends_changes_no_count(ending: str) -> None:
    row = f"*1 plain, 3 chain, miss 2; repeat; {ending}"
    assert said(row, STITCHES) == "4 sc, 12 ch; 4 x 3 st"


@pytest.mark.parametrize("row", OPENED_BY_FIVE)
def test_a_slip_into_the_chains_at_the_head_joins(row: str) -> None:
    assert said(row, STITCHES) == "6 dc, 12 ch; 5 x 2 st; asked start-chain-assumed"


@cases((OPEN, FLAT_ENDS))
def test_what_is_worked_at_the_end_of_a_row(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize("behind", AT_CORNERS)
def test_an_edge_without_corners_is_read_without_them(behind: str) -> None:
    row = f"*1 treble, 2 chain, miss 2; {behind}"
    assert said(row, STITCHES) == "4 dc, 8 ch; 4 x 3 st; asked corners-left-out"


@pytest.mark.parametrize("row", FROM_A_CORNER)
def test_what_is_worked_at_the_first_corner_is_left_out_too(row: str) -> None:
    counts, *asked = said(row, STITCHES).rpartition("4 x 3 st")
    assert counts == "4 dc, 8 ch; "
    assert set(asked[1].split("; ")[1:]) == {"asked corners-left-out"}


@pytest.mark.parametrize("row", IN_EACH_BUT_CORNERS)
def test_what_is_worked_in_each_is_kept_beside_corners(row: str) -> None:
    assert said(row, STITCHES).startswith("12 sc; 12 x 1 st")
    assert "asked corners-left-out" in said(row, STITCHES).split("; ")


@pytest.mark.parametrize("row", EXCEPTIONS)
def test_an_exception_is_told_since_only_clauses_can_say_it(row: str) -> None:
    assert "asked exception-in-words" in said(row, STITCHES).split("; ")


@cases((STITCHES, NOT_READ), (STITCHES, NOT_BEGUN))
def test_what_is_not_read_is_told(on: On, row: str, comes_to: str) -> None:
    assert f"asked {comes_to}" in said(row, on).split("; ")


INSTEAD = {
    "*3 treble in loop, 5 chain, repeat from *, ending with 5 chain, 1 single in first treble": (
        "36 dc, 65 ch; 12 x 1 space; asked perhaps-instead"
    ),
    "1 plain in loop, 5 chain; repeat, ending with 2 chain, join": (
        "12 sc, 62 ch; 12 x 1 space; asked perhaps-instead"
    ),
    # in their own right
    "*1 plain in loop, 5 chain; repeat from *, 2 chain, join": "12 sc, 62 ch; 12 x 1 space",
    "*5 chain, 1 plain in loop; repeat from *, ending with 2 chain, join": (
        "12 sc, 62 ch; 12 x 1 space; asked perhaps-instead"
    ),
    # as its help writes it
    "*1 plain in loop, 5 chain; repeat from * to last space, 1 plain in last space, 2 chain": (
        "12 sc, 57 ch; 11 x 1 space"
    ),
}


@cases((ARCHES, INSTEAD))
def test_chains_at_an_end_may_stand_in_place_of_others(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
