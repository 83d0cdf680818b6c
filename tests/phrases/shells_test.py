"""Shells, scallops and points: what they are made of, and what is worked into them.

That a shell's name stands for its steps, and that `shell in shell` goes into the shell's
middle, is common practice.
"""

from __future__ import annotations

import pytest
from phrases.said import On, cases, last_of, said
from reading import row_faults

US = "terms: us\nchains count as stitches: no\n"
EDGE = On(12, headings=US)
OPEN_SHELLS = On(
    12, ("*(2 dc, ch 2, 2 dc) in next loop, ch 2, skip 1; repeat from *",), headings=US
)
"""Six shells with 2 chains in their middle, and as many between one and the next."""
SOLID = On(12, ("*5 dc in next loop, ch 3, skip 1; repeat from *",), headings=US)
ARCHES = On(12, ("*1 sc in next loop, ch 5, skip 1; repeat from *",), headings=US)
FAN = On(12, OPEN_SHELLS.below, headings=f"{US}shell = 2 dc, ch 2, 2 dc\n")

INTO = {
    "3 dc in each shell": "18 dc; 6 x 1 shell",
    "*1 sc in the centre of the shell, ch 5; repeat": "6 sc, 30 ch; 6 x 1 shell",
    "*1 sc in 1st dc of shell, ch 5, 1 sc in last dc of same shell; repeat": (
        "12 sc, 30 ch; 6 x 1 shell"
    ),
    "*1 sc in the space of the shell; repeat": "6 sc; 6 x 1 shell",
    "3 sc in the 2 ch of each shell": "18 sc; 6 x 1 shell",
    "1 sc in each space of the shells": "6 sc; 6 x 1 shell",
    "1 sc in the 2 chain of every group": "6 sc; 6 x 1 shell",
    "*1 sc between the shells, ch 7; repeat": "6 sc, 42 ch; 6 x 1 shell",
    "*1 sc in next scallop, ch 3; repeat": "6 sc, 18 ch; 6 x 1 shell; asked place-assumed",
    "1 sc in the point of each shell": "6 sc; 6 x 1 shell",
}
OF_SOLID = {
    "*1 sc in the centre of the scallop, ch 7; repeat": (
        "6 sc, 42 ch; 6 x 1 shell; asked place-assumed"
    ),
    "*1 sc in next shell, ch 7; repeat": "6 sc, 42 ch; 6 x 1 shell",
    "*1 sc between the scollops, ch 7; repeat": "6 sc, 42 ch; 6 x 1 shell; asked place-assumed",
}
OF_ARCHES = {
    "5 dc in each scallop": "30 dc; 6 x 1 space; asked place-assumed",
    "5 dc in every point": "30 dc; 6 x 1 space; asked place-assumed",
    "5 dc in each opening": "30 dc; 6 x 1 space; asked place-assumed",
}
ON_THE_EDGE = {
    "*1 sc in next point, ch 5; repeat": "12 sc, 60 ch; 12 x 1 loop; asked place-assumed",
    "5 dc in each shell": "60 dc; 12 x 1 loop",
}
MADE = {
    "*shell in shell, ch 1; repeat": "24 dc, 18 ch; 6 x 1 shell",
    "*sh in sh, ch 1; repeat": "24 dc, 18 ch; 6 x 1 shell",
}
SHOWN = {
    "*2 dc, 2 ch, 2 dc all in the next loop, 3 ch, skip 2, and make a shell the same in next loop; "
    "repeat": "24 dc, 21 ch; 3 x 4 loop; asked perhaps-shared",
    "*a shell, that is, 2 dc, 2 ch, 2 dc, in next loop, skip 2, another shell in next loop; "
    "repeat": "24 dc, 12 ch; 3 x 4 loop",
    "*1 shell consisting of 2 dc, 2 ch, 2 dc in next loop, skip 2; repeat": (
        "16 dc, 8 ch; 4 x 3 loop"
    ),
    "*shell of 2 dc, 2 ch, 2 dc in next loop, skip 2; repeat": "16 dc, 8 ch; 4 x 3 loop",
    "*2 dc, 2 ch and 2 dc (this forms a shell) in next loop, skip 2; repeat": (
        "16 dc, 8 ch; 4 x 3 loop"
    ),
    "*5 dc in next loop to form a shell, skip 2; repeat": "20 dc; 4 x 3 loop",
    "*miss 1 loop, 3 dc, 2 ch, 3 dc in next loop for a shell, miss 1 loop; repeat": (
        "24 dc, 8 ch; 4 x 3 loop"
    ),
    "*shell of 3 dc in next loop, skip 1, shell in next loop; repeat": "24 dc; 4 x 3 loop",
}


