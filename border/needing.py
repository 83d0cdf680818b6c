"""The stage of `close`: every border of a file with what it needs, and lacks on its edge."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from border.findings import Finding
from border.planning.lacks import OnEdge, on_edge
from border.planning.needs import OF_THE_TEXT, Needs, needs
from border.planning.rules import Rule
from border.showing.needed import Needed, NeededWork
from border.text.source import Source
from border.texts import BorderText
from border.wanted import Wanted, told_of, worked_as_said

OF_THE_EDGE = OF_THE_TEXT | {
    "not-covered",
    "unknown-name",
    "run-too-short",
    "no-stitches",
    "too-large",
    "adjustment-has-no-place",
}
"""Findings of the working that say more than that a round does not close: that is the answer."""


def needed_of(
    borders: Sequence[Wanted], project: bool, closed: bool, sources: Mapping[str, Source]
) -> Needed:
    """What each border needs; `closed`: what an edge is taken to be where there is none."""
    works: list[NeededWork] = []
    findings: list[Finding] = []
    known: dict[tuple[str, str, bool], Needs] = {}
    for wanted in borders:
        text, edge, adjustments = wanted.text, wanted.edge, wanted.given
        findings += text.findings
        if text.reading is None or (project and edge is None):
            continue
        kind = (text.name, edge.of if edge else "loop", edge.closed if edge else closed)
        if kind not in known:
            known[kind] = _needs_of(text, *kind[1:])
        told = list(known[kind].findings)
        there: OnEdge | None = None
        if edge is not None:
            whole = text.faulty is None
            counted = wanted.found
            found = counted if counted and counted.in_force(wanted.done) else None
            there = on_edge(text.reading, edge, adjustments, known[kind], whole, found)
            if adjustments or not there.closes:
                worked = worked_as_said(wanted, edge).findings
                told = [f for f in told if f.code not in OF_THE_TEXT]
                told += [f for f in worked if f.code in OF_THE_EDGE]
        name, terms = text.reading.name, text.reading.rules.terms
        in_project = edge.name if project and edge else None
        works.append(NeededWork(in_project, kind[2], wanted.named, name, terms, known[kind], there))
        findings += told_of(edge, told, len(borders))
    return Needed(project, tuple(works), tuple(dict.fromkeys(findings)), sources)


def _needs_of(text: BorderText, of: str, closed: bool) -> Needs:
    """What a border needs; with a round that cannot be made out, nothing as a whole."""
    assert text.reading is not None
    found = needs(text.reading, of, closed)
    if text.faulty is None:
        return found
    return replace(found, whole=Rule(of), ways=(), findings=())
