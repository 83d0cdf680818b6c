"""A border worked into an edge, round by round."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding, Span
from border.stitches import STITCHES
from border.text.readings import Reading, Round
from border.text.steps import worked_targets
from border.text.tree import Kind, Part, Target, Text, Worked
from border.text.written_places import write_ordinal
from border.working.adjusting import Adjustment
from border.working.claims import check_claims, check_multiple
from border.working.closing import kind_name
from border.working.cursor import Opening, TooLarge
from border.working.fabric import Fabric, edge_fabric, has_no_stitch
from border.working.found import Found, as_it_stands, came_out, misplaced
from border.working.rounds import Fallen, Pass, with_chains, work_once
from border.working.scopes import carries, names_of
from border.working.sites import SiteFinder
from border.working.telling import (
    chains_left_out,
    chains_unclear,
    no_round,
    no_stitches,
    passes_more,
    repeat_unclear,
    too_large,
    unknown_name,
)
from border.working.unclosed import does_not_close, too_short
from border.yoke.edges import Edge

WORK_LIMIT = 5_000_000
"""Atoms in one piece of work."""


class WorkedRepeat(Struct, frozen=True):
    """One open-ended repeat: `makes` are the elements that one repeat makes; so many of its
    `times` take `otherwise`."""

    times: int
    takes: dict[str, int]
    makes: tuple[str, ...]
    left_over: int
    otherwise: int


class WorkedRound(Struct, frozen=True):
    """A round as it came out, and what is told of it.

    `spans`: the elements [start, stop) of its fabric that each repeat made, in order.
    `openings`: its start chains. `passed`: stitches and chains of the row below, from its
    start to the place that this one is begun in. `done`: it is worked already. `found`:
    what was counted in it, where it came out so.
    """

    number: int
    done: bool
    closes: bool
    fabric: Fabric
    repeats: tuple[WorkedRepeat, ...]
    spans: tuple[tuple[int, int], ...]
    adjustments: tuple[Fallen, ...]
    findings: tuple[Finding, ...]
    found: Found | None = None
    openings: tuple[Opening, ...] = ()
    passed: int = 0


class WorkedEdge(Struct, frozen=True):
    """An edge with all its rounds, as far as they could be worked, and all that is told."""

    edge: Edge
    rounds: tuple[WorkedRound, ...]
    findings: tuple[Finding, ...]


def work(
    reading: Reading,
    edge: Edge,
    adjustments: Sequence[Adjustment] = (),
    done: int = 0,
    found: Found | None = None,
    done_at: Span | None = None,
) -> WorkedEdge:
    """Work every round of a border into an edge. Rounds that do not close are worked on.

    Rounds 1 to `done` are worked already (`done_at`: where that is said), one of them
    came out at `found`. A `found` of a round that is not done is told of, and left aside.
    """
    fabric = edge_fabric(edge)
    rounds: list[WorkedRound] = []
    findings: list[Finding] = []
    total = 0
    for round_ in reading.rounds:
        mine = tuple(a for a in adjustments if a.round == round_.number)
        counted = found if found and found.round == round_.number <= done else None
        worked = _worked(round_, edge, fabric, mine, round_.number <= done, counted)
        total += len(worked.fabric.kinds) if worked else 0
        if worked is None or total > WORK_LIMIT:
            findings.append(too_large(round_))
            break
        findings += worked.findings
        if has_no_stitch(worked.fabric.kinds):
            if not _nothing_to_name(round_, edge):
                findings.append(no_stitches(round_, _missing(round_, fabric)))
            break
        rounds.append(worked)
        fabric = as_met_next(worked.fabric, round_, reading.rules.worked, edge.closed)
    last = reading.rounds[-1].number if reading.rounds else 0
    findings += [no_round(a, last) for a in adjustments if not 1 <= a.round <= last]
    findings += misplaced(done, done_at, found, last) if last else []
    if reading.multiple and rounds and len(rounds) == len(reading.rounds):
        closes = all(r.closes for r in rounds)
        findings += check_multiple(reading.multiple, edge, closes, bool(adjustments or found))
    return WorkedEdge(edge, tuple(rounds), tuple(findings))


def _missing(round_: Round, below: Fabric) -> list[str]:
    """The kinds that a round names and the row below has none of."""
    body = round_.body
    texts = [body] if isinstance(body, Text) else [clause.text for clause in body]
    finder = SiteFinder(below, bool(round_.rules.chains_count))
    targets = [t for text in texts for t in worked_targets(text.items)]
    return list(dict.fromkeys(_lacking(t, below) for t in targets if not finder.sites(t).a))


def _lacking(target: Target, below: Fabric) -> str:
    """What a row below does not have: a kind, or `2nd st in one dc`."""
    name = kind_name(target.of, below)
    match target:
        case Part(nth=nth, of=Kind(name=stitch)) if nth > 1 and stitch in STITCHES:
            return f"{write_ordinal(nth)} st in one {name}"
        case _:
            return name


def as_met_next(made: Fabric, round_: Round, worked: Worked | None, closed: bool) -> Fabric:
    """The row that a round made as the next round meets it: turned, if the work is."""
    return made.turned() if turns_after(round_, worked, closed) else made


def turns_after(round_: Round, worked: Worked | None, closed: bool) -> bool:
    """Whether the work is turned after a round. Two turns between the same rows are one."""
    return round_.turns or (not closed and worked in (None, Worked.IN_ROWS))


def _worked(
    round_: Round,
    edge: Edge,
    below: Fabric,
    adjustments: tuple[Adjustment, ...],
    already: bool,
    found: Found | None,
) -> WorkedRound | None:
    """A round worked into the fabric below; None where it grows too large."""
    try:
        _, done, fallen = as_it_stands(round_, below, adjustments, found)
        told = [*_unknown_names(round_, edge), *_told(round_, below, done, already)]
    except TooLarge:
        return None
    fabric = done.fabric(below)
    repeats = tuple(
        WorkedRepeat(a.times, a.takes(below), a.makes(below), a.left_over, a.otherwise(below))
        for a in done.accounts.values()
    )
    spans = tuple(sorted(s for a in done.accounts.values() for s in a.spans))
    if found and came_out(found, done, fabric) != found.numbers:
        found = None
    if not found:  # what was counted stands above what the text claims
        told += check_claims(round_, fabric, [r.times for r in repeats])
    passed = bisect_left(below.atoms, done.made.begun)
    return WorkedRound(
        round_.number,
        already,
        done.closes,
        fabric,
        repeats,
        spans,
        fallen,
        tuple(told),
        found,
        tuple(done.made.openings),
        0 if below.base else passed,
    )


def _told(round_: Round, below: Fabric, done: Pass, already: bool) -> list[Finding]:
    """All that there is to say of a round on this edge."""
    findings = list(done.findings)
    if done.unclear:
        both = [work_once(with_chains(round_, count), below) for count in (True, False)]
        findings.append(chains_unclear(round_, *(_summary(p) for p in both)))
    elif done.counted and all(f.code != "chains-left-out" for f in findings):
        both = [work_once(with_chains(round_, count), below) for count in (True, False)]
        yes, no = map(_summary, both)
        if yes != no:
            findings.append(chains_left_out(round_, done.counted, yes, no))
    for account in done.accounts.values():
        if (uneven := account.uneven()) is not None:
            findings.append(passes_more(round_, below, *uneven))
    if done.closes:
        return findings
    findings += [] if already else too_short(round_, done.reasons.troubles)
    if (again := _closes_repeated(round_, below)) is not None:
        return [*findings, repeat_unclear(round_, _summary(done), _summary(again))]
    return [*findings, does_not_close(round_, below, done.accounts, done.reasons, already)]


def _summary(done: Pass) -> tuple[list[str], list[int], bool]:
    times = [a.times for a in done.accounts.values()]
    return done.made.kinds, times, done.closes


def _closes_repeated(round_: Round, below: Fabric) -> Pass | None:
    """The row worked round and round, where it prints no repeat and would close so."""
    if round_.repeated is None:
        return None
    done = work_once(replace(round_, body=round_.repeated), below)
    return done if done.closes else None


def _nothing_to_name(round_: Round, edge: Edge) -> bool:
    """Clauses on an edge without motifs: that is told once, of the whole round."""
    return not isinstance(round_.body, Text) and not edge.known_names


def _unknown_names(round_: Round, edge: Edge) -> list[Finding]:
    if isinstance(round_.body, Text) or _nothing_to_name(round_, edge):
        return []
    return [
        unknown_name(clause, name, edge, round_)
        for clause in round_.body
        for name in names_of(clause)
        if not carries(edge.known_names, name)
    ]
