"""Picots as books spell them out, and those that are asked."""

from __future__ import annotations

import pytest
from reading import asked, written


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("5 ch, 1 sc in the 1st", "picot of 5"),
        ("5 ch, 1 sl st in the 1st of the 5", "picot of 5"),
        ("ch 4, 1 sc in 1st of ch", "picot of 4"),
        ("4 ch, 1 sc in the first of the 4 ch", "picot of 4"),
        ("4 ch, 1 sc in the 1st of these 4 stitches (this forms 1 picot)", "picot of 4"),
        ("5 ch, 1 sc in the third of these 5", "ch 2, picot of 3"),
        ("ch 7, 1 sc in 4th ch from hook", "ch 3, picot of 4"),
        ("ch 7, 1 sc in 4th st from the needle (picot)", "ch 3, picot of 4"),
        ("ch 5, sl st in 4th ch for picot", "ch 1, picot of 4"),
        ("ch 4, join to first of 4 ch for p", "picot of 4"),
        ("3 ch, join to the first to form a picot", "picot of 3"),
        ("ch 5, fasten back in 1st st of ch", "picot of 5"),
        ("5 ch, catch back in 4th st to form a picot", "ch 1, picot of 4"),
        ("1 picot (ch 4, 1 sc in 1st st of ch)", "picot of 4"),
        ("a p (4 ch, caught with a sl st in the top of the last dc)", "picot of 4"),
        ("a picot (4 ch, caught in 1st ch)", "picot of 4"),
        ("1 picot (5 ch and join in the first)", "picot of 5"),
        ("picot (ch 4, sl st in 1st ch)", "picot of 4"),
        ("3 ch (picot)", "picot of 3"),
        ("ch 3 for a picot", "picot of 3"),
        ("8 ch, picot 5 of them", "ch 3, picot of 5"),
        ("picot (5 ch, 1 sl st in the 1st)", "picot of 5"),
    ],
)
def test_chains_closed_into_a_ring_are_a_picot(said: str, read: str) -> None:
    assert written(f"2 sc, {said}, 2 sc") == f"2 sc, {read}, 2 sc"


@pytest.mark.parametrize(
    "said",
    ["in last sc made", "in the sc just made", "in top of sc", "into the top of the last sc"],
)
def test_the_stitch_just_made_closes_a_ring(said: str) -> None:
    assert written(f"1 sc in each of 3 st, ch 4, sl st {said}, skip 2") == (
        "1 sc in each of the next 3 st, picot of 4, skip 2"
    )


def test_a_ring_in_the_same_place_as_the_ring_before_it() -> None:
    three = "ch 9, 1 sc in 5th ch from hook, ch 5, 1 sc in same place, ch 5, 1 sc in same place"
    assert written(three) == "ch 4, picot of 5, picot of 5, picot of 5"
    assert written("1 dc in loop, ch 5, 1 sc in same loop") == (
        "1 dc in the loop, ch 5, 1 sc in same loop"
    )


@pytest.mark.parametrize(
    "steps", ["1 sc in next st, ch 4, 1 sl st in same st", "2 sc, ch 4, 1 sc in same st"]
)
def test_what_may_be_a_ring_on_its_stitch_is_asked(steps: str) -> None:
    assert asked(steps)["perhaps-picot"].startswith("write picot of 4 if")


def test_the_chain_of_the_row_below_closes_nothing() -> None:
    assert written("*5 ch, 1 sc on the 3rd of the 5 ch; repeat from *") == (
        "*ch 5, 1 sc in 3rd ch of the ch-5 space; repeat from *"
    )


@pytest.mark.parametrize(
    ("steps", "edits"),
    [
        ("1 sc in next st, ch 4, 1 sc in last sc", ("picot of 4", "ch 4; 1 sc in last sc")),
        ("ch 10, 1 sc in 6th ch", ("ch 4, picot of 6", "ch 10; 1 sc in 6th ch")),
    ],
)
def test_what_may_be_a_ring_below_is_asked(steps: str, edits: tuple[str, str]) -> None:
    told = asked(steps)
    assert set(told) == {"perhaps-picot"}
    assert all(edit in told["perhaps-picot"] for edit in edits)
    for edit in edits:
        assert "perhaps-picot" not in asked(f"1 sc in next st, {edit}")
