"""A project made to measure, for a needleworker: what more wheels change, and how many it takes."""

from __future__ import annotations

from collections.abc import Iterator

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from border.planning.telling import several
from border.reckoning.flat import Lies
from border.showing.folding import everything
from border.showing.layout import Rows
from border.showing.lengths import between, measure
from border.showing.sizing import EdgeSize, Sized, SizedAll
from border.showing.telling import harmless
from border.text.amounts import some


def sizing_tables(sizing: SizedAll) -> Group:
    """What was asked for: the ways to a measure, or what more wheels change."""
    return Group(*(_ways(sizing) if sizing.wanted_mm is not None else _changes(sizing)))


# --- to measure ------------------------------------------------------------------


def _ways(sizing: SizedAll) -> Iterator[RenderableType]:
    assert sizing.wanted_mm is not None
    now = _edge(sizing.now, sizing.edge)
    heading = Text(f"{harmless(now.edge)}, to measure {measure(sizing.wanted_mm)}", style="bold")
    told = f"\nit has {_size(now)} now, and measures {_long(now)} {_where(now)}"
    if now.lies is not Lies.FLAT:
        told += f", which {now.lies}:\nlet border flat mend that first, for the measure goes by it"
    yield heading.append(told, style="not bold")
    if not sizing.then:
        what = "wheels" if now.motifs else several(now.of)
        yield Text(f"no number of {what} more, or fewer, brings it nearer")
        return
    yield Text()
    yield Rows([(harmless(_more(s, now)), Text(harmless(_way(s, sizing)))) for s in sizing.then])


def _way(sized: Sized, sizing: SizedAll) -> str:
    """`18 wheels, 13 cm; its border closes; hem 40 cm`."""
    mine = _edge(sized, sizing.edge)
    told = [f"{_size(mine)}, {_long(mine)}"]
    told += [f"its border {_closing(mine)}"] if mine.closes is not None else []
    told += [f"{e.edge} {_long(e)}" for e in sized.edges if e != mine and _differs(e, sizing.now)]
    return "; ".join(told)


def _edge(sized: Sized, name: str | None) -> EdgeSize:
    return next(edge for edge in sized.edges if edge.edge == name)


def _differs(edge: EdgeSize, now: Sized) -> bool:
    return any(e.edge == edge.edge and e.places != edge.places for e in now.edges)


def _more(sized: Sized, now: EdgeSize) -> str:
    """`front and back: 7 more wheels each`."""
    names = [name for name, _ in sized.more]
    by = sized.more[0][1]
    number = some(abs(by), "wheel" if now.motifs else now.of)
    words = number.split(" ", 1)
    how = f"{words[0]} {'more' if by > 0 else 'fewer'} {words[1]}"
    return f"{' and '.join(names)}: {how}{' each' if len(names) > 1 else ''}"


def _size(edge: EdgeSize) -> str:
    return some(edge.motifs, "wheel") if edge.motifs else some(edge.places, edge.of)


def _long(edge: EdgeSize) -> str:
    return between(edge.length) if edge.length else "?"


def _where(edge: EdgeSize) -> str:
    """Along which line an edge is measured."""
    if edge.round:
        return f"along round {edge.round}"
    return "along its wheels" if edge.motifs else "along the edge"


def _closing(edge: EdgeSize) -> str:
    if edge.closes:
        return "closes"
    if edge.eased is None:
        return "does not close"
    return f"closes with {some(edge.eased, 'place')} eased in"


# --- more wheels --------------------------------------------------------------------


def _changes(sizing: SizedAll) -> Iterator[RenderableType]:
    (then,) = sizing.then
    told = ", ".join(f"{name} {by:+d}" for name, by in then.more)
    yield Text(harmless(f"{sizing.name}: {told}"), style="bold")
    if not then.goes_together:
        yield Text(harmless(f"it does not go together so: {then.faults[0]}"), style="red")
    changed = [e for e in then.edges if _differs(e, sizing.now)]
    if not changed and then.goes_together:
        yield Text("no edge changes")
    for edge in changed:
        before = _edge(sizing.now, edge.edge)
        yield Text()
        yield _changed(before, edge)
        if edge.rounds:
            yield _rounds(before, edge)


def _changed(before: EdgeSize, edge: EdgeSize) -> Text:
    text = Text(harmless(edge.edge), style="bold")
    told = f": {before.places} {several(edge.of)} become {edge.places}"
    told += f", {some(before.motifs, 'wheel')} {edge.motifs}" if edge.motifs else ""
    if before.length and edge.length:
        told += f"; {_long(before)} become {_long(edge)} {_where(edge)}"
    text.append(told, style="not bold")
    if edge.closes is not None:
        text.append(f"\nits border {_closing(edge)}", style="green" if edge.closes else "yellow")
    return text


def _rounds(before: EdgeSize, edge: EdgeSize) -> Table:
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 2), header_style="bold")
    table.add_column("round", justify="right", no_wrap=True)
    for name in ("now", "then", ""):
        table.add_column(name)
    old = {r.number: r for r in before.rounds}
    for count in edge.rounds:
        was = everything(old[count.number].made, edge.terms) if count.number in old else "-"
        closing = "" if count.closes else "does not close"
        table.add_row(str(count.number), was, everything(count.made, edge.terms), closing)
    return table
