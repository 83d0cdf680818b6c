"""The edges of a yoke as faces of a map: motifs are its points, joints its lines.

From a run one goes across the joint behind it, to the run that follows that
joint on the other motif. A map that lies flat in one piece, of V motifs, E
joints and F faces, has V - E + F = 2 (Euler).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from msgspec import Struct

from border.yoke.joints import Dart, Joints
from border.yoke.ring import Pairs

Face: TypeAlias = tuple[Dart, ...]
"""The runs of one face in working order, begun at the first in the order of the file."""


class Part(Struct, frozen=True):
    """A part of the yoke that hangs together: its motifs, and numbers of joints and faces."""

    motifs: tuple[str, ...]
    joints: int
    faces: int

    @property
    def lies_flat(self) -> bool:
        return len(self.motifs) - self.joints + self.faces == 2


def faces(joints: Joints) -> tuple[Face, ...]:
    """All faces that pass no faulty joint, in the order of the file."""
    found: list[Face] = []
    seen: set[Dart] = set()
    for motif, pairs in joints.pairs.items():
        for number in range(len(pairs)):
            if (motif, number) not in seen:
                face = _walk((motif, number), joints, seen)
                if _next(face[-1], joints) == face[0]:
                    found.append(face)
    return tuple(found)


def parts(joints: Joints, all_faces: tuple[Face, ...]) -> tuple[Part, ...]:
    """The parts that hang together, in the order of the file."""
    of: dict[str, int] = {}
    motifs: list[list[str]] = []
    beside = _neighbours(joints)
    for motif in joints.pairs:
        if motif in of:
            continue
        number = len(motifs)
        motifs.append([])
        ahead = [motif]
        of[motif] = number
        while ahead:
            one = ahead.pop()
            motifs[number].append(one)
            new = [other for other in beside[one] if other not in of]
            of.update(dict.fromkeys(new, number))
            ahead += dict.fromkeys(new)
    lines = [0] * len(motifs)
    rounds = [0] * len(motifs)
    for joint in joints.all:
        lines[of[joint.between[0]]] += 1
    for face in all_faces:
        rounds[of[face[0][0]]] += 1
    order = {motif: n for n, motif in enumerate(joints.pairs)}
    return tuple(
        Part(tuple(sorted(group, key=order.__getitem__)), lines[n], rounds[n])
        for n, group in enumerate(motifs)
    )


def _neighbours(joints: Joints) -> Mapping[str, list[str]]:
    beside: dict[str, list[str]] = {motif: [] for motif in joints.pairs}
    for joint in joints.all:
        a, b = joint.between
        beside[a].append(b)
        beside[b].append(a)
    return beside


def _walk(start: Dart, joints: Joints, seen: set[Dart]) -> Face:
    """From a run onwards, until it comes round or meets a faulty joint, marking what it passes."""
    walk = [start]
    seen.add(start)
    while (dart := _next(walk[-1], joints)) is not None and dart not in seen:
        walk.append(dart)
        seen.add(dart)
    return tuple(walk)


def _next(dart: Dart, joints: Joints) -> Dart | None:
    motif, number = dart
    pairs: Pairs = joints.pairs[motif]
    if pairs[number][1] is None:  # the one run of a motif without joints
        return dart
    mate = joints.mates.get(dart)
    if mate is None:
        return None
    other, behind = mate
    return other, (behind + 1) % len(joints.pairs[other])
