"""Steps that mean one thing by the words of this language, and in some books another.

The reading taken is that of `grammar/README.md`; each doubt is a warning that
shows the edit for the other one.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.doubting.behind_arch import tell_behind_arch
from border.text.doubting.behind_each import tell_behind_each
from border.text.doubting.counted_on import tell_counted_on
from border.text.doubting.picot_doubts import (
    Pair,
    space_of,
    tell_just_made,
    tell_perhaps_ring,
    tell_ring_filled,
    tell_rings_inside,
    tell_topped,
)
from border.text.doubting.skips_asked import (
    tell_down_the_chain,
    tell_missed_each_time,
    tell_next_of_loops,
    tell_on_own_chains,
    tell_skips_among_spaces,
)
from border.text.in_each import all_in
from border.text.nodes import Building, Step
from border.text.shaping.naming import BUT
from border.text.tree import (
    SPACES,
    Begin,
    Bracket,
    Centre,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)


def tell_doubts(steps: Sequence[Step], b: Building) -> None:
    """Tell what the steps of one list may mean besides."""
    whole, steps = steps, list(steps)
    while len(steps) > 1 and isinstance(steps[-1].item, End):
        steps.pop()
    # A list is mostly worked over and over: what stands before its first step is its last.
    worked = steps[-1].item if steps else None
    into = space_of(worked, None)
    asked: set[int] = set()
    picot = 0  # the size of one that was closed before
    for n, (before, step) in enumerate(pairwise(steps), 1):
        into = space_of(before.item, into)
        picot = before.item.chains if isinstance(before.item, Picots) else picot
        if step.hard != "stop":
            behind = steps[n + 1].item if n + 1 < len(steps) else None
            pair = Pair(before.item, step.item, worked, into, behind)
            if tell_perhaps_ring(pair, b) or tell_just_made(pair, b):
                asked.add(n)
            _tell_on_the_same(before.item, step.item, worked, b)
            _tell_like_picot(before.item, step.item, picot, b)
        tell_topped(before.item, step.item, b)
        if isinstance(step.item, Stitches):
            tell_ring_filled(before.item, step.item, picot, b)
        if not step.hard:
            _tell_list(before.item, step.item, b)
            _tell_list_behind(before.item, step.item, b)
            _tell_chain_and_each(before.item, step.item, b)
            tell_missed_each_time(before.item, step.item, b)
            tell_rings_inside(before.item, step.item, b)
        tell_behind_arch(before.item, step.item, b)
        worked = before.item
    for one, between, step in zip(steps, steps[1:], steps[2:], strict=False):
        _tell_in_the_again(one.item, between.item, step.item, b)
    for n, step in enumerate(steps):
        if n not in asked:
            _tell_nth_chain(step.item, b)
        _tell_middle(step.item, b)
        tell_on_own_chains(step.item, b)
        tell_next_of_loops(step.item, b)
        _tell_on_the_like(step.item, b)
        _tell_in_loops(step.item, b)
        if isinstance(step.item, Bracket):
            tell_ring_filled(step.item, step.item, 0, b)
        _tell_unplaced(step.item, steps[n + 1].item if n + 1 < len(steps) else None, b)
    tell_skips_among_spaces(steps, b)
    tell_down_the_chain([step.item for step in steps], b)
    tell_counted_on(steps, b)
    tell_behind_each(whole, b)


def _tell_like_picot(chains: Item, closing: Item, size: int, b: Building) -> None:
    """`5 ch, 1 sl st in the first, 2 sc, 5 ch, 1 sl st, 2 sc`: a picot as well, told shorter?"""
    match chains, closing:
        case Chains(count), Stitches(1, "ss", None) if count == size:
            b.tell(
                "perhaps-picot",
                "this sl st goes into the next stitch; they may be a picot like the one before",
                f"write picot of {size} if so",
                chains.span.to(closing.span),
            )


def tell_inside(items: Sequence[Item], b: Building) -> None:
    """`9 chain, join, 11 dc in the ring`: made by itself, not on the round."""
    worked = [n for n, item in enumerate(items) if not isinstance(item, End | Begin)]
    for n, item in enumerate(items):
        if not isinstance(item, End) or item.what is Ending.TURN:
            continue
        if worked and worked[0] < n < worked[-1]:
            b.tell(
                "ends-inside",
                f'"{item.what}" stands in the middle of the row, and is passed over',
                "where something is made by itself here, write what it leaves on the row",
                item.span,
            )


def _tell_nth_chain(item: Item, b: Building) -> None:
    """`1 sc in 3rd ch`: counted over all the chains below, or the 3rd of the next loop?"""
    match item:
        case Stitches(place=Place(Which.NTH, (Whole(Kind("ch") as chain),), nth)) if nth > 1:
            start, end = item.span.start, item.span.end
            counted = any(t.name == BUT for t in b.terminals if start <= t.start < end)
            if b.round < 2 or counted:  # `in the next chain but 1`
                return
            of_loop = Place(Which.NEXT, (Part(nth, chain, Kind("space")),))
            b.tell(
                "place-assumed",
                f"these {nth} chains are counted one after another, from loop to loop",
                f"write {b.written(replace(item, place=of_loop))} if it is that one of each loop",
                item.span,
            )


def _tell_list_behind(before: Item, item: Item, b: Building) -> None:
    """`2 dc in next loop (2 ch, 2 dc) twice`: do they all go into it?"""
    match before, item:
        case (
            Stitches(
                place=Place(which=Which.NEXT | Which.FIRST | Which.THE | Which.SAME, count=1)
            ) as first,
            Repeat(items=items, times=int(), star=False),
        ):
            bare = [i for i in items if isinstance(i, Stitches) and i.place is None]
            others = [i for i in items if not isinstance(i, Stitches | Chains | Picots)]
            if others or not bare or len(bare) < sum(isinstance(i, Stitches) for i in items):
                return
            assert first.place is not None
            if any(target.of.name == first.stitch for target in first.place.targets):
                return  # `1 dc in dc, (ch 1, 1 dc) twice` goes on over the others
            start, end = first.span.end, item.span.start
            apart = any(t.type == "SEP" for t in b.terminals if start <= t.start < end)
            if apart and all(i.stitch != first.stitch for i in bare):
                return
            whole = Bracket((replace(first, place=None), item), first.place)
            b.tell(
                "perhaps-one-place",
                "what stands in the bracket is taken to go on along the row",
                f"write {b.written(whole)} if all of it goes into one place",
                before.span.to(item.span),
            )


def _tell_list(before: Item, item: Item, b: Building) -> None:
    """`(2 dc, ch 1) 3 times, 2 dc in next space`: do they all go into it?"""
    match before, item:
        case (
            Repeat(items=items, times=int(), star=False),
            Stitches(
                stitch=stitch, place=Place(which=Which.NEXT | Which.FIRST | Which.THE | Which.EACH)
            ),
        ):
            bare = [i for i in items if isinstance(i, Stitches) and i.place is None]
            others = [i for i in items if not isinstance(i, Stitches | Chains | Picots)]
            if others or not bare or any(i.stitch != stitch for i in bare):
                return
            assert isinstance(item, Stitches) and item.place is not None
            whole = all_in(Bracket((before, replace(item, place=None)), item.place))
            b.tell(
                "perhaps-one-place",
                "only the last of these is taken to go into that place, the others one in each st",
                f"write {b.written(whole)} if all of them go there",
                before.span.to(item.span),
            )


def _tell_chain_and_each(chains: Item, item: Item, b: Building) -> None:
    """`1 ch and 1 tr on each of the 9 tr`, `5 ch, 1 sc in each of the next 3 loops`: the chain
    once, or with each?"""
    match chains, item:
        case Chains(), Stitches(place=Place(each=True, count=count) as place) if count > 1:
            loops = all(target.of.name in SPACES for target in place.targets)
            loops = loops and item.count == 1 and place.which is Which.NEXT
            if b.said_between(chains, item) != ["and"] and not loops:
                return
            both = Bracket((chains, replace(item, place=None)), place)
            b.tell(
                "perhaps-as-they-come",
                "these chains are made once, before the first of these",
                f"write {b.written(both)} if they are made with each",
                chains.span.to(item.span),
            )


def _tell_in_loops(item: Item, b: Building) -> None:
    """`(1 dc in loop, picot) 5 times, 1 dc in same loop`: each in a loop of its own?"""
    match item:
        case Repeat(items=items, times=int() as times, star=False) if times > 1:
            placed = [i for i in items if isinstance(i, Stitches | Bracket) and i.place is not None]
            apart = [i.count for i in items if isinstance(i, Chains) and i.count > _NO_LOOP]
            others = [i for i in items if not isinstance(i, Stitches | Bracket | Chains | Picots)]
            match items:
                case [Stitches(count)] if count > 1:
                    return  # `(8 dc under the 5 ch) 8 times`: in one they would be 64 dc
        case _:
            return
    match placed:
        case [
            Stitches(place=Place(Which.THE, (Whole(Kind(name)),)) as place)
            | Bracket(place=Place(Which.THE, (Whole(Kind(name)),)) as place)
        ] if name in SPACES and not apart and not others:
            inside = tuple(one for i in items for one in _unplaced(i, at=placed[0]))
            one = all_in(Bracket((replace(item, items=inside),), replace(place, which=Which.NEXT)))
            b.tell(
                "perhaps-one-place",
                "each of these times is taken to go into a place of its own",
                f"write {b.written(one)} if all of them go into one",
                item.span,
            )


def _unplaced(item: Item, at: Item) -> tuple[Item, ...]:
    """The steps of an item, without its place where that is the one at which they stand."""
    match item:
        case Bracket(items=items) if item is at:
            return items
        case Stitches() if item is at:
            return (replace(item, place=None),)
        case _:
            return (item,)


_NO_LOOP = 3
"""Of more chains than these a loop is made between one place and the next."""


def _tell_on_the_same(before: Item, item: Item, worked: Item | None, b: Building) -> None:
    """`2 dc on dc, 1 ch, 2 dc on the same`: the first 2 in one dc, too?"""
    first = worked if isinstance(before, Chains) else before
    match first, item:
        case (
            Stitches(count, stitch, Place(Which.NEXT, (Whole(),), of) as place, 0),
            Stitches(place=Place(which=Which.SAME)),
        ) if count > 1 and count == of and not place.each and item.stitch == stitch:
            one = replace(first, place=replace(place, count=1))
            b.tell(
                "perhaps-one-place",
                f"the first {count} are taken to go on {count} of them, and those behind on the "
                "last",
                f"write {b.written(one)} if all of them go on one",
                first.span.to(item.span),
            )


def _tell_in_the_again(before: Item, between: Item, item: Item, b: Building) -> None:
    """`3 dc in loop, picot, 3 dc in the loop`: the next loop, or the same?"""
    match before, between, item:
        case (
            Stitches(count, stitch, Place(Which.THE, (Whole(kind),), 1)),
            Picots() | Chains(),
            Stitches(again, same, Place(Which.THE, (Whole(of),), 1) as place),
        ) if (count, stitch, kind) == (again, same, of) and count > 1 and kind.name in SPACES:
            if "the" in b.said_in(item.span):
                one = replace(item, place=replace(place, which=Which.SAME))
                b.tell(
                    "perhaps-one-place",
                    f"this is taken as {b.written(item)}, the next one",
                    f"write {b.written(one)} if it goes where the {count} before it went",
                    before.span.to(item.span),
                )


def _tell_on_the_like(item: Item, b: Building) -> None:
    """`2 dc on the dc`, `4 dc into the edge`: all in one, or one in each?"""
    match item:
        case Stitches(count, stitch, Place(Which.THE, (Whole(kind),), 1) as place):
            if count < 2 or (kind != Kind(stitch) and not b.said_in(place.span) & _OF_CLOTH):
                return
            each = replace(item, place=replace(place, which=Which.NEXT, count=count))
            b.tell(
                "perhaps-one-place",
                f"these {count} are taken to go into one stitch",
                f"write {b.written(each)} if it is one in each",
                item.span,
            )


_OF_CLOTH = frozenset(
    {"edge", "rolled edge", "folded edge", "raw edge", "hem", "rolled hem", "braid", "tape"}
    | {"linen", "muslin", "flannel", "cambric", "lawn", "nainsook", "cloth", "material", "stuff"}
)
"""What is worked into all along: in which place of it is not said."""


def _tell_unplaced(item: Item, behind: Item | None, b: Building) -> None:
    """`1 shell, ch 1, skip 4`: one in each st, or all in one?"""
    match item:
        case Repeat(items=items, times=1, star=False):
            made = [i for i in items if isinstance(i, Stitches)]
            alone = all(isinstance(i, Stitches | Chains | Picots) for i in items)
            several = sum(i.count for i in made if not i.together) > 1
            # a figure by its name: a bracket that is printed says that it is a list
            named = item.span.end - item.span.start > 1 and all(
                t.start == item.span.start for t in b.terminals_in(item.span)
            )
            one_each = len(made) == len(items) == 1 and not isinstance(behind, Skip)
            if (
                one_each
                or not (named and alone and several)
                or any(i.place is not None for i in made)
            ):
                return
            one = all_in(Bracket(items, Place(Which.NEXT, (Whole(Kind("st")),))))
            b.tell(
                "perhaps-one-place",
                "no place is named for these: they are taken to go one in each st",
                f"write {b.written(one)} if all of them go in one",
                item.span,
            )


def _tell_middle(item: Item, b: Building) -> None:
    """`1 dc in the centre of the next 3 picots`: one in each, or in the middle one?"""
    match item:
        case Stitches(1, place=Place(which=Which.NEXT, targets=(Centre(kind),), count=count)):
            if count % 2 == 0 or count == 1 or (item.place is not None and item.place.each):
                return
            nth = (count + 1) // 2
            middle = replace(item, place=Place(Which.NTH, (Whole(kind),), nth))
            rest = Skip(count - nth, Whole(kind))
            one, passed = (b.written(i) for i in (middle, rest))
            b.tell(
                "perhaps-one-place",
                f"this is taken as {count} stitches, one in the centre of each",
                f"write {one}, {passed} if it is one stitch, in the middle one of {count}",
                item.span,
            )
