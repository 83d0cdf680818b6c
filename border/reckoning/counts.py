"""The counts of a worked edge: by round, section, motif and joint."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tally:
    """What stands somewhere: stitches by canonical name, chains, picots.

    Chains of picots and start chains are in none of them.
    """

    stitches: dict[str, int]
    chains: int
    picots: int


@dataclass(frozen=True, slots=True)
class RepeatCount:
    """One open-ended repeat of a round.

    `takes`: sites of the leading kinds that one repeat passes or works;
    `makes`: what one repeat makes. Summed over the motifs of a clause:
    `times` and `left_over`.
    """

    times: int
    takes: dict[str, int]
    makes: Tally
    left_over: int


@dataclass(frozen=True, slots=True)
class SectionCount:
    section: str
    made: Tally


@dataclass(frozen=True, slots=True)
class MotifCount:
    """`usual` is False where a motif differs from what most motifs have."""

    motif: str
    section: str
    made: Tally
    usual: bool


@dataclass(frozen=True, slots=True)
class JointCount:
    """What stands exactly on the joint between two motifs."""

    between: tuple[str, str]
    made: Tally


@dataclass(frozen=True, slots=True)
class AdjustmentCount:
    """An adjustment as it fell: `before_repeat` 1 is before the second repeat."""

    at: str
    by: int
    before_repeat: int


@dataclass(frozen=True, slots=True)
class RoundCount:
    """One round on this edge. `spaces`: chain spaces offered to the next round.

    `loops`: loops of thread drawn in the making of it (the thread model's unit).
    """

    number: int
    closes: bool
    made: Tally
    spaces: int
    repeats: tuple[RepeatCount, ...]
    sections: tuple[SectionCount, ...]
    motifs: tuple[MotifCount, ...]
    joints: tuple[JointCount, ...]
    adjustments: tuple[AdjustmentCount, ...]
    loops: int
