"""Places: the parse of `in each of the next 3 ch-5 spaces` becomes a place of the tree."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, TypeAlias

from border.findings import Finding
from border.text.clauses import kind_of
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.tree import (
    Between,
    BetweenPicots,
    Centre,
    Kind,
    Part,
    Place,
    Target,
    Which,
    Whole,
)

Node: TypeAlias = Any
"""A node of lark's parse: `data` names its rule, `children` are nodes and tokens. Not typed
as lark's, which is imported only once a row is parsed."""


class Unfit(Exception):
    """Words in an order that makes no place."""

    def __init__(self, message: str, help_: str, at: Sequence[Terminal]) -> None:
        super().__init__()
        self.message, self.help, self.at = message, help_, at

    def finding(self, source: Source) -> Finding:
        span = source.span(self.at[0].start, self.at[-1].end)
        return Finding("not-understood", self.message, self.help, span)


@dataclass(frozen=True, slots=True)
class Member:
    """One member of a union. `which` None: no word says which."""

    which: Which | None
    count: int
    each: bool
    target: Target | None


def leaves(node: Node | Any) -> list[Terminal]:
    """The terminals below a node, in order."""
    if not hasattr(node, "children"):
        return [node.value]
    return [leaf for child in node.children for leaf in leaves(child)]


def place_of(members: Sequence[Node], source: Source) -> Place:
    """The place that a union names. Raises Unfit."""
    at = [leaf for node in members for leaf in leaves(node)]
    read = [_member(node) for node in members]
    first = read[0]
    targets = tuple(m.target for m in read if m.target is not None)
    for other in read[1:]:
        alike = (other.which or first.which) == first.which and first.which is not Which.SAME
        if not alike or other.count != first.count or other.target is None:
            message = "these places cannot be named together: they do not say the same of which"
            raise Unfit(message, 'write "next space or block", "each space and each dc"', at)
    which = first.which or Which.NEXT
    ordered = sorted(at, key=lambda t: t.start)
    span = source.span(ordered[0].start, max(t.end for t in ordered))
    return Place(which, targets, first.count, first.each, span)


def target_of(node: Node) -> Target:
    """The target of `to last 2 X`."""
    terminals = leaves(node) if node.data != "to_last" else leaves(node)[1:]
    if len(node.children) and node.data in ("part", "centre", "between"):
        target = _member_body(node).target
        assert target is not None
        return target
    return Whole(_kind(terminals))


def _kind(terminals: Sequence[Terminal]) -> Kind:
    kinds = [k for t in terminals if (k := kind_of(t)) is not None]
    if not kinds:
        raise Unfit("no place is named here", "name a st, loop, space or block", terminals)
    return kinds[-1]


def _number(terminals: Sequence[Terminal]) -> int | None:
    number = next((t.number for t in terminals if t.type == "NUM"), None)
    if number == 0:
        raise Unfit("nothing can be worked into none", "write a number from 1", terminals)
    return number


def _member(node: Node) -> Member:
    if node.data == "member":
        return _member_of(node)
    return _member_body(node)


def _member_of(node: Node) -> Member:
    inner = node.children
    if len(inner) == 1 and hasattr(inner[0], "data") and inner[0].data != "det":
        return _member_body(inner[0])
    which, each, every = _determiner(inner)
    terminals = leaves(node)
    number = _number(terminals)
    return _counted(which, each, every, number, Whole(_kind(terminals)), terminals)


