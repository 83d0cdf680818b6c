"""Row heads in all their forms, and rows that say only which row they are like."""

from __future__ import annotations

import pytest
from phrases.said import HEADINGS, LOOPS, On, last_of

from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Copy

HEADS = (
    "1st row:", "1st row.", "1st row--", "1st row.--", "1st Row.", "1st row,", "1st row;",
    "FIRST ROW.--", "1st round:", "1st round--", "Round 1:", "Row 1.", "Rnd 1.", "First round:",
    "1st.--", "1st:", "1st.", "1.--", "1.", "1:",
    "Next row:", "The next row:", "For the last row:", "Last row.", "EDGE.--", "Edging:",
    "1st row (lightest scarlet).--", "1st row (white):", "1st round (with the second shade):",
    "1st row, white.--", "1st row, right side.--", "1st row, wrong side:",
    "1st round with scarlet.--", "1st and last round:",
    "1st row (wrong side):", "1st rd.:", "1st R.--", "1st row", "1)", "1\u2014",
    "1st row of the edging:", "1st row of border.--", "For the edging:", "For the edge.—",
)  # fmt: skip
EDGES = (
    "Heading.--", "For the heading.--", "Heading:", "Top--", "For the upper edge.--", "Upper edge:",
    "Other edge of braid--", "Other edge of the braid:", "The opposite side of the foundation chain:",
    "Lower edge of the edging.—", "For the heading, work", "For the upper edge, make",
)  # fmt: skip
NO_EDGES = ("Heading.", "Top,", "Upper edge", "For the upper part:", "First wheel.--")
SEVERAL = {
    "1st and 2nd rows:": 2,
    "1st row and 2nd row.": 2,
    "1st to 3rd rows:": 3,
    "Rounds 1-3:": 3,
    "1st, 2nd, and 3rd:": 3,
    "1st, 2nd and 3rd rounds.--": 3,
    "1, 2.": 2,
    "1 and 2.": 2,
    "1, 2, 3.--": 3,
}
NO_HEADS = {
    "GOLD CIRCLE.--": "bad-heading",
    "1st STAR.--": "bad-heading",
    "1st and every alternate row:": "bad-heading",
    "Continue:": "bad-heading",
    "1st row. Outside edge.": "unknown-word",
}


LED = {
    "Border. 1st row.--": "Border",
    "For the upper edge, 1st row:": "For the upper edge",
    "Front.--1st round:": "Front",
    "Edging: 1st row.": "Edging",
    "For the border crochet the 1st round.--": "For the border crochet",
    "Border: 1st row--": "Border",
    "Shell edging. 1st row:": "Shell edging",
    "Front. 1st row (scarlet).--": "Front, scarlet",
}
CHAINS_TO_BEGIN = (
    "Make a chain of 12, join.", "Chain 12.", "Ch 12", "\nChain 12.", "Make a foundation of 12 ch.",
    "Begin with 12 chain.", "Commence with a chain of 12, turn.", "12 chain, join.",
    "A chain of 12.",
)  # fmt: skip
BIDDEN = {
    "Make a foundation chain of the length required and work the 1st row: 2 plain in each ch.": 12,
    "Make a chain of 12 stitches, turn, and crochet back as follows:--1st row. 2 plain in each ch.": (
        12
    ),
    "On one side of the mignardise work as follows: 1st row: 2 plain in each loop.": 12,
    "For the upper edge of the yoke crochet the 1st row.--2 plain in each loop.": 12,
    "For each star make a foundation of 8 ch., close these in a ring with 1 sl. st., and crochet "
    "the 1st round.--24 plain on the ring.": 1,
    "Make a chain of 8 stitches, join it into a circle, and work in this circle the 1st round: "
    "24 plain.": 1,
}
"""On so many loops: 24 sc each."""
GOES_ON = (
    ", 2 chain,\n3 treble", "\n2 chain, 3 treble", ",\n2 chain, 3 treble", ",\n\n2 chain, 3 treble",
    ", 2 chain\n3 treble", "\n\n2 chain, 3 treble", ",\n2 chain\nand 3 treble",
)  # fmt: skip
NOT_LED = (
    "Work as in the 1st row.", "Same as the 1st row.", "This completes the 1st row.", "Turn.",
    "Fasten off.", "3 plain.", "In the next loop.", "Before the 2nd row, turn.", "With white.",
    "One two three four five six seven.", "Repeat.", "As before.",
)  # fmt: skip


@pytest.mark.parametrize("text", BIDDEN)
def test_a_first_row_that_a_sentence_bids_to_work(text: str) -> None:
    assert last_of(text, On(BIDDEN[text])).split("; ")[0] == "24 sc"
    assert "does not close" not in last_of(text, On(BIDDEN[text]))


@pytest.mark.parametrize(("head", "note"), LED.items())
def test_words_before_a_row_head_are_its_note(head: str, note: str) -> None:
    assert last_of(f"{head} 2 plain in each loop.") == "24 sc; 12 x 1 loop"
    border, told = read_border(Source("book.border", f"{HEADINGS}{head} 2 plain in each loop.\n"))
    assert border is not None
    assert told == ()
    assert [row.note for row in border.rows] == [note]


