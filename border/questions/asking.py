"""The other readings of rows are worked in their place, and what comes out is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice

from msgspec import Struct

from border.findings import Finding, Severity
from border.questions.changes import Otherwise
from border.questions.otherwise import otherwise
from border.questions.slips import slips
from border.text.readings import Reading, Round
from border.working.claims import check_claims
from border.working.cursor import TooLarge
from border.working.fabric import Fabric, edge_fabric, has_no_stitch
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

    `times`: of each open-ended repeat. `fits`: it closes, and the row's own counts hold.
    """

    number: int
    other: Otherwise | None
    times: tuple[int, ...]
    fits: bool


class _Edge(Struct):
    """A border on its edge: each round with the row below it, and the one below that."""

    reading: Reading
    worked: WorkedEdge

    def below(self, n: int) -> Fabric:
        if n == 0:
            return edge_fabric(self.worked.edge)
        return self.met(self.worked.rounds[n - 1].fabric, self.reading.rounds[n - 1])

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
        found = list(_fitting(edge, n, otherwise(reading.rounds[n])))
        if not found and ((misprints and not worked.edge.runs) or _disagrees(done)):
            found = _likeliest(edge, n)
        return [_told(tried) for tried in found]
    return []


def all_readings(reading: Reading, worked: WorkedEdge) -> list[Tried]:
    """Every round as it is taken, and in each of its other readings, misprints where none fits."""
    edge = _Edge(reading, worked)
    told: list[Tried] = []
    for n, done in enumerate(worked.rounds):
        taken = Tried(done.number, None, tuple(r.times for r in done.repeats), _fits(done))
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
        made = _made(edge, n, other)
        if made is not None:
            done, fits = made
            taken = edge.worked.rounds[n]
            same = done.made.kinds == taken.fabric.kinds and fits == _fits(taken)
            if same and other.below is None:
                continue
            times = tuple(account.times for account in done.accounts.values())
            yield Tried(other.round.number, other, times, fits)


def _made(edge: _Edge, n: int, other: Otherwise) -> tuple[Pass, bool] | None:
    """The reading worked, and whether it fits; None where it cannot be worked at all."""
    try:
        below = edge.below(n)
        if other.below is not None:
            under = work_once(other.below, edge.below(n - 1))
            if not under.closes:
                return None
            below = edge.met(under.fabric(edge.below(n - 1)), other.below)
        done = work_once(other.round, below)
    except TooLarge:
        return None
    fabric = done.fabric(below)
    times = [account.times for account in done.accounts.values()]
    faults = [f for f in done.findings if f.severity is Severity.ERROR]
    sound = done.closes and not done.unclear and not faults and not has_no_stitch(fabric.kinds)
    return done, sound and not check_claims(other.round, fabric, times)


def _likeliest(edge: _Edge, n: int) -> list[Tried]:
    """The misprints that would make a round fit; first those with which all later rounds close."""
    below = edge.below(n)
    if len(below.kinds) > LARGEST:
        return []
    before = edge.reading.rounds[n - 1] if n else None
    found = list(_fitting(edge, n, slips(edge.reading.rounds[n], before)))
    ranked = sorted(found, key=lambda tried: -_closing_after(edge, n, tried))
    best = [_closing_after(edge, n, tried) for tried in ranked[:1]]
    kept = [tried for tried in ranked if best == [_closing_after(edge, n, tried)]]
    return kept[:MOST_TOLD]


def _closing_after(edge: _Edge, n: int, tried: Tried) -> int:
    """How many of the rounds behind round n close one after the other, with this reading of it."""
    assert tried.other is not None
    below = edge.below(n)
    if tried.other.below is not None:
        under = work_once(tried.other.below, edge.below(n - 1))
        below = edge.met(under.fabric(edge.below(n - 1)), tried.other.below)
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
    often = f", {tried.times[-1]} times" if tried.times else ""
    perhaps = ": perhaps a misprint" if other.code == "perhaps-misprint" else ""
    message = f"round {tried.number} would come out{often}, if {other.if_}{perhaps}"
    return Finding(other.code, message, other.edit, other.at, tried.number)
