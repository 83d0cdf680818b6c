"""A row that turns inside itself: chains fastened back into what it has just made, and filled."""

from __future__ import annotations

from collections.abc import Sequence

from border.text.tree import Arch, Chains, Item, Picots, Repeat, Stitches
from border.working.cursor import Made, RunsOut
from border.working.fabric import ALONE, ARCH, CHAIN, PICOT


def work_arch(made: Made, item: Arch) -> None:
    """Work an arch over the row so far. Raises RunsOut where it goes back beyond its start."""
    first, last = _under(made, item)
    position = (made.pos[first] + made.pos[last]) // 2
    made.chains(item.chains)
    made.stitches(item.stitch, 1, made.pos[first], ALONE)
    made.cover(first)
    _fill(made, item.items, position, ARCH - first)


def _under(made: Made, item: Arch) -> tuple[int, int]:
    """The first and the last stitch that lie under the arch, by their elements."""
    stitches: list[int] = []
    for i in range(len(made.kinds) - 1, -1, -1):
        if made.kinds[i] not in (CHAIN, PICOT):
            stitches.append(i)
            if len(stitches) == item.back:
                return i, stitches[0]
    raise RunsOut(item, False, len(stitches), item.back)


def _fill(made: Made, items: Sequence[Item], position: int, into: int) -> None:
    for item in items:
        match item:
            case Chains(count):
                made.chains(count)
            case Picots(count, chains):
                made.picots(count, chains)
            case Stitches():
                made.step(item, position, into)
            case Repeat(inner, int(times)):
                for _ in range(times):
                    _fill(made, inner, position, into)
