"""What only the row below settles of a row's steps: how many come each time, where the last is."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.building.of_groups import group_of
from border.text.nodes import Building
from border.text.stands_below import (
    UnknownError,
    Unworked,
    come_together,
    made_over_and_over,
    sizes_of_runs,
)
from border.text.steps import walk
from border.text.tree import (
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Text,
    ToLast,
    Which,
    Whole,
)
from border.text.wording.last_stitches import TURNING
from border.text.wording.missed import OF_EACH


def up_to_last(items: list[Item], b: Building) -> list[Item]:
    """`*ch 2, 1 dc in next dc; repeat from *, ch 2, 1 dc in 3rd of the 5 ch`: where those stand for
    the last dc of the row below, the repeat ends before it; with nothing else behind the repeat
    they are that of its last time."""
    at = next((n for n, i in enumerate(items) if isinstance(i, Repeat) and i.star), len(items))
    match items[at:]:
        case [
            Repeat(
                items=[*steps, Stitches(1, stitch, Place(Which.NEXT, (Whole(kind),), 1))],
                times=None,
                to_last=None,
                star=True,
            ) as repeat,
            *between,
            Stitches(1, again, Place(Which.LAST, (Whole(Kind("st")),), 1)) as last,
        ] if stitch == again and kind.name == _begun_as(b):
            named = any(t.name == TURNING for t in b.terminals_in(last.span))
            if named and all(map(_over_a_space, (*steps, *between))):
                up_to = replace(repeat, to_last=ToLast(1, Whole(kind)))
                return [*items[:at], up_to, *(between or steps), last]
    return items


def _over_a_space(item: Item) -> bool:
    """Whether a step takes no stitch of the row below: chains, or what fills a space."""
    match item:
        case Chains() | Picots() | Stitches(place=Place(targets=(Whole(Kind("space" | "loop")),))):
            return True
    return False


def _begun_as(b: Building) -> str:
    """The stitch that the chains stand for with which the row below began."""
    below = [i for i in b.below.items if not isinstance(i, End)] if b.below is not None else []
    match below:
        case [StartChain(stands_for=str(stitch)), *_]:
            return stitch
        case [Chains(count), *_]:
            made = (i.stitch for i in walk(below) if isinstance(i, Stitches))
            return next((name for name in made if 2 <= STITCHES[name].height <= count), "")
    return ""


def each_in_turn(item: Item, b: Building) -> Item:
    """`1 dc in each dc, 3 ch; repeat`: in each of those that the scallop below has; or where it
    has none, in the next each time. Both are told."""
    match item:
        case Stitches(place=Place(which=Which.EACH, targets=(target,)) as place):
            pass
        case Bracket(place=Place(which=Which.EACH, targets=(target,)) as place):
            pass
        case _:
            return item
    count = _so_many(target.of, b.below) if isinstance(target, Whole) else 0
    if item.parted and not count:
        return item  # `1 sc in each ch-1 space, with ch 3 between`: how many is not said
    one = replace(item, place=replace(place, which=Which.THE), parted=0)
    message = "taken for one each time, since more is worked before the next"
    if count:
        in_next = replace(place, which=Which.NEXT, count=count, each=True)
        one = replace(item, place=in_next)
        message = f"taken for {count} each time, as many as the row below makes together"
    b.tell("place-assumed", message, f"write {b.written(one)} to say so", item.span)
    return one


def _so_many(kind: Kind, below: Text | None) -> int:
    """How many of a kind the row below makes together."""
    count = group_of(below)[kind.name]
    return count or (come_together(below, kind) if below is not None else 0)


def missed_anyway(items: Sequence[Item], b: Building) -> bool:
    """`1 dc in each dc, with 5 ch between, missing the 3 ch; repeat`: whether going into each says
    all of it, since the row below makes no groups."""
    match items:
        case [Stitches(place=Place(which=Which.EACH)), Skip()]:
            return any(t.type == "SKIP" and t.name == OF_EACH for t in b.terminals)
        case _:
            return False


# --- "the 5 dc", as a run of just so many ------------------------------------------


def on_whole_runs(items: list[Item], b: Building, *, repeats: bool) -> list[Item]:
    """`1 dc in each of the 3 ch, 5 ch; repeat` over loops of 5 and of 3: in those of the loop of
    3, from its first on, wherever the steps before have come to. Where the row below makes as
    many side by side in one way only, and others besides."""
    for _ in items:
        across = (one for one in _across(items, b, repeats=repeats) if not one.inside)
        found = next((one.item for one in across if _other_sizes(one.item, b)), None)
        if found is None:
            break
        items = [one for item in items for one in _put(item, found, _on_the_run(found))]
    return items


def tell_across_runs(items: Sequence[Item], b: Building, *, repeats: bool) -> None:
    """Ask of `1 sc on the 1st of the 4 dc, 1 dc on each of the 4 dc`, which are of two groups, as
    far as that is not settled."""
    for found in _across(items, b, repeats=repeats):
        item = found.item
        if found.first or b.is_asked(item.span) or item.place is None:
            continue
        steps = ", ".join(b.written(one) for one in _on_the_run(item))
        b.tell(
            "perhaps-next-of",
            f"this is taken as {b.written(item)}, and not those that stand {item.place.count} "
            "together in the row below",
            f"write {steps} if it is those",
            item.span,
        )


def _put(item: Item, old: Item, new: Sequence[Item]) -> Sequence[Item]:
    """An item with another put in the place of one step, which is it or stands inside it."""
    if item is old:
        return new
    if isinstance(item, Repeat) and item.star:
        return (replace(item, items=tuple(one for i in item.items for one in _put(i, old, new))),)
    return (item,)


def _other_sizes(item: Stitches, b: Building) -> bool:
    name = item.place.targets[0].of.name if item.place is not None else ""
    return b.below is not None and len(sizes_of_runs(b.below, name)) > 1


def _on_the_run(item: Stitches) -> list[Item]:
    """A step in each of so many as one in the first of the run, and in each of those behind it."""
    place = item.place
    assert place is not None
    kind, size = place.targets[0].of, place.count
    chains = kind.name == "ch"
    run = Kind("space", size) if chains else Kind("run", size, kind.name)
    single = 1 if not place.each else item.count
    within = item.between if single > 1 else 0
    apart = item.parted or (item.between if single == 1 else 0)
    part = Place(Which.THE, (Part(1, Kind("ch" if chains else "st"), run),), span=place.span)
    first = replace(item, count=single, place=part, between=within, parted=0)
    left = size - 1
    rest = replace(
        item,
        count=single,
        place=Place(Which.NEXT, place.targets, left, each=left > 1, span=place.span),
        between=within,
        parted=apart if left > 1 else 0,
    )
    return [first, Chains(apart, span=item.span), rest] if apart else [first, rest]


class _Across(Struct, frozen=True):
    """A step on "the" so many that are no whole run; `inside`: they are the rest of one that was
    worked into already; `first`: so it is in the first repeat, which may begin elsewhere."""

    item: Stitches
    inside: bool
    first: bool


def _across(items: Sequence[Item], b: Building, *, repeats: bool) -> list[_Across]:
    """The steps of a repeat that go on so many of which just as many stand together in the row
    below, and take others, as far as it is known how far the steps go."""
    at = next((n for n, i in enumerate(items) if isinstance(i, Repeat) and i.star), len(items))
    star = items[at] if at < len(items) else None
    head, again = ((), items) if repeats else (items[:at], getattr(star, "items", ()))
    asked = [one for one in again if _is_so_many(one, b)]
    found: list[_Across] = []
    made = made_over_and_over(b.below) if asked and b.below is not None else ()
    if not made:
        return found
    work = Unworked(made, b.headings.chains_count)
    try:
        work.steps(head)
        for time in range(_TIMES):
            for item in again:
                at, taken = work.at, work.step(item)
                among = any(item is one for one in asked)
                if among and isinstance(item, Stitches) and not work.is_run(taken):
                    found.append(_Across(item, work.inside(at, taken), not time))
    except UnknownError:
        pass
    return found


_TIMES = 4
"""After so many repeats the next ones go on alike."""


def _is_so_many(item: Item, b: Building) -> bool:
    """Whether a step goes on `the 5 dc`, `each of the 3 ch`, as many as the row below has side by
    side somewhere, and not on the next ones."""
    match item:
        case Stitches(
            count,
            place=Place(Which.NEXT | Which.THE, (Whole(Kind(name, None, None)),), many) as place,
            together=False,
            cluster=0,
        ) if many > 1 and (place.each or count == many):
            said = b.terminals_in(place.span)
            number = next((t for t in said if t.type == "NUM"), None)
            counted = number is not None and number.start < max(t.start for t in said)
            # one that is put there stands where the word beside it does
            unsaid = any(
                "NEXT" in (one.type, other.type) and one.start == other.start
                for one, other in pairwise(said)
            )
            known = name in STITCHES or name == "ch"
            runs = known and b.below is not None and many in sizes_of_runs(b.below, name)
            return runs and counted and unsaid
        case _:
            return False
