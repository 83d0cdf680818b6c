"""Sentences of the books, turned the way the grammar has them: `fasten with a double in …`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.passing import (
    HOW_OFTEN,
    NOUNS,
    Terminals,
    chains_at,
    ended,
    goes_on,
    is_stop,
    like,
    past,
    stitch_left_out,
    types,
)

PLACE = frozenset(
    {"THE", "NEXT", "EACH", "EVERY", "EACHOF", "SAME", "SKIPPED", "ORD", "NUM", "CENTRE", "OF"}
    | {"PAIR", "BETWEEN", "MOD", "PREP", "PLACE"}
)

_IN_SHELL = frozenset({"NUM", "STITCH", "CH", "PICOT", "SEP"})


def chains_placed(t: Terminals) -> Terminals:
    """`1 tr, 1 ch in each of 6 tr`: chains have no place of their own, so both go there."""
    found: Terminals = []
    at = 0
    while at < len(t):
        pair = types(t, at, 2) == ["NUM", "STITCH"]
        comma = types(t, at + 2, 1) in (["SEP"], ["AND"]) and not t[at + 2].name
        chains = types(t, at + 3, 2) == ["NUM", "CH"]
        place = at + 5 + (types(t, at + 5, 2) == ["SEP", "PREP"])
        placed = types(t, place, 1) == ["PREP"] and types(t, place + 1, 1) != ["MOD"]
        placed = placed and not (place > at + 5 and _is_said_first(t, place))
        if pair and comma and chains and placed and not _bare_before(found):
            left, right = like(t[at], "LP"), like(t[at + 4], "RP")
            found += [left, *t[at : at + 5], right]
            at = place
            continue
        found.append(t[at])
        at += 1
    return found


def _is_said_first(t: Sequence[Terminal], at: int) -> bool:
    """Whether a place behind a comma is that of what follows: `…, 2 ch, on the next dc 1 sc`."""
    end = place_at(t, at)
    steps = end + (types(t, end, 1) == ["SEP"] and t[end].text == ".")  # `on the dc. 1 sc.`
    return end > at and types(t, steps, 2) == ["NUM", "STITCH"]


def _bare_before(found: Sequence[Terminal]) -> bool:
    """Whether the step before is a stitch without a place, that may belong to the list too."""
    if not found or found[-1].type not in ("SEP", "AND"):
        return bool(found) and found[-1].type not in ("STAR", "LP")
    before = types(found, max(0, len(found) - 3), 2)
    return before[-1:] == ["STITCH"] and before[:1] in (["NUM"], ["SEP"])


def begun(t: Terminals) -> Terminals:
    """`Fasten in the first space; …` at a row's head: the round begins there."""
    opening = (n for n, x in enumerate(t) if x.type not in ("SEP", "MOD") and x.name != "turn")
    head = next(opening, len(t))
    slip = head + (types(t, head, 1) == ["NUM"])
    if types(t, slip, 3) == ["STITCH", "SEP", "TO"] and t[slip].name == "ss":
        return [*t[: slip + 1], *t[slip + 2 :]]  # `3 slip, so as to reach the middle of …`
    if (risen := _risen_where_slipped(t, slip)) > slip:
        return [*t[:head], like(t[slip], "BEGIN"), *t[slip + 1 : risen], *t[risen:]]
    t = _to_the_last(t, slip)
    over = past(t, slip + 2, "THE", "EACHOF", "NEXT", "NUM", "ORD", "CH", "KIND", "STITCH")
    nth = past(t, over + 1, "THE") if types(t, over, 1) == ["TO"] else len(t)
    if types(t, nth, 1) == ["ORD"] and ended(t, nth + 1):
        t = [*t[: nth + 1], stitch_left_out(t[nth]), *t[nth + 1 :]]  # `slip over 3 dc to the 4th`
    slips = types(t, slip, 2) == ["STITCH", "PREP"] and t[slip].name == "ss"
    if slips and over > slip + 2 and types(t, over, 1) == ["TO"]:
        return [*t[: slip + 1], t[over], *_beyond(t, slip, over)]  # `slip over 2 ch to next dc`
    if (first := _slipped_up(t, slip)) is not None:
        return [*t[:head], *first]
    begun_ = place_at(t, head + 1) if types(t, head, 2) == ["BEGIN", "PREP"] else head
    behind = past(t, begun_ + 1, "NUM")
    if begun_ > head and types(t, begun_, 1) == ["WITH"] and types(t, behind, 1) == ["STITCH"]:
        here = t[begun_]  # `fasten the thread in the first loop with 1 dc`
        same = [like(here, "PREP"), like(here, "SAME"), like(here, "PLACE")]
        return [
            *t[:begun_],
            like(here, "SEP"),
            *t[begun_ + 1 : behind + 1],
            *same,
            *t[behind + 1 :],
        ]
    if types(t, head, 2) == ["BEGIN", "SEP"] and "thread" in t[head].text.split():
        return t[head + 2 :]  # `Fasten thread, 1 sc in …`
    if types(t, head, 3) == ["ENDING", "PREP", "PREP"]:  # `fasten in at any point`
        t = [*t[: head + 1], *t[head + 2 :]]
    fastens = types(t, head, 2) == ["ENDING", "PREP"] and t[head].text in ("fasten", "join")
    end = place_at(t, head + 1) if fastens else head
    if end <= head + 1 or types(t, end, 1) not in (["SEP"], ["STAR"]):
        return t
    return [*t[:head], replace(t[head], type="BEGIN"), *t[head + 1 :]]


