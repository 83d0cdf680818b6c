"""A picture made of pieces, one below the other, under its title."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.showing.svg import picture, tag, width_of, words


class Block(Struct, frozen=True):
    """A piece of the picture with its own zero at the upper left. In pixels."""

    width: float
    height: float
    drawn: str


def stacked(title: str, blocks: Sequence[Block], *, alone: bool = True) -> str:
    """The pieces under each other as a picture.

    `alone`: a file by itself, its title over them; else a part of an HTML page.
    """
    width = max([b.width for b in blocks])
    inside, y = [], 0.0
    if alone:
        size = 18 * larger_in(width)
        width = max(width, width_of(title, size) + 40)
        inside.append(words(title, width / 2, size * 1.7, size, font_weight="bold"))
        y = size * 2.4
    for block in blocks:
        moved = f"translate({(width - block.width) / 2:.1f} {y:.1f})"
        inside.append("\n" + tag("g", block.drawn, transform=moved))
        y += block.height
    return picture(width, y, title, *inside, alone=alone)


def larger_in(width: float) -> float:
    """How much larger writing must be in a wide picture, which is made to fit a page."""
    return max(1.0, width / 800)
