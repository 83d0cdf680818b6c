"""The record: its keys, its schema, and that a large one is quickly printed."""

from __future__ import annotations

import copy
import json
from typing import Any

import jsonschema
import pytest
from counts_by_hand import counted, does_not_close, piece, round_count
from msgspec.structs import replace

from border.findings import Finding
from border.reckoning.thread import USUAL, thread_mm
from border.showing.record import check_record, count_record, findings_record, to_json
from border.showing.schema import schema
from border.text.source import Source


def printed(*findings: Finding, **of_round: Any) -> Any:
    count = replace(round_count(), **of_round)
    return json.loads(to_json(count_record(counted(piece(count), findings=findings))))


def validate(record: Any) -> None:
    jsonschema.Draft202012Validator(schema()).validate(record)


def test_the_record_of_a_count() -> None:
    record = printed()
    assert list(record) == ["format_version", "name", "works", "thread", "findings"]
    assert record["format_version"] == 1
    assert record["name"] == "Fern yoke"
    (work,) = record["works"]
    assert {key: work[key] for key in work if key != "rounds"} == {
        "edge": "neck",
        "border": "fern.border",
        "terms": "us",
        "closed": True,
        "places": 48,
        "closes": True,
    }
    (round_,) = work["rounds"]
    assert list(round_) == [
        "round",
        "closes",
        "stitches",
        "chains",
        "picots",
        "spaces",
        "repeats",
        "sections",
        "motifs",
        "joints",
        "adjustments",
        "thread_mm",
    ]
    assert round_["stitches"] == {"dc": 144, "sc": 8}
    assert (round_["chains"], round_["picots"], round_["spaces"]) == (120, 4, 40)
    assert round_["repeats"] == [
        {
            "times": 24,
            "takes": {"loop": 2},
            "makes": {"stitches": {"dc": 6}, "chains": 5, "picots": 0},
            "left_over": 0,
        }
    ]
    assert round_["sections"][1] == {
        "section": "left strap",
        "stitches": {"dc": 54},
        "chains": 45,
        "picots": 0,
    }
    assert round_["motifs"][5] == {
        "motif": "left strap.1",
        "section": "left strap",
        "stitches": {"dc": 15},
        "chains": 12,
        "picots": 0,
        "usual": False,
    }
    assert round_["joints"] == [
        {"between": ["front.5", "left strap.1"], "stitches": {"sc": 1}, "chains": 0, "picots": 0}
    ]
    assert round_["adjustments"] == [{"at": "left strap", "by": -1, "before_repeat": 7}]
    assert round_["thread_mm"] == thread_mm(1000, USUAL)


def test_repeats_are_left_out_where_there_is_none() -> None:
    record = printed(repeats=())
    assert "repeats" not in record["works"][0]["rounds"][0]
    validate(record)


def test_what_was_found_is_left_out_where_nothing_was() -> None:
    assert "found" not in printed()["works"][0]["rounds"][0]
    record = printed(done=True, found=(("spaces", 71), ("dc", 140)))
    assert record["works"][0]["rounds"][0]["found"] == {"spaces": 71, "dc": 140}
    validate(record)


def test_a_work_closes_when_all_of_it_was_counted_and_closes() -> None:
    for closes in (
        piece(round_count(1), round_count(2, closes=False)),
        replace(piece(round_count(1)), whole=False),
    ):
        assert count_record(counted(closes))["works"][0]["closes"] is False


def test_balls_are_left_out_where_no_ball_is_known() -> None:
    assert "balls" not in printed()["thread"]
    thread = replace(USUAL, ball_g=20)
    record = count_record(counted(piece(round_count()), thread=thread))
    assert record["thread"]["balls"] == 1
    validate(json.loads(to_json(record)))


