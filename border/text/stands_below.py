"""What stands together in the row below, and what alone: known from the steps that made it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise

from msgspec import Struct

from border.stitches import STITCHES
from border.text.steps import OPEN_PLACES, walk
from border.text.tree import (
    SPACES,
    ST,
    AsTheyCome,
    Begin,
    Bracket,
    Centre,
    Chains,
    End,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Text,
    Which,
    Whole,
)


def stands_in(below: Text, stitch: str, *, ordinal: bool) -> Kind | None:
    """What a stitch stands in, in the row below: a run between others or chains; or else, of
    `ordinal` ones, a group in one place. None where they differ, or none part them."""
    made = list(_made(_period(below)))
    if set(made) == {stitch}:
        size = worked_together(below, stitch)
        return Kind("group", size, stitch) if ordinal and size else None
    sizes = sizes_of_runs(below, stitch)
    size = max(sizes, default=1)
    return Kind("run", size, stitch) if len(sizes) == 1 and size > 1 else None


def sizes_of_runs(below: Text, stitch: str) -> set[int]:
    """How many of a stitch, or of chains, `ch`, stand side by side in the row below, between
    others; none where that is not known, or nothing parts them."""
    return set(_runs(made_over_and_over(below), stitch))


def made_over_and_over(below: Text) -> tuple[str, ...]:
    """What a row makes over and over, one after another: names of stitches, each chain as `ch`;
    nothing where that is not known."""
    made = list(_made(_period(below)))
    known = tuple(one for one in made if one is not None)
    return known if len(known) == len(made) else ()


def worked_together(below: Text, stitch: str) -> int:
    """How many of a stitch a row works into one place over and over, where nothing parts them;
    else 0."""
    steps = _period(below)
    over_again = below.repeats or steps is not below.items
    sizes = {
        one.count
        for one in steps
        if isinstance(one, Stitches) and one.place is not None
        if over_again or one.place.which in OPEN_PLACES
    }
    alone = set(_made(steps)) == {stitch} and len(sizes) == 1
    return sizes.pop() if alone and max(sizes) > 1 else 0


def are_heaped(below: Text, number: int, stitch: str | None) -> bool:
    """Whether a row works so many of a stitch (or of any) into one place, and so many of it stand
    nowhere between others, or chains."""
    heaps = (
        one
        for one in walk(below.items)
        if isinstance(one, Stitches) and one.count == number > 1 and stitch in (None, one.stitch)
        if one.place is not None and not (one.together or one.between)
    )
    if not any(one.place.count == 1 or one.place.each for one in heaps if one.place):
        return False
    steps = [
        inner
        for one in _period(below)
        for inner in (one.items if isinstance(one, AsTheyCome) else (one,))
    ]
    made = list(_made(steps))
    here = ["x" if one in (stitch, stitch or one) and one != "ch" else " " for one in made]
    if None in made or " " not in here:
        return None not in made
    while here[-1] == "x":
        here.insert(0, here.pop())
    return number not in {len(run) for run in "".join(here).split()}


def loops_in_shells(below: Text) -> int:
    """How many loops of chains a row makes within one place, at the most."""
    loops = [0]
    for one in walk(below.items):
        if isinstance(one, Stitches) and one.place is not None and one.between:
            loops.append(one.count - 1)
        elif isinstance(one, Bracket) and one.place is not None:
            made = list(_made(one.items))
            loops.append(sum(a != "ch" == b for a, b in pairwise(made)))
    return max(loops)


def stand_alone(below: Text | None, stitch: str) -> bool:
    """Whether each of a stitch that the row below makes stands alone, between others or chains."""
    made = list(_made(_period(below))) if below is not None else []
    others = len(set(made)) > 1 and stitch in made and None not in made
    beside = zip(made, [*made[1:], *made[:1]], strict=True)
    return others and all(set(two) != {stitch} for two in beside)


def in_runs(below: Text | None) -> bool:
    """Whether stitches of the row below are known to stand two or more together."""
    made = list(_made(_period(below))) if below is not None else []
    beside = zip(made, [*made[1:], *made[:1]], strict=True)
    return None not in made and any("ch" not in two for two in beside)


def loop_sizes(below: Text | None) -> set[int]:
    """The numbers of chains that stand together as the row below makes them."""
    steps = list(walk(below.items)) if below is not None else []
    sizes = {one.count for one in steps if isinstance(one, Chains)}
    return sizes | {one.parted for one in steps if isinstance(one, Stitches | Bracket)} - {0}


def stitches_together(below: Text) -> set[int]:
    """The numbers of stitches that one step of a row makes, or that stand between chains there:
    three of `1 dc in each of 3 st`, of `2 dc in next st, 1 dc in next st, 3 ch`."""
    steps = [one for one in walk(below.items) if isinstance(one, Stitches)]
    together = {len(block) for block in _blocks(below) if None not in block}
    return {one.count for one in steps} | together


def run_inside(below: Text, number: int) -> str:
    """The stitch of which so many stand between others of the row below, `1 sc, 5 dc, 1 sc in each
    space`, where no more than that is held apart by chains; "" where there is none."""
    blocks = _blocks(below)
    runs = [[(one, len(list(run))) for one, run in groupby(block)] for block in blocks]
    made = {one for block in runs for one, count in block if count == number and len(block) > 1}
    alone = any(len(block) == number for block in blocks)
    return "" if alone or len(made) != 1 or None in made else str(made.pop())


def stands_alone(below: Text, stitch: str) -> bool:
    """Whether one of a stitch may stand by itself in the row below, with none like it beside it."""
    runs = [(one, len(list(run))) for block in _blocks(below) for one, run in groupby(block)]
    return any(one is None or (one, count) == (stitch, 1) for one, count in runs)


def _blocks(below: Text) -> list[list[str | None]]:
    """What stands between the chains of a row, as it is worked over and over; None for what is not
    known."""
    made = list(_made(_period(below)))
    # what goes round begins where one of them ends
    while "ch" in made and made[-1] != "ch":
        made.insert(0, made.pop())
    while len(set(made)) > 1 and made[-1] == made[0] != "ch":
        made.insert(0, made.pop())
    return [list(block) for chains, block in groupby(made, lambda one: one == "ch") if not chains]


def no_chains(below: Text | None) -> bool:
    """Whether the row below is known to be stitches alone: what is counted on it is a stitch."""
    made = list(_made(below.items)) if below is not None else []
    opens = any(isinstance(i, StartChain) and i.then for i in below.items) if below else False
    return bool(made) and "ch" not in made and None not in made and not opens


def chains_stand_singly(below: Text | None) -> bool:
    """Whether every chain of the row below is known to stand alone, a space of its own."""
    steps = list(walk(below.items)) if below is not None else []
    made = list(_made(below.items)) if below is not None else []
    beside = zip(made, [*made[1:], *made[:1]], strict=True)
    return (
        "ch" in made
        and None not in made
        and all(two != ("ch", "ch") for two in beside)
        and all(
            (not isinstance(one, Chains) or one.count == 1)
            and (not isinstance(one, StartChain) or not one.then)
            and max(getattr(one, "between", 0), getattr(one, "parted", 0)) <= 1
            for one in steps
        )
    )


def come_together(below: Text, kind: Kind) -> int:
    """How many of a stitch, or of spaces of so many chains, come one after another in the row below
    before something else does; 0 where they differ, or nothing else comes."""
    if kind.name in STITCHES:
        run = stands_in(below, kind.name, ordinal=False)
        return run.size or 0 if run is not None else 0
    if any(isinstance(one, StartChain) for one in _period(below)):
        return 0
    sizes = _runs(made_over_and_over(below), "ch")
    together = set(_runs(sizes, kind.size)) if kind.size is not None else set()
    return together.pop() if len(together) == 1 else 0


def _runs(made: Sequence[object], of: object) -> list[int]:
    """How many of one come side by side, run by run, in what goes round and round; nothing where
    nothing parts them."""
    if of not in made or set(made) == {of}:
        return []
    last = next(n for n in range(len(made) - 1, -1, -1) if made[n] != of)
    once = (*made[last + 1 :], *made[: last + 1])
    return [len(list(run)) for one, run in groupby(once) if one == of]


def _period(text: Text) -> Sequence[Item]:
    """The steps of a row that are worked over and over."""
    repeats = (i for i in text.items if isinstance(i, Repeat))
    over_again = (i for i in repeats if i.times is None or (i.star and i.times != 1))
    repeat = None if text.repeats else next(over_again, None)
    return text.items if repeat is None else repeat.items


def _made(items: Sequence[Item]) -> Iterator[str | None]:
    """What steps make, one after another: names of stitches, "ch" for each chain; None where it
    is not known how many."""
    for item in items:
        match item:
            case Chains(count):
                yield from _chained(count)
            case Stitches():
                yield from _made_of(item)
            case Bracket(items=inner):
                for parted in _workings(item):
                    yield from _made(inner)
                    yield from _chained(parted)
            case Repeat(items=inner, times=int() as times):
                for _ in range(min(times, _MANY)):
                    yield from _made(inner)
            case Skip() | Picots() | End() | Begin() | StartChain():
                pass
            case _:
                yield None


_MANY = 99


def _made_of(item: Stitches) -> Iterator[str]:
    count = 1 if item.together else item.count
    for parted in _workings(item):
        for n in range(min(count, _MANY)):
            yield item.stitch
            if n + 1 < count:
                yield from _chained(item.between)
        yield from _chained(parted)


def _workings(item: Stitches | Bracket) -> Iterator[int]:
    """Each time that a step is worked, the chains that stand behind it before the next: in `1 dc in
    each of next 4 st, with ch 1 between` none behind the last."""
    place = item.place
    several = place is not None and place.each and not getattr(item, "together", False)
    times = min(place.count, _MANY) if place is not None and several else 1
    goes_on = place is not None and place.which in OPEN_PLACES
    for n in range(times):
        yield item.parted if goes_on or n + 1 < times else 0


def _chained(count: int) -> list[str]:
    return ["ch"] * min(count, _MANY)


# --- how far steps come along the row below -----------------------------------------


class UnknownError(Exception):
    """How far a step goes along the row below is not known from the texts alone."""


class Unworked(Struct):
    """The row below as it is worked into: what it makes over and over, and how far steps have come.

    `made`: as of `made_over_and_over`; `chains_count`: whether chains count as stitches.
    """

    made: tuple[str, ...]
    chains_count: bool | None
    at: int = 0

    def steps(self, items: Sequence[Item]) -> None:
        """Work some steps."""
        for item in items:
            self.step(item)

    def step(self, item: Item) -> list[int]:
        """Work a step: the stitches or chains that it goes into, where it names them."""
        match item:
            case Chains() | Picots() | End():
                return []
            case Stitches(place=Place() as place) | Bracket(place=place):
                return self._place(place)
            case Stitches(count=count, place=None):
                return self._several(Whole(ST), count)
            case Skip(count, target):
                return self._several(target or Whole(ST), count)
            case Repeat(items=items, times=int() as times):
                for _ in range(min(times, _MANY)):
                    self.steps(items)
                return []
            case _:
                raise UnknownError

    def is_run(self, taken: Sequence[int]) -> bool:
        """Whether what was taken stands together, with nothing of its kind beside it."""
        name, first, last = self._made(taken[0]), taken[0], taken[-1]
        beside = name in (self._made(first - 1), self._made(last + 1))
        return last - first + 1 == len(taken) and not beside

    def inside(self, at: int, taken: Sequence[int]) -> bool:
        """Whether what was taken is of one run, of which others had been worked into before."""
        name, first, last = self._made(taken[0]), taken[0], taken[-1]
        together = last - first + 1 == len(taken)
        return together and 0 < at == first and self._made(first - 1) == name

    def _made(self, at: int) -> str:
        return self.made[at % len(self.made)]

    def _place(self, place: Place) -> list[int]:
        if place.which in (Which.SAME, Which.SKIPPED):
            return []
        on = (Which.NEXT, Which.THE, Which.FIRST, Which.NTH)
        if place.which not in on or len(place.targets) != 1:
            raise UnknownError
        return self._several(place.targets[0], place.count)

    def _several(self, target: Target, count: int) -> list[int]:
        taken: list[int] = []
        for _ in range(min(count, _MANY)):
            start, self.at = self._next(target)
            taken.append(start)
        return taken

    def _next(self, target: Target) -> tuple[int, int]:
        """Where the next of what is named begins, and what is behind it."""
        if not isinstance(target, Whole | Part | Centre):
            raise UnknownError
        # a site of which a part lies ahead may have begun before
        back = 0 if isinstance(target, Whole) else 2 * len(self.made)
        for start in range(self.at - back, self.at + 2 * len(self.made)):
            end = self._end(target.of, start)
            match target:
                case Whole():
                    first, behind = start, end
                case Part(nth):
                    first = start + nth - 1 if nth > 0 else end - 1
                    behind = first + 1
                case Centre():
                    first = start + (end - start) // 2
                    behind = first + (end - start) % 2
            if start < end and start <= first < end and first >= self.at:
                return first, behind
        raise UnknownError

    def _end(self, kind: Kind, start: int) -> int:
        """Behind the site of a kind that begins at a place; the same place where none does."""
        name = kind.name
        if name == ST.name:
            if self.chains_count is None and "ch" in self.made:
                raise UnknownError
            return start + (self.chains_count is True or self._made(start) != "ch")
        if name == "ch" or name in STITCHES:
            return start + (self._made(start) == name)
        if kind.name in SPACES and kind.stitch is None:
            of = {"ch"}
        elif kind.name == "run" and kind.stitch:
            of = {kind.stitch}
        elif kind.name == "block" and kind.stitch is None:
            of = set(self.made) - {"ch"}
        else:
            raise UnknownError
        end = start
        while self._made(end) in of and end < start + len(self.made):
            end += 1
        begins = self._made(start - 1) not in of and kind.size in (None, end - start)
        return end if begins else start
