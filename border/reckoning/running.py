"""The running total of a round: what stands so far, in the order of working, at every joint.

A round is gone through from where it begins: motif by motif on an edge that has
them, else by its repeats. What stands exactly on a joint is counted as soon as the
joint is passed, so that the stages and the joints together are the whole round.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from border.reckoning.counts import Tally
from border.working.closing import tally
from border.working.fabric import Fabric
from border.working.rounds import Fallen
from border.working.work import WorkedRound

MOST_STAGES = 24
"""Stages of a round that goes by its repeats."""


class Joint(Struct, frozen=True):
    """A joint as it is come to: the motifs before and behind it in the order of working.

    `so_far`: what stands before it since the round began; `on`: what stands on it.
    """

    between: tuple[str, str]
    so_far: Tally
    on: Tally


class Eased(Struct, frozen=True):
    """An adjustment, and what stands before it since the round began."""

    fallen: Fallen
    so_far: Tally


class Stage(Struct, frozen=True):
    """The way over one motif, or, on an edge without motifs, over some repeats.

    `motif` is empty there, `repeats` their numbers, the first and the last; both are
    empty behind the last repeat. `part`: only a part of the motif, since the round
    begins in the middle of it. `joint`: the one behind it; None where there is none.
    `so_far`: all that stands at the end of the stage, what stands on its joint left out.
    """

    motif: str
    section: str
    made: Tally
    so_far: Tally
    joint: Joint | None = None
    part: bool = False
    eased: tuple[Eased, ...] = ()
    repeats: tuple[int, int] | None = None


class Course(Struct, frozen=True):
    """A round from its beginning to its end.

    `begins`: the motif that it begins over, or the joint that it begins on; on an edge
    without motifs the number of the place. `opening`: the joint that it begins on.
    `turned`: it is worked against the order of the edge.
    """

    begins: str | tuple[str, str] | int
    stages: tuple[Stage, ...]
    opening: Joint | None = None
    turned: bool = False


def course(round_: WorkedRound) -> Course:
    """The way that a worked round takes, with the running totals."""
    return _by_motifs(round_) if round_.fabric.line.stretches else _by_repeats(round_)


class _Walk:
    """On its way through a round: the elements in order of position, and what is passed."""

    def __init__(self, round_: WorkedRound, order: list[int]) -> None:
        self.round, self.order = round_, order
        self.pos = [round_.fabric.pos[i] for i in order]
        self.at = 0
        self.total: Counter[str] = Counter()

    def before(self, point: int) -> int:
        """How many elements stand before a position."""
        return bisect_left(self.pos, point, self.at)

    def on_to(self, end: int) -> tuple[Tally, tuple[Eased, ...]]:
        """Go on until so many elements are passed: what they come to, and what is eased there."""
        kinds = self.round.fabric.kinds
        passed, self.at = self.order[self.at : end], end
        made = Counter(kinds[i] for i in passed)
        self.total.update(made)
        here = set(passed) if self.round.adjustments else set()
        eased = (a for a in self.round.adjustments if a.element - 1 in here)
        told = (Eased(a, Tally(*tally(kinds[: a.element]))) for a in eased)
        return Tally(*tally(made)), tuple(told)

    @property
    def so_far(self) -> Tally:
        return Tally(*tally(self.total))

    @property
    def more(self) -> bool:
        return self.at < len(self.order)


def _by_motifs(round_: WorkedRound) -> Course:
    fabric, line = round_.fabric, round_.fabric.line
    walk = _Walk(round_, sorted(range(len(fabric.pos)), key=fabric.pos.__getitem__))
    over, on_joint = line.owner(walk.pos[0], fabric.tick)
    stages: list[Stage] = []
    opening: Joint | None = None
    at_start: tuple[Eased, ...] = ()
    for point, index in _joints_met(fabric, walk.pos[0], walk.pos[-1]):
        made, eased = walk.on_to(walk.before(point))
        before, behind = (s.run for s in line.joint_between(index))
        so_far = walk.so_far
        owned = line.owner(point, fabric.tick) == (index, True)
        on, eased_on = walk.on_to(walk.before(point + 1) if owned else walk.at)
        eased = (*at_start, *eased, *eased_on)
        joint = Joint((before.motif, behind.motif), so_far, on)
        over = index
        if line.closed and on_joint and opening is None:
            opening, at_start = joint, eased
            continue
        at_start = ()
        stages.append(Stage(before.motif, before.section, made, so_far, joint, eased=eased))
    if walk.more or not line.closed or not stages:
        split = line.closed and bool(stages) and opening is None
        run = line.stretches[over].run
        made, eased = walk.on_to(len(walk.order))
        eased = (*at_start, *eased)
        stages.append(Stage(run.motif, run.section, made, walk.so_far, None, split, eased))
        if split:
            stages[0] = replace(stages[0], part=True)
    begins = opening.between if opening else stages[0].motif
    return Course(begins, tuple(stages), opening, line.flipped)


def _joints_met(fabric: Fabric, start: int, last: int) -> Iterator[tuple[int, int]]:
    """The joints from the start of a round to its end: (position, stretch that begins there)."""
    line, length = fabric.line, fabric.length
    start, end = (start, max(start + length, last)) if line.closed else (0, length)
    for time in range(start // length, end // length + 1):
        for index in line.joints:
            point = line.starts[index] * fabric.tick + time * length
            if start <= point <= end:
                yield point, index


def _by_repeats(round_: WorkedRound) -> Course:
    """The way over an edge without motifs: by so many repeats at a time."""
    fabric, spans = round_.fabric, round_.spans
    walk = _Walk(round_, list(range(len(fabric.kinds))))
    many = next(n for n in _handy() if len(spans) <= n * MOST_STAGES)
    stages = []
    for first in range(0, len(spans), many):
        last = min(first + many, len(spans))
        made, eased = walk.on_to(max(spans[last - 1][1], walk.at))
        numbers = (first + 1, last)
        stages.append(Stage("", "", made, walk.so_far, eased=eased, repeats=numbers))
    if walk.more:
        made, eased = walk.on_to(len(walk.order))
        stages.append(Stage("", "", made, walk.so_far, eased=eased))
    place = fabric.pos[0] // fabric.tick % fabric.line.length
    number = fabric.line.length - place if fabric.line.flipped else place + 1
    return Course(number, tuple(stages), None, fabric.line.flipped)


def _handy() -> Iterator[int]:
    """1, 2, 5, 10, 20, 50 …: numbers that are easily counted by."""
    ten = 1
    while True:
        yield from (ten, 2 * ten, 5 * ten)
        ten *= 10
