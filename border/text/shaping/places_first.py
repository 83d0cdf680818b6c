"""A place before its stitches: `in each loop work 1 dc, 5 tr, 1 dc`, `in the next loop * 1 dc, 1
ch, repeat from * 4 times`.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.shaping.sentences import list_end, place_at, shell_before, trimmed
from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.passing import (
    HOW_OFTEN,
    OPENS,
    WHICH,
    Terminals,
    ended,
    like,
    past,
    stops,
    types,
)
from border.text.wording.said_once import BIDS, leads_on


def places_first(t: Terminals) -> Terminals:
    """`in each loop work 1 dc, 5 tr, 1 dc`: as `(1 dc, 5 tr, 1 dc) in each loop`."""
    if [x.type for x in t if x.type not in ("SEP", "MOD", "ENDING")] == ["PREP", "STITCH"]:
        return t  # `in double crochet, taking both threads`
    found: Terminals = []
    at = placed = 0
    while at < len(t):
        opens = not found or found[-1].type in ("SEP", "STAR", "LP")
        opens = opens and (
            types(found, len(found) - 2, 1) != ["BETW"]
            or types(found, placed, 4) in (["SEP"], ["SEP", "BETW", "SEP"])
        )
        if t[at].type == "ALLIN" and types(found, len(found) - 1, 1) in ([], ["STAR"], ["LP"]):
            t = [*t[:at], replace(t[at], type="PREP"), *t[at + 1 :]]  # `all in the 5 ch, 1 dc, …`
        end = place_at(t, at) if opens and t[at].type == "PREP" else at
        behind = end > at and _goes_behind(found)
        if behind and _has_its_own(t, end):  # `1 dc, in the loop 7 tr`
            found[-1] = replace(found[-1], name="hard", text=";")
        elif behind or (end > at and ended(t, end) and _behind_bracket(found)):
            if behind and leads_on(t, end):
                t = [*t[:at], replace(t[at], name=EITHER), *t[at + 1 :]]
            found.pop()
            start = shell_before(found)
            if start is not None:
                found[start:] = [like(t[at], "LP"), *found[start:], like(t[at], "RP")]
            end = at
        if end == at:
            found.append(t[at])
            at += 1
            continue
        start = end + (types(t, end, 1) == ["SEP"])
        stop = _with_starred(t, start, list_end(t, start))
        if stop == start and not _adds(t, at, found):
            found += t[at:end]
            at = end
            continue
        if _says_where(t, at, end, stop):
            at = start
            continue
        if all(x.type in ("NUM", "CH", *_PARTS) for x in t[start:stop]) and _adds(t, at, found):
            found += [*_made_last(found), replace(t[at], name=ONCE_MORE), *t[at + 1 : end]]
            at = end
            continue
        place, steps = t[at:end], places_first(list(t[start:stop]))
        parted = [x for x in steps[-1:] if x.type == "BETW"]
        steps = steps[: trimmed(steps, 0, len(steps) - len(parted))]
        each = any(x.type in ("EACH", "EVERY", "EACHOF") for x in place)
        whole = each or t[start - 1].text == ":"  # `in next space: 2 dc, ch 1`
        steps, on = (steps, []) if whole else _leading_on(steps)
        single = types(steps, 0, 2) == ["NUM", "STITCH"] and len(steps) == 2
        if single or [x.type for x in steps] == ["STITCH"]:
            inside = [x for x in parted if x.kind == Kind(steps[-1].name)]  # `between the treble`
            several = single and steps[0].number > 1 and parted and parted[0].kind is None
            if several:  # `into each loop 5 treble with 1 chain between each`: either
                parted = [replace(parted[0], name="divided")]
            found += [*steps, *inside, *place, *(parted if not inside else [])]
        elif parted and (stitch := _parted_step(steps, parted[0])):
            left, right = like(place[0], "LP"), like(place[-1], "RP")
            found += [left, *steps[:stitch], *parted, *steps[stitch:], right, *place]
        else:
            left, right = like(place[0], "LP"), like(place[-1], "RP")
            counted = any(x.type == "EACHOF" for x in place) and t[start - 1].text != ":"
            if counted and _leading_on(steps)[1]:
                right = replace(right, name=CHAINED)
            found += [left, *steps, right, *place, *parted]
        at, placed = _behind_again(t, stop), len(found)
        found += on
    return found


def _behind_again(t: Sequence[Terminal], at: int) -> int:
    """Behind the `again in it` of `in the loop 3 dc, 4 ch, 3 dc again in it`; else the same
    place."""
    again = types(t, at, 4) == ["SEP", "PREP", "SAME", "PLACE"] and t[at].text == "again"
    return at + 4 if again else at


CHAINED = "chains at its end"
"""The name of a bracket in each of several places whose last chains may lead on from them all."""


def _leading_on(steps: Terminals) -> tuple[Terminals, Terminals]:
    """A list without the chains at its end, `1 dc, 3 tr, 1 dc, 2 ch`, and these: they lead on."""
    made = len(steps) - 3
    chains = made > 0 and sorted(types(steps, made + 1, 2)) == ["CH", "NUM"]
    several = any(x.type in _STITCHES for x in steps[: max(made, 0)])
    if not chains or not several or steps[made].type != "SEP" or steps[made].name:
        return steps, []
    return steps[:made], steps[made:]


def _with_starred(t: Sequence[Terminal], start: int, stop: int) -> int:
    """Behind a list that goes on with a starred repeat of so many times: `in the loop, 1 dc, * 1
    treble, 1 chain, repeat from * 4 times, 1 dc`."""
    star = past(t, stop, "SEP")
    again = next((n for n in range(star + 1, len(t)) if t[n].type in ("REPEAT", "STAR")), len(t))
    counted = types(t, again, 2) == ["REPEAT", "FROMSTAR"] and types(t, again + 2, 1)[:1] in _OFTEN
    soft = all(not x.name for x in t[stop:star])
    soft &= all(x.type not in OPENS for x in t[star:again])
    if stop == start or types(t, star, 1) != ["STAR"] or not counted or not soft:
        return stop
    more = past(t, again + 3, "SEP")
    softly = types(t, again + 3, 1) == ["SEP"] and not t[again + 3].name
    return max(again + 3, list_end(t, more)) if softly else again + 3


_STITCHES = frozenset({"STITCH", "CLUSTER"})
ONCE_MORE = "once more"
"""The name of a place that a step without one is worked in again."""


_PARTS = ("SEP", "AND")


_ADDS = frozenset({"and", "also", "then", "again", ",", "too", "likewise"})


def _adds(t: Sequence[Terminal], at: int, found: Sequence[Terminal]) -> bool:
    """Whether `1 dc in the loop, and in the next loop, 5 ch` says of a step that it is worked again
    in this place; chains have no place of their own."""
    parts = at - 1
    while parts >= 0 and t[parts].type in _PARTS:
        parts -= 1
    return (
        parts >= 0 and all(x.text in _ADDS for x in t[parts + 1 : at]) and bool(_made_last(found))
    )


def _made_last(found: Sequence[Terminal]) -> Terminals:
    """The stitches, with their number, or the bracket, of the last step with a place."""
    prep = max((n for n, x in enumerate(found) if x.type in ("PREP", "ALLIN")), default=0)
    if not prep or any(stops(x) for x in found[prep:] if x.type != "SEP"):
        return []
    if found[prep - 1].type == "STITCH":
        return list(found[prep - 1 - (types(found, prep - 2, 1) == ["NUM"]) : prep])
    opens = max((n for n in range(prep) if found[n].type == "LP"), default=0)
    return list(found[opens:prep]) if found[prep - 1].type == "RP" else []


def _parted_step(steps: Sequence[Terminal], between: Terminal) -> int:
    """Behind which stitch of a list chains belong that stand between its like.

    `1 dc, 5 tr, 1 dc, with 1 ch between each tr`: behind the 5 tr; 0 where they name none that
    stands there by several.
    """
    several = [
        n
        for n, x in enumerate(steps)
        if x.type == "STITCH" and between.kind == Kind(x.name) and n and steps[n - 1].number > 1
    ]
    return several[0] + 1 if len(several) == 1 else 0


def repeats_placed(t: Terminals) -> Terminals:
    """`in the next loop * 1 dc, 1 ch, repeat from * 4 times`: all of it into that loop; `on each
    of the 5 dc * …, repeat from *`, so on each of them."""
    found: Terminals = []
    at = 0
    while at < len(t):
        opens = t[at].type == "PREP" and types(found, len(found) - 1, 1) in _OPENED
        star = place_at(t, at) if opens else at
        again = next((n for n in range(star + 1, len(t)) if t[n].type in ("REPEAT", "STAR")), at)
        inside = star > at and types(t, star, 1) == ["STAR"] and types(t, again, 1) == ["REPEAT"]
        if not inside or types(t, again + 1, 1) != ["FROMSTAR"]:
            found.append(t[at])
            at += 1
            continue
        often = t[again + 2 : again + 3] if types(t, again + 2, 1)[:1] in _OFTEN else []
        each = any(x.type in ("EACH", "EACHOF") for x in t[at:star])
        steps = t[star + 1 : trimmed(t, star + 1, again)]
        left, right = like(t[star], "LP"), like(t[again], "RP")
        if often:
            steps = [t[star], *steps, *t[again : again + 2], *often]
        elif not each:  # how often is not said
            found.append(t[at])
            at += 1
            continue
        found += [left, *steps, right, *t[at:star]]
        at = again + 2 + len(often)
    return found


_OPENED: tuple[list[str], ...] = ([], ["SEP"], ["STAR"], ["LP"], ["AND"])


_OFTEN = [[type_] for type_ in HOW_OFTEN]


def _goes_behind(found: Sequence[Terminal]) -> bool:
    """Whether a place belongs, comma or not, to the stitch before it, which has none yet."""
    if len(found) < 2 or found[-1].type != "SEP" or found[-1].name:
        return False
    if found[-2].type in HOW_OFTEN and types(found, len(found) - 4, 1) == ["CH"]:
        return True  # `1 dc, 1 ch, 6 times, under the 4 ch`
    at = len(found) - 3
    at -= types(found, at, 1) == ["NUM"]
    named = at >= 0 and found[at].type in OPENS | WHICH  # `sc on sc, under the chain …`
    return found[-2].type in _STITCHES and not named


def _has_its_own(t: Sequence[Terminal], at: int) -> bool:
    """Whether steps follow a place with no mark between, perhaps with a word that bids them."""
    step = at + (types(t, at, 1) == ["SEP"] and t[at].text in BIDS)
    return types(t, step, 2) in _OWN and types(t, step + 2, 1) not in ([x] for x in HOW_OFTEN)


EITHER = "either"
"""The name of a place with a comma before it and stitches behind it."""


_OWN = (["NUM", "STITCH"], ["NUM", "CH"], ["CH", "NUM"], ["NUM", "PICOT"])


def _behind_bracket(found: Sequence[Terminal]) -> bool:
    """Whether a place with a comma before it, `(…), in each loop`, is that of a bracket; it may
    say how often: `(…) 3 times, in each loop`."""
    if types(found, len(found) - 1, 1) != ["SEP"] or found[-1].name:
        return False
    times = types(found, len(found) - 2, 1) == ["TIMES"]
    return types(found, len(found) - 2 - times, 1) == ["RP"]


def _says_where(t: Sequence[Terminal], at: int, end: int, stop: int) -> bool:
    """Whether `round the scallops work 1 dc, 8 tr, 1 dc in each loop` names two places: the first
    only says where these are."""
    named = any(x.type in ("EVERY", "NEXT", "NUM", "ORD", "SAME") for x in t[at:end])
    step = past(t, stop, "SEP")
    place = past(t, step, "NUM", "STITCH")
    several = not named and t[end - 1].text.endswith("s")
    listed = all(x.name != "hard" for x in t[stop:step])
    return several and listed and stop < step < place and types(t, place, 2) == ["PREP", "EACH"]
