"""What borders need, in one value: what the tables and the record of `close` are made from."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.planning.lacks import OnEdge
from border.planning.needs import Needs
from border.text.source import Source


class NeededWork(Struct, frozen=True):
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


class Needed(Struct, frozen=True):
    """All borders of one file; `project`: it is a project, and may have several."""

    project: bool
    works: tuple[NeededWork, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]
