"""The head of a row: turns, turning chains, and the chains that stand for its first stitch."""

from __future__ import annotations

from msgspec.structs import replace

from border.findings import Finding
from border.stitches import STITCHES
from border.text.copying.copied import Rules
from border.text.steps import walk
from border.text.tree import (
    Begin,
    Bracket,
    Chains,
    Clause,
    End,
    Ending,
    Item,
    Place,
    Skip,
    StartChain,
    Stitches,
    Text,
    Which,
    Whole,
)
from border.text.written_places import write_ordinal


def turned_before(
    body: Text | tuple[Clause, ...],
) -> tuple[bool, Text | tuple[Clause, ...], tuple[Item, ...]]:
    """A row that opens with `turn`, or with `3 ch, turn`, turns the work before it; those
    chains are made before the turn, and begin the row."""
    if not isinstance(body, Text):
        return False, body, ()
    opening = 0
    while opening < len(body.items) and isinstance(body.items[opening], End):
        opening += 1
    turned = any(isinstance(i, End) and i.what is Ending.TURN for i in body.items[:opening])
    items = body.items[opening:]
    chains = items[:1] if not turned and _turns_behind_chains(items) else ()
    return turned or bool(chains), replace(body, items=items[2 * len(chains) :]), chains


def _turns_behind_chains(items: tuple[Item, ...]) -> bool:
    match items:
        case (Chains() | StartChain(), End(Ending.TURN), *_):
            return True
    return False


def turning_chains(
    before: tuple[Item, ...], own: tuple[Item, ...], number: int, findings: list[Finding]
) -> tuple[Item, ...]:
    """The chains made before a turn, at the end of the row before and at the head of this one;
    the same ones in both are made once."""
    if own and own == before:
        message = "these chains before the turn stand at the end of the row before, too"
        help_ = "they are made once: leave them out in one of the two rows"
        findings.append(Finding("start-chain-assumed", message, help_, own[0].span, number))
        return before
    return (*before, *own)


def without_turning_chain(
    body: Text | tuple[Clause, ...], ends: tuple[End, ...]
) -> tuple[Text | tuple[Clause, ...], tuple[Item, ...]]:
    """Chains directly before `turn` are the start chain of the next row."""
    if not isinstance(body, Text):
        last, own = body[-1], sum(len(clause.text.ends) for clause in body)
        # what a copy adds stands behind the last clause
        text, chains = without_turning_chain(last.text, (*last.text.ends, *ends[own:]))
        assert isinstance(text, Text)
        return (*body[:-1], replace(last, text=text)), chains
    if body.repeats or not body.items:
        return body, ()
    last_item = body.items[-1]
    if isinstance(last_item, Chains | StartChain) and ends and ends[0].what is Ending.TURN:
        return replace(body, items=body.items[:-1]), (last_item,)
    return body, ()


def split_head(items: tuple[Item, ...]) -> tuple[tuple[Item, ...], tuple[Item, ...]]:
    """The beginning and start chain of a row, and the rest."""
    n = 0
    while n < len(items) and isinstance(items[n], Begin | StartChain | End):
        n += 1
    return items[:n], items[n:]


def with_start_chain(
    items: tuple[Item, ...], rules: Rules, number: int, findings: list[Finding]
) -> tuple[Item, ...]:
    """Bare chains that open a row, read as the start chain that they may stand for."""
    at = next((i for i, item in enumerate(items) if not isinstance(item, Begin)), len(items))
    if at < len(items) and isinstance(whole := items[at], Bracket):
        findings.extend(_perhaps_inside(whole, rules, number))
        return items
    if at == len(items) or not isinstance(chains := items[at], Chains):
        findings.extend(_missed_under(items[at:], rules, number))
        return items
    if chains.count == 1:
        return (*items[:at], StartChain(1, None, span=chains.span), *items[at + 1 :])
    for item in walk(items[at + 1 :]):
        if not isinstance(item, Stitches):
            continue
        height = STITCHES[item.stitch].height
        if 2 <= height <= chains.count:
            start = StartChain(chains.count, item.stitch, chains.count - height, span=chains.span)
            in_shell = "" if at else _shell_named_next(items[1:])
            findings.append(_start_chain_assumed(start, rules, number, in_shell))
            perhaps = _under_chains(items[at + 1], start.then, items[at + 2 :], rules, number)
            if perhaps is not None:
                findings.append(perhaps)
            return (*items[:at], start, *items[at + 1 :])
    findings.append(_chains_assumed(chains, number))
    return items


