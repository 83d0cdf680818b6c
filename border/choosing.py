"""The stage of `close` with several borders: which of them closes on which edge, and how easily."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from border.planning.needs import needs
from border.planning.offers import task_for
from border.planning.search import Search
from border.showing.chosen import Choice, Fit
from border.text.source import Source
from border.texts import BorderText
from border.yoke.edges import Edge
from border.yoke.project import Project

WORKINGS = 300
"""So many workings of a round are spent on one border and one edge."""


def chosen(
    name: str,
    texts: Sequence[tuple[str, BorderText]],
    edges: Sequence[Edge],
    project: Project | None,
    closed: bool,
    sources: Mapping[str, Source],
) -> Choice:
    """How each border fits each edge; with no edge, what each needs.

    `texts`: each with the file as the user named it. `closed`: what an edge is
    taken to be where there is none.
    """
    fits: list[Fit] = []
    findings = [f for _, text in texts for f in text.findings]
    for named, text in texts:
        title = text.reading.name if text.reading else None
        if text.reading is None or text.faulty is not None:
            fits += [Fit(named, title, edge, readable=False) for edge in edges or (None,)]
        elif not edges:
            rule = needs(text.reading, "loop", closed).whole
            fits.append(Fit(named, title, None, terms=text.reading.rules.terms, needs=rule))
        else:
            fits += [_fit(named, text, edge, project) for edge in edges]
    return Choice(name, tuple(fits), tuple(edges), tuple(dict.fromkeys(findings)), sources)


def _fit(named: str, text: BorderText, edge: Edge, project: Project | None) -> Fit:
    assert text.reading is not None
    search = Search(task_for(text.reading, edge, project), most=WORKINGS)
    plan = next(search.plans(), None)
    return Fit(named, text.reading.name, edge, terms=text.reading.rules.terms, plan=plan)
