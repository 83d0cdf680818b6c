"""Plans for all the work of a project: edge by edge, and alike on left and right."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import islice

from msgspec import Struct
from msgspec.structs import replace

from border.planning.costs import Eased, round_costs
from border.planning.offers import Task
from border.planning.search import MOST_WORKINGS, Plan, Search, Stuck, proved
from border.planning.spots import mirrored
from border.working.adjusting import Adjustment
from border.yoke.edges import Edge


class Planned(Struct, frozen=True):
    """The plans for one piece of work, cheapest first; none where none was found.

    `stuck`: where the search came to nothing. `like`: the edge on the other side whose
    plan this is, mirrored.
    """

    task: Task
    plans: tuple[Plan, ...]
    stuck: Stuck
    like: str | None = None


AS_USUAL = 10
"""So many pieces of work are searched as one is; of more each gets a smaller share."""


def plan_all(tasks: Sequence[Task], wanted: int = 1) -> list[Planned]:
    """Plans for pieces of work, up to `wanted` for each.

    What is worked on a left edge is eased as on the right one, where that closes there too.
    """
    most = min(MOST_WORKINGS, MOST_WORKINGS * AS_USUAL // max(len(tasks), 1))
    found: list[Planned] = []
    for task in tasks:
        twin = next((p for p in found if _twins(p.task, task)), None)
        alike = _as_other_side(task, twin) if twin else None
        found.append(alike or _searched(task, wanted, most))
    return found


def _searched(task: Task, wanted: int, most: int) -> Planned:
    search = Search(task, wanted, most)
    plans = tuple(islice(search.plans(), wanted))
    return Planned(task, plans, search.stuck)


def _twins(done: Task, task: Task) -> bool:
    name = task.edge.name
    return mirrored(name) != name and done.edge.name == mirrored(name)


def _as_other_side(task: Task, twin: Planned) -> Planned | None:
    """The plans of the other side, mirrored; None unless the best of them closes here."""
    image = counterparts(twin.task.edge, task.edge)
    if twin.task.reading != task.reading or image is None or not twin.plans:
        return None
    plans = []
    for plan in twin.plans:
        turned = tuple(replace(a, at=image.get(a.at, a.at)) for a in plan.adjustments)
        if all(a.round > task.done for a in turned) and proved(task, turned):
            plans.append(replace(plan, adjustments=turned, cost=cost_of(task, turned)))
        elif not plans:
            return None
    return Planned(task, tuple(plans), twin.stuck, like=twin.task.edge.name)


def counterparts(one: Edge, other: Edge) -> dict[str, str] | None:
    """The spots of an edge and those of its mirror image; None where it is no mirror image."""
    n = len(one.runs)
    if n != len(other.runs) or one.closed != other.closed or not n:
        return None
    for total in range(n) if one.closed else (n - 1,):
        images = [other.runs[(total - i) % n] for i in range(n)]
        if all(
            a.places == b.places and mirrored(a.section) == b.section
            for a, b in zip(one.runs, images, strict=True)
        ):
            motifs = {a.motif: b.motif for a, b in zip(one.runs, images, strict=True)}
            joints = {
                f"{one.runs[i - 1].motif} | {one.runs[i].motif}": f"{images[i].motif} | "
                f"{images[i - 1].motif}"
                for i in range(n)
            }
            return motifs | joints
    return None


# --- what a plan costs, and why ----------------------------------------------------


def why(task: Task, adjustments: Sequence[Adjustment]) -> Mapping[str, int]:
    """What a plan pays for, by the names of the table of costs, in its order."""
    by_name = {spot.at: spot for spot in task.spots.spots}
    last = task.reading.rounds[-1].number if task.reading.rounds else 0
    paid: Counter[str] = Counter()
    for round_ in task.reading.rounds:
        mine = [a for a in adjustments if a.round == round_.number]
        costs = round_costs(task.costs, task.curve, round_, round_.number == last)
        eased = [Eased(by_name[a.at], a.by) for a in mine]
        paid.update(costs.parts(eased, task.spots))
    return {key: paid[key] for key in task.costs.__struct_fields__ if paid[key]}


def cost_of(task: Task, adjustments: Sequence[Adjustment]) -> int:
    """What a plan costs, all its rounds together."""
    return sum(why(task, adjustments).values())
