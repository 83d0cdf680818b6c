"""Rows much as books print them: ordinals with full stops, both chains at once, the side of lace."""

from __future__ import annotations

from phrases.said import ARCHES, LOOPS, SIXES, STITCHES, On, cases, said

OVER_THE_EDGE = {
    "1 treble at the edge of a row, 2 chain, and repeat": (
        "12 dc, 24 ch; 12 x 1 loop; asked place-assumed"
    ),
    "take up 3 loops together with 1 double, 5 chain; repeat": "4 sc, 20 ch; 4 x 3 loop",
    "Work closely in double over the hem": "12 sc; 12 x 1 loop",
    "1 plain in the next 3 loops together, 4 chain, 1 plain in next 3, and so on": (
        "8 sc, 8 ch; 2 x 6 loop; asked perhaps-shared; asked place-assumed; asked place-unclear"
    ),
    "3 treble in next loop; 1 chain; 3 treble in same loop (this is a shell); miss 2; shell in "
    "next, miss 2; repeat": "24 dc, 4 ch; 2 x 6 loop",
}
OVER_STITCHES = {
    "*1 plain in 2d. treble, 3 ch.; repeat": "6 sc, 18 ch; 6 x 2 dc",
    "*1 plain in 2d. Ch. 3; repeat": "6 sc, 18 ch; 6 x 2 st",
    "3 treble, 2 chain, treble on treble 3 times, 2 chain; repeat": (
        "12 dc, 8 ch; 2 x 6 st; asked times-of-the-row"
    ),
    "3 treble, 2 chain and 1 treble on treble 3 times, 2 chain; repeat": "12 dc, 16 ch; 2 x 6 st",
}
OVER_ARCHES = {
    "*1 double over the two bars of three chain of the previous rows, 4 chain; repeat": (
        "12 sc, 48 ch; 12 x 1 ch-3 space; asked place-assumed"
    ),
    "*1 double over the 2 chains beneath, 4 chain; repeat": (
        "12 sc, 48 ch; 12 x 1 space; asked place-assumed"
    ),
    "*4 treble in the 3 chain with a picot after each except the last, 1 double in next loop; "
    "repeat": "24 dc, 6 sc, 18 picot; 6 x 2 ch-3 space",
    "1 plain in 3d. ch. of 3, 5 ch.; repeat": "12 sc, 60 ch; 12 x 1 ch-3 space",
    "*1 plain in next space, 7 chain, miss 1 plain, 3 chain, 1 plain, 1 plain in next space; "
    "repeat": "12 sc, 40 ch; 4 x 3 space; asked perhaps-missed; asked place-unclear",
}
OVER_SCALLOPS = {
    "*1 plain between the 2 middle treble of the 6, 5 chain; repeat": (
        "6 sc, 30 ch; 6 x 1 6-dc group"
    ),
    "1 plain in the 2nd of the 6 treble, 3 chain, miss 3, 1 plain; repeat on each scallop": (
        "12 sc, 18 ch; 6 x 1 6-dc run; asked place-assumed"
    ),
    "*1 double on each of the 6 treble, with a picot after all but the last, 2 chain; repeat": (
        "36 sc, 12 ch, 30 picot; 6 x 6 dc"
    ),
}
LATTICE = On(12, ("1 treble in each loop, with 2 chain between",))
IN_SPACES = {
    "*5 treble on the 2 chain between the next 2 treble, separated each by 1 picot, 1 chain; "
    "repeat": "60 dc, 12 ch, 48 picot; 12 x 1 ch-2 space between dc",
}
TO_AND_FRO = On(13, ("3 chain, turn; 1 treble in each loop",), closed=False)
AT_THE_END = {
    "1 treble on each of the next 12 treble, 1 treble in the third of the three chain with which "
    "the last row commenced, turn": (
        "13 dc; asked start-chain-assumed; asked taken-as-remark; asked start-chain-assumed"
    ),
    "1 treble on each of the next 12 treble, 1 treble on the third of the turning chain": (
        "13 dc; asked start-chain-assumed"
    ),
}


