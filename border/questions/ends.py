"""What the end of a repeat may mean besides.

Its last steps may be the first of the next, and the last sites may be left for
the stitches that the row ends with.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from msgspec.structs import replace

from border.questions.changes import Change, Items, Otherwise, changed, rounds_with
from border.text.readings import Round
from border.text.steps import alike, passes_something
from border.text.tree import (
    SPACES,
    ST,
    Chains,
    End,
    Item,
    Kind,
    Place,
    Repeat,
    Skip,
    Stitches,
    Target,
    Text,
    ToLast,
    Which,
    Whole,
)
from border.text.written import write_item, write_text
from border.text.written_steps import write_list


def ends(round_: Round) -> Iterator[Otherwise]:
    """The readings of what ends a repeat."""
    yield from _shared(round_)
    yield from _missed_under_last_chains(round_)
    yield from _left_for_the_end(round_)
    yield from _end_of_last_repeat(round_)


def _shared(round_: Round) -> Iterator[Otherwise]:
    """The last step of a repeat may be the first of the next."""
    terms = round_.rules.terms

    def change(item: Item) -> Iterator[Items]:
        if isinstance(item, Repeat) and item.times is None:
            shared = without_shared(item.items)
            if shared is not None:
                yield (replace(item, items=shared[0]),)

    for other, one in rounds_with(round_, lambda items: changed(items, change)):
        assert isinstance(one.old, Repeat)
        shared = without_shared(one.old.items)
        assert shared is not None
        last = write_list(shared[1], terms)
        if_ = f'the last "{last}" of a repeat is also the first of the next'
        edit = f"write {write_text(Text(one.new), terms)}"
        yield Otherwise("perhaps-shared", if_, edit, one.old.span, other)


def without_shared(items: Items) -> tuple[Items, Items] | None:
    """The steps without those at the end that stand at the beginning too, and these; None if none.

    `*miss 1, … 3 sc in next space, miss 1`: without the last miss.
    """
    for k in range(len(items) // 2, 0, -1):
        head, tail = items[:k], items[-k:]
        if tuple(map(_alike, head)) == tuple(map(_alike, tail)) and passes_something(head):
            return items[:-k], tail
    first, last = _first(items), _last(items)
    if len(items) > 1 and _alike(first) == _alike(last) and passes_something((first,)):
        return _without_last(items), (last,)
    return None


def _alike(item: Item) -> Item:
    """A step as `alike` has it, a space by its number of chains like any space."""
    item = alike(item)
    if isinstance(item, Stitches) and item.place is not None:
        spaces = (Whole(Kind("space")),)
        if all(isinstance(t, Whole) and t.of.name in SPACES for t in item.place.targets):
            return replace(item, place=replace(item.place, targets=spaces))
    return item


def _first(items: Items) -> Item:
    while isinstance(first := items[0], Repeat) and first.times is not None:
        items = first.items
    return first


def _last(items: Items) -> Item:
    while isinstance(last := items[-1], Repeat) and last.times is not None:
        items = last.items
    return last


def _without_last(items: Items) -> Items:
    last = items[-1]
    if not isinstance(last, Repeat) or last.times is None:
        return items[:-1]
    fewer = (replace(last, times=last.times - 1),) if last.times > 1 else ()
    return (*items[:-1], *fewer, *_without_last(last.items))


def _left_for_the_end(round_: Round) -> Iterator[Otherwise]:
    """`repeat; finish with 3 dc`: the repeat may stop before the last 3, which these are for."""
    terms = round_.rules.terms

    def change(items: Items) -> Iterator[Change]:
        match items:
            case (*_, Repeat(times=None, to_last=None) as repeat, Stitches(place=None) as end):
                kind, count = _led_by(repeat.items), end.count
                stops = replace(repeat, to_last=ToLast(count, kind))
                last = Place(Which.LAST, (kind,), count, each=count > 1)
                new = (stops, replace(end, count=1, place=last))
                yield Change((*items[:-2], *new), repeat, new)

    for other, one in rounds_with(round_, change):
        end = write_item(one.new[1], terms)
        if_ = f"the repeat stops before what it ends with, {end}"
        edit = f"write {write_text(Text(one.new), terms)}"
        yield Otherwise("perhaps-read-so", if_, edit, one.old.span, other)


def _missed_under_last_chains(round_: Round) -> Iterator[Otherwise]:
    """`*5 ch, skip 3, 1 sc; repeat from *, 5 ch, join`, `5 ch, * skip 1, 1 dc, 2 ch; repeat from *
    6 times more, join`: as many missed under the last chains."""
    terms = round_.rules.terms

    def change(items: Items) -> Iterator[Change]:
        steps, ended = _without_ends(items)
        match steps:
            case (*before, Repeat(times=None, items=again), Chains(count) as chains):
                for made, missed in pairwise(again):
                    like_these = isinstance(made, Chains) and made.count == count
                    if like_these and isinstance(missed, Skip):
                        new = (chains, missed)
                        yield Change((*before, steps[-2], *new, *ended), chains, new)
            case (
                *_,
                Repeat(times=int(), items=(Skip() as missed, *_, Chains() as chains)),
            ):
                yield Change((*steps, missed, *ended), steps[-1], (chains, missed))

    for other, one in rounds_with(round_, change):
        chains, missed = (write_item(item, terms) for item in one.new)
        if_ = f"{missed} goes without saying under its last {chains}"
        edit = f"write {chains}, {missed}"
        if isinstance(one.old, Repeat):
            edit = f"write {missed} behind the repeat"
        yield Otherwise("perhaps-read-so", if_, edit, one.old.span, other)


def _end_of_last_repeat(round_: Round) -> Iterator[Otherwise]:
    """`*3 ch, 1 sc in next dc; repeat from *, ending with 1 sc in last dc`: it is the last step of
    the last repeat."""
    terms = round_.rules.terms

    def change(items: Items) -> Iterator[Change]:
        steps, ended = _without_ends(items)
        match steps:
            case (
                *_,
                Repeat(times=None, items=(*_, Stitches() as last)),
                Stitches(place=Place(Which.LAST, count=1)) as end,
            ) if (last.stitch, last.count) == (end.stitch, end.count):
                yield Change((*steps[:-1], *ended), end, ())

    for other, one in rounds_with(round_, change):
        end = write_item(one.old, terms)
        if_ = f"{end} is the end of its last repeat"
        yield Otherwise("perhaps-read-so", if_, f"leave out {end}", one.old.span, other)


def _without_ends(items: Items) -> tuple[Items, Items]:
    """Steps, and the joining, turning or fastening off behind them."""
    end = len(items)
    while end and isinstance(items[end - 1], End):
        end -= 1
    return items[:end], items[end:]


def _led_by(items: Items) -> Target:
    """What a repeat goes by: the first whole site that it names, else st."""
    first = _first(items)
    if isinstance(first, Stitches) and first.place is not None:
        return next((t for t in first.place.targets if isinstance(t, Whole)), Whole(ST))
    return Whole(ST)
