"""Rows with what books say beside their steps: where the hook goes, what a picot is made of, how
the work is kept flat, what it is called and what it comes to be.
"""

from __future__ import annotations

from phrases.said import ARCHES, BLOCKS, FIVES, LOOPS, SIXES, STITCHES, On, cases, said

from border.text.source import Source
from border.text.syntax import read_border

SHELLS = On(6, ("(1 treble, 1 chain) 6 times in each loop",))
SEVENS = On(36, ("7 treble, 2 chain, miss 2; repeat",))
FANS = On(12, ("*5 treble in next loop, 1 plain in next; repeat",))

WHERE_THE_HOOK_GOES_ON_FANS = {
    "1 plain between two scallops, inserting the needle in the plain of the round before, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 shell; asked place-assumed; asked taken-as-remark",
    "1 plain between two scallops, putting the needle in the plain stitch, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 shell; asked place-assumed; asked taken-as-remark",
}

WHERE_THE_HOOK_GOES_ON_BLOCKS = {
    "*1 plain between two scallops, putting the hook under the middle chain, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 shell; asked place-assumed; asked taken-as-remark",
    "*1 plain between two scallops, putting the hook in the middle of the chain, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 shell; asked place-assumed; asked taken-as-remark",
    "*1 plain between two scallops (inserting the needle in the chain), 7 chain; repeat": "6 sc, 42 ch; 6 x 1 shell; asked place-assumed; asked taken-as-remark",
    "*1 plain between two scallops and inserting the needle in the chain, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 shell; asked place-assumed; asked taken-as-remark",
}

WHERE_THE_HOOK_GOES_ON_ARCHES = {
    "(1 plain, 3 chain, 1 plain) in the space, inserting the needle in the chain, 7 chain; repeat": "24 sc, 120 ch; 12 x 1 space; asked taken-as-remark",
    "3 plain in each space, with 1 chain between, inserting the needle in the chain": "36 sc, 12 ch; 12 x 1 space; asked taken-as-remark",
    "Inserting the needle in the chain, work 3 plain in each space": "36 sc; 12 x 1 space; asked taken-as-remark",
    "3 plain in next space, 2 chain, inserting the needle in the chain; repeat": "36 sc, 24 ch; 12 x 1 space; asked taken-as-remark",
    "3 plain in next space, 2 chain, inserting the needle in the chain and repeat": "36 sc, 24 ch; 12 x 1 space; asked taken-as-remark",
    # where the words go on is not known: never a step of their own
    "3 plain in next space, 2 chain, inserting the needle in the chain and plain; repeat": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "*1 plain in the space, putting 3 chain; repeat": "12 sc, 36 ch; 12 x 1 space",
    "3 plain in each space, inserting the hook underneath the chain": "36 sc; 12 x 1 space; asked taken-as-remark",
    "3 plain in each space, inserting the hook underneath the chain, 3 chain; repeat": "36 sc, 36 ch; 12 x 1 space; asked taken-as-remark",
}

WHERE_THE_HOOK_GOES_ON_STITCHES = {
    "Plain all round, inserting the needle in the chain": "12 sc; 12 x 1 st; asked taken-as-remark",
    "1 plain in each stitch all round, inserting the needle in the treble": "12 sc; 12 x 1 st; asked taken-as-remark",
    "1 plain (inserting the needle under the treble), 7 chain, miss 2; repeat": "4 sc, 28 ch; 4 x 3 dc",
    "*1 plain and inserting the needle in the treble, 7 chain; repeat": "12 sc, 84 ch; 12 x 1 dc",
}

