"""Open-ended repeats: worked until one more would run out, and how a round meets its start."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.steps import alike, without_brackets
from border.text.tree import (
    ST,
    AsTheyCome,
    Begin,
    Bracket,
    Chains,
    End,
    Item,
    Picots,
    Place,
    Repeat,
    StartChain,
    Stitches,
    Target,
    ToLast,
    Which,
    Whole,
)
from border.working.closing import Left
from border.working.cursor import Cursor, RunsOut
from border.working.stations import Sites

if TYPE_CHECKING:
    from border.working.rows import Worker

OpenItem = Repeat | Stitches | Bracket | AsTheyCome


def run(
    worker: Worker,
    item: OpenItem,
    leading: tuple[Target, ...],
    once: Callable[[], None],
    to_last: ToLast | None = None,
    star: bool = False,
    meets: Callable[[], bool] = lambda: False,
) -> None:
    """Work an open-ended repeat until one more would run out."""
    cursor = worker.cursor
    sites = cursor.window.sites(leading)
    account = worker.accounts[id(item)]
    outermost, worker.inside_open = worker.inside_open, True
    inside_counted = worker.inside_counted
    times, even = 0, True
    while True:
        keep = to_last.count if to_last and (times or not star) else 0
        if keep and to_last:
            over = _remaining(cursor, to_last) - keep
            if over <= 0:
                even = over == 0
                break
        mark, told = cursor.mark(), len(worker.findings)
        cursor.passed.clear()
        try:
            once()
            if keep and to_last and _remaining(cursor, to_last) < keep:
                raise RunsOut(item, False, 0, 0)  # the last N are not the repeat's to take
        except RunsOut:
            worker.inside_counted = inside_counted
            if meets():
                worker.met = True
                message = "the last repeat ends on the steps that the round began with"
                help_ = "they are worked already, and not again: nothing is to be done"
                worker.tell(item, "meets-its-start", message, help_)
            else:
                cursor.back_to(mark)
                del worker.findings[told:]
            even = to_last is None
            break
        if cursor.at == mark.at:
            break  # already told: it takes nothing
        times += 1
        account.add(cursor, mark, sites)
        worker.boundary(times, sites, cursor)
    worker.inside_open = outermost
    account.times += times
    _stopped(worker, item, leading, sites, to_last, times, even)


def _remaining(cursor: Cursor, to_last: ToLast) -> int:
    s = cursor.window.sites((to_last.of,))
    return len(s) - s.after(cursor.at)


def _behind_limit(cursor: Cursor, to_last: ToLast, sites: Sites) -> int:
    """How many of the leading sites stand at or behind the first of the last N."""
    s = cursor.window.sites((to_last.of,))
    if len(s) < to_last.count:
        return len(sites)
    return len(sites) - sites.after(s.a[-to_last.count])


def _stopped(
    worker: Worker,
    item: OpenItem,
    leading: tuple[Target, ...],
    sites: Sites,
    to_last: ToLast | None,
    times: int,
    even: bool,
) -> None:
    """Keep account of what is left where a repeat stopped."""
    cursor = worker.cursor
    worker.last_leading = leading
    if worker.met:
        return
    stop = len(sites) - (_behind_limit(cursor, to_last, sites) if to_last else 0)
    none_left = sites.after(cursor.at) >= len(sites)
    unmade = times == 0 and not (none_left and _is_each(item))
    if not even or unmade:
        worker.closes = False
    if cursor.touched is None:
        cursor.touched = []
    since = len(cursor.touched)
    worker.left.append(Left(item, sites, cursor.at, stop, since, times, unmade))


def _is_each(item: OpenItem) -> bool:
    place = None if isinstance(item, Repeat) else item.place
    return place is not None and place.which is Which.EACH


def meets_start(begun: Place | None, to_come: tuple[Item, ...], head: tuple[Item, ...]) -> bool:
    """Whether the steps still to come are those that the row had before its repeat."""
    done: list[Item] = []
    for item in without_brackets(head):
        if isinstance(item, Begin | End):
            continue
        if isinstance(item, StartChain):
            done += _as_made(item)
        elif isinstance(item, Bracket) and isinstance(item.items[0], StartChain):
            first, *others = (*_as_made(item.items[0]), *item.items[1:])
            done.append(replace(item, items=_counted_together(first, others)))
        else:
            done.append(item)
    return [_as_next(i) for i in without_brackets(to_come)] == [
        _as_next(i, begun if k == 0 else None) for k, i in enumerate(done)
    ]


def _as_made(start: StartChain) -> list[Item]:
    """A start chain as the stitch, and the chains behind it, that it counts as."""
    if not start.stands_for:
        return []
    made: list[Item] = [Stitches(1, start.stands_for, start.place)]
    return [*made, Chains(start.then)] if start.then else made


def _counted_together(first: Item, others: list[Item]) -> tuple[Item, ...]:
    """`ch 3 as dc, 2 dc` in one place: 3 dc, as a repeat has them."""
    match first, others:
        case Stitches(count, stitch, None), [Stitches(more, again, None) as second, *behind]:
            if stitch == again:
                return (replace(second, count=count + more), *behind)
    return (first, *others)


def leads_back(
    item: Repeat, worked: int, begun: Place | None, head: tuple[Item, ...]
) -> tuple[Item, ...]:
    """The chains of an unfinished repeat that would lead back to where the round began; none where
    it began with nothing that they could lead to, or ends on chains already.

    `worked`: how many steps of the repeat were worked before it ran out.
    """
    chains = item.items[:worked]
    if not any(isinstance(one, Chains) for one in chains):
        return ()
    if not all(isinstance(one, Chains | Picots) for one in chains):
        return ()
    first = next((one for one in head if not isinstance(one, Begin | End)), None)
    inside = begun is not None and not all(isinstance(t, Whole) for t in begun.targets)
    made = isinstance(first, StartChain | Stitches | Bracket) or (first is None and inside)
    return chains if made and not isinstance(item.items[-1], Chains) else ()


def _as_next(item: Item, begun: Place | None = None) -> Item:
    """A step in the words of the repeat: a bare stitch goes in the next st, and the
    same place, where the round has begun in it, is the next."""
    item = alike(item)
    if isinstance(item, Stitches) and item.place is None and item.count == 1:
        place = Place(Which.NEXT, (Whole(ST),))
        return Stitches(1, item.stitch, place, cluster=item.cluster, modifiers=item.modifiers)
    if (
        begun is not None
        and isinstance(item, Stitches | Bracket)
        and item.place is not None
        and item.place.which is Which.SAME
    ):
        return alike(replace(item, place=replace(begun, which=Which.NEXT)))
    return item
