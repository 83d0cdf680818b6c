"""Full stops of abbreviations: `ch. 3`, `3 tr. 3 ch.`, `3d. ch.`, which end nothing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import NOUNS, prep_before, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


_GOES_ON = frozenset(
    {"PREP", "BETWEEN", "TOGETHER", "ALLTOGETHER", "AS", "NOTCOUNTED", "OF", "KIND", "PICOT"}
    | {"CLUSTER", "TO", "TOEND", "TOLAST", "MORE", "INALL", "FROM", "FROMHOOK", "ROUND", "MOD"}
    | {"NOTHING", "WITH", "DIVIDED", "AND", "SEP", "LP", "AFTER", "ENDST", "ATEND", "REST"}
    | {"ALTERNATELY", "SOON", "TIMES", "BUT", "BELOW", "ATONCE"}
)
"""What may stand behind an abbreviation whose full stop ends nothing."""


_MADE = frozenset({"made", "just made", "just worked"})
_BEHIND_COUNT = frozenset({"", "SEP", "LP", "RP", "BETWEEN", "AND", "AS", "BELOW"})
"""What may stand behind chains and their number: `ch. 3, …`, `ch. 5 below`."""
_TELLS = frozenset({"is", "are", "being", "which", "that"})
"""Behind these a clause tells of the thing before them: `the 2 ch. is missed`."""


def _dots_alone(terminals: Sequence[Terminal], at: int) -> bool:
    """Whether full stops stand for commas here: `3 tr. 3 ch. 3 tr. under the next 5 ch.`, `3 tr.
    ch. 2, 3 tr.`"""
    counted = terminals[at + 1].type == "NUM"
    near = (at - 3, at + 3) if counted else (*range(at - 3, at - 1), *range(at + 2, at + 4))
    return any(
        0 < n < len(terminals) and terminals[n].text == "." and terminals[n - 1].short for n in near
    )


_STEPS = frozenset({"NUM", "STITCH", "CH", "PICOT"})
"""What a step begins with."""


DOTTED = "dotted"
"""The name of chains that a book abbreviates with a full stop: `3 ch.`"""


def _dotted(terminal: Terminal) -> Terminal:
    return replace(terminal, name=DOTTED) if terminal.type == "CH" else terminal


def _opens_more(before: Terminal, t: Sequence[Terminal]) -> bool:
    """Whether no step can end in what stands before a full stop: `ea.`, `sk. 2`, `3d. ch.`"""
    touches = before.end == t[0].start
    opens = touches and before.type in ("EACH", "SKIP") and len(t) > 1
    opens = opens and before.text not in _WHOLE
    return opens or _is_dotted_order(before, t)


_WHOLE = frozenset({"each", "every", "skip", "miss", "skipping", "missing"})
"""No abbreviations: a full stop behind them ends what they say."""


def _is_dotted_order(order: Terminal, t: Sequence[Terminal]) -> bool:
    """Whether the full stop that stands first belongs to `3d.`, as in `1 sc in 3d. ch., 6 ch.`:
    what it is the third of stands behind it, and begins no step of its own."""
    sorts = [x.type for x in t[1:]]
    figure = order.type == "ORD" and order.text[0].isdigit() and order.end == t[0].start
    begins = sorts[1:2] in (["NUM"], ["PREP"])
    begins |= sorts == ["CH", "SEP", "NUM"] and t[2].text == "."  # `3d. Ch. 6`
    return figure and sorts[:1] != [] and sorts[0] in NOUNS and not begins


def _begins_sentence(t: Sequence[Terminal], at: int) -> bool:
    """Whether a place opens with a capital, and what is made in it follows: `3 tr. In the next loop
    5 tr.`"""
    if t[at].type != "PREP" or not t[at].capital:
        return False
    ends = (n for n in range(at, len(t)) if t[n].type == "SEP")
    stop = next((n for n in ends if t[n].text != "." or not t[n - 1].short), len(t))
    bid = stop < len(t) and t[stop].text.isalpha()
    behind = range(at + 2, stop - 1)
    made = any(t[n - 1].type in NOUNS and types(t, n, 2) == ["NUM", "STITCH"] for n in behind)
    return made or (bid and types(t, stop + 1, 2) == ["NUM", "STITCH"])


_FIRST_STEP = 3
"""Before so many words the first step of a row has no place yet."""


def without_dots(terminals: list[Terminal]) -> list[Terminal]:
    """The terminals without the full stops that belong to an abbreviation."""
    sorts = [terminal.type for terminal in terminals] + ["", ""]
    kept: list[Terminal] = []
    for n, terminal in enumerate(terminals):
        if terminal.text == "." and kept and _opens_more(kept[-1], terminals[n : n + 4]):
            continue
        if terminal.text == "." and kept and kept[-1].short and kept[-1].end == terminal.start:
            # `ch. 3` is one thing, `2 ch. 3 dc` are two.
            counted = sorts[n + 1] == "NUM" and sorts[n - 2 if n > 1 else -1] != "NUM"
            behind = sorts[n + 2]
            made = n + 1 < len(terminals) and terminals[n + 1].text in _MADE
            # `1 d.c. into the corner d.c.`
            corner = sorts[n + 1] == "EXCEPT" and terminals[n + 1].text.startswith("in")
            # `under the 5 ch. at the corner`
            centre = [x.type for x in kept[-2:]] == ["CENTRE", kept[-1].type]
            placed = prep_before(kept) is not None or centre
            at_corner = sorts[n + 1] in ("EXCEPT", "ATEND") and placed
            # `1 d.c. in the corner, * …`, `in the corner of the handkerchief`
            begins = n < _FIRST_STEP and behind in ("SEP", "NOTHING")
            if (
                made
                or at_corner
                or (n + 1 < len(terminals) and terminals[n + 1].text in _TELLS)
                or (corner and (begins or behind in ("STITCH", "CH", "KIND")))
                or (sorts[n + 1] in _GOES_ON and not _begins_sentence(terminals, n + 1))
                or (sorts[n + 1] == "ENDWITH" and "last time" in terminals[n + 1].text)
                or (sorts[n + 1] == "SEP" and behind in ("TOGETHER", "ALLTOGETHER", "ATONCE"))
                or (counted and behind in _BEHIND_COUNT)
                # `ch. 5 over the 5 ch.`, `1 tr. and ch. 3 on each tr.`
                or (counted and behind == "PREP" and sorts[n - 1] == "CH" and not placed)
            ):
                kept[-1] = _dotted(kept[-1])
                continue
            if sorts[n + 1] == "SEP":
                kept[-1] = _dotted(kept[-1])
            if sorts[n + 1] in _STEPS and _dots_alone(terminals, n):
                terminal = replace(terminal, name="")
        kept.append(terminal)
    return kept
