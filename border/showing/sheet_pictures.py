"""The pictures in the sheet: the yoke once, and of every edge the charts that help at the hook.

An edge has a chart of one repeat and its neighbours; one round a corner of wheels, where
the first motif lies that is unlike both of its neighbours; and one of each motif over
which something is eased in. None of these is drawn twice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from border.reckoning.running import course
from border.showing.blocks import Block, stacked
from border.showing.chart import chart_block
from border.showing.chart_laid import Charted
from border.showing.counted import Counted, Piece
from border.showing.folding import some
from border.showing.yoke_picture import yoke_blocks
from border.yoke.edges import Edge
from border.yoke.project import Project

LARGEST = 400_000
"""Characters of a picture: a larger one is left out, so that a phone can still open the page."""
MOST_EASED = 3
"""Charts of motifs over which something is eased in."""


class Picture(Struct, frozen=True):
    """A picture as SVG, and what it shows. `lacking`: in its place, why there is none."""

    caption: str
    drawn: str = ""
    lacking: str = ""


class Pictures(Struct, frozen=True):
    """`yoke`: None where there is no project, and so no yoke. `edges`: for each piece of work."""

    yoke: Picture | None
    edges: tuple[tuple[Picture, ...], ...]


def sheet_pictures(
    counted: Counted, project: Project | None, edges: Sequence[Edge], file: str
) -> Pictures:
    """The pictures of all that was counted. `file`: as it is named in a command."""
    left = project is not None and project.hand == "left"
    yoke = _yoke(project, edges, file) if project else None
    return Pictures(yoke, tuple(tuple(_charts(p, left, file)) for p in counted.pieces))


def _yoke(project: Project, edges: Sequence[Edge], file: str) -> Picture:
    caption = f"The yoke, and its {some(len(edges), 'edge')} with an arrow the way each is worked"
    return _picture(caption, yoke_blocks(project, edges), f"border yoke {file} --svg")


def _charts(piece: Piece, left: bool, file: str) -> Iterator[Picture]:
    if piece.worked is None or not piece.worked.rounds:
        yield Picture("Chart", lacking="there is no chart, since no round could be worked")
        return
    command = f"border chart {file}"
    if piece.edge.name != "edge":
        command += f' --work "{piece.edge.name}"'
    for caption, motif in _wanted(piece):
        charted = Charted("", piece.worked, piece.terms, motif, left)
        on = f'{command} --section "{motif}"' if motif else command
        yield _picture(caption, [chart_block(charted)], on)


def _wanted(piece: Piece) -> Iterator[tuple[str, str | None]]:
    """What is charted: in words, and about which motif."""
    yield "Chart: one repeat and its neighbours", None
    corner = _corner(piece.edge)
    if corner is not None:
        yield f"Chart: round a corner, at {corner}", corner
    eased = [motif for motif in _eased(piece) if motif != corner]
    for motif in eased[:MOST_EASED]:
        yield f"Chart: where something is eased in, over {motif}", motif


def _corner(edge: Edge) -> str | None:
    """The first motif with another number of places than the one before and the one behind it."""
    runs = edge.runs if len(edge.runs) > 2 else ()
    before = (*runs[-1:], *runs[:-1])
    behind = (*runs[1:], *runs[:1])
    beside = list(zip(before, runs, behind, strict=True))
    for a, run, b in beside if edge.closed else beside[1:-1]:
        if a.places != run.places != b.places:
            return run.motif
    return None


def _eased(piece: Piece) -> list[str]:
    """The motifs over which something is eased in, in the order of the rounds."""
    assert piece.worked is not None
    over = [
        stage.motif
        for count, worked in zip(piece.rounds, piece.worked.rounds, strict=False)
        if count.adjustments
        for stage in course(worked).stages
        if stage.eased and stage.motif
    ]
    return list(dict.fromkeys(over))


def _picture(caption: str, blocks: Sequence[Block], command: str) -> Picture:
    drawn = stacked(caption, blocks, alone=False)
    if len(drawn) > LARGEST:
        return Picture(caption, lacking=f"too large for this page; drawn by itself by {command}")
    return Picture(caption, drawn)