@pytest.mark.parametrize(("words", "told"), [("Front.--", ""), ("Upper edge. ", "other-edge")])
def test_words_before_a_later_row_head_may_name_another_edge(words: str, told: str) -> None:
    rows = f"1st row: 1 plain in each.\n{words}2nd row: 1 treble in each."
    assert last_of(rows) == "; ".join(["12 dc; 12 x 1 st", *[f"asked {told}"][: bool(told)]])


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("Upper edge. 1st row:", "2nd row:"),
        ("1st row of the heading.\u2014", "2nd row of the heading.\u2014"),
        ("Heading, 1st Row\u2014", "Heading, 2nd Row\u2014"),
        ("First row of top:", "Second row:"),
    ],
)
def test_the_rows_of_a_part_that_counts_its_own_go_on_behind_the_others(
    first: str, second: str
) -> None:
    """They may be of another edge, which is told; and so do those that they copy."""
    rows = f"1st row: 1 plain in each.\n{first} 1 treble in each.\n{second} as 1st row.\n"
    border, told = read_border(Source("book.border", HEADINGS + rows))
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,), (2,), (3,)]
    assert [f.code for f in told] == ["other-edge"]
    last = border.rows[-1].body
    assert isinstance(last, Copy)
    assert last.rows == (2,)


def test_a_row_that_stood_already_is_told_where_no_part_begins() -> None:
    rows = "1st row: 1 plain in each.\n1st row: 1 treble in each.\n"
    _, told = read_border(Source("book.border", HEADINGS + rows))
    assert [f.code for f in told] == ["row-twice"]


@pytest.mark.parametrize("words", NOT_LED)
def test_words_of_a_row_lead_to_no_head(words: str) -> None:
    """They belong to the row before, and the head behind them is found as ever."""
    text = f"{HEADINGS}1st row: 1 plain in each.\n{words} 2nd row: 1 treble in each.\n"
    border, _ = read_border(Source("book.border", text))
    assert border is not None
    assert [(row.numbers, row.note) for row in border.rows] == [((1,), ""), ((2,), "")]


def test_words_below_an_empty_row_head_are_its_row() -> None:
    text = f"{HEADINGS}1st row:\nFrom the hem. 2nd row: 1 plain in each loop.\n"
    border, told = read_border(Source("book.border", text))
    assert border is not None
    assert [(row.numbers, row.note) for row in border.rows] == [((1,), ""), ((2,), "")]
    assert told


@pytest.mark.parametrize("head", HEADS)
def test_a_row_begins_with_its_head(head: str) -> None:
    assert last_of(f"{head} 2 plain in each loop.") == "24 sc; 12 x 1 loop"


@pytest.mark.parametrize("head", EDGES)
def test_an_edge_may_head_a_row_without_a_number(head: str) -> None:
    """In the first row it is the edge that is given; further on it may be another, and is told."""
    assert last_of(f"{head} 2 plain in each loop.") == "24 sc; 12 x 1 loop"
    told = last_of(f"1st row: 1 plain in each.\n{head} 1 treble in each.")
    assert told == "12 dc; 12 x 1 st; asked other-edge"


@pytest.mark.parametrize("words", NO_EDGES)
def test_an_edge_heads_a_row_only_with_a_colon_or_a_dash(words: str) -> None:
    text = f"{HEADINGS}1st row: 1 plain in each.\n{words} 1 treble in each.\n"
    border, told = read_border(Source("book.border", text))
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,)]
    assert {f.code for f in told} & {"unknown-word", "not-understood"}


def test_a_line_that_goes_on_is_no_head() -> None:
    text = f"{HEADINGS}1st row: 1 plain in each, *1 treble on\ntop: 2 chain; repeat.\n"
    border, _ = read_border(Source("book.border", text))
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,)]


def test_a_first_row_may_stand_behind_its_chain_by_its_number_alone() -> None:
    rows = "Chain 12, turn. 1. 2 plain in each ch.\n2. 1 treble in each.\n"
    assert last_of(rows) == "24 dc; 24 x 1 st; asked foundation-named"


def test_rows_may_run_on_in_one_line() -> None:
    rows = "1st row.--1 plain in each. 2nd row.--1 treble in each. 3rd row: same as 1st row."
    assert last_of(rows) == "12 sc; 12 x 1 st"
    within = (
        "1st row: 1 plain in each.\n2nd row: 1 treble in each, as 1st row. 3 treble in the last."
    )
    border, _ = read_border(Source("book.border", f"{HEADINGS}{within}\n"))
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,), (2,)]


@pytest.mark.parametrize(("head", "rows"), SEVERAL.items())
def test_a_head_of_several_rows_makes_so_many(head: str, rows: int) -> None:
    border, told = read_border(Source("book.border", f"{HEADINGS}{head} 1 plain in each.\n"))
    assert border is not None
    assert told == ()
    assert [row.numbers for row in border.rows] == [tuple(range(1, rows + 1))]
    assert last_of(f"{head} 1 plain in each.") == "12 sc; 12 x 1 st"


