"""Repeats, what is left over, meeting the start, adjustments and claims."""

from __future__ import annotations

import pytest
from worked import codes, counts, made, motifs, plain, repeats, worked

from border.working.adjusting import Adjustment
from border.working.closing import whereabouts
from border.working.fabric import edge_fabric


def test_what_lies_over_the_beginning_of_a_round_is_told_from_both_ends() -> None:
    fabric = edge_fabric(plain(12))
    at = fabric.pos
    assert whereabouts(fabric, [at[10], at[1]]) == "at places 11 to 12 and 1 to 2 of the edge"
    assert whereabouts(fabric, [at[1], at[10]]) == "at places 2 to 11 of the edge"


def test_a_repeat_that_does_not_come_out_leaves_the_rest() -> None:
    (one,) = counts("round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *.", plain(10))
    assert (one.closes, repeats(one)) == (False, [(3, {"loop": 3}, 1)])
    finding = worked("round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *.", plain(10))[
        1
    ][-1]
    assert finding.code == "row-does-not-close"
    assert "1 loop is left over" in finding.message
    assert finding.help is not None
    assert "by = 1" in finding.help and "by = -2" in finding.help


def test_later_rounds_are_worked_into_the_round_as_it_came_out() -> None:
    text = """
        round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *.
        round 2: 5 dc in each space.
    """
    assert [made(r) for r in counts(text, plain(10))] == [{"sc": 3, "ch": 9}, {"dc": 15}]


def test_meeting_the_start() -> None:
    text = """
        round 1: 1 sc in first loop, ch 4, *3 dc in next loop, ch 4, 1 sc in next loop, ch 4;
            repeat from *.
    """
    (one,) = counts(text, plain(8))
    assert (made(one), one.closes, repeats(one)) == (
        {"sc": 4, "dc": 12, "ch": 32}, True, [(3, {"loop": 2}, 0)],
    )  # fmt: skip
    assert codes(text, plain(8)) == ["meets-its-start"]
    assert codes(text, plain(9)) == []


def test_chains_before_the_step_that_runs_out_may_be_those_of_the_start() -> None:
    text = """
        round 1: (ch 4), 2 sc in first loop, ch 7, *2 sc in next loop, ch 4, 2 sc in next loop,
            ch 7; repeat from *.
    """
    (one,) = counts(text, plain(4))
    # 4 loops: (ch 4, 2 sc, ch 7), 2 sc, ch 4, 2 sc, ch 7, and 2 sc before the start's ch 4
    assert (made(one), one.closes) == ({"sc": 8, "ch": 22}, True)
    assert repeats(one) == [(1, {"loop": 2}, 0)]


def test_head_that_is_the_whole_repeat() -> None:
    text = "round 1: 1 sc in first loop, ch 5, *1 sc in next loop, ch 5; repeat from *."
    (one,) = counts(text, plain(10))
    assert (repeats(one), codes(text, plain(10))) == ([(10, {"loop": 1}, 0)], [])


@pytest.mark.parametrize(
    ("row", "n", "times", "left", "closes"),
    [
        ("*1 sc in next loop, skip 1 loop; repeat from * to last 2 loops, 1 dc in each of next 2 loops",
         10, 4, 0, True),
        ("*1 sc in next loop, skip 1 loop; repeat from * to last 3 loops, 1 dc in each of last 3 loops",
         10, 3, 1, False),
        ("(1 sc in next loop, skip 1 loop) to last 2 loops, 1 dc in each of next 2 loops",
         2, 0, 0, False),
        ("*1 sc in next loop, skip 1 loop; repeat from * to last 2 loops, 1 dc in each of next 2 loops",
         3, 1, 0, False),
    ],
)  # fmt: skip
def test_to_last(row: str, n: int, times: int, left: int, closes: bool) -> None:
    (one,) = counts(f"round 1: {row}.", plain(n))
    assert (one.repeats[0].times, one.repeats[0].left_over, one.closes) == (times, left, closes)


def test_a_tail_that_uses_what_the_repeat_left() -> None:
    text = "round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *, 1 sc in next loop."
    (one,) = counts(text, plain(10))
    assert (one.closes, repeats(one)) == (True, [(3, {"loop": 3}, 0)])


