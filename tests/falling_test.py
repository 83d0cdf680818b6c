"""How the repeats of a round lie over the sections, and whether its two sides are alike."""

from __future__ import annotations

import pytest
from worked import motifs, plain, sections, worked

from border.planning.falling import Lying, Over, lying
from border.planning.spots import spots_of
from border.working.adjusting import Adjustment
from border.yoke.edges import Edge

YOKE = sections("front 4 4", "right strap 4", "back 4 4", "left strap 4")
"""24 loops, symmetrical about the joints in the middle of front and back."""

TWOS = "round 1: *1 sc in next loop, ch 3, skip 1 loop; repeat from *."
THREES = "round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *."
PAIRS = "round 2: *1 sc in next space, ch 2, 1 dc in next space, ch 2; repeat from *."
EACH = "round 2: 1 sc in each space, with ch 2 between."


def lies(text: str, edge: Edge, *plan: tuple[int, str, int], mirror: str = "") -> list[Lying]:
    """How each round lies."""
    done, _ = worked(text, edge, tuple(Adjustment(*a) for a in plan))
    spots = spots_of(edge, [mirror] if mirror else [], {})
    return [lying(round_, spots) for round_ in done.rounds]


def falls(told: Lying) -> list[str]:
    """As in "front: 4 from front.1 1 to front.2 3"."""
    return [
        f"{f.section}: {f.repeats} from {_over(f.first)} to {_over(f.last)}" for f in told.falls
    ]


def _over(over: Over) -> str:
    return f"{over.motif} {over.place}"


# --- where they fall -------------------------------------------------------------------


def test_repeats_are_told_section_by_section() -> None:
    first, second = lies(f"{TWOS}\n{PAIRS}", YOKE)
    assert falls(first) == [  # a single crochet over loops 1, 3, 5 … of 24
        "front: 4 from front.1 1 to front.2 3",
        "right strap: 2 from right strap.1 1 to right strap.1 3",
        "back: 4 from back.1 1 to back.2 3",
        "left strap: 2 from left strap.1 1 to left strap.1 3",
    ]
    assert falls(second) == [  # two spaces to a repeat, over loops 2 and 4, 6 and 8 …
        "front: 2 from front.1 2 to front.2 4",
        "right strap: 1 from right strap.1 2 to right strap.1 4",
        "back: 2 from back.1 2 to back.2 4",
        "left strap: 1 from left strap.1 2 to left strap.1 4",
    ]


def test_what_is_eased_in_moves_the_repeats_behind_it() -> None:
    first, second = lies(f"{THREES}\n{EACH}", YOKE, (1, "front.1", 1), (1, "back.1", -1))
    assert falls(first) == [  # loops 1, 5, 8 | 11 | 13, 16, 19 | 22
        "front: 3 from front.1 1 to front.2 4",
        "right strap: 1 from right strap.1 3 to right strap.1 3",
        "back: 3 from back.1 1 to back.2 3",
        "left strap: 1 from left strap.1 2 to left strap.1 2",
    ]
    # half-way between them: 2½ and 6 loops from the start | 9, 11½ | 14, 17 | 20, on a joint, and 23
    assert falls(second) == [
        "front: 2 from front.1 3 to front.2 3",
        "right strap: 2 from right strap.1 2 to right strap.1 4",
        "back: 2 from back.1 3 to back.2 2",
        "left strap: 2 from left strap.1 1 to left strap.1 4",
    ]


def test_a_repeat_belongs_to_the_section_where_it_begins() -> None:
    row = "round 1: *1 sc in next loop, ch 3, skip 2 loops, 1 dc in next loop; repeat from *."
    (only,) = lies(row, sections("front 6", "back 6"))
    assert falls(only) == [
        "front: 2 from front.1 1 to back.1 2",
        "back: 1 from back.1 3 to back.1 6",
    ]


def test_a_section_met_twice_is_told_twice() -> None:
    text = (
        "round 1: 1 sc in first loop, *ch 3, skip 2 loops, 1 sc in next loop; repeat from *, "
        "1 sc in next loop."
    )
    (only,) = lies(text, sections("a 4", "b 6", "a 4", closed=False))
    assert falls(only) == [
        "a: 1 from a.1 4 to a.1 4",
        "b: 2 from b.1 3 to b.1 6",
        "a: 1 from a.2 3 to a.2 3",
    ]


ROWS = """
round 1: 1 sc in first loop, *ch 3, skip 2 loops, 1 sc in next loop; repeat from *, 1 sc in next loop.
round 2: 1 sc in first st, *ch 2, 1 sc in next space, 1 sc in next sc; repeat from *.
"""


def test_after_turning_they_are_told_in_the_order_of_the_edge() -> None:
    edge = sections("a 4", "b 6", "c 4", closed=False)
    # to and fro, each repeat begins in a space and ends in a stitch nearer the start
    _, turned = lies(f"worked: in rows\n{ROWS}", edge)
    assert falls(turned) == ["a: 2 from a.1 1 to b.1 2", "b: 2 from b.1 3 to c.1 2"]
    _, one_way = lies(f"worked: one way\n{ROWS}", edge)
    assert falls(one_way) == [
        *("a: 1 from a.1 3 to a.1 4", "b: 2 from b.1 2 to b.1 6", "c: 1 from c.1 2 to c.1 3"),
    ]


