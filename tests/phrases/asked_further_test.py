"""What closes as it stands and may yet be meant otherwise: lists and places, asked or left unread."""

from __future__ import annotations

from phrases.said import ARCHES, BLOCKS, FIVES, LOOPS, PICOTS, STITCHES, On, cases, said

LISTS = {
    "*3 treble, 1 picot, 3 treble in the same loop, 1 plain in next; repeat": "36 dc, 6 sc, 6 picot; 6 x 8 st; asked perhaps-one-place",
    "*1 treble, 1 chain, 1 treble in the same loop, 1 chain; repeat": "96 dc, 96 ch; 48 x 1 st; asked perhaps-one-place",
    "*2 treble in loop (2 chain, 2 treble) twice, 1 plain in next loop; repeat": "24 dc, 4 sc, 16 ch; 4 x 3 space; asked perhaps-one-place",
    "*1 treble in next loop, (1 chain, 1 treble in next loop) twice; repeat": "12 dc, 8 ch; 4 x 3 space",
    "1 plain, 4 treble with a purl after the second, 1 plain, in each loop": "24 sc, 48 dc, 12 picot; 12 x 1 space",
    "*1 plain, 3 treble with a purl between each, 1 plain, in loop; repeat": "24 sc, 36 dc, 24 picot; 12 x 1 space",
    "*3 treble in loop, 3 chain between, 3 treble in the next, 1 plain in next; repeat": "24 dc, 4 sc, 12 ch; 4 x 3 space",
    "*3 treble in loop, 3 treble in the next, with 3 chain between them, 1 plain in next; repeat": "24 dc, 4 sc, 12 ch; 4 x 3 space",
    "*1 plain in loop, 3 treble in next loop with 3 chain between; repeat": "6 sc, 18 dc, 36 ch; 6 x 2 space; asked perhaps-as-they-come",
    "*2 treble in loop, 2 in next loop, all worked off together, 5 chain; repeat": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "*2 treble in each of the next 2 loops, all worked off together, 5 chain; repeat": "6 dc, 30 ch; 6 x 2 space",
    "1 plain in each loop, divided by 3 chain, 1 picot, 3 chain": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "2 treble in each loop, with a picot between the loops": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "3 treble in each loop, with a picot between each": "36 dc, 24 picot; 12 x 1 space",
}
JUST_MADE = {
    "*1 double in next loop, 9 chain, form into a ring, 15 double in it, 3 chain; repeat": "192 sc, 144 ch; 12 x 1 space; asked ends-inside; asked perhaps-just-made",
    "*1 double in next loop, 6 chain, 5 double on it; repeat": "72 sc, 72 ch; 12 x 1 space; asked perhaps-just-made",
    "*1 plain in the loop, 2 plain in it, 3 chain; repeat": "36 sc, 36 ch; 12 x 1 space",
}
IN_SPACES = {
    "*1 plain in loop, 5 chain, 5 treble under these 5 chain; repeat": "6 sc, 30 ch; 6 x 1 loop; asked not-understood",
    "6 treble in 5 ch, 3 ch, miss 1 5-ch; repeat": "18 dc, 9 ch; 3 x 2 ch-5 space",
    "2 double, 1 treble, 2 double in each ch": "58 sc, 1 dc; 28 x 1 ch; asked place-unclear; asked perhaps-one-place; asked passes-more",
    "fill each ch with 3 double": "90 sc; 30 x 1 ch; asked perhaps-one-place",
}
BETWEEN_THEM = {
    "*1 plain between picots, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 picot; asked place-assumed",
    "*1 plain on the plain between the loops, 5 chain; repeat": "12 sc, 60 ch; 12 x 1 sc; asked place-assumed; asked perhaps-one-place",
}
BETWEEN_TREBLE = {
    "2 treble between 2 treble, 3 chain; repeat": "36 dc, 54 ch; 18 x 1 dc; asked place-assumed",
    "*1 plain between the treble, 5 chain; repeat": "18 sc, 90 ch; 18 x 1 dc; asked place-assumed",
}
DOTTED = {
    "sk. 2 treble, 1 plain in next treble, ch. 2; rep.": "4 sc, 8 ch; 4 x 3 dc",
    "1 plain in ea. treble": "12 sc; 12 x 1 dc",
}


