"""Scallops, points and the like: what a text that does not say it works into.

Books call one thing by many names, and two things by one. On the edge such a word is its
places; later it is a shell where the row below makes shells, else a space. What is taken is
told, and a heading (`scallop means space`) says otherwise.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.steps import walk
from border.text.tree import SPACES as HOLES
from border.text.tree import (
    Bracket,
    Chains,
    Copy,
    Headings,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Row,
    Stitches,
    Text,
    Which,
)
from border.text.vocabulary import vocabulary
from border.text.wording.passing import past, types
from border.text.written_steps import write_list

if TYPE_CHECKING:
    from border.text.terminals import Terminal

EDGE, SHELLS, SPACES = "edge", "shells", "spaces"
"""What a row is worked into: the edge, a row that makes shells, any other."""

_OPENS = frozenset({"PREP", "OF", "OR", "BETWEEN", "SKIP", "SOON"})
_DETERMINES = frozenset({"THE", "NEXT", "EACH", "EVERY", "EACHOF", "SAME", "OTHER", "ALL"})
_BEFORE = _DETERMINES | {"ORD", "NUM", "CENTRE"}

_TAKEN = {
    "loop": "the loops of the edge",
    "space": "the chain loops of the row below",
    "shell": "what the row below works into one place, with the chains between",
    "picot": "picots",
}


_ALONG = "this is counted along the row, from where the step before it stands, and not in each"
_OTHERS = 'where others follow in each, miss them behind it: "skip 1 picot", "skip 2 spaces"'


def with_assumed_places(
    terminals: list[Terminal], below: str, source: Source, told: set[str], clusters: str = ""
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals with every such word, where a place is named, as what it is taken for.

    `below`: what the row is worked into. `told`: what has been spoken of already. `clusters`: the
    stitch that the row below makes in clusters and nowhere else.
    """
    findings: list[Finding] = []
    for n, here in enumerate(terminals):
        if clusters and here.text in CLUSTERS and _names_place(terminals, n):
            terminals[n] = replace(here, type="STITCH", name=clusters)
            continue
        if here.type == "CLUSTER" and _names_place(terminals, n) and _between(terminals, n):
            terminals[n] = replace(here, type="KIND", kind=Kind("group"), many=True)
            continue
        if n > 3 and here.type == "OF" and _first_of_scallop(terminals, n):
            scallop = terminals[past(terminals, n + 1, *_BEFORE)]
            named = scallop.kind.name if scallop.kind is not None else ""
            if (named or _kind(_asked(scallop)[1], below)) in HOLES:
                terminals[n - 1] = replace(terminals[n - 1], type="CH", kind=None)
            continue
        if n > 1 and here.type == "OF" and (end := _of_scallop(terminals, n)) > n:
            order = terminals[n - 2]
            repeat = next((i for i, x in enumerate(terminals) if x.type == "REPEAT"), None)
            alone = [x for x in terminals[:repeat] if x.type == "ORD"] == [order]
            if order.number == 1 and any(x.type == "NEXT" for x in terminals[n:end]):
                terminals[n - 2] = replace(order, type="NEXT", number=0)
                alone = terminals[n - 1].type == "PICOT"  # it is the next where each has one
            if alone:
                span = source.span(terminals[n - 2].start, terminals[end - 1].end)
                findings.append(Finding("place-assumed", _ALONG, _OTHERS, span))
            terminals[n:end] = [replace(here, type="NOTHING")] * (end - n)
            continue
        word, means = _asked(here)
        if not means or not _names_place(terminals, n):
            continue
        kind = _kind(means, below)
        many = here.text != word
        terminals[n] = replace(here, type="KIND", kind=Kind(kind), many=many, name="")
        if f"{word} {kind}" in told:
            continue
        told.add(f"{word} {kind}")
        says = " or ".join(f'"{word} means {one}"' for one in means)
        message = f'"{here.text}" is taken for {_TAKEN[kind]}'
        help_ = f"a heading settles it: {says}"
        span = source.span(here.start, here.end)
        findings.append(Finding("place-assumed", message, help_, span))
    return terminals, findings


