"""What `write` has to show: every piece of work as a border text for its own edge."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from border.findings import Finding
from border.text.source import Source


class WrittenWork(Struct, frozen=True):
    """One border as a text for one edge, in `terms`; `border` is the file as the user named it.

    `edge`: None where the text goes on no edge, and only its terms are others. `text` is
    empty where not one round could be written.
    """

    edge: str | None
    border: str
    terms: str
    text: str


class WrittenAll(Struct, frozen=True):
    """All pieces of work of one file, written out, with everything there is to tell about them."""

    works: tuple[WrittenWork, ...]
    findings: tuple[Finding, ...]
    sources: Mapping[str, Source]

    @property
    def text(self) -> str:
        """The texts one after the other, an empty line between two."""
        return "\n".join(work.text for work in self.works if work.text)
