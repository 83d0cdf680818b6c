"""The cursor, places and steps of a row, each rule by a row whose counts are worked by hand."""

from __future__ import annotations

import pytest
from worked import codes, counts, made, motifs, plain, repeats, sections, worked

SC = "round 1: *1 sc in next loop, ch 3; repeat from *."


def second(row: str, places: int = 12, first: str = SC, **heads: str) -> dict[str, int]:
    """What round 2 makes over a first round of sc and ch-3 spaces."""
    headings = "".join(f"{k.replace('_', ' ')}: {v}\n" for k, v in heads.items())
    rounds = counts(f"{headings}{first}\nround 2: {row}", plain(places))
    return made(rounds[1])


@pytest.mark.parametrize(
    ("row", "expected"),
    [
        ("3 dc in each space.", {"dc": 36}),
        ("*1 sc in next space, ch 5; repeat from *.", {"sc": 12, "ch": 60}),
        ("*1 sc in 2nd space, ch 5; repeat from *.", {"sc": 6, "ch": 30}),
        ("1 sc in every 3rd space, with ch 7 between.", {"sc": 4, "ch": 28}),
        ("(2 dc, ch 2, 2 dc) in each ch-3 space.", {"dc": 48, "ch": 24}),
        ("*2 dc in each of the next 2 spaces, skip 1 space; repeat from *.", {"dc": 16}),
        ("*1 dc in the next 3 spaces; repeat from *.", {"dc": 12}),
        ("*3 dc together over next 3 spaces, ch 4; repeat from *.", {"dc": 4, "ch": 16}),
        ("*2 dc in each of next 2 spaces, all together, ch 4; repeat from *.", {"dc": 6, "ch": 24}),
        ("*3-dc cluster in next space, ch 4; repeat from *.", {"dc": 12, "ch": 48}),
        ("2 dc, with ch 1 between, in each space.", {"dc": 24, "ch": 12}),
        ("1 dc in each space, with ch 2 between.", {"dc": 12, "ch": 24}),
        ("*1 sc in centre of next space, ch 5; repeat from *.", {"sc": 12, "ch": 60}),
        ("*1 sc in 2nd ch of next space, ch 5; repeat from *.", {"sc": 12, "ch": 60}),
        ("*1 sc between next 2 spaces, ch 5; repeat from *.", {"sc": 12, "ch": 60}),
        ("*1 sc in next sc, 1 sc in same place, ch 2; repeat from *.", {"sc": 24, "ch": 24}),
        ("*skip 1 space, 1 dc in next space, 1 dc in the skipped space; repeat from *.", {"dc": 12}),
        ("*1 sc, picot, 1 sc, all in next space; repeat from *.", {"sc": 24, "picot": 12}),
        ("*1 sc in next space, ch 4, 1 sc in the first of the 4 ch; repeat from *.",
         {"sc": 12, "picot": 12}),
        ("begin in next space, 3 dc in same space, *ch 1, 3 dc in next space; repeat from *, ch 1.",
         {"dc": 36, "ch": 12}),
    ],
)  # fmt: skip
def test_a_step_makes(row: str, expected: dict[str, int]) -> None:
    assert second(row) == expected


def test_an_open_row_has_chains_between_only() -> None:
    (one,) = counts("round 1: 1 dc in each loop, with ch 2 between.", plain(5, closed=False))
    assert made(one) == {"dc": 5, "ch": 8}


def test_bare_stitches_over_chains_ask_whether_chains_count() -> None:
    text = f"{SC}\nround 2: *2 dc, skip 2; repeat from *."
    assert "chains-unclear" in codes(text, plain(12))
    for answer, dc in (("yes", 24), ("no", 6)):
        _one, two = counts(f"chains count as stitches: {answer}\n{text}", plain(12))
        assert (made(two), two.closes) == ({"dc": dc}, True)


