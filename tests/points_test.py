"""Picots, points and unions: what passes what, each rule by a row worked by hand."""

from __future__ import annotations

from worked import counts, made, plain


def last_row(text: str, places: int = 12) -> dict[str, int]:
    return made(counts(text, plain(places))[-1])


def test_a_stitch_that_is_worked_passes_the_picot_on_it() -> None:
    text = """
        round 1: *1 sc in next loop, picot, ch 3; repeat from *.
        round 2: *1 dc in next sc, 1 sc in next picot; repeat from *.
    """
    # the picot of the second sc, and so on: the first one's is behind
    assert last_row(text) == {"dc": 6, "sc": 6}


def test_a_space_that_is_worked_passes_the_picots_on_its_chains() -> None:
    text = """
        round 1: *1 sc in next loop, ch 3, picot; repeat from *.
        round 2: *1 dc in next space, 1 sc in next picot; repeat from *.
    """
    assert last_row(text) == {"dc": 6, "sc": 6}


def test_a_picot_that_opens_a_row_stands_on_its_first_stitch() -> None:
    text = """
        round 1: picot, *1 sc in next loop, ch 3; repeat from *.
        round 2: 1 dc in first sc, 1 tr in next picot, 1 sc in each sc.
    """
    _one, two = counts(text, plain(6))
    assert (made(two), two.closes) == ({"dc": 1, "sc": 5}, False)


def test_two_picots_of_one_stitch_are_two() -> None:
    text = """
        round 1: *1 sc in next loop, 2 picots, ch 3; repeat from *.
        round 2: *1 dc in next picot, ch 2, 1 sc in next picot; repeat from *.
    """
    assert last_row(text) == {"dc": 12, "sc": 12, "ch": 24}


def test_one_point_under_two_names_is_worked_once() -> None:
    text = """
        round 1: *1 sc in next loop, ch 1, picot, ch 1, picot; repeat from *.
        round 2: 1 dc in centre of each space and between the picots of each space.
    """
    assert last_row(text) == {"dc": 12}


def test_a_point_among_atoms_is_passed_with_the_one_before_it() -> None:
    text = """
        round 1: *1 sc in next loop, ch 2; repeat from *.
        round 2: *1 dc in next ch, 1 tr between next 2 sc; repeat from *.
    """
    # the first dc puts the cursor just where the first point lies, which so is not beyond it
    assert last_row(text) == {"dc": 11, "tr": 11}
