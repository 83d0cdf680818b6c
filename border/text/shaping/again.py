"""Words for over and over: `alternately`, `and so on`, `4 times` behind a whole row."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.shaping.each_again import come_again, each_again, each_parted
from border.text.shaping.in_every import in_every, of_each, same_in_every, stitch_to_end
from border.text.shaping.sentences import place_at
from border.text.shaping.till import till_made
from border.text.shaping.times_said import times_before, times_of_list, times_of_row
from border.text.wording.passing import (
    HOW_OFTEN,
    Terminals,
    ended,
    is_counted,
    like,
    only_ends,
    pairs,
    past,
    stitch_left_out,
    types,
    where,
)
from border.text.wording.whole_rows import (
    SAYS_NOTHING,
    a_row_of,
    before_comma,
    over_the_hem,
    whole_rows,
)


def _within_brackets(t: Terminals) -> Terminals:
    """`(3 chain, miss 3, 1 treble; repeat.)`, `(…; repeat to the end)`: as `(…) to end`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        end = at + 1 + (types(t, at + 1, 1) == ["TOEND"])
        if t[at].type != "REPEAT":
            found.append(t[at])
            at += 1
            continue
        opens = max((n for n, x in enumerate(found) if x.type in ("LP", "STAR")), default=-1)
        # `(12 repeats)` is a claim, and a star's repeat goes back to the star
        steps = opens >= 0 and found[opens].type == "LP" and found[-1].type not in ("NUM", "LP")
        end = past(t, end, "SEP")
        again = types(t, end, 1) == ["RP"] and steps
        if again and types(t, end + 1, 1) not in (["TIMES"], ["MORE"], ["INALL"], ["PREP"]):
            while found[-1].type == "SEP":
                found.pop()
            found += [t[end], like(t[at], "TOEND")]
            at = end + 1 + (types(t, end + 1, 1) == ["TOEND"])  # `(…, repeat) to the end`
            continue
        found.append(t[at])
        at += 1
    return found


def _brackets_again(t: Terminals) -> Terminals:
    """`1 dc, (5 chain, 1 dc in next loop), repeat`: with no stop between, of the bracket."""
    found: Terminals = []
    for n, here in enumerate(t):
        bracket = before_comma(t, n)
        again = here.type == "REPEAT" and bracket > 0 and t[bracket - 1].type == "RP"
        behind = types(t, n + 1, 1)
        counted = behind[:1] in _HOW_OFTEN
        if again and not counted and (behind == ["TOEND"] or ended(t, n + 1)):
            del found[bracket:]
            if behind != ["TOEND"]:
                found.append(like(here, "TOEND"))
            continue
        found.append(here)
    return found


