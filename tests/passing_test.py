"""What is looked up among terminals: what stands before a place, and what goes on behind it."""

from __future__ import annotations

import pytest

from border.text.terminals import Terminal
from border.text.wording.passing import goes_on, made


def terminals(types: str) -> list[Terminal]:
    """`4 STITCH PREP`: a number stands for itself."""
    return [
        Terminal("NUM", word, n, n + 1, number=int(word))
        if word.isdigit()
        else Terminal(word, word, n, n + 1)
        for n, word in enumerate(types.split())
    ]


@pytest.mark.parametrize(
    ("before", "stitches"),
    [
        ("", 0),
        ("PREP", 0),
        ("PREP THE", 0),
        ("STITCH", 1),
        ("STITCH PREP NEXT", 1),
        ("4 STITCH PREP THE NEXT", 4),
        ("4 CLUSTER MOD PREP", 4),
        ("SEP STITCH PREP", 1),
        ("3 CH PREP", 0),
        ("CH 3 PREP", 0),
        ("4 STITCH SEP CH PREP", 0),
    ],
)
def test_the_stitches_before_a_place(before: str, stitches: int) -> None:
    assert made(terminals(before)) == stitches


@pytest.mark.parametrize(
    ("row", "on"),
    [
        ("KIND", False),
        ("KIND SEP", False),
        ("KIND SEP STITCH", True),
        ("KIND SEP CH", True),
        ("KIND SEP REPEAT", True),
        ("KIND SEP ENDING", False),
        ("KIND ENDING SEP STITCH", False),
        ("STITCH KIND RP", False),
    ],
)
def test_whether_a_row_goes_on_behind_a_step(row: str, on: bool) -> None:
    assert goes_on(terminals(row), 0) is on
