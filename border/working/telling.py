"""What is told of a round: why it does not close, where, and what would mend it."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from border.findings import Finding
from border.text.amounts import in_terms, kinds, some
from border.text.readings import Round
from border.text.tree import Clause
from border.text.written import write_item
from border.working.adjusting import Adjustment
from border.working.closing import Account, Left, Trouble, tally, whereabouts
from border.working.fabric import Fabric
from border.yoke.edges import Edge


class Leftover(Struct, frozen=True):
    """Sites left over in one part of the edge: by a repeat, or (`left` None) at its end."""

    part: str
    count: int
    positions: tuple[int, ...]
    what: str
    left: Left | None


class Reasons(Struct):
    """Why a round does not close."""

    leftovers: list[Leftover]
    troubles: list[tuple[str, Trouble]]
    unmade: list[str]


def too_short(round_: Round, troubles: Iterable[tuple[str, Trouble]]) -> list[Finding]:
    """One finding for each step that asks more than its parts of the edge have."""
    by_step: dict[int, list[tuple[str, Trouble]]] = {}
    for part, trouble in troubles:
        if trouble.short:
            by_step.setdefault(id(trouble.item), []).append((part, trouble))
    found = []
    for told in by_step.values():
        part, trouble = told[0]
        names = _names([name for name, _ in told]) if part else "the row"
        words = write_item(trouble.item, round_.rules.terms)
        message = f"{names}: {words} asks for {trouble.needs}, and there is room for {trouble.has}"
        help_ = "give so short a part a clause of its own (over NAME: …), or ask less of it"
        found.append(Finding("run-too-short", message, help_, trouble.item.span, round_.number))
    return found


def does_not_close(
    round_: Round, fabric: Fabric, accounts: dict[int, Account], reasons: Reasons, already: bool
) -> Finding:
    """The finding for a round that does not close; `already`: it is worked, and a fact."""
    told = [*_left(round_, fabric, reasons), *_ran_out(round_, reasons)]
    if reasons.unmade:
        parts = [name for name in reasons.unmade if name]
        told.append(f"its repeat is made no times{f' on {_names(parts)}' if parts else ''}")
    if not told:
        short = list(dict.fromkeys(part for part, t in reasons.troubles if t.short))
        told = ["its repeat does not come out even"]
        if short:
            told = [f"it asks for more than {_names(short)} has" if short[0] else "it runs short"]
    repeat, help_ = _repeat(round_, fabric, accounts, reasons)
    reason = "; ".join([*told, *repeat])
    if already:
        message = f"round {round_.number}, worked already, does not close: {reason}"
        help_ = "nothing need be undone: the rounds after it are counted into it as it is"
        return Finding("worked-does-not-close", message, help_, round_.head, round_.number)
    message = f"round {round_.number} does not close: {reason}"
    return Finding("row-does-not-close", message, help_, round_.head, round_.number)


def _left(round_: Round, fabric: Fabric, reasons: Reasons) -> list[str]:
    by_amount: dict[tuple[int, str], list[Leftover]] = {}
    for leftover in reasons.leftovers:
        by_amount.setdefault((leftover.count, leftover.what), []).append(leftover)
    told = []
    for (count, what), where in by_amount.items():
        amount = in_terms(some(count, what), round_.rules.terms)
        amount += f" {'is' if count == 1 else 'are'} left over"
        if not where[0].part:
            told.append(f"{amount} {whereabouts(fabric, where[0].positions)}".rstrip())
        elif len(where) == 1:
            told.append(f"{amount} on {where[0].part}")
        else:
            told.append(f"{amount} on each of {_names([w.part for w in where])}")
    return told


def _ran_out(round_: Round, reasons: Reasons) -> list[str]:
    told: dict[str, list[str]] = {}
    for part, trouble in reasons.troubles:
        if not trouble.short:
            words = write_item(trouble.item, round_.rules.terms)
            left = f"only {trouble.has} {'is' if trouble.has == 1 else 'are'} left"
            left = left if trouble.has else "none is left"
            told.setdefault(f"for {words} {left}", []).append(part)
    return [f"{words} at {_names(p)}" if p[0] else words for words, p in told.items()]


def _repeat(
    round_: Round, fabric: Fabric, accounts: dict[int, Account], reasons: Reasons
) -> tuple[list[str], str | None]:
    """How the repeat goes, and the two remedies."""
    first = next((o for o in reasons.leftovers if o.left is not None), None)
    if first is None or first.left is None:
        if reasons.leftovers:
            return [], "work into what is left, skip it in so many words, or add a repeat"
        return [], "write what is to be done where the row runs short, or change the repeat"
    account = accounts[id(first.left.item)]
    takes = account.takes(fabric)
    told = kinds(takes, round_.rules.terms)
    several = sum(o.left is not None for o in reasons.leftovers) > 1
    fits = "once" if first.left.times == 1 else f"{first.left.times} times"
    sentence = f"a repeat takes {told}" + ("" if several else f" and fits {fits}")
    if account.otherwise():
        sentence = f"most repeats take {told}" + ("" if several else f", and it fits {fits}")
    if not several and not first.left.times:
        sentence = "not one repeat fits"
    ways = [
        _remedy(o, sum(takes.values()), round_.rules.terms)
        for o in reasons.leftovers
        if o.left is not None
    ]
    ways = list(dict.fromkeys(ways))
    more = f"; and so on for {len(ways) - 3} more" if len(ways) > 3 else ""
    return [sentence], "; ".join(ways[:3]) + f"{more}, where it will not be seen"


def _remedy(leftover: Leftover, takes: int, terms: str) -> str:
    """What evens a part out: to pass what is left, or to work the rest of a repeat twice."""
    what = leftover.what
    way = f"skip {in_terms(some(leftover.count, what), terms)} (by = {leftover.count})"
    short = takes - leftover.count
    if short > 0:
        way += f", or work {in_terms(some(short, what), terms)} twice (by = -{short})"
    return f"{way} on {leftover.part}" if leftover.part else way


def _names(names: list[str]) -> str:
    names = list(dict.fromkeys(names))
    if len(names) > 4:
        return f"{', '.join(names[:3])} and {len(names) - 3} more"
    if len(names) > 1:
        return f"{', '.join(names[:-1])} and {names[-1]}"
    return names[0] if names else ""


# --- other findings -----------------------------------------------------------

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
    terms = round_.rules.terms
    message = (
        f"round {round_.number} counts stitches over chains, and the border does not say whether "
        f"chains count: if they do, {summary(yes, terms)}; if not, {summary(no, terms)}"
    )
    help_ = 'write "chains count as stitches: yes" or "chains count as stitches: no" at the top'
    return Finding("chains-unclear", message, help_, round_.head, round_.number)


def repeat_unclear(round_: Round, once: Summary, repeated: Summary) -> Finding:
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
    where = whereabouts(fabric, [position])
    message = f"repeat {repeat} of round {round_.number}, {where}, passes over more than the others"
    help_ = "see whether the edge or the row below is irregular there, and ease it in"
    return Finding("passes-more", message, help_, round_.head, round_.number)


def not_covered(round_: Round, motifs: list[str]) -> Finding:
    if not motifs:
        message = "this round is written motif by motif, but the edge has no motifs"
        help_ = "give the runs of the edge (--runs 6,6,3), or write the round as one text"
        return Finding("not-covered", message, help_, round_.head, round_.number)
    message = f"no clause of round {round_.number} covers {_names(motifs)}"
    help_ = "add a clause for the rest: elsewhere: …, or elsewhere: leave unworked"
    return Finding("not-covered", message, help_, round_.head, round_.number)


def unknown_name(clause: Clause, name: str, edge: Edge, round_: Round) -> Finding:
    from difflib import get_close_matches

    near = get_close_matches(name, sorted(edge.known_names), 1)
    help_ = f"did you mean {near[0]}?" if near else "the yoke has no motifs to name"
    if not near and edge.known_names:
        help_ = f"the yoke has {_names(sorted(edge.known_names))}"
    message = f"the yoke has nothing called {name}"
    return Finding("unknown-name", message, help_, clause.head, round_.number)


def no_place(adjustment: Adjustment, here: bool) -> Finding:
    """`here`: the edge has the part named."""
    a = adjustment
    reason = "no repeat of the round ends where it could be made"
    if not here:
        reason = f"the edge has no {a.at}"
    message = f"the adjustment of round {a.round} at {a.at} (by {a.by}) falls nowhere: {reason}"
    help_ = "name another part of the edge, or a smaller number"
    return Finding("adjustment-has-no-place", message, help_, a.span, a.round)


def no_round(adjustment: Adjustment, last: int) -> Finding:
    message = f"there is no round {adjustment.round} to adjust"
    help_ = f"the border has rounds 1 to {last}"
    return Finding("adjustment-has-no-place", message, help_, adjustment.span, adjustment.round)


def too_large(round_: Round) -> Finding:
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
    return Finding("no-stitches", message, help_, round_.head, round_.number)
