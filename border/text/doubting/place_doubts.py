"""Places whose words name too little: what they are taken for, told with the words that say it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.shaping.on_runs import FAN
from border.text.stands_below import loop_sizes, no_chains, run_inside, stand_alone, stands_in
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
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.text.vocabulary import name_of
from border.text.wording.assumed import is_shell


def tell_on_the_middle(first: Stitches, b: Building) -> None:
    """`5 dc over the 7`: on the middle ones, or two fewer by some other way?"""
    two = f"2 {name_of(first.stitch, b.terms, b.headings.overrides)}"
    b.tell(
        "perhaps-fewer",
        "these are taken to stand on the middle ones, as many missed at either end",
        f'write ", beginning on the 2nd" behind it if so, or where others are missed or worked '
        f'together: "{two} together over the next 2 st"',
        first.span,
    )


def tell_next_of(item: Stitches | Bracket, b: Building) -> None:
    """`1 sc in the 4th dc of the shell, … 1 sc in the next`: the next dc, or the next shell?"""
    if item.place is not None and item.place.targets[0].of.name in SPACES:
        _tell_next_chain(item, b)
        return
    b.tell(
        "perhaps-next-of",
        f'"the next", behind a stitch of a group, is taken as {b.written(item)}',
        'say which: "in next st" is the stitch beside it, "in next shell" the next group, '
        '"in 4th st of next shell" a stitch of that',
        item.span,
    )


def _tell_next_chain(item: Stitches | Bracket, b: Building) -> None:
    """`1 sc in the 2nd of the 5 ch, 3 ch, 1 sc in the next`: the next loop, or the next chain?"""
    b.tell(
        "perhaps-next-of",
        f'"the next", behind a chain of a loop, is taken as {b.written(item)}',
        'say which: "in next ch" is the chain beside it, "in next space" the next loop, '
        '"in 4th ch of same space" a chain of this one',
        item.span,
    )


def tell_pair(item: Stitches | Bracket, b: Building) -> None:
    """`1 sc between the 2 dc`: between any two, or inside each group of two, unless the row below
    makes them one by one?"""
    of = next((target.of.name for target in item.place.targets), "st") if item.place else "st"
    if stand_alone(b.below, of):
        return
    named = _called(of, b)
    inside = 'write "between the picots of next loop"'
    if of != "picot":
        inside = f'write "in centre of next group of 2 {named}", with as many as it has'
    b.tell(
        "place-assumed",
        f"this is taken as {b.written(item)}, so that the gap from one group to the next counts "
        "as well",
        f"if it is the gap inside each group, {inside}",
        item.span,
    )


def tell_each_pair(item: Stitches | Bracket, b: Building) -> None:
    """`3 dc between every 2 dc` over pairs of dc: in every gap, or inside each pair?"""
    place = item.place
    of = place.targets[0].of.name if place is not None and place.targets else ""
    pair = stands_in(b.below, of, ordinal=True) if b.below is not None and of in STITCHES else None
    if place is None or pair is None or pair.size != _PAIR:
        return
    inside = replace(item, place=replace(place, targets=(Centre(pair),)))
    b.tell(
        "place-assumed",
        f"this is taken as {b.written(item)}, so that the gap from one pair to the next counts as "
        "well",
        f"write {b.written(inside)} if it is the gap inside each pair",
        item.span,
    )


def tell_gap(item: Stitches | Bracket, b: Building) -> None:
    """`1 sc between the 1st and 2nd of the 12 dc`: of each twelve, which are not counted here."""
    b.tell(
        "place-assumed",
        f"this is taken as {b.written(item)}, counted on from group to group",
        "if it is that gap of each group, name the stitch before it: "
        '"in first st of next group", "in 2nd st of next group"',
        item.span,
    )


def tell_first_two(item: Stitches | Bracket, b: Building) -> None:
    """`1 sc between the 1st and 2nd dc`, where the row below makes more than two in one place."""
    of = item.place.targets[0].of if item.place is not None else ST
    made = walk(b.below.items) if b.below is not None else ()
    if any(is_shell(one) and _makes(one, of) > _PAIR for one in made if isinstance(one, Stitches)):
        tell_gap(item, b)


_PAIR = 2


def tell_in_last(item: Stitches | Bracket, b: Building) -> None:
    """`shell in shell, 1 dc in last`: the last stitch, or the last shell?"""
    b.tell(
        "place-assumed",
        f'"in last", with one stitch, is taken as {b.written(item)}',
        'say of what it is the last: "in last st", "in last space", "in last shell"',
        item.span,
    )


def tell_counted(item: Stitches | Bracket, b: Building) -> None:
    """`3 ch, 1 sc in the 2nd of next 3`, `5 dc on the 5`, `1 sc on the next`: of what?"""
    stitch = item.place is not None and set(item.place.targets) == {Whole(ST)}
    if stitch and (b.round == 1 or (no_chains(b.below) and not _inside(item, b))):
        return  # there is nothing else
    b.tell(
        "place-assumed",
        f"what this is worked on is not named: it is taken as {b.written(item)}",
        'name it to say so: "on next dc", "in next loop", "on the next 3 dc", "of next 3 ch"',
        item.span,
    )


def _inside(item: Stitches | Bracket, b: Building) -> bool:
    """Whether just so many stand among others: `5 dc on the 5` over shells of 1 sc, 5 dc, 1 sc."""
    count = item.place.count if item.place is not None else 0
    return count > 1 and b.below is not None and bool(run_inside(b.below, count))


def tell_all_round(item: Stitches, b: Building) -> None:
    """`dc all round, 2 in each space`: nothing on the stitches between?"""
    if item.place is None or item.place.targets == (Whole(ST),):
        return
    one = replace(item, count=1, place=Place(Which.EACH, (Whole(ST),)))
    b.tell(
        "place-assumed",
        f"only {b.written(item)} is taken to be worked, and nothing on what stands between",
        f"if that has one each, write ({b.written(item)}, {b.written(one)}) as they come",
        item.span,
    )


def tell_either(item: Stitches, b: Building) -> None:
    """`1 dc, in the loop, 7 tr`: does the place belong to what stands before it, or behind?"""
    b.tell(
        "perhaps-one-place",
        f"this place is taken for that of the step before it: {b.written(item)}",
        "where the stitches behind it go there, leave out the comma behind the place",
        item.span,
    )


def tell_all_of_a_row(item: Stitches, b: Building) -> None:
    """`Dc.` as a whole row: one in each, or one alone?"""
    alone = b.written(replace(item, place=None))
    b.tell(
        "place-assumed",
        f"this row is the name of a stitch and nothing else: taken as {b.written(item)}",
        f'say where it goes, as in "{b.written(item)}"; "{alone}" is one alone',
        item.span,
    )


def tell_in_one(item: Stitches, b: Building) -> None:
    """`5 dc, 3 of them in one`: which three?"""
    one = f"1 {name_of(item.stitch, b.terms, b.headings.overrides)}"
    b.tell(
        "place-assumed",
        f"that these {item.count} are the middle ones, as many beside them at either side, is not "
        "said",
        f'write the others where they belong: "{one}; {b.written(item)}, {one}"',
        item.span,
    )


def tell_of_size(item: Stitches | Bracket, b: Building) -> None:
    """`7 dc in the ch-2, ch 3, 1 sc in the next`: the next of 2, where others lie between?"""
    size = item.place.targets[0].of.size if item.place is not None else None
    sizes = loop_sizes(b.below)
    if sizes - {size} and size in sizes:
        b.tell(
            "place-assumed",
            f'"the next" is taken as {b.written(item)}, and the row below has loops of other '
            "chains as well",
            'write "in next space" if it is whichever comes next',
            item.span,
        )


def tell_on_the_centre(item: Stitches, b: Building) -> None:
    """`3 dc on the centre of the 5 ch`: all in the one chain there, or one on each of 3?"""
    place = item.place
    if place is None or not isinstance(place.targets[0], Centre) or not place.targets[0].of.size:
        return
    nth = (place.targets[0].of.size - item.count) // 2 + 1
    space = place.targets[0].of
    first = replace(item, count=1, place=replace(place, targets=(Part(nth, Kind("ch"), space),)))
    rest = Place(Which.NEXT, (Whole(Kind("ch")),), item.count - 1, each=item.count > 2)
    behind = replace(first, place=rest)
    b.tell(
        "perhaps-one-place",
        "all of these are taken to go into one place, the centre of those chains",
        f"write {b.written(first)}, {b.written(behind)} if it is one on each",
        item.span,
    )


def tell_fan(item: Stitches, b: Building) -> None:
    """`3 dc on the centre of the 5 tr, with 2 ch between each`: one on each of 3, or a fan?"""
    said = list(b.terminals)
    at = next(n for n, t in enumerate(said) if t.name == FAN and t.start >= item.span.start)
    between = next((t.number for t in said[at:] if t.type == "BETW"), 0)
    if item.place is None:
        return
    centre = replace(item.place, targets=(Centre(item.place.targets[0].of),))
    fan = replace(item, count=said[at].number, between=between, place=centre)
    b.tell(
        "perhaps-one-place",
        f"these {fan.count} are taken to go one on each of {fan.count}, this on the first of them",
        f"write {b.written(fan)} if all of them go into one place",
        item.span,
    )


def tell_so_many_spaces(item: Stitches, b: Building) -> None:
    """`7 dc under each of the 5 chain`: five spaces, or each space of five?"""
    if item.place is not None:
        count = item.place.count
        each = replace(
            item, place=Place(Which.EACH, (Whole(Kind("space", count)),)), between=0, parted=0
        )
        b.tell(
            "place-assumed",
            f"this is taken as {b.written(item)}, whatever their chains",
            f"write {b.written(each)} if it is each space of {count} chains",
            item.span,
        )


def tell_one_between(item: Stitches | Bracket, b: Building) -> None:
    """`1 dc on the sc between the loops`, `3 dc in the 3 ch in the centre of the group`: where the
    row below makes others, too, is it any?"""
    made = [] if b.below is None else list(walk(b.below.items))
    of = item.place.targets[0].of if item.place is not None else ST
    if of.stitch is not None or sum(_makes(one, of) for one in made) < 2:
        return
    b.tell(
        "place-assumed",
        f"this is taken as {b.written(item)}, whichever comes next: what else is said of where it "
        "lies is not looked at",
        f'if others come before it, miss them: "skip 1 {_called(of.name, b)}"',
        item.span,
    )


def tell_of_heap(item: Stitches | Bracket, b: Building) -> None:
    """`1 sc in each dc of the shell`: not in those dc that the row below makes by themselves?"""
    of = item.place.targets[0].of if item.place is not None else ST
    alone = _alone(b.below.items if b.below is not None else ())
    if of.stitch is None and any(_makes(one, of) for one in alone):
        b.tell(
            "place-assumed",
            f"this is taken as {b.written(item)}, and those that stand by themselves are among "
            "them",
            f'where they are not meant, miss them, "skip 1 {_called(of.name, b)}", and say in how '
            'many of the others: "in each of the next 5"',
            item.span,
        )


def tell_in_shell(item: Stitches | Bracket, b: Building) -> None:
    """`1 sc in each loop of the shell`: the shells below may have several."""
    below = walk(b.below.items) if b.below is not None else ()
    shells = [one for one in below if isinstance(one, Bracket) and is_shell(one)]
    loops = [[x.count for x in walk(one.items) if isinstance(x, Chains)] for one in shells]
    several = max(loops, key=len, default=[])
    if len(several) > 1:
        size = several[0] if len(set(several)) == 1 else 0
        each = f"each ch-{size} space" if size else "next space"
        b.tell(
            "place-assumed",
            f"a shell below has {len(several)} chain loops, and this is taken as {b.written(item)}",
            f'for each of the loops write "in {each}", or "in each of next {len(several)} spaces"',
            item.span,
        )


def tell_hole_between(item: Stitches | Bracket, b: Building) -> None:
    """`5 dc in the hole between the dc`: chains that the row below makes there may be meant."""
    below = list(walk(b.below.items)) if b.below is not None else []
    sizes = sorted({one.count for one in below if isinstance(one, Chains)})
    if sizes:
        b.tell(
            "place-assumed",
            f"this is taken as {b.written(item)}, with no chains there",
            f'write "in next ch-{sizes[0]} space" if the hole is made by chains',
            item.span,
        )


def tell_goes_on(item: Stitches, b: Building) -> None:
    """`begin in a loop, 3 dc in same loop, 1 sc in next loop; repeat`: 3 dc where the sc is?"""
    b.tell(
        "place-assumed",
        f"each time the repeat comes round this is {b.written(item)}",
        'where it goes into the place that was worked last, put a star before it: "*…, 3 dc in '
        'same place, 1 dc in next place; repeat from *"',
        item.span,
    )


def tell_loop_again(item: Stitches, b: Building) -> None:
    """`5 dc in first loop of 5 chain, 1 sc in next loop`, where `loop means st`."""
    b.tell(
        "place-assumed",
        f"this is taken as {b.written(item)}, a loop of chains as the one named before it, though "
        "a loop is a stitch by the heading",
        'write "in next st" if a stitch is meant',
        item.span,
    )


def tell_every_loop(items: Sequence[Item], b: Building) -> None:
    """`1 sc in every loop`, all of a row over small holes, with no chains made: in old books mostly
    each stitch (common practice)."""
    sizes = loop_sizes(b.below)
    match items:
        case [
            Stitches(
                count=1, parted=0, place=Place(which=Which.EACH, targets=(Whole(Kind("loop")),))
            )
        ] if sizes and max(sizes) <= _SMALL:
            b.tell(
                "place-assumed",
                f"this is taken as {b.written(items[0])}, the chain loops of the row below; in "
                "old books a loop is often any stitch",
                'a heading settles it: "loop means st"',
                items[0].span,
            )


_SMALL = 3
"""Over holes of no more chains one may work on in every stitch."""


def _alone(items: Sequence[Item]) -> Iterator[Item]:
    """The steps that make one thing by itself, in a place of its own or in none."""
    for item in items:
        if isinstance(item, Repeat):
            yield from _alone(item.items)
        elif isinstance(item, Picots | Chains) or (isinstance(item, Stitches) and item.count == 1):
            yield item


def _makes(item: Item, of: Kind) -> int:
    """How many of a kind a step makes: stitches, picots, or spaces of so many chains."""
    match item:
        case Stitches(count, stitch) if of.name in (stitch, "st"):
            return count
        case Picots(count) if of.name == "picot":
            return count
        case Chains(count) if of.name in ("space", "ch", "loop"):
            return of.size in (None, count)
    return 0


def _called(kind: str, b: Building) -> str:
    """The name of a kind in the terms of the text."""
    return name_of(kind, b.terms, b.headings.overrides) if kind in STITCHES else kind


def tell_made_here(item: Stitches, b: Building) -> None:
    """`6 chain, 5 double on it`: on the chains just made, or where the row worked last?"""
    b.tell(
        "perhaps-just-made",
        f"this is taken as {b.written(item)}, in the row below; the chains just made may be meant",
        "if so, write what it comes to on the row, as a picot, or a figure with a name of its own",
        item.span,
    )


def tell_shared_out(item: Stitches, b: Building) -> None:
    """`4 dc, 2 in the next loop, 2 in the following`: four in all, or eight?"""
    b.tell(
        "place-assumed",
        "this and what follows is taken to say where the stitches told before it go",
        "if it is worked besides, put a semicolon before it",
        item.span,
    )


def tell_once_more(item: Stitches | Bracket, b: Building) -> None:
    """`3 dc in the loop, also in the next loop, 5 ch`: 3 there, too?"""
    b.tell(
        "place-assumed",
        f"what is made here is taken to be the same as in the place before: {b.written(item)}",
        "write what is made, and its number, before the place to say so",
        item.span,
    )


def tell_beside(item: Stitches, b: Building) -> None:
    """`3 sc (1 in st before sc, 1 in sc, 1 in st after)`: what stands there?"""
    b.tell(
        "place-assumed",
        f"what stands beside it is taken for chains: {b.written(item)}, and the first of the next",
        "where something else stands there, or other spaces come before it, name each place",
        item.span,
    )


def tell_behind(item: Stitches | Bracket, b: Building) -> None:
    """`1 dc behind each petal`, `into the back of the dc`: in which stitch is that?"""
    b.tell(
        "place-assumed",
        f"what goes in at the back is counted as {b.written(item)}",
        "write that to say so; where it goes into another stitch, or between two, name the place: "
        '"in next dc"',
        item.span,
    )


def tell_besides(item: Stitches, b: Building) -> None:
    """`4 dc (1 in the sc, 2 in the loop)`: 4 and 3, since these are not 4?"""
    b.tell(
        "place-assumed",
        "what stands in this bracket is worked besides the stitches before it, since it does not "
        "come to as many",
        "if it says where those go, see which number is right, and let both come to it",
        item.span,
    )


def tell_turning_chain(item: Stitches, b: Building) -> None:
    """`1 dc in the 3 ch at the end`: the top of those that the row below began with?"""
    b.tell(
        "start-chain-assumed",
        "the chains at the end are taken for those that the row below began with: they stand for "
        "its first stitch, which is now the last",
        f"write {b.written(item)} to say so; where they are chains of that row, "
        '"in last ch-3 space", "in 3rd ch of last space"',
        item.span,
    )


def tell_head_below(items: Sequence[Item], b: Building) -> None:
    """`1 dc in the 4 ch`, `1 dc in the 3rd of 4` at the end, where the row below began with 4
    chains: in those?"""
    if b.below is None or not b.below.items:
        return
    last = next((i for i in reversed(items) if getattr(i, "place", None) is not None), None)
    while isinstance(last, Stitches) and last.place is not None and last.place.which is Which.SAME:
        items = items[: items.index(last)]  # `1 dc in the 3rd of 4, 5 ch, 1 dc in the same`
        last = next((i for i in reversed(items) if getattr(i, "place", None) is not None), None)
    match b.below.items[0], last:
        case (
            Chains(count=count) | StartChain(count=count),
            Stitches(
                1,
                place=Place(
                    Which.THE | Which.NEXT,
                    (Whole(Kind("space", size)) | Part(_, _, Kind("space" | "block", size)),),
                    1,
                ),
            ),
        ) if size == count:
            at_the_head = b.written(replace(last, place=Place(Which.LAST, (Whole(ST),))))
            b.tell(
                "place-assumed",
                f"this is taken to be worked into {size} of the row below, and not into the {size} "
                "chains that that row began with",
                f"write {at_the_head} if those are meant, which stand for a stitch that is now "
                'the last, or "in last space" where the chains beside that are meant',
                last.span,
            )


def tell_start_chain(item: Stitches, b: Building) -> None:
    """`1 sc in top of 3 ch` at a round's head: those that the round below began with?"""
    b.tell(
        "start-chain-assumed",
        "these chains are taken for those that the round below began with: they stand for its "
        "first stitch",
        f"write {b.written(item)} to say so; where they are a space of that round, "
        '"in first ch-3 space"',
        item.span,
    )


def tell_halves(items: Sequence[Item], b: Building) -> None:
    """`1 sc between the groups` over shells of 3 dc, 3 ch, 3 dc: of what is a group meant?"""
    for item in walk(items):
        if all(target.of.name != "group" for target in _targets(item)):
            continue
        if b.below is not None and any(map(_has_halves, walk(b.below.items))):
            b.tell(
                "place-assumed",
                "a group is taken for stitches with no chains among them: of what the row below "
                "puts into one place it makes two",
                'if all of that is meant, write "shell"',
                item.span,
            )
        return


def _has_halves(item: Item) -> bool:
    """Whether stitches stand on both sides of chains, all in one place."""
    if not isinstance(item, Bracket):
        return False
    several = [isinstance(one, Stitches) and one.count > 1 for one in item.items]
    chains = [n for n, one in enumerate(item.items) if isinstance(one, Chains)]
    return any(any(several[:n]) and any(several[n:]) for n in chains)


def _targets(item: Item) -> Iterator[Target]:
    match item:
        case Skip(target=target) if target is not None:
            yield target
        case Stitches(place=Place(targets=targets)) | Bracket(place=Place(targets=targets)):
            yield from targets
        case _:
            pass
