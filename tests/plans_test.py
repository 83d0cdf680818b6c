"""The rules of easing in that a needleworker would check, and what is told where there is no plan."""

from __future__ import annotations

from itertools import islice

import pytest
from msgspec.structs import replace
from worked import read_text, sections

from border.findings import Finding
from border.planning.costs import Costs, Curve
from border.planning.offers import Task
from border.planning.plans import Planned, cost_of, counterparts, plan_all, why
from border.planning.refusing import no_plan
from border.planning.search import Search
from border.planning.spots import spots_of
from border.working.adjusting import Adjustment
from border.working.work import work
from border.yoke.edges import Edge

Plan = list[tuple[int, str, int]]

NECK = sections("front 4 7 7 7 4", "right strap 5 5 5", "back 4 7 7 7 4", "left strap 5 5 5")
"""88 loops, symmetrical about front.3 and back.3."""
EACH_SPACE = "1 sc in each space, with ch 2 between"


def taking(n: int, of: str = "loop") -> str:
    """A plain row whose repeat takes so many loops, or spaces, and makes one space."""
    return f"*1 sc in next {of}, ch 3, skip {n - 1} {of}s; repeat from *"


def task(
    *rows: str,
    edge: Edge = NECK,
    curve: str = "in",
    mirror: tuple[str, ...] = (),
    given: Plan | None = None,
    done: int = 0,
) -> Task:
    text = "\n".join(f"round {n}: {row}." for n, row in enumerate(rows, 1))
    reading, faults = read_text(text)
    assert not faults, faults
    stands = tuple(Adjustment(*a) for a in given or ())
    spots = spots_of(edge, mirror, {})
    return Task(reading, edge, spots, Costs(), Curve(curve), stands, done)


def told(planned: Planned) -> list[Plan]:
    """The plans, each of which has been worked and closes in the rounds still to be worked."""
    found = []
    for plan in planned.plans:
        one = planned.task
        after = work(one.reading, one.edge, (*one.given, *plan.adjustments))
        assert [r.number for r in after.rounds if not r.closes and r.number > one.done] == []
        assert "adjustment-has-no-place" not in [f.code for f in after.findings]
        assert plan.cost == cost_of(one, plan.adjustments)
        assert sum(why(one, plan.adjustments).values()) == plan.cost
        found.append([(a.round, a.at, a.by) for a in plan.adjustments])
    return found


def best(one: Task) -> Plan:
    (planned,) = plan_all([one])
    (plan,) = told(planned)
    return plan


# --- where ----------------------------------------------------------------------------


def test_what_closes_is_left_alone() -> None:
    assert best(task(taking(4), EACH_SPACE)) == []


def test_one_left_over_goes_to_the_middle_of_the_back_not_of_the_front() -> None:
    assert best(task(taking(3), EACH_SPACE)) == [(1, "back.3", 1)]


def test_a_pair_goes_to_mirror_images() -> None:
    edge = sections("front 4 7 7 7 4", "right strap 5 6 5", "back 4 7 7 7 4", "left strap 5 6 5")
    for n in (4, 8, 11):  # 90 loops leave two over
        one = task(taking(n), EACH_SPACE, edge=edge)
        plan = best(one)
        orders = {s.at: s.order for s in one.spots.spots}
        assert [(number, by) for number, _, by in plan] == 2 * [(1, 1)], plan
        first, second = (orders[at] for _, at, _ in plan)
        assert first != second
        assert one.spots.image(first) == second


def test_the_middle_of_the_front_is_taken_only_where_nothing_else_will_do() -> None:
    only = task(taking(3), edge=sections("front 7"))
    assert [(s.at, s.seen) for s in only.spots.spots] == [("front.1", 3)]
    assert best(only) == [(1, "front.1", 1)]
    for n in range(3, 12):
        assert "front.3" not in [at for _, at, _ in best(task(taking(n), EACH_SPACE))], n


