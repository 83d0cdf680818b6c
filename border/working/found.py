"""What a round already worked really came out at: from there on it replaces the reckoning."""

from __future__ import annotations

from msgspec import Struct, field

from border.findings import Finding, Span
from border.text.readings import Round
from border.text.tree import ST, Kind
from border.text.written import write_kind
from border.working.adjusting import Adjustment, Boundary
from border.working.claims import how_many
from border.working.fabric import Fabric
from border.working.rounds import Fallen, Pass, fell, work_adjusted, work_once

MOST_EASED = 200
"""So many places are passed over, or worked twice, to bring a round to what was found."""

_ENOUGH = 200_000
"""On a large edge so many fewer that no more stitches and chains than these are made, but ..."""

_LEAST_EASED = 3
"""... so many at least."""

REPEATS = "repeats"

COUNTED: dict[str, Kind] = {
    "spaces": Kind("space"),
    "stitches": ST,
    "chains": Kind("ch"),
    "picots": Kind("picot"),
    "groups": Kind("group"),
    "blocks": Kind("block"),
}
"""What can be counted of a round, beside its repeats and its stitches by canonical name."""


class Found(Struct, frozen=True):
    """What a worked round came out at: of everything in `counts` (what, how many) at once."""

    round: int
    counts: tuple[tuple[str, int], ...]
    span: Span | None = None

    def in_force(self, done: int) -> bool:
        """Whether its round is one of those that are done; else it is told of and left aside."""
        return self.round <= done

    @property
    def numbers(self) -> tuple[int, ...]:
        return tuple(n for _, n in self.counts)


def came_out(found: Found, done: Pass, fabric: Fabric) -> tuple[int, ...]:
    """What a working of the round comes to, in what was counted; `fabric`: the row it made."""
    times = [account.times for account in done.accounts.values()]
    return tuple(
        (times[-1] if times else 1) if what == REPEATS else how_many(fabric, _kind(what))
        for what, _ in found.counts
    )


def as_it_stands(
    round_: Round, below: Fabric, given: tuple[Adjustment, ...], found: Found | None = None
) -> tuple[Pass, Pass, tuple[Fallen, ...]]:
    """A round worked without adjustments; with those given, so that it comes out as it was
    found; and where they fell. Raises TooLarge."""
    first = work_once(round_, below)
    if found is not None and found.round == round_.number:
        return (first, *work_found(round_, below, given, found))
    if not given:
        return first, first, ()
    return (first, *work_adjusted(round_, below, given, first))