SHELLS = On(6, ("*(2 treble, 2 chain, 2 treble) in next loop, 1 chain; repeat",))
SCALLOPS = On(6, ("*5 treble in loop, 3 chain, 1 plain in next, 3 chain; repeat",))
ON_THE_TREBLE = {
    "*2 double on the treble, 3 double in 2 chain, 2 double on the treble, 1 single in 1 chain; "
    "repeat": "42 sc, 6 ss; 6 x 4 dc; asked perhaps-one-place",
}
ON_SCALLOPS = {
    "5 double on the treble, 3 on the 3 chain, 1 on the plain, 3 on the 3 chain; repeat": "36 sc; 3 x 5 dc; asked perhaps-one-place",
    "*5 single on the treble, 3 double under chain, miss the plain, 3 double under chain; repeat": "15 ss, 18 sc; 3 x 5 dc; asked perhaps-one-place",
    "*1 double on the centre of the treble, 5 chain; repeat": "3 sc, 15 ch; 3 x 1 group; asked place-assumed",
    "*1 double on each of the 3 centre chain of the 5, 4 chain; repeat": "15 dc, 3 sc, 18 ch; 3 x 2 loop; asked not-understood",
}
OF_WHICH_ONE = {
    "5 treble in one, 1 double in the next loop, all round": "30 dc, 6 sc; 6 x 2 space; asked place-assumed",
    "*3 treble in each of the next two, 1 plain in the next loop; repeat": "24 dc, 4 sc; 4 x 3 space; asked place-assumed",
    "*in loop 5 treble, 1 plain in next; repeat": "30 dc, 6 sc; 6 x 2 space",
    "1 plain in every loop, missing the 3 chain, with 5 chain between": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "*3 treble in each of the next 2 loops, 3 chain after each, 1 plain in next; repeat": "24 dc, 4 sc, 24 ch; 4 x 3 space",
    "*7 treble in plain, 1 plain in 3rd; repeat": "21 dc, 3 sc; 3 x 4 sc; asked place-assumed",
    "*1 plain on plain, 7 chain, 1 single in the 4th, 3 chain; repeat": "2 sc, 2 ss, 20 ch; 2 x 5 sc; 2 left over; does not close; asked perhaps-just-made; asked row-does-not-close",
    "*5 chain, 1 plain in the 4th; repeat": "12 sc, 60 ch; 12 x 4 st",
    "slip to centre of loop, 3 chain for 1 treble, * 5 chain, 1 treble in next loop; repeat, "
    "joining the last 5 chain to the third of the 3 chain": (
        "12 dc, 60 ch; 11 x 1 space; asked passes-more"
    ),
}
BETWEEN_PAIRS = {
    "*6 treble in 5 chain with 2 chain between each pair, 1 plain on plain; repeat": "36 dc, 6 sc, 24 ch; 6 x 1 ch-5 space",
}


LAST_ONCE = {
    "always alternately 3 treble on the next 3 ch, 3 chain; finally 3 chain, join": "36 dc, 39 ch; 12 x 3 ch; asked perhaps-instead",
    "always alternately 1 double on the next double, 3 chain; then 2 treble on the next loop": "12 sc, 2 dc, 36 ch; 12 x 1 sc",
    "3 chain, 2 treble into same loop, *2 chain, 3 treble into next loop; repeat from *, 2 chain": "36 dc, 24 ch; 11 x 1 space; asked start-chain-assumed",
    "3 chain, which count as first treble, 2 treble on the same 3 ch, *1 chain, 3 treble on the next "
    "3 ch; repeat from *, 1 chain": "36 dc, 12 ch; 11 x 1 ch-3 space",
    "*1 double into the loop, 4 chain, 1 treble into the double just worked; repeat": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
}
ON_BLOCKS = {
    "*3 treble on 3 treble, 4 chain, miss 1 chain, 1 chain and 1 treble; repeat": "24 dc, 30 ch; 6 x 3 dc",
    "*3 treble into loop, 4 chain, 1 double on the last of these 3 treble, miss 1 group; repeat": "9 dc, 3 sc, 12 ch; 3 x 2 space; asked perhaps-just-made",
}


