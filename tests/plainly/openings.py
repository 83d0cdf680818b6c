"""Where a whole row begins and, closed, ends ("Where a closed round ends", "Start chains")."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import islice

from border.text.tree import (
    ST,
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
from plainly.cursor import Cursor, walk
from plainly.fabric import Fabric
from plainly.scopes import BEFORE_ALL, Window
from plainly.sites import Site, sites

BARE: tuple[Target, ...] = (Whole(ST),)


def named(item: Item) -> tuple[Target, ...]:
    """The sites that a step names: a stitch or a skip without a place names `st`."""
    match item:
        case Stitches(place=None) | Skip(target=None) | StartChain(stands_for=str(), place=None):
            return BARE
        case Skip(target=target) if target is not None:
            return (target,)
        case StartChain(stands_for=None):
            return ()
        case Stitches() | Bracket() | Begin() | StartChain():
            assert item.place is not None
            bound = item.place.which in (Which.SAME, Which.SKIPPED)
            return () if bound else item.place.targets
        case AsTheyCome(parts):
            return tuple(target for part in parts for target in named(part))
        case _:
            return ()


def steps(items: tuple[Item, ...]) -> Iterator[Item]:
    """The steps in the order of the text, repeats opened; a bracket in a place is one step."""
    for item in items:
        if isinstance(item, Repeat):
            yield from steps(item.items)
        else:
            yield item


def leading(items: tuple[Item, ...]) -> tuple[Target, ...]:
    """Repeats: the leading kind is that of the first site named."""
    return next((targets for item in steps(items) if (targets := named(item))), ())


def row_window(
    fabric: Fabric, items: tuple[Item, ...], chains_count: bool
) -> tuple[Window, Site | None]:
    """The window of a whole row, and the site that its start chain goes into, if straddling."""
    line = fabric.line
    opening, straddling = _opening(fabric, items, chains_count)
    if not line.closed:
        # Only where it is begun further on; what lies before that is left unworked.
        begun = opening if any(isinstance(item, Begin) for item in items) else None
        start = begun.start if begun else BEFORE_ALL
        window = Window(fabric, chains_count, "row", end_at=line.n, start=start, opening=begun)
        return window, None
    start = opening.start if opening else Fraction(0)
    window = Window(
        fabric,
        chains_count,
        "row",
        end_at=(opening.at if opening else 0) + line.n,
        start=start,
        opening=opening,
        point_first=_works_the_point(fabric, items, chains_count, start, opening),
    )
    return window, straddling


def _works_the_point(
    fabric: Fabric,
    items: tuple[Item, ...],
    chains_count: bool,
    start: Fraction,
    opening: Site | None,
) -> bool:
    """Whether the first step of a round goes into a point that lies just where it begins."""
    begun_in_point = opening is not None and opening.is_point
    for item in steps(items):
        match item:
            case Begin():
                continue
            case StartChain(stands_for=str(), place=None):
                return begun_in_point
            case Stitches(place=Place(which=Which.SAME)) | Bracket(place=Place(which=Which.SAME)):
                return begun_in_point
        if targets := named(item):
            listed = [site for target in targets for site in sites(fabric, target, chains_count)]
            return any(
                site.is_point and (site.start - start) % fabric.length == 0 for site in listed
            )
    return begun_in_point


def _opening(
    fabric: Fabric, items: tuple[Item, ...], chains_count: bool
) -> tuple[Site | None, Site | None]:
    """The site that a closed round begins with; and again, if the start chain uses it up."""

    def listed(targets: tuple[Target, ...]) -> list[list[Site]]:
        return [sites(fabric, target, chains_count) for target in targets]

    def nth(place: Place) -> Site | None:
        found = walk(listed(place.targets), Cursor(Fraction(0)))
        return next(islice(found, place.count - 1, None), None)

    for item in steps(items):
        if isinstance(item, Begin):
            if item.place.which is Which.THE:
                for found in listed(item.place.targets):
                    if straddling := _straddling(fabric, found):
                        return straddling, None
            return nth(item.place), None
        if isinstance(item, StartChain) and item.stands_for and item.place is None:
            for target in _worked_kinds(items):
                if straddling := _straddling(fabric, sites(fabric, target, chains_count)):
                    return straddling, straddling
        if targets := named(item):
            return next(walk(listed(targets), Cursor(Fraction(0))), None), None
    return None, None


def _worked_kinds(items: tuple[Item, ...]) -> list[Target]:
    """Every X that a row works into, or into a part of."""
    return [
        Whole(target.of)
        for item in steps(items)
        if isinstance(item, Stitches | Bracket | AsTheyCome)
        for target in named(item)
    ]


def _straddling(fabric: Fabric, found: list[Site]) -> Site | None:
    """A site, or a part or point of a site, that straddles the start of a closed round."""
    for site in found:
        for lap in (-1, 0):
            moved = site.moved(lap, fabric)
            whole = moved.whole or moved
            if whole.start < 0 < whole.end:
                return moved
    return None
