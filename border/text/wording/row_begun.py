"""How a row begins: `Having made 11 chain, work …`, `Begin, as before, in the loop`, `Fasten the
thread in a corner`, `work dc closely`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.distances import DISTANCE
from border.text.tree import ST
from border.text.wording.passing import (
    as_remark,
    ended,
    like,
    past,
    stitch_left_out,
    types,
)

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
    return [as_remark(t[:stop]), *t[stop:]]


_FASTENS = frozenset({"fasten", "join", "tie", "attach", "begin", "commence", "start"})


_FEW = 4
"""Before so many words it is said where a row begins."""


def along_all(t: Sequence[Terminal]) -> list[Terminal]:
    """`On the 96 stitches of the mat work 1 dc, 1 chain, miss 1; repeat`, `On the chain work …`,
    `On the foundation chain, 1 dc in every st`: along what the row goes, and no place."""
    noun = past(t, 1, "THE", "NUM", "FOUNDATION")
    chain = types(t, noun, 1) == ["CH"] and t[noun - 1].type in ("THE", "FOUNDATION")
    counted = t[noun - 1].type == "NUM" and t[noun - 1].number >= _MANY
    named = types(t, noun, 1) == ["CH"] if chain else types(t, noun, 1) in (["KIND"], ["STITCH"])
    work = next((n for n in range(noun, min(len(t), noun + _NEAR)) if _is_work(t[n])), 0)
    behind = past(t, noun + 1, "NOTHING")
    cloth = named and t[noun].text in _CLOTH and t[noun - 1].type == "THE"
    cloth = cloth or (chain and t[noun - 1].type == "FOUNDATION")
    if cloth and not work and types(t, behind, 1) == ["SEP"]:
        work = behind + 1  # `Into the hem of the linen, * 1 dc, 5 ch, miss 2; repeat`
    if t[0].type != "PREP" or not (chain or counted or cloth) or not named or not work:
        return list(t)
    steps = t[work:]
    goes_on = {x.type for x in steps}
    repeated = "REPEAT" in goes_on and goes_on & {"SKIP", "STAR"}
    in_each = any(
        types(steps, n, 2) in _IN_EACH
        and (ended(steps, n + 2) or (steps[n + 2].kind == ST and ended(steps, n + 3)))
        for n in range(len(steps))
    )
    if not repeated and not in_each:
        return list(t)
    end = work - (t[work - 1].type == "SEP")
    return [as_remark(t[:end]), *t[work:]]


def row_along(t: Sequence[Terminal]) -> list[Terminal]:
    """`Over the rolled edge of the linen work a row of dc`: the row alone, which goes along it."""
    at = past(t, 0, "SEP")
    noun = past(t, at + 1, "THE")
    behind = past(t, noun + 1, "NOTHING", "SEP")
    edge = types(t, at, 1) == ["PREP"] and types(t, noun, 1) == ["KIND"]
    row = types(t, behind, 3) == ["NUM", "ROW", "OF"] and t[behind].number == 1
    return [*t[:at], *t[behind:]] if edge and row else list(t)


def each_of_a_chain(t: Sequence[Terminal]) -> list[Terminal]:
    """`dc in every stitch of a chain the length you want it`: in every stitch."""
    for n in range(2, len(t) - 1):
        each = types(t, n - 2, 3) == ["EACH", "KIND", "OF"] or types(t, n - 2, 3) == _EVERY_ST
        told = t[n + 1].type == "REMARK" and {"ch", "chain"} & set(t[n + 1].text.split())
        behind = past(t, n + 2, "STRAY")
        if each and told and ended(t, behind):
            return [*t[:n], replace(t[n + 1], end=t[behind - 1].end), *t[behind:]]
    return list(t)


_EVERY_ST = ["EVERY", "KIND", "OF"]


def closed_first(t: Sequence[Terminal]) -> list[Terminal]:
    """`Close a foundation of 10 st in a ring with 1 sl st`: 10 chain, join."""
    at = past(t, 0, "SEP")
    number = past(t, at + 1, "NUM", "FOUNDATION", "CH", "OF")
    made = t[at + 1 : number]
    joins = types(t, at, 1) == ["ENDING"] and t[at].name == "join" and len(made) > 1
    behind = past(t, number, "KIND", "SEP")
    behind = past(t, behind, "WITH", "NUM", "STITCH")  # `with 1 sl st into a ring`
    ring = past(t, behind, "PREP", "NUM", "THE")
    if not joins or made[-1].type != "NUM" or types(t, ring, 1) != ["STRAY"]:
        return list(t)
    if not {"FOUNDATION", "CH"} & {x.type for x in made} or t[ring].text not in ("ring", "circle"):
        return list(t)
    chain = [replace(made[-1], type="NUM"), like(made[-1], "CH"), like(made[-1], "SEP")]
    return [*t[:at], *chain, replace(t[at], text="join"), *t[ring + 1 :]]


def on_a_chain(t: Sequence[Terminal]) -> list[Terminal]:
    """`On a chain the length of the neck work …`, `Make a chain as long as required; …`: a
    foundation of no number, which is told."""
    on = t[0].type == "PREP" and t[0].text in ("on", "upon")
    at = int(on or (t[0].type == "SEP" and t[0].text in _MAKES))
    chain = past(t, at + 1, "FOUNDATION")
    if types(t, at, 1) == ["REMARK"] and {"ch", "chain"} & set(t[at].text.split()):
        chain = at
    elif t[at].text != "a" or types(t, chain, 1) != ["CH"]:
        return list(t)
    end = chain + 1
    while end < len(t) and not _goes_on(t, end):
        end += 1
    said = t[chain + 1 : end]
    long = chain == at or any(x.text.split()[-1] in _LONG or x.name == DISTANCE for x in said)
    steps = any(x.type in _STEPS or x.number > 1 for x in said)
    if steps or not (long or (on and end < len(t))):
        return list(t)
    return [as_remark(t[:end]), *t[end:]]


_MAKES = frozenset({"make", "making", "work", "having made", "begin with"})
_LONG = frozenset({"long", "length", "size", "required", "desired", "enough", "necessary", "wish"})
"""One of these says of a chain how long it is."""
_STEPS = frozenset({"CH", "REPEAT", "SKIP", "STAR", "PICOT", "LP", "EACH", "ENDING"})


def _goes_on(t: Sequence[Terminal], at: int) -> bool:
    """Whether what is said of a chain ends here: at a mark, `work`, or with a stitch; `long` of
    `as long as` is none."""
    here = t[at]
    long = here.text == "long" and types(t, at - 1, 1) == ["AS"]
    stitch = types(t, at + (here.type == "NUM"), 1) == ["STITCH"] and not long
    return (
        stitch
        or here.type == "SEP"
        or (here.type == "AND" and any(map(_is_work, t[at + 1 : at + 2])))
    )


_CLOTH = frozenset(
    {
        "hem",
        "edge",
        "rolled edge",
        "raw edge",
        "folded edge",
        "rolled hem",
        "braid",
        "tape",
        "linen",
    }
    | {"muslin", "flannel", "cambric", "lawn", "nainsook", "cloth", "material", "stuff"}
)
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
        middle = types(t, opens + 1, 3) == ["PREP", "THE", "CENTRE"]
        if middle and types(t, opens + 4, 3) == ["WITH", "NUM", "CH"]:
            return [*t[:opens], *t[opens + 5 :]]  # `Begin in the centre with 12 chain, join`
    if types(t, opens, 2) == ["REMARK", "WITH"] and t[opens].text.split()[0] in _BEGINS:
        return [*t[: opens + 1], *t[opens + 2 :]]  # `Begin at the right hand with 1 dc on the 1st`
    return list(t)


_BEGINS = frozenset({"begin", "commence", "start", "beginning", "commencing", "starting"})


def closely(t: Sequence[Terminal]) -> list[Terminal]:
    """`work dc closely, putting 3 in each corner`, `work dc` as a whole row: one in each place, all
    along."""
    if t[0].text.startswith("work") and types(t, 1, 1) == ["STITCH"]:
        rest = past(t, 2, "SEP", "ENDING", "REMARK")
        if rest == len(t):
            return [*t[:2], like(t[1], "PREP"), like(t[1], "EACH"), stitch_left_out(t[1]), *t[2:]]
    found: list[Terminal] = []
    along = 0  # where what it is worked along ends
    for n, here in enumerate(t):
        if n < along:
            continue
        found.append(here)
        bare = here.text in _CLOSE and types(t, n - 1, 1) == ["STITCH"]
        number = types(t, n - 2, 1) == ["NUM"] if n > 1 else False
        placed = types(t, n + 1, 1)[:1] in (["PREP"], ["EACH"], ["TOEND"], ["ROUND"], ["NOTHING"])
        hem = past(t, n + 2, "THE") if placed else len(t)
        if bare and not number and hem < len(t) and t[hem].text.endswith(("edge", "hem")):
            along = next((i for i in range(hem, len(t)) if t[i].type in ("SEP", "ENDING")), len(t))
            placed = False  # `work dc closely round the hemmed edge of the square`
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


def hook_put(t: Sequence[Terminal]) -> list[Terminal]:
    """`Insert the hook in the edge of the material and work 1 dc in each loop`: a remark, where the
    steps have a place of their own."""
    start = past(t, 0, "SEP")
    noun = past(t, start + 2, "THE")
    stop = past(t, noun + 1, "NOTHING")
    steps = past(t, stop, "AND", "SEP")
    put = types(t, start, 2) == ["PUTHOOK", "PREP"] and types(t, noun, 1) == ["KIND"]
    placed = types(t, past(t, steps, "NUM"), 2) == ["STITCH", "PREP"]
    if not put or steps == stop or not placed:
        return list(t)
    return [*t[:start], as_remark(t[start:stop]), like(t[stop], "SEP"), *t[steps:]]