@cases(
    (OPEN_SHELLS, INTO),
    (SOLID, OF_SOLID),
    (ARCHES, OF_ARCHES),
    (EDGE, ON_THE_EDGE),
    (FAN, MADE),
    (EDGE, SHOWN),
)
def test_shells_in_the_words_of_the_books(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_a_shell_that_nothing_shows_is_made_as_below() -> None:
    text = """round 1: *(2 dc, ch 2, 2 dc) in next loop, skip 1; repeat from *.
round 2: *shell in shell, ch 1; repeat from *."""
    assert last_of(text, EDGE) == "24 dc, 18 ch; 6 x 1 shell; asked place-assumed"


def test_a_figure_by_any_name_is_worked_into_as_a_shell() -> None:
    text = """s = 2 dc, 2 ch, 2 dc
round 1: *s in next loop, skip 1; repeat from *.
round 2: *s in s, ch 1; repeat from *."""
    assert last_of(text, EDGE) == "24 dc, 18 ch; 6 x 1 shell"


@pytest.mark.parametrize(
    "first",
    [
        "shell of 3 dc, 2 ch, 3 dc in next loop",
        "3 dc, 2 ch, 3 dc in next loop (this forms a shell)",
        "3 dc, 2 ch, 3 dc (to form a shell) in next loop",
        "1 shell (3 dc, 2 ch, 3 dc) in next loop",
        "shell of (3 dc, 2 ch, 3 dc) in next loop",
        "sh (3 dc, 2 ch, 3 dc) in next loop",
        "1 sh of 3 dc, 2 ch, 3 dc in next loop",
        "shells of 3 dc, 2 ch, 3 dc in next loop",
        "shell in next loop (3 dc, 2 ch, 3 dc)",
        "3 dc in next loop, 2 ch, 3 dc in same loop (this forms a shell)",
        "3 dc in next loop, ch 2, and 3 dc in the same loop, to form a shell",
        "3 dc, 2 ch, 3 dc (a shell) in next loop",
        "3 dc, 2 ch, 3 dc in next loop (shell)",
    ],
)
def test_a_shell_shown_once_is_known_from_there(first: str) -> None:
    text = (
        f"round 1: *{first}, skip 1; repeat from *.\nround 2: *shell in shell, ch 1; repeat from *."
    )
    assert last_of(text, EDGE) == "36 dc, 18 ch; 6 x 1 shell"


def test_steps_that_are_worked_again_behind_a_place_are_no_shell() -> None:
    row = "*shell in next loop (3 dc, 2 ch, 3 dc) twice, skip 1; repeat"
    assert ("not-understood", "shell") in row_faults(row)


def test_as_often_as_a_shell_has_places_makes_no_shell() -> None:
    below = ("*shell of 5 dc in next loop; repeat",)
    row = "1 sc in dc, *ch 3, skip 1, 1 sc in next; repeat from * around shell; repeat"
    comes_to = "36 sc, 72 ch; 12 x 5 dc; asked place-assumed"
    assert said(row, EDGE._replace(below=below)) == comes_to


@pytest.mark.parametrize("said", ["for a shell", "a shell", "shell"])
def test_the_name_in_brackets_behind_its_steps_makes_no_other(said: str) -> None:
    rows = f"round 1: *5 dc ({said}) in next loop, skip 1; repeat from *.\n"
    rows += f"round 2: *5 dc ({said}) in next shell; repeat from *."
    assert last_of(rows, EDGE) == "30 dc; 6 x 1 shell"


def test_a_shell_of_three_parts_is_asked() -> None:
    made = "3 dc in next loop, ch 1, 3 dc in same loop, ch 1, 3 dc in same loop"
    assert "not-understood" in said(f"*{made} (this forms a shell), skip 1; repeat from *", ARCHES)


def test_a_shell_is_what_was_shown_last() -> None:
    text = """round 1: *shell of 3 dc in next loop, skip 1; repeat from *.
round 2: *shell of 5 dc in next shell, ch 1; repeat from *.
round 3: *shell in shell; repeat from *."""
    assert last_of(text, EDGE) == "30 dc; 6 x 1 shell"


def test_stitches_with_others_between_are_no_shell() -> None:
    below = "*1 dc in next loop, ch 1, 1 dc in same loop, 1 sc in next loop; repeat from *"
    assert said("1 sc in each shell", On(12, (below,), headings=US)) == "6 sc; 6 x 1 shell"
    apart = "*1 dc in next loop, ch 1, 1 sc in next loop, ch 1; repeat from *"
    assert "no-stitches" in said("1 sc in each shell", On(12, (apart,), headings=US))


IN_ONE_PLACE = (
    "shell = 3 treble, 2 chain, 3 treble, all in one st",
    "shell = 3 treble, 2 chain, 3 treble in same place",
    "shell = (3 treble, 2 chain, 3 treble) into one loop",
)


@pytest.mark.parametrize("heading", IN_ONE_PLACE)
def test_a_figure_that_goes_into_one_place_goes_where_a_row_says(heading: str) -> None:
    placed = last_of(f"{heading}\n1st row: *1 shell in next loop, miss 1; repeat from *.\n")
    assert placed == "36 dc, 12 ch; 6 x 2 loop"


def test_a_figure_that_goes_into_one_place_goes_into_the_next_where_a_row_says_none() -> None:
    rows = "1st row: *1 shell, miss 1; repeat from *.\n"
    assert last_of(f"{IN_ONE_PLACE[0]}\n{rows}").startswith("36 dc, 12 ch; 6 x 2 ")


def test_a_cluster_in_one_place_is_one_stitch_where_a_row_says() -> None:
    heading = "cluster = 3 treble in one st, worked off together, 1 chain\n"
    said = last_of(f"{heading}1st row: 1 cluster in each loop.\n")
    assert said == "12 dc, 12 ch; 12 x 1 loop"


@pytest.mark.parametrize("word", ["join", "turn", "repeat"])
def test_a_word_of_any_row_names_no_figure(word: str) -> None:
    row = "1st row: 1 treble in each loop; turn.\n"
    assert last_of(f"{word} = 1 single in the first st\n{row}") == (
        "12 dc; 12 x 1 loop; asked bad-heading"
    )
