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
        # the first 3, or 3 behind the first
        "5 ch as tr and 2 ch, miss the first 3 dc, *1 tr, 2 ch, miss 2; repeat from *, 1 tr, miss 1": (
            "16 dc, 30 ch; 14 x 3 st; asked perhaps-missed"
        ),
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
        "71 dc, 27 ch; 11 x 1 ch-2 space; asked perhaps-start-chain"
    )
    for place in ("2 ch", "same sp", "same 2 ch", "the sp")
}

FIRST_SHELL = {
    f"(Ch 3, 2 d c, ch 2, 3 d c) in first st, skip 5, * {_SHELL} in next st, skip 5; repeat from *, join": (
        "59 dc, 23 ch; 9 x 6 st; asked perhaps-start-chain"
    ),
    f"(Ch 3, 2 d c, ch 2, 3 d c) in first st, * skip 5, {_SHELL} in next st; repeat from *, join": (
        "59 dc, 23 ch; 9 x 6 st; 5 left over; does not close; asked perhaps-start-chain; asked row-does-not-close"
    ),
    f"(Ch 3 as d c, 2 d c, ch 2, 3 d c) in first st, * skip 5, {_SHELL} in next st; repeat from *, join": (
        "60 dc, 20 ch; 9 x 6 st; asked meets-its-start"
    ),
    f"Ch 3, 2 d c, ch 2, 3 d c in same st (all in first st), * skip 5, {_SHELL} in next st; repeat from *, join": (
        "59 dc, 23 ch; 9 x 6 st; 5 left over; does not close; asked perhaps-one-place; asked perhaps-start-chain; asked row-does-not-close"
    ),
    "(Ch 1, 1 s c, ch 3, 1 s c) in first st, skip 1, * (1 s c, ch 3, 1 s c) in next st, skip 1; repeat from *": (
        "60 sc, 91 ch; 29 x 2 st; asked perhaps-start-chain"
    ),
    "(Ch 5, 1 d c) in first st, skip 2, * (1 d c, ch 2, 1 d c) in next st, skip 2; repeat from *": (
        "39 dc, 43 ch; 19 x 3 st; asked perhaps-start-chain"
    ),
    # chains with no stitch of their height right behind them stand, as they are written
    "(Ch 3, 1 s c) in first st, skip 1, * (1 s c, ch 3, 1 s c) in next st, skip 1; repeat from *": (
        "59 sc, 90 ch; 29 x 2 st"
    ),
}

SPACES_OF_3 = On(60, ("* 1 s c in next, ch 3, skip 2; repeat",), headings=_US)
SHELLS = On(60, ("1 s c in each", f"* Skip 5, {_SHELL} in next st; repeat"), headings=_US)
MESH = On(36, ("* 1 d c in next, ch 2, miss 2; repeat",), headings=_US)

_ON = "* skip 1 sp, shell in next sp; repeat from *, skip 1 sp, join"
SHELL_SHOWN = (
    {
        # the chains are a stitch of the shell, so that the others have 3 there
        f"{shell}, {_ON}": "60 dc, 20 ch; 9 x 2 space"
        for shell in (
            "Ch 3, 2 d c, 2 ch, 3 d c in sp for a shell",
            "3 ch, 2 d c, ch 2, 3 d c in sp to form a shell",
            "Sl st to sp, ch 3, 2 d c, 2 ch, 3 d c in same sp for a shell",
        )
    }
    | {
        # ch 5 is a stitch and 2 ch: shells of 2 d c with 2 ch between
        f"Sl st to sp, {shell} in sp to form a shell, {_ON}": ("20 dc, 20 ch; 9 x 2 space")
        for shell in ("ch 5, 1 d c", "5 ch, d c")
    }
    | {
        # in brackets chains stand as they are written, and the shell is none the less of 3 and 3
        f"(ch 3, 2 d c, 2 ch, 3 d c) in next sp for a shell, {_ON}": (
            "59 dc, 23 ch; 9 x 2 space; asked perhaps-start-chain"
        ),
        "*3 d c in same space for a shell, ch 1; repeat": "60 dc, 20 ch; 20 x 1 space",
        "*1 s c in sp, (2 d c, ch 2, 2 d c) in next sp to form a shell; repeat": "10 sc, 40 dc, 20 ch; 10 x 2 space",
        # behind another step the chains are none of its
        "*1 s c in sp, ch 3, 2 d c, ch 2, 2 d c in next sp to form a shell; repeat": (
            "10 sc, 40 dc, 50 ch; 10 x 2 space"
        ),
    }
)

