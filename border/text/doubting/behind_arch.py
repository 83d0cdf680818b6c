"""What a step right behind an arch may go into besides: the loop before it, the row below."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.nodes import Building
from border.text.tree import SPACES, Arch, Bracket, Item, Part, Place, Stitches, Which


def tell_behind_arch(arch: Item, item: Item, b: Building) -> None:
    """Tell what a step right behind an arch may go into besides."""
    if not isinstance(arch, Arch) or not isinstance(item, Stitches | Bracket):
        return
    place = item.place or Place(Which.NEXT, ())
    if place.which is Which.SAME and {t.of.name for t in place.targets} & {*SPACES}:
        same = replace(item, place=Place(Which.SAME, ()))
        b.tell(
            "perhaps-one-place",
            "this is taken to go into the loop worked before the turn, not into the arch",
            f"write {b.written(same)} to say so; what goes into the arch stands in one bracket: "
            "(3 dc, ch 5, 3 dc) in the arch",
            item.span,
        )
    if place.which is Which.THE and any(isinstance(t, Part) and t.of.size for t in place.targets):
        below = b.written(replace(item, place=replace(place, which=Which.NEXT)))
        b.tell(
            "place-unclear",
            "this may be one of the stitches made before the turn, or one of the row below",
            f"write {below} for the row below; in what this row has made only an arch is fastened",
            item.span,
        )
