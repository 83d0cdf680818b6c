"""Single steps: each phrase of the parse becomes one step of the tree."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from border.findings import Finding, Span
from border.text.pieces import AllIn, Leave, Pause, Piece, Star, Step, ToStar
from border.text.places import Node, Unfit, leaves, place_of, target_of
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.tree import (
    Begin,
    Chains,
    End,
    Ending,
    Headings,
    Item,
    Picots,
    Place,
    Skip,
    StartChain,
    Stitches,
    ToLast,
    Which,
)


@dataclass(slots=True)
class Maker:
    """Makes the pieces of a text. What cannot be made is told and left out."""

    source: Source
    headings: Headings
    findings: list[Finding]
    bracket: Callable[[Node, Maker], Item]

    def pieces(self, children: Sequence[Any]) -> list[Piece]:
        made: list[Piece] = []
        for child in children:
            try:
                if not hasattr(child, "data"):
                    made += self._mark(child.value)
                elif child.data == "begin" and self._is_joining(child, children):
                    made.append(Step(End(Ending.JOIN, self._span(child))))
                else:
                    self._phrase(child, made)
            except Unfit as unfit:
                self.findings.append(unfit.finding(self.source))
        return made

    def _mark(self, terminal: Terminal) -> list[Piece]:
        span = self.source.span(terminal.start, terminal.end)
        match terminal.type:
            case "SEP":
                return [Pause(bool(terminal.name))]
            case "STAR":
                return [Star(span)]
            case "ENDING":
                return [Step(End(Ending(terminal.name), span))]
            case _:
                return [Leave(span)]

    def _span(self, node: Node) -> Span:
        terminals = leaves(node)
        return self.source.span(min(t.start for t in terminals), max(t.end for t in terminals))

    def _phrase(self, node: Node, made: list[Piece]) -> None:
        match node.data:
            case "chains":
                made.append(Step(Chains(_count(leaves(node)), self._span(node))))
            case "start_chain":
                made.append(Step(self._start_chain(node)))
            case "stitches":
                self._stitches(node, made)
            case "picots":
                made.append(Step(self._picots(node)))
            case "skip":
                made.append(Step(self._skip(node)))
            case "bracket":
                made.append(Step(self.bracket(node, self)))
            case "repeat":
                made.append(self._repeat(node))
            case "all_in":
                made.append(self._all_in(node))
            case _:
                made.append(Step(self._begin(node)))

    # --- places -----------------------------------------------------------------

    def place(self, node: Node) -> tuple[Place, tuple[str, ...]]:
        """A place, and the modifiers that stand in it."""
        mods = tuple(
            c.value.name for c in node.children if not hasattr(c, "data") and c.value.type == "MOD"
        )
        members = [c for c in node.children if hasattr(c, "data")]
        place = place_of(members, self.source)
        return replace(place, span=self._span(node)), mods

    def to_last(self, node: Node) -> ToLast:
        terminals = leaves(node)
        number = next((t.number for t in terminals if t.type == "NUM"), 1)
        inner = [c for c in node.children if hasattr(c, "data")]
        return ToLast(number, target_of(inner[0] if inner else node))

    # --- steps ------------------------------------------------------------------

    def _start_chain(self, node: Node) -> StartChain:
        terminals = leaves(node)
        place = None
        for child in node.children:
            if hasattr(child, "data") and child.data == "place":
                place, _ = self.place(child)
                break
        kinds = [t.type for t in terminals]
        if "NOTCOUNTED" in kinds:
            return StartChain(_count(terminals), None, span=self._span(node))
        at = kinds.index("AS")
        stitch = next(t for t in terminals[at:] if t.type == "STITCH")
        then = 0
        if "PLUS" in kinds:
            then = _count(terminals[kinds.index("PLUS") + 1 :])
        count = _count(terminals[:at])
        return StartChain(count, stitch.name, then, place, self._span(node))

    def _stitches(self, node: Node, made: list[Piece]) -> None:
        item = Stitches(1, "", span=self._span(node))
        place: Place | None = None
        for child in node.children:
            if hasattr(child, "data"):
                if child.data == "ring":
                    self._ring(child, item, made)
                    return
                if place is not None:
                    raise Unfit("this stitch has two places", "name one of them", leaves(child))
                place, mods = self.place(child)
                item = replace(item, place=place, modifiers=(*item.modifiers, *mods))
                continue
            item = self._word(child.value, item, place)
        made.append(Step(self._checked(item)))

    def _word(self, word: Terminal, item: Stitches, place: Place | None) -> Stitches:
        match word.type:
            case "NUM":
                if word.number == 0:
                    raise Unfit("no stitches are made here", "write a number from 1", [word])
                return replace(item, count=word.number)
            case "STITCH":
                return replace(item, stitch=word.name)
            case "CLUSTER":
                if not word.name or not word.number:
                    help_ = "write its stitches: 3-dc cluster"
                    raise Unfit("of what this cluster is made is not said", help_, [word])
                return replace(item, stitch=word.name, cluster=word.number)
            case "BETW" if place is not None and (place.each or place.which in _MANY):
                return replace(item, parted=word.number)
            case "BETW":
                return replace(item, between=word.number)
            case "TOGETHER" | "ALLTOGETHER":
                return replace(item, together=True)
            case "MOD":
                return replace(item, modifiers=(*item.modifiers, word.name))
            case _:
                return item

    def _checked(self, item: Stitches) -> Stitches:
        """Ask which number goes with which, where `each` is not said."""
        place = item.place
        if place is None or place.each or place.count == 1:
            return item
        if place.which in (Which.NTH, Which.EVERY) or item.count in (1, place.count):
            return item
        if item.count == 1 and item.together:
            return item
        n, m = item.count, place.count
        message = f"how {n} stitches go into {m} places is not said"
        help_ = f'write "{n} in each of the next {m}", or "1 in each of the next {m}"'
        self.findings.append(Finding("place-unclear", message, help_, item.span))
        return item

    def _ring(self, node: Node, item: Stitches, made: list[Piece]) -> None:
        """A picot written out: chains closed by a stitch into the first of them."""
        terminals = leaves(node)
        ordinal = next(t.number for t in terminals if t.type == "ORD")
        before = next((i for i in range(len(made) - 1, -1, -1) if isinstance(made[i], Step)), -1)
        chains = made[before].item if before >= 0 else None  # type: ignore[union-attr]
        if not isinstance(chains, Chains):
            help_ = "write the chains right before it: ch 4, 1 sc in the first of the 4 ch"
            raise Unfit("there are no chains before this to close into a picot", help_, terminals)
        hook = any(t.type == "FROMHOOK" for t in terminals)
        named = next((t.number for t in terminals if t.type == "NUM"), chains.count)
        size = ordinal if hook else chains.count
        if (not hook and (ordinal != 1 or named != chains.count)) or size > chains.count:
            help_ = f"write: in the first of the {chains.count} ch"
            raise Unfit("these are not the chains made before this", help_, terminals)
        del made[before:]
        if chains.count > size:
            made.append(Step(Chains(chains.count - size, chains.span)))
        made.append(Step(Picots(1, size, chains.span.to(item.span))))

    def _picots(self, node: Node) -> Picots:
        terminals = leaves(node)
        picot = next(t for t in terminals if t.type == "PICOT")
        return Picots(_count(terminals), picot.number or 3, self._span(node))

    def _skip(self, node: Node) -> Skip:
        terminals = leaves(node)
        members = [c for c in node.children if hasattr(c, "data")]
        if not members:
            return Skip(_count(terminals[1:]), None, self._span(node))
        place = place_of(members, self.source)
        if place.which not in (Which.NEXT, Which.THE, Which.FIRST) or len(place.targets) != 1:
            raise Unfit("this cannot be skipped", 'write "skip 2 st", "skip next space"', terminals)
        return Skip(place.count, place.targets[0], self._span(node))

    def _repeat(self, node: Node) -> ToStar:
        times: int | None = None
        to_last = None
        star = head = ends = False
        for child in node.children[1:]:
            if hasattr(child, "data"):
                if child.data == "times":
                    times = self._repeat_times(leaves(child)[-1])
                else:
                    to_last = self.to_last(child)
            else:
                star |= child.value.type == "FROMSTAR"
                head |= child.value.type == "FROMHEAD"
                ends |= child.value.type == "TOEND"
        plain = times is None and to_last is None
        return ToStar(times, to_last, star, head, plain, self._span(node))

    def _repeat_times(self, word: Terminal) -> int:
        """`repeat from * N times`: N more, or N in all where the heading says so."""
        if word.number == 0:
            raise Unfit("a repeat of no times is none", "write a number from 1", [word])
        in_all = word.type == "INALL" or (word.type == "TIMES" and bool(self.headings.in_all))
        return word.number if in_all else word.number + 1

    def _all_in(self, node: Node) -> AllIn:
        members = [c for c in node.children if hasattr(c, "data")]
        between = [
            c.value.number
            for c in node.children
            if not hasattr(c, "data") and c.value.type == "BETW"
        ]
        place = place_of(members, self.source)
        return AllIn(place, between[0] if between else 0, self._span(node))

    def _is_joining(self, node: Node, children: Sequence[Any]) -> bool:
        """`sl st to first sc` at the end of a row closes it."""
        if hasattr(node.children[0], "data") or node.children[0].value.type == "BEGIN":
            return False
        at = next(i for i, child in enumerate(children) if child is node)
        return at > 0 and all(
            not hasattr(c, "data") and c.value.type in ("SEP", "ENDING") for c in children[at + 1 :]
        )

    def _begin(self, node: Node) -> Begin:
        terminals = leaves(node)
        if terminals[0].type != "BEGIN" and not any(t.name == "ss" for t in terminals[:2]):
            raise Unfit("only a slip stitch leads to a place", "write sl st to next X", terminals)
        places = [c for c in node.children if hasattr(c, "data") and c.data == "place"]
        if places:
            return Begin(self.place(places[0])[0], self._span(node))
        members = [c for c in node.children if hasattr(c, "data")]
        return Begin(place_of(members, self.source), self._span(node))


_MANY = (Which.EACH, Which.EVERY)


def _count(terminals: Sequence[Terminal]) -> int:
    """The number in front, or one."""
    for terminal in terminals:
        if terminal.type == "NUM":
            if terminal.number == 0:
                raise Unfit("none are made here", "write a number from 1", [terminal])
            return terminal.number
    return 1
