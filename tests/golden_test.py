"""The demos in patterns/: each is a golden case, and comes out as its comments say."""

from __future__ import annotations

import json

import pytest
from golden import write


@pytest.mark.parametrize("name", write.CASES)
def test_a_demo_is_counted_as_before(name: str) -> None:
    """Where this fails and the change is meant: `python tests/golden/write.py`, and look."""
    assert write.record(name) == (write.HERE / f"{name}.json").read_text(encoding="utf-8")


def test_the_fern_yoke_as_written_leaves_one_space_over() -> None:
    record = json.loads(write.record("fern-as-written"))
    open_rounds = [
        (w["edge"], r["round"]) for w in record["works"] for r in w["rounds"] if not r["closes"]
    ]
    assert open_rounds == [("neck", 6)]
    (told,) = [f for f in record["findings"] if f["code"] == "row-does-not-close"]
    assert "1 space is left over" in told["message"]


def test_the_fern_yoke_eased_closes_on_every_edge() -> None:
    record = json.loads(write.record("fern"))
    assert [w["edge"] for w in record["works"]] == ["neck", "left armhole", "right armhole", "hem"]
    assert all(w["closes"] for w in record["works"])
    left, right = (w["rounds"][-1]["stitches"] for w in record["works"][1:3])
    assert left == right


def test_stepped_squares_come_out_as_by_hand() -> None:
    """Row by row: the tr are one to begin with, one for each space, three for each block.

    1  6 spaces                     1 + 6 = 7        chains 6 * 2 = 12
    2  1 space, 4 blocks, 1 space   1 + 1 + 12 + 1 = 15               4
    3  block, space, three times    1 + 3 * (3 + 1) = 13              6
    4  2 spaces, 2 blocks, 2 spaces  1 + 2 + 6 + 2 = 11               8
    5  a block more, 6 spaces       1 + 3 + 6 = 10                   12
    6  one of 7 left off: 4 blocks, 1 space, 1 block  1 + 12 + 1 + 3 = 17   2
    """
    (work,) = json.loads(write.record("stepped-squares-19"))["works"]
    made = [(r["stitches"].get("dc"), r["chains"]) for r in work["rounds"]]
    assert made == [(7, 12), (15, 4), (13, 6), (11, 8), (10, 12), (17, 2)]
    assert work["closes"]
