"""A row that turns inside itself: what is covered, and what the next row meets of it."""

from __future__ import annotations

import pytest
from worked import codes, counts, made, motifs, plain, read_text, repeats, worked
from writing_test import rows, written

from border.reckoning.drawn import loops_drawn
from border.text.tree import Arch, Kind, Repeat, Stitches, Text
from border.working.adjusting import Adjustment
from border.working.claims import how_many

SCALLOPS = """chains count as stitches: no
round 1: 1 sc in each loop.
round 2: *6 sc, turn, ch 6, 1 sl st in 6th st from hook, turn, 9 sc in the arch; repeat from *.
"""
"""An arch over each six sc, with nothing beside it."""

PARTED = """chains count as stitches: no
round 1: *1 sc in next loop, ch 5; repeat from *.
round 2: *4 sc in next space, turn, ch 5, 1 sl st in 3rd st from hook, turn,
    (4 sc, picot, 3 sc) in the arch, 2 sc in same place; repeat from *.
"""
"""In each space one sc, an arch of seven over three more, and two sc behind it."""


def test_every_stitch_counts_and_the_covered_are_gone_for_the_next_row() -> None:
    below, row = counts(f"{SCALLOPS}", plain(24))
    assert made(below) == {"sc": 24}
    assert made(row) == {"sc": 4 * (6 + 9), "ss": 4, "ch": 24}
    assert row.spaces == 0
    next_ = counts(f"{SCALLOPS}round 3: 1 dc in each st.\n", plain(24))[2]
    assert made(next_) == {"dc": 4 * 9}


def test_claims_of_stitches_are_those_worked_and_of_spaces_those_met() -> None:
    edge_worked, _ = worked(SCALLOPS, plain(24))
    fabric = edge_worked.rounds[1].fabric
    sizes = {name: how_many(fabric, Kind(name)) for name in ("sc", "ss", "ch", "space", "group")}
    assert sizes == {"sc": 60, "ss": 4, "ch": 24, "space": 0, "group": 4}


def test_thread_is_reckoned_for_all_that_is_worked() -> None:
    edge_worked, _ = worked(SCALLOPS, plain(24, closed=False))
    as_worked = worked(
        "chains count as stitches: no\nround 1: 1 sc in each loop.\n"
        "round 2: *6 sc, (ch 6, 1 sl st, 9 sc) in same place; repeat from *.\n",
        plain(24, closed=False),
    )[0]
    assert sum(loops_drawn(edge_worked.rounds[1])) == sum(loops_drawn(as_worked.rounds[1]))


@pytest.mark.parametrize(
    ("row", "comes_to", "takes"),
    [
        ("1 dc in each group of 7", 6, {"group of 7": 1}),
        ("1 dc in each group of 2", 6, {"group of 2": 1}),
        ("1 dc in each picot", 6, {"picot": 1}),
        ("1 dc in 4th st of each block", 1, {"block": 1}),
        ("*1 dc in next st, skip 7, 1 dc in each of the next 2 st; repeat from *", 18, {"st": 10}),
    ],
)
def test_what_stands_before_and_behind_an_arch_is_met_with_its_filling(
    row: str, comes_to: int, takes: dict[str, int]
) -> None:
    found = counts(f"{PARTED}round 3: {row}.\n", plain(6))[2]
    assert found.closes
    assert found.made.stitches == {"dc": comes_to}
    assert repeats(found)[0][1] == takes


def test_an_arch_stands_half_way_between_the_ends_of_what_it_covers() -> None:
    """Over the joint of two motifs: what it covers stays on its own motif."""
    text = (
        "round 1: *4 sc, turn, ch 4, 1 sl st in 4th st from hook, turn, 5 dc in the arch; repeat."
    )
    (row,) = counts(text, motifs(2, 2, 2, 2))
    (one, two, *_) = row.motifs
    assert one.made.stitches == {"sc": 2, "ss": 1}
    assert two.made.stitches == {"sc": 2}
    joint = row.joints[0]
    assert (joint.between, joint.made.stitches) == (("edge.1", "edge.2"), {"dc": 5})


def test_turned_the_row_is_met_the_other_way_round() -> None:
    text = f"{PARTED}round 3: turn, 2 dc in first st, 1 dc in each st.\n"
    found = counts(text, plain(6, closed=False))[2]
    assert found.made.stitches == {"dc": 2 + 6 * 10 - 1}


def test_an_adjustment_stands_between_repeats_and_splits_no_arch() -> None:
    text = (
        "round 1: *5 dc in next loop, skip 1 loop, turn, ch 5, 1 sc in 5th st from hook, turn, "
        "7 dc in the arch; repeat from *."
    )
    edge = motifs(4, 5)
    (row,) = counts(text, edge)
    (eased,) = counts(text, edge, (Adjustment(1, "edge.1", 1),))
    assert repeats(row) == [(4, {"loop": 2}, 1)]
    assert eased.closes
    assert made(eased) == made(row) == {"dc": 4 * 12, "sc": 4, "ch": 20}


def test_a_row_that_turns_inside_itself_is_written_out() -> None:
    out = rows(written(PARTED, plain(6)))
    assert (
        "turn, ch 5, 1 sl st in 3rd st from hook, turn, (4 sc, picot of 3, 3 sc) in the arch" in out
    )


def test_stitches_are_counted_from_the_hook_however_they_are_named() -> None:
    rows_said = {
        "9 sc, turn, ch 9, 1 sl st in the first of the 9 sc": 9,
        "9 sc, turn, ch 9, 1 sl st in the last of the 9 sc": 1,
        "2 dc in next st, 3 sc in each of the next 2 st, turn, ch 9, 1 sc in 2nd of the 6 sc": 5,
        "8 dc in next st, 3 sc, turn, ch 9, 1 sc in 2nd dc from hook": 5,
        "8 dc in next loop, 4 dc in next loop, turn, ch 9, 1 sc in 3rd dc of first loop": 10,
        "3 dc in each of the next 3 loops, turn, ch 9, 1 sc in 2nd dc of 2nd loop": 5,
        "4 dc in next loop, 4 dc in next loop, turn, ch 9, 1 sc in the 2nd of the first 4 dc": 7,
        "((2 dc, ch 1) 3 times, 1 dc) in next loop, turn, ch 9, 1 sc in the middle of the 7 dc": 4,
    }
    for said, back in rows_said.items():
        reading, _ = read_text(f"round 1: *{said}, turn, 9 sc in the arch; repeat from *.")
        body = reading.rounds[0].body
        assert isinstance(body, Text)
        (repeat,) = body.items
        assert isinstance(repeat, Repeat)
        arch = repeat.items[-1]
        assert isinstance(arch, Arch), said
        assert (arch.chains, arch.back) == (9, back), said
        assert arch.items == (Stitches(9, "sc"),)


def test_a_copy_that_has_something_otherwise_is_asked_to_be_written_out() -> None:
    text = f"{SCALLOPS}round 3: 1 sc in each st.\nround 4: as round 2, but with 7 sc instead of 9 sc.\n"
    assert "difference-unclear" in codes(text, plain(24))
    exact = f"{SCALLOPS}round 3: *1 sc in next st, skip 2; repeat from *.\nround 4: as round 2.\n"
    assert made(counts(exact, plain(24))[3]) == {"sc": 2 * 15, "ss": 2, "ch": 12}
