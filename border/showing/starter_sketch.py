"""A yoke sketched in letters while it is asked for, so that one sees which wheel is meant."""

from __future__ import annotations

from border.yoke.answers import Said, number, word
from border.yoke.shapes import SHAPES

MOST_ACROSS, MOST_DOWN = 15, 9
"""Wheels of one part that are drawn; of more, the middle is left out."""

_LEGEND = "b back, f front, s strap, u underarm, c corner"


def sketch(said: Said) -> str:
    """The sketch, as soon as the wheels of the shape have been said."""
    name = word(said, "shape")
    if name == "yoke":
        return _yoke(said)
    row = "-".join(_drawn("o", number(said, "wheels"), MOST_ACROSS))
    first, second = SHAPES[name].free_loops[0].sides
    if name != "strip":
        row = f"-{row}-  (the last is joined to the first)"
    return f"     {second}\n   {row}\n     {first}\n"


def _yoke(said: Said) -> str:
    """The yoke spread flat: the back above, the front below, the neck in the middle."""
    strap, under = number(said, "strap"), number(said, "underarm")
    high = min(max(strap, under), MOST_DOWN)
    back, front = (
        " ".join("c" + "".join(_drawn(part[0], number(said, part) - 2, MOST_ACROSS - 2)) + "c")
        for part in ("back", "front")
    )
    wide = max(len(back), len(front))
    sides = zip(_column("u", under, high), _column("s", strap, high), strict=True)
    inside = [""] * high
    inside[high // 2] = "neck" if wide >= 7 else ""
    rows = [f"{u} {s}{hole:^{wide - 2}}{s} {u}" for (u, s), hole in zip(sides, inside, strict=True)]
    rows = [f"  {back:^{wide}}", *rows, f"  {front:^{wide}}"]
    return "".join(f"   {row.rstrip()}\n" for row in rows) + f"   {_LEGEND}\n"


def _drawn(letter: str, wheels: int, most: int) -> str:
    """A letter for each wheel; of too many, the middle is a sign for the rest."""
    return letter * wheels if wheels <= most else "…".join([letter * (most // 2)] * 2)


def _column(letter: str, wheels: int, high: int) -> str:
    """The wheels of one side from back to front, in the middle of their height."""
    return f"{_drawn(letter, wheels, high):^{high}}"
