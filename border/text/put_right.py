"""What is put right in a row's words before it is told what is strange in them: adjectives,
glosses, how chains are named, where a row begins.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.beside import on_either_side
from border.text.dots import without_dots
from border.text.passing import NOUNS, ended, like, past, prep_before, stitch_left_out, types, where
from border.text.remarked import with_remarks
from border.text.tree import ST, Kind

if TYPE_CHECKING:
    from border.text.terminals import Terminal


_NAMED_BEHIND = frozenset({"PREP", "OF", "NEXT", "THE", "EACH", "SAME", "ORD", "SKIP", "BETWEEN"})
"""Behind these something is named that is worked into."""


def _made_of(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`a shell of 5 treble`, `a group of 5 treble` is these; `in the next shell of 5 treble` the
    group of them."""
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        named = bool(found) and found[-1].type in _NAMED_BEHIND
        if _is_one_group(found, terminals, n):
            found.pop()
            continue
        if here.type == "OF" and n and _is_one_group(terminals[: n - 1], terminals, n - 1):
            continue
        if here.type == "MADEOF" and named:
            chains = [t.type for t in terminals[n + 1 : n + 3]] == ["NUM", "CH"]
            kind = Kind("loop" if chains else "group")  # `in the scallop of 7 chain`
            found.append(replace(here, type="KIND", kind=kind))
            here = replace(here, type="OF")
        found.append(here)
    return found


def _is_one_group(found: Sequence[Terminal], t: Sequence[Terminal], at: int) -> bool:
    """Whether `group of 3 treble` stands here behind `a`, and is made, in a place of its own."""
    group = t[at].kind == Kind("group") and types(t, at, 4) == ["KIND", "OF", "NUM", "STITCH"]
    one = types(found, len(found) - 1, 1) == ["NUM"] and found[-1].number == 1
    named = types(found, len(found) - 2, 1) != [] and found[-2].type in _NAMED_BEHIND
    made = types(t, at + 4, 1) in ([], ["SEP"], ["PREP"], ["ROUND"], ["WITH"])
    return group and one and made and not (named and len(found) > 1)


_BEFORE_SINGLE = frozenset({"THE", "EACH", "NEXT", "ORD", "PREP"})


