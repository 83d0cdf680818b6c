"""Known words in an order that makes no step, and brackets, stars and depth."""

from __future__ import annotations

import pytest
from reading import faults, read, row_faults

from border.text.source import Source
from border.text.syntax import read_border


@pytest.mark.parametrize(
    ("steps", "at", "help_"),
    [
        ("1 dc in", "in", "say which one"),
        ("1 dc in, ch 3", "in", "say which one"),
        ("ch 5, in next space", "in", "right behind its stitches"),
        ("3, ch 2", "3", "say of what"),
        ("3 st", "3", "3 dc in each st"),
        ("2 dc in blocks", "blocks", "say which"),
        ("2 dc in ch-3 spaces", "ch-3 spaces", '"in next ch-3 spaces"'),
        ("2 dc in each 3 spaces", "each 3 spaces", "in each of the next 3 spaces"),
        ("1 dc in first st 3 times", "3 times", "in brackets"),
        ("(1 dc) in next st 3 times", "in next st 3 times", "(…) 3 times in next st"),
        ("(1 dc) 3 times to end", "to end", "leave one of the two out"),
        ("(1 dc) to end in next st", "(1 dc) to end in next st", "(…) in each space"),
        ("((1 dc) to end) in next st", "(1 dc) to end", "say how many times"),
        ("2 dc in next space and next block", "next", "1 dc in next st"),
        ("1 dc in each space and centre of next block", "centre of next block", "alike"),
        ("1 dc in next st in next space", "in next space", "one place"),
        ("1 dc in 0th st", "0th", "1st"),
        ("1 dc between next 3 dc", "between next 3 dc", "between next 2 dc"),
        ("1 dc in each of the 2nd st", "each of 2nd", "every 2nd"),
        ("skip", "skip", "skip 2 st"),
        ("skip each st", "each st", "skip 2 st"),
        ("1 dc, with ch 2 between, in next st", "with ch 2 between", "3 dc, with ch 2"),
        ("(1 dc), with ch 2 between", "with ch 2 between", "in each space"),
        ("(1 dc) in next st, with ch 2 between", "with ch 2 between", "inside the bracket"),
        ("2 clusters in next st", "2 clusters in next st", "3-dc cluster"),
        ("2 dc to next space", "2 dc to next space", "only a sl st"),
        ("ch 3 as 2 dc", "ch 3 as 2 dc", "ch 3 as dc"),
        ("ch 3 as dc in each st", "ch 3 as dc in each st", "ch 3 as dc in next space"),
        ("begin in each st, 1 dc", "begin in each st", "begin in next space"),
        ("1 sc in next st, fasten off in next space, ch 3", "in", "fasten the thread"),
        ("leave unworked, 1 dc", "leave unworked", "alone"),
        ("2 dc; repeat, 1 dc in last st", "repeat", "put a *"),
        ("* ; repeat from *", "*", "before the first step"),
        ("()", "()", "leave it out"),
        ("0 dc in next st", "0", "leave the step out"),
        ("(1 dc) 0 times", "0 times", "from 1"),
        ("ch 3 dc 2 ch", "3", "comma"),
        ("1 dc in next st, as round 2", "as", "stands alone"),
        ("dc 1 2", "2", "say of what"),
    ],
)
def test_what_cannot_be_read_is_told_where_and_what_to_do(steps: str, at: str, help_: str) -> None:
    text = f"terms: us\nround 1: {steps}\n"
    border, findings = read(text)
    (finding,) = findings
    assert finding.code == "not-understood"
    assert finding.span is not None
    pointed = " ".join(text[finding.span.start : finding.span.end].replace("the ", "").split())
    assert pointed.startswith(at)
    assert finding.help is not None
    assert help_ in finding.help
    assert finding.round == 1
    assert border.rows[0].broken


@pytest.mark.parametrize(
    ("steps", "found"),
    [
        ("(2 dc, ch 1", [("not-understood", "(")]),
        ("2 dc, ch 1)", [("not-understood", ")")]),
        ("(2 dc, ch 1]", [("not-understood", "]")]),
        ("*2 dc in next st", [("star-without-repeat", "*")]),
        ("*2 dc, *ch 1; repeat from *", [("star-without-repeat", "*")]),
        ("2 dc in next st, repeat from *", [("repeat-without-star", "repeat from *")]),
        (
            "2 dc in next st, repeat from * 3 times, ch 2",
            [("repeat-without-star", "repeat from * 3 times")],
        ),
        ("1 dc in next st, begin in next space", [("begin-inside", "begin in next space")]),
        ("sl st to next st, 1 dc, sl st to next st, ch 1", [("begin-inside", "sl st to next st")]),
        ("over front: begin in next loop, 2 dc", [("begin-inside", "begin in next loop")]),
        ("*begin in next loop, 2 dc; repeat from *", [("begin-inside", "begin in next loop")]),
        ("1 dc in next st, skip first st", [("not-at-the-head", "skip first st")]),
    ],
)
def test_other_faults(steps: str, found: list[tuple[str, str]]) -> None:
    assert row_faults(steps) == found


def test_nesting_is_allowed_to_a_depth_of_twenty() -> None:
    assert row_faults("(" * 20 + "1 dc" + ", ch 1)" * 20) == []
    assert row_faults("(" * 21 + "1 dc" + ", ch 1)" * 21) == [("nested-too-deep", "(")]
    assert row_faults("*1 dc, " * 20 + "repeat from *, " * 20) == []
    assert row_faults("*1 dc, " * 21 + "repeat from *, " * 21) == [("nested-too-deep", "*")]


@pytest.mark.parametrize("marks", ["(", ")", "*", "()", "[", ":", "1 ", "dc 2 ", "and ", "--"])
def test_no_text_is_too_much(marks: str) -> None:
    border, findings = read_border(Source("t", f"terms: us\nround 1: {marks * 20_000}\n"))
    assert border is not None
    assert findings or marks == "dc 2 "


def test_one_bad_row_costs_one_finding_and_the_others_are_read() -> None:
    text = "terms: us\nround 1: 2 dc.\nround 2: 2 dc in.\nround 3: in next st.\nround 4: 3 dc.\n"
    border, findings = read(text)
    assert [f.round for f in findings] == [2, 3]
    assert [row.broken for row in border.rows] == [False, True, True, False]
    assert [row.numbers for row in border.rows] == [(1,), (2,), (3,), (4,)]


def test_each_bad_clause_costs_one_finding() -> None:
    found = row_faults("over front: 2 dc in; over back: in next st; elsewhere: ch 3")
    assert [code for code, _ in found] == ["not-understood", "not-understood"]


def test_findings_come_in_the_order_of_the_text() -> None:
    text = "round 1: 2 dc in.\nround 3: 2 htr.\nworked: so\n"
    assert [code for code, _ in faults(text)] == [
        "terms-missing",
        "not-understood",
        "missing-row",
        "term-unknown-here",
        "bad-heading",
    ]
