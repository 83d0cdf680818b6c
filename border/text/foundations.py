"""What a row says of the edge that it is worked on: a foundation made, a place counted from the
hook, the other side of the braid.

The edge is given, so that none of this makes a stitch; what is taken of it is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding
from border.text.passing import chains_at, like, past, stitch_left_out, types
from border.text.rings import chains_before
from border.text.source import Source
from border.text.tree import Kind
from border.text.words import quoted, shortened

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_OPENED = ("make", "makes", "begin with", "commence with", "start with")
_LOOSE = ("SEP", "AND")
_IN_RING = frozenset({"it", "this", "ring", "circle"})
_PLACES = frozenset({"PREP", "SKIP", "BETWEEN", "ALLIN", "BEGIN", "ROUND"})


class _Head(Struct):
    """The head of a row as it is read: its terminals, and what has been told of them."""

    terminals: list[Terminal]
    source: Source
    findings: list[Finding] = field(default_factory=list)

    def tell(self, code: str, start: int, end: int, message: str, help_: str) -> None:
        """Of the terminals [start, end); `{}` in what is told is what they say."""
        span = self.source.span(self.terminals[start].start, self.terminals[end - 1].end)
        said = quoted(self.source, span)
        finding = Finding(code, message.format(said), help_.format(said), span)
        self.findings.append(finding)


def of_the_edge(
    terminals: list[Terminal], source: Source, row: int
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without what speaks of the edge itself, and what is told of that.

    `row`: the number of the row that is read; 0 where it is a clause, or behind a copy.
    """
    head = _Head(_chained(terminals), source)
    _sides(head, row)
    if row == 1:
        _two_from_the_hook(head)
        named = _foundation(head)
        _adjectives(head)
        _from_the_hook(head, named)
    # What stands elsewhere is no word of a row.
    lost = ("FOUNDATION", "ONESIDE", "OTHERSIDE")
    left = [replace(t, type="UNKNOWN") if t.type in lost else t for t in head.terminals]
    return left, head.findings


def _chained(t: list[Terminal]) -> list[Terminal]:
    """`chain 8 stitches` as `chain 8`."""
    return [
        x
        for n, x in enumerate(t)
        if not (x.text in ("stitches", "sts") and n > 1 and types(t, n - 2, 2) == ["CH", "NUM"])
    ]


def _sides(head: _Head, row: int) -> None:
    """`On the other side of the braid work …` at the head of a row."""
    t = head.terminals
    at = past(t, 0, "SEP", "REMARK")
    if row < 1 or types(t, at, 1) not in (["ONESIDE"], ["OTHERSIDE"]):
        return
    if t[at].type == "ONESIDE" or row == 1:
        t[at] = replace(t[at], type="REMARK")
        return
    head.findings.append(other_edge(head.source, t[at].start, t[at].end))
    del t[at]


def other_edge(source: Source, start: int, end: int, row: int | None = None) -> Finding:
    """What is told of words that may name another edge than that of the row before.

    `row`: the row whose head they are.
    """
    said = shortened(source.text[start:end])
    message = f'"{said}" may be another edge; this row is counted into the row before it'
    apart = f'set the words apart: "-- {said} --"' if row is None else f'write "round {row}:"'
    help_ = (
        "if it is worked along another edge, write it into a border file of its own, to be "
        f"counted on that; if not, {apart}"
    )
    return Finding("other-edge", message, help_, source.span(start, end), row)


# --- a foundation that is made -------------------------------------------------------------


