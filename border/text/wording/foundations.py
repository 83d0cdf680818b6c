"""What a row says of the edge that it is worked on: a foundation made, the other side of the braid.

The edge is given, so that none of this makes a stitch; what is taken of it is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.tree import Kind
from border.text.wording.from_the_hook import (
    LOOSE,
    NEAR,
    RING,
    Head,
    counts_from_hook,
    foundation_at,
    from_the_hook,
    hook_place,
    perhaps_from_the_hook,
    repeats_all,
    two_from_the_hook,
)
from border.text.wording.passing import OPENS, chains_at, ended, is_stop, like, past, types
from border.text.words import shortened

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_OPENED = ("make", "makes", "begin with", "commence with", "start with")


def of_the_edge(
    terminals: list[Terminal], source: Source, row: int
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without what speaks of the edge itself, and what is told of that.

    `row`: the number of the row that is read; 0 where it is a clause, or behind a copy.
    """
    head = Head(_chained(terminals), source)
    _sides(head, row)
    if row == 1:
        two_from_the_hook(head)
        named = _foundation(head)
        if not named and not head.findings:
            _rises_in_ring(head)
        _adjectives(head)
        from_the_hook(head, named)
        perhaps_from_the_hook(head)
    # What stands elsewhere is no word of a row.
    lost = ("FOUNDATION", "ONESIDE", "OTHERSIDE")
    left = [replace(t, type="UNKNOWN") if t.type in lost else t for t in head.terminals]
    return left, head.findings


def _chained(t: list[Terminal]) -> list[Terminal]:
    """`chain 8 stitches` as `chain 8`."""
    return [
        x
        for n, x in enumerate(t)
        if not (
            x.text in ("stitches", "sts", "st", "stitch")
            and n > 1
            and types(t, n - 2, 2) == ["CH", "NUM"]
        )
    ]


def _sides(head: Head, row: int) -> None:
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


def _foundation(head: Head) -> bool:
    """`Make 15 chain, turn`, `8 ch, join into a ring`, `make a foundation of 8 st`: the edge.

    True where it was a chain that is not joined.
    """
    t = head.terminals
    opened = past(t, 0, "SEP")
    on = opened
    # `on a foundation of 15`, `on a chain of 15 work …`
    led = types(t, on, 3)
    a = led == ["PREP", "NUM", "CH"] and (t[on + 1].text == "a" or t[on + 1].number >= _MANY)
    opened += a or led == ["PREP", "NUM", "FOUNDATION"]
    count, at = foundation_at(t, opened)
    if not count:
        told = types(t, opened, 1) == ["REMARK"] and {"chain", "ch"} & set(t[opened].text.split())
        behind = past(t, opened + 1, "SEP")
        turned = types(t, behind, 1) == ["ENDING"] and t[behind].name == "turn"
        skip = past(t, behind + turned, "SEP")
        if told and types(t, skip, 1) == ["SKIP"]:  # `Make a chain the length; turn, miss 3`
            head.terminals = [*t[: opened + 1], *t[skip:]]
            return True
        return False
    if (place := _in_first_chain(t, at, count)) > at:
        _one_chain(head, at, place, count)
        return False
    said = opened > on or any(x.type == "FOUNDATION" for x in t[opened:at])
    made = any(x.text in _OPENED for x in t[:opened])
    end = past(t, at, *LOOSE, "COLOUR")
    ring = _behind_join(t, end, count)
    plain = ring == end + 1 and t[end].text == "join"
    plain |= ring > end and t[end].type != "ENDING"  # `ch 4, 1 sl st in 1st` may be a picot
    if ring > end and (made or said or not plain or count >= _MANY or _names_ring(t, ring)):
        _ring(head, ring, count)
        return False
    turned = types(t, end, 1) == ["ENDING"] and t[end].name == "turn"
    stopped = at < len(t) and is_stop(t[at])
    long = count >= _MANY and any(x.type == "OF" for x in t[opened:at])  # `a chain of twelve`
    make = t[0].text.startswith("make")
    by_opening = made and (turned or (stopped and (long or make)) or (make and count > 2 * _MANY))
    # `17 ch, turn, 1 tr on 8th st`, `18 ch, 1 tr in 8th st, 2 ch, …`
    first = turned or (count >= _MANY and (not repeats_all(t) or _more_steps(t, end)))
    into = first and 3 < hook_place(t, end, named=True)[1] < count
    skip = past(t, end + turned, *LOOSE)
    skips = types(t, skip, 2) == ["SKIP", "NUM"] and (count >= _MANY or turned)
    # `commence with 16 ch, miss 3, …`; `18 ch, miss 5, …; repeat`, which is no loop over 5; `8 ch,
    # turn, miss 3, …`
    missed = t[skip + 1].number if skips else 0
    wide = repeats_all(t) and count > 3 * missed
    skips = skips and (count > missed + 2 if turned else made or stopped or wide)
    if not (said or by_opening or into or skips or counts_from_hook(t, at, count)):
        return False
    apart = turned and "\n" not in head.source.text[t[0].start : t[end].start]
    head.tell(
        "foundation-named",
        0,
        end + 1 if apart else at,
        f"{_chain(count)} the foundation: the edge that the rows are counted on, so that "
        f"{'they make' if count > 1 else 'it makes'} nothing here",
        f"give that edge its number, as in --loops {count if count > 1 else 96} --open, and set "
        "this apart: "
        '"-- {} --"',
    )
    head.terminals = t[past(t, end + turned, *LOOSE) :]
    return True


