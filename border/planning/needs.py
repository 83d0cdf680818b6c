"""What a border needs in order to close: row by row, and as numbers of places on the edge."""

from __future__ import annotations

from msgspec import Struct

from border.findings import Finding
from border.planning.carrying import carried
from border.planning.rules import Rule
from border.planning.series import Series, apart, as_one
from border.planning.stretches import SIZES, Stretch, sample_edge, stretches
from border.planning.telling import (
    by_parts,
    does_not_agree,
    never_closes,
    only_some,
    too_many,
    unevenly,
)
from border.planning.trials import Bench, Repeated, TooMany
from border.text.readings import Reading
from border.text.tree import Text
from border.working.work import work
from border.yoke.edges import plain_edge

SMALL = 16
"""Members of a series that are looked at one by one before it is said that none closes."""
MOST_WAYS = 12
"""Series of edges that are followed side by side."""

OF_THE_TEXT = frozenset({"chains-unclear", "repeat-unclear", "place-unclear"})
"""Findings of the working that have nothing to do with the number of places."""


class RoundNeed(Struct, frozen=True):
    """What one round needs of what it works into; by clauses, what each stretch needs."""

    number: int
    rule: Rule
    stretches: tuple[Stretch, ...] = ()


class Needs(Struct, frozen=True):
    """What a border needs of an edge whose places are of one kind.

    `ways`: the series of numbers of places on which it closes, as far as they
    are known. `findings`: why there is no one rule, and faults of the text that
    show on any edge.
    """

    whole: Rule
    ways: tuple[Series, ...]
    rounds: tuple[RoundNeed, ...]
    findings: tuple[Finding, ...]

    def nearest(self, n: int) -> tuple[int, ...]:
        """The numbers of places nearest to n, below and above, on which the border closes."""
        found = {m for way in self.ways for m in way.nearest(n)}
        below, above = [m for m in found if m < n], [m for m in found if m > n]
        return (*([max(below)] if below else ()), *([min(above)] if above else ()))


def needs(reading: Reading, of: str, closed: bool) -> Needs:
    """What a border needs of an edge of plain places of the kind `of`; by clauses, of motifs."""
    if any(not isinstance(round_.body, Text) for round_ in reading.rounds):
        return _by_parts(reading, of, closed)
    bench = Bench(reading, lambda n: plain_edge(n, closed, of))
    ways: tuple[Series, ...] = (Series(1, 1),)
    rounds: list[RoundNeed] = []
    told: list[Finding] = []
    try:
        for r, round_ in enumerate(reading.rounds):
            steps = [carried(bench, way, r) for way in ways]
            rounds.append(RoundNeed(round_.number, _row_rule([step.rule for step in steps])))
            if told:
                continue  # only what it needs itself can still be said
            found = apart(way for step in steps for way in step.ways)
            if not found and not any(step.uneven for step in steps):
                found = apart(one for way in ways if way.step for one in _small(bench, way, r))
            if any(step.uneven for step in steps) or len(found) > MOST_WAYS:
                told.append(unevenly(round_, of))
            elif not found:
                told.append(never_closes(rounds[-1].rule, round_, of))
            else:
                ways = found
        whole, ways = (Rule(of), ()) if told else _whole(bench, ways, of)
    except TooMany:
        r = min(len(rounds), len(reading.rounds) - 1)
        told.append(too_many(reading.rounds[r], of))
        rounds += [RoundNeed(more.number, Rule("")) for more in reading.rounds[len(rounds) :]]
        whole, ways = Rule(of), ()
    if ways and whole.multiple is None:
        told.append(only_some(ways, of))
    told += does_not_agree(reading, whole)
    return Needs(whole, ways, tuple(rounds), (*told, *_of_the_text(reading, bench, ways)))


def _small(bench: Bench, way: Series, r: int) -> list[Series]:
    """The numbers near the beginning of a series on which the rounds close, each by itself.

    Where a border does not go on to close, it may still do so before it goes on evenly.
    """
    first, last = way.first % way.step or way.step, way.at(SMALL)
    return [Series(0, n) for n in range(first, last, way.step) if bench.close(n, r)]


def _row_rule(rules: list[Rule]) -> Rule:
    """What a row needs, by the way that tells most of it."""
    return max(rules, key=lambda r: (r.plus is not None, r.exactly is not None, bool(r.either)))


def _whole(bench: Bench, ways: tuple[Series, ...], of: str) -> tuple[Rule, tuple[Series, ...]]:
    """The ways put together, each from its smallest member on."""
    unending = [way for way in ways if way.step]
    if not unending:
        only = ways[0].first if len(ways) == 1 else None
        return Rule(of, least=only, exactly=only, either=ways if only is None else ()), ways
    if (together := as_one(unending)) is not None:
        begun = _begun(bench, together)
        return Rule(of, begun.step, begun.first % begun.step, begun.first), (begun,)
    ways = tuple(_begun(bench, way) if way.step else way for way in ways)
    return Rule(of, either=ways), ways


def _begun(bench: Bench, way: Series) -> Series:
    """The series from the smallest number on from which every one closes."""
    first, last = way.first, len(bench.reading.rounds) - 1
    while bench.close(first - way.step, last):
        first -= way.step
    return Series(way.step, first)


def _of_the_text(reading: Reading, bench: Bench, ways: tuple[Series, ...]) -> list[Finding]:
    """What is unclear in the text, whatever the edge: as told on one that closes, or on a few."""
    found: dict[tuple[str, int | None], Finding] = {}
    for n in (ways[0].first,) if ways and ways[0].step else range(24, 36):
        for finding in work(reading, bench.edge(n)).findings:
            if finding.code in OF_THE_TEXT:
                found.setdefault((finding.code, finding.round), finding)
    return list(found.values())


def _by_parts(reading: Reading, of: str, closed: bool) -> Needs:
    """A border with rounds by clauses: each round by itself."""
    bench = Bench(reading, lambda n: sample_edge(reading, n, closed, of))
    rounds = []
    clauses = next(r for r in reading.rounds if not isinstance(r.body, Text))
    for r, round_ in enumerate(reading.rounds):
        try:
            if isinstance(round_.body, Text):
                rule = carried(bench, Series(1, 1), r).rule
                # parts that differ may make repeats differ: then what one takes is no multiple
                even = all(each.even for n in SIZES for each in _repeats(bench, n, r))
                rounds.append(RoundNeed(round_.number, rule if even else Rule(rule.of)))
            else:
                rounds.append(RoundNeed(round_.number, Rule(""), stretches(bench, r)))
        except TooMany:
            rounds.append(RoundNeed(round_.number, Rule("")))
    told = (by_parts(clauses), *_of_the_text(reading, bench, ()))
    return Needs(Rule(of), (), tuple(rounds), told)


def _repeats(bench: Bench, n: int, r: int) -> tuple[Repeated, ...]:
    there = bench.trial(n, r)
    return there.repeats if there else ()
