"""Adjustments written where they fall: a step that skips, or a repeat that works a site again."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from msgspec import Struct
from msgspec.structs import replace

from border.text.steps import is_open, leading_targets
from border.text.tree import (
    ST,
    AsTheyCome,
    AtOnce,
    Bracket,
    Chains,
    Item,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.working.closing import counted_as
from border.writing.counting import Times, one_of, several


class Ease(Struct, frozen=True):
    """An adjustment behind so many repeats: `by` more sites passed, or, below 0, worked again."""

    repeats: int
    by: int


class Way(Struct, frozen=True):
    """One way of writing an ease: skip `skipped`; skip so many fewer in the repeat before
    (`leaving`); or go back so many in the steps behind (`entering`)."""

    skipped: Skip | None = None
    leaving: int = 0
    entering: int = 0


def eased(
    items: tuple[Item, ...], times: Times, eases: Sequence[Ease], on_round: bool
) -> Iterator[tuple[Item, ...]]:
    """The ways that steps might be written with these eases in place. Each is to be proved."""
    opened = [i for i, item in enumerate(items) if is_open(item) and id(item) in times]
    opened = [i for i in opened if not isinstance(items[i], AsTheyCome)]  # it has no number
    for at in opened:  # mostly there is one
        if all(ease.repeats <= times[id(items[at])] for ease in eases):
            for ways in product(*(_ways(items[at], ease) for ease in eases)):
                yield from _written(items, at, times, list(zip(eases, ways, strict=True)), on_round)


def _ways(item: Item, ease: Ease) -> list[Way]:
    if ease.by < 0:
        return [Way(leaving=-ease.by), Way(entering=-ease.by)]
    return [Way(skipped=Skip(ease.by, target)) for target in _leading(item)]


def _leading(item: Item) -> tuple[Target, ...]:
    return counted_as(leading_targets(one_of(item)))


def _written(
    items: tuple[Item, ...],
    at: int,
    times: Times,
    eases: list[tuple[Ease, Way]],
    on_round: bool,
) -> Iterator[tuple[Item, ...]]:
    item, leading = items[at], _leading(items[at])
    bracket = replace(item, star=False) if isinstance(item, Repeat) else item
    found: list[Item] = []
    done = entering = 0
    for ease, way in [*sorted(eases, key=lambda e: e[0].repeats), (None, Way())]:
        n = (ease.repeats if ease else times[id(item)]) - done
        done += n
        if n == 0 and ease is None:
            break  # the last ease stands before the tail
        stretch = _stretch(bracket, n, entering, way.leaving, leading, on_round)
        if stretch is None:
            return
        found += stretch
        found += [way.skipped] if way.skipped else []
        entering = way.entering
    tail = re_entered(items[at + 1 :], entering, leading)
    if tail is None:
        return
    others = [
        tuple(several(i, times[id(i)], on_round, True) if is_open(i) and id(i) in times else (i,))
        for i in items[:at]
    ]
    head = tuple(step for steps in others for step in steps)
    behind: list[Item] = []
    for i in tail:
        behind += several(i, times[id(i)], on_round, True) if is_open(i) and id(i) in times else [i]
    yield (*head, *found, *behind)


def _stretch(
    item: Item, n: int, entering: int, leaving: int, leading: tuple[Target, ...], on_round: bool
) -> list[Item] | None:
    """`n` repeats, the first going back so many sites, the last leaving off so many sooner."""
    body = one_of(item)
    first: tuple[Item, ...] | None = ()
    last: tuple[Item, ...] | None = ()
    if entering:
        first = re_entered(body, entering, leading) if n else None
        n -= 1
    if leaving:
        last = _shortened(body, leaving, leading) if n else None
        n -= 1
    if first is None or last is None:
        return None
    return [*first, *several(item, n, on_round, True), *last]


def re_entered(
    items: tuple[Item, ...], back: int, leading: tuple[Target, ...]
) -> tuple[Item, ...] | None:
    """The steps where the first `back` sites that they take are behind already; None where
    that cannot be said: only the site worked last can be worked into once more."""
    if not back:
        return items
    for i, item in enumerate(items):
        match item:
            case Chains() | Picots():
                continue
            case Skip(count=count, target=target) if (target or Whole(ST)) in leading:
                fewer = min(count, back)
                kept = (replace(item, count=count - fewer),) if count > fewer else ()
                rest = re_entered(items[i + 1 :], back - fewer, leading)
                return None if rest is None else (*items[:i], *kept, *rest)
            case Repeat(items=inner, times=int() as n):
                opened = re_entered(inner, back, leading)
                more = several(replace(item, times=None), n - 1, False, False)
                return None if opened is None else (*items[:i], *opened, *more, *items[i + 1 :])
            case Stitches() | Bracket() if back == 1:
                again = _again(item)
                return None if again is None else (*items[:i], *again, *items[i + 1 :])
        return None
    return None


def _again(item: Stitches | Bracket) -> tuple[Item, ...] | None:
    """A step whose first site is the one worked last."""
    place = item.place or Place(Which.NEXT, (Whole(ST),), getattr(item, "count", 1))
    same = Place(Which.SAME, place.targets)
    if isinstance(item, Stitches) and (item.together or item.between or item.parted):
        return None
    if isinstance(item, Stitches) and item.place is None:
        rest = (replace(item, count=item.count - 1),) if item.count > 1 else ()
        return (replace(item, count=1, place=same), *rest)
    if place.which is Which.NTH:
        fewer = replace(place, count=place.count - 1)
        if fewer.count == 1:
            fewer = replace(fewer, which=Which.NEXT)
        return (replace(item, place=fewer),)
    if place.which not in (Which.NEXT, Which.THE) or _at_once(place):
        return None
    if place.count == 1:
        return (replace(item, place=same),)
    count = 1 if isinstance(item, Stitches) and not place.each else None
    one = replace(item, place=same) if count is None else replace(item, place=same, count=count)
    left = place.count - 1
    rest_place = replace(place, count=left, each=place.each and left > 1)
    rest_count = left if count and getattr(item, "count", 1) > 1 else None
    rest_item = replace(item, place=rest_place)
    return (one, rest_item if rest_count is None else replace(rest_item, count=rest_count))


def _at_once(place: Place) -> bool:
    """Whether several sites are worked as one: no text goes back by the last of them."""
    return any(isinstance(target, AtOnce) for target in place.targets)


def _shortened(
    body: tuple[Item, ...], fewer: int, leading: tuple[Target, ...]
) -> tuple[Item, ...] | None:
    """A repeat that passes over so many sites fewer at its end."""
    for i in range(len(body) - 1, -1, -1):
        match body[i]:
            case Chains() | Picots():
                continue
            case Skip(count=count, target=target) as skip if (target or Whole(ST)) in leading:
                if count > fewer:
                    return (*body[:i], replace(skip, count=count - fewer), *body[i + 1 :])
                left = fewer - count
                before = _shortened(body[:i], left, leading) if left else body[:i]
                return None if before is None else (*before, *body[i + 1 :])
        return None
    return None
