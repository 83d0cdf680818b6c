"""What books add to a place that is named already: `on the double between the two loops`.

Where a thing stands changes nothing once it is named; what is left is the place itself.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.shaping.sentences import place_at
from border.text.terminals import Terminal
from border.text.tree import SPACES, ST, Kind
from border.text.wording.last_stitches import TURNING
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    Terminals,
    ended,
    is_counted,
    like,
    made,
    only_ends,
    past,
    prep_before,
    stitch_left_out,
    types,
)

ST_OF_SHELL = Kind("st", None, "shell")
"""Whatever stitch the shells of the row below are of."""
BETWEEN = "between"
"""The name of a place of which it was said between what it is."""
IN_GROUP = "in group"
"""The name of a place of chains in the middle of a group: a shell, where one is made below."""
IN_SHELL = "in shell"
"""The name of a place of which it was said that it is a loop of the shell: the shell itself."""
EACH_IN_SHELL = "each in shell"
"""The same, where it was said that it is each of its spaces: the shell, or each of these."""
OF_HEAP = "of heap"
"""The name of a place of which it was said in what it stands: `in each dc of the shell`."""
_SAYS_WHERE = frozenset({"ATEND", "BETWEEN", "PREP", "OF"})
_HEAPS = (Kind("shell"), Kind("group"))
_BESIDE = frozenset({"before", "over", "above", "under", "beneath", "below"})
_LOOP_OF = ["KIND", "OF", "NUM", "CH"]
_WHICH_ONE = frozenset({"THE", "NUM", "ORD", "NEXT", "EACH", "EACHOF", "EVERY", "SAME"})


def described(t: Terminals) -> Terminals:
    """`on the double between the loops`, `in the 2 chain in the centre of the 4`, `in the loop
    at the end`: without what says where that is, but for the end, which is the last.

    `1 chain between the long` makes chains, and `in the space between the long` is the
    point between two; both are read elsewhere.
    """
    found: Terminals = []
    at = 0
    while at < len(t):
        if t[at].type not in _SAYS_WHERE and t[at].type != "AFTER" and t[at].text not in _BESIDE:
            found.append(t[at])
            at += 1
            continue
        if (end := _beside_others(t, at, found)) > at:
            prep = prep_before(found)
            assert prep is not None
            found[prep] = replace(found[prep], name=found[prep].name or BETWEEN)
            at = end
            continue
        if (end := _in_heap(t, at, found)) > at:
            at = end
            continue
        if t[at].type not in _SAYS_WHERE:
            found.append(t[at])
            at += 1
            continue
        if (end := _at_end_of_heap(t, at, found)) > at:
            at = end
            continue
        if t[at].type == "ATEND" and _chains_at_end(found):
            at += 1
            continue
        if t[at].type == "PREP" and (end := _turning_chain(t, at, found)) > at:
            here = replace(t[at], name=TURNING)
            found += [here, like(here, "ORD", number=-1), stitch_left_out(here)]
            at = end
            continue
        inside = t[at].type == "PREP" and types(t, past(t, at + 1, "THE"), 1) == ["CENTRE"]
        where = t[at].type == "BETWEEN" or inside
        if where and types(found, len(found) - 4, 4) == _LOOP_OF:
            del found[-4:-2]  # `the loop of 3 chain between the treble`
        chains = at + 1 + (types(t, at + 1, 1) == ["THE"])
        first = types(found, len(found) - 2, 2) == ["ORD", "NUM"] and t[at].type == "OF"
        if first and types(t, chains, 2) == ["NUM", "CH"]:
            found.append(t[chains + 1])  # `on the first 5 of the 9 chain`
            at = chains + 2
            continue
        if t[at].type == "BETWEEN" and types(found, len(found) - 2, 2) == ["CH", "NUM"]:
            found[-2:] = reversed(found[-2:])  # `the ch 3 between the dc`
            if prep_before(found) is None:
                found[-2:] = reversed(found[-2:])
        if t[at].type == "BETWEEN" and _begins_in_centre(found):
            behind = _behind_between(t, at)
            if behind > at and ended(t, behind):  # `slip to the centre of 3 ch between the 2 p`
                at = behind
                continue
        prep = prep_before(found)
        behind = at
        if prep is not None and t[at].type == "ATEND" and found[-1].type == "KIND":
            found[prep + 1 : -1] = [like(t[at], "ORD", number=-1)]
            behind = at + 1
        elif prep is not None and t[at].type == "BETWEEN":
            # `in the space between the dc` is the point between them, `under the loop …` is not
            gap = found[-1].kind == Kind("space") or found[-1].text == "hole" or ended(t, at + 1)
            point = gap and found[-1].kind in ARCHES and found[-2].type in ("PREP", "THE")
            behind = at if point else _behind_between(t, at)
            counted = any(x.type == "ORD" and x.number > 1 for x in found[prep:])
            if counted and any(x.type == "NEXT" for x in t[at:behind]):
                behind = at  # `in the 3rd dc between the next two picots` counts from there
            if behind > at and found[-1].type in ("STITCH", "PICOT", "CH", "KIND"):
                found[prep] = replace(found[prep], name=found[prep].name or BETWEEN)
            if behind > at and t[behind - 1].type == "STITCH":
                _between_stitches(found, t[behind - 1])
        elif prep is not None and types(t, at, 1) == ["PREP"]:
            centre = [x.type for x in t[at + 1 : at + 4] if x.type != "THE"]
            more = centre[:2] == ["CENTRE", "OF"] or t[at].text.split()[0] == "at"
            behind = place_at(t, at) if more else at
            inside = behind > at and t[behind - 1].kind in _HEAPS and centre[:1] == ["CENTRE"]
            sized = found[-1].kind is not None and found[-1].kind.name in SPACES
            inside = inside and (sized or _is_gap(found, prep))
            if inside and t[behind - 1].kind == Kind("group"):
                found[prep] = replace(found[prep], name=IN_GROUP)
            elif inside:  # `the 2 ch in the middle of each shell`
                of = next(n for n in range(at, behind) if t[n].type == "OF")
                found[prep + 1 :] = [*t[of + 1 : behind - 1], t[behind - 1]]
                at = behind
                continue
            alone = at + 1 + (types(t, at + 1, 1) == ["THE"])
            if types(t, alone, 1) == ["CENTRE"] and ended(t, alone + 1):
                behind = alone + 1  # `under 2 ch in the middle`
            if behind > at and found[-1].type in ("CH", "PICOT"):
                found[prep] = replace(found[prep], name=found[prep].name or BETWEEN)
            if behind > at and any(x.type == "EACH" for x in t[at:behind]):
                _in_each(found, prep, t[at])
        elif prep is not None and (shell := _shell_behind(t, at)) and _is_gap(found, prep):
            behind = shell
            if any(x.type == "EACHOF" for x in found[prep:]):
                at = behind  # `in each of the 5 spaces of the fan`
                continue
            of_every = [x for x in found[prep + 1 :] if x.type in ("EACH", "EVERY")]
            if found[-1].many and not of_every and found[-1].kind in ARCHES:
                of_every = [like(found[-1], "EACH")]  # `in the spaces of the shell`
            several = of_every and types(found, len(found) - 2, 2) == ["NUM", "CH"]
            if not several:  # of `each 1 ch of the shell` there may be more than one
                whole = replace(t[shell - 1], kind=Kind("shell"))
                name = EACH_IN_SHELL if of_every and found[-1].kind in ARCHES else IN_SHELL
                found[prep] = replace(found[prep], name=found[prep].name or name)
                found[prep + 1 :] = [*(of_every or t[at + 1 : shell - 1]), whole]
        elif prep is not None and types(t, at, 1) == ["OF"] and _is_whole(found):
            behind = _behind_of(t, at)
            if behind > at and found[-1].type in ("STITCH", "PICOT"):
                found[prep] = replace(found[prep], name=found[prep].name or OF_HEAP)
            if behind > at and any(x.type in ("EACH", "EVERY") for x in t[at:behind]):
                _in_each(found, prep, t[at])
        elif t[at].type == "OF" and _is_between(found) and not _goes_to_next(t, at):
            behind = _behind_of(t, at)  # `between the next 2 dc of the scallop`
        elif prep is not None and _is_each_st(found) and (shell := _shell_behind(t, at)):
            behind = shell  # `in each st of shell`
            found[-1] = replace(found[-1], kind=ST_OF_SHELL)
        elif t[at].type == "OF" and _is_one_of_several(found):
            behind = _behind_of(t, at)  # `the middle one of the 3 dc of the next leaf`
        elif t[at].type == "ATEND" and found and found[-1].type in ("ENDING", "STITCH"):
            again = max((n for n in range(at) if t[n].type == "REPEAT"), default=-1)
            at_last = again >= 0 and not is_counted(t, again)
            behind = at if at_last and found[-1].type == "STITCH" else at + 1
            if behind > at and made(found) and only_ends(t[at + 1 :]):
                here = like(t[at], "PREP", name="end")  # `1 chain, 1 dc at the end`
                many = [like(here, "NUM", number=made(found))] if made(found) > 1 else []
                found += [here, like(here, "ORD", number=-1), *many, stitch_left_out(here)]
        if behind == at:
            found.append(t[at])
        at = max(behind, at + 1)
    return found


def _at_end_of_heap(t: Terminals, at: int, found: Terminals) -> int:
    """Behind `at end of shell`, of chains named right before, which are told where there are
    others; the same place where it is no such end."""
    heap = past(t, at + 2, "THE", "NEXT", "EACH") if types(t, at, 2) == ["ATEND", "OF"] else len(t)
    prep = prep_before(found)
    of_heap = heap < len(t) and t[heap].kind in _HEAPS
    first = prep is not None and (prep == 0 or found[prep - 1].type in ("SEP", "STAR", "LP"))
    # `under the 4 ch at end of shell 5 dc`
    of_heap &= ended(t, heap + 1) or (first and types(t, heap + 1, 1) == ["NUM"])
    if prep is None or not of_heap or any(x.type == "ORD" for x in found[prep:]):
        return at
    if found[-1].type != "CH" and (found[-1].kind is None or found[-1].kind.name not in SPACES):
        return at
    found[prep] = replace(found[prep], name=found[prep].name or BETWEEN)
    return heap + 1


_BEGUN = 9
"""In no more words it is said where a row begins."""


def _begins_in_centre(found: Terminals) -> bool:
    """Whether these words are where a row begins, in the centre of something, and no more."""
    if len(found) > _BEGUN:
        return False
    slips = types(found, 0, 2) == ["STITCH", "TO"] and found[0].name == "ss"
    behind = [x.type for x in found[1 + slips :] if x.type not in _WHICH_ONE | {"PREP", "OF"}]
    begins = slips or types(found, 0, 1) == ["BEGIN"]
    if behind[-1:] == ["SEP"]:
        behind.pop()
    return begins and behind in (["CENTRE", "KIND"], ["CENTRE", "CH"])


def _beside_others(t: Terminals, at: int, found: Terminals) -> int:
    """Behind `before the 3 dc`, `after the 3 dc` of chains that are worked under, and `over the 1st
    tr`, `over tr`, `under the picot` of what is worked on; else the same place."""
    noun = past(t, at + 1, "THE", "NUM", "ORD")
    named = types(t, noun, 1) != [] and t[noun].type in NOUNS and ended(t, noun + 1)
    if not named or not found or prep_before(found) is None:
        return at
    stitch = t[noun].type == "STITCH" and noun > at + 1
    chains = found[-1].type == "CH" or found[-1].kind == Kind("space", _size(found[-1]))
    beside = (t[at].type == "AFTER" or t[at].text == "before") and chains and stitch
    under = t[at].text in _UNDER and t[noun].type not in ("STITCH", "PICOT")  # what chains cover
    above = t[at].text in _OVER_UNDER and found[-1].type in _STOOD_ON and not under
    return noun + 1 if beside or above else at


_UNDER = frozenset({"under", "beneath", "below"})
_OVER_UNDER = frozenset({"over", "above"}) | _UNDER
_STOOD_ON = frozenset({"STITCH", "CH"})


def _in_heap(t: Terminals, at: int, found: Terminals) -> int:
    """Behind `in the next scallop` of a stitch that is one of so many: `on the 4th of the 7 dc`;
    else the same place."""
    if t[at].type != "PREP":
        return at
    heap = past(t, at + 1, "THE", "NEXT")
    tail = types(found, max(0, len(found) - 4), 4)
    one_of = tail[-2:] == ["NUM", "STITCH"] and "OF" in tail[:2]
    kind = t[heap].kind if heap < len(t) else None
    said = types(t, at, 1) == ["PREP"] and t[at].text == "in" and ended(t, heap + 1)
    heaps = kind is not None and not kind.size and t[heap].text not in ("loop", "space", "chain")
    return heap + 1 if one_of and said and heaps else at


def _size(here: Terminal) -> int | None:
    return here.kind.size if here.kind is not None else None


def _turning_chain(t: Terminals, at: int, found: Terminals) -> int:
    """Behind `in top of 3 ch`, `in 3rd of ch`, `on the 3rd chain` where a row ends that is turned:
    the chain that the row below began with, which stands for a stitch; else the same place."""
    order = past(t, at + 1, "THE")
    top = "top" in t[at].text
    if not top and types(t, order, 1) == ["ORD"] and _is_as_high(found, t[order].number):
        of = past(t, order + 1, "KIND")
        chain = past(t, of + (types(t, of, 1) == ["OF"]), "THE", "NUM")
    else:
        # `1 dc in each of next 2 dc and in top of 3 ch`
        more = types(found, len(found) - 1, 1) == ["AND"] and prep_before(found[:-1]) is not None
        upon = types(t, order, 2) == ["NUM", "CH"] and t[at].text in ("on", "upon")
        upon = upon and _is_as_high(found, t[order].number)  # `turn, …, 1 dc on the 3 chain`
        chain = past(t, order, "NUM") if (top and (more or made(found) == 1)) or upon else len(t)
    end = past(t, chain + 1, "NUM")
    if types(t, chain, 1) != ["CH"] or not _ends_row(t, end):
        return at
    turned = any(x.name == "turn" for x in t)
    slips = types(t, at - 1, 1) == ["STITCH"] and t[at - 1].name == "ss"
    if slips and not turned:
        return at  # it closes the round on its own head
    return end if turned or top else at


def _ends_row(t: Sequence[Terminal], at: int) -> bool:
    """Whether a row ends here, or turns: `…; ch 5, turn`."""
    if len(t) - at > _TURN:
        return False
    rest = [x for x in t[at:] if x.type not in ("SEP", "AND")]
    if types(rest, 0, 4) == ["LP", "CH", "NUM", "RP"]:
        rest = rest[4:]  # chains that were fastened to the side
    chains = types(rest, 0, 2) in (["NUM", "CH"], ["CH", "NUM"])
    turns = any(x.name == "turn" for x in rest)
    return all(x.type == "ENDING" for x in rest[2 * (chains and turns) :])


_TURN = 8
"""No more words than that turn a row."""


def _chains_at_end(found: Terminals) -> bool:
    """`in the loop of 5 chain`, `in the 5 ch`, `in 2nd of the 5 ch`, all at the end: the space, or
    that part of the last one; or of the chains that the row below began with, its last stitch.

    True where that is the whole place; else its name is left to be the last one.
    """
    at = len(found) - 1
    if types(found, max(0, at), 1) != ["CH"]:
        return False
    sized = types(found, at - 1, 1) == ["NUM"]
    chain = found[at]
    space = like(chain, "KIND", Kind("space", found[at - 1].number if sized else None))
    at -= sized
    at -= types(found, at - 1, 1) == ["THE"]
    if types(found, at - 2, 2) == ["KIND", "OF"] and found[at - 2].kind in ARCHES:
        found[at - 2 :] = [replace(space, text="loop")]
        return False
    part = _part_of_chains(found, at)
    start = at if part is None else part
    prep = start - 1 - (part is not None and types(found, start - 1, 1) == ["THE"])
    bare = part is None and not sized  # `1 dc in ch at end`
    top = part is None and prep >= 0 and "top" in found[prep].text
    if types(found, prep, 1) != ["PREP"] or (bare and not top and made(found[:prep]) != 1):
        return False
    last = like(chain, "ORD", number=-1)
    order = found[start + 1 if types(found, start, 1) == ["THE"] else start].number
    under = part is None and found[prep].text not in ("in", "into", "on")
    if top or (not under and (bare or _is_as_high(found[:prep], order))):
        found[prep:] = [replace(found[prep], name=TURNING), last, stitch_left_out(chain)]
        return True
    if bare and not under:
        return False
    if part is None:
        found[at:] = [space]
        return False
    found[prep + 1 :] = [found[part], chain, like(chain, "OF"), last, space]
    return True


def _part_of_chains(found: Sequence[Terminal], of: int) -> int | None:
    """Where `2nd of`, `3rd st of`, `the 3rd chain of` begins that ends before a place."""
    if types(found, of - 1, 1) != ["OF"]:
        return None
    at = of - 2
    at -= types(found, at, 1) in (["CH"], ["KIND"])
    return at if types(found, at, 1) == ["ORD"] and found[at].number > 0 else None


def _is_as_high(before: Sequence[Terminal], chains: int) -> bool:
    """Whether one stitch is made here, and so many chains stand for one of its kind."""
    stitch = next((x.name for x in reversed(before) if x.type in ("STITCH", "CLUSTER")), "")
    high = STITCHES[stitch].height if stitch in STITCHES else 0
    return made(before) == 1 and high == chains > 1


def _between_stitches(found: Terminals, stitch: Terminal) -> None:
    """`the 3 chain between the 2 dc`: the space of 3 with dc on both sides of it."""
    here = found[-1]
    if types(found, len(found) - 2, 2) == ["NUM", "CH"] and found[-3].type != "NEXT":
        which = [] if found[-3].type in _WHICH_ONE - {"NUM"} else [like(here, "THE")]
        kind = Kind("space", found[-2].number, stitch.name)
        found[-2:] = [*which, like(here, "KIND", kind)]


def _in_each(found: Terminals, prep: int, here: Terminal) -> None:
    """A place that is of each of something is in each of its own."""
    which = found[prep + 1].type
    if found[prep].type == "PREP" and which in ("THE", "NUM"):
        found[prep + 1 : prep + 1 + (which == "THE")] = [like(here, "EACH")]


def _is_whole(found: Sequence[Terminal]) -> bool:
    """Whether what is named is no part: `3rd treble of the group` is one of that."""
    which = found[-2].type
    sized = found[-1].type == "CH" and which == "NUM"
    each = types(found, len(found) - 3, 1) == ["EACHOF"] or types(found, len(found) - 4, 2) in (
        ["EACHOF", "NEXT"],
        ["EACHOF", "THE"],
    )
    sized |= which == "NUM" and found[-1].type == "STITCH" and each  # `on each of the 5 dc`
    return sized or (found[-1].type in ("STITCH", "PICOT") and which in ("PREP", "THE", "EACH"))


def _is_between(found: Sequence[Terminal]) -> bool:
    """Whether `between the next 2 dc` stands last."""
    said = [x.type for x in found[-5:] if x.type != "THE"]
    return said[-4:] == ["BETWEEN", "NEXT", "NUM", "STITCH"]


def _goes_to_next(t: Sequence[Terminal], at: int) -> bool:
    return any(x.type in ("NEXT", "EACH", "EVERY", "ORD") for x in t[at : _behind_of(t, at)])


def _is_each_st(found: Sequence[Terminal]) -> bool:
    return found[-1].kind == ST and found[-2].type in ("EACH", "EVERY")


def _is_one_of_several(found: Sequence[Terminal]) -> bool:
    """Whether `the centre of the 5 dc`, `the 2nd of the 5 dc` stands last."""
    if types(found, len(found) - 2, 2) != ["NUM", "STITCH"]:
        return False
    before = [x.type for x in found[-6:-2] if x.type not in ("THE", "NUM")]
    return before[-2:] in (["CENTRE", "OF"], ["ORD", "OF"]) or before[-1:] == ["CENTRE"]


def _is_gap(found: Sequence[Terminal], prep: int) -> bool:
    """Whether chains are named last, by their number or as a space, and not one of several."""
    if any(x.type == "ORD" for x in found[prep:]):
        return False
    return types(found, len(found) - 2, 2) == ["NUM", "CH"] or found[-1].kind in ARCHES


def _shell_behind(t: Sequence[Terminal], at: int) -> int:
    """Behind `of each shell`, `of the group`, where chains of it are named; else 0.

    No group has chains of its own: what has is a shell.
    """
    behind = _behind_of(t, at) if types(t, at, 1) == ["OF"] else at
    kind = t[behind - 1].kind if behind > at else None
    return behind if kind in (Kind("shell"), Kind("group")) else 0


def _behind_of(t: Sequence[Terminal], at: int) -> int:
    """Behind `of each scallop`, `of group`; the same place where that is no group or space."""
    end = at + 1
    while types(t, end, 1) in (["THE"], ["NEXT"], ["EACH"], ["EVERY"], ["SAME"], ["ORD"]):
        end += 1
    kind = t[end].kind if end < len(t) and t[end].type == "KIND" else None
    heap = kind is not None and kind.name in ("group", "shell", "block", "space", "loop")
    return end + 1 if heap and ended(t, end + 1) else at


def _behind_between(t: Sequence[Terminal], at: int) -> int:
    """Behind `between the 2 loops`, `between`; the same place where it goes on otherwise."""
    end = at + 1
    while end < len(t) and t[end].type in _WHICH_ONE | {"AND"}:
        end += 1
    end += end < len(t) and t[end].type in NOUNS
    steps = types(t, end, 2) == ["NUM", "STITCH"]  # `in the dc between the chains 3 treble`
    return end if steps or ended(t, end) else at
