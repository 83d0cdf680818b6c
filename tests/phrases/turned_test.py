"""Edgings worked to and fro: turning chains, foundations, the other edge."""

from __future__ import annotations

import pytest
from phrases.said import STITCHES, On, cases, last_of, said

from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import End, Ending, Text

OPEN = STITCHES._replace(loops=13, closed=False)
OPENED_BY_CHAINS = {
    # the first is the one that the chains stand on
    "turn, 3 chain, miss the first treble, 12 treble": "13 dc",
    "3 chain, skip first, 1 treble in each treble": "13 dc; 12 x 1 dc",
    "turn, 5 chain, miss the first treble, 12 treble": "13 dc, 2 ch",
    # or perhaps it is
    "turn, 3 chain, miss 1, 11 treble": "12 dc; asked start-chain-assumed; asked perhaps-missed",
    "3 chain, 1 treble in the second treble, 10 treble": (
        "12 dc; asked start-chain-assumed; asked perhaps-counted-on"
    ),
    "3 chain, turn; * 1 treble, 1 chain, miss 1; repeat from *": (
        "7 dc, 6 ch; 6 x 2 st; asked start-chain-assumed"
    ),
    "5 ch., turn, miss 2, * 1 treble on the next, 2 chain, miss 2; repeat from *; 1 treble": (
        "5 dc, 8 ch; 3 x 3 st; asked start-chain-assumed"
    ),
    "Turn with 3 chain, 1 treble in each": "13 dc; 12 x 1 st; asked start-chain-assumed",
    "3 chain to turn, 1 treble in each": "13 dc; 12 x 1 st; asked start-chain-assumed",
    "3 chain for turning, 1 treble in each": "13 dc; 12 x 1 st; asked start-chain-assumed",
    "3 chain for 1 treble, turn, 1 treble in each": "13 dc; 12 x 1 st",
    "1 chain, turn, 1 plain in each": "13 sc; 13 x 1 st",
    "Turn, 1 chain, work 1 plain in each": "13 sc; 13 x 1 st",
    # made once, also where the row is worked over and over
    "3 chain, turn; 1 treble, 1 chain, miss 1; repeat": (
        "7 dc, 6 ch; 6 x 2 st; asked start-chain-assumed"
    ),
}
ENDED_BY_CHAINS = {
    "1 plain in each, 3 chain to turn": "13 sc; 13 x 1 st",
    "1 plain in each; turn with 3 chain": "13 sc; 13 x 1 st",
}