def test_where_chains_counted_or_not_come_to_the_same_the_help_says_so() -> None:
    parted = "round 1: *1 dc in next loop, ch 1, skip 1 loop; repeat from *.\n"
    alike = (
        parted + "round 2: ch 3 as dc, 1 dc in next space, *1 dc in next dc, 1 dc in next space; "
    )
    helps = [
        f.help
        for text in (f"{alike}repeat from *.", f"{SC}\nround 2: *2 dc, skip 2; repeat from *.")
        for f in worked(text, plain(12))[1]
        if f.code == "chains-unclear"
    ]
    assert [(h or "").endswith("comes to the same with either") for h in helps] == [True, False]


def test_a_site_across_the_start_is_one_site() -> None:
    text = """
        round 1: (ch 2), *1 sc in next loop, ch 2; repeat from * to last 1 loop, 1 sc in last loop, ch 1.
        round 2: *3 dc in next space; repeat from *.
    """
    one, two = counts(text, plain(6))
    # ch 1 at the end and ch 2 at the start are one space of 3 across the start
    assert (made(one), one.spaces) == ({"sc": 6, "ch": 13}, 6)
    assert made(two) == {"dc": 18}


def test_straddling_space_is_seen_once() -> None:
    text = """
        round 1: (ch 2), *1 sc in next loop, ch 4, 1 sc in next loop, ch 2; repeat from *.
        round 2: 1 dc in each ch-4 space.
        round 3: 1 sc in each st.
    """
    one, two, three = counts(text, plain(6))
    # the last repeat's ch 2 and the first ch 2 are one space of 4 across the start
    assert (one.spaces, made(two), made(three)) == (6, {"dc": 4}, {"sc": 4})


def test_groups_and_blocks() -> None:
    text = """
        round 1: 3 dc in each loop.
        round 2: *1 sc in next group, ch 1; repeat from *.
    """
    assert made(counts(text, plain(4))[1]) == {"sc": 4, "ch": 4}
    text = text.replace("next group", "next block")
    assert made(counts(text, plain(4))[1]) == {"sc": 1, "ch": 1}


def test_a_cluster_over_several_sites_is_in_no_group() -> None:
    text = """
        round 1: *2 dc in next loop, 2 dc together over next 2 loops; repeat from *.
        round 2: *1 sc in next group, ch 3; repeat from *.
    """
    one, two = counts(text, plain(6))
    assert (made(one), made(two)) == ({"dc": 6}, {"sc": 2, "ch": 6})


def test_union_takes_whichever_comes_next() -> None:
    text = f"{SC}\nround 2: 3 dc in each ch-3 space and each sc."
    _one, two = counts(text, plain(4))
    assert (made(two), two.closes) == ({"dc": 24}, True)
    assert (two.repeats[0].times, sum(two.repeats[0].takes.values())) == (8, 1)


def test_first_elsewhere_than_at_the_head() -> None:
    assert "not-at-the-head" in codes("round 1: skip 1 loop, 1 sc in first loop.", plain(2))


def test_same_with_nothing_before() -> None:
    assert "nothing-before" in codes("round 1: 1 sc in same loop, 1 sc in each loop.", plain(2))


def test_a_skip_that_ends_inside_a_place_named_whole() -> None:
    text = (
        f"chains count as stitches: yes\n{SC}\nround 2: *skip 2, 1 sc in next space; repeat from *."
    )
    assert "place-unclear" in codes(text, plain(6))


@pytest.mark.parametrize(
    ("row", "expected", "warns"),
    [
        ("ch 3 as dc, 1 dc in each of next 5 loops.", {"dc": 6}, False),
        ("ch 7 as tr and ch 3, *skip 1 loop, 1 tr in next loop, ch 3; repeat from *.",
         {"tr": 3, "ch": 9}, False),
        ("ch 3, 1 dc in each of next 5 loops.", {"dc": 6}, True),
        ("ch 5, 1 dc in next loop, ch 2, 1 dc in each of next 4 loops.", {"dc": 6, "ch": 4}, True),
        ("ch 1, 1 sc in each loop.", {"sc": 6}, False),
        ("ch 3, not counted, 1 dc in each loop.", {"dc": 6}, False),
        ("(ch 3), 1 sc in next loop, 1 dc in each of next 5 loops.", {"sc": 1, "dc": 5, "ch": 3},
         False),
    ],
)  # fmt: skip
def test_start_chains(row: str, expected: dict[str, int], warns: bool) -> None:
    text = f"round 1: {row}"
    assert made(counts(text, plain(6))[0]) == expected
    assert ("start-chain-assumed" in codes(text, plain(6))) is warns


