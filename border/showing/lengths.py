"""Lengths as they are told: in the unit that fits, with the two digits that are known of them."""

from __future__ import annotations

from border.reckoning.stitch_sizes import Band
from border.showing.folding import length


def measure(mm: float) -> str:
    """`1.3 mm`, `24 mm`, `31 cm`, `2.4 m`; a length of no sign."""
    if mm < 0.95:
        return f"{mm:.1f} mm"
    return f"{mm:.2g} mm" if mm < 99.5 else length(mm)


def between(band: Band) -> str:
    """`16 to 20 cm`, `9.5 to 12 cm`; one length where both come to the same."""
    low, high = measure(band.low), measure(band.high)
    if low == high:
        return low
    (one, unit), (other, larger) = low.split(), high.split()
    if unit != larger:
        one = f"{band.low / (10 if larger == 'cm' else 1000):.2g}"
    return f"{one} to {other} {larger}"


def whole(mm: float) -> str:
    """A difference of lengths, whose tenths of a mm nobody knows: `8 mm`, `12 cm`."""
    return f"{mm:.0f} mm" if mm < 99.5 else length(mm)
