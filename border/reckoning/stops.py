"""The way that the thread goes: edge by edge, round by round, motif by motif, as it is worked.

A stop is what is worked over one motif, on one joint, or, on an edge without motifs, over
one place. Thread is counted in loops (`drawn`), from the first round of the first edge on.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from msgspec import Struct

from border.reckoning.drawn import loops_drawn
from border.working.line import Line
from border.working.work import WorkedEdge, WorkedRound


class Stop(Struct, frozen=True):
    """A stretch of one round. `loops`: drawn in it; `before`: in all that is worked before it.

    `motif`: over which it lies, empty on a joint and on an edge without motifs; `joint`: the
    motifs before and behind it in the order of working; `place`: of an edge without motifs,
    from 1. `opens`: a round begins with it; `last`: of the last round of its edge. `seen`:
    how visible the spot is, 0 to 3.
    """

    edge: str
    round: int
    section: str
    motif: str
    joint: tuple[str, str] | None
    place: int | None
    of: str
    loops: int
    before: int
    seen: int
    opens: bool
    last: bool


class Way(Struct, frozen=True):
    """All stops in order. `total`: loops in all."""

    stops: tuple[Stop, ...]
    total: int

    def at(self, loops: float) -> Stop | None:
        """Where one is when so many loops are drawn; None beyond the end."""
        if loops >= self.total:
            return None
        return self.stops[bisect_right(self.stops, loops, key=lambda stop: stop.before) - 1]


def way_of(works: Sequence[tuple[WorkedEdge, Mapping[str, int]]]) -> Way:
    """The way through pieces of work, each with how visible the spots of its edge are
    (motifs, and joints `A | B`)."""
    stops: list[Stop] = []
    before = 0
    for worked, seen in works:
        for index, round_ in enumerate(worked.rounds):
            last = index == len(worked.rounds) - 1
            for stop in _stops(worked, round_, seen, before, last=last):
                stops.append(stop)
                before += stop.loops
    return Way(tuple(stops), before)


def _stops(
    worked: WorkedEdge, round_: WorkedRound, seen: Mapping[str, int], before: int, *, last: bool
) -> Iterator[Stop]:
    fabric, edge = round_.fabric, worked.edge
    drawn = loops_drawn(round_)
    spots = (_spot(fabric.line, position, fabric.tick) for position in fabric.pos)
    opens = True
    for (index, on_joint), group in groupby(zip(spots, drawn, strict=True), key=lambda at: at[0]):
        loops = sum(n for _, n in group)
        motif, section, joint, place = "", "", None, None
        if not fabric.line.stretches:
            place = fabric.line.length - index if fabric.line.flipped else index + 1
        elif on_joint:
            one, other = (stretch.run for stretch in fabric.line.joint_between(index))
            joint, section = (one.motif, other.motif), other.section
        else:
            run = fabric.line.stretches[index].run
            motif, section = run.motif, run.section
        yield Stop(
            *(edge.name, round_.number, section, motif, joint, place, edge.of, loops, before),
            seen=_seen(seen, motif, joint),
            opens=opens,
            last=last,
        )
        before += loops
        opens = False


def _spot(line: Line, position: int, tick: int) -> tuple[int, bool]:
    """The stretch that a position lies over and whether on the joint before it; else its place."""
    if line.stretches:
        return line.owner(position, tick)
    return position // tick % line.length, False


def _seen(seen: Mapping[str, int], motif: str, joint: tuple[str, str] | None) -> int:
    if joint is None:
        return seen.get(motif, 1)
    a, b = joint
    return seen.get(f"{a} | {b}", seen.get(f"{b} | {a}", 1))
