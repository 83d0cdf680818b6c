"""Loops drawn, counted by hand: stitches, clusters, picots, start chains, joins, slip stitches."""

from __future__ import annotations

import pytest
from worked import motifs, plain, read_text, worked

from border.findings import Span
from border.reckoning.counts import count_edge
from border.reckoning.drawn import MOST_SLIPS, loops_drawn
from border.working.found import Found
from border.working.work import WorkedRound, work


def rounds(text: str, places: int = 6, *, closed: bool = True) -> tuple[WorkedRound, ...]:
    return worked(text, plain(places, closed=closed))[0].rounds


def loops(text: str, places: int = 6, *, closed: bool = True) -> list[int]:
    """Of every round."""
    return [sum(loops_drawn(r)) for r in rounds(text, places, closed=closed)]


JOIN = 1


def test_a_round_of_stitches_is_joined_with_a_slip_stitch() -> None:
    assert loops("round 1: 1 sc in each loop.") == [6 * 2 + JOIN]
    assert loops("round 1: 1 sc in each loop.", closed=False) == [6 * 2]


@pytest.mark.parametrize(
    ("steps", "each"),
    [
        ("1 sl st in each loop", 1),
        ("1 hdc in each loop", 3),
        ("1 dc in each loop", 4),
        ("1 tr in each loop", 6),
        ("(1 sc, ch 3) in each loop", 2 + 3),
        # Three chains and the slip stitch that closes them, on a sc.
        ("(1 sc, picot) in each loop", 2 + 3 + 1),
        ("(1 sc, picot of 5) in each loop", 2 + 5 + 1),
        # Three dc closed into one are three dc.
        ("1 3-dc cluster in each loop", 3 * 4),
    ],
)
def test_every_stitch_draws_its_loops(steps: str, each: int) -> None:
    assert loops(f"round 1: {steps}.") == [6 * each + JOIN]


def test_stitches_worked_together_are_each_of_them() -> None:
    assert loops("round 1: *2 dc together over next 2 loops; repeat from *.") == [3 * 2 * 4 + JOIN]


def test_a_start_chain_takes_its_own_chains_in_place_of_its_stitch() -> None:
    # Three chains in place of the four loops of a dc.
    with_chain = "round 1: 1 dc in each loop.\nround 2: ch 3 as dc, 1 dc in each dc."
    assert loops(with_chain)[1] == 3 + 5 * 4 + JOIN
    # The chains behind it stand on the row, and are counted there.
    more = "round 1: 1 dc in each loop.\nround 2: ch 5 as dc and ch 2, 1 dc in each dc."
    assert loops(more)[1] == 3 + 2 + 5 * 4 + JOIN


def test_a_start_chain_that_is_not_counted_takes_thread_all_the_same() -> None:
    text = "round 1: 1 dc in each loop.\nround 2: ch 2, not counted, 1 dc in each dc."
    assert loops(text)[1] == 2 + 6 * 4 + JOIN


def test_turning_chains_are_thread_of_the_row_that_they_begin() -> None:
    text = "round 1: 1 dc in each loop, ch 3, turn.\nround 2: 1 dc in each dc."
    assert loops(text, closed=False) == [6 * 4, 3 + 5 * 4]


def test_slip_stitches_lead_to_where_a_round_begins() -> None:
    lace = "round 1: *1 sc in next loop, ch 3; repeat from *.\nround 2: {}ch 4, 1 sc in each space."
    there = lace.replace("ch 4, 1 sc in each space", "*1 sc in next space, ch 4; repeat from *")
    plainly = loops(there.format(""), 6)[1]
    assert plainly == 6 * (2 + 4) + JOIN
    # Over the one sc before the space.
    assert loops(there.format("sl st to next space, "), 6)[1] == plainly + 1
    # Over all four dc of the first shell to the space behind it.
    shells = (
        "round 1: *4 dc in next loop, ch 1; repeat from *.\n"
        "round 2: {}*1 sc in next space, ch 4; repeat from *."
    )
    assert loops(shells.format("sl st to next space, "))[1] == loops(shells.format(""))[1] + 4


def test_nobody_slips_round_half_the_edge() -> None:
    text = "round 1: 1 sc in each loop.\nround 2: {}1 sc in same st, 1 sc in each of the next 3 sc."
    far, near = MOST_SLIPS + 2, MOST_SLIPS
    took = {n: loops(text.format(f"begin in {n}th sc, "), 40)[1] for n in (far, near)}
    assert took[near] - took[far] == near - 1


def test_the_first_round_is_fastened_on_where_it_begins() -> None:
    begun = "round 1: begin in 3rd loop, 1 sc in same loop, 1 sc in each loop."
    (one,) = rounds(begun)
    assert one.passed == 0


def test_counts_have_the_loops_of_their_round() -> None:
    done, _ = worked("round 1: *1 sc in next loop, ch 3; repeat from *.", motifs(4, 3, 5))
    (count,) = count_edge(done)
    assert count.loops == sum(loops_drawn(done.rounds[0])) == 12 * 5 + JOIN


def test_a_round_that_was_eased_to_what_was_found_keeps_its_start_chain() -> None:
    reading, _ = read_text("round 1: ch 3 as dc, 1 dc in each loop.")
    span = Span("", 0, 0)
    found = work(reading, plain(12), done=1, found=Found(1, (("dc", 10),), span))
    (one,) = found.rounds
    assert [o.chains for o in one.openings] == [3]
    assert sum(loops_drawn(one)) == 3 + 9 * 4 + JOIN
