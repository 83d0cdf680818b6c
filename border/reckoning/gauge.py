"""The gauge: how long one loop is, and how far that can be trusted.

Without a swatch a loop is as long as once round the hook and the thread:
pi x (hook diameter + thread diameter). The thread's diameter follows from its tex and a
packed density of 0.9 g/cm3, an estimate for mercerised cotton. Trust it to 40 % either way.

Every swatch says by itself how long one loop is: the thread that it took, divided by the
loops drawn for it. With one swatch that is taken, to 6 % (estimate). With several it is
their mean, which is the line of least squares where a swatch is out by a share of its
length, whatever its length; and the band is Student's: what one more swatch of the same
hand would come out at, 9 times in 10. So a border is trusted to be no more like the
swatches than they are like each other. Lengths are in mm, tex in g/km.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import fsum, pi, sqrt

from msgspec import Struct

from border.stitches import loops_of

PACKED_DENSITY = 0.9e-3
"""Grams in one mm3 of packed thread: an estimate for mercerised cotton."""

UNMEASURED = 0.40
"""How far a loop can be out, either way, that no swatch has measured (estimate)."""

ONE_SWATCH = 0.06
"""How far a loop measured on one swatch of about 20 stitches can be out (estimate)."""

CLOSEST = 0.02
"""No thread is unravelled and measured closer than this, however well swatches agree
(estimate)."""

TIMES_IN_10 = 9
"""How often the band of several swatches holds, of 10 times."""

T_90 = (6.314, 2.920, 2.353, 2.132, 2.015, 1.943, 1.895, 1.860, 1.833, 1.812)
"""Student's t that is passed 1 time in 20 at either end, for 1 to 10 degrees of freedom
(NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2; written down from memory)."""


class Swatch(Struct, frozen=True):
    """So many of one stitch (canonical name, or `ch`), and the thread used up by them."""

    stitch: str
    stitches: int
    used_mm: float

    @property
    def loop_mm(self) -> float:
        """One loop, as this swatch has it."""
        return self.used_mm / (self.stitches * loops_of(self.stitch))


class Gauge(Struct, frozen=True):
    """The length of one loop, and the share of it that it can be out, either way."""

    loop_mm: float
    band: float
    swatches: tuple[Swatch, ...] = ()

    @property
    def calibrated(self) -> bool:
        return bool(self.swatches)

    @property
    def least_mm(self) -> float:
        """The shortest that a loop may be."""
        return self.loop_mm * max(1 - self.band, 0)

    @property
    def most_mm(self) -> float:
        """The longest that a loop may be."""
        return self.loop_mm * (1 + self.band)

    def apart(self, swatch: Swatch) -> float:
        """By what share of the gauge a swatch is longer (or shorter, below 0)."""
        return swatch.loop_mm / self.loop_mm - 1


def thread_diameter_mm(tex: float) -> float:
    """The diameter of a thread, packed, in mm, from its tex (g/km)."""
    area = tex / 1e6 / PACKED_DENSITY
    return 2 * sqrt(area / pi)


def by_hook(tex: float, hook_mm: float) -> Gauge:
    """The gauge of a thread and a hook that no swatch has been worked with."""
    return Gauge(pi * (hook_mm + thread_diameter_mm(tex)), UNMEASURED)


def by_swatches(swatches: Sequence[Swatch]) -> Gauge:
    """The gauge that one or several swatches say."""
    loops = [swatch.loop_mm for swatch in swatches]
    n = len(loops)
    mean = fsum(loops) / n
    if n == 1:
        return Gauge(mean, ONE_SWATCH, tuple(swatches))
    apart = sqrt(fsum((loop - mean) ** 2 for loop in loops) / (n - 1))
    t = T_90[min(n - 1, len(T_90)) - 1]
    band = t * apart * sqrt(1 + 1 / n) / mean
    return Gauge(mean, max(band, CLOSEST), tuple(swatches))
