"""What each stretch of an irregular edge needs, by the clauses that work them."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from border.planning.rules import Rule, growers, rule_of
from border.planning.trials import Bench, Trial, Worked, trial
from border.text.readings import Reading
from border.text.tree import AtJoint, AtJoints, Clause, Target, Text
from border.text.written import write_scope
from border.working.rounds import work_part
from border.working.scopes import Part, names_of, parts
from border.working.sites import SiteFinder
from border.yoke.edges import Edge, Run

SIZES = (12, 13, 24, 36)
"""Places of each motif on which a clause is tried first."""
MORE = 48
"""Motifs of up to so many places are tried where those do not tell."""


class Stretch(Struct, frozen=True):
    """What one clause needs of each stretch that it works; `clause`: its own words."""

    clause: str
    rule: Rule


def sample_edge(reading: Reading, places: int, closed: bool, of: str) -> Edge:
    """An edge of motifs with so many places each: one for every name in the clauses, and a few."""
    named: dict[str, None] = {}
    for round_ in reading.rounds:
        if not isinstance(round_.body, Text):
            named.update(dict.fromkeys(n for c in round_.body for n in names_of(c)))
    motifs = [*named, *(f"another.{n}" for n in range(1, 5))]
    runs = tuple(Run(name, name, places, places, frozenset({name})) for name in motifs)
    return Edge("edge", closed, of, runs, places * len(runs), frozenset(motifs))


def stretches(bench: Bench, r: int) -> tuple[Stretch, ...]:
    """What every clause of the round of index r needs that works into something.

    Clauses at the joints, and those that leave their part unworked, need nothing.
    Raises TooMany.
    """
    body = bench.reading.rounds[r].body
    assert not isinstance(body, Text)
    found = []
    for clause in body:
        if isinstance(clause.scope, AtJoint | AtJoints) or not clause.text.items:
            continue
        trials = [_first(bench, r, clause, places) for places in SIZES]
        known = [each for each in trials if each is not None]
        rule = Rule("") if len(known) < len(trials) else _rule(bench, r, clause, known)
        found.append(Stretch(write_scope(clause.scope), rule))
    return tuple(found)


def _rule(bench: Bench, r: int, clause: Clause, trials: list[Trial]) -> Rule:
    more = (t for n in range(1, MORE) for t in _trials(bench, r, clause, n))
    if growing := growers(trials):
        rule = rule_of(trials)
        if rule.plus is None:
            sure = next((t for t in more if t.sure and t.repeats[growing[-1]].times), trials[0])
            rule = rule_of([*trials, sure], growing)
        return rule
    rule = rule_of(trials)
    if all(t.closes for t in trials):
        return replace(rule, multiple=1, plus=0, least=min(t.offered for t in more if t.closes))
    exactly = {t.offered - t.beyond for t in trials if t.sure and t.beyond}
    return replace(rule, exactly=exactly.pop()) if len(exactly) == 1 else rule


def _first(bench: Bench, r: int, clause: Clause, places: int) -> Trial | None:
    return next(_trials(bench, r, clause, places), None)


def _trials(bench: Bench, r: int, clause: Clause, places: int) -> Iterator[Trial]:
    """Every part that the clause works, on motifs of so many places."""
    worked = bench.worked(places)
    if r < len(worked):
        body = worked[r].round.body
        assert not isinstance(body, Text)
        finder = SiteFinder(worked[r].below, bool(worked[r].round.rules.chains_count))
        for part in parts(finder, body):
            if part.clause is clause:
                yield _part_trial(worked[r], part)


def _part_trial(worked: Worked, part: Part) -> Trial:
    def offered(targets: tuple[Target, ...]) -> int:
        return len(part.window.sites(targets))

    done = work_part(worked.round, part)
    return trial(done, part.clause.text.items, worked.below, offered)
