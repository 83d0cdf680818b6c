"""Places whose words name too little: what they are taken for, told with the words that say it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from border.stitches import STITCHES
from border.text.nodes import Building
from border.text.steps import walk
from border.text.tree import Bracket, Chains, Item, Place, Skip, Stitches, Target
from border.text.vocabulary import name_of


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


def tell_next_of(item: Stitches, b: Building) -> None:
    """`1 sc in the 4th dc of the shell, … 1 sc in the next`: the next dc, or the next shell?"""
    b.tell(
        "perhaps-next-of",
        f'"the next", behind a stitch of a group, is taken as {b.written(item)}',
        'say which: "in next st" is the stitch beside it, "in next shell" the next group, '
        '"in 4th st of next shell" a stitch of that',
        item.span,
    )


def tell_pair(item: Stitches, b: Building) -> None:
    """`1 sc between the 2 dc`: between any two, or inside each group of two?"""
    of = next((target.of.name for target in item.place.targets), "st") if item.place else "st"
    named = name_of(of, b.terms, b.headings.overrides) if of in STITCHES else of
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


def tell_in_last(item: Stitches, b: Building) -> None:
    """`shell in shell, 1 dc in last`: the last stitch, or the last shell?"""
    b.tell(
        "place-assumed",
        f'"in last", with one stitch, is taken as {b.written(item)}',
        'say of what it is the last: "in last st", "in last space", "in last shell"',
        item.span,
    )


def tell_counted(item: Stitches, b: Building) -> None:
    """`3 ch, 1 sc in the 2nd of next 3`, `5 dc on the 5`, `1 sc on the next`: of what?"""
    b.tell(
        "place-assumed",
        f"what this is worked on is not named: it is taken as {b.written(item)}",
        'name it to say so: "on next dc", "on the next 3 dc", "of next 3 ch"',
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
    if b.below is None or not any(map(_has_halves, walk(b.below.items))):
        return
    for item in walk(items):
        if any(target.of.name == "group" for target in _targets(item)):
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
