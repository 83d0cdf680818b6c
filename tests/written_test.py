"""The tree written out: read again, it is the same tree, in any terms."""

from __future__ import annotations

import pytest
import trees
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from reading import QUESTIONS, read, read_items, read_text

from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border, Headings, Kind, Row, Stitches, Text
from border.text.written import write_border, write_item, write_kind, write_text

TERMS = ("us", "uk", "early")
_quick = settings(
    max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True
)


@_quick
@given(trees.borders())
def test_a_tree_written_and_read_is_the_same_tree(border: Border) -> None:
    text = write_border(border)
    again, findings = read_border(Source("again.border", text))
    assert {f.code for f in findings} <= QUESTIONS, (text, [(f.code, f.message) for f in findings])
    assert again == border, text


@_quick
@given(trees.borders(), st.sampled_from(TERMS))
def test_in_other_terms_the_rows_are_the_same(border: Border, terms: str) -> None:
    text = write_border(border, terms)
    again, findings = read_border(Source("again.border", text))
    assert {f.code for f in findings} <= QUESTIONS, (text, [(f.code, f.message) for f in findings])
    assert again is not None
    assert again.rows == border.rows, text
    assert again.headings.terms == terms


def test_a_border_as_it_is_written() -> None:
    text = """\
border: Fern edge
terms: us
chains count as stitches: no
worked: in rows
multiple of 10 plus 2

round 1: over each motif: 1 sc in first loop, *ch 5, skip 1 loop, 1 sc in next loop;
    repeat from *; at each joint: ch 2.
round 2: (2 dc, ch 2, 2 dc) in each ch-5 space, turn. (12 groups of 2, 3 repeats)
rounds 3-4 and 6: as rounds 1-2 and 5 of "cuff.border", join.
"""
    border, findings = read(text)
    assert [f.code for f in findings] == ["missing-row"]
    assert write_border(border) == text


def test_the_same_stitches_in_each_terms() -> None:
    border, _ = read("terms: us\nround 1: 2 sl st, 2 sc, 2 hdc, 2 dc, 2 tr, 2 dtr, 2 trtr.\n")
    assert write_border(border, "uk").splitlines()[2:] == [
        "round 1: 2 sl st, 2 dc, 2 htr, 2 tr, 2 dtr, 2 trtr, 2 quadtr."
    ]
    assert write_border(border, "early").splitlines() == [
        "terms: early",
        "half double means hdc",
        "triple treble means trtr",
        "",
        "round 1: 2 sl st, 2 sc, 2 half doubles, 2 dc, 2 tr, 2 long trebles, 2 triple trebles.",
    ]


def test_overrides_stand_in_their_own_terms_and_fall_away_in_others() -> None:
    border, _ = read("terms: us\ntreble means dc\ntr means tr\nround 1: 2 treble, 3 tr.\n")
    assert write_border(border).splitlines()[1:3] == ["treble means dc", "tr means tr"]
    assert read(write_border(border))[0] == border
    assert write_border(border, "uk") == "terms: uk\n\nround 1: 2 tr, 3 dtr.\n"


@pytest.mark.parametrize(
    ("kind", "one", "many"),
    [
        (Kind("st"), "st", "st"),
        (Kind("ch"), "ch", "ch"),
        (Kind("loop"), "loop", "loops"),
        (Kind("space"), "space", "spaces"),
        (Kind("space", 5), "ch-5 space", "ch-5 spaces"),
        (Kind("group"), "group", "groups"),
        (Kind("group", 3), "group of 3", "groups of 3"),
        (Kind("group", 3, "dc"), "3-tr group", "3-tr groups"),
        (Kind("block", None, "dc"), "block of tr", "blocks of tr"),
        (Kind("block", 5), "block of 5", "blocks of 5"),
        (Kind("picot"), "picot", "picots"),
        (Kind("joint"), "joint", "joints"),
        (Kind("dc"), "tr", "tr"),
    ],
)
def test_kinds_in_uk_terms(kind: Kind, one: str, many: str) -> None:
    assert write_kind(kind, "uk") == one
    assert write_kind(kind, "uk", True) == many


@pytest.mark.parametrize(
    "text",
    [
        "2 dc, ch 3; 1 dc in each st",
        "1 sc, ch 3; 1 sc in next st",
        "ch 5; 1 sc in each space",
        "1 sc in next st, ch 5; 1 sl st in first ch",
        "1 sc in next st, ch 5; 1 sc in each space",
        "1 sc, 1 dc in same place",
        "*1 sc in next st, (2 dc, ch 1) 3 times in next space; repeat from * to last 2 st",
        "*1 sc in next st; repeat from * 4 times in all, 1 dc in last st",
        "(3 dc) once",
        "((3 dc) once, ch 1) 3 times",
        "skip first st of next block",
        "3 dc together over the next 3 st",
        "2 dc in each of the next 2 loops, all together",
        "1 dc in next space or between next 2 dc",
    ],
)
def test_steps_that_need_care(text: str) -> None:
    assert write_text(read_text(text), "us") == text


def test_a_text_of_nothing_is_left_unworked() -> None:
    assert write_text(Text(()), "us") == "leave unworked"
    assert read_text("leave unworked") == Text(())


def test_steps_are_written_under_overrides() -> None:
    item = Stitches(2, "dc")
    assert write_item(item, "us") == "2 dc"
    assert write_item(item, "us", (("dc", "sc"), ("plain", "dc"))) == "2 plain"
    assert read_items("2 plain", headings="dc means sc\nplain means dc") == (item,)


def test_long_rows_are_broken_between_steps_and_never_before_a_head() -> None:
    names = " and ".join(["edging"] * 3)
    steps = ", ".join(["1 sc in next st"] * 12)
    border = Border(Headings(terms="us"), (Row((1,), read_text(steps)),))
    text = write_border(border)
    assert max(map(len, text.splitlines())) <= 88
    assert read(text)[0] == border
    clauses = (
        f"round 1: over {names}: {steps}; over edging: {steps}; at joint edging | round 1: 2 sc"
    )
    first, _ = read(f"terms: us\n{clauses}\n")
    assert read(write_border(first))[0] == replace(first)


@pytest.mark.parametrize("said", ["2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "111th"])
def test_ordinals_as_they_are_said(said: str) -> None:
    (item,) = read_items(f"1 dc in {said} loop")
    assert said in write_item(item, "us", ())


def test_rows_copied_several_times_are_repeated() -> None:
    border, _ = read("terms: us\nround 1: 1 dc in each st.\nrounds 2-5: repeat round 1 4 times.\n")
    assert "repeat round 1 4 times" in write_border(border)
