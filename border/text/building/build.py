"""The parse of a text becomes the tree: lists with their repeats, brackets and marks.

Stars and repeats come flat from the grammar and are folded here. A step that
makes no sense is told and left out; the rest of the text is built without it.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from border.findings import Span
from border.text.building.brackets import build_bracket
from border.text.building.by_the_row_below import (
    each_in_turn,
    missed_anyway,
    on_whole_runs,
    tell_across_runs,
    up_to_last,
)
from border.text.building.extents import Extent
from border.text.building.gathering import gather
from border.text.building.lists import settled_list
from border.text.building.repeats import Listed, at_head, build_repeat, close_star
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
from border.text.doubting.last_repeat import (
    tell_chains_besides,
    tell_chains_last,
    tell_instead,
    tell_last_again,
    tell_last_time,
    tell_to_end,
    tell_without_before,
)
from border.text.doubting.leading_slips import check_leading
from border.text.doubting.named_twice import tell_named_twice
from border.text.doubting.number_unsaid import tell_number_unsaid
from border.text.doubting.over_again import (
    tell_bracket,
    tell_centre_of_all,
    tell_over_again,
    tell_shared,
)
from border.text.doubting.place_doubts import tell_every_loop, tell_halves, tell_head_below
from border.text.nodes import Building, Misread, Step, is_token, is_tree, leaves
from border.text.shaping.again import TO_END
from border.text.tree import (
    End,
    Ending,
    Repeat,
    Text,
)
from border.text.wording.last_time import LAST_TIME

if TYPE_CHECKING:
    from lark import Token, Tree

    from border.text.nodes import Node


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
    items = up_to_last(items, b)
    own = b.headings.rows_repeated and all(not isinstance(i, Repeat) for i in items)
    if repeats and len(items) > 1:
        items = [each_in_turn(item, b) for item in items]
        if missed_anyway(items, b):
            items, repeats = items[:1], False
    items = on_whole_runs(items, b, repeats=bool(repeats or own))
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
    tell_across_runs(items, b, repeats=bool(repeats or own))
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


def _build_list(nodes: Sequence[Node], b: Building, *, whole: bool) -> tuple[list[Step], bool]:
    """The steps of a list, and whether it ends in a bare repeat with no star.

    `whole`: the list is a whole text, which alone can be repeated so.
    """
    lists = [Listed()]
    repeats = False
    for n, node in enumerate(nodes):
        top = lists[-1]
        if is_token(node, "SEP"):
            if b.of(node).name == "hard" and top.hard != "stop":
                top.hard = "then" if b.of(node).text == "then" else "stop"
            continue
        try:
            if is_token(node, "STAR"):
                lists.append(Listed(star=node))
            elif is_token(node, "ENDWITH"):
                top.hard = "stop"
                continue
            elif is_tree(node, "repeat"):
                ended = whole and _only_ends(nodes[n + 1 :])
                ends_with = whole and (_ends_with(nodes[n + 1 :]) or _turns(nodes[n + 1 :], b))
                repeats = build_repeat(node, lists, b, ended, ends_with) or repeats
            elif is_tree(node, "begin"):
                begins = at_head(lists) and whole and not b.clause
                at_end = whole and _only_ends(nodes[n + 1 :])
                begun = build_begin(node, b, begins, at_end)
                top.steps.append(Step(begun, top.hard))
            elif not is_token(node, "LEAVE"):
                _add_step(node, top, b, at_head(lists) and whole)
        except Misread as fault:
            b.findings.append(fault.finding)
        # A repeat ends a list before a place, whatever it goes back to.
        top.hard = "stop" if is_tree(node, "repeat") else ""
    while len(lists) > 1:
        star = lists.pop()
        assert star.star is not None
        if b.headings.rows_repeated and len(lists) == 1 and whole:
            close_star(star, lists[0], Extent(), b, b.span(star.star))
            continue  # the books print the star alone
        help_ = 'end its stretch with "repeat from *", or leave the star out'
        message = "no repeat goes back to this star"
        b.tell("star-without-repeat", message, help_, b.span(star.star))
        close_star(star, lists[-1], Extent(), b, b.span(star.star))
    return lists[0].steps, repeats


def _only_ends(nodes: Sequence[Node]) -> bool:
    return all(is_token(node, "SEP", "ENDING") for node in nodes)


def _joins_in_chain(nodes: Sequence[Node], b: Building) -> bool:
    """Whether a round ends in one of the chains at its head: `join to the 3rd of 5 ch`."""
    return any(is_token(node, "ENDING") and b.of(node).number > 1 for node in nodes)


def _ends_with(nodes: Sequence[Node]) -> bool:
    """Whether `end with` follows a repeat: what stands behind it is worked once."""
    return next((is_token(n, "ENDWITH") for n in nodes if not is_token(n, "SEP")), False)


def _turns(nodes: Sequence[Node], b: Building) -> bool:
    """Whether only the chains of a turn come: `1 dc, 5 ch; repeat to the end of the row. 3 chain,
    turn.`"""
    rest = [node for node in nodes if not is_token(node, "SEP")]
    chains = len(rest) == 2 and is_tree(rest[0], "chains")
    return chains and is_token(rest[1], "ENDING") and b.of(rest[1]).name == "turn"


def _add_step(node: Node, top: Listed, b: Building, at_head: bool) -> None:
    hard = top.hard
    if is_token(node):
        ending = End(Ending(b.of(node).name), span=b.span(node))
        top.steps.append(Step(ending, hard))
    elif is_tree(node, "all_in"):
        gather(node, top, b)
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
