"""Words round a stitch's name that add none: `a shell of 5 treble`, `plain d. c.`, `16 sc (single
crochet)`, `on the preceding sc`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind
from border.text.wording.passing import (
    ARCHES,
    NAMED_BEHIND,
    NOUNS,
    chains_at,
    ended,
    prep_before,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def without_the_row_below(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the 5 ch of the last row`: without it, as every place is of that row, so that nothing
    stands between a place and what follows; but `over the two chains below` lie in two rows, and
    `omit the double of the last row` misses one there; `the dc below the picot` is under that."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        if here.type != "BELOW":
            found.append(here)
            continue
        before = t[n - 1] if n else here
        above = here.text == "below" and types(t, n + 1, 1) in (["THE"], ["PICOT"])
        if above and prep_before(found) is not None:
            found.append(replace(here, type="PREP"))
            continue
        lie_below = here.text == "below" and before.text == "chains"
        omitted = "EXCEPT" in types(t, max(0, n - 2), 2)
        if before.type not in _OF_BELOW or lie_below or omitted:
            found.append(replace(here, type="NOTHING"))
        elif found:
            found[-1] = replace(found[-1], end=here.end)
    return found


_OF_BELOW = NOUNS | {"ORD", "NEXT", "NUM"}


def made_of(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`a shell of 5 treble`, `a group of 5 treble` is these; `in the next shell of 5 treble` the
    group of them."""
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        named = bool(found) and found[-1].type in NAMED_BEHIND
        if _is_one_group(terminals, n):
            found.pop()
            continue
        if here.type == "OF" and n and _is_one_group(terminals, n - 1):
            continue
        if here.type == "MADEOF" and named:
            chains = [t.type for t in terminals[n + 1 : n + 3]] == ["NUM", "CH"]
            kind = Kind("loop" if chains else "group")  # `in the scallop of 7 chain`
            found.append(replace(here, type="KIND", kind=kind))
            here = replace(here, type="OF")
        found.append(here)
    return found


def _is_one_group(t: Sequence[Terminal], at: int) -> bool:
    """Whether `group of 3 treble` stands here behind `a`, and is made, in a place of its own."""
    group = t[at].kind == Kind("group") and types(t, at, 4) == ["KIND", "OF", "NUM", "STITCH"]
    one = at > 0 and t[at - 1].type == "NUM" and t[at - 1].number == 1
    named = at > 1 and t[at - 2].type in NAMED_BEHIND
    made = types(t, at + 4, 1) in ([], ["SEP"], ["PREP"], ["ROUND"], ["WITH"])
    return group and one and made and not named


_BEFORE_SINGLE = frozenset({"THE", "EACH", "NEXT", "ORD", "PREP"})


