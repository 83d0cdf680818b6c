"""Walks over the steps of a text: what it works into, names first, and can move past."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from border.text.tree import (
    ST,
    Arch,
    AsTheyCome,
    Begin,
    Bracket,
    Item,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Which,
    Whole,
)

OPEN_PLACES = (Which.EACH, Which.EVERY)
_BOUND = (Which.SAME, Which.SKIPPED)


def walk(items: Sequence[Item]) -> Iterator[Item]:
    """Every step in the order of the text, brackets and repeats before what is inside them."""
    for item in items:
        yield item
        if isinstance(item, Repeat | Bracket | AsTheyCome | Arch):
            yield from walk(item.items)


def without_brackets(items: Sequence[Item]) -> Iterator[Item]:
    """The steps, those of a bracket that is worked once among them: `(ch 4)` is `ch 4`."""
    for item in items:
        if isinstance(item, Repeat) and item.times == 1:
            yield from without_brackets(item.items)
        else:
            yield item


def alike(item: Item) -> Item:
    """A step with `first` read as `next`, and other words for one place as one."""
    match item:
        case Stitches(place=Place() as place) | Bracket(place=place):
            if place.which in (Which.FIRST, Which.THE):
                item = replace(item, place=replace(place, which=Which.NEXT))
    match item:  # `1 dc in each of next 3 dc` is `3 dc in next 3 dc`
        case Stitches(1, place=Place(Which.NEXT, count=count, each=True) as place) if not (
            item.parted or item.between or item.together
        ):
            item = replace(item, count=count, place=replace(place, each=False))
    if isinstance(item, Repeat | Bracket):
        item = replace(item, items=tuple(map(alike, item.items)))
    return item


def next_for_first(item: Item) -> Item:
    """A step of a row that is its own repeat: `first X` is that of every repeat, its next."""
    if isinstance(item, Repeat | Bracket):
        item = replace(item, items=tuple(map(next_for_first, item.items)))
    match item:
        case Stitches(place=Place(which=Which.FIRST) as place):
            return replace(item, place=replace(place, which=Which.NEXT))
        case Bracket(place=Place(which=Which.FIRST) as place):
            return replace(item, place=replace(place, which=Which.NEXT))
        case _:
            return item


def is_open(item: Item) -> bool:
    """Whether a step is an open-ended repeat in itself."""
    match item:
        case Repeat(times=None):
            return True
        case AsTheyCome():
            return True
        case Stitches(place=Place(which=which)) | Bracket(place=Place(which=which)):
            return which in OPEN_PLACES
        case _:
            return False


def named_targets(item: Item) -> tuple[Target, ...]:
    """The sites that one step names for itself: none for chains, `same` or `skipped`."""
    match item:
        case Stitches(place=None) | StartChain(stands_for=str(), place=None):
            return (Whole(ST),)
        case Skip(target=target):
            return (target or Whole(ST),)
        case Stitches() | StartChain(stands_for=str()) | Bracket() | Begin() | AsTheyCome():
            place = item.place
            return () if place is None or place.which in _BOUND else place.targets
        case _:
            return ()


def steps(items: Sequence[Item]) -> Iterator[Item]:
    """Every step that names its own place: the inside of a placed bracket names none."""
    for item in items:
        if isinstance(item, Repeat):
            yield from steps(item.items)
        else:
            yield item


def leading_targets(items: Sequence[Item]) -> tuple[Target, ...]:
    """The targets of the first place that the steps name (none where they name none)."""
    return next((t for item in steps(items) if (t := named_targets(item))), ())


def worked_targets(items: Sequence[Item]) -> tuple[Target, ...]:
    """All that the steps work into, each once, in the order of the text; skips left out.

    `same` is what was worked last or begun in, whatever it is called.
    """
    found: dict[Target, None] = {}
    last: tuple[Target, ...] = ()
    for item in steps(items):
        targets = named_targets(item)
        if isinstance(item, Stitches | Bracket) and item.place is not None:
            same = item.place.which is Which.SAME
            targets = last if same else item.place.targets
        if not targets or isinstance(item, Skip):
            continue
        last = targets
        if not isinstance(item, Begin):
            found.update(dict.fromkeys(targets))
    return tuple(found)


def passes_something(items: Sequence[Item], at_joint: bool = False) -> bool:
    """Whether working the steps is bound to move the cursor."""
    for item in steps(items):
        if isinstance(item, Begin) or not named_targets(item):
            continue
        if not (at_joint and isinstance(item, Stitches) and item.place is None):
            return True
    return False
