"""Stitches by all their names, number words, colours, shaping, picots."""

from __future__ import annotations

import pytest
from phrases.said import ARCHES, FIVES, STITCHES, On, cases, said

UK = {
    "*1 d.c., 3 ch., miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "*1 dc, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "*1 d c, 3 c s, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "*1 double, 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "*one double crochet, three chain, miss two; repeat": "4 sc, 12 ch; 4 x 3 st",
    "*1 plain, 3 ch, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st",
    "*1 tr., 3 chain, miss 2; repeat": "4 dc, 12 ch; 4 x 3 st",
    "*1 tre., 3 chain, miss 2; repeat": "4 dc, 12 ch; 4 x 3 st",
    "*1 long, 3 chain, miss 2; repeat": "4 dc, 12 ch; 4 x 3 st",
    "*1 long stitch, 3 chain, miss 2; repeat": "4 dc, 12 ch; 4 x 3 st",
    "*1 half treble, 1 chain, miss 1; repeat": "6 hdc, 6 ch; 6 x 2 st",
    "1 double treble in every stitch": "12 tr; 12 x 1 st",
    "*1 triple treble, 1 chain, miss 1; repeat": "6 dtr, 6 ch; 6 x 2 st",
    "*1 quadruple treble, 1 chain, miss 1; repeat": "6 trtr, 6 ch; 6 x 2 st",
    "*1 single crochet, 3 chain, miss 2; repeat": "4 ss, 12 ch; 4 x 3 st",
    "*1 slip stitch, 3 chain, miss 2; repeat": "4 ss, 12 ch; 4 x 3 st",
    # names that these terms do not have are never guessed in silence
    "*1 s.c., 3 chain, miss 2; repeat": "4 sc, 12 ch; 4 x 3 st; asked term-unknown-here",
    "*1 tc, 3 chain, miss 2; repeat": "4 tr, 12 ch; 4 x 3 st; asked term-unknown-here",
    "*1 long treble, 3 chain, miss 2; repeat": "4 dtr, 12 ch; 4 x 3 st; asked term-unknown-here",
}
NUMBERS = {
    "*a treble, a chain, miss one; repeat": "6 dc, 6 ch; 6 x 2 st",
    "*Two trebles in next, one chain, miss one; repeat": "12 dc, 6 ch; 6 x 2 st",
    "*twelve treble in one, miss five; repeat": "24 dc; 2 x 6 st",
    "(a double, a chain, miss one), six times": "6 sc, 6 ch",
    "(1 plain, 2 chain, miss 1) thrice, 6 plain": "9 sc, 6 ch",
}
KEPT = {
    # the name in full behind its abbreviation is no further stitch
    "*1 tr. (treble), 2 ch. (chain stitch), miss 2; repeat": "4 dc, 8 ch; 4 x 3 st",
    "*1 single (slip stitch), 1 d. c. (double crochet); repeat": "6 ss, 6 sc; 6 x 2 st",
    "*1 treble in scarlet, 1 chain, miss 1; repeat": "6 dc, 6 ch; 6 x 2 st",
    "with white *1 treble, 1 chain, miss 1; repeat": "6 dc, 6 ch; 6 x 2 st",
    "*2 plain with black, 2 plain scarlet; repeat": "12 sc; 3 x 4 st",
    "*1 treble, taking the back thread; repeat": "12 dc; 12 x 1 st",
    "1 plain in the back loop of each stitch": "12 sc; 12 x 1 st",
    "1 plain in each stitch, inserting the hook in the front half": "12 sc; 12 x 1 st",
    "1 plain in both loops of each stitch": "12 sc; 12 x 1 st",
}
SHAPED = {
    "*1 plain, 2 in 1; repeat": "18 sc; 6 x 2 st",
    "*1 plain, two in one; repeat": "18 sc; 6 x 2 st",
    "*1 plain, 3 stitches in 1; repeat": "24 sc; 6 x 2 st",
    "*2 plain on 1, 1 plain; repeat": "18 sc; 6 x 2 st",
    "*1 treble in next stitch, 2 treble in next; repeat": "18 dc; 6 x 2 st",
    "2 plain in every stitch": "24 sc; 12 x 1 st",
    "*2 plain, miss 1; repeat": "8 sc; 4 x 3 st",
    "*2 treble together over next 2 stitches, 2 chain; repeat": "6 dc, 12 ch; 6 x 2 st",
    "*3 treble, retain the last loops; repeat": "4 dc; 4 x 3 st",
}
WIDENED = {
    # twelve stitches: what is left of them has one in each
    "1 treble in each stitch, increasing in every other stitch": "18 dc; 6 x 2 st; 0 x 0 st",
    "plain all round, increasing in every 8th stitch": "13 sc; 1 x 8 st; 4 x 1 st",
    "plain, and increase one in every 5th": "14 sc; 2 x 5 st; 2 x 1 st",
    "plain, decreasing by missing one in every 5th stitch": "10 sc; 2 x 5 st; 2 x 1 st",
    "1 plain in every stitch, decreasing in every other": "6 sc; 6 x 2 st; 0 x 0 st",
}
NOT_SHAPED = {
    "1 treble in each stitch, increasing 6 times in the round": "exception-in-words",
    "1 treble in the 1st, 2 plain in each stitch, increasing in every 8th": "not-understood",
    "working two stitches into every one": "not-understood",
    "increase to 30": "exception-in-words",
    "decrease by missing one": "exception-in-words",
    "6 plain over 7": "place-unclear",
    "*3 treble, 1 chain, keep the loops on the needle; repeat": "unknown-word",
}
PICOTS = (
    "1 picot", "1 p.", "picot (5 chain)", "picot of 5", "1 purl", "1 purl (5 chain, 1 slip in the 1st)",
    "picot (4 ch, 1 plain in the 4th chain from the hook)", "1 picot, that is, 4 ch, 1 single in 1st stitch",
    "a picot, viz., 4 chain and 1 plain in the first of the four", "a picot formed of 4 ch and 1 single in the first", "4 chain, 1 plain back in treble (picot)", "5 chain, 1 single in the 1st", "4 chain, 1 plain in 1st", "4 ch, 1 plain in the first of the 4 ch",
)  # fmt: skip
OTHER_PICOTS = {
    "*1 plain, 3 picots, 1 plain; repeat": "12 sc, 18 picot; 6 x 2 st",
    "*2 plain, 3 picots (4 chain, 1 single); repeat": "12 sc, 18 picot; 6 x 2 st",
    "*2 plain, 1 picot (3 chain, 1 treble in first); repeat": "12 sc, 6 picot; 6 x 2 st",
    "*2 plain, 2 picots (that is, 5 chain and 1 single in the first of them twice); repeat": (
        "12 sc, 12 picot; 6 x 2 st"
    ),
    "*2 plain, 1 picot (5 chain, 1 single in the 4th); repeat": "12 sc, 6 ch, 6 picot; 6 x 2 st",
    "*2 plain, 2 picots (5 ch, 1 single in the 4th st from hook); repeat": "12 sc, 12 ch, 12 picot; 6 x 2 st",
    "*2 plain, 8 chain, picot 5 of them; repeat": "12 sc, 18 ch, 6 picot; 6 x 2 st",
    "*2 plain, 5 chain, slip on same stitch; repeat": "12 sc, 6 ss, 30 ch; 6 x 2 st; asked perhaps-picot",
    "*2 plain, 5 chain, 1 plain in same stitch; repeat": "18 sc, 30 ch; 6 x 2 st; asked perhaps-picot",
}  # fmt: skip
NO_PICOTS = {
    # a picot that cannot be told from its bracket: never both
    "*2 plain, 3 picots (4 chain, 1 single in the first, three times); repeat": "not-understood",
    "*2 plain, 1 picot (5 chain, miss 4, 1 plain in the next); repeat": "not-understood",
    "*2 plain, 7 chain, 1 picot (1 plain in the 4th chain), 2 chain; repeat": "not-understood",
    "*2 plain, 5 chain, 1 single in the last plain; repeat": "place-unclear",
    "*2 plain, 1 trefoil; repeat": "unknown-word",
    "*2 plain, draw out the loop, take out the needle; repeat": "unknown-word",
}


