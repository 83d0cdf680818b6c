"""What readers found misread, or lost, in pages of 1840 to 1919: popcorns by the way they are made,
all of a ring, a turning chain that stands for a stitch, as many stitches as places.
"""

from __future__ import annotations

import pytest
from phrases.said import FIVES, LOOPS, PICOTS, SIXES, STITCHES, On, cases, said

from border.findings import Finding
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Text

TURNED = On(12, ("ch 3, 1 treble in each loop, turn",), closed=False)
OPEN_STITCHES = STITCHES._replace(closed=False)
SHELLS = On(6, ("(2 treble, 2 chain, 2 treble) in each loop, with 2 chain between",))
BLOCKS_OF_THREE = On(12, ("*3 treble, 5 chain, miss 3; repeat",))
PLAIN_BETWEEN = On(6, ("*1 treble in loop, 1 plain in loop; repeat",))

POPCORNS = {
    "*5 treble in the next st, take out the hook, insert it in the first of the 5 treble and draw the dropped loop through, 2 chain, miss 2; repeat": "4 dc, 8 ch; 4 x 3 st",
    "*5 treble in next st, remove hook, insert in first of the 5 treble and draw loop through, 2 chain; repeat": "12 dc, 24 ch; 12 x 1 st",
    "*5 treble in next st, drop loop from hook, insert hook in 1st of the 5 treble, pick up dropped loop and draw through, 2 chain; repeat": "12 dc, 24 ch; 12 x 1 st",
    "*a popcorn of 5 treble in next st, 2 chain, miss 1; repeat": "6 dc, 12 ch; 6 x 2 st",
}

OF_PICOTS = {
    "3 treble in next picot, keeping the last loop of each on the needle and working all off together, 5 chain; repeat": "6 dc, 30 ch; 6 x 1 picot",
}

ALL_IN_THE_RING = {
    "7 chain, unite; 1 treble in the circle, *2 chain, 1 treble; repeat from * 5 times": "7 dc, 12 ch; does not close; asked foundation-named; asked row-does-not-close",
    "Chain 12 and join. *1 plain in loop, 3 chain; repeat": "12 sc, 36 ch; 12 x 1 loop; asked foundation-named",
    "For the lower edge, 1 plain in each loop": "12 sc; 12 x 1 loop; asked taken-as-remark",
}

STANDS_FOR_ONE = {
    "Turn with 3 chain to stand for a treble, 1 treble on each of the 11 next": "12 dc; asked start-chain-assumed",
    "Turn with 3 chain, 1 treble on each of the next 10 treble, 1 treble on the 3 chain": "12 dc; asked start-chain-assumed; asked start-chain-assumed; asked start-chain-assumed",
}

AS_MANY = {
    "Three plain on the second, third and fourth of the six, 5 chain; repeat": "18 sc, 30 ch; 6 x 1 block of 6",
    "3 treble between the groups; join": "18 dc; 6 x 1 group",
}

IN_THE_NEXT = {
    "Under the first 5 chain 2 treble, under the next 1 treble, 5 chain, 1 treble; repeat": "12 dc, 15 ch; 3 x 2 ch-5 space",
    "miss the 5 chain, 2 treble in each 5 chain": "10 dc; 5 x 1 ch-5 space; asked perhaps-as-they-come",
}

THE_REST = {
    "1 plain, the rest long": "1 sc, 11 dc; 11 x 1 st",
    "miss 1, work the rest plain": "11 sc; 11 x 1 st",
    "3 plain, the remainder treble; turn": "3 sc, 9 dc; 9 x 1 st",
    "plain on the remaining stitches": "12 sc; 12 x 1 st",
    "work in plain to the end": "12 sc; 12 x 1 st",
    "Alternately 1 treble, 1 chain, after every treble pass over 1 stitch": "6 dc, 6 ch; 6 x 2 st",
}

PASSED_OVER = {
    "*5 chain, 1 treble on the next treble (passing over the plain); repeat": "3 dc, 15 ch; 3 x 1 dc; asked taken-as-remark",
}

SLIPPED_OVER = {
    "Slip over 3 treble to next treble, *3 chain, 1 plain in next; repeat": "12 sc, 36 ch; 12 x 1 dc",
}

WIDENED = {
    "*1 treble in the chain before the 3 treble, 1 treble on each of the three, 1 treble in the chain after them, 3 chain; repeat": "10 dc, 6 ch; 2 x 2 space; asked place-assumed",
    "*work 1 treble into the chain just before the 3 treble of last row, 1 treble upon each of the three, and 1 into the chain just beyond them, 3 chain; repeat": "10 dc, 6 ch; 2 x 2 space; asked place-assumed",
    "*1 treble on the chain stitch before the treble, 3 treble on treble, 1 treble on the chain stitch after the treble, 3 chain; repeat": "10 dc, 6 ch; 2 x 2 space; asked place-assumed",
}