def work_found(
    round_: Round, below: Fabric, adjustments: tuple[Adjustment, ...], found: Found
) -> tuple[Pass, tuple[Fallen, ...]]:
    """The round worked so that it comes out at what was found, and where its adjustments fell.

    Where it does not, it is eased by the fewest places that do it. If none do, it is as
    it would be without, with the finding `found-cannot-be`. Raises TooLarge.
    """
    done = work_once(round_, below)
    fallen: tuple[Fallen, ...] = ()
    if adjustments:
        done, fallen = work_adjusted(round_, below, adjustments, done)
    comes_to = came_out(found, done, done.fabric(below))
    if comes_to == found.numbers:
        return done, fallen
    tried = [comes_to]
    ways = [_Way(round_, below, done, by, _apart(comes_to, found)) for by in (1, -1)]
    most = min(MOST_EASED, max(_LEAST_EASED, _ENOUGH // (len(done.made.kinds) + 1)))
    for _ in range(most):
        for way in tuple(ways):
            eased = way.one_more()
            if eased is None:
                ways.remove(way)
                continue
            comes_to = came_out(found, eased, eased.fabric(below))
            if comes_to == found.numbers:
                homeless = [f for f in done.findings if f.code == "adjustment-has-no-place"]
                eased.findings += homeless
                return eased, fell(done.boundaries.plan, eased.boundaries)
            tried.append(comes_to)
            way.told(_apart(comes_to, found))
    done.findings.append(_cannot_be(round_, found, tried, most if ways else None))
    return done, fallen


def _apart(comes_to: tuple[int, ...], found: Found) -> int:
    return sum(abs(a - b) for a, b in zip(comes_to, found.numbers, strict=True))


_Plan = dict[Boundary, Adjustment]


class _Way(Struct):
    """Easing a round one place more at a time: passing over (`by` 1), or working twice (-1).

    All at one boundary, the last that has room for it; where a part of the edge has no
    more room, or more there would be of no use, the part before it takes the rest.
    `nearest`: how far from what was found the round is at best.
    """

    round_: Round
    below: Fabric
    base: Pass
    by: int
    nearest: int
    free: list[Boundary] = field(default_factory=list)
    full: _Plan = field(default_factory=dict)
    here: _Plan = field(default_factory=dict)
    best: _Plan = field(default_factory=dict)
    in_vain: int = 0

    def __post_init__(self) -> None:
        seen = self.base.boundaries.seen
        self.free = [b for b in reversed(seen) if b not in self.base.boundaries.plan]

    def one_more(self) -> Pass | None:
        """The round eased by one place more; None where there is no room for it."""
        given = self.base.boundaries
        kept = {b: given.plan[b] for b in given.applied}
        while self.free:
            spot = self.free[0]
            eased = sum(a.by for a in self.here.values()) + self.by
            here = {spot: Adjustment(self.round_.number, "", eased)}
            plan = {**kept, **self.full, **here}
            done = work_once(self.round_, self.below, plan)
            if len(done.boundaries.applied) == len(plan):
                self.here = here
                return done
            del self.free[0]
            if not self.free or self.free[0].part != spot.part:
                self._next_part(spot.part, self.here)
        return None

    def told(self, apart: int) -> None:
        """How far from what was found that was.

        Each repeat of places does the same again: where two have led no nearer, more
        of them will not.
        """
        self.in_vain += 1
        if apart < self.nearest:
            self.nearest, self.best, self.in_vain = apart, self.here, 0
        accounts = self.base.accounts.values()
        takes = max((sum(a.takes(self.below).values()) for a in accounts), default=0)
        if self.in_vain > 2 * takes:
            self._next_part(self.free[0].part, self.best)

    def _next_part(self, part: int, stays: _Plan) -> None:
        self.free = [b for b in self.free if b.part != part]
        self.full, self.here, self.best, self.in_vain = {**self.full, **stays}, {}, {}, 0


# --- in words -------------------------------------------------------------------


def _kind(what: str) -> Kind:
    return COUNTED.get(what) or Kind(what)


def in_words(counts: tuple[tuple[str, int], ...], terms: str) -> str:
    """`71 spaces and 35 groups`, stitches by the names of the terms."""
    told = []
    for what, n in counts:
        if what == REPEATS:
            told.append(f"{n} repeat{'' if n == 1 else 's'}")
        else:
            told.append(f"{n} {write_kind(_kind(what), terms, plural=n != 1)}")
    return ", ".join(told[:-1]) + " and " + told[-1] if len(told) > 1 else "".join(told)


def _cannot_be(
    round_: Round, found: Found, tried: list[tuple[int, ...]], eased: int | None
) -> Finding:
    """`tried`: what it came to, as it stands first; `eased`: at so many places it was given up."""
    terms = round_.rules.terms
    names = [what for what, _ in found.counts]
    if eased is not None:
        as_it_is = in_words(tuple(zip(names, tried[0], strict=True)), terms)
        nearest = f"it is reckoned at {as_it_is}, and {eased} places eased do not bring it there"
    elif len(found.counts) == 1:
        (wanted,) = found.numbers
        fewer = [n for (n,) in tried if n < wanted]
        more = [n for (n,) in tried if n > wanted]
        near = [str(n) for n in (*[max(fewer, default=-1)], *[min(more, default=-1)]) if n >= 0]
        nearest = f"the nearest {'is' if len(near) == 1 else 'are'} {' and '.join(near)}"
    else:
        best = min(tried, key=lambda comes_to: _apart(comes_to, found))
        nearest = f"the nearest is {in_words(tuple(zip(names, best, strict=True)), terms)}"
    message = f"round {found.round} cannot come out at {in_words(found.counts, terms)}: {nearest}"
    help_ = (
        f"count round {found.round} again; if it was worked otherwise than the border says, "
        f"write it so there, or leave found out"
    )
    return Finding("found-cannot-be", message, help_, found.span, found.round)


def misplaced(done: int, done_at: Span | None, found: Found | None, last: int) -> list[Finding]:
    """What is said of rounds that are not there, or not worked yet; `last`: the last round."""
    findings = []
    has = f"the border has rounds 1 to {last}" if last > 1 else f"the border has {last} round"
    if done > last:
        message = f"{done} rounds are said to be done, and there is no round {done}"
        findings.append(Finding("no-such-row", message, has, done_at))
    if found is not None and not 1 <= found.round <= last:
        message = f"there is no round {found.round} to have been counted"
        findings.append(Finding("no-such-row", message, has, found.span))
    elif found is not None and found.round > done:
        so_far = f"only rounds 1 to {done} are" if done > 1 else "only round 1 is"
        message = (
            f"it is said what round {found.round} came out at, "
            f"but {so_far if done else 'no round is'} said to be done"
        )
        help_ = f"write done = {found.round} if it is worked already, or else leave found out"
        findings.append(Finding("found-not-done", message, help_, found.span, found.round))
    return findings