PICOTS_MADE_OF = {
    "*1 plain, 1 purl of 4 chain and 1 slip stitch, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop; asked perhaps-picot",
    "*1 plain, 2 purls of 4 chain and 1 slip stitch, 2 chain, miss 1; repeat": "6 sc, 12 ch, 12 picot; 6 x 2 loop; asked perhaps-picot",
    "*1 plain, 1 purl of 4 chain and 1 plain, 2 chain, miss 1; repeat": "8 sc, 8 ch, 4 picot; 4 x 3 loop; asked perhaps-picot",
    "*1 plain, 1 purl of 4 chain, 1 slip stitch, 2 chain, miss 1; repeat": "4 sc, 4 ss, 8 ch, 4 picot; 4 x 3 loop; asked perhaps-picot",
    "*1 plain, 1 purl of 4 chain, 1 plain, 2 chain, miss 1; repeat": "8 sc, 8 ch, 4 picot; 4 x 3 loop",
    "*1 plain, picot of 4, 1 single, 2 chain, miss 1; repeat": "4 sc, 4 ss, 8 ch, 4 picot; 4 x 3 loop",
    "*1 plain, 1 purl of 4 chain and 1 treble, 2 chain, miss 1; repeat": "4 sc, 4 dc, 8 ch, 4 picot; 4 x 3 loop",
    "*1 plain, 1 purl, consisting of 4 chain and 1 plain, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 purl, composed of 4 chain, 1 single, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop; asked perhaps-picot",
    "*1 plain, a purl composed of 4 chain caught with a single, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 purl, consisting of 4 chain, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 purl (of 4 chain and 1 slip stitch), 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p. (made of 4 ch., 1 single in the first), 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p., made of 4 ch. and 1 single in the first, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p., made thus: 4 ch., 1 single in the first, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p. thus: 4 ch., 1 single in the first; 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p. (made thus: 4 ch., 1 single in the first), 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 picot made as follows: 4 ch., 1 single in the first; 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
}

WITH_CARE = {
    "1 plain in each loop, taking care not to draw in the edge": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop, being careful to keep the work flat": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop, keeping the work flat": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop. Keep the work flat.": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop, keeping the loops of an equal length": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop, take care to keep the work quite flat, and fasten off": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop, so that the work lies flat": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop. The work must lie flat.": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "1 plain in each loop, not drawing it too tight": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "Taking care to keep the edge flat, work 1 plain in each loop": "12 sc; 12 x 1 loop; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2 (being careful not to twist the chain); repeat": "4 sc, 12 ch; 4 x 3 loop; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2, being careful not to miss any stitches; repeat": "4 sc, 12 ch; 4 x 3 loop; asked taken-as-remark",
    "*1 plain, 3 chain, miss 2; repeat, working rather loosely": "4 sc, 12 ch; 4 x 3 loop",
    "*1 plain, 3 chain, miss 2; repeat, taking care to increase at the corners": "4 sc, 12 ch; 4 x 3 loop; asked corners-left-out",
    # what is counted is no remark
    "*1 plain, 3 chain, taking care to miss 2; repeat": "nothing; asked unknown-word",
    "*1 plain, 3 chain, miss 2; keep on to the end": "nothing; asked unknown-word",
    "*1 plain, 3 chain, taking care to have 2 plain in each; repeat": "nothing; asked unknown-word",
    "*3 treble, keeping the last loop of each on the hook, draw through all, 3 chain; repeat": "4 dc, 12 ch; 4 x 3 loop",
}

WHERE_A_ROW_ENDS = {
    "1 treble in each loop; fasten off at the end of the row": "12 dc; 12 x 1 loop",
    "1 treble in each loop; break off the thread at the end of the round": "12 dc; 12 x 1 loop",
    "1 treble in each loop; break off the cotton at the end of this row": "12 dc; 12 x 1 loop",
    "1 treble in each loop; fasten off and sew in the ends": "12 dc; 12 x 1 loop; asked taken-as-remark",
    "1 treble in each loop; fasten off and weave in the end": "12 dc; 12 x 1 loop; asked taken-as-remark",
    "1 treble in each loop. This completes the rose.": "12 dc; 12 x 1 loop; asked taken-as-remark",
    "1 treble in each loop. This finishes the first rose.": "12 dc; 12 x 1 loop; asked taken-as-remark",
    "1 treble in each loop, this forms the rose": "12 dc; 12 x 1 loop; asked taken-as-remark",
    "1 treble in each loop, which completes the rose": "12 dc; 12 x 1 loop; asked taken-as-remark",
}