def test_few_places_are_better_than_many() -> None:
    # 88 loops leave seven over nines: two are worked twice instead
    plan = best(task(taking(9), EACH_SPACE))
    assert [by for _, _, by in plan] == [-1, -1]


# --- in which round --------------------------------------------------------------------


def test_the_last_round_is_never_eased_where_another_will_do() -> None:
    # what round 2, the last, leaves over is settled in round 1, though that takes two places
    plan = best(task(taking(2), taking(3, "space")))
    assert [(number, by) for number, _, by in plan] == [(1, -1), (1, -1)]


def test_the_last_round_is_eased_where_it_is_the_only_one() -> None:
    assert best(task(taking(3))) == [(1, "back.3", 1)]


SHOWY = "*3 dc in next space, ch 2; repeat from *"


def test_a_plain_round_is_eased_rather_than_a_showy_one() -> None:
    each = "1 sc in each loop, with ch 3 between"
    early = best(task(each, SHOWY, taking(3, "space").replace("1 sc", "3 dc"), EACH_SPACE))
    assert early == [(1, "back.3", 1)]
    late = best(task(each.replace("1 sc", "3 dc"), SHOWY, taking(3, "space"), EACH_SPACE))
    assert late == [(3, "back.3", 1)]


@pytest.mark.parametrize(("curve", "by"), [("out", -1), ("in", 1)])
def test_an_edge_that_curves_outwards_is_rather_worked_twice(curve: str, by: int) -> None:
    edge = sections("front 6 6 5", "back 6 6 6")
    assert best(task(taking(2), EACH_SPACE, edge=edge, curve=curve)) == [(1, "back.3", by)]


def test_several_plans_come_cheapest_first_and_differ() -> None:
    (planned,) = plan_all([task(taking(3), EACH_SPACE)], 4)
    plans = told(planned)
    assert plans[0] == [(1, "back.3", 1)]
    assert len({str(sorted(plan)) for plan in plans}) == 4
    costs = [plan.cost for plan in planned.plans]
    assert costs == sorted(costs)


# --- what is done, and what stands already ------------------------------------------------


def test_rounds_already_worked_are_left_alone() -> None:
    rows = taking(3), taking(2, "space"), EACH_SPACE
    assert [number for number, _, _ in best(task(*rows))] == [1, 2]
    assert [number for number, _, _ in best(task(*rows, done=1))] == [2]
    # not even where the last round must be eased instead
    two = taking(2), taking(3, "space")
    assert [number for number, _, _ in best(task(*two))] == [1, 1]
    assert [number for number, _, _ in best(task(*two, done=1))] == [2]


def test_adjustments_that_stand_in_the_file_are_kept() -> None:
    edge = sections("front 4 7 7 7 4", "right strap 5 6 5", "back 4 7 7 7 4", "left strap 5 6 5")
    one = task(taking(4), EACH_SPACE, edge=edge, given=[(1, "front.2", 1)])
    assert best(one) == [(1, "back.3", 1)]  # one of the two that are over, no more
    # only one repeat of eight ends on back.3, and where one stands no second one can be made
    there = best(task(taking(8), EACH_SPACE, edge=edge, given=[(1, "back.3", 1)]))
    assert [(number, by) for number, _, by in there] == [(1, 1)]
    assert there[0][1] != "back.3"
    whole = task(taking(4), EACH_SPACE, edge=edge, given=[(1, "front.2", 2)])
    assert best(whole) == []


# --- by clauses ------------------------------------------------------------------------------


def test_each_wheel_of_the_straps_is_eased_by_itself() -> None:
    strap = (
        f"over each motif of left strap: {taking(2)}; over each motif of right strap: {taking(2)}"
    )
    plan = best(task(f"{strap}; elsewhere: 1 sc in each loop, with ch 3 between", EACH_SPACE))
    wheels = [f"{side} strap.{n}" for side in ("left", "right") for n in (1, 2, 3)]
    assert sorted(plan) == [(1, wheel, 1) for wheel in wheels]


