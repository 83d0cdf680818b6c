"""Lying flat and sewing on any border on any edge: nothing is lost, and no change makes it worse."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from lace import swatch
from msgspec.structs import replace
from random_borders import Adjustments, works

from border.reckoning.counts import count_edge
from border.reckoning.edge_shape import Shape, shape_of, with_turning
from border.reckoning.flat import how_it_lies
from border.reckoning.lace_pieces import pieces_of
from border.reckoning.measuring import measuring_line
from border.reckoning.mending import mended
from border.text.readings import Reading, read_rounds
from border.text.tree import Border
from border.working.adjusting import Adjustment
from border.working.fabric import CHAIN
from border.working.work import WorkedEdge, work
from border.yoke.edges import Edge

LOOPS = 16
slow = settings(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


def on_wheels(edge: Edge) -> Edge:
    """The edge with its runs on wheels, two loops more in each joint."""
    if not edge.closed or len(edge.runs) < 2:
        return edge
    runs = tuple(replace(run, loops=LOOPS, joined=(2, 2)) for run in edge.runs)
    return replace(edge, runs=runs)


def shape(edge: Edge, turns: float) -> Shape:
    made = shape_of(edge, 20.0, 100.0, turns)
    assert made is not None
    return made


def reading_of(border: Border) -> Reading:
    return read_rounds(border, lambda source, name: None)[0]


def laid(case: tuple[Edge, Border, Adjustments]) -> tuple[Edge, Reading, WorkedEdge]:
    edge, border, adjustments = case
    edge = on_wheels(edge)
    reading = reading_of(border)
    given_ = tuple(Adjustment(*a) for a in adjustments)
    return edge, reading, work(reading, edge, given_)


@slow
@given(works(), st.sampled_from((-540.0, -360.0, 0.0, 90.0, 360.0)))
def test_every_stitch_and_chain_has_its_length(
    case: tuple[Edge, Border, Adjustments], turns: float
) -> None:
    edge, reading, worked = laid(case)
    edge_shape = with_turning(shape(edge, turns), turns)
    sizes = swatch("dc", 1.5)
    lying = how_it_lies(worked, reading, edge_shape, sizes)
    assert len(lying) == len(worked.rounds)
    for lies, round_ in zip(lying, worked.rounds, strict=True):
        fabric = round_.fabric  # what an arch covers is not laid
        chains = sum(fabric.kinds[i] == CHAIN for i in fabric.atoms)
        stitches = len(fabric.atoms) - chains
        assert lies.length.worked.low == pytest.approx(1.5 * stitches)
        assert lies.length.worked.high == pytest.approx(1.5 * (stitches + chains))
        assert 0 <= lies.length.needed.low <= lies.length.needed.high
        assert 0 <= lies.away.low <= lies.away.high + 1e-9
        if lies.sections:
            assert sum(s.length.worked.high for s in lies.sections) == pytest.approx(
                lies.length.worked.high
            )
        if not edge_shape.arcs and turns == 0:
            assert lies.length.needed.high == pytest.approx(100.0)
        as_it_lies = lies.length.as_it_lies
        assert (
            lies.length.worked.low <= as_it_lies.low <= as_it_lies.high <= lies.length.worked.high
        )
    counts = count_edge(worked)
    assert len(measuring_line(counts, lying, ())) == len(counts)


@slow
@given(works())
def test_no_change_makes_it_worse_or_keeps_it_from_closing(
    case: tuple[Edge, Border, Adjustments],
) -> None:
    edge, reading, _ = laid(case)
    edge_shape = shape(edge, 0.0)
    sizes = swatch("dc", 1.5)

    def again(other: Reading) -> WorkedEdge:
        return work(other, edge)

    before = how_it_lies(again(reading), reading, edge_shape, sizes)
    found = mended(reading, again, edge_shape, sizes)
    # a round that could not be worked before may come into being, none goes
    assert len(found.rounds) >= len(before)
    changed_first = min((c.round for c in found.changes), default=None)
    for was, now in zip(before, found.rounds, strict=False):
        if changed_first is None or was.number < changed_first:
            assert was == now
        elif was.number == changed_first:
            assert now.worst < was.worst
    for change in found.changes:
        assert change.now != change.was


@slow
@given(works(), st.integers(0, 40), st.integers(1, 40))
def test_two_neighbouring_stretches_have_all_the_pieces_of_both(
    case: tuple[Edge, Border, Adjustments], start: int, end: int
) -> None:
    edge, _, worked = laid(case)
    n = edge.places
    cut = start % n
    for round_ in worked.rounds:
        of, whole = pieces_of(round_.fabric, (0, n))
        _, one = pieces_of(round_.fabric, (0, cut)) if cut else (of, ())
        _, other = pieces_of(round_.fabric, (cut, n))
        assert len(one) + len(other) == len(whole)
        if edge.closed:
            _, turned = pieces_of(round_.fabric, (cut, cut + n))
            assert sorted(p.motif for p in turned) == sorted(p.motif for p in whole)
