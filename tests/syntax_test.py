"""Every surface form of single steps, and the tree that it becomes."""

from __future__ import annotations

import pytest
from reading import (
    CH,
    EACH_ST,
    LOOP,
    NEXT_SPACE,
    NEXT_ST,
    SPACE,
    dc,
    place,
    read,
    read_items,
    read_rows,
    row_faults,
)

from border.text.tree import (
    ST,
    Chains,
    Copy,
    Item,
    Picots,
    Skip,
    StartChain,
    Stitches,
    Text,
    Which,
    Whole,
)


def check(forms: str, item: Item) -> None:
    """Each line of the forms reads as the one item."""
    for form in forms.strip().splitlines():
        assert read_items(form) == (item,), form


def test_chains() -> None:
    check(
        """
        ch 3
        3 ch
        ch. 3
        chain 3
        3 chain stitches
        three chains
        make 3 ch
        CH 3.
        ch3
        """,
        Chains(3),
    )
    check("ch\n1 ch\na chain\nwork one chain", Chains(1))
    check("ch 24\ntwenty-four chains\ntwenty four ch", Chains(24))
    check("ch 124\na hundred and twenty-four ch\none hundred twenty-four ch", Chains(124))


def test_stitches_in_us_terms() -> None:
    check("2 dc\ndc 2\ntwo double crochets\n2 d.c.\n2 double crochet stitches\n2 dc st", dc(2))
    check("1 dc\na double\n1 double crochet", dc(1))
    for words, stitch in (
        ("2 sl st\n2 slip stitches\n2 ss\n2 sl. sts.", "ss"),
        ("2 sc\n2 single crochet\n2 singles\n2 s c\n2 s.c.", "sc"),
        ("2 hdc\n2 half double crochets\n2 half-doubles", "hdc"),
        ("2 tr\n2 trebles\n2 treble crochet", "tr"),
        ("2 dtr\n2 double trebles", "dtr"),
        ("2 trtr\n2 triple treble", "trtr"),
    ):
        check(words, Stitches(2, stitch))


@pytest.mark.parametrize(
    ("terms", "words", "stitch"),
    [
        ("uk", "2 dc", "sc"),
        ("uk", "2 double crochet", "sc"),
        ("uk", "2 htr", "hdc"),
        ("uk", "2 half trebles", "hdc"),
        ("uk", "2 tr", "dc"),
        ("uk", "2 trebles", "dc"),
        ("uk", "2 dtr", "tr"),
        ("uk", "2 double trebles", "tr"),
        ("uk", "2 trtr", "dtr"),
        ("uk", "2 triple treble", "dtr"),
        ("uk", "2 quadtr", "trtr"),
        ("uk", "2 quadruple trebles", "trtr"),
        ("uk", "2 single", "ss"),
        ("uk", "2 single crochet", "ss"),
        ("early", "2 single", "sc"),
        ("early", "2 double", "dc"),
        ("early", "2 treble", "tr"),
        ("early", "2 long trebles", "dtr"),
    ],
)
def test_stitches_in_other_terms(terms: str, words: str, stitch: str) -> None:
    assert read_items(words, terms) == (Stitches(2, stitch),)


def test_a_number_goes_with_the_word_that_is_left_to_it() -> None:
    assert read_items("1 tr 2 ch") == (Stitches(1, "tr"), Chains(2))
    assert read_items("dc 2 ch 3") == (dc(2), Chains(3))
    assert read_items("ch 5 1 dc") == (Chains(5), dc(1))
    assert read_items("skip 3 ch 2") == (Skip(3, None), Chains(2))
    assert read_items("skip 3 ch") == (Skip(3, Whole(CH)),)
    assert row_faults("ch 3 dc") == [("not-understood", "3")]


def test_separators_mean_nothing() -> None:
    expected = (dc(2), Chains(3), dc(1))
    for text in (
        "2 dc, ch 3, 1 dc",
        "2 dc; ch 3. 1 dc.",
        "2 dc and ch 3 then 1 dc",
        "work 2 dc, make 3 ch, now crochet 1 dc",
        "2 dc,\n  ch 3,\n  1 dc",
        "2 dc — ch 3 — 1 dc",
        "2\u00a0dc,\tch\u00a03, 1 dc\r\n",
    ):
        assert read_items(text) == expected, text


def test_remarks_and_comments_are_left_out() -> None:
    assert read_items("2 dc -- these are the petals -- , ch 3") == (dc(2), Chains(3))
    assert read_items("2 dc, # the petals\n  ch 3") == (dc(2), Chains(3))
    assert read_items("2 dc --over\ntwo lines-- ch 3") == (dc(2), Chains(3))
    assert row_faults("2 dc -- never closed, ch 3")[0] == ("not-understood", "--")


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("ch 3 as dc", StartChain(3, "dc")),
        ("ch 3, counts as dc", StartChain(3, "dc")),
        ("ch 3 (counts as first dc)", StartChain(3, "dc")),
        ("3 ch. as a dc", StartChain(3, "dc")),
        ("ch 7 as tr and ch 3", StartChain(7, "tr", 3)),
        ("ch 7 as tr and 3 ch", StartChain(7, "tr", 3)),
        ("ch 3 as dc in same space", StartChain(3, "dc", 0, place(Which.SAME, Whole(SPACE)))),
        ("ch 7 as tr and ch 3 in next st", StartChain(7, "tr", 3, NEXT_ST)),
        ("ch 1, not counted", StartChain(1, None)),
        ("ch 1 not counted", StartChain(1, None)),
        ("ch 2 (does not count as a stitch)", StartChain(2, None)),
    ],
)
def test_start_chains(text: str, start: StartChain) -> None:
    assert read_items(text) == (start,)


