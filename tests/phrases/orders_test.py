"""Orders one behind the other, what a whole row goes along, counts at a row's end, the chain that a
row was turned with; and clauses of known words that only tell, offered to be set apart.
"""

from __future__ import annotations

import pytest
from phrases.said import FIVES, LOOPS, SIXES, STITCHES, On, cases, said

from border.findings import Finding
from border.text.source import Source
from border.text.syntax import read_border

OPEN_STITCHES = STITCHES._replace(closed=False)
OPEN_LOOPS = On(12, closed=False)
TURNED = On(12, ("ch 3, 1 treble in each loop, turn",), closed=False)

ORDERS = {
    "*1 treble in 2nd, 3rd and 4th sts, 2 chain; repeat": "9 dc, 6 ch; 3 x 4 st",
    "*2 chain, 1 treble in 3d and 4th; repeat from *": "6 dc, 6 ch; 3 x 4 st",
}

ON_MORE = {
    "*4 plain on the next 6, 5 chain; repeat": "24 sc, 30 ch; 6 x 1 block of 6; asked perhaps-fewer",
    "*4 treble on the next 6, beginning on the 2nd, 5 chain; repeat": "24 dc, 30 ch; 6 x 1 block of 6",
    "*1 treble in the space, 6 plain on the next 6; repeat": "6 dc, 36 sc; 6 x 1 space; asked place-assumed",
}

THE_ONE_MISSED = {
    "*miss 1, 1 treble in next, 1 chain, 1 treble in the one missed; repeat from *": "12 dc, 6 ch; 6 x 2 st",
    "*miss 1, 2 treble in the next, 1 treble in the one missed; repeat": "18 dc; 6 x 2 st",
}

COUNTED_AT_THE_END = {
    "*1 plain in the next, 4 chain, miss 2; repeat to the end; 4 loops": "4 sc, 16 ch; 4 x 3 st",
    "*1 plain in the next, 4 chain, miss 2; repeat to the end; 5 loops": "4 sc, 16 ch; 4 x 3 st; asked count-disagrees",
    "*1 plain in the next, 4 chain, miss 2; repeat to the end; five holes": "4 sc, 16 ch; 4 x 3 st; asked count-disagrees",
}

COUNTED_ON_THE_WAY = {
    "1 plain in the 1st loop, 5 treble in the next (6 in all), 1 plain in each of 10": "11 sc, 5 dc; asked taken-as-remark; asked place-assumed",
}

WITH_THE_TURNING_CHAIN = {
    "3 chain, 1 treble in each of 10, 1 treble in the third of the chain with which you turned": "12 dc; asked place-assumed; asked start-chain-assumed; asked start-chain-assumed",
    "3 chain, *1 treble in next; repeat; the last treble falls on the treble at the end": "12 dc; 11 x 1 st; asked taken-as-remark; asked start-chain-assumed; asked start-chain-assumed",
    "3 chain, 10 treble; 1 treble in third st of turning chain": "12 dc; asked start-chain-assumed; asked start-chain-assumed",
}

ALONG_ALL = {
    "On the 12 stitches of the mat work *1 plain, 3 chain, miss 1; repeat all round": "6 sc, 18 ch; 6 x 2 st; asked taken-as-remark",
    "On the 12 treble work 1 plain in each": "12 sc; 12 x 1 st; asked taken-as-remark",
    "On the chain work 1 plain in each": "12 sc; 12 x 1 st; asked taken-as-remark",
}

REMARKS = {
    "3 chain, 1 treble in each of next 11, counting each chain as one": "12 dc; asked taken-as-remark; asked start-chain-assumed",
}

OF_LOOPS = {
    "On the 12 loops work 1 plain in each, with 5 chain between": "12 sc, 60 ch; 12 x 1 loop; asked taken-as-remark",
    "1 plain in the loop, 6 chain, 1 plain; continue all round": "12 sc, 72 ch; 12 x 1 loop",
    "1 plain in each loop; join here and throughout with a slip stitch": "12 sc; 12 x 1 loop",
    "*5 chain, 1 plain in next loop; repeat, taking care to end with 5 chain": "12 sc, 65 ch; 12 x 1 loop; asked perhaps-instead",
    "8 chain; turn, miss 3, 5 treble": "5 dc; does not close; asked foundation-named; asked foundation-passed; asked row-does-not-close",
    "Fill each loop with 2 plain, adding 2 treble at the corners": "24 sc; 12 x 1 loop; asked corners-left-out",
    "*4 treble in a loop, 1 chain; repeat, making 16 with the 3 chain": "48 dc, 12 ch; 12 x 1 loop; asked taken-as-remark",
}


