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