AS_PRINTED = {
    "x 1 plain, 3 treble, 1 plain, x under every loop": "24 sc, 36 dc; 12 x 1 space",
    "1 plain in one of the loops, 2 purl (each consisting of 5 chain, 1 single in the 1st); repeat": "12 sc, 24 picot; 12 x 1 space",
    "*1 plain, with which take up the next 2 loops together, 5 chain; repeat": "6 sc, 30 ch; 6 x 2 space",
    "1 treble on plain, 2 chain and 1 treble three times, 5 chain; repeat": "48 dc, 132 ch; 12 x 1 sc; asked perhaps-one-place",
    "*1 plain in next loop, 1 p. (4 ch. and 1 single on the preceding plain.); repeat": "12 sc, 12 picot; 12 x 1 space",
    "*5 chain and fasten in the next loop, 5 chain, 1 plain in next loop; repeat": "6 ss, 6 sc, 60 ch; 6 x 2 space; asked fastening-assumed",
    "turn, *5 chain and fasten in the next loop, 5 chain, 1 plain in next loop; repeat": "6 ss, 6 sc, 60 ch; 6 x 2 space; asked fastening-assumed",
    "1 plain in each loop, omitting the 2 chain at the inner corners": "12 sc; 12 x 1 space; asked place-assumed; asked corners-left-out",
}
MIDDLE = {
    "*3 plain on the 4 middle treble, 5 chain; repeat": (
        "12 sc, 5 ch; 1 x 20 dc; 16 left over; does not close; asked place-unclear; "
        "asked perhaps-last-of-each; asked row-does-not-close"
    )
}


PENNY = {
    "1 treble, * 2 chain, skip 2 stitches of the row beneath, 1 treble; repeat from *": "4 dc, 8 ch; 3 x 3 loop; asked meets-its-start",
    "*1 plain in 2nd stitch from this one, 3 chain; repeat": "6 sc, 18 ch; 6 x 2 loop",
    "take 3 loops together with 1 plain, 3 chain, (1 plain in a single loop, 3 chain) 3 times; repeat": "8 sc, 24 ch; 2 x 6 loop",
    "plain all along the edge with 3 plain in corners": "12 sc; 12 x 1 loop; asked corners-left-out",
}
TILL = {
    "*5 chain, 1 plain in 3-ch space; repeat till there are 6 loops": "6 sc, 30 ch; does not close; asked row-does-not-close"
}
GROUPS = {"*1 plain between the groups of treble, 5 chain; repeat": "6 sc, 30 ch; 6 x 1 group"}


NEWSPAPERS = {
    "1 treble in each of the rest": "12 dc; 12 x 1 loop",
    "1 plain in every loop, working over 3 strands of cord": "12 sc; 12 x 1 loop",
    "slip over to loop, 2 treble; repeat": "12 dc; 6 x 2 loop",
    "1 treble in loop with 3 chain between, all round, join": "12 dc, 36 ch; 12 x 1 loop",
    "2 treble in loop with 3 chain between, all round": "24 dc, 36 ch; 12 x 1 loop; asked perhaps-as-they-come",
    "5 chain, 1 plain in each of the next 3 loops, 3 chain, fasten in the second loop, turn": "3 sc, 1 ss, 8 ch; does not close; asked perhaps-as-they-come; asked fastening-assumed; asked start-chain-assumed; asked row-does-not-close",
    "3 chain for first treble of round, 2 treble in same loop, *1 chain, 3 treble in next loop; repeat": "36 dc, 11 ch; 11 x 1 loop; asked perhaps-leads-back",
    "3 treble in each loop (3 chain for first treble of rnd), 2 chain between; join": "36 dc, 24 ch; 12 x 1 loop; asked taken-as-remark",
    "3 plain in each loop; in the 2 corner loops 4 plain, 1 picot, 4 plain": "36 sc; 12 x 1 loop; asked corners-left-out",
}
SHELL_TOLD_BY_STEPS = On(
    12, ("*2 treble in loop, 2 chain, 2 treble in same loop, 1 plain in next; repeat",)
)
SHELLS_AS_BEFORE = {
    "shell in shell with 3 chain between, all round": "24 dc, 30 ch; 6 x 1 shell; asked place-assumed",
    "*shell in shell, 1 plain on plain; repeat": "24 dc, 6 sc, 12 ch; 6 x 1 shell; asked place-assumed",
    "3 times alternately 1 plain on the plain. which comes in the next loop, 3 chain, pass over 1 shell": "3 sc, 9 ch; does not close; asked times-of-the-row; asked taken-as-remark; asked repeat-unclear",
    "1 plain over both chains of 3rd and 4th rows, 3 chain; repeat": "6 sc, 18 ch; 6 x 1 space; asked place-assumed",
}


