"""A yoke with more wheels, or fewer, in the middle of some of its sections.

Wheels beyond the middle are numbered anew, wherever they are named. What was eased in,
counted or measured on the old yoke says nothing of the new one and is left out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping

from msgspec.structs import replace

from border.yoke.project import Label, Motif, Project, Strip, Words, Work, WrittenEdge

Rename = Callable[[str], str | None]
"""The new name of a motif; None where it is no more."""

_JOIN = re.compile(r"(?i:(join)\s+)(.+?)(\s+by\s+[0-9]{1,7})?$")


def sections_of(project: Project) -> dict[str, int]:
    """What can be made longer or shorter: sections with their wheels, and plain edges, by their
    names, with their places."""
    found = {edge.name: edge.places for edge in project.edges if edge.places is not None}
    found |= {strip.name: strip.motifs for strip in project.strips}
    for edge in project.edges:
        for run in edge.runs:
            found[run.section] = found.get(run.section, 0) + run.motifs
    return found


def resized(project: Project, more: Mapping[str, int]) -> Project:
    """The project with so many more wheels in each section (below 0: fewer).

    A section that has no such number of wheels to lose keeps one.
    """
    rename = _renaming(project.strips, more)
    edges = tuple(_edge(edge, more) for edge in project.edges)
    return replace(
        project,
        strips=tuple(_strip(strip, more, rename) for strip in project.strips),
        motifs=tuple(m for motif in project.motifs if (m := _motif(motif, rename)) is not None),
        labels=tuple(_label(label, rename) for label in project.labels),
        edges=edges,
        works=tuple(_work(work, rename) for work in project.works),
        attachments=(),
    )


def _renaming(strips: Iterable[Strip], more: Mapping[str, int]) -> Rename:
    sizes = {strip.name: strip.motifs for strip in strips}

    def rename(name: str) -> str | None:
        section, _, number = name.rpartition(".")
        by = more.get(section, 0)
        if not by or section not in sizes or not number.isdecimal():
            return name
        n, had = int(number), sizes[section]
        by = max(by, 1 - had)
        keep = (had + min(by, 0) + 1) // 2
        if n <= keep:
            return name
        gone = n <= keep - min(by, 0) and n != had  # the last stays joined as it is
        return None if gone else f"{section}.{n + by}"

    return rename


def _strip(strip: Strip, more: Mapping[str, int], rename: Rename) -> Strip:
    motifs = max(strip.motifs + more.get(strip.name, 0), 1)
    first, last = _words(strip.first, rename), _words(strip.last, rename)
    return replace(strip, motifs=motifs, first=first, last=last)


def _motif(motif: Motif, rename: Rename) -> Motif | None:
    name = rename(motif.name)
    if name is None:
        return None
    ring = motif.ring and tuple(_item(words, rename) for words in motif.ring)
    return replace(motif, name=name, ring=ring, mirror_of=_words(motif.mirror_of, rename))


def _item(words: Words, rename: Rename) -> Words:
    """An item of a ring, its joint to the wheel as it is called now."""
    found = _JOIN.match(words.text)
    if found is None:
        return words
    name = rename(found[2]) or found[2]
    return replace(words, text=f"join {name}{found[3] or ''}")


def _words(words: Words | None, rename: Rename) -> Words | None:
    if words is None:
        return None
    name = rename(words.text)
    return replace(words, text=name) if name is not None else None


def _label(label: Label, rename: Rename) -> Label:
    motifs = (_words(words, rename) for words in label.motifs)
    return replace(label, motifs=tuple(words for words in motifs if words is not None))


def _edge(edge: WrittenEdge, more: Mapping[str, int]) -> WrittenEdge:
    """An edge written straight down: the first run of a section takes what there is more."""
    if edge.places is not None:
        places = max(edge.places + more.get(edge.name, 0), 1)
        long = edge.length_mm and edge.length_mm * places / max(edge.places, 1)
        return replace(edge, places=places, length_mm=long)
    runs = []
    left = dict(more)
    for run in edge.runs:
        by = left.pop(run.section, 0)
        runs.append(replace(run, motifs=max(run.motifs + by, 1)))
    long = edge.length_mm
    if long is not None:
        before = sum(run.motifs * run.places for run in edge.runs)
        long *= sum(run.motifs * run.places for run in runs) / before if before else 1
    return replace(edge, runs=tuple(runs), length_mm=long)


def _work(work: Work, rename: Rename) -> Work:
    return replace(
        work,
        start=_words(work.start, rename),
        mirror=(),
        done=0,
        found=None,
        measured=(),
        adjustments=(),
    )
