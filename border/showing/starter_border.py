"""The border that `border new` writes beside the project: three rounds that close on any edge."""

from __future__ import annotations

from border.text.vocabulary import name_of
from border.yoke.answers import Said, word

_BORDER = """\
# The rounds, in words. What stands behind a # is for you alone.
#
# "In each" goes on any number of loops. A {round} that takes two spaces or more at a time,
# like "*1 {sc} in next space, ch 5, skip 1 space; repeat from *", may leave some over:
# `border count` says so, and `border adjust` where to ease them in.

border: Starter mesh
terms: {terms:<8} # us, uk or early: which stitches these names are

{round} 1: 1 {sc} in each loop, with ch 2 between.
{round} 2: 1 {dc} in each {sc}, with ch 2 between.
{round} 3: (1 {sc}, picot, 1 {sc}) in each space.
"""


def border_text(said: Said) -> str:
    """The border of these answers, in their terms.

    Three stitches and chains stand over each loop, which lies flat round a wheel (common
    practice).
    """
    terms = word(said, "terms")
    row = "row" if word(said, "shape") == "strip" else "round"
    names = {stitch: name_of(stitch, terms) for stitch in ("sc", "dc")}
    return _BORDER.format(round=row, terms=terms, **names)
