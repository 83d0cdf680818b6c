"""The faults of a yoke, with the line to paste where one change mends them.

Every change is tried: one that takes faults away and brings no new one is told of, and
what it takes away is one fault.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain, groupby
from typing import TYPE_CHECKING, TypeAlias

from msgspec.structs import replace

from border.findings import Finding
from border.yoke.flat import flat_faults
from border.yoke.laying import Laid, lay
from border.yoke.loops import loop_faults
from border.yoke.names import Names
from border.yoke.project import Project

if TYPE_CHECKING:
    from border.yoke.changes import Change

MOST_TOLD = 2
"""Changes that are told of one fault: with more, none of them is."""

_Key: TypeAlias = tuple[str, str]


def yoke_faults(project: Project, names: Names, laid: Laid) -> tuple[Finding, ...]:
    """Everything that is wrong with rings, joints and edges, with what would mend it."""
    faults = list(_faults(project, laid))
    mends = _mends(project, names, laid, faults) if faults else []
    while mends:
        most = max(len(gone) for _, gone in mends)
        best, gone = min((m for m in mends if len(m[1]) == most), key=lambda m: m[0].rank)
        alike = [c for c, others in mends if (c.rank, others) == (best.rank, gone)]
        if len(alike) <= MOST_TOLD:
            first = next(n for n, fault in enumerate(faults) if _key(fault) in gone)
            told = _with_help(faults[first], alike)
            after = (fault for fault in faults[first + 1 :] if _key(fault) not in gone)
            faults = [*faults[:first], told, *after]
        mends = [(change, others) for change, others in mends if not others & gone]
    return tuple(faults)


def _faults(project: Project, laid: Laid) -> tuple[Finding, ...]:
    found = (*laid.findings, *loop_faults(project, laid.rings), *flat_faults(project, laid))
    return tuple(dict.fromkeys(found))


def _mends(
    project: Project, names: Names, laid: Laid, faults: Sequence[Finding]
) -> list[tuple[Change, frozenset[_Key]]]:
    """The changes that mend something and spoil nothing, each with the faults it takes away."""
    # here, since a yoke without a fault should not wait for them
    from border.yoke.changes import MOST_TRIED
    from border.yoke.correcting import corrections
    from border.yoke.turning import turns

    changes = list(chain(turns(project), corrections(project, laid)))
    if len(changes) * len(names.sections) > MOST_TRIED:
        return []
    there = frozenset(map(_key, faults))
    found = []
    for change in changes:
        made = lay(change.project, names)
        if _seen(made) < _seen(laid):
            continue  # a fault of an edge is not mended where the edge is only no longer seen
        left = {_key(f) for f in _faults(change.project, made)}
        if left < there:
            found.append((change, there - left))
    return found


def _seen(laid: Laid) -> int:
    """The runs of the edges that pass no faulty joint."""
    return sum(map(len, laid.faces))


def _key(fault: Finding) -> _Key:
    """What a fault is, whatever the sum that it shows."""
    return fault.code, fault.message.partition(": ")[0]


def _with_help(fault: Finding, changes: Sequence[Change]) -> Finding:
    """The fault with what mends it; where that is one thing, shown where it is to be done."""
    told = [
        f"{what}: {' or '.join(change.paste for change in alike)}"
        for what, alike in groupby(changes, key=lambda change: change.what)
    ]
    spans = {change.span for change in changes}
    return replace(
        fault, help=", or ".join(told), span=spans.pop() if len(spans) == 1 else fault.span
    )
