"""The common shapes of a yoke, and what is to be said of each: wheels, loops, free loops.

What is usual is common practice, but for the collar, where it is geometry.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeAlias

from msgspec import Struct

from border.yoke.answers import FreeLoops, Measure, Number, Question, Said, number, numbers

MOST_WHEELS = 200
"""Wheels in one part of a yoke that is asked for."""

MOST_LOOPS = 100
"""Loops round a wheel, likewise."""

MOST_ACROSS = 500
"""Millimetres across a wheel, likewise."""

Split: TypeAlias = Callable[[Said, int], int]
"""Of so many free loops of a wheel, those at its first side."""


class Shape(Struct, frozen=True):
    """A common shape: its name, what it is, and the questions that settle it."""

    name: str
    about: str
    questions: tuple[Question, ...]

    @property
    def free_loops(self) -> tuple[FreeLoops, ...]:
        """The questions for the free loops of its kinds of wheels."""
        return tuple(q for q in self.questions if isinstance(q, FreeLoops))


# --- wheels and their loops -----------------------------------------------------------


def _wheels(key: str, ask: str, least: int, usual: int) -> Number:
    def why(_: Said, n: int) -> str:
        return f"{n} wheels are more than the {MOST_WHEELS} that are made here"

    return Number(key, ask, lambda _: (usual,), least, lambda _: MOST_WHEELS, why)


def _loops() -> Number:
    def why(_: Said, n: int) -> str:
        return f"{n} loops are more than the {MOST_LOOPS} that a wheel may have here"

    return Number("loops", "loops round one wheel", lambda _: (16,), 6, lambda _: MOST_LOOPS, why)


def _joined(joints: int) -> Number:
    """Loops that a joint takes up; `joints`: of the wheel that has most of them.

    A wheel between two others keeps two loops at least, one for each of its sides.
    """
    kept = 2 if joints == 2 else 0

    def most(said: Said) -> int:
        return (number(said, "loops") - kept) // joints

    def why(said: Said, n: int) -> str:
        told = f"{'two' if joints == 2 else 'three'} joints of {n} make {joints * n}"
        left = f", and {kept} are to be left for its two sides" if kept else ""
        return f"{told}, of the {number(said, 'loops')} loops of a wheel{left}"

    ask = "of these, the loops that one joint takes up"
    return Number("joined", ask, lambda said: (min(3, most(said)),), 1, most, why)


def _seam() -> Number:
    def most(said: Said) -> int:
        return number(said, "joined") // 2

    def why(said: Said, n: int) -> str:
        joined = number(said, "joined")
        return f"{n} at each end of a joint makes {2 * n}, and a joint takes up {joined}"

    ask = "of those, at each end of a joint, the loops still free for the edge beside"
    return Number("seam", ask, lambda said: (min(1, most(said)),), 0, most, why)


def _across() -> Measure:
    ask = "a wheel measures across, in mm (nothing, if it is not measured yet)"
    return Measure("across", ask, lambda _: "", "wheel", MOST_ACROSS)


# --- free loops -----------------------------------------------------------------------


def _free(
    key: str, wheel: str, sides: tuple[str, str], split: Split, needed: tuple[str, ...] = ()
) -> FreeLoops:
    """For a wheel between two others."""

    def usual(said: Said) -> tuple[int, int]:
        free = number(said, "loops") - 2 * number(said, "joined")
        first = split(said, free)
        return first, free - first

    return FreeLoops(key, f"{wheel}, free at {' and '.join(sides)}", usual, sides, needed)


def _half(_: Said, free: int) -> int:
    return free // 2


def _tenths(tenths: int) -> Split:
    return lambda _, free: free * tenths // 10


def flat_ring(wheels: int, loops: int, joined: int) -> int:
    """The free loops inside with which a ring of equal wheels lies flattest.

    Loops evenly round a wheel, wheels in a regular polygon: its corners have
    180 - 360 / wheels degrees, and as much of a wheel lies between the middles of its two
    joints, inside (geometry). At least one loop is left on either side.
    """
    inside = round(loops * (0.5 - 1 / wheels)) - joined
    return min(max(inside, 1), loops - 2 * joined - 1)


def _lying_flat(said: Said, _: int) -> int:
    return flat_ring(*(number(said, key) for key in ("wheels", "loops", "joined")))


def _corner() -> FreeLoops:
    """Where a strap and an underarm are joined side by side: as much at the hem as beside it."""

    def usual(said: Said) -> tuple[int, int, int]:
        free = number(said, "loops") - 3 * number(said, "joined")
        hem = min(numbers(said, "free")[1], free)
        return free - hem, hem, 0

    ask = "a corner wheel (c), free at neck, hem and armhole"
    return FreeLoops("corner_free", ask, usual, ("neck", "hem", "armhole"))


# --- the shapes -----------------------------------------------------------------------

YOKE = Shape(
    "yoke",
    "a chemise yoke with straps and underarms",
    (
        _wheels("front", "wheels across the front", 3, 5),
        _wheels("back", "wheels across the back", 3, 5),
        _wheels("strap", "wheels in each strap", 1, 3),
        _wheels("underarm", "wheels under each arm", 1, 2),
        _loops(),
        _joined(3),
        _seam(),
        _free("free", "a wheel of front or back (f, b)", ("neck", "hem"), _half, ("neck", "hem")),
        _free("strap_free", "a strap wheel (s)", ("neck", "armhole"), _tenths(3), ("armhole",)),
        _free("underarm_free", "an underarm wheel (u)", ("armhole", "hem"), _tenths(4)),
        _corner(),
        _across(),
    ),
)


def _row(name: str, about: str, wheels: tuple[int, int], free: FreeLoops) -> Shape:
    """Wheels in one row; of `wheels`, the least number and the usual one."""
    asked = _wheels("wheels", f"wheels in the {name}", *wheels)
    return Shape(name, about, (asked, _loops(), _joined(2), _seam(), free, _across()))


def _side_by_side(sides: tuple[str, str], split: Split, needed: tuple[str, ...]) -> FreeLoops:
    return _free("free", "a wheel", sides, split, needed)


COLLAR = _row(
    "collar",
    "a round collar, joined to a ring",
    (3, 16),
    _side_by_side(("neck", "outside"), _lying_flat, ("neck", "outside")),
)

CUFF = _row(
    "cuff",
    "a cuff, joined to a ring",
    (3, 7),
    _side_by_side(("wrist", "sleeve"), _half, ("wrist", "sleeve")),
)

STRIP = _row(
    "strip",
    "a strip with two ends, bordered along one side",
    (2, 9),
    _side_by_side(("bordered side", "other side"), _half, ("bordered side",)),
)

SHAPES = {shape.name: shape for shape in (YOKE, COLLAR, CUFF, STRIP)}
"""The shapes by name."""
