"""The other readings of rows are worked in their place, and what comes out is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice

from msgspec import Struct, field

from border.findings import Finding, Severity
from border.questions.changes import Otherwise
from border.questions.otherwise import otherwise
from border.questions.slips import slips
from border.text.amounts import often
from border.text.readings import Reading, Round
from border.working.claims import check_claims
from border.working.cursor import TooLarge
from border.working.fabric import CHAIN, PICOT, Fabric, edge_fabric, has_no_stitch
from border.working.rounds import Pass, work_once
from border.working.work import WorkedEdge, WorkedRound, as_met_next

MOST_TRIED = 120
"""So many readings of one row are tried."""

MOST_TOLD = 3
"""So many misprints are told of one row."""

LARGEST = 20_000
"""In rows with more stitches and chains below, misprints are not looked for."""


class Tried(Struct, frozen=True):
    """A reading of a round as it came out; `other` None: as it is taken.

    `times`: of each open-ended repeat. `fits`: it closes, and the row's own counts hold. `same`:
    it makes as many stitches as the row as it is taken, and each repeat takes as much.
    """

    number: int
    other: Otherwise | None
    times: tuple[int, ...]
    fits: bool
    same: bool = False

    @property
    def how_often(self) -> str:
        """`, 12 times`, of a reading that fits and has a repeat; else nothing."""
        return f", {often(self.times[0])}" if self.fits and any(self.times) else ""


class _Edge(Struct):
    """A border on its edge: each round with the row below it, and the one below that."""

    reading: Reading
    worked: WorkedEdge
    _belows: dict[int, Fabric] = field(default_factory=dict)

    def below(self, n: int) -> Fabric:
        """The row below round n, made once: many readings are worked into it."""
        if n not in self._belows:
            before = self.worked.rounds[n - 1].fabric if n else None
            self._belows[n] = (
                edge_fabric(self.worked.edge)
                if before is None
                else self.met(before, self.reading.rounds[n - 1])
            )
        return self._belows[n]

    def below_as(self, n: int, other: Otherwise) -> Fabric | None:
        """The row below round n as a reading has it; None where that row does not close.

        Raises TooLarge.
        """
        if other.below is None:
            return self.below(n)
        under = work_once(other.below, self.below(n - 1))
        return self.met(under.fabric(self.below(n - 1)), other.below) if under.closes else None

    def met(self, made: Fabric, by: Round) -> Fabric:
        return as_met_next(made, by, self.reading.rules.worked, self.worked.edge.closed)


def questions(
    reading: Reading, worked: WorkedEdge, eased: Iterable[int], *, misprints: bool
) -> list[Finding]:
    """What is asked of the first round that does not come out; of a later one it is too early.

    `eased`: the rounds that something is eased into, of which nothing is asked. `misprints`:
    they are looked for too, but not on an edge of motifs, which is seldom regular; where the
    row's own count does not hold they are in any case.
    """
    edge = _Edge(reading, worked)
    for n, done in enumerate(worked.rounds):
        if _fits(done):
            continue
        if done.done or done.found or done.number in eased:
            return []
        return _asked(edge, n, (misprints and not worked.edge.runs) or _disagrees(done))
    if _came_to_nothing(worked) and reading.rounds[len(worked.rounds)].number not in eased:
        return _asked(edge, len(worked.rounds), misprints and not worked.edge.runs)
    return []


def _asked(edge: _Edge, n: int, misprints: bool) -> list[Finding]:
    """What round n may be meant as, and where that is nothing, what may be printed wrongly."""
    found = list(_fitting(edge, n, otherwise(edge.reading.rounds[n])))
    return [_told(tried) for tried in found or (_likeliest(edge, n) if misprints else [])]


def _came_to_nothing(worked: WorkedEdge) -> bool:
    """Whether the round behind those that were worked puts no stitch on the work."""
    return any(f.code == "no-stitches" for f in worked.findings)


def all_readings(reading: Reading, worked: WorkedEdge) -> list[Tried]:
    """Every round as it is taken, and in each of its other readings, misprints where none fits."""
    edge = _Edge(reading, worked)
    told: list[Tried] = []
    for n in range(len(worked.rounds) + _came_to_nothing(worked)):
        done = worked.rounds[n] if n < len(worked.rounds) else None
        number = reading.rounds[n].number
        taken = Tried(number, None, (), False)
        if done is not None:
            taken = Tried(number, None, tuple(r.times for r in done.repeats), _fits(done))
        others = list(islice(_tried(edge, n, otherwise(reading.rounds[n])), MOST_TRIED))
        told += [taken, *others]
        if not taken.fits and not any(other.fits for other in others):
            told += _likeliest(edge, n)
    return told


def _fits(done: WorkedRound) -> bool:
    return done.closes and all(f.severity is not Severity.ERROR for f in done.findings)


def _disagrees(done: WorkedRound) -> bool:
    return any(f.code == "count-disagrees" for f in done.findings)


def _fitting(edge: _Edge, n: int, others: Iterable[Otherwise]) -> Iterator[Tried]:
    return (tried for tried in _tried(edge, n, islice(others, MOST_TRIED)) if tried.fits)


def _tried(edge: _Edge, n: int, others: Iterable[Otherwise]) -> Iterator[Tried]:
    """Each of the readings worked in place of round n."""
    for other in others:
        if other.if_nothing and n < len(edge.worked.rounds):
            continue
        made = _made(edge, n, other)
        if made is not None:
            done, fits, below = made
            taken = edge.worked.rounds[n] if n < len(edge.worked.rounds) else None
            same = taken is not None and done.made.kinds == taken.fabric.kinds
            if taken is not None and same and fits == _fits(taken) and other.below is None:
                continue
            if other.code == "perhaps-misprint" and _makes_little(done, taken):
                continue
            times = tuple(account.times for account in done.accounts.values())
            if same and taken is not None:
                takes = [account.takes(below) for account in done.accounts.values()]
                same = takes == [r.takes for r in taken.repeats]
            yield Tried(other.round.number, other, times, fits, same=same)


def _made(edge: _Edge, n: int, other: Otherwise) -> tuple[Pass, bool, Fabric] | None:
    """The reading worked, whether it fits, and the row below; None where it cannot be worked."""
    try:
        below = edge.below_as(n, other)
        if below is None:
            return None
        done = work_once(other.round, below)
    except TooLarge:
        return None
    fabric = done.fabric(below)
    times = [account.times for account in done.accounts.values()]
    faults = [f for f in done.findings if f.severity is Severity.ERROR]
    sound = done.closes and not done.unclear and not faults and not has_no_stitch(fabric.kinds)
    return done, sound and not check_claims(other.round, fabric, times), below


def _makes_little(done: Pass, taken: WorkedRound | None) -> bool:
    """Whether a row comes out only since its repeat makes next to no stitches any more."""

    def stitches(kinds: Sequence[str]) -> int:
        return sum(kind not in (CHAIN, PICOT) for kind in kinds)

    return taken is not None and 2 * stitches(done.made.kinds) < stitches(taken.fabric.kinds)


def _likeliest(edge: _Edge, n: int) -> list[Tried]:
    """The misprints that would make a round fit; first those with which all later rounds close."""
    below = edge.below(n)
    if len(below.kinds) > LARGEST:
        return []
    before = edge.reading.rounds[n - 1] if n else None
    found = list(_fitting(edge, n, slips(edge.reading.rounds[n], before)))
    # with as many stitches, each repeat taking as much, a miss may well go without saying
    found = [tried for tried in found if tried.same][:1] or found
    closing = [_closing_after(edge, n, tried) for tried in found]
    best = max(closing, default=0)
    kept = [tried for tried, count in zip(found, closing, strict=True) if count == best]
    return kept[:MOST_TOLD]


def _closing_after(edge: _Edge, n: int, tried: Tried) -> int:
    """How many of the rounds behind round n close one after the other, with this reading of it."""
    assert tried.other is not None
    below = edge.below_as(n, tried.other)
    assert below is not None
    rounds: Sequence[Round] = (tried.other.round, *edge.reading.rounds[n + 1 :])
    closing = 0
    for round_ in rounds:
        try:
            done = work_once(round_, below)
        except TooLarge:
            break
        if not done.closes:
            break
        closing += 1
        below = edge.met(done.fabric(below), round_)
    return closing


def _told(tried: Tried) -> Finding:
    other = tried.other
    assert other is not None
    perhaps = ""
    if other.code == "perhaps-misprint":
        perhaps = ", with as many stitches as now" if tried.same else ": perhaps a misprint"
    message = f"round {tried.number} would come out{tried.how_often}, if {other.if_}{perhaps}"
    return Finding(other.code, message, other.edit, other.at, tried.number)
