"""Nodes of the tree say what they say, wherever they stand."""

from __future__ import annotations

from border.findings import Span
from border.text.tree import Begin, Chains, Clause, Kind, Over, Picots, Place, Text, Which, Whole

HERE, THERE = Span("a.border", 1, 5), Span("b.border", 7, 9)


def test_where_a_node_stands_takes_no_part_in_comparison() -> None:
    one, other = Chains(3, span=HERE), Chains(3, span=THERE)
    assert one == other
    assert hash(one) == hash(other)
    assert len({one, other, Chains(4, span=HERE)}) == 2


def test_nor_does_it_within_a_node_or_at_its_head() -> None:
    def clause(at: Span) -> Clause:
        place = Place(Which.NEXT, (Whole(Kind("space")),), span=at)
        text = Text((Chains(3, span=at), Begin(place, span=at)), span=at)
        return Clause(Over("neck"), text, head=at, span=at)

    assert clause(HERE) == clause(THERE)
    assert hash(clause(HERE)) == hash(clause(THERE))


def test_nodes_of_two_sorts_are_never_equal() -> None:
    assert Chains(3) != Picots(3, 3)
    assert Chains(3) != (3,)
    assert Begin(Place(Which.SAME, ())) != Place(Which.SAME, ())
    assert Chains(3) != Chains(4)


def test_a_node_shows_what_it_says() -> None:
    assert repr(Chains(3, span=HERE)) == "Chains(3)"
