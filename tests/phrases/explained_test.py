"""Figures that a page explains in words before its rows, and other ways to say things."""

from __future__ import annotations

import pytest
from phrases.said import FIVES, HEADINGS, LOOPS, STITCHES, On, cases, last_of, said
from reading import read

from border.text.written import write_border

EXPLAINED = [
    "A picot is made with 5 ch, 1 d c into first.",
    "The Picot is made thus—5 chain, turn, and work 1 single in the 1st chain stitch.",
    "A purl is worked thus: 5 chain, drop the last stitch from the needle, insert the latter in "
    "the first of the 5 chain, and draw the dropped stitch through.",
    "To make picot: Ch 5, sl st in 1st st of ch.",
    "For a picot, make 5 ch, sl st in 1st.",
    "For each picot make 5 chain, and 1 single in the first of them.",
    "Picot—5 ch and 1 dc in the first.",
    "Picot.--5 ch, 1 dc in the first.",
    "Picot (p.): Ch. 5, 1 s.s. in first st. of ch.",
    "P, or Picot, is made by working five chain, and one double crochet in first stitch of the "
    "chain.",
    "Make a chain of 12, turn. A picot is 5 ch, 1 single in the first.",
]
SHELLS = [
    "A shell is 3 tr, 2 ch, 3 tr, all in one place.",
    "Shell: 3 tr, 2 ch, 3 tr.",
    "Shell (sh): 3 tr, 2 ch, 3 tr.",
    "Shell.--3 tr, 2 ch, 3 tr.",
    "Each shell consists of 3 tr, 2 ch, 3 tr",
    "By a shell is meant 3 tr, 2 ch, 3 tr.",
    "Shell: 3 tr, 2 ch, 3 tr, all in same place. Make a chain of 20 stitches.",
    "Chain 17. Shell (sh) is 3 tr, ch 2, 3 tr.",
]
LEAVES = [
    "The leaves are worked thus:—3 treble all in the same place, keeping the last loop of each on "
    "the needle, then draw the cotton through all four loops together.",
    "A leaf consists of 3 treble in the same stitch; the upper loop of each is kept on the needle, "
    "and they are all drawn together with 1 loop.",
    "Leaf: 3 tr in same place, keeping the last loop of each on hook, draw through all 4 at once",
]


def with_line(line: str, row: str) -> str:
    """What a row comes to under a line before it; what is told of a foundation left out."""
    said = last_of(f"round 1: {row}.", On(12, headings=f"{HEADINGS}{line}\n"))
    return said.replace("; asked foundation-named", "")


@pytest.mark.parametrize("line", EXPLAINED)
def test_a_picot_explained_in_words(line: str) -> None:
    border, _ = read(f"{HEADINGS}{line}\nround 1: *1 dc in next loop, 1 p; repeat.")
    assert "picot of 5" in write_border(border, "uk")
    assert with_line(line, "*1 dc in next loop, 1 p; repeat") == "12 sc, 12 picot; 12 x 1 loop"


def test_a_figure_by_another_name_may_be_a_picot() -> None:
    line = "To make a dot: work 4 chain, turn, and work 1 dc in the 1st of the 4 chain."
    border, _ = read(f"{HEADINGS}{line}\nround 1: *1 dc in next loop, 1 dot; repeat.")
    assert "picot of 4" in write_border(border, "uk")


@pytest.mark.parametrize("line", SHELLS)
def test_a_shell_explained_in_words(line: str) -> None:
    assert with_line(line, "*1 shell in next loop, 3 ch, miss 1; repeat") == (
        "36 dc, 30 ch; 6 x 2 loop"
    )


@pytest.mark.parametrize("line", LEAVES)
def test_a_leaf_worked_off_as_one(line: str) -> None:
    row = "*1 dc in next loop, 5 ch, 2 leaves in next loop; repeat"
    assert with_line(line, row) == "6 sc, 12 dc, 30 ch; 6 x 2 loop"
    alone = "*1 dc in next loop, 5 ch, a leaf, 5 ch; repeat"
    assert with_line(line, alone) == "12 sc, 12 dc, 120 ch; 12 x 1 loop"


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("Treble: 1 chain, draw through", "bad-heading"),  # a stitch is no figure
        ("GOLD CIRCLE: 2 dc in each loop", "bad-heading"),  # nor what no row speaks of
        ("Foundation: 12 ch.", "foundation-named"),
    ],
)
def test_what_explains_no_figure_is_told(line: str, told: str) -> None:
    said = last_of("round 1: 1 dc in each loop.", On(12, headings=f"{HEADINGS}{line}\n"))
    assert f"asked {told}" in said.split("; ")


