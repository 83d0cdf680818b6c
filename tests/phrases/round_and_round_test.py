"""Rows that go all round with something besides, the repeats of brackets with a number, what a
picot and a stitch are worked so often, and how rounds are closed and begun where they were closed.
"""

from __future__ import annotations

import pytest
from asked import asked
from phrases.said import ARCHES, FIVES, HEADINGS, LOOPS, STITCHES, On, cases, said
from worked import plain

from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border

SIXES_APART = On(36, ("6 plain, 3 chain, miss 3; repeat",))
"""Four times six sc and a space of 3 chains."""
RING = On(1)
THREES = On(36)
SIXTEEN = On(16, ("1 plain in each loop",))

BESIDES = {
    "Plain all round, working 3 plain under each chain": "36 sc; 28 x 0 space, 1 st",
    "Plain all round, working 5 under each chain": "44 sc; 28 x 0 space, 1 st",
    "Plain all round, putting 4 plain under every 3 chain": "40 sc; 28 x 0 ch-3 space, 1 st",
    "Plain all round, with 5 plain under each chain; join": "44 sc; 28 x 0 space, 1 st",
    "Plain, working 3 plain under each chain": "36 sc; 28 x 0 space, 1 st",
    "1 plain all round, and 5 under each chain": "44 sc; 28 x 0 space, 1 st; asked place-assumed",
    "1 plain in each stitch all round, with 5 plain under each chain": "44 sc; 28 x 0 space, 1 st",
    "Plain all round, 5 plain under each chain": "44 sc; 28 x 0 space, 1 st; asked place-assumed",
}

BESIDES_ARCHES = {
    "Plain all round, with 3 plain under each chain": "48 sc; 24 x 0 space, 1 st; asked place-assumed",
    "Double all round, 2 into each space": "36 sc; 24 x 0 space, 1 st; asked place-assumed",
    "Plain; working 1 stitch in each loop": "12 sc; 12 x 1 space; asked place-assumed",
}

BRACKETS = {
    "(5 chain, 1 plain in next loop), repeat 11 times": "12 sc, 60 ch",
    "(5 chain, 1 plain in next loop), repeat 11 times; join to the first plain": "12 sc, 60 ch",
    "*(5 chain, 1 plain in next loop), repeat 11 times": "12 sc, 60 ch",
    "* 1 plain, (5 chain, 1 plain in next loop), repeat twice, 5 chain; repeat from *": "12 sc, 60 ch; 3 x 4 loop",
}

SO_OFTEN = {
    "* 1 purl and 1 double on the next treble 4 times, 5 chain; repeat": "12 sc, 15 ch, 12 picot; 3 x 4 dc; asked times-of-the-row",
    "* 1 purl of 5 chain and 1 double on the next treble 4 times, 5 chain; repeat": "12 sc, 15 ch, 12 picot; 3 x 4 dc; asked times-of-the-row",
    "* 1 purl and 1 treble on treble 4 times, 5 chain; repeat": "12 dc, 15 ch, 12 picot; 3 x 4 dc",
}

SO_OFTEN_BEFORE = {
    "4 times 1 purl of 5 chain and 1 double on the next treble, 5 chain; repeat": "12 sc, 15 ch, 12 picot; 3 x 4 dc; asked times-of-the-row",
    "4 times 3 chain and 1 double on the next treble, 5 chain; repeat": "12 sc, 51 ch; 3 x 4 dc; asked times-of-the-row",
}

CLAIMED = {
    "plain, increasing in every second loop. (18 stitches.)": "18 sc; 6 x 2 loop; 0 x 0 loop",
    "plain, increasing in every second loop, join (18 plain)": "18 sc; 6 x 2 loop; 0 x 0 loop",
    "plain, increasing in every second loop (17 plain)": "18 sc; 6 x 2 loop; 0 x 0 loop; asked count-disagrees",
    "5 chain, 1 plain in next loop, 12 times (12 plain, 60 chain) (12 spaces)": "12 sc, 60 ch; asked times-of-the-row",
}

STARRED_TWICE = {
    "* 1 plain, 1 chain, miss 1, repeat five times more, 5 chain, miss 6, repeat from *": "12 sc, 22 ch; 2 x 18 loop; asked star-assumed",
    "* 1 plain, 1 chain, miss 1, repeat five times more, 5 chain, miss 6, repeat": "12 sc, 22 ch; 2 x 18 loop",
}

AGAIN = {
    "*1 plain, 5 chain, repeat, missing one loop between": "6 sc, 30 ch; 6 x 2 loop",
    "1 plain, 5 chain; repeat, missing one loop between": "6 sc, 30 ch; 6 x 2 loop",
    "*1 plain, 5 chain; repeat 5 times, missing one loop between": "6 sc, 30 ch",
    "1 plain, 5 chain, miss 2, the same to the end": "4 sc, 20 ch; 4 x 3 loop",
}

CLOSED = {
    "x 1 plain, 2 chain, x 12 times; slip on the first": "12 sc, 24 ch",
    "1 plain in each stitch; 1 single in the first plain": "12 sc; 12 x 1 loop",
    "(1 plain, 2 chain) 12 times; 1 single on the 1st plain": "12 sc, 24 ch",
    "(1 plain, 2 chain) 12 times, 1 slip stitch in the first": "12 sc, 24 ch",
    "1 plain in each stitch, sl st to first": "12 sc; 12 x 1 loop",
    "(1 treble, 2 chain) 12 times; slip stitch to top of first treble": "12 dc, 24 ch",
    "12 plain, 5 chain, 1 single in the first": "12 sc, 1 picot",
    "12 plain, 1 single in the first plain": "12 sc; does not close; asked place-unclear; asked row-does-not-close",
}

