"""Where the last stitch falls: `repeat from *, working the last treble in the 3rd of the turning
chain`.

The chains that the row below began with stand for its first stitch, so that the repeat comes to
it as to any other. What says so makes nothing, and is told; but where the repeat has chains behind
its last stitch, that stitch is the last of the row, and they are not made once more.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.tree import ST
from border.text.wording.passing import (
    HOW_OFTEN,
    NOUNS,
    OPENS,
    WHICH,
    like,
    only_ends,
    past,
    stitch_left_out,
    types,
)
from border.text.words import quoted

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_COMES = frozenset({"being", "coming", "comes", "falling", "falls", "going", "goes", "worked"})
_COMES |= {"made", "taken", "placed", "put", "to", "come", "be"}
TURNING = "turning"
"""The name of a place that is the chains with which the row below began."""

_EXTENT = HOW_OFTEN | {"TOEND", "FROM", "THE", "STAR", "MARK", "CROSS", "STARWORD", "FROMHEAD"}
_EXTENT |= {"NUM"}
_LED = frozenset({"SEP", "AND", "WITH", "THE", "NOTHING"})


def without_last_stitches(
    terminals: list[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without such words, and what is told of them."""
    terminals, told = _ends_with_the(terminals, source)
    if not any(t.type == "ORD" and t.number == -1 for t in terminals):
        return terminals, told
    terminals = _last_skipped(_joined_last(terminals))
    found: list[Terminal] = []
    findings = told
    at = 0
    while at < len(terminals):
        here = terminals[at]
        last = here.type == "ORD" and here.number == -1
        end = _behind(terminals, at) if last and _led(found) else at
        place = _place_of_last(terminals, at) if last and end == at else at
        if place > at and (_last_apart(found, here) or _last_time_apart(found, here)):
            at = place
            continue
        if end == at:
            found.append(here)
            at += 1
            continue
        first = here
        while found[-1].type in _LED:
            word = found.pop()
            first = word if word.text.isalpha() and word.type != "AND" else first
        last_one = _last_of_row(found, terminals[at + 1])
        found += last_one
        if not last_one:
            findings.append(_told(first, terminals[end - 1], source))
        at = end
    return found, findings


