"""Working the steps of one text in one window: the cursor, steps and repeats."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import inf
from typing import assert_never

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding
from border.text.amounts import some
from border.text.copying.copied import Rules
from border.text.steps import OPEN_PLACES, leading_targets
from border.text.tree import (
    SPACES,
    ST,
    Arch,
    AsTheyCome,
    Begin,
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.text.written import write_item, write_list
from border.text.written_places import write_place
from border.working.arches import work_arch
from border.working.closing import Account, Left, Trouble, counted_as
from border.working.cursor import Cursor, Mark, Opening, RunsOut, Site
from border.working.fabric import CHAIN
from border.working.grouped import alone_words, beside_alone, group_words, on_grouped
from border.working.repeats import leads_back, meets_start, run
from border.working.stations import Sites
from border.working.unclosed import to_join
from border.working.windows import JointWindow

Boundary = Callable[[int, Sites, Cursor], None]
"""Told at each boundary of an open-ended repeat: how often the repeat has been worked, its
leading sites, the cursor."""


class Worker(Struct):
    """Works one text in one window.

    `accounts`: of every open-ended repeat of the row, shared by the parts of the
    edge that one clause works. `closes` turns False with the first trouble. `counted`: the first
    step that says `st` over chains, where the border does not say whether these count.
    """

    cursor: Cursor
    rules: Rules
    number: int
    accounts: dict[int, Account]
    boundary: Boundary
    closes: bool = True
    whole: bool = False
    begun: Place | None = None
    straddler: Site | None = None
    unclear: bool = False
    counted: Item | None = None
    findings: list[Finding] = field(default_factory=list)
    troubles: list[Trouble] = field(default_factory=list)
    left: list[Left] = field(default_factory=list)
    last_leading: tuple[Target, ...] = ()
    met: bool = False
    inside_open: bool = False
    inside_counted: bool = False
    _target: list[Site] = field(default_factory=list)
    _entered: tuple[Target, ...] = ()
    _apart: bool = False
    _looked: dict[int, int] = field(default_factory=dict)

    def text(self, items: tuple[Item, ...]) -> None:
        """Work a whole text. What runs out, outside a repeat, works nothing."""
        for i, item in enumerate(items):
            if isinstance(item, Repeat) and item.times is None:
                self._repeat(item, head=items[:i], behind=items[i + 1 :])
            else:
                self._outside(item)

    def _outside(self, item: Item) -> None:
        mark, told = self.cursor.mark(), len(self.findings)
        try:
            self.work(item)
        except RunsOut as out:
            self.inside_counted = False
            self.cursor.back_to(mark)
            del self.findings[told:]
            self._ran_out(out)

    def _ran_out(self, out: RunsOut) -> None:
        self.closes = False
        self.troubles.append(Trouble(out.item, out.short, out.has, out.needs))

    def begin(self, item: Begin, site: Site | None) -> None:
        """The round begins in a site (None: there is no such site)."""
        if site is None:
            self._ran_out(RunsOut(item, False, 0, 1))
            return
        self.begun = item.place
        self.cursor.last = site
        self.cursor.made.begun = max(site[0] // self.cursor.window.finder.step, 0)

    # --- steps ----------------------------------------------------------------

    def work(self, item: Item) -> None:
        """Work one step. Raises RunsOut, having worked nothing of it that matters."""
        match item:
            case Chains(count=count):
                self._apart = True
                self.cursor.made.chains(count)
            case Picots(count=count, chains=chains):
                self.cursor.made.picots(count, chains)
            case Skip():
                self._skip(item)
            case StartChain():
                self._start_chain(item)
            case Repeat():
                self._repeat(item) if item.times is None else self._counted(item)
            case Stitches() | Bracket():
                self._placed(item)
            case AsTheyCome():
                self._each(item, item.place)
            case Arch():
                work_arch(self.cursor.made, item)
            case Begin() | End():
                pass
            case _:
                assert_never(item)

    def _ask_alone(self, item: Stitches | Bracket) -> None:
        """Ask of a step that goes on one of a group where others stand alone; looked at twice."""
        times = self._looked.get(id(item), 0)
        if times == 2 or not isinstance(item, Stitches):
            return
        self._looked[id(item)] = times + 1
        cursor = self.cursor
        finder = cursor.window.finder
        alone = beside_alone(item, self._entered, cursor.at, finder, apart=self._apart)
        if alone is not None:
            self.tell(item, "perhaps-next-of", *alone_words(item, alone, self.rules.terms))

    def _ask_mixed(self, item: Stitches | Bracket, sites: Sequence[Site]) -> None:
        """Ask of stitches behind chains of which the first go into chains of the row below."""
        finder = self.cursor.window.finder
        if not (self._apart and self._entered and finder.has_chains) or len(sites) < 2:
            return
        chains = finder.sites(Whole(Kind("ch"))).a
        if sites[0][0] in chains and any(site[0] not in chains for site in sites):
            message = "the first of these go into chains of the row below, nothing being missed "
            self.tell(
                item,
                "perhaps-nothing-missed",
                f"{message}under those made before them",
                'where all go on the stitches behind those, skip them first: "skip 1 space"',
            )

    def _ask_chains(self, item: Item, targets: tuple[Target, ...]) -> None:
        """Ask of `in each stitch` over chains: the books often mean the chains, too."""
        finder = self.cursor.window.finder
        if self.rules.chains_count is not None or not finder.has_chains or self.unclear:
            return
        if Whole(ST) not in targets or any(t.of.name in (*SPACES, "ch") for t in targets):
            return
        chains = some(len(finder.sites(Whole(Kind("ch")))), "chain")
        self.tell(
            item,
            "chains-left-out",
            f"this goes into stitches alone, and leaves out {chains} of the row below",
            'write "chains count as stitches: yes" at the top if it goes into each chain as well, '
            'or "chains count as stitches: no" if it does not',
        )

    def _skip(self, item: Skip) -> None:
        self._entered = ()
        target = item.target or Whole(ST)
        self._look(item, (target,), bare=item.target is None)
        self.cursor.skip(self.cursor.ahead(item, (target,), item.count))

    def _start_chain(self, item: StartChain) -> None:
        made, chains = self.cursor.made, item.count - item.then
        if item.stands_for is None:
            made.openings.append(Opening(len(made.kinds), item.count, None))
            return
        stitch = Stitches(1, item.stands_for, item.place, span=item.span)
        at_head = item.place is None and self.cursor.at == self.cursor.window.head
        if at_head and self.begun and self.cursor.last:
            self._make(stitch, self.cursor.last)
        elif at_head and self.straddler:
            self._make(stitch, self.straddler)
        else:
            self._placed(stitch)
        made.openings.append(Opening(len(made.kinds), chains, item.stands_for))
        if item.then:
            made.chains(item.then)

    def _placed(self, item: Stitches | Bracket) -> None:
        place = item.place
        if place is not None and place.which in OPEN_PLACES:
            self._each(item, place)
            return
        if isinstance(item, Stitches) and item.count == 1 and item.between:
            item = replace(item, between=0, parted=_parted(item))
        if self._target and (place is None or place.which is Which.SAME):
            self._make(item, self._target[-1])
        elif place is None:
            assert isinstance(item, Stitches)
            self._bare(item)
        else:
            self._counted_places(item, place)

    def _bare(self, item: Stitches) -> None:
        """One in each of the next `count` st."""
        self._look(item, (Whole(ST),), bare=True)
        sites = self.cursor.bare(item, item.count)
        self._ask_mixed(item, sites)
        if item.together:
            self._together(item, sites, item.count)
            return
        single, stay = Stitches(1, item.stitch, cluster=item.cluster), self._at_joint()
        for i, site in enumerate(sites):
            if i and (apart := item.between or item.parted):
                self.cursor.made.chains(apart)
            self._make(single, site, stay=stay)

    def _counted_places(self, item: Stitches | Bracket, place: Place) -> None:
        self._look(item, place.targets)
        self._ask_alone(item)
        self._entered = place.targets if Whole(ST) not in place.targets else self._entered
        sites = self.cursor.placed(item, place)
        if place.targets == (Whole(ST),):
            self._ask_mixed(item, sites)
        self._apart = False
        if place.which is Which.FIRST and self.cursor.at != self.cursor.window.head:
            join = "" if self.inside_open else to_join(item)
            just_made = "where one is meant that this very row has made, leave that out"
            there = replace(item, place=replace(place, which=Which.NEXT))
            next_ = write_item(there, self.rules.terms)
            help_ = f'write "{next_}" if one of the row below is meant; {join or just_made}'
            if place.targets == (Whole(Kind("ch")),):
                help_ += '; or of each space: "in first ch of next space"'
            made = self.cursor.made
            if made.openings and sum(kind != CHAIN for kind in made.kinds) == 1:
                help_ += (
                    "; for the place that the chains before it stand in, "
                    '"ch 3 as dc in first space, 2 dc in same space"'
                )
            self.tell(item, "not-at-the-head", "the first is already behind here", help_)
        if not sites:
            message = f"there is nothing before this that {place.which} could mean"
            self.tell(item, "nothing-before", message, "name the place")
            return
        stay = place.which is Which.SKIPPED
        if isinstance(item, Stitches) and item.together:
            legs = item.count * len(sites) if place.each or len(sites) == 1 else len(sites)
            self._together(item, sites, legs)
            return
        if isinstance(item, Stitches) and len(sites) > 1 and not place.each:
            item = Stitches(
                1, item.stitch, parted=item.parted or item.between, cluster=item.cluster
            )
        for i, site in enumerate(sites):
            if i and item.parted:
                self.cursor.made.chains(item.parted)
            self._make(item, site, stay=stay)

    def _together(self, item: Stitches, sites: list[Site], legs: int) -> None:
        cursor = self.cursor
        middle = (sites[0][2] + sites[-1][2]) // 2
        cursor.made.cluster(item.stitch, legs, middle, tuple(map(cursor.number, sites)))
        stay = item.place is None and self._at_joint()
        for site in sites:
            cursor.take(site, stay=stay)

    def _at_joint(self) -> bool:
        """Whether a bare stitch goes into a joint, which passes nothing of what stands on it."""
        return isinstance(self.cursor.window, JointWindow)

    def _make(self, item: Stitches | Bracket, site: Site, *, stay: bool = False) -> None:
        """All that an item makes, into one site."""
        cursor = self.cursor
        cursor.take(site, stay=stay)
        if isinstance(item, Bracket):
            self._target.append(site)
            for inner in item.items:
                self.work(inner)
            self._target.pop()
            return
        cursor.made.step(item, site[2], cursor.number(site))

    # --- repeats --------------------------------------------------------------

    def _counted(self, item: Repeat) -> None:
        assert item.times is not None
        outermost, self.inside_counted = not self.inside_counted, True
        for _ in range(item.times):
            mark, stops, told = self.cursor.mark(), len(self.left), len(self.findings)
            try:
                for inner in item.items:
                    self.work(inner)
            except RunsOut as out:
                if self.inside_open or self._target or not outermost:
                    raise
                self.inside_counted = False
                self.cursor.back_to(mark)
                del self.findings[told:]
                for left in self.left[stops:]:
                    self.accounts[id(left.item)].times -= left.times
                del self.left[stops:]
                self._ran_out(out)
                return
            if self.cursor.mark() == mark:  # nothing made, nothing passed: nor next time
                break
        self.inside_counted = not outermost

    def _each(self, item: Stitches | Bracket | AsTheyCome, place: Place) -> None:
        """`in each X`, `in every Nth X`, `as they come`: an open-ended repeat of its own."""
        every = place.count if place.which is Which.EVERY else 1
        account = self.accounts[id(item)]
        before = account.times
        parted = _parted(item)
        self._ask_chains(item, place.targets)

        def once() -> None:
            self._look(item, place.targets)
            part = self._coming(item) if isinstance(item, AsTheyCome) else item
            (site,) = self.cursor.ahead(item, place.targets, 1, of=every)
            self._make(part, site)
            self.cursor.made.chains(parted)

        run(self, item, counted_as(place.targets), once)
        if parted and account.times > before and not self.cursor.window.round:
            # nothing follows the last one that they could part it from
            self.cursor.made.back_to(len(self.cursor.made.kinds) - parted)
            account.without_chains(parted)

    def _coming(self, item: AsTheyCome) -> Stitches | Bracket:
        """The part whose site starts first; where two do, the part named first."""

        def start(part: Stitches | Bracket) -> float:
            s = self.cursor.window.sites(part.place.targets if part.place else ())
            i = s.after(self.cursor.at)
            return s.a[i] if i < len(s) else inf

        return min(item.items, key=start)

    def _repeat(
        self, item: Repeat, head: tuple[Item, ...] = (), behind: tuple[Item, ...] = ()
    ) -> None:
        marks: list[Mark] = []  # before every step of a repeat, as far as it is worked
        may_meet = self.whole and bool(head) and item.to_last is None
        may_meet = may_meet and all(isinstance(i, End) for i in behind)

        def once() -> None:
            for index, inner in enumerate(item.items):
                if may_meet:
                    marks[index:] = [self.cursor.mark()]
                self.work(inner)

        def meets() -> bool:
            for to_come in range(len(marks) - 1, 0, -1):
                if meets_start(self.begun, item.items[to_come:], head):
                    self.cursor.back_to(marks[to_come])
                    return True
                if not isinstance(item.items[to_come - 1], Chains | Picots):
                    break  # chains before the step that runs out may be the head's, too
            return False

        if found := on_grouped(item.items, self.cursor.window.finder):
            self.tell(found[0], "perhaps-one-place", *group_words(*found, self.rules.terms))
        leading = counted_as(leading_targets(item.items))
        run(self, item, leading, once, item.to_last, item.star, meets)
        left = self.left[-1] if self.left else None
        ended = left is not None and left.sites.after(left.cursor) >= left.stop
        if may_meet and ended and not self.met and self.cursor.window.round:
            self._tell_way_back(item, leads_back(item, len(marks) - 1, self.begun, head))
        placed = sum(isinstance(one, Stitches | Bracket) for one in item.items)
        at_last = len(marks) == len(item.items) and placed > 1
        if may_meet and left is not None and not self.met and at_last:
            self._tell_begun_at_its_end(item.items[-1])

    def _tell_way_back(self, item: Repeat, chains: tuple[Item, ...]) -> None:
        """`begin in the centre of a loop, *ch 6, 1 sc in next loop; repeat`: the chains behind the
        last sc, which lead to the beginning."""
        if chains:
            made = write_list(chains, self.rules.terms)
            message = f"the round ends on its last stitch: no {made} leads from there to its start"
            begun = self.begun or Place(Which.NEXT, ())
            there = write_place(replace(begun, which=Which.NEXT), self.rules.terms)
            help_ = (
                f'write "; repeat from *, {made}, join" where it is made there as well, and '
                f'"1 sl st {there}" in place of where the round begins: else these chains and '
                "the first are one loop"
            )
            self.tell(item, "perhaps-leads-back", message, help_)

    def _tell_begun_at_its_end(self, last: Item) -> None:
        """`begin in the centre of the 3 dc, *ch 7, 1 sc in sc, ch 7, 1 sc in the centre of the 3
        dc; repeat`: the last one goes where the round begins, which the first step passed."""
        match self.begun, last:
            case Place(targets=(target,)), Stitches(place=Place(targets=(again,)) as place) if (
                target == again and not isinstance(target, Whole)
            ):
                same = replace(last, place=replace(place, which=Which.SAME))
                message = "this runs out where the round begins, which its first step has passed"
                help_ = (
                    f'write "{write_item(same, self.rules.terms)}" before the star if it goes there'
                )
                self.tell(last, "perhaps-leads-back", message, help_)

    # --- what is told ---------------------------------------------------------

    def _look(self, item: Item, targets: tuple[Target, ...], *, bare: bool = False) -> None:
        """Ask about what the text leaves open here."""
        finder = self.cursor.window.finder
        if bare and self.rules.chains_count is None and finder.has_chains:
            self.unclear = self.unclear or not self._at_joint()
        if self.counted is None and not bare and self._counts_named(item, targets):
            self.counted = item
        if self.cursor.stopped_inside(targets):
            words = write_item(item, self.rules.terms)
            message = f"the skip before this ends inside the very place that {words} names"
            help_ = "name a part of it, or skip to its end, so that one place is meant"
            self.tell(item, "place-unclear", message, help_)

    def _counts_named(self, item: Item, targets: tuple[Target, ...]) -> bool:
        """Whether a step says `st` where chains may count as well: `skip 3 st`, `in 4th st`."""
        place = getattr(item, "place", None)
        counts = place is None or place.which in (Which.NEXT, Which.NTH)
        open_ = self.rules.chains_count is None and self.cursor.window.finder.has_chains
        return open_ and counts and targets == (Whole(ST),) and not self._at_joint()

    def tell(self, item: Item, code: str, message: str, help_: str) -> None:
        """Tell something of a step, once however often it is worked."""
        finding = Finding(code, message, help_, item.span, self.number)
        if finding not in self.findings:
            self.findings.append(finding)


def _parted(item: Stitches | Bracket | AsTheyCome) -> int:
    """The chains that part one working of a step from the next: between one stitch stands nothing,
    so that what is said to stand there does."""
    between = item.between if isinstance(item, Stitches) and item.count == 1 else 0
    return item.parted or between
