"""Parts that are worked as they come: how they are read, and what they come to."""

from __future__ import annotations

import pytest
from reading import asked, row_faults, written
from worked import codes, counts, made, motifs, plain, repeats, worked

from border.reckoning.changing import Change, can_change, changed
from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.working.adjusting import Adjustment
from border.yoke.edges import Edge

SPACED = "round 1: *1 dc in next loop, ch 2; repeat from *.\n"
"""As many dc as loops, and a space behind each."""

WHOLE = "(1 dc in each dc, 2 dc in each space) as they come"


def order(text: str, edge: Edge) -> str:
    """What the last round is made of, in order."""
    return " ".join(worked(text, edge)[0].rounds[-1].fabric.kinds)


# --- read -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "steps",
    [
        WHOLE,
        "(1 dc in each dc, 2 dc in each space), as they occur",
        "[1 dc in each dc and 2 dc in each space] as they are met with, all round",
        "1 dc in each dc, 2 dc in each space, as they come",
        "1 dc on each dc; 2 dc under each space, taking them as they come to the end",
        "1 dc in each dc, then 2 dc in each space; working as they are met",
    ],
)
def test_the_words_for_it(steps: str) -> None:
    assert written(steps) == WHOLE


def test_the_parts_said_behind_a_comma_begin_with_the_first_in_each() -> None:
    parts = "1 dc in each dc, (1 dc, ch 1) in each space or picot, 1 tr in each ch-5 space"
    assert written(f"1 sc in first dc, {parts}, as they come, with ch 2 between") == (
        f"1 sc in first dc, ({parts}) as they come, with ch 2 between"
    )
    last = "1 dc in each dc, (1 dc, ch 1, 1 dc) in each space"
    assert written(f"{last}, as they come") == written(f"({last}) as they come")
    assert written("ch 3, 1 dc in each dc, 2 dc in each space, as they come") == f"ch 3, {WHOLE}"
    assert written("1 sc; 1 dc in each dc, 2 dc in each space, as they come") == f"1 sc, {WHOLE}"


@pytest.mark.parametrize(
    ("steps", "at"),
    [
        ("(1 dc in each dc) as they come", "1 dc in each dc"),
        ("ch 5, as they come", "as they come"),
        ("(1 dc in each dc, ch 1, 2 dc in each space) as they come", "ch 1"),
        ("(1 dc in each dc, picot, 2 dc in each space) as they come", "picot"),
        ("(1 dc in each dc, skip 1, 2 dc in each space) as they come", "skip 1"),
        ("(1 dc in each dc, 2 dc in next space) as they come", "2 dc in next space"),
        ("(1 dc in each dc, 2 dc in every 2nd space) as they come", "2 dc in every 2nd space"),
        ("(1 dc in each dc, *2 dc in next space; repeat) as they come", "*2 dc in next space; repeat"),
        ("(1 dc in each dc, with ch 1 between, 2 dc in each space) as they come",
         "1 dc in each dc, with ch 1 between"),
        ("(1 dc in each dc, 2 dc in each space or dc) as they come", "2 dc in each space or dc"),
        (f"{WHOLE} 3 times", "as they come 3 times"),
        (f"{WHOLE} in next loop", "as they come in next loop"),
        ("1 sc, 1 dc in each dc, 2 dc in each space, as they come", "1 sc"),
        ("1 sc in first dc, ch 2, 1 dc in each dc, 2 dc in each space, as they come", "ch 2"),
        ("1 dc in each dc, ch 1, 2 dc in each space, as they come", "ch 1"),
    ],
)  # fmt: skip
def test_what_cannot_be_worked_as_it_comes_is_told(steps: str, at: str) -> None:
    assert row_faults(steps) == [("not-understood", at)]


def test_chains_at_the_head_of_a_clause_may_go_with_the_first_part() -> None:
    steps = "over each motif: ch 3, 1 dc in each dc, 2 dc in each space, as they come"
    assert row_faults(steps) == [("not-understood", "ch 3")]


def test_inside_another_place_or_repeat_it_is_told() -> None:
    assert row_faults(f"({WHOLE}) in next loop") == [("place-inside", WHOLE)]
    told = worked(f"round 1: *{WHOLE}; repeat from *.", plain(6))[1]
    assert [f.help for f in told if f.code == "open-repeat-inside"] == [
        "leave the repeat round it out: it goes on to the end by itself"
    ]


