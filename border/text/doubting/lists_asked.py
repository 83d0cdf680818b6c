"""What is asked of a list with a place: which of its steps go there, and which one by one."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.in_each import all_in
from border.text.nodes import Building
from border.text.steps import OPEN_PLACES
from border.text.tree import (
    SPACES,
    ST,
    Bracket,
    Chains,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)
from border.text.written_steps import write_list


def same_backwards(items: Sequence[Item]) -> bool:
    """Whether a list is the same read backwards; where picots part it, but for its numbers."""
    picots = any(isinstance(item, Picots | Repeat) for item in items)
    said = [(*_made(i), 0 if picots else _number(i)) for i in items]
    return said == said[::-1]


def _made(item: Item) -> tuple[str, object]:
    """What a step makes, but for its number: a figure its own steps, wherever they go."""
    if isinstance(item, Repeat | Bracket):
        return "figure", item.items
    return type(item).__name__, getattr(item, "stitch", "")


def _number(item: Item) -> int:
    return item.count if isinstance(item, Stitches | Chains | Picots) else 0


def tell_bare(since: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    """Of a list before a place, where no heading says: `2 dc, ch 1, 2 dc in next loop`."""
    singly = [_one_in_each(item) if isinstance(item, Stitches) else item for item in since]
    apart = write_list((*singly, placed), b.terms, b.headings.overrides)
    together = _together(since, placed, b)
    b.tell(
        "place-unclear",
        "the place behind this list may be for all of it, or for its last stitches only",
        f'write {together} or {apart}; the heading "bare stitches: one in each" takes each '
        'stitch without a place for the next st, "bare stitches: in the place behind" puts '
        "such groups into their place",
        since[0].span.to(placed.span),
    )


def tell_perhaps_apart(
    since: Sequence[Item], placed: Stitches | Bracket, before: Item | None, b: Building
) -> None:
    """Of `1 dc, 3 ch, 1 dc in the 4th`: both there, or the first in the next? `before`: the step
    before them."""
    match since, placed:
        case ([Stitches(1) as first, Chains()], Stitches(1)) if isinstance(before, Skip):
            pass  # `miss 2, 1 dc, 3 ch, 1 dc in the loop`
        case ([Stitches(1) as first, Chains()], Stitches(1, place=Place(which=Which.NTH))):
            pass
        case ([Stitches() as first, Picots()], Stitches(1)) if first.count > 1:
            pass  # `5 dc, 1 picot, 1 dc in the next`
        case _:
            return
    apart = (_one_in_each(first), *since[1:], placed)
    b.tell(
        "perhaps-one-place",
        "all of these are taken to go into that place",
        f"write {write_list(apart, b.terms, b.headings.overrides)} if only the last does",
        since[0].span.to(placed.span),
    )


def tell_perhaps_together(since: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    """Of a list that looks like no shell: `1 sc, 5 dc in next space`."""
    together = _together(since, placed, b)
    b.tell(
        "perhaps-one-place",
        "only the last of these is taken to go into that place, the others one in each st",
        f"write {together} if all of them go there",
        since[0].span.to(placed.span),
    )


def tell_chains_once(chains: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    """Of `2 ch, 1 dc in each dc with 2 ch between`: the chains before them once, or each time?"""
    each = _together(chains, placed, b)
    b.tell(
        "perhaps-as-they-come",
        "these chains are made once, before the first of what follows",
        f"write {each} if they are made each time"
        + (", besides those between" if placed.parted else ""),
        chains[0].span.to(placed.span),
    )


def tell_chains_each(chains: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    """Of `shell in shell, ch 2, 1 dc in each dc`: the chains each time, or once?"""
    each = _together(chains, placed, b)
    b.tell(
        "perhaps-as-they-come",
        f"this is taken as {each}",
        "where the chains are made once, put a semicolon behind them",
        chains[0].span.to(placed.span),
    )


def tell_chains(chains: Sequence[Item], placed: Stitches | Bracket, b: Building) -> None:
    """Of chains right before an open-ended `in each`: `ch 5, 1 sc in each loop`."""
    each = _together(chains, placed, b)
    once = write_list((*chains, placed), b.terms, b.headings.overrides)
    b.tell(
        "place-unclear",
        "the chains before this may be made once, or again for each place",
        f'write {each} or {once}; the heading "bare stitches: in the place behind" takes them each '
        "time",
        chains[0].span.to(placed.span),
    )


def _together(since: Sequence[Item], placed: Stitches | Bracket, b: Building) -> str:
    """The list and what is placed behind it, written as all in that place."""
    return write_list((bracketed(since, placed),), b.terms, b.headings.overrides)


def bracketed(since: Sequence[Item], placed: Stitches | Bracket) -> Bracket:
    """The list and what is placed behind it, all in that place."""
    assert placed.place is not None
    inner = (
        placed.items if isinstance(placed, Bracket) else (replace(placed, place=None, parted=0),)
    )
    return all_in(Bracket((*since, *inner), placed.place, placed.parted))


def _one_in_each(item: Stitches) -> Stitches:
    """A stitch without a place, written with the place that it takes."""
    place = Place(Which.NEXT, (Whole(ST),), item.count)
    if item.count == 1 or item.together:
        return replace(item, place=place)
    each = replace(place, each=True)
    return replace(item, count=1, place=each, between=0, parted=item.between)


def tell_begun(begun: Item | None, since: Sequence[Item], b: Building) -> bool:
    """`1 dc in loop, 3 tr, 1 dc; repeat`: are those behind it meant to go into that loop, too?

    Whether it is asked.
    """
    since = list(since)
    while since and isinstance(since[-1], Chains):
        since.pop()  # they lead on to the next place
    bare = [item for item in since if isinstance(item, Stitches)]
    if len(since) == 1 and bare and isinstance(begun, Bracket) and begun.place is not None:
        return _tell_one_more(begun, bare[0], b)
    match begun:
        case Stitches(place=Place(which=which, targets=(Whole(kind),), count=1) as place):
            listed = len(since) > 1 and (begun.count > 1 or len(bare) > 1)
            shell = listed and kind.name in STITCHES
            if not (kind.name in SPACES or shell) or which in OPEN_PLACES or not bare:
                return False
            first = replace(begun, place=None, parted=0)
            # `1 dc in the same loop, 3 dc`: with as many on both sides of chains before it
            like_it = same_backwards((first, *since)) or which is Which.SAME
            if bare[-1].stitch != begun.stitch or not like_it:
                return False
            whole = all_in(Bracket((first, *since), place))
            b.tell(
                "perhaps-one-place",
                "only the first of these is taken to go into that place, the others one in each st",
                f"write {write_list((whole,), b.terms, b.headings.overrides)} if all of them go "
                "there",
                begun.span.to(bare[-1].span),
            )
            return True
    return False


def _tell_one_more(begun: Bracket, last: Stitches, b: Building) -> bool:
    """`(1 dc, ch 1) 3 times in next st, and 1 dc`: there, too? Whether it is asked."""
    match begun.items:
        case [Repeat(items=[Stitches(count, stitch), Chains()])] if (count, stitch) == (
            last.count,
            last.stitch,
        ) and any(said.endswith("and") for said in b.said_between(begun, last)):
            whole = replace(begun, items=(*begun.items, last))
            b.tell(
                "perhaps-one-place",
                "only what stands before this is taken to go into that place",
                f"write {write_list((whole,), b.terms, b.headings.overrides)} if this goes there, "
                "too",
                begun.span.to(last.span),
            )
            return True
    return False


def tell_same(
    since: Sequence[Item], placed: Stitches | Bracket, worked: Kind | None, b: Building
) -> None:
    """`3 tr, ch 2, 3 tr in same loop`: are all of them meant to go into one loop? `worked`: what
    the step before them went into, which may be that loop."""
    assert placed.place is not None
    targets = placed.place.targets or (Whole(worked or ST),)

    def together(which: Which) -> str:
        nearby = replace(placed, place=Place(which, targets))
        return write_list((bracketed(since, nearby),), b.terms, b.headings.overrides)

    help_ = f"write {together(Which.NEXT)} if all of them go into one place"
    if worked is not None and _may_be(worked, targets[-1].of):
        help_ = (
            f"write {together(Which.SAME)} if all of them go where the step before them went, or "
            f"{together(Which.NEXT)} if into one place of their own"
        )
    b.tell(
        "perhaps-one-place",
        "only the last of these is taken to go into the same place, the others one in each st",
        help_,
        since[0].span.to(placed.span),
    )


def _may_be(worked: Kind, named: Kind) -> bool:
    """Whether what was worked into can be called so behind it: a loop, a space, a stitch."""
    spaces = worked.name in SPACES and named.name in SPACES
    return worked.name == named.name or spaces or (named == ST and worked.name in STITCHES)
