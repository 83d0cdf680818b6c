"""What makes a border lie flat: other numbers of chains, or of stitches to a group.

Every change is worked into the edge and reckoned again. Where one will do after which every
round closes as before, that is taken.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import fsum

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Severity
from border.reckoning.changing import Change, can_change, changed
from border.reckoning.edge_shape import Shape
from border.reckoning.flat import RoundLies, how_it_lies
from border.reckoning.stitch_sizes import StitchSizes
from border.text.readings import Reading
from border.working.work import WorkedEdge

Again = Callable[[Reading], WorkedEdge]
"""Works a border into the edge, with all that the project says of the work."""

MOST_CHANGES = 4
"""So many numbers are changed in one round."""

MOST_TRIALS = 300
MOST_ELEMENTS = 2_000_000
"""Stitches and chains worked in all trials of one border."""

DEAR = 0.02
"""One chain or stitch more or fewer has to mend so much of what is out in a round."""


_ASIDE = ("count-disagrees", "row-does-not-close", "repeat-unclear")


class Mended(Struct, frozen=True):
    """The changes, and how the rounds lie with all of them made.

    `opened`: rounds that closed before, and do not with these. `given_up`: more might be
    found, but the search had become too long.
    """

    changes: tuple[Change, ...]
    rounds: tuple[RoundLies, ...]
    opened: tuple[int, ...] = ()
    given_up: bool = False


class _Trial(Struct, frozen=True):
    """One way to change a round: what is out in it then, and in all rounds together; which rounds
    it keeps from closing."""

    out: float
    far: int
    total: float
    change: Change
    reading: Reading
    rounds: tuple[RoundLies, ...]
    opened: frozenset[int]

    def paid(self, before: float) -> float:
        """What is out still, and a little for every one more or fewer."""
        return self.out + before * DEAR * self.far


def mended(
    reading: Reading, again: Again, shape: Shape, sizes: StitchSizes, done: int = 0
) -> Mended:
    """The border with rounds changed, from the first that does not lie flat; of rounds that
    are done nothing is changed."""
    search = _Search(reading, again, shape, sizes)
    changes: list[Change] = []
    for index, round_ in enumerate(reading.rounds[: len(search.rounds)]):
        if round_.number > done:
            changes += search.mend(index)
    opened = tuple(sorted(search.opened))
    return Mended(tuple(changes), search.rounds, opened, search.given_up)


class _Search:
    def __init__(self, reading: Reading, again: Again, shape: Shape, sizes: StitchSizes) -> None:
        self.reading, self.again, self.shape, self.sizes = reading, again, shape, sizes
        self.trials = self.elements = 0
        worked = again(reading)
        self.rounds = how_it_lies(worked, reading, shape, sizes)
        self.closed = _closed(worked)
        self.opened: frozenset[int] = frozenset()
        self.faults = _faults(worked)

    @property
    def given_up(self) -> bool:
        return self.trials > MOST_TRIALS or self.elements > MOST_ELEMENTS

    def mend(self, index: int) -> list[Change]:
        """Change a round, one number after the other, until it lies flat or none helps."""
        found: list[Change] = []
        while len(found) < MOST_CHANGES and (out := self.rounds[index].worst) and not self.given_up:
            tried = [t for t in self._tried(index) if t.out < 0.95 * out]
            closing = [t for t in tried if t.opened <= self.opened]
            flat = [t for t in closing or tried if not t.out]
            ways = flat or closing or tried
            best = min(ways, key=lambda t: (t.paid(out), len(t.opened), t.total), default=None)
            if best is None:
                break
            self.reading, self.rounds, self.opened = best.reading, best.rounds, best.opened
            found.append(best.change)
        return _together(found)

    def _tried(self, index: int) -> Iterator[_Trial]:
        """For each number of a round: one more, or fewer, and what that makes likely to do."""
        round_ = self.reading.rounds[index]
        now = self.rounds[index]
        parts = [now.length, *(section.length for section in now.sections)]
        sign = -1 if max(parts, key=lambda part: abs(part.out)).out > 0 else 1
        for change in can_change(round_):
            first = self._trial(index, replace(change, now=change.was + sign))
            if first is None:
                continue
            yield first
            gained = now.worst - first.out
            if not first.out or gained <= 0:
                continue
            likely = round(now.worst / gained)
            for steps in {likely - 1, likely, likely + 1} - {0, 1}:
                more = self._trial(index, replace(change, now=change.was + sign * steps))
                if more is not None:
                    yield more

    def _trial(self, index: int, change: Change) -> _Trial | None:
        """A change worked and reckoned; None where it is too large, or cannot be worked."""
        was = change.was
        if not max(was // 2, 1) <= change.now <= 2 * was + 2 or self.given_up:
            return None
        reading = changed(self.reading, change)
        worked = self.again(reading)
        self.trials += 1
        self.elements += sum(len(r.fabric.kinds) for r in worked.rounds)
        if not _faults(worked) <= self.faults:
            return None
        opened = self.closed - _closed(worked)
        rounds = how_it_lies(worked, reading, self.shape, self.sizes)
        total = fsum(r.worst for r in rounds)
        out = rounds[index].worst
        far = abs(change.now - change.was)
        return _Trial(out, far, total, change, reading, rounds, opened)


def _closed(worked: WorkedEdge) -> frozenset[int]:
    return frozenset(r.number for r in worked.rounds if r.closes)


def _faults(worked: WorkedEdge) -> set[tuple[str, int | None]]:
    """Errors by code and round, but for counts in the text, which change with it, and for what
    does not close."""
    return {
        (f.code, f.round)
        for f in worked.findings
        if f.severity is Severity.ERROR and f.code not in _ASIDE
    }


def _together(changes: list[Change]) -> list[Change]:
    """Changes one after the other of one and the same number as one."""
    found: list[Change] = []
    for change in changes:
        number = next((n for n, c in enumerate(found) if _goes_on(c, change)), None)
        if number is None:
            found.append(change)
        else:
            found[number] = replace(found[number], now=change.now)
    return found


def _goes_on(one: Change, other: Change) -> bool:
    return (one.what, one.now, one.clause) == (other.what, other.was, other.clause)
