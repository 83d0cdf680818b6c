"""What books leave unsaid: `the same in the next`, `the 2 following`, `2 in 1`.

Each pass puts in the noun or the order of words that the grammar has. What they
then mean is in `grammar/README.md`, "How the books say things".
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.missed import MADE
from border.text.passing import (
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
from border.text.sentences import shell_before
from border.text.terminals import Terminal
from border.text.tree import SPACES, Kind

_LOOSE = frozenset({"NEXT", "MORE"})
_COUNTED = (["STITCH"], ["CH"], ["PICOT"])


def counted_off(t: Terminals) -> Terminals:
    """`on the 1st, 2nd and 3rd stitches`: on the first 3."""
    found: Terminals = []
    at = 0
    while at < len(t):
        end, last = at, 0
        while end < len(t) and t[end].type == "ORD" and t[end].number == last + 1:
            last += 1
            end += 1
            goes_on = end
            while types(t, goes_on, 1) in (["SEP"], ["AND"], ["THE"]):
                goes_on += 1
            end = goes_on if types(t, goes_on, 1) == ["ORD"] else end
        opened = next((x.type for x in reversed(found) if x.type != "THE"), "")
        placed = opened == "PREP" and last > 1
        if placed and types(t, end, 1) in (["KIND"], ["STITCH"], ["CH"]):
            found += [t[at], like(t[at], "NUM", number=last)]
            at = end
            continue
        found.append(t[at])
        at += 1
    return found


def each_named(t: Terminals) -> Terminals:
    """`1 treble in the 4th and in the 5th stitch`, `in 2nd and 4th loops`, `on the 2nd and 4th of
    the 5 treble`: one in each of them."""
    found: Terminals = []
    at = 0
    while at < len(t):
        nth, noun = _nth_named(t, at + 1) if t[at].type == "PREP" else ([], at)
        one = types(found, len(found) - 1, 1) == ["STITCH"]
        number = found[-2].number if types(found, len(found) - 2, 2) == ["NUM", "STITCH"] else 1
        if len(nth) < 2 or not one or number not in (1, len(nth)):
            found.append(t[at])
            at += 1
            continue
        stitch, prep = found.pop(), t[at]
        if types(found, len(found) - 1, 1) == ["NUM"]:
            found.pop()
        end = next(n for n in range(noun + 1, len(t) + 1) if ended(t, n))
        between, behind = _chains_between(t, end)
        before = 0
        for order in nth:
            found += between if before else []
            found += [like(stitch, "NUM", number=1), stitch, prep]
            found += _one_of_them(order, before, t[noun:end])
            found.append(like(order, "SEP"))
            before = order.number
        found.pop()
        at = behind
    return found


def _chains_between(t: Terminals, at: int) -> tuple[Terminals, int]:
    """The chains of `, 3 chain between`, `with 3 chain between them`, and the place behind; none
    where none are said to stand there."""
    start = past(t, at, "SEP", "WITH")
    chains, end = chains_at(t, start)
    if not chains or types(t, end, 1) != ["BETWEEN"]:
        return [], at
    behind = past(t, end + 1, "EACH", "THEM", "STITCH")
    return ([*t[start:end], like(t[end], "SEP")], behind) if ended(t, behind) else ([], at)


def _one_of_them(order: Terminal, before: int, noun: Sequence[Terminal]) -> Terminals:
    """The nth loop, counted from behind the one worked before; the nth of these, or the same."""
    of = next((n for n, x in enumerate(noun) if x.type == "OF"), None)
    if of is not None:
        which = [like(order, "SAME")] if before else [x for x in noun[of:] if x.type in _SAYS_WHICH]
        whole = [x for x in noun[of + 1 :] if x.type not in _SAYS_WHICH]
        return [order, *noun[: of + 1], *which, *whole]
    steps = order.number - before
    which = [like(order, "NEXT") if before and steps == 1 else like(order, "ORD", number=steps)]
    return [*which, replace(noun[0], many=False)]


_SAYS_WHICH = frozenset({"THE", "NEXT"})


def _nth_named(t: Terminals, at: int) -> tuple[list[Terminal], int]:
    """The ordinals of `the 4th and in the 5th stitch`, each larger than the one before, and the
    place of the noun, or of `of the 5 treble`; none where it is no such place."""
    nth: list[Terminal] = []
    at = past(t, at, "THE")
    while types(t, at, 1) == ["ORD"] and t[at].number > (nth[-1].number if nth else 0):
        nth.append(t[at])
        goes_on = past(t, at + 1, "SEP", "AND")
        again = types(t, goes_on, 1) == ["PREP"] and goes_on > at + 1
        goes_on = past(t, goes_on + again, "THE")
        at = goes_on if types(t, goes_on, 1) == ["ORD"] else at + 1
    of = past(t, at, *NOUNS)
    counted = past(t, of + 1, *_SAYS_WHICH) if types(t, of, 1) == ["OF"] else 0
    of_several = counted and types(t, counted, 2) in (["NUM", "STITCH"], ["NUM", "CH"])
    of_group = of == at + 1 and counted and types(t, counted, 1) == ["KIND"] and len(nth) > 1
    if of_group and ended(t, counted + 1):
        return nth, at
    first = [x.number for x in nth] == [*range(1, len(nth) + 1)]  # `1st, 2nd and 3rd`: first 3
    named = not first and types(t, at, 1) in (["KIND"], ["STITCH"], ["CH"]) and ended(t, at + 1)
    return (nth, at) if named or (of_several and ended(t, counted + 2)) else ([], at)


def of_the_same(t: Terminals) -> Terminals:
    """`in the 4th of the same`, behind `in the 2nd of the 5 chain`: in the 4th, of those too."""
    found: Terminals = []
    at = 0
    while at < len(t):
        same = past(t, at + 1, "THE") if t[at].type == "OF" else len(t)
        nth = types(found, len(found) - 1, 1) == ["ORD"]
        if nth and types(t, same, 1) == ["SAME"] and ended(t, same + 1):
            at = same + 1
            continue
        found.append(t[at])
        at += 1
    return found


def missed_before(t: Terminals) -> Terminals:
    """`in the stitch missed`: the skipped one; `in the 3rd of the 5 chain missed`, where this row
    has missed none yet: that they were says nothing of where they are."""
    found: Terminals = []
    for n, here in enumerate(t):
        behind = here.type == "SKIPPED" and n > 0 and t[n - 1].type in NOUNS and ended(t, n + 1)
        if not behind:
            found.append(here)
        elif types(t, n - 2, 1) == ["THE"]:
            found[-2:] = [here, found[-1]]
        elif any(x.type == "SKIP" for x in t[:n]):
            return t
    return found


def orders(t: Terminals) -> Terminals:
    """`the 2 following stitches`, `each of the 3`, `all the loops`, `next stitch but 3`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here, behind = t[at], types(t, at + 1, 3)
        before = found[-1].type if found else ""
        one_of = here.type == "NUM" and here.number == 1 and behind[:2] == ["OF", "THE"]
        if one_of and before == "PREP" and types(t, at + 3, 1) == ["KIND"] and t[at + 3].many:
            found += [like(here, "NEXT"), replace(t[at + 3], many=False)]  # `into one of the loops`
            at += 4
            continue
        middle = here.type == "NUM" and behind[:1] == ["CENTRE"] and before in ("PREP", "THE")
        middle = middle and types(found, len(found) - 2, 1) != ["BETWEEN"]
        if middle and behind[1:2] in (["STITCH"], ["KIND"]) and ended(t, at + 3):
            found += [t[at + 1], here]  # `on the 3 middle treble`
            at += 2
            continue
        if before in ("CENTRE", "ORD") and (here.type, here.number, *behind[:1]) == (
            "NUM",
            1,
            "OF",
        ):
            at += 1  # the centre one of the 3 treble
            continue
        if here.type == "NUM" and before in OPENS | {"THE", "EACHOF", "AND"} and _turned(t, at + 1):
            found += [t[at + 1], here]
            at += 2
            continue
        if here.type == "TO" and before == "STITCH" and behind[:1] in (["EACH"], ["EVERY"]):
            here = replace(here, type="PREP")
        if here.type == "EACHOF" and behind[:1] == ["THE"]:
            t = [*t[: at + 1], *t[at + 2 :]]
            behind = types(t, at + 1, 3)
        other = here.type == "OTHER" and before in ("THE", "PREP") and at + 1 < len(t)
        if other and t[at + 1].type == "KIND" and not t[at + 1].many:
            here = replace(here, type="NEXT")  # `1 dc in one loop, 3 tr in the other loop`
        if here.type == "NEXT" and before == "ORD" and behind[:1] and behind[0] in NOUNS:
            at += 1  # `on the second following stitch`
            continue
        if here.type in _LOOSE and before == "NUM" and behind[:1] in _COUNTED:
            at += 1  # `3 consecutive treble`, `3 more treble`
            continue
        if here.type == "MORE" and before in NOUNS and ended(t, at + 1):
            at += 1  # `miss 1 loop more`
            continue
        named = behind[1:2] in (["NEXT"], ["ORD"], ["CENTRE"])
        if here.type == "EACHOF" and behind[:1] == ["NUM"] and not named:
            found += [here, like(here, "NEXT")]
            at += 1
            continue
        if here.type == "EACHOF" and behind and behind[0] in NOUNS:
            here = replace(here, type="EACH")
        one = here.type == "NUM" and here.text == "one" and ended(t, at + 1)
        if one and before in ("EACH", "NEXT", "ORD"):
            at += 1  # `2 treble in every one`, `1 treble in the last one`
            continue
        noun = at + 1 + (behind[:1] == ["THE"])
        if here.type == "INALL" and types(t, noun, 1) in (["KIND"], ["STITCH"], ["CH"]):
            found += [like(here, "PREP"), like(here, "EACH")]
            at = noun
            continue
        if here.type == "ALL" and here.text != "both" and before in OPENS:
            at += behind[:1] == ["THE"]
            here = replace(here, type="EACH")
        if here.type == "NEXT":
            taken, nth = _but(t, at)
            if nth:
                found += nth
                at += taken
                continue
        found.append(here)
        at += 1
    return found


