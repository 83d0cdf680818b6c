"""Every surface form of a step, and the tree that it becomes."""

from __future__ import annotations

import pytest
from reading import read_items, read_text, row_faults

from border.text.tree import (
    ST,
    Begin,
    Between,
    BetweenPicots,
    Bracket,
    Centre,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Text,
    ToLast,
    Which,
    Whole,
)

SPACE = Kind("space")
LOOP = Kind("loop")
BLOCK = Kind("block")
CH = Kind("ch")
DC = Kind("dc")
NEXT_ST = Place(Which.NEXT, (Whole(ST),))
NEXT_SPACE = Place(Which.NEXT, (Whole(SPACE),))
EACH_ST = Place(Which.EACH, (Whole(ST),))


def place(which: Which, *targets: Target, count: int = 1, each: bool = False) -> Place:
    return Place(which, targets, count, each)


def dc(count: int, where: Place | None = None) -> Stitches:
    return Stitches(count, "dc", where)


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
    check("dc\n1 dc\na double\n1 double crochet", dc(1))
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
    ("text", "where"),
    [
        ("next st", NEXT_ST),
        ("the next stitch", NEXT_ST),
        ("a st", NEXT_ST),
        ("one stitch", NEXT_ST),
        ("next loop", place(Which.NEXT, Whole(LOOP))),
        ("next chain loop", place(Which.NEXT, Whole(LOOP))),
        ("next hole", place(Which.NEXT, Whole(LOOP))),
        ("next arch", place(Which.NEXT, Whole(LOOP))),
        ("next sp", NEXT_SPACE),
        ("next chain space", NEXT_SPACE),
        ("next ch. sp.", NEXT_SPACE),
        ("next ch-5 space", place(Which.NEXT, Whole(Kind("space", 5)))),
        ("next ch 5 space", place(Which.NEXT, Whole(Kind("space", 5)))),
        ("next 5-ch space", place(Which.NEXT, Whole(Kind("space", 5)))),
        ("next 5 chain space", place(Which.NEXT, Whole(Kind("space", 5)))),
        ("next ch-5 loop", place(Which.NEXT, Whole(Kind("space", 5)))),
        ("next 5-chain loop", place(Which.NEXT, Whole(Kind("space", 5)))),
        ("next ch", place(Which.NEXT, Whole(CH))),
        ("next dc", place(Which.NEXT, Whole(DC))),
        ("next group", place(Which.NEXT, Whole(Kind("group")))),
        ("next group of 3", place(Which.NEXT, Whole(Kind("group", 3)))),
        ("next 3-dc group", place(Which.NEXT, Whole(Kind("group", 3, "dc")))),
        ("next group of 3 dc", place(Which.NEXT, Whole(Kind("group", 3, "dc")))),
        ("next block", place(Which.NEXT, Whole(BLOCK))),
        ("next block of 5", place(Which.NEXT, Whole(Kind("block", 5)))),
        ("next 5-dc block", place(Which.NEXT, Whole(Kind("block", 5, "dc")))),
        ("next picot", place(Which.NEXT, Whole(Kind("picot")))),
        ("next joint", place(Which.NEXT, Whole(Kind("joint")))),
        ("the next 3 st", place(Which.NEXT, Whole(ST), count=3)),
        ("each of the next 2 spaces", place(Which.NEXT, Whole(SPACE), count=2, each=True)),
        ("each of next 2 5-ch spaces", place(Which.NEXT, Whole(Kind("space", 5)), count=2, each=True)),
        ("next 3 chain spaces", place(Which.NEXT, Whole(SPACE), count=3)),
        ("the space", place(Which.THE, Whole(SPACE))),
        ("first loop", place(Which.FIRST, Whole(LOOP))),
        ("the 1st loop", place(Which.FIRST, Whole(LOOP))),
        ("each of the first 2 loops", place(Which.FIRST, Whole(LOOP), count=2, each=True)),
        ("last st", place(Which.LAST, Whole(ST))),
        ("the last 3 st", place(Which.LAST, Whole(ST), count=3)),
        ("centre 3 loops", place(Which.CENTRE, Whole(LOOP), count=3)),
        ("each of the middle 2 loops", place(Which.CENTRE, Whole(LOOP), count=2, each=True)),
        ("2nd st", place(Which.NTH, Whole(ST), count=2)),
        ("2d st", place(Which.NTH, Whole(ST), count=2)),
        ("the third space", place(Which.NTH, Whole(SPACE), count=3)),
        ("twenty-first st", place(Which.NTH, Whole(ST), count=21)),
        ("each st", EACH_ST),
        ("every stitch", EACH_ST),
        ("each of the blocks", place(Which.EACH, Whole(BLOCK))),
        ("every 3rd space", place(Which.EVERY, Whole(SPACE), count=3)),
        ("every other st", place(Which.EVERY, Whole(ST), count=2)),
        ("every alternate st", place(Which.EVERY, Whole(ST), count=2)),
        ("each 2nd st", place(Which.EVERY, Whole(ST), count=2)),
        ("same st", place(Which.SAME, Whole(ST))),
        ("same place", Place(Which.SAME, ())),
        ("the same", Place(Which.SAME, ())),
        ("the skipped st", place(Which.SKIPPED, Whole(ST))),
        ("first st of next block", place(Which.NEXT, Part(1, ST, BLOCK))),
        ("last dc of each block", place(Which.EACH, Part(-1, DC, BLOCK))),
        ("2nd ch of the next 5-ch space", place(Which.NEXT, Part(2, CH, Kind("space", 5)))),
        ("first st of each of the next 2 blocks",
         place(Which.NEXT, Part(1, ST, BLOCK), count=2, each=True)),
        ("first st of 2nd block", place(Which.NTH, Part(1, ST, BLOCK), count=2)),
        ("3rd st of every other block", place(Which.EVERY, Part(3, ST, BLOCK), count=2)),
        ("last st of same block", place(Which.SAME, Part(-1, ST, BLOCK))),
        ("centre of next block", place(Which.NEXT, Centre(BLOCK))),
        ("the centre st of the next block", place(Which.NEXT, Centre(BLOCK))),
        ("center of each space", place(Which.EACH, Centre(SPACE))),
        ("middle of the block", place(Which.THE, Centre(BLOCK))),
        ("between next 2 dc", place(Which.NEXT, Between(DC))),
        ("between the picots of next space", place(Which.NEXT, BetweenPicots(SPACE))),
        ("next space or block", place(Which.NEXT, Whole(SPACE), Whole(BLOCK))),
        ("next space or next block", place(Which.NEXT, Whole(SPACE), Whole(BLOCK))),
        ("next space and block", place(Which.NEXT, Whole(SPACE), Whole(BLOCK))),
        ("each space and centre of each block", place(Which.EACH, Whole(SPACE), Centre(BLOCK))),
        ("each space and each block", place(Which.EACH, Whole(SPACE), Whole(BLOCK))),
        ("each sc or dc", place(Which.EACH, Whole(Kind("sc")), Whole(DC))),
        ("first st of each block and 2nd ch of each space",
         place(Which.EACH, Part(1, ST, BLOCK), Part(2, CH, SPACE))),
        ("next st of the last row", NEXT_ST),
        ("next st below", NEXT_ST),
        ("the top of next st", NEXT_ST),
    ],
)  # fmt: skip
def test_places(text: str, where: Place) -> None:
    assert read_items(f"1 dc in {text}") == (dc(1, where),)