def _determiner(children: Sequence[Any]) -> tuple[Which | None, bool, int]:
    """Which, whether `each of`, and N of `every Nth`, by the words before a noun."""
    det = next((c for c in children if hasattr(c, "data") and c.data == "det"), None)
    words = leaves(det) if det is not None else [
        c.value for c in children if not hasattr(c, "data")
        and c.value.type in ("SAME", "ORD", "CENTRE")
    ][:1]  # fmt: skip
    each = any(w.type == "EACHOF" for w in words)
    words = [w for w in words if w.type != "EACHOF"]
    if not words:
        return None, each, 0
    word = words[0]
    match word.type:
        case "ORD":
            return _ordinal(word, each), each, word.number
        case "EVERY":
            return Which.EVERY, False, word.number or 2
        case "EACH":
            return Which.EACH, False, 0
        case "NEXT" | "THE" | "SAME" | "CENTRE" | "SKIPPED":
            return Which(word.type.lower()), each, 0
        case _:
            raise Unfit("this does not say which one is meant", "write next, each, first", words)


def _ordinal(word: Terminal, each: bool) -> Which:
    if word.number in (1, -1):
        return Which.FIRST if word.number == 1 else Which.LAST
    if each or word.number < 1:
        raise Unfit(
            "only the first or the last can be counted so", "write each of the first 2", [word]
        )
    return Which.NTH


def _counted(
    which: Which | None,
    each: bool,
    every: int,
    number: int | None,
    target: Target,
    terminals: Sequence[Terminal],
) -> Member:
    if which in (Which.EVERY, Which.NTH):
        return Member(which, every, False, target)
    if which is Which.EACH and number is not None and number > 1:
        return Member(Which.NEXT, number, True, target)
    if which in (Which.SAME, Which.SKIPPED) and (number or 1) > 1:
        raise Unfit("this names one place only", "leave the number out", terminals)
    return Member(which, number or 1, each, target)


def _member_body(node: Node) -> Member:
    terminals = leaves(node)
    match node.data:
        case "same":
            named = any(kind_of(t) for t in terminals)
            return Member(Which.SAME, 1, False, Whole(_kind(terminals)) if named else None)
        case "nth" | "middle":
            which, each, every = _determiner(node.children)
            number = _number(terminals)
            return _counted(which, each, every, number, Whole(_kind(terminals)), terminals)
        case "part":
            ordinal, unit = terminals[0], kind_of(terminals[1])
            of = _of(node, 2)
            if unit is None or unit.name not in _UNITS:
                help_ = "name a st, a ch or a kind of stitch: first st of next block"
                raise Unfit("this is no part of a place", help_, terminals)
            return replace(of, target=Part(ordinal.number, unit, _whole(of).of))
        case "centre":
            of = _of(node, 1)
            return replace(of, target=Centre(_whole(of).of))
        case "between":
            return _between(node, terminals)
        case _:
            raise Unfit("no place is named here", "name a st, loop, space or block", terminals)


_UNITS = frozenset({"st", "ch", "ss", "sc", "hdc", "dc", "tr", "dtr", "trtr"})


def _whole(of: Member) -> Whole:
    assert isinstance(of.target, Whole)
    return of.target


def _of(node: Node, behind: int) -> Member:
    """What stands behind `of`: `next block`, `each of the next 2 spaces`."""
    children = list(node.children)
    start = next(
        (i for i, c in enumerate(children) if not hasattr(c, "data") and c.value.type == "OF"),
        behind - 1,
    )
    rest = children[start + 1 :]
    which, each, every = _determiner(rest)
    terminals = [leaf for child in rest for leaf in leaves(child)]
    number = _number(terminals)
    return _counted(which, each, every, number, Whole(_kind(terminals)), terminals)


def _between(node: Node, terminals: Sequence[Terminal]) -> Member:
    if len(terminals) > 2 and terminals[1].type == "PICOT" and terminals[2].type == "OF":
        of = _of(node, 3)
        return replace(of, target=BetweenPicots(_whole(of).of))
    which, _, every = _determiner(node.children)
    number = _number(terminals)
    pair = any(t.type == "PAIR" for t in terminals)
    if number not in (None, 2) and not pair:
        help_ = 'write "between next 2 spaces"'
        raise Unfit("there is a between only for two", help_, terminals)
    target = Between(_kind(terminals))
    if which in (Which.EVERY, Which.NTH):
        return Member(which, every, False, target)
    return Member(which, 1, False, target)
