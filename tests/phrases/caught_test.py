"""Several places caught up by one stitch, as along a braid: one stitch that takes them all."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, FIVES, LOOPS, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border

OVER_AGAIN = On(12, headings=LOOPS.headings + "rows without a repeat: are repeated\n")
"""A book that prints no repeat."""

ALONG_A_BRAID = {
    "*1 double in the next 3 loops together, 4 chain; repeat": "4 sc, 16 ch; 4 x 3 loop",
    "*1 double in 3 loops of the braid, taken together, 4 chain; repeat": (
        "4 sc, 16 ch; 4 x 3 loop"
    ),
    "*4 chain, 1 double uniting the next 3 loops; repeat": "4 sc, 16 ch; 4 x 3 loop",
    "*catch the next 3 loops together with 1 double, 4 chain; repeat": "4 sc, 16 ch; 4 x 3 loop",
    "*4 chain, catch the next 3 loops with 1 double; repeat": "4 sc, 16 ch; 4 x 3 loop",
    "*unite the next 3 loops with 1 double, 4 chain; repeat": "4 sc, 16 ch; 4 x 3 loop",
    "*take up the next 3 loops together, 1 double, 4 chain; repeat": "4 sc, 16 ch; 4 x 3 loop",
    "*1 double in 2 loops together, 5 chain, catch next 2 together with 1 double, 5 chain; repeat": (
        "6 sc, 30 ch; 6 x 2 loop"
    ),
    "1 double in every 2 loops at once, with 4 chain between": "6 sc, 24 ch; 6 x 2 loop",
    "1 double in 2 loops together, *3 chain, 1 double in the next 2 loops together; repeat": (
        "6 sc, 18 ch; 5 x 2 loop; asked meets-its-start"
    ),
    # several stitches, all through the same loops
    "*5 treble in the next 2 loops taken together, 1 double in the next loop; repeat": (
        "20 dc, 4 sc; 4 x 3 loop"
    ),
    "*(1 treble, 3 chain, 1 treble) in the next 3 loops at once; repeat": (
        "8 dc, 12 ch; 4 x 3 loop"
    ),
    "*1 double in the next 3 loops at once, 3 chain, 1 treble in the same place; repeat": (
        "4 sc, 4 dc, 12 ch; 4 x 3 loop"
    ),
    # worked off together is another thing, with the same counts
    "*3 treble together over the next 3 loops, 4 chain; repeat": "4 dc, 16 ch; 4 x 3 loop",
    # too few are left at the end
    "*1 double in the next 5 loops at once, 4 chain; repeat": (
        "2 sc, 8 ch; 2 x 5 loop; 2 left over; does not close; asked row-does-not-close"
    ),
    # again together, or one in each of them: that is asked
    "1 double in 2 loops together, *3 chain, 1 double in the next 2 loops; repeat": (
        "11 sc, 15 ch; 5 x 2 loop; asked place-unclear; asked perhaps-leads-back"
    ),
    "*1 double in 2 loops together, 3 chain, 1 double in each of the next 2 loops; repeat": (
        "9 sc, 9 ch; 3 x 4 loop; asked perhaps-as-they-come"
    ),
}

FASTENED = "asked fastening-assumed"
FASTENED_IN = {
    "*5 chain, catch the next space; repeat": f"6 ss, 30 ch; 6 x 1 space; {FASTENED}",
    "*5 chain, catch into the next space; repeat": f"6 ss, 30 ch; 6 x 1 space; {FASTENED}",
    "*catch the centre stitch of the next 5 chain, 5 chain; repeat": (
        f"6 ss, 30 ch; 6 x 1 ch-5 space; {FASTENED}"
    ),
    "(3 chain, miss 2 chain, fasten in next) 12 times": (f"12 ss, 36 ch; {FASTENED}"),
    # it ends the row, begins it, or makes a picot
    "*1 plain in next space, 5 chain; repeat, fasten to the first": "6 sc, 30 ch; 6 x 1 space",
    "fasten in the first space, *5 chain, 1 plain in next space; repeat": (
        "6 sc, 30 ch; 6 x 1 space"
    ),
}


@cases((FIVES, FASTENED_IN))
def test_a_fastening_that_names_no_stitch_is_a_slip_stitch_and_told(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


NO_REPEAT = {
    "Put the hook through two loops at once, 1 double, 3 chain": "6 sc, 18 ch; 6 x 2 loop",
    "Put the hook in the next loop, 1 double, 3 chain": "12 sc, 36 ch; 12 x 1 loop",
}

ON_SPACES = {
    "*1 double in the next 2 spaces together, 4 chain; repeat": "6 sc, 24 ch; 6 x 2 space",
    "*1 double through the next two loops at once, 4 chain; repeat": "6 sc, 24 ch; 6 x 2 space",
    # two spaces, or the two threads of one stitch
    "*1 double through the two loops at once, 4 chain; repeat": (
        "12 sc, 36 ch; 12 x 1 loop; asked not-understood"
    ),
    "*2 treble taken off together over 2 double, 3 chain; repeat": "6 dc, 18 ch; 6 x 2 sc",
}


@cases((LOOPS, ALONG_A_BRAID), (OVER_AGAIN, NO_REPEAT), (ARCHES, ON_SPACES))
def test_one_stitch_takes_them_all(on: On, row: str, comes_to: str) -> None:
    """The counts are plain division: so many loops, or spaces, to each stitch."""
    assert said(row, on) == comes_to


@pytest.mark.parametrize("ends", ("turn at once", "at once join"))
def test_at_once_behind_no_place_says_nothing(ends: str) -> None:
    """`turn at once` is `turn`."""
    _, told = read_border(Source("b", f"terms: us\nround 1: 1 dc in each loop, {ends}.\n"))
    assert told == ()
