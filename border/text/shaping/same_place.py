"""What goes where the work went before, and what is made again: `in it`, `the same in the next`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.shaping.sentences import shell_before
from border.text.terminals import Terminal
from border.text.tree import SPACES, Kind
from border.text.wording.missed import MADE
from border.text.wording.passing import (
    HOW_OFTEN,
    NOUNS,
    OPENS,
    WHICH,
    Terminals,
    behind_chains,
    chains_at,
    ended,
    like,
    past,
    stitch_left_out,
    types,
)

GOES_ON = "goes on"
"""The name of `in the same` that is taken for the next where a repeat comes round, though it goes
on by itself."""


def of_the_same(t: Terminals) -> Terminals:
    """`in the 4th of the same`, behind `in the 2nd of the 5 chain`: in the 4th, of those too."""
    found: Terminals = []
    at = 0
    while at < len(t):
        same = past(t, at + 1, "THE") if t[at].type == "OF" else len(t)
        named = types(found, len(found) - 2, 2) == ["ORD", "STITCH"]  # `in the last dc of the same`
        nth = named or types(found, len(found) - 1, 1) == ["ORD"]
        if nth and types(t, same, 1) == ["SAME"] and ended(t, same + 1):
            del found[len(found) - named :]
            at = same + 1
            continue
        found.append(t[at])
        at += 1
    return found


def same_again(t: Terminals) -> Terminals:
    """`1 double in it` goes into the same place; `2 in 1` are the stitches named before."""
    found: Terminals = []
    stitch: Terminal | None = None
    for at, here in enumerate(t):
        behind = types(t, at + 1, 1)
        number = found[-1:] != [] and found[-1].type == "NUM"
        counted = number and types(found, len(found) - 2, 1)[:1] != [] and _is_place(found[-2])
        if here.type == "STITCH" and not counted and (number or _opens(found)):
            stitch = here
        if here.type == "STRAY" and here.text == "there" and found and found[-1].type == "STITCH":
            found += [like(here, "PREP"), like(here, "SAME"), like(here, "PLACE")]
            continue
        if here.type == "STRAY" and here.text == "it" and found and found[-1].type == "PREP":
            if all(x.type in ("SEP", "AND") for x in found[:-1]):
                found.pop()  # `make a chain of the length required, and upon it work …`
                continue
            if behind_chains(found[:-1]):  # `6 chain, 5 double on it`
                found[-1] = replace(found[-1], name=MADE)
            found += [like(here, "SAME"), like(here, "PLACE")]
            continue
        if here.type == "STRAY" and here.text in ("ring", "circle") and found:
            here = like(here, "KIND", Kind("loop")) if found[-1].type in OPENS | WHICH else here
        if here.type == "KIND" and here.kind == Kind("st") and behind == ["PREP"]:
            counted = bool(found) and found[-1].type == "NUM" and _opens(found[:-1])
            if counted and stitch is not None:
                here = replace(stitch, end=here.end)
                _set_apart(found, len(found) - 2)
        found.append(here)
        another = here.text == "another"  # once more what was made last, a shell perhaps
        bare = here.type == "NUM" and behind == ["PREP"] and not another
        if bare and stitch is not None and _opens(found[:-1]):
            found.append(replace(stitch, start=here.start, end=here.end, glued=False))
            _set_apart(found, len(found) - 3)
    return found


def the_same_in(t: Terminals) -> Terminals:
    """`(2 dc, 2 ch, 2 dc) in the first loop, 3 ch, the same in the next`: once more what was made
    in a place last; in one that is named, what was made in such a one last."""
    found: Terminals = []
    made_last: Terminals = []
    made_in: dict[tuple[str, Kind | None, str], Terminals] = {}
    noun: Terminals = []
    opening = 0
    again = False
    behind, unclear = 0, len(t)
    for n, here in enumerate(t):
        if n < behind:
            continue
        one_more = here.type == "NUM" and here.text == "another"
        same = (here.type == "SAME" or one_more) and types(t, n + 1, 1) == ["PREP"]
        if same and types(t, n + 2, 1) in (["EACH"], ["EVERY"]):
            same = False  # `the same under each loop`, which ends the row
        if same and made_last and types(found, len(found) - 1, 1) in (["THE"], ["SEP"], ["AND"]):
            if found[-1].type == "THE":
                found.pop()
            if _says_more(t, n, found):
                unclear = n + 1
            elif several := _with_chains(t, n, found, made_last):
                found += several
                behind = n + 5
                continue
            noun_at = past(t, n + 2, "THE", "NEXT", "ORD")
            ahead = t[noun_at] if noun_at < len(t) else here
            found += made_in.get((ahead.type, ahead.kind, ahead.name), made_last)
            again = True
            continue
        if here.type == "PREP" and found:
            made_last = _made_there(found, opening) or made_last
        opening = len(found) if here.type == "LP" else opening
        if n == unclear:
            here = replace(here, name=here.name or "counted")
        found.append(here)
        named = here.type in NOUNS and n > 0 and t[n - 1].type in OPENS | WHICH
        noun = [here] if named else noun
        if named:
            made_in[here.type, here.kind, here.name] = made_last
        if here.type == "NEXT" and again and ended(t, n + 1):
            found += noun  # `the same in next`
            again = False
    return found


def _says_more(t: Terminals, at: int, found: Terminals) -> bool:
    """Whether more than one step stands before `and the same in the next two loops`, or chains
    come first: what is the same is then not said."""
    start = next((n + 1 for n in range(len(found) - 1, -1, -1) if found[n].type == "STAR"), 0)
    places = [n for n in range(start, len(found)) if found[n].type == "PREP"]
    again = any(x.type == "SAME" for x in found[start:])
    chains = sorted(types(found, start, 2)) == ["CH", "NUM"]
    several = types(t, at + 2, 2) == ["NEXT", "NUM"] and (len(places) > 1 or chains)
    return again or several


def _with_chains(t: Terminals, at: int, found: Terminals, made: Terminals) -> Terminals:
    """`1 dc in loop, 5 ch, and the same in next two loops`: with the chains, so often."""
    parted = past(found[::-1], 0, "SEP", "AND")
    chains = found[len(found) - parted - 2 : len(found) - parted]
    counted = types(t, at + 1, 4) == ["PREP", "NEXT", "NUM", "KIND"] and t[at + 3].number > 1
    if not counted or not ended(t, at + 5) or sorted(types(chains, 0, 2)) != ["CH", "NUM"]:
        return []
    one = replace(t[at + 4], many=False)
    place = [t[at + 1], t[at + 2], one, like(t[at], "SEP")]
    times = replace(like(t[at + 3], "TIMES"), number=t[at + 3].number)
    return [like(t[at], "LP"), *made, *place, *chains, like(t[at], "RP"), times]


def _made_there(found: Terminals, opening: int) -> Terminals:
    """The stitch, the bracket, or the list that begins and ends with the same stitch, that the
    place goes with which opens behind these."""
    if found[-1].type == "RP" and found[opening].type == "LP":
        return found[opening:]
    if found[-1].type == "STITCH":
        start = shell_before([*found, like(found[-1], "SEP")])
        if start is not None and len(found) - start > 2:
            return [like(found[start], "LP"), *found[start:], like(found[-1], "RP")]
        return found[-1 - (types(found, len(found) - 2, 1) == ["NUM"]) :]
    return []


def first_same(t: Terminals) -> Terminals:
    """`3 treble, 3 chain, 3 treble, in the same loop` before any other step: in one, the next; so
    is `1 chain, 1 double in same place`, which is where the round before was joined."""
    at = next((n for n, x in enumerate(t) if x.type in OPENS), len(t))
    same = past(t, at + 1, "THE")
    if types(t, at, 1) != ["PREP"] or types(t, same, 1) != ["SAME"]:
        return t
    start = past(t, 0, "SEP", "STAR")
    if space := _risen_in(t, start, same):
        here = t[same]
        begun = [like(here, "BEGIN"), like(here, "PREP"), like(here, "NEXT"), space]
        return [*t[:start], *begun, like(here, "SEP"), *t[start:]]
    bracket = types(t, start, 1) == ["LP"] and types(t, at - 1, 1) == ["RP"]
    made = [x.type for x in t[start:at] if x.type != "BETW"]  # `2 tr divided by 3 ch`
    several = made == ["NUM", "STITCH"] and t[start].number > 1
    chain, behind = chains_at(t, start)
    several |= chain == 1 and [x.type for x in t[past(t, behind, "SEP") : at]] in _STITCHES
    if not several and not (
        bracket and all(x.type not in ("LP", "RP") for x in t[start + 1 : at - 1])
    ):
        return t
    noun = t[same + 1 : same + 2]
    if not noun or noun[0].type not in NOUNS:
        place = types(t, same + 1, 1) == ["PLACE"]
        return [*t[:same], like(t[same], "NEXT"), stitch_left_out(t[same]), *t[same + 1 + place :]]
    return [*t[:same], like(t[same], "NEXT"), *t[same + 1 :]]


_STITCHES = (["NUM", "STITCH"], ["STITCH"])


def _risen_in(t: Terminals, start: int, same: int) -> Terminal | None:
    """The space of `3 chain, 2 treble in the same loop` at a row's head, where the row begins in
    it; None where that is none."""
    chains = sorted(types(t, start, 2)) == ["CH", "NUM"]
    number = types(t, same + 1, 2) == ["NUM", "CH"]
    noun = t[same + 1 : same + 2]
    between = [x.type for x in t[start + 2 : same]]
    if not chains or "SEP" not in between or not {"STAR", "LP"}.isdisjoint(types(t, 0, same)):
        return None
    if number:
        return like(t[same + 2], "KIND", Kind("space", noun[0].number))
    named = bool(noun) and noun[0].kind is not None and noun[0].kind.name in SPACES
    return replace(noun[0], many=False) if named else None


def begun_same(t: Terminals) -> Terminals:
    """`begin in a loop, 3 treble in same loop, 1 double in next loop; repeat`: where the repeat
    goes back to that step, it is each time in the next; not where it is said how often."""
    comma = next((n for n, x in enumerate(t) if x.type == "SEP" and n), len(t))
    begins = [x.type for x in t[past(t, 0, "SEP") : comma]]
    at = next((n for n in range(comma, len(t)) if t[n].type in OPENS), len(t))
    same = past(t, at + 1, "THE")
    behind = [x.type for x in t[same:]]
    again = next((n for n in range(same, len(t)) if t[n].type in ("REPEAT", "SOON")), len(t))
    back = again < len(t) and _from_head(t[same:again])
    said = begins[:1] == ["BEGIN"] or begins[:2] == ["STITCH", "TO"]
    star = next((n for n in range(comma, at) if t[n].type == "STAR"), comma)
    worked = any(
        x.type == "STITCH" for x in t[comma:star]
    )  # `begin in a loop; 1 dc, *5 ch, 1 dc …`
    said = said and back and not worked and HOW_OFTEN.isdisjoint(behind)
    if not said or behind[:1] != ["SAME"] or t[comma - 1].type not in NOUNS:
        return t
    named = types(t, same + 1, 1) == ["PLACE"] or (same + 1 < len(t) and t[same + 1].type in NOUNS)
    order = next((n for n in range(comma) if t[n].type == "ORD"), comma)
    of = next((n for n in range(order, comma) if t[n].type == "OF"), comma)
    if order < of < comma:  # `begin in the 2nd of the 3 chain, 5 treble in it`
        whole = [x for x in t[of + 1 : comma] if x.type not in ("THE", "NEXT")]
        whole = [x for x in whole if (x.type, x.number) != ("ORD", 1)]
        part = [*t[order : of + 1], like(t[same], "NEXT"), *whole]
        return [*t[:same], *part, *t[same + 1 + named :]]
    if "CENTRE" in begins and "OF" not in begins:
        return t  # `slip to the centre dc`: of what, is not said
    centre = [like(t[same], x) for x in ("CENTRE", "OF") if "CENTRE" in begins]
    unsaid = t[past(t, 0, "SEP")].text == t[same].text  # `ch 4, 1 dc in the same loop, …`
    if unsaid and any(x.type == "NEXT" for x in t[same + 1 : again]):
        t = [*t[:at], replace(t[at], name=t[at].name or GOES_ON), *t[at + 1 :]]
    return [*t[:same], *centre, like(t[same], "NEXT"), t[comma - 1], *t[same + 1 + named :]]


def _from_head(t: Terminals) -> bool:
    """Whether a repeat behind these goes back to the row's head: not from within a bracket or from
    right behind one, `(…, repeat)`, `(…) repeat`, nor to a star."""
    opened = [x.type for x in t].count("LP") > [x.type for x in t].count("RP")
    last = next((x.type for x in reversed(t) if x.type not in ("SEP", "AND")), "")
    return not opened and last != "RP" and all(x.type != "STAR" for x in t)


def _set_apart(found: Terminals, at: int) -> None:
    """In `1 plain, 2 in the next` only what stands behind the separator goes into that."""
    if at >= 0 and found[at].type in ("SEP", "AND"):
        found[at] = replace(found[at], type="SEP", name="hard")


def _is_place(before: Terminal) -> bool:
    """Whether a number behind this counts what is worked into: `each of the next 4 treble`."""
    return before.type in OPENS | WHICH | {"EACHOF"}


def _opens(found: Sequence[Terminal]) -> bool:
    return not found or found[-1].type in ("SEP", "LP", "STAR", "AND")