SHELL_SHOWN_BEFORE = SPACES_OF_3._replace(
    below=(*SPACES_OF_3.below, f"Ch 3, 2 d c, 2 ch, 3 d c in sp for a shell, {_ON}")
)

SHELL_SHOWN_ON_STITCHES = {
    "Ch 3, 2 d c, 2 ch, 3 d c in same place for a shell, * skip 5, shell in next st; repeat from *, skip 5, join": (
        "60 dc, 20 ch; 9 x 6 st"
    ),
    "*1 d c in next, skip 2, (2 d c, 2 ch, 2 d c) in same place for a shell; repeat": "100 dc, 40 ch; 20 x 3 st",
}

SHELL_BELOW = {
    "* Ch 1, shell in shell; repeat": "60 dc, 30 ch; 10 x 1 shell; asked place-assumed",
    # begun in the centre of the first, so that this one has none
    "Sl st to the centre of the shell, * ch 1, shell in shell; repeat": (
        "54 dc, 27 ch; 9 x 1 shell; asked place-assumed; asked perhaps-leads-back"
    ),
    "(Ch 3, 2 d c, ch 2, 3 d c) in shell, * ch 1, shell in next shell; repeat from *, ch 1, join": (
        "59 dc, 33 ch; 9 x 1 shell; asked place-assumed; asked perhaps-start-chain"
    ),
}

# one slip stitch, ch 3 that stand, and 1 + 10 x 2 dc in the 11 other spaces; 11 x 2 more chains
SLIP_AND_THERE = {
    f"Sl st in {sp}, ch 3, d c in {sp}, * 2 ch, 2 d c in {sp}; repeat from *, 2 ch, join": (
        f"1 ss, 21 dc, 25 ch; 10 x 1 {kind}; asked perhaps-one-place; asked perhaps-leads-on"
    )
    for sp, kind in (("2 ch", "ch-2 space"), ("sp", "space"), ("the sp", "space"))
} | {
    "Sl st in sp, (ch 3, 2 d c) in sp, * 2 ch, 3 d c in sp; repeat from *, 2 ch, join": (
        "1 ss, 32 dc, 25 ch; 10 x 1 space; asked perhaps-one-place; asked perhaps-leads-on"
    ),
}

ARCHES_OF_5 = PLAIN._replace(below=(*PLAIN.below, "*1 dc in next dc, 5 ch, miss 3; repeat from *"))
PICOTED = On(12, ("(2 dc, 1 picot, 2 dc) in each loop",), headings=PLAIN.headings)

_AT_LAST = {
    9: "12 sc, 93 ch; 12 x 1 space; asked perhaps-instead",
    12: "12 sc, 96 ch; 12 x 1 space; asked perhaps-instead",
}
LAST_TIME = (
    dict.fromkeys(
        (
            "*1 dc in the loop, 7 ch; repeat from *, the last time 9 ch",
            "*1 dc in the loop, 7 ch (the last time 9 ch); repeat from *",
            "*1 dc in the loop, 7 ch (9 ch the last time); repeat from *",
            "*1 dc in the loop, 7 ch, the last time 9 ch; repeat",
            "*1 dc in the loop, 7 ch, in the last repeat 9 ch; repeat from *",
            "*1 dc in the loop, 7 ch; repeat from *, making 9 ch the last time",
            "*1 dc in the loop, 7 ch; repeat from *, but 9 ch the last time",
            "*1 dc in the loop, 7 ch; repeat from *, the last time with 9 ch",
            "*7 ch (the last time 9 ch), 1 dc in next loop; repeat from *",
        ),
        _AT_LAST[9],
    )
    | dict.fromkeys(
        # the number of the chains is none of the repeats
        (
            "*1 dc in the loop, 7 ch; repeat from *, with 12 ch the last time",
            "*1 dc in the loop, 7 ch; repeat from *, making 12 ch the last time",
        ),
        _AT_LAST[12],
    )
    | {
        "*1 dc in the loop, the last time 9 ch; repeat": "12 sc, 9 ch; 12 x 1 space",
        "*7 ch, 1 dc in loop; repeat 11 times, the last time 9 ch": "12 sc, 93 ch; asked perhaps-instead",
        "*1 dc in the loop, 7 ch; repeat from * 11 times, with 12 ch the last time": (
            "12 sc, 96 ch; asked perhaps-instead"
        ),
        # the round began behind this dc
        "*1 dc in the loop, 7 ch (the last time 1 tr in next dc); repeat from *": (
            "12 sc, 1 dc, 84 ch; 12 x 1 space; asked perhaps-instead"
        ),
        "*1 dc in the loop, 7 ch, the last time 1 tr in first dc; repeat from *": (
            "12 sc, 84 ch; 12 x 1 space; asked exception-in-words"
        ),
    }
)

