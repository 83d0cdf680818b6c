"""Made to measure: more wheels in a section, what they change, and how many a length needs."""

from __future__ import annotations

import io
import json
from pathlib import Path

import jsonschema
import pytest
from lace import pattern, project
from rich.console import Console

from border.pipeline import Pipeline
from border.resizing import groups
from border.showing.record import to_json
from border.showing.schema import schema
from border.showing.sizing import EdgeSize, Sized, SizedAll
from border.showing.sizing_record import size_record
from border.showing.sizing_tables import sizing_tables
from border.yoke.edges import trace
from border.yoke.project import Project
from border.yoke.resized import resized, sections_of

PUBLISHED = Path(__file__).parent / "published"


def demo() -> Project:
    found = pattern("fern.toml").project
    assert found is not None
    return found


def told(sizing: SizedAll) -> str:
    out = io.StringIO()
    Console(file=out, width=100).print(sizing_tables(sizing))
    return out.getvalue()


def edge(sized: Sized, name: str) -> EdgeSize:
    return next(e for e in sized.edges if e.edge == name)


# --- a yoke with more wheels, or fewer ----------------------------------------------------


@pytest.mark.parametrize(
    "more",
    [
        {"front": 1, "back": 1},
        {"front": 2},
        {"left strap": 1, "right strap": 1},
        {"front": -1, "back": -1, "left strap": 3, "right strap": 3},
        {"front": -2, "back": 4},
        {"left strap": -2, "right strap": -2},
        {"front": 40, "back": 39},
    ],
)
def test_a_yoke_still_goes_together_with_other_numbers_of_wheels(more: dict[str, int]) -> None:
    before, _, _ = trace(demo())
    edges, report, findings = trace(resized(demo(), more))
    assert findings == ()
    assert report.goes_together
    assert report.motifs == 20 + sum(more.values())
    had = {e.name: e.places for e in before}
    now = {e.name: e.places for e in edges}
    body = more.get("front", 0) + more.get("back", 0)
    left, right = more.get("left strap", 0), more.get("right strap", 0)
    # a wheel of front or back offers 5 + 2 loops on either side, one of a strap 3 + 2 and 7 + 2
    assert now["neck"] == had["neck"] + 7 * body + 5 * (left + right)
    assert now["hem"] == had["hem"] + 7 * body
    assert now["left armhole"] == had["left armhole"] + 9 * left
    assert now["right armhole"] == had["right armhole"] + 9 * right


def test_wheels_come_in_the_middle_and_the_corners_stay_at_the_ends() -> None:
    edges, _, _ = trace(resized(demo(), {"front": 1}))
    neck = next(e for e in edges if e.name == "neck")
    front = {r.motif: r.free for r in neck.runs if r.section == "front"}
    assert front == {
        "front.1": 2,
        "front.2": 5,
        "front.3": 5,
        "front.4": 5,
        "front.5": 5,
        "front.6": 2,
    }
    assert {r.motif for r in neck.runs if "corner" in r.names} == {
        "front.1",
        "front.6",
        "back.1",
        "back.5",
    }


def test_what_was_said_of_the_old_yoke_is_left_out() -> None:
    new = resized(demo(), {"back": 1})
    assert all(w.adjustments == () for w in new.works)
    assert new.attachments == ()
    start = pattern(
        "fern.toml", {'border = "fern-hem.border"': 'border = "fern-hem.border"\nstart = "back.5"'}
    )
    assert start.project is not None
    moved = resized(start.project, {"back": 1}).works[-1].start
    assert moved is not None
    assert moved.text == "back.6"
    lost = resized(start.project, {"back": -1}).works[-1].start
    assert lost is not None
    assert lost.text == "back.4"


def test_the_sections_that_can_grow_and_those_that_grow_together() -> None:
    assert sections_of(demo()) == {"front": 5, "back": 5, "left strap": 3, "right strap": 3}
    found = [set(group) for group in groups(demo(), "neck")]
    assert found[0] == {"front", "back"}
    assert {"left strap", "right strap"} in found
    assert {"front"} in found
    assert {"back"} in found
    assert {"left strap", "right strap"} in [set(g) for g in groups(demo(), "left armhole")]


def test_only_what_makes_an_edge_longer_is_a_way_to_a_longer_one() -> None:
    sizing = pattern("fern.toml").resized("left armhole", 80.0, ())
    assert {tuple(sorted(name for name, _ in then.more)) for then in sizing.then} == {
        ("left strap", "right strap")
    }
    for then in sizing.then:
        assert edge(then, "left armhole").places == edge(then, "right armhole").places


