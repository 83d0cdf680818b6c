"""Lying flat: the length of each round against what lies flat where it lies; in mm.

A round of stitches is as long as they are wide. A chain lies anywhere between the distance of
its two feet and its own length, so a round with chains can be as short as its stitches
side by side, and as long as these and its chains. It stands away from the edge by the
heights of all rounds so far; a round worked into arches stands higher by as much as these
are pulled up, from nothing (slack) to a peak (two straight legs). So every length
is a band. A round that even pulled out is shorter than what lies flat there will cup; one
that even pushed together is longer will ruffle.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from enum import StrEnum
from math import fsum, log, sqrt

from msgspec import Struct
from msgspec.structs import replace

from border.reckoning.edge_shape import Shape, Stretch
from border.reckoning.rows_laid import Gap, LaidRound, laid_round
from border.reckoning.stitch_sizes import EASE, Band, StitchSizes
from border.text.readings import Reading
from border.working.fabric import edge_fabric
from border.working.work import WorkedEdge, as_met_next


class Lies(StrEnum):
    """How a round, or a part of it, comes to lie."""

    CUPS = "will cup"
    FLAT = "lies flat"
    RUFFLES = "will ruffle"


class Length(Struct, frozen=True):
    """The length that lies flat, `needed`, against that of the round, `worked`, in mm.

    `out`: by how much at least it is out; below 0 too short. `spare`: what a stitch at
    either end changes, so that a small part is not called for less.
    """

    needed: Band
    worked: Band
    spare: float = 0.0

    @property
    def out(self) -> float:
        if self.worked.high < self.needed.low * (1 - EASE) - self.spare:
            return self.worked.high - self.needed.low
        if self.worked.low > self.needed.high * (1 + EASE) + self.spare:
            return self.worked.low - self.needed.high
        return 0.0

    @property
    def lies(self) -> Lies:
        return Lies.FLAT if not self.out else Lies.CUPS if self.out < 0 else Lies.RUFFLES

    @property
    def as_it_lies(self) -> Band:
        """The length that it has when it lies as well as it can."""
        low, high = self.worked.low, self.worked.high
        return Band(*(min(max(mm, low), high) for mm in (self.needed.low, self.needed.high)))

    @property
    def around(self) -> Band:
        """The length of the edge that it makes: what it has too much lies in folds."""
        return self.needed if self.lies is Lies.RUFFLES else self.as_it_lies


class SectionLies(Struct, frozen=True):
    """How long a round is over one section."""

    section: str
    length: Length


class RoundLies(Struct, frozen=True):
    """One round. `away`: from the edge to the tops of its stitches.

    `radius`: of a round of stitches that ruffles and grows, that of the hyperbolic plane
    which it makes with the one before: rounds of height h that grow by a factor f have the
    radius h / ln f (Henderson and Taimina, "Crocheting the Hyperbolic Plane", 2001).
    """

    number: int
    away: Band
    length: Length
    sections: tuple[SectionLies, ...]
    radius: float | None = None

    @property
    def lies(self) -> Lies:
        """As the whole does; where that is well, as the part that is out most."""
        if self.length.out:
            return self.length.lies
        return max(self._parts, key=lambda part: abs(part.out), default=self.length).lies

    @property
    def _parts(self) -> Iterable[Length]:
        return (section.length for section in self.sections)

    @property
    def worst(self) -> float:
        """All that is out, part by part, in mm."""
        parts = fsum(abs(part.out) for part in self._parts)
        return max(parts, abs(self.length.out))


def how_it_lies(
    worked: WorkedEdge, reading: Reading, shape: Shape, sizes: StitchSizes
) -> tuple[RoundLies, ...]:
    """How every round of a worked border comes to lie on its edge."""
    found: list[RoundLies] = []
    base = Band(0.0, 0.0)
    rise = Band(0.0, 0.0)
    for laid in laid_rounds(worked, reading, shape):
        lifted = rise.by(laid.in_spaces)
        height = _height(laid, sizes)
        base = Band(base.low + lifted.low + height, base.high + lifted.high + height)
        lies = _round(laid, base, shape, sizes)
        found.append(replace(lies, radius=_radius(found[-1], lies) if found else None))
        rise = Band(0.0, _rise(laid, base.high, shape, sizes))
    return tuple(found)


def _radius(before: RoundLies, lies: RoundLies) -> float | None:
    """The radius of the ruffle that a round makes with the one before, if that is not too short
    itself; in mm."""
    short, long = before.length.as_it_lies.middle, lies.length.worked.low
    if lies.length.lies is not Lies.RUFFLES or before.length.out < 0 or not 0 < short < long:
        return None
    return (lies.away.high - before.away.high) / log(long / short)


def laid_rounds(worked: WorkedEdge, reading: Reading, shape: Shape) -> list[LaidRound]:
    """The rounds of a worked border laid out."""
    below = edge_fabric(worked.edge)
    found = []
    for round_, said in zip(worked.rounds, reading.rounds, strict=False):
        found.append(laid_round(round_, below, shape))
        below = as_met_next(round_.fabric, said, reading.rules.worked, worked.edge.closed)
    return found


def _height(laid: LaidRound, sizes: StitchSizes) -> float:
    """How high the stitches of a round are, on an average."""
    total = fsum(sizes.heights[kind] * n for kind, n in laid.stitches.items())
    return total / sum(laid.stitches.values())


def _rise(laid: LaidRound, away: float, shape: Shape, sizes: StitchSizes) -> float:
    """How high the arches of a round stand when they are pulled up, on an average."""
    peaks = []
    for gap in laid.gaps:
        if gap.chains:
            wide = shape.apart(gap.begins, gap.ends, away) - _width(gap, sizes)
            long = gap.chains * sizes.chain
            peaks.append(sqrt(max(long**2 - max(wide, 0.0) ** 2, 0.0)) / 2)
    return sum(peaks) / len(peaks) if peaks else 0.0


def _width(gap: Gap, sizes: StitchSizes) -> float:
    """Half of the stitch on either side."""
    return fsum(sizes.widths[kind] / 2 for kind in gap.kinds if kind)


def over_stretch(
    laid: LaidRound, away: Band, shape: Shape, sizes: StitchSizes, stretch: Stretch
) -> Length:
    """The length of a round over a stretch of the edge."""
    gaps = [gap for gap in laid.gaps if shape.lies_over(gap.begins, stretch)]
    return _length(gaps, away, shape, sizes, 0.0)


def _round(laid: LaidRound, away: Band, shape: Shape, sizes: StitchSizes) -> RoundLies:
    by_section: dict[str, list[Gap]] = {}
    for gap in laid.gaps:
        by_section.setdefault(gap.section, []).append(gap)
    two = 2 * max(sizes.widths[kind] for kind in laid.stitches)  # one at either end of a part
    parts = {
        name: _length(gaps, away, shape, sizes, two if len(by_section) > 1 else 0.0)
        for name, gaps in by_section.items()
    }
    needed, worked = (
        Band(fsum(b.low for b in bands), fsum(b.high for b in bands))
        for bands in ([p.needed for p in parts.values()], [p.worked for p in parts.values()])
    )
    whole = Length(Band(max(needed.low, 0.0), max(needed.high, 0.0)), worked)
    sections = tuple(SectionLies(name, part) for name, part in parts.items() if name)
    return RoundLies(laid.number, away, whole, sections)


def _length(
    gaps: Sequence[Gap], away: Band, shape: Shape, sizes: StitchSizes, spare: float
) -> Length:
    near, far = (
        fsum(shape.apart(gap.begins, gap.ends, mm) for gap in gaps) for mm in (away.low, away.high)
    )
    side_by_side = fsum(_width(gap, sizes) for gap in gaps)
    chains = sum(gap.chains for gap in gaps) * sizes.chain
    needed = Band(max(min(near, far), 0.0), max(near, far, 0.0))
    return Length(needed, Band(side_by_side, side_by_side + chains), spare)
