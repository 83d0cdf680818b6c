"""The stage of `thread`: what every edge takes, where the balls run out, and how far they go."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from border.findings import Finding, Span
from border.planning.spots import spots_of
from border.reckoning.balls import BallEnd, ball_ends
from border.reckoning.sparing import EdgeLoops, Sparing, spared
from border.reckoning.stops import Stop, Way, way_of
from border.reckoning.thread import ball_of
from border.showing.counted import Counted, Piece
from border.showing.thread_told import ThreadTold
from border.showing.thread_words import balls_unknown, join_seen
from border.wanted import Wanted
from border.yoke.project import Project


def unwound(
    counted: Counted,
    wanted: Sequence[Wanted],
    project: Project | None,
    balls: float | None,
    *,
    plan: bool,
) -> ThreadTold:
    """All that is to be told of the thread. `balls`: so many are there, if not as the project
    says; `plan`: whether it is asked how far they go."""
    thread = counted.thread
    way = _way(counted, wanted, project)
    ends = ball_ends(way, thread)
    findings = [*counted.findings, *_seen(ends, counted)]
    sparing = None
    if plan and counted.pieces:
        balls = balls or thread.balls
        sparing = _sparing(counted, way, balls)
        if sparing is None:
            span = project.thread.span if project and project.thread else None
            findings.append(balls_unknown(thread, balls, span))
    c = counted
    return ThreadTold(c.name, c.pieces, thread, ends, sparing, tuple(findings), c.sources)


def _way(counted: Counted, wanted: Sequence[Wanted], project: Project | None) -> Way:
    seen = project.seen if project else {}
    works = []
    # Of a file that cannot be read there are no pieces at all.
    for one, piece in zip((w for w in wanted if w.edge), counted.pieces, strict=False):
        if piece.worked is not None:
            mirror = [point.text for point in one.work.mirror] if one.work else []
            spots = spots_of(piece.edge, mirror, seen).spots
            works.append((piece.worked, {spot.at: spot.seen for spot in spots}))
    return way_of(works)


def _sparing(counted: Counted, way: Way, balls: float | None) -> Sparing | None:
    ball = ball_of(counted.thread)
    if ball is None or balls is None:
        return None
    edges = [_edge_loops(piece) for piece in counted.pieces]
    return spared(way, edges, counted.thread, ball, balls)


def _edge_loops(piece: Piece) -> EdgeLoops:
    done = sum(count.done for count in piece.rounds)
    return EdgeLoops(piece.edge.name, tuple(count.loops for count in piece.rounds), done)


def _seen(ends: Sequence[BallEnd], counted: Counted) -> Iterator[Finding]:
    """A warning for every join that would be seen."""
    for end in ends:
        if end.in_last_round or end.at_centre_front:
            assert end.about is not None
            yield join_seen(end, counted.thread, _row(end.about, counted))


def _row(stop: Stop, counted: Counted) -> Span | None:
    """The head of the row that a stop lies in."""
    for piece in counted.pieces:
        if piece.edge.name == stop.edge and piece.reading:
            return next((r.head for r in piece.reading.rounds if r.number == stop.round), None)
    return None
