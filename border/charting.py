"""The stage of `chart`: the pieces of work, each worked into its edge, to be drawn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from border.showing.chart_laid import Charted
from border.showing.counted import Piece


def charted(
    pieces: Sequence[Piece], section: str | None, terms: str | None, *, left: bool, titled: bool
) -> Iterator[Charted]:
    """What is to be drawn. `titled`: each chart has the names of its border and edge over it.

    `section`: the part of the edge that is wanted; of a piece of work that has no such
    part nothing is drawn.
    """
    for piece in pieces:
        if piece.worked is None or not piece.worked.rounds:
            continue
        if section is not None and not any(section in run.names for run in piece.edge.runs):
            continue
        title = f"{piece.title or piece.border}, {piece.edge.name}" if titled else ""
        named = piece.edge.name, piece.border
        yield Charted(title, piece.worked, terms or piece.terms, section, left, *named)
