"""Lying flat: rounds laid out on their edge, what mends them, and how it is told."""

from __future__ import annotations

import io
import json
from math import degrees, radians, tau

import jsonschema
import pytest
from lace import laid, line, on, pattern, project, sample, stitches, swatch
from msgspec.structs import replace
from rich.console import Console
from worked import plain, read_text

from border.pipeline import Pipeline
from border.reckoning.changing import Change, can_change, changed
from border.reckoning.counts import count_edge
from border.reckoning.edge_shape import Shape, shape_of, with_turning
from border.reckoning.flat import Lies, RoundLies, how_it_lies, laid_rounds
from border.reckoning.mending import mended
from border.reckoning.stitch_sizes import EASE, stitch_sizes
from border.showing.lying_record import flat_record
from border.showing.lying_tables import lying_tables
from border.showing.record import to_json
from border.showing.schema import schema
from border.text.readings import Reading
from border.working.work import work
from border.yoke.edges import Edge, trace

CUFF = """
format = 1
[[edge]]
name = "cuff"
places = 40
of = "stitch"
length_mm = 60
[[work]]
edge = "cuff"
border = "lace.border"
[thread]
hook_mm = 1.0
sample = [{ stitch = "dc", stitches = 40, used_mm = 800, width_mm = 60, height_mm = 2.6 }]
"""


# --- stitches ------------------------------------------------------------------------


def test_what_is_not_measured_follows_from_what_is() -> None:
    sizes = stitch_sizes([sample("dc", 40, 800, 52, 2.6), sample("ch", 20, 90, 30, None)])
    assert sizes is not None
    assert (sizes.widths["dc"], sizes.widths["sc"], sizes.chain) == (1.3, 1.3, 1.5)
    assert sizes.heights["dc"] == 2.6
    # 2.6 mm is 1.142 times 1.75 widths, so is an sc of 0.9 widths
    assert sizes.heights["sc"] == pytest.approx(2.6 * 0.90 / 1.75)
    assert (sizes.measured, sizes.measured_high) == (("dc", "ch"), ("dc",))


def test_several_swatches_of_one_stitch_are_averaged_and_no_width_is_none() -> None:
    sizes = stitch_sizes([sample("dc", 10, 200, 12, None), sample("dc", 10, 200, 14, None)])
    assert sizes is not None
    assert sizes.widths["dc"] == pytest.approx(1.3)
    assert sizes.heights["dc"] == pytest.approx(1.75 * 1.3)
    assert stitch_sizes([sample("dc", 10, 200, None, 3.0)]) is None
    assert stitch_sizes([]) is None


# --- rounds laid out --------------------------------------------------------------------


def test_a_chain_lies_anywhere_from_its_feet_together_to_its_length() -> None:
    text = "round 1: *1 sc in next st, ch 4, skip 1 st; repeat from *."
    edge = stitches(20)
    for long, lies in (
        (9.0, Lies.RUFFLES),
        (12.0, Lies.FLAT),
        (49.0, Lies.FLAT),
        (60.0, Lies.CUPS),
    ):
        (only,) = laid(text, edge, line(edge, long, 0), swatch())
        assert (only.length.worked.low, only.length.worked.high) == (10, 50)
        assert only.lies is lies, long


def test_a_round_into_arches_stands_higher_by_as_much_as_they_are_pulled_up() -> None:
    text = """
    round 1: *1 sc in next st, ch 4, skip 1 st; repeat from *.
    round 2: *1 sc in next space, ch 2; repeat from *.
    round 3: 1 sc in each st.
    """
    edge = stitches(20)
    reading, _ = read_text("chains count as stitches: no\n" + text)
    sizes = swatch("sc")
    shape = line(edge, 30.0, 0)
    worked = work(reading, edge)
    rounds = laid_rounds(worked, reading, shape)
    assert [r.in_spaces for r in rounds] == [0.0, 1.0, 0.0]
    first, second, third = how_it_lies(worked, reading, shape, sizes)
    assert (first.away.low, first.away.high) == (0.9, 0.9)
    # ten arches of 4 chains over 3 mm less one stitch: legs of 2, feet 2 apart
    peak = (2**2 - 1**2) ** 0.5
    assert second.away.low == pytest.approx(1.8)
    assert second.away.high == pytest.approx(1.8 + peak)
    assert third.away.high - second.away.high == pytest.approx(0.9)


