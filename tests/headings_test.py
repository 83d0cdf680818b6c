"""Headings, and the heads and numbers of rows."""

from __future__ import annotations

import pytest
from reading import faults, read, read_rows

from border.findings import Span
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Bare, Headings, Multiple, Worked

ROW = "\nround 1: 2 dc.\n"


def headings(text: str) -> Headings:
    border, findings = read(text + ROW)
    assert not findings, [(f.code, f.message) for f in findings]
    return border.headings


def test_all_headings() -> None:
    assert headings("""\
border: Fern edge            # a name
Terms: UK
chains count as stitches: no # yes | no
repeats: in all
rows without a repeat: are repeated
worked: one way
bare stitches: one in each
multiple of 10 plus 2
plain means sc
half-treble stitch means us hdc
""") == Headings(
        "Fern edge",
        "uk",
        False,
        True,
        True,
        Worked.ONE_WAY,
        Bare.EACH,
        Multiple(10, 2),
        (("plain", "sc"), ("half treble stitch", "hdc")),
    )


def test_headings_say_nothing_where_nothing_is_said() -> None:
    assert headings("terms: us") == Headings(terms="us")


@pytest.mark.parametrize(
    ("line", "multiple"),
    [
        ("multiple of 10 plus 2", Multiple(10, 2)),
        ("a multiple of ten plus two.", Multiple(10, 2)),
        ("multiple: 6", Multiple(6, 0)),
        ("multiple of 6", Multiple(6, 0)),
    ],
)
def test_multiples(line: str, multiple: Multiple) -> None:
    assert headings(f"terms: us\n{line}").multiple == multiple


def test_terms_must_be_said_once() -> None:
    assert faults("border: Fern" + ROW) == [("terms-missing", "border")]
    assert faults("terms: french" + ROW) == [("bad-heading", "terms: french")]
    assert faults("terms: us\nterms: uk" + ROW) == [("bad-heading", "terms: uk")]
    assert [code for code, _ in faults("round 1: 2 dc")] == ["terms-missing"]


@pytest.mark.parametrize(
    "line",
    [
        "chains count as stitches: perhaps",
        "repeats: less",
        "worked: round and round",
        "multiple of",
        "multiple of 0",
        "multiple of 10 plus",
        "border:",
        "hook: 1 mm",
        "Fern edge",
        "plain means bobble",
        "loop means dc",
        "3 means dc",
        "means dc",
    ],
)
def test_headings_that_cannot_be_read(line: str) -> None:
    assert faults(f"terms: us\n{line}" + ROW) == [("bad-heading", line)]


def test_two_meanings_of_one_word_are_told() -> None:
    text = "terms: us\nplain means sc\nplain means dc" + ROW
    assert faults(text) == [("bad-heading", "plain means dc")]


def test_a_heading_spelt_wrong_is_told_with_the_nearest() -> None:
    _, (finding,) = read("terms: us\nworkd: in rows" + ROW)
    assert finding.help is not None
    assert 'did you mean "worked:"?' in finding.help


def test_many_strange_lines_are_told_once() -> None:
    page = "terms: us\n" + "She went to the fair.\n" * 20
    assert [code for code, _ in faults(page + ROW)] == ["bad-heading"]


def test_a_heading_behind_the_first_row_is_told() -> None:
    text = "terms: us\nround 1: 2 dc,\nworked: in rows\nch 3.\n"
    assert faults(text) == [("bad-heading", "worked: in rows")]


# --- heads of rows ----------------------------------------------------------------


@pytest.mark.parametrize(
    "head",
    [
        "round 1:",
        "Round 1.",
        "row 1.",
        "row 1 -",
        "rnd 1:",
        "1st round.",
        "1st row\u2014",
        "1st row--",
        "1st round.\u2014",
        "1st round.--",
        "1st row,",
        "1st row;",
        "first row:",
        "the first row:",
        "round one:",
        "1st row\n",
        "1st:",
        "1st.\u2014",
        "round 1",
        "next row:",
        "edging:",
        "Edging.\u2014",
        "last row:",
    ],
)
def test_heads(head: str) -> None:
    (row,) = read_rows(f"{head} 2 dc, ch 3.")
    assert row.numbers == (1,)
    assert row == read_rows("round 1: 2 dc, ch 3.")[0]


@pytest.mark.parametrize(
    ("head", "numbers"),
    [
        ("rounds 2 and 4:", (2, 4)),
        ("rounds 2-5:", (2, 3, 4, 5)),
        ("rounds 2\u20135:", (2, 3, 4, 5)),
        ("2nd and 4th rounds:", (2, 4)),
        ("2nd row and 4th row:", (2, 4)),
        ("2nd to 5th rows:", (2, 3, 4, 5)),
        ("rounds 2, 4 and 5:", (2, 4, 5)),
        ("2d row--", (2,)),
        ("last row:", (2,)),
    ],
)
def test_heads_of_several_rows(head: str, numbers: tuple[int, ...]) -> None:
    border, _ = read(f"terms: us\nround 1: 2 dc.\n{head} 3 dc.\n")
    assert border.rows[1].numbers == numbers


def test_rows_go_on_over_lines_and_begin_at_their_start_only() -> None:
    (row,) = read_rows("round 1: 2 dc in\n 2nd st of next block, ch 3,\n 1 dc in next st")
    assert row == read_rows("round 1: 2 dc in 2nd st of next block, ch 3, 1 dc in next st")[0]


