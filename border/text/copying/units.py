"""What goes into one place of a row: a step with its place, and all that goes into the same."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.copying.made import Items
from border.text.steps import steps, walk
from border.text.tree import (
    AsTheyCome,
    Begin,
    Bracket,
    Chains,
    Item,
    Named,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Which,
)

_MANY = 64
"""No list that is said of a copy has more steps."""


class Leaf(Struct, frozen=True):
    """A step outside repeats: its number in the order of the text, and which list it stands in.

    `again`: it is worked over and over. `to_last`: in a repeat that goes to the last ones.
    """

    n: int
    item: Item
    of: int
    again: bool = False
    to_last: bool = False


class Unit(Struct, frozen=True):
    """The steps that go into one place, with the chains between them.

    `own`: the first of them says which, and no other does. `missed`: the skips right before it.
    """

    leaves: tuple[Leaf, ...]
    own: bool = True
    missed: frozenset[int] = frozenset()

    @property
    def opener(self) -> Leaf:
        return self.leaves[0]

    @property
    def place(self) -> Place | None:
        """The place that it says."""
        return place_of(self.opener.item)

    @property
    def stitches(self) -> frozenset[str]:
        """The stitches made in it."""
        found = {m for leaf in self.leaves for i in walk((leaf.item,)) for m in _made(i)}
        return frozenset(found)

    @property
    def content(self) -> tuple[Named, ...] | None:
        """All that is made in it, as a list; None where that is too long, or not one list."""
        if len({leaf.of for leaf in self.leaves}) > 1:
            return None
        found = _content(tuple(leaf.item for leaf in self.leaves))
        return None if len(found) > _MANY else merged(found)


def place_of(item: Item) -> Place | None:
    """The place that a step says."""
    return item.place if isinstance(item, Stitches | Bracket | StartChain | Begin) else None


def _made(item: Item) -> tuple[str, ...]:
    if isinstance(item, Stitches):
        return (item.stitch,)
    return (item.stands_for,) if isinstance(item, StartChain) and item.stands_for else ()


def merged(named: Sequence[Named]) -> tuple[Named, ...]:
    """A list with what stands side by side and is the same as one: `2 dc, 2 dc` is 4 dc."""
    found: list[Named] = []
    for one in named:
        if found and found[-1].of == one.of:
            one = Named(one.of, (found.pop().number or 0) + (one.number or 0))
        found.append(one)
    return tuple(found)


def _content(items: Items) -> list[Named]:
    """What steps make one after the other, up to one more than can be said."""
    found: list[Named] = []
    for item in items:
        match item:
            case Chains(number):
                found.append(Named("ch", number))
            case Picots(number):
                found.append(Named("picot", number))
            case Stitches(number, stitch) if item.between:
                apart = [Named(stitch, item.cluster or 1), Named("ch", item.between)]
                found += (apart * min(number, _MANY))[:-1]
            case Stitches(number, stitch):
                found.append(Named(stitch, number * (item.cluster or 1)))
            case StartChain(stands_for=str(stitch), then=then):
                found += [Named(stitch, 1), Named("ch", then)][: 1 + (then > 0)]
            case Bracket(inner):
                found += _content(inner)
            case Repeat(inner, times):
                found += _content(inner) * min(times or 1, _MANY + 1)
        if len(found) > _MANY:
            break
    return found[: _MANY + 1]


# --- the steps of a row, in the order of the text ---------------------------------------------


class Group(Struct, frozen=True):
    """A repeat: its steps; `again`: they are worked more than once."""

    inner: tuple[Leaf | Group, ...]
    again: bool


Nodes = tuple[Leaf | Group, ...]


def numbered(
    items: Items, numbers: Iterator[int], *, again: bool = False, to_last: bool = False
) -> Nodes:
    """The steps with their numbers; those of a repeat as a group."""
    of = next(numbers)
    found: list[Leaf | Group] = []
    for item in items:
        if isinstance(item, Repeat):
            over = again or item.times != 1
            last = to_last or item.to_last is not None
            inner = numbered(item.items, numbers, again=over, to_last=last)
            found.append(Group(inner, item.times != 1))
        else:
            found.append(Leaf(next(numbers), item, of, again, to_last))
    return tuple(found)


def rewritten(items: Items, numbers: Iterator[int], others: Mapping[int, Item | None]) -> Items:
    """The steps with others in the place of some, by their numbers; None leaves one out."""
    next(numbers)
    found: list[Item] = []
    for item in items:
        if isinstance(item, Repeat):
            inner = rewritten(item.items, numbers, others)
            if inner:
                found.append(replace(item, items=inner))
            continue
        other = others.get(next(numbers), item)
        if other is not None:
            found.append(other)
    return tuple(found)


def units(nodes: Nodes) -> list[Unit]:
    """All that goes into one place each, in the order of the text."""
    missed: dict[int, frozenset[int]] = {}
    _passed(nodes, frozenset(), missed)
    found: list[list[Leaf]] = []
    own: list[bool] = []
    between: list[Leaf] = []
    for leaf in _flat(nodes):
        item, place = leaf.item, place_of(leaf.item)
        if isinstance(item, Chains | Picots):
            between.append(leaf)
            continue
        same = place is not None and place.which is Which.SAME
        begun = bool(found) and len(found[-1]) == 1 and isinstance(found[-1][0].item, Begin)
        same = same or (begun and isinstance(item, StartChain) and place is None)
        if same and found:
            found[-1] += [*between, leaf]
        elif is_worked(item) or isinstance(item, Begin):
            found.append([leaf])
            skipped = place is not None and place.which is Which.SKIPPED
            own.append(not (same or skipped or isinstance(item, AsTheyCome)))
        if not isinstance(item, Skip):
            between = []
    return [
        Unit(tuple(leaves), sound, missed.get(leaves[0].n, frozenset()))
        for leaves, sound in zip(found, own, strict=True)
    ]


def is_worked(item: Item) -> bool:
    """Whether a step works stitches into a place."""
    if isinstance(item, StartChain):
        return item.stands_for is not None
    return isinstance(item, Stitches | Bracket | AsTheyCome)


def looks_back(items: Items) -> bool:
    """Whether a repeat begins in the same place as the step before, now one and now another."""
    for item in walk(items):
        if not isinstance(item, Repeat) or item.times == 1:
            continue
        first = next((i for i in steps(item.items) if is_worked(i)), None)
        place = place_of(first) if first is not None else None
        if place is not None and place.which is Which.SAME:
            return True
    return False


def _flat(nodes: Nodes) -> Iterator[Leaf]:
    for node in nodes:
        if isinstance(node, Group):
            yield from _flat(node.inner)
        else:
            yield node


def _passed(
    nodes: Nodes, passed: frozenset[int], missed: dict[int, frozenset[int]]
) -> frozenset[int]:
    """For each step that is worked the skips right before it; and those at the end."""
    for node in nodes:
        if isinstance(node, Group):
            coming = passed | _at_end(node.inner)[0] if node.again else passed
            passed = _passed(node.inner, coming, missed)
        elif isinstance(node.item, Skip):
            passed = passed | {node.n}
        elif _goes_on(node.item):
            missed[node.n] = passed
            passed = frozenset()
    return passed


def _at_end(nodes: Nodes) -> tuple[frozenset[int], bool]:
    """The skips that steps end with, and whether they work into something before these."""
    found: frozenset[int] = frozenset()
    for node in reversed(nodes):
        if isinstance(node, Group):
            more, worked = _at_end(node.inner)
            found |= more
        else:
            found |= {node.n} if isinstance(node.item, Skip) else frozenset()
            worked = _goes_on(node.item)
        if worked:
            return found, True
    return found, False


def _goes_on(item: Item) -> bool:
    """Whether a step works into a place of its own."""
    place = place_of(item)
    same = place is not None and place.which is Which.SAME
    return (is_worked(item) or isinstance(item, Begin)) and not same
