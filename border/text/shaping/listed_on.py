"""A list that is shared out over as many places: `1 dc, 1 htr, 3 tr, 1 htr, 1 dc, one into each of
7 ch`; and one with chains between, `6 dc with ch 1 between, one in each of 6 dc`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from border.text.wording.passing import NOUNS, Terminals, ended, like, past, types

if TYPE_CHECKING:
    from collections.abc import Sequence

    from border.text.terminals import Terminal


def listed_on(t: Terminals) -> Terminals:
    """The terminals with each such list as steps that have their places, and no more."""
    found: Terminals = []
    at = 0
    while at < len(t):
        count, noun, end = _one_in_each(t, at)
        start = _list_before(found) if count else len(found)
        steps = _steps(found[start:]) if start < len(found) else []
        if not steps or sum(number for number, _ in steps) != count:
            found.append(t[at])
            at += 1
            continue
        found[start:] = [
            x for number, step in steps for x in _placed(number, step, t[at + 1], noun)
        ]
        found.pop()
        at = end
    return found


def _one_in_each(t: Terminals, at: int) -> tuple[int, Terminal, int]:
    """How many places `one into each of 7 ch` names, what they are, and the place behind it; 0
    where no such words stand here."""
    number = past(t, at + 2, "EACHOF", "NEXT", "THE")
    one = types(t, at, 3) == ["NUM", "PREP", "EACHOF"] and t[at].number == 1
    end = past(t, number + 1, *NOUNS)
    if not one or types(t, number, 1) != ["NUM"] or end != number + 2 or not ended(t, end):
        return 0, t[at], at
    return t[number].number, t[number + 1], end


def _list_before(found: Terminals) -> int:
    """Where the list begins that these words end in, behind a comma: at a star, a stop, or a step
    that is no stitch without a place."""
    start = len(found)
    if types(found, start - 1, 1) != ["SEP"] or found[-1].name == "hard":
        return start
    while start and found[start - 1].type in _LISTED and found[start - 1].name != "hard":
        start -= 1
    return start


_LISTED = frozenset({"NUM", "STITCH", "PICOT", "SEP", "AND", "WITH", "CH", "BETWEEN", "EACH"})


def _steps(t: Sequence[Terminal]) -> list[tuple[int, list[Terminal]]]:
    """How many stitches each step makes, and the step; none where chains stand among them, unless
    these part the stitches."""
    steps: list[tuple[int, list[Terminal]]] = []
    for x in [*t, like(t[-1], "SEP")]:
        if x.type not in ("SEP", "AND"):
            if not steps or steps[-1][0] >= 0:
                steps.append((-1, []))
            steps[-1][1].append(x)
        elif steps and steps[-1][0] < 0:
            steps[-1] = (_made(steps[-1][1]), steps[-1][1])
    return steps if all(number >= 0 for number, _ in steps) else []


def _made(step: list[Terminal]) -> int:
    """The stitches of a step, 0 of picots; -1 of what is neither."""
    number = step[0].number if step[0].type == "NUM" else 1
    rest = step[1:] if step[0].type == "NUM" else step
    sorts = [x.type for x in rest]
    parted = sorts[1:2] == ["WITH"] and "BETWEEN" in sorts
    if sorts[:1] == ["STITCH"] and (len(sorts) == 1 or parted):
        return number
    return 0 if sorts == ["PICOT"] else -1


def _placed(number: int, step: list[Terminal], prep: Terminal, noun: Terminal) -> list[Terminal]:
    """A step with so many of the places, and a comma behind it."""
    comma = like(step[-1], "SEP")
    if not number:
        return [*step, comma]
    at = next(n for n, x in enumerate(step) if x.type == "STITCH")
    several = [like(prep, "EACHOF"), like(prep, "NEXT"), like(prep, "NUM", number=number)]
    which = several if number > 1 else several[1:2]
    one = like(step[at], "NUM", number=1)
    return [one, step[at], prep, *which, noun, *step[at + 1 :], comma]
