"""Clauses, claims and copies: what a row is made of besides its steps."""

from __future__ import annotations

import pytest
from reading import faults, read, read_rows, row_faults

from border.text.tree import (
    AtJoint,
    AtJoints,
    Chains,
    Claim,
    Clause,
    Copy,
    Elsewhere,
    End,
    Ending,
    Kind,
    Over,
    OverMotifs,
    Scope,
    Stitches,
    Text,
)

DC = Stitches(2, "dc")


def clauses(steps: str) -> tuple[Clause, ...]:
    (row,) = read_rows(f"round 1: {steps}")
    assert isinstance(row.body, tuple)
    return row.body


@pytest.mark.parametrize(
    ("head", "scope"),
    [
        ("over each motif", OverMotifs()),
        ("over every motif", OverMotifs()),
        ("Over each motif of left strap", OverMotifs("left strap")),
        ("over front", Over("front")),
        ("over front.1", Over("front.1")),
        ("over left strap.2", Over("left strap.2")),
        ("over Front", Over("Front")),
        ("over 2 dc in next space", Over("2 dc in next space")),
        ("over left\n   strap", Over("left strap")),
        ("over edging", Over("edging")),
        ("over the back", Over("the back")),
        ("over the loop", Over("the loop")),
        ("over the 5 loops", Over("the 5 loops")),
        ("over dc", Over("dc")),
        ("over t-shirt", Over("t-shirt")),
        ("elsewhere", Elsewhere()),
        ("elsewhere, over each motif", Elsewhere(True)),
        ("elsewhere over each motif", Elsewhere(True)),
        ("at each joint", AtJoints()),
        ("at joint front.1 | left strap.1", AtJoint("front.1", "left strap.1")),
        ("at joint edge.1|edge.2", AtJoint("edge.1", "edge.2")),
    ],
)
def test_heads(head: str, scope: Scope) -> None:
    assert clauses(f"{head}: 2 dc") == (Clause(scope, Text((DC,))),)
    first, second = clauses(f"over back: ch 3; {head}: 2 dc")
    assert first == Clause(Over("back"), Text((Chains(3),)))
    assert second == Clause(scope, Text((DC,)))


def test_a_head_begins_at_the_last_separator() -> None:
    for separator in (",", ";", ".", ", and", "; then"):
        first, second = clauses(f"over front: 2 dc{separator} over back.2: ch 3.")
        assert first == Clause(Over("front"), Text((DC,)))
        assert second == Clause(Over("back.2"), Text((Chains(3),)))


def test_leave_unworked() -> None:
    first, second = clauses("over front: leave unworked; elsewhere: 2 dc, turn")
    assert first.text == Text(())
    assert second.text == Text((DC,), False, (End(Ending.TURN),))


def test_spans_of_clauses() -> None:
    text = "terms: us\nround 1: over front: 2 dc; at each joint: ch 3."
    (row,) = read(text)[0].rows
    assert isinstance(row.body, tuple)
    assert [text[c.head.start : c.head.end] for c in row.body] == ["over front:", "at each joint:"]
    assert text[row.body[1].text.span.start : row.body[1].text.span.end] == "ch 3."


@pytest.mark.parametrize(
    ("steps", "found"),
    [
        ("2 dc; over front: 2 dc", [("not-understood", "2 dc;")]),
        ("2 dc in next st: ch 3", [("not-understood", "2 dc in next st:")]),
        ("over: 2 dc", [("not-understood", "over:")]),
        ("at joint front: 2 dc", [("not-understood", "at joint front:")]),
        ("over front:", [("not-understood", "over front:")]),
        ("over front: ; over back: 2 dc", [("not-understood", ";")]),
        ("2 dc; ch 1 and\nround 3: 1 sc", [("not-understood", "round 3:")]),
    ],
)
def test_faults_of_clauses(steps: str, found: list[tuple[str, str]]) -> None:
    assert row_faults(steps) == found


# --- claims -----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("claim", "claims"),
    [
        ("(70 sc)", (Claim(70, Kind("sc")),)),
        ("(48 dc, 24 ch)", (Claim(48, Kind("dc")), Claim(24, Kind("ch")))),
        ("(48 dc and 24 ch in all)", (Claim(48, Kind("dc")), Claim(24, Kind("ch")))),
        ("(12 repeats)", (Claim(12, None),)),
        ("(1 repeat)", (Claim(1, None),)),
        ("[35 spaces]", (Claim(35, Kind("space")),)),
        ("(35 ch-5 spaces)", (Claim(35, Kind("space", 5)),)),
        ("(12 groups of 3)", (Claim(12, Kind("group", 3)),)),
        ("(70 sc) (12 repeats)", (Claim(70, Kind("sc")), Claim(12, None))),
        ("(0 picots)", (Claim(0, Kind("picot")),)),
    ],
)
def test_claims(claim: str, claims: tuple[Claim, ...]) -> None:
    for before in ("*2 dc; repeat from *. ", "2 dc in each st ", "over front: 2 dc. "):
        (row,) = read_rows(f"round 1: {before}{claim}")
        assert row.claims == claims
        bare = read_rows(f"round 1: {before}")[0]
        assert row.body == bare.body