READ = {
    "1 dc in each loop; there will be 12 dc": "12 sc; 12 x 1 loop",
    "1 dc in each loop (you should now have 10 dc)": "12 sc; 12 x 1 loop; asked count-disagrees",
    "*2 dc consecutive, 2 ch, miss 1; repeat": "8 sc, 8 ch; 4 x 3 loop",
    "*1 dc, 4 ch, slip the last on the 1st, miss 1; repeat": "6 sc, 6 picot; 6 x 2 loop",
    # two places at a time
    "1 tr in the 2nd and 4th loops, 3 ch; repeat": "6 dc, 9 ch; 3 x 4 loop",
    "2 tr in 2nd, and in 3d loop": "2 dc; does not close; asked repeat-unclear",
    "1 dc in the 1st and 3rd loop, 3 ch; repeat": "8 sc, 12 ch; 4 x 3 loop; asked perhaps-counted-on",
    "*1 dc in the next loop but one, 2 ch; repeat": "6 sc, 12 ch; 6 x 2 loop",
    # rows of one stitch
    "Make the chain, and work a row of long with 1 chain between each, missing 1": "6 dc, 6 ch; 6 x 2 loop; asked taken-as-remark",
    "Chain the length, and on it work 1 dc, 1 ch, miss 1, repeat": "6 sc, 6 ch; 6 x 2 loop; asked taken-as-remark",
    "work a row of 1 tr, 1 ch, miss 1": "6 dc, 6 ch; 6 x 2 loop",
    "a row of long, missing 1": "6 dc; 6 x 2 loop",
    "work one row of plain on the chain": "12 sc; 12 x 1 loop",
    # a lone mark
    "3 tr, 3 ch, miss 3, * repeat": "6 dc, 6 ch; 2 x 6 loop; asked star-assumed",
    # fastened in the middle of a row
    "*5 ch, unite to the next loop; repeat": "12 ss, 60 ch; 12 x 1 loop; asked fastening-assumed",
    "*5 ch, join in next loop with 1 dc; repeat": "12 sc, 60 ch; 12 x 1 loop",
    "*5 ch, attach to the centre of next loop; repeat": "12 ss, 60 ch; 12 x 1 loop; asked fastening-assumed",
    "*5 ch, fasten down in next loop; repeat": "12 ss, 60 ch; 12 x 1 loop; asked fastening-assumed",
    "1 dc in each loop, join to first dc with sl st": "12 sc; 12 x 1 loop",
    "*1 dc in next loop, 3 ch, 1 dc in 1st of ch 3 for a picot; repeat": "12 sc, 12 picot; 12 x 1 loop",
    "3 ch, turn, miss the first loop, 11 tr": "12 dc",
}
ON_STITCHES = {
    "*1 dc between the 1st and 2nd of the 12 tr, 2 ch; repeat": "12 sc, 24 ch; 12 x 1 dc; asked place-assumed",
    "*1 dc on a stitch of treble, 1 ch, miss 1; repeat": "6 sc, 6 ch; 6 x 2 dc",
    "*3 dc with 1 ch between on the 3 tr, 2 ch; repeat": "12 sc, 16 ch; 4 x 3 dc",
    "slip to the last of 4 treble, 3 ch, 11 treble": "12 dc; asked start-chain-assumed",
    "1 dc in each of 6 st of the ch, 6 tr": "6 sc, 6 dc; asked place-assumed",
}
ON_FIVES = {
    "3 dc (1 in st before dc, 1 in dc, 1 in st after), 5 ch; repeat": "18 sc, 30 ch; 6 x 1 space; asked place-assumed",
    "3 dc (1 each side of and 1 in dc), 5 ch; repeat": "18 sc, 30 ch; 6 x 1 space; asked place-assumed",
    "3 tr on the single dc and the chain at each side of it, 3 ch; repeat": "18 dc, 18 ch; 6 x 1 space; asked place-assumed",
    "1 dc in the ch before dc, 1 dc in dc, and 1 dc in the ch after it, 4 ch; repeat": "18 sc, 24 ch; 6 x 1 space; asked place-assumed",
    "1 dc in the ch before dc, 5 ch; repeat": "6 sc, 30 ch; 6 x 1 loop; asked unknown-word",
    "*1 dc in the 2nd and 4th of the 5 ch, 1 ch; repeat": "12 sc, 6 ch; 6 x 1 ch-5 space",
    "*1 dc in the 2nd of the 5 ch, 3 ch, 1 dc in the 4th of the same; repeat": "12 sc, 18 ch; 6 x 1 ch-5 space",
    "*1 dc in next 5 ch but one, 5 ch; repeat": "3 sc, 15 ch; 3 x 2 ch-5 space",
    "2 tr under each 5 ch, 1 ch between each pair of tr": "12 dc, 6 ch; 6 x 1 ch-5 space",
    "*1 dc in the 3rd of the 5 ch missed, 3 ch; repeat": "6 sc, 18 ch; 6 x 1 ch-5 space",
}


@cases((LOOPS, READ), (STITCHES, ON_STITCHES), (FIVES, ON_FIVES))
def test_other_ways_to_say_it(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize(
    "made",
    [
        "A picot is worked thus: 5 ch, 1 dc back in the 2nd.",
        "A picot is 4 ch, 3 treble in the 4th ch.",
        "A picot is 5 ch, miss 3, 1 dc in the next.",
    ],
)
def test_a_figure_that_may_go_into_its_own_chains_is_asked(made: str) -> None:
    text = f"{made}\nround 1: 1 dc, 2 ch, 1 picot, 2 ch, miss 3; repeat"
    assert "asked perhaps-just-made" in last_of(text)
    assert "perhaps-just-made" not in last_of(text.replace(made, "A picot is 5 ch."))