def test_turned_work_lies_as_it_would_unturned() -> None:
    rows = "round 1: 1 sc in each loop, turn.\nround 2: *1 sc in next st, ch 3, skip 1 st; repeat from *."
    turned = pattern("fern.toml")
    (edge,) = (e for e in turned.edges if e.name == "hem")
    shape = shape_of(edge, 22.0, None, 0.0)
    assert shape is not None
    straight = laid(rows.replace(", turn", ""), edge, shape, swatch())
    back = laid(rows, edge, shape, swatch())
    for one, other in zip(straight, back, strict=True):
        assert one.length.needed.low == pytest.approx(other.length.needed.low, rel=0.01)
        assert one.length.worked == other.length.worked
        assert {s.section for s in one.sections} == {s.section for s in other.sections}


def test_on_an_open_row_its_two_ends_count() -> None:
    edge = plain(20, closed=False, of="stitch")
    (only,) = laid("round 1: 1 dc in each st.", edge, line(edge, 20.0, 0), swatch())
    assert only.length.needed.low == pytest.approx(20)
    assert only.length.worked.high == pytest.approx(20)


# --- the turning of an edge ----------------------------------------------------------------


def test_the_demo_turns_by_the_loops_of_its_wheels() -> None:
    """Gauss-Bonnet on the yoke: its four edges turn by 4 half turns for the 4 it has of faces.

    Every wheel turns once round, less half a turn at either side of each joint:
    20 wheels, 22 joints, 360 x 20 - 180 x 2 x 22 = -720 degrees in all.
    """
    demo = pattern("fern.toml")
    turns = {}
    for edge in demo.edges:
        shape = shape_of(edge, 22.0, None, 0.0)
        assert shape is not None
        turns[edge.name] = degrees(sum(shape.turning_of(n) for n in range(len(shape.arcs))))
    assert turns == {
        "neck": pytest.approx(-540),
        "hem": pytest.approx(90),
        "left armhole": pytest.approx(-135),
        "right armhole": pytest.approx(-135),
    }
    assert sum(turns.values()) == pytest.approx(-720)


def test_the_left_hand_meets_the_same_wheels_the_other_way() -> None:
    right, left = (
        pattern("fern.toml"),
        pattern("fern.toml", {"format = 1": 'format = 1\nhand = "left"'}),
    )
    for one in right.edges:
        (other,) = (e for e in left.edges if e.name == one.name)
        mine, theirs = (shape_of(e, 22.0, None, 0.0) for e in (one, other))
        assert mine is not None
        assert theirs is not None
        assert mine.touching(3.0) == pytest.approx(theirs.touching(3.0))


def test_a_turning_that_was_measured_is_shared_out_among_the_wheels() -> None:
    (edge,) = (e for e in pattern("fern.toml").edges if e.name == "neck")
    shape = shape_of(edge, 22.0, None, 0.0)
    assert shape is not None
    said = with_turning(shape, -360)
    assert sum(said.turning_of(n) for n in range(16)) == pytest.approx(radians(-360))
    each = {round(degrees(said.turning_of(n) - shape.turning_of(n)), 6) for n in range(16)}
    assert each == {180 / 16}


def test_a_lone_wheel_is_a_disc() -> None:
    text = 'format = 1\n[yoke]\nloops = 16\nmotif_mm = 20\n[[motif]]\nname = "rose"\nring = ["rim 16"]\n'
    pipeline = project(text)
    assert pipeline.project is not None
    (edge,) = trace(pipeline.project)[0]
    shape = shape_of(edge, 20.0, None, 0.0)
    assert shape is not None
    assert shape.touching(0.0) == pytest.approx(tau * 10)
    assert shape.touching(5.0) == pytest.approx(tau * 15)


# --- what mends it ------------------------------------------------------------------------


