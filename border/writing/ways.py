"""The ways that a round might be written for one edge, the plainest to follow first."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice, product

from msgspec import Struct
from msgspec.structs import replace

from border.text.readings import Round
from border.text.tree import Clause, Item, Repeat, Text
from border.working.adjusting import Adjustment, Boundary
from border.working.fabric import Fabric
from border.working.found import Found, as_it_stands
from border.working.rounds import Pass
from border.working.scopes import Part, parts
from border.working.sites import SiteFinder
from border.writing.counting import Times, counted
from border.writing.easing import Ease, eased
from border.writing.runs import by_runs

Body = Text | tuple[Clause, ...]

MOST_WAYS = 64
"""Ways of writing the adjustments of one round that are tried."""


class Aim(Struct, frozen=True):
    """A round as it was worked into the fabric `below`, and the `fabric` that it made.

    `plan`: where its adjustments fell, those with which it came out as `found` too.
    """

    round: Round
    below: Fabric
    adjustments: tuple[Adjustment, ...]
    found: Found | None
    plan: dict[Boundary, Adjustment]
    done: Pass
    fabric: Fabric


def aim_at(
    round_: Round, below: Fabric, adjustments: tuple[Adjustment, ...], found: Found | None
) -> Aim:
    """A round worked, with its adjustments, so that it comes out as found. Raises TooLarge."""
    _, done, _ = as_it_stands(round_, below, adjustments, found)
    met = done.boundaries
    plan = {b: a for b, a in met.plan.items() if b in met.applied}
    return Aim(round_, below, adjustments, found, plan, done, done.fabric(below))


def ways(aim: Aim) -> Iterator[Body]:
    """The round with every repeat counted out and every adjustment in place."""
    if isinstance(aim.round.body, Text):
        for items in _texts(aim):
            yield Text(items)
        return
    finder = SiteFinder(aim.below, bool(aim.round.rules.chains_count))
    worked = parts(finder, aim.round.body)
    for gathered in (True, False):
        each = [_part(aim, number, part, gathered) for number, part in enumerate(worked)]
        for texts in islice(product(*each), MOST_WAYS):
            if (clauses := by_runs(aim.round.body, worked, texts, aim.below.line)) is not None:
                yield clauses


def _texts(aim: Aim) -> Iterator[tuple[Item, ...]]:
    assert isinstance(aim.round.body, Text)
    items, on_round = aim.round.body.items, aim.below.line.closed
    times = {step: account.times for step, account in aim.done.accounts.items()}
    eases = [Ease(b.repeats, a.by) for b, a in aim.plan.items()]
    if eases:
        found: Iterator[tuple[Item, ...]] = islice(eased(items, times, eases, on_round), MOST_WAYS)
    else:
        found = (counted(items, times, on_round, gathered) for gathered in (True, False))
    met = any(f.code == "meets-its-start" for f in aim.done.findings)
    for written in found:
        if not met:
            yield written
        elif isinstance(last := items[-1], Repeat):
            # the last repeat goes only so far as to meet the beginning
            yield from ((*written, *last.items[:n]) for n in range(len(last.items) - 1, 0, -1))


def _part(aim: Aim, number: int, part: Part, gathered: bool) -> list[tuple[Item, ...]]:
    """The ways of writing one part of the edge; its own steps where it is a joint."""
    items = part.clause.text.items
    if not part.stretches:
        return [items]
    times: Times = _times(aim.done, number)
    eases = [Ease(b.repeats, a.by) for b, a in aim.plan.items() if b.part == number]
    if eases:
        return list(islice(eased(items, times, eases, False), MOST_WAYS))
    written = counted(items, times, False, gathered)
    return [tuple(replace(i, star=False) if isinstance(i, Repeat) else i for i in written)]


def _times(done: Pass, part: int) -> Times:
    times: dict[int, int] = {}
    for rest in done.rests:
        if rest.part == part:
            times[rest.repeat] = times.get(rest.repeat, 0) + rest.times
    return times
