"""The edges of a project: in working order, by either hand, from where the work starts."""

from __future__ import annotations

import pytest
from yokes import COLLAR, FERN, HEAD, faults, good, read, told

from border.yoke.edges import Edge, Run, edge_for, plain_edge, runs_edge

CUFF = """
format = 1
[[edge]]
name = "cuff"
runs = [
    { section = "cuff", motifs = 2, places = 6 },
    { section = "gusset", places = 4 },
    { section = "cuff", motifs = 1, places = 5 },
]
[[label]]
name = "end"
motifs = ["cuff.3"]
"""


def order(edge: Edge) -> list[str]:
    return [run.motif for run in edge.runs]


# --- edges of the yoke ----------------------------------------------------------


def test_the_neck_is_worked_from_left_to_right_on_the_front() -> None:
    edges, _ = good(FERN)
    assert order(edges["neck"]) == [
        *(f"front.{n}" for n in (1, 2, 3, 4, 5)),
        *(f"right strap.{n}" for n in (1, 2, 3)),
        *(f"back.{n}" for n in (1, 2, 3, 4, 5)),
        *(f"left strap.{n}" for n in (3, 2, 1)),
    ]
    assert order(edges["left armhole"]) == [
        *("front.1", "left strap.1", "left strap.2", "left strap.3"),
        *("back.5", "left underarm.2", "left underarm.1"),
    ]


def test_the_hem_goes_the_other_way_round_the_same_motifs() -> None:
    edges, report = good(FERN)
    assert order(edges["hem"])[:5] == [
        *("front.1", "left underarm.1", "left underarm.2", "back.5", "back.4"),
    ]
    assert (report.motifs, report.joints, len(report.edges)) == (20, 22, 4)


def test_places_are_the_free_ones_and_seam_loops_at_both_ends() -> None:
    edges, _ = good(FERN)
    runs = [(r.free, r.places) for r in edges["left armhole"].runs]
    assert runs == [(0, 2), (7, 9), (7, 9), (7, 9), (0, 2), (4, 6), (4, 6)]
    assert {e.name: e.places for e in edges.values()} == {
        "neck": 88,
        "hem": 102,
        "left armhole": 43,
        "right armhole": 43,
    }
    assert all(edge.closed and edge.of == "loop" for edge in edges.values())


def test_a_run_answers_to_motif_section_and_labels() -> None:
    edges, _ = good(FERN)
    hem = {run.motif: run for run in edges["hem"].runs}
    under = hem["left underarm.2"]
    assert under.section == "left underarm"
    assert under.names == {"left underarm.2", "left underarm", "underarm"}
    assert hem["front.2"].names == {"front.2", "front"}
    assert edges["neck"].known_names == edges["hem"].known_names
    assert edges["neck"].known_names >= {"underarm", "left underarm", "left underarm.1", "back.3"}


def test_the_right_side_is_the_mirror_of_the_left() -> None:
    edges, _ = good(FERN)
    left, right = edges["left armhole"].runs, edges["right armhole"].runs
    assert [r.places for r in left] == [r.places for r in (right[0], *right[:0:-1])]
    assert order(edges["right armhole"])[1:3] == ["right underarm.1", "right underarm.2"]


def test_the_left_hand_works_every_edge_the_other_way() -> None:
    right, _ = good(FERN + CUFF.replace("format = 1", ""))
    text = FERN.replace('name = "Fern yoke"', 'name = "Fern yoke"\nhand = "left"')
    left, _ = good(text + CUFF.replace("format = 1", ""))
    assert left.keys() == right.keys()
    for name, edge in left.items():
        other = right[name].runs
        assert edge.runs == (other[0], *other[:0:-1])
    opened = CUFF.replace('name = "cuff"', 'name = "cuff"\nclosed = false')
    edges, _ = good(opened.replace("format = 1", 'format = 1\nhand = "left"'))
    assert order(edges["cuff"]) == ["cuff.3", "gusset.1", "cuff.2", "cuff.1"]