def _ends_with_the(t: list[Terminal], source: Source) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without `ending with the dc` behind a repeat, which is told: that is one of the
    last repeat."""
    ends = next((n for n, x in enumerate(t) if x.type == "ENDWITH"), len(t))
    the = types(t, ends, 3) == ["ENDWITH", "THE", "STITCH"] and only_ends(t[ends + 3 :])
    if not the or all(x.type != "REPEAT" for x in t[:ends]):
        return t, []
    span = source.span(t[ends].start, t[ends + 2].end)
    said = quoted(source, span)
    message = (
        f'"{said}" is taken for a remark: the last repeat is counted with all that stands in it'
    )
    help_ = "where it ends there, write it out up to that, and let the others end before it"
    return [*t[:ends], *t[ends + 3 :]], [Finding("taken-as-remark", message, help_, span)]


def _joined_last(t: list[Terminal]) -> list[Terminal]:
    """`the last 5 ch being joined to the first dc`: as `joining the last 5 ch to the first dc`."""
    for n, here in enumerate(t):
        if here.text not in ("joined", "fastened") or here.type != "UNKNOWN":
            continue
        end = n - (n > 0 and t[n - 1].text in _COMES)
        start = next((i for i in (end - 2, end - 3) if i >= 0 and _is_last(t[i])), n)
        if start < n and {x.type for x in t[start + 1 : end]} <= {"NUM", "CH", "KIND"}:
            join = replace(here, type="ENDING", name="join", text="joining", start=t[start].start)
            return [*t[:start], join, *t[start:end], *t[n + 1 :]]
    return t


def _last_skipped(t: list[Terminal]) -> list[Terminal]:
    """`repeat all round, missing the last stitch`: as many as that are missed behind the repeat;
    `miss the last picot; repeat from *`: the next one."""
    again = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    for n, here in enumerate(t):
        last = past(t, n + 1, "THE")
        if here.type != "SKIP" or last >= len(t) or not _is_last(t[last]):
            continue
        number = last + 1
        noun = past(t, number, "NUM")
        named = types(t, noun, 1)[:1] in ([x] for x in NOUNS)
        end = noun + named
        before = types(t, past(t, end, "SEP"), 1) == ["REPEAT"]
        behind = n > again and named and types(t, end, 1) in ([], ["SEP"], ["AND"], ["ENDING"])
        if before or behind:
            count = t[number:noun] or [like(t[last], "NUM", number=1)]
            return [*t[: n + 1], *count, *t[noun:]]
    return t


def _is_last(here: Terminal) -> bool:
    return here.type == "ORD" and here.number == -1


def _place_of_last(t: Sequence[Terminal], at: int) -> int:
    """Where the place begins in `the last of them being on the chain`; the same place where none
    is named."""
    end = past(t, at + 1, "OF", "THEM", "STITCH")
    end += end == at + 1 and types(t, end, 1) == ["NUM"] and t[end].number == 1
    while end < len(t) and t[end].text in _COMES:
        end += 1
    return end if types(t, end, 1) == ["PREP"] else at


def _last_apart(found: list[Terminal], last: Terminal) -> bool:
    """Whether `4 dc` stand before `the last on the top of the chain`; then that one is put apart
    from the 3 before it."""
    steps = _before_stop(found)
    bare = types(found, steps - 2, 2) == ["NUM", "STITCH"] and steps > 1
    if not bare or found[steps - 2].number < 2:
        return False
    many, stitch = found[steps - 2 : steps]
    place = steps - 2
    while place and found[place - 1].type in WHICH:
        place -= 1
    step = place - 3
    if (
        types(found, step + 2, 1) == ["PREP"]
        and place > 2
        and "EACHOF" not in types(found, place, 2)
    ):
        alike = types(found, step, 2) == ["NUM", "STITCH"] and found[step].number == many.number
        if not alike:
            return False
        found[step] = replace(found[step], number=many.number - 1)  # `4 dc on 4 dc`
    found[steps - 2] = replace(many, number=many.number - 1)
    del found[steps:]
    one = replace(stitch, start=last.start)
    found += [like(last, "SEP", name="hard"), like(last, "NUM", number=1), one]
    return True


def _last_time_apart(found: list[Terminal], last: Terminal) -> bool:
    """Whether `(2 ch, 1 dc on dc) 3 times` stands before `the last in the top of the chain`; then
    they are made twice, and once more up to that last place."""
    times = _before_stop(found) - 1
    if types(found, times, 1) != ["TIMES"] or times < _FEWEST:
        return False
    number = times - (types(found, times - 1, 1) == ["NUM"])
    count = found[number].number
    opens = max((n for n in range(number) if found[n].type == "LP"), default=number)
    prep = max((n for n in range(opens, number) if found[n].type == "PREP"), default=opens)
    inner = found[opens + 1 : prep]
    closes = found[number - 1].type == "RP" and prep > opens
    end = number - 1 - (types(found, number - 2, 1) == ["SEP"])  # `(…, 1 d. c. on d. c.)`
    within = all(x.type not in ("SEP", "RP", "STAR") for x in found[prep:end])
    if count < 2 or not closes or not within or inner[-1].type != "STITCH":
        return False
    del found[times + 1 :]
    if count == 2:
        found[opens:] = found[opens + 1 : number - 1]
    else:
        found[number] = replace(found[number], number=count - 1)
    found += [like(last, "SEP", name="hard"), *inner]
    return True


_FEWEST = 4
"""So many words are the fewest that are worked so many times."""


def _before_stop(found: Sequence[Terminal]) -> int:
    """How many words stand before the stop and the article that end these; all, without a stop."""
    end = len(found)
    while end and found[end - 1].type in ("SEP", "THE", "AND"):
        end -= 1
    return end if end < len(found) else 0


def _led(found: Sequence[Terminal]) -> bool:
    """Whether these words end in a repeat, or in `with 2 chain between`."""
    at = len(found)
    while at and found[at - 1].type in _LED:
        at -= 1
    if at == len(found) or all(x.type in ("THE", "NOTHING") for x in found[at:]):
        return False
    between = at - (types(found, at - 1, 1) in (["EACH"], ["THEM"]))
    if types(found, between - 2, 2) in (["CH", "BETWEEN"], ["NUM", "BETWEEN"]):
        return True
    if types(found, max(0, at - 3), 2) == ["PREP", "EACH"]:  # `1 tr in each tr, and the last …`
        return True
    while at and found[at - 1].type in _EXTENT:
        at -= 1
    return types(found, max(0, at - 1), 1) in (["REPEAT"], ["SOON"])


def _behind(t: Sequence[Terminal], at: int) -> int:
    """Behind `last treble in the 3rd of 5 chain`; the same place where no such chain is named."""
    end = at + 1
    end += types(t, end, 1) in (["STITCH"], ["KIND"]) or (
        types(t, end, 1) == ["NUM"] and t[end].number == 1
    )
    while end < len(t) and (t[end].text in _COMES or (t[end].type == "SEP" and _is_word(t[end]))):
        end += 1
    if types(t, end, 1) == ["ENDST"] and "turn" in t[end].text:
        return _ended(t, end + 1) or at
    if types(t, end, 1) != ["PREP"]:
        return at
    top = "top" in t[end].text
    end = past(t, end + 1, "THE")
    if types(t, end, 2) in (["STITCH", "ATEND"], ["KIND", "ATEND"]):
        return _ended(t, end + 2) or at  # `falls on the dc at the end`
    if types(t, end, 1) == ["ORD"] and not top:
        end += 1 + (types(t, end + 1, 1) in (["CH"], ["KIND"]))
        if types(t, end, 1) != ["OF"]:
            return at
        end, top = past(t, end + 1, "THE"), True
    kind = t[end].kind if end < len(t) else None
    if top and kind is not None and kind.name == "space":
        return _ended(t, end + 1) or at  # `in the top of the ch 3`
    turning = end < len(t) and t[end].text == "turning"
    chain = past(t, end + turning, "NUM")
    if types(t, chain, 1) != ["CH"] or not (top or turning):
        return at
    end = past(t, chain + 1, "NUM") if chain == end + turning else chain + 1
    return _ended(t, end) or at


def _ended(t: Sequence[Terminal], at: int) -> int:
    """Behind what such words may end in; 0 where they go on."""
    end = past(t, at, "NOTHING", "ATEND")
    return end if end >= len(t) or t[end].type in ("SEP", "ENDING", "RP") else 0


def _last_of_row(found: list[Terminal], named: Terminal) -> list[Terminal]:
    """What ends a row whose repeat has chains behind its last stitch: `to last st; 1 dc in last
    st`; nothing where it has none. The repeat is left without its `to the end`."""
    repeat = len(found) - 1
    while repeat >= 0 and found[repeat].type not in ("REPEAT", "SOON"):
        repeat -= 1
    if repeat < 0 or {x.type for x in found[repeat + 1 :]} - {"FROM", "THE", "STAR", "TOEND"}:
        return []
    made = _before_chains(found, repeat)
    if made is None:
        return []
    stitch, noun = made
    if all(x.type not in ("STAR", "MARK", "CROSS") for x in found):
        found.insert(_behind_head(found), like(stitch, "STAR"))
        repeat += 1
    found[repeat:] = [x for x in found[repeat:] if x.type != "TOEND"]
    stitch = named if named.type == "STITCH" else stitch
    stop = like(stitch, "SEP", name="hard")
    place = [like(stitch, "PREP", name=TURNING), like(stitch, "ORD", number=-1), noun]
    return [like(stitch, "TOLAST"), noun, stop, like(stitch, "NUM", number=1), stitch, *place]


def _behind_head(found: Sequence[Terminal]) -> int:
    """Behind the chains that a row begins with, and the `turn` behind them."""
    at = past(found, 0, "SEP")
    if types(found, at, 2) in (["NUM", "CH"], ["CH", "NUM"]):
        at += 2
        if types(found, at, 1) == ["AS"]:
            at = next((n for n in range(at, len(found)) if found[n].type == "SEP"), at)
        at = past(found, at, "SEP", "ENDING")
    return at


def _before_chains(found: Sequence[Terminal], end: int) -> tuple[Terminal, Terminal] | None:
    """The one stitch that stands before the chains that these words end in, and what it goes into;
    None where they end otherwise."""
    at, chains = end - 1, False
    while at >= 0 and (found[at].type in ("SEP", "NUM", "CH", "SKIP", "AND") or _missed(found, at)):
        chains = chains or found[at].type == "CH"
        at -= 1
    noun = found[at] if at >= 0 else None
    if not chains or noun is None or not (noun.type == "STITCH" or noun.kind == ST):
        return None
    start = at - 1
    while start >= 0 and found[start].type in WHICH | OPENS:
        start -= 1
    if start == at - 1:  # a stitch without a place
        stitch, noun = noun, stitch_left_out(noun)
    else:
        stitch = found[start] if start >= 0 else noun
    at = at if start == at - 1 else start
    one = types(found, max(0, at - 1), 1) != ["NUM"] or found[at - 1].number == 1
    return (stitch, replace(noun, many=False)) if one and stitch.type == "STITCH" else None


def _missed(found: Sequence[Terminal], at: int) -> bool:
    before = at - 1 - (types(found, at - 1, 1) == ["NUM"])
    return found[at].type in ("STITCH", "KIND") and types(found, before, 1) == ["SKIP"]


def _is_word(here: Terminal) -> bool:
    return here.text.isalpha()


def _told(first: Terminal, last: Terminal, source: Source) -> Finding:
    span = source.span(first.start, last.end)
    said = quoted(source, span)
    why = "the chains that the row below began with stand for its first stitch, and the last one "
    why += "here falls on them"
    if last.type == "ATEND":
        why = "the last repeat is counted like the others"
    message = f'"{said}" is taken for a remark: {why}'
    help_ = (
        f'set it apart: "-- {said} --"; if it is one stitch more, write "end with 1 … in last st"'
    )
    return Finding("taken-as-remark", message, help_, span)