CALLED = {
    "Crazy stitch: *1 plain, 3 chain, 3 treble in same place, miss 2; repeat": "4 sc, 12 dc, 12 ch; 4 x 3 loop; asked taken-as-remark",
    "Shells. 6 treble in 1, miss 2, 1 plain, miss 2; repeat": "12 dc, 2 sc; 2 x 6 loop; asked taken-as-remark",
    "Petals. *1 plain, 3 chain, miss 1; repeat": "6 sc, 18 ch; 6 x 2 loop; asked taken-as-remark",
    # which may be meant for the head of a clause, and is a stitch
    "Edge: *1 treble, 1 chain, miss 1; repeat": "nothing; asked not-understood",
    "Treble: *1 treble, 1 chain, miss 1; repeat": "nothing; asked not-understood",
    "Double treble. 1 chain. miss 1. repeat": "6 tr, 6 ch; 6 x 2 loop",
    "*6 treble in next loop (shell made), miss 2, 1 plain, miss 2; repeat": "12 dc, 2 sc; 2 x 6 loop",
    "*6 treble in next loop (a shell made), miss 2, 1 plain, miss 2; repeat": "12 dc, 2 sc; 2 x 6 loop",
    "*6 treble in next loop for shell, miss 2, 1 plain, miss 2; repeat": "12 dc, 2 sc; 2 x 6 loop",
}

WHAT_IT_FORMS = {
    "1 plain in each stitch, taking up the back thread to form a ridge": "12 sc; 12 x 1 st; asked taken-as-remark",
    "1 plain in each stitch, taking the back thread so as to form ridges": "12 sc; 12 x 1 st; asked taken-as-remark",
    "1 plain in each stitch, into the back thread, to form a ridge": "12 sc; 12 x 1 st; asked taken-as-remark",
    "3 chain to form a trable, 1 plain in each loop": "12 dc; 12 x 1 loop; asked unknown-word",
    "*1 treble, 5 chain, which forms a dot, miss 1; repeat": "12 dc; 12 x 1 loop; asked unknown-word",
    "*1 treble, 5 chain, 1 single in 1st, which forms a dot, miss 1; repeat": "6 dc, 6 picot; 6 x 2 st; asked taken-as-remark",
    "1 half-long in each stitch": "12 hdc; 12 x 1 st; asked term-unknown-here",
    "1 stc in each stitch": "12 tr; 12 x 1 st; asked term-unknown-here",
    "1 L in each stitch": "12 dc; 12 x 1 st",
}

AT_THE_BACK_ON_SIXES = {
    "5 chain, 1 plain behind each shell; repeat": "6 sc, 30 ch; 6 x 1 shell; asked place-assumed",
    "*1 plain at the back of the shell, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 shell; asked place-assumed",
    "5 chain behind the shell, 1 plain between the shells; repeat": "6 sc, 30 ch; 6 x 1 shell",
    "*1 plain in the 2 chain behind the shell, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 ch-2 space",
}

AT_THE_BACK_ON_FANS = {
    "*1 plain into the back of the plain, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 sc; asked place-assumed",
    "*1 plain into the back of the plain between the shells, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 sc; asked place-assumed",
}

BETWEEN_THEM = {
    "*2 treble in next, with a p of ch 4 between, miss 2; repeat": "8 dc, 4 picot; 4 x 3 loop",
    "*2 treble in next with a p between, miss 2; repeat": "8 dc, 4 picot; 4 x 3 loop",
}