ON_THE_HEM = {
    "Work plain closely round the hemmed edge of the square, join": "12 sc; 12 x 1 loop",
    "*1 plain, 5 chain, miss 3; repeat all round, working 1 treble, 5 chain, 1 treble into the centre plain at each corner, and join with sl. st. to 1st plain": "3 sc, 15 ch; 3 x 4 loop; asked corners-left-out",
}

CENTRE_LOOPS = {
    "1 plain in centre loop of 5 chain, 7 chain, *1 plain in centre loop of next 5, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 ch-5 space",
}

IN_SHELLS = {
    "5 treble in the 2 chain in the centre of the group, 3 chain; repeat": "30 dc, 18 ch; 6 x 1 shell",
    "1 treble in next treble after the shell, 2 chain; repeat": "24 dc, 48 ch; 24 x 1 dc; asked place-assumed",
    "under the 2 chain in the middle of each shell 5 treble": "30 dc; 6 x 1 shell",
}


@cases(
    (STITCHES, POPCORNS),
    (PICOTS, OF_PICOTS),
    (LOOPS, ALL_IN_THE_RING),
    (TURNED, STANDS_FOR_ONE),
    (SIXES, AS_MANY),
    (FIVES, IN_THE_NEXT),
    (OPEN_STITCHES, THE_REST),
    (PLAIN_BETWEEN, PASSED_OVER),
    (STITCHES, SLIPPED_OVER),
    (SHELLS, IN_SHELLS),
    (LOOPS, ON_THE_HEM),
    (FIVES, CENTRE_LOOPS),
    (BLOCKS_OF_THREE, WIDENED),
)
def test_it_comes_to(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ("1 dc in first, *10 sc over the cord alone; repeat", "goes into no stitch"),
        ("1 dc in first, *10 sc over cord only; repeat", "goes into no stitch"),
        ("*1 sc on each side of the picot, ch 5; repeat", "has two places"),
        ("*ch 9, 1 sc in the 3rd sc between the next two picots; repeat", "two places"),
    ],
)
def test_what_is_not_read_is_told(row: str, told: str) -> None:
    (found,) = (
        f for f in _told(row) if f.code in ("not-understood", "repeat-and-each") or not told
    )
    assert told in found.message


def test_an_offer_keeps_the_skip_and_the_place_of_a_stitch() -> None:
    """`after every treble pass over 1` works something; so does a stitch round one below."""
    offered = " ".join(f.help or "" for f in _told("1 sc at back of work around next dc of it all"))
    assert "around next dc" not in offered
    offered = " ".join(f.help or "" for f in _told("1 dc in loop, so that you have 5 dc here"))
    assert '"-- so that you have 5 dc here --"' in offered
    offered = " ".join(f.help or "" for f in _told("1 dc, ch 1, betwixt them pass over 1 stitch"))
    assert "pass over" not in offered


def test_how_often_is_no_remark_nor_is_half_a_sentence() -> None:
    """What says how often is asked for in numbers; what says `if` is offered to its end."""
    for until in ("until you have 12 spokes", "till each of the nine has a dc above it"):
        (found,) = _told(f"ch 5, *1 dc in the ring, ch 2; repeat from * {until}, join")
        assert "this says how often" in found.message
        assert "apart" not in (found.help or "")
    told = "If it does not come out even, skip a stitch less where it will not show"
    (found,) = _told(f"1 dc in each loop, join. {told}")
    assert f'"-- {told} --"' in (found.help or "")
    told = "putting the sc always beyond the picot"
    (found,) = _told(f"*1 sc in loop; repeat to end, {told}, turn")
    assert f'"-- {told} --"' in (found.help or "")


def test_a_figure_behind_after_is_a_place() -> None:
    """`in next dc after the shell` makes no shell of its own."""
    text = "terms: us\nshell = 2 dc, ch 2, 2 dc\nround 1: shell in each loop.\n"
    for where in ("after", "following"):
        row = f"round 2: shell in shell, 1 dc in the dc {where} the shell, ch 2; repeat.\n"
        border, told = read_border(Source("book.border", text + row))
        assert border is not None
        assert [f.code for f in told] == ["place-assumed"]
        body = border.rows[1].body
        assert isinstance(body, Text)
        assert len(body.items) == 3


def test_words_before_a_colon_that_tell_of_the_thread_are_offered() -> None:
    (found,) = _told("take a braid with loops on both edges: 1 dc in each loop")
    assert '"-- take a braid with loops on both edges --"' in (found.help or "")
    (found,) = _told("ovr each motif: 1 dc in each loop")
    assert "apart" not in (found.help or "")


def test_a_full_stop_parts_a_number_from_a_figure() -> None:
    """`Ch 12. Sh in 4th st` makes one shell, not twelve."""
    text = "terms: us\nsh = 2 dc, ch 1, 2 dc\nround 1: Ch 12. Sh in 4th st.\n"
    border, told = read_border(Source("book.border", text))
    assert border is not None
    assert [f.code for f in told] == ["foundation-named", "foundation-passed"]


def _told(row: str) -> list[Finding]:
    text = f"terms: us\nchains count as stitches: yes\nround 1: {row}.\n"
    return list(read_border(Source("book.border", text))[1])
