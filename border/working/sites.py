"""Sites: the places of a fabric that stitches can be worked into.

A site stands at *stations* along the fabric. Element i has the stations
[4i, 4i+2); the two before it are the gap between it and its neighbour. A
whole site ends where its last element does; a point has one station, in a gap
(a joint's is 4i-1) or inside what lies between two sites. So a cursor behind
a site has passed a point at that site's end, but no joint there, and a cursor
on a point has not passed the element behind it: "at or beyond" and "strictly
beyond" are one comparison. On a closed fabric stations run on: one round more
is 4 x its elements.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterator
from itertools import accumulate
from typing import assert_never

from msgspec import Struct

from border.stitches import STITCHES
from border.text.tree import (
    Between,
    BetweenPicots,
    Centre,
    Kind,
    Part,
    Target,
    Whole,
)
from border.working.fabric import ALONE, CHAIN, PICOT, Fabric


class Sites(Struct):
    """Sites in the order of their first stations: `a` first, `b` behind the last, `p` position."""

    a: list[int]
    b: list[int]
    p: list[int]

    def __len__(self) -> int:
        return len(self.a)

    def after(self, cursor: int) -> int:
        """The index of the first that starts at or beyond the cursor."""
        return bisect_left(self.a, cursor)


def merged(lists: list[Sites]) -> Sites:
    """A union, in order; at one and the same station the list named first leads."""
    if len(lists) == 1:
        return lists[0]
    order = sorted(
        (a, k, b, p) for k, s in enumerate(lists) for a, b, p in zip(s.a, s.b, s.p, strict=True)
    )
    return Sites([x[0] for x in order], [x[2] for x in order], [x[3] for x in order])


def gap(left: int, right: int) -> int:
    """The station of the point between element `left` and a later element `right`."""
    return 4 * right - 3 if right - left == 1 else 2 * (left + right) + 1


class SiteFinder:
    """The sites of one fabric by target, each list made once.

    On a closed fabric a site that straddles the start is listed by its end
    near the end: `a` is in the first round, `b` may be beyond it. A point is
    listed by its station in the first round.
    """

    def __init__(self, fabric: Fabric, chains_count: bool) -> None:
        self.fabric = fabric
        self.chains_count = chains_count
        self.round = 4 * len(fabric.kinds)
        self._made: dict[Target, Sites] = {}

    def sites(self, target: Target) -> Sites:
        if (found := self._made.get(target)) is None:
            found = self._made[target] = self._find(target)
        return found

    def is_atom(self, element: int) -> bool:
        """Whether an element, counted on round a closed fabric, is an atom and no picot."""
        return self._kind(element) != PICOT

    def _find(self, target: Target) -> Sites:
        match target:
            case Whole(of=kind):
                return self._whole(kind)
            case Part(nth=nth, unit=unit, of=of):
                return self._parts(nth, unit, of)
            case Centre(of=of):
                return self._centres(of)
            case Between(of=of):
                return self._between(of)
            case BetweenPicots(of=of):
                return self._between_picots(of)
            case _:
                assert_never(target)

    # --- whole sites ----------------------------------------------------------

    def _whole(self, kind: Kind) -> Sites:
        f = self.fabric
        if kind.name == "joint":
            return self._joints()
        if f.base:
            place = kind.name in ("st", "loop", "space", "picot", "ch")
            return self._elements(lambda k: place)
        match kind.name:
            case "st":
                counts = self.chains_count
                return self._elements(lambda k: k != PICOT and (counts or k != CHAIN))
            case "loop" | "space":
                return self._runs(kind, lambda k: k == CHAIN, together=False)
            case "group":
                return self._runs(kind, lambda k: k in STITCHES, together=True)
            case "block":
                return self._runs(kind, lambda k: k in STITCHES, together=False)
            case name:
                return self._elements(lambda k: k == name)

    def _elements(self, wanted: Callable[[str], bool]) -> Sites:
        f = self.fabric
        known = {k: wanted(k) for k in set(f.kinds)}
        at = [i for i, k in enumerate(f.kinds) if known[k]]
        return Sites([4 * i for i in at], [4 * i + 2 for i in at], [f.pos[i] for i in at])

    def _runs(self, kind: Kind, wanted: Callable[[str], bool], *, together: bool) -> Sites:
        """Longest runs of wanted atoms; `together`: all worked into one and the same site."""
        least = 1 if kind.name in ("loop", "space") else 2
        found = Sites([], [], [])
        for run in self._all_runs(wanted, together):
            if kind.stitch and any(self._kind(i) != kind.stitch for i in run):
                continue
            if len(run) >= least and (kind.size is None or kind.size == len(run)):
                found.a.append(4 * run[0])
                found.b.append(4 * run[-1] + 2)
                found.p.append((self._pos(run[0]) + self._pos(run[-1])) // 2)
        return found

    def _all_runs(self, wanted: Callable[[str], bool], together: bool) -> Iterator[list[int]]:
        """Runs of element numbers; one that straddles the start counts on beyond the last."""
        f = self.fabric
        runs: list[list[int]] = []
        broken = True
        for i, kind in enumerate(f.kinds):
            if kind == PICOT:
                continue
            if not wanted(kind):
                broken = True
                continue
            if broken or (together and not self._one_site(runs[-1][-1], i)):
                runs.append([i])
            else:
                runs[-1].append(i)
            broken = False
        if f.line.closed and len(runs) > 1 and self._meet(runs[-1], runs[0], together):
            n = len(f.kinds)
            runs = [*runs[1:-1], [*runs[-1], *(i + n for i in runs[0])]]
        yield from runs

    def _one_site(self, i: int, j: int) -> bool:
        into = self.fabric.into
        return into[i] == into[j] != ALONE

    def _meet(self, last: list[int], first: list[int], together: bool) -> bool:
        """Whether nothing but picots stands between the last run and the first."""
        kinds = self.fabric.kinds
        between = [*kinds[last[-1] + 1 :], *kinds[: first[0]]]
        if any(k != PICOT for k in between):
            return False
        return not together or self._one_site(last[-1], first[0])

    def _joints(self) -> Sites:
        """Joints, each in the gap before the first atom that stands at or behind its point."""
        f = self.fabric
        atoms = [i for i, k in enumerate(f.kinds) if k != PICOT] or list(range(len(f.kinds)))
        reached = list(accumulate((f.pos[i] for i in atoms), max))
        found = []
        for index in f.line.joints:
            point = f.line.stretches[index].start * f.tick
            if f.line.closed:  # told within the round that begins with the first atom
                point += (f.pos[atoms[0]] + f.length - point) // f.length * f.length
            at = bisect_left(reached, point)
            element = atoms[at] if at < len(atoms) else len(f.kinds)
            found.append((4 * element - 1, point))
        found.sort()
        stations = [a for a, _ in found]
        return Sites(stations, [a + 1 for a in stations], [p for _, p in found])

    # --- parts and points -----------------------------------------------------

    def _kind(self, element: int) -> str:
        return self.fabric.kinds[element % len(self.fabric.kinds)]

    def _pos(self, element: int) -> int:
        lap, i = divmod(element, len(self.fabric.kinds))
        return self.fabric.pos[i] + lap * self.fabric.length

    def _inside(self, a: int, b: int) -> range:
        """The elements of a site."""
        return range(a // 4, (b + 2) // 4)

    def _collected(self, found: list[tuple[int, int, int]]) -> Sites:
        """Parts and points told by their stations in the first round, in order."""
        lap = self.round
        home = []
        for a, b, p in found:
            rounds = a // lap
            home.append((a - rounds * lap, b - rounds * lap, p - rounds * self.fabric.length))
        home.sort()
        return Sites([x[0] for x in home], [x[1] for x in home], [x[2] for x in home])

    def _parts(self, nth: int, unit: Kind, of: Kind) -> Sites:
        f = self.fabric
        if f.base:
            return Sites([], [], [])
        found = []
        whole = self.sites(Whole(of))
        for a, b in zip(whole.a, whole.b, strict=True):
            atoms = [e for e in self._inside(a, b) if self._is_unit(self._kind(e), unit)]
            if len(atoms) >= abs(nth):
                e = atoms[nth - 1 if nth > 0 else -1]
                found.append((4 * e, 4 * e + 2, self._pos(e)))
        return self._collected(found)

    def _is_unit(self, kind: str, unit: Kind) -> bool:
        if unit.name == "st":
            return kind in STITCHES or (self.chains_count and kind == CHAIN)
        return kind == unit.name

    def _centres(self, of: Kind) -> Sites:
        found = []
        whole = self.sites(Whole(of))
        for a, b in zip(whole.a, whole.b, strict=True):
            inside = self._inside(a, b)
            atoms = [e for e in inside if self._kind(e) != PICOT] or list(inside)
            left, right = atoms[(len(atoms) - 1) // 2], atoms[len(atoms) // 2]
            if left == right:
                found.append((4 * left, 4 * left + 2, self._pos(left)))
            else:
                at = gap(left, right)
                found.append((at, at + 1, (self._pos(left) + self._pos(right)) // 2))
        return self._collected(found)

    def _between(self, of: Kind) -> Sites:
        s = self.sites(Whole(of))
        pairs = [(i, i + 1, 0) for i in range(len(s) - 1)]
        if self.fabric.line.closed and len(s) > 1:
            pairs.append((len(s) - 1, 0, 1))
        found = []
        for i, j, lap in pairs:
            left, right = (s.b[i] - 2) // 4, s.a[j] // 4 + lap * len(self.fabric.kinds)
            at = gap(left, right)
            middle = (s.p[i] + s.p[j] + lap * self.fabric.length) // 2
            found.append((at, at + 1, middle))
        return self._collected(found)

    def _between_picots(self, of: Kind) -> Sites:
        found = []
        whole = self.sites(Whole(of))
        n = len(self.fabric.kinds)
        for a, b in zip(whole.a, whole.b, strict=True):
            end = (b + 2) // 4
            while end < a // 4 + n and self._kind(end) == PICOT:
                end += 1
            picots = [e for e in range(a // 4, end) if self._kind(e) == PICOT]
            if len(picots) == 2:
                left, right = picots
                at = gap(left, right)
                found.append((at, at + 1, (self._pos(left) + self._pos(right)) // 2))
        return self._collected(found)
