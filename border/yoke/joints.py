"""Joints: each must be named from both sides, once, with one number of loops."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from msgspec import Struct

from border.findings import Finding
from border.yoke.names import MOST_LIKENED, no_such_motif
from border.yoke.project import Project
from border.yoke.ring import Join, Pairs, Ring, paired

Dart: TypeAlias = tuple[str, int]
"""A motif, and the number (from 0) of a run in its ring, with the joint behind that run."""


class Joint(Struct, frozen=True):
    """A joint agreed from both sides: its motifs, and the loops that it takes up of each."""

    between: tuple[str, str]
    loops: tuple[int, int]


class Joints(Struct, frozen=True):
    """The joints of a yoke.

    `pairs`: by motif, its ring as runs with the joint behind each; a ring that
    cannot be read has none. `mates`: the two darts of a joint, each to the other.
    """

    pairs: dict[str, Pairs]
    mates: dict[Dart, Dart]
    all: tuple[Joint, ...]
    findings: tuple[Finding, ...]


def joints(project: Project, rings: Mapping[str, Ring]) -> Joints:
    """The joints on which both rings agree, and the faults of all others.

    Findings: `ring-faulty`, `no-such-motif`, `joined-twice`, `joint-one-sided`,
    `joint-uneven`, `seams-too-many`.
    """
    return _Joiner(project, rings).joined()


class _Joiner:
    def __init__(self, project: Project, rings: Mapping[str, Ring]) -> None:
        self.project = project
        self.rings = rings
        self.findings: list[Finding] = []
        self.pairs: dict[str, Pairs] = {}
        self.met: dict[str, dict[str, list[int]]] = {}  # motif -> other -> its darts to it
        self.twice: set[frozenset[str]] = set()

    def joined(self) -> Joints:
        for motif, ring in self.rings.items():
            self.read(motif, ring)
        mates: dict[Dart, Dart] = {}
        found: list[Joint] = []
        for motif, pairs in self.pairs.items():
            for number, (_, join) in enumerate(pairs):
                if join is None or (motif, number) in mates or not self.agreed(motif, join):
                    continue
                mate = (join.other, self.met[join.other][motif][0])
                mates[motif, number] = mate
                mates[mate] = (motif, number)
                found.append(self.joint(motif, join, self.pairs[join.other][mate[1]][1]))
        self.check_seams()
        return Joints(self.pairs, mates, tuple(found), tuple(self.findings))

    def tell(self, code: str, ring: Ring, join: Join | None, message: str, help_: str) -> None:
        span = join.span if join else ring.span
        self.findings.append(Finding(code, message, help_, span))

    def read(self, motif: str, ring: Ring) -> None:
        pairs = paired(ring) if ring.readable else None
        if ring.readable and pairs is None:
            self.tell("ring-faulty", ring, None, *_edges_meet(ring))
        self.pairs[motif] = pairs or ()
        self.met[motif] = {}
        for number, (_, join) in enumerate(self.pairs[motif]):
            if join is not None:
                self.met[motif].setdefault(join.other, []).append(number)

    def agreed(self, motif: str, join: Join) -> bool:
        ring = self.rings[motif]
        if join.other == motif:
            self.tell("ring-faulty", ring, join, f"{motif} is joined to itself", _OTHER)
            return False
        if join.other not in self.rings:
            known = list(self.rings) if len(self.findings) < MOST_LIKENED else []
            wanted = f"for {motif} to be joined to"
            self.findings.append(no_such_motif(join.other, wanted, known, join.span))
            return False
        there = self.met[join.other].get(motif, [])
        if max(len(self.met[motif][join.other]), len(there)) > 1:
            self.tell_twice(motif, join)
            return False
        if not there:
            names_nobody = self.met[join.other].keys() - self.rings.keys()
            if self.pairs[join.other] and not names_nobody:  # else its own ring is told of
                message = f"{motif} is joined to {join.other}, "
                message += f"but the ring of {join.other} does not say so"
                self.tell("joint-one-sided", ring, join, message, self.how_to_answer(motif, join))
            return False
        return True

    def tell_twice(self, motif: str, join: Join) -> None:
        pair = frozenset((motif, join.other))
        if pair not in self.twice:
            self.twice.add(pair)
            message = f"{motif} and {join.other} are joined more than once"
            help_ = "two motifs can be joined at one joint only: leave out the others"
            self.tell("joined-twice", self.rings[motif], join, message, help_)

    def how_to_answer(self, motif: str, join: Join) -> str:
        other = self.rings[join.other]
        strip = other.strip
        if strip is None:
            return f'write "join {motif}" between two edges in the ring of {join.other}'
        number = int(join.other.rpartition(".")[2])
        if number == 1 and strip.first is None:
            return f'in strip "{strip.name}", write from = "{motif}"'
        if number == strip.motifs and strip.last is None:
            return f'in strip "{strip.name}", write to = "{motif}"'
        return f'give {join.other} a [[motif]] with a ring of its own that has "join {motif}"'

    def joint(self, motif: str, join: Join, answer: Join | None) -> Joint:
        assert answer is not None
        mirrors = self.rings[motif].mirror_of and self.rings[join.other].mirror_of
        if join.loops != answer.loops and not mirrors:  # else told where they are mirrors of
            message = (
                f"the joint of {motif} and {join.other} takes up {join.loops} of {motif}, "
                f"but {answer.loops} of {join.other}"
            )
            help_ = f'give both the same number, as in "join {join.other} by {answer.loops}"'
            self.tell("joint-uneven", self.rings[motif], join, message, help_)
        return Joint((motif, join.other), (join.loops, answer.loops))

    def check_seams(self) -> None:
        yoke = self.project.yoke
        if yoke is None or yoke.seam_loops == 0:
            return
        twice = 2 * yoke.seam_loops
        if yoke.joined is not None and twice > yoke.joined:
            message = f"seam_loops = {yoke.seam_loops} at each end of a joint makes {twice}, "
            message += f"but a joint takes up only {yoke.joined}"
            help_ = f"write seam_loops = {yoke.joined // 2}, or less"
            self.findings.append(Finding("seams-too-many", message, help_, yoke.seam_span))
        for motif, pairs in self.pairs.items():
            for _, join in pairs if self.rings[motif].mirror_of is None else ():
                if join and join.by is not None and twice > join.by:
                    message = f"the joint of {motif} and {join.other} takes up {join.by}, "
                    message += f"less than the {twice} seam loops at its two ends"
                    help_ = f"write by {twice} or more, or fewer seam_loops in [yoke]"
                    self.tell("seams-too-many", self.rings[motif], join, message, help_)


_OTHER = "name the other motif of the joint"


def _edges_meet(ring: Ring) -> tuple[str, str]:
    strip = ring.strip
    if strip is None:
        message = f"in the ring of {ring.motif} two edges meet without a joint between them"
        return message, 'put "join MOTIF" where one edge ends and the next begins'
    ends = []
    number = int(ring.motif.rpartition(".")[2])
    if number == 1 and strip.first is None:
        ends.append('from = "MOTIF"')
    if number == strip.motifs and strip.last is None:
        ends.append('to = "MOTIF"')
    message = f'two edges meet on {ring.motif} at the open end of strip "{strip.name}"'
    own = f"or give {ring.motif} a [[motif]] with a ring of its own"
    return message, f"say what it is joined to, {' and '.join(ends)}, {own}"
