"""What the same words mean in one book and not in the next: asked, or told, never guessed."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, BLOCKS, SIXES, STITCHES, On, cases, said

US = STITCHES._replace(
    headings="terms: us\nchains count as stitches: yes\n", below=("1 dc in each",)
)
EARLY = US._replace(headings="terms: early\nchains count as stitches: yes\n")
NO_TERMS = On(12, headings="chains count as stitches: yes\n")
UNSAID_CHAINS = ARCHES._replace(headings="terms: uk\nplain means us sc\n")


def test_double_crochet_is_what_the_terms_say() -> None:
    row = "*1 double crochet, 3 chain, miss 2; repeat"
    assert said(row, STITCHES) == "4 sc, 12 ch; 4 x 3 st"
    assert said(row, US) == said(row, EARLY) == "4 dc, 12 ch; 4 x 3 st"
    assert "asked terms-missing" in said(row.replace("3 st", "3"), NO_TERMS).split("; ")


def test_single_treble_and_long_treble_are_what_the_terms_say() -> None:
    assert said("1 single in each", STITCHES) == "12 ss; 12 x 1 st"
    assert said("1 single in each", US) == "12 sc; 12 x 1 st"
    assert said("1 treble in each", STITCHES) == "12 dc; 12 x 1 st"
    assert said("1 treble in each", EARLY) == "12 tr; 12 x 1 st"
    assert said("1 long treble in each", EARLY) == "12 dtr; 12 x 1 st"
    assert said("1 long treble in each", US) == "12 dtr; 12 x 1 st; asked term-unknown-here"


@pytest.mark.parametrize("name", ["plain", "long", "l.", "tc"])
def test_a_name_that_no_terms_settle_is_asked(name: str) -> None:
    assert "asked term-unknown-here" in said(f"1 {name} in each", US).split("; ")


@pytest.mark.parametrize("row", ["*1 plain, 3 chain, miss 2; repeat", "*3 plain, 1 chain; repeat"])
def test_whether_miss_counts_the_chains_is_asked(row: str) -> None:
    assert "asked chains-unclear" in said(row, UNSAID_CHAINS).split("; ")


IN_STITCHES = {
    # a loop is a stitch in one book; on stitches there is no space
    "*1 treble in next loop, 1 chain; repeat": "row-does-not-close",
    # the 4th, counted with those missed or behind them
    "miss 3, 1 treble in the 4th, 3 chain; repeat": "perhaps-counted-on",
    "*3 chain, miss 2, 1 plain on the 3rd; repeat": "perhaps-counted-on",
    # a group in one place, or its last stitches
    "*3 treble, 3 chain, 3 treble in the same stitch; repeat": "perhaps-one-place",
    "*1 plain, 5 treble in next stitch; repeat": "place-unclear",
    # a picot or a loop on the row
    "*2 plain, 5 chain, 1 plain in same stitch; repeat": "perhaps-picot",
    # a row in one word
    "Treble": "place-assumed",
    "Dc.": "place-assumed",
    # no word of repeat
    "1 plain, 3 chain, miss 2": "repeat-unclear",
    # the star left out
    "1 plain, 3 chain, miss 2; repeat 3 times from *": "repeat-without-star",
    # marks that differ at the two ends
    "\u2715 1 plain, 3 chain, miss 2 + repeat": "star-without-repeat",
    # 3 chain crochet: loops of three, not nine chains
    "Three 3-chain crochet": "not-understood",
    # n over m
    "9 plain over 7": "place-unclear",
    "6 treble over the 7; repeat": "place-unclear",
    # a start chain that is a stitch or is not
    "3 chain, *1 chain, miss 1, 1 treble; repeat; 1 chain": "start-chain-assumed",
}
IN_ARCHES = {
    # in a chain, in the whole loop of chains, or in each
    "1 treble in the chain, 3 chain; repeat": "perhaps-one-place",
    "*1 plain in next 3 ch, 1 chain; repeat": "perhaps-one-place",
    "*3 treble in next 2 loops, 1 chain; repeat": "place-unclear",
    # miss from centre to centre
    "*1 plain in the 3 chain, 3 chain, miss 3; repeat": "place-unclear",
    "1 plain, 3 treble, 1 plain into the 3 chain; repeat": "place-unclear",
    "5 chain, 1 plain in each loop": "place-unclear",
    # one behind the other, or as they come
    "1 treble on each plain, 2 treble under each 3 chain": "perhaps-as-they-come",
    # slip stitches that only lead on
    "4 single on the first loop, *1 plain in next loop, 3 chain; repeat": "perhaps-leads-on",
}
SAME_PLACE = {
    "*1 plain, 5 chain, 1 plain in same place, miss 1; repeat": (
        "12 sc, 30 ch; 6 x 2 st; asked perhaps-picot"
    ),
    "*1 plain in next, 5 chain, 1 plain in the same, miss 1; repeat": "12 sc, 30 ch; 6 x 2 st",
    "3 treble, with 2 chain between, in next stitch, miss 3; repeat": "9 dc, 12 ch; 3 x 4 st",
}


@pytest.mark.parametrize(("row", "code"), IN_STITCHES.items())
def test_on_stitches_it_is_asked(row: str, code: str) -> None:
    assert f"asked {code}" in said(row, STITCHES).split("; ")


@pytest.mark.parametrize(("row", "code"), IN_ARCHES.items())
def test_in_loops_it_is_asked(row: str, code: str) -> None:
    assert f"asked {code}" in said(row, ARCHES).split("; ")


JUST_MADE = {
    # into chains, or a stitch, that the row itself has just made
    "*1 plain in loop, 5 chain, 1 treble in 1st of 5 chain; repeat": "perhaps-just-made",
    "*1 plain in loop, 4 chain, 1 treble in 1st of ch; repeat": "perhaps-just-made",
    "*1 plain in loop, 6 ch, 1 plain in 2nd ch, 1 treble in next ch; repeat": "perhaps-just-made",
    "*1 plain in loop, 3 chain, 2 treble in same plain; repeat": "perhaps-just-made",
    "*1 plain in loop, 5 chain, 1 single in 3rd st; repeat": "perhaps-picot",
    "*3 plain in loop, 4 chain, 1 plain in 3rd plain; repeat": "perhaps-picot",
    "*3 plain in loop, 4 chain, 1 plain in same stitch; repeat": "perhaps-picot",
    "*3 treble in loop, 4 chain, 1 single in the same treble; repeat": "perhaps-picot",
    "*1 plain in loop, 3 chain, 1 plain in 3rd of the 3; repeat": "place-assumed",
    # all of a list, or the last of it
    "*1 plain in loop, 5 treble, 1 plain in same loop; repeat": "perhaps-one-place",
    "*1 plain in loop, 1 treble, 2 chain, 1 treble in the same; repeat": "perhaps-one-place",
    "*1 plain in loop, 1 picot, 1 plain, 1 picot, 1 plain in same; repeat": "perhaps-one-place",
    # counted from where the step before it began, or from there
    "*1 plain in 1st loop of 3 chain, 3 chain, 1 plain in 2nd loop, 3 chain; repeat": (
        "perhaps-counted-on"
    ),
    "*1 plain in next loop, miss 2 ch, 1 treble in 3rd st, 2 chain; repeat": "perhaps-counted-on",
    # a chain once, or with each
    "*1 ch and 1 treble on each of the next 3 plain; 1 ch; repeat": "perhaps-as-they-come",
    # in two places, and worked off as one
    "*2 treble in the space, keep the top loops on the needle, 2 treble in next space, draw "
    "through all together, 5 ch; repeat": "not-understood",
    # over what is left, or over what this row makes
    "*1 plain in loop, 5 chain; repeat from *. Into each of these loops work 7 treble": (
        "perhaps-as-they-come"
    ),
    # no noun for what it goes on
    "*1 plain under the 3 chain, 3 chain, 1 plain on the next, 3 chain; repeat": "place-assumed",
    # no two of a kind
    "*1 plain between treble and chain, 3 chain; repeat": "not-understood",
    # a space missed, or a stitch
    "*3 treble in next loop, 3 ch, miss 1 loop, 1 plain in next, miss 1; repeat": (
        "perhaps-of-spaces"
    ),
    "(1 treble, 1 chain) 5 times, 1 treble, in each loop": "perhaps-one-place",
    # the 3rd of each loop, or each 3rd
    "*1 plain in 3rd chain, 5 chain; repeat": "place-assumed",
    "*6 plain in each of the next 3 ch, 2 chain; repeat": "perhaps-one-place",
    "*2 plain in each of the 2 chain, 2 chain; repeat": "perhaps-one-place",
    "*9 treble over the 9, 2 chain; repeat": "place-assumed",
}


@pytest.mark.parametrize(("row", "code"), JUST_MADE.items())
def test_what_may_go_into_this_row_is_asked(row: str, code: str) -> None:
    assert f"asked {code}" in said(row, ARCHES).split("; ")


NOT_ASKED = {
    "3 treble in loops of ch 3, 2 chain between": "36 dc, 24 ch; 12 x 1 ch-3 space",
    "3 treble in the loops of 3 chain, 2 chain between": "36 dc, 24 ch; 12 x 1 ch-3 space",
    "*3 treble in loop (ch 3), 2 chain; repeat": "36 dc, 24 ch; 12 x 1 ch-3 space",
    "*3 treble in next loop (3-ch), 2 chain; repeat": "36 dc, 24 ch; 12 x 1 ch-3 space",
    "5 ch (1 treble, 2 ch), *1 treble in next loop, 2 ch; repeat, join": (
        "13 dc, 26 ch; 12 x 1 space"
    ),
    "3 ch (1 treble), *1 treble in next loop, 2 ch; repeat, join": "13 dc, 24 ch; 12 x 1 space",
    "*1 plain in 3rd ch of 3, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "*1 plain in the centre ch of the 3, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "*1 plain in centre of ch, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 space",
    "*1 plain in loop, 5 chain, 1 plain in same loop; repeat": "24 sc, 60 ch; 12 x 1 space",
}


@cases((ARCHES, NOT_ASKED))
def test_what_is_said_is_not_asked(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((STITCHES, SAME_PLACE))
def test_the_same_place_is_what_was_worked_last(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_between_has_one_gap_fewer_in_a_group_and_as_many_in_a_round() -> None:
    assert said("3 treble, with 2 chain between, in each loop", ARCHES) == (
        "36 dc, 48 ch; 12 x 1 space"
    )
    assert said("1 treble in each loop, with 2 chain between", ARCHES) == (
        "12 dc, 24 ch; 12 x 1 space"
    )


def test_begun_on_the_second_the_ends_of_the_group_are_missed_in_silence() -> None:
    assert said("*4 plain beginning on the 2nd of the 6, 3 chain; repeat", SIXES) == (
        "24 sc, 18 ch; 6 x 1 block of 6"
    )


def test_a_picot_behind_an_each_is_asked_about_and_a_bracket_settles_it() -> None:
    assert said("3 treble in each space, 1 picot", ARCHES) == (
        "36 dc, 1 picot; 12 x 1 space; asked perhaps-as-they-come"
    )
    assert said("3 treble in each space, (1 picot) once", ARCHES) == "36 dc, 1 picot; 12 x 1 space"
    assert said("(3 treble, picot) in each space", ARCHES) == "36 dc, 12 picot; 12 x 1 space"


SHELLS = On(6, ("*(3 treble, 3 chain, 3 treble) in next loop, 5 chain; repeat",))
"""Six shells, each in two halves, with 5 chains between."""


def test_a_group_of_a_shell_that_has_chains_is_asked_about() -> None:
    assert said("*1 plain between the next 2 groups, 7 chain; repeat", SHELLS) == (
        "12 sc, 84 ch; 12 x 1 group; asked place-assumed"
    )
    assert (
        said("*1 plain between the next 2 groups, 7 chain; repeat", BLOCKS)
        == "6 sc, 42 ch; 6 x 1 group"
    )
    assert (
        said("*1 plain between the next 2 shells, 7 chain; repeat", SHELLS)
        == "6 sc, 42 ch; 6 x 1 shell"
    )


def test_a_picot_closed_in_a_chain_by_its_number_is_asked_about() -> None:
    assert (
        said("*1 plain, p (5 ch, 1 plain in 2d); repeat", STITCHES)
        == "12 sc, 36 ch, 12 picot; 12 x 1 st; asked perhaps-picot"
    )
    assert (
        said("*1 plain, p (5 ch, 1 plain in 4th ch from hook); repeat", STITCHES)
        == "12 sc, 12 ch, 12 picot; 12 x 1 st"
    )


def test_chains_after_each_of_several_stand_behind_all_of_them() -> None:
    row = "*2 treble in loop, 2 treble in next loop, 3 chain after each; repeat"
    assert said(row, ARCHES) == "24 dc, 36 ch; 6 x 2 space"
    assert (
        said("*2 treble in next loop, 3 chain after each; repeat", ARCHES)
        == "24 dc, 72 ch; 12 x 1 space"
    )


def test_a_bracket_behind_a_picot_that_goes_into_a_loop_is_no_picot() -> None:
    assert (
        said("*p (4 ch, 1 plain in loop), 3 treble; repeat", ARCHES)
        == "12 sc, 36 ch; 12 x 1 loop; asked not-understood"
    )


def test_stitches_on_a_ring_that_miss_some_are_on_its_chains() -> None:
    row = "make a chain of 30, close it, and on it work 1 treble, 2 chain, miss 2; repeat"
    assert said(row, On(30)) == "10 dc, 20 ch; 10 x 3 loop; asked foundation-named"
    assert (
        said("make a chain of 30, close it, and in it work 60 plain", On(1))
        == "60 sc; asked foundation-named"
    )


SHARED_OUT = {
    "*3 treble, one in each of the next 3 loops, 3 chain; repeat": "12 dc, 12 ch; 4 x 3 space",
    "*3 treble (1 in each of 3 loops), 3 chain; repeat": "12 dc, 12 ch; 4 x 3 space",
    "*3 treble (1 in loop, 1 on plain, 1 in loop), 1 chain; repeat": "18 dc, 6 ch; 6 x 2 space",
    "*4 treble, 2 in the next loop and 2 in the following, 3 chain; repeat": (
        "24 dc, 18 ch; 6 x 2 space; asked place-assumed"
    ),
    "*3 plain; 1 in the next loop, 2 in the following; repeat": "24 sc; 4 x 12 st",
    "*3 plain, 3 in next loop; repeat": "36 sc; 6 x 8 st",
}
NOT_AGAIN = {
    "*1 plain in next loop, a purl of 5 chain twice; repeat": (
        "12 sc, 36 ch; 12 x 1 loop; asked not-understood"
    ),
    "*1 plain in next loop, 2 purls (5 chain, 1 single in the 1st, twice); repeat": (
        "12 sc, 24 picot; 12 x 1 space"
    ),
    "*3 treble in next loop with 1 chain between each treble, 1 plain in next; repeat": (
        "18 dc, 6 sc, 12 ch; 6 x 2 space"
    ),
}
OVER_ONE = {
    "*3 plain, 3 chain over the treble; repeat": "9 sc, 9 ch; 3 x 4 st",
    "*1 plain, 5 chain over the next 2 treble; repeat": "4 sc, 20 ch; 4 x 3 st",
    "*1 plain on treble, 2 chain on 2 treble; repeat": "4 sc, 8 ch; 4 x 3 dc",
}


@cases((ARCHES, SHARED_OUT), (ARCHES, NOT_AGAIN), (STITCHES, OVER_ONE))
def test_what_is_told_twice_is_worked_once(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
