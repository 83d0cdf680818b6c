"""What a copied row works in another place, or in another stitch ("Copies with a difference").

Only what can be said exactly: what is asked or told has no count to agree on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from msgspec.structs import replace

from border.text.tree import (
    AsTheyCome,
    Begin,
    Bracket,
    Chains,
    Exchanged,
    Item,
    Moved,
    Picots,
    Place,
    Repeat,
    StartChain,
    Stitches,
    Which,
)

Items = tuple[Item, ...]
Path = tuple[int, ...]
Made = list[tuple[str, int]]


@dataclass
class Handful:
    """What goes into one place: each step by the way to it through the repeats.

    `again`: it is worked over and over.
    """

    steps: list[tuple[Path, Item]]
    again: bool

    def made(self) -> Made:
        """What it makes, one after the other; what is the same side by side is one."""
        found: Made = []
        for of, number in (m for _, item in self.steps for m in _made(item)):
            if found and found[-1][0] == of:
                number += found.pop()[1]
            found.append((of, number))
        return found


def worked_elsewhere(items: Items, moves: list[Moved], again: bool) -> Items:
    """The steps with those in another place that the copy names; `again`: the row is repeated."""
    places: dict[Path, Place] = {}
    for one in moves:
        for handful in handfuls(items):
            if not _is_meant(one, handful):
                continue
            (path, first), *others = handful.steps
            alike = again or handful.again
            said = replace(one.place, count=_one_on_each(one, first) or one.place.count)
            places[path] = _other_place(getattr(first, "place", None), said, alike)
            for other, item in others:
                if is_same(item):
                    places[other] = Place(Which.SAME, ())
    return _with_places(items, places, ())


def _is_meant(one: Moved, handful: Handful) -> bool:
    made = handful.made()
    if not one.named:
        return True
    if len(one.named) > 1:
        return made == [(thing.of, thing.number) for thing in one.named]
    of, number = one.named[0].of, one.named[0].number
    if of not in [of for of, _ in made]:
        return False
    if number is None:
        return True
    each = {n for _, item in handful.steps for n in _of_each_step(item, of)}
    in_one_list = len({path[:-1] for path, _ in handful.steps}) == 1
    return each == {number} or (in_one_list and sum(n for o, n in made if o == of) == number)


def _one_on_each(one: Moved, step: Item) -> int:
    """How many go one on each of their like: `dc on dc`, of a step that makes several."""
    like = len(one.named) == 1 and one.named[0].number is None
    like = like and one.named[0].of in [target.of.name for target in one.place.targets]
    return step.count if like and isinstance(step, Stitches) else 0


def _of_each_step(item: Item, of: str) -> Iterator[int]:
    match item:
        case Stitches(stitch=stitch) if stitch == of:
            yield item.count * max(item.cluster, 1)
        case StartChain(stands_for=stitch) if stitch == of:
            yield 1
        case Bracket(items=inner) | Repeat(items=inner):
            for one in inner:
                yield from _of_each_step(one, of)


def _other_place(old: Place | None, said: Place, again: bool) -> Place:
    """Which and how many stay, but for `each`, and for so many one by one."""
    if old is None:
        return said if said.which is Which.EACH and not again else replace(said, which=Which.NEXT)
    if said.count > 1:
        return replace(said, which=Which.NEXT if old.which is Which.THE else old.which)
    if said.which is Which.EACH and not again and old.which is not Which.EVERY:
        return said
    return replace(old, targets=said.targets)


def _with_places(items: Items, places: dict[Path, Place], way: Path) -> Items:
    found: list[Item] = []
    for n, item in enumerate(items):
        if isinstance(item, Repeat):
            item = replace(item, items=_with_places(item.items, places, (*way, n)))
        elif (*way, n) in places:
            assert isinstance(item, Stitches | Bracket | StartChain | Begin)
            item = replace(item, place=places[*way, n])
        found.append(item)
    return tuple(found)


# --- what goes into one place -------------------------------------------------------------------


def handfuls(items: Items) -> list[Handful]:
    """All that a row works, place by place."""
    found: list[Handful] = []
    loose: list[tuple[Path, Item]] = []
    for path, item, again in _one_by_one(items, (), again=False):
        if isinstance(item, Chains | Picots):
            loose.append((path, item))
        elif found and (is_same(item) or _begun(found[-1], item)):
            found[-1].steps += [*loose, (path, item)]
            loose = []
        elif _is_worked(item):
            found.append(Handful([(path, item)], again))
            loose = []
    return found


def _one_by_one(items: Items, way: Path, again: bool) -> Iterator[tuple[Path, Item, bool]]:
    for n, item in enumerate(items):
        if isinstance(item, Repeat):
            yield from _one_by_one(item.items, (*way, n), again or item.times != 1)
        else:
            yield (*way, n), item, again


def _is_worked(item: Item) -> bool:
    if isinstance(item, StartChain):
        return item.stands_for is not None
    return isinstance(item, Stitches | Bracket | AsTheyCome | Begin)


def is_same(item: Item) -> bool:
    """Whether a step goes into the same place as the one before it."""
    match item:
        case Stitches(place=Place(which=Which.SAME)) | Bracket(place=Place(which=Which.SAME)):
            return True
    return False


def _begun(before: Handful, item: Item) -> bool:
    """Whether chains stand for a stitch in the place that the row is begun in."""
    only = [step for _, step in before.steps]
    return isinstance(item, StartChain) and item.place is None and _is_begin(only)


def _is_begin(only: list[Item]) -> bool:
    return len(only) == 1 and isinstance(only[0], Begin)


def _made(item: Item) -> Made:
    match item:
        case Chains(number):
            return [("ch", number)]
        case Picots(number):
            return [("picot", number)]
        case Stitches(number, stitch, between=int(chains)) if chains:
            one = [(stitch, max(item.cluster, 1))]
            return one + [("ch", chains), *one] * (number - 1)
        case Stitches(number, stitch):
            return [(stitch, number * max(item.cluster, 1))]
        case StartChain(stands_for=str(stitch), then=then):
            return [(stitch, 1)] + [("ch", then)] * (then > 0)
        case Bracket(items=inner):
            return [made for one in inner for made in _made(one)]
        case Repeat(items=inner, times=int(times)):
            return [made for one in inner for made in _made(one)] * times
    return []


# --- another stitch -----------------------------------------------------------------------------


def in_other_stitches(items: Items, exchanges: list[Exchanged]) -> Items:
    """The steps with other stitches made; the places stay as they are called."""
    others = {one.instead_of: one.stitch for one in exchanges}
    found: list[Item] = []
    for item in items:
        if isinstance(item, Stitches):
            item = replace(item, stitch=others.get(item.stitch, item.stitch))
        elif isinstance(item, Repeat | Bracket | AsTheyCome):
            item = replace(item, items=in_other_stitches(item.items, exchanges))
        found.append(item)
    return tuple(found)