def test_a_stretch_written_twice_is_the_stretch() -> None:
    twice = "round 1: *1 sc in next loop, ch 3, 1 sc in next loop, ch 3; repeat from *."
    bracket = "round 1: *(1 sc in next loop, ch 3) 3 times; repeat from *."
    for text in (twice, bracket):
        assert repeats(counts(text, plain(7))[0]) == [(7, {"loop": 1}, 0)]


@pytest.mark.parametrize(
    ("row", "times"),
    [
        ("*1 sc in next loop, ch 3; repeat from * 4 times", 5),
        ("*1 sc in next loop, ch 3; repeat from * 4 times in all", 4),
        ("*1 sc in next loop, ch 3; repeat from * 4 more times", 5),
        ("(1 sc in next loop, ch 3) 4 times", 4),
        ("(1 sc in next loop, ch 3, 4 times)", 4),
        ("[1 sc in next loop, ch 3] twice", 2),
    ],
)
def test_counted_repeats(row: str, times: int) -> None:
    (one,) = counts(f"round 1: {row}.", plain(times))
    assert (made(one), one.closes) == ({"sc": times, "ch": 3 * times}, True)


def test_repeats_in_all() -> None:
    text = "repeats: in all\nround 1: *1 sc in next loop; repeat from * 4 times."
    assert made(counts(text, plain(4))[0]) == {"sc": 4}


def test_a_counted_repeat_that_runs_out_is_undone_from_there() -> None:
    text = "round 1: (1 sc in next loop, ch 1, 1 dc in next loop) 4 times, 1 tr in next loop."
    (one,) = counts(text, plain(7))
    assert (made(one), one.closes) == ({"sc": 3, "dc": 3, "tr": 1, "ch": 3}, False)


def test_a_row_without_a_repeat() -> None:
    text = "round 1: 1 sc in next loop, ch 3, skip 1 loop."
    assert codes(text, plain(8)) == ["repeat-unclear"]
    assert codes(f"rows without a repeat: once\n{text}", plain(8)) == ["row-does-not-close"]
    (one,) = counts(f"rows without a repeat: are repeated\n{text}", plain(8))
    assert (made(one), one.closes) == ({"sc": 4, "ch": 12}, True)


def test_faults_of_repeats() -> None:
    assert "repeat-takes-nothing" in codes("round 1: *ch 3; repeat from *.", plain(4))
    inside = "round 1: *1 sc in each loop, ch 3; repeat from *."
    assert "open-repeat-inside" in codes(inside, plain(4))


def test_leftover_where_a_motif_is_short() -> None:
    text = "round 1: over each motif: *1 sc in next loop, ch 3, skip 1 loop; repeat from * to end."
    (one,) = counts(text, motifs(4, 5, 4))
    assert (one.closes, repeats(one)) == (False, [(6, {"loop": 2}, 1)])
    finding = worked(text, motifs(4, 5, 4))[1][-1]
    assert "edge.2" in finding.message


def test_a_motif_too_short_for_its_clause() -> None:
    text = "round 1: over each motif: 1 sc in each of first 2 loops, 1 sc in each of last 2 loops."
    findings = worked(text, motifs(4, 3, 4))[1]
    assert [f.code for f in findings] == ["run-too-short", "row-does-not-close"]
    assert all("edge.2" in f.message for f in findings)


def test_not_covered_and_unknown_name() -> None:
    edge = motifs(3, 3, labels={1: "strap"})
    assert codes("round 1: over strap: 1 sc in each loop.", edge) == ["not-covered"]
    text = "round 1: over strop: 1 dc in each loop; elsewhere: 1 sc in each loop."
    found = [f for f in worked(text, edge)[1] if f.code == "unknown-name"]
    assert found[0].help == "did you mean strap?"


ODD = "round 1: *1 sc in next loop, ch 3, skip 1 loop; repeat from *."


@pytest.mark.parametrize(
    ("by", "sc", "closes"),
    [(1, 4, True), (-1, 5, True), (2, 3, False)],
)
def test_adjustments(by: int, sc: int, closes: bool) -> None:
    edge = motifs(3, 3, 3)
    (one,) = counts(ODD, edge, (Adjustment(1, "edge.2", by),))
    assert (one.made.stitches["sc"], one.closes) == (sc, closes)
    assert [(a.at, a.by, a.before_repeat) for a in one.adjustments] == [("edge.2", by, 2)]


