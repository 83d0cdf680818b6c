"""How often, by what is then there: `repeat from * till there are 8 loops`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import (
    NAMED_BEHIND,
    NOUNS,
    Terminals,
    chains_at,
    ended,
    like,
    only_ends,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def till_made(t: Terminals) -> Terminals:
    """`repeat from * till there are 8 loops`, `and so on, having 8 loops in all; …`, `till you have
    7 treble with 1 chain between each`: so often, where the steps make one of these, or so many,
    and these chains."""
    for n, here in enumerate(t):
        if here.type not in ("REPEAT", "SOON"):
            continue
        said = past(t, past(t, n + 1, "FROMSTAR"), "SEP")
        if types(t, said, 2) not in (["TILL", "NUM"], ["WITH", "NUM"]):
            continue
        noun = t[said + 2 : said + 3]
        end = past(t, past(t, said + 2, *NOUNS), "INALL")
        claim = t[said].type == "WITH" and only_ends(t[end:])
        star = max((i for i in range(n) if t[i].type == "STAR"), default=-1)
        steps, head = t[star + 1 : n], t[: max(star, 0)]
        each = _made_of(steps, noun[0]) if noun and not claim else 0
        if each and types(t, end, 1) == ["BETW"]:
            end += _chains_part(steps, t[end])
        if not each or not (ended(t, end) or end == len(t)):
            continue
        number = t[said + 1].number - _begun_with(head, noun[0])
        if number % each or number <= 0:
            continue
        often = like(t[said], "INALL", number=number // each)
        from_star = [like(here, "FROMSTAR")] if star >= 0 else []
        return [*t[:n], replace(here, type="REPEAT"), *from_star, often, *till_made(t[end:])]
    return t


def _chains_part(steps: Terminals, between: Terminal) -> bool:
    """Whether chains between are those that the steps make, once."""
    runs = [chains_at(steps, n) for n in range(len(steps))]
    made = [number for number, behind in runs if number and behind]
    return between.kind is None and set(made) == {between.number}


def _begun_with(head: Terminals, noun: Terminal) -> int:
    """How many of these a row has before the star: the stitches of that name, `1 dc, * ch 1, 1 dc;
    repeat from *`; or the space that the chains at its head make, `ch 5, *skip 1, 1 dc, ch 2 …`,
    where they stand for a stitch and the chains behind it."""
    if noun.type == "STITCH":
        return _made_of(head, noun)
    space = noun.kind is not None and noun.kind.name == "space"
    chains = chains_at(head, past(head, 0, "SEP", "ENDING"))[0]
    alone = all(x.type not in ("STITCH", "PREP") for x in head)
    return int(space and alone and chains > _STITCH)


_STITCH = 3
"""So many chains stand for a dc, and no more."""


def _made_of(steps: Terminals, noun: Terminal) -> int:
    """How many of a stitch, or of loops, steps make; 0 where they make others, too, as much."""
    loops = noun.kind is not None and noun.kind.name in ("loop", "space")
    if loops or noun.type == "CH":
        runs = [n for n, x in enumerate(steps) if x.type == "CH"]
        return sum("NUM" in types(steps, max(n - 1, 0), 3) for n in runs)
    made = 0
    for n, here in enumerate(steps):
        number = n > 0 and steps[n - 1].type == "NUM"
        before = steps[n - 1 - number].type if n > number else ""
        if here.type == "STITCH" and here.name == noun.name and before not in NAMED_BEHIND:
            made += steps[n - 1].number if number else 1
    return made
