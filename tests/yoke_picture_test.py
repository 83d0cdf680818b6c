"""The picture of a yoke: read back from its SVG and held against the yoke itself."""

from __future__ import annotations

import math
import random
import re
from itertools import combinations
from xml.etree import ElementTree

import pytest
from faces_test import planar_yoke, text_of
from svgs import SVG, called, check_svg, named, texts
from yokes import COLLAR, FERN, HEAD, read, told

from border.cli import main
from border.showing.yoke_picture import yoke_picture
from border.yoke.edges import trace
from border.yoke.laying import lay
from border.yoke.names import names
from border.yoke.placing import Points, placed
from border.yoke.spread import Spread, spread

BIG = """\
format = 1
[yoke]
loops = 16
joined = 3
seam_loops = 1
[[strip]]
name = "front"
motifs = 15
sides = ["neck 5", "hem 5"]
[[strip]]
name = "back"
motifs = 15
sides = ["neck 5", "hem 5"]
[[strip]]
name = "left strap"
motifs = 9
sides = ["left armhole 7", "neck 3"]
from = "front.1"
to = "back.15"
[[strip]]
name = "right strap"
motifs = 9
sides = ["neck 3", "right armhole 7"]
from = "front.15"
to = "back.1"
[[strip]]
name = "left underarm"
motifs = 6
sides = ["hem 6", "left armhole 4"]
from = "front.1"
to = "back.15"
[[strip]]
name = "right underarm"
motifs = 6
sides = ["right armhole 4", "hem 6"]
from = "front.15"
to = "back.1"
[[motif]]
name = "front.1"
ring = ["neck 2", "join front.2", "hem 5", "join left underarm.1", "left armhole 0", "join left strap.1"]
[[motif]]
name = "back.15"
ring = ["neck 2", "join left strap.9", "left armhole 0", "join left underarm.6", "hem 5", "join back.14"]
[[motif]]
name = "front.15"
mirror_of = "front.1"
[[motif]]
name = "back.1"
mirror_of = "back.15"
"""
"""Sixty wheels."""

STRIP = """\
format = 1
[yoke]
loops = 16
joined = 3
[[strip]]
name = "strip"
motifs = 30
sides = ["edge 5", "edge 5"]
"""

PAIR = STRIP.replace("motifs = 30", "motifs = 2")


def grid(wide: int, high: int) -> str:
    """Rows of wheels, each joined to its neighbours on all four sides."""
    text = "format = 1\n[yoke]\nloops = 16\njoined = 2\n"

    def gap(row: int, column: int) -> str:
        inside = 0 <= row < high - 1 and 0 <= column < wide - 1
        return f"gap {row} {column}:" if inside else "outside"

    for r in range(high):
        for c in range(wide):
            ring = []
            for there, to, between in (
                (c + 1 < wide, (r, c + 1), gap(r, c)),
                (r + 1 < high, (r + 1, c), gap(r, c - 1)),
                (c > 0, (r, c - 1), gap(r - 1, c - 1)),
                (r > 0, (r - 1, c), gap(r - 1, c)),
            ):
                ring += [f"join row {to[0]}.{to[1]}"] if there else []
                ring.append(f"{between} {2 if there else 4}")
            listed = ", ".join(f'"{item}"' for item in ring)
            text += f'[[motif]]\nname = "row {r}.{c}"\nring = [{listed}]\n'
    return text


def drawn(text: str) -> ElementTree.Element:
    """The picture of a project, a valid SVG."""
    project = read(text)
    edges, _, _ = trace(project)
    return check_svg(yoke_picture(project.name or "yoke", project, edges))


def laid_out(text: str) -> list[tuple[Spread, Points]]:
    project = read(text)
    known, _ = names(project)
    parts = spread(lay(project, known))
    return [(part, placed(part, known.sections)) for part in parts]


def crossings(part: Spread, at: Points) -> int:
    """How many pairs of joints lie across each other."""

    def side(a: str, b: str, c: str) -> float:
        return ((at[b] - at[a]).conjugate() * (at[c] - at[a])).imag

    return sum(
        side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0
        for (a, b), (c, d) in combinations(part.joined, 2)
        if len({a, b, c, d}) == 4
    )


def turned_as_written(part: Spread, at: Points) -> bool:
    """Whether the joints of every wheel come counter-clockwise in the order of its ring."""
    for motif, darts in part.round_each.items():
        towards = [at[part.mates[dart][0]] - at[motif] for dart in darts]
        ahead = [*towards[1:], *towards[:1]]
        turn = sum(
            (math.atan2((a.conjugate() * b).imag, (a.conjugate() * b).real)) % math.tau
            for a, b in zip(towards, ahead, strict=True)
        )
        if len(darts) > 1 and abs(turn - math.tau) > 0.01:
            return False
    return True