@pytest.mark.parametrize("word", ["in", "into", "on", "over", "under", "through", "round", "at"])
def test_words_that_open_a_place(word: str) -> None:
    assert read_items(f"1 dc {word} next space") == (dc(1, NEXT_SPACE),)


def test_between_opens_a_place_by_itself() -> None:
    assert read_items("1 dc between next 2 dc") == (dc(1, place(Which.NEXT, Between(DC))),)
    assert read_items("1 dc between each 2 dc") == (dc(1, place(Which.EACH, Between(DC))),)
    assert read_items("1 dc between first 2 dc") == (dc(1, place(Which.FIRST, Between(DC))),)
    every_third = place(Which.EVERY, Between(DC), count=3)
    assert read_items("1 dc between every 3rd pair of dc") == (dc(1, every_third),)


def test_a_full_stop_behind_an_abbreviation_belongs_to_it() -> None:
    assert read_items("1 tr. in next st.") == (Stitches(1, "tr", NEXT_ST),)
    assert read_items("3 d. c. in next ch. sp.") == (dc(3, NEXT_SPACE),)
    assert read_items("2 ch. 1 dc. in next st") == (Chains(2), dc(1, NEXT_ST))


@pytest.mark.parametrize(
    ("text", "skip"),
    [
        ("skip 3", Skip(3, None)),
        ("miss 2", Skip(2, None)),
        ("skip 2 st", Skip(2, Whole(ST))),
        ("missing 1 loop", Skip(1, Whole(LOOP))),
        ("pass over one space", Skip(1, Whole(SPACE))),
        ("skip next 2 st", Skip(2, Whole(ST))),
        ("skip the next st", Skip(1, Whole(ST))),
        ("skip next space", Skip(1, Whole(SPACE))),
        ("skip 2 ch-5 spaces", Skip(2, Whole(Kind("space", 5)))),
        ("skip 2 dc", Skip(2, Whole(DC))),
        ("skip first 2 st", Skip(2, Whole(ST))),
        ("skip centre of next block", Skip(1, Centre(BLOCK))),
        ("skip first st of next block", Skip(1, Part(1, ST, BLOCK))),
    ],
)
def test_skips(text: str, skip: Skip) -> None:
    assert read_items(text) == (skip,)


