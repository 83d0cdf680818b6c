"""Copied rows are made in other stitches, as their copies say: `with dc instead of sc`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from border.text.copying.made import Items, Stretch
from border.text.steps import walk
from border.text.tree import AsTheyCome, Bracket, Exchanged, Item, Repeat, StartChain, Stitches


def exchanged(items: Items, others: Mapping[str, str]) -> Items:
    """The steps with other stitches; the places that name a stitch stay."""
    found: list[Item] = []
    for item in items:
        match item:
            case Stitches(stitch=stitch):
                found.append(replace(item, stitch=others.get(stitch, stitch)))
            case Repeat() | Bracket() | AsTheyCome():
                found.append(replace(item, items=exchanged(item.items, others)))
            case _:
                found.append(item)
    return tuple(found)


def makes(one: Exchanged, stretches: Sequence[Stretch]) -> bool:
    """Whether the stitch is made that another is made for."""
    made = (i for s in stretches for i in walk(s.items) if isinstance(i, Stitches))
    return any(item.stitch == one.instead_of for item in made)


def stands_for(one: Exchanged, stretches: Sequence[Stretch]) -> bool:
    """Whether chains stand for the stitch, which are not as high as the other."""
    chains = (i for s in stretches for i in (*s.carried, *walk(s.items)))
    return any(isinstance(i, StartChain) and i.stands_for == one.instead_of for i in chains)