@pytest.mark.parametrize(
    "text",
    [FERN, BIG, HEAD + COLLAR, STRIP, PAIR, grid(10, 6), grid(12, 2)],
    ids=["fern", "sixty wheels", "collar", "strip", "pair", "six rows", "two rows"],
)
def test_joined_wheels_touch_and_no_others_do(text: str) -> None:
    for part, at in laid_out(text):
        joined = {frozenset(pair) for pair in part.joined}
        for a, b in combinations(at, 2):
            far = abs(at[a] - at[b])
            if {a, b} in joined:
                assert far == pytest.approx(1, abs=0.002), (a, b)
            else:
                assert far > 1.03, (a, b)
        assert crossings(part, at) == 0
        assert turned_as_written(part, at)


@pytest.mark.parametrize("seed", range(12))
def test_wheels_that_cannot_all_touch_do_not_overlap(seed: int) -> None:
    draw = random.Random(seed)
    for _, at in laid_out(text_of(planar_yoke(draw), draw)):
        assert all(abs(a - b) > 0.998 for a, b in combinations(at.values(), 2))


def test_the_front_lies_below_with_the_left_of_the_wearer_on_the_right() -> None:
    ((_, at),) = laid_out(FERN)
    assert max(at[f"front.{n}"].imag for n in range(1, 6)) < 0
    assert min(at[f"back.{n}"].imag for n in range(1, 6)) > 0
    assert at["front.1"].real > at["front.5"].real
    assert at["left strap.2"].real > 0 > at["right strap.2"].real


@pytest.mark.parametrize("text", [FERN, BIG, "hand = 'left'\n" + FERN], ids=["fern", "big", "left"])
def test_the_arrows_go_round_each_edge_in_its_working_order(text: str) -> None:
    """Every run has an arrow; followed along the line they meet the wheels of the edge in order."""
    root = drawn(text)
    wheel_at = {
        called(group): complex(float(c.get("cx", 0)), float(c.get("cy", 0)))
        for c, group in zip(named(root, "wheel"), named(root, "name"), strict=True)
    }
    lines = {called(group): group for group in named(root, "edge-line")}
    edges, _, _ = trace(read(text))
    for edge in edges:
        numbers = re.findall(r"-?[0-9.]+ -?[0-9.]+(?= [MLAZ]|$)", lines[edge.name][1].get("d", ""))
        points = [complex(*map(float, pair.split())) for pair in numbers]
        met = []
        for point in points:
            on = [m for m, at in wheel_at.items() if abs(abs(point - at) - 0.54 * 112) < 0.3]
            met.append(set(on))
        place = 0
        for run in edge.runs:
            while run.motif not in met[place]:
                place += 1
                assert place < len(met), (edge.name, run.motif)
        assert sum(a.get("class") == "arrow" for a in lines[edge.name]) >= len(edge.runs) // 2


@pytest.mark.parametrize("hand", ["right", "left"])
def test_the_arrows_go_counter_clockwise_round_a_wheel_for_the_left_hand_clockwise(
    hand: str,
) -> None:
    root = drawn(f"hand = '{hand}'\n" + FERN)
    middles = [complex(float(c.get("cx", 0)), float(c.get("cy", 0))) for c in named(root, "wheel")]
    arrows = named(root, "arrow")
    assert len(arrows) > 40
    for arrow in arrows:
        numbers = [float(n) for n in arrow.get("points", "").split()]
        tip, a, b = (complex(*numbers[i : i + 2]) for i in (0, 2, 4))
        base = (a + b) / 2
        half = (tip + base) / 2
        middle = min(middles, key=lambda m: abs(abs(m - half) - 0.54 * 112))
        turn = ((base - middle).conjugate() * (tip - base)).imag  # the second axis is downwards
        assert turn < 0 if hand == "right" else turn > 0


def test_left_handed_the_same_wheels_are_met_backwards() -> None:
    right, left = drawn(FERN), drawn("hand = 'left'\n" + FERN)
    assert [c.attrib for c in named(right, "wheel")] == [c.attrib for c in named(left, "wheel")]
    assert "the arrows go as the left hand works" in texts(left)


def test_every_motif_is_named_once_with_its_free_places() -> None:
    root = drawn(FERN)
    _, report, _ = told(FERN)
    assert sorted(called(g) for g in named(root, "name")) == sorted(
        ring.motif for ring in report.rings
    )
    free = sum(i.number for ring in report.rings for i in ring.items if not i.is_joint)
    assert len(named(root, "loop")) == free
    counts = [int("".join(text.itertext())) for text in named(root, "count")]
    assert sum(counts) == free
    assert len(named(root, "joint")) == report.joints
    assert len(named(root, "seam")) == 4 * report.joints


def test_the_legend_counts_as_the_edges_do() -> None:
    root = drawn(FERN)
    for n, edge in enumerate(told(FERN)[0], 1):
        first = edge.runs[0].motif
        line = f"{n}  {edge.name}: {edge.places} loops on {len(edge.runs)} motifs, from {first}"
        assert line in texts(root)


def test_the_same_yoke_gives_the_same_bytes() -> None:
    project = read(FERN)
    edges, _, _ = trace(project)
    assert yoke_picture("x", project, edges) == yoke_picture("x", project, edges)


