"""One step of a row changed, however deep it stands."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Span
from border.text.readings import Round
from border.text.tree import Bracket, Item, Repeat, Text

Items = tuple[Item, ...]


class Change(Struct, frozen=True):
    """Steps with one of them changed: `old` into `new`, which may be several or none."""

    items: Items
    old: Item
    new: Items


class Otherwise(Struct, frozen=True):
    """A round read otherwise.

    `code`: of the finding that tells of it. `if_`: what would have to be so, to be
    read behind "if". `edit`: what to write to say so. `below`: the round before it,
    where it is that one that is read otherwise. `if_nothing`: of a row that comes to nothing as it
    is read, and of no other.
    """

    code: str
    if_: str
    edit: str
    at: Span
    round: Round
    below: Round | None = None
    if_nothing: bool = False


Changing = Callable[[Items, int], Iterable[Items]]
"""(the steps of a list, which of them) -> what may stand in place of it."""


def changed(
    items: Items, change: Callable[[Item], Iterable[Items]], *, in_brackets: bool = True
) -> Iterator[Change]:
    """Every way to change one step; `change` gives what may stand in place of it."""
    yield from changed_beside(items, lambda steps, n: change(steps[n]), in_brackets=in_brackets)


def changed_beside(items: Items, change: Changing, *, in_brackets: bool = True) -> Iterator[Change]:
    """The same, where it matters what stands beside a step.

    `in_brackets`: steps are changed in a bracket that goes into one place, too.
    """
    inside = Repeat | Bracket if in_brackets else Repeat
    for n, item in enumerate(items):
        for new in change(items, n):
            yield Change(items[:n] + new + items[n + 1 :], item, new)
        if isinstance(item, inside):
            for inner in changed_beside(item.items, change, in_brackets=in_brackets):
                if inner.items:
                    whole = replace(item, items=inner.items)
                    yield Change((*items[:n], whole, *items[n + 1 :]), inner.old, inner.new)


def steps_of(round_: Round) -> Items:
    """All steps of a round, those of its clauses one behind the other."""
    if isinstance(round_.body, Text):
        return round_.body.items
    return tuple(item for clause in round_.body for item in clause.text.items)


def rounds_with(
    round_: Round, change: Callable[[Items], Iterable[Change]]
) -> Iterator[tuple[Round, Change]]:
    """The round with each change of its steps; of clauses, each by itself."""
    if isinstance(round_.body, Text):
        for one in change(round_.body.items):
            yield replace(round_, body=replace(round_.body, items=one.items)), one
        return
    for n, clause in enumerate(round_.body):
        for one in change(clause.text.items):
            text = replace(clause.text, items=one.items)
            body = (*round_.body[:n], replace(clause, text=text), *round_.body[n + 1 :])
            yield replace(round_, body=body), one
