"""Clauses written run by run: each part of the edge by its name, those worked alike together."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.text.tree import Clause, Elsewhere, Item, Over, OverMotifs, Scope, Text
from border.working.line import Line
from border.working.scopes import Part, allotted

MOST_NAMES = 3
"""What would take more names than that is written as what is left."""


class Run(Struct, frozen=True):
    """Stretches (by index) that a clause works, each part by itself, with the same steps."""

    steps: tuple[Item, ...]
    parts: tuple[frozenset[int], ...]

    @property
    def stretches(self) -> frozenset[int]:
        return frozenset(k for part in self.parts for k in part)


def by_runs(
    clauses: tuple[Clause, ...],
    worked: Sequence[Part],
    texts: Sequence[tuple[Item, ...]],
    line: Line,
) -> tuple[Clause, ...] | None:
    """The clauses of a row, each part with its steps; None where names cannot tell them apart."""
    owners = allotted(line, clauses)
    found: list[Clause] = []
    for index, clause in enumerate(clauses):
        mine = [(p, t) for p, t in zip(worked, texts, strict=True) if p.clause is clause]
        if not mine:
            continue
        if not mine[0][0].stretches:  # at a joint
            found.append(Clause(clause.scope, Text(clause.text.items)))
            continue
        alike: dict[tuple[Item, ...], list[frozenset[int]]] = {}
        for part, steps in mine:
            alike.setdefault(steps, []).append(frozenset(part.stretches))
        runs = [Run(steps, tuple(parts)) for steps, parts in alike.items()]
        open_ = {k for k, o in enumerate(owners) if o is None or o >= index}
        written = _clauses(clause.scope, runs, line, open_)
        if written is None:
            return None
        found += written
    return tuple(found)


def _clauses(scope: Scope, runs: list[Run], line: Line, open_: set[int]) -> list[Clause] | None:
    """One clause for each name; what has no few names of its own comes last, under `scope`."""
    if len(runs) == 1 and not isinstance(scope, Elsewhere):
        return [Clause(scope, Text(runs[0].steps))]
    named = [(run, _names(run, line, open_)) for run in runs]
    hard = [run for run, names in named if names is None or len(names) > MOST_NAMES]
    if len(hard) > 1:
        hard = [run for run, names in named if names is None]
        hard = hard or [max(named, key=lambda n: len(n[1] or ()))[0]]
    if len(hard) > 1:
        return None
    each = isinstance(scope, OverMotifs) or (isinstance(scope, Elsewhere) and scope.each_motif)
    found = []
    for run, names in named:
        if run in hard:
            continue
        for name in names or ():
            alone = not each or any(line.stretches[k].run.motif == name for k in run.stretches)
            over: Scope = Over(name) if alone else OverMotifs(name)
            found.append(Clause(over, Text(run.steps)))
    return found + [Clause(scope, Text(run.steps)) for run in hard]


def _names(run: Run, line: Line, open_: set[int]) -> list[str] | None:
    """Names that mean just these stretches, of those that no clause before has taken."""
    left, found = set(run.stretches), list[str]()
    while left:
        best, most = None, frozenset[int]()
        for name in _known(run, line):
            folded = name.casefold()
            means = frozenset(
                k for k in open_ if folded in {n.casefold() for n in line.stretches[k].run.names}
            )
            whole = all(part <= means or not part & means for part in run.parts)
            if whole and means <= run.stretches and len(means & left) > len(most & left):
                best, most = name, means
        if best is None:
            return None
        found.append(best)
        left -= most
    return found


def _known(run: Run, line: Line) -> list[str]:
    """Sections first, then labels, then motifs, each in the order of the edge."""
    runs = [line.stretches[k].run for k in sorted(run.stretches)]
    sections = [r.section for r in runs]
    motifs = [r.motif for r in runs]
    labels = sorted({n for r in runs for n in r.names} - {*sections, *motifs})
    return list(dict.fromkeys([*sections, *labels, *motifs]))
