"""What the end of a repeat may mean besides.

Its last steps may be the first of the next, and the last sites may be left for
the stitches that the row ends with.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from border.questions.changes import Change, Items, Otherwise, changed, rounds_with
from border.text.readings import Round
from border.text.steps import alike, passes_something
from border.text.tree import (
    SPACES,
    ST,
    Item,
    Kind,
    Place,
    Repeat,
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
    yield from _left_for_the_end(round_)


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


def _led_by(items: Items) -> Target:
    """What a repeat goes by: the first whole site that it names, else st."""
    first = _first(items)
    if isinstance(first, Stitches) and first.place is not None:
        return next((t for t in first.place.targets if isinstance(t, Whole)), Whole(ST))
    return Whole(ST)
