"""Skips and repeats, as the books say them: stars, crosses, brackets, bare, all round."""

from __future__ import annotations

from phrases.said import ARCHES, LOOPS, STITCHES, On, cases, said

SKIPS = {
    "*1 treble, 1 chain, miss 1; repeat": "6 dc, 6 ch; 6 x 2 st",
    "*1 treble, 3 chain, miss 3; repeat": "3 dc, 9 ch; 3 x 4 st",
    "*1 treble, 3 chain, miss three; repeat": "3 dc, 9 ch; 3 x 4 st",
    "*1 treble, 1 chain, miss none; repeat": "12 dc, 12 ch; 12 x 1 st",
    "*1 treble, 2 chain, missing 2 stitches; repeat": "4 dc, 8 ch; 4 x 3 st",
    "*1 plain, 4 chain, missing 3 stitches under them; repeat": "3 sc, 12 ch; 3 x 4 st",
    "*1 plain, 4 chain, miss 3 under them; repeat": "3 sc, 12 ch; 3 x 4 st",
    "*1 plain, 4 chain, under which miss 3; repeat": "3 sc, 12 ch; 3 x 4 st",
    "*1 treble, 1 chain, pass over one stitch; repeat": "6 dc, 6 ch; 6 x 2 st",
    "*1 treble, 1 chain, omit 1; repeat": "6 dc, 6 ch; 6 x 2 st",
    "1 treble in every other stitch, with 1 chain between": "6 dc, 6 ch; 6 x 2 st",
    "1 treble in every alternate stitch, with 1 chain between": "6 dc, 6 ch; 6 x 2 st",
    "1 treble in every second stitch, and 2 chain between them": "6 dc, 12 ch; 6 x 2 st",
    "1 plain in every third, 4 chain between": "4 sc, 16 ch; 4 x 3 st",
    "1 treble in each stitch, without missing any": "12 dc; 12 x 1 st",
    "1 treble in each stitch, with 3 chain between, all round": "12 dc, 36 ch; 12 x 1 st",
    "1 treble in each stitch, 3 chain between each, to the end": "12 dc, 36 ch; 12 x 1 st",
    "1 treble in every other stitch with 1 chain between all round": "6 dc, 6 ch; 6 x 2 st",
}
SKIPPED_LOOPS = {
    "*1 plain on plain, 3 chain over the 3 chain; repeat": "12 sc, 36 ch; 12 x 1 sc",
    "*1 plain on plain, 5 chain over the loop; repeat": "12 sc, 60 ch; 12 x 1 sc",
    "*1 plain in next loop, 5 chain over the next 2 loops; repeat": "4 sc, 20 ch; 4 x 3 space",
    "*3 treble in next loop, miss 1 loop; repeat": "18 dc; 6 x 2 space",
    "*3 treble in next loop, 4 chain, miss 2 loops; repeat": "12 dc, 16 ch; 4 x 3 space",
    "*2 treble in next loop, 2 chain, skip one loop; repeat": "12 dc, 12 ch; 6 x 2 space",
    "*1 treble in next loop, 3 chain, miss plain stitch; repeat": "12 dc, 36 ch; 12 x 1 space",
}

AS_THEY_COME = {
    "(1 treble on each plain, 2 treble under each 3 chain) as they come": (
        "36 dc; 24 x 1 sc, 0 ch-3 space"
    ),
    "1 treble on each plain, 2 treble under each 3 chain, as they come": (
        "36 dc; 24 x 1 sc, 0 ch-3 space"
    ),
    "1 treble on each plain; 2 treble under each 3 chain, taking them as they occur, all round": (
        "36 dc; 24 x 1 sc, 0 ch-3 space"
    ),
    "3 treble into every loop and 1 plain upon every plain, as they are met with; join": (
        "12 sc, 36 dc; 24 x 0 space, 1 sc"
    ),
    "1 plain on each plain, (1 treble, 1 chain, 1 treble) in each loop as they come": (
        "12 sc, 24 dc, 12 ch; 24 x 1 sc, 0 space"
    ),
    "1 plain on each plain, 1 treble in each chain as they come, with 1 chain between": (
        "12 sc, 36 dc, 48 ch; 48 x 0 sc, 1 ch"
    ),
}