@cases((OPEN, OPENED_BY_CHAINS), (OPEN, ENDED_BY_CHAINS))
def test_turning_chains(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_turning_chains_at_either_end_of_a_turn_are_made_once() -> None:
    """As two turns between the same rows are one."""
    before = OPEN._replace(below=("1 treble in each loop; 3 chain, turn",))
    alone = said("1 treble in each", before)
    assert alone == "13 dc; 12 x 1 st; asked start-chain-assumed"
    assert said("3 chain, turn; 1 treble in each", before) == f"{alone}; asked start-chain-assumed"


def test_a_round_turned_at_its_head_goes_back_from_where_the_last_one_ended() -> None:
    below = ("9 plain in the next loop, 3 double treble in the next",)
    round_ = On(2, below)
    assert said("3 plain; 1 plain in each plain", round_) == "9 sc; 6 x 1 sc"
    back = "12 sc; 9 x 1 sc"
    assert said("1 chain, turn; 3 plain; 1 plain in each plain", round_) == back
    assert said("turn; 3 plain; 1 plain in each plain", round_) == back


# --- the foundation --------------------------------------------------------------------------

CHAIN = On(15, closed=False)
NAMED = "asked foundation-named"
PASSED = "asked foundation-passed"
FOUNDATIONS = {
    "Make a chain of 15 stitches in white, join the ends, and work one round plain": (
        f"15 sc; 15 x 1 loop; {NAMED}"
    ),
    "Make 15 chain, turn, miss 5, 1 treble in the next, 2 chain, miss 2, 6 treble; 1 treble in the last": (
        f"8 dc, 2 ch; {NAMED}; {PASSED}"
    ),
    "Make a chain of 15 stitches; 1 treble in each": f"15 dc; 15 x 1 loop; {NAMED}",
    "Make 15 chain. 1 plain in each": f"15 sc; 15 x 1 loop; {NAMED}",
    "On a foundation of 15 chain 1 plain in each foundation chain": (
        f"15 sc; 15 x 1 loop; {NAMED}"
    ),
    "A foundation chain of 15; 1 treble in each foundation chain": f"15 dc; 15 x 1 loop; {NAMED}",
    "Commence with a chain of fifteen; 1 treble in the fourth, 11 treble": f"12 dc; {NAMED}; {PASSED}",
    "Chain 15; 1 treble in the 4th ch from hook, 11 treble": f"12 dc; {NAMED}; {PASSED}",
    "Commence with 15 ch., turn, 1 tr. in 6th ch., 9 tr": f"10 dc; {NAMED}; {PASSED}",
    "Make 15 chain; 1 plain in the 1st chain from the needle, 14 plain": f"15 sc; {NAMED}",
    "15 chain, turn, 1 treble on the 8th stitch, 7 treble": f"8 dc; {NAMED}; {PASSED}",
    "Miss 3 ch, 1 treble in 4th ch from hook, 11 treble": f"12 dc; {PASSED}",
    "Miss 5 chain, into the 6th from the hook put 3 treble, 2 chain, 3 treble; miss 8, 1 treble": (
        f"7 dc, 2 ch; {PASSED}"
    ),
    "Miss the last 3 chain, 12 treble": f"12 dc; {PASSED}",
    "Miss the last 3 stitches of the chain, 12 treble": f"12 dc; {PASSED}",
    "Chain 15 stitches, turn, 1 treble in 8th stitch, 7 treble": f"8 dc; {NAMED}; {PASSED}",
    # no foundation: chains of the row
    "Make 5 chain, 1 plain in the next, *make 5 chain, 1 plain in next; repeat": (
        "15 sc, 75 ch; 15 x 1 loop; asked start-chain-assumed"
    ),
    "Work 3 chain, turn, 14 treble": "15 dc; asked start-chain-assumed",
    "Commence with a chain of 5; 1 treble in next, *2 chain, miss 1, 1 treble in next; repeat": (
        "8 dc, 14 ch; 6 x 2 loop; 1 left over; does not close; asked start-chain-assumed; "
        "asked row-does-not-close"
    ),
}
FROM_THE_HOOK = {
    "1 treble in the 6th chain from the needle, 1 treble in the next, 2 chain, miss 2, 6 treble": (
        f"8 dc, 2 ch; {PASSED}"
    ),
    "1 plain in 2nd ch from hook, 13 plain": f"14 sc; {PASSED}",
    "(2 treble, 2 chain, 2 treble) in the 5th st. from the hook, 10 treble": f"14 dc, 2 ch; {PASSED}",
    # picots, as anywhere
    "*5 chain, 1 single in the 5th chain from the hook, 1 plain; repeat": (
        "15 sc, 15 picot; 15 x 1 loop"
    ),
    "*5 chain, fasten in the 5th chain from the hook to form a picot, 1 plain; repeat": (
        "15 sc, 15 picot; 15 x 1 loop"
    ),
    "*1 plain, 7 chain, 1 single in the 5th from the needle, 2 chain, miss 2; repeat": (
        "5 sc, 20 ch, 5 picot; 5 x 3 loop"
    ),
}
RINGS = {
    "Ch 8, slip in 8th st from needle; 1 ch, 16 plain in ring, slip in first plain": f"16 sc; {NAMED}",
    "Ch 7, join; ch 6 (1 treble, 3 ch), 1 treble in ring, * ch 3, 1 treble in ring; repeat from * "
    "3 times, ch 3, slip in 3d of ch 6": f"6 dc, 18 ch; {NAMED}",
    "Ch 8, slip in 1st st; ch 3, 15 treble in ring, slip in top of ch 3": (
        f"16 dc; {NAMED}; asked start-chain-assumed"
    ),
    "7 chain, close the ring, 3 chain, 15 treble in the ring, 1 slip on the 3rd chain": (
        f"16 dc; {NAMED}; asked start-chain-assumed"
    ),
    "Chain 8 stitches, join into a circle, 16 treble in the circle": f"16 dc; {NAMED}",
    "8 ch, close it for a ring; 16 treble in it": f"16 dc; {NAMED}",
    "6 chain, close it into a round, and under it work 16 treble": f"16 dc; {NAMED}",
    "Make 8 chain, join into a circle, and work in it 16 double": f"16 sc; {NAMED}",
    "Make a foundation of 8 st., close these in a ring with 1 sl., and on this work 16 plain": (
        f"16 sc; {NAMED}"
    ),
    "Make 8 ch., close in a ring with 1 sl. (slip stitch), in it 16 dc. (double crochet); finally, "
    "1 sl. on the first dc": f"16 sc; {NAMED}",
    "8 ch, join in a ring; 3 ch., 23 tr. in the ring, join to the top of the 3 ch": (
        f"24 dc; {NAMED}; asked start-chain-assumed"
    ),
    "8 chain, join; *3 treble in the ring, 3 chain; repeat from * 5 times": f"18 dc, 18 ch; {NAMED}",
    "Chain 8, join with a sl st to the first; (1 plain, 3 ch) 8 times in ring; join": (
        f"8 sc, 24 ch; {NAMED}"
    ),
    "8 ch, join, 6 treble in the ring, 3 ch, 6 treble in the ring, 3 chain": f"12 dc, 6 ch; {NAMED}",
}


@cases((CHAIN, FOUNDATIONS), (CHAIN, FROM_THE_HOOK), (On(1), RINGS))
def test_a_foundation_is_the_edge(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_a_chain_joined_for_a_ring_of_stitches_is_an_edge_of_so_many() -> None:
    row = "Make 8 chain, join; 2 plain in each chain"
    assert said(row, On(8)) == f"16 sc; 8 x 1 loop; {NAMED}"


def test_a_ring_is_worked_once_also_where_rows_are_repeated() -> None:
    ring = On(1, headings=f"{CHAIN.headings}rows without a repeat: are repeated\n")
    told = f"{NAMED}; asked start-chain-assumed"
    assert said("Chain 8, join; 3 chain, 19 treble in ring, join", ring) == f"20 dc; {told}"
    assert said("Chain 8, join into a ring, 16 plain in it", ring) == f"16 sc; 1 x 1 loop; {NAMED}"


def test_chains_that_are_joined_further_on_are_no_foundation() -> None:
    row = "*1 plain in next, 6 chain, join, 3 plain in next; repeat"
    assert "foundation" not in said(row, STITCHES)
    assert "foundation" not in said("6 chain, join into a ring, 12 plain in the next", STITCHES)
    assert "foundation" not in said("6 chain, join, 12 plain", CHAIN)


# --- the end of a row ------------------------------------------------------------------------

TURNED = OPEN._replace(below=("5 chain for 1 treble and 2 chain, miss 2, *1 treble, 2 chain, miss 2; repeat; 1 treble",))  # fmt: skip
LOOPED = On(13, ("1 plain in first, *5 chain, miss 1, 1 plain in next; repeat",), closed=False)
TOP = "asked start-chain-assumed"
AT_THE_END = {
    "12 plain; 1 treble in 3rd st of ch at end": f"12 sc, 1 dc; {TOP}",
    "12 plain; 1 treble in the 3rd of the 5 ch at the end": f"12 sc, 1 dc; {TOP}",
    "12 plain; 1 treble in the 3 chain at end": f"12 sc, 1 dc; {TOP}",
    "12 plain; 1 double treble in 4 ch at the end": f"12 sc, 1 tr; {TOP}",
    "12 plain; 1 treble in ch at end": f"12 sc, 1 dc; {TOP}",
    "12 plain; 1 treble in the chain at the end, turn": f"12 sc, 1 dc; {TOP}",
    "12 plain; 1 plain in the stitch at end": "13 sc",
}
ENDS_IN_LOOPS = {
    "8 treble under the loop of five chain at the end": "8 dc",
    "8 treble in the loop of chain at end": "8 dc",
    "1 plain in the 5 chain at the end": "1 sc",
    "1 plain in 3rd of the 5 ch at end": "1 sc",
    "1 treble under the 5 ch at end": "1 dc",
    "1 plain in loop at end": "1 sc",
}


@cases((TURNED, AT_THE_END), (LOOPED, ENDS_IN_LOOPS))
def test_what_is_at_the_end_is_the_last(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_chains_at_the_end_that_are_not_there_are_told() -> None:
    assert "asked run-too-short" in said("6 treble in the 3 chain at end", LOOPED).split("; ")
    assert "asked not-understood" in said("1 cluster in the 3 chain at end", LOOPED).split("; ")


# --- the other edge --------------------------------------------------------------------------

SIDES = {
    "On one side of the mignardise *1 plain, 3 chain; repeat": (
        "13 sc, 39 ch; 13 x 1 st; asked taken-as-remark"
    ),
    "On the other side of the foundation chain work 1 treble in each": (
        "13 dc; 13 x 1 st; asked other-edge"
    ),
    "Along the opposite edge of the braid: 1 treble in each": "13 dc; 13 x 1 st; asked other-edge",
    "on the other side 1 treble in each": "13 dc; 13 x 1 st; asked other-edge",
}


@cases((OPEN, SIDES))
def test_another_edge_at_the_head_of_a_row_is_told(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_the_first_row_is_along_the_edge_that_it_is_counted_on() -> None:
    row = "on the other side of the braid 1 treble in each"
    assert said(row, CHAIN) == "15 dc; 15 x 1 loop; asked taken-as-remark"


def test_the_other_edge_within_a_row_is_not_read() -> None:
    assert "asked unknown-word" in said("6 plain; along the other edge 6 plain", STITCHES)


# --- before the first row --------------------------------------------------------------------

SPOKEN_OF = {
    "Chain 15. 1st row.--1 treble in 6th stitch, 9 treble": f"10 dc; {NAMED}; {PASSED}",
    "Chain 15.\n1st row.--1 treble in 6th stitch, 9 treble": f"10 dc; {NAMED}; {PASSED}",
    "Make a chain of fifteen\n1st row.--1 plain in each st of chain": f"15 sc; 15 x 1 loop; {NAMED}",
    "15 ch.\n1st. row.--1 plain in each.": f"15 sc; 15 x 1 loop; {NAMED}",
    "Make a foundation chain. 1st row: 1 plain in each": f"15 sc; 15 x 1 loop; {NAMED}",
    "Make a chain the length required. 1st row: 1 plain in each": (
        "15 sc; 15 x 1 loop; asked taken-as-remark"
    ),
    "Make a chain of any even number of stitches.\n1st row: 1 plain in each": (
        "15 sc; 15 x 1 loop; asked taken-as-remark"
    ),
    "-- Chain 15. -- 1st row: 1 plain in each": "15 sc; 15 x 1 loop",
    "1st row: 1 treble in the 1st, * 1 ch, miss 1, 1 treble in next; repeat to end of chain; turn": (
        "8 dc, 7 ch; 7 x 2 loop"
    ),
}


@cases((CHAIN, SPOKEN_OF))
def test_the_chain_before_the_first_row_is_the_edge(on: On, row: str, comes_to: str) -> None:
    assert last_of(row, on) == comes_to


def test_a_chain_spoken_of_before_another_row_is_no_heading() -> None:
    asked = last_of("Chain 15.\nround 2: 1 plain in each", CHAIN)
    assert "asked bad-heading" in asked


# --- what is fastened to the side of the work ------------------------------------------------

TWO_BELOW = On(13, ("1 treble in each loop", "turn; 1 treble in each treble"), closed=False)
TO_THE_SIDE = (
    "turn; 1 plain in each treble, fasten with 1 plain in end of 1st row; turn",
    "turn; 1 plain in each treble, fasten in end of 1st row with a plain",
    "turn; 1 plain in each treble, 1 plain in end of row 1",
    "turn; 1 plain in each treble, 1 plain in the edge of the 1st row",
    "turn; 1 plain in each treble, fasten in corner of 1st row",
    "turn; 1 plain in each treble, 1 plain in the end of the commencing chain",
    "turn; 1 plain in each treble, catching down with a plain at end of foundation",
    "turn; 1 plain in each treble, fasten to foundation with one plain",
    "turn; 1 plain in each treble, fasten to end of foundation chain",
    "turn; 1 plain in each treble, 1 plain to the end of the 1st row",
    "turn; 1 plain in each treble, 1 plain in the edge of the foundation; turn",
    "turn; 1 plain in each treble, fasten with 1 plain in the 4th chain of the foundation; turn",
    "turn; 1 plain in each treble, 1 plain in the last ch of foundation",
    "turn; 1 plain in each treble, 1 plain in loop of foundation row",
    "turn; 1 plain in each treble, 1 plain in the next foundation stitch",
    "turn; 1 plain in each treble, 1 plain in the foundation chain",
    "turn; 1 plain in each treble, 1 plain in the corner of the foundation",
    "turn; 1 plain in each treble, fasten with a plain in the loop of 1st row",
    "turn; 1 plain in each treble, 1 plain in the loop of chain at the beginning of the 1st row",
    "turn; 1 plain in each treble, fasten with 1 plain in top of last treble of 1st row; turn",
    "turn; 1 plain in each treble, catch with a plain in the 3 chain of the first row. Turn",
)


@cases((TWO_BELOW, dict.fromkeys(TO_THE_SIDE, "13 sc; 13 x 1 dc; asked at-the-side")))
def test_the_side_of_the_work_is_no_place_of_a_row(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_chains_that_are_fastened_there_are_no_stitch_of_the_next_row() -> None:
    rows = (
        "1st row: 1 treble in each loop; turn",
        "2nd row: 1 treble in each treble; turn",
        "3rd row: 1 treble in each treble, 6 chain, 1 plain in end of 1st row; turn",
        "4th row: 10 treble in 6 chain, 1 plain in each treble; turn",
    )
    assert last_of("\n".join(rows), On(7, (), closed=False)) == (
        "10 dc, 7 sc; 7 x 1 dc; asked at-the-side"
    )


@pytest.mark.parametrize("row", ["4 plain, 3 chain, 4 plain", "1 treble, 2 chain, 1 treble"])
def test_a_list_at_the_side_may_all_go_there(row: str) -> None:
    assert "asked not-understood" in said(
        f"turn; 1 plain in next, {row} in end of 1st row", TWO_BELOW
    )


@pytest.mark.parametrize(
    "step", ["1 plain in the 3d ch of the foundation", "1 plain in end of 1st row"]
)
def test_what_goes_into_the_side_can_be_set_apart(step: str) -> None:
    row = f"turn; 1 plain in each treble, -- {step} --; turn"
    assert said(row, TWO_BELOW) == "13 sc; 13 x 1 dc"


def test_the_first_row_is_worked_into_the_foundation() -> None:
    assert said("1 plain in next 4, 1 plain in the foundation chain").startswith(
        "5 sc; does not close"
    )


def test_the_end_of_the_row_below_is_its_last_stitch() -> None:
    assert said("turn; 12 plain; 1 plain in end of row", TWO_BELOW) == "13 sc"


def test_what_is_fastened_to_the_side_leaves_the_step_before_it() -> None:
    for stop in (". ", ", ", " ", ", fasten with "):
        row = f"1 dc in each of next 12 st, 1 dc in next tr{stop}1 dc in end of 1st row"
        assert said(row, TWO_BELOW) == "13 sc; asked at-the-side", stop


def test_a_row_of_all_spaces_still_turns() -> None:
    text = "terms: us\nchains count as stitches: yes\nspace = ch 2, skip 2, dc in next st\nround 1: all sps; turn\n"
    text += "round 2: all sps, as 1st row; turn\n"
    border, _ = read_border(Source("a", text))
    assert border is not None
    assert isinstance(border.rows[1].body, Text)
    assert border.rows[1].body.ends == (End(Ending.TURN),)


# --- chains at the head of a row -------------------------------------------------------------

RING = On(12, ("*1 plain in next loop, 5 chain; repeat from *",))
JOINED = {
    "3 chain, 4 treble in loop, 1 plain in plain; repeat; end with a single in top of 3 ch": (
        "48 dc, 12 sc, 36 ch; 12 x 1 space; asked perhaps-start-chain"
    ),
    "4 chain, 1 plain in loop, 3 chain; repeat, ending with a single in 3rd of 4 chain": (
        "12 sc, 84 ch; 12 x 1 space; asked perhaps-start-chain"
    ),
    "4 chain, 1 plain in loop, 3 chain; repeat, join to the 4th chain": (
        "12 sc, 84 ch; 12 x 1 space; asked perhaps-start-chain"
    ),
    "4 chain, 1 plain in loop, 3 chain; repeat, join to the 1st plain": (
        "12 sc, 84 ch; 12 x 1 space"
    ),
    "*4 chain, 1 plain in loop, 3 chain; repeat from *, join to the 4th chain": (
        "12 sc, 84 ch; 12 x 1 space"
    ),
    "3 chain, 2 treble in space, 1 treble in plain; repeat, and end with 3 treble in last space": (
        "36 dc, 36 ch; 12 x 1 space; does not close; asked perhaps-start-chain; asked perhaps-instead; asked run-too-short; asked row-does-not-close"
    ),
    "3 chain for 1st treble, 2 treble, 2 chain, miss 3; repeat": (
        "29 dc, 28 ch; 14 x 5 st; 1 left over; does not close; asked perhaps-start-chain; asked row-does-not-close"
    ),
    "3 chain for 1st treble, 1 treble, 2 chain, miss 2; repeat": (
        "24 dc, 46 ch; 23 x 3 st; 2 left over; does not close; asked row-does-not-close"
    ),
}


@cases((RING, JOINED))
def test_chains_at_the_head_may_be_made_once(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


LED = {
    "1 single in next loop, 3 chain, 2 treble in loop, 3 chain; repeat": "asked perhaps-leads-on",
    "1 single in first loop, 5 treble in same loop, 1 plain in next; repeat": (
        "asked perhaps-leads-on"
    ),
    "1 single in next loop, 5 treble in next loop; repeat": "",
}


@pytest.mark.parametrize(("row", "asked"), LED.items())
def test_a_slip_at_the_head_of_a_repeat_may_lead_on(row: str, asked: str) -> None:
    assert said(row, RING).partition("asked")[1:] == ("asked" if asked else "", asked[5:])


FROM_THE_HOOK = {
    "30 chain, 1 treble in 4th chain from the hook, 1 chain, miss 1, 1 treble in next; repeat": (
        "14 dc, 13 ch; 13 x 2 loop; asked foundation-named; asked foundation-passed"
    ),
    "30 chain. 1 plain in 2nd chain from the hook, 5 chain, miss 3, 1 plain in next; repeat": (
        "8 sc, 35 ch; 7 x 4 loop; asked foundation-named; asked foundation-passed"
    ),
    "30 chain. 1 plain in 2nd chain from the hook, * 5 chain, miss 3, 1 plain; repeat from *": (
        "8 sc, 35 ch; 7 x 4 loop; asked foundation-named; asked foundation-passed"
    ),
    "6 chain, 1 plain in 2nd chain from the hook, 5 chain, miss 3, 1 plain in next; repeat": (
        "7 sc, 63 ch, 7 picot; 7 x 4 loop; 2 left over; does not close; asked row-does-not-close"
    ),
}
WITHOUT_A_HOOK = {
    "30 chain, 1 treble in 6th st, *2 chain, miss 2, 1 treble in next; repeat from *": (
        "9 dc, 16 ch; 8 x 3 loop; asked foundation-named; asked foundation-passed"
    ),
    "15 chain, 1 plain in 5th st; repeat": ("6 sc, 90 ch; 6 x 5 loop"),
}
THIRTY = On(30, closed=False)


@cases((THIRTY, FROM_THE_HOOK), (THIRTY, WITHOUT_A_HOOK))
def test_a_place_from_the_hook_comes_once(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_the_second_stitch_of_the_chain_is_that_of_the_edge() -> None:
    row = "1 plain in 2nd st of chain and in each stitch to the end"
    assert said(row, THIRTY) == "29 sc; 28 x 1 loop"
