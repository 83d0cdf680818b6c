"""Working the steps of a text: brackets, repeats, boundaries ("Repeats", "Closing")."""

from __future__ import annotations

from copy import copy
from dataclasses import dataclass, field
from dataclasses import replace as changed
from fractions import Fraction

from msgspec.structs import replace

from border.text.tree import (
    Arch,
    AsTheyCome,
    AtOnce,
    Begin,
    Bracket,
    Chains,
    End,
    Item,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    ToLast,
    Which,
)
from plainly.arches import arch, stitches_made
from plainly.cursor import (
    BEHIND_ATOM,
    FRESH,
    Cursor,
    beyond,
    counted_as,
    lies_ahead,
    walk,
)
from plainly.fabric import MadePicot
from plainly.hand import Hand, RunsOut
from plainly.openings import leading, named
from plainly.readings import flat, is_open, one_stretch, same_steps
from plainly.runs import Boundary, Path, Run, Working
from plainly.sites import Site, meant_target


@dataclass
class Work(Hand):
    """A text being worked in a window. `plan`: how many sites to pass at which boundary."""

    items: tuple[Item, ...] = ()
    plan: dict[Boundary, int] = field(default_factory=dict)
    applied: list[Boundary] = field(default_factory=list)
    runs: list[Run] = field(default_factory=list)
    ran_out: bool = False
    opened: int = 0  # so many steps of another row's end stand before the text's own

    def work(self) -> None:
        """All steps. One that runs out outside a repeat works nothing; the text goes on."""
        for i, item in enumerate(self.items):
            if isinstance(item, Repeat) and item.times is not None:
                # Small rulings: a counted repeat is undone from the working that ran out.
                for _ in range(item.times):
                    if not self._whole(item.items, (i,)):
                        break
            else:
                self._whole((item,), (i,), alone=True)

    def _whole(self, items: tuple[Item, ...], path: Path, alone: bool = False) -> bool:
        kept = self._keep()
        try:
            if alone:
                self._step(items[0], path, None)
            else:
                self._steps(items, path, None)
        except RunsOut as end:
            self._undo(kept)
            self.ran_out = True
            # Scopes: a text that asks more of a stretch than it has.
            if end.too_short or self.window.what == "stretch":
                self.codes.add("run-too-short")
            return False
        return True

    # --- keeping and undoing ---

    def _keep(self) -> dict[str, object]:
        names = [
            "cursor",
            "moved",
            "last",
            "skip_ended",
            "uses",
            "skips",
            "applied",
            "runs",
            "codes",
        ]
        kept: dict[str, object] = {name: copy(getattr(self, name)) for name in names}
        return kept | {"made": len(self.made)}

    def _undo(self, kept: dict[str, object]) -> None:
        """Undone whole, findings and all; whether chains count is asked in any case."""
        unclear = self.codes & {"chains-unclear"}
        for name, value in kept.items():
            if name == "made":
                assert isinstance(value, int)
                del self.made[value:]
            else:
                setattr(self, name, copy(value))
        self.codes |= unclear

    # --- steps ---

    def _steps(self, items: tuple[Item, ...], path: Path, inside: Site | None) -> None:
        for i, item in enumerate(items):
            self._step(item, (*path, i), inside)

    def _step(self, item: Item, path: Path, inside: Site | None) -> None:
        if isinstance(item, Stitches | Bracket) and is_open(item):
            self._in_each(item, path)
            return
        match item:
            case Chains(count):
                self.chain(count)
            case Picots(count):
                self.made.extend([MadePicot()] * count)
            case Skip():
                self.skip(item)
            case StartChain():
                self.start_chain(item, inside)
            case Begin():
                self.begin(item)
            case Stitches():
                self.stitches(item, inside)
            case Bracket():
                self._bracket(item, path)
            case Repeat(inner, int(times)):
                for _ in range(times):
                    self._steps(inner, path, inside)
            case Repeat():
                self._open_repeat(item, path)
            case AsTheyCome():
                self._as_they_come(item, path)
            case Arch():
                if len(stitches_made(self.made)) < item.back:
                    raise RunsOut
                arch(item, self.made)
            case End():
                pass

    def _bracket(self, item: Bracket, path: Path) -> None:
        """All in that place: the stitches inside that name no place go into it."""
        self.pass_to(item.place)
        found = self.places(self.after_passing(item.place))
        for k, site in enumerate(found):
            if k > 0:
                self.chain(item.parted)
            self.work_into(site, stays=item.place.which is Which.SKIPPED)
            self._steps(item.items, path, site)

    # --- open-ended repeats ---

    def _open_repeat(self, item: Repeat, path: Path) -> None:
        items = one_stretch(item.items)
        run = self._new_run(path, leading(items))
        while not (item.to_last and not (item.star and not run.workings)) or (
            len(self.ahead((item.to_last.of,))) > item.to_last.count
        ):
            kept, before = self._keep(), self._standing(run)
            try:
                self._steps(items, path, None)
                self._leave_the_last(item, run)
            except RunsOut:
                # That last, unfinished repeat is undone whole.
                self._undo(kept)
                if item.to_last is None:
                    self._meet_start(items, path, run)
                break
            if self.cursor == before[0] and run.workings:
                self._undo(kept)  # a text that takes nothing is refused before it comes here
                break
            self._end_working(run, before)
        self._stop(run, item.to_last)
        if not run.workings and not run.met:
            run.fine = False  # an open-ended repeat that is made no times does not close

    def _leave_the_last(self, item: Repeat, run: Run) -> None:
        """`to last N X`: a working that goes into the last N has run out.

        It must come out at exactly N; a star's first repeat takes no notice of it.
        """
        if item.to_last is None or (item.star and not run.workings):
            return
        if len(self.ahead((item.to_last.of,))) < item.to_last.count:
            raise RunsOut

    def _in_each(self, item: Stitches | Bracket, path: Path) -> None:
        """`in each X`, `in every Nth X`: the whole item once for every one, none missed."""
        place = item.place
        assert place is not None
        run = self._new_run(path, place.targets)
        once = replace(item, place=Place(Which.NTH, place.targets, place.count), parted=0)
        while len(self.ahead(place.targets)) >= place.count:
            if run.workings:
                self._part(item.parted, run)
            before = self._standing(run)
            self._step(once, path, None)
            self._end_working(run, before)
        # On a closed round the chains stand between the last and the first, too.
        if run.workings and self.window.is_round:
            self._part(item.parted, run)
        self._stop(run, None)
        if place.which is Which.EVERY and not run.workings:
            run.fine = False

    def _as_they_come(self, item: AsTheyCome, path: Path) -> None:
        """Whichever site of all parts comes next, by the part that names it, until none comes."""
        run = self._new_run(path, named(item))
        while (part := self._coming(item)) is not None:
            if run.workings:
                self._part(item.parted, run)
            before = self._standing(run)
            self._check_skip(named(item))
            self._step(part, path, None)
            self._end_working(run, before)
        if run.workings and self.window.is_round:
            self._part(item.parted, run)
        self._stop(run, None)

    def _coming(self, item: AsTheyCome) -> Item | None:
        """The part whose site starts first; a point before an atom, and the part named first."""
        coming = [
            (site.start, not site.is_point, number)
            for number, part in enumerate(item.items)
            for site in self.ahead(named(part))
        ]
        return item.items[min(coming)[2]] if coming else None

    def _part(self, chains: int, run: Run) -> None:
        """Chains between two workings belong to the one before."""
        self.chain(chains)
        run.workings[-1] = changed(run.workings[-1], made_to=len(self.made))

    def _new_run(self, path: Path, targets: tuple[Target, ...]) -> Run:
        fabric = self.window.fabric
        counted = [counted_as(meant_target(fabric, t)) for t in targets]
        own = (path[0] - self.opened, *path[1:]) if path else path
        run = Run(own, tuple(dict.fromkeys(counted)))
        self.runs.append(run)
        return run

    def _standing(self, run: Run) -> tuple[Cursor, dict[Target, set[object]], int]:
        return self.cursor, self._touched(run), len(self.made)

    def _touched(self, run: Run) -> dict[Target, set[object]]:
        """Of each leading kind, the sites that have been passed or worked up to here."""
        found: dict[Target, set[object]] = {}
        for kind in run.kinds:
            listed = self.sites(kind)
            ahead = {self._identity(x) for x in listed if lies_ahead(x, self.cursor)}
            worked = {
                self._identity(use.site.whole or use.site)
                for use in self.uses
                if counted_as(use.site.target) == kind
                and not isinstance(use.site.target, AtOnce)  # its sites are listed themselves
            }
            # What lies ahead again after an adjustment is taken a second time.
            found[kind] = set[object](({self._identity(x) for x in listed} | worked) - ahead)
        return found

    def _end_working(self, run: Run, before: tuple[Cursor, dict[Target, set[object]], int]) -> None:
        cursor, touched, made_from = before
        now = self._touched(run)
        takes = tuple((kind, len(now[kind] - touched[kind])) for kind in run.kinds)
        run.workings.append(Working(cursor, self.cursor, takes, made_from, len(self.made)))
        self._boundary(run)

    def _stop(self, run: Run, to_last: ToLast | None) -> None:
        """What is left where the repeat stopped; for `to last N`, before the last N."""
        run.used_before = len(self.uses)
        if run.met:
            return
        run.left = self.ahead(run.kinds)
        if to_last is None:
            return
        remaining = self.ahead((to_last.of,))
        run.fine = run.fine and len(remaining) == to_last.count
        if len(remaining) < to_last.count:
            run.left = []
        else:
            # A point that lies just where the last N begin is before them.
            limit = remaining[-to_last.count]
            run.left = [x for x in run.left if _head(x) < _head(limit)]

    # --- boundaries ---

    def _boundary(self, run: Run) -> None:
        """One repeat has been worked and the next, or the tail, has not begun."""
        here = Boundary(len(self.runs) - 1, len(run.boundaries))
        ahead = self.ahead(run.kinds)
        run.boundaries.append(ahead[0].at if ahead else self.window.end_at)
        by = self.plan.get(here, 0)
        if by > 0 and len(ahead) >= by:
            self.cursor = beyond(ahead[by - 1])
        elif by < 0:
            listed = walk(self.union(run.kinds), Cursor(self.window.start))
            behind = [x for x in listed if not lies_ahead(x, self.cursor)]
            if len(behind) < -by:
                return  # it runs out itself
            # As it was before that site: a point where an atom begins stays behind.
            rank = FRESH if behind[by].is_point else BEHIND_ATOM
            self.cursor = Cursor(behind[by].start, rank)
        else:
            return
        self.skip_ended = False
        self.applied.append(here)

    # --- meeting the start ---

    def _meet_start(self, items: tuple[Item, ...], path: Path, run: Run) -> None:
        """Closing: the steps still to come are those that the row had before its repeat.

        Chains before the step that ran out have been worked by the start as well.
        """
        if not self.window.is_round or path != (len(self.items) - 1,):
            return
        head, stretch = flat(self.items[:-1]), flat(items)
        split = len(stretch) - len(head)
        if not head or split < 1 or not same_steps(stretch[split:], head):
            return
        runs_out = self._runs_out_at(stretch)
        if runs_out < split or any(not _makes_only(s) for s in stretch[split:runs_out]):
            return
        self._steps(stretch[:split], path, None)
        run.met = True
        self.codes.add("meets-its-start")

    def _runs_out_at(self, stretch: tuple[Item, ...]) -> int:
        kept = self._keep()
        for done, step in enumerate(stretch):
            try:
                self._step(step, (), None)
            except RunsOut:
                self._undo(kept)
                return done
        raise AssertionError(stretch)


def _head(site: Site) -> tuple[Fraction, bool]:
    """Where a site begins: a point before the atom that begins there."""
    return site.start, not site.is_point


def _makes_only(item: Item) -> bool:
    """Whether a step makes something without a place."""
    return isinstance(item, Chains | Picots)
