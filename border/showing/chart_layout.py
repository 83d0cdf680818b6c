"""Where the symbols of a chart stand: each stitch over its position, its foot where it is worked.

The rounds lie in bands, one above the other. Points are complex numbers in
pixels: along the edge in its own working order, and upwards. Nothing of one
round comes over another, and stitches of a round are moved apart as little as
will do.
"""

from __future__ import annotations

from collections import defaultdict
from math import sqrt

from border.showing.chart_parts import BESIDE, OVAL, Layer, Symbol, picot_height
from border.showing.chart_window import Key, Window, keys, own_position
from border.showing.side_by_side import side_by_side
from border.stitches import STITCHES
from border.working.fabric import CHAIN, PICOT, Fabric
from border.working.stations import Stations

UNIT = 9.0
"""Height of one chain."""
GAP = 6.0
"""Between two bands."""
WIDTH = {CHAIN: 7.5, "ss": 9.0, "sc": 12.0}
BROAD = 13.0
"""Width of all other stitches."""
PICOT_WIDTH = 17.0
FEET = 4.5
"""Between feet that stand apart."""


def width_needed(fabric: Fabric, start: float, end: float) -> float:
    """How wide the stitches of a stretch are side by side, in pixels."""
    return sum(_width(fabric, index) for _, (index, _) in keys(fabric, start, end))


def _width(fabric: Fabric, index: int) -> float:
    kind = fabric.kinds[index]
    if kind == PICOT:
        behind = fabric.kinds[index - 1] == PICOT
        return PICOT_WIDTH if behind else PICOT_WIDTH - WIDTH[CHAIN]
    return WIDTH.get(kind, BROAD) + 3.0 * (fabric.legs.get(index, 1) - 1)


def layer(fabric: Fabric, below: Fabric, under: Layer, window: Window) -> Layer:
    """A round over the one below it, which is given as it is worked into."""
    return _Round(fabric, below, under, window).laid()