CENTRES = {
    "*1 plain in the middle one of the 6 treble of the next shell, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 6-dc run",
    "*1 plain in the 2nd of the 6 treble of next shell, 7 chain; repeat": "6 sc, 42 ch; 6 x 1 6-dc run",
    "*1 plain in each of the 6 treble of the shell, 1 chain; repeat": "36 sc, 6 ch; 6 x 6 dc",
}
SO_OFTEN_PLACED = {
    "4 times alternately 5 treble and 5 chain in the loop; join": "20 dc, 20 ch; does not close; asked repeat-unclear",
    "4 times alternately 5 treble in the loop, 5 chain; join": "20 dc, 20 ch; does not close; asked repeat-unclear",
    "x 5 chain, 1 plain x, in every loop": "12 sc, 60 ch; 12 x 1 loop",
    "3 times alternately 2 treble and 1 chain in each loop": "72 dc, 36 ch; 12 x 1 loop",
}


SCALLOPS_AND_PLAIN = On(6, ("*6 treble in next loop, 1 plain in next loop; repeat",))
BESIDE = On(6, ("*(1 treble, 1 chain, 1 treble) in next loop, 1 treble; repeat",))
MIXED = On(6, ("*6 treble in next loop, 1 treble in next loop; repeat",))
EACH_OF_A_SHELL = {
    "1 plain in each stitch of shell, 1 plain in plain; repeat": "21 sc; 21 x 1 dc, 0 sc",
    "2 chain and 1 plain in each stitch of every shell; skip the plain": "18 sc, 2 ch; 18 x 1 dc; asked place-unclear; asked start-chain-assumed",
}


@cases(
    (LOOPS, OVER_THE_EDGE),
    (STITCHES, OVER_STITCHES),
    (ARCHES, OVER_ARCHES),
    (SIXES, OVER_SCALLOPS),
    (LATTICE, IN_SPACES),
    (TO_AND_FRO, AT_THE_END),
    (ARCHES, AS_PRINTED),
    (SIXES, MIDDLE),
    (LOOPS, PENNY),
    (ARCHES, TILL),
    (SIXES, GROUPS),
    (LOOPS, NEWSPAPERS),
    (SHELL_TOLD_BY_STEPS, SHELLS_AS_BEFORE),
    (SIXES, CENTRES),
    (LOOPS, SO_OFTEN_PLACED),
    (SCALLOPS_AND_PLAIN, EACH_OF_A_SHELL),
    (
        BESIDE,
        {
            "1 plain in each stitch of shell, 1 chain": "9 dc, 3 ch; 3 x 2 loop; asked not-understood"
        },
    ),
    (
        MIXED,
        {"1 plain in each stitch of shell, 1 chain": "21 dc; 3 x 2 loop; asked not-understood"},
    ),
)
def test_a_row_as_it_is_printed(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
