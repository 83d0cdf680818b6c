"""The record of `adjust`, as plain dictionaries."""

from __future__ import annotations

from border.planning.falling import Lying, Over
from border.planning.search import Plan
from border.showing.eased import EasedAll, EasedWork, PlanTold
from border.showing.eased_shapes import (
    AdjustRecord,
    EasedWorkRecord,
    LyingRecord,
    PlanAdjustmentRecord,
    PlanRecord,
    PointRecord,
)
from border.showing.record import findings_record
from border.showing.shapes import FORMAT_VERSION


def adjust_record(eased: EasedAll) -> AdjustRecord:
    """The record of `adjust`."""
    return {
        "format_version": FORMAT_VERSION,
        "works": [_work(work) for work in eased.works],
        "findings": findings_record(eased.findings, eased.sources),
    }


def _work(work: EasedWork) -> EasedWorkRecord:
    best = work.plans[0] if work.plans else None
    return {
        "edge": work.edge.name,
        "border": work.border,
        "closes": best is not None,
        "plan": adjustments_record(best.plan) if best else [],
        "cost": best.plan.cost if best else None,
        "cheapest": best.plan.cheapest if best else False,
        "plans": [_plan(told) for told in work.plans],
        "rounds": [
            _lying(count.number, lying)
            for count, lying in zip(best.rounds, best.lying, strict=True)
        ]
        if best
        else [],
    }


def _plan(told: PlanTold) -> PlanRecord:
    return {
        "plan": adjustments_record(told.plan),
        "cost": told.plan.cost,
        "paid_for": dict(told.why),
    }


def adjustments_record(plan: Plan) -> list[PlanAdjustmentRecord]:
    """The adjustments of a plan."""
    return [{"round": a.round, "at": a.at, "by": a.by} for a in plan.adjustments]


def _lying(number: int, lying: Lying) -> LyingRecord:
    return {
        "round": number,
        "sections": [
            {
                "section": f.section,
                "repeats": f.repeats,
                "begins": _point(f.first),
                "ends": _point(f.last),
            }
            for f in lying.falls
        ],
        "sides_alike": lying.alike,
    }


def _point(over: Over) -> PointRecord:
    return {"motif": over.motif, "place": over.place}
