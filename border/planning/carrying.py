"""What one row needs, and carried down through the rows before it, what it asks of the edge.

A row is worked a few times, on edges on which all the rows before it close. From
that come three numbers: the sites that one repeat takes (M), those that it needs
beside whole repeats (A), and by how many the row below grows from one such edge to
the next (m). On the t-th edge the row has m·t + a sites, and closes when that is a
multiple of M plus A: the remainders of t follow, and each is proved by working it.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from math import gcd, lcm

from msgspec import Struct
from msgspec.structs import replace

from border.planning.rules import Rule, foretells, growers, made_again, rule_of, widened
from border.planning.series import Series, solved
from border.planning.trials import Bench, TooMany, Trial

IN_STRIDE = 3
"""Repeats made before a row is taken to go on as it has begun."""
LARGEST, FARTHEST = 2048, 256
"""A row is looked for in its stride up to so many places, or so many members of a series."""
AT_REST = 4
MOST_TRIED = 500
"""Sizes that are tried one by one, where what a row needs cannot be told from one of them."""


class Carried(Struct, frozen=True):
    """What a row needs of its own kind, and the edges on which it closes with those before it.

    `uneven`: it does not go on evenly, so that nothing can be said for sure.
    """

    rule: Rule
    ways: tuple[Series, ...] = ()
    uneven: bool = False


def carried(bench: Bench, way: Series, r: int) -> Carried:
    """The round of index r (one text) on the edges of `way`, on which all before it close.

    Raises TooMany.
    """
    if way.step == 0:
        there = bench.trial(way.first, r)
        rule = rule_of([there], made_again(there)) if there else Rule("")
        return Carried(rule, (way,) if bench.close(way.first, r) else ())
    t, in_stride = _in_stride(bench, way, r)
    for last in (False, False, True):
        done = _carried_from(bench, way, r, t, in_stride)
        if last or not in_stride or (done.ways and not done.uneven):
            break
        t *= 2  # it may only be too near the beginning to go on evenly, or to close
    return done


def _carried_from(bench: Bench, way: Series, r: int, t: int, in_stride: bool) -> Carried:
    spots = (t, t + 1, t + _far(bench.trial(way.at(t), r), bench.trial(way.at(t + 1), r)))
    found = [bench.trial(way.at(n), r) for n in spots]
    trials = [trial for trial in found if trial is not None]
    if len(trials) < len(found):
        return Carried(Rule(""), uneven=True)  # it grows too large
    rule = rule_of(trials)
    growing = growers(trials)
    if not growing:
        done = _fixed(bench, way, r, spots, trials)
        more = len({(s.offered, *(each.offered for each in s.repeats)) for s in trials}) > 1
        return replace(done, uneven=True) if more and not (done.ways or in_stride) else done
    if rule.plus is None:
        rule = rule_of([*trials, *_cut_short(bench, way.at(t), r)], growing)
    return _grown(bench, way, r, spots, trials, growing, rule)


def _in_stride(bench: Bench, way: Series, r: int) -> tuple[int, bool]:
    """How far along its series a row goes on as it has begun; `AT_REST`, False: nowhere."""
    t = 1
    while t <= FARTHEST or way.at(t) <= LARGEST:
        trial = bench.trial(way.at(t), r)
        if trial and any(repeat.times >= IN_STRIDE for repeat in trial.repeats):
            return t, True
        if trial and trial.sure and not trial.repeats:
            return t, True
        t *= 2
    return AT_REST, False


def _far(near: Trial | None, next_: Trial | None) -> int:
    """How many edges on every repeat is made once more, where there is more for it."""
    far = 2
    if near and next_:
        for a, b in zip(near.repeats, next_.repeats, strict=True):
            if (more := b.offered - a.offered) > 0:
                far = max(far, -(-b.takes // more))
    return far


def _cut_short(bench: Bench, n: int, r: int) -> Iterator[Trial]:
    """The round on a row below that ends sooner and sooner, until nothing in it runs out.

    What it needs shows so even where the rounds before never offer it.
    """
    for cut in range(1, MOST_TRIED):
        if (trial := bench.trial(n, r, cut)) is None:
            return
        yield trial
        if trial.sure:
            return


# --- the edges on which it closes ---------------------------------------------


def _fixed(
    bench: Bench, way: Series, r: int, spots: tuple[int, int, int], trials: Sequence[Trial]
) -> Carried:
    """A row without a growing repeat: it closes on any number, on one, or on none."""
    near = trials[0]
    rule = rule_of(trials)
    if all(bench.close(way.at(n), r) for n in spots):
        return Carried(replace(rule, multiple=1, plus=0), (Series(way.step, way.at(spots[0])),))
    if any(trial.closes for trial in trials):
        return Carried(rule, uneven=True)
    if near.repeats or not near.sure:
        return Carried(rule)
    if near.beyond:
        rule = replace(rule, exactly=near.offered - near.beyond)
    # on fewer than the fewest something runs out, on more something is left
    fewest = bisect_left(range(spots[0]), True, key=lambda n: _is_sure(bench, way.at(n), r))
    only = way.at(fewest)
    return Carried(rule, (Series(0, only),) if bench.close(only, r) else ())


def _is_sure(bench: Bench, n: int, r: int) -> bool:
    trial = bench.trial(n, r)
    return trial is not None and trial.sure


def _grown(
    bench: Bench,
    way: Series,
    r: int,
    spots: tuple[int, int, int],
    trials: Sequence[Trial],
    growing: Sequence[int],
    rule: Rule,
) -> Carried:
    """A row with a repeat that is made more often on a larger edge."""
    t, _, far = spots
    period = 1
    for g in growing:
        near, next_, last = (trial.repeats[g] for trial in trials)
        m = next_.offered - near.offered
        if m <= 0 or last.offered - near.offered != m * (far - t):
            return Carried(rule, uneven=True)
        period = lcm(period, last.takes // gcd(m, last.takes))
    if period > MOST_TRIED:
        raise TooMany

    def closing(first: int) -> list[int]:
        return [x for x in range(period) if bench.close(way.at(first + x), r)]

    even = all(trials[-1].repeats[g].even for g in growing)
    only: list[int] | None = None
    if even and rule.plus is not None and foretells(bench.reading.rounds[r], growing):
        only = _foretold(bench, way, r, t, solved(m, near.offered - rule.plus, last.takes), trials)
    if only is None:
        only = closing(t)
        even = only == closing(t + period) and (even or bool(only))
    if not only and solved(m, near.offered - (rule.plus or 0), last.takes):
        rule = Rule(rule.of)  # it does not close on what it seems to need
    ways = tuple(Series(way.step * period, way.at(t + x)) for x in only)
    even = even and all(bench.close(one.at(1), r) for one in ways)
    return Carried(widened(rule, [near.offered + m * x for x in only]), ways, not even)


def _foretold(
    bench: Bench, way: Series, r: int, t: int, found: Series | None, trials: Sequence[Trial]
) -> list[int] | None:
    """The one remainder that was reckoned, or none, where it proves right; else None."""
    if found is None:
        return None if any(trial.closes for trial in trials) else []
    return [found.first] if bench.close(way.at(t + found.first), r) else None
