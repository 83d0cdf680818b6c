"""Thread for a needleworker: by edge and round, in balls, and what to do where they are few."""

from __future__ import annotations

from collections.abc import Iterator

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from border.reckoning.balls import BallEnd
from border.reckoning.sparing import Enough
from border.reckoning.thread import (
    Thread,
    ThreadUse,
    ball_named,
    ball_of,
    described,
    thread_used,
    trusted,
)
from border.showing.folding import length, told_apart, weight
from border.showing.layout import Rows
from border.showing.telling import harmless
from border.showing.thread_told import ThreadTold
from border.showing.thread_words import (
    ENOUGH,
    apart,
    balls_of,
    joined_at,
    left_out,
    loop_length,
    where,
)
from border.stitches import CHAIN_LOOPS
from border.text.amounts import some

MOST = 40
"""Balls whose end is shown."""


def thread_tables(told: ThreadTold) -> Group:
    """All of it, in order: the thread, the edges, the balls, and how far they go."""
    parts: list[RenderableType] = [Text(f"{harmless(told.name)}: thread\n", style="bold")]
    parts += [_facts(told.thread), _edges(told), Text()]
    parts += [Text(harmless(line)) for line in _in_all(told)]
    if told.ends:
        parts += [Text("\nwhere the balls run out", style="bold"), Rows(list(_balls(told)))]
    if told.sparing:
        heading = ("" if told.ends else "\n") + f"with {balls_of(told.thread, told.sparing.balls)}"
        parts += [Text(heading, style="bold"), Rows(list(_sparing(told)))]
    return Group(*parts)


def _facts(thread: Thread) -> Rows:
    gauge, fine = thread.gauge, thread.fineness
    tex = f"; {fine.tex:.3g} tex" if fine.exact else f"; {fine.low:g} to {fine.high:g} tex"
    tex = tex if thread.size else ""  # else it is what the thread is called by
    by_maker = "" if fine.exact else ", as makers differ"
    between = f"between {loop_length(gauge.least_mm)} and {loop_length(gauge.most_mm)}"
    rows = [
        ("thread", f"{described(thread)}{tex}{by_maker}"),
        ("one loop", f"{loop_length(gauge.loop_mm)}, {between}"),
        ("", trusted(gauge)),
    ]
    for number, swatch in enumerate(gauge.swatches):
        of_mean = f", {apart(gauge.apart(swatch))}" if len(gauge.swatches) > 1 else ""
        said = f"{swatch.stitches} {swatch.stitch} took {swatch.used_mm:g} mm"
        rows.append(
            (
                "" if number else "swatches",
                f"{said}: a loop of {loop_length(swatch.loop_mm)}{of_mean}",
            )
        )
    if ball := ball_of(thread):
        about = "" if thread.ball_m else f", about {length(ball.mm)}"
        band = ball.low_mm != ball.high_mm
        about += f", between {length(ball.low_mm)} and {length(ball.high_mm)}" if band else ""
        rows.append(("one ball", f"{ball_named(thread)}{about}"))
    else:
        told = "not stated (ball_g or ball_m under [thread]), so where it runs out is not reckoned"
        rows.append(("one ball", told))
    return Rows([(label, Text(harmless(text))) for label, text in rows])


def _edges(told: ThreadTold) -> Table:
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    table.add_column("edge")
    table.add_column("round", justify="right", no_wrap=True)
    for name in ("thread", "at least", "at most"):
        table.add_column(name, justify="right", no_wrap=True)
    for piece in told.pieces:
        for number, count in enumerate(piece.rounds):
            name = "" if number else harmless(piece.edge.name)
            used = thread_used([count.loops], told.thread)
            table.add_row(Text(name), str(count.number), *_figures(used))
        if piece.rounds:
            table.add_row("", "all", *_figures(told.used_by(piece)), style="bold")
    if len(told.pieces) > 1:
        table.add_row("all edges", "", *_figures(told.used), style="bold")
    return table


def _figures(used: ThreadUse) -> tuple[str, str, str]:
    return told_apart(length, used.mm, used.low_mm, used.high_mm)


def _in_all(told: ThreadTold) -> Iterator[str]:
    used, thread = told.used, told.thread
    grams, low, high = told_apart(weight, used.grams, used.low_grams, used.high_grams)
    yield f"in all about {_figures(used)[0]}, {grams}, between {low} and {high}"
    yield "in these rounds alone, start chains and joins with them: no motifs, tails or swatch"
    for piece in told.pieces:
        if piece.edge.of == "chain":
            chain = length(piece.edge.places * CHAIN_LOOPS * thread.gauge.loop_mm)
            yield f"the chain that {piece.edge.name} is worked on takes about {chain} besides"
    waste = length(used.high_mm * (1 + thread.waste))
    upper = f"with {thread.waste * 100:.0f} % for waste at most {waste}"
    if used.balls is None:
        yield upper
    else:
        yield f"{upper}: have in hand {some(used.balls, 'ball')} of {ball_named(thread)}"


def _balls(told: ThreadTold) -> Iterator[tuple[str, Text]]:
    for end in told.ends[:MOST]:
        for number, line in enumerate(_end(end, told.thread)):
            yield "" if number else f"ball {end.ball}", Text(harmless(line))
    if len(told.ends) > MOST:
        yield "", Text(f"... and {len(told.ends) - MOST} more, all of them with --json")


def _end(end: BallEnd, thread: Thread) -> Iterator[str]:
    yield f"about {where(end.about)}" if end.about else "lasts, by the middle figure"
    latest = f"at the latest {where(end.latest)}" if end.latest else "it may last to the end"
    yield f"at the earliest {where(end.earliest)}; {latest}"
    if end.better:
        over = length(end.left_loops * thread.gauge.loop_mm)
        yield f"better join the next {joined_at(end.better)}, with about {over} left over"


def _sparing(told: ThreadTold) -> Iterator[tuple[str, Text]]:
    sparing, thread = told.sparing, told.thread
    assert sparing is not None
    yield "enough?", Text(ENOUGH[sparing.enough])
    if not thread.gauge.calibrated and sparing.enough is not Enough.SURELY:
        yield "", Text("a swatch of your own would tell much better (sample, under [thread])")
    for label, stop in zip(
        ("for certain up to", "about up to", "at most up to"), sparing.reach, strict=True
    ):
        yield label, Text(harmless(where(stop)) if stop else "the end")
    for number, way in enumerate(sparing.ways):
        saved, over = (length(n * thread.gauge.loop_mm) for n in (way.loops, way.over))
        line = f"{left_out(way)}: saves about {saved}, and {over} are certain to stay over"
        yield "" if number else "leave out", Text(harmless(line))
    if sparing.enough is not Enough.SURELY and not sparing.ways:
        yield "leave out", Text("nothing that can be left out makes them last for certain")
