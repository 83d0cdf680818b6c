"""What is told of a round that does not close: by which repeat, and what would mend it."""

from __future__ import annotations

import pytest
from worked import codes, counts, motifs, plain, worked

from border.working.adjusting import Adjustment
from border.yoke.edges import Edge


def test_remedies_go_by_the_repeat_that_leaves_something_over() -> None:
    text = """
        round 1: over edge.1: *1 sc in next loop, skip 2 loops; repeat from *;
            elsewhere, over each motif: *1 dc in next loop, skip 1 loop; repeat from *.
    """
    found = next(f for f in worked(text, motifs(4, 3, 2))[1] if f.code == "row-does-not-close")
    assert "a repeat takes 3 loops on edge.1; a repeat takes 2 loops on edge.2" in found.message
    for part, skip, twice in (("edge.1", 1, 2), ("edge.2", 1, 1)):
        assert f"(by = {skip}), or work" in (found.help or "")
        assert f"(by = -{twice}) on {part}" in (found.help or "")
        for by in (skip, -twice):
            eased = worked(text, motifs(4, 3, 2), (Adjustment(1, part, by),))[1]
            told = " ".join(f.message for f in eased if f.code == "row-does-not-close")
            assert part not in told


def test_one_remedy_for_several_parts_is_told_once() -> None:
    text = "round 1: over each motif: *1 sc in next loop, skip 1 loop; repeat from *."
    found = next(f for f in worked(text, motifs(5, 5, 5))[1] if f.code == "row-does-not-close")
    assert (found.help or "").count("by = 1") == 1
    assert "on each of edge.1, edge.2 and edge.3, where" in (found.help or "")


def test_clauses_on_an_edge_without_motifs_are_told_once() -> None:
    text = "round 1: over corner: 1 sc in each loop; elsewhere, over each motif: 1 dc in each loop."
    assert codes(text, plain(6)) == ["not-covered"]
    assert codes(text, motifs(3, 3)) == ["unknown-name"]


@pytest.mark.parametrize("edge", [plain(1), motifs(4, 2)])
def test_no_adjustment_is_advised_where_no_repeat_is_made(edge: Edge) -> None:
    text = "round 1: *1 sc in next loop, skip 3 loops; repeat from *."
    if edge.runs:
        text = text.replace("1: *", "1: over each motif: *")
    found = next(f for f in worked(text, edge)[1] if f.code == "row-does-not-close")
    assert "not one repeat fits" in found.message
    assert "by =" not in (found.help or "")


def test_a_group_of_a_union_is_used_where_its_last_stitch_is_worked() -> None:
    """The dc are in the group: who works the last of them works into the last group."""
    text = """
        round 1: 3 dc in each loop.
        round 2: 1 sl st in the next 2 groups, *1 sc in 3rd group of 3 or dc, ch 1; repeat from *,
            1 dc in last dc.
    """
    assert counts(text, plain(9))[1].closes
    assert not counts(text.replace(",\n            1 dc in last dc", ""), plain(9))[1].closes