def test_a_motif_with_no_joint_is_one_closed_run_without_seam_loops() -> None:
    edges, report = good(HEAD + 'seam_loops = 1\n[[motif]]\nname = "rose"\nring = ["rim 16"]\n')
    assert edges["rim"] == Edge(
        "rim",
        True,
        "loop",
        (Run("rose", "rose", 16, 16, frozenset({"rose"}), 16),),
        16,
        frozenset({"rose"}),
    )
    assert (report.motifs, report.joints) == (1, 0)


def test_a_motif_with_one_joint_has_seam_loops_at_both_its_sides() -> None:
    text = HEAD + "seam_loops = 1\n" + '[[motif]]\nname = "a.1"\nring = ["rim 13", "join b.1"]\n'
    edges, _ = good(text + '[[motif]]\nname = "b.1"\nring = ["rim 13", "join a.1"]\n')
    assert [(r.motif, r.section, r.free, r.places) for r in edges["rim"].runs] == [
        ("a.1", "a", 13, 15),
        ("b.1", "b", 13, 15),
    ]


def test_a_motif_met_twice_on_an_edge_has_two_runs() -> None:
    text = HEAD + '[[strip]]\nname = "s"\nmotifs = 3\nsides = ["rim 5", "rim 5"]\n'
    for number in (1, 3):
        text += f'[[motif]]\nname = "s.{number}"\nring = ["rim 13", "join s.2"]\n'
    edges, _ = good(text)
    assert order(edges["rim"]) == ["s.1", "s.2", "s.3", "s.2"]


def test_an_edge_begins_at_the_first_motif_of_the_file() -> None:
    edges, _ = good(HEAD + COLLAR)
    assert order(edges["outside"]) == [f"collar.{n}" for n in (1, 7, 6, 5, 4, 3, 2)]
    first = '[[motif]]\nname = "collar.4"\nring = ["neck 4", "join collar.5", "outside 6", '
    edges, _ = good(HEAD + first + '"join collar.3"]\n' + COLLAR)
    assert order(edges["outside"])[0] == "collar.1"  # a ring of a strip's motif moves nothing
    lone = '[[motif]]\nname = "tab"\nring = ["outside 13", "join collar.4"]\n'
    ring = '[[motif]]\nname = "collar.4"\nring = ["neck 4", "join collar.5", "outside 3", '
    ring += '"join tab", "outside 0", "join collar.3"]\n'
    before, _ = good(HEAD + lone + ring + COLLAR)
    after, _ = good(HEAD + COLLAR + lone + ring)
    assert order(before["outside"])[:2] == ["tab", "collar.4"]
    assert order(after["outside"])[:2] == ["collar.1", "collar.7"]


def test_picots_are_kept_as_what_the_edge_is_made_of() -> None:
    edges, _ = good(HEAD + 'of = "picot"\n' + COLLAR)
    assert {edge.of for edge in edges.values()} == {"picot"}


# --- edges written straight down --------------------------------------------------


def test_the_motifs_of_a_section_are_counted_on_through_its_runs() -> None:
    edges, report = good(CUFF)
    assert [(r.motif, r.section, r.places, set(r.names)) for r in edges["cuff"].runs] == [
        ("cuff.1", "cuff", 6, {"cuff.1", "cuff"}),
        ("cuff.2", "cuff", 6, {"cuff.2", "cuff"}),
        ("gusset.1", "gusset", 4, {"gusset.1", "gusset"}),
        ("cuff.3", "cuff", 5, {"cuff.3", "cuff", "end"}),
    ]
    assert edges["cuff"].places == 21
    assert (report.motifs, report.loops, report.edges) == (0, None, (edges["cuff"],))


def test_an_edge_of_plain_places() -> None:
    text = 'format = 1\n[[edge]]\nname = "pocket"\nplaces = 90\nof = "stitch"\nclosed = false\n'
    edges, _ = good(text)
    assert edges["pocket"] == Edge("pocket", False, "stitch", (), 90)


