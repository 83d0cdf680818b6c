"""Skips that may be of something else: of a space, under each of some chains, of its own chain."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise, takewhile

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.doubting.picot_doubts import (
    space_of,
)
from border.text.nodes import Building, Step
from border.text.shaping.start_chains import FIRST_ONES
from border.text.stands_below import loop_sizes
from border.text.steps import walk
from border.text.tree import (
    SPACES,
    Bracket,
    Chains,
    Item,
    Kind,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)
from border.text.vocabulary import name_of
from border.text.wording.missed import BETWEEN_TIMES, OF_EACH


def tell_missed_each_time(before: Item, skip: Item, b: Building) -> None:
    """`5 dc with 1 ch between, missing 1`: once, behind them, or under each of the chains?"""
    match before, skip:
        case Stitches(place=Place(which=Which.EACH) as each, parted=parted), Skip() if parted:
            if any(t.type == "SKIP" and t.name == OF_EACH for t in b.terminals):
                return
            one = b.written(replace(before, place=replace(each, which=Which.NEXT), parted=0))
            b.tell(
                "perhaps-missed",
                "this is missed once here, behind the last of these",
                f'write "*{one}, ch {parted}, {b.written(skip)}; repeat from *" if so many are '
                "missed each time",
                before.span.to(skip.span),
            )
        case Stitches(count, place=None, between=between), Skip(of, None) if count > 1 and between:
            if of > between + 1:
                return
            one = f"1 {name_of(before.stitch, b.terms, b.headings.overrides)}"
            b.tell(
                "perhaps-missed",
                f"{of} missed once here, behind the last of these",
                f'write "({one}, ch {between}, skip {of}) {count - 1} times, {one}" if so many are '
                "missed under each of the chains",
                before.span.to(skip.span),
            )


def tell_skipped(skip: Skip, b: Building) -> None:
    """`5 ch, miss the first 3 dc` at a row's head: with the one that the chains stand on? `(1 dc in
    next, 3 ch) 5 times, missing 1 between, 1 dc in next`: behind the last as well?"""
    names = {t.name for t in b.terminals_in(skip.span)}
    if FIRST_ONES in names:
        b.tell(
            "perhaps-missed",
            f"the chains before it stand on the first, and {skip.count} more are missed here",
            f"write {b.written(replace(skip, count=skip.count - 1))} if the one under the chains "
            "is counted with them",
            skip.span,
        )
    if BETWEEN_TIMES in names:
        b.tell(
            "perhaps-missed",
            f"{skip.count} missed between these each time, and none behind the last of them",
            f'write ", {b.written(skip)}" behind the steps, in place of "missing …", if so many '
            "are missed there as well",
            skip.span,
        )


def tell_down_the_chain(items: Sequence[Item], b: Building) -> None:
    """`7 ch, miss 1, 1 sc, 4 dc, 1 sc`: along the row below, or back along the 6 chains?"""
    for n, (chains, skip) in enumerate(pairwise(items)):
        if not isinstance(chains, Chains) or not isinstance(skip, Skip) or skip.count > 2:
            continue
        run = [i for i in takewhile(_along, items[n + 2 :]) if isinstance(i, Stitches)]
        made = sum(item.count * (item.place.count if item.place else 1) for item in run)
        stem = chains.count - skip.count - made
        if made > 2 and (stem == 0 or (stem > 0 and _is_leaf(chains, skip, run, made, stem))):
            b.tell(
                "perhaps-just-made",
                f"these {made} are taken to go into the row below; they may be worked back along "
                "the chains just made",
                _IF_SO,
                chains.span.to(run[-1].span),
            )


def _along(item: Item) -> bool:
    """Whether a step may go back along chains: it names no place, or the next chains."""
    if not isinstance(item, Stitches):
        return False
    place = item.place
    return place is None or (place.which is Which.NEXT and place.targets == (Whole(Kind("ch")),))


def _is_leaf(chains: Chains, skip: Skip, run: Sequence[Stitches], made: int, stem: int) -> bool:
    """Whether stitches look worked back along chains of which some are left: low ones and then
    higher ones, chains by their name, or very nearly as many as there are."""
    if skip.count > 1 or skip.target not in (None, Whole(Kind("ch")), Whole(Kind("st"))):
        return False
    named = any(item.place is not None for item in run)
    rises = run[0].stitch in _LOW and any(item.stitch not in _LOW for item in run)
    return named or rises or (chains.count >= _LONG and made > 2 * stem)


_LOW = frozenset({"ss", "sc", "hdc"})
_LONG = 6
"""So many chains, and more, are much for an arch over one stitch."""

_IF_SO = (
    "if so, write what it comes to on the row, as a picot, or a figure of one stitch or of its "
    'chains alone: "leaf = ch 7"'
)


def tell_on_own_chains(item: Item, b: Building) -> None:
    """`a picot is 5 ch, 1 dc back in the 2nd`: along the row below, or on the 5 chains?"""
    match item:
        case Repeat(items=[Chains(n), Skip(k, None), Stitches(), *_], times=1, star=False):
            # a figure's steps all stand where its name does; `(5 ch, miss 3, 1 dc)` is an arch
            within = k < n and sum(t.start == item.span.start for t in b.terminals) > 1
        case Repeat(items=[Chains(n), Stitches(place=Place(targets=(Whole(on),)) as place), *_]):
            own = item.times == 1 and not item.star and on.name in ("st", "ch")
            within = own and place.which is Which.NTH and place.count <= n
        case _:
            return
    if within:
        b.tell(
            "perhaps-just-made",
            f"what stands behind the ch {n} is taken to go into the row below; it may be worked "
            "back along these chains",
            _IF_SO,
            item.span,
        )


def tell_skips_among_spaces(steps: Sequence[Step], b: Building) -> None:
    """`3 dc in each of 2 spaces, skip 1, 1 dc in next`: one stitch, or one space?"""
    last: Kind | None = None
    end = len(steps)
    while end and isinstance(steps[end - 1].item, Chains):
        end -= 1
    final = steps[end - 1].item if end > 1 else None
    if isinstance(final, Skip) and final.target is None:
        _tell_last_skip(steps[: end - 1], final, b)
        _tell_missed_chain(steps[: end - 1], final, b)
    for step, behind in pairwise(_led_into(steps)):
        item = step.item
        place = item.place if isinstance(item, Stitches | Bracket) else None
        for target in place.targets if place is not None else ():
            last = target.of
        if not isinstance(item, Skip) or last is None:
            continue
        if item.target is not None:
            _tell_missed_space(item, behind.item, last, b)
            continue
        match behind.item:
            case (
                Stitches(
                    place=Place(Which.NEXT | Which.NTH as which, (Whole(Kind("st")),), nth)
                ) as stitches
            ) if which is Which.NTH or nth == 1:
                if last.name in (*SPACES, "picot") and _noun_left_out(stitches, b):
                    space = replace(item, target=Whole(last))
                    next_ = replace(stitches, place=Place(Which.NEXT, (Whole(last),)))
                    b.tell(
                        "perhaps-of-spaces",
                        "what is missed here, and worked into, is taken to be stitches",
                        f"write {b.written(space)}, {b.written(next_)} if both are "
                        f"{'picots' if last.name == 'picot' else 'spaces'}",
                        item.span.to(stitches.span),
                    )
            case Stitches(place=Place(Which.NEXT, (Whole(kind),), 1)) if (
                kind.name in SPACES and last.name in SPACES and item.count == 1 and b.round > 1
            ):
                b.tell(
                    "perhaps-of-spaces",
                    "what is missed here is taken to be a stitch, so that the very next is worked",
                    f"write {b.written(replace(item, target=Whole(kind)))} if it is a space",
                    item.span,
                )


def tell_next_of_loops(item: Item, b: Building) -> None:
    """`(5 ch, 1 sc in next) 3 times` over loops of chains: in stitch after stitch, with nothing
    missed, or in loop after loop?"""
    match item:
        case Repeat(
            items=[
                Chains(count),
                Stitches(1, "sc" | "ss", Place(Which.NEXT, (Whole(Kind("st")),), 1)) as step,
            ],
            times=int() as times,
        ) if times > 1 and count >= _LOOP and _noun_left_out(step, b):
            if max(loop_sizes(b.below), default=0) >= _LOOP:
                loop = replace(step, place=Place(Which.NEXT, (Whole(Kind("loop")),)))
                b.tell(
                    "perhaps-of-spaces",
                    "what these go into is taken to be stitches, one right behind the other",
                    f"write {b.written(loop)} if they are loops of the row below",
                    step.span,
                )


_LOOP = 3
"""So many chains make a loop to work into."""


def _led_into(steps: Sequence[Step]) -> list[Step]:
    """The steps; of a starred repeat those up to its first place, to which the steps before it
    lead: `1 sc in 1st loop, *ch 5, skip 1, 1 sc in next`."""
    found: list[Step] = []
    for step in steps:
        item = step.item
        inner = item.items if isinstance(item, Repeat) and item.star else ()
        placed = (n for n, one in enumerate(inner) if isinstance(one, Stitches | Bracket))
        found += [Step(one, step.hard) for one in inner[: next(placed, -1) + 1]]
        found.append(step)
    return found


def _tell_missed_space(skip: Skip, behind: Item, last: Kind, b: Building) -> None:
    """`1 dc in the one chain, miss one chain, 1 sc in the next`: the next space, of one chain?"""
    match skip, behind:
        case (
            Skip(count, Whole(Kind("ch"))),
            Stitches(place=Place(Which.NEXT, (Whole(Kind("st")),), 1)) as next_,
        ) if last == Kind("space", count) and _noun_left_out(next_, b):
            space = replace(skip, count=1, target=Whole(last))
            there = replace(next_, place=Place(Which.NEXT, (Whole(last),)))
            b.tell(
                "perhaps-of-spaces",
                "what is missed here is taken to be so many chains, and the next a stitch",
                f"write {b.written(space)}, {b.written(there)} if both are spaces",
                skip.span.to(next_.span),
            )


def _tell_last_skip(before: Sequence[Step], skip: Skip, b: Building) -> None:
    """`skip 1 space, 1 dc in next space, ch 3, skip 1; repeat`: one stitch, or one space?"""
    skips = [step.item for step in before if isinstance(step.item, Skip)]
    spaces = [s.target.of for s in skips if s.target is not None and s.target.of.name in SPACES]
    into: list[Kind | None] = []
    for step in before:
        if isinstance(step.item, Stitches | Bracket):
            into.append(space_of(step.item, into[-1] if into else None))
    if not spaces and b.round > 1 and into and all(into):
        spaces = [kind for kind in into if kind is not None]  # `3 dc in sp, skip 1; repeat`
    if spaces and (skip.count == 1 or _are_holes(skip, b)):
        one = skip.count == 1
        b.tell(
            "perhaps-of-spaces",
            f"what is missed here is taken to be {'a stitch' if one else 'stitches'}",
            f"write {b.written(replace(skip, target=Whole(spaces[-1])))} if "
            f"{'it is a space' if one else 'these are spaces'}",
            skip.span,
        )


def _tell_missed_chain(before: Sequence[Step], skip: Skip, b: Building) -> None:
    """`1 dc on tr, 5 ch, miss 1; repeat` over chains, of which one is missed in any case."""
    worked = [step.item for step in before if isinstance(step.item, Stitches | Bracket)]
    match worked:
        case [Stitches(place=Place(Which.THE | Which.NEXT, (Whole(on),), 1))] if (
            on.name in STITCHES and skip.count == 1 and b.headings.chains_count and b.below
        ):
            if any(isinstance(item, Chains) and item.count > 1 for item in walk(b.below.items)):
                b.tell(
                    "perhaps-of-spaces",
                    "what is missed here is one chain of the row below, passed over in any case",
                    f"write {b.written(replace(skip, target=Whole(on)))} if it is such a stitch",
                    skip.span,
                )


def _are_holes(skip: Skip, b: Building) -> bool:
    """Whether 2 or 3 that are missed may be holes of the row below, a stitch between each."""
    below = walk(b.below.items) if b.below is not None else ()
    wide = [item.count for item in below if isinstance(item, Chains)]
    return skip.count < 4 and max(wide, default=3) < 3


def _noun_left_out(item: Stitches, b: Building) -> bool:
    """Whether a text names no noun in `in the next`."""
    start, end = item.span.start, item.span.end
    words = [(t.start, t.end) for t in b.terminals if start <= t.start < end]
    return len(set(words)) < len(words)
