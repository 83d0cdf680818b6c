"""Figures that the headings name, and what in a row is worked into them."""

from __future__ import annotations

import pytest
from reading import asked, faults, read, written

from border.text.written import write_border

FAN = "fan = 2 dc, ch 2, 2 dc"


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("1 fan in next space", "(2 dc, ch 2, 2 dc) in next space"),
        ("a fan in each loop", "(2 dc, ch 2, 2 dc) in each loop"),
        ("2 fans, ch 1", "(2 dc, ch 2, 2 dc) 2 times, ch 1"),
    ],
)
def test_a_figure_is_its_steps_in_a_bracket(said: str, read: str) -> None:
    assert written(said, headings=FAN) == read


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("1 fan in fan", "(2 dc, ch 2, 2 dc) in the ch-2 space"),
        ("1 sc in centre of next fan", "1 sc in centre of next ch-2 space"),
        ("ch 5, skip 1 fan", "ch 5, skip 1 ch-2 space"),
        ("1 sc between the fans", "1 sc between next 2 ch-2 spaces; repeat"),
    ],
)
def test_what_a_figure_is_to_be_worked_into(said: str, read: str) -> None:
    assert written(said, headings=f"{FAN}\nfan means ch-2 space") == read


def test_a_figure_with_chains_is_no_group() -> None:
    told = faults(f"terms: us\n{FAN}\nfan means group\nround 1: 1 sc in next fan\n")
    assert told == [("bad-heading", "2 dc, ch 2, 2 dc")]
    solid = "fan = 5 dc\nfan means group"
    assert written("1 sc in centre of next fan", headings=solid) == "1 sc in centre of next group"


@pytest.mark.parametrize(
    ("steps", "heading"),
    [
        ("2 scallops in next loop", '"scallop means shell" or "scallop means space"'),
        ("1 shell in next space", '"shell = 2 dc, ch 2, 2 dc"'),
        ("1 opening in next loop", '"opening means space"'),
    ],
)
def test_names_that_differ_from_book_to_book_are_asked(steps: str, heading: str) -> None:
    (help_,) = asked(steps).values()
    assert heading in help_


def test_a_place_named_by_a_heading() -> None:
    heading = "scallop means space"
    assert written("1 sc in each 5-chain scallop", headings=heading) == "1 sc in each ch-5 space"
    assert written("1 sc in next scallop", headings=heading) == "1 sc in next space"


@pytest.mark.parametrize("said", ["chain scallop", "chain stitch scallop", "ch st scallop"])
def test_a_scallop_of_chains_is_a_loop_without_a_heading(said: str) -> None:
    assert written(f"1 sc in next {said}") == "1 sc in next loop"


@pytest.mark.parametrize(
    "made", ["5 ch, 1 sc in the first of the 5", "5 ch and 1 sl st in the 1st", "picot of 5"]
)
def test_a_figure_that_is_a_picot_gives_all_picots_their_size(made: str) -> None:
    assert written("(4 sc, p, 3 sc) in each loop", headings=f"p = {made}") == (
        "(4 sc, picot of 5, 3 sc) in each loop"
    )


@pytest.mark.parametrize(
    "said",
    [
        "For p, ch 5, sc back in 1st st.",
        "The picots are made of 5 chain and 1 sc in the first of the 5.",
        "The p is 5 ch caught in the 5th from hook.",
        "(P is 5 ch, sl st in the 1st ch.)",
        "Picot: 5 ch, 1 sc in the first.",
        "The picot is made of 5 chain and 1 sc in the first",
    ],
)
def test_what_a_picot_is_may_be_said_behind_the_row(said: str) -> None:
    assert (
        written(f"(4 sc, p, 3 sc) in each loop. {said}") == "(4 sc, picot of 5, 3 sc) in each loop"
    )


def test_a_picot_behind_a_stop_is_a_step() -> None:
    assert written("3 sc. p, 4 ch, 1 picot of 5") == "3 sc, picot of 3, ch 4, picot of 5"


def test_a_numbered_space_of_a_shell_is_no_shell() -> None:
    shells = "round 1: (2 dc, ch 2, 2 dc) in each loop.\nround 2: "
    border, _ = read(f"terms: us\n{shells}*1 sc in first 1 ch of shell, ch 3; repeat.\n")
    assert "1 sc in next ch-1 space" in write_border(border)
    border, _ = read(f"terms: us\n{shells}*1 sc in the 2 ch of shell, ch 3; repeat.\n")
    assert "1 sc in the shell" in write_border(border)


def test_a_row_of_very_many_shells_is_told_to_be_too_large() -> None:
    row = "a shell of 3 dc in next, " * 1500
    assert [code for code, _ in faults(f"terms: us\nround 1: {row}\n")] == ["too-large"]
    assert faults(f"terms: us\nround 1: {'a shell of 3 dc in next, ' * 600}\n") == []
