"""Edges sewn to cloth: which stretch of an edge is meant, and what is wrong with what is said."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import accumulate, islice
from typing import TYPE_CHECKING

from border.findings import Finding
from border.yoke.names import nearest
from border.yoke.project import Attachment, Project

if TYPE_CHECKING:
    from border.yoke.edges import Edge


def attach_faults(project: Project, edges: Sequence[Edge]) -> list[Finding]:
    """`no-such-edge`, `unknown-name` and `bad-value` for what cannot be sewn as it is said, and
    `sewn-twice` for what is sewn down once already."""
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
    return [*found, *_twice(project.attachments, by_name)]


def _twice(attachments: Sequence[Attachment], edges: Mapping[str, Edge]) -> Iterator[Finding]:
    """What lies over places that an attachment before it has sewn down."""
    for number, said in enumerate(attachments):
        edge = edges.get(said.edge)
        for before in attachments[:number] if edge else ():
            if edge and before.edge == said.edge and (shared := _shared(edge, before, said)):
                where = f" over {' and '.join(shared)}" if edge.runs else ""
                message = f"the {edge.name} is sewn down already{where}"
                help_ = "name each part of an edge in one [[attach]] alone, unless two rounds of "
                help_ += "it are sewn, each to a cloth of its own"
                span = said.over[0].span if said.over else said.edge_span
                yield Finding("sewn-twice", message, help_, span)
                break


def _shared(edge: Edge, one: Attachment, other: Attachment) -> list[str]:
    """The sections that both lie over; of an edge without motifs its own name."""
    stretches = [stretch_of(edge, [name.text for name in a.over]) for a in (one, other)]
    if None in stretches:
        return []  # it is told what is wrong with it
    starts = accumulate((run.places for run in edge.runs), initial=0)
    runs = [(start, run.section) for start, run in zip(starts, edge.runs, strict=False)]
    return list(
        dict.fromkeys(
            section
            for place, section in runs or [(0, edge.name)]
            if all(s and (place - s[0]) % edge.places < s[1] - s[0] for s in stretches)
        )
    )


def as_worked(edge: Edge, names: Sequence[str], start: int) -> tuple[str, ...]:
    """The names of a stretch that begins at a place, in the order in which they are come to."""
    first: dict[str, int] = {}
    place = 0
    for run in edge.runs:
        for name in run.names.intersection(names):
            far = (place - start) % edge.places
            first[name] = min(first.get(name, far), far)
        place += run.places
    return tuple(sorted(names, key=lambda name: first.get(name, 0)))


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