def _foundation(head: _Head) -> bool:
    """`Make 15 chain, turn`, `8 ch, join into a ring`, `make a foundation of 8 st`: the edge.

    True where it was a chain that is not joined.
    """
    t = head.terminals
    opened = past(t, 0, "SEP")
    opened += types(t, opened, 3) == ["PREP", "NUM", "FOUNDATION"]  # `on a foundation of 15`
    at, count = _chains(t, opened)
    if not count:
        return False
    said = any(x.type == "FOUNDATION" for x in t[opened:at])
    made = any(x.text in _OPENED for x in t[:opened])
    end = past(t, at, *_LOOSE, "COLOUR")
    ring = _behind_join(t, end, count)
    plain = ring == end + 1 and t[end].text == "join"
    plain |= ring > end and t[end].type != "ENDING"  # `ch 4, 1 sl st in 1st` may be a picot
    if ring > end and (made or said or not plain or _names_ring(t, ring)):
        _ring(head, ring, count)
        return False
    turned = types(t, end, 1) == ["ENDING"] and t[end].name == "turn"
    stopped = types(t, at, 1) == ["SEP"] and t[at].name == "hard" and t[at].text != "then"
    long = count >= _MANY and any(x.type == "OF" for x in t[opened:at])  # `a chain of twelve`
    by_opening = made and (turned or (stopped and (long or t[0].text.startswith("make"))))
    # `17 ch, turn, 1 tr on 8th st`, `18 ch, 1 tr in 8th st, 2 ch, …`
    first = turned or (count >= _MANY and not _repeats_all(t))
    into = first and 3 < _hook_place(t, end, named=True)[1] < count
    if not (said or by_opening or into or _counts_from_hook(t, at, count)):
        return False
    head.tell(
        "foundation-named",
        0,
        end + 1 if turned else at,
        f"{_chain(count)} the foundation: the edge that the rows are counted on, so that "
        f"{'they make' if count > 1 else 'it makes'} nothing here",
        f"give that edge its number, as in --loops {count if count > 1 else 96} --open, and set "
        "this apart: "
        '"-- {} --"',
    )
    head.terminals = t[past(t, end + turned, *_LOOSE) :]
    return True


_MANY = 12
"""So many chains are more than a loop of the first row."""


def _repeats_all(t: Sequence[Terminal]) -> bool:
    """Whether all that stands before a repeat is worked again."""
    repeat = next((n for n, x in enumerate(t) if x.type in ("REPEAT", "SOON")), len(t))
    return repeat < len(t) and all(x.type not in ("STAR", "MARK", "CROSS") for x in t[:repeat])


def _chain(count: int) -> str:
    """`a foundation chain` has no number, so that it counts as one."""
    return f"these {count} chains are" if count > 1 else "this chain is"


_NEAR = 3
"""As far as that along a chain is no stitch passed over."""


def _adjectives(head: _Head) -> None:
    """`on the 5 foundation stitches`, `in each stitch of chain` of row 1: they are what it is
    worked on in any case."""
    t = head.terminals
    kept: list[Terminal] = []
    at = 0
    while at < len(t):
        named = t[at].type == "FOUNDATION" and types(t, at + 1, 1) in (["KIND"], ["CH"])
        each = types(kept, len(kept) - 2, 2) == ["EACH", "KIND"]
        near = types(kept, len(kept) - 2, 2) == ["ORD", "KIND"] and kept[-2].number <= _NEAR
        each |= near and all(x.type != "CH" for x in kept)  # they may be closed into a picot
        each = each and kept[-1].kind == Kind("st")
        chain = past(t, at + 1, "THE") if each and t[at].type == "OF" else len(t)
        of_chain = types(t, chain, 1) == ["CH"] and types(t, chain + 1, 1) != ["NUM"]
        if not named and not of_chain:
            kept.append(t[at])
        at = chain + 1 if of_chain else at + 1
    head.terminals = kept


