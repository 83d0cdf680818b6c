"""Edges sewn to cloth: which stretch of an edge is meant, and what is wrong with what is said."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, islice
from typing import TYPE_CHECKING

from border.findings import Finding
from border.yoke.names import nearest
from border.yoke.project import Attachment, Project

if TYPE_CHECKING:
    from border.yoke.edges import Edge


def attach_faults(project: Project, edges: Sequence[Edge]) -> list[Finding]:
    """`no-such-edge`, `unknown-name` and `bad-value` for what cannot be sewn as it is said."""
    by_name = {edge.name: edge for edge in edges}
    found: list[Finding] = []
    for said in project.attachments:
        edge = by_name.get(said.edge)
        if edge is None:
            help_ = nearest(said.edge, by_name) or f"the edges are {', '.join(islice(by_name, 8))}"
            message = f'there is no edge "{said.edge}" to be sewn down'
            found.append(Finding("no-such-edge", message, help_, said.edge_span))
        else:
            found += _over_faults(said, edge)
    return found


def _over_faults(said: Attachment, edge: Edge) -> list[Finding]:
    """Names that the edge does not have, or that are not one stretch of it."""
    has = {name: None for run in edge.runs for name in (run.section, *sorted(run.names))}
    strange = [name for name in said.over if name.text not in has]
    found = []
    for name in strange:
        message = f'the edge "{edge.name}" has no part called "{name.text}"'
        sections = dict.fromkeys(run.section for run in edge.runs)
        told = f"it has {', '.join(islice(sections, 8))}" if sections else "leave over out"
        help_ = nearest(name.text, has) or told
        found.append(Finding("unknown-name", message, help_, name.span))
    if not strange and stretch_of(edge, [name.text for name in said.over]) is None:
        names = " and ".join(name.text for name in said.over)
        message = f'{names} are not one stretch of the edge "{edge.name}"'
        help_ = "write an [[attach]] for each of them"
        found.append(Finding("bad-value", message, help_, said.over[0].span))
    return found


def stretch_of(edge: Edge, names: Sequence[str]) -> tuple[int, int] | None:
    """The places [start, end) that carry some names, running on round a closed edge.

    None where they are not one stretch of the edge. No names are all of it.
    """
    if not names:
        return 0, edge.places
    runs = edge.runs
    carries = [bool(run.names.intersection(names)) for run in runs]
    if all(carries):
        return 0, edge.places
    begins = [
        i for i, yes in enumerate(carries) if yes and not (carries[i - 1] and _behind(edge, i))
    ]
    if len(begins) != 1:
        return None
    starts = [0, *accumulate(run.places for run in runs)]
    number = begins[0]
    end = start = starts[number]
    while carries[number % len(runs)] and end - start < edge.places:
        end += runs[number % len(runs)].places
        number += 1
        if number == len(runs) and not edge.closed:
            break
    return start, end


def _behind(edge: Edge, index: int) -> bool:
    """Whether a run has another before it."""
    return edge.closed or index > 0
