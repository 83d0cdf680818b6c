"""What a round came to, as plain dictionaries: its stitches, repeats, sections, motifs, joints."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any, TypeVar

from border.text.tree import Item, Repeat
from plainly.closing import left_over
from plainly.fabric import (
    CHAIN,
    STITCH,
    Atom,
    Fabric,
    Made,
    MadeChain,
    MadePicot,
    MadeStitch,
    bare,
)
from plainly.line import Line, Stretch
from plainly.readings import is_open
from plainly.rows import Work
from plainly.runs import Path, Run
from plainly.sites import Site, kind_label

Record = dict[str, Any]
_Like = TypeVar("_Like")


@dataclass
class Tally:
    stitches: Counter[str] = field(default_factory=Counter)
    chains: int = 0
    picots: int = 0

    def add(self, atom: Atom) -> None:
        if atom.what == STITCH:
            self.stitches[atom.stitch] += 1
        elif atom.what == CHAIN:
            self.chains += 1
        self.picots += atom.picots

    def record(self) -> Record:
        return {"stitches": dict(self.stitches), "chains": self.chains, "picots": self.picots}


def made_record(made: Iterable[Made]) -> Record:
    """Picots count as picots, and their chains as theirs."""
    tally = Tally()
    for piece in made:
        match bare(piece):
            case MadeStitch(stitch):
                tally.stitches[stitch] += 1
            case MadeChain():
                tally.chains += 1
            case MadePicot():
                tally.picots += 1
    return tally.record()


# --- repeats -----------------------------------------------------------------------------------


def open_paths(items: tuple[Item, ...], path: Path = ()) -> list[Path]:
    """Where the open-ended repeats of a text stand, in its order."""
    found: list[Path] = []
    for i, item in enumerate(items):
        if is_open(item):
            found.append((*path, i))
        elif isinstance(item, Repeat):
            found += open_paths(item.items, (*path, i))
    return found


def repeat_record(path: Path, works: list[Work], made: list[Made]) -> Record:
    """One repeat of the text, over all the windows that the text was worked in."""
    runs = [(work, run) for work in works for run in work.runs if run.path == path]
    whole = [(run, k) for _, run in runs for k in range(len(run.workings))]
    one: Record = {"takes": {}, "makes": Tally().record()}
    if whole:
        one = _usual([_one_working(run, k, made) for run, k in whole])
    return {
        "times": len(whole),
        "takes": one["takes"],
        "makes": one["makes"],
        "left_over": sum(len(_left_over(work, path)) for work in works),
    }


def _left_over(work: Work, path: Path) -> set[Site]:
    """What one text leaves over of a repeat, also where a bracket works that several times."""
    return {x for run in work.runs if run.path == path for x in left_over(work, run)}


def _one_working(run: Run, k: int, made: list[Made]) -> Record:
    working = run.workings[k]
    takes: Counter[str] = Counter()
    for kind, number in working.takes:
        takes[kind_label(kind.of)] += number
    return {
        "takes": dict(takes),
        "makes": made_record(made[working.made_from : working.made_to]),
    }


def _usual(records: list[_Like]) -> _Like:
    """The one that most are like; on a tie the one met first."""
    return max(records, key=records.count)


# --- by the parts of the edge ------------------------------------------------------------------


def parts_record(fabric: Fabric, line: Line) -> Record:
    """Sections, motifs and joints. `line` is the edge as it is named, whichever way the row went.

    An atom strictly inside a motif's stretch belongs to it and its section. One exactly on a joint
    belongs to the joint; between two motifs of one section also to that section.
    """
    sections = {s.run.section: Tally() for s in line.stretches}
    motifs = {s.index: Tally() for s in line.stretches}
    joints = {(j.before.index, j.after.index): Tally() for j in line.joints()}
    for atom in (*fabric.atoms, *fabric.under):
        joint = fabric.line.joint_at(atom.at)
        if joint is None:
            stretch = fabric.line.stretch_at(atom.at)
            if stretch is not None:
                motifs[stretch.index].add(atom)
                sections[stretch.run.section].add(atom)
            continue
        one, other = joint.before, joint.after
        key = (one.index, other.index)
        joints[key if _named(joints, line, key, fabric) else key[::-1]].add(atom)
        if one.run.section == other.run.section:
            sections[one.run.section].add(atom)
    return {
        "sections": [{"section": name, **tally.record()} for name, tally in sections.items()],
        "motifs": _motif_records(line, motifs),
        "joints": [
            {"between": [j.before.run.motif, j.after.run.motif], **tally.record()}
            for j in line.joints()
            if (tally := joints[j.before.index, j.after.index]) != Tally()
        ],
    }


def _named(
    joints: dict[tuple[int, int], Tally], line: Line, key: tuple[int, int], fabric: Fabric
) -> bool:
    """Whether the row goes the way that the edge is named; turned, a joint's ends change places."""
    return fabric.line.stretches == line.stretches and key in joints


def _motif_records(line: Line, motifs: dict[int, Tally]) -> list[Record]:
    counts = [motifs[stretch.index].record() for stretch in line.stretches]
    usual = _usual(counts) if counts else None
    return [
        {**_name(stretch), **count, "usual": count == usual}
        for stretch, count in zip(line.stretches, counts, strict=True)
    ]


def _name(stretch: Stretch) -> Record:
    return {"motif": stretch.run.motif, "section": stretch.run.section}