def test_chains_that_open_a_row_of_its_own_repeat_belong_to_it() -> None:
    text = "round 1: ch 3, skip 2 loops, 1 dc in next loop; repeat."
    assert made(counts(text, plain(6))[0]) == {"dc": 2, "ch": 6}
    text = "rows without a repeat: are repeated\nround 1: ch 1, skip 1 loop, 1 dc in next loop."
    assert made(counts(text, plain(6))[0]) == {"dc": 3, "ch": 3}


def test_a_counted_start_chain_uses_up_the_space_across_the_start() -> None:
    text = """
        round 1: *ch 3, 1 sc in next loop, ch 3; repeat from *.
        round 2: ch 3 as dc, 2 dc in same space, *ch 1, 3 dc in next space; repeat from *, ch 1.
    """
    one, two = counts(text, plain(4))
    assert (one.spaces, made(two), two.closes) == (4, {"dc": 12, "ch": 4}, True)


def test_turning_chain_is_read_in_the_next_row() -> None:
    text = """
        row 1: 1 sc in each st, ch 3, turn.
        row 2: 1 dc in each of next 5 st.
    """
    one, two = counts(text, plain(6, closed=False, of="chain"))
    assert (made(one), made(two)) == ({"sc": 6}, {"dc": 6})


@pytest.mark.parametrize(
    ("row", "heads"),
    [
        ("2 sc together over next 2 sc, repeat.", ""),
        ("2 sc together over next 2 sc.", "rows without a repeat: are repeated\n"),
    ],
)
def test_chains_made_before_the_turn_are_made_once(row: str, heads: str) -> None:
    """They stand for no stitch here, sc being lower, and were made before the row began."""
    text = f"{heads}row 1: 1 sc in each st, ch 2, turn.\nrow 2: {row}"
    two = counts(text, plain(8, closed=False))[1]
    assert (made(two), two.closes) == ({"sc": 4, "ch": 2}, True)


def test_a_start_chain_behind_chains_made_before_the_turn_is_no_part_of_the_repeat() -> None:
    text = """
        rows without a repeat: are repeated
        row 1: 1 sc in each st, ch 2, turn.
        row 2: ch 5 as tr, skip 1 st, 1 sc in next st, ch 1.
    """
    two = counts(text, plain(9, closed=False))[1]
    assert (made(two), two.closes) == ({"ch": 6, "tr": 1, "sc": 4}, True)
    assert [r.times for r in two.repeats] == [4]


def test_turning_chain_before_clauses_heads_what_is_worked_first() -> None:
    edge = motifs(2, 3, closed=False)
    text = """
        row 1: 1 sc in each st, ch 3, turn.
        row 2: over each motif: 1 dc in each of next 2 st.
    """
    two = counts(text, edge)[1]
    assert (made(two), two.closes) == ({"dc": 5}, True)  # 3 in edge.2, the first
    assert "start-chain-assumed" in codes(text, edge)
    sc = text.replace("1 dc", "1 sc")
    assert made(counts(sc, edge)[1]) == {"sc": 4, "ch": 3}
    clauses = "over edge.1: 1 sc in each st; over edge.2: 1 sc in each st, ch 3, turn."
    of_the_last = text.replace("1 sc in each st, ch 3, turn.", clauses)
    assert made(counts(of_the_last, edge)[1]) == {"dc": 5}


def test_open_rows_are_worked_to_and_fro() -> None:
    text = """
        row 1: 1 sc in first st, ch 3, skip 2, 1 dc in each of next 2 st.
        row 2: 1 sc in first dc, 1 sc in next dc, 2 dc in next space, 1 sc in next sc.
    """
    _one, two = counts(text, plain(5, closed=False, of="chain"))
    assert (made(two), two.closes) == ({"sc": 3, "dc": 2}, True)
    assert not counts(f"worked: one way\n{text}", plain(5, closed=False, of="chain"))[1].closes


