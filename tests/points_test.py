"""Picots, points and unions: what passes what, each rule by a row worked by hand."""

from __future__ import annotations

import pytest
from worked import counts, made, motifs, plain, repeats, worked


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


def test_a_round_begun_in_a_stitch_has_the_point_before_it_first() -> None:
    text = """
        round 1: begin in 2nd loop, *1 sc between next 2 loops, ch 2, 1 dc in next loop;
            repeat from *.
    """
    # 1|2 and loop 2, 3|4 and loop 4, ..., 35|36 and loop 36, 37|1 and loop 1
    (one,) = counts(text, plain(37))
    assert (made(one), one.closes) == ({"sc": 19, "ch": 38, "dc": 19}, True)


def test_once_something_is_worked_that_point_comes_last() -> None:
    text = (
        "round 1: begin in 2nd loop, 1 dc in same loop, *1 sc between next 2 loops; repeat from *."
    )
    # 2|3 is just where the cursor is: not beyond it; 1|2 is the last
    (one,) = counts(text, plain(8))
    assert (made(one), one.closes) == ({"dc": 1, "sc": 7}, True)


def test_a_point_that_is_begun_in_and_not_worked_comes_last() -> None:
    text = """
        round 1: begin between next 2 loops, 1 dc in next loop, *1 sc between next 2 loops;
            repeat from *.
    """
    assert last_row(text, 8) == {"dc": 1, "sc": 7}


def test_of_a_union_what_covers_the_same_stitch_is_left_once() -> None:
    text = """
        chains count as stitches: no
        round 1: 1 sc in each loop.
        round 2: *2 dc in each of the next 3 sc or st; repeat from *.
    """
    two = counts(text, plain(11))[1]
    assert repeats(two) == [(3, {"sc": 3, "st": 3}, 2)]


def test_a_repeat_that_works_parts_takes_their_whole_sites() -> None:
    text = """
        round 1: *2 sc in next loop, 1 dc in next loop; repeat from *.
        round 2: 1 sc in centre of every 3rd group of 2.
    """
    two = counts(text, plain(6))[1]
    # the round begins in the middle of the first group, which is the first of the three
    assert repeats(two) == [(1, {"group of 2": 3}, 0)]


def test_between_the_picots_of_a_space_is_a_part_of_the_space() -> None:
    text = """
        round 1: *1 sc in next loop, ch 1, picot, ch 1, picot, 1 sc in next loop, ch 5;
            repeat from *.
        round 2: *1 sc between the picots of next space; repeat from *.
    """
    two = counts(text, plain(8))[1]
    assert (repeats(two), two.closes) == ([(4, {"space": 2}, 1)], False)


def test_a_stitch_beside_a_point_that_is_worked_is_left() -> None:
    text = """
        round 1: *1 sc in each of the next 4 loops; repeat from * to last 1 loop,
            1 dc between last 2 loops.
    """
    (one,) = counts(text, plain(12, closed=False))
    assert repeats(one) == [(2, {"loop": 4}, 3)]


def test_chains_that_part_workings_belong_to_the_one_before() -> None:
    text = "round 1: 1 sc in each loop, with ch 2 between."
    (one,) = counts(text, plain(2, closed=False))
    assert made(one) == {"sc": 2, "ch": 2}
    assert one.repeats[0].makes.chains == 2


def test_the_same_stitch_is_the_point_that_was_worked_last() -> None:
    text = "round 1: 1 dc between next 2 loops, ch 1, 1 dc in same loop."
    # the one point that there is has been worked: no loop is meant by the same loop
    (one,) = counts(text, plain(2, closed=False))
    assert (made(one), one.closes) == ({"dc": 2, "ch": 1}, True)


def test_a_part_counts_for_its_site_where_that_lies_across_stretches() -> None:
    text = """
        round 1: 1 sc in each loop.
        round 2: over each motif: (1 dc in first st of each block of 4) once.
    """
    two = counts(text, motifs(1, 3))[1]
    # its first st stands on edge.1; the block itself is of edge.2, and left there
    assert repeats(two) == [(1, {"block of 4": 1}, 1)]


