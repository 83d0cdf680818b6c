"""Rows that copy a part of another, in the words of the books."""

from __future__ import annotations

import pytest
from phrases.said import On, last_of

from border.text.source import Source
from border.text.syntax import read_border

BEFORE = """shell = 3 treble, 2 chain, 3 treble
1st row: 1 plain in each loop.
2nd row: 1 treble in next plain, miss 1, shell in next plain, 4 chain, miss 1, 1 treble in next
plain, 2 chain, 1 treble in each of the next 2 plain; turn.
3rd row: 1 plain in each treble.
"""
"""A shell of 6 treble between 1 and 3 treble, on seven loops, and ten plain on that."""

RESTS = dict.fromkeys(
    (
        "{}, finish as 2nd row", "{}, finish like 2d row, turn", "{}, then finish as the 2nd row",
        "{}; and finish like the 2nd. Turn.", "{}, end as in 2nd row; turn", "{}; the rest as 2nd row",
        "{}, rest like 2d row",
        "{}, work the rest of the row like the second", "{}, finishing like the 2nd row",
        "{}, complete the row like the second row", "{}, go on as in the 2nd row",
        "{}, then end off as the 2nd row", "{}, finish the row as 2nd", "{}, finish same as 2d row",
        "{}, finish in the same way as the 2nd row",
    ),
    "5 sc, 9 dc, 9 ch",
)  # fmt: skip
"""What is said before them ends with the shell: the 4 chain and all behind it come next."""

OWN = "1 plain in each of the next 5 plain, 1 chain, shell in next plain"


def counted(row: str, before: str = BEFORE) -> str:
    """What a fourth row comes to on ten plain, and what is asked."""
    return last_of(f"{before}4th row: {row}\n", On(7, (), closed=False))


@pytest.mark.parametrize(("row", "comes_to"), RESTS.items())
def test_a_row_finished_as_another(row: str, comes_to: str) -> None:
    assert counted(row.format(OWN)) == f"{comes_to}; asked perhaps-this-part"


SEVEN = "1 plain in each of the next 7 plain"
HEADS = {
    f"as 2nd row to the end of the shell; then {SEVEN}": "7 dc, 7 sc, 2 ch",
    f"same as 2d row to end of shell; then {SEVEN}": "7 dc, 7 sc, 2 ch",
    f"like the 2nd row as far as the shell inclusive, then {SEVEN}": "7 dc, 7 sc, 2 ch",
    f"as 2nd row to the 4 chain; then 2 chain, {SEVEN}": "7 dc, 7 sc, 4 ch",
    f"same as 2d row to the 4 chain, then (2 chain, {SEVEN}) once": "7 dc, 7 sc, 4 ch",
    f"as 2nd row to the end of the 1st shell, then {SEVEN}": "7 dc, 7 sc, 2 ch",
    f"as 2nd row to the shell; then shell in next plain, {SEVEN}": "7 dc, 7 sc, 2 ch",
    "as 2nd row to the end of the first treble, then 1 plain in each of the next 9 plain": (
        "1 dc, 9 sc"
    ),
    f"begin as the 2nd row, then shell in next plain, {SEVEN}": "7 dc, 7 sc, 2 ch",
    f"begin as the 2nd row, then 5 chain, shell in next plain, {SEVEN}": "7 dc, 7 sc, 7 ch",
    "like the 2nd row, then 1 plain in each of the next 3 plain": "10 dc, 3 sc, 8 ch",
    "like the 2nd row, but do not turn; 1 plain in each of next 3 plain": "10 dc, 3 sc, 8 ch",
    "like the 2nd row; at the end, 1 plain in each of next 3 plain": "10 dc, 3 sc, 8 ch",
    "like the 2nd, but at the end of the row 1 plain in each of next 3 plain": "10 dc, 3 sc, 8 ch",
    "like the 2nd row to the end, then 1 plain in each of next 3 plain": "10 dc, 3 sc, 8 ch",
}


BEHIND = dict.fromkeys(
    (
        "{}, then same as 2nd row", "{}, then as the 2nd row, turn", "{}, and work same as 2nd row",
        "{}; then work like 2nd row.", "{}, and work the same as the 2nd row", "{}, then work as 2nd",
    ),
    "3 sc, 10 dc, 8 ch",
)  # fmt: skip
"""All of the other row behind what is said here."""


@pytest.mark.parametrize(("row", "comes_to"), BEHIND.items())
def test_another_row_behind_its_own_steps(row: str, comes_to: str) -> None:
    own = "1 plain in each of the next 3 plain"
    assert counted(row.format(own)) == f"{comes_to}; asked perhaps-this-part"


def test_another_row_that_begins_with_chains_behind_its_own_steps_is_asked() -> None:
    before = "1st row: 1 plain in each loop.\n2nd row: 3 chain, 1 plain in each plain.\n"
    row = "1 plain in next plain, then as 2nd row"
    told = last_of(f"{before}3rd row: {row}\n", On(7, (), closed=False))
    assert "asked part-unclear" in told


@pytest.mark.parametrize(("row", "comes_to"), HEADS.items())
def test_a_row_begun_as_another(row: str, comes_to: str) -> None:
    assert counted(row) == f"{comes_to}; asked perhaps-this-part"


