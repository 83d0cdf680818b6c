"""The yoke spread flat on the table: which joints can lie flat at once, and what lies between.

A *corner* is what a wheel shows between two of its joints that lie flat. It is
named by the dart of the joint behind it, as runs are. Where the yoke goes
together, all joints lie flat and the corners are its runs; where a ring is in
the wrong order, as many joints are kept as can be, in the order of the file.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from border.yoke.joints import Dart
from border.yoke.laying import Laid

_HOLES = ("neck", "armhole", "wrist", "waist", "inside", "inner")
"""In the names of edges that lie inside, where a body goes through."""

Around: TypeAlias = tuple[Dart, ...]
"""The corners of one face, in working order."""


class Spread(Struct, frozen=True):
    """One part of a yoke, spread flat.

    `round_each`: the darts of the joints kept of each wheel, in the order of
    its ring. `mates`: the dart at the other side of each. `faces`: of corners,
    the outermost first. `share`: how much of its wheel a corner takes, of 1.
    """

    round_each: dict[str, tuple[Dart, ...]]
    mates: dict[Dart, Dart]
    faces: tuple[Around, ...]
    share: dict[Dart, float]

    @property
    def joined(self) -> list[tuple[str, str]]:
        """The pairs of wheels that are joined, each once."""
        return [(a[0], b[0]) for a, b in self.mates.items() if a < b]

    def about(self, outermost: Around) -> Spread:
        """The same with another face outermost."""
        others = (face for face in self.faces if face != outermost)
        return replace(self, faces=(outermost, *others))

    def before(self, corner: Dart) -> Dart:
        """The dart of the joint before a corner: the corner lies between it and its own."""
        darts = self.round_each[corner[0]]
        return darts[darts.index(corner) - 1]


def spread(laid: Laid) -> tuple[Spread, ...]:
    """Every part of the yoke spread flat, in the order of the file."""
    kept = laid.joints.mates if laid.lies_flat else _lying_flat(laid)
    return tuple(_part(laid, part.motifs, kept) for part in laid.parts)


def _part(laid: Laid, motifs: Iterable[str], kept: dict[Dart, Dart]) -> Spread:
    round_each = {
        m: tuple((m, n) for n in range(len(laid.joints.pairs[m])) if (m, n) in kept) for m in motifs
    }
    mates = {dart: kept[dart] for darts in round_each.values() for dart in darts}
    share = {
        dart: _share(laid, darts[i - 1], dart)
        for darts in round_each.values()
        for i, dart in enumerate(darts)
    }
    faces = _faces(round_each, mates)
    outer = _outermost(laid, faces, share)
    return Spread(round_each, mates, (outer, *(f for f in faces if f is not outer)), share)


def _outermost(laid: Laid, faces: list[Around], share: dict[Dart, float]) -> Around:
    """Of the large faces the one that curves outwards most; of equals none that is a hole.

    At every corner a face turns inwards by what the corner lacks of half a wheel.
    """

    def turning(face: Around) -> tuple[float, bool]:
        curve = sum(0.5 - share[corner] for corner in face)
        names = {laid.joints.pairs[m][n][0].edge or "" for m, n in face}
        return round(curve, 6), any(hole in name for name in names for hole in _HOLES)

    large = max(map(len, faces), default=0) / 2
    return min((face for face in faces if len(face) >= large), key=turning, default=())


def _share(laid: Laid, before: Dart, dart: Dart) -> float:
    """The part of its wheel between the middles of two joints, by the loops of the ring."""
    pairs = laid.joints.pairs[dart[0]]
    total = sum(run.places + (join.loops if join else 0) for run, join in pairs)
    between = 0.0
    number = before[1]
    first = True
    while first or number != dart[1]:
        join = pairs[number][1]
        between += (join.loops if join else 0) / (2 if first else 1)
        number = (number + 1) % len(pairs)
        between += pairs[number][0].places
        first = False
    join = pairs[number][1]
    between += (join.loops if join else 0) / 2
    return between / total if total else 1 / len(pairs)


def _faces(round_each: dict[str, tuple[Dart, ...]], mates: dict[Dart, Dart]) -> list[Around]:
    follows = {d: darts[i - 1] for darts in round_each.values() for i, d in enumerate(darts)}
    follows = {before: d for d, before in follows.items()}
    found: list[Around] = []
    seen: set[Dart] = set()
    for dart in mates:
        walk: list[Dart] = []
        while dart not in seen:
            seen.add(dart)
            walk.append(dart)
            dart = follows[mates[dart]]
        if walk:
            found.append(tuple(walk))
    return found


def _lying_flat(laid: Laid) -> dict[Dart, Dart]:
    """As many joints as lie flat together: those that hang it together, then along strips first."""
    whole = {a: b for a, b in laid.joints.mates.items() if a < b}
    along = sorted(whole, key=lambda a: not _along_a_strip(a[0], whole[a][0]))
    kept: dict[Dart, Dart] = {}
    group = {m: m for m in laid.joints.pairs}
    closing: list[Dart] = []
    for a in along:
        one, other = _head(group, a[0]), _head(group, whole[a][0])
        if one == other:
            closing.append(a)
        else:
            group[one] = other
            kept |= {a: whole[a], whole[a]: a}
    for a in closing:
        more = kept | {a: whole[a], whole[a]: a}
        # Flat as long as a joint that closes a ring parts one face into two.
        if _number_of_faces(laid, more) > _number_of_faces(laid, kept):
            kept = more
    return kept


def _along_a_strip(a: str, b: str) -> bool:
    return a.rpartition(".")[0] == b.rpartition(".")[0]


def _head(group: dict[str, str], motif: str) -> str:
    while group[motif] != motif:
        motif = group[motif]
    return motif


def _number_of_faces(laid: Laid, kept: dict[Dart, Dart]) -> int:
    round_each = {
        m: tuple((m, n) for n in range(len(pairs)) if (m, n) in kept)
        for m, pairs in laid.joints.pairs.items()
    }
    return len(_faces(round_each, kept))
