"""Spots: where on an edge a round can be eased in, how much each is seen, and its mirror image."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import islice

from msgspec import Struct

from border.yoke.edges import Edge, Run

PLAIN_SPOTS = 24
"""So many spots are looked at on an edge of plain places, evenly spread."""

_BY_NAME = {
    "underarm": 0,
    "shoulder": 1,
    "strap": 1,
    "back": 1,
    "side": 1,
    "front": 2,
}


class Spot(Struct, frozen=True):
    """A motif, a joint, or (on an edge without motifs) a place.

    `order`: where it comes on the edge, motifs having odd numbers and the
    joints before them even ones. `seen`: how visible it is, 0 to 3.
    `irregular`: a motif unlike most of the edge, or a joint of unlike motifs.
    """

    at: str
    order: int
    seen: int
    irregular: bool


class Spots(Struct, frozen=True):
    """The spots of an edge in its order. `mirror`: the orders of a spot and its image add up
    to this (on a closed edge but for whole rounds of `around`); None where there is none."""

    spots: tuple[Spot, ...]
    around: int
    closed: bool
    mirror: int | None
    reach: int = 2

    def image(self, order: int) -> int:
        """The order of the mirror image; only with a mirror."""
        assert self.mirror is not None
        return (self.mirror - order) % self.around if self.closed else self.mirror - order

    def neighbours(self, a: int, b: int) -> bool:
        """Whether two spots lie next to each other: in one motif, or in neighbouring ones."""
        apart = abs(a - b)
        return (min(apart, self.around - apart) if self.closed else apart) <= self.reach


def spots_of(edge: Edge, mirror: Sequence[str], seen: Mapping[str, int]) -> Spots:
    """The spots of an edge.

    `mirror`: motifs or joints (`A | B`) that it is symmetrical about; with
    none, the one symmetry of its runs, if it has just one. `seen`: how visible
    sections, labels and motifs are, where the project says so.
    """
    if not edge.runs:
        return _plain(edge)
    n = len(edge.runs)
    axis = next((a for name in mirror if (a := _order(edge, name)) is not None), None)
    centre = _only_symmetry(edge) if axis is None else 2 * axis
    fronts = _centre_front(edge, centre)
    usual = Counter(run.places for run in edge.runs).most_common(1)[0][0]
    motifs = [_seen(run, seen) for run in edge.runs]
    met = Counter(run.motif for run in edge.runs)
    joints = [(edge.runs[i - 1], run) for i, run in enumerate(edge.runs)]
    real = joints if edge.closed else joints[1:]
    pairs = Counter(frozenset((a.motif, b.motif)) for a, b in real)
    spots: list[Spot] = []
    for i, (before, run) in enumerate(joints):
        if (i or (edge.closed and n > 1)) and pairs[frozenset((before.motif, run.motif))] == 1:
            how = _most(min(motifs[i - 1], motifs[i]), 2 * i in fronts, seen, before, run)
            unlike = before.places != run.places or before.section != run.section
            spots.append(Spot(f"{before.motif} | {run.motif}", 2 * i, how, unlike))
        if met[run.motif] == 1:
            how = _most(motifs[i], 2 * i + 1 in fronts, seen, run)
            spots.append(Spot(run.motif, 2 * i + 1, how, run.places != usual))
    if n < 3:  # so few that each is the neighbour of each, both ways round
        return Spots(tuple(spots), 2 * n, False, None)
    return Spots(tuple(spots), 2 * n, edge.closed, centre)


def _plain(edge: Edge) -> Spots:
    """Spots evenly spread, the first at the start (of an open edge: one at either end)."""
    n = min(edge.places, PLAIN_SPOTS)
    last = edge.places - 1
    if edge.closed or n == 1:
        places = [i * edge.places // n for i in range(n)]
    else:
        half = [i * last // (n - 1) for i in range((n + 1) // 2)]
        places = sorted({*half, *(last - p for p in half)})
    hidden = {0} if edge.closed else {0, last}
    spots = tuple(
        Spot(f"place {p + 1}", 4 * i, int(p not in hidden), p in hidden)
        for i, p in enumerate(places)
    )
    mirror = None if edge.closed else 4 * (len(places) - 1)
    return Spots(spots, 4 * len(places), edge.closed, mirror)


# --- how much a spot is seen ----------------------------------------------------


def _seen(run: Run, given: Mapping[str, int]) -> int:
    """As the project says of the motif, its labels or its section; else by their names."""
    if run.motif in given:
        return given[run.motif]
    labels = [given[name] for name in run.names if name in given and name != run.section]
    if labels:
        return min(labels)
    if run.section in given:
        return given[run.section]
    words = {word for name in run.names for word in name.casefold().replace(".", " ").split()}
    return min((how for word, how in _BY_NAME.items() if word in words), default=1)


def _most(how: int, centre_front: bool, given: Mapping[str, int], *runs: Run) -> int:
    said = any(name in given for run in runs for name in run.names)
    return 3 if centre_front and not said else how


def _centre_front(edge: Edge, mirror: int | None) -> set[int]:
    """The orders of the middle of the front, where everybody looks."""
    front = ["front" in run.section.casefold().split() for run in edge.runs]
    n = len(front)
    if mirror is not None:
        axes = {mirror // 2, (mirror // 2 + n) % (2 * n)} if edge.closed else {mirror // 2}
        return {a for a in axes if front[a // 2]}
    middles = set()
    # a front that goes on across the start is one
    first = start = front.index(False) if edge.closed and False in front else 0
    for i in range(first, first + n + 1):
        if i == first + n or not front[i % n]:
            if i - start >= 3:  # half-way between the orders 2 start + 1 and 2 i - 1
                middles.add((start + i) % (2 * n))
            start = i + 1
    return middles


# --- symmetry -------------------------------------------------------------------


def _order(edge: Edge, name: str) -> int | None:
    """The order of a motif, or of the joint `A | B`; None where the edge has none."""
    if "|" in name:
        pair = {part.strip() for part in name.split("|")}
        for i, run in enumerate(edge.runs):
            if {edge.runs[i - 1].motif, run.motif} == pair and (i or edge.closed):
                return 2 * i
        return None
    return next((2 * i + 1 for i, run in enumerate(edge.runs) if run.motif == name), None)


def _only_symmetry(edge: Edge) -> int | None:
    """What the orders of mirror images add up to, where the runs are symmetrical in one way."""
    n = len(edge.runs)
    if not edge.closed:
        return 2 * n if _symmetrical(edge, n - 1, named=False) else None
    for named in (True, False):
        every = (c for c in range(n) if _symmetrical(edge, c, named))
        found = list(islice(every, 2))
        if len(found) == 1:
            # motif i and its image c - i have the orders 2i + 1 and 2(c - i) + 1
            return (2 * found[0] + 2) % (2 * n)
    return None


def _symmetrical(edge: Edge, total: int, named: bool) -> bool:
    """Whether every run i is like the run total - i; `named`: left and right exchanged, too."""
    runs = edge.runs
    for i, run in enumerate(runs):
        image = runs[(total - i) % len(runs)]
        if run.places != image.places:
            return False
        if named and mirrored(run.section) != image.section:
            return False
    return True


def mirrored(name: str) -> str:
    """A name on the other side of the yoke: left and right exchanged."""
    other = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}
    return " ".join(other.get(word, word) for word in name.split(" "))