NOT_ASKED = {
    "(8 plain under the 5 chain) 6 times": "48 sc",
    "(1 plain in the loop) 6 times": "6 sc; asked perhaps-one-place",
}

CLOSED_IN_A_RING = {
    "16 plain in the ring; 1 single in the first plain": "16 sc",
    "3 chain, 15 treble in the ring, 1 single on the top of the 3 chain": "16 dc; asked start-chain-assumed",
    "5 chain, (1 treble in the ring, 2 chain) 11 times, join": "12 dc, 24 ch; asked start-chain-assumed",
    "1 plain, 3 chain, repeat 11 times in the ring": "12 sc, 36 ch; asked times-of-the-row",
    "(1 plain, 3 chain), repeat 11 times in the ring": "12 sc, 36 ch; asked times-of-the-row",
}

CLOSED_IN_CHAINS = {
    "5 chain, miss 1, (1 treble, 2 chain, miss 1) 7 times; 1 slip stitch in the 3rd of the 5 chain": "8 dc, 16 ch; asked start-chain-assumed",
}

CLOSED_BY_A_TALL_STITCH = {
    "1 plain, 5 chain, miss 3, (1 plain, 5 chain, miss 3) twice, 1 plain, 2 chain, miss 3, join with 1 treble to the first plain": "4 sc, 17 ch; does not close; asked row-does-not-close",
    "1 plain, 5 chain, miss 3, (1 plain, 5 chain, miss 3) twice, 1 plain, 2 chain, miss 3, join to the first plain by a treble": "4 sc, 17 ch; does not close; asked row-does-not-close",
    "1 plain in each plain; join with 1 plain to the first plain": "16 sc; 16 x 1 sc",
}

BEGUN_IN_A_SPACE = {
    "Sl st in first space, 3 chain, 2 treble in same space, * 3 chain, 3 treble in next space; repeat from *; 3 chain, join": "36 dc, 36 ch; 11 x 1 space; asked perhaps-just-made; asked start-chain-assumed",
    # a slip stitch of the row itself
    "1 single in first space, 3 chain, 1 single in same space, * 3 chain, 1 single in next space, 3 chain, 1 single in same space; repeat from *": "24 ss, 72 ch; 11 x 1 space; asked perhaps-leads-on; asked meets-its-start",
}

BEGUN = {
    "Chain 1, a double in same place, 1 double in each remaining stitch, join": "12 sc; 11 x 1 st",
    "1 chain, 2 double in same stitch, 1 double in each stitch, join": "13 sc; 11 x 1 st",
    "Chain 1, a double in same place, * 3 chain, miss 2, 1 double; repeat from *, join": "4 sc, 12 ch; 3 x 3 st; asked meets-its-start",
}


@cases(
    (SIXES_APART, BESIDES),
    (ARCHES, BESIDES_ARCHES),
    (LOOPS, BRACKETS),
    (STITCHES, SO_OFTEN),
    (STITCHES, SO_OFTEN_BEFORE),
    (LOOPS, CLAIMED),
    (THREES, STARRED_TWICE),
    (LOOPS, AGAIN),
    (LOOPS, CLOSED),
    (FIVES, NOT_ASKED),
    (RING, CLOSED_IN_A_RING),
    (SIXTEEN, CLOSED_IN_CHAINS),
    (SIXTEEN, CLOSED_BY_A_TALL_STITCH),
    (ARCHES, BEGUN_IN_A_SPACE),
    (STITCHES, BEGUN),
)
def test_a_row_comes_to(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    ("row", "edits"),
    [
        (
            "ch 5, *skip 1, 1 dc in next st, ch 2; repeat from * 6 times more; join",
            ["write skip 1 behind the repeat"],
        ),
        ("ch 5, (skip 1, 1 dc in next st, ch 2) 7 times; join", ["write skip 1 behind the repeat"]),
        # with that skip in words nothing is left
        ("ch 5, *skip 1, 1 dc in next st, ch 2; repeat from * 6 times more; skip 1; join", []),
    ],
)
def test_a_skip_under_the_last_chains_of_so_many_times_is_offered(
    row: str, edits: list[str]
) -> None:
    text = f"round 1: 1 sc in each loop.\nround 2: {row}.\n"
    told = asked(text, plain(16))
    assert [help_ for code, help_ in told if code == "perhaps-read-so"] == edits


@pytest.mark.parametrize(
    ("row", "passed"),
    [
        ("Ch 3, shell in shell, * ch 2, shell in shell; repeat, turn", True),
        ("Ch 3, 1 treble in next treble, 1 treble in each treble, turn", False),
    ],
)
def test_a_shell_that_a_start_chain_stands_on_is_told(row: str, *, passed: bool) -> None:
    text = f"{HEADINGS}round 1: (2 treble, 2 chain, 2 treble) in each loop.\nround 2: {row}.\n"
    border, _ = read_border(Source("shells.border", text))
    assert border is not None
    _, told = read_rounds(border, lambda source, name: None)
    (assumed,) = [f for f in told if f.code == "start-chain-assumed"]
    assert ("if that is one of a shell, this one is passed over" in assumed.message) == passed
    assert '"ch 3, not counted"' in (assumed.help or "")
