"""How a row begins: `Having made 11 chain, work …`, `Begin, as before, in the loop`, `Fasten the
thread in a corner`, `work dc closely`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.passing import ended, like, past, stitch_left_out, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def begun_at_corner(t: Sequence[Terminal]) -> list[Terminal]:
    """`Fasten the thread in a corner of the linen, …`: where a row begins, which makes nothing."""
    at = next((n for n, x in enumerate(t) if x.type in ("EXCEPT", "STRAY")), 0)
    stop = next((n for n in range(at, len(t)) if t[n].type == "SEP"), 0)
    begins = t[0].type in ("BEGIN", "ENDING", "CATCH") and t[0].text.split()[0] in _FASTENS
    if not begins or not 0 < at < _FEW or "corner" not in t[at].text or stop == 0:
        return list(t)
    if any(x.type in ("STITCH", "CH", "NUM") for x in t[:stop]):
        return list(t)
    star = next((n for n in range(stop, len(t)) if t[n].type == "STAR"), len(t))
    if any(x.type == "SAME" for x in t[stop:star]):
        return list(t)  # `…, ch 3, 4 dc in same place, * …`: what stands there is of the corner
    said = " ".join(x.text for x in t[:stop])
    return [replace(t[0], type="REMARK", text=said, end=t[stop - 1].end, name=""), *t[stop:]]


_FASTENS = frozenset({"fasten", "join", "tie", "attach", "begin", "commence", "start"})


_FEW = 4
"""Before so many words it is said where a row begins."""


def along_all(t: Sequence[Terminal]) -> list[Terminal]:
    """`On the 96 stitches of the mat work 1 dc, 1 chain, miss 1; repeat`, `On the chain work …`:
    along what the row goes, and no place."""
    noun = past(t, 1, "THE", "NUM")
    chain = types(t, noun, 1) == ["CH"] and t[noun - 1].type == "THE"
    counted = t[noun - 1].type == "NUM" and t[noun - 1].number >= _MANY
    named = types(t, noun, 1) == ["CH"] if chain else types(t, noun, 1) in (["KIND"], ["STITCH"])
    work = next((n for n in range(noun, min(len(t), noun + _NEAR)) if _is_work(t[n])), 0)
    if t[0].type != "PREP" or not (chain or counted) or not named or not work:
        return list(t)
    steps = t[work:]
    goes_on = {x.type for x in steps}
    repeated = "REPEAT" in goes_on and goes_on & {"SKIP", "STAR"}
    in_each = any(types(steps, n, 2) in _IN_EACH and ended(steps, n + 2) for n in range(len(steps)))
    if not repeated and not in_each:
        return list(t)
    end = work - (t[work - 1].type == "SEP")
    said = " ".join(x.text for x in t[:end])
    return [replace(t[0], type="REMARK", text=said, end=t[end - 1].end, name=""), *t[work:]]


_MANY = 12
"""So many stitches are no place of one step, but a whole row."""
_NEAR = 12
_IN_EACH = (["PREP", "EACH"], ["PREP", "EVERY"])


def _is_work(here: Terminal) -> bool:
    return here.type == "SEP" and here.text in ("work", "make", "crochet")


def begun_there(t: Sequence[Terminal]) -> list[Terminal]:
    """`Begin, as before, in the first loop`: where a row begins, with no word between."""
    opens = past(t, 0, "SEP", "ENDING")
    if types(t, opens, 1) == ["BEGIN"]:
        place = past(t, opens + 1, "SEP", "REMARK")
        told = [x for x in t[opens + 1 : place] if x.type == "REMARK"]
        if told and types(t, place, 1) == ["PREP"]:
            return [*t[:opens], *told, t[opens], *t[place:]]
    return list(t)


def closely(t: Sequence[Terminal]) -> list[Terminal]:
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


def having_made(t: Sequence[Terminal]) -> list[Terminal]:
    """`Having made 11 chain, work …`, `Close 8 chain into a round, …`: as `make 11 chain, …`, `8
    chain, join, …`."""
    ring = past(t, 3, "PREP", "NUM", "THE")
    closes = types(t, 0, 3) == ["ENDING", "NUM", "CH"] and t[0].name == "join" and ring > 3
    if closes and t[ring : ring + 1] and t[ring].text in _RINGS:
        return [*t[1:3], like(t[3], "SEP"), t[0], *t[ring + 1 :]]
    if t[0].text != "having" or len(t) < 2 or t[1].text not in ("made", "worked"):
        return list(t)
    return [replace(t[0], type="SEP", text="make", end=t[1].end), *t[2:]]


def last_made(t: Sequence[Terminal]) -> list[Terminal]:
    """`Ch 7, turn, 1 dc in the last dc, ch 2, 1 dc in next dc`: the last made is the first now, on
    which these chains stand."""
    at = past(t, 0, "SEP", "ENDING", "NUM", "CH")
    while at and t[at - 1].type == "NUM":
        at -= 1
    stitch = at + (types(t, at, 1) == ["NUM"])
    order = past(t, stitch + 2, "THE")
    turned = any(x.name == "turn" for x in t[:at]) and any(x.type == "CH" for x in t[:at])
    placed = types(t, stitch, 2) == ["STITCH", "PREP"] and types(t, order, 2) == ["ORD", "STITCH"]
    if not turned or not placed or t[order].number != -1:
        return list(t)
    goes_on = any(x.type == "NEXT" for x in t[order + 2 :])
    same = [like(t[order], "SAME"), stitch_left_out(t[order + 1])]
    return [*t[: stitch + 2], *same, *t[order + 2 :]] if goes_on else list(t)


_RINGS = frozenset({"round", "ring", "circle", "loop"})