def test_the_round_ends_where_its_first_place_was() -> None:
    text = """
        round 1: *1 sc in next loop, ch 2, 1 dc in next loop, ch 2; repeat from *.
        round 2: *1 sc in next dc, 1 sc in next sc; repeat from *.
    """
    _one, two = counts(text, plain(6))
    assert (made(two), two.closes) == ({"sc": 6}, True)  # the sc before the first dc comes last


def test_over_parts() -> None:
    edge = motifs(4, 4, 2, labels={3: "strap"})
    text = """
        round 1: over strap: 2 dc in each loop; elsewhere, over each motif: 1 sc in first loop,
            ch 3, skip 2 loops, 1 sc in last loop; at each joint: ch 1.
    """
    (one,) = counts(text, edge)
    assert made(one) == {"dc": 4, "sc": 4, "ch": 9}
    assert [m.usual for m in one.motifs] == [True, True, False]
    assert [(j.between, j.made.chains) for j in one.joints] == [
        (("edge.1", "edge.2"), 1),
        (("edge.2", "edge.3"), 1),
        (("edge.3", "edge.1"), 1),
    ]


def test_joints_beside_what_no_clause_covers_are_worked() -> None:
    text = "round 1: over edge.1: 1 sc in each loop; at each joint: 1 dc."
    (one,) = counts(text, motifs(2, 2, 2))
    assert made(one) == {"sc": 2, "dc": 3}


def test_capitals_mean_nothing_in_the_names_of_a_clause() -> None:
    edge = motifs(2, 2, labels={2: "Left strap"})
    text = "round 1: OVER left STRAP: 2 dc in each loop; elsewhere: 1 sc in each loop."
    assert made(counts(text, edge)[0]) == {"sc": 2, "dc": 4}
    assert codes(text, edge) == []


def test_a_point_at_the_start_comes_first() -> None:
    text = """
        round 1: 1 sc in each loop.
        round 2: *1 dc between next 2 sc; repeat from *.
        round 3: 1 sc in each dc.
    """
    rounds = counts(text, motifs(3, 3))
    # the first dc stands over the joint at the start, the fourth over the other one
    assert [(j.between, j.made.stitches) for j in rounds[1].joints] == [
        (("edge.1", "edge.2"), {"dc": 1}),
        (("edge.2", "edge.1"), {"dc": 1}),
    ]
    (_, two) = worked(text.split("round 3")[0] + "", motifs(3, 3))[0].rounds
    assert two.fabric.pos[0] == 0


def test_one_motif_alone_has_what_stands_over_its_start() -> None:
    text = """
        chains count as stitches: yes
        round 1: *1 dc in next loop, ch 1; repeat from *.
        round 2: over each motif: 1 sc in each st.
    """
    rounds = counts(text, motifs(4))
    assert (made(rounds[1]), rounds[1].closes) == ({"sc": 8}, True)


def test_copies_of_copies_are_the_row_and_cost_no_more() -> None:
    many = "".join(f"round {n}: as round {n - 1}.\n" for n in range(2, 400))
    rounds = counts(f"round 1: 1 sc in each st.\n{many}", plain(3))
    assert (len(rounds), made(rounds[-1])) == (399, {"sc": 3})
    ring = "round 1: 1 sc in each st.\nround 2: as round 3.\nround 3: as round 2."
    assert codes(ring, plain(3)) == ["copies-itself"]


def test_a_repeat_of_one_step_twice_is_that_step() -> None:
    """So thirteen loops close it, as one would work them."""
    (only,) = counts("round 1: *1 sc in next loop, 1 sc in next loop; repeat from *.", plain(13))
    assert repeats(only) == [(13, {"loop": 1}, 0)]
    assert only.closes


def test_a_turned_row_has_each_picot_behind_its_stitch_again() -> None:
    text = """
        round 1: *1 sc in next loop, picot, ch 2, 1 dc in next loop, 2 picots;
            repeat from *.
    """
    (one,) = worked(text, plain(4))[0].rounds
    half = ["dc", "picot", "picot", "ch", "ch", "sc", "picot"]
    assert one.fabric.turned().kinds == half * 2
    assert one.fabric.turned().turned().kinds == one.fabric.kinds


