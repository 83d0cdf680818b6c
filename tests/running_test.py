"""The running total: by hand, and against the counts of the record on random borders."""

from __future__ import annotations

from collections import Counter
from typing import Any

import random_borders
from hypothesis import HealthCheck, Phase, given, settings
from worked import motifs, plain, worked

from border.reckoning.counts import RoundCount, Tally, count_edge
from border.reckoning.running import Course, course
from border.showing.folding import everything
from border.text.readings import read_rounds
from border.working.adjusting import Adjustment
from border.working.work import WorkedRound, work
from border.yoke.edges import Edge

SOME = settings(
    max_examples=40,
    deadline=None,
    derandomize=True,
    database=None,
    phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)


def last_round(text: str, edge: Edge, *adjustments: Adjustment) -> Course:
    return course(worked(text, edge, adjustments)[0].rounds[-1])


def told(way: Course) -> list[str]:
    """Every stage on a line: what is made, what stands at the joint behind it, what is on it."""
    lines = []
    for s in way.stages:
        at = f" at {' | '.join(s.joint.between)}" if s.joint else ""
        on = f" on it {everything(s.joint.on, 'us')}" if s.joint and s.joint.on.stitches else ""
        lines.append(f"{everything(s.made, 'us')}{at}: {everything(s.so_far, 'us')}{on}")
    return lines


def test_every_joint_of_a_round_has_what_stands_before_it() -> None:
    way = last_round(
        "round 1: over each motif: 1 sc in each loop; at each joint: ch 1.", motifs(2, 3)
    )
    assert way.begins == "edge.1"
    assert told(way) == [
        "2 sc at edge.1 | edge.2: 2 sc",
        "3 sc at edge.2 | edge.1: 5 sc, 1 ch",
    ]
    assert way.stages[-1].joint and way.stages[-1].joint.on.chains == 1


def test_a_round_that_begins_in_the_middle_of_a_motif_ends_there() -> None:
    way = last_round("round 1: begin in 3rd loop, 1 sc in each loop.", motifs(4, 2))
    assert way.begins == "edge.1"
    assert told(way) == [
        "2 sc at edge.1 | edge.2: 2 sc",
        "2 sc at edge.2 | edge.1: 4 sc",
        "2 sc: 6 sc",
    ]
    assert [s.part for s in way.stages] == [True, False, True]


def test_a_round_that_begins_on_a_joint_comes_back_to_it() -> None:
    way = last_round(
        "round 1: 1 sc in each loop.\nround 2: 1 dc between next 2 st; repeat.", motifs(2, 1)
    )
    assert way.begins == ("edge.2", "edge.1")
    way = last_round(
        "round 1: begin in 2nd loop, *1 sc in next loop, ch 1; repeat from *.\n"
        "round 2: 1 dc in each space.",
        motifs(2, 2),
    )
    assert way.begins == ("edge.1", "edge.2")
    assert way.opening and everything(way.opening.on, "us") == "1 dc"
    assert told(way) == [
        "1 dc at edge.2 | edge.1: 2 dc on it 1 dc",
        "1 dc at edge.1 | edge.2: 4 dc",
    ]


def test_rows_to_and_fro_are_gone_through_as_they_are_worked() -> None:
    way = last_round(
        "round 1: 1 sc in each loop.\nround 2: 1 dc in each st.", motifs(1, 2, 3, closed=False)
    )
    assert way.turned and way.begins == "edge.3"
    assert told(way) == [
        "3 dc at edge.3 | edge.2: 3 dc",
        "2 dc at edge.2 | edge.1: 5 dc",
        "1 dc: 6 dc",
    ]


def test_one_motif_has_no_joint() -> None:
    way = last_round("round 1: 1 sc in each loop.", motifs(3))
    assert told(way) == ["3 sc: 3 sc"] and not way.stages[0].part


