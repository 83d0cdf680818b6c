"""The pieces of a text, between the flat parse and the tree."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from border.findings import Span
from border.text.tree import Item, Place, ToLast


@dataclass(frozen=True, slots=True)
class Step:
    """A step of the tree, complete but for `all in` behind it."""

    item: Item


@dataclass(frozen=True, slots=True)
class Pause:
    """A separator. `hard`: it ends a list before a place (semicolon, full stop, then)."""

    hard: bool


@dataclass(frozen=True, slots=True)
class Star:
    """The mark that a repeat goes back to."""

    span: Span


@dataclass(frozen=True, slots=True)
class ToStar:
    """`repeat …`. `times` counts all workings (None: open-ended).

    `star`: it says "from *". `head`: "from the beginning". `plain`: it says
    neither how often nor how far, or only to the end.
    """

    times: int | None
    to_last: ToLast | None
    star: bool
    head: bool
    plain: bool
    span: Span


@dataclass(frozen=True, slots=True)
class AllIn:
    """`all in next space`: the place of the list before it."""

    place: Place
    parted: int
    span: Span


@dataclass(frozen=True, slots=True)
class Leave:
    """`leave unworked`."""

    span: Span


Piece: TypeAlias = Step | Pause | Star | ToStar | AllIn | Leave
