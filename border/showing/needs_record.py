"""The record of `close`: what `border close --json` prints."""

from __future__ import annotations

from border.planning.lacks import OnEdge
from border.planning.needs import RoundNeed
from border.planning.rules import Rule
from border.planning.series import Series
from border.showing.needed import Needed, NeededWork
from border.showing.needs_shapes import (
    CloseRecord,
    CloseWorksRecord,
    EitherRecord,
    NeedRecord,
    RoundNeedRecord,
)
from border.showing.record import findings_record
from border.showing.shapes import FORMAT_VERSION


def close_record(needed: Needed) -> CloseRecord | CloseWorksRecord:
    """The record of `close`: of one border text, or of all that a project works."""
    findings = findings_record(needed.findings, needed.sources)
    if needed.project:
        return {
            "format_version": FORMAT_VERSION,
            "works": [
                {"edge": work.edge or "", "border": work.border, **_need(work)}
                for work in needed.works
            ],
            "findings": findings,
        }
    if not needed.works:
        nothing: NeedRecord = {
            "closed": True,
            "multiple": None,
            "plus": None,
            "least": None,
            "of": "loop",
            "rounds": [],
        }
        return {"format_version": FORMAT_VERSION, **nothing, "findings": findings}
    (work,) = needed.works
    return {"format_version": FORMAT_VERSION, **_need(work), "findings": findings}


def _need(work: NeededWork) -> NeedRecord:
    rule = work.needs.whole
    record: NeedRecord = {
        "closed": work.closed,
        "multiple": rule.multiple,
        "plus": rule.plus,
        "least": rule.least,
        "of": rule.of,
        "rounds": [_round(need, work.there) for need in work.needs.rounds],
    }
    if rule.exactly is not None:
        record["exactly"] = rule.exactly
    if rule.either:
        record["either"] = _either(rule)
    if (there := work.there) is not None:
        record["loops"] = there.edge.places
        record["closes"] = there.closes
        record["left_over"] = there.left_over
        record["remedies"] = [{"by": n - there.edge.places} for n in there.nearest]
    return record


def _round(need: RoundNeed, there: OnEdge | None) -> RoundNeedRecord:
    rule = need.rule
    record: RoundNeedRecord = {
        "round": need.number,
        "multiple": rule.multiple if rule.plus is not None else None,
        "plus": rule.plus,
        "of": rule.of or None,
    }
    if rule.exactly is not None:
        record["exactly"] = rule.exactly
    if rule.either:
        record["either"] = _either(rule)
    if need.stretches:
        record["stretches"] = [
            {
                "clause": stretch.clause,
                "multiple": stretch.rule.multiple if stretch.rule.plus is not None else None,
                "plus": stretch.rule.plus,
                "least": stretch.rule.least,
                "of": stretch.rule.of or None,
            }
            for stretch in need.stretches
        ]
    left = next((r for r in there.rounds if r.number == need.number), None) if there else None
    if left is not None:
        record["closes"], record["left_over"] = left.closes, left.left_over
    return record


def _either(rule: Rule) -> list[EitherRecord]:
    return [_one(series) for series in rule.either]


def _one(series: Series) -> EitherRecord:
    if not series.step:
        return {"multiple": None, "plus": None, "exactly": series.first}
    return {"multiple": series.step, "plus": series.first % series.step}
