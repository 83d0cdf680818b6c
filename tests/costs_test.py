"""The table of costs: what each line is paid for, and that each can decide a plan."""

from __future__ import annotations

import pytest
from reading import QUESTIONS
from worked import read_text, sections

from border.findings import Finding
from border.pipeline import Pipeline
from border.planning.costs import (
    NEVER,
    SHORT,
    Costs,
    Curve,
    Eased,
    RoundCosts,
    curve_of,
    round_costs,
    showy,
)
from border.planning.offers import Task
from border.planning.search import Search
from border.planning.spots import Spots, spots_of
from border.text.source import Source
from border.yoke.edges import Edge

LINES = Costs.__struct_fields__

# --- what each line is paid for -------------------------------------------------------

YOKE = sections("front 7 7 7", "underarm 4", "back 7 7 7", "underarm 4")
"""Symmetrical about front.2 and back.2."""


def spots_named(spots: Spots, *said: str) -> list[Eased]:
    """The eased spots of "front.1 +2": a spot, and by how many."""
    by_name = {spot.at: spot for spot in spots.spots}
    parts = [one.rpartition(" ") for one in said]
    return [Eased(by_name[at], int(by)) for at, _, by in parts]


def paid(
    *said: str, curve: Curve = Curve.STRAIGHT, showy: bool = False, last: bool = False
) -> dict[str, int]:
    """What easing there pays for, each line as so many times its points; regular left out."""
    spots = spots_of(YOKE, [], {})
    assert spots.mirror is not None
    each = {name: 10**i for i, name in enumerate(LINES)}
    costs = RoundCosts(Costs().changed(each), curve, showy, last)
    eased = spots_named(spots, *said)
    parts = costs.parts(eased, spots)
    assert sum(parts.values()) == costs.of(eased, spots)
    return {name: n // each[name] for name, n in parts.items() if n and name != "regular"}


def test_every_line_is_said_in_words() -> None:
    assert tuple(SHORT) == LINES


def test_every_place_is_paid_passed_over_or_worked_twice() -> None:
    assert paid("back.2 1") == {"place": 1, "seen_1": 1}
    assert paid("back.2 -1") == {"place": 1, "seen_1": 1}
    assert paid("underarm.1 1", "underarm.2 1") == {"place": 2}


def test_every_place_is_paid_besides_in_a_showy_round_and_in_the_last() -> None:
    assert paid("back.2 2", showy=True) == {"place": 2, "seen_1": 2, "second": 1, "showy": 2}
    assert paid("back.2 2", last=True) == {"place": 2, "seen_1": 2, "second": 1, "last": 2}
    # the last round is dear enough, showy or not
    assert paid("back.2 1", showy=True, last=True) == {"place": 1, "seen_1": 1, "last": 1}


def test_every_place_is_paid_besides_as_it_is_seen() -> None:
    assert paid("front.2 1") == {"place": 1, "seen_3": 1}
    assert paid("front.1 2", "front.3 2") == {"place": 4, "seen_2": 4, "second": 2}


def test_every_spot_like_the_rest_is_paid_once_however_many_places() -> None:
    spots = spots_of(YOKE, [], {})
    costs = RoundCosts(Costs(), Curve.STRAIGHT, False, False)
    for said, times in (
        (("front.1 2",), 1),
        (("front.1 1", "front.3 1"), 2),
        (("underarm.1 2",), 0),
        (("front.1 | front.2 1",), 1),
        (("front.3 | underarm.1 1",), 0),
    ):
        assert costs.parts(spots_named(spots, *said), spots)["regular"] == 50 * times, said


def test_every_place_without_its_image_is_paid_as_lopsided() -> None:
    assert paid("underarm.1 1") == {"place": 1, "lopsided": 1}
    assert paid("underarm.1 2") == {"place": 2, "second": 1, "lopsided": 2}
    assert paid("underarm.1 2", "underarm.2 1") == {"place": 3, "second": 1, "lopsided": 1}
    uniform = sections("cuff 6 6 6 6 6")
    costs = RoundCosts(Costs(), Curve.STRAIGHT, False, False)
    for mirror, lopsided in ([], 0), (["cuff.1"], 400):
        spots = spots_of(uniform, mirror, {})
        assert costs.parts(spots_named(spots, "cuff.2 1"), spots)["lopsided"] == lopsided


def test_every_pair_of_neighbours_is_paid() -> None:
    both = paid("back.1 1", "back.3 1")
    assert "neighbours" not in both
    three = paid("back.1 1", "back.2 1", "back.3 1")
    assert three == {"place": 3, "seen_1": 3, "neighbours": 2}
    assert paid("back.1 | back.2 1", "back.2 1", "back.2 | back.3 1")["neighbours"] == 3


@pytest.mark.parametrize(
    ("curve", "by", "times"),
    [
        (Curve.IN, -2, 2),
        (Curve.IN, 2, 0),
        (Curve.OUT, 2, 2),
        (Curve.OUT, -2, 0),
        (Curve.STRAIGHT, 2, 0),
        (Curve.STRAIGHT, -2, 0),
    ],
)
def test_every_place_against_the_curve_is_paid(curve: Curve, by: int, times: int) -> None:
    assert paid(f"back.2 {by}", curve=curve).get("against_curve", 0) == times


def test_the_usual_points() -> None:
    assert [getattr(Costs(), name) for name in LINES] == [
        *(1000, 300, NEVER, 100, 250, NEVER, 50, 200, 400, 60, 80),
    ]


# --- that each line can decide ----------------------------------------------------------

TAKES_2 = "round 1: *1 sc in next loop, ch 3, skip 1 loop; repeat from *."
TAKES_3 = "round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *."
TAKES_5 = "round 1: *1 sc in next loop, ch 3, skip 4 loops; repeat from *."
AND_ON = "round 2: 1 sc in each space, with ch 2 between."
PAIRS = "round 2: *1 sc in next space, ch 2, skip 1 space; repeat from *."

Plan = list[tuple[int, str, int]]

UNEVEN = sections("underarm 5", "back 7 7 7 8 8")
DECIDED: dict[str, tuple[str, Edge, str, int, Plan, Plan]] = {
    # a line: the border, the edge, its curve, other points; the plan by the usual, and by those
    "place": (  # three passed over, or two worked twice against the curve
        f"{TAKES_5}\n{AND_ON}",
        sections("underarm 4 4 4 4 4 4 4 5"),
        *("in", 0),
        [(1, "underarm.4", -1), (1, "underarm.8", -1)],
        [
            (1, "underarm.1 | underarm.2", 1),
            (1, "underarm.6 | underarm.7", 1),
            (1, "underarm.8", 1),
        ],
    ),
    "showy": (  # one loop of the groups, or two spaces of the plain round on them
        "round 1: *(3 dc, ch 3, 3 dc, ch 3) in next loop; repeat from *.\n"
        "round 2: *1 sc in next space, ch 3, skip 3 spaces; repeat from *.\n"
        "round 3: 1 sc in each space, with ch 2 between.",
        sections("underarm 4 4 3"),
        *("straight", 9000),
        [(1, "underarm.3", -1)],
        [(2, "underarm.1 | underarm.2", -1), (2, "underarm.3", -1)],
    ),
    "last": (  # two loops of the first round, or one space of the last
        f"{TAKES_2}\n{PAIRS}",
        sections("back 5 5"),
        *("straight", 0),
        [(1, "back.1", -1), (1, "back.2", -1)],
        [(2, "back.2", -1)],
    ),
    "seen_1": (
        f"{TAKES_2}\n{AND_ON}",
        sections("underarm 6 6 6", "back 5"),
        *("in", 0),
        [(1, "underarm.2", 1)],
        [(1, "back.1", 1)],
    ),
    "seen_2": (
        f"{TAKES_2}\n{AND_ON}",
        sections("back 6 6 7 7", "front 5"),
        *("in", 0),
        [(1, "front.1 | back.1", 1)],
        [(1, "front.1", 1)],
    ),
    "seen_3": (
        f"{TAKES_2}\n{AND_ON}",
        sections("front 6 7 6", "back 6 6 6"),
        *("in", 0),
        [(1, "back.2", 1)],
        [(1, "front.2", 1)],
    ),
    "regular": (
        f"{TAKES_2}\n{AND_ON}",
        sections("underarm 6 6 6", "back 5"),
        *("in", 200),
        [(1, "underarm.2", 1)],
        [(1, "back.1", 1)],
    ),
    "second": (
        f"{TAKES_5}\n{AND_ON}",
        UNEVEN,
        *("in", 0),
        [(1, "back.5 | underarm.1", 1), (1, "underarm.1 | back.1", 1)],
        [(1, "back.5 | underarm.1", 2)],
    ),
    "lopsided": (  # the middle of the back, or one underarm
        f"{TAKES_2}\n{AND_ON}",
        sections("front 6 6 6", "left underarm 4", "back 6 7 6", "right underarm 4"),
        *("in", 0),
        [(1, "back.2", 1)],
        [(1, "right underarm.1 | front.1", 1)],
    ),
    "neighbours": (
        f"{TAKES_5}\n{AND_ON}",
        UNEVEN,
        *("in", 500),
        [(1, "back.5 | underarm.1", 1), (1, "underarm.1 | back.1", 1)],
        [(1, "back.5 | underarm.1", 1), (1, "back.3 | back.4", 1)],
    ),
    "against_curve": (  # one worked twice, or two passed over
        f"{TAKES_3}\n{AND_ON}",
        sections("underarm 6 6 6", "back 5"),
        *("in", 5000),
        [(1, "underarm.2", -1)],
        [(1, "back.1 | underarm.1", 1), (1, "underarm.3 | back.1", 1)],
    ),
}


def cheapest(text: str, edge: Edge, curve: str, costs: Costs) -> Plan:
    reading, faults = read_text(text)
    assert not faults
    task = Task(reading, edge, spots_of(edge, [], {}), costs, Curve(curve))
    plan = next(Search(task).plans())
    return [(a.round, a.at, a.by) for a in plan.adjustments]


@pytest.mark.parametrize("line", LINES)
def test_every_line_decides_a_plan(line: str) -> None:
    text, edge, curve, points, usual, otherwise = DECIDED[line]
    assert cheapest(text, edge, curve, Costs()) == usual
    assert cheapest(text, edge, curve, Costs().changed({line: points})) == otherwise


# --- costs and curves of a project -------------------------------------------------------

PROJECT = """\
format = 1
[[edge]]
name = "NAME"
runs = [{ section = "underarm", motifs = 3, places = 6 }, { section = "back", places = 5 }]
[[work]]
edge = "NAME"
border = "lace.border"
"""


def planned(project: str, border: str) -> Plan:
    texts = {"p.toml": project, "lace.border": f"terms: us\n{border}"}

    def read(name: str) -> Source | Finding:
        return Source(name, texts[name])

    eased = Pipeline("p.toml", read).eased(1)
    assert eased.findings == ()
    return [(a.round, a.at, a.by) for a in eased.works[0].plans[0].plan.adjustments]


def test_a_project_can_change_the_costs() -> None:
    border = f"{TAKES_2}\n{AND_ON}"
    text = PROJECT.replace("NAME", "neck")
    assert planned(text, border) == [(1, "underarm.2", 1)]
    assert planned(f"{text}[costs]\nregular = 200\n", border) == [(1, "back.1", 1)]
    assert planned(f"{text}[costs]\nseen_1 = 0\n", border) == [(1, "back.1", 1)]


def test_what_the_project_does_not_change_stays() -> None:
    assert Costs().changed({"regular": 7}) == Costs(regular=7)
    assert Costs().changed({}) == Costs()


@pytest.mark.parametrize(
    ("name", "curve"),
    [
        ("neck", Curve.IN),
        ("Left armhole", Curve.IN),
        ("right sleeve", Curve.IN),
        ("hem", Curve.OUT),
        ("outer edge", Curve.OUT),
        ("collar", Curve.OUT),
        ("cuff", Curve.STRAIGHT),
        ("necklace", Curve.STRAIGHT),
        ("edge", Curve.STRAIGHT),
    ],
)
def test_an_edge_curves_as_its_name_says(name: str, curve: Curve) -> None:
    assert curve_of(name) is curve


def test_by_its_curve_a_plan_passes_over_or_works_twice_and_the_project_may_say_which() -> None:
    border = f"{TAKES_2}\n{AND_ON}"
    for name, by in ("neck", 1), ("hem", -1):
        assert [b for _, _, b in planned(PROJECT.replace("NAME", name), border)] == [by]
    for curve, by in ("in", 1), ("out", -1):
        for name in "neck", "hem":
            said = PROJECT.replace("NAME", name) + f'curve = "{curve}"\n'
            assert [b for _, _, b in planned(said, border)] == [by], (name, curve)


# --- showy rounds --------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("row", "is_showy"),
    [
        ("*1 sc in next loop, ch 3, skip 1 loop; repeat from *", False),
        ("1 dc in each loop, with ch 2 between", False),
        ("*1 dc in each of next 2 loops, ch 1; repeat from *", False),
        ("*2 dc in the next 2 loops, ch 1; repeat from *", False),
        ("*2 dc in each of next 2 loops, ch 1; repeat from *", True),
        ("*3 dc in next loop, ch 1; repeat from *", True),
        ("3 dc in each loop", True),
        ("3 dc in every 2nd loop", True),
        ("*3 dc in 2nd loop, ch 2; repeat from *", True),
        ("*(2 dc, ch 2, 2 dc) in next loop; repeat from *", True),
        ("*1 sc in next loop, picot, ch 3; repeat from *", True),
        ("*3 dc together over next 3 loops, ch 3; repeat from *", True),
        ("*3-dc cluster in next loop, ch 3; repeat from *", True),
        ("over front: 1 sc in each loop; elsewhere: 3 dc in each loop", True),
        ("over front: 1 sc in each loop; elsewhere: 1 dc in each loop; at each joint: ch 1", False),
    ],
)
def test_showy_are_groups_picots_and_stitches_together(row: str, is_showy: bool) -> None:
    reading, findings = read_text(f"round 1: {row}.")
    assert {f.code for f in findings} <= QUESTIONS
    (round_,) = reading.rounds
    assert showy(round_) is is_showy
    assert round_costs(Costs(), Curve.IN, round_, True).last
    assert round_costs(Costs(), Curve.IN, round_, True).showy is is_showy