# --- what more wheels change ---------------------------------------------------------------


def test_one_more_wheel_in_front_and_back_round_by_round() -> None:
    """Arithmetic: two wheels more are 14 loops; round 1 works 4 sc into each of their 7 loops,
    with arches between and 2 ch at their joints."""
    sizing = pattern("fern.toml").resized(None, None, (("front", 1), ("back", 1)))
    (then,) = sizing.then
    neck, was = edge(then, "neck"), edge(sizing.now, "neck")
    assert (was.places, neck.places) == (88, 102)
    assert (was.motifs, neck.motifs) == (16, 18)
    assert neck.rounds[0].made.stitches["sc"] == was.rounds[0].made.stitches["sc"] + 2 * 4
    assert neck.closes is True
    assert neck.eased is None
    hem = edge(then, "hem")
    assert hem.places == 116
    assert hem.closes is False  # a multiple of 6 is needed, and 116 = 19 x 6 + 2
    assert hem.eased == 2
    arm, as_it_was = edge(then, "left armhole"), edge(sizing.now, "left armhole")
    assert (arm.places, arm.length, arm.closes) == (as_it_was.places, as_it_was.length, True)
    text = told(sizing)
    assert "neck: 88 loops become 102, 16 wheels 18; 20 cm become 25 cm along round 6" in text
    assert "its border closes with 2 places eased in" in text
    assert "left armhole" not in text


def test_what_is_eased_in_now_counts_for_now_only() -> None:
    as_written = pattern("fern-as-written.toml").resized(None, None, (("front", 2),))
    assert edge(as_written.now, "neck").closes is False
    assert edge(pattern("fern.toml").resized(None, None, (("front", 2),)).now, "neck").closes


# --- to measure --------------------------------------------------------------------------------


def test_the_sizes_on_either_side_of_a_length() -> None:
    sizing = pattern("fern.toml").resized("neck", 230.0, ())
    assert sizing.then
    lengths = []
    for then in sizing.then:
        long = edge(then, "neck").length
        assert long is not None
        lengths.append(long.middle)
        assert then.goes_together
    far = [abs(mm - 230) for mm in lengths]
    assert far == sorted(far)
    by_group: dict[tuple[str, ...], list[float]] = {}
    for then, mm in zip(sizing.then, lengths, strict=True):
        by_group.setdefault(tuple(name for name, _ in then.more), []).append(mm)
    assert by_group["front", "back"][0] > 230  # two wheels more are 25 cm, none are 20 cm
    assert len(by_group["front",]) == 2
    assert min(by_group["front",]) <= 230 <= max(by_group["front",])
    text = told(sizing)
    assert "neck, to measure 23 cm" in text
    assert "it has 16 wheels now, and measures 20 cm along round 6" in text
    assert "front: 2 more wheels" in text


INCH = 25.4
SIMS = f"""
format = 1
[[edge]]
name = "neck"
runs = [{{ section = "wheel", motifs = 30, places = 6 }}]
of = "picot"
length_mm = {30 * INCH}
[[work]]
edge = "neck"
border = "yoke.border"
curve = "straight"
"""


def sims(text: str = SIMS, border: str = "yoke-border") -> Pipeline:
    return project(text, yoke=(PUBLISHED / f"{border}.border").read_text("utf-8"))


def test_a_published_yoke_has_as_many_wheels_as_inches() -> None:
    """Margaret Sims, "Designs in Crochet" V and VI, Ladies' Home Journal, June 1895: 38 wheels,
    1 inch across, round the neck, and 24 stitches to a wheel, 912 in all. Begun from a neck of
    30 inches, 38 inches take 8 wheels more, and the border closes."""
    best = sims().resized("neck", 38 * INCH, ()).then[0]
    assert best.more == (("wheel", 8),)
    neck = edge(best, "neck")
    assert neck.motifs == 38
    assert neck.length is not None
    assert neck.length.middle == pytest.approx(38 * INCH)
    assert neck.rounds[0].made.chains + sum(neck.rounds[0].made.stitches.values()) == 912
    assert neck.closes


