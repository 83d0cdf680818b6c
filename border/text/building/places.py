"""Places are built: which of the sites is meant, and what they are."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from border.text.doubting.place_doubts import (
    tell_counted,
    tell_each_pair,
    tell_first_two,
    tell_gap,
    tell_hole_between,
    tell_pair,
)
from border.text.framing.clauses import kind_of
from border.text.nodes import Building, Misread, is_token, is_tree, leaves
from border.text.shaping.between import EACH_PAIR, FIRST_TWO, HOLE, UNSAID
from border.text.shaping.caught import BOTH
from border.text.shaping.described import ST_OF_SHELL
from border.text.steps import walk
from border.text.tree import (
    SPACES,
    ST,
    AtOnce,
    Between,
    BetweenPicots,
    Bracket,
    Centre,
    Kind,
    Part,
    Place,
    Stitches,
    Target,
    Which,
    Whole,
)
from border.text.wording.assumed import is_shell
from border.text.wording.two_places import TWO_KINDS

if TYPE_CHECKING:
    from lark import Token, Tree

    from border.text.nodes import Node

KINDS = ("KIND", "STITCH", "CH", "PICOT")
_WHICH = {"NEXT": Which.NEXT, "THE": Which.THE, "EACH": Which.EACH, "SKIPPED": Which.SKIPPED}
_NUMBERED = (Which.NEXT, Which.FIRST, Which.LAST, Which.CENTRE)
"""Which of the sites can be more than one: `next 3`, `last 2`."""


class Member(Struct, frozen=True):
    """One member of a union: which (None where not said), how many, and what."""

    which: Which | None
    count: int
    each: bool
    target: Target | None


class _Sites(Struct, frozen=True):
    """`next 3 blocks`, `2nd space`, `each of the first 2 pairs of dc`."""

    which: Which | None
    count: int | None
    each: bool
    pair: bool
    kind: Kind

    def member(self, target: Target) -> Member:
        return Member(self.which, self.count or 1, self.each, target)


def build_place(node: Tree[Token], b: Building) -> tuple[Place, tuple[str, ...]]:
    """A place and the modifiers that stand in it (`in back loop of next st`)."""
    modifiers = tuple(b.of(child).name for child in node.children if is_token(child, "MOD"))
    members = [child for child in node.children if is_tree(child, "member", "between")]
    place = build_union(members, b, any(is_token(child, "ATONCE") for child in node.children))
    return replace(place, span=b.span(node)), modifiers


def tell_between(node: Tree[Token], item: Stitches | Bracket, b: Building) -> None:
    """What is told of a step whose place, `node`, lies between two."""
    for between in node.find_data("between"):
        for c in between.children:
            if is_token(c, "BETWEEN") and b.of(c).name in _BETWEEN_TOLD:
                _BETWEEN_TOLD[b.of(c).name](item, b)


_BETWEEN_TOLD: dict[str, Callable[[Stitches | Bracket, Building], None]] = {
    FIRST_TWO: tell_first_two,
    "pair": tell_pair,
    EACH_PAIR: tell_each_pair,
    "gap": tell_gap,
    HOLE: tell_hole_between,
    UNSAID: tell_counted,
}
"""What is told of a place between two, by the name that its word was given on the way."""


def build_union(nodes: Sequence[Tree[Token]], b: Building, at_once: bool = False) -> Place:
    """The place that the members of a union name together.

    `at_once`: so many are taken up as one.
    """
    if at_once:
        return _at_once(nodes, b)
    members = [_member(node, b) for node in nodes]
    first = members[0]
    if first.which is None and first.count == 1 and not _many(nodes[0], b):
        first = replace(first, which=Which.THE)
    if first.which is None:
        thing = _last_word(nodes[0], b)
        help_ = f'say which: "in next {thing}", "in each {thing}", "in the first {thing}"'
        raise b.misread("this place does not say which", help_, nodes[0])
    for member, node in zip(members[1:], nodes[1:], strict=True):
        same = (member.which, member.count, member.each) == (first.which, first.count, first.each)
        if (member.which is not None and not same) or first.target is None:
            help_ = 'name them alike, as in "each space or centre of each block"'
            raise b.misread("the halves of this place do not go together", help_, node)
    targets = tuple(member.target for member in members if member.target is not None)
    return Place(first.which, targets, first.count, first.each, span=b.span(*nodes))


def _at_once(nodes: Sequence[Tree[Token]], b: Building) -> Place:
    """`the next 3 loops at once`, `each 2 spaces at once`."""
    words = [b.of(token) for token in leaves(nodes[0])]
    which = {"NEXT": Which.NEXT, "EACH": Which.EACH, "CENTRE": Which.CENTRE}.get(words[0].type)
    if words[0].type == "ORD" and words[0].number in (1, -1):
        which = Which.FIRST if words[0].number == 1 else Which.LAST
    several = [w.type for w in words[1:2]] == ["NUM"] and words[1].number > 1
    kind = kind_of(words[2]) if len(words) == 3 else None
    if len(nodes) > 1 or which is None or not several or kind is None:
        help_ = 'write "in the next 3 loops at once", or "in each of the next 3 loops"'
        raise b.misread("which are taken together is not said", help_, *nodes)
    if words[0].name == BOTH and b.round > 1:
        thing = words[2].text
        help_ = (
            f'write "in the next {words[1].number} {thing} at once" for neighbours, "in both '
            'threads" for the two threads of one stitch'
        )
        raise b.misread("which two are taken together is not said", help_, *nodes)
    return Place(which, (AtOnce(words[1].number, kind),), span=b.span(*nodes))


def _last_word(node: Node, b: Building) -> str:
    while is_tree(node):
        node = node.children[-1]
    return b.of(node).text if is_token(node) else ""


def _member(node: Tree[Token], b: Building) -> Member:
    if node.data != "member":
        return _BUILDERS[node.data](node.children, b)
    inner = node.children[0]
    if is_tree(inner, *_BUILDERS):
        return _member(inner, b)
    return _whole(node.children, b)


def _whole(children: Sequence[Node], b: Building) -> Member:
    sites = _sites(children, b)
    return sites.member(Whole(sites.kind))


def _same(children: Sequence[Node], b: Building) -> Member:
    if len(children) == 1 or is_token(children[1], "PLACE"):
        return Member(Which.SAME, 1, False, None)
    return _whole(children, b)


def _part(children: Sequence[Node], b: Building) -> Member:
    order, unit = children[0], children[1]
    assert is_token(order)
    kind, sites = _kind(unit, b), _sites(children[3:], b)
    is_unit = kind.name in ("st", "ch") or is_token(unit, "STITCH")
    if not is_unit or sites.pair or b.of(order).number == 0:
        help_ = 'write "first st of next block", "2nd ch of each space"'
        raise b.misread("this part of a place cannot be read", help_, *children)
    if kind == ST and sites.kind.name in SPACES and b.round > 1:
        kind = Kind("ch")  # `3rd st of the 5 chain`: there are no others in it
    return sites.member(Part(b.of(order).number, kind, sites.kind))


def _centre(children: Sequence[Node], b: Building) -> Member:
    behind = 1 + next(n for n, child in enumerate(children) if is_token(child, "OF"))
    sites = _sites(children[behind:], b)
    if sites.pair:
        raise b.misread("a pair has no centre", 'write "between next 2 dc"', *children)
    words = [b.of(token) for child in children for token in leaves(child)]
    if sites.kind == ST and words[-1].start == words[-2].start:  # no noun is said
        help_ = 'say of what: "in centre of next loop", "of next group"; or "in next st"'
        raise b.misread("of what this is the centre is not said", help_, *children)
    unit = children[behind - 2]
    if is_token(unit, "PICOT"):
        help_ = 'say which picot of the row below: "in 2nd picot", "in next picot"'
        raise b.misread("the picots of a place have no centre one here", help_, *children)
    if is_token(unit, "STITCH") and sites.kind.name in SPACES:
        name = b.of(unit).text
        help_ = (
            f'say of how many it is the centre: "centre of the 5 {name}"; or what is meant by the '
            'word for the place: "scallop means group"'
        )
        raise b.misread(f"a space of chains has no {name}", help_, *children)
    return sites.member(Centre(sites.kind))


def _between(children: Sequence[Node], b: Building) -> Member:
    rest = children[1:]
    if len(rest) > 2 and is_token(rest[0], "PICOT") and is_token(rest[1], "OF"):
        sites = _sites(rest[2:], b)
        return sites.member(BetweenPicots(sites.kind))
    if is_token(children[0]) and b.of(children[0]).name == TWO_KINDS:
        message = "what lies between two of different kinds is no place here"
        help_ = 'name what stands there, "in next space", or two alike: "between next 2 dc"'
        raise b.misread(message, help_, *children)
    sites = _sites(rest, b, pairs=True)
    which = sites.which or Which.NEXT
    if sites.pair:
        return replace(sites.member(Between(sites.kind)), which=which)
    if sites.count != 2 or sites.each or which in (Which.EVERY, Which.NTH):
        help_ = 'write "between next 2 dc", "between each 2 dc", "between 3rd pair of dc"'
        raise b.misread("between which two is not said", help_, *children)
    return Member(which, 1, False, Between(sites.kind))


_BUILDERS: dict[str, Callable[[Sequence[Node], Building], Member]] = {
    "same": _same,
    "nth": _whole,
    "middle": _whole,
    "part": _part,
    "centre": _centre,
    "between": _between,
}


def _sites(children: Sequence[Node], b: Building, *, pairs: bool = False) -> _Sites:
    """[which] [number] [pair of] kind, as children of a node.

    `pairs`: the number may be that of the two sites between which something goes.
    """
    which: Which | None = None
    count: int | None = None
    each = pair = False
    for child in children:
        if is_tree(child, "det"):
            which, count, each = _determiner(child, b)
        elif is_token(child, "ORD", "CENTRE", "SAME"):
            which, count = _ordinal(child, b)
        elif is_token(child, "NUM"):
            count = b.of(child).number
            if which is None and count == 1:
                which = Which.NEXT  # in a st, in one loop
            elif which not in _NUMBERED and not (pairs and which in (None, Which.EACH)):
                raise _unsaid(children, b)
        elif is_token(child, "PAIR"):
            pair = True
        elif is_token(child, *KINDS):
            return _Sites(which, count, each, pair, _kind(child, b))
    raise AssertionError(children)


def _many(node: Node, b: Building) -> bool:
    """Whether a place ends in a plural: `loops`, `trebles`."""
    noun = [b.of(token) for token in leaves(node)][-1]
    return noun.many or (noun.type != "KIND" and noun.text.endswith("s") and len(noun.text) > 2)


def _unsaid(children: Sequence[Node], b: Building) -> Misread:
    """`in the 5 ch`, `in each 3 spaces`: a number, but not which ones."""
    number = next(b.of(child).number for child in children if is_token(child, "NUM"))
    thing = _last_word(children[-1], b)
    help_ = f'write "in the next {number} {thing}", or "in each of the next {number} {thing}"'
    if is_token(children[-1], "CH"):
        help_ = (
            f'write "in next ch-{number} space" for a space of {number} chains; otherwise {help_}'
        )
    return b.misread("this place does not say which", help_, *children)


def _determiner(node: Tree[Token], b: Building) -> tuple[Which, int | None, bool]:
    tokens = [child for child in node.children if is_token(child)]
    first = b.of(tokens[0])
    if first.type == "EVERY":
        if first.number < 2:
            raise b.misread("every how many is not said", 'write "in every 2nd st"', node)
        return Which.EVERY, first.number, False
    if first.type != "EACHOF":
        return _WHICH[first.type], None, False
    which, count = _ordinal(tokens[1], b)
    if which is Which.NTH:
        help_ = 'write "each of the next 3 spaces", or "every 2nd space"'
        raise b.misread("each of which is not said", help_, node)
    return which, count, True


def _ordinal(token: Token, b: Building) -> tuple[Which, int | None]:
    terminal = b.of(token)
    if terminal.type in ("NEXT", "SAME", "CENTRE"):
        return Which(terminal.type.lower()), None
    match terminal.number:
        case 1:
            return Which.FIRST, None
        case -1:
            return Which.LAST, None
        case 0:
            raise b.misread("nothing is counted as the 0th", 'count from "1st"', token)
        case nth:
            return Which.NTH, nth


def _kind(node: Node, b: Building) -> Kind:
    kind = kind_of(b.of(node)) if is_token(node) else None
    assert kind is not None
    return _stitch_of_shell(node, b) if kind == ST_OF_SHELL else kind


def _stitch_of_shell(node: Node, b: Building) -> Kind:
    """The stitch that all shells of the row below, and nothing else there, are of."""
    below = [] if b.below is None else list(walk(b.below.items))
    shells = [item for item in below if is_shell(item)]
    inside = [one for item in shells for one in walk((item,)) if isinstance(one, Stitches)]
    made = {one.stitch for one in inside}
    alike = [one for one in below if isinstance(one, Stitches) and one.stitch in made]
    beside = any(all(one is not of_shell for of_shell in inside) for one in alike)
    if len(made) != 1 or beside:
        help_ = 'name it: "in each dc"; of several kinds, "in each dc or sc"'
        message = "which stitches of the row below are those of its shells is not clear"
        raise b.misread(message, help_, node)
    return Kind(made.pop())


def build_target(node: Node, b: Building) -> Target:
    """What is counted in `to last 2 X`: a kind, or a part or point of it."""
    if is_tree(node):
        target = _member(node, b).target
        assert target is not None
        return target
    return Whole(_kind(node, b))


def build_skipped(node: Tree[Token], b: Building) -> tuple[Member, bool]:
    """What a `skip` names, and whether it says `first`."""
    number = node.children[0]
    if is_token(number, "NUM"):
        return Member(None, b.of(number).number, False, Whole(_kind(node.children[1], b))), False
    member = _member(node, b)
    allowed = (None, Which.NEXT, Which.THE, Which.FIRST)
    if member.which not in allowed or member.each or member.target is None:
        help_ = 'write "skip 2 st", "skip next space"'
        raise b.misread("only what comes next can be skipped", help_, node)
    return member, member.which is Which.FIRST