def test_skipping_none_is_nothing() -> None:
    assert read_items("2 dc, miss none, ch 1") == (dc(2), Chains(1))


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


def test_a_ring_that_closes_nothing_is_told() -> None:
    assert row_faults("1 dc, 1 sc in the first of the 4 ch")[0][0] == "not-understood"
    assert row_faults("ch 5, 1 sc in the first of the 4 ch")[0][0] == "not-understood"


INNER = (dc(2), Chains(1))


@pytest.mark.parametrize(
    ("text", "repeat"),
    [
        ("*2 dc, ch 1; repeat from *", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; rep. from * to end", Repeat(INNER, None, star=True)),
        ("* 2 dc, ch 1, repeat from star around", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * all round", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * across", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * to the end of the row", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1 and repeat to end", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * to last 2 st",
         Repeat(INNER, None, ToLast(2, Whole(ST)), star=True)),
        ("*2 dc, ch 1; repeat from * to the last loop",
         Repeat(INNER, None, ToLast(1, Whole(LOOP)), star=True)),
        ("*2 dc, ch 1; repeat from * 3 times", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * twice", Repeat(INNER, 3, star=True)),
        ("*2 dc, ch 1; repeat 3 times from *", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * 3 more times", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * 3 times more", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * once more", Repeat(INNER, 2, star=True)),
        ("*2 dc, ch 1; repeat from * 3 times in all", Repeat(INNER, 3, star=True)),
        ("(2 dc, ch 1) 3 times", Repeat(INNER, 3)),
        ("[2 dc, ch 1] twice", Repeat(INNER, 2)),
        ("(2 dc, ch 1, 3 times)", Repeat(INNER, 3)),
        ("(2 dc, ch 1; thrice)", Repeat(INNER, 3)),
        ("(2 dc, ch 1) x 3", Repeat(INNER, 3)),
        ("(2 dc, ch 1) 3 times more", Repeat(INNER, 4)),
        ("(2 dc, ch 1) 3 times in all", Repeat(INNER, 3)),
        ("(2 dc, ch 1) to end", Repeat(INNER, None)),
        ("(2 dc, ch 1) around", Repeat(INNER, None)),
        ("(2 dc, ch 1) to last 2 st", Repeat(INNER, None, ToLast(2, Whole(ST)))),
        ("(2 dc, ch 1)", Repeat(INNER, 1)),
        ("(2 dc, ch 1) once", Repeat(INNER, 1)),
    ],
)  # fmt: skip
def test_repeats(text: str, repeat: Repeat) -> None:
    assert read_items(text) == (repeat,)


def test_the_heading_says_what_repeat_n_times_means() -> None:
    text = "*2 dc, ch 1; repeat from * 3 times"
    assert read_items(text, headings="repeats: in all") == (Repeat(INNER, 3, star=True),)
    assert read_items(text, headings="repeats: more") == (Repeat(INNER, 4, star=True),)
    more = "*2 dc, ch 1; repeat from * 3 more times"
    assert read_items(more, headings="repeats: in all") == (Repeat(INNER, 4, star=True),)


def test_repeats_inside_each_other() -> None:
    assert read_items("*(2 dc, ch 1) 3 times, skip 1 st; repeat from *, 1 dc") == (
        Repeat((Repeat(INNER, 3), Skip(1, Whole(ST))), None, star=True),
        dc(1),
    )
    assert read_items("(*2 dc, ch 1; repeat from * twice, 1 dc) 3 times") == (
        Repeat((Repeat(INNER, 3, star=True), dc(1)), 3),
    )


def test_a_bare_repeat_with_no_star_repeats_the_whole_text() -> None:
    text = read_text("2 dc, ch 1, repeat, join.")
    assert text == Text(INNER, True, (End(Ending.JOIN),))
    assert read_text("2 dc, ch 1; and repeat all round") == Text(INNER, True)
    assert read_text("2 dc, ch 1; repeat from the beginning of the row") == Text(INNER, True)


@pytest.mark.parametrize(
    ("text", "bracket"),
    [
        ("(2 dc, ch 1) in next space", Bracket(INNER, NEXT_SPACE)),
        ("2 dc, ch 1, all in next space", Bracket(INNER, NEXT_SPACE)),
        ("(2 dc, ch 1) in each space, with ch 3 between",
         Bracket(INNER, place(Which.EACH, Whole(SPACE)), 3)),
        ("(2 dc, ch 1) 3 times in next space", Bracket((Repeat(INNER, 3),), NEXT_SPACE)),
        ("(2 dc, ch 1, 3 times) in next space", Bracket((Repeat(INNER, 3),), NEXT_SPACE)),
        ("(2 dc, ch 1) in each of the next 2 spaces",
         Bracket(INNER, place(Which.NEXT, Whole(SPACE), count=2, each=True))),
    ],
)  # fmt: skip
def test_brackets_in_a_place(text: str, bracket: Bracket) -> None:
    assert read_items(text) == (bracket,)


def test_all_in_gathers_back_to_the_last_place_skip_or_repeat_mark() -> None:
    gathered = Bracket(INNER, NEXT_SPACE)
    tail = "2 dc, ch 1, all in next space"
    assert read_items(f"1 dc in next st, {tail}") == (dc(1, NEXT_ST), gathered)
    assert read_items(f"skip 2, {tail}") == (Skip(2, None), gathered)
    assert read_items(f"*{tail}; repeat from *") == (Repeat((gathered,), None, star=True),)
    assert read_items(f"*1 dc; repeat from * twice, {tail}") == (
        Repeat((dc(1),), 3, star=True),
        gathered,
    )
    assert row_faults("skip 2, all in next space")[0][0] == "not-understood"


@pytest.mark.parametrize(
    "text",
    [
        "begin in next space",
        "begin in the next space",
        "commence in next space",
        "sl st to next space",
        "fasten the thread to next space",
        "join the thread in next space",
        "attach thread to next space",
    ],
)
def test_beginnings(text: str) -> None:
    assert read_items(f"{text}, 1 dc in same place")[0] == Begin(NEXT_SPACE)


def test_beginning_in_parts_and_further_on() -> None:
    assert read_items("begin in 3rd space, 1 dc")[0] == Begin(
        place(Which.NTH, Whole(SPACE), count=3)
    )
    assert read_items("begin in centre of the block, 1 dc")[0] == Begin(
        place(Which.THE, Centre(BLOCK))
    )


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("join", (Ending.JOIN,)),
        ("join with sl st to first dc", (Ending.JOIN,)),
        ("join with a sl st in the top of the first ch", (Ending.JOIN,)),
        ("sl st to first dc", (Ending.JOIN,)),
        ("turn", (Ending.TURN,)),
        ("turn the work", (Ending.TURN,)),
        ("join, fasten off", (Ending.JOIN, Ending.FASTEN_OFF)),
        ("join. Cut the thread.", (Ending.JOIN, Ending.FASTEN_OFF)),
    ],
)
def test_endings(text: str, ends: tuple[Ending, ...]) -> None:
    assert read_text(f"1 dc in each st, {text}") == Text(
        (dc(1, EACH_ST),), False, tuple(End(e) for e in ends)
    )


def test_spans_cover_the_words_of_a_step() -> None:
    source = "terms: us\nround 1: ch 3, 2 dc, with ch 1 between, in next space, turn."
    from reading import read

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
