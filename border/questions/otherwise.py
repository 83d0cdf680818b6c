"""What the words of a row may mean besides: the readings in which the books differ."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from msgspec.structs import replace

from border.questions.changes import (
    Change,
    Items,
    Otherwise,
    changed,
    changed_beside,
    rounds_with,
    steps_of,
)
from border.questions.ends import ends
from border.stitches import STITCHES
from border.text.readings import Round
from border.text.steps import walk
from border.text.tree import (
    SPACES,
    ST,
    Bracket,
    Centre,
    Chains,
    Item,
    Kind,
    Part,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Text,
    Which,
    Whole,
)
from border.text.written import write_item, write_text
from border.text.written_places import write_ordinal


def otherwise(round_: Round) -> Iterator[Otherwise]:
    """The other readings of a round, the likelier first."""
    for readings in (
        _counted,
        ends,
        _chains,
        _start_chain,
        _counted_on,
        _in_space,
        _of_chains,
        _loops,
        _centres,
    ):
        yield from readings(round_)


def _steps(
    round_: Round,
    change: Callable[[Item], Iterable[Items]],
    if_: Callable[[Change], str],
    code: str = "perhaps-read-so",
) -> Iterator[Otherwise]:
    for other, one in rounds_with(round_, lambda items: changed(items, change)):
        terms = round_.rules.terms
        edit = ", ".join(write_item(item, terms) for item in one.new)
        yield Otherwise(code, if_(one), f"write {edit}", one.old.span, other)


def _counted(round_: Round) -> Iterator[Otherwise]:
    """`repeat from * 5 times`: 5 more, or 5 in all."""

    def change(item: Item) -> Iterator[Items]:
        if isinstance(item, Repeat) and item.said and item.times is not None and item.said > 1:
            more = item.times == item.said + 1
            yield (replace(item, times=item.said if more else item.said + 1),)

    def if_(one: Change) -> str:
        assert isinstance(one.old, Repeat) and isinstance(one.new[0], Repeat)
        meant = "in all" if one.new[0].times == one.old.said else "more"
        return f'"{one.old.said} times" means {one.old.said} {meant}'

    for other in _steps(round_, change, if_):
        meant = "in all" if other.if_.endswith("all") else "more"
        yield replace(
            other, edit=f'write "{meant}" behind the number, or a heading "repeats: {meant}"'
        )


def _chains(round_: Round) -> Iterator[Otherwise]:
    """Whether chains count as stitches, where the border says so."""
    counts = round_.rules.chains_count
    if counts is None:
        return
    rules = replace(round_.rules, chains_count=not counts)
    if_ = "chains do not count as stitches in it" if counts else "chains count as stitches in it"
    edit = f'write a heading "chains count as stitches: {"no" if counts else "yes"}"'
    yield Otherwise("perhaps-read-so", if_, edit, round_.head, replace(round_, rules=rules))


def _start_chain(round_: Round) -> Iterator[Otherwise]:
    """Chains that open a row: its first stitch, no stitch at all, or chains that stand."""
    if not isinstance(round_.body, Text):
        return
    items = round_.body.items
    at = next((n for n, item in enumerate(items) if isinstance(item, StartChain | Chains)), 0)
    if at >= len(items) or not isinstance(chains := items[at], StartChain | Chains):
        return
    if at and any(isinstance(item, Stitches | Skip | Repeat | Bracket) for item in items[:at]):
        return
    n = chains.count
    readings: list[tuple[Item, str]] = []
    if not isinstance(chains, StartChain) or chains.stands_for is not None:
        readings.append((StartChain(n, None), f"ch {n} at its head is no stitch"))
    if isinstance(chains, StartChain):
        readings.append((Repeat((Chains(n),), 1), f"ch {n} at its head are {n} chains that stand"))
    for stitch in _heights(items[at + 1 :], n):
        if isinstance(chains, StartChain) and chains.stands_for == stitch:
            continue
        start = StartChain(n, stitch, n - STITCHES[stitch].height)
        words = write_item(start, round_.rules.terms)
        readings.append((start, f"its head is {words}"))
    for item, if_ in readings:
        new = replace(round_.body, items=(*items[:at], item, *items[at + 1 :]))
        edit = f"write {write_item(item, round_.rules.terms)}"
        yield Otherwise("perhaps-read-so", if_, edit, chains.span, replace(round_, body=new))


def _heights(items: Items, most: int) -> list[str]:
    """The stitches of a row that so many chains are high enough for, each once."""
    names = [item.stitch for item in walk(items) if isinstance(item, Stitches)]
    return [s for s in dict.fromkeys(names) if 2 <= STITCHES[s].height <= most]


def _counted_on(round_: Round) -> Iterator[Otherwise]:
    """`skip 3, 1 dc in 4th st`: the 4th may count the three that were skipped."""

    def change(items: Items, n: int) -> Iterator[Items]:
        item = items[n]
        place = item.place if isinstance(item, Stitches) else None
        passed = _passed(items[n - 1]) if n else 0
        if place is not None and place.which is Which.NTH and place.count == passed + 1 > 1:
            yield (replace(item, place=replace(place, which=Which.NEXT, count=1)),)

    def each_and_all(items: Items) -> Iterator[Change]:
        yield from changed_beside(items, change, in_brackets=False)
        nearer, times = items, 0
        while (one := next(changed_beside(nearer, change, in_brackets=False), None)) is not None:
            nearer, times = one.items, times + 1
        if times > 1:
            yield Change(nearer, items[0], nearer)

    for other, one in rounds_with(round_, each_and_all):
        counted = "counted from where the step before it began"
        if one.new is one.items:
            edit = f"write {write_text(Text(one.new), round_.rules.terms)}"
            if_ = f"every ordinal in it is {counted}"
        else:
            assert isinstance(one.old, Stitches) and one.old.place is not None
            edit = f"write {write_item(one.new[0], round_.rules.terms)}"
            if_ = f"the {write_ordinal(one.old.place.count)} is {counted}"
        yield Otherwise("perhaps-read-so", if_, edit, one.old.span, other)


def _passed(item: Item) -> int:
    match item:
        case Skip(count=count):
            return count
        case Stitches(place=None, count=count):
            return count
        case Stitches(place=Place(which=Which.NEXT | Which.FIRST, count=count)):
            return count
        case _:
            return 0


def _in_space(round_: Round) -> Iterator[Otherwise]:
    """`1 sc in next 5 ch`: one in the space of five, not five."""

    def change(item: Item) -> Iterator[Items]:
        match item:
            case Stitches(count=1, place=Place(which=Which.NEXT, count=many, each=False) as place):
                if many > 1 and place.targets == (Whole(Kind("ch")),):
                    space = replace(place, targets=(Whole(Kind("space", many)),), count=1)
                    yield (replace(item, place=space),)

    yield from _steps(round_, change, lambda one: f"it is {_one_in_space(one)}")


def _one_in_space(one: Change) -> str:
    return f"one stitch in the whole space, not one in each chain ({write_item(one.new[0], 'us')})"


def _of_chains(round_: Round) -> Iterator[Otherwise]:
    """`on the 4th of 7`, `on the centre of the 5`: of so many chains, not stitches."""

    def change(item: Item) -> Iterator[Items]:
        match item:
            case Stitches(place=Place(targets=(Part() | Centre() as target,)) as place):
                of = target.of
                if of.name != "block" or not of.size or of.stitch:
                    return
                space = replace(target, of=Kind("space", of.size))
                if isinstance(space, Part):
                    space = replace(space, unit=Kind("ch"))
                yield (replace(item, place=replace(place, targets=(space,))),)

    def if_(one: Change) -> str:
        assert isinstance(one.old, Stitches) and one.old.place is not None
        return f"{one.old.place.targets[0].of.size} are chains, not stitches"

    yield from _steps(round_, change, if_)


def _loops(round_: Round) -> Iterator[Otherwise]:
    """`miss 1 loop`, `in the 4th loop` over stitches: in the oldest books the top of any stitch."""
    loop = Whole(Kind("loop"))

    def on_stitches(items: Items) -> Items:
        return tuple(map(on_stitch, items))

    def on_stitch(item: Item) -> Item:
        if isinstance(item, Skip) and item.target == loop:
            return replace(item, target=Whole(ST))
        if isinstance(item, Stitches | Bracket) and item.place is not None:
            targets = tuple(Whole(ST) if t == loop else t for t in item.place.targets)
            return replace(item, place=replace(item.place, targets=targets))
        return replace(item, items=on_stitches(item.items)) if isinstance(item, Repeat) else item

    def names_loop(item: Item) -> bool:
        match item:
            case Skip(target=target):
                return target == loop
            case Stitches(place=Place(targets=targets)) | Bracket(place=Place(targets=targets)):
                return targets == (loop,)
        return False

    def is_counted(item: Item) -> bool:
        match item:
            case Skip() | Stitches(count=1, place=Place(Which.EACH)):
                return True
        return False

    named = list(filter(names_loop, walk(steps_of(round_))))
    if not named:
        return
    counted = next(filter(is_counted, named), None)
    if_nothing = counted is None  # over a row of loops these are what they are called
    counted = counted or named[0]
    if_ = "a loop is the top of any stitch, as in the oldest books"
    edit = 'write a heading "loop means st"'
    for other, _ in rounds_with(round_, lambda items: [Change(on_stitches(items), counted, ())]):
        yield Otherwise("perhaps-read-so", if_, edit, counted.span, other, if_nothing=if_nothing)


def _centres(round_: Round) -> Iterator[Otherwise]:
    """`miss 3` between stitches in chain loops may only say how far it is from one to the next."""
    steps = list(walk(steps_of(round_)))
    worked = [i.place for i in steps if isinstance(i, Stitches | Bracket)]
    spaces = [p for p in worked if p is not None and all(t.of.name in SPACES for t in p.targets)]
    bare = [
        i for i in walk(steps_of(round_)) if isinstance(i, Skip) and i.target in (None, Whole(ST))
    ]
    if not bare or len(spaces) != len(worked):
        return

    def without(items: Items) -> Items:
        kept: list[Item] = []
        for item in items:
            if isinstance(item, Skip) and item.target in (None, Whole(ST)):
                continue
            kept.append(
                replace(item, items=without(item.items)) if isinstance(item, Repeat) else item
            )
        return tuple(kept)

    skip = write_item(bare[0], round_.rules.terms)
    if_ = f"{skip} only says how far it is from one space to the next"
    for other, _ in rounds_with(round_, lambda items: [Change(without(items), bare[0], ())]):
        yield Otherwise("perhaps-read-so", if_, f"leave out {skip}", bare[0].span, other)