IN_TOP_OF_THE_CHAIN = {
    "3 chain, 1 treble in each of next 10, 1 treble in top of 3 chain": "12 dc; asked start-chain-assumed; asked start-chain-assumed; asked start-chain-assumed",
    "3 chain, 1 treble in each of next 10 treble and top of 3 chain; turn": "12 dc; asked start-chain-assumed; asked start-chain-assumed; asked start-chain-assumed",
}

SEVERAL_TIMES = {
    "1 plain in first loop, 3 chain and 1 plain in the next loop 7 times, 1 plain in each of 4 loops": "12 sc, 21 ch; asked times-of-the-row",
    "5 chain, 1 plain in next loop 12 times": "12 sc, 60 ch; asked times-of-the-row",
    "*1 plain in loop, 3 chain and 1 plain in next 2 times, 5 chain; repeat": "12 sc, 44 ch; 4 x 3 loop; asked times-of-the-row",
    "four times over make three chain and work one plain upon the next; 8 plain in the last 8": "12 sc, 12 ch",
    "1 plain in next loop, 3 chain; work these two alternately": "12 sc, 36 ch; 12 x 1 loop",
}

BETWEEN_TIMES = {
    "1 plain between next 2 treble 11 times": "11 sc",
    "1 plain between the next 2 treble of the scallop, 3 chain; repeat": "11 sc, 33 ch; 11 x 1 dc; asked place-assumed",
}

AND_NEXT = {
    "1 treble in 4th stitch and next, 7 chain, 1 treble in last": "3 dc, 7 ch",
    "1 treble in 4th stitch and next 3, 5 plain": "4 dc, 5 sc",
    "1 treble in each stitch of ch and each treble": "12 dc; 12 x 0 ch, 1 dc",
}

THE_MIDDLE_ONE = {
    "*3 chain, miss 3, 3 plain, the middle one on the treble; repeat": "6 sc, 6 ch; 2 x 6 st; asked taken-as-remark",
    "*miss 1, 2 chain, 3 plain, of which the middle one comes on the treble of last row, 2 chain; repeat": "9 sc, 12 ch; 3 x 4 st; asked taken-as-remark",
}

THE_CENTRE_OF_WHAT = {
    "Slip to centre treble, *9 chain, 1 plain in centre treble of next group; repeat": "6 sc, 54 ch; 6 x 1 group; asked perhaps-leads-back",
}

ON_A_CHAIN = {
    "On a chain of the length of the sleeve, work a plain into every stitch": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "On a ch of the required length 1 treble in 4th st from hook, treble in every st to end": "9 dc; 8 x 1 loop; asked taken-as-remark; asked foundation-passed",
    "Make a chain the length you require the lace, and work one plain into every loop": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "On a chain of 12 stitches work 1 plain in each": "12 sc; 12 x 1 loop; asked foundation-named",
    "Begin in the centre with 12 chain, join, and work 12 plain into the ring": "12 sc; does not close; asked foundation-named; asked repeat-unclear",
    "Plain, the whole length of the chain": "12 sc; 12 x 1 loop",
    "Over the rolled edge of the cambric work a row of plain": "12 sc; 12 x 1 loop",
    "Along the edge of the linen work 2 plain, 4 chain, miss 1; repeat": "8 sc, 16 ch; 4 x 3 loop",
    "Begin at the right hand with 1 plain upon the first, 3 chain, miss 10, 1 plain in the last": "2 sc, 3 ch; asked taken-as-remark",
    "draw together the next 3 loops with 1 plain, 4 chain; repeat": "4 sc, 16 ch; 4 x 3 loop",
}

PLACES_FIRST = {
    "*3 chain, then into the centre chain of the next 5 chain work 3 treble, 3 chain, and 1 plain into the centre of the following 5 chain; repeat from *": "9 dc, 3 sc, 18 ch; 3 x 2 ch-5 space",
}


