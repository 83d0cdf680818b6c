"""Where each ball runs out, and where its end had better be joined to the next.

By the middle figure a ball lasts for its length less its share of waste; the earliest that
it may run out is by the longest loops and the shortest ball, with waste, the latest by the
shortest loops and the longest ball, without. A join is not wanted in the last round, nor
in the middle of the front; it can be made earlier than the ball runs out, never later, and
not so early that more than half of the ball would stay over.
"""

from __future__ import annotations

from bisect import bisect_left

from msgspec import Struct

from border.reckoning.stops import Stop, Way
from border.reckoning.thread import Ball, Thread, ball_of

MOST_BALLS = 200
"""So many balls are followed; a project of more is told of these."""

CENTRE_FRONT = 3
"""How visible the middle of the front is (`planning.spots`)."""

WELL_HIDDEN = 1
"""Spots no more visible than this are looked for first: straps, underarms, the back."""


class Lasts(Struct, frozen=True):
    """How many loops some thread lasts for: for certain, by the middle figure, at the most."""

    surely: float
    about: float
    at_most: float


class BallEnd(Struct, frozen=True):
    """Where a ball (1 the first) may run out. None: the work is done before that.

    `better`: the nearest place before it where the join is less seen, of a ball that runs
    out in the last round or in the middle of the front; `left_loops`: what of it stays over
    then.
    """

    ball: int
    earliest: Stop
    about: Stop | None
    latest: Stop | None
    better: Stop | None = None
    left_loops: float = 0

    @property
    def in_last_round(self) -> bool:
        return self.about is not None and self.about.last

    @property
    def at_centre_front(self) -> bool:
        return self.about is not None and self.about.seen == CENTRE_FRONT


def lasts(thread: Thread, ball: Ball, balls: float) -> Lasts:
    """How many loops so many balls last for."""
    gauge, waste = thread.gauge, 1 + thread.waste
    at_most = ball.high_mm / gauge.least_mm if gauge.least_mm else float("inf")
    surely = ball.low_mm / (gauge.most_mm * waste)
    return Lasts(balls * surely, balls * ball.mm / (gauge.loop_mm * waste), balls * at_most)


def ball_ends(way: Way, thread: Thread) -> tuple[BallEnd, ...]:
    """The end of every ball that may run out before the work is done; none where no ball is
    stated."""
    ball = ball_of(thread)
    found: list[BallEnd] = []
    begun = 0.0
    for number in range(1, MOST_BALLS + 1 if ball else 1):
        assert ball is not None
        loops = lasts(thread, ball, number)
        earliest, about = way.at(loops.surely), way.at(loops.about)
        if earliest is None:
            break
        end = BallEnd(number, earliest, about, way.at(loops.at_most))
        better = _better(way, about, (begun + loops.about) / 2) if about else None
        if better:
            end = BallEnd(
                *(number, earliest, about, end.latest), better, loops.about - better.before
            )
        found.append(end)
        begun = loops.about
    return tuple(found)


def _better(way: Way, where: Stop, earliest: float) -> Stop | None:
    """The nearest stop before one at whose beginning a join is less seen; none so early that
    fewer loops than `earliest` are drawn before it."""
    if not any(_badness(where)[:2]):
        return None
    first = bisect_left(way.stops, earliest, key=lambda stop: stop.before)
    last = bisect_left(way.stops, where.before, key=lambda stop: stop.before)
    before = way.stops[first : last + 1]
    best = min(before, key=lambda stop: (_badness(stop, whole=True), -stop.before), default=where)
    return best if _badness(best, whole=True) < _badness(where) else None


def _badness(stop: Stop, *, whole: bool = False) -> tuple[bool, bool, bool]:
    """What speaks against a join there, the worst first: the last round, the middle of the
    front, that it is seen.

    `whole`: the join is made at the beginning of the stop, so that where a round opens
    with it none falls into the round.
    """
    begins_round = whole and stop.opens
    centre = stop.seen == CENTRE_FRONT
    return stop.last and not begins_round, centre, stop.seen > WELL_HIDDEN and not begins_round