def _risen_where_slipped(t: Terminals, slip: int) -> int:
    """Behind the place of `slip stitch in first space, 3 chain, 2 treble in same space`, where the
    row rises from it: it only leads there; the same place for any other slip stitch."""
    if types(t, slip, 2) != ["STITCH", "PREP"] or t[slip].name != "ss":
        return slip
    end = place_at(t, slip + 1)
    chains, behind = chains_at(t, past(t, end, "SEP", "AND"))
    same = past(t, behind, "SEP", "AND", "NUM", "STITCH")
    risen = chains > 0 and types(t, same - 1, 3) == ["STITCH", "PREP", "SAME"]
    tall = risen and t[same - 1].name != "ss" and (t[same - 1].name == "sc") == (chains == 1)
    one = all(x.type != "NUM" or x.number == 1 for x in t[max(slip - 1, 0) : end])
    return end if tall and one and end > slip + 1 else slip


def _beyond(t: Terminals, slip: int, to: int) -> Terminals:
    """Where it is slipped to, over so much: behind 3 stitches `the next dc` is the 4th of them."""
    passed, noun = t[slip + 2 : to], t[to - 1]
    target = past(t, to + 1, "THE", "NEXT")
    over = sum(x.number for x in passed if x.type == "NUM") or 1
    stitches = noun.type == "STITCH" or noun.kind == Kind("st")
    if not stitches or types(t, target, 1) != ["STITCH"] or not ended(t, target + 1):
        return t[to + 1 :]
    alike = t[target] if noun.name == t[target].name else stitch_left_out(noun)
    return [like(noun, "ORD", number=over + 1), alike, *t[target + 1 :]]


def _to_the_last(t: Terminals, slip: int) -> Terminals:
    """`slip to the last of the 4 treble`, `slip over 3 treble to the last of the 4`: to the 4th."""
    over = past(t, slip + 1, "PREP", "EACHOF", "THE", "NEXT", "NUM", "STITCH")
    four = past(t, over + 2, "THE") if types(t, over, 2) == ["TOLAST", "OF"] else len(t)
    slips = types(t, slip, 1) == ["STITCH"] and t[slip].name == "ss"
    if not slips or types(t, four, 1) != ["NUM"]:
        return t
    end, here = past(t, four + 1, "STITCH"), t[over]
    nth = [like(here, "TO"), like(here, "ORD", number=t[four].number), stitch_left_out(here)]
    return [*t[: slip + 1], *nth, *t[end:]] if ended(t, end) else t


