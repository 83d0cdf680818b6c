"""The symbol chart: read back from its SVG and held against the counts and the rows themselves."""

from __future__ import annotations

import json
import re
from collections import Counter
from itertools import combinations, pairwise
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import jsonschema
import pytest
import random_borders
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from svgs import SVG, check_svg, named, texts
from worked import motifs, plain, worked

from border.cli import main
from border.cli.files import read_file
from border.pipeline import Pipeline
from border.reckoning.counts import Tally, count_edge
from border.showing.chart import chart
from border.showing.chart_laid import Charted
from border.showing.schema import schema
from border.showing.side_by_side import side_by_side
from border.text.readings import read_rounds
from border.working.adjusting import Adjustment
from border.working.work import work
from border.yoke.edges import Edge

FERN = "patterns/fern.toml"


def drawn(
    text: str, edge: Edge, section: str | None = None, *, left: bool = False
) -> ElementTree.Element:
    done, _ = worked(text, edge)
    return check_svg(chart("test", [Charted("", done, "us", section, left)]))


def symbols(root: ElementTree.Element) -> list[dict[str, int]]:
    """By round, how many symbols of each kind."""
    found = []
    for row in named(root, "worked"):
        kinds = (g.get("class", "") for g in row.findall(f"{SVG}g"))
        found.append(dict(Counter(k.removeprefix("symbol ") for k in kinds)))
    return found


def as_counted(made: Tally) -> dict[str, int]:
    counted = made.stitches | {"ch": made.chains, "picot": made.picots}
    return {kind: n for kind, n in counted.items() if n}


Stroke = tuple[complex, complex]


def strokes(symbol: ElementTree.Element) -> list[Stroke]:
    """The straight lines of a symbol, the bar of a T and the arm across first."""
    path = symbol.find(f"{SVG}path")
    drawn = (
        re.findall(r"M(\S+) (\S+?)L(\S+) ([^MQ]+)", path.get("d", "")) if path is not None else []
    )
    return [(complex(float(a), float(b)), complex(float(c), float(d))) for a, b, c, d in drawn]


def spots(root: ElementTree.Element, round_: int) -> list[complex]:
    """The tops of the stitches of a round: the middles of their bars or crosses."""
    found = []
    for symbol in named(root, "worked")[round_ - 1]:
        if lines := strokes(symbol):
            found.append((lines[0][0] + lines[0][1]) / 2)
    return found


# --- counts ---------------------------------------------------------------------------


def test_a_whole_edge_has_the_symbols_that_are_counted() -> None:
    text = """
    round 1: *1 sc in next loop, ch 5, skip 1 loop; repeat from *.
    round 2: (2 dc, ch 2, 2 dc) in each space.
    round 3: *1 sc in next space, 3 picots, ch 7, skip 1 space; repeat from *.
    """
    edge = motifs(8, 8)
    counted = count_edge(worked(text, edge)[0])
    assert symbols(drawn(text, edge, "edge")) == [as_counted(r.made) for r in counted]


@pytest.mark.parametrize("section", ["front", "back", "left strap", "right strap"])
def test_a_section_has_the_symbols_that_are_counted_over_it(section: str) -> None:
    pipeline = Pipeline(FERN, read_file, only="neck")
    charted, findings = pipeline.charted(section, None)
    assert findings == ()
    root = check_svg(chart("x", charted))
    (piece,) = pipeline.counted.pieces
    expected = [
        as_counted(next(s.made for s in r.sections if s.section == section)) for r in piece.rounds
    ]
    assert symbols(root) == expected


KINDS = ["sc", "hdc", "dc", "tr", "dtr", "trtr", "sl st"]


