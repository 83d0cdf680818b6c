"""What a chart is made of: symbols, and the rounds that they lie in.

Points are complex numbers in pixels: along the edge in its own working order,
and upwards.
"""

from __future__ import annotations

from math import tau

from msgspec import Struct

from border.showing.chart_window import Key, Window, keys
from border.working.fabric import Fabric

OVAL = 11.0
"""Length of a chain."""
BESIDE = 4.0
"""Places drawn out of sight on both sides, so that what is seen stands as it would within."""
DROP = 16.0
"""How far the edge of a motif falls off to its joints."""


class Symbol(Struct, frozen=True):
    """One stitch, chain or picot. `feet`: one for each leg; `slant`: of a chain, as a direction.

    `seen`: it belongs to the stretch that is drawn. `size`: chains of a picot.
    """

    kind: str
    top: complex
    feet: tuple[complex, ...] = ()
    slant: complex = 1
    size: int = 0
    seen: bool = True


class Layer(Struct):
    """One round laid out: its symbols, where each element's top is, and the band's two edges."""

    symbols: list[Symbol]
    tops: dict[Key, complex]
    bottom: float
    top: float


def picot_radius(size: int) -> float:
    """Of the ring of a picot of so many chains."""
    return max(6.0, (size + 1) * 8.5 / tau)


def picot_height(size: int) -> float:
    """How far a picot of so many chains stands up, with room above it."""
    return 2 * picot_radius(size) + 7


def base_layer(fabric: Fabric, window: Window) -> Layer:
    """The places of the edge; on motifs in a gentle arch over each."""
    tops: dict[Key, complex] = {}
    symbols = []
    for position, key in keys(fabric, window.start - BESIDE, window.end + BESIDE):
        tops[key] = complex(position * window.scale, -drop(fabric, position))
        symbols.append(Symbol(fabric.kinds[key[0]], tops[key], seen=window.has(position)))
    return Layer(symbols, tops, -DROP, 0.0)


def drop(fabric: Fabric, position: float) -> float:
    """How far below the highest spot of its motif a point of the edge lies, in pixels."""
    line = fabric.line
    if not line.stretches:
        return 0.0
    at = position % line.length
    stretch = next((s for s in line.stretches if s.start <= at < s.end), line.stretches[-1])
    return fall((at - stretch.start) / (stretch.end - stretch.start or 1))


def fall(along: float) -> float:
    """How far below its highest spot a motif is, so far along it (of 1)."""
    return DROP * (2 * along - 1) ** 2
