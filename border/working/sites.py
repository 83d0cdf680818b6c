"""Sites: the places of a fabric that stitches can be worked into, by what a text calls them."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterator
from itertools import accumulate, pairwise
from typing import assert_never

from border.stitches import STITCHES
from border.text.tree import (
    AtOnce,
    Between,
    BetweenPicots,
    Centre,
    Kind,
    Part,
    Target,
    Whole,
)
from border.working.fabric import ALONE, CHAIN, PICOT, Fabric
from border.working.stations import Sites, Stations, as_one

OUT = -2
"""The mark of an atom that belongs to no run."""


class SiteFinder(Stations):
    """The sites of one fabric by target, each list made once.

    On a closed fabric a site that straddles the start is listed by its end
    near the end: `a` is in the first round, `b` may be beyond it. A point is
    listed by its station in the first round.
    """

    def __init__(self, fabric: Fabric, chains_count: bool) -> None:
        super().__init__(fabric)
        self.chains_count = chains_count
        self.has_chains = not fabric.base and any(fabric.kinds[i] == CHAIN for i in self.atoms)
        self._made: dict[Target, Sites] = {}

    def sites(self, target: Target) -> Sites:
        """All sites of a target, in order; each kind is looked for once."""
        if (found := self._made.get(target)) is None:
            found = self._made[target] = self._find(target)
        return found

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
            case AtOnce(count=count, of=of):
                return self._at_once(count, of)
            case _:
                assert_never(target)

    # --- whole sites ----------------------------------------------------------

    def _whole(self, kind: Kind) -> Sites:
        f = self.fabric
        if kind.name == "joint":
            return self._joints()
        if f.base:
            place = kind.name in ("st", "loop", "space", "shell", "picot", "ch")
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
            case "shell":
                return self._runs(kind, lambda k: k in STITCHES, together=True, over_chains=True)
            case "block":
                return self._runs(kind, lambda k: k in STITCHES, together=False)
            case "run":
                return self._runs(kind, lambda k: k == kind.stitch, together=False)
            case name:
                return self._atoms_that(lambda k: k == name)

    def _atoms_that(self, wanted: Callable[[str], bool]) -> Sites:
        f, step = self.fabric, self.step
        known = {k: wanted(k) for k in set(f.kinds)}
        ends = [*self.atoms[1:], len(f.kinds)]
        at = [(i, j) for i, j in zip(self.atoms, ends, strict=False) if known[f.kinds[i]]]
        b = [step * j - step + 4 for _, j in at]
        return Sites([step * i for i, _ in at], b, [f.pos[i] for i, _ in at])

    def _picots(self) -> Sites:
        """Each picot, from the first station of its atom on."""
        f, step = self.fabric, self.step
        at = [i - 1 for i, k in enumerate(f.kinds) if k == PICOT and i not in f.covered]
        return Sites([step * i for i in at], [step * i + 4 for i in at], [f.pos[i] for i in at])

    def _runs(
        self,
        kind: Kind,
        wanted: Callable[[str], bool],
        *,
        together: bool,
        over_chains: bool = False,
    ) -> Sites:
        """Longest runs of wanted atoms; `together`: all worked into one and the same site;
        `over_chains`: with the chains that stand between them."""
        f, step, least = self.fabric, self.step, 1 if kind.name in ("loop", "space", "run") else 2
        found = [
            (i, j)
            for i, j in self._all_runs(wanted, together, over_chains)
            if j - i >= least and kind.size in (None, j - i)
        ]
        over = max(found[-1][1] - len(self.atoms), 0) + 1 if found else 0
        at = [*self.atoms, *(i + len(f.kinds) for i in self.atoms[:over])]
        if kind.stitch and kind.name == "space":
            found = [(i, j) for i, j in found if self._beside(i, j) == {kind.stitch}]
        elif kind.stitch:
            found = [(i, j) for i, j in found if {*map(self._kind, at[i:j])} == {kind.stitch}]
        pos = [f.pos[i] for i in self.atoms]
        pos += [p + f.length for p in pos[:over]]
        return Sites(
            [step * at[i] for i, _ in found],
            [step * at[j] - step + 4 for _, j in found],
            [(pos[i] + pos[j - 1]) // 2 for i, j in found],
        )

    def _beside(self, start: int, stop: int) -> set[str]:
        """What stands before and behind a run of atoms by number; at an open end, nothing."""
        lap = len(self.atoms)
        if not self.fabric.line.closed and (start == 0 or stop == lap):
            return set()
        return {self._kind(self.atoms[n % lap]) for n in (start - 1, stop)}

    def _all_runs(
        self, wanted: Callable[[str], bool], together: bool, over_chains: bool
    ) -> list[tuple[int, int]]:
        """Runs as [start, stop) of atoms by number; one across the start runs on and is last."""
        f, lap = self.fabric, len(self.atoms)
        among = [n for n in range(lap) if not over_chains or f.kinds[self.atoms[n]] != CHAIN]
        atoms = [self.atoms[n] for n in among]
        known = {k: wanted(k) for k in set(f.kinds)}
        if together:  # atoms that were worked into no one site are each a run of their own
            into = [f.into[i] if f.into[i] != ALONE else OUT - 1 - i for i in atoms]
            marks = [m if known[f.kinds[i]] else OUT for i, m in zip(atoms, into, strict=True)]
        else:
            marks = [0 if known[f.kinds[i]] else OUT for i in atoms]
        changes = (n for n, (one, next_) in enumerate(pairwise(marks), 1) if one != next_)
        ends = pairwise((0, *changes, len(marks))) if marks else ()
        runs = [(i, j) for i, j in ends if marks[i] != OUT]
        if f.line.closed and len(runs) > 1 and marks[0] == marks[-1] != OUT:
            runs = [*runs[1:-1], (runs[-1][0], len(atoms) + runs[0][1])]
        among += [n + lap for n in among]
        return [(among[i], among[j - 1] + 1) for i, j in runs]

    def _joints(self) -> Sites:
        """Joints, each in the gap before the first atom that stands at or behind its point."""
        f, atoms = self.fabric, self.atoms
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
        first, last = self.number(a // self.step), self.number((b - 4) // self.step)
        return [self.element(n) for n in range(first, last + 1)]

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
                found.append((self.step * e, self.behind(e), self._pos(e)))
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
                found.append((self.step * left, self.behind(left), self._pos(left)))
            else:
                at = self.behind(left) - 1
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

    def _at_once(self, count: int, of: Kind) -> Sites:
        """So many neighbours as one; on a closed fabric the last go on with the first."""
        s = self.sites(Whole(of))
        if not self.fabric.line.closed or count > len(s):
            return as_one(s, count)
        more, lap, length = count - 1, self.round, self.fabric.length
        on = Sites(
            s.a + [a + lap for a in s.a[:more]],
            s.b + [b + lap for b in s.b[:more]],
            s.p + [p + length for p in s.p[:more]],
        )
        return as_one(on, count)

    def _picots_on(self, element: int) -> list[int]:
        """The picots that stand on an atom: how many elements before each, from the atom on."""
        f, lap = self.fabric, len(self.fabric.kinds)
        behind = range(element + 1, self.behind(element) // self.step + 1)
        return [e - element - 1 for e in behind if e % lap not in f.covered]

    def _between_picots(self, of: Kind) -> Sites:
        found = []
        for atoms in self._with_atoms(of):
            on = [(e, k) for e in atoms for k in self._picots_on(e)]
            if len(on) == 2:
                (e, i), (g, j) = on
                at = self.between(self.step * (e + i) + 4, self.step * (g + j))
                found.append((at, at + 1, (self._pos(e) + self._pos(g)) // 2))
        return self._collected(found)
