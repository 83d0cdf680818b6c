"""The stitch table: canonical (US) names, heights, and loops drawn.

Heights in chains: Craft Yarn Council, "Crochet Abbreviations" (2018), turning
chains. Loops drawn while a stitch is made, counting the one that starts it:
from the make-up of each stitch (tr and above are the least certain). The
names by terms are data: `grammar/vocabulary.toml`.
"""

from __future__ import annotations

from msgspec import Struct


class Stitch(Struct, frozen=True):
    """A kind of stitch: height in chains, loops drawn to make one."""

    name: str
    height: int
    loops: int


STITCHES: dict[str, Stitch] = {
    s.name: s
    for s in (
        Stitch("ss", 0, 1),
        Stitch("sc", 1, 2),
        Stitch("hdc", 2, 3),
        Stitch("dc", 3, 4),
        Stitch("tr", 4, 6),
        Stitch("dtr", 5, 8),
        Stitch("trtr", 6, 10),
    )
}

CHAIN_LOOPS = 1
"""Loops drawn for one chain."""


def loops_of(kind: str) -> int:
    """Loops drawn for one stitch, by its canonical name; for anything else those of a chain."""
    return STITCHES[kind].loops if kind in STITCHES else CHAIN_LOOPS
