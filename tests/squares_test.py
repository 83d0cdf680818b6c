"""Squares: the headings that say what they are, how rows of them are put, and what is asked."""

from __future__ import annotations

import re

import pytest
from reading import QUESTIONS, asked, faults, read, written

SPACE = "space = ch 2, skip 2, 1 dc in next st"
COUNTED = "chains count as stitches: yes"
BOTH = f"{COUNTED}\n{SPACE}\nblock = 3 dc"
ONE = "ch 2, skip 2, 1 dc in next st"


@pytest.mark.parametrize(
    ("row", "put"),
    [
        ("1 space, 1 block", f"ch 3 as dc, {ONE}, 1 dc in each of the next 3 st"),
        ("2 blk, 2 sp", f"ch 3 as dc, 1 dc in each of the next 6 st, ({ONE}) 2 times"),
        ("5 ch, 2 sps", f"ch 3 as dc, ({ONE}) 2 times"),
        ("all spaces", f"ch 3 as dc, ({ONE}) to end"),
        ("begin in 4th st, ch 5, 2 sps", f"begin in 4th st, ch 3 as dc, ({ONE}) 2 times"),
        ("with white, 1 sp", f"ch 3 as dc, {ONE}"),
        ("*1 sp; repeat from *", f"ch 3 as dc, *{ONE}; repeat from *"),
        ("over neck: 1 sp", f"over neck: {ONE}"),
    ],
)
def test_squares_are_put_as_steps(row: str, put: str) -> None:
    assert written(row, headings=BOTH) == put


@pytest.mark.parametrize(
    "heading",
    [
        "a space = 2 ch, miss 2, 1 dc",
        "sp. = 2 ch., skip 2, 1 dc in the next",
        "1 open square = ch 2, skip 2 st, and 1 dc in the next st",
        "o.s. = two chain, miss two, dc in next dc",
    ],
)
def test_a_space_as_books_say_it(heading: str) -> None:
    assert written("1 sp", headings=f"{COUNTED}\n{heading}") == f"ch 3 as dc, {ONE}"


@pytest.mark.parametrize(
    ("heading", "told"),
    [
        ("space = ch 2, skip 3, 1 dc", SPACE),
        ("space = ch 2, 1 dc in next dc", SPACE),
        ("space = ch 2, skip 2", SPACE),
        ("space = ch 2, skip 2, 2 dc in next st", SPACE),
        (f"{SPACE}\nblock = 4 dc", "block = 3 dc"),
        (f"{SPACE}\nblk = block of 4 dc", "block = 3 dc"),
        (f"{SPACE}\nblock = 3 tr", "block = 3 dc"),
        (f"{SPACE}\nsp = ch 2, skip 2, 1 dc", "leave one of them out"),
    ],
)
def test_headings_that_make_no_squares(heading: str, told: str) -> None:
    _, findings = read(f"terms: us\n{COUNTED}\n{heading}\nround 1: 1 dc in each st\n")
    assert [f.code for f in findings] == ["bad-heading"]
    assert told in (findings[0].help or "")


@pytest.mark.parametrize("terms", ["us", "uk", "early"])
def test_the_lines_that_are_shown_are_the_lines_to_write(terms: str) -> None:
    (help_,) = asked("1 open, 2 close, 1 sp", terms).values()
    lines = "\n".join(re.findall(r'"([^"]+)"', help_))
    assert lines.count("\n") == 2
    assert written("1 open, 2 close, 1 sp", terms, lines) == (
        f"ch 3 as dc, {ONE}, 1 dc in each of the next 6 st, {ONE}"
    )


