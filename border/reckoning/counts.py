"""The counts of a worked edge: by round, section, motif and joint."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from msgspec import Struct

from border.reckoning.drawn import loops_drawn
from border.text.tree import Kind
from border.working.claims import how_many
from border.working.closing import tally
from border.working.fabric import Fabric
from border.working.rounds import Fallen
from border.working.work import WorkedEdge, WorkedRound


class Tally(Struct, frozen=True):
    """What stands somewhere: stitches by canonical name, chains, picots.

    Chains of picots and start chains are in none of them.
    """

    stitches: dict[str, int]
    chains: int
    picots: int


class RepeatCount(Struct, frozen=True):
    """One open-ended repeat of a round.

    `takes`: sites of the leading kinds that one repeat passes or works;
    `makes`: what one repeat makes. Summed over the motifs of a clause:
    `times`, `left_over`, and `otherwise`: how many of the times take more or fewer.
    """

    times: int
    takes: dict[str, int]
    makes: Tally
    left_over: int
    otherwise: int = 0


class SectionCount(Struct, frozen=True):
    """What is made over one section."""

    section: str
    made: Tally


class MotifCount(Struct, frozen=True):
    """`usual` is False where a motif differs from what most motifs have."""

    motif: str
    section: str
    made: Tally
    usual: bool


class JointCount(Struct, frozen=True):
    """What stands exactly on the joint between two motifs."""

    between: tuple[str, str]
    made: Tally


class RoundCount(Struct, frozen=True):
    """One round on this edge. `spaces`: chain spaces offered to the next round.

    `done`: it is worked already. `found`: what was counted in it then (what, how many).
    `loops`: loops of thread drawn in the making of it (the thread model's unit).
    """

    number: int
    closes: bool
    made: Tally
    spaces: int
    repeats: tuple[RepeatCount, ...]
    sections: tuple[SectionCount, ...]
    motifs: tuple[MotifCount, ...]
    joints: tuple[JointCount, ...]
    adjustments: tuple[Fallen, ...]
    loops: int
    done: bool = False
    found: tuple[tuple[str, int], ...] = ()


def count_edge(worked: WorkedEdge) -> tuple[RoundCount, ...]:
    """The counts of every round of a worked edge."""
    return tuple(_count(round_) for round_ in worked.rounds)


def _count(round_: WorkedRound) -> RoundCount:
    fabric = round_.fabric
    sections, motifs, joints = _parts(fabric)
    return RoundCount(
        number=round_.number,
        closes=round_.closes,
        made=_tally(fabric.kinds),
        spaces=how_many(fabric, Kind("space")),
        repeats=tuple(
            RepeatCount(r.times, r.takes, _tally(r.makes), r.left_over, r.otherwise)
            for r in round_.repeats
        ),
        sections=sections,
        motifs=motifs,
        joints=joints,
        adjustments=round_.adjustments,
        loops=sum(loops_drawn(round_)),
        done=round_.done,
        found=round_.found.counts if round_.found else (),
    )


def _tally(kinds: Iterable[str]) -> Tally:
    return Tally(*tally(tuple(kinds)))


def _parts(
    fabric: Fabric,
) -> tuple[tuple[SectionCount, ...], tuple[MotifCount, ...], tuple[JointCount, ...]]:
    """What stands on each section, motif and joint, in the order of the edge."""
    line = fabric.line
    if not line.stretches:
        return (), (), ()
    on_motif: list[list[str]] = [[] for _ in line.stretches]
    on_joint: dict[int, list[str]] = {}
    owners = line.owners(fabric.pos, fabric.tick)
    for kind, (at, on) in zip(fabric.kinds, owners, strict=True):
        if on:
            on_joint.setdefault(at, []).append(kind)
        else:
            on_motif[at].append(kind)
    tallies = [_tally(kinds) for kinds in on_motif]
    order = sorted(range(len(tallies)), key=lambda i: line.stretches[i].entry)
    usual = _most_common([tallies[i] for i in order])
    motifs = []
    by_section: dict[str, list[str]] = {}
    for i in order:
        run = line.stretches[i].run
        motifs.append(MotifCount(run.motif, run.section, tallies[i], tallies[i] == usual))
        by_section.setdefault(run.section, []).extend(on_motif[i])
    joints = []
    for at in sorted(on_joint, key=lambda i: _joint_order(fabric, i)):
        before, behind = (s.run for s in line.joint_between(at))
        if line.flipped:
            before, behind = behind, before
        joints.append(JointCount((before.motif, behind.motif), _tally(on_joint[at])))
        if before.section == behind.section:
            by_section[before.section].extend(on_joint[at])
    sections = tuple(SectionCount(name, _tally(kinds)) for name, kinds in by_section.items())
    return sections, tuple(motifs), tuple(joints)


def _joint_order(fabric: Fabric, at: int) -> int:
    """Joints in the order of the edge, each by the motif before it."""
    before, behind = fabric.line.joint_between(at)
    return behind.entry if fabric.line.flipped else before.entry


def _most_common(tallies: list[Tally]) -> Tally:
    """What most motifs have; on a tie what was met first."""
    keys = [(frozenset(t.stitches.items()), t.chains, t.picots) for t in tallies]
    most = Counter(keys).most_common(1)[0][0]
    return tallies[keys.index(most)]
