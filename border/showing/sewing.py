"""Edges sewn to cloth, in one value: what the tables and the record of `attach` are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.reckoning.attaching import Sewn
from border.text.source import Source


class SewnEdge(Struct, frozen=True):
    """One `[[attach]]`: over which parts of an edge, in the order of working; `round` of the
    border (0: the edge itself)."""

    edge: str
    over: tuple[str, ...]
    round: int
    sewn: Sewn


class SewnAll(Struct, frozen=True):
    """All that is sewn to cloth in one project."""

    name: str
    edges: tuple[SewnEdge, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]
