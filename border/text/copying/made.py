"""What the steps of a row make, number by number, and the same steps with other numbers."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Span
from border.text.steps import OPEN_PLACES
from border.text.tree import (
    AsTheyCome,
    Bracket,
    Chains,
    Difference,
    End,
    Item,
    Picots,
    Place,
    Repeat,
    StartChain,
    Stitches,
    Where,
    Which,
)

Items = tuple[Item, ...]


class Doubt(Struct, frozen=True):
    """Why a number cannot be changed for sure: what is told, and whether `between` settles it.

    `aside`: the number is none of those that the row is known to make of it. `picots`: the
    chains are those of picots, and not meant where something else is said of these.
    """

    message: str
    between: bool = False
    aside: bool = False
    picots: bool = False


class Making(Struct, frozen=True):
    """So many of something made in one place of a row.

    `inside`: in a list that goes into one place. `parts`: chains between the stitches of one step,
    `3 dc, with ch 2 between`. `grouped`: stitches that all do. `least`: the
    smallest other number that can stand there, 0 where it can be left out. `doubt`: why it
    cannot be said what another number would mean there; `left`: what leaving it out would.
    """

    of: str
    number: int
    inside: bool = False
    parts: bool = False
    grouped: bool = False
    least: int = 0
    doubt: Doubt | None = None
    left: str = ""

    def fits(self, one: Difference) -> bool:
        """Whether a difference speaks of this, by what it is and not by its number."""
        if self.of != one.of:
            return False
        if one.where in (Where.BETWEEN, Where.APART):
            apart = one.where is Where.APART and self.inside
            return not apart and (self.doubt is None or not self.doubt.between)
        return one.where is Where.ALL or (self.grouped and self.number > 1)


class Stretch(Struct, frozen=True):
    """The steps of a row or a clause, with what bears on their numbers.

    `opens`: bare chains opened it, and are read as its start chain. `repeats`: it is worked over
    and over. `before_turn`: chains before the turn behind it. `at_joint`: worked at a joint.
    """

    items: Items
    opens: bool = False
    repeats: bool = False
    before_turn: Items = ()
    at_joint: bool = False
    carried: Items = ()


Put = Callable[[Sequence[Stretch]], list[Items]]
"""The steps of a row's text, or of its clauses, with what its copies have otherwise."""


class Now(Struct, frozen=True):
    """The number that is to stand where one was, 0 where the step is left out.

    `said`: the words that say so, where it is another.
    """

    number: int
    said: Span | None = None


Number = Callable[[Making], Now]
"""What is to be made in place of what is made."""

_ONE = (Which.SAME, Which.SKIPPED)

_NEAR = 4
"""So many steps behind chains are looked at for one in the same place."""


def makings(stretch: Stretch) -> list[Making]:
    """All that a stretch makes, in the order of the text."""
    found: list[Making] = []

    def same(making: Making) -> Now:
        found.append(making)
        return Now(making.number)

    renumbered(stretch, same)
    return found


def renumbered(stretch: Stretch, number: Number) -> Items:
    """The steps with every number that they make as `number` has it."""
    if stretch.opens:
        start = next(item for item in stretch.items if isinstance(item, StartChain))
        if start.then or start.stands_for is None:
            said = f"the ch {start.count} that opens the copied row may be meant too"
            number(Making("ch", start.count, doubt=Doubt(said, between=True, aside=True)))
    for item in stretch.before_turn:
        if isinstance(item, Chains):
            said = (
                f"the ch {item.count} before the turn may be meant too, or belong to the next row"
            )
            number(Making("ch", item.count, doubt=Doubt(said, between=True, aside=True)))
    return _List(number, once=not stretch.repeats).items(stretch.items)