def test_adjustments_take_one_boundary_each() -> None:
    edge = motifs(4, 4, 4)
    both = (Adjustment(1, "edge.2", 1), Adjustment(1, "edge.2", 1))
    (one,) = counts(ODD, edge, both)
    # the middle of edge.2 is at 6: the boundaries over 6.5 and, next nearest, 4.5
    assert [a.before_repeat for a in one.adjustments] == [3, 2]


def test_an_adjustment_may_pass_into_the_last_n() -> None:
    text = """round 1: *1 sc in next loop, skip 1 loop; repeat from * to last 2 loops,
        1 dc in each of last 2 loops."""
    (one,) = counts(text, motifs(4, 4, 2), (Adjustment(1, "edge.3", 1),))
    assert [a.before_repeat for a in one.adjustments] == [4]
    assert (made(one), one.closes) == ({"sc": 4}, False)


def test_an_adjustment_with_no_place() -> None:
    edge = motifs(3, 3)
    assert codes(ODD, edge, (Adjustment(1, "elsewhere", 1),)) == ["adjustment-has-no-place"]
    assert "adjustment-has-no-place" in codes(ODD, edge, (Adjustment(2, "edge.1", 1),))
    assert "adjustment-has-no-place" in codes(ODD, edge, (Adjustment(1, "edge.1", 9),))


def test_claims() -> None:
    text = "round 1: *1 sc in next loop, ch 3; repeat from *. ({})"
    for claim in ("6 sc", "18 ch", "6 spaces", "6 repeats", "6 sc, 18 ch", "6 st"):
        assert codes(text.format(claim), plain(6)) == []
    assert codes(text.format("7 sc"), plain(6)) == ["count-disagrees"]
    assert codes(text.format("6 sc, 17 ch"), plain(6)) == ["count-disagrees"]


def test_the_multiple_that_a_border_claims() -> None:
    text = "multiple of 2 plus 1\n" + ODD
    assert codes(text, plain(8)) == ["count-disagrees"]
    for places, fits in ((1, True), (2, False), (3, True)):
        told = codes("multiple of 2 plus 1\nround 1: 1 sc in each loop.", plain(places))
        assert told == ([] if fits else ["count-disagrees"])
    assert sorted(codes(text, plain(9))) == ["count-disagrees", "row-does-not-close"]


def test_too_large() -> None:
    assert codes("round 1: 10000000 dc in next loop.", plain(1)) == ["too-large"]
    many = "round 1: (ch 999999) 3 times, 1 sc in next loop."
    assert codes(many, plain(1)) == ["too-large"]


