"""The builder: the flat parse of a text becomes the steps of the tree.

The grammar leaves stars, separators and bare repeats where they stand; here
each repeat finds its star, `all in` gathers its list, and a list before a
place that could be bracketed in two ways is told (`lists.py`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from border.findings import Finding, Span
from border.text.lists import judge
from border.text.makes import Maker
from border.text.pieces import AllIn, Leave, Pause, Piece, Star, Step, ToStar
from border.text.places import Node, Unfit, leaves
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.tree import (
    Begin,
    Bracket,
    Chains,
    End,
    Ending,
    Headings,
    Item,
    Picots,
    Repeat,
    StartChain,
    Stitches,
    Text,
    ToLast,
)

if TYPE_CHECKING:
    pass


@dataclass(slots=True)
class Builder:
    """Builds one text. `row`: it is a row of its own, not a clause."""

    source: Source
    headings: Headings
    row: bool
    findings: list[Finding]

    def text(self, tree: Node, span: Span) -> Text:
        """The text that a parse says."""
        maker = Maker(self.source, self.headings, self.findings, self._bracket)
        pieces = maker.pieces(tree.children)
        self.findings += judge(pieces, self.headings, self.row)
        items, repeats, ends = self._assembled(pieces, top=True)
        return Text(tuple(items), repeats, tuple(ends), span)

    # --- stars and repeats ------------------------------------------------------

    def _assembled(
        self, pieces: Sequence[Piece], *, top: bool
    ) -> tuple[list[Item], bool, list[End]]:
        items: list[Item] = []
        stars: list[tuple[int, Span]] = []
        repeats = False
        for n, piece in enumerate(pieces):
            match piece:
                case Step(item=item):
                    items.append(item)
                case Star(span=span):
                    stars.append((len(items), span))
                case ToStar():
                    behind = [p for p in pieces[n + 1 :] if not isinstance(p, Pause)]
                    ending = all(isinstance(p, Step) and isinstance(p.item, End) for p in behind)
                    if piece.plain and not piece.star and not stars and top and ending:
                        repeats = True
                    else:
                        self._close(items, stars, piece)
                case AllIn():
                    self._gather(items, stars, piece)
                case Pause() | Leave():
                    pass
        for _, span in stars:
            message = "no repeat goes back to this star"
            help_ = 'write "repeat from *" where the stretch ends, or leave the star out'
            self.findings.append(Finding("star-without-repeat", message, help_, span))
        ends: list[End] = []
        while top and items and isinstance(last := items[-1], End):
            ends.insert(0, last)
            items.pop()
        return items, repeats, ends

    def _close(self, items: list[Item], stars: list[tuple[int, Span]], piece: ToStar) -> None:
        """Make the stretch since the star, or since the head of the row, a repeat."""
        if stars and not piece.head:
            start, span = stars.pop()
        else:
            if piece.star:
                message = "this repeat goes back to a star that is not there"
                help_ = "put a * where the repeat begins"
                self.findings.append(Finding("repeat-without-star", message, help_, piece.span))
            start = 0
            while start < len(items) and isinstance(items[start], Begin | StartChain | End):
                start += 1
            span = items[start].span if start < len(items) else piece.span
        stretch = tuple(items[start:])
        del items[start:]
        if stretch:
            whole = span.to(piece.span)
            items.append(Repeat(stretch, piece.times, piece.to_last, star=True, span=whole))

    def _gather(self, items: list[Item], stars: list[tuple[int, Span]], piece: AllIn) -> None:
        """`all in X` takes the list back to the last placed stitch, skip or repeat mark."""
        start = len(items)
        least = stars[-1][0] if stars else 0
        while start > least and _gathers(items[start - 1]):
            start -= 1
        stretch = tuple(items[start:])
        if not stretch:
            message = '"all in" has no list of stitches before it'
            help_ = "write the stitches first: 2 dc, ch 2, 2 dc, all in next space"
            self.findings.append(Finding("not-understood", message, help_, piece.span))
            return
        del items[start:]
        span = stretch[0].span.to(piece.span)
        items.append(self._placed(Bracket(stretch, piece.place, piece.parted, span)))

    def _placed(self, bracket: Bracket) -> Bracket:
        return bracket

    # --- brackets ---------------------------------------------------------------

    def _bracket(self, node: Node, maker: Maker) -> Item:
        """`( … )` with what stands behind it."""
        children = list(node.children)
        close = max(i for i, c in enumerate(children) if _is(c, "RP"))
        inside, suffixes = children[1:close], children[close + 1 :]
        times_inside = [c for c in inside if hasattr(c, "data") and c.data == "times"]
        pieces = maker.pieces([c for c in inside if c not in times_inside])
        self.findings += judge(pieces, self.headings, row=False)
        items, _, _ = self._assembled(pieces, top=False)
        ends = leaves(node)
        span = self.source.span(ends[0].start, max(t.end for t in ends))
        if not items:
            raise Unfit("there is nothing to work in this bracket", "leave it out", ends)
        inner = tuple(items)
        whole: Item | None = None
        if times_inside:
            whole = Repeat(inner, _bracket_times(times_inside[0]), span=span)
        parted = 0
        for suffix in suffixes:
            kind = suffix.data if hasattr(suffix, "data") else suffix.type
            body = (whole,) if whole is not None else inner
            if kind == "times":
                whole = Repeat(body, _bracket_times(suffix), span=span)
            elif kind == "TOEND":
                whole = Repeat(body, None, span=span)
            elif kind == "to_last":
                whole = Repeat(body, None, maker.to_last(suffix), span=span)
            elif kind == "place":
                place, _ = maker.place(suffix)
                whole = Bracket(body, place, parted, span)
                if place.count > 1 and not place.each and place.which.value in _COUNTABLE:
                    self.findings.append(_each_of(place.count, span))
            elif kind == "BETW" and isinstance(whole, Bracket):
                whole = replace(whole, parted=suffix.value.number)
            elif kind == "BETW":
                parted = suffix.value.number
            elif kind == "MOD" and whole is None:
                inner = tuple(_modified(item, suffix.value.name) for item in inner)
        return whole if whole is not None else Repeat(inner, 1, span=span)


_COUNTABLE = ("next", "the", "first", "last", "centre")


def _is(node: Any, type_: str) -> bool:
    return not hasattr(node, "data") and node.type == type_


def _bracket_times(node: Node) -> int:
    """A number behind a bracket, or in it, counts all; `N more times` adds the first."""
    terminal: Terminal = leaves(node)[-1]
    if terminal.number == 0:
        raise Unfit("a repeat is made at least once", "write a number from 1", [terminal])
    return terminal.number + 1 if terminal.type == "MORE" else terminal.number


def _modified(item: Item, modifier: str) -> Item:
    if isinstance(item, Stitches):
        return replace(item, modifiers=(*item.modifiers, modifier))
    return item


def _gathers(item: Item) -> bool:
    match item:
        case Chains() | Picots():
            return True
        case Stitches(place=None):
            return True
        case Repeat(star=False, times=int(), items=items):
            return all(_gathers(inner) for inner in items)
        case _:
            return False


def _each_of(count: int, span: Span) -> Finding:
    message = f"whether the bracket goes into each of the {count} is not said"
    help_ = f"write: in each of the next {count} …"
    return Finding("place-unclear", message, help_, span)
