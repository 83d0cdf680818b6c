"""A starter project, as it is to be shown: its files, its edges, the answers it is made of."""

from __future__ import annotations

from msgspec import Struct

from border.yoke.answers import Question, Said, written
from border.yoke.edges import Edge


class Starter(Struct, frozen=True):
    """A starter project in `folder`: its files by name (project, border, picture), its edges.

    `said`: the answers it is made of; `usual`: the questions that nobody answered.
    """

    folder: str
    files: dict[str, str]
    edges: tuple[Edge, ...]
    said: Said
    usual: tuple[Question, ...]

    @property
    def paths(self) -> list[str]:
        """The files with their folder."""
        return [f"{self.folder.rstrip('/')}/{name}" for name in self.files]

    def answer(self, question: Question) -> str:
        """An answer as one types it."""
        return written(self.said[question.key])