def _slipped_up(t: Terminals, at: int) -> Terminals | None:
    """`slip two stitches up the first chain`: the row begins in that loop; else None."""
    behind = at + 1 + 2 * (types(t, at + 1, 2) == ["NUM", "KIND"])
    if types(t, at, 1) != ["STITCH"] or t[at].name != "ss" or types(t, behind, 1) != ["PREP"]:
        return None
    end = place_at(t, behind)
    if t[behind].text != "up" or end == behind or not ended(t, end):
        return None
    noun = t[end - 1]
    loop = like(noun, "KIND", Kind("space")) if noun.type == "CH" else noun
    return [like(t[at], "BEGIN"), *t[behind : end - 1], loop, *t[end:]]


def worked_in(t: Terminals) -> Terminals:
    """`Work in double all round`: all of it in that stitch, and not into one."""
    at = past(t, 0, "SEP", "AND")
    opened = at > 0 and t[at - 1].text in ("work", "working", "crochet")
    if types(t, at, 2) == ["STITCH", "TOEND"]:  # `double all round, 2 into each space`
        each = past(t, at + 2, "SEP")
        told = types(t, each, 4) == ["NUM", "STITCH", "PREP", "EACH"]
        if told and t[each + 1].name == t[at].name:
            return [*t[:at], *t[each:]]
    if types(t, at, 1) == ["STITCH"]:  # `Double crochet, 1 stitch in each loop`
        number = past(t, at + 1, "TOEND", "SEP", "AND")
        again = number + 1 < len(t) and (
            t[number + 1].name == t[at].name or t[number + 1].kind == Kind("st")
        )
        place = number + 1 + again
        told = number > at + 1 and types(t, number, 1) == ["NUM"]
        if told and types(t, place, 2) == ["PREP", "EACH"]:
            return [*t[:at], t[number], t[at], *t[place:]]
    if not opened or types(t, at, 2) != ["PREP", "STITCH"] or t[at].text != "in":
        return t
    end = past(t, at + 2, "TOEND", "SEP", "AND")
    each = types(t, end, 4) == ["NUM", "KIND", "PREP", "EACH"] and t[end + 1].kind == Kind("st")
    if each:  # `work in double all round, one stitch in every loop`
        return [*t[:at], t[end], t[at + 1], *t[end + 2 :]]
    return [*t[:at], *t[at + 1 :]] if any(x.type == "TOEND" for x in t) else t


