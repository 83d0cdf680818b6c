"""Loops drawn: the thread model's unit, counted stitch by stitch along a round.

What leaves nothing on the row takes thread too: a start chain (in place of its stitch,
or before it), slip stitches on to the place where the round is begun, and the one that
joins a closed round, whether the text says so or not (common practice).
"""

from __future__ import annotations

from border.stitches import CHAIN_LOOPS, STITCHES, loops_of
from border.working.fabric import PICOT
from border.working.work import WorkedRound

SLIP = STITCHES["ss"].loops

MOST_SLIPS = 8
"""Further than so many slip stitches nobody goes: the thread is cut and fastened there anew,
and its tails are waste (estimate)."""


def loops_drawn(round_: WorkedRound) -> list[int]:
    """The loops drawn at every element of a round, in the order of working.

    Each leg of a cluster is a stitch; a picot is its chains and a slip stitch.
    """
    fabric = round_.fabric
    by_kind = {kind: loops_of(kind) for kind in set(fabric.kinds)} | {PICOT: SLIP}
    drawn = [by_kind[kind] for kind in fabric.kinds]
    for element, legs in fabric.legs.items():
        drawn[element] += (legs - 1) * by_kind[fabric.kinds[element]]
    for element, chains in fabric.rings.items():
        drawn[element] += chains * CHAIN_LOOPS
    for opening in round_.openings:
        at = max(opening.behind - 1, 0)
        instead = loops_of(opening.stands_for) if opening.stands_for else 0
        drawn[at] += opening.chains * CHAIN_LOOPS - instead
    drawn[0] += SLIP * (round_.passed if round_.passed <= MOST_SLIPS else 0)
    drawn[-1] += SLIP if fabric.line.closed else 0
    return drawn
