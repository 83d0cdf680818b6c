"""What is told of a round besides: readings that differ, names and places that are not there."""

from __future__ import annotations

from collections.abc import Sequence

from border.findings import Finding
from border.text.amounts import in_terms, kinds, some
from border.text.readings import Round
from border.text.tree import Clause, Item
from border.working.adjusting import Adjustment
from border.working.closing import tally, whereabouts
from border.working.fabric import Fabric
from border.working.unclosed import in_a_row
from border.yoke.edges import Edge
from border.yoke.names import nearest

Summary = tuple[list[str], list[int], bool]
"""A row's elements, the times of its repeats, and whether it closes."""


def summary(told: Summary, terms: str) -> str:
    """A row in a few words: `12 repeats, 36 dc, 24 ch, closes`."""
    elements, times, closes = told
    stitches, chains, picots = tally(elements)
    words = [some(n, "repeat") for n in times[:1]]
    words += [kinds(stitches, terms)] if stitches else []
    words += [f"{chains} ch"] if chains else []
    words += [some(picots, "picot")] if picots else []
    return ", ".join([*words, "closes" if closes else "does not close"])


def chains_unclear(round_: Round, yes: Summary, no: Summary) -> Finding:
    """It matters whether chains count, and is not said: both ways, to choose from."""
    terms = round_.rules.terms
    message = (
        f"round {round_.number} counts stitches over chains, and the border does not say whether "
        f"chains count: if they do, {summary(yes, terms)}; if not, {summary(no, terms)}"
    )
    help_ = 'write "chains count as stitches: yes" or "chains count as stitches: no" at the top'
    if yes == no:
        help_ += "; this round comes to the same with either"
    return Finding("chains-unclear", message, help_, round_.head, round_.number)


def chains_left_out(round_: Round, item: Item, yes: Summary, no: Summary) -> Finding:
    """`skip 3 st`, `in 4th st` over chains: stitches alone by their noun, and in many books chains
    as well."""
    terms = round_.rules.terms
    message = (
        "this counts stitches alone, and the border does not say whether chains count: so "
        f"{summary(no, terms)}; if they do, {summary(yes, terms)}"
    )
    help_ = 'write "chains count as stitches: no" or "chains count as stitches: yes" at the top'
    return Finding("chains-left-out", message, help_, item.span, round_.number)


def repeat_unclear(round_: Round, once: Summary, repeated: Summary) -> Finding:
    """A row without a repeat: both ways, to choose from."""
    terms = round_.rules.terms
    message = (
        f"round {round_.number} prints no repeat: worked once, {summary(once, terms)}; "
        f"repeated all round, {summary(repeated, terms)}"
    )
    help_ = (
        'write "repeat" at its end to go round, or "rows without a repeat: are repeated" at the '
        'top for the whole text ("rows without a repeat: once" to work such rows once)'
    )
    return Finding("repeat-unclear", message, help_, round_.head, round_.number)


def passes_more(round_: Round, fabric: Fabric, repeat: int, position: int) -> Finding:
    """A repeat of a round passes over more than the others, at a position of its fabric."""
    where = whereabouts(fabric, [position])
    message = f"repeat {repeat} of round {round_.number}, {where}, passes over more than the others"
    help_ = "see whether the edge or the row below is irregular there, and ease it in"
    return Finding("passes-more", message, help_, round_.head, round_.number)


def not_covered(round_: Round, motifs: list[str]) -> Finding:
    """Motifs that no clause works; none, where the edge has no motifs at all."""
    if not motifs:
        message = "this round is written motif by motif, but the edge has no motifs"
        help_ = "give the runs of the edge (--runs 6,6,3), or write the round as one text"
        return Finding("not-covered", message, help_, round_.head, round_.number)
    message = f"no clause of round {round_.number} covers {in_a_row(motifs)}"
    help_ = "add a clause for the rest: elsewhere: …, or elsewhere: leave unworked"
    return Finding("not-covered", message, help_, round_.head, round_.number)


def unknown_name(clause: Clause, name: str, edge: Edge, round_: Round) -> Finding:
    """A clause names what the edge and its yoke do not have."""
    from difflib import get_close_matches

    known = sorted(edge.known_names)
    near = get_close_matches(name, known)
    help_ = f"did you mean {near[0]}?" if near else f"what can be named is {in_a_row(known)}"
    message = f"nothing here is called {name}"
    return Finding("unknown-name", message, help_, clause.head, round_.number)


def no_place(adjustment: Adjustment, here: bool, names: Sequence[str]) -> Finding:
    """`here`: the edge has the part named; `names`: all that it has."""
    a = adjustment
    reason = "no repeat of the round ends where it could be made"
    if not here:
        reason = f"the edge has no {a.at}"
    message = f"the adjustment of round {a.round} at {a.at} (by {a.by}) falls nowhere: {reason}"
    help_ = "name another part of the edge, or a smaller number"
    if not here:
        help_ = nearest(a.at, names) or "name a section, a wheel, or a joint A | B of the edge"
    return Finding("adjustment-has-no-place", message, help_, a.span, a.round)


def no_round(adjustment: Adjustment, last: int) -> Finding:
    """An adjustment of a round beyond the last."""
    message = f"there is no round {adjustment.round} to adjust"
    help_ = f"the border has rounds 1 to {last}"
    return Finding("adjustment-has-no-place", message, help_, adjustment.span, adjustment.round)


def too_large(round_: Round) -> Finding:
    """A round with more stitches than are worked."""
    message = f"round {round_.number} has more stitches than can be reckoned"
    help_ = "a row may have 1 000 000 stitches and chains, a piece of work 5 000 000"
    return Finding("too-large", message, help_, round_.head, round_.number)


def no_stitches(round_: Round, missing: list[str]) -> Finding:
    """`missing`: what the round would work into, and the row below does not have."""
    message = f"round {round_.number} puts no stitch on the work"
    help_ = "say what is worked, and into what"
    if missing:
        named = (in_terms(kind, round_.rules.terms) for kind in missing)
        message += f": the row below has no {' and no '.join(named)}"
        help_ = "see what the round before makes, and name that"
        nth, one, stitch = in_terms(missing[0], round_.rules.terms).partition(" st in one ")
        number, _, of = missing[0].partition("-")
        kind, _, size = missing[0].partition(" of ")
        if one:
            help_ = (
                f'write "in {nth} {stitch}" where they are counted along the row, "in {nth} st of '
            )
            help_ += 'next group" where so many are worked into one place'
        elif missing[0] in ("space", "shell"):
            help_ += '; where it is made of stitches alone, name one of them: "1 sc in 4th st"'
        elif of.endswith(" run") or kind == "block":
            called = "run" if of else "block"
            help_ = f"stitches without a chain between are one {called}, however they are worked: "
            help_ += (
                f'if those meant are all worked into one place, write "group of {size or number}"'
            )
    return Finding("no-stitches", message, help_, round_.head, round_.number)
