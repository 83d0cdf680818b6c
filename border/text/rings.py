"""Picots spelled out: `5 chain, 1 single in the 1st`, as `in the first of the 5 chain`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.text.passing import Terminals, ended, like, types
from border.text.terminals import Terminal

_CLOSING = ("sc", "ss")


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
        words = [x for x in found[:-1] if x.type not in ("THE", "SEP")]
        chains = chains_before(words[:-1]) if words and words[-1].type == "PREP" else 0
        named = types(t, at, 2) == ["OF", "CH"]
        if chains > 2 and (named or ended(t, at)):
            chain = next(x for x in reversed(words) if x.type == "CH")
            found += [like(here, "OF"), like(here, "NUM", number=chains)]
            found.append(replace(chain, start=here.start, end=here.end))
            at += 2 * named
    return found


def chains_before(words: Sequence[Terminal]) -> int:
    """The chains right before one closing stitch, by the terminals up to its name."""
    if not words or words[-1].type != "STITCH" or words[-1].name not in _CLOSING:
        return 0
    rest = list(words[:-1])
    one = bool(rest) and rest[-1].type == "NUM" and rest[-1].number == 1
    chain = types(rest, len(rest) - 2, 1) == ["CH"]
    if one and (not chain or types(rest, len(rest) - 3, 1) == ["NUM"]):
        rest.pop()
    pair = types(rest, max(0, len(rest) - 2), 2)
    if pair == ["NUM", "CH"]:
        return rest[-2].number
    return rest[-1].number if pair == ["CH", "NUM"] else 0