@pytest.mark.parametrize(("most", "rounds"), [(35, 2), (36, 3), (37, 3)])
def test_a_piece_of_work_too_large(most: int, rounds: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("border.working.work.WORK_LIMIT", most)
    text = "round 1: 1 sc in each loop.\nrounds 2 and 3: 1 sc in each st."
    done, told = worked(text, plain(12))
    assert len(done.rounds) == rounds
    assert [f.code for f in told] == ["too-large"] * (3 - rounds)


def test_no_stitches() -> None:
    assert "no-stitches" in codes("round 1: ch 5.", plain(3))


def test_passes_more() -> None:
    text = """
        round 1: *1 sc in next loop, 1 dc in next loop; repeat from * 3 times,
            1 sc in each of next 2 loops, 1 dc in next loop.
        round 2: *1 tr in next sc, 1 tr in next dc; repeat from *.
    """
    finding = worked(text, plain(11))[1][-1]
    assert (finding.code, finding.message.split(",")[0]) == ("passes-more", "repeat 5 of round 2")
    assert codes(text.replace("each of next 2 loops", "next loop"), plain(10)) == []


def test_of_as_many_repeats_of_either_kind_the_first_is_told() -> None:
    text = "round 1: over each motif: 2 dc in every 2nd loop, with ch 2 between."
    (one,) = counts(text, motifs(3, 7))
    # edge.1: one without chains; edge.2: two with them, the last without
    assert made(one) == {"dc": 8, "ch": 4}
    assert (one.repeats[0].times, one.repeats[0].makes.chains) == (4, 0)


def test_a_group_is_not_worked_by_working_into_a_picot_on_it() -> None:
    text = """
        round 1: *3 dc in next loop, ch 1; repeat from *.
        round 2: *(2 dc, picot, 2 dc) in next space; repeat from *.
        round 3: *1 sc in next group, ch 2, skip 1 group; repeat from *, 1 sc in last PLACE.
    """
    picot = counts(text.replace("PLACE", "picot"), plain(5))[2]
    assert (made(picot), picot.closes) == ({"sc": 3, "ch": 4}, False)
    assert repeats(picot) == [(2, {"group": 2}, 1)]
    assert counts(text.replace("PLACE", "group"), plain(5))[2].closes


UK = """
    border: in other terms
    terms: uk
    round 1: 1 tr in each loop, 2 ch between.
    round 2: *1 dc on next tr, 5 ch, miss 1 tr; repeat from *.
    round 3: 1 tr on the next 3 dc, ch 1.
    round 4: 1 dc in next 7-tr group.
"""


def test_what_is_told_of_a_round_names_stitches_as_its_text_does() -> None:
    """UK tr is US dc, UK dc is US sc (Craft Yarn Council, "Crochet Abbreviations", 2018)."""
    told = [f"{f.message} {f.help}" for f in worked(UK, plain(31))[1]]
    assert "1 tr is left over" in told[0] and "a repeat takes 2 tr and" in told[0]
    assert "skip 1 tr" in told[0] and "work 1 tr twice" in told[0]
    assert "worked once, 3 tr, 1 ch" in told[1] and "5 repeats, 15 tr" in told[1]
    assert "the row below has no 7-tr group" in told[-1]


def test_repeats_that_take_otherwise_are_counted() -> None:
    """By hand: a wheel of 4 loops has 3 spaces of 4 chains; one repeat takes two of them, the
    next takes the third, and its sc goes into the 2 chains at the joint: 4 x 2 + 4 x 1 = 12."""
    text = """
        round 1: over each motif: 1 sc in first loop, *ch 4, 1 sc in next loop; repeat from *;
            at each joint: ch 2.
        round 2: *5 dc in next ch-4 space, 1 sc in next space; repeat from *.
    """
    even, odd = (counts(text, motifs(*([loops] * 4)))[1].repeats[0] for loops in (3, 4))
    assert (even.times, even.takes, even.otherwise) == (4, {"ch-4 space": 2}, 0)
    assert (odd.times, odd.takes, odd.otherwise) == (8, {"ch-4 space": 2}, 4)


def test_a_single_stitch_has_no_second_one() -> None:
    text = "round 1: 3 dc in each loop.\nround 2: *1 sc in second of the dc, ch 3; repeat."
    (told,) = (f for f in worked(text, plain(6))[1] if f.code == "no-stitches")
    assert told.message.endswith("the row below has no 2nd st in one dc")
    assert told.help is not None and '"in 2nd dc"' in told.help
    mended = text.replace("second of the dc", "2nd st of next group")
    assert made(counts(mended, plain(6))[1]) == {"sc": 6, "ch": 18}


@pytest.mark.parametrize(
    ("of", "lacks"), [("next run of 5 dc", "5-dc run"), ("next block of 5", "block of 5")]
)
def test_a_run_that_is_not_there_is_told_with_the_group_that_may_be_meant(
    of: str, lacks: str
) -> None:
    text = f"round 1: 5 dc in each loop.\nround 2: *1 sc on the centre of {of}, ch 5; repeat."
    (told,) = (f for f in worked(text, plain(6))[1] if f.code == "no-stitches")
    assert told.message.endswith(f"the row below has no {lacks}")
    assert told.help is not None and 'write "group of 5"' in told.help
    mended = text.replace(f"centre of {of}", "centre of next group of 5")
    assert made(counts(mended, plain(6))[1]) == {"sc": 6, "ch": 30}


def test_an_adjustment_of_a_part_that_is_not_there_is_led_to_one_that_is() -> None:
    text = "round 1: *1 sc in next loop, ch 3, skip 1 loop; repeat from *."
    for at, help_ in (("edge.22", 'did you mean "edge.2"?'), ("cuff", "name a section, a wheel")):
        (told,) = worked(text, motifs(4, 4, 4), (Adjustment(1, at, 1),))[1][:1]
        assert (told.code, (told.help or "").startswith(help_)) == ("adjustment-has-no-place", True)


@pytest.mark.parametrize("begun", ["ch 3 as dc", "1 dc in same place"])
def test_a_start_chain_works_into_what_the_round_begins_in(begun: str) -> None:
    text = f"""
        round 1: *(1 hdc, ch 2, 2 dc) in next loop, ch 1; repeat from *.
        round 2: begin in 2nd st, {begun}, 1 dc in next block, 1 dc in last block.
    """
    # stitches are worked into, and the hdc that lies before the beginning is left
    assert not counts(text, plain(4))[1].closes


def test_a_round_meets_its_start_whatever_is_left_before_it() -> None:
    text = """
        round 1: 2 dc in each of the first 2 loops, ch 3,
            *ch 1, 2 dc in each of the next 2 loops, ch 3; repeat from *.
    """
    (one,) = counts(text, plain(7))
    assert (made(one), one.closes) == ({"dc": 12, "ch": 12}, True)
    assert repeats(one) == [(2, {"loop": 2}, 0)]


def test_a_bracket_that_is_worked_once_is_its_steps() -> None:
    text = "round 1: (ch 3), 1 sc in first loop, *ch 3, 1 sc in next loop; repeat from *."
    (one,) = counts(text, plain(10))
    assert repeats(one) == [(10, {"loop": 1}, 0)]


def test_what_a_repeat_inside_a_bracket_leaves_is_counted_once() -> None:
    (one,) = counts("round 1: (1 sc in every 3rd loop) 2 times.", plain(7))
    assert repeats(one) == [(2, {"loop": 3}, 1)]


def test_of_a_union_without_a_repeat_every_kind_is_to_be_used_up() -> None:
    text = "round 1: *1 sc in next loop, ch 2; repeat from *.\n"
    assert not counts(text + "round 2: 1 dc in next sc or space.", plain(1))[1].closes
    assert counts(text + "round 2: 1 dc in next sc.", plain(1))[1].closes


def test_a_start_chain_further_on_is_a_stitch_like_any_other() -> None:
    text = "round 1: begin in 3rd loop, 1 sc in each of the next 2 loops, ch 3 as dc."
    (one,) = counts(text, motifs(4, 4))
    assert [m.made.stitches for m in one.motifs] == [{"sc": 2}, {"dc": 1}]


def test_every_repeat_of_a_row_has_its_own_boundaries() -> None:
    text = """
        round 1: *1 sc in next loop; repeat from * to last 6 loops,
            *1 dc in next loop; repeat from *.
    """
    (one,) = counts(text, motifs(6, 6), (Adjustment(1, "edge.2", 1),))
    assert made(one) == {"sc": 6, "dc": 5}
    assert [(a.by, a.before_repeat) for a in one.adjustments] == [(1, 2)]


def test_a_bare_stitch_in_a_joint_passes_nothing_that_stands_on_it() -> None:
    text = """
        worked: one way
        round 1: 1 dc in each loop.
        round 2: over each motif: leave unworked; at each joint: 1 dc, 1 sc in next block.
    """
    two = counts(text, motifs(4, 4, closed=False))[1]
    assert (made(two), two.closes) == ({"dc": 1, "sc": 1}, True)


def test_chains_before_the_turn_that_stand_for_a_stitch_in_a_joint_ask_for_no_other() -> None:
    text = """
        round 1: over each motif: leave unworked; at each joint: 1 dc, ch 3, turn.
        round 2: over each motif: leave unworked; at each joint: 1 dc.
    """
    two = counts(text, motifs(2, 2, closed=False))[1]
    assert (made(two), two.closes) == ({"dc": 2}, True)


def test_a_copy_that_turns_leaves_its_last_chains_to_the_next_row() -> None:
    text = """
        worked: one way
        round 1: over each motif: 1 sc in each loop, ch 3.
        round 2: over each motif: 1 sc in each sc, ch 3.
        round 3: as round 2, turn.
        round 4: over each motif: 1 dc in each sc.
    """
    assert [made(r) for r in counts(text, motifs(3, closed=False))] == [
        {"sc": 3, "ch": 3},
        {"sc": 3, "ch": 3},
        {"sc": 3},
        {"dc": 3},
    ]


def test_a_start_chain_behind_chains_is_worked_across_the_start() -> None:
    text = """
        round 1: (1 tr, ch 1, 1 sc) in each loop, ch 1, turn.
        round 2: ch 3 as dc, 1 sc in next block.
    """
    two = counts(text, motifs(1, 1))[1]
    # the first block lies across the start, over the one joint, the second over the other
    assert [j.made.stitches for j in two.joints] == [{"sc": 1}, {"dc": 1}]
