"""Readings: what the rows of a border mean, before any edge is known.

Copies are followed (`copied.py`), turning chains go to the head of
the row that they begin, chains that open a row become its start chain, and a
bare `repeat`, or a row that is its own repeat, is written as a repeat. The
floor below works rounds, never rows.
"""

from __future__ import annotations

from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.copying.changed import Changed
from border.text.copying.copied import Copies, Others, Rules, rules_of
from border.text.copying.made import Put, Stretch
from border.text.copying.variations import At
from border.text.fastening import FASTENED_BACK, unfastened
from border.text.openings import (
    split_head,
    turned_before,
    turning_chains,
    with_start_chain,
    without_turning_chain,
)
from border.text.steps import (
    alike,
    is_open,
    next_for_first,
    passes_something,
    walk,
    without_brackets,
)
from border.text.tree import (
    AsTheyCome,
    AtJoint,
    AtJoints,
    Begin,
    Border,
    Bracket,
    Claim,
    Clause,
    Copy,
    End,
    Ending,
    Item,
    Multiple,
    Repeat,
    StartChain,
    Text,
)


class Round(Struct, frozen=True):
    """One round to be worked.

    `body` is one text or clauses; every open-ended repeat stands in it as a
    `Repeat` or an `in each`. `turns`: the work is turned after it. `repeated`:
    the row as its own repeat, where it prints none and the border does not say
    what that means. `turning`: the chains made before the turn to a row of clauses,
    read once it is known which of them is worked first. `head` is where to point when
    the round as a whole is meant.
    """

    number: int
    body: Text | tuple[Clause, ...]
    rules: Rules
    turns: bool
    claims: tuple[Claim, ...]
    head: Span
    span: Span
    repeated: Text | None = None
    turning: tuple[Item, ...] = ()


class Reading(Struct, frozen=True):
    """A border as rounds in order, with the claim of its headings."""

    name: str | None
    rounds: tuple[Round, ...]
    rules: Rules
    multiple: Multiple | None = None


def read_rounds(border: Border, others: Others) -> tuple[Reading, tuple[Finding, ...]]:
    """The rounds of a border, and the faults that show before an edge is known."""
    findings: list[Finding] = []
    copies = Copies(others, findings)
    changed = Changed(border.headings, findings)
    rounds: list[Round] = []
    carried: tuple[Item, ...] = ()
    for number, row in copies.rows(border).items():
        if row.foundation:
            continue
        found = copies.resolved(border, number)
        if found is None:
            break  # what comes later would be counted on the wrong row
        body, body_rules, ends = found.body, found.rules, found.ends
        copied = isinstance(row.body, Copy)
        at = At(row.span, row.body.span if isinstance(row.body, Copy) else row.span)
        turned, body, own_chains = turned_before(body)
        if turned and rounds:
            rounds[-1] = replace(rounds[-1], turns=True)
        body, turning_chain = without_turning_chain(body, ends)
        told: list[Finding] = []
        own = {item.span for item in carried}  # what comes from the row before is told here
        carried = turning_chains(carried, own_chains, number, told)
        put = partial(changed.put, found.copies, number=number, at=at)
        aside = partial(Changed(border.headings, []).put, found.copies, number=number, at=at)
        repeated = _as_own_repeat(body, body_rules, carried, number, aside)
        body = _settled(body, body_rules, carried, number, told, put, turning_chain)
        turning = () if isinstance(body, Text) else carried
        # what a part of another row is told, is told there
        before = {(f.code, f.span, f.message) for f in findings}
        told = [f for f in told if (f.code, f.span, f.message) not in before]
        findings += [f for f in told if not copied or f.span in own]
        carried = turning_chain
        turns = any(end.what is Ending.TURN for end in ends)
        heads = (row.claims, row.head, row.span)
        rounds.append(Round(number, body, body_rules, turns, *heads, repeated, turning))
    changed.tell_unmet()
    h = border.headings
    return Reading(h.name, tuple(rounds), rules_of(border), h.multiple), tuple(findings)


def _as_repeated(text: Text, turning: tuple[Item, ...]) -> Text:
    """A text worked round and round: all of it, start chain left out, as one repeat.

    Chains made before the turn are made once, also where they stand for no stitch.
    """
    head, rest = split_head(text.items)
    if turning and rest[: len(turning)] == turning:
        own, rest = split_head(rest[len(turning) :])
        head = (*head, *turning, *own)
    if not rest:
        return text
    span = rest[0].span.to(rest[-1].span)
    again = _primitive(tuple(map(next_for_first, rest)))
    return replace(text, items=(*head, Repeat(again, None, star=True, span=span)))


# --- the row as a whole -------------------------------------------------------


def _settled(
    body: Text | tuple[Clause, ...],
    rules: Rules,
    carried: tuple[Item, ...],
    number: int,
    findings: list[Finding],
    put: Put,
    before_turn: tuple[Item, ...] = (),
) -> Text | tuple[Clause, ...]:
    if isinstance(body, Text):
        at = 1 if body.items and isinstance(body.items[0], Begin) else 0
        items = (*body.items[:at], *carried, *body.items[at:])
        repeats = _own_repeat(body, rules)
        if carried or not repeats:
            # In a row that is its own repeat, the chains that open it belong to that.
            items = with_start_chain(items, rules, number, findings)
        own = at + len(carried)
        opens = items[own:] != body.items[at:]
        head, rest = (items[:own], items[own:]) if carried else ((), items)
        (rest,) = put([Stretch(rest, opens, repeats, before_turn, carried=head)])
        text = _one_text(replace(body, items=(*head, *rest)), rules, carried)
        _faults(text.items, number, findings)
        return text
    joints = [isinstance(clause.scope, AtJoints | AtJoint) for clause in body]
    last = [before_turn if clause is body[-1] else () for clause in body]
    stretches = [
        Stretch(clause.text.items, False, clause.text.repeats, turn, joint)
        for clause, turn, joint in zip(body, last, joints, strict=True)
    ]
    clauses = []
    for clause, items, at_joint in zip(body, put(stretches), joints, strict=True):
        # A start chain that nobody has to write is no part of a clause's text.
        text = replace(clause.text, items=items)
        text = _one_text(text, replace(rules, rows_repeated=None))
        _faults(text.items, number, findings, at_joint)
        clauses.append(replace(clause, text=text))
    return tuple(clauses)