def test_a_claim_behind_a_copy_and_before_a_turn() -> None:
    rows = read_rows("round 1: 2 dc.\nround 2: as round 1. (2 dc)\nround 3: 2 dc (2 dc), turn.")
    assert [row.claims for row in rows] == [(), (Claim(2, Kind("dc")),), (Claim(2, Kind("dc")),)]
    assert rows[2].body == Text((DC,), False, (End(Ending.TURN),))


@pytest.mark.parametrize(
    "steps",
    [
        "1 sc in next st, (2 dc, ch 3)",
        "1 sc in next st, (2 dc, 3 ch, 2 dc)",
        "1 sc in next st, (2 dc, 3 ch) twice",
        "1 sc in next st, (2 dc, 3 ch) in next space",
        "(2 dc, 3 ch)",
    ],
)
def test_brackets_that_are_no_claims(steps: str) -> None:
    (row,) = read_rows(f"round 1: {steps}")
    assert row.claims == ()


# --- copies -----------------------------------------------------------------------

THREE = "round 1: 2 dc.\nround 2: 2 dc.\nround 3: 2 dc.\n"


@pytest.mark.parametrize(
    ("head", "body", "copy"),
    [
        ("round 4", "as round 2", Copy((2,))),
        ("round 4", "same as 2nd row", Copy((2,))),
        ("round 4", "the same as the 2nd", Copy((2,))),
        ("round 4", "like the 1st round", Copy((1,))),
        ("round 4", "like 1st", Copy((1,))),
        ("round 4", "work as in round 2", Copy((2,))),
        ("round 4", "same as last row", Copy((3,))),
        ("round 4", "as previous round", Copy((3,))),
        ("rounds 4-5", "repeat rounds 2 and 3", Copy((2, 3))),
        ("rounds 4-5", "repeat the 2nd and 3rd rows", Copy((2, 3))),
        ("rounds 4-7", "repeat rounds 2 and 3 twice", Copy((2, 3), 2)),
        ("rounds 4-9", "repeat rounds 2-3 3 more times", Copy((2, 3), 3)),
        ("rounds 4-9", "repeat rounds 2-3 3 times more", Copy((2, 3), 3)),
        ("rounds 4-9", "repeat rounds 2, 3 three times", Copy((2, 3), 3)),
        ("rounds 4-5", "repeat rounds 2-3 once more", Copy((2, 3), 1)),
        ("rounds 4-5", 'as rounds 1-2 of "cuff.border"', Copy((1, 2), 1, "cuff.border")),
        ("rounds 4-5", "as rounds 1-2 of \u201cMy Cuff\u201d", Copy((1, 2), 1, "My Cuff")),
        ("round 4", "as round 2, turn", Copy((2,), ends=(End(Ending.TURN),))),
        ("round 4", "as round 2, join, fasten off",
         Copy((2,), ends=(End(Ending.JOIN), End(Ending.FASTEN_OFF)))),
    ],
)  # fmt: skip
def test_copies(head: str, body: str, copy: Copy) -> None:
    row = read_rows(f"{THREE}{head}: {body}.")[3]
    assert row.body == copy


@pytest.mark.parametrize(
    ("row", "found"),
    [
        ("round 4: as round 2, ch 3.", [("exception-in-words", "ch 3.")]),
        (
            "round 4: as round 2; 2 dc in next st.",
            [("exception-in-words", "2 dc in next st.")],
        ),
        (
            "round 4: as round 2, then 2 dc in next st.",
            [("perhaps-this-part", "as round 2")],
        ),
        ("round 4: 3 dc, finish as round 2.", [("part-unclear", "finish as round 2")]),
        ("round 4: as rounds 3-2.", [("not-understood", "as rounds 3-2")]),
        ("round 4: as rounds 2-3.\nround 5: 1 dc.", [("row-twice", "round 5:")]),
        ("rounds 4-6: repeat rounds 2 and 3.", [("copies-uneven", "rounds 4-6:")]),
        ("rounds 4-6: repeat rounds 2 and 3 twice.", [("copies-uneven", "rounds 4-6:")]),
    ],
)
def test_faults_of_copies(row: str, found: list[tuple[str, str]]) -> None:
    assert faults(f"terms: us\n{THREE}{row}\n") == found


def test_there_is_no_row_before_the_first() -> None:
    assert row_faults("same as last row") == [("no-such-row", "same as last row")]