def _turned(t: Terminals, at: int) -> bool:
    """Whether `next stitches` or `first stitches` stands behind its number."""
    here, behind = t[at : at + 1], types(t, at + 1, 2)
    if here and here[0].type == "NEXT" and ended(t, at + 1):
        return True  # `in each of the two next`
    if not here or not behind or behind[0] not in NOUNS or behind[1:] == ["OF"]:
        return False
    return here[0].type == "NEXT" or (here[0].type == "ORD" and here[0].number in (1, -1))


def _but(t: Terminals, at: int) -> tuple[int, Terminals]:
    """`next [stitch] but 3` as the 4th: how many terminals that takes, and those it is read as."""
    noun = past(t, at + 1, "NUM") if types(t, at + 1, 2) == ["NUM", "CH"] else at + 1
    but = past(t, noun, *NOUNS)
    if types(t, but, 2) != ["BUT", "NUM"] or but > noun + 1:
        return 0, []
    order = like(t[at], "ORD", number=t[but + 1].number + 1)
    return but + 2 - at, [order, *t[at + 1 : but]]


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
        if here.type == "NUM" and behind == ["PREP"] and stitch is not None and _opens(found[:-1]):
            found.append(replace(stitch, start=here.start, end=here.end, glued=False))
            _set_apart(found, len(found) - 3)
    return found