@settings(deadline=None, max_examples=60)
@given(
    st.lists(st.integers(2, 9), min_size=1, max_size=5),
    st.lists(
        st.tuples(st.sampled_from(KINDS), st.integers(1, 4), st.integers(0, 6)),
        min_size=1,
        max_size=4,
    ),
    st.booleans(),
    st.booleans(),
)
def test_every_border_on_an_edge_drawn_whole_has_what_is_counted(
    runs: list[int], rows: list[tuple[str, int, int]], closed: bool, left: bool
) -> None:
    edge = motifs(*runs, closed=closed)
    text = "chains count as stitches: no\n" + "\n".join(
        f"round {n}: *{count} {kind} in next st, ch {chains}; repeat from *."
        if chains
        else f"round {n}: {count} {kind} in each st."
        for n, (kind, count, chains) in enumerate(rows, 1)
    )
    done, _ = worked(text, edge)
    root = check_svg(chart("x", [Charted("", done, "us", "edge", left)]))
    assert symbols(root) == [as_counted(r.made) for r in count_edge(done)]


@settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    database=None,
    phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)
@given(random_borders.works(), st.booleans())
def test_random_borders_with_all_that_a_text_can_say_are_drawn(
    drawn_by_lot: tuple[Edge, Any, list[Any]], left: bool
) -> None:
    edge, border, adjustments = drawn_by_lot
    reading, _ = read_rounds(border, lambda source, name: None)
    done = work(reading, edge, [Adjustment(*a) for a in adjustments])
    parts = {None, *(run.section for run in edge.runs), *(run.motif for run in edge.runs[:3])}
    for part in parts if done.rounds else ():
        check_svg(chart("x", [Charted("", done, "us", part, left)]))
    if done.rounds and len({run.section for run in edge.runs}) == 1:
        whole = check_svg(chart("x", [Charted("", done, "us", edge.runs[0].section, left)]))
        assert symbols(whole) == [as_counted(r.made) for r in count_edge(done)]


def test_some_repeats_are_drawn_where_there_are_many() -> None:
    text = "round 1: *1 sc in next loop, ch 5, skip 2 loops; repeat from *."
    assert symbols(drawn(text, plain(90))) == [{"sc": 3, "ch": 15}]


# --- where things stand -----------------------------------------------------------------


def test_stitches_in_a_stitch_have_their_feet_together_those_in_a_space_apart() -> None:
    text = """
    chains count as stitches: no
    round 1: *3 dc in next st, ch 3, skip 1 st; repeat from *.
    round 2: *3 dc in next space, ch 1; repeat from *.
    """
    root = drawn(text, plain(24, of="stitch"))
    first, second = (
        [g for g in row if g.get("class") == "symbol dc"] for row in named(root, "worked")
    )
    for rows, together in ((first, True), (second, False)):
        feet = [strokes(group)[1][0].real for group in rows[:3]]
        assert (max(feet) - min(feet) < 2) == together


def test_a_stitch_over_two_stands_on_both() -> None:
    text = """
    round 1: 1 sc in each st.
    round 2: *2 dc together over next 2 st, ch 1; repeat from *.
    """
    root = drawn(text, motifs(6, 6, of="stitch"), "edge")
    below = sorted({round(s.real, 1) for s in spots(root, 1)})
    for group in named(root, "worked")[1]:
        if group.get("class") == "symbol dc":
            feet = [foot.real for foot, top in strokes(group) if foot.imag - top.imag > 20]
            assert len(feet) == 2
            near = [min(below, key=lambda x: abs(x - foot)) for foot in feet]
            assert near[0] != near[1]
            assert all(abs(a - b) < 2 for a, b in zip(near, feet, strict=True))


def test_the_strokes_tell_the_stitch() -> None:
    for kind, across in (("hdc", 0), ("dc", 1), ("tr", 2), ("dtr", 3), ("trtr", 4)):
        root = drawn(f"round 1: 1 {kind} in each st.", plain(5, of="stitch"))
        for group in named(root, "symbol")[:5]:
            assert len(strokes(group)) == 2 + across  # bar, stem, strokes


def test_a_round_is_numbered_where_it_begins() -> None:
    text = "worked: in rows\nrow 1: 1 sc in each st.\nrow 2: 1 sc in each st."
    for left in (False, True):
        root = drawn(text, plain(6, closed=False, of="stitch"), left=left)
        at = [float(t.get("x", 0)) for t in named(root, "round-number")]
        assert (at[0] < at[1]) == left
        assert ["".join(t.itertext()) for t in named(root, "round-number")] == ["1", "2"]