def test_edges_asked_for_without_a_project() -> None:
    assert plain_edge(78, True) == Edge("edge", True, "loop", (), 78)
    edge = runs_edge([6, 6, 3], closed=False)
    assert (edge.name, edge.closed, edge.of, edge.places) == ("edge", False, "loop", 15)
    assert [(r.motif, r.section, r.free, r.places) for r in edge.runs] == [
        ("edge.1", "edge", 6, 6),
        ("edge.2", "edge", 6, 6),
        ("edge.3", "edge", 3, 3),
    ]
    assert edge.known_names == {"edge", "edge.1", "edge.2", "edge.3"}


# --- work -------------------------------------------------------------------------


def work(edge: str, start: str | None = None) -> str:
    text = f'[[work]]\nedge = "{edge}"\nborder = "a.border"\n'
    return text + (f'start = "{start}"\n' if start else "")


@pytest.mark.parametrize("hand", ["right", "left"])
def test_a_piece_of_work_starts_where_it_says(hand: str) -> None:
    text = FERN.split("[[work]]")[0].replace("format = 1", f'format = 1\nhand = "{hand}"')
    text += work("neck", "back.3") + work("neck")
    edges, _ = good(text)
    back, front = (edge_for(w, list(edges.values())) for w in read(text).works)
    assert back and front
    assert front == edges["neck"]
    step = 1 if hand == "right" else -1
    assert order(back)[:3] == ["back.3", f"back.{3 + step}", f"back.{3 + 2 * step}"]
    at = front.runs.index(back.runs[0])
    assert back.runs == front.runs[at:] + front.runs[:at]


@pytest.mark.parametrize(
    ("edge", "start", "code", "message"),
    [
        ("nekc", None, "no-such-edge", 'there is no edge "nekc" to work on'),
        ("cuff", "cuff.4", "no-such-motif", 'there is no motif "cuff.4" for the work to start at'),
        (
            "neck",
            "left underarm.1",
            "bad-value",
            'the work is to start at "left underarm.1", which is no motif of the edge "neck"',
        ),
        (
            "cuff",
            "cuff.2",
            "bad-value",
            'the open edge "cuff" can only start at its end, not at cuff.2',
        ),
        ("cuff", "cuff.1", None, None),
    ],
)
def test_work_on_what_is_not_there(
    edge: str, start: str | None, code: str | None, message: str | None
) -> None:
    cuff = CUFF.replace("format = 1", "").replace('name = "cuff"', 'name = "cuff"\nclosed = false')
    found = [(c, m) for c, m, _ in faults(FERN + cuff + work(edge, start))]
    assert found == ([(code, message)] if code else [])


def test_an_inner_opening_may_have_no_loops_but_cannot_be_worked() -> None:
    text = HEAD + '[[strip]]\nname = "s"\nmotifs = 3\nsides = ["eye 0", "rim 10"]\n'
    text += 'from = "s.3"\nto = "s.1"\n'
    edges, report = good(text)
    assert list(edges) == ["rim"]
    assert [edge.name for edge in report.edges] == ["eye", "rim"]
    assert faults(text + work("eye")) == [
        ("edge-empty", 'the edge "eye" has no places to work into', "choose another edge")
    ]


@pytest.mark.parametrize(
    ("edge", "code"),
    [
        ("places = 0", "edge-empty"),
        ('runs = [{ section = "x", motifs = 3, places = 0 }]', "edge-empty"),
        ("places = 1000001", "too-large"),
        ("places = 1000000000000", "too-large"),
        ('runs = [{ section = "x", motifs = 1000000000, places = 1 }]', "too-large"),
        ('runs = [{ section = "x", motifs = 10, places = 1000000 }]', "too-large"),
        ("places = 1000000", None),
    ],
)
def test_an_edge_too_small_or_too_large_is_not_worked(edge: str, code: str | None) -> None:
    text = f'format = 1\n[[edge]]\nname = "e"\n{edge}\n' + work("e")
    edges, _, findings = told(text)
    assert [f.code for f in findings] == ([code] if code else [])
    assert len(edges) == (0 if code else 1)


def test_two_edges_cannot_have_one_name() -> None:
    text = HEAD + COLLAR + '[[edge]]\nname = "neck"\nplaces = 9\n'
    assert [f[:2] for f in faults(text)] == [
        ("edge-name-twice", 'there is more than one edge "neck"')
    ]
