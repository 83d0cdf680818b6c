"""The cursor: finding sites ahead, passing them, and putting stitches on the new row."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from itertools import islice

from msgspec import Struct, field

from border.text.tree import (
    ST,
    AtOnce,
    Centre,
    Item,
    Kind,
    Part,
    Place,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.working.fabric import ALONE, CHAIN, PICOT
from border.working.stations import Sites
from border.working.windows import JointWindow, Window

ROW_LIMIT = 1_000_000
"""Atoms in one row."""

Site = tuple[int, int, int]
"""A site: first station, the one behind it, position."""


class RunsOut(Exception):
    """A step asks for more than is left. `short`: `last` or `centre` did not fit."""

    def __init__(self, item: Item, short: bool, has: int, needs: int) -> None:
        super().__init__()
        self.item, self.short, self.has, self.needs = item, short, has, needs


class TooLarge(Exception):
    """The row has more atoms than can be reckoned."""


class Opening(Struct, frozen=True):
    """A start chain as it was worked. `behind`: how many elements the row has with it.

    `stands_for`: the stitch that it is in place of, the last of them; None: it is none of them.
    """

    behind: int
    chains: int
    stands_for: str | None


class Made(Struct):
    """The row as it grows, in parallel lists as in `Fabric`.

    `begun`: how many elements of the row below lie before the site that it is begun in.
    """

    kinds: list[str] = field(default_factory=list)
    pos: list[int] = field(default_factory=list)
    into: list[int] = field(default_factory=list)
    rings: dict[int, int] = field(default_factory=dict)
    legs: dict[int, int] = field(default_factory=dict)
    feet: dict[int, tuple[int, ...]] = field(default_factory=dict)
    covered: dict[int, None] = field(default_factory=dict)
    openings: list[Opening] = field(default_factory=list)
    begun: int = 0

    def chains(self, count: int) -> None:
        """So many chains, which stand on nothing. Raises TooLarge."""
        self._room(count)
        self.kinds += [CHAIN] * count
        self.pos += [0] * count
        self.into += [ALONE] * count

    def picots(self, count: int, chains: int) -> None:
        """So many picots of so many chains each. Raises TooLarge."""
        self._room(count)
        at = len(self.kinds)
        self.rings.update(dict.fromkeys(range(at, at + count), chains))
        self.kinds += [PICOT] * count
        self.pos += [0] * count
        self.into += [ALONE] * count

    def stitches(self, stitch: str, count: int, position: int, into: int) -> None:
        """So many stitches in one place, by its position and its number below. Raises TooLarge."""
        self._room(count)
        self.kinds += [stitch] * count
        self.pos += [position] * count
        self.into += [into] * count

    def cluster(self, stitch: str, legs: int, position: int, into: tuple[int, ...]) -> None:
        """Stitches made into one; `into`: the numbers of their sites, in order."""
        self.legs[len(self.kinds)] = legs
        if len(set(into)) > 1:
            self.feet[len(self.kinds)] = into
        self.stitches(stitch, 1, position, into[0] if len(set(into)) == 1 else ALONE)

    def step(self, item: Stitches, position: int, into: int) -> None:
        """All the stitches of a step that go into one place. Raises TooLarge."""
        if item.together:
            self.cluster(item.stitch, item.count, position, (into,))
        elif not item.between and not item.cluster:
            self.stitches(item.stitch, item.count, position, into)
        else:
            for i in range(item.count):
                if i and item.between:
                    self.chains(item.between)
                if item.cluster:
                    self.cluster(item.stitch, item.cluster, position, (into,))
                else:
                    self.stitches(item.stitch, 1, position, into)

    def cover(self, first: int) -> None:
        """All that was made from an element on lies under an arch, and picots that stand there
        since nothing is before them."""
        first = 0 if all(kind == PICOT for kind in islice(self.kinds, first)) else first
        self.covered.update(dict.fromkeys(range(first, len(self.kinds))))

    def back_to(self, length: int) -> None:
        """Undo all that was made since the row was so long."""
        del self.kinds[length:], self.pos[length:], self.into[length:]
        for marks in (self.rings, self.legs, self.feet, self.covered):
            while marks and next(reversed(marks)) >= length:
                marks.popitem()
        while self.openings and self.openings[-1].behind > length:
            self.openings.pop()

    def _room(self, count: int) -> None:
        if len(self.kinds) + count > ROW_LIMIT:
            raise TooLarge


class Mark(Struct, frozen=True):
    """A cursor and what it remembers, to come back to."""

    at: int
    last: Site | None
    skips: int
    skip_end: int | None
    made: int
    touched: int


class Cursor(Struct):
    """A cursor in a window. It only moves forward (an adjustment may take it back).

    `last`: the site worked last, or begun in. `skips`: the station pairs that
    each `skip` went over. `skip_end`: where the last step, a skip, ended.
    `touched`: what is worked or skipped while somebody keeps account of it.
    `passed`: sites of the `watched` kinds that were passed in silence.
    """

    window: Window
    made: Made
    at: int = 0
    last: Site | None = None
    skips: list[tuple[int, int]] = field(default_factory=list)
    skip_end: int | None = None
    touched: list[tuple[int, int]] | None = None
    watched: tuple[Target, ...] = ()
    passed: dict[Target, int] = field(default_factory=dict)

    def mark(self) -> Mark:
        """Where everything stands now, to come back to."""
        skips, made, touched = len(self.skips), len(self.made.kinds), len(self.touched or ())
        return Mark(self.at, self.last, skips, self.skip_end, made, touched)

    def back_to(self, mark: Mark) -> None:
        """Undo all that was done since the mark."""
        self.at, self.last, self.skip_end = mark.at, mark.last, mark.skip_end
        del self.skips[mark.skips :]
        if self.touched is not None:
            del self.touched[mark.touched :]
        self.made.back_to(mark.made)

    # --- finding --------------------------------------------------------------

    def ahead(self, item: Item, targets: tuple[Target, ...], count: int, of: int = 1) -> list[Site]:
        """The next `count` sites, each the `of`-th from where the one before ended."""
        s = self.window.sites(targets)
        found = []
        at = self.at
        for k in range(count):
            i = s.after(at)
            for _ in range(of - 1):
                if i < len(s):
                    i = bisect_left(s.a, s.b[i])
            if i >= len(s):
                raise RunsOut(item, False, k, count)
            if self.watched:
                self._pass(at, s.a[i], targets if of > 1 else ())
            found.append((s.a[i], s.b[i], s.p[i]))
            at = s.b[i]
        return found

    def placed(self, item: Item, place: Place) -> list[Site]:
        """The sites that a place names, for every place but `each` and `every`.

        Raises RunsOut. `same` or `skipped` with nothing before gives no site.
        """
        s = self.window.sites(place.targets)
        count = place.count
        match place.which:
            case Which.SAME:
                return [self._same(place.targets)] if self.last else []
            case Which.SKIPPED:
                site = self._skipped(s)
                return [site] if site else []
            case Which.NTH:
                return self.ahead(item, place.targets, 1, of=count)
            case Which.LAST | Which.CENTRE:
                last = place.which is Which.LAST
                whole = s.ahead(self.window.head)
                start = len(whole) - count if last else (len(whole) - count) // 2
                if start < 0 or s.a[whole[start]] < self.at:
                    raise RunsOut(item, True, len(s.ahead(self.at)), count)
                self._pass(self.at, s.a[whole[start]], ())
                return [(s.a[i], s.b[i], s.p[i]) for i in whole[start : start + count]]
            case _:
                return self.ahead(item, place.targets, count)

    def _pass(self, start: int, end: int, counted: tuple[Target, ...]) -> None:
        """Keep account of the watched sites between two stations."""
        for target in self.watched:
            if target not in counted:
                s = self.window.sites((target,))
                n = bisect_right(s.b, end) - s.after(start)
                if n > 0:
                    self.passed[target] = self.passed.get(target, 0) + n

    def _same(self, targets: tuple[Target, ...]) -> Site:
        """The site worked last; of `last st of same block` that part of the block it is in."""
        assert self.last is not None
        for target in targets:
            if not isinstance(target, Part | Centre):
                continue
            for start, end in self._around(self.last, target.of):
                parts = self.window.sites((target,))
                k = parts.after(start)
                if k < len(parts) and parts.b[k] <= end:
                    return parts.a[k], parts.b[k], parts.p[k]
        return self.last

    def _around(self, site: Site, of: Kind) -> Iterator[tuple[int, int]]:
        """Where a block, a group … that a site lies in begins, and ends: one that straddles the
        start of a round too, whose first stitches come last."""
        finder = self.window.finder
        whole = finder.sites(Whole(of))
        laps = (site[0] // finder.round, site[0] // finder.round - 1)
        for shift in (lap * finder.round for lap in laps) if finder.fabric.line.closed else (0,):
            i = whole.after(site[0] - shift + 1) - 1
            if i >= 0 and whole.b[i] + shift >= site[1]:
                yield whole.a[i] + shift, whole.b[i] + shift

    def _skipped(self, s: Sites) -> Site | None:
        """The last site passed by a skip."""
        for start, end in reversed(self.skips):
            i = s.after(end) - 1
            while i >= 0 and s.a[i] >= start:
                if s.b[i] <= end:
                    return s.a[i], s.b[i], s.p[i]
                i -= 1
        return None

    def stopped_inside(self, targets: tuple[Target, ...]) -> bool:
        """Whether a skip has just ended inside a site that is now named whole."""
        if self.skip_end is None or self.skip_end != self.at:
            return False
        for target in targets:
            if not isinstance(target, Whole | AtOnce):
                continue
            s = self.window.sites((Whole(target.of),))
            i = s.after(self.at) - 1
            if i >= 0 and s.b[i] > self.at:
                return True
        return False

    # --- moving and working ---------------------------------------------------

    def bare(self, item: Item, count: int) -> list[Site]:
        """The sites for `count` stitches without a place: the next st, or the joint itself."""
        if isinstance(self.window, JointWindow):
            return [self.window.joint()] * count
        return self.ahead(item, (Whole(ST),), count)

    def number(self, site: Site) -> int:
        """A number for a site, the same wherever on the round it was counted from."""
        lap = self.window.finder.round
        return (site[0] % lap) * (2 * lap) + site[1] - site[0]

    def take(self, site: Site, *, stay: bool = False) -> None:
        """Be beyond a site that is worked into (`stay`: leave the cursor where it is)."""
        self.last = site
        if not stay and site[1] > self.at:
            self.at = site[1]
            self.skip_end = None
        if self.touched is not None:
            self.touched.append(site[:2])

    def skip(self, sites: list[Site]) -> None:
        """Pass over these sites, in order, without a stitch."""
        self.at = max(self.at, sites[-1][1])
        self.skips.append((sites[0][0], self.at))
        self.skip_end = self.at
        if self.touched is not None:
            self.touched += [s[:2] for s in sites]