def test_a_change_is_made_where_the_number_stands_and_in_what_the_next_round_says_of_it() -> None:
    text = """
    round 1: *1 sc in next loop, ch 5, skip 2 loops; repeat from *.
    round 2: (2 dc, ch 2, 2 dc) in each ch-5 space.
    round 3: 3 dc in each ch-2 space.
    round 4: *1 sc in centre of next group of 3, ch 4; repeat from *.
    """
    reading, worked = on(text, plain(30))
    keys = [[(c.what, c.was) for c in can_change(r)] for r in reading.rounds]
    assert keys == [[("ch", 5)], [("dc", 2), ("ch", 2)], [("dc", 3)], [("ch", 4)]]
    for change in (Change(1, "ch", 5, 7), Change(2, "ch", 2, 3), Change(3, "dc", 3, 5)):
        other = changed(reading, change)
        again = work(other, plain(30))
        assert all(r.closes for r in again.rounds), change
        before, now = worked.rounds[change.round - 1], again.rounds[change.round - 1]
        assert now.fabric.kinds != before.fabric.kinds
        numbers = [(c.what, c.was) for c in can_change(other.rounds[change.round - 1])]
        assert (change.what, change.now) in numbers
        assert (change.what, change.was) not in numbers
    spoilt = replace(
        reading, rounds=(*changed(reading, Change(1, "ch", 5, 7)).rounds[:1], *reading.rounds[1:])
    )
    assert "no-stitches" in [f.code for f in work(spoilt, plain(30)).findings]


def test_what_cups_is_mended_by_more_and_what_ruffles_by_fewer() -> None:
    arches = "round 1: *1 sc in next st, ch 4, skip 1 st; repeat from *."
    shells = "round 1: *5 dc in next st, skip 1 st; repeat from *."
    edge = stitches(20)
    for text, long, what in ((arches, 70.0, ("ch", 4)), (shells, 29.0, ("dc", 5))):
        reading, _ = on(text, edge)
        shape = line(edge, long, 0)
        found = mended(reading, lambda r: work(r, edge), shape, swatch())
        (change,) = found.changes
        assert (change.what, change.was) == what
        assert (change.now > change.was) is (long == 70.0)
        # it is the least that will do: one nearer to what was written does not lie flat
        nearer = change.now + (1 if change.now < change.was else -1)
        for now, lies in ((change.now, {Lies.FLAT}), (nearer, {Lies.CUPS, Lies.RUFFLES})):
            (one,) = laid_again(changed(reading, replace(change, now=now)), edge, shape)
            assert one.lies in lies
        assert found.rounds[0].lies is Lies.FLAT
        assert not found.given_up


def test_one_stitch_left_of_several_with_chains_between_is_worked() -> None:
    """The chains between then part one working from the next."""
    reading, edge = on("round 1: 4 dc, with ch 2 between, in each st.", stitches(6))[0], stitches(6)
    one = work(changed(reading, Change(1, "dc", 4, 1)), edge)
    assert [w.closes for w in one.rounds] == [True]
    made = count_edge(one)[0].made
    assert (made.stitches, made.chains) == ({"dc": 6}, 12)


def laid_again(reading: Reading, edge: Edge, shape: Shape) -> tuple[RoundLies, ...]:
    return how_it_lies(work(reading, edge), reading, shape, swatch())


def test_rounds_that_are_done_are_not_changed_and_what_cannot_be_mended_is_left() -> None:
    text = "round 1: 1 sc in each st.\nround 2: 1 sc in each st.\n"
    edge = stitches(20)
    reading, _ = on(text, edge)
    shape = line(edge, 40.0, 0)
    done = mended(reading, lambda r: work(r, edge), shape, swatch(), done=2)
    assert done.changes == ()
    assert {r.lies for r in done.rounds} == {Lies.CUPS}
    free = mended(reading, lambda r: work(r, edge), shape, swatch())
    assert [(c.round, c.what, c.now) for c in free.changes] == [(1, "sc", 2)]
    assert {r.lies for r in free.rounds} == {Lies.FLAT}


def test_a_clause_is_changed_by_itself() -> None:
    demo = pattern("fern.toml")
    works = {w.edge.name: w for w in demo.lying.works}
    neck, left, right = works["neck"], works["left armhole"], works["right armhole"]
    assert neck.mended is not None
    assert [(c.round, c.what, c.was, c.now) for c in neck.mended.changes][:1] == [(4, "dc", 5, 7)]
    assert left.mended is not None
    assert right.mended is not None
    assert left.mended.changes == right.mended.changes
    assert {c.clause for c in left.mended.changes} <= {0, 1, 2, 3}
    assert max(r.worst for r in left.mended.rounds) < max(r.worst for r in left.rounds) / 4
    hem = works["hem"]
    assert hem.flat
    assert hem.mended is None


