"""Distances on cloth: no places are counted there, so that they say nothing, and are told."""

from __future__ import annotations

import pytest
from phrases.said import LOOPS, STITCHES, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border

TOLD = "asked taken-as-remark"
DISTANCES = {
    f"1 plain in edge, *2 chain, {row}; repeat from *": f"12 sc, 24 ch; 11 x 1 loop; {TOLD}"
    for row in (
        "skip a quarter of an inch, 1 plain in the edge",
        "miss about \u00bc inch, 1 plain",
        "skip 1/4 in., 1 plain",
        "1 plain \u00bc in. further on",
        "1 plain in edge one-half inch from last plain",
        "1 plain a little further on",
        "leave about a quarter of an inch, 1 plain",
        "leaving nearly an inch between, 1 plain",
        "miss a scant half inch or so, 1 plain in hem",
        "pass over 1\u00bd inches of the edge, 1 plain",
        "1 plain three quarters of an inch away from the last",
        "1 plain at a distance of half an inch",
        "miss a short distance, 1 plain in the linen",
    )
}


@cases((LOOPS, DISTANCES))
def test_a_distance_on_cloth_counts_no_places(on: On, row: str, comes_to: str) -> None:
    assert said(row, on).replace("; asked meets-its-start", "") == comes_to


@pytest.mark.parametrize(
    "row",
    [
        "1 plain in the half-inch hem, 2 chain; repeat",
        "12 chain half an inch long, 1 plain; repeat",
        "1 plain, 2 chain, 1 plain \u00bc inch from the corner; repeat",
        "1 plain, 2 chain, miss a quarter; repeat",
    ],
)
def test_what_is_no_distance_between_stitches_is_not_passed_over(row: str) -> None:
    told = said(row, STITCHES)
    assert "asked unknown-word" in told or "asked not-understood" in told


def test_a_skip_with_a_number_is_still_a_skip() -> None:
    assert said("1 plain, 2 chain, miss 1; repeat") == "6 sc, 12 ch; 6 x 2 loop"
    assert said("1 half treble, 2 chain, miss 1 a little further on; repeat") == (
        f"6 hdc, 12 ch; 6 x 2 loop; {TOLD}"
    )


def test_the_message_says_where_the_places_are() -> None:
    text = "terms: us\n1st row: *1 sc, ch 3, miss \u00be inch; repeat."
    _, told = read_border(Source("a.border", text))
    assert told[0].message == (
        '"miss \u00be inch" is a distance on the cloth, where no places are counted: the places of '
        "this edge are where the stitches go"
    )
