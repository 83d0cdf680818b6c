"""The yoke as tables: the loops of every motif, the joints, and the edges in working order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich.console import Group, RenderableType
from rich.text import Text

from border.showing.folding import called, edge_in_words, series
from border.showing.layout import Rows
from border.showing.telling import harmless
from border.text.amounts import some
from border.yoke.edges import Edge, Run
from border.yoke.joints import Joint
from border.yoke.report import RingItem, RingReport, YokeReport

NEXT, BEFORE = "the next", "the one before"


def yoke_tables(title: str, yoke: YokeReport) -> Group:
    """The whole yoke, under its name."""
    parts: list[RenderableType] = [_heading(title, yoke), Text()]
    if yoke.rings:
        parts += _part(f"{yoke.of}s round each motif", _rings(yoke))
        parts += _part("joints", _joints(yoke))
    for edge in yoke.edges:
        parts += _part(harmless(f"{edge.name}: {edge_in_words(edge)}"), _runs(edge))
    return Group(*parts)


def _part(head: str, rows: Iterator[tuple[str, str, str]]) -> list[RenderableType]:
    """A heading and its rows of who, what, and what is wrong with it."""
    told = []
    for who, what, wrong in rows:
        text = Text(harmless(what))
        if wrong:
            text.append(f"  {wrong}", style="red")
        told.append((harmless(who), text))
    return [Text(head, style="bold"), Rows(told)]


def _heading(title: str, yoke: YokeReport) -> Text:
    text = Text(harmless(title), style="bold")
    if not yoke.rings:
        return text.append("\nno motifs: its edges are written straight down", style="not bold")
    loops = f" of {some(yoke.loops, yoke.of)} each" if yoke.loops else ""
    told = f"{some(yoke.motifs, 'motif')}{loops}, {some(yoke.joints, 'joint')}"
    text.append(f"\n{told}, {some(len(yoke.edges), 'edge')}", style="not bold")
    if yoke.goes_together:
        text.append("\nit goes together and lies flat", style="not bold green")
    else:
        text.append("\nit does not go together as written", style="red")
    return text


def _rings(yoke: YokeReport) -> Iterator[tuple[str, str, str]]:
    """Every ring with its sum, equal neighbours folded."""
    for group in series(yoke.rings, lambda r: (r.section, r.adds_up, _as_seen(r))):
        first = group[0]
        shown = first.shown if len(group) == 1 else _sum(first)
        wrong = "" if first.adds_up else f"should be {yoke.loops}"
        yield called(group, yoke.rings), shown, wrong


def _as_seen(ring: RingReport) -> tuple[tuple[str, int, bool], ...]:
    """A ring with the joints to its neighbours of the strip named by where they are."""
    return tuple((_as_neighbour(ring, i), i.number, i.is_joint) for i in ring.items)


def _as_neighbour(ring: RingReport, item: RingItem) -> str:
    if item.is_joint:
        number = ring.motif.rpartition(".")[2]
        if number.isdecimal():
            for step, name in ((1, NEXT), (-1, BEFORE)):
                if item.name == f"{ring.section}.{int(number) + step}":
                    return name
    return item.name


def _sum(ring: RingReport) -> str:
    told = [
        f"join {name} {number}" if joint else f"{name} {number}"
        for name, number, joint in _as_seen(ring)
    ]
    return f"{' + '.join(told)} = {ring.loops}"


def _joints(yoke: YokeReport) -> Iterator[tuple[str, str, str]]:
    """The joints, those along a strip folded."""
    sections = {ring.motif: ring.section for ring in yoke.rings}
    order = {ring.motif: n for n, ring in enumerate(yoke.rings)}

    def along(joint: Joint) -> tuple[str, tuple[int, int]] | tuple[str, str]:
        a, b = joint.between
        if sections[a] == sections[b] and abs(order[a] - order[b]) == 1:
            return sections[a], joint.loops
        return joint.between

    inside: dict[object, list[Joint]] = {}
    for joint in yoke.joined:
        inside.setdefault(along(joint), []).append(joint)
    for joints in inside.values():
        taken = _taken(joints[0], yoke.of)
        if len(joints) == 1:
            yield " | ".join(joints[0].between), taken, ""
        else:
            section = sections[joints[0].between[0]]
            yield f"{section}, {len(joints)} joints", f"each to the next, {taken}", ""


def _taken(joint: Joint, of: str) -> str:
    a, b = joint.loops
    return f"{some(a, of)} of each" if a == b else f"{some(a, of)} and {some(b, of)}"


def _runs(edge: Edge) -> Iterator[tuple[str, str, str]]:
    """The runs of an edge in working order, equal neighbours folded."""
    for group in series(edge.runs, lambda r: (r.section, r.free, r.places)):
        yield called(group, edge.runs), _run(group, edge.of), ""
    if not edge.runs:
        yield "plain places", some(edge.places, edge.of), ""


def _run(group: Sequence[Run], of: str) -> str:
    run = group[0]
    each = " each" if len(group) > 1 else ""
    if run.places == run.free:
        return f"{some(run.places, of)}{each}"
    return f"{some(run.free, of)} free, {run.places} with the seam {of}s{each}"