# 12 x 7 ch, less the last 7
OMITTED_LAST = dict.fromkeys(
    (
        "*1 dc in the loop, 7 ch (omitted the last time); repeat from *",
        "*1 dc in the loop, 7 ch (not the last time); repeat from *",
        "*1 dc in the loop, 7 ch (omit the last time); repeat from *",
        "*1 dc in the loop, 7 ch (the last time omitted); repeat from *",
        "*1 dc in the loop, 7 ch (except the last time); repeat from *",
        "*1 dc in the loop, 7 ch; repeat from *, omitting the 7 ch the last time",
        "*1 dc in the loop, 7 ch; repeat from *, the last time omitting the 7 ch",
        "*1 dc in the loop, 7 ch; repeat from *, omitting the 7 ch in the last repeat",
        "*1 dc in the loop, 7 ch; repeat from *, omitting the last 7 ch",
        "*1 dc in the loop, 7 ch; repeat from *, leaving out the last 7 chain; join",
        "*1 dc in the loop, 7 ch; repeat from * all round, omitting the chain at the end",
    ),
    "12 sc, 77 ch; 11 x 1 space",
) | {
    "*1 dc in the loop, 7 ch; repeat from * 11 times, omitting the last 7 ch": "12 sc, 77 ch",
    "*1 dc in the loop, 1 picot, 7 ch; repeat from *, omit the picot at the end": (
        "12 sc, 84 ch, 11 picot; 11 x 1 space"
    ),
    "*1 dc in the loop, 7 ch (the last time omitted), 1 tr in next loop; repeat from *": (
        "6 sc, 6 dc, 35 ch; 5 x 2 space"
    ),
    # no repeat makes so many
    "*1 dc in the loop, 7 ch; repeat from *, omitting the last 5 ch": (
        "12 sc, 84 ch; 12 x 1 space; asked exception-in-words"
    ),
}

OMITTED_ON_STITCHES = {
    "*3 dc, 3 ch, miss 3; repeat from *, omitting the last 3 ch, join": "24 sc, 21 ch; 7 x 6 st",
    "*3 ch, miss 3, 1 dc; repeat from *, omitting the last dc, 1 tr in last st": "11 sc, 1 dc, 36 ch; 11 x 4 st",
    "1 tr, *3 ch, miss 3, 1 dc; repeat from *, omitting the last dc": "1 dc, 11 sc, 36 ch; 11 x 4 st",
    "1 dc, *5 ch, miss 2, 1 tr; repeat from *, omitting last tr": "1 sc, 15 dc, 80 ch; 15 x 3 st",
    # the last st is left
    "*3 ch, miss 3, 1 dc; repeat from *, omitting the last dc": (
        "11 sc, 36 ch; 11 x 4 st; does not close; asked row-does-not-close"
    ),
}

ENDING_WITH_CHAINS = {
    f"*5 ch, miss 3, 1 dc; repeat from *, ending with {end}": (
        f"12 sc, {60 + more} ch; 12 x 4 st; asked perhaps-instead"
    )
    for end, more in (("5 ch", 5), ("5 ch, join", 5), ("3 ch, join", 3), ("3 ch", 3))
} | {
    # behind a first stitch they lead back to it
    "1 dc, *5 ch, miss 3, 1 dc; repeat from *, ending with 5 ch, miss 3, join": "12 sc, 60 ch; 11 x 4 st",
}

LOOPS_OF_5 = On(48, ("*1 dc in next loop, 5 ch, miss 1; repeat from *",), headings=PLAIN.headings)