def test_what_a_step_passes_to_reach_the_2nd_is_left() -> None:
    text = """
        round 1: (1 sc in next loop, skip 3 loops) to end, 1 dc in 2nd loop.
    """
    (one,) = counts(text, plain(7, closed=False))
    assert repeats(one) == [(1, {"loop": 4}, 2)]


def test_a_point_at_the_start_is_the_first_also_where_a_round_begins_in_the_2nd() -> None:
    edge = plain(4, of="chain")
    text = "round 1: {}, 1 dc in same place, 1 sc in each st."
    starts = []
    for place in ("next 2 st", "2nd pair of st", "3rd pair of st", "4th pair of st"):
        (one,) = worked(text.format(f"begin between {place}"), edge)[0].rounds
        starts.append(one.fabric.pos[0] / one.fabric.tick)
    assert starts == [0, 1, 2, 3]
    (one,) = worked("round 1: *1 dc between 2nd pair of st; repeat from *.", edge)[0].rounds
    assert [p / one.fabric.tick for p in one.fabric.pos] == [1, 3]


@pytest.mark.parametrize(
    ("part", "stands"), [("first", 0.5), ("2nd", 1.5), ("3rd", 2.5), ("centre", 1.5), ("last", 2.5)]
)
def test_where_a_part_of_a_block_lies(part: str, stands: float) -> None:
    text = f"""
        round 1: *1 sc in each of next 3 loops, ch 1, skip 1 loop; repeat from *.
        round 2: *1 dc in {part} {"" if part == "centre" else "st"} of next block; repeat from *.
    """
    two = worked(text, plain(8))[0].rounds[1]
    assert [p / two.fabric.tick for p in two.fabric.pos] == [stands, stands + 4]


def test_the_last_point_of_a_round_whose_first_step_runs_out_is_where_it_begins() -> None:
    text = """
        round 1: 1 hdc in each loop.
        round 2: 2 sc in 2nd st of each of the first 2 blocks, 1 dtr between last 2 st,
            1 tr in last hdc.
    """
    # begun in the 2nd st of the one block: the last point is just there, behind the last hdc
    assert last_row(text) == {"dtr": 1}


def test_the_point_behind_a_stitch_is_not_passed_with_the_picot_on_it() -> None:
    text = """
        round 1: *1 sc in next loop, picot; repeat from *.
        round 2: *1 dc in next picot, 1 tr between next 2 sc; repeat from *.
    """
    assert last_row(text, 4) == {"dc": 4, "tr": 4}


def test_a_row_begun_inside_a_space_takes_that_with_its_centre() -> None:
    text = """
        round 1: 1 dc in each loop, with ch 2 between.
        round 2: begin in last ch of next ch-2 space, *1 sc in centre of the next 3 ch-2 spaces
            or between the next 3 pairs of ch, skip 3, ch 3, 1 hdc in first ch of next ch-2 space;
            repeat from *.
    """
    edge = plain(8, closed=False)
    both = counts("chains count as stitches: no\n" + text, edge)
    # the centre of the 1st, the point over the dc, that of the 2nd; the 3rd and 4th; the 5th
    assert repeats(both[1]) == [(1, {"ch-2 space": 5, "ch": 9}, 4)]


def test_a_union_of_two_names_for_one_kind_takes_it_once() -> None:
    assert repeats(*counts("round 1: *2 sc in next loop or st; repeat from *.", plain(6))) == [
        (6, {"loop": 1}, 0)
    ]


def test_what_most_repeats_take_is_told_by_name() -> None:
    (one,) = counts("round 1: 1 dc in each st or between each 2 st.", plain(3))
    # the point at the start, two loops each with the point behind it, and the last loop
    assert repeats(one) == [(4, {"loop": 1}, 0)]


def test_a_round_is_begun_between_two_though_one_of_them_lies_across_its_start() -> None:
    text = """
        round 1: *1 sc in next loop, ch 1, 1 dc in next loop; repeat from *.
        round 2: begin between the pair of blocks, 1 sc in each dc.
    """
    two = counts(text, plain(6))[1]
    assert (made(two), two.closes) == ({"sc": 3}, True)


