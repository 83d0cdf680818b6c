"""Pieces worked on a foundation chain: a cuff, an anti-macassar, edgings, a collar."""

from __future__ import annotations

import pytest
from published.restated import Made, chain, closed_chain, counted


def test_a_cuff_closes_on_85_chains() -> None:
    """Mlle Riego, Knitting, Crochet, and Netting, 1846 (PG 36669).

    85 chain is the book's, and the treble beside the pattern: 6 x 14 + 1.
    """
    cuff = counted("cuff", chain(85))
    assert cuff.told() == []
    assert cuff.not_closing() == []
    assert cuff.repeats(1) == [(6, {"chain": 14})]
    assert [cuff.repeats(n) for n in (2, 3, 4, 5)] == 4 * [[(6, {"st": 14})]]
    assert [cuff.made(n) for n in (1, 2, 3, 4, 5)] == 5 * [{"dc": 61, "ch": 24}]


def test_turning_chains_that_are_counted_spoil_the_next_row_of_the_cuff() -> None:
    """Mlle Riego, Knitting, Crochet, and Netting, 1846 (PG 36669): 87, of which 2 are left."""
    cuff = counted("cuff-turning-chain-counted", chain(85))
    assert cuff.made(1) == {"dc": 61, "ch": 26}
    assert cuff.repeats(2) == [(6, {"st": 14})]
    assert cuff.made(2) == {"dc": 61, "ch": 24}
    assert cuff.left_over(2) == [2]
    assert cuff.not_closing() == [2]
    assert cuff.told() == [("row-does-not-close", 2)]


def test_an_anti_macassar_closes_on_145_chains() -> None:
    """Mlle Riego, Knitting, Crochet, and Netting, 1846 (PG 36669). 145 chain is the book's."""
    piece = counted("anti-macassar", chain(145))
    assert piece.told() == []
    assert piece.not_closing() == []
    assert piece.repeats(1) == [(12, {"chain": 12})]
    assert [piece.repeats(n) for n in (2, 3, 4)] == 3 * [[(12, {"st": 12})]]
    rows = [{"dc": 97, "ch": 48}, {"dc": 85, "ch": 60}, {"dc": 73, "ch": 72}, {"dc": 61, "ch": 84}]
    assert [piece.made(n) for n in (1, 2, 3, 4)] == rows


PATTERNS = 24  # 792 chain in patterns of 33 [book]
EDGING: dict[int, tuple[int, Made, Made]] = {
    # row: repeats to a pattern, what one takes, what a pattern has
    1: (11, {"chain": 3}, {"sc": 11, "ch": 33}),
    2: (11, {"ch-3 space": 1}, {"sc": 11, "ch": 33}),
    3: (11, {"ch-3 space": 1}, {"sc": 11, "ch": 33}),
    4: (11, {"ch-3 space": 1}, {"sc": 33}),
    5: (1, {"st": 33}, {"sc": 11, "ch": 37}),
    6: (1, {"ch-3 space": 10}, {"sc": 26, "dc": 7, "ch": 24}),
    7: (1, {"st": 57}, {"sc": 8, "dc": 8, "ch": 48}),
    8: (16, {"ch-3 space": 1}, {"sc": 48}),
    9: (1, {"st": 48}, {"sc": 14, "ch": 58}),
    10: (1, {"ch-3 space": 6}, {"sc": 54}),
    11: (1, {"st": 54}, {"sc": 20, "ch": 59}),
    12: (1, {"ch-3 space": 3}, {"sc": 18, "dc": 32}),
}


