"""The record of `close` with several borders, as plain dictionaries."""

from __future__ import annotations

from border.showing.chosen import Choice, Fit
from border.showing.chosen_shapes import ChoiceRecord, FitRecord
from border.showing.eased_record import adjustments_record
from border.showing.record import findings_record
from border.showing.shapes import FORMAT_VERSION


def chosen_record(choice: Choice) -> ChoiceRecord:
    """The record of several borders on the edges of a project, or on none."""
    return {
        "format_version": FORMAT_VERSION,
        "name": choice.name,
        "borders": [_fit(fit) for fit in choice.fits],
        "findings": findings_record(choice.findings, choice.sources),
    }


def _fit(fit: Fit) -> FitRecord:
    record: FitRecord = {"border": fit.border, "readable": fit.readable}
    if fit.edge is not None:
        record["edge"] = fit.edge.name
        record["places"] = fit.places
        record["plan"] = adjustments_record(fit.plan) if fit.plan else []
    elif fit.needs is not None:
        record["multiple"] = fit.needs.multiple
        record["plus"] = fit.needs.plus
        record["least"] = fit.needs.least
    return record
