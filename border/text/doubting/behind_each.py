"""What stands behind an `in each`: nothing is left for it, but many books mean it as they come."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.coming import as_they_come, how_widely
from border.text.nodes import Building, Step
from border.text.stands_below import in_runs
from border.text.steps import is_open
from border.text.tree import (
    SPACES,
    ST,
    AsTheyCome,
    Bracket,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)
from border.text.wording.every_time import ALL_ROUND, BESIDES_ASKED


def tell_behind_each(steps: Sequence[Step], b: Building) -> None:
    """`1 dc in each dc, 2 dc in each space`; `1 sc in each space, ch 5` at a list's end."""
    items = [step.item for step in steps]
    ends = [item for item in items if isinstance(item, End)]
    turns = any(end.what is Ending.TURN for end in ends if end is items[-1])
    worked = [item for item in items if not isinstance(item, End)]
    _tell_before_each(worked, b)
    _tell_stitch_before_each(worked, b)
    _tell_behind_repeat(worked, b)
    _tell_besides(worked, b)
    for run in _runs(worked):
        b.tell(
            "perhaps-as-they-come",
            "the first of these goes on to the end of the row, so that nothing is left for what "
            "stands behind it",
            f"where all are worked as they come, write {_come(run, b)}",
            run[0].span.to(run[-1].span),
        )
    _tell_chains_and_stitch(worked, b)
    match worked:
        case [
            Stitches(place=Place(Which.NEXT, (Whole(Kind("space" | "loop", int())),), many) as few)
            | Bracket(
                place=Place(Which.NEXT, (Whole(Kind("space" | "loop", int())),), many) as few
            ) as first,
            Stitches() | Bracket() as last,
        ] if many > 1 and _in_each(last):
            each = replace(first, place=replace(few, which=Which.EACH, count=1, each=False))
            b.tell(
                "perhaps-as-they-come",
                f"the first of these is worked {many} times, where the row begins, and not again",
                f"where both are worked as they come, write {_come((each, last), b)}",
                first.span.to(last.span),
            )
    match worked[-3:]:
        case [before, Chains(count), Skip() as skip] if _in_each(before) and not any(
            t.type == "REPEAT" for t in b.terminals
        ):
            help_ = (
                "where it lies so each time, say in how many between: "
                f'"*1 dc in each of the next 4 dc, ch {count}, {b.written(skip)}; repeat from *"'
            )
            if _in_spaces(before):
                once = ", ".join(map(b.written, (*_once(before), *worked[-2:])))
                help_ = f'where it lies so each time, write "*{once}; repeat from *"'
            message = f"ch {count} is made once here, behind the last of these"
            b.tell("perhaps-as-they-come", message, help_, before.span.to(skip.span))
    match worked[-2:]:
        case [before, Chains(count) as chains] if _in_each(before) and not turns:
            b.tell(
                "perhaps-as-they-come",
                f"ch {count} is made once here, behind the last of these",
                f'write ", with ch {count} between" if it is made each time, or '
                f'"(ch {count})" if once',
                before.span.to(chains.span),
            )
        case [before, Skip() as skip] if _in_each(before) and not getattr(before, "parted", 0):
            b.tell(
                "perhaps-as-they-come",
                f"{b.written(skip)} stands behind the last of these, and once",
                "where so many are missed again and again, say in how many between: "
                f'"1 dc in each of the next 6 st, {b.written(skip)}; repeat"',
                before.span.to(skip.span),
            )
        case [before, Picots() as picots] if _in_each(before) and not turns:
            b.tell(
                "perhaps-as-they-come",
                f"{b.written(picots)} is made once here, behind the last of these",
                f'write "({b.written(picots)}) once" if so; if it is made each time, put it into '
                'a bracket with the others: "(3 dc, picot) in each space"',
                before.span.to(picots.span),
            )
        case [
            before,
            Stitches(place=Place(Which.THE | Which.NEXT | Which.CENTRE, (_,), 1) as place)
            | Bracket(place=Place(Which.THE | Which.NEXT | Which.CENTRE, (_,), 1) as place) as last,
        ]:
            if _in_each(before):
                each = replace(last, place=replace(place, which=Which.EACH))
                _tell_once(before, last, each, b)
        case [before, Stitches(place=Place(which=Which.NTH)) as last] if _in_each(before):
            once = ", ".join(map(b.written, (*_once(before), last)))
            b.tell(
                "perhaps-as-they-come",
                "what stands behind an each is worked once, where the row ends",
                f'where it is worked each time, write "*{once}; repeat from *"',
                before.span.to(last.span),
            )
        case [before, Stitches(place=Place(Which.NEXT, (Whole(Kind("ch")),), many)) as last] if (
            many > 1 and _in_each(before)
        ):  # `1 sc in each dc, 3 sc on the 3 chain`
            space = Place(Which.EACH, (Whole(Kind("space", many)),))
            _tell_once(before, last, replace(last, place=space), b)


def _tell_besides(items: Sequence[Item], b: Building) -> None:
    """`1 dc all round, with 7 dc under each chain`: on single stitches between, too?"""
    for item in items:
        match item:
            case AsTheyCome(items=[many, *_]):
                named = {t.name for t in b.terminals_in(item.span)}
                alone = ALL_ROUND in named and not in_runs(b.below)
                if many.place is None or not (alone or BESIDES_ASKED in named):
                    continue
                only = replace(many, place=replace(many.place, which=Which.EACH))
                b.tell(
                    "place-assumed",
                    "the stitches between are taken to have one each",
                    f"write {b.written(only)} if nothing goes on them",
                    item.span,
                )


def _in_spaces(item: Item) -> bool:
    """Whether a step goes into spaces, one by one."""
    place = item.place if isinstance(item, Stitches | Bracket) else None
    return place is not None and all(target.of.name in SPACES for target in place.targets)


