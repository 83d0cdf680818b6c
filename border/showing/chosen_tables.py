"""Which border closes on which edge, for a needleworker: a table of borders and edges."""

from __future__ import annotations

from itertools import groupby

from msgspec.structs import replace
from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from border.planning.telling import in_words
from border.showing.chosen import Choice, Fit
from border.showing.layout import Rows
from border.showing.telling import harmless
from border.text.amounts import in_terms, some


def chosen_tables(choice: Choice) -> RenderableType:
    """The borders, each with how it fits the edges; without edges, with what it needs."""
    if not choice.edges:
        heading = Text("what each border needs", style="bold")
        return Group(heading, Text(), Rows([(_title(f), Text(_needs(f))) for f in choice.fits]))
    heading = Text(f"which border closes on which edge{_of(choice)}", style="bold")
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    table.add_column("border")
    for edge in choice.edges:
        table.add_column(f"{harmless(edge.name)}, {some(edge.places, edge.of)}")
    for _, fits in groupby(choice.fits, key=lambda fit: fit.border):
        row = list(fits)
        table.add_row(Text(_title(row[0])), *(_fits(fit) for fit in row))
    parts: list[RenderableType] = [heading, Text(), table]
    if any(fit.places for fit in choice.fits):
        parts.append(Text("\na number of places: so many are to be eased in (border adjust)"))
    return Group(*parts)


def _of(choice: Choice) -> str:
    return f" of {harmless(choice.name)}" if choice.name else ""


def _title(fit: Fit) -> str:
    return harmless(fit.title or fit.border)


def _needs(fit: Fit) -> str:
    if fit.needs is None:
        return "cannot be read"
    return in_words(replace(fit.needs, of=in_terms(fit.needs.of, fit.terms)))


def _fits(fit: Fit) -> Text:
    if not fit.readable:
        return Text("cannot be read", style="red")
    if fit.places is None:
        return Text("does not", style="red")
    return Text(some(fit.places, "place")) if fit.places else Text("closes", style="green")
