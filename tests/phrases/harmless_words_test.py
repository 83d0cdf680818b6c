"""Words that change nothing, beside words that do: `work`, `and make`, `loosely`, a comma before a
place; and what they used to hide: how often, between what, into what.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial

import pytest
from phrases.alike_test import MADE, tables
from phrases.said import ARCHES, FIVES, LOOPS, STITCHES, On, cases, said

GROUPS = On(48, ("*1 treble in each of the next 5 loops, 3 chain, miss 3; repeat",))
"""Six times five dc side by side, with a space of 3 chains behind them."""
SHELLS = On(48, ("*5 treble in next loop, 3 chain, miss 3; repeat",))
"""Twelve times five dc in one loop, with a space of 3 chains behind them."""
SINGLES = On(48, ("*1 treble in next loop, 3 chain, miss 2; repeat",))
"""Sixteen dc, each with a space of 3 chains behind it."""
PLAIN = On(48, ("1 plain in each loop",))

ON_ARCHES = {
    # two shares of as many stitches, and the chains between them
    "*3 treble in loop, work 3 treble in the same, separated by 3 chain, 1 plain on plain; repeat": "72 dc, 12 sc, 36 ch; 12 x 1 space",
    "*3 treble in loop, and 3 treble in the same loop, separated by 3 chain, 1 plain on plain; repeat": "72 dc, 12 sc, 36 ch; 12 x 1 space",
    "*3 treble in loop, and work 3 treble in the next, with 3 chain between them, 1 plain in next; repeat": "24 dc, 4 sc, 12 ch; 4 x 3 space",
    "*3 treble in loop, 3 treble in the next with 3 chain between them, 1 plain in next; repeat": "24 dc, 4 sc, 12 ch; 4 x 3 space",
    "*3 treble in loop, work 3 treble in same, work 3 treble in same, 1 chain between each 3, 1 plain on plain; repeat": "108 dc, 12 sc, 24 ch; 12 x 1 space",
    "*3 treble in loop, with 1 chain between, work 3 treble in the next with 1 chain between, 1 plain in next; repeat": "24 dc, 4 sc, 16 ch; 4 x 3 space; asked perhaps-as-they-come",
    # after each is behind the last as well
    "*1 plain in each of three loops, making 5 chain after each; repeat": "12 sc, 60 ch; 4 x 3 space",
    "*1 plain in each of three loops, working 5 chain after each; repeat": "12 sc, 60 ch; 4 x 3 space",
    "*1 plain in each of three loops, and make 5 chain after each; repeat": "12 sc, 60 ch; 4 x 3 space",
    "8 treble, each followed by 1 chain, in the loop; repeat": "96 dc, 96 ch; 12 x 1 space",
    "*8 treble in the loop, each followed by 1 chain, 1 plain on plain; repeat": "96 dc, 12 sc, 96 ch; 12 x 1 space",
    "*8 treble in the loop each followed by a picot, 1 plain on plain; repeat": "96 dc, 12 sc, 96 picot; 12 x 1 space",
    # between every so many of what is made in a place
    "*8 treble in the loop, with a picot between each 4, 1 plain on plain; repeat": "96 dc, 12 sc, 12 picot; 12 x 1 space",
    "*6 treble in the loop, with 1 chain between every 2 treble, 1 plain on plain; repeat": "72 dc, 12 sc, 24 ch; 12 x 1 space",
    "*6 treble in the loop, with 1 chain between every pair, 1 plain on plain; repeat": "72 dc, 12 sc, 24 ch; 12 x 1 space",
    "*9 treble in the loop, with 1 chain between every three, 1 plain on plain; repeat": "108 dc, 12 sc, 24 ch; 12 x 1 space",
    "*5 treble in the loop, with 1 chain between every two, 1 plain on plain; repeat": "60 dc, 12 sc, 48 ch; 12 x 1 space",
    "6 treble in each loop, 1 chain between every 2 treble": "72 dc, 24 ch; 12 x 1 space",
    "6 treble in each loop with 1 chain between each 3 treble": "72 dc, 12 ch; 12 x 1 space",
    # a comma before the only place of a step
    "*3 treble, into successive loops; repeat": "12 dc; 4 x 3 space; asked perhaps-one-place",
    # chains that are made loosely
    "*1 plain in the loop, and in the next loop, 5 chain loosely; repeat": "12 sc, 30 ch; 6 x 2 space; asked place-assumed",
    "*1 plain in the loop, 5 chain loosely, and the same in next two loops; repeat": "12 sc, 60 ch; 4 x 3 space",
    "*1 plain in loop, a chain of 6, on these 1 plain, 1 treble, 3 double treble, 3 chain; repeat": "12 sc, 6 dc, 18 tr, 54 ch; 6 x 2 space; asked perhaps-just-made; asked perhaps-nothing-missed",
    "*in the loop 3 plain, 4 chain, 3 plain again in it, on the plain 1 plain; repeat": "84 sc, 48 ch; 12 x 1 space",
    # how often: of what stands before it, or behind it?
    "Work 12 times: 1 treble in the centre of the 3 chain; 7 chain.": "12 dc, 7 ch; asked times-of-the-row",
    "3 times 1 treble in next loop; 3 chain, 1 plain in next loop 9 times": "3 dc, 9 sc, 27 ch; asked times-of-the-row",
    "1 plain in first loop, 3 chain, and 1 plain in the next loop 7 times, 1 plain in each of 4 loops": "12 sc, 21 ch; asked times-of-the-row",
    "*5 chain, 1 plain in loop, three times: 7 chain, 1 plain in loop: repeat": "12 sc, 78 ch; 3 x 4 space; asked times-of-the-row",
    # in each of several, with chains behind
    "*in each of 3 loops 2 plain, 5 chain; repeat": "24 sc, 60 ch; 4 x 3 space; asked perhaps-as-they-come",
    "*in each of 3 loops 2 plain; 5 chain; repeat": "24 sc, 20 ch; 4 x 3 space",
    # a ring that is made in the row
    "*Make a chain of 8, unite it into a ring by a single stitch in the first; into this ring work 16 plain, 1 plain in the next loop; repeat": "102 sc, 6 picot; 6 x 2 space; asked perhaps-just-made",
    "*8 chain, join in a ring, 16 plain in the ring, 1 plain in the next loop; repeat": "102 sc, 48 ch; 6 x 2 space; asked perhaps-just-made; asked ends-inside",
}
ON_FIVES = {
    "*6 treble, in 5 chain with 2 chain between each pair, 1 plain on plain; repeat": "36 dc, 6 sc, 24 ch; 6 x 1 ch-5 space",
}
ON_GROUPS = {
    "*1 plain on each of the 5 treble, make 1 chain after each; repeat": "30 sc, 30 ch; 6 x 5 dc",
    "*on each of the 5 treble 1 treble, 5 chain; repeat": "30 dc, 150 ch; 6 x 5 dc; asked perhaps-as-they-come",
    "*on the first of the five work 1 plain, on each of the other four work 1 plain; 3 chain; repeat": "30 sc, 18 ch; 6 x 1 block of 5",
    "1 treble in each treble with 1 chain between, miss the 3 chain; repeat": "30 dc, 24 ch; 6 x 5 dc; asked place-assumed",
    "1 treble in each treble with 1 chain between, missing the 3 chain": "30 dc, 24 ch; 6 x 5 dc; asked place-assumed",
    "1 treble in each treble, missing the 3 chain": "30 dc; 30 x 1 dc",
}
ON_SHELLS = {
    "1 treble in each treble with 1 chain between, missing the 3 chain; repeat": "60 dc, 48 ch; 12 x 5 dc; asked place-assumed",
}
ON_SINGLES = {
    "1 treble in each treble with 5 chain between, missing the 3 chain; repeat": "16 dc, 80 ch; 16 x 1 dc",
    "1 plain in each 3 chain space with 4 chain between, miss the treble, repeat": "16 sc, 64 ch; 16 x 1 ch-3 space",
}
ON_PLAIN = {
    "1 treble, on each of the next 3 st, 3 chain after each; repeat": "48 dc, 144 ch; 16 x 3 st",
    "*3 treble, in next 3 st, taken together, 2 chain; repeat": "16 dc, 32 ch; 16 x 3 st",
    "1 treble in each st, 2 chain between every 3": "48 dc, 32 ch; 16 x 3 st",
    "*1 treble in each of the next 6 st, with 1 chain between every 3; 3 chain; repeat": "48 dc, 32 ch; 8 x 6 st",
    # chains, and one stitch where the others went
    "*1 plain in each of 4 st, 4 chain, 1 plain in same st; repeat": "60 sc, 48 ch; 12 x 4 st; asked perhaps-picot",
    "*3 treble in next, 3 chain, 1 plain in same st, miss 2; repeat": "48 dc, 16 sc, 48 ch; 16 x 3 st; asked perhaps-picot",
    "*1 plain in next, 3 chain, 1 plain in same st, miss 2; repeat": "32 sc, 48 ch; 16 x 3 st",
    "*1 plain into st, 5 chain, 1 plain into same st (picot), 4 chain, miss 1; repeat": "24 sc, 96 ch, 24 picot; 24 x 2 st",
    "*1 plain into st, 5 chain, work 1 plain into same st (picot), 4 chain, miss 1; repeat": "24 sc, 96 ch, 24 picot; 24 x 2 st",
    "*2 treble, 2 chain, work 2 treble all in the next st, 3 chain, miss 2, and make a shell the same in next st; repeat": "96 dc, 84 ch; 12 x 4 st; asked perhaps-shared",
    # on the chains just made
    "*3 plain, 10 chain, miss 1, and on the other 9 work 9 plain, miss 3; repeat": "36 sc, 30 ch; 3 x 16 st; asked perhaps-just-made",
    "*3 plain, 10 chain, miss 1, 1 plain on each of the other 9, miss 3; repeat": "36 sc, 30 ch; 3 x 16 st; asked perhaps-just-made",
}
ON_STITCHES = {
    # behind a turn: counted back from the hook, or along those just made?
    "*6 plain, 6 chain, turn, 1 plain in 3d plain, turn, 9 plain in loop; repeat": "32 sc, 12 ch; 2 x 6 st; asked perhaps-counted-on",
    "*6 plain, 6 chain, turn, 1 plain in 3d plain from hook, turn, 9 plain in loop; repeat": "32 sc, 12 ch; 2 x 6 st",
    "*4 plain, 6 chain, turn, 1 plain in 4th plain, turn, 9 plain in loop; repeat": "42 sc, 18 ch; 3 x 4 st",
    "*4 plain, 5 chain, turn, 1 plain in first plain, turn, 7 plain over 5 chain; repeat": "36 sc, 15 ch; 3 x 4 st",
}
ON_LOOPS = {
    "*miss 1 loop, work 3 plain, 2 chain, work 3 plain in next loop for a shell, miss 1 loop; repeat": "24 sc, 8 ch; 4 x 3 loop",
    "*2 plain, and make 2 chain and 2 plain (this forms a shell) in next loop, miss 2; repeat": "16 sc, 8 ch; 4 x 3 loop",
    # how far apart they are on the cloth
    "1 plain, 2 chain, leaving a quarter of an inch between each treble; repeat": "12 sc, 24 ch; 12 x 1 loop; asked taken-as-remark",
    "1 plain, 1 chain, leaving a space of two threads between each double stitch; repeat": "12 sc, 12 ch; 12 x 1 loop; asked taken-as-remark",
    "1 plain, 3 chain, miss a quarter of an inch of the material between each plain; repeat": "12 sc, 36 ch; 12 x 1 loop; asked taken-as-remark",
    "*1 plain, 2 chain; repeat from *, leaving a little space between each double.": "12 sc, 24 ch; 12 x 1 loop; asked taken-as-remark",
}


@cases(
    (ARCHES, ON_ARCHES),
    (FIVES, ON_FIVES),
    (GROUPS, ON_GROUPS),
    (SHELLS, ON_SHELLS),
    (SINGLES, ON_SINGLES),
    (PLAIN, ON_PLAIN),
    (STITCHES, ON_STITCHES),
    (LOOPS, ON_LOOPS),
)
def test_harmless_words_hide_nothing(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


HARMLESS: dict[str, Callable[[str], str]] = {
    "work": partial(re.sub, rf", (?=\d+ {MADE}\b)", ", work "),
    "and make": partial(re.sub, r", (?=\d+ (?:chain|ch)\b)", ", and make "),
    "and work": partial(re.sub, rf", (?=\d+ {MADE} (?:in|on|into)\b)", ", and work "),
    "work at a head": partial(re.sub, rf"([*(]) ?(?=\d+ {MADE}\b)", r"\1work "),
    "loosely": partial(re.sub, r"(?:^|(?<=[,;*] ))(\d+ chain)(?=[,;]|$)", r"\1 loosely"),
}
"""A name, and how a row is said with words that change nothing."""

OTHER_WORDS = re.compile(r"\b(?:sps?|blks?|squares?|as(?: the)? 2nd|like 2nd)\b", re.IGNORECASE)
"""Rows of squares, and what a copied row has otherwise, are read by words of their own."""


@pytest.mark.parametrize("words", HARMLESS)
def test_with_harmless_words_a_row_comes_to_the_same(words: str) -> None:
    tried = 0
    for on, row, _ in tables():
        otherwise = HARMLESS[words](row)
        if otherwise == row or OTHER_WORDS.search(row) or any(map(OTHER_WORDS.search, on.below)):
            continue
        tried += 1
        assert said(otherwise, on) == said(row, on), otherwise
    assert tried > 100


def test_then_is_no_such_word() -> None:
    """It ends a list before a place, as the language has it."""
    assert said("*1 plain, 3 treble in next; repeat", STITCHES) != said(
        "*1 plain, then 3 treble in next; repeat", STITCHES
    )