def _perhaps_inside(whole: Bracket, rules: Rules, number: int) -> list[Finding]:
    """`(ch 3, 2 dc, ch 2, 3 dc) in first st` at the head of a row: chains inside stand where they
    are written; may they be a stitch like those right behind them?"""
    match whole:
        case Bracket(
            items=(Chains(count) as chains, Stitches(stitch=stitch, place=None), *_),
            place=Place(which=Which.NEXT | Which.FIRST | Which.THE | Which.SAME, count=1) as place,
        ) if min(count, 2) <= STITCHES[stitch].height <= count and not place.each:
            from border.text.written import write_item

            inside = with_start_chain(whole.items, rules, number, [])
            counted = write_item(replace(whole, items=inside), rules.terms)
            message = f"ch {count} in this bracket stands as chains, beside its stitches"
            help_ = f"write {counted} if it stands for the first stitch of the row"
            return [Finding("perhaps-start-chain", message, help_, chains.span, number)]
    return []


def _missed_under(items: tuple[Item, ...], rules: Rules, number: int) -> list[Finding]:
    """`ch 3 as dc, skip 1`: what such chains stand for is said, not what is missed behind them."""
    match items:
        case (StartChain(stands_for=str(), then=then, place=None), Skip() as skip, *_):
            perhaps = _under_chains(skip, then, (), rules, number)
            return [perhaps] if perhaps is not None else []
    return []


def _under_chains(
    item: Item, then: int, behind: tuple[Item, ...], rules: Rules, number: int
) -> Finding | None:
    """`ch 3, skip 1, 1 dc in each`, `ch 5, 1 dc in 4th dc`: is the first, which the chains stand
    on, missed or counted with them?

    Not where as many are passed over as there are chains (`then`) behind the first stitch, and
    what is `behind` passes over some as well.
    """
    match item:
        case Skip(count=1) if not then:
            message = "the chains before it stand on the first, and one more is missed here"
            help_ = "leave this out if the one under the chains is meant"
            return Finding("perhaps-missed", message, help_, item.span, number)
        case (
            Stitches(place=Place(which=Which.NTH, count=nth) as place)
            | Bracket(place=Place(which=Which.NTH, count=nth) as place)
        ) if nth != then + 1 or not _passes(behind):
            from border.text.written import write_item

            which = Which.NEXT if nth == 2 else Which.NTH
            nearer = replace(item, place=replace(place, which=which, count=nth - 1))
            said = write_ordinal(nth)
            message = f"the chains before it stand on the first, and this is the {said} behind that"
            help_ = f"write {write_item(nearer, rules.terms)} if the first is counted with it"
            return Finding("perhaps-counted-on", message, help_, item.span, number)
    return None


def _passes(items: tuple[Item, ...]) -> bool:
    """Whether any of the steps passes over something."""
    for item in walk(items):
        place = item.place if isinstance(item, Stitches | Bracket) else None
        if isinstance(item, Skip) or (place is not None and place.which is Which.NTH):
            return True
    return False


def _chains_assumed(chains: Chains, number: int) -> Finding:
    n = chains.count
    message = f"ch {n} at the head of the round is taken as {n} chains that stand"
    help_ = f'write "(ch {n})" to say so, or "ch {n}, not counted" if they only lead up'
    return Finding("start-chain-assumed", message, help_, chains.span, number)


def _shell_named_next(items: tuple[Item, ...]) -> str:
    """The whole of several stitches that the first step behind a start chain goes into; where the
    chain stands on the first stitch of it, it goes into the one behind. Empty for other steps."""
    for item in walk(items):
        if isinstance(item, Stitches | Bracket):
            targets = item.place.targets if item.place is not None else ()
            named = [t.of.name for t in targets if isinstance(t, Whole) and t.of.name in _SEVERAL]
            return named[0] if named and len(named) == len(targets) else ""
    return ""


_SEVERAL = frozenset({"shell", "group", "block"})


def _start_chain_assumed(start: StartChain, rules: Rules, number: int, in_shell: str) -> Finding:
    from border.text.written import write_item

    taken = write_item(start, rules.terms)
    n = start.count
    passed = f"; it stands on the first stitch below, and if that is one of a {in_shell}, this"
    passed += " one is passed over"
    return Finding(
        "start-chain-assumed",
        f"ch {n} at the head of the round is taken as its first stitch: {taken}"
        f"{passed if in_shell else ''}",
        f'write "{taken}" to say so, "ch {n}, not counted" if it is no stitch, '
        f'or "(ch {n})" for {n} chains that all stand',
        start.span,
        number,
    )
