"""How rows begin and how they end: what first chains stand on, a shell of which they are a part,
a last time that has otherwise, an end that is left out.
"""

from __future__ import annotations

from phrases.said import On, cases, said

PLAIN = On(
    48,
    ("1 plain in each loop",),
    headings="terms: uk\nchains count as stitches: yes\nplain means us sc\n",
)
FLAT = PLAIN._replace(loops=49, closed=False)

_STANDS = (
    "for 1st tr",
    "(for 1 tr)",
    "to stand for a tr",
    "to count as first tr",
    ", which counts as 1 tr",
    "as a tr",
    "in place of the 1st tr",
    "instead of the 1st tr",
    "(= 1 tr)",
    "(counts as 1 tr)",
)
_UNDER_IT = (
    "miss the first dc",
    "miss the first",
    "miss first stitch",
    "miss the stitch below",
    "miss the dc under it",
    "miss 1st st",
    "skip 1st",
    "pass over the first",
)
_ONE_MORE = ("miss 1 dc", "miss the next dc", "skip 1 st")

UNDER_THE_CHAINS = (
    {
        f"3 ch {stands}, {misses}, 1 tr in each dc": "48 dc; 47 x 1 sc"
        for stands in _STANDS
        for misses in _UNDER_IT
    }
    | {
        f"3 ch {stands}, {misses}, 1 tr in each dc": "47 dc; 46 x 1 sc; asked perhaps-missed"
        for stands in _STANDS
        for misses in _ONE_MORE
    }
    | {
        "Turn with 3 ch for 1st tr, miss 1st st, 1 tr in each dc": "48 dc; 47 x 1 sc",
        "3 ch, miss the stitch below, 1 tr in each dc": "48 dc; 47 x 1 sc",
        "3 ch as 1st tr, miss 1st dc, 1 tr in next, *1 ch, miss 1, 1 tr in next; repeat from *": (
            "25 dc, 23 ch; 23 x 2 st; asked perhaps-leads-back"
        ),
        # here so many stitches are passed over as there are chains behind the first
        "4 ch as tr and 1 ch, miss 1, *1 tr, 1 ch, miss 1; repeat from *": "24 dc, 24 ch; 23 x 2 st",
    }
)

_US = "terms: us\nchains count as stitches: no\n"
SC = On(60, ("1 s c in each",), headings=_US)
THREES = On(60, ("* D c in next 3, ch 2, skip 2; repeat from *",), headings=_US)

_SHELL = "(3 d c, ch 2, 3 d c)"
FIRST_SHELL_IN_SPACES = {
    f"Sl st to 2 ch, (ch 3, 2 d c, ch 2, 3 d c) in {place}, * {_SHELL} in next 2 ch; repeat from *, join": (
        "72 dc, 24 ch; 11 x 1 ch-2 space; asked start-chain-assumed"
    )
    for place in ("2 ch", "same sp", "same 2 ch", "the sp")
}

FIRST_SHELL = {
    f"(Ch 3, 2 d c, ch 2, 3 d c) in first st, skip 5, * {_SHELL} in next st, skip 5; repeat from *, join": (
        "60 dc, 20 ch; 9 x 6 st; asked start-chain-assumed"
    ),
    f"(Ch 3, 2 d c, ch 2, 3 d c) in first st, * skip 5, {_SHELL} in next st; repeat from *, join": (
        "60 dc, 20 ch; 9 x 6 st; asked start-chain-assumed; asked meets-its-start"
    ),
    f"(Ch 3 as d c, 2 d c, ch 2, 3 d c) in first st, * skip 5, {_SHELL} in next st; repeat from *, join": (
        "60 dc, 20 ch; 9 x 6 st; asked meets-its-start"
    ),
    f"Ch 3, 2 d c, ch 2, 3 d c in same st (all in first st), * skip 5, {_SHELL} in next st; repeat from *, join": (
        "60 dc, 20 ch; 9 x 6 st; asked perhaps-one-place; asked start-chain-assumed; asked meets-its-start"
    ),
    "(Ch 1, 1 s c, ch 3, 1 s c) in first st, skip 1, * (1 s c, ch 3, 1 s c) in next st, skip 1; repeat from *": (
        "60 sc, 90 ch; 29 x 2 st"
    ),
    "(Ch 5, 1 d c) in first st, skip 2, * (1 d c, ch 2, 1 d c) in next st, skip 2; repeat from *": (
        "40 dc, 40 ch; 19 x 3 st; asked start-chain-assumed"
    ),
    # chains with no stitch of their height right behind them stand, as they are written
    "(Ch 3, 1 s c) in first st, skip 1, * (1 s c, ch 3, 1 s c) in next st, skip 1; repeat from *": (
        "59 sc, 90 ch; 29 x 2 st"
    ),
}


@cases(
    (PLAIN, UNDER_THE_CHAINS),
    (FLAT, {"3 ch for 1st tr, miss the first dc, 1 tr in each of the rest": "49 dc; 48 x 1 sc"}),
    (THREES, FIRST_SHELL_IN_SPACES),
    (SC, FIRST_SHELL),
)
def test_rows_of_the_beginnings(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