def _without_adjectives(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`plain d. c.`, `long ones`: the stitch alone; `on the single treble`: one that stands alone;
    `1 single chain`: one."""
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        behind = terminals[n + 1] if n + 1 < len(terminals) else None
        if any(_is_stitch_of(terminals, start) for start in (n, n - 1)):
            continue
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
            if found and found[-1].type in _NAMED_BEHIND:  # `under each single chain`
                found.append(replace(here, type="NUM", name="", number=1, glued=False))
            continue
        alone = n > 1 and terminals[n - 1].text == "single" and terminals[n - 1].type == "STITCH"
        if alone and here.type == "STITCH" and terminals[n - 2].type in _BEFORE_SINGLE:
            here = replace(here, type="KIND", kind=Kind("run", 1, here.name))
        found.append(here)
    return found


def _is_stitch_of(t: Sequence[Terminal], at: int) -> bool:
    """Whether `stitch of double crochet` stands here, which is a dc."""
    three = t[at : at + 3] if at >= 0 else []
    named = [x.type for x in three] == ["KIND", "OF", "STITCH"] and three[0].kind == Kind("st")
    part = at > 0 and t[at - 1].type == "ORD"  # `first st of the dc`
    return named and not three[2].many and not part


def _without_glosses(terminals: list[Terminal]) -> list[Terminal]:
    """`16 sc (single crochet)`: a name in brackets right behind the same stitch makes none."""
    found: list[Terminal] = []
    at = 0
    while at < len(terminals):
        three = terminals[at : at + 3]
        if [t.type for t in three] == ["LP", "CLUSTER", "RP"] and found and not three[1].number:
            at += 3  # `…, thread over and through all (cluster)`
            continue
        before = found[-1] if found else None
        if [t.type for t in three] in (
            ["LP", "STITCH", "RP"],
            ["LP", "CH", "RP"],
            ["LP", "KIND", "RP"],
        ):
            name = three[1]
            same = before is not None and (before.type, before.kind) == (name.type, name.kind)
            if before is not None and same and name.name in (before.name, ""):
                at += 3
                continue
        found.append(terminals[at])
        at += 1
    return found


def _just_before(terminals: Sequence[Terminal]) -> list[Terminal]:
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


def _of_end_chain(t: Sequence[Terminal]) -> list[Terminal]:
    """`miss 2 of the end chain`, `in next st of end ch`, `on the next of the turning chain`: so
    many of its chains, or the next."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        chain = past(t, at + 1, "THE", "ORD", "NUM", "STRAY")
        ends = types(t, at, 1) == ["OF"] and types(t, chain, 1) == ["CH"] and chain > at + 1
        last = ends and any(x.type == "ORD" and x.number == -1 for x in t[at + 1 : chain])
        skips = last and types(found, len(found) - 2, 2) == ["SKIP", "NUM"]
        st = last and types(found, len(found) - 2, 2) == ["NEXT", "KIND"] and found[-1].kind == ST
        bare = ends and types(found, len(found) - 1, 1) == ["NEXT"]
        if skips or st or bare:
            found[-st or len(found) :] = [t[chain]]
            at = chain + 1
            continue
        found.append(t[at])
        at += 1
    return found


def _of_a_loop(t: Sequence[Terminal]) -> list[Terminal]:
    """`between the two picots of a free loop`: of the next; `sl st to space between groups`: to
    that space."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        here = t[at]
        kind = past(t, at + 1, "NOTHING")
        one = (
            here.type == "NUM" and here.text in ("a", "an", "one") and types(t, kind, 1) == ["KIND"]
        )
        if one and types(found, len(found) - 2, 2) == ["PICOT", "OF"]:
            found.append(like(here, "NEXT"))
            at = kind
            continue
        heap = past(t, at + 1, "THE", "NUM")
        to = types(found, len(found) - 2, 2) == ["TO", "KIND"] and here.type == "BETWEEN"
        if to and t[heap : heap + 1] and t[heap].type in NOUNS and ended(t, heap + 1):
            at = heap + 1
            continue
        found.append(here)
        at += 1
    return found


def _passed(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`pass the dc`, `passing 2 ch`, `leave 2`: as `miss`; not `pass the thread`. `* Miss the
    first dc` misses the next one each time."""
    found = list(terminals)
    for n, here in enumerate(terminals):
        order = past(terminals, n + 1, "THE")
        first = types(terminals, order, 1) == ["ORD"] and terminals[order].number == 1
        if here.type == "SKIP" and first and n and terminals[n - 1].type in ("STAR", "CROSS"):
            found[order] = like(terminals[order], "NUM", number=1)
        behind = terminals[n + 1 : n + 3]
        behind = behind[1:] if behind and behind[0].type in ("THE", "PREP") else behind
        if (
            here.text in ("pass", "passing", "leave")
            and behind
            and behind[0].type in ("NUM", *NOUNS)
        ):
            found[n] = replace(here, type="SKIP")
    return found


def _chains_of(t: Sequence[Terminal]) -> list[Terminal]:
    """`a chain of 5`, `with ch 5 between`: as `5 chain`, wherever they are made or named."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        if types(t, at, 2) == ["CH", "NUM"] and _is_chain_first(found, t, at):
            place = found[-1:] != [] and found[-1].type in _PLACES
            place = place and types(t, at + 2, 1) != ["OF"]
            number, whole = t[at + 1].number, replace(t[at], end=t[at + 1].end)
            if place:
                found.append(replace(whole, type="KIND", kind=Kind("space", number)))
            else:
                found += [t[at + 1], whole]  # `(2 dc, ch 3)` is still no count
            at += 2
            continue
        each = found[-1:] != [] and found[-1].type in ("EACH", "EVERY")
        if each and types(t, at, 3) == ["CH", "OF", "NUM"] and types(t, at + 3, 1) not in _COUNTED:
            kind = Kind("space", t[at + 2].number)  # `over each ch of 6`
            found.append(replace(t[at], type="KIND", end=t[at + 2].end, kind=kind))
            at += 3
            continue
        one = types(t, at, 4) == ["NUM", "CH", "OF", "NUM"] and t[at].number == 1
        if one and not t[at + 1].many and types(t, at + 4, 1) not in _COUNTED:
            chain = replace(t[at + 1], start=t[at].start, end=t[at + 3].end)
            found += [replace(t[at + 3], start=t[at].start), chain]
            at += 4
            continue
        found.append(t[at])
        at += 1
    return found


_PLACES = frozenset({"THE", "NEXT", "EACH", "EVERY", "SAME", "ORD"})


def _is_chain_first(found: Sequence[Terminal], t: Sequence[Terminal], at: int) -> bool:
    """Whether `ch 3` stands here, and its number counts nothing behind it: `ch 3 spaces`."""
    counts = types(t, at + 2, 1) in (*_COUNTED, ["MORE"], ["INALL"], ["ORD"], ["AS"])
    part = types(found, len(found) - 2, 2) == ["OF", "THE"]  # `in the 3rd ch of the ch-3`
    named = types(found, len(found) - 2, 2) == ["PICOT", "OF"]
    goes_on = types(t, at + 2, 1) in (["OF"], ["PREP"])
    named |= found[-1:] != [] and found[-1].type == "PREP" and goes_on
    said = types(found, len(found) - 1, 1) in _SAID_ALREADY and not named
    return not (counts or part or said)


_SAID_ALREADY = (["NUM"], ["PREP"], ["OF"], ["PICOT"])


_COUNTED = (["STITCH"], ["KIND"], ["CH"], ["PICOT"], ["CLUSTER"], ["FOUNDATION"], ["TIMES"])
"""What a number behind `of` counts where it is not the chains."""


def _said_once(t: Sequence[Terminal]) -> list[Terminal]:
    """`…, then 3 dc`, `… and repeat`: parted once, as by one word."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        then = here.type == "SEP" and here.text == "then"
        if then and found and found[-1].type == "SEP" and found[-1].text == ",":
            found.pop()
        if here.type == "AND" and (types(t, n + 1, 1) == ["REPEAT"] or _steps_on(found, t, n + 1)):
            here = replace(here, type="SEP")
        found.append(here)
    return found


def _begun_at_corner(t: Sequence[Terminal]) -> list[Terminal]:
    """`Fasten the thread in a corner of the linen, …`: where a row begins, which makes nothing."""
    at = next((n for n, x in enumerate(t) if x.type in ("EXCEPT", "STRAY")), 0)
    stop = next((n for n in range(at, len(t)) if t[n].type == "SEP"), 0)
    begins = t[0].type in ("BEGIN", "ENDING", "CATCH") and t[0].text.split()[0] in _FASTENS
    if not begins or not 0 < at < _FEW or "corner" not in t[at].text or stop == 0:
        return list(t)
    if any(x.type in ("STITCH", "CH", "NUM") for x in t[:stop]):
        return list(t)
    said = " ".join(x.text for x in t[:stop])
    return [replace(t[0], type="REMARK", text=said, end=t[stop - 1].end, name=""), *t[stop:]]


_FASTENS = frozenset({"fasten", "join", "tie", "attach", "begin", "commence", "start"})
_FEW = 4
"""Before so many words it is said where a row begins."""


def _again_behind_mark(t: Sequence[Terminal]) -> list[Terminal]:
    """`* 1 sc, 5 chain *; and so on`: as `repeat`."""
    found = list(t)
    for n, here in enumerate(t):
        mark = n - 1
        while mark > 0 and t[mark].type == "SEP":
            mark -= 1
        back = types(t, mark - 1, 1) == ["FROM"]  # `repeat from *, &c.`
        marked = mark > 0 and not back and t[mark].type in ("STAR", "CROSS", "MARK")
        if here.type == "SOON" and marked:
            found[n] = replace(here, type="REPEAT")
    return found


def _steps_on(found: Sequence[Terminal], t: Sequence[Terminal], at: int) -> bool:
    """Whether another step begins here with a place of its own, behind one that has its place."""
    parts = max((n for n, x in enumerate(found) if x.type in _PARTED), default=-1)
    placed = any(x.type == "PREP" for x in found[parts + 1 :])
    return placed and types(t, at, 3) == ["NUM", "STITCH", "PREP"]


_PARTED = frozenset({"SEP", "LP", "RP", "STAR", "AND"})


def _end_ones(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`in 3rd ch of end loop`, `miss 2 of the end chain`: the last one."""
    found = list(terminals)
    for n, here in enumerate(terminals):
        named = n > 0 and terminals[n - 1].type in _NAMED_BEHIND
        if here.text == "end" and named and types(terminals, n + 1, 1)[:1] in _ONE:
            found[n] = replace(here, type="ORD", number=-1)
    return found


_ONE = (["KIND"], ["CH"], ["STITCH"])


def _before_stitches(t: Sequence[Terminal]) -> list[Terminal]:
    """`under the 3 chain before the 3 dc`: said of where these chains are, as `after` is."""
    found = list(t)
    for n, here in enumerate(t):
        chains = types(t, n - 2, 2) == ["NUM", "CH"] and types(t, n - 3, 1)[:1] in (
            ["PREP"],
            ["THE"],
        )
        kind = t[n - 1].kind if n else None
        chains |= kind is not None and kind.name == "space"
        noun = past(t, n + 1, "THE", "NUM")
        if here.text == "before" and chains and noun > n + 1 and types(t, noun, 1) == ["STITCH"]:
            found[n] = replace(here, type="AFTER")
    return found


def _round_loops(t: Sequence[Terminal]) -> list[Terminal]:
    """`in the round loop`: in the ring; `in the round` is else `in all`."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        ring = n + 1 < len(t) and t[n + 1].text in ("loop", "ring")
        if here.type == "INALL" and here.text == "in the round" and ring:
            found += [like(here, "PREP"), like(here, "THE")]
        elif found and found[-1].type == "THE" and t[n - 1].type == "INALL":
            found.append(replace(like(here, "STRAY"), text="ring"))
        else:
            found.append(here)
    return found


def _begun_there(t: Sequence[Terminal]) -> list[Terminal]:
    """`Begin, as before, in the first loop`: where a row begins, with no word between."""
    opens = past(t, 0, "SEP", "ENDING")
    if types(t, opens, 1) == ["BEGIN"]:
        place = past(t, opens + 1, "SEP", "REMARK")
        told = [x for x in t[opens + 1 : place] if x.type == "REMARK"]
        if told and types(t, place, 1) == ["PREP"]:
            return [*t[:opens], *told, t[opens], *t[place:]]
    return list(t)


def _closely(t: Sequence[Terminal]) -> list[Terminal]:
    """`work dc closely, putting 3 in each corner`, `work dc` as a whole row: one in each place, all
    along."""
    if t[0].text.startswith("work") and types(t, 1, 1) == ["STITCH"]:
        rest = past(t, 2, "SEP", "ENDING", "REMARK")
        if rest == len(t):
            return [*t[:2], like(t[1], "PREP"), like(t[1], "EACH"), stitch_left_out(t[1]), *t[2:]]
    found: list[Terminal] = []
    for n, here in enumerate(t):
        found.append(here)
        bare = here.text in _CLOSE and types(t, n - 1, 1) == ["STITCH"]
        number = types(t, n - 2, 1) == ["NUM"] if n > 1 else False
        placed = types(t, n + 1, 1)[:1] in (["PREP"], ["EACH"], ["TOEND"], ["ROUND"], ["NOTHING"])
        if bare and not number and not placed:
            found += [like(here, "PREP"), like(here, "EACH"), stitch_left_out(here)]
    return found


_CLOSE = frozenset({"closely", "close together", "placed close together"})


def _at_beginning(t: Sequence[Terminal]) -> list[Terminal]:
    """`9 dc in the loop at the beginning`, of the row below: it lies at the end of this one."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        begin = past(t, at + 1, "THE")
        says = types(t, at, 1) == ["PREP"] and t[at].text == "at" and at > _FEW
        named = types(found, len(found) - 1, 1)[:1] in (["CH"], ["KIND"])
        if says and named and types(t, begin, 1) == ["BEGIN"] and ended(t, begin + 1):
            found.append(replace(t[at], type="ATEND", end=t[begin].end))
            at = begin + 1
            continue
        found.append(t[at])
        at += 1
    return found


def _spots(t: Sequence[Terminal]) -> list[Terminal]:
    """`on the dc in the hollow`, `the 2 ch at the top of the scallop`: where a place is that has
    been named."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        spot = past(t, at + 1, "THE")
        says = types(t, at, 1) == ["PREP"] and spot > at + 1 and spot < len(t)
        if says and t[spot].text in _SPOTS and ended(t, spot + 1) and prep_before(found):
            said = " ".join(x.text for x in t[at : spot + 1])
            found.append(replace(t[at], type="REMARK", text=said, end=t[spot].end, name=""))
            at = spot + 1
            continue
        found.append(t[at])
        at += 1
    return found


_SPOTS = frozenset({"hollow", "hollows", "dip", "dips", "valley", "angle"})


def _having_made(t: Sequence[Terminal]) -> list[Terminal]:
    """`Having made 11 chain, work …`: as `make 11 chain, …`."""
    if t[0].text != "having" or len(t) < 2 or t[1].text not in ("made", "worked"):
        return list(t)
    return [replace(t[0], type="SEP", text="make", end=t[1].end), *t[2:]]


PUT_RIGHT = (
    where(without_dots, "SEP"),
    where(_having_made, "STRAY UNKNOWN WITH"),
    where(_round_loops, "INALL-KIND INALL-STRAY"),
    where(_chains_of, "CH-OF CH-NUM"),
    where(_before_stitches, "CH-UNKNOWN KIND-UNKNOWN"),
    where(_said_once, "SEP-SEP AND-REPEAT AND-NUM"),
    where(_made_of, "MADEOF KIND-OF"),
    where(_closely, "STITCH-NOTHING SEP-STITCH"),
    where(_at_beginning, "PREP-BEGIN THE-BEGIN"),
    where(_spots, "THE-UNKNOWN THE-STRAY"),
    where(_just_before, "PICOT-LP", "UNKNOWN"),
    where(_passed, "UNKNOWN STAR-SKIP CROSS-SKIP"),
    where(_without_adjectives, "STITCH"),
    where(_end_ones, "ENDWITH"),
    where(_of_end_chain, "NUM-OF KIND-OF NEXT-OF", "CH"),
    where(_of_a_loop, "PICOT-OF KIND-BETWEEN"),
    where(_begun_at_corner, "EXCEPT STRAY", "-BEGIN -ENDING -CATCH"),
    where(_again_behind_mark, "SOON", "STAR CROSS MARK"),
    where(_without_glosses, "LP"),
    where(on_either_side, "UNKNOWN TOEND STRAY REMARK", "STITCH"),
    where(with_remarks),
    where(_begun_there, "BEGIN-SEP BEGIN-REMARK", "REMARK"),
)
"""What puts words right before it is told what is strange in them."""
