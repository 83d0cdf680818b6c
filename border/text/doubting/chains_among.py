"""A repeat that takes as many st as stand together below: are the chains between them counted?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.nodes import Building
from border.text.steps import walk
from border.text.tree import (
    ST,
    Chains,
    Item,
    Kind,
    Place,
    Skip,
    Stitches,
    Which,
    Whole,
)


class _Run(Struct, frozen=True):
    """So many stitches side by side between chains; `stitch`: where all are of one kind."""

    count: int
    stitch: str


def tell_chains_among(items: Sequence[Item], b: Building) -> None:
    """`6 dc in next 6 st, 3 ch; repeat` over groups of 6 dc with chains between.

    Not where the first step names its stitches, and so passes over the chains.
    """
    steps = [item for item in items if not isinstance(item, Chains)]
    counts = [count for item in steps if (count := _taken(item)) is not None]
    plain = len(counts) == len(steps) < len(items)
    if (
        not b.headings.chains_count
        or b.below is None
        or not plain
        or not steps
        or not _counts_chains(steps[0])
    ):
        return
    missed = any(isinstance(item, Skip) for item in steps)
    run = next((run for run in _runs(b.below.items) if run.count == sum(counts)), None)
    if run is None or not run.stitch or (missed and run.count < 3):
        return
    edit = ", ".join(b.written(_named(item, run.stitch)) for item in items)
    these = "these are" if run.count == 1 else f"these {run.count} are"
    groups = "the stitches" if run.count == 1 else f"the groups of {run.count}"
    b.tell(
        "perhaps-nothing-missed",
        f"{these} counted one after another, and the chains between {groups} of the row below "
        "among them",
        f"write {edit} if the chains are passed over",
        items[0].span.to(items[-1].span),
    )


def _taken(item: Item) -> int | None:
    """How many a step takes or misses one after another; None where it is no such step."""
    match item:
        case Skip(count=count, target=None | Whole()):
            return count
        case Stitches(place=Place(which=Which.NEXT, count=count, targets=(Whole(),))):
            return count
        case Stitches(count=count, place=None, together=False):
            return count
    return None


def _counts_chains(item: Item) -> bool:
    """Whether a chain is one of what a step takes: `in next 6 st`, `skip 1`."""
    match item:
        case Skip(target=None) | Stitches(place=None):
            return True
        case Stitches(place=Place(which=Which.NEXT, targets=(Whole(of),))):
            return of == ST
    return False


def _named(item: Item, stitch: str) -> Item:
    """The step with the name of the stitch that it goes into, or misses."""
    of = Whole(Kind(stitch))
    if isinstance(item, Skip) and item.target is None:
        return replace(item, target=of)
    if isinstance(item, Stitches) and _counts_chains(item):
        bare = Place(Which.NEXT, (of,), item.count, each=item.count > 1)
        count = item.count if item.place else 1
        place = replace(item.place, targets=(of,)) if item.place else bare
        return replace(item, count=count, place=place)
    return item


def _runs(items: Sequence[Item]) -> Iterator[_Run]:
    """What stands together in a row between chains."""
    run: Counter[str] = Counter()
    for item in walk(items):
        if isinstance(item, Stitches):
            run[item.stitch] += _number(item)
        if isinstance(item, Chains) or (isinstance(item, Stitches) and item.parted):
            yield _Run(run.total(), next(iter(run)) if len(run) == 1 else "")
            run = Counter()


def _number(item: Stitches) -> int:
    """How many stitches a step makes each time."""
    place = item.place
    if place is None or place.which in (Which.NTH, Which.EVERY):
        return item.count
    return item.count * place.count if place.each else max(item.count, place.count)