FIRST_OF_A_REPEAT = {
    "* 7 dc into first loop, 3 dc into next loop; repeat from *": "120 sc; 12 x 2 space",
    "* 1 dc in 1st loop, 7 ch, 1 dc in next loop, 3 ch; repeat from *": "24 sc, 120 ch; 12 x 2 space",
    "* 1 dc in the centre of the first loop, 5 ch, 3 dc in next loop, 5 ch; repeat from *": (
        "48 sc, 120 ch; 12 x 2 space"
    ),
    "* 3 tr under the 1st 5 ch, 5 ch, dc under the next 5 ch, 5 ch; repeat from *": (
        "36 dc, 12 sc, 120 ch; 12 x 2 ch-5 space"
    ),
    "* (3 tr, 2 ch, 3 tr) in first loop, 1 dc in next loop; repeat from *": "72 dc, 12 sc, 24 ch; 12 x 2 space",
    "* 7 dc in each of the first 2 loops, 3 ch; repeat from *": "168 sc, 36 ch; 12 x 2 space",
    "7 dc into first loop, 3 dc into next loop; repeat": "120 sc; 12 x 2 space",
    # the first of a part is that of each
    "* 1 dc in first of the 5 ch, 3 ch; repeat from *": "24 sc, 72 ch; 24 x 1 ch-5 space",
}

FIRST_OF_A_REPEAT_ON_STITCHES = {
    "* 1 dc in first dc, (4 ch, 1 dc in next dc) 9 times, miss 2; repeat from *": "40 sc, 144 ch; 4 x 12 sc",
    "* 1 tr in each of the first 7 st, 2 ch, miss 1; repeat from *": "42 dc, 12 ch; 6 x 8 st",
    "* 2 tr in first dc, 2 ch, 1 tr in same, 2 ch, miss 1; repeat from *": "72 dc, 96 ch; 24 x 2 sc",
}

# 1 + 2 tr in the first space and 3 in each of the 23 others; ch 3 between, but for the last
STANDS_IN_THE_FIRST = {
    "3 ch as tr, 2 tr in the same space, *3 ch, 3 tr in next space; repeat from *": (
        "72 dc, 69 ch; 23 x 1 space; asked perhaps-leads-back"
    ),
    # by the language the first is behind them; the finding writes it so
    "3 ch as tr in first space, 2 tr in same space, *3 ch, 3 tr in next space; repeat from *": (
        "72 dc, 69 ch; 23 x 1 space; asked perhaps-leads-back"
    ),
    "3 ch as tr, 2 tr in the first space, *3 ch, 3 tr in next space; repeat from *": (
        "72 dc, 69 ch; 23 x 1 space; asked not-at-the-head; asked perhaps-leads-back"
    ),
}

TREBLES = On(12, ("1 tr in each loop",), closed=False, headings=PLAIN.headings)

# ch 4: a tr and 1 ch; then on the 3rd, and each of the 9 behind it
ON_THE_SECOND = {
    f"{n} ch, 1 tr on the second tr, * 1 ch, 1 tr on the next; repeat from *": (
        f"11 dc, {9 + n - 3} ch; 9 x 1 dc; asked start-chain-assumed; asked perhaps-counted-on"
    )
    for n in (3, 4)
} | {
    "4 ch, 1 tr on the 2nd tr, * 1 ch, miss 1, 1 tr on the next; repeat from *, 1 tr on the last": (
        "7 dc, 5 ch; 4 x 2 st; asked start-chain-assumed"
    ),
}

FORTY = PLAIN._replace(loops=40)
PERHAPS_SHARED = dict.fromkeys(
    (
        "1 tr, 4 ch, skip 3, 1 tr in the next; repeat",
        "* 1 tr, 4 ch, skip 3, 1 tr in the next; repeat from *",
        "1 tr, 4 ch, skip 3, 1 tr; repeat",
        "1 tr in next st, 4 ch, skip 3, 1 tr in next st; repeat",
        "1 tr in next st, 4 ch, skip 3, 1 tr; repeat",
    ),
    "16 dc, 32 ch; 8 x 5 st; asked perhaps-shared",
) | {
    "* 1 dc, 3 ch, 1 dc; repeat from *": "40 sc, 60 ch; 20 x 2 st; asked perhaps-shared",
    # as its help writes it
    "1 tr, *ch 4, skip 3, 1 tr in next st; repeat from *": "10 dc, 40 ch; 9 x 4 st; asked meets-its-start",
}

THREE_CHAINS = On(12, ("1 plain in each loop, with 3 chain between",), headings=PLAIN.headings)