@cases(
    (STITCHES, ORDERS),
    (SIXES, ON_MORE),
    (STITCHES, THE_ONE_MISSED),
    (OPEN_STITCHES, COUNTED_AT_THE_END),
    (LOOPS, COUNTED_ON_THE_WAY),
    (TURNED, WITH_THE_TURNING_CHAIN),
    (STITCHES, ALONG_ALL),
    (OPEN_STITCHES, REMARKS),
    (LOOPS, OF_LOOPS),
    (FIVES, PLACES_FIRST),
    (TURNED, IN_TOP_OF_THE_CHAIN),
    (LOOPS, SEVERAL_TIMES),
    (OPEN_STITCHES, BETWEEN_TIMES),
    (OPEN_STITCHES, AND_NEXT),
    (STITCHES, THE_MIDDLE_ONE),
    (SIXES, THE_CENTRE_OF_WHAT),
    (OPEN_LOOPS, ON_A_CHAIN),
)
def test_it_comes_to(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    ("row", "offered"),
    [
        ("*5 dc in loop, ch 1, {}, 1 dc in next loop; repeat", "which is the middle one"),
        ("*5 dc in loop, ch 1, {}, skip 1 loop; repeat", "making 36 in all"),
        ("*5 dc in loop, ch 1, {}, skip 1 loop; repeat", "(which is the 2d picot)"),
        ("*5 dc in loop, ch 1, {}, 1 dc in next loop; repeat", "the bud has now 6 dc"),
        ("*5 dc in loop, ch 2, {}, skip 1 loop; repeat", "always on the same side"),
        ("1 dc in each loop, {}", "until all of the loops are worked"),
        ("1 dc in each loop, {}", "so as to have 3 on one"),
        ("*5 dc in loop, ch 2; repeat, {}; fasten off", "finishing neatly with knots"),
    ],
)
def test_a_clause_that_only_tells_is_offered_whole(row: str, offered: str) -> None:
    """And with what is offered set apart the row is read."""
    (found,) = _told(row.format(offered))
    assert found.code in ("not-understood", "unknown-word")
    assert f'set it apart: "-- {offered} --"' in (found.help or "") or (
        f'set a remark apart: "-- {offered} --"' in (found.help or "")
    )
    assert _told(row.format(f"-- {offered} --")) == []


@pytest.mark.parametrize(
    "row",
    [
        "*5 dc in loop, ch 1, the middle one, 1 dc in next loop; repeat",  # tells of nothing
        "*5 dc in loop, ch 1, which the middle one work; repeat",  # and this makes something
    ],
)
def test_nothing_else_is_offered_so(row: str) -> None:
    assert all("only tells of the work" not in (f.help or "") for f in _told(row))
    assert _told(row)


def test_what_stands_for_the_thrice_wrapped_stitch_of_early_books() -> None:
    """`l. tr.` is the early long treble; who has it under other terms is told of both."""
    (found,) = (f for f in _told("1 l. tr. in each loop", "uk") if f.code == "term-unknown-here")
    assert 'l tr means us dtr" (early)' in (found.help or "")
    assert '"l tr means us tr" where the thread is over but twice' in (found.help or "")


def _told(row: str, terms: str = "us") -> list[Finding]:
    text = f"terms: {terms}\nchains count as stitches: yes\nround 1: {row}.\n"
    return list(read_border(Source("book.border", text))[1])


@pytest.mark.parametrize("head", ["1 r\u2014", "1 row. ", "1 row: ", "1 rnd--", "1 Round. "])
def test_heads_with_a_number_before_their_row(head: str) -> None:
    """Where their number comes next, and a mark stands behind them."""
    text = f"terms: us\n{head}1 dc in each loop.\n2{head[1:]}1 sc in each st.\n"
    border, told = read_border(Source("book.border", text))
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,), (2,)]
    assert told == ()


def test_no_head_where_rows_are_spoken_of() -> None:
    text = "terms: us\nround 1: 1 dc in each loop.\n3 rows. 1 sc in each st.\n"
    border, told = read_border(Source("book.border", text))
    assert border is not None
    assert [row.numbers for row in border.rows] == [(1,)]
    assert told
