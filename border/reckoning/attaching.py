"""An edge sewn to cloth: what of its lace meets what of the cloth, exactly; lengths in mm.

Pieces of lace (the spaces of a round, its stitches, or the places of the edge itself) are shared
out among the parts of the cloth by their finished lengths. Bounds between parts, pins and sewing
stitches are whole numbers, each the nearest to where it would fall, so that what is left
over is spread evenly. Gathers: 1.5 : 1 is 19th-century school plain work (Sewing Handicraft
for Girls), 2 : 1 usual now (common practice).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import accumulate, pairwise
from math import floor, fsum

from msgspec import Struct

from border.reckoning.lace_pieces import Piece
from border.reckoning.stitch_sizes import Band
from border.yoke.project import Attachment, Part

SCANTY, FULL = 1.5, 2.0
"""Gathers are usual from so much cloth to so much."""

STITCH_MM = 2.5
"""From one sewing stitch to the next (common practice: 2 to 3 mm)."""

EASE = 0.05
"""So much of its length lace is eased in, or stretched, as it is sewn (estimate)."""

PINS = 8


class Pin(Struct, frozen=True):
    """A pin: `eighths` of the way (None: only where one part ends), behind so many `pieces`.

    `behind`: the last of them. `lace_mm`: along the finished seam, `cloth_mm`: along the cloth
    before it is gathered.
    """

    eighths: int | None
    pieces: int
    behind: Piece | None
    lace_mm: float
    cloth_mm: float


class PartSewn(Struct, frozen=True):
    """A part: `first` to `last` piece of lace (from 1, `pieces` in all) on `cloth_mm` of cloth.

    `takes`: how many sewing stitches catch each piece, in order. `cut_mm`: what to cut, so that
    cloth and lace agree after the wash; None without washed swatches.
    """

    gathered: bool
    finished_mm: float
    cloth_mm: float
    first: int
    last: int
    takes: tuple[int, ...]
    cut_mm: float | None

    @property
    def pieces(self) -> int:
        return self.last - self.first + 1

    @property
    def ratio(self) -> float:
        """Cloth to lace."""
        return self.cloth_mm / self.finished_mm

    @property
    def usual(self) -> bool:
        return not self.gathered or SCANTY <= round(self.ratio, 2) <= FULL


class Sewn(Struct, frozen=True):
    """A stretch of an edge sewn to cloth. `of`: what its pieces are (`space`, `stitch`, `loop`).

    `lace`: how long the lace lies there; None where nothing tells.
    """

    of: str
    pieces: tuple[Piece, ...]
    parts: tuple[PartSewn, ...]
    pins: tuple[Pin, ...]
    lace: Band | None
    cloth_keeps: float | None
    lace_keeps: float | None

    @property
    def finished_mm(self) -> float:
        return fsum(part.finished_mm for part in self.parts)

    @property
    def too_long(self) -> float:
        """By how much the lace is longer than the cloth as it is to be, below 0 shorter; 0 where
        pressing takes it up, or nothing tells how long it is."""
        if self.lace is None:
            return 0.0
        if self.lace.low * (1 - EASE) > self.finished_mm:
            return self.lace.low - self.finished_mm
        if self.lace.high * (1 + EASE) < self.finished_mm:
            return self.lace.high - self.finished_mm
        return 0.0

    @property
    def cloth_can_be(self) -> Band:
        """How long all the cloth can be made, with usual gathers."""
        plain = fsum(p.finished_mm for p in self.parts if not p.gathered)
        gathered = [p for p in self.parts if p.gathered]
        least = fsum(min(p.cloth_mm / FULL, p.finished_mm) for p in gathered)
        most = fsum(max(p.cloth_mm / SCANTY, p.finished_mm) for p in gathered)
        return Band(plain + least, plain + most)


def sewn(said: Attachment, of: str, pieces: Sequence[Piece], lace: Band | None) -> Sewn:
    """An attachment reckoned; there is at least one piece of lace."""
    lengths = [exact(finished(part)) for part in said.parts]
    ends = list(accumulate(lengths, initial=Fraction(0)))
    bounds = [nearest(len(pieces) * end / ends[-1]) for end in ends]
    keeps = _cloth_to_lace(said)
    parts = []
    for part, (first, last) in zip(said.parts, pairwise(bounds), strict=True):
        mm, cloth = finished(part), part.cloth_mm or finished(part)
        number = last - first
        stitches = max(nearest(exact(mm) / exact(said.stitch_mm or STITCH_MM)), 1)
        takes = shared(stitches, number)
        cut = cloth * keeps if keeps else None
        gathered = part.cloth_mm is not None
        parts.append(PartSewn(gathered, mm, cloth, first + 1, last, takes, cut))
    pins = tuple(_pins(parts, pieces))
    return Sewn(of, tuple(pieces), tuple(parts), pins, lace, said.cloth_keeps, said.lace_keeps)


def finished(part: Part) -> float:
    """How long a part is when it is sewn."""
    return part.plain_mm or part.gathered_mm or 0.0


def exact(mm: float) -> Fraction:
    """A length as it was written: 1.8 is 9/5."""
    return Fraction(str(mm))


def nearest(number: Fraction | int) -> int:
    """The whole number nearest to one, a half taken up."""
    return floor(number + Fraction(1, 2))


def shared(what: int, among: int) -> tuple[int, ...]:
    """So many shared out among so many, as evenly as can be."""
    return tuple((n + 1) * what // among - n * what // among for n in range(among))


def _cloth_to_lace(said: Attachment) -> float | None:
    """How much more cloth to cut; what was not washed is taken to keep its length."""
    if said.cloth_keeps is None and said.lace_keeps is None:
        return None
    return (said.lace_keeps or 1.0) / (said.cloth_keeps or 1.0)


def _pins(parts: Sequence[PartSewn], pieces: Sequence[Piece]) -> list[Pin]:
    """Pins at every eighth, and where one part ends and the next begins."""
    total = len(pieces)
    at: dict[int, int | None] = {part.last: None for part in parts[:-1]}
    for eighth in range(PINS + 1):
        behind = nearest(Fraction(total * eighth, PINS))
        if at.get(behind) is None or eighth % 2 == 0:
            at[behind] = eighth
    found = []
    for behind, eighths in sorted(at.items()):
        lace, cloth = _along(parts, behind)
        found.append(Pin(eighths, behind, pieces[behind - 1] if behind else None, lace, cloth))
    return found


def _along(parts: Sequence[PartSewn], behind: int) -> tuple[float, float]:
    """How far along seam and cloth so many pieces reach."""
    lace = cloth = 0.0
    for part in parts:
        of_it = min(max(behind - part.first + 1, 0), part.pieces)
        if part.pieces:
            lace += part.finished_mm * of_it / part.pieces
            cloth += part.cloth_mm * of_it / part.pieces
    return lace, cloth
