"""So many times: before its steps, `4 times alternately …`, or behind, `2 tr, 3 ch, 4 times`."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.shaping.sentences import place_at
from border.text.tree import Kind
from border.text.wording.passing import (
    HOW_OFTEN,
    NOUNS,
    Terminals,
    chains_at,
    is_stop,
    like,
    list_start,
    only_ends,
    past,
    types,
)


def times_before(t: Terminals) -> Terminals:
    """`4 times alternately 1 picot, 1 dc in next loop; …`: what follows up to the stop, in a
    bracket; more than two steps are asked about."""
    found: Terminals = []
    at = 0
    while at < len(t):
        steps = past(t, at + 1, "ALTERNATELY") if t[at].type == "TIMES" else at
        over = types(t, at + 1, 2) == ["PREP", "SEP"] and t[at + 1].text == "over"
        steps += 2 * (over and steps > at)  # `four times over, 3 ch, …`
        colon = steps > at and types(t, steps, 1) == ["SEP"] and t[steps].text == ":"
        steps += colon  # `3 times: 1 dc, …`
        leads = steps > at and types(found, len(found) - 1, 1) in ([], ["SEP"], ["STAR"], ["AND"])
        groups, end = _parted(t, steps, t[at].number) if leads else ([], at)
        if groups:
            found += groups
            at = end
            continue
        if not leads or types(t, steps, 1) not in _STEPS:
            found.append(t[at])
            at += 1
            continue
        by_turns = "ALTERNATELY" in types(t, at + 1, 1)
        stop = _stop_behind(t, steps)
        parts = sum(x.type == "SEP" for x in t[steps:stop])
        end = _then_behind(t, steps, stop) if by_turns else stop
        pair = 0 if by_turns else _pair_behind(t, steps, stop)
        end = pair or end
        inside = _all_placed(t, steps, end)
        bracket = [like(t[at], "LP"), *t[steps:inside]]
        whole = parts and not by_turns  # `twice 3 dc in loop, 2 ch`
        whole = whole and any(x.type == "PREP" for x in _first_step(t[steps:end]))
        # `three times: 7 ch, 1 dc` behind a comma; `12 times 1 tr in the loop; 7 ch`
        asked = parts > 1 or whole or (colon and _behind_comma(found))
        asked |= not parts and not by_turns and sorted(types(t, stop + 1, 2)) == ["CH", "NUM"]
        name = "pair behind" if pair else "list behind" if asked else ""
        closed = like(t[at], "RP", name=name)
        found += [*bracket, closed, t[at], *t[inside:end]]
        at = end
    return found


def _behind_comma(found: Terminals) -> bool:
    """Whether these words end in a comma: how often may be said of what stands before it."""
    return bool(found) and found[-1].text == ","


def _first_step(t: Terminals) -> Terminals:
    stop = next((n for n, x in enumerate(t) if x.type in ("SEP", "AND")), len(t))
    return t[:stop]


def _all_placed(t: Terminals, start: int, end: int) -> int:
    """Where the place begins that all these steps go into, `5 dc and 5 ch in the ring`: chains
    have none of their own; the end where there is none."""
    prep = next((n for n in range(start, end) if t[n].type == "PREP"), end)
    chains = sorted(types(t, prep - 2, 2)) == ["CH", "NUM"] and prep - 2 > start
    return prep if chains and place_at(t, prep) == end else end


def _parted(t: Terminals, at: int, times: int) -> tuple[Terminals, int]:
    """`twice 3 dc separated by 3 ch in next loop`: the groups with the chains between them, all
    in that place, and the place behind it; none where no chains part them."""
    if types(t, at, 2) != ["NUM", "STITCH"]:
        return [], at
    stitches, inside = list(t[at : at + 2]), types(t, at + 2, 1) == ["BETW"]
    place = at + 2 + inside
    behind = place_at(t, place) if types(t, place, 1) == ["PREP"] else place
    parted = at + 2 if inside else past(t, behind, "SEP")
    if behind == place or types(t, parted, 1) != ["BETW"] or t[parted].kind is not None:
        return [], at
    where = [x.type for x in t[place:behind]]
    if "NUM" in where and "EACHOF" not in where and where[-1] != "CH":
        return [], at  # `twice 3 dc separated by 1 ch in the next 2 loops`
    comma, number = like(t[at], "SEP"), like(t[at], "NUM", number=t[parted].number)
    between = [comma, number, like(t[parted], "CH"), comma]
    groups = [*stitches, *(x for _ in range(times - 1) for x in (*between, *stitches))]
    left, right = like(t[at], "LP"), like(t[place], "RP")
    return [left, *groups, right, *t[place:behind]], behind if inside else parted + 1


def times_on_like(t: Terminals) -> Terminals:
    """`shell in shell twice`, `1 dc on dc 3 times`: so often, each in the next; `1 ch, 1 dc in next
    4 times` with its chains."""
    found: Terminals = []
    for here in t:
        often = here.type == "TIMES" or (here.type == "MORE" and here.number > 0)
        if often and (begun := _in_next(found)) < len(found):
            pair = _SMALL.issuperset(types(found, begun, 1 + (found[begun].type == "NUM")))
            closed = like(here, "RP", name="pair" if pair else "")
            found = [*found[:begun], like(here, "LP"), *found[begun:], closed, here]
            continue
        start = _on_its_like(found) if often else None
        if start is not None:
            both = types(found, start - 1, 1) == ["AND"] and start > 2
            if both:
                start = _small_before(found, start)  # `2 chain and 1 treble on treble 4 times`
            name = "like" if _small_before(found, start) < start else ""
            closed = like(here, "RP", name=name)
            found = [*found[:start], like(here, "LP"), *found[start:], closed]
        found.append(here)
    return found


def _in_next(found: Terminals) -> int:
    """Where `1 ch, 1 dc in the next`, `1 ch and 1 dc in the next loop` begins at the end of these
    words, or their end."""
    next_ = len(found) - 1 - (types(found, len(found) - 1, 1)[:1] in _NAMED)
    next_ -= types(found, next_ - 1, 2) == ["NEXT", "NUM"]  # `between next 2 dc`
    prep = next_ - 1 - (types(found, next_ - 1, 1) == ["THE"])
    several = types(found, next_ + 1, 1) == ["NUM"]
    chain = several and found[-1].type == "CH"  # `under the next 1 chain`
    places = ("BETWEEN",) if several and not chain else ("PREP",)
    placed = types(found, prep - 1, 1) == ["STITCH"] and found[prep].type in places
    if not placed or found[next_].type not in ("NEXT", "SAME"):
        return len(found)
    start = prep - 1 - (types(found, prep - 2, 1) == ["NUM"])
    return _small_before(found, start)


_NAMED = [[noun] for noun in NOUNS]


def _small_before(found: Terminals, at: int) -> int:
    """Where chains or picots begin that stand right before, with a comma or an `and`: `2 ch, 1 dc
    in dc 4 times`, `1 picot and 1 dc in next 4 times`; the same place where none do."""
    comma = types(found, at - 1, 1) in (["SEP"], ["AND"]) and not found[at - 1].name
    if not comma or at < _PAIR:
        return at
    if sorted(types(found, at - 3, 2)) == ["CH", "NUM"]:
        return at - 3
    if types(found, at - 2, 1) == ["PICOT"]:
        return at - 2 - (types(found, at - 3, 1) == ["NUM"])
    return at


_SMALL = frozenset({"NUM", "CH", "PICOT"})
_PAIR = 2


def _on_its_like(found: Terminals) -> int | None:
    """Where the stitch or the shell begins that goes into its like at the end of these words."""
    prep = len(found) - 2 - (types(found, len(found) - 2, 1) in (["NEXT"], ["THE"]))
    noun, made = found[-1:], types(found, prep - 1, 1)
    if types(found, prep, 1) != ["PREP"]:
        return None
    if made == ["RP"] and noun[0].kind in (Kind("shell"), Kind("group")):
        depth = 0
        for n in range(prep - 1, -1, -1):
            depth += (found[n].type == "RP") - (found[n].type == "LP")
            if depth == 0:
                return n
    if made == ["STITCH"] and noun[0].type == "STITCH" and noun[0].name == found[prep - 1].name:
        return prep - 1 - (types(found, prep - 2, 1) == ["NUM"])
    return None


def _stop_behind(t: Terminals, at: int) -> int:
    """Where the steps end that begin here: at a full stop or semicolon, a repeat or a mark."""
    depth = 0
    for n in range(at, len(t)):
        depth += (t[n].type == "LP") - (t[n].type == "RP")
        if depth < 0 or (depth == 0 and (is_stop(t[n]) or t[n].type in _STOPPED)):
            return n
    return len(t)


def _pair_behind(t: Terminals, at: int, end: int) -> int:
    """Where `4 times 1 picot and 1 dc on the next dc, 5 chain` ends what is joined by `and`, and
    only chains stand behind it; 0 where it does not."""
    comma = next((n for n in range(at, end) if t[n].text == ","), end)
    small = types(t, at, 1 + (types(t, at, 1) == ["NUM"]))
    joined = at + len(small)
    chains, behind = chains_at(t, comma + 1)
    pair = _SMALL.issuperset(small) and joined < end and t[joined].text == "and"
    placed = "PREP" in types(t, joined, comma - joined)
    return comma if pair and placed and chains and behind == end else 0


def _then_behind(t: Terminals, at: int, end: int) -> int:
    """Where the last `then` ends the steps that go by turns, once there are two of them: `4 times
    alternately 3 ch, 1 dc, then 2 ch`."""
    parted = next((n for n in range(at, end) if t[n].type in ("SEP", "AND")), end)
    return max((n for n in range(parted + 1, end) if t[n].text == "then"), default=end)


_STOPPED = frozenset({"STAR", "REPEAT", "ENDING", "ENDWITH"})
_STEPS = (["NUM"], ["STITCH"], ["CH"], ["PICOT"])


def times_of_list(t: Terminals) -> Terminals:
    """`1 dc, 1 ch, 5 times; …` inside a row: all from the last stop on, in a bracket."""
    found: Terminals = []
    begun = 0  # what stands before is done with
    for n, here in enumerate(t):
        if here.type not in HOW_OFTEN or n - begun < 3:
            continue
        joined = n - 5 if t[n - 3].text == "and" else n - 4
        both = [x for x in t[max(joined, 0) : n] if x.text != "and"]
        if joined >= begun and here.number > 1 and types(both, 0, 4) in _COMMALESS:
            pair = [like(here, "LP"), *t[joined:n], like(here, "RP")]
            found += [*t[begun:joined], *pair]
            begun = n
            continue
        if t[n - 1].type != "SEP":
            continue
        if t[n - 2].type == "RP" or only_ends(t[n + 1 :]) or types(t, n + 1, 1) == ["RP"]:
            continue
        start = max(begun, list_start(t, n - 1))
        if "REPEAT" in types(t, start - 1 if start > begun else len(t), 1) or start == n - 1:
            break
        bracket = [like(here, "LP"), *t[start : n - 1], like(here, "RP", name="list")]
        found += [*t[begun:start], *bracket]
        begun = n
    return [*found, *t[begun:]]


_COMMALESS = (["NUM", "CH", "NUM", "STITCH"], ["NUM", "STITCH", "NUM", "CH"])
"""`1 chain 1 treble seven times`."""


def times_of_row(t: Terminals) -> Terminals:
    """`2 tr, 3 ch, 4 times`: behind a comma at a row's end it is said of the whole row."""
    end = len(t)
    while end and t[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    if end < 3 or t[end - 1].type not in HOW_OFTEN or t[end - 2].type != "SEP":
        return t
    if t[end - 3].type == "RP" or any(x.type in ("STAR", "REPEAT") for x in t[: end - 1]):
        return t
    often = t[end - 1]
    counted = "INALL" if often.type == "TIMES" else often.type
    repeat = [like(often, "REPEAT", name="row"), replace(often, type=counted)]
    return [*t[: end - 1], *repeat, *t[end:]]
