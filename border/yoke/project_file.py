"""The tables of a project file as they may be written: the yoke, its edges, the whole file.

What the values mean together is settled by the modules that use them.
Annotations are no strings here: pydantic would have to evaluate each anew.
"""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from border.yoke.project_values import (
    FAR_TOO_MANY,
    MANY,
    MOST_LABELS,
    HowSeen,
    Kind,
    Length,
    Name,
    Number,
    Said,
    Table,
    Whole,
    fault,
)
from border.yoke.project_work import AttachTable, CostsTable, ThreadTable, WorkTable


class YokeTable(Table):
    """`[yoke]`: what holds for every motif; `motif_mm` is its width across."""

    loops: Whole
    of: Literal["loop", "picot"] = "loop"
    joined: Number | None = None
    seam_loops: Number = 0
    motif_mm: Length | None = None


class StripTable(Table):
    """`[[strip]]`: a row of joined motifs, or a strap `from` one motif `to` another."""

    name: Name
    motifs: Annotated[int, Field(ge=1, le=FAR_TOO_MANY)]
    sides: Annotated[list[Said], Field(min_length=2, max_length=2)] | None = None
    first: Annotated[Name | None, Field(alias="from")] = None
    last: Annotated[Name | None, Field(alias="to")] = None
    seen: HowSeen | None = None


class MotifTable(Table):
    """`[[motif]]`: one that is unlike its strip, by its ring or as the mirror of another."""

    name: Name
    ring: Annotated[list[Said], Field(min_length=1, max_length=MANY)] | None = None
    mirror_of: Name | None = None

    @model_validator(mode="after")
    def _one_of_two(self) -> Self:
        help_ = 'ring = ["neck 5", "join front.2", …] or mirror_of = "left underarm.1"'
        if self.ring is None and self.mirror_of is None:
            raise fault(f"{self.name} says nothing of its ring", help_)
        if self.ring is not None and self.mirror_of is not None:
            raise fault(f"{self.name} has a ring, and is a mirror as well", "leave out one of them")
        return self


class LabelTable(Table):
    """`[[label]]`: one name for several motifs."""

    name: Name
    motifs: Annotated[list[Name], Field(min_length=1)]
    seen: HowSeen | None = None


class RunTable(Table):
    """Motifs of an edge that is written straight down, with so many `places` on each."""

    section: Name
    motifs: Annotated[int, Field(ge=1, le=FAR_TOO_MANY)] = 1
    places: Annotated[int, Field(ge=0, le=FAR_TOO_MANY)]
    seen: HowSeen | None = None


class EdgeTable(Table):
    """`[[edge]]`: an edge written straight down, by its motifs or as plain places."""

    name: Name
    closed: bool = True
    runs: Annotated[list[RunTable], Field(min_length=1)] | None = None
    places: Annotated[int, Field(ge=0, le=FAR_TOO_MANY)] | None = None
    of: Kind | None = None
    length_mm: Length | None = None
    corners: Annotated[int, Field(ge=0, le=1000)] = 0

    @model_validator(mode="after")
    def _one_of_two(self) -> Self:
        help_ = 'runs = [{ section = "cuff", motifs = 7, places = 6 }] or places = 90'
        if self.runs is None and self.places is None:
            raise fault(f'the edge "{self.name}" has no places', help_)
        if self.runs is not None and self.places is not None:
            raise fault(f'the edge "{self.name}" has runs, and plain places too', help_)
        return self


class ProjectTable(Table):
    """The whole file."""

    format: Literal[1]
    name: Annotated[str, Field(max_length=200)] | None = None
    hand: Literal["right", "left"] = "right"
    yoke: YokeTable | None = None
    strip: list[StripTable] = []
    motif: list[MotifTable] = []
    label: Annotated[list[LabelTable], Field(max_length=MOST_LABELS)] = []
    edge: list[EdgeTable] = []
    work: Annotated[list[WorkTable], Field(max_length=MANY)] = []
    attach: Annotated[list[AttachTable], Field(max_length=MANY)] = []
    thread: ThreadTable | None = None
    costs: CostsTable | None = None

    @model_validator(mode="after")
    def _has_an_edge(self) -> Self:
        if (self.strip or self.motif) and self.yoke is None:
            help_ = "[yoke] with loops = 16, the loops round one motif, and joined = 3"
            raise fault("there are motifs, but no [yoke] to say how many loops they have", help_)
        if not self.strip and not self.motif and not self.edge:
            help_ = 'write a [yoke] with [[strip]]s, or an [[edge]]: name = "cuff", places = 90'
            raise fault("the project has neither a yoke nor an edge", help_)
        return self
