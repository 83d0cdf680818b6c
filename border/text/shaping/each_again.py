"""`in each` where a repeat says so already: `5 ch, 1 dc in each loop; repeat`."""

from __future__ import annotations

from border.text.tree import Kind
from border.text.wording.passing import NOUNS, OPENS, Terminals, like, made, only_ends, past, types


def each_again(t: Terminals) -> Terminals:
    """`5 ch, 1 dc in each loop; repeat`: chains for each place, so it is the next each time."""
    at, star = _repeated(t)
    steps = [x for x in t[star:at] if x.type != "SEP"]
    which = next((n for n, x in enumerate(t[:at]) if x.type in ("EACH", "EVERY")), at)
    one = sum(x.type in ("EACH", "EVERY") for x in steps) == 1
    one = one and types(t, which + 1, 1) != ["ORD"]
    opens = sum(x.type in ("PREP", "BETWEEN") for x in steps) == 1
    first, last = types(steps, 0, 2), types(steps, len(steps) - 2, 2)
    chained = first in _CHAINS or (last in _CHAINS and types(steps, len(steps) - 3, 1) != ["EACH"])
    parted = any(x.type in ("BETW", "WITH") for x in t[which:at])  # so many together
    if at == len(t) or parted or not (one and opens and (chained or star)):
        return t
    every = t[which].type == "EVERY"  # `in every other loop`: in the 2nd
    nth = like(t[which], "ORD", number=t[which].number) if every else None
    return [*t[:which], nth or like(t[which], _next(t, which)), *t[which + 1 :]]


def _next(t: Terminals, each: int) -> str:
    """`on the treble` for `on each treble`: where these stand in groups, it is asked which are
    meant. Several of the same stitch on it, and all other places, go in the next."""
    noun = t[each + 1]
    alike = made(t[:each]) > 1 and any(x.name == noun.name for x in t[:each])
    return "THE" if noun.type == "STITCH" and not alike else "NEXT"


def each_parted(t: Terminals) -> Terminals:
    """`shell in shell with 3 chain between, all round`: in each, where nothing stands behind it."""
    at = next((n for n, x in enumerate(t) if x.type == "BETW"), len(t))
    before = [x for x in t[:at] if x.type != "THE"]
    behind = t[at + 1 :]
    place = types(before, len(before) - 2, 1) == ["PREP"] and before[-1].type in NOUNS
    whole = only_ends([x for x in behind if x.type != "TOEND"]) and before[-1:] != []
    said = any(x.type == "TOEND" for x in behind) and t[at : at + 1] and t[at].kind is None
    shell = types(before, len(before) - 3, 1) == ["RP"]
    if not (place and whole and said) or not (shell or made(before[:-2]) == 1) or before[-1].many:
        return t
    return [*before[:-1], like(before[-1], "EACH"), before[-1], *t[at:]]


def come_again(t: Terminals) -> Terminals:
    """`1 dc on dc, 5 tr in each loop; repeat`: each where its place comes, one after the other."""
    at, star = _repeated(t)
    steps = _steps(t[star:at])
    placed = [_in_each(step) for step in steps]
    each = any(x.type == "EACH" for step in steps for x in step[-2:-1])
    if at == len(t) or len(steps) < 2 or not each or not all(placed):
        return t
    inside = placed[0]
    for step in placed[1:]:
        inside = [*inside, like(step[0], "SEP"), *step]
    ends = [x for x in t[at + 1 :] if x.type not in _EXTENT]
    return [like(t[0], "LP"), *inside, like(t[at], "RP"), like(t[at], "COME"), *ends]


def with_more(t: Terminals) -> Terminals:
    """`3 dc in each space, with 1 dc in each dc`: each where its place comes."""
    at = next((n for n, x in enumerate(t) if x.type == "WITH"), len(t))
    end = next((n for n in range(at, len(t)) if t[n].type in ("SEP", "ENDING")), len(t))
    more = _in_each(t[at + 1 : end])
    begun = 3 if types(t, 0, 3) in (["NUM", "CH", "SEP"], ["SEP", "CH", "SEP"]) else 0
    before = [x for x in t[begun:at] if x.type not in ("SEP", "TOEND")]
    first = _in_each(before) or _in_each(_place_behind(before))
    each = any(x.type == "EACH" for x in t[at:end])
    closes = past(t, end, "SEP")  # `…; join to the first dc`
    ends = closes == len(t) or t[closes].type == "ENDING"
    if not more or not first or not each or not ends:
        return t
    comma = like(t[at], "SEP", name="")
    if first[-1].kind == Kind("st"):  # where chains count, a stitch is any of them
        first, more = more, first
    steps = [*first, comma, *more]
    come = [like(t[begun], "LP"), *steps, like(t[at], "RP"), like(t[at], "COME")]
    return [*t[:begun], *come, *t[end:]]


def _place_behind(step: Terminals) -> Terminals:
    """`in each space 3 dc` as `3 dc in each space`."""
    return [*step[3:], *step[:3]] if types(step, 0, 2) == ["PREP", "EACH"] else []


def _repeated(t: Terminals) -> tuple[int, bool]:
    """Where a row ends in a repeat of all that stands before it, and whether a mark opens it.

    That is a printed mark: behind a star that a `repeat from *` goes back to, `in each` goes to
    the end of the row itself, which is a fault of the text. The end of the row if none.
    """
    at = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    star = types(t, 0, 1) == ["STAR"]
    closed = at < len(t) and not t[at].text.startswith("rep")
    whole = only_ends([x for x in t[at + 1 :] if x.type not in _EXTENT])
    return (at, star) if whole and (closed or not star) else (len(t), star)


_EXTENT = frozenset({"FROMSTAR", "FROMHEAD", "TOEND"})


def _steps(t: Terminals) -> list[Terminals]:
    """The steps of a list, by the commas that part them."""
    steps: list[Terminals] = [[]]
    depth = 0
    for here in t:
        depth += (here.type == "LP") - (here.type == "RP")
        if here.type == "SEP" and depth == 0:
            steps.append([])
        else:
            steps[-1].append(here)
    return [step for step in steps if step]


def _in_each(step: Terminals) -> Terminals:
    """A step whose place is all of one kind, said to go into each; empty where it is not."""
    noun = len(step) - 1
    size = types(step, noun - 2, 3) == ["EACH", "NUM", "CH"]
    which = noun - 1 - size  # `each 3 ch`
    prep = which - (types(step, which, 1) in (["EACH"], ["THE"]))
    known = prep > 0 and step[noun].type in NOUNS and step[prep].type == "PREP"
    once = known and all(x.type not in OPENS | {"STAR", "REPEAT"} for x in step[:prep])
    named = step[noun - size :]
    return [*step[: prep + 1], like(step[prep], "EACH"), *named] if once else []


_CHAINS = (["NUM", "CH"], ["CH", "NUM"])