def without_adjectives(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`plain d. c.`, `long ones`: the stitch alone; `on the single treble`: one that stands alone;
    `1 single chain`: one."""
    found: list[Terminal] = []
    singles: set[int] = set()
    for n, here in enumerate(terminals):
        if n in singles:
            continue
        behind = terminals[n + 1] if n + 1 < len(terminals) else None
        if any(_is_stitch_of(terminals, start) for start in (n, n - 1)):
            continue
        if here.type == "NEXT" and types(found, len(found) - 2, 2) == ["NEXT", "NUM"]:
            continue  # `the next 3 consecutive chain`
        if here.type == "NEXT" and types(found, len(found) - 1, 1) == ["NEXT"]:
            continue  # `the 3 next consecutive chain`
        if here.text == "remaining" and found and found[-1].type in ("EACH", "NUM"):
            if found[-1].type == "EACH":
                continue  # `in each remaining stitch`
            here = replace(here, type="NEXT")  # `each of the 4 remaining stitches`
        slip = here.text == "on" and bool(found) and found[-1].name == "ss"
        if slip and behind is not None and behind.type == "TO":
            continue  # `slip on to the centre`
        each = here.type == "NEXT" and bool(found) and found[-1].type == "EACH"
        if each and (behind is None or behind.type in NOUNS or ended(terminals, n + 1)):
            continue  # `in each following st`
        of_stitch = behind is not None and here.type == behind.type == "STITCH"
        if of_stitch and here.text in ("plain", "single"):
            continue
        if here.type == "STITCH" and here.text == "single" and behind and behind.type == "KIND":
            continue  # `in a single loop`
        if here.text == "ones" and found and found[-1].type == "STITCH":
            continue
        over = here.text in ("along", "across", "past") and ended(terminals, n + 1) is False
        if over and found and found[-1].name == "ss":
            here = replace(here, type="PREP", text="over")
        if behind is not None and here.text == "single" and behind.type == "CH":
            several = types(found, len(found) - 2, 2) == ["NEXT", "NUM"] and found[-1].number > 1
            if several:  # `under the next 2 single chain`
                one = Kind("space", 1)
                found.append(replace(behind, type="KIND", kind=one, many=True, chain=False))
                singles.add(n + 1)
                continue
            if found and found[-1].type in NAMED_BEHIND:  # `under each single chain`
                found.append(replace(here, type="NUM", name="", number=1, glued=False))
            continue
        alone = n > 1 and terminals[n - 1].text == "single" and terminals[n - 1].type == "STITCH"
        if alone and here.type == "STITCH" and terminals[n - 2].type in _BEFORE_SINGLE:
            here = replace(here, type="KIND", kind=Kind("run", 1, here.name))
        found.append(here)
    return found


def _is_stitch_of(t: Sequence[Terminal], at: int) -> bool:
    """Whether `stitch of double crochet` stands here, which is a dc; or `each stitch of ch`."""
    three = t[at : at + 3] if at >= 0 else []
    sorts = [x.type for x in three]
    chain = sorts == ["KIND", "OF", "CH"] and types(t, at - 1, 1) in (["EACH"], ["EVERY"])
    chain = chain and types(t, at + 3, 1) != ["NUM"] and not three[2].many
    named = (sorts == ["KIND", "OF", "STITCH"] or chain) and three[0].kind == Kind("st")
    part = at > 0 and t[at - 1].type == "ORD"  # `first st of the dc`
    return named and not three[2].many and not part


def without_glosses(terminals: list[Terminal]) -> list[Terminal]:
    """`16 sc (single crochet)`: a name in brackets right behind the same stitch makes none."""
    found: list[Terminal] = []
    at = 0
    while at < len(terminals):
        three = terminals[at : at + 3]
        if [t.type for t in three] == ["LP", "CLUSTER", "RP"] and found and not three[1].number:
            at += 3  # `…, thread over and through all (cluster)`
            continue
        glossed = types(three, 0, 2) in (["LP", "NAMELY"], ["LP", "CH"], ["LP", "PICOT"])
        if glossed and types(found, len(found) - 2, 2) == ["PICOT", "SEP"] and not found[-1].name:
            found.pop()  # `1 purl, (that is, 4 ch, 1 sc in the first)`
        before = found[-1] if found else None
        if [t.type for t in three] == ["LP", "PICOT", "RP"] and _closed_here(found):
            at += 3  # `5 ch, 1 dc into same loop (picot)`
            continue
        if [t.type for t in three] in (
            ["LP", "STITCH", "RP"],
            ["LP", "CH", "RP"],
            ["LP", "KIND", "RP"],
            ["LP", "PICOT", "RP"],
        ):
            name = three[1]
            same = before is not None and (before.type, before.kind) == (name.type, name.kind)
            same = same and not (name.type == "PICOT" and name.number)
            if before is not None and same and name.name in (before.name, ""):
                at += 3
                continue
        found.append(terminals[at])
        at += 1
    return found


def _closed_here(found: Sequence[Terminal]) -> bool:
    """Whether chains stand here, and one stitch behind them that holds them down in a loop, `in
    same loop`; in the same stitch it closes them (`rings.py`)."""
    step = len(found) - 1
    while step > 0 and found[step].type != "SEP":
        step -= 1
    closing = [x.type for x in found[step + 1 :] if x.type not in ("NUM", "THE")]
    chains, behind = chains_at(found, step - 2)
    placed = behind == step and closing[:3] == ["STITCH", "PREP", "SAME"]
    return bool(chains) and placed and found[-1].kind in ARCHES


def just_before(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`1 p. (4 ch. and 1 sl. on the preceding sc.)`: on the last one made."""
    found: list[Terminal] = []
    shown = False
    for here in terminals:
        shown = shown if here.type != "LP" else bool(found) and found[-1].type == "PICOT"
        if shown and here.type == "UNKNOWN" and here.text in ("preceding", "previous"):
            here = replace(here, type="ORD", number=-1)
        shown = shown and here.type != "RP"
        found.append(here)
    return found
