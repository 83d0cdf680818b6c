"""A row that turns inside itself: an arch over what it has just made, and what fills that."""

from __future__ import annotations

from fractions import Fraction

from border.text.tree import Arch, Chains, Item, Picots, Repeat, Stitches
from plainly.fabric import Covered, Identity, Made, MadeChain, MadePicot, MadeStitch, bare


def stitches_made(made: list[Made]) -> list[int]:
    """Where the stitches of a row stand among all that it has made, covered ones too."""
    return [i for i, piece in enumerate(made) if isinstance(bare(piece), MadeStitch)]


def arch(item: Arch, made: list[Made]) -> None:
    """The chains, the stitch that fastens them, and the filling; all under it is covered."""
    stitches = stitches_made(made)
    first, last = stitches[-item.back], stitches[-1]
    one, other = bare(made[first]), bare(made[last])
    assert isinstance(one, MadeStitch)
    assert isinstance(other, MadeStitch)
    made += [MadeChain()] * item.chains
    made.append(MadeStitch(item.stitch, one.at, None))
    opens = all(isinstance(piece, MadePicot) for piece in made[:first])
    for i in range(0 if opens else first, len(made)):
        made[i] = Covered(bare(made[i]))
    at = (one.at + other.at) / 2
    _fill(item.items, made, at, (Fraction(first), Fraction(0), at, "arch"))


def _fill(items: tuple[Item, ...], made: list[Made], at: Fraction, into: Identity) -> None:
    for item in items:
        match item:
            case Chains(count):
                made += [MadeChain()] * count
            case Picots(count):
                made += [MadePicot()] * count
            case Stitches(count, stitch):
                for i in range(1 if item.together else count):
                    made += [MadeChain()] * (item.between if i else 0)
                    made.append(MadeStitch(stitch, at, into))
            case Repeat(inner, int(times)):
                for _ in range(times):
                    _fill(inner, made, at, into)