def test_a_part_that_closes_is_not_eased_with_those_that_do_not() -> None:
    edge = sections("front 7 7", "strap 5 6 5", "back 7 7")
    row = f"over each motif of strap: {taking(2)}; elsewhere: 1 sc in each loop"
    assert sorted(best(task(row, edge=edge))) == [(1, "strap.1", 1), (1, "strap.3", 1)]


# --- left and right ----------------------------------------------------------------------------

LEFT = sections(
    "left strap 10 10 10", "back 2", "left underarm 6 6", "front 2", name="left armhole"
)
RIGHT = sections(
    "front 2", "right underarm 6 6", "back 2", "right strap 10 10 10", name="right armhole"
)


def other_side(at: str) -> frozenset[str]:
    """The motif, or the two of a joint, that lie opposite: each section runs the other way."""
    opposite = set()
    for motif in at.split(" | "):
        section, _, number = motif.partition(".")
        count = {"left strap": 3, "left underarm": 2}.get(section, 1)
        opposite.add(f"{section.replace('left', 'right')}.{count + 1 - int(number)}")
    return frozenset(opposite)


@pytest.mark.parametrize("n", [3, 4, 5, 7, 8, 9, 11])
def test_both_armholes_are_eased_alike(n: int) -> None:
    left, right = plan_all([task(taking(n), EACH_SPACE, edge=edge) for edge in (LEFT, RIGHT)])
    assert (left.like, right.like) == (None, "left armhole")
    (plan,), (mirrored,) = told(left), told(right)
    assert plan
    assert [(number, frozenset(at.split(" | ")), by) for number, at, by in mirrored] == [
        (number, other_side(at), by) for number, at, by in plan
    ]
    assert left.plans[0].cost == right.plans[0].cost


def test_front_lies_opposite_front_though_other_motifs_have_as_many_loops() -> None:
    left = sections("left strap 6 6", "back 6", "left underarm 6 6", "front 6")
    right = sections("back 6", "right strap 6 6", "front 6", "right underarm 6 6")
    image = counterparts(left, right)
    assert image is not None
    assert (image["front.1"], image["back.1"]) == ("front.1", "back.1")
    assert image["left strap.1"] == "right strap.2"
    assert image["front.1 | left strap.1"] == "right strap.2 | front.1"
    assert counterparts(left, left) is None
    for strange in ("a strap", "right strap", "z strap"):
        other = sections("back 6", f"{strange} 6 6", "front 6", "right underarm 6 6")
        assert (counterparts(left, other) is not None) is (strange == "right strap")
    for places in (5, 7):
        other = sections("back 6", "right strap 6 6", f"front {places}", "right underarm 6 6")
        assert counterparts(left, other) is None


def test_an_armhole_with_other_places_is_eased_by_itself() -> None:
    other = sections(
        "front 2", "right underarm 6 6", "back 2", "right strap 10 10 9", name="right armhole"
    )
    left, right = plan_all([task(taking(5), EACH_SPACE, edge=edge) for edge in (LEFT, other)])
    assert right.like is None
    assert [sum(by for _, _, by in plan) for plan in (*told(left), *told(right))] == [1, 0]


def test_an_armhole_where_the_mirrored_plan_does_not_close_is_eased_by_itself() -> None:
    names = LEFT.known_names | RIGHT.known_names
    edges = [replace(edge, known_names=names) for edge in (LEFT, RIGHT)]
    row = f"over left strap: {taking(4)}; elsewhere, over each motif: {taking(2)}"
    left, right = plan_all([task(row, EACH_SPACE, edge=edge) for edge in edges])
    assert [{at.partition(".")[0] for _, at, _ in plan} for plan in told(left)] == [{"left strap"}]
    assert (right.like, told(right)) == (None, [[]])


def test_what_is_worked_on_the_other_side_is_not_eased_any_more() -> None:
    rows = taking(5), EACH_SPACE
    left, right = plan_all([task(*rows, edge=LEFT), task(*rows, edge=RIGHT, done=1)])
    assert [number for plan in told(left) for number, _, _ in plan] == [1]
    assert (right.like, told(right)) == (None, [[]])