def test_the_thread_is_the_sum_of_its_rounds() -> None:
    record = count_record(counted(piece(round_count(1), round_count(2)), piece(round_count(1))))
    rounds = [r["thread_mm"] for w in record["works"] for r in w["rounds"]]
    assert len(rounds) == 3
    assert record["thread"]["mm"] == pytest.approx(sum(rounds))


def test_a_finding_says_where_it_is() -> None:
    record = printed(does_not_close())["findings"]
    assert record == [
        {
            "code": "row-does-not-close",
            "severity": "error",
            "message": "round 1 does not close: 1 loop is left over on front.2",
            "help": "skip 1 loop, or work 1 loop twice",
            "file": "fern.border",
            "line": 2,
            "column": 1,
            "end_line": 2,
            "end_column": 9,
            "round": 1,
        }
    ]


def test_what_a_finding_does_not_know_is_left_out() -> None:
    assert findings_record([Finding("no-rows", "no rows")], {}) == [
        {"code": "no-rows", "severity": "error", "message": "no rows"}
    ]
    span = Source("gone.border", "x").span(0, 1)
    (record,) = findings_record([Finding("no-rows", "no rows", None, span)], {})
    assert record["file"] == "gone.border"
    assert "line" not in record


def test_the_record_keeps_to_its_schema() -> None:
    validate(printed(does_not_close()))


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("name",), 3),
        (("format_version",), 2),
        (("works", 0, "places"), "48"),
        (("works", 0, "extra"), 1),
        (("works", 0, "rounds", 0, "closes"), None),
        (("works", 0, "rounds", 0, "chains"), 1.5),
        (("works", 0, "rounds", 0, "motifs", 0, "usual"), "yes"),
        (("works", 0, "rounds", 0, "joints", 0, "between"), ["one"]),
        (("thread", "extra"), 1),
        (("findings", 0, "severity"), "fatal"),
    ],
)
def test_the_schema_refuses_what_is_no_record(path: tuple[Any, ...], value: Any) -> None:
    record = copy.deepcopy(printed(does_not_close()))
    at = record
    for step in path[:-1]:
        at = at[step]
    at[path[-1]] = value
    with pytest.raises(jsonschema.ValidationError):
        validate(record)


@pytest.mark.parametrize("key", ["format_version", "name", "works", "thread", "findings"])
def test_the_schema_misses_what_is_left_out(key: str) -> None:
    record = printed()
    del record[key]
    with pytest.raises(jsonschema.ValidationError):
        validate(record)


def test_the_schema_is_itself_in_order_and_holds_the_other_records() -> None:
    made = schema()
    jsonschema.Draft202012Validator.check_schema(made)
    assert {"CountRecord", "CheckRecord", "YokeRecord"} <= made["$defs"].keys()
    check = json.loads(to_json(check_record([does_not_close()], {})))
    jsonschema.Draft202012Validator(made | {"$ref": "#/$defs/CheckRecord"}).validate(check)


def test_any_name_can_be_printed() -> None:
    name = 'collé "neck"\n\x1b[31m 編'
    record = count_record(replace(counted(piece(round_count())), name=name))
    text = to_json(record)
    assert text.isascii()
    assert "\x1b" not in text
    assert json.loads(text)["name"] == name


def test_json_is_the_same_as_the_record_whatever_its_lines() -> None:
    values: list[dict[str, Any]] = [
        {},
        {"a": []},
        {"a": [{}]},
        {"a": {"b": [[1, 2], [{"c": None}]]}, "d": 1.5},
    ]
    for value in values:
        assert json.loads(to_json(value)) == value


def test_a_hundred_thousand_motifs_are_printed_one_to_a_line() -> None:
    """Ten rounds on ten thousand motifs."""
    round_ = round_count()
    many = replace(round_, motifs=round_.motifs * 1250)
    big = counted(piece(*[replace(many, number=n) for n in range(1, 11)]))
    text = to_json(count_record(big))
    assert text.count('"usual"') == 100_000
    assert max(line.count('"usual"') for line in text.splitlines()) == 1
