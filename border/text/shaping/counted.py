"""Places named by a number: `the 3 chain` is a space, `3rd of the 5 treble` a part of a run.

Each pass puts in the usual words for it, so that the grammar has one way to name
a place. What they then mean is in `grammar/README.md`, "How the books say things".
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from border.text.shaping.counted_chains import (
    by_chains,
    is_parted,
    is_under,
    of_chain,
    part_before,
    space_of,
    which_of,
)
from border.text.terminals import Terminal
from border.text.tree import SPACES, Kind
from border.text.vocabulary import vocabulary
from border.text.wording.missed import MADE
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
from border.text.wording.rings import CLOSING


def counted_places(t: Terminals) -> Terminals:
    """`the 3 chain` is a space of 3, `on the 5 treble` the next 5, `3rd of the 5 treble` a run."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        opened = bool(found) and found[-1].type in _OPENED
        if not opened and here.type not in _OF_CHAINS:
            found.append(here)
            at += 1
            continue
        of = here.type in _OF_CHAINS and types(t, at + 1, 1) == ["OF"]
        one = here.type == "KIND" and not here.many  # `the next loop` is named already
        opened = opened and (of or not one or found[-1].type not in _ONE)
        taken, named = _counted(t, at, found, opened) if opened or of else (0, [])
        found += named if taken else [here]
        at += taken or 1
    return _alike(found)


_OPENED = OPENS | WHICH | {"TO"}
_ONE = frozenset({"NEXT", "EACH", "EVERY", "ORD", "SAME"})
_OF_CHAINS = frozenset({"KIND", "CH"})


def _alike(t: Terminals) -> Terminals:
    """`1 dc in the next 3 chain, 4 tr in the following 3 chain`: where one can only be a space, so
    is the other."""
    spaces = {x.kind for x in t if x.type == "KIND" and _by_its_number(x)}
    if not spaces:
        return t
    found: Terminals = []
    at = 0
    while at < len(t):
        next_ = past(t, at + 1, "THE") if t[at].type == "PREP" else len(t)
        shape = types(t, next_, 3) in (["NEXT", "NUM", "CH"], ["ORD", "NUM", "CH"])
        shape = (
            shape and (t[next_].type == "NEXT" or t[next_].number == 1) and made(t[: at + 1]) == 1
        )
        if shape and Kind("space", t[next_ + 1].number) in spaces:
            space = space_of(t[next_ + 1], t[next_ + 1].number, t[next_ + 2])
            found += [*t[at : next_ + 1], space]
            at = next_ + 3
            continue
        found.append(t[at])
        at += 1
    return found


def _by_its_number(here: Terminal) -> bool:
    """Whether a book names a space by its chains alone: `the 3 chain`."""
    size = here.kind.size if here.kind is not None and here.kind.name == "space" else None
    return bool(size) and (here.text == str(size) or vocabulary().numbers.get(here.text) == size)


def _counted(t: Terminals, at: int, before: Terminals, opened: bool) -> tuple[int, Terminals]:
    """How many terminals at a place are one name, and the name that the grammar has."""
    if types(t, at + 2, 1) == ["ATONCE"]:
        return 0, []  # `the next 5 chain at once` are five
    taken, named = of_chain(t, at, before, opened)
    if taken or not opened or _between(before):
        return taken, named
    taken, named = by_chains(t, at, before)
    return (taken, named) if taken else _by_stitches(t, at, before)


_ONE_BY_ONE = frozenset({"successive", "consecutive"})
"""Of these there are several, though a short name of a stitch has no plural: `successive tr`."""


