"""What a copied row has otherwise, put into its steps one by one ("Copies with a difference").

Only what can be said exactly: what is asked or told has no count to agree on.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from border.text.tree import (
    AsTheyCome,
    Bracket,
    Chains,
    Difference,
    Exchanged,
    Item,
    Moved,
    Picots,
    Repeat,
    StartChain,
    Stitches,
    Variation,
    Where,
    Which,
)
from plainly.elsewhere import in_other_stitches, is_same, worked_elsewhere

Items = tuple[Item, ...]


def otherwise(
    texts: list[Items], variations: tuple[Variation, ...], again: bool = False
) -> list[Items]:
    """The steps of a row's texts with all that differs, none of it in what another has made.

    Places come first and stitches last, since neither changes a number, nor a place a name.
    `again`: the row is its own repeat.
    """
    moves = [one for one in variations if isinstance(one, Moved)]
    texts = [worked_elsewhere(items, moves, again) for items in texts]
    known = [number for items in texts for number in numbers_made(items, ())]
    settled = []
    for one in variations:
        if not isinstance(one, Difference):
            continue
        if one.instead_of is None:
            ours = {number for of, number in known if of == one.of}
            one = replace(one, instead_of=ours.pop() if len(ours) == 1 else -1)
        settled.append(one)
    texts = [_list(items, settled, inside=False) for items in texts]
    exchanges = [one for one in variations if isinstance(one, Exchanged)]
    return [in_other_stitches(items, exchanges) for items in texts]


def _list(items: Items, differences: list[Difference], inside: bool) -> Items:
    found: list[Item] = []
    for n, item in enumerate(items):
        before = items[n - 1] if n else None
        behind = next((i for i in items[n + 1 :] if not isinstance(i, Chains | Picots)), None)
        in_one = isinstance(item, Chains) and behind is not None and is_same(behind)
        found += _step(item, before, differences, inside or in_one)
    return tuple(found)


def _step(
    item: Item, before: Item | None, differences: list[Difference], inside: bool
) -> Iterator[Item]:
    def now(of: str, number: int, in_one: bool = False) -> int:
        for one in differences:
            if one.where is Where.GROUPS and not (in_one and number > 1):
                continue
            if one.where is Where.APART and in_one:
                continue
            if (one.of, one.instead_of) == (of, number):
                return one.number
        return number

    if isinstance(item, Chains):
        if now("ch", item.count, inside):
            yield replace(item, count=now("ch", item.count, inside))
    elif isinstance(item, Picots):
        if now("picot", item.count) and now("ring", item.chains):
            yield replace(item, count=now("picot", item.count), chains=now("ring", item.chains))
    elif isinstance(item, Stitches):
        first = _opened(before, item)
        in_one = inside or item.place is not None
        count = now(item.stitch, item.count + first, in_one) - first
        between = now("ch", item.between, in_one=True) if item.between else 0
        parted = now("ch", item.parted) if item.parted else 0
        if count > 0:
            yield replace(item, count=count, between=between, parted=parted)
    elif isinstance(item, StartChain) and item.then:
        then = now("ch", item.then)
        yield replace(item, count=item.count + then - item.then, then=then)
    elif isinstance(item, Bracket | AsTheyCome):
        parted = now("ch", item.parted) if item.parted else 0
        inner = _list(item.items, differences, inside=isinstance(item, Bracket))
        yield replace(item, items=inner, parted=parted)
    elif isinstance(item, Repeat):
        inner = _list(item.items, differences, inside)
        if inner:
            yield replace(item, items=inner)
    else:
        yield item


def numbers_made(items: Items, found: tuple[tuple[str, int], ...]) -> tuple[tuple[str, int], ...]:
    """All that the steps make, each with its number."""
    for n, item in enumerate(items):
        before = items[n - 1] if n else None
        match item:
            case Chains(count):
                found += (("ch", count),)
            case Picots(count, chains):
                found += (("picot", count), ("ring", chains))
            case Stitches():
                found += ((item.stitch, item.count + _opened(before, item)),)
                found += tuple(("ch", n) for n in (item.between, item.parted) if n)
            case StartChain(then=int(then)) if then:
                found += (("ch", then),)
            case Bracket() | AsTheyCome():
                found = numbers_made(item.items, found)
                found += (("ch", item.parted),) if item.parted else ()
            case Repeat():
                found = numbers_made(item.items, found)
    return found


def _opened(before: Item | None, item: Stitches) -> int:
    """1 where a start chain right before is one of the stitches that are made in one place."""
    if not isinstance(before, StartChain) or before.then or before.stands_for != item.stitch:
        return 0
    place = item.place
    if place is None:
        return 1
    return int(place.count == 1 and place.which not in (Which.EACH, Which.EVERY))