TWO_RUNS = {
    "*4 treble on the next double and 3 chain, 1 chain; repeat": "48 dc, 12 ch; 12 x 1 sc; asked place-assumed",
    "*4 treble on the next double and the following 3 chain, 1 chain; repeat": "48 dc, 12 ch; 12 x 1 sc",
    "*1 treble on the next double and 3 following chain, 1 chain; repeat": "48 dc, 12 ch; 12 x 1 sc",
    "*1 treble in each of 1 double and 3 chain, miss 3 chain; repeat": "12 dc, 36 ch; 12 x 1 sc",
    "*1 treble on the next double and 3 chain; repeat": "12 dc, 36 ch; 12 x 1 sc",
    "*4 treble (1 on double, 2 in loop, 1 on double.), 2 chain, miss 1 loop; repeat": "24 dc, 12 ch; 6 x 2 sc",
    "*3 treble (1 on double, 1 in loop) twice, 2 chain; repeat": "28 dc, 8 ch; 4 x 12 st",
    "*3 treble (1 treble on double, 2 treble in loop), 2 chain; repeat": "36 dc, 24 ch; 12 x 1 sc",
    "*4 treble (1 treble on double, 2 treble in loop), 2 chain; repeat": "42 dc, 12 ch; 6 x 8 st; asked place-assumed",
}
PARTED_INSIDE = {
    "into each loop work 5 treble with 1 chain between each": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "into each loop work 1 plain, 5 treble, 1 plain, with 1 chain between each treble": "24 sc, 60 dc, 48 ch; 12 x 1 space",
    "into each loop work 1 plain, 1 treble, with 1 chain between each": "12 sc, 12 dc, 12 ch; 12 x 1 space",
}
CLOSED = {
    "1 double in loop, *5 chain, 1 double in next loop; repeat from *, 5 chain, 1 single in the first": "12 sc, 60 ch; 11 x 1 loop",
    "5 chain, 1 single in the first, *3 chain, 1 double in loop; repeat from *": "12 sc, 36 ch, 1 picot; 12 x 1 loop",
}
SEVENS = On(6, ("1 plain in each loop, with 7 chain between",))
CLOSED_BELOW = {
    "*1 double on the double, 7 chain, 1 double in the 4th of the 7 chain, 3 chain; repeat": "12 sc, 60 ch; 6 x 1 sc; asked perhaps-just-made",
    "*1 double on the double, 7 chain, 1 treble in the 4th of the 7 chain, 3 chain; repeat": "6 sc, 6 dc, 60 ch; 6 x 1 sc",
}