STARRED = """1st row: 3 treble in next loop, *3 chain, 1 plain in next loop, 3 treble in next loop; repeat from *.
2nd row: 1 plain in each treble and plain.
3rd row: 3 treble in next plain, *3 chain, 1 plain in next, 3 treble in next; repeat from *.
4th row: 1 plain in each treble and plain.
"""
STARS = {
    "5 treble in next plain, then as 3rd row from the *": "26 dc, 7 sc, 21 ch; 7 x 2 sc",
    "5 treble in next plain; finish as the 3rd row from *": "26 dc, 7 sc, 21 ch; 7 x 2 sc",
    "as the 3rd row to the *, then 1 plain in each plain": "3 dc, 14 sc; 14 x 1 sc",
}


@pytest.mark.parametrize(("row", "comes_to"), STARS.items())
def test_a_row_parted_at_its_star(row: str, comes_to: str) -> None:
    said = last_of(f"{STARRED}5th row: {row}\n", On(3, (), closed=False))
    assert said == f"{comes_to}; asked perhaps-this-part"


UNCLEAR = (
    # nothing alike, other chains, another place, in a repeat, in two places
    "1 plain in each of the next 6 plain, miss 1, finish as the 2nd row",
    "1 plain in next, 5 chain, finish as 2nd row", "shell in next plain, 3 chain, finish as 2nd row",
    "shell in next treble, finish as 2nd row", "1 treble in next plain, finish as 2nd row",
    # where it is left
    "as 2nd row to the shell; then 1 plain in each of the next 7 plain",
    "as 2nd row to the last treble, then 1 plain in next plain", "as 2nd row to the *, then 1 plain in next",
    # what has no end, or is not there
    "1 plain in each, finish as 2nd row", "1 plain in next, finish as 3rd row",
    "shell in next plain, finish as 5th row", "begin as 2nd row, then 2 plain in next",
)  # fmt: skip


@pytest.mark.parametrize("row", UNCLEAR)
def test_which_part_is_not_sure_is_an_error(row: str) -> None:
    assert "asked part-unclear" in counted(row).split("; ")


def test_a_row_of_which_two_parts_may_be_meant_is_written_out_both_ways() -> None:
    border, told = read_border(
        Source("book", f"terms: uk\n{BEFORE}4th row: 1 treble in next plain, finish as 2nd row\n")
    )
    assert border is not None
    (one,) = (f for f in told if f.code == "part-unclear")
    assert one.help is not None
    rows = one.help.removeprefix("write this row out: ").split('" or "')
    assert [row.count("shell") + row.count("3 tr, ch 2, 3 tr") for row in rows] == [1, 0]


REMARKS = {
    "continue the same": "5 sc, 10 ch; 5 x 2 st",
    "finish as before": "10 sc; 10 x 1 dc; asked unknown-word; asked taken-as-remark",
}


@pytest.mark.parametrize(("words", "comes_to"), REMARKS.items())
def test_words_that_name_no_row_copy_no_part(words: str, comes_to: str) -> None:
    assert counted(f"1 plain in next, 2 chain, miss 1, {words}") == comes_to


MORE_BEHIND = {
    "5 ch, 1 plain in next st, finish as the 2nd row, turn, 3 treble in next st": "part-unclear",
    "5 ch, 1 plain in next st, finish as the 2nd row (5 treble in next st)": "part-unclear",
    "5 plain in next st, finish as the 9th row": "part-unclear",
    "as the 2nd row, but the last plain in the last st, turn, 3 treble in next st": (
        "exception-in-words"
    ),
}


@pytest.mark.parametrize(("row", "code"), MORE_BEHIND.items())
def test_no_step_behind_a_copy_is_lost(row: str, code: str) -> None:
    assert f"asked {code}" in counted(row).split("; ")


def test_rows_that_are_copied_together_are_not_said_out_as_one() -> None:
    two = "round 4-5: repeat these two rows, that is, 1 plain in each st.\n"
    assert "asked exception-in-words" in last_of(f"{BEFORE}{two}", On(7, (), closed=False))


def test_a_row_said_out_in_vain_leaves_its_words_to_be_told() -> None:
    """The row copied makes no htr, so it is not what is said; the next row's is told."""
    rows = "round 1: 1 sc in each st.\nround 2: as round 1, that is, 1 htr in each st.\n"
    _, told = read_border(Source("a", f"terms: us\n{rows}round 3: 1 htr in each st.\n"))
    assert [f.code for f in told] == ["exception-in-words", "term-unknown-here"]


def test_a_copy_may_stand_for_the_row_that_is_parted() -> None:
    copy = f"{BEFORE}4th row: as 2nd row.\n5th row: 1 plain in each treble.\n"
    said = last_of(f"{copy}6th row: {OWN}, finish as 4th row\n", On(7, (), closed=False))
    assert said.startswith("5 sc, 9 dc, 9 ch; ")


def test_no_row_grows_by_parts_of_others_without_end() -> None:
    one, other = (", ".join([step] * 1600) for step in ("1 sc", "1 dc"))
    rows = f"4th row: {one}.\n5th row: as 4th row, then {other}, 1 sc in next.\n"
    rows += "".join(f"{n}th row: as {n - 1}th row, then {one}.\n" for n in (6, 7))
    _, told = read_border(Source("book", f"terms: us\nplain means sc\n{BEFORE}{rows}"))
    messages = [f.message for f in told if f.code == "too-large"]
    assert messages == ["with a part of round 6 this row has more than 5000 steps"]
