"""The fabric: what stands on the edge after a row, in working order.

A fabric is a sequence of *elements*: atoms (stitches and single chains; the
places of the edge in row 0) and, each behind the atom that it stands on, the
picots, which are no atoms. What lies under an arch of the row itself is covered: it
is counted, but is no atom either, and goes like a picot with the atom before it.
Positions are in ticks of the edge line; every position is a multiple of `SPARE`, so
that the halves that the next row takes of them (a group's middle, the point between
two, stitches worked together, an arch over those, chains between) stay whole.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct, field

from border.working.line import Line, line_of
from border.yoke.edges import Edge

SPARE = 32
CHAIN = "ch"
PICOT = "picot"
ALONE = -1
"""The `into` of an element that was worked into no one site."""
ARCH = -(1 << 30)
"""The `into` of what fills an arch of its own row is less by the first element under that."""


class Fabric(Struct):
    """A worked row, or (`base`) the edge itself.

    Parallel lists over the elements: `kinds` (`ch`, `picot`, a canonical
    stitch; on the edge the kind of its places), `pos` (ticks, never falling
    but where stitches cross), `into` (a number for the site that a stitch was
    worked into, `ALONE` for none). `rings`: chains of each picot, `legs`:
    stitches in each cluster, `feet`: the sites, by number, of a cluster over
    several, `covered`: what lies under an arch, all by element.
    """

    line: Line
    tick: int
    kinds: list[str]
    pos: list[int]
    into: list[int]
    base: bool = False
    rings: dict[int, int] = field(default_factory=dict)
    legs: dict[int, int] = field(default_factory=dict)
    feet: dict[int, tuple[int, ...]] = field(default_factory=dict)
    covered: frozenset[int] = frozenset()

    @property
    def length(self) -> int:
        """The length of the line in ticks."""
        return self.line.length * self.tick

    @property
    def atoms(self) -> list[int]:
        """The elements that are atoms, which the next row meets."""
        if self.base:
            return list(range(len(self.kinds)))
        covered = self.covered
        return [i for i, k in enumerate(self.kinds) if k != PICOT and i not in covered]

    def turned(self) -> Fabric:
        """The same fabric seen from the other side: order and line reversed.

        A picot stays with its atom, so it comes behind that again, and so does what is covered
        (none stands before all).
        """
        order = self.order_turned()
        return Fabric(
            self.line.turned(),
            self.tick,
            [self.kinds[i] for i in order],
            [self.length - self.pos[i] for i in order],
            [self.into[i] for i in order],
            self.base,
            {new: self.rings[old] for new, old in enumerate(order) if old in self.rings},
            {new: self.legs[old] for new, old in enumerate(order) if old in self.legs},
            {new: self.feet[old] for new, old in enumerate(order) if old in self.feet},
            frozenset(new for new, old in enumerate(order) if old in self.covered),
        )

    def order_turned(self) -> list[int]:
        """The elements in the order in which they come on the turned fabric."""
        order: list[int] = []
        tail: list[int] = []
        for i in range(len(self.kinds) - 1, -1, -1):
            if self.kinds[i] == PICOT or i in self.covered:
                tail.append(i)
            else:
                order.append(i)
                order += reversed(tail)
                tail = []
        return order


def has_no_stitch(kinds: Iterable[str]) -> bool:
    """Whether a row puts no stitch at all on the work: chains and picots alone, or nothing."""
    return all(kind in (CHAIN, PICOT) for kind in kinds)


def edge_fabric(edge: Edge) -> Fabric:
    """Row 0: the places of the edge, each at its middle."""
    tick = 2 * SPARE
    n = edge.places
    return Fabric(
        line_of(edge),
        tick,
        [edge.of] * n,
        list(range(SPARE, n * tick, tick)),
        [ALONE] * n,
        base=True,
    )


def settle(fabric: Fabric) -> Fabric:
    """A row as it was worked, made ready to be worked into.

    Chains get the position half-way between the stitches on either side,
    picots that of their atom; then the ticks are made as coarse as they may be.
    What has no atom before it goes with the one after.
    """
    _place_chains(fabric)
    _place_picots(fabric)
    _atom_first(fabric)
    _rescale(fabric)
    return fabric


def _place_chains(fabric: Fabric) -> None:
    kinds, pos = fabric.kinds, fabric.pos
    stitches = [i for i, k in enumerate(kinds) if k not in (CHAIN, PICOT)]
    if not stitches:
        return
    first, last = stitches[0], stitches[-1]
    before = last
    for after in stitches:
        if after - before > 1:
            pos[before + 1 : after] = [(pos[before] + pos[after]) // 2] * (after - before - 1)
        before = after
    if fabric.line.closed:
        across = (pos[last] + pos[first] + fabric.length) // 2
        pos[last + 1 :] = [across] * (len(kinds) - last - 1)
        pos[:first] = [across - fabric.length] * first
    else:
        pos[last + 1 :] = [pos[last]] * (len(kinds) - last - 1)
        pos[:first] = [pos[first]] * first


def _place_picots(fabric: Fabric) -> None:
    if not fabric.rings:
        return
    kinds, pos = fabric.kinds, fabric.pos
    at = next((p for kind, p in zip(kinds, pos, strict=True) if kind != PICOT), 0)
    for i, kind in enumerate(kinds):
        if kind == PICOT:
            pos[i] = at
        else:
            at = pos[i]


def _atom_first(fabric: Fabric) -> None:
    """Move what opens a row, and is no atom, behind its first atom and the picots on that."""
    first = next(iter(fabric.atoms), 0)
    if not first:
        return
    end = first + 1
    while end < len(fabric.kinds) and fabric.kinds[end] == PICOT:
        end += 1
    order = [*range(first, end), *range(first), *range(end, len(fabric.kinds))]
    fabric.kinds = [fabric.kinds[i] for i in order]
    fabric.pos = [fabric.pos[i] for i in order]
    fabric.into = [fabric.into[i] for i in order]
    to = {old: new for new, old in enumerate(order[:end])}
    fabric.rings = {to.get(i, i): n for i, n in fabric.rings.items()}
    fabric.legs = {to.get(i, i): n for i, n in fabric.legs.items()}
    fabric.feet = {to.get(i, i): sites for i, sites in fabric.feet.items()}
    fabric.covered = frozenset(to.get(i, i) for i in fabric.covered)


def _rescale(fabric: Fabric) -> None:
    """Shift all positions so that they are multiples of `SPARE` again."""
    bits = fabric.tick // 2
    for p in fabric.pos:
        bits |= p
    shift = (SPARE // (bits & -bits)).bit_length() - 1 if bits & -bits < SPARE else 0
    if shift:
        fabric.tick <<= shift
        fabric.pos = [p << shift for p in fabric.pos]
        return
    down = (bits & -bits).bit_length() - SPARE.bit_length()
    if down > 0:
        fabric.tick >>= down
        fabric.pos = [p >> down for p in fabric.pos]
