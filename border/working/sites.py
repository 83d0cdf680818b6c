"""Sites: the places of a fabric that stitches can be worked into.

A site stands at *stations* along the fabric, `step` of them to an element. An
atom covers [step i, step j + 4), where j is the last picot that stands on it, or
itself: working it passes what stands on it. The picots of an atom lie one behind
the other within that. A point between atoms has the last station before the next
of them could begin, step j + 3; a point in the middle of an atom, step i + 1; the
joints in a gap follow from step j + 4. So a cursor behind a site has passed a
point at that site's end, but no joint there, and a cursor on a point has not
passed the atom behind it: "at or beyond" and "strictly beyond" are one comparison.
On a closed fabric stations run on: one round more is step x its elements.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
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
    """Sites in the order of their first stations: `a` first, `b` behind the last, `p` position.

    `union`: of several targets, so that one may lie on the other.
    """

    a: list[int]
    b: list[int]
    p: list[int]
    union: bool = False

    def __len__(self) -> int:
        return len(self.a)

    def after(self, cursor: int) -> int:
        """The index of the first that starts at or beyond the cursor."""
        return bisect_left(self.a, cursor)

    def ahead(self, cursor: int) -> Sequence[int]:
        """The indices of those that can be worked one after the other from the cursor on.

        In a union, one that is worked passes those that it covers.
        """
        i = self.after(cursor)
        if not self.union:
            return range(i, len(self))
        found = []
        while i < len(self):
            found.append(i)
            i = self.after(self.b[i])
        return found


def touch(one: tuple[int, int], other: tuple[int, int]) -> bool:
    """Whether two sites have something in common. A point at the end of a site is not in it."""
    (a, b), (c, d) = one, other
    if one == other or not (a < d and c < b):
        return one == other
    return b != d or 1 not in (b - a, d - c)


def merged(lists: list[Sites]) -> Sites:
    """A union, in order; at one and the same station the list named first leads."""
    if len(lists) == 1:
        return lists[0]
    order = sorted(
        (a, k, b, p) for k, s in enumerate(lists) for a, b, p in zip(s.a, s.b, s.p, strict=True)
    )
    return Sites([x[0] for x in order], [x[2] for x in order], [x[3] for x in order], True)


def step_of(fabric: Fabric) -> int:
    """The stations of one element."""
    return 6 + 2 * len(fabric.line.joints)


def standing_in(number: int, below: Fabric) -> tuple[int, ...]:
    """The elements of the row below that a stitch was worked into, by the number in its `into`.

    Of a point between two, both of them. On a closed fabric they run on behind its end.
    """
    if number == ALONE:
        return ()
    step = step_of(below)
    start, width = divmod(number, 2 * step * len(below.kinds))
    first = start // step
    if width == 1:
        return (first,) if start % step == 1 else (first, first + 1)
    return tuple(range(first, (start + width - 1) // step + 1))


class SiteFinder:
    """The sites of one fabric by target, each list made once.

    On a closed fabric a site that straddles the start is listed by its end
    near the end: `a` is in the first round, `b` may be beyond it. A point is
    listed by its station in the first round.
    """

    def __init__(self, fabric: Fabric, chains_count: bool) -> None:
        self.fabric = fabric
        self.chains_count = chains_count
        self.step = step_of(fabric)
        self.round = self.step * len(fabric.kinds)
        self.at_start = self.round - self.step + 3
        """The station of a point just at the start of a closed fabric, in the first round."""
        self._atoms = [i for i, k in enumerate(fabric.kinds) if fabric.base or k != PICOT]
        self._made: dict[Target, Sites] = {}

    def sites(self, target: Target) -> Sites:
        if (found := self._made.get(target)) is None:
            found = self._made[target] = self._find(target)
        return found

    def between(self, left: int, right: int) -> int:
        """The station of the point half-way between two sites: `left` is the station behind
        the one before it, `right` the first of the one behind it."""
        before, behind = (left - 4) // self.step, -(-right // self.step)
        i, j = self._number(before), self._number(behind)
        if i == j:  # two picots of one atom
            return self.step * behind - self.step + 3
        middle = self._element((i + j + 1) // 2)
        return self.step * middle + (1 if (i + j) % 2 == 0 else 3 - self.step)

    def _number(self, element: int) -> int:
        """The number among the atoms of an element, or of what it stands on; laps run on."""
        lap, i = divmod(element, len(self.fabric.kinds))
        return lap * len(self._atoms) + max(bisect_right(self._atoms, i) - 1, 0)

    def _element(self, number: int) -> int:
        """The element of an atom by its number."""
        lap, i = divmod(number, len(self._atoms))
        return lap * len(self.fabric.kinds) + self._atoms[i]

    def _behind(self, element: int) -> int:
        """The station behind an atom and all that stands on it."""
        return self.step * self._element(self._number(element) + 1) - self.step + 4

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
            return self._atoms_that(lambda k: place)
        match kind.name:
            case "st":
                counts = self.chains_count
                return self._atoms_that(lambda k: counts or k != CHAIN)
            case "picot":
                return self._picots()
            case "loop" | "space":
                return self._runs(kind, lambda k: k == CHAIN, together=False)
            case "group":
                return self._runs(kind, lambda k: k in STITCHES, together=True)
            case "block":
                return self._runs(kind, lambda k: k in STITCHES, together=False)
            case name:
                return self._atoms_that(lambda k: k == name)

    def _atoms_that(self, wanted: Callable[[str], bool]) -> Sites:
        f, step = self.fabric, self.step
        known = {k: wanted(k) for k in set(f.kinds)}
        ends = [*self._atoms[1:], len(f.kinds)]
        at = [(i, j) for i, j in zip(self._atoms, ends, strict=False) if known[f.kinds[i]]]
        b = [step * j - step + 4 for _, j in at]
        return Sites([step * i for i, _ in at], b, [f.pos[i] for i, _ in at])

    def _picots(self) -> Sites:
        """Each picot, from the first station of its atom on."""
        f, step = self.fabric, self.step
        at = [i - 1 for i, k in enumerate(f.kinds) if k == PICOT]
        return Sites([step * i for i in at], [step * i + 4 for i in at], [f.pos[i] for i in at])

    def _runs(self, kind: Kind, wanted: Callable[[str], bool], *, together: bool) -> Sites:
        """Longest runs of wanted atoms; `together`: all worked into one and the same site."""
        least = 1 if kind.name in ("loop", "space") else 2
        found = Sites([], [], [])
        for run in self._all_runs(wanted, together):
            if kind.stitch and any(self._kind(i) != kind.stitch for i in run):
                continue
            if len(run) >= least and (kind.size is None or kind.size == len(run)):
                found.a.append(self.step * run[0])
                found.b.append(self._behind(run[-1]))
                found.p.append((self._pos(run[0]) + self._pos(run[-1])) // 2)
        return found

    def _all_runs(self, wanted: Callable[[str], bool], together: bool) -> Iterator[list[int]]:
        """Runs of element numbers; one that straddles the start counts on beyond the last."""
        f = self.fabric
        runs: list[list[int]] = []
        broken = True
        for i in self._atoms:
            if not wanted(f.kinds[i]):
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
        """Whether the last run and the first are neighbours across the start."""
        if first[0] != self._atoms[0] or last[-1] != self._atoms[-1]:
            return False
        return not together or self._one_site(last[-1], first[0])

    def _joints(self) -> Sites:
        """Joints, each in the gap before the first atom that stands at or behind its point."""
        f, atoms = self.fabric, self._atoms
        reached = list(accumulate((f.pos[i] for i in atoms), max))
        found = []
        for index in f.line.joints:
            point = f.line.stretches[index].start * f.tick
            if f.line.closed:  # told within the round that begins with the first atom
                point += (f.pos[atoms[0]] + f.length - point) // f.length * f.length
            at = bisect_left(reached, point)
            element = atoms[at] if at < len(atoms) else len(f.kinds)
            found.append((element, point))
        found.sort()
        stations = [self.step * (e - 1) + 4 + 2 * k for k, (e, _) in enumerate(found)]
        return Sites(stations, [a + 1 for a in stations], [p for _, p in found])

    # --- parts and points -----------------------------------------------------

    def _kind(self, element: int) -> str:
        return self.fabric.kinds[element % len(self.fabric.kinds)]

    def _pos(self, element: int) -> int:
        lap, i = divmod(element, len(self.fabric.kinds))
        return self.fabric.pos[i] + lap * self.fabric.length

    def _inside(self, a: int, b: int) -> list[int]:
        """The atoms of a site, by their elements."""
        first, last = self._number(a // self.step), self._number((b - 4) // self.step)
        return [self._element(n) for n in range(first, last + 1)]

    def _with_atoms(self, of: Kind) -> Iterator[list[int]]:
        """The atoms of every site of a kind; a picot and a joint have none."""
        if self.fabric.base or of.name not in (PICOT, "joint"):
            whole = self.sites(Whole(of))
            yield from (self._inside(a, b) for a, b in zip(whole.a, whole.b, strict=True))

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
        for inside in self._with_atoms(of):
            atoms = [e for e in inside if self._is_unit(self._kind(e), unit)]
            if len(atoms) >= abs(nth):
                e = atoms[nth - 1 if nth > 0 else -1]
                found.append((self.step * e, self._behind(e), self._pos(e)))
        return self._collected(found)

    def _is_unit(self, kind: str, unit: Kind) -> bool:
        if unit.name == "st":
            return kind in STITCHES or (self.chains_count and kind == CHAIN)
        return kind == unit.name

    def _centres(self, of: Kind) -> Sites:
        if not self.fabric.base and of.name in (PICOT, "joint"):
            return self.sites(Whole(of))
        found = []
        for atoms in self._with_atoms(of):
            left, right = atoms[(len(atoms) - 1) // 2], atoms[len(atoms) // 2]
            if left == right:
                found.append((self.step * left, self._behind(left), self._pos(left)))
            else:
                at = self._behind(left) - 1
                found.append((at, at + 1, (self._pos(left) + self._pos(right)) // 2))
        return self._collected(found)

    def _between(self, of: Kind) -> Sites:
        s = self.sites(Whole(of))
        pairs = [(i, i + 1, 0) for i in range(len(s) - 1)]
        if self.fabric.line.closed and len(s) > 1:
            pairs.append((len(s) - 1, 0, 1))
        found = []
        for i, j, lap in pairs:
            at = self.between(s.b[i], s.a[j] + lap * self.round)
            middle = (s.p[i] + s.p[j] + lap * self.fabric.length) // 2
            found.append((at, at + 1, middle))
        return self._collected(found)

    def _between_picots(self, of: Kind) -> Sites:
        found = []
        for atoms in self._with_atoms(of):
            on = [(e, k) for e in atoms for k in range(self._behind(e) // self.step - e)]
            if len(on) == 2:
                (e, i), (g, j) = on
                at = self.between(self.step * (e + i) + 4, self.step * (g + j))
                found.append((at, at + 1, (self._pos(e) + self._pos(g)) // 2))
        return self._collected(found)