def _in_first_chain(t: Sequence[Terminal], at: int, count: int) -> int:
    """Where the place begins of `8 chain, 4 treble in the 8th chain from the hook`, `in the first
    chain`: all of these go into one chain, and close no picot. The same place where none does."""
    stitch = past(t, past(t, at, *LOOSE), "NUM")
    made = t[stitch - 1].number if stitch > at and t[stitch - 1].type == "NUM" else 1
    nth = past(t, stitch + 2, "THE")
    if types(t, stitch, 2) != ["STITCH", "PREP"] or types(t, nth, 2) not in _NTH or made < _SEVERAL:
        return at
    last = t[nth].number == count and types(t, nth + 2, 1) == ["FROMHOOK"]
    first = t[nth].number == 1 and ended(t, nth + 2) and count > NEAR
    alone = all(x.type not in ("PREP", "SKIP", "REPEAT", "STAR", "EACH") for x in t[nth:])
    return stitch + 1 if (last or first) and alone else at


_NTH = (["ORD", "CH"], ["ORD", "KIND"])
_SEVERAL = 2
"""Fewer in the first of some chains may close them into a picot."""


def _one_chain(head: Head, at: int, place: int, count: int) -> None:
    """What is worked into the first chain of a foundation: the one site of its edge."""
    t = head.terminals
    end = past(t, place, "PREP", "THE", "ORD", "CH", "KIND", "FROMHOOK")
    head.tell(
        "foundation-named",
        0,
        at,
        f"these {count} chains are begun on: what goes into the first of them is counted on an "
        "edge of that one loop, and the others are counted as no stitch",
        "give that edge its number, as in --loops 1 --open; if the others stand up as the first "
        'stitch, write it in their place, as in "ch 3 as dc"',
    )
    head.terminals = [*t[at : place + 1], *_one_loop(t[place]), *t[end:]]


def _more_steps(t: Sequence[Terminal], at: int) -> bool:
    """Whether more stands behind the first step than its repeat: `15 chain, 1 dc in 5th st; repeat`
    makes loops of 15."""
    stop = next((n for n in range(at, len(t)) if t[n].type == "SEP"), len(t))
    repeat = next((n for n in range(stop, len(t)) if t[n].type == "REPEAT"), len(t))
    return any(x.type not in LOOSE for x in t[stop:repeat])


_MANY = 12
"""So many chains are more than a loop of the first row."""


def _chain(count: int) -> str:
    """`a foundation chain` has no number, so that it counts as one."""
    return f"these {count} chains are" if count > 1 else "this chain is"


def _adjectives(head: Head) -> None:
    """`on the 5 foundation stitches`, `in each stitch of chain` of row 1: they are what it is
    worked on in any case."""
    t = head.terminals
    kept: list[Terminal] = []
    at = 0
    while at < len(t):
        named = t[at].type == "FOUNDATION" and types(t, at + 1, 1) in (["KIND"], ["CH"])
        each = types(kept, len(kept) - 2, 2) == ["EACH", "KIND"]
        near = types(kept, len(kept) - 2, 2) == ["ORD", "KIND"] and kept[-2].number <= NEAR
        each |= near and all(x.type != "CH" for x in kept)  # they may be closed into a picot
        each = each and kept[-1].kind == Kind("st")
        chain = past(t, at + 1, "THE") if each and t[at].type == "OF" else len(t)
        of_chain = types(t, chain, 1) == ["CH"] and types(t, chain + 1, 1) != ["NUM"]
        if not named and not of_chain:
            kept.append(t[at])
        at = chain + 1 if of_chain else at + 1
    head.terminals = kept


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
    noun = t[place + 1].kind if place + 1 < len(t) else None
    if noun is not None and noun.name not in _OF_RING:
        return at  # `1 sl st in first run of 3 dc`
    return past(t, place + 1, "CH", "KIND", "OF", "THE", "THEM", "NUM", "FROMHOOK")