# --- told -----------------------------------------------------------------------------------


def told(pipeline: Pipeline) -> str:
    out = io.StringIO()
    Console(file=out, width=90).print(lying_tables(pipeline.lying))
    return out.getvalue()


def test_how_a_border_lies_is_told_with_what_is_measured_and_what_is_assumed() -> None:
    text = told(project(CUFF, lace="terms: us\nround 1: 1 dc in each st.\n"))
    assert "turns 0° in all, as an edge of its name does (assumed)" in text
    assert "lies flat" in text
    assert "what mends it" not in text
    assert "10 stitches should measure 15 mm" in text
    assert "measured: dc 1.5 mm wide, dc 2.6 mm high" in text
    assert f"pressing takes up {EASE * 100:.0f} %" in text


def test_a_round_that_cups_is_told_with_its_change_in_the_terms_of_the_border() -> None:
    tight = CUFF.replace("length_mm = 60", "length_mm = 110")
    text = told(project(tight, lace="terms: uk\nround 1: 1 tr in each st.\n"))
    assert "will cup, 50 mm too short" in text
    assert "2 tr in place of 1 tr" in text
    assert "every round lies flat" in text


def test_who_says_how_an_edge_turns() -> None:
    lace = "terms: us\nround 1: 1 dc in each st.\n"
    said = CUFF.replace("[thread]", "turns = -90\n[thread]")
    (work_,) = project(said, lace=lace).lying.works
    assert (round(work_.turns), work_.turned_by) == (-90, "project")
    (work_,) = project(CUFF.replace("[thread]", 'curve = "out"\n[thread]'), lace=lace).lying.works
    assert (round(work_.turns), work_.turned_by) == (360, "project")
    (work_,) = project(CUFF.replace('"cuff"', '"neck"'), lace=lace).lying.works
    assert (round(work_.turns), work_.turned_by) == (-360, "name")
    chain = CUFF.replace('of = "stitch"\nlength_mm = 60', 'of = "chain"')
    assert len(project(chain, lace="terms: us\nround 1: 1 dc in each ch.\n").lying.works) == 1


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (("length_mm = 60\n", ""), None),
        (('of = "stitch"\nlength_mm = 60\n', ""), 'how long the edge "cuff" is is not said'),
        ((", width_mm = 60, height_mm = 2.6", ""), "how wide your stitches are is not said"),
    ],
)
def test_what_has_to_be_measured_first_is_said(change: tuple[str, str], said: str | None) -> None:
    pipeline = project(CUFF.replace(*change), lace="terms: us\nround 1: 1 dc in each st.\n")
    missing = [f for f in pipeline.lying.findings if f.code == "measure-missing"]
    assert [f.message.startswith(said) for f in missing if said] == [True] * bool(said)
    assert bool(pipeline.lying.works) is (said is None)
    assert all(f.span is not None for f in missing)


def test_the_record_keeps_to_its_schema() -> None:
    whole = schema()
    shape = {"$ref": "#/$defs/FlatRecord", "$defs": whole["$defs"]}
    record = json.loads(to_json(flat_record(pattern("fern.toml").lying)))
    jsonschema.Draft202012Validator(shape).validate(record)
    neck = record["works"][0]
    assert neck["degrees"] == -540.0
    assert [r["lies"] for r in neck["rounds"]][3] == "cups"
    assert neck["changes"][0] == {"round": 4, "what": "dc", "was": 5, "now": 7}
    bare = json.loads(
        to_json(
            flat_record(
                project(
                    CUFF, lace="terms: us\nround 1: 3 dc in each st.\nround 2: 2 dc in each st.\n"
                ).lying
            )
        )
    )
    jsonschema.Draft202012Validator(shape).validate(bare)
    assert bare["works"][0]["rounds"][1]["radius_mm"] == pytest.approx(2.6 / 0.693, abs=0.05)


def test_a_long_search_is_given_up(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("border.reckoning.mending.MOST_TRIALS", 3)
    demo = pattern("fern.toml")
    neck = demo.lying.works[0]
    assert neck.mended is not None
    assert neck.mended.given_up
    assert "given up" in told(demo)