def _chains(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """Behind `15 chain`, `a chain of 20 stitches`, `a foundation of 8 st`, and how many."""
    start = at + (types(t, at, 1) == ["THE"] or (types(t, at, 1) == ["NUM"] and t[at].number == 1))
    named = past(t, start, "FOUNDATION", "CH")
    ring = t[start : start + 1] and t[start].text in _IN_RING and types(t, start + 1, 1) == ["OF"]
    if ring and (made := chains_at(t, start + 2))[0]:
        return made[1], made[0]  # `a ring of 10 chain`
    if named > start and types(t, named, 2) == ["OF", "NUM"]:
        end = named + 2
        return end + (types(t, end, 1) in (["KIND"], ["CH"])), t[named + 1].number
    if types(t, at, 2) == ["NUM", "FOUNDATION"] and types(t, at + 2, 1) in (["CH"], ["KIND"]):
        return at + 3, t[at].number
    count, end = chains_at(t, at)
    return end, count


def _behind_join(t: Sequence[Terminal], at: int, count: int) -> int:
    """Behind `join into a ring`, `close these in a ring with 1 sl st`; else the same place.

    `join to the next loop` makes no ring; `1 sl st in 1st st` may.
    """
    slip = at + (types(t, at, 1) == ["NUM"] and t[at].number == 1)
    slips = types(t, slip, 2) in (["STITCH", "PREP"], ["STITCH", "TO"]) and t[slip].name == "ss"
    if not slips and (types(t, at, 1) != ["ENDING"] or t[at].name != "join"):
        return at
    end = slip + 1 if slips else at + 1
    end = past(t, end, "WITH", "NUM", "STITCH") if types(t, end, 1) == ["WITH"] else end
    place = past(t, end, "PREP", "TO", "THE")
    if place == end:
        return end
    firsts = (1, count, -1) if slips else (1,)  # `1 sl st in 8th st from needle`
    if types(t, place, 1) != ["ORD"] or t[place].number not in firsts:
        return at
    return past(t, place + 1, "CH", "KIND", "OF", "THE", "NUM", "FROMHOOK")


def _ring(head: _Head, end: int, count: int) -> None:
    """A ring made at the head of a row, and what is worked into it: the one site of its edge."""
    t, start = head.terminals, past(head.terminals, end, *_LOOSE)
    along = any(x.type == "SKIP" for x in t[start:])  # `on it 1 tr, 2 ch, miss 2`: in its stitches
    rest: list[Terminal] = []
    at, first = start, -1
    while at < len(t):
        behind = _behind_ring(t, at) if t[at].type in ("PREP", "UNDERIT") else at
        if behind == at:
            rest.append(t[at])
            at += 1
            continue
        if along:
            at = behind
            continue
        rest += [like(t[at], "PREP"), like(t[at], "SAME"), like(t[at], "PLACE")]
        first, at = (len(rest) - 2 if first < 0 else first), behind
    number = count if first < 0 else 1
    head.tell(
        "foundation-named",
        0,
        end,
        f"these {count} chains, joined, are the edge that the rounds are counted on, so that "
        "they make nothing here",
        f"give that edge its number, as in --loops {number}"
        + (": the ring is one place to work into" if first >= 0 else ""),
    )
    again = _chains(rest, 0)[1] or any(x.type in ("STAR", "MARK", "LP") for x in rest)
    if first >= 0 and again:  # into the ring more than once, the chains at its head as well
        here = rest[first]
        begun = [like(here, "BEGIN"), like(here, "PREP"), *_one_loop(here), like(here, "SEP")]
        rest = [*begun, *rest]
    elif first >= 0:
        rest[first : first + 2] = _one_loop(rest[first])
    head.terminals = rest


def _names_ring(t: Sequence[Terminal], start: int) -> bool:
    placed = (n for n in range(start, len(t)) if t[n].type in ("PREP", "UNDERIT"))
    return any(_behind_ring(t, n) > n for n in placed)


def _one_loop(here: Terminal) -> list[Terminal]:
    return [like(here, "NEXT"), replace(like(here, "KIND", Kind("loop")), text="loop")]


def _behind_ring(t: Sequence[Terminal], at: int) -> int:
    """Behind `in it`, `into the ring`, `under it`; the same place where no ring is named."""
    if t[at].type == "UNDERIT":
        return at + (t[at].text.split()[-1] in _IN_RING)
    end = past(t, at + 1, "THE")
    return end + 1 if end < len(t) and t[end].text in _IN_RING else at


# --- a place counted from the hook ---------------------------------------------------------


def _counts_from_hook(t: Sequence[Terminal], at: int, count: int) -> bool:
    """Whether `20 chain, 1 treble in the 4th chain from the hook` goes into these chains, and
    closes no picot."""
    place, order, end = _hook_place(t, at)
    long = count > 3 * order + _STEM  # no picot stands on so long a stem
    return end > place and 0 < order < count and (long or not _picot_before(t[:place]))


_STEM = 4


def _from_the_hook(head: _Head, named: bool) -> None:
    """`1 treble in the 6th chain from the needle`, before any other place: the 6th of the edge;
    so `miss 5` behind a foundation that is named."""
    t = head.terminals
    opened = past(t, 0, "SEP")
    if (end := _behind_last_missed(t, opened)) > opened:
        last = next(n for n in range(opened, end) if t[n].type == "NUM")
        _tell_passed(head, opened, end, t[last].number)
        head.terminals = [*t[: opened + 1], t[last], *t[end:]]
        return
    if named and types(t, opened, 2) == ["SKIP", "NUM"]:
        _tell_passed(head, opened, opened + 2, t[opened + 1].number)
        return
    if types(t, opened, 2) == ["SKIP", "NUM"]:  # `miss 5 chain, into the 6th from the hook`
        missed = past(t, past(t, opened + 2, "CH", "KIND"), "SEP")
        place, order, end = _hook_place(t, missed)
        if end > place and order == t[opened + 1].number + 1:
            head.terminals = t = t[missed:]
    place, order, end = _hook_place(t, 0, named)
    chains = _chains(t, opened)[1] or types(t, opened, 1) == ["CH"]
    if end == place or order < 1 or chains or _picot_before(t[:place]):
        return
    if order > 1:
        _tell_passed(head, place, end, order - 1)
    nth = next(x for x in t[place:end] if x.type == "ORD")
    t[place + 1 : end] = [nth, stitch_left_out(nth)]
    _repeat_behind(t, place)


def _two_from_the_hook(head: _Head) -> None:
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
        start = n - (types(t, n - 1, 1) == ["NUM"] and t[n - 1].number == 2)
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
    stop = next((n for n in range(at, len(t)) if t[n].type == "SEP"), len(t))
    repeat = next((n for n in range(stop, len(t)) if t[n].type == "REPEAT"), len(t))
    brackets = any(x.type == "LP" for x in t[:repeat])
    if _repeats_all(t) and not brackets and any(x.type != "SEP" for x in t[stop:repeat]):
        t.insert(stop + 1, like(t[stop], "STAR"))


def _behind_last_missed(t: Sequence[Terminal], at: int) -> int:
    """Behind `miss the last 7 stitches of the chain` at the head of a row; else the same place."""
    last = past(t, at + 1, "THE") if types(t, at, 1) == ["SKIP"] else at
    pair = sorted(types(t, last, 2)) == ["NUM", "ORD"]
    if not pair or all(x.number != -1 for x in t[last : last + 2]):
        return at
    end = past(t, last + 2, "CH", "KIND")
    chain = past(t, end + 1, "THE") if types(t, end, 1) == ["OF"] else end
    return chain + 1 if chain > end and types(t, chain, 1) == ["CH"] else end


def _tell_passed(head: _Head, start: int, end: int, count: int) -> None:
    chains = "chain is" if count == 1 else f"{count} chains are"
    head.tell(
        "foundation-passed",
        start,
        end,
        f"the first {chains} counted as passed over here, and as no stitch",
        "if they stand up as the first stitch, and rows further on work into it, write that "
        'stitch: "ch 3 as dc", and give the edge fewer places',
    )


def _hook_place(t: Sequence[Terminal], start: int, named: bool = False) -> tuple[int, int, int]:
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
    far = unit and t[nth].number > _NEAR
    if far and types(t, end, 1) == ["OF"] and types(t, chain, 1) == ["CH"]:
        return at, t[nth].number, chain + 1  # `in the 8th stitch of the chain`
    counted = named and unit and types(t, end, 1) != ["OF"]
    return (at, t[nth].number, end) if counted else (at, 0, at)


def _picot_before(t: Sequence[Terminal]) -> int:
    """The chains that a stitch, or `fasten`, closes into a picot here; else 0."""
    steps = _steps(t)
    if steps and steps[-1].type in ("CATCH", "ENDING"):
        steps[-1] = replace(steps[-1], type="STITCH", name="ss")
    return chains_before(steps)


def _steps(t: Sequence[Terminal]) -> list[Terminal]:
    return [x for x in t if x.type not in _LOOSE]
