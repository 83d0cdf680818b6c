"""What books name shortly: `the 3 chain`, `in next`, `in one`, `the 3rd of the 5 treble`.

Each pass puts in what is left unsaid, or the usual words for it, so that the
grammar has one way to name a place. What the words then mean is in
`grammar/README.md`, "How the books say things".
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.terminals import Terminal
from border.text.tree import Kind

Terminals = list[Terminal]

_NOUNS = frozenset({"KIND", "STITCH", "CH", "PICOT"})
_OPENS = frozenset({"PREP", "ALLIN", "OF", "OR", "BETWEEN", "SKIP"})
_WHICH = frozenset({"NEXT", "THE", "EACH", "EVERY", "SAME", "SKIPPED", "ORD", "CENTRE"})
_ENDS = frozenset({"", "SEP", "RP", "LP", "STAR", "REPEAT", "ENDING", "ENDWITH", "TOEND", "MOD"})
_ARCHES = (Kind("loop"), Kind("space"))
_OF_CHAINS = ("space", "loop")
_CLOSING = ("sc", "ss")


def _types(t: Sequence[Terminal], at: int, count: int) -> list[str]:
    return [x.type for x in t[at : at + count]]


def _like(here: Terminal, type_: str, kind: Kind | None = None, number: int = 0) -> Terminal:
    """A terminal that the text leaves unsaid, where another one stands."""
    return replace(here, type=type_, kind=kind, number=number, name="", glued=False, chain=False)


def orders(t: Terminals) -> Terminals:
    """`the 2 following stitches`, `each of the 3`, `all the loops`, `next stitch but 3`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here, behind = t[at], _types(t, at + 1, 3)
        before = found[-1].type if found else ""
        if here.type == "NUM" and before in _OPENS | {"THE", "EACHOF"} and _turned(t, at + 1):
            found += [t[at + 1], here]
            at += 2
            continue
        if here.type == "TO" and before == "STITCH" and behind[:1] in (["EACH"], ["EVERY"]):
            here = replace(here, type="PREP")
        if here.type == "EACHOF" and behind[:1] == ["THE"]:
            t = [*t[: at + 1], *t[at + 2 :]]
            behind = _types(t, at + 1, 3)
        if here.type == "EACHOF" and behind[:1] == ["NUM"] and behind[1:2] != ["NEXT"]:
            found += [here, _like(here, "NEXT")]
            at += 1
            continue
        if here.type == "EACHOF" and behind and behind[0] in _NOUNS:
            here = replace(here, type="EACH")
        if here.type == "ALL" and before in _OPENS:
            at += behind[:1] == ["THE"]
            here = replace(here, type="EACH")
        if here.type == "NEXT":
            taken, ordinal = _but(t, at)
            if ordinal is not None:
                found.append(ordinal)
                found += [t[at + 1]] if t[at + 1].type in _NOUNS else []
                at += taken
                continue
        found.append(here)
        at += 1
    return found


def _turned(t: Terminals, at: int) -> bool:
    """Whether `next stitches` or `first stitches` stands behind its number."""
    here, behind = t[at : at + 1], _types(t, at + 1, 2)
    if not here or not behind or behind[0] not in _NOUNS or behind[1:] == ["OF"]:
        return False
    return here[0].type == "NEXT" or (here[0].type == "ORD" and here[0].number in (1, -1))


def _but(t: Terminals, at: int) -> tuple[int, Terminal | None]:
    """`next [stitch] but 3` as the 4th: how many terminals that takes, and the ordinal."""
    noun = at + 1 < len(t) and t[at + 1].type in _NOUNS
    but = at + 1 + noun
    if _types(t, but, 2) != ["BUT", "NUM"]:
        return 0, None
    return but + 2 - at, _like(t[at], "ORD", number=t[but + 1].number + 1)


# --- chains and stitches named by their number ------------------------------------


