"""Why a round does not close, where, and what would mend it."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from border.findings import Finding
from border.stitches import STITCHES
from border.text.amounts import in_terms, kinds, some
from border.text.readings import Round
from border.text.tree import Item, Kind, Place, Stitches, Which, Whole
from border.text.written import write_item
from border.working.closing import Account, Left, Trouble, whereabouts
from border.working.fabric import Fabric


def to_join(item: Item) -> str:
    """What to write where `ch 2, 1 dc in first sc` closes a round in its own first stitch, not in
    one of the row below; empty for any other step."""
    match item:
        case Stitches(1, stitch, Place(Which.FIRST, (Whole(Kind(name)),), 1)) if name in STITCHES:
            height = STITCHES[stitch].height
            join = f"ch {height}, join" if height > 1 else "join"
            return f'write "{join}" for it where it closes the round in its own first stitch'
    return ""


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
        names = in_a_row([name for name, _ in told]) if part else "the row"
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
        told.append(f"its repeat is made no times{f' on {in_a_row(parts)}' if parts else ''}")
    if not told:
        short = list(dict.fromkeys(part for part, t in reasons.troubles if t.short))
        told = ["its repeat does not come out even"]
        if short:
            told = [f"it asks for more than {in_a_row(short)} has" if short[0] else "it runs short"]
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
            told.append(f"{amount} on each of {in_a_row([w.part for w in where])}")
    return told


def _ran_out(round_: Round, reasons: Reasons) -> list[str]:
    told: dict[str, list[str]] = {}
    for part, trouble in reasons.troubles:
        if not trouble.short:
            words = write_item(trouble.item, round_.rules.terms)
            left = f"only {trouble.has} {'is' if trouble.has == 1 else 'are'} left"
            left = left if trouble.has else "nothing is left"
            told.setdefault(f"{left} for {words}", []).append(part)
    return [f"{words} at {in_a_row(p)}" if p[0] else words for words, p in told.items()]


def _repeat(
    round_: Round, fabric: Fabric, accounts: dict[int, Account], reasons: Reasons
) -> tuple[list[str], str]:
    """How the repeats go that leave something over, and what would even that out."""
    stopped = [(o, o.left) for o in reasons.leftovers if o.left is not None]
    if not stopped:
        if reasons.leftovers:
            return [], "work into what is left, skip it in so many words, or add a repeat"
        joins = [words for _, trouble in reasons.troubles if (words := to_join(trouble.item))]
        otherwise = "write what is to be done where the row runs short, or change the repeat"
        return [], joins[0] if joins else otherwise
    taken: dict[str, list[str]] = {}
    ways: dict[str, list[str]] = {}
    cramped: list[str] = []
    for leftover, left in stopped:
        if not left.times:
            cramped.append(leftover.part)
            continue
        account = accounts[id(left.item)]
        takes = account.takes(fabric)
        told = "most repeats take" if account.otherwise(fabric) else "a repeat takes"
        told += f" {kinds(takes, round_.rules.terms)}"
        taken.setdefault(told, []).append(leftover.part)
        way = _remedy(leftover, sum(takes.values()), round_.rules.terms)
        ways.setdefault(way, []).append(leftover.part)
    help_ = [_eased(ways)] if ways else []
    help_ += [_cramped(cramped)] if cramped else []
    if len(stopped) > 1 or cramped:
        sentences = [_takes(told, parts if len(taken) > 1 else []) for told, parts in taken.items()]
        return sentences or ["not one repeat fits"], "; ".join(help_)
    times = stopped[0][1].times
    (told,) = taken
    fits = "and fits" if told.startswith("a ") else "and it fits"
    return [f"{told} {fits} {'once' if times == 1 else f'{times} times'}"], help_[0]


def _takes(told: str, parts: list[str]) -> str:
    on = [name for name in parts if name]
    return told + (f" on {in_a_row(on)}" if on else "")


def _eased(ways: dict[str, list[str]]) -> str:
    """The ways to even parts out, each with the parts that it is for ("" for the whole row)."""
    told = []
    for way, parts in list(ways.items())[:3]:
        each = "each of " if len(parts) > 1 else ""
        told.append(f"{way} on {each}{in_a_row(parts)}" if parts[0] else way)
    more = f"; and so on for {len(ways) - 3} more" if len(ways) > 3 else ""
    return "; ".join(told) + f"{more}, where it will not be seen"


def _cramped(parts: list[str]) -> str:
    """No adjustment helps where no repeat is made: they are made between repeats."""
    names = [name for name in parts if name]
    if not names:
        return "the row is too short for one repeat: ask less of it, or write it otherwise"
    room = f"{in_a_row(names)} {'has' if len(names) == 1 else 'have'} no room for one repeat"
    return f"{room}: write a clause for so short a part (over NAME: …), or ask less of it"


def _remedy(leftover: Leftover, takes: int, terms: str) -> str:
    """What evens a part out: to pass what is left, or to work the rest of a repeat twice."""
    what = leftover.what
    way = f"skip {in_terms(some(leftover.count, what), terms)} (by = {leftover.count})"
    short = takes - leftover.count
    if short > 0:
        way += f", or work {in_terms(some(short, what), terms)} twice (by = -{short})"
    return way


def in_a_row(names: list[str]) -> str:
    """Names in words, each once, few of many."""
    names = list(dict.fromkeys(names))
    if len(names) > 4:
        return f"{', '.join(names[:3])} and {len(names) - 3} more"
    if len(names) > 1:
        return f"{', '.join(names[:-1])} and {names[-1]}"
    return names[0] if names else ""