def fastened(t: Terminals) -> Terminals:
    """`fasten with a double into …` is that double; `same stitch as the last` the same stitch."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        if (steps := _behind_fasten(t, at)) > at:
            to = next((n for n in range(steps, len(t)) if t[n].type == "STITCH"), at) + 1
            if types(t, to, 1) == ["TO"]:  # `fasten with a double to the next loop`
                t = [*t[:to], like(t[to], "PREP"), *t[to + 1 :]]
            at = steps
            continue
        if here.type == "WITH" and found and found[-1].name == "turn":
            heads = all(x.type == "SEP" for x in found[:-1])
            if types(t, at + 1, 2) == ["NUM", "CH"] and not heads:  # `turn with 3 chain`
                found[-1:] = [*t[at + 1 : at + 3], like(here, "SEP"), found[-1]]
                said = past(t, at + 3, "SEP")  # `, which stand for the 1st treble`
                stitch = past(t, said + 1, "THE", "NUM", "ORD")
                stands = types(t, said, 1) == ["AS"] and types(t, stitch, 1) == ["STITCH"]
                at = stitch + 1 if stands else at + 3  # `turn with 3 chain for the 1st treble`
                continue
            here = like(here, "SEP")
        opens = types(found, len(found) - 1, 1) in ([], ["SEP"])
        if here.type == "BUT" and opens and types(t, at + 1, 1) in (["CH"], ["NUM"]):
            here = like(here, "SEP")  # `do not turn but ch 2`
        said = any(x.type == "SAME" for x in found[-2:])
        last = at + 1 + (types(t, at + 1, 1) == ["THE"])
        if said and here.type in ("AS", "WITH") and types(t, last, 1) in (["ORD"], ["NOTHING"]):
            at = last + 1 + (last + 1 < len(t) and t[last + 1].type in NOUNS)
            continue
        if said and here.type == "AS" and types(t, last, 2) == ["NUM", "STITCH"]:
            at = last + 2  # `in the same loop as the 5 dc`
            continue
        found.append(here)
        at += 1
    return found


def _behind_fasten(t: Sequence[Terminal], at: int) -> int:
    """Behind `fasten with`, `fasten them with`, `join with` inside a row, before the stitch that
    this makes; the same place where it makes none."""
    if t[at].type not in ("ENDING", "CATCH"):
        return at
    with_ = at + 1 + (types(t, at + 1, 1) == ["THEM"])
    behind = types(t, with_, 3)
    if behind[:1] != ["WITH"] or "STITCH" not in behind[1:]:
        return at
    if t[at].type == "CATCH" or t[at].name == "fasten off":
        return with_ + 1
    placed = any(x.type in ("PREP", "TO") for x in t[with_ + 1 : with_ + 4])
    return with_ + 1 if t[at].name == "join" and placed and goes_on(t, with_) else at


def filled(t: Terminals) -> Terminals:
    """`fill each space with 3 double`: as `in each space 3 double`; `in the end` as in its last."""
    found: Terminals = []
    filling = False
    for n, here in enumerate(t):
        if here.type == "FILL":
            here, filling = like(here, "PREP"), True
        elif here.type == "WITH" and filling:
            here, filling = like(here, "SEP"), False
        if here.type == "ENDST" and types(t, n + 1, 1) in (["KIND"], ["STITCH"], ["CH"]):
            found += [like(here, "PREP"), like(here, "ORD", number=-1)]
            continue  # `in the end loop`
        if here.type == "ENDST":
            found += [like(here, "PREP"), like(here, "ORD", number=-1)]
            here = like(here, "KIND", Kind("st"))
        found.append(here)
    return found


def next_first(t: Terminals) -> Terminals:
    """`in one loop 7 dc, …, in the next 1 sc`: into the next of the same, where it is said first
    where each step goes."""
    found: Terminals = []
    noun: Terminals = []
    for at, here in enumerate(t):
        found.append(here)
        if here.type == "KIND" and _is_first(t, at):
            noun = [here]
        elif types(t, at - 1, 2) == ["NUM", "CH"] and at and _is_first(t, at - 1):
            noun = [t[at - 1], here]  # `under the first 2 ch 2 dc, under the next 1 dc, 3 ch, 1 dc`
        listed = types(t, at + 1, 2) == ["NUM", "STITCH"] and t[at + 1].number == 1
        left_out = here.type == "NEXT" and listed and ended(t, at + 3) and _is_first(t, at)
        if left_out:
            found += [replace(x, start=here.start, end=here.end, many=False) for x in noun]
    return found


def _is_first(t: Sequence[Terminal], at: int) -> bool:
    """Whether the place whose word stands here is said before its steps."""
    prep = at
    while prep and t[prep].type in ("KIND", "NEXT", "THE", "NUM", "ORD"):
        prep -= 1
    return t[prep].type == "PREP" and (not prep or t[prep - 1].type in ("SEP", "STAR", "LP"))


_PLACED = [[x] for x in ("THE", "PREP", "NEXT", "EACHOF", "EACH", "EVERY", "ORD", "OF", "SAME")]


def shell_before(found: Sequence[Terminal]) -> int | None:
    """Where `1 dc, 7 tr, 1 dc` begins, that a comma sets apart from its place; None if nowhere.

    It begins and ends with the same stitch, as shells do, and is all of it a list. What may be
    a loop from one place to the next, `1 dc, 5 ch, 1 dc`, is left to be asked.
    """
    at = len(found)
    stitches: list[int] = []
    times = types(found, at - 1, 1) == ["TIMES"]  # `3 sc, (5 ch, 3 sc) 3 times, in each loop`
    within = _IN_SHELL | ({"LP", "RP", "TIMES"} if times else frozenset())
    while at and found[at - 1].type in within and found[at - 1].name != "hard":
        number = at - 2 - (types(found, at - 2, 1) == ["NUM"])
        if found[at - 1].type == "STITCH" and types(found, number, 1)[:1] in _PLACED:
            break  # what a step before it goes into: `on the dc`, `on each of the next 2 dc`
        at -= 1
        if found[at].type == "STITCH":
            stitches.append(at)
    if len(stitches) < 2 or found[stitches[0]].name != found[stitches[-1]].name:
        return None
    loop = len(stitches) == 2 and found[stitches[0]].name in ("sc", "ss")
    numbers = [x.number for x in found[max(0, stitches[-1] - 1) :] if x.type == "NUM"]
    if loop and numbers[:1] + numbers[-1:] == [1, 1]:
        return None
    return stitches[-1] - (types(found, stitches[-1] - 1, 1) == ["NUM"])


def place_at(t: Sequence[Terminal], at: int) -> int:
    """Behind a place that opens a step; the same place where there is none."""
    end = at + 1
    while end < len(t) and t[end].type in PLACE:
        end += 1
        if t[end - 1].type == "PLACE":
            return end  # `into it 1 dc`
    if end >= len(t) or t[end].type not in NOUNS:
        return end if end < len(t) and t[end - 1].type == "SAME" else at
    end += 1
    if types(t, end, 1) in (["OF"], ["OR"]):
        return place_at(t, end)
    return end


def list_end(t: Sequence[Terminal], start: int) -> int:
    """Behind the steps that go with a place said before them.

    They go on to a semicolon or full stop, a mark, `then` with nothing but chains behind it, or
    the step that has a place of its own; the chains before that one are its own, too.
    """
    end = _listed_to(t, start)
    then = next((n for n in range(end - 1, start, -1) if t[n].text == "then"), end)
    chains = all(x.type in ("NUM", "CH", "SEP") for x in t[then:end])
    return trimmed(t, start, then) if chains else end


def _listed_to(t: Sequence[Terminal], start: int) -> int:
    """Behind such steps, with the chains that a `then` leads on to."""
    depth, step = 0, start
    for n in range(start, len(t)):
        here = t[n]
        if here.type == "LP":
            depth += 1
        elif here.type == "RP":
            depth -= 1
        times = here.type in HOW_OFTEN and types(t, n - 1, 1) == ["RP"]
        if depth < 0 or (depth == 0 and _ends_list(here) and not times):
            return trimmed(t, start, n)
        if depth == 0 and here.type == "SEP" and _is_stitch(t, step, n):
            step = n
        if depth == 0 and types(t, n, 3) == ["SEP", "STITCH", "TOEND"] and n > start:
            return trimmed(t, start, n)  # `in first st 2 dc, dc to the end`
        if depth == 0 and here.type in ("PREP", "ALLIN", "BETWEEN", "SKIP"):
            return trimmed(t, start, step)
    return trimmed(t, start, len(t))


def _ends_list(here: Terminal) -> bool:
    return is_stop(here) or here.type in (
        *("STAR", "REPEAT", "ENDING", "ENDWITH", "SOON", "COME", "TOEND", "ARCH"),
        *HOW_OFTEN,
    )


def _is_stitch(t: Sequence[Terminal], start: int, end: int) -> bool:
    """Whether a step of the list has ended that makes stitches or picots."""
    return any(x.type in ("STITCH", "CLUSTER", "PICOT", "RP") for x in t[start:end])


def trimmed(t: Sequence[Terminal], start: int, end: int) -> int:
    """The end of the words from `start`, without the commas that they end in."""
    while end > start and t[end - 1].type == "SEP":
        end -= 1
    return end
