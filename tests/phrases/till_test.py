"""How often, by what is then there: `till there are 8 loops`; and other ways to say it."""

from __future__ import annotations

from phrases.said import ARCHES, FIVES, LOOPS, STITCHES, On, cases, said

TILL = {
    "*3 chain, miss 1, 1 plain in next; repeat from * till there are 6 loops": "6 sc, 18 ch",
    "*3 chain, miss 1, 1 plain in next; repeat from * until there are 4 loops; 4 plain": (
        "8 sc, 12 ch"
    ),
    "3 chain, miss 1, 1 plain in next, and so on, having 4 loops in all; 4 plain": (
        "8 sc, 12 ch; asked times-of-the-row"
    ),
    "1 treble in next, 2 chain; repeat till you have 12 treble": "12 dc, 24 ch",
    "*2 treble in next, miss 1; repeat from * until there are 12 treble": "12 dc",
    # a claim, where the row ends
    "*3 chain, miss 1, 1 plain in next; repeat from *, making 6 loops in all": (
        "6 sc, 18 ch; 6 x 2 st"
    ),
    # so many do not come of it
    "*2 treble in next, miss 1; repeat from * until there are 7 treble": (
        "12 dc; 12 x 1 loop; asked not-understood"
    ),
    "1 treble in next, 2 chain; repeat until you have reached the end": "12 dc, 24 ch; 12 x 1 st",
    "*1 treble, 1 chain, miss 1, * and so on to the end": "6 dc, 6 ch; 6 x 2 st",
    "*1 plain, then 3 times: 1 chain, 1 treble; miss 2; repeat": ("2 sc, 6 dc, 6 ch; 2 x 6 st"),
    "1 plain, (3 chain, miss 2, 1 plain, repeat,) the last time 1 sl st on the 1st plain": (
        "4 sc, 12 ch; 3 x 3 st; asked meets-its-start"
    ),
    "*5 plain on the 5 next stitches, 3 chain, skip 1 stitch beneath; repeat": (
        "10 sc, 6 ch; 2 x 6 st"
    ),
}
DIVIDED = {
    "*4 treble divided by 1 chain on the 4 treble, 2 chain; repeat": "12 dc, 15 ch; 3 x 4 dc",
}
BEGUN = {
    "Fasten the thread in the first loop with 1 plain, *3 chain, 1 plain in next loop; repeat": (
        "12 sc, 36 ch; 11 x 1 loop; asked meets-its-start"
    ),
}
DOTTED = {
    "*1 plain on the next 5 ch. in the preceding round, 2 ch., 4 treble on the following 5 ch., "
    "2 ch.; repeat": "3 sc, 12 dc, 12 ch; 3 x 2 ch-5 space",
    "*3 treble in the next 5 ch, 3 chain, 3 treble in the same; repeat": (
        "36 dc, 18 ch; 6 x 1 ch-5 space"
    ),
    "*3 treble under the loop of five chain in the centre of the scallop, 2 chain; repeat": (
        "18 dc, 12 ch; 6 x 1 ch-5 space; asked place-assumed"
    ),
}
TURNED = {
    "Turn with 3 chain to stand for a treble, 1 treble on each of the 11 next treble": "12 dc",
}
FLAT = On(12, ("1 treble in each loop",), closed=False)
SPACES = {
    "*1 plain in each of the 4 spaces between the plain, 2 chain, miss 2 spaces; repeat": (
        "8 sc, 4 ch; 2 x 6 space"
    ),
}


@cases(
    (STITCHES, TILL),
    (STITCHES, DIVIDED),
    (LOOPS, BEGUN),
    (FIVES, DOTTED),
    (FLAT, TURNED),
    (ARCHES, SPACES),
)
def test_how_often_and_where(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