class _Round:
    def __init__(self, fabric: Fabric, below: Fabric, under: Layer, window: Window) -> None:
        self.fabric, self.below, self.under, self.window = fabric, below, under, window
        self.stations = Stations(below)
        self.bottom = under.top + GAP
        found = keys(fabric, window.start - BESIDE, window.end + BESIDE)
        self.atoms = [(p, k) for p, k in found if fabric.kinds[k[0]] != PICOT]
        self.picots: dict[Key, list[Key]] = defaultdict(list)
        for _, (i, lap) in found:
            if fabric.kinds[i] == PICOT:
                atom = i
                while fabric.kinds[atom] == PICOT and atom:
                    atom -= 1
                self.picots[atom, lap].append((i, lap))
        self.tops: dict[Key, complex] = {}
        self.symbols: list[Symbol] = []
        self.top = self.bottom

    def laid(self) -> Layer:
        for (_, key), x in zip(self.atoms, self._apart(), strict=True):
            kind = self.fabric.kinds[key[0]]
            height = STITCHES[kind].height * UNIT if kind != CHAIN else 0.0
            self.tops[key] = complex(x, self.bottom + max(height, 5.0))
        self._arches()
        self._feet()
        self._on_top()
        return Layer(self.symbols, self.tops, self.bottom, self.top)

    # --- feet -----------------------------------------------------------------------

    def _site(self, number: int, position: float) -> list[complex]:
        """The tops of what a site has, as far as they are laid out. `position`: of the stitch."""
        elements = self.stations.standing_in(number)
        atoms = [e for e in elements if not self._is_picot(e)]
        tops = (self._top_below(e, position) for e in atoms or elements)
        return [top for top in tops if top is not None]

    def _is_picot(self, element: int) -> bool:
        return not self.below.base and self.below.kinds[element % len(self.below.kinds)] == PICOT

    def _top_below(self, element: int, position: float) -> complex | None:
        """The top of an element of the row below, of that lap which lies nearest to a position."""
        index = element % len(self.below.kinds)
        around = (position - own_position(self.below, index)) / self.below.line.length
        return self.under.tops.get((index, round(around) if self.below.line.closed else 0))

    def _numbers(self, key: Key) -> tuple[int, ...]:
        """The numbers of the sites that a stitch stands in."""
        return self.fabric.feet.get(key[0]) or (self.fabric.into[key[0]],)

    def _foot(self, position: float, number: int) -> complex:
        """The middle of a site, on top of it."""
        if tops := self._site(number, position):
            return complex(sum(t.real for t in tops) / len(tops), max(t.imag for t in tops))
        x = position * self.window.scale  # out of sight
        return complex(x, self.under.top)

    def _middle(self, position: float, key: Key) -> float:
        """Where a stitch would stand if it had no neighbours: over the middle of its feet."""
        feet = [self._foot(position, number) for number in self._numbers(key)]
        return sum(foot.real for foot in feet) / len(feet)

    def _feet(self) -> None:
        """The symbols of the stitches; those of one open place have their feet apart over it."""
        stand = [
            (number, position, key, leg)
            for position, key in self.atoms
            if self.fabric.kinds[key[0]] != CHAIN
            for leg, number in enumerate(self._legs(key))
        ]
        together: dict[tuple[int, int], list[tuple[Key, int]]] = defaultdict(list)
        for number, position, key, leg in stand:
            lap = round(position / self.fabric.line.length - 0.5)
            together[number, lap].append((key, leg))
        shift = {
            one: (i - (len(group) - 1) / 2) * (FEET if self._open(number) else 0.0)
            for (number, _), group in together.items()
            for i, one in enumerate(group)
        }
        feet: dict[Key, list[complex]] = defaultdict(list)
        for number, position, key, leg in stand:
            feet[key].append(self._foot(position, number) + shift[key, leg])
        for key, on in feet.items():
            self._add(self.fabric.kinds[key[0]], key, tuple(on))

    def _legs(self, key: Key) -> list[int]:
        """For each leg of a stitch the number of its site."""
        numbers = self._numbers(key)
        legs = self.fabric.legs.get(key[0], 1)
        return [numbers[leg * len(numbers) // legs] for leg in range(legs)]

    def _open(self, number: int) -> bool:
        """Whether a site is a space, a loop, or several stitches at once."""
        elements = self.stations.standing_in(number)
        if self.below.base:
            return self.below.kinds[0] in ("loop", "picot")
        return sum(not self._is_picot(e) for e in elements) > 1

    # --- along the round --------------------------------------------------------------

    def _apart(self) -> list[float]:
        """Where the atoms stand side by side: as near as may be to where they would stand."""
        wanted, wide = [], []
        for position, key in self.atoms:
            chain = self.fabric.kinds[key[0]] == CHAIN
            wanted.append(position * self.window.scale if chain else self._middle(position, key))
            on_it = len(self.picots.get(key, ()))
            wide.append(max(_width(self.fabric, key[0]), on_it * PICOT_WIDTH))
        return side_by_side(wanted, wide)

    def _arches(self) -> None:
        """The chains hung in an arch between the stitches on either side."""
        run: list[Key] = []
        before: complex | None = None
        for _, key in [*self.atoms, (0.0, None)]:
            if key is not None and self.fabric.kinds[key[0]] == CHAIN:
                run.append(key)
                continue
            after = self.tops[key] if key is not None else None
            if run:
                self._arch(run, before, after)
            run, before = [], after

    def _arch(self, run: list[Key], before: complex | None, after: complex | None) -> None:
        start = before if before is not None else self.tops[run[0]] - OVAL / 2
        end = after if after is not None else self.tops[run[-1]] + OVAL / 2
        start, end = start + 3, end - 3
        far = max(abs(end - start), 1.0)
        slack = max(len(run) * OVAL - far, 0.0)
        rise = max(sqrt(3 * far * slack / 8), 2.0) * 2
        level = max(start.imag, end.imag) + rise
        peak = complex((start.real + end.real) / 2, level)
        for n, key in enumerate(run):
            t = (n + 0.5) / len(run)
            at = (1 - t) ** 2 * start + 2 * t * (1 - t) * peak + t**2 * end
            slant = (1 - t) * (peak - start) + t * (end - peak)
            self.tops[key] = at
            self.symbols.append(Symbol(CHAIN, at, slant=slant / abs(slant), seen=self._seen(key)))

    def _on_top(self) -> None:
        """Picots on what they stand on, and how high the band becomes."""
        self.top = max((top.imag for top in self.tops.values()), default=self.bottom) + 3
        for atom, picots in self.picots.items():
            if atom in self.tops:
                for n, key in enumerate(picots):
                    at = self.tops[atom] + (n - (len(picots) - 1) / 2) * PICOT_WIDTH
                    size = self.fabric.rings[key[0]]
                    self.symbols.append(Symbol(PICOT, at, size=size, seen=self._seen(key)))
                    self.tops[key] = at + 1j * picot_height(size)
                    self.top = max(self.top, self.tops[key].imag)

    def _add(self, kind: str, key: Key, feet: tuple[complex, ...]) -> None:
        self.symbols.append(Symbol(kind, self.tops[key], feet, seen=self._seen(key)))

    def _seen(self, key: Key) -> bool:
        at = own_position(self.fabric, key[0]) + key[1] * self.fabric.line.length
        return self.window.has(at)