@pytest.mark.parametrize(("head", "code"), NO_HEADS.items())
def test_what_is_no_head_is_told(head: str, code: str) -> None:
    _, told = read_border(Source("book.border", f"{HEADINGS}{head} 2 plain in each loop.\n"))
    assert code in [f.code for f in told]


def test_a_bare_number_is_a_head_only_where_it_comes_next() -> None:
    later = "1. 1 plain in each.\n2. 1 treble in each.\n"
    assert last_of(later) == "12 dc; 12 x 1 st"
    assert last_of("1. 1 plain in each, 1 chain between.\n2nd. 1 treble in each.\n") == (
        "24 dc; 24 x 1 st"
    )


# --- rows like other rows ---------------------------------------------------------

FIRST = "1st row: *1 plain in next, 2 chain, miss 1; repeat.\n"
AGAIN = "9 sc, 18 ch; 9 x 2 st"
SAME = (
    "like the 1st", "exactly like the 1st row", "same as the 1st", "same as first row",
    "the same", "the same as the last", "work exactly the same as the first", "as 1st",
    "as 1st round", "as in the first row", "as before", "worked as before", "work as 1st row",
    "as last row", "repeat the 1st row", "repeat the last row",
)  # fmt: skip
SECOND = "2nd row: 1 treble in each.\n"
COPIES = {
    "3rd row: repeat from 1st row": f"{AGAIN}; asked rows-again",
    "3rd row: like the 1st and 2nd": "27 dc; 27 x 1 st",
    "3rd and 4th rows: like the 1st and 2nd": "27 dc; 27 x 1 st",
    "3rd row: like the 1st\n4th row: like the 2nd": "27 dc; 27 x 1 st",
    "3rd and 4th rows: repeat the 1st and 2nd rows": "27 dc; 27 x 1 st",
    "3rd to 4th rows: repeat the 1st and 2nd rows alternately": "27 dc; 27 x 1 st",
    "3rd, 4th and 5th: like the 2nd": "18 dc; 18 x 1 st",
    "3rd row: repeat the 2nd row twice": "18 dc; 18 x 1 st",
}
NO_COPIES = {
    "2nd row: begin and end as usual": "not-understood",
    "2nd row: work the other side to correspond": "not-understood",
    "2nd row: similar to the 1st": "unknown-word",
    "2nd row: same as last, but 3 plain": "exception-in-words",
    "2nd to 4th rows: repeat from the 1st to the last round, inclusive, thrice": "exception-in-words",
}


@pytest.mark.parametrize("words", SAME)
def test_a_row_like_the_one_before(words: str) -> None:
    assert last_of(f"{FIRST}2nd row: {words}.") == AGAIN


@pytest.mark.parametrize(("rows", "comes_to"), COPIES.items())
def test_rows_like_others(rows: str, comes_to: str) -> None:
    assert last_of(f"{FIRST}{SECOND}{rows}.") == comes_to


@pytest.mark.parametrize(("row", "code"), NO_COPIES.items())
def test_what_is_no_copy_is_told(row: str, code: str) -> None:
    assert f"asked {code}" in last_of(f"{FIRST}{row}.", LOOPS).split("; ")


def test_the_next_row_begins_below_a_repeat_that_no_stop_ends() -> None:
    """But a row that is named there without a colon or a dash is the one that is repeated."""
    rows = "1st row: 1 plain in each loop, with 3 chain between; repeat\n"
    assert last_of(f"{rows}2nd row.--4 plain in next loop; repeat") == "48 sc; 12 x 1 space"
    border, told = read_border(Source("b", f"{HEADINGS}{rows}3rd row. 4 plain in next loop."))
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,)]
    assert told


def test_a_row_whose_bracket_is_all_that_stands_there() -> None:
    rows = "1st row: 1 treble in each st.\n2nd row: 1 plain in each st.\n3rd row (same as first).\n"
    assert last_of(rows, LOOPS) == "12 dc; 12 x 1 st"


@pytest.mark.parametrize("chain", CHAINS_TO_BEGIN)
def test_the_chain_to_begin_with_ends_a_figure(chain: str) -> None:
    row = "1st row.--1 shell in next st, miss 2; repeat.\n"
    assert last_of(f"shell = 3 treble, 2 chain, 3 treble\n{chain}\n{row}") == (
        "24 dc, 8 ch; 4 x 3 loop; asked foundation-named"
    )


@pytest.mark.parametrize("behind", GOES_ON)
def test_a_figure_goes_on_over_lines(behind: str) -> None:
    row = "1st row.--1 shell in next st, miss 2; repeat.\n"
    assert last_of(f"shell = 3 treble{behind}\n{row}") == "24 dc, 8 ch; 4 x 3 loop"


def test_a_blank_line_ends_a_figure() -> None:
    row = "1st row.--1 shell in next st, miss 2; repeat.\n"
    assert last_of(f"shell = 3 treble\n\n3 treble more\n{row}") == (
        "12 dc; 4 x 3 loop; asked bad-heading"
    )
