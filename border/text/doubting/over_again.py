"""What is worked over and over: where one repeat ends and the next begins, the books say little."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import dropwhile, pairwise

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.doubting.chains_among import tell_chains_among
from border.text.doubting.rest_of_group import tell_rest_of_group
from border.text.nodes import Building
from border.text.stands_below import stands_in
from border.text.steps import walk
from border.text.tree import (
    SPACES,
    Begin,
    Between,
    Bracket,
    Centre,
    Chains,
    End,
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
from border.text.vocabulary import name_of


def tell_over_again(items: Sequence[Item], b: Building) -> None:
    """Tell what the steps of a repeat that goes on to the end may mean besides."""
    tell_last(items, b)
    if items:
        _tell_nothing_missed(items, b)
        tell_chains_among(items, b)
        tell_rest_of_group(items, b)


def tell_shared(items: Sequence[Item], b: Building) -> None:
    """`1 dc on first tr, 9 ch, miss 7, 1 dc on next; repeat`: is the last one the next first?"""
    items = list(dropwhile(lambda item: isinstance(item, Begin | End), items))
    if tell_shared_around(items, b):
        return
    picots = sum(isinstance(item, Picots) for item in items)
    match [item for item in items if picots > 1 or not isinstance(item, Picots)]:
        case [
            Stitches(place=Place(which=Which.NTH)) as first,
            Chains(),
            Stitches(place=Place(which=Which.NEXT)) as last,
        ] if (first.stitch, first.count) == (last.stitch, last.count):
            _tell_shared(items, "the same stitch", b)
        case [
            Stitches(place=None | Place(which=Which.FIRST | Which.NEXT | Which.THE)) as first,
            Chains(),
            *between,
            Stitches(place=None | Place(which=Which.NEXT | Which.NTH | Which.THE)) as last,
        ] if _is_short(between, last) and _alike(first, last) and (between or last.place):
            _tell_shared(items, "the same stitch", b)
        case [Stitches(place=None) as first, Skip(), Chains(), Stitches(place=None) as last] if (
            _alike(first, last)
        ):
            _tell_shared(items, "the same stitch", b)
        case [
            Stitches(place=Place(which=Which.FIRST | Which.THE)) as first,
            Chains(),
            Stitches(place=None) as last,
        ] if (first.stitch, first.count) == (last.stitch, last.count):
            _tell_shared(items, "the same stitch", b)
        case [
            Bracket(place=Place(which=Which.FIRST | Which.NEXT)) as first,
            _,
            *between,
            Bracket(place=Place(which=Which.NEXT)) as last,
        ] if len(between) < 3 and first.items == last.items:
            _tell_shared(items, "the same stitches", b)
        case [
            Stitches(place=None | Place(which=Which.FIRST)) as first,
            *between,
            Stitches(place=None | Place(which=Which.NEXT)) as last,
        ] if (
            between
            and (first.stitch, first.count) == (last.stitch, last.count)
            and not any(isinstance(item, Chains | Repeat) for item in between)
            and (first.place is not None or any(isinstance(item, Skip) for item in between))
        ):
            _tell_shared(items, "the same stitch", b)  # `1 dc in first, skip 1, 1 dc in next`
        case [
            Stitches(place=Place()) as first,
            Chains(chains),
            Skip() as skip,
            Stitches(place=None | Place(which=Which.NEXT)) as last,
            Chains(again),
        ] if (first.stitch, first.count, chains) == (last.stitch, last.count, again) and (
            not _into_spaces(first if last.place is None else last)
        ):
            one = b.written(replace(first if last.place is None else last, span=first.span))
            b.tell(
                "perhaps-nothing-missed",
                f"{b.written(skip)} lies under the first ch {chains}, and nothing under the second",
                f'write "{one}, ch {chains}, {b.written(skip)}; repeat" if it does each time',
                first.span.to(items[-1].span),
            )
        case [Chains() as first, _, *between, Chains() as last] if (
            len(between) < 4 and first == last and not any(isinstance(i, Chains) for i in between)
        ):
            _tell_shared(items, "as many chains", b)


def tell_shared_around(items: Sequence[Item], b: Building) -> bool:
    """`1 sc on sc, 9 dc in loop, 1 sc on next sc; repeat`: is the last one the next first? Whether
    this was asked."""
    match items:
        case [
            Stitches(
                count, place=Place(which=Which.FIRST | Which.NEXT | Which.THE as which, count=1)
            ) as first,
            *between,
            Stitches(place=Place(which=Which.NEXT, count=1)) as last,
        ] if _works_between(between, first.stitch) and _alike(first, last):
            if which is Which.NEXT and count < 3:
                return False  # `1 sc in next space, 5 dc in next space, 1 sc in next space`
        case [
            Stitches(place=Place(which=Which.FIRST | Which.THE)) as first,
            Repeat(
                items=[*_, Stitches(place=Place(which=Which.NEXT)) as last], times=int(), star=False
            ),
        ] if _alike(first, last) and first.stitch in ("sc", "ss"):
            pass
        case [
            Stitches(place=Place(which=Which.NEXT | Which.THE, count=1)) as first,
            Chains(),
            Stitches(place=Place(which=Which.NEXT, count=1)) as last,
        ] if (
            _alike(first, last) and _in_one(first, b) and _into_spaces(first) and _into_spaces(last)
        ):
            pass  # `1 sc in one loop, 7 ch, 1 sc in the next`
        case [
            Stitches(1, place=Place(which=Which.FIRST | Which.NEXT | Which.THE)) as first,
            *between,
            Stitches(1, place=Place(which=Which.NEXT)) as last,
        ] if _alike(first, last) and _all_into_spaces(between) and not _into_spaces(first):
            pass  # `1 dc on dc, (3 ch, 1 dc in the space) 4 times, 3 ch, 1 dc on next dc`
        case [Stitches(1, place=None) as first, Chains(), Stitches(1, place=None) as last] if (
            first.stitch == last.stitch
        ):
            pass  # `1 sc, 3 ch, 1 sc`
        case _:
            return False
    _tell_shared(items, "the same stitch", b)
    return True


def _works_between(between: Sequence[Item], stitch: str) -> bool:
    """Whether something else is worked between the two, and nothing missed: `9 dc in loop`."""
    made = [item for item in between if isinstance(item, Stitches | Bracket)]
    other = made and all(getattr(item, "stitch", "") != stitch for item in made)
    open_ = any(isinstance(item, Repeat) and item.times is None for item in between)
    return bool(other) and not open_ and not any(isinstance(item, Skip) for item in between)


def _all_into_spaces(between: Sequence[Item]) -> bool:
    """Whether all that is worked between the two goes into loops of chains, and nothing is
    missed."""
    steps = list(walk(between))
    made = [item for item in steps if isinstance(item, Stitches)]
    open_ = any(isinstance(item, Repeat) and item.times is None for item in steps)
    into = bool(made) and all(map(_into_spaces, made))
    return into and not open_ and not any(isinstance(i, Skip | Bracket) for i in steps)


def _is_short(between: Sequence[Item], last: Stitches) -> bool:
    """Whether so little stands between the two that they may be one: `3 ch, 5 dc in next loop,
    3 ch` where their place is named."""
    parted = len(between) == 2 and isinstance(between[-1], Chains) and last.place is not None
    return len(between) < 2 or parted


def tell_centre_of_all(items: Sequence[Item], b: Building) -> None:
    """`1 dc on the centre tr, *7 ch, …; repeat from *`: the centre of the whole round?"""
    at = next((n for n, i in enumerate(items) if isinstance(i, Repeat) and i.star), 0)
    for item in items[:at]:
        match item:
            case Stitches(place=Place(which=Which.CENTRE, targets=(Whole(), *_))):
                _tell_centre(
                    item, "the centre is that of the whole row, and what lies before it is left", b
                )


def tell_bracket(items: Sequence[Item], b: Building) -> None:
    """`1 dc, (5 ch, skip 3, 1 dc); repeat`: is the whole row repeated, or the bracket alone?"""
    match items:
        case [_, *_, Repeat(times=1, star=False) as last]:
            before = ", ".join(b.written(item) for item in items[:-1])
            again = b.written(replace(last, times=None))
            b.tell(
                "perhaps-of-bracket",
                "the whole row is repeated, and the bracket at its end is worked once each time",
                f'if only the bracket is repeated, write "{before}, {again}"',
                last.span,
            )


def _tell_shared(items: Sequence[Item], both: str, b: Building) -> None:
    # a star has no other inside it
    inside = [
        replace(item, star=False) if isinstance(item, Repeat) and item.times else item
        for item in items
    ]
    words = [b.written(item) for item in inside]
    b.tell(
        "perhaps-shared",
        f"the row begins and ends with {both}, so that two of them come together",
        f'if the last is the first of the next, write "{words[0]}, '
        f'*{", ".join(words[1:])}; repeat from *"',
        items[0].span.to(items[-1].span),
    )


def _alike(first: Stitches, last: Stitches) -> bool:
    same = (first.stitch, first.count) == (last.stitch, last.count)
    counted = last.place is not None and last.place.which is Which.NTH
    begins = first.place is not None and first.place.which is Which.FIRST
    if first.place and last.place and Which.THE in (first.place.which, last.place.which):
        return same and _kinds(first.place) == _kinds(last.place)
    alike = (first.place is None) == (last.place is None) or (_is_bare(first) and _is_bare(last))
    return same and (alike or counted or begins)


def _is_bare(item: Stitches) -> bool:
    """Whether a stitch goes into the next st, said or not."""
    match item:
        case Stitches(place=None) | Stitches(1, place=Place(Which.NEXT, (Whole(Kind("st")),), 1)):
            return True
    return False


def _in_one(item: Stitches, b: Building) -> bool:
    """Whether a step goes into `one loop`, `a loop`, `the loop`, and not into the next."""
    place = item.place
    one = place is not None and bool({"one", "a"} & b.said_in(place.span))
    return one or (place is not None and place.which is Which.THE)


def _into_spaces(item: Stitches) -> bool:
    """Whether a step goes into a whole loop of chains, or its centre."""
    targets = item.place.targets if item.place is not None else ()
    whole = all(isinstance(target, Whole | Centre) for target in targets)
    return bool(targets) and whole and all(target.of.name in SPACES for target in targets)


def _kinds(place: Place) -> list[Kind]:
    """What a place names, a space or loop of any size as one."""
    kinds = [target.of for target in place.targets]
    return [Kind("space") if kind.name in SPACES else kind for kind in kinds]


def tell_last(items: Sequence[Item], b: Building) -> None:
    """`1 dc in last tr`, `on the centre tr` in a repeat: of the row, or of each repeat?"""
    for item in items:
        match item:
            case Stitches(place=Place(which=Which.CENTRE, count=1, targets=(Whole(), *_))):
                _tell_centre(
                    item,
                    "the centre one is that of the whole row, and this is worked over and over",
                    b,
                )
            case (
                Stitches(
                    place=Place(which=Which.CENTRE | Which.LAST, targets=(Whole() | Between(), *_))
                )
                | Bracket(
                    place=Place(which=Which.CENTRE | Which.LAST, targets=(Whole() | Between(), *_))
                )
            ):
                _tell_last(item, b)


def _tell_centre(item: Stitches, message: str, b: Building) -> None:
    help_ = 'name what it is the centre of: "in centre of the 3 dc", "of next group"'
    if (run := _run_below(item, b)) is not None:
        place = Place(Which.NEXT, (Centre(run),))
        help_ = f"write {b.written(replace(item, place=place))}"
    b.tell("perhaps-last-of-each", message, help_, item.span)


def _tell_last(item: Stitches | Bracket, b: Building) -> None:
    place = item.place
    assert place is not None
    edit = b.written(replace(item, place=replace(place, which=Which.NEXT)))
    last = place.which is Which.LAST
    of = ', or name what it is the last of: "in last st of next group"'
    if not last or isinstance(place.targets[0], Between):
        of = ""
    run = None if last or not isinstance(item, Stitches) else _run_below(item, b)
    if run is not None and run.size is not None and (run.size - place.count) % 2 == 0:
        name = name_of(str(run.stitch), b.terms, b.headings.overrides)
        made = b.written(replace(item, place=None))
        of = f"; or, of each {run.size}, "
        of += f'"{made} on the centre {place.count} of the {run.size} {name}"'
    centre = "the centre one is that" if place.count == 1 else "the centre ones are those"
    which = "the last one is that" if last else centre
    b.tell(
        "perhaps-last-of-each",
        f"{which} of the whole row, and this is worked over and over",
        f"write {edit}, behind the skip of those before it{of}",
        item.span,
    )


def _run_below(item: Stitches, b: Building) -> Kind | None:
    """The run of so many of a stitch that the row below makes over and over, of which a place of
    that stitch may be the centre; None where there is none such."""
    target = item.place.targets[0] if item.place is not None else None
    if not isinstance(target, Whole) or target.of.name not in STITCHES or b.below is None:
        return None
    return stands_in(b.below, target.of.name, ordinal=False)


def _tell_nothing_missed(items: Sequence[Item], b: Building) -> None:
    """`4 dc, 2 ch, 1 dc, 2 ch; repeat`: is as much missed as there are chains?

    Only stitches without a place are looked at, and chains that hold them apart.
    """
    gaps = [
        chains
        for before, chains, behind in zip(
            (items[-1], *items[:-1]), items, (*items[1:], items[0]), strict=True
        )
        if isinstance(chains, Chains) and chains.count > 1 and _bare(before) and _bare(behind)
    ]
    missed = [chains for chains, skip in pairwise((*items, *items)) if _missed(chains, skip)]
    several = len(gaps) > 1 or missed or max(map(_bare, items)) > 3
    if gaps and several:
        n = gaps[0].count
        b.tell(
            "perhaps-nothing-missed",
            f"nothing is missed under ch {n}: the next stitch is taken to stand right behind "
            "the one before",
            f"write ch {n}, skip {n} where so many are missed under the chains",
            gaps[0].span,
        )


def _bare(item: Item) -> int:
    """How many stitches without a place are made."""
    return item.count if isinstance(item, Stitches) and item.place is None else 0


def _missed(chains: Item, skip: Item) -> bool:
    return isinstance(chains, Chains) and isinstance(skip, Skip)
