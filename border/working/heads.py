"""Where a row begins: the spot of its first place, and what that place is."""

from __future__ import annotations

from msgspec import Struct

from border.text.steps import named_targets, steps, worked_targets
from border.text.tree import (
    Begin,
    Between,
    Bracket,
    Item,
    Place,
    StartChain,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.working.cursor import Site
from border.working.sites import SiteFinder
from border.working.stations import merged
from border.working.windows import BEFORE_ALL, RowWindow


class Head(Struct, frozen=True):
    """The window of a row, and the site that it has begun in or that its start chain uses up."""

    window: RowWindow
    begun: Site | None = None
    straddler: Site | None = None


def row_head(finder: SiteFinder, items: tuple[Item, ...]) -> Head:
    """Where a row that is one text begins."""
    begin = next((i for i in items[:1] if isinstance(i, Begin)), None)
    if begin is not None:
        site = _begun(finder, begin.place)
        spot = _spot(finder, site or (0, 0, 0), items[1:])  # no such site: at the start
        return Head(_window(finder, spot), begun=site)
    if not finder.fabric.line.closed:
        return Head(_window(finder, None))
    if _opens_with_a_stitch(items):
        for target in worked_targets(items):
            if (site := straddling(finder, target)) is not None:
                return Head(_window(finder, site), straddler=site)
    return Head(_window(finder, _first(finder, items)))


def _opens_with_a_stitch(items: tuple[Item, ...]) -> bool:
    """Whether a start chain, in no place of its own, is the first that is worked into one."""
    first = next((i for i in steps(items) if named_targets(i)), None)
    return isinstance(first, StartChain) and first.place is None


def straddling(finder: SiteFinder, target: Target) -> Site | None:
    """The site of a kind that straddles the start of a closed fabric, if one does."""
    s = finder.sites(Whole(target.of))
    if not finder.fabric.line.closed or not s.b or s.b[-1] <= finder.round:
        return None
    return s.a[-1] - finder.round, s.b[-1] - finder.round, s.p[-1] - finder.fabric.length


def _window(finder: SiteFinder, site: Site | None) -> RowWindow:
    fabric = finder.fabric
    if not fabric.line.closed:
        return RowWindow(finder, site[0] if site else 0, fabric.length)
    head, position = (site[0], site[2]) if site else (0, 0)
    return RowWindow(finder, head, position + fabric.length, round=True)


def _first(finder: SiteFinder, items: tuple[Item, ...]) -> Site | None:
    """The first site of the first place that the text names, worked or skipped."""
    targets: tuple[Target, ...] = next((t for i in steps(items) if (t := named_targets(i))), ())
    if not targets:
        return None
    if (point := _point_at_start(finder, targets)) is not None:
        return point
    s = merged([finder.sites(t) for t in targets])
    return (s.a[0], s.b[0], s.p[0]) if s.a else None


def _point_at_start(finder: SiteFinder, targets: tuple[Target, ...]) -> Site | None:
    """A point that lies just at the start: nothing is worked yet, so it comes first."""
    if not finder.fabric.line.closed:
        return None
    for target in targets:
        s = finder.sites(target)
        at = s.after(finder.at_start)
        if not isinstance(target, Whole) and at < len(s) and s.a[at] == finder.at_start:
            return s.a[at] - finder.round, s.b[at] - finder.round, s.p[at] - finder.fabric.length
    return None


def _begun(finder: SiteFinder, place: Place) -> Site | None:
    """The site that a round is begun in."""
    if not place.targets:
        return None
    if place.which is Which.THE:
        for target in place.targets:
            if (site := _straddling_named(finder, target)) is not None:
                return site
    s = merged([finder.sites(t) for t in place.targets])
    seen = s.ahead(BEFORE_ALL)  # of a union, those that cover the same are one
    at = place.count - 1 if place.which is Which.NTH else 0
    if place.which is Which.LAST:
        at = len(seen) - 1
    elif (point := _point_at_start(finder, place.targets)) is not None:
        if at == 0:
            return point
        at = at - 1 if at < len(seen) else len(seen)  # it is the first, and listed as the last
    if not 0 <= at < len(seen):
        return None
    i = seen[at]
    return s.a[i], s.b[i], s.p[i]


def _spot(finder: SiteFinder, begun: Site, items: tuple[Item, ...]) -> Site:
    """Where a row lies that is begun in a site: just before that, and so before a point there
    if its first step goes into the point. Begun in a point that is passed, it starts behind it.
    """
    a, b, p = begun
    is_point = a % finder.step in (1, 3)
    if not is_point and a % finder.step:
        return begun  # a joint
    point = a if is_point else a - finder.step + 3
    # a step that nothing is there for runs out, and nothing has been worked behind it either
    places = (i for i in steps(items) if _same(i) or _is_there(finder, named_targets(i)))
    first = next(places, None)
    if is_point and (first is None or _same(first)):
        return begun
    for target in named_targets(first) if first else ():
        at = point % finder.round
        s = finder.sites(target)
        if not isinstance(target, Whole) and at in s.a[s.after(at) : s.after(at) + 1]:
            return point, point + 1, p
    return (b, b, p) if is_point else begun


def _is_there(finder: SiteFinder, targets: tuple[Target, ...]) -> bool:
    """Whether the row below has any of these."""
    return any(len(finder.sites(target)) for target in targets)


def _same(item: Item) -> bool:
    """Whether a step goes into the site that the row is begun in."""
    match item:
        case StartChain(stands_for=str(), place=None):
            return True
        case Stitches(place=Place(which=which)) | Bracket(place=Place(which=which)):
            return which is Which.SAME
        case _:
            return False


def _straddling_named(finder: SiteFinder, target: Target) -> Site | None:
    """The site that straddles the start, or the named part or point of it, if it has one."""
    whole = None if isinstance(target, Between) else straddling(finder, target)
    if whole is None or isinstance(target, Whole):
        return whole
    s = finder.sites(target)
    lap, length = finder.round, finder.fabric.length
    for a, b, p in zip(s.a, s.b, s.p, strict=True):
        for turn, over in ((0, 0), (-lap, -length)):
            if whole[0] <= a + turn < whole[1]:
                return a + turn, b + turn, p + over
    return None
