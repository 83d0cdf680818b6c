"""The yoke as told: every ring with its sum, the joints, the edges."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from border.yoke.joints import Joint
from border.yoke.laying import Laid
from border.yoke.names import Names
from border.yoke.project import Yoke
from border.yoke.ring import Free

if TYPE_CHECKING:
    from border.yoke.edges import Edge


class RingItem(Struct, frozen=True):
    """A run of an edge with its free places, or a joint to a motif with the loops it takes."""

    name: str
    number: int
    is_joint: bool


class RingReport(Struct, frozen=True):
    """One motif's ring in working order. `loops`: what it comes to, `shown`: the sum in words."""

    motif: str
    section: str
    items: tuple[RingItem, ...]
    loops: int
    shown: str
    adds_up: bool


class YokeReport(Struct, frozen=True):
    """The yoke in numbers: `motifs`, and `joints` agreed from both sides.

    `loops`: what every motif should have (None: the project has no yoke), `of`: which are
    loops, or picots.
    `edges`: all of them, those written straight down with them.
    """

    motifs: int
    joints: int
    goes_together: bool
    loops: int | None
    of: str
    rings: tuple[RingReport, ...]
    joined: tuple[Joint, ...]
    edges: tuple[Edge, ...]


def yoke_report(laid: Laid, names: Names, yoke: Yoke | None, edges: tuple[Edge, ...]) -> YokeReport:
    """The report of a yoke laid out, with its edges."""
    loops, of = (yoke.loops, yoke.of) if yoke else (None, "loop")
    rings = []
    for motif, ring in laid.rings.items():
        items = tuple(
            RingItem(i.edge or "", i.places, False)
            if isinstance(i, Free)
            else RingItem(i.other, i.loops, True)
            for i in ring.items
        )
        section = names.sections[motif]
        adds_up = ring.readable and ring.loops == loops
        rings.append(RingReport(motif, section, items, ring.loops, ring.shown, adds_up))
    joints, whole = laid.joints.all, laid.goes_together and not names.too_many
    return YokeReport(len(rings), len(joints), whole, loops, of, tuple(rings), joints, edges)
