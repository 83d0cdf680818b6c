"""For tests of lying flat: borders worked on edges whose size is known, and projects in a folder."""

from __future__ import annotations

from pathlib import Path

from worked import plain, read_text

from border.pipeline import Pipeline
from border.reckoning.edge_shape import Shape, shape_of
from border.reckoning.flat import RoundLies, how_it_lies
from border.reckoning.stitch_sizes import HEIGHT_TO_WIDTH, StitchSizes, stitch_sizes
from border.text.readings import Reading
from border.text.source import Source
from border.text.tree import NOWHERE
from border.working.work import WorkedEdge, work
from border.yoke.edges import Edge
from border.yoke.project import Sample


def sample(
    stitch: str, stitches: int, used: float, wide: float | None, high: float | None
) -> Sample:
    """A swatch as a project has it; lengths in mm, `wide` of all its stitches."""
    return Sample(stitch, stitches, used, wide, high, NOWHERE)


def swatch(stitch: str = "dc", wide: float = 1.0, high: float | None = None) -> StitchSizes:
    """Sizes from one swatch of ten stitches; without a height, that of the usual ratio."""
    high = HEIGHT_TO_WIDTH.get(stitch, 1.0) * wide if high is None else high
    sizes = stitch_sizes([sample(stitch, 10, 200, 10 * wide, None if stitch == "ch" else high)])
    assert sizes is not None
    return sizes


def line(edge: Edge, long: float, turns: float, corners: int = 0) -> Shape:
    """The shape of an edge without wheels."""
    shape = shape_of(edge, None, long, turns, corners)
    assert shape is not None
    return shape


def laid(text: str, edge: Edge, shape: Shape, sizes: StitchSizes) -> tuple[RoundLies, ...]:
    """How the rounds of a border lie. It closes."""
    reading, worked = on(text, edge)
    return how_it_lies(worked, reading, shape, sizes)


def on(text: str, edge: Edge) -> tuple[Reading, WorkedEdge]:
    """A border worked into an edge, every round of which closes."""
    reading, told = read_text(text)
    worked = work(reading, edge)
    assert not told
    assert all(r.closes for r in worked.rounds)
    assert len(worked.rounds) == len(reading.rounds)
    return reading, worked


def growing(stitch: str, first: int, by: int, rounds: int) -> str:
    """A border on `first` stitches that makes `by` more in every round, spread evenly."""
    rows = []
    had = first
    for number in range(1, rounds + 1):
        assert by > 0 and had % by == 0
        alone = had // by - 1
        before = f"1 {stitch} in each of next {alone} st, " if alone > 1 else ""
        before = f"1 {stitch} in next st, " if alone == 1 else before
        rows.append(f"round {number}: *{before}2 {stitch} in next st; repeat from *.")
        had += by
    return "\n".join(rows) + "\n"


def stitches(places: int) -> Edge:
    """A closed edge of finished stitches."""
    return plain(places, of="stitch")


def project(toml: str, only: str | None = None, **borders: str) -> Pipeline:
    """The pipeline of a project of that text, with border texts beside it by their names."""
    texts = {"case.toml": toml, **{f"{name}.border": text for name, text in borders.items()}}
    return Pipeline("case.toml", lambda name: Source(name, texts[name]), None, only)


def pattern(name: str, change: dict[str, str] | None = None) -> Pipeline:
    """The pipeline of a demo, some words of its file put in place of others."""
    folder = Path(__file__).parent.parent / "patterns"

    def read(file: str) -> Source:
        text = (folder / file).read_text("utf-8")
        for old, new in (change or {}).items() if file == name else ():
            assert old in text
            text = text.replace(old, new)
        return Source(file, text)

    return Pipeline(name, read)
