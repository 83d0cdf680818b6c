"""One round worked into the fabric below: once as it stands, and again as it is adjusted."""

from __future__ import annotations

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding
from border.text.openings import with_start_chain
from border.text.readings import Round
from border.text.steps import walk, worked_targets
from border.text.tree import AtOnce, Begin, Between, Item, StartChain, Stitches, Target, Text, Whole
from border.working.adjusting import Adjustment, Boundaries, Boundary, middles, planned
from border.working.closing import Account, accounts_of, counted_as, kind_name
from border.working.cursor import Cursor, Made
from border.working.fabric import Fabric, settle
from border.working.heads import row_head
from border.working.rows import Worker
from border.working.scopes import Part, allotted, parts
from border.working.sites import SiteFinder
from border.working.telling import no_place, not_covered
from border.working.unclosed import Leftover, Reasons
from border.working.windows import JointWindow, Window
from border.yoke.names import MOST_LIKENED


class Fallen(Struct, frozen=True):
    """An adjustment where it fell: `before_repeat` 1 is before the second repeat.

    `element`: how many elements of the row stand before it.
    """

    at: str
    by: int
    before_repeat: int
    element: int = 0


class Rest(Struct, frozen=True):
    """What an open-ended repeat (by the identity of its step) leaves over on a part of the edge,
    worked so many `times` there."""

    part: int
    repeat: int
    over: int
    times: int


class Pass(Struct):
    """One working of a round.

    `unclear`: it counts bare stitches over chains, and the border does not say
    whether chains count. `counted`: the first step that counts them by their noun.
    """

    accounts: dict[int, Account]
    made: Made = field(default_factory=Made)
    boundaries: Boundaries = field(default_factory=lambda: Boundaries({}))
    reasons: Reasons = field(default_factory=lambda: Reasons([], [], []))
    findings: list[Finding] = field(default_factory=list)
    rests: list[Rest] = field(default_factory=list)
    closes: bool = True
    unclear: bool = False
    counted: Item | None = None

    def fabric(self, below: Fabric) -> Fabric:
        """The row that was made, ready to be worked into."""
        m = self.made
        row = Fabric(below.line, below.tick, m.kinds, m.pos, m.into)
        row.rings, row.legs, row.feet, row.covered = m.rings, m.legs, m.feet, frozenset(m.covered)
        return settle(row)


def work_once(round_: Round, below: Fabric, plan: dict[Boundary, Adjustment] | None = None) -> Pass:
    """Work a round, with adjustments at the boundaries of the plan. Raises TooLarge."""
    done = Pass(accounts_of(round_.body), boundaries=Boundaries(plan or {}))
    finder = SiteFinder(below, bool(round_.rules.chains_count))
    if isinstance(round_.body, Text):
        _row(round_, round_.body.items, finder, done)
        return done
    worked = parts(finder, round_.body)
    opening = _opening(round_, worked, done)
    for number, part in enumerate(worked):
        done.boundaries.enter(number)
        _part(round_, part, done, opening)
        if part.clause.text.items:
            opening = ()
    owners = allotted(below.line, round_.body)
    missing = [s.run.motif for s, o in zip(below.line.stretches, owners, strict=True) if o is None]
    if missing or not below.line.stretches:
        done.findings.append(not_covered(round_, missing))
    return done


def work_part(round_: Round, part: Part) -> Pass:
    """One part of the edge alone, by the clause that works it. Raises TooLarge."""
    done = Pass(accounts_of((part.clause,)))
    _part(round_, part, done)
    return done


def _opening(round_: Round, worked: list[Part], done: Pass) -> tuple[Item, ...]:
    """The turning chains of a row of clauses: they stand at the head of what is worked first."""
    if not round_.turning:
        return ()
    following = tuple(item for part in worked for item in part.clause.text.items)
    every = (*round_.turning, *following)
    return with_start_chain(every, round_.rules, round_.number, done.findings)[:1]


def work_adjusted(
    round_: Round, below: Fabric, adjustments: tuple[Adjustment, ...], first: Pass
) -> tuple[Pass, tuple[Fallen, ...]]:
    """The round worked again, with the adjustments at the boundaries that they take.

    `first`: the round as it was worked without. Raises TooLarge.
    """
    plan, homeless = planned(adjustments, below.line, below.tick, first.boundaries.seen)
    done = work_once(round_, below, plan)
    applied = done.boundaries.applied
    homeless += [a for boundary, a in plan.items() if boundary not in applied]
    names = sorted({name for s in below.line.stretches for name in s.run.names} if homeless else ())
    for number, a in enumerate(homeless):
        here = bool(middles(below.line, below.tick, a.at))
        done.findings.append(no_place(a, here, names if number < MOST_LIKENED else ()))
    return done, fell(plan, done.boundaries)