def _tell_once(before: Item, last: Item, each: Item, b: Building) -> None:
    """That a step behind an `in each` is worked once, or perhaps wherever its place comes."""
    b.tell(
        "perhaps-as-they-come",
        "what stands behind an each is worked once, where the row ends",
        f"where both are worked as they come, write {_come((before, each), b)}",
        before.span.to(last.span),
    )


def _tell_chains_and_stitch(items: Sequence[Item], b: Building) -> None:
    """`5 dc in every loop, 2 ch, 1 sc on the sc, 2 ch`: once at the end, or each time?"""
    for at, item in enumerate(items[:-2]):
        match items[at + 1 : at + 3]:
            case [Chains() | Picots(), Stitches() | Bracket() as last] if _in_each(item):
                place = last.place
                if place is None or _in_each(last) or place.which in _AT_THE_END:
                    continue
                once = ", ".join(
                    b.written(one) for step in items[at:] for one in _once(_by_itself(step))
                )
                b.tell(
                    "perhaps-as-they-come",
                    "what stands behind an each is worked once, where the row ends",
                    f'where it is worked each time, write "*{once}; repeat from *"',
                    item.span.to(last.span),
                )


_AT_THE_END = (Which.LAST, Which.FIRST)


def _runs(items: Sequence[Item]) -> Iterator[Sequence[Item]]:
    """Steps that go on to the end, two or more behind each other; a repeat can only be the last."""
    start = 0
    for n in range(1, len(items) + 1):
        if n == len(items) or not (_in_each(items[n - 1]) and is_open(items[n])):
            if n - start > 1:
                yield items[start:n]
            start = n


def _tell_before_each(items: Sequence[Item], b: Building) -> None:
    """`ch 2, skip 2, 1 dc in every 3rd st`: once, or each time?"""
    for one, other, item in zip(items, items[1:], items[2:], strict=False):
        pair = {type(one), type(other)} == {Chains, Skip}
        if pair and _in_each(item):
            chains = one if isinstance(one, Chains) else other
            assert isinstance(chains, Chains)
            b.tell(
                "perhaps-as-they-come",
                "these chains and this skip are made once here, before the first of what follows",
                f'write ", with ch {chains.count} between" behind it, and leave both out, if '
                "they are made each time",
                one.span.to(item.span),
            )


def _tell_stitch_before_each(items: Sequence[Item], b: Building) -> None:
    """`1 dc in the dc, 2 dc in each space`: the one dc, or every dc? `miss the 2 ch, 2 dc in each
    space`: is one missed, or every other?"""
    for one, item in pairwise(items):
        match one:
            case Skip(target=Whole(Kind(name))) if _in_each(item) and name in SPACES:
                once = ", ".join(map(b.written, (one, *_once(item))))
                b.tell(
                    "perhaps-as-they-come",
                    "this skip is made once here, before the first of what follows",
                    f'where one is passed over each time, write "*{once}; repeat from *"',
                    one.span.to(item.span),
                )
            case Stitches(place=Place(Which.THE, (Whole(Kind(name)),), 1) as place):
                if name in STITCHES and _in_each(item):
                    each = replace(one, place=replace(place, which=Which.EACH))
                    b.tell(
                        "perhaps-as-they-come",
                        "what stands before an each is worked once, where the row begins",
                        f"where both are worked as they come, write {_come((each, item), b)}",
                        one.span.to(item.span),
                    )


def _tell_behind_repeat(items: Sequence[Item], b: Building) -> None:
    """`*1 sc in loop, ch 5; repeat from *. Into each of these loops 7 dc`: of what is left, or a
    round of its own?"""
    for repeat, item in pairwise(items):
        place = item.place if isinstance(item, Stitches | Bracket) else None
        left = place is not None and place.targets == (Whole(ST),)  # `1 dc in each st` left over
        match repeat:
            case Repeat(times=None, to_last=None) if _in_each(item) and not left:
                b.tell(
                    "perhaps-as-they-come",
                    "the repeat before it goes on to the end of the row, so that nothing is left "
                    "for this",
                    "if it is worked over what this row makes, write it as the next round",
                    item.span,
                )


def _come(items: Sequence[Item], b: Building) -> str:
    """How to write steps that are each worked wherever their site comes."""
    items = [_by_itself(item) for item in items]
    whole = as_they_come(sorted(items, key=how_widely))
    if isinstance(whole, AsTheyCome):
        first = whole.items[0]
        if all(replace(i, place=None) == replace(first, place=None) for i in whole.items):
            return b.written(replace(first, place=whole.place))
        return b.written(whole)
    once = [one for item in items for one in _once(item)]
    steps = ", ".join(b.written(item) for item in once)
    return f'"*{steps}; repeat from *", with the number of each'


def _by_itself(item: Item) -> Item:
    """A step in each of something, with the chains behind each in a bracket with it."""
    match item:
        case Stitches(place=Place() as place, parted=parted) if parted:
            return Bracket((replace(item, place=None, parted=0), Chains(parted)), place)
        case Bracket(items=items, parted=parted) if parted:
            return replace(item, items=(*items, Chains(parted)), parted=0)
        case _:
            return item


def _once(item: Item) -> tuple[Item, ...]:
    """What is worked once of a step that goes on to the end."""
    match item:
        case Repeat() | AsTheyCome():
            return item.items
        case Stitches(place=Place() as place) | Bracket(place=place):
            which = Which.NEXT if place.count == 1 else Which.NTH
            return (replace(item, place=replace(place, which=which)),)
        case _:
            return (item,)


def _in_each(item: Item) -> bool:
    return is_open(item) and not isinstance(item, Repeat)