BEGUN_IN_A_LOOP = dict.fromkeys(
    (
        f"begin in a loop, 3 tr in {same}, 1 plain in next loop{again}"
        for same in ("same loop", "the same")
        for again in (", and so on", "; repeat")
    ),
    "18 dc, 6 sc; 6 x 2 space",
)

# 17 dc with ch 2 between: ch 5, 15 d c, and one in the 3rd of the 5 ch of the row below
_CH_5 = "ch 5, skip 2, d c in next, *ch 2, skip 2, d c in next; repeat from *; turn"
MESH_ROW = On(49, ("1 d c in each", _CH_5), closed=False, headings=_US)
_TOLD = "; ".join(["asked start-chain-assumed"] * 3)
UP_TO_THE_LAST = {
    f"Ch 5, d c in next d c, * ch 2, d c in next d c; repeat from *, {end}; turn": (
        f"17 dc, 32 ch; 14 x 1 dc; {_TOLD}"
    )
    for end in (
        "ch 2, d c in 3d of the 5 ch",
        "finishing with 1 double crochet on the third of the 5 chain",
    )
} | {
    "Ch 3, d c in next d c, * 2 d c in next sp, d c in next d c; repeat from *, 2 d c in next sp, d c in 3d of the 5 ch; turn": (
        # nothing goes into the first of the 16 spaces
        f"47 dc; 14 x 1 space; {_TOLD}"
    ),
    # as the help writes the end
    "Ch 5, d c in next d c, * ch 2, d c in next d c; repeat from *; turn": (
        "17 dc, 32 ch; 15 x 1 dc; asked start-chain-assumed; asked start-chain-assumed"
    ),
}

THREES_AND_ONES = PLAIN._replace(
    below=("*1 dc in next, 3 ch, miss 2, 3 tr in next, 3 ch, miss 2; repeat",)
)

_ON_CENTRES = "* 7 ch, 1 dc into dc, 7 ch, 1 dc into the centre of the 3 tr; rep from *"
BEGUN_IN_A_CENTRE = {
    # begun in the centre of a group, which is behind its first step
    f"Slip to the centre of the 3 tr, {_ON_CENTRES}": (
        "14 sc, 98 ch; 7 x 1 sc; 1 left over; does not close; asked perhaps-leads-back; asked row-does-not-close"
    ),
    # as its help writes it
    f"Slip to the centre of the 3 tr, 1 dc in centre of same run of 3 tr, {_ON_CENTRES}": (
        "16 sc, 112 ch; 7 x 1 sc; asked meets-its-start"
    ),
}


@cases(
    (PLAIN, UNDER_THE_CHAINS),
    (FLAT, {"3 ch for 1st tr, miss the first dc, 1 tr in each of the rest": "49 dc; 48 x 1 sc"}),
    (THREES, FIRST_SHELL_IN_SPACES),
    (SC, FIRST_SHELL),
    (SPACES_OF_3, SHELL_SHOWN),
    (
        SHELL_SHOWN_BEFORE,
        {"* Shell in shell; repeat": "60 dc, 20 ch; 10 x 1 shell"},
    ),
    (SC, SHELL_SHOWN_ON_STITCHES),
    (SHELLS, SHELL_BELOW),
    (MESH, SLIP_AND_THERE),
    (ARCHES_OF_5, LAST_TIME),
    (ARCHES_OF_5, OMITTED_LAST),
    (
        PICOTED,
        {
            "*1 dc in the picot, 6 ch; repeat from *, leaving out the last 6 chain": "12 sc, 66 ch; 11 x 1 picot"
        },
    ),
    (PLAIN, OMITTED_ON_STITCHES),
    (PLAIN, ENDING_WITH_CHAINS),
    (LOOPS_OF_5, FIRST_OF_A_REPEAT),
    (PLAIN, FIRST_OF_A_REPEAT_ON_STITCHES),
    (LOOPS_OF_5, STANDS_IN_THE_FIRST),
    (TREBLES, ON_THE_SECOND),
    (FORTY, PERHAPS_SHARED),
    (THREE_CHAINS, BEGUN_IN_A_LOOP),
    (MESH_ROW, UP_TO_THE_LAST),
    (THREES_AND_ONES, BEGUN_IN_A_CENTRE),
)
def test_rows_of_the_beginnings(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
