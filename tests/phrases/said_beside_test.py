"""Rows with what books say beside their steps: where the hook goes, what a picot is made of."""

from __future__ import annotations

from phrases.said import ARCHES, BLOCKS, LOOPS, STITCHES, On, cases, said

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
    "3 plain in each space, inserting the hook underneath the chain": "36 sc; 12 x 1 space; asked taken-as-remark",
    "3 plain in each space, inserting the hook underneath the chain, 3 chain; repeat": "36 sc, 36 ch; 12 x 1 space; asked taken-as-remark",
}

WHERE_THE_HOOK_GOES_ON_STITCHES = {
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
    "*1 plain, 1 purl, consisting of 4 chain, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 purl (of 4 chain and 1 slip stitch), 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p. (made of 4 ch., 1 single in the first), 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p., made of 4 ch. and 1 single in the first, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p., made thus: 4 ch., 1 single in the first, 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p. thus: 4 ch., 1 single in the first; 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 p. (made thus: 4 ch., 1 single in the first), 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
    "*1 plain, 1 picot made as follows: 4 ch., 1 single in the first; 2 chain, miss 1; repeat": "6 sc, 12 ch, 6 picot; 6 x 2 loop",
}


@cases(
    (FANS, WHERE_THE_HOOK_GOES_ON_FANS),
    (BLOCKS, WHERE_THE_HOOK_GOES_ON_BLOCKS),
    (ARCHES, WHERE_THE_HOOK_GOES_ON_ARCHES),
    (STITCHES, WHERE_THE_HOOK_GOES_ON_STITCHES),
    (LOOPS, PICOTS_MADE_OF),
)
def test_what_is_said_beside_the_steps(on: On, row: str, comes_to: str) -> None:
    assert said(row, on) == comes_to