def test_an_edge_without_motifs_goes_by_its_repeats() -> None:
    way = last_round("round 1: ch 1, *1 sc in next loop, ch 1; repeat from *.", plain(30))
    assert way.begins == 1
    assert [s.repeats for s in way.stages][:2] == [(1, 2), (3, 4)] and len(way.stages) == 15
    assert told(way)[0] == "2 sc, 2 ch: 2 sc, 2 ch"
    way = last_round(
        "round 1: *1 sc in next loop, ch 1; repeat from * to last 2 loops, 1 dc in each loop.",
        plain(4),
    )
    assert told(way) == [
        "1 sc, 1 ch: 1 sc, 1 ch",
        "1 sc, 1 ch: 2 sc, 2 ch",
        "1 dc: 2 sc, 1 dc, 2 ch",
        "1 dc: 2 sc, 2 dc, 2 ch",
    ]


def test_an_adjustment_stands_where_it_falls() -> None:
    easing = Adjustment(1, "edge.2", 1)
    way = last_round(
        "round 1: *1 sc in next loop, skip 1 loop; repeat from *.", motifs(4, 5, 4), easing
    )
    eased = [
        (s.motif, e.fallen.before_repeat, everything(e.so_far, "us"))
        for s in way.stages
        for e in s.eased
    ]
    assert eased == [("edge.2", 3, "3 sc")]


def test_an_adjustment_behind_a_stitch_on_a_joint_is_told_before_that_joint() -> None:
    text = """
    round 1: *1 sc in next loop, ch 3; repeat from *.
    round 2: *5 dc in next space, 1 sc in next space; repeat from *.
    """
    for motif in (2, 3, 4):
        way = last_round(text, motifs(4, 4, 4, 4), Adjustment(2, f"edge.{motif}", 1))
        before = f"edge.{motif - 1}"  # its last single stands on the joint
        told = [(s.motif, e.fallen.before_repeat) for s in way.stages for e in s.eased]
        assert told == [(before, 2 * motif - 2)]
        joints = [s.joint for s in way.stages if s.motif == before]
        assert [joint.on.stitches for joint in joints if joint] == [{"sc": 1}]


# --- against the record -----------------------------------------------------------


@SOME
@given(random_borders.works())
def test_stages_and_joints_add_up_to_the_record(drawn: tuple[Edge, Any, list[Any]]) -> None:
    edge, border, adjustments = drawn
    reading, _ = read_rounds(border, lambda source, name: None)
    done = work(reading, edge, [Adjustment(*a) for a in adjustments])
    for round_, count in zip(done.rounds, count_edge(done), strict=True):
        _adds_up(course(round_), count, round_)


def _adds_up(way: Course, count: RoundCount, round_: WorkedRound) -> None:
    running = _sum(way.opening.on) if way.opening else Counter[str]()
    by_motif: dict[str, Counter[str]] = {}
    on_joints: dict[frozenset[str], Counter[str]] = {}
    if way.opening:
        on_joints[frozenset(way.opening.between)] = _sum(way.opening.on)
    for stage in way.stages:
        running += _sum(stage.made)
        assert _sum(stage.so_far) == running
        by_motif.setdefault(stage.motif, Counter()).update(_sum(stage.made))
        if stage.joint:
            assert _sum(stage.joint.so_far) == running
            on = on_joints.setdefault(frozenset(stage.joint.between), Counter())
            on.update(_sum(stage.joint.on))
            running += _sum(stage.joint.on)
    assert running == _sum(count.made)
    assert sum(len(s.eased) for s in way.stages) == len(round_.adjustments)
    if not count.motifs:
        return
    of_motifs: dict[str, Counter[str]] = {}
    for motif in count.motifs:
        of_motifs.setdefault(motif.motif, Counter()).update(_sum(motif.made))
    assert by_motif == of_motifs
    of_joints: dict[frozenset[str], Counter[str]] = {}
    for joint in count.joints:
        of_joints.setdefault(frozenset(joint.between), Counter()).update(_sum(joint.made))
    assert {k: v for k, v in on_joints.items() if v} == of_joints


def _sum(made: Tally) -> Counter[str]:
    return +Counter({**made.stitches, "ch": made.chains, "picot": made.picots})
