"""Open-ended repeats written with the number of times that they are worked on this edge."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from border.text.steps import is_open
from border.text.tree import AsTheyCome, Bracket, Chains, Item, Place, Repeat, Stitches, Which

Times = Mapping[int, int]
"""How often each open-ended step was worked, by its identity."""


def counted(
    items: Sequence[Item], times: Times, on_round: bool, gathered: bool
) -> tuple[Item, ...]:
    """Steps with every open-ended repeat among them written so many times.

    `on_round`: they go all round a closed edge. `gathered`: `in each X` becomes `in
    each of the next 5 X` where it can, else a bracket with a number.
    """
    found: list[Item] = []
    for item in items:
        if is_open(item) and id(item) in times:
            found += several(item, times[id(item)], on_round, gathered)
        elif isinstance(item, Repeat) and item.times == 1:
            inner = counted(item.items, times, on_round, gathered)
            found += [replace(item, items=inner)] if inner else []
        else:
            found.append(item)
    return tuple(found)


def several(item: Item, n: int, on_round: bool, gathered: bool) -> tuple[Item, ...]:
    """An open-ended step, worked `n` times."""
    if n == 0:
        return ()
    if isinstance(item, Repeat):
        return item.items if n == 1 else (replace(item, times=n, to_last=None),)
    if isinstance(item, AsTheyCome):
        return (item,)  # which part comes when is the row's to say
    body = one_of(item)
    apart = body[1:]
    if gathered and (every := _gathered(item, n, on_round)) is not None:
        return (every,)
    if apart and not on_round:  # nothing follows the last that they could part it from
        body_before = body if n == 2 else (Repeat(body, n - 1),)
        return (*(body_before if n > 1 else ()), *body[:1])
    return body if n == 1 else (Repeat(body, n),)


def one_of(item: Item) -> tuple[Item, ...]:
    """What an open-ended step works once: `in each X` is `in next X`, with the chains behind."""
    if isinstance(item, Repeat):
        return item.items
    item, place = _plain(item)
    which, count = Which.NEXT, 1
    if place.which is Which.EVERY and place.count > 1:
        which, count = Which.NTH, place.count
    single = replace(item, place=replace(place, which=which, count=count, each=False), parted=0)
    return (single, Chains(item.parted)) if item.parted else (single,)


def _gathered(item: Item, n: int, on_round: bool) -> Item | None:
    """`2 dc in each of the next 5 spaces`, where that is the same as `in each`."""
    item, place = _plain(item)
    together = isinstance(item, Stitches) and item.together
    if place.which is not Which.EACH or together or (item.parted and on_round):
        return None
    each = replace(place, which=Which.NEXT, count=n, each=n > 1)
    return replace(item, place=each, parted=item.parted if n > 1 else 0)


def _plain(item: Item) -> tuple[Stitches | Bracket, Place]:
    """A placed step and its place; chains between single stitches part one working from another."""
    assert isinstance(item, Stitches | Bracket) and item.place is not None
    if isinstance(item, Stitches) and item.count == 1 and item.between:
        item = replace(item, between=0, parted=item.parted or item.between)
    assert item.place is not None
    return item, item.place