def test_on_how_many_wheels_a_published_border_closes() -> None:
    """The same border: 24 stitches to a wheel make 36 in round 2, taken 9 at a time; then 18
    spaces, taken 3 at a time, so 6 loops to a wheel, taken 4 at a time. So it closes on every
    even number of wheels (arithmetic), and on no odd one."""
    now = {
        by: edge(sims().resized(None, None, (("wheel", by),)).then[0], "neck")
        for by in (1, 2, 9, 10)
    }
    assert {by: size.closes for by, size in now.items()} == {1: False, 2: True, 9: False, 10: True}
    assert now[10].rounds[1].made.stitches == {"dc": 40 * 24 // 2}


def test_a_plain_edge_to_measure_and_where_its_border_closes() -> None:
    """90 loops of 4 mm; 400 mm are 100 loops, and little shells close on a multiple of 6."""
    text = """
    format = 1
    [[edge]]
    name = "cuff"
    places = 90
    length_mm = 360
    [[work]]
    edge = "cuff"
    border = "shells.border"
    """
    shells = (Path(__file__).parent.parent / "patterns" / "shell-edging.border").read_text("utf-8")
    sizing = project(text, shells=shells).resized("cuff", 400.0, ())
    places = {edge(then, "cuff").places: edge(then, "cuff") for then in sizing.then}
    assert set(places) == {100, 101, 96, 102}
    assert [places[n].closes for n in (96, 100, 101, 102)] == [True, False, False, True]
    assert edge(sizing.then[0], "cuff").places == 100
    assert "cuff: 10 more loops" in told(sizing)


def test_an_open_edge_of_chains_is_as_long_as_its_chains() -> None:
    """61 chains of 1.4 mm; a mesh of 1 dc and 2 ch closes on a multiple of 3 plus 1."""
    text = """
    format = 1
    [[edge]]
    name = "edging"
    closed = false
    places = 61
    of = "chain"
    [[work]]
    edge = "edging"
    border = "mesh.border"
    [thread]
    hook_mm = 1.5
    sample = [{ stitch = "ch", stitches = 20, used_mm = 90, width_mm = 28 }]
    """
    mesh = "terms: us\nround 1: 1 dc in first loop, *ch 2, skip 2 loops, 1 dc in next loop; repeat from *.\n"
    sizing = project(text, mesh=mesh).resized("edging", 140.0, ())
    now = edge(sizing.now, "edging").length
    assert now is not None
    assert now.middle == pytest.approx(61 * 1.4)
    places = {edge(then, "edging").places: edge(then, "edging").closes for then in sizing.then}
    assert places[100] is True
    assert all(closes is (n % 3 == 1) for n, closes in places.items())


@pytest.mark.parametrize(
    ("each", "long", "lies"), [(1, 75, "cup"), (3, 225, ""), (9, 240, "ruffle")]
)
def test_a_round_that_ruffles_makes_an_edge_no_longer(each: int, long: float, lies: str) -> None:
    """On a straight edge of 240 mm, with stitches of 2.5 mm: too few of them draw it in, and of too
    many the rest lies in folds, as on a tube that is wider than the cloth it is sewn to."""
    text = """
    format = 1
    [[edge]]
    name = "edging"
    closed = false
    places = 30
    length_mm = 240
    [[work]]
    edge = "edging"
    border = "solid.border"
    [thread]
    hook_mm = 1.5
    sample = [{ stitch = "dc", stitches = 20, used_mm = 500, width_mm = 50 }]
    """
    solid = f"terms: us\nround 1: {each} dc in each loop.\n"
    sizing = project(text, solid=solid).resized("edging", 300.0, ())
    now = edge(sizing.now, "edging")
    assert now.length is not None
    assert now.length.middle == pytest.approx(long)
    assert (f"which will {lies}:" in told(sizing)) is (lies != "")


def test_a_length_that_nothing_tells_is_asked_for() -> None:
    bare = SIMS.replace(f"length_mm = {30 * INCH}\n", "")
    sizing = sims(bare).resized("neck", 900.0, ())
    assert sizing.then == ()
    assert [f.code for f in sizing.findings] == ["measure-missing"]


def test_the_record_keeps_to_its_schema() -> None:
    shape = {"$ref": "#/$defs/SizeRecord", "$defs": schema()["$defs"]}
    for sizing in (
        pattern("fern.toml").resized("neck", 120.0, ()),
        pattern("fern.toml").resized(None, None, (("front", 1),)),
        sims(SIMS.replace(f"length_mm = {30 * INCH}\n", "")).resized("neck", 900.0, ()),
    ):
        record = json.loads(to_json(size_record(sizing)))
        jsonschema.Draft202012Validator(shape).validate(record)
    assert record["now"]["edges"][0]["motifs"] == 30