def test_a_round_that_is_turned_is_told_in_the_order_of_the_edge() -> None:
    _, straight = lies(f"{TWOS}\n{PAIRS}", YOKE)
    _, turned = lies(f"{TWOS.replace('*.', '*, turn.')}\n{PAIRS}", YOKE)
    assert falls(turned) == falls(straight)


def test_repeats_of_clauses_are_told_with_the_rest() -> None:
    text = (
        "round 1: over front: 1 sc in each loop; "
        "elsewhere, over each motif: *1 sc in next loop, ch 3, skip 1 loop; repeat from *."
    )
    (only,) = lies(text, YOKE)
    assert falls(only)[:2] == [
        "front: 8 from front.1 1 to front.2 4",
        "right strap: 2 from right strap.1 1 to right strap.1 3",
    ]


@pytest.mark.parametrize(
    ("text", "edge"),
    [
        ("round 1: 1 sc in each loop.", plain(8)),  # no motifs to lie over
        ("round 1: 1 sc in each of next 4 loops.", motifs(4)),  # no open-ended repeat
    ],
)
def test_without_motifs_or_repeats_there_is_nothing_to_tell(text: str, edge: Edge) -> None:
    assert lies(text, edge) == [Lying((), None)]


# --- the two sides -----------------------------------------------------------------------

CENTRED = "round 1: *skip 1 loop, 1 sc in each of next 2 loops, ch 3, skip 1 loop; repeat from *."


def test_the_sides_are_alike_where_the_stitches_mirror_each_other() -> None:
    assert [one.alike for one in lies(CENTRED, YOKE)] == [True]
    assert [one.alike for one in lies(TWOS, YOKE)] == [False]
    assert [one.alike for one in lies(f"{TWOS}\n{PAIRS}", YOKE)] == [False, False]


def test_it_is_the_mirror_points_that_decide() -> None:
    uniform = sections("cuff 3 3 3 3 3 3")
    row = "round 1: *skip 1 loop, 1 sc in next loop, ch 3, skip 1 loop; repeat from *."
    assert [one.alike for one in lies(row, uniform)] == [None]
    for mirror in ("cuff.2", "cuff.2 | cuff.3", "cuff.6 | cuff.1"):
        assert [one.alike for one in lies(row, uniform, mirror=mirror)] == [True], mirror
    # a stitch over the first loop of each motif is off every axis
    row = "round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *."
    for mirror in ("cuff.2", "cuff.2 | cuff.3"):
        assert [one.alike for one in lies(row, uniform, mirror=mirror)] == [False], mirror


def test_another_stitch_on_the_other_side_is_not_alike() -> None:
    row = "round 1: *1 sc in next loop, ch 3, 1 STITCH in next loop, ch 3; repeat from *."
    for stitch, alike in ("sc", True), ("dc", False):
        told = lies(row.replace("STITCH", stitch), sections("a 4", "b 4", "c 4"), mirror="a.1")
        assert [one.alike for one in told] == [alike], stitch


def test_a_place_passed_over_on_one_side_only_is_not_alike() -> None:
    edge = sections("a 5 3 5", closed=False)
    row = "round 1: 1 sc in each loop."
    assert [one.alike for one in lies(row, edge)] == [True]
    assert [one.alike for one in lies(row, edge, (1, "a.1", 1))] == [False]
    assert [one.alike for one in lies(row, edge, (1, "a.2", 1))] == [True]  # on the axis


@pytest.mark.parametrize("turn", ["", ", turn"])
def test_turning_changes_nothing_of_it(turn: str) -> None:
    text = f"{CENTRED.removesuffix('.')}{turn}.\nround 2: 2 dc in each space."
    assert [one.alike for one in lies(text, YOKE)] == [True, True]
    text = f"{TWOS.removesuffix('.')}{turn}.\nround 2: 2 dc in each sc."
    assert [one.alike for one in lies(text, YOKE)] == [False, False]
    rows = [f"over front: 1 dc in each {x}; elsewhere: 1 sc in each {x}" for x in ("loop", "st")]
    text = f"round 1: {rows[0]}{turn}.\nround 2: {rows[1]}."
    assert [one.alike for one in lies(text, YOKE)] == [True, True]
    edge = sections("a 4 4 4", closed=False)
    for first, alike in ("1 sc in each loop", True), ("1 sc in each of first 3 loops", False):
        text = (
            f"round 1: {first}{turn}.\nround 2: 1 sc in each st{turn}.\nround 3: 1 dc in each st."
        )
        assert [one.alike for one in lies(text, edge)][1:] == [alike, alike]


def test_on_an_open_edge_the_last_repeat_ends_at_its_stitch() -> None:
    """The chains that would part it from a next one are not made."""
    (told,) = lies("row 1: 1 sc in each loop, with ch 2 between.", motifs(4, 4, closed=False))
    assert falls(told) == ["edge: 8 from edge.1 1 to edge.2 4"]
