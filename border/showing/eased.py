"""Planned pieces of work in one value: what tables and record of `adjust` are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.planning.falling import Lying
from border.planning.search import Plan
from border.reckoning.counts import RoundCount
from border.text.source import Source
from border.yoke.edges import Edge


class PlanTold(Struct, frozen=True):
    """A plan with what it pays for (by the table of costs), and the rounds as it makes them.

    `lying`: how the repeats of each round lie then.
    """

    plan: Plan
    why: Mapping[str, int]
    rounds: tuple[RoundCount, ...]
    lying: tuple[Lying, ...]


class EasedWork(Struct, frozen=True):
    """One piece of work with its plans, cheapest first, none where there is none.

    `number`: of the `[[work]]` in the file, from 0. `as_it_stands`: in words, for each
    round that does not close before any plan. `like`: the edge whose plan this is, mirrored.
    `given`: how many adjustments stand in the file already.
    """

    number: int
    edge: Edge
    border: str
    title: str | None
    terms: str
    as_it_stands: tuple[str, ...]
    plans: tuple[PlanTold, ...]
    like: str | None
    given: int


class EasedAll(Struct, frozen=True):
    """All pieces of work of one file. `written`: the plans have been put into it."""

    name: str
    works: tuple[EasedWork, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]
