"""A row that works on "the" stitch where these stand in groups: on one of them, on each, or on one
that stands alone?"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.amounts import in_terms
from border.text.tree import (
    SPACES,
    ST,
    Bracket,
    Chains,
    Item,
    Kind,
    Picots,
    Place,
    Skip,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.text.written import write_item
from border.working.sites import SiteFinder
from border.working.stations import Sites


def on_grouped(items: Sequence[Item], finder: SiteFinder) -> tuple[Stitches, int] | None:
    """The first step of a repeat that goes on "the" stitch, where such stitches stand in groups
    of so many and the repeat does not name as many; None if there is none."""
    if not all(isinstance(item, Stitches | Bracket | Chains | Picots | Skip) for item in items):
        return None
    placed = [item for item in items if isinstance(item, Stitches | Bracket)]
    on_one = [item for item in placed if _on_the_stitch(item)]
    if not all(item in on_one or _on_chains(item) for item in placed):
        return None
    for item in on_one:
        size = _group_size(item, finder)
        assert isinstance(item, Stitches)
        several = item.count == size or size != sum(other.place == item.place for other in on_one)
        if size > 1 and several and not _passes(items, item, size):
            return item, size
    return None


def _on_the_stitch(item: Stitches | Bracket) -> bool:
    """Whether a step goes on `the` stitch; of several of the same, as `3 dc on the dc`, the text
    itself is asked."""
    match item:
        case Stitches(count, stitch, Place(Which.THE, (Whole(Kind(name)),), 1)):
            return name in STITCHES and (count == 1 or name != stitch)
        case _:
            return False


def _on_chains(item: Stitches | Bracket) -> bool:
    targets = item.place.targets if item.place is not None else ()
    return bool(targets) and all(target.of.name in (*SPACES, "ch") for target in targets)


def _passes(items: Sequence[Item], item: Stitches, size: int) -> bool:
    """Whether the rest of the group is missed: `1 dc on the tr, miss 2`."""
    at = next(n for n, one in enumerate(items) if one is item)
    beside = [*items[max(0, at - 1) : at], *items[at + 1 : at + 2]]
    return any(isinstance(one, Skip) and one.count < size for one in beside)


def _group_size(item: Stitches | Bracket, finder: SiteFinder) -> int:
    """How many of the stitches that a step names stand side by side everywhere, chains between
    one group and the next; 0 where they are not alike, or all one group."""
    assert item.place is not None
    kind = item.place.targets[0].of
    runs = finder.sites(Whole(Kind("run", None, kind.name)))
    widths = {b - a for a, b in zip(runs.a, runs.b, strict=True)}
    alike = len(runs) > 1 and len(widths) == 1
    return len(finder.sites(Whole(kind))) // len(runs) if alike else 0


def beside_alone(
    item: Stitches, entered: Sequence[Target], at: int, finder: SiteFinder, *, apart: bool
) -> Kind | None:
    """The stitch that stands alone further on, where a step on "the" stitch takes one of the very
    group that was worked into last; else None. `entered`: what was; `at`: the cursor. `apart`:
    chains have been made since, so that "the next" may not be the one right behind."""
    next_ = replace(item.place, which=Which.THE) if apart and item.place is not None else item.place
    if not _on_the_stitch(replace(item, place=next_)) or item.place is None:
        return None
    (target,) = item.place.targets
    if not entered or target in entered or Whole(ST) in entered:
        return None
    name = target.of.name
    stitches, runs, shells = (
        finder.sites(Whole(kind)) for kind in (target.of, Kind("run", None, name), Kind("shell"))
    )
    i = stitches.after(at)
    end = max(_end_round(runs, at), _end_round(shells, at))
    if i == len(stitches) or stitches.a[i] >= end:
        return None  # it is of no group that the work stands in
    behind = range(runs.after(end), len(runs))
    alone = any(_single(runs.a[r], runs.b[r], stitches) for r in behind)
    return Kind("run", 1, name) if alone else None


def _end_round(sites: Sites, at: int) -> int:
    """Behind the site that the cursor stands inside of; 0 where it stands in none."""
    i = sites.after(at) - 1
    return sites.b[i] if i >= 0 and sites.b[i] > at else 0


def _single(a: int, b: int, stitches: Sites) -> bool:
    """Whether a run from `a` to `b` is one stitch."""
    i = stitches.after(a)
    return i < len(stitches) and stitches.b[i] == b


def alone_words(item: Stitches, kind: Kind, terms: str) -> tuple[str, str]:
    """What is said of such a step, and what to write instead."""
    one = replace(item, place=Place(Which.NEXT, (Whole(kind),)))
    message = "this goes on the next one, which is of the group worked into before it"
    return message, f'write "{write_item(one, terms)}" if one that stands alone is meant'


def group_words(item: Stitches, size: int, terms: str) -> tuple[str, str]:
    """What is said of such a step, and what to write instead."""
    assert item.place is not None
    name = in_terms(item.stitch, terms)
    count = 1 if item.count == size else item.count
    each = replace(item.place, which=Which.NEXT, count=size, each=True)
    one = replace(item, place=replace(item.place, which=Which.NEXT))
    ways = [write_item(way, terms) for way in (replace(item, count=count, place=each), one)]
    message = f"each repeat works {name} on one stitch here, and these stand in groups of {size}"
    return message, f'write "{ways[0]}" if it goes on each of a group, or "{ways[1]}" if on one'
