"""By how much a round can be eased, and which spots of the edge its boundaries lie at."""

from __future__ import annotations

import pytest
from worked import motifs, plain, read_text

from border.planning.amounts import amounts
from border.planning.offers import spots_in
from border.planning.spots import spots_of
from border.working.adjusting import Boundary
from border.working.fabric import edge_fabric
from border.working.line import line_of
from border.working.rounds import Pass, work_once

TICK = 16


def worked_once(row: str, places: int) -> Pass:
    reading, told = read_text(f"round 1: {row}.")
    assert not told
    return work_once(reading.rounds[0], edge_fabric(plain(places)))


@pytest.mark.parametrize(
    ("row", "places", "by"),
    [
        ("*1 sc in next loop, ch 3, skip 2 loops; repeat from *", 12, [-3, 3]),
        ("*1 sc in next loop, ch 3, skip 2 loops; repeat from *", 13, [-2, 1, 4]),
        ("*1 sc in next loop, ch 3, skip 2 loops; repeat from *", 14, [-4, -1, 2]),
        ("1 sc in each loop", 12, [-4, -3, -2, -1, 1, 2, 3, 4]),
        # with two repeats each number is tried
        (
            "*1 sc in next loop, skip 2 loops; repeat from * to last 6 loops, "
            "*1 dc in next loop, skip 2 loops; repeat from *",
            13,
            [-4, -3, -2, -1, 1, 2, 3, 4],
        ),
        ("1 sc in each of next 5 loops", 5, []),
    ],
)
def test_a_round_is_eased_by_what_makes_it_close(row: str, places: int, by: list[int]) -> None:
    assert amounts(worked_once(row, places), 4) == by


@pytest.mark.parametrize(
    ("closed", "at", "holds"),
    [
        # positions are places: the motifs are 0 to 4, 4 to 8 and 8 to 12
        (True, 2, ["edge.1"]),
        (True, 4, ["edge.1", "edge.1 | edge.2", "edge.2"]),
        (True, 6, ["edge.2"]),
        (True, 8, ["edge.2", "edge.2 | edge.3", "edge.3"]),
        (True, 0, ["edge.3 | edge.1", "edge.1", "edge.3"]),
        (True, 12, ["edge.3 | edge.1", "edge.1", "edge.3"]),
        (False, 4, ["edge.1", "edge.1 | edge.2", "edge.2"]),
        (False, 10, ["edge.3"]),
    ],
)
def test_a_boundary_on_a_joint_lies_in_both_its_motifs(
    closed: bool, at: int, holds: list[str]
) -> None:
    edge = motifs(4, 4, 4, closed=closed)
    boundary = Boundary(0, 1)
    spots = spots_of(edge, [], {}).spots
    found = spots_in(line_of(edge), spots, {boundary: at * TICK}, TICK)
    motif = [name for name in holds if "|" not in name]
    assert [s.at for s, b in found if b == boundary and "|" not in s.at] == sorted(motif)
    assert {name for name in holds if "|" in name} <= {s.at for s, _ in found}
    assert all(any(m in s.at for m in motif) for s, _ in found)


def test_of_several_boundaries_the_nearest_to_the_middle_is_meant() -> None:
    edge = motifs(8, 8)
    seen = {Boundary(0, n): place * TICK for n, place in enumerate((1, 3, 6, 9, 15))}
    found = spots_in(line_of(edge), spots_of(edge, [], {}).spots, seen, TICK)
    assert [(s.at, b.repeats) for s, b in found] == [("edge.1", 1), ("edge.2", 3)]
    assert spots_in(line_of(edge), spots_of(edge, [], {}).spots, {}, TICK) == []
