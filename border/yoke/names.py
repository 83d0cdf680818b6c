"""The names of a project: motifs in the order of the file, their sections and labels."""

from __future__ import annotations

import re
from collections.abc import Iterable

from msgspec import Struct

from border.findings import Finding, Span
from border.yoke.project import Label, Motif, Project, Strip

MOST_MOTIFS = 10_000
"""A yoke, and all written edges together, may have so many motifs."""

MOST_PLACES = 1_000_000
"""An edge may have so many places."""


MOST_LIKENED = 20
"""After so many faults of a kind the nearest known name is not looked for."""

_NUMBER = re.compile("[1-9][0-9]*")


class Names(Struct, frozen=True):
    """`sections`: motif of the yoke -> section, in the order of the file.

    `labels`: motif -> its labels. `known`: every name of the project. `written`: the
    motifs of edges written straight down. `too_many`: a number of motifs is beyond reckoning,
    and they have no names.
    """

    sections: dict[str, str]
    labels: dict[str, tuple[str, ...]]
    known: frozenset[str]
    written: frozenset[str]
    too_many: bool

    def of(self, motif: str, section: str) -> frozenset[str]:
        """All that a motif answers to."""
        return frozenset((motif, section, *self.labels.get(motif, ())))


def section_of(motif: str) -> str:
    """The section of a motif outside any strip: its name up to the last dot, or all of it."""
    return motif.rpartition(".")[0] or motif


def nearest(name: str, known: Iterable[str]) -> str | None:
    """A `help` with the known name that is most like `name`, if one is."""
    from difflib import get_close_matches

    by_fold = {k.casefold(): k for k in known}
    near = get_close_matches(name.casefold(), list(by_fold))
    return f'did you mean "{by_fold[near[0]]}"?' if near else None


def no_such_motif(name: str, wanted: str, known: Iterable[str], span: Span) -> Finding:
    """The finding for a motif named where there is none; `wanted`: `for the label to name`."""
    known = list(known)
    inside = [m for m in known if section_of(m) == name]
    if inside:
        help_ = f'"{name}" is a section: its motifs are {inside[0]} to {inside[-1]}'
    else:
        help_ = nearest(name, known) or "name a motif of a [[strip]], or a [[motif]]"
    return Finding("no-such-motif", f'there is no motif "{name}" {wanted}', help_, span)


class _Book:
    """Names given so far, each with what bears it; `Front` and `front` are one name."""

    def __init__(self) -> None:
        self.taken: dict[str, str] = {}
        self.findings: list[Finding] = []

    def give(self, name: str, to: str, span: Span, shared: bool = False) -> bool:
        """Whether the name could be given; `shared`: again to the same bearer, too."""
        before = self.taken.setdefault(name.casefold(), to)
        if before is to or (shared and before == to):
            return True
        message = f'the name "{name}" is given to {to}, but {before} has it already'
        if before == to:
            message = f"there is more than one of {to}"
        self.findings.append(Finding("name-twice", message, "give one of them another name", span))
        return False


def names(project: Project) -> tuple[Names, tuple[Finding, ...]]:
    """All names of a project, and `name-twice`, `no-such-motif`, `too-large` about them.

    What is too large has no motifs; a name given twice stays with its first bearer.
    """
    book = _Book()
    sections = _sections(project, book)
    written = _written_motifs(project, book)
    labels: dict[str, tuple[str, ...]] = {}
    too_many = any(f.code == "too-large" for f in book.findings)
    for label in () if too_many else project.labels:
        _label(label, {*sections, *written}, labels, book)
    known: set[str] = {*sections, *sections.values(), *written, *written.values()}
    known.update(label for given in labels.values() for label in given)
    known.update(label.name for label in project.labels)
    return Names(sections, labels, frozenset(known), frozenset(written), too_many), tuple(
        book.findings
    )