def placed_in_brackets(t: Terminals) -> Terminals:
    """`5 treble (all into one space)`, `in 4 ch (between the treble)`: without the brackets."""
    found = list(t)
    for n in range(1, len(t)):
        opens = types(t, n, 2) in (["LP", "ALLIN"], ["LP", "PREP"]) and t[n - 1].type == "STITCH"
        where = types(t, n, 2) == ["LP", "BETWEEN"] and t[n - 1].type in NOUNS
        end = next((i for i in range(n, len(t)) if t[i].type == "RP"), 0) if opens or where else 0
        if end and all(x.type in _IN_PLACE for x in t[n + 2 : end]):
            found[n], found[end] = like(t[n], "DROP"), like(t[end], "DROP")
            if opens:
                found[n + 1] = like(t[n + 1], "PREP")
    return [x for x in found if x.type != "DROP"]


_IN_PLACE = WHICH | NOUNS | {"NUM", "OF"}


def all_in_one(t: Terminals) -> Terminals:
    """`1 treble, 2 chain, 1 treble, all in the same place` before any other: all in the next."""
    at = next((n for n, x in enumerate(t) if x.type in OPENS), len(t))
    behind = at + 1 + (types(t, at + 1, 1) == ["THE"])
    if types(t, at, 1) != ["ALLIN"] or types(t, behind, 1) != ["SAME"]:
        return t
    end = behind + 1
    if types(t, end, 1) in (["KIND"], ["STITCH"], ["CH"]) or types(t, end, 2) == ["NUM", "CH"]:
        return [*t[: at + 1], like(t[at], "NEXT"), *t[end:]]  # `all in the same 5 chain`
    place = types(t, end, 1) == ["PLACE"]
    return [*t[: at + 1], like(t[at], "NEXT"), stitch_left_out(t[at]), *t[end + place :]]


