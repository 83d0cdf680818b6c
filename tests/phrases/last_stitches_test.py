"""Where the last stitch falls: on the chains that the row below began with, which are one."""

from __future__ import annotations

import pytest
from phrases.said import STITCHES, On, cases, said

TOLD = "asked taken-as-remark"
OPEN = On(13, ("3 ch as treble, 1 treble in each loop",), closed=False)
"""Twelve dc behind a start chain that stands for the first."""

BEHIND = {
    f"3 chain as treble, *2 chain, miss 1, 1 treble in next st; repeat {last}": (
        f"7 dc, 12 ch; 6 x 2 st; {TOLD}"
    )
    for last in (
        "from *, working last treble in 3rd of turning ch",
        "to the end, the last treble in the 3rd of 5 chain",
        "from * to the end, the last in the top of the 3 chain",
        "from *, making the last treble in the turning chain",
        "from *, the last treble being worked in the top of the turning chain",
        "from *, putting the last treble in the 3rd ch of the ch-3; turn",
        "from *, and the last treble on top of the ch",
        "from *, the last coming on the 3rd stitch of the turning chain of the last row",
    )
}
BETWEEN = {
    "(1 plain, miss 1) 4 times, miss 1, then 4 treble with 2 chain between, the last in the third "
    "of 5 chain. Turn": f"4 sc, 4 dc, 6 ch; {TOLD}",
    "1 treble, *2 chain, miss 1, 1 treble in next st; repeat from * 5 times more, the last treble in "
    "the 3rd of turning chain": f"7 dc, 12 ch; {TOLD}",
}

ASSUMED = "asked start-chain-assumed"
BEFORE_CHAINS = {
    f"3 chain as treble, 2 chain, miss 1, {row}": f"7 dc, 12 ch; 5 x 2 st; {ASSUMED}"
    for row in (
        "*1 treble in next st, 2 chain, miss 1; repeat from *, working last treble in 3rd of turning "
        "ch",
        "*1 treble, 2 chain, miss 1; repeat from * to the end, the last in the top of the 3 chain; "
        "turn",
    )
} | {
    "1 treble, 2 chain, miss 2; repeat to the end, the last treble in 3rd of 5 chain": (
        f"5 dc, 8 ch; 4 x 3 st; {ASSUMED}"
    ),
    "3 chain as treble, 2 chain, miss the next treble, *1 treble on next treble, 2 chain, miss 1 "
    "treble, and so on to the end, the last in the top of the 3 chain": (
        f"7 dc, 12 ch; 5 x 2 dc; {ASSUMED}"
    ),
    "*1 treble, 2 chain, miss 2; repeat from *, the last double treble in the top of the 3 chain": (
        f"4 dc, 1 tr, 8 ch; 4 x 3 st; {ASSUMED}"
    ),
    "*2 treble in next st, 2 chain, miss 2; repeat from * to the end, the last treble in the top of "
    "the ch": (
        f"8 dc, 8 ch; 4 x 3 st; 1 left over; does not close; {TOLD}; asked row-does-not-close"
    ),
}


@cases((OPEN, BEHIND), (OPEN, BETWEEN), (OPEN, BEFORE_CHAINS))
def test_where_the_last_stitch_falls_makes_nothing(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    "row",
    [
        "1 treble in each of the next 5 st, the last treble in the 3rd of 5 chain",
        "*1 treble, 2 chain, miss 1; repeat from *, the last treble in the next loop",
        "*1 treble, 2 chain, miss 1; repeat from *, the last treble in the 3 chain",
        "*1 treble, 2 chain, miss 1; repeat from *, the last 2 treble in the 3rd of 5 chain",
    ],
)
def test_what_may_be_a_stitch_is_no_remark(row: str) -> None:
    assert TOLD not in said(row, OPEN)


def test_a_stitch_that_is_made_at_the_end_counts() -> None:
    made = "*1 treble in next st, 2 chain, miss 1; repeat from *; 1 treble in last st"
    assert said(made, OPEN) == "7 dc, 12 ch; 6 x 2 st"


APART = {
    "4 treble, the last one in the next stitch; 2 chain, miss 1; repeat": (
        "8 dc, 4 ch; 2 x 5 st; 2 left over; does not close; asked row-does-not-close"
    ),
}
AT_END = {
    "3 chain as treble, 2 chain, miss 2, 10 treble, the last on the top of the chain; turn": (
        f"11 dc, 2 ch; {ASSUMED}"
    ),
}


@cases((STITCHES, APART), (OPEN, AT_END))
def test_the_last_of_so_many_goes_in_its_place(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