@cases(
    (STITCHES, UK), (STITCHES, NUMBERS), (STITCHES, KEPT), (STITCHES, SHAPED), (STITCHES, WIDENED)
)
def test_what_is_made(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@pytest.mark.parametrize("picot", PICOTS)
def test_a_picot(picot: str) -> None:
    assert said(f"*2 plain, {picot}; repeat", STITCHES) == "12 sc, 6 picot; 6 x 2 st"


@cases((STITCHES, OTHER_PICOTS))
def test_several_picots_and_perhaps_one(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


@cases((STITCHES, NOT_SHAPED), (STITCHES, NO_PICOTS))
def test_what_is_not_read_is_told(on: On, row: str, comes_to: str) -> None:
    assert f"asked {comes_to}" in said(row, on).split("; ")


def test_a_book_s_own_names_are_said_once() -> None:
    """Several books of the 1850s: `tc` thrice over, `c` a chain, `l` the long stitch."""
    book = "terms: early\nchains count as stitches: yes\ntc means tr\nl means dc\nc means chain\n"
    early = On(12, ("1 dc in each loop",), headings=book)
    assert said("*1 s c, 3 c, miss 2; repeat", early) == "4 sc, 12 ch; 4 x 3 st"
    assert said("*1 tc, 3 c, miss 2; repeat", early) == "4 tr, 12 ch; 4 x 3 st"
    assert said("*1 l, 3 c, miss 2; repeat", early) == "4 dc, 12 ch; 4 x 3 st"
    assert said("*1 d c, 3 c, miss 2; repeat", early) == "4 dc, 12 ch; 4 x 3 st"
    assert said("1 long treble in each", early) == "12 dtr; 12 x 1 st"


def test_a_figure_is_named_once_and_used_by_its_name() -> None:
    fan = ARCHES._replace(headings=f"{ARCHES.headings}fan = 2 treble, 2 chain, 2 treble\n")
    assert said("*1 fan in next loop, 1 chain; repeat", fan) == "48 dc, 36 ch; 12 x 1 space"
    assert said("a fan in each loop", fan) == "48 dc, 24 ch; 12 x 1 space"
    trefoil = "trefoil = 5 chain, 1 single in the 1st, 5 chain, 1 single in the 1st\n"
    picots = FIVES._replace(headings=FIVES.headings + trefoil)
    assert (
        said("*2 plain in next loop, 1 trefoil; repeat", picots) == "12 sc, 12 picot; 6 x 1 space"
    )