def _by_stitches(t: Terminals, at: int, before: Terminals) -> tuple[int, Terminals]:
    """`3rd of the 5 treble`: the run of so many; `5 treble on the 5`: the next 5."""
    here = t[at]
    several = here.many or (here.type == "STITCH" and before[-1].text in _ONE_BY_ONE)
    if several and before[-1].type == "NEXT" and (count := made(before)) > 1:
        return 1, [like(here, "NUM", number=count), here]  # `3 treble into successive loops`
    many = made(before)
    if many > 1 and ended(t, at + 1) and _on_its_like(here, before):
        number = like(here, "NUM", number=many)
        if types(t, at + 1, 1) in (["WITH"], ["DIVIDED"]):
            _ask(before)  # `3 treble on treble with 2 chain between each`: a fan on one?
        return 1, [like(here, "NEXT"), number, here]  # `2 treble on treble`
    if _many_on_many(here, before) or _all_of(t, at, before) or _along_edge(t, at, before):
        return 1, [like(here, "EACH"), here]
    if here.type != "NUM":
        return 0, []
    if types(t, at + 1, 1) in (["STITCH"], ["KIND"]):
        noun = t[at + 1]
        if noun.type == "STITCH" and here.number > 1 and _one_on_each(before):
            return 1, [like(here, "EACHOF"), like(here, "NEXT"), here]  # `tr in the 2 tr`
        if noun.type == "STITCH" and is_parted(before):
            if before[-1].text == "these":
                _ask(before, MADE)  # `4 chain, 1 dc on the last of these 3 treble`
            kind = Kind("run", here.number, noun.name)
            run = replace(noun, type="KIND", kind=kind, start=here.start)
            return 2, [*which_of(before, here), run]
        slips = here.number > 1 and any(x.name == "ss" for x in before[-3:])  # `slip over 3 dc`
        each = made(before) == here.number > 1 or (slips and made(before) == 1)
        shared = _fewer(here, before) or _more(here, before)
        each = each or (noun.type == "STITCH" and shared)
        if before[-1].type in ("PREP", "ALLIN", "THE") and each:
            return 1, [like(here, "NEXT"), here]
    if here.number > 1 and ended(t, at + 1) and _on_so_many(before) and not is_under(before):
        _ask(before)  # `5 treble on the 5`: trebles, chains, or whatever comes
        if before[-1].type in ("PREP", "THE") and _one_on_each(before):
            return 1, [like(here, "EACHOF"), like(here, "NEXT"), here]  # `dc on the 3`
        shared = _fewer(here, before) or _more(here, before)
        if before[-1].type in ("PREP", "THE") and shared:
            return 1, [like(here, "NEXT"), here]
    counted = _counted_last(here.number, before)
    named = counted is not None and counted.name == "space"
    if is_parted(before) and _of_these(here, before):
        return 0, []  # `4 chain, 1 treble in the first of the 4`: they are of this row
    chained = is_parted(before) and part_before(before).type == "CH"  # `centre ch of the 5`
    if is_parted(before) and ended(t, at + 1) and not (named or chained):
        if counted is not None and counted.name == "run":
            # `centre of 3 tr, … centre of next 3`; `1st of the 3 tr, … last of the 3`
            return 1, [*which_of(before, here), like(here, "KIND", counted)]
        named = before[-1].type == "NEXT" and _chains_made(here, before)
        if named and before[-3].type == "ORD":
            _ask(before)
    of_made = is_parted(before) and ended(t, at + 1) and _made_right_before(here, before)
    if of_made and not chained and not named:
        _ask(before)  # `7 ch, 1 sc in the 4th of the 7`
    if is_parted(before) and ended(t, at + 1) and (named or chained or of_made):
        return 1, [*which_of(before, here), space_of(here, here.number, here)]
    if is_parted(before) and ended(t, at + 1):
        return 1, [*which_of(before, here), like(here, "KIND", Kind("block", here.number))]
    return 0, []


def _counted_last(number: int, before: Sequence[Terminal]) -> Kind | None:
    """The run, or the space, of so many that was named last; None where none was."""
    kinds = [x.kind for x in before if x.kind is not None and x.kind.size == number]
    return next((kind for kind in reversed(kinds) if kind.name in ("run", "space")), None)