@pytest.mark.parametrize(
    ("text", "stitches"),
    [
        ("3 dc together over next 3 st",
         Stitches(3, "dc", place(Which.NEXT, Whole(ST), count=3), together=True)),
        ("dc 3 tog over next 3 st",
         Stitches(3, "dc", place(Which.NEXT, Whole(ST), count=3), together=True)),
        ("2 dc in each of next 2 loops, all together",
         Stitches(2, "dc", place(Which.NEXT, Whole(LOOP), count=2, each=True), together=True)),
        ("3-dc cluster in next space", Stitches(1, "dc", NEXT_SPACE, cluster=3)),
        ("2 3-dc clusters in next space", Stitches(2, "dc", NEXT_SPACE, cluster=3)),
        ("a cluster of 3 dc in next space", Stitches(1, "dc", NEXT_SPACE, cluster=3)),
        ("3 dc, with ch 2 between, in next space", Stitches(3, "dc", NEXT_SPACE, between=2)),
        ("3 dc with 2 chain between each in next space", Stitches(3, "dc", NEXT_SPACE, between=2)),
        ("3 dc divided by ch 2, in next space", Stitches(3, "dc", NEXT_SPACE, between=2)),
        ("3 dc, each separated by 2 ch, in next space", Stitches(3, "dc", NEXT_SPACE, between=2)),
        ("3 dc in next space, with ch 2 between", Stitches(3, "dc", NEXT_SPACE, between=2)),
        ("2 dc in each st, with ch 2 between", Stitches(2, "dc", EACH_ST, parted=2)),
        ("2 dc, with ch 1 between, in each st, with ch 3 between",
         Stitches(2, "dc", EACH_ST, between=1, parted=3)),
        ("1 dc, with ch 2 between, in each st", Stitches(1, "dc", EACH_ST, parted=2)),
        ("1 sc in back loop of next st", Stitches(1, "sc", NEXT_ST, modifiers=("back loop",))),
        ("1 sc in each st in back loops only", Stitches(1, "sc", EACH_ST, modifiers=("back loop",))),
        ("1 sc in next st, in the front loop", Stitches(1, "sc", NEXT_ST, modifiers=("front loop",))),
        ("1 sc in both threads of next st", Stitches(1, "sc", NEXT_ST, modifiers=("both threads",))),
        ("1 dc round the stem of next st", Stitches(1, "dc", NEXT_ST, modifiers=("round the stem",))),
        ("3 dc loosely", Stitches(3, "dc", modifiers=("loosely",))),
    ],
)  # fmt: skip
def test_stitches_with_more_to_them(text: str, stitches: Stitches) -> None:
    assert read_items(text) == (stitches,)


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("picot", (Picots(1, 3),)),
        ("a picot of 5", (Picots(1, 5),)),
        ("picot of 5 ch", (Picots(1, 5),)),
        ("5-ch picot", (Picots(1, 5),)),
        ("2 picots", (Picots(2, 3),)),
        ("3 picots of 4", (Picots(3, 4),)),
        ("1 purl", (Picots(1, 3),)),
        ("ch 4, 1 sc in the first of the 4 ch", (Picots(1, 4),)),
        ("ch 4, sl st in first of these 4 ch", (Picots(1, 4),)),
        ("ch 4 and 1 sc in 4th ch from hook", (Picots(1, 4),)),
        ("ch 6, sl st in 4th ch from the hook", (Chains(2), Picots(1, 4))),
    ],
)
def test_picots(text: str, items: tuple[Item, ...]) -> None:
    assert read_items(text) == items


def test_the_first_of_other_chains_is_a_place_and_closes_no_ring() -> None:
    assert row_faults("1 dc, 1 sc in the first of the 4 ch")[0][0] == "place-unclear"
    assert row_faults("ch 5, 1 sc in the first of the 4 ch")[0][0] == "not-understood"


def test_spans_cover_the_words_of_a_step() -> None:
    source = "terms: us\nround 1: ch 3, 2 dc, with ch 1 between, in next space, turn."
    (row,) = read(source)[0].rows
    assert isinstance(row.body, Text)
    stitches = row.body.items[1]
    assert source[stitches.span.start : stitches.span.end] == (
        "2 dc, with ch 1 between, in next space"
    )
    assert isinstance(stitches, Stitches)
    assert stitches.place is not None
    place_span = stitches.place.span
    assert source[place_span.start : place_span.end] == "in next space"
    assert source[row.head.start : row.head.end] == "round 1:"


def test_a_row_worked_as_before_copies_the_one_before_it() -> None:
    rows = read_rows("round 1: 1 dc in each st.\nround 2: work as before.\nround 3: as before.")
    copies = [row.body for row in rows[1:]]
    assert [copy.rows for copy in copies if isinstance(copy, Copy)] == [(1,), (2,)]