class _List(Struct, frozen=True):
    """A list of steps: `inside` one place, `once`: worked once, with nothing worked behind it."""

    number: Number
    inside: bool = False
    once: bool = False

    def items(self, items: Items) -> Items:
        found: list[Item] = []
        opened: Item | None = None
        for n, item in enumerate(items):
            last = self.once and not any(map(_works, items[n + 1 :]))
            if isinstance(item, StartChain) and item.stands_for:
                following = items[n + 1] if n + 1 < len(items) else None
                if not _goes_with(item, following):
                    said = "the first one of the copied row is chains that stand for it"
                    self.number(Making(item.stands_for, 1, doubt=Doubt(said, aside=True)))
            if isinstance(item, Chains):
                found += self._chains(item, items[n + 1 :])
            else:
                found += self._item(item, opened, last)
            opened = item
        return tuple(found)

    def _chains(self, item: Chains, behind: Items) -> Iterator[Item]:
        following = next((i for i in behind[:_NEAR] if _works(i)), None)
        place = following.place if isinstance(following, Stitches | Bracket) else None
        same = place is not None and place.which is Which.SAME
        now = self.number(Making("ch", item.count, self.inside or same))
        if now.number:
            yield replace(item, count=now.number, span=now.said or item.span)

    def _item(self, item: Item, before: Item | None, last: bool) -> Iterator[Item]:
        match item:
            case Stitches():
                yield from self._stitches(item, before, last)
            case Picots():
                yield from self._picots(item)
            case StartChain(count, str(), int(then)) if then:
                now = self.number(Making("ch", then, self.inside))
                chains = count - then + now.number
                yield replace(item, count=chains, then=now.number, span=now.said or item.span)
            case Bracket(inner):
                inner = _List(self.number, inside=True).items(inner)
                yield replace(item, items=inner, parted=self._parted(item.parted))
            case AsTheyCome(parts):
                inner = _List(self.number).items(parts)
                kept = tuple(i for i in inner if isinstance(i, Stitches | Bracket))
                yield replace(item, items=kept, parted=self._parted(item.parted))
            case Repeat(inner, times):
                once = self.once and last and times == 1
                inner = _List(self.number, self.inside, once).items(inner)
                if inner or times != 1 or item.star:
                    yield replace(item, items=inner)
            case _:
                yield item

    def _parted(self, chains: int) -> int:
        return self.number(Making("ch", chains)).number if chains else 0

    def _picots(self, item: Picots) -> Iterator[Item]:
        said = f"the picots of {item.chains} may be meant too"
        aside = Doubt(said, between=True, aside=True, picots=True)
        self.number(Making("ch", item.chains, self.inside, doubt=aside))
        chains = self.number(Making("ring", item.chains))
        count = self.number(Making("picot", item.count))
        if chains.number and count.number:
            span = chains.said or count.said or item.span
            yield replace(item, count=count.number, chains=chains.number, span=span)

    def _stitches(self, item: Stitches, before: Item | None, last: bool) -> Iterator[Item]:
        between = 0
        if item.between:
            between = self.number(Making("ch", item.between, inside=True, parts=True)).number
        parted = self._parted(item.parted)
        opened = 1 if _goes_with(before, item) else 0
        for number, doubt in _doubts(item, opened):
            self.number(Making(item.stitch, number, doubt=doubt))
        making = self._making(item, opened, last)
        now = self.number(making) if making is not None else Now(item.count + opened)
        if (count := now.number - opened) > 0:
            span = now.said or item.span
            yield replace(item, count=count, between=between, parted=parted, span=span)

    def _making(self, item: Stitches, opened: int, last: bool) -> Making | None:
        if item.together or item.cluster or _spread(item.place):
            return None
        free = self.inside or last or (item.place is not None and item.place.which in _ONE)
        left = "" if free else "what they stand on may be passed over, or taken by what comes next"
        if opened:
            left = "the first one of the copied row is chains that stand for it"
        grouped = self.inside or item.place is not None
        least = 2 if opened or item.between else 0
        number = item.count + opened
        return Making(item.stitch, number, self.inside, False, grouped, least, left=left)


def _doubts(item: Stitches, opened: int) -> Iterator[tuple[int, Doubt]]:
    """The numbers that a step may be said to make besides the one that it names."""
    name = item.stitch
    if item.together or item.cluster:
        said = "in the copied row so many are worked off together"
        yield from ((n, Doubt(said)) for n in {item.count, item.cluster} if n)
        return
    if opened:
        said = f"with the chains that open it, the copied row makes one {name} more there"
        yield item.count, Doubt(said, aside=True)
    sites = item.place.count if item.place is not None and _many(item.place) else 1
    if item.place is not None and sites > 1:
        said = f"so many stand one by one in {sites} places of the copied row"
        each = item.place.each or item.count == 1
        named = () if item.place.each else (item.count,)
        yield from ((n, Doubt(said)) for n in {*named, item.count * sites if each else item.count})


def _many(place: Place) -> bool:
    return place.which not in (Which.NTH, Which.EVERY, *_ONE)


def _spread(place: Place | None) -> bool:
    """Whether stitches stand one by one in several places: `3 dc in the next 3 st`."""
    return place is not None and place.count > 1 and _many(place) and not place.each


def _goes_with(start: Item | None, item: Item | None) -> bool:
    """Whether stitches directly behind a start chain are so many with the one it stands for."""
    if not isinstance(start, StartChain) or not isinstance(item, Stitches) or start.then:
        return False
    alike = start.stands_for == item.stitch and not (item.together or item.cluster)
    place = item.place
    one = place is None or (place.which not in OPEN_PLACES and place.count == 1)
    return alike and one


def _works(item: Item) -> bool:
    """Whether a step works into something."""
    return not isinstance(item, Chains | Picots | End)