def test_a_name_is_text_whatever_stands_in_it() -> None:
    root = drawn(FERN.replace('"Fern yoke"', '"<script>alert(1)</script> & \\u0007"'))
    assert "<script>alert(1)</script> & \ufffd" in texts(root)
    assert not root.findall(f".//{SVG}script")


# --- faulty yokes -------------------------------------------------------------------


def faulty(root: ElementTree.Element, kind: str) -> list[str]:
    return ["".join(e.itertext()) for e in root.iter() if e.get("class") == f"faulty {kind}"]


def test_a_yoke_without_a_fault_has_no_mark() -> None:
    assert not [e for e in drawn(FERN).iter() if "faulty" in e.get("class", "")]


def test_a_strap_turned_round_has_its_names_in_the_wrong_faces() -> None:
    turned = FERN.replace('["left armhole 7", "neck 3"]', '["neck 3", "left armhole 7"]')
    assert sorted(faulty(drawn(turned), "name")) == ["left armhole?"] * 3 + ["neck?"] * 3


def test_a_wheel_whose_loops_do_not_add_up_shows_its_sum() -> None:
    old = '"left armhole 4", "join front.1", "hem 6"'
    root = drawn(FERN.replace(old, old.replace("6", "7")))
    assert len(faulty(root, "wheel")) == 2  # its mirror too
    assert texts(root).count("17 of 16") == 2


def test_a_joint_named_from_one_side_only_is_crossed_out() -> None:
    root = drawn(FERN.replace('to = "back.5"', 'to = "back.4"'))
    assert len(faulty(root, "joint")) == 2


def test_a_joint_to_nobody_is_a_stub_with_the_name() -> None:
    root = drawn(FERN.replace('to = "back.5"', 'to = "bock.5"'))
    assert "bock.5" in faulty(root, "joint")


def test_a_joint_whose_wheels_do_not_agree_on_it_shows_both_numbers() -> None:
    old = '"join front.1", "hem 6"'
    root = drawn(FERN.replace(old, '"join front.1 by 2", "hem 7"'))
    assert [sorted(text) for text in faulty(root, "joint")] == [sorted("2?3?")] * 2  # mirrored
    assert "broken lines, crosses and question marks: what does not fit together" in texts(root)


def test_a_ring_in_the_wrong_order_is_drawn_as_it_would_lie_flat() -> None:
    old = '"join left underarm.1", "left armhole 0", "join left strap.1"'
    new = '"join left strap.1", "left armhole 0", "join left underarm.1"'
    root = drawn(FERN.replace(old, new))
    assert texts(root).count("order?") == 2
    assert any("it would lie flat as drawn: " in text for text in texts(root))


WRITTEN = """\
format = 1
[[edge]]
name = "cuff"
runs = [{ section = "cuff", motifs = 7, places = 6 }]
[[edge]]
name = "strip"
closed = false
runs = [{ section = "strip", motifs = 3, places = 6 }]
[[edge]]
name = "pocket"
places = 90
of = "stitch"
[[edge]]
name = "flat"
closed = false
places = 33
of = "chain"
"""


@pytest.mark.parametrize("hand", ["right", "left"])
def test_edges_written_straight_down_are_a_ring_or_a_row(hand: str) -> None:
    root = drawn(f"hand = '{hand}'\n" + WRITTEN)
    assert len(named(root, "wheel")) == 10
    assert len(named(root, "loop")) == 7 * 6 + 3 * 6
    assert len(named(root, "joint")) == 7 + 2
    assert len(named(root, "start")) == 4
    assert "90 stitches" in texts(root)


def test_a_very_large_yoke_has_each_edge_drawn_by_itself() -> None:
    many = HEAD + COLLAR.replace("motifs = 7", "motifs = 150").replace("collar.7", "collar.150")
    root = drawn(many)
    assert len(named(root, "wheel")) == 2 * 150
    assert "more than 120 motifs are not drawn joined: each edge by itself" in texts(root)


def test_the_command_prints_the_picture(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert main(["yoke", "patterns/fern.toml", "--svg"]) == 0
    root = check_svg(capsys.readouterr().out)
    assert len(named(root, "wheel")) == 20


@pytest.mark.parametrize("sides", ['["neck 5", "hem 5"]', '["hem 5", "neck 5"]'])
def test_of_two_edges_that_curve_alike_the_neck_lies_inside(sides: str) -> None:
    """Its loops do not tell which side of a collar is which; its names do."""
    project = read(
        "format = 1\n[yoke]\nloops = 16\njoined = 3\n"
        f'[[strip]]\nname = "collar"\nmotifs = 12\nsides = {sides}\n'
        'from = "collar.12"\nto = "collar.1"\n'
    )
    known, _ = names(project)
    laid = lay(project, known)
    (part,) = spread(laid)
    runs = laid.joints.pairs
    assert {runs[motif][n][0].edge for motif, n in part.faces[0]} == {"hem"}
