"""Counts that the text states of itself, checked against what it comes to."""

from __future__ import annotations

from msgspec.structs import replace

from border.findings import Finding
from border.stitches import STITCHES
from border.text.readings import Round
from border.text.tree import ST, Kind, Multiple, Whole
from border.text.written import write_kind
from border.working.fabric import CHAIN, PICOT, Fabric
from border.working.sites import SiteFinder
from border.yoke.edges import Edge


def check_claims(round_: Round, fabric: Fabric, times: list[int]) -> list[Finding]:
    """The claims at a row's end: `(70 spaces)`; `times` of its repeats, in order."""
    findings = []
    for claim in round_.claims:
        if claim.of is None:
            comes_to = times[-1] if times else 1
            what = "repeats"
        else:
            comes_to = how_many(fabric, claim.of, bool(round_.rules.chains_count))
            what = write_kind(claim.of, round_.rules.terms, plural=True)
        if comes_to != claim.count:
            message = f"the text says {claim.count} {what}, and the round comes to {comes_to}"
            help_ = "look for a misprint in the row or in the count; the program keeps to the row"
            findings.append(Finding("count-disagrees", message, help_, claim.span, round_.number))
    return findings


def how_many(fabric: Fabric, kind: Kind, chains_count: bool = False) -> int:
    """How many of a kind a row has: spaces, groups, blocks, picots, stitches of a kind or all.

    Picots, chains and stitches are counted as they were worked, also under an arch.
    """
    if kind.name in (*STITCHES, ST.name, CHAIN, PICOT):
        fabric = replace(fabric, covered=frozenset())
    return len(SiteFinder(fabric, chains_count and kind == ST).sites(Whole(kind)))


def check_multiple(claim: Multiple, edge: Edge, closes: bool, adjusted: bool) -> list[Finding]:
    """The heading `multiple of M plus A` against what came of the border on this edge."""
    fits = edge.places >= claim.plus and (edge.places - claim.plus) % claim.multiple == 0
    if fits == closes or adjusted:
        return []
    said = f"a multiple of {claim.multiple}" + (f" plus {claim.plus}" if claim.plus else "")
    if fits:
        message = f"the border says {said}; {edge.name} has {edge.places}, and it does not close"
    else:
        message = (
            f"the border says {said}; {edge.name} has {edge.places}, and it closes all the same"
        )
    help_ = "look for a misprint in the rows or in the heading"
    return [Finding("count-disagrees", message, help_, claim.span)]
