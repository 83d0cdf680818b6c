"""Pieces worked in the round from a ring: an octagon, Riego's d'oyleys, a mat."""

from __future__ import annotations

import pytest
from published.restated import Made, closed_chain, counted, ring, short

# --- the octagon ----------------------------------------------------------------

OCTAGON_SIDE = {
    # round: stitches and chains of one of its 8 sides; 7, 10, 12 and 26 are the book's
    4: 3, 5: 5, 6: 7, 7: 10, 8: 12, 9: 15, 10: 17, 11: 19, 12: 21, 13: 24, 14: 26,
    15: 29, 16: 31, 17: 34, 18: 37, 19: 39, 20: 41, 21: 43, 22: 44, 23: 46,
}  # fmt: skip
OCTAGON_ROUND = {
    # round: dc and chains all round, the 24 chains of the corners included
    4: (24, 24), 5: (40, 24), 6: (56, 24), 7: (80, 24), 8: (96, 24), 9: (96, 48),
    10: (88, 72), 11: (80, 96), 12: (120, 72), 13: (160, 56), 14: (208, 24),
    15: (152, 104), 16: (216, 56), 17: (192, 104), 18: (248, 72), 19: (216, 120),
    20: (264, 88), 21: (256, 112), 22: (288, 88), 23: (320, 72),
}  # fmt: skip


def test_an_octagon_closes_in_all_its_rounds() -> None:
    """The Ladies' Work-Book (PG 16605), pine couvrette.

    Every round takes exactly what the one before it made. Sides of 7, 10, 12
    and 26 stitches are the book's, all else is arithmetic.
    """
    octagon = counted("octagon", ring())
    assert octagon.told() == []
    assert octagon.not_closing() == []
    assert len(octagon.rounds) == 23
    assert octagon.made(1) == {"sc": 8}
    assert octagon.made(2) == {"dc": 8, "ch": 16}
    assert octagon.made(3) == {"sc": 32}
    assert octagon.repeats(4) == [(8, {"st": 4})]
    for number, (dc, chains) in OCTAGON_ROUND.items():
        assert octagon.made(number) == {"dc": dc, "ch": chains}, number
        assert octagon.total(number) == 8 * OCTAGON_SIDE[number] + 24, number
        if number > 4:
            assert octagon.repeats(number) == [(8, {"st": OCTAGON_SIDE[number - 1] + 3})], number
    assert octagon.total(23) == 392


# --- Riego's d'oyleys -----------------------------------------------------------

DIAMOND: dict[int, tuple[Made, int, int]] = {
    # round: what it takes, and dc and chains made, in one of its 8 repeats
    1: ({"chain": 1}, 1, 3),
    2: ({"st": 4}, 3, 3),
    3: ({"st": 6}, 5, 3),
    4: ({"st": 8}, 7, 3),
    5: ({"st": 10}, 9, 3),
    6: ({"st": 12}, 8, 4),
    7: ({"st": 12}, 8, 6),
    8: ({"st": 14}, 8, 6),
    9: ({"st": 14}, 10, 8),
    10: ({"st": 18}, 11, 6),
    11: ({"st": 17}, 13, 6),
    12: ({"st": 19}, 15, 7),
}


def test_diamond_closes_in_eight_repeats_throughout() -> None:
    """Mlle Riego, Knitting, Crochet, and Netting, 1846 (PG 36669). All arithmetic."""
    diamond = counted("diamond", closed_chain(8))
    # in rounds 11 and 12 nothing is missed under two of the chains, as their counts prove
    assert diamond.told() == [("perhaps-nothing-missed", 11), ("perhaps-nothing-missed", 12)]
    assert diamond.not_closing() == []
    for number, (takes, dc, chains) in DIAMOND.items():
        assert diamond.repeats(number) == [(8, takes)], number
        assert short(diamond.rounds[number].repeats[0].makes) == {"dc": dc, "ch": chains}, number
    totals = [32, 48, 64, 80, 96, 96, 112, 112, 144, 136, 152, 176]
    assert [diamond.total(n) for n in diamond.rounds] == totals
    assert diamond.made(12) == {"dc": 120, "ch": 56}


