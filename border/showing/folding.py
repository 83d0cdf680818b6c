"""Equal neighbours folded, and counts in words: the short form that tables show."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import groupby
from math import floor, log10
from typing import Protocol, TypeVar

from border.reckoning.counts import JointCount, MotifCount, RepeatCount, Tally
from border.stitches import STITCHES
from border.text.amounts import in_terms, kinds, some
from border.yoke.edges import Edge

T = TypeVar("T")

NAMED = 8
"""Joints that are named one by one."""


class Named(Protocol):
    """Anything of one motif: a count, a run, a ring."""

    @property
    def motif(self) -> str: ...

    @property
    def section(self) -> str: ...


def stitches(made: Tally, terms: str) -> str:
    """`5 tr, 1 dc`: the stitches alone, or a dash."""
    return ", ".join(_by_kind(made, terms)) or "-"


def everything(made: Tally, terms: str) -> str:
    """`5 tr, 2 ch, 1 picot`, or `nothing`."""
    told = _by_kind(made, terms)
    told += [f"{made.chains} ch"] if made.chains else []
    told += [some(made.picots, "picot")] if made.picots else []
    return ", ".join(told) or "nothing"


def each_repeat(count: RepeatCount, terms: str) -> str:
    """`each takes 2 spaces and makes 5 tr`, or `16 of them take …`, where others do otherwise."""
    takes, makes = kinds(count.takes, terms) or "nothing", everything(count.makes, terms)
    if count.otherwise:
        return f"{count.times - count.otherwise} of them take {takes} and make {makes}"
    return f"each takes {takes} and makes {makes}"


def _by_kind(made: Tally, terms: str) -> list[str]:
    """The stitches, the lowest kind first."""
    counted = sorted(made.stitches.items(), key=lambda kind: list(STITCHES).index(kind[0]))
    return [f"{n} {in_terms(kind, terms)}" for kind, n in counted if n]


def length(mm: float, digits: int = 2) -> str:
    """A length with the two digits that are known of it: `24 cm`, `2.4 m`, `38 m`, `240 m`."""
    if mm <= 0:
        return "0 m"
    mm = _rounded(mm, digits)
    if mm < 1000:
        return f"{mm / 10:.{digits}g} cm"
    return f"{mm / 1000:.{_decimals(mm / 1000, digits)}f} m"


def weight(grams: float, digits: int = 2) -> str:
    """A weight with the two digits that are known of it: `0.39 g`, `5.5 g`, `120 g`."""
    grams = _rounded(grams, digits)
    return f"{grams:.{_decimals(grams, digits)}f} g"


def told_apart(
    say: Callable[[float, int], str], middle: float, low: float, high: float
) -> tuple[str, str, str]:
    """A figure and its band, with a third digit where two would leave no band: `11.8 m`,
    `11.6 m`, `12.1 m`."""
    two, three = ((say(middle, n), say(low, n), say(high, n)) for n in (2, 3))
    return three if low < high and two[1] == two[2] else two


def _rounded(figure: float, digits: int) -> float:
    if figure <= 0:
        return 0
    step = 10.0 ** (floor(log10(figure)) - digits + 1)
    return round(figure / step) * step


def _decimals(figure: float, digits: int) -> int:
    """The decimals of a rounded figure, so that it has so many digits; 0.39 has two."""
    before = 0 if figure < 0.9995 else floor(log10(figure * 1.0005)) + 1
    return max(digits - before, 0)


def edge_in_words(edge: Edge) -> str:
    """`closed edge of 78 loops, 13 motifs`."""
    shape = "closed" if edge.closed else "open"
    told = f"{shape} edge of {some(edge.places, edge.of)}"
    return f"{told} on {some(len(edge.runs), 'motif')}" if edge.runs else told


def series(items: Iterable[T], same: Callable[[T], object]) -> list[list[T]]:
    """Neighbours that are the same in what matters, together."""
    return [list(group) for _, group in groupby(items, key=same)]


def called(group: Sequence[Named], all_of: Sequence[Named]) -> str:
    """Neighbours by name: `front, 5 motifs` where they are all there are of the section
    in `all_of`, else `front.2 to front.4, 3 motifs`; `front.1` alone."""
    first, last = group[0], group[-1]
    if len(group) == 1:
        return first.motif
    section = {m.section for m in group}
    if len(section) == 1 and len(group) == sum(m.section == first.section for m in all_of):
        return f"{first.section}, {len(group)} motifs"
    return f"{first.motif} to {last.motif}, {len(group)} motifs"


def motif_lines(motifs: Sequence[MotifCount], terms: str) -> list[tuple[str, bool]]:
    """What stands over each motif, equal neighbours folded; and whether it is the usual.

    `front, 5 motifs: 18 tr, 15 ch each`; `front.2 to front.4: ...`; `front.1: ...`.
    """
    if len(motifs) > 1 and len(series(motifs, lambda m: _as_key(m.made))) == 1:
        return [(f"every motif: {everything(motifs[0].made, terms)}", True)]
    told = []
    for group in series(motifs, lambda m: (m.section, m.usual, _as_key(m.made))):
        each = " each" if len(group) > 1 else ""
        made = everything(group[0].made, terms)
        told.append((f"{called(group, motifs)}: {made}{each}", group[0].usual))
    return told


def joint_lines(joints: Sequence[JointCount], terms: str) -> list[str]:
    """What stands exactly on the joints, those with the same together."""
    by_made: dict[str, list[str]] = {}
    for joint in joints:
        by_made.setdefault(everything(joint.made, terms), []).append(" | ".join(joint.between))
    if len(by_made) == 1 and len(joints) > 2:
        return [f"each of {len(joints)} joints: {next(iter(by_made))}"]
    told = []
    for made, names in by_made.items():
        each = " each" if len(names) > 1 else ""
        more = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
        told.append(f"{', '.join(names[:NAMED])}{more}: {made}{each}")
    return told


def _as_key(made: Tally) -> tuple[tuple[tuple[str, int], ...], int, int]:
    return tuple(sorted(made.stitches.items())), made.chains, made.picots
