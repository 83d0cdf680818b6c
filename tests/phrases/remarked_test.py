"""Clauses that only add to what is said, and skips that are said in a roundabout way."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, FIVES, LOOPS, SIXES, On, cases, said
from reading import read

REMARK = "asked taken-as-remark"
WHICH = {
    "1 plain in each loop which was left": f"12 sc; 12 x 1 space; asked place-assumed; {REMARK}",
    "*1 plain on the plain which unites the loops, 3 chain; repeat": (
        f"12 sc, 36 ch; 12 x 1 sc; {REMARK}"
    ),
    "*3 plain in the 3 chain which has joined the two stars, 2 chain; repeat": (
        f"36 sc, 24 ch; 12 x 1 ch-3 space; {REMARK}"
    ),
    "*1 plain under the loop which was worked over the treble, 3 chain; repeat": (
        f"12 sc, 36 ch; 12 x 1 space; {REMARK}"
    ),
    "2 plain in each loop, missing the plain which is passed by": f"24 sc; 12 x 1 space; {REMARK}",
    "2 plain under each 3 chain, 12 in all": f"24 sc; 12 x 1 ch-3 space; {REMARK}",
    "2 plain under each 3 chain round the scallop": (
        "24 sc; 12 x 1 ch-3 space; asked place-assumed"
    ),
}
LAST_OMITTED = dict.fromkeys(
    (
        "1 plain in first loop, *4 chain, 1 plain in next loop; repeat from *, omitting last plain; "
        "join",
        "1 plain in first loop, *4 chain, 1 plain in next loop; repeat from *, leaving out the last "
        "plain",
    ),
    f"12 sc, 48 ch; 11 x 1 loop; {REMARK}; asked meets-its-start",
)
COUNTED = {
    "*1 plain in next loop, 5 chain; repeat, getting twelve loops of chain; join": (
        "12 sc, 60 ch; 12 x 1 loop"
    ),
    "*1 plain in next loop, 5 chain; repeat, having 10 loops in all": (
        "12 sc, 60 ch; 12 x 1 loop; asked count-disagrees"
    ),
}
ROUNDABOUT = {
    "*6 plain on the 6 treble, 3 chain; the 2 chain is missed; repeat": ("36 sc, 18 ch; 6 x 6 dc"),
    "*6 plain on the 6 treble, 3 chain, the 2 chain being passed over; repeat": (
        "36 sc, 18 ch; 6 x 6 dc"
    ),
    "*6 plain on the 6 treble, 3 chain, making no stitch on the 2 chain; repeat": (
        "36 sc, 18 ch; 6 x 6 dc"
    ),
}
IN_ROW = {
    "1 plain in each of the next 6 loops (6 loops), 3 chain, 1 plain in each of the next 6 loops": (
        f"12 sc, 3 ch; {REMARK}; asked perhaps-as-they-come"
    ),
    "*1 plain in next loop, 3 chain; repeat, and fasten to 1st plain, making 12 spaces": (
        "12 sc, 36 ch; 12 x 1 loop"
    ),
    # chains before a turn are those that the next row begins with
    "1 plain in each loop, do not turn but 3 chain, turn": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "double crochet all round the handkerchief over the rolled hem": "12 sc; 12 x 1 loop",
    "*keeping the last loop of each on the hook, 1 treble in each of 3 loops, thread over and draw "
    "through all, 5 chain; repeat": "4 dc, 20 ch; 4 x 3 loop",
}
OF_SCALLOPS = {
    "*3 plain in the next loop of the scallop, miss 1 loop; repeat": ("18 sc; 6 x 2 space"),
    "*3 plain in the 2nd loop of the scallop; repeat": "18 sc; 6 x 2 space; asked place-assumed",
    "*3 plain in the 1st loop of next scallop, miss 1 loop; repeat": "18 sc; 6 x 2 space",
}
LISTED = {
    "*1 plain in next plain, missing the 5 chain, the plain, and the 5 chain; repeat": (
        "3 sc; 3 x 2 sc"
    ),
}
STANDS = dict.fromkeys(
    (
        "3 chain, which count as 1st treble, 1 treble in each loop; finally, 1 sl st on the third "
        "of the 3 chain counting as first treble",
        "3 chain, which count as 1st treble, 1 treble in each loop; finally, 1 sl st on the 3d of "
        "the first 3 chain in this round, which count as first treble",
    ),
    "12 dc; 11 x 1 loop",
)


@cases(
    (ARCHES, WHICH),
    (LOOPS, COUNTED),
    (LOOPS, LAST_OMITTED),
    (SIXES, ROUNDABOUT),
    (FIVES, LISTED),
    (LOOPS, STANDS),
    (LOOPS, IN_ROW),
    (ARCHES, OF_SCALLOPS),
)
def test_what_only_adds_to_it(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_what_has_been_made_with_the_chain_is_a_remark() -> None:
    row = "3 chain for first treble, 11 treble, making 12 treble with the chain"
    assert said(row, LOOPS) == "12 dc; asked taken-as-remark"


TAKEN_IN = dict.fromkeys(
    (
        "*3 chain, 1 plain in next loop, taking in the two chs. of the row below; repeat",
        "*3 chain, 1 plain in next loop, enclosing the 2 chains below; repeat",
    ),
    f"12 sc, 36 ch; 12 x 1 space; {REMARK}",
)


@cases((ARCHES, TAKEN_IN))
def test_chains_taken_in_are_not_made(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize("made", ["2 chain", "a picot", "3 picots"])
def test_what_stands_on_each_side_is_told_to_be_made_once(made: str) -> None:
    row = f"1 treble on the plain, {made} on each side, 1 plain in the loop; repeat"
    (told,) = (f for f in read(f"{ARCHES.headings}round 1: {row}\n")[1])
    assert told.code == "taken-as-remark"
    assert told.help is not None and told.help.startswith("write it twice, before and behind")


def test_a_stitch_on_each_side_is_a_remark_like_any() -> None:
    row = "1 treble in each plain on each side"
    (told,) = (f for f in read(f"{ARCHES.headings}round 1: {row}\n")[1])
    assert told.code == "taken-as-remark" and told.help == 'set it apart: "-- on each side --"'