LARGE = "\n".join(
    (
        "chains count as stitches: no",
        "round 1: 1 dc in each loop, with ch 2 between.",
        "round 2: *1 sc in next space, ch 5, skip 1 space; repeat from *.",
        "round 3: (3 dc, picot, 3 dc) in each space.",
        "round 4: *1 sc in next picot, ch 6; repeat from *.",
        "round 5: *5 tr in next space, 1 sc in next space; repeat from *.",
        "round 6: *1 sc in centre of next group of 5, ch 7; repeat from *.",
        "round 7: (2 dc, ch 2, 2 dc) in each space.",
        "round 8: *1 sc in next ch-2 space, ch 5; repeat from *.",
        "round 9: *7 dc in next space, 1 sc in next space; repeat from *.",
        "round 10: 1 sc in each st.",
    )
)


@pytest.mark.parametrize("section", [None, "edge"])
def test_ten_rounds_on_sixty_wheels_lie_over_each_other_and_apart(section: str | None) -> None:
    edge = motifs(*[8] * 60)
    done, findings = worked(LARGE, edge)
    assert [f.code for f in findings if f.severity == "error"] == []
    assert len(done.rounds) == 10
    root = check_svg(chart("x", [Charted("", done, "us", section)]))
    heights = []
    for n in range(1, 11):
        tops = sorted(spots(root, n), key=lambda p: p.real)
        assert len(tops) > 3
        assert all(b.real - a.real > 8.9 for a, b in pairwise(tops)), n
        heights.append((min(p.imag for p in tops), max(p.imag for p in tops)))
    assert all(below[0] > above[1] for below, above in pairwise(heights))


@given(st.lists(st.tuples(st.floats(-50, 50), st.floats(1, 20)), min_size=1, max_size=12))
def test_side_by_side_nothing_overlaps_and_no_single_shift_is_nearer(
    things: list[tuple[float, float]],
) -> None:
    wanted, wide = [w for w, _ in things], [w for _, w in things]
    at = side_by_side(wanted, wide)
    gaps = [(a + b) / 2 for a, b in pairwise(wide)]
    assert all(y - x > gap - 1e-6 for (x, y), gap in zip(pairwise(at), gaps, strict=True))
    moved = sum(a - w for a, w in zip(at, wanted, strict=True))
    assert abs(moved) < 1e-6 * len(at) * 100  # the whole row cannot come nearer


# --- texts ------------------------------------------------------------------------------


def test_the_legend_names_the_symbols_in_the_chosen_terms() -> None:
    text = "round 1: *1 sc in next st, 1 dc in next st, ch 1, picot; repeat from *."
    done, _ = worked(text, plain(12, of="stitch"))
    us = texts(check_svg(chart("x", [Charted("", done, "us")])))
    uk = texts(check_svg(chart("x", [Charted("", done, "uk")])))
    assert {"ch (chain)", "sc (single crochet)", "dc (double crochet)", "picot"} <= set(us)
    assert {"ch (chain)", "dc (double crochet)", "tr (treble)", "picot"} <= set(uk)


def test_a_name_is_text_and_the_bytes_are_the_same() -> None:
    done, _ = worked("round 1: 1 sc in each st.", plain(6))
    name = "<script>alert(1)</script>"
    one = chart(name, [Charted(name, done, "us")])
    assert one == chart(name, [Charted(name, done, "us")])
    assert texts(check_svg(one)).count(name) == 2


def test_the_command_draws_every_piece_of_work(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["chart", FERN]) == 0
    root = check_svg(capsys.readouterr().out)
    titles = texts(root)
    for title in ("Fern neck, neck", "Fern hem, hem", "Fern armhole, right armhole"):
        assert title in titles
    assert main(["chart", FERN, "--work", "neck", "--section", "front", "--terms", "uk"]) == 0
    assert "tr (treble)" in texts(check_svg(capsys.readouterr().out))


