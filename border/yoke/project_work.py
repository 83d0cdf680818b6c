"""The tables of a project file on the work: borders on edges, cloth, thread, costs.

Annotations are no strings here: pydantic would have to evaluate each anew.
"""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from border.yoke.project_values import (
    ENOUGH,
    MANY,
    Length,
    Name,
    Number,
    Said,
    Table,
    Whole,
    fault,
)


class AdjustTable(Table):
    """`[[work.adjust]]`: places passed over (`by` > 0) or worked twice (`by` < 0) at one spot."""

    round: Whole
    at: Annotated[Said, Field(min_length=1)]
    by: Annotated[int, Field(ge=-ENOUGH, le=ENOUGH)]

    @model_validator(mode="after")
    def _not_nothing(self) -> Self:
        if self.by == 0:
            raise fault(
                "an adjustment by 0 does nothing", "by = 1 passes over one more, -1 works one twice"
            )
        return self


class FoundTable(Table):
    """What one round already worked came out at, in whatever was counted."""

    round: Whole
    spaces: Number | None = None
    stitches: Number | None = None
    chains: Number | None = None
    picots: Number | None = None
    repeats: Number | None = None
    groups: Number | None = None
    blocks: Number | None = None
    ss: Number | None = None
    sc: Number | None = None
    hdc: Number | None = None
    dc: Number | None = None
    tr: Number | None = None
    dtr: Number | None = None
    trtr: Number | None = None

    @model_validator(mode="after")
    def _something(self) -> Self:
        if len(self.model_fields_set) < 2:
            raise fault("nothing is said of what was found", "found = { round = 3, spaces = 71 }")
        return self


class MeasuredTable(Table):
    """So many spaces or stitches of a round, laid flat and measured."""

    round: Whole
    spaces: Whole | None = None
    stitches: Whole | None = None
    mm: Length

    @model_validator(mode="after")
    def _one_of_two(self) -> Self:
        if (self.spaces is None) == (self.stitches is None):
            message = "what was measured is either spaces or stitches"
            raise fault(message, "measured = [{ round = 3, spaces = 10, mm = 58 }]")
        return self


class WorkTable(Table):
    """`[[work]]`: a border on an edge, and how far it has come."""

    edge: Name
    border: Annotated[str, Field(min_length=1, max_length=1000)]
    start: Name | None = None
    mirror: Annotated[list[Annotated[Said, Field(min_length=1)]], Field(max_length=MANY)] = []
    done: Number = 0
    found: FoundTable | None = None
    measured: Annotated[list[MeasuredTable], Field(max_length=MANY)] = []
    curve: Literal["in", "out", "straight"] | None = None
    turns: Annotated[float, Field(ge=-3600, le=3600, allow_inf_nan=False)] | None = None
    adjust: Annotated[list[AdjustTable], Field(max_length=MANY)] = []


class PartTable(Table):
    """A part of an edge sewn to cloth: plain, or gathered (cloth_mm into gathered_mm)."""

    plain_mm: Length | None = None
    gathered_mm: Length | None = None
    cloth_mm: Length | None = None

    @model_validator(mode="after")
    def _plain_or_gathered(self) -> Self:
        gathered = (self.gathered_mm is not None, self.cloth_mm is not None)
        if gathered != ((self.plain_mm is None,) * 2):
            message = "a part is either plain or gathered"
            raise fault(message, "{ plain_mm = 60 } or { gathered_mm = 90, cloth_mm = 140 }")
        if self.gathered_mm and self.cloth_mm and self.cloth_mm < self.gathered_mm:
            message = f"{self.cloth_mm:g} mm of cloth cannot be gathered into {self.gathered_mm:g}"
            raise fault(
                message, "cloth_mm is the cloth before it is gathered, the longer of the two"
            )
        return self


class WashedTable(Table):
    """A swatch measured before and after its first wash."""

    before_mm: Length
    after_mm: Length

    @model_validator(mode="after")
    def _of_one_swatch(self) -> Self:
        if not 0.5 <= self.after_mm / self.before_mm <= 1.5:
            message = (
                f"no swatch of {self.before_mm:g} mm measures {self.after_mm:g} mm when washed"
            )
            raise fault(message, "cloth_washed = { before_mm = 200, after_mm = 194 }")
        return self


class AttachTable(Table):
    """`[[attach]]`: an edge, or the parts `over` which it is meant, sewn to cloth."""

    edge: Name
    over: Annotated[list[Name], Field(max_length=MANY)] = []
    round: Number | None = None
    parts: Annotated[list[PartTable], Field(min_length=1, max_length=MANY)]
    stitch_mm: Length | None = None
    cloth_washed: WashedTable | None = None
    lace_washed: WashedTable | None = None


class SampleTable(Table):
    """A swatch: the thread that so many stitches took, and what they measure washed."""

    stitch: Name
    stitches: Whole
    used_mm: Length
    width_mm: Length | None = None
    height_mm: Length | None = None


class ThreadTable(Table):
    """`[thread]`: what is worked with, and what is there of it."""

    size: Name | None = None
    tex: Length | None = None
    den: Length | None = None
    nm: Length | None = None
    ne: Length | None = None
    hook_mm: Length | None = None
    ball_g: Length | None = None
    ball_m: Length | None = None
    balls: Length | None = None
    waste: Annotated[float, Field(ge=0, le=1, allow_inf_nan=False)] | None = None
    sample: Annotated[list[SampleTable], Field(max_length=MANY)] = []

    @model_validator(mode="after")
    def _fine_in_one_way(self) -> Self:
        said = [key for key in ("tex", "den", "nm", "ne") if getattr(self, key) is not None]
        if self.ball_g is not None and self.ball_m is not None and said:
            message = f"the ball's grams and metres say how fine the thread is, and {said[0]} too"
            raise fault(message, f"leave out {said[0]}, or one of ball_g and ball_m")
        said = (["size"] if self.size is not None else []) + said
        if len(said) > 1:
            message = f"the thread has a {said[0]}, and a {said[1]} too"
            raise fault(message, "leave out one of them")
        return self


class CostsTable(Table):
    """What easing in costs, in points, where it is to be otherwise than usual."""

    place: Number | None = None
    showy: Number | None = None
    last: Number | None = None
    seen_1: Number | None = None
    seen_2: Number | None = None
    seen_3: Number | None = None
    regular: Number | None = None
    second: Number | None = None
    lopsided: Number | None = None
    neighbours: Number | None = None
    against_curve: Number | None = None
