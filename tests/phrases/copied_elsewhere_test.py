"""Copied rows worked in another place, or in another stitch, in the words of the books."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, On, cases, last_of, said

ARCHED = On(12, (*ARCHES.below, "*1 plain in next loop, 5 chain; repeat"))
"""Twelve arches of 5 chains on twelve."""

FASTENS = ARCHED._replace(headings=f"{ARCHED.headings}fasten means us sc\n")

SHELLS = On(
    12,
    (
        "1 plain in each loop, with 3 chain between",
        "*(3 treble, 3 chain, 3 treble) in next loop; 1 plain in next loop; repeat",
    ),
)
"""Six shells of 3 and 3 treble, with 6 plain between."""

GROUPS = On(
    12, ("1 plain in each loop, with 1 chain between", "*3 treble in next loop, 1 chain; repeat")
)
"""Twelve groups of 3 treble, with a chain between."""

IN_FIVES = dict.fromkeys(
    (
        "as the last, working the plain in the 5 chain",
        "like the 2nd, the plain going into the 5 chain",
        "the same, the plain being worked in the 5 chain",
        "same as 2nd, the plain to come under the 5 chain of last row",
        "as before, but always work the 1 plain under the 5 chain",
        "as the 2nd, putting the plain in the 5 ch.",
        "the same, working in the 5 chain",
        "the same as the 2nd, the plain to be worked in each 5 chain",
    ),
    "12 sc, 60 ch; 12 x 1 ch-5 space",
)
IN_CENTRES = dict.fromkeys(
    (
        "like the 2nd, the plain worked in the middle of the 5 chain",
        "as the last, the plain stitches being worked in the centre of the 5 chain",
        "same as the 2nd, only the plain comes on the centre of each 5 chain",
    ),
    "12 sc, 60 ch; 12 x 1 ch-5 space",
)
ON_PLAIN = dict.fromkeys(
    (
        "as the 2nd, the plain on the plain",
        "the same as the 2nd, plain over plain",
        "the same as the second, making the plain stitches come over those of the row before",
        "as the 2nd, working the plain on that of the last round",
    ),
    "12 sc, 60 ch; 12 x 1 sc",
)
OTHERS_TOO = {
    "as the 2nd, catching the plain in the 5 chain, and making 7 chain instead of 5": (
        "12 sc, 84 ch; 12 x 1 ch-5 space"
    ),
    "as the 2nd, with 7 chain, the plain on the plain": "12 sc, 84 ch; 12 x 1 sc",
    "as the 2nd, but work treble instead of plain": "12 dc, 60 ch; 12 x 1 space",
    "like the 2nd, in treble instead of plain": "12 dc, 60 ch; 12 x 1 space",
    "like the 2nd; instead of plain work treble": "12 dc, 60 ch; 12 x 1 space",
    "like the 2nd, with treble instead of plain, the plain on the plain": "12 dc, 60 ch; 12 x 1 sc",
    "like the 2nd, with treble instead of plain and 2 plain instead of 1": (
        "24 dc, 60 ch; 12 x 1 space"
    ),
}
FASTENED = {
    "same as 2nd, only fastening in the centre of the 5 chain": "12 sc, 60 ch; 12 x 1 ch-5 space",
}


@cases(
    (ARCHED, IN_FIVES),
    (ARCHED, IN_CENTRES),
    (ARCHED, ON_PLAIN),
    (ARCHED, OTHERS_TOO),
    (FASTENS, FASTENED),
)
def test_arches_worked_elsewhere(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


SHELLED = {
    "like 2nd, the 3 treble, 3 chain, 3 treble going into the 3 chain of last row, and the plain "
    "on the plain": "36 dc, 6 sc, 18 ch; 6 x 1 ch-3 space",
    "like 2nd; the 3 tr., 3 ch., 3 tr. going into the 3 ch. of last row, and the plain on the "
    "plain": "36 dc, 6 sc, 18 ch; 6 x 1 ch-3 space",
    "as 2nd, the 6 treble in the 3 chain, the plain on the plain": (
        "36 dc, 6 sc, 18 ch; 6 x 1 ch-3 space"
    ),
    "as 2nd, the treble in the 3 chain, the plain on the plain, with double treble instead of "
    "treble": "36 tr, 6 sc, 18 ch; 6 x 1 ch-3 space",
    "as 2nd, with 5 treble instead of 3, the 3 treble in the 3 chain, the plain on the plain": (
        "60 dc, 6 sc, 18 ch; 6 x 1 ch-3 space"
    ),
}
GROUPED = dict.fromkeys(
    (
        "the same, working between the groups",
        "same as 2nd row, worked between groups",
        "as the last, the treble coming between the groups",
        "the same, catching the 3 treble between the groups",
    ),
    "36 dc, 12 ch; 12 x 1 group",
)


BESIDE = dict.fromkeys(
    (
        "same as 1st, but join with double into the second point of the last fan",
        "as 1st; after the 12 plain fasten with a double in the next 3-ch. loop of the last fan",
        "like 1st, but after making the 3 tr catch with 1 double in last loop of scallop already made",
        "same as 1st, except that you catch the fan with a double into the nearest loop of the "
        "preceding fan",
    ),
    "12 sc, 36 ch; 12 x 1 space; asked at-the-side",
)


@cases((ARCHES, BESIDE))
def test_what_a_copy_fastens_to_the_work_beside_it_is_told(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((SHELLS, SHELLED), (GROUPS, GROUPED))
def test_shells_and_groups_worked_elsewhere(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


PLACED = {
    # what was missed, or which of them was worked into, is missed here too, and asked
    "*1 plain, 3 chain, miss 3; repeat|the plain on the plain": "12 sc, 36 ch; 12 x 1 sc",
    "1 plain in every 2nd st, with 3 chain between|the plain in the 3 chain": "12 sc, 36 ch; 12 x 2 ch-3 space",
    "*1 plain in 4th st, 3 chain; repeat|the plain in the 3 chain": "3 sc, 9 ch; 3 x 4 ch-3 space",
    # several without a place, or all of several in one
    "*1 plain, 3 chain, 1 plain, 5 chain; repeat|the plain in the loop": (
        "48 sc, 192 ch; 24 x 2 space; asked perhaps-nothing-missed"
    ),
    "*2 plain, 3 chain; repeat|the plain in the 3 chain": "48 sc, 72 ch; 24 x 1 ch-3 space",
    # a stitch on its like: one on each, where the copied row makes several together
    "*5 treble in next loop, 3 chain; repeat|treble on treble": "240 dc, 144 ch; 48 x 5 dc",
    "*3 treble in next loop, 1 plain in next loop; repeat|treble on treble, plain on plain": (
        "72 dc, 24 sc; 24 x 3 dc"
    ),
}


@pytest.mark.parametrize(("rows", "comes_to"), PLACED.items())
def test_what_may_go_elsewhere_is_asked(rows: str, comes_to: str) -> None:
    first, otherwise = rows.split("|")
    said = last_of(f"1st: {first}.\n2nd: as 1st, {otherwise}.\n", On(48))
    assert said == f"{comes_to}; asked perhaps-placed-otherwise"


UNCLEAR = (
    # together with something else, or in the same place as the step before
    "*(1 plain, 3 treble, 1 plain) in next, miss 1; repeat|the treble on the treble",
    "*1 plain in next, 5 chain, 1 treble in the same; repeat|the treble on the treble",
    "*1 plain in next, 5 chain, 1 treble in the same; repeat|the plain on the plain",
    "*1 plain in next; repeat; 1 treble in the skipped st|the treble on the treble",
    "1 plain in next, *5 chain, 1 plain in the same, 1 plain in next; repeat|the plain on the plain",
    "(1 plain in each plain, 2 treble in each st) as they come|the treble on the treble",
    # several of a kind in one place, which may go one on each of that kind
    "*5 treble in next, 3 chain, miss 5; repeat|treble on treble",
    "*(3 treble, 2 chain, 3 treble) in next loop; repeat|treble on treble",
    "*3 treble in next loop, 2 chain, 3 treble in same loop; repeat|treble on treble",
    "3 treble in each loop, with 3 chain between|treble on treble",
    # one by one
    "*3 treble in the next 3, 1 chain; repeat|the treble on the treble",
    "3 treble in each, with 1 chain between|the 3 treble on the 3 treble",
    # chains that stand for it, or that are not as high
    "ch 3 as treble, *2 chain, 1 treble in next; repeat|the treble on the treble",
    "3 chain, *1 treble in next, 2 chain; repeat|the treble on the treble",
    "3 chain, *1 treble in next, 2 chain; repeat|with plain instead of treble",
    # so many, and so many of several
    "*4 treble in next, (2 treble, 1 chain, 2 treble) in next; repeat|the 4 treble on the treble",
    # which place
    "*1 plain in next st, 1 treble in next loop; repeat|working in the 3 chain",
    "begin in next st, *1 treble in next st, 1 chain; repeat|the treble on the treble",
    "*1 treble in next, 1 chain; repeat to last 3 st, 1 plain in last 3|the treble on the treble",
    "1 treble in next, 3 chain, 1 plain in next|the treble in each treble",
    # two for one
    "*1 plain in next, 1 chain; repeat|the plain in the 3 chain, the plain on the treble",
    "*1 plain in next, 1 chain; repeat|with treble instead of plain, half treble instead of plain",
)  # fmt: skip


@pytest.mark.parametrize("rows", UNCLEAR)
def test_what_cannot_be_parted_is_asked(rows: str) -> None:
    first, otherwise = rows.split("|")
    said = last_of(f"1st: {first}.\n2nd: as 1st, {otherwise}.\n", On(24))
    assert "asked difference-unclear" in said.split("; ")


NOTHING = (
    "*1 plain in next, 3 chain; repeat|the treble on the treble",
    "*1 plain in next, 3 chain; repeat|the 2 plain in the 3 chain",
    "*1 plain in next, 3 chain; repeat|the 2 plain on the 2 plain",
    "*1 plain in next, 3 chain; repeat|the 3 treble, 1 chain, 3 treble in the 3 chain",
    "*1 plain in next, 3 chain; repeat|with plain instead of treble",
)


@pytest.mark.parametrize("rows", NOTHING)
def test_what_the_copied_row_does_not_make_is_told(rows: str) -> None:
    first, otherwise = rows.split("|")
    said = last_of(f"1st: {first}.\n2nd: as 1st, {otherwise}.\n", On(24))
    assert "asked difference-finds-nothing" in said.split("; ")


NO_PLACES = (
    "the plain to come between the treble and upon the plain", "but the plain at the end is put into the last plain",
    "but work the plain at the end in the fifth of the nine", "only fastening in every 2nd loop", "but in plain", "working in treble",
    "the plain in the last 5 chain", "the plain in every other loop", "the plain in the 2nd loop",
    "1 plain in the 3 chain", "in the 3 chain", "the 3 chain over the 3 chain", "the plain and the treble in the 3 chain",
    "the plain between the tassels", "the plain in the same loop", "the plain in the 5 chain at the beginning",
    "working the plain in the 5 chain at each corner", "the plain on those of it", "with 2 treble instead of 1 plain",
    "the plain in the 3 chain with 2 chain between", "working the plain", "plain instead of plain",
)  # fmt: skip


@pytest.mark.parametrize("words", NO_PLACES)
def test_other_places_and_stitches_are_told(words: str) -> None:
    text = f"1st: *1 plain in next, 3 chain; repeat.\n2nd: as 1st, {words}.\n"
    assert "asked exception-in-words" in last_of(text).split("; ")


def test_it_may_be_said_of_several_rows() -> None:
    first = (
        "1st: *1 plain in next, 5 chain; repeat.\n2nd: *1 treble in next loop, 3 chain; repeat.\n"
    )
    text = f"{first}3rd and 4th: as 1st and 2nd, the plain on the treble, treble on plain.\n"
    assert last_of(text) == "12 dc, 36 ch; 12 x 1 sc"
