"""Ordinals and misses that may count on from elsewhere: `skip 3, 1 dc in 4th st`, `1st … 2nd`."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Span
from border.stitches import STITCHES
from border.text.nodes import Building, Step
from border.text.stands_below import stands_in
from border.text.tree import (
    SPACES,
    ST,
    Begin,
    Between,
    Bracket,
    Chains,
    Item,
    Kind,
    Part,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.text.written_places import write_ordinal


def tell_counted_on(steps: Sequence[Step], b: Building) -> None:
    """Tell of ordinals that may count from where a step before them began, and of misses."""
    _tell_ordinals(steps, b)
    for before, step in pairwise(steps):
        if not step.hard:
            _tell_passed_twice(before.item, step.item, b)
    _tell_missed(steps, b)
    _tell_named_later([one.item for one in steps], b)
    for n in range(len(steps) - 2):
        _tell_missed_list([one.item for one in steps[n : n + 3]], b)


def _tell_ordinals(steps: Sequence[Step], b: Building) -> None:
    """Tell of ordinals that may be counted on from what stands before them."""
    asked: set[Span] = set()
    missed: Item | None = None  # behind `miss 2, 3 ch` the misses still come before
    steps = [one for step in steps for one in _with_first(step)]
    for step in steps:
        if missed is not None:
            _tell_ordinal(missed, step.item, b, asked)
        over = isinstance(step.item, Chains | Picots) and isinstance(missed, Skip)
        missed = missed if over else step.item
    _tell_rising(steps, b, asked)


def _with_first(step: Step) -> list[Step]:
    """A step; of a starred repeat what it makes up to its first place, to which the steps before
    the star lead on: `1 sc on the 1st dc, *ch 3, 1 sc on the 4th`."""
    item = step.item
    if not isinstance(item, Repeat) or not item.star:
        return [step]
    placed = (n for n, one in enumerate(item.items) if not isinstance(one, Chains | Picots))
    end = next(placed, -1) + 1
    return [Step(one, step.hard) for one in item.items[:end]] + [step]


def _tell_ordinal(before: Item, item: Item, b: Building, asked: set[Span]) -> None:
    """`skip 3, 1 dc in 4th st`: is the 4th counted on, or from where the skip began?"""
    match before, item:
        case Repeat(times=int(), star=False), Stitches(
            place=Place(which=Which.NTH, count=nth, targets=(named,))
        ):
            if (passed := _passed_over(before, named)) + 1 == nth > 2:
                asked.add(item.span)
                _tell_counted_on(before, item, passed, nth, b)
            return
    match before:
        case Skip(count=passed, target=target):
            kind = target or Whole(ST)
        case Stitches(count=passed, place=None, cluster=0):
            kind = Whole(ST)
        case Stitches(place=Place(which=Which.NEXT, count=passed, targets=(kind,))):
            pass
        case _:
            return
    match item:
        case (
            Stitches(place=Place(which=Which.NTH, count=nth, targets=(named,)))
            | Bracket(place=Place(which=Which.NTH, count=nth, targets=(named,)))
        ):
            bare = isinstance(before, Skip) and (before.target is None or named == Whole(ST))
            if (_alike(named) == _alike(kind) or bare) and nth == passed + 1:
                asked.add(item.span)
                _tell_counted_on(before, item, passed, nth, b)


def _passed_over(item: Item, named: Target) -> int:
    """Over how many places of a kind an item goes: `(1 dc in next tr, ch 4, skip 1 tr) 5 times`."""
    match item:
        case Repeat(items=items, times=int() as times, star=False):
            return times * sum(_passed_over(one, named) for one in items)
        case Skip(count=count, target=target) if target is not None:
            return count if _alike(target) == _alike(named) else 0
        case Stitches(count=count, place=None, cluster=0) if named == Whole(ST):
            return count
        case Stitches(place=Place(which=Which.NEXT | Which.THE, count=count, targets=(kind,))):
            return count if _alike(kind) == _alike(named) else 0
        case _:
            return 0


def _gone_over(items: Sequence[Item]) -> Target | None:
    """The one kind of place that a bracket goes along, `(1 dc in next tr, ch 1) 5 times`; None
    where it names others as well, or the same place again."""
    kinds: list[Target] = []
    for item in items:
        taken = _taken(item)
        match item:
            case Chains() | Picots() | Skip(target=None):
                continue
            case Skip(target=Whole() as target):
                kinds.append(_alike(target))
            case _ if taken is not None:
                kinds.append(taken[0])
            case _:
                return None
    return kinds[0] if len(set(kinds)) == 1 else None


_KINDS = 4
"""Places of so many kinds are counted side by side."""


class _Reached(Struct, frozen=True):
    """How far steps have come among places of one kind; `by_number`: an ordinal said so.

    `step`: the first of them; `last`: how many the last one took; `of`: what they are counted in,
    where it was named.
    """

    step: Item
    passed: int
    by_number: bool = False
    last: int = 1
    of: Part | None = None

    def leads_to(self, nth: int, chains: int) -> bool:
        """Whether an nth behind so many chains may be counted from the first: where no ordinal
        said so it is the next one, and not one under whose chains as many are missed."""
        missed = self.last > 1 and chains == nth - 1
        next_ = self.passed > 1 and nth == self.passed + 1 and not missed
        return nth > self.passed and (self.by_number or next_)


def _tell_rising(steps: Sequence[Step], b: Building, asked: set[Span]) -> None:
    """`1 sc in 1st loop, ch 7, 1 sc in 2nd loop`: both counted from one beginning?"""
    reached: dict[Target, _Reached] = {}
    chains = 0  # made since the step before
    for step in steps:
        item = step.item
        match item:
            case Chains():
                chains += item.count
                continue
            case Picots():
                continue
            case Begin(place=Place(which=Which.NTH, count=nth, targets=(target,))):
                reached[_alike(target)] = _Reached(item, nth - 1, True)
            case (
                Stitches(place=Place(which=Which.NTH | Which.FIRST as which, count=nth) as place)
                | Bracket(place=Place(which=Which.NTH | Which.FIRST as which, count=nth) as place)
            ) if len(place.targets) == 1:
                kind = _alike(place.targets[0])
                before = _reached(reached, kind)
                if before is None and isinstance(kind, Between):
                    before = _reached(reached, Whole(kind.of))
                rises = before is not None and (
                    before.leads_to(nth, chains) or _ends_group(kind, before.passed, nth, b)
                )
                if before and rises and which is Which.NTH and item.span not in asked:
                    _tell_counted_on(before.step, item, before.passed, nth, b, before.of)
                _go_on(reached, kind, _Reached(item, nth, True, of=before.of if before else None))
            case Stitches(place=Place(which=Which.SAME)) | Bracket(place=Place(which=Which.SAME)):
                pass
            case (
                Stitches(place=Place(targets=(Part(nth, unit, of) as part,), count=1))
                | Bracket(place=Place(targets=(Part(nth, unit, of) as part,), count=1))
            ) if nth > 0 and unit.name in (*STITCHES, "st"):
                # `1 dc in 1st of next 5 dc, …, 1 dc in 5th dc`
                kind = Whole(Kind(of.stitch or unit.name))
                reached = {kind: _Reached(item, nth, True, of=part)}
            case Stitches(
                place=Place(targets=(Part(nth, Kind("ch"), Kind("shell")),), count=1)
            ) if nth > 0:  # `1 dc in 1st ch of the shell, …, 1 dc in 2nd ch`
                reached = {Whole(Kind(x)): _Reached(item, nth, True) for x in ("space", "ch")}
            case _ if (taken := _taken(item)) is not None:
                kind, count = taken
                by_number = isinstance(kind, Between) or _is_the(item)
                before = _reached(reached, kind) or _Reached(item, 0, by_number)
                _go_on(reached, kind, replace(before, passed=before.passed + count, last=count))
            case Repeat(items=inner, times=int() as times, star=star) if along := _gone_over(inner):
                before = _reached(reached, along) or _Reached(item, 0, True)
                # behind a star they were gone over once already
                passed = (times - star) * sum(_passed_over(one, along) for one in inner)
                _go_on(reached, along, replace(before, passed=before.passed + passed, last=passed))
            case Skip(count, target):
                for kind, before in list(reached.items()):
                    if _is_of(_alike(target or Whole(ST)), kind):
                        reached[kind] = replace(before, passed=before.passed + count)
            case _:
                reached = {}
        chains = 0


def _ends_group(kind: Target, passed: int, nth: int, b: Building) -> bool:
    """Whether the nth is one of the same group, as the row below has them, and counted from here is
    one of the next: `1 dc on each of 5 dc, ch 1, 1 sc on the 7th` over groups of 7."""
    if b.below is None or not isinstance(kind, Whole) or kind.of.name not in STITCHES:
        return False
    group = stands_in(b.below, kind.of.name, ordinal=True)
    size = group.size or 0 if group is not None else 0
    return passed < nth <= size < passed + nth


def _tell_named_later(items: Sequence[Item], b: Building) -> None:
    """`1 sc on the 2nd, ch 3, 1 sc on the 4th of the next 5 dc`: both of these 5?"""
    placed = [item for item in items if not isinstance(item, Chains | Picots)]
    for before, item in pairwise(placed):
        match before, item:
            case (
                Stitches(place=Place(Which.NTH, (Whole(Kind("st")),), first)),
                Stitches(place=Place(Which.NEXT, (Part(nth, _, of) as part,), 1) as place),
            ) if first < nth:
                earlier = replace(place, targets=(replace(part, nth=first),))
                here = b.written(replace(before, place=earlier))
                there = b.written(replace(item, place=replace(place, which=Which.SAME)))
                b.tell(
                    "perhaps-counted-on",
                    f"the {write_ordinal(first)} is counted along the row, before the {of.name} "
                    "that is named behind it",
                    f"write {here} and {there} if both are of one",
                    before.span.to(item.span),
                )


def _taken(item: Item) -> tuple[Target, int] | None:
    """The kind of place that a step goes on into, and how many of them it takes."""
    match item:
        case Stitches(count=count, place=None, together=False, cluster=0):
            return Whole(ST), count
        case (
            Stitches(place=Place(which=Which.NEXT | Which.THE, count=count, targets=(kind,)))
            | Bracket(place=Place(which=Which.NEXT | Which.THE, count=count, targets=(kind,)))
        ):
            return _alike(kind), count
    return None


def _is_the(item: Item) -> bool:
    """Whether a step goes into `the shell`, and does not say which: not so `next shell`."""
    match item:
        case (
            Stitches(place=Place(which=Which.THE, targets=(target,)))
            | Bracket(place=Place(which=Which.THE, targets=(target,)))
        ):
            return target.of.name == "shell"
    return False


def _reached(reached: dict[Target, _Reached], kind: Target) -> _Reached | None:
    """How far steps have come among places that may be of a kind."""
    return next((one for other, one in reached.items() if _is_of(kind, other)), None)


def _go_on(reached: dict[Target, _Reached], kind: Target, now: _Reached) -> None:
    """Put how far steps have come now, under the kind that was named first."""
    named = next((other for other in reached if _is_of(kind, other)), kind)
    if named not in reached and len(reached) == _KINDS:
        del reached[next(iter(reached))]
    reached[named] = now


def _is_of(kind: Target, other: Target) -> bool:
    """Whether two places may be counted as one kind: `st` is any stitch."""
    return kind == other or (Whole(ST) in (kind, other) and _is_stitch(kind) and _is_stitch(other))


def _is_stitch(kind: Target) -> bool:
    return isinstance(kind, Whole) and (kind == Whole(ST) or kind.of.name in STITCHES)


def _alike(target: Target) -> Target:
    """A space of any size, a loop: one of them, where they are counted one after the other."""
    spaces = isinstance(target, Whole) and target.of.name in SPACES
    return Whole(Kind("space")) if spaces else target


def _tell_counted_on(
    before: Item,
    item: Stitches | Bracket,
    passed: int,
    nth: int,
    b: Building,
    of: Part | None = None,
) -> None:
    """`of`: a group, and the stitch of it that was worked before."""
    assert item.place is not None
    further = nth - passed
    which = Which.NEXT if further == 1 else Which.NTH
    nearby = replace(item, place=replace(item.place, which=which, count=further))
    if of is not None and isinstance(item.place.targets[0], Whole):
        same = Place(Which.SAME, (replace(of, nth=nth),), span=item.place.span)
        nearby = replace(item, place=same)
    edit = b.written(nearby)
    b.tell(
        "perhaps-counted-on",
        f"this passes over {nth - 1} more, behind {passed} that are taken or missed before it",
        f"write {edit} if the {write_ordinal(nth)} is counted from the first of those",
        before.span.to(item.span),
    )


def _tell_missed(steps: Sequence[Step], b: Building) -> None:
    """`miss 2 treble and 1 chain`, `miss 3 ch, 1 dc, and 3 ch`: are these made, or missed?"""
    missed: list[Item] = []
    for before, step in pairwise(steps):
        missed = [before.item] if isinstance(before.item, Skip) else missed
        also = _as_missed(step.item) if missed and not step.hard else None
        between = b.said_between(before.item, step.item)
        if also is None or not {",", *_AND}.issuperset(between):
            missed = []
            continue
        missed.append(also)
        listed = len(missed) > _TWO and between == [", and"]
        if not listed and not (len(missed) == _TWO and b.joined_by_and(before.item, step.item)):
            continue
        first = missed[0]
        all_ = ", ".join(b.written(one) for one in missed)
        made = "this is made" if len(missed) == _TWO else "the rest is made"
        b.tell(
            "perhaps-missed",
            f"only {b.written(first)} is taken to be missed, and {made}",
            f"write {all_} if {'both' if len(missed) == _TWO else 'all'} are missed",
            first.span.to(step.item.span),
        )
        missed = []


_AND = frozenset({"and", ", and"})
_TWO = 2


def _as_missed(item: Item) -> Item | None:
    """What is made without a place, as it would be missed."""
    match item:
        case Chains(count):
            return Skip(count, Whole(Kind("ch")))
        case Stitches(count, stitch, None, cluster=0):
            return Skip(count, Whole(Kind(stitch)))
    return None


def _tell_missed_list(steps: Sequence[Item], b: Building) -> None:
    """`miss 3 dc, 1 ch, 3 dc, 1 sc in next loop`, `skip 3 ch, 1 sc, 3 ch`: all of that may be what
    is missed."""
    match steps:
        case [
            Skip(count, Whole(Kind("ch"))) as first,
            Stitches(1, stitch, None, cluster=0),
            Chains(again) as last,
        ] if again == count > 1:
            sides = b.written(first)
            b.tell(
                "perhaps-missed",
                f"only the first {count} are taken to be missed, and what follows is made",
                f"write {sides}, {b.written(Skip(1, Whole(Kind(stitch))))}, {sides} if all of them "
                "are missed",
                first.span.to(last.span),
            )
        case [
            Skip(count, Whole(Kind(name))) as first,
            Chains(chains),
            Stitches(again, stitch, None, cluster=0) as last,
        ] if (again, stitch) == (count, name):
            missed = Skip(chains, Whole(Kind("ch"))), Skip(again, Whole(Kind(stitch)))
            all_ = ", ".join(b.written(item) for item in (first, *missed))
            b.tell(
                "perhaps-missed",
                f"only the first {'is' if count == 1 else f'{count} are'} taken to be missed, and "
                "what follows is made",
                f"write {all_} if all of them are missed",
                first.span.to(last.span),
            )


def _tell_passed_twice(before: Item, item: Item, b: Building) -> None:
    """`1 dc into the 2nd loop, missing one`: are they the ones that the 2nd passes over?"""
    match before, item:
        case (
            Stitches(place=Place(which=Which.NTH, count=nth))
            | Bracket(place=Place(which=Which.NTH, count=nth)),
            Skip(count=count),
        ):
            if count == nth - 1:
                b.tell(
                    "perhaps-counted-on",
                    f"the {write_ordinal(nth)} passes over {count}, and {count} more are missed "
                    "behind it",
                    f"leave {b.written(item)} out if it is the same",
                    before.span.to(item.span),
                )