UNIT = "1 plain, 3 chain, miss 2"
OPEN = "4 sc, 12 ch; 4 x 3 st"
COUNTED = "4 sc, 12 ch"
OPEN_REPEATS = (
    "{}, repeat",
    "{}. Repeat",
    "{} and repeat",
    "*{}; repeat from *",
    "*{}; rep. from *",
    "*{}; repeat from star",
    "*{}; repeat from * to end",
    "*{}; repeat from * all along",
    "{}; repeat all round",
    "{}; repeat to the end",
    "{}; repeat to the end of the row",
    "{}; repeat this to the end",
    "{}; repeat from the beginning",
    "{}; repeat from the beginning of the row",
    "{}; repeat thus",
    "+ {}; repeat from +",
    "(a) {}; repeat from (a)",
    "*** {}; repeat from ***",
    "*{}*; repeat from * to *",
    "** {} **; repeat from ** to **",
    "X {} X, repeat",
    "+ {} +, repeat",
    "\u2715 {} \u2715 repeat",
    "{}, all round",
    "{} to the end of the round",
    "{}, and so on",
    "{}, and so on all round",
    "{}; continue",
    "{}; continue all round",
    "{}, alternately",
    "alternately {}",
    "({}) repeat",
)
COUNTED_REPEATS = (
    "*{}; repeat from * 3 times more",
    "*{}; repeat from * three more times",
    "*{}; repeat from * 3 times",
    "*{}; repeat 3 times more from *",
    "{}; repeat 3 times more",
    "*{}; repeat from * 4 times in all",
    "*{}; repeat from * once more; ({}) twice",
    "*{}; repeat from * twice more; {}",
    "({}) 4 times",
    "[{}] four times",
    "({}, four times)",
    "({}, thrice), {}",
    "x {} x 4 times",
    "+ {} + 4 times",
    "\u2020 {} \u2020 4 times",
    "x {}; repeat from x 3 times more",
    "a, {}; repeat from a 3 times more",
    "(a) {}; repeat from (a) 3 times more",
    "({}; repeat 3 times more)",
    "({}, repeat 3 times)",
    "({}), repeat 3 times more",
    "({}); repeat thrice more",
)
TO_THE_LAST = {
    "*1 plain, 3 chain, miss 2; repeat from * to last 3 stitches; 3 plain": "6 sc, 9 ch; 3 x 3 st",
    "1 treble and 1 chain alternately, missing 1 stitch": "6 dc, 6 ch; 6 x 2 st",
    "* 1 plain, 3 chain, miss 2 ** 5 plain, miss 1; repeat from * to **": "7 sc, 6 ch",
    "1 treble, *1 chain, miss 1, 1 treble; repeat from * 4 times more; 1 chain, miss 1": (
        "6 dc, 6 ch"
    ),
}
ONE_STITCH = {
    "plain all round": "12 sc; 12 x 1 loop",
    "plain over the whole length": "12 sc; 12 x 1 loop",
    "treble all round": "12 dc; 12 x 1 loop",
    "a row of treble": "12 dc; 12 x 1 loop",
    "plain in every stitch": "12 sc; 12 x 1 loop",
}
BEHIND_A_PLACE = {
    "+ 1 plain in next loop, 3 chain, in the next loop x 1 treble, 1 chain, repeat from x 4 times, 3 "
    "chain, repeat from +": "6 sc, 30 dc, 66 ch; 6 x 2 space",
    "*in next loop x 3 treble, 2 chain, repeat from x once more; repeat from *": (
        "72 dc, 48 ch; 12 x 1 space"
    ),
    "+ on each of the 4 plain x 1 treble, 2 chain, 1 treble, repeat from x; 3 chain; repeat from +": (
        "24 dc, 33 ch; 3 x 4 sc"
    ),
}
FROM_THE_BEGINNING = {
    "*2 chain, 1 treble on plain, 2 chain, 1 plain in loop; repeat from the beginning": (
        "12 dc, 12 sc, 48 ch; 12 x 1 sc"
    ),
    "turn, *1 plain in next loop, 5 chain; repeat from the beginning": "12 sc, 60 ch; 12 x 1 space",
    # behind steps of its own, the star is not the beginning
    "1 plain on plain, *2 chain, 1 plain in loop; repeat from the beginning": (
        "13 sc, 24 ch; 1 x 12 sc; 12 x 1 space; asked star-without-repeat; asked open-repeat-inside"
    ),
}
OF_THE_ROW = {
    f"{UNIT}, 4 times": f"{COUNTED}; asked times-of-the-row",
    f"{UNIT}, three times more": f"{COUNTED}; asked times-of-the-row",
    f"{UNIT}; repeat twice more, {UNIT}": f"{COUNTED}; asked times-of-the-row",
    f"{UNIT}; repeat twice; {UNIT}": f"{COUNTED}; asked times-of-the-row",
}
NOT_READ = {
    f"{UNIT}; repeat backwards from *": "unknown-word",
    f"*{UNIT}; repeat from the 1st plain": "not-understood",
    f"*{UNIT}; repeat once more from the last star but one": "not-understood",
    f"{UNIT}; repeat the reverse way": "unknown-word",
    f"{UNIT}; repeat once more; 6 plain; repeat once more; 3 plain": "repeat-without-star",
    "*5 treble in one stitch, drop 2; repeat": "unknown-word",
}