def _brackets_counted(t: Terminals) -> Terminals:
    """`(1 ch, 1 dc in next; repeat 5 times more)`, `(…), repeat 5 times more`: as `*…; repeat
    from * 5 times more`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        counted = t[at].type == "REPEAT" and types(t, at + 1, 1)[:1] in _HOW_OFTEN
        closed = past(t, at + 2, "SEP")
        inside = counted and types(t, closed, 1) == ["RP"]
        end = before_comma(found, len(found))
        behind = counted and types(found, end - 1, 1) == ["RP"]
        opens = _opened(found if inside else found[: end - 1]) if inside or behind else None
        if opens is None or types(t, closed + 1, 1) in (["PREP"], *_HOW_OFTEN):
            found.append(t[at])
            at += 1
            continue
        steps = found[opens + 1 :] if inside else found[opens + 1 : end - 1]
        star = like(found[opens], "STAR")
        marked = types(found, opens - 1, 1) == ["STAR"] and all(x.type != "REPEAT" for x in t[:at])
        if marked and all(x.type != "REPEAT" for x in t[at + 1 :]):
            opens -= 1  # `* (5 chain, 1 dc in next loop), repeat 5 times`: its star
        found[opens:] = [star, *steps, t[at], like(t[at], "FROMSTAR"), t[at + 1]]
        at = closed + 1 if inside else at + 2
    return found


def _counted_in_one(t: Terminals) -> Terminals:
    """`1 dc, 3 chain, repeat 12 times in the ring`: all of it there, and 12 times more."""
    at = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    start, end, place = past(t, 0, "SEP"), before_comma(t, at), at + 2
    behind = place_at(t, place) if types(t, place, 1) == ["PREP"] else place
    strange = [x.type for x in t[start:end] if x.type not in _UNPLACED]
    bracket = types(t, start, 1) == ["LP"] and types(t, end - 1, 1) == ["RP"]
    listed = strange == (["LP", "RP"] if bracket else [])
    if end <= start or not listed or behind == place or not only_ends(t[behind:]):
        return t
    inside = t[start + bracket : end - bracket]
    closed, often = like(t[at], "RP", name="list"), t[at + 1]
    often = replace(often, type="MORE") if often.type == "TIMES" else often
    return [*t[:start], like(t[at], "LP"), *inside, closed, often, *t[place:]]


_UNPLACED = frozenset({"NUM", "STITCH", "CH", "PICOT", "SEP", "AND"})


def _opened(t: Terminals) -> int | None:
    """Where the last bracket that is still open begins."""
    depth = 0
    for n in range(len(t) - 1, -1, -1):
        depth += (t[n].type == "RP") - (t[n].type == "LP")
        if depth < 0:
            return n
    return None


_HOW_OFTEN = [[type_] for type_ in HOW_OFTEN]


def _to_within(t: Terminals) -> Terminals:
    """`to within 3 of the end`, `till 3 stitches remain`: as `to the last 3`; `to the last` is to
    the end."""
    found: Terminals = []
    at = 0
    while at < len(t):
        if t[at].type == "TOLAST" and ended(t, at + 1):
            found.append(like(t[at], "TOEND"))
            at += 1
            continue
        noun = at + 2 + (types(t, at + 2, 1) in (["KIND"], ["STITCH"], ["CH"]))
        if types(t, at, 2) != ["WITHIN", "NUM"] or types(t, noun, 1) != ["REMAIN"]:
            found.append(t[at])
            at += 1
            continue
        st = stitch_left_out(t[at])
        found += [like(t[at], "TOLAST"), t[at + 1], *(t[at + 2 : noun] or [st])]
        at = noun + 1
    return found


def _and_so_on(t: Terminals) -> Terminals:
    """`and so on` repeats; `continue` does where steps stand before it, and none behind; so does
    `go on to the next 5 chain`."""
    found: Terminals = []
    onward = -1
    for n, here in enumerate(t):
        if n <= onward:
            continue
        if here.type == "SOON" and here.text.endswith(("to the next", "to the following")):
            onward = n
            while types(t, onward + 1, 1) in (["NUM"], ["CH"], ["KIND"], ["STITCH"]):
                onward += 1
            here = like(here, "REPEAT") if only_ends(t[onward + 1 :]) and n else here
        elif here.type == "SOON" and _repeats(found):
            continue  # `repeat from *, &c.`
        elif here.type == "SOON":
            behind = types(t, n + 1, 1)
            ends = behind in ([], ["SEP"], ["TOEND"], ["TOLAST"], ["RP"], ["ENDING"], ["FROM"])
            if ends and n:
                here, found = replace(here, type="REPEAT"), _without_next_begun(found)
            else:
                here = like(here, "SEP")
        found.append(here)
    return found


def _repeats(found: Terminals) -> bool:
    """Whether these words end in a repeat."""
    at = len(found) - 1
    while at >= 0 and found[at].type in ("SEP", "AND", "FROMSTAR", "FROMHEAD", "TOEND"):
        at -= 1
    return at >= 0 and found[at].type == "REPEAT"


def _without_next_begun(t: Terminals) -> Terminals:
    """`5 chain, miss 3, 1 plain; 5 chain and so on`: the last steps are the first of the next."""
    steps = [n for n, x in enumerate(t) if x.type == "SEP"]
    said = [(x.type, x.number, x.name, x.kind) for x in t]
    for n in steps[len(steps) // 2 :]:
        tail = said[n + 1 :]
        while tail and tail[-1][0] in ("SEP", "AND"):
            tail.pop()
        if tail and len(tail) < n and tail == said[: len(tail)]:
            return t[:n]
    return t


def _alternately(t: Terminals) -> Terminals:
    """Before its steps the word opens a repeat, behind them it closes one."""
    at = next((n for n, x in enumerate(t) if x.type == "ALTERNATELY"), None)
    if at is None:
        return t
    rest = [x for n, x in enumerate(t) if n != at]
    if any(x.type == "REPEAT" for x in rest):
        return rest
    follows = any(x.type not in ("SEP", "ENDING", "TOEND") for x in t[at + 1 :])
    leads = follows and (at == 0 or t[at - 1].type in ("SEP", "STAR", "LP"))
    if leads and at > 0:
        rest = [*rest[:at], like(t[at], "STAR"), *rest[at:]]
    # `always alternately …; finally 2 chain`, `…; then 2 dc`: what comes last is worked once
    end = next((n for n in range(at, len(rest)) if _comes_last(rest, n)), len(rest))
    while end and rest[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    if end and rest[end - 1].type == "TOEND":
        end -= 1
    return [*rest[:end], like(t[at], "SEP", name="hard"), like(t[at], "REPEAT"), *rest[end:]]


def _comes_last(t: Terminals, at: int) -> bool:
    """Whether the steps of an `alternately` end before this word."""
    then = t[at].type == "SEP" and t[at].text == "then" and t[at - 1].text in (";", ".")
    return t[at].type == "ENDWITH" or then


def _at_the_end(t: Terminals) -> Terminals:
    """`repeat; 1 treble at the end`: as `end with 1 treble`."""
    repeat = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    if is_counted(t, repeat):
        return t
    found = [x for n, x in enumerate(t) if x.type != "ATEND" or n < repeat]
    if len(found) == len(t):
        return t
    stop = next((n for n in range(repeat, len(found)) if found[n].type == "SEP"), len(found))
    return [*found[: stop + 1], like(t[repeat], "ENDWITH"), *found[stop + 1 :]]


TO_END = "to the end"
"""The name of a repeat that is only told by how far it goes."""


def _all_round(t: Terminals) -> Terminals:
    """`3 ch, miss 2, 1 dc, all round`, `all round, 3 ch …`: as `repeat`, where none is said; where
    one is, `all round` at the head says no more."""
    start = next((n for n, x in enumerate(t) if x.type != "SEP"), len(t))
    if any(x.type == "REPEAT" for x in t):
        leads = types(t, start, 1) == ["TOEND"] and types(t, start + 1, 1) != ["REPEAT"]
        return [*t[:start], *t[start + 1 :]] if leads else t
    if any(x.type == "STAR" for x in t):
        return t
    end = next((n for n, x in enumerate(t) if x.type == "ENDWITH"), len(t))
    while end and t[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    leads = types(t, start, 1) == ["TOEND"] and end > start + 1
    closes = end > 1 and t[end - 1].type == "TOEND"
    closes = closes and t[end - 2].type not in ("RP", *HOW_OFTEN)
    if not leads and not closes:
        return t
    steps = t[start + leads : end - closes]
    if _is_whole_round(steps):
        return [*t[:start], *steps, *t[end:]]
    if closes and not leads and (each := stitch_to_end(steps)):
        return [*t[:start], *each, *t[end:]]
    open_place = any(x.type in ("EACH", "EVERY") for x in steps)
    often = t[start] if leads else t[end - 1]
    again = like(often, "REPEAT", name=TO_END if closes and not leads else "")
    repeat = [] if open_place else [like(often, "SEP", name="hard"), again]
    return [*t[:start], *steps, *repeat, *t[end:]]


def _is_whole_round(steps: Terminals) -> bool:
    """Whether `192 dc` are all that a round has, with `all round`: it is not worked again."""
    made = [x for x in steps if x.type != "SEP"]
    return types(made, 0, 3) == ["NUM", "STITCH"] and made[0].number > _MOST


_MOST = 24
"""No more stitches stand in a repeat that has nothing else."""


PASSES = (
    where(_within_brackets, "REPEAT", "LP"),
    where(_brackets_again, "REPEAT", "RP-REPEAT RP-SEP"),
    where(_counted_in_one, "REPEAT-TIMES REPEAT-MORE REPEAT-INALL", pairs(HOW_OFTEN, "PREP")),
    where(_brackets_counted, "REPEAT-TIMES REPEAT-MORE REPEAT-INALL"),
    where(till_made, "REPEAT SOON", "TILL-NUM WITH-NUM"),
    where(_to_within, "TOLAST WITHIN"),
    where(_and_so_on, "SOON"),
    where(times_before, "TIMES"),
    where(_alternately, "ALTERNATELY"),
    where(_at_the_end, "ATEND"),
    where(in_every, "REPEAT", "PREP-EACH PREP-NEXT AS-EACH TOEND-EACH WITH-EACH"),
    where(same_in_every, "SAME BEGIN"),
    where(a_row_of, "ROW-OF"),
    where(over_the_hem, "STITCH-PREP", "KIND"),
    where(whole_rows, "TOEND ROW ALL BETW " + pairs({"PREP"}, "STITCH", *SAYS_NOTHING)),
    where(of_each, "REPEAT", "EACH EVERY", "PREP"),
    where(each_parted, "TOEND", "BETW"),
    where(each_again, "REPEAT", "EACH EVERY"),
    where(come_again, "REPEAT", "EACH", "PREP"),
    where(_all_round, "TOEND"),
    where(times_of_list, " ".join(HOW_OFTEN)),
    where(times_of_row, " ".join(HOW_OFTEN)),
)
"""The passes in their order, and for each the words that it needs."""
