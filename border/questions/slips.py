"""What is one word away from a row: a number off by one, a miss left out, another star."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from border.questions.changes import (
    Items,
    Otherwise,
    changed,
    changed_beside,
    rounds_with,
    steps_of,
)
from border.text.readings import Round
from border.text.steps import passes_something, walk
from border.text.tree import (
    Bracket,
    Chains,
    Item,
    Place,
    Repeat,
    Skip,
    Stitches,
    Target,
    Text,
    Which,
)
from border.text.written import write_item, write_text

_LEFT_OUT = (1, 2, 3)
"""So many stitches a miss that was left out may have missed."""

_CODE = "perhaps-misprint"


def slips(round_: Round, below: Round | None) -> Iterator[Otherwise]:
    """The round with each slip mended that is one word away from it, the likelier first."""
    yield from _numbers(round_)
    if below is not None:
        yield from _chains_below(round_, below)
    yield from _stars(round_)
    yield from _misses(round_)


def _numbers(round_: Round) -> Iterator[Otherwise]:
    terms = round_.rules.terms
    for other, one in rounds_with(round_, lambda items: changed(items, _off_by_one)):
        was = _shown(one.old, terms)
        if_, edit = f"{was} is left out", f"leave out {was}"
        if one.new:
            now = _shown(one.new[0], terms)
            if_, edit = f"{now} stands in it in place of {was}", f"write {now} for {was}"
        yield Otherwise(_CODE, if_, edit, one.old.span, other)


def _shown(item: Item, terms: str) -> str:
    """A step as it can be quoted; of a long repeat only how often it goes."""
    written = write_item(item, terms)
    if isinstance(item, Repeat) and len(written) > 60 and item.times is not None:
        return f"{item.times} times"
    return written


def _off_by_one(item: Item) -> Iterator[Items]:
    """A step with each number in it that says how far it goes one more or one less."""
    match item:
        case Skip(count=count):
            yield from ((replace(item, count=n),) for n in _near(count))
            if count == 1:
                yield ()
        case Stitches(place=None, count=count, cluster=0):
            yield from ((replace(item, count=n),) for n in _near(count))
        case Stitches(place=Place(count=many) as place) if many > 1:
            for n in _near(many):
                same = item.count == many and not place.each and place.which is not Which.NTH
                count = n if same else item.count
                which = Which.NEXT if place.which is Which.NTH and n == 1 else place.which
                new = replace(place, count=n, which=which)
                yield (replace(item, place=new, count=count),)
        case Repeat(times=int() as times) if times > 1:
            yield from ((replace(item, times=n),) for n in _near(times))


def _near(count: int) -> list[int]:
    return [n for n in (count - 1, count + 1) if n > 0]


def _chains_below(round_: Round, below: Round) -> Iterator[Otherwise]:
    """A number of chains in the row below: first one that this row names as its space."""
    items = walk(steps_of(round_))
    sizes = {t.of.size for i in items for t in _targets(i) if t.of.size is not None}
    wanted = sorted({n for n in sizes if n})
    terms = below.rules.terms

    def change(item: Item) -> Iterator[Items]:
        if isinstance(item, Chains):
            near = [n for k in (1, 2) for n in (item.count - k, item.count + k) if n > 0]
            for n in dict.fromkeys([*wanted, *near]):
                if n != item.count:
                    yield (replace(item, count=n),)

    for other, one in rounds_with(below, lambda items: changed(items, change)):
        now, was = write_item(one.new[0], terms), write_item(one.old, terms)
        if_ = f"{now} stands in round {below.number} in place of {was}"
        yield Otherwise(_CODE, if_, f"write {now} for {was}", one.old.span, round_, other)


def _targets(item: Item) -> tuple[Target, ...]:
    place = getattr(item, "place", None)
    return place.targets if isinstance(place, Place) else ()


def _stars(round_: Round) -> Iterator[Otherwise]:
    """The star a step or more further on, or further back."""
    if not isinstance(round_.body, Text):
        return
    items = round_.body.items
    at = next((n for n, i in enumerate(items) if isinstance(i, Repeat) and i.star), None)
    if at is None or not isinstance(repeat := items[at], Repeat) or repeat.times is not None:
        return
    head, inside, tail = items[:at], repeat.items, items[at + 1 :]
    moved = [(head[:k], head[k:] + inside) for k in range(len(head) - 1, -1, -1)]
    # what is left of a repeat is still most of it: nobody prints a star before a last step
    moved += [(head + inside[:k], inside[k:]) for k in range(1, len(inside) // 2 + 1)]
    for before, again in moved:
        worked = any(isinstance(item, Stitches | Bracket | Repeat) for item in again)
        if not worked or not passes_something(again):
            continue
        new = (*before, replace(repeat, items=again), *tail)
        words = write_item(again[0], round_.rules.terms)
        if_ = f"the star stands before {words}"
        edit = f"write {write_text(Text(new), round_.rules.terms)}"
        other = replace(round_, body=replace(round_.body, items=new))
        yield Otherwise(_CODE, if_, edit, repeat.span, other)


def _misses(round_: Round) -> Iterator[Otherwise]:
    """A miss that was left out, behind chains where misses mostly stand."""

    def change(items: Items, n: int) -> Iterator[Items]:
        followed = n + 1 < len(items) and isinstance(items[n + 1], Skip)
        if isinstance(items[n], Chains) and not followed:
            yield from ((items[n], Skip(count, None)) for count in _LEFT_OUT)

    terms = round_.rules.terms
    for other, one in rounds_with(
        round_, lambda items: changed_beside(items, change, in_brackets=False)
    ):
        miss, chains = write_item(one.new[1], terms), write_item(one.old, terms)
        if_ = f"{miss} stands behind {chains}"
        yield Otherwise(_CODE, if_, f"write {chains}, {miss}", one.old.span, other)