@pytest.mark.parametrize(
    ("steps", "edit"),
    [
        ("1 dc in each dc, 2 dc in each space", WHOLE),
        ("1 dc in each dc, 2 dc in each space, (1 sc, ch 1) in each picot",
         "(1 dc in each dc, 2 dc in each space, (1 sc, ch 1) in each picot) as they come"),
        ("1 dc in each dc, with ch 1 between, 2 dc in each space",
         "((1 dc, ch 1) in each dc, 2 dc in each space) as they come"),
        ("1 dc in each dc, 1 dc in each space, 1 dc in each picot",
         "1 dc in each dc or space or picot"),
        ("1 dc in every 3rd dc, 2 dc in each space",
         '"*1 dc in 3rd dc, 2 dc in next space; repeat from *", with the number of each'),
        ("1 dc in each dc, *ch 3, 1 dc in next space; repeat from *",
         '"*1 dc in next dc, ch 3, 1 dc in next space; repeat from *", with the number of each'),
    ],
)  # fmt: skip
def test_steps_that_are_perhaps_worked_so_are_asked_with_it_as_the_edit(
    steps: str, edit: str
) -> None:
    assert asked(steps) == {
        "perhaps-as-they-come": f"where all are worked as they come, write {edit}"
    }


def test_what_is_told_of_it_is_read_again() -> None:
    told = asked("1 dc in each dc, 2 dc in each space, 1 tr in each picot")
    edit = told["perhaps-as-they-come"].partition("write ")[2]
    assert written(edit) == edit


def test_chains_behind_it_are_asked() -> None:
    assert asked(f"{WHOLE}, ch 5")["perhaps-as-they-come"].startswith('write ", with ch 5 between"')


# --- worked -----------------------------------------------------------------------------------


def test_each_part_is_worked_where_its_site_comes() -> None:
    text = f"{SPACED}round 2: {WHOLE}."
    (_, two) = counts(text, plain(6))
    # 6 dc with one each, 6 spaces with two: 6 + 12, in 12 repeats of one site
    assert (made(two), two.closes) == ({"dc": 18}, True)
    assert [(r.times, r.left_over, r.otherwise) for r in two.repeats] == [(12, 0, 6)]
    assert codes(text, plain(6)) == []


def test_the_order_is_that_of_the_row_below() -> None:
    text = (
        "round 1: 1 dc in first loop, ch 2, *1 dc in next loop, 1 sc in next loop, ch 3; "
        "repeat from *.\nround 2: (2 tr in each space, 1 hdc in each dc) as they come."
    )
    # dc ch2, then twice dc sc ch3; nothing goes into the sc
    assert order(text, plain(5)) == "hdc tr tr hdc tr tr hdc tr tr"
    assert counts(text, plain(5))[1].closes


def test_a_space_across_the_start_comes_last() -> None:
    below = (
        "round 1: (ch 2), 1 dc in first loop, *ch 3, 1 dc in next loop; repeat from *, (ch 1).\n"
    )
    for parts in ("1 dc in each dc, 1 sc in each space", "1 sc in each space, 1 dc in each dc"):
        text = f"{below}round 2: ({parts}) as they come."
        # 4 dc with ch 3 between; ch 1 at the end and ch 2 at the start are the fourth space
        assert order(text, plain(4)) == "dc sc dc sc dc sc dc sc"
        assert counts(text, plain(4))[1].closes
        # worked to and fro these are two spaces, the one of 2 before all, the one of 1 behind
        assert order(text, plain(4, closed=False)) == "sc dc sc dc sc dc sc dc sc"


def test_where_two_sites_start_together_the_part_named_first_is_worked() -> None:
    below = "round 1: *1 dc in next loop, 1 sc in next loop; repeat from *.\n"
    dc_first = f"{below}round 2: (1 tr in each dc, 2 hdc in each st) as they come."
    st_first = f"{below}round 2: (2 hdc in each st, 1 tr in each dc) as they come."
    assert order(dc_first, plain(4)) == "tr hdc hdc tr hdc hdc"
    assert order(st_first, plain(4)) == "hdc hdc hdc hdc hdc hdc hdc hdc"
    assert counts(st_first, plain(4))[1].closes


def test_what_a_worked_site_covers_is_passed() -> None:
    below = "round 1: *3 dc in next loop, ch 3; repeat from *.\n"
    block_first = f"{below}round 2: (1 tr in each block, 1 dc in each st) as they come."
    st_first = f"{below}round 2: (1 dc in each st, 1 tr in each block) as they come."
    # the block starts where its first st does; behind that st no block starts any more
    assert order(block_first, plain(2)) == "tr tr"
    assert order(st_first, plain(2)) == "dc dc dc dc dc dc"
    centre = (
        f"{below}round 2: (1 tr in centre of each block, 1 dc in first st of each block, "
        "2 sc in centre of each space) as they come."
    )
    assert order(centre, plain(2)) == "dc tr sc sc dc tr sc sc"


