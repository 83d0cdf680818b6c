"""Mirrored rings: a ring reversed, with left and right exchanged in its names."""

from __future__ import annotations

import re
from collections.abc import Mapping

from msgspec.structs import replace

from border.findings import Finding
from border.yoke.names import Names, no_such_motif
from border.yoke.project import Motif, Strip
from border.yoke.ring import Free, Item, Join, Ring


def mirrored(
    own: Mapping[str, Motif], strips: Mapping[str, Strip], made: dict[str, Ring], names: Names
) -> tuple[dict[str, Ring], tuple[Finding, ...]]:
    """All rings, those of mirrored motifs with them.

    `own`: the motifs with a [[motif]]; `made`: the rings that are no mirrors. Findings:
    `no-such-motif` for a mirror of nothing, `ring-faulty` for one of itself.
    """
    rings = dict(made)
    findings: list[Finding] = []
    ready: set[str] = set()
    for motif in own.values():
        if motif.mirror_of is None or motif.name in ready or motif.name not in names.sections:
            continue
        chain = _chain(motif, own, ready)
        source = chain[-1].mirror_of
        assert source is not None
        whole = source.text in names.sections and source.text not in {m.name for m in chain}
        if not whole:
            findings.append(_broken(chain[-1], names))
        for link in reversed(chain):
            assert link.mirror_of is not None
            span = link.mirror_of.span
            ring = Ring(link.name, (), span, readable=False)
            if whole:
                ring = _mirror(rings[link.mirror_of.text], ring, strips)
            rings[link.name] = ring
            ready.add(link.name)
    return {name: _settled(ring, rings) for name, ring in rings.items()}, tuple(findings)


def left_for_right(name: str) -> str:
    """A name with the words left and right exchanged."""

    def other(found: re.Match[str]) -> str:
        word = found.group()
        swapped = "right" if word.lower() == "left" else "left"
        if word.isupper():
            return swapped.upper()
        return swapped.capitalize() if word[0].isupper() else swapped

    return re.sub(r"(?i)(?<![^\W_\d])(left|right)(?![^\W_\d])", other, name)


def _chain(motif: Motif, own: Mapping[str, Motif], ready: set[str]) -> list[Motif]:
    """A motif, the one that it is the mirror of, and so on while that is a mirror too."""
    chain = [motif]
    met = {motif.name}
    while (words := chain[-1].mirror_of) and words.text not in met | ready:
        before = own.get(words.text)
        if before is None or before.mirror_of is None:
            break
        chain.append(before)
        met.add(before.name)
    return chain


def _broken(motif: Motif, names: Names) -> Finding:
    assert motif.mirror_of is not None
    name, span = motif.mirror_of.text, motif.mirror_of.span
    if name not in names.sections:
        return no_such_motif(name, f"for {motif.name} to mirror", list(names.sections), span)
    message = f"{motif.name} comes out as a mirror of itself"
    return Finding("ring-faulty", message, "write out the ring of one of the two", span)


def _mirror(ring: Ring, empty: Ring, strips: Mapping[str, Strip]) -> Ring:
    items: list[Item] = []
    for item in reversed(ring.items):
        if isinstance(item, Free):
            edge = item.edge and left_for_right(item.edge)
            items.append(Free(edge, item.places, empty.span))
        else:
            other = left_for_right(item.other)
            across = _across(other, strips) if other == item.other else None
            items.append(replace(item, other=other, across=across, span=empty.span))
    return replace(empty, items=tuple(items), mirror_of=ring.motif, readable=ring.readable)


def _across(motif: str, strips: Mapping[str, Strip]) -> str | None:
    """The motif as far from the other end of its strip."""
    section, _, number = motif.rpartition(".")
    strip = strips.get(section)
    if strip is None or not number.isdecimal() or len(number) > 7:
        return None
    other = f"{section}.{strip.motifs + 1 - int(number)}"
    return other if other != motif else None


def _settled(ring: Ring, among: Mapping[str, Ring]) -> Ring:
    """A mirrored ring with its joints to strips without left or right in their names settled.

    Such a strip may lie along the middle of the yoke, or go across it, so that
    its motifs change places with those as far from its other end. Which, the
    rings that answer tell; where neither does, the name stays as it is.
    """

    def answers(name: str) -> bool:
        other = among.get(name)
        if other is None or name == ring.motif:
            return False
        return any(isinstance(i, Join) and ring.motif in (i.other, i.across) for i in other.items)

    items: list[Item] = []
    for item in ring.items:
        if isinstance(item, Join) and item.across and not answers(item.other):
            turned = answers(item.across) or item.other == ring.motif
            item = replace(item, other=item.across if turned else item.other)
        items.append(item)
    return replace(ring, items=tuple(items)) if ring.mirror_of else ring