@cases((STITCHES, SKIPS), (ARCHES, SKIPPED_LOOPS))
def test_a_skip(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((ARCHES, FROM_THE_BEGINNING))
def test_a_repeat_from_the_beginning(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases(
    (STITCHES, {form.format(UNIT): OPEN for form in OPEN_REPEATS}),
    (STITCHES, {form.replace("{}", UNIT): COUNTED for form in COUNTED_REPEATS}),
    (STITCHES, TO_THE_LAST),
    (ARCHES, BEHIND_A_PLACE),
    (LOOPS, ONE_STITCH),
)
def test_a_repeat(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((ARCHES, AS_THEY_COME))
def test_each_part_where_its_place_comes(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((STITCHES, OF_THE_ROW))
def test_a_number_of_times_with_no_bracket_is_that_of_the_row_and_told(
    on: On, row: str, comes_to: str
) -> None:
    assert said(row, on) == comes_to


@cases((STITCHES, NOT_READ))
def test_a_repeat_that_is_not_read_is_told(on: On, row: str, comes_to: str) -> None:
    assert f"asked {comes_to}" in said(row, on).split("; ")


def test_repeat_from_the_star_n_times_is_more_or_in_all_by_the_heading() -> None:
    row = f"*{UNIT}; repeat from * 4 times"
    in_all = STITCHES._replace(headings=f"{STITCHES.headings}repeats: in all\n")
    assert said(row, in_all) == COUNTED
    more = f"{COUNTED}; does not close; asked row-does-not-close"
    assert said(row, STITCHES) == more
    assert said(f"*{UNIT}; repeat from * 3 times", STITCHES) == COUNTED


def test_a_row_that_prints_no_repeat_is_its_own_where_the_heading_says_so() -> None:
    assert said(UNIT, STITCHES).endswith("does not close; asked repeat-unclear")
    repeated = "rows without a repeat: are repeated\n"
    riego = STITCHES._replace(headings=STITCHES.headings + repeated)
    assert said(UNIT, riego) == OPEN
    assert said("in next 3 chain, 2 treble".replace("3 chain", "stitch"), riego) == (
        "24 dc; 12 x 1 st"
    )