TRELLIS: dict[int, tuple[int, Made, Made]] = {
    1: (12, {"chain": 1}, {"sc": 12, "ch": 36}),
    2: (12, {"ch-3 space": 1}, {"sc": 12, "ch": 36}),
    3: (12, {"space": 1}, {"sc": 12, "ch": 60}),
    4: (12, {"space": 1}, {"sc": 12, "ch": 60}),
    5: (12, {"space": 1}, {"sc": 12, "ch": 72}),
    6: (84, {"st": 1}, {"dc": 84}),
    7: (42, {"st": 2}, {"dc": 42, "ch": 84}),
    8: (42, {"st": 3}, {"dc": 84, "ch": 84}),
    9: (42, {"st": 4}, {"dc": 84, "ch": 84}),
    10: (42, {"st": 4}, {"dc": 84, "ch": 126}),
    11: (42, {"st": 5}, {"dc": 84, "ch": 168}),
    12: (252, {"st": 1}, {"dc": 252}),
}
SEME: dict[int, tuple[int, Made, Made]] = {
    1: (9, {"chain": 1}, {"sc": 18}),
    2: (9, {"st": 2}, {"dc": 18, "ch": 27}),
    3: (9, {"st": 5}, {"dc": 18, "ch": 36}),
    4: (18, {"st": 3}, {"dc": 36, "ch": 36}),
    5: (18, {"st": 4}, {"dc": 36, "ch": 36}),
    6: (18, {"st": 4}, {"dc": 36, "ch": 54}),
    7: (45, {"st": 2}, {"dc": 45, "ch": 45}),
    8: (30, {"st": 3}, {"dc": 60, "ch": 60}),
    9: (30, {"st": 4}, {"dc": 90, "ch": 30}),
    10: (30, {"st": 4}, {"dc": 90, "ch": 60}),
    11: (30, {"st": 5}, {"dc": 90, "ch": 90}),
}


@pytest.mark.parametrize(
    ("name", "chains", "rounds"), [("trellis", 12, TRELLIS), ("seme", 9, SEME)]
)
def test_a_doyley_closes_with_its_round_8_mended(
    name: str, chains: int, rounds: dict[int, tuple[int, Made, Made]]
) -> None:
    """Mlle Riego, Knitting, Crochet, and Netting, 1846 (PG 36669). All arithmetic."""
    doyley = counted(name, closed_chain(chains))
    assert doyley.told() == []
    assert doyley.not_closing() == []
    assert list(doyley.rounds) == list(rounds)
    for number, (times, takes, made) in rounds.items():
        assert doyley.repeats(number) == [(times, takes)], number
        assert doyley.made(number) == made, number


@pytest.mark.parametrize(
    ("name", "chains", "below", "times"), [("trellis", 12, 126, 31), ("seme", 9, 90, 22)]
)
def test_round_8_as_printed_leaves_two_stitches_over(
    name: str, chains: int, below: int, times: int
) -> None:
    """Mlle Riego, Knitting, Crochet, and Netting, 1846 (PG 36669): "miss 3" for 2."""
    printed = counted(f"{name}-as-printed", closed_chain(chains))
    assert printed.total(7) == below
    assert printed.repeats(8) == [(times, {"st": 4})]
    assert printed.made(8) == {"dc": 2 * times, "ch": 2 * times}
    assert printed.left_over(8) == [2]
    assert printed.not_closing() == [8]
    assert printed.told() == [("row-does-not-close", 8)]


# --- the table mat ----------------------------------------------------------------

MAT: dict[int, tuple[int, Made, Made]] = {
    2: (6, {"st": 2}, {"sc": 6, "ch": 24}),
    3: (6, {"space": 1}, {"sc": 6, "ch": 24}),
    4: (6, {"space": 1}, {"sc": 6, "ch": 36}),
    5: (6, {"space": 1}, {"sc": 6, "ch": 42}),
    6: (6, {"space": 1}, {"sc": 6, "ch": 54}),
    7: (6, {"space": 1}, {"sc": 6, "ch": 72}),
    8: (72, {"ch": 1}, {"tr": 72}),
    9: (36, {"st": 2}, {"sc": 36, "ch": 72}),
    10: (27, {"st": 4}, {"tr": 27, "ch": 81}),
    11: (27, {"tr": 1}, {"tr": 27, "ch": 108}),
    12: (27, {"ch-4 space": 1}, {"dc": 108, "ch": 27}),
    13: (27, {"dc": 4}, {"tr": 108, "ch": 27}),
    14: (15, {"st": 9}, {"dc": 150, "ch": 135}),
}
MAT_OTHERWISE: dict[int, tuple[int, Made, Made]] = {
    9: (24, {"st": 3}, {"sc": 24, "ch": 48}),
    10: (18, {"st": 4}, {"tr": 18, "ch": 54}),
    11: (18, {"tr": 1}, {"tr": 18, "ch": 72}),
    12: (18, {"ch-4 space": 1}, {"dc": 72, "ch": 18}),
    13: (18, {"dc": 4}, {"tr": 72, "ch": 18}),
    14: (10, {"st": 9}, {"dc": 100, "ch": 90}),
}


@pytest.mark.parametrize(
    ("name", "rounds"), [("table-mat", MAT), ("table-mat-other-reading", MAT_OTHERWISE)]
)
def test_a_table_mat_closes_in_both_readings_of_its_round_9(
    name: str, rounds: dict[int, tuple[int, Made, Made]]
) -> None:
    """Ann S. Stephens, The Ladies' Complete Guide to Crochet, 1854 (PG 73303).

    All arithmetic: 15 scallops where round 9 takes every second stitch, 10
    where it misses one after each second.
    """
    mat = counted(name, ring())
    assert mat.told() == []
    assert mat.not_closing() == []
    assert mat.made(1) == {"dc": 12}
    assert list(mat.rounds)[-1] == 14
    for number, (times, takes, made) in rounds.items():
        assert mat.repeats(number) == [(times, takes)], number
        assert mat.made(number) == made, number
