"""Edges as faces: checked against networkx's planar embeddings, and what does not lie flat."""

from __future__ import annotations

import random
from typing import TypeAlias

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from yokes import COLLAR, FERN, HEAD, faults, told

from border.yoke.edges import Edge

Embedding: TypeAlias = nx.PlanarEmbedding

LOOPS = 40


def embedding_of(rings: dict[int, list[int]]) -> Embedding:
    """The embedding in which every motif's neighbours stand counter-clockwise as in its ring."""
    embedding = nx.PlanarEmbedding()
    embedding.add_nodes_from(rings)
    for motif, ring in rings.items():
        before = None
        for other in ring:
            embedding.add_half_edge(motif, other, cw=before)  # `before` is clockwise of it
            before = other
    return embedding


def faces_of(embedding: Embedding) -> list[list[int]]:
    """The faces as networkx walks them, each as its motifs in order."""
    seen: set[tuple[int, int]] = set()
    return [
        embedding.traverse_face(v, w, mark_half_edges=seen)
        for v, w in embedding.edges()
        if (v, w) not in seen
    ]


def rings_of(embedding: Embedding) -> dict[int, list[int]]:
    return {v: list(embedding.neighbors_cw_order(v))[::-1] for v in embedding.nodes}


def planar_yoke(draw: random.Random) -> dict[int, list[int]]:
    """A connected yoke that lies flat: a piece of a lattice with some joints left out."""
    size = draw.randint(1, 4), draw.randint(1, 5)
    lattice = draw.choice(
        [nx.grid_2d_graph, nx.triangular_lattice_graph, nx.hexagonal_lattice_graph]
    )
    graph = nx.convert_node_labels_to_integers(lattice(*size))
    for joint in draw.sample(sorted(graph.edges), graph.number_of_edges() // 3):
        graph.remove_edge(*joint)
    biggest = max(nx.connected_components(graph), key=len)
    graph = nx.convert_node_labels_to_integers(graph.subgraph(biggest))
    flat, embedding = nx.check_planarity(graph)
    assert flat
    return rings_of(embedding)


def text_of(rings: dict[int, list[int]], draw: random.Random) -> str:
    """The yoke as a project: every run named by the face that networkx finds for its corner."""
    embedding = embedding_of(rings)
    face_at: dict[tuple[int, int], int] = {}
    for number, (v, w) in enumerate(embedding.edges()):
        marked: set[tuple[int, int]] = set()
        if (v, w) not in face_at:
            embedding.traverse_face(v, w, mark_half_edges=marked)
            face_at.update(dict.fromkeys(marked, number))
    text = f"format = 1\n[yoke]\nloops = {LOOPS}\njoined = 2\n"
    for motif, ring in rings.items():
        free = [0] * max(len(ring), 1)
        for _ in range(LOOPS - 2 * len(ring)):
            free[draw.randrange(len(free))] += 1
        items = []
        for other, loops in zip(ring, free, strict=False):
            items += [f"join m.{other}", f"face {face_at[other, motif]} {loops}"]
        turn = draw.randrange(max(len(items), 1))
        items = items[turn:] + items[:turn] or [f"face 0 {LOOPS}"]
        listed = ", ".join(f'"{item}"' for item in items)
        text += f'[[motif]]\nname = "m.{motif}"\nring = [{listed}]\n'
    return text


def rounds(edges: tuple[Edge, ...]) -> list[tuple[int, ...]]:
    return sorted(least([int(run.motif.removeprefix("m.")) for run in edge.runs]) for edge in edges)


def least(motifs: list[int]) -> tuple[int, ...]:
    """A round begun where it reads smallest."""
    return min(tuple(motifs[n:] + motifs[:n]) for n in range(len(motifs)))


@settings(deadline=None, max_examples=150)
@given(st.integers(0, 10**9))
def test_the_edges_of_a_flat_yoke_are_the_faces_of_its_embedding(seed: int) -> None:
    draw = random.Random(seed)
    rings = planar_yoke(draw)
    _, report, findings = told(text_of(rings, draw))
    assert findings == ()
    assert report.goes_together
    embedding = embedding_of(rings)
    assert (report.motifs, report.joints) == (len(rings), embedding.number_of_edges() // 2)
    assert rounds(report.edges) == sorted(map(least, faces_of(embedding) or [[0]]))


@settings(deadline=None, max_examples=150)
@given(st.integers(0, 10**9))
def test_a_yoke_lies_flat_when_networkx_says_so(seed: int) -> None:
    draw = random.Random(seed)
    rings = planar_yoke(draw)
    for motif in draw.sample(sorted(rings), min(len(rings), 2)):
        draw.shuffle(rings[motif])
    embedding = embedding_of(rings)
    try:
        embedding.check_structure()
        flat = True
    except nx.NetworkXException:
        flat = False
    _, report, findings = told(text_of(rings, draw))
    assert report.goes_together == flat
    assert [f.code for f in findings] == ([] if flat else ["does-not-go-together"])
    assert rounds(report.edges) == sorted(map(least, faces_of(embedding) or [[0]]))


def test_both_outcomes_are_met_by_the_test_above() -> None:
    crossed = {0: [1, 2, 3], 1: [0, 2, 3], 2: [0, 1, 3], 3: [0, 1, 2]}  # four, each joined to all
    with pytest.raises(nx.NetworkXException):
        embedding_of(crossed).check_structure()
    ((code, message, _),) = faults(text_of(crossed, random.Random(1)))
    assert code == "does-not-go-together"
    assert message.startswith(
        "the rings do not lie flat together: 4 motifs and 6 joints have 4 edges between them"
    )


# --- what is told of a yoke that does not go together -------------------------------

STRAP = 'sides = ["left armhole 7", "neck 3"]'
TURNED = 'sides = ["neck 3", "left armhole 7"]'
RING = (
    'ring = ["neck 2", "join front.2", "hem 5", "join left underarm.1", '
    '"left armhole 0", "join left strap.1"]'
)
BACKWARDS = (
    'ring = ["neck 2", "join left strap.1", "left armhole 0", "join left underarm.1", '
    '"hem 5", "join front.2"]'
)
EXCHANGED = (
    'ring = ["neck 2", "join left strap.1", "hem 5", "join left underarm.1", '
    '"left armhole 0", "join front.2"]'
)


def yoke(old: str, new: str) -> str:
    assert FERN.count(old) == 1
    return FERN.split("[[work]]")[0].replace(old, new)


def test_a_strip_turned_round_is_found_out() -> None:
    text = yoke(STRAP, TURNED)
    ((code, message, help_),) = faults(text)
    assert code == "edge-names-differ"
    assert message == (
        'one edge is called "neck" on back.5, but "left armhole" where it goes on to left strap.3'
    )
    assert help_ == f'turn the sides of strip "left strap" round: {STRAP}'
    edges, report, (finding,) = told(text)
    assert not report.goes_together
    assert [edge.name for edge in edges] == ["hem", "right armhole"]
    assert finding.span and text[finding.span.start : finding.span.end] in TURNED


def test_a_ring_written_backwards_is_found_out() -> None:
    ((code, _, help_),) = faults(yoke(RING, BACKWARDS))
    assert code == "does-not-go-together"
    assert help_ == f"write the ring of front.1 the other way round: {RING}"


def test_two_joints_of_a_ring_exchanged_are_found_out() -> None:
    ((code, _, help_),) = faults(yoke(RING, EXCHANGED))
    assert code == "does-not-go-together"
    assert help_ == f"exchange two joints in the ring of front.1: {RING}"


def test_a_strip_turned_round_whose_ends_have_their_own_rings() -> None:
    text = FERN.split("[[work]]")[0]
    text = text.replace('sides = ["neck 5", "hem 5"]', 'sides = ["hem 5", "neck 5"]', 1)
    ((code, _, help_),) = faults(text)
    assert code == "edge-names-differ"
    assert help_ == 'turn the sides of strip "front" round: sides = ["neck 5", "hem 5"]'


def test_the_help_of_every_fault_above_mends_it() -> None:
    for wrong, right in ((TURNED, STRAP), (BACKWARDS, RING), (EXCHANGED, RING)):
        text = yoke(right, wrong)
        ((_, _, help_),) = faults(text)
        assert faults(text.replace(wrong, help_.split(": ", 1)[1])) == []


def test_where_no_one_change_helps_the_rings_to_look_at_are_named() -> None:
    text = yoke(RING, EXCHANGED).replace(STRAP, TURNED)
    found = faults(text)
    assert {code for code, _, _ in found} == {"does-not-go-together", "edge-names-differ"}
    assert found[0][2] == (
        "look for items out of order in the rings with three joints or more: "
        "front.1, front.5, back.1, back.5"
    )


def test_a_name_misspelt_is_no_matter_of_turning() -> None:
    ((code, message, help_),) = faults(
        yoke('"hem 6", "join left underarm.2"', '"hme 6", "join left underarm.2"')
    )
    assert code == "edge-names-differ"
    assert (
        message
        == 'one edge is called "hem" on front.1, but "hme" where it goes on to left underarm.1'
    )
    assert help_ == (
        'if that is the same edge, call it "hem" in the ring of left underarm.1: '
        'ring = ["left armhole 4", "join front.1", "hem 6", "join left underarm.2"]'
    )


def test_two_edges_of_one_name() -> None:
    text = FERN.split("[[work]]")[0]
    text = text.replace("left armhole", "armhole").replace("right armhole", "armhole")
    ((code, message, _),) = faults(text)
    assert code == "edge-name-twice"
    assert message == '"armhole" is the name of one edge by front.1, and of another by front.5'


def test_a_part_joined_to_nothing_is_not_connected() -> None:
    text = (
        HEAD
        + COLLAR
        + COLLAR.replace("collar", "cuff")
        .replace("neck", "wrist")
        .replace("outside", "frill")
        .replace("motifs = 7", "motifs = 3")
        .replace("cuff.7", "cuff.3")
    )
    ((code, message, _),) = faults(text)
    assert code == "not-connected"
    assert message == "cuff.1 and 2 more are joined to nothing else of the yoke"
    edges, report, _ = told(text)
    assert {edge.name for edge in edges} == {"neck", "outside", "wrist", "frill"}
    assert not report.goes_together


def test_edges_that_pass_no_faulty_joint_are_still_made() -> None:
    text = yoke(', "join back.5"]', ', "join back.6"]')
    edges, report, findings = told(text)
    assert {f.code for f in findings} == {"no-such-motif"}
    assert {edge.name: edge.places for edge in edges} == {"neck": 88}
    assert not report.goes_together


def test_a_large_yoke_is_traced_at_once() -> None:
    text = HEAD + COLLAR.replace("7", "10000")
    _, report, findings = told(text)
    assert findings == ()
    assert [(edge.name, edge.places) for edge in report.edges] == [
        ("neck", 40_000),
        ("outside", 60_000),
    ]
