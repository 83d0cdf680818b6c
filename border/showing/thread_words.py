"""Thread in words: where a ball runs out, and what is told of a join that would be seen."""

from __future__ import annotations

from collections.abc import Sequence

from border.findings import Finding, Span
from border.reckoning.balls import BallEnd
from border.reckoning.sparing import Enough, LeftOut
from border.reckoning.stops import Stop
from border.reckoning.thread import Thread, ball_named
from border.showing.folding import length
from border.text.amounts import some

ENOUGH = {
    Enough.SURELY: "enough, even by the upper figure with waste",
    Enough.LIKELY: "enough by the middle figure with waste, but not for certain",
    Enough.PERHAPS: "hardly: enough only if every loop is short and nothing is wasted",
    Enough.NO: "not enough",
}


def where(stop: Stop) -> str:
    """`round 3 of hem, over front.2`, `…, on the joint A | B`, `…, over loop 37`."""
    return f"round {stop.round} of {stop.edge}, {spot(stop)}"


def spot(stop: Stop) -> str:
    """The spot within its round."""
    if stop.joint:
        return f"on the joint {' | '.join(stop.joint)}"
    return f"over {stop.motif}" if stop.motif else f"over {stop.of} {stop.place}"


def joined_at(stop: Stop) -> str:
    """A join at the beginning of a stop."""
    if stop.opens:
        return f"where round {stop.round} of {stop.edge} begins"
    place = "on" if stop.joint else "before it goes"
    return f"in round {stop.round} of {stop.edge}, {place} {spot(stop).removeprefix('on ')}"


def loop_length(mm: float) -> str:
    """The length of a loop, to the two digits that are known of it."""
    if mm < 0.995:
        return f"{mm:.2f} mm"
    return f"{mm:.1f} mm" if mm < 9.95 else f"{mm:.0f} mm"


def apart(share: float) -> str:
    """By how much a swatch is off the mean: `0.4 % above the mean`."""
    percent = abs(share) * 100
    shown = f"{percent:.0f} %" if percent >= 9.95 else f"{percent:.1f} %"
    return (
        f"{shown} {'above' if share > 0 else 'below'} the mean" if percent >= 0.05 else "the mean"
    )


def left_out(way: LeftOut) -> str:
    """`the last 2 rounds of hem`, `all of left armhole and right armhole`."""
    edges = listed(way.edges)
    if way.whole:
        return f"all of {edges}"
    which = "the last round" if way.rounds == 1 else f"the last {way.rounds} rounds"
    return f"{which} of {edges}" if len(way.edges) == 1 else f"{which} each of {edges}"


def listed(names: Sequence[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


def join_seen(end: BallEnd, thread: Thread, span: Span | None) -> Finding:
    """The warning that a join would be seen, and where it had better be."""
    assert end.about is not None
    why = [*(["in the last round"] if end.in_last_round else [])]
    why += ["in the middle of the front"] if end.at_centre_front else []
    message = (
        f"ball {end.ball} runs out, by the middle figure, in {where(end.about)}: {listed(why)}"
    )
    if end.better is None:
        help_ = (
            "within half a ball before it no place is better: join as flat as you can, and darn "
            "the ends in well"
        )
    else:
        over = length(end.left_loops * thread.gauge.loop_mm)
        help_ = f"join ball {end.ball + 1} {joined_at(end.better)}; about {over} stay over"
    return Finding("join-seen", message, help_, span, end.about.round)


def balls_unknown(thread: Thread, balls: float | None, span: Span | None) -> Finding:
    """The error that there is no telling how far the balls go."""
    missing, lines = [], []
    if balls is None:
        missing.append("how many balls there are")
        lines.append("balls = 2 (or --balls 2)")
    if not ball_named(thread):
        missing.append("how much is in one")
        lines.append("ball_g = 20 or ball_m = 220")
    message = f"it is not said {listed(missing)}, so there is no telling how far they go"
    where_to = "under [thread]" if span else "in a project, under [thread],"
    return Finding("balls-unknown", message, f"write {where_to} {listed(lines)}", span)


def balls_of(thread: Thread, balls: float) -> str:
    """`2 balls of 20 g`."""
    many = some(int(balls), "ball") if balls == int(balls) else f"{balls:g} balls"
    return f"{many} of {ball_named(thread)}"