def same_again(t: Terminals) -> Terminals:
    """`1 double in it` goes into the same place; `2 in 1` are the stitches named before."""
    found: Terminals = []
    stitch: Terminal | None = None
    for at, here in enumerate(t):
        behind = _types(t, at + 1, 1)
        if here.type == "STITCH" and (not found or found[-1].type in ("NUM", "SEP", "LP", "STAR")):
            stitch = here
        if here.type == "STRAY" and here.text == "it" and found and found[-1].type == "PREP":
            found += [_like(here, "SAME"), _like(here, "PLACE")]
            continue
        if here.type == "KIND" and here.kind == Kind("st") and behind == ["PREP"]:
            counted = bool(found) and found[-1].type == "NUM" and _opens(found[:-1])
            if counted and stitch is not None:
                here = replace(stitch, end=here.end)
                _set_apart(found, len(found) - 2)
        found.append(here)
        if here.type == "NUM" and behind == ["PREP"] and stitch is not None and _opens(found[:-1]):
            found.append(replace(stitch, start=here.start, end=here.end, glued=False))
            _set_apart(found, len(found) - 3)
    return found


def _set_apart(found: Terminals, at: int) -> None:
    """In `1 plain, 2 in the next` only what stands behind the separator goes into that."""
    if at >= 0 and found[at].type == "SEP":
        found[at] = replace(found[at], name="hard")


def _opens(found: Sequence[Terminal]) -> bool:
    return not found or found[-1].type in ("SEP", "LP", "STAR")