def _on_so_many(before: Sequence[Terminal]) -> bool:
    """Whether `on the`, `on each of the` ends here, with no word for next."""
    at = len(before) - 1
    if types(before, at - 1, 2) == ["EACHOF", "NEXT"] and before[at].text == before[at - 1].text:
        at -= 2
    at -= types(before, at, 1) == ["THE"]
    return types(before, at, 1) == ["PREP"]


def _of_these(number: Terminal, before: Sequence[Terminal]) -> bool:
    """Whether it is chains made right before, by a stitch that closes no picot: one that does may
    also be of the row below, which is asked; so may be `1 treble in the centre of the 5`."""
    if is_parted(before) and part_before(before).type == "CENTRE":
        return False
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
    parted = chains[2:] in (["SEP"], ["AND"])
    return sorted(chains[:2]) == ["CH", "NUM"] and parted and made_ == number.number


def _chains_made(number: Terminal, before: Sequence[Terminal]) -> bool:
    """Whether so many chains are made in this row: `7 chain, 1 sc in the centre of the next 7`."""
    return any(
        {a.type, b.type} == {"CH", "NUM"} and number.number in (a.number, b.number)
        for a, b in pairwise(before)
    )


def _ask(before: Terminals, doubt: str = "counted") -> None:
    """Mark a place whose noun is guessed from the chains of this row, to be told."""
    at = next((n for n in range(len(before) - 1, 0, -1) if before[n].type == "PREP"), 0)
    if at:
        before[at] = replace(before[at], name=doubt)


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


def _one_on_each(before: Sequence[Terminal]) -> bool:
    """Whether `dc on [the]` ends here, with no number: not `dc round the`, which may take all of
    them as one."""
    the = before[-1].type == "THE"
    prep = before[-2 if the else -1].text.split() if len(before) > 1 else []
    along = not the or prep[:1] in (["on"], ["upon"], ["over"], ["in"], ["into"])
    return along and _unnumbered(before[:-1] if the else before)


def _fewer(here: Terminal, before: Sequence[Terminal]) -> bool:
    """`3 double over the 4`: how they are shared out over these is asked, as of the next 4."""
    return 1 < made(before) < here.number


def _more(here: Terminal, before: Sequence[Terminal]) -> bool:
    """`5 double over 3`, where a star widens: asked as well, as of the next 3."""
    prep = next((x for x in reversed(before) if x.type == "PREP"), here)
    return made(before) > here.number > 1 and prep.text in ("on", "upon", "over")


def _between(before: Sequence[Terminal]) -> bool:
    """Whether the place that is being named lies between two."""
    at = len(before) - 1
    while at > 0 and before[at].type in WHICH:
        at -= 1
    return before[at].type == "BETWEEN"


def _is_unsaid_part(found: Sequence[Terminal]) -> bool:
    """Whether these words end in `3rd of [the]`, with the chain that `parts` put there."""
    whole = len(found)
    while whole and found[whole - 1].type == "THE":
        whole -= 1
    part = types(found, whole - 3, 3) == ["ORD", "CH", "OF"]
    return part and found[whole - 2].text == found[whole - 3].text


def parts(t: Terminals) -> Terminals:
    """`the 3rd of the 5 chain`: the 3rd *chain*; of the 5 treble, the 3rd *st*; `3rd of ch`: of a
    loop of chains."""
    found: Terminals = []
    for at, here in enumerate(t):
        if here.type == "CH" and _is_unsaid_part(found):
            here = replace(here, type="KIND", kind=Kind("space"), many=False)
        found.append(here)
        behind = [x.type for x in t[at + 1 : at + 5] if x.type != "THE"]
        ring = behind[:3] == ["OF", "NUM", "CH"]
        if here.type != "ORD" or types(t, at + 1, 1) != ["OF"] or ring:
            continue
        end = next((n for n in range(at + 2, at + 6) if ended(t, n)), at + 6)
        of = next((x for x in t[at + 2 : end] if x.type in NOUNS), None)
        chains = of is not None and (
            of.type == "CH" or (of.kind is not None and of.kind.name in SPACES)
        )
        found.append(like(here, "CH") if chains else like(here, "KIND", Kind("st")))
    return found
