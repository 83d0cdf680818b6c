"""The yoke laid out: rings, joints, faces, and whether it all goes together."""

from __future__ import annotations

from msgspec import Struct

from border.findings import Finding
from border.yoke.faces import Face, Part, faces, parts
from border.yoke.joints import Dart, Joints, joints
from border.yoke.names import Names
from border.yoke.project import Project
from border.yoke.ring import Free, Ring
from border.yoke.rings import rings


class Laid(Struct, frozen=True):
    """A yoke as far as its rings and joints allow it to be laid out.

    `faces`: those that pass no faulty joint. `whole`: no ring and no joint is
    faulty, so that these are all. `findings`: those of rings and joints.
    """

    rings: dict[str, Ring]
    joints: Joints
    faces: tuple[Face, ...]
    parts: tuple[Part, ...]
    whole: bool
    findings: tuple[Finding, ...]

    def run(self, dart: Dart) -> Free:
        """The run of a dart."""
        return self.joints.pairs[dart[0]][dart[1]][0]

    def names(self, face: Face) -> tuple[str, ...]:
        """What the runs of a face are called, each name once, in order."""
        called = (self.run(dart).edge for dart in face)
        return tuple(dict.fromkeys(name for name in called if name is not None))

    @property
    def lies_flat(self) -> bool:
        """Every part of the yoke has V - E + F = 2."""
        return self.whole and all(part.lies_flat for part in self.parts)

    @property
    def names_agree(self) -> bool:
        """Every face has one name, and every name one face."""
        called = [self.names(face) for face in self.faces]
        return all(len(c) == 1 for c in called) and len(set(called)) == len(called)

    @property
    def goes_together(self) -> bool:
        """In one piece, flat, and with names that agree. (A project without motifs does.)"""
        return self.lies_flat and self.names_agree and len(self.parts) <= 1


def lay(project: Project, names: Names) -> Laid:
    """Lay out the yoke of a project."""
    all_rings, ring_faults = rings(project, names)
    all_joints = joints(project, all_rings)
    all_faces = faces(all_joints)
    whole = all(
        bool(pairs)
        and all(join is None or (m, n) in all_joints.mates for n, (_, join) in enumerate(pairs))
        for m, pairs in all_joints.pairs.items()
    )
    found = parts(all_joints, all_faces)
    return Laid(all_rings, all_joints, all_faces, found, whole, ring_faults + all_joints.findings)
