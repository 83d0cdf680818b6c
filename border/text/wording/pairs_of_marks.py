"""A pair of printed marks round what is repeated: `x 1 dc, 5 ch x repeat`, `+ … + all round`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import like, past, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal

MARKS = frozenset({"STAR", "MARK", "CROSS"})


def pairs_of_marks(t: Sequence[Terminal]) -> list[Terminal]:
    """The one pair of marks in a row as a star and a stop: what is said of repeats from a star is
    then said of these."""
    marks = [n for n, x in enumerate(t) if x.type in MARKS and not counts(t, n)]
    if len(marks) != 2 or t[marks[0]].text != t[marks[1]].text:
        return list(t)
    opens, closes = marks
    behind = past(t, closes + 1, "SEP", "AND")
    again = types(t, behind, 1) == ["REPEAT"]
    back = types(t, behind + 1, 1) == ["FROM"] or types(t, behind + 1, 2) == ["THE", "FROM"]
    ends = past(t, behind, "SEP", "ENDING", "TOEND") == len(t)
    steps = [x for x in t[opens + 1 : closes] if x.type != "SEP"]
    led = opens > 0 and t[opens - 1].type in ("FROM", "TO", "THE")
    if (
        not steps
        or any(x.type == "REPEAT" for x in steps)
        or led
        or t[closes - 1].type in ("FROM", "TO", "THE")
        or back
    ):
        return list(t)
    if not again and not ends:
        return list(t)
    within = list(t[opens + 1 : closes])
    while within[-1].type == "SEP":
        within.pop()
    stop = replace(like(t[closes], "SEP", name="hard"), text=";")
    repeat = [] if again else [like(t[closes], "REPEAT")]
    return [*t[:opens], like(t[opens], "STAR"), *within, stop, *repeat, *t[behind:]]


def counts(t: Sequence[Terminal], at: int) -> bool:
    """Whether a cross says how often, as in `(…) x 3`."""
    behind = types(t, at + 1, 2)
    if t[at].type != "CROSS" or types(t, at - 1, 1)[:1] not in (["RP"], ["REPEAT"]):
        return False
    return behind[:1] == ["NUM"] and behind[1:] not in (["STITCH"], ["CH"], ["PICOT"])