def test_a_start_chain_that_is_made_before_the_turn_is_no_step_of_the_repeat() -> None:
    text = """
        rows without a repeat: are repeated
        round 1: 1 sc in each loop, ch 3 as dc, turn.
        round 2: 1 dc in next st, ch 1, 1 tr in next st.
    """
    two = counts(text, plain(13))[1]
    assert (made(two), repeats(two)) == ({"dc": 7, "tr": 6, "ch": 6}, [(6, {"st": 2}, 0)])


@pytest.mark.parametrize(("row", "closes"), [("11 dc", False), ("12 dc", True)])
def test_bare_stitches_without_a_repeat_are_worked_into_all(row: str, closes: bool) -> None:
    two = counts(f"round 1: 1 sc in each loop.\nround 2: {row}.", plain(12))[1]
    assert two.closes is closes


def test_a_bare_stitch_at_a_joint_goes_into_the_joint_alone() -> None:
    below = "round 1: over each motif: 1 sc in each loop; at each joint: {}."
    row = "round 2: over each motif: 1 sc in each st; at each joint: {}."
    closes = {
        (at, into): counts("\n".join([below.format(at), row.format(into)]), motifs(3, 3))[1].closes
        for at in ("ch 2", "1 dc", "2 dc")
        for into in ("1 dc", "1 dc in next st")
    }
    assert [key for key, yes in closes.items() if not yes] == [
        ("ch 2", "1 dc in next st"),  # there is none
        ("2 dc", "1 dc in next st"),  # one is left over
    ]


def test_an_edge_worked_as_one_has_no_joint_to_work_at() -> None:
    text = "round 1: over {}: 1 sc in each loop; at each joint: ch 2."
    worked_over = {
        (over, closed): made(counts(text.format(over), motifs(3, 3, closed=closed))[0])
        for over in ("edge", "each motif")
        for closed in (True, False)
    }
    assert worked_over == {
        ("edge", True): {"sc": 6},
        ("edge", False): {"sc": 6},
        ("each motif", True): {"sc": 6, "ch": 4},
        ("each motif", False): {"sc": 6, "ch": 2},
    }


@pytest.mark.parametrize(
    ("row", "closed", "made_of"),
    [
        # a closed edge has two joints, an open one has one
        ("over front: 1 sc in each st; over back: 1 tr in each st", True, {"sc": 5, "tr": 3}),
        ("over back: 1 tr in each st; over front: 1 sc in each st", True, {"sc": 3, "tr": 5}),
        ("over back: 1 tr in each st; elsewhere: 1 sc in each st", True, {"sc": 3, "tr": 5}),
        ("over back: 1 tr in each st; elsewhere: leave unworked", True, {"tr": 5}),
        ("over front: 1 sc in each st; over back: 1 tr in each st", False, {"sc": 4, "tr": 3}),
        ("over back: 1 tr in each st; over front: 1 sc in each st", False, {"sc": 3, "tr": 4}),
    ],
)
def test_what_stands_on_a_joint_belongs_to_the_clause_that_stands_first(
    row: str, closed: bool, made_of: dict[str, int]
) -> None:
    below = "round 1: over each motif: 1 sc in each loop; at each joint: 1 dc."
    edge = sections("front 3", "back 3", closed=closed)
    two = counts(f"{below}\nround 2: {row}.", edge)[1]
    assert (made(two), two.closes) == (made_of, True)


@pytest.mark.parametrize(("closed", "worked_into"), [(True, [4, 4]), (False, [4, 3])])
def test_what_stands_on_a_joint_is_of_the_motif_before_it_where_one_clause_works_both(
    closed: bool, worked_into: list[int]
) -> None:
    text = """
        round 1: over each motif: 1 sc in each loop; at each joint: 1 dc.
        round 2: over each motif: 1 tr in each st; ch 2.
    """
    two = worked(text, sections("front 3", "back 3", closed=closed))[0].rounds[1]
    motifs_made = " ".join(two.fabric.kinds).split(" ch ch")
    assert [made.split().count("tr") for made in motifs_made if made] == worked_into