@pytest.mark.parametrize("word", ["as", "same as", "like", "as the"])
def test_a_line_that_goes_on_is_no_head(word: str) -> None:
    first, second = read_rows(f"round 1: 2 dc.\nround 2: {word}\nround 1.")
    assert (first.numbers, second.numbers) == ((1,), (2,))
    assert second.body == read_rows("round 1: 2 dc.\nround 2: as round 1.")[1].body


def test_a_list_of_rows_may_go_on_too() -> None:
    rows = read_rows("round 1: 2 dc.\nround 2: 3 dc.\nrounds 3-4: repeat rounds 1 and\nround 2.")
    assert [row.numbers for row in rows] == [(1,), (2,), (3, 4)]


def test_dashes_behind_heads_open_no_remark() -> None:
    rows = read_rows("1st row-- 2 dc.\n2nd row-- 3 dc -- a remark -- , ch 1.\n")
    assert [row.numbers for row in rows] == [(1,), (2,)]
    assert rows[1] == read_rows("1st row: 2 dc.\n2nd row: 3 dc, ch 1.")[1]


@pytest.mark.parametrize(
    ("rows", "found"),
    [
        ("round 1: 2 dc.\nround 3: 2 dc.", [("missing-row", "round 3:")]),
        ("round 2: 2 dc.", [("missing-row", "round 2:")]),
        ("rounds 1 and 3: 2 dc.", [("missing-row", "rounds 1 and 3:")]),
        ("round 1: 2 dc.\nround 1: 2 dc.", [("row-twice", "round 1:")]),
        ("rounds 1-3: 2 dc.\nround 2: 2 dc.", [("row-twice", "round 2:")]),
        ("round 2: 2 dc.\nround 1: 2 dc.", [("row-out-of-order", "round 1:")]),
        ("rounds 1 and 3: 2 dc.\nround 2: 2 dc.", []),
        ("round 1: 2 dc.\nlast row: 2 dc.\nround 2: 1 dc", [("row-twice", "round 2:")]),
        ("rounds 5-2: 2 dc.", [("not-understood", "rounds 5-2:")]),
        ("rounds 1-100000: 2 dc.", [("not-understood", "rounds 1-100000:")]),
    ],
)
def test_faults_of_numbering(rows: str, found: list[tuple[str, str]]) -> None:
    assert faults(f"terms: us\n{rows}\n") == found


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        ("round 1: 1 dc.\nround 9: 1 dc.", "rounds 2 to 8 are missing"),
        ("round 1: 1 dc.\nround 3: 1 dc.", "round 2 is missing"),
        ("rounds 1 and 3: 1 dc.", "round 2 is missing"),
        ("rounds 1 and 4: 1 dc.", "rounds 2 to 3 are missing"),
        ("rounds 1, 3 and 5: 1 dc.", "rounds 2, 4 are missing"),
        ("rounds 1, 3, 5, 7, 9 and 11: 1 dc.", "rounds 2, 4, 6, 8, 10 are missing"),
        ("rounds 1, 3, 5, 7, 9, 11 and 13: 1 dc.", "rounds 2, 4, 6, 8, 10 … are missing"),
    ],
)
def test_a_gap_is_told_once(rows: str, told: str) -> None:
    _, (finding,) = read(f"terms: us\n{rows}\n")
    assert (finding.code, finding.message) == ("missing-row", told)


def test_a_border_without_a_row() -> None:
    assert faults("terms: us\n") == [("no-rows", "")]
    border, (finding,) = read_border(Source("t", "terms: us\n"))
    assert (border, finding.span) == (None, Span("t", 0, 0))
    assert {code for code, _ in faults("")} == {"no-rows", "terms-missing"}


def test_a_copy_of_several_rows_makes_as_many() -> None:
    rows = read_rows(
        "round 1: 1 dc.\nround 2: 1 sc.\nround 3: repeat rounds 1 and 2 twice.\nlast row: 1 dc."
    )
    assert [row.numbers for row in rows] == [(1,), (2,), (3, 4, 5, 6), (7,)]


@pytest.mark.parametrize(
    "head", ["rounds 2 to 4", "rounds 2-4", "rounds 2 to the 4th", "2nd to the 4th rounds", "2nd to 4th round"]
)  # fmt: skip
def test_a_head_of_several_rounds(head: str) -> None:
    rows = read_rows(f"round 1: 1 sc in each st.\n{head}: 1 dc in each st.")
    assert [row.numbers for row in rows] == [(1,), (2, 3, 4)]


@pytest.mark.parametrize(
    ("head", "note"),
    [
        ("1st row (wrong side):", "wrong side"),
        ("1st row (lightest scarlet).--", "lightest scarlet"),
        ("1st row (white):", "white"),
        ("1st row (hem):", "hem"),
        ("1st row (as it lies).--", "as it lies"),
        ("1st row, white.--", "white"),
        ("1st round with scarlet.--", "with scarlet"),
        ("1st row.-- (White.)", "White"),
        ("1st row", ""),
    ],
)
def test_what_a_head_says_besides(head: str, note: str) -> None:
    (row,) = read_rows(f"{head} 1 dc in each st.")
    assert (row.numbers, row.note) == ((1,), note)
    (row,) = read_rows("1st row (2 dc) in next st.")
    assert row.note == ""


def test_a_mark_inside_a_heading_is_no_heading() -> None:
    for line in ("chains, count as stitches: no", "repeats -: more"):
        assert ("bad-heading", line) in faults(f"terms: us\n{line}{ROW}")
