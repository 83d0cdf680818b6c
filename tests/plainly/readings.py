"""What the text of a row says before it is worked ("Working a row", "Repeats", "The text").

Copies are written out, turning chains go to the row after, a start chain is read, and a row that
is its own repeat becomes one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.tree import (
    Arch,
    AsTheyCome,
    Begin,
    Border,
    Bracket,
    Chains,
    Clause,
    Copy,
    End,
    Ending,
    Headings,
    Item,
    Picots,
    Place,
    Repeat,
    StartChain,
    Stitches,
    Text,
    Variation,
    Which,
    Worked,
)
from plainly.differences import otherwise


@dataclass(frozen=True)
class WrittenRow:
    """A row with its own text or clauses. `opening`: chains made before the turn to this row.

    `differences`: what each of the copies that lead to the text has otherwise, the nearest first.
    """

    number: int
    body: Text | tuple[Clause, ...]
    opening: tuple[Item, ...] = ()
    turned_before: bool = False
    differences: tuple[tuple[Variation, ...], ...] = ()


@dataclass(frozen=True)
class Steps:
    """The items of a text, ready to be worked. `assumed`: a bare `ch N` was read as a start."""

    items: tuple[Item, ...]
    assumed: bool = False


# --- rows, copies, turns -----------------------------------------------------------------------


def written_rows(border: Border, closed: bool) -> list[WrittenRow]:
    """Every row by number, copies written out, with what turning does to it."""
    rows = _copies_written_out(border)
    found: list[WrittenRow] = []
    opening: tuple[Item, ...] = ()
    turn = False
    for number in sorted(rows):
        body, differences = rows[number]
        # Two `turn`s between the same rows are one.
        turned = turn or (bool(found) and _turns_first(body))  # nothing is before the first
        body, own_opening = _without_chains_turned_behind(body)
        opening += own_opening if own_opening != opening else ()
        body, next_opening = _without_turning_chains(body)
        if isinstance(body, tuple):
            # Chains that open a clause are chains.
            texts = [clause.text.items for clause in body]
            for group in differences:
                texts = otherwise(texts, group)
            body = tuple(
                replace(clause, text=replace(clause.text, items=items))
                for clause, items in zip(body, texts, strict=True)
            )
        found.append(WrittenRow(number, body, opening, turned, differences))
        opening = next_opening
        turn = _turns_last(body) or _always_turns(border.headings, closed)
    return found


Otherwise = tuple[Text | tuple[Clause, ...], tuple[tuple[Variation, ...], ...]]


def _copies_written_out(border: Border) -> dict[int, Otherwise]:
    """`as round 2`: the copy has the copied text; a copy of a copy is a copy.

    What each has otherwise is put into its steps once the head of the row is read.
    """
    written = {number: (row, i) for row in border.rows for i, number in enumerate(row.numbers)}

    def body_of(number: int) -> Otherwise:
        row, i = written[number]
        if not isinstance(row.body, Copy):
            return row.body, ()
        through = row.body.rows * row.body.times
        body, differences = body_of(through[i % len(through)])
        return _with_ends(body, row.body.ends), (*differences, row.body.differences)

    return {number: body_of(number) for number in written}


def _with_ends(body: Text | tuple[Clause, ...], ends: tuple[End, ...]) -> Text | tuple[Clause, ...]:
    if isinstance(body, Text):
        return replace(body, ends=body.ends + ends)
    last = replace(body[-1], text=replace(body[-1].text, ends=body[-1].text.ends + ends))
    return (*body[:-1], last)


def _texts(body: Text | tuple[Clause, ...]) -> tuple[Text, ...]:
    return (body,) if isinstance(body, Text) else tuple(clause.text for clause in body)


def _turns_last(body: Text | tuple[Clause, ...]) -> bool:
    return any(end.what is Ending.TURN for text in _texts(body) for end in text.ends)


def _turns_first(body: Text | tuple[Clause, ...]) -> bool:
    """Whether a row has `turn` at its head, or chains and `turn`."""
    if _without_chains_turned_behind(body)[1]:
        return True
    return any(
        isinstance(item, End) and item.what is Ending.TURN
        for text in _texts(body)
        for item in text.items[:1]
    )


def _without_chains_turned_behind(
    body: Text | tuple[Clause, ...],
) -> tuple[Text | tuple[Clause, ...], tuple[Item, ...]]:
    """Chains and `turn` at the head of a row: they were made before it was turned."""
    match body:
        case Text(items=(Chains() | StartChain() as chains, End(Ending.TURN), *rest)):
            return replace(body, items=tuple(rest)), (chains,)
    return body, ()


def _always_turns(headings: Headings, closed: bool) -> bool:
    """Turning: `in rows`, the default of an open border, turns after every row."""
    return not closed and headings.worked in (None, Worked.IN_ROWS)


def _without_turning_chains(
    body: Text | tuple[Clause, ...],
) -> tuple[Text | tuple[Clause, ...], tuple[Item, ...]]:
    """Chains directly before `turn` are the start chain of the next row, and are read there."""
    text = _texts(body)[-1]
    before_turn = bool(text.ends) and text.ends[0].what is Ending.TURN and not text.repeats
    if not (before_turn and text.items and isinstance(text.items[-1], Chains | StartChain)):
        return body, ()
    shorter = replace(text, items=text.items[:-1])
    opening = (text.items[-1],)
    if isinstance(body, Text):
        return shorter, opening
    return (*body[:-1], replace(body[-1], text=shorter)), opening


# --- the text of a row -------------------------------------------------------------------------


def row_steps(row: WrittenRow, headings: Headings, own_repeat: bool) -> Steps:
    """The steps of a row that is one text. `own_repeat`: read as repeated in any case."""
    assert isinstance(row.body, Text)
    text = row.body
    once = has_repeat(text.items) or _stays_where_begun(text.items)
    repeated = headings.rows_repeated is True and not once
    again = text.repeats or repeated or own_repeat
    return _steps(text, row.opening, again, reads_bare=True, differences=row.differences)


def _stays_where_begun(items: tuple[Item, ...]) -> bool:
    """A row that works nothing but the place that it begins in."""
    steps = [item for item in items if not isinstance(item, End | StartChain)]
    return bool(steps) and isinstance(steps[0], Begin) and all(map(_stays, steps[1:]))


def _stays(item: Item) -> bool:
    match item:
        case Stitches(place=Place(which=Which.SAME | Which.SKIPPED)):
            return True
        case Bracket(place=Place(which=Which.SAME | Which.SKIPPED)):
            return True
        case Repeat():
            return all(map(_stays, item.items))
    return isinstance(item, Begin | Chains | Picots | End | StartChain)


def clause_steps(
    text: Text, opening: tuple[Item, ...], following: list[Item] | None = None
) -> Steps:
    """The steps of a clause. Bare chains that open a clause are chains, save turning chains.

    `following`: all steps of the row, among which is the one that turning chains stand for.
    """
    return _steps(text, opening, text.repeats, reads_bare=False, following=following)


def _steps(
    text: Text,
    opening: tuple[Item, ...],
    own_repeat: bool,
    reads_bare: bool,
    following: list[Item] | None = None,
    differences: tuple[tuple[Variation, ...], ...] = (),
) -> Steps:
    """Head, start chain, and the rest: the rest is one repeat where the row is its own repeat."""
    rest = list(text.items)
    head: list[Item] = []
    while rest and isinstance(rest[0], Begin | End):
        head.append(rest.pop(0))
    start = list(opening)
    # The start chain is left out of the repeat of a whole row. A bare `ch N` is the row's start
    # chain only outside its repeat.
    if rest and (
        isinstance(rest[0], StartChain)
        or (reads_bare and not own_repeat and not opening and isinstance(rest[0], Chains))
    ):
        start.append(rest.pop(0))
    assumed = False
    if start and isinstance(start[0], Chains):
        assumed = start[0].count >= 2
        start[:1] = _read_bare(start[0].count, following or [*start[1:], *rest])
    if differences:
        own = (*start[len(opening) :], *rest)
        for group in differences:
            (own,) = otherwise([own], group, own_repeat)
        kept = next((n for n, i in enumerate(own) if not isinstance(i, StartChain)), len(own))
        start[len(opening) :], rest = own[:kept], list(own[kept:])
    body: tuple[Item, ...] = tuple(rest)
    if own_repeat and body:
        body = (Repeat(body, times=None, star=True),)
    return Steps((*head, *start, *body), assumed)


def _read_bare(count: int, following: list[Item]) -> list[Item]:
    """Start chains: for the first following stitch of height 2 to N; with none, N chains."""
    if count == 1:
        return [StartChain(1, None)]
    for item in _deep(following):
        if isinstance(item, Stitches) and 2 <= STITCHES[item.stitch].height <= count:
            return [StartChain(count, item.stitch, count - STITCHES[item.stitch].height)]
    return [Chains(count)]


def _deep(items: list[Item] | tuple[Item, ...]) -> Iterator[Item]:
    for item in items:
        yield item
        if isinstance(item, Repeat | Bracket | AsTheyCome | Arch):
            yield from _deep(item.items)


# --- repeats -----------------------------------------------------------------------------------


def is_open(item: Item) -> bool:
    """An open-ended repeat: to an end, `in each X`, `in every Nth X`, or as they come."""
    if isinstance(item, AsTheyCome):
        return True
    if isinstance(item, Repeat):
        return item.times is None
    if isinstance(item, Stitches | Bracket) and item.place is not None:
        return item.place.which in (Which.EACH, Which.EVERY)
    return False


def has_repeat(items: tuple[Item, ...]) -> bool:
    """Whether a row has a repeat: a star, or an open-ended one. A bracket `N times` is none."""
    return any(
        is_open(item) or (isinstance(item, Repeat) and (item.star or has_repeat(item.items)))
        for item in items
    )


def one_stretch(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """Repeats: the same stretch k times over, written out or in a bracket, is that stretch."""
    if len(items) == 1 and isinstance(items[0], Repeat) and items[0].times is not None:
        return one_stretch(items[0].items)
    for size in range(1, len(items)):
        stretch = items[:size]
        if len(items) % size == 0 and stretch * (len(items) // size) == items:
            return one_stretch(stretch)
    return items


def flat(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """The steps one by one: counted repeats written out, words that make nothing left out."""
    found: list[Item] = []
    for item in items:
        match item:
            case Repeat(inner, int(times)):
                found += flat(inner) * times
            case End() | Begin() | StartChain(stands_for=None):
                pass
            case StartChain(_, str(stitch), then, place):
                # A start chain counts as the stitch that it stands for.
                found.append(Stitches(1, stitch, place))
                if then:
                    found.append(Chains(then))
            case Bracket(items=(StartChain(), *_)):
                found.append(replace(item, items=_run_together(flat(item.items))))
            case _:
                found.append(item)
    return tuple(found)


def _run_together(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """The stitch of a start chain with those behind it: `ch 3 as dc, 2 dc` makes 3 dc."""
    match items:
        case (Stitches(1, stitch, None), Stitches(more, again, None) as next_, *rest):
            if stitch == again:
                return (replace(next_, count=more + 1), *rest)
    return items


def same_steps(one: tuple[Item, ...], other: tuple[Item, ...]) -> bool:
    """Meeting the start: `first` and `next` alike."""
    return tuple(map(_with_next, one)) == tuple(map(_with_next, other))


def _with_next(item: Item) -> Item:
    match item:
        case Stitches(place=Place(which=Which.FIRST | Which.THE) as place):
            return replace(item, place=replace(place, which=Which.NEXT))
        case Bracket(place=Place(which=Which.FIRST | Which.THE) as place):
            return replace(item, place=replace(place, which=Which.NEXT))
        case _:
            return item


def simply_its_repeat(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """Small rulings: steps before a repeat that are the whole of it are simply that repeat.

    As for meeting the start: a repeat to the end, with nothing written behind it.
    """
    if not items or not isinstance(items[-1], Repeat):
        return items
    repeat = items[-1]
    opening = tuple(item for item in items[:-1] if isinstance(item, Begin | End | StartChain))
    head = tuple(item for item in items[:-1] if item not in opening)
    if (
        repeat.times is not None
        or repeat.to_last
        or any(isinstance(item, StartChain) and item.stands_for for item in opening)
    ):
        return items
    if same_steps(flat(head), flat(one_stretch(repeat.items))):
        return (*opening, repeat)
    return items
