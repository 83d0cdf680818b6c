"""What stands after some of the stitches of a place: `12 dc in it, with a picot after every 2nd`.

The stitches become a bracket, `((2 dc, picot) 6 times) in it`; of one in each place, as
`1 dc in each st, 3 ch after every 2nd`, a bracket that names so many places each time.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby, pairwise

from msgspec import Struct
from msgspec.structs import replace

from border.text.shaping.between import behind_between
from border.text.shaping.sentences import place_at
from border.text.terminals import Terminal
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    Terminals,
    ended,
    is_stop,
    like,
    past,
    stitch_left_out,
    stops,
    types,
)

_BETWEEN = 0
"""After all but the last: `with a picot between`."""
_MOST = 48
"""So many stitches with something after some of them are written out."""


class _After(Struct, frozen=True):
    """What stands after stitches, and where these words end: after every so many, or after those
    of these numbers (-1: the last). `between`: not after the last ones of a place, or of those
    that are counted. `named`: `after each dc`, not `after each`."""

    what: tuple[Terminal, ...]
    every: int
    numbers: tuple[int, ...]
    end: int
    between: bool = False
    named: bool = False


class _Made(Struct, frozen=True):
    """Stitches made: so many at once; in so many places (0: in all there are), or all in one.

    `stitch`: with what is said of it, `dc with white`.
    """

    number: Terminal
    stitch: Terminals
    place: Terminals
    each: bool = False
    places: int = 1


def after_each(t: Terminals) -> Terminals:
    """The terminals with all such stitches as brackets."""
    found: Terminals = []
    at = 0
    while at < len(t):
        place = at + 2
        while types(t, place, 1) == ["MOD"]:
            place += 1
        end = _behind_place(t, place) if types(t, at, 2) == ["NUM", "STITCH"] else at
        after = _after(t, at, end) if end > at else None
        made = _made(t[at], t[at + 1 : place], t[place:end]) if after is not None else None
        parted: Terminals = []
        alone = after is not None and _by_itself(t, place, after, made)
        if after is not None and after.every == 1 and not alone:
            parted = _behind_several(found, t[at:end], after)
        if after is not None and made is not None:
            parted = parted or _parted(made, after)
        placed = types(t, place, 1) == ["PREP"]
        if alone and placed and _alike_before(found, t[at + 1]):
            last = max((n for n, x in enumerate(parted) if x.type == "RP"), default=-1)
            parted = [replace(x, name=LAST_ONE) if n == last else x for n, x in enumerate(parted)]
        if after is None or not parted:
            found.append(t[at])
            at += 1
            continue
        behind = after.end + (types(t, after.end, 2) == ["SEP", "PREP"])
        bare = end == place and types(t, behind, 1) != ["PREP"] and types(parted, 0, 1) == ["LP"]
        found += parted[1:-1] if bare and parted[-1].type == "RP" else parted
        at = behind
    return found


def _by_itself(t: Sequence[Terminal], place: int, after: _After, made: _Made | None) -> bool:
    """Whether what stands after each of a step's stitches is said of that step alone: of one in
    each of several places, or of stitches whose place comes behind it, `2 dc, with 3 ch after
    each, in the 2 ch`."""
    several = made is not None and made.each and made.places > 1
    behind = after.end + (types(t, after.end, 1) == ["SEP"])
    return several or (types(t, place, 1) != ["PREP"] and types(t, behind, 1) == ["PREP"])


LAST_ONE = "last one"
"""The name of a bracket of what stands after each of one step alone, with others like it before."""


def _alike_before(found: Terminals, stitch: Terminal) -> bool:
    """Whether the step right before is of the same stitch: `1 dc in next st, 1 dc in each of the
    next 4, with 1 ch after each`."""
    end = len(found)
    while end and found[end - 1].type in ("SEP", "AND") and not is_stop(found[end - 1]):
        end -= 1
    start = end
    while start and found[start - 1].type not in ("SEP", "AND") and not stops(found[start - 1]):
        start -= 1
    made = next((x for x in found[start:end] if x.type in ("STITCH", "CH", "PICOT")), None)
    return end < len(found) and made is not None and made.name == stitch.name


def _behind_several(found: Terminals, step: Terminals, after: _After) -> Terminals:
    """`2 dc in loop, 2 dc in next loop, 3 ch after each`: behind both; nothing where no step like
    the last one stands before it in this sentence."""
    start = max((n for n, x in enumerate(found) if stops(x)), default=-1) + 1
    comma = like(step[0], "SEP")
    said = [(x.type, x.number, x.name) for x in step[:2]]
    whole: Terminals = []
    before = 0
    for separator, words in groupby(found[start:], lambda x: x.type == "SEP"):
        steps = list(words)
        whole += steps
        if not separator and [(x.type, x.number, x.name) for x in steps[:2]] == said:
            whole += [comma, *after.what]
            before += 1
    found[start:] = whole if before else found[start:]
    return [*step, comma, *after.what] if before else []


def _behind_place(t: Sequence[Terminal], at: int) -> int:
    """Behind the place that stands here; the same place where there is none."""
    if types(t, at, 1) != ["PREP"]:
        return at
    end = place_at(t, at)
    if end == at and types(t, at + 1, 3) == ["EACHOF", "NEXT", "NUM"]:
        return at + 4  # `into each of the 7`
    return end


def _after(t: Sequence[Terminal], made: int, at: int) -> _After | None:
    """`with a picot after every 2nd`, `3 ch after the third`, behind what is made."""
    each = any(x.type == "EACH" for x in t[made:at])
    over_all = each or any(x.type == "EVERY" for x in t[made:at])
    number, stitch = t[made].number, t[made + 1].name
    at += types(t, at, 1) == ["SEP"] and not t[at].name
    at += types(t, at, 1) == ["WITH"]
    start = at
    at += types(t, at, 1) == ["NUM"]
    if types(t, at, 1) not in (["PICOT"], ["CH"]):
        return None
    at += 1 + (types(t, start, 2) == ["CH", "NUM"])
    what = tuple(t[start:at])
    if types(t, start - 1, 1) == ["WITH"] and (end := _behind_centre(t, at)) > at:
        # `with a picot in the centre`: after half of them, or on the one in the middle
        whole = number % 2 == 0 or what[-1].type == "PICOT"
        return _After(what, 0, ((number + 1) // 2,), end) if number > 1 and whole else None
    groups = _groups(t, at, number, each)
    between = groups > 0 and t[at].type == "BETWEEN" and groups != number
    if types(t, at, 3) == ["BETWEEN", "EACH", "PAIR"] and number > 2:
        end = past(t, at + 3, "OF", "STITCH")
        return _After(what, 0, tuple(range(2, number, 2)), end) if ended(t, end) else None
    if types(t, at, 1) == ["BETWEEN"] and what[-1].type == "PICOT" and not groups:
        end = behind_between(t, at + 1)
        return _After(what, 0, (_BETWEEN,), end) if ended(t, end) else None
    if types(t, at, 1) != ["AFTER"] and not groups:
        return None
    at += 1 + (types(t, at + 1, 1) == ["THE"])
    if (end := _behind_but_last(t, at)) > at:
        several = each or any(x.type == "EACHOF" for x in t[made:at])
        all_but = (_BETWEEN,) if several else tuple(range(1, number))
        return _After(what, 0, all_but, end) if all_but else None
    every, numbers = 0, []
    if types(t, at, 1) in (["EVERY"], ["EACH"]):
        every = groups or t[at].number or 1
        at += 1 + (groups > 0)
    while not every and types(t, at, 1) == ["ORD"]:
        numbers.append(t[at].number)
        at += 1
        more = at
        while types(t, more, 1) in (["SEP"], ["AND"], ["THE"]) and not t[more].name:
            more += 1
        at = more if types(t, more, 1) == ["ORD"] else at
    stitches = types(t, at, 1) == ["STITCH"]
    if stitches and t[at].name != stitch:
        return None
    named = stitches or (types(t, at, 1) == ["KIND"] and _any_stitch(t[at]))
    one = types(t, at, 1) == ["NUM"] and t[at].number == 1
    at += named or one
    # chains after each, all along a row, part stitches: `between.py`
    chains_between = every == 1 and what[-1].type != "PICOT" and over_all
    said = (every > 0 or numbers) and (ended(t, at) or types(t, at, 1) == ["PREP"])
    after = _After(what, every, tuple(numbers), at, between, stitches)
    return after if said and not chains_between else None


def _behind_centre(t: Sequence[Terminal], at: int) -> int:
    """Behind `in the centre`, `in the middle of each`, `on the centre one`; else the same place."""
    centre = past(t, at + 1, "THE") if types(t, at, 1) == ["PREP"] else at
    if centre == at or types(t, centre, 1) != ["CENTRE"]:
        return at
    end = past(t, centre + 1, "OF", "THE", "EACH", "STITCH", "KIND")
    end += types(t, end, 1) == ["NUM"] and t[end].number == 1
    return end if ended(t, end) else at


def _behind_but_last(t: Sequence[Terminal], at: int) -> int:
    """Behind `each except the last`, `all but the last one`; else the same place."""
    but = at + (types(t, at, 1) in (["EACH"], ["EVERY"], ["ALL"]))
    last = past(t, but + 1, "THE") if types(t, but, 1) in (["EXCEPT"], ["BUT"]) else but
    if but == at or last == but or types(t, last, 1) != ["ORD"] or t[last].number != -1:
        return at
    end = past(t, last + 1, "NUM", "STITCH")
    return end if ended(t, end) else at


def _groups(t: Sequence[Terminal], at: int, made: int, each: bool) -> int:
    """The number of `after every 4`, `between every 3 dc`; 0 if none.

    Between every two is between one and the next, but where pairs are made in a place; as many
    as are made in each are parted from place to place.
    """
    if types(t, at + 1, 2) != ["EACH", "NUM"] or types(t, at, 1) not in (["AFTER"], ["BETWEEN"]):
        return 0
    every = t[at + 2].number
    pairs = every == 2 and not (made > 2 and made % 2 == 0)
    parts = t[at].type == "BETWEEN" and (pairs or (each and every == made))
    return 0 if parts or every == 1 else every


def _any_stitch(here: Terminal) -> bool:
    return here.kind is not None and here.kind.name == "st"


def _made(number: Terminal, stitch: Terminals, place: Terminals) -> _Made | None:
    """The stitches that are made; None where it is not sure how many go into one place."""
    noun = place[-1] if place else None
    counted = next((x for x in place if x.type == "NUM"), None)
    if _is_part(place):
        return _Made(number, stitch, place)
    if any(x.type == "EACHOF" for x in place) and counted is not None:
        return _Made(number, stitch, place, True, counted.number)
    if counted is not None and counted.number > 1 and noun is not None:
        if noun.type == "CH" or noun is counted:
            return _Made(number, stitch, place) if counted.number != number.number else None
        one = replace(number, number=1)
        same = counted.number == number.number
        if all(x.type not in ("NEXT", "ORD", "EACHOF") for x in place):  # `5 dc on the 5 dc`
            place = [place[0], like(counted, "EACHOF"), like(counted, "NEXT"), counted, noun]
        next_ = past(place, 1, "THE")
        if types(place, next_, 2) == ["NEXT", "NUM"] and noun.kind not in ARCHES:
            place = [place[0], like(counted, "EACHOF"), *place[next_:]]  # `2 dc in the next 2 st`
        return _Made(one, stitch, place, True, counted.number) if same else None
    if types(place, 1, 1) == ["EACH"]:
        return _Made(number, stitch, place, True, 0)
    return _Made(number, stitch, place)


def _is_part(place: Sequence[Terminal]) -> bool:
    """Whether a place is one part of several, `in the 3rd of the 5 dc`: what goes there goes into
    one, and the number behind it is of what it is a part."""
    which = past(place, 1, "THE")
    of = past(place, which + 1, *NOUNS)
    one = types(place, which, 1) in (["ORD"], ["CENTRE"])
    return one and types(place, of, 1) == ["OF"]


def _parted(made: _Made, after: _After) -> Terminals:
    """The bracket, with its place; nothing where the stitches do not come out even."""
    if made.number.number > _MOST or made.places > _MOST:
        return []
    count = made.number.number
    if after.numbers == (_BETWEEN,):
        if not (made.each and made.places > 1 and count == 1):
            return []
        after = replace(after, numbers=tuple(range(1, made.places)))
    behind_place = after.every == 1 and not after.named and after.what[-1].type != "PICOT"
    if behind_place and made.each and count > 1:
        return _behind_each_place(made, after) if made.places > 1 else []
    within = after.every <= count and max(after.numbers, default=0) <= count
    if within and (count > 1 or after.every == 1):
        return [*_in_one(made, after, count), *made.place]
    if not made.each or (after.every % count if after.every else count > 1 or not made.places):
        return []
    if made.places == 0:
        group = [*_several(made, after.every // count), like(made.number, "SEP"), *after.what]
        return [*_bracket(made.number, group), like(made.number, "TOEND")]
    return _in_several(made, after, count)


def _behind_each_place(made: _Made, after: _After) -> Terminals:
    """`3 dc in each of the next 2 loops, 3 ch after each`: behind each three."""
    here = made.place[0]
    next_ = [here, like(here, "NEXT"), replace(made.place[-1], many=False)]
    one = [made.number, *made.stitch, *next_, like(here, "SEP"), *after.what]
    return [*_bracket(here, one), like(here, "TIMES", number=made.places)]


def _in_one(made: _Made, after: _After, count: int) -> Terminals:
    """`((2 dc, picot) 3 times, 1 dc)`: what is made in one place."""

    def so_many(n: int) -> Terminals:
        return [replace(made.number, number=n), *made.stitch]

    sizes = _sizes(after, count)
    return _bracket(made.number, _grouped([so_many(n) for n in sizes], sizes, made, after))


def _in_several(made: _Made, after: _After, count: int) -> Terminals:
    """`((1 dc in each of the next 2 st, picot) 3 times, 1 dc in next st)`: one after the other."""
    sizes = [n // count for n in _sizes(after, count * made.places)]
    steps = [_several(made, n) for n in sizes]
    return _bracket(made.number, _grouped(steps, sizes, made, after))


def _sizes(after: _After, count: int) -> list[int]:
    """So many stitches before each time, and last those behind which nothing stands, or 0."""
    marks = [count if n < 0 else n for n in after.numbers]
    last = count - after.between
    marks = sorted({n for n in marks if n <= count}) or [*range(after.every, last + 1, after.every)]
    return [b - a for a, b in pairwise([0, *marks, count])]


def _grouped(
    steps: Sequence[Terminals], sizes: Sequence[int], made: _Made, after: _After
) -> Terminals:
    """Steps with what stands after each but the last; those that are alike as a bracket."""
    comma = like(made.number, "SEP")
    *before, _ = steps
    times = len(before)
    if times > 1 and len(set(sizes[:-1])) == 1:
        group = _bracket(made.number, [*before[0], comma, *after.what])
        found = [*group, like(made.number, "TIMES", number=times)]
    else:
        found = [x for n, step in enumerate(before) for x in _listed(step, after, comma, n)]
    return [*found, *([comma, *steps[-1]] if sizes[-1] else [])]


def _listed(step: Terminals, after: _After, comma: Terminal, n: int) -> Terminals:
    return [*([comma] if n else []), *step, comma, *after.what]


def _several(made: _Made, places: int) -> Terminals:
    """`1 dc in each of the next 2 st`."""
    here = made.place[0]
    noun = made.place[-1] if made.place[-1].type != "NUM" else stitch_left_out(here)
    of = [like(here, "EACHOF"), like(here, "NEXT"), like(here, "NUM", number=places)]
    which = of if places > 1 else [like(here, "NEXT")]
    return [made.number, *made.stitch, here, *which, noun]


def _bracket(here: Terminal, inside: Terminals) -> Terminals:
    return [like(here, "LP"), *inside, like(here, "RP")]
