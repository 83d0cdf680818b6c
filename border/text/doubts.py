"""Steps that mean one thing by the words of this language, and in some books another.

The reading taken is that of `grammar/README.md`; each doubt is a warning that
shows the edit for the other one.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.findings import Span
from border.stitches import STITCHES
from border.text.behind_each import tell_behind_each
from border.text.counted_on import tell_counted_on
from border.text.nodes import Building, Step
from border.text.tree import (
    SPACES,
    AtOnce,
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
from border.text.turned_back import tell_behind_arch
from border.text.vocabulary import name_of


def tell_doubts(steps: Sequence[Step], b: Building) -> None:
    """Tell what the steps of one list may mean besides."""
    # A list is mostly worked over and over: what stands before its first step is its last.
    worked = steps[-1].item if steps else None
    into = space_of(worked, None)
    asked: set[int] = set()
    for n, (before, step) in enumerate(pairwise(steps), 1):
        into = space_of(before.item, into)
        if not step.hard:
            if _tell_perhaps_ring(before.item, step.item, worked, into, b) or _tell_just_made(
                before.item, step.item, worked, into, b
            ):
                asked.add(n)
            _tell_list(before.item, step.item, b)
            _tell_chain_and_each(before.item, step.item, b)
            _tell_rings_inside(before.item, step.item, b)
        tell_behind_arch(before.item, step.item, b)
        worked = before.item
    for n, step in enumerate(steps):
        if n not in asked:
            _tell_nth_chain(step.item, b)
        _tell_middle(step.item, b)
        _tell_on_the_like(step.item, b)
    _tell_skips_among_spaces(steps, b)
    tell_counted_on(steps, b)
    tell_behind_each(steps, b)


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


# --- rings --------------------------------------------------------------------------


def tell_ring(chains: Chains, closing: Item, b: Building) -> None:
    """`ch 5, 1 sl st in first ch`: a picot, or a stitch into the row below?"""
    below = b.written(closing)
    b.tell(
        "place-unclear",
        "this may close the chains before it into a picot, or go into the row below",
        f"write picot of {chains.count} or ch {chains.count}; {below}",
        chains.span.to(closing.span),
    )


def may_be_picot(since: Sequence[Item], closing: Item) -> bool:
    """`5 chain, 1 slip in the same stitch`; with 1 sc only behind stitches without a place."""
    match closing:
        case Stitches(1, "ss" | "sc" as name, Place(targets=() | (Whole(Kind("st")),))):
            chains = since[-1] if since else None
            bare = len(since) > 1 and isinstance(since[-2], Stitches)
            return isinstance(chains, Chains) and chains.count > 2 and (bare or name == "ss")
        case _:
            return False


def tell_picot(chains: Item, b: Building, to: Span) -> None:
    """That chains with a stitch in the same place behind them may be a picot."""
    assert isinstance(chains, Chains)
    b.tell(
        "perhaps-picot",
        f"these {chains.count} chains are taken to stand as a loop on the row",
        f"write picot of {chains.count} if this closes them into a ring on that stitch",
        chains.span.to(to),
    )


def _tell_perhaps_ring(
    chains: Item, closing: Item, worked: Item | None, into: Kind | None, b: Building
) -> bool:
    """`1 dc, ch 5, 1 sc in last dc`, `ch 4, 1 sl st in the dc`, `ch 8, 1 sc in 5th ch`: a picot?
    Whether this was asked.

    `worked` is the step before the chains, `into` the space that was worked into last.
    """
    if not isinstance(chains, Chains) or chains.count < 3:
        return False
    size = chains.count
    made = worked if isinstance(worked, Stitches) else None
    match closing:
        case Stitches(1, "sc" | "ss", Place(which=Which.LAST, targets=(Whole(of),), count=1)):
            perhaps = made is not None and made.stitch == of.name
        case Stitches(1, "sc" | "ss", Place(Which.NTH, (Whole(Kind("ch")),), nth)):
            perhaps, size = 3 <= nth <= size, nth
        case Stitches(1, "ss", Place(Which.NTH, (Whole(Kind("st")),), nth)):
            perhaps, size = 3 <= nth <= size, nth
        case Stitches(1, "sc" | "ss" as name, Place(Which.SAME, (Whole(of),))) if into is not None:
            like = made is not None and made.stitch == of.name
            perhaps = of == Kind("st") or (like and name == "ss")
        case Stitches(1, "sc" | "ss" as name, Place(Which.THE | Which.NTH, (Whole(of),), nth)):
            perhaps = made is not None and made.stitch == of.name
            perhaps = perhaps and made is not None and nth in (name == "ss", made.count)
            perhaps = perhaps and (name == "ss" or nth > 1)
        case _:
            return False
    if perhaps:
        rest = f"ch {chains.count - size}, " if chains.count > size else ""
        below = b.written(closing)
        b.tell(
            "perhaps-picot",
            "this is taken to go into the row below; it may close the chains into a picot",
            f"write {rest}picot of {size} if it does, or ch {chains.count}; {below} if not",
            chains.span.to(closing.span),
        )
    return perhaps


def space_of(item: Item | None, before: Kind | None) -> Kind | None:
    """The space or loop that the last step with a place went into; `before` is that of the steps
    before this one."""
    match item:
        case (
            Stitches(place=Place(which=which, targets=targets))
            | Bracket(place=Place(which=which, targets=targets))
        ):
            if which is Which.SAME:
                return before
            kind = targets[-1].of if targets else None
            return kind if kind is not None and kind.name in SPACES else None
        case _:
            return before


def _tell_just_made(
    chains: Item, item: Item, worked: Item | None, into: Kind | None, b: Building
) -> bool:
    """`ch 5, 1 dc in 1st of 5 ch`, `ch 6, 1 sc in 2nd ch, 1 hdc in next`, `1 sc in loop, ch 3, 2 dc
    in same sc`: into what this row has just made? Whether this was asked.

    `into`: the space that was worked into last.
    """
    if not isinstance(chains, Chains) or not isinstance(item, Stitches):
        return False
    size = chains.count
    perhaps = False
    match item.place:
        case Place(Which.THE, (Part(1, Kind("ch" | "st"), Kind("ch" | "space", of)),), 1):
            perhaps = of in (None, size)
        case Place(Which.NTH, (Whole(Kind("ch")),), nth):
            perhaps = b.round > 1 and nth <= size
        case Place(Which.SAME, (Whole(Kind(name)),)) if into is not None and name in STITCHES:
            perhaps = isinstance(worked, Stitches) and worked.stitch == name
        case _:
            pass
    if perhaps:
        b.tell(
            "perhaps-just-made",
            "this is taken to go into the row below; it may go into what this row has just made",
            "if so, write what it comes to on the row, as a picot, or a figure with a name of its "
            f"own; if not, keep it: {b.written(item)}",
            chains.span.to(item.span),
        )
    return perhaps


def _tell_nth_chain(item: Item, b: Building) -> None:
    """`1 sc in 3rd ch`: counted over all the chains below, or the 3rd of the next loop?"""
    match item:
        case Stitches(place=Place(Which.NTH, (Whole(Kind("ch") as chain),), nth)) if nth > 2:
            if b.round < 2:
                return
            of_loop = Place(Which.NEXT, (Part(nth, chain, Kind("space")),))
            b.tell(
                "place-assumed",
                f"these {nth} chains are counted one after another, from loop to loop",
                f"write {b.written(replace(item, place=of_loop))} if it is that one of each loop",
                item.span,
            )


def _tell_rings_inside(before: Item, item: Item, b: Building) -> None:
    """`3 dc, (5 ch, 1 sc in the same place) 3 times`: loops on the row, or picots?"""
    match before, item:
        case (
            Stitches(place=None),
            Repeat(items=(chains, Stitches(stitch="sc", place=Place(Which.SAME)) as closing)),
        ):
            if may_be_picot((before, chains), closing):
                tell_picot(chains, b, closing.span)


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
            whole = Bracket((before, replace(item, place=None)), item.place)
            b.tell(
                "perhaps-one-place",
                "only the last of these is taken to go into that place, the others one in each st",
                f"write {b.written(whole)} if all of them go there",
                before.span.to(item.span),
            )


def _tell_chain_and_each(chains: Item, item: Item, b: Building) -> None:
    """`1 ch and 1 tr on each of the 9 tr`: the chain once, or with each?"""
    match chains, item:
        case Chains(), Stitches(place=Place(each=True, count=count) as place) if count > 1:
            start, end = chains.span.end, item.span.start
            between = [t.text for t in b.terminals if start <= t.start < end]
            if between not in (["and"], ["&"]):
                return
            both = Bracket((chains, replace(item, place=None)), place)
            b.tell(
                "perhaps-as-they-come",
                "these chains are made once, before the first of these",
                f"write {b.written(both)} if they are made with each",
                chains.span.to(item.span),
            )


def _tell_skips_among_spaces(steps: Sequence[Step], b: Building) -> None:
    """`3 dc in each of 2 spaces, skip 1, 1 dc in next`: one stitch, or one space?"""
    last: Kind | None = None
    final = steps[-1].item if len(steps) > 2 else None
    if isinstance(final, Skip) and final.target is None:
        _tell_last_skip(steps[:-1], final, b)
    for step, behind in pairwise(steps):
        item = step.item
        place = item.place if isinstance(item, Stitches | Bracket) else None
        for target in place.targets if place is not None else ():
            last = target.of
        if not isinstance(item, Skip) or item.target is not None or last is None:
            continue
        match behind.item:
            case Stitches(place=Place(Which.NEXT, (Whole(Kind("st")),), 1)) as stitches:
                if last.name in SPACES and _noun_left_out(stitches, b):
                    space = replace(item, target=Whole(last))
                    next_ = replace(stitches, place=Place(Which.NEXT, (Whole(last),)))
                    b.tell(
                        "perhaps-of-spaces",
                        "what is missed here, and worked into, is taken to be stitches",
                        f"write {b.written(space)}, {b.written(next_)} if both are spaces",
                        item.span.to(stitches.span),
                    )


def _tell_last_skip(before: Sequence[Step], skip: Skip, b: Building) -> None:
    """`skip 1 space, 1 dc in next space, ch 3, skip 1; repeat`: one stitch, or one space?"""
    skips = [step.item for step in before if isinstance(step.item, Skip)]
    spaces = [s.target.of for s in skips if s.target is not None and s.target.of.name in SPACES]
    if spaces and skip.count == 1:
        b.tell(
            "perhaps-of-spaces",
            "what is missed here is taken to be a stitch",
            f"write {b.written(replace(skip, target=Whole(spaces[-1])))} if it is a space",
            skip.span,
        )


def _noun_left_out(item: Stitches, b: Building) -> bool:
    """Whether a text names no noun in `in the next`."""
    start, end = item.span.start, item.span.end
    words = [(t.start, t.end) for t in b.terminals if start <= t.start < end]
    return len(set(words)) < len(words)


def _tell_on_the_like(item: Item, b: Building) -> None:
    """`2 dc on the dc`: both in one, or one in each?"""
    match item:
        case Stitches(count, stitch, Place(Which.THE, (Whole(kind),), 1) as place):
            if count < 2 or kind != Kind(stitch):
                return
            each = replace(item, place=replace(place, which=Which.NEXT, count=count))
            b.tell(
                "perhaps-one-place",
                f"these {count} are taken to go into one stitch",
                f"write {b.written(each)} if it is one in each",
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


def tell_chains(item: Stitches | Bracket, made: int, b: Building) -> None:
    """`1 treble in the chain`, behind row 1 `in the next chain`, `3 treble in each of the 5 chain`:
    in single chains, or in the loop of those that stand together. `made`: in each of them."""
    place = item.place
    if place is None or place.targets != (Whole(Kind("ch")),):
        return
    spelled = any(
        t.type == "CH" and t.text == "chain" and t.end == item.span.end for t in b.terminals
    )
    next_ = place.which is Which.NEXT and spelled
    size = None
    match place:
        case Place(which=Which.THE, count=1):
            pass
        case Place(count=1) if next_ and b.round > 1:
            pass
        case Place(which=Which.NEXT, count=count, each=True) if count > 1 and made > 1:
            size = count
        case _:
            return
    tell_single_chain(item, b, size)


def tell_single_chain(item: Stitches | Bracket, b: Building, size: int | None = None) -> None:
    """That a step is taken to go into single chains, and not into a space of them, of a size."""
    place = item.place or Place(Which.NEXT, ())
    several = place.each and place.count > 1
    chain = replace(place, which=Which.NEXT if place.which is Which.THE else place.which)
    whole = replace(chain, which=Which.EACH, count=1, each=False) if several else chain
    loop, single = (
        b.written(replace(item, place=replace(where, targets=(Whole(kind),))))
        for where, kind in ((whole, Kind("space", size)), (chain, Kind("ch")))
    )
    into = f"{place.count} single chains" if several else "a single chain"
    message = f"this is taken to go into {into}"
    help_ = f"write {loop} if it goes into the whole loop of chains, otherwise {single}"
    b.tell("perhaps-one-place", message, help_, item.span)


def tell_at_once(item: Stitches | Bracket, place: Place, b: Building) -> bool:
    """`1 dc in the next 3 loops together, *ch 3, 1 dc in the next 3 loops`: again together?
    Whether this was asked."""
    for target in place.targets:
        if isinstance(target, AtOnce):
            b.at_once.add(target.of)
            return False
        several = place.count > 1 and place.which in (Which.NEXT, Which.FIRST, Which.LAST)
        if several and not place.each and isinstance(target, Whole) and target.of in b.at_once:
            if isinstance(item, Stitches) and (item.count > 1 or item.together):
                return False
            once = replace(place, targets=(AtOnce(place.count, target.of),), count=1)
            each = replace(place, each=True)
            ways = [b.written(replace(item, place=way)) for way in (once, each)]
            message = "this may go into all of them at once, as before in this row, or into each"
            b.tell("place-unclear", message, f"write {ways[0]} or {ways[1]}", item.span)
            return True
    return False


def tell_on_the_middle(first: Stitches, b: Building) -> None:
    """`5 dc over the 7`: on the middle ones, or two fewer by some other way?"""
    two = f"2 {name_of(first.stitch, b.terms, b.headings.overrides)}"
    b.tell(
        "perhaps-fewer",
        "these are taken to stand on the middle ones, as many missed at either end",
        f'write ", beginning on the 2nd" behind it if so, or where others are missed or worked '
        f'together: "{two} together over the next 2 st"',
        first.span,
    )


def tell_next_of(item: Stitches, b: Building) -> None:
    """`1 sc in the 4th dc of the shell, … 1 sc in the next`: the next dc, or the next shell?"""
    b.tell(
        "perhaps-next-of",
        f'"the next", behind a stitch of a group, is taken as {b.written(item)}',
        'say which: "in next st" is the stitch beside it, "in next shell" the next group, '
        '"in 4th st of next shell" a stitch of that',
        item.span,
    )


def tell_pair(item: Stitches, b: Building) -> None:
    """`1 sc between the 2 dc`: between any two, or inside each group of two?"""
    of = next((target.of.name for target in item.place.targets), "st") if item.place else "st"
    named = name_of(of, b.terms, b.headings.overrides) if of in STITCHES else of
    inside = 'write "between the picots of next loop"'
    if of != "picot":
        inside = f'write "in centre of next group of 2 {named}", with as many as it has'
    b.tell(
        "place-assumed",
        f"this is taken as {b.written(item)}, so that the gap from one group to the next counts "
        "as well",
        f"if it is the gap inside each group, {inside}",
        item.span,
    )


def tell_in_last(item: Stitches, b: Building) -> None:
    """`shell in shell, 1 dc in last`: the last stitch, or the last shell?"""
    b.tell(
        "place-assumed",
        f'"in last", with one stitch, is taken as {b.written(item)}',
        'say of what it is the last: "in last st", "in last space", "in last shell"',
        item.span,
    )


def tell_counted(item: Stitches, b: Building) -> None:
    """`3 ch, 1 sc in the 2nd of next 3`, `5 dc on the 5`, `1 sc on the next`: of what?"""
    b.tell(
        "place-assumed",
        f"what this is worked on is not named: it is taken as {b.written(item)}",
        'name it to say so: "on next dc", "on the next 3 dc", "of next 3 ch"',
        item.span,
    )


def tell_turning_chain(item: Stitches, b: Building) -> None:
    """`1 dc in the 3 ch at the end`: the top of those that the row below began with?"""
    b.tell(
        "start-chain-assumed",
        "the chains at the end are taken for those that the row below began with: they stand for "
        "its first stitch, which is now the last",
        f"write {b.written(item)} to say so; where they are chains of that row, "
        '"in last ch-3 space", "in 3rd ch of last space"',
        item.span,
    )