def the_same_in(t: Terminals) -> Terminals:
    """`(2 dc, 2 ch, 2 dc) in the first loop, 3 ch, the same in the next`: once more what was made
    in a place last."""
    found: Terminals = []
    made_last: Terminals = []
    noun: Terminals = []
    opening = 0
    again = False
    for n, here in enumerate(t):
        one_more = here.type == "NUM" and here.text == "another"
        same = (here.type == "SAME" or one_more) and types(t, n + 1, 1) == ["PREP"]
        if same and types(t, n + 2, 1) in (["EACH"], ["EVERY"]):
            same = False  # `the same under each loop`, which ends the row
        if same and made_last and types(found, len(found) - 1, 1) in (["THE"], ["SEP"], ["AND"]):
            if found[-1].type == "THE":
                found.pop()
            found += made_last
            again = True
            continue
        if here.type == "PREP" and found:
            made_last = _made_there(found, opening) or made_last
        opening = len(found) if here.type == "LP" else opening
        found.append(here)
        named = here.type in NOUNS and n > 0 and t[n - 1].type in OPENS | WHICH
        noun = [here] if named else noun
        if here.type == "NEXT" and again and ended(t, n + 1):
            found += noun  # `the same in next`
            again = False
    return found


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


def after_next(t: Terminals) -> Terminals:
    """`in the hole after the next`: in the second."""
    found: Terminals = []
    at = 0
    while at < len(t):
        noun = t[at].type in NOUNS and types(found, len(found) - 1, 1) == ["THE"]
        behind = past(t, at + 2, "THE") + 1
        said = noun and types(t, at + 1, 1) == ["AFTER"] and types(t, behind - 1, 1) == ["NEXT"]
        if said and ended(t, behind):
            found[-1:] = [like(t[at], "ORD", number=2), t[at]]
            at = behind
            continue
        found.append(t[at])
        at += 1
    return found


def first_same(t: Terminals) -> Terminals:
    """`3 treble, 3 chain, 3 treble, in the same loop` before any other step: in one, the next."""
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
    several = [x.type for x in t[start:at]] == ["NUM", "STITCH"] and t[start].number > 1
    if not several and not (
        bracket and all(x.type not in ("LP", "RP") for x in t[start + 1 : at - 1])
    ):
        return t
    noun = t[same + 1 : same + 2]
    if not noun or noun[0].type not in NOUNS:
        place = types(t, same + 1, 1) == ["PLACE"]
        return [*t[:same], like(t[same], "NEXT"), stitch_left_out(t[same]), *t[same + 1 + place :]]
    return [*t[:same], like(t[same], "NEXT"), *t[same + 1 :]]


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
    back = "REPEAT" in behind and "STAR" not in behind[: behind.index("REPEAT")]
    said = begins[:1] == ["BEGIN"] or begins[:2] == ["STITCH", "TO"]
    said = said and back and HOW_OFTEN.isdisjoint(behind)
    if not said or behind[:1] != ["SAME"] or t[comma - 1].type not in NOUNS:
        return t
    named = types(t, same + 1, 1) == ["PLACE"] or (same + 1 < len(t) and t[same + 1].type in NOUNS)
    centre = [like(t[same], x) for x in ("CENTRE", "OF") if "CENTRE" in begins]
    return [*t[:same], *centre, like(t[same], "NEXT"), t[comma - 1], *t[same + 1 + named :]]


def _set_apart(found: Terminals, at: int) -> None:
    """In `1 plain, 2 in the next` only what stands behind the separator goes into that."""
    if at >= 0 and found[at].type in ("SEP", "AND"):
        found[at] = replace(found[at], type="SEP", name="hard")


def _is_place(before: Terminal) -> bool:
    """Whether a number behind this counts what is worked into: `each of the next 4 treble`."""
    return before.type in OPENS | WHICH | {"EACHOF"}


def _opens(found: Sequence[Terminal]) -> bool:
    return not found or found[-1].type in ("SEP", "LP", "STAR", "AND")