def test_the_record_has_the_symbols_where_they_are_drawn(
    capsys: pytest.CaptureFixture[str],
) -> None:
    asked = ["chart", FERN, "--work", "neck", "--section", "front"]
    assert main([*asked, "--json"]) == 0
    record = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator(
        {"$ref": "#/$defs/ChartRecord", "$defs": schema()["$defs"]}
    ).validate(record)
    (work,) = record["works"]
    assert (work["edge"], work["section"], work["hand"]) == ("neck", "front", "right")
    assert main(asked) == 0
    root = check_svg(capsys.readouterr().out)
    kinds = [dict(Counter(s["symbol"] for s in r["symbols"])) for r in work["rounds"]]
    assert kinds == symbols(root)
    assert len(work["places"]) == len(named(root, "place")) == 2 * 4 + 3 * 7
    assert {r["goes"] for r in work["rounds"]} == {"left"}
    for told, drawn in zip(work["rounds"], named(root, "worked"), strict=True):
        tees = [s for s in told["symbols"] if s["symbol"] == "dc"]
        lines = [strokes(g) for g in drawn if g.get("class") == "symbol dc"]
        for symbol, (bar, stem, _) in zip(tees, lines, strict=True):
            assert abs(complex(*symbol["top"]) - (bar[0] + bar[1]) / 2) < 0.2
            assert abs(complex(*symbol["feet"][0]) - stem[0]) < 1.5


def test_a_motif_is_drawn_between_its_neighbours(capsys: pytest.CaptureFixture[str]) -> None:
    for section, beside in (
        ("front.1", ["front.2", "front.1", "left strap.1"]),
        ("back.3", ["back.4", "back.3", "back.2"]),
    ):
        assert main(["chart", FERN, "--work", "neck", "--section", section]) == 0
        root = check_svg(capsys.readouterr().out)
        assert ["".join(t.itertext()) for t in named(root, "motif-name")] == beside
    whole = drawn("round 1: 1 sc in each loop.", motifs(3, 4, 5), "edge.2")
    assert symbols(whole) == [{"sc": 12}]


@pytest.mark.parametrize("left", [False, True])
def test_the_names_of_narrow_motifs_stand_apart(left: bool) -> None:
    edge = motifs(*[1, 2, 1, 3] * 4)
    root = drawn("round 1: 1 sc in each loop.", edge, "edge", left=left)
    names = named(root, "motif-name")
    assert len(names) == 16
    at = [(float(t.get("x", 0)), float(t.get("y", 0)), "".join(t.itertext())) for t in names]
    for (x, y, name), (x2, y2, name2) in combinations(at, 2):
        assert y != y2 or abs(x - x2) > 11.5 * 0.6 * (len(name) + len(name2)) / 2


def test_a_part_in_which_nothing_is_worked_has_no_symbols() -> None:
    text = "round 1: over edge.1: 1 sc in each loop; elsewhere: leave unworked."
    root = drawn(text, motifs(4, 4, 4, 4, 4, 4), "edge.4")
    assert symbols(root) == [{}]


def test_a_part_that_is_not_there_is_said_to_be_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["chart", FERN, "--section", "sleeve"]) == 2
    assert 'has a part called "sleeve"' in capsys.readouterr().err


def test_a_border_without_an_edge_is_asked_for_one(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert main(["chart", "patterns/shell-edging.border"]) == 2
    assert "border chart patterns/shell-edging.border --loops 78" in capsys.readouterr().err


def test_a_round_that_came_out_otherwise_is_drawn_as_it_was_found(tmp_path: Path) -> None:
    (tmp_path / "rows.border").write_text(
        "terms: us\nround 1: *1 sc in next loop, ch 3; repeat from *.\n"
        "round 2: *1 sc in next space, ch 5; repeat from *.\n",
        encoding="utf-8",
    )
    project = tmp_path / "cuff.toml"
    project.write_text(
        'format = 1\n[[edge]]\nname = "cuff"\nplaces = 12\n[[work]]\nedge = "cuff"\n'
        'border = "rows.border"\ndone = 1\nfound = { round = 1, spaces = 13 }\n',
        encoding="utf-8",
    )
    pipeline = Pipeline(str(project), read_file)
    (one,), _ = pipeline.charted(None, None)
    counted = [as_counted(r.made) for r in pipeline.counted.pieces[0].rounds]
    assert [as_counted(r.made) for r in count_edge(one.worked)] == counted
    assert counted[1] == {"sc": 13, "ch": 65}
