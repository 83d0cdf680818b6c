"""Places named by chains and their number: `the 3 chain`, `loop of 5`, `chain of 5` are spaces.

Whether so many chains are one space, or as many places, is seen from how many stitches go there,
how they are said, and what stands beside.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.shaping.sentences import list_end
from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.dots import DOTTED
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    OPENS,
    WHICH,
    Terminals,
    ended,
    like,
    made,
    only_ends,
    past,
    types,
)
from border.text.wording.rings import chains_before


def of_chain(t: Terminals, at: int, before: Terminals, opened: bool) -> tuple[int, Terminals]:
    """`loop of 5 chain`, `each stitch of the chain`, `chain of 5`; where no place is, chains."""
    here = t[at]
    if here.type == "KIND" and here.kind in ARCHES and types(t, at + 1, 1) == ["OF"]:
        the = types(t, at + 2, 1) == ["THE"]
        of = at + 2 + the
        one = before[-1] if before else here
        if (
            (the or one.type == "CENTRE")
            and types(t, of, 2) == ["NUM", "CH"]
            and (one.type == "CENTRE" or (one.type == "ORD" and one.number > 1))
        ):
            return 1, [] if one.type == "CENTRE" else [like(here, "CH")]  # a loop is a chain here
        if types(t, of, 2) == ["NUM", "CH"]:
            space = space_of(here, t[of].number, t[of + 1])
            every = here.many and types(before, len(before) - 1 - (one.type == "THE"), 1) == [
                "PREP"
            ]
            return of + 2 - at, [like(here, "EACH"), space] if every else [space]
        if types(t, of, 1) == ["CH"]:
            return of + 1 - at, [here]
    each = bool(before) and before[-1].type in ("EACH", "EVERY")
    if each and here.kind == Kind("st") and types(t, at + 1, 3) == ["OF", "THE", "CH"]:
        return 4, [here]
    if each and here.type == "CH" and (taken := _nth_of_each(t, at, before)):
        last = t[at + taken - 1]
        space = space_of(here, last.number or t[at + taken - 2].number, last)
        return taken, [here, like(here, "OF"), like(here, "EACH"), space]
    if here.type != "CH" or types(t, at + 1, 2) != ["OF", "NUM"]:
        return 0, []
    if opened and ended(t, at + 3) and _one_of(before, t[at + 2].number):
        space = space_of(t[at + 2], t[at + 2].number, t[at + 2])
        return 3, [here, t[at + 1], like(here, "THE"), space]  # `in 3rd ch of 5`
    if opened and ended(t, at + 3):
        return 3, [space_of(here, t[at + 2].number, t[at + 2])]
    if opened or (before and before[-1].type == "NUM" and before[-1].number != 1):
        return 0, []
    if before and before[-1].type == "NUM":
        before.pop()
    return 3, [t[at + 2], here]


def _one_of(before: Sequence[Terminal], size: int) -> bool:
    """Whether one of so many chains is named, `3rd`, `centre`, and not a loop of them."""
    which = before[-1]
    nth = which.type == "ORD" and 1 < which.number <= size
    return (nth or which.type == "CENTRE") and not is_under(before)


def _nth_of_each(t: Terminals, at: int, before: Terminals) -> int:
    """How many terminals are the `ch of 5` of `each 3rd ch of 5`, which is the 3rd of each; else
    0."""
    every = before[-1]
    five = past(t, at + 2, "THE")
    said = types(t, at + 1, 1) == ["OF"] and types(t, five, 1) == ["NUM"]
    other = every.text.split()[-1] in ("other", "alternate", "second")
    if not said or other or not 1 < every.number <= t[five].number:
        return 0
    before[-1] = like(every, "ORD", number=every.number)
    return five + 1 + (types(t, five + 1, 1) == ["CH"]) - at


def by_chains(t: Terminals, at: int, before: Terminals) -> tuple[int, Terminals]:
    """`the 3 chain`, `next ch-3`, `under the chain`: the space of so many chains."""
    here, pair = t[at], types(t, at, 2)
    if here.type == "CH" and is_parted(before) and (ended(t, at + 1) or _listed_behind(t, at + 1)):
        joined = only_ends(t[at + 1 :]) and any(x.name == "ss" for x in before[-7:])
        loop = here.text.split()[-1] in _SHORT and _is_one_of_it(before) and not joined
        if here.text == "chain" or loop:
            return 1, [like(here, "KIND", Kind("space"))]  # `middle of the chain`
    glued = pair in (["CH", "NUM"], ["NUM", "CH"]) and t[at + 1].glued
    behind = pair == ["CH", "NUM"] and ended(t, at + 2) and before[-1].type != "SKIP"
    if glued or behind:
        number = t[at].number or t[at + 1].number
        return 2, [*which_of(before, here), space_of(here, number, t[at + 1])]
    each = types(before, len(before) - 2, 2) == ["EACHOF", "NEXT"]
    if pair == ["NUM", "CH"] and each and _shells(t, at, before):
        return 2, [
            space_of(here, here.number, t[at + 1])
        ]  # `in each of the 7 chain 1 dc, 5 tr, 1 dc`
    of = ended(t, at + 3) or types(t, at + 3, 1) == ["OF"]
    if pair == ["NUM", "CH"] and types(t, at + 2, 1) == ["NUM"] and each and of:
        return 3, [here, space_of(t[at + 1], t[at + 2].number, t[at + 2])]  # `each of next 3 ch 1`
    if pair == ["NUM", "CH"] and each and ended(t, at + 2) and is_under(before[:-2]):
        if before[-1].text != "next":  # `under each of the 5 chain`: or each ch-5 space
            before[-3] = replace(before[-3], name=before[-3].name or "spaces")
        return 2, [here, like(t[at + 1], "KIND", Kind("space"))]  # `under each of 5 chain`
    if pair == ["NUM", "NUM"] and each and types(t, at + 2, 1) == ["CH"] and ended(t, at + 3):
        return 3, [here, space_of(t[at + 1], t[at + 1].number, t[at + 2])]  # `next four 1 chain`
    if pair == ["NUM", "NUM"] and here.text == "one" and types(t, at + 2, 1) == ["CH"]:
        return 3, [
            like(here, "NEXT"),
            space_of(here, t[at + 1].number, t[at + 2]),
        ]  # `in one 7 chain`
    ends = ended(t, at + 1) or (before[-1].type == "THE" and types(t, at + 1, 1) == ["NUM"])
    over_each = before[-1].type in ("EACH", "EVERY") and is_over(before)  # `5 sc over each ch`
    if here.type == "CH" and ends and (is_under(before) or over_each):
        return 1, [like(here, "KIND", Kind("space"))]  # `under the first chain`
    if here.text in ("one", "1") and here.type == "NUM" and ended(t, at + 1) and is_under(before):
        return 1, [like(here, "NEXT"), like(here, "KIND", Kind("loop"))]  # `1 dc under one`
    if here.type == "NUM" and here.number > 1 and ended(t, at + 1) and is_under(before):
        which = [] if before[-1].type in ("EACH", "NEXT") else [like(here, "THE")]
        return 1, [*which, space_of(here, here.number, here)]  # `under every five`
    one = here.text in ("one", "a") and before[-1].type == "PREP" and not is_under(before)
    if pair == ["NUM", "CH"] and one:
        return 2, [like(here, "NEXT"), t[at + 1]]  # `3 treble in one chain`
    if pair == ["NUM", "CH"] and _by_count(t, at, before):
        if _on_each(here, before):
            return 2, [like(here, "NEXT"), *t[at : at + 2]]
        return 2, [*which_of(before, here), space_of(here, here.number, t[at + 1])]
    return 0, []


_SHORT = ("ch", "chs", "chain", "chains")


def _listed_behind(t: Sequence[Terminal], at: int) -> bool:
    """Whether steps stand behind a place: `in the centre of the chain 1 dc, 1 ch, 1 dc`, `1 tr in
    the centre of the chain and 1 picot`. A number alone may be that of the chains."""
    at = past(t, at, "AND")
    made = past(t, at, "NUM")
    several = types(t, at - 1, 1) == ["AND"] or made > at
    return types(t, at, 1) == ["LP"] or (several and types(t, made, 1) in _MADE)


_MADE = (["STITCH"], ["CLUSTER"], ["PICOT"])


def _by_count(t: Terminals, at: int, before: Terminals) -> bool:
    """Whether `N chain` names a space: not where `next` or `first` count single chains.

    `5 sc in the next 5 chain` is one in each; 7, or a list, can only be meant for one space.
    """
    if is_parted(before):
        return not _closes_ring(t, at, before)
    number, chain = t[at].number, t[at + 1]
    spelled = chain.text not in ("ch", "chs", "chains") or chain.name == DOTTED
    if "EACHOF" in types(before, max(0, len(before) - 2), 2) or before[-1].type == "SKIP":
        return False
    if any(x.type in ("BEGIN", "TO") for x in before[-4:]) or _in_shell(before):
        return True  # `begin on the 1st 5 chain`, `2 dc, 2 ch, 2 dc in next 4 ch`
    prep = next((x.text for x in reversed(before[-4:]) if x.type == "PREP"), "")
    if prep in ("under", "u", "beneath") and before[-1].type in ("NEXT", "ORD"):
        return True  # nobody works under single chains
    if before[-1].type == "ORD" and (number == 1 or before[-1].number > 1):
        return True  # `in the first 1 chain`, `in the second five chain`
    if number == 1 and types(before, len(before) - 2, 2) == ["THE", "NEXT"]:
        return True  # `in the next 1 chain`: a single one is `the next chain`
    named = any(x.kind == Kind("space", number) and x.text == t[at].text for x in before)
    if named and before[-1].type == "NEXT":
        return True  # `in the 5 chain, 3 chain, 1 dc in the next 5 chain`
    if before[-1].type in ("NEXT", "ORD", "CENTRE"):
        listed = [x.type for x in before[-4:] if x.type != "THE"][-3:-1]
        several = listed in (["RP", "PREP"], ["SEP", "ALLIN"])
        one_space = several or made(before) not in (0, 1, number) or _list_behind(t, at, before)
        over = prep in ("over", "round", "around")  # `6 dc over the first 5 ch`
        again = _same_behind(t, at)  # `3 dc in the next 4 ch, 3 ch, 3 dc in the same`
        return one_space and (number == 1 or spelled or over or again)
    return True


def _same_behind(t: Sequence[Terminal], at: int) -> bool:
    """Whether the next place is the same one, which so must be one."""
    opens = next((n for n in range(at, len(t)) if t[n].type in OPENS), len(t))
    return types(t, opens, 1) == ["PREP"] and types(t, past(t, opens + 1, "THE"), 1) == ["SAME"]


def _shells(t: Sequence[Terminal], at: int, before: Terminals) -> bool:
    """Whether `each of the 7 chain` are loops of so many, since a list goes into each; the words
    before are then `in each`."""
    prep = len(before) - 3
    placed = types(before, prep, 1) == ["PREP"] and t[at + 1].text == "chain" and ended(t, at + 2)
    start = past(t, at + 2, "SEP")
    first = types(before, prep - 1, 1) in ([], ["SEP"], ["STAR"], ["LP"])
    listed = [x for x in t[start : list_end(t, start)] if x.type == "STITCH"]
    if not placed or not first or len(listed) < 2:
        return False
    before[-2:] = [like(before[-2], "EACH")]
    return True


def _list_behind(t: Sequence[Terminal], at: int, before: Sequence[Terminal]) -> bool:
    """Whether a place that opens a step has more behind it than can be one in each chain: `in the
    next 5 chain work (1 dc, 3 ch, 1 dc)`, `in next 5 chain 7 dc`."""
    opens = next((n for n in range(len(before) - 1, -1, -1) if before[n].type == "PREP"), 0)
    if types(before, opens - 1, 1) not in ([], ["SEP"], ["STAR"], ["LP"]):
        return False
    start = past(t, at + 2, "SEP")
    if start == at + 2 and types(t, start, 1) not in (["NUM"], ["LP"]):
        return False
    steps = t[start : list_end(t, start)]
    made_ = [n for n, x in enumerate(steps) if x.type == "STITCH"]
    count = steps[made_[0] - 1].number if made_ and types(steps, made_[0] - 1, 1) == ["NUM"] else 1
    several = len(made_) > 1 or types(steps, 0, 1) == ["LP"]
    return several or count not in (1, t[at].number)


def _in_shell(before: Sequence[Terminal]) -> bool:
    """Whether what is worked here has chains between the same stitches."""
    at = len(before) - 1
    while at >= 0 and before[at].type in WHICH | {"PREP"}:
        at -= 1
    shell = types(before, max(0, at - 7), 8)
    chains = sorted(shell[3:5]) == ["CH", "NUM"]
    apart = shell[2:3] == shell[5:6] == ["SEP"]
    ends = shell[:2] == shell[6:] == ["NUM", "STITCH"]
    return chains and apart and ends and before[at].name == before[at - 6].name


def _closes_ring(t: Terminals, at: int, before: Terminals) -> bool:
    """`4 ch, 1 sc in the first of the 4 ch` closes a picot; of other chains, it is asked."""
    words = [x for x in before[-12:] if x.type not in ("THE", "SEP")]
    if types(words, len(words) - 2, 2) != ["ORD", "OF"] or words[-2].number != 1:
        return False
    return chains_before(words[:-3]) > 0


def _on_each(number: Terminal, before: Terminals) -> bool:
    """`3 treble on the 3 chain`: one on each."""
    prep = next((x for x in reversed(before) if x.type in ("PREP", "OF")), None)
    on = prep is not None and prep.text.split()[0] in ("on", "upon", "onto")
    return on and made(before) == number.number > 1 and before[-1].type in ("PREP", "THE")


def space_of(here: Terminal, number: int, last: Terminal) -> Terminal:
    """The space of so many chains, from one word to the last."""
    kind = Kind("space", number)
    return replace(here, type="KIND", kind=kind, number=0, end=last.end, many=False, glued=False)


def which_of(before: Sequence[Terminal], here: Terminal) -> Terminals:
    """The `the` that a place has before its number, where nothing else says which it is."""
    return [] if before[-1].type in WHICH else [like(here, "THE")]


def is_under(before: Sequence[Terminal]) -> bool:
    """Whether `under`, `under every` stands before: there is room under a run of chains only."""
    prep = next((x for x in reversed(before) if x.type not in WHICH), None)
    return prep is not None and prep.text.split()[-1] in ("under", "u", "beneath")


def is_over(before: Sequence[Terminal]) -> bool:
    """Whether `over`, `over every` stands before, of what is worked round."""
    prep = next((x for x in reversed(before) if x.type not in WHICH), None)
    return prep is not None and prep.text == "over"


def is_parted(before: Sequence[Terminal]) -> bool:
    """Whether a part is named before: `3rd of the`, `centre of next`."""
    at = _of(before)
    return at > 0 and before[at].type == "OF" and before[at - 1].type in NOUNS | {"ORD", "CENTRE"}


def _is_one_of_it(before: Sequence[Terminal]) -> bool:
    """Whether `centre of the`, `3rd st of` stands before: a single chain has no such parts."""
    at = _of(before) - 1
    at -= before[at].type in NOUNS
    return at >= 0 and before[at].type in ("ORD", "CENTRE")


def part_before(before: Sequence[Terminal]) -> Terminal:
    """What is named before `of the`, `of every`."""
    return before[_of(before) - 1]


def _of(before: Sequence[Terminal]) -> int:
    at = len(before) - 1
    while at >= 0 and before[at].type in WHICH - {"CENTRE"}:
        at -= 1
    return at