ON_ARCHES = {
    "*2 treble with 1 plain between, into the plain, 3 chain; repeat": "24 dc, 12 sc, 36 ch; 12 x 1 sc",
    "*2 treble in next space, with 1 plain between; repeat": "24 dc, 12 sc; 12 x 1 space",
    "*3 treble divided by 1 plain in next space; repeat": "36 dc, 24 sc; 12 x 1 space",
    # inside each of the two, or between them
    "*2 treble in each of the next 2 spaces with a picot between; repeat": "24 dc, 12 picot; 6 x 2 space; asked perhaps-as-they-come",
    "*2 treble in each of the next 2 spaces with 1 plain between; repeat": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "*1 plain before the plain, 1 plain on it, and 1 after it, 3 chain; repeat": "36 sc, 36 ch; 12 x 1 space; asked place-assumed",
    "*1 treble before the plain, 3 ch, 1 treble after it; repeat": "24 dc, 36 ch; 12 x 1 space; asked place-assumed",
    "*1 treble in the chain before the plain, 3 ch, 1 treble in the chain after it; repeat": "24 dc, 36 ch; 12 x 1 space; asked place-assumed",
}

ON_FIVES = {
    "Slip stitch up 3 chain, *1 plain in loop, 5 chain; repeat from *": "3 ss, 5 sc, 25 ch; 5 x 1 space; asked perhaps-leads-on; asked perhaps-one-place; asked passes-more",
    "Slip stitch along 3 of the chain, *1 plain in loop, 5 chain; repeat from *": "3 ss, 5 sc, 25 ch; 5 x 1 space; asked perhaps-leads-on; asked perhaps-one-place; asked passes-more",
    "Slip stitch along 2 chain, 1 plain in the loop, *5 chain, 1 plain in next loop; repeat from *": "2 ss, 5 sc, 20 ch; 4 x 1 space; asked perhaps-leads-on; asked perhaps-one-place; asked perhaps-leads-back",
    "*1 plain, 3 treble, 1 plain, all worked under the loop; repeat": "12 sc, 18 dc; 6 x 1 space",
    "*1 plain, 3 treble, 1 plain, all made in the loop; repeat": "12 sc, 18 dc; 6 x 1 space",
    "4 plain in each of the three 5 ch. loops, 3 chain; repeat": "24 sc, 6 ch; 2 x 3 ch-5 space",
    "4 plain in each of the three 5 chain spaces, 3 chain; repeat": "24 sc, 6 ch; 2 x 3 ch-5 space",
}

ON_SIXES = {
    "5 chain, fasten between the shells; repeat": "6 ss, 30 ch; 6 x 1 shell; asked fastening-assumed",
    "*1 plain in the first treble of the group, 5 chain, 1 plain in the last treble of the same; repeat": "12 sc, 30 ch; 6 x 1 group",
    "*1 plain in the first of the 6 treble, 5 chain, 1 plain in the last treble of the same; repeat": "12 sc, 30 ch; 6 x 1 6-dc run",
}

TO_THE_RIGHT = {
    "*4 plain, 7 chain, fasten back in 4th plain to the right, 9 plain in loop; repeat": "39 sc, 3 ss, 21 ch; 3 x 4 loop; asked fastening-assumed",
    "*4 plain, 7 chain, 1 single in the 4th plain to the right, 9 plain in the loop; repeat": "39 sc, 3 ss, 21 ch; 3 x 4 loop",
    "*6 plain, 7 chain, fasten back in 5th plain to the right, 9 plain in loop; repeat": "30 sc, 2 ss, 14 ch; 2 x 6 loop; asked perhaps-counted-on; asked fastening-assumed",
}

ON_SHELLS = {
    "1 plain under every one chain in the shell": "36 sc; 36 x 1 ch-1 space",
    "1 plain in each space in the shell": "36 sc; 36 x 1 space",
    "*1 plain under the one chain, 3 chain, and so on around the shell": "6 sc, 18 ch; does not close; asked place-assumed; asked row-does-not-close",
}