def test_an_edging_of_33_stitches_to_a_pattern_closes_row_by_row() -> None:
    """Mlle Riego, The Crochet Book, 4th series, 1848.

    792 chain and 33 to a pattern are the book's; the rest is arithmetic, and
    only the repeats are reckoned, round and round.
    """
    edging = counted("edging", closed_chain(792))
    assert edging.told() == []
    assert edging.not_closing() == []
    for number, (times, takes, made) in EDGING.items():
        assert edging.repeats(number) == [(times * PATTERNS, takes)], number
        assert edging.made(number) == {k: n * PATTERNS for k, n in made.items()}, number
    totals = [44, 44, 44, 33, 48, 57, 64, 48, 72, 54, 79, 50]
    assert [edging.total(n) // PATTERNS for n in edging.rounds] == totals


def test_row_6_of_the_edging_as_printed_does_not_fit_row_7() -> None:
    """Mlle Riego, The Crochet Book, 4th series, 1848.

    5 ch before each treble makes 71 to a pattern, and row 7 takes 57: with 3 ch
    it makes 57. Row 7 is taken by its running count in both.
    """
    mended = counted("edging-counted", closed_chain(792))
    assert mended.told() == []
    assert mended.repeats(7) == [(24, {"st": 57})]
    assert mended.made(7) == {"sc": 192, "dc": 192, "ch": 1152}
    printed = counted("edging-as-printed", closed_chain(792))
    assert printed.total(6) == 71 * PATTERNS
    assert printed.repeats(7) == [(29, {"st": 57})]
    assert printed.left_over(7) == [51]
    assert printed.not_closing() == [7]
    assert printed.told() == [("row-does-not-close", 7)]


@pytest.mark.parametrize("sevens", [1, 20])
def test_a_honiton_border_takes_sevens_and_two_over(sevens: int) -> None:
    """Ann S. Stephens, 1854 (PG 73303). "Sevens and two over" is the book's."""
    border = counted("honiton", chain(7 * sevens + 2))
    assert border.told() == []
    assert border.not_closing() == []
    assert border.repeats(1) == [(sevens, {"chain": 7})]
    assert border.made(1) == {"sc": 2 + 2 * sevens, "ch": 5 * sevens}
    assert border.repeats(2) == [(sevens, {"ch-5 space": 1})]
    assert border.made(2) == {"sc": 2 + 2 * sevens, "dc": 4 * sevens, "tr": 3 * sevens}
    assert border.total(2) == 9 * sevens + 2


@pytest.mark.parametrize(("chains", "left"), [(141, 6), (143, 1), (147, 5)])
def test_a_honiton_border_on_any_other_number_leaves_chains_over(chains: int, left: int) -> None:
    """Ann S. Stephens, The Ladies' Complete Guide to Crochet, 1854 (PG 73303)."""
    border = counted("honiton", chain(chains))
    assert border.left_over(1) == [left]
    assert border.told() == [("row-does-not-close", 1)]


def test_a_collar_closes_neither_on_its_180_chains_nor_in_its_row_4() -> None:
    """Ann S. Stephens, 1854 (PG 73303).

    180 chain is the book's. Row 2 wants 6k + 3 and leaves three over; row 4 wants
    6k + 1 and leaves two.
    """
    collar = counted("collar", chain(180))
    assert collar.made(1) == {"dc": 180}
    assert collar.repeats(2) == [(29, {"st": 6})]
    assert collar.left_over(2) == [3]
    assert collar.made(2) == {"tr": 90, "ch": 87}
    assert collar.left_over(4) == [2]
    assert collar.not_closing() == [2, 4]
    assert collar.told() == [("row-does-not-close", 2), ("row-does-not-close", 4)]


@pytest.mark.parametrize("k", [29, 30])
def test_a_collar_on_177_or_183_chains_closes_but_for_its_row_4(k: int) -> None:
    """Ann S. Stephens, 1854 (PG 73303). Each of rows 5 and 6 has one loop fewer."""
    collar = counted("collar", chain(6 * k + 3))
    assert collar.told() == [("row-does-not-close", 4)]
    assert collar.repeats(2) == [(k, {"st": 6})]
    assert collar.made(2) == {"tr": 3 * k + 3, "ch": 3 * k}
    assert collar.repeats(3) == [(k, {"tr": 3})]
    assert collar.made(3) == {"dc": 3 * k + 3, "ch": 3 * k}
    assert collar.repeats(4) == [(k, {"st": 6})]
    assert collar.left_over(4) == [2]
    assert collar.made(4) == {"sc": k + 1, "ch": 6 * k}
    assert [collar.rounds[n].spaces for n in (4, 5, 6)] == [k, k - 1, k - 2]
    assert collar.made(5) == {"sc": k, "ch": 7 * (k - 1)}
    assert collar.made(6) == {"sc": k - 1, "ch": 6 * (k - 2)}