TOLD_TWICE_WHERE = {
    "*2 treble in loop, inserting the hook under the chain, 5 chain; repeat": "24 dc, 60 ch; 12 x 1 space; asked taken-as-remark",
    "*1 treble, inserting hook under 3 chain, 5 chain; repeat": "12 dc, 60 ch; 12 x 1 ch-3 space",
    "*2 double in loop, working over the 3 chain, 5 chain; repeat": "24 sc, 60 ch; 12 x 1 space; asked taken-as-remark",
    "*1 treble, worked into the double, 3 chain; repeat": "12 dc, 36 ch; 12 x 1 sc",
    "*1 double in loop, working over the 3 chain, 7 treble; repeat": "6 sc, 42 dc; 6 x 2 space",
}
PLACES_FIRST = {
    "*into double 1 treble, 1 chain, 1 treble, 3 chain, into loop 1 double, 3 chain; repeat": "24 dc, 12 sc, 84 ch; 12 x 1 sc",
    "*on the next 3 chain. 2 treble, 3 chain, 2 treble, 1 chain, on the next double. 1 treble, 1 chain; repeat": "60 dc, 60 ch; 12 x 1 ch-3 space",
    "*2 treble, 1 chain, in each of 6 chain; repeat": "72 dc, 36 ch; 6 x 6 ch; asked perhaps-one-place",
}
SO_OFTEN_IN_ONE = {
    "*1 double on double, twice 3 treble separated by 1 chain in the next loop; repeat": "12 sc, 72 dc, 12 ch; 12 x 1 sc",
    "*1 double on double, 3 times 3 treble in loop, 1 chain between; repeat": "12 sc, 108 dc, 24 ch; 12 x 1 sc",
    "*twice 3 treble separated by 1 chain in each of the next 2 loops, 1 chain; repeat": "72 dc, 18 ch; 6 x 2 space",
    "*3 times 1 treble in loop, 1 chain; repeat": "12 dc, 12 ch; 12 x 1 space; asked times-of-the-row; asked perhaps-one-place",
}
WORKED_OFF = {
    "*1 treble in loop, leaving last loop on hook, 1 treble in next loop, draw through all loops, 5 chain; repeat": "6 dc, 30 ch; 6 x 2 space",
    "*1 treble in loop, leaving last loop on hook, 1 treble in same, draw through all loops, 5 chain; repeat": "12 dc, 60 ch; 12 x 1 space",
    "*1 treble, leaving last loop on hook, 1 treble, draw through all loops, 5 chain; repeat": "24 dc, 120 ch; 24 x 2 st",
    "*1 treble in loop, leaving last loop on hook, 1 treble on double, draw through all loops, 5 chain; repeat": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
    "*2 treble in loop, leaving last loops on hook, 2 treble in next loop, draw through all loops, 5 chain; repeat": "12 sc, 36 ch; 12 x 1 loop; asked not-understood",
}


GROUPS_APART = {
    "*3 treble in loop, 3 treble in same, 3 treble in same, 1 chain between each 3; repeat": "108 dc, 24 ch; 12 x 1 space",
    "*3 treble in loop, 3 treble in next, 3 treble in next, divided by 2 chain; repeat": "36 dc, 16 ch; 4 x 3 space",
    "3 treble in loop, 2 chain between, 3 treble in the next; repeat": "36 dc, 12 ch; 6 x 2 space; asked perhaps-shared",
    "*3 treble in loop, 3 treble in the same, separated by 3 chain, 1 double on double; repeat": "72 dc, 12 sc, 36 ch; 12 x 1 space",
    "*2 treble in loop, 2 treble in next loop, divided by 3 chain, 5 chain; repeat": "24 dc, 48 ch; 6 x 2 space",
    "*2 treble in loop, 3 treble in next loop, divided by 3 chain, 5 chain; repeat": "30 dc, 66 ch; 6 x 2 space",
}
INSTEAD = {
    "*1 double in loop, 2 chain, miss 1 loop; repeat from *, ending with 2 chain": "6 sc, 14 ch; 6 x 2 space; asked perhaps-instead",
    "*1 double in loop, 2 chain, miss 1 loop; repeat from *, ending with 1 treble in first double": "6 sc, 1 dc, 12 ch; 6 x 2 space; asked not-at-the-head",
}
LISTS_ON_CHAINS = {
    "*1 double on double, 1 double, 5 treble, 1 double on the next 5 chain; repeat from *": "21 sc, 15 dc; 3 x 2 sc; asked place-unclear; asked perhaps-one-place",
    "*1 double on double, (2 treble, 1 chain) 3 times, 2 treble on the next 5 chain; repeat from *": "3 sc, 24 dc, 9 ch; 3 x 2 sc; asked perhaps-one-place; asked perhaps-nothing-missed",
}