def betweens(t: Terminals) -> Terminals:
    """`between the 1st and 2nd treble`, `in the space between the treble`: between the next 2."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        space = here.type == "KIND" and here.kind in _ARCHES and found and _types(t, at + 1, 1)
        if space == ["BETWEEN"] and found[-1].type in ("PREP", "THE"):
            while found and found[-1].type in ("PREP", "THE"):
                found.pop()
            at += 1
            continue
        found.append(here)
        at += 1
        if here.type != "BETWEEN":
            continue
        named = at + (_types(t, at, 1) == ["THE"])
        pair = [(x.type, x.number) for x in t[named : named + 3]]
        if pair == [("ORD", 1), ("AND", 0), ("ORD", 2)]:
            named += 3
        elif _types(t, named, 1) != ["STITCH"]:
            continue
        if named < len(t) and t[named].type in _NOUNS:
            found += [_like(here, "NEXT"), _like(here, "NUM", number=2)]
            at = named
    return found


def counted_places(t: Terminals) -> Terminals:
    """`the 3 chain` is a space of 3, `on the 5 treble` the next 5, `3rd of the 5 treble` a run."""
    found: Terminals = []
    at = 0
    while at < len(t):
        taken, named = _counted(t, at, found)
        found += named if taken else [t[at]]
        at += taken or 1
    return found


def _counted(t: Terminals, at: int, before: Terminals) -> tuple[int, Terminals]:
    """How many terminals at a place are one name, and the name that the grammar has."""
    here = t[at]
    if here.type == "KIND" and here.kind in _ARCHES and _types(t, at + 1, 1) == ["OF"]:
        of = at + 2 + (_types(t, at + 2, 1) == ["THE"])
        if _types(t, of, 2) == ["NUM", "CH"]:
            return of + 2 - at, [_space(here, t[of].number, t[of + 1])]
        if _types(t, of, 1) == ["CH"]:
            return of + 1 - at, [here]
    each = bool(before) and before[-1].type in ("EACH", "EVERY")
    if each and here.kind == Kind("st") and _types(t, at + 1, 3) == ["OF", "THE", "CH"]:
        return 4, [here]
    if here.type == "CH" and _types(t, at + 1, 2) == ["OF", "NUM"] and _ended(t, at + 3):
        return 3, [_space(here, t[at + 2].number, t[at + 2])]
    if not before or before[-1].type not in _OPENS | _WHICH or _between(before):
        return 0, []
    if here.many and before[-1].type == "NEXT" and (made := _made(before)) > 1:
        return 1, [_like(here, "NUM", number=made), here]  # 3 treble into successive loops
    if here.text == "chain" and _ended(t, at + 1) and (_parted(before) or _round_it(before)):
        return 1, [_like(here, "KIND", Kind("space"))]
    glued = _types(t, at, 2) in (["CH", "NUM"], ["NUM", "CH"]) and t[at + 1].glued
    if glued:
        number = t[at].number or t[at + 1].number
        return 2, [*_which(before, here), _space(here, number, t[at + 1])]
    if _types(t, at, 2) == ["NUM", "CH"] and _by_count(t, at, before):
        if _on_each(t[at], before):
            return 2, [_like(here, "NEXT"), *t[at : at + 2]]
        return 2, [*_which(before, here), _space(here, here.number, t[at + 1])]
    if here.type == "NUM" and _types(t, at + 1, 1) in (["STITCH"], ["KIND"]):
        noun = t[at + 1]
        if noun.type == "STITCH" and _parted(before):
            run = Kind("run", here.number, noun.name)
            return 2, [
                *_which(before, here),
                replace(noun, type="KIND", kind=run, start=here.start),
            ]
        if before[-1].type in ("PREP", "ALLIN", "THE") and _made(before) == here.number > 1:
            return 1, [_like(here, "NEXT"), here]
    if here.type == "NUM" and _parted(before) and _ended(t, at + 1):
        return 1, [*_which(before, here), _like(here, "KIND", Kind("block", here.number))]
    return 0, []


def _between(before: Sequence[Terminal]) -> bool:
    """Whether the place that is being named lies between two."""
    at = len(before) - 1
    while at > 0 and before[at].type in _WHICH:
        at -= 1
    return before[at].type == "BETWEEN"


def _space(here: Terminal, number: int, last: Terminal) -> Terminal:
    kind = Kind("space", number)
    return replace(here, type="KIND", kind=kind, number=0, end=last.end, many=False, glued=False)


def _which(before: Sequence[Terminal], here: Terminal) -> Terminals:
    return [] if before[-1].type in _WHICH else [_like(here, "THE")]


def _by_count(t: Terminals, at: int, before: Terminals) -> bool:
    """Whether `N chain` names a space: not where `next` or `first` count single chains.

    `5 sc in the next 5 chain` is one in each; 7, or a list, can only be meant for one space.
    """
    if _parted(before):
        return not _closes_ring(t, at, before)
    number, spelled = t[at].number, t[at + 1].text == "chain"
    if before[-1].type in ("NEXT", "ORD", "CENTRE"):
        listed = [x.type for x in before[-4:] if x.type != "THE"][-3:-1]
        several = listed in (["RP", "PREP"], ["SEP", "ALLIN"])
        return number > 1 and spelled and (several or _made(before) not in (0, 1, number))
    return before[-1].type != "SKIP"


def _parted(before: Sequence[Terminal]) -> bool:
    """Whether a part is named before: `3rd of the`, `centre of next`."""
    at = len(before) - 1
    while at >= 0 and before[at].type in _WHICH - {"CENTRE"}:
        at -= 1
    return at > 0 and before[at].type == "OF" and before[at - 1].type in _NOUNS | {"ORD", "CENTRE"}


def _closes_ring(t: Terminals, at: int, before: Terminals) -> bool:
    """`4 ch, 1 sc in the first of the 4 ch` closes a picot; of other chains, it is asked."""
    words = [x for x in before[-12:] if x.type not in ("THE", "SEP")]
    if _types(words, len(words) - 2, 2) != ["ORD", "OF"] or words[-2].number != 1:
        return False
    return _chains_before(words[:-3]) > 0


def _round_it(before: Sequence[Terminal]) -> bool:
    """`under the chain`, `round the chain`: what stitches go round is the whole of it."""
    prep = next((x for x in reversed(before) if x.type == "PREP"), None)
    under = prep is not None and prep.text in ("under", "beneath", "round", "around")
    return under and before[-1].type in ("PREP", "THE")


def _on_each(number: Terminal, before: Terminals) -> bool:
    """`3 treble on the 3 chain`: one on each."""
    prep = next((x for x in reversed(before) if x.type in ("PREP", "OF")), None)
    on = prep is not None and prep.text.split()[0] in ("on", "upon", "onto")
    return on and _made(before) == number.number > 1 and before[-1].type in ("PREP", "THE")


def _made(before: Sequence[Terminal]) -> int:
    """The number of stitches that stand before the place that is being named."""
    at = len(before) - 1
    while at >= 0 and before[at].type in _WHICH | _OPENS | {"MOD"}:
        at -= 1
    if at < 0 or before[at].type not in ("STITCH", "CLUSTER"):
        return 0
    if at and before[at - 1].type == "NUM":
        return before[at - 1].number
    return 1


def _ended(t: Sequence[Terminal], at: int) -> bool:
    return at >= len(t) or t[at].type in _ENDS


def parts(t: Terminals) -> Terminals:
    """`the 3rd of the 5 chain`: the 3rd *chain*; of the 5 treble, the 3rd *st*."""
    found: Terminals = []
    for at, here in enumerate(t):
        found.append(here)
        behind = [x.type for x in t[at + 1 : at + 5] if x.type != "THE"]
        ring = behind[:3] == ["OF", "NUM", "CH"]
        if here.type != "ORD" or _types(t, at + 1, 1) != ["OF"] or ring:
            continue
        of = next((x for x in t[at + 2 : at + 6] if x.type in _NOUNS), None)
        chains = of is not None and (
            of.type == "CH" or (of.kind is not None and of.kind.name in _OF_CHAINS)
        )
        found.append(_like(here, "CH") if chains else _like(here, "KIND", Kind("st")))
    return found


# --- rings of chains ----------------------------------------------------------------


def rings(t: Terminals) -> Terminals:
    """`5 chain, 1 single in the 1st`: the picot, as `in the first of the 5 chain`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        found.append(here)
        at += 1
        if here.type != "ORD" or here.number != 1:
            continue
        words = [x for x in found[-12:-1] if x.type not in ("THE", "SEP")]
        chains = _chains_before(words[:-1]) if words and words[-1].type == "PREP" else 0
        named = _types(t, at, 2) == ["OF", "CH"]
        if chains > 2 and (named or _ended(t, at)):
            chain = next(x for x in reversed(words) if x.type == "CH")
            found += [_like(here, "OF"), _like(here, "NUM", number=chains)]
            found.append(replace(chain, start=here.start, end=here.end))
            at += 2 * named
    return found


