"""The starter project that `border new` writes: a cuff of seven wheels, three rounds."""

from __future__ import annotations

from collections.abc import Sequence
from shlex import quote

PROJECT = """\
# A cuff of seven wheels, each with six free loops along the edge.
# Put your own numbers here, and count it again.

format = 1
name = "Starter cuff"

[[edge]]
name = "cuff"
closed = true                 # it goes round the wrist; false for an edge with two ends
runs = [{ section = "cuff", motifs = 7, places = 6 }]

[[work]]
edge = "cuff"
border = "cuff.border"        # the rounds, in words

[thread]
size = "40"                   # the number on the ball
hook_mm = 1.0
ball_g = 20
"""

BORDER = """\
# The rounds, in words. What stands behind a # is for you alone.

border: Starter shells
terms: us                     # us, uk or early: which stitch names these are

round 1: over each motif: *1 sc in next loop, ch 3; repeat from * to end.
round 2: *1 sc in next space, ch 4; repeat from *.    (42 spaces)
round 3: *(3 dc, picot, 3 dc) in next space, 1 sc in next space; repeat from *.
"""

STARTER = {"cuff.toml": PROJECT, "cuff.border": BORDER}
"""The files of the starter project by name."""


def what_next(made: Sequence[str]) -> str:
    """What was made, and what to do with it."""
    project, border = made
    asked = quote(project)
    return (
        f"made {project} (your edge) and {border} (the rounds)\n"
        f"count it:     border count {asked}\n"
        f"then put your own numbers in {project}, write your own rounds in {border},\n"
        f"and look for faults with: border check {asked}\n"
    )
