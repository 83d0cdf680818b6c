"""Stations: where along a fabric its sites begin and end.

There are `step` stations to an element. An atom covers [step i, step j + 4), where
j is the last picot that stands on it, or itself: working it passes what stands on
it. The picots of an atom lie one behind the other within that, and so does what an arch
covers behind it. A point between
atoms has the last station before the next of them could begin, step j + 3; a point
in the middle of an atom, step i + 1; the joints in a gap follow from step j + 4.
So a cursor behind a site has passed a point at that site's end, but no joint there,
and a cursor on a point has not passed the atom behind it: "at or beyond" and
"strictly beyond" are one comparison. On a closed fabric stations run on: one round
more is step x its elements.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from msgspec import Struct

from border.working.fabric import PICOT, Fabric


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


def merged(lists: list[Sites]) -> Sites:
    """A union, in order; at one and the same station the list named first leads."""
    if len(lists) == 1:
        return lists[0]
    order = sorted(
        (a, k, b, p) for k, s in enumerate(lists) for a, b, p in zip(s.a, s.b, s.p, strict=True)
    )
    return Sites([x[0] for x in order], [x[2] for x in order], [x[3] for x in order], True)


def as_one(s: Sites, count: int) -> Sites:
    """So many neighbours at a time, each time as one site, from each of them on."""
    begun = max(len(s) - count + 1, 0)
    ends = slice(count - 1, None)
    middles = [(p + q) // 2 for p, q in zip(s.p, s.p[ends], strict=False)]
    return Sites(s.a[:begun], s.b[ends], middles)


class Stations:
    """The stations of one fabric. Elements and atoms are numbered on round a closed one."""

    def __init__(self, fabric: Fabric) -> None:
        self.fabric = fabric
        self.step = 6 + 2 * len(fabric.line.joints)
        self.round = self.step * len(fabric.kinds)
        self.at_start = self.round - self.step + 3
        """The station of a point just at the start of a closed fabric, in the first round."""
        self.atoms = fabric.atoms

    def between(self, left: int, right: int) -> int:
        """The station of the point half-way between two sites: `left` is the station behind
        the one before it, `right` the first of the one behind it."""
        before, behind = (left - 4) // self.step, -(-right // self.step)
        i, j = self.number(before), self.number(behind)
        if i == j:  # two picots of one atom
            return self.step * behind - self.step + 3
        middle = self.element((i + j + 1) // 2)
        return self.step * middle + (1 if (i + j) % 2 == 0 else 3 - self.step)

    def touch(self, one: tuple[int, int], other: tuple[int, int]) -> bool:
        """Whether two sites have something in common.

        A point at the end of a site is not in it, and a picot is none of its stitch.
        """
        (a, b), (c, d) = one, other
        if one == other or not (a < d and c < b):
            return one == other
        if self._is_picot(one) or self._is_picot(other):
            return False
        return b != d or 1 not in (b - a, d - c)

    def _is_picot(self, site: tuple[int, int]) -> bool:
        """A picot has the stations of one element, and is the element behind that."""
        kinds = self.fabric.kinds
        behind = (site[0] // self.step + 1) % len(kinds)
        return site[1] - site[0] == 4 and not self.fabric.base and kinds[behind] == PICOT

    def number(self, element: int) -> int:
        """The number among the atoms of an element, or of what it stands on; laps run on."""
        lap, i = divmod(element, len(self.fabric.kinds))
        return lap * len(self.atoms) + max(bisect_right(self.atoms, i) - 1, 0)

    def element(self, number: int) -> int:
        """The element of an atom by its number."""
        lap, i = divmod(number, len(self.atoms))
        return lap * len(self.fabric.kinds) + self.atoms[i]

    def behind(self, element: int) -> int:
        """The station behind an atom and all that stands on it."""
        return self.step * self.element(self.number(element) + 1) - self.step + 4

    def standing_in(self, number: int) -> tuple[int, ...]:
        """The elements that a stitch of the next row is worked into, by the number in its `into`.

        Of a point between two, both of them. On a closed fabric they run on behind its end.
        """
        if number < 0:  # worked into no one site, or into an arch of its own row
            return ()
        start, width = divmod(number, 2 * self.round)
        first = start // self.step
        if width == 1:
            return (first,) if start % self.step == 1 else (first, first + 1)
        elements = range(first, (start + width - 1) // self.step + 1)
        if not self.fabric.covered:
            return tuple(elements)
        lap = len(self.fabric.kinds)
        return tuple(e for e in elements if e % lap not in self.fabric.covered)