def test_an_edge_is_no_other_side_of_one_with_another_border() -> None:
    left, right = plan_all(
        [task(taking(3), EACH_SPACE, edge=LEFT), task(taking(5), EACH_SPACE, edge=RIGHT)]
    )
    assert right.like is None
    assert told(left) != [[]]


# --- where there is no plan ----------------------------------------------------------------------


def refused(one: Task) -> Finding:
    (planned,) = plan_all([one])
    assert planned.plans == ()
    return no_plan(planned, work(one.reading, one.edge, one.given))


def test_it_is_told_which_other_edge_would_close() -> None:
    found = refused(task(taking(5), EACH_SPACE, edge=sections("edge 4")))
    assert (found.code, found.round) == ("no-plan", 1)
    assert found.message == "no plan was found: nothing eased in makes round 1 close"
    assert found.help == "an edge of 5 loops closes as it is"


@pytest.mark.parametrize(
    ("below", "site", "several"),
    [
        ("*1 sc in next loop, ch 3; repeat from *", "space", "spaces"),
        ("1 dc in each loop", "dc", "dc"),
    ],
)
def test_it_is_told_which_other_repeat_would_come_out_even(
    below: str, site: str, several: str
) -> None:
    row = (
        f"1 sc in first {site}, *5 dc in next {site}, skip 3 {several}; repeat from *, "
        f"1 sc in each of last 2 {several}, 1 sc in next {site}"
    )
    found = refused(task(below, row, edge=sections("edge 4 4")))
    assert (found.code, found.round) == ("no-plan", 2)
    assert found.help == f"a repeat of 5 {several} in round 2 comes out even"


def test_a_part_that_is_too_short_wants_a_clause_of_its_own() -> None:
    edge = sections("front 6 6", "corner 2")
    row = "over each motif: 1 sc in each of first 2 loops, ch 3, 1 sc in each of last 2 loops"
    found = refused(task(row, edge=edge))
    assert (found.code, found.round) == ("no-plan", 1)
    assert found.help is not None
    assert found.help.startswith("give the parts that are too short a clause of their own")


def test_a_round_that_makes_nothing_cannot_be_planned() -> None:
    found = refused(task("*skip 2 loops, ch 3; repeat from *", edge=sections("edge 4 4")))
    assert found.message == "no plan was found: the rounds cannot be worked"
    assert found.round is None


# --- where the search is given up --------------------------------------------------------------


def test_a_search_given_up_says_that_there_may_be_a_cheaper_plan() -> None:
    rows = "1 sc in each loop, with ch 3 between", SHOWY, taking(3, "space"), EACH_SPACE
    one = task(*rows)
    (whole,) = plan_all([one])
    cheapest = whole.plans[0].cost
    unsure = 0
    for most in range(1, 30):
        for plan in islice(Search(one, most=most).plans(), 1):
            told(Planned(one, (plan,), whole.stuck))
            assert plan.cost == cheapest if plan.cheapest else plan.cost >= cheapest, most
            unsure += not plan.cheapest
    assert unsure
    assert whole.plans[0].cheapest


def test_a_search_given_up_without_a_plan_says_so() -> None:
    one = task(taking(3), taking(2, "space"), EACH_SPACE)
    search = Search(one, most=1)
    assert list(search.plans()) == []
    found = no_plan(Planned(one, (), search.stuck), work(one.reading, one.edge))
    assert found.message == "no plan was found; the search would take too long, and was given up"
    assert found.help == (
        "a repeat of 2 or 4 loops in round 1 comes out even; "
        "or an edge of 84 or 90 loops closes as it is"
    )


@pytest.mark.parametrize("most", [1, 2000])
def test_a_search_ends_though_no_plan_can_be_proved(
    most: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("border.planning.search.proved", lambda task, adjustments: False)
    one = task("1 sc in each loop, with ch 3 between", taking(3, "space"))
    assert list(islice(Search(one, most=most).plans(), 1)) == []
