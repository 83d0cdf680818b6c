"""Which borders fit which edges, in one value: what table and record of several are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.planning.rules import Rule
from border.planning.search import Plan
from border.text.source import Source
from border.yoke.edges import Edge


class Fit(Struct, frozen=True):
    """One border on one edge: the plan that makes it close (an empty one where it closes as it
    stands; None where there is none), or, without an edge, what it needs.

    `border` is the file as the user named it, `title` the name that the text gives
    itself. `readable`: every round could be made out.
    """

    border: str
    title: str | None
    edge: Edge | None
    terms: str = "us"
    plan: Plan | None = None
    needs: Rule | None = None
    readable: bool = True

    @property
    def places(self) -> int | None:
        """How many places are to be eased in; None where the border cannot be made to close."""
        return None if self.plan is None else sum(abs(a.by) for a in self.plan.adjustments)


class Choice(Struct, frozen=True):
    """All borders on all edges, border by border."""

    name: str
    fits: tuple[Fit, ...]
    edges: tuple[Edge, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]
