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
    "*5 chain, 1 plain in next loop; repeat, taking care to end with 5 chain": "12 sc, 65 ch; 12 x 1 loop",
    "8 chain; turn, miss 3, 5 treble": "5 dc; does not close; asked foundation-named; asked foundation-passed; asked row-does-not-close",
    "Fill each loop with 2 plain, adding 2 treble at the corners": "24 sc; 12 x 1 loop; asked corners-left-out",
    "*4 treble in a loop, 1 chain; repeat, making 16 with the 3 chain": "48 dc, 12 ch; 12 x 1 loop; asked taken-as-remark",
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
)
def test_it_comes_to(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    ("row", "offered"),
    [
        ("*5 dc in loop, ch 1, {}, 1 dc in next loop; repeat", "which is the middle one"),
        ("*5 dc in loop, ch 1, {}, skip 1 loop; repeat", "making 36 in all"),
        ("*5 dc in loop, ch 1, {}, skip 1 loop; repeat", "(which is the 2d picot)"),
        ("*5 dc in loop, ch 1, {}, 1 dc in next loop; repeat", "the leaf has now 6 dc"),
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