CLUSTERS = frozenset({"cluster", "clusters", "leaf", "leaves"})


def clusters_of(text: Text | None) -> str:
    """The stitch that a row makes in clusters alone, by its US name; "" where there is none."""
    made = [item for item in walk(text.items) if isinstance(item, Stitches)] if text else []
    clusters = {item.stitch for item in made if item.cluster or item.together}
    plain = {item.stitch for item in made if not (item.cluster or item.together)}
    return clusters.pop() if len(clusters) == 1 and not clusters & plain else ""


def is_heap(here: Terminal) -> bool:
    """Whether a word is such a name of what several are worked into, or says it plainly."""
    kind = here.kind
    plain = kind is not None and kind.name in ("shell", "group", "loop", "space") and not kind.size
    return plain or "shell" in _asked(here)[1]


def _asked(here: Terminal) -> tuple[str, Sequence[str]]:
    """Such a word, in the singular, and what it may mean; nothing for all others."""
    table = vocabulary().places_asked
    word = here.text if here.text in table else here.text.removesuffix("s")
    word = "leaf" if word == "leave" else word
    if here.type not in ("UNKNOWN", "STRAY") or word == "ring":
        return word, ()
    return word, table.get(word, ())


def _names_place(terminals: Sequence[Terminal], n: int) -> bool:
    """Whether what stands here is worked into or missed, not made."""
    at = n - 1
    while at >= 0 and terminals[at].type in _BEFORE:
        at -= 1
    determined = any(t.type in _DETERMINES for t in terminals[at + 1 : n])
    return determined or (at >= 0 and terminals[at].type in _OPENS)


def _of_scallop(terminals: Sequence[Terminal], n: int) -> int:
    """Behind `of the scallop` in `the 4th loop of the scallop`, `the 1st picot of the next`: such a
    loop is counted out as it stands; else the same place."""
    inner, order = terminals[n - 1], terminals[n - 2]
    loop = inner.type == "PICOT" or (
        inner.kind is not None and inner.kind.name in ("loop", "space")
    )
    at = n + 1
    while at < len(terminals) and terminals[at].type in ("THE", "NEXT"):
        at += 1
    whole = terminals[at].kind if at < len(terminals) else None
    heap = at < len(terminals) and "shell" in _asked(terminals[at])[1]
    heap = heap or (whole is not None and whole.name == "shell" and not whole.size)
    several = order.type == "NUM" and n > 2 and terminals[n - 3].type in ("ORD", "NEXT")
    if several and inner.kind is not None and inner.kind.name == "st":
        order, loop = terminals[n - 3], True  # `each of the first 3 sts of the scallop`
    counted = order.type == "NEXT" or (order.type == "ORD" and order.number > 0)
    return at + 1 if counted and loop and heap else n


def _first_of_scallop(terminals: Sequence[Terminal], n: int) -> bool:
    """Whether `each of the first 3 stitches of the next scallop`, `the 3 first`, stands round
    `of`."""
    scallop = past(terminals, n + 1, "THE", "NEXT", "ORD")
    orders = [x.number for x in terminals[n - 3 : n - 1] if x.type == "ORD"]
    first = sorted(types(terminals, n - 3, 2)) == ["NUM", "ORD"] and orders == [1]
    stitches = terminals[n - 1].kind == Kind("st")
    return first and stitches and scallop < len(terminals) and is_heap(terminals[scallop])


def _between(terminals: Sequence[Terminal], n: int) -> bool:
    """Whether something stands `between the clusters`, whatever these are."""
    at = n - 1
    while at >= 0 and terminals[at].type in _BEFORE:
        at -= 1
    return at >= 0 and terminals[at].type == "BETWEEN"


def _kind(asked: Sequence[str], below: str) -> str:
    if "picot" in asked:
        return "picot"
    if below == EDGE:
        return "loop"
    if "shell" in asked and (below == SHELLS or "space" not in asked):
        return "shell"
    return "space"


