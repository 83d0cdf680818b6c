"""A border with one number of a round changed: its chains, or the stitches of its groups."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from border.text.readings import Reading, Round
from border.text.steps import walk
from border.text.tree import (
    Arch,
    AsTheyCome,
    Bracket,
    Chains,
    Item,
    Kind,
    Repeat,
    Stitches,
    Text,
    Which,
)
from border.working.fabric import CHAIN


class Change(Struct, frozen=True):
    """In a round, `now` chains (`what` is `ch`) or stitches of that kind worked into one
    place, wherever there were `was`; `clause`: only in the clause of that number, from 0."""

    round: int
    what: str
    was: int
    now: int
    clause: int | None = None


def can_change(round_: Round) -> tuple[Change, ...]:
    """What there is in a round to be changed, each once, as changes that change nothing yet."""
    found: dict[Change, None] = {}
    for clause, text in _texts(round_):
        if any(isinstance(item, Arch) for item in walk(text.items)):
            continue  # it counts back over what it has made
        for item in walk(text.items):
            for what, was in _numbers(item):
                found[Change(round_.number, what, was, was, clause)] = None
    return tuple(found)


def _texts(round_: Round) -> list[tuple[int | None, Text]]:
    body = round_.body
    if isinstance(body, Text):
        return [(None, body)]
    return [(number, clause.text) for number, clause in enumerate(body)]


def _numbers(item: Item) -> Iterator[tuple[str, int]]:
    match item:
        case Chains(count=count):
            yield CHAIN, count
        case Stitches():
            for chains in (item.between, item.parted):
                if chains:
                    yield CHAIN, chains
            if _into_one(item):
                yield item.stitch, item.count
        case Bracket(items=items, parted=parted) | AsTheyCome(items=items, parted=parted):
            if parted:
                yield CHAIN, parted
            for inner in walk(items):
                if isinstance(inner, Stitches) and _goes_inside(inner):
                    yield inner.stitch, inner.count
        case _:
            pass


def _into_one(item: Stitches) -> bool:
    """Whether all of its stitches go into one place, more than one of them or in each place."""
    place = item.place
    if place is None or item.together or item.cluster:
        return False
    alone = place.count == 1 or place.each or place.which in (Which.NTH, Which.EVERY)
    return alone and (item.count > 1 or place.which is Which.EACH)


def _goes_inside(item: Stitches) -> bool:
    """Whether stitches of a bracket go into its place, or those of a part into each of its own."""
    return item.place is None or item.place.which is Which.NEXT


def changed(reading: Reading, change: Change) -> Reading:
    """The border with the change made, and what the next round says of it (`ch-5 space`)."""
    rounds = []
    for round_ in reading.rounds:
        if round_.number == change.round:
            round_ = _mapped(round_, _Numbers(change), change.clause)
        elif round_.number == change.round + 1:
            round_ = _mapped(round_, _Names(change), None)
        rounds.append(round_)
    return replace(reading, rounds=tuple(rounds))


def _mapped(round_: Round, mapping: _Numbers | _Names, only: int | None) -> Round:
    """A round with its text mapped, or its clauses; `only`: the one of that number."""
    body, repeated = round_.body, round_.repeated
    if isinstance(body, Text):
        new = mapping.of(repeated) if repeated else None
        return replace(round_, body=mapping.of(body), repeated=new)
    clauses = tuple(
        replace(clause, text=mapping.of(clause.text)) if only in (None, number) else clause
        for number, clause in enumerate(body)
    )
    return replace(round_, body=clauses)


class _Numbers:
    """Numbers of steps: those `inside` a bracket all go into its place, or as they come."""

    def __init__(self, change: Change) -> None:
        self.change = change

    def of(self, value: Any, inside: bool = False) -> Any:
        c = self.change
        match value:
            case tuple():
                return tuple(self.of(one, inside) for one in value)
            case Chains(count=c.was) if c.what == CHAIN:
                return replace(value, count=c.now)
            case Stitches():
                return self._stitches(value, inside)
            case Bracket() | AsTheyCome():
                value = replace(value, items=self.of(value.items, True))
                hit = c.what == CHAIN and value.parted == c.was
                return replace(value, parted=c.now) if hit else value
            case Text() | Repeat():
                return replace(value, items=self.of(value.items, inside))
            case _:
                return value

    def _stitches(self, item: Stitches, inside: bool) -> Stitches:
        c = self.change
        if c.what == CHAIN:
            between = c.now if item.between == c.was else item.between
            parted = c.now if item.parted == c.was else item.parted
            return replace(item, between=between, parted=parted)
        mine = _into_one(item) or (inside and _goes_inside(item))
        hit = mine and item.stitch == c.what and item.count == c.was
        return replace(item, count=c.now) if hit else item


class _Names:
    """Names of what the changed round made: `ch-5 space`, `group of 5`."""

    def __init__(self, change: Change) -> None:
        self.change = change

    def of(self, value: Any) -> Any:
        c = self.change
        match value:
            case Kind(name="space" | "loop", size=c.was) if c.what == CHAIN:
                return replace(value, size=c.now)
            case Kind(name="group" | "block", size=c.was) if c.what != CHAIN:
                return replace(value, size=c.now)
            case tuple():
                return tuple(self.of(one) for one in value)
            case Struct():
                new = {name: self.of(getattr(value, name)) for name in value.__struct_fields__}
                return replace(value, **new)
            case _:
                return value
