"""The stage of `adjust`: every piece of work with the plans that make it close."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import repeat

from border.findings import Finding
from border.planning.falling import lying
from border.planning.offers import Task, task_for
from border.planning.plans import Planned, plan_all, why
from border.planning.refusing import no_plan
from border.planning.search import Plan, worked_with
from border.reckoning.counts import count_edge
from border.showing.eased import EasedAll, EasedWork, PlanTold
from border.text.source import Source
from border.wanted import Wanted, told_of, worked_as_said
from border.working.work import WorkedEdge
from border.yoke.edges import Edge
from border.yoke.project import Project

ANSWERED = ("row-does-not-close", "run-too-short", "repeat-unclear", "count-disagrees")
"""Findings of the work as it stands that the plan is the answer to."""


def eased(
    name: str,
    wanted: Sequence[Wanted],
    project: Project | None,
    sources: Mapping[str, Source],
    plans: int,
) -> EasedAll:
    """Plans for every piece of work, up to `plans` for each."""
    ready = [(w, w.edge) for w in wanted if w.edge and w.text.reading and w.text.faulty is None]
    found = plan_all([_task(w, edge, project) for w, edge in ready], plans)
    works: list[EasedWork] = []
    findings: list[Finding] = []
    for (one, edge), planned in zip(ready, found, strict=True):
        before = worked_as_said(one, edge)
        after = [worked_with(planned.task, plan.adjustments) for plan in planned.plans]
        told = list(map(_told, repeat(planned.task), planned.plans, after))
        works.append(_work(one, planned, before, told))
        findings += told_of(edge, _findings(planned, before, after), len(wanted))
    return EasedAll(name, tuple(works), tuple(findings), sources)


def _task(wanted: Wanted, edge: Edge, project: Project | None) -> Task:
    w = wanted
    assert w.text.reading is not None
    return task_for(w.text.reading, edge, project, w.work, w.given, w.done, w.found)


def _told(task: Task, plan: Plan, after: WorkedEdge) -> PlanTold:
    lies = tuple(lying(r, task.spots) for r in after.rounds)
    return PlanTold(plan, why(task, plan.adjustments), count_edge(after), lies)


def _work(wanted: Wanted, planned: Planned, before: WorkedEdge, told: list[PlanTold]) -> EasedWork:
    reading = planned.task.reading
    stands = tuple(
        f.message for f in before.findings if f.code in ("row-does-not-close", "repeat-unclear")
    )
    return EasedWork(
        wanted.number,
        planned.task.edge,
        wanted.named,
        reading.name,
        reading.rules.terms,
        stands,
        tuple(told),
        planned.like,
        len(wanted.given),
    )


def _findings(planned: Planned, before: WorkedEdge, after: list[WorkedEdge]) -> list[Finding]:
    """What stands in the way; where there is a plan, what is still to be told with it.

    `after`: the work with each of the plans.
    """
    if not after:
        return [*before.findings, no_plan(planned, before)]
    return [f for f in after[0].findings if f.code not in ANSWERED]
