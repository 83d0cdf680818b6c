"""What the builders of the tree share: where nodes stand, and how a fault is told."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal, TypeGuard

from msgspec import Struct, field

from border.findings import Finding, Span
from border.text.terminals import Terminal
from border.text.tree import Headings, Item, Kind, Text
from border.text.written_steps import write_item

if TYPE_CHECKING:
    from lark import Token, Tree

    Node = Tree[Token] | Token


class Misread(Exception):
    """A step that cannot be made into the tree; carries its finding, and never leaves the floor."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


Hard = Literal["", "then", "stop"]


class Step(Struct, frozen=True):
    """A step of a list; `hard`: what stands before it and ends a list, `then`, or a stop: a
    semicolon, a full stop, a repeat."""

    item: Item
    hard: Hard


class Building(Struct):
    """One text being built: its terminals, the headings, and the findings so far.

    `clause`: it is a clause, not a whole row. `round` is the row's first number.
    `at_once`: what has been taken up several at once so far. `joined`: the round ends in one of
    the chains at its head. `below`: the text of the row below, where it is known.
    """

    terminals: Sequence[Terminal]
    source: str
    headings: Headings
    round: int
    clause: bool = False
    findings: list[Finding] = field(default_factory=list)
    at_once: set[Kind] = field(default_factory=set)
    joined: bool = False
    below: Text | None = None

    @property
    def terms(self) -> str:
        return self.headings.terms or "us"

    def of(self, token: Token) -> Terminal:
        """The terminal that a token of the parse stands for."""
        assert token.start_pos is not None
        return self.terminals[token.start_pos]

    def said_between(self, before: Item, behind: Item) -> list[str]:
        """The words that stand between two steps."""
        start, end = before.span.end, behind.span.start
        return [t.text for t in self.terminals if start <= t.start < end]

    def joined_by_and(self, before: Item, behind: Item) -> bool:
        """Whether only an `and` stands between two steps: not `and work`, `, and`."""
        between = self.said_between(before, behind)
        last = next((t.end for t in reversed(self.terminals) if t.end <= behind.span.start), 0)
        return between == ["and"] and last + 1 == behind.span.start

    def stopped(self, first: Item, last: Item) -> bool:
        """Whether full stops part the steps from one to another, and no semicolon does."""
        start, end = first.span.end, last.span.start
        stops = [t.text for t in self.terminals if start <= t.start < end and t.name == "hard"]
        return bool(stops) and set(stops) == {"."}

    def terminals_in(self, span: Span) -> list[Terminal]:
        """What stands in a stretch of the source."""
        return [t for t in self.terminals if span.start <= t.start < span.end]

    def said_in(self, span: Span) -> set[str]:
        """The words that stand in a stretch of the source."""
        return {t.text for t in self.terminals_in(span)}

    def span(self, *nodes: Node) -> Span:
        """The stretch of the source that nodes cover."""
        tokens = [self.of(token) for node in nodes for token in leaves(node)]
        return Span(self.source, min(t.start for t in tokens), max(t.end for t in tokens))

    def written(self, item: Item) -> str:
        """A step in the words of the text's own terms, as a finding shows it."""
        return write_item(item, self.terms, self.headings.overrides)

    def is_asked(self, span: Span) -> bool:
        """Whether something is told already of a stretch of the source, or of a part of it."""
        told = (finding.span for finding in self.findings if finding.span is not None)
        return any(one.start < span.end and span.start < one.end for one in told)

    def tell(self, code: str, message: str, help_: str, span: Span) -> None:
        """Tell something of the row, once, and go on."""
        finding = Finding(code, message, help_, span, self.round)
        if self.findings[-1:] != [finding]:
            self.findings.append(finding)

    def misread(
        self, message: str, help_: str, *nodes: Node, code: str = "not-understood"
    ) -> Misread:
        """What to raise where these nodes make no step."""
        return self.misread_at(message, help_, self.span(*nodes), code)

    def misread_at(
        self, message: str, help_: str, span: Span, code: str = "not-understood"
    ) -> Misread:
        """What to raise where what stands there makes no step."""
        return Misread(Finding(code, message, help_, span, self.round))


def leaves(node: Node) -> list[Token]:
    """The tokens under a node, in order."""
    if is_token(node):
        return [node]
    found: list[Token] = []
    for child in node.children if is_tree(node) else ():
        if is_token(child):
            found.append(child)
        else:
            found += leaves(child)
    return found


# Told apart by their attributes: lark itself is loaded only where a row is parsed.


def is_token(node: Node, *types: str) -> TypeGuard[Token]:
    """Whether a node is a token, of one of the types if any are given."""
    kind = getattr(node, "type", None)
    return kind is not None and (not types or kind in types)


def is_tree(node: Node, *names: str) -> TypeGuard[Tree[Token]]:
    """Whether a node is a tree, of one of the names if any are given."""
    name = getattr(node, "data", None)
    return name is not None and (not names or name in names)
