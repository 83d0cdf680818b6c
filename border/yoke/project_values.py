"""What a value in a project file may be: names, numbers, lengths; and what its tables share.

Everything is strict: no number for a word, no word for a number, no unknown key.
"""

from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field
from pydantic_core import PydanticCustomError

ENOUGH = 1_000_000
"""No number of loops, rounds or mm in a project file is larger."""

LEAST = 0.001
"""No mm, gram or metre that is measured is smaller."""

FAR_TOO_MANY = 10**12
"""Beyond this a number of motifs or places is no number; what is too large is told later."""

MANY = 100
"""No project has more pieces of work, swatches or attachments; nor a piece of work more
adjustments, measures or mirror points, a ring more items, an attachment more parts."""

MOST_LABELS = 1_000

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
Said = Annotated[str, Field(max_length=300)]
Number = Annotated[int, Field(ge=0, le=ENOUGH)]
Whole = Annotated[int, Field(ge=1, le=ENOUGH)]
Length = Annotated[float, Field(gt=0, le=ENOUGH, allow_inf_nan=False), AfterValidator(_measurable)]
Kind = Literal["loop", "picot", "chain", "stitch"]
HowSeen = Annotated[int, Field(ge=0, le=3)]


class Table(BaseModel):
    """What all tables share: nothing is taken for something else, and no key is passed over."""

    model_config = ConfigDict(strict=True, extra="forbid", frozen=True, populate_by_name=False)
