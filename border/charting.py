"""The stage of `chart`: the pieces of work, each worked into its edge, to be drawn."""

from __future__ import annotations

from collections.abc import Sequence

from border.findings import Finding
from border.pipeline import Wanted, told_of, worked_as_said
from border.showing.chart_laid import Charted


def charted(
    wanted: Sequence[Wanted], section: str | None, terms: str | None, *, left: bool
) -> tuple[list[Charted], list[Finding]]:
    """What is to be drawn, and what there is to be told of it.

    `section`: the part of the edge that is wanted; of a piece of work that has no such
    part nothing is drawn.
    """
    drawn = []
    findings: list[Finding] = []
    for one in wanted:
        if one.edge is None or one.text.reading is None:
            continue
        if section is not None and not any(section in run.names for run in one.edge.runs):
            continue
        reading = one.text.reading
        worked = worked_as_said(one, one.edge)
        findings += told_of(one.edge, worked.findings, len(wanted))
        title = f"{reading.name or one.named}, {one.edge.name}" if one.work else ""
        names = terms or reading.rules.terms
        drawn.append(Charted(title, worked, names, section, left, one.edge.name, one.named))
    return drawn, findings