def test_only_what_is_missing_is_asked_and_at_length_once() -> None:
    assert COUNTED not in asked("2 sps", headings=COUNTED)["squares-assumed"]
    assert COUNTED in asked("2 sps")["squares-assumed"]
    assert asked("2 sps", headings=SPACE) == {
        "squares-unclear": f'put among the headings, each on a line, as in most books: "{COUNTED}"'
    }
    _, findings = read("terms: us\nround 1: 5 dc, 2 sps.\nround 2: 2 sps.\n")
    assert [SPACE in (f.help or "") for f in findings] == [True, False]


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("5 ch, 2 blks", "5 ch"),
        ("4 ch, 2 sps", "4 ch"),
        ("8 ch, 2 sps", "8 ch"),
        ("3 ch, 7 dc, 2 sps", "7 dc"),
        ("1 dc in first st, ch 5, 2 sps", "ch 5"),
    ],
)
def test_chains_that_begin_no_square_are_asked(row: str, said: str) -> None:
    assert faults(f"terms: us\n{BOTH}\nround 1: {row}\n") == [("squares-unclear", said)]


def test_chains_before_the_turn_that_begin_no_square() -> None:
    text = f"terms: us\n{BOTH}\nrow 1: 2 sps, 5 ch, turn.\nrow 2: *1 sp; repeat from *."
    assert ("squares-unclear", "*1") in [(code, said[:2]) for code, said in faults(text)]


def test_so_many_stitches_as_blocks_is_told_once_and_settled() -> None:
    text = f"terms: us\n{BOTH}\nrow 1: 1 sp, 7 dc.\nrow 2: 4 dc, 1 sp, 4 dc.\n"
    assert faults(text) == [("squares-assumed", "7 dc")]
    assert not faults(text.replace("7 dc", "2 blk").replace("4 dc", "1 blk"))
    assert not faults(f"terms: us\n{BOTH}\nrow 1: 1 sp, 3 more dc, 6 dc.\n")


@pytest.mark.parametrize(
    ("row", "edit"),
    [
        ("sl st along 4 dc, 3 ch, 1 blk", "begin in 4th st"),
        (
            "ch 5, skip 3, 1 dc in each of next 2 ch, 1 dc on dc, 1 sp",
            "ch 3 as dc in next st, 3 dc in same st",
        ),
    ],
)
def test_what_is_done_at_an_edge_can_be_written_so(row: str, edit: str) -> None:
    told = asked(row, headings=BOTH)
    assert edit in told["squares-assumed"]
    assert "squares-assumed" not in asked(f"{edit}, 1 sp", headings=BOTH)


def test_a_block_as_a_figure_stays_one() -> None:
    assert written("*1 block in next st, ch 2; repeat", headings="block = 5 dc") == (
        "*(5 dc) in next st, ch 2; repeat from *"
    )
    assert written("2 blocks, ch 2, skip 2", headings="block = 5 dc") == (
        "(5 dc) 2 times, ch 2, skip 2"
    )


def test_a_space_that_begins_with_its_stitch_is_a_figure_like_any() -> None:
    figures = "open square = 1 dc, ch 2, skip 2\nclose square = 3 dc"
    assert written("2 open squares, 1 close square, 1 dc", headings=figures) == (
        "(1 dc, ch 2, skip 2) 2 times, (3 dc) once, 1 dc"
    )


@pytest.mark.parametrize(
    "row",
    [
        "1 sc in each space (15 spaces)",
        "1 sc in next space, skip 2 spaces, 1 sc in next 2 spaces",
        "1 sc in each of 3 spaces and 2 blocks",
        "*1 sc in next space; repeat from *, making 15 spaces in all",
        "1 sc in next space, *2 sc in each of the next 2 sps; repeat",
    ],
)
def test_places_and_counts_are_no_squares(row: str) -> None:
    _, plain = read(f"terms: us\nround 1: {row}\n")
    assert not {f.code for f in plain} & {"squares-unclear", "squares-assumed"}
    with_them, told = read(f"terms: us\n{BOTH}\nround 1: {row}\n")
    without, _ = read(f"terms: us\n{COUNTED}\nround 1: {row}\n")
    assert with_them.rows == without.rows
    assert {f.code for f in told} <= {f.code for f in plain} | QUESTIONS
