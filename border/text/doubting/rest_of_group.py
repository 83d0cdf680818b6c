"""What is left of a group that is worked on in its middle: `3 dc on the centre 3 of the 5, ch 7, 1
sc, ch 7; repeat`: is the sc on the next of these five?
"""

from __future__ import annotations

from collections.abc import Sequence

from border.text.nodes import Building
from border.text.tree import (
    Bracket,
    Centre,
    Chains,
    Item,
    Kind,
    Part,
    Place,
    Stitches,
    Which,
    Whole,
)


def tell_rest_of_group(items: Sequence[Item], b: Building) -> None:
    """Tell of one stitch without a place, behind chains, where more of a group are left there."""
    left = chains = 0
    for item in items:
        match item:
            case Chains(count):
                chains = count
            case Stitches(count=1, place=None) if left > 0 and chains > 1:
                more = "one more" if left == 1 else f"{left} more"
                b.tell(
                    "perhaps-nothing-missed",
                    f"this goes into the next stitch of the same group, which has {more} here",
                    f'write "skip {left}" before it if the rest of the group is left free',
                    item.span,
                )
                left = 0
            case (
                Stitches(place=Place(targets=(target,)) as place)
                | Bracket(place=Place(targets=(target,)) as place)
            ):
                left, chains = _left(target, place, left), 0
            case _:
                left = 0


def _left(target: object, place: Place, before: int) -> int:
    """How many of a group are left behind a place; `before` it, where it goes on in the group."""
    match target:
        case Part(nth, of=Kind(size=int() as size)) if nth > 0:
            return size - nth
        case Centre(of=Kind(size=int() as size)):
            return size // 2
        case Whole(Kind("st")) if place.which is Which.NEXT:
            return before - place.count
        case _:
            return 0