def test_chains_between_part_each_working_from_the_next() -> None:
    text = f"{SPACED}round 2: {WHOLE}, with ch 1 between."
    # 12 workings on 6 loops: all round 12 times ch 1, to and fro none behind the last
    assert made(counts(text, plain(6))[1]) == {"dc": 18, "ch": 12}
    assert made(counts(text, plain(6, closed=False))[1]) == {"dc": 18, "ch": 11}


def test_a_start_chain_is_the_first_of_them() -> None:
    text = f"{SPACED}round 2: ch 3 as dc, {WHOLE}."
    (_, two) = counts(text, plain(6))
    assert (made(two), two.closes, two.repeats[0].times) == ({"dc": 18}, True, 11)


def test_steps_before_it_take_what_they_name_and_behind_it_nothing_is_left() -> None:
    text = f"{SPACED}round 2: 1 sc in first dc, skip next space, {WHOLE}."
    (_, two) = counts(text, plain(6))
    # 5 dc and 5 spaces are left: 5 + 10
    assert (made(two), two.closes) == ({"sc": 1, "dc": 15}, True)


def test_a_row_without_such_a_site_closes_on_what_is_there() -> None:
    text = f"{SPACED}round 2: (1 dc in each dc, 3 sc in each picot) as they come."
    (_, two) = counts(text, plain(6))
    assert (made(two), two.closes) == ({"dc": 6}, True)
    assert repeats(two) == [(6, {"dc": 1, "picot": 0}, 0)]
    none = f"{SPACED}round 2: (1 dc in each tr, 3 sc in each picot) as they come, 1 dc in first dc."
    (_, two) = counts(none, plain(6))
    assert (made(two), two.closes) == ({"dc": 1}, True)


def test_in_a_clause_it_goes_to_the_end_of_the_stretch() -> None:
    text = f"{SPACED}round 2: over each motif: {WHOLE}; at each joint: ch 1."
    (_, two) = counts(text, motifs(3, 4))
    # a motif of n loops has n dc, and n - 1 spaces inside it: the last lies on its joint
    assert (made(two), two.closes) == ({"dc": 3 + 4 + 2 * (2 + 3), "ch": 2}, True)
    assert [r.times for r in two.repeats] == [3 + 2 + 4 + 3]


@pytest.mark.parametrize(
    ("by", "dc", "sc", "times"),
    [
        (1, 12, 22, 23),  # the space in the middle of the motif is passed over
        (-1, 13, 24, 25),  # the dc before it is worked twice
    ],
)
def test_an_adjustment_counts_sites_of_all_the_parts(by: int, dc: int, sc: int, times: int) -> None:
    text = f"{SPACED}round 2: (1 dc in each dc, 2 sc in each space) as they come."
    (_, two) = counts(text, motifs(4, 4, 4), (Adjustment(2, "edge.2", by),))
    assert (made(two), two.repeats[0].times) == ({"dc": dc, "sc": sc}, times)
    assert [a.by for a in two.adjustments] == [by]


def test_claims_of_repeats_count_the_workings() -> None:
    right = f"{SPACED}round 2: {WHOLE}. (12 repeats, 18 dc)"
    assert codes(right, plain(6)) == []
    assert codes(right.replace("12 repeats", "6 repeats"), plain(6)) == ["count-disagrees"]


def test_words_for_one_kind_of_place_are_counted_once() -> None:
    (one,) = counts("round 1: (1 dc in each loop, 2 dc in each st) as they come.", plain(5))
    assert (made(one), repeats(one)) == ({"dc": 5}, [(5, {"loop": 1}, 0)])


def test_its_numbers_can_be_changed_to_make_a_round_lie_flat() -> None:
    border, _ = read_border(Source("a.border", f"terms: us\n{SPACED}round 2: {WHOLE}."))
    assert border is not None
    reading, _ = read_rounds(border, lambda source, name: None)
    found = can_change(reading.rounds[1])
    assert [(c.what, c.was) for c in found] == [("dc", 1), ("dc", 2)]
    one = changed(reading, Change(2, "dc", 1, 3)).rounds[1]
    assert [(c.what, c.was) for c in can_change(one)] == [("dc", 3), ("dc", 2)]
