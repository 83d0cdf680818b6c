"""How borders lie, in one value: what the tables and the record of `flat` are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.reckoning.counts import RoundCount
from border.reckoning.flat import Lies, RoundLies
from border.reckoning.measuring import Mark
from border.reckoning.mending import Mended
from border.reckoning.stitch_sizes import StitchSizes
from border.text.readings import Reading
from border.text.source import Source
from border.yoke.edges import Edge


class Turning(Struct, frozen=True):
    """By how much a part of the edge turns, in degrees, inwards below 0; `motifs` in it."""

    section: str
    motifs: int
    degrees: float


class LyingWork(Struct, frozen=True):
    """One piece of work as it lies on its edge.

    `turning`: of each section, `turns` of the whole edge, in degrees; `turned_by` tells who
    says so: its loops, the project, or its name. `mended`: with what is changed, where
    something is to be mended. `back`: where the work was measured and is not as large as
    reckoned, what brings the rounds to come back to size.
    """

    edge: Edge
    border: str
    title: str | None
    reading: Reading
    wheel_mm: float | None
    turns: float
    turned_by: str
    turning: tuple[Turning, ...]
    sizes: StitchSizes
    counted: tuple[RoundCount, ...]
    rounds: tuple[RoundLies, ...]
    marks: tuple[Mark, ...]
    mended: Mended | None
    back: Mended | None

    @property
    def flat(self) -> bool:
        return all(r.lies is Lies.FLAT for r in self.rounds)


class LyingAll(Struct, frozen=True):
    """All pieces of work of one project."""

    name: str
    works: tuple[LyingWork, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]
