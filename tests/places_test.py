"""Every way to name a place, in stitches, skips and beginnings."""

from __future__ import annotations

import pytest
from reading import (
    BLOCK,
    CH,
    DC,
    EACH_ST,
    LOOP,
    NEXT_SPACE,
    NEXT_ST,
    SPACE,
    dc,
    place,
    read,
    read_items,
    row_faults,
    written,
)

from border.text.tree import (
    ST,
    Begin,
    Between,
    BetweenPicots,
    Bracket,
    Centre,
    Chains,
    Kind,
    Part,
    Place,
    Skip,
    Stitches,
    Which,
    Whole,
)


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


FIVE = Kind("space", 5)


@pytest.mark.parametrize(
    ("steps", "where"),
    [
        ("5 dc in the next 5 chain", place(Which.NEXT, Whole(CH), count=5)),
        ("1 dc in each of the next 5 chain", place(Which.NEXT, Whole(CH), count=5, each=True)),
        ("2 dc in each of the first 5 chain", place(Which.FIRST, Whole(CH), count=5, each=True)),
        ("1 dc in next one chain", place(Which.NEXT, Whole(CH))),
        ("7 dc in the next 5 chain", place(Which.NEXT, Whole(FIVE))),
        ("(2 dc, ch 1, 2 dc) in the next 5 chain", place(Which.NEXT, Whole(FIVE))),
        ("5 dc in the 5 chain", place(Which.THE, Whole(FIVE))),
    ],
)
def test_a_number_of_chain_behind_next_counts_chains_unless_it_cannot(
    steps: str, where: Place
) -> None:
    (item,) = read_items(steps)
    assert isinstance(item, Stitches | Bracket)
    assert item.place == where


def test_one_stitch_in_the_next_5_chain_is_asked() -> None:
    _border, findings = read("terms: us\nround 1: 1 dc in the next 5 chain")
    assert [f.code for f in findings] == ["perhaps-one-place"]


@pytest.mark.parametrize(("text", "count"), [("next one chain", 1), ("the next 3 chain", 3)])
def test_a_skip_counts_chains(text: str, count: int) -> None:
    assert read_items(f"skip {text}") == (Skip(count, Whole(CH)),)


def test_skipping_none_is_nothing() -> None:
    assert read_items("2 dc, miss none, ch 1") == (dc(2), Chains(1))


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
    "said",
    [
        "5 ch loop",
        "5-ch loop",
        "5-chain loops",
        "5 chain loop",
        "ch-5 loop",
        "ch 5 loops",
        "5 chain stitch loop",
        "5-chain-stitch loop",
        "5-chain-stitch loops",
    ],
)
def test_a_space_by_its_chains(said: str) -> None:
    assert written(f"1 sc in each {said}") == "1 sc in each ch-5 space"
    assert row_faults("1 sc in each 5 ch loops")  # five of them, and no place
