"""The tables of a project file as they may be written. The only pydantic of this floor.

Everything is strict: no number for a word, no word for a number, no unknown
key. What the values mean together is settled by the modules that use them.
Annotations are no strings here: pydantic would have to evaluate each anew.
"""

from typing import Annotated, Literal, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, model_validator
from pydantic_core import PydanticCustomError

ENOUGH = 1_000_000
"""No number of loops, rounds or mm in a project file is larger."""

LEAST = 0.001
"""No mm, gram or metre that is measured is smaller."""

FAR_TOO_MANY = 10**12
"""Beyond this a number of motifs or places is no number; what is too large is told later."""

NOT_IN_NAMES = ":|#"
"""Signs that mean something around names: clause heads, joints, comments."""


def fault(message: str, help_: str) -> PydanticCustomError:
    """A fault in a needleworker's words, to raise from a validator."""
    words = {"said": message, "help": help_}
    return PydanticCustomError("said", "{said}", words)


def _name(name: str) -> str:
    plain = " ".join(name.split())
    wrong = [c for c in plain if c in NOT_IN_NAMES or not c.isprintable()]
    if not plain:
        raise fault("a name is empty", "give it a name of letters, words or numbers")
    if wrong:
        shown = f"{wrong[0]!r}" if wrong[0].isprintable() else "a control character"
        raise fault(f"a name cannot have {shown} in it", "use letters, numbers, dots and spaces")
    if len(plain) > 100:
        raise fault("a name is longer than 100 letters", "give it a shorter name")
    return plain


def _measurable(figure: float) -> float:
    if figure < LEAST:
        raise fault(f"{figure:g} is too little to be measured", f"give {LEAST} or more")
    return figure


Name = Annotated[str, AfterValidator(_name)]
Number = Annotated[int, Field(ge=0, le=ENOUGH)]
Whole = Annotated[int, Field(ge=1, le=ENOUGH)]
Length = Annotated[float, Field(gt=0, le=ENOUGH, allow_inf_nan=False), AfterValidator(_measurable)]
Kind = Literal["loop", "picot", "chain", "stitch"]
HowSeen = Annotated[int, Field(ge=0, le=3)]


class Table(BaseModel):
    model_config = ConfigDict(strict=True, extra="forbid", frozen=True, populate_by_name=False)


class YokeTable(Table):
    loops: Whole
    of: Literal["loop", "picot"] = "loop"
    joined: Number | None = None
    seam_loops: Number = 0
    motif_mm: Length | None = None


class StripTable(Table):
    name: Name
    motifs: Annotated[int, Field(ge=1, le=FAR_TOO_MANY)]
    sides: Annotated[list[str], Field(min_length=2, max_length=2)] | None = None
    first: Annotated[Name | None, Field(alias="from")] = None
    last: Annotated[Name | None, Field(alias="to")] = None
    seen: HowSeen | None = None


class MotifTable(Table):
    name: Name
    ring: Annotated[list[str], Field(min_length=1)] | None = None
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
    name: Name
    motifs: Annotated[list[Name], Field(min_length=1)]
    seen: HowSeen | None = None


class RunTable(Table):
    section: Name
    motifs: Annotated[int, Field(ge=1, le=FAR_TOO_MANY)] = 1
    places: Annotated[int, Field(ge=0, le=FAR_TOO_MANY)]
    seen: HowSeen | None = None


class EdgeTable(Table):
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


class AdjustTable(Table):
    round: Whole
    at: Annotated[str, Field(min_length=1, max_length=300)]
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
    edge: Name
    border: Annotated[str, Field(min_length=1, max_length=1000)]
    start: Name | None = None
    mirror: list[Annotated[str, Field(min_length=1, max_length=300)]] = []
    done: Number = 0
    found: FoundTable | None = None
    measured: list[MeasuredTable] = []
    curve: Literal["in", "out", "straight"] | None = None
    turns: Annotated[float, Field(ge=-3600, le=3600, allow_inf_nan=False)] | None = None
    adjust: list[AdjustTable] = []


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
    edge: Name
    over: list[Name] = []
    round: Number | None = None
    parts: Annotated[list[PartTable], Field(min_length=1)]
    stitch_mm: Length | None = None
    cloth_washed: WashedTable | None = None
    lace_washed: WashedTable | None = None


class SampleTable(Table):
    stitch: Name
    stitches: Whole
    used_mm: Length
    width_mm: Length | None = None
    height_mm: Length | None = None


class ThreadTable(Table):
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
    sample: list[SampleTable] = []

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


class ProjectTable(Table):
    format: Literal[1]
    name: Annotated[str, Field(max_length=200)] | None = None
    hand: Literal["right", "left"] = "right"
    yoke: YokeTable | None = None
    strip: list[StripTable] = []
    motif: list[MotifTable] = []
    label: list[LabelTable] = []
    edge: list[EdgeTable] = []
    work: list[WorkTable] = []
    attach: list[AttachTable] = []
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
