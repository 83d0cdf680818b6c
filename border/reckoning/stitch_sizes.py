"""How wide and how high a worker's own stitches are, from swatches; in mm.

Height to width of a stitch: sc 0.90, hdc 1.30, dc 1.75, tr 2.5 (common practice); dtr and
trtr go on by as much (estimate). What was not measured follows from what was: all
stitches of one hand, thread and hook are equally wide, since the top of each is a
chain, and their heights are to each other as the ratios.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from statistics import fmean

from msgspec import Struct
from msgspec.structs import replace

from border.stitches import STITCHES
from border.working.fabric import CHAIN
from border.yoke.project import Sample

HEIGHT_TO_WIDTH = {
    "ss": 0.0,
    "sc": 0.90,
    "hdc": 1.30,
    "dc": 1.75,
    "tr": 2.5,
    "dtr": 3.25,
    "trtr": 4.0,
}

EASE = 0.10
"""So much of its length a round may be out, and lie flat when it is pressed: a disc of dc is
usually worked with 12 more in every round, which is 9 % more than 2 pi h/w (common practice)."""


class Band(Struct, frozen=True):
    """A length that lies anywhere from `low` to `high`, in mm."""

    low: float
    high: float

    @property
    def middle(self) -> float:
        return (self.low + self.high) / 2

    def by(self, factor: float) -> Band:
        """The band of so many times the length."""
        return Band(self.low * factor, self.high * factor)


class StitchSizes(Struct, frozen=True):
    """Widths and heights by canonical name, chains (`ch`) too; in mm.

    `measured`: the names whose width, `measured_high` those whose height is from a swatch.
    """

    widths: dict[str, float]
    heights: dict[str, float]
    measured: tuple[str, ...] = ()
    measured_high: tuple[str, ...] = ()

    @property
    def chain(self) -> float:
        """The length of one chain."""
        return self.widths[CHAIN]

    def by(self, factor: float) -> StitchSizes:
        """Stitches so many times as large."""
        widths = {kind: mm * factor for kind, mm in self.widths.items()}
        heights = {kind: mm * factor for kind, mm in self.heights.items()}
        return replace(self, widths=widths, heights=heights)


def stitch_sizes(samples: Sequence[Sample]) -> StitchSizes | None:
    """The sizes of all stitches from one's own swatches; None where no width was measured.

    Of several swatches of one stitch the mean.
    """
    known = {CHAIN, *STITCHES}
    wide = _means((s.stitch, s.width_mm / s.stitches) for s in samples if s.width_mm)
    high = _means((s.stitch, s.height_mm) for s in samples if s.height_mm)
    wide = {kind: mm for kind, mm in wide.items() if kind in known}
    high = {kind: mm for kind, mm in high.items() if kind in STITCHES}
    if not wide:
        return None
    usual = fmean(mm for kind, mm in wide.items() if kind != CHAIN or len(wide) == 1)
    widths = {kind: wide.get(kind, usual) for kind in (CHAIN, *STITCHES)}
    expected = {kind: HEIGHT_TO_WIDTH[kind] * widths[kind] for kind in STITCHES}
    taller = [mm / expected[kind] for kind, mm in high.items() if expected[kind]]
    tall = fmean(taller) if taller else 1.0
    heights = {kind: high.get(kind, mm * tall) for kind, mm in expected.items()}
    return StitchSizes(widths, heights, tuple(wide), tuple(high))


def _means(pairs: Iterable[tuple[str, float]]) -> dict[str, float]:
    found: dict[str, list[float]] = {}
    for kind, mm in pairs:
        found.setdefault(kind, []).append(mm)
    return {kind: fmean(all_mm) for kind, all_mm in found.items()}
