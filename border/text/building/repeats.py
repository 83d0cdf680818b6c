"""Repeats are built: the star that one goes back to, all before it, round a scallop below."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Span
from border.text.building.extents import Extent, build_extent
from border.text.building.lists import settled_list
from border.text.building.of_groups import group_of, times_round, written_group
from border.text.doubting.begun import (
    tell_head,
)
from border.text.doubting.doubts import tell_inside
from border.text.doubting.drifting import tell_drift
from border.text.doubting.over_again import (
    tell_last,
    tell_over_again,
    tell_shared,
    tell_shared_around,
)
from border.text.nodes import Building, Hard, Step, is_token
from border.text.steps import next_for_first
from border.text.tree import (
    Begin,
    Chains,
    End,
    Item,
    Repeat,
    Skip,
    StartChain,
)
from border.text.wording.every_time import EVERY_TIME

if TYPE_CHECKING:
    from lark import Token, Tree


class Listed(Struct):
    """A list as it is built: its steps, the star that opened it, what its end says."""

    steps: list[Step] = field(default_factory=list)
    star: Token | None = None
    hard: Hard = ""


def at_head(lists: Sequence[Listed]) -> bool:
    """Whether nothing has been worked yet."""
    openings = (End, Begin, StartChain)
    return len(lists) == 1 and all(isinstance(s.item, openings) for s in lists[0].steps)


def build_repeat(
    node: Tree[Token], lists: list[Listed], b: Building, ended: bool, ends_with: bool
) -> bool:
    """Close the star that a repeat goes back to; True where the whole text is repeated.

    `ended`: nothing more follows. `ends_with`: what does follow ends the row.
    """
    extent = build_extent(node.children[1:], b)
    if len(lists) > 1 and (not extent.from_head or _stars_all(lists)):
        star = lists.pop()
        close_star(star, lists[-1], extent, b, b.span(node))
        return False
    from_head = len(lists) == 1 and not extent.from_star
    again = any(isinstance(step.item, Repeat) for step in lists[0].steps)
    to_last = extent.to_last is not None and not again  # `5 ch, 1 dc; repeat to last 3 st, 3 dc`
    if from_head and (ends_with or to_last or (extent.counted and (ended or not again))):
        inside = not (ended or ends_with or to_last or extent.from_head)
        _repeat_from_head(node, lists[0], extent, b, inside=inside)
        return False
    if extent.from_star and _starred_again(node, lists[-1], extent, b):
        return False
    if extent.from_star or not extent.bare:
        message = "there is no star for this repeat to go back to"
        help_ = "put a * where the repeat begins, or brackets round it: (…) 3 times"
        b.tell("repeat-without-star", message, help_, b.span(node))
        return extent.bare and ended
    if not ended:
        message = "a bare repeat can only end a row or a clause"
        help_ = "put a * where the repeat begins, and write: repeat from *"
        b.tell("not-understood", message, help_, b.span(node))
    return ended


def _starred_again(node: Tree[Token], row: Listed, extent: Extent, b: Building) -> bool:
    """`*1 dc, 1 ch, repeat five times more, 5 ch, repeat from *`: both go back to the one star."""
    starred = (n for n, s in enumerate(row.steps) if isinstance(s.item, Repeat) and s.item.star)
    at = next(starred, None)
    first = row.steps[at].item if at is not None else None
    if at is None or not isinstance(first, Repeat) or first.times is None:
        return False
    if at == len(row.steps) - 1 or next(starred, None) is not None:
        return False
    inside = row.steps[at:]
    del row.steps[at:]
    inner = b.written(replace(first, star=False))
    b.tell(
        "star-assumed",
        "this is taken to go back to the star of the repeat before it, which is worked each time",
        f"write that one in brackets: *{inner}, …; repeat from *",
        b.span(node),
    )
    close_star(Listed(inside, hard=inside[0].hard), row, extent, b, b.span(node))
    return True


def _stars_all(lists: Sequence[Listed]) -> bool:
    """Whether one star is open, which the row begins with: to the beginning is to that."""
    return len(lists) == 2 and at_head(lists[:1])


def _repeat_from_head(
    node: Tree[Token], row: Listed, extent: Extent, b: Building, *, inside: bool
) -> None:
    """All that stands before, start chain and beginning left out, is worked again.

    `inside`: steps follow, so that less may be meant.
    """
    openings = (Begin, StartChain, End)
    at = next((n for n, s in enumerate(row.steps) if not isinstance(s.item, openings)), None)
    if at is None:
        raise b.misread("nothing stands before this repeat", "write its steps before it", node)
    if not b.clause:
        tell_head([step.item for step in row.steps], b)
    again = row.steps[at:]
    del row.steps[at:]
    repeat = next(b.of(c) for c in node.children if is_token(c, "REPEAT"))
    if repeat.name == "row" or inside:
        span = b.span(node)
        message = "this number of times is taken to be that of the whole row up to here"
        help_ = "put what is worked so often in brackets: (…) 3 times"
        b.tell("times-of-the-row", message, help_, span)
    again = [replace(step, item=next_for_first(step.item)) for step in again]
    star = Listed(again, hard=again[0].hard)
    close_star(star, row, extent, b, again[0].item.span.to(b.span(node)))


def close_star(star: Listed, outer: Listed, extent: Extent, b: Building, end: Span) -> None:
    """The steps behind a star become one repeat of the list that it stands in; `end`: the words
    that send back to it."""
    span = b.span(star.star).to(end) if star.star is not None else end
    steps = settled_list(star.steps, b, opening=star.star is None and not b.clause)
    items = tuple(step.item for step in steps)
    tell_inside(items, b)
    tell_drift(items, b)
    items = first_each_time(items, b)
    if extent.counted:
        tell_last(items, b)
    else:
        tell_to_the_end(items, b)
    if not items:
        if any(f.span is not None and span.start <= f.span.start < span.end for f in b.findings):
            return  # what stands there is told already
        message = "nothing stands between this star and its repeat"
        b.tell("not-understood", message, "put the star before the first step", span)
        return
    if extent.group:
        extent = _round_group(items, outer, extent, b, end)
    more = extent.counted == "MORE" or (extent.counted == "TIMES" and not b.headings.in_all)
    times = extent.times + more if extent.counted else None
    said = extent.times if extent.counted == "TIMES" else None
    item = Repeat(items, times, extent.to_last, True, said, span=span)
    outer.steps.append(Step(item, outer.hard))


def first_each_time(items: Sequence[Item], b: Building) -> tuple[Item, ...]:
    """Steps that are worked over and over: the place that they name first is the next each time."""
    return tuple(
        next_for_first(item)
        if any(t.name == EVERY_TIME for t in b.terminals_in(item.span))
        else item
        for item in items
    )


def tell_to_the_end(items: Sequence[Item], b: Building) -> None:
    """Tell what steps that are repeated to the end may mean besides."""
    tell_over_again(items, b)
    if {Chains, Skip} <= {type(item) for item in items}:
        tell_shared(items, b)  # what is missed under the chains leads to the last step
    else:
        tell_shared_around(items, b)


def _round_group(
    items: tuple[Item, ...], outer: Listed, extent: Extent, b: Building, span: Span
) -> Extent:
    """The extent with the number of times that such steps go round the scallop below."""
    group = group_of(b.below)
    times = times_round(items, [step.item for step in outer.steps], group)
    if times is None:
        message = "how often these steps go round the scallop is not said"
        help_ = 'count its stitches, and write so often: "repeat from * 8 times more"'
        b.tell("exception-in-words", message, help_, span)
        return extent
    has = written_group(group, b.terms, b.headings.overrides)
    message = f"this is taken for {times} times in all: the row below makes {has} together"
    help_ = 'if it goes otherwise, write the number: "repeat from * 8 times more"'
    b.tell("place-assumed", message, help_, span)
    return replace(extent, times=times)
