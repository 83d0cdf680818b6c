"""The pictures in the sheet: the yoke once, and of every edge the charts that help at the hook.

An edge has a chart of one repeat and its neighbours; one round a corner of wheels, where
the first motif lies that is unlike both of its neighbours; and one of each motif over
which something is eased in. What another of them shows is not drawn again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from border.reckoning.running import course
from border.showing.blocks import Block, stacked
from border.showing.chart import chart_block
from border.showing.chart_laid import Charted, window_of
from border.showing.counted import Counted, Piece
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


def sheet_pictures(counted: Counted, project: Project | None, edges: Sequence[Edge]) -> Pictures:
    """The pictures of all that was counted."""
    left = project is not None and project.hand == "left"
    yoke = _yoke(project, edges) if project else None
    return Pictures(yoke, tuple(tuple(_charts(piece, left)) for piece in counted.pieces))


def _yoke(project: Project, edges: Sequence[Edge]) -> Picture:
    shown = "The yoke as it is joined" if project.yoke else "Every edge by itself"
    caption = f"{shown}: arrows go the way of working, from the disc with the number"
    return _picture(caption, yoke_blocks(project, edges), "border yoke --svg")


def _charts(piece: Piece, left: bool) -> Iterator[Picture]:
    if piece.worked is None or not piece.worked.rounds:
        yield Picture("Chart", lacking="there is none, since no round could be worked")
        return
    wanted = [
        (caption, Charted("", piece.worked, piece.terms, motif, left))
        for caption, motif in _wanted(piece)
    ]
    for caption, charted in _apart(wanted, piece.edge.places):
        yield _picture(caption, [chart_block(charted)], "border chart")


def _wanted(piece: Piece) -> Iterator[tuple[str, str | None]]:
    """What would be charted: in words, and about which motif."""
    yield "One repeat and its neighbours", None
    corner = _corner(piece.edge)
    if corner is not None:
        yield f"Round a corner, at {corner}", corner
    eased = [motif for motif in _eased(piece) if motif != corner]
    for motif in eased[:MOST_EASED]:
        yield f"Where something is eased in, over {motif}", motif


def _apart(wanted: Sequence[tuple[str, Charted]], length: int) -> list[tuple[str, Charted]]:
    """Those of which no other shows all."""
    windows = [window_of(charted) for _, charted in wanted]
    kept: list[int] = []
    for n in sorted(range(len(windows)), key=lambda n: windows[n].start - windows[n].end):
        if not any(windows[n].within(windows[longer], length) for longer in kept):
            kept.append(n)
    return [wanted[n] for n in sorted(kept)]


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
        return Picture(caption, lacking=f"too large for this page; {command} draws it by itself")
    return Picture(caption, drawn)
