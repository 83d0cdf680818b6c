"""What is one word away from a row that does not come out: perhaps a misprint."""

from __future__ import annotations

import pytest
from asked import ARCHES, COUNT, asked, findings, worked
from worked import motifs, plain

from border.questions.asking import LARGEST, MOST_TOLD


@pytest.mark.parametrize(
    ("steps", "loops", "edits"),
    [
        # a number off by one: of a miss, of stitches, of a place, of times
        (
            "*1 sc in next loop, ch 3, skip 4 loops; repeat from *",
            16,
            ["skip 3 loops for skip 4 loops"],
        ),
        ("*3 sc, ch 3; repeat from *", 14, ["2 sc for 3 sc"]),
        (
            "*1 sc in each of next 4 loops, ch 1; repeat from *",
            15,
            [
                "1 sc in each of the next 3 loops for 1 sc in each of the next 4 loops",
                "1 sc in each of the next 5 loops for 1 sc in each of the next 4 loops",
                "ch 1, skip 1",
            ],
        ),
        (
            "(1 sc in next loop, ch 2, skip 1 loop) 5 times",
            12,
            [
                "(1 sc in next loop, ch 2, skip 1 loop) 6 times"
                " for (1 sc in next loop, ch 2, skip 1 loop) 5 times"
            ],
        ),
    ],
)
def test_what_is_one_word_away_is_asked_as_a_misprint(
    steps: str, loops: int, edits: list[str]
) -> None:
    told = asked(f"round 1: {steps}.", plain(loops), misprints=True)
    assert told == [("perhaps-misprint", f"write {edit}") for edit in edits]


def test_a_miss_too_many_and_a_star_too_late_are_misprints() -> None:
    row = "round 1: 1 sc in next loop, *ch 3, 1 sc in next loop, skip 1 loop; repeat from *."
    assert asked(row, plain(12), misprints=True) == [
        ("perhaps-misprint", "leave out skip 1 loop"),
        (
            "perhaps-misprint",
            "write *1 sc in next loop, ch 3, 1 sc in next loop, skip 1 loop; repeat from *",
        ),
        # not so that nothing is made any more: "…, *skip 1 loop; repeat from *"
    ]


def test_a_miss_that_goes_without_saying_is_no_misprint() -> None:
    text = """
        round 1: 1 dc in each loop.
        round 2: *1 dc in next st, skip 2 st, (3 dc, ch 2, 3 dc) in next st, skip 2 st; repeat.
        round 3: *1 sc in the dc, ch 2, 1 tr in centre of the shell, ch 2; repeat from *.
    """
    (told,) = findings(f"chains count as stitches: no\n{text}", plain(24), misprints=True)
    assert told.help == "write ch 2, skip 3"
    assert told.message == (
        "round 3 would come out, 4 times, if skip 3 stands behind ch 2, with as many stitches as now"
    )


def test_other_chains_in_the_row_below_are_a_misprint_and_pointed_at_there() -> None:
    text = f"{COUNT}{ARCHES}round 2: *5 sc, ch 1; repeat from *."
    (below, *_) = [f for f in findings(text, plain(12), misprints=True) if "round 1" in f.message]
    assert below.code == "perhaps-misprint"
    assert below.help == "write ch 4 for ch 5"
    reading, _ = worked(text, plain(12))
    assert below.span is not None
    assert below.span.start < reading.rounds[1].head.start


def test_misprints_are_looked_for_only_where_they_are_wanted_or_the_row_s_count_disagrees() -> None:
    row = "round 1: *1 sc in next loop, ch 5; repeat from *."
    wrong = "round 1: *3 sc, ch 3; repeat from *."
    assert asked(wrong, plain(14)) == []
    assert asked(wrong, motifs(7, 7), misprints=True) == []
    claim = [("perhaps-misprint", "write ch 5, skip 1")]
    assert asked(row, plain(12), misprints=True) == []
    assert asked(f"{row} (6 sc)", plain(12)) == claim
    assert asked(f"{row} (6 sc)", motifs(6, 6)) == claim


def test_no_more_are_told_than_can_be_looked_at() -> None:
    """Fours on fifteen loops: with threes or fives, or a miss more, they would come out."""
    told = findings("round 1: *2 sc, ch 3, 2 sc, ch 1; repeat from *.", plain(15), misprints=True)
    assert len(told) == MOST_TOLD


def test_of_a_row_too_long_no_misprint_is_looked_for() -> None:
    row = "round 1: *3 sc, ch 3; repeat from *."
    assert asked(row, plain(LARGEST - LARGEST % 3 + 1), misprints=True) == []
    assert asked(row, plain(LARGEST - LARGEST % 3 - 2), misprints=True) != []
