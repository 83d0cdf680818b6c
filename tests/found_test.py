"""Rounds worked already: what one of them was counted at replaces the reckoning."""

from __future__ import annotations

import pytest
from worked import made, motifs, plain, read_text

from border.findings import Finding, Severity, Span
from border.reckoning.counts import RoundCount, count_edge
from border.working.adjusting import Adjustment
from border.working.fabric import edge_fabric
from border.working.found import Found, as_it_stands, in_words
from border.working.work import work
from border.yoke.edges import Edge

MESH = """
    round 1: *1 sc in next loop, ch 3; repeat from *.
    round 2: *1 sc in next space, ch 6; repeat from *.
    round 3: *5 dc in next space, 1 sc in next space; repeat from *.
"""

BY_MOTIF = """
    round 1: over each motif: *1 sc in next loop, ch 5, skip 1 loop; repeat from * to end.
"""

AT = Span("yoke.toml", 90, 120)


def counted(
    text: str,
    edge: Edge,
    done: int,
    found: Found | None = None,
    adjustments: tuple[Adjustment, ...] = (),
) -> tuple[tuple[RoundCount, ...], tuple[Finding, ...]]:
    """The rounds of a border of which `done` are worked, and what is told of them."""
    worked = work(read_text(text)[0], edge, adjustments, done, found)
    return count_edge(worked), worked.findings


def came(round_: int, **counts: int) -> Found:
    return Found(round_, tuple(counts.items()), AT)


# --- counting on from what was found --------------------------------------------


