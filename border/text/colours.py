"""A colour goes with its stitches or chains, and changes nothing."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.passing import Terminals, types


def colours(t: Terminals) -> Terminals:
    """A colour goes with its stitches or chains: with those before it, else the next ones."""
    found: Terminals = []
    waiting: Terminals = []
    for n, here in enumerate(t):
        if here.type == "COLOUR":
            leads = not found or found[-1].type in ("SEP", "STAR", "LP", "NUM")
            kept = replace(here, type="MOD")
            if [x.type for x in found] == ["ENDING"] and found[0].text.startswith(
                ("fasten", "join")
            ):
                found.clear()  # `fasten in dark wool` at a row's head is new thread
                leads = True
            if leads:
                waiting.append(kept)
            else:
                found.append(kept)
            continue
        found.append(here)
        if waiting and _ends_its_noun(t, n):
            found += waiting
            waiting = []
    if waiting and types(found, len(found) - 1, 1) == ["SEP"]:
        return [*found[:-1], *waiting]  # `1 treble in each stitch, with white wool`
    return found + [replace(x, type="STRAY") for x in waiting]


def _ends_its_noun(t: Terminals, n: int) -> bool:
    """Whether what a colour goes with ends here: a stitch, or chains, `3 ch` as well as `ch 3`."""
    if types(t, n - 1, 2) == ["CH", "NUM"]:
        return types(t, n - 2, 1) != ["NUM"]
    chains = t[n].type == "CH" and (types(t, n - 1, 1) == ["NUM"] or types(t, n + 1, 1) != ["NUM"])
    return chains or t[n].type == "STITCH"
