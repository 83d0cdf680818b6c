"""A list before a place: where stitches without a place could be bracketed in two ways."""

from __future__ import annotations

from collections.abc import Sequence

from border.findings import Finding
from border.stitches import STITCHES
from border.text.pieces import AllIn, Pause, Piece, Step
from border.text.steps import OPEN_PLACES, walk
from border.text.tree import (
    Begin,
    Bracket,
    Chains,
    Headings,
    Item,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
)

_BOUND = (Which.SAME, Which.SKIPPED)


def judge(pieces: Sequence[Piece], headings: Headings, row: bool) -> list[Finding]:
    """The lists of these pieces that can be read in two ways, and what stands in a bracket
    that is worked in one place but cannot.

    `row`: the pieces open a row of its own, so chains may be its start chain.
    """
    from border.text.written import write_item

    terms = headings.terms or "us"
    findings: list[Finding] = []
    pending: list[Item] = []
    for n, piece in enumerate(pieces):
        match piece:
            case Pause(hard=False):
                continue
            case Step(item=Chains() as chains) if _opens_row(pieces, n, chains, row):
                continue
            case Step(item=(Chains() | Picots() | Stitches(place=None)) as item):
                pending.append(item)
                continue
            case Step(item=(Stitches() | Bracket()) as item) if not _bound(item):
                if _unclear(pending, item, headings):
                    findings.append(_finding(pending, item, terms, write_item))
        if isinstance(piece, Step | AllIn):
            findings += _inside(piece)
        pending = []
    return findings


def _bound(item: Item) -> bool:
    place = item.place if isinstance(item, Stitches | Bracket) else None
    return isinstance(place, Place) and place.which in _BOUND


def _unclear(pending: Sequence[Item], item: Stitches | Bracket, headings: Headings) -> bool:
    if any(isinstance(i, Stitches) for i in pending):
        return not headings.bare_in_each
    place = item.place
    opens = place is not None and place.which in OPEN_PLACES
    return opens and bool(pending) and isinstance(pending[-1], Chains)


def _opens_row(pieces: Sequence[Piece], n: int, chains: Chains, row: bool) -> bool:
    """Whether chains at the head of a row are, or may be, its start chain."""
    before = [p for p in pieces[:n] if not isinstance(p, Pause)]
    if not row or any(not (isinstance(p, Step) and isinstance(p.item, Begin)) for p in before):
        return False
    if chains.count == 1:
        return True
    items = tuple(p.item for p in pieces[n + 1 :] if isinstance(p, Step))
    heights = [STITCHES[i.stitch].height for i in walk(items) if isinstance(i, Stitches)]
    return any(2 <= height <= chains.count for height in heights)


def _finding(pending: Sequence[Item], item: Item, terms: str, write) -> Finding:  # type: ignore[no-untyped-def]
    span = pending[0].span.to(item.span)
    listed = ", ".join(write(i, terms) for i in (*pending, item))
    place = item.place if isinstance(item, Stitches | Bracket) else None
    assert place is not None
    last = write(item, terms)
    from border.text.written import write_place

    where = write_place(place, terms)
    bare = last.removesuffix(where).strip()
    together = ", ".join([*(write(i, terms) for i in pending), bare])
    before = ", ".join(write(i, terms) for i in pending)
    message = f"which stitches go {where} can be read in two ways: {listed}"
    help_ = (
        f'write "({together}) {where}" if all of it does, or "{before}; {last}" if only the last'
    )
    return Finding("place-unclear", message, help_, span)


def _inside(piece: Piece) -> list[Finding]:
    """Places that cannot stand in a bracket that is worked in one place."""
    if not isinstance(piece, Step) or not isinstance(piece.item, Bracket):
        return []
    return inside_faults(piece.item)


def inside_faults(bracket: Bracket) -> list[Finding]:
    """Any place but `same` in a bracket that is itself worked in a place."""
    faults = []
    for item in walk(bracket.items):
        placed = isinstance(item, Stitches | Bracket) and item.place is not None and not _same(item)
        opens = isinstance(item, Repeat) and item.times is None
        if placed or opens or isinstance(item, Skip | Begin):
            message = "a place is named inside a bracket that is worked in one place"
            help_ = "take it out of the bracket, or leave the place behind the bracket out"
            faults.append(Finding("place-inside", message, help_, item.span))
    return faults


def _same(item: Stitches | Bracket) -> bool:
    return item.place is not None and item.place.which is Which.SAME