@pytest.mark.parametrize("spaces", [60, 70, 71, 73, 74, 100, 144])
def test_a_round_that_came_out_otherwise_is_counted_on_from(spaces: int) -> None:
    rounds, findings = counted(MESH, plain(72), 2, came(2, spaces=spaces))
    assert made(rounds[0]) == {"sc": 72, "ch": 216}
    assert made(rounds[1]) == {"sc": spaces, "ch": 6 * spaces}
    assert made(rounds[2]) == {"sc": spaces // 2, "dc": 5 * (spaces // 2)}
    assert [r.closes for r in rounds] == [True, True, spaces % 2 == 0]
    assert [f.code for f in findings] == ["row-does-not-close"] * (spaces % 2)
    assert (rounds[1].found, rounds[2].found) == ((("spaces", spaces),), ())
    assert [r.done for r in rounds] == [True, True, False]


def test_a_round_that_came_out_as_reckoned_is_left_as_it_is() -> None:
    assert (
        counted(MESH, plain(72), 2, came(2, spaces=72))[0][1].made
        == counted(MESH, plain(72), 2)[0][1].made
    )


@pytest.mark.parametrize(
    "found",
    [
        came(3, groups=35),
        came(3, repeats=35),
        came(3, sc=35),
        came(3, dc=175),
        came(3, stitches=210),
        came(3, groups=35, sc=35, stitches=210, chains=0, picots=0, blocks=1),
    ],
    ids=lambda f: f.counts[0][0],
)
def test_whatever_was_counted(found: Found) -> None:
    rounds, _ = counted(MESH, plain(72), 3, found)
    assert made(rounds[2]) == {"sc": 35, "dc": 175}
    assert rounds[2].repeats[0].times == 35


def test_the_fewest_places_are_eased() -> None:
    """71 spaces make 35 groups with one left over; 36 need one space worked twice."""
    (_, _, as_it_is), _ = counted(MESH, plain(71), 3, came(3, groups=35))
    assert (as_it_is.closes, as_it_is.repeats[0].left_over) == (False, 1)
    (_, _, eased), findings = counted(MESH, plain(71), 3, came(3, groups=36))
    assert (eased.closes, eased.repeats[0].left_over, findings) == (True, 0, ())


def test_the_adjustments_of_the_file_stand_and_the_easing_is_none_of_them() -> None:
    edge = motifs(*[6] * 12)
    adjusted = Adjustment(2, "edge.3", 1)
    rounds, _ = counted(MESH, edge, 2, came(2, spaces=69), (adjusted,))
    assert made(rounds[1])["sc"] == 69
    assert [(a.at, a.by) for a in rounds[1].adjustments] == [("edge.3", 1)]


def test_an_adjustment_that_falls_nowhere_is_told_of_all_the_same() -> None:
    nowhere = Adjustment(2, "sleeve", 1)
    rounds, findings = counted(MESH, motifs(*[6] * 12), 2, came(2, spaces=70), (nowhere,))
    assert made(rounds[1])["sc"] == 70
    assert [f.code for f in findings] == ["adjustment-has-no-place"]


@pytest.mark.parametrize(("spaces", "closes"), [(12, True), (11, False), (9, False), (16, True)])
def test_motif_by_motif_a_part_that_is_full_leaves_the_rest_to_the_one_before(
    spaces: int, closes: bool
) -> None:
    (one,), findings = counted(BY_MOTIF, motifs(6, 6, 6, 6), 1, came(1, spaces=spaces))
    assert (made(one), one.closes) == ({"sc": spaces, "ch": 5 * spaces}, closes)
    assert {f.code for f in findings} <= {"worked-does-not-close"}


def test_a_part_that_makes_nothing_of_what_was_counted_is_left_alone() -> None:
    text = """
        round 1: over edge.1: *1 sc in next loop, ch 5, skip 1 loop; repeat from * to end;
            elsewhere: 1 dc in each loop.
    """
    (one,), _ = counted(text, motifs(6, 6, 6), 1, came(1, chains=20))
    assert made(one) == {"sc": 4, "ch": 20, "dc": 12}


def test_on_an_open_edge_that_is_turned() -> None:
    rounds, findings = counted(MESH, plain(31, closed=False), 2, came(2, spaces=28))
    assert (rounds[1].spaces, rounds[2].closes, findings) == (28, True, ())


def test_a_claim_of_the_text_gives_way_to_what_was_found() -> None:
    text = MESH.replace("ch 6; repeat from *.", "ch 6; repeat from *. (72 sc)")
    assert counted(text, plain(72), 2, came(2, spaces=70))[1] == ()


# --- what cannot be ---------------------------------------------------------------


@pytest.mark.parametrize(
    ("found", "said"),
    [
        (came(3, dc=171), "cannot come out at 171 dc: the nearest are 170 and 175"),
        (came(2, spaces=0), "cannot come out at 0 spaces: the nearest is "),
        (came(2, picots=1), "cannot come out at 1 picot: the nearest is 0"),
        (came(1, spaces=70, sc=71), "70 spaces and 71 sc: the nearest is "),
    ],
)
def test_what_no_easing_gives_is_told_and_reckoned_as_without(found: Found, said: str) -> None:
    rounds, findings = counted(MESH, plain(72), 3, found)
    assert rounds == counted(MESH, plain(72), 3)[0]
    (finding,) = findings
    assert (finding.code, finding.round, finding.span) == ("found-cannot-be", found.round, AT)
    assert said in finding.message


def test_what_lies_far_off_is_given_up_and_no_nearest_is_claimed() -> None:
    finding = counted(MESH, plain(300), 1, came(1, spaces=20))[1][0]
    said = "it is reckoned at 300 spaces, and 166 places eased do not bring it there"
    assert finding.message == f"round 1 cannot come out at 20 spaces: {said}"


def test_a_round_without_a_repeat_has_nothing_to_be_eased_at() -> None:
    text = "round 1: (1 sc in next loop, ch 3) 6 times."
    (finding,) = counted(text, plain(6), 1, came(1, spaces=5))[1]
    assert finding.message == "round 1 cannot come out at 5 spaces: the nearest is 6"


@pytest.mark.parametrize(
    ("done", "found", "code", "said"),
    [
        (0, came(2, spaces=70), "found-not-done", "no round is said to be done"),
        (1, came(2, spaces=70), "found-not-done", "only round 1 is said to be done"),
        (2, came(3, groups=36), "found-not-done", "only rounds 1 to 2 are said to be done"),
        (3, came(4, spaces=70), "no-such-row", "there is no round 4"),
        (4, None, "no-such-row", "4 rounds are said to be done, and there is no round 4"),
    ],
)
def test_rounds_that_are_not_there_or_not_done(
    done: int, found: Found | None, code: str, said: str
) -> None:
    rounds, findings = counted(MESH, plain(72), done, found)
    assert [made(r) for r in rounds] == [made(r) for r in counted(MESH, plain(72), 0)[0]]
    (finding,) = findings
    assert finding.code == code and said in finding.message


# --- rounds that are facts ----------------------------------------------------------


def test_a_worked_round_that_does_not_close_is_no_error() -> None:
    text = "round 1: *1 sc in next loop, ch 3, skip 1 loop; repeat from *.\nround 2: 3 dc in each space."
    rounds, (warned,) = counted(text, plain(25), 1)
    assert [r.closes for r in rounds] == [False, True]
    assert (warned.code, warned.severity) == ("worked-does-not-close", Severity.WARNING)
    (fault,) = counted(text, plain(25), 0)[1]
    assert fault.code == "row-does-not-close"
    assert warned.message == fault.message.replace("round 1", "round 1, worked already,")


def test_a_worked_part_that_was_too_short_is_no_error_either() -> None:
    text = "round 1: over each motif: 1 sc in each of first 4 loops, ch 2."
    assert "run-too-short" in [f.code for f in counted(text, motifs(4, 3), 0)[1]]
    assert [f.code for f in counted(text, motifs(4, 3), 1)[1]] == ["worked-does-not-close"]


def test_what_was_found_in_words() -> None:
    assert in_words((("spaces", 71),), "us") == "71 spaces"
    assert (
        in_words((("groups", 1), ("repeats", 1), ("dc", 5)), "uk") == "1 group, 1 repeat and 5 tr"
    )


def test_what_a_round_came_out_at_is_of_that_round_alone() -> None:
    (round_,) = read_text("round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *.")[
        0
    ].rounds
    below = edge_fabric(plain(13))
    for number in (0, 2):
        first, done, _ = as_it_stands(round_, below, (), came(number, spaces=3))
        assert done is first
    first, done, _ = as_it_stands(round_, below, (), came(1, spaces=5))
    assert [p.fabric(below).kinds.count("sc") for p in (first, done)] == [4, 5]