AFTER_EVERY = {
    "1 treble in each loop, 3 ch after every 3rd treble, which forms a picot": "12 dc, 4 picot; 4 x 3 loop",
    "1 treble in each loop, 3 ch after every 3rd treble": "12 dc, 12 ch; 4 x 3 loop",
    "1 treble in each loop, and after every other treble 1 chain": "12 dc, 6 ch; 6 x 2 loop",
    "1 treble in each, after every other treble 1 chain": "12 dc, 6 ch; 6 x 2 loop",
    "1 treble in each loop, after every 3rd treble 2 chain": "12 dc, 8 ch; 4 x 3 loop",
    "1 plain in each loop all along the sides": "12 sc; 12 x 1 loop",
    "Insert the hook in the edge of the material and work 1 plain in each loop": "12 sc; 12 x 1 loop; asked taken-as-remark",
}

MISSING_EVERY_OTHER = {
    "5 treble in each space, missing every alternate space": "30 dc; 6 x 2 space",
    "5 treble under each chain, missing every other one": "30 dc; 6 x 2 space",
    "*5 treble in each space, 1 chain, missing every alternate space; repeat": "30 dc, 6 ch; 6 x 2 space",
    "*5 treble in loop, 1 chain, missing every other loop; repeat": "30 dc, 6 ch; 6 x 2 space",
    # in what the trebles go is not said
    "*5 treble, missing every other space; repeat": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
}

ON_SEVENS = {
    "*1 plain between the sevens, 5 chain; repeat": "4 sc, 20 ch; 4 x 1 block of 7",
}

NOT_SAID = {
    "two stitches in each loop": "6 sc, 30 ch; 6 x 1 loop; asked not-understood",
    "1 plain in each stitch, making 3 plain in the middle stitch of each loop": "36 sc; 36 x 1 st; asked exception-in-words",
    "slip along to the 3rd chain, *1 plain in loop, 5 chain; repeat from *": "5 sc, 25 ch; 5 x 1 space; asked perhaps-one-place",
}


@cases(
    (LOOPS, AFTER_EVERY),
    (ARCHES, MISSING_EVERY_OTHER),
    (SEVENS, ON_SEVENS),
    (FIVES, NOT_SAID),
    (LOOPS, BETWEEN_THEM),
    (ARCHES, ON_ARCHES),
    (FIVES, ON_FIVES),
    (SIXES, ON_SIXES),
    (LOOPS, TO_THE_RIGHT),
    (SHELLS, ON_SHELLS),
    (LOOPS, WITH_CARE),
    (LOOPS, WHERE_A_ROW_ENDS),
    (LOOPS, CALLED),
    (STITCHES, WHAT_IT_FORMS),
    (SIXES, AT_THE_BACK_ON_SIXES),
    (FANS, AT_THE_BACK_ON_FANS),
    (FANS, WHERE_THE_HOOK_GOES_ON_FANS),
    (BLOCKS, WHERE_THE_HOOK_GOES_ON_BLOCKS),
    (ARCHES, WHERE_THE_HOOK_GOES_ON_ARCHES),
    (STITCHES, WHERE_THE_HOOK_GOES_ON_STITCHES),
    (LOOPS, PICOTS_MADE_OF),
)
def test_what_is_said_beside_the_steps(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to


def test_which_stitch_is_not_said_is_told() -> None:
    _, told = read_border(Source("b", f"{LOOPS.headings}round 1: two stitches in each loop.\n"))
    assert [(f.message, f.help) for f in told] == [
        ("which stitch is made here is not said", 'name it: "two dc in each st"')
    ]


def test_a_shell_may_be_said_to_be_made() -> None:
    row = "*3 treble, 2 chain, 3 treble in next loop (shell made), miss 2; repeat"
    assert said(row) == "24 dc, 8 ch; 4 x 3 loop"


def test_a_heading_makes_a_dot_a_picot_and_a_half_long_a_stitch() -> None:
    dots = LOOPS._replace(headings=f"{LOOPS.headings}dot means picot\n")
    row = "*1 treble, 5 chain, 1 single in 1st, which forms a dot, miss 1; repeat"
    assert said(row, dots) == "6 dc, 6 picot; 6 x 2 loop"
    halves = LOOPS._replace(headings=f"{LOOPS.headings}half-long means us hdc\n")
    assert said("1 half long in each loop", halves) == "12 hdc; 12 x 1 loop"
