"""Edgings worked to and fro: turning chains, foundations, the other edge."""

from __future__ import annotations

from phrases.said import STITCHES, On, cases, said

OPEN = STITCHES._replace(loops=13, closed=False)
OPENED_BY_CHAINS = {
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