def _sections(project: Project, book: _Book) -> dict[str, str]:
    strips = {strip.name: strip for strip in project.strips}
    number = sum(strip.motifs for strip in project.strips) + len(project.motifs)
    if number > MOST_MOTIFS:
        largest = max(project.strips, key=lambda s: s.motifs, default=None)
        span = largest.span if largest else project.motifs[0].span
        message = f"the yoke has {number} motifs; more than {MOST_MOTIFS} are not reckoned"
        book.findings.append(Finding("too-large", message, "look at its number of motifs", span))
        return {}
    sections: dict[str, str] = {}
    lone: dict[str, Motif] = {}
    blocks: list[Strip | Motif] = [*project.strips, *project.motifs]
    for block in sorted(blocks, key=lambda b: b.span.start):
        if isinstance(block, Strip):
            if book.give(block.name, f'the strip "{block.name}"', block.span):
                sections.update(_strip_motifs(block, book))
        elif block.name in lone:
            message = f"{block.name} has two rings"
            help_ = "leave out one of the two [[motif]]s"
            book.findings.append(Finding("name-twice", message, help_, block.span))
        else:
            lone[block.name] = block
            if _is_alone(block, strips, book):
                sections[block.name] = section_of(block.name)
    return sections


def _strip_motifs(strip: Strip, book: _Book) -> dict[str, str]:
    found = {}
    for number in range(1, strip.motifs + 1):
        name = f"{strip.name}.{number}"
        if book.give(name, f"the motif {name}", strip.span):
            found[name] = strip.name
    return found


def _is_alone(motif: Motif, strips: dict[str, Strip], book: _Book) -> bool:
    """Whether a [[motif]] stands outside all strips (and gets its names)."""
    section, _, number = motif.name.rpartition(".")
    strip = strips.get(section)
    if strip is not None:
        if not _NUMBER.fullmatch(number) or int(number) > strip.motifs:
            message = f'there is a ring for "{motif.name}", but the strip has no such motif'
            help_ = f'the motifs of strip "{section}" are {section}.1 to {section}.{strip.motifs}'
            book.findings.append(Finding("no-such-motif", message, help_, motif.span))
        return False
    section = section_of(motif.name)
    named = book.give(motif.name, f"the motif {motif.name}", motif.span)
    if section == motif.name:
        return named
    return named and book.give(section, f'the section "{section}"', motif.span, shared=True)


def _written_motifs(project: Project, book: _Book) -> dict[str, str]:
    number = sum(run.motifs for edge in project.edges for run in edge.runs)
    if number > MOST_MOTIFS:
        largest = max((r for e in project.edges for r in e.runs), key=lambda r: r.motifs)
        message = f"the edges have {number} motifs; more than {MOST_MOTIFS} are not reckoned"
        help_ = "look at the numbers of motifs in their runs"
        book.findings.append(Finding("too-large", message, help_, largest.span))
        return {}
    motifs: dict[str, str] = {}
    given: set[str] = set()
    for edge in project.edges:
        counts: dict[str, int] = {}
        for run in edge.runs:
            if run.section not in given:
                bearer = f'the section "{run.section}" of an edge'
                given.add(run.section)
                book.give(run.section, bearer, run.span)
            first = counts.get(run.section, 0) + 1
            counts[run.section] = first + run.motifs - 1
            for number in range(first, first + run.motifs):
                motifs[f"{run.section}.{number}"] = run.section
    return motifs


def _label(label: Label, motifs: set[str], labels: dict[str, tuple[str, ...]], book: _Book) -> None:
    if label.name in motifs:
        book.taken.setdefault(label.name.casefold(), f"the motif {label.name}")
    if not book.give(label.name, f'the label "{label.name}"', label.span):
        return
    for motif in label.motifs:
        before = labels.get(motif.text, ())
        if motif.text not in motifs:
            wanted = f'for the label "{label.name}"'
            known = list(motifs) if len(book.findings) < MOST_LIKENED else []
            book.findings.append(no_such_motif(motif.text, wanted, known, motif.span))
        elif label.name not in before:
            labels[motif.text] = (*before, label.name)
