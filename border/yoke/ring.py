"""The ring of one motif: free places and joints, in working order."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeAlias

from msgspec import Struct, json

from border.findings import Span
from border.yoke.project import Strip, Words


class Free(Struct, frozen=True):
    """Free places beside each other that belong to one edge.

    `edge` None: nothing is written between two joints, where a run must be.
    """

    edge: str | None
    places: int
    span: Span

    @property
    def text(self) -> str:
        return f"{self.edge or 'EDGE'} {self.places}"


class Join(Struct, frozen=True):
    """A joint to the motif `other`: it takes up `loops` of this motif.

    `by`: the number, where the ring gives one. `across`: in a mirrored ring, the motif at the
    other end of a strip that goes across from left to right.
    """

    other: str
    loops: int
    by: int | None
    span: Span
    across: str | None = None

    @property
    def text(self) -> str:
        return f"join {self.other}" + (f" by {self.by}" if self.by is not None else "")


Item: TypeAlias = Free | Join


class Ring(Struct, frozen=True):
    """The ring of one motif as written, and where it comes from.

    `strip`: the strip whose sides make it, if they do; `mirror_of`: the motif
    whose mirror it is. `readable` is False where something in it could not be read.
    """

    motif: str
    items: tuple[Item, ...]
    span: Span
    strip: Strip | None = None
    mirror_of: str | None = None
    readable: bool = True

    @property
    def loops(self) -> int:
        """Free places and joined loops together."""
        return sum(i.places if isinstance(i, Free) else i.loops for i in self.items)

    @property
    def shown(self) -> str:
        """The sum in words: `neck 2 + join front.2 3 + hem 5 = 10`."""
        terms = (i.text if isinstance(i, Free) else f"join {i.other} {i.loops}" for i in self.items)
        return f"{' + '.join(terms)} = {self.loops}"


def pasted(items: Iterable[Item | Words], key: str = "ring") -> str:
    """A line to paste: `ring = ["neck 2", "join front.2"]`."""
    words = ", ".join(json.encode(item.text).decode() for item in items)
    return f"{key} = [{words}]"


Pairs: TypeAlias = tuple[tuple[Free, Join | None], ...]
"""A ring as runs, each with the joint behind it (None: the one run of a motif without joints)."""


def paired(ring: Ring) -> Pairs | None:
    """The ring as runs and joints by turns; None where two edges meet without a joint.

    Neighbours that name one edge are one run; between two joints with nothing
    written there is a run of 0 without a name.
    """
    joints = [n for n, item in enumerate(ring.items) if isinstance(item, Join)]
    after = joints[-1] + 1 if joints else 0
    pairs: list[tuple[Free, Join | None]] = []
    run: Free | None = None
    for item in (*ring.items[after:], *ring.items[:after]):
        if isinstance(item, Join):
            pairs.append((run or Free(None, 0, item.span), item))
            run = None
        elif run is None:
            run = item
        elif run.edge == item.edge:
            run = Free(run.edge, run.places + item.places, run.span)
        else:
            return None
    if run is not None:
        pairs.append((run, None))
    return tuple(pairs)
