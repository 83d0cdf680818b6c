"""Places named by a number: `the 3 chain` is a space, `3rd of the 5 treble` a part of a run.

Each pass puts in the usual words for it, so that the grammar has one way to name
a place. What they then mean is in `grammar/README.md`, "How the books say things".
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.passing import (
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
from border.text.rings import CLOSING, chains_before
from border.text.sentences import list_end
from border.text.terminals import DOTTED, Terminal
from border.text.tree import SPACES, Kind
from border.text.vocabulary import vocabulary


def counted_places(t: Terminals) -> Terminals:
    """`the 3 chain` is a space of 3, `on the 5 treble` the next 5, `3rd of the 5 treble` a run."""
    found: Terminals = []
    at = 0
    while at < len(t):
        opened = bool(found) and found[-1].type in _OPENED
        of = t[at].type in _OF_CHAINS and types(t, at + 1, 1) == ["OF"]
        one = t[at].type == "KIND" and not t[at].many  # `the next loop` is named already
        opened = opened and (of or not one or found[-1].type not in _ONE)
        taken, named = _counted(t, at, found, opened) if opened or of else (0, [])
        found += named if taken else [t[at]]
        at += taken or 1
    return _alike(found)


_OPENED = OPENS | WHICH | {"TO"}
_ONE = frozenset({"NEXT", "EACH", "EVERY", "ORD", "SAME"})
_OF_CHAINS = frozenset({"KIND", "CH"})


def _alike(t: Terminals) -> Terminals:
    """`1 dc in the next 3 chain, 4 tr in the following 3 chain`: where one can only be a space, so
    is the other."""
    spaces = {x.kind for x in t if x.type == "KIND" and x.text in _figures(x)}
    if not spaces:
        return t
    found: Terminals = []
    at = 0
    while at < len(t):
        next_ = past(t, at + 1, "THE") if t[at].type == "PREP" else len(t)
        shape = types(t, next_, 3) == ["NEXT", "NUM", "CH"] and made(t[: at + 1]) == 1
        if shape and Kind("space", t[next_ + 1].number) in spaces:
            space = _space(t[next_ + 1], t[next_ + 1].number, t[next_ + 2])
            found += [*t[at : next_ + 1], space]
            at = next_ + 3
            continue
        found.append(t[at])
        at += 1
    return found


def _figures(here: Terminal) -> tuple[str, ...]:
    """How a book says the size of a space that it names by its chains alone: `the 3 chain`."""
    size = here.kind.size if here.kind is not None and here.kind.name == "space" else None
    return (str(size), *(w for w, n in vocabulary().numbers.items() if n == size)) if size else ()


def _counted(t: Terminals, at: int, before: Terminals, opened: bool) -> tuple[int, Terminals]:
    """How many terminals at a place are one name, and the name that the grammar has."""
    if types(t, at + 2, 1) == ["ATONCE"]:
        return 0, []  # `the next 5 chain at once` are five
    taken, named = _of_chain(t, at, before, opened)
    if taken or not opened or _between(before):
        return taken, named
    taken, named = _by_chains(t, at, before)
    return (taken, named) if taken else _by_stitches(t, at, before)


def _of_chain(t: Terminals, at: int, before: Terminals, opened: bool) -> tuple[int, Terminals]:
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
            space = _space(here, t[of].number, t[of + 1])
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
        space = _space(here, last.number or t[at + taken - 2].number, last)
        return taken, [here, like(here, "OF"), like(here, "EACH"), space]
    if here.type != "CH" or types(t, at + 1, 2) != ["OF", "NUM"]:
        return 0, []
    if opened and ended(t, at + 3) and _one_of(before, t[at + 2].number):
        space = _space(t[at + 2], t[at + 2].number, t[at + 2])
        return 3, [here, t[at + 1], like(here, "THE"), space]  # `in 3rd ch of 5`
    if opened and ended(t, at + 3):
        return 3, [_space(here, t[at + 2].number, t[at + 2])]
    if opened or (before and before[-1].type == "NUM" and before[-1].number != 1):
        return 0, []
    if before and before[-1].type == "NUM":
        before.pop()
    return 3, [t[at + 2], here]


def _one_of(before: Sequence[Terminal], size: int) -> bool:
    """Whether one of so many chains is named, `3rd`, `centre`, and not a loop of them."""
    which = before[-1]
    nth = which.type == "ORD" and 1 < which.number <= size
    return (nth or which.type == "CENTRE") and not _under(before)


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


def _by_chains(t: Terminals, at: int, before: Terminals) -> tuple[int, Terminals]:
    """`the 3 chain`, `next ch-3`, `under the chain`: the space of so many chains."""
    here, pair = t[at], types(t, at, 2)
    middle = types(before, len(before) - 3, 3) == ["PREP", "CENTRE", "OF"]  # `in center of ch`
    if (
        here.type == "CH"
        and ended(t, at + 1)
        and _parted(before)
        and (here.text == "chain" or middle)
    ):
        return 1, [like(here, "KIND", Kind("space"))]  # `middle of the chain`
    glued = pair in (["CH", "NUM"], ["NUM", "CH"]) and t[at + 1].glued
    behind = pair == ["CH", "NUM"] and ended(t, at + 2) and before[-1].type != "SKIP"
    if glued or behind:
        number = t[at].number or t[at + 1].number
        return 2, [*_which(before, here), _space(here, number, t[at + 1])]
    each = types(before, len(before) - 2, 2) == ["EACHOF", "NEXT"]
    if pair == ["NUM", "CH"] and each and _shells(t, at, before):
        return 2, [
            _space(here, here.number, t[at + 1])
        ]  # `in each of the 7 chain 1 dc, 5 tr, 1 dc`
    if pair == ["NUM", "CH"] and types(t, at + 2, 1) == ["NUM"] and each and ended(t, at + 3):
        return 3, [here, _space(t[at + 1], t[at + 2].number, t[at + 2])]  # `each of next 3 ch 1`
    if pair == ["NUM", "CH"] and each and ended(t, at + 2) and _under(before[:-2]):
        return 2, [here, like(t[at + 1], "KIND", Kind("space"))]  # `under each of 5 chain`
    if pair == ["NUM", "NUM"] and here.text == "one" and types(t, at + 2, 1) == ["CH"]:
        return 3, [
            like(here, "NEXT"),
            _space(here, t[at + 1].number, t[at + 2]),
        ]  # `in one 7 chain`
    ends = ended(t, at + 1) or (before[-1].type == "THE" and types(t, at + 1, 1) == ["NUM"])
    if here.type == "CH" and ends and _under(before):
        return 1, [like(here, "KIND", Kind("space"))]  # `under the first chain`
    if here.type == "NUM" and here.number > 1 and ended(t, at + 1) and _under(before):
        which = [] if before[-1].type == "EACH" else [like(here, "THE")]
        return 1, [*which, _space(here, here.number, here)]  # `under every five`
    if pair == ["NUM", "CH"] and here.text in ("one", "a") and before[-1].type == "PREP":
        return 2, [like(here, "NEXT"), t[at + 1]]  # `3 treble in one chain`
    if pair == ["NUM", "CH"] and _by_count(t, at, before):
        if _on_each(here, before):
            return 2, [like(here, "NEXT"), *t[at : at + 2]]
        return 2, [*_which(before, here), _space(here, here.number, t[at + 1])]
    return 0, []


def _by_stitches(t: Terminals, at: int, before: Terminals) -> tuple[int, Terminals]:
    """`3rd of the 5 treble`: the run of so many; `5 treble on the 5`: the next 5."""
    here = t[at]
    if here.many and before[-1].type == "NEXT" and (count := made(before)) > 1:
        return 1, [like(here, "NUM", number=count), here]  # `3 treble into successive loops`
    many = made(before)
    if many > 1 and ended(t, at + 1) and _on_its_like(here, before):
        number = like(here, "NUM", number=many)
        return 1, [like(here, "NEXT"), number, here]  # `2 treble on treble`
    if _many_on_many(here, before) or _all_of(t, at, before) or _along_edge(t, at, before):
        return 1, [like(here, "EACH"), here]
    if here.type != "NUM":
        return 0, []
    if types(t, at + 1, 1) in (["STITCH"], ["KIND"]):
        noun = t[at + 1]
        if noun.type == "STITCH" and here.number > 1 and _unnumbered(before):
            return 1, [like(here, "EACHOF"), like(here, "NEXT"), here]  # `tr in 2 tr`
        if noun.type == "STITCH" and _parted(before):
            kind = Kind("run", here.number, noun.name)
            run = replace(noun, type="KIND", kind=kind, start=here.start)
            return 2, [*_which(before, here), run]
        slips = here.number > 1 and any(x.name == "ss" for x in before[-3:])  # `slip over 3 dc`
        each = made(before) == here.number > 1 or (slips and made(before) == 1)
        if before[-1].type in ("PREP", "ALLIN", "THE") and each:
            return 1, [like(here, "NEXT"), here]
    if here.number > 1 and ended(t, at + 1) and _on_so_many(before) and not _under(before):
        _ask(before)  # `5 treble on the 5`: trebles, chains, or whatever comes
    named = any(x.kind == Kind("space", here.number) for x in before)
    if _parted(before) and _of_these(here, before):
        return 0, []  # `4 chain, 1 treble in the first of the 4`: they are of this row
    if _parted(before) and ended(t, at + 1) and not named and before[-1].type == "NEXT":
        runs = [x.kind for x in before if x.kind is not None and x.kind.name == "run"]
        if runs and runs[-1].size == here.number:
            return 1, [like(here, "KIND", runs[-1])]  # `centre of 3 tr, … centre of next 3`
        named = _chains_made(here, before)
        if named and before[-3].type == "ORD":
            _ask(before)
    chained = _parted(before) and _part(before).type == "CH"  # `centre ch of the 5`
    of_made = _parted(before) and _made_right_before(here, before)
    if of_made and not chained and not named:
        _ask(before)  # `7 ch, 1 sc in the 4th of the 7`
    if _parted(before) and ended(t, at + 1) and (named or chained or of_made):
        return 1, [*_which(before, here), _space(here, here.number, here)]
    if _parted(before) and ended(t, at + 1):
        return 1, [*_which(before, here), like(here, "KIND", Kind("block", here.number))]
    return 0, []


def _on_so_many(before: Sequence[Terminal]) -> bool:
    """Whether `on the`, `on each of the` ends here, with no word for next."""
    at = len(before) - 1
    if types(before, at - 1, 2) == ["EACHOF", "NEXT"] and before[at].text == before[at - 1].text:
        at -= 2
    at -= types(before, at, 1) == ["THE"]
    return types(before, at, 1) == ["PREP"]


def _of_these(number: Terminal, before: Sequence[Terminal]) -> bool:
    """Whether it is chains made right before, by a stitch that closes no picot: one that does may
    also be of the row below, which is asked."""
    stitch = next((x for x in reversed(before) if x.type in ("STITCH", "CLUSTER")), None)
    closes = stitch is not None and stitch.name in CLOSING
    return not closes and _made_right_before(number, before)


def _made_right_before(number: Terminal, before: Sequence[Terminal]) -> bool:
    """Whether so many chains were made right before the stitch that is being placed."""
    at = len(before) - 1
    while at >= 0 and before[at].type in WHICH | OPENS | {"KIND", "CH"}:
        at -= 1
    if at < 0:
        return False
    at -= 1 + (types(before, at - 1, 1) == ["NUM"])
    chains = types(before, at - 2, 3)
    made_ = before[at - 2].number or before[at - 1].number if at > 1 else 0
    return sorted(chains[:2]) == ["CH", "NUM"] and chains[2:] == ["SEP"] and made_ == number.number


def _chains_made(number: Terminal, before: Sequence[Terminal]) -> bool:
    """Whether so many chains are made in this row: `7 chain, 1 sc in the centre of the next 7`."""
    return any(
        {a.type, b.type} == {"CH", "NUM"} and number.number in (a.number, b.number)
        for a, b in pairwise(before)
    )


def _ask(before: Terminals) -> None:
    """Mark a place whose noun is guessed from the chains of this row, to be told."""
    at = next((n for n in range(len(before) - 1, 0, -1) if before[n].type == "PREP"), 0)
    if at:
        before[at] = replace(before[at], name="counted")


def _on_its_like(here: Terminal, before: Sequence[Terminal]) -> bool:
    """Whether `on treble` stands behind trebles, with no word for which."""
    prep = before[-1].text.split()[0] if before[-1].type == "PREP" else ""
    on = prep in ("on", "upon", "over")
    on = on or (prep in ("in", "into") and here.text.endswith("s") and made(before) > 1)
    stitch = before[-2] if len(before) > 1 else here
    return on and here.type == stitch.type == "STITCH" and here.name == stitch.name


def _many_on_many(here: Terminal, before: Sequence[Terminal]) -> bool:
    """Whether `trebles on [the] trebles` ends here: one on each of them."""
    at = len(before) - 1 - (before[-1].type == "THE")
    if here.type != "STITCH" or not here.text.endswith("s") or types(before, at, 1) != ["PREP"]:
        return False
    plural = _unnumbered(before[max(0, at - 2) : at + 1]) and before[at - 1].text.endswith("s")
    return plural and here.name == before[at - 1].name


def _all_of(t: Terminals, at: int, before: Sequence[Terminal]) -> bool:
    """Whether `in the loops` ends here: all of them."""
    kind, text = t[at].kind, t[at].text
    sized = kind is not None and kind.name == "space" and " of " in text  # `loops of ch 5`
    arches = t[at].many and (kind in ARCHES or sized) and ended(t, at + 1)
    placed = types(before, len(before) - 2, 2) == ["PREP", "THE"]
    return arches and (placed or (sized and before[-1].type == "PREP"))


def _along_edge(t: Terminals, at: int, before: Sequence[Terminal]) -> bool:
    """Whether `double crochet over the edge` is the whole row, with no number: one in each."""
    edge = t[at].kind == Kind("st") and t[at].text in ("edge", "hem")
    edge = edge and at < 6 and only_ends(t[at + 1 :])
    prep = len(before) - 1 - (before[-1].type == "THE")
    return edge and types(before, prep, 1) == ["PREP"] and _unnumbered(before[: prep + 1])


def _unnumbered(before: Sequence[Terminal]) -> bool:
    """Whether a stitch without a number stands right before this place: one, in each."""
    place = types(before, len(before) - 2, 2) == ["STITCH", "PREP"]
    place = place and before[-2].name != "ss"  # `slip over 3 dc` is the way along them
    return place and types(before, len(before) - 3, 1) not in (["NUM"], ["PREP"], ["NEXT"])


def _between(before: Sequence[Terminal]) -> bool:
    """Whether the place that is being named lies between two."""
    at = len(before) - 1
    while at > 0 and before[at].type in WHICH:
        at -= 1
    return before[at].type == "BETWEEN"


def _space(here: Terminal, number: int, last: Terminal) -> Terminal:
    kind = Kind("space", number)
    return replace(here, type="KIND", kind=kind, number=0, end=last.end, many=False, glued=False)


def _which(before: Sequence[Terminal], here: Terminal) -> Terminals:
    return [] if before[-1].type in WHICH else [like(here, "THE")]


def _by_count(t: Terminals, at: int, before: Terminals) -> bool:
    """Whether `N chain` names a space: not where `next` or `first` count single chains.

    `5 sc in the next 5 chain` is one in each; 7, or a list, can only be meant for one space.
    """
    if _parted(before):
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


def _under(before: Sequence[Terminal]) -> bool:
    """Whether `under`, `under every` stands before: there is room under a run of chains only."""
    prep = next((x for x in reversed(before) if x.type not in WHICH), None)
    return prep is not None and prep.text.split()[-1] in ("under", "u", "beneath")


def _parted(before: Sequence[Terminal]) -> bool:
    """Whether a part is named before: `3rd of the`, `centre of next`."""
    at = _of(before)
    return at > 0 and before[at].type == "OF" and before[at - 1].type in NOUNS | {"ORD", "CENTRE"}


def _part(before: Sequence[Terminal]) -> Terminal:
    """What is named before `of the`, `of every`."""
    return before[_of(before) - 1]


def _of(before: Sequence[Terminal]) -> int:
    at = len(before) - 1
    while at >= 0 and before[at].type in WHICH - {"CENTRE"}:
        at -= 1
    return at


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


def parts(t: Terminals) -> Terminals:
    """`the 3rd of the 5 chain`: the 3rd *chain*; of the 5 treble, the 3rd *st*."""
    found: Terminals = []
    for at, here in enumerate(t):
        found.append(here)
        behind = [x.type for x in t[at + 1 : at + 5] if x.type != "THE"]
        ring = behind[:3] == ["OF", "NUM", "CH"]
        if here.type != "ORD" or types(t, at + 1, 1) != ["OF"] or ring:
            continue
        of = next((x for x in t[at + 2 : at + 6] if x.type in NOUNS), None)
        chains = of is not None and (
            of.type == "CH" or (of.kind is not None and of.kind.name in SPACES)
        )
        found.append(like(here, "CH") if chains else like(here, "KIND", Kind("st")))
    return found
