"""The stages of `new`: from question to question, and from the answers to the files.

answers -> project and border as texts -> read, traced and drawn like any other
"""

from __future__ import annotations

from collections.abc import Iterable

from border.pipeline import Pipeline
from border.showing.starter import Starter
from border.showing.starter_border import border_text
from border.showing.starter_project import project_text
from border.showing.telling import harmless
from border.text.source import Source
from border.text.vocabulary import TERMS
from border.yoke.answers import Choice, Question, Refused, Said, word
from border.yoke.shapes import SHAPES

LONGEST_NAME = 200
_HANDS = ("right", "left")


class _Name(Question, frozen=True):
    """A question for the name of the whole."""

    def read(self, text: str, said: Said) -> str | Refused:
        name = " ".join(text.split())
        if not name:
            return Refused("a name is missing", f"as in {self.usual(said)}")
        if len(name) > LONGEST_NAME:
            return Refused(f"the name has {len(name)} letters", f"{LONGEST_NAME} are the most")
        if harmless(name) != name:
            return Refused("the name has a sign that cannot be printed", "leave it out")
        return name


def questions(folder: str, said: Said) -> tuple[Question, ...]:
    """All that is asked for a project in this folder; its shape alone, until that is known."""
    shape = Choice("shape", "the shape", lambda _: "cuff", tuple(SHAPES))
    if "shape" not in said:
        return (shape,)
    name = _Name("name", "its name", lambda _: _named_after(folder, word(said, "shape")))
    hand = Choice("hand", "the hand that works, right or left", lambda _: "right", _HANDS)
    terms = Choice("terms", f"stitch names, {', '.join(TERMS)}", lambda _: "us", TERMS)
    return (shape, *SHAPES[word(said, "shape")].questions, name, hand, terms)


def next_question(folder: str, said: Said) -> Question | None:
    """The first question without an answer."""
    return next((q for q in questions(folder, said) if q.key not in said), None)


def shapes_with(key: str) -> list[str]:
    """The shapes for which something is asked."""
    return [s.name for s in SHAPES.values() if key in {q.key for q in s.questions}]


def _named_after(folder: str, shape: str) -> str:
    """The name of the folder where that can be one, else of the shape."""
    last = " ".join(folder.rstrip("/").rpartition("/")[2].split())
    good = last and last not in (".", "..") and len(last) <= LONGEST_NAME
    return last if good and harmless(last) == last else shape


def made(folder: str, said: Said, usual: Iterable[Question] = ()) -> Starter:
    """The starter project of these answers."""
    shape = word(said, "shape")
    project = f"{shape}.toml"
    files = {project: project_text(said), f"{shape}.border": border_text(said)}
    pipeline = Pipeline(project, lambda name: Source(name, files[name]))
    picture = pipeline.yoke_picture
    assert picture is not None, pipeline.findings
    files[f"{shape}.svg"] = picture
    return Starter(folder, files, pipeline.edges, said, tuple(usual))
