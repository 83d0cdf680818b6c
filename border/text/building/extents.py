"""How far a repeat goes: so many times, to the end, to the last N."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.text.building.places import build_target
from border.text.nodes import Building, is_token, is_tree
from border.text.tree import ToLast
from border.text.wording.exceptions import GROUP

if TYPE_CHECKING:
    from lark import Token, Tree

    from border.text.nodes import Node


class Extent(Struct, frozen=True):
    """How far a repeat goes: `times`, and the word that says how they are counted.

    `counted`: None, `TIMES`, `MORE` or `INALL`. `from_star`, `from_head`: where
    it says that it goes back to. `group`: how often is only said by a scallop that it goes round.
    """

    counted: str | None = None
    times: int = 0
    to_end: bool = False
    to_last: ToLast | None = None
    from_star: bool = False
    from_head: bool = False
    group: bool = False

    @property
    def bare(self) -> bool:
        """It says neither how often nor how far, or only to the end."""
        return self.counted is None and self.to_last is None


def build_extent(nodes: Sequence[Node], b: Building) -> Extent:
    """The extent that the words behind a repeat or a bracket come to."""
    extent = Extent()
    for node in nodes:
        if is_token(node, "FROMSTAR", "FROMHEAD"):
            from_star = node.type == "FROMSTAR"
            extent = replace(extent, from_star=from_star, from_head=not from_star)
            continue
        told = _told(node, b)
        if told is None:
            continue
        if extent.counted and is_token(node, "TOEND") and "round" in b.of(node).text:
            continue  # `repeat 8 times all round`
        if extent.counted or extent.to_end or extent.to_last:
            raise b.misread("this says twice how often", "leave one of the two out", node)
        extent = replace(told, from_star=extent.from_star, from_head=extent.from_head)
    return extent


def _told(node: Node, b: Building) -> Extent | None:
    if is_token(node, "TOEND"):
        return Extent(to_end=True)
    if is_tree(node, "times"):
        (token,) = node.children
        assert is_token(token)
        counted = b.of(token)
        if counted.number == 0:
            raise b.misread("nothing is worked 0 times", "write a number from 1", node)
        return Extent(counted.type, counted.number, group=counted.name == GROUP)
    if is_tree(node, "to_last"):
        return Extent(to_last=_to_last(node, b))
    return None


def _to_last(node: Tree[Token], b: Building) -> ToLast:
    number = node.children[1]
    count = b.of(number).number if is_token(number, "NUM") else 1
    return ToLast(count, build_target(node.children[-1], b))