def made_by(row: Row, before: dict[int, str]) -> str:
    """What a row makes for the one above it. `before`: what the rows before it make."""
    body = row.body
    if isinstance(body, Copy):
        return before.get(body.rows[-1], SPACES) if body.rows else SPACES
    texts = [body] if isinstance(body, Text) else [clause.text for clause in body]
    shells = any(is_shell(item) for text in texts for item in walk(text.items))
    return SHELLS if shells else SPACES


def shell_of(row: Row, headings: Headings) -> str:
    """The shell that a row makes, in the words of its text; "" where it makes none, or several."""
    texts = [row.body] if isinstance(row.body, Text) else []
    made = [
        _without_ends(item.items)
        for text in texts
        for item in walk(text.items)
        if isinstance(item, Bracket) and is_shell(item)
    ]
    made += [steps for text in texts for steps in _in_same(text.items)]
    shells = {write_list(steps, headings.terms or "us", headings.overrides) for steps in made}
    return shells.pop() if len(shells) == 1 else ""


def _without_ends(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """What is made in a place without the chains that lead to it, and from it: `3 ch, 2 dc, 1 ch, 2
    dc, all in next st`."""
    while items and isinstance(items[0], Chains):
        items = items[1:]
    while items and isinstance(items[-1], Chains):
        items = items[:-1]
    match items:
        case (Repeat(inner, 1, star=False),):
            return inner
    return items


def _in_same(items: Sequence[Item]) -> Iterator[tuple[Item, ...]]:
    """The shells that are told step by step: `2 dc in next st, ch 2, 2 dc in same st`."""
    made: list[Item] = []
    for item in (*items, None):
        match item:
            case Stitches(place=Place(which=Which.SAME), together=False) if made:
                made.append(replace(item, place=None))
                continue
            case Chains() if made:
                made.append(item)
                continue
            case _:
                pass
        while made and isinstance(made[-1], Chains):
            made.pop()
        if len(made) > 1:
            yield tuple(made)
        made = []
        match item:
            case Stitches(place=Place() as place, together=False) if _is_one(place):
                made = [replace(item, place=None)]
            case Repeat(inner):
                yield from _in_same(inner)
            case _:
                pass


def is_shell(item: object) -> bool:
    """Whether a step puts several stitches into one site."""
    match item:
        case Stitches(place=Place() as place, together=False):
            return item.count > 1 and _is_one(place)
        case Bracket(place=place):
            return _is_one(place) and sum(_made(one) for one in walk(item.items)) > 1
        case _:
            return False


def picots_in_shells(text: Text | None) -> int:
    """How many picots each place of a row has that any are worked into, where all have as many and
    none stand elsewhere; else 0."""
    items = list(walk(text.items)) if text else []
    shells = [
        one
        for one in items
        if isinstance(one, Bracket) and _is_one(one.place) and _picots(one.items)
    ]
    inside = [one for shell in shells for one in walk(shell.items) if isinstance(one, Picots)]
    numbers = {_picots(shell.items) for shell in shells}
    alone = len(inside) == sum(isinstance(one, Picots) for one in items)
    return numbers.pop() if alone and len(numbers) == 1 else 0


def _picots(items: Sequence[Item]) -> int:
    made = 0
    for item in items:
        if isinstance(item, Picots):
            made += item.count
        elif isinstance(item, Repeat | Bracket):
            times = item.times or 0 if isinstance(item, Repeat) else 1
            made += times * _picots(item.items)
    return made


def _made(item: object) -> int:
    return item.count if isinstance(item, Stitches) and not item.together else 0


def _is_one(place: Place) -> bool:
    """Whether all goes into one site: not so `3 dc in the next 3 loops`."""
    several = place.which in (Which.NEXT, Which.FIRST, Which.LAST, Which.CENTRE)
    return not several or place.count == 1 or place.each
