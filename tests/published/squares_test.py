"""Square crochet: its rules of number, and the rows of pieces worked in it."""

from __future__ import annotations

import pytest
from published.restated import chain, closed_chain, counted


@pytest.mark.parametrize(
    ("chains", "squares"), [(724, 241), (1192, 397), (166, 55), (184, 61), (298, 99), (289, 96)]
)
def test_squares_are_divisible_by_three_and_one_over(chains: int, squares: int) -> None:
    """Ann S. Stephens 1854 (PG 73303) and The Ladies' Work-Book (PG 16605).

    241, 397 and 55 squares and their chains are the book's. 99 squares take 298
    chain, which a tidy prints as 289: enough for 96.
    """
    row = counted("squares", chain(chains))
    assert row.told() == []
    assert row.repeats(1) == [(squares, {"chain": 3})]
    assert row.made(1) == {"dc": squares + 1, "ch": 2 * squares}


@pytest.mark.parametrize(("chains", "left"), [(185, 1), (386, 1), (186, 2)])
def test_squares_on_any_other_number_leave_chains_over(chains: int, left: int) -> None:
    """Ann S. Stephens 1854 (PG 73303), among them the 386 chain of a night-cap (printed)."""
    row = counted("squares", chain(chains))
    assert row.errors() == [("row-does-not-close", 1)]
    told = "1 chain is left over" if left == 1 else f"{left} chains are left over"
    assert told in row.message(1)


def test_treble_squares_are_divisible_by_four_and_one_over() -> None:
    """Ann S. Stephens, The Ladies' Complete Guide to Crochet, 1854 (PG 73303)."""
    row = counted("treble-squares", chain(101))
    assert row.told() == []
    assert row.repeats(1) == [(25, {"chain": 4})]
    assert row.made(1) == {"tr": 26, "ch": 75}
    assert "3 chains are left over" in counted("treble-squares", chain(100)).message(1)


@pytest.mark.parametrize(
    ("chains", "squares"), [(180, 58), (330, 108), (360, 118), (267, 87), (261, 85)]
)
def test_squares_turned_on_their_foundation_take_six_more(chains: int, squares: int) -> None:
    """The Ladies' Work-Book (PG 16605).

    58 squares on 180 chain is the book's. A handkerchief case prints 261 chain
    for 87 squares, which take 267.
    """
    row = counted("turned-squares", chain(chains))
    assert row.told() == []
    assert row.repeats(1) == [(squares - 1, {"chain": 3})]
    assert row.made(1) == {"dc": squares, "ch": 2 * (squares - 1)}


def test_the_rows_of_a_night_cap_have_61_squares() -> None:
    """Ann S. Stephens, 1854 (PG 73303). 184 chain and 61 squares are the book's."""
    cap = counted("night-cap", chain(184))
    assert cap.told() == []
    assert cap.not_closing() == []
    rows = [{"dc": 86, "ch": 98}, {"dc": 110, "ch": 74}, {"dc": 74, "ch": 110}]
    assert [cap.made(n) for n in (1, 2, 3)] == rows


def test_the_narrowed_rows_of_a_night_cap_have_55_squares() -> None:
    """Ann S. Stephens, 1854 (PG 73303). Arithmetic; its row 19 is mended."""
    cap = counted("night-cap-narrowed", chain(166))
    assert cap.told() == []
    assert cap.not_closing() == []
    dc = [76, 96, 66, 80, 104, 68, 76]
    chains = [90, 70, 100, 86, 62, 98, 90]
    assert [cap.made(n)["dc"] for n in cap.rounds] == dc
    assert [cap.made(n)["ch"] for n in cap.rounds] == chains


def test_row_19_of_the_night_cap_as_printed_runs_short() -> None:
    """Ann S. Stephens, 1854 (PG 73303): its repeat "5 times" makes 65 squares, for 55."""
    printed = counted("night-cap-as-printed", chain(166))
    assert printed.not_closing() == [1]
    assert printed.told() == [("row-does-not-close", 1)]
    wide_enough = counted("night-cap-as-printed", chain(3 * 65 + 1))
    assert wide_enough.told() == []


TOILET_COVER = [
    # dc and chains of its rows 6 to 13, from their close and open squares
    (274, 296), (300, 270), (312, 258), (316, 254), (308, 262), (392, 178), (394, 176), (410, 160),
]  # fmt: skip


def test_every_row_of_a_toilet_cover_has_190_squares() -> None:
    """The Ladies' Work-Book (PG 16605).

    190 squares are the book's, and its repeats, 6 times more (7 in all); its row
    12 is mended.
    """
    cover = counted("toilet-cover", chain(3 * 190))
    assert cover.told() == []
    assert cover.not_closing() == []
    assert cover.repeats(1) == [(7, {"chain": 57})]
    made = [(cover.made(n)["dc"], cover.made(n)["ch"]) for n in cover.rounds]
    assert made == TOILET_COVER
    assert all(cover.total(n) == 570 for n in cover.rounds)


def test_row_12_of_the_toilet_cover_as_printed_is_five_squares_short() -> None:
    """The Ladies' Work-Book (PG 16605): 185 squares for 190."""
    printed = counted("toilet-cover-as-printed", chain(3 * 190))
    assert printed.made(7) == {"dc": 389, "ch": 166}
    assert printed.not_closing() == [7]
    assert printed.told() == [("row-does-not-close", 7)]
    assert "15 st are left over" in printed.message(7)


def test_a_band_of_squares_in_the_round_needs_no_stitch_over() -> None:
    """The Ladies' Work-Book (PG 16605). 624 chain and 26 repeats of 8 squares are the book's."""
    band = counted("band", closed_chain(624))
    assert band.told() == []
    assert band.repeats(1) == [(26, {"chain": 24})]
    assert band.total(1) == 624