_OF_RING = frozenset({"st", "loop", "ch", "space"})
"""What the chains of a ring are called, where they are joined."""


def _ring(head: Head, end: int, count: int) -> None:
    """A ring made at the head of a row, and what is worked into it: the one site of its edge."""
    t = head.terminals
    rest, named = _in_ring(t[past(t, end, *LOOSE) :])
    head.tell(
        "foundation-named",
        0,
        end,
        f"these {count} chains, joined, are the edge that the rounds are counted on, so that "
        "they make nothing here",
        f"give that edge its number, as in --loops {1 if named else count}"
        + (": the ring is one place to work into" if named else ""),
    )
    head.terminals = rest


def _rises_in_ring(head: Head) -> None:
    """`3 chain, 15 treble in the ring` in a first row: the chains rise from the ring as well."""
    t = head.terminals
    start = past(t, 0, "SEP")
    chains, behind = chains_at(t, start)
    place = next((n for n in range(behind, len(t)) if t[n].type in OPENS), len(t))
    ring = _behind_ring(t, place) if types(t, place, 1) == ["PREP"] else place
    if chains > 1 and ring > place and t[ring - 1].text in _MADE_RING:
        head.terminals, _ = _in_ring(t[start:])


_MADE_RING = RING - {"it", "this"}


def _in_ring(t: Sequence[Terminal]) -> tuple[list[Terminal], bool]:
    """Steps that are worked into a ring, and whether they name it."""
    along = any(x.type == "SKIP" for x in t)  # `on it 1 tr, 2 ch, miss 2`: in its stitches
    rest: list[Terminal] = []
    at, first = 0, -1
    while at < len(t):
        behind = _behind_ring(t, at) if t[at].type in ("PREP", "UNDERIT", "INALL") else at
        if behind == at:
            rest.append(t[at])
            at += 1
            continue
        if along:
            at = behind
            continue
        rest += [like(t[at], "PREP"), like(t[at], "SAME"), like(t[at], "PLACE")]
        first, at = (len(rest) - 2 if first < 0 else first), behind
    again = foundation_at(rest, 0)[0] or any(x.type in ("STAR", "MARK", "LP") for x in rest)
    rest = _all_in_ring(rest, rest[first]) if first >= 0 and again else rest
    if first >= 0 and again:  # into the ring more than once, the chains at its head as well
        here = rest[first]
        begun = [like(here, "BEGIN"), like(here, "PREP"), *_one_loop(here), like(here, "SEP")]
        rest = [*begun, *rest]
    elif first >= 0:
        rest[first : first + 2] = _one_loop(rest[first])
    return rest, first >= 0


def _all_in_ring(t: list[Terminal], prep: Terminal) -> list[Terminal]:
    """`1 dc in the ring, *2 ch, 1 dc; repeat from *`: all of them."""
    if any(x.type == "PREP" and types(t, n + 1, 1) != ["SAME"] for n, x in enumerate(t)):
        return t
    found: list[Terminal] = []
    for n, here in enumerate(t):
        found.append(here)
        bare = here.type == "STITCH" and here.name != "ss" and ended(t, n + 1)
        bare = bare and "TILL" not in types(t, max(0, n - 2), min(n, 2))
        stands = "AS" in types(t, max(0, n - 3), min(n, 3))
        closes = any(x.type in ("ENDING", "ENDWITH") for x in t[:n])
        if bare and not stands and not closes:
            found += [like(prep, "PREP"), like(prep, "SAME"), like(prep, "PLACE")]
    return found


def _names_ring(t: Sequence[Terminal], start: int) -> bool:
    placed = (n for n in range(start, len(t)) if t[n].type in ("PREP", "UNDERIT", "INALL"))
    return any(_behind_ring(t, n) > n for n in placed)


def _one_loop(here: Terminal) -> list[Terminal]:
    return [like(here, "NEXT"), replace(like(here, "KIND", Kind("loop")), text="loop")]


def _behind_ring(t: Sequence[Terminal], at: int) -> int:
    """Behind `in it`, `into the ring`, `in the loop`; the same place where no ring is named."""
    if t[at].type == "UNDERIT":
        return at + (t[at].text.split()[-1] in RING)
    if t[at].type == "INALL":  # `8 dc in the round`
        return at + (t[at].text == "in the round" and at > 0 and t[at - 1].type == "STITCH")
    end = past(t, at + 1, "THE")
    the = end > at + 1
    ring = end < len(t) and (t[end].text in RING or (the and t[end].text in ("loop", "round")))
    return end + 1 if ring else at