def _as_own_repeat(
    body: Text | tuple[Clause, ...],
    rules: Rules,
    carried: tuple[Item, ...],
    number: int,
    put: Put,
) -> Text | None:
    """A row that prints no repeat, read as its own, where the border does not say."""
    if not isinstance(body, Text) or rules.rows_repeated is not None or _prints_repeat(body):
        return None
    if body.repeats:
        return None
    read = _settled(body, replace(rules, rows_repeated=True), carried, number, [], put)
    return read if isinstance(read, Text) and passes_something(read.items) else None


def _one_text(text: Text, rules: Rules, turning: tuple[Item, ...] = ()) -> Text:
    """A text with its bare repeat written as one, and its repeats in their shortest form."""
    text = replace(text, items=tuple(_shortest(item) for item in text.items))
    if _own_repeat(text, rules):
        text = replace(_as_repeated(text, turning), repeats=False)
    return _without_doubled_head(text)


def _own_repeat(text: Text, rules: Rules) -> bool:
    worked_once = _prints_repeat(text) or _stays_where_begun(text)
    return text.repeats or (bool(rules.rows_repeated) and not worked_once)


def _stays_where_begun(text: Text) -> bool:
    """Whether all of a row goes into the place that it begins in, as into a ring."""
    items = [item for item in text.items if not isinstance(item, End | StartChain)]
    return bool(items) and isinstance(items[0], Begin) and not passes_something(items)


def _prints_repeat(text: Text) -> bool:
    """Whether a text says itself that it is worked again: to an end, or from a star.

    A bracket with a number is no such word: books that print no repeat at all
    still put small stretches in brackets.
    """
    return any(is_open(i) or (isinstance(i, Repeat) and i.star) for i in walk(text.items))


def _shortest(item: Item) -> Item:
    """An open-ended repeat whose text is one stretch k times over, read as that stretch."""
    if isinstance(item, Repeat | Bracket):
        item = replace(item, items=tuple(_shortest(i) for i in item.items))
    if isinstance(item, Repeat) and item.times is None:
        item = replace(item, items=_primitive(item.items))
    return item


def _primitive(items: tuple[Item, ...]) -> tuple[Item, ...]:
    while True:
        if len(items) == 1 and isinstance(only := items[0], Repeat) and only.times is not None:
            items = only.items
            continue
        n = len(items)
        for k in range(1, n // 2 + 1):
            if n % k == 0 and items == items[:k] * (n // k):
                items = items[:k]
                break
        else:
            return items


def _without_doubled_head(text: Text) -> Text:
    """A row whose steps before its repeat are the whole of that repeat is simply that repeat."""
    if not text.items or not isinstance(repeat := text.items[-1], Repeat):
        return text
    head, steps = split_head(text.items[:-1])
    whole = repeat.times is None and repeat.to_last is None and bool(steps)
    whole = whole and not any(isinstance(i, StartChain) and i.stands_for for i in head)
    if whole and _alike(steps) == _alike(repeat.items):
        return replace(text, items=(*head, repeat))
    return text


def _alike(items: tuple[Item, ...]) -> tuple[Item, ...]:
    return tuple(map(alike, without_brackets(items)))


# --- faults that need no edge -------------------------------------------------


def _faults(
    items: tuple[Item, ...], number: int, findings: list[Finding], at_joint: bool = False
) -> None:
    for arch in unfastened(items):
        message = "fewer stitches are made before this turn, in the same repeat, than it goes back"
        if arch.back < 2:
            message = "chains fastened in the last stitch made go back over none"
        findings.append(Finding("turn-inside", message, FASTENED_BACK, arch.span, number))
    for item in walk(items):
        if isinstance(item, End) and item.what is Ending.TURN:
            message = "the work is turned in the middle of a row"
            help_ = f"write the rest as a row of its own, or {FASTENED_BACK}"
            findings.append(Finding("turn-inside", message, help_, item.span, number))
        if not isinstance(item, Repeat) or item.times is not None:
            continue
        for inner in walk(item.items):
            if is_open(inner):
                findings.append(_open_inside(inner, number))
        if not passes_something(item.items, at_joint):
            message = "this repeat takes nothing, so it would go on for ever"
            help_ = "say where its stitches go, as in 1 sc in next space"
            findings.append(Finding("repeat-takes-nothing", message, help_, item.span, number))


def _open_inside(inner: Item, number: int) -> Finding:
    help_ = (
        'leave the repeat out where this is all of it; otherwise give it a number: "in each of '
        'the next 3 spaces", "3 times"'
    )
    if isinstance(inner, AsTheyCome):
        help_ = "leave the repeat round it out: it goes on to the end by itself"
    return Finding(
        "open-repeat-inside",
        "this goes on to the end, but stands inside a repeat that goes on to the end itself",
        help_,
        inner.span,
        number,
    )
