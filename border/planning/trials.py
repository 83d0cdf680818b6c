"""Trials: a border worked on an edge of some size, and what each repeat of a round did there."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct, field

from border.text.readings import Reading, Round
from border.text.steps import worked_targets
from border.text.tree import Item, Target, Text
from border.working.adjusting import Adjustment
from border.working.closing import Account, counted_as, kind_name
from border.working.cursor import TooLarge
from border.working.fabric import Fabric, edge_fabric, has_no_stitch
from border.working.found import Found, as_it_stands
from border.working.rounds import Pass, work_once
from border.working.sites import SiteFinder
from border.working.work import WORK_LIMIT, as_met_next
from border.yoke.edges import Edge

MOST_WORKED = 2_000_000
"""Stitches and chains worked in all the trials of one border."""


class TooMany(Exception):
    """The sizes that would have to be tried are too large."""


class Worked(Struct, frozen=True):
    """One round on one edge: the fabric that it went into, and its working."""

    round: Round
    below: Fabric
    done: Pass


class Repeated(Struct, frozen=True):
    """One open-ended repeat in one trial, in sites of its leading kind `of`.

    `offered`: all that there are; `over`: left at the end. `even`: every repeat,
    the first and the last apart, takes the same.
    """

    of: str
    offered: int
    takes: int
    times: int
    over: int
    even: bool


class Trial(Struct, frozen=True):
    """A round, or one part of it, in one trial.

    `sure`: nothing ran out, so that what is left over tells what is needed.
    Outside any repeat: `beyond` sites are left of `offered` ones of the kind `of`.
    """

    closes: bool
    sure: bool
    repeats: tuple[Repeated, ...]
    of: str
    offered: int
    beyond: int


def worked_on(
    reading: Reading,
    edge: Edge,
    adjustments: Sequence[Adjustment] = (),
    found: Found | None = None,
) -> tuple[Worked, ...]:
    """Every round of a border on an edge, up to one without a stitch, which does not close,
    or before one with which the work grows too large."""
    fabric = edge_fabric(edge)
    made: list[Worked] = []
    total = 0
    for round_ in reading.rounds:
        mine = tuple(a for a in adjustments if a.round == round_.number)
        try:
            _, done, _ = as_it_stands(round_, fabric, mine, found)
        except TooLarge:
            break
        total += len(done.made.kinds)
        if total > WORK_LIMIT:
            break
        made.append(Worked(round_, fabric, done))
        if has_no_stitch(done.made.kinds):
            done.closes = False
            break
        fabric = as_met_next(done.fabric(fabric), round_, reading.rules.worked, edge.closed)
    return tuple(made)


def cut_short(worked: Worked, by: int) -> Worked | None:
    """The round on the row below without that row's last stitches; None where none are left, or
    where it grows too large on them."""
    below = worked.below
    keep = len(below.kinds) - by
    if keep < 1:
        return None
    columns = below.kinds[:keep], below.pos[:keep], below.into[:keep]
    covered = frozenset(i for i in below.covered if i < keep)
    cut = Fabric(below.line, below.tick, *columns, below.base, covered=covered)
    try:
        return Worked(worked.round, cut, work_once(worked.round, cut))
    except TooLarge:
        return None


class Bench(Struct):
    """A border worked on edges of many sizes, each size once."""

    reading: Reading
    edge: Callable[[int], Edge]
    _worked: dict[int, tuple[Worked, ...]] = field(default_factory=dict)
    _total: int = 0

    def worked(self, n: int) -> tuple[Worked, ...]:
        """The rounds on n places. Raises TooMany."""
        if n not in self._worked:
            if self._total > MOST_WORKED:
                raise TooMany
            self._worked[n] = worked_on(self.reading, self.edge(n))
            self._total += n + sum(len(w.done.made.kinds) for w in self._worked[n])
        return self._worked[n]

    def trial(self, n: int, r: int, cut: int = 0) -> Trial | None:
        """The round of index r on n places; None where the work does not come so far.

        `cut`: on the row below without so many of its last stitches.
        """
        worked = self.worked(n)
        if r >= len(worked):
            return None
        there = cut_short(worked[r], cut) if cut else worked[r]
        return row_trial(there) if there else None

    def close(self, n: int, r: int) -> bool:
        """Whether all rounds up to the one of index r close on n places."""
        if n < 1:
            return False
        worked = self.worked(n)
        return r < len(worked) and all(w.done.closes for w in worked[: r + 1])


def row_trial(worked: Worked) -> Trial:
    """A round that is one text, as it went."""
    assert isinstance(worked.round.body, Text)
    finder = SiteFinder(worked.below, bool(worked.round.rules.chains_count))

    def offered(targets: tuple[Target, ...]) -> int:
        return sum(len(finder.sites(target)) for target in targets)

    return trial(worked.done, worked.round.body.items, worked.below, offered)


def trial(
    done: Pass,
    items: tuple[Item, ...],
    below: Fabric,
    offered: Callable[[tuple[Target, ...]], int],
) -> Trial:
    """What a working of some steps tells; `offered` counts the sites that they see."""
    reasons = done.reasons
    met = any(finding.code == "meets-its-start" for finding in done.findings)
    accounts = {key: account for key, account in done.accounts.items() if account.leading}
    last = next(reversed(accounts), None)
    over = dict.fromkeys(accounts, 0)
    for left in reasons.leftovers:
        key = id(left.left.item) if left.left else last
        if key in over:
            over[key] += left.count
    repeats = [_repeated(a, over[k], below, offered(a.leading)) for k, a in accounts.items()]
    kinds = counted_as(worked_targets(items))[:1]
    return Trial(
        closes=done.closes,
        sure=not (reasons.troubles or reasons.unmade or met),
        repeats=tuple(repeats),
        of=kind_name(kinds[0].of, below) if kinds else "",
        offered=offered(kinds),
        beyond=reasons.leftovers[0].count if reasons.leftovers else 0,
    )


def _repeated(account: Account, over: int, below: Fabric, offered: int) -> Repeated:
    takes = account.takes(below)
    alike = sum(
        often for (taken, _), often in account.seen.items() if sum(taken) == sum(takes.values())
    )
    return Repeated(
        of=" or ".join(takes),
        offered=offered,
        takes=sum(takes.values()),
        times=account.times,
        over=over,
        even=alike >= account.times - 2,
    )