MADE_BY_ITSELF = {
    "*1 double on the double, 6 chain, 1 double in 4th chain from hook, 1 double in each of next 2 chain; repeat": "18 sc, 12 ch, 6 picot; 6 x 1 sc; asked perhaps-just-made",
    "*1 double on the double, 5 chain, 3 treble under the 5 chain, miss 1 double; repeat": "3 sc, 9 dc, 15 ch; 3 x 2 sc; asked perhaps-just-made",
    "*1 double on the double, 5 chain, 3 treble under the 5 chain, 5 chain; repeat": "6 sc, 18 dc, 60 ch; 6 x 1 sc",
    "*1 double on the double, 5 chain, 1 double under the 5 chain; repeat": "12 sc, 30 ch; 6 x 1 sc",
}
OF_THE_FIRST = {
    "*2 treble on the first of the next 3 treble, 1 treble on next treble, 2 treble on the third treble, 2 chain; repeat": "15 dc, 6 ch; 3 x 2 3-dc run; asked perhaps-counted-on",
    "*3 chain, 1 treble on the second, 1 picot, 1 treble on the third of the next 3 treble, 3 chain; repeat": "12 dc, 36 ch, 6 picot; 6 x 6 st; 3 left over; does not close; asked perhaps-counted-on; asked row-does-not-close",
    "*1 double on the 1st treble of next group, 3 chain, 1 double on the 3rd treble; repeat": "6 sc, 9 ch; 3 x 2 group; asked perhaps-counted-on",
}


LED_IN = {
    "1 slip, 3 chain for treble, 2 treble under 5 chain, *1 chain, 3 treble under next 5 chain; repeat from *, 1 chain": "1 ss, 15 dc, 5 ch; 4 x 1 ch-5 space; asked perhaps-leads-on",
    "2 slip, 3 chain, 2 treble in loop, *1 chain, 3 treble in next loop; repeat from *, 1 chain": "2 ss, 14 dc, 8 ch; 4 x 1 space; asked place-unclear; asked perhaps-leads-on",
    "1 slip, 3 chain for treble, *1 chain, 3 treble in next loop; repeat from *": "1 ss, 16 dc, 5 ch; 5 x 1 space; asked perhaps-leads-back; asked passes-more",
}


@cases(
    (ARCHES, LISTS),
    (ARCHES, JUST_MADE),
    (FIVES, IN_SPACES),
    (PICOTS, BETWEEN_THEM),
    (BLOCKS, BETWEEN_TREBLE),
    (STITCHES, DOTTED),
    (
        LOOPS,
        {
            "*2 plain in the next loop (5 chain, 2 plain) twice, 1 plain in next; repeat": "14 sc, 20 ch; 2 x 6 loop; asked perhaps-one-place; asked perhaps-one-place"
        },
    ),
    (SHELLS, ON_THE_TREBLE),
    (SCALLOPS, ON_SCALLOPS),
    (ARCHES, OF_WHICH_ONE),
    (FIVES, BETWEEN_PAIRS),
    (ARCHES, LAST_ONCE),
    (BLOCKS, ON_BLOCKS),
    (ARCHES, TWO_RUNS),
    (ARCHES, PARTED_INSIDE),
    (LOOPS, CLOSED),
    (SEVENS, CLOSED_BELOW),
    (ARCHES, TOLD_TWICE_WHERE),
    (ARCHES, PLACES_FIRST),
    (ARCHES, SO_OFTEN_IN_ONE),
    (ARCHES, WORKED_OFF),
    (ARCHES, GROUPS_APART),
    (ARCHES, INSTEAD),
    (FIVES, LISTS_ON_CHAINS),
    (FIVES, MADE_BY_ITSELF),
    (BLOCKS, OF_THE_FIRST),
    (FIVES, LED_IN),
)
def test_what_may_be_meant_otherwise(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
