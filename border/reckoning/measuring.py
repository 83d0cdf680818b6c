"""The measuring line: what ten spaces of a round measure when it lies flat, and what it
means when they measure something else.

A round that was measured is a fact. It is as many times its reckoned length as ten of its
spaces are of theirs; the rounds after it are reckoned to come out larger or smaller by as
much, since the hand that works them is the same (assumed).
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.reckoning.counts import RoundCount
from border.reckoning.flat import RoundLies
from border.reckoning.stitch_sizes import Band
from border.yoke.project import Measured

TEN = 10


class Mark(Struct, frozen=True):
    """One round against the tape: `count` pieces `of` it (`space`, `stitch`) should measure
    `expected`, the whole round `whole`; in mm.

    `drift`: how large it comes out by what was measured before it, of 1. `measured`: what
    `count` pieces of this round do measure; `longer` is then what that adds to the whole
    round, below 0 what it takes away.
    """

    round: int
    of: str
    count: int
    expected: Band
    whole: Band
    drift: float = 1.0
    measured: float | None = None
    longer: Band = Band(0.0, 0.0)

    @property
    def as_reckoned(self) -> bool:
        """Whether what was measured lies in the band."""
        return self.longer.low <= 0 <= self.longer.high


def measuring_line(
    counts: Sequence[RoundCount], lying: Sequence[RoundLies], measured: Sequence[Measured]
) -> tuple[Mark, ...]:
    """The marks of all rounds. Of several measures of one round the last counts."""
    said = {m.round: m for m in measured}
    marks: list[Mark] = []
    drift = 1.0
    for count, lies in zip(counts, lying, strict=False):
        whole = lies.length.as_it_lies.by(drift)
        mine = said.get(count.number)
        of = mine.of if mine else "space" if count.spaces >= 2 else "stitch"
        pieces = count.spaces if of == "space" else sum(count.made.stitches.values())
        if not pieces:
            continue
        some = mine.count if mine else min(TEN, pieces)
        expected = whole.by(some / pieces)
        if mine is None:
            marks.append(Mark(count.number, of, some, expected, whole, drift))
            continue
        real = mine.mm / some * pieces
        longer = Band(real - whole.high, real - whole.low)
        marks.append(Mark(count.number, of, some, expected, whole, drift, mine.mm, longer))
        if not marks[-1].as_reckoned:
            drift *= real / whole.middle
    return tuple(marks)
