"""What is told where no plan was found: what stands in the way, and what would help."""

from __future__ import annotations

from border.findings import Finding
from border.planning.needs import needs
from border.planning.plans import Planned
from border.planning.telling import several
from border.text.tree import Text
from border.working.work import WorkedEdge, WorkedRound


def no_plan(planned: Planned, before: WorkedEdge) -> Finding:
    """The finding `no-plan`; `before`: the work as it stands."""
    task, stuck = planned.task, planned.stuck
    round_ = next((r for r in task.reading.rounds if r.number == stuck.round), None)
    if stuck.given_up:
        message = "no plan was found; the search would take too long, and was given up"
    elif round_ is None:
        message = "no plan was found: the rounds cannot be worked"
    else:
        message = f"no plan was found: nothing eased in makes round {stuck.round} close"
    ways = []
    worked = next((r for r in before.rounds if r.number == stuck.round), None)
    if worked is not None:
        ways += _other_repeats(worked)
    if round_ is not None and not isinstance(round_.body, Text):
        ways.append("give the parts that are too short a clause of their own")
    ways += _other_loops(planned)
    help_ = "; or ".join(ways) or "look first at what else is told of its rounds"
    return Finding("no-plan", message, help_, round_.head if round_ else None, stuck.round or None)


def _other_repeats(worked: WorkedRound) -> list[str]:
    """A repeat one shorter or one longer, where that comes out even."""
    if len(worked.repeats) != 1 or len(worked.repeats[0].takes) != 1:
        return []
    repeat = worked.repeats[0]
    ((kind, takes),) = repeat.takes.items()
    sites = repeat.times * takes + repeat.left_over
    fitting = [n for n in (takes - 1, takes + 1) if n > 1 and sites and sites % n == 0]
    if not repeat.left_over or not fitting:
        return []
    named = " or ".join(map(str, fitting))
    return [f"a repeat of {named} {several(kind)} in round {worked.number} comes out even"]


def _other_loops(planned: Planned) -> list[str]:
    """The nearest other numbers of places on which the border closes, where there is a rule."""
    task = planned.task
    nearest = needs(task.reading, task.edge.of, task.edge.closed).nearest(task.edge.places)
    if not nearest:
        return []
    return [f"an edge of {' or '.join(map(str, nearest))} {several(task.edge.of)} closes as it is"]