def fell(plan: dict[Boundary, Adjustment], met: Boundaries) -> tuple[Fallen, ...]:
    """Where the adjustments of a plan fell, as far as they had their way when it was worked."""
    return tuple(
        Fallen(a.at, a.by, b.repeats, met.applied[b]) for b, a in plan.items() if b in met.applied
    )


def _part(round_: Round, part: Part, done: Pass, opening: tuple[Item, ...] = ()) -> None:
    """`opening`: turning chains that stand at its head, if it works anything."""
    items = part.clause.text.items
    items = (*opening, *items) if items else items
    worker = _worker(round_, part.window, done, items)
    worker.text(items)
    _finish(worker, items, part.name, done)


def _row(round_: Round, items: tuple[Item, ...], finder: SiteFinder, done: Pass) -> None:
    head = row_head(finder, items)
    worker = _worker(round_, head.window, done, items)
    worker.whole = head.window.round
    worker.straddler = head.straddler
    if items and isinstance(begin := items[0], Begin):
        worker.begin(begin, head.begun)
    worker.text(items)
    _finish(worker, items, "", done)


def _worker(round_: Round, window: Window, done: Pass, items: tuple[Item, ...]) -> Worker:
    targets = worked_targets(items)
    kinds = tuple(dict.fromkeys(Whole(t.of) for t in targets))
    # of one kind worked whole, or in the points between, none can be passed in silence
    evenly = len(kinds) == 1 and all(isinstance(t, Whole | Between | AtOnce) for t in targets)
    watched = () if evenly else kinds
    cursor = Cursor(window, done.made, at=window.head, watched=watched)
    return Worker(cursor, round_.rules, round_.number, done.accounts, done.boundaries.meet)


def _finish(worker: Worker, items: tuple[Item, ...], name: str, done: Pass) -> None:
    """Close the account of one part of the edge."""
    finder = worker.cursor.window.finder
    touched = worker.cursor.touched or []
    done.findings += [f for f in worker.findings if f not in done.findings]
    stretch = bool(name) and not isinstance(worker.cursor.window, JointWindow)
    done.reasons.troubles += [(name, replace(t, short=t.short or stretch)) for t in worker.troubles]
    done.unclear = done.unclear or worker.unclear
    done.counted = done.counted or worker.counted
    told = False
    counted: dict[int, set[int]] = {}  # of a repeat inside a bracket with a number, once
    for left in worker.left:
        before = counted.setdefault(id(left.item), set())
        over = [i for i in left.over(touched, finder) if i not in before]
        before.update(over)
        account = done.accounts[id(left.item)]
        account.left_over += len(over)
        done.rests.append(Rest(done.boundaries.part, id(left.item), len(over), left.times))
        if over:
            worker.closes = False
            told = True
            what = _what(account.leading, finder.fabric)
            over = left.over(
                touched, finder, last=True
            )  # what is really left, wherever the tail began
            spots = tuple(left.sites.p[i] for i in over)
            done.reasons.leftovers.append(Leftover(name, len(over), spots, what, left))
        elif left.unmade:
            done.reasons.unmade.append(name)
    if not worker.met:
        _beyond(worker, items, name, done, told)
    done.closes = done.closes and worker.closes


def _what(targets: tuple[Target, ...], fabric: Fabric) -> str:
    return " or ".join(dict.fromkeys(kind_name(t.of, fabric) for t in targets))


def _beyond(worker: Worker, items: tuple[Item, ...], name: str, done: Pass, told: bool) -> None:
    """No site of the leading kind may be left beyond the cursor at the end of a text."""
    window = worker.cursor.window
    for targets in _closing_kinds(worker, items):
        sites = window.sites(targets)
        ahead = sites.ahead(worker.cursor.at)
        if not ahead:
            continue
        worker.closes = False
        if not told:
            what = _what(targets, window.finder.fabric)
            spots = tuple(sites.p[i] for i in ahead)
            done.reasons.leftovers.append(Leftover(name, len(spots), spots, what, None))


def _closing_kinds(worker: Worker, items: tuple[Item, ...]) -> list[tuple[Target, ...]]:
    """The leading kind of the last open-ended repeat; with none, every kind worked into."""
    if worker.last_leading:
        return [worker.last_leading]
    if worker.begun:  # the start chain goes into that
        items = tuple(
            replace(i, place=i.place or worker.begun) if isinstance(i, StartChain) else i
            for i in items
        )
    elif worker.straddler:
        items = tuple(i for i in items if not isinstance(i, StartChain))
    if isinstance(worker.cursor.window, JointWindow):
        bare = [i for i in walk(items) if isinstance(i, Stitches | StartChain) and i.place is None]
        kinds = worked_targets(tuple(i for i in walk(items) if i not in bare))
    else:
        kinds = worked_targets(items)
    return [(kind,) for kind in counted_as(kinds)]


def with_chains(round_: Round, count: bool) -> Round:
    """The round under the one or the other answer to "do chains count?"."""
    return replace(round_, rules=replace(round_.rules, chains_count=count))
