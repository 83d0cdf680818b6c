"""What chains stand between: the stitches of one place, or one working and the next.

The words behind `between` and `after` say which: `1 chain between every treble, 3 chain between
the loops`. Where they leave it open, chains behind a place stand between one working and the next.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.nodes import Building, Misread
from border.text.terminals import Terminal
from border.text.tree import ST, Kind, Place, Stitches, Which, Whole

if TYPE_CHECKING:
    from lark import Token

_HEAPS = frozenset({"group", "shell", "block", "run"})
_HOLLOWS = frozenset({"loop", "space"})
_GROUPS = frozenset({*_HEAPS, *_HOLLOWS, "picot", "joint"})


def with_chains(made: Stitches, chains: Sequence[tuple[Token, bool]], b: Building) -> Stitches:
    """Stitches with the chains that part them; True with chains that stand behind the place."""
    between = parted = 0
    said = [(node, _side(node, behind, len(chains) == 1, made, b)) for node, behind in chains]
    for node, side in sorted(said, key=lambda one: one[1] == _OPEN):  # these get what is left
        number = b.of(node).number
        outside = side in (_OUTSIDE, _ALL) or (side == _OPEN and not parted)
        inside = side in (_INSIDE, _ALL) or (side == _OPEN and not outside)
        taken = (outside and parted) or (inside and (between or made.count == 1))
        _tell_either(node, behind=(node, True) in chains, outside=outside, made=made, b=b)
        if taken or [side for _, side in said].count(_OPEN) > 1:
            message = "there is nothing for these chains to stand between"
            raise b.misread(message, _BETWEEN, node)
        parted = number if outside else parted
        between = number if inside else between
    return replace(made, between=between, parted=parted)


def _tell_either(node: Token, *, behind: bool, outside: bool, made: Stitches, b: Building) -> None:
    """`2 treble in each loop, with 3 chain between`, `4 treble in the next loop, 3 chain between;
    repeat`: inside each loop, or from one to the next?"""
    said = b.of(node)
    of_groups = said.kind is not None or "each" in said.text or "them" in said.text
    several = made.count == _PAIR if outside else made.count > 1
    parts = said.name == "divided"  # that parts stitches
    before = max((t.end for t in b.terminals if t.end <= said.start), default=0)
    settled = said.text.startswith("with") and said.start > before + 1  # `…, with ch 2 between`
    if not behind or of_groups or parts or settled or not several or made.place is None:
        return
    number = said.number
    if outside:
        other = b.written(replace(made, between=number))
        where, may = "from one place to the next", f"write {other} if they stand inside each"
    elif made.place.which in (Which.NEXT, Which.FIRST, Which.THE) and made.place.count == 1:
        again = f"*{b.written(made)}, ch {number}; repeat from *"
        where, may = "inside the one place", f'write "{again}" if they lead to the next one'
    else:
        return
    b.tell("perhaps-as-they-come", f"these chains are taken to stand {where}", may, b.span(node))


_PAIR = 2
_INSIDE, _OUTSIDE, _ALL, _OPEN = range(4)
"""Between the stitches of one working, between one working and the next, between all stitches; or
whichever is left, one working and the next before the others."""
_BETWEEN = (
    'write "3 dc, with ch 2 between, in next space", or "3 dc, with ch 2 between, in each space, '
    'with ch 5 between"'
)


def _over_all(made: Stitches) -> bool:
    """Whether the stitches are worked in one place after the other."""
    place = made.place
    return place is not None and (place.each or place.which in (Which.EACH, Which.EVERY))


def _side(node: Token, behind: bool, alone: bool, made: Stitches, b: Building) -> int:
    """Where chains stand, by what is named behind `between`."""
    said, over_all = b.of(node), _over_all(made)
    if _of_groups(said, made):
        _check_groups(node, made, b)
        return _OUTSIDE
    one = made.count == 1
    of_stitch = said.kind in (Kind(made.stitch), ST) and not one
    if not over_all or (not behind and not one) or (of_stitch and not alone):
        return _INSIDE
    if of_stitch and said.name == "each":
        return _ALL
    unsaid = said.kind is None and said.name == "each"  # `3 dc in each loop, 2 ch between each`
    if of_stitch or ((said.name == "divided" or (unsaid and alone)) and not one):
        raise _either_way(node, made, b)
    return _OPEN


def _of_groups(said: Terminal, made: Stitches) -> bool:
    """Whether what is named is more than one stitch: the loops, the groups, `every 3`."""
    kind, one = said.kind, made.count == 1
    if kind is None:
        return False
    if kind.size is not None:
        few = kind.size < made.count and not _over_all(made)
        return not few and not (one and kind.size == 2)  # `between every two`
    return kind.name in _HEAPS or (kind.name in _HOLLOWS and not one)


def _check_groups(node: Token, made: Stitches, b: Building) -> None:
    """Refuse chains between groups where it is not said what one of these groups is."""
    said = b.of(node)
    size = said.kind.size if said.kind is not None else None
    whole = made.count > 1 or made.cluster or made.together or not _in_stitches(made)
    again = f"ch {said.number}; repeat from *"
    if size not in (None, made.count) or not whole:
        raise b.misread(
            "how many stitches stand between these chains is not said",
            f'write the steps of one group with its number: "*{_some(made, size, b)}, {again}"',
            node,
        )
    if not _over_all(made):
        raise b.misread(
            "there is only one group here, with nothing between",
            f'if these chains stand behind each group, write "*{b.written(made)}, {again}"',
            node,
        )


def _in_stitches(made: Stitches) -> bool:
    """Whether the places are single stitches, or the points between them, and no groups."""
    targets = made.place.targets if made.place is not None else ()
    return any(target.of.name not in _GROUPS for target in targets)


def _some(made: Stitches, size: int | None, b: Building) -> str:
    """One of the stitches in each of so many places."""
    place = made.place or Place(Which.NEXT, (Whole(ST),))
    places = replace(place, which=Which.NEXT, count=size or 3, each=True)
    return b.written(replace(made, count=1, place=places))


def _either_way(node: Token, made: Stitches, b: Building) -> Misread:
    """`3 treble in each loop, with 1 chain between the treble`: inside each loop, or all round?"""
    number = b.of(node).number
    inside, outside = replace(made, between=number), replace(made, parted=number)
    both = replace(inside, parted=number)
    return b.misread(
        "these chains may stand inside each place, or between one place and the next",
        f'write "{b.written(inside)}", "{b.written(outside)}" or, for both, "{b.written(both)}"',
        node,
    )
