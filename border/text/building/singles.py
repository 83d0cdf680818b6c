"""Single steps are built: chains, start chains, stitches, picots, skips, beginnings."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.building.chains_between import with_chains
from border.text.building.places import (
    build_place,
    build_skipped,
    build_union,
    tell_between,
)
from border.text.doubting.picot_doubts import tell_named, tell_round_closed
from border.text.doubting.place_doubts import (
    tell_all_of_a_row,
    tell_all_round,
    tell_behind,
    tell_beside,
    tell_besides,
    tell_counted,
    tell_either,
    tell_fan,
    tell_goes_on,
    tell_in_last,
    tell_in_one,
    tell_in_shell,
    tell_loop_again,
    tell_made_here,
    tell_next_of,
    tell_of_heap,
    tell_of_size,
    tell_on_the_centre,
    tell_on_the_middle,
    tell_once_more,
    tell_one_between,
    tell_shared_out,
    tell_so_many_spaces,
    tell_start_chain,
    tell_turning_chain,
)
from border.text.doubting.skips_asked import tell_skipped
from border.text.in_each import tell_single_chain, with_each
from border.text.nodes import Building, is_token, is_tree, leaves
from border.text.shaping.described import BETWEEN, IN_SHELL, OF_HEAP
from border.text.shaping.nouns import OF_SIZE
from border.text.shaping.on_runs import CENTRE, FAN
from border.text.shaping.places_first import EITHER, ONCE_MORE
from border.text.shaping.same_place import GOES_ON
from border.text.shaping.shared_out import BESIDES, SHARED
from border.text.stands_below import stands_in
from border.text.terminals import Terminal
from border.text.tree import (
    Begin,
    Centre,
    Chains,
    End,
    Ending,
    Item,
    Kind,
    Picots,
    Place,
    Skip,
    StartChain,
    Stitches,
    Which,
    Whole,
)
from border.text.wording.beside import BESIDE
from border.text.wording.chains_named import LOOP_AGAIN
from border.text.wording.every_time import ALL_ROUND
from border.text.wording.first_stitches import FIRST
from border.text.wording.last_stitches import TURNING
from border.text.wording.missed import MADE
from border.text.wording.of_so_many import IN_ONE
from border.text.wording.spots import BEHIND
from border.text.wording.whole_rows import ALL_OF_A_ROW

if TYPE_CHECKING:
    from lark import Token, Tree

    from border.text.nodes import Node

_UNDER = ("under", "beneath", "round", "around", "over")


def _number(nodes: Sequence[Node], b: Building, otherwise: int = 1) -> int:
    """The number among the nodes that opens a step."""
    return next((b.of(n).number for n in nodes if is_token(n, "NUM")), otherwise)


def _chains(node: Tree[Token], b: Building, at_head: bool) -> Chains:
    chains = Chains(_number(node.children, b), span=b.span(node))
    tell_round_closed(chains, b)
    return chains


def _start_chain(node: Tree[Token], b: Building, at_head: bool) -> StartChain:
    children = node.children
    count = _number(children[:1], b)
    if is_token(children[-1], "NOTCOUNTED"):
        return StartChain(count, None, span=b.span(node))
    stitch = next(b.of(c) for c in children if is_token(c, "STITCH"))
    at = next(i for i, c in enumerate(children) if is_token(c, "AS"))
    counted = next((b.of(c) for c in children[at:] if is_token(c, "NUM", "ORD")), None)
    if counted is not None and counted.number != 1:
        help_ = f'write "ch {count} as {stitch.text}"'
        raise b.misread("chains stand for one stitch", help_, node)
    then = next((_number(c.children, b) for c in children if is_tree(c, "more")), 0)
    places = [build_place(c, b)[0] for c in children if is_tree(c, "place")]
    if len(places) > 1 or (places and (places[0].count > 1 and places[0].which is not Which.NTH)):
        raise b.misread("one stitch has one place", 'write "ch 3 as dc in next space"', node)
    place = places[0] if places else None
    if place is not None and place.which in (Which.EACH, Which.EVERY):
        raise b.misread("one stitch has one place", 'write "ch 3 as dc in next space"', node)
    over = count - STITCHES[stitch.name].height
    as_ = next(b.of(c) for c in children if is_token(c, "AS"))
    if over > 1 and not then and as_.text != "as":  # `5 chain for the 1st treble`
        named = f"ch {count} as {stitch.text}"
        b.tell(
            "start-chain-assumed",
            f"all {count} chains are taken for that stitch",
            f'write "{named} and ch {over}" if the rest stand as chains, "{named}" if not',
            b.span(node),
        )
    return StartChain(count, stitch.name, then, place, span=b.span(node))


def _picots(node: Tree[Token], b: Building, at_head: bool) -> Picots:
    ring = next(b.of(c) for c in node.children if is_token(c, "PICOT"))
    count = _number(node.children, b)
    tell_named(ring.name, ring.number or 3, b, b.span(node))
    return Picots(count, ring.number or 3, span=b.span(node))


def _skip(node: Tree[Token], b: Building, at_head: bool) -> Skip:
    span = b.span(node)
    if len(node.children) == 1:
        raise b.misread("how many to skip is not said", 'write "skip 2 st"', node)
    if is_token(node.children[1], "NUM"):
        skip = Skip(_number(node.children, b), None, span=span)
        tell_skipped(skip, b)
        return skip
    named = next(child for child in node.children if is_tree(child))
    member, first = build_skipped(named, b)
    if first and not at_head:
        one = b.written(Skip(1, member.target, span=span)) if member.count == 1 else "skip next st"
        help_ = (
            f'write "{one}"; where the chains before it stand for the first one, leave the skip out'
        )
        b.tell("not-at-the-head", '"first" stands behind other steps here', help_, span)
    skip = Skip(member.count, member.target, span=span)
    tell_skipped(skip, b)
    return skip


BUILDERS: dict[str, Callable[[Tree[Token], Building, bool], Item]] = {
    "chains": _chains,
    "start_chain": _start_chain,
    "picots": _picots,
    "skip": _skip,
}
"""Node -> its builder; the last argument says whether it stands at the head of a row."""


def build_begin(node: Tree[Token], b: Building, at_head: bool, at_end: bool) -> Begin | End:
    """`begin in next X`, `sl st to next X`: only at the head of a row.

    At the end of a text `sl st to first dc` closes the round, and is a joining.
    """
    first = next(b.of(c) for c in node.children if is_token(c, "BEGIN", "STITCH", "CLUSTER"))
    slips = first.type != "BEGIN"
    if slips and first.name != "ss":
        help_ = "stitches go in a place: 1 dc in next space; only a sl st goes to one"
        raise b.misread("only a sl st goes to a place", help_, node)
    if slips and at_end and not at_head:
        if any(
            b.of(token).type in ("CENTRE", "KIND") and b.of(token).text not in _FIRST_ST
            for token in leaves(node)
        ):
            b.tell(
                "perhaps-leads-on",
                "this closes the round on its first stitch",
                "if the next round begins there, say so at its head, as in "
                '"begin in centre of first loop"',
                b.span(node),
            )
        return End(Ending.JOIN, span=b.span(node))
    if not at_head:
        message = "a round can only begin in a place at the head of its row"
        help_ = "move it to the head of the row, or leave it out"
        if b.clause:
            help_ = "leave it out: a clause begins with the stretch that it is worked over"
        raise b.misread(message, help_, node, code="begin-inside")
    places = [c for c in node.children if is_tree(c, "place")]
    if places:
        place, _ = build_place(places[0], b)
    else:
        place = build_union([c for c in node.children if is_tree(c, "member")], b)
    one = place.which is Which.NTH or place.count == 1
    group = _group_below(place, b) if place.which is Which.CENTRE and one else None
    if group is not None:  # `slip to the centre dc`, where the row below has groups of them
        place = replace(place, which=Which.NEXT, targets=(Centre(group),))
        begin = Begin(place, span=b.span(node))
        b.tell(
            "place-assumed",
            f"of what this is the centre is not said: it is taken as {b.written(begin)}",
            'say of what: "begin in centre of next group"',
            b.span(node),
        )
        return begin
    if place.which is Which.CENTRE and one:
        help_ = 'say of what: "begin in centre of next group"'
        raise b.misread("of what this is the centre is not said", help_, node)
    if place.which not in (Which.NEXT, Which.THE, Which.FIRST, Which.NTH) or not one:
        raise b.misread("a round begins in one place", 'write "begin in next space"', node)
    return Begin(place, span=b.span(node))


def _group_below(place: Place, b: Building) -> Kind | None:
    """What the stitch of a place stands in, in the row below; None where it is in no groups."""
    match place.targets:
        case (Whole(Kind(name, None, None)),) if name in STITCHES and b.below is not None:
            return stands_in(b.below, name, ordinal=True)
        case _:
            return None


_FIRST_ST = frozenset({"st", "stitch", "sts"})
"""On one of these a round may be closed."""


def build_stitches(node: Tree[Token], b: Building, before: Item | None) -> tuple[list[Item], bool]:
    """Stitches with what belongs to them; True where they close the chains before into a picot."""
    name = next(c for c in node.children if is_token(c, "STITCH", "CLUSTER"))
    made = b.of(name)
    at = node.children.index(name)
    count = _number(node.children[:at], b)
    tail = node.children[at + 1 :]
    rings = [c for c in tail if is_tree(c, "ring")]
    if rings:
        return _closed_picot(rings[0], b, made, count, before), True
    cluster = made.number if made.type == "CLUSTER" else 0
    if made.type == "CLUSTER" and (not made.name or cluster == 0):
        raise b.misread("of what this cluster is made is not said", 'write "3-dc cluster"', node)
    stitches = _tail(Stitches(count, made.name, cluster=cluster, span=b.span(node)), tail, b)
    return [with_each(stitches, b)], False


def _tail(stitches: Stitches, tail: Sequence[Node], b: Building) -> Stitches:
    place: Place | None = None
    modifiers: list[str] = []
    chains: list[tuple[Token, bool]] = []
    together = False
    for node in tail:
        if is_tree(node, "place"):
            if place is not None:
                help_ = 'one stitch has one place; part two with "then"'
                raise b.misread("two places stand behind one stitch", help_, node)
            place, inner = build_place(node, b)
            modifiers += inner
            how = [b.of(c).name for c in node.children if is_token(c, "PREP")]
            tell_between(node, replace(stitches, place=place), b)
            for doubt in filter(_TOLD.__contains__, how):
                _TOLD[doubt](replace(stitches, place=place), b)
            if _is_under_chain(node, place, b):
                tell_single_chain(replace(stitches, place=place), b)
        elif is_token(node, "BETW"):
            chains.append((node, place is not None))
        elif is_token(node, "TOGETHER", "ALLTOGETHER"):
            together = True
        elif is_token(node, "MOD"):
            modifiers.append(b.of(node).name)
    made = replace(stitches, place=place, together=together, modifiers=tuple(modifiers))
    return with_chains(made, chains, b)


_TOLD: dict[str, Callable[[Stitches, Building], None]] = {
    "middle": tell_on_the_middle,
    TURNING: tell_turning_chain,
    FIRST: tell_start_chain,
    "nth": tell_next_of,
    OF_SIZE: tell_of_size,
    "counted": tell_counted,
    ALL_ROUND: tell_all_round,
    EITHER: tell_either,
    ALL_OF_A_ROW: tell_all_of_a_row,
    IN_ONE: tell_in_one,
    CENTRE: tell_on_the_centre,
    FAN: tell_fan,
    "spaces": tell_so_many_spaces,
    "last": tell_in_last,
    SHARED: tell_shared_out,
    BEHIND: tell_behind,
    BESIDE: tell_beside,
    BESIDES: tell_besides,
    ONCE_MORE: tell_once_more,
    BETWEEN: tell_one_between,
    OF_HEAP: tell_of_heap,
    GOES_ON: tell_goes_on,
    LOOP_AGAIN: tell_loop_again,
    IN_SHELL: tell_in_shell,
    MADE: tell_made_here,
}
"""What is told of a place, by the name that its first word was given on the way."""


def _is_under_chain(node: Tree[Token], place: Place, b: Building) -> bool:
    """`under each chain`, `round the next chain`: a single one, or the loop of chains?

    What is named without either word, `in the chain`, is asked with the place itself.
    """
    prep = next((b.of(c).text for c in node.children if is_token(c, "PREP")), "")
    single = place.targets == (Whole(Kind("ch")),) and place.count == 1
    return single and place.which is not Which.THE and prep in _UNDER


def _closed_picot(
    ring: Tree[Token], b: Building, made: Terminal, count: int, before: Item | None
) -> list[Item]:
    """`ch 4, 1 sc in the first of the 4 ch`, `… in 4th ch from hook`: a picot."""
    order = next(b.of(c).number for c in ring.children if is_token(c, "ORD"))
    of = next((b.of(c).number for c in ring.children if is_token(c, "NUM")), None)
    size = order if of is None else of if order == 1 else 0
    sound = isinstance(before, Chains) and count == 1 and made.name in ("sc", "ss")
    if not sound or not isinstance(before, Chains) or not 0 < size <= before.count:
        help_ = 'a picot is written "ch 4, 1 sc in the first of the 4 ch", or "picot of 4"'
        if not isinstance(before, Chains):
            help_ = (
                "chains of the foundation that are passed over from the hook are the start chain: "
                f'write "ch 3 as dc, 1 dc in next st"; {help_}'
            )
        raise b.misread("this closes no ring of chains", help_, ring)
    if of is not None and size != before.count:
        help_ = (
            f'write "in the first of the {before.count} ch", or "picot of {size}"; '
            f'for a stitch in the row below "in first ch of next ch-{size} space"'
        )
        raise b.misread(f"{before.count} chains stand before this, not {size}", help_, ring)
    picot = Picots(1, size, span=before.span.to(b.span(ring)))
    rest = before.count - size
    return [Chains(rest, span=before.span), picot] if rest else [picot]
