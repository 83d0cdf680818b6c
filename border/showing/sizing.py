"""A project made to measure, in one value: what tables and record of `size` are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.reckoning.counts import RoundCount
from border.reckoning.flat import Lies
from border.reckoning.stitch_sizes import Band
from border.text.source import Source


class EdgeSize(Struct, frozen=True):
    """An edge of one size, and the border on it.

    `of`: what its places are. `length`: of the last round as it `lies`, or (`round` 0) along the
    wheels; None where nothing tells. `closes`: None without a border. `eased`: so many places
    eased in would make it close; None where it closes, or nothing does.
    """

    edge: str
    motifs: int
    places: int
    of: str
    length: Band | None
    round: int
    terms: str
    rounds: tuple[RoundCount, ...]
    closes: bool | None
    eased: int | None
    lies: Lies = Lies.FLAT


class Sized(Struct, frozen=True):
    """The project with so many more wheels (places, of a plain edge) in some sections.

    `faults`: what is wrong with the yoke then, in words.
    """

    more: tuple[tuple[str, int], ...]
    edges: tuple[EdgeSize, ...]
    faults: tuple[str, ...] = ()

    @property
    def goes_together(self) -> bool:
        return not self.faults


class SizedAll(Struct, frozen=True):
    """The project as it is, and the sizes that were asked for: those whose `edge` comes nearest
    to `wanted_mm`, or, with `wanted_mm` None, the one with more wheels."""

    name: str
    edge: str | None
    wanted_mm: float | None
    now: Sized
    then: tuple[Sized, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]
