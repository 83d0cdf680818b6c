"""The measuring line: what ten spaces should measure, and what a found measure means."""

from __future__ import annotations

import io

import pytest
from lace import line, on, pattern, project, stitches, swatch
from rich.console import Console

from border.pipeline import Pipeline
from border.reckoning.counts import count_edge
from border.reckoning.flat import how_it_lies
from border.reckoning.measuring import Mark, measuring_line
from border.showing.lying_tables import lying_tables
from border.text.tree import NOWHERE
from border.yoke.project import Measured

ARCHES = """
round 1: *1 sc in next st, ch 5, skip 1 st; repeat from *.
round 2: *1 sc in next space, ch 6; repeat from *.
round 3: *1 sc in next space, ch 7; repeat from *.
round 4: *3 dc in next space; repeat from *.
"""
TUBE = 992.0  # mm, 160 spaces of 6.2 mm


def marks(*measured: Measured, long: float = TUBE) -> tuple[Mark, ...]:
    edge = stitches(320)
    reading, worked = on(ARCHES, edge)
    lying = how_it_lies(worked, reading, line(edge, long, 0), swatch("sc", 1.1))
    return measuring_line(count_edge(worked), lying, measured)


def found(mm: float, round_: int = 3, count: int = 10, of: str = "space") -> Measured:
    return Measured(round_, of, count, mm, NOWHERE)


def test_ten_spaces_should_measure_their_share_of_a_round_that_lies_flat() -> None:
    """Arithmetic of the tube: 160 spaces on 992 mm."""
    first, second, third, fourth = marks()
    for mark in (first, second, third):
        assert (mark.of, mark.count) == ("space", 10)
        assert mark.expected.low == mark.expected.high == pytest.approx(62)
        assert mark.measured is None
    # 480 dc side by side cannot be more than 528 mm
    assert (fourth.of, fourth.count) == ("stitch", 10)
    assert fourth.whole.high == pytest.approx(480 * 1.1)
    assert fourth.expected.high == pytest.approx(11)


def test_ten_spaces_that_measure_58_make_the_neck_64_mm_shorter() -> None:
    """Rule of three: (62 - 58) / 10 x 160 = 64."""
    *_, third, fourth = marks(found(58))
    assert third.measured == 58
    assert third.longer.low == third.longer.high == pytest.approx(-64)
    assert not third.as_reckoned
    assert fourth.drift == pytest.approx(58 / 62)
    assert fourth.whole.high == pytest.approx(480 * 1.1 * 58 / 62)


def test_another_number_can_be_measured_and_longer_is_longer() -> None:
    *_, third, _ = marks(found(325, count=50))
    assert (third.count, third.measured) == (50, 325)
    assert third.expected.low == pytest.approx(310)
    assert third.longer.low == pytest.approx(15 / 50 * 160)
    *_, third, _ = marks(found(60, of="stitch"))
    assert third.of == "stitch"
    assert third.expected.low == pytest.approx(62)  # as many sc as spaces


def test_what_lies_within_the_band_changes_nothing() -> None:
    *_, third, fourth = marks(found(62))
    assert third.as_reckoned
    assert fourth.drift == 1.0


def test_drift_adds_up_and_of_two_measures_of_a_round_the_last_counts() -> None:
    first, second, third, _ = marks(found(60, 1), found(31, 2, 5), found(62, 1))
    assert (first.measured, first.as_reckoned) == (62, True)
    assert second.as_reckoned
    first, second, third, _ = marks(found(58, 1), found(57, 2))
    assert second.expected.low == pytest.approx(58)
    assert second.longer.low == pytest.approx(-16)
    assert third.expected.low == pytest.approx(57)


CUFF = """
format = 1
[[edge]]
name = "neck"
places = 320
of = "stitch"
length_mm = 992
[[work]]
edge = "neck"
border = "lace.border"
curve = "straight"
measured = [{ round = 3, spaces = 10, mm = MM }]
[thread]
hook_mm = 1.0
sample = [{ stitch = "sc", stitches = 40, used_mm = 340, width_mm = 44 }]
"""


def neck(mm: str, lace: str = ARCHES) -> Pipeline:
    return project(CUFF.replace("MM", mm), lace="terms: us\n" + lace)


def told(pipeline: Pipeline) -> str:
    out = io.StringIO()
    Console(file=out, width=200).print(lying_tables(pipeline.lying))
    return out.getvalue()


def test_the_measure_of_a_project_is_told() -> None:
    text = told(neck("58"))
    assert "10 spaces should measure 62 mm; yours measure 58 mm" in text
    assert "the neck comes out 64 mm shorter, and the rounds to come with it" in text
    assert "as reckoned" in told(neck("62"))
    assert "64 mm longer" in told(neck("66"))


def test_a_measure_of_a_round_that_is_not_there_is_told() -> None:
    pipeline = neck("58", "round 1: 1 sc in each st.\n")
    (finding,) = pipeline.lying.findings
    assert finding.code == "no-such-row"
    assert finding.message == "there is no round 3 to have been measured"
    assert finding.span is not None


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("{ round = 3, mm = 58 }", "what was measured is either spaces or stitches"),
        ("{ round = 3, spaces = 10, stitches = 10, mm = 58 }", "either spaces or stitches"),
        ("{ round = 3, spaces = 10 }", '"mm" is missing'),
        ("{ round = 3, spaces = 0, mm = 58 }", "must be 1 or more"),
        ("{ round = 3, spacse = 10, mm = 58 }", 'there is no key "spacse"'),
    ],
)
def test_a_measure_that_says_nothing_is_told(written: str, said: str) -> None:
    text = CUFF.replace("{ round = 3, spaces = 10, mm = MM }", written)
    pipeline = project(text, lace="terms: us\n" + ARCHES)
    assert any(said in f.message for f in pipeline.findings)
    assert all(f.span is not None for f in pipeline.findings if f.code == "bad-value")


def test_the_rounds_to_come_are_brought_back_to_size() -> None:
    """At 58 for 62 a stitch of 1.1 mm is 1.03 mm: 480 of them are 494 mm, half of the 992 that lie
    flat; chains that have room for it are left as they are."""
    (work,) = neck("58").lying.works
    assert work.back is not None
    (change,) = work.back.changes
    assert (change.round, change.what, change.was, change.now) == (4, "dc", 3, 6)
    assert work.back.rounds[-1].length.worked.low == pytest.approx(960 * 1.1 * 58 / 62)
    text = told(neck("58"))
    assert "to come back to size in the rounds to come" in text
    assert "6 dc in place of 3 dc" in text
    room = neck("58", ARCHES.replace("*3 dc in next space", "*1 sc in next space, ch 7"))
    assert "nothing need be changed: they have room for it" in told(room)
    (work,) = neck("62").lying.works
    assert work.back is None


@pytest.mark.parametrize(("mm", "asked"), [(12.5, True), (30, True), (105, False), (1250, True)])
def test_a_measure_in_the_wrong_unit_is_asked_after(mm: float, asked: bool) -> None:
    """The demo: 10 spaces of round 3 should measure 12 to 13 cm, so 3 cm and 125 cm cannot be."""
    found = '[[work]]\nedge = "neck"\n'
    said = f"measured = [{{ round = 3, spaces = 10, mm = {mm} }}]\n"
    findings = pattern("fern.toml", {found: found + said}).lying.findings
    told = [f for f in findings if f.code == "measure-unlikely"]
    assert len(told) == asked
    assert all(f.span and f"measure {mm:g} mm, where they should" in f.message for f in told)
