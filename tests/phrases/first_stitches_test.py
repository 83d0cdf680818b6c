"""A round that begins on the chains that the round below began with: `1 sc in top of 3 ch`."""

from __future__ import annotations

from phrases.said import On, cases, said

US = "terms: us\nchains count as stitches: yes\n"
THREES = On(11, ("ch 3 as dc, 2 dc in same loop, *ch 3, 3 dc in next loop; repeat, ch 3, join",))
THREES = THREES._replace(headings=US)
"""Eleven times 3 dc, with 3 chains behind each; the first dc of all is 3 chains."""
ONES = On(12, ("ch 3 as dc, *ch 2, 1 dc in next loop; repeat, ch 2, join",), headings=US)
FIVE = ONES._replace(below=("ch 5, *1 dc in next loop, ch 2; repeat, join",))

TOLD = "asked start-chain-assumed"
"""The top of these chains is the first stitch."""

ON_THREES = dict.fromkeys(
    (
        f"1 sc {top}, 1 sc in next 2 dc, 3 sc in space, *1 sc in next 3 dc, 3 sc in space; repeat"
        for top in (
            "in top of ch 3",
            "on top of 3 ch",
            "in 3rd ch of ch 3",
            "in the top of the 3 ch",
        )
    ),
    f"66 sc; 10 x 3 dc; {TOLD}",
) | {
    "1 sc in 3 ch, *5 ch, 1 sc in next 3 ch; repeat, 5 ch": "11 sc, 55 ch; 10 x 1 ch-3 space",
}
ON_ONES = {
    "1 sc in top of 3 ch, *2 sc in space, 1 sc in dc; repeat, 2 sc in space": (
        f"36 sc; 11 x 1 space; {TOLD}"
    ),
    # chains that the round below did not begin with
    "1 sc in top of 2 ch, *1 sc in next space; repeat": "12 sc; 11 x 1 space",
}
ON_FIVE = {
    "1 sc in 3rd ch of ch 5, 2 sc in space, *1 sc in dc, 2 sc in space; repeat": (
        f"36 sc; 11 x 1 dc; {TOLD}; {TOLD}"
    ),
}


@cases((THREES, ON_THREES), (ONES, ON_ONES), (FIVE, ON_FIVE))
def test_the_first_stitch_by_its_chains(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_a_turned_row_begins_elsewhere() -> None:
    turned = ONES._replace(below=("ch 3 as dc, *ch 2, 1 dc in next loop; repeat, turn",))
    assert TOLD not in said("1 sc in top of 3 ch, 1 sc in each space", turned)
