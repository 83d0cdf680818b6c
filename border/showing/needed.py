"""What borders need, in one value: what the tables and the record of `close` are made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from border.findings import Finding
from border.planning.lacks import OnEdge
from border.planning.needs import Needs
from border.text.source import Source


@dataclass(frozen=True, slots=True)
class NeededWork:
    """What one border needs, and what it lacks on its edge where one is given.

    `edge`: the name of the edge in a project. `border` is the file as the user
    named it, `title` the name that the text gives itself.
    """

    edge: str | None
    closed: bool
    border: str
    title: str | None
    terms: str
    needs: Needs
    there: OnEdge | None


@dataclass(frozen=True, slots=True)
class Needed:
    """All borders of one file; `project`: it is a project, and may have several."""

    project: bool
    works: tuple[NeededWork, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]