def test_a_part_that_the_site_across_the_start_does_not_have_is_that_of_the_next() -> None:
    text = """
        round 1: *1 sc in next loop, ch 1, 1 dc in each of the next 2 loops; repeat from *;
            1 sc in next loop, ch 2, 1 dc in next loop.
        round 2: begin in 3rd st of the block, 1 sc in same place.
    """
    assert made(counts(text, plain(8))[1]) == {"sc": 1}


def test_a_row_is_begun_in_the_2nd_of_two_names_for_one_kind() -> None:
    (one,) = counts("round 1: begin in 2nd loop or st, 1 sc in each loop.", plain(6, closed=False))
    assert (made(one), one.closes) == ({"sc": 5}, True)


def test_a_part_of_the_same_site_is_not_the_part_that_was_worked_last() -> None:
    text = """
        round 1: 3 dc in each loop, with ch 1 between.
        round 2: *1 sc in first st of next group, 1 tr in last st of same group,
            1 hdc in centre of same group; repeat from *.
        round 3: 1 sc in each group.
    """
    rounds = counts(text, plain(4))
    assert made(rounds[1]) == {"sc": 4, "tr": 4, "hdc": 4}
    assert len(rounds) == 2  # three stitches apart, no two of them in one place


def test_a_part_of_the_same_site_has_nothing_to_look_in_where_that_is_of_another_kind() -> None:
    text = """
        round 1: *3 dc in next loop, ch 3; repeat from *.
        round 2: *1 sc in next space, 1 tr in last st of same group; repeat from *.
        round 3: 1 sc in each group of 2.
    """
    assert made(counts(text, plain(4))[2]) == {"sc": 4}


def test_a_part_of_a_site_that_is_not_seen_whole_is_taken_once_beside_the_points_between() -> None:
    text = """
        round 1: 3 dc in next loop.
        round 2: 1 dc between each 2 3-dc groups or 3rd st of each 3-dc group.
    """
    # begun in the 3rd st, the round has no whole group in it, and no two to work between
    assert repeats(counts(text, plain(1))[1]) == [(1, {"3-dc group": 1}, 0)]


def test_a_point_where_a_row_begins_is_there_while_nothing_has_been_worked() -> None:
    text = """
        worked: one way
        round 1: 1 sc, ch 1, 1 tr, 1 dc, ch 1, 1 sc.
        round 2: begin in the dc, {}1 sc between next 2 ch.
    """
    edge = plain(4, closed=False)
    # the first step finds no such block, so that the point is still ahead
    assert made(counts(text.format("1 hdc in next block of 9, "), edge)[1]) == {"sc": 1}
    assert "sc" not in made(counts(text.format("1 hdc in next dc, "), edge)[1])


@pytest.mark.parametrize(
    "row",
    ["2nd st of next block, ch 3, 1 dc in 4th", "2nd st of next run of 4 dc, ch 3, 1 dc in 4th"],
)
def test_of_the_same_block_that_straddles_the_start_of_a_round(row: str) -> None:
    name = "block" if "block" in row else "run of 4 dc"
    text = f"""
        round 1: *1 dc in each of the next 4 loops, ch 3; repeat from *.
        round 2: *1 dc in {row} st of same {name}, ch 1; repeat from *.
        round 3: 1 sc in each group.
    """
    edge, told = worked(text, plain(12))
    first, second = edge.rounds
    tick = second.fabric.tick
    dc = [p for p, k in zip(second.fabric.pos, second.fabric.kinds, strict=True) if k == "dc"]
    # over loops 2 and 4 of each four: the middles of those places
    assert [p / tick for p in dc] == [1.5, 3.5, 5.5, 7.5, 9.5, 11.5]
    assert first.closes and second.closes
    assert [f.code for f in told] == ["no-stitches"]  # no two of them stand in one stitch


def test_the_first_stitch_of_a_straddling_block_comes_last() -> None:
    text = """
        round 1: *1 dc in each of the next 4 loops, ch 3; repeat from *.
        round 2: *2 dc in 2nd st of next block, 1 sc in first st of same block; repeat from *.
    """
    assert last_row(text) == {"dc": 6, "sc": 3}
