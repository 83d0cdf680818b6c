"""Scopes: which clause of a row works which stretch or joint, in the order of the edge."""

from __future__ import annotations

from collections.abc import Iterable
from typing import assert_never

from msgspec import Struct

from border.text.tree import (
    AtJoint,
    AtJoints,
    Clause,
    Elsewhere,
    Over,
    OverMotifs,
    Target,
)
from border.working.line import Line
from border.working.sites import SiteFinder
from border.working.windows import (
    BEFORE_ALL,
    JointWindow,
    StretchWindow,
    Window,
    joints_apart,
)


class Part(Struct, frozen=True):
    """A part of the edge that one clause works: its window, and its name for messages.

    `stretches`: the indices of those that it is made of; none for a joint.
    """

    clause: Clause
    window: Window
    name: str
    stretches: tuple[int, ...] = ()


def names_of(clause: Clause) -> tuple[str, ...]:
    """The names of the yoke that a clause uses."""
    match clause.scope:
        case Over(name=name):
            return (name,)
        case OverMotifs(name=name):
            return (name,) if name else ()
        case AtJoint(a=a, b=b):
            return (a, b)
        case _:
            return ()


def carries(names: Iterable[str], name: str) -> bool:
    """Whether one of the names is meant: capitals mean nothing in a border text."""
    return name.casefold() in (known.casefold() for known in names)


def allotted(line: Line, clauses: tuple[Clause, ...]) -> list[int | None]:
    """For each stretch the index of the first clause that names it."""
    found: list[int | None] = []
    for stretch in line.stretches:
        names = stretch.run.names
        owner: int | None = None
        for i, clause in enumerate(clauses):
            match clause.scope:
                case Over(name=name):
                    takes = carries(names, name)
                case OverMotifs(name=name):
                    takes = name is None or carries(names, name)
                case Elsewhere():
                    takes = True
                case AtJoints() | AtJoint():
                    takes = False
                case _:
                    assert_never(clause.scope)
            if takes:
                owner = i
                break
        found.append(owner)
    return found


def parts(finder: SiteFinder, clauses: tuple[Clause, ...]) -> list[Part]:
    """The parts of the edge in working order, each with the clause that works it."""
    line, tick = finder.fabric.line, finder.fabric.tick
    owners = allotted(line, clauses)
    series = _series(line, clauses, owners)
    at_joints = _joint_clauses(line, clauses, series)
    apart = joints_apart(line)
    order: dict[Target, tuple[list[int], list[int]]] = {}
    made: list[Part] = []
    length = line.length * tick

    def joint(index: int, lap: int) -> None:
        if (clause := at_joints.get(index)) is None:
            return
        point = line.stretches[index].start * tick + (length if index == 0 else lap)
        before, behind = line.joint_between(index)
        name = f"the joint {before.run.motif} | {behind.run.motif}"
        window = JointWindow(finder, BEFORE_ALL, point, False, {}, point, True, True, order)
        made.append(Part(clause, window, name))

    n = len(line.stretches)
    alone = line.closed and n == 1  # no joint: what stands at the point 0 is the motif's too
    for first, last in series:
        owner = owners[first]
        low = line.stretches[first].start * tick
        lap = length if last < first else 0  # across the point 0
        end = line.stretches[last].end * tick + lap
        behind = (last + 1) % n
        if owner is None:  # told as not covered; its joints are worked all the same
            joint(behind, lap)
            continue
        window = StretchWindow(
            finder,
            BEFORE_ALL,
            end,
            False,
            {},
            low,
            first in apart and _keeps(first, owners, at_joints, n) == first,
            alone or (behind in apart and _keeps(behind, owners, at_joints, n) == last),
            order,
        )
        own = tuple(k % n for k in range(first, last + (n if lap else 0) + 1))
        made.append(Part(clauses[owner], window, _name(line, first, last), own))
        joint(behind, lap)
    return made


def _series(
    line: Line, clauses: tuple[Clause, ...], owners: list[int | None]
) -> list[tuple[int, int]]:
    """The stretches that are worked as one: single motifs, or series of one clause.

    What no clause covers stands alone too.
    """
    found = [(k, k) for k, owner in enumerate(owners) if owner is None]
    for i, clause in enumerate(clauses):
        mine = [owner == i for owner in owners]
        match clause.scope:
            case OverMotifs() | Elsewhere(each_motif=True):
                found += [(k, k) for k, yes in enumerate(mine) if yes]
            case Over() | Elsewhere():
                found += line.series(mine)
            case _:
                pass
    return sorted(found, key=lambda s: (s[1] < s[0], s[0]))


def _joint_clauses(
    line: Line, clauses: tuple[Clause, ...], series: list[tuple[int, int]]
) -> dict[int, Clause]:
    """The clause worked at each joint between two stretches, by the stretch behind it."""
    inside = {
        k % len(line.stretches)
        for first, last in series
        for k in range(first + 1, (last if last >= first else last + len(line.stretches)) + 1)
    }
    if any((first, last) == (0, len(line.stretches) - 1) for first, last in series):
        inside.add(0)
    found: dict[int, Clause] = {}
    for index in line.joints:
        if index in inside:
            continue
        before, behind = (s.run.names for s in line.joint_between(index))
        for clause in clauses:
            match clause.scope:
                case AtJoints():
                    found[index] = clause
                case AtJoint(a=a, b=b) if (carries(before, a) and carries(behind, b)) or (
                    carries(before, b) and carries(behind, a)
                ):
                    found[index] = clause
                case _:
                    continue
            break
    return found


def _keeps(
    joint: int, owners: list[int | None], at_joints: dict[int, Clause], n: int
) -> int | None:
    """Which stretch the sites on a joint belong to; None where the joint's own clause has them."""
    if joint in at_joints:
        return None
    before, behind = (joint - 1) % n, joint
    a, b = owners[before], owners[behind]
    if a is None or b is None:
        return before if b is None else behind
    return before if a <= b else behind


def _name(line: Line, first: int, last: int) -> str:
    if first == last:
        return line.stretches[first].run.motif
    return f"{line.stretches[first].run.motif} to {line.stretches[last].run.motif}"
