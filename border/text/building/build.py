"""The parse of a text becomes the tree: lists with their repeats, brackets and marks.

Stars and repeats come flat from the grammar and are folded here. A step that
makes no sense is told and left out; the rest of the text is built without it.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Span
from border.stitches import STITCHES
from border.text.building.brackets import build_bracket, in_place
from border.text.building.extents import Extent, build_extent
from border.text.building.lists import settled_list
from border.text.building.of_groups import group_of, times_round, written_group
from border.text.building.places import build_union
from border.text.building.singles import BUILDERS, build_begin, build_stitches
from border.text.building.turned_back import build_arch, fill_arch
from border.text.coming import gather_parts
from border.text.doubting.begun import (
    tell_begun_there,
    tell_chains_meet,
    tell_head,
    tell_last_first,
    tell_same_as_begun,
)
from border.text.doubting.doubts import tell_inside
from border.text.doubting.drifting import tell_drift
from border.text.doubting.leading_slips import check_leading
from border.text.doubting.lists_asked import same_backwards
from border.text.doubting.named_twice import tell_named_twice
from border.text.doubting.number_unsaid import tell_number_unsaid
from border.text.doubting.over_again import (
    tell_bracket,
    tell_centre_of_all,
    tell_chains_besides,
    tell_chains_last,
    tell_instead,
    tell_last,
    tell_last_again,
    tell_last_time,
    tell_over_again,
    tell_shared,
    tell_shared_around,
    tell_to_end,
    tell_without_before,
)
from border.text.doubting.place_doubts import tell_every_loop, tell_halves, tell_head_below
from border.text.nodes import Building, Hard, Misread, Step, is_token, is_tree, leaves
from border.text.shaping.again import TO_END
from border.text.steps import next_for_first, walk
from border.text.tree import (
    Begin,
    Bracket,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Text,
    ToLast,
    Which,
    Whole,
)
from border.text.wording.every_time import EVERY_TIME
from border.text.wording.instead_of import LAST_TIME
from border.text.wording.missed import OF_EACH

if TYPE_CHECKING:
    from lark import Token, Tree

    from border.text.nodes import Node
    from border.text.terminals import Terminal


class _List(Struct):
    """A list as it is built: its steps, the star that opened it, what its end says."""

    steps: list[Step] = field(default_factory=list)
    star: Token | None = None
    hard: Hard = ""


def build_text(parse: Tree[Token], b: Building, span: Span) -> Text:
    """The tree of one text: a row's, or a clause's."""
    leave = [node for node in parse.children if is_token(node, "LEAVE")]
    b.joined = _joins_in_chain(parse.children, b)
    steps, repeats = _build_list(parse.children, b, whole=True)
    steps = settled_list(steps, b, opening=not b.clause)
    check_leading(steps, b, repeated=repeats)
    items = [step.item for step in steps]
    ends: list[End] = []
    while items and isinstance(last := items[-1], End):
        ends.insert(0, last)
        items.pop()
    items = _up_to_last(items, b)
    own = b.headings.rows_repeated and all(not isinstance(i, Repeat) for i in items)
    if repeats and len(items) > 1:
        items = [_each_in_turn(item, b) for item in items]
        if _missed_anyway(items, b):
            items, repeats = items[:1], False
    if repeats or own:
        tell_over_again(items, b)
        tell_drift(items, b)
        tell_head(items, b)
        tell_shared(items, b)
        tell_begun_there(items, b)
    tell_centre_of_all(items, b)
    tell_every_loop(items, b)
    tell_same_as_begun(items, b)
    tell_last_first(items, b)
    if any(end.what is Ending.JOIN for end in ends):
        tell_chains_meet(items, b)
    if repeats:
        tell_bracket(items, b)
        repeat = [node for node in parse.children if is_tree(node, "repeat")]
        if any(b.of(token).name == TO_END for node in repeat for token in leaves(node)):
            tell_to_end(items, b)
    if any(is_token(node, "ENDWITH") for node in parse.children):
        made = [one for one in items if not isinstance(one, End)]
        tell_instead(items, b)
        if any(is_token(n, "ENDWITH") and b.of(n).text == LAST_TIME for n in parse.children):
            tell_last_time(items, b)
        if not any(end.what is Ending.TURN for end in ends):
            tell_chains_last(made, b)
        tell_last_again(items, b)
        tell_without_before(items, b)
    else:
        tell_chains_besides([one for one in items if not isinstance(one, End)], b)
    tell_inside(items, b)
    tell_halves(items, b)
    tell_number_unsaid(items, b)
    tell_named_twice(items, b)
    if not repeats:
        tell_head_below(items, b)
    if leave and items:
        message = "what is left unworked has nothing to be worked"
        b.tell("not-understood", message, 'write "leave unworked" alone', b.span(*leave))
    if not leave and not items and not ends and not b.findings:
        message = "nothing to be worked stands here"
        b.tell("not-understood", message, 'write its steps, or "leave unworked"', span)
    # Nothing to be worked is nothing to be repeated.
    return Text(tuple(items), repeats and bool(items), tuple(ends), span=span)


def _up_to_last(items: list[Item], b: Building) -> list[Item]:
    """`*ch 2, 1 dc in next dc; repeat from *, ch 2, 1 dc in 3rd of the 5 ch`: where those stand for
    the last dc of the row below, the repeat ends before it; with nothing else behind the repeat
    they are that of its last time."""
    at = next((n for n, i in enumerate(items) if isinstance(i, Repeat) and i.star), len(items))
    match items[at:]:
        case [
            Repeat(
                items=[*steps, Stitches(1, stitch, Place(Which.NEXT, (Whole(kind),), 1))],
                times=None,
                to_last=None,
                star=True,
            ) as repeat,
            *between,
            Stitches(1, again, Place(Which.LAST, (Whole(Kind("st")),), 1)) as last,
        ] if stitch == again and kind.name == _begun_as(b):
            named = any(t.name == TURNING for t in b.terminals_in(last.span))
            if named and all(map(_over_a_space, (*steps, *between))):
                up_to = replace(repeat, to_last=ToLast(1, Whole(kind)))
                return [*items[:at], up_to, *(between or steps), last]
    return items


def _over_a_space(item: Item) -> bool:
    """Whether a step takes no stitch of the row below: chains, or what fills a space."""
    match item:
        case Chains() | Picots() | Stitches(place=Place(targets=(Whole(Kind("space" | "loop")),))):
            return True
    return False


def _begun_as(b: Building) -> str:
    """The stitch that the chains stand for with which the row below began."""
    below = [i for i in b.below.items if not isinstance(i, End)] if b.below is not None else []
    match below:
        case [StartChain(stands_for=str(stitch)), *_]:
            return stitch
        case [Chains(count), *_]:
            made = (i.stitch for i in walk(below) if isinstance(i, Stitches))
            return next((name for name in made if 2 <= STITCHES[name].height <= count), "")
    return ""


TURNING = "turning"
"""The name of a place that is the chains with which the row below began."""


def _build_list(nodes: Sequence[Node], b: Building, *, whole: bool) -> tuple[list[Step], bool]:
    """The steps of a list, and whether it ends in a bare repeat with no star.

    `whole`: the list is a whole text, which alone can be repeated so.
    """
    lists = [_List()]
    repeats = False
    for n, node in enumerate(nodes):
        top = lists[-1]
        if is_token(node, "SEP"):
            if b.of(node).name == "hard" and top.hard != "stop":
                top.hard = "then" if b.of(node).text == "then" else "stop"
            continue
        try:
            if is_token(node, "STAR"):
                lists.append(_List(star=node))
            elif is_token(node, "ENDWITH"):
                top.hard = "stop"
                continue
            elif is_tree(node, "repeat"):
                ended = whole and _only_ends(nodes[n + 1 :])
                ends_with = whole and _ends_with(nodes[n + 1 :])
                repeats = _build_repeat(node, lists, b, ended, ends_with) or repeats
            elif is_tree(node, "begin"):
                at_head = _at_head(lists) and whole and not b.clause
                at_end = whole and _only_ends(nodes[n + 1 :])
                begun = build_begin(node, b, at_head, at_end)
                top.steps.append(Step(begun, top.hard))
            elif not is_token(node, "LEAVE"):
                _add_step(node, top, b, _at_head(lists) and whole)
        except Misread as fault:
            b.findings.append(fault.finding)
        # A repeat ends a list before a place, whatever it goes back to.
        top.hard = "stop" if is_tree(node, "repeat") else ""
    while len(lists) > 1:
        star = lists.pop()
        assert star.star is not None
        if b.headings.rows_repeated and len(lists) == 1 and whole:
            _close_star(star, lists[0], Extent(), b, b.span(star.star))
            continue  # the books print the star alone
        help_ = 'end its stretch with "repeat from *", or leave the star out'
        message = "no repeat goes back to this star"
        b.tell("star-without-repeat", message, help_, b.span(star.star))
        _close_star(star, lists[-1], Extent(), b, b.span(star.star))
    return lists[0].steps, repeats


def _only_ends(nodes: Sequence[Node]) -> bool:
    return all(is_token(node, "SEP", "ENDING") for node in nodes)


def _joins_in_chain(nodes: Sequence[Node], b: Building) -> bool:
    """Whether a round ends in one of the chains at its head: `join to the 3rd of 5 ch`."""
    return any(is_token(node, "ENDING") and b.of(node).number > 1 for node in nodes)


def _ends_with(nodes: Sequence[Node]) -> bool:
    """Whether `end with` follows a repeat: what stands behind it is worked once."""
    return next((is_token(n, "ENDWITH") for n in nodes if not is_token(n, "SEP")), False)


def _at_head(lists: Sequence[_List]) -> bool:
    """Whether nothing has been worked yet."""
    openings = (End, Begin, StartChain)
    return len(lists) == 1 and all(isinstance(s.item, openings) for s in lists[0].steps)


def _add_step(node: Node, top: _List, b: Building, at_head: bool) -> None:
    hard = top.hard
    if is_token(node):
        ending = End(Ending(b.of(node).name), span=b.span(node))
        top.steps.append(Step(ending, hard))
    elif is_tree(node, "all_in"):
        _gather(node, top, b)
    elif is_tree(node, "come"):
        top.steps.append(gather_parts(top.steps, b, node.children))
    elif is_tree(node, "arch"):
        top.steps.append(Step(build_arch(node, top.steps, b), hard))
        return
    elif is_tree(node, "bracket"):
        steps, _ = _build_list(_inside(node), b, whole=False)
        top.steps.append(Step(build_bracket(node, steps, b), hard))
    elif is_tree(node, "stitches"):
        before = top.steps[-1].item if top.steps else None
        made, closes = build_stitches(node, b, before)
        if closes:
            hard = top.steps.pop().hard
        top.steps += [Step(item, hard) for item in made]
    elif is_tree(node):
        top.steps.append(Step(BUILDERS[node.data](node, b, at_head), hard))
    fill_arch(top.steps, b)


def _inside(bracket: Tree[Token]) -> list[Node]:
    """The list between the two halves of a bracket, without a number of times at its end."""
    children = bracket.children
    close = max(n for n, child in enumerate(children) if is_token(child, "RP"))
    return [child for child in children[1:close] if not is_tree(child, "times")]


# --- repeats ----------------------------------------------------------------------


def _build_repeat(
    node: Tree[Token], lists: list[_List], b: Building, ended: bool, ends_with: bool
) -> bool:
    """Close the star that a repeat goes back to; True where the whole text is repeated.

    `ended`: nothing more follows. `ends_with`: what does follow ends the row.
    """
    extent = build_extent(node.children[1:], b)
    if len(lists) > 1 and (not extent.from_head or _stars_all(lists)):
        star = lists.pop()
        _close_star(star, lists[-1], extent, b, b.span(node))
        return False
    from_head = len(lists) == 1 and not extent.from_star
    again = any(isinstance(step.item, Repeat) for step in lists[0].steps)
    to_last = extent.to_last is not None and not again  # `5 ch, 1 dc; repeat to last 3 st, 3 dc`
    if from_head and (ends_with or to_last or (extent.counted and (ended or not again))):
        inside = not (ended or ends_with or to_last or extent.from_head)
        _repeat_from_head(node, lists[0], extent, b, inside=inside)
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


def _stars_all(lists: Sequence[_List]) -> bool:
    """Whether one star is open, which the row begins with: to the beginning is to that."""
    return len(lists) == 2 and _at_head(lists[:1])


def _repeat_from_head(
    node: Tree[Token], row: _List, extent: Extent, b: Building, *, inside: bool
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
    star = _List(again, hard=again[0].hard)
    _close_star(star, row, extent, b, again[0].item.span.to(b.span(node)))


def _close_star(star: _List, outer: _List, extent: Extent, b: Building, end: Span) -> None:
    span = b.span(star.star).to(end) if star.star is not None else end
    steps = settled_list(star.steps, b, opening=star.star is None and not b.clause)
    items = tuple(step.item for step in steps)
    tell_inside(items, b)
    tell_drift(items, b)
    items = tuple(
        next_for_first(item)
        if any(t.name == EVERY_TIME for t in b.terminals_in(item.span))
        else item
        for item in items
    )
    if extent.counted:
        tell_last(items, b)
    else:
        tell_over_again(items, b)
        if {Chains, Skip} <= {type(item) for item in items}:
            tell_shared(items, b)  # what is missed under the chains leads to the last step
        else:
            tell_shared_around(items, b)
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


def _round_group(
    items: tuple[Item, ...], outer: _List, extent: Extent, b: Building, span: Span
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


def _each_in_turn(item: Item, b: Building) -> Item:
    """`1 dc in each dc, 3 ch; repeat`: in each of those that the scallop below has; or where it
    has none, in the next each time. Both are told."""
    match item:
        case Stitches(place=Place(which=Which.EACH, targets=(target,)) as place):
            pass
        case Bracket(place=Place(which=Which.EACH, targets=(target,)) as place):
            pass
        case _:
            return item
    group = group_of(b.below)
    count = group[target.of.name] if isinstance(target, Whole) else 0
    if item.parted and not count:
        return item  # `1 sc in each ch-1 space, with ch 3 between`: how many is not said
    one = replace(item, place=replace(place, which=Which.THE), parted=0)
    message = "taken for one each time, since more is worked before the next"
    if count:
        in_next = replace(place, which=Which.NEXT, count=count, each=True)
        one = replace(item, place=in_next)
        message = f"taken for {count} each time, as many as the row below makes together"
    b.tell("place-assumed", message, f"write {b.written(one)} to say so", item.span)
    return one


def _missed_anyway(items: Sequence[Item], b: Building) -> bool:
    """`1 dc in each dc, with 5 ch between, missing the 3 ch; repeat`: whether going into each says
    all of it, since the row below makes no groups."""
    match items:
        case [Stitches(place=Place(which=Which.EACH)), Skip()]:
            return any(t.type == "SKIP" and t.name == OF_EACH for t in b.terminals)
        case _:
            return False


def _gather(node: Tree[Token], top: _List, b: Building) -> None:
    """`…, all in next X`: the list back to the last placed stitch, skip or repeat mark."""
    members = [c for c in node.children if is_tree(c, "member")]
    place = build_union(members, b, any(is_token(c, "ATONCE") for c in node.children))
    gathered: list[Step] = []
    while top.steps and _gathers(top.steps[-1].item):
        gathered.insert(0, top.steps.pop())
    turned = bool(top.steps) and all(isinstance(step.item, End) for step in top.steps)
    if turned and len(gathered) > 1 and _rises(gathered[0].item):
        top.steps.append(gathered.pop(0))  # `turn, 5 ch, 2 dc, 2 ch, 2 dc, all in the loop`
    said = next(b.of(child) for child in node.children if is_token(child, "ALLIN"))
    while said.text.startswith("both") and gathered and isinstance(gathered[0].item, Chains):
        top.steps.append(gathered.pop(0))  # both are two stitches
    if not any(isinstance(step.item, Stitches | StartChain | Repeat) for step in gathered):
        top.steps += gathered
        help_ = "write the stitches before it: 2 dc, ch 2, 2 dc, all in next space"
        raise b.misread('no stitches stand before this "all in"', help_, node)
    items = tuple(step.item for step in gathered)
    span = items[0].span.to(b.span(node))
    if any(step.hard for step in gathered[1:]):
        message = "all from the last place on is taken to go here, in spite of the stop in between"
        help_ = "put brackets round what goes there: (…) in next st"
        b.tell("perhaps-one-place", message, help_, span)
    elif (last := _runs_on(items, said, b)) is not None:
        only = b.written(replace(last, place=place, span=span))
        message = "all from the last place on is taken to go here"
        b.tell("perhaps-one-place", message, f"write {only}, if only these do", span)
    top.steps.append(Step(in_place(items, place, b, node.children, span), gathered[0].hard))


def _rises(item: Item) -> bool:
    """Whether a step at the head of a turned row is the chains that it rises by."""
    return isinstance(item, Chains) and item.count > _LOW


_LOW = 2
"""Fewer chains than for a tall stitch."""


def _runs_on(items: Sequence[Item], said: Terminal, b: Building) -> Stitches | None:
    """The several stitches right before `all in one`, which may be all that go there: `4 dc, 3 dc
    all in one stitch`; None where a comma or the look of a shell says that the list does."""
    at = next(n for n, terminal in enumerate(b.terminals) if terminal is said)
    several = isinstance(last := items[-1], Stitches) and last.count > 1
    shell = len(items) < 2 or b.terminals[at - 1].type == "SEP" or same_backwards(items)
    return last if isinstance(last, Stitches) and several and not shell else None


def _gathers(item: Item) -> bool:
    match item:
        case Chains() | Picots():
            return True
        case Stitches() | StartChain():
            return item.place is None
        case Repeat():
            return not item.star and item.times is not None and all(map(_gathers, item.items))
        case _:
            return False