def _chains_before(words: Sequence[Terminal]) -> int:
    """The chains right before one closing stitch, by the terminals up to its name."""
    if not words or words[-1].type != "STITCH" or words[-1].name not in _CLOSING:
        return 0
    rest = list(words[:-1])
    one = bool(rest) and rest[-1].type == "NUM" and rest[-1].number == 1
    chain = _types(rest, len(rest) - 2, 1) == ["CH"]
    if one and (not chain or _types(rest, len(rest) - 3, 1) == ["NUM"]):
        rest.pop()
    pair = _types(rest, max(0, len(rest) - 2), 2)
    if pair == ["NUM", "CH"]:
        return rest[-2].number
    return rest[-1].number if pair == ["CH", "NUM"] else 0


# --- nouns left out -----------------------------------------------------------------


def unsaid(t: Terminals) -> Terminals:
    """`in next`, `in the 3rd`, `in one`, `over the 9`: with the noun that is left out.

    It is that of the place or skip before it in the text; bare stitches, a bare
    skip, or nothing before it: st.
    """
    found: Terminals = []
    last = Kind("st")
    for at, here in enumerate(t):
        found.append(here)
        before = found[-2].type if len(found) > 1 else ""
        if here.type in _NOUNS and before in _OPENS | _WHICH | {"NUM", "PAIR"}:
            last = _noun(here, found, last)
        if before == "SKIP" and here.type == "NUM" and _types(t, at + 1, 1) != ["KIND"]:
            last = Kind("st")
        if not _ended(t, at + 1) or before not in _OPENS | _WHICH:
            continue
        if here.type == "NUM" and before != "SKIP" and before != "OF":
            if before in ("PREP", "THE") and (here.number == 1 or _made(found[:-1]) == here.number):
                found.insert(-1, _like(here, "NEXT"))
            found.append(replace(_like(here, "KIND", Kind("st")), text="st"))
        elif before == "BETWEEN":
            continue
        elif here.type in ("NEXT", "EACH", "ORD", "EVERY") and not _is_same(found):
            found.append(_like(here, "KIND", last))
    return found


def _is_same(found: Sequence[Terminal]) -> bool:
    return any(x.type == "SAME" for x in found[-3:])


def _noun(here: Terminal, found: Sequence[Terminal], last: Kind) -> Kind:
    """What a noun names, if it is that of a place or a skip and not a count of stitches."""
    if here.type == "KIND":
        return here.kind or last
    opened = [x.type for x in found[-4:-1]]
    if not any(type_ in _OPENS | _WHICH for type_ in opened) or opened[-1] == "SEP":
        return last
    if here.type == "STITCH":
        return Kind(here.name)
    return Kind("ch" if here.type == "CH" else "picot")
