"""`border close`: what it prints of a border alone, on an edge, and of a project."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from border.cli import main
from border.showing.schema import schema

SHELLS = """\
border: Shells
terms: uk
round 1: *1 dc in next loop, ch 3, skip 2 loops; repeat from *.
round 2: *5 tr in next space, 1 dc in next space; repeat from *.
round 3: *1 dc in next dc, ch 5; repeat from *.
"""

WHEELS = """\
terms: us
round 1: over corner: 1 sc in first loop, ch 5, skip 2 loops, 1 sc in last loop;
    elsewhere, over each motif: 1 sc in first loop,
        *ch 5, skip 1 loop, 1 sc in next loop; repeat from * to end.
round 2: *1 sc in next space, ch 3, 1 dc in next space; repeat from *.
"""

PROJECT = """\
format = 1
name = "Two edges"
[[edge]]
name = "neck"
places = 20
[[edge]]
name = "cuff"
closed = false
runs = [{ section = "corner", motifs = 1, places = 4 }, { section = "cuff", motifs = 3, places = 5 }]
[[work]]
edge = "neck"
border = "shells.border"
[[work]]
edge = "cuff"
border = "wheels.border"
"""

Told = tuple[int, str, str]


@pytest.fixture
def told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Callable[..., Told]:
    """Runs `border close` beside the files above: exit code, what it prints, what it finds."""
    monkeypatch.chdir(tmp_path)
    for name, text in (
        ("shells.border", SHELLS),
        ("wheels.border", WHEELS),
        ("two.toml", PROJECT),
        ("halved.border", "terms: us\nround 1: 1 sc in each loop.\nround 2: 1 foo.\n"),
    ):
        (tmp_path / name).write_text(text, encoding="utf-8")

    def run(*arguments: str) -> Told:
        code = main(("close", *arguments))
        return code, *capsys.readouterr()

    return run


def record(told: Told) -> Any:
    found = json.loads(told[1])
    jsonschema.validate(found, {"$ref": "#/$defs/CloseRecord", "$defs": schema()["$defs"]})
    return found


def test_a_border_alone_is_told_round_by_round_and_as_a_whole(told: Callable[..., Told]) -> None:
    code, out, err = told("shells.border")
    assert (code, err) == (0, "")
    lines = [" ".join(line.split()) for line in out.splitlines() if line.strip()]
    assert lines == [
        "Shells",
        "a closed edge; stitch names: UK",
        "round 1 a multiple of 3 loops",
        "round 2 a multiple of 2 spaces",
        "round 3 any number of dc",
        "the whole border: a multiple of 6 loops, at least 6",
    ]


def test_on_a_number_of_loops_it_says_what_is_left_and_what_would_close(
    told: Callable[..., Told],
) -> None:
    code, out, _ = told("shells.border", "--loops", "20")
    assert code == 0
    assert out.splitlines()[-2:] == [
        "on 20 loops: round 1 leaves 2 loops over",
        "18 or 24 loops close",
    ]
    assert told("shells.border", "--loops", "18")[1].endswith("on 18 loops: every round closes\n")
    assert told("shells.border", "--loops", "1", "--open")[1].endswith("\n6 loops close\n")


def test_the_record_of_a_border_alone(told: Callable[..., Told]) -> None:
    found = record(told("shells.border", "--json"))
    assert found == {
        "format_version": 1,
        "closed": True,
        "multiple": 6,
        "plus": 0,
        "least": 6,
        "of": "loop",
        "rounds": [
            {"round": 1, "multiple": 3, "plus": 0, "of": "loop"},
            {"round": 2, "multiple": 2, "plus": 0, "of": "space"},
            {"round": 3, "multiple": 1, "plus": 0, "of": "sc"},
        ],
        "findings": [],
    }
    assert record(told("shells.border", "--open", "--json"))["closed"] is False


@pytest.mark.parametrize(
    ("loops", "left", "remedies"), [(18, 0, []), (20, 2, [-2, 4]), (21, 1, [-3, 3]), (2, 2, [4])]
)
def test_the_record_on_a_number_of_loops(
    told: Callable[..., Told], loops: int, left: int, remedies: list[int]
) -> None:
    found = record(told("shells.border", "--loops", str(loops), "--json"))
    assert (found["loops"], found["closes"], found["left_over"]) == (loops, not remedies, left)
    assert found["remedies"] == [{"by": by} for by in remedies]
    first = next((r for r in found["rounds"] if not r["closes"]), {"left_over": 0})
    assert first["left_over"] == left


def test_each_stretch_in_the_record(told: Callable[..., Told]) -> None:
    found = record(told("wheels.border", "--json"))
    assert (found["multiple"], found["plus"], found["least"]) == (None, None, None)
    first, second = found["rounds"]
    assert (first["multiple"], first["plus"], first["of"]) == (None, None, None)
    assert first["stretches"] == [
        {"clause": "over corner", "multiple": 1, "plus": 0, "least": 4, "of": "loop"},
        {
            "clause": "elsewhere, over each motif",
            "multiple": 2,
            "plus": 1,
            "least": 3,
            "of": "loop",
        },
    ]
    assert second == {"round": 2, "multiple": 2, "plus": 0, "of": "space"}
    assert [f["code"] for f in found["findings"]] == ["no-one-multiple"]


def test_a_border_by_clauses_on_an_edge(told: Callable[..., Told]) -> None:
    text = "over each motif: *1 sc in next loop, ch 3, skip 1 loop; repeat from * to end."
    Path("each.border").write_text(f"terms: us\nround 1: {text}\n")
    found = record(told("each.border", "--runs", "4,5,4,7", "--json"))
    assert (found["loops"], found["closes"], found["left_over"]) == (20, False, 2)
    assert found["remedies"] == []
    assert told("each.border", "--runs", "4,5,4")[1].endswith("round 1 leaves 1 loop over\n")
    on_plain = record(told("each.border", "--loops", "8", "--json"))
    assert on_plain["closes"] is False
    assert "not-covered" in [f["code"] for f in on_plain["findings"]]


def test_a_project_is_told_edge_by_edge(told: Callable[..., Told]) -> None:
    found = json.loads(told("two.toml", "--json")[1])
    jsonschema.validate(found, {"$ref": "#/$defs/CloseWorksRecord", "$defs": schema()["$defs"]})
    neck, cuff = found["works"]
    assert (neck["edge"], neck["multiple"], neck["loops"]) == ("neck", 6, 20)
    assert (neck["closes"], neck["left_over"]) == (False, 2)
    assert neck["remedies"] == [{"by": -2}, {"by": 4}]
    assert (cuff["edge"], cuff["closed"], cuff["multiple"], cuff["loops"]) == (
        "cuff",
        False,
        None,
        19,
    )
    only = json.loads(told("two.toml", "--work", "cuff", "--json")[1])
    assert [work["edge"] for work in only["works"]] == ["cuff"]
    assert told("two.toml")[1].startswith(
        "neck: Shells\nclosed edge of 20 loops; stitch names: UK\n"
    )


def test_a_border_with_a_faulty_round_is_told_as_far_as_it_goes(told: Callable[..., Told]) -> None:
    code, out, _ = told("halved.border", "--loops", "5", "--json")
    found = record((code, out, ""))
    assert code == 1
    assert (found["multiple"], found["closes"], found["remedies"]) == (None, False, [])
    assert found["rounds"][0]["multiple"] == 1
    assert [f["code"] for f in found["findings"]] == ["unknown-word"]


def test_a_file_that_is_not_there(told: Callable[..., Told]) -> None:
    code, out, err = told("gone.border")
    assert (code, out) == (2, "")
    assert "there is no such file" in err
