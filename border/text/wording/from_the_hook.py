"""Places of a first row counted from the hook: `20 chain, 1 treble in the 4th chain from the hook`;
and the chains, made or missed, that such words speak of.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding
from border.stitches import STITCHES
from border.text.source import Source
from border.text.tree import Kind
from border.text.wording.passing import chains_at, ended, like, past, stitch_left_out, types
from border.text.wording.rings import chains_before
from border.text.words import quoted
from border.text.written_places import write_ordinal

if TYPE_CHECKING:
    from border.text.terminals import Terminal

LOOSE = ("SEP", "AND")
RING = frozenset({"it", "this", "ring", "circle"})
NEAR = 3
"""As far as that along a chain is no stitch passed over."""
_PLACES = frozenset({"PREP", "SKIP", "BETWEEN", "ALLIN", "BEGIN", "ROUND"})


class Head(Struct):
    """The head of a row as it is read: its terminals, and what has been told of them."""

    terminals: list[Terminal]
    source: Source
    findings: list[Finding] = field(default_factory=list)

    def tell(self, code: str, start: int, end: int, message: str, help_: str) -> None:
        """Of the terminals [start, end); `{}` in what is told is what they say."""
        said = self.terminals[start:end]
        span = self.source.span(min(t.start for t in said), max(t.end for t in said))
        words = quoted(self.source, span)
        finding = Finding(code, message.format(words), help_.format(words), span)
        self.findings.append(finding)


def repeats_all(t: Sequence[Terminal]) -> bool:
    """Whether all that stands before a repeat is worked again."""
    repeat = next((n for n, x in enumerate(t) if x.type in ("REPEAT", "SOON")), len(t))
    return repeat < len(t) and all(x.type not in ("STAR", "MARK", "CROSS") for x in t[:repeat])


def foundation_at(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """How many chains are `15 chain`, `a chain of 20 stitches`, `a foundation of 8 st`, and the
    place behind them; 0 where none stand here."""
    start = at + (types(t, at, 1) == ["THE"] or (types(t, at, 1) == ["NUM"] and t[at].number == 1))
    named = past(t, start, "FOUNDATION", "CH")
    ring = t[start : start + 1] and t[start].text in RING and types(t, start + 1, 1) == ["OF"]
    if ring and (made := chains_at(t, start + 2))[0]:
        return made  # `a ring of 10 chain`
    if named > start and types(t, named, 2) == ["OF", "NUM"]:
        end = named + 2
        return t[named + 1].number, end + (types(t, end, 1) in (["KIND"], ["CH"]))
    if types(t, at, 2) == ["NUM", "FOUNDATION"] and types(t, at + 2, 1) in (["CH"], ["KIND"]):
        return t[at].number, at + 3
    return chains_at(t, at)


def counts_from_hook(t: Sequence[Terminal], at: int, count: int) -> bool:
    """Whether `20 chain, 1 treble in the 4th chain from the hook` goes into these chains, and
    closes no picot."""
    place, order, end = hook_place(t, at)
    turn = max((n for n in range(at, place) if t[n].name == "turn"), default=at)
    if any(x.type == "STITCH" for x in t[at:turn]):
        return False  # chains behind that turn are fastened back there
    long = count > 3 * order + _STEM  # no picot stands on so long a stem
    return end > place and 0 < order < count and (long or not _picot_before(t[:place]))


_STEM = 4


def from_the_hook(head: Head, named: bool) -> None:
    """`1 treble in the 6th chain from the needle`, before any other place: the 6th of the edge;
    so `miss 5` behind a foundation that is named."""
    t = head.terminals
    opened = past(t, 0, "SEP", "REMARK")
    if (end := _next_the_hook(t, opened)) > opened:
        _tell_passed(head, opened, end, 1)
        head.terminals = [*t[: opened + 1], like(t[opened], "NUM", number=1), *t[end:]]
        return
    if (end := _behind_last_missed(t, opened)) > opened:
        last = next(n for n in range(opened, end) if t[n].type == "NUM")
        _tell_passed(head, opened, end, t[last].number)
        head.terminals = [*t[: opened + 1], t[last], *t[end:]]
        return
    if named and types(t, opened, 2) == ["SKIP", "NUM"]:
        _tell_passed(head, opened, opened + 2, t[opened + 1].number)
        _repeat_behind(t, past(t, opened + 2, "CH", "KIND", "SEP"))
        return
    if types(t, opened, 2) == ["SKIP", "NUM"]:  # `miss 5 chain, into the 6th from the hook`
        missed = past(t, past(t, opened + 2, "CH", "KIND"), "SEP")
        place, order, end = hook_place(t, missed)
        if end > place and order == t[opened + 1].number + 1:
            head.terminals = t = t[missed:]
    place, order, end = hook_place(t, 0, named)
    made = foundation_at(t, opened)[0]
    back = any(x.type == "ENDING" for x in t[opened:place])  # `…, turn, 6 ch, 1 ss in 4th from …`
    if end > place and 0 < made < order and not back:
        _behind_own_chains(head, place, end, order - made)
        return
    chains = made or types(t, opened, 1) == ["CH"]
    if end == place or order < 1 or chains or _picot_before(t[:place]):
        return
    if order > 1:
        _tell_passed(head, place, end, order - 1)
    nth = next(x for x in t[place:end] if x.type == "ORD")
    t[place + 1 : end] = [nth, stitch_left_out(nth)]
    _repeat_behind(t, place)


def _behind_own_chains(head: Head, place: int, end: int, nth: int) -> None:
    """`3 ch, 1 dc in the 4th ch from the hook` at the head of row 1: behind these 3."""
    head.tell(
        "foundation-passed",
        place,
        end,
        "the chains made here are counted from the hook as well: this goes into the "
        f"{'next' if nth == 1 else write_ordinal(nth)} place of the edge",
        'where these chains are not made besides the foundation, set them apart: "-- Ch 3 --"',
    )
    t = head.terminals
    order = next(x for x in t[place:end] if x.type == "ORD")
    which = like(order, "NEXT") if nth == 1 else replace(order, number=nth)
    t[place + 1 : end] = [which, stitch_left_out(order)]


def perhaps_from_the_hook(head: Head) -> None:
    """`1 dc in the 8th st, ch 2, skip 2, 1 dc in next; repeat` as the first of all: such a number
    is mostly counted from the hook."""
    t = head.terminals
    at = past(t, 0, "SEP", "NUM")
    nth = past(t, at + 2, "THE")
    placed = types(t, at, 2) == ["STITCH", "PREP"] and t[at].name in STITCHES
    tall = placed and STITCHES[t[at].name].height > 1
    far = tall and types(t, nth, 1) == ["ORD"] and t[nth].number in _FROM_HOOK
    unit = types(t, nth + 1, 1) == ["CH"] or (nth + 1 < len(t) and t[nth + 1].kind == Kind("st"))
    if far and unit and types(t, nth + 2, 1) == ["SEP"] and repeats_all(t):
        head.tell(
            "place-assumed",
            at,
            nth + 2,
            "this is counted along the edge, and again in each repeat",
            'if it is counted from the hook, on a foundation that is turned, write "from hook" '
            "behind it",
        )


_FROM_HOOK = range(4, 11)
"""With so many chains a row is begun."""


def two_from_the_hook(head: Head) -> None:
    """`2 dc in the 4th and 5th ch from hook`: one in the 4th, one in the next."""
    t = head.terminals
    for n, here in enumerate(t):
        at = past(t, n + 1, "THE")
        pair = here.type == "STITCH" and types(t, at, 4) == ["PREP", "ORD", "AND", "ORD"]
        if not pair or t[at + 3].number != t[at + 1].number + 1:
            continue
        noun = past(t, at + 4, "KIND", "CH", "SEP")
        end = past(t, noun, "OF", "THE")
        if types(t, noun, 1) != ["FROMHOOK"] and types(t, end, 1) != ["CH"]:
            continue
        end = noun if types(t, noun, 1) == ["FROMHOOK"] else end
        start = n - (types(t, n - 1, 1) == ["NUM"] and t[n - 1].number in (1, 2))
        one = like(here, "NUM", number=1)
        hook = [t[at], t[at + 1], like(t[end], "FROMHOOK")]
        next_ = [t[at], like(t[at + 1], "NEXT"), stitch_left_out(t[at + 1])]
        head.terminals = [
            *t[:start],
            one,
            here,
            *hook,
            like(here, "SEP"),
            one,
            here,
            *next_,
            *t[end + 1 :],
        ]
        return


def _repeat_behind(t: list[Terminal], at: int) -> None:
    """`1 dc in 4th ch from hook, 1 ch, miss 1, 1 dc; repeat`: that place comes once, and what is
    behind it is repeated."""
    stop = next((n for n in range(at, len(t)) if t[n].type in ("SEP", "REPEAT")), len(t))
    repeat = next((n for n in range(stop, len(t)) if t[n].type == "REPEAT"), len(t))
    brackets = any(x.type == "LP" for x in t[:repeat])
    if repeat == len(t) or not repeats_all(t) or brackets:
        return
    if any(x.type != "SEP" for x in t[stop:repeat]):
        t.insert(stop + 1, like(t[stop], "STAR"))
    elif any(x.type == "EACH" for x in t[at:stop]):
        del t[repeat]  # `miss 3, 1 dc in each ch; repeat`


def _next_the_hook(t: Sequence[Terminal], at: int) -> int:
    """Behind `miss the chain next the needle` at the head of a row; else the same place."""
    chain = past(t, at + 1, "THE", "ORD") if types(t, at, 1) == ["SKIP"] else at
    near = past(t, chain + 1, "NEXT", "TO", "THE") if types(t, chain, 1) == ["CH"] else at
    hook = near > chain + 1 and near < len(t) and t[near].text in ("needle", "hook")
    return near + 1 if hook and t[chain + 1].type == "NEXT" else at


def _behind_last_missed(t: Sequence[Terminal], at: int) -> int:
    """Behind `miss the last 7 stitches of the chain` at the head of a row; else the same place."""
    last = past(t, at + 1, "THE") if types(t, at, 1) == ["SKIP"] else at
    pair = sorted(types(t, last, 2)) == ["NUM", "ORD"]
    if not pair or all(x.number != -1 for x in t[last : last + 2]):
        return at
    end = past(t, last + 2, "CH", "KIND")
    chain = past(t, end + 1, "THE") if types(t, end, 1) == ["OF"] else end
    return chain + 1 if chain > end and types(t, chain, 1) == ["CH"] else end


def _tell_passed(head: Head, start: int, end: int, count: int) -> None:
    chains = "chain is" if count == 1 else f"{count} chains are"
    head.tell(
        "foundation-passed",
        start,
        end,
        f"the first {chains} counted as passed over here, and as no stitch",
        "if they stand up as the first stitch, and rows further on work into it, write that "
        'stitch in their place, as in "ch 3 as dc, 1 dc in next st", and count on the edge the '
        "places from that stitch on",
    )


def hook_place(t: Sequence[Terminal], start: int, named: bool = False) -> tuple[int, int, int]:
    """Where the first place stands from here on, and, where it counts from the hook, the number
    of that chain and the place behind it all. `named`: so it does behind a foundation."""
    at = next((n for n in range(start, len(t)) if t[n].type in _PLACES), len(t))
    nth = past(t, at + 1, "THE")
    if at == len(t) or t[at].type != "PREP" or types(t, nth, 1) != ["ORD"]:
        return at, 0, at
    end = nth + 1
    unit = end < len(t) and (t[end].type == "CH" or t[end].kind in (Kind("st"), Kind("loop")))
    end += unit
    if types(t, end, 1) == ["FROMHOOK"]:
        return at, t[nth].number, end + 1
    chain = end + 1 + (types(t, end + 1, 1) == ["THE"])
    far = unit and t[nth].number > NEAR
    sized = types(t, chain + 1, 1)[:1] in (["NUM"], ["KIND"])  # `4th ch of the ch-7 space`
    if far and types(t, end, 1) == ["OF"] and types(t, chain, 1) == ["CH"] and not sized:
        return at, t[nth].number, chain + 1  # `in the 8th stitch of the chain`
    counted = named and (unit or ended(t, end)) and types(t, end, 1) != ["OF"]
    return (at, t[nth].number, end) if counted else (at, 0, at)


def _picot_before(t: Sequence[Terminal]) -> int:
    """The chains that a stitch, or `fasten`, closes into a picot here; else 0."""
    steps = _steps(t)
    if steps and steps[-1].type in ("CATCH", "ENDING"):
        steps[-1] = replace(steps[-1], type="STITCH", name="ss")
    return chains_before(steps)


def _steps(t: Sequence[Terminal]) -> list[Terminal]:
    return [x for x in t if x.type not in LOOSE]
