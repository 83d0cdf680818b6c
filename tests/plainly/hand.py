"""One hand at work in one window: places, and the steps that name them ("Working a row")."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from itertools import islice

from border.text.tree import (
    ST,
    AtOnce,
    Begin,
    Centre,
    Part,
    Place,
    Skip,
    StartChain,
    Stitches,
    Target,
    Which,
    Whole,
)
from plainly.cursor import (
    FRESH,
    Cursor,
    beyond,
    further,
    lies_ahead,
    walk,
)
from plainly.fabric import Identity, Made, MadeChain, MadeStitch
from plainly.scopes import Window, joint_itself
from plainly.sites import Site

WORKED, SKIPPED, PASSED = "worked", "skipped", "passed"


class RunsOut(Exception):
    """No such site before the end; or, `too_short`, it lies behind, or there are too few."""

    def __init__(self, too_short: bool = False) -> None:
        super().__init__()
        self.too_short = too_short


@dataclass(frozen=True)
class Use:
    """A site that a step has worked, skipped, or passed over by its own words (`in 2nd X`)."""

    site: Site
    how: str


@dataclass
class Hand:
    """The state of the work. `made` is the row so far, shared by all windows of the row."""

    window: Window
    made: list[Made]
    chains_unsaid: bool = False  # the heading `chains count as stitches` is missing
    start_site: Site | None = None  # a straddling site that the start chain goes into
    cursor: Cursor = field(init=False)
    moved: bool = False
    last: Site | None = None
    begun: Site | None = None
    skip_ended: bool = False
    uses: list[Use] = field(default_factory=list)
    skips: list[tuple[Fraction, Fraction]] = field(default_factory=list)
    codes: set[str] = field(default_factory=set)
    _listed: dict[Target, list[Site]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.cursor = Cursor(self.window.start)

    # --- what is there ---

    def sites(self, target: Target) -> list[Site]:
        """The sites of a target in this window, each once."""
        if target not in self._listed:
            self._listed[target] = self.window.sites(target)
        return self._listed[target]

    def union(self, targets: tuple[Target, ...]) -> list[list[Site]]:
        return [self.sites(target) for target in targets]

    def ahead(self, targets: tuple[Target, ...]) -> list[Site]:
        """All sites from the cursor on. Those of one target never lie one on the other."""
        if len(targets) == 1:
            return [site for site in self.sites(targets[0]) if lies_ahead(site, self.cursor)]
        return list(walk(self.union(targets), self.cursor))

    def _identity(self, site: Site) -> Identity:
        return site.identity(self.window.fabric)

    # --- places ---

    def places(self, place: Place) -> list[Site]:
        """The sites that a place means; raises RunsOut, and moves nothing."""
        match place.which:
            case Which.NEXT | Which.THE:
                return self.coming(place.targets, place.count)
            case Which.FIRST:
                found = self.coming(place.targets, place.count)
                if self.moved:
                    self.codes.add("not-at-the-head")
                return found
            case Which.NTH | Which.EVERY:
                return self.coming(place.targets, place.count)[-1:]
            case Which.EACH:
                return self.coming(place.targets, 1)
            case Which.LAST | Which.CENTRE:
                return self._of_all(place)
            case Which.SAME:
                return self._or_nothing(self._same(place.targets))
            case Which.SKIPPED:
                return self._or_nothing(self._skipped(place.targets))

    def coming(self, targets: tuple[Target, ...], count: int) -> list[Site]:
        """The next so many."""
        self._check_skip(targets)
        found = list(islice(walk(self.union(targets), self.cursor), count))
        if len(found) < count:
            raise RunsOut
        return found

    def _check_skip(self, targets: tuple[Target, ...]) -> None:
        """A skip has ended inside an X that is now named whole: the books mean different things."""
        if not self.skip_ended:
            return
        for target in targets:
            if isinstance(target, Whole | AtOnce) and any(
                site.start < self.cursor.spot < site.end for site in self.sites(Whole(target.of))
            ):
                self.codes.add("place-unclear")

    def _of_all(self, place: Place) -> list[Site]:
        """`last M X`, `centre M X`: of those of the scope; the cursor must not be beyond them."""
        found = list(walk(self.union(place.targets), Cursor(self.window.start)))
        if isinstance(place.targets[0], AtOnce):
            found = self.sites(place.targets[0])  # from each X on, the last as well
        spare = len(found) - place.count
        if spare < 0:
            raise RunsOut(too_short=True)
        # Small rulings: an uneven remainder leaves the extra one after it.
        first = spare if place.which is Which.LAST else spare // 2
        found = found[first : first + place.count]
        if not lies_ahead(found[0], self.cursor):
            raise RunsOut(too_short=True)
        return found

    def _same(self, targets: tuple[Target, ...]) -> Site | None:
        """The site worked last; a part of `same X` is one of the X that this lies in."""
        last = self.last
        for target in targets:
            if last is None or not isinstance(target, Part | Centre):
                continue
            for x in self.sites(Whole(target.of)):
                if x.start <= last.start and last.end <= x.end:
                    inside = [
                        y for y in self.sites(target) if x.start <= y.start and y.end <= x.end
                    ]
                    return inside[0] if inside else last
        return last

    def _skipped(self, targets: tuple[Target, ...]) -> Site | None:
        """The last X passed by a `skip`."""
        every = [site for target in targets for site in self.sites(target)]
        for start, end in reversed(self.skips):
            passed = [site for site in every if start <= site.start and site.end <= end]
            if passed:
                return max(passed, key=lambda site: site.start)
        return None

    def _or_nothing(self, site: Site | None) -> list[Site]:
        if site is None:
            self.codes.add("nothing-before")
            return []
        return [site]

    # --- moving ---

    def work_into(self, site: Site, stays: bool = False) -> None:
        self.uses.append(Use(site, WORKED))
        self.last = site
        self.skip_ended = False
        if not stays:
            self.cursor = further(self.cursor, beyond(site))
            self.moved = True

    def pass_over(self, site: Site, how: str) -> None:
        self.uses.append(Use(site, how))
        self.cursor = further(self.cursor, beyond(site))
        self.moved = True
        self.skip_ended = how == SKIPPED

    def pass_to(self, place: Place) -> None:
        """`in Nth X`, `in every Nth X`: passing over N - 1."""
        if place.which in (Which.NTH, Which.EVERY):
            for site in self.coming(place.targets, place.count)[:-1]:
                self.pass_over(site, PASSED)

    # --- steps ---

    def begin(self, item: Begin) -> None:
        """The round starts just before X, which is both the next X and the same X."""
        site = self.window.opening
        if site is None:
            raise RunsOut
        self.cursor = Cursor(site.start, FRESH)
        self.last = self.begun = site

    def skip(self, item: Skip) -> None:
        if item.target is None:
            self.check_chains()
        found = self.coming((item.target or Whole(ST),), item.count)
        for site in found:
            self.pass_over(site, SKIPPED)
        self.skips.append((found[0].start, found[-1].end))

    def check_chains(self) -> None:
        """A bare number over a fabric that has chain atoms needs the heading."""
        if self.window.fabric.has_chains and self.chains_unsaid:
            self.codes.add("chains-unclear")

    def start_chain(self, item: StartChain, inside: Site | None) -> None:
        """A counted start chain is a stitch; one that is not counted is no atom."""
        if item.stands_for is None:
            return
        if inside is None and item.place is None and not self.moved:
            inside = self.begun or self.start_site
            if inside is not None:
                self.work_into(inside)
        self.stitches(Stitches(1, item.stands_for, item.place), inside)
        self.chain(item.then)

    def stitches(self, item: Stitches, inside: Site | None) -> None:
        """`N dc`, in one place or several. `inside`: the place of the bracket around it."""
        if item.place is not None:
            self.pass_to(item.place)
            found = self.places(self.after_passing(item.place))
            if found:
                self._stitches_in(item, found, stays=item.place.which is Which.SKIPPED)
        elif inside is not None:
            self._make(item, [(inside, item.count)])
        elif self.window.what == "joint":
            # Scopes: there a bare stitch goes into the joint itself.
            site = joint_itself(self.window)
            self.work_into(site, stays=True)
            self._make(item, [(site, item.count)])
        else:
            self.check_chains()
            found = self.coming((Whole(ST),), item.count)
            for site in found:
                self.work_into(site)
            self._make(item, [(site, 1) for site in found])

    def after_passing(self, place: Place) -> Place:
        if place.which in (Which.NTH, Which.EVERY):
            return Place(Which.NEXT, place.targets)
        return place

    def _stitches_in(self, item: Stitches, found: list[Site], stays: bool) -> None:
        assert item.place is not None
        for site in found:
            self.work_into(site, stays)
        if len(found) > 1 and not item.place.each and item.count in (1, len(found)):
            self._make(item, [(site, 1) for site in found])  # one in each
        else:
            self._make(item, [(site, item.count) for site in found])

    def _make(self, item: Stitches, plan: list[tuple[Site, int]]) -> None:
        """The stitches themselves: so many in each site, and the chains between them."""
        if item.together:
            first, last = plan[0][0], plan[-1][0]
            # Over several sites it belongs to no group, and stands half-way.
            into = self._identity(first) if len(plan) == 1 else None
            self.made.append(MadeStitch(item.stitch, (first.at + last.at) / 2, into))
            return
        one_in_each = len(plan) > 1 and all(number == 1 for _, number in plan)
        for k, (site, number) in enumerate(plan):
            if k > 0:
                # `with ch 2 between`: between the N stitches; parted: between the workings.
                self.chain(item.between if one_in_each and not self._each(item) else item.parted)
            for i in range(number):
                if i > 0:
                    self.chain(item.between)
                self.made.append(MadeStitch(item.stitch, site.at, self._identity(site)))

    def _each(self, item: Stitches) -> bool:
        return item.place is not None and item.place.each

    def chain(self, count: int) -> None:
        self.made.extend([MadeChain()] * count)
